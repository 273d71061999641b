//! Opening a book and looking things up in it: a small book is read whole; of a large one only the kept stories are, and
//! entries when something needs them.

use imbl::OrdMap;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::refusal::DeskError;
use super::{Desk, Now};
use crate::base::cores::on_every_core;
use crate::base::{BedName, Day, EntryId, LotCode, SpeciesKey, TrayCode};
use crate::journal::{Checkpoint, Journal, JournalError, KeptStory, Sort, Sought};
use crate::nursery::entry::shape::{NameOf, Shape};
use crate::nursery::entry::subject::Subject;
use crate::nursery::entry::{BookEntry, Entry, SiteEntry, What, kind_of_entry};
use crate::nursery::envelope::Draft;
use crate::reckon::rest::{LEARNED_TRAYS, bed_rests_on, lot_rests_on, rests, tray_rests_on};
use crate::reckon::site::weather_from;
use crate::reckon::stock::{BedStory, LotStory, TrayStory};
use crate::reckon::{FOLD_MARK, Fold, FromThen, Ledger, Picture, Stories, View, Wanted};

/// Books of fewer entries are read whole: that takes no longer than looking things up.
pub const READ_WHOLE_BELOW: u64 = 4_000;
/// Stories are kept anew when so many entries came since. Ours: what has to be taken in at the next start stays small.
const KEEP_EVERY: i64 = 300;
/// Stories at rest that are at hand beyond those learned from: some of them may be brought back.
const MORE_AT_HAND: usize = 20;
/// For a view from which more entries have to be taken out, the book is read whole.
const MOST_TAKEN_OUT: u64 = 25_000;

/// The stories as they were kept last.
#[derive(Default)]
pub(super) struct LastKept {
    arrival: i64,
    trays: OrdMap<TrayCode, Arc<TrayStory>>,
    lots: OrdMap<LotCode, Arc<LotStory>>,
    beds: OrdMap<BedName, Arc<BedStory>>,
}

/// What opens a book: its fold of today, the last entry in it by arrival, and what is kept.
pub(super) struct Opened {
    pub fold: Fold,
    pub arrival: i64,
    pub kept: LastKept,
}

/// The program that folds: another one does not go on from its stories.
pub(super) fn program() -> String {
    format!("{} {FOLD_MARK}", env!("CARGO_PKG_VERSION"))
}

pub(super) fn arcs(entries: Vec<Entry>) -> Vec<Arc<Entry>> {
    entries.into_iter().map(Arc::new).collect()
}

/// Opens a book for today. `whole_below`: books of fewer entries are read whole.
pub(super) fn open(journal: &mut Journal, now: Now, whole_below: u64) -> Result<Opened, JournalError> {
    if journal.count()? < whole_below {
        return read_whole(journal, now);
    }
    journal.bring_up_lookup(&mut |_| {})?;
    if !journal.lookup_is_up()? {
        return read_whole(journal, now);
    }
    if let Some(opened) = go_on_from_stories(journal, now)? {
        keep(journal, &opened, opened.arrival - opened.kept.arrival >= KEEP_EVERY, false);
        return Ok(opened);
    }
    let opened = read_whole(journal, now)?;
    keep(journal, &opened, true, true);
    // From here on what lives is enough; where it could not be kept, all of it stays in memory.
    Ok(go_on_from_stories(journal, now)?.unwrap_or(opened))
}

fn read_whole(journal: &Journal, now: Now) -> Result<Opened, JournalError> {
    let (entries, arrival) = journal.entries_after(0)?;
    let view = View { day: now.today, known: None };
    let fold = Fold::new(view, now.today, arcs(entries));
    Ok(Opened { fold, arrival, kept: LastKept::default() })
}

