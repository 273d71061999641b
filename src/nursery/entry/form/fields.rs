//! The fields of a kind or record: which one a name means, and all of them checked together.

use serde_json::{Map, Value};

use super::fault::{FieldFault, Problem};
use super::in_spanish::{field_of_spanish, field_of_the_screen};
use super::shape::{Field, Shape, settle};
use crate::base::name_search;

/// Words a field of another language or habit is also read by: (kind or "", written, field).
const ALSO: &[(&str, &str, &str)] =
    &[("", "bandeja", "tray"), ("", "lote", "lot"), ("", "parcela", "bed"), ("", "era", "bed"), ("", "cama", "bed")];

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
    let missing = known.iter().filter(|field| field.required && !settled.contains_key(field.name));
    let missing: Vec<&'static str> = missing.map(|field| field.name).collect();
    match missing.as_slice() {
        [] => Ok(settled),
        [one] => Err(FieldFault { field: full(one), problem: Problem::Missing }),
        [first, ..] => Err(FieldFault { field: full(first), problem: Problem::MissingAll(missing) }),
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

/// The field that is meant by a name as people write it, in either language: case, accents, blanks and hyphens do not count.
pub fn find_field<'a>(known: &'a [Field], name: &str) -> Option<&'a Field> {
    let folded = crate::base::text::folded(name).replace('-', "_");
    let meant = ALSO.iter().find(|(_, also, _)| *also == folded).map_or(folded.as_str(), |(_, _, field)| field);
    let found = known.iter().find(|field| field.name == meant);
    found.or_else(|| {
        let read = [field_of_spanish(&folded), field_of_the_screen(&folded)].into_iter().flatten();
        read.into_iter().find_map(|english| known.iter().find(|field| field.name == english))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::nursery::entry::{all_kinds, kind_of_entry};

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
