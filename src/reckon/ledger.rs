//! The entries that count on a day: those that happened by then, were known by then, and were not taken back; in the
//! order of things, and per subject.

use std::collections::{BTreeMap, BTreeSet, HashMap, HashSet};
use std::sync::Arc;

use crate::base::{Day, EntryId, Moment, TrayCode};
use crate::nursery::entry::subject::{Subject, subjects};
use crate::nursery::entry::{BookEntry, Entry, OrderKey, SiteEntry, TrayEntry, What};

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
    all: BTreeMap<OrderKey, Arc<Entry>>,
    ids: HashSet<EntryId>,
    by_subject: HashMap<Subject, BTreeMap<OrderKey, Arc<Entry>>>,
    withdrawals: BTreeMap<(Moment, EntryId), Arc<Entry>>,
    withdrawn: HashSet<EntryId>,
    /// Old code -> when it was changed and to what.
    relabels: BTreeMap<TrayCode, BTreeMap<OrderKey, TrayCode>>,
}

impl Ledger {
    /// The ledger of a view over any entries in any order.
    pub fn new(view: View, entries: impl IntoIterator<Item = Arc<Entry>>) -> Ledger {
        let mut ledger = Ledger {
            view,
            all: BTreeMap::new(),
            ids: HashSet::new(),
            by_subject: HashMap::new(),
            withdrawals: BTreeMap::new(),
            withdrawn: HashSet::new(),
            relabels: BTreeMap::new(),
        };
        for entry in entries {
            ledger.keep(entry);
        }
        ledger.withdrawn = ledger.settle_withdrawals();
        ledger.index_all();
        ledger
    }

    /// The view it was made for.
    pub fn view(&self) -> View {
        self.view
    }

    /// Adds entries and names the subjects whose story changed. `None` means that everything may have changed.
    pub fn add(&mut self, entries: impl IntoIterator<Item = Arc<Entry>>) -> Option<BTreeSet<Subject>> {
        let mut touched = BTreeSet::new();
        let mut wholly = false;
        for entry in entries {
            let withdraws = matches!(entry.what, What::Book(BookEntry::Withdrawn(_)));
            let relabels = matches!(entry.what, What::Tray(TrayEntry::Relabelled(_)));
            if !self.keep(entry.clone()) {
                continue;
            }
            if withdraws {
                let before = std::mem::take(&mut self.withdrawn);
                self.withdrawn = self.settle_withdrawals();
                let changed: Vec<EntryId> = before.symmetric_difference(&self.withdrawn).cloned().collect();
                wholly |= !changed.is_empty();
            } else if self.withdrawn.contains(&entry.id) {
                continue;
            }
            if relabels {
                wholly = true;
            } else {
                touched.extend(self.index(&entry));
            }
        }
        if wholly {
            self.index_all();
            return None;
        }
        Some(touched)
    }

    /// Takes entries out again and names the subjects whose story changed. `None` means that everything may have.
    pub fn take_out(&mut self, entries: &[Arc<Entry>]) -> Option<BTreeSet<Subject>> {
        let mut touched = BTreeSet::new();
        let mut wholly = false;
        for entry in entries {
            let key = entry.order_key();
            if self.all.remove(&key).is_none() {
                continue;
            }
            self.ids.remove(&entry.id);
            wholly |= self.withdrawals.remove(&(entry.recorded, entry.id.clone())).is_some();
            wholly |= matches!(entry.what, What::Tray(TrayEntry::Relabelled(_)));
            for subject in subjects(&entry.what) {
                let subject = match subject {
                    Subject::Tray(code) => Subject::Tray(self.tray_at(&code, &key)),
                    Subject::Lot(_) | Subject::Bed(_) | Subject::Place(_) | Subject::Site => subject,
                };
                if let Some(of_it) = self.by_subject.get_mut(&subject) {
                    of_it.remove(&key);
                    if of_it.is_empty() {
                        self.by_subject.remove(&subject);
                    }
                }
                touched.insert(subject);
            }
        }
        if wholly {
            self.withdrawn = self.settle_withdrawals();
            self.index_all();
            return None;
        }
        Some(touched)
    }

