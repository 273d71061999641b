//! The lot that is chosen: how long it lives, what is left, its tests, what was sown from it and what came up, its history.

use super::list::{LotLine, state_mark};
use crate::base::{Day, Range};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::Sheet;
use crate::nursery::entry::subject::Subject;
use crate::reckon::lots::{LotOutlook, lot_outlook};
use crate::reckon::picture::Basis;
use crate::reckon::seed::{LotState, SownFrom, came_up, sown_from};
use crate::reckon::sowing::{SowingAsked, USUAL_SURE};
use crate::reckon::stock::LotStory;

/// Seeds left: a number, "about" a number that rests on a weight, or that nobody knows.
pub(crate) fn left_words(lot: &LotStory, cx: &ScreenContext<'_>) -> String {
    match lot.seeds_left {
        Some(left) if lot.counted || left == 0 => left.to_string(),
        Some(left) => cx.wording.seeds_of_weight(left),
        None => cx.wording.seed_left_unknown(),
    }
}

/// For how many plants it is asked how many to sow.
#[derive(Clone, Debug, Default)]
pub(crate) struct Asked {
    /// Plants; none: the places open in the beds.
    pub(crate) plants: Option<u32>,
    /// As it was typed.
    pub(crate) typed: String,
    /// Whether it is being typed; it then stands on top, where it is seen.
    pub(crate) typing: bool,
}

/// All of it.
pub(crate) fn page(line: &LotLine<'_>, asked: Asked, cx: &ScreenContext<'_>, width: u16) -> Sheet {
    let wording = cx.wording;
    let lot = line.lot;
    let outlook = outlook_of(lot, cx);
    let mut page = Sheet::new(width);
    let labels = wording.lot_labels();
    page.labels(labels.iter().map(String::as_str));
    page.paragraph(&wording.seed_heading(&lot.code, cx.species(lot.species.as_ref())), Ink::Strong);
    if asked.typing {
        how_many(lot, &asked, cx, &mut page);
        page.gap();
    }
    let (mark, ink) = state_mark(line.state);
    page.hanging(&format!("{mark} "), ink, &verdict(line, cx), Ink::Strong);
    page.gap();
    facts(lot, &outlook, cx, &mut page);
    page.heading(&wording.seed_tests());
    tests(line, &outlook, cx, &mut page);
    if !asked.typing {
        how_many(lot, &asked, cx, &mut page);
    }
    page.heading(&wording.seed_sowings());
    sowings(&sown_from(&cx.book.picture, &lot.code), cx, &mut page);
    of_species(lot, cx, &mut page);
    page.heading(&wording.seed_history());
    history(lot, cx, &mut page);
    page
}

fn outlook_of(lot: &LotStory, cx: &ScreenContext<'_>) -> LotOutlook {
    let profile = lot.species.as_ref().and_then(|key| cx.book.picture.site.profile(key));
    lot_outlook(lot, profile.map(|profile| &**profile), cx.day())
}

/// How it stands, in one sentence.
pub(crate) fn verdict(line: &LotLine<'_>, cx: &ScreenContext<'_>) -> String {
    let wording = cx.wording;
    let kept = line.lot.kept.last().map(|spell| wording.kept_name(spell.what));
    let kept = kept.unwrap_or_else(|| wording.basis_name(Basis::Unknown));
    let near = |day: Day| wording.day_beside(day, cx.day());
    let held = line.lot.held.longest_on(cx.day()).map(|held| (&held.what.0, held.what.1));
    match (line.state, &line.life, held) {
        (LotState::UsedUp, ..) => wording.seed_verdict_used_up(),
        (LotState::Held, _, Some((why, Some(until)))) => wording.seed_verdict_held_until(near(until), why),
        (LotState::Held, _, Some((why, None))) => wording.seed_verdict_held(why),
        (LotState::Keeps, Some(life), _) => {
            let days = wording.days(life.days_left(cx.day()));
            wording.seed_verdict_keeps(kept, days, near(life.last_day()))
        }
        (LotState::Ending, Some(life), _) => {
            let days = wording.days(life.days_left(cx.day()));
            wording.seed_verdict_ending(kept, days, near(life.last_day()))
        }
        (LotState::Over, Some(life), _) => wording.seed_verdict_over(near(life.last_day()), near(life.dead_on())),
        (LotState::Dead, Some(life), _) => wording.seed_verdict_dead(near(life.last_day())),
        (LotState::LifeUnknown | LotState::Held, ..)
        | (LotState::Keeps | LotState::Ending | LotState::Over | LotState::Dead, None, _) => {
            wording.seed_verdict_unknown(kept)
        }
    }
}

/// What is left, where it is from, and what it is still worth with its reasons.
fn facts(lot: &LotStory, outlook: &LotOutlook, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let wording = cx.wording;
    let left = match (lot.seeds_in, lot.seeds_left) {
        (Some(seeds), Some(_)) => wording.seed_left_of(left_words(lot, cx), i64::from(seeds)),
        (_, _) => left_words(lot, cx),
    };
    page.labelled(&wording.seed_column_left(), &left);
    if !lot.source.is_empty() {
        page.labelled(&wording.seed_label_source(), &lot.source);
    }
    // What is left stands there already, in the screen's own words.
    for (label, text) in wording.lot_worth_lines(lot, outlook, cx.day()).iter().skip(1) {
        page.labelled(label, text);
    }
}

