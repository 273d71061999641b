//! What the sheets of trays and of beds have in common: their days, their species, their drafts.

use serde_json::{Map, Value};
use std::collections::BTreeMap;

use super::columns::{Cell, Meanings};
use super::{FirstDay, SheetNames, TakenFor, Understood};
use crate::base::{Day, SpeciesKey, text};
use crate::share::amounts::{self, Amount, read_hand_day};
use crate::share::draft::{Desk, read_kind, settle_draft, short};
use crate::share::fault::{Fault, LineFaults, Reason};
use crate::share::sheet::{DayOrder, Row, Table, read_day};

/// One row being read.
pub(super) struct RowReader<'a> {
    pub names: &'a SheetNames<'a>,
    pub meanings: &'a Meanings<'a>,
    pub row: &'a Row,
    pub order: DayOrder,
    pub day: &'a mut FirstDay,
    /// Faults of the row, all of them.
    pub faults: Vec<Fault>,
}

/// The order of day and month in a column: as told, else the one that every day of it bears, the day first.
pub(super) fn order_of(names: &SheetNames, table: &Table, meanings: &Meanings, columns: &[&str]) -> DayOrder {
    let written =
        || table.rows.iter().flat_map(|row| columns.iter().filter_map(|name| meanings.filled(&row.cells, name)));
    let only = |order: DayOrder| {
        written().any(|cell| {
            let bare = amounts::without_about(cell.written).0;
            matches!(read_day(bare, order), Err(Reason::DayInOtherOrder(_)))
        })
    };
    names.order.unwrap_or_else(|| {
        let month_first = only(DayOrder::DayFirst) && !only(DayOrder::MonthFirst);
        if month_first { DayOrder::MonthFirst } else { DayOrder::DayFirst }
    })
}

/// Notes the rows that name the same thing as an earlier one.
pub(super) fn note_repeated(table: &Table, meanings: &Meanings, name: &str, faults: &mut LineFaults) {
    let mut first: BTreeMap<String, usize> = BTreeMap::new();
    for row in &table.rows {
        let Some(cell) = meanings.filled(&row.cells, name) else { continue };
        match first.get(cell.written) {
            Some(line) => {
                let reason = Reason::SameAsLine { written: short(cell.written), line: *line };
                faults.note(cell.fault(reason).in_line(row.line));
            }
            None => {
                first.insert(cell.written.to_string(), row.line);
            }
        }
    }
}

