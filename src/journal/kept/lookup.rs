//! Looking entries up by what they are about, so that nobody has to read all of them. Follows from the entries alone: it
//! is brought up to them wherever it lags behind.

use rusqlite::{Connection, OptionalExtension, TransactionBehavior, params};
use std::collections::HashMap;
use std::sync::Arc;

use crate::base::text::folded;
use crate::base::{Day, DeviceId, EntryId, Moment};
use crate::journal::Journal;
use crate::journal::error::JournalError;
use crate::journal::rows::{COLUMNS, Names, Written};
use crate::nursery::entry::subject::{Subject, affects_descendants, subjects};
use crate::nursery::entry::{BookEntry, Entry, TrayEntry, What, reading};

/// Entries brought in at a time where the lookup lags behind.
const AT_A_TIME: usize = 10_000;

/// What entries can be looked up by.
#[derive(Clone, PartialEq, Eq, Hash, Debug)]
pub enum Sort {
    /// A tray, by a code it had or has.
    Tray,
    /// A lot.
    Lot,
    /// A bed.
    Bed,
    /// A place.
    Place,
    /// The site, its gauge left out.
    Site,
    /// The gauge, by month.
    Gauge,
    /// Notes about something, by its name.
    Note,
    /// Withdrawals.
    Withdrawal,
    /// Changes of label.
    Label,
}

impl Sort {
    pub(in crate::journal) fn word(&self) -> &'static str {
        match self {
            Sort::Tray => "tray",
            Sort::Lot => "lot",
            Sort::Bed => "bed",
            Sort::Place => "place",
            Sort::Site => "site",
            Sort::Gauge => "gauge",
            Sort::Note => "note",
            Sort::Withdrawal => "withdrawal",
            Sort::Label => "label",
        }
    }
}

/// What is looked for.
#[derive(Clone, PartialEq, Eq, Hash, Debug)]
pub struct Sought {
    /// By what.
    pub sort: Sort,
    /// Its name; empty where there is only one.
    pub name: String,
    /// Only the entries that hand something on.
    pub only_lending: bool,
}

impl Sought {
    /// Everything of a sort that has only one name.
    pub fn all(sort: Sort) -> Sought {
        Sought { sort, name: String::new(), only_lending: false }
    }

    /// Everything of a sort by one name.
    pub fn named(sort: Sort, name: String) -> Sought {
        Sought { sort, name, only_lending: false }
    }

    /// What a subject is looked up by.
    pub fn subject(subject: &Subject, only_lending: bool) -> Sought {
        let (sort, name) = sort_of(subject);
        Sought { sort, name, only_lending }
    }

    /// The gauge of the month of a day.
    pub fn gauge(day: Day) -> Sought {
        Sought { sort: Sort::Gauge, name: month(day), only_lending: false }
    }
}

fn month(day: Day) -> String {
    let (year, month, _) = day.ymd();
    format!("{year:04}-{month:02}")
}

fn sort_of(subject: &Subject) -> (Sort, String) {
    match subject {
        Subject::Tray(code) => (Sort::Tray, code.to_string()),
        Subject::Lot(code) => (Sort::Lot, code.to_string()),
        Subject::Bed(name) => (Sort::Bed, name.to_string()),
        Subject::Place(name) => (Sort::Place, name.to_string()),
        Subject::Site => (Sort::Site, String::new()),
    }
}

/// Everything an entry can be looked up by.
fn looked_up_by(what: &What, happened: Day) -> Vec<(Sort, String)> {
    match what {
        What::Book(BookEntry::Weather(_)) => vec![(Sort::Gauge, month(happened))],
        What::Book(BookEntry::Withdrawn(_)) => vec![(Sort::Withdrawal, String::new())],
        // It acts on the note beside the settings, not on the books.
        What::Book(BookEntry::Settled(_)) => Vec::new(),
        What::Book(BookEntry::Noted(noted)) => {
            noted.about.iter().map(|about| (Sort::Note, about.0.to_string())).collect()
        }
        What::Site(_) | What::Seed(_) | What::Tray(_) | What::Ground(_) | What::Foreign { .. } => {
            let mut all: Vec<(Sort, String)> = subjects(what).iter().map(sort_of).collect();
            if let What::Tray(TrayEntry::Relabelled(_)) = what {
                all.push((Sort::Label, String::new()));
            }
            all
        }
    }
}

/// Numbers of subjects already asked for.
type Numbers = HashMap<(Sort, String), i64>;

