//! A log that is not the file's own: neither reading nor writing begins, and nothing is changed; an own log is never refused.

use std::fs;
use std::path::Path;

use outplant::journal::{Fault, Journal, JournalError, check, rescue, untold};

use super::damage::{Lying, lines, log_of};
use super::{Dice, Row, count};
use crate::support::program::Home;

/// A nursery at three times: its file and its log.
struct Grown {
    lying: Lying,
    /// The file long before its log began, where it had any entries then.
    older: Vec<u8>,
    /// The file long after the log was taken in.
    newer: Vec<u8>,
}

impl Grown {
    fn new(why: &str, in_file: u32, in_log: u32) -> Grown {
        let lying = Lying::of(why, in_file, in_log);
        let (path, shelf) = (lying.path(), lying.folder.path().join("shelf"));
        // The same devices go on: what is written behind is of the same nursery.
        lying.put(&lying.file, Some(&lying.log));
        let later = Lying::drafts_of(in_file + in_log..in_file + 3 * in_log + 60, why);
        Journal::open(&path, &shelf).unwrap().append(&later, Lying::evening()).unwrap();
        let newer = fs::read(&path).unwrap();
        assert!(!log_of(&path).exists(), "the log was not taken in");
        let older = lying.early.clone();
        Grown { lying, older, newer }
    }
}

/// What opening says of a file and a log laid together; `Some` is what was wrong.
fn refused(place: &Lying, file: &[u8], log: &[u8], lines_of_file: &[String]) -> Option<String> {
    place.put(file, Some(log));
    let (path, shelf) = (place.path(), place.folder.path().join("shelf-of-another"));
    for (name, opened) in [("writing", Journal::open(&path, &shelf)), ("reading", Journal::open_read_only(&path))] {
        if !matches!(opened, Err(JournalError::ForeignLog(_))) {
            return Some(format!("opening for {name} answers {:?}", opened.map(|journal| journal.count())));
        }
    }
    let beside: Vec<_> = fs::read_dir(place.folder.path()).unwrap().map(|item| item.unwrap().file_name()).collect();
    if fs::read(&path).unwrap() != file
        || fs::read(log_of(&path)).unwrap() != log
        || beside.iter().any(|name| name.to_string_lossy().ends_with("-shm"))
    {
        return Some(format!("something was changed: {beside:?}"));
    }
    let faults = check(&path).map(|report| report.faults);
    if !faults.as_ref().is_ok_and(|faults| faults.first() == Some(&Fault::ForeignLog)) {
        return Some(format!("check says {faults:?}"));
    }
    let out = rescue(&path, None, &mut untold)
        .map(|rescued| rescued.entries.iter().map(|sealed| sealed.line()).collect::<Vec<_>>());
    if let Some(missing) = lines_of_file.iter().find(|line| !out.as_ref().is_ok_and(|out| out.contains(line))) {
        return Some(format!("rescue does not bring out {missing:.200}"));
    }
    // As the sentence advises: the log laid aside, the file opens with all it has.
    place.put(file, None);
    let opened = Journal::open(&path, &shelf).and_then(|journal| lines(&journal));
    (opened.as_deref() != Ok(lines_of_file)).then(|| "without the log the file is not as it was".to_string())
}

/// What is wrong with a file that was taken together with the log, and who tells it.
fn fault_with_log(place: &Lying, file: &[u8]) -> Option<String> {
    place.put(file, Some(&place.log));
    let faults = check(&place.path()).map(|report| report.faults);
    if !faults.as_ref().is_ok_and(Vec::is_empty) {
        return Some(format!("check tells {faults:?}"));
    }
    let opened = Journal::open(&place.path(), &place.folder.path().join("shelf")).and_then(|journal| lines(&journal));
    let whole = opened.as_ref() == Ok(&place.lines);
    (!whole).then(|| format!("nothing is told, and {} entries are there", opened.map_or(0, |lines| lines.len())))
}

fn lines_alone(place: &Lying, file: &[u8]) -> Vec<String> {
    place.put(file, None);
    lines(&Journal::open_read_only(&place.path()).unwrap()).unwrap()
}

