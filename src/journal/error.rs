//! What can go wrong with the file. Sentences for people are made in `wording`; the fields say what they need.

use std::path::{Path, PathBuf};

use crate::base::{DeviceId, EntryId};

/// Why the file cannot be opened, read or written. Nothing was written where one of these is returned.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum JournalError {
    /// No file there.
    #[error("there is no file {}", .0.display())]
    NotThere(PathBuf),
    /// No folder there to put a file in.
    #[error("there is no folder {}", .0.display())]
    NoFolder(PathBuf),
    /// A file is there already, and none is ever replaced.
    #[error("{} is there already", .0.display())]
    AlreadyThere(PathBuf),
    /// A file, but not a nursery's.
    #[error("{} is not a nursery file", .0.display())]
    NotOurs(PathBuf),
    /// A newer version of the program wrote it. It can still be opened read-only and exported.
    #[error("the file has version {file}, this program knows versions up to {program}")]
    Newer {
        /// The file's version.
        file: i64,
        /// The newest version this program knows.
        program: i64,
    },
    /// The write-ahead log beside the file belongs to another nursery, or to another state of this one.
    #[error("the log {} is not that of the file", .0.display())]
    ForeignLog(PathBuf),
    /// Tables, indexes or guards of these names are not as this program made them.
    #[error("the schema was changed: {}", .0.join(", "))]
    ChangedSchema(Vec<String>),
    /// The file that was opened no longer lies at its place.
    #[error("{} was taken away or replaced", .0.display())]
    TakenAway(PathBuf),
    /// What was written is not in the file.
    #[error("what was written is not in the file: {0}")]
    NotWritten(EntryId),
    /// Another program is writing, and did not end in time.
    #[error("another program is writing to the file")]
    Busy,
    /// The disk is full.
    #[error("the disk is full")]
    Full,
    /// The file was opened read-only.
    #[error("the file is open for reading only")]
    ReadOnly,
    /// What is stored cannot be read, or a line cannot be stored.
    #[error("damaged{}: {what}", .entry.as_ref().map_or_else(String::new, |entry| format!(" at {entry}")))]
    Damaged {
        /// What was found.
        what: String,
        /// The entry it was found in, where it can be named.
        entry: Option<EntryId>,
    },
    /// An entry of the same device and number is here already and says something else.
    #[error("{entry} is here already and says something else")]
    Fork {
        /// The entry.
        entry: EntryId,
    },
    /// A device's entries do not follow on those that are here.
    #[error("entries {from} to {to} of {device} are missing")]
    Gap {
        /// The device.
        device: DeviceId,
        /// First missing number.
        from: u64,
        /// Last missing number.
        to: u64,
    },
    /// The hash of an entry is not that of its content.
    #[error("the hash of {entry} is not that of what it says")]
    WrongHash {
        /// The entry.
        entry: EntryId,
    },
    /// An entry names another entry before it than the one that is here.
    #[error("{entry} follows on another entry than the one that is here")]
    WrongPrevious {
        /// The entry.
        entry: EntryId,
    },
    /// It was stopped from outside before it was done.
    #[error("stopped before it was done; nothing was written")]
    Cancelled,
    /// The system refused a file or folder.
    #[error("{}: {text}", .path.display())]
    Io {
        /// The file or folder.
        path: PathBuf,
        /// What kind of trouble it is.
        kind: std::io::ErrorKind,
        /// What the system said.
        text: String,
    },
    /// Anything else SQLite says.
    #[error("SQLite: {0}")]
    Sqlite(String),
}

impl JournalError {
    /// What the system said about a path.
    pub(super) fn io(path: &Path, error: &std::io::Error) -> JournalError {
        match error.kind() {
            std::io::ErrorKind::StorageFull | std::io::ErrorKind::QuotaExceeded => JournalError::Full,
            std::io::ErrorKind::NotFound => JournalError::NotThere(path.to_path_buf()),
            kind => JournalError::Io { path: path.to_path_buf(), kind, text: error.to_string() },
        }
    }

    /// The same of the file that was to be made: what was being written bore another name until it was finished.
    pub(super) fn about_new(self, path: &Path) -> JournalError {
        let path = path.to_path_buf();
        match self {
            JournalError::Io { kind, text, .. } => JournalError::Io { path, kind, text },
            JournalError::NotThere(_) => {
                let kind = std::io::ErrorKind::NotFound;
                JournalError::Io { path, kind, text: kind.to_string() }
            }
            other => other,
        }
    }

    /// What went wrong while a copy was written: it is of that file, and of the disk on which it was to lie.
    pub(super) fn about_copy(self, path: &Path) -> JournalError {
        let io = |kind, text| JournalError::Io { path: path.to_path_buf(), kind, text };
        match self {
            JournalError::Full => {
                let kind = std::io::ErrorKind::StorageFull;
                io(kind, kind.to_string())
            }
            JournalError::Sqlite(text) => io(std::io::ErrorKind::Other, text),
            other => other.about_new(path),
        }
    }

    /// An entry that cannot be read or stored.
    pub(super) fn damaged_at(entry: &EntryId, what: impl std::fmt::Display) -> JournalError {
        JournalError::Damaged { what: what.to_string(), entry: Some(entry.clone()) }
    }
}

impl From<rusqlite::Error> for JournalError {
    fn from(error: rusqlite::Error) -> JournalError {
        use rusqlite::ErrorCode;
        let text = error.to_string();
        match error.sqlite_error_code() {
            // The last is what SQLite says where another program stands still while it opens the log.
            Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked | ErrorCode::FileLockingProtocolFailed) => {
                JournalError::Busy
            }
            Some(ErrorCode::DiskFull) => JournalError::Full,
            Some(ErrorCode::ReadOnly) => JournalError::ReadOnly,
            Some(ErrorCode::DatabaseCorrupt | ErrorCode::NotADatabase) => {
                JournalError::Damaged { what: text, entry: None }
            }
            _ if is_damage(&error, &text) => JournalError::Damaged { what: text, entry: None },
            _ => JournalError::Sqlite(text),
        }
    }
}

/// Whether a table, or what stands in one, is not what this program made there: it asks for nothing else.
fn is_damage(error: &rusqlite::Error, text: &str) -> bool {
    use rusqlite::Error;
    let is_other = matches!(
        error,
        Error::InvalidColumnType(..) | Error::FromSqlConversionFailure(..) | Error::IntegralValueOutOfRange(..)
    );
    is_other || text.starts_with("no such table") || text.starts_with("no such column")
}
