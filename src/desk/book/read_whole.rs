//! The book that is read whole: every entry is in the fold, so nothing is ever looked up.

use std::borrow::Cow;
use std::collections::BTreeSet;
use std::sync::Arc;

use super::source::{BookSource, Opened};
use crate::base::text::folded;
use crate::desk::now::Now;
use crate::journal::{Journal, JournalError};
use crate::nursery::entry::subject::Subject;
use crate::nursery::entry::{BookEntry, Entry, What};
use crate::nursery::envelope::Draft;
use crate::reckon::picture::Doubt;
use crate::reckon::{Fold, FromThen, View};

/// A book of which everything is in memory.
pub(super) struct ReadWhole;

/// Reads and folds every entry.
pub(super) fn open(journal: &Journal, now: Now) -> Result<Opened, JournalError> {
    let (entries, arrival) = journal.entries_after(0)?;
    let view = View { day: now.today, known: None };
    let fold = Fold::new(view, now.today, entries);
    Ok(Opened { fold, arrival, source: Box::new(ReadWhole) })
}

impl BookSource for ReadWhole {
    fn look_up_for(&self, _: &Journal, _: &mut Fold, _: &[Arc<Entry>]) -> Result<(), JournalError> {
        Ok(())
    }

    fn look_up_about(&self, _: &Journal, _: &mut Fold, _: &BTreeSet<Subject>) -> Result<(), JournalError> {
        Ok(())
    }

    fn look_up_named(
        &self,
        _: &Journal,
        _: &mut Fold,
        _: &mut dyn Iterator<Item = Cow<'_, Draft>>,
    ) -> Result<(), JournalError> {
        Ok(())
    }

    fn called(&self, _: &Journal, fold: &Fold, name: &str) -> Result<BTreeSet<Subject>, JournalError> {
        let wanted = folded(name);
        let trays = fold.trays().keys().filter(|code| folded(code.as_str()) == wanted).cloned().map(Subject::Tray);
        let lots = fold.lots().keys().filter(|code| folded(code.as_str()) == wanted).cloned().map(Subject::Lot);
        let beds = fold.beds().keys().filter(|name| folded(name.as_str()) == wanted).cloned().map(Subject::Bed);
        Ok(trays.chain(lots).chain(beds).collect())
    }

    fn notes_about(&self, _: &Journal, fold: &Fold, name: &str) -> Result<Vec<Arc<Entry>>, JournalError> {
        let is_about = |entry: &Entry| match &entry.what {
            What::Book(BookEntry::Noted(noted)) => noted.about.as_ref().is_some_and(|about| *about.0 == *name),
            What::Book(BookEntry::Weather(_) | BookEntry::Settled(_) | BookEntry::Withdrawn(_))
            | What::Site(_)
            | What::Seed(_)
            | What::Tray(_)
            | What::Ground(_)
            | What::Foreign { .. } => false,
        };
        Ok(fold.ledger().entries().filter(|entry| is_about(entry)).cloned().collect())
    }

    fn must_open_again(&self, _: &Journal, _: &[Arc<Entry>]) -> bool {
        false
    }

    fn keep_now_and_then(&mut self, _: &mut Journal, _: &Fold, _: i64) {}

    fn other_doubts(&self, _: &Journal, _: &Fold) -> Result<Vec<Doubt>, JournalError> {
        Ok(Vec::new())
    }

    fn as_of_then(&self, _: &Journal, fold: &Fold, view: View) -> Result<FromThen, JournalError> {
        Ok(FromThen::whole(view, fold.ledger().view().day, &fold.every_entry()))
    }

    fn to_come(&self, journal: &Journal, fold: &Fold, view: View) -> Result<Fold, JournalError> {
        Ok(self.as_of_then(journal, fold, view)?.then)
    }
}
