//! Trying things out: what a draft, or a taking back, would do, with nothing written.

use std::collections::BTreeSet;
use std::sync::Arc;

use super::book::look_up_about;
use super::refusal::DeskError;
use super::{Desk, Now};
use crate::journal::{Sort, Sought};
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
        self.look_up_named(drafts.iter())?;
        let (_, judged) = self.judge(drafts, self.now.moment, device)?;
        let picture = self.fold.picture();
        let doubts = judged.roll_back(&mut self.fold);
        Ok((picture, doubts))
    }

    /// The clock went on; where the day changed, everything is folded for the new day.
    ///
    /// # Errors
    /// The file, where it has to be read for the new day.
    pub fn set_now(&mut self, now: Now) -> Result<(), DeskError> {
        let another_day = now.today != self.now.today;
        let before = std::mem::replace(&mut self.now, now);
        let turned = if another_day { self.open_anew() } else { Ok(()) };
        if turned.is_err() {
            // It is tried again with the next look at the clock.
            self.now = before;
        }
        turned
    }

    /// The entries about something, notes about it among them, oldest first.
    ///
    /// # Errors
    /// The file, where they have to be looked up.
    pub fn story_of(&mut self, subject: &Subject) -> Result<Vec<Arc<Entry>>, DeskError> {
        look_up_about(&self.journal, &mut self.fold, &BTreeSet::from([subject.clone()]))?;
        let ledger = self.fold.ledger();
        let mut found: Vec<Arc<Entry>> = ledger.of(subject).cloned().collect();
        let name = match subject {
            Subject::Tray(code) => code.to_string(),
            Subject::Lot(code) => code.to_string(),
            Subject::Bed(name) => name.to_string(),
            Subject::Place(name) => name.to_string(),
            Subject::Site => return Ok(found),
        };
        let is_about = |entry: &Entry| match &entry.what {
            What::Book(BookEntry::Noted(noted)) => noted.about.as_ref().is_some_and(|about| *about.0 == *name),
            What::Book(BookEntry::Weather(_) | BookEntry::Withdrawn(_))
            | What::Site(_)
            | What::Seed(_)
            | What::Tray(_)
            | What::Ground(_)
            | What::Foreign { .. } => false,
        };
        if self.fold.is_whole() {
            found.extend(ledger.entries().filter(|entry| is_about(entry)).cloned());
        } else {
            let notes = self.journal.look_up(&[Sought::named(Sort::Note, name.clone())])?;
            let stands = |note: &Entry| note.happened <= self.now.today && !ledger.is_withdrawn(&note.id);
            found.extend(notes.into_iter().filter(stands).map(Arc::new));
        }
        found.sort_by_key(|entry| entry.order_key());
        Ok(found)
    }
}
