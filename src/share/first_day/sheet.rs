//! What the sheets of trays and of beds have in common: their days, their species, their drafts.

use serde_json::{Map, Value};
use std::collections::BTreeMap;

use super::columns::{Cell, Meanings};
use super::{FirstDay, MOST_NAMES_TOLD, OrderTaken, SheetNames, SpellingOf, TakenFor, Total, Understood};
use crate::base::{Day, SpeciesKey, text};
use crate::nursery::entry::fault::{EntryFault, Problem};
use crate::share::amounts::{self, Amount};
use crate::share::draft::{Writer, read_kind, settle_draft, short};
use crate::share::fault::{Fault, LineFaults, Reason};
use crate::share::hand_day::{Shows, order_shown, read_hand_day};
use crate::share::sheet::{DayOrder, Row, Table, read_number};
use crate::share::vocabulary::{is, vocabulary};

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

/// More plants do not stand in one tray or bed: it is a slip of the pen (ours).
const MOST_OF_A_TRAY: u32 = 100_000;

/// The days that show an order must be at least this part of those that could be read in both; else one slip of the pen
/// would turn a whole sheet round. Of days spread over the month 18 in 30 show it (ours).
const LEAST_SHOWING: f64 = 0.25;

/// The order of day and month in a sheet, and what is to be told of it: as the language says, else the one that its days
/// show, the day first where none does or where they disagree. Days that only the other order gives are then faults.
pub(super) fn order_of(
    names: &SheetNames,
    table: &Table,
    meanings: &Meanings,
    columns: &[&str],
) -> (DayOrder, Option<OrderTaken>) {
    let (mut either, mut first_shown, mut months) = (Vec::new(), BTreeMap::new(), 0_usize);
    for row in &table.rows {
        for cell in columns.iter().filter_map(|name| meanings.filled(&row.cells, name)) {
            match order_shown(cell.written, names.today) {
                Shows::Nothing => {}
                Shows::Either => either.push((row.line, cell.written)),
                Shows::Only(order) => {
                    months += usize::from(order == DayOrder::MonthFirst);
                    first_shown.entry(order == DayOrder::MonthFirst).or_insert((row.line, short(cell.written)));
                }
            }
        }
    }
    let shown = |month_first: bool| first_shown.get(&month_first).cloned();
    let enough = months as f64 >= either.len() as f64 * LEAST_SHOWING;
    let month_first = names.order.is_none() && shown(true).is_some() && shown(false).is_none() && enough;
    let order = names.order.unwrap_or(if month_first { DayOrder::MonthFirst } else { DayOrder::DayFirst });
    let mut so_read: Vec<(usize, String, Day)> = Vec::new();
    for (line, written) in either {
        if let Ok(read) = read_hand_day(written, order, names.today)
            && so_read.len() < MOST_NAMES_TOLD
            && !so_read.iter().any(|(_, other, _)| other == written)
        {
            so_read.push((line, written.to_string(), read.day));
        }
    }
    let shown_by = shown(order == DayOrder::MonthFirst);
    let told = !so_read.is_empty() || month_first;
    (order, told.then_some(OrderTaken { order, shown_by, so_read }))
}

