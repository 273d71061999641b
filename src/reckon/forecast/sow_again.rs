//! Whether what is sown again still goes out in the rains it was meant for.

use crate::base::Day;
use crate::reckon::bed::season::{Spell, safe_rains_from};
use crate::reckon::site::Site;

/// What sowing again today, or later, still reaches.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Reach {
    /// No rains are described.
    NoRains,
    /// The rains it was sown for.
    Same {
        /// Those rains.
        rains: Spell,
        /// The last day of sowing for them.
        sow_by: Day,
    },
    /// Only later rains.
    Later {
        /// The rains it was sown for.
        missed: Spell,
        /// The last day of sowing for those would have been.
        was_by: Day,
        /// The first rains that a sowing of today reaches.
        rains: Option<Spell>,
        /// The last day of sowing for them.
        sow_by: Option<Day>,
    },
}

/// Sowing again.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct SowAgain {
    /// Usual days from sowing to planting out.
    pub usual_days: i32,
    /// What it reaches.
    pub reach: Reach,
    /// Plants that will be missing against what was expected.
    pub missing: f64,
}

impl SowAgain {
    /// The last day of sowing that this rests on, where there is one.
    pub fn sow_by(&self) -> Option<Day> {
        match self.reach {
            Reach::NoRains => None,
            Reach::Same { sow_by, .. } => Some(sow_by),
            Reach::Later { sow_by, .. } => sow_by,
        }
    }
}

/// What sowing again on a day reaches: a sowing can go out `usual_days` later, until the last safe day of rains.
pub fn reach(site: &Site, sown_on: Day, usual_days: i32, day: Day) -> Reach {
    let Some(meant_for) = safe_rains_from(site, sown_on.plus(usual_days)) else { return Reach::NoRains };
    let by = |rains: Spell| rains.last_safe.plus(-usual_days);
    if by(meant_for) >= day {
        return Reach::Same { rains: meant_for, sow_by: by(meant_for) };
    }
    let rains = safe_rains_from(site, day.plus(usual_days));
    Reach::Later { missed: meant_for, was_by: by(meant_for), rains, sow_by: rains.map(by) }
}
