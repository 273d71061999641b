//! What stays behind and what stays empty, each with the one thing that holds it.

use std::collections::{BTreeMap, BTreeSet};

use super::given::sums;
use super::task::{Ahead, Task};
use super::walkable::Walked;
use crate::base::{BedName, SpeciesKey, TrayCode};
use crate::reckon::field::waits_for;
use crate::reckon::picture::Criterion;
use crate::reckon::tray::size::whole_plants;
use crate::science::matching::Shipment;

/// What holds plants back or keeps positions empty.
#[derive(Clone, PartialEq, Debug)]
pub enum Cause {
    /// A question of a verdict that is not met in these weeks.
    Question(Box<Criterion>),
    /// No bed plans the species.
    NoBed,
    /// Hands: more than can be planted in the weeks in which it could go.
    Work,
    /// The beds that it fits are full by then.
    Positions,
    /// The weeks in which the bed is open are not those in which the plants can go.
    Window,
    /// There are no plants of the species left.
    Stock,
    /// Too few for a trip.
    LeastLoad,
    /// A person left the bed out or forbade the pair.
    ByHand,
}

/// Plants of a tray that stay behind.
#[derive(Clone, PartialEq, Debug)]
pub struct LeftBehind {
    /// The tray.
    pub(crate) tray: TrayCode,
    /// How many plants that could be planted.
    pub plants: u32,
    /// What holds them.
    pub cause: Cause,
    /// The bed that it misses least, where the cause is a question.
    pub(crate) bed: Option<BedName>,
}

/// Positions that stay empty.
#[derive(Clone, PartialEq, Debug)]
pub struct Empty {
    /// The bed.
    pub bed: BedName,
    /// The species.
    pub(crate) species: SpeciesKey,
    /// How many.
    pub positions: u32,
    /// What keeps them empty.
    pub cause: Cause,
}

fn counted(plants: i64) -> u32 {
    u32::try_from(plants.max(0)).unwrap_or(u32::MAX)
}

/// What is used of a task by a plan.
struct Used {
    of_group: BTreeMap<usize, i64>,
    of_opening: BTreeMap<usize, i64>,
    of_week: BTreeMap<u32, i64>,
}

impl Used {
    fn of(plan: &[Shipment]) -> Used {
        let of_group = sums(plan, |row| row.group);
        Used { of_group, of_opening: sums(plan, |row| row.opening), of_week: sums(plan, |row| row.week) }
    }

    fn left_of(&self, task: &Task, group: usize) -> i64 {
        task.instance.groups()[group].supply - self.of_group.get(&group).copied().unwrap_or(0)
    }

    fn room(&self, task: &Task, opening: usize) -> i64 {
        task.instance.openings()[opening].positions - self.of_opening.get(&opening).copied().unwrap_or(0)
    }

    fn hands(&self, task: &Task, week: u32) -> i64 {
        task.instance.work()[week as usize - 1] - self.of_week.get(&week).copied().unwrap_or(0)
    }
}

/// Each tray of which plants stay behind, by name; trays without a plant that could be planted are left out.
pub(super) fn left_behind(ahead: &Ahead, task: &Task, walked: &Walked) -> Vec<LeftBehind> {
    let (picture, used) = (ahead.today(), Used::of(&walked.plan));
    let mut all = Vec::new();
    for tray in picture.trays.values() {
        let (groups, plantable) = (task.groups_of(&tray.code), whole_plants(tray.plantable.likely));
        let left = groups.iter().map(|group| used.left_of(task, *group)).sum();
        let plants = match groups.is_empty() {
            false => counted(left),
            true if plantable > 0 => plantable,
            true => tray.standing,
        };
        if plants == 0 || (groups.is_empty() && tray.species.is_none()) {
            continue;
        }
        let with_plants = groups.into_iter().find(|group| used.left_of(task, *group) > 0);
        let (cause, bed) = match with_plants {
            Some(group) => (why_left(task, &used, walked, group), None),
            None => why_none(ahead, &tray.code),
        };
        all.push(LeftBehind { tray: tray.code.clone(), plants, cause, bed });
    }
    all
}

