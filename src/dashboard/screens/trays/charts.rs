//! Drawings of a tray: what came up against what was to be expected, how many stand, and how tall they are.

use crate::base::{Day, Range};
use crate::dashboard::look::Ink;
use crate::dashboard::model::On;
use crate::dashboard::parts::{Chart, Curve};
use crate::reckon::picture::{Measure, Rule, TrayPicture};
use crate::reckon::seed::{Expected, emerged, expected, own_sowings};

/// Points of a curve that is drawn from a formula.
const STEPS: i32 = 60;
/// Room above the tallest plant, as a share.
const ROOM_ABOVE: f64 = 1.1;

/// A drawing with the sentence that says what its marks are.
pub struct Drawing {
    /// What is drawn.
    pub heading: String,
    /// What the marks mean.
    pub legend: String,
    /// The chart.
    pub chart: Chart,
}

/// What is expected of the seed sown in a tray itself; none where nothing was sown in it, or no figure is known.
pub fn expected_of(tray: &TrayPicture, on: &On<'_>) -> Option<Expected> {
    let picture = &on.book.picture;
    let sowings = own_sowings(&tray.story);
    let profile = tray.species.as_ref().and_then(|key| picture.site.profile(key));
    if sowings.is_empty() { None } else { expected(&sowings, &picture.lots, profile.map(AsRef::as_ref)) }
}

/// Seedlings that came up, count by count, against the interval of what was to be expected.
pub fn emergence(tray: &TrayPicture, on: &On<'_>) -> Option<Drawing> {
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
    let expected = expected_of(tray, on);
    if seen.len() < 2 && expected.is_none() {
        return None;
    }
    // Looks long after the last seedling came up would only press the curve together.
    let newest = whole().filter(|look| look.emerged > 0).map(|look| age(look.day)).fold(0.0, f64::max);
    let late = expected.as_ref().and_then(Expected::last_day).map(age);
    let last = late.unwrap_or_else(|| age(on.day())).max(newest).max(1.0);
    let in_all = expected.as_ref().map_or(Range::exact(0.0), Expected::in_all);
    let most = in_all.high.max(f64::from(emerged(&tray.story))).max(1.0);
    let curve = |pick: fn(Range) -> f64| -> Vec<(f64, f64)> {
        let days = (0..=STEPS).map(|step| last * f64::from(step) / f64::from(STEPS));
        let by = |days: f64| expected.as_ref()?.by(first.plus(days.round() as i32)).map(pick);
        days.filter_map(|days| Some((days.round(), by(days)?))).collect()
    };
    let dots = |points| Curve { points, mark: "·", ink: Ink::Plain, joined: true };
    let mut curves = vec![dots(curve(|range| range.low)), dots(curve(|range| range.high))];
    let points = seen.into_iter().filter(|(days, _)| *days <= last).collect();
    curves.push(Curve { points, mark: "●", ink: Ink::Good, joined: false });
    let wording = on.wording;
    let legend = match &expected {
        Some(expected) if expected.tested => wording.trays_legend_tested(),
        Some(_) => wording.trays_legend_fresh(),
        None => wording.trays_legend_counted(),
    };
    let chart = Chart {
        x: (0.0, last),
        x_ends: (wording.trays_sown_on(wording.day_beside(first, on.day())), wording.trays_day(last.round() as i64)),
        y: (0.0, most),
        y_ends: ("0".to_string(), wording.number(most, 0)),
        band: None,
        curves,
    };
    Some(Drawing { heading: wording.trays_came_up(), legend, chart })
}

/// Living plants, count by count, of a tray in which nothing was sown.
pub fn standing(tray: &TrayPicture, on: &On<'_>) -> Option<Drawing> {
    let whole: Vec<_> = tray.story.counts.iter().filter(|look| look.part_of_cells.is_none()).collect();
    if whole.len() < 2 || !own_sowings(&tray.story).is_empty() {
        return None;
    }
    let first = tray.story.made_on.into_iter().chain(whole.iter().map(|look| look.day)).min()?;
    let age = |day: Day| f64::from(day.days_since(first));
    let points: Vec<(f64, f64)> = whole.iter().map(|look| (age(look.day), f64::from(look.standing))).collect();
    let most = points.iter().map(|(_, plants)| *plants).fold(1.0, f64::max);
    let last = age(on.day()).max(1.0);
    let wording = on.wording;
    let chart = Chart {
        x: (0.0, last),
        x_ends: (wording.day_beside(first, on.day()), wording.day_beside(on.day(), first)),
        y: (0.0, most),
        y_ends: ("0".to_string(), wording.number(most, 0)),
        band: None,
        curves: vec![Curve { points, mark: "●", ink: Ink::Good, joined: false }],
    };
    Some(Drawing { heading: wording.trays_stood(), legend: wording.trays_legend_counted(), chart })
}

/// The heights of every sample, and the band in which the species goes out.
pub fn heights(tray: &TrayPicture, on: &On<'_>) -> Option<Drawing> {
    let samples: Vec<_> = tray.story.samples.iter().filter(|sample| !sample.plants.is_empty()).collect();
    let first = samples.first()?.day;
    let begin = tray.sown_on.or(tray.story.made_on).map_or(first, |day| day.min(first));
    let age = |day: Day| f64::from(day.days_since(begin));
    let band = tray.criteria.iter().filter(|criterion| criterion.rule == Rule::Height).find_map(|criterion| {
        match criterion.needed {
            Some(Measure::HeightBand { least, most }) => Some((least, most)),
            _ => None,
        }
    });
    let mut plants = Vec::new();
    let mut means = Vec::new();
    for sample in samples {
        let heights: Vec<f64> = sample.plants.iter().map(|plant| plant.height_cm.0).collect();
        means.push((age(sample.day), heights.iter().sum::<f64>() / heights.len().max(1) as f64));
        plants.extend(heights.into_iter().map(|height| (age(sample.day), height)));
    }
    let tallest = plants.iter().map(|(_, height)| *height).fold(1.0, f64::max);
    let most = tallest.max(band.map_or(0.0, |(_, most)| most)) * ROOM_ABOVE;
    let wording = on.wording;
    let legend = match band {
        Some((low, high)) => wording.trays_legend_heights(wording.number(low, 0), wording.number(high, 0)),
        None => wording.trays_legend_heights_only(),
    };
    let chart = Chart {
        x: (0.0, age(on.day()).max(1.0)),
        x_ends: (wording.day_beside(begin, on.day()), wording.day_beside(on.day(), begin)),
        y: (0.0, most),
        y_ends: ("0 cm".to_string(), format!("{} cm", wording.number(most, 0))),
        band,
        curves: vec![
            Curve { points: plants, mark: "○", ink: Ink::Plain, joined: false },
            Curve { points: means, mark: "●", ink: Ink::Good, joined: false },
        ],
    };
    Some(Drawing { heading: wording.trays_heights(), legend, chart })
}
