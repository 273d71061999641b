//! The tray that is chosen: its verdict and reasons, where it could go, what to expect, its drawings, its history.

use super::charts::{self, Drawing};
use super::going::where_to;
use crate::base::Day;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::{Ink, answered_mark, stage_mark};
use crate::dashboard::parts::Sheet;
use crate::nursery::entry::subject::Subject;
use crate::reckon::forecast::Judgement;
use crate::reckon::growth::tray_growth;
use crate::reckon::picture::answered::pressing_first;
use crate::reckon::picture::{Criterion, DaySpread, Rule, Stage, TrayPicture};
use crate::reckon::seed::{emerged, own_sowings};
use crate::wording::verdict::About;

/// Lines of a drawing.
const DRAWING_LINES: u16 = 8;
/// A drawing is at most so wide.
const DRAWING_COLUMNS: u16 = 64;

/// All of it.
pub(crate) fn page(tray: &TrayPicture, cx: &ScreenContext<'_>, width: u16) -> Sheet {
    let wording = cx.wording;
    let mut page = Sheet::new(width);
    page.labels([
        wording.label_standing().as_str(),
        wording.label_plantable().as_str(),
        wording.label_ready_from().as_str(),
        wording.label_best_before().as_str(),
        wording.trays_label_container().as_str(),
        wording.trays_label_sown().as_str(),
    ]);
    page.paragraph(&wording.why_tray_heading(&tray.code, cx.species(tray.species.as_ref())), Ink::Strong);
    let (mark, ink) = stage_mark(tray.stage);
    page.hanging(&format!("{mark} "), ink, &verdict(tray, cx), Ink::Strong);
    if let Some(text) = sowing_is_failing(tray, cx) {
        page.hanging("! ", Ink::Danger, &text, Ink::Strong);
    }
    page.gap();
    facts(tray, cx, &mut page);
    let asked = |page: &mut Sheet| {
        if !tray.criteria.is_empty() && tray.stage != Stage::Spent {
            page.heading(&wording.trays_reasons());
            reasons(&tray.criteria, cx, page);
            page.heading(&wording.trays_where_to());
            where_to(tray, cx, page);
        }
    };
    // While seed is awaited, what will come of it is asked first.
    if tray.story.seed_is_due(cx.day()) {
        expectations(tray, cx, &mut page);
        drawings(tray, cx, &mut page);
        asked(&mut page);
    } else {
        asked(&mut page);
        expectations(tray, cx, &mut page);
        drawings(tray, cx, &mut page);
    }
    page.heading(&wording.trays_history());
    history(tray, cx, &mut page);
    page
}

/// The verdict in one sentence.
pub(crate) fn verdict(tray: &TrayPicture, cx: &ScreenContext<'_>) -> String {
    let wording = cx.wording;
    if tray.stage == Stage::Spent {
        return wording.trays_verdict_empty();
    }
    if tray.ready {
        let plants = wording.plants_range(tray.plantable);
        return match tray.best_before {
            Some(day) => wording.trays_verdict_ready_before(plants, wording.day_beside(day, cx.day())),
            None => wording.trays_verdict_ready(plants),
        };
    }
    let mut blocking = tray.criteria.iter().filter(|criterion| criterion.blocks);
    let late = tray.criteria.iter().find(|criterion| criterion.rule() == Rule::DaysInContainer && criterion.blocks);
    let first = late.filter(|_| tray.stage == Stage::Overdue).or_else(|| blocking.next());
    let Some(first) = first else { return wording.trays_verdict_waits() };
    let reason = wording.reason(first, About::Tray);
    let from = tray.ready_from.or(tray.not_before()).filter(|day| *day > cx.day());
    match (tray.stage, from.filter(|_| !says_its_day(first.rule()))) {
        (Stage::Overdue, _) => wording.trays_verdict_overdue(reason),
        (_, Some(day)) => wording.trays_verdict_not_before(wording.day_beside(day, cx.day()), reason),
        (_, None) => wording.trays_verdict_not(reason),
    }
}

