//! Stories as they are kept in the file: written, read, and compared with what the entries give.

use imbl::OrdMap;
use std::sync::Arc;

use crate::base::cores::on_every_core;
use crate::base::{BedName, Day, LotCode, TrayCode};
use crate::journal::{Checkpoint, Journal, JournalError, KeptStory, Sort};
use crate::nursery::entry::Entry;
use crate::reckon::archived::{LEARNED_TRAYS, bed_archived_from, lot_archived_from, tray_archived_from};
use crate::reckon::stock::{BedStory, LotStory, TrayStory};
use crate::reckon::{FOLD_MARK, Fold, Stories, View};

/// Archived stories that are at hand beyond those learned from: some of them may be brought back.
pub(super) const MORE_AT_HAND: usize = 20;

/// The stories as they were kept last.
#[derive(Default)]
pub(super) struct LastKept {
    pub arrival: i64,
    trays: OrdMap<TrayCode, Arc<TrayStory>>,
    lots: OrdMap<LotCode, Arc<LotStory>>,
    beds: OrdMap<BedName, Arc<BedStory>>,
}

impl LastKept {
    /// What is kept once the stories of a fold are.
    pub fn of(fold: &Fold, arrival: i64) -> LastKept {
        LastKept { arrival, trays: fold.trays().clone(), lots: fold.lots().clone(), beds: fold.beds().clone() }
    }
}

/// The program that folds: another one does not go on from its stories.
pub(super) fn program() -> String {
    format!("{} {FOLD_MARK}", env!("CARGO_PKG_VERSION"))
}

pub(super) fn read_stories(kept: Vec<(String, Vec<u8>)>) -> Option<Stories> {
    enum Story {
        Tray(Box<TrayStory>),
        Lot(LotStory),
        Bed(BedStory),
    }
    let read = on_every_core(&kept, |(sort, body)| match sort.as_str() {
        "tray" => postcard::from_bytes(body).ok().map(Box::new).map(Story::Tray),
        "lot" => postcard::from_bytes(body).ok().map(Story::Lot),
        "bed" => postcard::from_bytes(body).ok().map(Story::Bed),
        _ => None,
    });
    let mut stories = Stories::default();
    for story in read {
        match story? {
            Story::Tray(story) => stories.trays.push(*story),
            Story::Lot(story) => stories.lots.push(story),
            Story::Bed(story) => stories.beds.push(story),
        }
    }
    Some(stories)
}

pub(super) fn archived_stories(journal: &Journal, day: Day) -> Result<Option<Vec<Arc<TrayStory>>>, JournalError> {
    let kept = journal.archived_stories(day, LEARNED_TRAYS + MORE_AT_HAND)?;
    let read = on_every_core(&kept, |body| postcard::from_bytes(body).ok().map(Arc::new));
    Ok(read.into_iter().collect())
}

/// The stories that a file keeps for this program, as they are kept.
pub(in crate::desk) struct KeptStories {
    day: Day,
    /// Of how many entries, by arrival, they are told.
    of_entries: usize,
    bodies: Vec<(String, Vec<u8>)>,
}

impl KeptStories {
    /// Those of a file; none where none are kept, or they are of another program.
    pub(in crate::desk) fn of(journal: &Journal) -> Result<Option<KeptStories>, JournalError> {
        let checkpoint = journal.checkpoint()?.filter(|checkpoint| checkpoint.program == program());
        let Some(Checkpoint { day, arrival, .. }) = checkpoint else { return Ok(None) };
        let (of_entries, bodies) = (journal.count_up_to(arrival)?, journal.active_stories(Day::from_number(0))?);
        Ok(Some(KeptStories { day, of_entries, bodies }))
    }

    /// Whether they are those that the entries give; `entries` are all by arrival, and `all` is folded from them.
    pub(in crate::desk) fn are_true(self, entries: &[Arc<Entry>], all: &Fold) -> bool {
        let (Some(told), Some(stories)) = (entries.get(..self.of_entries), read_stories(self.bodies)) else {
            return false;
        };
        let view = View { day: self.day, known: None };
        let is_of_all = told.len() == entries.len() && all.ledger().view() == view;
        let of_them = (!is_of_all).then(|| Fold::new(view, self.day, told.iter().cloned()));
        let fold = of_them.as_ref().unwrap_or(all);
        let Stories { trays, lots, beds } = &stories;
        let true_trays = trays.iter().all(|story| fold.trays().get(&story.code).is_some_and(|own| **own == *story));
        let true_lots = lots.iter().all(|story| fold.lots().get(&story.code).is_some_and(|own| **own == *story));
        let true_beds = beds.iter().all(|story| fold.beds().get(&story.name).is_some_and(|own| **own == *story));
        let kept = (trays.len(), lots.len(), beds.len());
        true_trays && true_lots && true_beds && kept == (fold.trays().len(), fold.lots().len(), fold.beds().len())
    }
}

/// Keeps the stories that changed since they were kept before.
pub(super) fn keep_stories(
    journal: &mut Journal,
    fold: &Fold,
    arrival: i64,
    before: &LastKept,
    all_anew: bool,
) -> Result<(), JournalError> {
    let changed = changed_stories(fold, before, all_anew)?;
    let mut gone = Vec::new();
    let trays = before.trays.keys().filter(|code| !fold.trays().contains_key(*code));
    gone.extend(trays.map(|code| (Sort::Tray, code.to_string())));
    let lots = before.lots.keys().filter(|code| !fold.lots().contains_key(*code));
    gone.extend(lots.map(|code| (Sort::Lot, code.to_string())));
    let beds = before.beds.keys().filter(|name| !fold.beds().contains_key(*name));
    gone.extend(beds.map(|name| (Sort::Bed, name.to_string())));
    let checkpoint = Checkpoint { program: program(), day: fold.ledger().view().day, arrival };
    journal.keep_stories(&checkpoint, &changed, &gone, all_anew)
}

/// The stories of a fold that are not those that were kept before, as they are kept.
pub(super) fn changed_stories(fold: &Fold, before: &LastKept, all_anew: bool) -> Result<Vec<KeptStory>, JournalError> {
    let mut changed = Vec::new();
    fn bytes<T: serde::Serialize>(story: &T) -> Result<Vec<u8>, JournalError> {
        postcard::to_allocvec(story).map_err(|fault| JournalError::Damaged { what: fault.to_string(), entry: None })
    }
    for (code, story) in fold.trays() {
        if all_anew || !before.trays.get(code).is_some_and(|old| Arc::ptr_eq(old, story)) {
            let species = story.species.as_ref().filter(|_| story.origin.is_some()).map(ToString::to_string);
            let archived_from = tray_archived_from(story);
            let (sort, name) = (Sort::Tray, code.to_string());
            changed.push(KeptStory { sort, name, archived_from, species, body: bytes(&**story)? });
        }
    }
    for (code, story) in fold.lots() {
        if all_anew || !before.lots.get(code).is_some_and(|old| Arc::ptr_eq(old, story)) {
            let (sort, name, archived_from) = (Sort::Lot, code.to_string(), lot_archived_from(story));
            changed.push(KeptStory { sort, name, archived_from, species: None, body: bytes(&**story)? });
        }
    }
    for (name, story) in fold.beds() {
        if all_anew || !before.beds.get(name).is_some_and(|old| Arc::ptr_eq(old, story)) {
            let (sort, name, archived_from) = (Sort::Bed, name.to_string(), bed_archived_from(story));
            changed.push(KeptStory { sort, name, archived_from, species: None, body: bytes(&**story)? });
        }
    }
    Ok(changed)
}
