//! What is believed of the curve after the looks: prior times likelihood on a grid that zooms in on what is likely.

use super::curve::{Curve, logistic};
use super::likelihood::Likelihood;
use super::looks::Looks;
use super::prior::CurvePrior;

/// Cells of the grid along ln t50, ln b and logit d.
const CELLS: [usize; 3] = [13, 11, 15];
/// Half width of the grid in standard deviations.
const REACH: f64 = 4.0;
/// Most zooms: each narrows at least fourfold.
const MOST_ZOOMS: usize = 8;

/// Means over what is believed.
#[derive(Clone, Debug)]
pub(super) struct Belief {
    /// Mean and variance of the chance that a seed not up at the last look is up on each of the days asked about.
    pub comes: Vec<(f64, f64)>,
    /// Mean and variance of the chance that it ever comes.
    pub ever_comes: (f64, f64),
    /// The curve of the mean ln t50, ln b and logit d.
    pub curve: Curve,
}

#[derive(Clone, Copy, Debug)]
struct Axis {
    middle: f64,
    half: f64,
}

impl Axis {
    fn at(self, i: usize, cells: usize) -> f64 {
        self.middle + self.half * (2.0 * i as f64 / (cells - 1) as f64 - 1.0)
    }

    fn step(self, cells: usize) -> f64 {
        2.0 * self.half / (cells - 1) as f64
    }
}

/// The belief after `looks`, about `days` (none before the last look).
pub(super) fn believe(looks: &Looks, prior: &CurvePrior, days: &[f64]) -> Belief {
    let grid = Grid { likelihood: Likelihood::of(looks), prior: *prior, now: looks.last_look(), days };
    let mut axes = first_axes(looks, prior);
    let mut sums = grid.sums(axes);
    for _ in 0..MOST_ZOOMS {
        let narrow = (0..3).all(|i| sums.deviation(i) >= 0.7 * axes[i].step(CELLS[i]));
        let wide = (0..3).all(|i| sums.deviation(i) <= 1.2 * axes[i].half / REACH);
        if narrow && wide {
            break;
        }
        for (i, axis) in axes.iter_mut().enumerate() {
            // Where all weight is in one cell, its neighbours may hold the top.
            let half = (REACH * sums.deviation(i)).max(1.5 * axis.step(CELLS[i]));
            *axis = Axis { middle: sums.mean(i), half };
        }
        sums = grid.sums(axes);
    }
    let middle = |i: usize| sums.mean(i);
    Belief {
        comes: (0..days.len()).map(|i| sums.comes(i)).collect(),
        ever_comes: sums.comes(days.len()),
        curve: Curve { d: logistic(middle(2)), b: middle(1).exp(), t50: middle(0).exp() },
    }
}

/// The grid before anything is known of where it should lie: all of the prior, and where the looks' own half day is.
fn first_axes(looks: &Looks, prior: &CurvePrior) -> [Axis; 3] {
    let around = |middle: f64, spread: f64| (middle - REACH * spread, middle + REACH * spread);
    let (mut low, mut high) = around(prior.t50.median.ln(), prior.t50.spread);
    if looks.emerged() >= 3.0 {
        let seen = looks.half_day().max(1e-3).ln();
        (low, high) = (low.min(seen - 0.5), high.max(seen + 0.5));
    }
    let (steep_low, steep_high) = around(prior.b.median.ln(), prior.b.spread);
    let (a, b) = (prior.d.a, prior.d.b);
    // Mean and deviation of the logit of a beta are about these (ours), wide enough to hold what was seen.
    let logit = ((a + 0.3) / (b + 0.3)).ln();
    let deviation = (1.0 / (a + 0.3) + 1.0 / (b + 0.3)).sqrt();
    let seen = ((looks.emerged() + 0.5) / (looks.seeds() - looks.emerged() + 0.5)).ln();
    let (share_low, share_high) = around(logit, deviation);
    let axis = |low: f64, high: f64| Axis { middle: (low + high) / 2.0, half: (high - low) / 2.0 };
    [axis(low, high), axis(steep_low, steep_high), axis(share_low.min(seen - 1.0), share_high.max(seen + 1.0))]
}

