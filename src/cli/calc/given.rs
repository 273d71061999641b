//! What a formula is given: the keys of one JSON object, read with care.

use std::cell::RefCell;
use std::collections::BTreeSet;
use std::rc::Rc;

use crate::desk::{PairFault, is_a_share, read_json};
use serde_json::{Map, Value};

use crate::science::WrongInput;

/// Most numbers of one list; longer ones are no counts of a person. Ours.
const MOST_NUMBERS: usize = 100_000;

/// What is wrong with what was given.
#[derive(Debug)]
pub(crate) enum Wrong {
    /// A number.
    Input(WrongInput),
    /// The text is no JSON object.
    NotJson(String),
    /// It cannot be read as JSON.
    Unread(PairFault),
    /// A word that is not among those known.
    Word {
        /// Its key.
        input: &'static str,
        /// What was written.
        written: String,
        /// What may be.
        known: &'static str,
    },
    /// In one of several that were given.
    InRow {
        /// The key of the list.
        list: &'static str,
        /// Which of them, from 1.
        row: usize,
        /// What is wrong there.
        wrong: Box<Wrong>,
    },
    /// Something else, as it is said.
    Said(String),
}

impl From<WrongInput> for Wrong {
    fn from(wrong: WrongInput) -> Wrong {
        Wrong::Input(wrong)
    }
}

