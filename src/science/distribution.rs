//! Quantiles and tails of the usual distributions: the one file that speaks to the statistics library.

use statrs::distribution::{ChiSquared, ContinuousCDF, Normal, StudentsT};
use statrs::function::beta::{beta_reg, inv_beta_reg};
use statrs::function::gamma;

use super::wrong_input::{self, WrongInput};

/// z such that the middle of a standard normal between -z and z holds `level` (above 0, below 1).
pub(super) fn two_sided_z(level: f64) -> Result<f64, WrongInput> {
    let upper = upper_point(level)?;
    wrong_input::answer(Normal::standard().inverse_cdf(upper))
}

/// Degrees of freedom from which the expansion of Student's t is exact enough (the next term is below 1e-6 for any level that
/// differs from 1); the library's search grows slower and less exact with them.
const EXPANDED_FROM: f64 = 1000.0;

/// t such that the middle of Student's t with `freedom` degrees of freedom holds `level` (above 0, below 1). From a thousand
/// degrees of freedom by the expansion 26.7.5 of Abramowitz and Stegun 1964, Handbook of Mathematical Functions.
pub(super) fn two_sided_t(level: f64, freedom: f64) -> Result<f64, WrongInput> {
    if freedom >= EXPANDED_FROM {
        let z = two_sided_z(level)?;
        let first = (z.powi(3) + z) / 4.0;
        let second = (5.0 * z.powi(5) + 16.0 * z.powi(3) + 3.0 * z) / 96.0;
        let third = (3.0 * z.powi(7) + 19.0 * z.powi(5) + 17.0 * z.powi(3) - 15.0 * z) / 384.0;
        return wrong_input::answer(z + first / freedom + second / freedom.powi(2) + third / freedom.powi(3));
    }
    let upper = upper_point(level)?;
    let student = StudentsT::new(0.0, 1.0, freedom).map_err(|_| WrongInput::NotPositive { input: "freedom" })?;
    wrong_input::answer(student.inverse_cdf(upper))
}

/// Probability that chi-squared with `freedom` degrees of freedom is at least `value` (0 or more).
pub(super) fn chi_squared_tail(value: f64, freedom: f64) -> Result<f64, WrongInput> {
    wrong_input::not_negative("chi_squared", value)?;
    let chi = ChiSquared::new(freedom).map_err(|_| WrongInput::NotPositive { input: "freedom" })?;
    wrong_input::answer(chi.sf(value))
}

/// Standard normal quantile of a share above 0 and below 1; nothing at the ends, where it is infinite.
pub(super) fn probit(share: f64) -> Option<f64> {
    (share > 0.0 && share < 1.0).then(|| Normal::standard().inverse_cdf(share))
}

/// Share of a standard normal below `value`.
pub(super) fn normal_share(value: f64) -> f64 {
    Normal::standard().cdf(value)
}

/// Natural logarithm of the gamma function of a number above 0.
pub(super) fn ln_gamma(value: f64) -> f64 {
    gamma::ln_gamma(value)
}

/// Natural logarithm of the beta function, both above 0.
pub(super) fn ln_beta(a: f64, b: f64) -> f64 {
    ln_gamma(a) + ln_gamma(b) - ln_gamma(a + b)
}

/// Derivative of [`ln_gamma`].
pub(super) fn digamma(value: f64) -> f64 {
    gamma::digamma(value)
}

/// Share of a beta distribution (a and b above 0) below `value`.
pub(super) fn beta_share(value: f64, a: f64, b: f64) -> f64 {
    if value <= 0.0 {
        0.0
    } else if value >= 1.0 {
        1.0
    } else {
        beta_reg(a, b, value)
    }
}

