//! Frames of where trays and seedlings go: to a place, into other trays, into the ground.

use super::clause::{Clause, fields, number_value};
use super::entries::{Drafts, Subject, one, subject};
use super::of_tray::{over_standing, same_species, tray};
use crate::share::scribbled::typed::marks::{Mark, What};
use crate::share::scribbled::typed::named::NameOf::{Bed, Container, Lot, Place, Tray};
use crate::share::scribbled::why::Why;
use serde_json::{Value, json};

/// Words for where something goes that say something else as well.
const OVER: [&str; 7] = ["up to", "up into", "up on", "down to", "over to", "out to", "back to"];

/// Uses the place a tray goes to; one it comes from is used as well.
fn place_to(clause: &mut Clause) -> Option<(String, bool)> {
    let places: Vec<usize> =
        (0..clause.marks.len()).filter(|i| clause.is_free(*i) && clause.marks[*i].is_name_of(Place)).collect();
    let lead = |clause: &Clause, i: usize, role: &'static str| {
        let before = i.checked_sub(1).map(|j| &clause.marks[j]);
        let article = before.is_some_and(|mark| matches!(mark.folded.as_str(), "the" | "la" | "el"));
        let before = if article { i.checked_sub(2).map(|j| &clause.marks[j]) } else { before };
        let is_over = role == "small.to" && before.is_some_and(|mark| OVER.contains(&mark.folded.as_str()));
        is_over || before.is_some_and(|mark| mark.has(role))
    };
    let from = |clause: &Clause, i: usize| lead(clause, i, "small.from") && !lead(clause, i, "small.to");
    let to = *places.iter().find(|i| !from(clause, **i))?;
    let is_led = lead(clause, to, "small.to") || lead(clause, to, "carry");
    let sources: Vec<usize> = places.iter().copied().filter(|i| from(clause, *i)).collect();
    sources.into_iter().for_each(|i| clause.use_mark(i));
    if let Some(before) = to.checked_sub(1).filter(|at| OVER.contains(&clause.marks[*at].folded.as_str())) {
        clause.use_mark(before);
    }
    clause.name_here(to, Place).map(|name| (name, is_led))
}

pub(crate) fn carried(clause: &mut Clause) -> Option<Drafts> {
    let found = place_to(clause);
    let is_headed = clause.head(&["carry"]).is_some();
    let is_led = found.as_ref().is_some_and(|(_, led)| *led);
    // "avo 13 back to bench 3".
    let goes_back = |mark: &Mark| matches!(mark.folded.as_str(), "back to" | "over to" | "back on" | "back in");
    let to = clause.take(&["small.to"]).is_some();
    let is_headed = is_led && (to || clause.marks.iter().any(goes_back)) || is_headed;
    let trays = subject(clause, &[Tray], is_headed)?;
    clause.take(&["whole", "open", "under", "from_now"]);
    let Some((place, _)) = found else {
        if !is_headed || clause.find_name(Bed).is_some() || clause.find_number().is_some() {
            return None;
        }
        let new = clause.new_code().or_else(|| clause.text(&[], true));
        clause.lacks.push(
            new.map_or(Why::NoPlace, |name| Why::UnknownName(name.clone(), clause.known.nearest(&name, Some(Place)))),
        );
        return Some(trays.iter().map(|tray| ("carried", fields([("tray", Some(json!(tray.name)))]))).collect());
    };
    if !is_headed {
        clause.lacks.push(Why::Several);
    }
    if trays.len() == 1
        && let Some(at) = clause.find_number()
    {
        let all = clause.marks[at].number() == clause.known.names.standing(&trays[0].name).map(f64::from);
        if all {
            clause.use_mark(at);
        }
    }
    let told = |tray: &Subject| ("carried", fields([("tray", Some(json!(tray.name))), ("place", Some(json!(place)))]));
    Some(trays.iter().map(told).collect())
}

/// "up to line 2" alone pots nothing on.
fn only_goes_over(clause: &Clause) -> bool {
    let is_open = clause.find_name(Container).is_none() && !clause.has("bag");
    let mut pots = clause.marks.iter().filter(|mark| mark.has("pot") || mark.has("prick"));
    pots.all(|mark| is_open && OVER.contains(&mark.folded.as_str()))
}

/// How seedlings come into another tray.
fn how_moved(merged: bool, (pricked, potted): (bool, bool), seedbed: bool) -> &'static str {
    match () {
        () if merged => "merged",
        () if pricked && (!potted || seedbed) => "pricked_out",
        () if potted || !seedbed => "potted_on",
        () => "pricked_out",
    }
}

/// Uses how many go into another tray, and whether that is all of them: who joins two trays and says no number joins all.
fn how_many_moved(clause: &mut Clause, merged: bool, from: &str) -> (bool, Option<f64>) {
    let is_part = clause.marks.iter().any(|mark| matches!(mark.what, What::Part(_)));
    let is_open = clause.find_number().is_none();
    let all = is_open && clause.take(&["whole", "last_ones"]).is_some() || merged && is_open && !is_part;
    if merged || all {
        clause.take(&["last_ones"]);
    }
    let count = if all { clause.known.names.standing(from).map(f64::from) } else { clause.count() };
    (all, count)
}

