//! Reference evapotranspiration: the water a well-watered short grass gives off in a day.
//!
//! Source: Allen, Pereira, Raes & Smith 1998, FAO Irrigation and Drainage Paper 56: Penman-Monteith (equation 6) with its
//! parts (7 to 50), and Hargreaves (52) where only temperatures are known.

use crate::science::sun::place::{elevation, latitude};
use crate::science::sun::radiation::{by_sunshine, radiation};
use crate::science::wrong_input::{self, WrongInput};

/// Coldest and warmest air, degrees C. Ours, from the coldest and warmest ever measured (-89 and 57).
const AIR_C: (f64, f64) = (-90.0, 70.0);
/// Most wind as a mean of a day, m/s. Ours: stronger than any hurricane's day.
const MOST_WIND_M_S: f64 = 60.0;
/// Most radiation of a day, MJ/m2: more than the sun sends anywhere. Ours.
const MOST_RADIATION_MJ: f64 = 50.0;
/// Share of the light that grass throws back. FAO-56.
const ALBEDO: f64 = 0.23;
/// Stefan-Boltzmann constant, MJ/K4/m2/day. FAO-56.
const STEFAN_BOLTZMANN: f64 = 4.903e-9;
/// 0 degrees C in Kelvin as equation 39 of FAO-56 has it.
const KELVIN: f64 = 273.16;
/// The same as equation 6 has it.
const KELVIN_ROUND: f64 = 273.0;
/// mm of water that 1 MJ/m2 turns to vapour. FAO-56 (1 / 2.45).
const MM_PER_MJ: f64 = 0.408;
/// Wind where nobody measured it, m/s: the mean of 2,000 stations. FAO-56, chapter 3.
pub(crate) const USUAL_WIND_M_S: f64 = 2.0;

/// What was measured on a day; what is none was not.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct DayWeather {
    /// Latitude, degrees, -90 to 90.
    pub(crate) lat_deg: f64,
    /// Height above the sea, m, -500 to 9,000.
    pub(crate) elev_m: Option<f64>,
    /// Day of the year, 1 to 366.
    pub(crate) doy: u32,
    /// Warmest, degrees C.
    pub(crate) tmax_c: f64,
    /// Coldest, degrees C; not above the warmest.
    pub(crate) tmin_c: f64,
    /// Vapour in the air.
    pub(crate) vapour: Vapour,
    /// Wind at 2 m, m/s, 0 to 60.
    pub(crate) wind_m_s: Option<f64>,
    /// Sunlight that reached the ground.
    pub(crate) light: Sunlight,
    /// Heat that goes into the ground, MJ/m2/day; about 0 over a day.
    pub(crate) soil_heat_mj: f64,
}

/// How the vapour in the air is known.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) enum Vapour {
    /// Its pressure, kPa.
    Pressure(f64),
    /// Highest and lowest relative humidity, % (equation 17).
    Humidity(f64, f64),
    /// Not: the coldest moment of the day is taken as its dew point (equation 48). Good where the air is humid.
    Unknown,
}

/// How the sunlight is known.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) enum Sunlight {
    /// Measured, MJ/m2/day.
    Measured(f64),
    /// By hours of sunshine (equation 35).
    Sunshine(f64),
    /// Not: by how far the day is warmer than the night, k sqrt(Tmax - Tmin) Ra (equation 50), with k 0.16 inland and
    /// 0.19 at a coast.
    Range(f64),
    /// Nothing is said of it: no Penman-Monteith.
    Unknown,
}

/// Hargreaves' k inland. FAO-56, equation 50.
pub(crate) const INLAND: f64 = 0.16;

/// A day's evapotranspiration with its parts.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct Evaporation {
    /// Penman-Monteith with its parts; none where the sunlight or the wind is not known.
    pub(crate) penman_monteith: Option<PenmanMonteith>,
    /// Hargreaves, mm/day: 0.0023 (T + 17.8) sqrt(Tmax - Tmin) 0.408 Ra; 0 in frost.
    pub(crate) hargreaves_mm: f64,
    /// Extraterrestrial radiation, MJ/m2/day.
    pub(crate) ra: f64,
}

/// Penman-Monteith and what it was put together from.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct PenmanMonteith {
    /// Slope of the vapour pressure curve, kPa per degree C (equation 13).
    pub(crate) delta: f64,
    /// Air pressure, kPa (equation 7).
    pub(crate) pressure: f64,
    /// Psychrometric constant, kPa per degree C (equation 8).
    pub(crate) gamma: f64,
    /// Saturation vapour pressure, kPa (equation 12).
    pub(crate) es: f64,
    /// Vapour pressure, kPa.
    pub(crate) ea: f64,
    /// Sunlight, MJ/m2/day.
    pub(crate) rs: f64,
    /// Sunlight of a clear day, MJ/m2/day (equation 37).
    pub(crate) rso: f64,
    /// What grass keeps of it, MJ/m2/day (equation 38).
    pub(crate) rns: f64,
    /// What the ground sends back as heat, MJ/m2/day (equation 39).
    pub(crate) rnl: f64,
    /// What is left, MJ/m2/day (equation 40).
    pub(crate) rn: f64,
    /// Reference evapotranspiration, mm/day; where dew falls it may be a little below 0.
    pub(crate) et0_mm: f64,
}

