//! A plan of whole plants from one with fractions: rounded down, shares mended, then filled up, the dearest ways first.

use super::model::Model;
use super::task::{Limit, Task, Way};

/// Rounds of filling.
const ROUNDS: usize = 3;
/// What is short of a whole plant by no more than this is one.
const NEARLY: f64 = 1e-6;

/// What is left of everything, and the plants that are under way.
struct Room<'a> {
    task: &'a Task,
    lots: Vec<i64>,
    openings: Vec<i64>,
    weeks: Vec<i64>,
    of_source: Vec<i64>,
    of_bed: Vec<i64>,
    plants: Vec<i64>,
}

impl Room<'_> {
    fn new(task: &Task) -> Room<'_> {
        Room {
            lots: task.lots.iter().map(|lot| lot.supply).collect(),
            openings: task.positions.clone(),
            weeks: task.work.clone(),
            of_source: vec![0; task.beds * task.sources],
            of_bed: vec![0; task.beds],
            plants: vec![0; task.ways.len()],
            task,
        }
    }

    fn add(&mut self, at: usize, plants: i64) {
        let way = &self.task.ways[at];
        self.lots[way.lot] -= plants;
        self.openings[way.opening] -= plants;
        self.weeks[way.week] -= plants;
        self.of_source[self.task.bed_source(way)] += plants;
        self.of_bed[self.task.bed_of[way.opening]] += plants;
        self.plants[at] += plants;
    }

    /// How many more may go this way.
    fn more(&self, way: &Way) -> i64 {
        let most = self.lots[way.lot].min(self.openings[way.opening]).min(self.weeks[way.week]);
        let bed = self.task.bed_of[way.opening];
        let of_source = self.of_source[self.task.bed_source(way)];
        match self.task.limit {
            Limit::None => most,
            Limit::Positions => most.min(self.task.source_most[bed] - of_source),
            // whole (source + n) <= parts (all + n)
            Limit::Planted { parts, whole } => {
                most.min((parts * self.of_bed[bed] - whole * of_source).div_euclid(whole - parts))
            }
        }
    }

    /// Takes plants of a source out of a bed until its share holds; whether any had to go.
    fn mend(&mut self, at: usize, parts: i64, whole: i64) -> bool {
        let way = &self.task.ways[at];
        let over =
            whole * self.of_source[self.task.bed_source(way)] - parts * self.of_bed[self.task.bed_of[way.opening]];
        let out = self.plants[at].min((over + whole - parts - 1).div_euclid(whole - parts));
        if out > 0 {
            self.add(at, -out);
        }
        out > 0
    }
}

/// The ways of a task, the dearest first.
pub(super) fn by_value(task: &Task) -> Vec<usize> {
    let mut order: Vec<usize> = (0..task.ways.len()).collect();
    order.sort_by_key(|way| (-task.ways[*way].value, *way));
    order
}

/// A plan of whole plants near the amounts of a model. `order` is [`by_value`].
pub(super) fn rounded(task: &Task, model: &Model, order: &[usize]) -> Vec<i64> {
    let mut room = Room::new(task);
    for (column, way) in model.ways.iter().enumerate() {
        let plants = (model.program.state.amounts[column] + NEARLY).floor() as i64;
        if plants > 0 {
            room.add(*way, plants);
        }
    }
    if let Limit::Planted { parts, whole } = task.limit {
        // Until nothing had to go: each of them is asked in every round.
        let mut any = true;
        while any {
            any = false;
            for way in order.iter().rev() {
                any |= room.mend(*way, parts, whole);
            }
        }
    }
    fill(task, &mut room, order);
    room.plants
}

/// A plan without any program: the dearest ways first, each as far as it goes.
pub(super) fn greedy(task: &Task, order: &[usize]) -> Vec<i64> {
    let mut room = Room::new(task);
    fill(task, &mut room, order);
    room.plants
}

fn fill(task: &Task, room: &mut Room, order: &[usize]) {
    for _ in 0..ROUNDS {
        let mut any = false;
        for at in order.iter().copied() {
            let way = &task.ways[at];
            let more = if way.value > 0 { room.more(way) } else { 0 };
            if more > 0 {
                room.add(at, more);
                any = true;
            }
        }
        if !any {
            return;
        }
    }
}
