//! A place on the earth.

use crate::science::wrong_input::{self, WrongInput};

/// Lowest ground under the sky, m: below the shore of the Dead Sea. Ours, as the journal has it.
const LOWEST_M: f64 = -500.0;
/// Highest ground, m: above the highest mountain. Ours, as the journal has it.
const HIGHEST_M: f64 = 9_000.0;

/// A place whose numbers make sense.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Place {
    lat_deg: f64,
    lon_deg: f64,
    /// None where nobody wrote it.
    elev_m: Option<f64>,
}

impl Place {
    /// Latitude in degrees, north above 0, -90 to 90; longitude in degrees, east above 0, -180 to 180; height above the
    /// sea in m, -500 to 9,000, where it is known.
    ///
    /// # Errors
    /// A number outside of its range, or no number; named by the keys of `calc sun`.
    pub fn new(lat_deg: f64, lon_deg: f64, elev_m: impl Into<Option<f64>>) -> Result<Place, WrongInput> {
        Ok(Place {
            lat_deg: latitude("lat_deg", lat_deg)?,
            lon_deg: wrong_input::within("lon_deg", lon_deg, -180.0, 180.0)?,
            elev_m: elev_m.into().map(elevation).transpose()?,
        })
    }

    /// Latitude in degrees, north above 0.
    pub(crate) fn lat_deg(self) -> f64 {
        self.lat_deg
    }

    /// Longitude in degrees, east above 0.
    pub(crate) fn lon_deg(self) -> f64 {
        self.lon_deg
    }

    /// Height above the sea, m; none where it is not known.
    pub(crate) fn elev_m(self) -> Option<f64> {
        self.elev_m
    }
}

/// A latitude in degrees, -90 to 90, under the name it was given.
///
/// # Errors
/// Outside of that, or no number.
pub(crate) fn latitude(input: &'static str, lat_deg: f64) -> Result<f64, WrongInput> {
    wrong_input::within(input, lat_deg, -90.0, 90.0)
}

/// A height above the sea in m, -500 to 9,000.
///
/// # Errors
/// Outside of that, or no number.
pub(crate) fn elevation(elev_m: f64) -> Result<f64, WrongInput> {
    wrong_input::within("elev_m", elev_m, LOWEST_M, HIGHEST_M)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_off_the_earth_is_refused_by_name() {
        let outside = |input, low, high| Err(WrongInput::Outside { input, low, high });
        assert_eq!(Place::new(95.0, 0.0, 0.0), outside("lat_deg", -90.0, 90.0));
        assert_eq!(Place::new(0.0, 181.0, 0.0), outside("lon_deg", -180.0, 180.0));
        assert_eq!(Place::new(0.0, 0.0, 9_500.0), outside("elev_m", LOWEST_M, HIGHEST_M));
        assert_eq!(Place::new(f64::NAN, 0.0, 0.0), Err(WrongInput::NotANumber { input: "lat_deg" }));
    }
}
