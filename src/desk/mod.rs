//! The one door for change: a command is checked against the book, becomes entries, is written in one piece, and a new
//! Picture is drawn. Today enters here.

mod book;
pub mod exchange;
mod first_day;
mod judge;
mod kept;
mod names;
mod now;
mod paper;
mod refusal;
mod remarks;
pub mod sample;
mod trial;
mod undo;

pub use crate::journal::{Apart, BackupReport, CheckReport, Fault, JournalError, LookStep, Lost, Rescued};
pub use crate::journal::{Gone, Note, WhyReadOnly};
pub use crate::share::first_day::{ColumnPassedOver, ColumnTaken, NameTaken, OrderTaken, TakenFor, Total, Understood};
pub(crate) use crate::share::json::read_alone as read_json;
pub use crate::share::sheet::{DayOrder, Encoding};
pub use crate::share::{ChainFault, FileFault, LineFault, LineFaults, PairFault, ReadFault, Reason, WorkbookFault};
pub use crate::share::{FORMS, FORMS_IN_SPANISH, Meant, SheetKind, Unknown, UnknownWhat, Why};
pub(crate) use crate::share::{TableFor, write_table};
pub(crate) use exchange::AT_ONCE;
pub use exchange::{Export, ExportError, ImportError, Imported, Reading, Replay, check, read_typed, replay, rescue};
pub use exchange::{How, ImportProgress, ImportStep};
pub(crate) use exchange::{OthersCan, others_can};
pub(crate) use exchange::{drop_kept_stories, write_new_file};
pub(crate) use first_day::write_marked_sheet;
pub(crate) use first_day::{NameMeant, SheetAsked};
pub use first_day::{SheetImported, SheetRefused};
pub use kept::KeptTexts;
pub use now::Now;
pub(crate) use paper::{day_asked, day_said};
pub(crate) use refusal::is_a_share;
pub use refusal::{DeskError, Refusal, Refused};
pub use remarks::{NewName, Odd, Remark};
pub(crate) use trial::FoundEntries;
pub use undo::{TakenBack, Withdraws};

use serde_json::Value;
use std::borrow::Cow;
use std::collections::BTreeSet;
use std::path::Path;
use std::sync::Arc;

use crate::base::{Day, DeviceId, EntryId, Moment};
use crate::journal::Journal;
use crate::nursery::entry::reading::read_body;
use crate::nursery::entry::types::Alarm;
use crate::nursery::entry::{BookEntry, Entry, What};
use crate::nursery::envelope::{Draft, Sealed, canonical};
use crate::reckon::picture::Doubt;
use crate::reckon::{Fold, FromThen, Picture, View};
use book::BookSource;

/// What was written.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Recorded {
    /// The entries written by this command.
    pub entries: Vec<EntryId>,
    /// Lines of an import that were here already.
    pub already: usize,
    /// Doubts that were not there before.
    pub doubts: Vec<Doubt>,
}

/// The desk of one nursery.
pub struct Desk {
    journal: Journal,
    now: Now,
    arrival: i64,
    fold: Fold,
    source: Box<dyn BookSource>,
    whole_below: u64,
    count: usize,
}

impl Desk {
    /// Opens a nursery. `shelf` is the folder of the settings, where this copy's identity is kept.
    pub fn open(file: &Path, shelf: &Path, now: Now) -> Result<Desk, DeskError> {
        Desk::over(Journal::open(file, shelf)?, now)
    }

    /// Begins a nursery in a new file with its first entries.
    pub fn begin(file: &Path, shelf: &Path, now: Now, first: Vec<Draft>) -> Result<(Desk, Recorded), DeskError> {
        let mut first = first;
        judge::settle(&mut first, now)?;
        let journal = Journal::begin(file, shelf)?;
        let mut desk = Desk::over(journal, now)?;
        match desk.record(first) {
            Ok(recorded) => Ok((desk, recorded)),
            Err(fault) => {
                // What could not be begun is not left lying about: it can be begun again.
                desk.journal.take_away_if_empty();
                Err(fault)
            }
        }
    }

    fn over(journal: Journal, now: Now) -> Result<Desk, DeskError> {
        Desk::over_reading_whole_below(journal, now, book::READ_WHOLE_BELOW)
    }

    /// Opens a nursery; books of fewer entries are read whole, of others the kept stories (for tests and benchmarks).
    pub fn open_reading_whole_below(file: &Path, shelf: &Path, now: Now, entries: u64) -> Result<Desk, DeskError> {
        Desk::over_reading_whole_below(Journal::open(file, shelf)?, now, entries)
    }

