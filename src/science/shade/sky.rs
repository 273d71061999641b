//! Where light comes from: the sun through a day, the whole sky.
//!
//! Sources: geometry; the standard overcast sky is Moon & Spencer 1942 (CIE 1955), (1 + 2 sin h) / 3, from memory; points
//! of a sunflower after Vogel 1979, from memory.

use std::f64::consts::{FRAC_PI_2, PI, TAU};

use crate::base::{Day, Moment};
use crate::science::sun::place::Place;
use crate::science::sun::position::{Rising, SunPosition, sun_at, sun_day};
use crate::science::sun::radiation::Slope;
use crate::science::wrong_input::{self, WrongInput};

/// Lower than this (its sine, 0.006 degrees) nothing is looked at: shadows without end, light of nothing. Ours.
const LOWEST_UP: f64 = 1e-4;

/// One direction light comes from, and how much.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Direction {
    /// Towards the light, a vector of length 1: east (or along the rows of a bed),
    pub(crate) east: f64,
    /// north (or across its rows),
    pub(crate) north: f64,
    /// and up, above 0.
    pub(crate) up: f64,
    /// Share of the light of all directions, under a level meter.
    pub(crate) weight: f64,
}

impl Direction {
    /// A direction by degrees above the horizon and from north over east, of weight 1.
    pub(crate) fn of(elevation_deg: f64, azimuth_deg: f64) -> Direction {
        let ((up, level), (east, north)) = (elevation_deg.to_radians().sin_cos(), azimuth_deg.to_radians().sin_cos());
        Direction { east: level * east, north: level * north, up, weight: 1.0 }
    }

    /// The same light seen from a bed whose rows run towards `heading_deg` (degrees from north over east): `east` is then
    /// along the rows, `north` to their left.
    pub(crate) fn along_rows(self, heading_deg: f64) -> Direction {
        let (east, north) = heading_deg.to_radians().sin_cos();
        Direction { east: self.east * east + self.north * north, north: self.north * east - self.east * north, ..self }
    }

    /// Whether it lies behind the hillside: the ground itself is in the way.
    pub(crate) fn behind(self, ground: Slope) -> bool {
        self.up - ground.east * self.east - ground.north * self.north <= 0.0
    }
}

impl From<SunPosition> for Direction {
    fn from(sun: SunPosition) -> Direction {
        Direction::of(sun.elevation_deg, sun.azimuth_deg)
    }
}

/// The sun at `count` moments (1 to 10,000), evenly from rising to setting of a day, weighted by the sine of its height.
/// None where it does not rise.
///
/// # Errors
/// A year outside 1800 to 2200, or too many moments.
pub fn sun_through(place: Place, day: Day, count: u32) -> Result<Vec<Direction>, WrongInput> {
    let count = wrong_input::within("moments", f64::from(count), 1.0, 10_000.0)?;
    // Noon by the mean sun: the day is the one of the place, whatever its clocks say.
    let midday = Moment::end_of(day, place.lon_deg() / 15.0).millis() - 12 * 3_600_000;
    let day = sun_day(place, Moment::from_millis(midday), Rising::Geometric)?;
    let rises = day.rises.map_or(midday - 12 * 3_600_000, Moment::millis);
    let length_ms = day.length_h * 3_600_000.0;
    let mut found = Vec::new();
    for at in 0..count as u32 {
        let moment = rises + ((f64::from(at) + 0.5) / count * length_ms).round() as i64;
        found.push(sun_at(place, Moment::from_millis(moment))?);
    }
    Ok(of_suns(found))
}

