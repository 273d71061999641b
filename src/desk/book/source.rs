//! What a desk asks of its book, whichever way that is held.

use std::borrow::Cow;
use std::collections::BTreeSet;
use std::sync::Arc;

use crate::journal::{Journal, JournalError};
use crate::nursery::entry::Entry;
use crate::nursery::entry::subject::Subject;
use crate::nursery::envelope::Draft;
use crate::reckon::picture::Doubt;
use crate::reckon::{Fold, FromThen, View};

/// Where a desk finds what its fold of today does not hold.
pub(in crate::desk) trait BookSource: Send {
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
    fn as_of_then(&self, journal: &Journal, fold: &Fold, view: View) -> Result<FromThen, JournalError>;

    /// The same for who does not ask of the book as it is now: a large one is not held twice.
    fn as_it_was(&self, journal: &Journal, fold: &Fold, view: View) -> Result<FromThen, JournalError> {
        self.as_of_then(journal, fold, view)
    }

    /// The book as it will be on a day to come.
    fn to_come(&self, journal: &Journal, fold: &Fold, view: View) -> Result<Fold, JournalError>;
}

/// A book that was opened: its fold of today, the last entry in it by arrival, and where the rest of it is found.
pub(in crate::desk) struct Opened {
    pub fold: Fold,
    pub arrival: i64,
    pub source: Box<dyn BookSource>,
}
