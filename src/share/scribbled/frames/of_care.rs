//! Frames of care: shade, water, pests, hardening, holding, hours.

use super::clause::{Clause, Fields, fields, number_value};
use super::entries::{Drafts, Subject, for_each, one, subject};
use super::of_tray::does_something;
use crate::nursery::herbicide::{kills_weeds, names_treatment};
use crate::share::scribbled::typed::marks::{Mark, What};
use crate::share::scribbled::typed::named::NameOf::{Bed, Container, Place, Tray};
use crate::share::scribbled::why::Why;
use serde_json::{Value, json};

/// Whether a bare number is left that no unit explains.
fn bare_number(clause: &mut Clause) -> bool {
    let found = clause.find_number().filter(|at| !matches!(clause.marks[*at].what, What::Number { is_weak: true, .. }));
    if let Some(at) = found {
        clause.use_mark(at);
    }
    found.is_some()
}

pub(crate) fn shade_set(clause: &mut Clause) -> Option<Drafts> {
    let off = clause.head(&["shade_off"]).is_some();
    let half = clause.head(&["half_shade"]).is_some();
    let is_headed = clause.head(&["shade"]).is_some() || off || half;
    let share = clause.amount("units.pct");
    if !is_headed && share.is_none() {
        return None;
    }
    let subjects = subject(clause, &[Place, Tray], is_headed)?;
    clause.take(&["shade_move", "old_count", "small.to", "left", "from_now", "gives"]);
    let number = if share.is_none() && !off && !half { clause.number() } else { None };
    let part = if share.is_none() { clause.part().map(|part| part * 100.0) } else { None };
    let value = match () {
        () if off => Some(0.0),
        () if half => Some(50.0),
        () => share.or(number).or(part),
    };
    if value.is_none_or(|value| !(0.0..=100.0).contains(&value)) {
        clause.lacks.push(Why::NoUnit("%"));
    }
    // A bare percentage on a tray may be anything.
    if !is_headed && subjects[0].field == "tray" {
        clause.lacks.push(Why::Several);
    }
    clause.take(&["more"]);
    for_each("shade_set", &subjects, &fields([("shade_pct", value.map(number_value))]))
}

fn step(clause: &mut Clause) -> Option<f64> {
    let named = [("daily", 1.0), ("every_two", 2.0), ("every_three", 3.0), ("eight_days", 7.0), ("weekly", 7.0)];
    for (role, days) in named {
        if clause.has(role) {
            clause.head(&[role]);
            return Some(days);
        }
    }
    if let Some(at) = clause.head(&["unclear_step"]) {
        clause.lacks.push(Why::Several);
        // So many times in a week or a day: as many days lie between on the mean.
        let days = match clause.marks[at].folded.as_str() {
            "twice a week" | "twice weekly" | "dos veces por semana" | "dos veces a la semana" => Some(3.5),
            "twice a day" | "dos veces al dia" => Some(0.5),
            _ => None,
        };
        if days.is_none() {
            clause.lacks.push(Why::NotSaid("every_days"));
        }
        return days;
    }
    clause.head(&["every"])?;
    if let Some(days) = clause.amount("units.day") {
        if days.fract() != 0.0 || days < 1.0 {
            clause.lacks.push(Why::NotWhole(days));
        }
        return Some(days);
    }
    clause.amount("units.week").map(|weeks| weeks * 7.0)
}

pub(crate) fn watering_set(clause: &mut Clause) -> Option<Drafts> {
    let is_headed = clause.head(&["water", "watered"]).is_some();
    if !is_headed {
        return None;
    }
    let before = clause.lacks.len();
    let days = step(clause);
    if days.is_none() && clause.lacks.len() == before {
        return None;
    }
    let subjects = subject(clause, &[Tray, Place], true)?;
    clause.take(&["from_now", "left", "carry", "shade_move", "small.to"]);
    for_each("watering_set", &subjects, &fields([("every_days", days.map(number_value))]))
}

