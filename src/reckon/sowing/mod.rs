//! How many seeds to sow for so many plants, from what is believed of this seed and of this nursery.
//!
//! Pure: the species' profile, then this nursery's sowings and finished trays, then the lot's own test and its loss since.

mod asked;
mod belief;
mod containers;
#[cfg(test)]
mod tests;

pub use asked::SowingAsked;
pub use belief::{Germination, Survival};
pub use containers::Containers;
pub(crate) use containers::MOST_EACH;

use std::collections::BTreeMap;

use crate::base::{Range, SpeciesKey, TrayCode};
use crate::reckon::forecast::{TrayStock, sum};
use crate::reckon::lots::{LotOutlook, NoRetest, TEST_SEEDS, lot_outlook};
use crate::reckon::picture::Picture;
use crate::reckon::stock::LotStory;
use crate::science::WrongInput;
use crate::science::sowing::{MOST_SOWN, chance_of_enough, seeds_to_sow};

/// More seeds than so many for each plant are no advice: test the lot or get fresh seed. Ours.
pub const MOST_SEEDS_A_PLANT: u32 = 5;
/// How sure, where nobody says. Common practice.
pub(crate) const USUAL_SURE: f64 = 0.95;

/// What is asked.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Wanted {
    /// Plants that are to go out.
    pub plants: u32,
    /// How sure of them, above 0 and below 1.
    pub sure: f64,
}

/// How many seeds to sow, and what to prepare.
#[derive(Clone, PartialEq, Debug)]
pub struct SowingPlan {
    /// What was asked.
    pub wanted: Wanted,
    /// What is believed of the seed.
    pub germination: Germination,
    /// What is believed of the nursery.
    pub survival: Survival,
    /// Seeds to sow.
    pub seeds: u32,
    /// Chance of enough plants with so many.
    pub enough: f64,
    /// Mean share of seeds that become a plant.
    pub mean_success: f64,
    /// Seeds by dividing the wanted by that share.
    pub divided: u32,
    /// Chance that those are too few.
    pub divided_short: f64,
    /// Weight of the seeds, g, where seeds per kilogram are known: of the lot one figure, of the species from most to least.
    pub mass_g: Option<Range>,
    /// Seeds left in the lot, where known.
    pub seeds_left: Option<u32>,
    /// Chance of enough plants from all that is left, where that is fewer than needed.
    pub enough_from_left: Option<f64>,
    /// Seeds that would do once a test of the lot has come out as expected; none where it was tested, or holds too few seeds
    /// for a test, or a test would save nothing.
    pub seeds_if_tested: Option<u32>,
    /// Containers to prepare.
    pub containers: Containers,
}

/// Why there is no number.
#[derive(Clone, PartialEq, Debug)]
pub enum NoPlan {
    /// The species of the lot is not known here.
    UnknownSpecies,
    /// By its life or its tests none of the seed is expected to live.
    Dead,
    /// More seeds would have to be sown than [`MOST_SEEDS_A_PLANT`] for each plant.
    TooMany(TooMany),
    /// Nobody can say how much of the lot still lives.
    LifeUnknown {
        /// Plants wanted.
        plants: u32,
        /// Seeds of fresh seed for them.
        fresh: u32,
    },
    /// What was asked makes no sense, or no number of seeds would do.
    Wrong(WrongInput),
}

/// Why so many seeds would be needed that no number is told.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct TooMany {
    /// Plants wanted.
    pub(crate) plants: u32,
    /// Mean share of seeds that become a plant.
    pub(crate) mean_success: f64,
    /// Seeds by dividing the wanted by that share, where those would not be too many: it is not known well enough how many come up.
    pub(crate) on_average: Option<u32>,
    /// Whether the lot was tested: then only fresh seed helps.
    pub(crate) tested: bool,
    /// Whether its life is over before a test tells.
    pub(crate) too_late_to_test: bool,
}

/// So many seeds are never too many to tell: a handful more costs nothing. Ours.
const A_HANDFUL: u32 = 20;

/// The most seeds for so many plants of which a number is told.
pub(crate) fn most_seeds(plants: u32) -> u32 {
    plants.saturating_mul(MOST_SEEDS_A_PLANT).max(A_HANDFUL)
}

impl From<WrongInput> for NoPlan {
    fn from(wrong: WrongInput) -> NoPlan {
        NoPlan::Wrong(wrong)
    }
}

