//! Everything about one bed on a page: what each species waits for, the light, the plan, nurse plants, survival.

use ratatui::text::{Line, Span};

use super::plan;
use crate::base::{Day, SpeciesKey};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::{Ink, standing_mark};
use crate::dashboard::parts::{Chart, Curve, Sheet};
use crate::reckon::bed::water::told::bed_water;
use crate::reckon::field::{
    FOOD_MONTHS, FoodAhead, Outplanting, SurvivalCount, food_ahead, food_by_month, food_taken, light_rows,
    outplantings, waits_for,
};
use crate::reckon::light::months::month_on;
use crate::reckon::picture::{BedPicture, BedSpecies, NursePicture, Rule, Standing};
use crate::reckon::round::intervals::SURVIVAL_MONTHS;
use crate::wording::verdict::About;

/// Columns of a bar of light.
const BAR: usize = 12;
/// Lines of the chart of food, and its most columns: four for a month.
const FOOD_LINES: u16 = 6;
const FOOD_MOST: u16 = 56;

/// The page of a bed; the chosen species comes first and is the one whose positions are drawn.
pub(super) fn page(
    bed: &BedPicture,
    chosen: Option<&SpeciesKey>,
    along: usize,
    cx: &ScreenContext<'_>,
    width: u16,
) -> Sheet {
    let wording = cx.wording;
    let mut page = Sheet::new(width);
    heading(bed, cx, &mut page);
    if bed.species.is_empty() {
        page.gap();
        page.paragraph(&wording.teach_plan(&bed.name), Ink::Plain);
    }
    let first = bed.species.iter().filter(|one| Some(&one.species) == chosen);
    let others = bed.species.iter().filter(|one| Some(&one.species) != chosen);
    for one in first.chain(others) {
        species(one, cx, &mut page);
    }
    care(bed, cx, &mut page);
    light(bed, cx, &mut page);
    if let Some(species) = chosen {
        page.heading(&wording.plan_heading(cx.species(Some(species))));
        plan::draw(bed, species, along, cx, &mut page);
    }
    ground(bed, chosen, cx, &mut page);
    nurses(bed, cx, &mut page);
    food(bed, cx, &mut page);
    survival(bed, cx, &mut page);
    page
}

/// Soil and water: how they stand, whether they hold back or not, the weeks after planting, the litres that plants take.
fn ground(bed: &BedPicture, chosen: Option<&SpeciesKey>, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let wording = cx.wording;
    page.heading(&wording.ground_heading());
    let line = bed.species.iter().find(|line| Some(&line.species) == chosen).or(bed.species.first());
    for criterion in line.iter().flat_map(|line| &line.criteria) {
        if matches!(criterion.rule(), Rule::Soil | Rule::Water) && criterion.met() == Some(true) && !criterion.warns {
            page.hanging("+ ", Ink::Good, &wording.reason(criterion, About::Bed), Ink::Plain);
        }
    }
    let told = bed_water(bed, &cx.book.picture.site, cx.day());
    if let Some(ahead) = &told.ahead {
        for (label, words) in wording.water_ahead_short(ahead) {
            page.hanging("~ ", Ink::Plain, &format!("{label}: {words}"), Ink::Plain);
        }
    }
    if let Some(words) = wording.bed_litres_words(&told) {
        page.hanging("~ ", Ink::Plain, &words, Ink::Plain);
    }
}

/// Food of the months to come as a chart: least to most of each.
fn food_chart(ahead: &[FoodAhead], cx: &ScreenContext<'_>, page: &mut Sheet) {
    let wording = cx.wording;
    let months = food_by_month(ahead, cx.day());
    let most = months.iter().map(|(_, most)| *most).fold(0.0, f64::max);
    let last = FOOD_MONTHS - 1;
    let bar = |(at, (least, most)): (usize, &(f64, f64))| {
        let x = at as f64;
        let bar = Curve { points: vec![(x, 0.0), (x, *most)], mark: "│", ink: Ink::Plain, joined: true };
        let likely = Curve { points: vec![(x, 0.0), (x, *least)], mark: "█", ink: Ink::Good, joined: true };
        [bar, likely]
    };
    let given = months.iter().enumerate().filter(|(_, (_, most))| *most > 0.0);
    let name = |at: usize| wording.month_and_year(month_on(cx.day(), at));
    let chart = Chart {
        x: (0.0, last as f64),
        x_ends: (name(0), name(last)),
        y: (0.0, most),
        y_ends: (wording.number(0.0, 0), wording.food_chart_kg(wording.number(most.ceil(), 0))),
        band: None,
        curves: given.flat_map(bar).collect(),
    };
    page.drawing(FOOD_LINES, FOOD_MOST, |area, buffer| chart.draw(area, buffer));
    page.paragraph(&wording.food_chart_legend(), Ink::Quiet);
}

