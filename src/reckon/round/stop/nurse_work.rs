//! What is due on nurse plants, with its numbers.

use crate::base::{Day, SpeciesKey};
use crate::reckon::picture::quantity::ShadeEnd;

/// Work on the nurse plants of a bed.
#[derive(Clone, PartialEq, Debug)]
pub enum NurseWork {
    /// Bunches that show are ripe.
    Bunches {
        /// Of which nurse plant.
        nurse: SpeciesKey,
        /// How many showed.
        bunches: u32,
        /// About when they are ripe.
        about: Day,
    },
    /// Tubers turn to wood.
    Tubers {
        /// Of which nurse plant.
        nurse: SpeciesKey,
        /// How many plants.
        plants: u32,
        /// The end of their time.
        until: Day,
        /// Open positions whose ground that loosens.
        loosens: Option<u32>,
    },
    /// Too dark for a species of which a tray comes.
    TooDark {
        /// Which.
        species: SpeciesKey,
        /// The light, a share of the open light.
        light: f64,
        /// The least that it needs.
        least: f64,
        /// The largest share of the shade that may go at one time.
        at_once: f64,
    },
    /// Shade that is needed ends by age: the next nurse plants are to be set.
    SetNext(ShadeEnd),
    /// They are past their life.
    PastLife {
        /// Which.
        nurse: SpeciesKey,
        /// How many.
        plants: u32,
        /// Since when.
        ended: Day,
    },
}
