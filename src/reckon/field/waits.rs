//! What a verdict waits for: what blocks, what of it ends by itself, and when.

use crate::base::Day;
use crate::reckon::picture::Criterion;

/// The questions that hold things back: those nobody can tell the end of first.
pub(crate) fn waits_for(criteria: &[Criterion]) -> Vec<&Criterion> {
    let mut blocking: Vec<&Criterion> = criteria.iter().filter(|criterion| criterion.blocks).collect();
    blocking.sort_by_key(|criterion| criterion.expected.is_some());
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