    /// Keeps an entry if it belongs to the view; false where it does not.
    fn keep(&mut self, entry: Arc<Entry>) -> bool {
        if self.view.known.is_some_and(|known| entry.recorded > known) {
            return false;
        }
        if let What::Book(BookEntry::Withdrawn(_)) = &entry.what {
            // A withdrawal acts on every day; its own happened is never used.
            self.withdrawals.insert((entry.recorded, entry.id.clone()), entry.clone());
        } else if entry.happened > self.view.day && !reaches_back(&entry.what) {
            return false;
        }
        self.ids.insert(entry.id.clone());
        self.all.insert(entry.order_key(), entry);
        true
    }

    /// Which entries are taken back: latest withdrawals first, so that a withdrawal that was itself withdrawn does
    /// nothing.
    fn settle_withdrawals(&self) -> HashSet<EntryId> {
        let when: HashMap<&EntryId, Moment> = self.withdrawals.keys().map(|(moment, id)| (id, *moment)).collect();
        let mut withdrawn = HashSet::new();
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
        let standing: Vec<Arc<Entry>> =
            self.all.values().filter(|entry| !self.withdrawn.contains(&entry.id)).cloned().collect();
        for entry in &standing {
            if let What::Tray(TrayEntry::Relabelled(label)) = &entry.what
                && let Some(was) = &label.was
            {
                self.relabels.entry(was.clone()).or_default().insert(entry.order_key(), label.tray.clone());
            }
        }
        for entry in &standing {
            self.index(entry);
        }
    }

    fn index(&mut self, entry: &Arc<Entry>) -> BTreeSet<Subject> {
        let key = entry.order_key();
        let mut touched = BTreeSet::new();
        for subject in subjects(&entry.what) {
            let subject = match subject {
                Subject::Tray(code) => Subject::Tray(self.tray_at(&code, &key)),
                Subject::Lot(_) | Subject::Bed(_) | Subject::Place(_) | Subject::Site => subject,
            };
            self.by_subject.entry(subject.clone()).or_default().insert(key.clone(), entry.clone());
            touched.insert(subject);
        }
        touched
    }

    /// The tray that a code meant at a place in the order of things: later changes of label are followed.
    pub fn tray_at(&self, code: &TrayCode, key: &OrderKey) -> TrayCode {
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
    pub fn tray_now(&self, code: &TrayCode) -> TrayCode {
        if self.by_subject.contains_key(&Subject::Tray(code.clone())) {
            return code.clone();
        }
        let first = self.relabels.get(code).and_then(|changes| changes.values().next_back());
        first.cloned().unwrap_or_else(|| code.clone())
    }

    /// The entries of a subject in the order of things.
    pub fn of(&self, subject: &Subject) -> impl Iterator<Item = &Arc<Entry>> {
        self.by_subject.get(subject).into_iter().flat_map(BTreeMap::values)
    }

    /// Every subject with a story.
    pub fn subjects(&self) -> impl Iterator<Item = &Subject> {
        self.by_subject.keys()
    }

    /// Every entry that counts, in the order of things (notes and withdrawals too).
    pub fn entries(&self) -> impl Iterator<Item = &Arc<Entry>> {
        self.all.values().filter(|entry| !self.withdrawn.contains(&entry.id))
    }

    /// Whether an entry is in the view, taken back or not.
    pub fn holds(&self, id: &EntryId) -> bool {
        self.ids.contains(id)
    }

    /// Whether an entry has been taken back.
    pub fn is_withdrawn(&self, id: &EntryId) -> bool {
        self.withdrawn.contains(id)
    }

    /// The withdrawal that took an entry back, the earliest that still counts.
    pub fn withdrawal_of(&self, id: &EntryId) -> Option<&Arc<Entry>> {
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
