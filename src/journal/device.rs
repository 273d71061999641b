//! Which device this copy writes as. Noted beside the settings, not in the file: a file that was copied or restored must
//! not go on under the same device, or two entries would come to share one identity.
//!
//! Before each commit the numbers it needs are reserved in the note, after it the last number and its hash are noted.
//! A file is taken for the one the note speaks of when its last number of that device lies from the noted to the
//! reserved one, and the entry at the noted number has the noted hash.

use rusqlite::{Connection, OptionalExtension, params};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::fs::{self, File, OpenOptions};
use std::path::{Path, PathBuf};

use super::disk;
use super::error::JournalError;
use super::note::Note;
use crate::base::{DeviceId, Moment};
use crate::nursery::envelope::Hash;

/// Name of the note.
pub(super) const DEVICES: &str = "devices.json";
/// Name of the lock that keeps two programs from writing the note at once.
const LOCK: &str = "devices.lock";

/// What is noted of one device.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub(super) struct DeviceNote {
    pub device: DeviceId,
    /// The last number known to be in the file.
    pub last_seq: u64,
    /// The last number that may be in the file.
    pub reserved_to: u64,
    /// Hash of the entry at `last_seq`; none before the first.
    pub head: Option<String>,
    /// What tells the file from a copy of it, where the system has such a mark.
    pub file: Option<String>,
}

/// Every file's devices, the one last used behind.
#[derive(Default, Debug, Serialize, Deserialize)]
struct Devices {
    version: u32,
    files: BTreeMap<String, Vec<DeviceNote>>,
}

/// The last entry of a device in a file.
#[derive(Clone, Copy, PartialEq, Debug, Default)]
pub(super) struct Head {
    pub seq: u64,
    pub hash: Option<Hash>,
    pub recorded: Option<Moment>,
}

/// The folder beside the settings.
#[derive(Debug)]
pub(super) struct DeviceStore {
    folder: PathBuf,
    file_id: String,
    file: PathBuf,
    /// The device of this run, where the folder cannot be written.
    run_only: Option<DeviceNote>,
}

/// Numbers reserved for a commit. The lock is held until it is dropped.
pub(super) struct Reservation {
    pub device: DeviceId,
    pub head: Head,
    note: DeviceNote,
    lock: Option<File>,
}

impl DeviceStore {
    pub fn new(folder: &Path, file_id: &str, file: &Path) -> DeviceStore {
        DeviceStore { folder: folder.into(), file_id: file_id.into(), file: file.into(), run_only: None }
    }

    /// The device the next entry will be written as, where it is known already.
    pub fn device(&self, journal: &Connection) -> Result<Option<DeviceId>, JournalError> {
        let noted = self.read().unwrap_or_default();
        Ok(self.known(journal, &noted)?.map(|(note, _)| note.device))
    }

    /// Every device this file was written as from here, the last one behind.
    pub fn devices(&self) -> Vec<DeviceId> {
        let noted = self.read().unwrap_or_default();
        let of_file = noted.files.get(&self.file_id).into_iter().flatten();
        of_file.chain(&self.run_only).map(|note| note.device.clone()).collect()
    }

    /// Notes what a run that was cut short between commit and note had written.
    pub fn catch_up(&self, journal: &Connection) -> Result<(), JournalError> {
        let Ok(_lock) = self.lock() else { return Ok(()) };
        let Ok(mut noted) = self.read() else { return Ok(()) };
        if let Some((note, head)) = self.known(journal, &noted)?
            && head.seq > note.last_seq
            && self.run_only.is_none()
        {
            noted.put(&self.file_id, settled(&note, head.seq, head.hash));
            // Only a precaution: the note still fits the file where it cannot be written.
            let _ = self.write(&noted);
        }
        Ok(())
    }

