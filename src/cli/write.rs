//! `write`: one entry, or a sheet of short lines.

use std::io::Read;
use std::path::Path;
use std::sync::Arc;

use serde_json::json;

use super::answer::Ending;
use super::args::Write;
use super::columns;
use super::exchange::opened;
use super::first_day;
use super::run::{Run, Stopped};
use super::undo::in_words;
use crate::base::Day;
use crate::desk::{self, Desk, Recorded};
use crate::nursery::entry::fault::{FieldFault, Problem};
use crate::nursery::entry::shape::{Field, Shape};
use crate::nursery::entry::{Entry, all_kinds, kind_of_entry};

/// Writes one entry or a sheet of short lines, or says what can be written.
pub fn run(run: &Run, arguments: &Write) -> Result<Ending, Stopped> {
    if let Some(file) = &arguments.batch {
        return batch(run, arguments, file);
    }
    let Some(kind) = &arguments.kind else { return list_kinds(run) };
    run.only_today()?;
    let bare = kind_of_entry(kind).filter(|_| arguments.fields.is_empty());
    if let Some(known) = bare.filter(|known| known.fields.iter().any(|field| field.required)) {
        return Err(Stopped::refused(fields_of(run, known.kind, known.fields)));
    }
    let mut fields = arguments.fields.clone();
    fields.extend(arguments.happened.map(|day| format!("happened={day}")));
    let mut desk = run.desk()?;
    let draft = desk::read_typed(kind, &fields, run.now.today, &run.who)
        .map_err(|fault| unwritten(run, run.wording.pair_fault(&fault)))?;
    let species = desk.fold().site().species.clone();
    if arguments.dry_run {
        let doubts = desk.rehearse(vec![draft]).map_err(|fault| run.stopped(&fault, &species))?;
        let tried = Recorded { doubts, ..Recorded::default() };
        return told_as(run, &desk, &tried, &run.wording.dry_run(1), false);
    }
    let recorded = desk.record(vec![draft]).map_err(|fault| run.stopped(&fault, &species))?;
    told(run, &desk, &recorded)
}

fn unwritten(run: &Run, line: String) -> Stopped {
    Stopped { ending: Ending::Refused, lines: vec![line, run.wording.nothing_written()] }
}

/// Writes a sheet of short lines, whole or not at all.
fn batch(run: &Run, arguments: &Write, file: &Path) -> Result<Ending, Stopped> {
    run.only_today()?;
    let (mut happened, mut who) = (arguments.happened, run.who.clone());
    for pair in arguments.kind.iter().chain(&arguments.fields) {
        match pair.split_once('=') {
            Some(("happened", day)) => happened = Some(day_of(run, day)?),
            Some(("who", name)) if !name.trim().is_empty() => who = name.to_string(),
            Some(_) | None => return Err(unwritten(run, run.wording.refused_beside_batch(pair))),
        }
    }
    let mut desk = run.desk()?;
    let text = read_text(run, file)?;
    let species = desk.fold().site().species.clone();
    let taken = desk
        .write_sheet(&text, happened, &who, arguments.dry_run)
        .map_err(|fault| first_day::refused(run, &fault, &file.display().to_string(), &species))?;
    let lines = taken.lines as i64;
    let said = if arguments.dry_run {
        run.wording.paper_tried(lines, run.wording.entries(lines))
    } else {
        run.wording.paper_taken(lines, run.wording.entries(taken.recorded.entries.len() as i64))
    };
    told_as(run, &desk, &taken.recorded, &said, true)
}

fn day_of(run: &Run, written: &str) -> Result<Day, Stopped> {
    written.parse().map_err(|_| {
        let problem = Problem::NotADay(written.to_string());
        unwritten(run, run.wording.field_fault(&FieldFault { field: "happened".to_string(), problem }))
    })
}

fn read_text(run: &Run, file: &Path) -> Result<String, Stopped> {
    let mut bytes = Vec::new();
    let read = opened(run, file)?.read_to_end(&mut bytes);
    read.map_err(|fault| Stopped::refused(run.wording.file_other(file.display(), fault)))?;
    String::from_utf8(bytes).map_err(|fault| {
        let at = fault.utf8_error().valid_up_to();
        let before = &fault.as_bytes()[..at];
        let line = before.iter().filter(|byte| **byte == b'\n').count() + 1;
        let byte = at - before.iter().rposition(|byte| *byte == b'\n').map_or(0, |end| end + 1) + 1;
        unwritten(run, run.wording.at_line(line as i64, run.wording.line_not_utf8(byte as i64)))
    })
}

