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
    let (seconds, mib) = peak_of(command);
    (seconds, mib.map_or("memory not known here".into(), |mib| format!("{mib:.1} MiB")))
}

/// The same with the memory as a number, MiB; none where the system does not say.
#[allow(dead_code)]
pub fn peak_of(command: &mut Command) -> (f64, Option<f64>) {
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
    (seconds, peak_kib.map(|kib| kib as f64 / 1024.0))
}

/// A figure at a size, for a chart.
#[allow(dead_code)]
pub struct Figure {
    /// What was measured.
    pub what: String,
    /// At which size.
    pub size: String,
    /// The figure itself.
    pub value: f64,
    /// As it is said.
    pub told: String,
}

/// Draws figures as bars, those of one thing under each other. Ten signs are ten times as much: what grows as its size does
/// grows by ten signs where the size is tenfold.
#[allow(dead_code)]
pub fn chart(figures: &[Figure]) -> String {
    const SIGNS_TENFOLD: f64 = 10.0;
    let least = figures.iter().map(|figure| figure.value).fold(f64::INFINITY, f64::min);
    let room = figures.iter().map(|figure| figure.size.len()).max().unwrap_or(0);
    let (mut text, mut before) = (String::new(), "");
    for figure in figures {
        if figure.what != before {
            text.push_str(&format!("{}{}\n", if before.is_empty() { "" } else { "\n" }, figure.what));
            before = &figure.what;
        }
        let signs = 1.0 + (figure.value / least).log10() * SIGNS_TENFOLD;
        let bar = "█".repeat(signs.round() as usize);
        text.push_str(&format!("  {:>room$}  {bar} {}\n", figure.size, figure.told));
    }
    text
}
