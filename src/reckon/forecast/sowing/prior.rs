//! What is believed of a sowing before any of it comes up: the profile, then this nursery's earlier sowings, then its lot.

use crate::base::Day;
use crate::nursery::species::Profile;
use crate::reckon::forecast::{EarlierSowing, species_days};
use crate::reckon::lots::{counts_as, lot_outlook};
use crate::reckon::stock::{LotStory, LotTest};
use crate::science::emergence::{CurvePrior, HANDBOOK_SEEDS, HANDBOOK_SEEDS_VARYING, SEEDS_OF_A_LOT_TEST, SeenSowing};

/// Germination where neither profile nor test says any: nothing known. Ours.
pub(crate) const UNKNOWN_GERMINATION: f64 = 0.5;

/// Seeds as of which the germination of a profile counts for a lot nobody tested: few where the profile says that lots differ
/// widely.
pub(crate) fn handbook_seeds(profile: &Profile) -> f64 {
    let varies = profile.germination_varies.as_ref().is_some_and(|figure| figure.value);
    if varies { HANDBOOK_SEEDS_VARYING } else { HANDBOOK_SEEDS }
}

/// What is believed of a sowing of the species: the profile, then earlier sowings here, then a test of its lot. None where the
/// profile has no days of emergence.
pub(crate) fn prior_of(profile: &Profile, earlier: &[EarlierSowing], test: Option<&LotTest>) -> Option<CurvePrior> {
    let days = species_days(profile)?;
    let fresh = profile.germination_fresh_pct.as_ref().map_or(UNKNOWN_GERMINATION, |figure| figure.value / 100.0);
    let handbook = CurvePrior::of_species(Some(days.first), days.half, Some(days.last), fresh.clamp(0.0, 1.0)).ok()?;
    let seen: Vec<SeenSowing> = earlier.iter().map(|sowing| sowing.seen).collect();
    let prior = handbook.weighing(handbook_seeds(profile)).with_sowings(&seen);
    Some(match test.and_then(|test| counts_as(test, profile)) {
        Some((share, seeds)) => prior.with_lot_test(share, seeds),
        None => prior,
    })
}

/// What is believed of seed of a lot sown on a day. Where nobody has tested the lot the viability written on arrival counts
/// like a test; and what it lost in store until it was sown comes off.
pub(crate) fn prior_of_lot(
    profile: &Profile,
    earlier: &[EarlierSowing],
    lot: Option<&LotStory>,
    sown: Day,
) -> Option<CurvePrior> {
    let Some(lot) = lot else { return prior_of(profile, earlier, None) };
    if let Some(last) = lot.tests.last() {
        return prior_of(profile, earlier, Some(last));
    }
    let prior = prior_of(profile, earlier, as_test(lot).as_ref())?;
    let left = lot_outlook(lot, Some(profile), sown).viability.ok().and_then(|told| told.left());
    Some(left.map_or(prior, |left| prior.with_left(left)))
}

/// What was hoped for of seed of a lot by what was known on a day: the tests made by then, else what was written on arrival,
/// else fresh seed. What untested seed had lost is not taken off: who sows it hopes for good seed, and is to be told.
pub(crate) fn hoped_of_lot(
    profile: &Profile,
    earlier: &[EarlierSowing],
    lot: Option<&LotStory>,
    known: Day,
) -> Option<CurvePrior> {
    let tested = lot.and_then(|lot| lot.tests.iter().rfind(|test| test.day <= known));
    let written = lot.filter(|_| tested.is_none()).and_then(as_test);
    prior_of(profile, earlier, tested.or(written.as_ref()))
}

/// What is written of the viability on arrival counts like a test of so many seeds: as much as a test counts at most.
pub(crate) fn as_test(lot: &LotStory) -> Option<LotTest> {
    let (pct, day, entry) = (lot.initial_pct?, lot.received?, lot.stores.first()?.entry.clone());
    let alive = (pct / 100.0 * SEEDS_OF_A_LOT_TEST).round().clamp(0.0, SEEDS_OF_A_LOT_TEST) as u32;
    // As of a test that was counted to its end.
    Some(LotTest { day, replicates: vec![(SEEDS_OF_A_LOT_TEST as u32, alive)], days: u32::MAX, entry })
}
