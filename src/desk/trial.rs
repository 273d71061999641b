//! Trying things out: what a draft, or a taking back, would do, with nothing written.

use std::sync::Arc;

use super::judge;
use super::refusal::DeskError;
use super::{Desk, Now};
use crate::nursery::entry::Entry;
use crate::nursery::entry::subject::Subject;
use crate::nursery::entry::{BookEntry, What};
use crate::nursery::envelope::Draft;
use crate::reckon::Picture;
use crate::reckon::picture::Doubt;

impl Desk {
    /// The Picture of today as it would be with drafts in the book, and the doubts they raise; nothing is written.
    pub fn preview(&mut self, drafts: Vec<Draft>) -> Result<(Picture, Vec<Doubt>), DeskError> {
        let device = self.journal.device()?;
        let (_, judged) = judge::judge(&mut self.fold, drafts, self.now, self.now.moment, device)?;
        let picture = self.fold.picture();
        let doubts = judged.put_back(&mut self.fold);
        Ok((picture, doubts))
    }

    /// The clock went on; where the day changed, everything is folded for the new day.
    pub fn set_now(&mut self, now: Now) {
        let another_day = now.today != self.now.today;
        self.now = now;
        if another_day {
            let view = crate::reckon::View { day: now.today, known: None };
            self.fold = crate::reckon::Fold::new(view, now.today, self.entries.iter().cloned());
        }
    }

    /// The entries about something, notes about it among them, oldest first.
    pub fn story_of(&self, subject: &Subject) -> Vec<Arc<Entry>> {
        let ledger = self.fold.ledger();
        let mut found: Vec<Arc<Entry>> = ledger.of(subject).cloned().collect();
        let name = match subject {
            Subject::Tray(code) => code.to_string(),
            Subject::Lot(code) => code.to_string(),
            Subject::Bed(name) => name.to_string(),
            Subject::Place(name) => name.to_string(),
            Subject::Site => return found,
        };
        let notes = ledger.entries().filter(|entry| match &entry.what {
            What::Book(BookEntry::Noted(noted)) => noted.about.as_ref().is_some_and(|about| *about.0 == *name),
            What::Book(BookEntry::Weather(_) | BookEntry::Withdrawn(_))
            | What::Site(_)
            | What::Seed(_)
            | What::Tray(_)
            | What::Ground(_)
            | What::Foreign { .. } => false,
        });
        found.extend(notes.cloned());
        found.sort_by_key(|entry| entry.order_key());
        found
    }
}