/// How many seeds of a species, or of a lot of it, to sow.
///
/// # Errors
/// Why there is no number.
pub fn sowing_plan(
    picture: &Picture,
    species: &SpeciesKey,
    lot: Option<&LotStory>,
    wanted: Wanted,
) -> Result<SowingPlan, NoPlan> {
    let profile = picture.site.profile(species).ok_or(NoPlan::UnknownSpecies)?;
    let outlook: Option<LotOutlook> = lot.map(|lot| lot_outlook(lot, Some(profile), picture.day));
    if outlook.as_ref().is_some_and(|outlook| outlook.is_dead(picture.day)) {
        return Err(NoPlan::Dead);
    }
    let germination = Germination::of(picture, species, profile, lot, outlook.as_ref())?;
    let survival = Survival::of(picture, species);
    let (come_up, become_plants) = (germination.chance()?, survival.chance()?);
    let most = most_seeds(wanted.plants);
    let retest = outlook.as_ref().map(|outlook| outlook.retest);
    let too_late_to_test = matches!(retest, Some(Err(NoRetest::LivesTooShort { .. })));
    let (tested, plants) = (germination.tested.is_some(), wanted.plants);
    let mean_success = come_up.mean() * become_plants.mean();
    let too_many =
        |on_average| Err(NoPlan::TooMany(TooMany { plants, mean_success, on_average, tested, too_late_to_test }));
    if plants > 0 && mean_success * f64::from(MOST_SEEDS_A_PLANT) < 1.0 {
        return too_many(None);
    }
    let told = match seeds_to_sow(come_up, Some(become_plants), plants, wanted.sure) {
        // Past the end of all reckoning, and so past that limit.
        Err(WrongInput::TooMany { .. }) if most < MOST_SOWN => return too_many(None),
        told => told?,
    };
    let divided = (f64::from(wanted.plants) / told.mean_success).ceil().min(f64::from(u32::MAX)) as u32;
    if told.seeds > most {
        return too_many(Some(divided).filter(|divided| *divided <= most));
    }
    if germination.life_unknown {
        return Err(NoPlan::LifeUnknown { plants, fresh: told.seeds });
    }
    let divided_short = 1.0 - chance_of_enough(come_up, Some(become_plants), wanted.plants, divided)?;
    let of_lot = lot.and_then(|lot| lot.seeds_per_kg).map(Range::exact);
    let per_kg = of_lot.or_else(|| {
        let (least, most) = (profile.seeds_per_kg_least.as_ref()?, profile.seeds_per_kg_most.as_ref()?);
        Some(Range { low: least.value, likely: (least.value + most.value) / 2.0, high: most.value })
    });
    let weighs = |per_kg: f64| f64::from(told.seeds) / per_kg * 1000.0;
    let seeds_left = lot.and_then(|lot| lot.seeds_left);
    let enough_from_left = match seeds_left.filter(|left| *left < told.seeds) {
        Some(left) => Some(chance_of_enough(come_up, Some(become_plants), wanted.plants, left)?),
        None => None,
    };
    let can_test =
        germination.tested.is_none() && !too_late_to_test && seeds_left.is_some_and(|left| left >= 2 * TEST_SEEDS);
    let seeds_if_tested = if can_test {
        let after = seeds_to_sow(germination.tested_as_expected()?, Some(become_plants), wanted.plants, wanted.sure)?;
        Some(after.seeds).filter(|seeds| *seeds < told.seeds)
    } else {
        None
    };
    Ok(SowingPlan {
        seeds_if_tested,
        wanted,
        containers: Containers::of(profile, &germination, become_plants, &told, wanted)?,
        germination,
        survival,
        seeds: told.seeds,
        enough: told.prob_at_n,
        mean_success: told.mean_success,
        divided,
        divided_short,
        mass_g: per_kg.filter(|per_kg| per_kg.low > 0.0).map(|per_kg| Range {
            low: weighs(per_kg.high),
            likely: weighs(per_kg.likely),
            high: weighs(per_kg.low),
        }),
        seeds_left,
        enough_from_left,
    })
}

/// Places that are open in the beds whose plan names a species.
pub fn open_places(picture: &Picture, species: &SpeciesKey) -> u32 {
    let lines = picture.beds.values().flat_map(|bed| &bed.species).filter(|line| line.species == *species);
    lines.fold(0, |sum, line| sum.saturating_add(line.open_positions))
}

/// Plants that the trays of a species, sown ones too, are expected to bring to going out: low, likely, high.
pub(crate) fn expected_of_trays(stock: &BTreeMap<TrayCode, TrayStock>, species: &SpeciesKey) -> Range {
    let plants: Vec<Range> = stock.values().filter(|tray| tray.species == *species).map(|tray| tray.plants).collect();
    sum(&plants)
}

/// Plants of a species that already stand in trays, by the books.
pub(crate) fn standing_in_trays(picture: &Picture, species: &SpeciesKey) -> u32 {
    let trays = picture.trays.values().filter(|tray| tray.species.as_ref() == Some(species));
    trays.fold(0, |sum, tray| sum.saturating_add(tray.standing))
}
