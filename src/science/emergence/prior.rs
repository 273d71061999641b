//! What is known of a curve before anything is seen: the species' own days and the nursery's earlier sowings.
//!
//! Source: ours. A log-normal for t50 and b, a beta for d; each earlier sowing counts as one more beside the handbook, which
//! counts as five.

use super::curve::Curve;
use crate::base::Range;
use crate::science::distribution::beta_quantile;
use crate::science::wrong_input::{self, WrongInput};

/// Natural log of t50: standard deviation between sowings of one species, before the nursery's own are known. Half of all
/// sowings then lie within a quarter of the handbook's day. Ours.
pub(crate) const T50_SPREAD: f64 = 0.35;
/// Natural log of b: standard deviation between sowings. Ours.
pub(crate) const B_SPREAD: f64 = 0.4;
/// Seeds that the handbook's germination of fresh seed weighs: few, because a lot nobody tested may be old or badly kept. Of a
/// species that germinates at 75 %, one lot in twenty then gives less than half of that. Ours.
pub(crate) const HANDBOOK_SEEDS: f64 = 4.0;
/// Seeds that it weighs where the handbook says that lots differ widely: at 50 % every share is then as likely. Ours.
pub(crate) const HANDBOOK_SEEDS_VARYING: f64 = 2.0;
/// Sowings that the handbook's days weigh. Ours.
pub(crate) const HANDBOOK_SOWINGS: f64 = 5.0;
/// Seeds that a test of the very lot weighs at most: a bench is no test room. Ours.
pub(crate) const SEEDS_OF_A_LOT_TEST: f64 = 30.0;
/// Standard deviations to the ends of a middle 90 %.
const DEVIATIONS: f64 = 1.645;
/// Share up on the first and on the last day of emergence of a profile: 0.05 and 0.95. Ours.
const FIRST_SHARE: f64 = 0.05;
/// No seed is believed to come up, or to fail, with more than 98 %. Ours.
const LEAST_SHARE: f64 = 0.02;
/// Steepness where a profile has no two days. Ours.
const USUAL_B: f64 = 5.0;

/// A number above 0 whose logarithm is normal.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct LogNormal {
    /// Half lie above and half below.
    pub median: f64,
    /// Standard deviation of the natural logarithm.
    pub spread: f64,
}

/// A share believed as a beta distribution, in seeds that came and did not.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct SharePrior {
    /// Came up, above 0.
    pub a: f64,
    /// Did not, above 0.
    pub b: f64,
}

/// What is known of the curve of a sowing beforehand.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct CurvePrior {
    /// Of the median day.
    pub t50: LogNormal,
    /// Of the steepness.
    pub b: LogNormal,
    /// Of the share that comes up.
    pub d: SharePrior,
}

/// An earlier sowing of the species in this nursery, as far as it was looked at.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct SeenSowing {
    /// Seeds sown, above 0.
    pub seeds: f64,
    /// Of these, up by the last look.
    pub emerged: f64,
    /// Day of the last look since sowing.
    pub last_look: f64,
    /// Its curve by maximum likelihood; none where its looks do not tell one, as where nothing came up.
    pub curve: Option<Curve>,
}

impl SeenSowing {
    /// The share that comes up, and how much of it the looks saw (0 to 1): by its own curve, else by the usual one.
    fn share(&self, usual: Curve) -> (f64, f64) {
        if let Some(curve) = self.curve {
            return (curve.d, curve.up(self.last_look));
        }
        let saw = usual.up(self.last_look);
        let due = self.seeds * saw;
        (if due > 0.0 { (self.emerged / due).clamp(0.0, 1.0) } else { 0.0 }, saw)
    }
}

impl CurvePrior {
    /// From a profile: days on which the first, half and the last emerge, and the germination of fresh seed (share).
    /// Half is t50; first and last are the days with 5 and 95 % of those that come up.
    ///
    /// # Errors
    /// A half day that is not above 0, first and last days that are negative, a share outside 0 to 1, or no number.
    pub fn of_species(first: Option<f64>, half: f64, last: Option<f64>, germination: f64) -> Result<Self, WrongInput> {
        wrong_input::positive("half", half)?;
        wrong_input::share("germination", germination)?;
        for day in [first, last].into_iter().flatten() {
            wrong_input::not_negative("first and last", day)?;
        }
        let logit = ((1.0 - FIRST_SHARE) / FIRST_SHARE).ln();
        let b = match (first.filter(|day| *day > 0.0), last) {
            (Some(first), Some(last)) if last > first => 2.0 * logit / (last / first).ln(),
            (_, Some(last)) if last > half => logit / (last / half).ln(),
            (Some(first), _) if first < half => logit / (half / first).ln(),
            _ => USUAL_B,
        };
        let share = germination.clamp(LEAST_SHARE, 1.0 - LEAST_SHARE);
        Ok(CurvePrior {
            t50: LogNormal { median: half, spread: T50_SPREAD },
            b: LogNormal { median: b.clamp(0.5, 50.0), spread: B_SPREAD },
            d: SharePrior { a: HANDBOOK_SEEDS * share, b: HANDBOOK_SEEDS * (1.0 - share) },
        })
    }

