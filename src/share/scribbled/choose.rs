//! From the marks of a line to its reading: whole, in parts, or not at all.

use super::asides::{phrase, without_asides, without_company, without_doer};
use super::days::SaidDay;
use super::doubts::{doubted, without_hours};
use super::frames::{CLEAR_BY, Clause, Drafts, FRAMES, HELD_FOR_DAYS, SAFE_FROM, number_value};
use super::helpers::without_helpers;
use super::lexicon::{fold, lexicon};
use super::marks::{Mark, What, marks};
use super::named::{Known, Names};
use super::numbers::in_figures;
use super::said::{
    as_looked, as_mostly_said, as_said, heights_and_collars, of_the_whole_line, said_plainly, set_aside,
    without_articles, without_what_is_denied,
};
use super::short_names::with_whole_names;
use super::spelling::spelt;
use super::why::Why;
use super::words::{Word, words};
use super::{EntryDraft, Offer, Reading};
use crate::base::Day;
use serde_json::{Value, json};
use std::cell::Cell;

/// The longest line that is looked at in parts, marks.
const MOST_MARKS: usize = 40;
/// The most words that are looked at.
const MOST_WORDS: usize = 60;
/// The most places where a line is parted.
pub(super) const MOST_PARTINGS: usize = 7;
/// The most statements that are tried for one line; a line that needs more is refused.
pub(super) const MOST_TRIED: usize = 70;
/// What a reading must weigh to be sure though words are left over.
const SURE: i32 = 15;
/// The same of the weather, which speaks of no tray or bed.
const SURE_WEATHER: i32 = 10;
/// The most words that are passed over so.
const MOST_LEFT: usize = 3;
/// Kinds of entries that their units or their own words make sure.
const SURE_KINDS: [&str; 8] = [
    "light_read",
    "soil_checked",
    "weather",
    "lot_tested",
    "measured",
    "plug_checked",
    "watering_set",
    "survival_counted",
];
/// Roles of words that do not say by themselves what happened.
const SOFT: [&str; 10] = ["put", "carry", "receive", "gives", "reach", "saw", "one_lifted", "hole", "leaf", "well"];
/// Roles of words that say nothing without a number or a name beside them.
const PLAIN: [&str; 9] = ["rain", "rain_manner", "whole", "poor", "days.today", "bag", "seed", "root", "thirsty"];
/// The most lines that are offered.
pub(super) const MOST_OFFERS: usize = 4;

/// One way to read a statement.
#[derive(Clone, Debug)]
pub(super) struct Way {
    pub(super) drafts: Drafts,
    pub(super) weight: i32,
    pub(super) lacks: Vec<Why>,
    /// Marks that it does not explain.
    pub(super) leftover: Vec<usize>,
}

/// A reader that knows the names of one nursery; made once for many lines.
pub(crate) struct Reader<'a> {
    known: Known<'a>,
}

