//! Judging a batch: its lines are laid over the book in the order of things; what cannot be true is refused, what makes
//! a later day impossible is written and doubted.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use serde_json::Value;

use super::names::BatchNames;
use super::now::Now;
use super::refusal::{DeskError, Refusal, Refused};
use crate::base::{Clock, DeviceId, EntryId, Moment, TrayCode};
use crate::journal::JournalError;
use crate::nursery::entry::subject::{Subject, subjects};
use crate::nursery::entry::types::{ArrivedFrom, MovedHow};
use crate::nursery::entry::{BookEntry, Entry, SeedEntry, TrayEntry, What, nominal_minutes};
use crate::nursery::envelope::Draft;
use crate::reckon::Fold;
use crate::reckon::picture::{Doubt, DoubtKind};
use crate::reckon::stock::Origin;

/// Brings into a fold what entries want before they are added.
pub(super) type LookUp<'l> = dyn FnMut(&mut Fold, &[Arc<Entry>]) -> Result<(), JournalError> + 'l;

/// Drafts laid over the book for a moment, and the doubts they raise.
pub(super) struct Trial {
    /// The drafts as they would be written.
    pub(super) drafts: Vec<Draft>,
    /// The same as entries.
    pub(super) tried: Vec<Arc<Entry>>,
    /// What they make doubtful.
    pub(super) doubts: Vec<Doubt>,
}

/// What a trial is judged by.
pub(super) struct TrialBy {
    /// What the clock says.
    pub(super) now: Now,
    /// When it would be recorded.
    pub(super) moment: Moment,
    /// The device that would write.
    pub(super) device: Option<DeviceId>,
}

/// Gives today's drafts the time of day, and refuses days to come. What a nursery had before the book began stood there
/// all of its first day, whatever the hour in which it is written down.
pub(super) fn settle(drafts: &mut [Draft], now: Now) -> Result<(), DeskError> {
    let many = drafts.len() > 1;
    let mut refused = Vec::new();
    for (i, draft) in drafts.iter_mut().enumerate() {
        if let Err(why) = settle_one(draft, now) {
            refused.push(Refused { line: if many { i + 1 } else { 0 }, why });
        }
    }
    if refused.is_empty() { Ok(()) } else { Err(DeskError::Refused(refused)) }
}

pub(super) fn settle_one(draft: &mut Draft, now: Now) -> Result<(), Refusal> {
    if draft.happened == now.today && draft.clock.is_none() && !stood_already(draft) {
        draft.clock = now.clock;
    }
    if let Some(Value::Array(entries)) = draft.body.get_mut("entries").filter(|_| draft.kind == "withdrawn") {
        // What is named twice is taken back once.
        let mut named: BTreeSet<String> = BTreeSet::new();
        entries.retain(|entry| named.insert(entry.to_string()));
    }
    if draft.happened > now.today {
        return Err(Refusal::FutureDay { day: draft.happened, today: now.today });
    }
    Ok(())
}

fn stood_already(draft: &Draft) -> bool {
    let opening = draft.body.get("from").and_then(serde_json::Value::as_str) == Some("opening");
    draft.kind == "plants_received" && opening
}

/// What is told later of the very day on which a tray or lot came in, without a time of day, happened after that: nobody
/// can have lost plants of a tray before it was there.
pub(super) fn put_behind_its_coming(fold: &Fold, draft: &mut Draft, what: &What) {
    if draft.clock.is_some() {
        return;
    }
    let about = subjects(what);
    let first = about.iter().filter_map(|subject| Some((subject, fold.ledger().of(subject).next()?)));
    let came = first.filter(|(subject, entry)| entry.happened == draft.happened && brings(&entry.what, subject));
    let latest = came.filter_map(|(_, entry)| entry.clock).max();
    draft.clock = latest.filter(|clock| clock.minutes() > nominal_minutes(what));
}

