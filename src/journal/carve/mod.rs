//! Entries found in the bytes of a file, without SQLite: where pages, tables or the header are destroyed, every row that
//! lies whole somewhere in the file or its log is still found, and its own hash proves it.
//!
//! Layout of rows: SQLite file format, sections 1.6 (cells and overflow pages), 2.1 (records) and 4.1 (the log).

mod log;
mod pages;

pub(super) use log::is_foreign;

use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::ops::ControlFlow;
use std::path::Path;

use super::disk;
use super::error::JournalError;
use super::look::{LookProgress, untold};
use crate::base::{DeviceId, EntryId, Moment};
use crate::nursery::envelope::{Hash, Sealed};
use pages::Pages;

/// Columns of a row, `arrival` first.
const COLUMN_COUNT: usize = 12;
/// The shortest header of such a row, bytes: its own length and one byte a column.
const SHORTEST_HEADER_BYTES: u8 = 13;
/// The longest: texts of up to 2 GB take five bytes each.
const LONGEST_HEADER_BYTES: u8 = 40;
/// The longest row that is gathered, bytes: four lines of an import as long as they may be.
const LONGEST_ROW_BYTES: usize = 16 << 20;

/// A file and the log beside it, read a page at a time.
pub(super) struct Bytes {
    main: Pages,
    log: Option<Pages>,
    /// Where the newest page of each number lies in the log.
    newest: HashMap<u32, u64>,
    page: usize,
}

impl Bytes {
    /// Opens both; a log that is not there is empty.
    pub fn of(path: &Path) -> Result<Bytes, JournalError> {
        let main = Pages::of_file(path)?;
        let page = main.page_bytes();
        let log = Pages::of_log(&disk::beside(path, "", "-wal"), page).ok();
        let mut newest = HashMap::new();
        for (index, frame) in log.iter().flat_map(Pages::frames) {
            newest.extend(frame.get(..4).and_then(number).map(|number| (number, index)));
        }
        Ok(Bytes { main, log, newest, page })
    }

    /// Gives every entry whose hash is right: those of the file, then those of the log, and whether it lies in the log.
    ///
    /// # Errors
    /// It was stopped by the one who is told how far it is.
    pub fn entries(&self, told: &mut LookProgress<'_>, give: &mut dyn FnMut(Sealed, bool)) -> Result<(), JournalError> {
        for (pages, is_log) in self.parts() {
            pages.each(told, &mut |bytes| {
                for at in 0..bytes.len().saturating_sub(usize::from(SHORTEST_HEADER_BYTES)) {
                    // The row's first column is its number in the file, which SQLite leaves empty in the row itself.
                    let may_begin =
                        (SHORTEST_HEADER_BYTES..=LONGEST_HEADER_BYTES).contains(&bytes[at]) && bytes[at + 1] == 0;
                    if may_begin && let Some(sealed) = self.entry_at(&bytes[at..], is_log) {
                        give(sealed, is_log);
                    }
                }
                ControlFlow::Continue(())
            })?;
        }
        Ok(())
    }

    /// The numbers of devices in what is left of the index of identities, also where the entries themselves are gone.
    ///
    /// # Errors
    /// It was stopped by the one who is told how far it is.
    pub(crate) fn indexed(
        &self,
        devices: &[DeviceId],
        told: &mut LookProgress<'_>,
    ) -> Result<BTreeMap<DeviceId, BTreeSet<u64>>, JournalError> {
        let mut found: BTreeMap<DeviceId, BTreeSet<u64>> = BTreeMap::new();
        for (pages, _) in self.parts() {
            pages.each(told, &mut |bytes| {
                for device in devices {
                    let numbers = names_in(bytes, device).filter_map(|at| indexed_at(bytes, at, device));
                    found.entry(device.clone()).or_default().extend(numbers);
                }
                ControlFlow::Continue(())
            })?;
        }
        Ok(found)
    }

    /// Whether the file itself, without its log, has an entry, or has it in its index; damaged or not.
    pub(crate) fn file_names(&self, device: &DeviceId, seq: u64) -> bool {
        let mut is_there = false;
        let looked = self.main.each(&mut untold, &mut |bytes| {
            is_there = names_in(bytes, device)
                .any(|at| indexed_at(bytes, at, device) == Some(seq) || seq_of_row_at(bytes, at, device) == Some(seq));
            if is_there { ControlFlow::Break(()) } else { ControlFlow::Continue(()) }
        });
        looked.is_ok() && is_there
    }

    fn parts(&self) -> impl Iterator<Item = (&Pages, bool)> {
        [(Some(&self.main), false), (self.log.as_ref(), true)]
            .into_iter()
            .filter_map(|(pages, is_log)| Some((pages?, is_log)))
    }

