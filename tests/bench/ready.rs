//! `ready` as a whole process on the sample nursery, and on one of many trays and beds. Prints figures; judges nothing.
//! `cargo bench --bench ready sizes` asks nurseries of 100 to 10,000 trays and of 10 to 500 beds, for time and memory, and
//! draws the chart of docs/speed.md;
//! `cargo bench --bench ready harsh` the harsh book of 100,000 entries.
#![allow(clippy::unwrap_used, clippy::print_stdout)]

#[path = "../support/large.rs"]
mod large;
#[path = "../support/taken.rs"]
mod taken;

use std::fs::File;
use std::path::Path;
use std::process::{Command, Stdio};

use large::{HARSH, TODAY, write_harsh, write_large};
use taken::{Figure, chart, peak_of, report, watched};

/// Trays and beds of the large nursery.
const TRAYS: usize = 200;
const BEDS: usize = 60;

/// Trays and beds of the nurseries over which growth is looked at.
const SIZES: [(usize, usize); 7] =
    [(100, 10), (1_000, 10), (10_000, 10), (100, 100), (100, 500), (1_000, 100), (2_000, 200)];

fn main() {
    let folder = tempfile::tempdir().unwrap();
    if std::env::args().any(|word| word == "sizes") {
        let grown: Vec<_> = SIZES.iter().flat_map(|(trays, beds)| growth(folder.path(), *trays, *beds)).collect();
        println!("\nTime, seconds:\n{}", chart(&of_each(&grown, |one| one.1, "s")));
        println!("Memory, MiB:\n{}", chart(&of_each(&grown, |one| one.2, "MiB")));
        return;
    }
    if std::env::args().any(|word| word == "harsh") {
        harsh(folder.path());
        return;
    }
    let sample = folder.path().join("sample.outplant");
    assert!(program(folder.path()).args(["sample", "--into"]).arg(&sample).status().unwrap().success());
    for words in [vec!["ready"], vec!["ready", "--json"], vec!["why", "tray", "cof-021"], vec!["species"]] {
        let run = || assert!(asked(folder.path(), &sample, &words).status().unwrap().success());
        report(&format!("{}, sample", words.join(" ")), 60, run);
    }
    let large = folder.path().join("large.outplant");
    write_large(&large, (TRAYS, BEDS), || program(folder.path()));
    println!("{TRAYS} trays, {BEDS} beds of two species, {} pairs:", TRAYS * BEDS);
    for words in [vec!["ready"], vec!["ready", "--json"], vec!["ready", "--json", "--fits"], vec!["walk", "--json"]] {
        report(&format!("{}, large", words.join(" ")), 5, || {
            assert!(asked(folder.path(), &large, &words).status().unwrap().success());
        });
    }
    for (name, file) in [("sample", &sample), ("large", &large)] {
        let out = folder.path().join("answer.json");
        let (seconds, peak) =
            watched(asked(folder.path(), file, &["ready", "--json"]).stdout(File::create(&out).unwrap()));
        let kb = std::fs::metadata(&out).unwrap().len() as f64 / 1000.0;
        println!("ready --json, {name}: {kb:.0} kB in {seconds:.2} s, peak memory {peak}");
    }
}

/// What was asked of a nursery of how many trays and beds, the seconds and the MiB that it took.
type Asked = ((String, usize, usize), f64, f64);

/// Time and memory of the answers of a nursery of a size, printed as a row of the table in docs/speed.md.
fn growth(home: &Path, trays: usize, beds: usize) -> Vec<Asked> {
    let file = home.join(format!("{trays}-{beds}.outplant"));
    write_large(&file, (trays, beds), || program(home));
    let (mut cells, mut all) = (Vec::new(), Vec::new());
    for words in
        [vec!["ready"], vec!["walk"], vec!["ready", "--json", "--fits"], vec!["ready", "--json"], vec!["match"]]
    {
        let out = home.join("answer");
        let run = || peak_of(asked(home, &file, &words).stdout(File::create(&out).unwrap()));
        let (seconds, mib) = (0..3).map(|_| run()).min_by(|a, b| a.0.total_cmp(&b.0)).unwrap();
        let (mib, megabytes) = (mib.unwrap_or(0.0), std::fs::metadata(&out).unwrap().len() as f64 / 1e6);
        cells.push(format!("{seconds:.2} s, {mib:.0} MiB, {megabytes:.1} MB"));
        all.push(((words.join(" "), trays, beds), seconds, mib));
    }
    println!("| {trays} | {beds} | {} |", cells.join(" | "));
    all
}

/// The figures of `ready` and `ready --json`, by what was asked.
fn of_each(all: &[Asked], figure: impl Fn(&Asked) -> f64, unit: &str) -> Vec<Figure> {
    let of = |words: &str| -> Vec<Figure> {
        let asked = all.iter().filter(|((what, ..), ..)| what == words);
        let one = |asked: &Asked| {
            let ((what, trays, beds), value) = (&asked.0, figure(asked));
            let told = if value < 10.0 { format!("{value:.2} {unit}") } else { format!("{value:.0} {unit}") };
            Figure { what: what.clone(), size: format!("{trays} trays, {beds} beds"), value, told }
        };
        asked.map(one).collect()
    };
    of("ready").into_iter().chain(of("ready --json")).collect()
}

/// Time and memory of the answers of the harsh book, the day after it was written.
fn harsh(home: &Path) {
    let file = home.join("harsh.outplant");
    write_harsh(&file, || program(home));
    let (trays, beds, entries) = HARSH;
    println!("{trays} trays, {beds} beds, {entries} entries:");
    for words in
        [vec!["ready"], vec!["walk"], vec!["ready", "--json", "--fits"], vec!["ready", "--json"], vec!["check"]]
    {
        let out = home.join("answer");
        let (seconds, peak) = watched(asked(home, &file, &words).stdout(File::create(&out).unwrap()));
        let megabytes = std::fs::metadata(&out).unwrap().len() as f64 / 1e6;
        println!("| `{}` | {seconds:.1} s | {peak} | {megabytes:.1} MB |", words.join(" "));
    }
}

fn program(home: &Path) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_outplant"));
    command.env("HOME", home).env("OUTPLANT_TODAY", TODAY).stdin(Stdio::null()).stdout(Stdio::null());
    command
}

fn asked(home: &Path, nursery: &Path, words: &[&str]) -> Command {
    let mut command = program(home);
    command.arg("--nursery").arg(nursery).args(words);
    command
}
