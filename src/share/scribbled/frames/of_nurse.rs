//! Frames of nurse plants.

use super::clause::{Clause, fields, number_value};
use super::entries::{Drafts, one};
use super::of_field::species_in;
use crate::share::scribbled::typed::marks::{Mark, What};
use crate::share::scribbled::typed::named::NameOf::{Bed, Tray};
use crate::share::scribbled::why::Why;
use serde_json::{Value, json};

pub(crate) fn nurse_planted(clause: &mut Clause) -> Option<Drafts> {
    let bed = clause.name(Bed)?;
    if clause.find_name(Tray).is_some() {
        return None;
    }
    let is_planted = clause.head(&["plant"]).is_some();
    clause.take(&["sucker", "cutting", "apart", "small.to", "small.thing"]);
    if clause.marks.iter().any(|mark| matches!(mark.what, What::Spacing(..))) {
        clause.take(&["rows", "in_row"]);
    }
    let square = clause.take(&["square"]).is_some();
    let spacing = clause.spacing().or_else(|| {
        let in_row = clause.take(&["in_row"]).is_some();
        let rows = clause.take(&["rows"]).is_some() || in_row;
        let first = clause.amount("units.m")?;
        let second = clause.amount("units.m");
        let both = second.map(|second| (first, second)).filter(|_| rows).or(square.then_some((first, first)));
        // One distance is mostly that of both ways: it is asked.
        if both.is_none() && second.is_none() {
            clause.lacks.push(Why::NotSaid("row_m"));
            return Some((first, first));
        }
        both
    });
    clause.weight += if spacing.is_some() { 5 } else { 0 };
    let keys = clause.species()?;
    // "30 plátanos para sombra".
    let is_shade = |at: &usize| {
        clause.marks[*at].has("shade")
            && *at > 0
            && matches!(clause.marks[*at - 1].folded.as_str(), "para" | "de" | "for" | "as" | "pa")
    };
    let for_shade = (0..clause.marks.len()).find(is_shade);
    if let Some(at) = for_shade {
        clause.use_mark(at);
        clause.use_mark(at - 1);
        clause.weight += 5;
    }
    if spacing.is_none() {
        let nurses = clause.known.names.nurses_in(&bed);
        if !is_planted || for_shade.is_none() && !keys.iter().any(|key| nurses.contains(key)) {
            return None;
        }
        clause.lacks.push(Why::NotSaid("row_m"));
    }
    let count = clause.count();
    let told = [
        ("bed", Some(json!(bed))),
        ("nurse", keys.first().map(|key| json!(key))),
        ("count", count.map(number_value)),
        ("row_m", spacing.map(|(row, _)| number_value(row))),
        ("in_row_m", spacing.map(|(_, in_row)| number_value(in_row))),
    ];
    one("nurse_planted", fields(told))
}

/// Uses a number that stands before a word of a role.
fn number_before(clause: &mut Clause, role: &'static str) -> Option<f64> {
    let at = (1..clause.marks.len())
        .find(|i| clause.marks[*i].has(role) && clause.is_free(i - 1) && clause.marks[i - 1].number().is_some())?;
    clause.use_mark(at);
    clause.use_mark(at - 1);
    clause.marks[at - 1].number()
}

pub(crate) fn nurse_counted(clause: &mut Clause) -> Option<Drafts> {
    let bed = clause.name(Bed)?;
    let (nurse, true) = species_in(clause, &bed)? else { return None };
    let bunches = number_before(clause, "bunch");
    if clause.head(&["alive", "left", "count", "survive"]).is_none() && bunches.is_none() {
        return None;
    }
    // Those that fell are what is no more counted.
    let falls = ["die", "kill", "fell", "steal"];
    let has_fallen = falls.iter().any(|role| clause.has(role));
    let fallen = if has_fallen { clause.number_beside(&falls) } else { None };
    let alive = match clause.part_of_all() {
        Some((alive, _)) => Some(alive),
        None => clause.number_beside(&["alive", "left", "count", "survive"]).or_else(|| clause.count()),
    };
    clause.take(&["small.thing", "bunch"]);
    let mut cause = None;
    if clause.take(&falls).is_some() || has_fallen {
        if fallen.is_none() {
            clause.number();
        }
        cause = clause.text(&["causes.words"], true);
        clause.take(&["small.by"]);
    }
    if clause.find_number().is_some_and(|at| clause.is_behind(at, "small.from")) {
        clause.number();
    }
    let told = [
        ("bed", Some(json!(bed))),
        ("nurse", Some(json!(nurse))),
        ("alive", alive.map(number_value)),
        ("bunches_showing", bunches.map(number_value)),
        ("cause", cause.map(Value::from)),
    ];
    one("nurse_counted", fields(told))
}

