use std::fs;
use std::path::Path;

use super::*;
use crate::journal::{Fault, LookStep, check, check_with_note, rescue, schema, untold};

fn ten_counts(place: &Place) -> Vec<Sealed> {
    let mut journal = place.begin();
    let batch: Vec<_> = (10..20).map(counted).collect();
    journal.append(&batch, evening()).unwrap()
}

/// Changes the bytes of the file itself.
fn change_bytes(path: &Path, from: &[u8], to: &[u8]) {
    let mut bytes = fs::read(path).unwrap();
    let at = bytes.windows(from.len()).position(|window| window == from).unwrap();
    bytes[at..at + to.len()].copy_from_slice(to);
    fs::write(path, bytes).unwrap();
}

#[test]
fn a_whole_file_is_proven_and_not_written_to() {
    let place = Place::new();
    ten_counts(&place);
    let bytes = fs::read(place.file()).unwrap();
    let report = check(&place.file()).unwrap();
    assert_eq!(report.faults, []);
    assert_eq!((report.entries, report.devices, report.unknown_kinds), (10, 1, 0));
    let newest = schema::version_after(schema::STEPS);
    assert_eq!((report.file_version, report.program_version), (newest, newest));
    assert_eq!(report.sqlite_version, rusqlite::version());
    assert_eq!(fs::read(place.file()).unwrap(), bytes);
    let names: Vec<_> = fs::read_dir(place.path("")).unwrap().map(|item| item.unwrap().file_name()).collect();
    assert_eq!(names, ["book.outplant"], "nothing is left beside it");
}

#[test]
fn a_file_that_is_being_written_to_is_proven_with_what_lies_in_its_log() {
    let place = Place::new();
    let mut journal = place.begin();
    journal.append(&[counted(41)], evening()).unwrap();
    let report = check(&place.file()).unwrap();
    assert_eq!((report.entries, report.faults), (1, vec![]));
}

