//! The fit by maximum likelihood: the curve, its standard errors, the interval of d, what is not identifiable.

use std::ops::RangeInclusive;

use super::curve::Curve;
use super::likelihood::Likelihood;
use super::looks::Looks;
use crate::science::chance::Chance;
use crate::science::climb::{Top, climb};
use crate::science::distribution;
use crate::science::interval::Interval;
use crate::science::matrix::inverse;

/// Intervals with emergence below which three figures cannot be told apart.
const LEAST_INTERVALS: usize = 3;
/// Curves that are looked at; a steeper one emerges in one moment.
const STEEPNESS: RangeInclusive<f64> = 1e-9..=1e4;
/// Confidence of the interval of d.
const LEVEL: f64 = 0.95;
/// Steepnesses from which the search begins: from slow and uneven to all within days.
const STARTS: [f64; 4] = [1.0, 3.0, 8.0, 25.0];

/// What the looks say of the curve, by maximum likelihood alone.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct EmergenceFit {
    /// The best curve; nothing where there is none, because the likelihood rises toward a step.
    pub curve: Option<Curve>,
    /// The share that comes up in the end: that of the curve, and without one where it is known all the same (nothing came
    /// up; or one flush and nothing at the last look).
    pub d: Option<f64>,
    /// Standard error of d; nothing at d = 1.
    pub se_d: Option<f64>,
    /// Standard error of b.
    pub se_b: Option<f64>,
    /// Standard error of t50, days.
    pub se_t50: Option<f64>,
    /// Log-likelihood without the multinomial constant.
    pub loglik: Option<f64>,
    /// Whether d is 1, its limit.
    pub at_boundary_d1: bool,
    /// Whether the looks tell d, b and t50 apart.
    pub identifiable: bool,
    /// Profile-likelihood interval of d at 95 %, at most 1.
    pub d_ci95: Option<Interval>,
    /// The chance that a seed not up at the last look comes at all: at the low end of that interval, likely, at its high end, each
    /// with the curve that is best there.
    pub(crate) still_comes: Option<[f64; 3]>,
}

impl EmergenceFit {
    /// The number up in the end: what is up and the likely part of the rest.
    pub fn in_the_end(&self, looks: &Looks) -> Option<f64> {
        let waiting = looks.seeds() - looks.emerged();
        match self.still_comes {
            Some([_, likely, _]) => Some(looks.emerged() + waiting * likely),
            None => self.d.map(|d| (looks.seeds() * d).max(looks.emerged())),
        }
    }

    /// Its interval: what is up and the outer quantiles of the binomial of the rest over the interval of d. Never below what is up,
    /// never above the seeds.
    pub fn in_the_end_ci95(&self, looks: &Looks) -> Option<Interval> {
        let waiting = (looks.seeds() - looks.emerged()) as u32;
        let [low, _, high] = self.still_comes?.map(|chance| Chance::Known(chance).middle(waiting, LEVEL));
        Some(Interval { low: looks.emerged() + low.low.min(high.low), high: looks.emerged() + high.high.max(low.high) })
    }

    /// The number up on `last_day`, from what is up at the last look and the chance of those that are not.
    pub fn at_day(&self, looks: &Looks, last_day: f64) -> Option<f64> {
        let curve = self.curve?;
        let waiting = looks.seeds() - looks.emerged();
        Some(looks.emerged() + waiting * curve.chance_between(looks.last_look(), last_day.max(looks.last_look())))
    }
}

/// Fits the curve to looks. Fewer than three intervals with emergence do not identify it, nor do looks whose best curve is
/// infinitely steep; two intervals apart may have a best curve, which is told without trust.
pub fn fit_emergence(looks: &Looks) -> EmergenceFit {
    let unknown = EmergenceFit {
        curve: None,
        d: share_without_curve(looks),
        se_d: None,
        se_b: None,
        se_t50: None,
        loglik: None,
        at_boundary_d1: false,
        identifiable: false,
        d_ci95: None,
        still_comes: None,
    };
    if looks.emerged() == 0.0 {
        return unknown;
    }
    let likelihood = Likelihood::of(looks);
    let tops = STARTS.iter().filter_map(|&b| climb((0.0, b), &STEEPNESS, |a, b| likelihood.at_best_d(a, b)));
    let best = tops.max_by(|one, other| one.value.total_cmp(&other.value));
    let Some(top) = best.filter(|top| top.b < 0.99 * STEEPNESS.end()) else { return unknown };
    let told = told(&likelihood, top);
    if looks.intervals_with_emergence() >= LEAST_INTERVALS {
        return told;
    }
    // Two flushes apart can have a best curve all the same: it is shown and not trusted. Where the steepness is not known to
    // within itself, the likelihood only rises toward a step and there is none.
    let steepness_known = told.curve.zip(told.se_b).is_some_and(|(curve, se_b)| se_b < curve.b);
    if steepness_known && told.identifiable { EmergenceFit { identifiable: false, ..told } } else { unknown }
}

