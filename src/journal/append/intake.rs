//! Lines with an identity on their way in: each is checked, put into the table inside one open transaction, and forgotten.
//! One that comes before its predecessor waits in a table of SQLite's own, so that memory does not grow with the lines.

use rusqlite::{Connection, OptionalExtension, params};
use serde_json::Value;
use std::collections::HashMap;
use std::ops::ControlFlow;

use super::refuse_envelope_fields;
use crate::base::{DeviceId, EntryId};
use crate::journal::device::{self, Head, Reservation};
use crate::journal::error::JournalError;
use crate::journal::rows::{self, COLUMNS, Names, Written};
use crate::journal::{Journal, Note, WhyReadOnly};
use crate::nursery::envelope::{Hash, Sealed, canonical};

/// After so many lines the caller is told, and may stop it.
pub(super) const TOLD_EVERY: u64 = 1000;
/// The most faults that are kept; all are counted. As many as a reader of lines lists.
const MOST_FAULTS_KEPT: usize = 1000;
/// Pages that SQLite keeps in memory while lines come in, KiB: indexes are filled out of order, and with its usual 2 MiB
/// most of them would be read and written again and again.
const CACHE_KIB: i64 = 128 * 1024;

/// How far an import is in the journal.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Step {
    /// So many new entries are written.
    Written(u64),
    /// So many of the entries that came in can be looked up.
    LookedUp(u64),
    /// All is there; now it becomes part of the file. After this nothing stops it.
    Saving,
}

/// Why a line does not fit the entries of its device that are here.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Unfit {
    /// An entry of this name is here already and says something else.
    Fork(EntryId),
    /// It follows on another entry than the one that is here.
    FollowsAnother(EntryId),
    /// Entries before it are missing.
    Gap {
        /// The device.
        device: DeviceId,
        /// First missing number.
        from: u64,
        /// Last missing number.
        to: u64,
    },
    /// Its hash is not that of what it says.
    WrongHash(EntryId),
}

impl Unfit {
    /// What is wrong with a line; else what ends it all.
    fn of(fault: JournalError) -> Result<Unfit, JournalError> {
        match fault {
            JournalError::Fork { entry } => Ok(Unfit::Fork(entry)),
            JournalError::WrongPrevious { entry } => Ok(Unfit::FollowsAnother(entry)),
            JournalError::WrongHash { entry } => Ok(Unfit::WrongHash(entry)),
            JournalError::Gap { device, from, to } => Ok(Unfit::Gap { device, from, to }),
            other => Err(other),
        }
    }
}

impl From<Unfit> for JournalError {
    fn from(unfit: Unfit) -> JournalError {
        match unfit {
            Unfit::Fork(entry) => JournalError::Fork { entry },
            Unfit::FollowsAnother(entry) => JournalError::WrongPrevious { entry },
            Unfit::WrongHash(entry) => JournalError::WrongHash { entry },
            Unfit::Gap { device, from, to } => JournalError::Gap { device, from, to },
        }
    }
}

/// Hears how far it is; a break stops it, and nothing of it stays.
pub type IntakeProgress<'t> = dyn FnMut(Step) -> ControlFlow<()> + 't;

/// Lines on their way in. While there is one, a transaction is open: it ends with [`Journal::keep`] or
/// [`Journal::let_go`].
#[must_use = "an open transaction has to be kept or let go"]
pub struct Intake {
    arrived_before: i64,
    chains: HashMap<DeviceId, Chain>,
    names: Names,
    added: usize,
    already: usize,
    faults: Vec<(usize, Unfit)>,
    fault_count: usize,
    anyone_waits: bool,
    /// Numbers of new entries, and the last entry of this device once all of it is kept.
    reservation: Option<(Reservation, Head)>,
    kept: bool,
}

/// Where the chain of a device stands.
#[derive(Clone, Copy, Debug)]
struct Chain {
    head: Head,
    /// Lines that came before their predecessor.
    waiting: u64,
    /// The last line that does not fit: what follows on it is no fault of its own.
    unfit: Option<Hash>,
}

