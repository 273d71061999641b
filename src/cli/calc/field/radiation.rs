//! `calc radiation`.

use crate::cli::calc::answer::Answer;
use crate::cli::calc::field::args::Radiation;
use crate::cli::calc::given::{Given, Wrong};
use crate::science::sun::radiation::{Slope, on_slope, radiation};
use crate::wording::Wording;

/// What was typed.
pub(crate) fn typed(typed: &Radiation) -> Given {
    let mut given = Given::default();
    given.put("lat_deg", typed.lat);
    given.put("doy", typed.doy);
    given.put("slope_deg", typed.slope);
    given.put("facing_deg", typed.facing);
    given
}

/// How the ground lies; level where nothing is said of it.
pub(crate) fn slope(given: &Given) -> Result<Option<Slope>, Wrong> {
    match given.maybe_number("slope_deg")? {
        None => Ok(None),
        Some(slope_deg) => Ok(Some(Slope::facing(slope_deg, given.number("facing_deg")?)?)),
    }
}

/// Radiation above the air and daylight of a day.
pub(crate) fn answer(given: &Given, wording: &Wording) -> Result<Answer, Wrong> {
    let (lat_deg, doy) = (given.number("lat_deg")?, given.count("doy")?);
    let told = radiation(lat_deg, doy)?;
    let mut answer = Answer::new(wording.calc_radiation_formula(), wording.calc_radiation_source());
    answer.say(wording.calc_radiation_some(wording.number(told.ra, 2), wording.number(told.daylight_h, 2)));
    answer.figure("ra", told.ra);
    answer.figure("daylight_h", told.daylight_h);
    answer.figure("decl_rad", told.decl_rad);
    answer.figure("ws_rad", told.ws_rad);
    answer.figure("dr", told.dr);
    if let Some(slope) = slope(given)? {
        let ra_slope = on_slope(lat_deg, doy, slope)?;
        answer.say(wording.calc_radiation_slope(wording.number(ra_slope, 2)));
        answer.figure("ra_slope", ra_slope);
    }
    Ok(answer)
}
