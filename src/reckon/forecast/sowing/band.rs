//! The likely curve of a sowing and the range around it, as they are drawn.

use super::seen::looks_at_all;
use crate::base::{Day, Range};
use crate::reckon::forecast::{RANGE_LEVEL, SowingCurve, TrayForecast};
use crate::reckon::stock::TrayStory;
use crate::science::emergence::up_along;

/// Points of the range. Ours: more than the columns of a narrow drawing would not be seen.
const POINTS: i32 = 16;

/// What is drawn of a sowing, by days since the first sowing.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Band {
    /// The likely curve, from the sowing on.
    pub likely: Vec<(f64, f64)>,
    /// From the last look on: how many will be up, 90 % sure.
    pub ahead: Vec<(f64, Range)>,
}

impl TrayForecast {
    /// How many are likely up on a day, by the likely curve alone.
    pub(crate) fn likely_up(&self, days: f64) -> f64 {
        let one = |sowing: &SowingCurve| {
            let age = days - f64::from(sowing.on.days_since(self.sown_on));
            f64::from(sowing.seeds) * sowing.share * self.curve.up(age)
        };
        self.sowings.iter().map(one).sum()
    }

    /// How many are likely up in the end, by the likely curve alone.
    pub(crate) fn likely_in_all(&self) -> f64 {
        self.sowings.iter().map(|sowing| f64::from(sowing.seeds) * sowing.share).sum()
    }

    /// Days since the first sowing, of a day.
    pub fn days_to(&self, day: Day) -> f64 {
        f64::from(day.days_since(self.sown_on))
    }
}

/// The curve of a forecast up to a day. The range of one sowing is that of the forecast on each day; of several sowings it is
/// drawn from the last look to the last day along the likely curve.
pub fn band(story: &TrayStory, told: &TrayForecast, until: Day) -> Band {
    let end = told.days_to(until).max(1.0);
    let steps = |from: f64| (0..=POINTS).map(move |step| from + (end - from) * f64::from(step) / f64::from(POINTS));
    let likely = steps(0.0).chain(steps(end / 2.0)).map(|day| (day, told.likely_up(day)));
    let mut likely: Vec<(f64, f64)> = likely.collect();
    likely.sort_by(|a, b| a.0.total_cmp(&b.0));
    let Ok(seen) = looks_at_all(story) else { return Band { likely, ahead: Vec::new() } };
    let now = seen.looks.last_look();
    if now >= end {
        return Band { likely, ahead: Vec::new() };
    }
    let days: Vec<f64> = steps(now).collect();
    let ranges = match &seen.sowings[..] {
        [_] => up_along(&seen.looks, &told.prior, &days, RANGE_LEVEL).unwrap_or_default(),
        _ => days.iter().map(|day| along(told, now, *day)).collect(),
    };
    Band { likely, ahead: days.into_iter().zip(ranges).collect() }
}

/// The range on a day between the last look and the last day due, as far along as the likely curve is.
fn along(told: &TrayForecast, now: f64, day: f64) -> Range {
    let seen = f64::from(told.emerged);
    let (from, to) = (told.likely_up(now), told.likely_up(told.days_to(told.last_due)));
    let gone = if to > from { ((told.likely_up(day) - from) / (to - from)).clamp(0.0, 1.0) } else { 1.0 };
    let at = |end: f64| seen + (end - seen) * gone;
    let end = told.at_last_due;
    Range::new(at(end.low), at(end.likely), at(end.high))
}