/// The one plant of a bed that bears bunches: no other word says which it was.
fn the_bearer_of_bunches(clause: &Clause, bed: &str) -> Option<String> {
    let names = clause.known.names;
    let bearers: Vec<String> = ["banana", "plantain"].iter().flat_map(|name| names.species_called(name)).collect();
    let mut there = names.nurses_in(bed).into_iter().filter(|key| bearers.contains(key));
    let first = there.next()?;
    there.next().is_none().then_some(first)
}

/// Uses a weight in pounds, arrobas or quintals, kg, and says whether the unit is sure. The pound is 0.45359237 kg by its
/// definition of 1959; an arroba of 25 and a quintal of 100 of them are common practice in Central America, others are in
/// use too: it is asked.
fn kg_of_pounds(clause: &mut Clause) -> Option<(f64, bool)> {
    const KG_PER_POUND: f64 = 0.453_592_37;
    const UNITS: [(&str, f64); 4] = [("lb", 1.0), ("libra", 1.0), ("arroba", 25.0), ("q", 100.0)];
    let at = (0..clause.marks.len())
        .find(|at| clause.is_free(*at) && matches!(clause.marks[*at].what, What::Amount(_, "units.ask")))?;
    let unit =
        clause.marks[at].folded.rsplit(' ').next().unwrap_or_default().trim_start_matches(|c: char| !c.is_alphabetic());
    let (_, pounds) = UNITS.iter().find(|(name, _)| unit.starts_with(name))?;
    let What::Amount(value, _) = clause.marks[at].what else { return None };
    clause.use_mark(at);
    clause.weight += 4;
    Some(((value * pounds * KG_PER_POUND * 10.0).round() / 10.0, *pounds == 1.0))
}

/// Plants that are mostly nurse plants: who cuts or lifts them in a bed speaks of no others (common practice).
const NURSES: [&str; 4] = ["banana", "plantain", "cassava", "pigeon pea"];

/// Uses what was harvested, kg, and says whether it stands in a unit that is asked about.
fn harvested_kg(clause: &mut Clause) -> (Option<f64>, bool) {
    let kg = clause.amount("units.kg");
    let in_pounds = if kg.is_none() { kg_of_pounds(clause) } else { None };
    let is_sure = in_pounds.is_none_or(|(_, is_sure)| is_sure);
    let is_asked = clause.amount("units.ask").is_some() || !is_sure;
    (kg.or(in_pounds.map(|(kg, _)| kg)), is_asked)
}

/// Uses "bajé 4 matas de guineo": whole stems brought down, and no bunches.
fn brings_down_stems(clause: &mut Clause) -> bool {
    const BRINGS_DOWN: [&str; 13] = [
        "baje",
        "bajamos",
        "bajo",
        "bajaron",
        "bajadas",
        "bajar",
        "brought down",
        "bring down",
        "took down",
        "take down",
        "chopped down",
        "cut down",
        "botar",
    ];
    const STEMS: [&str; 14] = [
        "mata", "matas", "tallo", "tallos", "cepa", "cepas", "palo", "palos", "planta", "plantas", "stem", "stems",
        "plants", "stools",
    ];
    let says = |words: &[&str]| clause.marks.iter().position(|mark| words.contains(&mark.folded.as_str()));
    let (Some(verb), Some(stems)) = (says(&BRINGS_DOWN), says(&STEMS)) else { return false };
    if clause.has("bunch") {
        return false;
    }
    clause.use_mark(verb);
    clause.use_mark(stems);
    clause.weight += 10;
    true
}

