//! What a cut or a loss of nurse plants does: whether the plants are gone, whether light comes in, whether the ground is
//! loosened.

use super::GroundLook;
use crate::base::SpeciesKey;
use crate::nursery::entry::NurseCut;
use crate::nursery::entry::types::CutWhat;
use crate::reckon::site::Site;

/// The key of cassava, whose harvest lifts its tubers.
const CASSAVA: &str = "CAS";
/// The key of maize, an annual that is gone with its harvest.
const MAIZE: &str = "MAI";
/// Stems cut, trees felled, harvests that take stems, and losses since a light reading make it worthless from this share of the nurse plants
/// of that species on (ours): one bunch or one stem of many does not, and one after the other does.
const CUT_OPENS_SHARE: f64 = 0.1;
/// Leaves cut do from this share of the leaves of that species on (ours).
const LEAVES_OPEN_SHARE: f64 = 0.3;
/// Leaves that were chopped are back after so many days, on a straight line. Common practice: chopped again after 3 to 4
/// months.
pub(crate) const LEAVES_BACK_DAYS: f64 = 120.0;
/// Lets the shares themselves be enough although 4 of 40 may not be exactly 0.1 in a computer.
const FUZZ: f64 = 1e-9;

/// What a cut does.
pub(super) struct CutEffect {
    /// The plants cut no longer live.
    pub ends_plants: bool,
    /// It is of a kind that lets light in.
    pub lets_light_in: bool,
    /// Tubers were lifted.
    pub lifts_tubers: bool,
    /// The share of what stood of that species: of its plants, of leaves of its leaves. Where nobody wrote how much, all.
    pub share: f64,
}

/// Whether its harvest lifts tubers, and with them the plant.
pub(crate) fn lifts_tubers(nurse: &SpeciesKey) -> bool {
    nurse.as_str() == CASSAVA
}

/// Whether it is gone with its harvest.
pub(crate) fn ends_with_harvest(nurse: &SpeciesKey) -> bool {
    lifts_tubers(nurse) || nurse.as_str() == MAIZE
}

/// What a cut does where `lived` nurse plants of the species stood. A banana stem dies with its bunch, the mat lives on.
pub(super) fn effect(site: &Site, nurse: &SpeciesKey, cut: &NurseCut, lived: u32) -> CutEffect {
    let cassava = lifts_tubers(nurse);
    let ends_with_harvest = ends_with_harvest(nurse);
    let profile = site.profile(nurse);
    let dies = profile.and_then(|profile| profile.dies_after_fruiting.as_ref()).is_some_and(|figure| figure.value);
    let (share, counted) = (cut.share.map(|share| share.0), cut.count.map(|count| share_of(count.0, lived)));
    // A share of the leaves of some of the plants.
    let leaves = counted.unwrap_or(1.0) * share.unwrap_or(1.0);
    let of_plants = counted.or(share).unwrap_or(1.0);
    match cut.what {
        CutWhat::Leaves => CutEffect { ends_plants: false, lets_light_in: true, lifts_tubers: false, share: leaves },
        CutWhat::Stem => CutEffect { ends_plants: false, lets_light_in: true, lifts_tubers: false, share: of_plants },
        CutWhat::Harvest => CutEffect {
            ends_plants: ends_with_harvest,
            lets_light_in: ends_with_harvest || dies,
            lifts_tubers: cassava,
            share: of_plants,
        },
        CutWhat::Felled => {
            CutEffect { ends_plants: true, lets_light_in: true, lifts_tubers: cassava, share: of_plants }
        }
    }
}

/// Whether so much of the shade went with cuts and losses in their order that a light reading before them no longer holds: stems and leaves
/// are added up for each species, leaves that grew back meanwhile taken off.
pub(crate) fn ends_reading<'a>(since: impl Iterator<Item = &'a GroundLook>) -> bool {
    let cuts: Vec<&GroundLook> = since.filter(|cut| cut.lets_light_in).collect();
    let left = |until: &GroundLook, upto: usize, leaves: bool| -> f64 {
        let of_it = cuts.iter().take(upto + 1).filter(|cut| cut.nurse == until.nurse);
        let of_it = of_it.filter(|cut| (cut.what == Some(CutWhat::Leaves)) == leaves);
        let back =
            |cut: &GroundLook| if leaves { f64::from(until.day.days_since(cut.day)) / LEAVES_BACK_DAYS } else { 0.0 };
        of_it.map(|cut| 1.0 - cut.share.clamp(0.0, 1.0) * (1.0 - back(cut)).clamp(0.0, 1.0)).product()
    };
    cuts.iter().enumerate().any(|(upto, cut)| {
        let (stems, leaves) = (1.0 - left(cut, upto, false), 1.0 - left(cut, upto, true));
        stems / CUT_OPENS_SHARE + leaves / LEAVES_OPEN_SHARE >= 1.0 - FUZZ
    })
}

/// A share of the plants; all of them where none lived by the books.
pub(super) fn share_of(plants: u32, lived: u32) -> f64 {
    if lived == 0 { 1.0 } else { (f64::from(plants) / f64::from(lived)).min(1.0) }
}