/// Uses words that are just these.
fn take_words(clause: &mut Clause, words: &[&str]) {
    for at in 0..clause.marks.len() {
        if clause.is_free(at) && words.contains(&clause.marks[at].folded.as_str()) {
            clause.use_mark(at);
        }
    }
}

/// Words by which plants get anything.
const HANDS: [&str; 10] = ["gave", "give", "di", "dimos", "le di", "les di", "le dimos", "les dimos", "got", "recibio"];

/// Others by which they get water, where litres stand beside them.
const POURS: [&str; 11] =
    ["had", "tuvo", "poured", "put", "eche", "echamos", "le eche", "les eche", "puse", "le puse", "se le echo"];

/// "20 litres on bench 3": of litres alone nothing else can be meant than water.
fn is_litres_alone(clause: &Clause) -> bool {
    let says_nothing = |mark: &Mark| match mark.what {
        What::Name(_) => !mark.is_name_of(Container),
        What::Sign(_) | What::Day(_) | What::Amount(_, "units.l") => true,
        What::Word if HANDS.contains(&&*mark.folded) || POURS.contains(&&*mark.folded) => true,
        What::Species(_) => clause.find_name(Bed).is_some(),
        What::Word if mark.has("asides.money_each") || mark.has("small.thing") || mark.has("young") => true,
        What::Word => mark.roles.iter().all(|role| role.contains('.')),
        _ => false,
    };
    clause.marks.iter().any(|mark| matches!(mark.what, What::Amount(_, "units.l")))
        && clause.marks.iter().all(says_nothing)
}

/// Words that say with "water" that it stands somewhere.
const STANDS: [&str; 15] = [
    "under",
    "stands",
    "standing",
    "stood",
    "logged",
    "full",
    "bajo",
    "llena",
    "lleno",
    "parada",
    "estancada",
    "drowned",
    "full of",
    "llena de",
    "lleno de",
];
/// Words that say so by themselves.
const STANDS_ALONE: [&str; 9] = [
    "waterlogged",
    "flooded",
    "encharcada",
    "encharcado",
    "encharcadas",
    "inundada",
    "inundado",
    "inundadas",
    "underwater",
];

fn water_stands(mark: &Mark) -> bool {
    let word = mark.folded.as_str();
    STANDS.contains(&word) || STANDS_ALONE.contains(&word)
}

/// "c1 under water": nothing says it but a hold, which is offered.
pub(crate) fn under_water(clause: &mut Clause) -> Option<Drafts> {
    let is_water = |mark: &Mark| ["water", "agua"].contains(&mark.folded.as_str());
    let any = |tells: &dyn Fn(&Mark) -> bool| clause.marks.iter().any(tells);
    let alone = |mark: &Mark| STANDS_ALONE.contains(&mark.folded.as_str());
    if !(any(&alone) || any(&water_stands) && any(&is_water)) || clause.find_name(Bed).is_none() {
        return None;
    }
    let beds = subject(clause, &[Bed], true)?;
    let tells = |mark: &Mark| water_stands(mark) || is_water(mark);
    let told: Vec<usize> =
        (0..clause.marks.len()).filter(|at| clause.is_free(*at) && tells(&clause.marks[*at])).collect();
    let why = told.iter().map(|at| clause.marks[*at].typed.clone()).collect::<Vec<_>>().join(" ");
    told.into_iter().for_each(|at| clause.use_mark(at));
    take_words(
        clause,
        &["is", "are", "esta", "estan", "has", "with", "of", "de", "con", "el", "la", "in", "en", "there", "hay"],
    );
    clause.weight += 30;
    clause.lacks.push(Why::NoReading(vec![why.clone()]));
    for_each("held", &beds, &fields([("why", Some(Value::from(why)))]))
}

