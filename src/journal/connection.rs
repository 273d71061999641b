//! Opening the SQLite file, with the settings that make "saved" true.

use rusqlite::config::DbConfig;
use rusqlite::{Connection, ErrorCode, OpenFlags};
use std::fs;
use std::io::Read;
use std::path::{Path, PathBuf};
use std::time::Duration;

use super::carve;
use super::disk;
use super::error::JournalError;
use super::note::{Note, WhyReadOnly};
use super::schema;

/// How long a write waits for another program to end its own.
const PATIENCE: Duration = Duration::from_secs(5);
/// What is kept of the write-ahead log between checkpoints, bytes.
const LOG_KEPT_BYTES: i64 = 16 * 1024 * 1024;

/// What the header of the file says. SQLite file format, section 1.3.
const HEADER_BYTES: usize = 100;

/// Refuses what is no nursery file and what a newer version wrote, before anything is written. Gives the version.
/// `own_log`: whether the log beside it counts.
pub(super) fn version_of(path: &Path, program: i64, own_log: bool) -> Result<i64, JournalError> {
    let mut version = version_in_header(path)?;
    if own_log && log_holds_something(path) {
        // The newest header may be in the log; a connection that only reads leaves both as they are.
        version = match open_for_reading(path).and_then(|connection| schema::version(&connection)) {
            // The damage is told by whoever opens the file next; the header alone says whose it is.
            Err(JournalError::Damaged { .. }) => version,
            other => other?,
        };
    }
    match version {
        ..=0 => Err(JournalError::NotOurs(path.to_path_buf())),
        file if file > program => Err(JournalError::Newer { file, program }),
        known => Ok(known),
    }
}

fn version_in_header(path: &Path) -> Result<i64, JournalError> {
    refuse_what_is_no_file(path)?;
    let not_ours = || JournalError::NotOurs(path.to_path_buf());
    let mut header = Vec::with_capacity(HEADER_BYTES);
    let file = fs::File::open(path).map_err(|error| JournalError::io(path, &error))?;
    file.take(HEADER_BYTES as u64).read_to_end(&mut header).map_err(|error| JournalError::io(path, &error))?;
    if header.len() < HEADER_BYTES || !header.starts_with(b"SQLite format 3\0") {
        return Err(not_ours());
    }
    let number_at = |at: usize| header.get(at..at + 4).map_or(0, |b| i32::from_be_bytes([b[0], b[1], b[2], b[3]]));
    if number_at(68) == schema::APPLICATION_ID { Ok(i64::from(number_at(60))) } else { Err(not_ours()) }
}

/// Refuses what is no file: a pipe or a device may never come to an end.
pub(super) fn refuse_what_is_no_file(path: &Path) -> Result<(), JournalError> {
    let about = fs::metadata(path).map_err(|error| JournalError::io(path, &error))?;
    if about.is_file() { Ok(()) } else { Err(JournalError::NotOurs(path.to_path_buf())) }
}

/// Refuses a file beside which lies a log that is not its own, before SQLite sees either.
pub(super) fn refuse_foreign_log(path: &Path) -> Result<(), JournalError> {
    if !log_holds_something(path) {
        return Ok(());
    }
    version_in_header(path)?;
    if carve::is_foreign(path) { Err(JournalError::ForeignLog(disk::beside(path, "", "-wal"))) } else { Ok(()) }
}

fn log_holds_something(path: &Path) -> bool {
    fs::metadata(disk::beside(path, "", "-wal")).is_ok_and(|about| about.len() > 0)
}

/// Opens for reading and writing with all settings; the file must be there.
pub(super) fn open_for_writing(path: &Path, notes: &mut Vec<Note>) -> Result<Connection, JournalError> {
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let connection = Connection::open_with_flags(path, flags)?;
    guard(&connection)?;
    if connection.is_readonly("main")? {
        return Err(JournalError::ReadOnly);
    }
    notes.extend(choose_journal_mode(&connection)?);
    Ok(connection)
}

/// Opens for reading only. Where the folder gives no room for SQLite's own files and no log is there, the file is read
/// as one that nobody changes.
pub(super) fn open_for_reading(path: &Path) -> Result<Connection, JournalError> {
    let opened = if needs_no_mending(path) { open_to_tidy_up(path) } else { open_guarded(path, false) };
    match opened {
        Err(JournalError::Sqlite(_) | JournalError::ReadOnly) if !log_holds_something(path) => open_guarded(path, true),
        other => other,
    }
}

/// Whether no log with entries in it, and none of a commit that was cut short, lies beside a file that may be written: then
/// closing it changes nothing in it.
fn needs_no_mending(path: &Path) -> bool {
    let journal = fs::symlink_metadata(disk::beside(path, "", "-journal")).is_ok();
    !journal && !log_holds_something(path) && marked_read_only(path).is_none()
}

/// Opens a file in which nothing may be changed, and which the last one to close leaves alone in its folder: a connection that
/// could not write could not take away what SQLite lays beside it either.
fn open_to_tidy_up(path: &Path) -> Result<Connection, JournalError> {
    let flags =
        OpenFlags::SQLITE_OPEN_READ_WRITE.union(OpenFlags::SQLITE_OPEN_NO_MUTEX).union(OpenFlags::SQLITE_OPEN_URI);
    let connection = Connection::open_with_flags(uri(path, false), flags)?;
    guard(&connection)?;
    connection.pragma_update(None, "query_only", true)?;
    schema::version(&connection)?;
    Ok(connection)
}

/// Opens for reading only. `resting`: as a file that nobody changes, which leaves nothing beside it.
pub(super) fn open_guarded(path: &Path, resting: bool) -> Result<Connection, JournalError> {
    let connection = Connection::open_with_flags(uri(path, resting), READING)?;
    guard(&connection)?;
    schema::version(&connection)?;
    Ok(connection)
}

