//! The dashboard on a real terminal: from start to the first frame, from a key to its frame, and memory; on the sample and
//! on a grown book. `cargo bench --bench screen [ENTRIES]`; `cargo bench --bench screen harsh` on the harsh book instead;
//! `cargo bench --bench screen light` the light of one hectare, from a change to its map of today.
//! Prints figures; judges nothing.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::print_stdout, dead_code)]

#[path = "../support/grown/mod.rs"]
mod grown;
#[path = "../support/large.rs"]
mod large;
#[path = "../support/screen.rs"]
mod screen;
#[path = "../support/taken.rs"]
mod taken;

use screen::Screen;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};
use taken::print;

/// Which grown book.
const SEED: u64 = 1;
/// Entries of the larger book, where nobody says otherwise.
const USUAL_ENTRIES: usize = 100_000;

fn main() {
    if std::env::args().any(|word| word == "harsh") {
        harsh();
        return;
    }
    if std::env::args().any(|word| word == "light") {
        light();
        return;
    }
    let wanted = std::env::args().skip(1).find_map(|word| word.parse().ok()).unwrap_or(USUAL_ENTRIES);
    let folder = tempfile::tempdir().unwrap();
    let sample = folder.path().join("sample.outplant");
    done(folder.path(), &["sample", "--into", sample.to_str().unwrap()]);
    measure("sample", folder.path(), &sample);
    let large = folder.path().join("large.outplant");
    let shelf = folder.path().join("shelf");
    std::fs::create_dir(&shelf).unwrap();
    let book = grown::write_grown(&large, &shelf, wanted, SEED).unwrap();
    // The first start reads all of it and keeps the stories.
    let day = book.last_day.to_string();
    done(folder.path(), &["--nursery", large.to_str().unwrap(), "ready", "--on", &day]);
    measure(&format!("{wanted} entries"), folder.path(), &large);
}

fn harsh() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("harsh.outplant");
    large::write_harsh(&file, || {
        let mut command = Command::new(program());
        command.env_clear().env("HOME", folder.path()).env("OUTPLANT_TODAY", large::TODAY).stdout(Stdio::null());
        command
    });
    measure("harsh", folder.path(), &file);
}

/// One hectare of 1,089 bananas and as many positions: the map of today, and all 24 months.
fn light() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("hectare.outplant");
    let words = ["--nursery", file.to_str().unwrap()];
    let run = |more: &[&str]| done(folder.path(), &[&words[..], more].concat());
    run(&["begin", "--name", "Hectare", "--lat", "-1.2", "--lon", "36.1", "--altitude", "1650"]);
    let plan = r#"plan=[{"species":"coffee","pattern":"square","row_m":3,"in_row_m":3,"offset_m":1}]"#;
    let bed = ["bed=One", "field=Hill", "length_m=99", "width_m=99", "edges=half", "row_bearing_deg=90", plan];
    run(&[&["write", "bed_set"], &bed[..]].concat());
    let nurses = ["bed=One", "nurse=banana", "count=1089", "row_m=3", "in_row_m=3", "happened=2025-09-01"];
    run(&[&["write", "nurse_planted"], &nurses[..]].concat());
    let today = [("OUTPLANT_TODAY", "2026-04-15")];
    let mut taken: [Vec<Duration>; 2] = [Vec::new(), Vec::new()];
    for _ in 0..8 {
        let mut screen = Screen::run(program(), &words, folder.path(), &today, (120, 40));
        screen.wait_for("1 Walk");
        screen.slowly("3");
        let begun = Instant::now();
        screen.keys("m");
        let until = |shown: &dyn Fn(&str) -> bool| {
            while !shown(&screen.text()) {
                std::thread::sleep(Duration::from_millis(1));
            }
        };
        until(&|text| text.contains("% light ("));
        taken[0].push(begun.elapsed());
        // Months that are not reckoned yet are dots in the line under their letters.
        let line = |text: &str| text.lines().skip_while(|line| !line.starts_with("  A  M")).nth(1).map(str::to_string);
        until(&|text| line(text).is_some_and(|line| !line.contains('·')));
        taken[1].push(begun.elapsed());
        screen.keys("\u{3}");
        screen.end(Duration::from_secs(30));
    }
    print("one hectare: from the key to the light of today on the plan", &mut taken[0], ("the longest", 1.0));
    print("one hectare: to all 24 months", &mut taken[1], ("the longest", 1.0));
}

fn program() -> &'static Path {
    Path::new(env!("CARGO_BIN_EXE_outplant"))
}

fn done(home: &Path, words: &[&str]) -> Vec<u8> {
    let ended =
        Command::new(program()).env_clear().env("HOME", home).args(words).stderr(Stdio::inherit()).output().unwrap();
    assert!(ended.status.success(), "{words:?}");
    ended.stdout
}

fn measure(name: &str, home: &Path, file: &Path) {
    let words = ["--nursery", file.to_str().unwrap()];
    let start = || {
        let begun = Instant::now();
        let screen = Screen::run(program(), &words, home, &[], (120, 40));
        screen.wait_for("1 Walk");
        (screen, begun.elapsed())
    };
    let mut starts: Vec<Duration> = (0..10)
        .map(|_| {
            let (mut screen, taken) = start();
            screen.keys("\u{3}");
            screen.end(Duration::from_secs(30));
            taken
        })
        .collect();
    print(&format!("{name}: start to first frame"), &mut starts, ("p99", 0.99));
    let (mut screen, _) = start();
    println!("{name}: memory after the start: {}", memory_of(&screen));
    for (screen_key, what) in SCREENS {
        screen.keys(screen_key);
        std::thread::sleep(Duration::from_millis(700));
        let mut keys: Vec<Duration> = (0..200).filter_map(|i| key_to_frame(&mut screen, i)).collect();
        print(&format!("{name}: key to frame, {what}"), &mut keys, ("p99", 0.99));
        println!("{name}: memory after {what}: {}", memory_of(&screen));
    }
    screen.keys("\u{3}");
    screen.end(Duration::from_secs(30));
}

/// Screens by their key, in the order in which they are looked at.
const SCREENS: [(&str, &str); 7] = [
    ("1", "Walk"),
    ("2", "Trays"),
    ("3", "Beds"),
    ("4", "Going out"),
    ("5", "Seed"),
    ("6", "Season"),
    ("7", "Journal"),
];

/// What the program holds now, and the most it ever held.
fn memory_of(screen: &Screen) -> String {
    let status = std::fs::read_to_string(format!("/proc/{}/status", screen.process())).unwrap_or_default();
    let of = |name: &str| {
        let line = status.lines().find_map(|line| line.strip_prefix(name)?.trim().strip_suffix(" kB"));
        line.and_then(|kib| kib.trim().parse::<u64>().ok())
            .map_or("not known here".into(), |kib| format!("{} MiB", kib / 1024))
    };
    format!("{}, at most {}", of("VmRSS:"), of("VmHWM:"))
}

/// Down and up in turn; the time until bytes of a new frame arrive.
fn key_to_frame(screen: &mut Screen, i: usize) -> Option<Duration> {
    let before = screen.bytes();
    let begun = Instant::now();
    screen.keys(if i.is_multiple_of(2) { "\u{1b}[B" } else { "\u{1b}[A" });
    while screen.bytes() == before {
        if begun.elapsed() > Duration::from_secs(2) {
            return None;
        }
        std::thread::sleep(Duration::from_micros(50));
    }
    let taken = begun.elapsed();
    std::thread::sleep(Duration::from_millis(5));
    Some(taken)
}
