//! How far a share found in a sample may be from the true one: exact and Bayesian intervals beside Wilson's.
//!
//! Sources: Clopper & Pearson 1934, Biometrika 26:404; Jeffreys interval as in Brown, Cai & DasGupta 2001, Statistical
//! Science 16:101 (both from memory). Wilson 1927 stands in `sampling.rs`.

use super::distribution;
use super::wrong_input::{self, WrongInput};

/// The two ends of an interval, low <= high.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Interval {
    /// The low end.
    pub low: f64,
    /// The high end.
    pub high: f64,
}

/// Exact interval of `found` of `looked_at` at a `level` above 0 and below 1: at least that sure whatever the share, so
/// wider than needed. The ends are shares. Clopper & Pearson 1934.
///
/// # Errors
/// Nothing looked at, more found than looked at, or a level that is no level.
pub fn clopper_pearson(found: u32, looked_at: u32, level: f64) -> Result<Interval, WrongInput> {
    let (x, n, tail) = asked(found, looked_at, level)?;
    let low = if found == 0 { 0.0 } else { distribution::beta_quantile(tail, x, n - x + 1.0) };
    let high = if found == looked_at { 1.0 } else { distribution::beta_quantile(1.0 - tail, x + 1.0, n - x) };
    Ok(Interval { low, high })
}

/// Interval with equal tails of the beta distribution (found + 1/2, rest + 1/2), without a change at none and all, so that
/// there the share found lies outside. Jeffreys' prior.
///
/// # Errors
/// As [`clopper_pearson`].
pub fn jeffreys(found: u32, looked_at: u32, level: f64) -> Result<Interval, WrongInput> {
    let (x, n, tail) = asked(found, looked_at, level)?;
    let (a, b) = (x + 0.5, n - x + 0.5);
    let low = distribution::beta_quantile(tail, a, b);
    // From the other side, so that an end near 1 is as exact as one near 0.
    let high = 1.0 - distribution::beta_quantile(tail, b, a);
    Ok(Interval { low, high })
}

fn asked(found: u32, looked_at: u32, level: f64) -> Result<(f64, f64, f64), WrongInput> {
    wrong_input::seeds("n", looked_at)?;
    wrong_input::part_of("x", u64::from(found), "n", u64::from(looked_at))?;
    // Refuses what is no level.
    distribution::two_sided_z(level)?;
    Ok((f64::from(found), f64::from(looked_at), (1.0 - level) / 2.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn at_none_and_all_the_exact_interval_has_a_closed_form() {
        let none = clopper_pearson(0, 10, 0.95).unwrap();
        assert_eq!(none.low, 0.0);
        assert!((none.high - (1.0 - 0.025_f64.powf(0.1))).abs() < 1e-12, "{}", none.high);
        let all = clopper_pearson(10, 10, 0.95).unwrap();
        assert_eq!(all.high, 1.0);
        assert!((all.low - 0.025_f64.powf(0.1)).abs() < 1e-12, "{}", all.low);
    }

    #[test]
    fn nonsense_is_refused() {
        for interval in [clopper_pearson, jeffreys] {
            assert!(interval(1, 0, 0.95).is_err());
            assert!(interval(11, 10, 0.95).is_err());
            assert!(interval(5, 10, 1.0).is_err());
            assert!(interval(5, 10, f64::NAN).is_err());
            assert!(interval(5, 1_000_000_000, 0.95).is_err());
            assert!(interval(5_000_000, 10_000_000, 0.95).is_ok());
        }
    }
}