fn number_of(connection: &Connection, sort: &Sort, name: &str, numbers: &mut Numbers) -> Result<i64, JournalError> {
    let key = (sort.clone(), name.to_string());
    if let Some(known) = numbers.get(&key) {
        return Ok(*known);
    }
    let find = "SELECT number FROM subject WHERE sort = ?1 AND name = ?2";
    let found: Option<i64> =
        connection.prepare_cached(find)?.query_row(params![sort.word(), name], |row| row.get(0)).optional()?;
    let number = match found {
        Some(number) => number,
        None => {
            let insert = "INSERT INTO subject (sort, name, folded) VALUES (?1, ?2, ?3)";
            connection.prepare_cached(insert)?.execute(params![sort.word(), name, folded(name)])?;
            connection.last_insert_rowid()
        }
    };
    numbers.insert(key, number);
    Ok(number)
}

/// Makes the lookup for every entry that arrived after those it has, at most so many; says how many there were.
fn bring_up_some(connection: &Connection, at_most: usize, numbers: &mut Numbers) -> Result<usize, JournalError> {
    let from: i64 = connection.query_row("SELECT arrival FROM looked_up", [], |row| row.get(0))?;
    let mut find = connection.prepare_cached(
        "SELECT arrival, happened, kind, body FROM entry WHERE arrival > ?1 ORDER BY arrival LIMIT ?2",
    )?;
    let mut put =
        connection.prepare_cached("INSERT OR IGNORE INTO about (subject, lends, arrival) VALUES (?1, ?2, ?3)")?;
    let mut found = find.query(params![from, i64::try_from(at_most).unwrap_or(i64::MAX)])?;
    let (mut last, mut count) = (from, 0);
    while let Some(row) = found.next()? {
        last = row.get(0)?;
        count += 1;
        let (happened, kind, body): (String, String, String) = (row.get(1)?, row.get(2)?, row.get(3)?);
        let (Ok(happened), Ok(what)) = (happened.parse::<Day>(), reading::read_body(&kind, &body)) else { continue };
        let hands_on = affects_descendants(&what);
        for (sort, name) in looked_up_by(&what, happened) {
            let number = number_of(connection, &sort, &name, numbers)?;
            put.execute(params![number, hands_on, last])?;
        }
    }
    connection.prepare_cached("UPDATE looked_up SET arrival = ?1")?.execute(params![last])?;
    Ok(count)
}

/// Inside a transaction that added entries: the lookup goes on with them, where it was `at_least` so far before. `told`
/// hears how many are done, and may stop it.
pub(in crate::journal) fn go_on(
    connection: &Connection,
    at_least: i64,
    told: &mut dyn FnMut(u64) -> Result<(), JournalError>,
) -> Result<(), JournalError> {
    let from: i64 = connection.query_row("SELECT arrival FROM looked_up", [], |row| row.get(0))?;
    if from < at_least {
        return Ok(());
    }
    let (mut done, mut numbers) = (0, Numbers::new());
    loop {
        let count = bring_up_some(connection, AT_A_TIME, &mut numbers)?;
        done += count as u64;
        if count < AT_A_TIME {
            return Ok(());
        }
        told(done)?;
    }
}

impl Journal {
    /// Brings the lookup up to the entries, a part at a time; `told` hears how many are done. Nothing where the file can
    /// only be read.
    pub(crate) fn bring_up_lookup(&mut self, told: &mut dyn FnMut(u64)) -> Result<(), JournalError> {
        if self.read_only || self.lookup_is_up()? {
            return Ok(());
        }
        let (mut done, mut numbers) = (0, Numbers::new());
        loop {
            let transaction = self.connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
            let count = bring_up_some(&transaction, AT_A_TIME, &mut numbers)?;
            transaction.commit()?;
            if count == 0 {
                return Ok(());
            }
            done += count as u64;
            told(done);
        }
    }

    /// Throws the lookup away, so that it is made anew. Nothing where the file can only be read.
    pub(crate) fn forget_lookup(&mut self) -> Result<(), JournalError> {
        if self.read_only {
            return Ok(());
        }
        let transaction = self.connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        transaction.execute("DELETE FROM about", [])?;
        transaction.execute("UPDATE looked_up SET arrival = 0", [])?;
        Ok(transaction.commit()?)
    }

    /// Whether everything can be looked up.
    pub fn lookup_is_up(&self) -> Result<bool, JournalError> {
        let asked = "SELECT (SELECT arrival FROM looked_up) IS (SELECT coalesce(max(arrival), 0) FROM entry)";
        match self.connection.query_row(asked, [], |row| row.get(0)) {
            Ok(up) => Ok(up),
            // A file of an older version that can only be read.
            Err(rusqlite::Error::SqliteFailure(_, _)) if self.read_only => Ok(false),
            Err(error) => Err(error.into()),
        }
    }

    /// How many entries there are. They arrive as 1, 2, 3 ... and none is ever taken out.
    pub fn count(&self) -> Result<u64, JournalError> {
        Ok(self.newest_arrival()?.unsigned_abs())
    }

    /// The number of the entry that arrived last; 0 before the first.
    pub(crate) fn last_arrival(&self) -> Result<i64, JournalError> {
        self.newest_arrival()
    }

