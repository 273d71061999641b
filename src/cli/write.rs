//! `write`: one entry, a line in a person's own words, or a sheet of them.

mod own_words;
mod waiting_time;

use std::collections::BTreeMap;
use std::io::Read;
use std::path::Path;
use std::sync::Arc;

use serde_json::{Value, json};

use super::answer::{Ending, said_yes};
use super::args::Write;
use super::input::opened;
use super::run::{Exit, Run};
use super::undo::{MOST_SAID, in_words, said_back};
use super::{first_day, first_day_rows};
use crate::base::Day;
use crate::base::columns;
use crate::desk::{self, Desk, DeskError, Imported, PairFault, Recorded, Refused, Remark};
use crate::nursery::entry::{Entry, all_kinds, kind_of_entry};
use crate::nursery::envelope::Draft;
use crate::reckon::Picture;
use crate::reckon::effect::effects;

/// Writes one entry or a sheet of short lines, or says what can be written.
pub(crate) fn run(run: &Run, arguments: &Write) -> Result<Ending, Exit> {
    if let Some(file) = &arguments.batch {
        return batch(run, arguments, file);
    }
    let Some(kind) = &arguments.kind else { return list_kinds(run) };
    run.only_today()?;
    if let Some(line) = in_own_words(kind, &arguments.fields) {
        return own_words::run(run, arguments, &line);
    }
    let bare = kind_of_entry(kind).filter(|_| arguments.fields.is_empty());
    if let Some(known) = bare.filter(|known| known.fields.iter().any(|field| field.required)) {
        return Err(Exit::refused(run.wording.kind_form(known.kind, known.fields)));
    }
    let mut fields = arguments.fields.clone();
    if let Some(written) = &arguments.happened {
        fields.push(format!("happened={}", day_of(run, written)?));
    }
    let mut desk = if kind == "settled" { run.desk_to_settle()? } else { run.desk_to_write()? };
    let mut draft = desk::read_typed(kind, &fields, run.now.today, &run.who)
        .map_err(|fault| unwritten(run, run.wording.pair_fault(&fault)))?;
    desk.settle_nurse_row(&mut draft);
    write_drafts(run, &mut desk, vec![draft], arguments.dry_run)
}

/// What was typed as a line in a person's own words: no kind with pairs, and more than one word.
fn in_own_words(first: &str, more: &[String]) -> Option<String> {
    let has_pairs = more.iter().any(|word| word.contains('='));
    let is_kind_alone = more.is_empty() && !first.trim().contains(char::is_whitespace);
    (!has_pairs && !is_kind_alone)
        .then(|| std::iter::once(first).chain(more.iter().map(String::as_str)).collect::<Vec<_>>().join(" "))
}

/// Writes the drafts of one command, or only tries them.
pub(super) fn write_drafts(run: &Run, desk: &mut Desk, mut drafts: Vec<Draft>, only_try: bool) -> Result<Ending, Exit> {
    let species = desk.fold().site().species.clone();
    for draft in &mut drafts {
        desk.settle_task(draft).map_err(|fault| run.exit_for(&fault, &species))?;
    }
    if !only_try {
        waiting_time::ask(run, desk, &mut drafts)?;
    }
    // Of one line nobody counts the lines.
    let numbered: Vec<(usize, Draft)> = drafts.iter().map(|draft| (0, draft.clone())).collect();
    let remarks = Remarks::on(run, desk, &numbered)?;
    if only_try {
        let doubts = desk.rehearse(drafts.clone()).map_err(|fault| run.exit_for(&without_lines(fault), &species))?;
        let recorded = Recorded { doubts, ..Recorded::default() };
        let many = drafts.len();
        let read = drafts.into_iter().map(|draft| (1, draft)).collect();
        return tried(run, desk, Imported { lines: many, recorded, drafts: many, read }, &remarks.all());
    }
    remarks.agreed(run)?;
    let before = desk.picture();
    let drafts_count = drafts.iter().any(counts_plants);
    let recorded = desk.record(drafts).map_err(|fault| run.exit_for(&without_lines(fault), &species))?;
    let message = match recorded.entries.as_slice() {
        [one] => run.wording.saved_entry(one),
        many => run.wording.saved(many.len() as i64),
    };
    let effects = effects_since(run, desk, &before, drafts_count);
    let told = remarks.told_after(run);
    let telling = Telling { message: &message, each: true, tried: false, cautions: &told, effects: &effects };
    told_as(run, desk, &recorded, telling)
}

/// Whether an entry speaks of numbers of plants: that it changes none is worth a word.
fn counts_plants(draft: &Draft) -> bool {
    const KINDS: [&str; 8] =
        ["counted", "lost", "culled", "stocktaken", "given_out", "moved_on", "outplanted", "plants_lost"];
    KINDS.contains(&draft.kind.as_str())
}

