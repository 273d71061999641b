//! The screen Walk, and the round in prompts.

use crate::reckon::round::to_write::LetGoBecause;
use crate::reckon::round::{AtStake, Stake};
use crate::wording::Wording;

impl Wording {
    /// Why a task is let go by doing it.
    pub(crate) fn let_go_because(&self, because: LetGoBecause) -> String {
        match because {
            LetGoBecause::NothingComes => self.walk_nothing_comes(),
            LetGoBecause::SetApart => self.walk_set_apart(),
        }
    }

    /// What is lost without a stop, as a sentence of its own; nothing where it is less than a plant, or only not known.
    pub(crate) fn walk_lost(&self, stake: AtStake) -> Option<String> {
        if stake.plants.round() < 1.0 {
            return None;
        }
        let plants = self.rough_number(stake.plants);
        match stake.what {
            Stake::Seedlings => Some(self.walk_lose_seedlings(plants)),
            Stake::Seed => Some(self.walk_lose_seed(plants)),
            Stake::Planted => Some(self.walk_lose_planted(plants)),
            Stake::Planting => Some(self.walk_lose_planting(plants)),
            Stake::Knowledge => None,
        }
    }
}
