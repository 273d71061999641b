//! The book of a desk, and how it comes to what is not in its fold. A book of few entries is read whole; of a large one only
//! the kept stories are, and entries are looked up when something needs them. Which of the two it is, is decided here when the
//! book is opened, and nowhere else.

mod from_stories;
mod in_parts;
mod look_up;
mod read_whole;
mod stories;

pub(super) use from_stories::FromStories;
pub(super) use in_parts::{Asked, fold_in_parts, nothing_looked_up};
pub(super) use stories::kept_stories_are_true;

use std::borrow::Cow;
use std::collections::BTreeSet;
use std::sync::Arc;

use super::Now;
use crate::journal::{Journal, JournalError};
use crate::nursery::entry::Entry;
use crate::nursery::entry::subject::Subject;
use crate::nursery::envelope::Draft;
use crate::reckon::picture::Doubt;
use crate::reckon::{Fold, FromThen, View};
use stories::{LastKept, keep_stories};

/// Books of fewer entries are read whole: that takes no longer than going on from kept stories.
pub(super) const READ_WHOLE_BELOW: u64 = 4_000;

/// Where a desk finds what its fold of today does not hold.
pub(super) trait BookSource: Send {
    /// Brings into a fold what has to be there before entries are added or taken out.
    fn look_up_for(&self, journal: &Journal, fold: &mut Fold, entries: &[Arc<Entry>]) -> Result<(), JournalError>;

    /// Brings every entry about some things into a fold.
    fn look_up_about(&self, journal: &Journal, fold: &mut Fold, about: &BTreeSet<Subject>) -> Result<(), JournalError>;

    /// Brings what drafts speak of into a fold, however it is spelled.
    fn look_up_named(
        &self,
        journal: &Journal,
        fold: &mut Fold,
        drafts: &mut dyn Iterator<Item = Cow<'_, Draft>>,
    ) -> Result<(), JournalError>;

    /// The trays, lots and beds that are called like this, however it is spelled.
    fn called(&self, journal: &Journal, fold: &Fold, name: &str) -> Result<BTreeSet<Subject>, JournalError>;

    /// The notes that name something.
    fn notes_about(&self, journal: &Journal, fold: &Fold, name: &str) -> Result<Vec<Arc<Entry>>, JournalError>;

    /// Whether new entries change so much that the book has to be opened again.
    fn must_open_again(&self, journal: &Journal, new: &[Arc<Entry>]) -> bool;

    /// Keeps the stories as they are, where much came since they were kept last.
    fn keep_now_and_then(&mut self, journal: &mut Journal, fold: &Fold, arrival: i64);

    /// Doubts of the book that the fold does not hold.
    fn other_doubts(&self, journal: &Journal, fold: &Fold) -> Result<Vec<Doubt>, JournalError>;

    /// The book as it was in a view of a day that is not to come, and what came after.
    fn from_then(&self, journal: &Journal, fold: &Fold, view: View) -> Result<FromThen, JournalError>;

    /// The book as it will be on a day to come.
    fn to_come(&self, journal: &Journal, fold: &Fold, view: View) -> Result<Fold, JournalError>;
}

/// A book that was opened: its fold of today, the last entry in it by arrival, and where the rest of it is found.
pub(super) struct Opened {
    pub fold: Fold,
    pub arrival: i64,
    pub source: Box<dyn BookSource>,
}

fn arcs(entries: Vec<Entry>) -> Vec<Arc<Entry>> {
    entries.into_iter().map(Arc::new).collect()
}

/// Opens a book for today. `whole_below`: books of fewer entries are read whole.
pub(super) fn open(journal: &mut Journal, now: Now, whole_below: u64) -> Result<Opened, JournalError> {
    if journal.count()? < whole_below {
        return read_whole::open(journal, now);
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
    // That they cannot be kept is no fault: the next start takes a little longer.
    let _ = keep_stories(journal, &opened.fold, opened.arrival, &LastKept::default(), true);
    // From here on what is active is enough; where it could not be kept, all of it stays in memory.
    Ok(from_stories::open(journal, now)?.unwrap_or(opened))
}