/// What is otherwise than it was, a sentence each.
fn effects_since(run: &Run, desk: &Desk, before: &Picture, counts: bool) -> Vec<String> {
    let after = desk.picture();
    let found = effects(before, &after);
    if found.is_empty() && !counts {
        return Vec::new();
    }
    run.wording.outcomes(&found, &after.site.species, MOST_SAID)
}

/// Entries of one line are refused without its number.
fn without_lines(fault: DeskError) -> DeskError {
    match fault {
        DeskError::Refused(refused) => {
            DeskError::Refused(refused.into_iter().map(|one| Refused { line: 0, why: one.why }).collect())
        }
        fault @ DeskError::Journal(_) => fault,
    }
}

/// What a person is asked before something is written, and told with it.
struct Remarks {
    asked: Vec<String>,
    told: Vec<String>,
    /// What of the asked is a warning: it is told where all is agreed to beforehand.
    warned: Vec<String>,
}

impl Remarks {
    fn on(run: &Run, desk: &mut Desk, lines: &[(usize, Draft)]) -> Result<Remarks, Exit> {
        let drafts: Vec<Draft> = lines.iter().map(|(_, draft)| draft.clone()).collect();
        let found = desk.remarks(&drafts).map_err(|fault| run.desk_fault(fault))?;
        let mut remarks = Remarks { asked: Vec::new(), told: Vec::new(), warned: Vec::new() };
        for (at, remark) in found {
            // Lines of a batch are named as they stand in it.
            let line = |at: usize| lines.get(at).map_or(0, |(line, _)| *line);
            let of_line =
                if let Remark::SameAsLine(other) = remark { Remark::SameAsLine(line(other - 1)) } else { remark };
            let sentence = run.wording.remark(&of_line, run.now.today);
            let sentence = if line(at) == 0 { sentence } else { run.wording.at_line(line(at) as i64, sentence) };
            if run.everywhere.yes && matches!(of_line, Remark::SeedDead { .. }) && of_line.is_asked() {
                remarks.warned.push(sentence.clone());
            }
            // One entry with a new place is seen as it is said back: where nobody can be asked it is told.
            let is_seen = matches!(of_line, Remark::NewName(_)) && line(at) == 0 && !run.can_ask();
            if of_line.is_asked() && !is_seen { remarks.asked.push(sentence) } else { remarks.told.push(sentence) }
        }
        Ok(remarks)
    }

    /// What is asked about is written on a yes: given at a terminal, or with the command where nobody can answer.
    fn agreed(&self, run: &Run) -> Result<(), Exit> {
        if run.everywhere.yes || self.asked.is_empty() {
            return Ok(());
        }
        if !run.can_ask() {
            let lines = self.asked.iter().cloned().chain([run.wording.remark_if_meant()]).collect();
            return Err(Exit { ending: Ending::Refused, lines });
        }
        self.asked.iter().for_each(|line| run.note(line));
        if said_yes(&run.wording.remark_asks()) {
            return Ok(());
        }
        Err(Exit { ending: Ending::Refused, lines: vec![run.wording.nothing_written()] })
    }

    fn all(&self) -> Vec<String> {
        self.asked.iter().chain(&self.told).cloned().collect()
    }

    /// What is told beside what was written; a program is given what it agreed to beforehand too.
    fn told_after(&self, run: &Run) -> Vec<String> {
        if run.everywhere.json { self.all() } else { self.warned.iter().chain(&self.told).cloned().collect() }
    }
}

fn unwritten(run: &Run, line: String) -> Exit {
    Exit { ending: Ending::Refused, lines: vec![line, run.wording.nothing_written()] }
}

