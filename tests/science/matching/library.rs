//! The whole problem given to a library of linear programs: branch and bound on the offers as they stand.

use std::collections::BTreeSet;
use std::time::Duration;

use microlp::{ComparisonOp, OptimizationDirection, Problem, Variable};

use outplant::science::matching::{Instance, Offer, Progress, ShareOf, Shipment, Solved, Solver, Watch, check};

/// By the library.
pub struct ByLibrary {
    /// It gives up after so long: branching on single offers may go on for ever where shares are of what is planted.
    pub longest: Duration,
}

impl Solver for ByLibrary {
    fn solve(&self, instance: &Instance, watch: &mut Watch) -> Solved {
        // Each offer at its best with every plant of its group.
        let most = |offer: &Offer| offer.value.max(0) * instance.groups()[offer.group].supply;
        let nothing = Solved { plan: Vec::new(), objective: 0, bound: instance.offers().iter().map(most).sum() };
        if !watch(Progress { best: 0, bound: nothing.bound, steps: 0 }) {
            return nothing;
        }
        let (mut problem, variables) = problem_of(instance);
        problem.set_time_limit(self.longest);
        let Some(solution) = problem.solve().ok().and_then(|outcome| outcome.into_solution().ok()) else {
            return nothing;
        };
        let rows = instance.offers().iter().zip(&variables).map(|(offer, variable)| {
            let plants = solution.var_value(*variable).round() as i64;
            Shipment { group: offer.group, opening: offer.opening, week: offer.week, plants }
        });
        let plan: Vec<Shipment> = rows.filter(|row| row.plants > 0).collect();
        let optimal = solution.status() == microlp::SolutionStatus::Optimal;
        match check(instance, &plan) {
            Ok(objective) => Solved { plan, objective, bound: if optimal { objective } else { nothing.bound } },
            Err(_) => nothing,
        }
    }
}

fn problem_of(instance: &Instance) -> (Problem, Vec<Variable>) {
    let mut problem = Problem::new(OptimizationDirection::Maximize);
    let supply = |group: usize| instance.groups()[group].supply as i32;
    let variable =
        |offer: &Offer, problem: &mut Problem| problem.add_integer_var(offer.value as f64, (0, supply(offer.group)));
    let variables: Vec<Variable> = instance.offers().iter().map(|offer| variable(offer, &mut problem)).collect();
    let mut limit = |belongs: &dyn Fn(&Offer) -> f64, most: i64| {
        let each = instance.offers().iter().zip(&variables).map(|(offer, variable)| (*variable, belongs(offer)));
        let row: Vec<(Variable, f64)> = each.filter(|(_, times)| *times != 0.0).collect();
        if !row.is_empty() {
            problem.add_constraint(&row[..], ComparisonOp::Le, most as f64);
        }
    };
    let one = |belongs: bool| f64::from(u8::from(belongs));
    for (at, group) in instance.groups().iter().enumerate() {
        limit(&|offer| one(offer.group == at), group.supply);
    }
    for (at, opening) in instance.openings().iter().enumerate() {
        limit(&|offer| one(offer.opening == at), opening.positions);
    }
    for (at, work) in instance.work().iter().enumerate() {
        limit(&|offer| one(offer.week as usize == at + 1), *work);
    }
    let beds: BTreeSet<&str> = instance.openings().iter().map(|opening| opening.bed.as_str()).collect();
    let sources: BTreeSet<&str> = instance.groups().iter().map(|group| group.source.as_str()).collect();
    let share = instance.share();
    for (bed, source) in beds.iter().flat_map(|bed| sources.iter().map(move |source| (*bed, *source))) {
        let is_in = |offer: &Offer| instance.openings()[offer.opening].bed == bed;
        let is_of = |offer: &Offer| is_in(offer) && instance.groups()[offer.group].source == source;
        let positions = instance.openings().iter().filter(|opening| opening.bed == bed);
        match share.of {
            _ if !share.limits() => {}
            ShareOf::Positions => {
                let all = positions.map(|opening| opening.positions).sum();
                limit(&|offer| one(is_of(offer)), share.most_of(all));
            }
            ShareOf::Planted => limit(
                &|offer| match is_in(offer) {
                    true => one(is_of(offer)) * share.whole as f64 - share.parts as f64,
                    false => 0.0,
                },
                0,
            ),
        }
    }
    (problem, variables)
}
