//! The system refuses the n-th operation on the book: a disk error, or no room, at each one there is. `strace` puts the error
//! in; nothing of the program is changed for it.

use std::path::Path;
use std::process::{Command, Stdio};

use super::{Row, count, needs_strace};
use crate::support::program::{Ended, Home};

/// What can be refused, with the errors that a system gives there.
const CALLS: [(&str, &[&str]); 12] = [
    ("pwrite64", &["EIO", "ENOSPC"]),
    ("write", &["EIO", "ENOSPC"]),
    ("fsync", &["EIO"]),
    ("fdatasync", &["EIO"]),
    ("openat", &["EIO", "ENOSPC", "EMFILE"]),
    ("ftruncate", &["EIO"]),
    ("pread64", &["EIO"]),
    ("rename", &["EIO", "ENOSPC"]),
    ("linkat", &["EIO"]),
    ("unlink", &["EIO"]),
    ("mmap", &["ENOMEM"]),
    ("fcntl", &["EIO"]),
];
/// Lines of the import.
const LINES: usize = 20;

/// The program with words under `strace`, whose record stands in the file `trace`; `injected` is put before it.
pub(super) fn traced(home: &Home, injected: &[&str], words: &[&str]) -> Command {
    let mut command = Command::new("strace");
    command.args(["-f", "-o"]).arg(home.file("trace")).args(injected).arg(env!("CARGO_BIN_EXE_outplant")).args(words);
    command
        .env_clear()
        .env("HOME", home.path())
        .env("LANG", "C")
        .env("TZ", "NUR-2")
        .env("OUTPLANT_TODAY", &home.today)
        .env("OUTPLANT_NURSERY", home.file("nursery.outplant"))
        .env("PATH", std::env::var_os("PATH").unwrap_or_default())
        .stdin(Stdio::null());
    command
}

/// Runs it to its end.
pub(super) fn run(home: &Home, injected: &[&str], words: &[&str]) -> Ended {
    let output = traced(home, injected, words).output().unwrap();
    let text = |bytes: Vec<u8>| String::from_utf8_lossy(&bytes).into_owned();
    Ended { code: output.status.code().unwrap_or(-1), out: text(output.stdout), err: text(output.stderr) }
}

/// Which calls of one name, counted from 1, are about something below the home folder.
pub(super) fn operations(home: &Home, call: &str, words: &[&str]) -> Vec<usize> {
    let traced = run(home, &["-y", "-e", &format!("trace={call}")], words);
    assert_eq!(traced.code, 0, "{}", traced.err);
    let text = std::fs::read_to_string(home.file("trace")).unwrap();
    let begun = text.lines().filter(|line| line.split_whitespace().nth(1).is_some_and(|word| word.starts_with(call)));
    let below = home.path().to_string_lossy().into_owned();
    (1..).zip(begun).filter(|(_, line)| line.contains(&below)).map(|(number, _)| number).collect()
}

pub(super) fn fresh() -> Home {
    let home = Home { folder: super::quick_folder(), ..Home::default() }.begun();
    let lines: String = (0..LINES).map(|i| format!("{{\"kind\":\"noted\",\"text\":\"import of {i}.\"}}\n")).collect();
    home.with("lines", lines);
    home.write("noted", &["text=before"]);
    home
}

/// Copies a small nursery, so that each try begins with the same.
pub(super) fn copied(from: &Home) -> Home {
    let to = Home { folder: super::quick_folder(), ..Home::default() };
    let mut copy = Command::new("cp");
    let all = copy.arg("-a").arg(format!("{}/.", from.path().display())).arg(to.path()).status().unwrap();
    assert!(all.success());
    to
}

