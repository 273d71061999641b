//! How long seed lasts for which there are no constants: days by how it is kept.
//!
//! Source: ours. Viability falls on a straight line from what it was when collected to nothing at the end of its life, and a
//! stated life may be half as long or twice. Seed that dies when dried is counted from the day of collection.

use super::wrong_input::{self, WrongInput};
use crate::base::Range;

/// Shortest life against the stated one. Ours.
pub const SHORTEST_LIFE: f64 = 0.5;
/// Longest life against the stated one. Ours.
pub const LONGEST_LIFE: f64 = 2.0;

/// Share viable (0 to 1; low, likely, high) of seed that was `fresh_share` viable when collected, after `age_days`, kept so
/// that it is said to last `life_days`.
///
/// # Errors
/// A share outside 0 to 1, an age below 0, a life that is not above 0, or no number.
pub fn share_left(fresh_share: f64, age_days: f64, life_days: f64) -> Result<Range, WrongInput> {
    wrong_input::share("fresh_share", fresh_share)?;
    wrong_input::not_negative("age_days", age_days)?;
    wrong_input::positive("life_days", life_days)?;
    let left = |life: f64| fresh_share * (1.0 - age_days / life).max(0.0);
    Ok(Range { low: left(life_days * SHORTEST_LIFE), likely: left(life_days), high: left(life_days * LONGEST_LIFE) })
}

/// Days from now until the share viable is down to `least_share` (low, likely, high; 0 where it is already).
///
/// # Errors
/// As [`share_left`]; a fresh share or least share outside 0 to 1.
pub fn days_until(fresh_share: f64, age_days: f64, life_days: f64, least_share: f64) -> Result<Range, WrongInput> {
    wrong_input::share("least_share", least_share)?;
    share_left(fresh_share, age_days, life_days)?;
    let part = if fresh_share > 0.0 { (1.0 - least_share / fresh_share).max(0.0) } else { 0.0 };
    let until = |life: f64| (life * part - age_days).max(0.0);
    Ok(Range { low: until(life_days * SHORTEST_LIFE), likely: until(life_days), high: until(life_days * LONGEST_LIFE) })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_way_through_its_life_half_is_left() {
        let left = share_left(0.8, 30.0, 60.0).unwrap();
        assert_eq!(left, Range { low: 0.0, likely: 0.4, high: 0.8 * 0.75 });
        let until = days_until(0.8, 10.0, 60.0, 0.4).unwrap();
        assert_eq!(until, Range { low: 5.0, likely: 20.0, high: 50.0 });
        assert_eq!(days_until(0.8, 90.0, 60.0, 0.4).unwrap().likely, 0.0);
        assert_eq!(days_until(0.3, 0.0, 60.0, 0.4).unwrap().high, 0.0);
    }

    #[test]
    fn nonsense_is_refused() {
        assert!(share_left(1.2, 1.0, 10.0).is_err());
        assert!(share_left(0.8, -1.0, 10.0).is_err());
        assert!(share_left(0.8, 1.0, 0.0).is_err());
        assert!(days_until(0.8, 1.0, f64::NAN, 0.4).is_err());
    }
}
