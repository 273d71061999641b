//! The book that goes on from kept stories: only what is active is in memory, and what else is needed is looked up.

use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::in_parts::doubts_kept;
use super::look_up::{self, described, describes_species, gauge};
use super::source::{BookSource, Opened};
use super::stories::{LastKept, MORE_AT_HAND, archived_stories, keep_stories, program, read_stories};
use crate::base::{BedName, Day, EntryId, LotCode, SpeciesKey, TrayCode};
use crate::desk::now::Now;
use crate::journal::{Journal, JournalError, Sort, Sought};
use crate::nursery::entry::shape::{NameOf, Shape};
use crate::nursery::entry::subject::Subject;
use crate::nursery::entry::{Entry, kind_of_entry};
use crate::nursery::envelope::Draft;
use crate::reckon::archived::{is_archived, tray_archived_from};
use crate::reckon::picture::Doubt;
use crate::reckon::site::weather_from;
use crate::reckon::stock::TrayStory;
use crate::reckon::{Fold, FromThen, Ledger, View};

/// Stories are kept again when so many entries came since. Ours: what has to be taken in at the next start stays small.
const KEEP_EVERY: i64 = 300;
/// For a view from which more entries have to be taken out, the book is read whole.
const MOST_TAKEN_OUT: u64 = 25_000;

/// A book of which only what is active is in memory. Without stories that were kept (`default`) it only looks up, for a fold
/// of which nothing may be kept.
#[derive(Default)]
pub(in crate::desk) struct FromStories {
    kept: Option<LastKept>,
}

/// Goes on from the kept stories; none where they are not of this program, or cannot be gone on from.
pub(super) fn open(journal: &Journal, now: Now) -> Result<Option<Opened>, JournalError> {
    let _together = journal.read_together()?;
    let Some(checkpoint) = journal.checkpoint()? else { return Ok(None) };
    let today = now.today;
    let last = journal.last_arrival()?;
    if checkpoint.program != program() || checkpoint.day > today || checkpoint.arrival > last {
        return Ok(None);
    }
    // What arrived since, and what was of a day that was still to come.
    let (new, arrival) = journal.entries_after(checkpoint.arrival)?;
    let coming = journal.later(checkpoint.day, None)?;
    if new.iter().chain(&coming).any(|entry| describes_species(journal, entry)) {
        return Ok(None);
    }
    let Some(stories) = read_stories(journal.active_stories(checkpoint.day.min(today))?) else { return Ok(None) };
    let then = View { day: checkpoint.day, known: None };
    let arrived_since: BTreeSet<&EntryId> = new.iter().map(|entry| &entry.id).collect();
    // What takes back or describes and came since is added like the rest: the stories do not know of it yet.
    let mut described = journal.look_up(&described(journal, today)?)?;
    described.retain(|entry| !arrived_since.contains(&entry.id));
    let mut fold = Fold::from_stories(then, today, described, stories);
    let kept = LastKept::of(&fold, checkpoint.arrival);
    let were_there = coming.into_iter().filter(|entry| !arrived_since.contains(&entry.id));
    let (reaching, due): (Vec<_>, Vec<_>) = were_there.partition(|entry| Ledger::belongs(then, entry));
    let new: Vec<Arc<Entry>> = new.into_iter().chain(due).collect();
    look_up::look_up_for(journal, &mut fold, &new)?;
    look_up::look_up_for(journal, &mut fold, &reaching)?;
    fold.go_to(View { day: today, known: None }, new, &reaching);
    let Some(archived) = archived_stories(journal, today)? else { return Ok(None) };
    fold.put_archived(archived);
    Ok(Some(Opened { fold, arrival, source: Box::new(FromStories { kept: Some(kept) }) }))
}

