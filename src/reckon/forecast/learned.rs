//! What this nursery's own sowings say of a species.

use std::sync::Arc;

use super::sowing::{Seen, looks_of};
use super::{SpeciesDays, species_days};
use crate::base::{SpeciesKey, TrayCode};
use crate::reckon::site::Site;
use crate::reckon::stock::TrayStory;
use crate::science::emergence::{SeenSowing, fit_emergence};

/// One earlier sowing, as far as it was looked at.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct EarlierSowing {
    /// The tray.
    pub tray: TrayCode,
    /// What was seen of it; its curve by maximum likelihood alone: nothing of the handbook is in it.
    pub seen: SeenSowing,
}

/// The sowings that were looked at on the species' half day or later. Those that still go on, were thrown out, or of which
/// nothing came up count as well: what was not up at their last look is censored there, not taken for dead. Of several
/// sowings in one tray nobody knows whose seedlings came.
pub(crate) fn earlier_sowings(stories: &[&Arc<TrayStory>], site: &Site) -> Vec<(SpeciesKey, EarlierSowing)> {
    let told = stories.iter().filter_map(|story| {
        let key = story.species.as_ref()?;
        let days = species_days(site.profile(key)?)?;
        Some((key.clone(), earlier_sowing(story, days)?))
    });
    told.collect()
}

/// The same of one.
pub(super) fn earlier_sowing(story: &TrayStory, days: SpeciesDays) -> Option<EarlierSowing> {
    let looks = sown_looks(story, days.half)?.looks;
    let fit = fit_emergence(&looks);
    let seen = SeenSowing {
        seeds: looks.seeds(),
        emerged: looks.emerged(),
        last_look: looks.last_look(),
        curve: fit.curve.filter(|_| fit.identifiable),
    };
    Some(EarlierSowing { tray: story.code.clone(), seen })
}

/// The looks at a sowing that go at least to so many days after it.
pub(crate) fn sown_looks(story: &TrayStory, least_days: f64) -> Option<Seen> {
    looks_of(story).ok().filter(|seen| seen.last_look.is_some() && seen.looks.last_look() >= least_days)
}
