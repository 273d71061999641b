//! `calc et0`.

use crate::cli::calc::answer::Answer;
use crate::cli::calc::field::args::Et0;
use crate::cli::calc::given::{Given, Wrong};
use crate::science::WrongInput;
use crate::science::water::evaporation::{
    DayWeather, INLAND, Sunlight, USUAL_WIND_M_S, Vapour, evaporation, wind_at_2m,
};
use crate::wording::Wording;

/// What was typed.
pub(crate) fn typed(typed: &Et0) -> Given {
    let mut given = Given::default();
    for (key, value) in [
        ("lat", typed.lat),
        ("elev_m", typed.elev),
        ("doy", typed.doy),
        ("tmax", typed.tmax),
        ("tmin", typed.tmin),
        ("rhmax", typed.rhmax),
        ("rhmin", typed.rhmin),
        ("ea", typed.ea),
        ("u2", typed.u2),
        ("wind", typed.wind),
        ("wind_height_m", typed.wind_height),
        ("rs", typed.rs),
        ("sunshine_h", typed.sunshine),
    ] {
        given.put(key, value);
    }
    given
}

/// What grass gives off by both formulas, and the parts of the first.
pub(crate) fn answer(given: &Given, wording: &Wording) -> Result<Answer, Wrong> {
    let told = evaporation(&weather(given)?)?;
    let whole = told.penman_monteith;
    let mut answer = Answer::new(wording.calc_et0_formula(), wording.calc_et0_source());
    let by_warmth = wording.number(told.hargreaves_mm, 2);
    answer.say(match whole {
        Some(whole) => wording.calc_et0_both(wording.number(whole.et0_mm, 2), by_warmth),
        None => wording.calc_et0_hargreaves(by_warmth),
    });
    answer.figure("et0", whole.map(|whole| whole.et0_mm));
    answer.figure("hargreaves_et0", told.hargreaves_mm);
    answer.figure("ra", told.ra);
    for (key, part) in [
        ("delta", whole.map(|whole| whole.delta)),
        ("pressure", whole.map(|whole| whole.pressure)),
        ("gamma", whole.map(|whole| whole.gamma)),
        ("es", whole.map(|whole| whole.es)),
        ("ea", whole.map(|whole| whole.ea)),
        ("rs", whole.map(|whole| whole.rs)),
        ("rso", whole.map(|whole| whole.rso)),
        ("rns", whole.map(|whole| whole.rns)),
        ("rnl", whole.map(|whole| whole.rnl)),
        ("rn", whole.map(|whole| whole.rn)),
    ] {
        answer.figure(key, part);
    }
    Ok(answer)
}

/// Of what was measured the most direct leads. With humidity or sunlight alone the other is estimated as FAO-56 does; with
/// neither there is no Penman-Monteith.
fn weather(given: &Given) -> Result<DayWeather, Wrong> {
    let humidity = (given.maybe_number("rhmax")?, given.maybe_number("rhmin")?);
    let vapour = match (given.maybe_number("ea")?, humidity) {
        (Some(ea), _) => Vapour::Pressure(ea),
        (None, (Some(most), Some(least))) => Vapour::Humidity(most, least),
        (None, (None, None)) => Vapour::Unknown,
        (None, (Some(_), None)) => return Err(WrongInput::Missing { input: "rhmin" }.into()),
        (None, (None, Some(_))) => return Err(WrongInput::Missing { input: "rhmax" }.into()),
    };
    let wind = match (given.maybe_number("u2")?, given.maybe_number("wind")?) {
        (None, Some(wind)) => Some(wind_at_2m(wind, given.number("wind_height_m")?)?),
        (at_2m, _) => at_2m,
    };
    let light = match (given.maybe_number("rs")?, given.maybe_number("sunshine_h")?) {
        (Some(measured), _) => Sunlight::Measured(measured),
        (None, Some(hours)) => Sunlight::Sunshine(hours),
        (None, None) if vapour == Vapour::Unknown && wind.is_none() => Sunlight::Unknown,
        (None, None) => Sunlight::Range(INLAND),
    };
    Ok(DayWeather {
        lat_deg: given.number("lat")?,
        elev_m: Some(given.number("elev_m")?),
        doy: given.count("doy")?,
        tmax_c: given.number("tmax")?,
        tmin_c: given.number("tmin")?,
        vapour,
        wind_m_s: Some(wind.unwrap_or(USUAL_WIND_M_S)),
        light,
        soil_heat_mj: given.maybe_number("g")?.unwrap_or(0.0),
    })
}