/// "podé la sombra de A1": whatever throws it there; of which plant, and how much, is asked.
pub(crate) fn shade_cut(clause: &mut Clause) -> Option<Drafts> {
    if !clause.has("shade") || clause.marks.iter().any(|mark| matches!(mark.what, What::Species(_))) {
        return None;
    }
    clause.head(&["prune", "cut", "thin"])?;
    clause.take(&["shade", "leaf"]);
    let bed = clause.name(Bed)?;
    let nurses = clause.known.names.nurses_in(&bed);
    let share = clause.part().or_else(|| clause.amount("units.pct").map(|pct| pct / 100.0));
    clause.lacks.push(Why::WhichPlant(nurses.clone()));
    if share.is_none() {
        clause.lacks.push(Why::NotSaid("share"));
    }
    let told = [
        ("bed", Some(json!(bed))),
        ("nurse", Some(json!(nurses.first()?))),
        ("what", Some(json!("leaves"))),
        ("share", share.map(number_value)),
    ];
    one("nurse_cut", fields(told))
}

/// "cut the castor back".
fn is_cut_back(clause: &Clause) -> bool {
    clause.has("cut") && clause.marks.iter().any(|mark| matches!(mark.folded.as_str(), "back" | "back by"))
}

/// How plants of a bed are cut.
struct Cutting {
    fells: bool,
    prunes: bool,
    only_leaves: bool,
    weighs: bool,
}

/// Whether a plant of a bed can be cut so; what is doubtful is noted.
fn can_be_cut(
    clause: &mut Clause,
    (nurse, is_nurse): (&String, bool),
    (plant, bed): (&str, &str),
    how: Cutting,
) -> Option<()> {
    let names = clause.known.names;
    let is_planted = !is_nurse && names.plants_in(bed).contains(nurse);
    if is_planted && (how.fells || how.only_leaves) {
        // Trees that were planted throw shade as well. What is felled may be one that died.
        clause.lacks.extend(how.fells.then_some(Why::Several));
    } else if !is_nurse && !how.weighs {
        // "cassava lifted": said of what does not stand there.
        let is_nurse = NURSES.iter().any(|name| names.species_called(name).contains(nurse));
        if is_planted || !is_nurse && !how.prunes {
            return None;
        }
        clause.lacks.push(Why::NoneThere(plant.to_string(), bed.to_string()));
    } else if !is_nurse {
        clause.lacks.push(Why::Several);
    }
    Some(())
}

/// Uses "pulled out all the maize": of a nurse plant of the bed it says that it is felled.
fn pulls_out(clause: &mut Clause, bed: &str) -> bool {
    const PULLS: [&str; 7] =
        ["pulled out", "ripped out", "tore out", "pulled up", "rooted out", "sacamos de raiz", "arrancamos de raiz"];
    let nurses = clause.known.names.nurses_in(bed);
    let is_nurse =
        |mark: &Mark| matches!(&mark.what, What::Species(keys) if keys.iter().any(|key| nurses.contains(key)));
    let pulls = |mark: &Mark| PULLS.contains(&mark.folded.as_str());
    let Some(at) = clause.marks.iter().position(pulls).filter(|_| clause.marks.iter().any(is_nurse)) else {
        return false;
    };
    clause.use_mark(at);
    clause.weight += 10;
    true
}

/// Uses "chapeé el gandul a la mitad": what is slashed by a part is a plant that was cut back, no weeds.
fn is_slashed_by_a_part(clause: &mut Clause) -> bool {
    let by_a_part = |mark: &Mark| matches!(mark.what, What::Part(_) | What::Amount(_, "units.pct"));
    let is_plant = |mark: &Mark| matches!(mark.what, What::Species(_));
    let is_cut = clause.marks.iter().any(by_a_part) && clause.marks.iter().any(is_plant) && !clause.has("bush");
    is_cut && clause.head(&["slash"]).is_some()
}

