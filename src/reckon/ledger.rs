//! The entries that count on a day: those that happened by then, were known by then, and were not taken back; in the
//! order of things, and per subject.

use foldhash::{HashMap, HashMapExt, HashSet};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use crate::base::{Day, EntryId, Moment, TrayCode};
use crate::nursery::entry::subject::{Subject, subjects};
use crate::nursery::entry::{BookEntry, Entry, OrderKey, SiteEntry, TrayEntry, What};
use crate::reckon::day_order::OrderWithinDays;
use crate::reckon::ordered::{Ordered, Placed};

/// Whether an entry describes something that was there before it was described: on days before the first description of
/// its name that one holds.
fn reaches_back(what: &What) -> bool {
    match what {
        What::Site(entry) => match entry {
            SiteEntry::NurserySet(_)
            | SiteEntry::SeasonSet(_)
            | SiteEntry::SpeciesSet(_)
            | SiteEntry::PlaceSet(_)
            | SiteEntry::ContainerSet(_)
            | SiteEntry::FieldSet(_)
            | SiteEntry::BedSet(_) => true,
            SiteEntry::PositionsBlocked(_) => false,
        },
        What::Seed(_) | What::Tray(_) | What::Ground(_) | What::Book(_) | What::Foreign { .. } => false,
    }
}

/// Which entries are looked at.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct View {
    /// Only what happened on or before this day.
    pub day: Day,
    /// Only what had been recorded by this moment.
    pub known: Option<Moment>,
}

/// The entries that count in a view.
#[derive(Clone, Debug)]
pub struct Ledger {
    view: View,
    all: Ordered,
    order: OrderWithinDays,
    ids: HashMap<EntryId, Arc<Entry>>,
    by_subject: HashMap<Subject, Ordered>,
    withdrawals: BTreeMap<(Moment, EntryId), Arc<Entry>>,
    withdrawn: HashSet<EntryId>,
    /// Old code -> when it was changed and to what.
    relabels: HashMap<TrayCode, BTreeMap<OrderKey, TrayCode>>,
}

impl Ledger {
    /// The ledger of a view over any entries in any order.
    pub fn new(view: View, entries: impl IntoIterator<Item = Arc<Entry>>) -> Ledger {
        let mut ledger = Ledger {
            view,
            all: Ordered::default(),
            order: OrderWithinDays::default(),
            ids: HashMap::new(),
            by_subject: HashMap::new(),
            withdrawals: BTreeMap::new(),
            withdrawn: HashSet::default(),
            relabels: HashMap::new(),
        };
        let kept = ledger.keep(entries);
        ledger.withdrawn = ledger.settle_withdrawals();
        ledger.order_anew(kept);
        ledger.index_all();
        ledger
    }

    /// The view it was made for.
    pub fn view(&self) -> View {
        self.view
    }

    /// Adds entries and names the subjects whose story changed. `None` means that everything may have changed.
    pub fn add(&mut self, entries: impl IntoIterator<Item = Arc<Entry>>) -> Option<BTreeSet<Subject>> {
        let kept = self.keep(entries);
        // What was looked up before it was added may stand elsewhere beside the others of its command.
        for entry in &kept {
            self.lift(entry);
        }
        let mut wholly = false;
        if kept.iter().any(|entry| matches!(entry.what, What::Book(BookEntry::Withdrawn(_)))) {
            let before = std::mem::take(&mut self.withdrawn);
            self.withdrawn = self.settle_withdrawals();
            wholly |= before != self.withdrawn;
        }
        let counting: Vec<Arc<Entry>> =
            kept.iter().filter(|entry| !self.withdrawn.contains(&entry.id)).cloned().collect();
        wholly |= counting.iter().any(|entry| matches!(entry.what, What::Tray(TrayEntry::Relabelled(_))));
        // Where others of a command stand elsewhere in their day now, everything is laid out again.
        wholly |= self.order.add(&counting);
        self.place(kept);
        if wholly {
            self.order_all();
            self.index_all();
            return None;
        }
        Some(counting.iter().flat_map(|entry| self.index(entry)).collect())
    }

    /// Takes in entries that the book held all along and that were not in memory; nothing new is said by them.
    pub fn take_in(&mut self, entries: impl IntoIterator<Item = Arc<Entry>>) {
        let new: Vec<Arc<Entry>> = entries.into_iter().filter(|entry| !self.ids.contains_key(&entry.id)).collect();
        let kept = self.keep(new);
        let counting: Vec<Arc<Entry>> =
            kept.iter().filter(|entry| !self.withdrawn.contains(&entry.id)).cloned().collect();
        let moved = self.order.add(&counting);
        self.place(kept);
        if moved {
            self.order_all();
            self.index_all();
        } else {
            counting.iter().for_each(|entry| drop(self.index(entry)));
        }
    }

    /// The same entries seen from another day, or with what was known by another moment; those that do not belong to it
    /// must have been taken out.
    pub(crate) fn set_view(&mut self, view: View) {
        self.view = view;
    }