impl<'a> RowReader<'a> {
    /// The cell of a meaning, where it is filled.
    pub fn filled(&self, name: &str) -> Option<Cell<'a>> {
        self.meanings.filled(&self.row.cells, name)
    }

    /// The cell of a required meaning; an empty one is a fault.
    pub fn required(&mut self, name: &str) -> Option<Cell<'a>> {
        let cell = self.meanings.cell(&self.row.cells, name)?;
        if cell.written.is_empty() {
            self.faults.push(cell.fault(Reason::Envelope(crate::nursery::entry::fault::Problem::Missing)));
            return None;
        }
        Some(cell)
    }

    /// Keeps a fault of a cell.
    pub fn or_fault<T>(&mut self, cell: Cell, read: Result<T, Reason>) -> Option<T> {
        read.map_err(|reason| self.faults.push(cell.fault(reason))).ok()
    }

    /// Tells how a cell was understood.
    pub fn tell(&mut self, cell: Option<Cell>, taken: TakenFor) {
        let (column, written) = cell.map_or((None, ""), |cell| (Some(cell.column.to_string()), cell.written));
        self.day.understood.push(Understood { line: self.row.line, column, written: written.to_string(), taken });
    }

    /// A count of plants.
    pub fn count(&mut self, cell: Cell) -> Option<Amount<u32>> {
        let amount = self.or_fault(cell, amounts::read_count(cell.written))?;
        if amount.about {
            self.tell(Some(cell), TakenFor::AboutCount(amount.value));
        } else if amounts::parts_thousands(cell.written) {
            self.tell(Some(cell), TakenFor::Count(amount.value));
        }
        Some(amount)
    }

    /// An amount with or without its unit.
    pub fn amount(&mut self, cell: Cell, units: &[(&str, f64)]) -> Option<f64> {
        self.or_fault(cell, amounts::read_amount(cell.written, units)).map(|amount| amount.value)
    }

    /// Percent; a share of one, written with a decimal sign and without `%`, is told.
    pub fn percent(&mut self, cell: Cell) -> Option<f64> {
        let value = self.amount(cell, &amounts::PERCENT)?;
        let is_share = value > 0.0 && value < 1.0 && !cell.written.contains('%');
        if is_share {
            self.tell(Some(cell), TakenFor::Percent(value * 100.0));
        }
        Some(if is_share { value * 100.0 } else { value })
    }

    /// A day, told where it is not plain.
    pub fn hand_day(&mut self, cell: Cell) -> Option<Day> {
        let read = self.or_fault(cell, read_hand_day(cell.written, self.order, self.names.today))?;
        if read.about {
            self.tell(Some(cell), TakenFor::AboutDay(read.day));
        } else if read.ambiguous {
            self.tell(Some(cell), TakenFor::Day(read.day));
        }
        Some(read.day)
    }

    /// The species of a name.
    pub fn species(&mut self, cell: Cell, written: &str) -> Option<SpeciesKey> {
        let found = (self.names.find)(written)
            .ok_or_else(|| Reason::UnknownName { written: short(written), nearest: (self.names.nearest)(written) });
        self.or_fault(cell, found)
    }

    /// Settles a draft and keeps it, or its fault; `columns` says which meaning a field comes from.
    pub fn write(&mut self, kind: &str, happened: Day, body: Value, columns: &[(&str, &str)]) {
        let mut fields: Map<String, Value> = body.as_object().cloned().unwrap_or_default();
        fields.insert("happened".into(), Value::from(happened.to_string()));
        let desk = Desk { today: self.names.today, who: self.names.who };
        let settled = read_kind(kind).and_then(|known| settle_draft(known, fields, desk));
        match settled {
            Ok(draft) => self.day.drafts.push((self.row.line, draft)),
            Err(fault) => {
                let outer = fault.field.as_deref().and_then(|field| field.split(['.', '[']).next());
                let meant = columns.iter().find(|(field, _)| Some(*field) == outer).map(|(_, name)| *name).or(outer);
                let cell = meant.and_then(|name| self.meanings.cell(&self.row.cells, name));
                self.faults.push(Fault { column: cell.map(|cell| cell.number), ..fault });
            }
        }
    }
}

/// The name the book knows, where it is the same but for case, accents and blanks; else what was written.
pub(super) fn known_spelling<'a>(written: &'a str, known: &'a [String]) -> (&'a str, bool) {
    let folded = text::folded(written);
    known.iter().find(|name| text::folded(name) == folded).map_or((written, false), |name| (name.as_str(), true))
}

/// Reads every row of a sheet with `read`, all faults listed; nothing is answered where there is one.
pub(super) fn read_rows<'a>(
    table: &'a Table,
    meanings: &'a Meanings<'a>,
    names: &'a SheetNames<'a>,
    order: DayOrder,
    (mut day, mut faults): (FirstDay, LineFaults),
    read: &dyn Fn(&mut RowReader),
) -> Result<FirstDay, LineFaults> {
    if table.rows.is_empty() {
        faults.note(Fault::bare(Reason::NoRows).in_line(table.names_line));
    }
    for row in &table.rows {
        let mut reader = RowReader { names, meanings, row, order, day: &mut day, faults: Vec::new() };
        read(&mut reader);
        reader.faults.into_iter().for_each(|fault| faults.note(fault.in_line(row.line)));
    }
    faults.listed.sort_by_key(|fault| (fault.line, fault.column));
    day.rows = table.rows.len();
    faults.or(day)
}
