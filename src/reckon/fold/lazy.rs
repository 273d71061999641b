//! Folding a book of which only a part is in memory: what has to be looked up before an entry can be taken in.
//!
//! A story that is kept needs none of its entries until it is touched. Then all entries about it are looked up, and of the
//! trays and lots it comes from those that hand something on: species, sowings, where they came from.

use std::collections::{BTreeSet, HashSet};
use std::sync::Arc;

use crate::base::{Day, DeviceId, EntryId, TrayCode};
use crate::nursery::entry::subject::{Subject, affects_descendants, is_unknown_lot, subjects};
use crate::nursery::entry::{BookEntry, Entry, GroundEntry, TrayEntry, What};
use crate::reckon::ledger::Ledger;

/// What has to be looked up.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Wanted {
    /// Every entry about something.
    All(Subject),
    /// The entries about something that hand on species, sowings or where plants came from.
    Lending(Subject),
    /// One entry that another one names.
    Entry(EntryId),
    /// The entries without a time of day that a command of a device wrote for a day: together they settle their order.
    Command(DeviceId, u64, Day),
}

/// What is in memory of a book of which only a part is.
#[derive(Clone, Default, Debug)]
pub(super) struct InMemory {
    /// Every entry about these.
    pub whole: HashSet<Subject>,
    /// Of these at least the entries that hand something on.
    pub lending: HashSet<Subject>,
    /// Of these commands everything without a time of day.
    pub commands: HashSet<(DeviceId, u64, Day)>,
    /// Entries that were looked for and are not in the book.
    pub missing: HashSet<EntryId>,
}

impl InMemory {
    fn is_whole(&self, subject: &Subject) -> bool {
        match subject {
            // What describes the site is always in memory.
            Subject::Site | Subject::Place(_) => true,
            Subject::Tray(_) | Subject::Lot(_) | Subject::Bed(_) => self.whole.contains(subject),
        }
    }

    fn has_what_affects(&self, subject: &Subject) -> bool {
        self.is_whole(subject) || self.lending.contains(subject)
    }

    /// Notes what was looked up.
    pub fn note(&mut self, wanted: &[Wanted], found: &HashSet<EntryId>) {
        for one in wanted {
            match one {
                Wanted::All(subject) => drop(self.whole.insert(subject.clone())),
                Wanted::Lending(subject) => drop(self.lending.insert(subject.clone())),
                Wanted::Entry(id) if !found.contains(id) => drop(self.missing.insert(id.clone())),
                Wanted::Entry(_) => {}
                Wanted::Command(device, command, day) => {
                    self.commands.insert((device.clone(), *command, *day));
                }
            }
        }
    }
}

/// The subjects of entries as they are called now; of a withdrawal those of the entries it names, as far as they are in
/// memory.
pub(super) fn subjects_of(ledger: &Ledger, entries: &[Arc<Entry>]) -> BTreeSet<Subject> {
    let mut all = BTreeSet::new();
    for entry in and_named(ledger, entries) {
        all.extend(subjects(&entry.what).into_iter().flat_map(|subject| then_and_now(ledger, &entry, subject)));
    }
    all
}

/// Of these the trays and lots of which entries change what they hand on: those they went to have to be folded again.
pub(super) fn those_affecting_descendants(ledger: &Ledger, entries: &[Arc<Entry>]) -> BTreeSet<Subject> {
    let mut all = BTreeSet::new();
    for entry in and_named(ledger, entries).iter().filter(|entry| affects_descendants(&entry.what)) {
        // A sowing changes what its tray hands on, not what its lot does.
        let hands_on = |subject: &Subject| match &entry.what {
            What::Tray(_) => matches!(subject, Subject::Tray(_)),
            What::Seed(_) => matches!(subject, Subject::Lot(_)),
            What::Site(_) | What::Ground(_) | What::Book(_) | What::Foreign { .. } => false,
        };
        let own = subjects(&entry.what).into_iter().filter(hands_on);
        all.extend(own.flat_map(|subject| then_and_now(ledger, entry, subject)));
    }
    all
}

