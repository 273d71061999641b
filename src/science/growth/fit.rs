//! Least squares: many beginnings on a grid of k and t0, where the best A follows, then damped Gauss-Newton steps.

use super::curve::{GrowthCurve, GrowthModel};
use crate::science::distribution;
use crate::science::interval::Interval;
use crate::science::matrix::inverse;
use crate::science::wrong_input::{self, WrongInput};

/// Numbers of a curve.
const NUMBERS: usize = 3;
/// Most measurements in one fit. Ours.
const MOST_MEASURED: usize = 10_000;
/// End height, against the tallest measured, above which the measurements do not tell where growth ends. Ours.
const MOST_TIMES_TALLEST: f64 = 1000.0;
/// Beginnings that are followed to their end.
const FOLLOWED: usize = 6;
/// Most steps of one search.
const MOST_STEPS: usize = 300;
/// Confidence of the interval of a day.
const LEVEL: f64 = 0.95;

/// A curve fitted to measurements.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct GrowthFit {
    /// The curve.
    pub curve: GrowthCurve,
    /// Standard errors of A, k, t0; nothing with three measurements, which leave nothing over.
    pub errors: Option<[f64; 3]>,
    /// Sum of squares that is left.
    pub rss: f64,
    /// Variances and covariances of A, k, t0.
    covariance: Option<[[f64; 3]; 3]>,
    /// Measurements less numbers of the curve.
    freedom: f64,
}

/// When a height is reached.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Reached {
    /// The day.
    pub t: f64,
    /// Its standard error, days.
    pub se: Option<f64>,
    /// Its interval at 95 %.
    pub ci95: Option<Interval>,
}

impl GrowthFit {
    /// When `target` (above 0) is reached; nothing where the curve ends at or below it.
    pub fn reaches(&self, target: f64) -> Option<Reached> {
        let (t, by) = self.curve.day_of(target)?;
        let variance = self.covariance.map(|covariance| {
            (0..NUMBERS)
                .flat_map(|i| (0..NUMBERS).map(move |j| (i, j)))
                .map(|(i, j)| by[i] * covariance[i][j] * by[j])
                .sum()
        });
        let se = variance.map(|variance: f64| variance.max(0.0).sqrt()).filter(|se| se.is_finite());
        let times = distribution::two_sided_t(LEVEL, self.freedom).ok();
        let ci95 = se.zip(times).map(|(se, times)| Interval { low: t - times * se, high: t + times * se });
        Some(Reached { t, se, ci95 })
    }
}

/// Fits a curve to heights `y` (0 or more) on days `t` (0 or more, not going back; a day may stand several times). Nothing
/// where the measurements do not tell the curve: fewer than three days, no growth, or no sign of an end.
///
/// # Errors
/// No measurement or too many, lists that are not equally long, days that go back, a height below 0, or no number.
pub fn fit_growth(model: GrowthModel, t: &[f64], y: &[f64]) -> Result<Option<GrowthFit>, WrongInput> {
    if t.is_empty() {
        return Err(WrongInput::Missing { input: "t" });
    }
    if t.len() != y.len() {
        return Err(WrongInput::Uneven { input: "t", other: "y" });
    }
    if t.len() > MOST_MEASURED {
        return Err(WrongInput::TooMany { input: "t", most: MOST_MEASURED as u32 });
    }
    wrong_input::in_order("t", t, true)?;
    for &height in y {
        wrong_input::not_negative("y", height)?;
    }
    let days = 1 + t.windows(2).filter(|pair| pair[1] > pair[0]).count();
    let tallest = y.iter().copied().fold(0.0, f64::max);
    if days < NUMBERS || tallest <= 0.0 {
        return Ok(None);
    }
    let measured = Measured { model, t, y };
    let best = measured
        .beginnings()
        .into_iter()
        .filter_map(|curve| measured.follow(curve))
        .min_by(|one, other| one.1.total_cmp(&other.1));
    let told = best.filter(|(curve, _)| curve.k > 0.0 && curve.a > 0.0 && curve.a <= MOST_TIMES_TALLEST * tallest);
    Ok(told.and_then(|(curve, rss)| measured.told(curve, rss)))
}

struct Measured<'a> {
    model: GrowthModel,
    t: &'a [f64],
    y: &'a [f64],
}

