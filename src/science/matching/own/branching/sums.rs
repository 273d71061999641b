//! What is branched on where no counted number is left: sums of ways that must be whole, the wide ones first. Once all plants of a
//! species, source and week are whole numbers, the rest is a network.

use std::collections::BTreeMap;

use super::super::model::is_whole;
use super::super::task::{Limit, Way};
use super::Search;

/// Ways that carry no more than this carry nothing.
const CARRIES: f64 = 1e-7;

/// Ways that are added up.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub(super) enum Sum {
    /// A species in a week.
    SpeciesWeek(usize, usize),
    /// A source in a bed.
    SourceBed(usize),
    /// A source of a species in a week.
    SourceWeek(usize, usize, usize),
    /// A source in an opening.
    SourceOpening(usize, usize),
    /// A lot.
    Lot(usize),
    /// A lot in a week.
    LotWeek(usize, usize),
    /// A lot in an opening.
    LotOpening(usize, usize),
}

/// How many kinds of sums there are.
const KINDS: usize = 7;

impl Search<'_> {
    fn sums_of(&self, way: &Way) -> [Option<Sum>; KINDS] {
        let (task, lot) = (self.task, &self.task.lots[way.lot]);
        let species = task.species_of[way.opening];
        [
            Some(Sum::SpeciesWeek(species, way.week)),
            (task.limit != Limit::None).then(|| Sum::SourceBed(task.bed_source(way))),
            Some(Sum::SourceWeek(species, lot.source, way.week)),
            Some(Sum::SourceOpening(lot.source, way.opening)),
            Some(Sum::Lot(way.lot)),
            Some(Sum::LotWeek(way.lot, way.week)),
            Some(Sum::LotOpening(way.lot, way.opening)),
        ]
    }

    /// Of the first kind of sums in which one is no whole number the one nearest to a half, with the columns of its ways.
    pub(super) fn fractional_sum(&self) -> Option<(Sum, Vec<u32>)> {
        let amounts = &self.model.program.state.amounts;
        let mut kinds: [BTreeMap<Sum, f64>; KINDS] = Default::default();
        for (column, way) in self.model.ways.iter().enumerate() {
            for (kind, sum) in kinds.iter_mut().zip(self.sums_of(&self.task.ways[*way])) {
                if let Some(sum) = sum {
                    *kind.entry(sum).or_insert(0.0) += amounts[column];
                }
            }
        }
        for (number, kind) in kinds.iter().enumerate() {
            let open = kind.iter().filter(|(sum, amount)| !is_whole(**amount) && !self.sums.contains_key(sum));
            if let Some((sum, _)) = open.min_by(|a, b| from_half(*a.1).total_cmp(&from_half(*b.1))) {
                let is_part = |way: &usize| self.sums_of(&self.task.ways[*way])[number] == Some(*sum);
                let parts = self.model.ways.iter().enumerate().filter(|(_, way)| is_part(way));
                return Some((*sum, parts.map(|(column, _)| column as u32).collect()));
            }
        }
        None
    }

    /// The way nearest to half a plant.
    pub(super) fn fractional_way(&self) -> usize {
        let amounts = &self.model.program.state.amounts[..self.model.ways.len()];
        let open = amounts.iter().enumerate().filter(|(_, amount)| **amount > CARRIES && !is_whole(**amount));
        open.min_by(|a, b| from_half(*a.1).total_cmp(&from_half(*b.1))).map_or(0, |(column, _)| column)
    }
}

/// How far an amount is from a half.
fn from_half(amount: f64) -> f64 {
    (amount - amount.floor() - 0.5).abs()
}
