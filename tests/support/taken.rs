//! How long things took, as benches print it.

use std::process::Command;
use std::time::{Duration, Instant};

/// How often the memory of a running program is looked at.
const LOOK_EVERY: Duration = Duration::from_millis(2);

/// Runs something once to warm up, then so often, and prints the median and what 95 of 100 stay within, in milliseconds.
#[allow(dead_code)]
pub fn report(name: &str, times: usize, run: impl Fn()) {
    run();
    let mut taken: Vec<Duration> = (0..times)
        .map(|_| {
            let begun = Instant::now();
            run();
            begun.elapsed()
        })
        .collect();
    print(name, &mut taken, ("p95", 0.95));
}

/// Prints the median of times and one more of their quantiles, in milliseconds.
pub fn print(name: &str, taken: &mut [Duration], (label, share): (&str, f64)) {
    taken.sort();
    if taken.is_empty() {
        println!("{name}: nothing was measured");
        return;
    }
    let at = |share: f64| taken[((taken.len() - 1) as f64 * share) as usize].as_secs_f64() * 1000.0;
    println!("{name:52} median {:8.3} ms   {label} {:8.3} ms   {} times", at(0.5), at(share), taken.len());
}

/// Runs a program to its end; the answer is how many seconds it took, and the most memory it had.
#[allow(dead_code)]
pub fn watched(command: &mut Command) -> (f64, String) {
    let begun = Instant::now();
    let mut child = command.spawn().unwrap();
    let status = format!("/proc/{}/status", child.id());
    let mut peak_kib = None;
    let ended = loop {
        let said = std::fs::read_to_string(&status).unwrap_or_default();
        let line = said.lines().find_map(|line| line.strip_prefix("VmHWM:"));
        let kib = line.and_then(|line| line.trim().trim_end_matches(" kB").parse::<u64>().ok());
        peak_kib = peak_kib.max(kib);
        match child.try_wait().unwrap() {
            Some(ended) => break ended,
            None => std::thread::sleep(LOOK_EVERY),
        }
    };
    let seconds = begun.elapsed().as_secs_f64();
    assert!(ended.success(), "{command:?} ended with {ended}");
    let peak = peak_kib.map_or("memory not known here".into(), |kib| format!("{:.1} MiB", kib as f64 / 1024.0));
    (seconds, peak)
}
