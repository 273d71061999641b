//! What to measure, where a thing is not known.

use super::About;
use crate::reckon::picture::Rule;
use crate::wording::Wording;

impl Wording {
    /// What to measure or write down so that a rule can be answered.
    pub(super) fn reason_unknown(&self, rule: Rule, about: About) -> String {
        match rule {
            Rule::DaysSinceSowing => self.unknown_days_since_sowing(),
            Rule::DaysInContainer => self.unknown_days_in_container(),
            Rule::Height => self.unknown_height(),
            Rule::Collar => self.unknown_collar(),
            Rule::Leaves => self.unknown_leaves(),
            Rule::Plug => self.unknown_plug(),
            Rule::Flush => self.unknown_flush(),
            Rule::Hardening => self.unknown_hardening(),
            Rule::ExposureStep => match about {
                About::Tray => self.unknown_exposure_step(),
                About::Bed | About::Pair => self.unknown_exposure_step_pair(),
            },
            Rule::Held => self.unknown_held(),
            Rule::Treated => self.unknown_treated(),
            Rule::Living => self.unknown_living(),
            Rule::Load => self.unknown_load(),
            Rule::GoodUntil => self.unknown_good_until(),
            Rule::LightNow => self.unknown_light_now(),
            Rule::LightComing => self.unknown_light_coming(),
            Rule::Soil => self.unknown_soil(),
            Rule::Cleared => self.unknown_cleared(),
            Rule::Holes => self.unknown_holes(),
            Rule::Weeded => self.unknown_weeded(),
            Rule::Mulched => self.unknown_mulched(),
            Rule::Fenced => self.unknown_fenced(),
            Rule::Water => self.unknown_water(),
            Rule::Season => self.unknown_season(),
            Rule::OpenPositions => self.unknown_open_positions(),
        }
    }
}
