//! What could hurt somebody at a stop, and the plants that are in their hands.

use super::{RoundReason, Stake, Stop, Task};
use crate::base::SpeciesKey;
use crate::nursery::caution::Caution;
use crate::nursery::entry::subject::Subject;
use crate::nursery::entry::types::Roots;
use crate::reckon::picture::{BedPicture, BedSpecies, Picture};

impl Stop {
    /// What could hurt somebody who does it: the caution of its task, that of the knife where roots are cut with it, and that of
    /// hands among plants whose waiting time has just ended.
    pub fn cautions(&self) -> Vec<Caution> {
        let cuts_roots = matches!(self.why, RoundReason::OverdueInContainer { roots: Some(Roots::Circling), .. })
            .then_some(Caution::Knives);
        let after_wait = self.after_wait.as_ref().map(|_| Caution::AfterSpraying);
        let hygiene = (self.at_sick && self.task != Task::ReadLabel).then_some(Caution::Hygiene);
        let of_task = self.task.facts().caution;
        of_task
            .into_iter()
            .chain([hygiene, cuts_roots, after_wait].into_iter().flatten().filter(|one| of_task != Some(*one)))
            .collect()
    }

    /// The most plants, or seeds, that can be lost or gained at it, by what is there; none where nobody knows.
    pub(in crate::reckon::round) fn most_there(&self, picture: &Picture) -> Option<f64> {
        let most = match (&self.why, &self.subject) {
            (RoundReason::Fits { .. }, _) => return Some(self.at_stake.plants),
            (RoundReason::BareLeft { left, .. }, _) => u64::from(*left),
            (_, Subject::Tray(code)) => {
                let tray = picture.trays.get(code)?;
                let seeds = if tray.story.seed_is_due(picture.day) { tray.story.accounts.sown } else { 0 };
                u64::from(tray.standing).max(seeds)
            }
            (_, Subject::Lot(code)) => u64::from(picture.lots.get(code)?.seeds_left?),
            (_, Subject::Bed(name)) => {
                let bed = picture.beds.get(name)?;
                let of_species = |line: &BedSpecies| match self.at_stake.what {
                    Stake::Planted => line.living,
                    Stake::Planting | Stake::Seedlings | Stake::Seed | Stake::Knowledge => line.open_positions,
                };
                let nurses = bed.nurses.iter().map(|nurse| u64::from(nurse.alive));
                let nurses = nurses.filter(|_| self.at_stake.what == Stake::Planted);
                bed.species.iter().map(|line| u64::from(of_species(line))).chain(nurses).sum()
            }
            (_, Subject::Place(name)) => {
                let here = picture.trays.values().filter(|tray| tray.place.as_ref() == Some(name));
                here.map(|tray| u64::from(tray.standing)).sum()
            }
            (_, Subject::Site) => return None,
        };
        Some(most as f64)
    }

    /// The species handled here, each once: of the tray or lot, and where it goes out of the beds it goes to; in a bed what is
    /// counted, or what stands where the ground is worked.
    pub fn plants_handled(&self, picture: &Picture) -> Vec<SpeciesKey> {
        match (self.task, &self.subject) {
            // It is read from outside.
            (Task::ReadLabel | Task::Gauge | Task::ReadLight | Task::CheckSoil | Task::Fence, _) => Vec::new(),
            (_, Subject::Tray(code)) => {
                let own = picture.trays.get(code).and_then(|tray| tray.species.as_ref());
                let beds = if let RoundReason::Fits { beds, .. } = &self.why { beds.as_slice() } else { &[] };
                // Who plants among them handles what stands in the bed.
                let there = beds.iter().filter_map(|to| picture.beds.get(&to.bed)).flat_map(|bed| standing_in(bed));
                let there: Vec<SpeciesKey> = there.collect();
                once(own.into_iter().chain(&there))
            }
            (_, Subject::Lot(code)) => picture.lots.get(code).and_then(|lot| lot.species.clone()).into_iter().collect(),
            (Task::CountSurvivors, Subject::Bed(_)) => {
                if let RoundReason::SurvivalDue { species, .. } = &self.why {
                    vec![species.clone()]
                } else {
                    Vec::new()
                }
            }
            (
                Task::CountNurses
                | Task::CutBunches
                | Task::LiftTubers
                | Task::CutForLight
                | Task::SetNurses
                | Task::RemoveNurses,
                Subject::Bed(name),
            ) => picture.beds.get(name).map_or_else(Vec::new, |bed| nurses(bed)),
            (_, Subject::Bed(name)) => picture.beds.get(name).map_or_else(Vec::new, |bed| standing_in(bed)),
            (_, Subject::Place(_) | Subject::Site) => Vec::new(),
        }
    }
}

/// The nurse plants that live in a bed.
pub fn nurses(bed: &BedPicture) -> Vec<SpeciesKey> {
    once(bed.nurses.iter().filter(|nurse| nurse.alive > 0).map(|nurse| &nurse.nurse))
}

/// Everything that lives in a bed.
pub(crate) fn standing_in(bed: &BedPicture) -> Vec<SpeciesKey> {
    let nurses = bed.nurses.iter().filter(|nurse| nurse.alive > 0).map(|nurse| &nurse.nurse);
    let planted =
        bed.story.cohorts.iter().filter(|cohort| cohort.living > 0).filter_map(|cohort| cohort.species.as_ref());
    once(nurses.chain(planted))
}

fn once<'a>(all: impl Iterator<Item = &'a SpeciesKey>) -> Vec<SpeciesKey> {
    let mut seen: Vec<SpeciesKey> = Vec::new();
    for key in all {
        if !seen.contains(key) {
            seen.push(key.clone());
        }
    }
    seen
}
