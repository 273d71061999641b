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
/// The longest a line may take; four times that where nothing is optimised and the machine may be busy.
const LONGEST: Duration = Duration::from_millis(if cfg!(debug_assertions) { 200 } else { 50 });
/// The longest line.
const MOST_LETTERS: usize = 4000;

/// The shortest of a few readings: the machine may be busy.
fn shortest(reader: &Reader, text: &str) -> Duration {
    let once = || {
        let began = Instant::now();
        let _ = reader.read(text, today());
        began.elapsed()
    };
    let first = once();
    if first < LONGEST { first } else { (0..4).map(|_| once()).min().unwrap_or(first) }
}

#[test]
fn any_text_is_read_in_time() {
    let mut seed: u64 = 20_260_617;
    let mut next = |most: usize| {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (seed >> 33) as usize % most
    };
    let reader = Reader::new(&World);
    let _ = reader.read("k1 3", today());
    for round in 0..600 {
        let pieces = if round % 30 == 0 { 1500 } else { 1 + next(30) };
        let mut text = String::new();
        for _ in 0..pieces {
            text.push_str(PIECES[next(PIECES.len())]);
            text.push_str([" ", " ", " ", ""][next(4)]);
        }
        let text: String = text.chars().take(MOST_LETTERS).collect();
        let took = shortest(&reader, &text);
        assert!(took < LONGEST, "{took:?} for {text}");
    }
    for text in [
        "a".repeat(MOST_LETTERS),
        "1".repeat(MOST_LETTERS),
        ",".repeat(MOST_LETTERS),
        "k1 ".repeat(1333),
        "3x".repeat(2000),
    ] {
        assert!(shortest(&reader, &text) < LONGEST, "{}", &text[..8]);
    }
}
