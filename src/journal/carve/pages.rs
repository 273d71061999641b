//! A file of pages, one page of it in memory at a time.

use std::cell::RefCell;
use std::fs::File;
use std::io::{Read, Seek, SeekFrom};
use std::path::Path;

use crate::journal::error::JournalError;

/// The page size of a nursery file whose header cannot be read, bytes: SQLite's own.
const USUAL_PAGE_BYTES: usize = 4096;
/// Header of the log and of each page in it, bytes. SQLite file format, section 4.1.
pub(super) const LOG_HEADER_BYTES: usize = 32;
pub(super) const FRAME_HEADER_BYTES: usize = 24;

/// The pages of a file, or of a log.
pub(super) struct Pages {
    file: RefCell<File>,
    /// Bytes before the first page, and before each.
    first: u64,
    before: usize,
    page: usize,
    count: u64,
}

impl Pages {
    /// Those of a file; the last may be shorter where the file was cut off.
    pub fn of_file(path: &Path) -> Result<Pages, JournalError> {
        let mut file = File::open(path).map_err(|error| JournalError::io(path, &error))?;
        let mut head = Vec::new();
        file.by_ref().take(18).read_to_end(&mut head).map_err(|error| JournalError::io(path, &error))?;
        let told = head.get(16..18).map_or(0, |two| usize::from(two[0]) << 8 | usize::from(two[1]));
        let page = if told.is_power_of_two() && (512..=32768).contains(&told) { told } else { USUAL_PAGE_BYTES };
        Pages::new(file, path, 0, 0, page)
    }

    /// Those of a log.
    pub(crate) fn of_log(path: &Path, page: usize) -> Result<Pages, JournalError> {
        let file = File::open(path).map_err(|error| JournalError::io(path, &error))?;
        Pages::new(file, path, LOG_HEADER_BYTES as u64, FRAME_HEADER_BYTES, page)
    }

    fn new(file: File, path: &Path, first: u64, before: usize, page: usize) -> Result<Pages, JournalError> {
        let bytes = file.metadata().map_err(|error| JournalError::io(path, &error))?.len();
        let count = bytes.saturating_sub(first).div_ceil((before + page) as u64);
        Ok(Pages { file: RefCell::new(file), first, before, page, count })
    }

    /// The size of a page, bytes.
    pub(crate) fn page_bytes(&self) -> usize {
        self.page
    }

    /// Gives each page, until told `false`; one that the disk cannot read is passed over.
    pub fn each(&self, give: &mut dyn FnMut(&[u8]) -> bool) {
        let mut bytes = Vec::with_capacity(self.page);
        for index in 0..self.count {
            if self.read(index, self.before, self.page, &mut bytes).is_ok() && !give(&bytes) {
                return;
            }
        }
    }

    /// A page that is there to its end.
    pub fn whole(&self, index: u64) -> Option<Vec<u8>> {
        let mut bytes = Vec::new();
        self.read(index, self.before, self.page, &mut bytes).ok()?;
        (bytes.len() == self.page).then_some(bytes)
    }

    /// The header of each page, and which page it is; of a log only.
    pub(crate) fn frames(&self) -> impl Iterator<Item = (u64, Vec<u8>)> + '_ {
        (0..self.count).filter_map(|index| {
            let mut header = Vec::new();
            self.read(index, 0, self.before, &mut header).ok()?;
            Some((index, header))
        })
    }

    fn read(&self, index: u64, from: usize, length: usize, bytes: &mut Vec<u8>) -> std::io::Result<()> {
        let place = self.first + index.saturating_mul((self.before + self.page) as u64) + from as u64;
        let mut file = self.file.borrow_mut();
        file.seek(SeekFrom::Start(place))?;
        bytes.resize(length, 0);
        let mut there = 0;
        while there < length {
            match file.read(&mut bytes[there..]) {
                Ok(0) => break,
                Ok(more) => there += more,
                Err(error) if error.kind() == std::io::ErrorKind::Interrupted => {}
                Err(error) => return Err(error),
            }
        }
        bytes.truncate(there);
        Ok(())
    }
}
