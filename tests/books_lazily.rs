//! A book of which only the kept stories are in memory says the same as one that is read whole: wherever the stories were
//! kept, whatever came after, in whatever order, and from whatever day it is looked at.

use std::collections::BTreeSet;
use std::sync::Arc;

use outplant::base::{Day, Moment};
use outplant::nursery::entry::subject::{Subject, affects_descendants, subjects};
use outplant::nursery::entry::{BookEntry, Entry, SiteEntry, TrayEntry, What};
use outplant::reckon::archived::{bed_archived_from, is_archived, lot_archived_from, tray_archived_from};
use outplant::reckon::stock::TrayStory;
use outplant::reckon::{Fold, Ledger, Stories, View, Wanted};
use proptest::prelude::*;

use crate::books_properties::{DAYS, FIRST_DAY, entries, said};
use crate::support::grown::{DEVICE, grown};

fn on(number: i32) -> Day {
    Day::from_number(FIRST_DAY + number)
}

/// What describes the site, changes of label and withdrawals: always in memory.
fn is_always_there(entry: &Entry) -> bool {
    let about_site = |subject: &Subject| matches!(subject, Subject::Site | Subject::Place(_));
    matches!(&entry.what, What::Book(BookEntry::Withdrawn(_)) | What::Tray(TrayEntry::Relabelled(_)))
        || subjects(&entry.what).iter().any(about_site)
}

fn describes_species(entry: &Entry) -> bool {
    matches!(&entry.what, What::Site(SiteEntry::SpeciesSet(_)))
}

/// What the file's lookup does, over entries in memory.
fn look_up(fold: &mut Fold, asked: &[Arc<Entry>], book: &[Arc<Entry>]) {
    loop {
        let wanted = fold.wanting(asked);
        if wanted.is_empty() {
            break;
        }
        let mut found: Vec<Arc<Entry>> = Vec::new();
        for one in &wanted {
            let (subject, only_lending) = match one {
                Wanted::All(subject) => (subject, false),
                Wanted::Lending(subject) => (subject, true),
                Wanted::Entry(id) => {
                    found.extend(book.iter().filter(|entry| entry.id == *id).cloned());
                    continue;
                }
                Wanted::Command(device, command, day) => {
                    let of_it = |entry: &&Arc<Entry>| {
                        (&entry.id.device, entry.command, entry.happened) == (device, *command, *day)
                            && entry.clock.is_none()
                    };
                    found.extend(book.iter().filter(of_it).cloned());
                    continue;
                }
            };
            let names: BTreeSet<Subject> = match subject {
                Subject::Tray(code) => fold.ledger().codes_of(code).into_iter().map(Subject::Tray).collect(),
                Subject::Lot(_) | Subject::Bed(_) | Subject::Place(_) | Subject::Site => {
                    BTreeSet::from([subject.clone()])
                }
            };
            let about = |entry: &&Arc<Entry>| subjects(&entry.what).iter().any(|subject| names.contains(subject));
            found.extend(
                book.iter().filter(about).filter(|entry| !only_lending || affects_descendants(&entry.what)).cloned(),
            );
        }
        fold.take_in(&wanted, found);
    }
    fold.fold_looked_up();
}

/// As the file keeps it.
fn kept<T: serde::Serialize + serde::de::DeserializeOwned>(story: &T) -> T {
    serde_json::from_str(&serde_json::to_string(story).unwrap()).unwrap()
}

/// The stories of a fold that do not rest on a day, and those of trays that rest.
fn kept_stories(fold: &Fold, day: Day) -> (Stories, Vec<Arc<TrayStory>>) {
    let trays = fold.trays().values().filter(|story| !is_archived(tray_archived_from(story), day));
    let lots = fold.lots().values().filter(|story| !is_archived(lot_archived_from(story), day));
    let beds = fold.beds().values().filter(|story| !is_archived(bed_archived_from(story), day));
    let stories = Stories {
        trays: trays.map(|story| kept(&**story)).collect(),
        lots: lots.map(|story| kept(&**story)).collect(),
        beds: beds.map(|story| kept(&**story)).collect(),
    };
    let archived = fold.trays().values().filter(|story| is_archived(tray_archived_from(story), day));
    (stories, archived.map(|story| Arc::new(kept(&**story))).collect())
}

/// A fold that goes on from stories kept on a day, of the entries that were there then.
fn going_on(first: &[Arc<Entry>], kept_on: Day, today: Day) -> (Fold, Fold) {
    let then = View { day: kept_on, known: None };
    let whole = Fold::new(then, today, first.iter().cloned());
    let (stories, _) = kept_stories(&whole, kept_on);
    let base = first.iter().filter(|entry| is_always_there(entry)).cloned();
    let mut fold = Fold::from_stories(then, today, base, stories);
    // What was of a day still to come when the stories were kept.
    let coming: Vec<Arc<Entry>> = first.iter().filter(|entry| entry.happened > kept_on).cloned().collect();
    let (reaching, new): (Vec<_>, Vec<_>) = coming.into_iter().partition(|entry| Ledger::belongs(then, entry));
    look_up(&mut fold, &new, first);
    look_up(&mut fold, &reaching, first);
    fold.go_to(View { day: today, known: None }, new, &reaching);
    let whole = Fold::new(View { day: today, known: None }, today, first.iter().cloned());
    fold.put_archived(kept_stories(&whole, today).1);
    (fold, whole)
}