fn tests(line: &LotLine<'_>, outlook: &LotOutlook, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let wording = cx.wording;
    for test in outlook.tests.iter().rev() {
        page.hanging("- ", Ink::Plain, &wording.lot_test(test), Ink::Plain);
    }
    if outlook.tests.is_empty() {
        page.paragraph(&wording.seed_never_tested(), Ink::Plain);
    }
    if matches!(line.state, LotState::Dead | LotState::UsedUp) {
        return;
    }
    let due = outlook.retest.as_ref().is_ok_and(|retest| retest.on <= cx.day());
    let text = format!("{}: {}", wording.lot_label_retest(), wording.lot_retest(&outlook.retest, cx.day()));
    if due {
        page.hanging("! ", Ink::Waits, &format!("{text} (t)"), Ink::Plain);
    } else {
        page.paragraph(&text, Ink::Plain);
    }
}

/// How many to sow for so many plants: the number, what it rests on, what to prepare.
fn how_many(lot: &LotStory, asked: &Asked, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let wording = cx.wording;
    let species = lot.species.as_ref();
    let told = SowingAsked::of(&cx.book.picture, &cx.book.outlook.stock, species, Some(lot), asked.plants, USUAL_SURE);
    if asked.typing {
        let typed = wording.seed_for_plants(format!("{}_", asked.typed));
        page.heading(&typed);
    }
    let plan = match &told.plan {
        // Seed of which nothing is left is sown no more; where no bed waits for it nothing is asked.
        None => {
            if !asked.typing {
                page.heading(&wording.seed_how_many());
            }
            let said = if told.needed.is_some() { wording.sowing_nothing(&told) } else { wording.seed_none_open() };
            page.paragraph(&said, Ink::Plain);
            return;
        }
        Some(Ok(plan)) => plan,
        Some(Err(why)) => {
            if !asked.typing {
                page.heading(&wording.seed_how_many());
            }
            wording.sowing_for_words(&told).iter().for_each(|said| page.paragraph(said, Ink::Plain));
            page.hanging("x ", Ink::Waits, &wording.sowing_no_plan(why), Ink::Plain);
            return;
        }
    };
    if !asked.typing {
        page.heading(&wording.sowing_heading(plan.wanted.plants));
    }
    if let Some(text) = wording.sowing_for_words(&told) {
        page.paragraph(&text, Ink::Plain);
    }
    page.hanging("> ", Ink::Plain, &wording.sowing_said(plan), Ink::Strong);
    wording.sowing_gross_words(&told).iter().for_each(|text| page.paragraph(text, Ink::Plain));
    for (label, text) in wording.sowing_lines(plan) {
        page.labelled(&label, &text);
    }
}

/// What this nursery knows of the species, and what is coming of it.
fn of_species(lot: &LotStory, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let Some(species) = &lot.species else { return };
    for (heading, lines) in cx.wording.species_lines(species, &cx.book.picture, &cx.book.outlook) {
        page.heading(&format!("{heading}: {}", cx.species(Some(species))));
        lines.iter().for_each(|line| page.hanging("- ", Ink::Plain, line, Ink::Plain));
    }
}

/// A share with its interval, in whole percent.
fn share_words(range: Range, cx: &ScreenContext<'_>) -> String {
    let wording = cx.wording;
    let whole = |share: f64| wording.number((share * 100.0).round(), 0);
    wording.seed_share(whole(range.likely), whole(range.low), whole(range.high))
}

fn sowings(sown: &[SownFrom], cx: &ScreenContext<'_>, page: &mut Sheet) {
    let wording = cx.wording;
    if sown.is_empty() {
        page.paragraph(&wording.seed_not_sown(), Ink::Plain);
        return;
    }
    for from in sown {
        let day = wording.day_beside(from.day, cx.day());
        let seeds = from.seeds.map_or_else(|| wording.seed_unknown_seeds(), |seeds| wording.seeds(seeds));
        let mut text = wording.seed_sown_in(&from.tray, day, seeds, i64::from(from.emerged));
        if from.waiting {
            text.push_str(&format!(", {}", wording.seed_more_may_come()));
        }
        if from.mixed {
            text.push_str(&format!("; {}", wording.seed_with_other_seed()));
        }
        page.hanging("- ", Ink::Plain, &text, Ink::Plain);
    }
    if let Some(came) = came_up(sown) {
        let mut text = wording.seed_came_up_in_all(i64::from(came.seedlings), wording.seeds(came.seeds));
        if let Some(share) = came.share {
            text.push_str(&format!(", {}", share_words(share, cx)));
        }
        page.paragraph(&text, Ink::Strong);
    }
}

fn history(lot: &LotStory, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let wording = cx.wording;
    match cx.book.story_of(&Subject::Lot(lot.code.clone())) {
        None => page.paragraph(&wording.news_waiting(), Ink::Quiet),
        Some(entries) => {
            for entry in entries.iter().rev() {
                let text = wording.entry_sentence_beside(entry, cx.day(), &cx.book.picture.site.species);
                page.hanging("- ", Ink::Plain, &text, Ink::Plain);
            }
        }
    }
}
