//! Workbooks of spreadsheet programs (.xlsx, .xlsm, .xlsb, .xls, .ods): one of their sheets as rows of text.

use std::fmt::Write as _;
use std::io::Cursor;

use calamine::{Data, ExcelDateTime, Reader, Sheets, open_workbook_auto_from_rs};

use super::office_open::impossible_cell;
use super::open_document::{each_sheet_ends, is_open_document, too_far};
use crate::share::fault::{Reason, WorkbookFault};

/// What a workbook may hold when its parts are unpacked, bytes: some ten times the longest sheet of text; more is none
/// that somebody filled by hand.
const MOST_UNPACKED_BYTES: u64 = 320 << 20;
/// The most cells that are laid out, empty ones too.
const MOST_CELLS: usize = 4_000_000;

type Book<'b> = Sheets<Cursor<&'b [u8]>>;

/// Whether these are the first bytes of a workbook: a zipped one, or the older kind.
pub(super) fn is_workbook(bytes: &[u8]) -> bool {
    bytes.starts_with(b"PK\x03\x04") || bytes.starts_with(b"\xd0\xcf\x11\xe0")
}

/// The rows of a sheet as comma-separated text, a row of the sheet a line, and the sheet's name: that of `wanted`, else
/// the first that holds anything.
pub(super) fn sheet_as_text(bytes: &[u8], wanted: Option<&str>) -> Result<(String, String), Reason> {
    // The library that unpacks a workbook reckons with numbers that stand in it and stops the program where they are beyond all
    // reason (calamine 0.38, a cell far behind XFD1048576).
    let read = std::panic::catch_unwind(|| read_sheet(bytes, wanted));
    read.unwrap_or(Err(Reason::Workbook(WorkbookFault::Unread)))
}

fn read_sheet(bytes: &[u8], wanted: Option<&str>) -> Result<(String, String), Reason> {
    if unpacked_bytes(bytes) > MOST_UNPACKED_BYTES {
        return Err(Reason::Workbook(WorkbookFault::Unread));
    }
    let mut book = opened(bytes).map_err(Reason::Workbook)?;
    let names = book.sheet_names();
    let is_wanted = |name: &&String| {
        wanted.is_none_or(|wanted| crate::base::text::folded(name) == crate::base::text::folded(wanted))
    };
    let mut asked = names.iter().filter(is_wanted).peekable();
    if asked.peek().is_none() {
        return Err(Reason::Workbook(WorkbookFault::NoSuchSheet {
            wanted: wanted.unwrap_or_default().to_string(),
            there: names,
        }));
    }
    for name in asked {
        let cells = cells_of(&mut book, name).map_err(Reason::Workbook)?;
        if cells.said.is_empty() && wanted.is_none() {
            continue;
        }
        return cells.into_text().map(|text| (text, name.clone())).map_err(Reason::Workbook);
    }
    Err(Reason::NoNames)
}

fn opened(bytes: &[u8]) -> Result<Book<'_>, WorkbookFault> {
    if is_open_document(bytes)
        && let Some(far) = too_far(bytes, MOST_CELLS, MOST_UNPACKED_BYTES)
    {
        return Err(WorkbookFault::FarCell(name_of(far)));
    }
    if let Some(cell) = impossible_cell(bytes, MOST_UNPACKED_BYTES) {
        return Err(WorkbookFault::FarCell(cell));
    }
    if !each_sheet_ends(bytes, MOST_UNPACKED_BYTES) {
        return Err(WorkbookFault::Unread);
    }
    open_workbook_auto_from_rs(Cursor::new(bytes)).map_err(|_| WorkbookFault::Unread)
}

