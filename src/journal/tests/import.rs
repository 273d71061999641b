use super::*;
use crate::base::{DeviceId, EntryId};
use crate::journal::check;
use crate::nursery::entry::What;
use crate::nursery::envelope::Hash;

/// Another nursery's book with `count` entries.
fn elsewhere(count: u32) -> Vec<Sealed> {
    let place = Place::new();
    let mut journal = place.begin();
    for standing in 0..count {
        journal.append(&[counted(standing)], evening()).unwrap();
    }
    sealed(&journal)
}

fn resealed(mut sealed: Sealed) -> Sealed {
    sealed.hash = sealed.reckoned_hash();
    sealed
}

/// Expects a refusal that leaves nothing behind, not even the drafts that came with it.
fn refused(journal: &mut Journal, known: Vec<Sealed>) -> JournalError {
    let before = lines(journal);
    let error = journal.append_sealed(known, &[counted(5)], evening()).unwrap_err();
    assert_eq!(lines(journal), before, "something was written");
    error
}

#[test]
fn an_export_taken_into_a_fresh_file_gives_identical_lines_and_taken_twice_changes_nothing() {
    let place = Place::new();
    let mut theirs = elsewhere(3);
    theirs.extend(elsewhere(2));
    let mut journal = place.begin();
    let backwards: Vec<_> = theirs.iter().rev().cloned().collect();
    let taken = journal.append_sealed(backwards, &[], evening()).unwrap();
    assert_eq!((taken.added, taken.already, taken.written.len()), (5, 0, 0));
    let mut expected: Vec<_> = theirs.iter().map(Sealed::line).collect();
    theirs.sort_by(|a, b| a.id.cmp(&b.id));
    expected.sort();
    let mut found = lines(&journal);
    assert_eq!(sealed(&journal), theirs, "in the order of device and number");
    found.sort();
    assert_eq!(found, expected);
    let again = journal.append_sealed(theirs, &[], evening()).unwrap();
    assert_eq!((again.added, again.already), (0, 5));
    assert_eq!(journal.entries().unwrap().len(), 5);
    assert_eq!(journal.device().unwrap(), None, "taking is not writing");
}

#[test]
fn lines_with_and_without_an_identity_go_in_together() {
    let place = Place::new();
    let mut journal = place.begin();
    let taken = journal.append_sealed(elsewhere(2), &[counted(9), counted(8)], evening()).unwrap();
    assert_eq!((taken.added, taken.already, taken.written.len()), (2, 0, 2));
    assert_eq!(journal.entries().unwrap().len(), 4);
    assert!(check(&place.file()).unwrap().faults.is_empty());
}

#[test]
fn a_fork_is_refused() {
    let place = Place::new();
    let mut journal = place.begin();
    let theirs = elsewhere(2);
    journal.append_sealed(theirs.clone(), &[], evening()).unwrap();
    let mut other = theirs[1].clone();
    other.body = r#"{"standing":99,"tray":"cof-031"}"#.into();
    let other = resealed(other);
    assert_eq!(refused(&mut journal, vec![other.clone()]), JournalError::Fork { entry: other.id.clone() });
    let both = vec![theirs[0].clone(), theirs[1].clone(), other.clone()];
    assert_eq!(
        refused(&mut Place::new().begin(), both),
        JournalError::Fork { entry: other.id },
        "also inside one import"
    );
}

#[test]
fn a_gap_is_refused_naming_the_device_and_the_missing_range() {
    let place = Place::new();
    let theirs = elsewhere(5);
    let device = theirs[0].id.device.clone();
    let mut journal = place.begin();
    let some = vec![theirs[0].clone(), theirs[4].clone()];
    assert_eq!(refused(&mut journal, some), JournalError::Gap { device: device.clone(), from: 2, to: 4 });
    assert_eq!(refused(&mut journal, theirs[2..].to_vec()), JournalError::Gap { device, from: 1, to: 2 });
}

