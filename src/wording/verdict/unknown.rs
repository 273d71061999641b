//! What to measure, where a thing is not known.

use super::About;
use crate::reckon::picture::Rule;
use crate::wording::{Wording, theme};

impl Wording {
    /// What to measure or write down so that a rule can be answered.
    pub(super) fn reason_unknown(&self, rule: Rule, about: About) -> String {
        match (rule, about) {
            (Rule::ExposureStep, About::Bed | About::Pair) => self.unknown_exposure_step_pair(),
            (rule, _) => self.of_word(theme::UNKNOWN, rule),
        }
    }
}