    /// The entries that can be looked up by any of these, by order of arrival, each once.
    pub fn look_up(&self, sought: &[Sought]) -> Result<Vec<Arc<Entry>>, JournalError> {
        let _together = self.read_together()?;
        let mut arrivals: Vec<i64> = Vec::new();
        let all =
            "SELECT arrival FROM about WHERE subject = (SELECT number FROM subject WHERE sort = ?1 AND name = ?2)";
        let lending = format!("{all} AND lends = 1");
        for one in sought {
            let query = if one.only_lending { lending.as_str() } else { all };
            let mut statement = self.connection.prepare_cached(query)?;
            let found = statement.query_map(params![one.sort.word(), one.name], |row| row.get(0))?;
            for arrival in found {
                arrivals.push(arrival?);
            }
        }
        arrivals.sort_unstable();
        arrivals.dedup();
        self.arrived(&arrivals)
    }

    fn arrived(&self, arrivals: &[i64]) -> Result<Vec<Arc<Entry>>, JournalError> {
        let query = format!("SELECT {COLUMNS} FROM entry WHERE arrival = ?1");
        let mut statement = self.connection.prepare_cached(&query)?;
        let (mut entries, mut names) = (Vec::with_capacity(arrivals.len()), Names::default());
        for arrival in arrivals {
            let mut found = statement.query(params![arrival])?;
            if let Some(row) = found.next()? {
                entries.push(Arc::new(Written::read(row)?.entry(&mut names)?));
            }
        }
        Ok(entries)
    }

    /// Every name of a sort, with how many entries can be looked up by it.
    pub(crate) fn names_and_entries(&self, sort: &Sort) -> Result<Vec<(String, u64)>, JournalError> {
        let query =
            "SELECT name, (SELECT count(*) FROM about WHERE about.subject = number) FROM subject WHERE sort = ?1";
        let mut statement = self.connection.prepare_cached(query)?;
        let found = statement.query_map(params![sort.word()], |row| Ok((row.get(0)?, row.get::<_, i64>(1)?)))?;
        found.map(|row| row.map(|(name, entries)| (name, entries.unsigned_abs())).map_err(JournalError::from)).collect()
    }

    /// Every name of a sort.
    pub fn names(&self, sort: &Sort) -> Result<Vec<String>, JournalError> {
        let mut statement = self.connection.prepare_cached("SELECT name FROM subject WHERE sort = ?1 ORDER BY name")?;
        let found = statement.query_map(params![sort.word()], |row| row.get(0))?;
        Ok(found.collect::<Result<_, _>>()?)
    }

    /// The names of a sort that are the same without case, accents, blanks and hyphens. The unary plus keeps SQLite from
    /// going through every name of the sort in their order.
    pub(crate) fn names_like(&self, sort: &Sort, name: &str) -> Result<Vec<String>, JournalError> {
        let query = "SELECT name FROM subject WHERE sort = ?1 AND folded = ?2 ORDER BY +name";
        let mut statement = self.connection.prepare_cached(query)?;
        let found = statement.query_map(params![sort.word(), folded(name)], |row| row.get(0))?;
        Ok(found.collect::<Result<_, _>>()?)
    }

    /// One entry.
    pub fn entry(&self, id: &EntryId) -> Result<Option<Entry>, JournalError> {
        let query = format!("SELECT {COLUMNS} FROM entry WHERE device = ?1 AND seq = ?2");
        let seq = i64::try_from(id.seq).unwrap_or(i64::MAX);
        Ok(self.entries_of(&query, params![id.device.as_str(), seq])?.into_iter().next())
    }

    /// Everything a command wrote: all of it in one moment, so that it is found by that.
    pub fn command(&self, of: &Entry) -> Result<Vec<Entry>, JournalError> {
        let query =
            format!("SELECT {COLUMNS} FROM entry WHERE recorded = ?3 AND +device = ?1 AND command = ?2 ORDER BY +seq");
        let command = i64::try_from(of.command).unwrap_or(i64::MAX);
        self.entries_of(&query, params![of.id.device.as_str(), command, of.recorded.millis()])
    }

    /// What a command wrote for a day without a time of day. The unary plus keeps SQLite from going through every entry of
    /// the device: a day holds few.
    pub(crate) fn command_on(&self, device: &DeviceId, command: u64, day: Day) -> Result<Vec<Entry>, JournalError> {
        let query = format!(
            "SELECT {COLUMNS} FROM entry WHERE happened = ?1 AND +device = ?2 AND command = ?3 AND clock IS NULL ORDER BY +seq"
        );
        let command = i64::try_from(command).unwrap_or(i64::MAX);
        self.entries_of(&query, params![day.to_string(), device.as_str(), command])
    }

