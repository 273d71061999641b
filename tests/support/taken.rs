//! How long things took, as benches print it.

use std::time::{Duration, Instant};

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
