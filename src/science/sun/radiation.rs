//! What the sun sends in a day to the top of the air, and how long it shines.
//!
//! Source: Allen, Pereira, Raes & Smith 1998, FAO Irrigation and Drainage Paper 56, equations 21 to 25, 34 and 35.

use std::f64::consts::{PI, TAU};

use super::place;
use crate::science::wrong_input::{self, WrongInput};

/// Solar constant, MJ/m2/min. FAO-56.
pub(crate) const SOLAR_CONSTANT: f64 = 0.0820;
/// Days of the year as FAO-56 reckons them.
const YEAR_LENGTH: f64 = 365.0;
const MINUTES_PER_DAY: f64 = 1_440.0;
/// Steps of a day on a slope. Ours: a step more changes the sixth digit.
const SLOPE_STEPS: u32 = 1_440;
/// Steepest slope, degrees. Ours: nobody plants on a wall.
pub(crate) const STEEPEST_DEG: f64 = 80.0;
/// Share of the radiation above the air that comes through on a day without sun, and what a day of full sun adds
/// (Angstrom's a and b). FAO-56, where nobody fitted them for the place.
const ANGSTROM: (f64, f64) = (0.25, 0.50);

/// The sun's day above a latitude.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct Radiation {
    /// Extraterrestrial radiation on a level plane, MJ/m2/day (equation 21).
    pub(crate) ra: f64,
    /// Hours of daylight (equation 34).
    pub(crate) daylight_h: f64,
    /// Declination of the sun, radians (equation 24).
    pub(crate) decl_rad: f64,
    /// Hour angle of sunset, radians (equation 25).
    pub(crate) ws_rad: f64,
    /// Inverse relative distance of earth and sun (equation 23).
    pub(crate) dr: f64,
}

/// How the ground lies.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Slope {
    /// Rise to the east, m per m.
    pub(crate) east: f64,
    /// Rise to the north, m per m.
    pub(crate) north: f64,
}

impl Slope {
    /// Level ground.
    pub const LEVEL: Slope = Slope { east: 0.0, north: 0.0 };

    /// Ground that falls by `slope_deg` (0 to 80 degrees) towards `facing_deg` (0 to 360 degrees from north over east).
    ///
    /// # Errors
    /// Outside of that, or no number.
    pub(crate) fn facing(slope_deg: f64, facing_deg: f64) -> Result<Slope, WrongInput> {
        let rise = wrong_input::within("slope_deg", slope_deg, 0.0, STEEPEST_DEG)?.to_radians().tan();
        let (east, north) = wrong_input::within("facing_deg", facing_deg, 0.0, 360.0)?.to_radians().sin_cos();
        Ok(Slope { east: -rise * east, north: -rise * north })
    }

    /// How much higher the ground lies m east and north of the corner than at it, m.
    pub(crate) fn height_m(self, [east_m, north_m]: [f64; 2]) -> f64 {
        self.east * east_m + self.north * north_m
    }

    /// The same ground seen from a bed whose rows run towards `heading_deg` (degrees from north over east): `east` is then
    /// along the rows, `north` to their left.
    pub(crate) fn along_rows(self, heading_deg: f64) -> Slope {
        let (east, north) = heading_deg.to_radians().sin_cos();
        Slope { east: self.east * east + self.north * north, north: self.north * east - self.east * north }
    }
}

/// Radiation and daylight at a latitude (-90 to 90 degrees) on a day of the year (1 to 366).
///
/// # Errors
/// Outside of that, or no number.
pub(crate) fn radiation(lat_deg: f64, doy: u32) -> Result<Radiation, WrongInput> {
    let lat = place::latitude("lat_deg", lat_deg)?.to_radians();
    let angle = TAU * wrong_input::within("doy", f64::from(doy), 1.0, 366.0)? / YEAR_LENGTH;
    let dr = 1.0 + 0.033 * angle.cos();
    let decl = 0.409 * (angle - 1.39).sin();
    // Beyond the polar circles the sun stays up or down.
    let ws = (-lat.tan() * decl.tan()).clamp(-1.0, 1.0).acos();
    let sum = ws * lat.sin() * decl.sin() + lat.cos() * decl.cos() * ws.sin();
    Ok(Radiation {
        ra: (MINUTES_PER_DAY / PI * SOLAR_CONSTANT * dr * sum).max(0.0),
        daylight_h: 24.0 / PI * ws,
        decl_rad: decl,
        ws_rad: ws,
        dr,
    })
}

/// Extraterrestrial radiation on a slope at a latitude on a day of the year, MJ/m2/day of sloping ground: the same sun,
/// while it stands over the level horizon and before the slope. Sum over the minutes of the day. Geometry.
///
/// # Errors
/// A latitude or a day outside of its range, or no number.
pub(crate) fn on_slope(lat_deg: f64, doy: u32, slope: Slope) -> Result<f64, WrongInput> {
    let day = radiation(lat_deg, doy)?;
    let ((sin_lat, cos_lat), (sin_decl, cos_decl)) = (lat_deg.to_radians().sin_cos(), day.decl_rad.sin_cos());
    let steep = (1.0 + slope.east * slope.east + slope.north * slope.north).sqrt();
    let step = 2.0 * day.ws_rad / f64::from(SLOPE_STEPS);
    let sum: f64 = (0..SLOPE_STEPS)
        .map(|at| {
            let hour = (f64::from(at) + 0.5) * step - day.ws_rad;
            let up = sin_lat * sin_decl + cos_lat * cos_decl * hour.cos();
            let (east, north) = (-cos_decl * hour.sin(), cos_lat * sin_decl - sin_lat * cos_decl * hour.cos());
            ((up - slope.east * east - slope.north * north) / steep).max(0.0)
        })
        .sum();
    Ok(MINUTES_PER_DAY / TAU * SOLAR_CONSTANT * day.dr * sum * step)
}

