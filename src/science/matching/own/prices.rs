//! Third step: what an hour of work, a position, a plant are about worth. Each way carries exp((value - prices) / heat) plants;
//! again and again the prices of weeks, openings, sources and lots are moved until the sums fit, at falling heat
//! (entropic scaling, after Sinkhorn 1967, from memory).

use super::model::{Model, Row};

/// The heat of the first round, in the unit of values.
const FIRST_HEAT: f64 = 40.0;
/// Rounds, each at half the heat of the one before.
const ROUNDS: usize = 6;
/// Sweeps over all rows in a round.
const SWEEPS: usize = 12;
/// Ways that lose more than so many times the heat sit a round out.
const COLD: f64 = 6.0;
/// Factors stay above this.
const LEAST_FACTOR: f64 = 1e-30;
/// Kinds of rows a way stands in at most: lot, opening, week, source.
const KINDS: usize = 4;

/// An estimated price for each row of a model of rows that say "at most".
pub(super) fn estimate(model: &Model) -> Vec<f64> {
    let rows = model.program.rows();
    let mut heating = Heating {
        rows_of: (0..model.ways.len()).map(|column| by_kind(model, column)).collect(),
        of_kind: std::array::from_fn(|kind| (0..rows).filter(|row| kind_of(model.rows[*row]) == kind).collect()),
        limits: model.program.limits.iter().copied().chain([1.0]).collect(),
        prices: vec![0.0; rows + 1],
        factors: vec![1.0; rows + 1],
        most: vec![1.0; rows + 1],
        sums: vec![0.0; rows + 1],
        ways: Vec::new(),
        runs: Vec::new(),
        carried: Vec::new(),
    };
    let mut heat = FIRST_HEAT;
    for round in 0..ROUNDS {
        heating.begin(&model.program.worth, heat, round == 0);
        for _ in 0..SWEEPS {
            for kind in [2, 1, 3] {
                heating.sweep(kind);
            }
        }
        for row in 0..rows {
            heating.prices[row] = (heating.prices[row] - heat * heating.factors[row].ln()).max(0.0);
        }
        heat *= 0.5;
    }
    heating.prices.truncate(rows);
    heating.prices
}

fn kind_of(row: Row) -> usize {
    match row {
        Row::Lot(_) => 0,
        Row::Opening(_) => 1,
        Row::Week(_) => 2,
        Row::Source(_) | Row::Total(_) | Row::Share(_) => 3,
    }
}

/// The row of each kind; a row beyond the last where there is none.
fn by_kind(model: &Model, column: usize) -> [u32; KINDS] {
    let mut found = [model.program.rows() as u32; KINDS];
    for row in model.program.rows_of(column) {
        found[kind_of(model.rows[*row as usize])] = *row;
    }
    found
}

struct Heating {
    rows_of: Vec<[u32; KINDS]>,
    of_kind: [Vec<usize>; KINDS],
    limits: Vec<f64>,
    prices: Vec<f64>,
    /// What the rows of a way multiply its plants by in this round ...
    factors: Vec<f64>,
    /// ... and the most: a price does not fall below 0.
    most: Vec<f64>,
    sums: Vec<f64>,
    /// Ways of this round: plants before any factor, and rows.
    ways: Vec<(f64, [u32; KINDS])>,
    /// Ways of one lot: from, to.
    runs: Vec<(usize, usize)>,
    carried: Vec<f64>,
}

impl Heating {
    fn begin(&mut self, worth: &[f64], heat: f64, all: bool) {
        self.ways.clear();
        for (rows, worth) in self.rows_of.iter().zip(worth) {
            let left = rows.iter().fold(*worth, |left, row| left - self.prices[*row as usize]);
            if all || left > -COLD * heat {
                self.ways.push(((left / heat).exp(), *rows));
            }
        }
        self.runs.clear();
        let mut from = 0;
        for run in self.ways.chunk_by(|a, b| a.1[0] == b.1[0]) {
            self.runs.push((from, from + run.len()));
            from += run.len();
        }
        self.factors.fill(1.0);
        for (most, price) in self.most.iter_mut().zip(&self.prices) {
            *most = (price / heat).exp();
        }
    }

    /// Fits the lots one after the other, then the rows of one kind together.
    fn sweep(&mut self, kind: usize) {
        for row in &self.of_kind[kind] {
            self.sums[*row] = 0.0;
        }
        for (from, to) in self.runs.iter().copied() {
            let ways = &self.ways[from..to];
            self.carried.clear();
            let factors = &self.factors;
            self.carried.extend(ways.iter().map(|(plants, rows)| {
                plants * factors[rows[1] as usize] * factors[rows[2] as usize] * factors[rows[3] as usize]
            }));
            let lot = ways[0].1[0] as usize;
            let sum: f64 = self.carried.iter().sum();
            // Lots take part once in a sweep, with the weeks.
            let power = if kind == 2 { fitted(self.limits[lot], sum * self.factors[lot]) } else { 1.0 };
            let factor = if sum > 0.0 {
                (self.factors[lot] * power).clamp(LEAST_FACTOR, self.most[lot])
            } else {
                self.most[lot]
            };
            self.factors[lot] = factor;
            for ((_, rows), carried) in ways.iter().zip(&self.carried) {
                self.sums[rows[kind] as usize] += carried * factor;
            }
        }
        for row in self.of_kind[kind].iter().copied() {
            self.factors[row] = if self.sums[row] > 0.0 {
                (self.factors[row] * fitted(self.limits[row], self.sums[row])).clamp(LEAST_FACTOR, self.most[row])
            } else {
                self.most[row]
            };
        }
    }
}

/// A little more than what would fit at once: (limit / sum)^1.5.
fn fitted(limit: f64, sum: f64) -> f64 {
    let quotient = limit / sum;
    quotient * quotient.sqrt()
}