#[test]
fn a_wrong_hash_or_a_wrong_previous_entry_is_refused() {
    let place = Place::new();
    let mut journal = place.begin();
    let mut theirs = elsewhere(3);
    let changes: [fn(&mut Sealed); 5] = [
        |sealed| sealed.body = sealed.body.replace("cof-031", "cof-032"),
        |sealed| sealed.who = "ana".into(),
        |sealed| sealed.recorded = moment("2026-03-15T00:00:00Z"),
        |sealed| sealed.command += 1,
        |sealed| sealed.hash = Hash([7; 32]),
    ];
    for change in changes {
        let mut changed = theirs.clone();
        change(&mut changed[1]);
        let entry = changed[1].id.clone();
        assert_eq!(refused(&mut journal, changed), JournalError::WrongHash { entry });
    }
    theirs[2].prev = Some(Hash([7; 32]));
    theirs[2] = resealed(theirs[2].clone());
    let entry = theirs[2].id.clone();
    assert_eq!(refused(&mut journal, theirs), JournalError::WrongPrevious { entry });
}

#[test]
fn another_spelling_of_the_same_body_is_stored_canonically() {
    let place = Place::new();
    let mut journal = place.begin();
    let mut theirs = elsewhere(1);
    let line = theirs[0].line();
    theirs[0].body = "{ \"tray\":\"cof\\u002d031\", \"standing\": 0.0 }".into();
    journal.append_sealed(theirs, &[], evening()).unwrap();
    assert_eq!(lines(&journal), [line]);
}

#[test]
fn a_body_with_a_field_of_the_envelope_is_refused_for_the_hash_would_not_cover_it() {
    let place = Place::new();
    let mut journal = place.begin();
    let mut theirs = elsewhere(1);
    theirs[0].body = theirs[0].body.replace('{', r#"{"who":"someone else","#);
    assert_eq!(theirs[0].reckoned_hash(), theirs[0].hash, "the hash cannot see it");
    assert!(matches!(refused(&mut journal, theirs), JournalError::Damaged { entry: Some(_), .. }));
}

/// What a newer version may have written: unknown kinds, unknown fields, unknown words.
#[test]
fn entries_of_a_newer_version_are_kept_byte_for_byte_and_read_as_far_as_they_can_be() {
    let place = Place::new();
    let mut journal = place.begin();
    let device = DeviceId::new("newer").unwrap();
    let bodies = [
        ("hail_fell", json!({"stones_mm": 12})),
        ("counted", json!({"tray": "cof-031", "standing": 41, "by_drone": true})),
        ("measured", json!({"tray": "cof-031", "plants": [{"height_cm": 20, "crown_cm": 9}]})),
        ("plug_checked", json!({"tray": "cof-031", "roots": "glows"})),
    ];
    let mut theirs: Vec<Sealed> = Vec::new();
    for (seq, (kind, body)) in (1..).zip(bodies) {
        let prev = theirs.last().map(|last| last.hash);
        theirs.push(draft(kind, body).seal(EntryId { device: device.clone(), seq }, evening(), seq, prev));
    }
    journal.append_sealed(theirs.clone(), &[], evening()).unwrap();
    assert_eq!(sealed(&journal), theirs);
    let entries = journal.entries().unwrap();
    assert!(matches!(&entries[0].what, What::Foreign { kind, .. } if &**kind == "hail_fell"));
    assert_eq!(entries[1].what, counted(41).seal(theirs[1].id.clone(), evening(), 1, None).open().unwrap().what);
    assert!(matches!(&entries[2].what, What::Tray(_)));
    assert!(matches!(&entries[3].what, What::Foreign { kind, .. } if &**kind == "plug_checked"));
    let report = check(&place.file()).unwrap();
    assert_eq!(report.faults, []);
    assert_eq!(report.unknown_kinds, 1);
    assert_eq!(report.of_newer_version, theirs[1..].iter().map(|sealed| sealed.id.clone()).collect::<Vec<_>>());
}
