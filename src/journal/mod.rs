//! The SQLite file: begin, open, migrate, append, read, check, back up. The only room that speaks SQL.
//!
//! A nursery is one file with one table of entries that only grows. The database itself refuses every change to what is
//! there. What a device writes is chained by hashes; `docs/journal-format.md` has the envelope.

mod append;
mod backup;
mod carve;
mod check;
mod connection;
mod device;
mod disk;
mod error;
mod kept;
mod look;
mod note;
mod rescue;
mod rows;
mod schema;
#[cfg(test)]
mod tests;

pub(crate) use append::New;
pub use append::{Intake, IntakeProgress, Step, Taken, Unfit};
pub use backup::BackupReport;
pub use check::{CheckReport, Fault, check, check_with_note};
pub use error::JournalError;
pub(crate) use kept::KeptStory;
pub use kept::{Checkpoint, Sort, Sought};
pub use look::{LookProgress, LookStep, untold};
pub use note::{Gone, Note, WhyReadOnly};
pub use rescue::{Apart, Lost, Rescued, rescue};

use rusqlite::{Connection, OptionalExtension, params};
use std::cell::RefCell;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use crate::base::{DeviceId, EntryId, Moment};
use crate::nursery::entry::Entry;
use crate::nursery::envelope::Sealed;
use device::DeviceStore;
use rows::{COLUMNS, Names, Written};

/// A nursery's open file.
#[derive(Debug)]
pub struct Journal {
    connection: Connection,
    path: PathBuf,
    file_id: String,
    shelf: DeviceStore,
    notes: Vec<Note>,
    read_only: bool,
    /// What told the file from any other when it was opened, where the system has such a mark.
    mark: Option<String>,
    /// Its length when it was opened, bytes: a file of ours never becomes shorter.
    least_bytes: u64,
    /// The same mark of its log, once there was one.
    log_mark: RefCell<Option<String>>,
}

impl Journal {
    /// Makes a new nursery file for this person only, and its folder where missing. An existing file is refused.
    /// `shelf` is the folder beside the settings where the device is noted.
    pub fn begin(path: &Path, shelf: &Path) -> Result<Journal, JournalError> {
        if std::fs::symlink_metadata(path).is_ok() {
            return Err(JournalError::AlreadyThere(path.to_path_buf()));
        }
        disk::make_folder(disk::folder_of(path))?;
        let fresh = disk::beside(path, ".", &format!(".{}.new", disk::random_word()));
        let made = make_nursery_file(&fresh).and_then(|()| disk::name_finished(&fresh, path));
        if made.is_err() {
            // What could not be finished is not left lying about; that it cannot be removed changes nothing.
            let _ = std::fs::remove_file(&fresh);
        }
        made.map_err(|fault| fault.about_new(path))?;
        Journal::open(path, shelf)
    }

    /// Opens a nursery file. A file of an older version is brought up, after a verified copy of it was put beside it; a
    /// file of a newer version is refused and not touched, and so is one beside which the log of another lies. A file that cannot be written is opened for reading only.
    pub fn open(path: &Path, shelf: &Path) -> Result<Journal, JournalError> {
        Journal::open_with_steps(path, shelf, schema::STEPS)
    }

    fn open_with_steps(path: &Path, shelf: &Path, steps: &[&str]) -> Result<Journal, JournalError> {
        let program = schema::version_after(steps);
        connection::refuse_foreign_log(path)?;
        let file_version = connection::version_of(path, program, true)?;
        if let Some(why) = connection::marked_read_only(path) {
            return Journal::read_only(path, shelf, why);
        }
        let mut notes = Vec::new();
        let mut connection = match connection::open_for_writing(path, &mut notes) {
            Ok(connection) => connection,
            Err(JournalError::ReadOnly) => return Journal::read_only(path, shelf, WhyReadOnly::File),
            Err(error @ (JournalError::Sqlite(_) | JournalError::Full)) => {
                let no_room = disk::has_no_room(disk::folder_of(path));
                let why = if no_room { WhyReadOnly::NoRoom } else { WhyReadOnly::Folder };
                return Journal::read_only(path, shelf, why).map_err(|_| error);
            }
            Err(error) => return Err(error),
        };
        if file_version < program {
            let kept = backup::copy_before_bringing_up(&connection, path, file_version)?;
            schema::bring_up(&mut connection, steps)?;
            notes.push(Note::KeptBefore(kept));
        }
        schema::refuse_changed(&connection, steps)?;
        let file_id = read_file_id(&connection, path)?;
        let shelf = DeviceStore::new(shelf, &file_id, path);
        shelf.catch_up(&connection)?;
        notes.extend(shelf.gone(&connection)?.into_iter().map(Note::Gone));
        let journal = Journal {
            connection,
            path: path.to_path_buf(),
            file_id,
            shelf,
            notes,
            read_only: false,
            mark: disk::file_mark(path),
            least_bytes: disk::length(path),
            log_mark: RefCell::default(),
        };
        journal.refuse_what_was_taken_away()?;
        Ok(journal)
    }

