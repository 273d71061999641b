//! Damaged files: no panic, no entry that is silently another one, and what is undamaged is brought out.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use outplant::journal::{Journal, JournalError, Rescued, check_with_note, rescue, untold};
use outplant::nursery::envelope::{Draft, Sealed};
use serde_json::{Value, json};

use super::{Dice, Row, count, quick_folder, unharmed};
use crate::support::{day, evening};

/// A nursery as it lay on the disk while it was being written: a file, and a log with the newest entries.
pub(super) struct Lying {
    pub folder: tempfile::TempDir,
    pub file: Vec<u8>,
    pub log: Vec<u8>,
    pub lines: Vec<String>,
    /// The file when it had half of its entries and no log.
    pub early: Vec<u8>,
}

fn drafts(of: std::ops::Range<u32>, why: &str) -> Vec<Draft> {
    of.map(|i| {
        // Now and then a text that takes pages of its own.
        let text = if i % 40 == 7 { "long ".repeat(2000) } else { format!("{why} number {i}") };
        let Value::Object(body) = json!({"text": text}) else { panic!("an object") };
        Draft { happened: day("2026-03-14"), clock: None, who: "mara".into(), kind: "noted".into(), body }
    })
    .collect()
}

impl Lying {
    fn new(why: &str) -> Lying {
        Lying::of(why, 400, 30)
    }

    /// So many entries in the file, and so many more in its log.
    pub fn of(why: &str, in_file: u32, in_log: u32) -> Lying {
        let folder = quick_folder();
        let (path, shelf) = (folder.path().join("book.outplant"), folder.path().join("shelf"));
        let mut journal = Journal::begin(&path, &shelf).unwrap();
        journal.append(&drafts(0..in_file / 2, why), evening(day("2026-03-14"))).unwrap();
        drop(journal);
        let early = fs::read(&path).unwrap();
        let mut journal = Journal::open(&path, &shelf).unwrap();
        journal.append(&drafts(in_file / 2..in_file, why), evening(day("2026-03-14"))).unwrap();
        drop(journal);
        let mut journal = Journal::open(&path, &shelf).unwrap();
        for i in in_file..in_file + in_log {
            journal.append(&drafts(i..i + 1, why), evening(day("2026-03-14"))).unwrap();
        }
        let (file, log) = (fs::read(&path).unwrap(), fs::read(log_of(&path)).unwrap());
        let lines = lines(&journal).unwrap();
        drop(journal);
        Lying { folder, file, log, lines, early }
    }

    /// More of the same nursery.
    pub fn drafts_of(of: std::ops::Range<u32>, why: &str) -> Vec<Draft> {
        drafts(of, why)
    }

    /// When it is written.
    pub fn evening() -> outplant::base::Moment {
        evening(day("2026-03-14"))
    }

    pub fn path(&self) -> PathBuf {
        self.folder.path().join("book.outplant")
    }

    /// Puts bytes where the file and its log lie; the file stays the same to the system, as after damage.
    pub fn put(&self, file: &[u8], log: Option<&[u8]>) {
        fs::write(self.path(), file).unwrap();
        let _ = fs::remove_file(self.folder.path().join("book.outplant-shm"));
        match log {
            Some(log) => fs::write(log_of(&self.path()), log).unwrap(),
            None => {
                let _ = fs::remove_file(log_of(&self.path()));
            }
        }
    }
}

pub(super) fn log_of(path: &Path) -> PathBuf {
    path.with_file_name("book.outplant-wal")
}

pub(super) fn lines(journal: &Journal) -> Result<Vec<String>, JournalError> {
    let mut found = Vec::new();
    journal.sealed::<JournalError>(&mut |sealed| {
        found.push(sealed.line());
        Ok(())
    })?;
    journal.entries().map(|_| found)
}

/// What is counted over all damages of one kind.
#[derive(Default)]
struct Counted {
    told: u64,
    harmless: u64,
    written: usize,
    rescued: usize,
    missing: usize,
    named: usize,
}

/// One damaged file is looked at in every way; an answer says what went wrong.
fn look_at(lying: &Lying, counted: &mut Counted) -> Option<String> {
    let (path, shelf) = (lying.path(), lying.folder.path().join("shelf"));
    // Reading may leave an empty log beside a file; that changes nothing.
    let lies = || (fs::read(&path).unwrap(), fs::read(log_of(&path)).unwrap_or_default());
    let before = lies();
    let looked = unharmed("check", || check_with_note(&path, Some(&shelf), &mut untold));
    let rescued = unharmed("rescue", || rescue(&path, Some(&shelf), &mut untold));
    let read = unharmed("reading", || Journal::open_read_only(&path).and_then(|journal| lines(&journal)));
    let (looked, rescued, read) = match (looked, rescued, read) {
        (Ok(looked), Ok(rescued), Ok(read)) => (looked, rescued, read),
        (Err(panicked), _, _) | (_, Err(panicked), _) | (_, _, Err(panicked)) => return Some(panicked),
    };
    if lies() != before {
        return Some("the damaged file was written to".into());
    }
    let told = looked.as_ref().map_or(true, |report| !report.faults.is_empty());
    let all_there = read.as_ref() == Ok(&lying.lines);
    counted.told += u64::from(told);
    counted.harmless += u64::from(!told && all_there);
    if !told && !all_there {
        return Some(format!("{} entries are read, and nothing is told", read.map_or(0, |read| read.len())));
    }
    let rescued = rescued.unwrap_or_default();
    if let Err(why) = unharmed("going apart", || rescued.clone().without_backup()) {
        return Some(why);
    }
    counted.written += lying.lines.len();
    count_rescued(lying, &rescued, counted)
}

