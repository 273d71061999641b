//! Lines of entries on their way in: few are judged in memory, many inside the transaction that takes them in, where the
//! stories are folded a part at a time. All of it is kept or nothing.

use std::borrow::Cow;
use std::collections::{BTreeSet, HashSet};
use std::io::BufRead;
use std::ops::ControlFlow;
use std::sync::Arc;

use super::packed::Packed;
use super::{ImportError, Imported};
use crate::base::{DeviceId, EntryId};
use crate::desk::book::{Asked, FromStories, fold_in_parts, nothing_looked_up};
use crate::desk::judge;
use crate::desk::names::{self, BatchNames};
use crate::desk::refusal::{DeskError, Refusal, Refused};
use crate::desk::{Desk, Recorded};
use crate::journal::{Intake, JournalError, New, Step, Unfit};
use crate::nursery::entry::Entry;
use crate::nursery::envelope::{Draft, Sealed};
use crate::reckon::picture::Doubt;
use crate::share::fault::MOST_FAULTS_LISTED;
use crate::share::{self, ChainFault, LineFault, LineFaults, ReadFault, Reason, Written};

/// So many lines are judged in memory. Ours: some 20 MB, and less than a second.
pub(crate) const AT_ONCE: usize = 10_000;
/// After so many lines it is asked whether to go on.
const TOLD_EVERY: usize = 1000;

/// How an import is done.
#[derive(Clone, Copy, Debug)]
pub struct How {
    /// Only say what it would bring.
    pub only_try: bool,
    /// The most lines that are judged in memory; what is said does not depend on it.
    pub at_once: usize,
}

/// How far an import is.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum ImportStep {
    /// So many lines of the file are read.
    Read(usize),
    /// So many new entries are written.
    Written(u64),
    /// So many entries can be looked up.
    LookedUp(u64),
    /// Of the stories of the book with these entries in it, so many are judged.
    Judged {
        /// So many are.
        done: usize,
        /// So many there are.
        all: usize,
    },
    /// Everything is judged; now it is saved, and nothing stops it any more.
    Saving,
}

impl From<Step> for ImportStep {
    fn from(step: Step) -> ImportStep {
        match step {
            Step::Written(entries) => ImportStep::Written(entries),
            Step::LookedUp(entries) => ImportStep::LookedUp(entries),
            Step::Saving => ImportStep::Saving,
        }
    }
}

/// Hears how far an import is; a break stops it, and nothing of it is taken in.
pub type ImportProgress<'t> = dyn FnMut(ImportStep) -> ControlFlow<()> + 't;

fn go_on_unless(said: ControlFlow<()>) -> Result<(), JournalError> {
    if said.is_break() { Err(JournalError::Cancelled) } else { Ok(()) }
}

/// What was read of the file, and what is open.
#[derive(Default)]
struct Incoming {
    intake: Option<Intake>,
    device: Option<DeviceId>,
    lines: usize,
    /// Lines with an identity, as long as they are few.
    few: Vec<(usize, Sealed)>,
    /// Lines that were here already, of those that were put back among the few.
    already: usize,
    drafts: Packed,
    /// Of few drafts what is to be written.
    settled: Vec<Draft>,
    written: Vec<EntryId>,
    /// Whether the fold holds what the file does not, or the file what the fold does not.
    fold_is_other: bool,
}

impl Incoming {
    fn counted(&self) -> (usize, usize) {
        self.intake.as_ref().map_or((0, 0), Intake::counted)
    }
}

impl Desk {
    /// Takes a file of entries whole or not at all; `only_try` says what it would bring and writes nothing.
    pub fn import(&mut self, input: impl BufRead, who: &str, only_try: bool) -> Result<Imported, ImportError> {
        let how = How { only_try, at_once: AT_ONCE };
        self.import_told(input, who, how, &mut |_| ControlFlow::Continue(()))
    }

    /// The same; `told` hears how far it is and may stop it.
    ///
    /// # Errors
    /// Every faulty line and everything the books cannot bear; the file; that it was stopped. Nothing is taken in then.
    pub fn import_told(
        &mut self,
        input: impl BufRead,
        who: &str,
        how: How,
        told: &mut ImportProgress<'_>,
    ) -> Result<Imported, ImportError> {
        self.refresh().map_err(ImportError::Desk)?;
        let device = self.journal.device().map_err(journal)?;
        let mut coming = Incoming { device, ..Incoming::default() };
        let imported = self.import_coming(&mut coming, input, who, how, told);
        if let Some(intake) = coming.intake.take() {
            self.journal.let_go(intake);
        }
        let brought_up = if coming.fold_is_other { self.open_again() } else { self.refresh().map(drop) };
        let imported = imported?;
        brought_up.map_err(ImportError::Desk)?;
        Ok(imported)
    }