/// The sun every so many minutes (1 to 120) of the clock, from midnight on, of a day in a place whose clocks are
/// `utc_offset_h` hours ahead of UTC. For comparison with values reckoned so.
///
/// # Errors
/// Minutes outside of that, a year outside 1800 to 2200.
pub(crate) fn sun_by_clock(
    place: Place,
    day: Day,
    utc_offset_h: f64,
    minutes: f64,
) -> Result<Vec<Direction>, WrongInput> {
    wrong_input::within("sun_minutes", minutes, 1.0, 120.0)?;
    let midnight = Moment::end_of(day.plus(-1), utc_offset_h).millis() + 1;
    let count = (1440.0 / minutes).ceil() as u32;
    let mut found = Vec::new();
    for at in 0..count {
        found.push(sun_at(place, Moment::from_millis(midnight + (f64::from(at) * minutes * 60_000.0) as i64))?);
    }
    Ok(of_suns(found))
}

/// Suns above the horizon, weighted by the sine of their height.
pub(crate) fn of_suns(suns: Vec<SunPosition>) -> Vec<Direction> {
    let directions = suns.into_iter().map(Direction::from).filter(|sun| sun.up > LOWEST_UP);
    shares(directions.map(|sun| Direction { weight: sun.up, ..sun }).collect())
}

/// The evenly bright sky in `count` directions (1 to 100,000) of equal weight, laid like the seeds of a sunflower on the
/// disc that a level meter sees.
pub fn even_sky(count: u32) -> Vec<Direction> {
    let golden = PI * (3.0 - 5.0_f64.sqrt());
    let count = count.clamp(1, 100_000);
    let seeds = (0..count).map(|at| {
        let inside = (f64::from(at) + 0.5) / f64::from(count);
        let (east, north) = (golden * f64::from(at)).sin_cos();
        let level = inside.sqrt();
        Direction { east: level * east, north: level * north, up: (1.0 - inside).sqrt(), weight: 1.0 }
    });
    shares(seeds.collect())
}

/// The evenly bright sky in patches of so many degrees (0.5 to 30; the nearest step that divides 90), each by its middle
/// and the exact weight of its area.
///
/// # Errors
/// Outside of that, or no number.
pub(crate) fn sky_patches(degrees: f64) -> Result<Vec<Direction>, WrongInput> {
    wrong_input::within("sky_degrees", degrees, 0.5, 30.0)?;
    let rings = (90.0 / degrees).round();
    let (step, turn) = (FRAC_PI_2 / rings, TAU / (4.0 * rings));
    let mut sky = Vec::new();
    for ring in 0..rings as u32 {
        let from = f64::from(ring) * step;
        let weight = ((from + step).sin().powi(2) - from.sin().powi(2)) / 2.0 * turn;
        let (level, up) = (from + step / 2.0).sin_cos();
        for at in 0..(4.0 * rings) as u32 {
            let (east, north) = ((f64::from(at) + 0.5) * turn).sin_cos();
            sky.push(Direction { east: level * east, north: level * north, up, weight });
        }
    }
    Ok(shares(sky))
}

/// The same directions under the standard overcast sky: three times as bright overhead as at the horizon.
pub(crate) fn overcast(sky: &[Direction]) -> Vec<Direction> {
    shares(sky.iter().map(|patch| Direction { weight: patch.weight * (1.0 + 2.0 * patch.up), ..*patch }).collect())
}

/// Two lights together: `share` of the first (0 to 1), the rest of the second. Of one that is dark all is the other.
pub(crate) fn together(share: f64, first: &[Direction], second: &[Direction]) -> Vec<Direction> {
    let part = |lights: &[Direction], share: f64| -> Vec<Direction> {
        lights.iter().map(|light| Direction { weight: light.weight * share, ..*light }).collect()
    };
    shares([part(first, share), part(second, 1.0 - share)].concat())
}

