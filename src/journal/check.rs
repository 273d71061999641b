//! Proves a file, whole or damaged, without writing to it.

use rusqlite::Connection;
use std::collections::BTreeMap;
use std::fmt;
use std::ops::ControlFlow;
use std::path::Path;
use std::sync::mpsc::{self, RecvTimeoutError};
use std::time::{Duration, Instant};

use super::device::{self, Noted};
use super::error::JournalError;
use super::look::{LookProgress, LookStep, untold};
use super::rescue::{self, Lost};
use super::rows::{COLUMNS, Names, Written, of_a_newer_version};
use super::{carve, connection, schema};
use crate::base::{DeviceId, EntryId};
use crate::nursery::entry::{What, kind_of_entry, reading};
use crate::nursery::envelope::{Hash, Sealed};

/// One thing found wrong in a file.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Fault {
    /// The header of the file is destroyed, though entries lie behind it.
    Header,
    /// The log beside the file is not its own; what follows is said of the file alone.
    ForeignLog,
    /// SQLite's own check says this.
    Sqlite(String),
    /// A table, trigger or view is missing, or is not the one this version makes.
    Schema(String),
    /// A row cannot be read.
    Row {
        /// The entry, where it can be named.
        entry: Option<EntryId>,
        /// What was found.
        what: String,
    },
    /// Entries of a device are missing.
    Gap {
        /// The device.
        device: DeviceId,
        /// First missing number.
        from: u64,
        /// Last missing number.
        to: u64,
    },
    /// The hash of an entry is not that of its content.
    WrongHash(EntryId),
    /// An entry follows on another entry than the one before it.
    WrongPrevious(EntryId),
    /// The body of an entry cannot be read.
    Body {
        /// The entry.
        entry: EntryId,
        /// What was found.
        what: String,
    },
}

impl Fault {
    /// The entry it was found at, where there is one.
    pub fn entry(&self) -> Option<&EntryId> {
        match self {
            Fault::WrongHash(entry) | Fault::WrongPrevious(entry) | Fault::Body { entry, .. } => Some(entry),
            Fault::Row { entry, .. } => entry.as_ref(),
            Fault::Header | Fault::ForeignLog | Fault::Sqlite(_) | Fault::Schema(_) | Fault::Gap { .. } => None,
        }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Fault::Header => write!(f, "the header of the file is destroyed"),
            Fault::ForeignLog => write!(f, "the log beside the file is not its own"),
            Fault::Sqlite(text) => write!(f, "SQLite: {text}"),
            Fault::Schema(name) => write!(f, "'{name}' is missing or is not what it should be"),
            Fault::Row { entry: Some(entry), what } => write!(f, "{entry}: {what}"),
            Fault::Row { entry: None, what } => write!(f, "{what}"),
            Fault::Gap { device, from, to } => write!(f, "entries {from} to {to} of {device} are missing"),
            Fault::WrongHash(entry) => write!(f, "{entry}: its hash is not that of what it says"),
            Fault::WrongPrevious(entry) => write!(f, "{entry}: it follows on another entry than the one before it"),
            Fault::Body { entry, what } => write!(f, "{entry}: {what}"),
        }
    }
}

/// What a check has found.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct CheckReport {
    /// Entries that could be read.
    pub entries: u64,
    /// Devices that wrote them.
    pub devices: u64,
    /// Entries of kinds this version does not know.
    pub unknown_kinds: u64,
    /// Entries whole by their hash, of known kinds, that only a newer version can read.
    pub of_newer_version: Vec<EntryId>,
    /// The file's version.
    pub file_version: i64,
    /// The newest version this program knows.
    pub program_version: i64,
    /// The version of SQLite.
    pub sqlite_version: String,
    /// Everything found wrong. Empty: the file is whole.
    pub faults: Vec<Fault>,
    /// Of a damaged file, how many entries `rescue` can bring out.
    pub undamaged: Option<u64>,
    /// Of a damaged file, the entries that are known to be lost.
    pub lost: Vec<Lost>,
}

/// How often it is told how long SQLite's own check has run.
const TOLD_EVERY: Duration = Duration::from_millis(200);
/// After so many entries it is told how many are proved.
const ENTRIES_AT_ONCE: u64 = 1000;

/// Where an entry stands in the chain of its device.
struct Link {
    prev: Option<Hash>,
    hash: Hash,
}

