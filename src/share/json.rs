//! JSON as it is read from outside: strict about names written twice, which most readers pass over silently.

use serde::de::{DeserializeSeed, Deserializer, Error, MapAccess, SeqAccess, Visitor};
use serde_json::{Map, Number, Value};
use std::cell::RefCell;
use std::fmt;

use super::fault::{Fault, PairFault, Reason};

/// Reads one JSON value that stands alone, nothing behind it but blanks.
pub(crate) fn read_alone(text: &str) -> Result<Value, PairFault> {
    read_value(text).map_err(|fault| PairFault::new(None, fault))
}

/// Reads one JSON value, nothing behind it but blanks.
pub(super) fn read_value(text: &str) -> Result<Value, Fault> {
    let twice = RefCell::new(None);
    let mut reader = serde_json::Deserializer::from_str(text);
    let read = Strict { twice: &twice }.deserialize(&mut reader).and_then(|value| reader.end().map(|()| value));
    read.map_err(|error| {
        let column = column_of(text, error.line(), error.column());
        match twice.take() {
            Some(name) => Fault { column, field: Some(name), reason: Reason::NameTwice },
            None => Fault { column, field: None, reason: reason_of(&error) },
        }
    })
}

fn reason_of(error: &serde_json::Error) -> Reason {
    // serde_json keeps its codes to itself; a test holds these two sentences.
    let sentence = error.to_string();
    if sentence.starts_with("recursion limit exceeded") {
        Reason::TooDeep
    } else if sentence.starts_with("number out of range") {
        Reason::NumberTooLarge
    } else if error.is_eof() {
        Reason::JsonCutShort
    } else {
        Reason::NotJson
    }
}

/// The column in characters from serde_json's, which counts bytes of a line.
fn column_of(text: &str, line: usize, byte_column: usize) -> Option<usize> {
    let row = text.split('\n').nth(line.checked_sub(1)?)?;
    let before = row.char_indices().take_while(|(start, _)| *start < byte_column).count();
    Some(before.max(1))
}

#[derive(Clone, Copy)]
struct Strict<'a> {
    twice: &'a RefCell<Option<String>>,
}

impl<'de> DeserializeSeed<'de> for Strict<'_> {
    type Value = Value;
    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Value, D::Error> {
        deserializer.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Strict<'_> {
    type Value = Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a JSON value")
    }
    fn visit_unit<E: Error>(self) -> Result<Value, E> {
        Ok(Value::Null)
    }
    fn visit_bool<E: Error>(self, flag: bool) -> Result<Value, E> {
        Ok(Value::Bool(flag))
    }
    fn visit_i64<E: Error>(self, number: i64) -> Result<Value, E> {
        Ok(Value::from(number))
    }
    fn visit_u64<E: Error>(self, number: u64) -> Result<Value, E> {
        Ok(Value::from(number))
    }
    fn visit_f64<E: Error>(self, number: f64) -> Result<Value, E> {
        Number::from_f64(number).map(Value::Number).ok_or_else(|| E::custom("number out of range"))
    }
    fn visit_str<E: Error>(self, text: &str) -> Result<Value, E> {
        Ok(Value::from(text))
    }
    fn visit_string<E: Error>(self, text: String) -> Result<Value, E> {
        Ok(Value::String(text))
    }
    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Value, A::Error> {
        let mut items = Vec::new();
        while let Some(item) = list.next_element_seed(self)? {
            items.push(item);
        }
        Ok(Value::Array(items))
    }
    fn visit_map<A: MapAccess<'de>>(self, mut record: A) -> Result<Value, A::Error> {
        let mut fields = Map::new();
        while let Some(name) = record.next_key::<String>()? {
            if fields.contains_key(&name) {
                self.twice.replace(Some(name.chars().take(40).collect()));
                return Err(A::Error::custom("the same name twice"));
            }
            let value = record.next_value_seed(self)?;
            fields.insert(name, value);
        }
        Ok(Value::Object(fields))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn reason(text: &str) -> Reason {
        read_value(text).unwrap_err().reason
    }

    #[test]
    fn a_name_written_twice_is_found_at_any_depth() {
        let fault = read_value(r#"{"a":[{"b":1,"c":2,"b":3}]}"#).unwrap_err();
        assert_eq!((fault.reason, fault.field.as_deref()), (Reason::NameTwice, Some("b")));
        assert!(read_value(r#"{"a":{"b":1},"c":{"b":1}}"#).is_ok());
    }

    #[test]
    fn the_reasons_of_serde_json_are_told_apart() {
        assert_eq!(reason("1e400"), Reason::NumberTooLarge);
        assert_eq!(reason(&"[".repeat(5000)), Reason::TooDeep);
        assert_eq!(reason(r#"{"a":"#), Reason::JsonCutShort);
        assert_eq!(reason(r#"{"a":NaN}"#), Reason::NotJson);
        assert_eq!(reason(r#"{"a":1} 2"#), Reason::NotJson);
        assert_eq!(reason(r#""\ud800""#), Reason::NotJson);
    }

    #[test]
    fn the_column_counts_characters() {
        assert_eq!(read_value(r#"{"ñandú":x}"#).unwrap_err().column, Some(10));
    }

    proptest! {
        #[test]
        fn what_it_reads_is_what_serde_json_reads(text in r#"[\[\]{}:,"a-c0-9.eE+ -]{0,30}"#) {
            if let Ok(value) = read_value(&text) {
                prop_assert_eq!(value, serde_json::from_str::<Value>(&text).unwrap());
            }
        }
    }
}