/// Goes on from the kept stories; none where they are not of this program, or cannot be gone on from.
fn go_on_from_stories(journal: &Journal, now: Now) -> Result<Option<Opened>, JournalError> {
    let _together = journal.read_together()?;
    let Some(checkpoint) = journal.checkpoint()? else { return Ok(None) };
    let today = now.today;
    let last = journal.last_arrival()?;
    if checkpoint.program != program() || checkpoint.day > today || checkpoint.arrival > last {
        return Ok(None);
    }
    // What arrived since, and what was of a day that was still to come.
    let (new, arrival) = journal.entries_after(checkpoint.arrival)?;
    let new = arcs(new);
    let coming = arcs(journal.later(checkpoint.day, None)?);
    if new.iter().chain(&coming).any(|entry| describes_species(journal, entry)) {
        return Ok(None);
    }
    let Some(stories) = read_stories(journal.stories_awake(checkpoint.day.min(today))?) else { return Ok(None) };
    let then = View { day: checkpoint.day, known: None };
    let arrived_since: BTreeSet<&EntryId> = new.iter().map(|entry| &entry.id).collect();
    // What takes back or describes and came since is added like the rest: the stories do not know of it yet.
    let mut described = journal.look_up(&described(journal, today)?)?;
    described.retain(|entry| !arrived_since.contains(&entry.id));
    let mut fold = Fold::from_stories(then, today, arcs(described), stories);
    let kept = LastKept::of(&fold, checkpoint.arrival);
    let were_there = coming.into_iter().filter(|entry| !arrived_since.contains(&entry.id));
    let (reaching, due): (Vec<_>, Vec<_>) = were_there.partition(|entry| Ledger::belongs(then, entry));
    let new: Vec<Arc<Entry>> = new.into_iter().chain(due).collect();
    look_up_for(journal, &mut fold, &new)?;
    look_up_for(journal, &mut fold, &reaching)?;
    fold.go_to(View { day: today, known: None }, new, &reaching);
    let Some(at_rest) = stories_at_rest(journal, today)? else { return Ok(None) };
    fold.put_at_rest(at_rest);
    Ok(Some(Opened { fold, arrival, kept }))
}

/// Whether the kept stories are those that the entries give.
pub(super) fn kept_stories_are_true(journal: &Journal) -> Result<bool, JournalError> {
    let Some(checkpoint) = journal.checkpoint()?.filter(|checkpoint| checkpoint.program == program()) else {
        return Ok(true);
    };
    let entries = journal.entries_up_to(checkpoint.arrival)?;
    let view = View { day: checkpoint.day, known: None };
    let fold = Fold::new(view, checkpoint.day, arcs(entries));
    let Some(stories) = read_stories(journal.stories_awake(Day::from_number(0))?) else { return Ok(false) };
    let Stories { trays, lots, beds } = &stories;
    let true_trays = trays.iter().all(|story| fold.trays().get(&story.code).is_some_and(|own| **own == *story));
    let true_lots = lots.iter().all(|story| fold.lots().get(&story.code).is_some_and(|own| **own == *story));
    let true_beds = beds.iter().all(|story| fold.beds().get(&story.name).is_some_and(|own| **own == *story));
    let as_many = (trays.len(), lots.len(), beds.len()) == (fold.trays().len(), fold.lots().len(), fold.beds().len());
    Ok(true_trays && true_lots && true_beds && as_many)
}

/// What describes the site: always in memory.
pub(super) fn described(journal: &Journal, today: Day) -> Result<Vec<Sought>, JournalError> {
    let mut sought = vec![Sought::all(Sort::Site), Sought::all(Sort::Label), Sought::all(Sort::Withdrawal)];
    sought.extend(journal.names(&Sort::Place)?.into_iter().map(|name| Sought::named(Sort::Place, name)));
    sought.extend(gauge(weather_from(today), today));
    Ok(sought)
}

/// The gauge from one day to another, both included.
fn gauge(from: Day, to: Day) -> Vec<Sought> {
    const SHORTEST_MONTH_DAYS: usize = 28;
    let days = (from.number()..=to.number()).step_by(SHORTEST_MONTH_DAYS).map(Day::from_number);
    let mut months: Vec<Sought> = days.chain([to]).map(Sought::gauge).collect();
    months.dedup();
    months
}

fn read_stories(kept: Vec<(String, Vec<u8>)>) -> Option<Stories> {
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

fn stories_at_rest(journal: &Journal, day: Day) -> Result<Option<Vec<Arc<TrayStory>>>, JournalError> {
    let kept = journal.stories_at_rest(day, LEARNED_TRAYS + MORE_AT_HAND)?;
    let read = on_every_core(&kept, |body| postcard::from_bytes(body).ok().map(Arc::new));
    Ok(read.into_iter().collect())
}

/// Whether an entry, or one that it takes back, says what a species is: then everything is folded anew. Withdrawals of
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
    if fold.is_whole() {
        return Ok(());
    }
    let _together = journal.read_together()?;
    loop {
        let wanted = fold.wanting(entries);
        if wanted.is_empty() {
            break;
        }
        fetch(journal, fold, &wanted)?;
    }
    fold.wake();
    Ok(())
}

/// Looks up everything about some things, and folds what is brought back.
pub(super) fn look_up_about(journal: &Journal, fold: &mut Fold, about: &BTreeSet<Subject>) -> Result<(), JournalError> {
    if fold.is_whole() {
        return Ok(());
    }
    let _together = journal.read_together()?;
    loop {
        let wanted = fold.wanting_for(about);
        if wanted.is_empty() {
            break;
        }
        fetch(journal, fold, &wanted)?;
    }
    fold.wake();
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
                found.extend(journal.entry(id)?);
                continue;
            }
            Wanted::Command(device, command, day) => {
                found.extend(journal.command_on(device, *command, *day)?);
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
    fold.take_in(wanted, arcs(found));
    Ok(())
}

