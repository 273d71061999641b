//! What a field of an entry may hold. One table per kind drives reading, refusal, help and forms.

use serde_json::Value;

use super::fault::{FieldFault, Problem};
use crate::base::text;
use crate::base::{Clock, Day, EntryId, code};
use crate::nursery::entry::subject::Subject;

/// The longest free text, in characters.
pub const LONGEST_TEXT: usize = 2000;
/// The most items in one list.
pub const LONGEST_LIST: usize = 10_000;
/// The largest count of plants, seeds or cells in one entry.
pub const LARGEST_COUNT: f64 = 1e9;

/// What a field may hold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shape {
    /// A code or name of 1 to 24 characters, and what it is of.
    Code(NameOf),
    /// A species by key, code, scientific or common name.
    Species,
    /// A whole number, 0 or more.
    Count,
    /// A number between two ends, kept to so many decimals.
    Number {
        /// Least value allowed.
        least: f64,
        /// Most value allowed.
        most: f64,
        /// Decimals kept.
        decimals: u32,
    },
    /// true or false.
    Flag,
    /// Free text.
    Text,
    /// A day, YYYY-MM-DD.
    Day,
    /// A day of the year, MM-DD.
    MonthDay,
    /// A time of day, HH:MM.
    Clock,
    /// One of a list of words, read in either language.
    Word(&'static [&'static [&'static str]]),
    /// A place in a bed, row.place.
    Spot,
    /// An entry, device:seq.
    Entry,
    /// A list of one shape.
    List(&'static Shape),
    /// A record with fields of its own.
    Record(&'static [Field]),
    /// A record with any fields.
    Open,
}

/// What a code or name is of. A bed and a tray may be called alike: where a line could mean either, the first here is
/// meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum NameOf {
    /// A tray.
    Tray,
    /// A bed.
    Bed,
    /// A place where trays stand.
    Place,
    /// A seed lot.
    Lot,
    /// A kind of cell, bag or seedbed strip.
    Container,
    /// A piece of land.
    Field,
}

impl NameOf {
    /// The field of an entry that has such a name.
    pub(crate) const fn field(self) -> &'static str {
        match self {
            NameOf::Tray => "tray",
            NameOf::Bed => "bed",
            NameOf::Place => "place",
            NameOf::Lot => "lot",
            NameOf::Container => "container",
            NameOf::Field => "field",
        }
    }
}

/// The name of a field in files, as the code spells it: a word that Rust keeps for itself is written `r#where`.
pub const fn field_name(spelled: &'static str) -> &'static str {
    match spelled.as_bytes() {
        [b'r', b'#', ..] => spelled.split_at(2).1,
        _ => spelled,
    }
}

/// A field: its name, what it may hold, whether it must be there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Field {
    /// Name in files and on the command line; units last.
    pub name: &'static str,
    /// What it may hold.
    pub shape: Shape,
    /// Whether an entry without it is refused.
    pub required: bool,
}

impl Field {
    /// The unit the name ends with (`cm`, `mm`, `pct` ...), or none.
    pub fn unit(&self) -> Option<&'static str> {
        const UNITS: [&str; 14] =
            ["mpa", "pct", "deg", "lux", "cm", "mm", "ml", "kg", "m", "g", "c", "h", "days", "litres_per_day"];
        if self.name.contains("_per_") && self.name != "water_litres_per_day" {
            return None;
        }
        UNITS.into_iter().find(|unit| self.name.strip_suffix(unit).is_some_and(|rest| rest.ends_with('_')))
    }
}

/// A type that a field of an entry can have.
pub trait FieldType {
    /// What it may hold.
    const SHAPE: Shape;
    /// Whether it must be there.
    const REQUIRED: bool = true;
    /// Whether it names something with a story of its own.
    const NAMES: bool = false;
    /// What it names.
    fn subject(&self) -> Option<Subject> {
        None
    }
}

impl<T: FieldType> FieldType for Option<T> {
    const SHAPE: Shape = T::SHAPE;
    const REQUIRED: bool = false;
    const NAMES: bool = T::NAMES;
    fn subject(&self) -> Option<Subject> {
        self.as_ref().and_then(T::subject)
    }
}

impl<T: FieldType> FieldType for Vec<T> {
    const SHAPE: Shape = Shape::List(&T::SHAPE);
}

/// Checks a value against a shape and brings it to the form that is stored: numbers rounded, words in their file
/// spelling, texts trimmed. `name` is the field, for the message.
pub fn settle(shape: &Shape, value: &Value, name: &str) -> Result<Value, FieldFault> {
    let fault = |problem: Problem| FieldFault { field: name.to_string(), problem };
    match shape {
        Shape::Count => settle_count(value).map_err(fault),
        Shape::Number { least, most, decimals } => settle_number(value, *least, *most, *decimals).map_err(fault),
        Shape::Flag => match value {
            Value::Bool(_) => Ok(value.clone()),
            _ => Err(fault(Problem::NotTrueOrFalse)),
        },
        Shape::List(inner) => {
            let Value::Array(items) = value else { return Err(fault(Problem::NotAList)) };
            if items.len() > LONGEST_LIST {
                return Err(fault(Problem::TooLong(LONGEST_LIST)));
            }
            let settled: Result<Vec<Value>, FieldFault> =
                items.iter().enumerate().map(|(i, item)| settle(inner, item, &format!("{name}[{}]", i + 1))).collect();
            settled.map(Value::Array)
        }
        Shape::Record(fields) => match value {
            Value::Object(map) => super::fields::settle_fields(fields, map, Some(name)).map(Value::Object),
            _ => Err(fault(Problem::NotARecord)),
        },
        Shape::Open => match value {
            Value::Object(_) => Ok(value.clone()),
            _ => Err(fault(Problem::NotARecord)),
        },
        Shape::Code(_)
        | Shape::Species
        | Shape::Text
        | Shape::Day
        | Shape::MonthDay
        | Shape::Clock
        | Shape::Word(_)
        | Shape::Spot
        | Shape::Entry => settle_text(shape, value).map_err(fault),
    }
}