    /// Reserves `count` numbers of the device this file is written as; inside the write transaction.
    pub fn reserve(
        &mut self,
        journal: &Connection,
        count: u64,
        notes: &mut Vec<Note>,
    ) -> Result<Reservation, JournalError> {
        let lock = self.lock();
        let noted = lock.as_ref().map_or_else(|error| Err(error.clone()), |_| self.read_or_put_aside(notes));
        let known = self.known(journal, noted.as_ref().unwrap_or(&Devices::default()))?;
        let before = noted.as_ref().ok().and_then(|noted| noted.files.get(&self.file_id)?.last().cloned());
        let is_new = known.is_none();
        let (mut note, head) = match known {
            Some(known) => known,
            None => (fresh_note(journal)?, Head::default()),
        };
        note = DeviceNote {
            reserved_to: head.seq + count,
            file: disk::file_mark(&self.file),
            ..settled(&note, head.seq, head.hash)
        };
        let saved = noted.and_then(|mut noted| {
            noted.put(&self.file_id, note.clone());
            if self.run_only.is_some() { Ok(()) } else { self.write(&noted) }
        });
        if let (Err(error), None) = (saved, &self.run_only) {
            note = DeviceNote { reserved_to: count, ..fresh_note(journal)? };
            notes.push(Note::DeviceOfThisRun { device: note.device.clone(), why: error.to_string() });
            self.run_only = Some(note.clone());
            return Ok(Reservation { device: note.device.clone(), head: Head::default(), note, lock: None });
        }
        if let (Some(before), true) = (before, is_new) {
            notes.push(Note::NewDevice { before: before.device, now: note.device.clone() });
        }
        Ok(Reservation { device: note.device.clone(), head, note, lock: lock.ok() })
    }

    /// Notes what a commit has written, or with the head unchanged that it was not made.
    pub fn settle(&mut self, reservation: Reservation, seq: u64, hash: Option<Hash>, notes: &mut Vec<Note>) {
        let note = settled(&reservation.note, seq, hash);
        if self.run_only.is_some() {
            self.run_only = Some(note);
            return;
        }
        let saved = self.read().and_then(|mut noted| {
            noted.put(&self.file_id, note);
            self.write(&noted)
        });
        if let Err(error) = saved {
            notes.push(Note::DeviceNotNoted { why: error.to_string() });
        }
        drop(reservation.lock);
    }

    /// The noted device that this very file was last written as, with its last entry.
    fn known(&self, journal: &Connection, noted: &Devices) -> Result<Option<(DeviceNote, Head)>, JournalError> {
        let mark = disk::file_mark(&self.file);
        let of_file = noted.files.get(&self.file_id).map_or(&[][..], Vec::as_slice);
        // A run that could not note its device keeps to it, also where the folder can be written again.
        for note in self.run_only.as_ref().map_or(of_file, std::slice::from_ref).iter().rev() {
            let head = head_of(journal, &note.device)?;
            let noted_hash = hash_at(journal, &note.device, note.last_seq)?.map(|hash| hash.to_string());
            let fits = (note.last_seq..=note.reserved_to).contains(&head.seq) && noted_hash == note.head;
            // Reserved but not in the file: the commit was never made, or this is a copy from before it.
            let open = note.reserved_to > note.last_seq && head.seq == note.last_seq;
            if fits && (!open || (mark.is_some() && mark == note.file)) {
                return Ok(Some((note.clone(), head)));
            }
        }
        Ok(None)
    }

    fn lock(&self) -> Result<File, JournalError> {
        disk::make_folder(&self.folder)?;
        let path = self.folder.join(LOCK);
        let mut options = OpenOptions::new();
        options.write(true).create(true).truncate(false);
        #[cfg(unix)]
        std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
        let file = options.open(&path).map_err(|error| JournalError::io(&path, &error))?;
        match file.lock() {
            // Some network shares know no locks; one program at a time is all that can be had there.
            Err(error) if error.kind() != std::io::ErrorKind::Unsupported => Err(JournalError::io(&path, &error)),
            Ok(()) | Err(_) => Ok(file),
        }
    }

    fn read(&self) -> Result<Devices, JournalError> {
        let path = self.folder.join(DEVICES);
        match fs::read(&path) {
            Ok(bytes) => serde_json::from_slice(&bytes)
                .map_err(|error| JournalError::Damaged { what: format!("{DEVICES}: {error}"), entry: None }),
            Err(error) if error.kind() == std::io::ErrorKind::NotFound => Ok(Devices::default()),
            Err(error) => Err(JournalError::io(&path, &error)),
        }
    }

