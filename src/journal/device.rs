//! Which device this copy writes as. Noted beside the settings, not in the file: a file that was copied or restored must
//! not go on under the same device, or two entries would come to share one identity.
//!
//! Before each commit the numbers it needs are reserved in the note, after it the last number and its hash are noted.
//! A file is taken for the one the note speaks of when its last number of that device lies from the noted to the
//! reserved one, the entry at the noted number has the noted hash, and the note was made on this machine, of this file or
//! of one at this place.
//!
//! The note also holds what was acknowledged: the last entry of every device that was in the file after a commit. What of
//! it is no longer there is gone, and is said until a person settles it.
//!
//! Each nursery has its own note and its own lock, held only while the note is read and written again: a program that stands
//! still stops no other nursery, and nobody who only reads.

use rusqlite::{Connection, OptionalExtension, params};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::fs::{self, File, OpenOptions, TryLockError};
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use super::disk;
use super::error::JournalError;
use super::note::{Gone, Note};
use crate::base::{DeviceId, EntryId, Moment};
use crate::nursery::envelope::Hash;

/// Folder of the notes, one for each nursery.
pub(super) const DEVICES: &str = "devices";
/// The note of all nurseries, as earlier versions wrote it; read for a nursery that has no note of its own yet.
const DEVICES_OF_ALL: &str = "devices.json";
/// Version of a nursery's own note.
const NOTE_VERSION: u32 = 2;
/// How long a write waits for a program that holds the note. Ours, as for the file itself.
const PATIENCE: Duration = Duration::from_secs(5);
/// Between two tries.
const PAUSE: Duration = Duration::from_millis(20);

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
    /// What tells the machine from another, where the system has such a mark; none in notes of earlier versions.
    #[serde(default)]
    pub machine: Option<String>,
    /// Where the file lay; none in notes of earlier versions.
    #[serde(default)]
    pub place: Option<String>,
}

/// Every nursery's devices, the one last used behind, as earlier versions wrote them.
#[derive(Default, Debug, Serialize, Deserialize)]
struct Devices {
    version: u32,
    files: BTreeMap<String, Vec<DeviceNote>>,
}

/// What is noted of one nursery.
#[derive(Clone, Default, Debug, Serialize, Deserialize)]
struct NurseryNote {
    version: u32,
    /// The devices it was written as from here, the one last used behind.
    devices: Vec<DeviceNote>,
    /// The last entry of every device that was there after a commit, by where the file lies.
    #[serde(default)]
    acknowledged: BTreeMap<String, LastOfEach>,
    /// What was given up, by the entry that says so and where the file lay: it is missed again once that no longer counts.
    #[serde(default)]
    given_up: BTreeMap<String, LastOfEach>,
}

/// The last entry of each device.
type LastOfEach = BTreeMap<DeviceId, Acknowledged>;

/// The last entry of a device that was acknowledged.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
struct Acknowledged {
    seq: u64,
    hash: String,
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

/// Numbers reserved for a commit.
pub(super) struct Reservation {
    pub device: DeviceId,
    pub head: Head,
    note: DeviceNote,
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
        noted.devices.iter().chain(&self.run_only).map(|note| note.device.clone()).collect()
    }

    /// What was acknowledged in the file at this place, or where it lay before, and is not there now. Nothing where the note
    /// cannot be read.
    pub(crate) fn gone(&self, journal: &Connection) -> Result<Vec<Gone>, JournalError> {
        let mut gone = Vec::new();
        for (device, last) in self.missing(&self.read().unwrap_or_default(), journal)? {
            let head = head_of(journal, &device)?.seq;
            gone.push(Gone { device, from: head.min(last.seq - 1) + 1, to: last.seq });
        }
        Ok(gone)
    }

    /// The last entry of each device that was acknowledged here and is not in the file.
    fn missing(&self, noted: &NurseryNote, journal: &Connection) -> Result<LastOfEach, JournalError> {
        let mut missing = LastOfEach::new();
        for (device, last) in noted.acknowledged_in(&self.file, &self.place()) {
            let is_later = missing.get(device).is_none_or(|known| known.seq < last.seq);
            if is_later && !is_there(journal, device, last)? {
                missing.insert(device.clone(), last.clone());
            }
        }
        Ok(missing)
    }

