//! Yesterday's sheet, a line each as a person types it: `cof-031 41`, `cof-031 -3 rats`, `rain 12`.

mod forms;
mod of_bed;
mod of_seed;
mod spoken;
mod waiting;
mod words;

#[cfg(test)]
mod tests;

pub use forms::{FORMS, FORMS_IN_SPANISH};

use super::draft::{Writer, read_kind, seen, settle_draft, short};
use super::fault::{Fault, LineFaults, Reason};
use super::hand_day::{begins_with_weekday, is_like_a_day, read_said_day};
use super::pairs::{read_pairs, split_words, with_english_name};
use super::scribbled::Reader;
use super::vocabulary::{is, vocabulary};
use crate::base::{Day, SpeciesKey, name_search, text};
use crate::nursery::entry::fault::EntryFault;
use crate::nursery::entry::kind_of_entry;
use crate::nursery::entry::shape::NameOf;
use crate::nursery::envelope::Draft;
use serde_json::{Map, Value};
use std::cell::Cell;
use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};
use words::Words;

/// The longest line that is read, bytes.
pub const LONGEST_PAPER_LINE_BYTES: usize = 4096;
/// The most lines of one sheet.
pub const MOST_PAPER_LINES: usize = 10_000;

/// What stands in a bed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct InBed {
    /// Species planned or planted there.
    pub plants: Vec<SpeciesKey>,
    /// Nurse plants there.
    pub nurses: Vec<SpeciesKey>,
    /// Places for plants by its plan, where it has one.
    pub places: Option<u32>,
    /// Whether anything stands there.
    pub is_planted: bool,
}

/// The names a sheet may speak of.
pub struct KnownNames<'a> {
    /// Codes of trays.
    pub trays: Vec<String>,
    /// Names of beds.
    pub beds: Vec<String>,
    /// Names of places.
    pub places: Vec<String>,
    /// Codes of seed lots.
    pub lots: Vec<String>,
    /// Names of containers.
    pub containers: Vec<String>,
    /// The species of a tray or a lot.
    pub species_of: &'a dyn Fn(NameOf, &str) -> Option<SpeciesKey>,
    /// What stands in a tray by the books.
    pub standing: &'a dyn Fn(&str) -> Option<u32>,
    /// What is left of a lot in seeds, where that is known.
    pub seeds: &'a dyn Fn(&str) -> Option<u32>,
    /// Whether seedlings of a tray are pricked out rather than potted on: seed is due in it, or it is a seedbed.
    pub is_seedbed: &'a dyn Fn(&str) -> bool,
    /// The plants that bear just this name.
    pub called: &'a dyn Fn(&str) -> Vec<SpeciesKey>,
    /// The plants whose name is a slip of the pen away.
    pub near: &'a dyn Fn(&str) -> Vec<SpeciesKey>,
    /// The species meant by a name.
    pub find: &'a dyn Fn(&str) -> Option<SpeciesKey>,
    /// The plants that are called so, where it is not one.
    pub several: &'a dyn Fn(&str) -> Vec<SpeciesKey>,
    /// What stands in a bed.
    pub in_bed: &'a dyn Fn(&str) -> InBed,
    /// The stable name of a task of the round; else the nearest ones.
    pub task: &'a dyn Fn(&str) -> Result<String, Vec<String>>,
}

/// A sheet of short lines as it was read.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PaperRead {
    /// The entries that can be read, each with its line.
    pub lines: Vec<(usize, Draft)>,
    /// The faults of the other lines.
    pub faults: LineFaults,
    /// Names that a line with a fault speaks of: what other lines say of them cannot be judged before it is mended.
    pub doubtful: BTreeSet<String>,
}

/// Reads every line that can be read and lists every fault. `happened` is the day of the sheet; a line with a day alone
/// sets that of the lines after it, a day before a line is that of the line.
pub fn read_paper(text: &str, known: &KnownNames, happened: Day, today: Day, who: &str) -> PaperRead {
    let mut read = PaperRead::default();
    let reader = Reader::new(known);
    let mut sheet = Sheet { known, reader, names: BTreeMap::new(), happened, today, who, asked_nearest: Cell::new(0) };
    sheet.learn_known();
    let mut day_is_lost = false;
    for (i, line) in text.strip_prefix('\u{feff}').unwrap_or(text).lines().enumerate() {
        if i == MOST_PAPER_LINES {
            read.faults.note(Fault::bare(Reason::TooManyLines(MOST_PAPER_LINES)).in_line(i + 1));
            break;
        }
        match sheet.read_line(line) {
            Ok(drafts) => {
                for draft in drafts {
                    if let Some(tray) = tray_made(&draft) {
                        sheet.reader.learn(NameOf::Tray, &tray);
                        sheet.learn(NameOf::Tray, &tray);
                    }
                    // Of lines under a day that cannot be read nobody knows when they happened.
                    if !day_is_lost {
                        read.lines.push((i + 1, draft));
                    }
                }
            }
            Err(fault) => {
                day_is_lost |= fault.field.as_deref() == Some(DAY_OF_THE_SHEET);
                if read.faults.count < MOST_LINES_DOUBTED {
                    sheet.doubt(line, &mut read.doubtful);
                } else {
                    // So many faults are no slips: what else stands there is not judged before they are mended.
                    day_is_lost = true;
                }
                read.faults.note(
                    Fault { field: fault.field.filter(|field| field != DAY_OF_THE_SHEET), ..fault }.in_line(i + 1),
                );
            }
        }
    }
    if read.lines.is_empty() && read.faults.is_empty() {
        read.faults.note(Fault::bare(Reason::NoLines).in_line(0));
    }
    read
}

