//! What the words of a whole line make of a reading: that it was not done, is over, was corrected, says its contrary.

mod denied;
mod otherwise;
mod turned;
mod whole_line;

pub(super) use denied::without_what_is_denied;
pub(super) use otherwise::as_said;
pub(super) use turned::said_plainly;
pub(super) use whole_line::{as_mostly_said, of_the_whole_line, without_articles};

use super::{EntryDraft, Offer, Reading, Why};
use super::{asides, doubts, frames, lexicon, named, numbers, words};
