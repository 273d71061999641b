//! A solver of our own. Its steps, each in a file: the task made small, a linear program of it, estimated prices, a greedy plan to
//! begin with, a bounded simplex, shares that join afterwards, corners of whole plants, and branch and bound on what is left.
//!
//! What is pruned rests on floating point (bounds to a millionth of whole worths); every plan is checked in whole numbers.

mod best;
mod branching;
mod corner;
mod model;
mod prices;
mod root;
mod rounding;
mod simplex;
mod start;
mod task;
#[cfg(test)]
mod tests;

use super::check::check;
use super::instance::Instance;
use super::solver::{Progress, Solved, Solver, Watch};
use best::Best;
use corner::whole_corner;
use rounding::{by_value, greedy, rounded};
use simplex::Ended;
use task::Task;

/// Tries to find a corner of whole plants before branching.
const CORNER_TRIES: u64 = 4;

/// The solver of our own.
pub struct Own;

impl Solver for Own {
    fn solve(&self, instance: &Instance, watch: &mut Watch) -> Solved {
        let task = Task::new(instance);
        let (best, bound) = solved(&task, watch);
        let plan = task.plan(instance, &best.plants);
        match check(instance, &plan) {
            Ok(objective) => Solved { plan, objective, bound: bound.max(objective) },
            // The plan of nothing is always right; that this never comes is a property of the tests.
            Err(_) => Solved { plan: Vec::new(), objective: 0, bound },
        }
    }
}

/// The best plan of a task and the bound.
fn solved(task: &Task, watch: &mut Watch) -> (Best, i64) {
    let (mut best, order) = (Best::nothing(task), by_value(task));
    best.take(task, greedy(task, &order));
    if task.ways.is_empty() {
        let bound = best.worth;
        return (best, bound);
    }
    // Every plant of a lot on its dearest way: a bound before anything was solved.
    let rough = |best: &Best| task.rough_bound().max(best.worth);
    let bound = rough(&best);
    if !watch(Progress { best: best.worth, bound, steps: 0 }) {
        return (best, bound);
    }
    let (mut root, ended) = root::root(task);
    if ended != Ended::Best {
        return (best, bound);
    }
    let total = root.program.total();
    if root.is_whole() {
        best.take(task, root.plants(task));
    }
    if best.whole_bound(total) > best.worth {
        best.take(task, rounded(task, &root, &order));
    }
    root.program.find_gains();
    if best.whole_bound(total) > best.worth
        && task.limit.is_plain()
        && let Some(corner) = whole_corner(&root, 1, &[], CORNER_TRIES)
    {
        best.take(task, corner.plants(task));
    }
    if best.whole_bound(total) <= best.worth {
        let bound = best.worth;
        return (best, bound);
    }
    let mut goes = |best: &Best, bound: f64, steps: u64| {
        watch(Progress { best: best.worth, bound: best.whole_bound(bound), steps })
    };
    let left = branching::search(task, &root, &order, &mut best, &mut goes);
    let bound = left.map_or(best.worth, |bound| best.whole_bound(bound));
    (best, bound)
}
