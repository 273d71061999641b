use rusqlite::TransactionBehavior;
use std::fs;

use super::*;
use crate::base::EntryId;
use crate::journal::{Note, rows};

fn write(journal: &mut Journal) -> EntryId {
    journal.append(&[counted(41)], evening()).unwrap().remove(0).id
}

/// Writes an entry and is gone before the device is noted; without `commit` gone before the entry is in the file.
fn write_and_die(mut journal: Journal, commit: bool) {
    let Journal { connection, shelf, notes, .. } = &mut journal;
    let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate).unwrap();
    let reservation = shelf.reserve(&transaction, 1, notes).unwrap();
    let id = EntryId { device: reservation.device.clone(), seq: reservation.head.seq + 1 };
    let sealed = counted(7).seal(id.clone(), evening(), id.seq, reservation.head.hash);
    rows::insert(&transaction, &sealed).unwrap();
    if commit {
        transaction.commit().unwrap();
    }
}

#[test]
fn a_file_goes_on_as_the_same_device_after_reopening() {
    let place = Place::new();
    let mut journal = place.begin();
    assert_eq!(journal.device().unwrap(), None);
    let first = write(&mut journal);
    drop(journal);
    let mut journal = place.open();
    assert_eq!(journal.device().unwrap(), Some(first.device.clone()));
    assert_eq!(write(&mut journal), EntryId { device: first.device.clone(), seq: 2 });
    assert_eq!(journal.own_devices(), std::slice::from_ref(&first.device));
    let word = first.device.as_str();
    assert!(word.len() == 8 && word.starts_with(|c: char| c.is_ascii_lowercase()), "{word}");
}

#[test]
fn two_programs_on_one_file_write_as_one_device() {
    let place = Place::new();
    let (mut one, mut other) = (place.begin(), place.open());
    let device = write(&mut one).device;
    for seq in 2..8 {
        let writer = if seq % 2 == 0 { &mut other } else { &mut one };
        assert_eq!(write(writer), EntryId { device: device.clone(), seq });
    }
}

#[test]
fn a_copied_file_goes_on_as_another_device_and_each_keeps_its_own() {
    let place = Place::new();
    let mut journal = place.begin();
    let first = write(&mut journal).device;
    drop(journal);
    fs::copy(place.file(), place.path("copy.outplant")).unwrap();
    let (mut original, mut copy) = (place.open(), Journal::open(&place.path("copy.outplant"), &place.shelf()).unwrap());
    assert_eq!(write(&mut original), EntryId { device: first.clone(), seq: 2 });
    let second = write(&mut copy);
    assert_ne!(second.device, first);
    assert_eq!(second.seq, 1);
    assert_eq!(copy.notes(), [Note::NewDevice { before: first.clone(), now: second.device.clone() }]);
    assert_eq!(write(&mut original), EntryId { device: first, seq: 3 });
    assert_eq!(write(&mut copy), EntryId { device: second.device, seq: 2 });
    let taken = original.append_sealed(sealed(&copy), &[], evening()).unwrap();
    assert_eq!((taken.added, taken.already), (2, 1), "both copies come together without a fork");
}

#[test]
fn a_copy_on_another_machine_is_another_device() {
    let place = Place::new();
    let mut journal = place.begin();
    let first = write(&mut journal).device;
    drop(journal);
    let mut elsewhere = Journal::open(&place.file(), &place.folder.path().join("other shelf")).unwrap();
    assert_ne!(write(&mut elsewhere).device, first);
}

#[test]
fn a_file_restored_from_an_older_copy_goes_on_as_another_device() {
    let place = Place::new();
    let mut journal = place.begin();
    let first = write(&mut journal).device;
    journal.backup(&place.path("older")).unwrap();
    write(&mut journal);
    let newer = sealed(&journal);
    drop(journal);
    fs::copy(place.path("older"), place.file()).unwrap();
    let mut restored = place.open();
    assert_eq!(restored.device().unwrap(), None);
    let id = write(&mut restored);
    assert_ne!(id.device, first);
    assert_eq!(
        restored.append_sealed(newer, &[], evening()).unwrap().added,
        1,
        "what was lost comes back by an import"
    );
    assert_eq!(write(&mut restored), EntryId { device: id.device, seq: 2 });
}

