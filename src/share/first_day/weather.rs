//! A sheet of weather as loggers and weather services write it: a row a day, with the rain and the lowest and highest
//! temperature, in whatever units the heads say.

use serde_json::{Map, Value};
use std::collections::BTreeMap;

use super::columns::{Cell, Meanings, columns};
use super::sheet::{RowReader, order_of, read_rows};
use super::{FirstDay, Gap, SheetNames};
use crate::base::Day;
use crate::nursery::entry::fault::Problem;
use crate::share::draft::short;
use crate::share::fault::{Fault, LineFaults, Reason};
use crate::share::sheet::{Table, read_number};

/// A first row for a sheet of weather, in English and in Spanish.
pub const WEATHER_EXAMPLE: [&str; 2] =
    ["Date,Rain (mm),Min temp (C),Max temp (C)", "Fecha;Lluvia (mm);T mínima (C);T máxima (C)"];

/// What loggers and services write where nothing was read: no such rain or cold is on this earth.
const NOT_READ: [f64; 5] = [-99.0, -99.9, -999.0, -999.9, -9999.0];
/// Millimetres of an inch.
const MM_PER_INCH: f64 = 25.4;

/// A figure of a day: the field of the entry, and the columns that tell it, each with how it becomes millimetres or degrees
/// Celsius.
type Figure = (&'static str, [(&'static str, fn(f64) -> f64); 2]);

fn as_it_is(value: f64) -> f64 {
    value
}

fn from_inches(value: f64) -> f64 {
    value * MM_PER_INCH
}

fn from_fahrenheit(value: f64) -> f64 {
    (value - 32.0) / 1.8
}

const FIGURES: [Figure; 3] = [
    ("rain_mm", [("rain", as_it_is), ("rain in inches", from_inches)]),
    ("tmin_c", [("lowest", as_it_is), ("lowest in F", from_fahrenheit)]),
    ("tmax_c", [("highest", as_it_is), ("highest in F", from_fahrenheit)]),
];

/// Reads a sheet of weather as `weather`, a row a day. Days between the first and the last that have no row or no figure are
/// gaps and told; a day that stands twice is a fault. Of what the book has already the same is passed over, and another
/// figure is a fault.
pub fn read_weather(table: &Table, names: &SheetNames) -> (FirstDay, LineFaults) {
    let mut faults = LineFaults::default();
    let (meanings, passed_over) = Meanings::of(table, &columns().weather, WEATHER_EXAMPLE, &mut faults);
    let tells_figures = FIGURES.iter().flat_map(|(_, told)| told).any(|(name, _)| meanings.has(name));
    let tells_days = meanings.has("day") || in_three(&meanings).is_some();
    if faults.is_empty() && !(tells_figures && tells_days) {
        let seen = table.columns.iter().map(|column| short(&column.written)).collect();
        faults.note(Fault::bare(Reason::NoHeader { example: WEATHER_EXAMPLE, seen }).in_line(table.names_line));
    }
    let is_headed = faults.is_empty();
    table.faults.listed.iter().for_each(|fault| faults.note(fault.clone()));
    if !is_headed {
        return (FirstDay { passed_over, columns: meanings.each().collect(), ..FirstDay::default() }, faults);
    }
    let days_in_cells: &[&str] = if in_three(&meanings).is_some() { &[] } else { &["day"] };
    let (order, taken) = order_of(names, table, &meanings, days_in_cells);
    let day = FirstDay { passed_over, order: taken, ..FirstDay::default() };
    let days = std::cell::RefCell::new(BTreeMap::<Day, (usize, bool)>::new());
    let read = |reader: &mut RowReader| read_row(reader, &mut days.borrow_mut());
    let (mut day, faults) = read_rows(table, &meanings, names, order, (day, faults), &read);
    day.gaps = gaps(&days.into_inner());
    (day, faults)
}

