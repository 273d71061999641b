//! How many to sow, as it is asked of a lot or a species: for so many plants, else for the places open in the beds. What the trays
//! are expected to give comes off first.

use std::collections::BTreeMap;

use super::{NoPlan, SowingPlan, Wanted, expected_of_trays, open_places, sowing_plan, standing_in_trays};
use crate::base::{Range, SpeciesKey, TrayCode};
use crate::reckon::forecast::TrayStock;
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
    /// Plants needed: as asked, else for the open places; none where no place is open and nothing was asked.
    pub(crate) needed: Option<u32>,
    /// Plants that what stands or is sown is expected to give.
    pub(crate) coming: Range,
    /// Plants still to be raised: what is needed less what is likely to come.
    pub(crate) still_needed: Option<u32>,
    /// How many to sow for those; none where none is needed any more.
    pub plan: Option<Result<SowingPlan, NoPlan>>,
    /// How many to sow for all that are needed, where something is to come of trays.
    pub(crate) gross: Option<Result<SowingPlan, NoPlan>>,
}

impl SowingAsked {
    /// With what every tray is expected to give (`stock`): for `plants`, else for the places open in the beds; of a lot, or of a species of which there is none.
    pub fn of(
        picture: &Picture,
        stock: &BTreeMap<TrayCode, TrayStock>,
        species: Option<&SpeciesKey>,
        lot: Option<&LotStory>,
        plants: Option<u32>,
        sure: f64,
    ) -> SowingAsked {
        let open_places = species.map_or(0, |species| open_places(picture, species));
        let needed = plants.or((open_places > 0).then_some(open_places));
        let coming = species.filter(|_| needed.is_some()).map_or(Range::exact(0.0), |it| expected_of_trays(stock, it));
        // Whole plants; what is likely, rounded down.
        let likely = coming.likely.floor().clamp(0.0, f64::from(u32::MAX)) as u32;
        let still_needed = needed.map(|needed| needed.saturating_sub(likely));
        let plan_for = |plants: u32| match species {
            Some(species) => sowing_plan(picture, species, lot, Wanted { plants, sure }),
            None => Err(NoPlan::UnknownSpecies),
        };
        // Nonsense (no plants at all) is answered as such and is no need that is met.
        let plan = still_needed.filter(|still| *still > 0 || needed == Some(0)).map(plan_for);
        let gross = needed.filter(|needed| still_needed != Some(*needed)).map(plan_for);
        let standing = species.map_or(0, |species| standing_in_trays(picture, species));
        SowingAsked { open_places, standing, asked: plants.is_some(), needed, coming, still_needed, plan, gross }
    }
}
