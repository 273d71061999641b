//! What holds for any text.

use super::*;
use std::time::{Duration, Instant};

const PIECES: &[&str] = &[
    "k1",
    "K1",
    "k2",
    "ca-7",
    "Upper",
    "Bench 2",
    "3",
    "2.5",
    "-4",
    "dead",
    "lost",
    "rats",
    ",",
    " and ",
    "y",
    "->",
    "12 June",
    "ayer",
    "half",
    "dozen",
    "3x3",
    "5-6",
    "%",
    "60%",
    "mm",
    "in",
    "to",
    "de",
    "no",
    "?",
    "¿",
    "ñandú",
    "e\u{301}",
    "\u{200b}",
    "🌱",
    "9999999999",
    "1/0",
    "31/2",
    "a",
    "=",
    ":",
    "7:30",
    "mon",
    "sun",
    "plantain",
    "seeds",
    "flat",
    "2 l",
    "bolsa",
    "until 1 July",
    "-",
    "--",
    ".",
    "..",
    "x",
    "3x",
    "3mx",
    "k",
    "12k",
    "one",
    "hundred",
    "mil",
    "2h30",
    "İ",
    "ß",
];
/// No line takes so long, however busy the machine: a guard against a line that holds everything up, no measure of speed.
const LONGEST: Duration = Duration::from_secs(5);
/// The longest line.
const MOST_LETTERS: usize = 4000;

fn taken(reader: &Reader, text: &str) -> Duration {
    let began = Instant::now();
    let _ = reader.read(text, today());
    began.elapsed()
}

#[test]
fn no_text_holds_the_reader_up() {
    let mut seed: u64 = 20_260_617;
    let mut next = |most: usize| {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (seed >> 33) as usize % most
    };
    let reader = Reader::new(&World);
    let _ = reader.read("k1 3", today());
    let rounds = std::env::var("OUTPLANT_PROOF_OWN_WORDS").ok().and_then(|said| said.parse().ok()).unwrap_or(600);
    for round in 0..rounds {
        let pieces = if round % 30 == 0 { 1500 } else { 1 + next(30) };
        let mut text = String::new();
        for _ in 0..pieces {
            text.push_str(PIECES[next(PIECES.len())]);
            text.push_str([" ", " ", " ", ""][next(4)]);
        }
        let text: String = text.chars().take(MOST_LETTERS).collect();
        let took = taken(&reader, &text);
        assert!(took < LONGEST, "{took:?} for {text}");
    }
    for text in [
        "a".repeat(MOST_LETTERS),
        "1".repeat(MOST_LETTERS),
        ",".repeat(MOST_LETTERS),
        "k1 ".repeat(1333),
        "3x".repeat(2000),
    ] {
        assert!(taken(&reader, &text) < LONGEST, "{}", &text[..8]);
    }
}
