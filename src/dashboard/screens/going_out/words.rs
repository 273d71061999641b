//! Sentences that several parts of the screen say.

use crate::base::Day;
use crate::dashboard::context::On;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::Page;
use crate::reckon::field::waits_for;
use crate::reckon::loading::{self, LoadLine, LoadWarning};
use crate::reckon::picture::Criterion;
use crate::wording::verdict::About;

/// A day near the one looked at.
pub(super) fn near(day: Day, on: &On<'_>) -> String {
    on.wording.day_beside(day, on.day())
}

/// A reason, with the day it is expected to end.
pub(super) fn reason(criterion: &Criterion, about: About, on: &On<'_>) -> String {
    let said = on.wording.reason(criterion, about);
    // A reason that names the day itself is not told it twice.
    let named = |day: &Day| said.contains(&on.wording.day(*day)) || said.contains(&near(*day, on));
    match criterion.expected.filter(|day| *day > on.day() && !named(day)) {
        Some(day) => format!("{said} · {}", on.wording.comes_from(near(day, on))),
        None => said,
    }
}

/// The first thing that holds back, and how many more there are.
pub(super) fn first_reason(criteria: &[Criterion], about: About, on: &On<'_>) -> String {
    let waits = waits_for(criteria);
    match waits.as_slice() {
        [] => on.wording.bed_nothing_waits(),
        [only] => reason(only, about, on),
        [first, more @ ..] => {
            format!("{} · {}", reason(first, about, on), on.wording.more_reasons(more.len() as i64))
        }
    }
}

/// The mark of what holds back: `?` only unknown things, `x` something known.
pub(super) fn waits_mark(criteria: &[Criterion]) -> (&'static str, Ink) {
    let known = criteria.iter().any(|criterion| criterion.blocks && criterion.met.is_some());
    if known { ("x", Ink::Waits) } else { ("?", Ink::Waits) }
}

/// A warning in words.
pub(super) fn warning(warning: &LoadWarning, on: &On<'_>) -> String {
    let wording = on.wording;
    match warning {
        LoadWarning::TrayPromised { tray, listed, plantable, standing } => {
            wording.load_tray_promised(tray, *listed, *plantable, *standing)
        }
        LoadWarning::BedPromised { bed, species, listed, open } => {
            wording.load_bed_promised(bed, on.species(Some(species)), *listed, *open)
        }
        LoadWarning::FitsNot { tray, bed } => {
            let pair = on.book.picture.pair(tray, bed);
            let why = pair.map(|pair| first_reason(&pair.criteria, About::Pair, on)).unwrap_or_default();
            wording.load_fits_not(tray, bed, why)
        }
        LoadWarning::Gone { tray, bed } => wording.load_gone(tray, bed),
    }
}

/// The list in words, bed by bed: how many of what from which tray, and where the tray stands.
pub(super) fn by_bed(lines: &[LoadLine], on: &On<'_>, page: &mut Page) {
    let wording = on.wording;
    for (bed, here, sum) in loading::by_bed(lines) {
        page.paragraph(&wording.load_bed_sum(bed, i64::from(sum)), Ink::Strong);
        for line in here {
            page.hanging("  - ", Ink::Plain, &line_words(line, on), Ink::Plain);
        }
    }
}

/// One line of the list: how many of what from which tray, and where it stands.
pub(super) fn line_words(line: &LoadLine, on: &On<'_>) -> String {
    let tray = on.book.picture.trays.get(&line.tray);
    let species = on.species(tray.and_then(|tray| tray.species.as_ref()));
    let plants = i64::from(line.plants);
    match tray.and_then(|tray| tray.place.as_ref()) {
        Some(place) => on.wording.load_line_at(plants, species, &line.tray, place),
        None => on.wording.load_line(plants, species, &line.tray),
    }
}
