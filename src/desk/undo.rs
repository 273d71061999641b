//! Taking back: a new entry names what no longer counts. The old ones stay readable.

use std::collections::BTreeSet;
use std::sync::Arc;

use super::refusal::{DeskError, Refusal};
use super::{Desk, Recorded, withdrawn_by};
use crate::base::EntryId;
use crate::nursery::entry::subject::{Subject, subjects};
use crate::nursery::entry::{BookEntry, Entry, SiteEntry, What};
use crate::nursery::envelope::Draft;

/// What to take back.
#[derive(Clone, PartialEq, Debug)]
pub enum Withdraws {
    /// This device's last command not yet taken back, whole; never what the nursery was begun with.
    LastCommand,
    /// An entry that a command wrote alone; refused where it came in with others.
    Entry(EntryId),
    /// The command an entry belongs to, whole.
    CommandOf(EntryId),
    /// One entry alone, whatever its command wrote besides.
    EntryAlone(EntryId),
}

/// What was taken back.
#[derive(Clone, PartialEq, Debug)]
pub struct TakenBack {
    /// The entries that no longer count.
    pub entries: Vec<Arc<Entry>>,
    /// The withdrawal and the doubts it raised.
    pub recorded: Recorded,
}

impl Desk {
    /// Takes a command back. Where later entries would be left without ground, it is refused with their list unless
    /// `together` takes them back as well.
    pub fn undo(&mut self, what: &Withdraws, together: bool, who: &str, why: &str) -> Result<TakenBack, DeskError> {
        let targets = self.would_undo(what, together)?;
        let entries: Vec<serde_json::Value> =
            targets.iter().map(|entry| serde_json::Value::from(entry.id.to_string())).collect();
        let body = serde_json::Map::from_iter([
            ("entries".to_string(), serde_json::Value::Array(entries)),
            ("why".to_string(), serde_json::Value::from(why)),
        ]);
        let now = self.now();
        let draft =
            Draft { happened: now.today, clock: now.clock, who: who.to_string(), kind: "withdrawn".into(), body };
        let recorded = self.record(vec![draft])?;
        Ok(TakenBack { entries: targets, recorded })
    }

    /// The entries that `undo` would take back; writes nothing.
    pub(crate) fn would_undo(&mut self, what: &Withdraws, together: bool) -> Result<Vec<Arc<Entry>>, DeskError> {
        self.refresh()?;
        let mut targets = self.targets(what)?;
        let mut rest = self.left_without_ground(&targets)?;
        if !rest.is_empty() && !together {
            let doubts = self.doubts_without(&targets)?;
            let refusal = Refusal::LeavesOthersWithoutGround { entries: targets, doubts, rest_on_them: rest };
            return Err(refusal.into());
        }
        const MOST_ROUNDS: usize = 50;
        for _ in 0..MOST_ROUNDS {
            if rest.is_empty() {
                break;
            }
            targets.extend(rest);
            rest = self.left_without_ground(&targets)?;
        }
        Ok(targets)
    }

    fn targets(&self, what: &Withdraws) -> Result<Vec<Arc<Entry>>, DeskError> {
        match what {
            Withdraws::Entry(id) => {
                let entry = self.still_counts(id)?;
                let all = self.of_command(&entry)?;
                if all.len() > 1 { Err(Refusal::OneOfMany { entry: id.clone(), all }.into()) } else { Ok(all) }
            }
            Withdraws::EntryAlone(id) => Ok(vec![self.still_counts(id)?]),
            Withdraws::CommandOf(id) => {
                let named = self.named([id])?;
                let all = named.first().map_or(Ok(Vec::new()), |entry| self.of_command(entry))?;
                // Where the named one is gone already, the others of its command can still go.
                if all.is_empty() { self.still_counts(id).map(|entry| vec![entry]) } else { Ok(all) }
            }
            Withdraws::LastCommand => {
                let ledger = self.fold().ledger();
                // Commands that only take back are passed over: a second undo goes one step further back.
                let takes_back = |entry: &Entry| matches!(entry.what, What::Book(BookEntry::Withdrawn(_)));
                let counts = |entry: &Entry| !ledger.is_withdrawn(&entry.id) && !takes_back(entry);
                let mut last: Option<Entry> = None;
                for device in self.journal().own_devices() {
                    let newest = self.journal().newest_of(&device, &counts)?;
                    last = last.into_iter().chain(newest).max_by_key(|entry| (entry.recorded, entry.id.seq));
                }
                let all = self.of_command(&last.ok_or(Refusal::NothingToUndo)?)?;
                self.not_the_beginning(all)
            }
        }
    }

