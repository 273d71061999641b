use rusqlite::Connection;
use std::time::Duration;

use super::*;

const ROW: &str = "'x', 1, '2026-03-14', NULL, 0, 'mara', 'flushed', 1, '{}', NULL, zeroblob(32)";

#[test]
fn the_database_refuses_to_change_delete_or_replace_an_entry() {
    let place = Place::new();
    let mut journal = place.begin();
    let written = journal.append(&[counted(41)], evening()).unwrap();
    let device = written[0].id.device.to_string();
    let plain = place.raw();
    plain.pragma_update(None, "recursive_triggers", false).unwrap();
    let replace_key = format!(
        "INSERT OR REPLACE INTO entry (device, seq, happened, clock, recorded, who, kind, command, body, prev, hash)
         VALUES ('{device}', 1, '2026-03-14', NULL, 0, 'x', 'flushed', 1, '{{}}', NULL, zeroblob(32))"
    );
    let replace_arrival = format!(
        "REPLACE INTO entry (arrival, device, seq, happened, clock, recorded, who, kind, command, body, prev, hash) VALUES (1, {ROW})"
    );
    for connection in [&journal.connection, &plain] {
        for (statement, why) in [
            ("UPDATE entry SET body = '{}'", "never changed"),
            ("DELETE FROM entry", "never deleted"),
            (replace_key.as_str(), "never replaced"),
            (replace_arrival.as_str(), "never replaced"),
            ("UPDATE nursery_file SET file_id = '0000000000000000'", "never changed"),
            ("DELETE FROM nursery_file", "never deleted"),
            ("REPLACE INTO nursery_file VALUES (1, '0000000000000000', 0)", "never replaced"),
        ] {
            let refused = connection.execute(statement, []).unwrap_err().to_string();
            assert!(refused.contains(why), "{statement}: {refused}");
        }
    }
    assert_eq!(lines(&journal), written.iter().map(Sealed::line).collect::<Vec<_>>());
}

#[test]
fn the_database_refuses_an_entry_that_does_not_follow_its_chain() {
    let place = Place::new();
    place.begin();
    let plain = place.raw();
    let row = |seq: u32, prev: &str| {
        format!(
            "INSERT INTO entry (device, seq, happened, clock, recorded, who, kind, command, body, prev, hash)
             VALUES ('x', {seq}, '2026-03-14', NULL, 0, 'mara', 'flushed', 1, '{{}}', {prev}, zeroblob(32))"
        )
    };
    assert!(plain.execute(&row(2, "zeroblob(32)"), []).is_err(), "a first entry numbered 2");
    plain.execute(&row(1, "NULL"), []).unwrap();
    assert!(plain.execute(&row(2, "x'01'"), []).is_err(), "a previous hash of one byte");
    assert!(plain.execute(&row(2, "randomblob(32)"), []).is_err(), "another previous hash");
    plain.execute(&row(2, "zeroblob(32)"), []).unwrap();
}

#[test]
fn a_batch_goes_in_whole_or_not_at_all() {
    let place = Place::new();
    let mut journal = place.begin();
    journal.append(&[counted(41)], evening()).unwrap();
    let before = lines(&journal);
    let unwritable = [draft("", json!({})), draft("noted", json!({"text": "x", "hash": "y"}))];
    for wrong in unwritable {
        assert!(journal.append(&[counted(40), wrong, counted(39)], evening()).is_err());
        assert_eq!(lines(&journal), before);
    }
    let next = journal.append(&[counted(40), counted(39)], evening()).unwrap();
    assert_eq!(next.iter().map(|sealed| sealed.id.seq).collect::<Vec<_>>(), [2, 3], "no number is lost");
    assert_eq!(place.open().entries().unwrap().len(), 3);
}

