//! Entries out as a sheet: RFC 4180, one row an entry. A text that a spreadsheet program would take for a formula has an
//! apostrophe before it, which `import` takes off again; every other cell is exactly what the journal holds.

use serde_json::{Map, Value};
use std::borrow::Borrow;
use std::collections::{BTreeMap, BTreeSet};
use std::io::{self, Write};

use crate::nursery::entry::all_kinds;
use crate::nursery::envelope::{Sealed, canonical};

/// The columns of the envelope, before those of the bodies.
pub const ENVELOPE_COLUMNS: [&str; 6] = ["id", "happened", "clock", "recorded", "who", "kind"];
/// The byte order mark of UTF-8.
const MARK: &[u8] = "\u{feff}".as_bytes();
/// RFC 4180 section 2.1.
const ROW_END: &[u8] = b"\r\n";
/// The column of a body that is no record; only a damaged file holds one.
const UNREADABLE: &str = "unreadable";

/// For which program a table is written.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum TableFor {
    /// As RFC 4180 has it: commas, decimal points, UTF-8.
    AnyProgram,
    /// For office programs: a mark that says UTF-8, semicolons, decimal commas where the language writes them.
    OfficePrograms {
        /// Whether numbers have a decimal comma.
        decimal_comma: bool,
    },
}

/// The letters with which a formula begins in spreadsheet programs (OWASP, CSV Injection).
const BEGINS_FORMULA: [char; 6] = ['=', '+', '-', '@', '\t', '\r'];

fn is_taken_for_formula(text: &str) -> bool {
    text.trim_start_matches('\'').starts_with(BEGINS_FORMULA)
}

/// A text that is no formula to anybody: one apostrophe more where it would be.
fn guarded(text: &str) -> String {
    if is_taken_for_formula(text) { format!("'{text}") } else { text.to_string() }
}

/// The text of a cell without the apostrophe of [`guarded`].
pub(super) fn unguarded(cell: &str) -> &str {
    cell.strip_prefix('\'').filter(|text| is_taken_for_formula(text)).unwrap_or(cell)
}

/// Writes one row an entry: the envelope, then every field that occurs, known ones in the order of the kinds' tables and
/// then the others by name. Lists and records are JSON text in their cell; a field that is absent is an empty cell and an
/// empty text is `""`. The entries are gone through twice.
pub fn write_csv<E, I>(entries: I, table_for: TableFor, out: &mut dyn Write) -> io::Result<()>
where
    E: Borrow<Sealed>,
    I: IntoIterator<Item = E> + Clone,
{
    let mut occurring = BTreeSet::new();
    for entry in entries.clone() {
        occurring
            .extend(body_of(entry.borrow()).into_iter().filter(|(_, value)| !value.is_null()).map(|(name, _)| name));
    }
    let columns = in_order(occurring);
    let parted_by = match table_for {
        TableFor::AnyProgram => ',',
        TableFor::OfficePrograms { .. } => {
            out.write_all(MARK)?;
            ';'
        }
    };
    let names = ENVELOPE_COLUMNS.iter().map(|name| Some(name.to_string())).chain(columns.iter().cloned().map(Some));
    write_row(names, parted_by, out)?;
    for entry in entries {
        let entry = entry.borrow();
        let body = body_of(entry);
        let envelope = [
            Some(entry.id.to_string()),
            Some(entry.happened.to_string()),
            entry.clock.map(|clock| clock.to_string()),
            Some(entry.recorded.to_string()),
            Some(guarded(&entry.who)),
            Some(guarded(&entry.kind)),
        ];
        let cells = columns.iter().map(|name| body.get(name).and_then(|value| cell(value, table_for)));
        write_row(envelope.into_iter().chain(cells), parted_by, out)?;
    }
    out.flush()
}

