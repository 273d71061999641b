//! Which column of a sheet means what, by the many names people give it.

use serde::Deserialize;
use std::sync::LazyLock;

use crate::base::name_search::sounds;
use crate::base::{Day, text};
use crate::share::amounts;
use crate::share::draft::short;
use crate::share::fault::{Fault, LineFaults, Reason};
use crate::share::hand_day::read_hand_day;
use crate::share::sheet::{DayOrder, Table};
use crate::share::vocabulary::{is, vocabulary};

/// A meaning a column can have, and the names it is known by; `columns.toml` lists them.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct ColumnMeant {
    means: String,
    said: [String; 2],
    required: bool,
    names: Vec<String>,
    /// Names that mean it where another column has what they mean first.
    #[serde(default)]
    else_names: Vec<String>,
    /// Names that mean it where what stands below is mostly days.
    #[serde(default)]
    days_under: Vec<String>,
    /// Names that mean it where what stands below is mostly volumes.
    #[serde(default)]
    volumes_under: Vec<String>,
}

/// The columns of each kind of sheet.
#[derive(Default, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Columns {
    pub trays: Vec<ColumnMeant>,
    pub beds: Vec<ColumnMeant>,
    pub weather: Vec<ColumnMeant>,
}

fn read_columns() -> Result<Columns, toml::de::Error> {
    toml::from_str(include_str!("../columns.toml"))
}

/// The columns of each kind of sheet, read once.
pub(super) fn columns() -> &'static Columns {
    static COLUMNS: LazyLock<Columns> = LazyLock::new(|| read_columns().unwrap_or_default());
    &COLUMNS
}

impl ColumnMeant {
    fn said(&'static self) -> [&'static str; 2] {
        [&self.said[0], &self.said[1]]
    }
}

/// A column of a sheet that means something.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ColumnTaken {
    /// Its number in the sheet, from 1.
    pub number: usize,
    /// Its name as it is written.
    pub written: String,
    /// What it means, in English and in Spanish.
    pub means: [&'static str; 2],
}

/// A column that means nothing here.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ColumnPassedOver {
    /// Its name as it is written.
    pub written: String,
    /// What it may mean, in English and in Spanish; none where nothing is near.
    pub nearest: Option<[&'static str; 2]>,
}

/// The columns of a sheet by what they mean.
pub(super) struct Meanings<'a> {
    known: &'static [ColumnMeant],
    /// For each of the known meanings the place in the table.
    at: Vec<Option<usize>>,
    table: &'a Table,
}

/// A cell under a column that means something.
#[derive(Clone, Copy)]
pub(super) struct Cell<'a> {
    pub written: &'a str,
    /// The name of its column as written.
    pub column: &'a str,
    /// The same, plain.
    pub plain: &'a str,
    pub number: usize,
}

impl Cell<'_> {
    /// A fault in this cell.
    pub fn fault(&self, reason: Reason) -> Fault {
        Fault { column: Some(self.number), field: Some(self.column.to_string()), reason }
    }
}

/// A name in small letters without accents and signs, single blanks between words.
fn plain(written: &str) -> String {
    let folded = text::folded(written);
    let words = folded.split(|letter: char| !(letter.is_alphanumeric() || letter == '%'));
    words.filter(|word| !word.is_empty()).collect::<Vec<_>>().join(" ")
}

/// A name without the words that say that it is only about so: "cantidad mas o menos", "how many about".
fn without_about(name: &str) -> String {
    let about = vocabulary().amount.about.iter().map(|word| word.replace('-', " "));
    let ends: Vec<String> = about.map(|word| format!(" {}", word.trim_end_matches('.'))).collect();
    let bare = ends.iter().find_map(|end| name.strip_suffix(end.as_str()));
    bare.unwrap_or(name).to_string()
}

/// Whether more than half of what stands under a column is a day.
fn holds_days(table: &Table, at: usize) -> bool {
    let cells = table.rows.iter().filter_map(|row| row.cells.get(at)).filter(|cell| !cell.is_empty());
    let is_day = |cell: &&String| {
        let today = Day::from_ymd(LATE_YEAR, 12, 31);
        today.is_some_and(|today| read_hand_day(cell, DayOrder::DayFirst, today).is_ok())
    };
    let (days, others): (Vec<&String>, Vec<&String>) = cells.partition(is_day);
    days.len() > others.len()
}

/// Whether more than half of what stands under a column tells a volume.
fn holds_volumes(table: &Table, at: usize) -> bool {
    let cells = table.rows.iter().filter_map(|row| row.cells.get(at)).filter(|cell| !cell.is_empty());
    let (volumes, others): (Vec<&String>, Vec<&String>) = cells.partition(|cell| amounts::volume_ml(cell).is_some());
    volumes.len() > others.len()
}