type Chains = BTreeMap<DeviceId, BTreeMap<u64, Link>>;

/// Proves a file: SQLite's own check, the schema, each device's chain from 1 without gap, every hash, every body. Reads
/// only, and leaves nothing beside a file that nobody writes to. An error is returned only where nothing at all can be
/// read, neither by SQLite nor in the bytes.
pub fn check(path: &Path) -> Result<CheckReport, JournalError> {
    check_with_note(path, None, &mut untold)
}

/// The same, and compares with what was noted in the folder of the settings as saved in this very file.
pub fn check_with_note(
    path: &Path,
    shelf: Option<&Path>,
    told: &mut LookProgress<'_>,
) -> Result<CheckReport, JournalError> {
    connection::refuse_what_is_no_file(path)?;
    let looked = look_through(path, shelf, told, &mut |_| ());
    if looked.as_ref().is_ok_and(|report| report.faults.is_empty()) {
        return looked;
    }
    if let Err(JournalError::Busy | JournalError::Cancelled) = looked {
        // Another program holds the file alone, or it was stopped: nothing is known of it, and nothing is wrong with it.
        return looked;
    }
    let header_is_gone = matches!(looked, Err(JournalError::NotOurs(_)));
    if let Err(error @ JournalError::Sqlite(_)) = &looked
        && connection::marked_read_only(path).is_some()
    {
        // Not damage: there is no room for what SQLite needs beside the file.
        return Err(error.clone());
    }
    let rescued = match (looked.as_ref(), rescue::rescue(path, shelf, told)) {
        (_, Err(JournalError::Cancelled)) => return Err(JournalError::Cancelled),
        (Ok(_), rescued) => rescued.unwrap_or_default(),
        // No nursery file, or one whose header is gone: only entries in it can tell.
        (Err(error), rescued) => rescued.map_err(|_| error.clone())?,
    };
    let mut report = looked.unwrap_or_else(|error| CheckReport {
        faults: vec![if header_is_gone { Fault::Header } else { Fault::Sqlite(error.to_string()) }],
        ..blank_report(0)
    });
    report.undamaged = Some(rescued.entries.len() as u64);
    report.lost = rescued.lost;
    Ok(report)
}

/// Looks at everything that SQLite can read of a file and gives every entry whose hash is right.
pub(super) fn look_through(
    path: &Path,
    shelf: Option<&Path>,
    told: &mut LookProgress<'_>,
    give: &mut dyn FnMut(Sealed),
) -> Result<CheckReport, JournalError> {
    // Before the file is looked at: what is saved meanwhile is not missing.
    let noted = shelf.map_or_else(Vec::new, |shelf| device::noted_in(shelf, path));
    let is_foreign = carve::is_foreign(path);
    let file_version = connection::version_of(path, i64::MAX, !is_foreign)?;
    if is_foreign {
        let mut report = prove(path, (file_version, true), &noted, told, give)?;
        report.faults.insert(0, Fault::ForeignLog);
        return Ok(report);
    }
    if let Some(before) = connection::at_rest(path) {
        let report = prove(path, (file_version, true), &noted, told, give);
        if connection::at_rest(path) == Some(before) {
            return report;
        }
    }
    // Somebody writes to it: read as one that changes.
    prove(path, (file_version, false), &noted, told, give)
}

fn blank_report(file_version: i64) -> CheckReport {
    CheckReport {
        file_version,
        program_version: schema::version_after(schema::STEPS),
        sqlite_version: rusqlite::version().to_string(),
        ..CheckReport::default()
    }
}

fn prove(
    path: &Path,
    (file_version, resting): (i64, bool),
    noted: &[Noted],
    told: &mut LookProgress<'_>,
    give: &mut dyn FnMut(Sealed),
) -> Result<CheckReport, JournalError> {
    let opened = if resting { connection::open_guarded(path, true) } else { connection::open_for_reading(path) };
    let (mut connection, damage) = match opened {
        Err(JournalError::Damaged { what, .. }) => {
            (connection::open_damaged(path, resting)?, Some(Fault::Sqlite(what)))
        }
        other => (other?, None),
    };
    let mut report = CheckReport { faults: damage.into_iter().collect(), ..blank_report(file_version) };
    report.faults.extend(sqlite_faults(&mut connection, told)?);
    report.faults.extend(schema_faults(&connection, file_version));
    let chains = read_all(&connection, &mut report, told, give)?;
    report.devices = chains.len() as u64;
    report.faults.extend(chains.iter().flat_map(|(device, chain)| chain_faults(device, chain)));
    report.faults.extend(missing_ends(&connection, noted, &chains));
    Ok(report)
}

