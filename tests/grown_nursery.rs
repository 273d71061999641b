//! The grown nursery of the benches is a nursery: the desk takes every command of it, and it balances.

use std::collections::BTreeMap;
use std::sync::Arc;

use outplant::base::{Day, DeviceId, EntryId, Moment, TrayCode};
use outplant::desk::{Desk, Now};
use outplant::journal::Journal;
use outplant::nursery::entry::{BookEntry, Entry, What, reading};
use outplant::nursery::envelope::{Draft, canonical};
use outplant::reckon::{Fold, View};
use serde_json::Value;

use crate::support::day;
use crate::support::grown::{DEVICE, Evening, Known, grown, write_grown};

const SEED: u64 = 20_261_125;
const ENTRIES: usize = 3000;
const ENTRIES_OF_TWO_YEARS: usize = 20_000;
const DAYS_OF_THREE_YEARS: usize = 1096;

fn written(evenings: impl Iterator<Item = Evening>) -> (Vec<Arc<Entry>>, Day, BTreeMap<String, usize>, usize) {
    let device = DeviceId::new(DEVICE).unwrap();
    let (mut entries, mut kinds, mut late, mut last) = (Vec::new(), BTreeMap::new(), 0, day("2000-01-01"));
    for evening in evenings {
        last = evening.day;
        for command in &evening.commands {
            let first = entries.len() as u64 + 1;
            for (seq, draft) in (first..).zip(&command.drafts) {
                *kinds.entry(draft.kind.clone()).or_default() += 1;
                late += usize::from(draft.happened < evening.day);
                let id = EntryId { device: device.clone(), seq };
                let sealed = draft.seal(id, command.recorded, first, None);
                entries.push(Arc::new(sealed.open().unwrap()));
            }
        }
    }
    (entries, last, kinds, late)
}

/// The desk writes under a device of its own; withdrawals name entries by it.
fn as_written_by(device: Option<&DeviceId>, draft: &Draft) -> Draft {
    let mut draft = draft.clone();
    if let (Some(Value::Array(entries)), Some(device)) = (draft.body.get_mut("entries"), device) {
        for entry in entries {
            *entry = Value::from(entry.as_str().unwrap().replace(DEVICE, device.as_str()));
        }
    }
    draft
}

#[test]
fn the_desk_takes_every_command_and_every_tray_balances() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("grown.outplant");
    drop(Journal::begin(&file, folder.path()).unwrap());
    let today: Day = day("2027-06-01");
    let now = Now { today, clock: None, moment: Moment::end_of(today, 3.0) };
    let mut desk = Desk::open(&file, folder.path(), now).unwrap();
    let (mut device, mut written) = (None, 0);
    let mut evenings = grown(ENTRIES * 2, SEED);
    for evening in evenings.by_ref() {
        for command in &evening.commands {
            let drafts: Vec<Draft> = command.drafts.iter().map(|one| as_written_by(device.as_ref(), one)).collect();
            let recorded = desk
                .record_at(drafts, command.recorded)
                .unwrap_or_else(|refused| panic!("{}: {refused:?}\n{:#?}", evening.day, command.drafts));
            assert_eq!(recorded.doubts, [], "{}", evening.day);
            written += recorded.entries.len();
            device = device.or_else(|| recorded.entries.first().map(|entry| entry.device.clone()));
        }
        if written >= ENTRIES {
            break;
        }
    }
    assert!(written >= ENTRIES);
    let fold = desk.fold();
    let (living, finished) = (evenings.living(), evenings.finished());
    assert!(living.len() > 20 && finished.len() > 10, "{} live, {} are finished", living.len(), finished.len());
    let unbalanced: Vec<_> = fold.trays().values().filter(|tray| tray.accounts.balance() != 0).collect();
    assert!(unbalanced.is_empty(), "{unbalanced:#?}");
    assert!(fold.beds().values().all(|bed| bed.balance() == 0));
}