/// Takes a row of totals off the end of a sheet: its first name says so, or it holds nothing but a number.
pub(super) fn without_total(
    table: &Table,
    meanings: &Meanings,
    name: &str,
    count: Option<&str>,
) -> (Table, Option<Total>) {
    let mut table = table.clone();
    let is_total = |row: &Row| {
        let filled = row.cells.iter().filter(|cell| !cell.is_empty());
        let said = filled
            .clone()
            .next()
            .is_some_and(|cell| is(text::folded(cell).trim_end_matches(':'), &vocabulary().sheet.totals));
        let named = meanings.filled(&row.cells, name);
        let species = meanings.filled(&row.cells, "species");
        let only_numbers = named.is_none()
            && filled.clone().all(|cell| read_number(cell).is_some())
            && count.is_some_and(|count| meanings.filled(&row.cells, count).is_some());
        species.is_none() && (said || only_numbers)
    };
    if table.rows.len() < 2 || !table.rows.last().is_some_and(is_total) {
        return (table, None);
    }
    let Some(last) = table.rows.pop() else { return (table, None) };
    let of = |row: &Row| {
        let cell = count.and_then(|count| meanings.filled(&row.cells, count))?;
        amounts::read_count(cell.written).ok().map(|amount| amount.value)
    };
    let counted = table.rows.iter().filter_map(of).fold(0_u32, u32::saturating_add);
    let total = Total { line: last.line, written: of(&last), counted };
    (table, Some(total))
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
            self.faults.push(cell.fault(Reason::Envelope(Problem::Missing)));
            return None;
        }
        Some(cell)
    }

    /// Refuses what the book has already.
    pub fn new_to_the_book(&mut self, cell: Cell) {
        if (self.names.in_the_book)(cell.written) {
            self.faults.push(cell.fault(Reason::InTheBook(short(cell.written))));
        }
    }

    /// Percent of something that has no more than all of itself.
    pub fn percent_of_all(&mut self, cell: Cell) -> Option<f64> {
        let (folded, known) = (text::folded(cell.written), &vocabulary().sheet);
        let none = is(&folded, &known.nothing) || is(&folded, &known.in_the_open);
        let in_words = none.then_some(0.0).or(is(&folded, &known.half_shade).then_some(50.0));
        if let Some(percent) = in_words {
            self.tell(Some(cell), TakenFor::Percent(percent));
            return Some(percent);
        }
        let percent = self.percent(cell)?;
        if percent > 100.0 {
            self.faults.push(cell.fault(Reason::Envelope(Problem::OutsideEnds { least: 0.0, most: 100.0 })));
            return None;
        }
        Some(percent)
    }

    /// Percent of the open light: a number, a word for the open, or so much shade. None where the cell says nothing of it.
    pub fn percent_of_light(&mut self, cell: Cell) -> Option<f64> {
        let (folded, known) = (text::folded(cell.written), &vocabulary().sheet);
        let says_shade = known.shade.iter().any(|word| folded.ends_with(word.as_str()));
        let shade = cell.written.split(|sign: char| !sign.is_ascii_digit() && !".,".contains(sign)).next();
        let light = if is(&folded, &known.in_the_open) {
            100.0
        } else if let Some(shade) = shade.filter(|number| says_shade && !number.is_empty()) {
            100.0 - self.percent_of_all(Cell { written: shade, ..cell })?
        } else if is(&folded, &known.nothing) {
            return None;
        } else {
            return self.percent_of_all(cell);
        };
        self.tell(Some(cell), TakenFor::Percent(light));
        Some(light)
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
        if amount.value > MOST_OF_A_TRAY {
            let most = Problem::TooMany { most: f64::from(MOST_OF_A_TRAY) };
            self.faults.push(cell.fault(Reason::Envelope(most)));
            return None;
        }
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
        } else if read.ambiguous || read.guessed {
            self.tell(Some(cell), TakenFor::Day(read.day));
        }
        Some(read.day)
    }

    /// The name the book knows, where it is the same but for case, accents and blanks, and whether it does; else as it
    /// was first spelled in the sheet.
    pub fn spelling(&mut self, cell: Cell, of: SpellingOf) -> (String, bool) {
        let known = match of {
            SpellingOf::Container => self.names.containers,
            SpellingOf::Place => self.names.places,
        };
        let folded = text::folded(cell.written);
        if let Some(name) = known.iter().find(|name| text::folded(name) == folded) {
            return (name.clone(), true);
        }
        // A bag that says its own volume is no slip of the pen.
        let says_volume = of == SpellingOf::Container && amounts::volume_ml(cell.written).is_some();
        let near = if says_volume { Vec::new() } else { (self.names.near)(of == SpellingOf::Place, cell.written) };
        if !near.is_empty() {
            self.faults.push(cell.fault(Reason::NewName { written: short(cell.written), nearest: near }));
        }
        let spelled = self.day.spelled.entry((of, folded)).or_insert_with(|| cell.written.to_string());
        (spelled.clone(), false)
    }

    /// The species of a name.
    pub fn species(&mut self, cell: Cell, written: &str) -> Option<SpeciesKey> {
        let found = (self.names.find)(written);
        self.day.note_name(written, found.as_ref());
        let found = found.ok_or_else(|| match (self.names.several)(written) {
            none if none.is_empty() => {
                Reason::UnknownName { written: short(written), nearest: (self.names.nearest)(written) }
            }
            plants => Reason::SeveralPlants { written: short(written), plants },
        });
        self.or_fault(cell, found)
    }

    /// Settles a draft and keeps it, or its fault; `columns` says which meaning a field comes from.
    pub fn write(&mut self, kind: &str, happened: Day, body: Value, columns: &[(&str, &str)]) {
        let mut fields: Map<String, Value> = body.as_object().cloned().unwrap_or_default();
        fields.insert("happened".into(), Value::from(happened.to_string()));
        let desk = Writer { today: self.names.today, who: self.names.who };
        let settled = read_kind(kind).and_then(|known| settle_draft(known, fields, desk));
        match settled {
            Ok(draft) => self.day.drafts.push((self.row.line, draft)),
            Err(fault) => {
                let outer = fault.field.as_deref().and_then(|field| field.split(['.', '[']).next());
                let meant = columns.iter().find(|(field, _)| Some(*field) == outer).map(|(_, name)| *name).or(outer);
                let cell = meant.and_then(|name| self.meanings.cell(&self.row.cells, name));
                // A person knows the column, not the field that it fills.
                let fault = match (cell, fault.reason) {
                    (Some(cell), Reason::Entry(entry)) => match *entry {
                        EntryFault::Field { fault, .. } => cell.fault(Reason::Envelope(fault.problem)),
                        other => cell.fault(Reason::Entry(Box::new(other))),
                    },
                    (Some(cell), reason) => cell.fault(reason),
                    (None, reason) => Fault { reason, column: None, field: fault.field },
                };
                self.faults.push(fault);
            }
        }
    }
}