#[test]
fn a_file_with_as_many_entries_but_another_last_one_goes_on_as_another_device() {
    let place = Place::new();
    let mut journal = place.begin();
    let first = write(&mut journal).device;
    drop(journal);
    // A cloned machine: the file and the folder beside the settings. Its own entry 2 comes back under the first's name.
    let (cloned_file, cloned_shelf) = (place.path("clone.outplant"), place.folder.path().join("cloned shelf"));
    fs::copy(place.file(), &cloned_file).unwrap();
    fs::create_dir(&cloned_shelf).unwrap();
    fs::copy(place.shelf().join("devices.json"), cloned_shelf.join("devices.json")).unwrap();
    let mut clone = Journal::open(&cloned_file, &cloned_shelf).unwrap();
    assert_eq!(clone.append(&[counted(12)], evening()).unwrap()[0].id.seq, 2);
    drop(clone);
    assert_eq!(write(&mut place.open()).seq, 2);
    fs::copy(&cloned_file, place.file()).unwrap();
    assert_ne!(write(&mut place.open()).device, first);
}

#[test]
fn a_crash_between_commit_and_note_keeps_the_device() {
    let place = Place::new();
    let mut journal = place.begin();
    let first = write(&mut journal).device;
    write_and_die(journal, true);
    assert_eq!(write(&mut place.open()), EntryId { device: first, seq: 3 });
    assert_eq!(place.open().entries().unwrap().len(), 3);
}

#[test]
fn a_crash_before_the_commit_keeps_the_device_and_a_copy_from_then_does_not_get_it() {
    let place = Place::new();
    let mut journal = place.begin();
    let first = write(&mut journal).device;
    write_and_die(journal, false);
    fs::copy(place.file(), place.path("copy.outplant")).unwrap();
    let mut copy = Journal::open(&place.path("copy.outplant"), &place.shelf()).unwrap();
    assert_ne!(write(&mut copy).device, first);
    assert_eq!(write(&mut place.open()), EntryId { device: first, seq: 2 });
}

#[test]
fn opening_after_a_crash_notes_what_was_committed_so_that_an_older_copy_is_known() {
    let place = Place::new();
    let mut journal = place.begin();
    let first = write(&mut journal).device;
    journal.backup(&place.path("older")).unwrap();
    write_and_die(journal, true);
    drop(place.open());
    fs::copy(place.path("older"), place.file()).unwrap();
    assert_ne!(write(&mut place.open()).device, first);
}

#[test]
fn where_nothing_can_be_noted_each_run_is_a_device_of_its_own() {
    let place = Place::new();
    fs::write(place.shelf(), "a file where a folder should be").unwrap();
    let mut journal = place.begin();
    let first = write(&mut journal);
    assert_eq!(write(&mut journal), EntryId { device: first.device.clone(), seq: 2 });
    assert!(
        matches!(journal.notes(), [Note::DeviceOfThisRun { device, .. }] if *device == first.device),
        "{:?}",
        journal.notes()
    );
    assert_eq!(journal.device().unwrap(), Some(first.device.clone()));
    drop(journal);
    assert_ne!(write(&mut place.open()).device, first.device);
}

#[test]
fn a_note_that_cannot_be_read_is_put_aside() {
    let place = Place::new();
    let mut journal = place.begin();
    let first = write(&mut journal).device;
    fs::write(place.shelf().join("devices.json"), "{\"version\":1,").unwrap();
    let second = write(&mut journal).device;
    assert_ne!(second, first);
    let [Note::DevicesPutAside(aside)] = journal.notes() else { panic!("{:?}", journal.notes()) };
    assert_eq!(fs::read_to_string(aside).unwrap(), "{\"version\":1,");
    assert_eq!(write(&mut place.open()), EntryId { device: second, seq: 2 });
}
