//! What a reading tells of the leaves: how many times as dense they are as the profile says, weighed with how far that may be
//! off without it.

use super::crown::{TREE_M, day_taken, months_between};
use super::kept::Kept;
use super::scene::{DIFFUSE_SHARE, crowns_of, ground_of, place_of, points_of, rests_on, seen_along};
use super::stand::{Stand, When, stands};
use crate::base::{Day, SpeciesKey};
use crate::nursery::entry::BedSet;
use crate::nursery::entry::types::Sky;
use crate::reckon::bed::light_now::{LEAST_ERROR, ONE_READING_ERROR};
use crate::reckon::site::Site;
use crate::reckon::stock::{BedStory, LightLook, ends_reading};
use crate::science::shade::crown::Crown;
use crate::science::shade::even_sky;
use crate::science::shade::reading::{LEAST_FACTOR, MOST_FACTOR, leaf_factor};
use crate::science::shade::sky::{overcast, sun_through, together};

/// How far leaves and crowns of the profiles may be off, in the logarithm of their density: about 40 % either way. Ours.
pub(crate) const PRIOR_ERROR: f64 = 0.4;
/// What misdrawn crowns add to the error of a reading. Ours, measured: crowns 0.3 m aside and a tenth wider.
const DRAWN_ERROR: f64 = 0.1;
/// A reading in the sun, or under a sky that nobody wrote, tells so many times less. Ours, measured.
const SUN_TELLS_LESS: f64 = 2.5;
/// After so many months a reading tells no more of the leaves than the profile. Ours.
const TELLS_MONTHS: f64 = 12.0;
/// Most positions that a reading is reckoned at. Ours: it is taken at about as many.
const MOST_POINTS: usize = 20;
/// Directions of the sky, and moments of the sun. Ours, measured.
const SKY_DIRECTIONS: u32 = 300;
const SUN_MOMENTS: u32 = 24;

static TOLD: Kept<Option<Told>> = Kept::nothing();

/// What the newest reading says of the leaves.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct Told {
    /// The day of it.
    pub read_on: Day,
    /// What was read, a share of the open light.
    pub read: f64,
    /// What the profile's leaves would have let through then.
    pub expected: f64,
    /// How many times as dense the leaves are; none where no density explains the reading: the crowns are drawn wrongly.
    pub factor: Option<f64>,
    /// How far its logarithm may be off.
    pub error: f64,
}

/// How dense leaves are, and how far that may be off.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(super) struct Density {
    pub factor: f64,
    /// Of its logarithm.
    pub error: f64,
}

/// The density of leaves on a day: the profile's, moved towards the newest reading by how much that is worth then.
pub(super) fn density(told: Option<&Told>, day: Day) -> Density {
    let prior = Density { factor: 1.0, error: PRIOR_ERROR };
    let Some((told, factor)) = told.and_then(|told| Some((told, told.factor?))) else { return prior };
    let aged = PRIOR_ERROR * (months_between(told.read_on, day_taken(day)) / TELLS_MONTHS).min(1.0);
    let (by_reading, by_profile) = (1.0 / (told.error.powi(2) + aged.powi(2)), 1.0 / PRIOR_ERROR.powi(2));
    let weights = by_reading + by_profile;
    Density { factor: (factor.ln() * by_reading / weights).exp(), error: weights.sqrt().recip() }
}

/// What the newest reading of a bed says, of the plants that stood then. None where nothing was read, nothing stood, or what
/// stood cannot be reckoned.
pub(crate) fn told(story: &BedStory, site: &Site, bed: &BedSet, species: &SpeciesKey, day: Day) -> Option<Told> {
    let newest = story.light.iter().filter(|look| look.day <= day).max_by_key(|look| (look.day, look.order))?;
    // Of one day all readings together, but what was cut between them.
    let cut_since = |look: &LightLook| {
        ends_reading(story.cuts.iter().filter(|cut| cut.order > look.order && cut.order < newest.order))
    };
    let looks: Vec<&LightLook> = story.light.iter().filter(|look| look.day == newest.day && !cut_since(look)).collect();
    let weight = |look: &LightLook| f64::from(look.pairs.max(1));
    let readings: f64 = looks.iter().map(|look| weight(look)).sum();
    let read = looks.iter().map(|look| weight(look) * look.share).sum::<f64>() / readings;
    let standing = stands(story, site, bed, When { day: newest.day, before: Some(newest.order) }).ok()?;
    let points = points_of(story, site, bed, species, newest.day, MOST_POINTS);
    if standing.iter().all(|stand| stand.spots.is_empty()) || points.is_empty() {
        return None;
    }
    let mut key = rests_on(&standing, &points, newest.day, site, bed);
    key.extend([read.to_bits(), readings.to_bits(), newest.sky.map_or(0, |sky| 1 + u64::from(sky == Sky::Overcast))]);
    TOLD.or(&key, || reckon(&standing, &points, (newest, read, readings), site, bed))
}

fn reckon(
    standing: &[Stand],
    points: &[[f64; 2]],
    (newest, read, readings): (&LightLook, f64, f64),
    site: &Site,
    bed: &BedSet,
) -> Option<Told> {
    let ground = ground_of(bed);
    // Rays are followed through the air: crowns and positions stand as high as the ground under them.
    let crowns = crowns_of(standing, |leaves| leaves.likely, 1.0);
    let crowns: Vec<Crown> = crowns.iter().filter_map(|crown| crown.lifted(ground.height_m(crown.at()))).collect();
    let points: Vec<[f64; 3]> = points.iter().map(|[x, y]| [*x, *y, TREE_M + ground.height_m([*x, *y])]).collect();
    let sky = even_sky(SKY_DIRECTIONS);
    let is_overcast = newest.sky == Some(Sky::Overcast);
    let lights = match place_of(site, newest.day).filter(|_| !is_overcast) {
        None if is_overcast => overcast(&sky),
        None => sky,
        Some(place) => {
            let sun = sun_through(place, newest.day, SUN_MOMENTS).ok()?;
            together(DIFFUSE_SHARE, &sky, &sun)
        }
    };
    let lights = seen_along(&lights, bed);
    let leaves = leaf_factor(&points, &crowns, &lights, ground, read.clamp(0.0, 1.0)).ok()?;
    let believed = leaves.factor.map(|factor| factor.clamp(LEAST_FACTOR, MOST_FACTOR));
    let of_reading = (ONE_READING_ERROR / readings.sqrt()).max(LEAST_ERROR) / read.max(LEAST_ERROR);
    let of_reading = if is_overcast { of_reading } else { of_reading * SUN_TELLS_LESS };
    let sharpness = leaves.sharpness.unwrap_or(0.0).max(LEAST_ERROR);
    Some(Told {
        read_on: newest.day,
        read,
        expected: leaves.expected,
        factor: believed,
        error: (of_reading / sharpness).hypot(DRAWN_ERROR),
    })
}