/// Radiation that reaches the ground on a day with so many hours of sunshine, MJ/m2/day: Angstrom's formula
/// (0.25 + 0.50 n/N) Ra, equation 35 of FAO-56.
///
/// # Errors
/// Sunshine below 0 or longer than the day (half an hour is forgiven: recorders and N are not that exact), or no number.
pub(crate) fn by_sunshine(day: &Radiation, sunshine_h: f64) -> Result<f64, WrongInput> {
    wrong_input::within("sunshine_h", sunshine_h, 0.0, (day.daylight_h + 0.5).min(24.0))?;
    if day.daylight_h <= 0.0 {
        return Ok(0.0);
    }
    let (cloudy, clear) = ANGSTROM;
    Ok((cloudy + clear * (sunshine_h / day.daylight_h).min(1.0)) * day.ra)
}

#[cfg(test)]
mod tests {
    use super::*;

    const RA: &str = include_str!("../../../tests/reference/ra.csv");

    #[test]
    fn radiation_agrees_with_refet_and_with_the_table_of_fao_56() {
        let (mut computed, mut printed) = (0, 0);
        for row in RA.lines().filter(|line| !line.starts_with('#')).skip(1) {
            let cells: Vec<&str> = row.split(',').collect();
            let number = |at: usize| cells[at].parse::<f64>().unwrap();
            let told = radiation(number(1), cells[2].parse().unwrap()).unwrap();
            if cells[0] == "computed" {
                let figures = [told.ra, told.daylight_h, told.dr, told.decl_rad, told.ws_rad, told.ra];
                for (at, figure) in (3..).zip(figures) {
                    assert!((figure - number(at)).abs() < 1e-6, "{row}: {told:?}");
                }
                computed += 1;
            } else {
                assert!((told.ra - number(9)).abs() < 0.15, "{row}: {told:?}");
                printed += 1;
            }
        }
        assert!(computed >= 100 && printed >= 100, "{computed} computed, {printed} printed");
    }

    #[test]
    fn examples_8_to_10_of_fao_56() {
        let told = radiation(-20.0, 246).unwrap();
        assert!((told.ra - 32.2).abs() < 0.05 && (told.daylight_h - 11.7).abs() < 0.05, "{told:?}");
        let rio = radiation(-22.9, 135).unwrap();
        assert!((rio.ra - 25.1).abs() < 0.05 && (rio.daylight_h - 10.9).abs() < 0.05, "{rio:?}");
        assert!((by_sunshine(&rio, 7.1).unwrap() - 14.45).abs() < 0.05);
    }

    #[test]
    fn level_ground_is_a_slope_of_nothing() {
        for (lat, doy) in [(10.0, 15), (-35.0, 172), (0.0, 80), (55.0, 355), (75.0, 172)] {
            let (level, sum) = (radiation(lat, doy).unwrap().ra, on_slope(lat, doy, Slope::LEVEL).unwrap());
            assert!((level - sum).abs() < 1e-4, "{lat} {doy}: {level} {sum}");
        }
    }

    #[test]
    fn at_an_equinox_a_slope_that_faces_the_equator_by_its_latitude_gets_what_the_equator_gets() {
        // Day 81: the declination of FAO-56 is 0.002.
        let equator = radiation(0.0, 81).unwrap().ra;
        let north = on_slope(30.0, 81, Slope::facing(30.0, 180.0).unwrap()).unwrap();
        let south = on_slope(-30.0, 81, Slope::facing(30.0, 0.0).unwrap()).unwrap();
        assert!((north - equator).abs() < 0.05 && (south - equator).abs() < 0.05, "{equator} {north} {south}");
        let away = on_slope(30.0, 81, Slope::facing(30.0, 0.0).unwrap()).unwrap();
        let sides = [90.0, 270.0].map(|facing| on_slope(30.0, 81, Slope::facing(30.0, facing).unwrap()).unwrap());
        assert!(away < sides[0] && (sides[0] - sides[1]).abs() < 1e-6 && sides[0] < north, "{away} {sides:?} {north}");
    }

    #[test]
    fn nonsense_is_refused() {
        assert!(matches!(radiation(95.0, 10), Err(WrongInput::Outside { input: "lat_deg", .. })));
        assert!(matches!(radiation(5.0, 0), Err(WrongInput::Outside { input: "doy", .. })));
        assert!(matches!(radiation(5.0, 367), Err(WrongInput::Outside { input: "doy", .. })));
        assert!(matches!(Slope::facing(89.0, 0.0), Err(WrongInput::Outside { input: "slope_deg", .. })));
        assert!(by_sunshine(&radiation(0.0, 10).unwrap(), 14.0).is_err());
    }
}
