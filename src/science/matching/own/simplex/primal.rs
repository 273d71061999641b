//! Primal simplex: from a plan that fits to the best. Columns are priced in slices and a few candidates kept; the ratio test
//! is Harris's.

use super::program::{Ended, FAR, Program, SLIGHT, Stand};

/// The share of the columns that is priced before candidates are taken.
const SLICE: f64 = 0.02;
/// The fewest columns of a slice.
const LEAST_SLICE: usize = 1_024;
/// Columns priced in a row.
const CHUNK: usize = 256;
/// Candidates that are kept.
const CANDIDATES: usize = 40;
/// Candidates are sought anew when the best of them gains less than this share of the best when they were found ...
const STALE_PART: f64 = 0.3;
/// ... and after so many pivots.
const STALE_PIVOTS: usize = 40;
/// A column is a candidate when it gains at least this share of the best of its slice.
const CANDIDATE_PART: f64 = 0.25;
/// Pivots after which the basis is taken apart anew.
const FACTOR_EVERY: usize = 60;
/// Pivots without a step after which ties are broken by numbers mixed.
const EMPTY_PIVOTS: u64 = 50;
/// Pivots after which a run ends without an answer.
const MOST_PIVOTS: u64 = 200_000;
/// What is smaller than this stops nothing.
const LEAST_ENTRY: f64 = 1e-9;

/// What ends a step.
enum Stop {
    /// The entering column reaches its other bound.
    OtherBound(f64),
    /// The column of a row reaches a bound.
    Row { row: usize, step: f64, at_high: bool },
    /// Nothing.
    Never,
}

/// Columns that gain.
struct Pricing {
    next: usize,
    kept: Vec<u32>,
    best_found: f64,
    age: usize,
    /// The rows of columns of at most four ones, filled up with a row that has no price.
    short: Vec<Option<[u32; 4]>>,
}

impl Program {
    /// Goes to the best plan. The state must hold a plan that fits.
    pub(in super::super) fn primal(&mut self) -> Ended {
        if self.state.factors.exchanged() > 0 || self.state.factors.is_empty() {
            self.factor();
        }
        self.find_amounts();
        let mut prices = self.priced();
        let mut pricing = Pricing::new(self);
        let (mut column, mut turned) = (vec![0.0; self.rows()], vec![0.0; self.rows()]);
        let (mut empty, begun) = (0, self.pivots);
        while self.pivots - begun < MOST_PIVOTS {
            let Some(entering) = pricing.choose(self, &prices) else {
                if self.state.factors.exchanged() == 0 {
                    return Ended::Best;
                }
                self.factor();
                self.find_amounts();
                prices = self.priced();
                pricing.best_found = 0.0;
                continue;
            };
            let upwards = if self.state.stands[entering] == Stand::Low { 1.0 } else { -1.0 };
            self.solved(entering, &mut column);
            self.pivots += 1;
            match self.stop(entering, upwards, &column, empty) {
                Stop::Never => return Ended::Limit,
                Stop::OtherBound(step) => self.cross_over(entering, upwards * step, &column),
                Stop::Row { row, step, at_high } => {
                    empty = if step < LEAST_ENTRY { empty + 1 } else { 0 };
                    self.turned_row(row, &mut turned);
                    let times = self.gain(&prices, entering) / column[row];
                    prices.iter_mut().zip(&turned).for_each(|(price, part)| *price += times * part);
                    self.enter(entering, row, upwards * step, at_high, &column);
                    if self.state.factors.exchanged() >= FACTOR_EVERY {
                        self.factor();
                        self.find_amounts();
                        prices = self.priced();
                    }
                }
            }
        }
        Ended::Limit
    }

    /// Prices, and one of 0 for the row that short columns are filled up with.
    fn priced(&self) -> Vec<f64> {
        let mut prices = self.prices();
        prices.push(0.0);
        prices
    }

    /// How much a column that stands at a bound gains by leaving it.
    fn pull(&self, column: usize, gain: f64) -> f64 {
        let pull = match self.state.stands[column] {
            Stand::Basic => 0.0,
            Stand::Low => gain,
            Stand::High => -gain,
        };
        if pull > SLIGHT { pull } else { 0.0 }
    }

    fn stop(&self, entering: usize, upwards: f64, column: &[f64], empty: u64) -> Stop {
        let other_bound = self.high[entering] - self.low[entering];
        let (mut farthest, mut rows) = (other_bound + SLIGHT, Vec::new());
        for (row, entry) in column.iter().enumerate() {
            let falls = entry * upwards;
            if falls.abs() <= LEAST_ENTRY {
                continue;
            }
            let basic = self.state.head[row] as usize;
            if falls < 0.0 && self.high[basic] >= FAR {
                continue;
            }
            let amount = self.state.amounts[basic];
            let room = if falls > 0.0 { amount - self.low[basic] } else { self.high[basic] - amount };
            rows.push((row, falls, room / falls.abs()));
            farthest = farthest.min((room + SLIGHT) / falls.abs());
        }
        let (mut best, mut stop) = (0.0, Stop::Never);
        for (row, falls, step) in rows.into_iter().filter(|(_, _, step)| *step <= farthest) {
            let rank = falls.abs() * if empty > EMPTY_PIVOTS { self.mixed(row, empty) } else { 1.0 };
            if rank > best {
                best = rank;
                stop = Stop::Row { row, step: step.max(0.0), at_high: falls < 0.0 };
            }
        }
        match stop {
            Stop::Row { step, .. } if step < other_bound => stop,
            _ if other_bound < FAR * 0.5 => Stop::OtherBound(other_bound),
            _ => Stop::Never,
        }
    }

