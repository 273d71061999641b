//! What the words of a whole line make of a reading: that it was not done, is over, was corrected, says its contrary.

mod denied;
mod looked;
mod otherwise;
mod set_aside;
mod turned;
mod whole_line;

pub(super) use denied::without_what_is_denied;
pub(super) use looked::as_looked;
pub(super) use otherwise::as_said;
pub(super) use set_aside::{heights_and_collars, set_aside};
pub(super) use turned::said_plainly;
pub(super) use whole_line::{as_mostly_said, of_the_whole_line, without_articles};

use super::{EntryDraft, Offer, Reading, Why, written};
use named::NameOf;

/// The field and the name of the first of these that a note can be about.
fn noted_about(names: &[(NameOf, String)]) -> Option<(&'static str, String)> {
    let can_be = |of: &NameOf| !matches!(of, NameOf::Container | NameOf::Field);
    names.iter().find(|(of, _)| can_be(of)).map(|(of, name)| (of.field(), name.clone()))
}
use super::{asides, days, doubts, frames, lexicon, named, numbers, words};
