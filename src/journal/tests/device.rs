use rusqlite::TransactionBehavior;
use std::fs;

use super::*;
use crate::base::EntryId;
use crate::journal::device::Head;
use crate::journal::{Gone, Note, check_with_note, rows, untold};

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
fn a_home_copied_with_its_settings_is_another_device() {
    let place = Place::new();
    let mut journal = place.begin();
    let first = write(&mut journal).device;
    drop(journal);
    let (copied_file, copied_shelf) = (place.path("copied.outplant"), place.folder.path().join("copied shelf"));
    fs::copy(place.file(), &copied_file).unwrap();
    fs::create_dir_all(copied_shelf.join("devices")).unwrap();
    fs::copy(place.note(), copied_shelf.join("devices").join(place.note().file_name().unwrap())).unwrap();
    assert_ne!(write(&mut Journal::open(&copied_file, &copied_shelf).unwrap()).device, first);
    // What was only moved goes on.
    let moved = place.path("moved.outplant");
    fs::rename(place.file(), &moved).unwrap();
    assert_eq!(write(&mut Journal::open(&moved, &place.shelf()).unwrap()).device, first);
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
    // A cloned disk: the file and the folder beside the settings, on a machine that cannot be told from the first. Its own
    // entry 2 comes back under the first's name.
    let (cloned_file, cloned_shelf) = (place.path("clone.outplant"), place.folder.path().join("cloned shelf"));
    fs::copy(place.file(), &cloned_file).unwrap();
    fs::create_dir_all(cloned_shelf.join("devices")).unwrap();
    // There it lies at the same place; here that has to be said.
    let there = |file: &std::path::Path| fs::canonicalize(file).unwrap().display().to_string();
    let note = fs::read_to_string(place.note()).unwrap().replace(&there(&place.file()), &there(&cloned_file));
    fs::write(cloned_shelf.join("devices").join(place.note().file_name().unwrap()), note).unwrap();
    let mut clone = Journal::open(&cloned_file, &cloned_shelf).unwrap();
    assert_eq!(clone.append(&[counted(12)], evening()).unwrap()[0].id.seq, 2);
    drop(clone);
    assert_eq!(write(&mut place.open()).seq, 2);
    fs::copy(&cloned_file, place.file()).unwrap();
    assert_ne!(write(&mut place.open()).device, first);
}

/// Changes the note of a nursery as another program could have left it.
fn change_note(place: &Place, change: impl Fn(&mut serde_json::Value)) {
    let mut note = serde_json::from_str(&fs::read_to_string(place.note()).unwrap()).unwrap();
    change(&mut note);
    fs::write(place.note(), note.to_string()).unwrap();
}

#[test]
fn a_note_of_another_machine_is_not_gone_on_with_and_that_is_said_once() {
    let place = Place::new();
    let mut journal = place.begin();
    let first = write(&mut journal).device;
    drop(journal);
    change_note(&place, |note| note["devices"][0]["machine"] = "another".into());
    let mut journal = place.open();
    let second = write(&mut journal).device;
    assert_ne!(second, first);
    assert_eq!(journal.notes(), [Note::NewDevice { before: first, now: second.clone() }]);
    drop(journal);
    let mut journal = place.open();
    assert_eq!(write(&mut journal), EntryId { device: second, seq: 2 });
    assert_eq!(journal.notes(), []);
}

#[test]
fn a_note_of_an_earlier_version_for_all_nurseries_is_gone_on_with() {
    let place = Place::new();
    let mut journal = place.begin();
    let first = write(&mut journal).device;
    let file_id = journal.file_id().to_string();
    drop(journal);
    let mut devices: serde_json::Value = serde_json::from_str(&fs::read_to_string(place.note()).unwrap()).unwrap();
    devices["devices"][0].as_object_mut().unwrap().remove("machine");
    let of_all = serde_json::json!({"version": 1, "files": {file_id: devices["devices"]}});
    fs::remove_dir_all(place.shelf().join("devices")).unwrap();
    fs::write(place.shelf().join("devices.json"), of_all.to_string()).unwrap();
    assert_eq!(write(&mut place.open()), EntryId { device: first.clone(), seq: 2 });
    assert_eq!(write(&mut place.open()), EntryId { device: first, seq: 3 }, "from the note of its own");
}