    fn import_coming(
        &mut self,
        coming: &mut Incoming,
        input: impl BufRead,
        who: &str,
        how: How,
        told: &mut ImportProgress<'_>,
    ) -> Result<Imported, ImportError> {
        let mut faults = self.read_in(coming, input, who, how, told)?;
        let judged = if coming.intake.is_none() {
            let lines = coming.drafts.lines();
            let judged = self.judge_few(coming).map_err(|fault| super::with_lines(fault, &lines));
            self.put_few(coming, &mut faults)?;
            judged
        } else if faults.is_empty() || coming.counted() == (0, 0) {
            self.judge_many(coming, how, told)
        } else {
            // What follows on a faulty line is not in the file: drafts that speak of it would be refused for that alone.
            Ok(Vec::new())
        };
        if !faults.is_empty() {
            // The other lines were judged all the same, so that every bad one is named at once.
            let refused = match judged {
                Err(DeskError::Refused(refused)) => first_of(refused, &mut faults),
                Err(fault @ DeskError::Journal(JournalError::Cancelled)) => return Err(ImportError::Desk(fault)),
                Ok(_) | Err(DeskError::Journal(_)) => Vec::new(),
            };
            return Err(ImportError::Lines(faults, refused));
        }
        let doubts = match judged {
            Ok(doubts) => doubts,
            Err(DeskError::Refused(refused)) if refused.len() > MOST_FAULTS_LISTED => {
                let refused = first_of(refused, &mut faults);
                return Err(ImportError::Lines(faults, refused));
            }
            Err(fault) => return Err(ImportError::Desk(fault)),
        };
        let already = coming.already + coming.counted().1;
        let drafts = coming.drafts.len();
        let mut read = Vec::new();
        if how.only_try {
            let shown = coming.drafts.lines().into_iter().zip(coming.drafts.iter());
            read.extend(shown.take(MOST_SHOWN));
        } else {
            self.save(coming, told).map_err(ImportError::Desk)?;
        }
        // What was only tried is not there any more.
        let entries = if how.only_try { Vec::new() } else { std::mem::take(&mut coming.written) };
        Ok(Imported { lines: coming.lines, recorded: Recorded { entries, already, doubts }, drafts, read })
    }

    /// Reads every line. Where they are many, those with an identity go into the transaction one after the other; the
    /// others are kept until all are known.
    fn read_in(
        &mut self,
        coming: &mut Incoming,
        input: impl BufRead,
        who: &str,
        how: How,
        told: &mut ImportProgress<'_>,
    ) -> Result<LineFaults, ImportError> {
        let today = self.now.today;
        let mut faults = share::each_line(input, today, who, &mut |number, written| -> Result<(), ImportError> {
            if number % TOLD_EVERY == 0 {
                go_on_unless(told(ImportStep::Read(number))).map_err(journal)?;
            }
            coming.lines += usize::from(written.is_some());
            match (written, &mut coming.intake) {
                (None, _) => {}
                (Some(Written::Draft(draft)), _) => coming.drafts.push(number, draft),
                (Some(Written::Sealed(sealed)), Some(intake)) => {
                    intake.put(&self.journal, number, sealed).map_err(journal)?;
                }
                (Some(Written::Sealed(sealed)), None) => {
                    coming.few.push((number, sealed));
                    if coming.few.len() > how.at_once {
                        self.put(coming).map_err(journal)?;
                    }
                }
            }
            Ok(())
        })?;
        if coming.intake.is_none() && coming.few.len() + coming.drafts.len() > how.at_once {
            self.put(coming).map_err(journal)?;
        }
        self.settle_chains(coming, &mut faults).map_err(journal)?;
        // Of very many lines few may be new: they are judged as few are.
        let (added, already) = coming.counted();
        if added + coming.drafts.len() <= how.at_once
            && let Some(intake) = coming.intake.take()
        {
            let new = self.journal.sealed_after(intake.arrived_before());
            self.journal.let_go(intake);
            coming.few = new.map_err(journal)?.into_iter().map(|sealed| (0, sealed)).collect();
            coming.already = already;
        }
        Ok(faults)
    }

    /// Puts the few lines with an identity into a transaction.
    fn put(&mut self, coming: &mut Incoming) -> Result<(), JournalError> {
        let intake = coming.intake.insert(self.journal.begin_intake()?);
        std::mem::take(&mut coming.few)
            .into_iter()
            .try_for_each(|(line, sealed)| intake.put(&self.journal, line, sealed))
    }

