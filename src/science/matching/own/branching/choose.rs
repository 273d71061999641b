//! Which column is branched on: the one whose two sides cost most, tried out while too little is known of it (reliability
//! branching, Achterberg, Koch & Martin 2005, from memory).

use std::collections::BTreeMap;

use super::super::simplex::{Ended, State};
use super::{BIG, Change, Search};

/// Tries of a side after which what was learned is believed.
const BELIEVED: u32 = 2;
/// Pivots of a try.
const TRY_PIVOTS: usize = 30;
/// Columns looked at in the first node, and in the others.
const LOOKED_AT_FIRST: usize = 60;
const LOOKED_AT: usize = 12;
/// Tries in a row without a better column after which no more are made.
const FRUITLESS: usize = 6;
/// The least cost of a side.
const LEAST_COST: f64 = 1e-6;
/// Totals of beds come after the most of one source: their rank is this much lower.
const TOTAL_RANK: f64 = 0.3;

/// What branching on a column cost so far, for a whole plant: down and up.
#[derive(Clone, Copy, Default)]
pub(super) struct Learned {
    costs: [f64; 2],
    times: [u32; 2],
}

/// What comes of a node.
pub(super) enum Choice {
    /// Nothing better is in it.
    Dead,
    /// One side of a column holds nothing better: bounds of the other.
    Tighten(Vec<Change>),
    /// Branch on this column.
    Branch { column: usize, down_first: bool },
}

/// What trying both sides of a column gave.
enum Tried {
    Costs([f64; 2]),
    /// A side that holds nothing better; both where there is no other.
    Dead {
        down: bool,
        up: bool,
    },
}

impl Search<'_> {
    /// Chooses among columns that must be whole and are not.
    pub(super) fn choose(&mut self, candidates: &[usize], bound: f64) -> Choice {
        let ranked = self.ranked(candidates);
        let looked_at = if self.nodes <= 1 { LOOKED_AT_FIRST } else { LOOKED_AT };
        let (mut chosen, mut best, mut costs, mut fruitless) = (ranked[0].1, -1.0, [0.0; 2], 0);
        // What try_both goes back to; cloned where it is first needed.
        let mut state = None;
        let amounts: BTreeMap<usize, f64> =
            candidates.iter().map(|column| (*column, self.model.program.state.amounts[*column])).collect();
        for (rank, column) in ranked.into_iter().take(looked_at) {
            let below = amounts[&column].floor();
            let part = amounts[&column] - below;
            let learned = self.learned.get(&column).copied().unwrap_or_default();
            let is_known = learned.times.iter().all(|times| *times >= BELIEVED);
            if is_known || candidates.len() == 1 {
                if rank > best {
                    (chosen, best, costs) = (column, rank, learned.of(part, 0.0));
                }
                continue;
            }
            if fruitless > FRUITLESS {
                break;
            }
            let state = state.get_or_insert_with(|| self.model.program.state.clone());
            match self.try_both(column, bound, state) {
                Tried::Dead { down: true, up: true } => return Choice::Dead,
                Tried::Dead { down: true, up: false } => {
                    let high = self.model.program.high[column].min(BIG);
                    return Choice::Tighten(self.with_tied(column, below + 1.0, high));
                }
                Tried::Dead { .. } => {
                    return Choice::Tighten(self.with_tied(column, self.model.program.low[column], below));
                }
                Tried::Costs(tried) => {
                    let rank = tried[0].max(LEAST_COST) * tried[1].max(LEAST_COST);
                    fruitless += 1;
                    if rank > best {
                        (chosen, best, costs, fruitless) = (column, rank, tried, 0);
                    }
                }
            }
        }
        let part = amounts[&chosen] - amounts[&chosen].floor();
        let same = (costs[0] - costs[1]).abs() <= 1e-9;
        Choice::Branch { column: chosen, down_first: if same { part < 0.5 } else { costs[0] < costs[1] } }
    }

    /// Candidates with what is expected of them, the best first.
    fn ranked(&self, candidates: &[usize]) -> Vec<(f64, usize)> {
        let all = self.learned.values();
        let (sum, times) = all.fold((0.0, 0), |(sum, times), learned| {
            (sum + learned.costs[0] + learned.costs[1], times + learned.times[0] + learned.times[1])
        });
        let usual = if times > 0 { sum / f64::from(times) } else { 1.0 };
        let rank = |column: &usize| {
            let amount = self.model.program.state.amounts[*column];
            let learned = self.learned.get(column).copied().unwrap_or_default();
            let [down, up] = learned.of(amount - amount.floor(), usual);
            let is_total = self.counted.get(column).is_some_and(|(_, is_most)| !is_most);
            let rank = down.max(LEAST_COST) * up.max(LEAST_COST);
            (if is_total { rank * TOTAL_RANK } else { rank }, *column)
        };
        let mut ranked: Vec<(f64, usize)> = candidates.iter().map(rank).collect();
        ranked.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
        ranked
    }

    /// Tries both sides with a few pivots each; everything stands afterwards as it did.
    fn try_both(&mut self, column: usize, bound: f64, state: &State) -> Tried {
        let amount = state.amounts[column];
        let (below, part) = (amount.floor(), amount - amount.floor());
        let (lows, highs) = (self.model.program.low.clone(), self.model.program.high.clone());
        let (mut costs, mut dead) = ([0.0; 2], [false; 2]);
        for side in 0..2 {
            let (low, high) = if side == 0 { (lows[column], below) } else { (below + 1.0, highs[column].min(BIG)) };
            let changes = self.with_tied(column, low, high);
            let cutoff = self.best.cutoff();
            let fits = self.tighten(&changes);
            let program = &mut self.model.program;
            let ended = if fits {
                program.find_amounts();
                program.dual(cutoff, TRY_PIVOTS)
            } else {
                Ended::Impossible
            };
            let total = program.total();
            program.state.clone_from(state);
            program.low.copy_from_slice(&lows);
            program.high.copy_from_slice(&highs);
            if matches!(ended, Ended::Impossible | Ended::NotBetter) || total < cutoff {
                dead[side] = true;
                continue;
            }
            costs[side] = (bound - total).max(0.0);
            let learned = self.learned.entry(column).or_default();
            learned.costs[side] += costs[side] / if side == 0 { part } else { 1.0 - part }.max(1e-3);
            learned.times[side] += 1;
        }
        match dead {
            [false, false] => Tried::Costs(costs),
            [down, up] => Tried::Dead { down, up },
        }
    }
}

impl Learned {
    /// What the two sides are expected to cost for this part of a plant; `usual` where nothing was learned.
    fn of(&self, part: f64, usual: f64) -> [f64; 2] {
        let each = |side: usize| match self.times[side] {
            0 => usual,
            times => self.costs[side] / f64::from(times),
        };
        [each(0) * part, each(1) * (1.0 - part)]
    }
}
