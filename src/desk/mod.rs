//! The one door for change: a command is checked against the book, becomes entries, is written in one piece, and a new
//! Picture is drawn. Today enters here.

pub mod exchange;
mod first_day;
mod judge;
mod kept;
mod names;
mod paper;
mod refusal;
pub mod sample;
mod trial;
mod undo;

pub use crate::journal::{Apart, BackupReport, CheckReport, Fault, JournalError, Lost, Rescued};
pub use crate::journal::{Note, WhyReadOnly};
pub use crate::share::first_day::{ColumnTaken, NameTaken, OrderTaken, TakenFor, Total, Understood};
pub use crate::share::sheet::{DayOrder, Encoding};
pub use crate::share::{FORMS, FORMS_IN_SPANISH, SheetKind, Unknown, UnknownWhat};
pub use crate::share::{FileFault, LineFault, LineFaults, PairFault, ReadFault, Reason};
pub use exchange::{Export, ExportError, ImportError, Imported, Reading, Replay, check, read_typed, replay, rescue};
pub use first_day::{SheetImported, SheetRefused};
pub use kept::KeptTexts;
pub use paper::{day_asked, day_said};
pub use refusal::{DeskError, Refusal, Refused};
pub use undo::{TakenBack, Withdraws};

use std::path::Path;
use std::sync::Arc;

use crate::base::{Clock, Day, EntryId, Moment};
use crate::journal::Journal;
use crate::nursery::entry::Entry;
use crate::nursery::envelope::{Draft, Sealed};
use crate::reckon::picture::Doubt;
use crate::reckon::{Fold, Picture, View};

/// What the clock says, read once by the caller.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Now {
    /// Today, as the person means it.
    pub today: Day,
    /// The time of day; none where today was set by hand.
    pub clock: Option<Clock>,
    /// The instant.
    pub moment: Moment,
}

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
    entries: Vec<Arc<Entry>>,
    fold: Fold,
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
        let recorded = desk.record(first)?;
        Ok((desk, recorded))
    }

    fn over(journal: Journal, now: Now) -> Result<Desk, DeskError> {
        let (entries, arrival) = journal.entries_after(0)?;
        let entries: Vec<Arc<Entry>> = entries.into_iter().map(Arc::new).collect();
        let view = View { day: now.today, known: None };
        let fold = Fold::new(view, now.today, entries.iter().cloned());
        Ok(Desk { journal, now, arrival, entries, fold })
    }

    /// The file.
    pub fn journal(&self) -> &Journal {
        &self.journal
    }

    /// What the file has to tell on opening.
    pub fn notes(&self) -> &[Note] {
        self.journal.notes()
    }

    /// What the clock said.
    pub fn now(&self) -> Now {
        self.now
    }

    /// Every entry, in the order of arrival.
    pub fn entries(&self) -> &[Arc<Entry>] {
        &self.entries
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
    pub fn picture_of(&self, view: View) -> Picture {
        if view == (View { day: self.now.today, known: None }) {
            return self.picture();
        }
        Fold::new(view, self.now.today, self.entries.iter().cloned()).picture()
    }

    /// The end of a day at the nursery, for `--known`.
    pub fn end_of(&self, day: Day) -> Moment {
        let offset = self.fold.site().nursery.on(day).map_or(0.0, |nursery| nursery.utc_offset_h.0);
        Moment::end_of(day, offset)
    }

    /// Takes in what another process wrote meanwhile.
    pub fn refresh(&mut self) -> Result<bool, DeskError> {
        let (new, arrival) = self.journal.entries_after(self.arrival)?;
        self.arrival = arrival;
        if new.is_empty() {
            return Ok(false);
        }
        let new: Vec<Arc<Entry>> = new.into_iter().map(Arc::new).collect();
        self.entries.extend(new.iter().cloned());
        self.fold.add(new);
        Ok(true)
    }

    /// Writes drafts, all or none: each is judged in the order of things on one running fold.
    pub fn record(&mut self, drafts: Vec<Draft>) -> Result<Recorded, DeskError> {
        self.take(Vec::new(), drafts, self.now.moment)
    }

    /// The same, recorded at another moment (the sample nursery writes on the evening of each day).
    pub fn record_at(&mut self, drafts: Vec<Draft>, moment: Moment) -> Result<Recorded, DeskError> {
        self.take(Vec::new(), drafts, moment)
    }

    /// Says what `record` would refuse or doubt, and writes nothing.
    pub fn rehearse(&mut self, drafts: Vec<Draft>) -> Result<Vec<Doubt>, DeskError> {
        self.rehearse_with(Vec::new(), drafts)
    }

    /// The same beside lines with an identity of their own.
    fn rehearse_with(&mut self, known: Vec<Sealed>, drafts: Vec<Draft>) -> Result<Vec<Doubt>, DeskError> {
        self.refresh()?;
        let judged = self.judge_beside(&known, drafts, self.now.moment);
        judged.map(|(_, doubts)| doubts)
    }

    fn try_known(&mut self, known: Vec<Sealed>) -> Result<(usize, usize), DeskError> {
        Ok(self.journal.try_sealed(known)?)
    }

    /// Takes lines with an identity of their own, and drafts, all or none.
    pub fn take(&mut self, known: Vec<Sealed>, drafts: Vec<Draft>, moment: Moment) -> Result<Recorded, DeskError> {
        self.refresh()?;
        let (drafts, doubts) = self.judge_beside(&known, drafts, moment)?;
        let taken = self.journal.append_sealed(known, &drafts, moment)?;
        self.refresh()?;
        let entries = taken.written.into_iter().map(|sealed| sealed.id).collect();
        Ok(Recorded { entries, already: taken.already, doubts })
    }

    /// Judges drafts on the book as it would be with the known lines in it, and leaves the fold as it was. Drafts may
    /// speak of what those lines bring.
    fn judge_beside(
        &mut self,
        known: &[Sealed],
        drafts: Vec<Draft>,
        moment: Moment,
    ) -> Result<(Vec<Draft>, Vec<Doubt>), DeskError> {
        let device = self.journal.device()?;
        let known: Vec<Arc<Entry>> = known
            .iter()
            .filter_map(|sealed| sealed.open().ok())
            .filter(|entry| !self.fold.ledger().holds(&entry.id))
            .map(Arc::new)
            .collect();
        if known.is_empty() {
            let (drafts, judged) = judge::judge(&mut self.fold, drafts, self.now, moment, device)?;
            let doubts = judged.put_back(&mut self.fold);
            return Ok((drafts, doubts));
        }
        let before = self.fold.all_doubts();
        self.fold.add(known);
        let judged = judge::judge(&mut self.fold, drafts, self.now, moment, device);
        let doubts = self.fold.all_doubts().into_iter().filter(|doubt| !before.contains(doubt)).collect();
        // What was tried is taken out again; what the file then gives back is what counts.
        self.fold_anew();
        judged.map(|(drafts, _)| (drafts, doubts))
    }

    fn fold_anew(&mut self) {
        let view = self.fold.ledger().view();
        self.fold = Fold::new(view, self.now.today, self.entries.iter().cloned());
    }
}