    /// With the germination weighing as much as so many seeds.
    pub fn weighing(mut self, seeds: f64) -> CurvePrior {
        let weight = self.d.a + self.d.b;
        self.d = SharePrior { a: self.d.a / weight * seeds, b: self.d.b / weight * seeds };
        self
    }

    /// With earlier sowings of the species in this nursery. Of those that tell a curve, logarithms of t50 and b move to the
    /// weighted mean of handbook (five sowings) and sowings, and their spread to the weighted mean of both. The mean of d
    /// moves by every sowing, those of which nothing came up as well, each as much as its looks saw of its emergence; its
    /// weight stays: lots differ, however many good ones there were before.
    pub fn with_sowings(self, sowings: &[SeenSowing]) -> CurvePrior {
        let curves = || sowings.iter().filter_map(|sowing| sowing.curve);
        let t50 = drawn(self.t50, curves().map(|curve| curve.t50.ln()));
        let b = drawn(self.b, curves().map(|curve| curve.b.ln()));
        let usual = Curve { d: 1.0, b: b.median, t50: t50.median };
        let weight = self.d.a + self.d.b;
        let (mut shares, mut all) = (HANDBOOK_SOWINGS * self.d.a / weight, HANDBOOK_SOWINGS);
        for (share, saw) in sowings.iter().map(|sowing| sowing.share(usual)) {
            shares += share * saw;
            all += saw;
        }
        let share = (shares / all).clamp(LEAST_SHARE, 1.0 - LEAST_SHARE);
        CurvePrior { t50, b, d: SharePrior { a: weight * share, b: weight * (1.0 - share) } }
    }

    /// Of seed of which only so much (0 to 1) is left alive: the mean falls, the weight stays.
    pub(crate) fn with_left(mut self, left: f64) -> CurvePrior {
        let weight = self.d.a + self.d.b;
        let share = (self.d.a / weight * left).clamp(LEAST_SHARE, 1.0 - LEAST_SHARE);
        self.d = SharePrior { a: weight * share, b: weight * (1.0 - share) };
        self
    }

    /// The half day: middle, and the ends of the middle 90 %.
    pub(crate) fn half_day(&self) -> Range {
        let factor = (DEVIATIONS * self.t50.spread).exp();
        Range::new(self.t50.median / factor, self.t50.median, self.t50.median * factor)
    }

    /// The share that comes up: mean, and the ends of the middle 90 %.
    pub fn share(&self) -> Range {
        let mean = self.d.a / (self.d.a + self.d.b);
        let end = |share| beta_quantile(share, self.d.a, self.d.b);
        Range::new(end(0.05).min(mean), mean, end(0.95).max(mean))
    }

    /// With a germination test of the very lot (share of so many seeds).
    pub(crate) fn with_lot_test(mut self, share: f64, seeds: f64) -> CurvePrior {
        let weight = seeds.min(SEEDS_OF_A_LOT_TEST);
        self.d.a += weight * share;
        self.d.b += weight * (1.0 - share);
        self
    }
}

fn drawn(handbook: LogNormal, logs: impl Iterator<Item = f64> + Clone) -> LogNormal {
    let logs = logs.filter(|log| log.is_finite());
    let all = HANDBOOK_SOWINGS + logs.clone().count() as f64;
    let mean = (HANDBOOK_SOWINGS * handbook.median.ln() + logs.clone().sum::<f64>()) / all;
    // Around the new middle: where the nursery's sowings lie apart from the handbook, doubt stays.
    let squares: f64 = logs.map(|log| (log - mean).powi(2)).sum();
    let variance = (HANDBOOK_SOWINGS * handbook.spread.powi(2) + squares) / all;
    LogNormal { median: mean.exp(), spread: variance.sqrt() }
}
