//! Frames of the field and the weather.

use super::clause::{CLEAR_BY, Clause, Fields, fields, is_small, number_value};
use super::entries::{Drafts, one};
use crate::share::scribbled::typed::marks::{Mark, What};
use crate::share::scribbled::typed::named::NameOf::{Bed, Place, Tray};
use crate::share::scribbled::why::Why;
use serde_json::{Value, json};

/// More rain of a day than this is a slip of the pen (ours).
const MOST_RAIN_MM: f64 = 500.0;

/// The value of a number of the gauge in mm, or of the thermometer.
fn gauge_value(what: &What) -> Option<f64> {
    match what {
        What::Number { value, is_weak: false, is_minus } => Some(if *is_minus { -value } else { *value }),
        What::Amount(value, "units.mm" | "units.degree") => Some(*value),
        What::Amount(value, "units.cm") => Some(value * 10.0),
        What::Amount(value, "units.inch") => Some(value * 25.4),
        What::Amount(value, "units.fahrenheit") => Some(((value - 32.0) / 1.8 * 10.0).round() / 10.0),
        _ => None,
    }
}

/// Uses a depth that is rain though no word says so: "una pulgada de agua", which is given to nothing, and "17.5 mm last
/// night", of which nothing else is said.
fn depth_alone(clause: &mut Clause) -> Option<f64> {
    let is_depth = |mark: &Mark| matches!(mark.what, What::Amount(_, "units.mm" | "units.inch"));
    let at = clause.marks.iter().position(is_depth)?;
    let is_small = |mark: &Mark| match mark.what {
        What::Day(_) | What::Sign(_) | What::Amount(_, "units.hour") => true,
        What::Word => mark.roles.iter().all(|role| role.starts_with("small.")),
        _ => is_depth(mark),
    };
    let is_given = clause.marks.iter().any(|mark| matches!(mark.what, What::Name(_)));
    let of_water = !is_given && clause.has("water") && !clause.has("rain");
    let is_alone = clause.marks.iter().filter(|mark| is_depth(mark)).count() == 1 && clause.marks.iter().all(is_small);
    if !of_water && !is_alone {
        return None;
    }
    let depth = gauge_value(&clause.marks[at].what)?;
    clause.use_mark(at);
    // "23 mm in two hours".
    clause.amount("units.hour");
    if clause.head(&["water"]).is_none() {
        clause.weight += 10;
    }
    Some(depth)
}

pub(crate) fn weather(clause: &mut Clause) -> Option<Drafts> {
    const SORTS: [(&str, &str); 3] = [("rain", "rain_mm"), ("lowest", "tmin_c"), ("highest", "tmax_c")];
    if clause.marks.iter().any(|mark| mark.is_name_of(Tray) || mark.is_name_of(Bed)) {
        return None;
    }
    let mut told = Fields::new();
    if clause.head(&["no_rain"]).is_some() {
        told.insert("rain_mm".into(), json!(0));
        clause.take(&["mood.not_done"]);
    }
    if told.is_empty()
        && let Some(depth) = depth_alone(clause)
    {
        told.insert("rain_mm".into(), number_value(depth));
    }
    let (mut open, mut waiting): (Option<&str>, Option<f64>) = (None, None);
    for i in 0..clause.marks.len() {
        let mark = &clause.marks[i];
        if let Some((_, field)) = SORTS.iter().find(|(role, _)| mark.has(role)) {
            clause.use_mark(i);
            clause.weight += 10;
            match waiting.take() {
                Some(value) if !told.contains_key(*field) => {
                    told.insert(field.to_string(), number_value(value));
                }
                _ => open = Some(field).filter(|field| !told.contains_key(**field)).copied(),
            }
        } else if let Some(value) = gauge_value(&mark.what).filter(|_| clause.is_free(i)) {
            clause.use_mark(i);
            match open.take() {
                Some(field) => {
                    told.insert(field.to_string(), number_value(value));
                }
                None if waiting.is_none() => waiting = Some(value),
                None => return None,
            }
        }
    }
    if clause.weight < 10 || waiting.is_some() {
        return None;
    }
    clause.take(&[
        "frost",
        "temperature",
        "small.about",
        "rain_manner",
        "receive",
        "gives",
        "asides.says",
        "units.hour",
    ]);
    // "24 h: 12 mm": read once a day.
    if told.contains_key("rain_mm") {
        clause.amount("units.hour");
    }
    if clause.take(&["below_zero"]).is_some() {
        let low = told.get("tmin_c").and_then(Value::as_f64)?;
        told.insert("tmin_c".into(), number_value(-low.abs()));
    }
    if told.is_empty() || open.is_some() {
        clause.take(&["mood.vague"]);
        clause.lacks.push(Why::NoUnit("mm, °C"));
    }
    if !can_be_weather(clause, &told) {
        return None;
    }
    one("weather", told)
}

