//! The names of rules, of ways of knowing, of stages and of standings.

use crate::reckon::picture::{Basis, Rule, Stage, Standing};
use crate::wording::{Wording, theme};

impl Wording {
    /// The name of a rule, as a heading: "days since sowing".
    pub fn rule_name(&self, rule: Rule) -> String {
        self.of_word(theme::RULE, rule)
    }

    /// How a thing is known: "counted".
    pub(crate) fn basis_name(&self, basis: Basis) -> String {
        self.of_word(theme::BASIS, basis)
    }

    /// The stage of a tray.
    pub(crate) fn stage_name(&self, stage: Stage) -> String {
        self.of_word(theme::STAGE, stage)
    }

    /// The standing of a bed for a species.
    pub(crate) fn standing_name(&self, standing: Standing) -> String {
        self.of_word(theme::STANDING, standing)
    }
}
