//! Drawings of a tray: what came up against what was to be expected, how many stand, and how tall they are.

use crate::base::{Day, Range};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::{Chart, Curve};
use crate::reckon::forecast::{Band, TrayForecast};
use crate::reckon::growth::{Coming, Reach, tray_growth};
use crate::reckon::picture::{Measure, Rule, TrayPicture};
use crate::reckon::seed::own_sowings;

/// Points of a curve that is drawn from a formula.
const STEPS: i32 = 60;
/// Room above the tallest plant, as a share.
const ROOM_ABOVE: f64 = 1.1;

/// A drawing with the sentence that says what its marks are.
pub(crate) struct Drawing {
    /// What is drawn.
    pub(crate) heading: String,
    /// What the marks mean.
    pub(crate) legend: String,
    /// The chart.
    pub(crate) chart: Chart,
}

/// Seedlings that came up, count by count, with the likely curve, the range ahead and the species' last day.
pub(crate) fn emergence(tray: &TrayPicture, cx: &ScreenContext<'_>) -> Option<Drawing> {
    let sowings = own_sowings(&tray.story);
    let first = sowings.iter().map(|sowing| sowing.day).min()?;
    let age = |day: Day| f64::from(day.days_since(first));
    let whole = || tray.story.counts.iter().filter(|look| look.part_of_cells.is_none());
    let mut up = 0u32;
    let mut seen = vec![(0.0, 0.0)];
    for look in whole() {
        up = up.saturating_add(look.emerged);
        seen.push((age(look.day), f64::from(up)));
    }
    let told = cx.book.outlook.trays.get(&tray.code);
    if seen.len() < 2 && told.is_none() {
        return None;
    }
    // Looks long after the last seedling came up would only press the curve together.
    let newest = whole().filter(|look| look.emerged > 0).map(|look| age(look.day)).fold(0.0, f64::max);
    let last = told.map_or_else(|| age(cx.day()), |told| told.days_to(told.last_due.max(told.stop_waiting)));
    let last = last.max(newest).max(1.0);
    let seen: Vec<(f64, f64)> = seen.into_iter().filter(|(days, _)| *days <= last).collect();
    let wording = cx.wording;
    let (mut curves, legend) = match told.zip(cx.book.band_of(tray)) {
        Some((told, band)) => {
            let due = wording.day_beside(told.last_due, cx.day());
            (curves_of(told, &band, cx), wording.trays_legend_forecast(due))
        }
        None => (Vec::new(), wording.trays_legend_counted()),
    };
    let highest = curves.iter().flat_map(|curve| &curve.points).chain(&seen).map(|(_, up)| *up).fold(1.0, f64::max);
    curves.push(Curve { points: seen, mark: "●", ink: Ink::Strong, joined: false });
    let chart = Chart {
        x: (0.0, last),
        x_ends: (wording.trays_sown_on(wording.day_beside(first, cx.day())), wording.trays_day(last.round() as i64)),
        y: (0.0, highest),
        y_ends: ("0".to_string(), wording.number(highest, 0)),
        band: None,
        curves,
    };
    Some(Drawing { heading: wording.trays_came_up(), legend, chart })
}

/// The species' last day, the ends of the range ahead, and the likely curve over them.
fn curves_of(told: &TrayForecast, band: &Band, cx: &ScreenContext<'_>) -> Vec<Curve> {
    let ahead = |pick: fn(&Range) -> f64| band.ahead.iter().map(|(days, range)| (*days, pick(range))).collect();
    let line = |points, mark, ink| Curve { points, mark, ink, joined: true };
    let most = band.ahead.iter().map(|(_, range)| range.high).chain(band.likely.iter().map(|(_, up)| *up));
    let most = most.fold(1.0, f64::max);
    let due = told.days_to(told.last_due);
    let mut curves = vec![line(vec![(due, 0.0), (due, most)], "│", Ink::Quiet)];
    let today = told.days_to(cx.day());
    if today < due {
        curves.push(line(vec![(today, 0.0), (today, most)], ":", Ink::Quiet));
    }
    curves.push(line(ahead(|range| range.low), "·", Ink::Plain));
    curves.push(line(ahead(|range| range.high), "·", Ink::Plain));
    curves.push(line(band.likely.clone(), "─", Ink::Plain));
    curves
}

