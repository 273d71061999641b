//! Whether the log beside a file is its own. SQLite has no mark to tell by and takes in any log that is whole in itself.
//! What the entries say tells:
//!
//! - An arrival is one entry, for ever. Where the log has another one than the file, they do not belong together.
//! - What the log begins with follows on what the file has: an entry that the log leaves out before one that it has lies on a
//!   page that no frame of the log touches, so it is in the file whatever a power cut has left of it.
//! - The file never has more than its log, once an entry has come into that: a log that ends before the file does is of an
//!   earlier day, and would take the newer entries away.
//!
//! A log without entries, in which only kept stories lie, cannot be told by these and is taken.

use std::collections::HashMap;
use std::fs::File;
use std::io::{BufReader, Read};
use std::path::Path;
use std::time::Duration;

use super::pages::{FRAME_HEADER_BYTES, LOG_HEADER_BYTES, Pages};
use super::{Bytes, Header, number, varint};
use crate::base::DeviceId;
use crate::journal::{connection, disk, rows};

/// A log is looked at so often before it is refused, and so long lies between: another program that writes and takes the
/// log into the file at this very moment may make an honest one look foreign, but not each time.
const LOOKS: u32 = 3;
const BETWEEN_LOOKS: Duration = Duration::from_millis(20);
/// Runs of entries that are looked at: a log has one or two, that of a large import of several devices some more.
const MOST_RUNS: usize = 64;
/// The first byte of a page that holds rows of a table. SQLite file format, section 1.6.
const LEAF_OF_TABLE: u8 = 13;

/// An entry as its row begins.
#[derive(Clone, PartialEq, Eq, Debug)]
struct Row {
    arrival: i64,
    device: DeviceId,
    seq: u64,
}

/// Whether the log beside a file is plainly that of another nursery, or of another state of this one. Reads only; no log, or
/// an empty one, costs nothing.
pub(in crate::journal) fn is_foreign(path: &Path) -> bool {
    let log = disk::beside(path, "", "-wal");
    if !std::fs::metadata(&log).is_ok_and(|about| about.len() > LOG_HEADER_BYTES as u64) {
        return false;
    }
    (0..LOOKS).all(|look| {
        if look > 0 {
            std::thread::sleep(BETWEEN_LOOKS);
        }
        looks_foreign(path, &log)
    })
}

fn looks_foreign(path: &Path, log: &Path) -> bool {
    // The file before its log: what comes meanwhile comes into the log first.
    let file = connection::open_guarded(path, true).ok();
    let newest = file.as_ref().and_then(|file| row_of_file(file, None));
    let Some(rows) = rows_of_log(path, log) else { return false };
    let last = rows.iter().map(|row| row.arrival).max();
    if newest.is_some_and(|newest| last.is_some_and(|last| newest.arrival > last)) {
        return true;
    }
    runs(rows).into_iter().take(MOST_RUNS).any(|first| {
        match file.as_ref().and_then(|file| row_of_file(file, Some(first.arrival))) {
            Some(there) => there != first,
            None => first.seq > 1 && !file_has(path, file.as_ref(), &first.device, first.seq - 1),
        }
    })
}

/// The entries in the newest pages of a log. None where SQLite takes nothing from it.
fn rows_of_log(path: &Path, log: &Path) -> Option<Vec<Row>> {
    let page = Pages::of_file(path).ok()?.page_bytes();
    let newest = committed(log, page)?;
    let pages = Pages::of_log(log, page).ok()?;
    Some(newest.into_values().filter_map(|index| pages.whole(index)).flat_map(|page| rows_on(&page)).collect())
}

/// The first row of each unbroken run of numbers of a device.
fn runs(mut rows: Vec<Row>) -> Vec<Row> {
    rows.sort_by(|a, b| (&a.device, a.seq).cmp(&(&b.device, b.seq)));
    let mut before: Option<(DeviceId, u64)> = None;
    rows.retain(|row| {
        let goes_on = before.as_ref().is_some_and(|(device, seq)| *device == row.device && row.seq <= seq + 1);
        before = Some((row.device.clone(), row.seq));
        !goes_on
    });
    rows
}