    fn over_reading_whole_below(mut journal: Journal, now: Now, whole_below: u64) -> Result<Desk, DeskError> {
        let opened = book::open(&mut journal, now, whole_below)?;
        let book::Opened { fold, arrival, source } = opened;
        let count = usize::try_from(journal.count()?).unwrap_or(usize::MAX);
        Ok(Desk { journal, now, arrival, fold, source, whole_below, count })
    }

    /// The file.
    pub fn journal(&self) -> &Journal {
        &self.journal
    }

    /// What the file has to tell: on opening, and what arose while writing.
    pub fn notes(&self) -> &[Note] {
        self.journal.notes()
    }

    /// How many entries that were saved here are gone, where nobody has said that this is meant.
    pub(crate) fn gone(&self) -> u64 {
        self.notes().iter().map(|note| if let Note::Gone(gone) = note { gone.count() } else { 0 }).sum()
    }

    /// What the clock said.
    pub fn now(&self) -> Now {
        self.now
    }

    /// Every entry, read from the file, in the order of arrival.
    pub fn read_every_entry(&self) -> Result<Vec<Arc<Entry>>, DeskError> {
        Ok(self.journal.entries_after(0)?.0)
    }

    /// How many entries the book has.
    pub fn count(&self) -> usize {
        self.count
    }

