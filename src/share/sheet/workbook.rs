//! Workbooks of spreadsheet programs (.xlsx, .xlsm, .xlsb, .xls, .ods): one of their sheets as rows of text.

use std::fmt::Write as _;
use std::io::Cursor;

use calamine::{Data, ExcelDateTime, Range, Reader, open_workbook_auto_from_rs};

use crate::share::fault::{Reason, WorkbookFault};

/// What a workbook may hold when its parts are unpacked, bytes: some ten times the longest sheet of text; more is none
/// that somebody filled by hand.
const MOST_UNPACKED_BYTES: u64 = 320 << 20;
/// The most cells that are laid out, empty ones too.
const MOST_CELLS: usize = 4_000_000;

/// Whether these are the first bytes of a workbook: a zipped one, or the older kind.
pub(super) fn is_workbook(bytes: &[u8]) -> bool {
    bytes.starts_with(b"PK\x03\x04") || bytes.starts_with(b"\xd0\xcf\x11\xe0")
}

/// The rows of a sheet as comma-separated text, a row of the sheet a line, and the sheet's name: that of `wanted`, else
/// the first that holds anything.
pub(super) fn sheet_as_text(bytes: &[u8], wanted: Option<&str>) -> Result<(String, String), Reason> {
    if unpacked_bytes(bytes) > MOST_UNPACKED_BYTES {
        return Err(Reason::Workbook(WorkbookFault::Unread));
    }
    let mut book =
        open_workbook_auto_from_rs(Cursor::new(bytes)).map_err(|_| Reason::Workbook(WorkbookFault::Unread))?;
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
        // A sheet of a chart has no cells.
        let Ok(range) = book.worksheet_range(name) else { continue };
        if range.is_empty() && wanted.is_none() {
            continue;
        }
        return as_text(&range).map(|text| (text, name.clone())).ok_or(Reason::Workbook(WorkbookFault::Unread));
    }
    Err(Reason::NoNames)
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

fn as_text(range: &Range<Data>) -> Option<String> {
    let (rows, columns) = range.get_size();
    let (above, before) = range.start().unwrap_or((0, 0));
    let width = columns.checked_add(before as usize)?;
    if rows.checked_add(above as usize)?.checked_mul(width)? > MOST_CELLS {
        return None;
    }
    let mut text = "\n".repeat(above as usize);
    for row in range.rows() {
        text.push_str(&",".repeat(before as usize));
        for (n, cell) in row.iter().enumerate() {
            if n > 0 {
                text.push(',');
            }
            // A line of a sheet may be broken inside of a cell; it stays one row.
            let cell = in_words(cell).split_whitespace().collect::<Vec<_>>().join(" ");
            if cell.contains(['"', ',', ';', '\'']) {
                _ = write!(text, "\"{}\"", cell.replace('"', "\"\""));
            } else {
                text.push_str(&cell);
            }
        }
        text.push('\n');
    }
    Some(text)
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

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(200))]
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
    }
}