    /// An entry that is here and still counts.
    fn still_counts(&self, id: &EntryId) -> Result<Arc<Entry>, DeskError> {
        let entry = self.named([id])?.into_iter().next();
        let entry = entry.ok_or_else(|| Refusal::UnknownEntry(id.clone()))?;
        match self.fold().ledger().withdrawal_of(id) {
            Some(withdrawal) => Err(Refusal::AlreadyWithdrawn(id.clone(), withdrawal.clone()).into()),
            None => Ok(entry),
        }
    }

    /// Everything that the command of an entry wrote and that still counts.
    fn of_command(&self, entry: &Entry) -> Result<Vec<Arc<Entry>>, DeskError> {
        let ledger = self.fold().ledger();
        let all = self.journal().command(entry)?;
        Ok(all.into_iter().filter(|other| !ledger.is_withdrawn(&other.id)).map(Arc::new).collect())
    }

    /// Without its last description a nursery has no place on earth: whoever wants that must name it.
    fn not_the_beginning(&self, targets: Vec<Arc<Entry>>) -> Result<Vec<Arc<Entry>>, DeskError> {
        let describes = |entry: &&Arc<Entry>| matches!(entry.what, What::Site(SiteEntry::NurserySet(_)));
        let gone: BTreeSet<&EntryId> = targets.iter().map(|entry| &entry.id).collect();
        let mut left = self.fold().ledger().entries().filter(|entry| !gone.contains(&entry.id));
        match targets.iter().find(describes) {
            Some(first) if !left.any(|entry| describes(&entry)) => Err(Refusal::OnlyTheBeginning(first.clone()).into()),
            Some(_) | None => Ok(targets),
        }
    }

    /// Refuses to take back what others rest on, however it is written.
    pub(super) fn leaves_no_other_without_ground(&mut self, draft: &Draft) -> Result<(), DeskError> {
        let entries = self.named(&withdrawn_by(draft))?;
        let rest_on_them = self.left_without_ground(&entries)?;
        if rest_on_them.is_empty() {
            return Ok(());
        }
        let doubts = self.doubts_without(&entries)?;
        Err(Refusal::LeavesOthersWithoutGround { entries, doubts, rest_on_them }.into())
    }

    /// Entries about the same subjects that would rest on nothing once the targets are gone: they name a tray nobody
    /// made, or take out more than stands.
    fn left_without_ground(&mut self, targets: &[Arc<Entry>]) -> Result<Vec<Arc<Entry>>, DeskError> {
        self.source.look_up_for(&self.journal, &mut self.fold, targets)?;
        let fresh = &self.fold;
        let gone: BTreeSet<&EntryId> = targets.iter().map(|entry| &entry.id).collect();
        let mut without = fresh.clone();
        without.take_out(targets);
        let touched: BTreeSet<Subject> = targets.iter().flat_map(|entry| subjects(&entry.what)).collect();
        let mut named: BTreeSet<EntryId> = BTreeSet::new();
        for doubt in without.doubts_since(&fresh.stories_now()) {
            named.extend(doubt.entries.into_iter().filter(|entry| !gone.contains(entry)));
        }
        // A tray or lot that is gone takes every entry about it along.
        for subject in &touched {
            let vanished = match subject {
                Subject::Tray(code) => without.trays().get(code).is_none_or(|story| story.origin.is_none()),
                Subject::Lot(code) => without.lots().get(code).is_none_or(|story| story.received.is_none()),
                Subject::Bed(_) | Subject::Place(_) | Subject::Site => false,
            };
            if vanished {
                named.extend(without.ledger().of(subject).map(|entry| entry.id.clone()));
            }
        }
        self.named(&named)
    }

    fn doubts_without(&mut self, targets: &[Arc<Entry>]) -> Result<Vec<crate::reckon::picture::Doubt>, DeskError> {
        self.source.look_up_for(&self.journal, &mut self.fold, targets)?;
        let mut without = self.fold().clone();
        without.take_out(targets);
        Ok(without.doubts_since(&self.fold().stories_now()))
    }
}
