//! Bags and cells: what they hold and how long a plant may stay in them.
//!
//! Source: holding time by the cube root of volume is common practice and our own choice
//! (related: Poorter et al. 2012, Functional Plant Biology 39:839, where doubling the pot gave about 43 % more biomass).

use super::wrong_input::{self, WrongInput};

/// Days a plant may stay in a container of `volume_ml` when it may stay `known_days` in one of `known_volume_ml`:
/// T2 = T1 (V2 / V1)^(1/3). Common practice, ours.
///
/// # Errors
/// Days below 0, a volume that is not above 0, or no number.
pub(crate) fn holding_days(known_days: f64, known_volume_ml: f64, volume_ml: f64) -> Result<f64, WrongInput> {
    wrong_input::not_negative("known_days", known_days)?;
    wrong_input::positive("known_volume_ml", known_volume_ml)?;
    wrong_input::positive("volume_ml", volume_ml)?;
    wrong_input::answer(known_days * (volume_ml / known_volume_ml).cbrt())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn eight_times_the_volume_holds_twice_as_long() {
        let days = holding_days(90.0, 200.0, 1600.0).unwrap();
        assert!((days - 180.0).abs() < 1e-9, "{days}");
        assert_eq!(holding_days(90.0, 200.0, 200.0), Ok(90.0));
    }

    #[test]
    fn nonsense_is_refused() {
        assert!(holding_days(-1.0, 200.0, 400.0).is_err());
        assert!(holding_days(90.0, 0.0, 400.0).is_err());
        assert!(holding_days(90.0, 200.0, f64::NAN).is_err());
    }
}
