//! The light of a bed through two years: one month position by position on the plan, all of them in a line to move along and
//! as a chart with the species' band, and what shade ends when.
//!
//! A digit is light in tenths, so that nothing hangs on colour; light outside the band is underlined.

use ratatui::style::{Modifier, Style};
use ratatui::text::{Line, Span};

use super::plan::{self, Marks};
use crate::base::{Day, SpeciesKey};
use crate::dashboard::aside::light::{LightAsked, LitMonth, MonthAnswer};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::{Chart, Curve, Sheet};
use crate::reckon::field::{Spot, SpotState};
use crate::reckon::light::coming::shade_ends;
use crate::reckon::light::months::{MONTHS_AHEAD, month_on};
use crate::reckon::picture::BedPicture;
use crate::reckon::picture::quantity::ShadeEnd;
use crate::reckon::tray::exposure::light_band;

/// From this width on the line of months has whole percents.
const PERCENT_LINE: usize = 3 * MONTHS_AHEAD;
/// And from this one a blank between its tenths.
const WIDE_LINE: usize = 2 * MONTHS_AHEAD;
/// Lines of the chart.
const CHART_LINES: u16 = 9;
/// The most columns of the chart: two for a month, and room for its figures.
const CHART_MOST: u16 = 64;
/// Lines of the plan's page beside the bed itself: ruler, scale and north.
const AROUND_PLAN: usize = 3;
/// The fewest lines a bed is drawn in.
const LEAST_LINES: usize = 6;

/// What is shown: of which bed, for which species, which month.
#[derive(Clone, Copy)]
pub(super) struct Shown<'a> {
    pub bed: &'a BedPicture,
    pub species: &'a SpeciesKey,
    /// The month, this one being 0.
    pub at: usize,
    /// The first column of a plan that is longer than the screen.
    pub along: usize,
}

impl Shown<'_> {
    /// What is asked of the clerk for it.
    pub(super) fn asked(&self, cx: &ScreenContext<'_>) -> LightAsked {
        let (bed, species) = (self.bed.name.clone(), self.species.clone());
        LightAsked { generation: cx.book.generation, bed, species }
    }

    fn month<'a>(&self, at: usize, cx: &'a ScreenContext<'_>) -> Option<&'a MonthAnswer> {
        let asked = self.asked(cx);
        cx.book.light.as_ref().filter(|(of, _)| *of == asked)?.1.get(&at)
    }

    fn lit<'a>(&self, at: usize, cx: &'a ScreenContext<'_>) -> Option<&'a LitMonth> {
        self.month(at, cx)?.as_ref()
    }

    /// The first month whose light is not known, and why.
    fn not_known(&self, cx: &ScreenContext<'_>) -> Option<(usize, String)> {
        (0..MONTHS_AHEAD).find_map(|at| match self.month(at, cx)? {
            None => Some((at, cx.wording.light_no_nurses())),
            Some(lit) => Some((at, cx.wording.light_not_reckoned(lit.month.left_out.as_ref()?))),
        })
    }

    fn band(&self, cx: &ScreenContext<'_>) -> Option<(f64, f64)> {
        light_band(cx.book.picture.site.profile(self.species).map(|profile| &**profile))
    }

    fn ends(&self, cx: &ScreenContext<'_>) -> Vec<ShadeEnd> {
        shade_ends(&self.bed.story, &cx.book.picture.site, cx.day())
    }
}

/// What stays in sight: which month it is, its light, and the line of months.
pub(super) fn head(shown: Shown<'_>, cx: &ScreenContext<'_>, width: u16) -> Sheet {
    let wording = cx.wording;
    let mut page = Sheet::new(width);
    let on = month_on(cx.day(), shown.at);
    let heading = wording.light_month_heading(&shown.bed.name, cx.species(Some(shown.species)), month_words(on, cx));
    page.paragraph(&heading, Ink::Strong);
    let left_out = |lit: &LitMonth| lit.month.left_out.as_ref().map(|why| (lit.month.light.high, why.clone()));
    match (shown.lit(shown.at, cx), shown.not_known(cx)) {
        (Some(lit), _) => match left_out(lit) {
            None => page.paragraph(&told(lit, shown.band(cx), cx), Ink::Plain),
            Some((most, why)) => page.hanging("? ", Ink::Waits, &wording.light_at_most_words(most, &why), Ink::Plain),
        },
        (None, Some((_, why))) => page.hanging("? ", Ink::Waits, &why, Ink::Plain),
        (None, None) => page.paragraph(&wording.light_being_reckoned(), Ink::Waits),
    }
    line_of_months(shown, cx, &mut page);
    page
}

fn month_words(on: Day, cx: &ScreenContext<'_>) -> String {
    let (year, month, _) = on.ymd();
    format!("{} {year}", cx.wording.month_short(month))
}