/// Writes a sheet of short lines, whole or not at all.
fn batch(run: &Run, arguments: &Write, file: &Path) -> Result<Ending, Exit> {
    run.only_today()?;
    let mut happened = arguments.happened.as_deref().map(|written| day_of(run, written)).transpose()?;
    let mut who = run.who.clone();
    for pair in arguments.kind.iter().chain(&arguments.fields) {
        match pair.split_once('=') {
            Some(("happened", day)) => happened = Some(day_of(run, day)?),
            Some(("who", name)) if !name.trim().is_empty() => who = name.to_string(),
            Some(_) | None => return Err(unwritten(run, run.wording.refused_beside_batch(pair))),
        }
    }
    let mut desk = run.desk_to_write()?;
    let bytes = read_bytes(run, file)?;
    let species = desk.fold().site().species.clone();
    let write = |desk: &mut Desk, only_try| {
        let taken = desk.write_sheet(&bytes, happened, &who, only_try);
        taken.map_err(|fault| first_day::refused(run, &fault, &file.display().to_string(), &species))
    };
    let tried = write(&mut desk, true)?;
    let remarks = Remarks::on(run, &mut desk, &tried.read)?;
    if !arguments.dry_run {
        remarks.agreed(run)?;
    }
    let before = desk.picture();
    let taken = if arguments.dry_run { tried } else { write(&mut desk, false)? };
    let effects = if arguments.dry_run {
        Vec::new()
    } else {
        effects_since(run, &desk, &before, taken.read.iter().any(|(_, draft)| counts_plants(draft)))
    };
    let lines = taken.lines as i64;
    if run.everywhere.json {
        return batch_json(run, &desk, &taken, arguments.dry_run, &remarks.all(), &effects);
    }
    let mut message = if arguments.dry_run {
        let mut message = run.wording.paper_tried(lines, run.wording.entries(lines));
        for row in first_day_rows::rows(&run.wording, &taken.read, &species) {
            message.push_str(&format!("\n  {row}"));
        }
        message
    } else {
        run.wording.paper_taken(lines, run.wording.entries(taken.recorded.entries.len() as i64))
    };
    if let Some(days) = days_of(run, &taken) {
        message.push_str(&format!("\n{days}"));
    }
    let told = if arguments.dry_run { remarks.all() } else { remarks.told_after(run) };
    let telling =
        Telling { message: &message, each: true, tried: arguments.dry_run, cautions: &told, effects: &effects };
    told_as(run, &desk, &taken.recorded, telling)
}

/// The days the lines are of, where they are not all of today.
fn days_of(run: &Run, taken: &Imported) -> Option<String> {
    let mut days: BTreeMap<Day, i64> = BTreeMap::new();
    taken.read.iter().for_each(|(_, draft)| *days.entry(draft.happened).or_default() += 1);
    if days.keys().all(|day| *day == run.now.today) {
        return None;
    }
    let each = days.into_iter();
    let list: Vec<String> = each.map(|(day, lines)| run.wording.paper_day(run.wording.day(day), lines)).collect();
    Some(run.wording.paper_days(list.join(", ")))
}

fn batch_json(
    run: &Run,
    desk: &Desk,
    taken: &Imported,
    dry_run: bool,
    cautions: &[String],
    effects: &[String],
) -> Result<Ending, Exit> {
    let species = &desk.fold().site().species;
    let sentences = taken.read.iter().map(|(_, draft)| run.wording.draft_sentence(draft, species)).collect();
    let mut answer = recorded_json(run, desk, &taken.recorded, sentences, (cautions, effects));
    answer["dry_run"] = json!(dry_run);
    answer["lines"] = json!(first_day_rows::lines_json(&run.wording, &taken.read, species));
    run.answer_json(&answer)
}

/// A day as people say it: `2026-03-12`, `yesterday`, `ayer`, `12/3`, `24 nov`.
fn day_of(run: &Run, written: &str) -> Result<Day, Exit> {
    desk::day_said(written, run.now.today).map_err(|reason| {
        let fault = PairFault { pair: None, column: None, field: Some("happened".to_string()), reason };
        unwritten(run, run.wording.pair_fault(&fault))
    })
}

fn read_bytes(run: &Run, file: &Path) -> Result<Vec<u8>, Exit> {
    let mut bytes = Vec::new();
    let read = opened(run, file)?.take(LONGEST_PAPER_BYTES + 1).read_to_end(&mut bytes);
    read.map_err(|fault| Exit::refused(run.wording.file_other(file.display(), run.wording.system_fault(&fault))))?;
    if bytes.len() as u64 > LONGEST_PAPER_BYTES {
        return Err(unwritten(run, run.wording.sheet_too_long(format!("{} MB", LONGEST_PAPER_BYTES >> 20))));
    }
    Ok(bytes)
}

/// The longest sheet of short lines that is read: 10,000 lines of 4,096 bytes are 40 MB; nobody writes half of that.
const LONGEST_PAPER_BYTES: u64 = 32 << 20;

/// The most entries of one command that are said in words to a program; all are named. More are looked up faster in an
/// export (ours).
const MOST_IN_WORDS: usize = 10_000;

/// What was written and what it makes doubtful.
pub(crate) fn told(run: &Run, desk: &Desk, recorded: &Recorded, cautions: &[String]) -> Result<Ending, Exit> {
    let message = match recorded.entries.as_slice() {
        [one] => run.wording.saved_entry(one),
        many => run.wording.saved(many.len() as i64),
    };
    let each = recorded.entries.len() <= MOST_SAID;
    told_as(run, desk, recorded, Telling { message: &message, each, tried: false, cautions, effects: &[] })
}

