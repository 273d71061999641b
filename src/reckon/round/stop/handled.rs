//! What could hurt somebody at a stop, and the plants that are in their hands.

use super::{RoundReason, Stop, Task};
use crate::base::SpeciesKey;
use crate::nursery::caution::Caution;
use crate::nursery::entry::subject::Subject;
use crate::nursery::entry::types::Roots;
use crate::reckon::picture::{BedPicture, Picture};

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

    /// The species handled here, each once: of the tray or lot; in a bed what is counted, or what stands where the ground is
    /// worked.
    pub fn plants_handled(&self, picture: &Picture) -> Vec<SpeciesKey> {
        match (self.task, &self.subject) {
            // It is read from outside.
            (Task::ReadLabel | Task::Gauge | Task::ReadLight | Task::CheckSoil | Task::Fence, _) => Vec::new(),
            (_, Subject::Tray(code)) => {
                picture.trays.get(code).and_then(|tray| tray.species.clone()).into_iter().collect()
            }
            (_, Subject::Lot(code)) => picture.lots.get(code).and_then(|lot| lot.species.clone()).into_iter().collect(),
            (Task::CountSurvivors, Subject::Bed(_)) => {
                if let RoundReason::SurvivalDue { species, .. } = &self.why {
                    vec![species.clone()]
                } else {
                    Vec::new()
                }
            }
            (Task::CountNurses, Subject::Bed(name)) => picture.beds.get(name).map_or_else(Vec::new, |bed| nurses(bed)),
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
pub fn standing_in(bed: &BedPicture) -> Vec<SpeciesKey> {
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
