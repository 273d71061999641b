//! A linear program: most worth, each column between its bounds, each row exactly its limit.

use super::factors::{Factors, NONE, take_apart};
use super::lists::Lists;

/// A bound that is none.
pub(in super::super) const FAR: f64 = 1e18;
/// What is off by no more than this is not off: amounts, and gains of a plant.
pub(super) const SLIGHT: f64 = 1e-7;

/// How often a basis that cannot be solved is mended before it is used as it is.
const MOST_REPAIRS: usize = 3;

/// Where a column stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in super::super) enum Stand {
    /// At its lower bound.
    Low,
    /// At its upper bound.
    High,
    /// In the basis.
    Basic,
}

/// How a run ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in super::super) enum Ended {
    /// At the best.
    Best,
    /// Nothing fits.
    Impossible,
    /// The best is no better than what was asked for.
    NotBetter,
    /// After too many pivots.
    Limit,
}

/// Where a program stands: all that changes as it is solved.
#[derive(Clone, Debug, Default)]
pub(in super::super) struct State {
    /// The column of each row's pivot.
    pub(super) head: Vec<u32>,
    pub(in super::super) stands: Vec<Stand>,
    pub(in super::super) amounts: Vec<f64>,
    /// What one more of a column would bring.
    pub(in super::super) gains: Vec<f64>,
    /// Weights of the rows in the dual simplex.
    pub(super) weights: Vec<f64>,
    pub(super) factors: Factors,
}

/// The program.
#[derive(Clone, Debug, Default)]
pub(in super::super) struct Program {
    pub(super) columns: Lists,
    pub(super) by_row: Lists,
    pub(in super::super) worth: Vec<f64>,
    pub(in super::super) low: Vec<f64>,
    pub(in super::super) high: Vec<f64>,
    pub(in super::super) limits: Vec<f64>,
    /// The column that makes up what a row lacks, with a single entry or, for totals, two.
    pub(in super::super) slack: Vec<u32>,
    pub(in super::super) state: State,
    pub(in super::super) pivots: u64,
}

impl Program {
    /// A program of rows without columns.
    pub(in super::super) fn new(limits: Vec<f64>) -> Program {
        Program { slack: vec![0; limits.len()], limits, ..Program::default() }
    }

    /// How many rows.
    pub(in super::super) fn rows(&self) -> usize {
        self.limits.len()
    }

    /// How many columns.
    pub(in super::super) fn width(&self) -> usize {
        self.worth.len()
    }

    /// The rows of a column.
    pub(in super::super) fn rows_of(&self, column: usize) -> &[u32] {
        self.columns.places(column)
    }

    /// The entries of a column.
    fn entries(&self, column: usize) -> Vec<(usize, f64)> {
        self.columns.of(column).collect()
    }

    /// Adds a column and says which.
    pub(in super::super) fn add(&mut self, worth: f64, bounds: (f64, f64), entries: &[(usize, f64)]) -> usize {
        entries.iter().for_each(|(row, times)| self.columns.put(*row, *times));
        self.columns.close();
        self.worth.push(worth);
        self.low.push(bounds.0);
        self.high.push(bounds.1);
        self.worth.len() - 1
    }

    /// Adds a row: the sum of columns is a new column, which is basic at once. Says which.
    pub(in super::super) fn add_sum(&mut self, columns: &[u32]) -> usize {
        let row = self.rows();
        let mut is_part = vec![false; self.width()];
        columns.iter().for_each(|column| is_part[*column as usize] = true);
        let before = std::mem::take(&mut self.columns);
        for (column, is_part) in is_part.into_iter().enumerate() {
            before.of(column).for_each(|(at, times)| self.columns.put(at, times));
            if is_part {
                self.columns.put(row, 1.0);
            }
            self.columns.close();
        }
        self.limits.push(0.0);
        let sum = self.add(0.0, (0.0, FAR), &[(row, -1.0)]);
        self.slack.push(sum as u32);
        self.state.stands.push(Stand::Basic);
        self.state.amounts.push(0.0);
        self.state.gains.push(0.0);
        self.state.head.push(sum as u32);
        self.state.weights.push(1.0);
        self.index_rows();
        self.refresh();
        sum
    }

    /// The same rows with some of the columns, standing as they stand, and where each column went.
    pub(in super::super) fn only(&self, is_kept: impl Fn(usize) -> bool) -> (Program, Vec<usize>) {
        let mut program = Program { limits: self.limits.clone(), pivots: self.pivots, ..Program::default() };
        let mut went = vec![usize::MAX; self.width()];
        for column in (0..self.width()).filter(|column| is_kept(*column)) {
            let bounds = (self.low[column], self.high[column]);
            went[column] = program.add(self.worth[column], bounds, &self.entries(column));
            program.state.stands.push(self.state.stands[column]);
        }
        program.slack = self.slack.iter().map(|slack| went[*slack as usize] as u32).collect();
        program.state.amounts = vec![0.0; program.width()];
        program.state.gains = vec![0.0; program.width()];
        program.index_rows();
        program.head_from_stands();
        program.find_amounts();
        program.find_gains();
        (program, went)
    }