/// Entries at the end of a device that are not in the table, though the note of the device or the index has them.
fn missing_ends(connection: &Connection, noted: &[Noted], chains: &Chains) -> Vec<Fault> {
    let file_id = connection.query_row("SELECT file_id FROM nursery_file", [], |row| row.get::<_, String>(0));
    let mut ends: BTreeMap<DeviceId, u64> = BTreeMap::new();
    let own = noted.iter().filter(|noted| file_id.as_ref().is_ok_and(|file_id| *file_id == noted.file_id));
    for noted in own {
        let end = ends.entry(noted.device.clone()).or_default();
        *end = (*end).max(noted.last_seq);
    }
    for (device, seq) in indexed_ends(connection).unwrap_or_default() {
        let end = ends.entry(device).or_default();
        *end = (*end).max(seq);
    }
    let last_of = |device: &DeviceId| chains.get(device).and_then(|chain| chain.keys().next_back()).copied();
    let missing = ends.into_iter().map(|(device, to)| (last_of(&device).unwrap_or(0) + 1, to, device));
    missing.filter(|(from, to, _)| from <= to).map(|(from, to, device)| Fault::Gap { device, from, to }).collect()
}

/// The last number of each device in the index of identities, where that index is without gap.
fn indexed_ends(connection: &Connection) -> rusqlite::Result<Vec<(DeviceId, u64)>> {
    let mut statement = connection.prepare(
        "SELECT device, max(seq) FROM entry INDEXED BY sqlite_autoindex_entry_1 GROUP BY device
         HAVING count(*) = max(seq)",
    )?;
    let rows = statement.query_map([], |row| Ok((row.get::<_, String>(0)?, row.get::<_, i64>(1)?)))?;
    let mut ends = Vec::new();
    for row in rows {
        let (device, seq) = row?;
        ends.extend(DeviceId::new(&device).map(|device| (device, seq.unsigned_abs())));
    }
    Ok(ends)
}

/// What SQLite's own check says. It runs on a thread of its own, so that it can be told of and stopped meanwhile.
fn sqlite_faults(connection: &mut Connection, told: &mut LookProgress<'_>) -> Result<Vec<Fault>, JournalError> {
    let (stop, begun) = (connection.get_interrupt_handle(), Instant::now());
    let (mut said, mut is_stopped) = (Vec::new(), false);
    let lines = &mut said;
    let asked = std::thread::scope(|scope| {
        let (end, ended) = mpsc::channel();
        let asking = scope.spawn(move || {
            let asked = connection.pragma_query(None, "integrity_check", |row| {
                lines.push(row.get::<_, String>(0)?);
                Ok(())
            });
            // Nobody hears it where the waiting one is gone already.
            let _ = end.send(());
            asked
        });
        while ended.recv_timeout(TOLD_EVERY) == Err(RecvTimeoutError::Timeout) {
            if told(LookStep::Sqlite(begun.elapsed())).is_break() {
                is_stopped = true;
                stop.interrupt();
            }
        }
        asking.join()
    });
    if is_stopped {
        return Err(JournalError::Cancelled);
    }
    match asked {
        Ok(Ok(())) => {}
        Ok(Err(error)) => {
            let text = error.to_string();
            match JournalError::from(error) {
                JournalError::Busy => return Err(JournalError::Busy),
                _ => said.push(text),
            }
        }
        Err(panicked) => std::panic::resume_unwind(panicked),
    }
    Ok(said.into_iter().filter(|line| line != "ok").map(Fault::Sqlite).collect())
}

fn schema_faults(connection: &Connection, file_version: i64) -> Vec<Fault> {
    if file_version > schema::version_after(schema::STEPS) {
        return Vec::new();
    }
    match (schema::texts(connection), schema::expected_texts(file_version)) {
        (Ok(found), Ok(expected)) => schema::differences(found, expected).into_iter().map(Fault::Schema).collect(),
        (Err(error), _) | (_, Err(error)) => vec![Fault::Sqlite(error.to_string())],
    }
}