    fn read_or_put_aside(&self, notes: &mut Vec<Note>) -> Result<Devices, JournalError> {
        match self.read() {
            Err(JournalError::Damaged { .. }) => {
                let path = self.folder.join(DEVICES);
                let aside = disk::beside(&path, "", &format!(".unreadable-{}", disk::random_word()));
                fs::rename(&path, &aside).map_err(|error| JournalError::io(&path, &error))?;
                notes.push(Note::DevicesPutAside(aside));
                Ok(Devices::default())
            }
            other => other,
        }
    }

    fn write(&self, devices: &Devices) -> Result<(), JournalError> {
        let text = serde_json::to_string_pretty(&Devices { version: 1, files: devices.files.clone() })
            .map_err(|error| JournalError::Damaged { what: error.to_string(), entry: None })?;
        disk::replace_file(&self.folder.join(DEVICES), text.as_bytes())
    }
}

impl Devices {
    fn put(&mut self, file_id: &str, note: DeviceNote) {
        let of_file = self.files.entry(file_id.to_string()).or_default();
        of_file.retain(|known| known.device != note.device);
        of_file.push(note);
    }
}

/// What a note says was saved in a file.
pub(super) struct Noted {
    /// The file's own id.
    pub file_id: String,
    /// The device it was last written as.
    pub device: DeviceId,
    /// The last number that was saved.
    pub last_seq: u64,
}

/// What was saved in this very file, not in a copy of it. Nothing where the note cannot be read.
pub(super) fn noted_in(shelf: &Path, file: &Path) -> Vec<Noted> {
    let Some(mark) = disk::file_mark(file) else { return Vec::new() };
    let noted = DeviceStore::new(shelf, "", file).read().unwrap_or_default();
    let last = noted.files.into_iter().filter_map(|(file_id, mut notes)| Some((file_id, notes.pop()?)));
    last.filter(|(_, note)| note.file.as_ref() == Some(&mark))
        .map(|(file_id, note)| Noted { file_id, device: note.device, last_seq: note.last_seq })
        .collect()
}

fn settled(note: &DeviceNote, seq: u64, hash: Option<Hash>) -> DeviceNote {
    DeviceNote { last_seq: seq, reserved_to: seq, head: hash.map(|hash| hash.to_string()), ..note.clone() }
}

fn fresh_note(journal: &Connection) -> Result<DeviceNote, JournalError> {
    loop {
        let word = disk::random_word();
        let device = DeviceId::new(&word)
            .ok_or_else(|| JournalError::Damaged { what: format!("bug: '{word}' is no device"), entry: None })?;
        if head_of(journal, &device)?.seq == 0 {
            return Ok(DeviceNote { device, last_seq: 0, reserved_to: 0, head: None, file: None });
        }
    }
}

/// The last entry of a device; number 0 where it has none.
pub(super) fn head_of(journal: &Connection, device: &DeviceId) -> Result<Head, JournalError> {
    let mut statement =
        journal.prepare_cached("SELECT seq, hash, recorded FROM entry WHERE device = ?1 ORDER BY seq DESC LIMIT 1")?;
    let found = statement.query_row(params![device.as_str()], |row| {
        let (seq, hash, recorded): (i64, [u8; 32], i64) = (row.get(0)?, row.get(1)?, row.get(2)?);
        Ok(Head { seq: seq.unsigned_abs(), hash: Some(Hash(hash)), recorded: Some(Moment::from_millis(recorded)) })
    });
    Ok(found.optional()?.unwrap_or_default())
}

/// The hash of one entry, where it is in the file.
pub(super) fn hash_at(journal: &Connection, device: &DeviceId, seq: u64) -> Result<Option<Hash>, JournalError> {
    let mut statement = journal.prepare_cached("SELECT hash FROM entry WHERE device = ?1 AND seq = ?2")?;
    let seq = i64::try_from(seq).unwrap_or(i64::MAX);
    Ok(statement.query_row(params![device.as_str(), seq], |row| row.get(0)).optional()?.map(Hash))
}
