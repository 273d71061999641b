//! Where plants were together before a sickness was seen.

use crate::base::{BedName, Day, TrayCode};

/// Plants that were together with those of a tray before a sickness was seen there.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct OutOf {
    /// That tray.
    pub tray: TrayCode,
    /// How many came out of it.
    pub plants: u32,
    /// The day on which they parted.
    pub left: Day,
    /// Whether they came out of one tray both, and not one out of the other.
    pub together: bool,
    /// The bed in which it was seen, where that tray is only the one its plants came out of.
    pub bed: Option<BedName>,
}
