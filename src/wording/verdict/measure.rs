//! What is needed and what is known, with its unit.

use crate::nursery::entry::types::{GroundTask, Roots, Tubers};
use crate::reckon::picture::{Criterion, Measure, SampleUnit};
use crate::science::soil::rod_push_kg;
use crate::wording::{Wording, theme};

impl Wording {
    /// A needed or known thing in words.
    pub fn measure(&self, measure: &Measure) -> String {
        self.measured(measure, &[])
    }

    /// What is known of a criterion, with as many decimals as tell it from what is needed.
    pub fn known_words(&self, criterion: &Criterion) -> Option<String> {
        Some(self.measured(&criterion.known()?, &limits_of(criterion.needed().as_ref())))
    }

    /// The mean of a sample with its unit: cm of height, mm of collar, leaves by number.
    pub(super) fn mean_words(&self, mean: f64, unit: SampleUnit, limits: &[f64]) -> String {
        let written = self.number_beside(mean, limits, 1);
        match unit {
            SampleUnit::Cm => self.mean_in_cm(written),
            SampleUnit::Mm => self.mean_in_mm(written),
            SampleUnit::Leaves => written,
        }
    }

    /// A thing in words, told from the numbers it is compared with.
    fn measured(&self, measure: &Measure, limits: &[f64]) -> String {
        match measure {
            Measure::Days(days) => self.measure_days(*days),
            Measure::DaysAtLeast(days) => self.measure_days_at_least(*days),
            Measure::DaysAtMost(days) => self.measure_days_at_most(*days),
            Measure::DaySpan { least, usual, most } => self.measure_day_span(*least, *usual, *most),
            Measure::HeightBand { least, most } => {
                self.measure_height_band(self.number(*least, 1), self.number(*most, 1))
            }
            Measure::CollarRule { floor_mm } => self.measure_collar_rule(self.number(*floor_mm, 1)),
            Measure::Sample { pass, of, mean, unit } => {
                self.measure_sample(*pass, *of, self.mean_words(*mean, *unit, &[]))
            }
            Measure::LeavesAtLeast { count, pairs: true } => self.measure_leaf_pairs_at_least(self.number(*count, 1)),
            Measure::LeavesAtLeast { count, pairs: false } => self.measure_leaves_at_least(self.number(*count, 1)),
            Measure::Roots(roots) => self.roots_words(*roots),
            Measure::Light(share) => self.measure_light(self.percent_beside(*share, limits)),
            Measure::LightReckoned(span) => self.span_words(*span),
            Measure::LightBand { least, most } => self.band_words(*least, *most),
            Measure::RatioAtMost(ratio) => self.measure_ratio_at_most(self.decimal(*ratio, 1)),
            Measure::LightStep { from, to } => self.light_step(*from, *to, limits),
            Measure::Plants(range) => self.plants_range(*range),
            Measure::PlantsAtLeast(plants) => self.measure_plants_at_least(*plants),
            Measure::Positions(positions) => self.measure_positions(*positions),
            Measure::ResistanceAtMost { mpa, depth_cm, rod_mm } => {
                self.measure_resistance_at_most(self.number(*depth_cm, 0), self.push_words(*mpa, *rod_mm))
            }
            Measure::Resistance { mpa, depth_cm: Some(depth) } => {
                self.measure_resistance_at(self.number_beside(*mpa, limits, 1), self.number(*depth, 0))
            }
            Measure::Resistance { mpa, depth_cm: None } => self.measure_resistance(self.number_beside(*mpa, limits, 1)),
            Measure::RodStopped { mpa, depth_cm, rod_mm } => {
                self.measure_rod_stopped(self.number(*depth_cm, 0), self.push_words(*mpa, *rod_mm))
            }
            Measure::TubersLifted(days) => self.measure_tubers_lifted(*days),
            Measure::TuberShape(tubers) => self.tuber_words(*tubers),
            Measure::Rain { mm, days } => self.measure_rain(self.number_beside(*mm, limits, 1), *days),
            Measure::RainAtLeast { mm, days } => self.measure_rain_at_least(self.number(*mm, 1), *days),
            Measure::WaterLeft { mm, of_mm } => {
                self.measure_water_left(self.number_beside(*mm, limits, 0), self.number(*of_mm, 0))
            }
            Measure::WaterAtLeast(mm) => self.measure_water_at_least(self.number(*mm, 0)),
            Measure::Until(day) => self.measure_until(self.day(*day)),
            Measure::On(day) => self.day(*day),
            Measure::Work(task) => self.work_words(*task),
            Measure::WorkWithin { task, days } => self.measure_work_within(self.work_words(*task), *days),
            Measure::FreshStep { days, last } => self.measure_fresh_step(*days, self.day(*last)),
            Measure::Said(words) => crate::base::text::cleaned(words),
            Measure::Pest { what, share: Some(share) } => {
                self.measure_pest(crate::base::text::cleaned(what), self.percent(*share))
            }
            Measure::Pest { what, share: None } => crate::base::text::cleaned(what),
            Measure::Yes => self.measure_yes(),
            Measure::No => self.measure_no(),
        }
    }

