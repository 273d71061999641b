//! Invented nurseries of many trays and beds about which everything was looked at, as benches ask them.

use std::path::Path;
use std::process::Command;

use serde_json::{Value, json};

/// The day on which they are looked at.
pub const TODAY: &str = "2026-11-25";
/// Species of the large nurseries: each bed plans both, so that each tray is asked about in each bed.
const SPECIES: [&str; 2] = ["COA", "GRE"];

/// Trays, beds and entries of the harsh book: far more of all than any nursery has, ten times what a hard year of writing
/// at random left. Of its five species a bed plans one, so that every fifth pair is asked about.
#[allow(dead_code)]
pub const HARSH: (usize, usize, usize) = (3_660, 1_260, 100_000);
#[allow(dead_code)]
const HARSH_SPECIES: [&str; 5] = ["COA", "GRE", "CAC", "AVO", "MAN"];

/// Writes a nursery in which each tray is asked about in each bed.
#[allow(dead_code)]
pub fn write_large(nursery: &Path, (trays, beds): (usize, usize), program: impl Fn() -> Command) {
    write(nursery, &large(trays, beds, &SPECIES, SPECIES.len()), program);
}

/// Writes the harsh book.
#[allow(dead_code)]
pub fn write_harsh(nursery: &Path, program: impl Fn() -> Command) {
    let (trays, beds, entries) = HARSH;
    let mut all = large(trays, beds, &HARSH_SPECIES, 1);
    let wanted = entries - 1 - all.len();
    // Every tray is counted again and again.
    let counts = (0..wanted).map(|i| {
        let (tray, week) = (i % trays, i / trays);
        let happened = outplant::base::Day::from_ymd(2026, 3, 20).map(|day| day.plus(week as i32)).unwrap();
        json!({"kind":"counted","happened":happened,"tray":tray_name(tray),"standing":50 - week.min(15)})
    });
    all.extend(counts);
    write(nursery, &all, program);
}

fn write(nursery: &Path, lines: &[Value], program: impl Fn() -> Command) {
    let asked = |words: &[&str]| {
        let mut command = program();
        command.arg("--nursery").arg(nursery).args(words);
        command
    };
    let begin = ["begin", "--name", "Large", "--lat", "-1.2", "--lon", "36.1", "--altitude", "1650"];
    assert!(asked(&begin).status().unwrap().success());
    let text: Vec<String> = lines.iter().map(Value::to_string).collect();
    let file = nursery.with_extension("jsonl");
    std::fs::write(&file, text.join("\n")).unwrap();
    assert!(asked(&["import"]).arg(&file).status().unwrap().success());
}

fn large(trays: usize, beds: usize, species: &[&str], planned: usize) -> Vec<Value> {
    let mut all = vec![
        json!({"kind":"season_set","happened":"2025-01-01","rains":[{"from":"10-15","until":"02-28"}]}),
        json!({"kind":"place_set","happened":"2025-01-01","place":"Deep shade","order":1,"shade_pct":70}),
        json!({"kind":"place_set","happened":"2025-01-01","place":"Half shade","order":2,"shade_pct":45}),
        json!({"kind":"container_set","happened":"2025-01-01","container":"bag","volume_ml":1000,"depth_cm":23}),
    ];
    for one in species {
        all.push(json!({"kind":"lot_received","happened":"2025-01-01","lot":format!("L-{one}"),"species":one,
            "source":"school row","collected":"2025-01-01","kept":"in_parchment","seeds":20000.max(60 * trays)}));
    }
    (0..trays).for_each(|number| all.extend(tray(number, species)));
    (0..beds).for_each(|number| all.extend(bed(number, species, planned)));
    for day in 10..25 {
        all.push(json!({"kind":"weather","happened":format!("2026-11-{day}"),"rain_mm":8}));
    }
    all
}

fn tray_name(number: usize) -> String {
    format!("t-{:03}", number + 1)
}

fn tray(number: usize, species: &[&str]) -> [Value; 5] {
    let (tray, species) = (tray_name(number), species[number % species.len()]);
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
fn bed(number: usize, species: &[&str], planned: usize) -> Vec<Value> {
    let bed = format!("Bed {:02}", number + 1);
    let plan: Vec<Value> = (0..planned)
        .map(|at| species[(number + at) % species.len()])
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
