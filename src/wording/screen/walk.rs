//! The screen Walk, and the round in prompts.

use crate::reckon::round::to_write::LetGoBecause;
use crate::wording::Wording;

impl Wording {
    /// Why a task is let go by doing it.
    pub(crate) fn let_go_because(&self, because: LetGoBecause) -> String {
        match because {
            LetGoBecause::NothingComes => self.walk_nothing_comes(),
            LetGoBecause::SetApart => self.walk_set_apart(),
        }
    }
}
