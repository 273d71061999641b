//! The grown nursery of the benches is a nursery: the desk takes every command of it, and it balances.

use std::collections::BTreeMap;
use std::sync::Arc;

use outplant::base::{Day, DeviceId, EntryId, Moment};
use outplant::desk::{Desk, Now};
use outplant::journal::Journal;
use outplant::nursery::entry::reading;
use outplant::nursery::envelope::{Draft, canonical};
use outplant::reckon::{Fold, View};
use serde_json::Value;

use crate::support::day;
use crate::support::grown::{DEVICE, Evening, grown, write_grown};

const SEED: u64 = 20_261_125;

fn folded(evenings: impl Iterator<Item = Evening>) -> (Fold, BTreeMap<String, usize>, usize) {
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
    (Fold::new(View { day: last, known: None }, last, entries), kinds, late)
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
    const ENTRIES: usize = 3000;
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("grown.outplant");
    drop(Journal::begin(&file, folder.path()).unwrap());
    let today: Day = day("2027-01-01");
    let now = Now { today, clock: None, moment: Moment::end_of(today, 3.0) };
    let mut desk = Desk::open(&file, folder.path(), now).unwrap();
    let (mut device, mut written) = (None, 0);
    for evening in grown(ENTRIES, SEED) {
        for command in &evening.commands {
            let drafts: Vec<Draft> = command.drafts.iter().map(|one| as_written_by(device.as_ref(), one)).collect();
            let recorded = desk
                .record_at(drafts, command.recorded)
                .unwrap_or_else(|refused| panic!("{}: {refused:?}\n{:#?}", evening.day, command.drafts));
            assert_eq!(recorded.doubts, [], "{}", evening.day);
            written += recorded.entries.len();
            device = device.or_else(|| recorded.entries.first().map(|entry| entry.device.clone()));
        }
    }
    assert_eq!(written, ENTRIES);
    let fold = desk.fold();
    let unbalanced: Vec<_> = fold.trays().values().filter(|tray| tray.accounts.balance() != 0).collect();
    assert!(unbalanced.is_empty(), "{unbalanced:#?}");
    assert!(fold.beds().values().all(|bed| bed.balance() == 0));
}

#[test]
fn trays_finish_within_about_a_year_and_all_of_a_nursery_is_in_it() {
    let (fold, kinds, late) = folded(grown(12_000, SEED));
    let picture = fold.picture();
    let finished = picture.trays.values().filter(|tray| tray.standing == 0).count();
    let living = picture.trays.len() - finished;
    println!("{finished} trays finished, {living} living, {} beds, {} lots", picture.beds.len(), picture.lots.len());
    println!("{late} late; {} doubts; {kinds:#?}", picture.doubts.len());
}

#[test]
fn bodies_are_in_the_form_that_is_stored() {
    for draft in grown(3000, SEED).flat_map(|evening| evening.commands).flat_map(|command| command.drafts) {
        let settled = reading::settle_body(&draft.kind, &draft.body).unwrap_or_else(|fault| panic!("{fault:?}"));
        let (given, stored) = (canonical(&Value::Object(draft.body)), canonical(&Value::Object(settled)));
        assert_eq!(given, stored, "{}", draft.kind);
    }
}