/// The light of a month with its range, and how many of the open positions it suits.
fn told(lit: &LitMonth, band: Option<(f64, f64)>, cx: &ScreenContext<'_>) -> String {
    let wording = cx.wording;
    let light = wording.span_words(lit.month.light);
    match lit.month.inside.zip(band) {
        Some((inside, (least, most))) => {
            wording.light_month_told(light, wording.percent(inside), wording.band_words(least, most))
        }
        None => light,
    }
}

/// Months by their first letters, their light in percent or in tenths, and a mark where shade ends.
fn line_of_months(shown: Shown<'_>, cx: &ScreenContext<'_>, page: &mut Sheet) {
    let room = match page.width() {
        PERCENT_LINE.. => 2,
        _ => 1,
    };
    let blank = if page.width() >= WIDE_LINE { " " } else { "" };
    let band = shown.band(cx);
    let ends = shown.ends(cx);
    let not_from = if shown.month(0, cx).is_some_and(Option::is_none) { 0 } else { MONTHS_AHEAD };
    let (mut letters, mut digits, mut marks) = (Vec::new(), Vec::new(), Vec::new());
    for at in 0..MONTHS_AHEAD {
        let (year, month, _) = month_on(cx.day(), at).ymd();
        let letter: String = cx.wording.month_letters(month).chars().take(1).collect();
        let waiting = if at < not_from { "·" } else { "?" };
        let digit = match shown.lit(at, cx).map(|lit| &lit.month) {
            None => (waiting.to_string(), Style::new()),
            Some(month) if month.left_out.is_some() => at_most(month.light.high, room, band),
            Some(month) => {
                let (tenth, style) = digit(month.light.share, band);
                (if room > 1 { percent(month.light.share) } else { tenth }, style)
            }
        };
        let ends_here = ends.iter().any(|end| (end.about.ymd().0, end.about.ymd().1) == (year, month));
        let chosen = if at == shown.at { Ink::Chosen.style() } else { Style::new() };
        for (line, (text, style)) in [
            (&mut letters, (letter, Style::new())),
            (&mut digits, digit),
            (&mut marks, (if ends_here { "!" } else { " " }.to_string(), Ink::Waits.style())),
        ] {
            let style = if at == shown.at { chosen.patch(style.remove_modifier(Modifier::BOLD)) } else { style };
            line.extend([Span::raw(blank), Span::styled(format!("{text:>room$}"), style)]);
        }
    }
    let has_ends = ends.iter().any(|end| end.about <= month_on(cx.day(), MONTHS_AHEAD - 1));
    page.line(Line::from(letters));
    page.line(Line::from(digits));
    if has_ends {
        page.line(Line::from(marks));
    }
}

/// Light in tenths: `3` is 30 to 39 %; underlined outside the band.
fn digit(light: f64, band: Option<(f64, f64)>) -> (String, Style) {
    let tenth = ((light * 10.0 + 1e-9).floor() as i64).clamp(0, 9);
    let style = match band {
        None => Style::new(),
        Some(band) if is_inside(light, band) => Ink::Good.tile(),
        Some(_) => Ink::Waits.tile().add_modifier(Modifier::UNDERLINED),
    };
    (tenth.to_string(), style)
}

/// Light that is known from above only: `<7` is at most 70 %; in one column `?`. Underlined where that is darker than the band.
fn at_most(most: f64, room: usize, band: Option<(f64, f64)>) -> (String, Style) {
    let tenths = (most * 10.0 - 1e-9).ceil() as i64;
    let text = if room > 1 && tenths < 10 { format!("<{tenths}") } else { "?".to_string() };
    let dark = band.is_some_and(|(least, _)| most < least);
    (text, if dark { Ink::Waits.tile().add_modifier(Modifier::UNDERLINED) } else { Style::new() })
}

/// Whole percents in two columns: full light is 99.
fn percent(light: f64) -> String {
    ((light * 100.0).round() as i64).clamp(0, 99).to_string()
}

fn is_inside(light: f64, (least, most): (f64, f64)) -> bool {
    (least..=most).contains(&light)
}

