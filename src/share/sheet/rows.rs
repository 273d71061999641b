//! Rows of a sheet as entries of one kind: a column a field.

use serde_json::Map;

use super::cells::{DayOrder, read_day, read_number};
use super::table::{Row, Table};
use crate::base::{Day, text};
use crate::nursery::entry::KindOfEntry;
use crate::nursery::entry::reading::find_field;
use crate::nursery::entry::shape::Shape;
use crate::nursery::envelope::Draft;
use crate::share::draft::{Writer, read_kind, settle_draft};
use crate::share::fault::{Fault, LineFaults, Reason};
use crate::share::pairs::{ENVELOPE, read_pair};

/// A day whose order of day and month was not plain, and how it was understood.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DayUnderstood {
    /// The line, from 1.
    pub line: usize,
    /// The column as its name was written.
    pub column: String,
    /// What was written.
    pub written: String,
    /// The day it was taken for.
    pub day: Day,
}

/// The rows of a sheet as drafts.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct RowDrafts {
    /// Each with its line, in the order of the sheet.
    pub drafts: Vec<(usize, Draft)>,
    /// Days to tell the person about.
    pub understood: Vec<DayUnderstood>,
}

/// Reads every row as an entry of the kind, or lists every fault. A column is a field of the kind or `happened`, `who`,
/// `at`, `clock`; an empty cell is a field left out. Numbers may have a decimal comma.
pub fn row_drafts(table: &Table, kind: &str, order: DayOrder, today: Day, who: &str) -> Result<RowDrafts, LineFaults> {
    let (mut read, mut faults) = (RowDrafts::default(), LineFaults::default());
    match read_kind(kind) {
        Err(fault) => faults.note(fault.in_line(table.names_line)),
        Ok(known) => {
            check_columns(table, known, &mut faults);
            // An unknown column would be said again for every row.
            if faults.is_empty() {
                for row in &table.rows {
                    match read_row(table, row, known, order, Writer { today, who }, &mut read.understood) {
                        Ok(draft) => read.drafts.push((row.line, draft)),
                        Err(fault) => faults.note(fault.in_line(row.line)),
                    }
                }
            }
        }
    }
    faults.or(read)
}

fn check_columns(table: &Table, known: &KindOfEntry, faults: &mut LineFaults) {
    for column in &table.columns {
        let is_envelope = ENVELOPE.contains(&column.name.as_str());
        if !is_envelope && find_field(known.fields, &column.name).is_none() {
            // An empty value is enough for the fault of an unknown name.
            if let Err(fault) = read_pair(known, &format!("{}=", column.written), &ENVELOPE) {
                faults.note(Fault { column: Some(column.number), ..fault }.in_line(table.names_line));
            }
        }
    }
}