/// That a sowing fails, and until when it can be made again; nothing of one that does not, or is cleared away.
fn sowing_is_failing(tray: &TrayPicture, cx: &ScreenContext<'_>) -> Option<String> {
    let (wording, outlook) = (cx.wording, &cx.book.outlook);
    let told = outlook.trays.get(&tray.code).filter(|_| tray.seed > 0)?;
    if told.judgement != Judgement::Failing {
        return None;
    }
    let by = outlook.again.get(&tray.code).and_then(|again| again.sow_by()).filter(|by| *by >= cx.day());
    Some(match by {
        Some(by) => wording.trays_failing_sow_by(told.emerged, told.seeds, wording.day_beside(by, cx.day())),
        None => wording.trays_failing(told.emerged, told.seeds),
    })
}

/// Whether the reason of a rule names the day on which it ends itself.
fn says_its_day(rule: Rule) -> bool {
    matches!(rule, Rule::Held | Rule::Treated)
}

fn facts(tray: &TrayPicture, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let wording = cx.wording;
    let near = |day: Day| wording.day_beside(day, cx.day());
    let (mark, ink) = stage_mark(tray.stage);
    page.labelled_in(&wording.label_stage(), format!("{mark} {}", wording.stage_name(tray.stage)).trim(), ink);
    let standing = wording.plants(tray.standing);
    let standing = match tray.counted_on {
        Some(day) => wording.trays_counted(standing, near(day)),
        None => wording.trays_never_counted(standing),
    };
    page.labelled(&wording.label_standing(), &standing);
    if tray.standing > 0 {
        let range = wording.plants_range(tray.plantable);
        let plantable = wording.known_how(range, wording.basis_name(tray.plantable_basis));
        page.labelled(&wording.label_plantable(), &plantable);
    }
    if let Some(place) = &tray.place {
        page.labelled(&wording.label_place(), place.as_str());
    }
    if let Some(share) = tray.light_share {
        page.labelled(&wording.label_light(), &wording.trays_light(wording.light_of_tray(share, tray.light_changed)));
    }
    if let Some(spell) = tray.story.container()
        && let Some(container) = &spell.what
    {
        let days = i64::from(cx.day().days_since(spell.from));
        page.labelled(&wording.trays_label_container(), &wording.trays_in_container(container, wording.days(days)));
    }
    if let Some(sown) = tray.sown_on {
        let lots: Vec<String> = tray.lots.iter().map(ToString::to_string).collect();
        let text = match (lots.is_empty(), tray.age_days) {
            (false, Some(age)) => wording.trays_sown_from(near(sown), wording.days(age), lots.join(", ")),
            (_, Some(age)) => wording.trays_sown(near(sown), wording.days(age)),
            (_, None) => near(sown),
        };
        page.labelled(&wording.trays_label_sown(), &text);
    }
}

/// The questions of the verdict, those that hold the tray back first.
fn reasons(criteria: &[Criterion], cx: &ScreenContext<'_>, page: &mut Sheet) {
    for criterion in pressing_first(criteria) {
        let (mark, ink) = answered_mark(criterion.answered());
        let mut text = cx.wording.reason(criterion, About::Tray);
        let to_come =
            criterion.expected.filter(|day| criterion.blocks && *day > cx.day() && !says_its_day(criterion.rule()));
        if let Some(day) = to_come {
            text.push_str(&format!(" · {}", cx.wording.comes_from(cx.wording.day_beside(day, cx.day()))));
        }
        page.hanging(&format!("{mark} "), ink, &text, Ink::Plain);
    }
}

