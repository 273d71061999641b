//! Everything that can be written down, kind by kind.

mod book;
mod facts;
mod form;
mod ground;
mod kinds;
mod seed;
mod site;
pub mod subject;
mod tray;

pub(crate) use form::{fault, fields, rules};
pub use form::{in_spanish, reading, shape, types};

pub use book::*;
pub use facts::KindFacts;
pub use ground::*;
pub use seed::*;
pub use site::*;
pub use subject::AboutFields;
pub use tray::*;

use serde_json::{Map, Value};
use std::sync::Arc;

use crate::base::{Clock, Day, EntryId, Moment};
use shape::Field;

/// A kind of entry: its name in files, its fields, and what else is known of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KindOfEntry {
    /// Name in files.
    pub kind: &'static str,
    /// Fields.
    pub fields: &'static [Field],
    /// What is known of it besides.
    pub facts: KindFacts,
}

/// What an entry says.
#[derive(Clone, PartialEq, Debug)]
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
    /// Its kind; none of one that a newer version wrote.
    pub fn of_kind(&self) -> Option<&'static KindOfEntry> {
        match self {
            What::Site(entry) => Some(entry.of_kind()),
            What::Seed(entry) => Some(entry.of_kind()),
            What::Tray(entry) => Some(entry.of_kind()),
            What::Ground(entry) => Some(entry.of_kind()),
            What::Book(entry) => Some(entry.of_kind()),
            What::Foreign { .. } => None,
        }
    }

    /// What is known of its kind; nothing of one that a newer version wrote.
    pub fn facts(&self) -> Option<&'static KindFacts> {
        self.of_kind().map(|known| &known.facts)
    }

    /// The kind's name in files.
    pub fn kind(&self) -> &str {
        match self {
            What::Foreign { kind, .. } => kind,
            What::Site(_) | What::Seed(_) | What::Tray(_) | What::Ground(_) | What::Book(_) => {
                self.of_kind().map_or("", |known| known.kind)
            }
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

/// Minutes since midnight at which an entry without a time of day is taken to have happened.
pub fn nominal_minutes(what: &What) -> u16 {
    /// A kind of a newer version: with the looks.
    const UNKNOWN_KIND: u16 = 10 * 60;
    what.facts().map_or(UNKNOWN_KIND, |facts| facts.hour)
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

/// A kind by its name, in either language; blanks, hyphens, underscores and case do not count.
pub fn kind_of_entry(name: &str) -> Option<&'static KindOfEntry> {
    if let Some(known) = all_kinds().find(|known| known.kind == name) {
        return Some(known);
    }
    let wanted = crate::base::text::folded(name);
    let in_spanish = in_spanish::kind_of_spanish(&wanted);
    all_kinds().find(|known| in_spanish == Some(known.kind) || crate::base::text::folded(known.kind) == wanted)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_entry_takes_the_room_of_what_it_says_and_not_of_the_longest_kind() {
        assert!(size_of::<Entry>() <= 112, "{} bytes", size_of::<Entry>());
        assert!(size_of::<Counted>() * 3 < size_of::<BedSet>(), "{} {}", size_of::<Counted>(), size_of::<BedSet>());
    }
}