/// Uses "for mulch", "para mulch": what cut leaves are for.
fn used_as_mulch(clause: &mut Clause) {
    let is_mulch = |mark: &Mark| mark.has("mulch") || mark.has("mulch_stuff");
    for at in 1..clause.marks.len() {
        if is_mulch(&clause.marks[at]) && clause.is_behind(at, "small.for") {
            clause.use_mark(at);
        }
    }
}

/// Uses "12 leaves": a number of leaves is none of plants, and says no share.
fn number_of_leaves(clause: &mut Clause) -> bool {
    let at = (1..clause.marks.len()).find(|at| {
        let is_leaf =
            |mark: &Mark| ["leaf", "leaves", "hoja", "fronds"].iter().any(|stem| mark.folded.starts_with(stem));
        is_leaf(&clause.marks[*at]) && clause.marks[at - 1].number().is_some() && clause.is_free(at - 1)
    });
    if let Some(at) = at {
        clause.use_mark(at - 1);
    }
    at.is_some()
}

/// "plátano" where banana grows: people say the one for the other; which is meant is asked with what grows there.
fn kin_that_grows_there(clause: &mut Clause, bed: &str, nurse: String, is_nurse: bool) -> (String, bool) {
    let names = clause.known.names;
    let kin: Vec<String> = ["banana", "plantain"].iter().flat_map(|name| names.species_called(name)).collect();
    if is_nurse || !kin.contains(&nurse) || names.plants_in(bed).contains(&nurse) {
        return (nurse, is_nurse);
    }
    match names.nurses_in(bed).into_iter().find(|there| kin.contains(there)) {
        Some(there) => {
            clause.lacks.push(Why::WhichPlant(vec![there.clone()]));
            (there, true)
        }
        None => (nurse, is_nurse),
    }
}

/// "castor in B3 is 2.5 m tall, crown 1 m": where the crown's width is said and not its radius, half of it is.
pub(crate) fn nurse_measured(clause: &mut Clause) -> Option<Drafts> {
    const CROWN: [&str; 8] = ["crown", "crowns", "canopy", "spread", "copa", "copas", "dosel", "de copa"];
    const RADIUS: [&str; 4] = ["radius", "radio", "de radio", "in radius"];
    const WIDTH: [&str; 8] = ["wide", "across", "width", "ancho", "de ancho", "diameter", "diametro", "de diametro"];
    let bed = clause.name(Bed)?;
    let (nurse, true) = species_in(clause, &bed)? else { return None };
    clause.head(&["height"])?;
    let position =
        |clause: &Clause, words: &[&str]| clause.marks.iter().position(|mark| words.contains(&mark.folded.as_str()));
    let crown_at = position(clause, &CROWN);
    let (radius, width) = (position(clause, &RADIUS), position(clause, &WIDTH));
    [crown_at, radius, width].into_iter().flatten().for_each(|at| clause.use_mark(at));
    let metres = |mark: &Mark| match mark.what {
        What::Amount(value, "units.m") => Some(value),
        What::Amount(value, "units.cm") => Some(value / 100.0),
        _ => None,
    };
    let told: Vec<(usize, f64)> =
        (0..clause.marks.len()).filter_map(|at| metres(&clause.marks[at]).map(|value| (at, value))).collect();
    told.iter().for_each(|(at, _)| clause.use_mark(*at));
    let crown = crown_at.or(radius).or(width);
    let (height, crown) = match (&told[..], crown) {
        ([(_, height)], None) => (*height, None),
        ([(_, height), (second, other)], Some(at)) => {
            // The crown's measure stands at its word: "copa de 2 m", "2 m across".
            if at < *second && at < told[0].0 { (*other, Some(*height)) } else { (*height, Some(*other)) }
        }
        _ => return None,
    };
    clause.take(&["small.about", "gives", "reach", "small.thing"]);
    let radius_m = match (crown, radius, width) {
        (Some(crown), Some(_), _) => Some(crown),
        (Some(crown), None, Some(_)) => Some(crown / 2.0),
        _ => None,
    };
    if radius_m.is_none() {
        clause.lacks.push(Why::NotSaid("crown_radius_m"));
    }
    let told = [
        ("bed", Some(json!(bed))),
        ("nurse", Some(json!(nurse))),
        ("height_m", Some(number_value(height))),
        ("crown_radius_m", radius_m.map(number_value)),
    ];
    one("nurse_measured", fields(told))
}

