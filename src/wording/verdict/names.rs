//! The names of rules, of ways of knowing, of stages and of standings.

use crate::reckon::picture::{Basis, Rule, Stage, Standing};
use crate::wording::Wording;

impl Wording {
    /// The name of a rule, as a heading: "days since sowing".
    pub fn rule_name(&self, rule: Rule) -> String {
        match rule {
            Rule::DaysSinceSowing => self.rule_days_since_sowing(),
            Rule::DaysInContainer => self.rule_days_in_container(),
            Rule::Height => self.rule_height(),
            Rule::Collar => self.rule_collar(),
            Rule::Leaves => self.rule_leaves(),
            Rule::Plug => self.rule_plug(),
            Rule::Flush => self.rule_flush(),
            Rule::Hardening => self.rule_hardening(),
            Rule::ExposureStep => self.rule_exposure_step(),
            Rule::Held => self.rule_held(),
            Rule::Treated => self.rule_treated(),
            Rule::Living => self.rule_living(),
            Rule::Load => self.rule_load(),
            Rule::GoodUntil => self.rule_good_until(),
            Rule::LightNow => self.rule_light_now(),
            Rule::LightComing => self.rule_light_coming(),
            Rule::Soil => self.rule_soil(),
            Rule::Cleared => self.rule_cleared(),
            Rule::Holes => self.rule_holes(),
            Rule::Weeded => self.rule_weeded(),
            Rule::Mulched => self.rule_mulched(),
            Rule::Fenced => self.rule_fenced(),
            Rule::Water => self.rule_water(),
            Rule::Season => self.rule_season(),
            Rule::OpenPositions => self.rule_open_positions(),
        }
    }

    /// How a thing is known: "counted".
    pub fn basis_name(&self, basis: Basis) -> String {
        match basis {
            Basis::Counted => self.basis_counted(),
            Basis::Measured => self.basis_measured(),
            Basis::Reckoned => self.basis_reckoned(),
            Basis::Assumed => self.basis_assumed(),
            Basis::Unknown => self.basis_unknown(),
        }
    }

    /// The stage of a tray.
    pub fn stage_name(&self, stage: Stage) -> String {
        match stage {
            Stage::Sown => self.stage_sown(),
            Stage::Emerging => self.stage_emerging(),
            Stage::PrickedOut => self.stage_pricked_out(),
            Stage::GrowingOn => self.stage_growing_on(),
            Stage::Hardening => self.stage_hardening(),
            Stage::Ready => self.stage_ready(),
            Stage::Overdue => self.stage_overdue(),
            Stage::Spent => self.stage_spent(),
        }
    }

    /// The standing of a bed for a species.
    pub fn standing_name(&self, standing: Standing) -> String {
        match standing {
            Standing::Bare => self.standing_bare(),
            Standing::Nursing => self.standing_nursing(),
            Standing::Open => self.standing_open(),
            Standing::Dry => self.standing_dry(),
            Standing::Full => self.standing_full(),
            Standing::Refill => self.standing_refill(),
        }
    }
}
