//! An answer: figures under their keys, and what they mean in sentences.

use serde_json::{Map, Value, json};

use crate::base::columns::{left_aligned, width_of};
use crate::cli::sheet::{Ink, Sheet};
use crate::science::interval::Interval;
use crate::wording::Wording;

/// Decimals of a figure shown to a person.
const DECIMALS: usize = 4;

/// What a formula gave.
pub(crate) struct Answer {
    figures: Map<String, Value>,
    sentences: Vec<String>,
    formula: String,
    source: String,
}

impl Answer {
    /// An answer by a formula from a source, both as sentences.
    pub(crate) fn new(formula: String, source: String) -> Answer {
        Answer { figures: Map::new(), sentences: Vec::new(), formula, source }
    }

    /// Adds a figure; what is no number becomes null.
    pub(crate) fn figure(&mut self, key: &str, value: impl Into<Value>) {
        self.figures.insert(key.to_string(), value.into());
    }

    /// Adds a sentence.
    pub(crate) fn say(&mut self, sentence: String) {
        self.sentences.push(sentence);
    }

    /// For programs.
    pub(crate) fn json(&self) -> Value {
        let mut all = Map::new();
        all.insert("version".to_string(), json!(1));
        all.extend(self.figures.clone());
        Value::Object(all)
    }

    /// For people: the sentences, the figures, the formula and where it comes from.
    pub(crate) fn text(&self, wording: &Wording, width: usize, colour: bool) -> String {
        let mut sheet = Sheet::new(width, colour);
        for sentence in &self.sentences {
            sheet.paragraph(sentence, Ink::Bold);
        }
        sheet.gap();
        let mut rows = Vec::new();
        rows_of("", &Value::Object(self.figures.clone()), wording, &mut rows);
        let room = rows.iter().map(|(key, _)| width_of(key)).max().unwrap_or(0);
        for (key, value) in rows {
            sheet.hanging(&format!("  {}  ", left_aligned(&key, room)), Ink::Plain, &value, Ink::Plain);
        }
        sheet.gap();
        sheet.hanging(&format!("{} ", wording.calc_formula()), Ink::Plain, &self.formula, Ink::Plain);
        sheet.hanging(&format!("{} ", wording.calc_source()), Ink::Plain, &self.source, Ink::Plain);
        sheet.finish()
    }
}

/// A row for each number, what holds several by its path.
fn rows_of(path: &str, value: &Value, wording: &Wording, rows: &mut Vec<(String, String)>) {
    match value {
        Value::Object(map) => {
            for (key, inner) in map {
                let below = if path.is_empty() { key.clone() } else { format!("{path} {key}") };
                rows_of(&below, inner, wording, rows);
            }
        }
        Value::Array(list) if list.iter().any(|inner| inner.is_object() || inner.is_array()) => {
            for (number, inner) in list.iter().enumerate() {
                rows_of(&format!("{path} {}", number + 1), inner, wording, rows);
            }
        }
        Value::Array(list) => {
            let shown: Vec<String> = list.iter().map(|inner| shown(inner, wording)).collect();
            rows.push((path.to_string(), shown.join(" - ")));
        }
        Value::Null | Value::Bool(_) | Value::Number(_) | Value::String(_) => {
            rows.push((path.to_string(), shown(value, wording)));
        }
    }
}

fn shown(value: &Value, wording: &Wording) -> String {
    match value {
        Value::Null => wording.calc_none(),
        Value::Bool(true) => wording.calc_yes(),
        Value::Bool(false) => wording.calc_no(),
        Value::Number(number) => {
            let number = number.as_f64().unwrap_or(0.0);
            // Small numbers keep their digits, large ones need none behind the point.
            let size = if number == 0.0 { 0 } else { number.abs().log10().floor() as i32 };
            let places = (DECIMALS as i32 - size.max(-8) - 1).clamp(0, 12) as usize;
            wording.number(number, places.max(usize::from(size < 3) * 2))
        }
        Value::String(text) => text.clone(),
        Value::Array(_) | Value::Object(_) => value.to_string(),
    }
}

/// The two ends of an interval as JSON.
pub(crate) fn ends(interval: Interval) -> Value {
    json!([interval.low, interval.high])
}