impl Measured<'_> {
    fn points(&self) -> impl Iterator<Item = (f64, f64)> + '_ {
        self.t.iter().copied().zip(self.y.iter().copied())
    }

    /// The best few of a grid of k and t0; for each the best A is a ratio of sums.
    fn beginnings(&self) -> Vec<GrowthCurve> {
        let (first, last) = (self.t[0], self.t[self.t.len() - 1]);
        let span = last - first;
        let mut found: Vec<(f64, GrowthCurve)> = Vec::new();
        for rate in [0.3, 0.7, 1.5, 3.0, 5.0, 8.0, 13.0, 20.0, 35.0] {
            for place in -4_i32..=14 {
                let (k, t0) = (rate / span, first + span * f64::from(place) / 7.0);
                let (mut with_shape, mut shapes) = (0.0, 0.0);
                for (t, y) in self.points() {
                    let shape = self.model.shape(k * (t - t0)).0;
                    with_shape += shape * y;
                    shapes += shape * shape;
                }
                let curve = GrowthCurve { model: self.model, a: with_shape / shapes, k, t0 };
                let rss = self.rss(curve);
                if rss.is_finite() && curve.a > 0.0 {
                    found.push((rss, curve));
                }
            }
        }
        found.sort_by(|one, other| one.0.total_cmp(&other.0));
        found.truncate(FOLLOWED);
        found.into_iter().map(|(_, curve)| curve).collect()
    }

    fn rss(&self, curve: GrowthCurve) -> f64 {
        self.points().map(|(t, y)| (y - curve.height(t)).powi(2)).sum()
    }

    /// J'J and J'r.
    fn normal(&self, curve: GrowthCurve) -> ([[f64; 3]; 3], [f64; 3]) {
        let (mut squares, mut pull) = ([[0.0; 3]; 3], [0.0; 3]);
        for (t, y) in self.points() {
            let (shape, by_u) = self.model.shape(curve.k * (t - curve.t0));
            let by = [shape, curve.a * by_u * (t - curve.t0), -curve.a * by_u * curve.k];
            let off = y - curve.a * shape;
            for i in 0..NUMBERS {
                pull[i] += by[i] * off;
                for j in 0..NUMBERS {
                    squares[i][j] += by[i] * by[j];
                }
            }
        }
        (squares, pull)
    }

    /// Damped Gauss-Newton steps (Levenberg 1944, Marquardt 1963) as far as they lead.
    fn follow(&self, begin: GrowthCurve) -> Option<(GrowthCurve, f64)> {
        let (mut curve, mut rss) = (begin, self.rss(begin));
        let mut damping = 1e-3;
        let mut quiet = 0;
        for _ in 0..MOST_STEPS {
            let (squares, pull) = self.normal(curve);
            let mut damped = squares;
            for (i, row) in damped.iter_mut().enumerate() {
                row[i] *= 1.0 + damping;
            }
            let next = inverse(damped).map(|inverse| {
                let step: Vec<f64> = inverse.iter().map(|row| row.iter().zip(pull).map(|(v, p)| v * p).sum()).collect();
                GrowthCurve { a: curve.a + step[0], k: curve.k + step[1], t0: curve.t0 + step[2], ..curve }
            });
            let better = next.filter(|next| next.a > 0.0 && next.k > 0.0).map(|next| (next, self.rss(next)));
            match better.filter(|(_, less)| *less < rss) {
                Some((next, less)) => {
                    quiet = if rss - less <= 1e-14 * rss { quiet + 1 } else { 0 };
                    (curve, rss) = (next, less);
                    damping = (damping / 10.0).max(1e-12);
                }
                None => damping *= 10.0,
            }
            if quiet >= 3 || damping > 1e12 {
                break;
            }
        }
        rss.is_finite().then_some((curve, rss))
    }

    fn told(&self, curve: GrowthCurve, rss: f64) -> Option<GrowthFit> {
        let inverse = inverse(self.normal(curve).0)?;
        let freedom = self.t.len() as f64 - NUMBERS as f64;
        let covariance = (freedom > 0.0).then(|| inverse.map(|row| row.map(|value| value * rss / freedom)));
        let errors = covariance.map(|covariance| [0, 1, 2].map(|i| covariance[i][i].max(0.0).sqrt()));
        Some(GrowthFit { curve, errors, rss, covariance, freedom })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_curve_that_made_the_heights_is_found_again() {
        for model in GrowthModel::ALL {
            let truth = GrowthCurve { model, a: 45.0, k: 0.06, t0: 50.0 };
            let t: Vec<f64> = (1..=10).map(|i| f64::from(i) * 12.0).collect();
            let y: Vec<f64> = t.iter().map(|&t| truth.height(t)).collect();
            let fit = fit_growth(model, &t, &y).unwrap().unwrap();
            assert!((fit.curve.a - 45.0).abs() < 1e-6 && (fit.curve.k - 0.06).abs() < 1e-8, "{fit:?}");
            let reached = fit.reaches(truth.height(77.0)).unwrap();
            assert!((reached.t - 77.0).abs() < 1e-5, "{reached:?}");
            assert_eq!(fit.reaches(45.1), None);
        }
    }

    #[test]
    fn what_is_no_curve_gives_none() {
        for model in GrowthModel::ALL {
            assert_eq!(fit_growth(model, &[1.0, 2.0], &[3.0, 4.0]), Ok(None));
            assert_eq!(fit_growth(model, &[5.0, 5.0, 5.0, 5.0], &[3.0, 4.0, 3.0, 4.0]), Ok(None));
            assert_eq!(fit_growth(model, &[1.0, 2.0, 3.0, 4.0], &[0.0; 4]), Ok(None));
            // Getting shorter is no growth.
            let shrinking = fit_growth(model, &[0.0, 10.0, 20.0, 30.0], &[40.0, 30.0, 20.0, 10.0]).unwrap();
            assert!(shrinking.is_none_or(|fit| fit.errors.is_none_or(|e| e[1] > fit.curve.k)), "{shrinking:?}");
        }
    }

    #[test]
    fn three_measurements_make_a_curve_without_errors() {
        let fit = fit_growth(GrowthModel::Logistic, &[10.0, 30.0, 60.0], &[3.0, 12.0, 25.0]).unwrap().unwrap();
        assert_eq!(fit.errors, None);
        let reached = fit.reaches(20.0).unwrap();
        assert_eq!((reached.se, reached.ci95), (None, None));
    }

    #[test]
    fn nonsense_is_refused() {
        let logistic = |t: &[f64], y: &[f64]| fit_growth(GrowthModel::Logistic, t, y);
        assert!(logistic(&[], &[]).is_err());
        assert!(logistic(&[1.0, 2.0], &[1.0]).is_err());
        assert!(logistic(&[2.0, 1.0], &[1.0, 1.0]).is_err());
        assert!(logistic(&[1.0, f64::NAN], &[1.0, 1.0]).is_err());
        assert!(logistic(&[1.0, 2.0], &[-1.0, 1.0]).is_err());
        assert!(logistic(&vec![1.0; 20_000], &vec![1.0; 20_000]).is_err());
    }
}
