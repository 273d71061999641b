//! How large the sheets of a workbook of the open document format are, before the library that reads it lays them out: a few
//! bytes of it can stand for a thousand million cells.

use std::io::{BufRead, BufReader, Cursor, Read};

use zip::ZipArchive;

/// Where such a file says what it is, and how (ODF 1.2 part 3, 3.3).
const SAYS_SO: (usize, &[u8]) = (30, b"mimetypeapplication/vnd.oasis.opendocument.spreadsheet");
/// The longest tag that is looked at, bytes; longer ones have no cell of a person in them.
pub(super) const LONGEST_TAG: u64 = 1 << 16;

/// Whether these are the first bytes of such a workbook.
pub(super) fn is_open_document(bytes: &[u8]) -> bool {
    let (at, says) = SAYS_SO;
    bytes.get(at..).is_some_and(|rest| rest.starts_with(says))
}

/// The last cell that says something, row and column from 0, of the first sheet that laid out has more cells than `most`.
/// Nothing where none has, or where it cannot be read: that is told by whoever reads it.
pub(super) fn too_far(bytes: &[u8], most: usize, most_bytes: u64) -> Option<(u32, u32)> {
    let mut parts = ZipArchive::new(Cursor::new(bytes)).ok()?;
    let content = parts.by_name("content.xml").ok()?;
    let mut content = BufReader::new(content.take(most_bytes));
    let mut sheet = Extent::default();
    while let Some(tag) = next_tag(&mut content) {
        sheet.take(&tag);
        if sheet.cells() > most as u64 {
            return sheet.last.map(|(row, column)| (row as u32, column as u32));
        }
    }
    None
}

/// Whether each sheet and each row ends: the library that reads them would look for the end for ever (calamine 0.38). What
/// has no such sheets, or cannot be unpacked, is told by whoever reads it.
pub(super) fn each_sheet_ends(bytes: &[u8], most_bytes: u64) -> bool {
    let Ok(mut parts) = ZipArchive::new(Cursor::new(bytes)) else { return true };
    let Ok(content) = parts.by_name("content.xml") else { return true };
    let mut content = BufReader::new(content.take(most_bytes));
    let (mut sheets, mut rows) = (0i64, 0i64);
    while let Some(tag) = next_tag(&mut content) {
        match name_of(&tag) {
            _ if tag.ends_with(b"/>") => {}
            b"table:table" => sheets += 1,
            b"table:table-row" => rows += 1,
            _ if tag.starts_with(b"/table:table>") => sheets -= 1,
            _ if tag.starts_with(b"/table:table-row>") => rows -= 1,
            _ => {}
        }
    }
    sheets <= 0 && rows <= 0
}

/// What stands between `<` and `>`.
pub(super) fn next_tag(content: &mut impl BufRead) -> Option<Vec<u8>> {
    content.skip_until(b'<').ok()?;
    let mut tag = Vec::new();
    content.take(LONGEST_TAG).read_until(b'>', &mut tag).ok()?;
    (!tag.is_empty()).then_some(tag)
}

/// How far a sheet reaches.
#[derive(Default)]
struct Extent {
    /// Rows before the one that is read, and how often that stands.
    rows: u64,
    row_stands: u64,
    /// Columns before the cell that is read.
    columns: u64,
    width: u64,
    height: u64,
    last: Option<(u64, u64)>,
}

impl Extent {
    fn take(&mut self, tag: &[u8]) {
        match name_of(tag) {
            b"table:table" => *self = Extent::default(),
            b"table:table-row" => {
                self.rows += self.row_stands;
                self.row_stands = repeated(tag, "table:number-rows-repeated=");
                self.columns = 0;
            }
            b"table:table-cell" | b"table:covered-table-cell" => {
                let stands = repeated(tag, "table:number-columns-repeated=");
                if find(tag, b"office:value-type=").is_some() {
                    self.width = self.width.max(self.columns.saturating_add(stands));
                    self.height = self.rows.saturating_add(self.row_stands);
                    self.last = Some((self.rows, self.columns));
                }
                self.columns = self.columns.saturating_add(stands);
            }
            _ => {}
        }
    }

    fn cells(&self) -> u64 {
        self.width.saturating_mul(self.height)
    }
}

fn name_of(tag: &[u8]) -> &[u8] {
    let end = tag.iter().position(|byte| byte.is_ascii_whitespace() || matches!(byte, b'/' | b'>'));
    &tag[..end.unwrap_or(tag.len())]
}

/// How often a row or a cell stands; once where nothing is said, and never more often than there are rows.
fn repeated(tag: &[u8], attribute: &str) -> u64 {
    const MOST: u64 = 1 << 20;
    let said = find(tag, attribute.as_bytes()).map(|at| &tag[at + attribute.len()..]);
    let digits = said.and_then(|said| said.get(1..)).unwrap_or_default();
    let digits: String = digits.iter().take_while(|byte| byte.is_ascii_digit()).map(|byte| char::from(*byte)).collect();
    digits.parse().unwrap_or(1).min(MOST)
}

fn find(tag: &[u8], part: &[u8]) -> Option<usize> {
    tag.windows(part.len()).position(|window| window == part)
}
