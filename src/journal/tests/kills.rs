//! A file of the first version is brought up by a program that is killed. A step that no released file has yet can only be
//! taken from in here, so the test runs itself once more as the program that is killed.

use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use super::*;
use crate::journal::{check, schema};

/// Tells the test binary to be the program that is killed, and where.
const CHILD: &str = "OUTPLANT_PROOF_BRINGS_UP";
/// Entries of the older file: enough for copy, proof and step to take a while.
const ENTRIES: u32 = 1500;

/// The steps there are, and one more that takes a while.
fn steps() -> Vec<&'static str> {
    let later = "CREATE TABLE later (n INTEGER PRIMARY KEY, body TEXT); \
         INSERT INTO later (body) SELECT body FROM entry; CREATE INDEX later_body ON later (body)";
    [schema::STEPS, &[later]].concat()
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
    place.raw().execute_batch(BACK_TO_THE_FIRST_VERSION).unwrap();
    let newest = schema::version_after(&steps());
    let (bytes, before) =
        (std::fs::read(place.file()).unwrap(), lines(&Journal::open_read_only(&place.file()).unwrap()));
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
        old += u64::from(version == Ok(1));
        new += u64::from(version == Ok(newest));
        failures.extend(fault_after_kill(&place, &before).map(|why| format!("kill {kill}: {why}")));
    }
    let seconds = begun.elapsed().as_secs_f64();
    println!(
        "\n| kill -9: an older file being brought up | {kills} | {} | {seconds:.0} | {old} stayed old, {new} were new; each went on |",
        failures.len()
    );
    assert_eq!(failures, Vec::<String>::new());
    assert!(kills < 50 || (old > 0 && new > 0), "no kill struck on the way: the test sees nothing");
}

/// The file holds every entry, can be brought up after all, and every copy beside it is whole.
fn fault_after_kill(place: &Place, before: &[String]) -> Option<String> {
    let journal = match Journal::open_with_steps(&place.file(), &place.shelf(), &steps()) {
        Ok(journal) => journal,
        Err(error) => return Some(error.to_string()),
    };
    if lines(&journal) != before || schema::version(&journal.connection) != Ok(schema::version_after(&steps())) {
        return Some("it is not the whole new file".into());
    }
    let copies = std::fs::read_dir(place.path("")).unwrap().map(|entry| entry.unwrap().path());
    let mut kept = copies.filter(|path| {
        path.file_name().is_some_and(|name| name.to_string_lossy().starts_with("book.outplant.version-1"))
    });
    let whole = |path: PathBuf| {
        check(&path).is_ok_and(|report| report.faults.is_empty() && report.entries == u64::from(ENTRIES))
    };
    (!kept.all(whole)).then(|| "a copy beside it is not whole".to_string())
}
