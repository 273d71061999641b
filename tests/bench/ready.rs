//! `ready` as a whole process on the sample nursery, and on one of many trays and beds. Prints figures; judges nothing.
//! `cargo bench --bench ready sizes` asks nurseries of 100 to 10,000 trays and of 10 to 500 beds, for time and memory.
#![allow(clippy::unwrap_used, clippy::print_stdout)]

#[path = "../support/taken.rs"]
mod taken;

use std::fs::File;
use std::path::Path;
use std::process::{Command, Stdio};

use serde_json::{Value, json};
use taken::{report, watched};

/// The day of both nurseries.
const TODAY: &str = "2026-11-25";
/// Trays and beds of the large nursery; each bed plans both species, so that each tray is asked about in each bed.
const TRAYS: usize = 200;
const BEDS: usize = 60;
const SPECIES: [&str; 2] = ["COA", "GRE"];

/// Trays and beds of the nurseries over which growth is looked at.
const SIZES: [(usize, usize); 7] =
    [(100, 10), (1_000, 10), (10_000, 10), (100, 100), (100, 500), (1_000, 100), (2_000, 200)];

fn main() {
    let folder = tempfile::tempdir().unwrap();
    if std::env::args().any(|word| word == "sizes") {
        SIZES.iter().for_each(|(trays, beds)| growth(folder.path(), *trays, *beds));
        return;
    }
    let sample = folder.path().join("sample.outplant");
    assert!(program(folder.path()).args(["sample", "--into"]).arg(&sample).status().unwrap().success());
    for words in [vec!["ready"], vec!["ready", "--json"], vec!["why", "tray", "cof-021"], vec!["species"]] {
        let run = || assert!(asked(folder.path(), &sample, &words).status().unwrap().success());
        report(&format!("{}, sample", words.join(" ")), 60, run);
    }
    let large = folder.path().join("large.outplant");
    write_large(folder.path(), &large, TRAYS, BEDS);
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

/// Time and memory of the answers of a nursery of a size, as a row of the table in docs/speed.md.
fn growth(home: &Path, trays: usize, beds: usize) {
    let file = home.join(format!("{trays}-{beds}.outplant"));
    write_large(home, &file, trays, beds);
    let cells =
        [vec!["ready"], vec!["walk"], vec!["ready", "--json", "--fits"], vec!["ready", "--json"]].map(|words| {
            let out = home.join("answer");
            let mut least: Option<(f64, String)> = None;
            for _ in 0..3 {
                let ran = watched(asked(home, &file, &words).stdout(File::create(&out).unwrap()));
                least = Some(least.filter(|least| least.0 < ran.0).unwrap_or(ran));
            }
            let (seconds, peak) = least.unwrap();
            format!("{seconds:.2} s, {peak}, {:.1} MB", std::fs::metadata(&out).unwrap().len() as f64 / 1e6)
        });
    println!("| {trays} | {beds} | {} |", cells.join(" | "));
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

/// An invented nursery of many trays and beds about which everything was looked at.
fn write_large(home: &Path, nursery: &Path, trays: usize, beds: usize) {
    let begin = ["begin", "--name", "Large", "--lat", "-1.2", "--lon", "36.1", "--altitude", "1650"];
    assert!(asked(home, nursery, &begin).status().unwrap().success());
    let lines = home.join("large.jsonl");
    let text: Vec<String> = large(trays, beds).iter().map(Value::to_string).collect();
    std::fs::write(&lines, text.join("\n")).unwrap();
    assert!(asked(home, nursery, &["import"]).arg(&lines).status().unwrap().success());
}

fn large(trays: usize, beds: usize) -> Vec<Value> {
    let mut all = vec![
        json!({"kind":"season_set","happened":"2025-01-01","rains":[{"from":"10-15","until":"02-28"}]}),
        json!({"kind":"place_set","happened":"2025-01-01","place":"Deep shade","order":1,"shade_pct":70}),
        json!({"kind":"place_set","happened":"2025-01-01","place":"Half shade","order":2,"shade_pct":45}),
        json!({"kind":"container_set","happened":"2025-01-01","container":"bag","volume_ml":1000,"depth_cm":23}),
    ];
    for species in SPECIES {
        all.push(json!({"kind":"lot_received","happened":"2025-01-01","lot":format!("L-{species}"),"species":species,
            "source":"school row","collected":"2025-01-01","kept":"in_parchment","seeds":20000.max(60 * trays)}));
    }
    (0..trays).for_each(|number| all.extend(tray(number)));
    (0..beds).for_each(|number| all.extend(bed(number)));
    for day in 10..25 {
        all.push(json!({"kind":"weather","happened":format!("2026-11-{day}"),"rain_mm":8}));
    }
    all
}

fn tray(number: usize) -> [Value; 5] {
    let (tray, species) = (format!("t-{:03}", number + 1), SPECIES[number % 2]);
    let plants: Vec<Value> =
        (0..20).map(|i| json!({"height_cm": 22 + (number + i) % 9, "collar_mm": 4.5, "leaf_pairs": 7})).collect();
    [
        json!({"kind":"sown","happened":"2025-12-01","tray":tray,"lot":format!("L-{species}"),"seeds":60,
            "container":"bag","cells":60,"place":"Deep shade"}),
        json!({"kind":"counted","happened":"2026-03-10","tray":tray,"standing":50}),
        json!({"kind":"carried","happened":"2026-09-01","tray":tray,"place":"Half shade"}),
        json!({"kind":"counted","happened":"2026-11-10","tray":tray,"standing":30 + number % 19}),
        json!({"kind":"measured","happened":"2026-11-10","tray":tray,"plants":plants}),
    ]
}

/// Two beds of three are made ready.
fn bed(number: usize) -> Vec<Value> {
    let bed = format!("Bed {:02}", number + 1);
    let plan: Vec<Value> = SPECIES
        .iter()
        .map(|species| json!({"species":species,"pattern":"square","row_m":2 + number % 2,"in_row_m":2}))
        .collect();
    let light = 0.4 + 0.01 * (number % 40) as f64;
    let mut all = vec![
        json!({"kind":"bed_set","happened":"2025-01-01","bed":bed,"field":"Upper","length_m":20,"width_m":6,"plan":plan}),
        json!({"kind":"light_read","happened":"2026-11-01","bed":bed,"light_share":light}),
        json!({"kind":"soil_checked","happened":"2026-11-01","bed":bed,"resistance_mpa":1.2,"depth_cm":30,"wet":true}),
    ];
    let done = if number.is_multiple_of(3) { 1 } else { 4 };
    for task in ["cleared", "holes", "weeded", "mulched"].into_iter().take(done) {
        all.push(json!({"kind":"prepared","happened":"2026-11-05","bed":bed,"task":task}));
    }
    all
}
