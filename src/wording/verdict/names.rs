//! The names of rules, of ways of knowing, of stages and of standings.

use crate::reckon::picture::{Basis, Rule, Stage, Standing};
use crate::wording::{Wording, theme};

impl Wording {
    /// The name of a rule, as a heading: "days since sowing".
    pub fn rule_name(&self, rule: Rule) -> String {
        self.of_word(theme::RULE, rule)
    }

    /// What a rule says where it is met: "not held back". Its name alone would say the contrary.
    pub(crate) fn rule_as_met(&self, rule: Rule) -> String {
        match rule {
            Rule::Held => self.met_held(),
            Rule::Treated => self.met_treated(),
            Rule::PlantBack => self.met_plant_back(),
            Rule::Pest => self.met_pest(),
            Rule::Flush => self.met_flush(),
            _ => self.rule_name(rule),
        }
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
