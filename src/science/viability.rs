//! How seed that can be dried loses its life in storage.
//!
//! v = Ki - p / sigma, log10 sigma = KE - CW log10 m - CH t - CQ t²: v and Ki probits of the viable share now and at the
//! beginning, p days, m moisture in percent of fresh weight, t °C. Source: Ellis & Roberts 1980, Annals of Botany 45:13 and
//! 31. Good for about 5 to 25 % moisture and -20 to 90 °C, for orthodox seed and dry intermediate seed; there is no equation
//! for seed that dies when dried.

use super::distribution;
use super::wrong_input::{self, WrongInput};

/// Driest seed, % of fresh weight, for which the equation is good. Ellis & Roberts 1980, as documented by others.
pub(crate) const DRIEST_PCT: f64 = 5.0;
/// Wettest seed, % of fresh weight, for which the equation is good.
pub(crate) const WETTEST_PCT: f64 = 25.0;
/// Coldest store, °C, for which the equation is good.
pub(crate) const COLDEST_C: f64 = -20.0;
/// Warmest store, °C, for which the equation is good.
pub(crate) const WARMEST_C: f64 = 90.0;
/// Of n seeds tested, all viable counts as all but this part of one, and none as this part: else the probit has no end.
/// As found in printed output of others' software (50 of 50 gave 99.5 %).
pub(crate) const PART_OF_A_SEED: f64 = 0.25;

/// The four constants of a species.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct ViabilityConstants {
    /// Of the species.
    pub ke: f64,
    /// Of moisture.
    pub cw: f64,
    /// Of temperature, per °C.
    pub ch: f64,
    /// Of temperature squared, per °C².
    pub cq: f64,
}

/// How seed is stored.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Store {
    /// Moisture, % of fresh weight, above 0 and below 100.
    pub moisture_pct: f64,
    /// Temperature, °C, from -100 to 100.
    pub temp_c: f64,
}

impl Store {
    /// Whether moisture and temperature are within what the equation is good for.
    pub(crate) fn within_limits(self) -> bool {
        (DRIEST_PCT..=WETTEST_PCT).contains(&self.moisture_pct) && (COLDEST_C..=WARMEST_C).contains(&self.temp_c)
    }
}

/// What becomes of a lot in store. Nothing where the beginning is 0 or 100 % of an unknown number of seeds.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Viability {
    /// Probit of the viability at the beginning.
    pub ki: Option<f64>,
    /// Days in which the probit falls by one.
    pub sigma_days: f64,
    /// Probit after the days.
    pub v_probit: Option<f64>,
    /// Viability after the days, %.
    pub viability_pct: Option<f64>,
    /// Days to 50 %; below 0 where it began below that.
    pub p50_days: Option<f64>,
}

/// Days in which the probit falls by one. Ellis & Roberts 1980.
///
/// # Errors
/// Moisture or temperature that no seed has, no number, or an answer too large.
pub fn sigma_days(constants: ViabilityConstants, store: Store) -> Result<f64, WrongInput> {
    let ViabilityConstants { ke, cw, ch, cq } = constants;
    for (input, value) in [("KE", ke), ("CW", cw), ("CH", ch), ("CQ", cq)] {
        wrong_input::number(input, value)?;
    }
    wrong_input::positive("moisture_pct_fresh", store.moisture_pct)?;
    wrong_input::within("moisture_pct_fresh", store.moisture_pct, 0.0, 99.999)?;
    wrong_input::within("temp_c", store.temp_c, -100.0, 100.0)?;
    let t = store.temp_c;
    wrong_input::answer(10f64.powf(ke - cw * store.moisture_pct.log10() - ch * t - cq * t * t))
}

