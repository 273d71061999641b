//! The first day: a sheet of the trays or beds that already stand, made in ten minutes, as entries of the book.

mod beds;
mod columns;
mod sheet;
mod trays;
mod weather;

#[cfg(test)]
mod tests;

pub use beds::read_beds;
pub use columns::{ColumnPassedOver, ColumnTaken};
pub use trays::read_trays;
pub use weather::read_weather;

use std::collections::{BTreeMap, BTreeSet};

use super::sheet::DayOrder;
use crate::base::{Day, SpeciesKey};
use crate::nursery::envelope::Draft;

/// What the rows of a sheet are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SheetKind {
    /// Trays with plants standing in them.
    Trays,
    /// Beds and what is to stand in them.
    Beds,
    /// Weather, a row a day.
    Weather,
}

/// What a sheet is read against: the day, the person, and the names the book knows.
pub struct SheetNames<'a> {
    /// Today.
    pub today: Day,
    /// Who writes.
    pub who: &'a str,
    /// The order of day and month; none where the sheet itself is to show it, and the day leads unless it cannot.
    pub order: Option<DayOrder>,
    /// The species meant by a name.
    pub find: &'a dyn Fn(&str) -> Option<SpeciesKey>,
    /// The plants that are called so, where it is not one.
    pub several: &'a dyn Fn(&str) -> Vec<SpeciesKey>,
    /// The nearest names of species to one that nobody knows.
    pub nearest: &'a dyn Fn(&str) -> Vec<String>,
    /// The variety or graft that stands beside the name of a species.
    pub variety: &'a dyn Fn(&str, &SpeciesKey) -> Option<String>,
    /// Names of the book that a new one of a place or of a container may be meant for; none where a person says that it is new.
    pub near: &'a dyn Fn(bool, &str) -> Vec<String>,
    /// The usual distance between rows and in the row of a species, m.
    pub spacing: &'a dyn Fn(&SpeciesKey) -> Option<(f64, f64)>,
    /// Kinds of container whose volume is known.
    pub containers: &'a [String],
    /// Places whose shade is known.
    pub places: &'a [String],
    /// Whether the book has a tray, or a bed, of this name already.
    pub in_the_book: &'a dyn Fn(&str) -> bool,
    /// What the book has of the weather of a day, by the names of its fields.
    pub weather: &'a dyn Fn(Day) -> Vec<(&'static str, f64)>,
}

/// Days of a sheet of weather of which nothing is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Gap {
    /// The line of the day before.
    pub line: usize,
    /// The first.
    pub from: Day,
    /// The last.
    pub until: Day,
}

/// The order of day and month, where the days of a sheet do not all say it themselves.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OrderTaken {
    /// The order.
    pub order: DayOrder,
    /// The line and the day that showed it; none where the language or custom decides.
    pub shown_by: Option<(usize, String)>,
    /// Every other day that the other order would give differently, once each: its first line, what is written, how it
    /// was read.
    pub so_read: Vec<(usize, String, Day)>,
}

/// A name in the sheet and the species it was taken for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NameTaken {
    /// What is written.
    pub written: String,
    /// The species; none where nobody knows the name.
    pub species: Option<SpeciesKey>,
    /// In how many rows.
    pub rows: usize,
}

/// A row that is no tray and no bed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Total {
    /// Its line.
    pub line: usize,
    /// What it says.
    pub written: Option<u32>,
    /// What the rows above it sum up to.
    pub counted: u32,
}

/// What something in a cell was taken for, where that is not plain.
#[derive(Clone, Debug, PartialEq)]
pub enum TakenFor {
    /// A day whose order of day and month was not plain.
    Day(Day),
    /// A day that is only about then.
    AboutDay(Day),
    /// An age in days, from a span in weeks, months or years.
    AgeDays(u32),
    /// A count, from one in which a sign parts the thousands.
    Count(u32),
    /// A count that is only about so many.
    AboutCount(u32),
    /// Percent, from a share of one.
    Percent(f64),
    /// The field that a bed lies in where the sheet does not say.
    Field(&'static str),
    /// The usual spacing of the species, m, where the sheet does not say.
    Spacing {
        /// Between rows.
        row_m: f64,
        /// In the row.
        in_row_m: f64,
    },
    /// The volume of a bag, ml, from its name.
    VolumeMl(f64),
}

/// A cell that was understood in one of several ways: the person is to be told.
#[derive(Clone, Debug, PartialEq)]
pub struct Understood {
    /// The line, from 1.
    pub line: usize,
    /// The column as its name was written; none where there is none.
    pub column: Option<String>,
    /// What was written.
    pub written: String,
    /// What it was taken for.
    pub taken: TakenFor,
}

/// Something the sheet does not tell and the verdict will ask for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum UnknownWhat {
    /// The volume of a kind of container.
    ContainerVolume,
    /// The container a tray's plants stand in.
    Container,
    /// The age of a tray's plants.
    Age,
    /// The least days of a species, without which no age holds a tray back.
    LeastDays,
    /// The shade of a place.
    PlaceShade,
    /// Where a tray stands, and so its light.
    Place,
    /// The height and collar of the plants: never measured.
    Measured,
    /// The shade a species stands at planting out: its profile has none.
    SpeciesShade,
    /// How long a container holds a species: its profile does not say.
    SpeciesMostDays,
    /// The light in a bed: never read.
    BedLight,
    /// The ground of a bed: never checked.
    BedSoil,
    /// The work done in a bed: nothing is written.
    BedWork,
    /// How many nurse plants stand: they are not entered.
    NurseCount,
    /// When nurse plants were planted: they are not entered.
    NursePlanted,
    /// How far apart nurse plants stand: they are not entered.
    NurseSpacing,
    /// What sickness or pest the notes of a tray speak of: they are kept as written, and hold nothing back.
    NotedSickness,
    /// What was used on a tray by its notes: they are kept as written, and make nobody wait.
    NotedUse,
}