/// The evapotranspiration of a day.
///
/// # Errors
/// A figure outside of its range, a coldest above the warmest, or no number.
pub(crate) fn evaporation(day: &DayWeather) -> Result<Evaporation, WrongInput> {
    latitude("lat", day.lat_deg)?;
    let elev_m = day.elev_m.map(elevation).transpose()?;
    let tmax = wrong_input::within("tmax", day.tmax_c, AIR_C.0, AIR_C.1)?;
    let tmin = wrong_input::within("tmin", day.tmin_c, AIR_C.0, tmax)?;
    let sky = radiation(day.lat_deg, day.doy)?;
    let mean = (tmax + tmin) / 2.0;
    let range = (tmax - tmin).sqrt();
    let hargreaves_mm = (0.0023 * (mean + 17.8) * range * MM_PER_MJ * sky.ra).max(0.0);
    let ea = vapour_kpa(day.vapour, tmax, tmin)?;
    let rs = match day.light {
        Sunlight::Measured(measured) => Some(wrong_input::within("rs", measured, 0.0, MOST_RADIATION_MJ)?),
        Sunlight::Sunshine(hours) => Some(by_sunshine(&sky, hours)?),
        Sunlight::Range(k) => Some(k * range * sky.ra),
        Sunlight::Unknown => None,
    };
    let wind = day.wind_m_s.map(|wind| wrong_input::within("u2", wind, 0.0, MOST_WIND_M_S)).transpose()?;
    let soil_heat = wrong_input::within("g", day.soil_heat_mj, -MOST_RADIATION_MJ, MOST_RADIATION_MJ)?;
    let whole = rs.zip(wind).zip(elev_m).map(|((rs, wind), elev_m)| {
        let pressure = pressure_kpa(elev_m);
        let (gamma, delta) = (gamma_of(pressure), curve_slope(mean));
        let es = (saturation_kpa(tmax) + saturation_kpa(tmin)) / 2.0;
        let rso = (0.75 + 2e-5 * elev_m) * sky.ra;
        let rns = (1.0 - ALBEDO) * rs;
        let rnl = back_radiation(tmax, tmin, ea, rs, rso);
        let rn = rns - rnl;
        let air = gamma * 900.0 / (mean + KELVIN_ROUND) * wind * (es - ea);
        let et0_mm = (MM_PER_MJ * delta * (rn - soil_heat) + air) / (delta + gamma * (1.0 + 0.34 * wind));
        PenmanMonteith { delta, pressure, gamma, es, ea, rs, rso, rns, rnl, rn, et0_mm }
    });
    Ok(Evaporation { penman_monteith: whole, hargreaves_mm, ra: sky.ra })
}

/// Wind at 2 m from wind at another height above grass, m/s (equation 47).
///
/// # Errors
/// Wind outside 0 to 60 m/s, a height outside 0.2 to 200 m, or no number.
pub(crate) fn wind_at_2m(wind_m_s: f64, height_m: f64) -> Result<f64, WrongInput> {
    wrong_input::within("wind", wind_m_s, 0.0, MOST_WIND_M_S)?;
    wrong_input::within("wind_height_m", height_m, 0.2, 200.0)?;
    Ok(wind_m_s * 4.87 / (67.8 * height_m - 5.42).ln())
}

fn vapour_kpa(known: Vapour, tmax: f64, tmin: f64) -> Result<f64, WrongInput> {
    let highest = (saturation_kpa(tmax) + saturation_kpa(tmin)) / 2.0;
    match known {
        // Instruments err by a little: vapour a tenth above saturation is forgiven.
        Vapour::Pressure(ea) => wrong_input::within("ea", ea, 0.0, 1.1 * highest),
        Vapour::Humidity(most, least) => {
            let most = wrong_input::within("rhmax", most, 0.0, 100.0)?;
            let least = wrong_input::within("rhmin", least, 0.0, most)?;
            Ok((saturation_kpa(tmin) * most + saturation_kpa(tmax) * least) / 200.0)
        }
        Vapour::Unknown => Ok(saturation_kpa(tmin)),
    }
}

/// Equation 11, kPa.
fn saturation_kpa(temp_c: f64) -> f64 {
    0.6108 * (17.27 * temp_c / (temp_c + 237.3)).exp()
}

