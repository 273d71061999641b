//! From a JSON object to an entry. Every fault names its field.

use serde_json::{Map, Value};

use super::fault::{EntryFault, FieldFault, Problem};
use super::shape::{Field, Shape, settle};
use crate::base::name_search;
use crate::nursery::entry::{KindOfEntry, What, all_kinds, kind_of_entry};

/// Words a field of another language or habit is also read by: (kind or "", written, field).
const ALSO: &[(&str, &str, &str)] =
    &[("", "bandeja", "tray"), ("", "lote", "lot"), ("", "era", "bed"), ("", "cama", "bed")];

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

/// Settles the fields of a record; `inside` names the list or record it stands in.
pub(super) fn settle_fields(
    known: &[Field],
    written: &Map<String, Value>,
    inside: Option<&str>,
) -> Result<Map<String, Value>, FieldFault> {
    let full = |name: &str| inside.map_or_else(|| name.to_string(), |outer| format!("{outer}.{name}"));
    let mut settled = Map::new();
    for (name, value) in written {
        if value.is_null() {
            continue;
        }
        let field = find_field(known, name).ok_or_else(|| FieldFault {
            field: full(&name.chars().take(40).collect::<String>()),
            problem: unknown_field(known, &[], name),
        })?;
        if settled.contains_key(field.name) {
            return Err(FieldFault { field: full(field.name), problem: Problem::Twice });
        }
        settled.insert(field.name.to_string(), settle(&field.shape, value, &full(field.name))?);
    }
    match known.iter().find(|field| field.required && !settled.contains_key(field.name)) {
        Some(missing) => Err(FieldFault { field: full(missing.name), problem: Problem::Missing }),
        None => Ok(settled),
    }
}

/// What is said of a name that is no field here: where it stands inside of another, else the nearest fields, else all.
/// `also` are names that can be written here besides the fields.
pub fn unknown_field(known: &[Field], also: &[&str], name: &str) -> Problem {
    let inner = || known.iter().filter_map(|field| Some((field.name, records_of(&field.shape)?)));
    let inside = |outer: &'static str, (fields, list): (&'static [Field], bool), wanted: &str| {
        let field = fields.iter().find(|field| field.name == wanted)?;
        Some(Problem::UnknownInside { outer, inner: field.name, list })
    };
    let exact = inner().find_map(|(outer, records)| inside(outer, records, find_field(records.0, name)?.name));
    if let Some(problem) = exact {
        return problem;
    }
    let names = || known.iter().map(|field| field.name).chain(also.iter().copied());
    let near = name_search::nearest(name, names());
    if !near.is_empty() {
        return Problem::Unknown(near);
    }
    let near_inside = inner().find_map(|(outer, records)| {
        let near = name_search::nearest(name, records.0.iter().map(|field| field.name));
        inside(outer, records, near.first()?)
    });
    near_inside.unwrap_or_else(|| Problem::UnknownOf(names().map(str::to_string).collect()))
}

/// The fields of the records that a field holds, and whether it holds a list of them.
fn records_of(shape: &Shape) -> Option<(&'static [Field], bool)> {
    match shape {
        Shape::Record(fields) => Some((fields, false)),
        Shape::List(Shape::Record(fields)) => Some((fields, true)),
        Shape::List(_)
        | Shape::Code(_)
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
        | Shape::Open => None,
    }
}

/// The field that is meant by a name as people write it: case, accents, blanks and hyphens do not count.
pub fn find_field<'a>(known: &'a [Field], name: &str) -> Option<&'a Field> {
    let folded = crate::base::text::folded(name).replace('-', "_");
    let meant = ALSO.iter().find(|(_, also, _)| *also == folded).map_or(folded.as_str(), |(_, _, field)| field);
    known.iter().find(|field| field.name == meant)
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

#[cfg(test)]
mod tests {
    use super::*;

    fn unknown(kind: &str, name: &str) -> Problem {
        unknown_field(kind_of_entry(kind).unwrap().fields, &[], name)
    }

    #[test]
    fn an_unknown_field_is_answered_with_where_it_stands_the_nearest_or_all_there_are() {
        let inside = |inner| Problem::UnknownInside { outer: "plants", inner, list: true };
        assert_eq!(unknown("measured", "height_cm"), inside("height_cm"));
        assert_eq!(unknown("measured", "Height"), inside("height_cm"));
        assert_eq!(unknown("counted", "standin"), Problem::Unknown(vec!["standing".into()]));
        let Problem::UnknownOf(all) = unknown("counted", "qwertyuiop") else { panic!("not all fields") };
        assert!(all.contains(&"tray".to_string()) && all.contains(&"standing".to_string()), "{all:?}");
    }

    #[test]
    fn every_kind_answers_every_foreign_name_with_a_field_of_its_own() {
        for kind in all_kinds() {
            for name in ["height_cm", "zz", "colour", "count_of_them"] {
                if find_field(kind.fields, name).is_some() {
                    continue;
                }
                let said = match unknown(kind.kind, name) {
                    Problem::Unknown(names) | Problem::UnknownOf(names) => names,
                    Problem::UnknownInside { outer, .. } => vec![outer.to_string()],
                    other => panic!("{other:?}"),
                };
                assert!(said.iter().all(|one| kind.fields.iter().any(|field| field.name == one)), "{}", kind.kind);
                assert!(!said.is_empty(), "{} {name}", kind.kind);
            }
        }
    }
}
