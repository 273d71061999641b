//! Frames of seed: lots, sowing, plants that come from elsewhere.

use super::clause::{Clause, fields, number_value};
use super::entries::{Drafts, one};
use super::of_person::person_behind;
use crate::share::scribbled::typed::marks::{Mark, What};
use crate::share::scribbled::typed::named::NameOf::{Bed, Container, Lot, Place, Tray};
use crate::share::scribbled::why::Why;
use serde_json::{Value, json};

/// Uses the lot that is spoken of: by its code, or by its species where only one lot is of it.
fn lot(clause: &mut Clause) -> Option<String> {
    let at = clause.find_name(Lot);
    if let Some(at) = at {
        let name = clause.name_here(at, Lot);
        if clause.known.names.species_of(Lot, name.as_deref().unwrap_or_default()).is_some() {
            clause.species();
        }
        return name;
    }
    let keys = clause.species()?;
    let of_species = |name: &String| clause.known.names.species_of(Lot, name).is_some_and(|key| keys.contains(&key));
    let fits: Vec<&String> =
        clause.known.all.iter().filter(|(of, name)| *of == Lot && of_species(name)).map(|(_, name)| name).collect();
    match fits.as_slice() {
        [one] => Some((*one).clone()),
        [] => None,
        _ => {
            clause.lacks.push(Why::NoLot);
            Some(fits[0].clone())
        }
    }
}

fn over_seeds(clause: &mut Clause, lot: &str, seeds: Option<f64>) {
    if let (Some(there), Some(seeds)) = (clause.known.names.seeds(lot), seeds)
        && seeds > f64::from(there)
    {
        clause.lacks.push(Why::MoreThanThere(there));
    }
}

pub(crate) fn sown(clause: &mut Clause) -> Option<Drafts> {
    let is_headed = clause.head(&["sow"]).is_some();
    let says_seed = clause.head(&["seed"]).is_some();
    // "30 mor-L02 in tube 400, mor-006": of a lot, a container and a new code nothing else can be meant.
    let new_tray = clause.marks.iter().any(|mark| matches!(mark.what, What::New(_)));
    let is_told = new_tray && clause.find_name(Lot).is_some() && clause.find_name(Container).is_some();
    if !is_headed && !says_seed && !is_told || clause.find_name(Bed).is_some() {
        return None;
    }
    let container = clause.find_name(Container).and_then(|_| clause.container());
    let lot = lot(clause);
    let mass = clause.grams();
    let seeds = if mass.is_some() { None } else { clause.count() };
    let known_tray = clause.name(Tray);
    let tray = known_tray.clone().or_else(|| clause.new_code());
    // A code made like those of lots names no tray.
    if known_tray.is_none() && tray.as_ref().is_some_and(|tray| clause.known.is_like_a_lot(tray)) {
        return None;
    }
    if lot.is_none() && !(says_seed || container.is_some()) {
        return None;
    }
    // "planted 20 k1" beside a lot K1: plants of the tray.
    let plants = clause.marks.iter().any(|mark| mark.has("plant") && mark.has("sow"));
    let is_bare = !says_seed
        && container.is_none()
        && clause
            .known
            .all
            .iter()
            .any(|(of, name)| *of == Tray && lot.as_ref().is_some_and(|lot| lot.eq_ignore_ascii_case(name)));
    if plants && is_bare && !clause.marks.iter().any(|mark| matches!(mark.what, What::New(_))) {
        return None;
    }
    if tray.is_none() && container.is_none() && !is_headed {
        return None;
    }
    if let Some(in_use) = known_tray {
        clause.lacks.push(Why::InUse(in_use));
    }
    if lot.is_none() {
        clause.lacks.push(Why::NoLot);
    }
    if tray.is_none() {
        clause.lacks.push(Why::NoTray);
    }
    if let Some(lot) = &lot {
        over_seeds(clause, lot, seeds);
    }
    let place = clause.name(Place);
    clause.take(&["lot", "tray", "small.to", "bag", "small.thing", "more"]);
    if seeds.is_some() || mass.is_some() {
        clause.take(&["whole", "put", "watered"]);
    }
    if tray.is_some() {
        clause.take(&["names_it", "count"]);
    }
    let told = [
        ("tray", tray.map(Value::from)),
        ("lot", lot.map(Value::from)),
        ("seeds", seeds.map(number_value)),
        ("mass_g", mass.map(number_value)),
        ("container", container.map(Value::from)),
        ("place", place.map(Value::from)),
    ];
    one("sown", fields(told))
}