fn settle_count(value: &Value) -> Result<Value, Problem> {
    let number = value.as_f64().ok_or_else(|| Problem::NotANumber(written(value)))?;
    if !number.is_finite() {
        return Err(Problem::NotANumber(written(value)));
    }
    if number < 0.0 {
        return Err(Problem::BelowZero(written(value)));
    }
    if number.fract() != 0.0 {
        return Err(Problem::NotWhole(written(value)));
    }
    if number > LARGEST_COUNT {
        return Err(Problem::TooMany { most: LARGEST_COUNT });
    }
    Ok(Value::from(number as u64))
}

fn settle_number(value: &Value, least: f64, most: f64, decimals: u32) -> Result<Value, Problem> {
    let number = value.as_f64().ok_or_else(|| Problem::NotANumber(written(value)))?;
    if !(number >= least && number <= most) {
        return Err(Problem::OutsideEnds { least, most });
    }
    let scale = 10f64.powi(decimals as i32);
    let rounded = (number * scale).round() / scale;
    let rounded = if rounded == 0.0 { 0.0 } else { rounded };
    Ok(if rounded.fract() == 0.0 && rounded.abs() < 9e15 { Value::from(rounded as i64) } else { Value::from(rounded) })
}

fn settle_text(shape: &Shape, value: &Value) -> Result<Value, Problem> {
    let owned;
    let raw = match value {
        Value::String(text) => text.as_str(),
        Value::Number(number) if matches!(shape, Shape::Code(_) | Shape::Text | Shape::Spot) => {
            owned = number.to_string();
            owned.as_str()
        }
        _ => return Err(Problem::NotText),
    };
    if text::has_unseen(raw) {
        return Err(Problem::Unseen(text::shown(raw).chars().take(60).collect()));
    }
    let trimmed = raw.trim();
    if trimmed.is_empty() {
        return Err(Problem::Empty);
    }
    match shape {
        Shape::Code(_) if trimmed.chars().count() > code::LONGEST_CODE => {
            return Err(Problem::TooLong(code::LONGEST_CODE));
        }
        Shape::Species if trimmed.chars().count() > 80 => return Err(Problem::TooLong(80)),
        Shape::Text if trimmed.chars().count() > LONGEST_TEXT => return Err(Problem::TooLong(LONGEST_TEXT)),
        Shape::Day if trimmed.parse::<Day>().is_err() => return Err(Problem::NotADay(short(trimmed))),
        Shape::MonthDay if month_day(trimmed).is_none() => return Err(Problem::NotAMonthDay(short(trimmed))),
        Shape::Clock if trimmed.parse::<Clock>().is_err() => return Err(Problem::NotAClock(short(trimmed))),
        Shape::Entry if trimmed.parse::<EntryId>().is_err() => return Err(Problem::NotAnEntry(short(trimmed))),
        Shape::Spot if spot(trimmed).is_none() => return Err(Problem::NotASpot(short(trimmed))),
        Shape::Word(words) => return settle_word(words, trimmed),
        _ => {}
    }
    Ok(Value::from(trimmed))
}

fn settle_word(words: &'static [&'static [&'static str]], trimmed: &str) -> Result<Value, Problem> {
    let wanted = text::folded(trimmed);
    words
        .iter()
        .find(|spellings| spellings.iter().any(|spelling| text::folded(spelling) == wanted))
        .and_then(|spellings| spellings.first())
        .map(|spelling| Value::from(*spelling))
        .ok_or_else(|| Problem::NotTheWord {
            written: short(trimmed),
            known: words.iter().filter_map(|spellings| spellings.first().copied()).collect(),
        })
}

/// A day of the year written MM-DD, as (month, day).
pub fn month_day(written: &str) -> Option<(u32, u32)> {
    let (month, day) = written.split_once('-')?;
    if month.len() != 2 || day.len() != 2 {
        return None;
    }
    let (month, day) = (month.parse().ok()?, day.parse().ok()?);
    // 2028 is a leap year, so 02-29 can be written.
    Day::from_ymd(2028, month, day).map(|_| (month, day))
}

/// A place in a bed written row.place, both from 1.
pub fn spot(written: &str) -> Option<(u32, u32)> {
    let (row, place) = written.split_once('.')?;
    let (row, place) = (row.parse().ok()?, place.parse().ok()?);
    ((1..=100_000).contains(&row) && (1..=100_000).contains(&place)).then_some((row, place))
}

fn short(written: &str) -> String {
    written.chars().take(40).collect()
}

fn written(value: &Value) -> String {
    text::shown(&value.to_string()).chars().take(40).collect()
}
