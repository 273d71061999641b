//! Frames of the field and the weather.

use super::clause::{Clause, Fields, fields, number_value};
use super::entries::{Drafts, one};
use crate::share::scribbled::typed::marks::What;
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
        _ => None,
    }
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
    clause.take(&["frost", "temperature", "small.about"]);
    if clause.take(&["below_zero"]).is_some() {
        let low = told.get("tmin_c").and_then(Value::as_f64)?;
        told.insert("tmin_c".into(), number_value(-low.abs()));
    }
    if told.is_empty() || open.is_some() {
        clause.take(&["mood.vague"]);
        clause.lacks.push(Why::NoUnit);
    }
    let of = |field: &str| told.get(field).and_then(Value::as_f64);
    if let (Some(low), Some(high)) = (of("tmin_c"), of("tmax_c"))
        && low > high
    {
        clause.lacks.push(Why::Crossed(low, high));
    }
    if of("rain_mm").is_some_and(|rain| rain < 0.0) {
        return None;
    }
    if of("rain_mm").is_some_and(|rain| rain > MOST_RAIN_MM) {
        clause.lacks.push(Why::Several);
    }
    one("weather", told)
}

pub(crate) fn light_read(clause: &mut Clause) -> Option<Drafts> {
    clause.head(&["light"])?;
    clause.take(&["reach"]);
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
    let mut told = fields([(field, Some(json!(name)))]);
    if let Some(share) = share {
        told.insert("light_share".into(), number_value(share));
    } else {
        let lux = |clause: &mut Clause| clause.amount("units.lux").or_else(|| clause.number());
        let (Some(first), Some(second)) = (lux(clause), lux(clause)) else {
            clause.take(&["under", "open"]);
            clause.lacks.push(Why::NoUnit);
            return one("light_read", told);
        };
        // What is under trees is never brighter than the open.
        let (under, open) = (first.min(second), first.max(second));
        if !clause.has("under") && !clause.has("open") {
            clause.lacks.push(Why::Several);
        }
        clause.take(&["under", "open"]);
        let reading = json!({"under_lux": number_value(under), "open_lux": number_value(open)});
        told.insert("readings".into(), Value::from(vec![reading]));
    }
    told.extend(fields([("sky", sky.map(Value::from))]));
    one("light_read", told)
}

pub(crate) fn soil_checked(clause: &mut Clause) -> Option<Drafts> {
    let mpa = clause.amount("units.mpa");
    let says = clause.head(&["soil", "rod"]).is_some();
    if mpa.is_none() && !says {
        return None;
    }
    let rod = clause.amount("units.mm");
    let push = clause.amount("units.kg");
    let depth = clause.amount("units.cm");
    let days = clause.amount("units.day");
    let soaked = clause.take(&["soaked"]).is_some();
    let wet = clause.take(&["wet"]).is_some();
    let place = match () {
        () if clause.take(&["beside"]).is_some() => Some("beside"),
        () if clause.take(&["beneath"]).is_some() => Some("beneath"),
        () => None,
    };
    if place.is_some() {
        clause.species();
    }
    clause.take(&["push", "deep", "rod"]);
    let bed = clause.name(Bed)?;
    if mpa.is_none() && !(rod.is_some() && push.is_some()) && !wet {
        clause.lacks.push(Why::NoUnit);
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
        ("wet", wet.then_some(json!(true))),
        ("where", place.map(Value::from)),
    ];
    one("soil_checked", fields(told))
}