fn told(likelihood: &Likelihood, top: Top) -> EmergenceFit {
    let d = likelihood.best_d(top.a, top.b);
    let at_boundary_d1 = d >= 1.0;
    let t50 = (likelihood.centre - top.a / top.b).exp();
    let curve = Curve { d, b: top.b, t50 };
    let errors =
        if at_boundary_d1 { errors_at_1(likelihood, top, t50) } else { errors_below_1(likelihood, top, d, t50) };
    let ends = profile_interval(likelihood, top, d);
    EmergenceFit {
        curve: Some(curve),
        d: Some(d),
        se_d: errors[0],
        se_b: errors[1],
        se_t50: errors[2],
        loglik: Some(top.value),
        at_boundary_d1,
        identifiable: errors[1].is_some() && errors[2].is_some(),
        d_ci95: ends.map(|[low, high]| Interval { low: low.0, high: high.0 }),
        still_comes: ends
            .map(|[low, high]| [low, (d, top), high].map(|(d, top)| likelihood.still_comes(d, top.a, top.b))),
    }
}

/// Where there is no curve: nothing came up at all, or what came up did so within two intervals and the last look was empty.
fn share_without_curve(looks: &Looks) -> Option<f64> {
    (looks.emerged() == 0.0 || looks.ended_level()).then(|| looks.emerged() / looks.seeds())
}

/// Change of (a, b) with (b, t50): a = -b (ln t50 - centre).
fn change_of_line(likelihood: &Likelihood, top: Top, t50: f64) -> [[f64; 2]; 2] {
    [[-(t50.ln() - likelihood.centre), -top.b / t50], [1.0, 0.0]]
}

/// Standard errors of d, b, t50 from the observed information.
fn errors_below_1(likelihood: &Likelihood, top: Top, d: f64, t50: f64) -> [Option<f64>; 3] {
    let second = likelihood.second_with_d(d, top.a, top.b);
    let line = change_of_line(likelihood, top, t50);
    let change = [[1.0, 0.0, 0.0], [0.0, line[0][0], line[0][1]], [0.0, line[1][0], line[1][1]]];
    let mut information = [[0.0; 3]; 3];
    for (i, row) in information.iter_mut().enumerate() {
        for (j, cell) in row.iter_mut().enumerate() {
            for (k, seconds) in second.iter().enumerate() {
                for (l, value) in seconds.iter().enumerate() {
                    *cell -= change[k][i] * value * change[l][j];
                }
            }
        }
    }
    let variance = inverse(information);
    [0, 1, 2].map(|i| variance.map(|variance| variance[i][i]).filter(|v| *v > 0.0).map(f64::sqrt))
}

/// At d = 1 only b and t50 are estimated.
fn errors_at_1(likelihood: &Likelihood, top: Top, t50: f64) -> [Option<f64>; 3] {
    let [aa, ab, bb] = likelihood.at(1.0, top.a, top.b).second;
    let second = [[aa, ab], [ab, bb]];
    let change = change_of_line(likelihood, top, t50);
    let mut information = [[0.0; 2]; 2];
    for (i, row) in information.iter_mut().enumerate() {
        for (j, cell) in row.iter_mut().enumerate() {
            for (k, seconds) in second.iter().enumerate() {
                for (l, value) in seconds.iter().enumerate() {
                    *cell -= change[k][i] * value * change[l][j];
                }
            }
        }
    }
    let variance = inverse(information);
    let error = |i: usize| variance.map(|variance| variance[i][i]).filter(|v| *v > 0.0).map(f64::sqrt);
    [None, error(0), error(1)]
}

/// Where the best log-likelihood at a given d falls by half the chi-squared quantile below the best of all, with the curve that is
/// best there.
fn profile_interval(likelihood: &Likelihood, top: Top, d: f64) -> Option<[(f64, Top); 2]> {
    let z = distribution::two_sided_z(LEVEL).ok()?;
    let level = top.value - z * z / 2.0;
    let below = |share: f64, near: &mut Top| {
        let found = climb((near.a, near.b), &STEEPNESS, |a, b| likelihood.at(share, a, b));
        if let Some(found) = found {
            *near = found;
        }
        found.map_or(f64::NEG_INFINITY, |found| found.value) - level
    };
    let mut at_high = top;
    let high = if d >= 1.0 || below(1.0, &mut at_high) >= 0.0 {
        1.0
    } else {
        at_high = top;
        crossing(d, 1.0, |share| below(share, &mut at_high))
    };
    let mut at_low = top;
    let low = crossing(d, 0.0, |share| below(share, &mut at_low));
    Some([(low, at_low), (high, at_high)])
}

/// Where a function that is above 0 at `inside` and below 0 at `outside` crosses 0.
fn crossing(inside: f64, outside: f64, mut function: impl FnMut(f64) -> f64) -> f64 {
    let (mut inside, mut outside) = (inside, outside);
    for _ in 0..60 {
        let middle = (inside + outside) / 2.0;
        if function(middle) >= 0.0 {
            inside = middle;
        } else {
            outside = middle;
        }
        if (inside - outside).abs() < 1e-9 {
            break;
        }
    }
    (inside + outside) / 2.0
}