impl UnknownWhat {
    /// The kind of entry that settles it.
    pub fn settled_by(self) -> &'static str {
        match self {
            UnknownWhat::ContainerVolume => "container_set",
            UnknownWhat::Container | UnknownWhat::Age => "plants_received",
            UnknownWhat::LeastDays => "species_set",
            UnknownWhat::PlaceShade => "place_set",
            UnknownWhat::Place => "carried",
            UnknownWhat::Measured => "measured",
            UnknownWhat::SpeciesShade | UnknownWhat::SpeciesMostDays => "species_set",
            UnknownWhat::BedLight => "light_read",
            UnknownWhat::BedSoil => "soil_checked",
            UnknownWhat::BedWork => "prepared",
            UnknownWhat::NurseCount | UnknownWhat::NursePlanted | UnknownWhat::NurseSpacing => "nurse_planted",
            UnknownWhat::NotedSickness => "pest_seen",
            UnknownWhat::NotedUse => "treated",
        }
    }
}

/// What is unknown, and of how many trays or beds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unknown {
    /// What.
    pub what: UnknownWhat,
    /// Of which container, place, species, nurse plant or tray, where it is one of them.
    pub name: Option<String>,
    /// The lines of the trays or beds.
    pub lines: Vec<usize>,
}

/// A sheet as drafts, and what is to be told about it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct FirstDay {
    /// Each with the line of its row; a row may give several.
    pub drafts: Vec<(usize, Draft)>,
    /// How many rows were read.
    pub rows: usize,
    /// What was understood in one of several ways.
    pub understood: Vec<Understood>,
    /// Columns that mean nothing here.
    pub passed_over: Vec<ColumnPassedOver>,
    /// What the sheet does not tell.
    pub unknowns: Vec<Unknown>,
    /// The columns that mean something.
    pub columns: Vec<ColumnTaken>,
    /// The names of species.
    pub names: Vec<NameTaken>,
    /// The order of day and month, where it was not plain.
    pub order: Option<OrderTaken>,
    /// A row of totals at the end, which is passed over.
    pub total: Option<Total>,
    /// Days of weather of which nothing is told.
    pub gaps: Vec<Gap>,
    /// Names of bags and places by their folded form, as they were first spelled.
    spelled: BTreeMap<(SpellingOf, String), String>,
    /// Bags whose volume is written.
    volumes: BTreeSet<String>,
}

/// What a name in a sheet is of, where its spelling is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum SpellingOf {
    Container,
    Place,
}

/// Names of species, and days read in one of two orders, that are told; no nursery has as many.
const MOST_NAMES_TOLD: usize = 500;

impl FirstDay {
    fn note_name(&mut self, written: &str, species: Option<&SpeciesKey>) {
        let more_are_told = self.names.len() < MOST_NAMES_TOLD;
        match self.names.iter_mut().find(|one| one.written == written) {
            Some(one) => one.rows += 1,
            None if more_are_told => {
                self.names.push(NameTaken { written: written.to_string(), species: species.cloned(), rows: 1 });
            }
            None => {}
        }
    }

    /// Notes something unknown of a tray or bed by its line.
    pub fn note_unknown(&mut self, what: UnknownWhat, name: Option<&str>, line: usize) {
        let same = self.unknowns.iter_mut().find(|one| one.what == what && one.name.as_deref() == name);
        match same {
            Some(one) => one.lines.push(line),
            None => self.unknowns.push(Unknown { what, name: name.map(str::to_string), lines: vec![line] }),
        }
    }
}
