//! The proof of the file: damages, kills, power cuts, full disks, foreign text. Small counts in `cargo test`; the counts
//! of docs/proof.md by `tests/proof/run`, which prints its table.

mod damage;
mod disk;
mod faults;
mod foreign;
mod kills;
mod large;
mod power;
mod struck;
mod text;
mod unnoticed;

use std::time::Instant;

/// How often something is tried: a few times in `cargo test`; `OUTPLANT_PROOF_NAME` says another number, and
/// `OUTPLANT_PROOF=full` asks for all of it.
pub fn count(name: &str, small: u64, full: u64) -> u64 {
    let said = std::env::var(format!("OUTPLANT_PROOF_{name}")).ok().and_then(|text| text.parse().ok());
    let all = std::env::var("OUTPLANT_PROOF").is_ok_and(|text| text == "full");
    said.unwrap_or(if all { full } else { small })
}

/// One line of the table.
pub struct Row {
    what: String,
    began: Instant,
    pub run: u64,
    pub failures: Vec<String>,
    pub found: String,
}

impl Row {
    /// Begins a line.
    pub fn begin(what: &str) -> Row {
        Row { what: what.into(), began: Instant::now(), run: 0, failures: Vec::new(), found: String::new() }
    }

    /// One more run; where it failed, why.
    pub fn ran(&mut self, failure: Option<String>) {
        self.run += 1;
        self.failures.extend(failure);
    }

    /// Prints the line. What failed is given back.
    #[must_use]
    pub fn told(self) -> Vec<String> {
        let Row { what, began, run, failures, found } = self;
        println!("\n| {what} | {run} | {} | {:.0} | {found} |", failures.len(), began.elapsed().as_secs_f64());
        failures
    }

    /// Prints the line; nothing may have failed.
    pub fn must_hold(self) {
        let failures = self.told();
        assert!(failures.is_empty(), "{} failed, the first: {}", failures.len(), failures[0]);
    }
}

/// Numbers that look random and are the same in every run.
pub struct Dice(u64);

impl Dice {
    pub fn new(seed: u64) -> Dice {
        Dice(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1)
    }

    pub fn roll(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0.wrapping_mul(0x2545_f491_4f6c_dd1d) >> 11
    }

    pub fn below(&mut self, end: usize) -> usize {
        (self.roll() % end.max(1) as u64) as usize
    }

    pub fn bytes(&mut self, length: usize) -> Vec<u8> {
        (0..length).map(|_| self.roll() as u8).collect()
    }
}

/// A folder in memory where the system has one: what is proven here is not the speed of a disk.
pub fn quick_folder() -> tempfile::TempDir {
    tempfile::tempdir_in("/dev/shm").unwrap_or_else(|_| tempfile::tempdir().unwrap())
}

/// System calls are recorded, and errors put in, by `strace`. Without it these tests prove nothing, so they fail.
pub fn needs_strace() {
    use std::process::{Command, Stdio};
    let there = Command::new("strace").arg("-V").stdout(Stdio::null()).stderr(Stdio::null()).status();
    assert!(there.is_ok_and(|end| end.success()), "these tests need strace: install the package `strace`");
}

/// Runs something that must not panic.
pub fn unharmed<T>(what: &str, work: impl FnOnce() -> T) -> Result<T, String> {
    std::panic::catch_unwind(std::panic::AssertUnwindSafe(work)).map_err(|_| format!("{what}: it panicked"))
}