/// Whether the gauge can read so; what is doubtful is noted.
fn can_be_weather(clause: &mut Clause, told: &Fields) -> bool {
    let of = |field: &str| told.get(field).and_then(Value::as_f64);
    if let (Some(low), Some(high)) = (of("tmin_c"), of("tmax_c"))
        && low > high
    {
        clause.lacks.push(Why::Crossed(low, high));
    }
    if of("rain_mm").is_some_and(|rain| rain < 0.0) {
        return false;
    }
    if of("rain_mm").is_some_and(|rain| rain > MOST_RAIN_MM) {
        clause.lacks.push(Why::Several);
    }
    true
}

pub(crate) fn light_read(clause: &mut Clause) -> Option<Drafts> {
    let in_lux = clause.marks.iter().any(|mark| matches!(mark.what, What::Amount(_, "units.lux")));
    let half_sun = clause.head(&["half_sun"]).is_some();
    let says_light = clause.head(&["light"]).is_some() || half_sun;
    if !says_light && !in_lux {
        return None;
    }
    clause.weight += if in_lux { 10 } else { 0 };
    clause.take(if in_lux { &["reach", "shade"] } else { &["reach"] });
    clause.take(&["gives", "asides.says", "barely"]);
    if clause.has("under") || clause.has("beneath") {
        clause.species();
    }
    let (field, name) = match clause.name(Bed) {
        Some(bed) => ("bed", bed),
        None => ("place", clause.name(Place)?),
    };
    let sky = match () {
        () if clause.take(&["overcast"]).is_some() => Some("overcast"),
        () if clause.take(&["clear_sky"]).is_some() => Some("clear"),
        () => None,
    };
    let share = clause
        .amount("units.pct")
        .map(|pct| pct / 100.0)
        .or_else(|| clause.part().map(|part| (part * 1000.0).round() / 1000.0));
    if half_sun && share.is_none() {
        clause.lacks.push(Why::Several);
    }
    let share = share.or(half_sun.then_some(0.5));
    let mut told = fields([(field, Some(json!(name)))]);
    // "light 0.93": a share of one.
    let bare = clause.find_number().filter(|_| share.is_none() && !in_lux);
    let of_one = bare.and_then(|at| clause.marks[at].number()).filter(|number| (0.01..1.0).contains(number));
    if of_one.is_some() {
        clause.number();
    }
    let share = share.or(of_one);
    // Less than a hundredth is rather a share of one.
    if share.is_some_and(|share| share > 0.0 && share < 0.01) {
        clause.lacks.push(Why::Several);
    }
    if let Some(share) = share {
        clause.take(&["under", "beneath"]);
        // No field holds it: the line is kept beside the reading.
        if clause.take(&["small.about"]).is_some() {
            told.insert("about".into(), json!(true));
        }
        told.insert("light_share".into(), number_value(share));
    } else {
        let lux = |clause: &mut Clause| clause.amount("units.lux").or_else(|| clause.number());
        let (first, second) = (lux(clause), lux(clause));
        let (Some(first), Some(second)) = (first, second) else {
            clause.take(&["under", "open", "small.about"]);
            clause.lacks.push(Why::NoUnit("%, lux"));
            // A bare number may be percent.
            let share = first.filter(|number| !in_lux && (1.0..=100.0).contains(number)).map(|number| number / 100.0);
            told.extend(fields([("light_share", share.map(number_value))]));
            return one("light_read", told);
        };
        // What is under trees is never brighter than the open: said so, it is asked about, and not turned round.
        let said_at = |word: &str| clause.marks.iter().position(|mark| mark.has(word));
        let (under, open) = match (said_at("under"), said_at("open")) {
            (Some(under), Some(open)) if under < open => (first, second),
            (Some(_), Some(_)) => (second, first),
            _ => (first.min(second), first.max(second)),
        };
        if !clause.has("under") && !clause.has("open") {
            clause.lacks.push(Why::Several);
        }
        clause.take(&["under", "open", "beneath"]);
        let reading = json!({"under_lux": number_value(under), "open_lux": number_value(open)});
        told.insert("readings".into(), Value::from(vec![reading]));
    }
    told.extend(fields([("sky", sky.map(Value::from))]));
    one("light_read", told)
}