    /// From the next entry on this file is written as a new device.
    pub(crate) fn begin_new(&self, journal: &Connection) -> Result<(), JournalError> {
        let _lock = self.lock(PATIENCE)?;
        let mut noted = self.read()?;
        noted.put(fresh_note(journal)?);
        self.write(&noted)
    }

    /// Takes what is in the file now for all there is: a person said, by this entry, that what is gone was given up.
    pub(crate) fn give_up_what_is_gone(&self, journal: &Connection, by: &EntryId) -> Result<(), JournalError> {
        let _lock = self.lock(PATIENCE)?;
        let mut noted = self.read()?;
        let missing = self.missing(&noted, journal)?;
        noted.forget_where_it_lay(&self.file, &self.place());
        noted.acknowledged.insert(self.place(), acknowledged_now(journal)?);
        noted.given_up.insert(by.to_string(), missing);
        self.write(&noted)
    }

    /// The entry no longer counts by which something was given up: that is missed again.
    pub(crate) fn miss_again(&self, by: &EntryId) -> Result<(), JournalError> {
        let _lock = self.lock(PATIENCE)?;
        let mut noted = self.read()?;
        let Some(missing) = noted.given_up.remove(&by.to_string()) else { return Ok(()) };
        noted.acknowledged.entry(self.place()).or_default().extend(missing);
        self.write(&noted)
    }

    /// Notes what a run that was cut short between commit and note had written. Waits for nobody.
    pub(crate) fn catch_up(&self, journal: &Connection) -> Result<(), JournalError> {
        if self.run_only.is_some() || !self.is_behind(journal, &self.read().unwrap_or_default())? {
            return Ok(());
        }
        let Ok(_lock) = self.lock(Duration::ZERO) else { return Ok(()) };
        let Ok(mut noted) = self.read() else { return Ok(()) };
        if let Some((note, head)) = self.known(journal, &noted)?
            && head.seq > note.last_seq
        {
            noted.put(settled(&note, head.seq, head.hash));
            // Only a precaution: the note still fits the file where it cannot be written.
            let _ = self.write(&noted);
        }
        Ok(())
    }

    fn is_behind(&self, journal: &Connection, noted: &NurseryNote) -> Result<bool, JournalError> {
        Ok(self.known(journal, noted)?.is_some_and(|(note, head)| head.seq > note.last_seq))
    }

    /// Reserves `count` numbers of the device this file is written as; inside the write transaction.
    ///
    /// # Errors
    /// Another program holds the note for longer than a write waits, or the file cannot be read.
    pub(crate) fn reserve(
        &mut self,
        journal: &Connection,
        count: u64,
        notes: &mut Vec<Note>,
    ) -> Result<Reservation, JournalError> {
        let lock = match self.lock(PATIENCE) {
            Err(JournalError::Busy) => return Err(JournalError::Busy),
            other => other,
        };
        let noted = lock.as_ref().map_or_else(|error| Err(error.clone()), |_| self.read_or_put_aside(notes));
        let known = self.known(journal, noted.as_ref().unwrap_or(&NurseryNote::default()))?;
        let before = noted.as_ref().ok().and_then(|noted| noted.devices.last().cloned());
        let is_new = known.is_none();
        let (mut note, head) = match known {
            Some(known) => known,
            None => (fresh_note(journal)?, Head::default()),
        };
        note = DeviceNote {
            reserved_to: head.seq + count,
            file: disk::file_mark(&self.file),
            machine: disk::machine_mark(),
            place: Some(self.place()),
            ..settled(&note, head.seq, head.hash)
        };
        let saved = noted.and_then(|mut noted| {
            noted.put(note.clone());
            if self.run_only.is_some() { Ok(()) } else { self.write(&noted) }
        });
        if let (Err(error), None) = (saved, &self.run_only) {
            note = DeviceNote { reserved_to: count, ..fresh_note(journal)? };
            notes.push(Note::DeviceOfThisRun { device: note.device.clone(), why: error });
            self.run_only = Some(note.clone());
            return Ok(Reservation { device: note.device.clone(), head: Head::default(), note });
        }
        if let (Some(before), true) = (before, is_new) {
            notes.push(Note::NewDevice { before: before.device, now: note.device.clone() });
        }
        Ok(Reservation { device: note.device.clone(), head, note })
    }

