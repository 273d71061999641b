//! How near the mean of a sample is known, and how many more plants would do.

use crate::base::{Day, EntryId};
use crate::reckon::sample_progress::{WANTED_LEVEL, sample_progress};
use crate::reckon::stock::SampleLook;
use crate::science::sampling::mean_half_width;

/// What the last sample tells of its mean height.
#[derive(Clone, PartialEq, Debug)]
pub struct SampleKnown {
    /// The day.
    pub day: Day,
    /// Plants measured.
    pub plants: u32,
    /// Mean height, cm.
    pub mean_cm: f64,
    /// How near it is known, cm, 95 % sure; none for one plant.
    pub within_cm: Option<f64>,
    /// How many more plants would do.
    pub more: u32,
    /// Whether the mean may lie on either side of the species' least height.
    pub undecided: bool,
    /// The sample.
    pub entry: EntryId,
}

/// What a sample tells; none where nothing was measured.
pub(super) fn sample_known(sample: &SampleLook, least_cm: Option<f64>, standing: u32) -> Option<SampleKnown> {
    let heights: Vec<f64> = sample.plants.iter().map(|plant| plant.height_cm.0).collect();
    let progress = sample_progress(&heights, Some(standing).filter(|standing| *standing > 0))?;
    let count = u32::try_from(heights.len()).unwrap_or(u32::MAX);
    let squares: f64 = heights.iter().map(|height| (height - progress.mean).powi(2)).sum();
    let spread = (squares / (f64::from(count) - 1.0).max(1.0)).sqrt();
    let within_cm = mean_half_width(spread, count, WANTED_LEVEL).ok();
    let undecided = least_cm
        .zip(within_cm)
        .is_some_and(|(least, within)| progress.more > 0 && (progress.mean - least).abs() < within);
    Some(SampleKnown {
        day: sample.day,
        plants: count,
        mean_cm: progress.mean,
        within_cm,
        more: progress.more,
        undecided,
        entry: sample.entry.clone(),
    })
}