/// "School 4 sombra 40": of a bed it is what the shade lets through; asked about, since nobody read it.
pub(crate) fn light_under_shade(clause: &mut Clause) -> Option<Drafts> {
    if clause.has("light") || clause.has("prune") || clause.has("cut") {
        return None;
    }
    clause.head(&["shade"])?;
    let bed = clause.name(Bed)?;
    clause.take(&["reach", "gives", "small.about", "count", "under", "beneath", "saw"]);
    let pct = clause.amount("units.pct").or_else(|| clause.number())?;
    clause.species();
    if !(0.0..=100.0).contains(&pct) {
        return None;
    }
    clause.lacks.push(Why::Several);
    one("light_read", fields([("bed", Some(json!(bed))), ("light_share", Some(number_value((100.0 - pct) / 100.0)))]))
}

pub(crate) fn soil_checked(clause: &mut Clause) -> Option<Drafts> {
    let mpa = clause.amount("units.mpa");
    // "suelo seco": one word that says both.
    let in_one = clause.marks.iter().any(|mark| mark.has("soil_state"));
    let says = clause.head(&["soil", "rod", "finger"]).is_some() || in_one;
    let is_bare = mpa.is_none() && !says && is_state_of_a_bed(clause);
    if mpa.is_none() && !says && !is_bare {
        return None;
    }
    clause.weight += if in_one || is_bare { 10 } else { 0 };
    let rod = clause.amount("units.mm");
    let push = clause.amount("units.kg");
    let says_how_deep = clause.has("reach") && clause.has("rod");
    let depth = clause.amount("units.cm").or_else(|| if says_how_deep { clause.number() } else { None });
    let days = clause.amount("units.day");
    let soaked = clause.take(&["soaked"]).is_some();
    let wet = match () {
        () if clause.take(&["wet"]).is_some() => Some(true),
        () if clause.take(&["dry_ground"]).is_some() => Some(false),
        () if is_bare => dried(clause),
        () => None,
    };
    if is_bare {
        clause.take(&["left"]);
    }
    let place = match () {
        () if clause.take(&["beside"]).is_some() => Some("beside"),
        () if clause.take(&["beneath"]).is_some() => Some("beneath"),
        () => None,
    };
    if place.is_some() {
        clause.species();
    }
    clause.take(&["push", "deep", "rod", "reach", "barely", "gives"]);
    // Dry on top may be wet below.
    let on_top = clause.take(&["on_top"]).is_some();
    if on_top && wet == Some(false) {
        clause.lacks.push(Why::Several);
    }
    clause.take(&["how_far"]);
    let bed = clause.name(Bed)?;
    // A push and a depth say nothing without the rod's thickness.
    let lacks_rod = mpa.is_none() && rod.is_none() && push.is_some();
    if lacks_rod {
        clause.lacks.push(Why::NotSaid("rod_mm"));
    } else if mpa.is_none() && !(rod.is_some() && push.is_some()) && wet.is_none() {
        clause.lacks.push(Why::NoUnit("MPa; mm, kg, cm"));
    }
    if days.is_some() && !soaked {
        return None;
    }
    let told = [
        ("bed", Some(json!(bed))),
        ("resistance_mpa", mpa.map(number_value)),
        ("rod_mm", rod.map(number_value)),
        ("push_kg", push.map(number_value)),
        ("depth_cm", depth.map(number_value)),
        ("days_since_soaking", days.map(number_value)),
        ("wet", wet.map(Value::from)),
        ("where", place.map(Value::from)),
    ];
    one("soil_checked", fields(told))
}

