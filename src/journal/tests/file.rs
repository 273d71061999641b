use rusqlite::{Connection, OpenFlags};
use std::fs;
use std::path::Path;

use super::*;
use crate::journal::{Note, Sort, Sought, WhyReadOnly, check, connection, schema};

#[cfg(unix)]
fn mode(path: &Path) -> u32 {
    use std::os::unix::fs::PermissionsExt;
    fs::metadata(path).unwrap().permissions().mode() & 0o777
}

#[cfg(unix)]
fn set_mode(path: &Path, mode: u32) {
    use std::os::unix::fs::PermissionsExt;
    fs::set_permissions(path, fs::Permissions::from_mode(mode)).unwrap();
}

fn names_in(folder: &Path) -> Vec<String> {
    let mut names: Vec<_> =
        fs::read_dir(folder).unwrap().map(|item| item.unwrap().file_name().into_string().unwrap()).collect();
    names.sort();
    names
}

#[test]
fn beginning_refuses_a_file_that_is_there_and_leaves_only_its_own() {
    let place = Place::new();
    let journal = place.begin();
    assert_eq!(journal.file_id().len(), 16);
    let id = journal.file_id().to_string();
    drop(journal);
    assert_eq!(names_in(&place.path("")), ["book.outplant"]);
    let again = Journal::begin(&place.file(), &place.shelf()).unwrap_err();
    assert_eq!(again, JournalError::AlreadyThere(place.file()));
    assert_eq!(place.open().file_id(), id);
}

#[cfg(unix)]
#[test]
fn folder_and_files_are_for_this_person_only() {
    let place = Place::new();
    let mut journal = place.begin();
    journal.append(&[counted(41)], evening()).unwrap();
    assert_eq!(mode(&place.path("")), 0o700);
    assert_eq!(mode(&place.shelf()), 0o700);
    for file in ["book.outplant", "book.outplant-wal", "book.outplant-shm"] {
        assert_eq!(mode(&place.path(file)), 0o600, "{file}");
    }
    assert_eq!(mode(&place.note()), 0o600);
}

#[test]
fn what_makes_saved_true_is_set() {
    let place = Place::new();
    let journal = place.begin();
    let asked = |name: &str| {
        journal.connection.pragma_query_value(None, name, |row| row.get::<_, rusqlite::types::Value>(0)).unwrap()
    };
    use rusqlite::types::Value::{Integer, Text};
    assert_eq!(asked("journal_mode"), Text("wal".into()));
    assert_eq!(asked("synchronous"), Integer(2), "FULL");
    assert_eq!(asked("busy_timeout"), Integer(5000));
    for name in ["foreign_keys", "recursive_triggers", "cell_size_check"] {
        assert_eq!(asked(name), Integer(1), "{name}");
    }
    assert_eq!(asked("trusted_schema"), Integer(0));
    assert_eq!(asked("mmap_size"), Integer(0));
    assert!(journal.connection.execute_batch("PRAGMA writable_schema = ON; DELETE FROM sqlite_schema").is_err());
}

/// SQLite's dot-file locking shares no memory, as some network shares do.
#[cfg(unix)]
#[test]
fn where_no_write_ahead_log_can_be_had_the_rollback_journal_is_synced_once_more() {
    let place = Place::new();
    fs::create_dir_all(place.path("")).unwrap();
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_CREATE;
    let plain = Connection::open_with_flags_and_vfs(place.file(), flags, "unix-dotfile").unwrap();
    let note = connection::choose_journal_mode(&plain).unwrap();
    assert_eq!(note, Some(Note::NoWriteAheadLog { answer: "delete".into() }));
    let synchronous: i64 = plain.pragma_query_value(None, "synchronous", |row| row.get(0)).unwrap();
    assert_eq!(synchronous, 3, "EXTRA");
    plain.execute_batch("CREATE TABLE x (y)").unwrap();
}

#[test]
fn what_is_no_nursery_file_is_refused_and_not_touched() {
    let place = Place::new();
    fs::create_dir_all(place.path("")).unwrap();
    Connection::open(place.path("other.db")).unwrap().execute_batch("CREATE TABLE x (y)").unwrap();
    fs::write(place.path("empty"), "").unwrap();
    fs::write(place.path("text"), "cof-031 41\n".repeat(100)).unwrap();
    fs::create_dir(place.path("folder")).unwrap();
    for name in ["other.db", "empty", "text", "folder"] {
        let bytes = fs::read(place.path(name)).ok();
        assert_eq!(
            Journal::open(&place.path(name), &place.shelf()).unwrap_err(),
            JournalError::NotOurs(place.path(name))
        );
        assert_eq!(check(&place.path(name)).unwrap_err(), JournalError::NotOurs(place.path(name)));
        assert_eq!(fs::read(place.path(name)).ok(), bytes);
    }
    let missing = Journal::open(&place.path("missing"), &place.shelf()).unwrap_err();
    assert_eq!(missing, JournalError::NotThere(place.path("missing")));
    assert_eq!(names_in(&place.path("")), ["empty", "folder", "other.db", "text"]);
}

