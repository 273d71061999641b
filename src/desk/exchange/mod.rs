//! In and out: imports are checked like what is written by hand, exports give every entry as it stands.

mod import;
mod packed;

pub(crate) use import::AT_ONCE;
pub use import::{How, ImportProgress, ImportStep};

use std::io::{self, Write};
use std::ops::ControlFlow;
use std::path::Path;

use super::book::KeptStories;
use super::first_day::SheetRefused;
use super::refusal::{DeskError, Refused};
use super::{Now, Recorded};
use crate::base::Day;
use crate::journal::{BackupReport, CheckReport, Journal, JournalError, LookProgress, Note, Rescued};
use crate::nursery::envelope::{Draft, Sealed};
use crate::reckon::{Fold, View};
use crate::share::{self, Existing, FileFault, LineFaults, PairFault, ReadFault, TableFor};

/// What an export writes.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Export {
    /// Entries, one a line.
    Lines,
    /// A table.
    Csv(TableFor),
}

/// Why an import was not taken.
#[derive(Debug)]
pub enum ImportError {
    /// Lines that cannot be read.
    Read(ReadFault),
    /// Lines that cannot be read, and others that the books cannot bear.
    Lines(LineFaults, Vec<Refused>),
    /// A sheet of trays or beds with what was understood of it.
    Sheet(Box<SheetRefused>),
    /// Lines the books cannot bear, or the file.
    Desk(DeskError),
}

/// Why an export did not come out.
#[derive(Debug)]
pub enum ExportError {
    /// The journal.
    Journal(JournalError),
    /// The file it should go to.
    File(FileFault),
    /// The reader of the screen.
    Out(io::Error),
}

impl From<JournalError> for ExportError {
    fn from(fault: JournalError) -> Self {
        ExportError::Journal(fault)
    }
}

impl From<io::Error> for ExportError {
    fn from(fault: io::Error) -> Self {
        ExportError::Out(fault)
    }
}

/// What an import brought, or would bring.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Imported {
    /// Lines read.
    pub lines: usize,
    /// What was written.
    pub recorded: Recorded,
    /// Of the lines read, those that make new entries of this copy.
    pub drafts: usize,
    /// The entries of short lines, and of lines only tried, each with its line; of very many the first ones.
    pub read: Vec<(usize, Draft)>,
}

/// Reads what was typed as `KIND key=value ...`.
pub fn read_typed(kind: &str, pairs: &[String], today: Day, who: &str) -> Result<Draft, PairFault> {
    share::read_pairs(kind, pairs, today, who)
}

/// Proves a file without writing to it; `shelf` is the folder of the settings, which knows what was saved in it.
pub fn check(file: &Path, shelf: &Path, told: &mut LookProgress<'_>) -> Result<CheckReport, JournalError> {
    crate::journal::check_with_note(file, Some(shelf), told)
}

/// Writes every undamaged entry of a file, damaged or not, into a new file that `import` reads. Where nothing can be
/// brought out no file is written. `no_backup`: so that it can be imported where nothing has what is lost.
pub fn rescue(
    file: &Path,
    shelf: &Path,
    (to, no_backup): (&Path, bool),
    told: &mut LookProgress<'_>,
) -> Result<Rescued, ExportError> {
    let found = crate::journal::rescue(file, Some(shelf), told)?;
    let found = if no_backup { found.without_backup()? } else { found };
    if found.entries.is_empty() {
        return Ok(found);
    }
    share::write_whole(to, Existing::Refuse, |out| share::write_lines(&found.entries, out).map(|_| ()))
        .map_err(ExportError::File)?;
    Ok(found)
}

/// Writes a file of another format, whole or not at all; one that stands there stays.
pub(crate) fn write_new_file(file: &Path, text: &[u8]) -> Result<(), FileFault> {
    share::write_whole(file, Existing::Refuse, |out| out.write_all(text))
}

/// A file opened for reading only: whatever can still be read can be given out, of a newer version too.
pub struct Reading(Journal);

impl Reading {
    /// Opens a file for reading.
    pub fn open(file: &Path, shelf: &Path) -> Result<Reading, JournalError> {
        Journal::open_read_only_beside(file, shelf).map(Reading)
    }

    /// What the file has to tell.
    pub(crate) fn notes(&self) -> &[Note] {
        self.0.notes()
    }

    /// Writes every entry out, the same bytes for the same journal; says how many.
    pub fn export(&self, what: Export, out: &mut dyn Write) -> Result<u64, ExportError> {
        export(&self.0, what, out)
    }

    /// The same into a file that is there whole or not at all.
    pub(crate) fn export_to(&self, what: Export, file: &Path) -> Result<u64, ExportError> {
        let mut text = Vec::new();
        let entries = export(&self.0, what, &mut text)?;
        share::write_whole(file, Existing::Refuse, |out| out.write_all(&text)).map_err(ExportError::File)?;
        Ok(entries)
    }

    /// A verified copy of the file.
    pub fn backup(&self, to: &Path) -> Result<BackupReport, JournalError> {
        self.0.backup(to)
    }
}

