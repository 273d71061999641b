//! How hard the ground is, told by a rod pushed on a scale.
//!
//! Sources: force over area; limit from Bengough et al. 2011, Journal of Experimental Botany 62:59 (root elongation is
//! halved between 0.8 and 2 MPa). Friction along the rod makes the reading too high, which is the careful side.

use std::f64::consts::PI;

use super::wrong_input::{self, WrongInput};

/// Resistance in MPa at which roots grow at half their speed or less; they do not stop. Bengough et al. 2011, J. Exp. Bot. 62:59.
pub(crate) const ROOT_LIMIT_MPA: f64 = 2.0;
/// Days after a soaking from which ground is taken to be at field capacity. Common practice.
pub(crate) const DAYS_AFTER_SOAKING: u32 = 2;
/// Days after a soaking up to which ground is taken to be at field capacity; later its profile has dried. Ours, common
/// practice.
pub(crate) const DRIED_AFTER_DAYS: u32 = 14;
/// Newton per kilogram on a scale. Rounded standard gravity.
const NEWTON_PER_KG: f64 = 9.81;

/// Resistance at the tip in MPa: push on the scale in kg x 9.81 over the tip's area π/4 d² in mm² (N per mm² = MPa).
/// About 10 kg on a rod of 8 mm is 2 MPa.
///
/// # Errors
/// A push below 0, a rod that is not above 0 mm, or no number.
pub(crate) fn rod_resistance_mpa(push_kg: f64, rod_mm: f64) -> Result<f64, WrongInput> {
    wrong_input::not_negative("push_kg", push_kg)?;
    let tip_mm2 = tip_mm2(rod_mm)?;
    wrong_input::answer(push_kg * NEWTON_PER_KG / tip_mm2)
}

/// The push on the scale in kg that gives a resistance in MPa at the tip of a rod: the inverse of [`rod_resistance_mpa`].
///
/// # Errors
/// A resistance below 0, a rod that is not above 0 mm, or no number.
pub(crate) fn rod_push_kg(mpa: f64, rod_mm: f64) -> Result<f64, WrongInput> {
    wrong_input::not_negative("mpa", mpa)?;
    let tip_mm2 = tip_mm2(rod_mm)?;
    wrong_input::answer(mpa * tip_mm2 / NEWTON_PER_KG)
}

/// Whether the ground is at field capacity, so that a reading tells of the ground and not of its dryness. What was said
/// of it (`wet`) leads; else from [`DAYS_AFTER_SOAKING`] to [`DRIED_AFTER_DAYS`] after a soaking it is. None where
/// neither was said. Common practice.
pub(crate) fn at_field_capacity(wet: Option<bool>, days_since_soaking: Option<f64>) -> Option<bool> {
    let days = f64::from(DAYS_AFTER_SOAKING)..=f64::from(DRIED_AFTER_DAYS);
    wet.or(days_since_soaking.map(|since| days.contains(&since)))
}

/// Area in mm² of a tip; so thin a rod that it has no area is refused.
fn tip_mm2(rod_mm: f64) -> Result<f64, WrongInput> {
    wrong_input::positive("rod_mm", rod_mm)?;
    wrong_input::positive("rod_mm", PI / 4.0 * rod_mm * rod_mm)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ten_kilograms_on_an_eight_millimetre_rod_is_about_the_limit() {
        // 10 x 9.81 / 50.27 mm2, by hand.
        let mpa = rod_resistance_mpa(10.0, 8.0).unwrap();
        assert!((mpa - 1.9516).abs() < 0.0001, "{mpa}");
        // 2 MPa x 50.27 mm2 / 9.81, by hand.
        let at_limit = rod_resistance_mpa(10.248, 8.0).unwrap();
        assert!((at_limit - ROOT_LIMIT_MPA).abs() < 0.0002, "{at_limit}");
    }

    #[test]
    fn two_megapascals_are_so_many_kilograms_on_a_rod() {
        // 2 x 50.27 / 9.81 and 2 x 78.54 / 9.81, by hand.
        assert!((rod_push_kg(2.0, 8.0).unwrap() - 10.248).abs() < 0.001);
        assert!((rod_push_kg(2.0, 10.0).unwrap() - 16.012).abs() < 0.001);
        assert!(rod_push_kg(2.0, 0.0).is_err());
    }

    #[test]
    fn body_weight_on_such_a_rod_proves_nothing() {
        assert!((10.0..25.0).contains(&rod_resistance_mpa(70.0, 8.0).unwrap()));
    }

    #[test]
    fn a_dry_or_undated_reading_does_not_count() {
        let said = |wet: Option<bool>, days: Option<f64>| at_field_capacity(wet, days);
        assert_eq!((said(None, None), said(None, Some(f64::NAN))), (None, Some(false)));
        assert_eq!((said(None, Some(1.9)), said(None, Some(2.0))), (Some(false), Some(true)));
        assert_eq!((said(None, Some(14.0)), said(None, Some(14.1))), (Some(true), Some(false)));
        // What was said aloud leads over the days.
        assert_eq!((said(Some(true), Some(40.0)), said(Some(true), Some(0.0))), (Some(true), Some(true)));
        assert_eq!(said(Some(false), Some(3.0)), Some(false));
    }

    #[test]
    fn nonsense_is_refused() {
        assert!(rod_resistance_mpa(-1.0, 8.0).is_err());
        assert!(rod_resistance_mpa(10.0, 0.0).is_err());
        assert!(rod_resistance_mpa(10.0, f64::NAN).is_err());
        assert!(rod_resistance_mpa(10.0, 1e-200).is_err());
        assert!(rod_resistance_mpa(10.0, f64::INFINITY).is_err());
    }
}
