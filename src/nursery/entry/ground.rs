//! The field: nurse plants, light, soil, ground work, plants in the ground.

use super::facts::{COMES_IN, COUNT_IN_BED, KindFacts, LAST, LOOK, MOVE};
use super::rules::BodyRule::{NoMoreThan, NotEmpty, OneOf, OnlyOneOf, Together};
use super::rules::{BodyRule, PartOf};
use super::subject::AboutFields;
use super::types::{Count, CutWhat, GroundTask, NotNegative, ShareOfOne, Size, Sky, SoilWhere, Spot, Text, Tubers};
use crate::base::{BedName, Day, LotCode, PlaceName, SpeciesKey, TrayCode};
use crate::{kinds, records};

records! {
    /// Light under the shade and in the open at the same time.
    LightPair {
        /// At seedling height, lux.
        under_lux: NotNegative,
        /// In the open, lux.
        open_lux: Size,
    }
}

/// What a reading of the light must hold. Meters differ and clouds pass, but under leaves it is never twice as bright as in
/// the open.
const LIGHT_RULES: &[BodyRule] = &[
    OnlyOneOf("bed / place"),
    OneOf("readings / light_share"),
    NotEmpty("readings"),
    NoMoreThan(PartOf { list: "readings", part: "under_lux", whole: "open_lux", times: 2.0 }),
];