fn read_row(reader: &mut RowReader, days: &mut BTreeMap<Day, (usize, bool)>) {
    let Some((cell, on)) = day_of(reader) else { return };
    let line = reader.row.line;
    let mut body = Map::new();
    for (field, told) in FIGURES {
        let cells = told.iter().filter_map(|(name, into)| Some((reader.filled(name)?, into)));
        for (cell, into) in cells.collect::<Vec<_>>() {
            if let Some(value) = figure(reader, cell) {
                // Hundredths, so that inches leave no tail of digits.
                body.insert(field.into(), Value::from((into(value) * 100.0).round() / 100.0));
            }
        }
    }
    if let Some((first, _)) = days.get(&on) {
        let reason = Reason::SameAsLine { written: short(cell.written), line: *first };
        reader.faults.push(cell.fault(reason));
        return;
    }
    days.insert(on, (line, !body.is_empty()));
    let known = (reader.names.weather)(on);
    let written = |field: &str| known.iter().find(|(name, _)| *name == field).map(|(_, value)| *value);
    let others: Vec<(String, Value)> = body
        .into_iter()
        .filter(|(field, value)| written(field).is_none_or(|known| value.as_f64() != Some(known)))
        .collect();
    if others.iter().any(|(field, _)| written(field).is_some()) {
        reader.faults.push(cell.fault(Reason::InTheBook(short(cell.written))));
        return;
    }
    if !others.is_empty() {
        let columns: Vec<(&str, &str)> = FIGURES
            .iter()
            .filter_map(|(field, told)| Some((*field, told.iter().find(|(name, _)| reader.filled(name).is_some())?.0)))
            .collect();
        reader.write("weather", on, Value::Object(others.into_iter().collect()), &columns);
    }
}

/// The columns of year, month and day where a day stands in three; beside a year and a month `Day` is that of the month.
fn in_three(meanings: &Meanings) -> Option<[&'static str; 3]> {
    let of_month = ["day of month", "day"].into_iter().find(|name| meanings.has(name))?;
    (meanings.has("year") && meanings.has("month")).then_some(["year", "month", of_month])
}

/// The day of a row: in one cell, or year, month and day in three.
fn day_of<'a>(reader: &mut RowReader<'a>) -> Option<(Cell<'a>, Day)> {
    let Some([year, month, of_month]) = in_three(reader.meanings) else {
        let cell = reader.required("day")?;
        return Some((cell, reader.hand_day(cell)?)).filter(|(cell, day)| !is_to_come(reader, *cell, *day));
    };
    let year = reader.required(year)?;
    let number = |cell: Cell| read_number(cell.written).and_then(|number| number.parse::<i32>().ok());
    let month = reader.required(month).and_then(number).and_then(|month| u32::try_from(month).ok());
    let of_month = reader.required(of_month).and_then(number).and_then(|day| u32::try_from(day).ok());
    let day = number(year).zip(month).zip(of_month).and_then(|((year, month), day)| Day::from_ymd(year, month, day));
    let day = reader.or_fault(year, day.ok_or_else(|| Reason::Envelope(Problem::NotADay(short(year.written)))))?;
    (!is_to_come(reader, year, day)).then_some((year, day))
}

fn is_to_come(reader: &mut RowReader, cell: Cell, day: Day) -> bool {
    let today = reader.names.today;
    if day > today {
        reader.faults.push(cell.fault(Reason::Envelope(Problem::NotADay(short(cell.written)))));
    }
    day > today
}

/// A number; none where the cell says that nothing was read.
fn figure(reader: &mut RowReader, cell: Cell) -> Option<f64> {
    let number = read_number(cell.written).and_then(|number| number.parse::<f64>().ok());
    let fault = || Reason::Envelope(Problem::NotANumber(short(cell.written)));
    reader.or_fault(cell, number.ok_or_else(fault)).filter(|value| !NOT_READ.contains(value))
}

/// Days between the first and the last of which nothing is told, each run with the line before it.
fn gaps(days: &BTreeMap<Day, (usize, bool)>) -> Vec<Gap> {
    let mut all = Vec::new();
    let mut last: Option<(Day, usize)> = None;
    for (day, (line, _)) in days.iter().filter(|(_, (_, told))| *told) {
        if let Some((before, at)) = last.filter(|(before, _)| day.days_since(*before) > 1) {
            all.push(Gap { line: at, from: before.plus(1), until: day.plus(-1) });
        }
        last = Some((*day, *line));
    }
    all
}