/// Equation 13, kPa per degree C.
fn curve_slope(temp_c: f64) -> f64 {
    4098.0 * saturation_kpa(temp_c) / (temp_c + 237.3).powi(2)
}

/// Equation 7, kPa.
fn pressure_kpa(elev_m: f64) -> f64 {
    101.3 * ((293.0 - 0.0065 * elev_m) / 293.0).powf(5.26)
}

/// Equation 8, kPa per degree C.
fn gamma_of(pressure_kpa: f64) -> f64 {
    0.665e-3 * pressure_kpa
}

/// Equation 39, MJ/m2/day. Of a day without sun above the horizon the sky is taken as clear.
fn back_radiation(tmax: f64, tmin: f64, ea: f64, rs: f64, rso: f64) -> f64 {
    let fourth = ((tmax + KELVIN).powi(4) + (tmin + KELVIN).powi(4)) / 2.0;
    let clear = if rso > 0.0 { (rs / rso).min(1.0) } else { 1.0 };
    STEFAN_BOLTZMANN * fourth * (0.34 - 0.14 * ea.sqrt()) * (1.35 * clear - 0.35)
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::Value;

    const ET0: &str = include_str!("../../../tests/reference/et0.json");

    fn near(got: f64, want: f64, within: f64, what: &str) {
        assert!((got - want).abs() <= within, "{what}: {got}, but {want} within {within}");
    }

    fn number(from: &Value, key: &str) -> f64 {
        from[key].as_f64().unwrap_or_else(|| panic!("no {key} in {from}"))
    }

    fn day(from: &Value, vapour: Vapour, light: Sunlight) -> DayWeather {
        DayWeather {
            lat_deg: number(from, "lat"),
            elev_m: Some(number(from, "elev_m")),
            doy: number(from, "doy") as u32,
            tmax_c: number(from, "tmax"),
            tmin_c: number(from, "tmin"),
            vapour,
            wind_m_s: Some(number(from, "u2")),
            light,
            soil_heat_mj: from["G"].as_f64().unwrap_or(0.0),
        }
    }

    fn parts(told: &Evaporation) -> Vec<(&'static str, f64)> {
        let whole = told.penman_monteith.unwrap();
        vec![
            ("delta", whole.delta),
            ("pressure", whole.pressure),
            ("gamma", whole.gamma),
            ("es", whole.es),
            ("ea", whole.ea),
            ("ra", told.ra),
            ("rso", whole.rso),
            ("rns", whole.rns),
            ("rnl", whole.rnl),
            ("rn", whole.rn),
            ("rs", whole.rs),
            ("et0", whole.et0_mm),
        ]
    }

    #[test]
    fn penman_monteith_and_hargreaves_agree_with_other_libraries_in_every_part() {
        let all: Value = serde_json::from_str(ET0).unwrap();
        let cases = all["computed_cases"].as_array().unwrap();
        assert_eq!(cases.len(), 26);
        for case in cases {
            let humidity = Vapour::Humidity(number(case, "rhmax"), number(case, "rhmin"));
            let told = evaporation(&day(case, humidity, Sunlight::Measured(number(case, "rs")))).unwrap();
            let mut seen = 0;
            for (name, got) in parts(&told) {
                if let Some(want) = case["out"][name].as_f64() {
                    near(got, want, 1e-6 * want.abs().max(1.0), &format!("{} {name}", case["id"]));
                    seen += 1;
                }
            }
            assert!(seen >= 11, "{} has {seen} parts", case["id"]);
            near(told.hargreaves_mm, number(case, "hargreaves_et0"), 1e-6, "hargreaves");
        }
    }

    #[test]
    fn examples_17_and_20_of_fao_56_with_all_they_print() {
        let all: Value = serde_json::from_str(ET0).unwrap();
        let example = |begins: &str| {
            let all = all["worked_examples"].as_array().unwrap();
            all.iter().find(|example| example["example"].as_str().unwrap().starts_with(begins)).unwrap()
        };
        let bangkok = example("FAO-56 Ex 17");
        let given = &bangkok["inputs"];
        let (vapour, light) = (Vapour::Pressure(number(given, "ea")), Sunlight::Sunshine(number(given, "sunshine_h")));
        let told = evaporation(&day(given, vapour, light)).unwrap();
        for (name, got) in parts(&told) {
            near(got, bangkok["computed"][name].as_f64().unwrap(), 1e-6 * got.max(1.0), name);
            // Printed with two or three digits behind the point, from figures rounded on the way.
            if let Some(printed) = bangkok["published"][name].as_f64() {
                near(got, printed, if printed < 1.0 { 0.0006 } else { 0.011 }, name);
            }
        }
        let lyon = example("FAO-56 Ex 20");
        // The example takes Ra from a table, 40.6; so does its sunlight.
        let sunlight = Sunlight::Measured(number(&lyon["computed"], "rs"));
        for (name, got) in parts(&evaporation(&day(&lyon["inputs"], Vapour::Unknown, sunlight)).unwrap()) {
            near(got, lyon["computed"][name].as_f64().unwrap(), 1e-6 * got.max(1.0), name);
        }
        let told = evaporation(&day(&lyon["inputs"], Vapour::Unknown, Sunlight::Range(INLAND))).unwrap();
        let whole = told.penman_monteith.unwrap();
        near(whole.ea, number(&lyon["published"], "ea"), 0.005, "ea");
        near(whole.rs, number(&lyon["published"], "rs"), 0.05, "rs");
        near(whole.et0_mm, number(&lyon["published"], "et0_pm"), 0.01, "et0");
        near(told.hargreaves_mm, number(&lyon["published"], "et0_hargreaves"), 0.05, "hargreaves");
    }

    #[test]
    fn example_18_of_fao_56_from_wind_at_ten_metres_and_sunshine() {
        // Brussels, 6 July, 100 m, 50.80 N: 3.9 mm/day with u2 2.078, es 1.997, ea 1.409, Rs 22.07, Rn 13.28; from memory.
        let wind = wind_at_2m(10.0 / 3.6, 10.0).unwrap();
        near(wind, 2.078, 0.001, "u2");
        let told = evaporation(&DayWeather {
            lat_deg: 50.80,
            elev_m: Some(100.0),
            doy: 187,
            tmax_c: 21.5,
            tmin_c: 12.3,
            vapour: Vapour::Humidity(84.0, 63.0),
            wind_m_s: Some(wind),
            light: Sunlight::Sunshine(9.25),
            soil_heat_mj: 0.0,
        })
        .unwrap();
        let whole = told.penman_monteith.unwrap();
        for (got, want, within, what) in [
            (whole.es, 1.997, 0.001, "es"),
            (whole.ea, 1.409, 0.001, "ea"),
            (told.ra, 41.09, 0.02, "ra"),
            (whole.rs, 22.07, 0.02, "rs"),
            (whole.rn, 13.28, 0.02, "rn"),
            (whole.et0_mm, 3.88, 0.01, "et0"),
        ] {
            near(got, want, within, what);
        }
    }

    #[test]
    fn examples_2_3_and_14_of_fao_56() {
        near(pressure_kpa(1800.0), 81.8, 0.05, "pressure");
        near(gamma_of(pressure_kpa(1800.0)), 0.054, 0.0005, "gamma");
        near((saturation_kpa(24.5) + saturation_kpa(15.0)) / 2.0, 2.39, 0.005, "es");
        near(wind_at_2m(3.2, 10.0).unwrap(), 2.4, 0.05, "u2");
    }

    #[test]
    fn without_sunlight_or_wind_hargreaves_alone_is_told() {
        let all: Value = serde_json::from_str(ET0).unwrap();
        let mut calm = day(&all["computed_cases"][0], Vapour::Unknown, Sunlight::Unknown);
        assert!(evaporation(&calm).unwrap().penman_monteith.is_none());
        calm.wind_m_s = None;
        calm.light = Sunlight::Measured(20.0);
        let told = evaporation(&calm).unwrap();
        assert!(told.penman_monteith.is_none() && told.hargreaves_mm > 1.0);
    }

    #[test]
    fn nonsense_is_refused_by_name() {
        let all: Value = serde_json::from_str(ET0).unwrap();
        let fine = day(&all["computed_cases"][0], Vapour::Humidity(90.0, 50.0), Sunlight::Measured(20.0));
        let wrongs = [
            (DayWeather { lat_deg: 95.0, ..fine }, "lat"),
            (DayWeather { tmin_c: 45.0, ..fine }, "tmin"),
            (DayWeather { tmax_c: f64::NAN, ..fine }, "tmax"),
            (DayWeather { vapour: Vapour::Humidity(101.0, 50.0), ..fine }, "rhmax"),
            (DayWeather { vapour: Vapour::Humidity(60.0, 70.0), ..fine }, "rhmin"),
            (DayWeather { vapour: Vapour::Pressure(9.0), ..fine }, "ea"),
            (DayWeather { light: Sunlight::Measured(-1.0), ..fine }, "rs"),
            (DayWeather { light: Sunlight::Sunshine(25.0), ..fine }, "sunshine_h"),
            (DayWeather { wind_m_s: Some(-1.0), ..fine }, "u2"),
            (DayWeather { soil_heat_mj: f64::INFINITY, ..fine }, "g"),
        ];
        for (wrong, name) in wrongs {
            let said = evaporation(&wrong).unwrap_err().to_string();
            assert!(said.starts_with(name), "{said} names no {name}");
        }
    }
}
