//! The lot that is chosen: how long it lives, what is left, its tests, what was sown from it and what came up, its history.

use super::list::{LotLine, state_mark};
use crate::base::{Day, Range};
use crate::dashboard::layer::WhyOf;
use crate::dashboard::look::Ink;
use crate::dashboard::model::On;
use crate::dashboard::parts::Page;
use crate::nursery::entry::subject::Subject;
use crate::reckon::picture::Basis;
use crate::reckon::seed::{LotState, SownFrom, came_up, germinated, of_the_rest, replicate_counts, sown_from};
use crate::reckon::stock::{LotStory, LotTest};

/// Seeds left: a number, "about" a number that rests on a weight, or that nobody knows.
pub fn left_words(lot: &LotStory, on: &On<'_>) -> String {
    match lot.seeds_left {
        Some(left) if lot.counted || left == 0 => left.to_string(),
        Some(left) => on.wording.seed_about(i64::from(left)),
        None => on.wording.seed_left_unknown(),
    }
}

/// All of it.
pub fn page(line: &LotLine<'_>, on: &On<'_>, width: u16) -> Page {
    let wording = on.wording;
    let lot = line.lot;
    let mut page = Page::new(width);
    page.paragraph(&wording.seed_heading(&lot.code, on.species(lot.species.as_ref())), Ink::Strong);
    let (mark, ink) = state_mark(line.state);
    page.hanging(&format!("{mark} "), ink, &verdict(line, on), Ink::Strong);
    page.gap();
    facts(line, on, &mut page);
    page.heading(&wording.seed_tests());
    tests(line, on, &mut page);
    page.heading(&wording.seed_sowings());
    sowings(&sown_from(&on.book.picture, &lot.code), on, &mut page);
    expectations(lot, on, &mut page);
    page.heading(&wording.seed_history());
    history(lot, on, &mut page);
    page
}

