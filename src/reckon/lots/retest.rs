//! When to test a lot again, and why.

use super::test_read::TestRead;
use super::viability_now::{Expected, Way};
use super::{TEST_AFTER_DAYS, TEST_SEEDS};
use crate::base::Day;
use crate::reckon::stock::LotStory;
use crate::science::sampling::Differ;

/// Where the loss can be reckoned, a lot is tested again after this part of the days in which it falls to 85 % of what it began
/// with. FAO 2014, Genebank Standards (a third; from memory).
pub(crate) const PART_OF_THE_WAY: f64 = 1.0 / 3.0;
/// But no sooner than so many days. Ours: a test takes weeks.
pub(crate) const SOONEST_DAYS: i32 = 30;
/// And no later than so many. Ours: a small store is not as even as a gene bank.
pub(crate) const LATEST_DAYS: i32 = 365;

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
}

/// When a lot is tested again.
pub(super) fn retest(
    lot: &LotStory,
    tests: &[TestRead],
    expected: Option<&Expected>,
    day: Day,
) -> Result<Retest, NoRetest> {
    let seeds_left = lot.seeds_left.ok_or(NoRetest::SeedsUnknown)?;
    if seeds_left < 2 * TEST_SEEDS {
        return Err(NoRetest::FewSeeds { left: seeds_left });
    }
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
    // The day after: a test of that age still tells.
    Ok(Retest { on: since.plus(every_days + 1), every_days, why, seeds_left })
}
