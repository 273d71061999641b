//! Dual simplex: from prices that hold to a plan that fits, by the steepest edge. It ends as soon as it is sure that the best is
//! no better than what is asked for.

use super::program::{Ended, Program, SLIGHT, Stand};

/// Pivots after which the basis is taken apart anew.
const FACTOR_EVERY: usize = 50;
/// What is smaller than this turns nothing.
const LEAST_ENTRY: f64 = 1e-9;
/// What is smaller than this is left out of a row.
const NOTHING: f64 = 1e-12;
/// Row and column must agree on the pivot to this share, or the factors are stale.
const AGREES: f64 = 1e-6;
/// The least weight of a row.
const LEAST_WEIGHT: f64 = 1e-4;

/// One row of the tableau: the columns that stand in it, and how.
#[derive(Default)]
struct TableauRow {
    entries: Vec<f64>,
    columns: Vec<u32>,
}

impl Program {
    /// Goes to the best plan that fits, or until it is no better than `asked`. Gains must hold for the basis.
    pub(in super::super) fn dual(&mut self, asked: f64, most_pivots: usize) -> Ended {
        let rows = self.rows();
        self.state.weights.resize(rows, 1.0);
        let (mut turned, mut column) = (vec![0.0; rows], vec![0.0; rows]);
        let mut tableau = TableauRow { entries: vec![0.0; self.width()], columns: Vec::new() };
        let mut total = self.total();
        for _ in 0..most_pivots {
            if total <= asked {
                return Ended::NotBetter;
            }
            let Some((row, is_below)) = self.leaving() else { return Ended::Best };
            self.turned_row(row, &mut turned);
            self.tableau_row(&turned, &mut tableau);
            let Some(entering) = self.entering(&tableau, is_below) else {
                if self.state.factors.exchanged() == 0 {
                    return Ended::Impossible;
                }
                self.refresh_weighted();
                total = self.total();
                continue;
            };
            self.solved(entering, &mut column);
            let differs = (column[row] - tableau.entries[entering]).abs();
            if differs > AGREES * (1.0 + column[row].abs()) && self.state.factors.exchanged() > 0 {
                self.refresh_weighted();
                total = self.total();
                continue;
            }
            total -= self.exchange_dual(row, entering, is_below, &column, &turned, &tableau);
            self.pivots += 1;
            if self.state.factors.exchanged() >= FACTOR_EVERY {
                self.refresh_weighted();
                total = self.total();
            }
        }
        Ended::Limit
    }

    /// Factors, amounts and gains anew; the weights stay with their columns.
    fn refresh_weighted(&mut self) {
        let mut by_column = vec![1.0; self.width()];
        for (column, weight) in self.state.head.iter().zip(&self.state.weights) {
            by_column[*column as usize] = *weight;
        }
        self.refresh();
        self.state.weights = self.state.head.iter().map(|column| by_column[*column as usize]).collect();
    }

    /// The row whose column is farthest outside its bounds for its weight, and whether it is below.
    fn leaving(&self) -> Option<(usize, bool)> {
        let (mut best, mut found) = (0.0, None);
        for (row, column) in self.state.head.iter().enumerate() {
            let column = *column as usize;
            let amount = self.state.amounts[column];
            let (below, above) = (self.low[column] - amount, amount - self.high[column]);
            let outside = below.max(above);
            if outside > SLIGHT {
                let rank = outside * outside / self.state.weights[row];
                if rank > best {
                    best = rank;
                    found = Some((row, below > above));
                }
            }
        }
        found
    }

    fn tableau_row(&self, turned: &[f64], tableau: &mut TableauRow) {
        for column in tableau.columns.drain(..) {
            tableau.entries[column as usize] = 0.0;
        }
        for (row, part) in turned.iter().enumerate().filter(|(_, part)| part.abs() > NOTHING) {
            for (column, times) in self.by_row.of(row) {
                let entry = &mut tableau.entries[column];
                if *entry == 0.0 {
                    tableau.columns.push(column as u32);
                }
                *entry += part * times;
                if *entry == 0.0 {
                    // It was met: it must not be put down twice.
                    *entry = f64::MIN_POSITIVE;
                }
            }
        }
    }

    /// The column that may enter at the smallest loss; among equals the largest entry.
    fn entering(&self, tableau: &TableauRow, is_below: bool) -> Option<usize> {
        let turn = if is_below { -1.0 } else { 1.0 };
        let fits = |column: &u32| {
            let column = *column as usize;
            let entry = tableau.entries[column] * turn;
            let loses = match self.state.stands[column] {
                Stand::Low if entry > LEAST_ENTRY => (-self.state.gains[column]).max(0.0),
                Stand::High if entry < -LEAST_ENTRY => self.state.gains[column].max(0.0),
                Stand::Low | Stand::High | Stand::Basic => return None,
            };
            (self.low[column] < self.high[column]).then_some((column, entry.abs(), loses))
        };
        let farthest = tableau.columns.iter().filter_map(fits).map(|(_, entry, loses)| (loses + SLIGHT) / entry);
        let farthest = farthest.fold(f64::INFINITY, f64::min);
        let near = tableau.columns.iter().filter_map(fits).filter(|(_, entry, loses)| loses / entry <= farthest);
        near.max_by(|a, b| a.1.total_cmp(&b.1).then(b.0.cmp(&a.0))).map(|(column, _, _)| column)
    }

    /// One pivot; says how much worth it took.
    fn exchange_dual(
        &mut self,
        row: usize,
        entering: usize,
        is_below: bool,
        column: &[f64],
        turned: &[f64],
        tableau: &TableauRow,
    ) -> f64 {
        let leaving = self.state.head[row] as usize;
        let bound = if is_below { self.low[leaving] } else { self.high[leaving] };
        let outside = self.state.amounts[leaving] - bound;
        let (step, times) = (outside / column[row], self.state.gains[entering] / column[row]);
        for at in tableau.columns.iter().map(|at| *at as usize) {
            if self.state.stands[at] != Stand::Basic {
                self.state.gains[at] -= times * tableau.entries[at];
            }
        }
        for (at, entry) in column.iter().enumerate().filter(|(_, entry)| **entry != 0.0) {
            self.state.amounts[self.state.head[at] as usize] -= step * entry;
        }
        self.steepest(row, column, turned);
        self.state.amounts[entering] += step;
        self.state.amounts[leaving] = bound;
        self.state.gains[leaving] = -times;
        self.state.gains[entering] = 0.0;
        self.state.stands[leaving] = if is_below { Stand::Low } else { Stand::High };
        self.state.stands[entering] = Stand::Basic;
        self.state.head[row] = entering as u32;
        self.state.factors.exchange(row, column);
        (times * outside).abs()
    }

    /// Brings the weights of the steepest edge up to date.
    fn steepest(&mut self, row: usize, column: &[f64], turned: &[f64]) {
        let mut along = turned.to_vec();
        self.state.factors.forwards(&mut along);
        let (pivot, own) = (column[row], self.state.weights[row]);
        for (at, entry) in column.iter().enumerate().filter(|(at, entry)| *at != row && **entry != 0.0) {
            let times = entry / pivot;
            let weight = self.state.weights[at] - 2.0 * times * along[at] + times * times * own;
            self.state.weights[at] = weight.max(LEAST_WEIGHT);
        }
        self.state.weights[row] = (own / (pivot * pivot)).max(LEAST_WEIGHT);
    }
}
