//! What a verdict waits for: what blocks, what of it ends by itself, and when.

use std::cmp::Reverse;

use crate::base::Day;
use crate::reckon::picture::{Criterion, Rule};

/// How long what holds back is likely to last, the longest first.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
enum Lasts {
    /// Nobody can tell the end: plants, light or ground have to become other than they are.
    Open,
    /// Until a day.
    Until(Reverse<Day>),
    /// Until it rains.
    Rain,
    /// Until somebody does a day's work, or looks.
    Work,
}

fn lasts(criterion: &Criterion) -> Lasts {
    let a_days_work = [Rule::Cleared, Rule::Holes, Rule::Weeded, Rule::Mulched, Rule::Fenced];
    match criterion.expected {
        Some(day) => Lasts::Until(Reverse(day)),
        None if criterion.met().is_none() || a_days_work.contains(&criterion.rule()) => Lasts::Work,
        None if criterion.rule() == Rule::Water => Lasts::Rain,
        None => Lasts::Open,
    }
}

/// The questions that hold things back, what lasts longest first: the season before the weeding.
pub(crate) fn waits_for(criteria: &[Criterion]) -> Vec<&Criterion> {
    let mut blocking: Vec<&Criterion> = criteria.iter().filter(|criterion| criterion.blocks).collect();
    blocking.sort_by_key(|criterion| lasts(criterion));
    blocking
}

/// The day on which the last of the questions that block is expected to be met; none where one has no such day, or
/// nothing blocks.
pub(crate) fn lasts_until(criteria: &[Criterion]) -> Option<Day> {
    let mut latest = None;
    for criterion in criteria.iter().filter(|criterion| criterion.blocks) {
        latest = latest.max(Some(criterion.expected?));
    }
    latest
}