impl<'a> Reader<'a> {
    /// Lays out the names.
    pub(crate) fn new(names: &'a dyn Names) -> Reader<'a> {
        Reader { known: Known::new(names) }
    }

    /// One more name: a tray that an earlier line makes.
    pub(crate) fn learn(&mut self, name_of: super::NameOf, name: &str) {
        self.known.learn(name_of, name.to_string());
    }

    /// The one bed, place or container of which this is the name with a slip of the pen.
    pub(crate) fn name_nearly(&self, written: &str) -> Option<String> {
        let typed = words(written);
        let (names, taken) = self.known.name_at(&typed, 0)?;
        let [(_, name)] = &names[..] else { return None };
        (taken == typed.len() && *name != written).then(|| name.clone())
    }

    /// Reads one line as scribbled today.
    pub(crate) fn read(&self, line: &str, today: Day) -> Reading {
        read_line(line, today, &self.known)
    }
}

fn read_line(line: &str, today: Day, known: &Known) -> Reading {
    let line = line.trim();
    if let Some(text) = note(line) {
        return Reading::Clear(vec![EntryDraft {
            kind: "noted",
            fields: [("text".to_string(), json!(text))].into_iter().collect(),
            happened: None,
        }]);
    }
    let is_question = line.contains(['?', '¿']);
    let words: Vec<Word> = words(line).into_iter().filter(|word| !says_no_word(&word.typed)).collect();
    if words.is_empty() || words.len() > MOST_WORDS {
        return Reading::Refused { why: vec![Why::NoReading(Vec::new())], offers: Vec::new() };
    }
    match heights_and_collars(&words, known) {
        Some(Ok(measured)) if !is_question => return Reading::Clear(measured),
        Some(Err(note)) => return Reading::Refused { why: vec![Why::CollarAlone], offers: vec![note] },
        Some(Ok(_)) | None => {}
    }
    let (words, doer) = without_doer(said_plainly(with_whole_names(spelt(words, known), known)), known);
    let (words, company) = without_company(words, known);
    let doer = doer.or(company);
    let (words, set_aside) = set_aside(words, known, today);
    let whole_line = words.clone();
    let (words, aside) = without_asides(without_hours(without_helpers(without_articles(as_mostly_said(words)))));
    let aside = aside.or(doer);
    let (read, more) = match read_words(&words, is_question, known, today) {
        Reading::Refused { why, offers } => said_beside(&words, is_question, known, today)
            .filter(|_| why.iter().any(|why| matches!(why, Why::NoReading(_) | Why::NoUnit(_) | Why::NoNumber)))
            .unwrap_or((Reading::Refused { why, offers }, None)),
        read => (read, None),
    };
    let read = if is_question { with_a_number_in_doubt(line, read) } else { read };
    let read = match aside.or(more) {
        Some(aside) => beside(read, &aside),
        None => read,
    };
    let read = as_looked(&whole_line, of_the_whole_line(&whole_line, read, today), known);
    let said = as_said(&whole_line, read, known);
    let read = without_what_is_denied(&whole_line, said, known, |part| read_words(part, false, known, today));
    set_aside.put_back(read)
}

/// "k1 40?": the number is not sure; about so many is offered.
fn with_a_number_in_doubt(line: &str, read: Reading) -> Reading {
    let before = line.split('?').next().unwrap_or_default();
    let figure = before.trim_end().rsplit(' ').next().filter(|word| in_figures(word).is_some());
    let (Some(figure), false, Reading::Refused { why, offers }) = (figure, line.contains('¿'), &read) else {
        return read;
    };
    if !why.iter().all(|why| matches!(why, Why::Question(names) if !names.is_empty())) {
        return read;
    }
    let about = |draft: &EntryDraft| {
        let mut draft = draft.clone();
        if draft.kind == "counted" {
            draft.fields.insert("about".into(), json!(true));
        }
        draft
    };
    let offers = offers.iter().map(|offer| offer.iter().map(about).collect()).collect();
    Reading::Refused { why: vec![Why::Unsure(format!("{figure}?"))], offers }
}

/// Signs of asking and calling, and little pictures.
fn says_no_word(typed: &str) -> bool {
    /// Where pictures begin among the letters of all scripts; arrows and signs of reckoning stand before.
    const FIRST_PICTURE: char = '\u{2600}';
    matches!(typed, "?" | "¿" | "!" | "¡")
        || typed.chars().all(|letter| letter >= FIRST_PICTURE && !letter.is_alphanumeric())
}

/// The line without the parts that say nothing the journal has a word for, where the rest is clear: parts between signs,
/// behind a joining word, and what was the reason.
fn said_beside(words: &[Word], is_question: bool, known: &Known, today: Day) -> Option<(Reading, Option<String>)> {
    let parts = parts_of(words);
    let (beside, rest): (Vec<&[Word]>, Vec<&[Word]>) =
        parts.into_iter().partition(|part| says_nothing(part, known, today));
    if beside.is_empty() || rest.is_empty() {
        return None;
    }
    let read = read_words(&rest.concat(), is_question, known, today);
    // Of what plants died, or why they were thrown out or kept back, is a part of the entry.
    let with_reason = |draft: &EntryDraft| matches!(draft.kind, "lost" | "culled" | "plants_lost" | "held");
    let drafts = match &read {
        Reading::Clear(drafts) => drafts.clone(),
        Reading::Asks { offers, .. } | Reading::Refused { offers, .. } => offers.concat(),
    };
    if beside.iter().any(|part| is_reason(part)) && drafts.iter().any(with_reason) {
        return None;
    }
    // "todo bien": that all is well is said by the entry.
    let says_nothing_more = |word: &Word| {
        let roles = lexicon().roles(&word.folded);
        let is_plain = |role: &&str| matches!(*role, "whole" | "well" | "put") || role.starts_with("small.");
        word.is_sign() || !roles.is_empty() && roles.iter().any(is_plain)
    };
    let is_well = beside.iter().flat_map(|part| part.iter()).any(|word| lexicon().is(&word.folded, "well"));
    let is_said = is_well && beside.iter().flat_map(|part| part.iter()).all(says_nothing_more);
    let typed: Vec<String> = beside.concat().into_iter().map(|word| word.typed).collect();
    let more = Some(typed.join(" ")).filter(|_| !is_said);
    matches!(read, Reading::Clear(_) | Reading::Asks { .. }).then_some((read, more))
}

/// The parts of a line, each with the sign or the word that leads it.
fn parts_of(words: &[Word]) -> Vec<&[Word]> {
    let leads = |at: &usize| {
        let word = &words[*at];
        matches!(word.typed.as_str(), "," | ";" | ":" | "." | "(" | ")")
            || ["small.and", "asides.turn"].iter().any(|role| lexicon().is(&word.folded, role))
            || phrase(words, *at, "asides.because") > 0
    };
    let mut bounds: Vec<usize> = (1..words.len()).filter(leads).collect();
    bounds.insert(0, 0);
    bounds.push(words.len());
    bounds.windows(2).map(|two| &words[two[0]..two[1]]).filter(|part| !part.is_empty()).collect()
}

fn is_reason(part: &[Word]) -> bool {
    phrase(part, 0, "asides.because") > 0
}

/// Whether a part of a line holds no name, no number and nothing that happened. A reason may say what it likes of the
/// world, but no number and no name.
fn says_nothing(part: &[Word], known: &Known, today: Day) -> bool {
    let is_reason = is_reason(part);
    let of = marks(part, known, today);
    let is_plain = |mark: &Mark| match mark.what {
        What::Unknown | What::Sign(_) => true,
        What::Number { is_weak, .. } => is_weak,
        What::Day(_) => is_reason && !mark.typed.contains(|letter: char| letter.is_ascii_digit()),
        What::Word if is_reason => true,
        What::Word if mark == &of[0] && mark.has("asides.turn") => true,
        What::Word => mark.roles.iter().all(|role| {
            role.starts_with("small.") || role.starts_with("asides.") || SOFT.contains(role) || PLAIN.contains(role)
        }),
        _ => false,
    };
    // Signs alone are no part, and rain is told by a number.
    of.iter().all(is_plain) && of.iter().any(|mark| !matches!(mark.what, What::Sign(_)))
}

fn read_words(words: &[Word], is_question: bool, known: &Known, today: Day) -> Reading {
    let all = marks(words, known, today);
    if all.len() > MOST_MARKS {
        return Reading::Refused { why: vec![Why::NoReading(Vec::new())], offers: Vec::new() };
    }
    let moods = moods(&all, is_question);
    let plain: Vec<Mark> = all.into_iter().filter(|mark| !is_mood(mark)).collect();
    let read = doubted(words, Line { marks: plain, known, today, tried: Cell::new(0) }.read());
    if moods.is_empty() { read } else { refused_for(moods, read) }
}

/// What no entry has a field for goes along with the first entry: the line is kept word for word beside it.
fn beside(mut read: Reading, aside: &str) -> Reading {
    let all: Vec<&mut Offer> = match &mut read {
        Reading::Clear(drafts) => vec![drafts],
        Reading::Asks { offers, .. } | Reading::Refused { offers, .. } => offers.iter_mut().collect(),
    };
    for draft in all.into_iter().filter_map(|drafts| drafts.first_mut()).filter(|draft| draft.kind != "noted") {
        draft.fields.insert("aside".into(), json!(aside));
    }
    read
}

/// A line that is a note holds whatever it holds.
fn note(line: &str) -> Option<&str> {
    let end = line.find([' ', ':']).unwrap_or(line.len());
    let (head, rest) = line.split_at(end);
    let text = rest.trim_start_matches([':', ' ', '-']).trim();
    // "apunté mal" tells what somebody did.
    if head.ends_with(['é', 'ó']) {
        return None;
    }
    let head = fold(head);
    let is_note =
        lexicon().is(&head, "notes.words") || lexicon().is(&head, "notes.with_colon") && rest.starts_with(':');
    (is_note && !text.is_empty()).then_some(text)
}

fn is_mood(mark: &Mark) -> bool {
    mark.what == What::Word
        && !mark.is_slip
        && mark.roles.iter().any(|role| role.starts_with("mood.") && *role != "mood.vague")
        && mark.roles.iter().all(|role| role.starts_with("mood.") || role.starts_with("small."))
}

/// What the line says about whether it was done at all.
fn moods(marks: &[Mark], is_question: bool) -> Vec<Why> {
    let mut found = Vec::new();
    if is_question {
        let names = marks.iter().filter(|mark| is_subject(mark)).map(|mark| mark.typed.clone());
        found.push(Why::Question(names.collect()));
    }
    for mark in marks.iter().filter(|mark| is_mood(mark)) {
        let word = mark.typed.clone();
        found.push(match () {
            () if mark.has("mood.coming") => Why::Coming(word),
            () if mark.has("mood.intent") => Why::Intent(word),
            () if mark.has("mood.not_done") => Why::NotDone(word),
            () if mark.has("mood.question") => Why::Question(Vec::new()),
            () => Why::Unsure(word),
        });
    }
    found
}

fn refused_for(why: Vec<Why>, read: Reading) -> Reading {
    let offers = match read {
        Reading::Clear(drafts) => vec![drafts],
        Reading::Asks { offers, .. } | Reading::Refused { offers, .. } => offers,
    };
    Reading::Refused { why, offers }
}

/// A line as marked.
pub(super) struct Line<'a> {
    pub(super) marks: Vec<Mark>,
    pub(super) known: &'a Known<'a>,
    today: Day,
    /// Statements that were tried.
    pub(super) tried: Cell<usize>,
}

