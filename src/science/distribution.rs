//! Quantiles and tails of the usual distributions: the one file that speaks to the statistics library.

use statrs::distribution::{ChiSquared, ContinuousCDF, Normal, StudentsT};

use super::wrong_input::{self, WrongInput};

/// z such that the middle of a standard normal between -z and z holds `level` (above 0, below 1).
pub(super) fn two_sided_z(level: f64) -> Result<f64, WrongInput> {
    let upper = upper_point(level)?;
    wrong_input::answer(Normal::standard().inverse_cdf(upper))
}

/// t such that the middle of Student's t with `freedom` degrees of freedom holds `level` (above 0, below 1).
pub(super) fn two_sided_t(level: f64, freedom: f64) -> Result<f64, WrongInput> {
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
