//! Looking up in the file what a fold does not hold: a book that goes on from kept stories has only what describes the
//! site in memory, and no entry about a tray, lot or bed before it is needed.

use std::collections::BTreeSet;
use std::sync::Arc;

use crate::base::{Day, EntryId};
use crate::journal::{Journal, JournalError, Sort, Sought};
use crate::nursery::entry::subject::Subject;
use crate::nursery::entry::{BookEntry, Entry, SiteEntry, What};
use crate::reckon::site::weather_from;
use crate::reckon::{Fold, Wanted};

/// What describes the site: always in memory.
pub(super) fn described(journal: &Journal, today: Day) -> Result<Vec<Sought>, JournalError> {
    let mut sought = vec![Sought::all(Sort::Site), Sought::all(Sort::Label), Sought::all(Sort::Withdrawal)];
    sought.extend(journal.names(&Sort::Place)?.into_iter().map(|name| Sought::named(Sort::Place, name)));
    sought.extend(gauge(weather_from(today), today));
    Ok(sought)
}

/// The gauge from one day to another, both included.
pub(super) fn gauge(from: Day, to: Day) -> Vec<Sought> {
    const SHORTEST_MONTH_DAYS: usize = 28;
    let days = (from.number()..=to.number()).step_by(SHORTEST_MONTH_DAYS).map(Day::from_number);
    let mut months: Vec<Sought> = days.chain([to]).map(Sought::gauge).collect();
    months.dedup();
    months
}

/// Whether an entry, or one that it takes back, says what a species is: then everything is folded again. Withdrawals of
/// another copy may name each other.
pub(super) fn describes_species(journal: &Journal, entry: &Entry) -> bool {
    let mut seen: BTreeSet<EntryId> = BTreeSet::new();
    let mut next: Option<Entry> = None;
    let mut todo: Vec<EntryId> = Vec::new();
    loop {
        match &next.as_ref().unwrap_or(entry).what {
            What::Site(SiteEntry::SpeciesSet(_)) => return true,
            What::Book(BookEntry::Withdrawn(withdrawal)) => {
                todo.extend(withdrawal.entries.iter().filter(|id| seen.insert((*id).clone())).cloned());
            }
            What::Site(_) | What::Seed(_) | What::Tray(_) | What::Ground(_) | What::Book(_) | What::Foreign { .. } => {}
        }
        next = loop {
            let Some(id) = todo.pop() else { return false };
            if let Some(named) = journal.entry(&id).ok().flatten() {
                break Some(named);
            }
        };
    }
}

/// Looks up what a fold wants before entries are added or taken out, and folds what is brought back.
pub(super) fn look_up_for(journal: &Journal, fold: &mut Fold, entries: &[Arc<Entry>]) -> Result<(), JournalError> {
    let _together = journal.read_together()?;
    loop {
        let wanted = fold.wanting(entries);
        if wanted.is_empty() {
            break;
        }
        fetch(journal, fold, &wanted)?;
    }
    fold.fold_looked_up();
    Ok(())
}

/// Looks up everything about some things, and folds what is brought back.
pub(super) fn look_up_about(journal: &Journal, fold: &mut Fold, about: &BTreeSet<Subject>) -> Result<(), JournalError> {
    let _together = journal.read_together()?;
    loop {
        let wanted = fold.wanting_for(about);
        if wanted.is_empty() {
            break;
        }
        fetch(journal, fold, &wanted)?;
    }
    fold.fold_looked_up();
    Ok(())
}

fn fetch(journal: &Journal, fold: &mut Fold, wanted: &[Wanted]) -> Result<(), JournalError> {
    let mut sought = Vec::new();
    let mut found = Vec::new();
    for one in wanted {
        let (subject, only_lending) = match one {
            Wanted::All(subject) => (subject, false),
            Wanted::Lending(subject) => (subject, true),
            Wanted::Entry(id) => {
                found.extend(journal.entry(id)?.map(Arc::new));
                continue;
            }
            Wanted::Command(device, command, day) => {
                found.extend(journal.command_on(device, *command, *day)?.into_iter().map(Arc::new));
                continue;
            }
        };
        match subject {
            Subject::Tray(code) => {
                let codes = fold.ledger().codes_of(code).into_iter().map(Subject::Tray);
                sought.extend(codes.map(|code| Sought::subject(&code, only_lending)));
            }
            Subject::Lot(_) | Subject::Bed(_) | Subject::Place(_) | Subject::Site => {
                sought.push(Sought::subject(subject, only_lending));
            }
        }
    }
    found.extend(journal.look_up(&sought)?);
    fold.take_in(wanted, found);
    Ok(())
}