/// What is said in the cells of a sheet, read one by one: where they stand is known before room for them is taken.
fn cells_of(book: &mut Book<'_>, sheet: &str) -> Result<Cells, WorkbookFault> {
    let mut cells = Cells::default();
    // A sheet of a chart has no cells.
    match book {
        Sheets::Xlsx(book) => {
            let Ok(mut reader) = book.worksheet_cells_reader(sheet) else { return Ok(cells) };
            while let Some(cell) = reader.next_cell().map_err(|_| WorkbookFault::Unread)? {
                cells.put(cell.get_position(), &cell.get_value().clone().into())?;
            }
        }
        Sheets::Xlsb(book) => {
            let Ok(mut reader) = book.worksheet_cells_reader(sheet) else { return Ok(cells) };
            while let Some(cell) = reader.next_cell().map_err(|_| WorkbookFault::Unread)? {
                cells.put(cell.get_position(), &cell.get_value().clone().into())?;
            }
        }
        // These lay a whole sheet out themselves: the first has 65,536 rows and 256 columns at most, of the second it was
        // looked at before.
        Sheets::Xls(_) | Sheets::Ods(_) => {
            let Ok(range) = book.worksheet_range(sheet) else { return Ok(cells) };
            let (above, before) = range.start().unwrap_or((0, 0));
            for (row, column, cell) in range.used_cells() {
                cells.put((above.saturating_add(row as u32), before.saturating_add(column as u32)), cell)?;
            }
        }
    }
    Ok(cells)
}

/// What one cell says, and where it stands: row and column, from 0.
struct Said {
    at: (u32, u32),
    text: String,
}

/// The cells of a sheet that say something.
#[derive(Default)]
struct Cells {
    said: Vec<Said>,
    bytes: u64,
}

impl Cells {
    /// A line of a sheet may be broken inside of a cell; it stays one row.
    fn put(&mut self, at: (u32, u32), cell: &Data) -> Result<(), WorkbookFault> {
        let text = in_words(cell).split_whitespace().collect::<Vec<_>>().join(" ");
        if text.is_empty() {
            return Ok(());
        }
        self.bytes += text.len() as u64;
        if self.said.len() >= MOST_CELLS || self.bytes > MOST_UNPACKED_BYTES {
            return Err(WorkbookFault::Unread);
        }
        self.said.push(Said { at, text });
        Ok(())
    }

    fn into_text(mut self) -> Result<String, WorkbookFault> {
        self.said.sort_by_key(|cell| cell.at);
        let width = self.said.iter().map(|cell| cell.at.1 as usize + 1).max().unwrap_or(0);
        let above = self.said.first().map_or(0, |cell| cell.at.0);
        let height = self.said.last().map_or(0, |cell| cell.at.0 as usize + 1);
        if height.saturating_mul(width) > MOST_CELLS {
            return Err(self.farthest().map_or(WorkbookFault::Unread, WorkbookFault::FarCell));
        }
        let mut text = "\n".repeat(above as usize);
        let mut rows = self.said.chunk_by(|one, next| one.at.0 == next.at.0).peekable();
        for row in above..height as u32 {
            let cells = rows.next_if(|cells| cells.first().is_some_and(|cell| cell.at.0 == row)).unwrap_or_default();
            put_row(&mut text, cells, width);
        }
        Ok(text)
    }

    /// The cell that makes the sheet so large, by its name: `XFD1048576`.
    fn farthest(&self) -> Option<String> {
        let reach = |cell: &&Said| (u64::from(cell.at.0) + 1).saturating_mul(u64::from(cell.at.1) + 1);
        self.said.iter().max_by_key(reach).map(|cell| name_of(cell.at))
    }
}

fn put_row(text: &mut String, cells: &[Said], width: usize) {
    // Of two cells in one place the first stands.
    let mut cells = cells.chunk_by(|one, next| one.at == next.at).filter_map(|same| same.first()).peekable();
    for column in 0..width {
        if column > 0 {
            text.push(',');
        }
        let Some(cell) = cells.next_if(|cell| cell.at.1 as usize == column) else { continue };
        if cell.text.contains(['"', ',', ';', '\'']) {
            _ = write!(text, "\"{}\"", cell.text.replace('"', "\"\""));
        } else {
            text.push_str(&cell.text);
        }
    }
    text.push('\n');
}

/// A cell as spreadsheet programs name it: letters for the column, then the row from 1.
fn name_of((row, column): (u32, u32)) -> String {
    const LETTERS: u64 = 26;
    let (mut rest, mut letters) = (u64::from(column) + 1, Vec::new());
    while rest > 0 {
        rest -= 1;
        letters.push(char::from(b'A' + (rest % LETTERS) as u8));
        rest /= LETTERS;
    }
    format!("{}{}", letters.iter().rev().collect::<String>(), u64::from(row) + 1)
}

