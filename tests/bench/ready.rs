//! `ready` as a whole process on the sample nursery, and the fold alone. Prints figures; judges nothing.
#![allow(clippy::unwrap_used, clippy::print_stdout)]

use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

fn main() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("sample.outplant");
    let program = || {
        let mut command = Command::new(env!("CARGO_BIN_EXE_outplant"));
        command.env("HOME", folder.path()).env("OUTPLANT_TODAY", "2026-11-25").stdout(Stdio::null());
        command
    };
    assert!(program().args(["sample", "--into"]).arg(&file).status().unwrap().success());
    let figures = [
        ("ready, whole process", vec!["ready"]),
        ("ready --json, whole process", vec!["ready", "--json"]),
        ("why tray, whole process", vec!["why", "tray", "cof-021"]),
        ("species, whole process", vec!["species"]),
    ];
    for (name, words) in figures {
        let run = || assert!(program().arg("--nursery").arg(&file).args(&words).status().unwrap().success());
        report(name, 60, run);
    }
}

fn report(name: &str, times: usize, run: impl Fn()) {
    run();
    let mut taken: Vec<Duration> = (0..times)
        .map(|_| {
            let begun = Instant::now();
            run();
            begun.elapsed()
        })
        .collect();
    taken.sort();
    let at = |share: f64| taken[((times - 1) as f64 * share) as usize].as_secs_f64() * 1000.0;
    println!("{name:32} median {:6.1} ms   p95 {:6.1} ms   {times} runs", at(0.5), at(0.95));
}