pub(super) fn works(home: &Home) -> [(&'static str, Vec<String>); 4] {
    let path = |name: &str| home.file(name).display().to_string();
    [
        ("an entry", vec!["write".into(), "noted".into(), "text=during".into()]),
        ("an import", vec!["import".into(), path("lines")]),
        ("a backup", vec!["backup".into(), path("copy")]),
        (
            "a book begun",
            vec!["begin", "--name", "T", "--lat", "0", "--lon", "36", "--altitude", "1500", "--nursery"]
                .into_iter()
                .map(String::from)
                .chain([path("another.outplant")])
                .collect(),
        ),
    ]
}

/// What is wrong after a run; `told` hears whether it was refused, and whether it was saved all the same.
pub(super) fn fault_after(home: &Home, work: &str, ended: &Ended, told: &mut Told) -> Option<String> {
    if ended.err.contains("panicked") || !(0..=6).contains(&ended.code) {
        return Some(format!("it ended with {}: {}", ended.code, ended.err));
    }
    if ended.code != 0 && ended.err.trim().is_empty() {
        return Some(format!("it ended with {} and said nothing", ended.code));
    }
    let checked = home.run(&["check", "--json"]);
    let export = home.run(&["export"]).out;
    if checked.code != 0 || !export.contains("\"text\":\"before\"") {
        return Some(format!("check ends with {}: {}", checked.code, checked.out));
    }
    let another = home.file("another.outplant").display().to_string();
    let of_import = export.matches("import of ").count();
    let is_there = match work {
        "an entry" => export.contains("\"text\":\"during\""),
        "an import" => of_import == LINES,
        "a backup" => home.file("copy").exists(),
        _ => home.run(&["export", "--nursery", &another]).out.contains("nursery_set"),
    };
    if of_import != 0 && of_import != LINES {
        return Some(format!("an import is there by half: {of_import}"));
    }
    for whole in ["copy", "another.outplant"].map(|name| home.file(name)).iter().filter(|path| path.exists()) {
        if !is_sound(home, whole) {
            return Some(format!("{} has its name and is not sound", whole.display()));
        }
    }
    if ended.code == 0 && !is_there {
        return Some("it was acknowledged and is not there".into());
    }
    told.refused += u64::from(ended.code != 0);
    told.left_empty += u64::from(!is_there && home.file("another.outplant").exists());
    told.saved_all_the_same += u64::from(ended.code != 0 && is_there);
    let after = home.run(&["write", "noted", "text=after"]);
    (after.code != 0).then(|| format!("it does not go on: {}", after.err))
}

fn is_sound(home: &Home, path: &Path) -> bool {
    home.run(&["check", "--nursery", &path.display().to_string()]).code == 0
}

#[derive(Default)]
pub(super) struct Told {
    pub refused: u64,
    pub saved_all_the_same: u64,
    /// Books that were made, but their first entry was not.
    pub left_empty: u64,
}

#[test]
fn an_error_of_the_disk_at_any_operation_loses_nothing_acknowledged_and_is_told() {
    needs_strace();
    // In `cargo test` every so many-eth operation, in the full run each.
    let step = count("FAULT_STEP", 9, 1) as usize;
    let fresh = fresh();
    let mut turn = 0;
    for number in 0..4 {
        let (work, _) = works(&fresh)[number].clone();
        let mut row = Row::begin(&format!("errors of the disk at every operation: {work}"));
        let mut told = Told::default();
        for (call, errors) in CALLS {
            let counted = copied(&fresh);
            let words = works(&counted)[number].1.clone();
            let words: Vec<&str> = words.iter().map(String::as_str).collect();
            for (nth, error) in operations(&counted, call, &words)
                .into_iter()
                .flat_map(|nth| errors.iter().map(move |error| (nth, error)))
            {
                turn += 1;
                if turn % step != 0 {
                    continue;
                }
                let home = copied(&fresh);
                let words = works(&home)[number].1.clone();
                let words: Vec<&str> = words.iter().map(String::as_str).collect();
                let trace = format!("trace={call}");
                let inject = format!("inject={call}:error={error}:when={nth}");
                let ended = run(&home, &["-e", &trace, "-e", &inject], &words);
                let failure = fault_after(&home, work, &ended, &mut told);
                row.ran(failure.map(|why| format!("{call} number {nth}: {error}: {why}")));
            }
        }
        row.found =
            format!("{} refused with a sentence, {} of them saved all the same", told.refused, told.saved_all_the_same);
        if told.left_empty > 0 {
            row.found += &format!(", {} a book without an entry", told.left_empty);
        }
        assert!(step > 1 || told.refused > 0, "nothing was refused: the test sees nothing");
        row.must_hold();
    }
}
