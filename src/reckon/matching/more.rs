//! What one more would bring: a day of planting in a week whose hands are all given, ten positions in a bed that is full. Solved again
//! with it, never guessed from prices.

use super::given::{sum, sums};
use super::task::Task;
use crate::base::{BedName, SpeciesKey};
use crate::science::matching::{Instance, Opening, Solved, Solver, Watch};
use std::collections::BTreeMap;

/// Positions that are asked about at a time. Ours.
const MORE_POSITIONS: i64 = 10;
/// The most questions of each kind: those of the first weeks and of the largest beds. Ours.
const MOST_QUESTIONS: usize = 12;

/// Of what there is one more.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum More {
    /// A day of planting in a week.
    PlantingDay {
        /// The week, from 1.
        week: u32,
    },
    /// Ten positions in a bed.
    Positions {
        /// The bed.
        bed: BedName,
        /// For the species.
        species: SpeciesKey,
        /// How many.
        positions: u32,
    },
}

/// What one more would bring.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct OneMore {
    /// Of what.
    pub of: More,
    /// Plants more that go out.
    pub plants: u32,
}

/// What brings most first; what brings nothing is left out, and so is everything where the plan itself was not proven.
pub(super) fn one_more(task: &Task, solved: &Solved, solver: &dyn Solver, watch: &mut Watch) -> Vec<OneMore> {
    if !solved.is_proven() {
        return Vec::new();
    }
    let instance = &task.instance;
    let (of_week, of_opening) = (sums(&solved.plan, |row| row.week), sums(&solved.plan, |row| row.opening));
    let used = |sums: &BTreeMap<u32, i64>, week: u32| sums.get(&week).copied().unwrap_or(0);
    let mut asked: Vec<(More, Option<Instance>)> = Vec::new();
    if let Some((day, _)) = task.hands {
        let full = (1..).zip(instance.work()).filter(|(week, work)| used(&of_week, *week) == **work);
        for (week, _) in full.take(MOST_QUESTIONS) {
            let mut work = instance.work().to_vec();
            work[week as usize - 1] += i64::from(day);
            asked.push((More::PlantingDay { week }, again(instance, instance.openings().to_vec(), work)));
        }
    }
    let is_full = |at: &usize| {
        let opening = &instance.openings()[*at];
        opening.positions > 0 && of_opening.get(at).copied().unwrap_or(0) == opening.positions
    };
    let mut full: Vec<usize> = (0..instance.openings().len()).filter(is_full).collect();
    full.sort_by_key(|at| (std::cmp::Reverse(instance.openings()[*at].positions), *at));
    for at in full.into_iter().take(MOST_QUESTIONS) {
        let mut openings = instance.openings().to_vec();
        openings[at].positions += MORE_POSITIONS;
        let (bed, species) = task.beds[at].clone();
        let more = More::Positions { bed, species, positions: MORE_POSITIONS as u32 };
        asked.push((more, again(instance, openings, instance.work().to_vec())));
    }
    let gained = |(of, instance): (More, Option<Instance>)| {
        let found = solver.solve(&instance?, watch);
        let plants = u32::try_from(sum(&found.plan) - sum(&solved.plan)).ok()?;
        (found.is_proven() && plants > 0).then_some(OneMore { of, plants })
    };
    let mut all: Vec<OneMore> = asked.into_iter().filter_map(gained).collect();
    all.sort_by_key(|one| std::cmp::Reverse(one.plants));
    all
}

fn again(instance: &Instance, openings: Vec<Opening>, work: Vec<i64>) -> Option<Instance> {
    let (groups, offers) = (instance.groups().to_vec(), instance.offers().to_vec());
    Instance::new(groups, openings, work, instance.share(), offers).ok()
}
