//! Yesterday's sheet, a line each as a person types it: `cof-031 41`, `cof-031 -3 rats`, `rain 12`.

mod forms;
mod words;

#[cfg(test)]
mod tests;

pub use forms::{FORMS, FORMS_IN_SPANISH};

use super::draft::{Desk, read_kind, seen, settle_draft, short};
use super::fault::{Fault, LineFaults, Reason};
use super::pairs::{read_pairs, split_words};
use super::sheet::{DayOrder, read_day};
use crate::base::{Day, name_search, text};
use crate::nursery::entry::kind_of_entry;
use crate::nursery::envelope::Draft;
use serde_json::{Map, Value};
use words::Words;

/// The longest line that is read, bytes.
pub const LONGEST_PAPER_LINE_BYTES: usize = 4096;
/// The most lines of one sheet.
pub const MOST_PAPER_LINES: usize = 10_000;

/// The names a sheet may speak of.
pub struct KnownNames<'a> {
    /// Codes of trays.
    pub trays: Vec<String>,
    /// Names of beds.
    pub beds: Vec<String>,
    /// Names of places.
    pub places: Vec<String>,
    /// Whether seedlings of a tray are pricked out rather than potted on: seed is due in it, or it is a seedbed.
    pub is_seedbed: &'a dyn Fn(&str) -> bool,
}

/// What a name is of.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
enum NameOf {
    Tray,
    Bed,
    Place,
}

/// Reads every line, or lists every fault. `happened` is the day of the sheet; a line with a day alone sets that of the
/// lines after it.
pub fn read_paper(
    text: &str,
    known: &KnownNames,
    happened: Day,
    today: Day,
    who: &str,
) -> Result<Vec<(usize, Draft)>, LineFaults> {
    let mut faults = LineFaults::default();
    let mut sheet = Sheet { known, made: Vec::new(), happened, today, who };
    let mut drafts = Vec::new();
    for (i, line) in text.strip_prefix('\u{feff}').unwrap_or(text).lines().enumerate() {
        if i == MOST_PAPER_LINES {
            faults.note(Fault::bare(Reason::TooManyLines(MOST_PAPER_LINES)).in_line(i + 1));
            break;
        }
        match sheet.read_line(line) {
            Ok(None) => {}
            Ok(Some(draft)) => {
                sheet.made.extend(tray_made(&draft));
                drafts.push((i + 1, draft));
            }
            Err(fault) => faults.note(fault.in_line(i + 1)),
        }
    }
    faults.or(drafts)
}

/// The tray that an entry makes, which later lines may then name.
fn tray_made(draft: &Draft) -> Option<String> {
    let field = match draft.kind.as_str() {
        "moved_on" => "to",
        "sown" | "plants_received" | "relabelled" => "tray",
        _ => return None,
    };
    draft.body.get(field).and_then(Value::as_str).map(str::to_string)
}

/// The sheet being read.
struct Sheet<'a> {
    known: &'a KnownNames<'a>,
    /// Trays that earlier lines make.
    made: Vec<String>,
    happened: Day,
    today: Day,
    who: &'a str,
}

