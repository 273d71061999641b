//! Several sowings in one tray: nobody can tell whose seedlings are counted, so they are forecast together.
//!
//! Source: ours. Each sowing has the same curve, begun on its own day (the days to emergence are those of the species and of
//! this bench). The share that comes up differs: the youngest sowing has one of its own, all earlier ones share one. A
//! seedling of the tray comes from each sowing with the chance of its seeds, its share and its curve (a mixture), and the
//! counts between looks are a multinomial of that mixture.

use super::curve::{Curve, logistic};
use super::forecast::range;
use super::looks::Looks;
use super::prior::{LogNormal, SharePrior};
use crate::base::Range;
use crate::science::wrong_input::{self, WrongInput};

/// Cells of the grid along ln t50, ln b, and the logits of both shares.
const CELLS: [usize; 4] = [11, 9, 13, 13];
/// Half width of the grid in standard deviations.
const REACH: f64 = 4.0;
/// Most zooms.
const MOST_ZOOMS: usize = 6;
/// Standard deviations to the ends of a middle 90 %.
const DEVIATIONS: f64 = 1.645;

/// One of several sowings.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Batch {
    /// Days after the first sowing.
    pub after_days: f64,
    /// Seeds sown, above 0.
    pub seeds: u32,
    /// What is believed of the share that comes up.
    pub d: SharePrior,
}

/// A forecast of several sowings together.
#[derive(Clone, PartialEq, Debug)]
pub struct SeveralForecast {
    /// Up at the last look.
    pub seen: f64,
    /// Up on the last day: low, likely and high.
    pub at_last_day: Range,
    /// Up in the end.
    pub in_the_end: Range,
    /// The likely curve of each sowing from its own day; its d is the mean of all seeds.
    pub curve: Curve,
    /// The likely share of the earlier sowings, and of the youngest.
    pub shares: [f64; 2],
    /// How many of those up came of the youngest sowing (middle 90 %).
    pub of_youngest: Range,
}

/// How many of several sowings will be up on `last_day` (since the first sowing, as are the days of the looks) and in the end,
/// with a range that holds with chance `level`.
///
/// # Errors
/// Fewer than two sowings, days that go down, no seed, other seeds than looked at, a day or a level that is none.
pub fn forecast_of_several(
    looks: &Looks,
    batches: &[Batch],
    (t50, b): (LogNormal, LogNormal),
    last_day: f64,
    level: f64,
) -> Result<SeveralForecast, WrongInput> {
    wrong_input::not_negative("last_day", last_day)?;
    wrong_input::share("level", level)?;
    let sown: f64 = batches.iter().map(|batch| f64::from(batch.seeds)).sum();
    let days: Vec<f64> = batches.iter().map(|batch| batch.after_days).collect();
    let youngest = days.iter().copied().fold(0.0, f64::max);
    if batches.len() < 2 || youngest <= 0.0 || sown != looks.seeds() {
        return Err(WrongInput::Uneven { input: "seeds", other: "sowings" });
    }
    wrong_input::in_order("days of sowing", &days, true)?;
    let last_day = last_day.max(looks.last_look());
    let grid = JointGrid::of(looks, batches, youngest, (t50, b), last_day);
    let sums = grid.zoomed();
    let (of_youngest, deviation) = sums.of_youngest();
    let told = |i: usize| range(looks, sums.comes(i), level);
    let shares = [logistic(sums.mean(2)), logistic(sums.mean(3))];
    let [early, late] = grid.weights;
    let curve = Curve { d: shares[0] * early + shares[1] * late, b: sums.mean(1).exp(), t50: sums.mean(0).exp() };
    Ok(SeveralForecast {
        seen: looks.emerged(),
        at_last_day: told(0),
        in_the_end: told(1),
        curve,
        shares,
        of_youngest: Range::new(
            (of_youngest - DEVIATIONS * deviation).max(0.0),
            of_youngest,
            (of_youngest + DEVIATIONS * deviation).min(looks.emerged()),
        ),
    })
}

/// Of one shape: the chance of each group of sowings, for each interval with emergence, at the last look and on the last day.
struct Shaped {
    between: Vec<[f64; 2]>,
    now: [f64; 2],
    last: [f64; 2],
}

struct JointGrid<'a> {
    looks: &'a Looks,
    batches: &'a [Batch],
    youngest: f64,
    shape: [LogNormal; 2],
    shares: [SharePrior; 2],
    /// Share of the seeds in the earlier sowings, and in the youngest.
    weights: [f64; 2],
    last_day: f64,
}