    /// The same once they are judged.
    fn put_few(&mut self, coming: &mut Incoming, faults: &mut LineFaults) -> Result<(), ImportError> {
        if !coming.few.is_empty() {
            self.put(coming).map_err(journal)?;
            self.settle_chains(coming, faults).map_err(journal)?;
        }
        Ok(())
    }

    /// Adds what does not fit the lines that are here to the faults of lines.
    fn settle_chains(&mut self, coming: &mut Incoming, faults: &mut LineFaults) -> Result<(), JournalError> {
        let Some(intake) = &mut coming.intake else { return Ok(()) };
        intake.settle(&self.journal, faults.is_empty())?;
        let (of_chains, count) = intake.faults();
        faults.count += count - of_chains.len();
        for (line, unfit) in of_chains {
            faults.note(LineFault { line: *line, column: None, field: None, reason: reason_of(unfit) });
        }
        Ok(())
    }

    /// In memory, on the fold of the book.
    fn judge_few(&mut self, coming: &mut Incoming) -> Result<Vec<Doubt>, DeskError> {
        let opened = coming.few.iter().filter_map(|(_, sealed)| sealed.open().ok());
        let known: Vec<Arc<Entry>> =
            opened.filter(|entry| !self.fold.ledger().holds(&entry.id)).map(Arc::new).collect();
        let drafts = coming.drafts.iter().collect();
        coming.fold_is_other |= !known.is_empty();
        let judged = self.judge_beside(known, drafts, self.now.moment, coming.device.clone());
        let (settled, doubts) = judged?;
        coming.settled = settled;
        Ok(doubts)
    }

    /// In the file: the lines are written inside the transaction, and the stories of the book with them in it are folded a
    /// part at a time.
    fn judge_many(
        &mut self,
        coming: &mut Incoming,
        how: How,
        told: &mut ImportProgress<'_>,
    ) -> Result<Vec<Doubt>, DeskError> {
        let mut intake = match coming.intake.take() {
            Some(intake) => intake,
            None => self.journal.begin_intake()?,
        };
        let judged = self.judge_inside(&mut intake, coming, how, told);
        coming.intake = Some(intake);
        judged
    }

    fn judge_inside(
        &mut self,
        intake: &mut Intake,
        coming: &mut Incoming,
        how: How,
        told: &mut ImportProgress<'_>,
    ) -> Result<Vec<Doubt>, DeskError> {
        let mut before: BTreeSet<Doubt> = self.fold.all_doubts().into_iter().collect();
        before.extend(self.source.other_doubts(&self.journal, &self.fold)?);
        coming.fold_is_other = true;
        self.settle_many(intake, coming, told)?;
        let written = &mut coming.written;
        let new = New {
            drafts: &mut coming.drafts.iter(),
            recorded: self.now.moment,
            written: &mut |sealed| written.push(sealed.id),
        };
        let own = if how.only_try { coming.device.clone().or_else(judge::device_of_trials) } else { None };
        let first = match own {
            Some(own) => self.journal.try_new(intake, &own, new, &mut |step| told(step.into()))?,
            None => self.journal.write_new(intake, new, &mut |step| told(step.into()))?,
        };
        self.journal.look_up_intake(intake, true, &mut |step| told(step.into()))?;
        let asked = Asked { before: &before, judged_from: first.as_ref(), keep: !how.only_try };
        let found = fold_in_parts(&mut self.journal, self.now, &asked, &mut |done, all| {
            go_on_unless(told(ImportStep::Judged { done, all }))
        })?;
        if found.refused.is_empty() {
            return Ok(found.doubts);
        }
        let drafts = &coming.drafts;
        let refused = found.refused.into_iter().map(|(index, why)| Refused { line: drafts.line(index), why });
        Err(in_order(refused.collect()))
    }

