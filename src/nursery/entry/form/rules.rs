//! Rules of a kind that go beyond one field: which of several must be there, and how many.

use serde_json::{Map, Value};

use super::fault::{FieldFault, Problem};
use super::types::COLDEST_C;
use crate::nursery::entry::{KindOfEntry, kind_of_entry};

/// What holds of the fields of a kind together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BodyRule {
    /// At least one of these is written; `a / b + c` is `a`, or `b` and `c` both.
    OneOf(&'static str),
    /// Exactly one of these is written, as `a / b`: what the entry is about.
    OnlyOneOf(&'static str),
    /// Both of these are written, or neither.
    Together(&'static str, &'static str),
    /// A list that holds something where it is written.
    NotEmpty(&'static str),
    /// A number that is at most so large, in the unit of the field.
    AtMost(&'static str, f64),
    /// In each record of a list one number is at most so many times another.
    NoMoreThan(PartOf),
    /// Lists by months have twelve of them.
    TwelveMonths(&'static [&'static str]),
    /// No month has its lowest temperature above its highest.
    LowestBelowHighest,
    /// Two trays that are not the same.
    Differ(&'static str, &'static str),
}

/// A number in the records of a list, and another one it cannot pass.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PartOf {
    /// The list.
    pub list: &'static str,
    /// The field that is limited.
    pub part: &'static str,
    /// The field that limits it.
    pub whole: &'static str,
    /// How many times the whole is still believed.
    pub times: f64,
}

/// Checks a settled body as a whole.
pub(super) fn whole(known: &KindOfEntry, body: &Map<String, Value>) -> Result<(), FieldFault> {
    known.facts.rules.iter().try_for_each(|rule| rule.check(known.kind, body))
}

/// The fields of a kind of which exactly one is written: what the entry is about.
pub fn one_only_of(kind: &str) -> impl Iterator<Item = &'static str> {
    let rules = kind_of_entry(kind).map_or(&[][..], |known| known.facts.rules);
    rules
        .iter()
        .flat_map(|rule| {
            match rule {
                BodyRule::OnlyOneOf(names) => *names,
                BodyRule::OneOf(_)
                | BodyRule::Together(..)
                | BodyRule::NotEmpty(_)
                | BodyRule::AtMost(..)
                | BodyRule::NoMoreThan(_)
                | BodyRule::TwelveMonths(_)
                | BodyRule::LowestBelowHighest
                | BodyRule::Differ(..) => "",
            }
            .split(" / ")
        })
        .filter(|name| !name.is_empty())
}

impl BodyRule {
    fn check(&self, kind: &str, body: &Map<String, Value>) -> Result<(), FieldFault> {
        match self {
            BodyRule::OneOf(names) => {
                let all = |set: &str| set.split(" + ").all(|name| body.contains_key(name));
                let met = names.split(" / ").any(all);
                if met { Ok(()) } else { Err(fault(kind, Problem::OneOf(names))) }
            }
            BodyRule::OnlyOneOf(names) => match names.split(" / ").filter(|name| body.contains_key(*name)).count() {
                0 => Err(fault(kind, Problem::OneOf(names))),
                1 => Ok(()),
                _ => Err(fault(kind, Problem::OnlyOneOf(names))),
            },
            BodyRule::Together(one, other) => match (body.contains_key(*one), body.contains_key(*other)) {
                (true, false) => Err(fault(other, Problem::Missing)),
                (false, true) => Err(fault(one, Problem::Missing)),
                (true, true) | (false, false) => Ok(()),
            },
            BodyRule::NotEmpty(name) => not_empty(body, name),
            BodyRule::AtMost(name, most) => at_most(body, name, *most),
            BodyRule::NoMoreThan(part) => no_more_than(body, part),
            BodyRule::TwelveMonths(names) => names.iter().try_for_each(|name| twelve(body, name)),
            BodyRule::LowestBelowHighest => lowest_below_highest(body),
            BodyRule::Differ(one, other) => match body.get(*one).filter(|code| body.get(*other) == Some(*code)) {
                Some(Value::String(code)) => Err(fault(other, Problem::SameTray(code.clone()))),
                Some(_) | None => Ok(()),
            },
        }
    }
}

fn fault(field: &str, problem: Problem) -> FieldFault {
    FieldFault { field: field.to_string(), problem }
}

fn at_most(body: &Map<String, Value>, name: &str, most: f64) -> Result<(), FieldFault> {
    let above = body.get(name).and_then(Value::as_f64).is_some_and(|number| number > most);
    let problem = Problem::OutsideEnds { least: 0.0, most };
    if above { Err(FieldFault { field: name.to_string(), problem }) } else { Ok(()) }
}

fn no_more_than(body: &Map<String, Value>, limit: &PartOf) -> Result<(), FieldFault> {
    let PartOf { list, part, whole, times } = limit;
    for (i, record) in body.get(*list).and_then(Value::as_array).into_iter().flatten().enumerate() {
        let number = |name: &str| record.get(name).and_then(Value::as_f64);
        if let (Some(part_of), Some(whole_of)) = (number(part), number(whole)) {
            let most = whole_of * times;
            if part_of > most {
                let field = format!("{list}[{}].{part}", i + 1);
                return Err(FieldFault { field, problem: Problem::OutsideEnds { least: 0.0, most } });
            }
        }
    }
    Ok(())
}

fn not_empty(body: &Map<String, Value>, name: &str) -> Result<(), FieldFault> {
    let empty = body.get(name).and_then(Value::as_array).is_some_and(Vec::is_empty);
    if empty { Err(FieldFault { field: name.to_string(), problem: Problem::Empty }) } else { Ok(()) }
}

fn twelve(body: &Map<String, Value>, name: &str) -> Result<(), FieldFault> {
    match body.get(name).and_then(Value::as_array).map(Vec::len) {
        Some(months) if months != 12 => Err(fault(name, Problem::NotTwelve(months))),
        Some(_) | None => Ok(()),
    }
}

fn lowest_below_highest(body: &Map<String, Value>) -> Result<(), FieldFault> {
    let month = |name: &str, i: usize| body.get(name).and_then(|months| months.get(i)).and_then(Value::as_f64);
    for i in 0..12 {
        if let (Some(lowest), Some(highest)) = (month("tmin_c", i), month("tmax_c", i))
            && lowest > highest
        {
            let problem = Problem::OutsideEnds { least: COLDEST_C, most: highest };
            return Err(FieldFault { field: format!("tmin_c[{}]", i + 1), problem });
        }
    }
    Ok(())
}
