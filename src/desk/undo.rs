//! Taking back: a new entry names what no longer counts. The old ones stay readable.

use std::collections::BTreeSet;
use std::sync::Arc;

use super::refusal::{DeskError, Refusal};
use super::{Desk, Recorded};
use crate::base::EntryId;
use crate::nursery::entry::subject::{Subject, subjects};
use crate::nursery::entry::{BookEntry, Entry, What};
use crate::nursery::envelope::Draft;
use crate::reckon::Fold;

/// What to take back.
#[derive(Clone, PartialEq, Debug)]
pub enum Withdraws {
    /// This device's last command not yet taken back, whole.
    LastCommand,
    /// The command an entry belongs to, whole.
    CommandOf(EntryId),
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
        self.refresh()?;
        let mut targets = self.targets(what)?;
        let fresh = self.fold().clone();
        let mut rest = self.left_without_ground(&fresh, &targets);
        if !rest.is_empty() && !together {
            let doubts = self.doubts_without(&targets);
            let ids = |entries: &[Arc<Entry>]| entries.iter().map(|entry| entry.id.clone()).collect();
            let refusal =
                Refusal::LeavesOthersWithoutGround { entries: ids(&targets), doubts, rest_on_them: ids(&rest) };
            return Err(refusal.into());
        }
        const MOST_ROUNDS: usize = 50;
        for _ in 0..MOST_ROUNDS {
            if rest.is_empty() {
                break;
            }
            targets.extend(rest);
            rest = self.left_without_ground(&fresh, &targets);
        }
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

    pub(super) fn targets(&self, what: &Withdraws) -> Result<Vec<Arc<Entry>>, DeskError> {
        let ledger = self.fold().ledger();
        let counts = |entry: &&Arc<Entry>| !ledger.is_withdrawn(&entry.id);
        let of_command = |device: &crate::base::DeviceId, command: u64| -> Vec<Arc<Entry>> {
            let same = self.entries().iter().filter(|entry| entry.id.device == *device && entry.command == command);
            same.filter(counts).cloned().collect()
        };
        match what {
            Withdraws::CommandOf(id) => {
                let entry = self.entries().iter().find(|entry| entry.id == *id);
                let entry = entry.ok_or_else(|| Refusal::UnknownEntry(id.clone()))?;
                let targets = of_command(&entry.id.device, entry.command);
                if targets.is_empty() { Err(Refusal::NothingToUndo.into()) } else { Ok(targets) }
            }
            Withdraws::LastCommand => {
                let own = self.journal().own_devices();
                // Commands that only take back are passed over: a second undo goes one step further back.
                let takes_back = |entry: &&Arc<Entry>| matches!(entry.what, What::Book(BookEntry::Withdrawn(_)));
                let ours = self.entries().iter().filter(|entry| own.contains(&entry.id.device));
                let last = ours
                    .filter(counts)
                    .filter(|entry| !takes_back(entry))
                    .max_by_key(|entry| (entry.recorded, entry.id.seq));
                let last = last.ok_or(Refusal::NothingToUndo)?;
                Ok(of_command(&last.id.device, last.command))
            }
        }
    }

    /// Entries about the same subjects that would rest on nothing once the targets are gone: they name a tray nobody
    /// made, or take out more than stands.
    pub(super) fn left_without_ground(&self, fresh: &Fold, targets: &[Arc<Entry>]) -> Vec<Arc<Entry>> {
        let gone: BTreeSet<&EntryId> = targets.iter().map(|entry| &entry.id).collect();
        let mut without = fresh.clone();
        without.take_out(targets);
        let before: BTreeSet<_> = fresh.all_doubts().into_iter().collect();
        let touched: BTreeSet<Subject> = targets.iter().flat_map(|entry| subjects(&entry.what)).collect();
        let mut named: BTreeSet<EntryId> = BTreeSet::new();
        for doubt in without.all_doubts().into_iter().filter(|doubt| !before.contains(doubt)) {
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
        self.entries().iter().filter(|entry| named.contains(&entry.id)).cloned().collect()
    }

    fn doubts_without(&self, targets: &[Arc<Entry>]) -> Vec<crate::reckon::picture::Doubt> {
        let before: BTreeSet<_> = self.fold().all_doubts().into_iter().collect();
        let mut without = self.fold().clone();
        without.take_out(targets);
        without.all_doubts().into_iter().filter(|doubt| !before.contains(doubt)).collect()
    }
}
