//! What an entry is about: the trays, lots, beds and places whose story it belongs to.

use super::What;
use super::facts::AboutFields;
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