    /// Notes what a commit has written, or with the head unchanged that it was not made; and, of a commit, what is in the
    /// file now. Another program may have gone on meanwhile: what it noted is never taken back.
    pub(crate) fn settle(
        &mut self,
        journal: &Connection,
        reservation: Option<(Reservation, Head)>,
        kept: bool,
        notes: &mut Vec<Note>,
    ) {
        let note =
            reservation.map(|(reservation, last)| (settled(&reservation.note, last.seq, last.hash), reservation.note));
        if self.run_only.is_some() {
            self.run_only = note.map(|(note, _)| note).or(self.run_only.take());
            return;
        }
        if note.is_none() && !kept {
            return;
        }
        let saved = self.lock(PATIENCE).and_then(|_lock| {
            let mut noted = self.read()?;
            if let Some((note, reserved)) = note {
                noted.settle(note, &reserved);
            }
            if kept {
                let missing = self.missing(&noted, journal)?;
                noted.forget_where_it_lay(&self.file, &self.place());
                let now = acknowledged_now(journal)?.into_iter().chain(missing).collect();
                noted.acknowledged.insert(self.place(), now);
            }
            self.write(&noted)
        });
        if let Err(error) = saved {
            notes.push(Note::DeviceNotNoted { why: error });
        }
    }

    /// The noted device that this very file was last written as, with its last entry.
    fn known(&self, journal: &Connection, noted: &NurseryNote) -> Result<Option<(DeviceNote, Head)>, JournalError> {
        let (mark, machine) = (disk::file_mark(&self.file), disk::machine_mark());
        // A run that could not note its device keeps to it, also where the folder can be written again.
        for note in self.run_only.as_ref().map_or(&noted.devices[..], std::slice::from_ref).iter().rev() {
            let is_same_file = mark.is_some() && mark == note.file;
            // A file that lies elsewhere and is another one: a home folder that was copied, say, with these notes in it.
            let is_copy = !is_same_file && note.place.as_ref().is_some_and(|place| *place != self.place());
            if is_copy || (note.machine.is_some() && note.machine != machine) {
                continue;
            }
            let head = head_of(journal, &note.device)?;
            let noted_hash = hash_at(journal, &note.device, note.last_seq)?.map(|hash| hash.to_string());
            let fits = (note.last_seq..=note.reserved_to).contains(&head.seq) && noted_hash == note.head;
            // Reserved but not in the file: the commit was never made, or this is a copy from before it.
            let open = note.reserved_to > note.last_seq && head.seq == note.last_seq;
            if fits && (!open || is_same_file) {
                return Ok(Some((note.clone(), head)));
            }
        }
        Ok(None)
    }

    /// Holds the note of this nursery until it is dropped.
    fn lock(&self, patience: Duration) -> Result<File, JournalError> {
        disk::make_folder(&self.folder.join(DEVICES))?;
        let path = self.beside_settings("lock");
        let mut options = OpenOptions::new();
        options.write(true).create(true).truncate(false);
        #[cfg(unix)]
        std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
        let opened = no_pipe(&path).and_then(|()| options.open(&path));
        let file = opened.map_err(|error| JournalError::io(&path, &error))?;
        let begun = Instant::now();
        loop {
            match file.try_lock() {
                Ok(()) => return Ok(file),
                // Some network shares know no locks; one program at a time is all that can be had there.
                Err(TryLockError::Error(error)) if error.kind() == std::io::ErrorKind::Unsupported => return Ok(file),
                Err(TryLockError::Error(error)) => return Err(JournalError::io(&path, &error)),
                Err(TryLockError::WouldBlock) if begun.elapsed() >= patience => return Err(JournalError::Busy),
                Err(TryLockError::WouldBlock) => std::thread::sleep(PAUSE),
            }
        }
    }

    /// Where the file lies, as it is called in the note.
    fn place(&self) -> String {
        fs::canonicalize(&self.file).unwrap_or_else(|_| self.file.clone()).to_string_lossy().into_owned()
    }

