//! Seed: lots to test, and lots whose life ends.

use super::deadline::UntilFor;
use super::intervals::*;
use super::stop::{LastLook, RoundReason, Stake, Stop, Task};
use super::walk::{Walk, all_of};
use crate::base::{LotCode, Range};
use crate::reckon::lots::{LotOutlook, RetestWhy, lot_outlook};
use crate::reckon::picture::Measure;
use crate::reckon::seed::{SeedLife, is_held};
use crate::reckon::stock::LotStory;

/// Tasks of the seed store.
pub(super) fn seed(walk: &Walk<'_>) -> Vec<Stop> {
    let day = walk.day();
    let mut stops = Vec::new();
    for (code, lot) in &walk.picture.lots {
        if is_held(lot, day) || lot.received.is_none() || lot.seeds_left == Some(0) {
            continue;
        }
        let outlook = lot_outlook(lot, walk.profile(lot.species.as_ref()), day);
        let life = outlook.life.as_ref().ok();
        if life.is_some_and(|life| day > life.dead_on()) {
            continue;
        }
        let ending = life.and_then(|life| life_ends(walk, code, lot, life));
        // Seed that must go into the ground now is sown, not tested.
        stops.extend(ending.or_else(|| test(walk, code, lot, &outlook)));
    }
    stops
}

fn life_ends(walk: &Walk<'_>, code: &LotCode, lot: &LotStory, life: &SeedLife) -> Option<Stop> {
    let day = walk.day();
    let days_left = life.days_left(day);
    if !life.is_ending(day) {
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
        .due(life.last_day().plus(-life.notice_days()), life.notice_days())
        .until(Some(life.last_day()), UntilFor::SeedLife);
    finish(&mut stop, lot);
    Some(stop)
}

/// Plants the lot could still give, at most as many as the beds have room for after what stands and is sown: seed beyond that is no loss.
fn plants_wanted(walk: &Walk<'_>, lot: &LotStory) -> f64 {
    let germination = walk.profile(lot.species.as_ref()).and_then(|profile| profile.germination_fresh_pct.as_ref());
    let could = f64::from(lot.seeds_left.unwrap_or(0)) * germination.map_or(0.5, |figure| figure.value / 100.0);
    let lines = lot.species.iter().flat_map(|species| walk.open_lines(species));
    let room = all_of(lines.map(|(_, line)| line.open_positions));
    let of_species = walk.picture.trays.values().filter(|tray| tray.species == lot.species);
    let coming: f64 = of_species
        .map(|tray| {
            let to_come = walk.told(tray).map_or(0.0, |told| told.in_the_end.likely - f64::from(told.emerged));
            tray.plantable.likely + to_come.max(0.0)
        })
        .sum();
    could.min((f64::from(room) - coming).max(0.0))
}

fn test(walk: &Walk<'_>, code: &LotCode, lot: &LotStory, outlook: &LotOutlook) -> Option<Stop> {
    let retest = outlook.retest.ok().filter(|retest| walk.day() >= retest.on)?;
    let (seeds_left, since) = (retest.seeds_left, retest.since());
    let days = walk.day().days_since(since);
    let why = match retest.why {
        RetestWhy::NeverTested { .. } | RetestWhy::Falling { tested: false, .. } => {
            RoundReason::LotUntested { days, tested_before: false, seeds_left }
        }
        RetestWhy::TestOld { .. } | RetestWhy::Falling { tested: true, .. } => {
            RoundReason::LotUntested { days, tested_before: true, seeds_left }
        }
        RetestWhy::ReplicatesApart { .. } => RoundReason::ReplicatesApart { days },
    };
    let mut stop = walk
        .lot_stop(code, Task::TestLot, why)
        .risking(Stake::Seed, plants_wanted(walk, lot) * UNSEEN_LOSS, NO_LAST_DAY_DAYS)
        .taking(minutes::TEST, TEST_SOURCE)
        .due_by_interval(retest.on, TEST_AFTER_DAYS);
    // Seed that dies before that is tested before.
    let dies = outlook.life.as_ref().ok().map(SeedLife::last_day);
    if let Some(dies) =
        dies.filter(|dies| *dies > since.plus(retest.every_days) && stop.until.is_some_and(|until| *dies < until))
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
