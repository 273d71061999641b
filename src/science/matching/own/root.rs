//! Fifth step: the best plan with fractions of plants. Shares join afterwards: those of what is planted all at once, those of
//! positions as far as they matter.

use super::model::{Model, Row, Shares};
use super::prices::estimate;
use super::simplex::{Ended, FAR};
use super::start::begin;
use super::task::{Limit, Task};

/// Pivots that the dual simplex may take as shares join.
const MOST_PIVOTS: usize = 100_000;
/// Ways that lose more than this stay out while shares join; the primal simplex looks at them again.
const FAR_FROM_BEST: f64 = 60.0;
/// A share is broken by more than this.
const BROKEN_BY: f64 = 1e-7;

/// A model at its best, or how it ended.
pub(super) fn root(task: &Task) -> (Model, Ended) {
    let ways: Vec<usize> = (0..task.ways.len()).collect();
    match task.limit {
        Limit::None => without_shares(task, ways),
        Limit::Positions => with_shares_of_positions(task, ways),
        Limit::Planted { .. } => {
            let (plain, ended) = without_shares(task, ways.clone());
            if ended != Ended::Best {
                return (plain, ended);
            }
            let mut model = Model::new(task, ways, &Shares::All);
            model.program.start_from_slacks();
            let ended = join(&mut model, &plain);
            (model, ended)
        }
    }
}

fn without_shares(task: &Task, ways: Vec<usize>) -> (Model, Ended) {
    let mut model = Model::new(task, ways, &Shares::None);
    let prices = estimate(&model);
    begin(&mut model, &prices);
    let ended = model.program.primal();
    (model, ended)
}

/// Stands as another does and goes on from its prices.
fn join(model: &mut Model, other: &Model) -> Ended {
    model.stand_as(other);
    model.program.find_amounts();
    model.program.find_gains();
    model.program.index_near_rows(model.ways.len(), FAR_FROM_BEST);
    model.program.pivots += other.program.pivots;
    match model.program.dual(-FAR, MOST_PIVOTS) {
        Ended::Best => model.program.primal(),
        other => other,
    }
}

/// The estimate says which rows of shares matter; the others stay out until they are broken, and are all put back at the end.
fn with_shares_of_positions(task: &Task, ways: Vec<usize>) -> (Model, Ended) {
    let mut all = Model::new(task, ways.clone(), &Shares::All);
    let prices = estimate(&all);
    let matters = begin(&mut all, &prices);
    let mut is_in = vec![false; task.beds * task.sources];
    for (row, matters) in all.rows.iter().zip(matters) {
        if let Row::Source(at) = row {
            is_in[*at] = matters;
        }
    }
    let mut model = Model::new(task, ways.clone(), &Shares::Only(&is_in));
    model.program.start_from_slacks();
    model.stand_as(&all);
    let mut ended = model.program.primal();
    while ended == Ended::Best && take_in_broken(task, &model, &mut is_in) {
        let mut next = Model::new(task, ways.clone(), &Shares::Only(&is_in));
        next.program.start_from_slacks();
        ended = join(&mut next, &model);
        model = next;
    }
    if ended == Ended::Best {
        all.program.start_from_slacks();
        ended = join(&mut all, &model);
    }
    (all, ended)
}

fn take_in_broken(task: &Task, model: &Model, is_in: &mut [bool]) -> bool {
    let mut sums = vec![0.0; is_in.len()];
    for (column, way) in model.ways.iter().enumerate() {
        sums[task.bed_source(&task.ways[*way])] += model.program.state.amounts[column];
    }
    let mut any = false;
    for (at, sum) in sums.into_iter().enumerate() {
        if !is_in[at] && sum > task.source_most[at / task.sources] as f64 + BROKEN_BY {
            is_in[at] = true;
            any = true;
        }
    }
    any
}
