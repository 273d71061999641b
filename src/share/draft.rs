//! From named values to a draft: the envelope's own fields taken out and checked, the body settled by its kind.

use serde_json::{Map, Value};

use super::fault::{Fault, Reason};
use crate::base::{Clock, Day, text};
use crate::nursery::entry::fault::{EntryFault, Problem};
use crate::nursery::entry::fields::find_field;
use crate::nursery::entry::reading::{settle_body, unknown_kind};
use crate::nursery::entry::{KindOfEntry, kind_of_entry};
use crate::nursery::envelope::Draft;

/// The first year of which anything is read; an older day is a slip of the pen (from memory: no nursery book with tray
/// counts is older, and trees standing in a field may be).
const FIRST_YEAR: i32 = 1900;
/// The longest name of a person, in characters.
const LONGEST_WHO: usize = 80;

/// Who writes and which day it is, where a line does not say.
#[derive(Clone, Copy)]
pub(super) struct Writer<'a> {
    pub today: Day,
    pub who: &'a str,
}

/// The kind that is meant by a text.
pub(super) fn read_kind(written: &str) -> Result<&'static KindOfEntry, Fault> {
    seen(written, "kind", false)?;
    let trimmed = written.trim();
    if trimmed.is_empty() {
        return Err(EntryFault::NoKind.into());
    }
    kind_of_entry(trimmed).ok_or_else(|| unknown_kind(trimmed).into())
}

/// Whether a value under `at` is a time of day and not a list of places in a bed.
pub(super) fn at_is_clock(known: &KindOfEntry, written: &str) -> bool {
    find_field(known.fields, "at").is_none() || written.contains(':')
}

/// Makes a draft of the values by name, `happened`, `who`, `clock` and a time under `at` among them.
pub(super) fn settle_draft(known: &KindOfEntry, fields: Map<String, Value>, desk: Writer) -> Result<Draft, Fault> {
    all_seen(&fields, None)?;
    let mut body = Map::new();
    let mut envelope = Envelope::default();
    for (name, value) in fields {
        if value.is_null() {
            continue;
        }
        let folded = text::folded(&name);
        let taken = match (folded.as_str(), &value) {
            ("happened", _) => envelope.happened.replace(value).is_some(),
            ("who", _) => envelope.who.replace(value).is_some(),
            ("clock", _) => envelope.clock.replace(value).is_some(),
            ("at", Value::String(written)) if at_is_clock(known, written) => envelope.at.replace(value).is_some(),
            (_, _) => body.insert(name.clone(), value).is_some(),
        };
        if taken {
            return Err(Fault::on(&name, Reason::NameTwice));
        }
    }
    let happened = day_of(envelope.happened.as_ref(), desk.today)?;
    let who = who_of(envelope.who.as_ref(), desk.who)?;
    let clock = match (&envelope.clock, &envelope.at) {
        (Some(_), Some(_)) => return Err(Fault::on("clock", Reason::AtAndClock)),
        (Some(written), None) => Some(clock_of(written, "clock")?),
        (None, Some(written)) => Some(clock_of(written, "at")?),
        (None, None) => None,
    };
    let body = settle_body(known.kind, &body)?;
    Ok(Draft { happened, clock, who, kind: known.kind.to_string(), body })
}

#[derive(Default)]
struct Envelope {
    happened: Option<Value>,
    who: Option<Value>,
    clock: Option<Value>,
    at: Option<Value>,
}

fn day_of(written: Option<&Value>, today: Day) -> Result<Day, Fault> {
    let fault = |reason: Reason| Fault::on("happened", reason);
    let Some(written) = written else { return Ok(today) };
    let text = plain_text(written, "happened")?;
    let day: Day = text.parse().map_err(|_| fault(Reason::Envelope(Problem::NotADay(short(text)))))?;
    if day > today {
        return Err(fault(Reason::ComingDay(day)));
    }
    match Day::from_ymd(FIRST_YEAR, 1, 1) {
        Some(first) if day < first => Err(fault(Reason::TooLongAgo { happened: day, first })),
        Some(_) | None => Ok(day),
    }
}

fn who_of(written: Option<&Value>, usual: &str) -> Result<String, Fault> {
    let Some(written) = written else { return Ok(usual.to_string()) };
    let text = plain_text(written, "who")?;
    if text.chars().count() > LONGEST_WHO {
        return Err(Fault::on("who", Reason::Envelope(Problem::TooLong(LONGEST_WHO))));
    }
    Ok(text.to_string())
}

pub(super) fn clock_of(written: &Value, field: &str) -> Result<Clock, Fault> {
    let text = plain_text(written, field)?;
    text.parse().map_err(|_| Fault::on(field, Reason::Envelope(Problem::NotAClock(short(text)))))
}

/// The trimmed text of an envelope's field.
pub(super) fn plain_text<'a>(written: &'a Value, field: &str) -> Result<&'a str, Fault> {
    let fault = |problem: Problem| Fault::on(field, Reason::Envelope(problem));
    let text = written.as_str().ok_or_else(|| fault(Problem::NotText))?.trim();
    if text.is_empty() { Err(fault(Problem::Empty)) } else { Ok(text) }
}

/// The first 40 characters, the unseen ones shown.
pub(super) fn short(written: &str) -> String {
    text::shown(&written.chars().take(40).collect::<String>())
}

/// Refuses unseen characters in every name and text of a record.
fn all_seen(fields: &Map<String, Value>, inside: Option<&str>) -> Result<(), Fault> {
    for (name, value) in fields {
        let full = inside.map_or_else(|| name.clone(), |outer| format!("{outer}.{name}"));
        seen(name, &full, true)?;
        value_seen(value, &full)?;
    }
    Ok(())
}

fn value_seen(value: &Value, field: &str) -> Result<(), Fault> {
    match value {
        Value::String(written) => seen(written, field, false),
        Value::Array(items) => {
            items.iter().enumerate().try_for_each(|(i, item)| value_seen(item, &format!("{field}[{}]", i + 1)))
        }
        Value::Object(fields) => all_seen(fields, Some(field)),
        Value::Null | Value::Bool(_) | Value::Number(_) => Ok(()),
    }
}

/// Refuses unseen characters in one text.
pub(super) fn seen(written: &str, field: &str, in_name: bool) -> Result<(), Fault> {
    match written.chars().position(text::is_unseen) {
        None => Ok(()),
        Some(before) => {
            // A few letters on both sides tell a person which place is meant.
            let shown = written.chars().skip(before.saturating_sub(20)).take(40).collect::<String>();
            let reason = Reason::Unseen { place: before + 1, shown: text::shown(&shown), in_name };
            Err(Fault::on(&short(field), reason))
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::nursery::entry::all_kinds;

    #[test]
    fn no_kind_has_a_field_that_the_envelope_takes() {
        for known in all_kinds() {
            for field in known.fields {
                let taken = ["id", "happened", "clock", "recorded", "who", "kind", "command", "prev", "hash"];
                assert!(!taken.contains(&field.name), "{} has a field {}", known.kind, field.name);
            }
        }
    }
}
