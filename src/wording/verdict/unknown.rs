//! What to measure, where a thing is not known.

use super::About;
use crate::reckon::picture::{Criterion, Rule, RuleSource};
use crate::wording::{Wording, theme};

impl Wording {
    /// What to measure or write down so that a rule can be answered.
    pub(super) fn reason_unknown(&self, criterion: &Criterion, about: About) -> String {
        match (criterion.rule(), about) {
            (Rule::DaysSinceSowing, _) if !criterion.blocks && criterion.source == RuleSource::NurseDays.into() => {
                self.unknown_age_of_nurse()
            }
            (Rule::DaysSinceSowing, _) if !criterion.blocks => self.unknown_age_measured(),
            (Rule::ExposureStep, About::Bed | About::Pair) => self.unknown_exposure_step_pair(),
            (rule, _) => self.of_word(theme::UNKNOWN, rule),
        }
    }
}