/// What the nurse plants will give to eat, and gave.
fn food(bed: &BedPicture, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let wording = cx.wording;
    let ahead = food_ahead(&bed.story, &cx.book.picture.site, cx.day());
    if !ahead.is_empty() {
        page.heading(&wording.food_heading());
        food_chart(&ahead, cx, page);
    }
    for food in ahead {
        let words = format!("{}: {}", cx.species(Some(&food.nurse)), wording.food_ahead_words(&food));
        page.paragraph(&words, Ink::Plain);
    }
    let taken = food_taken(&bed.story, cx.day());
    if !taken.is_empty() {
        page.heading(&wording.food_taken_heading());
    }
    for ((year, month, nurse), taken) in taken {
        let words = format!("{}: {}", cx.species(Some(&nurse)), wording.food_taken_words((year, month), &taken));
        page.paragraph(&words, Ink::Plain);
    }
}

/// A bed at a glance, as much of it as has room whole: what each species waits for, the light, the plan of the first species.
pub(crate) fn bed_at_a_glance(bed: &BedPicture, cx: &ScreenContext<'_>, width: u16, rows: usize) -> Sheet {
    let mut page = Sheet::new(width);
    heading(bed, cx, &mut page);
    bed.species.iter().for_each(|one| species(one, cx, &mut page));
    let with_light = |page: &Sheet| {
        let mut longer = page.clone();
        light(bed, cx, &mut longer);
        longer
    };
    let with_plan = |page: &Sheet| {
        let mut longer = page.clone();
        if let Some(first) = bed.species.first() {
            longer.heading(&cx.wording.plan_heading(cx.species(Some(&first.species))));
            plan::draw(bed, &first.species, 0, cx, &mut longer);
        }
        longer
    };
    for longer in [&with_light as &dyn Fn(&Sheet) -> Sheet, &with_plan] {
        let next = longer(&page);
        if next.height() > rows {
            break;
        }
        page = next;
    }
    page
}

fn heading(bed: &BedPicture, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let wording = cx.wording;
    page.paragraph(&format!("{}, {}", bed.name, bed.field), Ink::Strong);
    let (length, width) = (wording.number(bed.length_m, 1), wording.number(bed.width_m, 1));
    let bearing = bed.story.layout.on(cx.day()).and_then(|layout| layout.row_bearing_deg);
    let message = match bearing {
        Some(degrees) => wording.bed_size_bearing(length, width, wording.number(degrees.0, 0)),
        None => wording.bed_size(length, width),
    };
    page.paragraph(&message, Ink::Plain);
}

/// A species of the plan: its standing, and each thing that holds it back with its reason.
fn species(one: &BedSpecies, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let wording = cx.wording;
    page.gap();
    let (mark, ink) = standing_mark(one.standing);
    let open = wording.bed_has_open(one.open_positions, one.positions);
    let message = format!("{}: {}, {open}", cx.species(Some(&one.species)), wording.standing_name(one.standing));
    page.hanging(&format!("{mark} "), ink, &message, Ink::Strong);
    let mut waits = waits_for(&one.criteria, cx.day());
    if one.standing == Standing::Full {
        // Ground work for a bed without room is nobody's work.
        waits.retain(|criterion| criterion.rule() == Rule::OpenPositions);
    }
    if waits.is_empty() {
        page.hanging("  + ", Ink::Good, &wording.bed_ready_for(), Ink::Plain);
    }
    for criterion in waits {
        let (mark, ink) = if criterion.met().is_none() { ("?", Ink::Waits) } else { ("x", Ink::Danger) };
        let mut message = wording.reason(criterion, About::Bed);
        if let Some(day) = criterion.expected.filter(|day| *day > cx.day()) {
            message = format!("{message} · {}", wording.comes_from(wording.day_beside(day, cx.day())));
        }
        page.hanging(&format!("  {mark} "), ink, &message, Ink::Plain);
    }
}

/// What deserves care although it holds nothing back, once for the whole bed.
fn care(bed: &BedPicture, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let mut message: Vec<String> = Vec::new();
    for criterion in bed.species.iter().flat_map(|one| &one.criteria) {
        let reason = cx.wording.reason(criterion, About::Bed);
        if criterion.warns && !criterion.blocks && !message.contains(&reason) {
            message.push(reason);
        }
    }
    page.gap();
    for reason in message {
        page.hanging("! ", Ink::Waits, &reason, Ink::Plain);
    }
}