/// How it stands, in one sentence.
pub fn verdict(line: &LotLine<'_>, on: &On<'_>) -> String {
    let wording = on.wording;
    let kept = line.lot.kept.last().map(|spell| wording.kept_name(spell.what));
    let kept = kept.unwrap_or_else(|| wording.basis_name(Basis::Unknown));
    let near = |day: Day| wording.day_beside(day, on.day());
    let held = line.lot.held.as_ref().map(|held| (&held.what.0, held.what.1));
    match (line.state, &line.life, held) {
        (LotState::UsedUp, ..) => wording.seed_verdict_used_up(),
        (LotState::Held, _, Some((why, Some(until)))) => wording.seed_verdict_held_until(near(until), why),
        (LotState::Held, _, Some((why, None))) => wording.seed_verdict_held(why),
        (LotState::Keeps, Some(life), _) => {
            let days = wording.days(life.days_left(on.day()));
            wording.seed_verdict_keeps(kept, days, near(life.last_day()))
        }
        (LotState::Ending, Some(life), _) => {
            let days = wording.days(life.days_left(on.day()));
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

fn facts(line: &LotLine<'_>, on: &On<'_>, page: &mut Page) {
    let (lot, wording) = (line.lot, on.wording);
    let near = |day: Day| wording.day_beside(day, on.day());
    let left = match (lot.seeds_in, lot.seeds_left) {
        (Some(seeds), Some(_)) => wording.seed_left_of(left_words(lot, on), i64::from(seeds)),
        (_, _) => left_words(lot, on),
    };
    let mut facts = vec![(wording.seed_column_left(), left)];
    if !lot.source.is_empty() {
        facts.push((wording.seed_label_source(), lot.source.clone()));
    }
    facts.extend(lot.collected.map(|day| {
        let days = wording.days(on.day().days_since(day));
        (wording.seed_column_collected(), wording.trays_sown(near(day), days))
    }));
    if let Some(spell) = lot.kept.last() {
        let kept = wording.seed_kept_since(wording.kept_name(spell.what), near(spell.from));
        facts.push((wording.seed_column_kept(), kept));
    }
    if let Some(life) = &line.life {
        let days = wording.seed_lives(wording.days(life.days), near(life.last_day()));
        facts.push((wording.seed_label_lives(), days));
        facts.push((wording.label_source(), wording.source_words(&life.source)));
    }
    page.labels(facts.iter().map(|(label, _)| label.as_str()));
    for (label, said) in &facts {
        page.labelled(label, said);
    }
}

fn tests(line: &LotLine<'_>, on: &On<'_>, page: &mut Page) {
    let wording = on.wording;
    for test in line.lot.tests.iter().rev() {
        page.hanging("- ", Ink::Plain, &test_words(test, on), Ink::Plain);
    }
    if line.lot.tests.is_empty() {
        page.paragraph(&wording.seed_never_tested(), Ink::Plain);
    }
    let due = line.test_due_from(on).filter(|_| !matches!(line.state, LotState::Dead | LotState::UsedUp));
    match due {
        Some(day) if day <= on.day() => page.hanging("! ", Ink::Waits, &wording.seed_test_due(), Ink::Plain),
        Some(day) => page.paragraph(&wording.seed_test_due_from(wording.day_beside(day, on.day())), Ink::Plain),
        None => {}
    }
}

/// "12 Nov: 6 of 50 germinated in 70 days, 12 % (95 % sure: 6 to 24 %); by replicate 4/25, 2/25".
fn test_words(test: &LotTest, on: &On<'_>) -> String {
    let wording = on.wording;
    let day = wording.day_beside(test.day, on.day());
    let (laid, up) = replicate_counts(test);
    let mut said = wording.seed_test(day, up, laid, wording.days(test.days));
    if let Some(range) = germinated(test) {
        said.push_str(&format!(", {}", share_words(range, on)));
    }
    if test.replicates.len() > 1 {
        let each: Vec<String> = test.replicates.iter().map(|(seeds, up)| format!("{up}/{seeds}")).collect();
        said.push_str(&format!("; {}", wording.seed_by_replicate(each.join(", "))));
    }
    said
}

/// A share with its interval, in whole percent.
fn share_words(range: Range, on: &On<'_>) -> String {
    let wording = on.wording;
    let whole = |share: f64| wording.number((share * 100.0).round(), 0);
    wording.seed_share(whole(range.likely), whole(range.low), whole(range.high))
}

fn sowings(sown: &[SownFrom], on: &On<'_>, page: &mut Page) {
    let wording = on.wording;
    if sown.is_empty() {
        page.paragraph(&wording.seed_not_sown(), Ink::Plain);
        return;
    }
    for from in sown {
        let day = wording.day_beside(from.day, on.day());
        let seeds = from.seeds.map_or_else(|| wording.seed_unknown_seeds(), |seeds| wording.seeds(seeds));
        let mut said = wording.seed_sown_in(&from.tray, day, seeds, i64::from(from.emerged));
        if from.waiting {
            said.push_str(&format!(", {}", wording.seed_more_may_come()));
        }
        if from.mixed {
            said.push_str(&format!("; {}", wording.seed_with_other_seed()));
        }
        page.hanging("- ", Ink::Plain, &said, Ink::Plain);
    }
    if let Some(came) = came_up(sown) {
        let mut said = wording.seed_came_up_in_all(i64::from(came.seedlings), wording.seeds(came.seeds));
        if let Some(share) = came.share {
            said.push_str(&format!(", {}", share_words(share, on)));
        }
        page.paragraph(&said, Ink::Strong);
    }
}

/// Numbers to come. Whatever is forecast of a lot, and how much of it to sow, stands here.
fn expectations(lot: &LotStory, on: &On<'_>, page: &mut Page) {
    let Some((seedlings, tested)) = of_the_rest(lot) else { return };
    let wording = on.wording;
    page.heading(&wording.trays_expected());
    let tested = wording.day_beside(tested, on.day());
    page.paragraph(&wording.seed_of_the_rest(wording.plants_range(seedlings), tested), Ink::Plain);
}

fn history(lot: &LotStory, on: &On<'_>, page: &mut Page) {
    let wording = on.wording;
    match on.book.story_of(&Subject::Lot(lot.code.clone())) {
        None => page.paragraph(&wording.news_waiting(), Ink::Quiet),
        Some(entries) => {
            for entry in entries.iter().rev() {
                let said = wording.entry_sentence_beside(entry, on.day(), &on.book.picture.site.species);
                page.hanging("- ", Ink::Plain, &said, Ink::Plain);
            }
        }
    }
}

/// Where the days of life come from, and the entries they rest on; none where they are not known.
pub fn why_life(line: &LotLine<'_>, on: &On<'_>) -> Option<WhyOf> {
    let life = line.life.as_ref()?;
    let wording = on.wording;
    let last = wording.day_beside(life.last_day(), on.day());
    let kept = wording.seed_kept_since(wording.kept_name(life.kept), wording.day_beside(life.from, on.day()));
    let mut entries = vec![life.entry.clone()];
    entries.extend(line.lot.tests.iter().rev().map(|test| test.entry.clone()));
    Some(WhyOf::Figure {
        name: wording.seed_why_life(&line.lot.code),
        value: format!("{}; {kept}", wording.seed_lives(wording.days(life.days), last)),
        basis: Basis::Assumed,
        source: Some(life.source.clone()),
        entries,
    })
}
