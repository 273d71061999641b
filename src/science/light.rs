//! How much of the open sky's light reaches a seedling.
//!
//! Sources: Monsi & Saeki 1953 (Beer's law in leaves), crowns scattered at random (geometry); light as the mean of paired
//! lux readings is common practice.

use std::f64::consts::PI;

use super::wrong_input::{self, WrongInput};

/// Square metres of a hectare.
const SQUARE_METRES_PER_HA: f64 = 10_000.0;

/// Two readings taken within two minutes of each other, in lux.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct LuxPair {
    /// At seedling height, under the shade; 0 or more.
    pub under_lux: f64,
    /// In the open; above 0.
    pub open_lux: f64,
}

/// Crowns of one kind on a hectare.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Crowns {
    /// Plants on a hectare, 0 or more.
    pub plants_per_ha: f64,
    /// Radius of a crown in metres, 0 or more.
    pub crown_radius_m: f64,
    /// Share of the light a crown holds back, 0 to 1.
    pub opacity: f64,
}

/// Share of the open light, 0 to 1: the mean of the ratios under/open. Common practice; ten pairs or more, overcast or
/// around noon. Lux reads leaf light a little too high. A mean above 1 (a cloud between two readings) is given as 1.
///
/// # Errors
/// No pair, a reading below 0, an open reading of 0, or no number.
pub fn light_share(pairs: &[LuxPair]) -> Result<f64, WrongInput> {
    if pairs.is_empty() {
        return Err(WrongInput::Missing { input: "readings" });
    }
    let mut sum = 0.0;
    for pair in pairs {
        wrong_input::not_negative("under_lux", pair.under_lux)?;
        wrong_input::positive("open_lux", pair.open_lux)?;
        sum += pair.under_lux / pair.open_lux;
    }
    Ok(wrong_input::answer(sum / pairs.len() as f64)?.min(1.0))
}

/// The largest share of the shade that may go at one time where light may become so many times as much, 0 to 1: the step times the
/// light is reached when the rest of the shade is what it leaves. Arithmetic.
///
/// # Errors
/// A step below 1, a share outside 0 to 1, no light at all, or no number.
pub(crate) fn largest_shade_share(most_step: f64, light_share: f64) -> Result<f64, WrongInput> {
    wrong_input::share("light_share", light_share)?;
    wrong_input::positive("light_share", light_share)?;
    wrong_input::not_negative("most_step", most_step - 1.0)?;
    let shade = 1.0 - light_share;
    if shade <= 0.0 {
        return Ok(1.0);
    }
    Ok(wrong_input::answer((most_step - 1.0) * light_share / shade)?.min(1.0))
}

/// How many times the light of a tray's last days a bed gives: bed share over tray share (each 0 to 1, the tray's above 0).
/// A ratio, not a difference: from 80 to 65 % shade is 1.75 times the light.
///
/// # Errors
/// A share outside 0 to 1, a tray in the dark, or no number.
pub(crate) fn exposure_ratio(bed_light_share: f64, tray_light_share: f64) -> Result<f64, WrongInput> {
    wrong_input::share("bed_light_share", bed_light_share)?;
    wrong_input::share("tray_light_share", tray_light_share)?;
    wrong_input::positive("tray_light_share", tray_light_share)?;
    wrong_input::answer(bed_light_share / tray_light_share)
}

/// Share of light that passes leaves: exp(-k LAI), with k 0 or more and leaf area index in m² leaf per m² ground.
/// Monsi & Saeki 1953.
///
/// # Errors
/// A value below 0 or no number.
pub fn transmitted_share(extinction: f64, leaf_area_index: f64) -> Result<f64, WrongInput> {
    wrong_input::not_negative("extinction", extinction)?;
    wrong_input::not_negative("leaf_area_index", leaf_area_index)?;
    Ok((-extinction * leaf_area_index).exp())
}

