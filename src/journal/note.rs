//! What the person should know about an open file.

use std::path::PathBuf;

use super::error::JournalError;
use crate::base::DeviceId;

/// Something the person should know about an open file that is no error.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Note {
    /// Opened for reading only.
    ReadOnly(WhyReadOnly),
    /// No write-ahead log can be had where the file lies; a rollback journal is used, which is slower and as safe.
    NoWriteAheadLog {
        /// What SQLite answered.
        answer: String,
    },
    /// An older file was brought up to this version; the file as it was lies here.
    KeptBefore(PathBuf),
    /// The file is a copy or was restored: it goes on as a new device.
    NewDevice {
        /// The device before.
        before: DeviceId,
        /// The device from now on.
        now: DeviceId,
    },
    /// The folder beside the settings cannot be written: this run writes as a device of its own.
    DeviceOfThisRun {
        /// The device.
        device: DeviceId,
        /// What the system said.
        why: JournalError,
    },
    /// The entries are saved, but the device's last number could not be noted.
    DeviceNotNoted {
        /// What the system said.
        why: JournalError,
    },
    /// The note of the devices could not be read and was put aside here.
    DevicesPutAside(PathBuf),
    /// Entries that were acknowledged are not in the file.
    Gone(Gone),
}

/// Entries of one device that were acknowledged and are not in the file.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Gone {
    /// The device.
    pub device: DeviceId,
    /// Number of the first that is missing, where they are missing at the end.
    pub from: u64,
    /// Number of the last that was acknowledged.
    pub to: u64,
}

/// Why a file is open for reading only.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum WhyReadOnly {
    /// It was asked for.
    Asked,
    /// The file cannot be written.
    File,
    /// The folder cannot be written.
    Folder,
    /// The disk has no room for what SQLite puts beside the file.
    NoRoom,
}

impl Gone {
    /// How many entries.
    pub(crate) fn count(&self) -> u64 {
        (self.to + 1).saturating_sub(self.from)
    }
}