pub(crate) fn resown(clause: &mut Clause) -> Option<Drafts> {
    clause.head(&["resow"])?;
    if clause.find_name(Bed).is_some() {
        return None;
    }
    let lots: Vec<usize> = (0..clause.marks.len()).filter(|i| clause.marks[*i].is_name_of(Lot)).collect();
    // A code that is that of a tray as well is the tray where another stands for the lot.
    let typed_as_lot = lots.iter().find(|i| matches!(&clause.marks[**i].what, What::Name(all) if all[0].0 == Lot));
    let lot = typed_as_lot.copied().and_then(|at| clause.name_here(at, Lot));
    let tray = clause.name(Tray)?;
    let seeds = clause.count();
    clause.take(&["seed", "lot", "small.thing"]);
    super::of_tray::same_species(clause, &tray);
    match &lot {
        Some(lot) => over_seeds(clause, lot, seeds),
        None => clause.lacks.push(Why::NoLot),
    }
    one(
        "resown",
        fields([("tray", Some(json!(tray))), ("lot", lot.map(Value::from)), ("seeds", seeds.map(number_value))]),
    )
}

pub(crate) fn sown_in_bed(clause: &mut Clause) -> Option<Drafts> {
    let bed = clause.name(Bed)?;
    clause.head(&["at_stake"])?;
    let of_lot = clause.find_name(Lot).and_then(|at| match &clause.marks[at].what {
        What::Name(all) => all.iter().find(|(of, _)| *of == Lot).map(|(_, name)| name.clone()),
        _ => None,
    });
    let of_lot = of_lot.and_then(|lot| clause.known.names.species_of(Lot, &lot)).map(|key| vec![key]);
    let species = clause.species().or(of_lot)?;
    // The number at the seeds is that of each hole.
    let seed_at = (0..clause.marks.len()).find(|i| clause.marks[*i].has("seed"));
    let per_hole = seed_at
        .and_then(|at| at.checked_sub(1))
        .filter(|i| clause.is_free(*i))
        .and_then(|i| clause.marks[i].number().map(|n| (i, n)));
    if let Some((at, _)) = per_hole {
        clause.use_mark(at);
    }
    let per_hole = per_hole.map(|(_, number)| number).or_else(|| clause.number());
    let holes = clause.count();
    clause.take(&["seed", "sow", "hole", "plant"]);
    let lot = clause.name(Lot);
    if per_hole.is_none() {
        clause.lacks.push(Why::NoNumber);
    }
    let told = [
        ("bed", Some(json!(bed))),
        ("species", species.first().map(|key| json!(key))),
        ("lot", lot.map(Value::from)),
        ("seeds_per_hole", per_hole.map(number_value)),
        ("holes", holes.map(number_value)),
    ];
    one("sown_in_bed", fields(told))
}