/// Reads every row of a sheet with `read`; a row with a fault gives no entries, and all faults are listed.
pub(super) fn read_rows<'a>(
    table: &'a Table,
    meanings: &'a Meanings<'a>,
    names: &'a SheetNames<'a>,
    order: DayOrder,
    (mut day, mut faults): (FirstDay, LineFaults),
    read: &dyn Fn(&mut RowReader),
) -> (FirstDay, LineFaults) {
    if table.rows.is_empty() && faults.is_empty() {
        faults.note(Fault::bare(Reason::NoRows).in_line(table.names_line));
    }
    for row in &table.rows {
        let mut reader = RowReader { names, meanings, row, order, day: &mut day, faults: Vec::new() };
        let before = reader.day.drafts.len();
        read(&mut reader);
        if !reader.faults.is_empty() {
            reader.day.drafts.truncate(before);
        }
        reader.faults.into_iter().for_each(|fault| faults.note(fault.in_line(row.line)));
    }
    faults.listed.sort_by_key(|fault| (fault.line, fault.column));
    day.rows = table.rows.len();
    day.columns = meanings.each().collect();
    day.columns.sort_by_key(|column| column.number);
    let in_the_book = |fault: &crate::share::fault::LineFault| matches!(fault.reason, Reason::InTheBook(_));
    if day.rows > 1 && faults.count == day.rows && faults.listed.iter().all(in_the_book) {
        faults = LineFaults::default();
        faults.note(Fault::bare(Reason::AllInTheBook(day.rows)).in_line(table.names_line));
    }
    (day, faults)
}
