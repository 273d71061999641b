//! What a cut or a loss of nurse plants does: whether the plants are gone, whether light comes in, whether the ground is
//! loosened.

use crate::base::SpeciesKey;
use crate::nursery::entry::NurseCut;
use crate::nursery::entry::types::CutWhat;
use crate::reckon::site::Site;

/// The key of cassava, whose harvest lifts its tubers.
const CASSAVA: &str = "CAS";
/// The key of maize, an annual that is gone with its harvest.
const MAIZE: &str = "MAI";
/// Stems cut, trees felled, harvests that take stems, and losses let light in from this share of the nurse plants of that
/// species on (ours): one bunch or one stem of many does not make a light reading worthless.
const CUT_OPENS_SHARE: f64 = 0.1;
/// Leaves cut let light in from this share of the leaves of that species on (ours).
const LEAVES_OPEN_SHARE: f64 = 0.3;
/// Lets the shares themselves be enough although 4 of 40 may not be exactly 0.1 in a computer.
const FUZZ: f64 = 1e-9;

/// What a cut does.
pub(super) struct CutEffect {
    /// The plants cut no longer live.
    pub ends_plants: bool,
    /// A light reading before it no longer holds.
    pub opens_light: bool,
    /// Tubers were lifted.
    pub lifts_tubers: bool,
    /// The share of what stood of that species: of its plants, of leaves of its leaves. Where nobody wrote how much, all.
    pub share: f64,
}

/// What a cut does where `lived` nurse plants of the species stood. A banana stem dies with its bunch, the mat lives on.
pub(super) fn effect(site: &Site, nurse: &SpeciesKey, cut: &NurseCut, lived: u32) -> CutEffect {
    let cassava = nurse.as_str() == CASSAVA;
    let ends_with_harvest = cassava || nurse.as_str() == MAIZE;
    let profile = site.profile(nurse);
    let dies = profile.and_then(|profile| profile.dies_after_fruiting.as_ref()).is_some_and(|figure| figure.value);
    let (share, counted) = (cut.share.map(|share| share.0), cut.count.map(|count| share_of(count.0, lived)));
    let enough = counted.or(share).is_none_or(|share| share + FUZZ >= CUT_OPENS_SHARE);
    // A share of the leaves of some of the plants.
    let leaves = counted.unwrap_or(1.0) * share.unwrap_or(1.0);
    let of_plants = counted.or(share).unwrap_or(1.0);
    match cut.what {
        CutWhat::Leaves => CutEffect {
            ends_plants: false,
            opens_light: leaves + FUZZ >= LEAVES_OPEN_SHARE,
            lifts_tubers: false,
            share: leaves,
        },
        CutWhat::Stem => CutEffect { ends_plants: false, opens_light: enough, lifts_tubers: false, share: of_plants },
        CutWhat::Harvest => CutEffect {
            ends_plants: ends_with_harvest,
            opens_light: (ends_with_harvest || dies) && enough,
            lifts_tubers: cassava,
            share: of_plants,
        },
        CutWhat::Felled => {
            CutEffect { ends_plants: true, opens_light: enough, lifts_tubers: cassava, share: of_plants }
        }
    }
}

/// Whether losses of nurse plants let light in: as many as a cut that does.
pub(super) fn loss_opens(lived: u32, alive: u32) -> bool {
    alive < lived && share_of(lived - alive, lived) + FUZZ >= CUT_OPENS_SHARE
}

/// A share of the plants; all of them where none lived by the books.
pub(super) fn share_of(plants: u32, lived: u32) -> f64 {
    if lived == 0 { 1.0 } else { (f64::from(plants) / f64::from(lived)).min(1.0) }
}
