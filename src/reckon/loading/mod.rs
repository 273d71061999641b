//! Sending out: which trays to which beds, what was put on the loading list, and what becomes ready in the coming weeks.
//! Shown on the way out; verdicts are made elsewhere.

mod coming;
mod day_plan;
mod list;
mod offers;
#[cfg(test)]
mod tests;

pub(crate) use coming::COMING_WEEKS;
pub(crate) use coming::{Becoming, Coming, coming};
pub(crate) use day_plan::{Planned, day_plan};
pub(crate) use list::{LoadLine, LoadWarning, by_bed, left_of, left_to_load, line_warnings, warnings};
pub(crate) use offers::{Offer, offers};