/// Where the newest page of each number lies among the frames that SQLite would take: those whose sums are right, up to the
/// last that ends a transaction. SQLite file format, sections 4.1 to 4.3.
fn committed(log: &Path, page: usize) -> Option<HashMap<u32, u64>> {
    let mut reader = BufReader::with_capacity(1 << 16, File::open(log).ok()?);
    let mut header = [0; LOG_HEADER_BYTES];
    reader.read_exact(&mut header).ok()?;
    let sums_big = match number(&header[..4])? {
        0x377f_0682 => false,
        0x377f_0683 => true,
        _ => return None,
    };
    let mut sum = summed((0, 0), &header[..24], sums_big);
    if number(&header[8..12])? as usize != page || sum != pair(&header[24..32])? {
        return None;
    }
    let salt = pair(&header[16..24])?;
    let (mut newest, mut open): (HashMap<u32, u64>, Vec<(u32, u64)>) = (HashMap::new(), Vec::new());
    let mut frame = vec![0; FRAME_HEADER_BYTES + page];
    for index in 0.. {
        if reader.read_exact(&mut frame).is_err() {
            break;
        }
        let (about, content) = frame.split_at(FRAME_HEADER_BYTES);
        sum = summed(summed(sum, &about[..8], sums_big), content, sums_big);
        if pair(&about[8..16])? != salt || pair(&about[16..24])? != sum {
            break;
        }
        open.push((number(&about[..4])?, index));
        if number(&about[4..8])? > 0 {
            newest.extend(open.drain(..));
        }
    }
    Some(newest)
}

fn pair(bytes: &[u8]) -> Option<(u32, u32)> {
    let (first, second) = bytes.split_at_checked(4)?;
    Some((number(first)?, number(second)?))
}

/// SQLite file format, section 4.2.
fn summed((mut first, mut second): (u32, u32), bytes: &[u8], big: bool) -> (u32, u32) {
    for eight in bytes.chunks_exact(8) {
        let word = |at: usize| {
            let four = [eight[at], eight[at + 1], eight[at + 2], eight[at + 3]];
            if big { u32::from_be_bytes(four) } else { u32::from_le_bytes(four) }
        };
        first = first.wrapping_add(word(0)).wrapping_add(second);
        second = second.wrapping_add(word(4)).wrapping_add(first);
    }
    (first, second)
}

/// The rows of entries that a page holds, where it is one of that table.
fn rows_on(page: &[u8]) -> Vec<Row> {
    if page.first() != Some(&LEAF_OF_TABLE) {
        return Vec::new();
    }
    let two = |at: usize| page.get(at..at + 2).map_or(0, |two| usize::from(two[0]) << 8 | usize::from(two[1]));
    (0..two(3)).filter_map(|cell| row_at(page.get(two(8 + 2 * cell)..)?)).collect()
}

fn row_at(cell: &[u8]) -> Option<Row> {
    let (_, length) = varint(cell)?;
    let (arrival, more) = varint(cell.get(length..)?)?;
    let row = cell.get(length + more..)?;
    let (device, seq) = Header::read(row)?.identity(row)?;
    Some(Row { arrival: i64::try_from(arrival).ok()?, device, seq })
}

/// A row of the file alone, by its arrival or the newest, where its hash is right.
fn row_of_file(file: &rusqlite::Connection, arrival: Option<i64>) -> Option<Row> {
    let (arrival, sealed) = rows::at_arrival(file, arrival).ok()??;
    (sealed.reckoned_hash() == sealed.hash).then_some(Row { arrival, device: sealed.id.device, seq: sealed.id.seq })
}

/// Whether the file alone has an entry: asked of SQLite first, which is quick; what it does not find may lie in a page that a
/// power cut has left half taken in.
fn file_has(path: &Path, file: Option<&rusqlite::Connection>, device: &DeviceId, seq: u64) -> bool {
    let found = file.and_then(|file| crate::journal::device::hash_at(file, device, seq).ok().flatten());
    found.is_some() || Bytes::of(path).is_ok_and(|bytes| bytes.file_names(device, seq))
}