/// Weights that come to 1.
fn shares(mut directions: Vec<Direction>) -> Vec<Direction> {
    let all: f64 = directions.iter().map(|one| one.weight).sum();
    for one in &mut directions {
        one.weight /= all;
    }
    directions
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sum(directions: &[Direction], of: impl Fn(&Direction) -> f64) -> f64 {
        directions.iter().map(of).sum()
    }

    #[test]
    fn every_set_of_directions_is_whole_and_points_up() {
        let place = Place::new(10.43, -84.0, 120.0).unwrap();
        let day = Day::from_ymd(2026, 3, 15).unwrap();
        let sets = [
            sun_through(place, day, 96).unwrap(),
            sun_by_clock(place, day, -6.0, 10.0).unwrap(),
            even_sky(600),
            sky_patches(5.0).unwrap(),
            overcast(&even_sky(300)),
            together(0.4, &even_sky(300), &sun_through(place, day, 48).unwrap()),
        ];
        for set in sets {
            assert!((sum(&set, |one| one.weight) - 1.0).abs() < 1e-12);
            for one in &set {
                let length = one.east * one.east + one.north * one.north + one.up * one.up;
                assert!((length - 1.0).abs() < 1e-12 && one.up > 0.0, "{one:?}");
            }
        }
    }

    #[test]
    fn the_even_sky_is_weighted_as_a_level_meter_sees_it() {
        // The mean of sin h under weights of sin h: 2/3.
        for (sky, within) in [(even_sky(600), 1e-4), (sky_patches(2.0).unwrap(), 1e-3)] {
            assert!((sum(&sky, |one| one.weight * one.up) - 2.0 / 3.0).abs() < within);
            assert!(sum(&sky, |one| one.weight * one.east).abs() < 0.001);
        }
        // Overcast: weights (1 + 2 sin h) sin h; the integral of sin^2 h cos h (1 + 2 sin h) over that of sin h cos h
        // (1 + 2 sin h) is (1/3 + 1/2) / (1/2 + 2/3) = 5/7.
        assert!((sum(&overcast(&even_sky(600)), |one| one.weight * one.up) - 5.0 / 7.0).abs() < 1e-4);
    }

    #[test]
    fn the_suns_of_a_clock_are_those_of_the_reference() {
        let all: serde_json::Value = serde_json::from_str(include_str!("../../../tests/reference/light.json")).unwrap();
        for scene in all["scenes"].as_array().unwrap() {
            let number = |key: &str| scene[key].as_f64().unwrap();
            let place = Place::new(number("lat"), number("lon"), number("elev_m")).unwrap();
            let day = scene["date"].as_str().unwrap().parse().unwrap();
            let suns = sun_by_clock(place, day, number("utc_offset_h"), 10.0).unwrap();
            assert_eq!(
                suns.len() as u64,
                scene["sun_samples_above_horizon_10min"].as_u64().unwrap(),
                "{}",
                scene["id"]
            );
            let highest = suns.iter().max_by(|a, b| a.up.total_cmp(&b.up)).unwrap();
            let whole = highest.up / highest.weight;
            assert!((whole - number("sum_sin_elevation_10min")).abs() < 1e-3, "{} {whole}", scene["id"]);
        }
    }

    #[test]
    fn seen_along_the_rows_east_is_ahead_of_rows_that_run_east() {
        let east = Direction::of(30.0, 90.0);
        let ahead = east.along_rows(90.0);
        assert!((ahead.east - east.east).abs() < 1e-12 && ahead.north.abs() < 1e-12);
        let north = Direction::of(30.0, 0.0).along_rows(90.0);
        assert!(north.east.abs() < 1e-12 && north.north > 0.8);
        let ahead = Direction::of(30.0, 200.0).along_rows(200.0);
        assert!(ahead.north.abs() < 1e-12 && ahead.east > 0.8);
    }

    #[test]
    fn where_the_sun_does_not_rise_there_is_no_direction() {
        let place = Place::new(80.0, 0.0, 0.0).unwrap();
        assert!(sun_through(place, Day::from_ymd(2026, 12, 21).unwrap(), 24).unwrap().is_empty());
        assert_eq!(sun_through(place, Day::from_ymd(2026, 6, 21).unwrap(), 24).unwrap().len(), 24);
    }
}
