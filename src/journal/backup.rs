//! A whole copy in one file, proven before it gets its name.

use rusqlite::backup::{Backup, StepResult};
use rusqlite::{Connection, OpenFlags};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use super::Journal;
use super::check::{self, CheckReport};
use super::disk;
use super::error::JournalError;
use crate::base::left_behind::sweep;

/// What a finished copy holds.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct BackupReport {
    /// Where it lies.
    pub path: PathBuf,
    /// Entries in it.
    pub entries: u64,
    /// Devices that wrote them.
    pub devices: u64,
    /// Its size, bytes.
    pub bytes: u64,
}

/// The last number and its hash, by device, and the number of entries.
type Heads = (u64, BTreeMap<String, (i64, Vec<u8>)>);

impl Journal {
    /// Copies the nursery into one new file: written beside the target, checked wholly, compared with what is here,
    /// and only then given its name. An existing target is refused. The copy is a nursery file like this one.
    pub fn backup(&self, to: &Path) -> Result<BackupReport, JournalError> {
        copy(&self.connection, to)
    }
}

/// The copy that is kept before an older file is brought up.
pub(super) fn copy_before_bringing_up(
    connection: &Connection,
    path: &Path,
    version: i64,
) -> Result<PathBuf, JournalError> {
    let first = disk::beside(path, "", &format!(".version-{version}"));
    let target = if std::fs::symlink_metadata(&first).is_err() {
        first
    } else {
        disk::beside(path, "", &format!(".version-{version}-{}", disk::random_word()))
    };
    copy(connection, &target).map(|report| report.path)
}

fn copy(source: &Connection, to: &Path) -> Result<BackupReport, JournalError> {
    if std::fs::symlink_metadata(to).is_ok() {
        return Err(JournalError::AlreadyThere(to.to_path_buf()));
    }
    // A folder that is not there is a slip of the pen, or a stick that is not in.
    let folder = disk::folder_of(to);
    if !folder.is_dir() {
        return Err(JournalError::NoFolder(folder.to_path_buf()));
    }
    let name = to.file_name().unwrap_or_default().to_string_lossy();
    sweep(folder, &name, &[".new", ".new-journal", ".new-wal", ".new-shm"]);
    let fresh = disk::beside(to, ".", &format!(".{}.new", disk::random_word()));
    // One reading transaction around the copy, so that what it is compared with is what was copied.
    let reading = source.unchecked_transaction()?;
    let wanted = heads(&reading)?;
    let made = copy_and_prove(&reading, &wanted, &fresh).and_then(|report| {
        let bytes = std::fs::metadata(&fresh).map_err(|error| JournalError::io(&fresh, &error))?.len();
        disk::name_finished(&fresh, to)?;
        Ok(BackupReport { path: to.to_path_buf(), entries: report.entries, devices: report.devices, bytes })
    });
    if made.is_err() {
        // What could not be finished is not left lying about; that it cannot be removed changes nothing.
        let _ = std::fs::remove_file(&fresh);
    }
    made.map_err(|fault| fault.about_copy(to))
}

fn copy_and_prove(reading: &Connection, wanted: &Heads, fresh: &Path) -> Result<CheckReport, JournalError> {
    drop(disk::make_file(fresh)?);
    let mut target = Connection::open_with_flags(fresh, OpenFlags::SQLITE_OPEN_READ_WRITE)?;
    match Backup::new(reading, &mut target)?.step(-1)? {
        StepResult::Done => {}
        StepResult::More | StepResult::Busy | StepResult::Locked => return Err(JournalError::Busy),
        other => return Err(JournalError::Sqlite(format!("the copy ended with {other:?}"))),
    }
    target.pragma_update_and_check(None, "journal_mode", "DELETE", |_| Ok(()))?;
    let found = heads(&target)?;
    target.close().map_err(|(_, error)| error)?;
    let report = check::check(fresh)?;
    if let Some(fault) = report.faults.first() {
        return Err(JournalError::Damaged { what: fault.to_string(), entry: fault.entry().cloned() });
    }
    if found != *wanted {
        return Err(JournalError::Damaged { what: "the copy differs from the file".into(), entry: None });
    }
    Ok(report)
}

fn heads(connection: &Connection) -> Result<Heads, JournalError> {
    let count: i64 = connection.query_row("SELECT count(*) FROM entry", [], |row| row.get(0))?;
    let mut statement = connection.prepare(
        "SELECT device, seq, hash FROM entry AS last
         WHERE seq = (SELECT max(seq) FROM entry WHERE device = last.device)",
    )?;
    let rows = statement.query_map([], |row| Ok((row.get(0)?, (row.get(1)?, row.get(2)?))))?;
    Ok((count.unsigned_abs(), rows.collect::<Result<_, _>>()?))
}
