//! First step: what is asked, made small. Groups that nothing tells apart become one lot, offers that can bring nothing go, and
//! the greatest total of a bed is found where a share is of what is planted.

use super::super::check::Shipment;
use super::super::instance::{Instance, Offer, ShareOf};

/// Groups that nothing tells apart.
pub(super) struct Lot {
    pub(super) source: usize,
    pub(super) supply: i64,
    /// By name.
    members: Vec<usize>,
}

/// A lot to an opening in a week, the week from 0.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) struct Way {
    pub(super) lot: usize,
    pub(super) opening: usize,
    pub(super) week: usize,
    pub(super) value: i64,
}

/// How the share of one source limits a bed.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum Limit {
    /// Not at all.
    None,
    /// By its positions.
    Positions,
    /// By what is planted: of so many at most so many.
    Planted { parts: i64, whole: i64 },
}

impl Limit {
    /// Whether no numbers of beds are counted.
    pub(super) fn is_plain(self) -> bool {
        !matches!(self, Limit::Planted { .. })
    }
}

/// What is asked, made small.
pub(super) struct Task {
    pub(super) lots: Vec<Lot>,
    /// By lot, opening and week.
    pub(super) ways: Vec<Way>,
    pub(super) positions: Vec<i64>,
    pub(super) work: Vec<i64>,
    pub(super) bed_of: Vec<usize>,
    pub(super) species_of: Vec<usize>,
    pub(super) beds: usize,
    pub(super) sources: usize,
    pub(super) limit: Limit,
    /// The most of one source in a bed, where it is by positions.
    pub(super) source_most: Vec<i64>,
    /// The most plants of a bed, where the share is of what is planted.
    pub(super) total_most: Vec<i64>,
}

impl Task {
    pub(super) fn new(instance: &Instance) -> Task {
        let ((bed_of, beds), (source_of, sources)) = (instance.bed_numbers(), instance.source_numbers());
        let share = instance.share();
        let limit = match share.of {
            _ if !share.limits() => Limit::None,
            ShareOf::Positions => Limit::Positions,
            ShareOf::Planted => Limit::Planted { parts: share.parts, whole: share.whole },
        };
        let positions: Vec<i64> = instance.openings().iter().map(|opening| opening.positions).collect();
        let mut of_bed = vec![0; beds];
        bed_of.iter().zip(&positions).for_each(|(bed, positions)| of_bed[*bed] += positions);
        let mut task = Task {
            lots: Vec::new(),
            ways: Vec::new(),
            work: instance.work().to_vec(),
            species_of: instance.species_numbers(),
            beds,
            sources,
            limit,
            source_most: of_bed.into_iter().map(|positions| share.most_of(positions)).collect(),
            total_most: vec![0; beds],
            positions,
            bed_of,
        };
        task.gather(instance, &source_of);
        if let Limit::Planted { parts, whole } = limit {
            task.find_totals(parts, whole);
            let (bed_of, total_most) = (&task.bed_of, &task.total_most);
            task.ways.retain(|way| total_most[bed_of[way.opening]] > 0);
        }
        task
    }

    /// Puts groups together that have one source and the same offers.
    fn gather(&mut self, instance: &Instance, source_of: &[usize]) {
        let offers_of = offers_by_group(instance);
        let same = |group: &usize| {
            let plain = offers_of[*group].iter().map(|offer| (offer.opening, offer.week, offer.value));
            (source_of[*group], plain)
        };
        let mut groups: Vec<usize> = (0..offers_of.len()).filter(|group| !offers_of[*group].is_empty()).collect();
        groups.sort_by(|a, b| {
            let ((source, offers), (other_source, other_offers)) = (same(a), same(b));
            source.cmp(&other_source).then_with(|| offers.cmp(other_offers)).then(a.cmp(b))
        });
        let is_same = |a: &usize, b: &usize| {
            let ((source, offers), (other_source, other_offers)) = (same(a), same(b));
            source == other_source && offers.eq(other_offers)
        };
        let mut lots: Vec<Vec<usize>> = groups.chunk_by(is_same).map(<[usize]>::to_vec).collect();
        lots.sort_unstable();
        for members in lots {
            let supply = members.iter().map(|group| instance.groups()[*group].supply).sum();
            let ways = offers_of[members[0]].iter().map(|offer| Way {
                lot: self.lots.len(),
                opening: offer.opening,
                week: offer.week as usize - 1,
                value: offer.value,
            });
            // With shares of what is planted a plant that is worth nothing may make room for others.
            let may_help = |way: &Way| way.value > 0 || matches!(self.limit, Limit::Planted { .. });
            let can = |way: &Way| supply > 0 && self.positions[way.opening] > 0 && self.work[way.week] > 0;
            self.ways.extend(ways.filter(|way| may_help(way) && can(way)));
            self.lots.push(Lot { source: source_of[members[0]], supply, members });
        }
    }