#[test]
fn what_was_saved_and_is_gone_is_said_until_it_is_back_or_given_up() {
    let place = Place::new();
    let mut journal = place.begin();
    let first = write(&mut journal).device;
    journal.backup(&place.path("older")).unwrap();
    write(&mut journal);
    write(&mut journal);
    let newer = sealed(&journal);
    drop(journal);
    fs::copy(place.path("older"), place.file()).unwrap();
    let gone = Note::Gone(Gone { device: first.clone(), from: 2, to: 3 });
    let mut journal = place.open();
    assert_eq!(journal.notes(), std::slice::from_ref(&gone));
    write(&mut journal);
    write(&mut journal);
    drop(journal);
    assert_eq!(place.open().notes(), std::slice::from_ref(&gone), "writing on does not make it forgotten");
    let report = check_with_note(&place.file(), Some(&place.shelf()), &mut untold).unwrap();
    assert_eq!(report.faults.len(), 1, "{:?}", report.faults);
    // It comes back by an import.
    let mut journal = place.open();
    journal.append_sealed(newer, &[], evening()).unwrap();
    drop(journal);
    assert_eq!(place.open().notes(), []);
    // Gone again, and given up.
    fs::copy(place.path("older"), place.file()).unwrap();
    let mut journal = place.open();
    assert_eq!(journal.notes().len(), 2, "both devices: {:?}", journal.notes());
    journal.give_up_what_is_gone(&EntryId { device: first, seq: 1 }).unwrap();
    assert_eq!(journal.notes(), []);
    drop(journal);
    assert_eq!(place.open().notes(), []);
}

#[test]
fn a_copy_that_lies_elsewhere_misses_nothing_and_the_file_misses_nothing_of_the_copy() {
    let place = Place::new();
    let mut journal = place.begin();
    write(&mut journal);
    journal.backup(&place.path("copy.outplant")).unwrap();
    write(&mut journal);
    drop(journal);
    let mut copy = Journal::open(&place.path("copy.outplant"), &place.shelf()).unwrap();
    assert_eq!(copy.notes(), []);
    write(&mut copy);
    assert!(copy.notes().iter().all(|note| !matches!(note, Note::Gone(_))), "{:?}", copy.notes());
    assert_eq!(place.open().notes(), []);
}

#[test]
fn a_program_that_holds_the_note_stops_no_reader_and_no_other_nursery_and_a_writer_gives_up() {
    let (place, other) = (Place::new(), Place::new());
    let mut journal = place.begin();
    write(&mut journal);
    let shelf = place.shelf();
    let mut elsewhere = Journal::begin(&other.file(), &shelf).unwrap();
    let lock = fs::File::open(place.note().with_extension("lock")).unwrap();
    lock.lock().unwrap();
    assert_eq!(place.open().entries().unwrap().len(), 1, "reading waits for nobody");
    write(&mut elsewhere);
    assert_eq!(journal.append(&[counted(3)], evening()), Err(JournalError::Busy));
    assert_eq!(place.open().entries().unwrap().len(), 1);
    drop(lock);
    assert_eq!(write(&mut journal).seq, 2);
}

#[test]
fn what_another_program_noted_meanwhile_is_not_taken_back() {
    let place = Place::new();
    let (mut slow, mut quick) = (place.begin(), place.open());
    let device = write(&mut slow).device;
    // The slow one has committed and not yet noted it when the quick one writes.
    let Journal { connection, shelf, notes, .. } = &mut slow;
    let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate).unwrap();
    let reservation = shelf.reserve(&transaction, 1, notes).unwrap();
    let id = EntryId { device: device.clone(), seq: 2 };
    let sealed = counted(7).seal(id, evening(), 2, reservation.head.hash);
    rows::insert(&transaction, &sealed).unwrap();
    transaction.commit().unwrap();
    assert_eq!(write(&mut quick), EntryId { device: device.clone(), seq: 3 });
    let last = Head { seq: 2, hash: Some(sealed.hash), recorded: None };
    shelf.settle(connection, Some((reservation, last)), true, notes);
    drop(slow);
    assert_eq!(write(&mut place.open()), EntryId { device, seq: 4 });
}

