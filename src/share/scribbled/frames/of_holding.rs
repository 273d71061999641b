//! Frames of what is held back, set apart and let go.

use super::clause::{Clause, fields, number_value};
use super::entries::{Drafts, for_each, one, subject};
use super::of_care::share_of;
use crate::share::scribbled::typed::marks::{Mark, What};
use crate::share::scribbled::typed::named::NameOf::{Bed, Lot, Place, Tray};
use crate::share::scribbled::why::Why;
use serde_json::{Value, json};

/// How many days something is held, until the day of the line is known; then it becomes a last day.
pub(crate) const HELD_FOR_DAYS: &str = "held_for_days";

/// Uses "keep k1 back": the two words with what is kept between them.
fn kept_back(clause: &mut Clause) -> Option<usize> {
    let is = |at: &usize, words: &[&str]| words.contains(&clause.marks[*at].folded.as_str());
    let keep = (0..clause.marks.len()).find(|at| is(at, &["keep", "kept", "keeping", "hold", "holding"]))?;
    let back = (keep + 2..clause.marks.len()).find(|at| is(at, &["back", "here", "in", "aside", "apart"]))?;
    let names = clause.marks[keep + 1..back].iter().any(|mark| matches!(mark.what, What::Name(_)));
    if !names {
        return None;
    }
    clause.use_mark(keep);
    clause.use_mark(back);
    clause.weight += 10;
    Some(keep)
}

/// Uses "don't touch k1, it is sick": of no remedy, and for no time that is said.
fn untouched_for_sickness(clause: &mut Clause) -> Option<usize> {
    let says_why = clause.has("sick") || clause.has("pests.words");
    let of_a_remedy = clause.has("remedy") || clause.has("spray") || clause.find_number().is_some();
    let touches =
        |mark: &Mark| mark.has("wait") && ["touch", "toc", "toqu"].iter().any(|stem| mark.folded.contains(stem));
    let at = clause.marks.iter().position(touches).filter(|_| says_why && !of_a_remedy)?;
    clause.use_mark(at);
    clause.weight += 10;
    Some(at)
}

pub(crate) fn held(clause: &mut Clause) -> Option<Drafts> {
    // "don't let c1 go, has rust": what was seen is an entry of its own.
    let seen_besides = clause.marks.windows(2).any(|two| two[0].is_sign(',') && two[1].has("saw"));
    if seen_besides && clause.has("pests.words") {
        return None;
    }
    // "rust on c1, quarantined it": so is what was seen before it.
    let comma = clause.marks.iter().position(|mark| mark.is_sign(','));
    let is_first = |role: &str| clause.marks.iter().position(|mark| mark.has(role));
    if let (Some(comma), Some(pest), Some(hold)) = (comma, is_first("pests.words"), is_first("hold"))
        && pest < comma
        && comma < hold
    {
        return None;
    }
    if let_out(clause).is_some() {
        return None;
    }
    clause.head(&["hold"]).or_else(|| kept_back(clause)).or_else(|| untouched_for_sickness(clause))?;
    let is_quarantine =
        |mark: &&Mark| mark.has("hold") && ["quarantine", "cuarentena"].iter().any(|word| mark.folded.contains(word));
    let quarantine = clause.marks.iter().find(is_quarantine).map(|mark| mark.typed.clone());
    let is_of_some = clause.find_name(Tray).is_some() && clause.find_number().is_some();
    let until = clause.coming();
    let days = if until.is_none() { clause.amount("units.day") } else { None };
    let subjects = subject(clause, &[Tray, Place, Lot, Bed], true)?;
    const REASONS: [&str; 8] =
        ["small.for", "pests.words", "causes.words", "promise", "small.title", "small.person", "poor", "sick"];
    let reasons = if quarantine.is_some() { &REASONS[1..] } else { &REASONS[..] };
    let text = clause.text(reasons, quarantine.is_none());
    clause.take(&["carry", "left", "saw"]);
    let is_small = |text: &String| matches!(text.as_str(), "a" | "to" | "en" | "in" | "into" | "la");
    let why = text.filter(|text| quarantine.is_none() || !is_small(text)).or(quarantine);
    if why.is_none() {
        clause.lacks.push(Why::NotSaid("why"));
    }
    clause.take(&["small.by"]);
    if is_of_some {
        // Some of a tray are no tray that can be held.
        clause.lacks.push(Why::Several);
    }
    for_each(
        "held",
        &subjects,
        &fields([("why", why.map(Value::from)), ("until", until), (HELD_FOR_DAYS, days.map(number_value))]),
    )
}