    fn beside_settings(&self, ending: &str) -> PathBuf {
        self.folder.join(DEVICES).join(format!("{}.{ending}", self.file_id))
    }

    fn read(&self) -> Result<NurseryNote, JournalError> {
        match read_json(&self.beside_settings("json"))? {
            Some(noted) => Ok(noted),
            None => {
                let mut of_all: Devices = read_json(&self.folder.join(DEVICES_OF_ALL))?.unwrap_or_default();
                let devices = of_all.files.remove(&self.file_id).unwrap_or_default();
                Ok(NurseryNote { devices, ..NurseryNote::default() })
            }
        }
    }

    fn read_or_put_aside(&self, notes: &mut Vec<Note>) -> Result<NurseryNote, JournalError> {
        match self.read() {
            Err(JournalError::Damaged { .. }) => {
                let own = self.beside_settings("json");
                let path = if own.exists() { own } else { self.folder.join(DEVICES_OF_ALL) };
                let aside = disk::beside(&path, "", &format!(".unreadable-{}", disk::random_word()));
                fs::rename(&path, &aside).map_err(|error| JournalError::io(&path, &error))?;
                notes.push(Note::DevicesPutAside(aside));
                self.read()
            }
            other => other,
        }
    }

    fn write(&self, noted: &NurseryNote) -> Result<(), JournalError> {
        let text = serde_json::to_string_pretty(&NurseryNote { version: NOTE_VERSION, ..noted.clone() })
            .map_err(|error| JournalError::Damaged { what: error.to_string(), entry: None })?;
        disk::make_folder(&self.folder.join(DEVICES))?;
        disk::replace_file(&self.beside_settings("json"), text.as_bytes())
    }
}

/// Refuses a pipe or a device, which may never come to an end; what is not there yet is none.
fn no_pipe(path: &Path) -> std::io::Result<()> {
    let is_other = fs::metadata(path).is_ok_and(|about| !about.is_file());
    if is_other { Err(std::io::ErrorKind::Unsupported.into()) } else { Ok(()) }
}

/// A note; nothing where there is none.
fn read_json<T: serde::de::DeserializeOwned>(path: &Path) -> Result<Option<T>, JournalError> {
    match no_pipe(path).and_then(|()| fs::read(path)) {
        Ok(bytes) => serde_json::from_slice(&bytes)
            .map(Some)
            .map_err(|error| JournalError::Damaged { what: format!("{}: {error}", path.display()), entry: None }),
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => Ok(None),
        Err(error) => Err(JournalError::io(path, &error)),
    }
}

impl NurseryNote {
    fn put(&mut self, note: DeviceNote) {
        self.devices.retain(|known| known.device != note.device);
        self.devices.push(note);
    }

    /// Notes how a reservation ended, unless another program has noted more of that device since.
    fn settle(&mut self, note: DeviceNote, reserved: &DeviceNote) {
        let known = self.devices.iter().find(|known| known.device == note.device);
        if known.is_none_or(|known| known == reserved || known.last_seq < note.last_seq) {
            self.put(note);
        }
    }

    /// What was acknowledged of a file at a place, and where it lay before it came there.
    fn acknowledged_in<'n>(
        &'n self,
        file: &Path,
        place: &str,
    ) -> impl Iterator<Item = (&'n DeviceId, &'n Acknowledged)> + use<'n> {
        let places = self.places_of(file, place);
        places.into_iter().filter_map(|place| self.acknowledged.get(&place)).flatten()
    }

    /// The place of a file, and those at which no file lies any more though this very one was written there, or, where nothing
    /// is known of its place yet, another on the same disk: it was moved. A stick that is not plugged in is another disk.
    fn places_of(&self, file: &Path, place: &str) -> Vec<String> {
        let mark = disk::file_mark(file);
        let disk_of = |mark: &str| mark.split_once(':').map(|(disk, _)| disk.to_string());
        let disk = mark.as_deref().and_then(disk_of);
        let is_new = !self.acknowledged.contains_key(place);
        let was_here = |note: &&DeviceNote| {
            mark.is_some() && (note.file == mark || is_new && note.file.as_deref().and_then(disk_of) == disk)
        };
        let before = self.devices.iter().filter(was_here).filter_map(|note| note.place.clone());
        let left = before.filter(|before| before != place && fs::symlink_metadata(before).is_err());
        std::iter::once(place.to_string()).chain(left).collect()
    }

    /// What was acknowledged where a file lay before is from now on told of the place where it lies.
    fn forget_where_it_lay(&mut self, file: &Path, place: &str) {
        for left in self.places_of(file, place).into_iter().skip(1) {
            self.acknowledged.remove(&left);
        }
    }
}

