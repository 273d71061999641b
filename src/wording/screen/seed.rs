//! The screen Seed.

use crate::reckon::seed::LotState;
use crate::wording::{Wording, theme};

impl Wording {
    /// How a lot stands.
    pub fn lot_state_name(&self, state: LotState) -> String {
        self.of_word(theme::SEED_STATE, state)
    }
}