pub(crate) fn watered(clause: &mut Clause) -> Option<Drafts> {
    // Water that stands there, or is missing, was given by nobody.
    const MISSING: [&str; 11] = [
        "needs",
        "need",
        "wants",
        "falta",
        "necesita",
        "squelches",
        "squelching",
        "squelchy",
        "muddy",
        "mud",
        "lodazal",
    ];
    let given = |mark: &Mark| !MISSING.contains(&mark.folded.as_str()) && !water_stands(mark);
    if !clause.marks.iter().all(given) {
        return None;
    }
    let is_alone = is_litres_alone(clause);
    if clause.head(&["watered", "water"]).is_none() && !is_alone {
        return None;
    }
    let mm = clause.amount("units.mm");
    let litres = clause.amount("units.l");
    clause.weight += if is_alone { 10 } else { 0 };
    // "gave" and "eché" say it only with a unit of water.
    let is_plain = |mark: &Mark| {
        (mark.has("watered") || mark.has("water"))
            && !matches!(mark.folded.as_str(), "gave" | "give" | "eche" | "echamos" | "di" | "le eche")
    };
    if mm.is_none() && litres.is_none() && !clause.marks.iter().any(is_plain) {
        return None;
    }
    let is_of_bed = clause.find_name(Bed).is_some() && clause.find_name(Tray).is_none();
    let count = if is_of_bed { count_of_plants(clause) } else { None };
    if bare_number(clause) {
        clause.lacks.push(Why::NoUnit("l, mm"));
    }
    // Cans and buckets are of any size: they are kept in the line's own words.
    let in_cans = clause.amount("units.ask");
    clause.take(&["thirsty"]);
    let subjects = subject(clause, &[Tray, Bed, Place], true)?;
    // So many mm fell on all of the ground: no foot was watered.
    if mm.is_none() && subjects.first().is_some_and(|subject| subject.field == "bed") {
        return plants_watered(clause, &subjects, count, litres);
    }
    clause.take(&["whole", "tray", "bag"]);
    take_words(clause, &["got", "had", "recibio", "tuvo", "lleva"]);
    // "rocié agua en k1": water is no remedy.
    if clause.has("water") && !clause.has("remedy") {
        clause.take(&["spray"]);
    }
    if subjects.len() > 1 && (mm.is_some() || litres.is_some()) {
        clause.lacks.push(Why::EachOrAll(subjects.iter().map(|subject| subject.name.clone()).collect()));
    }
    let told = [
        ("mm", mm.map(number_value)),
        ("litres", litres.map(number_value)),
        // No field of an entry.
        ("cans", in_cans.map(number_value)),
    ];
    for_each("watered", &subjects, &fields(told))
}

/// Young plants of beds watered at the foot.
fn plants_watered(clause: &mut Clause, beds: &[Subject], count: Option<f64>, litres: Option<f64>) -> Option<Drafts> {
    let is_each = clause.take(&["asides.money_each"]).is_some()
        || clause.marks.iter().any(|mark| matches!(mark.folded.as_str(), "each" | "cada" | "every"));
    take_words(clause, &HANDS);
    take_words(clause, &POURS);
    clause.take(&["whole", "young", "foot", "small.thing", "beneath"]);
    clause.species();
    if beds.len() > 1 && (count.is_some() || litres.is_some() && !is_each) {
        clause.lacks.push(Why::EachOrAll(beds.iter().map(|bed| bed.name.clone()).collect()));
    }
    let told = [
        ("count", count.map(number_value)),
        ("litres_each", litres.filter(|_| is_each).map(number_value)),
        // No field of an entry: kept in the line's own words.
        ("litres", litres.filter(|_| !is_each).map(number_value)),
    ];
    for_each("plants_watered", beds, &fields(told))
}

/// Uses the number of "30 plants", "the 30 young ones".
fn count_of_plants(clause: &mut Clause) -> Option<f64> {
    let at = clause.find_number()?;
    let behind = clause.marks.get(at + 1)?;
    if !behind.has("small.thing") && !behind.has("young") && !matches!(behind.what, What::Species(_)) {
        return None;
    }
    clause.use_mark(at);
    let count = clause.marks[at].number()?;
    if count.fract() != 0.0 {
        clause.lacks.push(Why::NotWhole(count));
    }
    Some(count)
}