/// Middle and half width of an axis.
type JointAxis = (f64, f64);

fn at((middle, half): JointAxis, i: usize, cells: usize) -> f64 {
    middle + half * (2.0 * i as f64 / (cells - 1) as f64 - 1.0)
}

#[derive(Default)]
struct JointSums {
    weight: f64,
    first: [f64; 4],
    second: [f64; 4],
    comes: [[f64; 2]; 2],
    youngest: [f64; 3],
}

impl JointSums {
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

    /// Mean and deviation of the number of the youngest sowing: between curves, and within one.
    fn of_youngest(&self) -> (f64, f64) {
        let [mean, square, within] = self.youngest.map(|sum| sum / self.weight);
        (mean, ((square - mean * mean).max(0.0) + within).sqrt())
    }
}

impl<'a> JointGrid<'a> {
    fn of(
        looks: &'a Looks,
        batches: &'a [Batch],
        youngest: f64,
        (t50, b): (LogNormal, LogNormal),
        last_day: f64,
    ) -> JointGrid<'a> {
        let group = |late: bool| {
            let of_group = batches.iter().filter(move |batch| (batch.after_days >= youngest) == late);
            let (mut a, mut b, mut seeds) = (0.0, 0.0, 0.0);
            for batch in of_group {
                let n = f64::from(batch.seeds);
                (a, b, seeds) = (a + n * batch.d.a, b + n * batch.d.b, seeds + n);
            }
            (SharePrior { a: a / seeds, b: b / seeds }, seeds / looks.seeds())
        };
        let (early, late) = (group(false), group(true));
        JointGrid {
            looks,
            batches,
            youngest,
            shape: [t50, b],
            shares: [early.0, late.0],
            weights: [early.1, late.1],
            last_day,
        }
    }

    /// The grid narrowed until it spans what is likely.
    fn zoomed(&self) -> JointSums {
        let of_shape = |known: LogNormal| (known.median.ln(), REACH * known.spread);
        let of_share = |known: SharePrior| {
            // Mean and deviation of the logit of a beta are about these, wide enough for nearly none and nearly all.
            let (a, b) = (known.a + 0.3, known.b + 0.3);
            ((a / b).ln(), (REACH * (1.0 / a + 1.0 / b).sqrt()).max(6.0))
        };
        let [t50, b] = self.shape.map(of_shape);
        let [early, late] = self.shares.map(of_share);
        let mut axes = [(t50.0, t50.1 + 0.5), b, early, late];
        let mut sums = self.sums(axes);
        for _ in 0..MOST_ZOOMS {
            let step = |i: usize| 2.0 * axes[i].1 / (CELLS[i] - 1) as f64;
            let narrow = (0..4).all(|i| sums.deviation(i) >= 0.7 * step(i));
            let wide = (0..4).all(|i| sums.deviation(i) <= 1.2 * axes[i].1 / REACH);
            if narrow && wide {
                break;
            }
            let halves: [f64; 4] = std::array::from_fn(|i| (REACH * sums.deviation(i)).max(1.5 * step(i)));
            axes = std::array::from_fn(|i| (sums.mean(i), halves[i]));
            sums = self.sums(axes);
        }
        sums
    }

    /// What the shape alone decides.
    fn shaped(&self, t50: f64, b: f64) -> Shaped {
        let mut shaped = Shaped { between: Vec::new(), now: [0.0; 2], last: [0.0; 2] };
        let curve = Curve { d: 1.0, b, t50 };
        for (pair, count) in self.looks.edges().windows(2).zip(self.looks.counts()) {
            if *count == 0.0 {
                continue;
            }
            let mut chances = [0.0; 2];
            for batch in self.batches {
                let group = usize::from(batch.after_days >= self.youngest);
                let weight = f64::from(batch.seeds) / self.looks.seeds();
                chances[group] += weight * between(curve, pair[0] - batch.after_days, pair[1] - batch.after_days);
            }
            shaped.between.push(chances);
        }
        for batch in self.batches {
            let group = usize::from(batch.after_days >= self.youngest);
            let weight = f64::from(batch.seeds) / self.looks.seeds();
            shaped.now[group] += weight * curve.up(self.looks.last_look() - batch.after_days);
            shaped.last[group] += weight * curve.up(self.last_day - batch.after_days);
        }
        shaped
    }

    fn sums(&self, axes: [JointAxis; 4]) -> JointSums {
        let counts: Vec<f64> = self.looks.counts().iter().copied().filter(|count| *count > 0.0).collect();
        let waiting = self.looks.seeds() - self.looks.emerged();
        let share = |group: usize| -> Vec<(f64, f64, f64)> {
            let cells = CELLS[2 + group];
            let one = |i: usize| {
                let logit = at(axes[2 + group], i, cells);
                let (d, rest) = (logistic(logit), logistic(-logit));
                // A beta density over d is one with a and b over its logit.
                (logit, d, self.shares[group].a * d.ln() + self.shares[group].b * rest.ln())
            };
            (0..cells).map(one).collect()
        };
        let (early, late) = (share(0), share(1));
        let mut cells = Vec::with_capacity(CELLS.iter().product());
        let mut shapes = Vec::with_capacity(CELLS[0] * CELLS[1]);
        let mut most = f64::NEG_INFINITY;
        for i in 0..CELLS[0] {
            let ln_t50 = at(axes[0], i, CELLS[0]);
            for j in 0..CELLS[1] {
                let ln_b = at(axes[1], j, CELLS[1]);
                let shaped = self.shaped(ln_t50.exp(), ln_b.exp());
                let common = -0.5 * ((ln_t50 - self.shape[0].median.ln()) / self.shape[0].spread).powi(2)
                    - 0.5 * ((ln_b - self.shape[1].median.ln()) / self.shape[1].spread).powi(2);
                for &(logit_early, d_early, ln_early) in &early {
                    for &(logit_late, d_late, ln_late) in &late {
                        let d = [d_early, d_late];
                        let seen = shaped.between.iter().zip(&counts);
                        let likely: f64 = seen.map(|(chances, count)| count * mixed(d, *chances).ln()).sum();
                        let ln = common + ln_early + ln_late + likely + waiting * (-mixed(d, shaped.now)).ln_1p();
                        if ln.is_finite() {
                            most = most.max(ln);
                            cells.push(([ln_t50, ln_b, logit_early, logit_late], ln, d, shapes.len()));
                        }
                    }
                }
                shapes.push(shaped);
            }
        }
        let mut sums = JointSums::default();
        for (place, ln, d, shape) in cells {
            // What is 10^-13 as likely as the likeliest changes nothing.
            if ln > most - 30.0 {
                self.add(&mut sums, place, (ln - most).exp(), d, &shapes[shape], &counts);
            }
        }
        sums
    }

    fn add(&self, sums: &mut JointSums, place: [f64; 4], weight: f64, d: [f64; 2], shaped: &Shaped, counts: &[f64]) {
        sums.weight += weight;
        for (i, at) in place.into_iter().enumerate() {
            sums.first[i] += weight * at;
            sums.second[i] += weight * at * at;
        }
        let now = mixed(d, shaped.now);
        let comes = |share: f64| if now < 1.0 { ((share - now) / (1.0 - now)).clamp(0.0, 1.0) } else { 0.0 };
        for (sum, chance) in sums.comes.iter_mut().zip([comes(mixed(d, shaped.last)), comes(mixed(d, self.weights))]) {
            sum[0] += weight * chance;
            sum[1] += weight * chance * chance;
        }
        let (mut youngest, mut within) = (0.0, 0.0);
        for (chances, count) in shaped.between.iter().zip(counts) {
            let all = mixed(d, *chances);
            let share = if all > 0.0 { d[1] * chances[1] / all } else { 0.0 };
            youngest += count * share;
            within += count * share * (1.0 - share);
        }
        for (sum, value) in sums.youngest.iter_mut().zip([youngest, youngest * youngest, within]) {
            *sum += weight * value;
        }
    }
}

/// The chance of a seed of the tray, of those of both groups.
fn mixed(d: [f64; 2], chances: [f64; 2]) -> f64 {
    d[0] * chances[0] + d[1] * chances[1]
}

/// Share of those that come up that does so between two days, without losing digits at either end.
fn between(curve: Curve, from: f64, to: f64) -> f64 {
    if to <= 0.0 {
        return 0.0;
    }
    let u2 = curve.b * (to / curve.t50).ln();
    if from <= 0.0 {
        return logistic(u2);
    }
    let u1 = curve.b * (from / curve.t50).ln();
    if u1 > 0.0 { logistic(-u1) - logistic(-u2) } else { logistic(u2) - logistic(u1) }
}
