//! The screen Seed.

use crate::reckon::seed::LotState;
use crate::wording::{Wording, theme};

impl Wording {
    /// How a lot stands.
    pub(crate) fn lot_state_name(&self, state: LotState) -> String {
        self.of_word(theme::SEED_STATE, state)
    }
}