/// Writes items as a table, a row each: what stands in an item within another has both names, parted by a point; lists are
/// JSON text in their cell. Columns stand in the order in which they first occur.
pub fn write_table(items: &[Value], parted_by: char, out: &mut dyn Write) -> io::Result<()> {
    let rows: Vec<Vec<(String, &Value)>> = items.iter().map(|item| cells_of(item, "")).collect();
    let mut columns: Vec<&str> = Vec::new();
    let mut known = BTreeSet::new();
    for (name, _) in rows.iter().flatten() {
        if known.insert(name.as_str()) {
            columns.push(name);
        }
    }
    write_row(columns.iter().map(|name| Some(name.to_string())), parted_by, out)?;
    for row in &rows {
        let by_name: BTreeMap<&str, &Value> = row.iter().map(|(name, value)| (name.as_str(), *value)).collect();
        let cells = columns.iter().map(|name| by_name.get(name).and_then(|value| cell(value, TableFor::AnyProgram)));
        write_row(cells, parted_by, out)?;
    }
    out.flush()
}

/// The cells of an item with the names of their columns; of an item that is no record, one without a name.
fn cells_of<'v>(item: &'v Value, within: &str) -> Vec<(String, &'v Value)> {
    let Value::Object(fields) = item else { return vec![(within.to_string(), item)] };
    let named = |name: &str| if within.is_empty() { name.to_string() } else { format!("{within}.{name}") };
    fields.iter().flat_map(|(name, value)| cells_of(value, &named(name))).collect()
}

fn body_of(entry: &Sealed) -> Map<String, Value> {
    match serde_json::from_str(&entry.body) {
        Ok(Value::Object(body)) => body,
        Ok(_) | Err(_) => Map::from_iter([(UNREADABLE.to_string(), Value::from(entry.body.as_str()))]),
    }
}

fn in_order(mut occurring: BTreeSet<String>) -> Vec<String> {
    let known = all_kinds().flat_map(|known| known.fields).map(|field| field.name);
    let mut columns: Vec<String> = known.filter_map(|name| occurring.take(name)).collect();
    columns.extend(occurring);
    columns
}

fn cell(value: &Value, table_for: TableFor) -> Option<String> {
    match value {
        Value::Null => None,
        Value::String(text) => Some(guarded(text)),
        Value::Number(_) if table_for == (TableFor::OfficePrograms { decimal_comma: true }) => {
            Some(canonical(value).replace('.', ","))
        }
        Value::Bool(_) | Value::Number(_) | Value::Array(_) | Value::Object(_) => Some(canonical(value)),
    }
}

