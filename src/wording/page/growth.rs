//! How the plants of a tray grow, in words.

use crate::reckon::growth::{Coming, Grows, Lanky, LankyComes, NoCurve, SampleKnown, TrayGrowth};
use crate::science::growth::{GrowthCurve, GrowthModel};
use crate::wording::Wording;

/// What is measured, for its unit.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum GrowthOf {
    /// Height, cm.
    Height,
    /// Root collar, mm.
    Collar,
}

impl Wording {
    fn growth_figure(&self, of: GrowthOf, value: f64) -> String {
        match of {
            GrowthOf::Height => self.growth_cm(self.number(value, 1)),
            GrowthOf::Collar => self.growth_mm(self.number(value, 1)),
        }
    }

    /// When a mean is where it must be; where the samples do not tell, why, and the species' own days.
    pub(crate) fn growth_coming(&self, of: GrowthOf, grows: &Grows, growth: &TrayGrowth) -> String {
        let target = self.growth_figure(of, grows.target);
        let mean = grows.mean.map(|mean| self.growth_figure(of, mean));
        match (&grows.coming, mean) {
            (Coming::There { measured_on }, Some(mean)) => self.growth_there(mean, self.day(*measured_on), target),
            (Coming::Expected(reach), Some(mean)) => {
                let (day, samples) = (self.day(reach.day), reach.samples as i64);
                match reach.between {
                    Some((low, high)) => {
                        self.growth_expected_between(mean, target, day, self.day(low), self.day(high), samples)
                    }
                    None => self.growth_expected(mean, target, day, samples),
                }
            }
            (Coming::Unknown(why), Some(mean)) => {
                self.with_species_days(self.growth_unknown_mean(mean, target, self.growth_no_curve(of, *why)), growth)
            }
            (Coming::Unknown(why), None) => {
                self.with_species_days(self.growth_unknown(target, self.growth_no_curve(of, *why)), growth)
            }
            // Without a sample nothing is there and nothing expected.
            (Coming::There { .. } | Coming::Expected(_), None) => {
                let never = self.growth_no_curve(of, NoCurve::NeverMeasured);
                self.with_species_days(self.growth_unknown(target, never), growth)
            }
        }
    }

    fn with_species_days(&self, said: String, growth: &TrayGrowth) -> String {
        match growth.by_species {
            None => said,
            Some((least, None)) => format!("{said}; {}", self.growth_species_day(self.day(least))),
            Some((least, Some(usual))) => {
                format!("{said}; {}", self.growth_species_days(self.day(least), self.day(usual)))
            }
        }
    }

    /// Why the samples tell no day.
    pub(crate) fn growth_no_curve(&self, of: GrowthOf, why: NoCurve) -> String {
        match why {
            NoCurve::NeverMeasured => self.growth_why_never_measured(),
            NoCurve::FewSamples { have } => self.growth_why_few(have as i64),
            NoCurve::NoAge => self.growth_why_no_age(),
            NoCurve::NoEnd => self.growth_why_no_end(),
            NoCurve::TooWide => self.growth_why_wide(),
            NoCurve::EndsBelow { at } => self.growth_why_ends_below(self.growth_figure(of, at)),
        }
    }

    /// Tall and thin, and when.
    pub(crate) fn growth_lanky(&self, lanky: &Lanky) -> String {
        let sturdiness = self.decimal_beside(lanky.sturdiness, &[lanky.limit], 1);
        let (day, limit) = (self.day(lanky.measured_on), self.number(lanky.limit, 1));
        match lanky.comes {
            LankyComes::Now => self.growth_lanky_now(sturdiness, day, limit),
            LankyComes::On(on) => self.growth_lanky_on(sturdiness, day, limit, self.day(on)),
            LankyComes::NotSeen => self.growth_lanky_not(sturdiness, day, limit),
            LankyComes::OneSample => self.growth_lanky_one(sturdiness, day, limit),
        }
    }

    /// How near a mean is known.
    pub(crate) fn growth_sample_known(&self, known: &SampleKnown) -> String {
        let day = self.day(known.day);
        match known.within_cm {
            None => self.growth_sample_one(day, known.more),
            Some(within) => {
                // No mean of plants held beside a ruler is nearer than half a centimetre.
                let within = self.growth_figure(GrowthOf::Height, within.max(0.5));
                match known.more {
                    // Where the mean is clear of what is needed, more of them tell nothing.
                    _ if !known.undecided => self.growth_sample(known.plants, day, within),
                    0 => self.growth_sample(known.plants, day, within),
                    more => self.growth_sample_more(known.plants, day, within, more),
                }
            }
        }
    }

    /// A curve with its numbers.
    pub(crate) fn growth_curve(&self, of: GrowthOf, curve: &GrowthCurve) -> String {
        let a = self.growth_figure(of, curve.a);
        let (k, t0) = (self.number(curve.k, 4), self.number(curve.t0, 0));
        match curve.model {
            GrowthModel::Logistic => self.growth_curve_logistic(a, k, t0),
            GrowthModel::Gompertz => self.growth_curve_gompertz(a, k, t0),
        }
    }
}