/// Uses the word that says of a bed that it dried, which is asked about.
fn dried(clause: &mut Clause) -> Option<bool> {
    let at = clause.marks.iter().position(|mark| DRIED.contains(&mark.folded.as_str()))?;
    clause.use_mark(at);
    clause.lacks.push(Why::Several);
    Some(false)
}

/// What a person says who says of a bed that it dried: its ground, or what stands there.
const DRIED: [&str; 4] = ["dried", "dried out", "dried up", "se seco"];

/// Whether nothing is said but that a bed is wet or dry, and how deep: "C1 dry at 20 cm".
fn is_state_of_a_bed(clause: &Clause) -> bool {
    let is_state = |mark: &Mark| mark.has("wet") || mark.has("dry_ground") || DRIED.contains(&mark.folded.as_str());
    let is_other = |mark: &Mark| match mark.what {
        What::Word => {
            !is_state(mark)
                && !["deep", "left", "how_far", "on_top"].iter().any(|role| mark.has(role))
                && !is_small(mark)
        }
        What::Name(_) => !mark.is_name_of(Bed),
        What::Amount(_, unit) => unit != "units.cm",
        What::Day(_) | What::Sign(_) | What::Clock(_) => false,
        _ => true,
    };
    clause.find_name(Bed).is_some() && clause.marks.iter().any(is_state) && !clause.marks.iter().any(is_other)
}

/// Work on the ground: the words that say it, and the task.
const TASKS: [(&str, &str); 5] = [
    ("mulch", "mulched"),
    ("fence", "fenced"),
    ("weed", "weeded"),
    ("clear_ground", "cleared"),
    ("real_hole", "holes"),
];

pub(crate) fn prepared(clause: &mut Clause) -> Option<Drafts> {
    prepared_as(clause, false)
}

/// The other thing that cutting with a machete, or cleaning, may be.
pub(crate) fn prepared_otherwise(clause: &mut Clause) -> Option<Drafts> {
    prepared_as(clause, true)
}

/// Words that say that something was laid on the ground.
const LAID: [&str; 23] = [
    "threw",
    "threw on",
    "tire",
    "tiramos",
    "le tire",
    "le tiramos",
    "heaped",
    "piled",
    "scattered",
    "put",
    "puse",
    "pusimos",
    "puesto",
    "eche",
    "echamos",
    "le eche",
    "le puse",
    "laid",
    "laid down",
    "spread",
    "tendi",
    "tendimos",
    "regue",
];

/// "all holes in B3, de 45": behind "of" stands how deep they all are.
fn depth_of_all(clause: &mut Clause) -> Option<f64> {
    let at = clause.find_number().filter(|at| clause.has("whole") && clause.is_behind(*at, "small.from"))?;
    clause.use_mark(at);
    clause.marks[at].number()
}

/// Uses the number of "3 strands of wire", "4 hilos": how a fence was made.
fn strands(clause: &mut Clause) {
    const PARTS: [&str; 12] = [
        "strands", "strand", "wires", "hilos", "hilo", "lines", "posts", "postes", "post", "rolls", "rollos", "estacas",
    ];
    let part = |at: usize| clause.marks.get(at).is_some_and(|mark| PARTS.contains(&mark.folded.as_str()));
    if let Some(at) = clause.find_number().filter(|at| part(at + 1)) {
        clause.use_mark(at);
        clause.use_mark(at + 1);
    }
}