fn why_left(task: &Task, used: &Used, walked: &Walked, group: usize) -> Cause {
    let ways = || task.ways.range((group, 0, 0)..(group + 1, 0, 0)).map(|((_, opening, week), _)| (*opening, *week));
    if ways().any(|(opening, week)| used.room(task, opening) > 0 && used.hands(task, week) > 0) {
        // Nothing but its own smallness keeps it: the best plan took it.
        return if walked.not_worth_it.contains(&group) { Cause::LeastLoad } else { Cause::Window };
    }
    if ways().any(|(opening, _)| used.room(task, opening) > 0) { Cause::Work } else { Cause::Positions }
}

/// Why a tray goes nowhere in these weeks: the question that lasts longest, of the bed that it misses least.
fn why_none(ahead: &Ahead, tray: &TrayCode) -> (Cause, Option<BedName>) {
    let picture = ahead.today();
    let Some(pair) = picture.pairs.nearest(tray) else { return (Cause::NoBed, None) };
    let whole = pair.once();
    let criteria = whole.criteria.once();
    match waits_for(&criteria, picture.day).first() {
        Some(longest) => (Cause::Question(Box::new((*longest).clone())), Some(pair.bed().clone())),
        None if whole.plants == 0 => (Cause::Positions, Some(pair.bed().clone())),
        None => (Cause::ByHand, Some(pair.bed().clone())),
    }
}

/// Each bed and species with positions that stay empty, by name.
pub(super) fn empty(ahead: &Ahead, task: &Task, walked: &Walked) -> Vec<Empty> {
    let (picture, used) = (ahead.today(), Used::of(&walked.plan));
    let mut ways: BTreeMap<usize, Vec<(usize, u32)>> = BTreeMap::new();
    task.ways.keys().for_each(|(group, opening, week)| ways.entry(*opening).or_default().push((*group, *week)));
    let raised: BTreeSet<&SpeciesKey> =
        picture.trays.values().filter(|tray| tray.standing > 0).filter_map(|tray| tray.species.as_ref()).collect();
    let mut all = Vec::new();
    for bed in picture.beds.values() {
        for line in bed.species.iter().filter(|line| line.open_positions > 0) {
            let at = task.opening_of(&bed.name, &line.species);
            let positions = match at {
                Some(at) => counted(used.room(task, at)),
                None => line.open_positions,
            };
            if positions == 0 {
                continue;
            }
            let cause = match at {
                Some(at) => why_empty(task, &used, walked, ways.get(&at).map_or(&[], Vec::as_slice)),
                None if !raised.contains(&line.species) => Cause::Stock,
                None => why_closed(ahead, &line.criteria),
            };
            all.push(Empty { bed: bed.name.clone(), species: line.species.clone(), positions, cause });
        }
    }
    all
}

fn why_empty(task: &Task, used: &Used, walked: &Walked, ways: &[(usize, u32)]) -> Cause {
    let left: Vec<&(usize, u32)> = ways.iter().filter(|(group, _)| used.left_of(task, *group) > 0).collect();
    if left.is_empty() {
        return Cause::Stock;
    }
    let with_hands: Vec<usize> =
        left.iter().filter(|(_, week)| used.hands(task, *week) > 0).map(|(group, _)| *group).collect();
    match with_hands.is_empty() {
        true => Cause::Work,
        false if with_hands.iter().all(|group| walked.not_worth_it.contains(group)) => Cause::LeastLoad,
        false => Cause::Window,
    }
}

/// Why nothing goes to a bed in these weeks.
fn why_closed(ahead: &Ahead, criteria: &[Criterion]) -> Cause {
    match waits_for(criteria, ahead.on()).first() {
        Some(longest) => Cause::Question(Box::new((*longest).clone())),
        None => Cause::Window,
    }
}
