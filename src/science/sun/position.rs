//! Where the sun stands at a moment, and when it rises and sets.
//!
//! Source: Reda & Andreas 2004, Solar Energy 76:577 (NREL Solar Position Algorithm, +-0.0003 degrees), by the library
//! solar-positioning, which searches risings and settings over its own positions. No other file names that library.

use solar_positioning::time::JulianDate;
use solar_positioning::{Horizon, Location, SolarEvents, SolarPositions, delta_t};

use super::place::Place;
use crate::base::Moment;
use crate::science::wrong_input::{self, WrongInput};

/// First and last year in which the turning of the earth is known well enough. Ours.
const YEARS: (f64, f64) = (1800.0, 2200.0);
/// Julian date of 1970-01-01T00:00:00Z. Definition.
const JULIAN_1970: f64 = 2_440_587.5;
/// Days of a mean year. Definition (Julian year).
const YEAR_LENGTH: f64 = 365.25;
const MILLIS_PER_DAY: f64 = 86_400_000.0;

/// Where the sun's centre stands, without the bending of light by the air.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct SunPosition {
    /// Degrees above the level horizon, -90 to 90.
    pub(crate) elevation_deg: f64,
    /// Degrees from north over east, 0 to 360.
    pub(crate) azimuth_deg: f64,
}

/// The sun's way through one day, from one mean solar midnight to the next.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct SunDay {
    /// When it rises; none where it does not.
    pub(crate) rises: Option<Moment>,
    /// When it stands highest.
    pub(crate) noon: Option<Moment>,
    /// When it sets; none where it does not.
    pub(crate) sets: Option<Moment>,
    /// Hours from rising to setting; 24 or 0 where it does neither.
    pub(crate) length_h: f64,
}

/// What counts as the horizon.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Rising {
    /// The sun's upper edge is seen: 50/60 degrees below, for the air bends its light. The usual meaning of sunrise.
    Seen,
    /// Its centre stands on the level plane, by geometry alone.
    Geometric,
}

/// Where the sun stands over a place at a moment of the years 1800 to 2200.
///
/// # Errors
/// Another year.
pub(crate) fn sun_at(place: Place, moment: Moment) -> Result<SunPosition, WrongInput> {
    at(place, julian(moment), turning(julian(moment))?)
}

/// The sun's day around a moment at a place, the years 1800 to 2200.
///
/// # Errors
/// Another year.
pub(crate) fn sun_day(place: Place, around: Moment, rising: Rising) -> Result<SunDay, WrongInput> {
    let turn = place.lon_deg() / 360.0;
    let begin = (julian(around) + 0.5 + turn).floor() - 0.5 - turn;
    let horizon = match rising {
        Rising::Seen => Horizon::SunriseSunset,
        Rising::Geometric => Horizon::Custom(0.0),
    };
    let found = SolarEvents::new()
        .for_interval_from_julian(begin, begin + 1.0, location(place), turning(begin)?, horizon)
        .map_err(|_| no_number())?;
    let (rises, sets) = (found.rises.first().copied(), found.sets.last().copied());
    let length_days = match (rises, sets) {
        (None, None) => f64::from(u8::from(found.always_above())),
        (rises, sets) => sets.unwrap_or(found.end) - rises.unwrap_or(found.start),
    };
    Ok(SunDay {
        rises: rises.map(moment_of),
        noon: found.transits.first().copied().map(moment_of),
        sets: sets.map(moment_of),
        // Near the poles a sun may set after midnight and rise again: then it is up but for the night between.
        length_h: 24.0 * if length_days < 0.0 { 1.0 + length_days } else { length_days },
    })
}

fn at(place: Place, date: f64, turning_s: f64) -> Result<SunPosition, WrongInput> {
    let time = JulianDate::new(date, turning_s).map_err(|_| no_number())?;
    // Where the height is not known the place is taken at the sea: by it the sun turns less than is ever told.
    let elev_m = place.elev_m().unwrap_or(0.0);
    let told = SolarPositions::new().at_from_julian(time, location(place), elev_m, None).map_err(|_| no_number())?;
    Ok(SunPosition { elevation_deg: told.elevation_angle(), azimuth_deg: told.azimuth() })
}

/// What the library says of times and places it does not know; the door has refused them before.
fn no_number() -> WrongInput {
    WrongInput::NotANumber { input: "utc" }
}

fn location(place: Place) -> Location {
    Location { latitude: place.lat_deg(), longitude: place.lon_deg() }
}

/// Seconds by which the earth's turning lags behind even time (delta T).
fn turning(date: f64) -> Result<f64, WrongInput> {
    let year = 1970.0 + (date - JULIAN_1970) / YEAR_LENGTH;
    delta_t::estimate(wrong_input::within("year", year, YEARS.0, YEARS.1)?).map_err(|_| no_number())
}

fn julian(moment: Moment) -> f64 {
    JULIAN_1970 + moment.millis() as f64 / MILLIS_PER_DAY
}

