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
    pub fn extend(&mut self, many: Vec<Placed>) {
        /// Of more, sorting all takes less time than finding a place for each.
        const ONE_BY_ONE: usize = 64;
        if many.len() <= ONE_BY_ONE {
            return many.into_iter().for_each(|placed| self.insert(placed));
        }
        self.0.extend(many);
        self.0.sort_by(Placed::order);
        self.0.dedup_by(|later, earlier| later.order(earlier) == Ordering::Equal);
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