struct Grid<'a> {
    likelihood: Likelihood,
    prior: CurvePrior,
    now: f64,
    days: &'a [f64],
}

/// Weighted sums over a grid.
#[derive(Default)]
struct Sums {
    weight: f64,
    first: [f64; 3],
    second: [f64; 3],
    /// Of each day asked about, then of ever coming.
    comes: Vec<[f64; 2]>,
}

impl Sums {
    fn mean(&self, i: usize) -> f64 {
        self.first[i] / self.weight
    }

    fn deviation(&self, i: usize) -> f64 {
        (self.second[i] / self.weight - self.mean(i).powi(2)).max(0.0).sqrt()
    }

    fn comes(&self, i: usize) -> (f64, f64) {
        let mean = self.comes[i][0] / self.weight;
        (mean, (self.comes[i][1] / self.weight - mean * mean).max(0.0))
    }
}

impl Grid<'_> {
    fn sums(&self, axes: [Axis; 3]) -> Sums {
        let shares: Vec<(f64, f64, f64)> = (0..CELLS[2])
            .map(|k| {
                let logit = axes[2].at(k, CELLS[2]);
                let (d, rest) = (logistic(logit), logistic(-logit));
                // A beta density over d is one with a and b over its logit.
                let ln = (self.likelihood.emerged + self.prior.d.a) * d.ln() + self.prior.d.b * rest.ln();
                (logit, d, ln)
            })
            .collect();
        let mut cells: Vec<([f64; 3], f64, Curve)> = Vec::with_capacity(CELLS.iter().product());
        let mut most = f64::NEG_INFINITY;
        for i in 0..CELLS[0] {
            let ln_t50 = axes[0].at(i, CELLS[0]);
            for j in 0..CELLS[1] {
                let ln_b = axes[1].at(j, CELLS[1]);
                let curve = Curve { d: 1.0, b: ln_b.exp(), t50: ln_t50.exp() };
                let a = -curve.b * (ln_t50 - self.likelihood.centre);
                let common = self.likelihood.intervals(a, curve.b).value
                    - 0.5 * ((ln_t50 - self.prior.t50.median.ln()) / self.prior.t50.spread).powi(2)
                    - 0.5 * ((ln_b - self.prior.b.median.ln()) / self.prior.b.spread).powi(2);
                let up = curve.up(self.now);
                let waiting = self.likelihood.seeds - self.likelihood.emerged;
                for &(logit, d, ln) in &shares {
                    let ln = common + ln + waiting * (-d * up).ln_1p();
                    if ln.is_finite() {
                        most = most.max(ln);
                        cells.push(([ln_t50, ln_b, logit], ln, Curve { d, ..curve }));
                    }
                }
            }
        }
        let mut sums = Sums { comes: vec![[0.0; 2]; self.days.len() + 1], ..Sums::default() };
        for (place, ln, curve) in cells {
            // What is 10^-13 as likely as the likeliest changes nothing.
            if ln > most - 30.0 {
                self.add(&mut sums, place, (ln - most).exp(), curve);
            }
        }
        sums
    }

    fn add(&self, sums: &mut Sums, place: [f64; 3], weight: f64, curve: Curve) {
        sums.weight += weight;
        for (i, at) in place.into_iter().enumerate() {
            sums.first[i] += weight * at;
            sums.second[i] += weight * at * at;
        }
        let up = curve.share(self.now);
        let left = 1.0 - up;
        let comes = |share: f64| if left > 0.0 { ((share - up) / left).clamp(0.0, 1.0) } else { 0.0 };
        let by_day = self.days.iter().map(|day| comes(curve.share(*day))).chain([comes(curve.d)]);
        for (sum, chance) in sums.comes.iter_mut().zip(by_day) {
            sum[0] += weight * chance;
            sum[1] += weight * chance * chance;
        }
    }
}