impl Sheet<'_> {
    fn read_line(&mut self, line: &str) -> Result<Option<Draft>, Fault> {
        if line.len() > LONGEST_PAPER_LINE_BYTES {
            return Err(Fault::bare(Reason::LineTooLong { most_bytes: LONGEST_PAPER_LINE_BYTES }));
        }
        let line = line.replace('\t', " ");
        seen(&line, "", false).map_err(|fault| {
            let column = match &fault.reason {
                Reason::Unseen { place, .. } => Some(*place),
                _ => None,
            };
            Fault { column, field: None, ..fault }
        })?;
        let words = Words::of(&line);
        let Some(first) = words.get(0) else { return Ok(None) };
        let is_full = kind_of_entry(first).is_some() && words.get(1).is_some_and(|second| second.contains('='));
        if is_full {
            return self.full_form(&words).map(Some);
        }
        if let Some(day) = self.day_alone(&words)? {
            self.happened = day;
            return Ok(None);
        }
        if let Some((kind, body)) = forms::without_name(&words)? {
            return self.settle(kind, body, &words).map(Some);
        }
        let Some((name_of, name, taken)) = self.longest_name(&words) else { return Err(self.unknown_name(&words, 0)) };
        let rest = words.after(taken);
        let (kind, body) = match name_of {
            NameOf::Tray => forms::of_tray(self, &name, &rest)?,
            NameOf::Bed => forms::of_bed(&name, &rest)?,
            NameOf::Place => forms::of_place(&name, &rest)?,
        };
        self.settle(kind, body, &words).map(Some)
    }

    fn settle(&self, kind: &str, body: Value, words: &Words) -> Result<Draft, Fault> {
        let mut fields: Map<String, Value> = body.as_object().cloned().unwrap_or_default();
        fields.insert("happened".into(), Value::from(self.happened.to_string()));
        let known = read_kind(kind)?;
        settle_draft(known, fields, Desk { today: self.today, who: self.who })
            .map_err(|fault| Fault { column: fault.column.or(words.column(0)), ..fault })
    }

    /// `KIND key=value ...`, as `write` takes it.
    fn full_form(&self, words: &Words) -> Result<Draft, Fault> {
        let split = split_words(words.raw(), true)?;
        let (kind, rest) = split.split_first().ok_or_else(|| Fault::bare(Reason::NotUnderstood(String::new())))?;
        let mut pairs: Vec<String> = rest.iter().map(|word| word.text.clone()).collect();
        let has_day =
            pairs.iter().any(|pair| pair.split_once('=').is_some_and(|(name, _)| text::folded(name) == "happened"));
        if !has_day {
            pairs.push(format!("happened={}", self.happened));
        }
        read_pairs(&kind.text, &pairs, self.today, self.who).map_err(|fault| {
            let pair = fault.pair.and_then(|pair| rest.get(pair.checked_sub(1)?)).map(|word| word.column);
            Fault { column: fault.column.or(pair), field: fault.field, reason: fault.reason }
        })
    }

    /// `on 2026-03-14`, `14/3/2026`, `ayer`.
    fn day_alone(&self, words: &Words) -> Result<Option<Day>, Fault> {
        let said = words.get(0).is_some_and(|first| ["on", "el", "day", "dia"].contains(&text::folded(first).as_str()));
        let at = usize::from(said && words.len() > 1);
        let (Some(word), true) = (words.get(at), words.len() == at + 1) else { return Ok(None) };
        let fault = |reason: Reason| Fault { column: words.column(at), field: Some("happened".into()), reason };
        let day = match text::folded(word).as_str() {
            "today" | "hoy" => self.today,
            "yesterday" | "ayer" => self.today - 1,
            _ => {
                let like_a_day = word.matches(['-', '/', '.']).count() == 2
                    && word.chars().all(|letter| letter.is_ascii_digit() || matches!(letter, '-' | '/' | '.'));
                match read_day(word, DayOrder::DayFirst) {
                    Ok(read) => read.day,
                    Err(reason) if like_a_day && self.longest_name(words).is_none() => return Err(fault(reason)),
                    Err(_) => return Ok(None),
                }
            }
        };
        if day > self.today { Err(fault(Reason::ComingDay(day))) } else { Ok(Some(day)) }
    }

    fn trays(&self) -> impl Iterator<Item = &String> {
        self.known.trays.iter().chain(&self.made)
    }

    /// The longest known name that the words begin with, and how many words it takes; of equals the tray.
    fn longest_name(&self, words: &Words) -> Option<(NameOf, String, usize)> {
        let trays = self.trays().map(|name| (NameOf::Tray, name));
        let beds = self.known.beds.iter().map(|name| (NameOf::Bed, name));
        let places = self.known.places.iter().map(|name| (NameOf::Place, name));
        longest(trays.chain(beds).chain(places), words)
    }

    fn longest_of(&self, name_of: NameOf, words: &Words) -> Option<(String, usize)> {
        let found = match name_of {
            NameOf::Tray => longest(self.trays().map(|name| (name_of, name)), words),
            NameOf::Bed => longest(self.known.beds.iter().map(|name| (name_of, name)), words),
            NameOf::Place => longest(self.known.places.iter().map(|name| (name_of, name)), words),
        };
        found.map(|(_, name, taken)| (name, taken))
    }

    /// The fault of words that begin with no known name.
    fn unknown_name(&self, words: &Words, at: usize) -> Fault {
        let written = words.name_like();
        let all = self.trays().chain(&self.known.beds).chain(&self.known.places).map(String::as_str);
        let mut nearest = name_search::nearest(&written, all);
        if nearest.is_empty() {
            nearest = name_search::nearest(&written, forms::FIRST_WORDS.iter().copied());
        }
        Fault::at(words.column(at).unwrap_or(1), Reason::UnknownName { written: short(&written), nearest })
    }
}

fn longest<'a>(names: impl Iterator<Item = (NameOf, &'a String)>, words: &Words) -> Option<(NameOf, String, usize)> {
    let mut best: Option<(NameOf, String, usize)> = None;
    for (name_of, name) in names {
        let Some(taken) = words.begin_with(name) else { continue };
        if best.as_ref().is_none_or(|(_, _, most)| taken > *most) {
            best = Some((name_of, name.clone(), taken));
        }
    }
    best
}
