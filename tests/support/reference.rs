//! Figures from other libraries, as they stand in `tests/reference`.

// The whole file is for tests; the clippy settings lets only #[test] functions themselves panic.
#![allow(clippy::panic)]

use serde_json::Value;

/// A file of figures.
pub fn reference(text: &str) -> Value {
    serde_json::from_str(text).unwrap()
}

/// The list under a key.
pub fn list<'a>(from: &'a Value, key: &str) -> &'a Vec<Value> {
    from[key].as_array().unwrap_or_else(|| panic!("no list under {key} in {from}"))
}

/// The number under a key.
pub fn number(from: &Value, key: &str) -> f64 {
    from[key].as_f64().unwrap_or_else(|| panic!("no number under {key} in {from}"))
}

/// The whole number under a key.
pub fn whole(from: &Value, key: &str) -> u32 {
    let found = number(from, key);
    assert_eq!(found.fract(), 0.0, "{key}");
    found as u32
}

/// The numbers under a key.
pub fn numbers(from: &Value, key: &str) -> Vec<f64> {
    list(from, key).iter().map(|value| value.as_f64().unwrap_or_else(|| panic!("no number in {key}"))).collect()
}

/// The whole numbers under a key.
pub fn counts(from: &Value, key: &str) -> Vec<u32> {
    numbers(from, key).into_iter().map(|value| value as u32).collect()
}

/// Whether a number is another within a share of it (or of 1e-6 where it is smaller).
pub fn near(got: f64, want: f64, within: f64, what: &str) {
    assert!((got - want).abs() <= within * want.abs().max(1e-6), "{what}: {got} is not {want} within {within}");
}