/// Viability of a lot that began with `initial_pct` after `days` in store.
///
/// # Errors
/// A percentage outside 0 to 100, days below 0, or as [`sigma_days`].
pub fn viability(
    constants: ViabilityConstants,
    store: Store,
    initial_pct: f64,
    days: f64,
) -> Result<Viability, WrongInput> {
    wrong_input::within("initial_pct", initial_pct, 0.0, 100.0)?;
    wrong_input::not_negative("days", days)?;
    let sigma_days = sigma_days(constants, store)?;
    let ki = distribution::probit(initial_pct / 100.0);
    let v_probit = ki.map(|ki| ki - days / sigma_days).filter(|v| v.is_finite());
    Ok(Viability {
        ki,
        sigma_days,
        v_probit,
        viability_pct: v_probit.map(|v| 100.0 * distribution::normal_share(v)),
        p50_days: ki.map(|ki| ki * sigma_days),
    })
}

/// Days until a lot that began with `initial_pct` has fallen to `target_pct`; nothing where it begins lower, or at 0 or 100 %.
///
/// # Errors
/// As [`viability`].
pub fn days_to(
    constants: ViabilityConstants,
    store: Store,
    initial_pct: f64,
    target_pct: f64,
) -> Result<Option<f64>, WrongInput> {
    wrong_input::within("target_pct", target_pct, 0.0, 100.0)?;
    let told = viability(constants, store, initial_pct, 0.0)?;
    let target = distribution::probit(target_pct / 100.0);
    Ok(told.ki.zip(target).map(|(ki, target)| (ki - target) * told.sigma_days).filter(|days| *days >= 0.0))
}

/// Percent viable of a test of `tested` seeds, moved off 0 and 100 %, whose probits have no end: none or all of n counts as a
/// quarter of a seed more or fewer.
///
/// # Errors
/// A percentage outside 0 to 100, or no seed tested.
pub fn off_the_ends_pct(pct: f64, tested: u32) -> Result<f64, WrongInput> {
    wrong_input::within("initial_pct", pct, 0.0, 100.0)?;
    wrong_input::seeds("tested", tested)?;
    let part = 100.0 * PART_OF_A_SEED / f64::from(tested);
    Ok(pct.clamp(part, 100.0 - part))
}

#[cfg(test)]
mod tests {
    use super::*;

    const RICE: ViabilityConstants = ViabilityConstants { ke: 8.242, cw: 4.345, ch: 0.0307, cq: 0.000501 };
    const SHED: Store = Store { moisture_pct: 10.0, temp_c: 25.0 };

    #[test]
    fn half_is_left_after_ki_times_sigma() {
        let told = viability(RICE, SHED, 97.0, 0.0).unwrap();
        let days = told.p50_days.unwrap();
        let later = viability(RICE, SHED, 97.0, days).unwrap();
        assert!((later.viability_pct.unwrap() - 50.0).abs() < 1e-9);
        assert_eq!(days_to(RICE, SHED, 97.0, 97.0), Ok(Some(0.0)));
        assert_eq!(days_to(RICE, SHED, 60.0, 97.0), Ok(None));
    }

    #[test]
    fn all_or_none_has_no_probit_unless_the_number_tested_is_known() {
        let told = viability(RICE, SHED, 100.0, 30.0).unwrap();
        assert_eq!((told.ki, told.v_probit, told.viability_pct, told.p50_days), (None, None, None, None));
        assert!(told.sigma_days > 0.0);
        assert_eq!(off_the_ends_pct(100.0, 50), Ok(99.5));
        assert_eq!(off_the_ends_pct(0.0, 50), Ok(0.5));
        assert_eq!(off_the_ends_pct(60.0, 50), Ok(60.0));
    }

    #[test]
    fn nonsense_is_refused() {
        assert!(viability(RICE, SHED, 110.0, 365.0).is_err());
        assert!(viability(RICE, SHED, 90.0, -1.0).is_err());
        assert!(viability(RICE, Store { moisture_pct: 0.0, ..SHED }, 90.0, 1.0).is_err());
        assert!(viability(RICE, Store { temp_c: f64::NAN, ..SHED }, 90.0, 1.0).is_err());
        assert!(viability(ViabilityConstants { ke: 400.0, ..RICE }, SHED, 90.0, 1.0).is_err());
    }
}