/// A tray gets another code after all that was written of it: what stood later under the old code would be nobody's. Of the same day it
/// goes behind that, where nobody wrote an hour.
pub(super) fn put_behind_its_story(fold: &Fold, draft: &mut Draft, what: &What) -> Result<(), Refusal> {
    let What::Tray(TrayEntry::Relabelled(label)) = what else { return Ok(()) };
    let made = |was: &&TrayCode| fold.trays().get(*was).is_some_and(|story| story.origin.is_some());
    let Some(was) = label.was.as_ref().filter(made) else { return Ok(()) };
    let ledger = fold.ledger();
    let subject = Subject::Tray(was.clone());
    let written = ledger.of(&subject).map(|entry| (entry.happened, ledger.key_of(entry).minutes));
    let Some((until, minutes)) = written.max() else { return Ok(()) };
    let at = draft.clock.map_or(nominal_minutes(what), |clock| clock.minutes());
    if (draft.happened, at) >= (until, minutes) {
        return Ok(());
    }
    let behind = Clock::from_hm(u32::from(minutes) / 60, u32::from(minutes) % 60)
        .filter(|_| draft.happened == until && draft.clock.is_none());
    draft.clock = Some(behind.ok_or_else(|| Refusal::CodeBefore { was: was.clone(), until })?);
    Ok(())
}

/// Whether an entry makes a tray or a lot.
fn brings(what: &What, subject: &Subject) -> bool {
    match (what, subject) {
        (What::Tray(TrayEntry::Sown(sown)), Subject::Tray(code)) => sown.tray == *code,
        (What::Tray(TrayEntry::PlantsReceived(came)), Subject::Tray(code)) => came.tray == *code,
        (What::Tray(TrayEntry::MovedOn(moved)), Subject::Tray(code)) => moved.to == *code,
        (What::Seed(SeedEntry::LotReceived(came)), Subject::Lot(code)) => came.lot == *code,
        (What::Tray(_) | What::Seed(_) | What::Site(_) | What::Ground(_) | What::Book(_), _)
        | (What::Foreign { .. }, _) => false,
    }
}

/// Lays drafts over the fold, judges them, shows the fold with them to `look`, and takes them out again, whatever was
/// found. Where they are refused nothing is shown.
pub(super) fn with_trial<T>(
    fold: &mut Fold,
    mut drafts: Vec<Draft>,
    by: TrialBy,
    look_up: &mut LookUp<'_>,
    look: impl FnOnce(&Fold, Trial) -> T,
) -> Result<T, DeskError> {
    settle(&mut drafts, by.now)?;
    let mut faults: Vec<Refused> = Vec::new();
    let many = drafts.len() > 1;
    let line = |i: usize| if many { i + 1 } else { 0 };
    let whats = name_check(fold, &mut drafts, &mut faults, &line);
    if !faults.is_empty() {
        faults.sort_by_key(|refused| refused.line);
        return Err(DeskError::Refused(faults));
    }
    drafts.iter_mut().zip(&whats).for_each(|(draft, what)| put_behind_its_coming(fold, draft, what));
    let tried = trial_entries(&drafts, whats, by.moment, by.device);
    let line_of: BTreeMap<&EntryId, usize> = tried.iter().enumerate().map(|(i, entry)| (&entry.id, line(i))).collect();
    look_up(fold, &tried)?;
    let before = fold.stories_now();
    fold.add(tried.iter().cloned());
    let doubts = fold.doubts_since(&before);
    for doubt in &doubts {
        let ours = doubt.entries.iter().find_map(|entry| line_of.get(entry));
        if let (Some(line), Some(why)) = (ours, refused_for(fold, doubt)) {
            faults.push(Refused { line: *line, why });
        }
    }
    faults.sort_by_key(|refused| refused.line);
    let judged = if faults.is_empty() {
        Ok(look(fold, Trial { drafts, tried: tried.clone(), doubts }))
    } else {
        Err(DeskError::Refused(faults))
    };
    fold.take_out(&tried);
    judged
}

/// Why a doubt that a new entry raises about itself is refused; none where it is only told.
pub(super) fn refused_for(fold: &Fold, doubt: &Doubt) -> Option<Refusal> {
    let by_the_book = || doubt.kind.cannot_be_true().then(|| Refusal::Book(doubt.clone()));
    renamed(fold, doubt).or_else(|| before_the_book(fold, doubt)).or_else(by_the_book)
}

