//! A sheet as text: its columns by name, its rows with their lines.

use crate::share::csv::unguarded;
use std::collections::BTreeSet;
use std::io::Read;

use super::encoding::{Encoding, decode};
use super::workbook::{is_workbook, sheet_as_text};
use crate::base::text;
use crate::share::draft::{seen, short};
use crate::share::fault::{Fault, LineFaults, ReadFault, Reason, WorkbookFault};

/// The longest sheet that is read, bytes: some 300,000 rows of 100 letters; the whole of it is held in memory.
pub const LONGEST_SHEET_BYTES: usize = 32 << 20;
/// The most columns of a sheet; the widest kind of entry has under 20.
pub const MOST_COLUMNS: usize = 500;

/// A column.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Column {
    /// Its number in the sheet, from 1; columns without a name are counted.
    pub number: usize,
    /// Its name as it was written.
    pub written: String,
    /// Its name in lower case without accents, blanks as hyphens.
    pub name: String,
}

/// A row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// Its line, from 1, as a spreadsheet program numbers its rows: a line broken inside of a cell is one.
    pub line: usize,
    /// A cell for every column, outer blanks removed; empty where nothing was written.
    pub cells: Vec<String>,
}

/// A sheet that was read, and how it was understood.
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    /// How it is written in bytes.
    pub encoding: Encoding,
    /// The name of the sheet in its workbook, where it is in one.
    pub sheet: Option<String>,
    /// What parts its cells.
    pub delimiter: char,
    /// The line its names stand on.
    pub names_line: usize,
    /// Its columns; those without name and content are left out.
    pub columns: Vec<Column>,
    /// Its rows; empty ones are left out, and those of which the cells do not fit the columns.
    pub rows: Vec<Row>,
    /// What is wrong with rows that are left out.
    pub faults: LineFaults,
}

/// Reads a sheet whose first row that is not empty names the columns. Cells are parted by `,` `;` or tab, whichever
/// stands most in that row (or what a line `sep=;` above it says), and quoted as in RFC 4180. Of a workbook the sheet
/// of this name is read, else the first that holds anything. Every fault is listed: those of single rows in the table, so
/// that they do not hide what is wrong in others.
pub fn read_table(input: impl Read, sheet: Option<&str>) -> Result<Table, ReadFault> {
    let mut bytes = Vec::new();
    input.take(LONGEST_SHEET_BYTES as u64 + 1).read_to_end(&mut bytes).map_err(ReadFault::Io)?;
    if bytes.len() > LONGEST_SHEET_BYTES {
        return Err(alone(1, Reason::SheetTooLong { most_bytes: LONGEST_SHEET_BYTES }));
    }
    let text = sheet_text(&bytes, sheet).map_err(ReadFault::Lines)?;
    read_text(text).map_err(ReadFault::Lines)
}

/// A sheet as text.
pub(crate) struct SheetText {
    /// Its rows, a line each.
    pub text: String,
    /// How it is written in bytes.
    pub encoding: Encoding,
    /// Its name in the workbook.
    pub sheet: Option<String>,
}

impl SheetText {
    /// What parts its cells, where that is known.
    pub fn delimiter(&self) -> Option<char> {
        (self.encoding == Encoding::Workbook).then_some(',')
    }
}

/// The text of a sheet's bytes, or of a sheet of a workbook.
pub(crate) fn sheet_text(bytes: &[u8], sheet: Option<&str>) -> Result<SheetText, LineFaults> {
    if is_workbook(bytes) {
        let (text, name) = sheet_as_text(bytes, sheet).map_err(|reason| only(1, reason))?;
        return Ok(SheetText { text, encoding: Encoding::Workbook, sheet: Some(name) });
    }
    if sheet.is_some() {
        return Err(only(1, Reason::Workbook(WorkbookFault::NoneInText)));
    }
    decoded(bytes).map(|(text, encoding)| SheetText { text, encoding, sheet: None })
}

/// The text of a sheet's bytes: UTF-8, UTF-16 with its mark, or Windows-1252; a fault has the line it stands in.
pub fn decode_sheet(bytes: &[u8]) -> Result<String, LineFaults> {
    decoded(bytes).map(|(text, _)| text)
}