/// What was written and what it makes doubtful.
pub fn told(run: &Run, desk: &Desk, recorded: &Recorded) -> Result<Ending, Stopped> {
    let said = match recorded.entries.as_slice() {
        [one] => run.wording.saved_entry(one),
        many => run.wording.saved(many.len() as i64),
    };
    told_as(run, desk, recorded, &said, recorded.entries.len() == 1)
}

/// `each`: whether every entry is said back.
fn told_as(run: &Run, desk: &Desk, recorded: &Recorded, said: &str, each: bool) -> Result<Ending, Stopped> {
    let species = &desk.fold().site().species;
    let doubts: Vec<String> = recorded.doubts.iter().map(|doubt| run.wording.doubt(doubt, species)).collect();
    // What was written stands at the end of what the desk holds.
    let newest = desk.entries().len().saturating_sub(recorded.entries.len());
    let written: Vec<Arc<Entry>> =
        desk.entries()[newest..].iter().filter(|entry| recorded.entries.contains(&entry.id)).cloned().collect();
    if run.everywhere.json {
        let sentence = |entry: &Arc<Entry>| run.wording.entry_sentence_beside(entry, run.now.today, species);
        return run.answer_json(&json!({
            "version": 1,
            "entries": recorded.entries.iter().map(ToString::to_string).collect::<Vec<_>>(),
            "text": written.iter().map(sentence).collect::<Vec<_>>(),
            "already": recorded.already,
            "doubts": doubts,
        }));
    }
    let mut text = format!("{said}\n");
    for line in in_words(run, desk, if each { &written } else { &[] }) {
        text.push_str(&format!("{line}\n"));
    }
    for doubt in doubts {
        text.push_str(&run.wording.saved_with_doubt(doubt));
        text.push('\n');
    }
    run.answer(&text)
}

fn list_kinds(run: &Run) -> Result<Ending, Stopped> {
    if run.everywhere.json {
        let kinds: Vec<_> = all_kinds()
            .map(|known| {
                let fields: Vec<_> = known
                    .fields
                    .iter()
                    .map(|field| json!({"name":field.name,"required":field.required,"unit":field.unit()}))
                    .collect();
                json!({"kind":known.kind,"fields":fields})
            })
            .collect();
        return run.answer_json(&json!({"version":1,"kinds":kinds}));
    }
    let mut text = format!("{}\n\n", run.wording.write_lists_kinds());
    for known in all_kinds() {
        for (line, part) in
            columns::wrapped(&fields_of(run, known.kind, known.fields), run.around.columns - 4).iter().enumerate()
        {
            text.push_str(if line == 0 { "" } else { "    " });
            text.push_str(part);
            text.push('\n');
        }
    }
    run.answer(&text)
}

/// `counted tray=... standing=... [dead=...]`
fn fields_of(run: &Run, kind: &str, fields: &[Field]) -> String {
    let shown: Vec<String> = fields
        .iter()
        .map(|field| {
            let value = match field.shape {
                Shape::Word(words) => words.iter().filter_map(|w| w.first().copied()).collect::<Vec<_>>().join("|"),
                Shape::Count => "N".to_string(),
                Shape::Number { .. } => run.wording.value_number(),
                Shape::Flag => "true|false".to_string(),
                Shape::Day => "2026-03-14".to_string(),
                Shape::MonthDay => "03-14".to_string(),
                Shape::Clock => "07:40".to_string(),
                Shape::List(_) => "[...]".to_string(),
                Shape::Record(_) | Shape::Open => "{...}".to_string(),
                Shape::Spot => "2.7".to_string(),
                Shape::Entry => run.wording.value_entry(),
                Shape::Code | Shape::Species | Shape::Text => "...".to_string(),
            };
            let pair = format!("{}={value}", field.name);
            if field.required { pair } else { format!("[{pair}]") }
        })
        .collect();
    format!("{kind} {}", shown.join(" "))
}
