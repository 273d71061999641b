//! From the best plan one to walk: fewer trips, small loads joined or left, at the price of a hundredth of its worth at most.

use std::collections::{BTreeMap, BTreeSet};

use super::given::{LEAST_LOAD, WALKABLE_PRICE, sums};
use super::task::Task;
use crate::science::matching::{Instance, Shipment, check};

/// Rounds of joining; each takes at least one trip away, so few are needed. Ours.
const MOST_ROUNDS: usize = 1000;

/// A plan to walk, and which groups had plants that were not worth a trip.
pub(super) struct Walked {
    /// The plan.
    pub(super) plan: Vec<Shipment>,
    /// Groups of which a load was left behind.
    pub(super) not_worth_it: BTreeSet<usize>,
}

/// Joins what can be joined, and leaves loads that are too small; every step is checked by code that knows no solver.
pub(super) fn walkable(task: &Task, best: &[Shipment]) -> Walked {
    let instance = &task.instance;
    let Ok(worth) = check(instance, best) else {
        return Walked { plan: Vec::new(), not_worth_it: BTreeSet::new() };
    };
    let least_worth = worth - (worth as f64 * WALKABLE_PRICE).floor() as i64;
    let mut walked = Walked { plan: best.to_vec(), not_worth_it: BTreeSet::new() };
    for _ in 0..MOST_ROUNDS {
        let Some((plan, left)) = step(instance, &walked.plan, least_worth) else { break };
        walked.plan = plan;
        walked.not_worth_it.extend(left);
    }
    walked
}

/// The next plan with a trip less, the dearest one, and the group that stays behind for it; none where there is no more.
fn step(instance: &Instance, plan: &[Shipment], least_worth: i64) -> Option<(Vec<Shipment>, Option<usize>)> {
    let joins = (0..plan.len()).flat_map(|at| joined(plan, at));
    let best_of = |plans: &mut dyn Iterator<Item = (Vec<Shipment>, Option<usize>)>| {
        plans
            .filter_map(|(plan, left)| Some((check(instance, &plan).ok()?, plan, left)))
            .filter(|(worth, _, _)| *worth >= least_worth)
            .max_by(|a, b| a.0.cmp(&b.0).then_with(|| b.1.cmp(&a.1)))
            .map(|(_, plan, left)| (plan, left))
    };
    best_of(&mut joins.map(|plan| (plan, None))).or_else(|| {
        let small = too_small(instance, plan);
        let without = small.into_iter().map(|at| {
            let mut fewer = plan.to_vec();
            let left = fewer.remove(at);
            (fewer, Some(left.group))
        });
        best_of(&mut without.into_iter())
    })
}

/// The plans in which the plants of a row go with another row of the same tray and bed, or change places with those of a like tray so
/// that each of two beds hears of one tray only.
fn joined(plan: &[Shipment], at: usize) -> Vec<Vec<Shipment>> {
    let row = plan[at];
    let mut plans = Vec::new();
    for (other_at, other) in plan.iter().enumerate().filter(|(other_at, _)| *other_at != at) {
        if (other.group, other.opening) == (row.group, row.opening) {
            let mut fewer = plan.to_vec();
            fewer[other_at].plants += row.plants;
            fewer.remove(at);
            plans.push(fewer);
        }
        // Plants of one tray go to two beds in a week, and those of another to the second of them: what the first brings
        // there the second brings, where it also goes to the first.
        let crosses = |third: &Shipment| {
            (third.group, third.opening, third.week) == (other.group, row.opening, row.week) && third.plants > 0
        };
        if other.group != row.group && other.week == row.week && other.opening != row.opening {
            let (Some(third), Some(fourth)) = (
                plan.iter().position(crosses),
                plan.iter().position(|one| (one.group, one.opening, one.week) == (row.group, other.opening, row.week)),
            ) else {
                continue;
            };
            let moved = row.plants.min(other.plants);
            let mut crossed = plan.to_vec();
            crossed[at].plants -= moved;
            crossed[other_at].plants -= moved;
            crossed[third].plants += moved;
            crossed[fourth].plants += moved;
            crossed.retain(|one| one.plants > 0);
            plans.push(crossed);
        }
    }
    plans
}

/// Rows of fewer plants than a trip is worth, that neither fill a bed nor empty a tray; the smallest first.
fn too_small(instance: &Instance, plan: &[Shipment]) -> Vec<usize> {
    let of_group: BTreeMap<usize, i64> = sums(plan, |row| row.group);
    let of_opening: BTreeMap<usize, i64> = sums(plan, |row| row.opening);
    let is_small = |row: &Shipment| {
        row.plants < LEAST_LOAD
            && of_group[&row.group] < instance.groups()[row.group].supply
            && of_opening[&row.opening] < instance.openings()[row.opening].positions
    };
    let mut small: Vec<usize> = (0..plan.len()).filter(|at| is_small(&plan[*at])).collect();
    small.sort_by_key(|at| (plan[*at].plants, *at));
    small
}
