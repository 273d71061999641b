//! The dashboard on a real terminal: from start to the first frame, from a key to its frame, and memory; on the sample and
//! on a book of copies of it. `cargo bench --bench screen [ENTRIES]`. Prints figures; judges nothing.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::print_stdout, dead_code)]

#[path = "../support/screen.rs"]
mod screen;
#[path = "../support/taken.rs"]
mod taken;

use screen::Screen;
use serde_json::{Map, Value};
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};
use taken::print;

/// Entries of the larger book, where nobody says otherwise.
const USUAL_ENTRIES: usize = 100_000;

fn main() {
    let wanted = std::env::args().skip(1).find_map(|word| word.parse().ok()).unwrap_or(USUAL_ENTRIES);
    let folder = tempfile::tempdir().unwrap();
    let sample = folder.path().join("sample.outplant");
    done(folder.path(), &["sample", "--into", sample.to_str().unwrap()]);
    measure("sample", folder.path(), &sample);
    let begun = Instant::now();
    let (large, entries) = copies(folder.path(), &sample, wanted);
    println!("a book of {entries} entries imported in {:.1} s", begun.elapsed().as_secs_f64());
    measure(&format!("{entries} entries"), folder.path(), &large);
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

/// A nursery of copies of the sample: trays, lots and beds of each under names of their own.
fn copies(home: &Path, sample: &Path, wanted: usize) -> (PathBuf, usize) {
    let lines = done(home, &["--nursery", sample.to_str().unwrap(), "export"]);
    let lines: Vec<Map<String, Value>> = String::from_utf8(lines)
        .unwrap()
        .lines()
        .filter_map(|line| serde_json::from_str::<Value>(line).ok())
        .filter_map(|line| line.as_object().cloned())
        .filter(|line| line.get("kind").is_some_and(|kind| kind != "withdrawn" && kind != "let_go"))
        .collect();
    let large = home.join("large.outplant");
    let file = home.join("large.jsonl");
    let mut out = std::io::BufWriter::new(std::fs::File::create(&file).unwrap());
    let mut written = 0;
    for copy in 0.. {
        if written >= wanted {
            break;
        }
        for line in &lines {
            let mut line = line.clone();
            for name in ["id", "prev", "hash", "recorded", "command"] {
                line.remove(name);
            }
            let site = ["nursery_set", "season_set", "species_set", "place_set", "container_set", "weather"];
            let is_site = line.get("kind").and_then(Value::as_str).is_some_and(|kind| site.contains(&kind));
            if copy > 0 && is_site {
                continue;
            }
            rename(&mut line, copy);
            writeln!(out, "{}", Value::Object(line)).unwrap();
            written += 1;
        }
    }
    drop(out);
    let begin = ["--nursery", large.to_str().unwrap()];
    done(
        home,
        &[&begin[..], &["begin", "--name", "Copies", "--lat", "-1", "--lon", "37", "--altitude", "1700"]].concat(),
    );
    done(home, &[&begin[..], &["import", file.to_str().unwrap()]].concat());
    (large, written)
}

/// Puts the number of the copy behind every name of a tray, lot, bed or field.
fn rename(line: &mut Map<String, Value>, copy: usize) {
    if copy == 0 {
        return;
    }
    let is_move = line.get("kind").is_some_and(|kind| kind == "moved_on");
    for (name, value) in line.iter_mut() {
        let is_name = matches!(name.as_str(), "tray" | "lot" | "bed" | "field" | "was" | "share_of" | "for_bed")
            || (is_move && matches!(name.as_str(), "from" | "to"));
        match value {
            Value::String(text) if is_name && text != "unknown" => text.push_str(&format!("/{copy}")),
            Value::Object(inner) => rename(inner, copy),
            Value::Null | Value::Bool(_) | Value::Number(_) | Value::String(_) | Value::Array(_) => {}
        }
    }
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
    for (screen_key, what) in [("1", "Walk"), ("2", "Trays"), ("4", "Going out"), ("7", "Journal")] {
        screen.keys(screen_key);
        std::thread::sleep(Duration::from_millis(700));
        let mut keys: Vec<Duration> = (0..200).filter_map(|i| key_to_frame(&mut screen, i)).collect();
        print(&format!("{name}: key to frame, {what}"), &mut keys, ("p99", 0.99));
    }
    let status = std::fs::read_to_string(format!("/proc/{}/status", screen.process())).unwrap_or_default();
    let memory = status.lines().find(|line| line.starts_with("VmRSS")).unwrap_or("VmRSS: not known here");
    println!("{name}: {}", memory.split_whitespace().collect::<Vec<_>>().join(" "));
    screen.keys("\u{3}");
    screen.end(Duration::from_secs(30));
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
