//! How many to sow, as it is asked of a lot or a species: for so many plants, else for the places open in the beds.

use super::{NoPlan, SowingPlan, Wanted, open_places, sowing_plan, standing_in_trays};
use crate::base::SpeciesKey;
use crate::reckon::picture::Picture;
use crate::reckon::stock::LotStory;

/// What was asked, and the answer.
#[derive(Clone, PartialEq, Debug)]
pub struct SowingAsked {
    /// Places open in the beds that plan the species.
    pub open_places: u32,
    /// Plants of it that stand in trays.
    pub standing: u32,
    /// Whether the number of plants was asked for, not taken from the beds.
    pub asked: bool,
    /// How many to sow; none where no place is open and nothing was asked.
    pub plan: Option<Result<SowingPlan, NoPlan>>,
}

impl SowingAsked {
    /// For `plants`, else for the places open in the beds; of a lot, or of a species of which there is none.
    pub fn of(
        picture: &Picture,
        species: Option<&SpeciesKey>,
        lot: Option<&LotStory>,
        plants: Option<u32>,
        sure: f64,
    ) -> SowingAsked {
        let open_places = species.map_or(0, |species| open_places(picture, species));
        let wanted = plants.or((open_places > 0).then_some(open_places));
        let plan = wanted.map(|plants| match species {
            Some(species) => sowing_plan(picture, species, lot, Wanted { plants, sure }),
            None => Err(NoPlan::UnknownSpecies),
        });
        let standing = species.map_or(0, |species| standing_in_trays(picture, species));
        SowingAsked { open_places, standing, asked: plants.is_some(), plan }
    }
}