fn decoded(bytes: &[u8]) -> Result<(String, Encoding), LineFaults> {
    decode(bytes).map_err(|reason| {
        let line = match &reason {
            Reason::NotInEncoding { byte } | Reason::NotUtf8 { byte } => line_of(bytes, *byte),
            _ => 1,
        };
        only(line, reason)
    })
}

fn only(line: usize, reason: Reason) -> LineFaults {
    let mut faults = LineFaults::default();
    faults.note(Fault::bare(reason).in_line(line));
    faults
}

fn alone(line: usize, reason: Reason) -> ReadFault {
    ReadFault::Lines(only(line, reason))
}

/// A cell in one line: people break lines inside of cells, which parts words; what was guarded against being taken for a
/// formula is as it was.
fn in_one_line(cell: &str) -> String {
    if cell.contains(['\n', '\r', '\t', '\u{2028}', '\u{a0}']) {
        cell.split_whitespace().collect::<Vec<_>>().join(" ")
    } else {
        unguarded(cell.trim()).to_string()
    }
}

/// The line a byte stands on; in UTF-16 too, where a line end is one such byte as well.
fn line_of(bytes: &[u8], byte: usize) -> usize {
    1 + bytes.iter().take(byte.saturating_sub(1)).filter(|byte| **byte == b'\n').count()
}

fn read_text(read: SheetText) -> Result<Table, LineFaults> {
    let text = read.text.as_str();
    let (said, skipped) = read.delimiter().map_or_else(|| said_delimiter(text), |delimiter| (Some(delimiter), 0));
    let begin = text.split_inclusive('\n').take(skipped).map(str::len).sum();
    let body = text.get(begin..).unwrap_or_default();
    // Above the names a title may stand that nothing parts.
    let mut filled = body.lines().filter(|line| !line.trim().is_empty());
    let names_row = filled.clone().take(MOST_TITLES).find(|line| line.contains([',', ';', '\t'])).or(filled.next());
    let names_row = names_row.unwrap_or_default();
    let delimiter = said.unwrap_or_else(|| guessed_delimiter(names_row));
    let mut faults = LineFaults::default();
    let mut records = Records { letters: body.chars().peekable(), delimiter, line: 1 + skipped };
    let names = loop {
        match records.next_record() {
            None => {
                faults.note(Fault::bare(Reason::NoNames).in_line(1));
                return Err(faults);
            }
            Some((line, Err(fault))) => {
                faults.note(fault.in_line(line));
                return Err(faults);
            }
            Some((_, Ok(cells))) if filled_cells(&cells) == 0 => {}
            Some((line, Ok(cells)))
                if filled_cells(&cells) == 1 && line <= skipped + MOST_TITLES && records.is_title() => {}
            Some((line, Ok(cells))) => break Row { line, cells },
        }
    };
    let columns: Vec<Column> = names
        .cells
        .iter()
        .enumerate()
        .map(|(i, written)| (i, in_one_line(written)))
        .map(|(i, written)| Column { number: i + 1, name: text::folded(&written), written })
        .collect();
    check_names(&columns, names.line, &mut faults);
    if !faults.is_empty() {
        if columns.len() <= MOST_COLUMNS {
            read_rows(&mut records, &columns, &mut faults);
        }
        return Err(faults);
    }
    let rows = read_rows(&mut records, &columns, &mut faults);
    Ok(with_named_columns(Table {
        encoding: read.encoding,
        sheet: read.sheet,
        delimiter,
        names_line: names.line,
        columns,
        rows,
        faults,
    }))
}

/// The delimiter that a first line `sep=;` says, as some spreadsheet programs write it, and the lines it takes.
fn said_delimiter(text: &str) -> (Option<char>, usize) {
    let first = text.lines().next().unwrap_or_default().trim_end_matches('\r');
    let said = first.strip_prefix("sep=").and_then(|rest| match rest {
        "," => Some(','),
        ";" => Some(';'),
        "\t" => Some('\t'),
        _ => None,
    });
    (said, usize::from(said.is_some()))
}