/// The last entry of every device in the file.
fn acknowledged_now(journal: &Connection) -> Result<LastOfEach, JournalError> {
    // Steps from device to device through the index of identities, so that its cost is that of the devices.
    let mut statement = journal.prepare_cached(
        "WITH RECURSIVE known(device) AS (
             SELECT min(device) FROM entry
             UNION ALL
             SELECT (SELECT min(device) FROM entry WHERE device > known.device) FROM known WHERE known.device IS NOT NULL)
         SELECT device FROM known WHERE device IS NOT NULL",
    )?;
    let devices = statement.query_map([], |row| row.get::<_, String>(0))?.collect::<Result<Vec<_>, _>>()?;
    let mut now = BTreeMap::new();
    for device in devices.iter().filter_map(|device| DeviceId::new(device)) {
        let head = head_of(journal, &device)?;
        if let Some(hash) = head.hash {
            now.insert(device, Acknowledged { seq: head.seq, hash: hash.to_string() });
        }
    }
    Ok(now)
}

fn is_there(journal: &Connection, device: &DeviceId, last: &Acknowledged) -> Result<bool, JournalError> {
    Ok(hash_at(journal, device, last.seq)?.is_some_and(|hash| hash.to_string() == last.hash))
}

/// What a note says was saved in a file.
pub(super) struct Noted {
    /// The file's own id.
    pub file_id: String,
    /// A device.
    pub device: DeviceId,
    /// Its last number that was saved.
    pub last_seq: u64,
}

/// What was acknowledged at this place or where it lay before, or saved in this very file, not in a copy of it. Nothing where no note can be read.
pub(super) fn noted_in(shelf: &Path, file: &Path) -> Vec<Noted> {
    let mark = disk::file_mark(file);
    let store = DeviceStore::new(shelf, "", file);
    let place = store.place();
    let mut found = Vec::new();
    for (file_id, noted) in every_note(shelf) {
        let own = noted.devices.last().filter(|note| mark.is_some() && note.file == mark);
        let own = own.map(|note| (note.device.clone(), note.last_seq));
        let acknowledged = noted.acknowledged_in(file, &place);
        let all = acknowledged.map(|(device, last)| (device.clone(), last.seq)).chain(own);
        found.extend(all.map(|(device, last_seq)| Noted { file_id: file_id.clone(), device, last_seq }));
    }
    found
}

/// The notes of all nurseries, those of earlier versions where a nursery has no other.
fn every_note(shelf: &Path) -> BTreeMap<String, NurseryNote> {
    let of_all: Option<Devices> = read_json(&shelf.join(DEVICES_OF_ALL)).ok().flatten();
    let of_all = of_all.map(|of_all| of_all.files).unwrap_or_default();
    let mut notes: BTreeMap<String, NurseryNote> =
        of_all.into_iter().map(|(id, devices)| (id, NurseryNote { devices, ..NurseryNote::default() })).collect();
    for file in fs::read_dir(shelf.join(DEVICES)).into_iter().flatten().flatten() {
        let path = file.path();
        let is_note = path.extension().is_some_and(|ending| ending == "json");
        let id = path.file_stem().map(|stem| stem.to_string_lossy().into_owned()).filter(|_| is_note);
        if let (Some(id), Ok(Some(noted))) = (id, read_json(&path)) {
            notes.insert(id, noted);
        }
    }
    notes
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
            let (file, machine, place) = (None, None, None);
            return Ok(DeviceNote { device, last_seq: 0, reserved_to: 0, head: None, file, machine, place });
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
