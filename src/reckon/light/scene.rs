//! What light is reckoned on: crowns of what stands, points among the positions, directions seen along the rows.

use super::crown::{crown, day_taken};
use super::stand::{Leaves, Stand};
use crate::base::{Day, SpeciesKey};
use crate::nursery::entry::BedSet;
use crate::reckon::field::{SpotState, species_plan};
use crate::reckon::site::Site;
use crate::reckon::stock::BedStory;
use crate::science::shade::crown::Crown;
use crate::science::shade::sky::{Direction, sun_through};
use crate::science::sun::place::Place;
use crate::science::sun::radiation::Slope;

/// Share of a day's light that comes from the whole sky. Ours: half, as in the humid tropics; where no place is written all
/// of it.
pub(crate) const DIFFUSE_SHARE: f64 = 0.5;

/// Moments of the sun through a day. Ours, measured.
const SUN_MOMENTS: u32 = 48;

/// The crowns of what stands, with so much of their leaves, so many times as dense.
pub(super) fn crowns_of(standing: &[Stand], of: impl Fn(&Leaves) -> f64, factor: f64) -> Vec<Crown> {
    let each = standing.iter().flat_map(|stand| {
        let (density, extinction) = stand.density;
        let density = density * of(&stand.leaves) * factor;
        stand.spots.iter().filter_map(move |spot| crown(*spot, stand.size, (density, extinction)))
    });
    each.collect()
}

/// Directions as they are seen along the rows of a bed; where nobody wrote how these lie they run east. Who looks along the
/// rows from their first places has the first row at the right hand and the others to its left. Ours: no entry says the side.
pub(super) fn seen_along(directions: &[Direction], bed: &BedSet) -> Vec<Direction> {
    let heading_deg = bed.row_bearing_deg.map_or(90.0, |bearing| bearing.0);
    directions.iter().map(|direction| direction.along_rows(heading_deg)).collect()
}

/// The ground of a bed as it is seen along its rows: level where nobody wrote otherwise.
pub(super) fn ground_of(bed: &BedSet) -> Slope {
    let heading_deg = bed.row_bearing_deg.map_or(90.0, |bearing| bearing.0);
    let told = bed.slope_pct.zip(bed.slope_bearing_deg);
    let falls = told.and_then(|(slope, to)| Slope::facing((slope.0 / 100.0).atan().to_degrees(), to.0).ok());
    falls.map_or(Slope::LEVEL, |ground| ground.along_rows(heading_deg))
}

/// The suns of a day as they are seen along the rows, and the share of the light that comes from the whole sky.
pub(super) fn suns_of(site: &Site, bed: &BedSet, day: Day) -> (Vec<Direction>, f64) {
    let sun = place_of(site, day).and_then(|place| sun_through(place, day_taken(day), SUN_MOMENTS).ok());
    let sun = seen_along(&sun.unwrap_or_default(), bed);
    let diffuse_share = if sun.is_empty() { 1.0 } else { DIFFUSE_SHARE };
    (sun, diffuse_share)
}

pub(super) fn place_of(site: &Site, day: Day) -> Option<Place> {
    let nursery = site.nursery.on(day)?;
    Place::new(nursery.latitude_deg.0, nursery.longitude_deg.0, nursery.altitude_m.map(|altitude| altitude.0)).ok()
}

/// Some of the positions of a species where one can be set, evenly among them; where none is open, of all.
pub(super) fn points_of(
    story: &BedStory,
    site: &Site,
    bed: &BedSet,
    species: &SpeciesKey,
    day: Day,
    most: usize,
) -> Vec<[f64; 2]> {
    let spots = species_plan(story, site, day, species).map(|plan| plan.spots).unwrap_or_default();
    let at = |free: fn(SpotState) -> bool| -> Vec<[f64; 2]> {
        spots.iter().filter(|spot| free(spot.state)).map(|spot| [spot.x_m, spot.y_m]).collect()
    };
    let mut points = at(|state| !matches!(state, SpotState::Living | SpotState::Blocked));
    if points.is_empty() {
        points = at(|_| true);
    }
    if points.is_empty() {
        points = vec![[bed.length_m.0 / 2.0, bed.width_m.0 / 2.0]];
    }
    some_of(points, most)
}

/// Where plants of a species live that were set out; where only their number is known, any position that may hold one.
pub(super) fn living_of(story: &BedStory, site: &Site, species: &SpeciesKey, day: Day) -> Vec<[f64; 2]> {
    let spots = species_plan(story, site, day, species).map(|plan| plan.spots).unwrap_or_default();
    let holds = |state| matches!(state, SpotState::Living | SpotState::Unsaid);
    spots.iter().filter(|spot| holds(spot.state)).map(|spot| [spot.x_m, spot.y_m]).collect()
}

/// Whatever was set out in a bed and lives.
pub(super) fn species_living(story: &BedStory) -> Vec<SpeciesKey> {
    let living = story.cohorts.iter().filter(|cohort| cohort.living > 0);
    let mut keys: Vec<SpeciesKey> = living.filter_map(|cohort| cohort.species.clone()).collect();
    keys.sort_unstable();
    keys.dedup();
    keys
}

/// At most so many of some points: steps of the golden section never keep step with rows.
pub(super) fn some_of(points: Vec<[f64; 2]>, most: usize) -> Vec<[f64; 2]> {
    if points.len() <= most {
        return points;
    }
    const GOLDEN: f64 = 0.618_033_988_749_894_9;
    let count = points.len() as f64;
    let places: std::collections::BTreeSet<usize> =
        (0..most).map(|at| ((at as f64 * GOLDEN).fract() * count) as usize).collect();
    places.into_iter().filter_map(|at| points.get(at).copied()).collect()
}

/// Everything that the light of what stands rests on.
pub(super) fn rests_on(standing: &[Stand], points: &[[f64; 2]], day: Day, site: &Site, bed: &BedSet) -> Vec<u64> {
    let mut key: Vec<u64> = Vec::new();
    for stand in standing {
        let Leaves { thin, likely, dense } = stand.leaves;
        let (size, density) = (stand.size, stand.density);
        key.push(stand.spots.len() as u64);
        key.extend([size.0, size.1, density.0, density.1, thin, likely, dense].map(f64::to_bits));
        key.extend(stand.spots.iter().flatten().map(|metres| metres.to_bits()));
    }
    key.push(points.len() as u64);
    key.extend(points.iter().flatten().map(|metres| metres.to_bits()));
    key.push(day_taken(day).number().unsigned_abs().into());
    let place = place_of(site, day).map(|place| [place.lat_deg(), place.lon_deg(), place.elev_m().unwrap_or(f64::NAN)]);
    key.extend(place.into_iter().flatten().map(f64::to_bits));
    key.push(bed.row_bearing_deg.map_or(0, |bearing| bearing.0.to_bits()));
    let ground = ground_of(bed);
    key.extend([ground.east.to_bits(), ground.north.to_bits()]);
    key
}