/// Whether of each species so few stories were archived after a day that those at hand are enough for it.
fn few_since(archived: &[Arc<TrayStory>], day: Day) -> bool {
    let mut since: BTreeMap<Option<&SpeciesKey>, usize> = BTreeMap::new();
    let later = archived.iter().filter(|story| !is_archived(tray_archived_from(story), day));
    later.for_each(|story| *since.entry(story.species.as_ref()).or_default() += 1);
    since.values().all(|count| *count <= MORE_AT_HAND / 4)
}

impl BookSource for FromStories {
    fn look_up_for(&self, journal: &Journal, fold: &mut Fold, entries: &[Arc<Entry>]) -> Result<(), JournalError> {
        look_up::look_up_for(journal, fold, entries)
    }

    fn look_up_about(&self, journal: &Journal, fold: &mut Fold, about: &BTreeSet<Subject>) -> Result<(), JournalError> {
        look_up::look_up_about(journal, fold, about)
    }

    fn look_up_named(
        &self,
        journal: &Journal,
        fold: &mut Fold,
        drafts: &mut dyn Iterator<Item = Cow<'_, Draft>>,
    ) -> Result<(), JournalError> {
        let (mut about, mut asked) = (BTreeSet::new(), BTreeSet::new());
        for draft in drafts {
            let Some(kind) = kind_of_entry(&draft.kind) else { continue };
            if kind.kind == "withdrawn" {
                take_in_withdrawn(journal, fold, &draft)?;
            }
            for field in kind.fields {
                let Shape::Code(name_of) = field.shape else { continue };
                let Some(serde_json::Value::String(written)) = draft.body.get(field.name) else { continue };
                if !asked.insert((name_of, written.clone())) {
                    continue;
                }
                match name_of {
                    NameOf::Tray => about.extend(trays_like(journal, fold, written)?),
                    NameOf::Lot => about.extend(lots_like(journal, written)?),
                    NameOf::Bed => about.extend(beds_like(journal, written)?),
                    NameOf::Place | NameOf::Container | NameOf::Field => {}
                }
            }
        }
        look_up::look_up_about(journal, fold, &about)
    }

    fn called(&self, journal: &Journal, fold: &Fold, name: &str) -> Result<BTreeSet<Subject>, JournalError> {
        let all = trays_like(journal, fold, name)?.into_iter().chain(lots_like(journal, name)?);
        Ok(all.chain(beds_like(journal, name)?).collect())
    }

    fn notes_about(&self, journal: &Journal, fold: &Fold, name: &str) -> Result<Vec<Arc<Entry>>, JournalError> {
        let ledger = fold.ledger();
        let stands = |note: &Entry| note.happened <= ledger.view().day && !ledger.is_withdrawn(&note.id);
        let notes = journal.look_up(&[Sought::named(Sort::Note, name.to_string())])?;
        Ok(notes.into_iter().filter(|note| stands(note)).collect())
    }

    fn must_open_again(&self, journal: &Journal, new: &[Arc<Entry>]) -> bool {
        new.iter().any(|entry| describes_species(journal, entry))
    }

    fn keep_now_and_then(&mut self, journal: &mut Journal, fold: &Fold, arrival: i64) {
        let Some(kept) = self.kept.as_mut().filter(|kept| arrival - kept.arrival >= KEEP_EVERY) else { return };
        if keep_stories(journal, fold, arrival, kept, false).is_ok() {
            *kept = LastKept::of(fold, arrival);
        }
    }

    fn other_doubts(&self, journal: &Journal, fold: &Fold) -> Result<Vec<Doubt>, JournalError> {
        doubts_kept(journal, fold)
    }

    fn as_of_then(&self, journal: &Journal, fold: &Fold, view: View) -> Result<FromThen, JournalError> {
        self.looked_back(journal, fold, view, true)
    }

    fn as_it_was(&self, journal: &Journal, fold: &Fold, view: View) -> Result<FromThen, JournalError> {
        self.looked_back(journal, fold, view, false)
    }