impl Line<'_> {
    fn read(&self) -> Reading {
        if let Some(why) = self.bad_day() {
            return Reading::Refused { why: vec![why], offers: self.on_either_day() };
        }
        let whole = self.ways(&self.marks);
        let explained: Vec<&Way> = whole.iter().filter(|way| way.leftover.is_empty()).collect();
        if let Some(reading) = self.judged(&explained) {
            return reading;
        }
        let parts = self.in_parts();
        if let Some(reading) = parts
            && (explained.is_empty() || matches!(reading, Reading::Clear(_)))
        {
            return reading;
        }
        if !explained.is_empty() {
            return self.asked(&explained);
        }
        let but_for_words = self.sure_but_for_words(&whole).or_else(|| self.headed_but_for_words(&whole));
        but_for_words.unwrap_or_else(|| self.nearest(&whole))
    }

    /// A reading that its units or its own words make sure, though some words are left over that nobody knows: they are kept
    /// beside it. A word that may turn it, another thing that happened, a name or a number is never passed over.
    fn sure_but_for_words(&self, whole: &[Way]) -> Option<Reading> {
        let is_weather = |way: &Way| way.drafts.iter().all(|(kind, _)| *kind == "weather");
        let is_heavy = |way: &Way| way.weight >= if is_weather(way) { SURE_WEATHER } else { SURE };
        let best = whole.first().filter(|way| way.lacks.is_empty() && is_heavy(way))?;
        let is_sure = best.drafts.iter().all(|(kind, _)| SURE_KINDS.contains(kind));
        let rival =
            whole.iter().skip(1).any(|way| way.leftover.len() == best.leftover.len() && way.drafts != best.drafts);
        let left: Vec<&Mark> = best.leftover.iter().filter_map(|at| self.marks.get(*at)).collect();
        let is_soft = |mark: &&Mark| match mark.what {
            What::Unknown => !lexicon().is(&mark.folded, "helpers.turns"),
            What::Word => mark.roles.iter().all(|role| SOFT.contains(role) || role.starts_with("small.")),
            _ => false,
        };
        if !is_sure
            || rival
            || left.len() > MOST_LEFT
            || !left.iter().all(is_soft)
            || self.one_day().is_none() && self.marks.iter().any(|mark| day_of(mark).is_some())
        {
            return None;
        }
        let words: Vec<&str> = left.iter().map(|mark| mark.typed.as_str()).collect();
        Some(beside(Reading::Clear(self.dated(&best.drafts, self.one_day())), &words.join(" ")))
    }

    fn bad_day(&self) -> Option<Why> {
        self.marks.iter().find_map(|mark| match mark.what {
            What::Day(SaidDay::Impossible) => Some(Why::BadDay(mark.typed.clone())),
            What::Day(SaidDay::Unknown | SaidDay::TodayOrWeekAgo) => Some(Why::FarOpen(mark.typed.clone())),
            _ => None,
        })
    }

    /// The name of the weekday of today may be said of today or of a week ago: the line on both days.
    fn on_either_day(&self) -> Vec<Offer> {
        let is_open = |mark: &Mark| mark.what == What::Day(SaidDay::TodayOrWeekAgo);
        let at = self.marks.iter().position(is_open);
        let Some(at) = at.filter(|at| !self.marks[at + 1..].iter().any(is_open)) else { return Vec::new() };
        let on = |day: Day| {
            let mut marks = self.marks.clone();
            marks[at].what = What::Day(SaidDay::On(day));
            let line = Line { marks, known: self.known, today: self.today, tried: Cell::new(self.tried.get()) };
            match line.read() {
                Reading::Clear(drafts) => {
                    Some(drafts.into_iter().map(|draft| EntryDraft { happened: Some(day), ..draft }).collect())
                }
                Reading::Asks { .. } | Reading::Refused { .. } => None,
            }
        };
        [self.today, self.today.plus(-7)].into_iter().filter_map(on).collect()
    }

    /// Every way to read a statement, the weightiest first.
    pub(super) fn ways(&self, marks: &[Mark]) -> Vec<Way> {
        self.tried.set(self.tried.get() + 1);
        if self.tried.get() > MOST_TRIED {
            return Vec::new();
        }
        let blank = Clause::new(marks, self.known);
        let mut ways: Vec<Way> = Vec::new();
        for frame in FRAMES {
            let mut clause = blank.clone();
            let Some(drafts) = frame(&mut clause) else { continue };
            let leftover = clause.leftover();
            ways.push(Way { drafts, weight: clause.weight, lacks: clause.lacks, leftover });
        }
        ways.sort_by_key(|way| (way.leftover.len(), -way.weight));
        ways
    }

    /// The one reading that is clear among those that explain everything.
    fn judged(&self, explained: &[&Way]) -> Option<Reading> {
        let best = explained.first()?;
        if !best.lacks.is_empty() || self.names_several_days() {
            return None;
        }
        let rivals =
            explained.iter().skip(1).filter(|way| way.drafts != best.drafts && way.weight > best.weight - CLEAR_BY);
        if rivals.count() > 0 {
            return None;
        }
        Some(Reading::Clear(self.dated(&best.drafts, self.one_day())))
    }

    fn asked(&self, explained: &[&Way]) -> Reading {
        let Some(best) = explained.first() else {
            return Reading::Refused { why: vec![Why::Several], offers: Vec::new() };
        };
        if self.names_several_days() {
            let days: Vec<&Mark> = self.marks.iter().filter(|mark| day_of(mark).is_some()).collect();
            return self.of_each_day(best, &days);
        }
        let near = explained.iter().filter(|way| way.weight > best.weight - 12);
        let mut drafts: Vec<Drafts> = near.map(|way| way.drafts.clone()).collect();
        // Of so many in all it is a count, whole or of a part.
        let counts = best.lacks.iter().any(|why| matches!(why, Why::WholeOrPart(..)));
        let other = drafts.first().and_then(count_for_loss).filter(|_| !counts);
        drafts.extend(other.filter(|other| {
            other.iter().all(|(kind, fields)| match *kind {
                "counted" => self.known.is_a_likely_count(fields),
                _ => self.known.can_be_lost(fields),
            })
        }));
        drafts.extend(self.narrowed());
        drafts.extend(with_what_is_meant(best));
        let mut offers: Vec<Offer> = Vec::new();
        for drafts in drafts {
            let one = self.dated(&drafts, self.one_day());
            if !offers.contains(&one) && offers.len() < MOST_OFFERS {
                offers.push(one);
            }
        }
        let why = if best.lacks.is_empty() { vec![Why::Several] } else { best.lacks.clone() };
        let is_open = why.iter().all(|why| {
            matches!(
                why,
                Why::Several
                    | Why::SomeHoles(..)
                    | Why::WeedsOrAll(_)
                    | Why::Both(_)
                    | Why::OverHalf(_)
                    | Why::WholeOrPart(..)
                    | Why::WhichContainer(_)
                    | Why::WhichPlant(_)
                    | Why::CauseNearly(..)
            )
        });
        if is_open { Reading::Asks { why, offers } } else { Reading::Refused { why, offers } }
    }

    /// One thing is said of several days: it is asked whether it was so on each of them.
    fn of_each_day(&self, best: &Way, days: &[&Mark]) -> Reading {
        let on = |mark: &&Mark| self.dated(&best.drafts, day_of(mark));
        let every = days.iter().flat_map(on).collect();
        let why = vec![Why::SeveralDays(days.iter().map(|mark| mark.typed.clone()).collect())];
        Reading::Refused { why, offers: vec![every] }
    }

    /// The readings with each name taken for one thing only.
    fn narrowed(&self) -> Vec<Drafts> {
        let mut found = Vec::new();
        for (i, mark) in self.marks.iter().enumerate() {
            let What::Name(all) = &mark.what else { continue };
            for one in all.iter().filter(|_| all.len() > 1) {
                let mut marks = self.marks.clone();
                marks[i].what = What::Name(vec![one.clone()]);
                let fits = self.ways(&marks).into_iter().find(|way| way.leftover.is_empty() && way.lacks.is_empty());
                found.extend(fits.map(|way| way.drafts));
            }
        }
        found
    }

    /// The day of the line where it has just one; "today in the morning" is one.
    pub(super) fn one_day(&self) -> Option<Day> {
        let first = self.marks.iter().find_map(day_of);
        first.filter(|_| !self.names_several_days())
    }

    fn names_several_days(&self) -> bool {
        let mut days = self.marks.iter().filter_map(day_of);
        let first = days.next();
        days.any(|day| Some(day) != first)
    }

    /// Whether today is named, by its date or as today: "in the morning" is that of the day the sheet is of.
    fn names_today(&self) -> bool {
        self.marks.iter().any(|mark| {
            day_of(mark) == Some(self.today)
                && (mark.typed.contains(|letter: char| letter.is_ascii_digit()) || is_word_for_today(&mark.folded))
        })
    }

    pub(super) fn dated(&self, drafts: &Drafts, day: Option<Day>) -> Vec<EntryDraft> {
        let happened = day.filter(|day| *day != self.today || self.names_today());
        let on = day.unwrap_or(self.today);
        drafts
            .iter()
            .map(|(kind, fields)| EntryDraft { kind, fields: with_spans(fields.clone(), on), happened })
            .collect()
    }
}

