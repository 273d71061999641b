//! A file of pages, one page of it in memory at a time.

use std::cell::RefCell;
use std::fs::File;
use std::io::{Read, Seek, SeekFrom};
use std::ops::ControlFlow;
use std::path::Path;

use crate::journal::error::JournalError;
use crate::journal::look::{LookProgress, LookStep};

/// The page size of a nursery file whose header cannot be read, bytes: SQLite's own.
const USUAL_PAGE_BYTES: usize = 4096;
/// Header of the log and of each page in it, bytes. SQLite file format, section 4.1.
pub(super) const LOG_HEADER_BYTES: usize = 32;
pub(super) const FRAME_HEADER_BYTES: usize = 24;

/// How much is read at once, bytes: a thousand of the usual pages.
const MANY_BYTES: usize = 1000 * USUAL_PAGE_BYTES;

/// Whether nothing is written there.
fn is_blank(bytes: &[u8]) -> bool {
    // Sixteen at a time: that is a matter of seconds where a file is huge.
    let (many, rest) = bytes.as_chunks::<16>();
    many.iter().all(|sixteen| u128::from_ne_bytes(*sixteen) == 0) && rest.iter().all(|byte| *byte == 0)
}

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

    /// Gives each page that holds anything, until a break; one that the disk cannot read is passed over. Many pages are read
    /// at once, and holes not at all.
    ///
    /// # Errors
    /// It was stopped by the one who is told how far it is.
    pub fn each(
        &self,
        told: &mut LookProgress<'_>,
        give: &mut dyn FnMut(&[u8]) -> ControlFlow<()>,
    ) -> Result<(), JournalError> {
        let one = self.before + self.page;
        let (mut bytes, mut index) = (Vec::new(), self.behind_hole(0));
        while index < self.count {
            let many = (MANY_BYTES / one).max(1).min(usize::try_from(self.count - index).unwrap_or(usize::MAX));
            if self.read(index, 0, many * one, &mut bytes).is_ok() {
                let pages = bytes.chunks(one).filter_map(|page| page.get(self.before..));
                if !is_blank(&bytes) && pages.filter(|page| !is_blank(page)).any(|page| give(page).is_break()) {
                    return Ok(());
                }
            } else {
                for index in (index..).take(many) {
                    let is_read = self.read(index, self.before, self.page, &mut bytes).is_ok();
                    if is_read && give(&bytes).is_break() {
                        return Ok(());
                    }
                }
            }
            index = self.behind_hole(index + many as u64);
            if told(LookStep::Bytes { done: index * one as u64, all: self.count * one as u64 }).is_break() {
                return Err(JournalError::Cancelled);
            }
        }
        Ok(())
    }

    /// The page at which something lies on the disk, from this one on: a file may be much longer than what is in it.
    #[cfg(target_os = "linux")]
    fn behind_hole(&self, index: u64) -> u64 {
        use rustix::fs::{SeekFrom, seek};
        let one = (self.before + self.page) as u64;
        match seek(&*self.file.borrow(), SeekFrom::Data(self.first + index.saturating_mul(one))) {
            Ok(place) => index.max(place.saturating_sub(self.first) / one),
            Err(rustix::io::Errno::NXIO) => self.count.max(index),
            // Not every file system knows where its holes are.
            Err(_) => index,
        }
    }

    #[cfg(not(target_os = "linux"))]
    fn behind_hole(&self, index: u64) -> u64 {
        index
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

#[cfg(test)]
mod tests {
    use super::*;

    fn pages_of(path: &Path) -> (Vec<usize>, usize) {
        let (mut given, mut told) = (Vec::new(), 0);
        let pages = Pages::of_file(path).unwrap();
        let count = &mut |_| {
            told += 1;
            ControlFlow::Continue(())
        };
        pages
            .each(count, &mut |page| {
                given.push(page.len());
                ControlFlow::Continue(())
            })
            .unwrap();
        (given, told)
    }

    #[test]
    fn what_is_not_blank_is_given_wherever_it_lies() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("pages");
        let mut bytes = vec![0; 2 * MANY_BYTES];
        for at in [0, MANY_BYTES - 1, MANY_BYTES, 2 * MANY_BYTES - USUAL_PAGE_BYTES] {
            bytes[at] = 7;
        }
        bytes.extend([1, 2, 3]);
        std::fs::write(&path, &bytes).unwrap();
        let page = USUAL_PAGE_BYTES;
        assert_eq!(pages_of(&path), (vec![page, page, page, page, 3], 3));
        std::fs::write(&path, vec![0; 3 * USUAL_PAGE_BYTES]).unwrap();
        assert_eq!(pages_of(&path), (Vec::new(), 1));
    }

    #[cfg(target_os = "linux")]
    #[test]
    fn holes_are_passed_over_however_large_they_are() {
        use std::io::Write;
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("pages");
        let mut file = File::create(&path).unwrap();
        file.set_len(1 << 42).unwrap();
        for place in [5 << 30, (1 << 42) - 4096] {
            file.seek(SeekFrom::Start(place)).unwrap();
            file.write_all(&[9; 4096]).unwrap();
        }
        let (given, told) = pages_of(&path);
        assert_eq!(given, [4096, 4096]);
        assert!(told < 20, "four terabytes of nothing were read in {told} parts");
    }
}