/// What is only tried: the entries in words, of very many the first ones, and what would become doubtful.
pub(crate) fn tried(run: &Run, desk: &Desk, taken: Imported, cautions: &[String]) -> Result<Ending, Exit> {
    let species = &desk.fold().site().species;
    if run.everywhere.json {
        return batch_json(run, desk, &taken, true, cautions, &[]);
    }
    let mut message = run.wording.dry_run((taken.lines - taken.recorded.already) as i64);
    for (_, draft) in taken.read.iter().take(MOST_SAID) {
        let day = run.wording.day(draft.happened);
        for line in said_back(run, &format!("{day} · {}", run.wording.draft_sentence(draft, species))) {
            message.push_str(&format!("\n{line}"));
        }
    }
    if taken.drafts > MOST_SAID {
        message.push_str(&format!("\n  {}", run.wording.change_more((taken.drafts - MOST_SAID) as i64)));
    }
    let telling = Telling { message: &message, each: false, tried: true, cautions, effects: &[] };
    told_as(run, desk, &taken.recorded, telling)
}

/// How an answer is told.
pub(crate) struct Telling<'a> {
    /// What is said first.
    pub(crate) message: &'a str,
    /// Whether every entry is said back to a person.
    pub(crate) each: bool,
    /// Whether nothing was written.
    pub(crate) tried: bool,
    /// What is told beside the entries.
    pub(crate) cautions: &'a [String],
    /// What is otherwise by them, where that was looked at.
    pub(crate) effects: &'a [String],
}

/// What was written or only tried, and what it makes doubtful; a program is given the entries in words, too.
pub(crate) fn told_as(run: &Run, desk: &Desk, recorded: &Recorded, telling: Telling<'_>) -> Result<Ending, Exit> {
    run.tell_notes(desk);
    let species = &desk.fold().site().species;
    let said_back = if telling.each || run.everywhere.json { &*recorded.entries } else { &[] };
    let said_back = said_back.iter().take(MOST_IN_WORDS);
    let written: Vec<Arc<Entry>> = desk.named(said_back).map_err(|fault| run.desk_fault(fault))?;
    if run.everywhere.json {
        let sentences = written.iter().map(|entry| run.wording.entry_sentence_with_year(entry, species)).collect();
        let beside = (telling.cautions, telling.effects);
        return run.answer_json(&recorded_json(run, desk, recorded, sentences, beside));
    }
    let mut text = format!("{}\n", telling.message);
    for line in in_words(run, desk, if telling.each { &written } else { &[] }) {
        text.push_str(&format!("{line}\n"));
    }
    for effect in telling.effects {
        super::undo::said_back(run, effect).iter().for_each(|line| text.push_str(&format!("{line}\n")));
    }
    // Several entries of one command are taken back by the first of them.
    if let [first, _, ..] = recorded.entries.as_slice() {
        text.push_str(&format!("{}\n", run.wording.saved_taken_back_by(first)));
    }
    telling.cautions.iter().for_each(|caution| text.push_str(&format!("{caution}\n")));
    let doubts = recorded.doubts.iter().map(|doubt| run.wording.doubt(doubt, species)).collect();
    text.push_str(&told_doubts(run, doubts, telling.tried));
    run.answer(&text)
}

/// What was written, for programs.
fn recorded_json(
    run: &Run,
    desk: &Desk,
    recorded: &Recorded,
    sentences: Vec<String>,
    (cautions, effects): (&[String], &[String]),
) -> Value {
    let species = &desk.fold().site().species;
    json!({
        "version": 1,
        "entries": recorded.entries.iter().map(ToString::to_string).collect::<Vec<_>>(),
        "text": sentences,
        "already": recorded.already,
        "doubts": recorded.doubts.iter().map(|doubt| run.wording.doubt(doubt, species)).collect::<Vec<_>>(),
        "cautions": cautions,
        "effects": effects,
    })
}

/// The doubts in words, a line each; of very many the first ones.
fn told_doubts(run: &Run, doubts: Vec<String>, tried: bool) -> String {
    /// More than this nobody reads at once (ours); the dashboard and `ready` have all of them.
    const MOST_DOUBTS: usize = 100;
    let (mut text, more) = (String::new(), doubts.len().saturating_sub(MOST_DOUBTS));
    for doubt in doubts.into_iter().take(MOST_DOUBTS) {
        text.push_str(&if tried { run.wording.tried_with_doubt(doubt) } else { run.wording.saved_with_doubt(doubt) });
        text.push('\n');
    }
    if more > 0 {
        text.push_str(&format!("{}\n", run.wording.change_more(more as i64)));
    }
    text
}

fn list_kinds(run: &Run) -> Result<Ending, Exit> {
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
    let heading = columns::wrapped(&run.wording.write_lists_kinds(), run.around.columns);
    let mut text = format!("{}\n\n", heading.join("\n"));
    for known in all_kinds() {
        for (line, part) in columns::wrapped(&run.wording.kind_form(known.kind, known.fields), run.around.columns - 4)
            .iter()
            .enumerate()
        {
            text.push_str(if line == 0 { "" } else { "    " });
            text.push_str(part);
            text.push('\n');
        }
    }
    run.answer(&text)
}
