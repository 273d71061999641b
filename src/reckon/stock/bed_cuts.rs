//! What a cut of nurse plants does: whether the plants are gone, whether light comes in, whether the ground is loosened.

use crate::base::SpeciesKey;
use crate::nursery::entry::types::CutWhat;
use crate::reckon::site::Site;

/// The key of cassava, whose harvest lifts its tubers.
const CASSAVA: &str = "CAS";
/// The key of maize, an annual that is gone with its harvest.
const MAIZE: &str = "MAI";
/// A harvest that takes stems lets light in when it is at least this share of the nurse plants of that species (ours):
/// one bunch of many does not make a light reading worthless.
const HARVEST_OPENS_SHARE: f64 = 0.1;

/// What a cut does.
pub(super) struct CutEffect {
    /// The plants cut no longer live.
    pub ends_plants: bool,
    /// A light reading before it no longer holds.
    pub opens_light: bool,
    /// Tubers were lifted.
    pub lifts_tubers: bool,
}

/// What a cut of `plants` out of `lived` does. A banana stem dies with its bunch, the mat lives on. Cut leaves grow back
/// in weeks and leave a reading as it is.
pub(super) fn effect(site: &Site, nurse: &SpeciesKey, what: CutWhat, plants: Option<u32>, lived: u32) -> CutEffect {
    let cassava = nurse.as_str() == CASSAVA;
    let ends_with_harvest = cassava || nurse.as_str() == MAIZE;
    let profile = site.profile(nurse);
    let dies = profile.and_then(|profile| profile.dies_after_fruiting.as_ref()).is_some_and(|figure| figure.value);
    let enough = plants.is_none_or(|plants| f64::from(plants) >= HARVEST_OPENS_SHARE * f64::from(lived));
    match what {
        CutWhat::Leaves => CutEffect { ends_plants: false, opens_light: false, lifts_tubers: false },
        CutWhat::Stem => CutEffect { ends_plants: false, opens_light: true, lifts_tubers: false },
        CutWhat::Harvest => CutEffect {
            ends_plants: ends_with_harvest,
            opens_light: (ends_with_harvest || dies) && enough,
            lifts_tubers: cassava,
        },
        CutWhat::Felled => CutEffect { ends_plants: true, opens_light: true, lifts_tubers: cassava },
    }
}