pub(crate) fn pest_seen(clause: &mut Clause) -> Option<Drafts> {
    let one_of_them = (1..clause.marks.len()).find(|at| {
        let is_one = matches!(clause.marks[*at - 1].what, What::Number { is_weak: true, .. });
        is_one && clause.marks[*at].has("pests.words")
    });
    if let Some(at) = one_of_them {
        clause.use_mark(at - 1);
    }
    let what = clause.known_text(&["pests.words"])?;
    clause.weight += 8;
    let share = clause.amount("units.pct").or_else(|| clause.part().map(|part| part * 100.0));
    let of_seen = if share.is_none() { of_those_seen(clause) } else { None };
    let share = share.or(of_seen.map(|(sick, seen)| (1000.0 * sick / seen).round() / 10.0));
    let saw = clause.take(&["saw", "whole"]).is_some();
    let on_plants = if share.is_none() { plants_that_have_it(clause) } else { None };
    let found = if saw && on_plants.is_none() { how_many_found(clause) } else { None };
    clause.take(&["leaf", "flush", "mood.vague", "small.about"]);
    let subjects = subject(clause, &[Tray, Place], saw);
    let subjects = match subjects {
        Some(found) => found,
        None => {
            let found = subject(clause, &[Bed], saw)?;
            clause.species();
            found
        }
    };
    clause.species();
    clause.weight += i32::from(saw);
    let of_plants = subjects.first().filter(|subject| subject.field == "tray").zip(on_plants);
    let of_plants = of_plants.and_then(|(tray, plants)| share_of(clause, &tray.name, plants));
    // So many may be those that are left as well.
    let is_most = of_plants.as_ref().and_then(Value::as_f64).is_some_and(|share| share > 50.0);
    if on_plants.is_some() && (of_plants.is_none() || is_most) {
        clause.lacks.push(Why::Several);
    }
    let told = [
        ("what", Some(json!(what))),
        ("share_pct", share.map(number_value).or(of_plants)),
        ("plants_seen", of_seen.map(|(_, seen)| number_value(seen))),
        // No field of an entry: kept in the line's own words.
        ("found", found.map(number_value)),
    ];
    for_each("pest_seen", &subjects, &fields(told))
}

/// Uses "4 out of 30 c1", "en 3 de 20": so many have it of those that were looked at, where nothing says that they died.
fn of_those_seen(clause: &mut Clause) -> Option<(f64, f64)> {
    let dies = ["die", "kill", "cull", "give", "plant"].iter().any(|role| clause.has(role));
    let before = clause.clone();
    let found = if dies { None } else { clause.part_of_all() };
    let is_part = found.is_some_and(|(sick, seen)| sick <= seen && seen > 0.0 && sick.fract() + seen.fract() == 0.0);
    if !is_part {
        *clause = before;
    }
    found.filter(|_| is_part)
}