    /// Opens a nursery file for reading only, also one of a newer version.
    pub fn open_read_only(path: &Path) -> Result<Journal, JournalError> {
        Journal::read_only(path, Path::new(""), WhyReadOnly::Asked)
    }

    /// The same, with what the notes beside the settings have to tell of it.
    pub(crate) fn open_read_only_beside(path: &Path, shelf: &Path) -> Result<Journal, JournalError> {
        Journal::read_only(path, shelf, WhyReadOnly::Asked)
    }

    fn read_only(path: &Path, shelf: &Path, why: WhyReadOnly) -> Result<Journal, JournalError> {
        connection::refuse_foreign_log(path)?;
        connection::version_of(path, i64::MAX, true)?;
        let connection = connection::open_for_reading(path)?;
        let file_id = read_file_id(&connection, path)?;
        let shelf = DeviceStore::new(shelf, &file_id, path);
        let mut notes = vec![Note::ReadOnly(why)];
        notes.extend(shelf.gone(&connection)?.into_iter().map(Note::Gone));
        Ok(Journal {
            connection,
            path: path.to_path_buf(),
            file_id,
            shelf,
            notes,
            read_only: true,
            mark: disk::file_mark(path),
            least_bytes: disk::length(path),
            log_mark: RefCell::default(),
        })
    }

    /// Refuses to write into a file that was taken away, cut short or replaced since it was opened, or whose log was: nobody
    /// would find it there.
    pub(super) fn refuse_what_was_taken_away(&self) -> Result<(), JournalError> {
        let is_here = disk::file_mark(&self.path) == self.mark && disk::length(&self.path) >= self.least_bytes;
        if is_here && self.log_is_here() { Ok(()) } else { Err(JournalError::TakenAway(self.path.clone())) }
    }

    /// Whether the log is the one that was there before. While a program has the file open nobody takes its log away but by
    /// hand, and what is written after that goes nowhere.
    fn log_is_here(&self) -> bool {
        let before = self.log_mark.take();
        let now = disk::file_mark(&disk::beside(&self.path, "", "-wal"));
        let is_here = before.is_none() || before == now;
        *self.log_mark.borrow_mut() = before.or(now);
        is_here
    }

    /// Takes what is in the file for all there is: an entry says that what is gone was given up.
    pub(crate) fn give_up_what_is_gone(&mut self, by: &EntryId) -> Result<(), JournalError> {
        self.shelf.give_up_what_is_gone(&self.connection, by)?;
        self.notes.retain(|note| !matches!(note, Note::Gone(_)));
        Ok(())
    }

    /// What was given up by an entry is missed again: it was taken back.
    pub(crate) fn miss_again(&mut self, by: &EntryId) -> Result<(), JournalError> {
        self.shelf.miss_again(by)?;
        self.notes.retain(|note| !matches!(note, Note::Gone(_)));
        self.notes.extend(self.shelf.gone(&self.connection)?.into_iter().map(Note::Gone));
        Ok(())
    }

    /// Closes a file in which no entry ever was and takes it away, with what SQLite laid beside it. Where that cannot be,
    /// the file stays.
    pub(crate) fn take_away_if_empty(self) {
        if self.read_only || self.count() != Ok(0) {
            return;
        }
        let Journal { connection, path, .. } = self;
        // Before the file what lies beside it: a log without its file would be foreign to the next one of this name.
        if connection.close().is_ok() {
            for behind in ["-wal", "-shm"] {
                let _ = std::fs::remove_file(disk::beside(&path, "", behind));
            }
            let _ = std::fs::remove_file(&path);
        }
    }

    /// The file's own id, 16 hexadecimal digits. A copy has the same.
    pub(crate) fn file_id(&self) -> &str {
        &self.file_id
    }

    /// Where the file lies.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// What the person should know about this file; later writes may add to it.
    pub fn notes(&self) -> &[Note] {
        &self.notes
    }

    /// Whether nothing can be written.
    pub(crate) fn is_read_only(&self) -> bool {
        self.read_only
    }

    /// The device the next entry will be written as; none before the first, and in a copy or restored file.
    pub fn device(&self) -> Result<Option<DeviceId>, JournalError> {
        self.shelf.device(&self.connection)
    }

    /// The moment at which the device that writes next recorded last; none before its first entry.
    pub(crate) fn last_recorded(&self) -> Result<Option<Moment>, JournalError> {
        let Some(device) = self.device()? else { return Ok(None) };
        Ok(device::head_of(&self.connection, &device)?.recorded)
    }

    /// From the next entry on this file is written as a new device.
    pub(crate) fn begin_new_device(&mut self) -> Result<(), JournalError> {
        self.shelf.begin_new(&self.connection)
    }