#[test]
fn entries_of_one_device_are_chained_and_share_their_command() {
    let place = Place::new();
    let mut journal = place.begin();
    let mut all = journal.append(&[counted(41), counted(40)], evening()).unwrap();
    all.extend(journal.append(&[counted(39)], moment("2020-01-01T00:00:00Z")).unwrap());
    assert_eq!(all.iter().map(|sealed| sealed.command).collect::<Vec<_>>(), [1, 1, 3]);
    assert_eq!(all[2].recorded, evening(), "recorded never goes back on one device");
    assert_eq!(all[0].prev, None);
    for pair in all.windows(2) {
        assert_eq!(pair[1].prev, Some(pair[0].hash));
    }
    for sealed in &all {
        assert_eq!(sealed.hash, sealed.reckoned_hash());
    }
}

#[test]
fn what_was_written_is_there_after_reopening_and_typed() {
    let place = Place::new();
    let mut journal = place.begin();
    let written =
        journal.append(&[counted(41), draft("carried", json!({"tray": "cof-031", "place": "shade 2"}))], evening());
    let written = written.unwrap();
    drop(journal);
    let journal = place.open();
    assert!(journal.notes().is_empty(), "{:?}", journal.notes());
    let entries = journal.entries().unwrap();
    assert_eq!(entries, written.iter().map(|sealed| sealed.open().unwrap()).collect::<Vec<_>>());
    let (later, last) = journal.entries_after(1).unwrap();
    let later: Vec<_> = later.iter().map(|entry| (**entry).clone()).collect();
    assert_eq!((later, last), (entries[1..].to_vec(), 2));
    assert_eq!(journal.entries_after(2).unwrap(), (Vec::new(), 2));
}

#[test]
fn a_second_writer_is_told_that_the_file_is_busy_and_nothing_of_it_is_written() {
    let place = Place::new();
    let mut journal = place.begin();
    let other = place.raw();
    other.execute_batch("BEGIN IMMEDIATE").unwrap();
    journal.connection.busy_timeout(Duration::from_millis(20)).unwrap();
    assert_eq!(journal.append(&[counted(41)], evening()), Err(JournalError::Busy));
    assert!(journal.entries().unwrap().is_empty(), "reading goes on");
    other.execute_batch("COMMIT").unwrap();
    assert_eq!(journal.append(&[counted(41)], evening()).unwrap()[0].id.seq, 1);
}

#[test]
fn the_data_version_changes_when_another_connection_writes() {
    let place = Place::new();
    let journal = place.begin();
    let before = journal.data_version().unwrap();
    assert_eq!(journal.data_version().unwrap(), before);
    place.open().append(&[counted(41)], evening()).unwrap();
    assert_ne!(journal.data_version().unwrap(), before);
}

#[test]
fn giving_every_entry_holds_nothing_open_and_leaves_out_what_arrives_meanwhile() {
    let place = Place::new();
    let mut journal = place.begin();
    let batch: Vec<_> = (0..1500).map(counted).collect();
    journal.append(&batch, evening()).unwrap();
    let (mut other, mut given) = (place.open(), 0);
    journal
        .sealed::<JournalError>(&mut |_| {
            if given % 500 == 0 {
                other.append(&[counted(1)], evening())?;
                assert_eq!(emptied(&other.connection), (0, 0), "a reader kept the log from being emptied");
            }
            given += 1;
            Ok(())
        })
        .unwrap();
    assert_eq!(given, 1500);
    assert_eq!(journal.entries().unwrap().len(), 1503);
}

/// Empties the log; whether that was held up, and pages left in it.
fn emptied(connection: &Connection) -> (i64, i64) {
    connection.busy_timeout(Duration::from_millis(20)).unwrap();
    connection.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |row| Ok((row.get(0)?, row.get(1)?))).unwrap()
}

#[test]
fn an_open_journal_can_live_on_the_thread_of_the_desk() {
    let place = Place::new();
    let mut journal = place.begin();
    let written = std::thread::spawn(move || journal.append(&[counted(41)], evening())).join().unwrap();
    assert_eq!(written.unwrap().len(), 1);
}