/// Uses the number of "6 plants of c1 have rust", "roya en 6 de c1": plants that have it, where nothing says that they died or how
/// many there are. Behind a sign it may be a count.
fn plants_that_have_it(clause: &mut Clause) -> Option<f64> {
    const OTHERWISE: [&str; 9] = ["die", "kill", "left", "alive", "cull", "give", "plant", "carry", "survive"];
    let says_otherwise = OTHERWISE
        .iter()
        .any(|role| clause.marks.iter().any(|mark| mark.has(role) && !mark.has("saw") && !mark.has("small.filler")));
    let signs = clause.marks.iter().any(|mark| matches!(mark.what, What::Sign(',' | ';' | ':' | '-' | '.')));
    let several = clause.marks.iter().filter(|mark| mark.is_name_of(Tray)).count() != 1;
    let at = clause.find_number().filter(|_| !says_otherwise && !signs && !several)?;
    // "ants got 2 of k1": eaten.
    if at > 0 && clause.marks[at - 1].folded == "got" {
        return None;
    }
    let behind = clause.marks.get(at + 1)?;
    let of_tray = behind.has("small.from") && clause.marks.get(at + 2).is_some_and(|mark| mark.is_name_of(Tray));
    let is_thing = behind.has("small.thing") && !behind.has("pests.words");
    let with_it = matches!(behind.folded.as_str(), "con" | "with" | "have" | "tienen" | "got");
    let named = behind.is_name_of(Tray)
        && clause
            .marks
            .get(at + 2)
            .is_some_and(|mark| matches!(mark.folded.as_str(), "con" | "with" | "have" | "tienen"));
    if !(of_tray || is_thing || with_it || named) {
        return None;
    }
    clause.use_mark(at);
    clause.take(&["small.thing"]);
    clause.weight += 4;
    clause.marks[at].number()
}

/// Uses the number of "3 grubs in c1", "mealybug on five plants of c1": of what was found or where, none of plants lost.
fn how_many_found(clause: &mut Clause) -> Option<f64> {
    let is_led = |at: usize| {
        let leads = |mark: &Mark| mark.has("small.to") || mark.has("small.filler");
        at > 0 && leads(&clause.marks[at - 1])
    };
    let at = clause.find_number()?;
    let behind = clause.marks.get(at + 1)?;
    let of_them = behind.has("pests.words");
    let of_plants = behind.has("small.thing") && is_led(at);
    if !of_them && !of_plants {
        return None;
    }
    clause.use_mark(at);
    clause.take(&["small.thing"]);
    clause.marks[at].number()
}

/// Others by which they get a remedy, where it is known.
const GIVES: [&str; 8] = ["sprinkled", "sprinkle", "soaked", "watered", "given", "gives", "lleva", "se le dio"];

/// Uses what something is put on against: "contra gusano", "for the slugs".
fn against(clause: &mut Clause) -> Option<String> {
    let is_pest = |i: usize| {
        let mark = clause.marks.get(i)?;
        (mark.has("pests.words") || mark.has("causes.words")).then_some(i)
    };
    let is_article = |i: usize| {
        clause.marks.get(i).is_some_and(|mark| matches!(mark.folded.as_str(), "the" | "el" | "la" | "los" | "las"))
    };
    let (at, pest) = (0..clause.marks.len())
        .filter(|i| clause.is_free(*i) && clause.marks[*i].has("asides.against"))
        .find_map(|i| is_pest(i + 1 + usize::from(is_article(i + 1))).map(|pest| (i, pest)))?;
    clause.use_mark(at);
    clause.text_from(pest, &["pests.words", "causes.words"])
}

/// The last day of a wait, until the day of the line is known; then it becomes days.
pub(crate) const SAFE_FROM: &str = "safe_from";

const BETWEEN_ROWS: [&str; 6] =
    ["between the rows", "between rows", "entre surcos", "entre filas", "entre los surcos", "entre las filas"];