/// Reads forward until the end or until SQLite cannot go on; then backward from the end, so that only what lies in the
/// damaged part is missing.
fn read_all(
    connection: &Connection,
    report: &mut CheckReport,
    told: &mut LookProgress<'_>,
    give: &mut dyn FnMut(Sealed),
) -> Result<Chains, JournalError> {
    let mut is_stopped = false;
    let give = &mut |sealed, proved: u64| {
        give(sealed);
        is_stopped |= proved.is_multiple_of(ENTRIES_AT_ONCE) && told(LookStep::Entries(proved)).is_break();
        if is_stopped { ControlFlow::Break(()) } else { ControlFlow::Continue(()) }
    };
    let mut chains = Chains::new();
    let forward = format!("SELECT {COLUMNS} FROM entry NOT INDEXED ORDER BY arrival");
    let (last, stopped) = read_rows(connection, &forward, report, &mut chains, give);
    if let Some(what) = stopped {
        report.faults.push(Fault::Row { entry: None, what: format!("no reading on after arrival {last}: {what}") });
        let backward = format!("SELECT {COLUMNS} FROM entry NOT INDEXED WHERE arrival > {last} ORDER BY arrival DESC");
        read_rows(connection, &backward, report, &mut chains, give);
    }
    if is_stopped { Err(JournalError::Cancelled) } else { Ok(chains) }
}

fn read_rows(
    connection: &Connection,
    query: &str,
    report: &mut CheckReport,
    chains: &mut Chains,
    give: &mut dyn FnMut(Sealed, u64) -> ControlFlow<()>,
) -> (i64, Option<String>) {
    let (mut last, mut names) = (0, Names::default());
    let mut statement = match connection.prepare(query) {
        Ok(statement) => statement,
        Err(error) => return (last, Some(error.to_string())),
    };
    let mut found = match statement.query([]) {
        Ok(found) => found,
        Err(error) => return (last, Some(error.to_string())),
    };
    loop {
        let row = match found.next() {
            Ok(Some(row)) => row,
            Ok(None) => return (last, None),
            Err(error) => return (last, Some(error.to_string())),
        };
        let read = Written::read(row).and_then(|written| {
            last = written.arrival;
            written.sealed(&mut names)
        });
        match read {
            Ok(sealed) if look_at(&sealed, report, chains) => {
                if give(sealed, report.entries).is_break() {
                    return (last, None);
                }
            }
            Ok(_) => {}
            Err(JournalError::Damaged { what, entry }) => report.faults.push(Fault::Row { entry, what }),
            Err(other) => report.faults.push(Fault::Row { entry: None, what: other.to_string() }),
        }
    }
}

/// Looks at one entry; true where its hash is right.
fn look_at(sealed: &Sealed, report: &mut CheckReport, chains: &mut Chains) -> bool {
    report.entries += 1;
    let link = Link { prev: sealed.prev, hash: sealed.hash };
    let twice = chains.entry(sealed.id.device.clone()).or_default().insert(sealed.id.seq, link).is_some();
    if twice {
        report.faults.push(Fault::Row { entry: Some(sealed.id.clone()), what: "it is there twice".into() });
    }
    let is_right = sealed.reckoned_hash() == sealed.hash;
    if !is_right {
        report.faults.push(Fault::WrongHash(sealed.id.clone()));
    }
    match reading::read_body(&sealed.kind, &sealed.body) {
        Ok(what) => report.unknown_kinds += u64::from(matches!(what, What::Foreign { .. })),
        Err(error) => match of_a_newer_version(sealed, &error) {
            Ok(_) if kind_of_entry(&sealed.kind).is_some() => report.of_newer_version.push(sealed.id.clone()),
            Ok(_) => report.unknown_kinds += 1,
            Err(_) => {
                let (entry, what) = (sealed.id.clone(), error.to_string());
                report.faults.push(Fault::Body { entry, what });
            }
        },
    }
    is_right
}

fn chain_faults(device: &DeviceId, chain: &BTreeMap<u64, Link>) -> Vec<Fault> {
    let mut faults = Vec::new();
    let (mut before, mut before_hash) = (0, None);
    for (seq, link) in chain {
        if *seq > before + 1 {
            faults.push(Fault::Gap { device: device.clone(), from: before + 1, to: seq - 1 });
        } else if link.prev != before_hash {
            faults.push(Fault::WrongPrevious(EntryId { device: device.clone(), seq: *seq }));
        }
        (before, before_hash) = (*seq, Some(link.hash));
    }
    faults
}