    /// A number a little above 1, another for each row and for each stretch of empty pivots.
    fn mixed(&self, row: usize, empty: u64) -> f64 {
        let column = u64::from(self.state.head[row]);
        let mixed = column.wrapping_mul(0x9E37_79B9_7F4A_7C15 ^ (empty / EMPTY_PIVOTS));
        1.0 + (mixed >> 40) as f64 * 1e-8
    }

    /// Moves every basic column along.
    fn move_along(&mut self, step: f64, column: &[f64]) {
        if step != 0.0 {
            for (row, entry) in column.iter().enumerate().filter(|(_, entry)| **entry != 0.0) {
                self.state.amounts[self.state.head[row] as usize] -= step * entry;
            }
        }
    }

    fn cross_over(&mut self, entering: usize, step: f64, column: &[f64]) {
        self.move_along(step, column);
        self.state.stands[entering] = if step > 0.0 { Stand::High } else { Stand::Low };
        self.state.amounts[entering] = self.bound(entering);
    }

    fn enter(&mut self, entering: usize, row: usize, step: f64, at_high: bool, column: &[f64]) {
        self.move_along(step, column);
        let leaving = self.state.head[row] as usize;
        self.state.amounts[entering] += step;
        self.state.stands[leaving] = if at_high { Stand::High } else { Stand::Low };
        self.state.amounts[leaving] = self.bound(leaving);
        self.state.stands[entering] = Stand::Basic;
        self.state.head[row] = entering as u32;
        self.state.factors.exchange(row, column);
    }
}

impl Pricing {
    fn new(program: &Program) -> Pricing {
        let no_row = program.rows() as u32;
        let short_of = |column: usize| {
            let rows = program.rows_of(column);
            let only_ones = program.columns.of(column).all(|(_, times)| times == 1.0);
            (rows.len() <= 4 && only_ones).then(|| std::array::from_fn(|at| rows.get(at).copied().unwrap_or(no_row)))
        };
        let short = (0..program.width()).map(short_of).collect();
        Pricing { next: 0, kept: Vec::new(), best_found: 0.0, age: 0, short }
    }

    fn gain(&self, program: &Program, prices: &[f64], column: usize) -> f64 {
        match &self.short[column] {
            Some(rows) => rows.iter().fold(program.worth[column], |gain, row| gain - prices[*row as usize]),
            None => program.gain(prices, column),
        }
    }

    /// The column to enter: the best of the kept ones, or of new ones.
    fn choose(&mut self, program: &Program, prices: &[f64]) -> Option<usize> {
        let (mut best, mut chosen) = (0.0, None);
        let mut kept = std::mem::take(&mut self.kept);
        kept.retain(|column| {
            let column = *column as usize;
            let pull = program.pull(column, self.gain(program, prices, column));
            if pull > best {
                best = pull;
                chosen = Some(column);
            }
            pull > 0.0
        });
        self.kept = kept;
        self.age += 1;
        if chosen.is_some() && best >= STALE_PART * self.best_found && self.age <= STALE_PIVOTS {
            return chosen;
        }
        let mut pool = self.slice(program, prices);
        let order = |a: &(f64, u32), b: &(f64, u32)| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1));
        if pool.len() > CANDIDATES {
            pool.select_nth_unstable_by(CANDIDATES - 1, order);
            pool.truncate(CANDIDATES);
        }
        let first = pool.iter().copied().min_by(order)?;
        self.kept = pool.iter().map(|(_, column)| *column).collect();
        self.best_found = first.0;
        self.age = 0;
        Some(first.1 as usize)
    }

    /// Prices slices until one holds columns that gain.
    fn slice(&mut self, program: &Program, prices: &[f64]) -> Vec<(f64, u32)> {
        let width = program.width();
        let enough = ((width as f64 * SLICE) as usize).max(LEAST_SLICE);
        let (mut pool, mut best, mut looked_at): (Vec<(f64, u32)>, f64, usize) = (Vec::new(), 0.0, 0);
        while looked_at < width && (looked_at < enough || pool.is_empty()) {
            let end = (self.next + CHUNK).min(width);
            for column in self.next..end {
                if program.state.stands[column] == Stand::Basic || program.low[column] >= program.high[column] {
                    continue;
                }
                let pull = program.pull(column, self.gain(program, prices, column));
                if pull > CANDIDATE_PART * best && pull > 0.0 {
                    pool.push((pull, column as u32));
                    best = best.max(pull);
                }
            }
            looked_at += end - self.next;
            self.next = if end == width { 0 } else { end };
        }
        pool
    }
}
