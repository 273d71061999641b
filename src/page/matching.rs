//! The plan of going out: week by week and bed by bed what to load, then what stays behind or empty, and what one more would bring.

use std::collections::BTreeMap;

use super::{Asked, Page, Tone};
use crate::base::day::WEEK_DAYS;
use crate::base::{BedName, SpeciesKey};
use crate::reckon::matching::{Cause, Empty, LeftBehind, Load, More, OneMore, Plan, Proof};
use crate::reckon::picture::Rule;
use crate::wording::verdict::About;

/// Rows of what stays behind and of what stays empty; the rest is counted. Ours.
const MOST_ROWS: usize = 12;

/// Rows of what one more would bring. Ours.
const MOST_MORE: usize = 5;

/// The plan as a page.
pub(crate) fn matching(plan: &Plan, asked: Asked<'_>) -> Page {
    let mut page = Page::default();
    begin(plan, asked, &mut page);
    for week in 1..=plan.weeks {
        let loads: Vec<&Load> = plan.loads.iter().filter(|load| load.week == week).collect();
        if !loads.is_empty() {
            page.heading(week_of(plan, week, asked));
            of_week(&loads, asked, &mut page);
        }
    }
    let mut species: Vec<SpeciesKey> = plan.loads.iter().map(|load| load.species.clone()).collect();
    species.sort();
    species.dedup();
    let dangers = asked.dangers(&species);
    if !dangers.is_empty() {
        page.gap();
        page.facts(dangers);
    }
    let left: Vec<(String, String)> =
        plan.left_behind.iter().map(|one| (one.tray.to_string(), left_behind(one, asked))).collect();
    rows(asked.wording.match_left_heading(), left, asked, &mut page);
    let empty = |one: &Empty| {
        let species = asked.species(Some(&one.species));
        (asked.wording.match_bed_species(&one.bed, species), empty(one, asked))
    };
    rows(asked.wording.match_empty_heading(), plan.empty.iter().map(empty).collect(), asked, &mut page);
    if !plan.one_more.is_empty() {
        page.heading(asked.wording.match_more_heading());
        plan.one_more.iter().take(MOST_MORE).for_each(|more| page.item(one_more(plan, more, asked)));
    }
    page
}

fn begin(plan: &Plan, asked: Asked<'_>, page: &mut Page) {
    let wording = asked.wording;
    let plants = plan.loads.iter().map(|load| load.plants).fold(0, u32::saturating_add);
    if plants == 0 {
        page.verdict(false, wording.match_nothing());
    } else {
        let day = wording.day(plan.on);
        page.verdict(true, wording.match_heading(i64::from(plants), plan.loads.len(), plan.weeks, day));
        page.sentence(wording.match_living(wording.number(plan.living.floor(), 0)));
        match plan.proof {
            Proof::Proven | Proof::Nothing => page.sentence(wording.match_proven()),
            Proof::BestSoFar { at_most } => page.sentence(wording.match_best_so_far(i64::from(at_most))),
        }
    }
    if plan.given_up.0 > 0 && plan.given_up.1 > 0 {
        page.sentence(wording.match_given_up(plan.given_up.0, plan.given_up.1));
    }
    match plan.hands {
        Some((day, week)) => page.sentence(wording.match_hands(day, week)),
        None => page.sentence(wording.match_no_hands()),
    }
}

fn week_of(plan: &Plan, week: u32, asked: Asked<'_>) -> String {
    let first = plan.on.plus((week as i32 - 1) * WEEK_DAYS);
    let near = |day| asked.wording.day_beside(day, plan.on);
    asked.wording.match_week(near(first), near(first.plus(WEEK_DAYS - 1)))
}

fn of_week(loads: &[&Load], asked: Asked<'_>, page: &mut Page) {
    let mut by_bed: BTreeMap<&BedName, Vec<&Load>> = BTreeMap::new();
    loads.iter().for_each(|load| by_bed.entry(&load.bed).or_default().push(load));
    for (bed, loads) in by_bed {
        page.line(0, bed.to_string(), Tone::Strong);
        for load in loads {
            page.line(1, load_text(load, asked), Tone::Plain);
            if !load.first.is_empty() {
                page.line(2, asked.wording.match_first(before(&load.first, asked)), Tone::Waits);
            }
        }
    }
}

fn load_text(load: &Load, asked: Asked<'_>) -> String {
    let (wording, species) = (asked.wording, asked.species(Some(&load.species)));
    let plants = wording.plants(load.plants);
    let text = wording.match_load_from(&load.tray, species, plants, wording.short_day(load.from));
    if load.pinned { format!("{text} ({})", wording.match_pinned()) } else { text }
}

/// The names of what has to be done before.
fn before(first: &[Rule], asked: Asked<'_>) -> String {
    first.iter().map(|rule| asked.wording.rule_name(*rule)).collect::<Vec<_>>().join(", ")
}

fn rows(heading: String, rows: Vec<(String, String)>, asked: Asked<'_>, page: &mut Page) {
    if rows.is_empty() {
        return;
    }
    let more = rows.len().saturating_sub(MOST_ROWS);
    page.heading(heading);
    rows.into_iter().take(MOST_ROWS).for_each(|(name, text)| page.led(name, text));
    if more > 0 {
        page.line(1, asked.wording.ready_more(more as i64), Tone::Plain);
    }
}

/// What holds plants or positions, in words.
pub(crate) fn cause_in_words(cause: &Cause, of_bed: bool, asked: Asked<'_>) -> String {
    let wording = asked.wording;
    match cause {
        Cause::Question(criterion) => wording.reason(criterion, if of_bed { About::Bed } else { About::Pair }),
        Cause::NoBed => wording.match_cause_no_bed(),
        Cause::Work if of_bed => wording.match_cause_work_of_bed(),
        Cause::Work => wording.match_cause_work(),
        Cause::Positions => wording.match_cause_positions(),
        Cause::Window if of_bed => wording.match_cause_window_of_bed(),
        Cause::Window => wording.match_cause_window(),
        Cause::Stock => wording.match_cause_stock(),
        Cause::LeastLoad => wording.match_cause_least_load(),
        Cause::ByHand => wording.match_cause_by_hand(),
    }
}

/// Plants of a tray that stay behind, and why.
pub(crate) fn left_behind(one: &LeftBehind, asked: Asked<'_>) -> String {
    let cause = cause_in_words(&one.cause, false, asked);
    let cause = match &one.bed {
        Some(bed) => asked.wording.in_bed(bed, cause),
        None => cause,
    };
    asked.wording.match_left(asked.wording.plants(one.plants), cause)
}

/// Positions that stay empty, and why.
pub(crate) fn empty(one: &Empty, asked: Asked<'_>) -> String {
    let positions = asked.wording.match_positions(i64::from(one.positions));
    asked.wording.match_left(positions, cause_in_words(&one.cause, true, asked))
}

/// What one more would bring.
pub(crate) fn one_more(plan: &Plan, more: &OneMore, asked: Asked<'_>) -> String {
    let (wording, plants) = (asked.wording, i64::from(more.plants));
    match &more.of {
        More::PlantingDay { week } => {
            let day = plan.on.plus((*week as i32 - 1) * WEEK_DAYS);
            wording.match_more_day(plants, wording.day_beside(day, plan.on))
        }
        More::Positions { bed, species, positions } => {
            wording.match_more_positions(plants, *positions, bed, asked.species(Some(species)))
        }
    }
}