    /// The entries that arrived before number `before`, newest first, at most so many; and the number of the last.
    pub(crate) fn entries_before(&self, before: i64, at_most: usize) -> Result<(Vec<Entry>, i64), JournalError> {
        let query = format!("SELECT {COLUMNS} FROM entry WHERE arrival < ?1 ORDER BY arrival DESC LIMIT ?2");
        let mut statement = self.connection.prepare_cached(&query)?;
        let mut found = statement.query(params![before, i64::try_from(at_most).unwrap_or(i64::MAX)])?;
        let (mut entries, mut last, mut names) = (Vec::new(), before, Names::default());
        while let Some(row) = found.next()? {
            let written = Written::read(row)?;
            last = written.arrival;
            entries.push(written.entry(&mut names)?);
        }
        Ok((entries, last))
    }

    /// The entry of the latest day of those that count, and its day; none where there is none. What takes back or settles is
    /// passed over.
    pub(crate) fn newest_of_days(
        &self,
        counts: &dyn Fn(&EntryId) -> bool,
    ) -> Result<Option<(EntryId, Day)>, JournalError> {
        let mut statement =
            self.connection.prepare_cached("SELECT device, seq, happened, kind FROM entry ORDER BY happened DESC")?;
        let mut found = statement.query([])?;
        while let Some(row) = found.next()? {
            let (device, seq, kind): (String, i64, String) = (row.get(0)?, row.get(1)?, row.get(3)?);
            let id = DeviceId::new(&device).map(|device| EntryId { device, seq: seq.unsigned_abs() });
            if let Some(id) = id.filter(|_| !["withdrawn", "settled"].contains(&kind.as_str())).filter(counts) {
                return Ok(row.get::<_, String>(2)?.parse().ok().map(|day| (id, day)));
            }
        }
        Ok(None)
    }

    /// The first day of which there is an entry.
    pub fn first_day(&self) -> Result<Option<Day>, JournalError> {
        let found =
            self.connection.query_row("SELECT min(happened) FROM entry", [], |row| row.get::<_, Option<String>>(0));
        Ok(found?.and_then(|day| day.parse().ok()))
    }

    /// The last entry of a device that counts.
    pub(crate) fn newest_of(
        &self,
        device: &DeviceId,
        counts: &dyn Fn(&Entry) -> bool,
    ) -> Result<Option<Entry>, JournalError> {
        let query = format!("SELECT {COLUMNS} FROM entry WHERE device = ?1 ORDER BY seq DESC");
        let mut statement = self.connection.prepare_cached(&query)?;
        let mut found = statement.query(params![device.as_str()])?;
        let mut names = Names::default();
        while let Some(row) = found.next()? {
            let entry = Written::read(row)?.entry(&mut names)?;
            if counts(&entry) {
                return Ok(Some(entry));
            }
        }
        Ok(None)
    }

    /// How many entries happened after a day, or were recorded after a moment.
    pub(crate) fn count_later(&self, day: Day, known: Option<Moment>) -> Result<u64, JournalError> {
        let (day, known) = later_than(day, known);
        let query = "SELECT (SELECT count(*) FROM entry WHERE happened > ?1) + (SELECT count(*) FROM entry WHERE recorded > ?2)";
        Ok(self.connection.query_row(query, params![day, known], |row| row.get::<_, i64>(0))?.unsigned_abs())
    }

    /// The entries that happened after a day, or were recorded after a moment, by order of arrival.
    pub fn later(&self, day: Day, known: Option<Moment>) -> Result<Vec<Arc<Entry>>, JournalError> {
        let _together = self.read_together()?;
        let (day, known) = later_than(day, known);
        let queries: [(&str, &dyn rusqlite::ToSql); 2] = [
            ("SELECT arrival FROM entry WHERE happened > ?1", &day),
            ("SELECT arrival FROM entry WHERE recorded > ?1", &known),
        ];
        let mut arrivals: Vec<i64> = Vec::new();
        for (query, asked) in queries {
            let mut statement = self.connection.prepare_cached(query)?;
            for arrival in statement.query_map([asked], |row| row.get(0))? {
                arrivals.push(arrival?);
            }
        }
        arrivals.sort_unstable();
        arrivals.dedup();
        self.arrived(&arrivals)
    }

    fn entries_of(&self, query: &str, asked: &[&dyn rusqlite::ToSql]) -> Result<Vec<Entry>, JournalError> {
        let mut statement = self.connection.prepare_cached(query)?;
        let mut found = statement.query(asked)?;
        let (mut entries, mut names) = (Vec::new(), Names::default());
        while let Some(row) = found.next()? {
            entries.push(Written::read(row)?.entry(&mut names)?);
        }
        Ok(entries)
    }
}

fn later_than(day: Day, known: Option<Moment>) -> (String, i64) {
    (day.to_string(), known.map_or(i64::MAX, Moment::millis))
}