/// Whether of each species so few stories came to rest after a day that those at hand are enough for it.
fn few_since(at_rest: &[Arc<TrayStory>], day: Day) -> bool {
    let mut since: BTreeMap<Option<&SpeciesKey>, usize> = BTreeMap::new();
    let later = at_rest.iter().filter(|story| !rests(tray_rests_on(story), day));
    later.for_each(|story| *since.entry(story.species.as_ref()).or_default() += 1);
    since.values().all(|count| *count <= MORE_AT_HAND / 4)
}

impl LastKept {
    fn of(fold: &Fold, arrival: i64) -> LastKept {
        LastKept { arrival, trays: fold.trays().clone(), lots: fold.lots().clone(), beds: fold.beds().clone() }
    }
}

/// Keeps the stories that changed. That they cannot be kept is no fault: the next start takes a little longer.
fn keep(journal: &mut Journal, opened: &Opened, wanted: bool, all_anew: bool) {
    if wanted {
        let _ = keep_stories(journal, &opened.fold, opened.arrival, &opened.kept, all_anew);
    }
}

fn keep_stories(
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
            let rests = tray_rests_on(story);
            let (sort, name) = (Sort::Tray, code.to_string());
            changed.push(KeptStory { sort, name, rests, species, body: bytes(&**story)? });
        }
    }
    for (code, story) in fold.lots() {
        if all_anew || !before.lots.get(code).is_some_and(|old| Arc::ptr_eq(old, story)) {
            let (sort, name, rests) = (Sort::Lot, code.to_string(), lot_rests_on(story));
            changed.push(KeptStory { sort, name, rests, species: None, body: bytes(&**story)? });
        }
    }
    for (name, story) in fold.beds() {
        if all_anew || !before.beds.get(name).is_some_and(|old| Arc::ptr_eq(old, story)) {
            let (sort, name, rests) = (Sort::Bed, name.to_string(), bed_rests_on(story));
            changed.push(KeptStory { sort, name, rests, species: None, body: bytes(&**story)? });
        }
    }
    Ok(changed)
}

impl Desk {
    /// Keeps the stories as they are now, where much came since they were kept last.
    pub(super) fn keep_stories_now_and_then(&mut self) {
        if self.fold.is_whole() || self.arrival - self.kept.arrival < KEEP_EVERY {
            return;
        }
        if keep_stories(&mut self.journal, &self.fold, self.arrival, &self.kept, false).is_ok() {
            self.kept = LastKept::of(&self.fold, self.arrival);
        }
    }

    /// Brings back what drafts speak of, however it is spelled.
    pub(super) fn look_up_named(
        &mut self,
        drafts: impl Iterator<Item: std::borrow::Borrow<Draft>>,
    ) -> Result<(), JournalError> {
        if self.fold.is_whole() {
            return Ok(());
        }
        let (mut about, mut asked) = (BTreeSet::new(), BTreeSet::new());
        for draft in drafts {
            let draft = std::borrow::Borrow::<Draft>::borrow(&draft);
            let Some(kind) = kind_of_entry(&draft.kind) else { continue };
            if kind.kind == "withdrawn" {
                self.look_up_withdrawn(draft)?;
            }
            for field in kind.fields {
                let Shape::Code(name_of) = field.shape else { continue };
                let Some(serde_json::Value::String(written)) = draft.body.get(field.name) else { continue };
                if !asked.insert((name_of, written.clone())) {
                    continue;
                }
                match name_of {
                    NameOf::Tray => about.extend(self.trays_like(written)?),
                    NameOf::Lot => about.extend(self.lots_like(written)?),
                    NameOf::Bed => about.extend(self.beds_like(written)?),
                    NameOf::Place | NameOf::Container | NameOf::Field => {}
                }
            }
        }
        look_up_about(&self.journal, &mut self.fold, &about)
    }

    fn look_up_withdrawn(&mut self, draft: &Draft) -> Result<(), JournalError> {
        let named = draft.body.get("entries").and_then(serde_json::Value::as_array).into_iter().flatten();
        let ids = named.filter_map(|id| id.as_str()?.parse::<EntryId>().ok());
        for id in ids.collect::<Vec<_>>() {
            let found = self.journal.entry(&id)?;
            self.fold.take_in(&[], found.into_iter().map(Arc::new).collect());
        }
        Ok(())
    }

    fn trays_like(&self, written: &str) -> Result<Vec<Subject>, JournalError> {
        let names = self.journal.names_like(&Sort::Tray, written)?;
        let codes = names.iter().filter_map(|name| TrayCode::new(name).ok());
        Ok(codes.flat_map(|code| [self.fold.ledger().tray_now(&code), code]).map(Subject::Tray).collect())
    }

