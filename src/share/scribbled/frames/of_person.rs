//! Frames with somebody in them: plants given or promised, hours worked.

use super::clause::{Clause, fields, number_value};
use super::entries::{Drafts, one, subject};
use super::of_tray::{over_standing, same_species, tray};
use crate::share::scribbled::typed::marks::{Mark, What};
use crate::share::scribbled::typed::named::NameOf::{Bed, Lot, Place, Tray};
use crate::share::scribbled::why::Why;
use serde_json::{Value, json};

/// Uses the person behind a word for whom.
pub(crate) fn person_behind(clause: &mut Clause, roles: &[&'static str]) -> Option<String> {
    for at in 0..clause.marks.len() {
        if roles.iter().any(|role| clause.marks[at].has(role)) && clause.is_free(at + 1) {
            let before = clause.clone();
            clause.use_mark(at);
            if let Some(person) = clause.text_from(at + 1, &["small.title", "small.person"]) {
                clause.weight += 4;
                return Some(person);
            }
            *clause = before;
        }
    }
    None
}

/// Uses words that name somebody.
pub(crate) fn named_person(clause: &mut Clause) -> Option<String> {
    let before = clause.clone();
    let found = clause.text(&["small.title", "small.person"], true)?;
    if clause.names_a_person(&found) {
        return Some(found);
    }
    *clause = before;
    None
}

/// "vino el vecino": of words about somebody those that name the person.
fn only_the_person(text: &str) -> String {
    let lexicon = crate::share::scribbled::lexicon::lexicon();
    let names = |word: &&str| {
        let folded = crate::share::scribbled::lexicon::fold(word);
        let bare = folded.trim_end_matches('.');
        word.starts_with(char::is_uppercase) || lexicon.is(bare, "small.person") || lexicon.is(bare, "small.title")
    };
    // "Vino don Chepe": a word that says what somebody did is no part of a name.
    let is_word = |word: &str| {
        let roles = lexicon.roles(&crate::share::scribbled::lexicon::fold(word));
        !roles.is_empty() && !roles.iter().any(|role| matches!(*role, "small.person" | "small.title"))
    };
    let words: Vec<&str> = text.split(' ').collect();
    let is_named = |at: usize| words.get(at).is_some_and(|word| names(word) && !is_word(word));
    // "las mujeres de Mlangoni": what joins two of them stays.
    let joins = |at: usize| {
        let is_of =
            matches!(words[at].to_lowercase().as_str(), "de" | "del" | "of" | "y" | "and" | "from" | "la" | "los");
        is_of
            && (0..at).any(is_named)
            && (at + 1..words.len()).find(|next| is_named(*next)).is_some_and(|next| next - at < 3)
    };
    let named: Vec<&str> = (0..words.len()).filter(|at| is_named(*at) || joins(*at)).map(|at| words[at]).collect();
    if named.is_empty() { text.to_string() } else { named.join(" ") }
}

pub(crate) fn given_out(clause: &mut Clause) -> Option<Drafts> {
    let gives = clause.head(&["give"]).is_some() || taken_to_somebody(clause);
    let took = if gives { None } else { clause.head(&["they_took"]).or_else(|| somebody_got(clause)) };
    if !gives && took.is_none() {
        return None;
    }
    let name = tray(clause, true)?;
    let count = clause.count();
    let person = match took {
        Some(at) => {
            let taker = (0..at).find(|i| {
                clause.is_free(*i)
                    && (clause.marks[*i].what == What::Unknown
                        || clause.marks[*i].has("small.title")
                        || clause.marks[*i].has("small.person"))
            });
            let taker = taker.and_then(|i| clause.text_from(i, &["small.title", "small.person"]));
            let taker = taker.or_else(|| clause.text(&["small.title", "small.person"], true))?;
            let takes = clause.marks[at].has("kill");
            if takes && !clause.names_a_person(&taker) {
                clause.lacks.push(Why::Several);
            }
            person_behind(clause, &["small.for"]);
            Some(only_the_person(&taker))
        }
        None => person_behind(clause, &["small.for"]).or_else(|| named_person(clause)),
    };
    clause.take(&["small.thing", "small.for", "more", "for_nothing"]);
    same_species(clause, &name);
    // "gave c1 5" may be water; what is sold or given away is a plant, also where nobody is named.
    let is_plain = clause.marks.iter().any(|mark| {
        ["regal", "vend", "sold", "sell", "donat", "don", "entreg", "given"]
            .iter()
            .any(|stem| mark.has("give") && mark.folded.starts_with(stem))
    });
    if person.is_none() && !is_plain {
        clause.lacks.push(Why::NotSaid("to"));
    }
    over_standing(clause, &name, count);
    one(
        "given_out",
        fields([("tray", Some(json!(name))), ("count", count.map(number_value)), ("to", person.map(Value::from))]),
    )
}

/// Uses "vino Otieno por sus 10 c1": who stands between came for them.
fn came_for(clause: &mut Clause) -> Option<usize> {
    let is = |at: &usize, words: &[&str]| words.contains(&clause.marks[*at].folded.as_str());
    let came = (0..clause.marks.len()).find(|at| is(at, &["vino", "vinieron", "came"]))?;
    let lead = (came + 2..clause.marks.len())
        .find(|at| is(at, &["por", "for", "a traer", "a llevar", "por sus", "for his"]))?;
    clause.use_mark(came);
    Some(lead)
}

/// Uses "the chapel got 6 c1": somebody who does no harm, and the word right behind.
fn somebody_got(clause: &mut Clause) -> Option<usize> {
    let is_got = |mark: &Mark| matches!(mark.folded.as_str(), "got" | "received" | "recibio" | "recibieron");
    let is_somebody = |mark: &Mark| {
        (mark.has("small.person") || mark.has("small.title")) && !mark.has("causes.words") && !mark.has("steal")
    };
    let got = (1..clause.marks.len()).find(|at| is_got(&clause.marks[*at]) && is_somebody(&clause.marks[*at - 1]));
    let at = got.or_else(|| came_for(clause))?;
    clause.marks[at..].iter().any(|mark| mark.number().is_some()).then_some(())?;
    clause.use_mark(at);
    clause.weight += 10;
    Some(at)
}

/// "llevé 5 c1 a la escuela": plants that were taken to somebody, to no place that is known. It is asked about.
fn taken_to_somebody(clause: &mut Clause) -> bool {
    let is_place = clause.find_name(Bed).is_some() || clause.find_name(Place).is_some();
    let is_led = |at: usize| at > 0 && (clause.is_behind(at, "small.for") || clause.is_behind(at, "small.filler"));
    let to = (1..clause.marks.len())
        .any(|at| (clause.marks[at].has("small.person") || clause.marks[at].has("small.title")) && is_led(at));
    if is_place || !to || clause.find_number().is_none() || clause.has("they_took") || clause.take(&["carry"]).is_none()
    {
        return false;
    }
    clause.weight += 10;
    clause.lacks.push(Why::Several);
    true
}

pub(crate) fn promised(clause: &mut Clause) -> Option<Drafts> {
    clause.head(&["promise"])?;
    let by = clause.coming();
    let tray = clause.name(Tray);
    let species = if tray.is_none() { clause.species() } else { None };
    let count = clause.count();
    clause.take(&["small.thing"]);
    let to = person_behind(clause, &["small.for"]).or_else(|| clause.text(&["small.title", "small.person"], true));
    if tray.is_none() && species.is_none() {
        return None;
    }
    let told = [
        ("tray", tray.map(Value::from)),
        ("species", species.and_then(|keys| keys.first().cloned()).map(Value::from)),
        ("count", count.map(number_value)),
        ("to", to.map(Value::from)),
        ("by", by),
    ];
    one("promised", fields(told))
}

pub(crate) fn worked(clause: &mut Clause) -> Option<Drafts> {
    let says = clause.head(&["work"]).is_some();
    let hours = clause.amount("units.hour");
    let is_day = |mark: &Mark| matches!(mark.what, What::Amount(_, "units.ask")) && mark.folded.contains("jornal");
    let days = clause.marks.iter().any(is_day) && clause.amount("units.ask").is_some();
    if hours.is_none() && !days && !clause.has("mood.vague") {
        return None;
    }
    const TASKS: [&str; 12] = [
        "weed",
        "clear_ground",
        "mulch",
        "fence",
        "hole",
        "watered",
        "plant",
        "prick",
        "sow",
        "cull",
        "graft",
        "spray",
    ];
    let task = clause.text(&TASKS, false);
    if hours.is_none() {
        if !says && task.is_none() {
            return None;
        }
        clause.take(&["mood.vague"]);
        clause.lacks.push(Why::NoUnit("h"));
    }
    let person = clause.text(&["small.title", "small.person"], true).or_else(|| clause.species_as_a_name());
    let is_first = person.as_ref().is_some_and(|name| name.chars().next().is_some_and(char::is_uppercase));
    if person.as_ref().is_some_and(|name| !is_first && !clause.names_a_person(name)) {
        clause.lacks.push(Why::Several);
    }
    let place = subject(clause, &[Bed, Place, Tray], true).unwrap_or_default();
    let mut told = fields([
        ("person", person.map(Value::from)),
        ("hours", hours.map(number_value)),
        ("task", task.map(Value::from)),
    ]);
    if let Some(subject) = place.first() {
        told.insert(subject.field.to_string(), json!(subject.name));
    }
    one("worked", told)
}

/// Work that no entry has a field for: manuring, liming, staking, bags filled. It is kept in the line's own words.
pub(crate) fn tended(clause: &mut Clause) -> Option<Drafts> {
    let label = clause.head(&["label"]).map(|at| clause.marks[at].typed.clone());
    let is_label = label.is_some();
    clause.lacks.extend(label.map(Why::NotOfPlants));
    if !is_label {
        clause.head(&["tend"])?;
    }
    // "no change, 19 up": a count.
    let counts =
        ["count", "up", "left"].iter().any(|role| clause.marks.iter().any(|mark| mark.has(role) && !mark.has("tend")));
    if counts && clause.find_number().is_some() && clause.find_name(Tray).is_some() {
        return None;
    }
    let hail = |mark: &Mark| mark.folded.starts_with("graniz") || mark.folded.starts_with("hail");
    if clause.marks.iter().any(hail) {
        clause.take(&["rain", "rain_manner", "causes.words"]);
    }
    let about = subject(clause, &[Tray, Bed, Place, Lot], true);
    // What else it says is kept with it, unless it says what else happened.
    let goes_with = |mark: &Mark| match &mark.what {
        What::Number { .. } | What::Amount(..) | What::Part(_) | What::Species(_) | What::Unknown => true,
        // What happened to a label happened to no plant.
        What::Word => is_label || mark.roles.iter().all(|role| role.contains('.') || GOES_WITH.contains(role)),
        _ => false,
    };
    for at in 0..clause.marks.len() {
        if clause.is_free(at) && goes_with(&clause.marks[at]) {
            clause.use_mark(at);
        }
    }
    let told = about.unwrap_or_default().into_iter().next();
    let fields = told.map(|subject| (subject.field.to_string(), Value::from(subject.name))).into_iter().collect();
    one("tended", fields)
}

/// Words that may stand with such work and say nothing else.
const GOES_WITH: [&str; 14] = [
    "tend",
    "remedy",
    "bag",
    "hole",
    "spray",
    "soil",
    "put",
    "bunch",
    "cutting",
    "sucker",
    "leaf",
    "root",
    "mulch_stuff",
    "one_lifted",
];
