//! In and out: imports are checked like what is written by hand, exports give every entry as it stands.

use std::io::{self, BufRead, Write};
use std::path::Path;

use super::refusal::{DeskError, Refused};
use super::{Desk, Recorded};
use crate::base::Day;
use crate::journal::{BackupReport, CheckReport, JournalError};
use crate::nursery::envelope::{Draft, Sealed};
use crate::share::{self, Existing, FileFault, PairFault, ReadFault, Written};

/// What an export writes.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Export {
    /// Entries, one a line.
    Lines,
    /// A table.
    Csv,
}

/// Why an import was not taken.
#[derive(Debug)]
pub enum ImportError {
    /// Lines that cannot be read.
    Read(ReadFault),
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
}

/// Reads what was typed as `KIND key=value ...`.
pub fn read_typed(kind: &str, pairs: &[String], today: Day, who: &str) -> Result<Draft, PairFault> {
    share::read_pairs(kind, pairs, today, who)
}

/// Proves a file without writing to it.
pub fn check(file: &Path) -> Result<CheckReport, JournalError> {
    crate::journal::check(file)
}

impl Desk {
    /// Takes a file of entries whole or not at all; `only_try` says what it would bring and writes nothing.
    pub fn import(&mut self, input: impl BufRead, who: &str, only_try: bool) -> Result<Imported, ImportError> {
        let lines = share::read_lines(input, self.now().today, who).map_err(ImportError::Read)?;
        let read = lines.len();
        let (mut known, mut drafts, mut numbers) = (Vec::new(), Vec::new(), Vec::new());
        for line in lines {
            match line.written {
                Written::Sealed(sealed) => known.push(sealed),
                Written::Draft(draft) => {
                    drafts.push(draft);
                    numbers.push(line.number);
                }
            }
        }
        let moment = self.now().moment;
        let taken = if only_try { self.try_out(known, drafts) } else { self.take(known, drafts, moment) };
        match taken {
            Ok(recorded) => Ok(Imported { lines: read, recorded }),
            Err(fault) => Err(ImportError::Desk(with_lines(fault, &numbers))),
        }
    }

    fn try_out(&mut self, known: Vec<Sealed>, drafts: Vec<Draft>) -> Result<Recorded, DeskError> {
        let already = known.len();
        let doubts = if known.is_empty() { self.rehearse(drafts)? } else { Vec::new() };
        Ok(Recorded { entries: Vec::new(), already, doubts })
    }

    /// Writes every entry out: the same bytes for the same journal.
    pub fn export(&self, what: Export, out: &mut dyn Write) -> Result<(), ExportError> {
        export(self.journal(), what, out)
    }

    /// The same into a file that is there whole or not at all.
    pub fn export_to(&self, what: Export, file: &Path) -> Result<(), ExportError> {
        let mut text = Vec::new();
        export(self.journal(), what, &mut text)?;
        share::write_whole(file, Existing::Refuse, |out| out.write_all(&text)).map_err(ExportError::File)
    }

    /// A verified copy of the file.
    pub fn backup(&self, to: &Path) -> Result<BackupReport, JournalError> {
        self.journal().backup(to)
    }
}

fn export(journal: &crate::journal::Journal, what: Export, out: &mut dyn Write) -> Result<(), ExportError> {
    match what {
        Export::Lines => {
            journal.sealed::<ExportError>(&mut |sealed| Ok(share::write_line(&sealed, out)?))?;
            Ok(out.flush()?)
        }
        Export::Csv => {
            let mut all: Vec<Sealed> = Vec::new();
            journal.sealed::<ExportError>(&mut |sealed| {
                all.push(sealed);
                Ok(())
            })?;
            Ok(share::write_csv(all.iter(), out)?)
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
