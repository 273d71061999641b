//! An older file is brought up by a program that is killed. Steps that no released file has yet can only be taken from in
//! here, so the test runs itself once more as the program that is killed.

use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use super::*;
use crate::journal::{check, schema};

/// Tells the test binary to be the program that is killed, and where.
const CHILD: &str = "OUTPLANT_PROOF_BRINGS_UP";
/// Entries of the older file: enough for copy, proof and step to take a while.
const ENTRIES: u32 = 1500;

/// The steps of today and one more.
fn steps() -> Vec<&'static str> {
    let later = "CREATE TABLE later (n INTEGER PRIMARY KEY, body TEXT); \
     INSERT INTO later (body) SELECT body FROM entry; CREATE INDEX later_body ON later (body)";
    [schema::STEPS, &[later]].concat()
}

/// The version of the older file.
fn older() -> i64 {
    schema::version_after(schema::STEPS)
}

#[test]
fn bringing_up_is_killed_and_the_file_is_the_old_one_or_the_new_one() {
    if let Some(folder) = std::env::var_os(CHILD) {
        let (file, shelf) =
            (PathBuf::from(&folder).join("nursery/book.outplant"), PathBuf::from(&folder).join("shelf"));
        drop(Journal::open_with_steps(&file, &shelf, &steps()).unwrap());
        return;
    }
    let kills =
        std::env::var("OUTPLANT_PROOF_KILLS").ok().and_then(|text| text.parse::<u64>().ok()).map_or(3, |all| all / 4);
    let begun = Instant::now();
    let place = Place::new();
    let batch: Vec<_> = (0..ENTRIES).map(counted).collect();
    place.begin().append(&batch, evening()).unwrap();
    let (bytes, before) = (std::fs::read(place.file()).unwrap(), lines(&place.open()));
    let (mut old, mut new, mut failures) = (0, 0, Vec::new());
    for kill in 0..kills {
        std::fs::remove_dir_all(place.path("")).unwrap();
        std::fs::create_dir(place.path("")).unwrap();
        std::fs::write(place.file(), &bytes).unwrap();
        let mut child = Command::new(std::env::current_exe().unwrap())
            .args([
                "--exact",
                "journal::tests::kills::bringing_up_is_killed_and_the_file_is_the_old_one_or_the_new_one",
            ])
            .env(CHILD, place.folder.path())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        std::thread::sleep(Duration::from_millis(2 + kill * 37 % 160));
        let _ = child.kill();
        child.wait().unwrap();
        let version = Journal::open_read_only(&place.file()).and_then(|journal| schema::version(&journal.connection));
        old += u64::from(version == Ok(older()));
        new += u64::from(version == Ok(older() + 1));
        failures.extend(fault_after_kill(&place, &before).map(|why| format!("kill {kill}: {why}")));
    }
    let seconds = begun.elapsed().as_secs_f64();
    println!(
        "\n| kill -9: an older file being brought up | {kills} | {} | {seconds:.0} | {old} stayed old, {new} were new; each went on |",
        failures.len()
    );
    assert_eq!(failures, Vec::<String>::new());
}

/// The file holds every entry, can be brought up after all, and every copy beside it is whole.
fn fault_after_kill(place: &Place, before: &[String]) -> Option<String> {
    let journal = match Journal::open_with_steps(&place.file(), &place.shelf(), &steps()) {
        Ok(journal) => journal,
        Err(error) => return Some(error.to_string()),
    };
    if lines(&journal) != before || schema::version(&journal.connection) != Ok(older() + 1) {
        return Some("it is not the whole new file".into());
    }
    let copies = std::fs::read_dir(place.path("")).unwrap().map(|entry| entry.unwrap().path());
    let mut kept = copies.filter(|path| {
        let name = format!("book.outplant.version-{}", older());
        path.file_name().is_some_and(|own| own.to_string_lossy().starts_with(&name))
    });
    let whole = |path: PathBuf| {
        check(&path).is_ok_and(|report| report.faults.is_empty() && report.entries == u64::from(ENTRIES))
    };
    (!kept.all(whole)).then(|| "a copy beside it is not whole".to_string())
}