pub(crate) fn prepared(clause: &mut Clause) -> Option<Drafts> {
    const TASKS: [(&str, &str); 5] = [
        ("mulch", "mulched"),
        ("fence", "fenced"),
        ("weed", "weeded"),
        ("clear_ground", "cleared"),
        ("real_hole", "holes"),
    ];
    let (role, task) = TASKS.into_iter().find(|(role, _)| clause.head(&[role]).is_some())?;
    if TASKS.iter().any(|(other, _)| {
        *other != role && clause.marks.iter().any(|mark| mark.has(other) && !mark.has(role) && *other != "mulch")
    }) {
        return None;
    }
    let Some(bed) = clause.name(Bed) else {
        let name = clause.new_code().or_else(|| clause.text(&[], true))?;
        if clause.marks.iter().any(|mark| matches!(mark.what, What::Name(_))) {
            return None;
        }
        let whole =
            clause.marks.windows(2).find(|two| two[1].typed == name).map(|two| format!("{} {name}", two[0].typed));
        let mut near = clause.known.nearest(&name, Some(Bed));
        near.extend(whole.map(|whole| clause.known.nearest(&whole, Some(Bed))).unwrap_or_default());
        let told = fields([("bed", near.first().map(|bed| json!(bed))), ("task", Some(json!(task)))]);
        clause.lacks.push(Why::UnknownName(name, near));
        return one("prepared", told);
    };
    let count = if task == "holes" { clause.number() } else { None };
    if task == "holes" {
        clause.take(&["hole", "small.for"]);
    }
    if task == "mulched" {
        clause.take(&["mulch_stuff"]);
    }
    clause.take(&["put"]);
    clause.species();
    for word in 0..clause.marks.len() {
        if matches!(clause.marks[word].folded.as_str(), "bush" | "monte" | "hierba" | "maleza" | "grass") {
            clause.use_mark(word);
        }
    }
    one(
        "prepared",
        fields([("bed", Some(json!(bed))), ("task", Some(json!(task))), ("count", count.map(number_value))]),
    )
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
    let bed = clause.name(Bed)?;
    let (species, is_nurse) = species_in(clause, &bed)?;
    if is_nurse {
        return None;
    }
    clause.head(&["alive", "survive"])?;
    clause.take(&["count"]);
    clause.take(&["small.thing"]);
    let alive = clause.count();
    let of = clause.find_number();
    let has_dead = clause.take(&["die"]).is_some();
    let second = of.and_then(|at| {
        if matches!(clause.marks[at].what, What::Number { is_weak: true, .. }) && !has_dead {
            None
        } else {
            clause.number()
        }
    });
    let is_total = of.is_some_and(|at| {
        clause.marks[..at]
            .iter()
            .rev()
            .take(3)
            .any(|mark| mark.has("small.from") || mark.folded == "/" || mark.folded == "out of")
    });
    let dead = match (alive, second, has_dead) {
        (_, Some(dead), true) => Some(dead),
        (Some(alive), Some(total), false) if is_total => {
            if alive > total {
                clause.lacks.push(Why::MoreThanAll(alive, total));
            }
            Some(total - alive)
        }
        _ => {
            clause.lacks.push(Why::NotSaid("dead"));
            None
        }
    };
    let told = [
        ("bed", Some(json!(bed))),
        ("species", Some(json!(species))),
        ("alive", alive.map(number_value)),
        ("dead", dead.map(number_value)),
    ];
    one("survival_counted", fields(told))
}

pub(crate) fn plants_lost(clause: &mut Clause) -> Option<Drafts> {
    let bed = clause.name(Bed)?;
    if clause.find_name(Tray).is_some() {
        return None;
    }
    let (species, is_nurse) = species_in(clause, &bed)?;
    let slashed = clause.marks.iter().find(|mark| mark.has("slash")).map(|mark| mark.typed.clone());
    let burnt = clause.marks.iter().find(|mark| mark.has("burn")).map(|mark| mark.typed.clone());
    let is_stolen = clause.marks.iter().any(|mark| mark.has("steal"));
    let stolen = is_stolen.then(|| super::of_tray::theft(clause)).or(burnt);
    let dies = clause.has("die") || slashed.is_some() || stolen.is_some();
    if clause.head(&["die", "kill", "slash", "steal", "burn"]).is_none() && clause.head(&["fire"]).is_none() {
        return None;
    }
    let count = clause.count();
    let known = clause.text(&["causes.words", "pests.words", "fire"], false);
    let cause = match known {
        None if slashed.is_none() && stolen.is_none() => clause.unknown_reason(&["causes.words"]),
        known => known,
    };
    let cause = cause.or(slashed).or(stolen);
    clause.take(&["by_mistake", "small.by", "more", "small.thing"]);
    if is_nurse {
        clause.lacks.push(Why::Several);
    }
    if !dies && cause.is_none() {
        return None;
    }
    let told = [
        ("bed", Some(json!(bed))),
        ("species", Some(json!(species))),
        ("count", count.map(number_value)),
        ("cause", cause.map(Value::from)),
    ];
    one("plants_lost", fields(told))
}