pub(crate) fn treated(clause: &mut Clause) -> Option<Drafts> {
    // A sign on a tray is no remedy.
    if clause.has("label") {
        return None;
    }
    let sprayed = clause.head(&["spray"]).is_some();
    let is_of_remedy = clause.has("remedy") && !clause.has("shade");
    let dose_pct = if is_of_remedy { clause.amount("units.pct") } else { None };
    let dose = if is_of_remedy { dose(clause) } else { None };
    let against = against(clause);
    let safe = clause.head(&["no_wait"]).is_some().then_some(0.0);
    let wait = clause.take(&["wait"]).is_some() | holds_some_days(clause);
    clause.take(&["foot"]);
    let days = safe.or_else(|| if wait { time_days(clause) } else { None });
    // "no tocar hasta el viernes": how many days that is depends on the day of the line.
    let until = if wait && days.is_none() { clause.coming() } else { None };
    let described = if sprayed { described_remedy(clause) } else { None };
    let remedy = described.or_else(|| clause.text(&["remedy"], false));
    clause.weight += 8 * i32::from(remedy.is_some());
    if !sprayed && remedy.is_none() {
        return None;
    }
    let strong = clause.marks.iter().any(|mark| mark.has("spray") && !mark.has("puts"));
    let is_known = remedy.is_some();
    let remedy = remedy.or_else(|| sprayed.then(|| clause.text(&["pests.words"], true)).flatten());
    // What somebody did is no remedy.
    if !is_known && remedy.as_deref().is_some_and(does_something) {
        clause.lacks.push(Why::NoRemedy);
    }
    if remedy.is_none() && !strong {
        return None;
    }
    let subjects = subject(clause, &[Tray, Bed, Place], true)?;
    if remedy.is_none() {
        clause.lacks.push(Why::NoRemedy);
    }
    // What nobody knows and was only put somewhere may be a sheet, straw or good will.
    if !is_known && !strong {
        clause.lacks.push(Why::Several);
    }
    clause.take(&["small.by", "put", "span"]);
    // Between the rows is all of the bed.
    take_words(clause, &BETWEEN_ROWS);
    if is_known {
        take_words(clause, &HANDS);
        take_words(clause, &GIVES);
        take_words(clause, &["alrededor de", "alrededor"]);
    }
    let days = days.or_else(|| (wait && until.is_none()).then(|| clause.number()).flatten());
    let days = match days {
        Some(days) => Some(days),
        None if until.is_some() => None,
        None => {
            let behind = time_behind(clause, remedy.as_deref());
            // Of what nobody knows the time may be something else; "for 7 days" may be how long it was done.
            let is_product =
                is_known || remedy.as_deref().is_some_and(|name| names_treatment(name) || kills_weeds(name));
            if behind.is_some() && !is_product {
                clause.lacks.push(Why::Several);
            }
            behind
        }
    };
    for_each(
        "treated",
        &subjects,
        &fields([
            ("with", remedy.map(Value::from)),
            ("safe_after_days", days.map(number_value)),
            (SAFE_FROM, until),
            ("against", against.map(Value::from)),
            // No field of an entry: kept in the line's own words.
            ("dose_pct", dose_pct.map(number_value)),
            ("dose", dose.map(number_value)),
        ]),
    )
}

/// Uses "14 days hold", "hold 14 days" beside a remedy: what was treated waits so long.
fn holds_some_days(clause: &mut Clause) -> bool {
    let is_time = |at: usize| clause.marks.get(at).is_some_and(|mark| in_days(&mark.what).is_some());
    let found = (0..clause.marks.len())
        .find(|at| clause.marks[*at].has("hold") && (*at > 0 && is_time(at - 1) || is_time(at + 1) || is_time(at + 2)));
    if let Some(at) = found.filter(|_| clause.has("remedy")) {
        clause.use_mark(at);
        return true;
    }
    false
}

/// Uses how much of a remedy was taken.
fn dose(clause: &mut Clause) -> Option<f64> {
    ["units.g", "units.kg", "units.l", "units.ml"].into_iter().find_map(|unit| clause.amount(unit))
}

/// The days of a time; hours are whole days, rounded up.
fn in_days(what: &What) -> Option<f64> {
    match what {
        What::Amount(days, "units.day") => Some(*days),
        What::Amount(weeks, "units.week") => Some(weeks * 7.0),
        What::Amount(hours, "units.hour") => Some((hours / 24.0).ceil()),
        _ => None,
    }
}

/// Uses the next time.
fn time_days(clause: &mut Clause) -> Option<f64> {
    // "24 h" is said of the gauge as well.
    let days = |mark: &Mark| in_days(&mark.what).or((mark.folded == "24 h" || mark.folded == "24h").then_some(1.0));
    let at = (0..clause.marks.len()).find(|at| clause.is_free(*at) && days(&clause.marks[*at]).is_some())?;
    clause.use_mark(at);
    days(&clause.marks[at])
}

