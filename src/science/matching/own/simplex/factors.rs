//! A basis taken apart: pivots one after the other, so that it can be solved forwards and backwards. Columns and rows with
//! one entry left come first and cost nothing; what remains is small. Later exchanges of a column are kept as updates.

use super::lists::Lists;

/// Pivots smaller than this are none.
const LEAST_PIVOT: f64 = 1e-9;
/// What is smaller than this is nothing.
const NOTHING: f64 = 1e-13;
/// A pivot has at least this share of the largest that could be taken.
const PIVOT_PART: f64 = 0.1;
/// No column.
pub(super) const NONE: u32 = u32::MAX;

/// The basis in factors.
#[derive(Clone, Debug, Default)]
pub(super) struct Factors {
    /// Rows of the pivots, in order, without those of columns that hold a single 1.
    order: Vec<u32>,
    diagonal: Vec<f64>,
    upper: Lists,
    lower_row: Vec<u32>,
    lower: Lists,
    /// Rows of columns that hold a single 1.
    alone: Vec<u32>,
    upper_by_row: Lists,
    update_row: Vec<u32>,
    update_diagonal: Vec<f64>,
    updates: Lists,
}

/// What taking a basis apart gives.
pub(super) struct Apart {
    pub(super) factors: Factors,
    /// The column of each row, [`NONE`] where none was left.
    pub(super) pivot_of_row: Vec<u32>,
    /// Columns without a pivot.
    pub(super) spare: Vec<u32>,
}

impl Factors {
    /// How many columns were exchanged since the basis was taken apart.
    pub(super) fn exchanged(&self) -> usize {
        self.update_row.len()
    }

    /// Whether anything was taken apart yet.
    pub(super) fn is_empty(&self) -> bool {
        self.order.is_empty() && self.alone.is_empty()
    }

    /// Solves basis x = values, in place.
    pub(super) fn forwards(&self, values: &mut [f64]) {
        for (at, row) in self.lower_row.iter().enumerate() {
            let value = values[*row as usize];
            if value != 0.0 {
                self.lower.take_from(at, value, values);
            }
        }
        for at in (0..self.order.len()).rev() {
            let row = self.order[at] as usize;
            if values[row] != 0.0 {
                let value = values[row] / self.diagonal[at];
                values[row] = value;
                self.upper.take_from(at, value, values);
            }
        }
        for (at, row) in self.update_row.iter().enumerate() {
            let row = *row as usize;
            if values[row] != 0.0 {
                let value = values[row] / self.update_diagonal[at];
                self.updates.take_from(at, value, values);
                values[row] = value;
            }
        }
    }

    /// Solves x basis = values, in place.
    pub(super) fn backwards(&self, values: &mut [f64]) {
        for at in (0..self.update_row.len()).rev() {
            let row = self.update_row[at] as usize;
            let value = values[row] - self.updates.dot(at, values);
            values[row] = if value == 0.0 { 0.0 } else { value / self.update_diagonal[at] };
        }
        for row in self.alone.iter().map(|row| *row as usize) {
            if values[row] != 0.0 {
                self.upper_by_row.take_from(row, values[row], values);
            }
        }
        for (at, row) in self.order.iter().enumerate() {
            let row = *row as usize;
            if values[row] != 0.0 {
                let value = values[row] / self.diagonal[at];
                values[row] = value;
                self.upper_by_row.take_from(row, value, values);
            }
        }
        for at in (0..self.lower_row.len()).rev() {
            let row = self.lower_row[at] as usize;
            values[row] -= self.lower.dot(at, values);
        }
    }

    /// Another column in a row: `column` is it, solved forwards.
    pub(super) fn exchange(&mut self, row: usize, column: &[f64]) {
        self.update_row.push(row as u32);
        self.update_diagonal.push(column[row]);
        for (at, value) in column.iter().enumerate() {
            if at != row && value.abs() > NOTHING {
                self.updates.put(at, *value);
            }
        }
        self.updates.close();
    }

    fn pivot(&mut self, row: usize, value: f64) {
        self.order.push(row as u32);
        self.diagonal.push(value);
        self.upper.close();
    }

    fn close_lower(&mut self, row: usize, before: usize) {
        if self.lower.entries() > before {
            self.lower_row.push(row as u32);
            self.lower.close();
        }
    }
}

