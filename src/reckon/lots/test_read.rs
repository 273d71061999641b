//! What a germination test says, and whether its replicates agree.

use super::TEST_LEVEL;
use crate::base::{Day, EntryId, Range};
use crate::reckon::stock::LotTest;
use crate::science::sampling::{Agreement, Differ, agreement, wilson};

/// A test, read.
#[derive(Clone, PartialEq, Debug)]
pub struct TestRead {
    /// The day it was written.
    pub day: Day,
    /// The day it was laid out.
    pub laid_out: Day,
    /// Seeds laid out.
    pub seeds: u32,
    /// Seeds that germinated.
    pub germinated: u32,
    /// The share, with its interval at 95 % (Wilson).
    pub share: Range,
    /// Germinated in each replicate.
    pub counts: Vec<u32>,
    /// What the replicates say of each other; none for one, or for replicates of several sizes.
    pub replicates: Option<Agreement>,
    /// Its entry.
    pub entry: EntryId,
}

impl TestRead {
    /// Whether the replicates agree; unknown where they cannot be compared or are too few to tell.
    pub fn differ(&self) -> Differ {
        self.replicates.map_or(Differ::Unknown, |told| told.differ())
    }
}

/// Reads a test; none where nothing was laid out.
pub(super) fn read(test: &LotTest) -> Option<TestRead> {
    let seeds = test.replicates.iter().fold(0u32, |sum, (laid, _)| sum.saturating_add(*laid));
    let germinated = test.replicates.iter().fold(0u32, |sum, (laid, up)| sum.saturating_add(*up.min(laid)));
    let share = wilson(germinated, seeds, TEST_LEVEL).ok()?;
    let size = test.replicates.first().map_or(0, |(laid, _)| *laid);
    let even = test.replicates.iter().all(|(laid, _)| *laid == size);
    let up: Vec<u32> = test.replicates.iter().map(|(laid, up)| *up.min(laid)).collect();
    let replicates = if even { agreement(&up, size).ok() } else { None };
    let days = i32::try_from(test.days).unwrap_or(i32::MAX);
    let laid_out = test.day.plus(-days);
    Some(TestRead {
        day: test.day,
        laid_out,
        seeds,
        germinated,
        share,
        counts: up,
        replicates,
        entry: test.entry.clone(),
    })
}
