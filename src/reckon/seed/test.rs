//! What a germination test says, and when the next one is due.

use crate::base::{Day, Range};
use crate::nursery::species::Profile;
use crate::reckon::lots::lot_outlook;
use crate::reckon::stock::{LotStory, LotTest};
use crate::science::sampling::wilson;

/// Level of the interval around a test's share. The usual one.
pub(crate) const TEST_LEVEL: f64 = 0.95;

/// Seeds laid out and germinated in all replicates of a test.
pub(crate) fn replicate_counts(test: &LotTest) -> (u32, u32) {
    test.replicates.iter().fold((0, 0), |(laid, up), (seeds, germinated)| {
        (laid.saturating_add(*seeds), u32::saturating_add(up, *germinated))
    })
}

/// The share that germinated in a test, with its interval (Wilson 1927); none where nothing was laid out or more
/// germinated than was laid out.
pub fn germinated(test: &LotTest) -> Option<Range> {
    let (laid, up) = replicate_counts(test);
    wilson(up, laid, TEST_LEVEL).ok()
}

/// The day from which a test is due, as the round has it; none where too little seed is left to give some to a test, or
/// nobody knows how much.
pub(crate) fn test_due_from(lot: &LotStory, profile: Option<&Profile>, day: Day) -> Option<Day> {
    lot_outlook(lot, profile, day).retest.ok().map(|retest| retest.on)
}