#[test]
fn a_file_whose_guards_were_changed_is_read_and_not_written() {
    let changes = [
        "DROP TRIGGER entry_is_never_changed",
        "CREATE TRIGGER away AFTER INSERT ON entry BEGIN SELECT RAISE(IGNORE); END",
        "CREATE TRIGGER away INSTEAD OF INSERT ON seen BEGIN SELECT 1; END",
        "DROP INDEX entry_happened",
        "ALTER TABLE entry ADD COLUMN more TEXT",
    ];
    let place = Place::new();
    let mut journal = place.begin();
    write(&mut journal);
    let triggers: Vec<String> = {
        let mut statement =
            journal.connection.prepare("SELECT name FROM sqlite_schema WHERE type = 'trigger'").unwrap();
        statement.query_map([], |row| row.get(0)).unwrap().collect::<Result<_, _>>().unwrap()
    };
    drop(journal);
    let before = fs::read(place.file()).unwrap();
    let drops = triggers.iter().map(|name| format!("DROP TRIGGER {name}"));
    let mut tried = 0;
    for change in changes.iter().map(ToString::to_string).chain(drops) {
        fs::write(place.file(), &before).unwrap();
        let raw = place.raw();
        raw.execute_batch("CREATE VIEW IF NOT EXISTS seen AS SELECT 1").unwrap();
        if raw.execute_batch(&change).is_err() {
            continue;
        }
        drop(raw);
        tried += 1;
        let refused = Journal::open(&place.file(), &place.shelf());
        assert!(matches!(refused, Err(JournalError::ChangedSchema(_))), "{change}: {refused:?}");
        assert_eq!(Journal::open_read_only(&place.file()).unwrap().entries().unwrap().len(), 1, "{change}");
    }
    assert!(tried > triggers.len() && !triggers.is_empty(), "{tried}");
}

#[test]
fn a_row_that_does_not_stay_is_told_and_nothing_is_written() {
    let place = Place::new();
    let mut journal = place.begin();
    write(&mut journal);
    // Changed while it is open, as no opening can see.
    journal
        .connection
        .execute_batch("CREATE TEMP TRIGGER away BEFORE INSERT ON entry BEGIN SELECT RAISE(IGNORE); END")
        .unwrap();
    let refused = journal.append(&[counted(3)], evening());
    assert!(matches!(refused, Err(JournalError::NotWritten(_))), "{refused:?}");
    assert_eq!(journal.entries().unwrap().len(), 1);
}

#[test]
fn after_a_wrong_clock_a_new_device_records_in_its_own_time() {
    let place = Place::new();
    let mut journal = place.begin();
    journal.append(&[counted(3)], moment("2040-01-01T10:00:00Z")).unwrap();
    let pinned = journal.append(&[counted(4)], evening()).unwrap().remove(0);
    assert_eq!(pinned.recorded, moment("2040-01-01T10:00:00Z"));
    journal.begin_new_device().unwrap();
    let settled = journal.append(&[counted(5)], evening()).unwrap().remove(0);
    assert_eq!((settled.id.seq, settled.recorded), (1, evening()));
    assert_ne!(settled.id.device, pinned.id.device);
    assert_eq!(write(&mut place.open()), EntryId { device: settled.id.device, seq: 2 });
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
    fs::write(place.note(), "{\"version\":1,").unwrap();
    let second = write(&mut journal).device;
    assert_ne!(second, first);
    let [Note::DevicesPutAside(aside)] = journal.notes() else { panic!("{:?}", journal.notes()) };
    assert_eq!(fs::read_to_string(aside).unwrap(), "{\"version\":1,");
    assert_eq!(write(&mut place.open()), EntryId { device: second, seq: 2 });
}

#[test]
fn a_file_that_is_taken_away_or_replaced_while_it_is_open_is_not_written() {
    let place = Place::new();
    let mut journal = place.begin();
    write(&mut journal);
    journal.backup(&place.path("other")).unwrap();
    fs::rename(place.file(), place.path("aside")).unwrap();
    assert_eq!(journal.append(&[counted(3)], evening()), Err(JournalError::TakenAway(place.file())));
    fs::rename(place.path("other"), place.file()).unwrap();
    assert_eq!(journal.append(&[counted(3)], evening()), Err(JournalError::TakenAway(place.file())));
    fs::rename(place.path("aside"), place.file()).unwrap();
    assert_eq!(write(&mut journal).seq, 2);
}

#[cfg(unix)]
#[test]
fn a_file_whose_log_was_deleted_or_that_was_cut_short_while_it_is_open_is_not_written() {
    let place = Place::new();
    let mut journal = place.begin();
    write(&mut journal);
    let log = std::path::PathBuf::from(format!("{}-wal", place.file().display()));
    fs::rename(&log, place.path("log aside")).unwrap();
    assert_eq!(journal.append(&[counted(3)], evening()), Err(JournalError::TakenAway(place.file())));
    fs::write(&log, "").unwrap();
    assert_eq!(journal.append(&[counted(3)], evening()), Err(JournalError::TakenAway(place.file())));
    fs::rename(place.path("log aside"), &log).unwrap();
    write(&mut journal);
    fs::File::options().write(true).open(place.file()).unwrap().set_len(0).unwrap();
    assert_eq!(journal.append(&[counted(3)], evening()), Err(JournalError::TakenAway(place.file())));
}
