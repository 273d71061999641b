//! Probe.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::print_stdout, dead_code)]
#[path = "../support/grown/mod.rs"]
mod grown;
use outplant::reckon::{Fold, View, round};
use std::sync::Arc;
use std::time::Instant;
fn main() {
    let n: usize = std::env::args().nth(1).unwrap().parse().unwrap();
    let f = std::path::PathBuf::from(format!("/tmp/big/g{n}.outplant"));
    let shelf = std::path::PathBuf::from("/tmp/big/shelf");
    std::fs::create_dir_all(&shelf).unwrap();
    if !f.exists() {
        let t = Instant::now();
        let _ = grown::write_grown(&f, &shelf, n, 1);
        println!("written {:?}", t.elapsed());
    }
    let t = Instant::now();
    let j = outplant::journal::Journal::open_read_only(&f).unwrap();
    let e: Vec<_> = j.entries().unwrap().into_iter().map(Arc::new).collect();
    println!("read+parse {} {:?}", e.len(), t.elapsed());
    let day = e.iter().map(|e| e.happened).max().unwrap();
    println!("last day {day:?}");
    let t = Instant::now();
    let fold = Fold::new(View { day, known: None }, day, e.iter().cloned());
    println!(
        "fold {:?} trays {} lots {} beds {}",
        t.elapsed(),
        fold.trays().len(),
        fold.lots().len(),
        fold.beds().len()
    );
    let alive = fold.trays().values().filter(|t| t.accounts.standing > 0 || t.seed_is_due(day)).count();
    let ent: usize =
        fold.trays().values().filter(|t| t.accounts.standing > 0 || t.seed_is_due(day)).map(|t| t.entries.len()).sum();
    println!("alive trays {alive} with {ent} entries");
    for _ in 0..2 {
        let t = Instant::now();
        let p = fold.picture();
        println!("picture {:?} pairs {} doubts {}", t.elapsed(), p.pairs.iter().count(), p.doubts.len());
        let t = Instant::now();
        let r = round(&p);
        println!("round {:?} {} stops", t.elapsed(), r.stops.len());
        let t = Instant::now();
        drop(p);
        println!("drop {:?}", t.elapsed());
    }
}
