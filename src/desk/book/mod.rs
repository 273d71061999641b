//! The book of a desk, and how it comes to what is not in its fold. A book of few entries is read whole; of a large one only
//! the kept stories are, and entries are looked up when something needs them. Which of the two it is, is decided here when the
//! book is opened, and nowhere else.

mod from_stories;
mod in_parts;
mod look_up;
mod read_whole;
mod source;
mod stories;

pub(super) use from_stories::FromStories;
pub(super) use in_parts::{Asked, fold_in_parts, nothing_looked_up};
pub(super) use source::{BookSource, Opened};
pub(super) use stories::KeptStories;

use super::now::Now;
use crate::journal::{Journal, JournalError};
use stories::{LastKept, keep_stories, program};

/// Books of fewer entries are read whole: that takes no longer than going on from kept stories.
pub(super) const READ_WHOLE_BELOW: u64 = 4_000;

/// Opens a book for today. `whole_below`: books of fewer entries are read whole.
pub(super) fn open(journal: &mut Journal, now: Now, whole_below: u64) -> Result<Opened, JournalError> {
    if journal.count()? < whole_below {
        return read_whole::open(journal, now);
    }
    if journal.checkpoint()?.is_some_and(|kept| kept.program != program()) {
        // Another program knew otherwise what goes along with plants.
        journal.forget_lookup()?;
    }
    journal.bring_up_lookup(&mut |_| {})?;
    if !journal.lookup_is_up()? {
        return read_whole::open(journal, now);
    }
    if let Some(mut opened) = from_stories::open(journal, now)? {
        opened.source.keep_now_and_then(journal, &opened.fold, opened.arrival);
        return Ok(opened);
    }
    let opened = read_whole::open(journal, now)?;
    if keep_stories(journal, &opened.fold, opened.arrival, &LastKept::default(), true).is_err() {
        // That they cannot be kept is no fault: all of it stays in memory, and the next start takes a little longer.
        return Ok(opened);
    }
    // From here on what is active is enough, and the rest is let go first.
    drop(opened);
    match from_stories::open(journal, now)? {
        Some(opened) => Ok(opened),
        None => read_whole::open(journal, now),
    }
}