fn write_row(cells: impl Iterator<Item = Option<String>>, parted_by: char, out: &mut dyn Write) -> io::Result<()> {
    for (i, cell) in cells.enumerate() {
        if i > 0 {
            write!(out, "{parted_by}")?;
        }
        match cell {
            None => {}
            Some(text) if text.is_empty() || text.contains(['"', parted_by, '\r', '\n']) => {
                out.write_all(format!("\"{}\"", text.replace('"', "\"\"")).as_bytes())?;
            }
            Some(text) => out.write_all(text.as_bytes())?,
        }
    }
    out.write_all(ROW_END)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::{Clock, Day, DeviceId, EntryId, Moment};
    use crate::nursery::envelope::Draft;
    use proptest::prelude::*;

    fn sealed(seq: u64, kind: &str, body: Value) -> Sealed {
        let draft = Draft {
            happened: Day::from_ymd(2026, 3, 14).unwrap(),
            clock: Clock::from_hm(7, 40).filter(|_| seq == 1),
            who: "mara".into(),
            kind: kind.into(),
            body: body.as_object().unwrap().clone(),
        };
        let id = EntryId { device: DeviceId::new("k3f9").unwrap(), seq };
        draft.seal(id, Moment::from_millis(1_773_500_000_000), seq, None)
    }

    fn written(entries: &[Sealed]) -> String {
        let mut out = Vec::new();
        write_csv(entries, TableFor::AnyProgram, &mut out).unwrap();
        String::from_utf8(out).unwrap()
    }

    #[test]
    fn a_sheet_has_one_row_an_entry_and_the_fields_that_occur() {
        let entries = [
            sealed(1, "counted", serde_json::json!({"tray":"cof-031","standing":41,"zebra":null})),
            sealed(2, "noted", serde_json::json!({"text":"=1+1, \"so\"\nit goes","about":"","yonder":true})),
            sealed(3, "positions_blocked", serde_json::json!({"bed":"Lower","at":["2.7","2.8"],"why":"rock"})),
        ];
        let expected = concat!(
            "id,happened,clock,recorded,who,kind,bed,at,why,tray,standing,about,text,yonder\r\n",
            "k3f9:1,2026-03-14,07:40,2026-03-14T14:53:20.000Z,mara,counted,,,,cof-031,41,,,\r\n",
            "k3f9:2,2026-03-14,,2026-03-14T14:53:20.000Z,mara,noted,,,,,,\"\",\"'=1+1, \"\"so\"\"\nit goes\",true\r\n",
            "k3f9:3,2026-03-14,,2026-03-14T14:53:20.000Z,mara,positions_blocked,Lower,\"[\"\"2.7\"\",\"\"2.8\"\"]\",rock,,,,,\r\n",
        );
        assert_eq!(written(&entries), expected);
    }

    #[test]
    fn office_programs_are_given_their_mark_semicolons_and_decimal_commas() {
        let entry =
            sealed(1, "measured", serde_json::json!({"tray":"a;b","collar_mm":-4.5,"plants":[{"height_cm":2.5}]}));
        let written = |decimal_comma| {
            let mut out = Vec::new();
            write_csv([&entry], TableFor::OfficePrograms { decimal_comma }, &mut out).unwrap();
            String::from_utf8(out).unwrap()
        };
        let spanish = written(true);
        assert!(spanish.starts_with("\u{feff}id;happened;"), "{spanish}");
        assert!(spanish.contains(";-4,5") && spanish.contains(";\"a;b\";"), "{spanish}");
        assert!(spanish.contains("2.5"), "what stands inside of JSON stays JSON: {spanish}");
        assert!(written(false).contains(";-4.5"));
    }

    /// Reads a sheet by the grammar of RFC 4180 section 2, on its own.
    fn cells(text: &str) -> Vec<Vec<String>> {
        let (mut rows, mut row, mut rest) = (Vec::new(), Vec::new(), text);
        while !rest.is_empty() {
            let (cell, behind) = if let Some(quoted) = rest.strip_prefix('"') {
                let mut cell = String::new();
                let mut inner = quoted;
                loop {
                    let (before, after) = inner.split_once('"').unwrap();
                    cell.push_str(before);
                    let Some(more) = after.strip_prefix('"') else { break (cell, after) };
                    cell.push('"');
                    inner = more;
                }
            } else {
                let end = rest.find([',', '\r']).unwrap();
                (rest[..end].to_string(), &rest[end..])
            };
            row.push(cell);
            rest = behind.strip_prefix(',').unwrap_or_else(|| {
                rows.push(std::mem::take(&mut row));
                behind.strip_prefix("\r\n").unwrap()
            });
        }
        rows
    }

    proptest! {
        #[test]
        fn any_text_comes_back_out_of_its_cell(about in "[\"',;\r\na =\\-é]{0,12}", text in any::<String>()) {
            let entry = sealed(1, "noted", serde_json::json!({"about":about,"text":text}));
            let rows = cells(&written(&[entry]));
            prop_assert_eq!(&rows[0][6..], ["about", "text"]);
            let read: Vec<&str> = rows[1][6..].iter().map(|cell| unguarded(cell)).collect();
            prop_assert_eq!(read, [about.as_str(), &text]);
            prop_assert!(rows[1].iter().all(|cell| !cell.starts_with(BEGINS_FORMULA)));
        }
    }
}