/// Opens a damaged file for reading what can still be read. SQLite refuses a file that is shorter than its header says
/// unless the schema may be written; nothing can be written through this connection.
pub(super) fn open_damaged(path: &Path, resting: bool) -> Result<Connection, JournalError> {
    let connection = Connection::open_with_flags(uri(path, resting), READING)?;
    connection.busy_timeout(PATIENCE)?;
    connection.set_db_config(DbConfig::SQLITE_DBCONFIG_TRUSTED_SCHEMA, false)?;
    connection.set_db_config(DbConfig::SQLITE_DBCONFIG_WRITABLE_SCHEMA, true)?;
    Ok(connection)
}

const READING: OpenFlags =
    OpenFlags::SQLITE_OPEN_READ_ONLY.union(OpenFlags::SQLITE_OPEN_NO_MUTEX).union(OpenFlags::SQLITE_OPEN_URI);

/// What a file that nobody writes to looks like: its size and the time of its last change, and no log beside it.
pub(super) fn at_rest(path: &Path) -> Option<(u64, std::time::SystemTime)> {
    let busy = ["-wal", "-journal"].iter().any(|behind| fs::metadata(disk::beside(path, "", behind)).is_ok());
    let about = fs::metadata(path).ok()?;
    if busy { None } else { Some((about.len(), about.modified().ok()?)) }
}

/// The path as a URI, which can tell SQLite that nobody changes the file. SQLite's "URI filenames", section 3.
fn uri(path: &Path, resting: bool) -> PathBuf {
    let absolute = fs::canonicalize(path).unwrap_or_else(|_| path.to_path_buf());
    let mut written = std::ffi::OsString::from("file:");
    written.push(escaped(&absolute));
    written.push(if resting { "?immutable=1" } else { "" });
    PathBuf::from(written)
}

/// Signs that mean something in a URI, written as numbers; all others, also those that are no text, as they are.
#[cfg(unix)]
fn escaped(path: &Path) -> std::ffi::OsString {
    use std::os::unix::ffi::{OsStrExt, OsStringExt};
    let plain = path.as_os_str().as_bytes();
    let signs = plain.iter().flat_map(|byte| match byte {
        b'%' => b"%25".to_vec(),
        b'?' => b"%3f".to_vec(),
        b'#' => b"%23".to_vec(),
        other => vec![*other],
    });
    std::ffi::OsString::from_vec(signs.collect())
}

/// As SQLite wants it for drive letters: slashes, and one before the letter.
#[cfg(not(unix))]
fn escaped(path: &Path) -> std::ffi::OsString {
    let written = path.to_string_lossy().replace("\\\\?\\", "").replace('\\', "/");
    let signs = written.replace('%', "%25").replace('?', "%3f").replace('#', "%23");
    std::ffi::OsString::from(format!("/{signs}"))
}

/// Pages of the file that are kept in memory, KiB; SQLite takes a negative number for that. Ours: what lives of a large book.
const CACHE_KIB: i64 = -16_000;

/// Settings that hold for every connection.
fn guard(connection: &Connection) -> Result<(), JournalError> {
    connection.busy_timeout(PATIENCE)?;
    connection.set_db_config(DbConfig::SQLITE_DBCONFIG_DEFENSIVE, true)?;
    connection.set_db_config(DbConfig::SQLITE_DBCONFIG_TRUSTED_SCHEMA, false)?;
    connection.pragma_update(None, "foreign_keys", true)?;
    connection.pragma_update(None, "recursive_triggers", true)?;
    connection.pragma_update(None, "cell_size_check", true)?;
    connection.pragma_update(None, "cache_size", CACHE_KIB)?;
    // Answers with a row, so it cannot be a plain update.
    connection.pragma_update_and_check(None, "mmap_size", 0, |_| Ok(()))?;
    Ok(())
}

/// Write-ahead log with a full sync at each commit; where that cannot work, a rollback journal with one sync more.
pub(super) fn choose_journal_mode(connection: &Connection) -> Result<Option<Note>, JournalError> {
    let answer = connection.pragma_update_and_check(None, "journal_mode", "WAL", |row| row.get::<_, String>(0));
    let mode = match answer {
        Ok(mode) => mode,
        // A file in this mode on a disk that cannot share memory: alone, it can be brought out of it.
        Err(error) if cannot_share(&error) => {
            connection.pragma_update_and_check(None, "locking_mode", "EXCLUSIVE", |_| Ok(()))?;
            error.to_string()
        }
        Err(error) => return Err(error.into()),
    };
    if mode.eq_ignore_ascii_case("wal") {
        connection.pragma_update(None, "synchronous", "FULL")?;
        connection.pragma_update_and_check(None, "journal_size_limit", LOG_KEPT_BYTES, |_| Ok(()))?;
        return Ok(None);
    }
    connection.pragma_update_and_check(None, "journal_mode", "DELETE", |_| Ok(()))?;
    connection.pragma_update(None, "synchronous", "EXTRA")?;
    connection.pragma_update_and_check(None, "locking_mode", "NORMAL", |_| Ok(()))?;
    Ok(Some(Note::NoWriteAheadLog { answer: mode }))
}

fn cannot_share(error: &rusqlite::Error) -> bool {
    matches!(error.sqlite_error_code(), Some(ErrorCode::SystemIoFailure | ErrorCode::CannotOpen))
}

/// Why a file can only be read, where its owner marked it so.
pub(super) fn marked_read_only(path: &Path) -> Option<WhyReadOnly> {
    if disk::marked_read_only(path) {
        Some(WhyReadOnly::File)
    } else {
        disk::marked_read_only(disk::folder_of(path)).then_some(WhyReadOnly::Folder)
    }
}