/// Whether two folds say the same; the first line in which they differ, with some around it.
fn same(fold: &Fold, whole: &Fold) -> Result<(), TestCaseError> {
    let (ours, theirs) = (said(&fold.picture()), said(&whole.picture()));
    let differs = ours.lines().zip(theirs.lines()).position(|(ours, theirs)| ours != theirs);
    let around =
        |text: &str, at: usize| text.lines().skip(at.saturating_sub(12)).take(16).collect::<Vec<_>>().join("\n");
    match differs {
        Some(at) => Err(TestCaseError::fail(format!("kept:\n{}\nwhole:\n{}", around(&ours, at), around(&theirs, at)))),
        None => {
            prop_assert_eq!(ours.len(), theirs.len());
            Ok(())
        }
    }
}

proptest! {
    #![proptest_config(crate::support::cases(96))]

    #[test]
    fn going_on_from_kept_stories_is_as_reading_all(
        all in entries(),
        split in 0.0..1.0f64,
        kept_on in 0..DAYS + 1400,
        later in 0..500i32,
        step in 1usize..9,
    ) {
        let all: Vec<Arc<Entry>> = all.into_iter().filter(|entry| !describes_species(entry)).collect();
        let (first, rest) = all.split_at((all.len() as f64 * split) as usize);
        let (kept_on, today) = (on(kept_on), on(kept_on + later));
        let (mut fold, whole) = going_on(first, kept_on, today);
        same(&fold, &whole)?;
        let mut there = first.to_vec();
        for part in rest.chunks(step) {
            there.extend(part.iter().cloned());
            look_up(&mut fold, part, &there);
            fold.add(part.iter().cloned());
            let whole = Fold::new(View { day: today, known: None }, today, there.iter().cloned());
            same(&fold, &whole)?;
        }
    }

    #[test]
    fn another_view_of_kept_stories_is_as_reading_all_for_it(
        all in entries(),
        today in 0..DAYS + 1400,
        back in 0..600i32,
        known in prop::option::of(0..DAYS + 40),
    ) {
        let all: Vec<Arc<Entry>> = all.into_iter().filter(|entry| !describes_species(entry)).collect();
        let view = View { day: on(today - back), known: known.map(|number| Moment::end_of(on(number), 0.0)) };
        let today = on(today);
        let (fold, _) = going_on(&all, today, today);
        let whole = Fold::new(view, today, all.iter().cloned());
        let outside = |entry: &&Arc<Entry>| !Ledger::belongs(view, entry);
        let later: Vec<Arc<Entry>> = all.iter().filter(outside).cloned().collect();
        let reaching: Vec<Arc<Entry>> =
            all.iter().filter(|entry| !outside(entry) && entry.happened > view.day).cloned().collect();
        let mut fold = fold;
        // Stories that rest today and did not yet then.
        let now = Fold::new(View { day: today, known: None }, today, all.iter().cloned());
        fold.put(kept_stories(&now, view.day).0);
        let both: Vec<Arc<Entry>> = later.iter().chain(&reaching).cloned().collect();
        look_up(&mut fold, &both, &all);
        let mut then = fold.at(view, &later, &reaching);
        then.put_archived(kept_stories(&now, view.day).1);
        same(&then, &whole)?;
    }
}

/// What [`outplant::reckon::FOLD_MARK`] stands for: the mark, and the sum of everything folded under it.
const MARKED: (u32, u64) = (34, 9_070_637_521_058_906_673);

#[test]
fn the_mark_of_the_fold_is_raised_when_what_it_folds_changes() {
    let mut entries = Vec::new();
    let device = outplant::base::DeviceId::new(DEVICE).unwrap();
    for command in grown(3000, 1).flat_map(|evening| evening.commands) {
        let first = entries.len() as u64 + 1;
        for (seq, draft) in (first..).zip(&command.drafts) {
            let id = outplant::base::EntryId { device: device.clone(), seq };
            entries.push(Arc::new(draft.seal(id, command.recorded, first, None).open().unwrap()));
        }
    }
    let last = entries.iter().map(|entry| entry.happened).max().unwrap();
    let fold = Fold::new(View { day: last, known: None }, last, entries);
    let trays = fold.trays().values().map(|story| serde_json::to_string(&**story).unwrap());
    let lots = fold.lots().values().map(|story| serde_json::to_string(&**story).unwrap());
    let beds = fold.beds().values().map(|story| serde_json::to_string(&**story).unwrap());
    let profiles = fold.site().species.iter().map(|(key, profile)| format!("{key} {profile:?}"));
    // FNV-1a, 64 bits.
    let sum = trays
        .chain(lots)
        .chain(beds)
        .chain(profiles)
        .flat_map(String::into_bytes)
        .fold(0xcbf2_9ce4_8422_2325_u64, |sum, byte| (sum ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3));
    assert_eq!(
        (outplant::reckon::FOLD_MARK, sum),
        MARKED,
        "what is folded changed: raise FOLD_MARK in src/reckon/fold/mod.rs, so that no book goes on from older stories, \
         and write the new pair here"
    );
}