pub(crate) fn nurse_cut(clause: &mut Clause) -> Option<Drafts> {
    let bed = clause.name(Bed)?;
    let (kg, in_other_units) = harvested_kg(clause);
    let bunches = clause.take(&["bunch"]).is_some();
    let brought_down = brings_down_stems(clause);
    let fell = clause.head(&["fell"]).is_some() || brought_down || pulls_out(clause, &bed);
    let leaves = clause.head(&["leaf"]).is_some();
    let harvest = clause.head(&["harvest"]).is_some();
    let pruned = clause.has("prune") || is_cut_back(clause) || is_slashed_by_a_part(clause);
    let of_stem = clause.has("cut_stem");
    let cut = clause.head(&["cut", "prune"]).is_some() || pruned;
    let says_leaves = leaves && number_of_leaves(clause);
    if clause.has("sucker") && !fell && !bunches {
        return None;
    }
    if !(fell || leaves || harvest || cut || kg.is_some() || bunches && in_other_units) {
        return None;
    }
    let plant = clause.marks.iter().find(|mark| matches!(mark.what, What::Species(_)));
    let plant = plant.map(|mark| mark.typed.clone()).unwrap_or_default();
    let (nurse, is_nurse) = match species_in(clause, &bed) {
        Some(named) => named,
        None if bunches => (the_bearer_of_bunches(clause, &bed)?, true),
        None => return None,
    };
    let (nurse, is_nurse) = kin_that_grows_there(clause, &bed, nurse, is_nurse);
    let how =
        Cutting { fells: fell, prunes: pruned, only_leaves: (pruned || leaves) && !harvest, weighs: kg.is_some() };
    can_be_cut(clause, (&nurse, is_nurse), (&plant, &bed), how)?;
    if in_other_units {
        clause.lacks.push(Why::NoUnit("kg"));
    }
    clause.take(&["gives", "count"]);
    let what = match () {
        () if brought_down => "felled",
        () if bunches || harvest || kg.is_some() => "harvest",
        () if fell => "felled",
        () if of_stem => "stem",
        () if leaves || pruned => "leaves",
        () => {
            clause.lacks.push(Why::Several);
            "leaves"
        }
    };
    let whole = clause.take(&["whole"]).is_some();
    let share = clause.part().or_else(|| clause.amount("units.pct").map(|pct| pct / 100.0)).or(whole.then_some(1.0));
    let count = if share.is_none() && !says_leaves { clause.number() } else { None };
    // "cassava lifted": all of it.
    let lifted = harvest && !bunches && kg.is_none() && count.is_none();
    let share = share.or(lifted.then_some(1.0));
    clause.take(&["small.thing", "small.about"]);
    if what != "leaves" {
        clause.take(&["killed_so"]);
    } else {
        used_as_mulch(clause);
    }
    let is_open = share.is_none() && count.is_none();
    if is_open {
        clause.lacks.push(if what == "leaves" { Why::NotSaid("share") } else { Why::NoNumber });
    }
    // Of what is felled or lifted all is offered; how much of the leaves went nobody knows.
    let share = share.or((is_open && what != "leaves").then_some(1.0));
    let told = [
        ("bed", Some(json!(bed))),
        ("nurse", Some(json!(nurse))),
        ("what", Some(json!(what))),
        ("share", share.map(number_value)),
        ("count", count.map(number_value)),
        ("yield_kg", kg.map(number_value)),
    ];
    one("nurse_cut", fields(told))
}