/// Uses the time behind a remedy, its dose or what was treated: "copper 7 days", "cobre 2 semanas", "malathion for 10 days". Elsewhere
/// it may be since when, or how often.
fn time_behind(clause: &mut Clause, remedy: Option<&str>) -> Option<f64> {
    let is_behind = |at: &usize| {
        let leads = |mark: &Mark| {
            matches!(mark.what, What::Sign(_) | What::Day(_))
                || mark.has("small.for")
                || mark.has("small.by")
                || mark.has("span")
        };
        let Some(before) = clause.marks[..*at].iter().rposition(|mark| !leads(mark)) else { return false };
        let mark = &clause.marks[before];
        let ends_remedy = remedy.is_some_and(|name| name.split(' ').next_back() == Some(mark.typed.as_str()));
        let is_dose = matches!(mark.what, What::Amount(..)) && in_days(&mark.what).is_none();
        let is_named = matches!(mark.what, What::Name(_));
        mark.has("remedy") || ends_remedy || is_dose || is_named
    };
    let at = (1..clause.marks.len())
        .filter(|at| clause.is_free(*at) && in_days(&clause.marks[*at].what).is_some())
        .find(|at| is_behind(at))?;
    clause.use_mark(at);
    if clause.is_behind(at, "small.for") || clause.is_behind(at, "small.by") || clause.is_behind(at, "span") {
        clause.lacks.push(Why::Several);
    }
    in_days(&clause.marks[at].what)
}

/// Uses a remedy with the one word before it that nobody knows: "soft soap".
fn described_remedy(clause: &mut Clause) -> Option<String> {
    let at = (1..clause.marks.len()).find(|at| clause.is_free(*at) && clause.marks[*at].has("remedy"))?;
    let is_strange = clause.marks[at - 1].what == What::Unknown && clause.is_free(at - 1);
    let is_led = at > 1 && (clause.marks[at - 2].has("spray") || clause.marks[at - 2].has("small.filler"));
    let is_name = clause.marks[at - 1].typed.starts_with(char::is_uppercase);
    (is_strange && is_led && !is_name).then(|| clause.text_from(at - 1, &["remedy"])).flatten()
}

pub(crate) fn flushed(clause: &mut Clause) -> Option<Drafts> {
    clause.head(&["flush"])?;
    // "aphids on the new leaves": only where they sit.
    if clause.has("pests.words") {
        return None;
    }
    let subjects = subject(clause, &[Tray], true)?;
    clause.take(&["saw"]);
    for_each("flushed", &subjects, &Fields::new())
}

pub(crate) fn plug_checked(clause: &mut Clause) -> Option<Drafts> {
    clause.head(&["plug"])?;
    let found = ["plug_crumbles", "plug_circling", "plug_holds"]
        .into_iter()
        .find(|role| clause.take(&[role]).is_some() || clause.has(role))?;
    clause.weight += 5;
    // "saqué 2 k1 para ver": plants lifted to look at are no plants thrown away.
    if clause.take(&["to_look"]).is_some() {
        clause.take(&["cull", "harvest"]);
        clause.number();
    }
    clause.take(&["one_lifted", "bag", "gives", "saw"]);
    how_many_looked_at(clause);
    let subjects = subject(clause, &[Tray], true)?;
    let roots = found.trim_start_matches("plug_");
    for_each("plug_checked", &subjects, &fields([("roots", Some(json!(roots)))]))
}

/// Uses the number of plants that were looked at: "the plugs of two c1".
fn how_many_looked_at(clause: &mut Clause) {
    /// More are no look at plugs.
    const MOST: f64 = 10.0;
    if let Some(at) = clause.find_number().filter(|at| clause.marks[*at].number().is_some_and(|number| number <= MOST))
    {
        clause.use_mark(at);
        clause.take(&["small.thing"]);
    }
}