fn guessed_delimiter(names: &str) -> char {
    let mut in_quotes = false;
    let mut counts = [(',', 0), (';', 0), ('\t', 0)];
    for letter in names.chars() {
        if letter == '"' {
            in_quotes = !in_quotes;
        } else if !in_quotes {
            counts.iter_mut().filter(|(delimiter, _)| *delimiter == letter).for_each(|(_, count)| *count += 1);
        }
    }
    // Of equals the last: a comma stands inside names more often than a semicolon or a tab.
    counts
        .into_iter()
        .filter(|(_, count)| *count > 0)
        .max_by_key(|(_, count)| *count)
        .map_or(',', |(delimiter, _)| delimiter)
}

fn check_names(columns: &[Column], line: usize, faults: &mut LineFaults) {
    if columns.len() > MOST_COLUMNS {
        faults.note(Fault::bare(Reason::TooManyColumns(MOST_COLUMNS)).in_line(line));
        return;
    }
    let mut names = BTreeSet::new();
    for (i, column) in columns.iter().enumerate() {
        if let Err(fault) = seen(&column.written, &column.written, true) {
            faults.note(in_column(fault, i).in_line(line));
        }
        if !column.name.is_empty() && !names.insert(column.name.as_str()) {
            faults.note(in_column(Fault::on(&short(&column.written), Reason::NameTwice), i).in_line(line));
        }
    }
}

fn in_column(fault: Fault, i: usize) -> Fault {
    Fault { column: Some(i + 1), ..fault }
}

fn read_rows(records: &mut Records, columns: &[Column], faults: &mut LineFaults) -> Vec<Row> {
    let mut rows = Vec::new();
    while let Some((line, read)) = records.next_record() {
        let mut cells = match read {
            Ok(cells) => cells,
            Err(fault) => {
                faults.note(fault.in_line(line));
                continue;
            }
        };
        cells.iter_mut().for_each(|cell| *cell = in_one_line(cell));
        if cells.iter().all(String::is_empty) {
            continue;
        }
        let before = faults.count;
        for (i, cell) in cells.iter().enumerate().filter(|(_, cell)| !cell.is_empty()) {
            let fault = match columns.get(i) {
                None => Fault::bare(Reason::TooManyCells { columns: columns.len() }),
                Some(column) if column.name.is_empty() => Fault::bare(Reason::ColumnWithoutName),
                Some(column) => match seen(cell, &column.written, false) {
                    Ok(()) => continue,
                    Err(fault) => fault,
                },
            };
            faults.note(in_column(fault, i).in_line(line));
            if i >= columns.len() {
                break;
            }
        }
        if faults.count == before {
            cells.resize(columns.len(), String::new());
            rows.push(Row { line, cells });
        }
    }
    rows
}

fn with_named_columns(table: Table) -> Table {
    let named: Vec<bool> = table.columns.iter().map(|column| !column.name.is_empty()).collect();
    let rows = table.rows.into_iter().map(|row| {
        let cells = row.cells.into_iter().zip(&named).filter(|(_, named)| **named).map(|(cell, _)| cell).collect();
        Row { line: row.line, cells }
    });
    Table {
        rows: rows.collect(),
        columns: table.columns.into_iter().filter(|column| !column.name.is_empty()).collect(),
        ..table
    }
}

/// The most rows above the names that are taken for a title.
const MOST_TITLES: usize = 5;

fn filled_cells(cells: &[String]) -> usize {
    cells.iter().filter(|cell| !cell.trim().is_empty()).count()
}

/// The records of a sheet, one after the other.
#[derive(Clone)]
struct Records<'a> {
    letters: std::iter::Peekable<std::str::Chars<'a>>,
    delimiter: char,
    line: usize,
}

