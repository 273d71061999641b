//! The best plan so far, in whole plants, checked against the task without any program.

use super::task::{Limit, Task};

/// Bounds are rounded off by so much of a plant's worth ...
const ROUNDED_OFF: f64 = 1e-6;
/// ... and by this share of large worths.
const ROUNDED_OFF_PART: f64 = 1e-13;

/// The best plan so far.
pub(super) struct Best {
    pub(super) worth: i64,
    pub(super) plants: Vec<i64>,
}

impl Best {
    /// No plant goes anywhere: that always fits.
    pub(super) fn nothing(task: &Task) -> Best {
        Best { worth: 0, plants: vec![0; task.ways.len()] }
    }

    /// Takes a plan that is better and fits. Whether it fits.
    pub(super) fn take(&mut self, task: &Task, plants: Vec<i64>) -> bool {
        let (worth, fits) = (task.worth(&plants), fits(task, &plants));
        if fits && worth > self.worth {
            (self.worth, self.plants) = (worth, plants);
        }
        fits
    }

    /// A total below this is no better: worths are whole numbers.
    pub(super) fn cutoff(&self) -> f64 {
        let worth = self.worth as f64;
        worth + 1.0 - ROUNDED_OFF.max(worth * ROUNDED_OFF_PART)
    }

    /// The whole number a bound comes to, never below the best plan.
    pub(super) fn whole_bound(&self, bound: f64) -> i64 {
        self.worth.max((bound + ROUNDED_OFF.max(bound * ROUNDED_OFF_PART)).floor() as i64)
    }
}

fn fits(task: &Task, plants: &[i64]) -> bool {
    let mut lots = vec![0; task.lots.len()];
    let (mut openings, mut weeks) = (vec![0; task.positions.len()], vec![0; task.work.len()]);
    let (mut beds, mut sources) = (vec![0; task.beds], vec![0; task.beds * task.sources]);
    for (way, plants) in task.ways.iter().zip(plants) {
        lots[way.lot] += plants;
        openings[way.opening] += plants;
        weeks[way.week] += plants;
        beds[task.bed_of[way.opening]] += plants;
        sources[task.bed_source(way)] += plants;
    }
    let share_holds = |at: usize, plants: i64| match task.limit {
        Limit::None => true,
        Limit::Positions => plants <= task.source_most[at / task.sources],
        Limit::Planted { parts, whole } => whole * plants <= parts * beds[at / task.sources],
    };
    plants.iter().all(|plants| *plants >= 0)
        && lots.iter().zip(&task.lots).all(|(sum, lot)| *sum <= lot.supply)
        && openings.iter().zip(&task.positions).all(|(sum, most)| sum <= most)
        && weeks.iter().zip(&task.work).all(|(sum, most)| sum <= most)
        && sources.iter().enumerate().all(|(at, plants)| share_holds(at, *plants))
}
