//! How long plans take, on the instances of the reference and on drawn ones of several sizes; `tests/bench/against_highs.py` runs it
//! and another solver on the same instances. Words behind `cargo bench --bench matching`: `shared` (a hundred with shares of what is
//! planted), `write FOLDER` (the instances as JSON, for the other).
#![allow(missing_docs, clippy::print_stdout, clippy::unwrap_used, clippy::panic)]

#[path = "../support/plans.rs"]
mod plans;

use std::time::Instant;

use outplant::science::matching::{Own, ShareOf, Solver, Stated, check};
use plans::{Shape, drawn, of_json};
use serde_json::{Map, Value, json};

/// Seconds after which the best plan so far is the answer.
const LONGEST_S: f64 = 10.0;
/// Runs of which the middle one counts.
const RUNS: usize = 3;

fn sizes() -> Vec<(String, Stated)> {
    let mut all = Vec::new();
    for (groups, beds) in [(150, 40), (300, 60), (600, 100), (1_000, 200)] {
        let weeks = if groups == 150 { 16 } else { 26 };
        for (name, share_percent) in [("no share", 100), ("share of positions", 30)] {
            let shape = shape(groups, beds, weeks, ShareOf::Positions, share_percent, 12);
            all.push((format!("{groups} x {beds} x {weeks}, {name}"), drawn(groups, &shape)));
        }
    }
    all
}

fn shared() -> Vec<(String, Stated)> {
    let one = |seed: u64| {
        let shape = shape(100, 30, 14, ShareOf::Planted, 22 + seed % 29, 5 + seed % 10);
        (format!("100 x 30 x 14, share of the planted, {seed}"), drawn(1_000 + seed, &shape))
    };
    (0..100).map(one).collect()
}

fn shape(groups: u64, beds: u64, weeks: u64, of: ShareOf, share_percent: u64, sources: u64) -> Shape {
    Shape { groups, beds, weeks, species: 6, sources, blocks: 4, plants: 90, work_percent: 70, of, share_percent }
}

fn reference() -> Vec<(String, Stated)> {
    let all: Value = serde_json::from_str(include_str!("../reference/matching.json")).unwrap();
    let each = all["instances"].as_array().unwrap().iter();
    each.map(|instance| (instance["id"].as_str().unwrap().to_string(), of_json(instance))).collect()
}

/// Seconds of the middle run, the objective and the bound.
fn measured(stated: &Stated) -> (f64, i64, i64) {
    let instance = stated.clone().instance().unwrap();
    let mut seconds = Vec::new();
    let mut found = None;
    for _ in 0..RUNS {
        let begun = Instant::now();
        let solved = Own.solve(&instance, &mut |_| begun.elapsed().as_secs_f64() < LONGEST_S);
        seconds.push(begun.elapsed().as_secs_f64());
        assert_eq!(check(&instance, &solved.plan), Ok(solved.objective), "a plan that cannot be carried out");
        found = Some(solved);
        if seconds[0] > 1.0 {
            break;
        }
    }
    seconds.sort_by(f64::total_cmp);
    let solved = found.unwrap();
    (seconds[seconds.len() / 2], solved.objective, solved.bound)
}

fn main() {
    let words: Vec<String> = std::env::args().skip(1).filter(|word| !word.starts_with("--")).collect();
    let mut all = sizes();
    if words.iter().any(|word| word == "shared") {
        all.extend(shared());
    }
    if let Some(at) = words.iter().position(|word| word == "write") {
        for (name, stated) in &all {
            let file = std::path::Path::new(&words[at + 1]).join(format!("{}.json", name.replace([' ', ','], "_")));
            std::fs::write(file, as_json(stated).to_string()).unwrap();
        }
    }
    println!("| instance | seconds | objective | bound |\n| --- | --- | --- | --- |");
    let of_reference: Vec<(f64, i64, i64)> = reference().iter().map(|(_, stated)| measured(stated)).collect();
    let proven = of_reference.iter().filter(|(_, objective, bound)| objective == bound).count();
    let sum: f64 = of_reference.iter().map(|(seconds, _, _)| seconds).sum();
    println!("| all {} of the reference | {sum:.4} | {proven} proven | |", of_reference.len());
    for (name, stated) in &all {
        let (seconds, objective, bound) = measured(stated);
        println!("| {name} | {seconds:.4} | {objective} | {bound} |");
    }
}

/// An instance as `calc matching` reads it.
fn as_json(stated: &Stated) -> Value {
    let groups = stated.groups.iter().map(|group| {
        json!({"id":group.group.id,"species":group.species,"source":group.group.source,"block":group.block,
            "supply":group.group.supply,"ready_week":group.ready_week,"last_week":group.last_week})
    });
    let mut beds: Map<String, Value> = Map::new();
    for open in &stated.openings {
        let bed = beds.entry(open.opening.bed.clone()).or_insert_with(|| json!([]));
        bed.as_array_mut().unwrap().push(json!({"species":open.opening.species,"positions":open.opening.positions,
            "from_week":open.from_week,"until_week":open.until_week}));
    }
    let values = &stated.values;
    json!({"weeks":stated.work.len(),"groups":groups.collect::<Vec<Value>>(),"labour_per_week":stated.work,
        "beds":beds.into_iter().map(|(id, open)| json!({"id":id,"open":open})).collect::<Vec<Value>>(),
        "max_source_share":stated.share.parts as f64 / stated.share.whole as f64,
        "share_basis":match stated.share.of { ShareOf::Positions => "open_positions", ShareOf::Planted => "assigned" },
        "value":{"base":values.base,"wait_penalty_per_week":values.wait_penalty_per_week,
            "mismatch":values.mismatch,"block_distance":values.block_distance}})
}