pub(crate) fn lot_received(clause: &mut Clause) -> Option<Drafts> {
    let came = clause.head(&["receive"]).is_some();
    let says_lot = clause.head(&["lot"]).is_some();
    let is_lot = |mark: &Mark| matches!(&mark.what, What::New(code) if clause.known.is_like_a_lot(code));
    // "cof-L06, 500 g of coffee": a code made like those of lots says that it is seed.
    let of_lot = clause.marks.iter().any(is_lot);
    if clause.head(&["seed"]).is_none() && !of_lot {
        return None;
    }
    clause.weight += if of_lot { 10 } else { 0 };
    if !came && !says_lot || clause.find_name(Lot).is_some() || clause.find_name(Tray).is_some() {
        return None;
    }
    let species = clause.species()?;
    let mass = clause.grams();
    let seeds = if mass.is_some() { None } else { clause.count() };
    let lot = clause.new_code();
    let from = (0..clause.marks.len())
        .rev()
        .find(|i| clause.marks[*i].has("small.from") && clause.is_free(*i) && clause.marks.get(i + 1).is_some());
    let source = from.and_then(|at| {
        let before = clause.clone();
        clause.use_mark(at);
        let found = clause.text_from(at + 1, &["small.title", "small.person"]);
        if found.is_none() {
            *clause = before;
        }
        found
    });
    let source = source.or_else(|| person_behind(clause, &["small.for"])).or_else(|| named_or_first(clause));
    // What else is said of where it comes from.
    let source = match (source, clause.text(&[], true)) {
        (Some(first), Some(more)) => Some(format!("{first} {more}")),
        (first, more) => first.or(more),
    };
    let told = [
        ("lot", lot.map(Value::from)),
        ("species", species.first().map(|key| json!(key))),
        ("seeds", seeds.map(number_value)),
        ("mass_g", mass.map(number_value)),
        ("source", source.map(Value::from)),
    ];
    one("lot_received", fields(told))
}

pub(crate) fn lot_counted(clause: &mut Clause) -> Option<Drafts> {
    let says_lot = clause.head(&["lot"]).is_some();
    let says_seed = clause.head(&["seed"]).is_some();
    let remains = clause.head(&["left", "count"]).is_some();
    let mass = clause.grams();
    let says_it = says_lot || says_seed || mass.is_some() && clause.is_surely(Lot);
    if !says_it || clause.has("sow") || clause.has("resow") {
        return None;
    }
    let lot = clause.name(Lot)?;
    clause.species();
    let seeds = if mass.is_some() { None } else { clause.count() };
    let about = clause.take(&["small.about"]).is_some();
    if !remains && !says_lot && !clause.is_surely(Lot) {
        clause.lacks.push(Why::Several);
    }
    over_seeds(clause, &lot, seeds);
    let told = [
        ("lot", Some(json!(lot))),
        ("seeds", seeds.map(number_value)),
        ("mass_g", mass.map(number_value)),
        // No field holds it: the line is kept beside the count.
        ("about", about.then_some(json!(true))),
    ];
    one("lot_counted", fields(told))
}

/// "K1 test 41/50 28 days": how many of how many came up.
pub(crate) fn lot_tested(clause: &mut Clause) -> Option<Drafts> {
    let is_test = clause.head(&["lot_test"]).is_some();
    // "17 of 20 L4 germinated": of a lot what came up of so many is a test.
    if !is_test && !clause.has("up") {
        return None;
    }
    let lot = clause.name(Lot)?;
    clause.species();
    clause.take(&["seed", "lot", "up", "count", "well", "alive", "small.thing"]);
    let days = clause.amount("units.day").or_else(|| clause.amount("units.week").map(|weeks| weeks * 7.0));
    let mut replicates: Vec<(f64, f64)> = Vec::new();
    while let Some((germinated, seeds)) = clause.part_of_all() {
        replicates.push((germinated, seeds));
    }
    if replicates.is_empty() && !is_test {
        return None;
    }
    if replicates.is_empty() {
        let (first, second) = (clause.number()?, clause.number()?);
        replicates.push((first.min(second), first.max(second)));
    }
    for (germinated, seeds) in &replicates {
        if germinated > seeds {
            clause.lacks.push(Why::MoreThanAll(*germinated, *seeds));
        }
    }
    if days.is_none() {
        clause.lacks.push(Why::NotSaid("days"));
    }
    clause.weight += 8;
    let replicates: Vec<Value> = replicates
        .into_iter()
        .map(|(germinated, seeds)| json!({"seeds": number_value(seeds), "germinated": number_value(germinated)}))
        .collect();
    one(
        "lot_tested",
        fields([
            ("lot", Some(json!(lot))),
            ("replicates", Some(Value::from(replicates))),
            ("days", days.map(number_value)),
        ]),
    )
}