impl Journal {
    /// Opens a transaction for lines on their way in. Until it is ended nobody else writes, and nothing is in the file.
    pub(crate) fn begin_intake(&mut self) -> Result<Intake, JournalError> {
        if self.read_only {
            let no_room = self.notes.contains(&Note::ReadOnly(WhyReadOnly::NoRoom));
            return Err(if no_room { JournalError::Full } else { JournalError::ReadOnly });
        }
        self.refuse_what_was_taken_away()?;
        roll_back(&self.connection);
        self.connection.pragma_update(None, "cache_size", -CACHE_KIB)?;
        self.connection.execute_batch("BEGIN IMMEDIATE")?;
        let arrived_before = self.newest_arrival().inspect_err(|_| roll_back(&self.connection))?;
        Ok(Intake {
            arrived_before,
            chains: HashMap::new(),
            names: Names::default(),
            added: 0,
            already: 0,
            faults: Vec::new(),
            fault_count: 0,
            anyone_waits: false,
            reservation: None,
            kept: false,
        })
    }

    /// The entries that arrived after number `arrival`, as they are stored.
    pub(crate) fn sealed_after(&self, arrival: i64) -> Result<Vec<Sealed>, JournalError> {
        let query = format!("SELECT {COLUMNS} FROM entry WHERE arrival > ?1 ORDER BY arrival");
        let mut statement = self.connection.prepare_cached(&query)?;
        let mut found = statement.query(params![arrival])?;
        let (mut all, mut names) = (Vec::new(), Names::default());
        while let Some(row) = found.next()? {
            all.push(Written::read(row)?.sealed(&mut names)?);
        }
        Ok(all)
    }

    /// Ends an intake of which nothing stays that was not kept.
    pub fn let_go(&mut self, intake: Intake) {
        roll_back(&self.connection);
        let reservation = intake.reservation.map(|(reservation, last)| {
            let last = if intake.kept { last } else { reservation.head };
            (reservation, last)
        });
        self.shelf.settle(&self.connection, reservation, intake.kept, &mut self.notes);
    }
}

/// Takes back what is open, and gives the memory of its pages back.
fn roll_back(connection: &Connection) {
    const USUAL_KIB: i64 = 2000;
    if !connection.is_autocommit() {
        // Where even this fails the file is as it was: nothing was committed.
        let _ = connection.execute_batch("ROLLBACK");
    }
    let _ = connection.pragma_update(None, "cache_size", -USUAL_KIB);
}

impl Intake {
    /// The number of the entry that arrived last before it.
    pub(crate) fn arrived_before(&self) -> i64 {
        self.arrived_before
    }

    /// How many lines were added, and how many were here already.
    pub fn counted(&self) -> (usize, usize) {
        (self.added, self.already)
    }

    /// The first faults by line, and how many there are.
    pub fn faults(&self) -> (&[(usize, Unfit)], usize) {
        (&self.faults, self.fault_count)
    }

    /// Notes the numbers that new entries took.
    pub(super) fn reserved(&mut self, reservation: Reservation, last: Head) {
        self.reservation = Some((reservation, last));
    }

    pub(super) fn is_kept(&mut self) {
        self.kept = true;
    }

    pub(super) fn first_fault(&self) -> Option<JournalError> {
        self.faults.first().map(|(_, unfit)| unfit.clone().into())
    }

    /// Takes a line of a file, checked by hash and contiguity only. That it does not fit is noted and no error.
    pub fn put(&mut self, journal: &Journal, line: usize, sealed: Sealed) -> Result<(), JournalError> {
        let connection = &journal.connection;
        let device = sealed.id.device.clone();
        let placed = self.place(connection, line, sealed);
        let placed = self.noted(line, placed)?;
        if placed { self.call_in(connection, &device) } else { Ok(()) }
    }

    /// After the last line: what still waits for its predecessor is a fault, where `gaps` are looked for. Where some lines
    /// could not be read, they may be what is missing.
    pub(crate) fn settle(&mut self, journal: &Journal, gaps: bool) -> Result<(), JournalError> {
        if !self.anyone_waits {
            return Ok(());
        }
        let mut left: Vec<(DeviceId, Chain)> =
            self.chains.iter().map(|(device, chain)| (device.clone(), *chain)).collect();
        left.retain(|(_, chain)| gaps && chain.waiting > 0 && chain.unfit.is_none());
        left.sort_by(|a, b| a.0.cmp(&b.0));
        for (device, chain) in left {
            self.note_gaps(&journal.connection, &device, chain.head.seq + 1)?;
        }
        journal.connection.execute_batch("DROP TABLE temp.waiting")?;
        self.anyone_waits = false;
        Ok(())
    }

