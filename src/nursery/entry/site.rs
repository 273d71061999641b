//! The site: the place, its seasons, its benches, bags, fields and beds.

use super::facts::{BEGINS, KindFacts};
use super::rules::BodyRule::{AtMost, LowestBelowHighest, NotEmpty, Together, TwelveMonths};
use super::subject::AboutFields;
use super::types::{
    Altitude, Bearing, BedEdges, Celsius, Count, Latitude, Longitude, MonthDay, NotNegative, OffsetHours, OpenRecord,
    Percent, PlantingPattern, ShareOfOne, Size, Slope, Spot, Text,
};
use crate::base::{BedName, ContainerName, FieldName, PlaceName, SpeciesKey};
use crate::{kinds, records};

records! {
    /// One rainy season, from and until a day of the year.
    Rains {
        /// First day, MM-DD.
        from: MonthDay,
        /// Last day, MM-DD.
        until: MonthDay,
    }
    /// What is to stand in a bed.
    PlanLine {
        /// The species.
        species: SpeciesKey,
        /// How the positions are laid out.
        pattern: PlantingPattern,
        /// Distance between rows, m.
        row_m: Size,
        /// Distance in the row, m.
        in_row_m: Size,
        /// How far the rows and places are moved away from the edges, m; with `row_offset_m` the places along the row alone.
        offset_m: Option<NotNegative>,
        /// How far the rows are moved, m.
        row_offset_m: Option<NotNegative>,
        /// The rows of its grid that it has: `1-3,7` or `every 3`; without it all.
        rows: Option<Text>,
        /// The share of its grid that it has, spread evenly; without it all.
        share: Option<ShareOfOne>,
        /// Whether it has its spots also where a wider spaced species would have them.
        keeps_spot: Option<bool>,
        /// Wide distance between pairs of rows, m.
        gap_m: Option<Size>,
    }
}

/// Minutes of a day: no walk is longer.
const MINUTES_OF_A_DAY: f64 = 24.0 * 60.0;

kinds! {
    /// What describes the site.
    SiteEntry;
    /// The place and what a day can do.
    NurserySet "nursery_set", KindFacts {
        about: AboutFields::Site,
        rules: &[AtMost("planting_days_per_week", 7.0), AtMost("walk_minutes", MINUTES_OF_A_DAY)],
        ..BEGINS
    } => {
        /// Name.
        name: Text,
        /// Latitude, degrees.
        latitude_deg: Latitude,
        /// Longitude, degrees.
        longitude_deg: Longitude,
        /// Altitude, m.
        altitude_m: Option<Altitude>,
        /// Hours ahead of UTC.
        utc_offset_h: OffsetHours,
        /// Plants that can be set in a day.
        plants_per_day: Option<Count>,
        /// Planting days in a week.
        planting_days_per_week: Option<Count>,
        /// Minutes a walk may take.
        walk_minutes: Option<Count>,
        /// Litres of water in a day.
        water_litres_per_day: Option<NotNegative>,
    }
    /// Usual rains and monthly normals.
    SeasonSet "season_set", KindFacts {
        about: AboutFields::Site,
        rules: &[TwelveMonths(&["rain_mm", "tmin_c", "tmax_c"]), LowestBelowHighest],
        ..BEGINS
    } => {
        /// The rainy seasons.
        rains: Vec<Rains>,
        /// Rain by month, mm.
        rain_mm: Option<Vec<NotNegative>>,
        /// Highest temperature by month, C.
        tmax_c: Option<Vec<Celsius>>,
        /// Lowest temperature by month, C.
        tmin_c: Option<Vec<Celsius>>,
    }
    /// The nursery's own figures over the built-in ones, or a new species.
    SpeciesSet "species_set", KindFacts { about: AboutFields::Site, ..BEGINS } => {
        /// The species.
        species: SpeciesKey,
        /// Any fields of a profile.
        profile: OpenRecord,
    }
    /// A bench or frame on the walking path.
    PlaceSet "place_set", BEGINS => {
        /// Its name.
        place: PlaceName,
        /// Its number on the walk.
        order: Count,
        /// Shade over it, percent.
        shade_pct: Percent,
        /// Trays it holds.
        holds_trays: Option<Count>,
        /// A shape and a number of dots, for those who do not read.
        sign: Option<Text>,
    }
    /// A kind of cell, bag or seedbed strip.
    ContainerSet "container_set", KindFacts { about: AboutFields::Site, ..BEGINS } => {
        /// Its name.
        container: ContainerName,
        /// Volume of one, ml.
        volume_ml: Size,
        /// Depth, cm.
        depth_cm: Option<Size>,
        /// Cells in one container.
        cells: Option<Count>,
    }
    /// A piece of land.
    FieldSet "field_set", KindFacts { about: AboutFields::Site, ..BEGINS } => {
        /// Its name.
        field: FieldName,
        /// Slope, percent.
        slope_pct: Option<Slope>,
        /// Texture of the soil.
        texture: Option<Text>,
    }
    /// A bed and what is to stand in it.
    BedSet "bed_set", KindFacts {
        rules: &[Together("slope_pct", "slope_bearing_deg"), Together("corner_lat_deg", "corner_lon_deg")],
        ..BEGINS
    } => {
        /// Its name.
        bed: BedName,
        /// The field it lies in.
        field: FieldName,
        /// Length, along which rows run, m.
        length_m: Size,
        /// Width, m.
        width_m: Size,
        /// Bearing of the rows, degrees from north.
        row_bearing_deg: Option<Bearing>,
        /// Where the first rows and places stand; an entry without it counts both edges.
        edges: Option<BedEdges>,
        /// What is to stand in it.
        plan: Vec<PlanLine>,
        /// Slope of its ground, percent.
        slope_pct: Option<Slope>,
        /// Where its ground falls to, degrees from north.
        slope_bearing_deg: Option<Bearing>,
        /// Latitude of the corner where rows and places begin; the bed lies to the left of its first row.
        corner_lat_deg: Option<Latitude>,
        /// Longitude of that corner.
        corner_lon_deg: Option<Longitude>,
    }
    /// A rock, a stump.
    PositionsBlocked "positions_blocked", KindFacts { rules: &[NotEmpty("at")], ..BEGINS } => {
        /// The bed.
        bed: BedName,
        /// The places, row.place.
        at: Vec<Spot>,
        /// Why nothing can stand there.
        why: Text,
    }
}