    /// Makes the rows known to the dual simplex.
    pub(in super::super) fn index_rows(&mut self) {
        self.by_row = self.columns.turned(self.rows(), |column| Some(column as u32));
    }

    /// Makes the rows known without those of the first columns that lose so much or more: they cannot enter in the dual simplex, and
    /// the primal must be run after it. Gains must hold.
    pub(in super::super) fn index_near_rows(&mut self, first: usize, loses: f64) {
        let state = &self.state;
        let is_near = |at: usize| at >= first || state.stands[at] != Stand::Low || state.gains[at] > -loses;
        self.by_row = self.columns.turned(self.rows(), |column| is_near(column).then_some(column as u32));
    }

    /// Every slack basic, everything else at its lower bound.
    pub(in super::super) fn start_from_slacks(&mut self) {
        self.state.stands = vec![Stand::Low; self.width()];
        self.state.amounts = self.low.clone();
        self.state.gains = vec![0.0; self.width()];
        for slack in &self.slack {
            self.state.stands[*slack as usize] = Stand::Basic;
        }
        self.head_from_stands();
    }

    /// The basis as the stands say it.
    pub(in super::super) fn head_from_stands(&mut self) {
        let basic = (0..self.width()).filter(|column| self.state.stands[*column] == Stand::Basic);
        self.state.head = basic.map(|column| column as u32).collect();
        self.state.weights = vec![1.0; self.rows()];
        self.factor();
    }

    /// Takes the basis apart anew. Columns that say nothing new leave it, slacks take their places.
    pub(super) fn factor(&mut self) {
        for _ in 0..MOST_REPAIRS {
            let apart = take_apart(&self.columns, &self.state.head, self.rows());
            self.state.head = apart.pivot_of_row;
            self.state.factors = apart.factors;
            if apart.spare.is_empty() {
                return;
            }
            for column in apart.spare.into_iter().map(|column| column as usize) {
                let is_high = self.high[column] < FAR && self.state.amounts[column] > self.middle(column);
                self.state.stands[column] = if is_high { Stand::High } else { Stand::Low };
            }
            for (row, column) in self.state.head.iter_mut().enumerate().filter(|(_, column)| **column == NONE) {
                *column = self.slack[row];
                self.state.stands[*column as usize] = Stand::Basic;
            }
        }
    }

    fn middle(&self, column: usize) -> f64 {
        0.5 * (self.low[column] + self.high[column])
    }

    /// The bound at which a column stands.
    pub(super) fn bound(&self, column: usize) -> f64 {
        if self.state.stands[column] == Stand::High { self.high[column] } else { self.low[column] }
    }

    /// Reckons all amounts from what stands at a bound.
    pub(in super::super) fn find_amounts(&mut self) {
        let mut left = self.limits.clone();
        for column in 0..self.width() {
            if self.state.stands[column] != Stand::Basic {
                let amount = self.bound(column);
                self.state.amounts[column] = amount;
                if amount != 0.0 {
                    self.columns.take_from(column, amount, &mut left);
                }
            }
        }
        self.state.factors.forwards(&mut left);
        for (row, column) in self.state.head.iter().enumerate() {
            self.state.amounts[*column as usize] = left[row];
        }
    }

    /// What one more of each row's limit would bring.
    pub(in super::super) fn prices(&self) -> Vec<f64> {
        let mut prices: Vec<f64> = self.state.head.iter().map(|column| self.worth[*column as usize]).collect();
        self.state.factors.backwards(&mut prices);
        prices
    }

    /// What one more of a column would bring at these prices.
    pub(super) fn gain(&self, prices: &[f64], column: usize) -> f64 {
        self.worth[column] - self.columns.dot(column, prices)
    }

    /// Reckons the gains of all columns.
    pub(in super::super) fn find_gains(&mut self) {
        let prices = self.prices();
        for column in 0..self.width() {
            let is_basic = self.state.stands[column] == Stand::Basic;
            self.state.gains[column] = if is_basic { 0.0 } else { self.gain(&prices, column) };
        }
    }

    /// Factors, amounts and gains anew.
    pub(in super::super) fn refresh(&mut self) {
        self.factor();
        self.find_amounts();
        self.find_gains();
    }

    /// The worth of the amounts.
    pub(in super::super) fn total(&self) -> f64 {
        self.worth.iter().zip(&self.state.amounts).map(|(worth, amount)| worth * amount).sum()
    }

    /// A column, solved forwards.
    pub(super) fn solved(&self, column: usize, into: &mut [f64]) {
        into.fill(0.0);
        self.columns.of(column).for_each(|(row, times)| into[row] = times);
        self.state.factors.forwards(into);
    }

    /// A row of the basis turned round.
    pub(super) fn turned_row(&self, row: usize, into: &mut [f64]) {
        into.fill(0.0);
        into[row] = 1.0;
        self.state.factors.backwards(into);
    }
}
