//! Tall and thin: height over collar, and the day it passes its limit.

use crate::base::{Day, EntryId};
use crate::reckon::stock::{SampleLook, TrayStory};
use crate::science::quality::WEED_FREE_UP_TO;

/// Two samples nearer in time than this tell no trend, days. Ours.
pub(crate) const LEAST_APART_DAYS: i32 = 7;
/// A rise counts where it is so many standard errors: one that comes by chance in 1 of 20. Ours.
pub(crate) const RISE_ERRORS: f64 = 1.645;
/// Days beyond which the passing of the limit is not foretold. Ours.
pub(crate) const AHEAD_DAYS: i32 = 120;

/// Height over collar of a tray.
#[derive(Clone, PartialEq, Debug)]
pub struct Lanky {
    /// Mean height in cm over collar in mm of the last sample with collars.
    pub sturdiness: f64,
    /// The day of that sample.
    pub measured_on: Day,
    /// Above this plants are set apart.
    pub limit: f64,
    /// Whether and when it passes the limit.
    pub comes: LankyComes,
    /// The samples it rests on.
    pub entries: Vec<EntryId>,
}

/// Whether and when the limit is passed.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum LankyComes {
    /// It is passed.
    Now,
    /// It is passed on this day, on a straight line through the last two samples.
    On(Day),
    /// It does not rise, or not by more than chance, or not within the days that are foretold.
    NotSeen,
    /// Only one sample has collars.
    OneSample,
}

struct Point {
    day: Day,
    mean: f64,
    /// Variance of the mean.
    variance: f64,
}

fn point(sample: &SampleLook) -> Option<Point> {
    let all: Vec<f64> = sample
        .plants
        .iter()
        .filter_map(|plant| plant.collar_mm.filter(|collar| collar.0 > 0.0).map(|collar| plant.height_cm.0 / collar.0))
        .collect();
    if all.is_empty() {
        return None;
    }
    let count = all.len() as f64;
    let mean = all.iter().sum::<f64>() / count;
    let spread = all.iter().map(|one| (one - mean).powi(2)).sum::<f64>() / (count - 1.0).max(1.0);
    Some(Point { day: sample.day, mean, variance: spread / count })
}

/// Height over collar by the samples; none where no collar was measured.
pub(super) fn lanky(story: &TrayStory) -> Option<Lanky> {
    let mut points = story.samples.iter().rev().filter_map(|sample| Some((point(sample)?, sample.entry.clone())));
    let (last, entry) = points.next()?;
    let before = points.find(|(point, _)| last.day.days_since(point.day) >= LEAST_APART_DAYS);
    let mut entries = vec![entry];
    let comes = match &before {
        _ if last.mean > WEED_FREE_UP_TO => LankyComes::Now,
        None => LankyComes::OneSample,
        Some((before, entry)) => {
            entries.push(entry.clone());
            passes(before, &last)
        }
    };
    Some(Lanky { sturdiness: last.mean, measured_on: last.day, limit: WEED_FREE_UP_TO, comes, entries })
}

fn passes(before: &Point, last: &Point) -> LankyComes {
    let rise = last.mean - before.mean;
    if rise <= RISE_ERRORS * (before.variance + last.variance).sqrt() || rise <= 0.0 {
        return LankyComes::NotSeen;
    }
    let a_day = rise / f64::from(last.day.days_since(before.day));
    let days = ((WEED_FREE_UP_TO - last.mean) / a_day).ceil();
    if days > f64::from(AHEAD_DAYS) { LankyComes::NotSeen } else { LankyComes::On(last.day.plus(days as i32)) }
}