    /// The entry whose row begins here; `bytes` goes to the end of the page.
    fn entry_at(&self, bytes: &[u8], is_log: bool) -> Option<Sealed> {
        let header = Header::read(bytes)?;
        let local = self.local_bytes(header.row_bytes);
        let mut row = bytes.get(..local)?.to_vec();
        if local < header.row_bytes {
            let first = number(bytes.get(local..local + 4)?)?;
            // The newest page of a number may lie in the log or in the file: the hash tells which is right.
            for log_first in [is_log, !is_log] {
                let mut whole = row.clone();
                self.follow(first, header.row_bytes, log_first, &mut whole);
                let sealed = sealed_of(&header, &whole);
                if sealed.is_some() {
                    return sealed;
                }
            }
            return None;
        }
        row.truncate(header.row_bytes);
        sealed_of(&header, &row)
    }

    /// How much of a row lies on its own page. SQLite file format, section 1.6.
    fn local_bytes(&self, row: usize) -> usize {
        let most = self.page - 35;
        if row <= most {
            return row;
        }
        let least = (self.page - 12) * 32 / 255 - 23;
        let fitting = least + (row - least) % (self.page - 4);
        if fitting <= most { fitting } else { least }
    }

    /// Appends what lies on overflow pages.
    fn follow(&self, first: u32, row_bytes: usize, log_first: bool, row: &mut Vec<u8>) {
        let mut next = first;
        while row.len() < row_bytes && next > 0 {
            let page = if log_first {
                self.page_in_log(next).or_else(|| self.page_in_main(next))
            } else {
                self.page_in_main(next).or_else(|| self.page_in_log(next))
            };
            let Some(page) = page else { return };
            let Some((link, content)) = page.split_at_checked(4) else { return };
            row.extend_from_slice(content.get(..content.len().min(row_bytes - row.len())).unwrap_or_default());
            next = number(link).unwrap_or(0);
        }
    }

    fn page_in_main(&self, number: u32) -> Option<Vec<u8>> {
        self.main.whole(u64::from(number).checked_sub(1)?)
    }

    fn page_in_log(&self, number: u32) -> Option<Vec<u8>> {
        self.log.as_ref()?.whole(*self.newest.get(&number)?)
    }
}

/// Where the name of a device stands in some bytes.
fn names_in<'a>(bytes: &'a [u8], device: &'a DeviceId) -> impl Iterator<Item = usize> + 'a {
    let name = device.as_str().as_bytes();
    bytes.windows(name.len()).enumerate().filter(move |(_, window)| *window == name).map(|(at, _)| at)
}

/// The number in a row of the index whose device stands here.
fn indexed_at(bytes: &[u8], at: usize, device: &DeviceId) -> Option<u64> {
    number_in_index(bytes.get(at.checked_sub(4)?..at)?, bytes.get(at + device.as_str().len()..)?)
}

/// The number in a row of the table of entries whose device stands here.
fn seq_of_row_at(bytes: &[u8], at: usize, device: &DeviceId) -> Option<u64> {
    let lengths = usize::from(SHORTEST_HEADER_BYTES)..=usize::from(LONGEST_HEADER_BYTES);
    lengths.filter_map(|length| Some((length, bytes.get(at.checked_sub(length)?..)?))).find_map(|(length, row)| {
        let header = Header::read(row).filter(|header| header.header_bytes == length)?;
        header.identity(row).filter(|(named, _)| named == device).map(|(_, seq)| seq)
    })
}

/// The header of a row of the table of entries.
struct Header {
    header_bytes: usize,
    /// Kind of each column's value, `arrival` first.
    serials: [u64; COLUMN_COUNT],
    row_bytes: usize,
}

impl Header {
    /// Reads a header that can only be that of an entry.
    fn read(bytes: &[u8]) -> Option<Header> {
        let header_bytes = usize::from(*bytes.first()?);
        let mut at = 1;
        let mut serials = [0; COLUMN_COUNT];
        for serial in &mut serials {
            let (value, length) = varint(bytes.get(at..)?)?;
            *serial = value;
            at += length;
        }
        let [arrival, device, seq, happened, clock, recorded, who, kind, command, body, prev, hash] = serials;
        let text = |serial: u64| serial >= 13 && serial % 2 == 1;
        let whole = |serial: u64| (1..=6).contains(&serial) || serial == 8 || serial == 9;
        // Ten letters, five letters, 32 bytes.
        let fits = at == header_bytes
            && arrival == 0
            && text(device)
            && whole(seq)
            && happened == 33
            && matches!(clock, 0 | 23)
            && whole(recorded)
            && text(who)
            && text(kind)
            && whole(command)
            && text(body)
            && matches!(prev, 0 | 76)
            && hash == 76;
        let row_bytes = serials.iter().try_fold(header_bytes, |sum, serial| sum.checked_add(length_of(*serial)?))?;
        (fits && row_bytes <= LONGEST_ROW_BYTES).then_some(Header { header_bytes, serials, row_bytes })
    }

