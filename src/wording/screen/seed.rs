//! The screen Seed.

use crate::reckon::seed::LotState;
use crate::wording::Wording;

impl Wording {
    /// How a lot stands.
    pub fn lot_state_name(&self, state: LotState) -> String {
        match state {
            LotState::Keeps => self.seed_state_keeps(),
            LotState::Ending => self.seed_state_ending(),
            LotState::Over => self.seed_state_over(),
            LotState::Dead => self.seed_state_dead(),
            LotState::LifeUnknown => self.seed_state_life_unknown(),
            LotState::UsedUp => self.seed_state_used_up(),
            LotState::Held => self.seed_state_held(),
        }
    }
}
