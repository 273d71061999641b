//! Everything that can be written down, kind by kind.

mod book;
mod form;
mod ground;
mod kinds;
mod seed;
mod site;
pub mod subject;
mod tray;

pub use form::{fault, fields, reading, rules, shape, types};

pub use book::{BookEntry, Noted, Weather, Withdrawn};
pub use ground::{
    GroundEntry, LightPair, LightRead, NurseCounted, NurseCut, NurseMeasured, NursePlanted, Outplanted, PlantsFound,
    PlantsLost, Prepared, SoilChecked, SownInBed, SurvivalCounted,
};
pub use seed::{LotCounted, LotKept, LotReceived, LotTested, Replicate, SeedEntry};
pub use site::{
    BedSet, ContainerSet, FieldSet, NurserySet, PlaceSet, PlanLine, PositionsBlocked, Rains, SeasonSet, SiteEntry,
    SpeciesSet,
};
pub use tray::{
    Carried, Counted, Culled, Flushed, GivenOut, HardeningBegun, Held, LetGo, Lost, Measured, MeasuredPlant, MovedOn,
    PestSeen, PlantsReceived, PlugChecked, Relabelled, Released, Resown, ShadeSet, Sown, Stocktaken, TrayEntry,
    Treated, WateringSet,
};

use serde_json::{Map, Value};
use std::sync::Arc;

use crate::base::{Clock, Day, EntryId, Moment};
use shape::Field;

/// A kind of entry: its name in files and its fields.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KindOfEntry {
    /// Name in files.
    pub kind: &'static str,
    /// Fields.
    pub fields: &'static [Field],
}

/// What an entry says.
#[derive(Clone, PartialEq, Debug)]
#[allow(clippy::large_enum_variant)]
pub enum What {
    /// What describes the site.
    Site(SiteEntry),
    /// Seed.
    Seed(SeedEntry),
    /// Trays.
    Tray(TrayEntry),
    /// The field.
    Ground(GroundEntry),
    /// The book.
    Book(BookEntry),
    /// A kind that a newer version wrote; kept and passed on.
    Foreign {
        /// Its kind.
        kind: Arc<str>,
        /// Its body.
        body: Value,
    },
}

macro_rules! into_what {
    ($($group:ident => $variant:ident;)*) => {$(
        impl From<$group> for What {
            fn from(entry: $group) -> What { What::$variant(entry) }
        }
    )*};
}

into_what! { SiteEntry => Site; SeedEntry => Seed; TrayEntry => Tray; GroundEntry => Ground; BookEntry => Book; }

impl What {
    /// The kind's name in files.
    pub fn kind(&self) -> &str {
        match self {
            What::Site(entry) => entry.kind(),
            What::Seed(entry) => entry.kind(),
            What::Tray(entry) => entry.kind(),
            What::Ground(entry) => entry.kind(),
            What::Book(entry) => entry.kind(),
            What::Foreign { kind, .. } => kind,
        }
    }

    /// The body as it is stored: absent fields left out.
    pub fn body(&self) -> Map<String, Value> {
        let mut body = match self {
            What::Site(entry) => entry.body(),
            What::Seed(entry) => entry.body(),
            What::Tray(entry) => entry.body(),
            What::Ground(entry) => entry.body(),
            What::Book(entry) => entry.body(),
            What::Foreign { body, .. } => body.clone(),
        };
        if !matches!(self, What::Foreign { .. }) {
            strip_absent(&mut body);
        }
        match body {
            Value::Object(map) => map,
            _ => Map::new(),
        }
    }
}

fn strip_absent(value: &mut Value) {
    match value {
        Value::Object(map) => {
            map.retain(|_, inner| !inner.is_null());
            map.values_mut().for_each(strip_absent);
        }
        Value::Array(items) => items.iter_mut().for_each(strip_absent),
        Value::Null | Value::Bool(_) | Value::Number(_) | Value::String(_) => {}
    }
}

/// One line of the journal in memory.
#[derive(Clone, PartialEq, Debug)]
pub struct Entry {
    /// Who it is.
    pub id: EntryId,
    /// The day the person means.
    pub happened: Day,
    /// The time of day, where known.
    pub clock: Option<Clock>,
    /// When the book learned it.
    pub recorded: Moment,
    /// Who wrote it.
    pub who: Arc<str>,
    /// The first number of the command that wrote it.
    pub command: u64,
    /// What it says.
    pub what: What,
}