    fn to_come(&self, journal: &Journal, fold: &Fold, view: View) -> Result<Fold, JournalError> {
        let coming = journal.later(fold.ledger().view().day, None)?;
        let mut fold = fold.clone();
        look_up::look_up_for(journal, &mut fold, &coming)?;
        let reaching: Vec<Arc<Entry>> = coming.iter().filter(|entry| Ledger::belongs(view, entry)).cloned().collect();
        fold.go_to(view, reaching.clone(), &reaching);
        Ok(fold)
    }
}

impl FromStories {
    /// The book as it was in a view, beside it the book of now where that is wanted too.
    fn looked_back(
        &self,
        journal: &Journal,
        fold: &Fold,
        view: View,
        with_now: bool,
    ) -> Result<FromThen, JournalError> {
        let today = fold.ledger().view().day;
        let _together = journal.read_together()?;
        let read_whole =
            || -> Result<FromThen, JournalError> { Ok(FromThen::whole(view, today, &journal.entries_after(0)?.0)) };
        if journal.count_later(view.day, view.known)? > MOST_TAKEN_OUT {
            return read_whole();
        }
        let after = journal.later(view.day, view.known)?;
        if self.must_open_again(journal, &after) {
            return read_whole();
        }
        let mut then = fold.clone();
        let Some(stories) = read_stories(journal.stories_archived_between(view.day, today)?) else {
            return read_whole();
        };
        then.put(stories);
        look_up::look_up_for(journal, &mut then, &after)?;
        let now = with_now.then(|| Box::new(then.clone()));
        let earlier = journal.look_up(&gauge(weather_from(view.day), weather_from(today)))?;
        then.take_in(&[], earlier);
        let belongs = |entry: &Arc<Entry>| Ledger::belongs(view, entry);
        // Those that were looked up with the rest stand in memory once.
        let same = |entry: Arc<Entry>| then.ledger().entry(&entry.id).cloned().unwrap_or(entry);
        let (reaching, later): (Vec<_>, Vec<_>) = after.into_iter().map(same).partition(belongs);
        let mut then = then.at(view, &later, &reaching);
        // Of the stories archived today those that were so then: enough where few were archived since.
        let rested = |story: &&Arc<TrayStory>| is_archived(tray_archived_from(story), view.day);
        match fold.archived_stories() {
            all if few_since(all, view.day) => then.put_archived(all.iter().filter(rested).cloned().collect()),
            _ => then.put_archived(archived_stories(journal, view.day)?.unwrap_or_default()),
        }
        Ok(FromThen { then, later, reaching, now })
    }
}

fn take_in_withdrawn(journal: &Journal, fold: &mut Fold, draft: &Draft) -> Result<(), JournalError> {
    let named = draft.body.get("entries").and_then(serde_json::Value::as_array).into_iter().flatten();
    for id in named.filter_map(|id| id.as_str()?.parse::<EntryId>().ok()) {
        let found = journal.entry(&id)?;
        fold.take_in(&[], found.into_iter().map(Arc::new).collect());
    }
    Ok(())
}

fn trays_like(journal: &Journal, fold: &Fold, written: &str) -> Result<Vec<Subject>, JournalError> {
    let names = journal.names_like(&Sort::Tray, written)?;
    let codes = names.iter().filter_map(|name| TrayCode::new(name).ok());
    Ok(codes.flat_map(|code| [fold.ledger().tray_now(&code), code]).map(Subject::Tray).collect())
}

fn lots_like(journal: &Journal, written: &str) -> Result<Vec<Subject>, JournalError> {
    let names = journal.names_like(&Sort::Lot, written)?;
    Ok(names.iter().filter_map(|name| LotCode::new(name).ok()).map(Subject::Lot).collect())
}

fn beds_like(journal: &Journal, written: &str) -> Result<Vec<Subject>, JournalError> {
    let names = journal.names_like(&Sort::Bed, written)?;
    Ok(names.iter().filter_map(|name| BedName::new(name).ok()).map(Subject::Bed).collect())
}
