//! Looking: what a draft, or a taking back, would do, with nothing written; entries that are looked for.

use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::refusal::DeskError;
use super::remarks::Remark;
use super::{Desk, Now};
use crate::base::EntryId;
use crate::nursery::entry::Entry;
use crate::nursery::entry::subject::Subject;
use crate::nursery::envelope::Draft;
use crate::reckon::Picture;
use crate::reckon::picture::Doubt;

/// Entries read from the file at a time while one is looked for.
const PAGE_OF_ENTRIES: usize = 500;

/// Entries that were looked for.
#[derive(Clone, Debug, Default)]
pub(crate) struct FoundEntries {
    /// The entries, newest first.
    pub(crate) entries: Vec<Arc<Entry>>,
    /// Whether there are more.
    pub(crate) more: bool,
    /// Those of them that no longer count, with the withdrawal that took them back.
    pub(crate) withdrawn: BTreeMap<EntryId, EntryId>,
}

impl Desk {
    /// The Picture of today as it would be with drafts in the book, the doubts they raise, and what there is to ask or tell
    /// about them; nothing is written.
    pub(crate) fn preview(&mut self, drafts: Vec<Draft>) -> Result<(Picture, Vec<Doubt>, Vec<Remark>), DeskError> {
        let device = self.journal.device()?;
        self.look_up_named(&mut drafts.iter().map(Cow::Borrowed))?;
        let (picture, trial) =
            self.with_trial(drafts, self.now.moment, device, |fold, trial| (fold.picture(), trial))?;
        let remarks = self.remarks_on(&trial)?.into_iter().map(|(_, remark)| remark).collect();
        Ok((picture, trial.doubts, remarks))
    }

    /// The clock went on; where the day changed, everything is folded for the new day.
    ///
    /// # Errors
    /// The file, where it has to be read for the new day.
    pub(crate) fn set_now(&mut self, now: Now) -> Result<(), DeskError> {
        let another_day = now.today != self.now.today;
        let before = std::mem::replace(&mut self.now, now);
        let turned = if another_day { self.open_again() } else { Ok(()) };
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
    pub(crate) fn story_of(&mut self, subject: &Subject) -> Result<Vec<Arc<Entry>>, DeskError> {
        self.source.look_up_about(&self.journal, &mut self.fold, &BTreeSet::from([subject.clone()]))?;
        let mut found: Vec<Arc<Entry>> = self.fold.ledger().of(subject).cloned().collect();
        let name = match subject {
            Subject::Tray(code) => code.as_str(),
            Subject::Lot(code) => code.as_str(),
            Subject::Bed(name) => name.as_str(),
            Subject::Place(name) => name.as_str(),
            Subject::Site => return Ok(found),
        };
        found.extend(self.source.notes_about(&self.journal, &self.fold, name)?);
        found.sort_by_key(|entry| entry.order_key());
        Ok(found)
    }

    /// The newest entries that are as asked, at most so many.
    ///
    /// # Errors
    /// The file.
    pub(crate) fn newest_entries(
        &self,
        holds: &dyn Fn(&Entry) -> bool,
        most: usize,
    ) -> Result<FoundEntries, DeskError> {
        let mut found: Vec<Arc<Entry>> = Vec::new();
        let mut before = i64::MAX;
        while found.len() <= most {
            let (page, last) = self.journal().entries_before(before, PAGE_OF_ENTRIES)?;
            if page.is_empty() {
                break;
            }
            before = last;
            let holding = page.into_iter().filter(|entry| holds(entry)).map(Arc::new);
            found.extend(holding.take(most + 1 - found.len()));
        }
        let more = found.len() > most;
        found.truncate(most);
        let ledger = self.fold().ledger();
        let taken_back = |entry: &Arc<Entry>| Some((entry.id.clone(), ledger.withdrawal_of(&entry.id)?.id.clone()));
        let withdrawn = found.iter().filter_map(taken_back).collect();
        Ok(FoundEntries { entries: found, more, withdrawn })
    }
}
