//! Whether an answer obeys its JSON schema: the part of draft 2020-12 that docs/schema uses. A schema that uses more is
//! refused, so that no word of it is passed over.

use serde_json::{Map, Value};

/// Words that are read and decide nothing.
const NOTES: [&str; 4] = ["$schema", "$defs", "title", "description"];
/// Words that are checked.
const CHECKED: [&str; 11] = [
    "$ref",
    "additionalProperties",
    "anyOf",
    "const",
    "enum",
    "format",
    "items",
    "minItems",
    "properties",
    "required",
    "type",
];

/// What in an answer is not as its schema says, each with its path; empty where it obeys.
pub fn faults(schema: &Value, answer: &Value) -> Vec<String> {
    let mut faults = Vec::new();
    Checker { whole: schema }.check(schema, answer, "", &mut faults);
    faults
}

/// The words of a schema that nothing here checks.
pub fn unchecked(schema: &Value) -> Vec<String> {
    let Value::Object(words) = schema else { return Vec::new() };
    let mut all: Vec<String> = words
        .keys()
        .filter(|word| !NOTES.contains(&word.as_str()) && !CHECKED.contains(&word.as_str()))
        .cloned()
        .collect();
    for (word, inner) in words {
        match (word.as_str(), inner) {
            ("$defs" | "properties", Value::Object(named)) => all.extend(named.values().flat_map(unchecked)),
            ("anyOf", Value::Array(list)) => all.extend(list.iter().flat_map(unchecked)),
            ("items" | "additionalProperties", inner) => all.extend(unchecked(inner)),
            _ => {}
        }
    }
    all
}

struct Checker<'a> {
    whole: &'a Value,
}

impl Checker<'_> {
    fn check(&self, schema: &Value, value: &Value, path: &str, faults: &mut Vec<String>) {
        let mut fault = |what: String| faults.push(format!("{path}: {what}"));
        if let Some(name) = schema["$ref"].as_str() {
            let named = self.whole.pointer(name.trim_start_matches('#'));
            return self.check(named.unwrap_or_else(|| panic!("no {name}")), value, path, faults);
        }
        let types = match &schema["type"] {
            Value::String(one) => vec![one.as_str()],
            Value::Array(several) => several.iter().map(|one| one.as_str().unwrap()).collect(),
            _ => Vec::new(),
        };
        if !types.is_empty() && !types.iter().any(|one| is_of(one, value)) {
            return fault(format!("{value} is no {}", types.join(" or ")));
        }
        if schema.get("const").is_some_and(|only| only != value) {
            fault(format!("{value} is not {}", schema["const"]));
        }
        if schema["enum"].as_array().is_some_and(|words| !words.contains(value)) {
            fault(format!("{value} is none of {}", schema["enum"]));
        }
        if schema["format"] == "date" && value.as_str().is_some_and(|text| !is_date(text)) {
            fault(format!("{value} is no date"));
        }
        if let Some(several) = schema["anyOf"].as_array() {
            let each: Vec<Vec<String>> = several
                .iter()
                .map(|one| {
                    let mut inner = Vec::new();
                    self.check(one, value, path, &mut inner);
                    inner
                })
                .collect();
            if !each.iter().any(Vec::is_empty) {
                faults.extend(each.into_iter().min_by_key(Vec::len).unwrap_or_default());
            }
        }
        match value {
            Value::Array(list) => self.check_list(schema, list, path, faults),
            Value::Object(object) => self.check_object(schema, object, path, faults),
            _ => {}
        }
    }

    fn check_list(&self, schema: &Value, list: &[Value], path: &str, faults: &mut Vec<String>) {
        if schema["minItems"].as_u64().is_some_and(|least| (list.len() as u64) < least) {
            faults.push(format!("{path}: has only {}", list.len()));
        }
        if let Some(items) = schema.get("items") {
            list.iter().enumerate().for_each(|(i, one)| self.check(items, one, &format!("{path}/{i}"), faults));
        }
    }

    fn check_object(&self, schema: &Value, object: &Map<String, Value>, path: &str, faults: &mut Vec<String>) {
        for name in schema["required"].as_array().into_iter().flatten() {
            if !object.contains_key(name.as_str().unwrap()) {
                faults.push(format!("{path}: has no {name}"));
            }
        }
        for (name, inner) in object {
            let path = format!("{path}/{name}");
            match (schema["properties"].get(name), &schema["additionalProperties"]) {
                (Some(named), _) => self.check(named, inner, &path, faults),
                (None, Value::Bool(false)) => faults.push(format!("{path}: is not in the schema")),
                (None, other @ Value::Object(_)) => self.check(other, inner, &path, faults),
                (None, _) => {}
            }
        }
    }
}

fn is_of(name: &str, value: &Value) -> bool {
    match name {
        "null" => value.is_null(),
        "boolean" => value.is_boolean(),
        "string" => value.is_string(),
        "number" => value.is_number(),
        "integer" => value.is_i64() || value.is_u64(),
        "array" => value.is_array(),
        "object" => value.is_object(),
        _ => panic!("no type {name}"),
    }
}

fn is_date(text: &str) -> bool {
    text.parse::<outplant::base::Day>().is_ok()
}