    fn note_gaps(&mut self, connection: &Connection, device: &DeviceId, first: u64) -> Result<(), JournalError> {
        let mut awaited = first;
        let mut find = connection.prepare("SELECT seq, arrival FROM temp.waiting WHERE device = ?1 ORDER BY seq")?;
        let mut found = find.query(params![device.as_str()])?;
        while let Some(row) = found.next()? {
            let (seq, line): (i64, i64) = (row.get(0)?, row.get(1)?);
            let seq = seq.unsigned_abs();
            if seq > awaited {
                let gap = Unfit::Gap { device: device.clone(), from: awaited, to: seq - 1 };
                self.note(usize::try_from(line).unwrap_or(0), gap);
            }
            awaited = seq + 1;
        }
        Ok(())
    }

    /// Notes a fault of a line; false where there was one. What is no fault of a line ends it all.
    fn noted(&mut self, line: usize, placed: Result<bool, JournalError>) -> Result<bool, JournalError> {
        match placed {
            Ok(placed) => Ok(placed),
            Err(fault) => {
                self.note(line, Unfit::of(fault)?);
                Ok(false)
            }
        }
    }

    fn note(&mut self, line: usize, fault: Unfit) {
        self.fault_count += 1;
        if self.faults.len() < MOST_FAULTS_KEPT {
            self.faults.push((line, fault));
        }
    }

    fn chain(&mut self, connection: &Connection, device: &DeviceId) -> Result<&mut Chain, JournalError> {
        if !self.chains.contains_key(device) {
            let head = device::head_of(connection, device)?;
            self.chains.insert(device.clone(), Chain { head, waiting: 0, unfit: None });
        }
        let unknown = || JournalError::Damaged { what: format!("bug: {device} has no chain"), entry: None };
        self.chains.get_mut(device).ok_or_else(unknown)
    }

    /// Puts a line where it belongs; true where it went into the table, so that others may follow on it.
    fn place(&mut self, connection: &Connection, line: usize, sealed: Sealed) -> Result<bool, JournalError> {
        let chain = self.chain(connection, &sealed.id.device)?;
        if sealed.prev.is_some() && sealed.prev == chain.unfit {
            chain.unfit = Some(sealed.hash);
            return Ok(false);
        }
        let next = chain.head.seq + 1;
        let sealed = verified(sealed).inspect_err(|(hash, _)| chain.unfit = Some(*hash)).map_err(|(_, fault)| fault)?;
        if sealed.id.seq < next {
            return match device::hash_at(connection, &sealed.id.device, sealed.id.seq)? {
                Some(here) if here == sealed.hash => {
                    self.already += 1;
                    Ok(false)
                }
                Some(_) | None => {
                    chain.unfit = Some(sealed.hash);
                    Err(JournalError::Fork { entry: sealed.id })
                }
            };
        }
        if i64::try_from(sealed.id.seq).is_err() {
            return Err(JournalError::Gap { device: sealed.id.device, from: next, to: sealed.id.seq - 1 });
        }
        if sealed.id.seq > next {
            return self.wait(connection, line, &sealed).map(|()| false);
        }
        self.follow(connection, &sealed).map(|()| true)
    }

    /// Adds the next line of its device.
    fn follow(&mut self, connection: &Connection, sealed: &Sealed) -> Result<(), JournalError> {
        let chain = self.chain(connection, &sealed.id.device)?;
        if sealed.prev != chain.head.hash {
            chain.unfit = Some(sealed.hash);
            return Err(JournalError::WrongPrevious { entry: sealed.id.clone() });
        }
        chain.head = Head { seq: sealed.id.seq, hash: Some(sealed.hash), recorded: Some(sealed.recorded) };
        rows::insert(connection, sealed)?;
        self.added += 1;
        Ok(())
    }