fn count_rescued(lying: &Lying, rescued: &Rescued, counted: &mut Counted) -> Option<String> {
    let out: BTreeSet<String> = rescued.entries.iter().map(Sealed::line).collect();
    let whole: BTreeSet<&String> = lying.lines.iter().collect();
    if let Some(wrong) = out.iter().find(|line| !whole.contains(line)) {
        return Some(format!("rescue gave an entry that was never written: {wrong:.200}"));
    }
    counted.rescued += out.len();
    for (seq, line) in (1..).zip(&lying.lines) {
        if !out.contains(line) {
            counted.missing += 1;
            counted.named += usize::from(rescued.lost.iter().any(|lost| (lost.from..=lost.to).contains(&seq)));
        }
    }
    None
}

fn share(part: usize, of: usize) -> f64 {
    if of == 0 { 100.0 } else { 100.0 * part as f64 / of as f64 }
}

fn tell(mut row: Row, counted: &Counted) {
    let Counted { told, harmless, written, rescued, missing, named } = counted;
    row.found = format!(
        "told {:.1} %, changed no entry {:.1} %; brought out {:.2} % of the entries; named {named} of {missing} lost",
        share(*told as usize, row.run as usize),
        share(*harmless as usize, row.run as usize),
        share(*rescued, *written),
    );
    row.must_hold();
}

/// A kind of damage of the file: bytes changed in place.
type Hurt = fn(&mut Vec<u8>, &mut Dice);

const HURTS: [(&str, Hurt); 5] = [
    ("one bit flipped", |bytes, dice| {
        let at = dice.below(bytes.len());
        bytes[at] ^= 1 << dice.below(8);
    }),
    ("a sector of 512 bytes zeroed", |bytes, dice| {
        let at = dice.below(bytes.len() / 512) * 512;
        bytes[at..at + 512].fill(0);
    }),
    ("a sector of 512 bytes of noise", |bytes, dice| {
        let at = dice.below(bytes.len() / 512) * 512;
        let noise = dice.bytes(512);
        bytes[at..at + 512].copy_from_slice(&noise);
    }),
    ("a page of 4096 bytes of noise", |bytes, dice| {
        let at = dice.below(bytes.len() / 4096) * 4096;
        let noise = dice.bytes(4096);
        bytes[at..at + 4096].copy_from_slice(&noise);
    }),
    ("the file cut off anywhere", |bytes, dice| {
        let end = dice.below(bytes.len());
        bytes.truncate(end);
    }),
];

#[test]
fn a_damaged_file_is_told_and_what_is_undamaged_is_brought_out() {
    let each = count("DAMAGES", 60, 2000) / (HURTS.len() as u64 + LOGS.len() as u64);
    let lying = closed();
    for (kind, (name, hurt)) in HURTS.iter().enumerate() {
        let (mut row, mut counted, mut dice) =
            (Row::begin(&format!("damage: {name}")), Counted::default(), Dice::new(kind as u64 + 1));
        for round in 0..each {
            let mut bytes = lying.file.clone();
            hurt(&mut bytes, &mut dice);
            lying.put(&bytes, None);
            let failure = look_at(&lying, &mut counted);
            row.ran(failure.map(|why| format!("round {round}: {why}")));
        }
        tell(row, &counted);
    }
}

/// A nursery whose log was taken into the file.
fn closed() -> Lying {
    let lying = Lying::new("the first nursery");
    lying.put(&lying.file, Some(&lying.log));
    drop(Journal::open(&lying.path(), &lying.folder.path().join("shelf")).unwrap());
    let file = fs::read(lying.path()).unwrap();
    Lying { file, log: Vec::new(), ..lying }
}

/// What may become of a log: of its own bytes and those of another nursery's log.
type Logs = fn(&[u8], &[u8], &mut Dice) -> Option<Vec<u8>>;

const LOGS: [(&str, Logs); 5] = [
    ("the log cut off anywhere", |own, _, dice| Some(own[..dice.below(own.len())].to_vec())),
    ("the log missing", |_, _, _| None),
    ("the log of another nursery", |_, other, dice| Some(other[..other.len() - dice.below(other.len() / 2)].to_vec())),
    ("one bit of the log flipped", |own, _, dice| {
        let mut log = own.to_vec();
        let at = dice.below(log.len());
        log[at] ^= 1 << dice.below(8);
        Some(log)
    }),
    ("a log of noise", |own, _, dice| Some(dice.bytes(own.len()))),
];

#[test]
fn a_log_that_is_cut_missing_or_foreign_is_told() {
    let each = count("DAMAGES", 60, 2000) / (HURTS.len() as u64 + LOGS.len() as u64);
    let (lying, other) = (Lying::new("the first nursery"), Lying::new("another nursery"));
    for (kind, (name, hurt)) in LOGS.iter().enumerate() {
        let (mut row, mut counted, mut dice) =
            (Row::begin(&format!("damage: {name}")), Counted::default(), Dice::new(kind as u64 + 77));
        for round in 0..each {
            let log = hurt(&lying.log, &other.log, &mut dice);
            lying.put(&lying.file, log.as_deref());
            let failure = look_at(&lying, &mut counted);
            row.ran(failure.map(|why| format!("round {round}: {why}")));
        }
        tell(row, &counted);
    }
}