/// Days of a wait that was told by its last day, and the last day of what was held for some days.
fn with_spans(mut fields: super::frames::Fields, on: Day) -> super::frames::Fields {
    if let Some(last) = fields.remove(SAFE_FROM).and_then(|day| day.as_str()?.parse::<Day>().ok()) {
        let days = last.number() - on.number();
        fields.insert("safe_after_days".into(), json!(days.max(0)));
    }
    if let Some(days) = fields.remove(HELD_FOR_DAYS).and_then(|days| days.as_f64()) {
        fields.insert("until".into(), json!(super::written(on.plus(days as i32))));
    }
    fields
}

/// The readings with each container, tray or place that may be meant, with the cause that was probably meant.
fn with_what_is_meant(way: &Way) -> Vec<Drafts> {
    let set_value = |field: &str, value: Value| {
        let mut drafts = way.drafts.clone();
        for (_, fields) in &mut drafts {
            fields.insert(field.to_string(), value.clone());
        }
        drafts
    };
    let set = |field: &str, value: &str| set_value(field, value.into());
    // The field that a name nobody knows was to fill.
    let lacked = way.drafts.first().and_then(|(kind, fields)| {
        let field = if *kind == "carried" { "place" } else { "tray" };
        (!fields.contains_key(field)).then_some(field)
    });
    let mut found = Vec::new();
    for why in &way.lacks {
        match (why, lacked) {
            (Why::WhichContainer(names), _) => found.extend(names.iter().map(|name| set("container", name))),
            (Why::WhichTray(names), _) => found.extend(names.iter().map(|name| set("tray", name))),
            (Why::WhichPlant(names), _) => found.extend(names.iter().map(|name| set("nurse", name))),
            (Why::WholeOrPart(_, all), _) => found.push(set_value("cells_seen", number_value(*all))),
            (Why::CauseNearly(_, known), _) => found.push(set("cause", known)),
            (Why::UnknownName(_, near), Some(field)) => found.extend(near.iter().map(|name| set(field, name))),
            _ => {}
        }
    }
    found
}

/// A count where a loss was read, a loss where a count was: with the same number.
pub(super) fn count_for_loss(drafts: &Drafts) -> Option<Drafts> {
    let (kind, fields) = drafts.first()?;
    let (other, from, to) = match *kind {
        "lost" => ("counted", "count", "standing"),
        "counted" => ("lost", "standing", "count"),
        _ => return None,
    };
    let told = [("tray", fields.get("tray")?.clone()), (to, fields.get(from)?.clone())];
    Some(vec![(other, told.into_iter().map(|(key, value)| (key.to_string(), value)).collect())])
}

fn is_word_for_today(folded: &str) -> bool {
    matches!(folded, "today" | "hoy")
}

pub(super) fn day_of(mark: &Mark) -> Option<Day> {
    match mark.what {
        What::Day(SaidDay::On(day)) => Some(day),
        _ => None,
    }
}

pub(super) fn is_subject(mark: &Mark) -> bool {
    matches!(mark.what, What::Name(_))
}

/// Whether a word says what happened.
pub(super) fn is_verb(mark: &Mark) -> bool {
    mark.what == What::Word
        && mark.roles.iter().any(|role| !role.contains('.'))
        && !mark.roles.iter().any(|role| role.starts_with("small."))
}