/// A year by which every day that stands in a sheet has been.
const LATE_YEAR: i32 = 2199;

/// A column that means nothing, with what it may mean: a free meaning of which a name shares a word with it, sounds nearly so,
/// or which holds days as it does.
fn passed_over(table: &Table, i: usize, known: &'static [ColumnMeant], at: &[Option<usize>]) -> ColumnPassedOver {
    /// A shorter word says too little.
    const LEAST_LETTERS: usize = 4;
    let written = table.columns[i].written.clone();
    let name = plain(&written);
    let words: Vec<&str> = name.split(' ').filter(|word| word.chars().count() >= LEAST_LETTERS).collect();
    let apart = |a: &str, b: &str| {
        let (length, other) = (a.chars().count(), b.chars().count());
        let apart = strsim::osa_distance(a, b);
        (other >= LEAST_LETTERS && apart * 3 <= length.max(other)).then_some(apart)
    };
    let how_near = |meant: &ColumnMeant| {
        let theirs = meant.names.iter().flat_map(|name| name.split(' '));
        theirs.flat_map(|theirs| words.iter().filter_map(move |word| apart(word, theirs))).min()
    };
    let is_of_days = |meant: &&ColumnMeant| !meant.days_under.is_empty();
    let free = || known.iter().zip(at).filter(|(_, at)| at.is_none()).map(|(meant, _)| meant);
    let by_days = || free().find(|meant| is_of_days(meant) && holds_days(table, i));
    // Of equals one that is needed leads.
    let near = free().filter_map(|meant| Some((how_near(meant)?, !meant.required, meant)));
    let near = near.min_by_key(|(apart, is_free, _)| (*apart, *is_free)).map(|(_, _, meant)| meant);
    let nearest = near.or_else(by_days).map(ColumnMeant::said);
    ColumnPassedOver { written, nearest }
}

/// The one meaning of which a name is a slip of the pen away; none where several may be meant.
fn nearly(known: &[ColumnMeant], written: &str) -> Option<usize> {
    /// A shorter name is near too many.
    const LEAST_LETTERS: usize = 5;
    /// From so many letters on two slips are one.
    const LONG: usize = 8;
    /// A longer name is that of no column.
    const MOST_LETTERS: usize = 40;
    let length = written.chars().count();
    let most = if length < LONG { 1 } else { 2 };
    let is_near = |name: &String| {
        (LEAST_LETTERS..=MOST_LETTERS).contains(&length)
            && name.chars().count() >= LEAST_LETTERS
            && (strsim::osa_distance(name, written) <= most || sounds(name) == sounds(written))
    };
    let mut near = (0..known.len()).filter(|at| known[*at].names.iter().any(is_near));
    let first = near.next()?;
    near.next().is_none().then_some(first)
}

