//! Containers to prepare, and how many seeds to put into each.

use super::{Germination, NoPlan, Wanted};
use crate::nursery::species::Profile;
use crate::science::chance::Chance;
use crate::science::sowing::{SowingNumber, seeds_to_sow};

/// So many seeds go into a container that at least this share of the containers gets a seedling. Dumroese, Luna & Landis 2009,
/// USDA Agriculture Handbook 730 (from memory).
pub(crate) const FILLED_SHARE: f64 = 0.90;
/// More seeds than this in a container are not sown: such seed is sown in a seedbed. Same source.
pub(crate) const MOST_EACH: u32 = 5;

/// Several seeds in each container, thinned to one.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct SeveralEach {
    /// Seeds in each.
    pub seeds_each: u32,
    /// Containers.
    pub containers: u32,
    /// Seeds in all.
    pub seeds: u32,
}

/// Containers to prepare.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Containers {
    /// Whether the species is sown in a seedbed and pricked out.
    pub seedbed: bool,
    /// Containers for the seedlings that are pricked out.
    pub pricked_out: u32,
    /// One seed in each: as many containers as seeds.
    pub one_each: u32,
    /// Several in each, where one leaves too many empty; none where even five would.
    pub several: Option<SeveralEach>,
    /// Whether the seed comes up so poorly that even five in a container leave too many empty.
    pub too_poor: bool,
}

impl Containers {
    /// From what is believed.
    pub(super) fn of(
        profile: &Profile,
        germination: &Germination,
        survival: Chance,
        told: &SowingNumber,
        wanted: Wanted,
    ) -> Result<Containers, NoPlan> {
        let sown_in = profile.sow_place.as_ref().map_or("", |place| place.value.as_str());
        let seedbed = sown_in.starts_with("seedbed") && !sown_in.contains("direct");
        let pricked_out = seeds_to_sow(survival, None, wanted.plants, wanted.sure)?.seeds;
        let each = seeds_each(germination.mean());
        let several = match each.filter(|each| *each > 1) {
            Some(each) => {
                let filled = filled(germination.chance()?, each)?;
                let containers = seeds_to_sow(filled, Some(survival), wanted.plants, wanted.sure)?.seeds;
                Some(SeveralEach { seeds_each: each, containers, seeds: containers.saturating_mul(each) })
            }
            None => None,
        };
        Ok(Containers { seedbed, pricked_out, one_each: told.seeds, several, too_poor: each.is_none() })
    }
}

/// The fewest seeds that fill enough containers; none where more than five would be needed.
pub(super) fn seeds_each(mean: f64) -> Option<u32> {
    (1..=MOST_EACH).find(|each| 1.0 - (1.0 - mean).powi(*each as i32) >= FILLED_SHARE)
}

/// The belief that a container with several seeds gets a seedling: mean and variance of 1 - (1 - g)^k for a beta g, as a beta.
pub(super) fn filled(germination: Chance, each: u32) -> Result<Chance, NoPlan> {
    let (a, b) = match germination {
        Chance::Known(share) => return Ok(Chance::known("germination", 1.0 - (1.0 - share).powi(each as i32))?),
        Chance::Beta { a, b } => (a, b),
    };
    // E[(1 - g)^k] of a beta is a product.
    let empty = |k: u32| (0..k).fold(1.0, |all, i| all * (b + f64::from(i)) / (a + b + f64::from(i)));
    let (mean, square) = (empty(each), empty(2 * each));
    let variance = square - mean * mean;
    let most = mean * (1.0 - mean);
    if variance <= 1e-12 || variance >= most {
        return Ok(Chance::known("germination", 1.0 - mean)?);
    }
    let weight = most / variance - 1.0;
    Ok(Chance::beta("germination", (1.0 - mean) * weight, mean * weight)?)
}