fn prepared_as(clause: &mut Clause, otherwise: bool) -> Option<Drafts> {
    let is_laid = clause.marks.iter().any(|mark| LAID.contains(&mark.folded.as_str()));
    let is_covered = clause.has("mulch_stuff")
        && (clause.has("cover") && clause.head(&["cover"]).is_some() || is_laid && clause.head(&["put"]).is_some());
    let covered = is_covered.then_some(("mulch", "mulched"));
    // "chopped banana leaves for mulch": what they are for.
    let is_for = (1..clause.marks.len()).any(|at| clause.marks[at].has("mulch") && clause.is_behind(at, "small.for"));
    if is_for && (clause.has("leaf") || clause.has("prune")) {
        return None;
    }
    let (role, said) = covered.or_else(|| TASKS.into_iter().find(|(role, _)| clause.head(&[role]).is_some()))?;
    if TASKS.iter().any(|(other, _)| {
        *other != role && clause.marks.iter().any(|mark| mark.has(other) && !mark.has(role) && *other != "mulch")
    }) {
        return None;
    }
    let Some(bed) = clause.name(Bed) else {
        return if otherwise { None } else { prepared_nowhere(clause, said) };
    };
    let open = weeds_or_all(clause, &bed);
    let task = match (&open, otherwise) {
        (None, true) => return None,
        (None, false) => said,
        (Some((_, task)), false) => task,
        (Some((_, "weeded")), true) => "cleared",
        (Some(_), true) => "weeded",
    };
    clause.lacks.extend(open.map(|(word, _)| Why::WeedsOrAll(word)));
    clause.take(&["clear_or_weed"]);
    clause.weight -= if otherwise { CLEAR_BY } else { 0 };
    let depth = if task == "holes" { depth_cm(clause).or_else(|| depth_of_all(clause)) } else { None };
    if task == "fenced" {
        strands(clause);
    }
    let count = if task == "holes" { clause.number() } else { None };
    if task == "holes" {
        clause.take(&["hole", "small.for"]);
    }
    if task == "mulched" {
        clause.take(&["mulch_stuff", "mulch"]);
    }
    clause.take(&["put", "bush", "whole"]);
    let is_all = |mark: &Mark| matches!(mark.what, What::Amount(share, "units.pct") if share == 100.0);
    if clause.marks.iter().any(is_all) {
        clause.amount("units.pct");
    }
    clause.species();
    let mut count = count;
    if count.is_some_and(|count| some_holes(clause, &bed, count)) {
        clause.weight -= CLEAR_BY;
        // Whoever says that all of it is dug says no number of holes.
        count = None;
    }
    one(
        "prepared",
        fields([
            ("bed", Some(json!(bed))),
            ("task", Some(json!(task))),
            ("count", count.map(number_value)),
            ("depth_cm", depth.map(number_value)),
        ]),
    )
}

/// Uses how deep holes are: "40 cm deep", "40 deep".
fn depth_cm(clause: &mut Clause) -> Option<f64> {
    let in_cm = clause.amount("units.cm");
    let bare = (1..clause.marks.len()).find(|at| {
        let beside = clause.marks[at - 1].number().is_some() && clause.is_free(at - 1);
        beside && clause.is_free(*at) && clause.marks[*at].has("deep")
    });
    let depth = match (in_cm, bare) {
        (Some(depth), _) => Some(depth),
        (None, Some(at)) => {
            clause.use_mark(at - 1);
            clause.marks[at - 1].number()
        }
        (None, None) => None,
    };
    if depth.is_some() {
        clause.take(&["deep"]);
    }
    depth
}

/// Fewer holes than the bed has places do not make it dug; where its plan does not say how many it has nobody knows.
fn some_holes(clause: &mut Clause, bed: &str, count: f64) -> bool {
    let places = clause.known.names.places_in(bed);
    let is_part = places.is_none_or(|places| count < f64::from(places));
    if is_part {
        clause.lacks.push(Why::SomeHoles(count as u32, places));
    }
    is_part
}

