//! What a germination test says, and whether its replicates agree.

use super::{TEST_LEVEL, TEST_SEEDS};
use crate::base::{Day, EntryId, Range};
use crate::nursery::species::Profile;
use crate::reckon::seed::share_up;
use crate::reckon::stock::{LotStory, LotTest};
use crate::science::sampling::{Agreement, Differ, agreement, wilson};

/// From this part of what will come on a test is the beginning of what is reckoned; before that it tells only "at least". Ours.
pub(crate) const SEEN_SHARE: f64 = 0.5;

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
    /// The part of what will come that is up by the day it ended, by the species' days; all of it where it is whole.
    pub seen: f64,
    /// The day until which it would have to be counted; none where it is whole.
    pub whole_on: Option<Day>,
    /// Its entry.
    pub entry: EntryId,
}

impl TestRead {
    /// Whether the replicates agree; unknown where they cannot be compared or are too few to tell.
    pub fn differ(&self) -> Differ {
        self.replicates.map_or(Differ::Unknown, |told| told.differ())
    }
}

/// Days after which a test is whole: by then the last of the species come up. Ours: rules of testing name a last count, and few of
/// these species stand in them.
pub(crate) fn whole_after_days(profile: &Profile) -> Option<i32> {
    profile.emerge_last_days.as_ref().map(|figure| figure.value.ceil().clamp(0.0, 40_000.0) as i32)
}

/// The part of what will come that is up after so many days of a test; all of it where no day of the species says otherwise.
fn seen_after(days: u32, profile: Option<&Profile>) -> f64 {
    let last = profile.and_then(whole_after_days).map(f64::from).filter(|last| f64::from(days) < *last);
    let (Some(last), Some(profile)) = (last, profile) else { return 1.0 };
    let half = profile.emerge_half_days.as_ref().map_or(last / 2.0, |figure| figure.value);
    share_up(f64::from(days), half, last).clamp(0.0, 1.0)
}

/// The share a test points to. What ended early is put up by what was still to come, at most to that of fresh seed; before half of it
/// could be up it lowers nothing.
fn pointed_to(share: f64, seen: f64, profile: Option<&Profile>) -> f64 {
    let fresh = profile.and_then(|profile| profile.germination_fresh_pct.as_ref()).map(|figure| figure.value / 100.0);
    let most = fresh.unwrap_or(share).max(share);
    if seen < SEEN_SHARE { most } else { (share / seen).min(most) }
}

/// What a test counts for where seed is sown: the share, and as of how many seeds; of one that ended early as many as were due.
pub(crate) fn counts_as(test: &LotTest, profile: &Profile) -> Option<(f64, f64)> {
    let (laid, up) = counted(test);
    let seen = seen_after(test.days, Some(profile));
    let share = f64::from(up) / f64::from(laid);
    (laid > 0).then(|| (pointed_to(share, seen, Some(profile)), f64::from(laid) * seen))
}

/// The test by which a lot is dead: a whole one of which none came up, and none came up in a later one.
pub(super) fn dead_by(tests: &[TestRead]) -> Option<&TestRead> {
    let last = tests.iter().rev().find(|test| test.whole_on.is_none() || test.germinated > 0)?;
    (last.germinated == 0 && last.seeds >= TEST_SEEDS).then_some(last)
}

/// Whether a lot is dead by its last test.
pub(crate) fn tested_dead(lot: &LotStory, profile: Option<&Profile>) -> bool {
    let tests: Vec<TestRead> = lot.tests.iter().filter_map(|test| read(test, profile)).collect();
    dead_by(&tests).is_some()
}

fn counted(test: &LotTest) -> (u32, u32) {
    test.replicates.iter().fold((0u32, 0u32), |(laid, up), (seeds, came)| {
        (laid.saturating_add(*seeds), up.saturating_add(*came.min(seeds)))
    })
}

/// Reads a test; none where nothing was laid out.
pub(super) fn read(test: &LotTest, profile: Option<&Profile>) -> Option<TestRead> {
    let (seeds, germinated) = counted(test);
    let came = wilson(germinated, seeds, TEST_LEVEL).ok()?;
    let size = test.replicates.first().map_or(0, |(laid, _)| *laid);
    let even = test.replicates.iter().all(|(laid, _)| *laid == size);
    let up: Vec<u32> = test.replicates.iter().map(|(laid, up)| *up.min(laid)).collect();
    let replicates = if even { agreement(&up, size).ok() } else { None };
    let days = i32::try_from(test.days).unwrap_or(i32::MAX);
    let laid_out = test.day.plus(-days);
    let whole = profile.and_then(whole_after_days).filter(|whole| days < *whole && germinated < seeds);
    let seen = if whole.is_some() { seen_after(test.days, profile) } else { 1.0 };
    let high = if seen < SEEN_SHARE { 1.0 } else { (came.high / seen).min(1.0) };
    let likely = if whole.is_some() { pointed_to(came.likely, seen, profile).min(high) } else { came.likely };
    Some(TestRead {
        day: test.day,
        laid_out,
        seeds,
        germinated,
        share: Range { low: came.low, likely, high },
        counts: up,
        replicates,
        seen,
        whole_on: whole.map(|whole| laid_out.plus(whole)),
        entry: test.entry.clone(),
    })
}