#[test]
fn a_log_of_another_is_refused_and_an_own_log_never() {
    let how_many = count("FOREIGN", 4, 12) as usize;
    let mut dice = Dice::new(2026);
    let grown: Vec<Grown> = (0..how_many)
        .map(|i| {
            // Young and old ones; every third log begins with the first entry of all.
            let in_file = if i % 3 == 2 { 0 } else { 1 + dice.below(if i % 2 == 0 { 60 } else { 1500 }) as u32 };
            Grown::new(&format!("nursery {i}"), in_file, 1 + dice.below(60) as u32)
        })
        .collect();
    let mut others = Row::begin("the log of another nursery: refused, nothing changed");
    let mut times = Row::begin("the log of another time of the same nursery: refused, or every entry there, or told");
    let mut own = Row::begin("the own log, whole or cut off anywhere: never refused");
    let (mut as_it_is, mut made_whole, mut told_by_check) = (0, 0, 0);
    for (i, one) in grown.iter().enumerate() {
        let place = &one.lying;
        let alone = lines_alone(place, &place.file);
        // A file without a single entry is not in danger: there is nothing that the log could spoil.
        for (k, other) in grown.iter().enumerate().filter(|(k, _)| *k != i && !alone.is_empty()) {
            let failure = refused(place, &place.file, &other.lying.log, &alone);
            others.ran(failure.map(|why| format!("file {i} ({}), log {k}: {why}", alone.len())));
        }
        for (when, file) in [("older", &one.older), ("newer", &one.newer)] {
            let alone = lines_alone(place, file);
            if alone.is_empty() {
                continue;
            }
            let failure = refused(place, file, &place.log, &alone);
            if failure.is_none() {
                as_it_is += 1;
                times.ran(None);
                continue;
            }
            // A log in which every page lies that has changed since makes an older file whole.
            match fault_with_log(place, file) {
                None => made_whole += 1,
                Some(told) if when == "older" && told.starts_with("check") => told_by_check += 1,
                Some(why) => times.failures.push(format!("file {i}, {when} ({}): {why}", alone.len())),
            }
            times.ran(None);
        }
        for round in 0..20 {
            let end = if round == 0 { place.log.len() } else { dice.below(place.log.len() + 1) };
            place.put(&place.file, Some(&place.log[..end]));
            let opened = Journal::open(&place.path(), &place.folder.path().join("shelf")).and_then(|own| lines(&own));
            let fits = opened.as_ref().is_ok_and(|lines| {
                lines.len() >= alone.len() && place.lines.starts_with(lines) && (round > 0 || *lines == place.lines)
            });
            own.ran((!fits).then(|| format!("file {i}, cut at {end}: {:?}", opened.map(|lines| lines.len()))));
        }
    }
    times.found =
        format!("{as_it_is} refused; {made_whole} made whole by the log; {told_by_check} told by check alone");
    assert!(as_it_is > 0, "none was refused: the test sees nothing");
    let failures = [others.told(), times.told(), own.told()].concat();
    assert!(failures.is_empty(), "{} failed: {failures:#?}", failures.len());
}

#[test]
fn the_program_says_that_a_log_is_foreign_and_what_to_do() {
    let (home, other) = (Home::default().begun(), Home::default().begun());
    for (home, count) in [(&home, 3), (&other, 5)] {
        for i in 0..count {
            home.write("noted", &[&format!("text=n{i}")]);
        }
    }
    // A program has the other one open, so its log stays; then it is carried over.
    let open = Journal::open(&other.file("nursery.outplant"), &other.file("another-shelf")).unwrap();
    other.write("noted", &["text=in the log"]);
    let log = fs::read(other.file("nursery.outplant-wal")).unwrap();
    drop(open);
    let lies = |home: &Home| {
        (fs::read(home.file("nursery.outplant")).unwrap(), fs::read(home.file("nursery.outplant-wal")).ok())
    };
    home.with("nursery.outplant-wal", &log);
    let before = lies(&home);
    for language in ["en", "es"] {
        for words in
            [&["ready"][..], &["write", "noted", "text=no"], &["undo"], &["export"], &["walk"], &["backup", "copy"]]
        {
            let ended = home.run(&[words, &["--lang", language]].concat());
            let says = if language == "en" { "is not that of" } else { "no es el de" };
            assert_eq!(ended.code, 3, "{words:?}: {}", ended.err);
            assert!(ended.err.contains(says) && ended.err.contains("nursery.outplant-wal"), "{}", ended.err);
            assert!(ended.err.contains("outplant rescue"), "what to do next: {}", ended.err);
            assert_eq!(lies(&home), before, "{words:?} changed something");
        }
        let checked = home.run(&["check", "--lang", language]);
        let says = if language == "en" { "is not its own" } else { "no es el suyo" };
        assert!(checked.code == 6 && checked.out.contains(says), "{}", checked.out);
        assert_eq!(lies(&home), before);
    }
    let rescued = home.file("rescued");
    let ended = home.run(&["rescue", &rescued.display().to_string()]);
    let text = fs::read_to_string(&rescued).unwrap();
    assert!(text.contains("\"text\":\"n2\"") && !text.contains("in the log"), "{}{}{text}", ended.out, ended.err);
    fs::rename(home.file("nursery.outplant-wal"), home.file("laid-aside")).unwrap();
    home.write("noted", &["text=again"]);
    assert_eq!(home.run(&["check"]).code, 0);
    assert!(Path::new(&home.file("laid-aside")).exists());
}
