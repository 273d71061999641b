//! Sentences that several parts of the screen say.

use crate::base::Day;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::Sheet;
use crate::reckon::field::waits_for;
use crate::reckon::loading::{self, LoadLine, LoadWarning};
use crate::reckon::picture::Criterion;
use crate::wording::verdict::About;

/// A day near the one looked at.
pub(super) fn near(day: Day, cx: &ScreenContext<'_>) -> String {
    cx.wording.day_beside(day, cx.day())
}

/// A reason, with the day it is expected to end.
pub(super) fn reason(criterion: &Criterion, about: About, cx: &ScreenContext<'_>) -> String {
    let text = cx.wording.reason(criterion, about);
    // A reason that names the day itself is not told it twice.
    let named = |day: &Day| text.contains(&cx.wording.day(*day)) || text.contains(&near(*day, cx));
    match criterion.expected.filter(|day| *day > cx.day() && !named(day)) {
        Some(day) => format!("{text} · {}", cx.wording.comes_from(near(day, cx))),
        None => text,
    }
}

/// The first thing that holds back, and how many more there are.
pub(super) fn first_reason(criteria: &[Criterion], about: About, cx: &ScreenContext<'_>) -> String {
    let waits = waits_for(criteria, cx.day());
    match waits.as_slice() {
        [] => cx.wording.bed_nothing_waits(),
        [only] => reason(only, about, cx),
        [first, more @ ..] => {
            format!("{} · {}", reason(first, about, cx), cx.wording.more_reasons(more.len() as i64))
        }
    }
}

/// The mark of what holds back: `?` only unknown things, `x` something known.
pub(super) fn waits_mark(criteria: &[Criterion]) -> (&'static str, Ink) {
    let known = criteria.iter().any(|criterion| criterion.blocks && criterion.met().is_some());
    if known { ("x", Ink::Waits) } else { ("?", Ink::Waits) }
}

/// A warning in words.
pub(super) fn warning(warning: &LoadWarning, cx: &ScreenContext<'_>) -> String {
    let wording = cx.wording;
    match warning {
        LoadWarning::TrayPromised { tray, listed, plantable, standing } => {
            wording.load_tray_promised(tray, *listed, *plantable, *standing)
        }
        LoadWarning::BedPromised { bed, species, listed, open } => {
            wording.load_bed_promised(bed, cx.species(Some(species)), *listed, *open)
        }
        LoadWarning::FitsNot { tray, bed } => {
            let pair = cx.book.picture.pair(tray, bed);
            let why = pair.map(|pair| first_reason(&pair.criteria, About::Pair, cx)).unwrap_or_default();
            wording.load_fits_not(tray, bed, why)
        }
        LoadWarning::Gone { tray, bed } => wording.load_gone(tray, bed),
    }
}

/// The list in words, bed by bed: how many of what from which tray, and where the tray stands.
pub(super) fn by_bed(lines: &[LoadLine], cx: &ScreenContext<'_>, page: &mut Sheet) {
    let wording = cx.wording;
    for (bed, here, sum) in loading::by_bed(lines) {
        page.paragraph(&wording.load_bed_sum(bed, i64::from(sum)), Ink::Strong);
        for line in here {
            page.hanging("  - ", Ink::Plain, &line_words(line, cx), Ink::Plain);
        }
    }
}

/// One line of the list: how many of what from which tray, and where it stands.
pub(super) fn line_words(line: &LoadLine, cx: &ScreenContext<'_>) -> String {
    let tray = cx.book.picture.trays.get(&line.tray);
    let species = cx.species(tray.and_then(|tray| tray.species.as_ref()));
    let plants = i64::from(line.plants);
    match tray.and_then(|tray| tray.place.as_ref()) {
        Some(place) => cx.wording.load_line_at(plants, species, &line.tray, place),
        None => cx.wording.load_line(plants, species, &line.tray),
    }
}
