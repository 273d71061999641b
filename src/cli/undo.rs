//! `undo`: takes a command back, and says in words what that was.

use serde_json::json;

use std::sync::Arc;

use super::answer::{Ending, note, said_yes};
use super::args::Undo;
use super::run::{Exit, Run};
use crate::base::EntryId;
use crate::base::columns::wrapped;
use crate::desk::{Desk, DeskError, Recorded, Refusal, Refused, Withdraws};
use crate::nursery::entry::Entry;

/// Takes back the last command of this copy, or the entry that is named.
pub(crate) fn run(run: &Run, arguments: &Undo) -> Result<Ending, Exit> {
    run.only_today()?;
    // Who names the entry was told to by the doubt about the clock, or knows it; what the last command was, it does not say.
    let mut desk = if arguments.entry.is_some() { run.desk_to_undo()? } else { run.desk_to_write()? };
    let species = desk.fold().site().species.clone();
    let (mut what, together) = (named(arguments), arguments.together);
    let refuse = |fault: &DeskError| run.exit_for(fault, &species);
    let would = match desk.would_undo(&what, together) {
        // What came in together goes together only where a person has said so.
        Err(DeskError::Refused(refused)) if may_go_together(run, arguments, &refused) => {
            what = arguments.entry.clone().map_or(Withdraws::LastCommand, Withdraws::CommandOf);
            let all = desk.would_undo(&what, together).map_err(|fault| refuse(&fault))?;
            if !arguments.dry_run && !agreed(run, &desk, arguments, &all) {
                return Err(Exit::refused(run.wording.undo_left()));
            }
            all
        }
        would => would.map_err(|fault| refuse(&fault))?,
    };
    if arguments.dry_run {
        return told(run, &desk, &would, None);
    }
    ask_of_its_place(run, &desk, &would)?;
    let why = arguments.why.clone().unwrap_or_else(|| "undo".to_string());
    let taken = desk.undo(&what, together, &run.who, &why).map_err(|fault| refuse(&fault))?;
    run.tell_notes(&desk);
    told(run, &desk, &taken.entries, Some(&taken.recorded))
}

/// Without a word about where it lies a nursery reckons nothing: that is asked about first.
fn ask_of_its_place(run: &Run, desk: &Desk, would: &[Arc<Entry>]) -> Result<(), Exit> {
    let entries: Vec<EntryId> = would.iter().map(|entry| entry.id.clone()).collect();
    if run.everywhere.yes || !desk.takes_away_its_place(&entries) {
        return Ok(());
    }
    note(&run.wording.remark_no_place());
    match run.can_ask() {
        true if said_yes(&run.wording.remark_asks()) => Ok(()),
        true => Err(Exit::refused(run.wording.undo_left())),
        false => Err(Exit::refused(run.wording.remark_if_meant())),
    }
}

fn named(arguments: &Undo) -> Withdraws {
    match (&arguments.entry, arguments.all, arguments.only) {
        (None, _, _) => Withdraws::LastCommand,
        (Some(entry), true, _) => Withdraws::CommandOf(entry.clone()),
        (Some(entry), false, true) => Withdraws::EntryAlone(entry.clone()),
        (Some(entry), false, false) => Withdraws::Entry(entry.clone()),
    }
}

/// Whether an entry was named that came in with others, and somebody is there to be asked, or only to be told.
fn may_go_together(run: &Run, arguments: &Undo, refused: &[Refused]) -> bool {
    let many = refused.iter().any(|one| matches!(one.why, Refusal::OneOfMany { .. }));
    many && (arguments.dry_run || (run.around.can_ask && !run.everywhere.json))
}

/// Shows what would go and asks.
fn agreed(run: &Run, desk: &Desk, arguments: &Undo, all: &[Arc<Entry>]) -> bool {
    for line in in_words(run, desk, all) {
        note(&line);
    }
    if let Some(entry) = &arguments.entry {
        note(&run.wording.undo_came_together(entry));
    }
    said_yes(&run.wording.undo_asks(all.len() as i64))
}

/// What was taken back, or would be where nothing was recorded.
fn told(run: &Run, desk: &Desk, entries: &[Arc<Entry>], recorded: Option<&Recorded>) -> Result<Ending, Exit> {
    let species = &desk.fold().site().species;
    let sentence = |entry: &Arc<Entry>| run.wording.entry_sentence_with_year(entry, species);
    if run.everywhere.json {
        let taken: Vec<String> = entries.iter().map(|entry| entry.id.to_string()).collect();
        let written = recorded.map_or(&[][..], |recorded| recorded.entries.as_slice());
        return run.answer_json(&json!({
            "version": 1,
            "dry_run": recorded.is_none(),
            "taken_back": taken,
            "text": entries.iter().map(sentence).collect::<Vec<_>>(),
            "entries": written.iter().map(ToString::to_string).collect::<Vec<_>>(),
        }));
    }
    let many = entries.len() as i64;
    let message = if recorded.is_some() { run.wording.undo_done(many) } else { run.wording.undo_would(many) };
    let mut text = format!("{message}\n");
    for line in in_words(run, desk, entries) {
        text.push_str(&format!("{line}\n"));
    }
    for doubt in recorded.map_or(&[][..], |recorded| recorded.doubts.as_slice()) {
        text.push_str(&run.wording.saved_with_doubt(run.wording.doubt(doubt, species)));
        text.push('\n');
    }
    run.answer(&text)
}

/// Entries in words, a line or more each, no wider than the screen; of very many the first ones.
pub(crate) fn in_words(run: &Run, desk: &Desk, entries: &[Arc<Entry>]) -> Vec<String> {
    let species = &desk.fold().site().species;
    let mut lines = Vec::new();
    for entry in entries.iter().take(MOST_SAID) {
        lines.extend(said_back(run, &run.wording.entry_sentence_with_year(entry, species)));
    }
    if entries.len() > MOST_SAID {
        lines.push(format!("  {}", run.wording.change_more((entries.len() - MOST_SAID) as i64)));
    }
    lines
}

/// A sentence on lines no wider than the screen.
pub(crate) fn said_back(run: &Run, message: &str) -> Vec<String> {
    let parts = wrapped(message, run.around.columns.saturating_sub(6));
    let indent = |i: usize| if i == 0 { "  " } else { "      " };
    parts.iter().enumerate().map(|(i, part)| format!("{}{part}", indent(i))).collect()
}

/// Entries said one by one; of more than this the rest are counted.
pub(crate) const MOST_SAID: usize = 30;
