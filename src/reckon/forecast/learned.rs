//! What this nursery's own sowings say of a species.

use std::sync::Arc;

use super::seen::{Seen, looks_of};
use super::species_days;
use crate::base::{SpeciesKey, TrayCode};
use crate::reckon::site::Site;
use crate::reckon::stock::TrayStory;
use crate::science::emergence::{Curve, fit_emergence};

/// One earlier sowing whose looks tell a curve.
#[derive(Clone, PartialEq, Debug)]
pub struct EarlierSowing {
    /// The tray.
    pub tray: TrayCode,
    /// Its curve, by maximum likelihood alone: nothing of the handbook is in it.
    pub curve: Curve,
    /// Seeds sown.
    pub seeds: u32,
}

/// The sowings whose looks identify a curve and go at least to the species' half day. Those that still go on, or were thrown
/// out, count as well: what was not up at their last look is censored there, not taken for dead.
pub fn earlier_sowings(stories: &[&Arc<TrayStory>], site: &Site) -> Vec<(SpeciesKey, EarlierSowing)> {
    let told = stories.iter().filter_map(|story| {
        let key = story.species.as_ref()?;
        let days = species_days(site.profile(key)?)?;
        let seen = looks_of(story).ok()?;
        if seen.looks.last_look() < days.half {
            return None;
        }
        let fit = fit_emergence(&seen.looks);
        let curve = fit.curve.filter(|_| fit.identifiable)?;
        Some((key.clone(), EarlierSowing { tray: story.code.clone(), curve, seeds: seen.seeds }))
    });
    told.collect()
}

/// The looks at a sowing that go at least to so many days after it.
pub fn sown_looks(story: &TrayStory, least_days: f64) -> Option<Seen> {
    looks_of(story).ok().filter(|seen| seen.looks.last_look() >= least_days)
}