/// Plants that moved on into a tray that nobody named.
fn moved_into_no_tray(
    clause: &mut Clause,
    from: &str,
    count: Option<f64>,
    container: Option<String>,
) -> Option<Drafts> {
    clause.lacks.push(Why::NoTray);
    let how = if clause.known.names.is_seedbed(from) { "pricked_out" } else { "potted_on" };
    clause.take(&["small.thing"]);
    let told = [
        ("from", Some(json!(from))),
        ("count", count.map(number_value)),
        ("how", Some(json!(how))),
        ("container", container.map(Value::from)),
    ];
    one("moved_on", fields(told))
}

pub(crate) fn moved_on(clause: &mut Clause) -> Option<Drafts> {
    let merged = clause.head(&["merge"]).is_some();
    let (pricked, potted) = (clause.has("prick"), clause.has("pot"));
    let into_bags = clause.has("carry") && clause.has("bag") && clause.find_number().is_some();
    let is_headed = (!only_goes_over(clause) && clause.head(&["prick", "pot"]).is_some()) || merged || into_bags;
    let carried = clause.take(&["carry"]).is_some();
    let arrow = clause.marks.iter().any(|mark| matches!(mark.typed.as_str(), ">" | "->"));
    let is_new = clause.marks.iter().any(|mark| matches!(mark.what, What::New(_)));
    // "25 c1 into c60 as c9": a new code and a container say it.
    let into_a_new_one =
        is_new && clause.has("small.to") && clause.find_name(Container).is_some() && !clause.has("sow");
    if !(is_headed || carried || arrow && is_new || into_a_new_one) {
        return None;
    }
    clause.weight += if into_a_new_one && !is_headed { 5 } else { 0 };
    let trays: Vec<usize> = (0..clause.marks.len()).filter(|i| clause.marks[*i].is_name_of(Tray)).collect();
    let comes_from = |i: &&usize| {
        let before = i.checked_sub(1).map(|j| clause.marks[j].folded.clone());
        matches!(before.as_deref(), Some("from" | "de" | "out of" | "desde" | "of"))
    };
    let from = *trays.iter().find(comes_from).or(trays.first())?;
    let from_name = clause.name_here(from, Tray)?;
    let (all, count) = how_many_moved(clause, merged, &from_name);
    let container = clause.container();
    clause.take(&["bag", "tray", "small.to", "more", "up", "whole"]);
    if is_new && container.is_some() {
        clause.take(&["names_it", "left"]);
    }
    let to = match clause.name(Tray) {
        Some(known) if merged => Some(known),
        Some(known) => {
            clause.lacks.push(Why::InUse(known.clone()));
            Some(known)
        }
        None => clause.new_code(),
    };
    let Some(to) = to else {
        if !is_headed {
            return None;
        }
        return moved_into_no_tray(clause, &from_name, count, container);
    };
    let seedbed = clause.known.names.is_seedbed(&from_name);
    // All of a tray into one that stands there is joined with it.
    let joins = all
        && !pricked
        && !potted
        && container.is_none()
        && clause.known.names.standing(&to).is_some_and(|standing| standing > 0);
    let how = how_moved(merged || joins, (pricked, potted), seedbed);
    clause.take(&["up", "plant"]);
    same_species(clause, &from_name);
    let place = clause.name(Place);
    if place.is_some() {
        clause.take(&["puts"]);
    }
    over_standing(clause, &from_name, count);
    let told = [
        ("from", Some(json!(from_name))),
        ("to", Some(json!(to))),
        ("count", count.map(number_value)),
        ("how", Some(json!(how))),
        ("container", container.map(Value::from)),
        ("place", place.map(Value::from)),
    ];
    one("moved_on", fields(told))
}

/// "planted 20 k1": into which bed?
fn planted_nowhere(clause: &mut Clause) -> Option<Drafts> {
    let at = clause.head(&["plant"])?;
    // What is put or set somewhere need not be planted.
    let is_plain = ["plant", "sembr", "sow"].iter().any(|stem| clause.marks[at].folded.starts_with(stem));
    if !is_plain || clause.has("seed") || clause.find_name(Container).is_some() || clause.has("small.to") {
        return None;
    }
    let name = tray(clause, true)?;
    let count = clause.count();
    clause.take(&["small.thing"]);
    clause.lacks.push(Why::NotSaid("bed"));
    one("outplanted", fields([("tray", Some(json!(name))), ("count", count.map(number_value))]))
}

/// Uses "School 1 got 25 of c1": the word right behind the bed that says so.
fn bed_receives(clause: &mut Clause) -> bool {
    const RECEIVES: [&str; 10] =
        ["got", "gets", "received", "took", "takes", "recibio", "recibieron", "agarro", "se llevo", "le tocaron"];
    let at = (1..clause.marks.len())
        .find(|at| RECEIVES.contains(&clause.marks[*at].folded.as_str()) && clause.marks[*at - 1].is_name_of(Bed));
    let Some(at) = at.filter(|_| clause.is_surely(Bed)) else { return false };
    clause.use_mark(at);
    clause.take(&["small.from"]);
    clause.weight += 10;
    true
}

