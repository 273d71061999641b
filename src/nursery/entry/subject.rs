//! What an entry is about: the trays, lots, beds and places whose story it belongs to.

use super::What;
use crate::base::{BedName, LotCode, PlaceName, TrayCode};

/// Something with a story of its own.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Subject {
    /// A tray.
    Tray(TrayCode),
    /// A seed lot.
    Lot(LotCode),
    /// A bed.
    Bed(BedName),
    /// A place where trays stand.
    Place(PlaceName),
    /// The site: nursery, seasons, species, containers, fields, weather.
    Site,
}

/// Which fields of a kind name those whose story an entry belongs to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum AboutFields {
    /// Every field that holds the name of a tray, lot, bed or place.
    EveryName,
    /// These fields alone; other names are only mentioned.
    Only(&'static [&'static str]),
    /// No field: it is about the site.
    Site,
}

impl AboutFields {
    /// Whether an entry belongs to the story of what this field names.
    pub(crate) fn takes(&self, field: &str) -> bool {
        match self {
            AboutFields::EveryName => true,
            AboutFields::Only(fields) => fields.contains(&field),
            AboutFields::Site => false,
        }
    }
}

/// The lot named when nobody knows which it was.
pub const UNKNOWN_LOT: &str = "unknown";

/// Whether a lot's name says that nobody knows which it was.
pub fn is_unknown_lot(lot: &LotCode) -> bool {
    matches!(crate::base::text::folded(lot.as_str()).as_str(), "unknown" | "desconocido")
}

/// Every subject an entry belongs to; none for notes, withdrawals and kinds of a newer version.
pub fn subjects(what: &What) -> Vec<Subject> {
    let mut all = match what {
        What::Site(entry) => entry.named(),
        // A lot of any name can be received.
        What::Seed(entry) => return entry.named(),
        What::Tray(entry) => entry.named(),
        What::Ground(entry) => entry.named(),
        What::Book(entry) => entry.named(),
        What::Foreign { .. } => Vec::new(),
    };
    if what.facts().is_some_and(|facts| facts.about == AboutFields::Site) {
        all.push(Subject::Site);
    }
    all.retain(|subject| !matches!(subject, Subject::Lot(lot) if is_unknown_lot(lot)));
    all
}

/// Whether an entry hands something on to what comes of it: species, sowings, or where plants came from.
pub fn affects_descendants(what: &What) -> bool {
    what.facts().is_some_and(|facts| facts.affects_descendants)
}