/// "c1 5 enfermas", "aparté 6 enfermas de c1": so many are sick; of what the line does not say.
pub(crate) fn sick_ones(clause: &mut Clause) -> Option<Drafts> {
    if ["pests.words", "die", "cull", "give", "kill"].iter().any(|role| clause.has(role)) {
        return None;
    }
    clause.head(&["sick"])?;
    let tray = clause.name(Tray)?;
    let count = clause.count()?;
    clause.take(&["hold", "set_apart", "saw", "small.thing", "carry", "small.to", "count", "left"]);
    clause.name(Place);
    clause.lacks.push(Why::NotSaid("what"));
    let share = share_of(clause, &tray, count);
    one("pest_seen", fields([("tray", Some(json!(tray))), ("share_pct", share)]))
}

/// "aparté 6 de c1 al sick bay": some of a tray into another one.
pub(crate) fn set_apart(clause: &mut Clause) -> Option<Drafts> {
    let apart = clause.head(&["set_apart"]).is_some();
    if !apart || clause.has("promise") {
        return None;
    }
    let from = clause.name(Tray)?;
    let count = clause.number()?;
    let to = clause.new_code();
    let place = clause.name(Place);
    clause.take(&["hold", "sick", "poor", "small.thing", "carry", "small.to"]);
    if clause.text(&["pests.words", "causes.words"], false).is_some() {
        clause.take(&["small.by"]);
    }
    clause.lacks.push(Why::NotSaid("to"));
    let told = [
        ("from", Some(json!(from))),
        ("to", to.map(Value::from)),
        ("count", Some(number_value(count))),
        ("place", place.map(Value::from)),
    ];
    one("moved_on", fields(told))
}

/// "saqué c1 de cuarentena", "the quarantine of c1 is over": the verb and the quarantine it ends.
fn let_out(clause: &Clause) -> Option<(usize, usize)> {
    const ENDS: [&str; 27] = [
        "saque",
        "sacamos",
        "saco",
        "sacaron",
        "quite",
        "quitamos",
        "quito",
        "termino",
        "terminamos",
        "acabo",
        "salio",
        "salio de",
        "salieron de",
        "sale de",
        "sale",
        "salieron",
        "solte",
        "soltamos",
        "levanto",
        "levantamos",
        "took",
        "taken",
        "lifted",
        "ended",
        "over",
        "released",
        "came",
    ];
    let quarantine = clause
        .marks
        .iter()
        .position(|mark| matches!(mark.folded.as_str(), "cuarentena" | "quarantine" | "hold") && mark.has("hold"))?;
    let before = quarantine.checked_sub(1).and_then(|at| clause.marks.get(at));
    let into = before.is_some_and(|mark| matches!(mark.folded.as_str(), "a" | "en" | "in" | "into" | "to"));
    let verb = clause.marks.iter().position(|mark| ENDS.contains(&mark.folded.as_str()))?;
    (!into).then_some((verb, quarantine))
}

/// Uses "let k1 go": the two words with what may go between them.
fn let_go(clause: &mut Clause) -> bool {
    let is = |at: &usize, word: &str| clause.marks[*at].folded == word;
    let Some(let_at) = (0..clause.marks.len()).find(|at| is(at, "let")) else { return false };
    let Some(go) = (let_at + 2..clause.marks.len().min(let_at + 4)).find(|at| is(at, "go")) else { return false };
    clause.use_mark(let_at);
    clause.use_mark(go);
    true
}

pub(crate) fn released(clause: &mut Clause) -> Option<Drafts> {
    match let_out(clause) {
        Some((verb, quarantine)) => {
            clause.use_mark(verb);
            clause.use_mark(quarantine);
            clause.weight += 10;
        }
        None if let_go(clause) => clause.weight += 10,
        None => {
            clause.head(&["release"])?;
        }
    }
    let subjects = subject(clause, &[Tray, Place, Lot, Bed], true)?;
    // Why it may go says nothing else.
    if clause.text(&["pests.words", "causes.words"], false).is_some() {
        clause.take(&["die"]);
    }
    for_each("released", &subjects, &fields([("why", None)]))
}
