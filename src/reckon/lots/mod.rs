//! What a seed lot is still worth: how much of it lives, for how long yet, and whether to test it again.
//!
//! Pure: from the lot's own story, the species' profile and the published constants of its seed.

mod life;
mod retest;
mod test_read;
#[cfg(test)]
mod tests;
mod viability_now;

pub use life::NoLife;
pub use retest::{NoRetest, Retest, RetestWhy};
pub use test_read::TestRead;
pub(crate) use test_read::{SEEN_SHARE, counts_as, tested_dead, whole_after_days};
pub use viability_now::{Expected, NoViability, Start, StartFrom, Way};
pub(crate) use viability_now::{HALF_SHARE, OLD_SHARE};

use crate::base::Day;
use crate::nursery::species::Profile;
use crate::reckon::seed::SeedLife;
use crate::reckon::stock::LotStory;

/// Seeds in a small nursery's test: 2 x 25. Common practice.
pub(crate) const TEST_SEEDS: u32 = 50;
/// Seed without constants is tested again after so many days. Ours.
pub(crate) const TEST_AFTER_DAYS: i32 = 60;
/// Confidence of the interval of a test.
pub(crate) const TEST_LEVEL: f64 = 0.95;

/// What a lot is still worth on a day.
#[derive(Clone, PartialEq, Debug)]
pub struct LotOutlook {
    /// How long it lives the way it is kept.
    pub life: Result<SeedLife, NoLife>,
    /// The share that is expected to live, and for how long yet.
    pub viability: Result<Expected, NoViability>,
    /// Its tests, oldest first.
    pub tests: Vec<TestRead>,
    /// When to test it again.
    pub retest: Result<Retest, NoRetest>,
}

/// Of so small a share nothing is expected to come up. Ours.
const HARDLY_ANY: f64 = 0.05;

impl LotOutlook {
    /// The whole test in which none came up, where none came up since.
    pub(crate) fn dead_by_test(&self) -> Option<&TestRead> {
        test_read::dead_by(&self.tests)
    }

    /// Whether so little of it lives that nothing to speak of comes up.
    pub(crate) fn hardly_lives(&self) -> bool {
        self.viability.as_ref().is_ok_and(|told| told.today.likely <= HARDLY_ANY)
    }

    /// Whether a test would come too late, and none was laid out since its stated life ended.
    pub(crate) fn is_too_late_to_test(&self) -> bool {
        let last_day = self.life.as_ref().ok().map(SeedLife::last_day);
        let since = |last_day: Day| self.tests.iter().any(|test| test.laid_out > last_day && test.germinated > 0);
        matches!(self.retest, Err(NoRetest::LivesTooShort { .. })) && !last_day.is_some_and(since)
    }

    /// Whether it is dead by all that is known: by its test, by its stated life, or by cold.
    pub(crate) fn is_gone(&self, day: Day) -> bool {
        self.is_dead(day) || self.life.as_ref().is_ok_and(|life| life.killed_below_c.is_some())
    }

    /// Whether its stated life is over and nothing better is known.
    pub(crate) fn is_past(&self, day: Day) -> bool {
        let by_equation = self.viability.as_ref().is_ok_and(|told| matches!(told.by, Way::Equation { .. }));
        self.life.as_ref().is_ok_and(|life| life.days_left(day) < 0) && !by_equation
    }

    /// Whether nothing of it is expected to live: by its test, or by its stated life where no test and no equation says otherwise.
    pub(crate) fn is_dead(&self, day: Day) -> bool {
        if self.dead_by_test().is_some() {
            return true;
        }
        let told = self.viability.as_ref().ok();
        // Of a life twice as long half is gone then, and all of it some time later.
        let known_better =
            told.is_some_and(|told| matches!(told.by, Way::Equation { .. }) || told.today.high > HARDLY_ANY);
        let outlived = matches!(self.viability, Err(NoViability::OutlivedItsLife));
        self.life.as_ref().is_ok_and(|life| day > life.dead_on()) && !known_better && !outlived
    }
}

/// What a lot is still worth on a day.
pub fn lot_outlook(lot: &LotStory, profile: Option<&Profile>, day: Day) -> LotOutlook {
    let life = life::known_life(lot, profile);
    let viability = viability_now::expected(lot, profile, life.as_ref().ok(), day);
    let tests: Vec<TestRead> = lot.tests.iter().filter_map(|test| test_read::read(test, profile)).collect();
    let retest = retest::retest(lot, &tests, (viability.as_ref().ok(), life.as_ref().ok()), profile, day);
    LotOutlook { life, viability, tests, retest }
}