/// Living plants, count by count, of a tray in which nothing was sown.
pub(crate) fn standing(tray: &TrayPicture, cx: &ScreenContext<'_>) -> Option<Drawing> {
    let whole: Vec<_> = tray.story.counts.iter().filter(|look| look.part_of_cells.is_none()).collect();
    if whole.len() < 2 || !own_sowings(&tray.story).is_empty() {
        return None;
    }
    let first = tray.story.made_on.into_iter().chain(whole.iter().map(|look| look.day)).min()?;
    let age = |day: Day| f64::from(day.days_since(first));
    let points: Vec<(f64, f64)> = whole.iter().map(|look| (age(look.day), f64::from(look.standing))).collect();
    let most = points.iter().map(|(_, plants)| *plants).fold(1.0, f64::max);
    let last = age(cx.day()).max(1.0);
    let wording = cx.wording;
    let chart = Chart {
        x: (0.0, last),
        x_ends: (wording.day_beside(first, cx.day()), wording.day_beside(cx.day(), first)),
        y: (0.0, most),
        y_ends: ("0".to_string(), wording.number(most, 0)),
        band: None,
        curves: vec![Curve { points, mark: "●", ink: Ink::Strong, joined: false }],
    };
    Some(Drawing { heading: wording.trays_stood(), legend: wording.trays_legend_counted(), chart })
}

/// When the heights of a tray are there by its own curve.
fn reach_of(tray: &TrayPicture, cx: &ScreenContext<'_>) -> Option<Reach> {
    let profile = tray.species.as_ref().and_then(|key| cx.book.picture.site.profile(key));
    match tray_growth(&tray.story, profile.map(|profile| &**profile), cx.day()).height?.coming {
        Coming::Expected(reach) => Some(reach),
        Coming::There { .. } | Coming::Unknown(_) => None,
    }
}

/// The likely curve of growth, and the days between which it reaches the least height.
fn growth_curves(reach: &Reach, least: f64, sown: Day, ages: (f64, f64), begin: Day) -> Vec<Curve> {
    let shift = f64::from(begin.days_since(sown));
    let days = (0..=STEPS).map(|step| ages.0 + (ages.1 - ages.0) * f64::from(step) / f64::from(STEPS));
    let points = days.map(|age| (age, reach.curve.height(age + shift))).collect();
    let mut curves = vec![Curve { points, mark: "─", ink: Ink::Plain, joined: true }];
    if let Some((low, high)) = reach.between {
        let age = |day: Day| f64::from(day.days_since(begin)).min(ages.1);
        let points = vec![(age(low), least), (age(high), least)];
        curves.push(Curve { points, mark: "=", ink: Ink::Good, joined: true });
    }
    curves
}

/// The heights of every sample, their likely curve, and the band in which the species goes out.
pub(crate) fn heights(tray: &TrayPicture, cx: &ScreenContext<'_>) -> Option<Drawing> {
    let samples: Vec<_> = tray.story.samples.iter().filter(|sample| !sample.plants.is_empty()).collect();
    let first = samples.first()?.day;
    let begin = tray.sown_on.or(tray.story.made_on).map_or(first, |day| day.min(first));
    let age = |day: Day| f64::from(day.days_since(begin));
    let band =
        tray.criteria.iter().filter(|criterion| criterion.rule() == Rule::Height).find_map(|criterion| match criterion
            .needed()
        {
            Some(Measure::HeightBand { least, most }) => Some((least, most)),
            _ => None,
        });
    let mut plants = Vec::new();
    let mut means = Vec::new();
    for sample in samples {
        let heights: Vec<f64> = sample.plants.iter().map(|plant| plant.height_cm.0).collect();
        means.push((age(sample.day), heights.iter().sum::<f64>() / heights.len().max(1) as f64));
        plants.extend(heights.into_iter().map(|height| (age(sample.day), height)));
    }
    let tallest = plants.iter().map(|(_, height)| *height).fold(1.0, f64::max);
    let reach = reach_of(tray, cx).zip(tray.sown_on).zip(band);
    let ahead = reach.map(|((reach, _), _)| age(reach.between.map_or(reach.day, |(_, high)| high)));
    // A day far ahead would press the samples together.
    let last = age(cx.day()).max(1.0);
    let last = ahead.map_or(last, |ahead| ahead.clamp(last, 2.0 * last));
    let most = tallest.max(band.map_or(0.0, |(_, most)| most)) * ROOM_ABOVE;
    let wording = cx.wording;
    let mut curves = reach.map_or_else(Vec::new, |((reach, sown), (least, _))| {
        growth_curves(&reach, least, sown, (means.first().map_or(0.0, |(age, _)| *age), last), begin)
    });
    curves.push(Curve { points: plants, mark: "○", ink: Ink::Plain, joined: false });
    curves.push(Curve { points: means, mark: "●", ink: Ink::Strong, joined: false });
    let legend = match band {
        Some((low, high)) if reach.is_some() => {
            wording.trays_legend_growth(wording.number(low, 0), wording.number(high, 0))
        }
        Some((low, high)) => wording.trays_legend_heights(wording.number(low, 0), wording.number(high, 0)),
        None => wording.trays_legend_heights_only(),
    };
    let chart = Chart {
        x: (0.0, last),
        x_ends: (wording.day_beside(begin, cx.day()), wording.day_beside(begin.plus(last.round() as i32), begin)),
        y: (0.0, most),
        y_ends: ("0 cm".to_string(), format!("{} cm", wording.number(most, 0))),
        band,
        curves,
    };
    Some(Drawing { heading: wording.trays_heights(), legend, chart })
}
