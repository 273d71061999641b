//! How long seed lasts for which there are no constants: days by how it is kept.
//!
//! The lives of the seeds of a lot are spread as a normal curve, so what lives is level for a while and then falls: a straight line in
//! probits of time, as Ellis & Roberts 1980, Annals of Botany 45:13, have it. Half of what lived is gone at the stated life, which
//! may be half as long or twice. Half life and spread: ours. Seed that dies when dried is counted from the day of collection.

use super::distribution;
use super::wrong_input::{self, WrongInput};

/// Shortest life against the stated one. Ours.
pub(crate) const SHORTEST_LIFE: f64 = 0.5;
/// Longest life against the stated one. Ours.
pub(crate) const LONGEST_LIFE: f64 = 2.0;
/// Spread (standard deviation) of the lives of single seeds, as a part of the stated life. Ours.
pub(crate) const SPREAD_SHARE: f64 = 0.25;

/// Of what lived at an age of `from_days` the share (0 to 1) that lives at `to_days`, where half lives `life_days`.
///
/// # Errors
/// A life that is not above 0, an age below 0, the second before the first, or no number.
pub fn still_alive(life_days: f64, from_days: f64, to_days: f64) -> Result<f64, WrongInput> {
    wrong_input::positive("life_days", life_days)?;
    wrong_input::not_negative("from_days", from_days)?;
    wrong_input::not_negative("to_days", to_days)?;
    if to_days < from_days {
        return Err(WrongInput::OutOfOrder { input: "to_days" });
    }
    let (before, now) = (alive(life_days, from_days), alive(life_days, to_days));
    Ok(if before > 0.0 { (now / before).min(1.0) } else { 0.0 })
}

/// Days after an age of `from_days` until `part` (0 to 1) of what lived then is left; infinite for none.
///
/// # Errors
/// As [`still_alive`]; a part outside 0 to 1.
pub fn days_until(life_days: f64, from_days: f64, part: f64) -> Result<f64, WrongInput> {
    wrong_input::share("part", part)?;
    still_alive(life_days, from_days, from_days)?;
    let target = part * alive(life_days, from_days);
    let age = match distribution::probit(target) {
        Some(probit) => life_days * (1.0 - SPREAD_SHARE * probit),
        // So old that nothing can be told apart from nothing.
        None if part > 0.0 => from_days,
        None => f64::INFINITY,
    };
    Ok((age - from_days).max(0.0))
}

/// The share alive at an age of what is alive at the beginning.
fn alive(life_days: f64, age_days: f64) -> f64 {
    distribution::normal_share((1.0 - age_days / life_days) / SPREAD_SHARE)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(got: f64, want: f64) {
        assert!((got - want).abs() < 5e-4, "{got} is not {want}");
    }

    /// Normal areas by a printed table: 2.286 deviations 0.9889, 1 deviation 0.8413, 0 half.
    #[test]
    fn life_is_level_and_then_falls() {
        near(still_alive(7.0, 0.0, 3.0).unwrap(), 0.9889);
        near(still_alive(60.0, 0.0, 45.0).unwrap(), 0.8413);
        near(still_alive(60.0, 0.0, 60.0).unwrap(), 0.5);
        near(still_alive(60.0, 0.0, 75.0).unwrap(), 0.1587);
        near(still_alive(60.0, 0.0, 120.0).unwrap(), 0.0);
        // Of what still lived on day 45.
        near(still_alive(60.0, 45.0, 60.0).unwrap(), 0.5 / 0.8413);
        assert_eq!(still_alive(1.0, 300.0, 400.0).unwrap(), 0.0);
    }

    #[test]
    fn half_is_gone_at_the_stated_life() {
        assert!((days_until(60.0, 0.0, 0.5).unwrap() - 60.0).abs() < 0.01);
        near(days_until(60.0, 45.0, 0.5 / 0.841_344_7).unwrap(), 15.0);
        near(days_until(60.0, 10.0, 1.0).unwrap(), 0.0);
        assert_eq!(days_until(60.0, 10.0, 0.0).unwrap(), f64::INFINITY);
    }

    #[test]
    fn nonsense_is_refused() {
        assert!(still_alive(0.0, 1.0, 2.0).is_err());
        assert!(still_alive(10.0, -1.0, 2.0).is_err());
        assert!(still_alive(10.0, 2.0, 1.0).is_err());
        assert!(days_until(10.0, 1.0, f64::NAN).is_err());
        assert!(days_until(10.0, 1.0, 1.2).is_err());
    }
}
