//! What a lot is still worth, what is known and coming of a species, and how many seeds to sow.

use super::care::{Care, due_at_lot, say_due};
use super::{Asked, Facts, Mark, Page, Tone};
use crate::base::SpeciesKey;
use crate::nursery::caution::Caution;
use crate::reckon::forecast::Outlook;
use crate::reckon::lots::LotOutlook;
use crate::reckon::round::{Round, Stop};
use crate::reckon::sowing::SowingAsked;
use crate::reckon::stock::LotStory;

/// What a lot is still worth, what is due there but for a stop that is told already, its tests, and how many of it to sow.
pub(crate) fn why_lot(
    lot: &LotStory,
    outlook: &LotOutlook,
    sowing: &SowingAsked,
    (round, told): (&Round, Option<&Stop>),
    asked: Asked<'_>,
) -> Page {
    let (wording, day) = (asked.wording, asked.picture.day);
    let mut page = Page::with_labels(wording.lot_labels());
    page.heading(wording.lot_heading(&lot.code, asked.species(lot.species.as_ref())));
    let (good, text) = wording.lot_verdict(outlook, day);
    page.verdict(good, text);
    let mut pairs = asked.dangers(lot.species.as_slice());
    pairs.extend(wording.lot_worth_lines(lot, outlook, day));
    pairs.extend(wording.lot_sown_lines(lot, asked.picture));
    page.facts(Facts { pairs, rest: wording.lot_reckoned_lines(outlook), entries: Vec::new() });
    let mut care = Care::said_of(told);
    let others = due_at_lot(&lot.code, round).filter(|stop| told.is_none_or(|told| told.id != stop.id));
    say_due(others, &mut care, asked, &mut page);
    care.say_whole([], asked, &mut page);
    page.gap();
    let rest = vec![(wording.label_source(), wording.lot_retest_source())];
    page.facts(Facts { pairs: wording.lot_test_lines(outlook, day), rest, entries: Vec::new() });
    how_many(sowing, care, asked, &mut page);
    page
}

/// What is known and coming of a species, and how many seeds to sow where there is no lot.
pub(crate) fn why_species(key: &SpeciesKey, outlook: &Outlook, sowing: &SowingAsked, asked: Asked<'_>) -> Page {
    let mut page = Page::with_labels(asked.wording.lot_labels());
    page.heading(asked.species(Some(key)));
    how_many(sowing, Care::default(), asked, &mut page);
    for (heading, lines) in asked.wording.species_lines(key, asked.picture, outlook) {
        page.heading(heading);
        lines.into_iter().for_each(|line| page.line(1, line, Tone::Plain));
    }
    page
}

/// How many to sow: for whom, the number, what it rests on.
fn how_many(sowing: &SowingAsked, mut care: Care, asked: Asked<'_>, page: &mut Page) {
    let wording = asked.wording;
    let for_whom = wording.sowing_for_words(sowing);
    match &sowing.plan {
        None => {
            page.gap();
            page.sentence(wording.sowing_nothing(sowing));
        }
        Some(Err(why)) => {
            page.gap();
            for_whom.into_iter().for_each(|text| page.line(2, text, Tone::Plain));
            page.verdict(false, wording.sowing_no_plan(why));
        }
        Some(Ok(plan)) => {
            page.heading(wording.sowing_heading(plan.wanted.plants));
            for_whom.into_iter().for_each(|text| page.line(2, text, Tone::Plain));
            let number = Mark::Sign(">".to_string(), Tone::Plain);
            page.marked(1, number, wording.sowing_said(plan), Tone::Strong);
            wording.sowing_gross_words(sowing).into_iter().for_each(|text| page.line(2, text, Tone::Plain));
            let (pairs, rest) = (wording.sowing_lines(plan), vec![wording.sowing_formula_line()]);
            page.facts(Facts { pairs, rest, entries: Vec::new() });
            care.say_whole([Caution::Sowing], asked, page);
        }
    }
}