    /// Brings the names in many drafts to the spelling they have in the book, and refuses those that name nothing.
    fn settle_many(
        &mut self,
        intake: &Intake,
        coming: &mut Incoming,
        told: &mut ImportProgress<'_>,
    ) -> Result<(), DeskError> {
        if coming.drafts.is_empty() {
            return Ok(());
        }
        let mut older = None;
        if intake.counted().0 > 0 {
            // Drafts may speak of what the lines with an identity bring.
            self.journal.look_up_intake(intake, true, &mut |step| told(step.into()))?;
            older = Some(std::mem::replace(&mut self.fold, nothing_looked_up(&self.journal, self.now)?));
            self.source = Box::new(FromStories::default());
        }
        self.look_up_named(&mut coming.drafts.iter().map(Cow::Owned))?;
        let mut names = BatchNames::of(&self.fold).spelled_also_as_in(older.as_ref());
        let (mut refused, mut unread): (Vec<Refused>, HashSet<usize>) = (Vec::new(), HashSet::new());
        let now = self.now;
        let read = coming.lines;
        each_of(&mut coming.drafts, &mut refused, &mut |index, draft| {
            if index.is_multiple_of(TOLD_EVERY) {
                go_on_unless(told(ImportStep::Read(read)))?;
            }
            let settled = judge::settle_one(draft, now).and_then(|()| names.settle(draft).map(drop));
            unread.extend(settled.is_err().then_some(index));
            Ok(settled)
        })?;
        let fold = &self.fold;
        each_of(&mut coming.drafts, &mut refused, &mut |index, draft| {
            if index.is_multiple_of(TOLD_EVERY) {
                go_on_unless(told(ImportStep::Read(read)))?;
            }
            if unread.contains(&index) {
                return Ok(Ok(()));
            }
            let named = names::read(draft).and_then(|what| {
                names.check(&what, draft.happened)?;
                judge::check_withdrawal(fold, &what)?;
                judge::put_behind_its_coming(fold, draft, &what);
                Ok(())
            });
            Ok(named)
        })?;
        if refused.is_empty() { Ok(()) } else { Err(in_order(refused)) }
    }

    /// Makes what was judged one piece of the file.
    fn save(&mut self, coming: &mut Incoming, told: &mut ImportProgress<'_>) -> Result<(), DeskError> {
        let many = coming.settled.is_empty();
        if coming.counted().0 == 0 && coming.drafts.is_empty() {
            return Ok(());
        }
        let mut intake = match coming.intake.take() {
            Some(intake) => intake,
            None => self.journal.begin_intake()?,
        };
        let written = &mut coming.written;
        let new = New {
            drafts: &mut std::mem::take(&mut coming.settled).into_iter(),
            recorded: self.now.moment,
            written: &mut |sealed| written.push(sealed.id),
        };
        let put = if many { Ok(None) } else { self.journal.write_new(&mut intake, new, &mut |step| told(step.into())) };
        match put {
            Ok(_) => Ok(self.journal.keep(intake, &mut |step| told(step.into()))?),
            Err(fault) => {
                self.journal.let_go(intake);
                Err(fault.into())
            }
        }
    }
}

/// The most drafts of an import that is only tried that are shown: nobody reads more.
const MOST_SHOWN: usize = 10_000;

/// What is done with each draft: it may be refused, or all of it stopped.
type Settling<'s> = dyn FnMut(usize, &mut Draft) -> Result<Result<(), Refusal>, JournalError> + 's;

fn each_of(drafts: &mut Packed, refused: &mut Vec<Refused>, how: &mut Settling<'_>) -> Result<(), JournalError> {
    for index in 0..drafts.len() {
        if let Some(Err(why)) = drafts.change(index, |draft| how(index, draft)).transpose()? {
            refused.push(Refused { line: drafts.line(index), why });
        }
    }
    Ok(())
}

fn in_order(mut refused: Vec<Refused>) -> DeskError {
    refused.sort_by_key(|one| one.line);
    DeskError::Refused(refused)
}

/// The first refusals; the others are counted.
fn first_of(mut refused: Vec<Refused>, faults: &mut LineFaults) -> Vec<Refused> {
    faults.count += refused.len().saturating_sub(MOST_FAULTS_LISTED);
    refused.truncate(MOST_FAULTS_LISTED);
    refused
}

fn journal(fault: JournalError) -> ImportError {
    ImportError::Desk(DeskError::Journal(fault))
}

impl From<std::io::Error> for ImportError {
    fn from(fault: std::io::Error) -> Self {
        ImportError::Read(ReadFault::Io(fault))
    }
}

/// What does not fit the lines that are here, as a fault of its line.
fn reason_of(unfit: &Unfit) -> Reason {
    match unfit {
        Unfit::Fork(entry) => Reason::Chain(ChainFault::Fork(entry.clone())),
        Unfit::FollowsAnother(entry) => Reason::Chain(ChainFault::FollowsAnother(entry.clone())),
        Unfit::Gap { device, from, to } => {
            Reason::Chain(ChainFault::Missing { device: device.clone(), from: *from, to: *to })
        }
        Unfit::WrongHash(entry) => Reason::WrongHash(entry.clone()),
    }
}