/// Minutes since midnight at which an entry without a time of day is taken to have happened, so that a day's entries
/// fall in the order of the work: what describes, seed and arrivals; losses; counts; other looks; moves and plantings.
pub fn nominal_minutes(what: &What) -> u16 {
    const DESCRIBES: u16 = 0;
    const LOSSES: u16 = 6 * 60;
    const COUNTS: u16 = 8 * 60;
    const LOOKS: u16 = 10 * 60;
    const MOVES: u16 = 16 * 60;
    const LAST: u16 = 18 * 60;
    match what {
        What::Site(_) | What::Seed(_) => DESCRIBES,
        What::Tray(entry) => match entry {
            TrayEntry::Sown(_) | TrayEntry::Resown(_) | TrayEntry::PlantsReceived(_) | TrayEntry::Relabelled(_) => {
                DESCRIBES
            }
            TrayEntry::Lost(_) | TrayEntry::Culled(_) => LOSSES,
            TrayEntry::Counted(_) | TrayEntry::Stocktaken(_) => COUNTS,
            TrayEntry::Carried(_)
            | TrayEntry::Measured(_)
            | TrayEntry::PlugChecked(_)
            | TrayEntry::Flushed(_)
            | TrayEntry::ShadeSet(_)
            | TrayEntry::WateringSet(_)
            | TrayEntry::HardeningBegun(_)
            | TrayEntry::Held(_)
            | TrayEntry::Released(_)
            | TrayEntry::PestSeen(_)
            | TrayEntry::Treated(_)
            | TrayEntry::LetGo(_) => LOOKS,
            TrayEntry::MovedOn(_) | TrayEntry::GivenOut(_) => MOVES,
        },
        What::Ground(entry) => match entry {
            GroundEntry::SownInBed(_) | GroundEntry::PlantsFound(_) | GroundEntry::NursePlanted(_) => DESCRIBES,
            // What died on the day it was planted died after the planting.
            GroundEntry::PlantsLost(_) => LAST,
            GroundEntry::NurseCounted(_) | GroundEntry::SurvivalCounted(_) => COUNTS,
            GroundEntry::NurseMeasured(_)
            | GroundEntry::NurseCut(_)
            | GroundEntry::LightRead(_)
            | GroundEntry::SoilChecked(_)
            | GroundEntry::Prepared(_) => LOOKS,
            GroundEntry::Outplanted(_) => MOVES,
        },
        What::Book(_) | What::Foreign { .. } => LOOKS,
    }
}

/// The place of an entry in the order of things: happened, time of day, recorded, device, number.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub struct OrderKey {
    /// The day.
    pub happened: Day,
    /// Minutes since midnight, written or nominal.
    pub minutes: u16,
    /// When the book learned it.
    pub recorded: Moment,
    /// Who it is.
    pub id: EntryId,
}

impl Entry {
    /// Its place in the order of things.
    pub fn order_key(&self) -> OrderKey {
        OrderKey { happened: self.happened, minutes: self.minutes(), recorded: self.recorded, id: self.id.clone() }
    }

    /// Minutes since midnight, written or nominal.
    pub fn minutes(&self) -> u16 {
        self.clock.map_or_else(|| nominal_minutes(&self.what), Clock::minutes)
    }
}

/// Every kind that can be written down.
pub fn all_kinds() -> impl Iterator<Item = &'static KindOfEntry> {
    SiteEntry::KINDS
        .iter()
        .chain(SeedEntry::KINDS)
        .chain(TrayEntry::KINDS)
        .chain(GroundEntry::KINDS)
        .chain(BookEntry::KINDS)
}

/// A kind by its name; blanks, hyphens, underscores and case do not count.
pub fn kind_of_entry(name: &str) -> Option<&'static KindOfEntry> {
    if let Some(known) = all_kinds().find(|known| known.kind == name) {
        return Some(known);
    }
    let wanted = crate::base::text::folded(name);
    all_kinds().find(|known| crate::base::text::folded(known.kind) == wanted)
}
