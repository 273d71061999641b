//! Lists typed as a person types them, brought to what the reader of pairs takes: rows of a record parted by `;`, their
//! figures by blanks.

use serde_json::{Map, Number, Value};

use crate::nursery::entry::shape::{Field, Shape};

/// Between two rows.
pub(crate) const BETWEEN: char = ';';

/// One typed figure or word: a number where it reads as one, with a decimal comma too.
pub(crate) fn value_of(typed: &str) -> Value {
    let dotted = if typed.matches(',').count() == 1 { typed.replace(',', ".") } else { typed.to_string() };
    let number = dotted.parse::<f64>().ok().filter(|number| number.is_finite());
    number.and_then(Number::from_f64).map_or_else(
        || Value::from(typed),
        |number| match number.as_f64() {
            Some(whole) if whole.fract() == 0.0 && whole.abs() < 9e15 => Value::from(whole as i64),
            Some(_) | None => Value::Number(number),
        },
    )
}

/// Rows of records as JSON: the first figure is the first field, and so on; what is too much is kept under a name no field
/// has, so that the reader refuses it instead of losing it.
pub(crate) fn json_of(fields: &'static [Field], typed: &str) -> String {
    let rows: Vec<Value> = typed
        .split(BETWEEN)
        .map(str::trim)
        .filter(|row| !row.is_empty())
        .map(|row| {
            let mut record = Map::new();
            for (i, part) in row.split_whitespace().enumerate() {
                match part.split_once('=') {
                    Some((name, value)) => record.insert(name.to_string(), value_of(value)),
                    None => {
                        let name = fields.get(i).map_or_else(|| part.to_string(), |field| field.name.to_string());
                        let is_number = fields
                            .get(i)
                            .is_some_and(|field| matches!(field.shape, Shape::Count | Shape::Number { .. }));
                        record.insert(name, if is_number { value_of(part) } else { Value::from(part) })
                    }
                };
            }
            Value::Object(record)
        })
        .collect();
    Value::Array(rows).to_string()
}

/// A plain list as JSON: parted by blanks or `;`.
pub(crate) fn list_of(typed: &str) -> String {
    let items: Vec<Value> = typed
        .split(|letter: char| letter.is_whitespace() || letter == BETWEEN)
        .filter(|item| !item.is_empty())
        .map(|item| match item.split_once('.') {
            // Places in a bed look like numbers and are none.
            Some((row, place)) if row.parse::<u32>().is_ok() && place.parse::<u32>().is_ok() => Value::from(item),
            Some(_) | None => value_of(item),
        })
        .collect();
    Value::Array(items).to_string()
}

/// A record with any fields as JSON: `name=value`, parted by blanks.
pub(crate) fn open_of(typed: &str) -> String {
    if typed.trim_start().starts_with('{') {
        return typed.to_string();
    }
    let mut record = Map::new();
    for pair in typed.split_whitespace() {
        match pair.split_once('=') {
            Some((name, value)) => record.insert(name.to_string(), value_of(value)),
            None => record.insert(pair.to_string(), Value::Null),
        };
    }
    Value::Object(record).to_string()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::nursery::entry::MeasuredPlant;

    #[test]
    fn a_sample_is_typed_as_it_is_called_out() {
        let json = json_of(MeasuredPlant::FIELDS, "24,5 3.1; 22 2.8 5");
        assert_eq!(json, r#"[{"collar_mm":3.1,"height_cm":24.5},{"collar_mm":2.8,"height_cm":22,"leaf_pairs":5}]"#);
    }

    #[test]
    fn a_figure_too_many_is_not_lost_in_silence() {
        assert!(json_of(MeasuredPlant::FIELDS, "24 3 5 10 99").contains(r#""99":"99""#));
    }

    #[test]
    fn places_in_a_bed_stay_texts() {
        assert_eq!(list_of("2.7 2.10"), r#"["2.7","2.10"]"#);
        assert_eq!(list_of("12,5 30"), "[12.5,30]");
    }
}