    /// A band of light, shares of 0 to 1: "30 to 50 % light".
    pub(crate) fn band_words(&self, least: f64, most: f64) -> String {
        self.measure_light_band(self.number(least * 100.0, 0), self.percent(most))
    }

    fn light_step(&self, from: f64, to: f64, limits: &[f64]) -> String {
        if from > 0.0 {
            self.measure_light_step(self.percent(from), self.percent(to), self.decimal_beside(to / from, limits, 1))
        } else {
            self.measure_light_step_from_dark(self.percent(from), self.percent(to))
        }
    }

    /// A pressure as the push on a rod that makes it: "10 kg on a rod of 8 mm".
    pub(super) fn push_words(&self, mpa: f64, rod_mm: f64) -> String {
        let kg = rod_push_kg(mpa, rod_mm).unwrap_or_default();
        self.push_on_rod(self.number(kg, 0), self.number(rod_mm, 1))
    }

    /// What a lifted plug shows.
    pub(crate) fn roots_words(&self, roots: Roots) -> String {
        self.of_word(theme::ROOTS, roots)
    }

    /// The shape of lifted tubers.
    pub(crate) fn tuber_words(&self, tubers: Tubers) -> String {
        self.of_word(theme::TUBERS, tubers)
    }

    /// Ground work, done.
    pub(crate) fn work_words(&self, task: GroundTask) -> String {
        self.of_word(theme::WORK, task)
    }
}

