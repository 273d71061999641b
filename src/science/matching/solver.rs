//! What every solver is asked and answers.

use super::check::Shipment;
use super::instance::Instance;

/// How far a solver is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Progress {
    /// What the best plan so far is worth.
    pub best: i64,
    /// No plan is worth more than this.
    pub bound: i64,
    /// Steps that were taken: the same for the same instance on every machine.
    pub steps: u64,
}

/// Is shown how far a solver is, and says whether it goes on: a limit of time, a person who has enough.
pub type Watch<'a> = dyn FnMut(Progress) -> bool + 'a;

/// A plan, and how good it is known to be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Solved {
    /// The plan, by group, opening and week.
    pub plan: Vec<Shipment>,
    /// What it is worth.
    pub objective: i64,
    /// No plan is worth more than this: the objective itself where it is proven.
    pub bound: i64,
}

impl Solved {
    /// Whether no plan is better.
    #[must_use]
    pub fn is_proven(&self) -> bool {
        self.objective >= self.bound
    }
}

/// Finds the best plan, or says how much better one may be.
pub trait Solver {
    /// The best plan that is found before `watch` says enough. Every plan was checked.
    fn solve(&self, instance: &Instance, watch: &mut Watch) -> Solved;
}