kinds! {
    /// What happens in the field.
    GroundEntry;
    /// Seed at stake.
    SownInBed "sown_in_bed", COMES_IN => {
        /// The bed.
        bed: BedName,
        /// The species.
        species: SpeciesKey,
        /// The lot.
        lot: Option<LotCode>,
        /// Seeds in a hole.
        seeds_per_hole: Count,
        /// Holes.
        holes: Count,
        /// Rows.
        rows: Option<Text>,
        /// Places.
        at: Option<Vec<Spot>>,
    }
    /// Trees already standing.
    PlantsFound "plants_found", COMES_IN => {
        /// The bed.
        bed: BedName,
        /// The species.
        species: SpeciesKey,
        /// Alive.
        alive: Count,
        /// Planted about.
        planted_about: Option<Day>,
        /// Rows.
        rows: Option<Text>,
        /// Places.
        at: Option<Vec<Spot>>,
    }
    /// Pioneers in; a later one is a new cohort.
    NursePlanted "nurse_planted", COMES_IN => {
        /// The bed.
        bed: BedName,
        /// The nurse plant.
        nurse: SpeciesKey,
        /// How many.
        count: Count,
        /// Distance between rows, m.
        row_m: Size,
        /// Distance in the row, m.
        in_row_m: Size,
        /// How far the first stands from the edges, m.
        offset_m: Option<NotNegative>,
        /// The lot.
        lot: Option<LotCode>,
        /// Rows.
        rows: Option<Text>,
        /// Places.
        at: Option<Vec<Spot>>,
    }
    /// Wind, borer, cattle; a bunch showing foretells the gap.
    NurseCounted "nurse_counted", COUNT_IN_BED => {
        /// The bed.
        bed: BedName,
        /// The nurse plant.
        nurse: SpeciesKey,
        /// Alive.
        alive: Count,
        /// Bunches showing.
        bunches_showing: Option<Count>,
        /// What killed the others.
        cause: Option<Text>,
        /// Rows.
        rows: Option<Text>,
        /// Places.
        at: Option<Vec<Spot>>,
    }
    /// A tape measure corrects the model.
    NurseMeasured "nurse_measured", LOOK => {
        /// The bed.
        bed: BedName,
        /// The nurse plant.
        nurse: SpeciesKey,
        /// Height, m.
        height_m: Size,
        /// Crown radius, m.
        crown_radius_m: Size,
        /// Rows.
        rows: Option<Text>,
        /// Places.
        at: Option<Vec<Spot>>,
    }
    /// Chop and drop, bunch cut, tubers lifted.
    NurseCut "nurse_cut", KindFacts { rules: &[OneOf("share / count")], ..LOOK } => {
        /// The bed.
        bed: BedName,
        /// The nurse plant.
        nurse: SpeciesKey,
        /// What is cut.
        what: CutWhat,
        /// Share of the leaves or plants, 0 to 1.
        share: Option<ShareOfOne>,
        /// Plants.
        count: Option<Count>,
        /// Yield, kg.
        yield_kg: Option<NotNegative>,
        /// Rows.
        rows: Option<Text>,
        /// Places.
        at: Option<Vec<Spot>>,
    }
    /// Light at seedling height.
    LightRead "light_read", KindFacts { rules: LIGHT_RULES, ..LOOK } => {
        /// The bed.
        bed: Option<BedName>,
        /// Or the place.
        place: Option<PlaceName>,
        /// Pairs of readings.
        readings: Option<Vec<LightPair>>,
        /// Or the share of the open light, 0 to 1.
        light_share: Option<ShareOfOne>,
        /// The sky.
        sky: Option<Sky>,
        /// Rows.
        rows: Option<Text>,
        /// Places.
        at: Option<Vec<Spot>>,
    }
    /// How hard the ground is.
    SoilChecked "soil_checked", KindFacts { rules: &[OneOf("resistance_mpa / rod_mm + push_kg / tubers / wet")], ..LOOK } => {
        /// The bed.
        bed: BedName,
        /// Resistance, MPa.
        resistance_mpa: Option<NotNegative>,
        /// Diameter of the rod, mm.
        rod_mm: Option<Size>,
        /// The push on the rod, kg on a scale.
        push_kg: Option<NotNegative>,
        /// The depth reached or read at, cm.
        depth_cm: Option<NotNegative>,
        /// Days since a soaking.
        days_since_soaking: Option<NotNegative>,
        /// Whether the ground is at field capacity.
        wet: Option<bool>,
        /// Where it was read: in the bottom of a hole, beside one, or in ground that nobody dug; unsaid = not dug.
        r#where: Option<SoilWhere>,
        /// The shape of lifted tubers.
        tubers: Option<Tubers>,
        /// Rows.
        rows: Option<Text>,
        /// Places.
        at: Option<Vec<Spot>>,
    }
    /// Young plants watered at the foot; it says nothing of the ground between them.
    PlantsWatered "plants_watered", LOOK => {
        /// The bed.
        bed: BedName,
        /// How many; unsaid = all young plants.
        count: Option<Count>,
        /// Litres that each got.
        litres_each: Option<Size>,
    }
    /// Ground work done.
    Prepared "prepared", LOOK => {
        /// The bed.
        bed: BedName,
        /// The work.
        task: GroundTask,
        /// Depth of holes, cm.
        depth_cm: Option<Size>,
        /// Rows.
        rows: Option<Text>,
        /// Places.
        at: Option<Vec<Spot>>,
    }
    /// Into the ground; of nurse plants, with the distances between them, a row of nurse plants.
    Outplanted "outplanted", KindFacts { rules: &[Together("row_m", "in_row_m")], ..MOVE } => {
        /// The tray.
        tray: TrayCode,
        /// The bed.
        bed: BedName,
        /// How many.
        count: Count,
        /// Distance between rows of nurse plants, m.
        row_m: Option<Size>,
        /// Distance of nurse plants in the row, m.
        in_row_m: Option<Size>,
        /// Rows.
        rows: Option<Text>,
        /// Places.
        at: Option<Vec<Spot>>,
    }
    /// Cattle, slashed, theft, fire, borer, drought, flood.
    PlantsLost "plants_lost", LAST => {
        /// The bed.
        bed: BedName,
        /// The species.
        species: SpeciesKey,
        /// How many.
        count: Count,
        /// Of what.
        cause: Text,
        /// Rows.
        rows: Option<Text>,
        /// Places.
        at: Option<Vec<Spot>>,
    }
    /// The living and the dead, at 1, 3, 6, 12 months.
    SurvivalCounted "survival_counted", KindFacts { about: AboutFields::Only(&["bed"]), ..COUNT_IN_BED } => {
        /// The bed.
        bed: BedName,
        /// The species.
        species: SpeciesKey,
        /// The tray they came from.
        tray: Option<TrayCode>,
        /// The day they went out.
        outplanted_on: Option<Day>,
        /// Alive.
        alive: Count,
        /// Dead.
        dead: Count,
        /// Of what the dead died.
        causes: Option<Text>,
        /// Rows.
        rows: Option<Text>,
        /// Places.
        at: Option<Vec<Spot>>,
    }
}