/// The numbers a known figure is compared with.
pub(super) fn limits_of(needed: Option<&Measure>) -> Vec<f64> {
    if let Some(Measure::RatioAtMost(most)) = needed {
        vec![crate::reckon::tray::exposure::FITS_UP_TO, *most]
    } else if let Some(Measure::LightBand { least, most } | Measure::HeightBand { least, most }) = needed {
        vec![*least, *most]
    } else if let Some(Measure::ResistanceAtMost { mpa, .. }) = needed {
        vec![*mpa]
    } else if let Some(Measure::RainAtLeast { mm, .. } | Measure::WaterAtLeast(mm)) = needed {
        vec![*mm]
    } else {
        Vec::new()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::Range;
    use crate::wording::Lang;

    #[test]
    fn a_measure_is_said_with_its_unit_in_both_languages() {
        let day = "2026-03-14".parse().unwrap();
        let cases: Vec<(Measure, &str, &str)> = vec![
            (Measure::Days(193), "193 d", "193 d"),
            (Measure::DaysAtLeast(210), "at least 210 d", "al menos 210 d"),
            (Measure::DaysAtMost(300), "at most 300 d", "a lo más 300 d"),
            (
                Measure::DaySpan { least: 210, usual: 300, most: 420 },
                "at least 210 d, usually 300, at most 420",
                "al menos 210 d, lo usual 300, a lo más 420",
            ),
            (Measure::HeightBand { least: 20.0, most: 40.0 }, "20 to 40 cm", "20 a 40 cm"),
            (
                Measure::CollarRule { floor_mm: 4.0 },
                "a mm of collar for each 8 cm of height, and 4 mm or more",
                "un mm de cuello por cada 8 cm de altura, y 4 mm o más",
            ),
            (
                Measure::Sample { pass: 24, of: 30, mean: 27.04, unit: SampleUnit::Cm },
                "24 of 30 pass, mean 27 cm",
                "24 de 30 cumplen, media 27 cm",
            ),
            (
                Measure::LeavesAtLeast { count: 5.0, pairs: true },
                "at least 5 pairs of leaves",
                "al menos 5 pares de hojas",
            ),
            (Measure::LeavesAtLeast { count: 4.0, pairs: false }, "at least 4 leaves", "al menos 4 hojas"),
            (Measure::Roots(Roots::Circling), "roots circle", "raíces enrolladas"),
            (Measure::Light(0.3), "30 % light", "30 % de luz"),
            (Measure::LightBand { least: 0.5, most: 0.7 }, "50 to 70 % light", "50 a 70 % de luz"),
            (Measure::RatioAtMost(1.6), "at most 1.6 times as bright", "a lo más 1.6 veces la luz"),
            (
                Measure::LightStep { from: 0.3, to: 0.6 },
                "30 % to 60 % light, 2.0 times as bright",
                "de 30 % a 60 % de luz, 2.0 veces",
            ),
            (Measure::LightStep { from: 0.0, to: 0.6 }, "0 % to 60 % light", "de 0 % a 60 % de luz"),
            (Measure::Plants(Range::exact(1.0)), "1 plant", "1 planta"),
            (Measure::PlantsAtLeast(5), "at least 5 plants", "al menos 5 plantas"),
            (Measure::Positions(1), "1 open position", "1 hoyo libre"),
            (
                Measure::ResistanceAtMost { mpa: 2.0, depth_cm: 40.0, rod_mm: 8.0 },
                "soft down to 40 cm: 10 kg on a rod of 8 mm",
                "suave hasta 40 cm: 10 kg en varilla de 8 mm",
            ),
            (Measure::Resistance { mpa: 1.25, depth_cm: None }, "1.2 MPa", "1.2 MPa"),
            (Measure::Resistance { mpa: 3.1, depth_cm: Some(20.0) }, "3.1 MPa at 20 cm", "3.1 MPa a 20 cm"),
            (
                Measure::RodStopped { mpa: 2.0, depth_cm: 35.0, rod_mm: 8.0 },
                "stopped at 35 cm under 10 kg on a rod of 8 mm",
                "frenada a 35 cm con 10 kg en varilla de 8 mm",
            ),
            (Measure::TubersLifted(40), "tubers lifted 40 d ago", "tubérculos sacados hace 40 d"),
            (Measure::TuberShape(Tubers::Full), "tubers full", "tubérculos gruesos"),
            (Measure::Rain { mm: 20.0, days: 3 }, "20 mm in 3 days", "20 mm en 3 días"),
            (Measure::RainAtLeast { mm: 20.0, days: 1 }, "at least 20 mm in 1 day", "al menos 20 mm en 1 día"),
            (Measure::Until(day), "by 14 Mar 2026", "hasta el 14 mar 2026"),
            (Measure::On(day), "14 Mar 2026", "14 mar 2026"),
            (Measure::Work(GroundTask::Holes), "holes dug", "hoyos hechos"),
            (Measure::Said("promised\u{202e}".into()), "promised", "promised"),
            (Measure::Pest { what: "aphids".into(), share: Some(0.6) }, "aphids on 60 %", "aphids en 60 %"),
            (Measure::Yes, "yes", "sí"),
            (Measure::No, "no", "no"),
        ];
        let (en, es) = (Wording::new(Lang::En), Wording::new(Lang::Es));
        for (measure, english, spanish) in cases {
            assert_eq!(en.measure(&measure), english);
            assert_eq!(es.measure(&measure), spanish);
        }
    }

    #[test]
    fn work_and_steps_are_said_with_their_days() {
        let day = "2026-03-14".parse().unwrap();
        let cases: Vec<(Measure, &str, &str)> = vec![
            (
                Measure::WorkWithin { task: GroundTask::Weeded, days: 30 },
                "weeded, at most 30 d ago",
                "deshierbada, hace a lo más 30 d",
            ),
            (
                Measure::FreshStep { days: 30, last: day },
                "30 d, last step on 14 Mar 2026",
                "30 d, último paso el 14 mar 2026",
            ),
        ];
        let (en, es) = (Wording::new(Lang::En), Wording::new(Lang::Es));
        for (measure, english, spanish) in cases {
            assert_eq!((en.measure(&measure).as_str(), es.measure(&measure).as_str()), (english, spanish));
        }
    }
}