/// Throws away what is kept to begin quickly; no entry is touched. Nothing where the file can only be read.
pub(crate) fn drop_kept_stories(file: &Path, shelf: &Path) -> Result<(), JournalError> {
    Journal::open(file, shelf)?.drop_stories()
}

/// What other people of this machine can do with a file. A new nursery is its owner's alone (mode 0600).
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum OthersCan {
    /// Read it.
    Read,
    /// Write to it.
    Write,
}

/// What others can do with a file: nothing where they may not enter one of the folders above it.
pub(crate) fn others_can(file: &Path) -> Option<OthersCan> {
    let file = file.canonicalize().ok()?;
    let mut open = mode_of(&file) & 0o066;
    for folder in file.ancestors().skip(1) {
        let entered = mode_of(folder);
        open &= if entered & 0o010 == 0 { 0o006 } else { 0o066 };
        open &= if entered & 0o001 == 0 { 0o060 } else { 0o066 };
    }
    match open {
        0 => None,
        open if open & 0o022 != 0 => Some(OthersCan::Write),
        _ => Some(OthersCan::Read),
    }
}

#[cfg(unix)]
fn mode_of(file: &Path) -> u32 {
    std::fs::metadata(file).map_or(0, |about| std::os::unix::fs::MetadataExt::mode(&about))
}

/// The system knows no such thing.
#[cfg(not(unix))]
fn mode_of(_: &Path) -> u32 {
    0
}

/// What replaying a whole file shows.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Replay {
    /// Trays and beds whose accounts do not add up.
    pub unbalanced: Vec<String>,
    /// Whether folding a part after the other gives the same books as folding all at once.
    pub same: bool,
    /// Whether the stories kept beside the entries are those that the entries give; true where none are kept, or they are of
    /// another program, which does not use them.
    pub kept_stories_true: bool,
    /// Doubts, which are no damage.
    pub doubts: usize,
}

/// Replays a file twice, a part after the other and all at once, and adds up every account. Reads only. Says how many of the
/// entries have been replayed, of all; a break ends it.
pub fn replay(
    file: &Path,
    now: Now,
    told: &mut dyn FnMut(usize, usize) -> ControlFlow<()>,
) -> Result<Replay, JournalError> {
    let journal = Journal::open_read_only(file)?;
    let (entries, kept) = {
        let _together = journal.read_together()?;
        (journal.entries_after(0)?.0, KeptStories::of(&journal)?)
    };
    let newest = entries.iter().map(|entry| entry.happened).max().unwrap_or(now.today).max(now.today);
    let view = View { day: newest, known: None };
    let at_once = Fold::new(view, newest, entries.iter().cloned());
    let kept_stories_true = kept.is_none_or(|kept| kept.are_true(&entries, &at_once));
    // Arrival in the other direction: every entry but the last is a late one.
    let mut stepwise = Fold::new(view, newest, std::iter::empty());
    let (step, mut done) = (REPLAY_STEP.max(entries.len() / REPLAY_STEPS), 0);
    for part in entries.chunks(step).rev() {
        stepwise.add(part.iter().cloned());
        done += part.len();
        if told(done, entries.len()).is_break() {
            return Err(JournalError::Cancelled);
        }
    }
    let mut unbalanced: Vec<String> = Vec::new();
    unbalanced
        .extend(at_once.trays().values().filter(|story| story.accounts.balance() != 0).map(|s| s.code.to_string()));
    unbalanced.extend(at_once.beds().values().filter(|story| story.balance() != 0).map(|story| story.name.to_string()));
    let same =
        at_once.trays() == stepwise.trays() && at_once.lots() == stepwise.lots() && at_once.beds() == stepwise.beds();
    Ok(Replay { unbalanced, same, kept_stories_true, doubts: at_once.all_doubts().len() })
}

/// Fewest entries added in one step of the second replay.
const REPLAY_STEP: usize = 64;
/// Most steps of it: every step folds what it touches from its beginning, so that more would cost their square.
const REPLAY_STEPS: usize = 64;

fn export(journal: &Journal, what: Export, out: &mut dyn Write) -> Result<u64, ExportError> {
    let mut entries = 0;
    match what {
        Export::Lines => {
            journal.sealed::<ExportError>(&mut |sealed| {
                entries += 1;
                Ok(share::write_line(&sealed, out)?)
            })?;
            out.flush()?;
            Ok(entries)
        }
        Export::Csv(table_for) => {
            let mut all: Vec<Sealed> = Vec::new();
            journal.sealed::<ExportError>(&mut |sealed| {
                all.push(sealed);
                Ok(())
            })?;
            share::write_csv(all.iter(), table_for, out)?;
            Ok(all.len() as u64)
        }
    }
}

/// Refusals of drafts are numbered by draft; a person knows the lines of the file.
pub(super) fn with_lines(fault: DeskError, numbers: &[usize]) -> DeskError {
    match fault {
        DeskError::Refused(refused) => DeskError::Refused(
            refused
                .into_iter()
                .map(|one| {
                    let at = if one.line == 0 { 0 } else { one.line - 1 };
                    Refused { line: numbers.get(at).copied().unwrap_or(one.line), why: one.why }
                })
                .collect(),
        ),
        DeskError::Journal(fault) => DeskError::Journal(fault),
    }
}
