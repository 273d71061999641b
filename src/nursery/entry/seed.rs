//! Seed: lots received, kept, counted and tested.

use super::facts::{BEGINS, KindFacts};
use super::rules::BodyRule::{NoMoreThan, NotEmpty, OneOf};
use super::rules::PartOf;
use super::types::{Celsius, Count, Kept, NotNegative, Percent, Text};
use crate::base::{Day, LotCode, SpeciesKey};
use crate::{kinds, records};

records! {
    /// One replicate of a germination test.
    Replicate {
        /// Seeds laid out.
        seeds: Count,
        /// Seeds that germinated.
        germinated: Count,
    }
}

/// No more germinated in a replicate than was laid out.
const GERMINATED: PartOf = PartOf { list: "replicates", part: "germinated", whole: "seeds", times: 1.0 };

kinds! {
    /// What happens to seed.
    SeedEntry;
    /// A seed lot.
    LotReceived "lot_received", KindFacts {
        affects_descendants: true,
        rules: &[OneOf("seeds / fruits + seeds_per_fruit / mass_g")],
        ..BEGINS
    } => {
        /// The lot.
        lot: LotCode,
        /// The species.
        species: SpeciesKey,
        /// Its variety, clone or line: a note, no figure hangs on it.
        variety: Option<Text>,
        /// The mother tree or stand.
        source: Text,
        /// The day it was collected.
        collected: Day,
        /// Seeds.
        seeds: Option<Count>,
        /// Fruits.
        fruits: Option<Count>,
        /// Seeds in a fruit.
        seeds_per_fruit: Option<NotNegative>,
        /// Weight, g.
        mass_g: Option<NotNegative>,
        /// Seeds in a kilogram.
        seeds_per_kg: Option<NotNegative>,
        /// How it is kept.
        kept: Kept,
        /// Moisture, percent of fresh weight.
        moisture_pct: Option<Percent>,
        /// Temperature of the store, C.
        store_c: Option<Celsius>,
        /// Viability on arrival, percent.
        initial_pct: Option<Percent>,
    }
    /// Handled or stored another way: a new clock of life from that day.
    LotKept "lot_kept", BEGINS => {
        /// The lot.
        lot: LotCode,
        /// How it is kept.
        kept: Kept,
        /// Moisture, percent of fresh weight.
        moisture_pct: Option<Percent>,
        /// Temperature of the store, C.
        store_c: Option<Celsius>,
    }
    /// What is really left.
    LotCounted "lot_counted", KindFacts { rules: &[OneOf("seeds / mass_g")], ..BEGINS } => {
        /// The lot.
        lot: LotCode,
        /// Seeds.
        seeds: Option<Count>,
        /// Weight, g.
        mass_g: Option<NotNegative>,
    }
    /// A germination test.
    LotTested "lot_tested", KindFacts { rules: &[NotEmpty("replicates"), NoMoreThan(GERMINATED)], ..BEGINS } => {
        /// The lot.
        lot: LotCode,
        /// The replicates.
        replicates: Vec<Replicate>,
        /// Days the test ran.
        days: Count,
    }
}