/// Marks the fault of a line that was to give the day of the lines after it.
const DAY_OF_THE_SHEET: &str = "the day of the sheet";

/// `KIND key=value ...`
fn is_full_form(words: &Words) -> bool {
    words.get(0).is_some_and(|first| kind_of_entry(first).is_some())
        && words.get(1).is_some_and(|second| second.contains('='))
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
    /// The reader of lines in a person's own words.
    reader: Reader<'a>,
    /// The known names, and those of trays that earlier lines make, by their first word.
    names: BTreeMap<String, Vec<(NameOf, String)>>,
    happened: Day,
    today: Day,
    who: &'a str,
    /// How often the nearest names were looked for.
    asked_nearest: Cell<usize>,
}

impl Sheet<'_> {
    fn learn(&mut self, name_of: NameOf, name: &str) {
        let first = Words::of(name).folded(0);
        let of_word = self.names.entry(first).or_default();
        if !of_word.iter().any(|(of, other)| *of == name_of && other == name) {
            of_word.push((name_of, name.to_string()));
        }
    }

    fn learn_known(&mut self) {
        let known = self.known;
        let all = [
            (NameOf::Tray, &known.trays),
            (NameOf::Bed, &known.beds),
            (NameOf::Place, &known.places),
            (NameOf::Lot, &known.lots),
        ];
        for (name_of, names) in all {
            names.iter().for_each(|name| self.learn(name_of, name));
        }
    }

    fn read_line(&mut self, line: &str) -> Result<Vec<Draft>, Fault> {
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
        if words.len() == 0 {
            return Ok(Vec::new());
        }
        let short = self.short_form(&words);
        let fault = match &short {
            // A day alone.
            Ok(None) => return Ok(Vec::new()),
            Ok(Some(_)) => None,
            Err(fault) if fault.field.as_deref() == Some(DAY_OF_THE_SHEET) => return Err(fault.clone()),
            Err(fault) => Some(fault),
        };
        // A name with a slip in it that only one can be.
        if let Some(Reason::UnknownName { written, .. }) = fault.map(|fault| &fault.reason)
            && let Some(name) = self.reader.name_nearly(written)
        {
            let words = Words::of(&line.replacen(written.as_str(), &name, 1));
            if let Ok(Some(draft)) = self.short_form(&words) {
                return self.beside_own_words(&words, Ok(draft));
            }
        }
        let short = short.and_then(|draft| draft.ok_or_else(|| Fault::bare(Reason::NoLines)));
        self.beside_own_words(&words, short)
    }

    /// A line as a short form, with its day; none where it is a day alone, which is that of the lines after it.
    fn short_form(&mut self, words: &Words) -> Result<Option<Draft>, Fault> {
        match self.day_before(words) {
            Err(fault) => Err(fault),
            Ok(Some((day, taken))) if taken == words.len() => {
                self.happened = day;
                Ok(None)
            }
            Ok(Some((day, taken))) => {
                let of_the_sheet = std::mem::replace(&mut self.happened, day);
                let read = self.read_words(&words.after(taken));
                self.happened = of_the_sheet;
                read.map(Some)
            }
            Ok(None) => self.read_words(words).map(Some),
        }
    }

    fn read_words(&self, words: &Words) -> Result<Draft, Fault> {
        if is_full_form(words) {
            return self.full_form(words);
        }
        // "@ Upper 1 weeded": the sign only says where.
        let forecast_basis = words.get(0) == Some("@") && words.len() > 1;
        let after_sign = words.after(usize::from(forecast_basis));
        let words = &after_sign;
        if let Some((kind, body)) = forms::without_name(self, words)? {
            return self.settle(kind, body, words);
        }
        if let Some((kind, body)) = of_seed::sown(self, words)? {
            return self.settle(kind, body, words);
        }
        let Some((name_of, name, taken)) = self.longest_name(words) else { return Err(self.unknown_name(words, 0)) };
        let rest = words.after(taken);
        let (kind, body) = match name_of {
            NameOf::Tray => forms::of_tray(self, &name, &rest)?,
            NameOf::Bed => of_bed::of_bed(self, &name, &rest)?,
            NameOf::Place => forms::of_place(&name, &rest)?,
            NameOf::Lot => of_seed::of_lot(&name, &rest)?,
            // No line begins with one.
            NameOf::Container | NameOf::Field => return Err(self.unknown_name(words, 0)),
        };
        self.settle(kind, body, words)
    }

    /// Notes the names a faulty line speaks of, and what it may have made.
    fn doubt(&mut self, line: &str, doubtful: &mut BTreeSet<String>) {
        let words = Words::of(line.get(..LONGEST_PAPER_LINE_BYTES).unwrap_or(line));
        let mut made = Vec::new();
        for at in 0..words.len().min(MOST_NAMES_IN_A_LINE) {
            let rest = words.after(at);
            match self.longest_name(&rest) {
                Some((_, name, _)) => _ = doubtful.insert(name),
                None => {
                    let code = rest.get(0).unwrap_or_default().trim_end_matches([':', ',']);
                    if forms::is_like_a_code(code) {
                        made.push(code.to_string());
                        doubtful.insert(code.to_string());
                    }
                }
            }
        }
        for code in made {
            self.learn(NameOf::Tray, &code);
            self.reader.learn(NameOf::Tray, &code);
        }
    }

    fn settle(&self, kind: &str, body: Value, words: &Words) -> Result<Draft, Fault> {
        let mut fields: Map<String, Value> = body.as_object().cloned().unwrap_or_default();
        fields.insert("happened".into(), Value::from(self.happened.to_string()));
        let known = read_kind(kind)?;
        settle_draft(known, fields, Writer { today: self.today, who: self.who })
            .map_err(|fault| said_of(Fault { column: fault.column.or(words.column(0)), ..fault }))
    }

    /// `KIND key=value ...`, as `write` takes it.
    fn full_form(&self, words: &Words) -> Result<Draft, Fault> {
        // What stands before is blanked out, so that the columns stay.
        let before = words.begin() - 1;
        let line: String =
            words.raw().chars().enumerate().map(|(i, letter)| if i < before { ' ' } else { letter }).collect();
        let split = split_words(&line, true)?;
        let (kind, rest) = split.split_first().ok_or_else(|| Fault::bare(Reason::NotUnderstood(String::new())))?;
        let mut pairs: Vec<String> = rest.iter().map(|word| word.text.clone()).collect();
        let mut has_day = false;
        for pair in &mut pairs {
            if let Some(in_english) = with_english_name(pair) {
                *pair = in_english;
            }
            let Some((name, written)) = pair.split_once('=') else { continue };
            if text::folded(name) == "happened" {
                has_day = true;
                // What cannot be read is left for the reader of pairs to say.
                if let Ok(day) = read_said_day(written, self.today) {
                    *pair = format!("happened={day}");
                }
            }
        }
        if !has_day {
            pairs.push(format!("happened={}", self.happened));
        }
        read_pairs(&kind.text, &pairs, self.today, self.who).map_err(|fault| {
            let pair = fault.pair.and_then(|pair| rest.get(pair.checked_sub(1)?)).map(|word| word.column);
            Fault { column: fault.column.or(pair), field: fault.field, reason: fault.reason }
        })
    }

    /// The day that a line begins with, and how many words it takes: `on 2026-03-14`, `14/3/2026`, `24 nov`, `ayer`.
    fn day_before(&self, words: &Words) -> Result<Option<(Day, usize)>, Fault> {
        if self.longest_name(words).is_some() {
            return Ok(None);
        }
        // A weekday alone is the heading of what follows; before a line it may be the sun that does something.
        let whole = words.typed_from(0);
        if begins_with_weekday(&whole) {
            match read_said_day(&whole, self.today) {
                Ok(day) => return Ok(Some((day, words.len()))),
                Err(reason @ (Reason::WhichDay { .. } | Reason::ComingDay(_))) => {
                    return Err(Fault { column: words.column(0), field: Some(DAY_OF_THE_SHEET.to_string()), reason });
                }
                Err(_) => return Ok(None),
            }
        }
        let said = is(&words.folded(0), &vocabulary().small.before_a_day);
        let at = usize::from(said && words.len() > 1);
        for taken in (1..=MOST_WORDS_OF_A_DAY).rev() {
            let Some(written) = words.joined(at, taken) else { continue };
            let written = written.trim_end_matches([':', ',']);
            let reason = match read_said_day(written, self.today) {
                Ok(day) => return Ok(Some((day, at + taken))),
                Err(reason @ (Reason::ComingDay(_) | Reason::DayInOtherOrder(_) | Reason::WhichDay { .. })) => reason,
                Err(reason) if taken == 1 && is_like_a_day(written) => reason,
                Err(_) => continue,
            };
            let alone = at + taken == words.len();
            let field = alone.then(|| DAY_OF_THE_SHEET.to_string());
            return Err(Fault { column: words.column(at), field, reason });
        }
        Ok(None)
    }

    /// The longest known name that the words begin with, and how many words it takes; of equals the tray.
    fn longest_name(&self, words: &Words) -> Option<(NameOf, String, usize)> {
        self.longest(words, |_| true)
    }

    fn longest_of(&self, name_of: NameOf, words: &Words) -> Option<(String, usize)> {
        self.longest(words, |of| of == name_of).map(|(_, name, taken)| (name, taken))
    }

    fn longest(&self, words: &Words, of: impl Fn(NameOf) -> bool) -> Option<(NameOf, String, usize)> {
        let first = words.folded(0);
        let bare = first.trim_end_matches([':', ',']);
        let keys = [Some(first.as_str()), (bare != first).then_some(bare)];
        let named = keys.into_iter().flatten().filter_map(|key| self.names.get(key)).flatten();
        let found = named.filter(|(name_of, _)| of(*name_of)).filter_map(|(name_of, name)| {
            let taken = words.begin_with(name)?;
            Some((Reverse(taken), *name_of, name))
        });
        found.min().map(|(taken, name_of, name)| (name_of, name.clone(), taken.0))
    }

    /// The fault of words that begin with no known name.
    fn unknown_name(&self, words: &Words, at: usize) -> Fault {
        self.unknown_among(words, at, |_| true)
    }

    /// The same where a name of one sort is meant.
    fn unknown_of(&self, name_of: NameOf, words: &Words) -> Fault {
        self.unknown_among(words, 0, |of| of == name_of)
    }

    fn unknown_among(&self, words: &Words, at: usize, of: impl Fn(NameOf) -> bool) -> Fault {
        let column = words.column(at).unwrap_or(1);
        self.asked_nearest.set(self.asked_nearest.get() + 1);
        if self.asked_nearest.get() > MOST_NEAREST {
            return Fault::at(column, Reason::UnknownName { written: short(&words.name_like()), nearest: Vec::new() });
        }
        let names = self.names.values().flatten().filter(|(name_of, _)| of(*name_of)).map(|(_, name)| name.as_str());
        let typed = words.each().take(MOST_WORDS_COMPARED).collect::<Vec<_>>().join(" ");
        let (mut nearest, taken) = name_search::nearest_beginning(&typed, names);
        let written = match taken {
            Some(taken) => words.joined(0, taken).unwrap_or_default(),
            None => words.name_like(),
        };
        if nearest.is_empty() {
            // Other words are no slips of these: "corte" is not "note".
            let is_a_slip = |word: &&str| strsim::osa_distance(word, &crate::base::text::folded(&written)) == 1;
            nearest = forms::FIRST_WORDS.iter().copied().filter(is_a_slip).map(str::to_string).collect();
        }
        Fault::at(column, Reason::UnknownName { written: short(&written), nearest })
    }
}

/// The most words a day takes: "24 de noviembre de 2026".
const MOST_WORDS_OF_A_DAY: usize = 5;
/// Words of a faulty line in which names are looked for.
const MOST_NAMES_IN_A_LINE: usize = 40;
/// Faulty lines whose names are noted; more are no slips of the pen.
const MOST_LINES_DOUBTED: usize = 200;
/// Words that are compared with names.
const MOST_WORDS_COMPARED: usize = 12;
/// How often the nearest names are looked for in one sheet; nobody mends more lines at once.
const MOST_NEAREST: usize = 200;

/// A fault of a field of a short line: nobody typed the field's name, so it is told by what it means.
fn said_of(fault: Fault) -> Fault {
    match fault.reason {
        Reason::Entry(entry) => match *entry {
            EntryFault::Field { fault: inner, .. } => {
                let what = inner.field.split(['.', '[']).next_back().unwrap_or_default().to_string();
                let reason = Reason::Said { what, problem: Box::new(inner.problem) };
                Fault { field: None, column: fault.column, reason }
            }
            other => Fault { reason: Reason::Entry(Box::new(other)), ..fault },
        },
        reason => Fault { reason, ..fault },
    }
}
