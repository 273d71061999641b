//! What is believed of seed and nursery before it is sown.

use std::sync::Arc;

use super::NoPlan;
use crate::base::{SpeciesKey, TrayCode};
use crate::nursery::species::Profile;
use crate::reckon::forecast::{EarlierSowing, UNKNOWN_GERMINATION, as_test, earlier_sowings, handbook_seeds, prior_of};
use crate::reckon::lots::{LotOutlook, SEEN_SHARE};
use crate::reckon::picture::{Picture, Stage};
use crate::reckon::stock::{LotStory, TrayStory};
use crate::science::WrongInput;
use crate::science::chance::Chance;
use crate::science::emergence::SEEDS_OF_A_LOT_TEST;

/// Share of seedlings that become a plant to go out, before anything was raised here: usual culls of 10 to 25 % and some losses.
/// Ours, from common practice.
pub(crate) const USUAL_SURVIVAL: f64 = 0.75;
/// Seedlings as of which that counts: its middle 90 % then goes from about a half to nearly all. Ours.
pub(crate) const SURVIVAL_SEEDLINGS: f64 = 8.0;
/// Finished trays as of which the usual survival counts beside this nursery's own. Ours, as for earlier sowings.
pub(crate) const SURVIVAL_TRAYS: f64 = 5.0;
/// Smallest share that a belief is kept from nothing and all.
const LEAST_SHARE: f64 = 1e-3;

/// What is believed of the share of seeds that come up: a beta distribution.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Germination {
    /// What comes, as if so many seeds had been seen to come.
    pub a: f64,
    /// What does not.
    pub b: f64,
    /// This nursery's sowings of the species in it.
    pub sowings: usize,
    /// Seeds tested of this lot, and those that germinated.
    pub tested: Option<(u32, u32)>,
    /// What is left today of what lived at the beginning, by how the lot is kept; none for seed fresh from the tree or where
    /// nothing is known.
    pub left: Option<f64>,
    /// Whether nobody can say how much of a lot that was not tested still lives.
    pub life_unknown: bool,
}

impl Germination {
    /// The profile, then sowings of the species here, then the last test of the lot; then what the lot has lost since.
    pub(super) fn of(
        picture: &Picture,
        species: &SpeciesKey,
        profile: &Profile,
        lot: Option<&LotStory>,
        outlook: Option<&LotOutlook>,
    ) -> Result<Germination, NoPlan> {
        let stories: Vec<&Arc<TrayStory>> =
            picture.stories().filter(|story| story.species.as_ref() == Some(species)).collect();
        let earlier: Vec<EarlierSowing> =
            earlier_sowings(&stories, &picture.site).into_iter().map(|(_, sowing)| sowing).collect();
        let test =
            lot.and_then(|lot| lot.tests.iter().rev().find(|test| test.replicates.iter().any(|(laid, _)| *laid > 0)));
        let written = lot.and_then(as_test);
        let (a, b, sowings) = match prior_of(profile, &earlier, test.or(written.as_ref())) {
            Some(prior) => (prior.d.a, prior.d.b, earlier.len()),
            None => {
                let fresh = profile.germination_fresh_pct.as_ref().map_or(UNKNOWN_GERMINATION, |pct| pct.value / 100.0);
                let fresh = fresh.clamp(LEAST_SHARE, 1.0 - LEAST_SHARE);
                let seeds = handbook_seeds(profile);
                (seeds * fresh, seeds * (1.0 - fresh), 0)
            }
        };
        let left = outlook.and_then(|outlook| outlook.viability.as_ref().ok()).and_then(|told| told.left());
        let whole = outlook.and_then(|outlook| outlook.tests.iter().rev().find(|test| test.seen >= SEEN_SHARE));
        let tested = whole.map(|test| (test.seeds, test.germinated));
        let alive = |outlook: &LotOutlook| outlook.tests.iter().any(|test| test.germinated > 0);
        let life_unknown = outlook.is_some_and(|outlook| outlook.viability.is_err() && !alive(outlook));
        let known = Germination { a, b, sowings, tested, left, life_unknown };
        if known.mean() < LEAST_SHARE { Err(NoPlan::Dead) } else { Ok(known) }
    }

    /// Its mean.
    pub fn mean(&self) -> f64 {
        self.a / (self.a + self.b) * self.left.unwrap_or(1.0)
    }

    /// As a chance, once a test has come out as expected: the same mean, known better.
    pub(super) fn tested_as_expected(&self) -> Result<Chance, WrongInput> {
        let (weight, mean) = (self.a + self.b + SEEDS_OF_A_LOT_TEST, self.mean());
        Chance::beta("germination", weight * mean, weight * (1.0 - mean))
    }

    /// As a chance, what was lost in store taken off the mean and the weight kept.
    pub(super) fn chance(&self) -> Result<Chance, WrongInput> {
        let (weight, mean) = (self.a + self.b, self.mean());
        Chance::beta("germination", weight * mean, weight * (1.0 - mean))
    }
}

/// What is believed of the share of seedlings that become a plant to go out.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Survival {
    /// Its mean.
    pub mean: f64,
    /// Finished trays of the species in it.
    pub trays: usize,
    /// Plants of those trays that went out, and that were lost or thrown out.
    pub seen: (u64, u64),
}

impl Survival {
    /// The usual share, moved by this nursery's finished trays of the species. A tray whose plants went on into others counts
    /// once those are finished too.
    pub(super) fn of(picture: &Picture, species: &SpeciesKey) -> Survival {
        // What is not in the Picture rests: it is finished.
        let spent = |tray: &TrayCode| picture.trays.get(tray).is_none_or(|tray| tray.stage == Stage::Spent);
        let finished = picture.stories().filter(|story| {
            let later = story.moves_out.iter().all(|spell| spent(&spell.what.0));
            story.species.as_ref() == Some(species) && spent(&story.code) && later
        });
        let (mut trays, mut good, mut bad) = (0, 0u64, 0u64);
        for story in finished {
            let went = story.accounts.planted + story.accounts.given_out;
            trays += usize::from(went > 0);
            good += went;
            bad += story.accounts.lost_in_all() + story.accounts.culled_in_all();
        }
        let counted = if good > 0 { trays as f64 } else { 0.0 };
        let here = good as f64 / ((good + bad) as f64).max(1.0);
        let mean = (SURVIVAL_TRAYS * USUAL_SURVIVAL + counted * here) / (SURVIVAL_TRAYS + counted);
        Survival { mean: mean.clamp(LEAST_SHARE, 1.0 - LEAST_SHARE), trays, seen: (good, bad) }
    }

    /// As a chance.
    pub(super) fn chance(&self) -> Result<Chance, WrongInput> {
        Chance::beta("survival", SURVIVAL_SEEDLINGS * self.mean, SURVIVAL_SEEDLINGS * (1.0 - self.mean))
    }
}