/// A bare lot and number: how many seeds are left, perhaps.
pub(crate) fn lot_kept(clause: &mut Clause) -> Option<Drafts> {
    let says_lot = clause.head(&["lot", "seed"]).is_some();
    let lot = clause.name(Lot)?;
    let sealed = clause.head(&["dry_sealed"]).is_some();
    let cold = clause.head(&["cold"]).is_some();
    let kept = match (sealed, cold) {
        (_, true) => "cold",
        (true, false) => "dry_sealed",
        _ => return None,
    };
    clause.take(&["carry", "small.to", "put"]);
    let store_c = if cold { clause.amount("units.degree") } else { None };
    clause.species();
    if !says_lot && !clause.is_surely(Lot) {
        clause.lacks.push(Why::Both(lot.clone()));
    }
    let told =
        [("lot", Some(json!(lot))), ("kept", Some(json!(kept))), ("store_c", store_c.map(super::clause::number_value))];
    one("lot_kept", fields(told))
}

/// Uses words that name who gave: somebody, or what stands first of all.
fn named_or_first(clause: &mut Clause) -> Option<String> {
    let found = clause.text(&["small.title", "small.person"], true)?;
    let first = clause.marks.iter().find(|mark| !matches!(mark.what, What::Day(_) | What::Sign(_)));
    if !clause.names_a_person(&found) && !first.is_some_and(|mark| found.starts_with(&mark.typed)) {
        clause.lacks.push(Why::Several);
    }
    Some(found)
}

/// Uses the words for the form that plants come in.
fn form_of(clause: &mut Clause, in_a_container: bool) -> Option<&'static str> {
    match () {
        () if clause.take(&["bare_root"]).is_some() => Some("bare_root"),
        () if clause.take(&["stump"]).is_some() => Some("stump"),
        () if clause.has("bag") || in_a_container => Some("bag"),
        () => None,
    }
}

pub(crate) fn plants_received(clause: &mut Clause) -> Option<Drafts> {
    if clause.has("seed") || clause.find_name(Bed).is_some() {
        return None;
    }
    let gift = clause.has("gift");
    let bought = clause.has("buy");
    let came = clause.head(&["receive", "buy", "gift"]).is_some();
    let wild = clause.head(&["wildling"]).is_some();
    let cut = clause.head(&["cutting"]).is_some();
    clause.take(&["sucker"]);
    let graft = clause.take(&["grafted_plant", "graft"]).is_some();
    if !came && !wild && !cut {
        return None;
    }
    let species = clause.species()?;
    let count = clause.count();
    let known = clause.name(Tray);
    let tray = known.clone().or_else(|| clause.new_code());
    if known.is_none() && tray.as_ref().is_some_and(|tray| clause.known.is_like_a_lot(tray)) {
        return None;
    }
    if let Some(in_use) = known {
        clause.lacks.push(Why::InUse(in_use));
    }
    let container = clause.find_name(Container).and_then(|_| clause.container());
    let place = clause.name(Place);
    let form = form_of(clause, container.is_some());
    clause.take(&["small.thing", "seedling", "bag", "tray"]);
    let source = person_behind(clause, &["small.from"]).or_else(|| named_or_first(clause));
    clause.take(&["small.from", "small.to"]);
    let from = match () {
        () if cut => Some("cutting"),
        () if wild => Some("wildling"),
        () if bought => Some("bought"),
        () if gift => Some("gift"),
        () if graft => Some("graft"),
        () => None,
    };
    let told = [
        ("tray", tray.map(Value::from)),
        ("species", species.first().map(|key| json!(key))),
        ("count", count.map(number_value)),
        ("from", from.map(Value::from)),
        ("form", form.map(Value::from)),
        ("container", container.map(Value::from)),
        ("place", place.map(Value::from)),
        ("source", source.map(Value::from)),
    ];
    one("plants_received", fields(told))
}