/// A word that is said of weeding as well as of clearing, and what it is here: among plants only the weeds are cut, where
/// nothing stands all is. None where the word says one thing, or where the bed leaves no doubt.
fn weeds_or_all(clause: &Clause, bed: &str) -> Option<(String, &'static str)> {
    let word = |role: &'static str| clause.marks.iter().find(|mark| mark.has(role)).map(|mark| mark.typed.clone());
    match (clause.known.names.is_planted(bed), word("clear_or_weed"), word("weed_or_clear")) {
        (true, Some(word), _) => Some((word, "weeded")),
        (false, _, Some(word)) => Some((word, "cleared")),
        (true, None, _) | (false, _, None) => None,
    }
}

/// Work in a bed that nobody knows.
fn prepared_nowhere(clause: &mut Clause, task: &str) -> Option<Drafts> {
    let name = clause.new_code().or_else(|| clause.text(&[], true))?;
    if clause.marks.iter().any(|mark| matches!(mark.what, What::Name(_))) {
        return None;
    }
    let whole = clause.marks.windows(2).find(|two| two[1].typed == name).map(|two| format!("{} {name}", two[0].typed));
    let mut near = clause.known.nearest(&name, Some(Bed));
    near.extend(whole.map(|whole| clause.known.nearest(&whole, Some(Bed))).unwrap_or_default());
    let told = fields([("bed", near.first().map(|bed| json!(bed))), ("task", Some(json!(task)))]);
    clause.lacks.push(Why::UnknownName(name, near));
    one("prepared", told)
}

/// A number of holes, kept in the line's own words.
pub(crate) fn holes_dug(clause: &mut Clause) -> Option<Drafts> {
    clause.head(&["real_hole"])?;
    let bed = clause.name(Bed)?;
    let count = clause.number()?;
    clause.take(&["hole", "small.for", "put"]);
    clause.species();
    some_holes(clause, &bed, count).then(|| vec![("holes_dug", fields([("bed", Some(json!(bed)))]))])
}

/// Uses the species and says whether it is a nurse plant of this bed.
pub(crate) fn species_in(clause: &mut Clause, bed: &str) -> Option<(String, bool)> {
    let keys = clause.species()?;
    let nurses = clause.known.names.nurses_in(bed);
    let plants = clause.known.names.plants_in(bed);
    let found = |of: &[String]| keys.iter().find(|key| of.contains(key)).cloned();
    match (found(&nurses), found(&plants)) {
        (Some(key), Some(_)) => {
            clause.lacks.push(Why::Both(key.clone()));
            Some((key, true))
        }
        (Some(key), None) => Some((key, true)),
        (None, Some(key)) => Some((key, false)),
        (None, None) => keys.first().map(|key| (key.clone(), false)),
    }
}