    /// Every device this file was written as from here, the last one behind.
    pub(crate) fn own_devices(&self) -> Vec<DeviceId> {
        self.shelf.devices()
    }

    /// Until it is dropped everything is read as it stands now, whatever others write meanwhile; nothing where this is so
    /// already. Many small questions are answered faster together.
    pub(crate) fn read_together(&self) -> Result<Option<rusqlite::Transaction<'_>>, JournalError> {
        if !self.connection.is_autocommit() {
            return Ok(None);
        }
        Ok(Some(self.connection.unchecked_transaction()?))
    }

    /// All entries, in the order of their arrival.
    pub fn entries(&self) -> Result<Vec<Entry>, JournalError> {
        let (entries, _) = self.entries_after(0)?;
        Ok(entries.into_iter().map(Arc::unwrap_or_clone).collect())
    }

    /// The entries that arrived after number `arrival`, in that order, and the number of the last one (or `arrival`).
    pub(crate) fn entries_after(&self, arrival: i64) -> Result<(Vec<Arc<Entry>>, i64), JournalError> {
        let query = format!("SELECT {COLUMNS} FROM entry WHERE arrival > ?1 ORDER BY arrival");
        let mut statement = self.connection.prepare_cached(&query)?;
        let mut found = statement.query(params![arrival])?;
        let (mut entries, mut last, mut names) = (Vec::new(), arrival, Names::default());
        while let Some(row) = found.next()? {
            let written = Written::read(row)?;
            last = written.arrival;
            entries.push(Arc::new(written.entry(&mut names)?));
        }
        Ok((entries, last))
    }

    /// Gives every entry as it is stored, by device and number. What arrives meanwhile is left out, and nothing is held
    /// open while the receiver works.
    pub fn sealed<E: From<JournalError>>(&self, give: &mut dyn FnMut(Sealed) -> Result<(), E>) -> Result<(), E> {
        let newest = self.newest_arrival()?;
        let mut after = (String::new(), 0);
        loop {
            let page = self.page_of_sealed(&after, newest)?;
            match page.last() {
                Some(last) => after = (last.id.device.to_string(), i64::try_from(last.id.seq).unwrap_or(i64::MAX)),
                None => return Ok(()),
            }
            page.into_iter().try_for_each(&mut *give)?;
        }
    }

    fn newest_arrival(&self) -> Result<i64, JournalError> {
        let newest =
            self.connection.query_row("SELECT max(arrival) FROM entry", [], |row| row.get::<_, Option<i64>>(0));
        Ok(newest?.unwrap_or(0))
    }

    fn page_of_sealed(&self, after: &(String, i64), newest: i64) -> Result<Vec<Sealed>, JournalError> {
        const PAGE: usize = 1000;
        let query = format!(
            "SELECT {COLUMNS} FROM entry WHERE (device, seq) > (?1, ?2) AND arrival <= ?3 ORDER BY device, seq LIMIT {PAGE}"
        );
        let mut statement = self.connection.prepare_cached(&query)?;
        let mut found = statement.query(params![after.0, after.1, newest])?;
        let (mut page, mut names) = (Vec::with_capacity(PAGE), Names::default());
        while let Some(row) = found.next()? {
            page.push(Written::read(row)?.sealed(&mut names)?);
        }
        Ok(page)
    }

    /// How many entries arrived up to number `last`.
    pub(crate) fn count_up_to(&self, last: i64) -> Result<usize, JournalError> {
        let query = "SELECT count(*) FROM entry WHERE arrival <= ?1";
        let count: i64 = self.connection.query_row(query, params![last], |row| row.get(0))?;
        Ok(usize::try_from(count).unwrap_or(usize::MAX))
    }

    /// A number that changes when another program, or another connection, has written to the file.
    pub(crate) fn data_version(&self) -> Result<i64, JournalError> {
        Ok(self.connection.pragma_query_value(None, "data_version", |row| row.get(0))?)
    }
}

fn make_nursery_file(path: &Path) -> Result<(), JournalError> {
    drop(disk::make_file(path)?);
    let mut connection = Connection::open_with_flags(path, rusqlite::OpenFlags::SQLITE_OPEN_READ_WRITE)?;
    schema::bring_up(&mut connection, schema::STEPS)?;
    connection.execute(
        "INSERT INTO nursery_file (one, file_id, created) VALUES (1, ?1, CAST(unixepoch('subsec') * 1000 AS INTEGER))",
        params![format!("{:016x}", disk::random_bits())],
    )?;
    connection.close().map_err(|(_, error)| error.into())
}

fn read_file_id(connection: &Connection, path: &Path) -> Result<String, JournalError> {
    let found = connection.query_row("SELECT file_id FROM nursery_file", [], |row| row.get(0)).optional();
    found?.ok_or_else(|| JournalError::NotOurs(path.to_path_buf()))
}