/// Keys that a formula asked for: the list they stand in, empty for the whole, and the key.
type Asked = Rc<RefCell<BTreeSet<(&'static str, String)>>>;

/// Keys and values.
#[derive(Debug, Default)]
pub(crate) struct Given {
    map: Map<String, Value>,
    list: &'static str,
    asked: Asked,
    like_a_share: Option<f64>,
    percents: BTreeSet<String>,
}

impl Given {
    /// Reads one JSON object.
    pub(crate) fn read(text: &str) -> Result<Given, Wrong> {
        match read_json(text) {
            Ok(Value::Object(map)) => Ok(Given { map, ..Given::default() }),
            Ok(_) => Err(Wrong::NotJson("{ ... }".to_string())),
            Err(fault) => Err(Wrong::Unread(fault)),
        }
    }

    /// Keys that no formula asked for, in several of a list named once.
    pub(crate) fn not_used(&self) -> Vec<String> {
        let asked = self.asked.borrow();
        let mut spare = Vec::new();
        for (key, value) in &self.map {
            if !asked.iter().any(|(list, name)| list.is_empty() && name == key) {
                spare.push(key.clone());
                continue;
            }
            let each = value.as_array().map_or(std::slice::from_ref(value), Vec::as_slice);
            let inner: BTreeSet<&String> = each.iter().filter_map(Value::as_object).flat_map(Map::keys).collect();
            let is_spare = |name: &&&String| !asked.iter().any(|(list, asked)| list == key && asked == **name);
            spare.extend(inner.iter().filter(is_spare).map(|name| format!("{key}.{name}")));
        }
        spare
    }

    /// Reads the days typed as a person says them.
    pub(crate) fn with_days(mut self, read: impl Fn(&str) -> Option<String>) -> Given {
        for key in ["date", "first_date"] {
            if let Some(Value::String(text)) = self.map.get_mut(key)
                && let Some(day) = read(text)
            {
                *text = day;
            }
        }
        self
    }

    /// Whether a key was typed as a percentage.
    pub(crate) fn is_percent(&self, input: &str) -> bool {
        self.percents.contains(input)
    }

    /// Puts a typed number under a key.
    pub(crate) fn put(&mut self, key: &str, value: Option<f64>) {
        if let Some(value) = value {
            self.map.insert(key.to_string(), json_number(value));
        }
    }

    /// Puts a typed percentage under a key as a share.
    pub(crate) fn put_percent(&mut self, key: &str, value: Option<f64>) {
        self.percents.insert(key.to_string());
        self.put(key, value.map(|percent| percent / 100.0));
    }

    /// Puts a typed percentage of which less than one makes no sense: 0.7 is asked about, it is more likely 70 %. So is 1, which may be
    /// all of them.
    pub(crate) fn put_whole_percent(&mut self, key: &str, value: Option<f64>) {
        self.like_a_share = self.like_a_share.or(value.filter(|percent| is_a_share(*percent) || *percent == 1.0));
        self.put_percent(key, value);
    }

    /// A percentage that is more likely a share.
    pub(crate) fn asked_about(&self) -> Option<f64> {
        self.like_a_share
    }

    /// Puts typed numbers under a key.
    pub(crate) fn put_list(&mut self, key: &str, values: Option<&Vec<f64>>) {
        if let Some(values) = values {
            self.map.insert(key.to_string(), values.iter().map(|value| json_number(*value)).collect());
        }
    }

    /// Puts a typed word under a key.
    pub(crate) fn put_text(&mut self, key: &str, value: Option<&String>) {
        if let Some(value) = value {
            self.map.insert(key.to_string(), Value::String(value.clone()));
        }
    }

    /// Puts a typed yes under a key; no is as if nothing had been typed.
    pub(crate) fn put_yes(&mut self, key: &str, yes: bool) {
        if yes {
            self.map.insert(key.to_string(), Value::Bool(true));
        }
    }

    /// Puts a number under a key where nothing is.
    pub(crate) fn or_put(&mut self, key: &str, value: f64) {
        self.map.entry(key).or_insert_with(|| json_number(value));
    }

    /// Whether nothing was given.
    pub(crate) fn is_empty(&self) -> bool {
        self.map.is_empty()
    }

    /// The value under a key; null is nothing.
    pub(crate) fn value(&self, key: &str) -> Option<&Value> {
        let asked = (self.list, key.to_string());
        if !self.asked.borrow().contains(&asked) {
            self.asked.borrow_mut().insert(asked);
        }
        self.map.get(key).filter(|value| !value.is_null())
    }

    /// A number that may be missing.
    pub(crate) fn maybe_number(&self, input: &'static str) -> Result<Option<f64>, Wrong> {
        self.value(input).map(|value| number(input, value)).transpose()
    }

    /// A number.
    pub(crate) fn number(&self, input: &'static str) -> Result<f64, Wrong> {
        self.maybe_number(input)?.ok_or(Wrong::Input(WrongInput::Missing { input }))
    }

    /// A whole number of 0 or more that may be missing.
    pub(crate) fn maybe_count(&self, input: &'static str) -> Result<Option<u32>, Wrong> {
        self.value(input).map(|value| count(input, value)).transpose()
    }

    /// A whole number of 0 or more.
    pub(crate) fn count(&self, input: &'static str) -> Result<u32, Wrong> {
        self.maybe_count(input)?.ok_or(Wrong::Input(WrongInput::Missing { input }))
    }

    /// A list of numbers; one alone is a list too.
    pub(crate) fn numbers(&self, input: &'static str) -> Result<Vec<f64>, Wrong> {
        self.list(input)?.into_iter().map(|value| number(input, value)).collect()
    }

    /// A list of whole numbers of 0 or more.
    pub(crate) fn counts(&self, input: &'static str) -> Result<Vec<u32>, Wrong> {
        self.list(input)?.into_iter().map(|value| count(input, value)).collect()
    }

    /// A word that may be missing.
    pub(crate) fn maybe_text(&self, input: &'static str) -> Result<Option<&str>, Wrong> {
        match self.value(input) {
            None => Ok(None),
            Some(Value::String(text)) => Ok(Some(text)),
            Some(other) => Err(Wrong::Word { input, written: other.to_string(), known: "\"...\"" }),
        }
    }

    /// A yes or a no; nothing is no.
    pub(crate) fn yes(&self, input: &'static str) -> Result<bool, Wrong> {
        match self.value(input) {
            None => Ok(false),
            Some(Value::Bool(yes)) => Ok(*yes),
            Some(other) => Err(Wrong::Word { input, written: other.to_string(), known: "true, false" }),
        }
    }

    /// An object under a key, which may be missing.
    pub(crate) fn maybe_object(&self, input: &'static str) -> Result<Option<Given>, Wrong> {
        self.value(input).map(|value| self.object(input, value)).transpose()
    }

    /// A list of objects.
    pub(crate) fn objects(&self, input: &'static str) -> Result<Vec<Given>, Wrong> {
        let each = self.list(input)?.into_iter().enumerate();
        each.map(|(at, value)| self.object(input, value).map_err(|wrong| in_row(input, at, wrong))).collect()
    }

    fn object(&self, input: &'static str, value: &Value) -> Result<Given, Wrong> {
        match value {
            Value::Object(map) => {
                Ok(Given { map: map.clone(), list: input, asked: self.asked.clone(), ..Given::default() })
            }
            other => Err(Wrong::Word { input, written: other.to_string(), known: "{ ... }" }),
        }
    }

    /// A list of lists of so many numbers.
    pub(crate) fn rows<const N: usize>(&self, input: &'static str) -> Result<Vec<[f64; N]>, Wrong> {
        let row = |value: &Value| -> Result<[f64; N], Wrong> {
            let numbers = value.as_array().filter(|list| list.len() == N);
            let numbers = numbers.ok_or(Wrong::Word { input, written: value.to_string(), known: "[x, y, z]" })?;
            let mut row = [0.0; N];
            for (place, value) in row.iter_mut().zip(numbers) {
                *place = number(input, value)?;
            }
            Ok(row)
        };
        let each = self.list(input)?.into_iter().enumerate();
        each.map(|(at, value)| row(value).map_err(|wrong| in_row(input, at, wrong))).collect()
    }

    fn list(&self, input: &'static str) -> Result<Vec<&Value>, Wrong> {
        let list = match self.value(input) {
            None => return Err(WrongInput::Missing { input }.into()),
            Some(Value::Array(list)) => list.iter().collect(),
            Some(one) => vec![one],
        };
        if list.len() > MOST_NUMBERS {
            return Err(WrongInput::TooMany { input, most: MOST_NUMBERS as u32 }.into());
        }
        Ok(list)
    }
}

/// What is wrong in one of several, `at` from 0.
pub(crate) fn in_row(list: &'static str, at: usize, wrong: Wrong) -> Wrong {
    Wrong::InRow { list, row: at + 1, wrong: Box::new(wrong) }
}

fn number(input: &'static str, value: &Value) -> Result<f64, Wrong> {
    value.as_f64().filter(|number| number.is_finite()).ok_or(Wrong::Input(WrongInput::NotANumber { input }))
}

fn count(input: &'static str, value: &Value) -> Result<u32, Wrong> {
    let written = number(input, value)?;
    if written < 0.0 {
        return Err(WrongInput::Outside { input, low: 0.0, high: f64::from(u32::MAX) }.into());
    }
    if written.fract() != 0.0 {
        return Err(WrongInput::NotWhole { input }.into());
    }
    if written > f64::from(u32::MAX) {
        return Err(WrongInput::TooMany { input, most: u32::MAX }.into());
    }
    Ok(written as u32)
}

/// A number as JSON; what is none becomes a text, which is then refused.
fn json_number(value: f64) -> Value {
    serde_json::Number::from_f64(value).map_or_else(|| Value::String(value.to_string()), Value::Number)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_read_with_care() {
        let given = Given::read(r#"{"a":3.0,"b":2.5,"c":-1,"d":"7","e":null,"f":[1,2],"g":1e12}"#).unwrap();
        assert_eq!(given.count("a").unwrap(), 3);
        assert!(matches!(given.count("b"), Err(Wrong::Input(WrongInput::NotWhole { input: "b" }))));
        assert!(matches!(given.count("c"), Err(Wrong::Input(WrongInput::Outside { .. }))));
        assert!(matches!(given.number("d"), Err(Wrong::Input(WrongInput::NotANumber { .. }))));
        assert!(matches!(given.number("e"), Err(Wrong::Input(WrongInput::Missing { .. }))));
        assert_eq!((given.counts("f").unwrap(), given.numbers("a").unwrap()), (vec![1, 2], vec![3.0]));
        assert!(matches!(given.count("g"), Err(Wrong::Input(WrongInput::TooMany { .. }))));
        assert!(matches!(Given::read("[1]"), Err(Wrong::NotJson(_))));
        for nonsense in ["", "NaN", r#"{"a":NaN}"#, "{", r#"{"a":1,"a":2}"#] {
            assert!(matches!(Given::read(nonsense), Err(Wrong::Unread(_))), "{nonsense}");
        }
    }

    #[test]
    fn what_no_formula_asked_for_is_named() {
        let given = Given::read(r#"{"a":1,"b":2,"crowns":[{"x":1},{"x":2,"y":3}],"c":{"x":1}}"#).unwrap();
        given.number("a").unwrap();
        given.objects("crowns").unwrap().iter().for_each(|crown| drop(crown.number("x")));
        assert_eq!(given.not_used(), ["b", "c", "crowns.y"]);
    }

    #[test]
    fn what_is_typed_and_no_number_is_refused_like_the_rest() {
        let mut given = Given::default();
        given.put("seeds", Some(f64::NAN));
        given.put("wanted", None);
        assert!(matches!(given.number("seeds"), Err(Wrong::Input(WrongInput::NotANumber { .. }))));
        assert!(given.value("wanted").is_none());
    }
}
