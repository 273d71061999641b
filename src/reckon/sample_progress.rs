//! A sample while it is being measured: its mean so far, and how many more plants would do.

use crate::science::sampling::sample_size_mean;

/// How near the mean is to be known, as a share of it (ours: two tenths of the width of a usual height band).
pub(crate) const WANTED_ERROR: f64 = 0.05;
/// How sure that is to be.
pub(crate) const WANTED_LEVEL: f64 = 0.95;
/// The fewest plants of a sample that a verdict takes seriously (common practice: samples of 30).
pub(crate) const USUAL_SAMPLE: u32 = 30;
/// From so many on, the spread of the sample says how many are needed.
const FROM: usize = 5;

/// A sample so far.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct SampleProgress {
    /// The mean so far.
    pub mean: f64,
    /// How many more plants would do, at most up to the usual sample.
    pub more: u32,
}

/// Heights so far; none for an empty sample. With few plants the usual sample is asked for, then what the spread needs,
/// never more than the usual sample, nor more than stand.
pub(crate) fn sample_progress(heights_cm: &[f64], standing: Option<u32>) -> Option<SampleProgress> {
    if heights_cm.is_empty() {
        return None;
    }
    let count = heights_cm.len();
    let mean = heights_cm.iter().sum::<f64>() / count as f64;
    let spread = heights_cm.iter().map(|height| (height - mean).powi(2)).sum::<f64>() / (count.max(2) - 1) as f64;
    let wanted = if count < FROM || mean <= 0.0 {
        USUAL_SAMPLE
    } else {
        let needed =
            sample_size_mean(spread.sqrt(), mean * WANTED_ERROR, WANTED_LEVEL, standing.filter(|all| *all > 0));
        needed.map_or(USUAL_SAMPLE, |needed| needed.min(USUAL_SAMPLE))
    };
    let wanted = standing.map_or(wanted, |standing| wanted.min(standing));
    Some(SampleProgress { mean, more: wanted.saturating_sub(count as u32) })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn even_plants_need_few_and_uneven_ones_the_usual_sample() {
        assert_eq!(sample_progress(&[], None), None);
        assert_eq!(sample_progress(&[20.0], None).unwrap().more, 29);
        let even = sample_progress(&[20.0, 20.5, 19.5, 20.2, 19.8, 20.0], None).unwrap();
        assert_eq!(even.more, 0);
        let uneven = sample_progress(&[8.0, 30.0, 12.0, 25.0, 18.0, 40.0], None).unwrap();
        assert_eq!(uneven.more, 24);
    }

    #[test]
    fn never_more_plants_are_asked_for_than_stand() {
        assert_eq!(sample_progress(&[20.0], Some(15)).unwrap().more, 14);
        let uneven = [8.0, 30.0, 12.0, 25.0, 18.0, 40.0];
        assert_eq!(sample_progress(&uneven, Some(8)).unwrap().more, 2);
        assert_eq!(sample_progress(&uneven, Some(6)).unwrap().more, 0);
    }
}