/// What the parts of a zipped file say they hold, from its central directory (APPNOTE.TXT 4.3.12 of the ZIP format).
fn unpacked_bytes(bytes: &[u8]) -> u64 {
    const HEADER: &[u8] = b"PK\x01\x02";
    const SIZE_AT: usize = 24;
    let size = |at: usize| {
        let four = bytes.get(at + SIZE_AT..at + SIZE_AT + 4).and_then(|four| <[u8; 4]>::try_from(four).ok());
        u64::from(four.map_or(0, u32::from_le_bytes))
    };
    let headers = bytes.windows(HEADER.len()).enumerate().filter(|(_, four)| *four == HEADER);
    headers.map(|(at, _)| size(at)).fold(0, u64::saturating_add)
}

/// A cell as a person would write it: days with the year first, numbers with a point.
fn in_words(cell: &Data) -> String {
    /// Beyond it a number has no whole part that is exact.
    const MOST_WHOLE: f64 = 1e15;
    /// Digits behind the point that somebody wrote; those further on are rounding.
    const DIGITS: f64 = 1e9;
    match cell {
        Data::Empty => String::new(),
        Data::Int(number) => number.to_string(),
        Data::Float(number) if number.abs() < MOST_WHOLE => ((number * DIGITS).round() / DIGITS).to_string(),
        Data::Float(number) => number.to_string(),
        Data::String(text) => text.clone(),
        Data::Bool(is_so) => if *is_so { "yes" } else { "no" }.to_string(),
        Data::DateTime(moment) => day_or_time(*moment),
        Data::DateTimeIso(text) => text.split('T').next().unwrap_or_default().to_string(),
        Data::DurationIso(text) => text.clone(),
        Data::Error(error) => error.to_string(),
    }
}

