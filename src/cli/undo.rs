//! `undo`: takes a command back, and says in words what that was.

use serde_json::{Value, json};

use super::answer::Ending;
use super::args::Undo;
use super::run::{Run, Stopped};
use crate::desk::Withdraws;
use crate::nursery::entry::Entry;

/// Takes back the last command of this copy, or the one an entry belongs to.
pub fn run(run: &Run, arguments: &Undo) -> Result<Ending, Stopped> {
    run.only_today()?;
    let mut desk = run.desk()?;
    let species = desk.fold().site().species.clone();
    let what = arguments.entry.clone().map_or(Withdraws::LastCommand, Withdraws::CommandOf);
    let why = arguments.why.clone().unwrap_or_else(|| "undo".to_string());
    let taken = desk.undo(&what, arguments.together, &run.who, &why).map_err(|fault| run.stopped(&fault, &species))?;
    if run.everywhere.json {
        return run.answer_json(&json!({
            "version": 1,
            "taken_back": taken.entries.iter().map(|entry| entry.id.to_string()).collect::<Vec<_>>(),
            "entries": taken.recorded.entries.iter().map(ToString::to_string).collect::<Vec<_>>(),
        }));
    }
    let list: Vec<String> = taken.entries.iter().map(|entry| in_words(run, entry)).collect();
    let done = run.wording.undo_done(list.len() as i64, "");
    let mut text = format!("{}\n", done.trim_end());
    for line in &list {
        text.push_str(&format!("  {line}\n"));
    }
    for doubt in &taken.recorded.doubts {
        text.push_str(&run.wording.saved_with_doubt(run.wording.doubt(doubt, &species)));
        text.push('\n');
    }
    run.answer(&text)
}

/// An entry as it was written, in one line.
pub fn in_words(run: &Run, entry: &Entry) -> String {
    let line = format!("{} {} {}", run.wording.day(entry.happened), entry.who, fields_in_words(entry));
    let line = crate::base::text::cleaned(&line);
    let most = run.around.columns.saturating_sub(4);
    super::columns::shortened(&line, most)
}

/// The kind and the fields of an entry as they are typed.
pub fn fields_in_words(entry: &Entry) -> String {
    let fields: Vec<String> =
        entry.what.body().iter().map(|(name, value)| format!("{name}={}", value_in_words(value))).collect();
    format!("{} {}", entry.what.kind(), fields.join(" "))
}

/// A value as it is typed; a list of records, which nobody reads in a line, by its length.
fn value_in_words(value: &Value) -> String {
    match value {
        Value::String(text) => text.clone(),
        Value::Number(number) => {
            let plain = number.as_f64().filter(|plain| plain.fract() == 0.0 && plain.abs() < 1e15);
            plain.map_or_else(|| number.to_string(), |plain| format!("{plain:.0}"))
        }
        Value::Array(all) if all.iter().any(Value::is_object) => format!("({})", all.len()),
        Value::Null | Value::Bool(_) | Value::Array(_) | Value::Object(_) => value.to_string(),
    }
}