    fn lots_like(&self, written: &str) -> Result<Vec<Subject>, JournalError> {
        let names = self.journal.names_like(&Sort::Lot, written)?;
        Ok(names.iter().filter_map(|name| LotCode::new(name).ok()).map(Subject::Lot).collect())
    }

    fn beds_like(&self, written: &str) -> Result<Vec<Subject>, JournalError> {
        let names = self.journal.names_like(&Sort::Bed, written)?;
        Ok(names.iter().filter_map(|name| BedName::new(name).ok()).map(Subject::Bed).collect())
    }

    /// Lets what is called like this be in the Picture, though it rests; nothing where nothing is called so.
    pub fn keep_awake(&mut self, called: &str) -> Result<(), DeskError> {
        let about: BTreeSet<Subject> = if self.fold.is_whole() {
            let all = self.fold.trays().keys().cloned().map(Subject::Tray);
            let all = all.chain(self.fold.lots().keys().cloned().map(Subject::Lot));
            let wanted = crate::base::text::folded(called);
            let called_so = |subject: &Subject| match subject {
                Subject::Tray(code) => crate::base::text::folded(code.as_str()) == wanted,
                Subject::Lot(code) => crate::base::text::folded(code.as_str()) == wanted,
                Subject::Bed(name) => crate::base::text::folded(name.as_str()) == wanted,
                Subject::Place(_) | Subject::Site => false,
            };
            all.chain(self.fold.beds().keys().cloned().map(Subject::Bed)).filter(called_so).collect()
        } else {
            let all = self.trays_like(called)?.into_iter().chain(self.lots_like(called)?);
            all.chain(self.beds_like(called)?).collect()
        };
        look_up_about(&self.journal, &mut self.fold, &about)?;
        about.into_iter().for_each(|subject| self.fold.keep_awake(subject));
        Ok(())
    }

    /// The book as it was in a view of a day that is not to come, and what came after.
    pub fn from_then(&self, view: View) -> Result<FromThen, DeskError> {
        let today = self.now.today;
        if self.fold.is_whole() {
            return Ok(FromThen::whole(view, today, &self.fold.every_entry()));
        }
        let _together = self.journal.read_together()?;
        let read_whole =
            || -> Result<FromThen, DeskError> { Ok(FromThen::whole(view, today, &arcs(self.journal.entries()?))) };
        if self.journal.count_later(view.day, view.known)? > MOST_TAKEN_OUT {
            return read_whole();
        }
        let after = arcs(self.journal.later(view.day, view.known)?);
        if after.iter().any(|entry| describes_species(&self.journal, entry)) {
            return read_whole();
        }
        let mut fold = self.fold.clone();
        let Some(stories) = read_stories(self.journal.stories_resting_between(view.day, today)?) else {
            return read_whole();
        };
        fold.put(stories);
        look_up_for(&self.journal, &mut fold, &after)?;
        let now = Some(Box::new(fold.clone()));
        let earlier = self.journal.look_up(&gauge(weather_from(view.day), weather_from(today)))?;
        fold.take_in(&[], arcs(earlier));
        let belongs = |entry: &Arc<Entry>| Ledger::belongs(view, entry);
        let (reaching, later): (Vec<_>, Vec<_>) = after.into_iter().partition(belongs);
        let mut then = fold.at(view, &later, &reaching);
        // Of the stories at rest today those that rested then: enough where few have come to rest since.
        let rested = |story: &&Arc<TrayStory>| rests(tray_rests_on(story), view.day);
        match self.fold.stories_at_rest() {
            all if few_since(all, view.day) => then.put_at_rest(all.iter().filter(rested).cloned().collect()),
            _ => then.put_at_rest(stories_at_rest(&self.journal, view.day)?.unwrap_or_default()),
        }
        Ok(FromThen { then, later, reaching, now })
    }

    /// The Picture of any day, with only what had been recorded by a moment where one is given.
    pub fn picture_of(&self, view: View) -> Result<Picture, DeskError> {
        let today = self.now.today;
        if view == (View { day: today, known: None }) {
            return Ok(self.picture());
        }
        if view.day > today && view.known.is_none() && !self.fold.is_whole() {
            let coming = arcs(self.journal.later(today, None)?);
            let mut fold = self.fold.clone();
            look_up_for(&self.journal, &mut fold, &coming)?;
            let belongs = |entry: &Arc<Entry>| Ledger::belongs(view, entry);
            let reaching: Vec<Arc<Entry>> = coming.iter().filter(|entry| belongs(entry)).cloned().collect();
            fold.go_to(view, reaching.clone(), &reaching);
            return Ok(fold.picture());
        }
        Ok(self.from_then(view)?.then.picture())
    }
}
