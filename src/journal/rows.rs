//! Rows of the table, read into entries and written from them.

use rusqlite::types::ValueRef;
use rusqlite::{Connection, Statement, params};
use std::collections::HashMap;
use std::sync::Arc;

use super::error::JournalError;
use crate::base::{Clock, Day, DeviceId, EntryId, Moment};
use crate::nursery::entry::{Entry, What, reading};
use crate::nursery::envelope::{Hash, Sealed};

/// The columns, in the order that [`Written::read`] expects.
pub(super) const COLUMNS: &str =
    "device, seq, happened, clock, recorded, who, kind, command, body, prev, hash, arrival";

/// A row as it lies in SQLite's memory.
pub(super) struct Written<'row> {
    device: &'row str,
    seq: u64,
    happened: Day,
    clock: Option<Clock>,
    recorded: Moment,
    who: &'row str,
    kind: &'row str,
    command: u64,
    body: &'row str,
    prev: Option<Hash>,
    hash: Hash,
    /// Its number in the order of arrival.
    pub arrival: i64,
}

/// Names that come again and again, kept once.
#[derive(Default, Debug)]
pub(super) struct Names {
    devices: HashMap<String, DeviceId>,
    people: HashMap<String, Arc<str>>,
}

impl<'row> Written<'row> {
    /// Reads a row; what cannot be read names the entry.
    pub fn read(row: &'row rusqlite::Row<'_>) -> Result<Written<'row>, JournalError> {
        let device = text(row, 0).unwrap_or("");
        let seq = whole(row, 1).unwrap_or(0);
        let arrival = match row.get_ref(11) {
            Ok(ValueRef::Integer(arrival)) => arrival,
            Ok(_) | Err(_) => 0,
        };
        let id = DeviceId::new(device).filter(|_| seq > 0).map(|device| EntryId { device, seq });
        let Some(id) = id else {
            let what = format!("the row that arrived as number {arrival} has no readable device and number");
            return Err(JournalError::Damaged { what, entry: None });
        };
        let fault = |column: &str| JournalError::damaged_at(&id, format!("its {column} cannot be read"));
        let clock = match row.get_ref(3) {
            Ok(ValueRef::Null) => None,
            _ => Some(text(row, 3).and_then(|clock| clock.parse().ok()).ok_or_else(|| fault("clock"))?),
        };
        let prev = match row.get_ref(9) {
            Ok(ValueRef::Null) => None,
            _ => Some(hash(row, 9).ok_or_else(|| fault("prev"))?),
        };
        let recorded: Option<i64> = row.get_ref(4).ok().and_then(|value| value.as_i64().ok());
        Ok(Written {
            device,
            seq,
            happened: text(row, 2).and_then(|day| day.parse().ok()).ok_or_else(|| fault("happened"))?,
            clock,
            recorded: recorded.map(Moment::from_millis).ok_or_else(|| fault("recorded"))?,
            who: text(row, 5).ok_or_else(|| fault("who"))?,
            kind: text(row, 6).ok_or_else(|| fault("kind"))?,
            command: whole(row, 7).ok_or_else(|| fault("command"))?,
            body: text(row, 8).ok_or_else(|| fault("body"))?,
            prev,
            hash: hash(row, 10).ok_or_else(|| fault("hash"))?,
            arrival,
        })
    }

    /// The entry as it is stored.
    pub fn sealed(&self, names: &mut Names) -> Result<Sealed, JournalError> {
        Ok(Sealed {
            id: EntryId { device: names.device(self.device)?, seq: self.seq },
            happened: self.happened,
            clock: self.clock,
            recorded: self.recorded,
            who: self.who.to_string(),
            kind: self.kind.to_string(),
            command: self.command,
            body: self.body.to_string(),
            prev: self.prev,
            hash: self.hash,
        })
    }

    /// The entry in memory.
    pub fn entry(&self, names: &mut Names) -> Result<Entry, JournalError> {
        let what = match reading::read_body(self.kind, self.body) {
            Ok(what) => what,
            Err(error) => of_a_newer_version(&self.sealed(names)?, &error)?,
        };
        Ok(Entry {
            id: EntryId { device: names.device(self.device)?, seq: self.seq },
            happened: self.happened,
            clock: self.clock,
            recorded: self.recorded,
            who: names.person(self.who),
            command: self.command,
            what,
        })
    }
}

