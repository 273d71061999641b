//! Trays: into them, on the walk, and out of them.

use super::facts::{BEGINS, COMES_IN, COUNT, KindFacts, LOOK, LOSS, MOVE};
use super::rules::BodyRule::{AtMost, Differ, NotEmpty, OneOf, OnlyOneOf};
use super::subject::AboutFields;
use super::types::{
    ArrivedFrom, Collar, Count, MovedHow, NotNegative, Percent, PlantForm, Roots, SeedlingHeight, Size, Text,
};
use crate::base::{BedName, ContainerName, Day, LotCode, PlaceName, SpeciesKey, TrayCode};
use crate::{kinds, records};

records! {
    /// One plant of a sample.
    MeasuredPlant {
        /// Height, cm.
        height_cm: SeedlingHeight,
        /// Root-collar diameter, mm.
        collar_mm: Option<Collar>,
        /// Leaf pairs (or leaves where the species' rule counts leaves).
        leaf_pairs: Option<NotNegative>,
        /// Single leaves, whatever the species' rule counts.
        leaves: Option<NotNegative>,
    }
}

/// No plant in a nursery is older, days: a hundred years (ours: beyond it is a slip of the pen).
const OLDEST_DAYS: f64 = 36_525.0;
/// No treatment works longer, days: ten years (ours: beyond it is a slip of the pen).
pub(crate) const LONGEST_WAIT_DAYS: f64 = 3_653.0;