    /// Whether an entry belongs to a view, taken back or not.
    pub fn belongs(view: View, entry: &Entry) -> bool {
        let known = view.known.is_none_or(|known| entry.recorded <= known);
        let acts_always = matches!(entry.what, What::Book(BookEntry::Withdrawn(_)));
        known && (acts_always || entry.happened <= view.day || reaches_back(&entry.what))
    }

    /// Every code by which a tray was called before, its own included.
    pub fn codes_of(&self, tray: &TrayCode) -> BTreeSet<TrayCode> {
        let mut codes = BTreeSet::from([tray.clone()]);
        loop {
            let earlier = |(was, changes): &(&TrayCode, &BTreeMap<OrderKey, TrayCode>)| {
                !codes.contains(*was) && changes.values().any(|new| codes.contains(new))
            };
            let Some((was, _)) = self.relabels.iter().find(earlier) else { return codes };
            let was = was.clone();
            codes.insert(was);
        }
    }

    /// Takes entries out again and names the subjects whose story changed. `None` means that everything may have.
    pub fn take_out(&mut self, entries: &[Arc<Entry>]) -> Option<BTreeSet<Subject>> {
        let mut touched = BTreeSet::new();
        let mut wholly = false;
        for entry in entries {
            self.ids.remove(&entry.id);
            let Some(about) = self.lift(entry) else { continue };
            wholly |= self.withdrawals.remove(&(entry.recorded, entry.id.clone())).is_some();
            wholly |= matches!(entry.what, What::Tray(TrayEntry::Relabelled(_)));
            touched.extend(about);
        }
        wholly |= self.order.remove(entries);
        if wholly {
            self.withdrawn = self.settle_withdrawals();
            self.order_all();
            self.index_all();
            return None;
        }
        Some(touched)
    }

    /// Takes an entry out of the order of things and names what it is about; none where it was not in it.
    fn lift(&mut self, entry: &Entry) -> Option<Vec<Subject>> {
        let key = self.order.key_of(entry);
        if !self.all.remove(&key) {
            return None;
        }
        let about = self.about(entry);
        for subject in &about {
            if let Some(of_it) = self.by_subject.get_mut(subject) {
                of_it.remove(&key);
                if of_it.is_empty() {
                    self.by_subject.remove(subject);
                }
            }
        }
        Some(about)
    }

    /// Takes note of the entries that belong to the view and hands them back; they are not in its order yet.
    fn keep(&mut self, entries: impl IntoIterator<Item = Arc<Entry>>) -> Vec<Arc<Entry>> {
        let entries = entries.into_iter();
        let mut kept = Vec::with_capacity(entries.size_hint().0);
        self.ids.reserve(entries.size_hint().0);
        for entry in entries {
            if self.view.known.is_some_and(|known| entry.recorded > known) {
                continue;
            }
            self.ids.insert(entry.id.clone(), entry.clone());
            if let What::Book(BookEntry::Withdrawn(_)) = &entry.what {
                // A withdrawal acts on every day; its own happened is never used.
                self.withdrawals.insert((entry.recorded, entry.id.clone()), entry.clone());
            } else if entry.happened > self.view.day && !reaches_back(&entry.what) {
                continue;
            }
            kept.push(entry);
        }
        kept
    }

    fn place(&mut self, entries: Vec<Arc<Entry>>) {
        let placed = entries.into_iter().map(|entry| Placed::new(self.order.minutes_of(&entry), entry));
        self.all.extend(placed.collect());
    }

    /// Lays every entry out again: those taken back have no say in the order of their day.
    fn order_all(&mut self) {
        let all: Vec<Arc<Entry>> = std::mem::take(&mut self.all).into_entries().collect();
        self.order_anew(all);
    }

    fn order_anew(&mut self, all: Vec<Arc<Entry>>) {
        let counting: Vec<Arc<Entry>> =
            all.iter().filter(|entry| !self.withdrawn.contains(&entry.id)).cloned().collect();
        self.order = OrderWithinDays::default();
        self.order.add(&counting);
        self.place(all);
    }

    /// The place of an entry in the order of things.
    pub(crate) fn key_of(&self, entry: &Entry) -> OrderKey {
        self.order.key_of(entry)
    }

    /// Which entries are taken back: latest withdrawals first, so that a withdrawal that was itself withdrawn does
    /// nothing.
    fn settle_withdrawals(&self) -> HashSet<EntryId> {
        let when: HashMap<&EntryId, Moment> = self.withdrawals.keys().map(|(moment, id)| (id, *moment)).collect();
        let mut withdrawn = HashSet::default();
        for ((moment, id), entry) in self.withdrawals.iter().rev() {
            if withdrawn.contains(id) {
                continue;
            }
            let What::Book(BookEntry::Withdrawn(withdrawal)) = &entry.what else { continue };
            for target in &withdrawal.entries {
                // Of withdrawals only an earlier one can be taken back, so that two can never take each other back.
                let later = when.get(target).is_some_and(|other| (*other, target) >= (*moment, id));
                if !later {
                    withdrawn.insert(target.clone());
                }
            }
        }
        withdrawn
    }

