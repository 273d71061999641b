//! What a form offers beside a field: names of the book that fit what is typed, and for causes those used most.

use std::collections::BTreeMap;

use super::field::FieldLine;
use crate::base::text::folded;
use crate::dashboard::context::ScreenContext;
use crate::nursery::entry::shape::{NameOf, Shape};

/// The most names offered.
const MOST: usize = 6;
/// Causes of loss to begin with, before the nursery has its own (common practice; FAO 1989 names them for tropical
/// nurseries, from memory).
const FIRST_CAUSES: [&str; 6] = ["damping-off", "drought", "rats", "insects", "snails", "broken"];
const FIRST_CAUSES_ES: [&str; 6] = ["mal del talluelo", "sequía", "ratas", "insectos", "babosas", "quebradas"];
/// Reasons of throwing out to begin with (common practice).
const FIRST_CULLS: [&str; 4] = ["too small", "forked", "bent roots", "thinned"];
const FIRST_CULLS_ES: [&str; 4] = ["muy pequeñas", "bifurcadas", "raíz torcida", "raleadas"];

/// The names to offer for a field of a form.
pub(crate) fn picks(line: &FieldLine, kind: &str, cx: &ScreenContext<'_>) -> Vec<String> {
    let typed = line.typed.text();
    match line.field.shape {
        Shape::Code(_) if is_new(line.field.name, kind) => Vec::new(),
        Shape::Code(name_of) => fitting(&typed, names(name_of, cx)),
        Shape::Species => {
            let species = cx.book.picture.site.species.iter().map(|(key, _)| cx.species(Some(key)));
            fitting(&typed, species.collect())
        }
        Shape::Text if matches!(line.field.name, "cause" | "why" | "with" | "what" | "causes") => {
            let used = most_used(line.field.name, kind, cx);
            if typed.trim().is_empty() { used.into_iter().take(MOST).collect() } else { fitting(&typed, used) }
        }
        Shape::Text
        | Shape::Count
        | Shape::Number { .. }
        | Shape::Flag
        | Shape::Day
        | Shape::MonthDay
        | Shape::Clock
        | Shape::Word(_)
        | Shape::Spot
        | Shape::Entry
        | Shape::List(_)
        | Shape::Record(_)
        | Shape::Open => Vec::new(),
    }
}

/// Whether a field takes the name of something the entry makes: no name of the book fits.
fn is_new(field: &str, kind: &str) -> bool {
    matches!(
        (kind, field),
        ("sown" | "plants_received" | "relabelled", "tray") | ("lot_received", "lot") | ("bed_set", "bed")
    )
}

/// Every name of one sort in the book.
fn names(name_of: NameOf, cx: &ScreenContext<'_>) -> Vec<String> {
    let picture = &cx.book.picture;
    match name_of {
        NameOf::Tray => {
            let living = picture.trays.values().filter(|tray| tray.standing > 0 || tray.seed > 0);
            living.map(|tray| tray.code.to_string()).collect()
        }
        NameOf::Lot => picture.lots.keys().map(ToString::to_string).collect(),
        NameOf::Bed => picture.beds.keys().map(ToString::to_string).collect(),
        NameOf::Field => {
            let mut fields: Vec<String> = picture.beds.values().map(|bed| bed.field.to_string()).collect();
            fields.dedup();
            fields
        }
        NameOf::Place => picture.site.places.keys().map(ToString::to_string).collect(),
        NameOf::Container => picture.site.containers.keys().map(ToString::to_string).collect(),
    }
}

/// Names that hold what is typed, those that begin with it first; accents and case do not count.
fn fitting(typed: &str, names: Vec<String>) -> Vec<String> {
    let wanted = folded(typed);
    let mut fits: Vec<(bool, String)> = names
        .into_iter()
        .filter(|name| folded(name).contains(&wanted) && folded(name) != wanted)
        .map(|name| (!folded(&name).starts_with(&wanted), name))
        .collect();
    fits.sort();
    fits.dedup();
    fits.into_iter().map(|(_, name)| name).take(MOST).collect()
}

/// Words used for a field before, those used most first, then those to begin with.
fn most_used(field: &str, kind: &str, cx: &ScreenContext<'_>) -> Vec<String> {
    let spanish = cx.wording.lang() == crate::wording::Lang::Es;
    let mut used: BTreeMap<String, u64> = BTreeMap::new();
    for tray in cx.book.picture.trays.values() {
        let accounts = &tray.story.accounts;
        let written = match (kind, field) {
            ("lost", "cause") => &accounts.lost,
            ("culled", "why") => &accounts.culled,
            _ => continue,
        };
        for (word, count) in written {
            *used.entry(word.to_string()).or_default() += *count;
        }
    }
    let mut by_use: Vec<(u64, String)> = used.into_iter().map(|(cause, count)| (count, cause)).collect();
    by_use.sort_by(|a, b| b.0.cmp(&a.0).then_with(|| a.1.cmp(&b.1)));
    let mut words: Vec<String> = by_use.into_iter().map(|(_, word)| word).collect();
    let first: &[&str] = match (kind, spanish) {
        ("lost" | "plants_lost", false) => &FIRST_CAUSES,
        ("lost" | "plants_lost", true) => &FIRST_CAUSES_ES,
        ("culled", false) => &FIRST_CULLS,
        ("culled", true) => &FIRST_CULLS_ES,
        _ => &[],
    };
    for word in first {
        if !words.iter().any(|known| folded(known) == folded(word)) {
            words.push((*word).to_string());
        }
    }
    words
}