/// Takes a basis apart. `head` are its columns, in any order.
pub(super) fn take_apart(columns: &Lists, head: &[u32], rows: usize) -> Apart {
    let mut basis = Lists::default();
    for column in head {
        columns.of(*column as usize).for_each(|(row, times)| basis.put(row, times));
        basis.close();
    }
    let mut work = Work {
        by_row: basis.turned(rows, |place| Some(place as u32)),
        in_column: (0..head.len()).map(|place| basis.length(place)).collect(),
        in_row: Vec::new(),
        row_done: vec![false; rows],
        column_done: vec![false; head.len()],
        apart: Apart { factors: Factors::default(), pivot_of_row: vec![NONE; rows], spare: Vec::new() },
        basis,
        head,
    };
    work.in_row = (0..rows).map(|row| work.by_row.length(row)).collect();
    work.singles();
    work.rest();
    work.apart
}

struct Work<'a> {
    basis: Lists,
    by_row: Lists,
    head: &'a [u32],
    /// Entries in rows and columns that are not done.
    in_column: Vec<usize>,
    in_row: Vec<usize>,
    row_done: Vec<bool>,
    column_done: Vec<bool>,
    apart: Apart,
}

impl Work<'_> {
    /// Columns and rows with one entry left, as long as there are any.
    fn singles(&mut self) {
        let ones = |counts: &[usize]| (0..counts.len()).filter(|at| counts[*at] == 1).collect::<Vec<usize>>();
        let (mut columns, mut rows) = (ones(&self.in_column), ones(&self.in_row));
        loop {
            if let Some(place) = columns.pop() {
                if !self.column_done[place] && self.in_column[place] == 1 {
                    self.single_column(place, &mut columns);
                }
            } else if let Some(row) = rows.pop() {
                if !self.row_done[row] && self.in_row[row] == 1 {
                    self.single_row(row, &mut rows);
                }
            } else {
                return;
            }
        }
    }

    fn single_column(&mut self, place: usize, columns: &mut Vec<usize>) {
        let Some((row, value)) = self.basis.of(place).find(|(row, _)| !self.row_done[*row]) else { return };
        self.done(place, row);
        let factors = &mut self.apart.factors;
        if self.basis.length(place) == 1 && value == 1.0 {
            factors.alone.push(row as u32);
        } else {
            self.basis.of(place).filter(|(at, _)| *at != row).for_each(|(at, times)| factors.upper.put(at, times));
            factors.pivot(row, value);
        }
        for (other, _) in self.by_row.of(row) {
            if !self.column_done[other] {
                self.in_column[other] -= 1;
                if self.in_column[other] == 1 {
                    columns.push(other);
                }
            }
        }
    }

    fn single_row(&mut self, row: usize, rows: &mut Vec<usize>) {
        let open = self.by_row.of(row).find(|(place, _)| !self.column_done[*place]);
        let Some((place, value)) = open else { return };
        self.done(place, row);
        let factors = &mut self.apart.factors;
        let before = factors.lower.entries();
        for (at, times) in self.basis.of(place).filter(|(at, _)| *at != row) {
            if self.row_done[at] {
                factors.upper.put(at, times);
                continue;
            }
            factors.lower.put(at, times / value);
            self.in_row[at] -= 1;
            if self.in_row[at] == 1 {
                rows.push(at);
            }
        }
        factors.pivot(row, value);
        factors.close_lower(row, before);
    }

    fn done(&mut self, place: usize, row: usize) {
        self.column_done[place] = true;
        self.row_done[row] = true;
        self.apart.pivot_of_row[row] = self.head[place];
    }

    /// What has no singles: column by column, the short ones first.
    fn rest(&mut self) {
        let mut open: Vec<usize> = (0..self.head.len()).filter(|place| !self.column_done[*place]).collect();
        open.sort_by_key(|place| (self.in_column[*place], *place));
        let first_lower = self.apart.factors.lower_row.len();
        let (mut values, mut touched) = (vec![0.0; self.row_done.len()], Vec::new());
        let mut is_touched = vec![false; self.row_done.len()];
        for place in open {
            touched.clear();
            for (row, times) in self.basis.of(place) {
                values[row] = times;
                is_touched[row] = true;
                touched.push(row);
            }
            self.lower_from(first_lower, &mut values, &mut touched, &mut is_touched);
            self.pivot_among(place, &values, &touched);
            for row in &touched {
                values[*row] = 0.0;
                is_touched[*row] = false;
            }
        }
        let (rows, factors) = (self.row_done.len(), &mut self.apart.factors);
        factors.upper_by_row = factors.upper.turned(rows, |at| Some(factors.order[at]));
    }

    fn lower_from(&self, first: usize, values: &mut [f64], touched: &mut Vec<usize>, is_touched: &mut [bool]) {
        let factors = &self.apart.factors;
        for at in first..factors.lower_row.len() {
            let value = values[factors.lower_row[at] as usize];
            if value == 0.0 {
                continue;
            }
            for (row, times) in factors.lower.of(at) {
                values[row] -= times * value;
                if !is_touched[row] {
                    is_touched[row] = true;
                    touched.push(row);
                }
            }
        }
    }

    fn pivot_among(&mut self, place: usize, values: &[f64], touched: &[usize]) {
        let open = || touched.iter().copied().filter(|row| !self.row_done[*row]);
        let largest = open().map(|row| values[row].abs()).fold(0.0, f64::max);
        let fits = open().filter(|row| values[*row].abs() >= PIVOT_PART * largest);
        let Some(row) = fits.min_by_key(|row| (self.in_row[*row], *row)).filter(|_| largest >= LEAST_PIVOT) else {
            self.apart.spare.push(self.head[place]);
            return;
        };
        self.done(place, row);
        let factors = &mut self.apart.factors;
        let before = factors.lower.entries();
        for at in touched.iter().copied().filter(|at| *at != row && values[*at].abs() > NOTHING) {
            if self.row_done[at] {
                factors.upper.put(at, values[at]);
            } else {
                factors.lower.put(at, values[at] / values[row]);
            }
        }
        factors.pivot(row, values[row]);
        factors.close_lower(row, before);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A column of three rows, solved both ways, against the basis multiplied out.
    #[test]
    fn what_was_taken_apart_solves_forwards_and_backwards_and_after_an_exchange() {
        let basis = [[2.0, 1.0, 0.0], [0.0, 3.0, 1.0], [4.0, 0.0, 1.0], [1.0, 1.0, 5.0]];
        let mut columns = Lists::default();
        for column in &basis {
            column
                .iter()
                .enumerate()
                .filter(|(_, times)| **times != 0.0)
                .for_each(|(row, times)| columns.put(row, *times));
            columns.close();
        }
        let Apart { mut factors, mut pivot_of_row, spare } = take_apart(&columns, &[0, 1, 2], 3);
        assert!(spare.is_empty());
        for exchanged in [false, true] {
            if exchanged {
                let mut entering = basis[3];
                factors.forwards(&mut entering);
                factors.exchange(1, &entering);
                pivot_of_row[1] = 3;
            }
            let wanted = [1.0, -2.0, 0.5];
            let mut found = wanted;
            factors.forwards(&mut found);
            for row in 0..3 {
                let sum: f64 = (0..3).map(|at| basis[pivot_of_row[at] as usize][row] * found[at]).sum();
                assert!((sum - wanted[row]).abs() < 1e-9, "{row}: {sum}");
            }
            let mut prices = wanted;
            factors.backwards(&mut prices);
            for at in 0..3 {
                let column = basis[pivot_of_row[at] as usize];
                let sum: f64 = (0..3).map(|row| column[row] * prices[row]).sum();
                assert!((sum - wanted[at]).abs() < 1e-9, "{at}: {sum}");
            }
        }
    }

    #[test]
    fn a_column_that_says_nothing_new_is_spare_and_its_row_has_no_pivot() {
        let mut columns = Lists::default();
        for _ in 0..2 {
            columns.put(0, 1.0);
            columns.put(1, 1.0);
            columns.close();
        }
        let apart = take_apart(&columns, &[0, 1], 2);
        assert_eq!(apart.spare, [1]);
        assert_eq!(apart.pivot_of_row.iter().filter(|pivot| **pivot == NONE).count(), 1);
    }
}
