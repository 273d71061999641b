//! `write`: one entry.

use serde_json::json;

use super::answer::Ending;
use super::args::Write;
use super::columns;
use super::run::{Run, Stopped};
use crate::desk::{self, Desk, Recorded};
use crate::nursery::entry::shape::{Field, Shape};
use crate::nursery::entry::{all_kinds, kind_of_entry};

/// Writes one entry, or says what can be written.
pub fn run(run: &Run, arguments: &Write) -> Result<Ending, Stopped> {
    let Some(kind) = &arguments.kind else { return list_kinds(run) };
    run.only_today()?;
    if arguments.fields.is_empty() {
        if let Some(known) = kind_of_entry(kind).filter(|known| known.fields.iter().any(|field| field.required)) {
            return Err(Stopped::refused(fields_of(run, known.kind, known.fields)));
        }
    }
    let mut desk = run.desk()?;
    let draft = desk::read_typed(kind, &arguments.fields, run.now.today, &run.who).map_err(|fault| {
        let mut lines = vec![run.wording.pair_fault(&fault)];
        lines.push(run.wording.nothing_written());
        Stopped { ending: Ending::Refused, lines }
    })?;
    let species = desk.fold().site().species.clone();
    let recorded = desk.record(vec![draft]).map_err(|fault| run.stopped(&fault, &species))?;
    told(run, &desk, &recorded)
}

/// What was written and what it makes doubtful.
pub fn told(run: &Run, desk: &Desk, recorded: &Recorded) -> Result<Ending, Stopped> {
    let species = &desk.fold().site().species;
    let doubts: Vec<String> = recorded.doubts.iter().map(|doubt| run.wording.doubt(doubt, species)).collect();
    if run.everywhere.json {
        return run.answer_json(&json!({
            "version": 1,
            "entries": recorded.entries.iter().map(ToString::to_string).collect::<Vec<_>>(),
            "already": recorded.already,
            "doubts": doubts,
        }));
    }
    let mut text = match recorded.entries.as_slice() {
        [one] => run.wording.saved_entry(one),
        many => run.wording.saved(many.len() as i64),
    };
    text.push('\n');
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