impl Records<'_> {
    /// The next record with its line.
    fn next_record(&mut self) -> Option<(usize, Result<Vec<String>, Fault>)> {
        self.letters.peek()?;
        let begin = self.line;
        let (mut cells, mut fault) = (Vec::new(), None);
        loop {
            let (cell, wrong) =
                if self.letters.peek() == Some(&'"') { self.quoted_cell() } else { (self.rest(), None) };
            if let Some(reason) = wrong {
                fault.get_or_insert(in_column(Fault::bare(reason), cells.len()));
            }
            cells.push(cell);
            // The cell ended at a delimiter, at the end of its line, or at that of the sheet.
            if self.letters.next_if_eq(&self.delimiter).is_none() {
                break;
            }
        }
        self.letters.next_if_eq(&'\r');
        if self.letters.next_if_eq(&'\n').is_some() {
            self.line += 1;
        }
        Some((begin, fault.map_or(Ok(cells), Err)))
    }

    /// Whether a row with one filled cell is a title: in one of the next rows there are more.
    fn is_title(&self) -> bool {
        let mut ahead = self.clone();
        std::iter::from_fn(|| ahead.next_record())
            .take(MOST_TITLES)
            .filter_map(|(_, record)| record.ok())
            .map(|cells| filled_cells(&cells))
            .any(|filled| filled > 1)
    }

    /// What stands up to the next delimiter or line end.
    fn rest(&mut self) -> String {
        let mut cell = String::new();
        while let Some(letter) = self.letters.peek().copied() {
            let line_ends = letter == '\n' || (letter == '\r' && self.is_line_end_behind());
            if letter == self.delimiter || line_ends {
                break;
            }
            cell.push(letter);
            self.letters.next();
        }
        cell
    }

    /// Whether the next letter but one ends the line, or the sheet ends.
    fn is_line_end_behind(&self) -> bool {
        let mut ahead = self.letters.clone();
        ahead.next();
        matches!(ahead.next(), Some('\n') | None)
    }

    fn quoted_cell(&mut self) -> (String, Option<Reason>) {
        let mut cell = String::new();
        self.letters.next();
        loop {
            match self.letters.next() {
                None => return (cell, Some(Reason::QuoteOpen)),
                Some('"') if self.letters.next_if_eq(&'"').is_some() => cell.push('"'),
                Some('"') => break,
                Some(letter) => cell.push(letter),
            }
        }
        let behind = self.rest();
        (cell, (!behind.trim().is_empty()).then_some(Reason::LettersBehindQuote))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn faults(bytes: &[u8]) -> Vec<(usize, Option<usize>, Reason)> {
        match read_table(bytes, None) {
            Err(ReadFault::Lines(faults)) | Ok(Table { faults, .. }) => {
                faults.listed.into_iter().map(|fault| (fault.line, fault.column, fault.reason)).collect()
            }
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn a_sheet_of_a_spanish_spreadsheet_program_is_read() {
        let table =
            read_table(&b"\r\n C\xf3digo ;Altura cm;;\r\ncof-031;12,5;;\r\n;;;\r\n\"a;\"\"b\"\"\";\r\n"[..], None)
                .unwrap();
        assert_eq!((table.encoding, table.delimiter, table.names_line), (Encoding::Windows1252, ';', 2));
        let names: Vec<&str> = table.columns.iter().map(|column| column.name.as_str()).collect();
        assert_eq!(names, ["codigo", "altura-cm"]);
        assert_eq!(table.columns[0].written, "Código");
        let rows: Vec<(usize, Vec<&str>)> =
            table.rows.iter().map(|row| (row.line, row.cells.iter().map(String::as_str).collect())).collect();
        assert_eq!(rows, [(3, vec!["cof-031", "12,5"]), (5, vec!["a;\"b\"", ""])]);
    }

    #[test]
    fn the_delimiter_is_guessed_outside_of_quotation_marks_or_said() {
        let delimiter = |text: &str| read_table(text.as_bytes(), None).unwrap().delimiter;
        assert_eq!(delimiter("\"a,b,c\";d\n1;2"), ';');
        assert_eq!(delimiter("a\tb, c\td\n"), '\t');
        assert_eq!(delimiter("a\n1"), ',');
        let said = read_table(&b"sep=;\na,b;c\n1;2\n"[..], None).unwrap();
        assert_eq!((said.delimiter, said.columns.len(), said.rows[0].line), (';', 2, 3));
    }

    #[test]
    fn every_fault_has_its_row_and_column() {
        let text = "a,b,,A\n1,2,3,4\n1,2,,4,5\n\"1\"x,2\n1,x\u{202e}\n\"two\nlines\",4\n1,\"2";
        let found = faults(text.as_bytes());
        assert_eq!(found[0], (1, Some(4), Reason::NameTwice));
        assert_eq!(found[1], (2, Some(3), Reason::ColumnWithoutName));
        assert_eq!(found[2], (3, Some(5), Reason::TooManyCells { columns: 4 }));
        assert_eq!(found[3], (4, Some(1), Reason::LettersBehindQuote));
        assert!(matches!(&found[4], (5, Some(2), Reason::Unseen { place: 2, .. })));
        assert_eq!(found[5], (7, Some(2), Reason::QuoteOpen));
        assert_eq!(faults(b" \n,,\n"), [(1, None, Reason::NoNames)]);
        assert_eq!(faults(b"a\nb\x81\n"), [(2, None, Reason::NotInEncoding { byte: 4 })]);
        assert_eq!(
            faults(",".repeat(MOST_COLUMNS).replacen(',', "a,", 1).as_bytes())[0].2,
            Reason::TooManyColumns(500)
        );
    }

    #[test]
    fn a_title_above_the_names_is_passed_over() {
        for title in
            ["Our nursery\n\nTray;How many\n", "Our nursery;;\n;;\nNovember;;\nTray;How many\n", "Tray;How many\n"]
        {
            let table = read_table(format!("{title}a;4\n").as_bytes(), None).unwrap();
            let names: Vec<&str> = table.columns.iter().map(|column| column.name.as_str()).collect();
            assert_eq!((names, table.delimiter, table.rows.len()), (vec!["tray", "how-many"], ';', 1), "{title}");
        }
        // A sheet of one column has no title.
        assert_eq!(read_table(&b"Tray\na\nb\n"[..], None).unwrap().rows.len(), 2);
    }

    #[test]
    fn a_line_break_in_a_cell_is_a_blank() {
        let table = read_table(&b"\"How\nmany\",Notes\r\n4,\"two\r\n lines\"\r\n5,one\r\n"[..], None).unwrap();
        assert_eq!((table.columns[0].written.as_str(), table.columns[0].name.as_str()), ("How many", "how-many"));
        let rows: Vec<(usize, &str)> = table.rows.iter().map(|row| (row.line, row.cells[1].as_str())).collect();
        assert_eq!(rows, [(2, "two lines"), (3, "one")]);
    }

    #[test]
    fn a_sheet_that_never_ends_is_refused() {
        let endless = std::io::repeat(b'a');
        let Err(ReadFault::Lines(faults)) = read_table(endless, None) else { panic!("was read") };
        assert_eq!(faults.listed[0].reason, Reason::SheetTooLong { most_bytes: LONGEST_SHEET_BYTES });
    }

    proptest! {
        #[test]
        fn no_bytes_make_it_panic(bytes in prop::collection::vec(any::<u8>(), 0..120), near in "[ab,;\t\"\r\né]{0,40}") {
            let _ = read_table(&bytes[..], None);
            let _ = read_table(near.as_bytes(), None);
        }

        #[test]
        fn quoted_cells_come_back(cells in prop::collection::vec("[a-c,;\"é]{1,6}", 1..12)) {
            let mut text = "one,two,three\r\n".to_string();
            let rows: Vec<Vec<String>> = cells.chunks(3).map(<[String]>::to_vec).collect();
            for row in &rows {
                let quoted: Vec<String> = row.iter().map(|cell| format!("\"{}\"", cell.replace('"', "\"\""))).collect();
                text.push_str(&format!("{}\r\n", quoted.join(",")));
            }
            let read = read_table(text.as_bytes(), None).unwrap();
            for (row, expected) in read.rows.iter().zip(&rows) {
                prop_assert_eq!(&row.cells[..expected.len()], &expected[..]);
            }
            prop_assert_eq!(read.rows.len(), rows.len());
        }
    }
}
