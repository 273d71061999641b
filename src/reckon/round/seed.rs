//! Seed: lots to test, and lots whose life ends.

use super::deadline::UntilFor;
use super::intervals::*;
use super::stop::{LastLook, RoundReason, Stake, Stop, Task};
use super::walk::{Walk, all_of};
use crate::base::{Day, LotCode, Range};
use crate::nursery::entry::types::Kept;
use crate::nursery::species::{Figure, Profile};
use crate::reckon::picture::{Measure, Source};
use crate::reckon::stock::LotStory;

/// How long a lot lives, the way it is kept.
struct Life {
    from: Day,
    days: i32,
    kept: Kept,
    source: Source,
}

impl Life {
    fn last_day(&self) -> Day {
        self.from.plus(self.days)
    }

    fn dead_on(&self) -> Day {
        self.from.plus((f64::from(self.days) * DEAD_AT_LIVES).round() as i32)
    }
}

/// Tasks of the seed store.
pub(super) fn seed(walk: &Walk<'_>) -> Vec<Stop> {
    let day = walk.day();
    let mut stops = Vec::new();
    for (code, lot) in &walk.picture.lots {
        let held = lot.held.as_ref().is_some_and(|held| held.what.1.is_none_or(|until| day <= until));
        if held || lot.received.is_none() || lot.seeds_left == Some(0) {
            continue;
        }
        let profile = walk.profile(lot.species.as_ref());
        let life = profile.and_then(|profile| life(lot, profile));
        if life.as_ref().is_some_and(|life| day > life.dead_on()) {
            continue;
        }
        let ending = life.as_ref().and_then(|life| life_ends(walk, code, lot, life));
        // Seed that must go into the ground now is sown, not tested.
        stops.extend(ending.or_else(|| test(walk, code, lot)));
    }
    stops
}

/// The life of a lot from the day it was last handled: each way of keeping has its figure; in the cold the profiles
/// have none.
fn life(lot: &LotStory, profile: &Profile) -> Option<Life> {
    let spell = lot.kept.last()?;
    let ambient = profile.storage_ambient_days.as_ref();
    let figure: Option<&Figure<f64>> = match spell.what {
        Kept::InPod => profile.storage_in_pod_days.as_ref().or(ambient),
        Kept::MucilageOn => profile.storage_mucilage_on_days.as_ref().or(ambient),
        Kept::WashedMoist => profile.storage_washed_moist_days.as_ref().or(ambient),
        Kept::InParchment | Kept::DrySealed | Kept::DryOpen | Kept::Other => ambient,
        Kept::Cold => None,
    };
    let figure = figure?;
    let source =
        if figure.source.trim().is_empty() { LIFE_SOURCE.into() } else { Source::figure(Some(&figure.source)) };
    Some(Life { from: spell.from, days: figure.value.round().clamp(0.0, 40_000.0) as i32, kept: spell.what, source })
}

fn life_ends(walk: &Walk<'_>, code: &LotCode, lot: &LotStory, life: &Life) -> Option<Stop> {
    let day = walk.day();
    let days_left = life.last_day().days_since(day);
    let notice = ((f64::from(life.days) * LIFE_NOTICE_SHARE).ceil() as i32).max(LIFE_NOTICE_DAYS);
    if days_left < 0 || days_left > notice {
        return None;
    }
    let why = RoundReason::LifeEnds {
        last_day: life.last_day(),
        days_left,
        life_days: life.days,
        kept: life.kept,
        seeds_left: lot.seeds_left,
    };
    let mut stop = walk
        .lot_stop(code, Task::SowLot, why)
        .risking(Stake::Seed, plants_wanted(walk, lot), days_left + 1)
        .taking(minutes::SEED, life.source.clone())
        .working(f64::from(lot.seeds_left.unwrap_or(0)) * work::SOW)
        .due(life.last_day().plus(-notice), notice)
        .until(Some(life.last_day()), UntilFor::SeedLife);
    finish(&mut stop, lot);
    Some(stop)
}

/// Plants the lot could still give, at most as many as the beds have room for: seed beyond that is no loss.
fn plants_wanted(walk: &Walk<'_>, lot: &LotStory) -> f64 {
    let germination = walk.profile(lot.species.as_ref()).and_then(|profile| profile.germination_fresh_pct.as_ref());
    let could = f64::from(lot.seeds_left.unwrap_or(0)) * germination.map_or(0.5, |figure| figure.value / 100.0);
    let lines = lot.species.iter().flat_map(|species| walk.open_lines(species));
    let room = all_of(lines.map(|(_, line)| line.open_positions));
    could.min(f64::from(room))
}

fn test(walk: &Walk<'_>, code: &LotCode, lot: &LotStory) -> Option<Stop> {
    let seeds_left = lot.seeds_left.filter(|left| *left >= 2 * TEST_SEEDS)?;
    let last = lot.tests.last();
    let since = last.map(|test| test.day).max(lot.collected)?;
    let days = walk.day().days_since(since);
    if days <= TEST_AFTER_DAYS {
        return None;
    }
    let why = RoundReason::LotUntested { days, tested_before: last.is_some(), seeds_left };
    let mut stop = walk
        .lot_stop(code, Task::TestLot, why)
        .risking(Stake::Seed, plants_wanted(walk, lot) * UNSEEN_LOSS, NO_LAST_DAY_DAYS)
        .taking(minutes::TEST, TEST_SOURCE)
        .due_by_interval(since.plus(TEST_AFTER_DAYS + 1), TEST_AFTER_DAYS);
    // Seed that dies before that is tested before.
    let life = walk.profile(lot.species.as_ref()).and_then(|profile| life(lot, profile));
    if let Some(dies) = life
        .map(|life| life.last_day())
        .filter(|dies| *dies > since.plus(TEST_AFTER_DAYS) && stop.until.is_some_and(|until| *dies < until))
    {
        stop = stop.until(Some(dies), UntilFor::SeedLife);
    }
    finish(&mut stop, lot);
    Some(stop)
}

fn finish(stop: &mut Stop, lot: &LotStory) {
    let figure = lot.seeds_left.map(|left| Measure::Plants(Range::exact(f64::from(left))));
    let on = lot.tests.last().map(|test| test.day).max(lot.received);
    stop.last = on.zip(figure).map(|(day, figure)| LastLook { day, figure });
    stop.entries = lot.kept.iter().map(|spell| spell.entry.clone()).collect();
    stop.entries.extend(lot.tests.last().map(|test| test.entry.clone()));
}
