//! When the plants of a tray will be big enough, by its own samples; and whether they grow tall faster than thick.
//!
//! Pure: from the tray's samples and the species' profile. Where the samples tell no curve, the species' own days stand, with
//! the reason.

mod coming;
mod lanky;
mod sample_known;
#[cfg(test)]
mod tests;

pub(crate) use coming::LEAST_SAMPLES;
pub use coming::{Coming, NoCurve, Reach};
pub use lanky::{Lanky, LankyComes};
pub use sample_known::SampleKnown;

use crate::base::Day;
use crate::nursery::species::{Profile, Stem};
use crate::reckon::stock::TrayStory;
use crate::reckon::tray::size::mean;
use crate::reckon::tray::size::{has_collar_rule, last_sample};
use crate::reckon::tray::time;

/// What a measure of the plants grows toward.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Grows {
    /// What is needed: cm of height, mm of collar.
    pub target: f64,
    /// Mean of the last sample.
    pub mean: Option<f64>,
    /// When the mean is there.
    pub coming: Coming,
}

/// How the plants of a tray grow.
#[derive(Clone, PartialEq, Debug)]
pub struct TrayGrowth {
    /// Height, cm; none where the profile has no least height.
    pub height: Option<Grows>,
    /// Root collar, mm; none where no rule asks for one.
    pub collar: Option<Grows>,
    /// Height over collar.
    pub lanky: Option<Lanky>,
    /// What the last sample tells of its mean.
    pub sample: Option<SampleKnown>,
    /// Days of measuring.
    pub samples: usize,
    /// The species' least and usual day, counted from sowing.
    pub by_species: Option<(Day, Option<Day>)>,
}

/// How the plants of a tray grow, as known on a day.
pub(crate) fn tray_growth(story: &TrayStory, profile: Option<&Profile>, day: Day) -> TrayGrowth {
    let sown_on = time::age(story, day).youngest_on;
    let height_target = profile.and_then(|profile| profile.height_least_cm.as_ref()).map(|figure| figure.value);
    let soft = profile.and_then(|profile| profile.stem.as_ref()).is_some_and(|stem| stem.value == Stem::Soft);
    let woody = has_collar_rule(story) && !soft;
    let floor = profile.and_then(|profile| profile.collar_floor_mm.as_ref()).map(|figure| figure.value);
    let heights = coming::measured(story, |plant| Some(plant.height_cm.0));
    let collars = coming::measured(story, |plant| plant.collar_mm.map(|collar| collar.0));
    let grows = |target: Option<f64>, measured: &[(Day, Vec<f64>)]| {
        let target = target.filter(|target| *target > 0.0)?;
        let mean = measured.last().map(|(_, values)| mean(values));
        Some(Grows { target, mean, coming: coming::coming(measured, sown_on, target) })
    };
    let span = time::day_span(profile).zip(sown_on);
    TrayGrowth {
        height: grows(height_target, &heights),
        collar: grows(floor.filter(|_| woody), &collars),
        lanky: if woody { lanky::lanky(story) } else { None },
        sample: last_sample(story)
            .and_then(|sample| sample_known::sample_known(&sample, height_target, story.accounts.standing_count())),
        samples: heights.len(),
        by_species: span.map(|(days, sown)| (sown.plus(days.least), days.usual.map(|usual| sown.plus(usual)))),
    }
}
