//! The plan of going out: which tray goes to which bed in which of the coming weeks, so that the most plants live a year later, with
//! what holds the rest back and what one more day of planting would bring.
//!
//! From the Pictures of the coming weeks, in which only time passes, to an instance of [`crate::science::matching`], and from its
//! best plan to loads. Pure: days, clocks and limits of time are the asker's.

mod given;
mod live;
mod more;
mod opens;
mod reasons;
mod task;
mod walkable;

pub use given::{ByHand, Load, NoMatch};
pub(crate) use given::{MOST_PLAN_WEEKS, PLAN_WEEKS};
pub use more::{More, OneMore};
pub use reasons::{Cause, Empty, LeftBehind};
pub use task::Ahead;

use crate::base::Day;
use crate::science::matching::{Solver, Watch};
use given::{POINTS_A_PLANT, sum};
use task::Task;

/// How good a plan is known to be.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Proof {
    /// No plan is better.
    Proven,
    /// The best so far: no plan brings more than so many plants more to life.
    BestSoFar {
        /// Plants.
        at_most: u32,
    },
    /// Nothing can go out in these weeks.
    Nothing,
}

/// The plan.
#[derive(Clone, PartialEq, Debug)]
pub struct Plan {
    /// Its first day.
    pub(crate) on: Day,
    /// How many weeks.
    pub(crate) weeks: u32,
    /// How good it is.
    pub proof: Proof,
    /// What it is worth, in points.
    pub(crate) objective: i64,
    /// No plan is worth more.
    pub(crate) bound: i64,
    /// Plants that likely live a year later.
    pub(crate) living: f64,
    /// The loads, by week, bed and tray.
    pub loads: Vec<Load>,
    /// Plants and trips that were given up so that it is one to walk.
    pub given_up: (u32, u32),
    /// Plants that can be set in a day and in a week; none where nobody wrote how many.
    pub hands: Option<(u32, u32)>,
    /// What stays behind.
    pub left_behind: Vec<LeftBehind>,
    /// Positions that stay empty.
    pub empty: Vec<Empty>,
    /// What one more would bring.
    pub one_more: Vec<OneMore>,
}

/// The best plan of the coming weeks.
///
/// # Errors
/// What a person pinned cannot be, or the nursery is too large.
pub fn plan(ahead: &Ahead, by_hand: &ByHand, solver: &dyn Solver, watch: &mut Watch) -> Result<Plan, NoMatch> {
    let task = Task::of(ahead, by_hand)?;
    let solved = solver.solve(&task.instance, watch);
    let walked = walkable::walkable(&task, &solved.plan);
    let loads = task.loads(&walked.plan);
    let trips = task.loads(&solved.plan).len().saturating_sub(loads.len());
    let plants = sum(&solved.plan) - sum(&walked.plan);
    let better = (solved.bound - solved.objective).max(0) as f64 / POINTS_A_PLANT;
    let proof = match (loads.is_empty(), solved.is_proven()) {
        (true, true) => Proof::Nothing,
        (_, true) => Proof::Proven,
        (_, false) => Proof::BestSoFar { at_most: better.ceil().min(f64::from(u32::MAX)) as u32 },
    };
    let one_more = more::one_more(&task, &solved, solver, watch);
    Ok(Plan {
        on: ahead.on(),
        weeks: ahead.weeks(),
        proof,
        objective: solved.objective,
        bound: solved.bound,
        living: task.living(&walked.plan),
        given_up: (plants.max(0) as u32, u32::try_from(trips).unwrap_or(u32::MAX)),
        hands: task.hands,
        left_behind: reasons::left_behind(ahead, &task, &walked),
        empty: reasons::empty(ahead, &task, &walked),
        loads,
        one_more,
    })
}