fn day_or_time(moment: ExcelDateTime) -> String {
    /// The first day that programs agree on; before it a number is a time of day.
    const FIRST_DAY: f64 = 61.0;
    let (year, month, day, hour, minute, ..) = moment.to_ymd_hms_milli();
    if moment.is_duration() || moment.as_f64() < FIRST_DAY {
        return format!("{hour:02}:{minute:02}");
    }
    format!("{year:04}-{month:02}-{day:02}")
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn book(name: &str) -> Vec<u8> {
        let path = format!("{}/tests/reference/workbooks/{name}", env!("CARGO_MANIFEST_DIR"));
        std::fs::read(path).unwrap()
    }

    #[test]
    fn a_row_of_a_sheet_is_a_line_and_days_and_numbers_are_written_out() {
        for name in ["trays.xlsx", "trays.ods"] {
            let (text, sheet) = sheet_as_text(&book(name), None).unwrap();
            let lines: Vec<&str> = text.lines().collect();
            assert_eq!(sheet, "Trays now", "{name}");
            assert_eq!(lines[..2], ["Nursery of the school,,,,", ",,,,"], "{name}");
            assert_eq!(lines[2], "Tray,Species,Qty,Sown on,Note", "{name}");
            assert_eq!(lines[3], "t-1,coffee,41,2026-03-14,\"two words, \"\"so\"\"\"", "{name}");
            assert_eq!(lines[4], "t-2,avocado,12.5,2026-03-04,", "{name}");
        }
    }

    #[test]
    fn the_sheet_that_is_named_is_read_and_another_name_says_which_there_are() {
        let (text, sheet) = sheet_as_text(&book("trays.xlsx"), Some("BEDS")).unwrap();
        assert_eq!((sheet.as_str(), text.lines().next()), ("Beds", Some("Bed,Length")));
        let there = vec!["Empty".to_string(), "Trays now".to_string(), "Beds".to_string()];
        let fault = Reason::Workbook(WorkbookFault::NoSuchSheet { wanted: "Bedz".into(), there });
        assert_eq!(sheet_as_text(&book("trays.xlsx"), Some("Bedz")), Err(fault));
        assert_eq!(sheet_as_text(b"PK\x03\x04 and nothing", None), Err(Reason::Workbook(WorkbookFault::Unread)));
    }

    #[test]
    fn a_stray_cell_far_away_is_named_and_takes_no_memory() {
        // As one dense table the first would be 17 thousand million cells.
        for kind in ["xlsx", "ods"] {
            for (name, cell) in [("stray_cell", "XFD1048576"), ("stray_in_26_columns", "Z1048576")] {
                let far = Reason::Workbook(WorkbookFault::FarCell(cell.to_string()));
                assert_eq!(sheet_as_text(&book(&format!("{name}.{kind}")), None), Err(far), "{name}.{kind}");
            }
        }
    }

    #[test]
    fn a_cell_that_no_sheet_can_have_is_named_and_never_read_as_another() {
        let mut changes = 0;
        let bytes = changed(&book("trays.xlsx"), |_, part| {
            let text = String::from_utf8_lossy(part);
            let far = text.replace("r=\"A1\"", "r=\"A99999999999\"");
            changes += usize::from(far != text);
            *part = far.into_bytes();
        });
        assert!(changes > 0, "no cell A1 was found to be moved");
        let far = Reason::Workbook(WorkbookFault::FarCell("A99999999999".into()));
        assert_eq!(sheet_as_text(&bytes, None), Err(far));
    }

    #[test]
    fn a_workbook_whose_sheet_or_row_does_not_end_is_refused_and_nobody_waits() {
        for end in ["</table:table>", "</table:table-row>"] {
            let mut changes = 0;
            let bytes = changed(&book("trays.ods"), |_, part| {
                let text = String::from_utf8_lossy(part).into_owned();
                if let Some(at) = text.find(end) {
                    part.truncate(at);
                    changes += 1;
                }
            });
            assert_eq!(changes, 1, "{end}");
            assert_eq!(sheet_as_text(&bytes, None), Err(Reason::Workbook(WorkbookFault::Unread)), "{end}");
        }
    }

    #[test]
    fn cells_are_named_as_spreadsheet_programs_do() {
        let names = [(0, 0), (4, 25), (0, 26), (9, 701), (0, 702), (1_048_575, 16_383)].map(name_of);
        assert_eq!(names, ["A1", "Z5", "AA1", "ZZ10", "AAA1", "XFD1048576"]);
    }

    /// The same workbook with each of its parts changed, by its place among them.
    fn changed(bytes: &[u8], mut change: impl FnMut(usize, &mut Vec<u8>)) -> Vec<u8> {
        use std::io::{Read, Write};
        let mut old = zip::ZipArchive::new(Cursor::new(bytes)).unwrap();
        let mut new = zip::ZipWriter::new(Cursor::new(Vec::new()));
        for at in 0..old.len() {
            let (name, mut text) = {
                let mut file = old.by_index(at).unwrap();
                let mut text = Vec::new();
                file.read_to_end(&mut text).unwrap();
                (file.name().unwrap().into_owned(), text)
            };
            change(at, &mut text);
            new.start_file(name, zip::write::SimpleFileOptions::default()).unwrap();
            new.write_all(&text).unwrap();
        }
        new.finish().unwrap().into_inner()
    }

    fn parts(bytes: &[u8]) -> usize {
        zip::ZipArchive::new(Cursor::new(bytes)).unwrap().len()
    }

    proptest! {
        #[test]
        fn no_workbook_that_was_damaged_makes_it_panic(
            which in any::<bool>(),
            at in any::<proptest::sample::Index>(),
            byte in any::<u8>(),
            end in any::<proptest::sample::Index>(),
        ) {
            let mut bytes = book(if which { "trays.xlsx" } else { "trays.ods" });
            let at = at.index(bytes.len());
            bytes[at] = byte;
            _ = sheet_as_text(&bytes, None);
            bytes.truncate(end.index(bytes.len()));
            _ = sheet_as_text(&bytes, None);
        }

        #[test]
        fn no_workbook_in_whose_parts_something_else_stands_makes_it_panic(
            which in any::<bool>(),
            part in any::<proptest::sample::Index>(),
            at in any::<proptest::sample::Index>(),
            cut in 0usize..12,
            with in "([0-9]{1,7}|[<>/\"&;= ]{1,3}|&#x?[0-9]{1,4};|A1:XFD1048576|\\PC{0,4}| r=\"[A-Z]{1,3}[0-9]{1,7}\"|<c><v>1e999</v></c>)",
        ) {
            let whole = book(if which { "trays.xlsx" } else { "trays.ods" });
            let part = part.index(parts(&whole));
            let bytes = changed(&whole, |number, text| {
                if number == part {
                    let from = at.index(text.len() + 1);
                    let to = (from + cut).min(text.len());
                    text.splice(from..to, with.bytes());
                }
            });
            _ = sheet_as_text(&bytes, None);
        }
    }
}