    /// Lets a line wait for its predecessor.
    fn wait(&mut self, connection: &Connection, line: usize, sealed: &Sealed) -> Result<(), JournalError> {
        if !self.anyone_waits {
            connection.execute_batch(WAITING)?;
            self.anyone_waits = true;
        }
        let number = i64::try_from(sealed.id.seq).unwrap_or(i64::MAX);
        let here: Option<[u8; 32]> = connection
            .prepare_cached("SELECT hash FROM temp.waiting WHERE device = ?1 AND seq = ?2")?
            .query_row(params![sealed.id.device.as_str(), number], |row| row.get(0))
            .optional()?;
        match here {
            Some(here) if here == sealed.hash.0 => self.already += 1,
            Some(_) => return Err(JournalError::Fork { entry: sealed.id.clone() }),
            None => {
                rows::insert_with(connection, "temp.waiting", sealed, i64::try_from(line).unwrap_or(i64::MAX))?;
                self.chain(connection, &sealed.id.device)?.waiting += 1;
            }
        }
        Ok(())
    }

    /// Adds those that waited for the last line of a device.
    fn call_in(&mut self, connection: &Connection, device: &DeviceId) -> Result<(), JournalError> {
        loop {
            let chain = *self.chain(connection, device)?;
            if chain.waiting == 0 {
                return Ok(());
            }
            let number = i64::try_from(chain.head.seq + 1).unwrap_or(i64::MAX);
            let Some((line, sealed)) = self.waiting_at(connection, device, number)? else { return Ok(()) };
            connection
                .prepare_cached("DELETE FROM temp.waiting WHERE device = ?1 AND seq = ?2")?
                .execute(params![device.as_str(), number])?;
            self.chain(connection, device)?.waiting -= 1;
            let followed = self.follow(connection, &sealed).map(|()| true);
            if !self.noted(line, followed)? {
                return Ok(());
            }
        }
    }

    fn waiting_at(
        &mut self,
        connection: &Connection,
        device: &DeviceId,
        number: i64,
    ) -> Result<Option<(usize, Sealed)>, JournalError> {
        let query = format!("SELECT {COLUMNS} FROM temp.waiting WHERE device = ?1 AND seq = ?2");
        let mut find = connection.prepare_cached(&query)?;
        let mut found = find.query(params![device.as_str(), number])?;
        let Some(row) = found.next()? else { return Ok(None) };
        let written = Written::read(row)?;
        let line = usize::try_from(written.arrival).unwrap_or(0);
        Ok(Some((line, written.sealed(&mut self.names)?)))
    }
}

/// The lines that wait, as rows of entries; `arrival` is the line of the file. SQLite keeps it in a file of its own that
/// nobody else sees and that goes with the program.
const WAITING: &str = "CREATE TEMP TABLE waiting (
    device TEXT NOT NULL, seq INTEGER NOT NULL, happened TEXT, clock TEXT, recorded INTEGER, who TEXT, kind TEXT,
    command INTEGER, body TEXT, prev BLOB, hash BLOB, arrival INTEGER, PRIMARY KEY (device, seq)) WITHOUT ROWID";

/// A line whose hash is right, its body in the form in which it is stored; else the hash it came with, and the fault. The
/// hash is reckoned over canonical JSON, so another spelling has the same hash.
fn verified(mut sealed: Sealed) -> Result<Sealed, (Hash, JournalError)> {
    let hash = sealed.hash;
    let wrong = |id: &EntryId| (hash, JournalError::WrongHash { entry: id.clone() });
    let body = match serde_json::from_str::<Value>(&sealed.body) {
        Ok(Value::Object(body)) => body,
        // What is no object has no right hash unless somebody made one for it.
        _ if sealed.reckoned_hash() != hash => return Err(wrong(&sealed.id)),
        Ok(_) => return Err((hash, JournalError::damaged_at(&sealed.id, "its body is not a JSON object"))),
        Err(error) => return Err((hash, JournalError::damaged_at(&sealed.id, error))),
    };
    let fields = refuse_envelope_fields(&sealed.id, &body);
    let body = Value::Object(body);
    let stored = canonical(&body);
    let Value::Object(body) = body else { return Err(wrong(&sealed.id)) };
    if sealed.reckoned_hash_of(body) != hash {
        return Err(wrong(&sealed.id));
    }
    fields.map_err(|fault| (hash, fault))?;
    sealed.body = stored;
    Ok(sealed)
}