impl<'a> Meanings<'a> {
    /// Finds the columns, the missing required ones and those that mean the same; the last answer is those passed over.
    pub fn of(
        table: &'a Table,
        known: &'static [ColumnMeant],
        example: [&'static str; 2],
        faults: &mut LineFaults,
    ) -> (Meanings<'a>, Vec<ColumnPassedOver>) {
        let (mut at, mut unread): (Vec<Option<usize>>, Vec<usize>) = (vec![None; known.len()], Vec::new());
        let mut unknown: Vec<usize> = Vec::new();
        for (i, column) in table.columns.iter().enumerate() {
            let name = without_about(&plain(&column.written));
            let by_days =
                || known.iter().position(|meant| meant.days_under.contains(&name)).filter(|_| holds_days(table, i));
            let by_volumes = || {
                known.iter().position(|meant| meant.volumes_under.contains(&name)).filter(|_| holds_volumes(table, i))
            };
            let by_name = || known.iter().position(|meant| meant.names.contains(&name));
            let Some(meant) = by_days().or_else(by_volumes).or_else(by_name) else {
                unknown.push(i);
                continue;
            };
            let other = |i: usize, at: &[Option<usize>]| {
                let name = plain(&table.columns[i].written);
                known.iter().position(|meant| meant.else_names.contains(&name)).filter(|other| at[*other].is_none())
            };
            match at[meant] {
                None => at[meant] = Some(i),
                // "No." or "Nombre" beside a column that says the same: it is the tray.
                Some(first) if other(i, &at).is_some() || other(first, &at).is_some() => {
                    let (moved, stays) = if other(i, &at).is_some() { (i, first) } else { (first, i) };
                    if let Some(other) = other(moved, &at) {
                        at[other] = Some(moved);
                    }
                    at[meant] = Some(stays);
                }
                Some(first) => {
                    let other: &str = &table.columns[first].written;
                    let reason = Reason::ColumnsMeanTheSame(other.to_string());
                    let fault = Fault { column: Some(column.number), field: Some(column.written.clone()), reason };
                    faults.note(fault.in_line(table.names_line));
                }
            }
        }
        for i in unknown {
            let name = without_about(&plain(&table.columns[i].written));
            let free = |meant: &usize| at[*meant].is_none();
            let else_named = known.iter().position(|meant| meant.else_names.contains(&name)).filter(free);
            match else_named.or_else(|| nearly(known, &name).filter(free)) {
                Some(meant) => at[meant] = Some(i),
                None => unread.push(i),
            }
        }
        let passed_over: Vec<ColumnPassedOver> = unread.iter().map(|i| passed_over(table, *i, known, &at)).collect();
        let seen = || table.columns.iter().map(|column| short(&column.written)).collect();
        if at.iter().all(Option::is_none) {
            faults.note(Fault::bare(Reason::NoHeader { example, seen: seen() }).in_line(table.names_line));
            return (Meanings { known, at, table }, passed_over);
        }
        for (meant, _) in known.iter().zip(&at).filter(|(meant, at)| meant.required && at.is_none()) {
            let reason = Reason::NoColumn { name: meant.said(), seen: seen() };
            faults.note(Fault::bare(reason).in_line(table.names_line));
        }
        (Meanings { known, at, table }, passed_over)
    }

    /// Whether the sheet has a column of a meaning.
    pub fn has(&self, name: &str) -> bool {
        self.known.iter().zip(&self.at).any(|(meant, at)| meant.means == name && at.is_some())
    }

    /// Each column that means something, as it is written, with what it means.
    pub fn each(&self) -> impl Iterator<Item = ColumnTaken> {
        let known = self.known.iter().zip(&self.at);
        known.filter_map(|(meant, at)| {
            let column = self.table.columns.get((*at)?)?;
            Some(ColumnTaken { number: column.number, written: column.written.clone(), means: meant.said() })
        })
    }

    /// The cell of a meaning in a row; none where there is no such column.
    pub fn cell<'b>(&'b self, cells: &'b [String], name: &str) -> Option<Cell<'b>> {
        let meant = self.known.iter().position(|meant| meant.means == name)?;
        let at = (*self.at.get(meant)?)?;
        let column = self.table.columns.get(at)?;
        Some(Cell { written: cells.get(at)?, column: &column.written, plain: &column.name, number: column.number })
    }

    /// The same where something is written in it that says more than that nobody knows.
    pub fn filled<'b>(&'b self, cells: &'b [String], name: &str) -> Option<Cell<'b>> {
        let says = |cell: &Cell| !is(&text::folded(cell.written), &vocabulary().sheet.not_known);
        self.cell(cells, name).filter(|cell| !cell.written.is_empty() && says(cell))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_of_columns_are_plain_and_mean_one_thing() {
        let Columns { trays, beds, weather } = read_columns().unwrap();
        for columns in [trays, beds, weather] {
            let mut seen = std::collections::BTreeSet::new();
            for name in columns.iter().flat_map(|meant| &meant.names) {
                assert_eq!(plain(name), *name);
                assert!(seen.insert(name), "{name} means two things");
            }
        }
        assert_eq!(plain(" Ubicación (m.) "), "ubicacion m");
    }

    #[test]
    fn messy_heads_are_read_by_what_they_mean() {
        let taken = |sheet: &str| {
            let table = crate::share::sheet::read_table(sheet.as_bytes(), None).unwrap();
            let mut faults = LineFaults::default();
            let (meanings, passed_over) = Meanings::of(&table, &columns().trays, ["", ""], &mut faults);
            assert_eq!((faults.count, passed_over.len()), (0, 0), "{sheet}: {faults:?} {passed_over:?}");
            meanings.each().map(|one| format!("{}={}", one.written, one.means[0])).collect::<Vec<_>>().join(" ")
        };
        for (sheet, meant) in [
            ("No.;Especie;Cant.;Fecha s.\n", "No.=tray Especie=species Cant.=how many Fecha s.=sown about"),
            (
                "Nombre;Especie;Hay;Sembrado en\na;b;3;marzo 2025\n",
                "Nombre=tray Especie=species Hay=how many Sembrado en=sown about",
            ),
            (
                "Numero;Planta;Cant.;Sembrado en\na;b;3;bolsa 2 l\n",
                "Numero=tray Planta=species Cant.=how many Sembrado en=bag",
            ),
            ("Tray,Speceis,Qty,Sown on\n", "Tray=tray Speceis=species Qty=how many Sown on=sown about"),
        ] {
            assert_eq!(taken(sheet), meant, "{sheet}");
        }
    }
}
