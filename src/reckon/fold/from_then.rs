//! The book as it was, and what came after: any day since can be seen from it.

use std::sync::Arc;

use super::Fold;
use crate::base::Day;
use crate::nursery::entry::Entry;
use crate::reckon::ledger::{Ledger, View};

/// The book as it was in a view, and what came after.
#[derive(Clone, Debug)]
pub struct FromThen {
    /// The fold of the view.
    pub then: Fold,
    /// The entries that do not belong to the view: of later days, or learned later.
    pub later: Vec<Arc<Entry>>,
    /// Entries of later days that belong to it all the same: what they describe was there before.
    pub reaching: Vec<Arc<Entry>>,
    /// The fold of the book as it is now, where it is at hand: with all that came after, and all that these want looked up.
    pub now: Option<Box<Fold>>,
}

impl FromThen {
    /// A view of a book of which all entries are at hand.
    pub fn whole(view: View, today: Day, entries: &[Arc<Entry>]) -> FromThen {
        let belongs = |entry: &&Arc<Entry>| Ledger::belongs(view, entry);
        let later = entries.iter().filter(|entry| !belongs(entry)).cloned().collect();
        let reaching = entries.iter().filter(belongs).filter(|entry| entry.happened > view.day).cloned().collect();
        FromThen { then: Fold::new(view, today, entries.iter().cloned()), later, reaching, now: None }
    }

    /// The book as it is now without some of what came after, where now is seen in this view.
    pub(crate) fn now_without(&self, view: View, entries: &[Arc<Entry>]) -> Option<Fold> {
        let mut fold = (**self.now.as_ref().filter(|now| now.ledger().view() == view)?).clone();
        fold.take_out(entries);
        Some(fold)
    }

    /// The fold of a day since then, with those of the later entries that count.
    pub fn on(&self, day: Day, counts: impl Fn(&Entry) -> bool) -> Fold {
        let mut fold = self.then.clone();
        let new = self.later.iter().filter(|entry| counts(entry)).cloned().collect();
        fold.go_to(View { day, known: None }, new, &self.reaching);
        fold
    }
}