    /// Device and number, which stand first in a row.
    fn identity(&self, row: &[u8]) -> Option<(DeviceId, u64)> {
        let [_, device, seq, ..] = self.serials;
        let (from, between) = (self.header_bytes, self.header_bytes + length_of(device)?);
        let name = std::str::from_utf8(row.get(from..between)?).ok()?;
        let value = integer(seq, row.get(between..between + length_of(seq)?)?);
        Some((DeviceId::new(name)?, u64::try_from(value).ok().filter(|seq| *seq > 0)?))
    }
}

/// The number in a row of the index: device, number, arrival, behind a header of four bytes.
fn number_in_index(header: &[u8], behind: &[u8]) -> Option<u64> {
    let [4, device, seq, arrival] = *header else { return None };
    let whole = |serial: u8| (1..=6).contains(&serial) || serial == 8 || serial == 9;
    let fits = device % 2 == 1 && device >= 13 && whole(seq) && whole(arrival);
    let seq = u64::from(seq);
    let value = integer(seq, behind.get(..length_of(seq)?)?);
    u64::try_from(value).ok().filter(|value| fits && *value > 0)
}

/// Bytes a value takes, by its kind. SQLite file format, section 2.1.
fn length_of(serial: u64) -> Option<usize> {
    match serial {
        0 | 8 | 9 => Some(0),
        1..=4 => usize::try_from(serial).ok(),
        5 => Some(6),
        6 | 7 => Some(8),
        10 | 11 => None,
        text_or_blob => usize::try_from((text_or_blob - 12) / 2).ok(),
    }
}

/// The entry of a whole row, where its hash is right.
fn sealed_of(header: &Header, row: &[u8]) -> Option<Sealed> {
    let mut at = header.header_bytes;
    let mut values: [&[u8]; COLUMN_COUNT] = [&[]; COLUMN_COUNT];
    for (value, serial) in values.iter_mut().zip(header.serials) {
        let length = length_of(serial)?;
        *value = row.get(at..at + length)?;
        at += length;
    }
    let [_, device, seq, happened, clock, recorded, who, kind, command, body, prev, hash] = values;
    let serial = |column: usize| header.serials.get(column).copied().unwrap_or(0);
    let text = |bytes: &[u8]| std::str::from_utf8(bytes).ok().map(str::to_string);
    let clock = match serial(4) {
        0 => None,
        _ => Some(text(clock)?.parse().ok()?),
    };
    let prev = match serial(10) {
        0 => None,
        _ => Some(Hash(prev.try_into().ok()?)),
    };
    let sealed = Sealed {
        id: EntryId {
            device: DeviceId::new(&text(device)?)?,
            seq: u64::try_from(integer(serial(2), seq)).ok().filter(|seq| *seq > 0)?,
        },
        happened: text(happened)?.parse().ok()?,
        clock,
        recorded: Moment::from_millis(integer(serial(5), recorded)),
        who: text(who)?,
        kind: text(kind)?,
        command: u64::try_from(integer(serial(8), command)).ok()?,
        body: text(body)?,
        prev,
        hash: Hash(hash.try_into().ok()?),
    };
    (sealed.reckoned_hash() == sealed.hash).then_some(sealed)
}

fn integer(serial: u64, bytes: &[u8]) -> i64 {
    if serial == 9 {
        return 1;
    }
    let negative = bytes.first().is_some_and(|first| first & 0x80 != 0);
    bytes.iter().fold(if negative { -1 } else { 0 }, |sum, byte| (sum << 8) | i64::from(*byte))
}

fn number(bytes: &[u8]) -> Option<u32> {
    Some(u32::from_be_bytes(bytes.try_into().ok()?))
}

/// A number of one to nine bytes, and how many it took. SQLite file format, section 1.6.
fn varint(bytes: &[u8]) -> Option<(u64, usize)> {
    let mut value = 0;
    for (i, byte) in bytes.iter().take(9).enumerate() {
        if i == 8 {
            return Some(((value << 8) | u64::from(*byte), 9));
        }
        value = (value << 7) | u64::from(byte & 0x7f);
        if byte & 0x80 == 0 {
            return Some((value, i + 1));
        }
    }
    None
}
