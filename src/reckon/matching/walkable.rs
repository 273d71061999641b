//! From the best plan one to walk: fewer trips, small loads joined or left, at the price of a hundredth of its worth at most.

use std::collections::{BTreeMap, BTreeSet};

use super::given::{LEAST_LOAD, WALKABLE_PRICE, sums};
use super::task::Task;
use crate::base::TrayCode;
use crate::science::matching::{Shipment, check};

/// A plan to walk, and which groups had plants that were not worth a trip.
pub(super) struct Walked {
    /// The plan.
    pub(super) plan: Vec<Shipment>,
    /// Groups of which a load was left behind.
    pub(super) not_worth_it: BTreeSet<usize>,
}

/// A group, an opening and a week.
type Row = (usize, usize, u32);

/// The plan as it is made easier to walk.
struct Walking<'a> {
    task: &'a Task,
    rows: BTreeMap<Row, i64>,
    /// Plants that can still be set in each week.
    hands: BTreeMap<u32, i64>,
    /// What of the worth may still be given up.
    price: i64,
    not_worth_it: BTreeSet<usize>,
}

/// Puts loads together that can be, and leaves those that are too small. What comes out is checked by code that knows no solver; were it
/// wrong, the best plan itself would be walked.
pub(super) fn walkable(task: &Task, best: &[Shipment]) -> Walked {
    let unchanged = || Walked { plan: best.to_vec(), not_worth_it: BTreeSet::new() };
    let Ok(worth) = check(&task.instance, best) else { return unchanged() };
    let of_week = sums(best, |row| row.week);
    let left = |week: u32, work: i64| work - of_week.get(&week).copied().unwrap_or(0);
    let mut walking = Walking {
        task,
        rows: best.iter().map(|row| ((row.group, row.opening, row.week), row.plants)).collect(),
        hands: (1..).zip(task.instance.work()).map(|(week, work)| (week, left(week, *work))).collect(),
        price: (worth as f64 * WALKABLE_PRICE).floor() as i64,
        not_worth_it: BTreeSet::new(),
    };
    walking.join_weeks();
    walking.exchange_beds();
    walking.leave_small();
    let shipment = |((group, opening, week), plants)| Shipment { group, opening, week, plants };
    let plan: Vec<Shipment> = walking.rows.into_iter().map(shipment).collect();
    match check(&task.instance, &plan) {
        Ok(_) => Walked { plan, not_worth_it: walking.not_worth_it },
        Err(_) => unchanged(),
    }
}

impl Walking<'_> {
    fn value(&self, row: &Row) -> i64 {
        self.task.ways.get(row).map_or(0, |way| way.value)
    }

    /// What a tray brings to a bed in several weeks goes in as few as have the hands for it: the fewest plants move, to where least is lost.
    fn join_weeks(&mut self) {
        let mut fewest: Vec<(i64, Row)> = self.rows.iter().map(|(row, plants)| (*plants, *row)).collect();
        fewest.sort_unstable();
        for (_, row) in fewest {
            // Others may have come to it meanwhile.
            let Some(plants) = self.rows.get(&row).copied() else { continue };
            let (group, opening, week) = row;
            let others = self.rows.range((group, opening, 0)..=(group, opening, u32::MAX)).map(|(row, _)| *row);
            let can = others
                .filter(|other| other.2 != week && self.hands.get(&other.2).is_some_and(|hands| *hands >= plants));
            let loss = |other: &Row| plants * (self.value(&row) - self.value(other));
            let Some(to) = can.min_by_key(|other| (loss(other), other.2)) else { continue };
            let lost = loss(&to);
            if lost <= self.price {
                self.price -= lost;
                self.rows.remove(&row);
                *self.rows.entry(to).or_insert(0) += plants;
                *self.hands.entry(week).or_insert(0) += plants;
                *self.hands.entry(to.2).or_insert(0) -= plants;
            }
        }
    }

    /// Two trays that both go to the same two beds in a week exchange plants, until one of them goes to one bed only.
    fn exchange_beds(&mut self) {
        let mut beds_of: BTreeMap<(u32, usize), Vec<usize>> = BTreeMap::new();
        for (group, opening, week) in self.rows.keys() {
            beds_of.entry((*week, *group)).or_default().push(*opening);
        }
        let mut shared: BTreeMap<(u32, usize, usize), Vec<usize>> = BTreeMap::new();
        for ((week, group), beds) in &beds_of {
            for (at, first) in beds.iter().enumerate() {
                for second in &beds[at + 1..] {
                    shared.entry((*week, *first, *second)).or_default().push(*group);
                }
            }
        }
        for ((week, first, second), groups) in shared {
            for pair in groups.windows(2) {
                self.exchange(pair[0], pair[1], (first, second), week);
            }
        }
    }

    fn exchange(&mut self, one: usize, other: usize, (first, second): (usize, usize), week: u32) {
        let rows = [(one, first, week), (other, second, week), (one, second, week), (other, first, week)];
        let [Some(a), Some(b), Some(c), Some(d)] = rows.map(|row| self.rows.get(&row).copied()) else { return };
        let [va, vb, vc, vd] = rows.map(|row| self.value(&row));
        // Either way round: what two rows lose the two others gain.
        let (moved, gains, from) =
            if a.min(b) <= c.min(d) { (a.min(b), vc + vd - va - vb, 0) } else { (c.min(d), va + vb - vc - vd, 2) };
        let lost = -moved * gains;
        if lost > self.price {
            return;
        }
        self.price -= lost.max(0);
        for (at, row) in rows.into_iter().enumerate() {
            let gives = (at < 2) == (from == 0);
            let plants = self.rows.entry(row).or_insert(0);
            *plants += if gives { -moved } else { moved };
            if *plants == 0 {
                self.rows.remove(&row);
            }
        }
    }

    /// Leaves trips of fewer plants than one is worth, the smallest first: what fills a bed or empties a tray is never too small.
    fn leave_small(&mut self) {
        let task = self.task;
        let mut trips: BTreeMap<(&TrayCode, usize, u32), Vec<Row>> = BTreeMap::new();
        let (mut of_tray, mut of_bed): (BTreeMap<&TrayCode, i64>, BTreeMap<usize, i64>) = Default::default();
        let mut there: BTreeMap<&TrayCode, i64> = BTreeMap::new();
        for (group, of) in task.instance.groups().iter().enumerate() {
            *there.entry(task.tray(group)).or_insert(0) += of.supply;
        }
        for (row, plants) in &self.rows {
            trips.entry((task.tray(row.0), row.1, row.2)).or_default().push(*row);
            *of_tray.entry(task.tray(row.0)).or_insert(0) += plants;
            *of_bed.entry(row.1).or_insert(0) += plants;
        }
        let plants = |rows: &[Row]| rows.iter().map(|row| self.rows[row]).sum::<i64>();
        let is_small = |((tray, opening, _), rows): &((&TrayCode, usize, u32), Vec<Row>)| {
            plants(rows) < LEAST_LOAD
                && of_tray[tray] < there[tray]
                && of_bed[opening] < task.instance.openings()[*opening].positions
        };
        let mut small: Vec<(i64, Vec<Row>)> =
            trips.into_iter().filter(is_small).map(|(_, rows)| (plants(&rows), rows)).collect();
        small.sort_unstable();
        for (_, rows) in small {
            let lost: i64 = rows.iter().map(|row| self.rows[row] * self.value(row)).sum();
            if lost <= self.price {
                self.price -= lost;
                for row in rows {
                    self.rows.remove(&row);
                    self.not_worth_it.insert(row.0);
                }
            }
        }
    }
}