pub(crate) fn roots_cut(clause: &mut Clause) -> Option<Drafts> {
    let in_one = clause.marks.iter().any(|mark| mark.has("root") && mark.has("root_cut"));
    clause.head(&["root"])?;
    if !in_one {
        clause.head(&["root_cut"])?;
    }
    clause.take(&["plug_circling", "whole"]);
    let subjects = subject(clause, &[Tray], true)?;
    let count = if clause.find_number().is_some() { clause.count() } else { None };
    clause.take(&["small.thing"]);
    if subjects.len() > 1 && count.is_some() {
        clause.lacks.push(Why::EachOrAll(subjects.iter().map(|subject| subject.name.clone()).collect()));
    }
    for_each("roots_cut", &subjects, &fields([("count", count.map(number_value))]))
}

pub(crate) fn hardening_begun(clause: &mut Clause) -> Option<Drafts> {
    clause.head(&["harden"])?;
    let subjects = subject(clause, &[Tray], true)?;
    let bed = clause.name(Bed);
    // No field of an entry: kept in the line's own words.
    let place = clause.name(Place);
    clause.take(&["from_now", "sets_out", "small.to", "begins"]);
    first_day(clause);
    for_each(
        "hardening_begun",
        &subjects,
        &fields([("for_bed", bed.map(Value::from)), ("stands_on", place.map(Value::from))]),
    )
}

/// Uses "day 1" of what begins.
fn first_day(clause: &mut Clause) {
    let at = (1..clause.marks.len()).find(|at| {
        clause.marks[*at].number() == Some(1.0) && clause.marks[at - 1].has("units.day") && clause.is_free(*at)
    });
    if let Some(at) = at {
        clause.use_mark(at - 1);
        clause.use_mark(at);
    }
}

/// So many plants as a part of what stands in a tray, in percent; none where the books hold fewer.
pub(super) fn share_of(clause: &Clause, tray: &str, plants: f64) -> Option<Value> {
    let stands =
        clause.known.names.standing(tray).map(f64::from).filter(|stands| *stands > 0.0 && plants <= *stands)?;
    Some(number_value((1000.0 * plants / stands).round() / 10.0))
}

pub(crate) fn grafted(clause: &mut Clause) -> Option<Drafts> {
    clause.head(&["graft"])?;
    let tray = clause.name(Tray)?;
    let failed = if clause.has("failed") { clause.number_beside(&["failed"]) } else { None };
    // "9 took 3 failed": those that took are alive, and counted by nobody.
    if failed.is_some() {
        clause.number_beside(&["survive", "alive"]);
        clause.take(&["survive", "alive"]);
    }
    let count = failed.or_else(|| clause.count());
    // A graft that did not take is a plant lost.
    if count.is_some() && (clause.take(&["failed"]).is_some() || failed.is_some()) {
        clause.take(&["small.thing"]);
        let cause = Some(json!("graft failed"));
        return one(
            "lost",
            fields([("tray", Some(json!(tray))), ("count", count.map(number_value)), ("cause", cause)]),
        );
    }
    clause.species();
    clause.take(&["graft_way"]);
    let stock = clause.take(&["rootstock"]).and_then(|at| clause.text_from(at + 1, &[]));
    let text = clause.text(&[], true);
    clause.take(&["small.thing", "failed"]);
    // "Late Green on wild stock": what it was grafted, and what upon.
    let parted = text
        .as_deref()
        .and_then(|text| [" on ", " onto ", " sobre ", " en "].iter().find_map(|upon| text.split_once(upon)));
    let (variety, rootstock) = match parted {
        Some((variety, rootstock)) => (Some(variety.to_string()), Some(rootstock.to_string())),
        None => (text, stock),
    };
    one(
        "grafted",
        fields([
            ("tray", Some(json!(tray))),
            ("count", count.map(number_value)),
            ("variety", variety.map(Value::from)),
            ("rootstock", rootstock.map(Value::from)),
        ]),
    )
}
