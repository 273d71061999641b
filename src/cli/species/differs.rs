//! What a new species has otherwise than the one it is like, in a few plain words: `light 60 to 100`, `altura 30 cm`.

use serde_json::{Map, Value, json};

use crate::base::text::folded;
use crate::cli::begin::figure;

/// A figure that is told with one word, in English and in Spanish.
struct Told {
    words: &'static [&'static str],
    /// The figure for the first number, and the one for a second.
    figures: [&'static str; 2],
    /// Whether light is said and shade is kept: percent of the rest.
    of_the_rest: bool,
}

const TOLD: [Told; 6] = [
    Told {
        words: &["light", "luz"],
        figures: ["outplant_shade_most_pct", "outplant_shade_least_pct"],
        of_the_rest: true,
    },
    Told {
        words: &["shade", "sombra"],
        figures: ["outplant_shade_least_pct", "outplant_shade_most_pct"],
        of_the_rest: false,
    },
    Told { words: &["height", "altura", "alto"], figures: ["height_least_cm", "height_most_cm"], of_the_rest: false },
    Told { words: &["collar", "cuello"], figures: ["collar_floor_mm", ""], of_the_rest: false },
    Told { words: &["days", "dias"], figures: ["plantable_least_days", "plantable_most_days"], of_the_rest: false },
    Told { words: &["spacing", "distancia"], figures: ["row_m", "in_row_m"], of_the_rest: false },
];

/// Words between numbers, and units, which say nothing more.
const BETWEEN: [&str; 16] =
    ["to", "a", "until", "hasta", "cm", "mm", "m", "x", "by", "por", "and", "y", "least", "minimo", "percent", "de"];

/// The figures that the words tell; none where a word is none of those that are known here.
pub(super) fn differing(words: &[&str]) -> Option<Map<String, Value>> {
    let spaced = words.join(" ").replace(['-', '\u{2013}', '%', ';', ':', '='], " ").replace(", ", " ");
    let mut read: Map<String, Value> = Map::new();
    let mut now: Option<(&Told, usize)> = None;
    let parted = |word: &str| -> Vec<String> {
        // "3x2": two numbers.
        let is_pair = word.starts_with(|sign: char| sign.is_ascii_digit()) && word.contains(['x', '\u{d7}']);
        if is_pair { word.split(['x', '\u{d7}']).map(str::to_string).collect() } else { vec![word.to_string()] }
    };
    for word in spaced.split_whitespace().flat_map(parted) {
        let plain = folded(&word);
        if let Some(told) = TOLD.iter().find(|told| told.words.contains(&plain.as_str())) {
            now = Some((told, 0));
        } else if let Ok(number) = figure(&word) {
            let (told, at) = now?;
            let name = told.figures.get(at).filter(|name| !name.is_empty())?;
            let number = if told.of_the_rest { 100.0 - number } else { number };
            read.insert((*name).to_string(), json!(number));
            now = Some((told, at + 1));
        } else if !BETWEEN.contains(&plain.as_str()) {
            return None;
        }
    }
    // One spacing is that both ways.
    if let (Some(row), false) = (read.get("row_m").cloned(), read.contains_key("in_row_m")) {
        read.insert("in_row_m".to_string(), row);
    }
    (!read.is_empty()).then_some(read)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_differs_is_read_in_plain_words_of_either_language() {
        let read = |text: &str| differing(&text.split(' ').collect::<Vec<_>>()).map(Value::Object);
        let light = json!({"outplant_shade_most_pct": 40.0, "outplant_shade_least_pct": 0.0});
        assert_eq!(read("light 60 to 100").unwrap(), light);
        assert_eq!(read("luz 60-100 %").unwrap(), light);
        let more = json!({"height_least_cm": 30.0, "plantable_least_days": 90.0, "plantable_most_days": 200.0});
        assert_eq!(read("height 30 cm, days 90 to 200").unwrap(), more);
        assert_eq!(read("distancia 3x2,5").unwrap(), json!({"row_m": 3.0, "in_row_m": 2.5}));
        for unread in ["60 to 100", "light", "sweet fruit", "height 30 40 50"] {
            assert_eq!(read(unread), None, "{unread}");
        }
    }
}