#[test]
fn the_books_of_the_generator_are_those_of_the_program() {
    for seed in [SEED, 4, 5] {
        let mut evenings = grown(ENTRIES_OF_TWO_YEARS * 2, seed);
        // The last evening may be cut off within a command.
        let whole = evenings.by_ref().take(DAYS_OF_THREE_YEARS).collect::<Vec<_>>();
        let (entries, last, _, _) = written(whole.into_iter());
        let fold = Fold::new(View { day: last, known: None }, last, entries);
        let stands = |known: &Known| fold.trays()[&TrayCode::new(&known.tray).unwrap()].accounts.standing;
        let (living, finished) = (evenings.living(), evenings.finished());
        living.iter().for_each(|known| assert_eq!(stands(known), u64::from(known.standing), "{seed} {known:?}"));
        finished.iter().for_each(|known| assert_eq!(stands(known), 0, "{seed} {known:?}"));
        assert_eq!(fold.all_doubts(), [], "{seed}");
    }
}

#[test]
fn trays_finish_within_about_a_year_and_all_of_a_nursery_is_in_it() {
    let (entries, last, kinds, late) = written(grown(ENTRIES_OF_TWO_YEARS, SEED));
    let on = |day: Day| Fold::new(View { day, known: None }, last, entries.iter().cloned());
    let fold = on(last);
    let picture = fold.picture();
    let finished = picture.trays.values().filter(|tray| tray.standing == 0).count();
    let told = format!("{finished} of {} trays; {late} late; {kinds:#?}", picture.trays.len());
    assert!(finished * 10 > picture.trays.len() * 6, "{told}");
    for (code, story) in fold.trays().iter().filter(|(_, story)| story.accounts.standing > 0) {
        let made = story.made_on.unwrap();
        assert!(picture.day.days_since(made) < 400, "{code} was made on {made} and still stands");
    }
    assert!(picture.trays.values().any(|tray| tray.ready), "no tray is ready; {told}");
    // On a dry day nothing goes out.
    let fits = |back: i32| on(last.plus(-back)).picture().pairs.iter().any(|pair| pair.fits);
    assert!((0..21).any(fits), "nothing could go out for three weeks; {told}");
    let share = |count: usize| count as f64 / ENTRIES_OF_TWO_YEARS as f64;
    assert!((0.015..0.03).contains(&share(late)), "{told}");
    assert!((0.002..0.005).contains(&share(kinds["withdrawn"])), "{told}");
    for kind in ["relabelled", "let_go", "plants_lost", "survival_counted", "treated", "lot_tested", "stocktaken"] {
        assert!(kinds.contains_key(kind), "no {kind}; {told}");
    }
    assert!(picture.doubts.len() < 20, "{:#?}", picture.doubts);
    assert!(fold.trays().values().all(|tray| tray.accounts.balance() == 0));
    assert!(fold.beds().values().all(|bed| bed.balance() == 0));
}

#[test]
fn the_same_seed_writes_the_same_book_and_its_chain_holds() {
    let folder = tempfile::tempdir().unwrap();
    let file = |name: &str| folder.path().join(name);
    let book = |name: &str, seed: u64| {
        let book = write_grown(&file(name), folder.path(), ENTRIES, seed).unwrap();
        assert!(!book.living.is_empty() && !book.finished.is_empty(), "{name}");
        assert!(book.finished.iter().all(|known| known.standing > 0 && known.day < book.last_day));
        Journal::open_read_only(&file(name)).unwrap().entries().unwrap()
    };
    let (one, same, other) = (book("one", SEED), book("same", SEED), book("other", SEED + 1));
    assert_eq!(one.len(), ENTRIES);
    assert!(one == same, "the same seed wrote another book");
    assert!(one != other, "another seed wrote the same book");
    assert!(outplant::journal::check(&file("one")).unwrap().faults.is_empty());
    let mut taken_back_twice = one.iter().filter(|entry| match &entry.what {
        What::Book(BookEntry::Withdrawn(gone)) => {
            gone.entries.iter().any(|id| one.iter().any(|target| target.id == *id && target.what.kind() == "withdrawn"))
        }
        _ => false,
    });
    assert!(taken_back_twice.next().is_some(), "no withdrawal was taken back");
}

#[test]
fn bodies_are_in_the_form_that_is_stored() {
    for draft in grown(ENTRIES, SEED).flat_map(|evening| evening.commands).flat_map(|command| command.drafts) {
        let settled = reading::settle_body(&draft.kind, &draft.body).unwrap_or_else(|fault| panic!("{fault:?}"));
        let (given, stored) = (canonical(&Value::Object(draft.body)), canonical(&Value::Object(settled)));
        assert_eq!(given, stored, "{}", draft.kind);
    }
}
