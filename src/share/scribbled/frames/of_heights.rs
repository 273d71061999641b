//! The frame of heights and collars that were measured.

use super::clause::{Clause, fields, number_value};
use super::entries::{Drafts, one};
use crate::share::scribbled::typed::marks::{Mark, What};
use crate::share::scribbled::typed::named::NameOf::Tray;
use crate::share::scribbled::why::Why;
use serde_json::{Value, json};

pub(crate) fn measured(clause: &mut Clause) -> Option<Drafts> {
    if clause.head(&["height"]).is_none() && !is_of_heights_alone(clause) {
        return None;
    }
    clause.take(&["units.cm"]);
    if clause.has("leaf_pairs") {
        return None;
    }
    let of_collar = clause.take(&["collar"]);
    let tray_at = clause.find_name(Tray)?;
    let tray = clause.name(Tray)?;
    let collars = of_collar.map(|at| several_collars_mm(clause, at)).unwrap_or_default();
    let collar = of_collar.filter(|_| collars.is_empty()).and_then(|at| collar_mm(clause, at));
    let mut heights: Vec<(usize, f64)> = Vec::new();
    for i in 0..clause.marks.len() {
        let height = match clause.marks[i].what {
            _ if !clause.is_free(i) => continue,
            What::Number { value, is_minus: false, .. } | What::Amount(value, "units.cm") => value,
            What::Amount(value, "units.mm") => value / 10.0,
            What::Amount(value, "units.m") => value * 100.0,
            _ => continue,
        };
        clause.use_mark(i);
        heights.push((i, height));
    }
    without_how_many(clause, &mut heights, tray_at);
    if heights.is_empty() {
        clause.lacks.push(Why::NoNumber);
    }
    if clause.take(&["small.about"]).is_some() {
        clause.lacks.push(Why::Unsure("~".into()));
    }
    // A collar is that of one plant; several are those of the plants in their order.
    let is_one = collar.is_some() && heights.len() == 1;
    if of_collar.is_some() && !is_one && (collars.is_empty() || collars.len() != heights.len()) {
        clause.lacks.push(Why::Several);
    }
    clause.take(&["small.thing", "gives"]);
    let plant = |(n, (_, height)): (usize, &(usize, f64))| {
        let collar = collars.get(n).copied().or(collar).map(number_value);
        Value::Object(fields([("height_cm", Some(number_value(*height))), ("collar_mm", collar)]))
    };
    let plants: Vec<Value> = heights.iter().enumerate().map(plant).collect();
    one("measured", fields([("tray", Some(json!(tray))), ("plants", Some(Value::from(plants)))]))
}

/// "c1: 41, 44, 39 cm": of a tray and several numbers, the last of them in cm, nothing else can be meant than heights.
fn is_of_heights_alone(clause: &mut Clause) -> bool {
    let in_cm = |mark: &Mark| matches!(mark.what, What::Amount(_, "units.cm"));
    let is_figure = |mark: &Mark| matches!(mark.what, What::Number { is_weak: false, is_minus: false, .. });
    let says_nothing = |mark: &Mark| match mark.what {
        What::Name(_) => mark.is_name_of(Tray),
        What::Sign(_) | What::Day(_) => true,
        What::Word => mark.roles.iter().all(|role| role.contains('.')),
        _ => is_figure(mark) || in_cm(mark),
    };
    let last = clause.marks.iter().rposition(in_cm);
    let figures = clause.marks.iter().filter(|mark| is_figure(mark) || in_cm(mark)).count();
    let is_alone =
        clause.marks.iter().all(says_nothing) && figures > 1 && last.is_some_and(|last| last + 1 == clause.marks.len());
    clause.weight += if is_alone { 10 } else { 0 };
    is_alone
}

/// Uses the thicknesses of several plants behind the word for the collar, mm: "collars 6, 6.2, 5.8 mm".
fn several_collars_mm(clause: &mut Clause, at: usize) -> Vec<f64> {
    let value = |mark: &Mark| match mark.what {
        What::Number { value, is_minus: false, .. } | What::Amount(value, "units.mm") => Some(value),
        _ => None,
    };
    let behind: Vec<(usize, f64)> = (at + 1..clause.marks.len())
        .filter(|i| clause.is_free(*i))
        .map_while(|i| value(&clause.marks[i]).map(|value| (i, value)))
        .collect();
    let before = (0..at).filter(|i| clause.is_free(*i) && value(&clause.marks[*i]).is_some()).count();
    if behind.len() < 2 || before != behind.len() {
        return Vec::new();
    }
    behind.iter().for_each(|(i, _)| clause.use_mark(*i));
    behind.into_iter().map(|(_, value)| value).collect()
}

/// Uses the thickness that stands behind the word for the collar, mm.
fn collar_mm(clause: &mut Clause, at: usize) -> Option<f64> {
    let found = (at + 1..clause.marks.len()).find_map(|i| match clause.marks[i].what {
        What::Number { value, is_minus: false, .. } | What::Amount(value, "units.mm") => Some((i, value)),
        What::Amount(value, "units.cm") => Some((i, value * 10.0)),
        _ => None,
    });
    let (at, value) = found?;
    clause.use_mark(at);
    Some(value)
}

/// "medí 3 k1: 24, 26 y 31": the first number says how many were measured. Where it stands as if it did and is another
/// number than theirs it is asked about.
fn without_how_many(clause: &mut Clause, heights: &mut Vec<(usize, f64)>, tray_at: usize) {
    let Some((first, value)) = heights.first().copied().filter(|_| heights.len() > 1) else { return };
    let is_bare = matches!(clause.marks[first].what, What::Number { .. });
    let of_plants = clause.marks.get(first + 1).is_some_and(|mark| mark.has("small.thing"));
    let leads = first < tray_at && heights.iter().skip(1).all(|(at, _)| *at > tray_at);
    // "medí 3: 15, 16 y 17", "medí tres, 15, 16, 17": right behind the word for measuring.
    let is_said = first > 0 && clause.is_behind(first, "height");
    let colon = is_said && clause.marks.get(first + 1).is_some_and(|mark| mark.is_sign(':'));
    let is_number_of_them = value == (heights.len() - 1) as f64;
    let in_letters = clause.marks[first].typed.chars().all(char::is_alphabetic);
    // "medí 10, 22 cm": ten plants, or two.
    let mean =
        is_said && heights.len() == 2 && heights.iter().skip(1).all(|(at, _)| clause.marks[*at].number().is_none());
    if !is_bare || !(leads || of_plants || colon || mean || is_said && is_number_of_them) {
        return;
    }
    if is_number_of_them && (leads || of_plants || colon || in_letters) {
        heights.remove(0);
    } else {
        clause.lacks.push(Why::Several);
    }
}