impl Names {
    fn device(&mut self, written: &str) -> Result<DeviceId, JournalError> {
        if let Some(known) = self.devices.get(written) {
            return Ok(known.clone());
        }
        let device = DeviceId::new(written)
            .ok_or_else(|| JournalError::Damaged { what: "a device cannot be read".into(), entry: None })?;
        self.devices.insert(written.to_string(), device.clone());
        Ok(device)
    }

    fn person(&mut self, written: &str) -> Arc<str> {
        if let Some(known) = self.people.get(written) {
            return known.clone();
        }
        let person: Arc<str> = written.into();
        self.people.insert(written.to_string(), person.clone());
        person
    }
}

fn text<'row>(row: &'row rusqlite::Row<'_>, column: usize) -> Option<&'row str> {
    row.get_ref(column).ok()?.as_str().ok()
}

fn whole(row: &rusqlite::Row<'_>, column: usize) -> Option<u64> {
    u64::try_from(row.get_ref(column).ok()?.as_i64().ok()?).ok()
}

fn hash(row: &rusqlite::Row<'_>, column: usize) -> Option<Hash> {
    Some(Hash(row.get_ref(column).ok()?.as_blob().ok()?.try_into().ok()?))
}

/// The entry that arrived as some number, or last, as it is stored, with that number.
pub(super) fn at_arrival(connection: &Connection, arrival: Option<i64>) -> Result<Option<(i64, Sealed)>, JournalError> {
    let one = if arrival.is_some() { "WHERE arrival = ?1" } else { "WHERE ?1 IS NULL ORDER BY arrival DESC LIMIT 1" };
    let mut statement = connection.prepare(&format!("SELECT {COLUMNS} FROM entry NOT INDEXED {one}"))?;
    let mut found = statement.query(params![arrival])?;
    let Some(row) = found.next()? else { return Ok(None) };
    let written = Written::read(row)?;
    Ok(Some((written.arrival, written.sealed(&mut Names::default())?)))
}

/// What an entry says whose body does not fit the kind as this version knows it. Where its hash is right, a newer
/// version wrote it: fields unknown here are passed over, and a body that still cannot be read is kept as it is.
/// Where its hash is wrong, it is damaged.
pub(super) fn of_a_newer_version(sealed: &Sealed, error: &serde_json::Error) -> Result<What, JournalError> {
    if sealed.reckoned_hash() != sealed.hash {
        return Err(JournalError::damaged_at(&sealed.id, error));
    }
    reading::read_what_is_known(&sealed.kind, &sealed.body).map_err(|error| JournalError::damaged_at(&sealed.id, error))
}

/// Writes one entry at the end of the table.
pub(super) fn insert(connection: &Connection, sealed: &Sealed) -> Result<(), JournalError> {
    let mut statement = connection.prepare_cached(
        "INSERT INTO entry (device, seq, happened, clock, recorded, who, kind, command, body, prev, hash)
         VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11)",
    )?;
    bind(&mut statement, sealed)?;
    statement.raw_execute()?;
    Ok(())
}

/// Writes one entry into a table of [`COLUMNS`], its last column a number of the caller's.
pub(super) fn insert_with(
    connection: &Connection,
    into: &str,
    sealed: &Sealed,
    number: i64,
) -> Result<(), JournalError> {
    let query = format!("INSERT INTO {into} ({COLUMNS}) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12)");
    let mut statement = connection.prepare_cached(&query)?;
    bind(&mut statement, sealed)?;
    statement.raw_bind_parameter(12, number)?;
    statement.raw_execute()?;
    Ok(())
}

fn bind(statement: &mut Statement<'_>, sealed: &Sealed) -> Result<(), JournalError> {
    let number = |number: u64| {
        i64::try_from(number).map_err(|_| JournalError::damaged_at(&sealed.id, format!("{number} is too large")))
    };
    statement.raw_bind_parameter(1, sealed.id.device.as_str())?;
    statement.raw_bind_parameter(2, number(sealed.id.seq)?)?;
    statement.raw_bind_parameter(3, sealed.happened.to_string())?;
    statement.raw_bind_parameter(4, sealed.clock.map(|clock| clock.to_string()))?;
    statement.raw_bind_parameter(5, sealed.recorded.millis())?;
    statement.raw_bind_parameter(6, &sealed.who)?;
    statement.raw_bind_parameter(7, &sealed.kind)?;
    statement.raw_bind_parameter(8, number(sealed.command)?)?;
    statement.raw_bind_parameter(9, &sealed.body)?;
    statement.raw_bind_parameter(10, sealed.prev.map(|hash| hash.0))?;
    statement.raw_bind_parameter(11, sealed.hash.0)?;
    Ok(())
}
