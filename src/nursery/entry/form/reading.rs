//! From a JSON object to an entry. Every fault names its field.

use serde_json::{Map, Value};

use super::fault::{EntryFault, FieldFault, Problem};
use super::fields::settle_fields;
use super::shape::{Field, Shape};
use crate::base::name_search;
use crate::nursery::entry::{KindOfEntry, What, all_kinds, kind_of_entry};

/// Reads the fields of a kind: unknown names, missing fields and values out of shape are faults; numbers are rounded
/// and words brought to their file spelling. The answer is the body as it is stored.
pub fn settle_body(kind: &str, fields: &Map<String, Value>) -> Result<Map<String, Value>, EntryFault> {
    let known = kind_of_entry(kind).ok_or_else(|| unknown_kind(kind))?;
    let named = |fault: FieldFault| EntryFault::Field { kind: known.kind.to_string(), fault };
    let body = settle_fields(known.fields, fields, None).map_err(named)?;
    super::rules::whole(known, &body).map_err(named)?;
    Ok(body)
}

/// The fault of a kind nobody knows.
pub fn unknown_kind(kind: &str) -> EntryFault {
    let kinds = all_kinds().map(|known| known.kind);
    EntryFault::UnknownKind(kind.chars().take(40).collect(), name_search::nearest(kind, kinds))
}

/// Reads a value typed after `key=`: lists and records as JSON, numbers as numbers, words as text.
/// `true`, `yes`, `si` and their opposites are read for yes-or-no fields.
pub fn typed_value(field: &Field, typed: &str) -> Result<Value, FieldFault> {
    let fault = |problem: Problem| FieldFault { field: field.name.to_string(), problem };
    match field.shape {
        Shape::Count | Shape::Number { .. } => typed_number(field, typed.trim()).map_err(fault),
        Shape::Flag => match crate::base::text::folded(typed).as_str() {
            "true" | "yes" | "y" | "si" | "1" => Ok(Value::Bool(true)),
            "false" | "no" | "n" | "0" => Ok(Value::Bool(false)),
            _ => Err(fault(Problem::NotTrueOrFalse)),
        },
        Shape::List(inner) => match serde_json::from_str::<Value>(typed) {
            Ok(Value::Array(items)) => Ok(Value::Array(items)),
            // A list of plain words may be typed with commas: at=2.7,2.8
            _ if matches!(inner, Shape::Spot | Shape::Entry | Shape::Code(_))
                && !typed.trim_start().starts_with('[') =>
            {
                Ok(Value::Array(typed.split(',').map(|item| Value::from(item.trim())).collect()))
            }
            _ => Err(fault(Problem::NotAList)),
        },
        Shape::Record(_) | Shape::Open => match serde_json::from_str::<Value>(typed) {
            Ok(Value::Object(map)) => Ok(Value::Object(map)),
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
        | Shape::Entry => Ok(Value::from(typed)),
    }
}

fn typed_number(field: &Field, typed: &str) -> Result<Value, Problem> {
    // A decimal comma is read as the person means it.
    let plain = if typed.matches(',').count() == 1 && !typed.contains('.') {
        typed.replace(',', ".")
    } else {
        typed.to_string()
    };
    let number_like =
        |text: &str| !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit() || b"+-.eE".contains(&b));
    if number_like(&plain)
        && let Ok(number) = plain.parse::<f64>()
        && number.is_finite()
    {
        let whole = number.fract() == 0.0 && number.abs() < 9e15;
        return Ok(if whole { Value::from(number as i64) } else { Value::from(number) });
    }
    let shown = crate::base::text::shown(typed).chars().take(40).collect();
    if typed.starts_with(|c: char| c.is_ascii_digit() || c == '-' || c == '+') {
        return Err(Problem::LettersBehind { written: shown, unit: field.unit() });
    }
    Err(Problem::NotANumber(shown))
}

/// The typed record of a settled body.
pub fn read_body(kind: &str, body: &str) -> Result<What, serde_json::Error> {
    use crate::nursery::entry::{BookEntry, GroundEntry, SeedEntry, SiteEntry, TrayEntry};
    if let Some(read) = TrayEntry::read(kind, body) {
        return read.map(What::Tray);
    }
    if let Some(read) = GroundEntry::read(kind, body) {
        return read.map(What::Ground);
    }
    if let Some(read) = BookEntry::read(kind, body) {
        return read.map(What::Book);
    }
    if let Some(read) = SeedEntry::read(kind, body) {
        return read.map(What::Seed);
    }
    if let Some(read) = SiteEntry::read(kind, body) {
        return read.map(What::Site);
    }
    serde_json::from_str(body).map(|body| What::Foreign { kind: kind.into(), body })
}

/// The same of a body that a newer version may have written: fields unknown here are passed over, and a body that still
/// cannot be read is kept as it is.
pub fn read_what_is_known(kind: &str, body: &str) -> Result<What, serde_json::Error> {
    let whole: Value = serde_json::from_str(body)?;
    if let Some(known) = kind_of_entry(kind) {
        let mut part = whole.clone();
        pass_over_unknown(&Shape::Record(known.fields), &mut part);
        if let Ok(what) = read_body(kind, &part.to_string()) {
            return Ok(what);
        }
    }
    Ok(What::Foreign { kind: kind.into(), body: whole })
}

fn pass_over_unknown(shape: &Shape, value: &mut Value) {
    match shape {
        Shape::Record(fields) => {
            let Value::Object(map) = value else { return };
            let known = |name: &str| -> Option<&Field> { fields.iter().find(|field| field.name == name) };
            map.retain(|name, _| known(name).is_some());
            for (name, inner) in map.iter_mut() {
                if let Some(field) = known(name) {
                    pass_over_unknown(&field.shape, inner);
                }
            }
        }
        Shape::List(inner) => {
            value.as_array_mut().into_iter().flatten().for_each(|item| pass_over_unknown(inner, item));
        }
        Shape::Code(_)
        | Shape::Species
        | Shape::Count
        | Shape::Number { .. }
        | Shape::Flag
        | Shape::Text
        | Shape::Day
        | Shape::MonthDay
        | Shape::Clock
        | Shape::Word(_)
        | Shape::Spot
        | Shape::Entry
        | Shape::Open => {}
    }
}

/// The kind and its fields.
pub type Known = &'static KindOfEntry;