fn read_row(
    table: &Table,
    row: &Row,
    known: &KindOfEntry,
    order: DayOrder,
    desk: Writer,
    understood: &mut Vec<DayUnderstood>,
) -> Result<Draft, Fault> {
    let mut fields = Map::new();
    for (column, cell) in table.columns.iter().zip(&row.cells) {
        if cell.is_empty() {
            continue;
        }
        let in_column = |fault: Fault| Fault {
            column: Some(column.number),
            field: fault.field.or(Some(column.written.clone())),
            ..fault
        };
        let shape = find_field(known.fields, &column.name).map(|field| field.shape);
        let is_day = matches!(shape, Some(Shape::Day)) || column.name == "happened";
        let is_number = matches!(shape, Some(Shape::Count | Shape::Number { .. }));
        let plain = if is_day {
            let read = read_day(cell, order).map_err(|reason| in_column(Fault::bare(reason)))?;
            if read.ambiguous {
                let (line, column, written) = (row.line, column.written.clone(), cell.clone());
                understood.push(DayUnderstood { line, column, written, day: read.day });
            }
            read.day.to_string()
        } else if is_number {
            // What is no number in a cell goes on as it is, for the fault that names its unit.
            read_number(cell).unwrap_or_else(|| cell.clone())
        } else {
            cell.clone()
        };
        // Names are looked up without the `=` that a column's name may hold.
        let (name, value) = read_pair(known, &format!("{}={plain}", column.name), &ENVELOPE).map_err(in_column)?;
        if fields.contains_key(&name) {
            return Err(in_column(Fault::on(&name, Reason::NameTwice)));
        }
        fields.insert(name, value);
    }
    settle_draft(known, fields, desk).map_err(|fault| {
        let outer = fault.field.as_deref().and_then(|field| field.split(['.', '[']).next());
        let column = table.columns.iter().find(|column| {
            let meant = find_field(known.fields, &column.name).map_or(column.name.as_str(), |field| field.name);
            outer.is_some_and(|outer| text::folded(outer) == text::folded(meant))
        });
        Fault { column: column.map(|column| column.number), ..fault }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::nursery::entry::fault::{EntryFault, Problem};
    use crate::share::sheet::read_table;
    use proptest::prelude::*;

    fn today() -> Day {
        Day::from_ymd(2026, 3, 14).unwrap()
    }

    fn read(text: &str, kind: &str) -> Result<RowDrafts, LineFaults> {
        row_drafts(&read_table(text.as_bytes()).unwrap(), kind, DayOrder::DayFirst, today(), "mara")
    }

    #[test]
    fn rows_become_drafts() {
        let text = "Happened;Rain mm;tmax_c;who\n4/3/2026;12,5;;Teo\n13/3/2026;1.234,5;31,0;\n";
        let read = read(text, "weather").unwrap();
        let (line, draft) = &read.drafts[0];
        assert_eq!((*line, draft.happened.to_string().as_str(), draft.who.as_str()), (2, "2026-03-04", "Teo"));
        assert_eq!((&draft.body["rain_mm"], draft.body.len()), (&serde_json::json!(12.5), 1));
        assert_eq!(
            (&read.drafts[1].1.body["rain_mm"], read.drafts[1].1.who.as_str()),
            (&serde_json::json!(1234.5), "mara")
        );
        let written = "4/3/2026".to_string();
        let day = today() - 10;
        assert_eq!(read.understood, [DayUnderstood { line: 2, column: "Happened".into(), written, day }]);
    }

    #[test]
    fn faults_name_row_and_column() {
        let problem = |reason: &Reason| match reason {
            Reason::Entry(fault) => match &**fault {
                EntryFault::Field { fault, .. } => fault.problem.clone(),
                other => panic!("{other:?}"),
            },
            other => panic!("{other:?}"),
        };
        let faults = read("tray,standin\na,4\nb,5\n", "counted").unwrap_err();
        assert_eq!((faults.count, faults.listed[0].line, faults.listed[0].column), (1, 1, Some(2)));
        assert_eq!(problem(&faults.listed[0].reason), Problem::Unknown(vec!["standing".into()]));
        let faults =
            read("tray,standing,happened\na,4kg,\nb,-5,\nc,,\nd,4,3/14/2026\ne,4,15/3/2026\n", "counted").unwrap_err();
        let places: Vec<(usize, Option<usize>)> =
            faults.listed.iter().map(|fault| (fault.line, fault.column)).collect();
        assert_eq!(places, [(2, Some(2)), (3, Some(2)), (4, Some(2)), (5, Some(3)), (6, Some(3))]);
        assert_eq!(problem(&faults.listed[2].reason), Problem::Missing);
        assert_eq!(faults.listed[3].reason, Reason::DayInOtherOrder("3/14/2026".into()));
        assert_eq!(faults.listed[4].reason, Reason::ComingDay(today() + 1));
        assert_eq!(read("tray\na\n", "countd").unwrap_err().listed[0].field.as_deref(), Some("kind"));
    }

    proptest! {
        #[test]
        fn no_sheet_makes_it_panic(text in "(tray|at|=|happened|bed|plan)[;,](bandeja|rows|clock|=a)\n([-0-9/:.,;\"\\[{é]{0,12}\n){0,4}") {
            if let Ok(table) = read_table(text.as_bytes()) {
                for kind in ["counted", "positions_blocked", "bed_set"] {
                    let _ = row_drafts(&table, kind, DayOrder::MonthFirst, today(), "mara");
                }
            }
        }
    }
}