/// Shade share 0 to 1 under crowns scattered at random, which overlap as chance has it:
/// 1 - product over kinds of (1 - opacity x crown area / 10000)^plants per hectare. Geometry.
///
/// # Errors
/// A number or radius below 0, a crown of more than a hectare, an opacity outside 0 to 1, or no number.
pub fn crown_shade(kinds: &[Crowns]) -> Result<f64, WrongInput> {
    let widest_m = (SQUARE_METRES_PER_HA / PI).sqrt();
    let mut light = 1.0;
    for crowns in kinds {
        wrong_input::not_negative("plants_per_ha", crowns.plants_per_ha)?;
        wrong_input::within("crown_radius_m", crowns.crown_radius_m, 0.0, widest_m)?;
        wrong_input::share("opacity", crowns.opacity)?;
        let area_m2 = PI * crowns.crown_radius_m * crowns.crown_radius_m;
        light *= (1.0 - crowns.opacity * area_m2 / SQUARE_METRES_PER_HA).max(0.0).powf(crowns.plants_per_ha);
    }
    Ok(1.0 - light)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pair(under_lux: f64, open_lux: f64) -> LuxPair {
        LuxPair { under_lux, open_lux }
    }

    #[test]
    fn light_is_the_mean_of_ratios_and_not_the_ratio_of_means() {
        // (0.2 + 0.6) / 2; the ratio of sums would be 0.29.
        let share = light_share(&[pair(14_000.0, 70_000.0), pair(12_000.0, 20_000.0)]).unwrap();
        assert!((share - 0.4).abs() < 1e-12, "{share}");
        assert_eq!(light_share(&[pair(51_000.0, 50_000.0)]), Ok(1.0));
    }

    #[test]
    fn the_same_step_of_shade_is_more_light_in_the_dark() {
        let dark = exposure_ratio(0.35, 0.20).unwrap();
        let bright = exposure_ratio(1.0, 0.85).unwrap();
        assert!((dark - 1.75).abs() < 1e-12 && (bright - 1.176).abs() < 0.001, "{dark} {bright}");
    }

    #[test]
    fn kinds_of_crowns_multiply_their_light() {
        let banana = Crowns { plants_per_ha: 1111.0, crown_radius_m: 1.6, opacity: 0.6 };
        let pigeon_pea = Crowns { plants_per_ha: 2500.0, crown_radius_m: 0.8, opacity: 0.5 };
        let light = |kinds: &[Crowns]| 1.0 - crown_shade(kinds).unwrap();
        assert!((light(&[banana, pigeon_pea]) - light(&[banana]) * light(&[pigeon_pea])).abs() < 1e-12);
        assert_eq!(crown_shade(&[]), Ok(0.0));
    }

    #[test]
    fn nonsense_is_refused() {
        assert!(light_share(&[]).is_err());
        assert!(light_share(&[pair(100.0, 0.0)]).is_err());
        assert!(light_share(&[pair(-1.0, 100.0)]).is_err());
        assert!(exposure_ratio(0.5, 0.0).is_err());
        assert!(exposure_ratio(1.2, 0.5).is_err());
        assert!(transmitted_share(f64::NAN, 3.0).is_err());
        assert!(transmitted_share(0.5, -1.0).is_err());
        assert!(crown_shade(&[Crowns { plants_per_ha: 10.0, crown_radius_m: 60.0, opacity: 0.5 }]).is_err());
        assert!(crown_shade(&[Crowns { plants_per_ha: -1.0, crown_radius_m: 6.0, opacity: 0.5 }]).is_err());
    }

    #[test]
    fn the_largest_share_of_the_shade_to_take_at_once_is_that_of_the_handbook() {
        let table = include_str!("../../tests/reference/handbook_examples.tsv");
        let cells: Vec<&str> = table.lines().find(|line| line.starts_with("L04\t")).unwrap().split('\t').collect();
        let of = |text: &str| serde_json::from_str::<serde_json::Value>(text).unwrap();
        let (given, want) = (of(cells[2]), of(cells[3]));
        let step = given["step_max"].as_f64().unwrap();
        for (light, share) in given["light"].as_array().unwrap().iter().zip(want["share"].as_array().unwrap()) {
            let got = largest_shade_share(step, light.as_f64().unwrap()).unwrap();
            assert!((got - share.as_f64().unwrap()).abs() <= 0.0005, "{light}: {got} {share}");
        }
        assert_eq!(largest_shade_share(1.6, 1.0), Ok(1.0));
        assert!(largest_shade_share(0.9, 0.5).is_err() && largest_shade_share(1.6, 0.0).is_err());
        assert!(largest_shade_share(1.6, 1.2).is_err());
    }
}