#[test]
fn a_flipped_bit_in_a_body_is_named() {
    let place = Place::new();
    let written = ten_counts(&place);
    // '5' is 0x35 and '7' is 0x37: one bit.
    change_bytes(&place.file(), br#""standing":15"#, br#""standing":17"#);
    assert_eq!(check(&place.file()).unwrap().faults, [Fault::WrongHash(written[5].id.clone())]);
    assert_eq!(place.open().entries().unwrap().len(), 10, "opening verifies no hash");
}

#[test]
fn a_body_that_cannot_be_read_is_named_by_reading_and_by_check() {
    let place = Place::new();
    let written = ten_counts(&place);
    change_bytes(&place.file(), br#""standing":15"#, br#""stbnding":15"#);
    let error = place.open().entries().unwrap_err();
    assert!(matches!(&error, JournalError::Damaged { entry: Some(entry), .. } if *entry == written[5].id), "{error}");
    let faults = check(&place.file()).unwrap().faults;
    assert_eq!(faults[0], Fault::WrongHash(written[5].id.clone()));
    assert!(matches!(&faults[1], Fault::Body { entry, .. } if *entry == written[5].id), "{faults:?}");
}

#[test]
fn entries_taken_out_by_force_leave_a_gap_and_a_trigger_missing() {
    let place = Place::new();
    let device = ten_counts(&place)[0].id.device.clone();
    place.raw().execute_batch("DROP TRIGGER entry_is_never_deleted; DELETE FROM entry WHERE seq IN (4, 5)").unwrap();
    let faults = check(&place.file()).unwrap().faults;
    assert_eq!(faults, [Fault::Schema("entry_is_never_deleted".into()), Fault::Gap { device, from: 4, to: 5 }]);
}

#[test]
fn a_changed_previous_hash_is_named() {
    let place = Place::new();
    let written = ten_counts(&place);
    let trigger = "SELECT sql FROM sqlite_schema WHERE name = 'entry_is_never_changed'";
    let raw = place.raw();
    let text: String = raw.query_row(trigger, [], |row| row.get(0)).unwrap();
    raw.execute_batch(&format!(
        "DROP TRIGGER entry_is_never_changed; UPDATE entry SET prev = zeroblob(32) WHERE seq = 7; {text}"
    ))
    .unwrap();
    let id = &written[6].id;
    let faults = check(&place.file()).unwrap().faults;
    assert_eq!(faults, [Fault::WrongHash(id.clone()), Fault::WrongPrevious(id.clone())]);
}

#[test]
fn a_destroyed_page_is_reported_and_what_lies_before_and_behind_it_is_still_read() {
    let place = Place::new();
    let mut journal = place.begin();
    let batch: Vec<_> = (0..2000).map(counted).collect();
    journal.append(&batch, evening()).unwrap();
    drop(journal);
    let mut bytes = fs::read(place.file()).unwrap();
    let middle = bytes.windows(15).position(|window| window == br#""standing":1000"#).unwrap();
    let page = middle / 4096 * 4096;
    bytes[page..page + 4096].fill(0xa5);
    fs::write(place.file(), &bytes).unwrap();
    let report = check(&place.file()).unwrap();
    assert!(report.entries > 1900 && report.entries < 2000, "{} entries", report.entries);
    assert!(report.faults.iter().any(|fault| matches!(fault, Fault::Sqlite(_))));
    let missing: Vec<_> = report.faults.iter().filter(|fault| matches!(fault, Fault::Gap { .. })).collect();
    assert!(
        matches!(missing[..], [Fault::Gap { from, to, .. }] if to - from + 1 == 2000 - report.entries),
        "{missing:?}"
    );
    let refused = place.open().backup(&place.path("backup"));
    assert!(matches!(refused, Err(JournalError::Damaged { .. })), "{refused:?}");
    bytes.truncate(bytes.len() / 2);
    fs::write(place.file(), &bytes).unwrap();
    let report = check(&place.file()).unwrap();
    assert!(report.entries > 100, "{} entries of a file cut in half", report.entries);
    assert!(!report.faults.is_empty());
}

/// Same seed, same damage. Seed and place of a failing one are printed.
#[test]
fn any_damaged_byte_is_reported_or_changes_no_entry_and_never_stops_the_program() {
    let place = Place::new();
    let written: Vec<String> = ten_counts(&place).iter().map(Sealed::line).collect();
    let whole = fs::read(place.file()).unwrap();
    let target = place.path("damaged");
    let rounds = std::env::var("OUTPLANT_PROOF_FLIPS").ok().and_then(|said| said.parse().ok()).unwrap_or(400);
    let mut state: u64 = 20_260_314;
    let mut throw = |sides: usize| {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (state >> 20) as usize % sides
    };
    // SQLite's own numbers stand at the beginning of the file and of each page.
    let beginnings: Vec<usize> = (0..whole.len() / 4096).map(|page| page * 4096).collect();
    for round in 0..rounds {
        let at = match throw(3) {
            0 => beginnings[throw(beginnings.len())] + throw(120),
            _ => throw(whole.len()),
        };
        let bit = throw(8);
        let mut bytes = whole.clone();
        bytes[at] ^= 1 << bit;
        fs::write(&target, &bytes).unwrap();
        let reported = check(&target).map_or(true, |report| !report.faults.is_empty());
        let read = Journal::open_read_only(&target).and_then(|journal| {
            let mut found = Vec::new();
            journal.sealed::<JournalError>(&mut |sealed| {
                found.push(sealed.line());
                Ok(())
            })?;
            journal.entries().map(|_| found)
        });
        assert!(reported || read.as_ref() == Ok(&written), "round {round}, byte {at}, bit {bit}: {read:?}");
    }
}

#[test]
fn a_backup_is_one_proven_file_and_a_nursery_file_itself() {
    let place = Place::new();
    ten_counts(&place);
    let journal = place.open();
    fs::create_dir(place.path("away")).unwrap();
    let target = place.path("away/backup.outplant");
    let report = journal.backup(&target).unwrap();
    assert_eq!((report.entries, report.devices), (10, 1));
    assert_eq!(report.bytes, fs::metadata(&target).unwrap().len());
    let names: Vec<_> = fs::read_dir(place.path("away")).unwrap().map(|item| item.unwrap().file_name()).collect();
    assert_eq!(names, ["backup.outplant"], "nothing else is left");
    assert_eq!(fs::read(&target).unwrap()[18..20], [1, 1], "no write-ahead log, SQLite file format 1.3");
    assert_eq!(journal.backup(&target), Err(JournalError::AlreadyThere(target.clone())));
    let copy = Journal::open(&target, &place.shelf()).unwrap();
    assert_eq!(lines(&copy), lines(&journal));
    assert_eq!(copy.file_id(), journal.file_id());
    assert!(journal.connection.is_autocommit(), "no transaction is left open");
}

#[test]
fn a_file_with_a_fault_gives_no_backup_and_leaves_nothing_behind() {
    let place = Place::new();
    let written = ten_counts(&place);
    change_bytes(&place.file(), br#""standing":15"#, br#""standing":17"#);
    fs::create_dir(place.path("away")).unwrap();
    let refused = place.open().backup(&place.path("away/backup")).unwrap_err();
    assert!(
        matches!(&refused, JournalError::Damaged { entry: Some(entry), .. } if *entry == written[5].id),
        "{refused}"
    );
    assert_eq!(fs::read_dir(place.path("away")).unwrap().count(), 0);
}

fn rows_of(place: &Place, query: &str) -> Vec<String> {
    let raw = place.raw();
    let mut statement = raw.prepare(query).unwrap();
    let columns = statement.column_count();
    let rows = statement.query_map([], |row| {
        let cells: Result<Vec<String>, rusqlite::Error> = (0..columns)
            .map(|column| {
                Ok(match row.get::<_, rusqlite::types::Value>(column)? {
                    rusqlite::types::Value::Null => "-".to_string(),
                    rusqlite::types::Value::Integer(number) => number.to_string(),
                    rusqlite::types::Value::Real(number) => number.to_string(),
                    rusqlite::types::Value::Text(text) => text,
                    rusqlite::types::Value::Blob(_) => "blob".to_string(),
                })
            })
            .collect();
        Ok(cells?.join("|"))
    });
    rows.unwrap().collect::<Result<_, _>>().unwrap()
}

#[test]
fn the_views_give_the_facts() {
    let place = Place::new();
    let mut journal = place.begin();
    let drafts = [
        draft(
            "lot_received",
            json!({"lot": "cof-L07", "species": "COA", "source": "Old tree", "collected": "2026-03-01", "mass_g": 250.5, "seeds_per_kg": 3000, "kept": "in_parchment"}),
        ),
        draft(
            "sown",
            json!({"tray": "cof-031", "lot": "cof-L07", "seeds": 60, "container": "bag", "cells": 60, "place": "shade 2"}),
        ),
        draft("sown_in_bed", json!({"bed": "Lower", "species": "CAJ", "seeds_per_hole": 3, "holes": 40})),
        draft("counted", json!({"tray": "cof-031", "standing": 41, "about": true})),
        draft(
            "lot_tested",
            json!({"lot": "cof-L07", "replicates": [{"seeds": 50, "germinated": 44}, {"seeds": 50, "germinated": 41}], "days": 40}),
        ),
        draft("moved_on", json!({"from": "cof-031", "to": "cof-032", "count": 30, "how": "potted_on"})),
        draft("given_out", json!({"tray": "cof-032", "count": 5, "to": "the school"})),
        draft("outplanted", json!({"tray": "cof-032", "bed": "Lower", "count": 20, "at": ["2.7", "2.8"]})),
        draft("bed_set", json!({"bed": "Lower", "field": "Terrace", "length_m": 30, "width_m": 12, "plan": []})),
    ];
    journal.append(&drafts, evening()).unwrap();
    for (query, expected) in [
        (
            "SELECT lot, species, mass_g, seeds_per_kg, kept, seeds FROM lots",
            &["cof-L07|COA|250.5|3000|in_parchment|-"][..],
        ),
        (
            "SELECT kind, tray, bed, lot, seeds, cells FROM sowings",
            &["sown|cof-031|-|cof-L07|60|60", "sown_in_bed|-|Lower|-|120|-"][..],
        ),
        ("SELECT tray, standing, about FROM germination_counts", &["cof-031|41|1"][..]),
        ("SELECT lot, replicate, seeds, germinated FROM lot_tests", &["cof-L07|1|50|44", "cof-L07|2|50|41"][..]),
        (
            "SELECT kind, from_tray, to_tray, given_to, count, how FROM moves",
            &["moved_on|cof-031|cof-032|-|30|potted_on", "given_out|cof-032|-|the school|5|-"][..],
        ),
        (
            "SELECT happened, who, tray, bed, count, at FROM outplantings",
            &[r#"2026-03-14|mara|cof-032|Lower|20|["2.7","2.8"]"#][..],
        ),
        ("SELECT bed, field, length_m, width_m, plan FROM beds", &["Lower|Terrace|30|12|[]"][..]),
    ] {
        assert_eq!(rows_of(&place, query), expected, "{query}");
    }
}

#[test]
fn the_views_leave_out_what_stands_withdrawn() {
    let place = Place::new();
    let mut journal = place.begin();
    let mut last = journal.append(&[counted(41), counted(40)], evening()).unwrap().remove(0).id.to_string();
    let standing = |place: &Place| rows_of(place, "SELECT standing FROM germination_counts");
    assert_eq!(standing(&place), ["41", "40"]);
    // Each withdrawal takes back the one before it.
    for link in 1..=8 {
        let taking = draft("withdrawn", json!({"entries": [last], "why": "a slip"}));
        last = journal.append(&[taking], evening()).unwrap().remove(0).id.to_string();
        let expected = if link % 2 == 1 { vec!["40"] } else { vec!["41", "40"] };
        assert_eq!(standing(&place), expected, "after {link} withdrawals");
    }
}

#[test]
fn a_look_that_is_stopped_says_so_and_says_nothing_of_the_file() {
    use std::ops::ControlFlow;
    let place = Place::new();
    ten_counts(&place);
    let mut bytes = fs::read(place.file()).unwrap();
    bytes[..100].fill(0);
    fs::write(place.file(), bytes).unwrap();
    let mut steps = Vec::new();
    let report = check_with_note(&place.file(), None, &mut |step| {
        steps.push(step);
        ControlFlow::Continue(())
    });
    assert_eq!(report.unwrap().undamaged, Some(10));
    assert!(steps.iter().any(|step| matches!(step, LookStep::Bytes { done, all } if done == all)), "{steps:?}");
    let stop = &mut |_| ControlFlow::Break(());
    assert_eq!(check_with_note(&place.file(), None, stop), Err(JournalError::Cancelled));
    assert_eq!(rescue(&place.file(), None, stop), Err(JournalError::Cancelled));
    assert_eq!(rescue(&place.file(), None, &mut untold).unwrap().entries.len(), 10);
}