/// A subject as an entry calls it, and as it is called now.
fn then_and_now(ledger: &Ledger, entry: &Entry, subject: Subject) -> Vec<Subject> {
    match &subject {
        Subject::Tray(code) => vec![Subject::Tray(ledger.tray_at(code, &ledger.key_of(entry))), subject],
        Subject::Lot(_) | Subject::Bed(_) | Subject::Place(_) | Subject::Site => vec![subject],
    }
}

/// Entries, and those that withdrawals among them name, as far as they are in memory.
fn and_named(ledger: &Ledger, entries: &[Arc<Entry>]) -> Vec<Arc<Entry>> {
    let mut all = Vec::new();
    let mut todo: Vec<Arc<Entry>> = entries.to_vec();
    let mut seen: HashSet<EntryId> = HashSet::new();
    while let Some(entry) = todo.pop() {
        if !seen.insert(entry.id.clone()) {
            continue;
        }
        if let What::Book(BookEntry::Withdrawn(withdrawal)) = &entry.what {
            todo.extend(withdrawal.entries.iter().filter_map(|id| ledger.entry(id)).cloned());
        }
        all.push(entry);
    }
    all
}

/// What came of a tray or lot: the trays and beds that take its species and sowings over; and the trays it came from,
/// which name it.
pub(super) fn descendants(ledger: &Ledger, subject: &Subject) -> Vec<Subject> {
    let mut all = Vec::new();
    for entry in ledger.of(subject) {
        let now = |code: &TrayCode| Subject::Tray(ledger.tray_at(code, &ledger.key_of(entry)));
        match (&entry.what, subject) {
            (What::Tray(TrayEntry::MovedOn(moved)), Subject::Tray(_)) => all.extend([now(&moved.from), now(&moved.to)]),
            (What::Ground(GroundEntry::Outplanted(out)), Subject::Tray(_)) => all.push(Subject::Bed(out.bed.clone())),
            (What::Tray(TrayEntry::Sown(sown)), Subject::Lot(_)) => all.push(now(&sown.tray)),
            (What::Tray(TrayEntry::Resown(sown)), Subject::Lot(_)) => all.push(now(&sown.tray)),
            (What::Ground(GroundEntry::SownInBed(sown)), Subject::Lot(_)) => all.push(Subject::Bed(sown.bed.clone())),
            (What::Ground(GroundEntry::NursePlanted(set)), Subject::Lot(_)) => all.push(Subject::Bed(set.bed.clone())),
            (What::Site(_) | What::Seed(_) | What::Tray(_) | What::Ground(_) | What::Book(_), _)
            | (What::Foreign { .. }, _) => {}
        }
    }
    all.retain(|other| other != subject);
    all
}

/// What something comes from: trays and lots whose species and sowings it takes over.
fn ancestors(ledger: &Ledger, subject: &Subject) -> Vec<Subject> {
    let mut all = Vec::new();
    for entry in ledger.of(subject) {
        let key = ledger.key_of(entry);
        let mut trays: Vec<&TrayCode> = Vec::new();
        let mut lot = None;
        match &entry.what {
            What::Tray(TrayEntry::MovedOn(moved)) => trays.push(&moved.from),
            What::Tray(TrayEntry::Sown(sown)) => lot = Some(&sown.lot),
            What::Tray(TrayEntry::Resown(sown)) => lot = Some(&sown.lot),
            What::Ground(GroundEntry::Outplanted(out)) => trays.push(&out.tray),
            What::Ground(GroundEntry::SurvivalCounted(look)) => trays.extend(&look.tray),
            What::Ground(GroundEntry::SownInBed(sown)) => lot = sown.lot.as_ref(),
            What::Ground(GroundEntry::NursePlanted(set)) => lot = set.lot.as_ref(),
            What::Tray(_) | What::Ground(_) | What::Site(_) | What::Seed(_) | What::Book(_) | What::Foreign { .. } => {}
        }
        all.extend(lot.filter(|lot| !is_unknown_lot(lot)).cloned().map(Subject::Lot));
        for code in trays {
            all.push(Subject::Tray(ledger.tray_at(code, &key)));
        }
    }
    all.retain(|other| other != subject);
    all
}

