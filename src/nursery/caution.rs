//! The caution that stands where work is proposed or written down: one for each task of the round and each kind of entry.
//! Its sentence is `caution_...` in `wording`, in both languages; docs/cautions.md holds every one with where it comes from.

use super::entry::types::GroundTask;
use crate::words;

words! {
    /// What could hurt somebody, with what is usual against it.
    Caution {
        /// Open pits, deep ones most.
        Pits: "pits";
        /// Machete and hoe.
        Blades: "blades";
        /// Knives for roots and grafts.
        Knives: "knives";
        /// Bees, burning, power saws and brushcutters.
        Clearing: "clearing";
        /// Wire under tension.
        Fencing: "fencing";
        /// Stems and bunches that come down.
        Felling: "felling";
        /// Dust of soil, lime and sacks; steam.
        Potting: "potting";
        /// What lies under trays, and their weight.
        Lifting: "lifting";
        /// Carrying and planting in the heat.
        Planting: "planting";
        /// Water carried to plants in a field.
        Watering: "watering";
        /// Work at shade cloth, and trays that are carried to the light.
        ShadeCloth: "shade_cloth";
        /// Sprays and what is dusted or poured.
        Spraying: "spraying";
        /// The first work after a treatment.
        AfterSpraying: "after_spraying";
        /// What carries sickness from tray to tray.
        Hygiene: "hygiene";
        /// Treated seed, hot water, acid.
        Sowing: "sowing";
        /// Bleach, nitrate, gibberellic acid.
        SeedTest: "seed_test";
        /// Seed that is no food, dust of sacks.
        SeedStore: "seed_store";
        /// Climbing for seed.
        Climbing: "climbing";
        /// Snakes, sun, being alone.
        InTheField: "in_the_field";
    }
}

impl Caution {
    /// What stands at work on the ground of a bed.
    pub const fn of_ground(task: GroundTask) -> Caution {
        match task {
            GroundTask::Cleared => Caution::Clearing,
            GroundTask::Holes => Caution::Pits,
            GroundTask::Weeded | GroundTask::Mulched => Caution::Blades,
            GroundTask::Fenced => Caution::Fencing,
        }
    }

    /// What stands on the form of a kind of entry; of ground work by the work that it is.
    pub fn of_kind(kind: &str, work: Option<GroundTask>) -> Option<Caution> {
        let (_, at) = KINDS.iter().find(|(name, _)| *name == kind)?;
        match at {
            AtKind::NeedsNone => None,
            AtKind::Always(caution) => Some(*caution),
            AtKind::ByGroundTask => work.map(Caution::of_ground),
        }
    }
}

/// What is said at a kind of entry.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
enum AtKind {
    /// Nobody is hurt by it.
    NeedsNone,
    /// One sentence.
    Always(Caution),
    /// By the work that it is.
    ByGroundTask,
}

use AtKind::{Always, ByGroundTask, NeedsNone};

/// Every kind of entry.
const KINDS: [(&str, AtKind); 53] = [
    ("nursery_set", NeedsNone),
    ("season_set", NeedsNone),
    ("species_set", NeedsNone),
    ("place_set", NeedsNone),
    ("container_set", NeedsNone),
    ("field_set", NeedsNone),
    ("bed_set", NeedsNone),
    ("positions_blocked", NeedsNone),
    ("lot_received", Always(Caution::Climbing)),
    ("lot_kept", Always(Caution::SeedStore)),
    ("lot_counted", Always(Caution::SeedStore)),
    ("lot_tested", Always(Caution::SeedTest)),
    ("sown", Always(Caution::Sowing)),
    ("resown", Always(Caution::Sowing)),
    ("plants_received", Always(Caution::Lifting)),
    ("counted", NeedsNone),
    ("lost", NeedsNone),
    ("culled", NeedsNone),
    ("moved_on", Always(Caution::Potting)),
    ("carried", Always(Caution::Lifting)),
    ("measured", NeedsNone),
    ("plug_checked", NeedsNone),
    ("roots_cut", Always(Caution::Knives)),
    ("grafted", Always(Caution::Knives)),
    ("flushed", NeedsNone),
    ("shade_set", Always(Caution::ShadeCloth)),
    ("watering_set", NeedsNone),
    ("hardening_begun", Always(Caution::ShadeCloth)),
    ("held", NeedsNone),
    ("released", NeedsNone),
    ("pest_seen", NeedsNone),
    ("treated", Always(Caution::Spraying)),
    ("stocktaken", NeedsNone),
    ("given_out", Always(Caution::Lifting)),
    ("relabelled", NeedsNone),
    ("let_go", NeedsNone),
    ("sown_in_bed", Always(Caution::Sowing)),
    ("plants_found", Always(Caution::InTheField)),
    ("nurse_planted", Always(Caution::Blades)),
    ("nurse_counted", Always(Caution::InTheField)),
    ("nurse_measured", Always(Caution::InTheField)),
    ("nurse_cut", Always(Caution::Felling)),
    ("light_read", NeedsNone),
    ("soil_checked", NeedsNone),
    ("plants_watered", Always(Caution::Watering)),
    ("prepared", ByGroundTask),
    ("outplanted", Always(Caution::Planting)),
    ("plants_lost", Always(Caution::InTheField)),
    ("survival_counted", Always(Caution::InTheField)),
    ("weather", NeedsNone),
    ("noted", NeedsNone),
    ("withdrawn", NeedsNone),
    ("settled", NeedsNone),
];

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;
    use crate::nursery::entry::all_kinds;

    #[test]
    fn each_kind_of_entry_has_its_caution_or_says_that_it_needs_none() {
        let said: Vec<&str> = KINDS.iter().map(|(kind, _)| *kind).collect();
        let known: BTreeSet<&str> = all_kinds().map(|kind| kind.kind).collect();
        assert_eq!(said.iter().copied().collect::<BTreeSet<_>>(), known);
        assert_eq!(said.len(), known.len(), "a kind twice");
    }

    #[test]
    fn ground_work_has_the_caution_of_what_is_done() {
        assert_eq!(Caution::of_kind("prepared", Some(GroundTask::Holes)), Some(Caution::Pits));
        assert_eq!(Caution::of_kind("prepared", None), None);
        assert_eq!(Caution::of_kind("treated", None), Some(Caution::Spraying));
        assert_eq!(Caution::of_kind("counted", None), None);
    }
}
