//! A number that is not known exactly.

use serde::Serialize;

/// Low, likely and high of the same quantity; low <= likely <= high.
#[derive(Clone, Copy, PartialEq, Debug, Serialize)]
pub struct Range {
    /// The low end.
    pub low: f64,
    /// The most likely value.
    pub likely: f64,
    /// The high end.
    pub high: f64,
}

impl Range {
    /// A range from three numbers in any order of ends; the likely value is kept inside.
    pub fn new(low: f64, likely: f64, high: f64) -> Range {
        let (low, high) = if low <= high { (low, high) } else { (high, low) };
        Range { low, likely: likely.clamp(low, high), high }
    }

    /// A number known exactly.
    pub fn exact(value: f64) -> Range {
        Range { low: value, likely: value, high: value }
    }

    /// The product of two ranges of numbers that are not negative.
    pub fn times(self, other: Range) -> Range {
        Range::new(self.low * other.low, self.likely * other.likely, self.high * other.high)
    }
}