/// "planted 20 coffee in B3": of which of the trays that hold so many?
fn planted_of_a_species(clause: &mut Clause, bed: &str, count: Option<f64>, is_headed: bool) -> Option<Drafts> {
    if clause.find_name(Lot).is_some() || clause.has("seed") {
        return None;
    }
    let keys = clause.species();
    if !is_headed && keys.is_none() {
        return None;
    }
    clause.take(&["bare_root", "stump", "small.thing"]);
    let of_species = |key: &String| keys.as_ref().is_some_and(|keys| keys.contains(key));
    // Only where so many stand they can have come from.
    let stands_there = |name: &str| {
        let standing = clause.known.names.standing(name).map_or(0.0, f64::from);
        standing > 0.0 && count.is_none_or(|count| count <= standing)
    };
    let fits = clause.known.all.iter().filter(|(of, name)| {
        *of == Tray
            && stands_there(name)
            && clause.known.names.species_of(Tray, name).is_some_and(|key| keys.is_none() || of_species(&key))
    });
    // Of a plant that nobody knows no tray is offered.
    let is_strange = keys.is_none() && clause.marks.iter().any(|mark| mark.what == What::Unknown);
    let mut trays: Vec<String> = fits.filter(|_| !is_strange).map(|(_, name)| name.clone()).collect();
    // So many as all that stand in one of them were rather those.
    trays.sort_by_key(|name| clause.known.names.standing(name).map(f64::from) != count);
    // No tray is of a nurse plant: it went out as shoots or seed.
    let is_nurse = |key: &String| clause.known.names.nurses_in(bed).contains(key);
    if trays.is_empty() && keys.as_ref().is_some_and(|keys| keys.iter().any(is_nurse)) {
        return None;
    }
    let is_of_some = keys.is_some() && trays.len() > 1;
    clause.lacks.push(if is_of_some { Why::WhichTray(trays.clone()) } else { Why::NoTray });
    let told = |tray: &String| {
        (
            "outplanted",
            fields([("tray", Some(json!(tray))), ("bed", Some(json!(bed))), ("count", count.map(number_value))]),
        )
    };
    let of_no_tray = || one("outplanted", fields([("bed", Some(json!(bed))), ("count", count.map(number_value))]));
    trays.first().map(|tray| vec![told(tray)]).or_else(of_no_tray)
}

pub(crate) fn outplanted(clause: &mut Clause) -> Option<Drafts> {
    let Some(bed) = clause.name(Bed) else { return planted_nowhere(clause) };
    let is_refill = clause.head(&["refill"]).is_some();
    let is_headed = clause.head(&["plant"]).is_some() || is_refill || bed_receives(clause);
    const GAPS: [&str; 9] =
        ["gaps", "the gaps", "misses", "fallas", "las fallas", "fallos", "los fallos", "huecos", "vacios"];
    let says_gaps = clause.marks.iter().any(|mark| GAPS.contains(&mark.folded.as_str()));
    if is_refill || is_headed && says_gaps {
        clause.take(&["gone_there"]);
    }
    // "we got 14 into the ground".
    for at in 0..clause.marks.len() {
        if is_headed && clause.marks[at].folded == "got" {
            clause.use_mark(at);
        }
    }
    let led = clause.take(&["small.to"]).is_some();
    // "where coffee died" only says where.
    if let Some(at) = (0..clause.marks.len()).find(|i| clause.marks[*i].has("small.where")) {
        (at..clause.marks.len()).for_each(|i| clause.use_mark(i));
    }
    let carried = clause.take(&["carry"]).is_some();
    // "8 m apart": no field of an entry, kept in the line's own words.
    let apart = if clause.find_name(Tray).is_some() { clause.amount("units.m") } else { None };
    if apart.is_some() {
        clause.take(&["apart"]);
    }
    let count = clause.count();
    let Some(name) = clause.find_name(Tray).and_then(|_| tray(clause, true)) else {
        let is_taken_there = carried && led && count.is_some();
        return if is_headed || is_taken_there { planted_of_a_species(clause, &bed, count, is_headed) } else { None };
    };
    if !is_headed && !led && !carried {
        clause.lacks.push(Why::Several);
    }
    clause.take(&["small.thing", "more", "last_ones"]);
    same_species(clause, &name);
    over_standing(clause, &name, count);
    let spacing = clause.spacing();
    let told = [
        ("tray", Some(json!(name))),
        ("bed", Some(json!(bed))),
        ("count", count.map(number_value)),
        ("row_m", spacing.map(|(row, _)| number_value(row))),
        ("in_row_m", spacing.map(|(_, in_row)| number_value(in_row))),
    ];
    one("outplanted", fields(told))
}