/// The light: row by row where it was read so, else one figure with its day.
fn light(bed: &BedPicture, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let wording = cx.wording;
    page.heading(&wording.light_heading());
    let day = |day: Day| wording.day_beside(day, cx.day());
    let rows = light_rows(&bed.story, cx.day());
    match &bed.light_now {
        Some(light) => {
            let message = wording.light_of_bed(light, day);
            let bar = format!("{} ", shade(light.share).repeat(BAR));
            page.hanging(if rows.is_empty() { &bar } else { "" }, Ink::Plain, &message, Ink::Plain);
        }
        None => {
            let last = bed.story.light.iter().rev().find(|look| look.day <= cx.day());
            let message = match last {
                Some(last) => wording.light_old(wording.percent(last.share), day(last.day)),
                None => wording.bed_light_unknown(),
            };
            page.hanging("? ", Ink::Waits, &message, Ink::Plain);
            if let Some(span) = bed.light_reckoned() {
                page.hanging("~ ", Ink::Waits, &wording.light_reckoned_words(span), Ink::Plain);
            }
        }
    }
    if rows.is_empty() {
        return;
    }
    for (row, light) in &rows {
        let message = wording.light_row(wording.percent(light.share), day(light.read_on));
        page.line(Line::from(vec![
            Span::raw(format!("{row:>3} ")),
            Span::raw(shade(light.share).repeat(BAR)),
            Span::raw(format!(" {message}")),
        ]));
    }
    page.paragraph(&wording.light_legend(), Ink::Quiet);
}

/// From dark to bright: four shades, each another sign in plain letters too.
fn shade(share: f64) -> &'static str {
    match share {
        share if share < 0.25 => "█",
        share if share < 0.5 => "▒",
        share if share < 0.75 => "░",
        _ => "-",
    }
}

fn nurses(bed: &BedPicture, cx: &ScreenContext<'_>, page: &mut Sheet) {
    if bed.nurses.is_empty() {
        return;
    }
    let wording = cx.wording;
    page.heading(&wording.nurses_heading());
    let (living, gone): (Vec<&NursePicture>, Vec<&NursePicture>) = bed.nurses.iter().partition(|nurse| nurse.alive > 0);
    for nurse in living {
        page.hanging("n ", Ink::Waits, &nurse_words(nurse, cx), Ink::Plain);
    }
    if !gone.is_empty() {
        let names: Vec<String> = gone.iter().map(|nurse| cx.species(Some(&nurse.nurse))).collect();
        page.hanging("_ ", Ink::Plain, &wording.nurses_gone(names.join(", ")), Ink::Plain);
    }
}

fn nurse_words(nurse: &NursePicture, cx: &ScreenContext<'_>) -> String {
    let wording = cx.wording;
    let name = cx.species(Some(&nurse.nurse));
    let day = |day: Day| wording.day_beside(day, cx.day());
    let mut parts = vec![wording.nurse_line(&name, nurse.alive, nurse.count, wording.days(nurse.age_days))];
    if let Some(counted) = nurse.counted_on {
        parts.push(wording.nurse_counted(day(counted)));
    }
    match nurse.useful_shade_from {
        Some(from) if from > cx.day() => parts.push(wording.nurse_shades_from(day(from))),
        Some(from) => parts.push(wording.nurse_shades_since(day(from))),
        None => {}
    }
    match nurse.ends_about {
        Some(end) if end > cx.day() => parts.push(wording.nurse_ends(day(end))),
        Some(end) => parts.push(wording.nurse_past_end(day(end))),
        None => {}
    }
    parts.join(", ")
}

fn survival(bed: &BedPicture, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let all = outplantings(&bed.story, cx.day());
    if all.is_empty() {
        return;
    }
    let wording = cx.wording;
    page.heading(&wording.survival_heading());
    for one in &all {
        page.hanging("- ", Ink::Plain, &outplanting_words(one, cx), Ink::Plain);
        let counts: Vec<String> = SURVIVAL_MONTHS
            .iter()
            .zip(&one.counts)
            .filter_map(|(months, count)| count.as_ref().map(|count| count_words(*months, count, cx)))
            .collect();
        let message = if counts.is_empty() { wording.survival_not_counted() } else { counts.join(" · ") };
        page.hanging("  ", Ink::Plain, &message, Ink::Plain);
    }
}

fn outplanting_words(one: &Outplanting, cx: &ScreenContext<'_>) -> String {
    let wording = cx.wording;
    let species = cx.species(one.species.as_ref());
    let day = wording.day_beside(one.day, cx.day());
    let mut message = match (&one.tray, one.at_stake) {
        (Some(tray), _) => wording.survival_from_tray(&species, tray, day, one.planted, one.living),
        (None, true) => wording.survival_at_stake(&species, day, one.planted, one.living),
        (None, false) => wording.survival_found(&species, day, one.planted, one.living),
    };
    if let Some(rows) = &one.rows {
        message = format!("{message}, {}", wording.survival_rows(rows));
    }
    message
}

fn count_words(months: u32, count: &SurvivalCount, cx: &ScreenContext<'_>) -> String {
    let wording = cx.wording;
    let all = f64::from(count.alive) + f64::from(count.dead);
    let share = if all > 0.0 { wording.percent(f64::from(count.alive) / all) } else { "?".to_string() };
    let message = wording.survival_count(i64::from(months), count.alive, share);
    if count.with_others { format!("{message} {}", wording.survival_with_others()) } else { message }
}