/// Dates and numbers to come. Whatever is forecast of a tray stands here, each with how early, how late, how many.
fn expectations(tray: &TrayPicture, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let wording = cx.wording;
    let mut coming: Vec<(String, String)> = Vec::new();
    let mut dated = |label: String, day: Option<Day>, spread: Option<DaySpread>| {
        coming.extend(day_words(day, spread, cx).map(|text| (label, text)));
    };
    if tray.stage != Stage::Spent {
        dated(wording.label_ready(tray), tray.ready_from, tray.ready_spread);
        dated(wording.label_best_before(), tray.best_before, tray.best_before_spread);
    }
    let not_before = tray.not_before().filter(|day| *day > cx.day() && tray.ready_from.is_none());
    if let Some(day) = not_before.filter(|_| tray.stage != Stage::Spent) {
        let day = wording.day_beside(day, cx.day());
        coming.insert(0, (wording.label_ready_from(), wording.trays_not_before(day)));
    }
    let sown: Option<u32> = own_sowings(&tray.story)
        .iter()
        .try_fold(0u32, |sum, sowing| Some(sum.saturating_add(sowing.seeds?)))
        .filter(|seeds| *seeds > 0);
    if let Some(seeds) = sown {
        coming.push((wording.trays_label_up(), wording.trays_up_of(emerged(&tray.story), wording.seeds(seeds))));
    }
    coming.extend(wording.forecast_lines(&tray.code, &cx.book.picture, &cx.book.outlook, &cx.book.round.worth_looking));
    // All that is known of the species stands behind y; here only the days, by handbook and by this nursery.
    coming.extend(wording.known_here_lines(&tray.code, &cx.book.picture, &cx.book.outlook).into_iter().take(1));
    if tray.standing > 0 {
        let profile = tray.species.as_ref().and_then(|key| cx.book.picture.site.profile(key));
        let growth = tray_growth(&tray.story, profile.map(|profile| &**profile), cx.day());
        coming.extend(wording.growth_lines(&growth));
    }
    if coming.is_empty() {
        return;
    }
    page.heading(&wording.trays_expected());
    page.labels(coming.iter().map(|(label, _)| label.as_str()));
    for (label, text) in &coming {
        page.labelled(label, text);
    }
}

/// A day with how early and late it may be.
fn day_words(day: Option<Day>, spread: Option<DaySpread>, cx: &ScreenContext<'_>) -> Option<String> {
    cx.wording.day_spread(day, spread, |day| cx.wording.day_beside(day, cx.day()))
}

fn drawings(tray: &TrayPicture, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let all = [charts::emergence(tray, cx), charts::standing(tray, cx), charts::heights(tray, cx)];
    all.into_iter().flatten().for_each(|drawing| draw(&drawing, page));
}

/// The one drawing that says most of a tray now: what came up while it emerges, how tall it is where that was measured, else
/// how many stand.
pub(crate) fn drawing_of_stage(tray: &TrayPicture, cx: &ScreenContext<'_>, width: u16) -> Option<Sheet> {
    let emerges = matches!(tray.stage, Stage::Sown | Stage::Emerging);
    let first = if emerges { charts::emergence(tray, cx) } else { charts::heights(tray, cx) };
    let drawing = first.or_else(|| charts::standing(tray, cx))?;
    let mut page = Sheet::new(width);
    draw(&drawing, &mut page);
    Some(page)
}

fn draw(drawing: &Drawing, page: &mut Sheet) {
    page.heading(&drawing.heading);
    page.drawing(DRAWING_LINES, DRAWING_COLUMNS, |area, buffer| drawing.chart.draw(area, buffer));
    page.paragraph(&drawing.legend, Ink::Quiet);
}

fn history(tray: &TrayPicture, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let wording = cx.wording;
    match cx.book.story_of(&Subject::Tray(tray.code.clone())) {
        None => page.paragraph(&wording.news_waiting(), Ink::Quiet),
        Some(entries) => {
            for entry in entries.iter().rev() {
                let text = wording.entry_sentence_beside(entry, cx.day(), &cx.book.picture.site.species);
                page.hanging("- ", Ink::Plain, &text, Ink::Plain);
            }
        }
    }
}