fn name_check(
    fold: &Fold,
    drafts: &mut [Draft],
    faults: &mut Vec<Refused>,
    line: &dyn Fn(usize) -> usize,
) -> Vec<What> {
    let mut names = BatchNames::of(fold);
    let mut whats = Vec::with_capacity(drafts.len());
    for (i, draft) in drafts.iter_mut().enumerate() {
        match names.settle(draft).and_then(|what| on_its_bench(fold, draft, what)) {
            Ok(what) => whats.push((i, what)),
            Err(why) => faults.push(Refused { line: line(i), why }),
        }
    }
    for (i, what) in &whats {
        if let Err(why) = names.check(what, drafts[*i].happened).and_then(|()| check_withdrawal(fold, what)) {
            faults.push(Refused { line: line(*i), why });
        }
    }
    whats.into_iter().map(|(_, what)| what).collect()
}

/// What is potted on into a new tray stands where it stood, unless another bench is named: the entry says so.
fn on_its_bench(fold: &Fold, draft: &mut Draft, what: What) -> Result<What, Refusal> {
    let What::Tray(TrayEntry::MovedOn(moved)) = &what else { return Ok(what) };
    let is_new = !fold.trays().contains_key(&moved.to);
    let stood = fold.trays().get(&moved.from).and_then(|from| from.places.last());
    let stood = stood.filter(|spell| spell.from <= draft.happened && is_new && moved.place.is_none());
    match stood.filter(|_| moved.how == MovedHow::PottedOn) {
        Some(spell) => {
            draft.body.insert("place".into(), Value::from(spell.what.as_str()));
            super::names::read(draft)
        }
        None => Ok(what),
    }
}

pub(super) fn check_withdrawal(fold: &Fold, what: &What) -> Result<(), Refusal> {
    let What::Book(BookEntry::Withdrawn(withdrawal)) = what else { return Ok(()) };
    let ledger = fold.ledger();
    for target in &withdrawal.entries {
        if !ledger.holds(target) {
            return Err(Refusal::UnknownEntry(target.clone()));
        }
        if let Some(earlier) = ledger.withdrawal_of(target) {
            return Err(Refusal::AlreadyWithdrawn(target.clone(), earlier.clone()));
        }
    }
    Ok(())
}

/// Whose entries drafts are as long as this copy has written nothing.
pub(super) fn device_of_trials() -> Option<DeviceId> {
    DeviceId::new("zzzzzzzz-trial")
}

/// Entries as the file would make them: of this copy's own device, numbered behind everything it ever wrote; of a new
/// device where it has written nothing yet.
fn trial_entries(drafts: &[Draft], whats: Vec<What>, moment: Moment, device: Option<DeviceId>) -> Vec<Arc<Entry>> {
    const BEHIND_ALL: u64 = 1 << 52;
    let Some(device) = device.or_else(device_of_trials) else { return Vec::new() };
    drafts
        .iter()
        .zip(whats)
        .enumerate()
        .map(|(i, (draft, what))| {
            Arc::new(Entry {
                id: EntryId { device: device.clone(), seq: BEHIND_ALL + i as u64 },
                happened: draft.happened,
                clock: draft.clock,
                recorded: moment,
                who: draft.who.as_str().into(),
                command: BEHIND_ALL,
                what,
            })
        })
        .collect()
}

/// A tray that held nothing yet, because the plants that stood in it came into the book only later.
fn before_the_book(fold: &Fold, doubt: &Doubt) -> Option<Refusal> {
    // A count of them then would stand beside those that came in.
    let (DoubtKind::MoreOutThanStood { tray, stood: 0, .. } | DoubtKind::RiseWithoutSeed { tray, books: 0, .. }) =
        &doubt.kind
    else {
        return None;
    };
    match fold.trays().get(tray)?.origin.as_ref()? {
        Origin::Received { from: ArrivedFrom::Opening, day, .. } if *day > doubt.day => {
            Some(Refusal::BeforeTheBook { tray: tray.clone(), since: *day })
        }
        Origin::Received { .. } | Origin::Sown | Origin::MovedOn(_) => None,
    }
}

/// A tray that is not there because it is called otherwise by then.
fn renamed(fold: &Fold, doubt: &Doubt) -> Option<Refusal> {
    let (DoubtKind::UnknownTray(tray) | DoubtKind::MoreOutThanStood { tray, .. }) = &doubt.kind else { return None };
    let made = fold.trays().get(tray).is_some_and(|story| story.origin.is_some());
    let (is, since) = fold.ledger().renamed(tray).filter(|_| !made)?;
    Some(Refusal::TrayRenamed { was: tray.clone(), is, since })
}
