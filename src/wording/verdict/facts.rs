//! What a criterion holds, asked for by what a sentence needs.

use super::measure::limits_of;
use crate::base::{Day, Range};
use crate::nursery::entry::types::{Roots, Tubers};
use crate::reckon::picture::{Criterion, Measure};

/// A criterion as its reason reads it.
#[derive(Clone, Copy)]
pub(super) struct Facts<'a>(pub &'a Criterion);

/// A sample: how many pass, of how many, and the mean.
pub(super) struct Sampled {
    pub pass: u32,
    pub of: u32,
    pub mean: f64,
}

impl<'a> Facts<'a> {
    fn known(self) -> Option<&'a Measure> {
        self.0.known.as_ref()
    }

    fn needed(self) -> Option<&'a Measure> {
        self.0.needed.as_ref()
    }

    /// Known days.
    pub fn days(self) -> Option<i32> {
        if let Some(Measure::Days(days)) = self.known() { Some(*days) } else { None }
    }

    /// The least days needed.
    pub fn least_days(self) -> Option<i32> {
        let needed = self.needed();
        if let Some(Measure::DaysAtLeast(least) | Measure::DaySpan { least, .. }) = needed {
            Some(*least)
        } else {
            None
        }
    }

    /// The most days allowed.
    pub fn most_days(self) -> Option<i32> {
        let needed = self.needed();
        if let Some(Measure::DaysAtMost(most) | Measure::DaySpan { most, .. }) = needed { Some(*most) } else { None }
    }

    /// Days of hardening and the day of a last step that is too fresh.
    pub fn fresh_step(self) -> Option<(i32, Day)> {
        if let Some(Measure::FreshStep { days, last }) = self.known() { Some((*days, *last)) } else { None }
    }

    /// Days for which work that is needed lasts.
    pub fn work_lasts(self) -> Option<i32> {
        if let Some(Measure::WorkWithin { days, .. }) = self.needed() { Some(*days) } else { None }
    }

    /// The numbers that what is known is compared with.
    pub fn limits(self) -> Vec<f64> {
        limits_of(self.needed())
    }

    /// A sample.
    pub fn sample(self) -> Option<Sampled> {
        let Some(Measure::Sample { pass, of, mean }) = self.known() else { return None };
        Some(Sampled { pass: *pass, of: *of, mean: *mean })
    }

    /// The height band needed, cm.
    pub fn height_band(self) -> Option<(f64, f64)> {
        if let Some(Measure::HeightBand { least, most }) = self.needed() { Some((*least, *most)) } else { None }
    }

    /// What the plug shows.
    pub fn roots(self) -> Option<Roots> {
        if let Some(Measure::Roots(roots)) = self.known() { Some(*roots) } else { None }
    }

    /// The light it stood in and the light it would go to.
    pub fn light_step(self) -> Option<(f64, f64)> {
        if let Some(Measure::LightStep { from, to }) = self.known() { Some((*from, *to)) } else { None }
    }

    /// The steps, each of at most the ratio allowed, in which plants come from one light to a brighter one.
    pub fn steps_to_light(self, from: f64, to: f64) -> Option<i64> {
        /// More steps than this are not counted out (ours).
        const MOST_STEPS: f64 = 20.0;
        let Some(Measure::RatioAtMost(most)) = self.needed() else { return None };
        let steps = ((to / from).ln() / most.ln()).ceil();
        (*most > 1.0 && from > 0.0 && steps.is_finite()).then_some(steps.clamp(2.0, MOST_STEPS) as i64)
    }

    /// Known light, a share.
    pub fn light(self) -> Option<f64> {
        if let Some(Measure::Light(share)) = self.known() { Some(*share) } else { None }
    }

    /// The light band needed, shares.
    pub fn light_band(self) -> Option<(f64, f64)> {
        if let Some(Measure::LightBand { least, most }) = self.needed() { Some((*least, *most)) } else { None }
    }

    /// A person's own words.
    pub fn said(self) -> Option<&'a str> {
        if let Some(Measure::Said(words)) = self.known() { Some(words) } else { None }
    }

    /// A known day.
    pub fn on(self) -> Option<Day> {
        if let Some(Measure::On(day)) = self.known() { Some(*day) } else { None }
    }

    /// The day by which it must be.
    pub fn until(self) -> Option<Day> {
        if let Some(Measure::Until(day)) = self.needed() { Some(*day) } else { None }
    }

    /// Known plants.
    pub fn plants(self) -> Option<Range> {
        if let Some(Measure::Plants(plants)) = self.known() { Some(*plants) } else { None }
    }

    /// The least plants needed.
    pub fn least_plants(self) -> Option<u32> {
        if let Some(Measure::PlantsAtLeast(plants)) = self.needed() { Some(*plants) } else { None }
    }

    /// Known positions.
    pub fn positions(self) -> Option<u32> {
        if let Some(Measure::Positions(positions)) = self.known() { Some(*positions) } else { None }
    }

    /// The most resistance allowed, MPa, and the depth, cm.
    pub fn resistance_at_most(self) -> Option<(f64, f64)> {
        let Some(Measure::ResistanceAtMost { mpa, depth_cm }) = self.needed() else { return None };
        Some((*mpa, *depth_cm))
    }

    /// The resistance read, MPa.
    pub fn resistance(self) -> Option<f64> {
        if let Some(Measure::Resistance { mpa, .. }) = self.known() { Some(*mpa) } else { None }
    }

    /// The depth at which the rod stopped, cm.
    pub fn rod_stopped_cm(self) -> Option<f64> {
        if let Some(Measure::RodStopped { depth_cm, .. }) = self.known() { Some(*depth_cm) } else { None }
    }

    /// Days since tubers were lifted.
    pub fn tubers_lifted(self) -> Option<i32> {
        if let Some(Measure::TubersLifted(days)) = self.known() { Some(*days) } else { None }
    }

    /// The shape of lifted tubers.
    pub fn tuber_shape(self) -> Option<Tubers> {
        if let Some(Measure::TuberShape(tubers)) = self.known() { Some(*tubers) } else { None }
    }

    /// Whether the ground was read dry.
    pub fn read_dry(self) -> bool {
        matches!(self.known(), Some(Measure::ReadDry))
    }

    /// Known rain, mm, in so many days.
    pub fn rain(self) -> Option<(f64, i32)> {
        if let Some(Measure::Rain { mm, days }) = self.known() { Some((*mm, *days)) } else { None }
    }

    /// The least rain needed, mm.
    pub fn least_rain(self) -> Option<f64> {
        if let Some(Measure::RainAtLeast { mm, .. }) = self.needed() { Some(*mm) } else { None }
    }
}