    /// The entries of some names, those that are there, in the order in which they were recorded.
    pub fn named<'i>(&self, ids: impl IntoIterator<Item = &'i EntryId>) -> Result<Vec<Arc<Entry>>, DeskError> {
        let mut found: Vec<Arc<Entry>> = Vec::new();
        for id in ids {
            match self.fold.ledger().entry(id) {
                Some(entry) => found.push(entry.clone()),
                None => found.extend(self.journal.entry(id)?.map(Arc::new)),
            }
        }
        found.sort_by(|a, b| (a.recorded, &a.id).cmp(&(b.recorded, &b.id)));
        Ok(found)
    }

    /// Of the entries that count the one of the latest day, and that day. What only takes back or settles is of no day.
    pub(crate) fn newest_of_days(&self) -> Result<Option<(EntryId, Day)>, DeskError> {
        let counts = |id: &EntryId| !self.fold.ledger().is_withdrawn(id);
        Ok(self.journal.newest_of_days(&counts)?)
    }

    /// The moment at which this copy recorded last.
    pub(crate) fn last_recorded(&self) -> Result<Option<Moment>, DeskError> {
        Ok(self.journal.last_recorded()?)
    }

    /// Entries of days still to come that count, in the order of their arrival: a clock ran ahead.
    pub(crate) fn still_to_come(&self) -> Result<Vec<Arc<Entry>>, DeskError> {
        let counts = |entry: &Arc<Entry>| {
            !matches!(entry.what, What::Book(BookEntry::Withdrawn(_) | BookEntry::Settled(_)))
                && !self.fold.ledger().is_withdrawn(&entry.id)
        };
        let coming = self.journal.later(self.now.today, None)?;
        Ok(coming.into_iter().filter(counts).collect())
    }

    /// Whether an entry of a day still to come was taken back: a clock once ran ahead.
    pub(crate) fn took_back_what_was_to_come(&self) -> Result<bool, DeskError> {
        let coming = self.journal.later(self.now.today, None)?;
        Ok(coming.iter().any(|entry| self.fold.ledger().is_withdrawn(&entry.id)))
    }

    /// The fold of today.
    pub fn fold(&self) -> &Fold {
        &self.fold
    }

    /// The Picture of today.
    pub fn picture(&self) -> Picture {
        self.fold.picture()
    }

    /// The Picture of any day, with only what had been recorded by a moment where one is given.
    pub fn picture_of(&self, view: View) -> Result<Picture, DeskError> {
        if self.is_of_today(view) { Ok(self.picture()) } else { Ok(self.fold_of(view)?.picture()) }
    }

    /// The same, and what is called like this is in it though it is archived. A name of nothing is no fault.
    pub(crate) fn picture_with(&mut self, called: &[&str], view: View) -> Result<Picture, DeskError> {
        let mut about = BTreeSet::new();
        for name in called {
            about.extend(self.source.called(&self.journal, &self.fold, name)?);
        }
        self.source.look_up_about(&self.journal, &mut self.fold, &about)?;
        let mut fold = self.fold_of(view)?;
        about.into_iter().for_each(|subject| fold.activate(subject));
        Ok(fold.picture())
    }

    fn is_of_today(&self, view: View) -> bool {
        view == View { day: self.now.today, known: None }
    }

    fn fold_of(&self, view: View) -> Result<Fold, DeskError> {
        if self.is_of_today(view) {
            return Ok(self.fold.clone());
        }
        if view.day > self.now.today && view.known.is_none() {
            return Ok(self.source.to_come(&self.journal, &self.fold, view)?);
        }
        Ok(self.as_it_was(view)?.then)
    }

    /// The book as it was in a view of a day that is not to come, and what came after.
    pub fn as_of_then(&self, view: View) -> Result<FromThen, DeskError> {
        Ok(self.source.as_of_then(&self.journal, &self.fold, view)?)
    }

    /// The book as it was in a view of a day that is not to come, for who does not ask of the book of now beside it.
    pub(crate) fn as_it_was(&self, view: View) -> Result<FromThen, DeskError> {
        Ok(self.source.as_it_was(&self.journal, &self.fold, view)?)
    }

    /// Brings what drafts speak of into the fold.
    fn look_up_named(&mut self, drafts: &mut dyn Iterator<Item = Cow<'_, Draft>>) -> Result<(), JournalError> {
        self.source.look_up_named(&self.journal, &mut self.fold, drafts)
    }

    /// The end of a day at the nursery, for `--known`.
    pub fn end_of(&self, day: Day) -> Moment {
        let offset = self.fold.site().nursery.on(day).map_or(0.0, |nursery| nursery.utc_offset_h.0);
        Moment::end_of(day, offset)
    }

    /// Takes in what another process wrote meanwhile.
    pub(crate) fn refresh(&mut self) -> Result<bool, DeskError> {
        let (new, arrival) = self.journal.entries_after(self.arrival)?;
        let before = (self.arrival, self.count);
        self.arrival = arrival;
        if new.is_empty() {
            return Ok(false);
        }
        self.count += new.len();
        let added = self.add(new);
        if added.is_err() {
            // What could not be taken in is read again with the next look.
            (self.arrival, self.count) = before;
        }
        added.map(|()| true)
    }

    fn add(&mut self, new: Vec<Arc<Entry>>) -> Result<(), DeskError> {
        if self.source.must_open_again(&self.journal, &new) {
            return self.open_again();
        }
        self.source.look_up_for(&self.journal, &mut self.fold, &new)?;
        self.fold.add(new);
        self.source.keep_now_and_then(&mut self.journal, &self.fold, self.arrival);
        Ok(())
    }

    /// Opens the book again, from its file.
    fn open_again(&mut self) -> Result<(), DeskError> {
        let book::Opened { fold, arrival, source } = book::open(&mut self.journal, self.now, self.whole_below)?;
        (self.fold, self.arrival, self.source) = (fold, arrival, source);
        self.count = usize::try_from(self.journal.count()?).unwrap_or(usize::MAX);
        Ok(())
    }

    /// Writes drafts, all or none: each is judged in the order of things on one running fold.
    pub fn record(&mut self, drafts: Vec<Draft>) -> Result<Recorded, DeskError> {
        self.record_at(drafts, self.now.moment)
    }

    /// The same, recorded at another moment (the sample nursery writes on the evening of each day).
    pub fn record_at(&mut self, drafts: Vec<Draft>, moment: Moment) -> Result<Recorded, DeskError> {
        self.refresh()?;
        let device = self.journal.device()?;
        let mut drafts = drafts;
        for draft in &mut drafts {
            match draft.kind.as_str() {
                "withdrawn" => self.leaves_no_other_without_ground(draft)?,
                "relabelled" => self.comes_after_its_story(draft)?,
                _ => {}
            }
        }
        let (drafts, doubts) = self.judge_beside(Vec::new(), drafts, moment, device)?;
        let settles = |what: Alarm| drafts.iter().any(|draft| settled_by(draft) == Some(what));
        if settles(Alarm::Clock) {
            // What this device recorded never goes back in time: after a wrong clock only another one can go on.
            self.journal.begin_new_device()?;
        }
        let written = self.journal.append(&drafts, moment)?;
        self.settle_what_is_gone(&drafts, &written)?;
        self.refresh()?;
        let entries = written.into_iter().map(|sealed| sealed.id).collect();
        Ok(Recorded { entries, already: 0, doubts })
    }

    /// A tray gets another code behind all that was written of it, or not at all.
    fn comes_after_its_story(&mut self, draft: &mut Draft) -> Result<(), DeskError> {
        self.look_up_named(&mut std::iter::once(Cow::Owned(draft.clone())))?;
        let Ok(what) = names::read(draft) else { return Ok(()) };
        judge::put_behind_its_story(&self.fold, draft, &what).map_err(DeskError::from)
    }

    /// What is gone is missed no more where an entry gives it up, and missed again where such an entry is taken back, until
    /// that is taken back too.
    fn settle_what_is_gone(&mut self, drafts: &[Draft], written: &[Sealed]) -> Result<(), DeskError> {
        for (draft, sealed) in drafts.iter().zip(written) {
            if settled_by(draft) == Some(Alarm::Restored) {
                self.journal.give_up_what_is_gone(&sealed.id)?;
            }
            for taken_back in self.named(&withdrawn_by(draft))? {
                match &taken_back.what {
                    What::Book(BookEntry::Settled(settled)) if settled.what == Alarm::Restored => {
                        self.journal.miss_again(&taken_back.id)?;
                    }
                    What::Book(BookEntry::Withdrawn(back)) => {
                        let gives_up = |entry: &Arc<Entry>| matches!(&entry.what, What::Book(BookEntry::Settled(settled)) if settled.what == Alarm::Restored);
                        for by in self.named(&back.entries)?.into_iter().filter(gives_up) {
                            self.journal.give_up_what_is_gone(&by.id)?;
                        }
                    }
                    _ => {}
                }
            }
        }
        Ok(())
    }

    /// Takes lines that have an identity, as another copy or the sample wrote them: the books never refuse them.
    fn take_sealed(&mut self, lines: Vec<Sealed>) -> Result<(), DeskError> {
        self.journal.append_sealed(lines, &[], self.now.moment)?;
        self.refresh().map(drop)
    }

    /// Says what `record` would refuse or doubt, and writes nothing.
    pub fn rehearse(&mut self, drafts: Vec<Draft>) -> Result<Vec<Doubt>, DeskError> {
        self.refresh()?;
        let device = self.journal.device()?;
        let judged = self.judge_beside(Vec::new(), drafts, self.now.moment, device);
        judged.map(|(_, doubts)| doubts)
    }

    /// Judges drafts on the book as it would be with the known entries in it; drafts may speak of what those bring. The
    /// known entries stay in the fold: where there are any, the book has to be opened again.
    fn judge_beside(
        &mut self,
        known: Vec<Arc<Entry>>,
        drafts: Vec<Draft>,
        moment: Moment,
        device: Option<DeviceId>,
    ) -> Result<(Vec<Draft>, Vec<Doubt>), DeskError> {
        self.look_up_named(&mut drafts.iter().map(Cow::Borrowed))?;
        if known.is_empty() {
            return self.with_trial(drafts, moment, device, |_, trial| (trial.drafts, trial.doubts));
        }
        self.source.look_up_for(&self.journal, &mut self.fold, &known)?;
        let before = self.fold.stories_now();
        self.fold.add(known);
        self.with_trial(drafts, moment, device, |fold, trial| (trial.drafts, fold.doubts_since(&before)))
    }

    /// Shows to `look` the fold with drafts in it, and takes them out again.
    fn with_trial<T>(
        &mut self,
        drafts: Vec<Draft>,
        moment: Moment,
        device: Option<DeviceId>,
        look: impl FnOnce(&Fold, judge::Trial) -> T,
    ) -> Result<T, DeskError> {
        let (journal, source) = (&self.journal, &self.source);
        let mut look_up = |fold: &mut Fold, entries: &[Arc<Entry>]| source.look_up_for(journal, fold, entries);
        let by = judge::TrialBy { now: self.now, moment, device };
        judge::with_trial(&mut self.fold, drafts, by, &mut look_up, look)
    }
}

/// The alarm that a draft settles.
fn settled_by(draft: &Draft) -> Option<Alarm> {
    match book_entry(draft) {
        Some(BookEntry::Settled(settled)) => Some(settled.what),
        _ => None,
    }
}

/// The entries that a draft takes back.
fn withdrawn_by(draft: &Draft) -> Vec<EntryId> {
    match book_entry(draft) {
        Some(BookEntry::Withdrawn(back)) => back.entries,
        _ => Vec::new(),
    }
}

fn book_entry(draft: &Draft) -> Option<BookEntry> {
    match read_body(&draft.kind, &canonical(&Value::Object(draft.body.clone()))) {
        Ok(What::Book(entry)) => Some(entry),
        Ok(_) | Err(_) => None,
    }
}
