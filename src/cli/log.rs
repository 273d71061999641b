//! `log`: what was written, the newest first, each with the number it is taken back by.

use serde_json::{Value, json};

use super::answer::Ending;
use super::args::Log;
use super::run::{Exit, Run};
use super::undo::said_back;
use crate::base::Day;
use crate::base::text::folded;
use crate::desk::{Desk, FoundEntries, day_said};
use crate::nursery::entry::subject::{Subject, subjects};
use crate::nursery::entry::{BookEntry, Entry, What};

/// What an entry must be to be listed.
enum Wanted {
    /// About what is called so.
    About(String),
    /// Of this day: happened, or written down on it.
    On(Day),
    /// Holding a word, folded.
    Holds(String),
}

/// Lists the newest entries that hold everything asked for.
pub(crate) fn run(run: &Run, arguments: &Log) -> Result<Ending, Exit> {
    let desk = run.desk()?;
    let wanted = wanted(run, &desk, &arguments.words);
    let species = &desk.fold().site().species;
    let known_by = run.known_by(&desk);
    let holds = |entry: &Entry| {
        run.on.is_none_or(|on| entry.happened <= on)
            && known_by.is_none_or(|known| entry.recorded <= known)
            && wanted.iter().all(|wanted| match wanted {
                Wanted::About(name) => is_about(entry, name),
                Wanted::On(day) => entry.happened == *day || entry.recorded.day(offset_h(&desk, entry)) == *day,
                Wanted::Holds(word) => run.wording.entry_holds(entry, word, run.now.today, species),
            })
    };
    let found = desk.newest_entries(&holds, arguments.most as usize).map_err(|fault| run.desk_fault(fault))?;
    if run.everywhere.json {
        return run.answer_json(&as_json(run, &desk, &found));
    }
    run.answer(&text(run, &desk, &found, &arguments.words))
}

fn offset_h(desk: &Desk, entry: &Entry) -> f64 {
    desk.fold().site().nursery.on(entry.happened).map_or(0.0, |nursery| nursery.utc_offset_h.0)
}

/// Each word by what it is: a name of the book, a day, else any word. Several words may be one name.
fn wanted(run: &Run, desk: &Desk, words: &[String]) -> Vec<Wanted> {
    let whole = words.join(" ");
    if !whole.is_empty() && desk.is_a_name(&whole) {
        return vec![Wanted::About(folded(&whole))];
    }
    words
        .iter()
        .map(|word| match day_said(word, run.now.today) {
            _ if desk.is_a_name(word) => Wanted::About(folded(word)),
            Ok(day) => Wanted::On(day),
            Err(_) => Wanted::Holds(folded(word)),
        })
        .collect()
}

fn is_about(entry: &Entry, name: &str) -> bool {
    let called = |subject: Subject| match subject {
        Subject::Tray(code) => folded(code.as_str()) == name,
        Subject::Lot(code) => folded(code.as_str()) == name,
        Subject::Bed(bed) => folded(bed.as_str()) == name,
        Subject::Place(place) => folded(place.as_str()) == name,
        Subject::Site => false,
    };
    let noted = match &entry.what {
        What::Book(BookEntry::Noted(note)) => note.about.as_ref().is_some_and(|about| folded(&about.0) == name),
        _ => false,
    };
    noted || subjects(&entry.what).into_iter().any(called)
}

fn text(run: &Run, desk: &Desk, found: &FoundEntries, words: &[String]) -> String {
    let wording = &run.wording;
    if found.entries.is_empty() {
        let search = words.join(" ");
        let none = if search.is_empty() { wording.no_entries() } else { wording.journal_none(search) };
        return format!("{none}\n");
    }
    let species = &desk.fold().site().species;
    let mut text = String::new();
    for entry in &found.entries {
        let sentence = wording.entry_sentence_with_year(entry, species);
        let gone = found.withdrawn.get(&entry.id).map(|by| format!(" · {}: {}", wording.journal_taken_back(), by));
        let line = format!("{} · {sentence} · {}{}", entry.id, wording.who_told(&entry.who), gone.unwrap_or_default());
        said_back(run, &line).iter().for_each(|line| text.push_str(&format!("{line}\n")));
    }
    if found.more {
        text.push_str(&format!("{}\n", wording.log_more(found.entries.len() as i64)));
    }
    text.push_str(&format!("{}\n", wording.log_take_back()));
    text
}

fn as_json(run: &Run, desk: &Desk, found: &FoundEntries) -> Value {
    let species = &desk.fold().site().species;
    let entries: Vec<Value> = found
        .entries
        .iter()
        .map(|entry| {
            json!({
                "entry": entry.id.to_string(),
                "happened": entry.happened,
                "recorded": entry.recorded.to_string(),
                "who": run.wording.who_told(&entry.who),
                "kind": entry.what.kind(),
                "text": run.wording.what_sentence(&entry.what, species),
                "taken_back_by": found.withdrawn.get(&entry.id).map(ToString::to_string),
            })
        })
        .collect();
    json!({"version": 1, "entries": entries, "more": found.more})
}
