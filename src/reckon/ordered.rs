//! Entries in the order of things.

use std::cmp::Ordering;
use std::sync::Arc;

use crate::nursery::entry::{Entry, OrderKey};

/// An entry at its place in its day.
#[derive(Clone, Debug)]
pub(super) struct Placed {
    minutes: u16,
    entry: Arc<Entry>,
}

impl Placed {
    /// An entry at a time of its day, minutes since midnight.
    pub fn new(minutes: u16, entry: Arc<Entry>) -> Placed {
        Placed { minutes, entry }
    }

    /// As [`OrderKey`] orders them.
    fn order(&self, other: &Placed) -> Ordering {
        let (own, its) = (&self.entry, &other.entry);
        let first = own.happened.cmp(&its.happened).then(self.minutes.cmp(&other.minutes));
        first.then_with(|| own.recorded.cmp(&its.recorded)).then_with(|| own.id.cmp(&its.id))
    }

    fn order_beside(&self, key: &OrderKey) -> Ordering {
        let own = &self.entry;
        let first = own.happened.cmp(&key.happened).then(self.minutes.cmp(&key.minutes));
        first.then_with(|| own.recorded.cmp(&key.recorded)).then_with(|| own.id.cmp(&key.id))
    }

    /// The entry.
    pub fn entry(&self) -> &Arc<Entry> {
        &self.entry
    }
}

/// Entries in the order of things, each once.
#[derive(Clone, Default, Debug)]
pub(super) struct Ordered(Vec<Placed>);

impl Ordered {
    /// Puts one in its place.
    pub fn insert(&mut self, placed: Placed) {
        if self.0.last().is_none_or(|last| last.order(&placed) == Ordering::Less) {
            return self.0.push(placed);
        }
        match self.0.binary_search_by(|other| other.order(&placed)) {
            Ok(at) => self.0[at] = placed,
            Err(at) => self.0.insert(at, placed),
        }
    }

    /// Puts many in their places.
    pub fn extend(&mut self, mut many: Vec<Placed>) {
        /// Of more, sorting all takes less time than finding a place for each.
        const ONE_BY_ONE: usize = 64;
        if many.len() <= ONE_BY_ONE {
            return many.into_iter().for_each(|placed| self.insert(placed));
        }
        many.sort_by(Placed::order);
        many.dedup_by(|later, earlier| later.order(earlier) == Ordering::Equal);
        let comes_before = |one: Option<&Placed>, other: Option<&Placed>| {
            one.zip(other).is_some_and(|(one, other)| one.order(other) == Ordering::Less)
        };
        if comes_before(many.last(), self.0.first()) {
            // Laid before the others as they are: those are not compared once more.
            self.0.splice(0..0, many);
        } else {
            let is_behind = self.0.is_empty() || comes_before(self.0.last(), many.first());
            if is_behind { self.0.extend(many) } else { self.lay_between(many) }
        }
    }

    /// Lays many, in order and each once, between those that are there: a place is looked for for each new one, and what
    /// stands between two of them is taken over without looking at it. What was there stays.
    fn lay_between(&mut self, many: Vec<Placed>) {
        let mut all = Vec::with_capacity(self.0.len() + many.len());
        let mut there = std::mem::take(&mut self.0).into_iter();
        for placed in many {
            let before = there.as_slice().partition_point(|other| other.order(&placed) == Ordering::Less);
            all.extend(there.by_ref().take(before));
            if there.as_slice().first().is_none_or(|next| next.order(&placed) != Ordering::Equal) {
                all.push(placed);
            }
        }
        all.extend(there);
        self.0 = all;
    }

    /// Takes one out; false where none stood there.
    pub fn remove(&mut self, key: &OrderKey) -> bool {
        let found = self.0.binary_search_by(|placed| placed.order_beside(key));
        found.map(|at| self.0.remove(at)).is_ok()
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// One after the other.
    pub fn iter(&self) -> impl Iterator<Item = &Placed> {
        self.0.iter()
    }

    /// One after the other.
    pub fn entries(&self) -> impl Iterator<Item = &Arc<Entry>> {
        self.0.iter().map(Placed::entry)
    }

    /// Hands over the entries.
    pub(crate) fn into_entries(self) -> impl Iterator<Item = Arc<Entry>> {
        self.0.into_iter().map(|placed| placed.entry)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::{Day, DeviceId, EntryId, Moment};
    use crate::nursery::entry::reading;

    fn placed(number: u64) -> Placed {
        let happened = Day::from_number(20_000 + (number / 10) as i32);
        let what = reading::read_body("noted", r#"{"text":"rain"}"#).unwrap();
        let id = EntryId { device: DeviceId::new("a").unwrap(), seq: number + 1 };
        let (recorded, who) = (Moment::end_of(happened, 0.0), "mara".into());
        Placed::new(0, Arc::new(Entry { id, happened, clock: None, recorded, who, command: number, what }))
    }

    #[test]
    fn many_stand_in_order_wherever_they_come_and_each_once() {
        let numbers = |ordered: &Ordered| ordered.entries().map(|entry| entry.id.seq - 1).collect::<Vec<_>>();
        // Before all, behind all, between, over each other, and what was there already.
        for parts in [
            [200..300, 100..200, 0..100],
            [0..100, 100..200, 200..300],
            [0..100, 200..300, 50..250],
            [100..200, 100..300, 0..150],
        ] {
            let mut ordered = Ordered::default();
            for part in parts.clone() {
                // As they are given they stand the other way round.
                ordered.extend(part.rev().map(placed).collect());
            }
            assert_eq!(numbers(&ordered), (0..300).collect::<Vec<_>>(), "{parts:?}");
        }
    }
}