/// Quantile of a beta distribution, a and b above 0, `share` from 0 to 1. The library's own value is made exact by
/// Newton's steps kept inside a bracket.
pub(super) fn beta_quantile(share: f64, a: f64, b: f64) -> f64 {
    if share <= 0.0 {
        return 0.0;
    }
    if share >= 1.0 {
        return 1.0;
    }
    let ln_whole = ln_beta(a, b);
    let density = |x: f64| ((a - 1.0) * x.ln() + (b - 1.0) * (-x).ln_1p() - ln_whole).exp();
    let (mut low, mut high) = (0.0_f64, 1.0_f64);
    let guess = inv_beta_reg(a, b, share);
    let mut x = if guess > 0.0 && guess < 1.0 { guess } else { 0.5 };
    for _ in 0..MOST_STEPS {
        let off = beta_share(x, a, b) - share;
        if off > 0.0 {
            high = high.min(x);
        } else {
            low = low.max(x);
        }
        let next = x - off / density(x);
        // Halving by ratio where the bracket spans orders of magnitude, as at quantiles near 0.
        let middle = if low > 0.0 && high / low > 4.0 { (low * high).sqrt() } else { (low + high) / 2.0 };
        let next = if next > low && next < high { next } else { middle };
        if (next - x).abs() <= 1e-15 * x {
            return next;
        }
        x = next;
    }
    x
}

/// Most steps of a search for a quantile: halving alone needs about 60.
const MOST_STEPS: usize = 100;

fn upper_point(level: f64) -> Result<f64, WrongInput> {
    wrong_input::share("level", level)?;
    let upper = (1.0 + level) / 2.0;
    // At 0 the interval has no width and at 1 no end.
    if upper > 0.5 && upper < 1.0 {
        Ok(upper)
    } else {
        Err(WrongInput::Outside { input: "level", low: 0.0, high: 1.0 })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn close(got: Result<f64, WrongInput>, want: f64) {
        let got = got.unwrap();
        assert!((got - want).abs() <= 1e-9 * want.abs().max(1e-3), "{got} is not {want}");
    }

    // Expected values: scipy 1.17.1, which agree with R's own quantile functions to 13 digits.
    #[test]
    fn quantiles_and_tails_agree_with_scipy() {
        close(two_sided_z(0.95), 1.959_963_984_540_05);
        close(two_sided_z(0.99), 2.575_829_303_548_9);
        close(two_sided_t(0.95, 3.0), 3.182_446_305_283_71);
        close(two_sided_t(0.99, 19.0), 2.860_934_606_464_98);
        close(two_sided_t(0.95, 1000.0), 1.962_339_080_826_41);
        close(chi_squared_tail(2.176, 1.0), 0.140_178_372_325_52);
        close(chi_squared_tail(2.615, 3.0), 0.454_865_919_585_422);
        close(chi_squared_tail(62.169, 30.0), 0.000_498_979_277_900_853);
    }

    /// Every figure of the file that has a function here, but those of numbers of n, which `chance.rs` gives.
    #[test]
    fn every_function_agrees_with_scipy() {
        let all: serde_json::Value = serde_json::from_str(include_str!("../../tests/reference/stats.json")).unwrap();
        let mut checked = 0;
        for check in all["checks"].as_array().unwrap() {
            let x: Vec<f64> = check["args"].as_array().unwrap().iter().map(|value| value.as_f64().unwrap()).collect();
            let got = match check["f"].as_str().unwrap() {
                "norm_ppf" => probit(x[0]).unwrap(),
                "norm_cdf" => normal_share(x[0]),
                "t_ppf" if x[0] > 0.5 => two_sided_t(2.0 * x[0] - 1.0, x[1]).unwrap(),
                "chi2_sf" => chi_squared_tail(x[0], x[1]).unwrap(),
                "beta_ppf" => beta_quantile(x[0], x[1], x[2]),
                "beta_cdf" => beta_share(x[0], x[1], x[2]),
                "lgamma" => ln_gamma(x[0]),
                _ => continue,
            };
            let want = check["v"].as_f64().unwrap();
            assert!((got - want).abs() <= 1e-9 * want.abs() + 1e-14, "{check}: {got}");
            checked += 1;
        }
        assert!(checked > 110, "only {checked}");
    }

    #[test]
    fn refuses_levels_that_have_no_interval() {
        for level in [0.0, 1.0, -0.1, 1.5, 1.0 - f64::EPSILON / 2.0, f64::NAN] {
            assert!(two_sided_z(level).is_err(), "{level}");
            assert!(two_sided_t(level, 5.0).is_err(), "{level}");
        }
        assert!(two_sided_t(0.95, 0.0).is_err());
        assert!(chi_squared_tail(-1.0, 3.0).is_err());
    }
}