pub(crate) fn survival_counted(clause: &mut Clause) -> Option<Drafts> {
    // "took 10 cordia to Spring 2": carried there.
    let takes = clause.marks.first().is_some_and(|mark| matches!(mark.folded.as_str(), "took" | "take"));
    let leads_there = (1..clause.marks.len()).any(|at| {
        clause.marks[at].is_name_of(Bed) && matches!(clause.marks[at - 1].folded.as_str(), "to" | "into" | "out to")
    });
    if takes && leads_there {
        return None;
    }
    let bed = clause.name(Bed)?;
    let (species, is_nurse) = species_in(clause, &bed)?;
    if is_nurse {
        return None;
    }
    // "50 ok 5 dead".
    let well = clause.has("well") && clause.has("die");
    if clause.head(&["alive", "survive"]).is_none() && (!well || clause.head(&["well"]).is_none()) {
        let is_led = clause.marks.iter().take(2).any(|mark| matches!(mark.folded.as_str(), "of" | "de"));
        if !is_led {
            return None;
        }
        clause.head(&["count", "left"])?;
    }
    clause.take(&["count", "left"]);
    clause.take(&["small.thing"]);
    let has_dead = clause.has("die") || clause.has("failed");
    let told_dead = if has_dead { clause.number_beside(&["die", "failed"]) } else { None };
    let of_all = clause.part_of_all();
    let alive = match of_all {
        Some((alive, _)) => Some(alive),
        None => clause.number_beside(&["alive", "survive"]).or_else(|| clause.count()),
    };
    let all = of_all.map(|(_, all)| all);
    clause.take(&["die", "failed"]);
    if let (Some(alive), Some(all)) = (alive, all)
        && alive > all
    {
        clause.lacks.push(Why::MoreThanAll(alive, all));
    }
    // "3 dead, 17 alive": another bare number may be the dead as well.
    let second = if has_dead && told_dead.is_none() { clause.number() } else { None };
    let dead = told_dead.or(second).or(alive.zip(all).map(|(alive, all)| all - alive));
    if dead.is_none() {
        clause.lacks.push(Why::NotSaid("dead"));
    }
    let causes =
        if dead.is_some_and(|dead| dead > 0.0) { clause.known_text(&["causes.words", "pests.words"]) } else { None };
    clause.take(&["small.by"]);
    let told = [
        ("bed", Some(json!(bed))),
        ("species", Some(json!(species))),
        ("alive", alive.map(number_value)),
        ("dead", dead.map(number_value)),
        ("causes", causes.map(Value::from)),
    ];
    one("survival_counted", fields(told))
}

pub(crate) fn plants_lost(clause: &mut Clause) -> Option<Drafts> {
    let bed = clause.name(Bed)?;
    if clause.find_name(Tray).is_some() {
        return None;
    }
    let named = species_in(clause, &bed);
    if named.is_none() && clause.find_number().is_none() {
        return None;
    }
    let (species, is_nurse) = named.map_or((None, false), |(species, is_nurse)| (Some(species), is_nurse));
    let slashed = clause.marks.iter().find(|mark| mark.has("slash")).map(|mark| mark.typed.clone());
    let burnt = clause.marks.iter().find(|mark| mark.has("burn")).map(|mark| mark.typed.clone());
    let is_stolen = clause.marks.iter().any(|mark| mark.has("steal"));
    let stolen = is_stolen.then(|| super::of_tray::theft(clause)).or(burnt);
    let dies = clause.has("die") || slashed.is_some() || stolen.is_some();
    if clause.head(&["die", "kill", "slash", "steal", "burn"]).is_none() && clause.head(&["fire"]).is_none() {
        return None;
    }
    let is_one = clause.find_number().is_none() && clause.one_of_a_species();
    let count = if is_one { Some(1.0) } else { clause.count() };
    let known =
        super::of_tray::want_of(clause).or_else(|| clause.text(&["causes.words", "pests.words", "fire"], false));
    let cause = match known {
        None if slashed.is_none() && stolen.is_none() => clause.unknown_reason(&["causes.words"]),
        known => known,
    };
    let cause = cause.or(slashed).or(stolen);
    clause.take(&["by_mistake", "small.by", "more", "small.thing"]);
    if is_nurse {
        clause.lacks.push(Why::Several);
    }
    let species = species.or_else(|| one_of_the_bed(clause, &bed));
    if !dies && cause.is_none() {
        return None;
    }
    let told = [
        ("bed", Some(json!(bed))),
        ("species", species.map(Value::from)),
        ("count", count.map(number_value)),
        ("cause", cause.map(Value::from)),
    ];
    one("plants_lost", fields(told))
}

/// The species of a bed of which none is named: it is asked, also where there is only one.
fn one_of_the_bed(clause: &mut Clause, bed: &str) -> Option<String> {
    let plants = clause.known.names.plants_in(bed);
    clause.lacks.push(if plants.len() == 1 { Why::Several } else { Why::NotSaid("species") });
    plants.into_iter().next()
}