/// What has to be looked up before entries can be added to, or taken out of, a fold. Asked again after each answer, until
/// nothing is wanted.
pub(super) fn wanting(ledger: &Ledger, memory: &InMemory, entries: &[Arc<Entry>]) -> Vec<Wanted> {
    let mut wanted = BTreeSet::new();
    // A withdrawal of a withdrawal brings back what that one named.
    let mut todo: Vec<&Arc<Entry>> = entries.iter().collect();
    let mut seen: HashSet<&EntryId> = HashSet::new();
    while let Some(entry) = todo.pop() {
        let What::Book(BookEntry::Withdrawn(withdrawal)) = &entry.what else { continue };
        for id in withdrawal.entries.iter().filter(|id| seen.insert(id)) {
            match ledger.entry(id) {
                Some(named) => todo.push(named),
                None if memory.missing.contains(id) => {}
                None => drop(wanted.insert(Wanted::Entry(id.clone()))),
            }
        }
    }
    if !wanted.is_empty() {
        return wanted.into_iter().collect();
    }
    let mut wanted =
        wanting_for(ledger, memory, subjects_of(ledger, entries), those_affecting_descendants(ledger, entries));
    wanted.extend(entries.iter().filter_map(|entry| command_of(memory, entry)));
    wanted.sort();
    wanted.dedup();
    wanted
}

/// What has to be looked up before the stories of some subjects, and of all that took something over from those that `lend`,
/// can be folded again.
pub(super) fn wanting_for(
    ledger: &Ledger,
    memory: &InMemory,
    mut about: BTreeSet<Subject>,
    mut lend: BTreeSet<Subject>,
) -> Vec<Wanted> {
    let (mut wanted, mut followed) = (BTreeSet::new(), lend.clone());
    let mut todo: Vec<Subject> = about.iter().cloned().collect();
    while let Some(subject) = todo.pop() {
        if !memory.is_whole(&subject) {
            wanted.insert(Wanted::All(subject.clone()));
        } else if lend.contains(&subject) {
            let descendants = descendants(ledger, &subject);
            lend.extend(descendants.iter().cloned());
            about.extend(descendants.iter().cloned());
            todo.extend(descendants.into_iter().filter(|other| followed.insert(other.clone())));
        }
    }
    let mut behind: BTreeSet<Subject> = BTreeSet::new();
    let mut todo: Vec<Subject> = about.iter().filter(|subject| memory.is_whole(subject)).cloned().collect();
    while let Some(subject) = todo.pop() {
        for source in ancestors(ledger, &subject) {
            if !memory.has_what_affects(&source) {
                wanted.insert(Wanted::Lending(source));
            } else if behind.insert(source.clone()) {
                todo.push(source);
            }
        }
    }
    // What is wanted whole hands on as well.
    let whole: Vec<Subject> = wanted
        .iter()
        .filter_map(|one| match one {
            Wanted::All(subject) => Some(subject.clone()),
            Wanted::Lending(_) | Wanted::Entry(_) | Wanted::Command(..) => None,
        })
        .collect();
    for subject in whole {
        wanted.remove(&Wanted::Lending(subject));
    }
    if wanted.is_empty() {
        let read = about.iter().chain(&behind).flat_map(|subject| ledger.of(subject));
        wanted.extend(read.filter_map(|entry| command_of(memory, entry)));
    }
    wanted.into_iter().collect()
}

/// The command that settles where an entry stands in its day, where more than what it is about has a say and it is not in
/// memory yet.
fn command_of(memory: &InMemory, entry: &Entry) -> Option<Wanted> {
    let first = entry.what.facts().is_some_and(|facts| facts.first);
    if entry.clock.is_some() || first || subjects(&entry.what).len() < 2 {
        return None;
    }
    let command = (entry.id.device.clone(), entry.command, entry.happened);
    (!memory.commands.contains(&command)).then_some(Wanted::Command(command.0, command.1, command.2))
}