#[test]
fn a_newer_file_is_refused_before_anything_is_written_and_can_still_be_read() {
    let place = Place::new();
    let mut journal = place.begin();
    journal.append(&[counted(41)], evening()).unwrap();
    let before = lines(&journal);
    drop(journal);
    place.raw().execute_batch("PRAGMA user_version = 99; ALTER TABLE entry ADD COLUMN later TEXT").unwrap();
    let (bytes, names) = (fs::read(place.file()).unwrap(), names_in(&place.path("")));
    let refused = Journal::open(&place.file(), &place.shelf()).unwrap_err();
    assert_eq!(refused, JournalError::Newer { file: 99, program: schema::version_after(schema::STEPS) });
    assert_eq!(names_in(&place.path("")), names);
    let reading = Journal::open_read_only(&place.file()).unwrap();
    assert_eq!(lines(&reading), before);
    assert_eq!(reading.notes(), [Note::ReadOnly(WhyReadOnly::Asked)]);
    drop(reading);
    assert_eq!(fs::read(place.file()).unwrap(), bytes);
}

#[test]
fn a_newer_version_that_still_lies_in_the_log_is_seen_and_the_log_not_touched() {
    let place = Place::new();
    place.begin();
    let newer = place.raw();
    newer.execute_batch("PRAGMA user_version = 99").unwrap();
    let log = place.path("book.outplant-wal");
    let bytes = (fs::read(place.file()).unwrap(), fs::read(&log).unwrap());
    assert!(!bytes.1.is_empty());
    assert!(matches!(Journal::open(&place.file(), &place.shelf()), Err(JournalError::Newer { file: 99, .. })));
    assert_eq!((fs::read(place.file()).unwrap(), fs::read(&log).unwrap()), bytes);
    drop(newer);
}

#[test]
fn an_older_file_is_brought_up_after_a_proven_copy_was_put_beside_it() {
    let place = Place::new();
    let mut journal = place.begin();
    journal.append(&[counted(41)], evening()).unwrap();
    let before = lines(&journal);
    drop(journal);
    let known = schema::version_after(schema::STEPS);
    let good = [schema::STEPS, &["CREATE TABLE later (name TEXT PRIMARY KEY, body BLOB) STRICT"]].concat();
    let bad = [&good[..], &["CREATE TABLE fine (x) ; CREATE TABLE entry (x)"]].concat();
    assert!(Journal::open_with_steps(&place.file(), &place.shelf(), &bad).is_err());
    assert!(schema::texts(&place.raw()).unwrap().iter().all(|(name, _)| name != "later" && name != "fine"));
    let journal = Journal::open_with_steps(&place.file(), &place.shelf(), &good).unwrap();
    let [Note::KeptBefore(kept)] = journal.notes() else { panic!("{:?}", journal.notes()) };
    assert_eq!(check(kept).unwrap().faults, []);
    assert_eq!(check(kept).unwrap().file_version, known);
    assert_eq!(schema::version(&journal.connection).unwrap(), known + 1);
    assert_eq!(lines(&journal), before);
    assert_eq!(lines(&Journal::open_read_only(kept).unwrap()), before);
}

#[test]
fn a_file_of_the_first_version_gets_its_lookup() {
    let place = Place::new();
    let mut journal = place.begin();
    journal.append(&[counted(41)], evening()).unwrap();
    let (before, looked_up) = (lines(&journal), schema::texts(&journal.connection).unwrap());
    drop(journal);
    let raw = place.raw();
    raw.execute_batch(BACK_TO_THE_FIRST_VERSION).unwrap();
    drop(raw);
    assert_eq!(check(&place.file()).unwrap().faults, [], "as it was it is whole");
    // For reading only it is read as it is.
    assert!(!Journal::open_read_only(&place.file()).unwrap().lookup_is_up().unwrap());
    let mut journal = place.open();
    let [Note::KeptBefore(_)] = journal.notes() else { panic!("{:?}", journal.notes()) };
    assert_eq!(lines(&journal), before);
    assert!(!journal.lookup_is_up().unwrap());
    journal.bring_up_lookup(&mut |_| {}).unwrap();
    assert!(journal.lookup_is_up().unwrap());
    let sought = Sought::named(Sort::Tray, "cof-031".into());
    let found: Vec<_> = journal.look_up(&[sought]).unwrap().iter().map(|entry| (**entry).clone()).collect();
    assert_eq!(found, journal.entries().unwrap());
    assert_eq!(schema::texts(&journal.connection).unwrap(), looked_up);
}

#[cfg(unix)]
#[test]
fn a_file_or_folder_marked_read_only_is_opened_for_reading_with_a_note() {
    let place = Place::new();
    let mut journal = place.begin();
    journal.append(&[counted(41)], evening()).unwrap();
    let before = lines(&journal);
    drop(journal);
    let cases = [(place.file(), 0o400, WhyReadOnly::File), (place.path(""), 0o500, WhyReadOnly::Folder)];
    for (path, marked, why) in cases {
        let usual = mode(&path);
        set_mode(&path, marked);
        let mut journal = place.open();
        assert!(journal.is_read_only());
        assert_eq!(journal.notes(), [Note::ReadOnly(why)]);
        assert_eq!(lines(&journal), before);
        assert_eq!(journal.append(&[counted(40)], evening()), Err(JournalError::ReadOnly));
        drop(journal);
        set_mode(&path, usual);
    }
    assert!(!place.open().is_read_only());
}

#[test]
fn a_path_with_signs_of_a_uri_is_read_as_one_that_nobody_changes() {
    let place = Place::new();
    let odd = place.path("a %20?b#c.outplant");
    drop(Journal::begin(&odd, &place.shelf()).unwrap());
    assert_eq!(
        schema::version(&connection::open_guarded(&odd, true).unwrap()).unwrap(),
        schema::version_after(schema::STEPS)
    );
    assert_eq!(names_in(&place.path("")), ["a %20?b#c.outplant"]);
}