    fn index_all(&mut self) {
        self.by_subject.clear();
        self.relabels.clear();
        let standing: Vec<Placed> =
            self.all.iter().filter(|placed| !self.withdrawn.contains(&placed.entry().id)).cloned().collect();
        for entry in standing.iter().map(Placed::entry) {
            if let What::Tray(TrayEntry::Relabelled(label)) = &entry.what
                && let Some(was) = &label.was
            {
                self.relabels.entry(was.clone()).or_default().insert(self.order.key_of(entry), label.tray.clone());
            }
        }
        for placed in standing {
            for subject in self.about(placed.entry()) {
                self.by_subject.entry(subject).or_default().insert(placed.clone());
            }
        }
    }

    /// What an entry is about, as it is called now.
    fn about(&self, entry: &Entry) -> Vec<Subject> {
        let mut about = subjects(&entry.what);
        for subject in &mut about {
            if let Subject::Tray(code) = subject
                && self.relabels.contains_key(code)
            {
                *code = self.tray_at(code, &self.order.key_of(entry));
            }
        }
        about
    }

    fn index(&mut self, entry: &Arc<Entry>) -> BTreeSet<Subject> {
        let placed = Placed::new(self.order.minutes_of(entry), entry.clone());
        let mut touched = BTreeSet::new();
        for subject in self.about(entry) {
            self.by_subject.entry(subject.clone()).or_default().insert(placed.clone());
            touched.insert(subject);
        }
        touched
    }

    /// The tray that a code meant at a place in the order of things: later changes of label are followed.
    pub(crate) fn tray_at(&self, code: &TrayCode, key: &OrderKey) -> TrayCode {
        const MOST_CHANGES: usize = 64;
        let mut code = code.clone();
        let mut key = key.clone();
        for _ in 0..MOST_CHANGES {
            let later = self.relabels.get(&code).and_then(|changes| {
                changes.range((std::ops::Bound::Excluded(key.clone()), std::ops::Bound::Unbounded)).next()
            });
            match later {
                Some((when, new)) => {
                    key = when.clone();
                    code = new.clone();
                }
                None => break,
            }
        }
        code
    }

    /// The tray a code means today: where the code was given up and not used again, the tray it became.
    pub(crate) fn tray_now(&self, code: &TrayCode) -> TrayCode {
        if self.by_subject.contains_key(&Subject::Tray(code.clone())) {
            return code.clone();
        }
        let first = self.relabels.get(code).and_then(|changes| changes.values().next_back());
        first.cloned().unwrap_or_else(|| code.clone())
    }

    /// What a code that was given up became, and the day of its last change.
    pub(crate) fn renamed(&self, code: &TrayCode) -> Option<(TrayCode, Day)> {
        let (when, new) = self.relabels.get(code)?.last_key_value()?;
        Some((self.tray_at(new, when), when.happened))
    }

    /// The entries of a subject in the order of things.
    pub fn of(&self, subject: &Subject) -> impl Iterator<Item = &Arc<Entry>> {
        self.by_subject.get(subject).into_iter().flat_map(Ordered::entries)
    }

    /// Every subject with a story.
    pub fn subjects(&self) -> impl Iterator<Item = &Subject> {
        self.by_subject.keys()
    }

    /// Every entry that counts, in the order of things (notes and withdrawals too).
    pub fn entries(&self) -> impl Iterator<Item = &Arc<Entry>> {
        self.all.entries().filter(|entry| !self.withdrawn.contains(&entry.id))
    }

    /// Whether an entry is known to the view, taken back or not; also one of a day still to come, as a clock that ran
    /// ahead writes them: it must be possible to take it back.
    pub fn holds(&self, id: &EntryId) -> bool {
        self.ids.contains_key(id)
    }

    /// An entry that is known to the view, taken back or not.
    pub fn entry(&self, id: &EntryId) -> Option<&Arc<Entry>> {
        self.ids.get(id)
    }

    /// Every entry that is in memory, whether it belongs to the view or is taken back, by device and number.
    pub(crate) fn every_entry(&self) -> Vec<Arc<Entry>> {
        let mut all: Vec<Arc<Entry>> = self.ids.values().cloned().collect();
        all.sort_by(|a, b| a.id.cmp(&b.id));
        all
    }

    /// Whether an entry has been taken back.
    pub(crate) fn is_withdrawn(&self, id: &EntryId) -> bool {
        self.withdrawn.contains(id)
    }

    /// The withdrawal that took an entry back, the earliest that still counts.
    pub(crate) fn withdrawal_of(&self, id: &EntryId) -> Option<&Arc<Entry>> {
        if !self.is_withdrawn(id) {
            return None;
        }
        let names = |entry: &&Arc<Entry>| match &entry.what {
            What::Book(BookEntry::Withdrawn(withdrawal)) => withdrawal.entries.contains(id),
            What::Site(_) | What::Seed(_) | What::Tray(_) | What::Ground(_) | What::Book(_) | What::Foreign { .. } => {
                false
            }
        };
        self.withdrawals.values().filter(|entry| !self.is_withdrawn(&entry.id)).find(names)
    }
}