    /// A total of t plants needs sources that give t together, each at most its share of t: the largest t that can be.
    fn find_totals(&mut self, parts: i64, whole: i64) {
        let mut by_source = vec![0; self.beds * self.sources];
        let mut by_opening = vec![false; self.positions.len()];
        let mut seen = vec![usize::MAX; self.beds];
        for way in &self.ways {
            let bed = self.bed_of[way.opening];
            by_opening[way.opening] = true;
            if seen[bed] != way.lot {
                seen[bed] = way.lot;
                by_source[bed * self.sources + self.lots[way.lot].source] += self.lots[way.lot].supply;
            }
        }
        let mut places = vec![0; self.beds];
        for opening in (0..self.positions.len()).filter(|opening| by_opening[*opening]) {
            places[self.bed_of[opening]] += self.positions[opening];
        }
        for bed in 0..self.beds {
            let come = &by_source[bed * self.sources..(bed + 1) * self.sources];
            let fits = |total: &i64| come.iter().map(|come| (*come).min(parts * total / whole)).sum::<i64>() >= *total;
            let most = places[bed].min(come.iter().sum());
            self.total_most[bed] = (1..=most).rev().find(fits).unwrap_or(0);
        }
    }

    /// No plan is worth more than this: every lot whole on its dearest way.
    pub(super) fn rough_bound(&self) -> i64 {
        let mut dearest = vec![0; self.lots.len()];
        self.ways.iter().for_each(|way| dearest[way.lot] = way.value.max(dearest[way.lot]));
        self.lots.iter().zip(dearest).map(|(lot, value)| lot.supply * value).sum()
    }

    /// The bed and source of a way as one number.
    pub(super) fn bed_source(&self, way: &Way) -> usize {
        self.bed_of[way.opening] * self.sources + self.lots[way.lot].source
    }

    /// The worth of so many plants on each way.
    pub(super) fn worth(&self, plants: &[i64]) -> i64 {
        self.ways.iter().zip(plants).map(|(way, plants)| way.value * plants).sum()
    }

    /// The plan of so many plants on each way: the members of a lot are emptied one after the other, the first week first.
    pub(super) fn plan(&self, instance: &Instance, plants: &[i64]) -> Vec<Shipment> {
        let mut left: Vec<i64> = instance.groups().iter().map(|group| group.supply).collect();
        let mut rows: Vec<(&Way, i64)> =
            self.ways.iter().zip(plants.iter().copied()).filter(|(_, plants)| *plants > 0).collect();
        rows.sort_by_key(|(way, _)| (way.lot, way.week, way.opening));
        let mut plan = Vec::new();
        for (way, mut open) in rows {
            for group in self.lots[way.lot].members.iter().copied() {
                let plants = open.min(left[group]);
                if plants > 0 {
                    left[group] -= plants;
                    open -= plants;
                    plan.push(Shipment { group, opening: way.opening, week: way.week as u32 + 1, plants });
                }
            }
        }
        plan.sort_unstable();
        plan
    }
}

fn offers_by_group(instance: &Instance) -> Vec<&[Offer]> {
    let offers = instance.offers();
    let begin = |group: usize| offers.partition_point(|offer| offer.group < group);
    (0..instance.groups().len()).map(|group| &offers[begin(group)..begin(group + 1)]).collect()
}
