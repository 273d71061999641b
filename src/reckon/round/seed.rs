//! Seed: lots to test, and lots whose life ends.

use super::deadline::UntilFor;
use super::intervals::*;
use super::stop::{LastLook, RoundReason, Stake, Stop, Task};
use super::walk::Walk;
use crate::base::{Day, LotCode, Range};
use crate::reckon::lots::{LotOutlook, NoRetest, RetestWhy, TestRead, lot_outlook};
use crate::reckon::picture::Measure;
use crate::reckon::seed::{LIFE_NOTICE_DAYS, SeedLife, dies_dried, is_held};
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
        if let Some(test) = outlook.dead_by_test() {
            let asked = day.days_since(test.day) <= DEAD_LOT_ASKED_DAYS;
            stops.extend(asked.then(|| tested_dead(walk, code, lot, test)));
            continue;
        }
        if let Some(life) = life.filter(|life| day > life.dead_on()) {
            // What lies there longer is known to be dead; whoever would sow it is asked.
            let asked = day.days_since(life.dead_on()) <= DEAD_LOT_ASKED_DAYS && !came_up_since(lot, life.last_day());
            let gone = outlook.is_gone(day);
            stops.extend((asked && gone).then(|| dead(walk, code, lot, life)));
            stops.extend((!gone).then(|| past(walk, code, lot, &outlook)).flatten());
            continue;
        }
        let ending = life.and_then(|life| life_ends(walk, code, lot, life));
        // Seed that must go into the ground now is sown, not tested.
        stops.extend(ending.or_else(|| test(walk, code, lot, &outlook)).or_else(|| past(walk, code, lot, &outlook)));
    }
    stops
}

/// Whether a test that ended after a day found some alive.
fn came_up_since(lot: &LotStory, day: Day) -> bool {
    lot.tests.iter().any(|test| test.day > day && test.replicates.iter().any(|(_, up)| *up > 0))
}

/// Seed that nobody should sow by mistake: a knife tells, and what is dead is thrown out.
fn dead(walk: &Walk<'_>, code: &LotCode, lot: &LotStory, life: &SeedLife) -> Stop {
    let since = if life.killed_below_c.is_some() { life.from } else { life.from.plus(life.longest_days) };
    let why = RoundReason::LotDead { since, killed_below_c: life.killed_below_c };
    let mut stop = walk
        .lot_stop(code, Task::ThrowOutLot, why)
        .taking(minutes::LOOK, life.source.clone())
        .due_by_interval(life.dead_on().plus(1), TEST_AFTER_DAYS);
    finish(&mut stop, lot);
    stop
}

/// Seed of which none came up in a whole test.
fn tested_dead(walk: &Walk<'_>, code: &LotCode, lot: &LotStory, test: &TestRead) -> Stop {
    let why = RoundReason::LotTestedDead { on: test.day, seeds: test.seeds };
    let mut stop = walk
        .lot_stop(code, Task::ThrowOutLot, why)
        .taking(minutes::LOOK, TEST_SOURCE)
        .due_by_interval(test.day, TEST_AFTER_DAYS);
    finish(&mut stop, lot);
    stop
}

/// Seed past its stated life that is worth no test: a knife tells the same day.
fn past(walk: &Walk<'_>, code: &LotCode, lot: &LotStory, outlook: &LotOutlook) -> Option<Stop> {
    let day = walk.day();
    let dries = walk.profile(lot.species.as_ref()).is_some_and(dies_dried);
    let too_late = matches!(outlook.retest, Err(NoRetest::LivesTooShort { .. }));
    let life = outlook.life.as_ref().ok().filter(|_| (dries || too_late) && outlook.is_past(day))?;
    let wanted = plants_wanted(walk, lot);
    // Where what stands is enough nothing is sown.
    if walk.still_short(lot.species.as_ref()).is_some_and(|short| short < 1.0) {
        return None;
    }
    let alive = outlook.viability.as_ref().map_or(0.0, |told| (told.today.low + told.today.high) / 2.0);
    let why = RoundReason::LotPast { since: life.last_day(), seeds_left: lot.seeds_left, counted: lot.counted };
    let mut stop = walk
        .lot_stop(code, Task::SowLot, why)
        .risking(Stake::Seed, wanted * alive, (life.dead_on().days_since(day) + 1).max(1))
        .taking(minutes::SEED, life.source.clone())
        .due(life.last_day().plus(1), LIFE_NOTICE_DAYS)
        .until(Some(day), UntilFor::Today);
    finish(&mut stop, lot);
    Some(stop)
}

fn life_ends(walk: &Walk<'_>, code: &LotCode, lot: &LotStory, life: &SeedLife) -> Option<Stop> {
    let day = walk.day();
    let days_left = life.days_left(day);
    let enough = walk.still_short(lot.species.as_ref()).is_some_and(|short| short < 1.0);
    if !life.is_ending(day) || enough {
        return None;
    }
    let why = RoundReason::LifeEnds {
        last_day: life.last_day(),
        days_left,
        life_days: life.days,
        kept: life.kept,
        seeds_left: lot.seeds_left,
        counted: lot.counted,
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

/// Plants the lot could still give, at most as many as are still to be raised: seed beyond that is no loss.
pub(super) fn plants_wanted(walk: &Walk<'_>, lot: &LotStory) -> f64 {
    let germination = walk.profile(lot.species.as_ref()).and_then(|profile| profile.germination_fresh_pct.as_ref());
    let could = f64::from(lot.seeds_left.unwrap_or(0)) * germination.map_or(0.5, |figure| figure.value / 100.0);
    could.min(walk.still_short(lot.species.as_ref()).unwrap_or(0.0))
}

fn test(walk: &Walk<'_>, code: &LotCode, lot: &LotStory, outlook: &LotOutlook) -> Option<Stop> {
    let retest = outlook.retest.ok().filter(|retest| walk.day() >= retest.on)?;
    let (seeds_left, since) = (retest.seeds_left, retest.since());
    let days = walk.day().days_since(since);
    let why = match retest.why {
        RetestWhy::NeverTested { .. } | RetestWhy::Falling { tested: false, .. } => {
            RoundReason::LotUntested { days, tested_before: false, seeds_left, counted: lot.counted }
        }
        RetestWhy::TestOld { .. } | RetestWhy::Falling { tested: true, .. } => {
            RoundReason::LotUntested { days, tested_before: true, seeds_left, counted: lot.counted }
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
    // The reason says about how many a weight makes.
    let figure = lot.seeds_left.filter(|_| lot.counted).map(|left| Measure::Plants(Range::exact(f64::from(left))));
    let on = lot.tests.last().map(|test| test.day).max(lot.received);
    stop.last = on.zip(figure).map(|(day, figure)| LastLook { day, figure });
    stop.entries = lot.kept.iter().map(|spell| spell.entry.clone()).collect();
    stop.entries.extend(lot.tests.last().map(|test| test.entry.clone()));
}