fn moment_of(date: f64) -> Moment {
    Moment::from_millis(((date - JULIAN_1970) * MILLIS_PER_DAY).round() as i64)
}

#[cfg(test)]
mod tests {
    use super::*;

    const SUN: &str = include_str!("../../../tests/reference/sun.csv");

    fn moment(text: &str) -> Moment {
        text.parse().unwrap()
    }

    #[test]
    fn sun_positions_agree_with_pvlib() {
        let rows = SUN.lines().filter(|line| !line.starts_with('#')).skip(1);
        let mut checked = 0;
        for row in rows {
            let cells: Vec<&str> = row.split(',').collect();
            let number = |at: usize| cells[at].parse::<f64>().unwrap();
            let place = Place::new(number(0), number(1), number(2)).unwrap();
            let told = sun_at(place, moment(cells[3])).unwrap();
            // pvlib takes delta T as 67 s in every year; the sun goes 0.0003 degrees on in the 10 s that it is off.
            assert!((told.elevation_deg - number(4)).abs() < 0.0005, "{row}: {told:?}");
            // An azimuth near the zenith is worth little: off by so much on the sky.
            let aside = (told.azimuth_deg - number(6) + 180.0).rem_euclid(360.0) - 180.0;
            assert!((aside * told.elevation_deg.to_radians().cos()).abs() < 0.0005, "{row}: {told:?}");
            checked += 1;
        }
        assert_eq!(checked, 62);
    }

    #[test]
    fn the_height_of_a_place_hardly_turns_its_sun_so_an_unknown_one_is_no_other_answer() {
        for (lat, lon) in [(0.0, 0.0), (10.4, -84.0), (-33.0, 151.0), (60.0, 25.0)] {
            for at in ["2026-03-15T08:00:00Z", "2026-06-21T16:00:00Z", "2026-12-01T22:00:00Z"] {
                let told = |elev_m: Option<f64>| sun_at(Place::new(lat, lon, elev_m).unwrap(), moment(at)).unwrap();
                let (unknown, high) = (told(None), told(Some(5_000.0)));
                assert!((unknown.elevation_deg - high.elevation_deg).abs() < 0.001, "{lat} {at}: {unknown:?} {high:?}");
            }
        }
    }

    #[test]
    fn the_worked_example_of_reda_and_andreas() {
        // Appendix A.5 of the report NREL/TP-560-34302, from memory: zenith 50.11162 and azimuth 194.34024 degrees with
        // refraction of 0.01632 degrees, 17 October 2003, 12:30:30 at UTC-7, 39.742476 N, 105.1786 W, 1,830.14 m.
        let place = Place::new(39.742476, -105.1786, 1830.14).unwrap();
        let told = sun_at(place, moment("2003-10-17T19:30:30Z")).unwrap();
        assert!((told.elevation_deg - (90.0 - 50.11162 - 0.01632)).abs() < 0.0003, "{told:?}");
        assert!((told.azimuth_deg - 194.34024).abs() < 0.0003, "{told:?}");
    }

    #[test]
    fn at_the_equator_a_day_is_a_little_longer_than_half_of_24_hours_and_night_follows() {
        let place = Place::new(0.0, 0.0, 0.0).unwrap();
        let day = sun_day(place, moment("2026-06-21T18:00:00Z"), Rising::Seen).unwrap();
        // 50/60 degrees at each end over 15 cos 23.44 degrees an hour: 0.121 h more than 12.
        assert!((day.length_h - 12.121).abs() < 0.003, "{day:?}");
        let level = sun_day(place, moment("2026-06-21T01:00:00Z"), Rising::Geometric).unwrap();
        assert!((level.length_h - 12.0).abs() < 0.003, "{level:?}");
        let low = |at: Option<Moment>| sun_at(place, at.unwrap()).unwrap().elevation_deg.abs();
        assert!(low(level.rises) < 0.01 && low(level.sets) < 0.01, "{level:?}");
        assert!(day.rises < level.rises && level.rises < level.noon && level.sets < day.sets);
    }

    #[test]
    fn near_the_poles_the_sun_stays_up_or_down() {
        let place = Place::new(78.0, 15.0, 0.0).unwrap();
        let summer = sun_day(place, moment("2026-06-21T12:00:00Z"), Rising::Seen).unwrap();
        let winter = sun_day(place, moment("2026-12-21T12:00:00Z"), Rising::Seen).unwrap();
        assert_eq!((summer.length_h, summer.rises, winter.length_h, winter.sets), (24.0, None, 0.0, None));
    }

    #[test]
    fn a_year_nobody_can_reckon_is_refused() {
        let place = Place::new(0.0, 0.0, 0.0).unwrap();
        assert!(matches!(
            sun_at(place, moment("0900-01-01T00:00:00Z")),
            Err(WrongInput::Outside { input: "year", .. })
        ));
    }
}