kinds! {
    /// What happens to trays.
    TrayEntry;
    /// Seed into a tray.
    Sown "sown", KindFacts {
        about: AboutFields::Only(&["tray", "lot"]),
        affects_descendants: true,
        rules: &[OneOf("seeds / mass_g")],
        ..BEGINS
    } => {
        /// The tray, new.
        tray: TrayCode,
        /// The lot, or "unknown".
        lot: LotCode,
        /// Seeds.
        seeds: Option<Count>,
        /// Weight, g.
        mass_g: Option<NotNegative>,
        /// The species, where the lot is unknown.
        species: Option<SpeciesKey>,
        /// The kind of container.
        container: ContainerName,
        /// Places for seedlings in this tray.
        cells: Option<Count>,
        /// Where it stands.
        place: Option<PlaceName>,
        /// The physical tray it is a part of.
        share_of: Option<Text>,
        /// A shape and a number of dots.
        sign: Option<Text>,
    }
    /// Gaps sown again.
    Resown "resown", KindFacts { affects_descendants: true, ..COMES_IN } => {
        /// The tray.
        tray: TrayCode,
        /// The lot.
        lot: LotCode,
        /// Seeds.
        seeds: Count,
    }
    /// Plants that did not come from our seed.
    PlantsReceived "plants_received", KindFacts {
        about: AboutFields::Only(&["tray"]),
        affects_descendants: true,
        rules: &[AtMost("age_days", OLDEST_DAYS)],
        ..BEGINS
    } => {
        /// The tray, new.
        tray: TrayCode,
        /// The species.
        species: SpeciesKey,
        /// Their variety, clone or line: a note, no figure hangs on it.
        variety: Option<Text>,
        /// How many.
        count: Count,
        /// Where they come from.
        from: ArrivedFrom,
        /// The form they come in.
        form: PlantForm,
        /// Days since they were sown or struck.
        age_days: Option<Count>,
        /// Height, cm.
        height_cm: Option<Size>,
        /// The kind of container.
        container: Option<ContainerName>,
        /// Where the tray stands.
        place: Option<PlaceName>,
        /// The seller, mother tree or stand.
        source: Option<Text>,
        /// Shade they stood in until now, percent.
        shade_now_pct: Option<Percent>,
        /// The last day they can be planted (bare roots, stumps).
        good_until: Option<Day>,
        /// Whether bare roots lie heeled in, cool and moist.
        heeled_in: Option<bool>,
        /// Since when they have stood in the light they stand in.
        stands_since: Option<Day>,
        /// A shape and a number of dots.
        sign: Option<Text>,
    }
    /// Live seedlings standing now.
    Counted "counted", COUNT => {
        /// The tray.
        tray: TrayCode,
        /// Standing.
        standing: Count,
        /// Found dead at this look.
        dead: Option<Count>,
        /// Whether it is only about so many.
        about: Option<bool>,
        /// Cells looked at, where not all were.
        cells_seen: Option<Count>,
        /// Cells with at least one seedling.
        cells_filled: Option<Count>,
    }
    /// Died, by cause.
    Lost "lost", KindFacts { affects_descendants: true, ..LOSS } => {
        /// The tray.
        tray: TrayCode,
        /// How many.
        count: Count,
        /// Of what.
        cause: Text,
    }
    /// Thrown out at grading, or thinned.
    Culled "culled", KindFacts { affects_descendants: true, ..LOSS } => {
        /// The tray.
        tray: TrayCode,
        /// How many.
        count: Count,
        /// Why.
        why: Text,
    }
    /// Seedlings into another tray, made if new.
    MovedOn "moved_on", KindFacts {
        about: AboutFields::Only(&["from", "to"]),
        affects_descendants: true,
        rules: &[Differ("from", "to")],
        ..MOVE
    } => {
        /// From this tray.
        from: TrayCode,
        /// Into this tray.
        to: TrayCode,
        /// How many.
        count: Count,
        /// How.
        how: MovedHow,
        /// The kind of container of the new tray.
        container: Option<ContainerName>,
        /// Places for seedlings in the new tray.
        cells: Option<Count>,
        /// Where the new tray stands.
        place: Option<PlaceName>,
    }
    /// The whole tray to another place.
    Carried "carried", KindFacts { about: AboutFields::Only(&["tray"]), affects_descendants: true, ..LOOK } => {
        /// The tray.
        tray: TrayCode,
        /// Where to.
        place: PlaceName,
    }
    /// A sample.
    Measured "measured", KindFacts { rules: &[NotEmpty("plants")], ..LOOK } => {
        /// The tray.
        tray: TrayCode,
        /// The plants.
        plants: Vec<MeasuredPlant>,
    }
    /// One plug lifted.
    PlugChecked "plug_checked", KindFacts { affects_descendants: true, ..LOOK } => {
        /// The tray.
        tray: TrayCode,
        /// What the roots show.
        roots: Roots,
    }
    /// Circling roots cut; a larger container does not mend them.
    RootsCut "roots_cut", KindFacts { affects_descendants: true, ..LOOK } => {
        /// The tray.
        tray: TrayCode,
        /// Of how many plants, where not of all that stand.
        count: Option<Count>,
    }
    /// Grafted or budded, on the day it was done.
    Grafted "grafted", KindFacts { affects_descendants: true, ..LOOK } => {
        /// The tray.
        tray: TrayCode,
        /// How many plants.
        count: Count,
        /// What they are the stock of: its species, variety or lot.
        rootstock: Option<Text>,
        /// The variety they are from now on.
        variety: Option<Text>,
    }
    /// Soft new leaves: hardening waits.
    Flushed "flushed", KindFacts { affects_descendants: true, ..LOOK } => {
        /// The tray.
        tray: TrayCode,
    }
    /// A step of the shade.
    ShadeSet "shade_set", KindFacts { rules: &[OnlyOneOf("tray / place")], affects_descendants: true, ..LOOK } => {
        /// The tray.
        tray: Option<TrayCode>,
        /// Or the place.
        place: Option<PlaceName>,
        /// Shade, percent.
        shade_pct: Percent,
    }
    /// A step of the water.
    WateringSet "watering_set", KindFacts { rules: &[OnlyOneOf("tray / place")], ..LOOK } => {
        /// The tray.
        tray: Option<TrayCode>,
        /// Or the place.
        place: Option<PlaceName>,
        /// Water every so many days.
        every_days: Size,
    }
    /// Hardening, said aloud.
    HardeningBegun "hardening_begun", KindFacts { about: AboutFields::Only(&["tray"]), ..LOOK } => {
        /// The tray.
        tray: TrayCode,
        /// For which bed.
        for_bed: Option<BedName>,
    }
    /// Sick, promised, quarantined.
    Held "held", KindFacts { rules: &[OnlyOneOf("tray / lot / place / bed")], affects_descendants: true, ..LOOK } => {
        /// The tray.
        tray: Option<TrayCode>,
        /// Or the lot.
        lot: Option<LotCode>,
        /// Or the place.
        place: Option<PlaceName>,
        /// Or the bed.
        bed: Option<BedName>,
        /// Why.
        why: Text,
        /// Until this day.
        until: Option<Day>,
    }
    /// No longer held.
    Released "released", KindFacts { rules: &[OnlyOneOf("tray / lot / place / bed")], affects_descendants: true, ..LOOK } => {
        /// The tray.
        tray: Option<TrayCode>,
        /// Or the lot.
        lot: Option<LotCode>,
        /// Or the place.
        place: Option<PlaceName>,
        /// Or the bed.
        bed: Option<BedName>,
        /// Why.
        why: Option<Text>,
    }
    /// A pest or a sickness seen.
    PestSeen "pest_seen", KindFacts {
        affects_descendants: true,
        rules: &[OnlyOneOf("tray / bed / place")],
        ..LOOK
    } => {
        /// The tray.
        tray: Option<TrayCode>,
        /// Or the bed.
        bed: Option<BedName>,
        /// Or the place.
        place: Option<PlaceName>,
        /// What.
        what: Text,
        /// Share of plants, percent; 0 where a look found it gone.
        share_pct: Option<Percent>,
        /// Whether it goes along with plants, where its name does not say it.
        spreads: Option<bool>,
        /// Plants looked at.
        plants_seen: Option<Count>,
        /// Whether their roots were looked at.
        roots_seen: Option<bool>,
    }
    /// Treated with something.
    Treated "treated", KindFacts {
        affects_descendants: true,
        rules: &[OnlyOneOf("tray / bed / place"), AtMost("safe_after_days", LONGEST_WAIT_DAYS), AtMost("plant_after_days", LONGEST_WAIT_DAYS)],
        ..LOOK
    } => {
        /// The tray.
        tray: Option<TrayCode>,
        /// Or the bed.
        bed: Option<BedName>,
        /// Or the place.
        place: Option<PlaceName>,
        /// With what.
        with: Text,
        /// Days until it is safe to work with.
        safe_after_days: Option<NotNegative>,
        /// Days until what was treated may be planted.
        plant_after_days: Option<NotNegative>,
    }
    /// A recount that settles the books.
    Stocktaken "stocktaken", COUNT => {
        /// The tray.
        tray: TrayCode,
        /// Standing.
        standing: Count,
    }
    /// Sold or given.
    GivenOut "given_out", MOVE => {
        /// The tray.
        tray: TrayCode,
        /// How many.
        count: Count,
        /// To whom.
        to: Text,
    }
    /// A lost or changed label.
    Relabelled "relabelled", KindFacts { affects_descendants: true, ..COMES_IN } => {
        /// The code from now on.
        tray: TrayCode,
        /// The code before.
        was: Option<TrayCode>,
    }
    /// A due task that will not be done.
    LetGo "let_go", KindFacts { about: AboutFields::Site, rules: &[OneOf("until / never")], ..LOOK } => {
        /// The task.
        task: Text,
        /// Until this day.
        until: Option<Day>,
        /// For good.
        never: Option<bool>,
        /// Why.
        why: Option<Text>,
    }
}