/// The month on the plan of the bed, position by position, in about so many lines.
pub(super) fn map(shown: Shown<'_>, cx: &ScreenContext<'_>, (width, lines): (u16, usize)) -> Sheet {
    let wording = cx.wording;
    let mut page = Sheet::new(width);
    let Some(plan) = plan::plan_of(shown.bed, shown.species, cx) else {
        page.paragraph(&wording.plan_none(), Ink::Plain);
        return page;
    };
    let (lit, band) = (shown.lit(shown.at, cx), shown.band(cx));
    let is_bound = lit.is_some_and(|lit| lit.month.left_out.is_some());
    let of = |at: usize, spot: &Spot| {
        let light = lit.and_then(|lit| lit.at.get(at)).filter(|_| spot.state != SpotState::Blocked);
        light.map_or_else(
            || {
                let (mark, ink) = plan::spot_mark(spot.state);
                (mark.to_string(), ink.tile())
            },
            // Of light that is known from above only nothing is inside the band.
            |light| digit(*light, band.filter(|(least, _)| !is_bound || light < least)),
        )
    };
    let most_lines = lines.saturating_sub(AROUND_PLAN).clamp(LEAST_LINES, plan::MOST_LINES);
    let advice = lit.and_then(|lit| lit.cuts.as_ref()).filter(|_| shown.at == 0).and_then(|cuts| cuts.advice.as_ref());
    let to_cut: Vec<[f64; 2]> = advice.iter().flat_map(|advice| &advice.plants).map(|plant| plant.at_m).collect();
    let marks = Marks { of: &of, to_cut: &to_cut, with_species: false, most_lines };
    let (others, _) = plan::sketch(shown.bed, &plan, &marks, shown.along, cx, &mut page);
    page.paragraph(&wording.light_digits(), Ink::Quiet);
    if is_bound {
        page.paragraph(&wording.light_digits_at_most(), Ink::Waits);
    }
    if let Some((least, most)) = band.filter(|band| lit.is_some() && *band != (0.0, 1.0)) {
        page.paragraph(&wording.light_underlined(wording.band_words(least, most)), Ink::Quiet);
    }
    if let Some((cuts, advice)) = lit.and_then(|lit| lit.cuts.as_ref()).zip(advice) {
        page.paragraph(&wording.cuts_tried_words(cuts), Ink::Plain);
        let told = format!("{} {}", plan::CUT_MARK, wording.cuts_advice_words(cuts));
        page.paragraph(&told, Ink::Plain);
        page.paragraph(&wording.cuts_bring_words(advice), Ink::Plain);
    }
    let blocked = plan.count(SpotState::Blocked);
    if blocked > 0 {
        let (mark, ink) = plan::spot_mark(SpotState::Blocked);
        page.hanging(&format!("{mark} "), ink, &wording.plan_blocked(blocked), Ink::Plain);
    }
    plan::letters(&others, &mut page);
    plan::elsewhere(shown.bed, cx, &mut page);
    page
}

/// All months as a chart, the newest reading, and what ends when.
pub(super) fn year(shown: Shown<'_>, cx: &ScreenContext<'_>, width: u16) -> Sheet {
    let wording = cx.wording;
    let mut page = Sheet::new(width);
    let lit: Vec<(usize, &LitMonth)> = (0..MONTHS_AHEAD).filter_map(|at| Some((at, shown.lit(at, cx)?))).collect();
    if !lit.is_empty() {
        page.heading(&wording.light_chart_heading());
        page.drawing(CHART_LINES, CHART_MOST, |area, buffer| chart(&lit, shown, cx).draw(area, buffer));
        page.paragraph(&wording.light_chart_legend(), Ink::Quiet);
        if let Some((least, most)) = shown.band(cx) {
            page.paragraph(&wording.light_chart_band(wording.band_words(least, most)), Ink::Quiet);
        }
    }
    if let Some((at, why)) = shown.not_known(cx).filter(|(at, _)| *at > 0 && *at != shown.at) {
        page.hanging(
            "? ",
            Ink::Waits,
            &wording.light_not_from(month_words(month_on(cx.day(), at), cx), why),
            Ink::Plain,
        );
    }
    if let Some(light) = &shown.bed.light_now {
        page.gap();
        page.paragraph(&wording.light_of_bed(light, |day| wording.day_beside(day, cx.day())), Ink::Plain);
    }
    let ends = shown.ends(cx);
    if !ends.is_empty() {
        page.heading(&wording.shade_to_come_heading());
    }
    for end in ends {
        let name = cx.species(Some(&end.nurse));
        let words = format!("{name}: {}", wording.shade_end_words(&end, end.is_late(cx.day())));
        page.hanging("! ", Ink::Waits, &words, Ink::Plain);
    }
    page
}

fn chart(lit: &[(usize, &LitMonth)], shown: Shown<'_>, cx: &ScreenContext<'_>) -> Chart {
    let wording = cx.wording;
    let bar = |(at, lit): &(usize, &LitMonth)| {
        let (x, span) = (*at as f64, lit.month.light);
        Curve { points: vec![(x, span.low), (x, span.high)], mark: "│", ink: Ink::Plain, joined: true }
    };
    let mut curves: Vec<Curve> = lit.iter().map(bar).collect();
    let points = |wanted: &dyn Fn(usize) -> bool| {
        let wanted = lit.iter().filter(|(at, lit)| wanted(*at) && lit.month.left_out.is_none());
        wanted.map(|(at, lit)| (*at as f64, lit.month.light.share)).collect::<Vec<_>>()
    };
    curves.push(Curve { points: points(&|at| at != shown.at), mark: "●", ink: Ink::Strong, joined: false });
    curves.push(Curve { points: points(&|at| at == shown.at), mark: "○", ink: Ink::Strong, joined: false });
    let last = MONTHS_AHEAD - 1;
    Chart {
        x: (0.0, last as f64),
        x_ends: (month_words(month_on(cx.day(), 0), cx), month_words(month_on(cx.day(), last), cx)),
        y: (0.0, 1.0),
        y_ends: (wording.percent(0.0), wording.percent(1.0)),
        band: shown.band(cx),
        curves,
    }
}
