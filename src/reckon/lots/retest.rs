//! When to test a lot again, and why.

use super::test_read::{SEEN_SHARE, TestRead, dead_by};
use super::viability_now::{Expected, Way};
use super::{TEST_AFTER_DAYS, TEST_SEEDS};
use crate::base::Day;
use crate::nursery::species::Profile;
use crate::reckon::seed::{SeedLife, dies_dried};
use crate::reckon::stock::LotStory;
use crate::science::sampling::Differ;

/// Where the loss can be reckoned, a lot is tested again after this part of the days in which it falls to 85 % of what it began
/// with. FAO 2014, Genebank Standards (a third; from memory).
pub(crate) const PART_OF_THE_WAY: f64 = 1.0 / 3.0;
/// But no sooner than so many days. Ours: a test takes weeks.
pub(crate) const SOONEST_DAYS: i32 = 30;
/// And no later than so many. Ours: a small store is not as even as a gene bank.
pub(crate) const LATEST_DAYS: i32 = 365;
/// A test tells after so many days where nobody knows when half of the seed is up. Ours.
pub(crate) const TEST_TAKES_DAYS: i32 = 21;

/// Why a lot is tested again.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum RetestWhy {
    /// Nobody has tested it since it was collected.
    NeverTested {
        /// The day of collection.
        since: Day,
    },
    /// The last test is old.
    TestOld {
        /// The day of the last test.
        since: Day,
    },
    /// By then it has gone a third of the way to 85 % of what it began with.
    Falling {
        /// The day of collection or of the last test.
        since: Day,
        /// Whether it was tested before.
        tested: bool,
    },
    /// The replicates of the last test are too far apart.
    ReplicatesApart {
        /// The day of that test.
        since: Day,
    },
}

/// When to test again.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Retest {
    /// The first day it is due.
    pub on: Day,
    /// Days it is counted over; 0 where the replicates are apart.
    pub every_days: i32,
    /// Why.
    pub why: RetestWhy,
    /// Seeds left to take it from.
    pub seeds_left: u32,
}

impl Retest {
    /// The day its days are counted from.
    pub fn since(&self) -> Day {
        match self.why {
            RetestWhy::NeverTested { since }
            | RetestWhy::TestOld { since }
            | RetestWhy::Falling { since, .. }
            | RetestWhy::ReplicatesApart { since } => since,
        }
    }
}

/// Why a lot is not tested again.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum NoRetest {
    /// Nobody knows how many seeds are left.
    SeedsUnknown,
    /// So few are left that a test would take half of them.
    FewSeeds {
        /// Seeds left.
        left: u32,
    },
    /// Neither a day of collection nor a test is known.
    NoDay,
    /// By the day a test tells its life is over.
    LivesTooShort {
        /// Days a test takes.
        takes_days: i32,
    },
    /// Cold killed it.
    Killed,
    /// None came up in its last test.
    TestedDead,
}

/// When a lot is tested again.
pub(super) fn retest(
    lot: &LotStory,
    tests: &[TestRead],
    (expected, life): (Option<&Expected>, Option<&SeedLife>),
    profile: Option<&Profile>,
    day: Day,
) -> Result<Retest, NoRetest> {
    if life.is_some_and(|life| life.killed_below_c.is_some()) {
        return Err(NoRetest::Killed);
    }
    if dead_by(tests).is_some() {
        return Err(NoRetest::TestedDead);
    }
    let seeds_left = lot.seeds_left.ok_or(NoRetest::SeedsUnknown)?;
    if seeds_left < 2 * TEST_SEEDS {
        return Err(NoRetest::FewSeeds { left: seeds_left });
    }
    let mut told = due(lot, tests, expected, (seeds_left, day))?;
    let takes_days = takes_days(profile);
    let by_equation = expected.is_some_and(|told| matches!(told.by, Way::Equation { .. }));
    let ends = |life: &&SeedLife| ends_before(life, profile, (told.on, takes_days), day, by_equation);
    let Some(life) = life.filter(ends) else {
        return Ok(told);
    };
    // A first test is taken while it still tells something before the seed must be sown.
    let in_time = life.last_day().plus(-life.notice_days() - takes_days);
    let first = matches!(told.why, RetestWhy::NeverTested { .. } | RetestWhy::Falling { tested: false, .. });
    if first && in_time >= told.since() && day.plus(takes_days) <= life.last_day() {
        told.on = told.on.min(in_time);
        return Ok(told);
    }
    Err(NoRetest::LivesTooShort { takes_days })
}

/// Days until a test tells something: until half of what will come is up.
fn takes_days(profile: Option<&Profile>) -> i32 {
    let half = profile.and_then(|profile| profile.emerge_half_days.as_ref());
    half.map_or(TEST_TAKES_DAYS, |figure| figure.value.ceil() as i32)
}

/// Whether a lot's life is over before a test tells. Past that life a test is worth it only where seed can be dried and the test is short
/// beside that life: else a knife tells as much the same day.
fn ends_before(
    life: &SeedLife,
    profile: Option<&Profile>,
    (due_on, takes_days): (Day, i32),
    day: Day,
    by_equation: bool,
) -> bool {
    let last_day = life.last_day();
    if day > last_day {
        let is_long = takes_days > life.notice_days() && !by_equation;
        return is_long || profile.is_some_and(dies_dried);
    }
    due_on.plus(takes_days) > last_day
}

/// When a test is due by its age alone.
fn due(
    lot: &LotStory,
    tests: &[TestRead],
    expected: Option<&Expected>,
    (seeds_left, day): (u32, Day),
) -> Result<Retest, NoRetest> {
    let last = tests.last();
    let since = last.map(|test| test.day).max(lot.collected).ok_or(NoRetest::NoDay)?;
    if let Some(apart) = last.filter(|test| test.differ() == Differ::Apart) {
        let why = RetestWhy::ReplicatesApart { since: apart.day };
        return Ok(Retest { on: apart.day, every_days: 0, why, seeds_left });
    }
    let falls = expected.filter(|told| matches!(told.by, Way::Equation { .. }));
    let (every_days, why) = match falls {
        Some(told) => {
            let all = f64::from(day.days_since(told.start.day)) + told.to_old.likely;
            let every = (all * PART_OF_THE_WAY).round().clamp(f64::from(SOONEST_DAYS), f64::from(LATEST_DAYS)) as i32;
            (every, RetestWhy::Falling { since, tested: last.is_some() })
        }
        None if last.is_some() => (TEST_AFTER_DAYS, RetestWhy::TestOld { since }),
        None => (TEST_AFTER_DAYS, RetestWhy::NeverTested { since }),
    };
    // The day after: a test of that age still tells. One that ended too early to tell is made again when it would have been whole.
    let on = since.plus(every_days + 1);
    let whole_on = last.filter(|test| test.seen < SEEN_SHARE && test.day == since).and_then(|test| test.whole_on);
    Ok(Retest { on: whole_on.map_or(on, |whole| on.min(whole.plus(1))), every_days, why, seeds_left })
}
