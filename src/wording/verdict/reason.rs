//! Why, in the words said to a grower.

use super::facts::Facts;
use crate::nursery::entry::types::{GroundTask, Roots, Tubers};
use crate::reckon::picture::{Basis, Criterion, Rule};
use crate::wording::Wording;

/// What a verdict is about; a few reasons are said otherwise of a tray alone than of a tray for a bed.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum About {
    /// A tray.
    Tray,
    /// A bed, for a species.
    Bed,
    /// A tray for a bed.
    Pair,
}

/// Lets the ends of a band be inside although 1 - 0.3 is not exact in a computer.
const EXACT: f64 = 1e-9;

impl Wording {
    /// Why a criterion is as it is, in plain words; an unknown says what to measure.
    pub fn reason(&self, criterion: &Criterion, about: About) -> String {
        let facts = Facts(criterion);
        if facts.read_dry() {
            return self.soil_read_dry();
        }
        let Some(met) = criterion.met else {
            let gap = criterion.gap.as_ref().map(|gap| self.gap_words(gap));
            return gap.unwrap_or_else(|| self.reason_unknown(criterion.rule, about));
        };
        let special = match criterion.rule {
            Rule::DaysSinceSowing => self.age_reason(facts, met),
            Rule::DaysInContainer => self.container_reason(facts, met),
            Rule::Height => self.height_reason(facts, met),
            Rule::Collar => self.collar_reason(facts, met),
            Rule::Leaves => self.leaves_reason(facts, met),
            Rule::Plug => self.plug_reason(facts, met),
            Rule::Flush => Some(self.flush_reason(facts, met)),
            Rule::Hardening => self.hardening_reason(facts, met),
            Rule::ExposureStep => self.step_reason(facts, met, about),
            Rule::Held => Some(self.held_reason(facts, met)),
            Rule::Treated => Some(self.treated_reason(facts, met)),
            Rule::Living => Some(self.living_reason(facts, met)),
            Rule::Load => self.load_reason(facts, met),
            Rule::GoodUntil => self.good_until_reason(facts, met),
            Rule::LightNow => self.light_reason(facts, met),
            Rule::LightComing => self.light_coming_reason(facts, met),
            Rule::Soil => self.soil_reason(facts, met),
            Rule::Cleared => self.work_reason(GroundTask::Cleared, facts, met),
            Rule::Holes => self.work_reason(GroundTask::Holes, facts, met),
            Rule::Weeded => self.work_reason(GroundTask::Weeded, facts, met),
            Rule::Mulched => self.work_reason(GroundTask::Mulched, facts, met),
            Rule::Fenced => self.work_reason(GroundTask::Fenced, facts, met),
            Rule::Water => self.water_reason(facts, met),
            Rule::Season => self.season_reason(facts, met),
            Rule::OpenPositions => self.positions_reason(facts, met),
        };
        self.in_part(special.unwrap_or_else(|| self.plain_reason(criterion, met)), criterion)
    }

    /// The rule with what is known and needed, where no better sentence fits.
    fn plain_reason(&self, criterion: &Criterion, met: bool) -> String {
        let rule = self.rule_name(criterion.rule);
        let words = |measure| self.measure_for(criterion.rule, measure);
        match (criterion.known.as_ref().map(words), criterion.needed.as_ref().map(words), met) {
            (Some(known), _, true) => self.reason_met_known(rule, known),
            (Some(known), Some(needed), false) => self.reason_unmet_known(rule, known, needed),
            (None, _, true) => self.reason_met_plain(rule),
            (_, _, false) => self.reason_unmet_plain(rule),
        }
    }

    fn age_reason(&self, facts: Facts<'_>, met: bool) -> Option<String> {
        let (days, least) = (facts.days()?, facts.least_days()?);
        if met && least == 0 {
            return Some(self.old_without_least(days));
        }
        Some(if met { self.old_enough(days, least) } else { self.too_young(days, (least - days).max(0), least) })
    }

    fn container_reason(&self, facts: Facts<'_>, met: bool) -> Option<String> {
        if facts.roots() == Some(Roots::Circling) {
            return Some(self.container_circles());
        }
        let (days, most) = (facts.days()?, facts.most_days()?);
        Some(if met { self.container_holds(days, most) } else { self.container_outgrown(days, most) })
    }

    fn height_reason(&self, facts: Facts<'_>, met: bool) -> Option<String> {
        let sample = facts.sample()?;
        let in_cm = |cm: f64| self.mean_in_cm(self.number(cm, 1));
        let (pass, of, mean) =
            (sample.pass, sample.of, self.mean_in_cm(self.number_beside(sample.mean, &facts.limits(), 1)));
        if met {
            return Some(self.height_met(pass, of, mean));
        }
        if pass == of {
            return Some(self.sample_too_few(pass, of));
        }
        let (least, most) = facts.height_band()?;
        Some(if sample.mean > most {
            self.height_tall(pass, of, mean, in_cm(most))
        } else {
            self.height_short(pass, of, mean, in_cm(least))
        })
    }

    fn collar_reason(&self, facts: Facts<'_>, met: bool) -> Option<String> {
        let sample = facts.sample()?;
        let (pass, of, mean) = (sample.pass, sample.of, self.mean_in_mm(self.number(sample.mean, 1)));
        if met {
            return Some(self.collar_met(pass, of, mean));
        }
        if pass == of {
            return Some(self.sample_too_few(pass, of));
        }
        Some(self.collar_thin(pass, of, mean, self.measure(facts.0.needed.as_ref()?)))
    }

    fn leaves_reason(&self, facts: Facts<'_>, met: bool) -> Option<String> {
        let sample = facts.sample()?;
        let (pass, of, mean) = (sample.pass, sample.of, self.number(sample.mean, 1));
        if met {
            return Some(self.leaves_met(pass, of, mean));
        }
        if pass == of {
            return Some(self.sample_too_few(pass, of));
        }
        Some(self.leaves_few(pass, of, mean, self.measure(facts.0.needed.as_ref()?)))
    }

    fn plug_reason(&self, facts: Facts<'_>, met: bool) -> Option<String> {
        match (facts.roots()?, met) {
            (Roots::Crumbles, false) => Some(self.plug_crumbles()),
            (Roots::Circling, false) => Some(self.plug_circles()),
            (Roots::Holds, true) => Some(self.plug_met()),
            (Roots::Crumbles | Roots::Circling, true) | (Roots::Holds, false) => None,
        }
    }

    fn flush_reason(&self, facts: Facts<'_>, met: bool) -> String {
        match (met, facts.on()) {
            (true, _) => self.flush_met(),
            (false, Some(day)) => self.flush_unmet_on(self.day(day)),
            (false, None) => self.flush_unmet(),
        }
    }

    fn living_reason(&self, facts: Facts<'_>, met: bool) -> String {
        match (met, facts.plants()) {
            (true, Some(plants)) => self.living_met_plants(self.plants_range(plants)),
            (true, None) => self.living_met(),
            (false, _) => self.living_unmet(),
        }
    }

    fn load_reason(&self, facts: Facts<'_>, met: bool) -> Option<String> {
        let plants = self.plants_range(facts.plants()?);
        Some(if met { self.load_met(plants) } else { self.load_unmet(plants, facts.least_plants()?) })
    }

    fn good_until_reason(&self, facts: Facts<'_>, met: bool) -> Option<String> {
        let last = self.day(facts.until()?);
        Some(if met { self.good_until_met(last) } else { self.good_until_unmet(last) })
    }

    fn hardening_reason(&self, facts: Facts<'_>, met: bool) -> Option<String> {
        let least = facts.least_days();
        if let (Some(put_back), Some(least)) = (facts.on(), least) {
            return Some(self.hardening_put_back(self.short_day(put_back), least));
        }
        if let Some((days, last)) = facts.fresh_step() {
            return Some(self.hardening_fresh(days, self.day(last), self.day(facts.0.expected?)));
        }
        match (met, facts.days(), least) {
            (true, days, least) => Some(self.hardening_met(days?, least?)),
            (false, None | Some(0), Some(least)) => Some(self.hardening_not_begun(least)),
            (false, Some(days), Some(least)) if days < least => Some(self.hardening_short(days, least - days, least)),
            (false, Some(_), _) | (false, None, None) => Some(self.hardening_unmet()),
        }
    }

    fn held_reason(&self, facts: Facts<'_>, met: bool) -> String {
        match (met, facts.said(), facts.0.expected) {
            (true, _, _) => self.held_met(),
            (false, Some(why), Some(day)) => self.held_unmet_until(why, self.day(day)),
            (false, Some(why), None) => self.held_unmet_said(why),
            (false, None, _) => self.held_unmet(),
        }
    }

    fn treated_reason(&self, facts: Facts<'_>, met: bool) -> String {
        match (met, facts.said(), facts.0.expected) {
            (true, _, _) => self.treated_met(),
            (false, Some(what), Some(day)) => self.treated_unmet_until(what, self.day(day)),
            (false, Some(what), None) => self.treated_unmet_said(what),
            (false, None, _) => self.treated_unmet(),
        }
    }

    fn step_reason(&self, facts: Facts<'_>, met: bool, about: About) -> Option<String> {
        let (from, to) = facts.light_step()?;
        let (stood, goes) = (self.percent(from), self.percent(to));
        let alone = about == About::Tray;
        if let Some(no_brighter) = self.step_not_brighter((from, to), met && !facts.0.warns, alone) {
            return Some(no_brighter);
        }
        let ratio = if from > 0.0 { self.decimal_beside(to / from, &facts.limits(), 1) } else { return None };
        Some(match (met, facts.0.warns, alone) {
            (true, false, false) => self.step_met(stood, goes),
            (true, false, true) => self.step_met_tray(stood, goes),
            (true, true, false) => self.step_watch(stood, goes, ratio),
            (true, true, true) => self.step_watch_tray(stood, goes, ratio),
            (false, _, false) => self.step_too_bright(stood, goes, ratio, facts.steps_to_light(from, to)?),
            (false, _, true) => self.step_too_bright_tray(stood, goes, ratio, facts.steps_to_light(from, to)?),
        })
    }

    /// A step to the same light or to a darker one; none where it is brighter.
    fn step_not_brighter(&self, (from, to): (f64, f64), good: bool, alone: bool) -> Option<String> {
        let (stood, goes) = (self.percent(from), self.percent(to));
        // What is written alike is the same to a person.
        if good && stood == goes {
            return Some(if alone { self.step_inside_tray(stood) } else { self.step_same(stood) });
        }
        (to < from).then(|| match (good, alone) {
            (true, false) => self.step_darker(stood, goes),
            (true, true) => self.step_darker_tray(stood, goes),
            (false, false) => self.step_too_dark(stood, goes),
            (false, true) => self.step_too_dark_tray(stood, goes),
        })
    }

    fn light_reason(&self, facts: Facts<'_>, met: bool) -> Option<String> {
        let (light, (least, most)) = (facts.light()?, facts.light_band()?);
        let words = self.percent_beside(light, &facts.limits());
        let inside = (least - EXACT..=most + EXACT).contains(&light);
        Some(match (met, light > most) {
            (true, _) if !inside => self.light_near(words, self.band_words(least, most)),
            (true, _) => self.light_met(words, self.band_words(least, most)),
            (false, true) => self.light_too_bright(words, self.percent(most)),
            (false, false) => self.light_too_dark(words, self.percent(least)),
        })
    }

    fn light_coming_reason(&self, facts: Facts<'_>, met: bool) -> Option<String> {
        let (light, (least, most)) = (facts.light()?, facts.light_band()?);
        let words = self.percent(light);
        Some(match (met, light > most) {
            (true, _) => self.light_coming_met(words, self.band_words(least, most)),
            (false, true) => self.light_coming_bright(words, self.percent(most)),
            (false, false) => self.light_coming_dark(words, self.percent(least)),
        })
    }

    fn water_reason(&self, facts: Facts<'_>, met: bool) -> Option<String> {
        if met && facts.0.basis == Basis::Assumed {
            return Some(self.water_usual());
        }
        let (mm, days) = facts.rain()?;
        let fallen = self.number_beside(mm, &facts.limits(), 1);
        if met {
            return Some(self.water_met(fallen, days));
        }
        Some(self.water_short(fallen, days, self.number(facts.least_rain()?, 1)))
    }

    fn season_reason(&self, facts: Facts<'_>, met: bool) -> Option<String> {
        match (met, facts.until(), facts.0.expected) {
            (true, until, _) => Some(self.season_met(self.day(until?))),
            (false, _, Some(day)) => Some(self.season_from(self.day(day))),
            (false, Some(until), None) => Some(self.season_past(self.day(until))),
            (false, None, None) => Some(self.season_unmet()),
        }
    }

    fn positions_reason(&self, facts: Facts<'_>, met: bool) -> Option<String> {
        if !met {
            return Some(self.open_positions_unmet());
        }
        Some(self.open_positions_met(facts.positions()?))
    }

    fn work_reason(&self, task: GroundTask, facts: Facts<'_>, met: bool) -> Option<String> {
        if let (false, Some(done)) = (met, facts.on()) {
            let (day, lasts) = (self.day(done), facts.work_lasts()?);
            return Some(match task {
                GroundTask::Cleared => self.cleared_stale(day, lasts),
                GroundTask::Holes => self.holes_stale(day, lasts),
                GroundTask::Weeded => self.weeded_stale(day, lasts),
                GroundTask::Mulched => self.mulched_stale(day, lasts),
                GroundTask::Fenced => self.fenced_stale(day, lasts),
            });
        }
        if !met {
            return Some(match task {
                GroundTask::Cleared => self.cleared_unmet(),
                GroundTask::Holes => self.holes_unmet(),
                GroundTask::Weeded => self.weeded_unmet(),
                GroundTask::Mulched => self.mulched_unmet(),
                GroundTask::Fenced => self.fenced_unmet(),
            });
        }
        let day = self.day(facts.on()?);
        Some(match task {
            GroundTask::Cleared => self.cleared_on(day),
            GroundTask::Holes => self.holes_on(day),
            GroundTask::Weeded => self.weeded_on(day),
            GroundTask::Mulched => self.mulched_on(day),
            GroundTask::Fenced => self.fenced_on(day),
        })
    }

    fn soil_reason(&self, facts: Facts<'_>, met: bool) -> Option<String> {
        if let Some(mpa) = facts.resistance() {
            let (most, _) = facts.resistance_at_most()?;
            let read = self.number_beside(mpa, &facts.limits(), 1);
            return Some(if met { self.soil_met(read) } else { self.soil_hard(read, self.number(most, 1)) });
        }
        if let Some(depth) = facts.rod_stopped_cm() {
            let (_, needed) = facts.resistance_at_most()?;
            let depth = self.number(depth, 0);
            return Some(if met {
                self.soil_rod_met(depth)
            } else {
                self.soil_rod_short(depth, self.number(needed, 0))
            });
        }
        if let (Some(days), true) = (facts.tubers_lifted(), met) {
            return Some(self.soil_lifted(days));
        }
        match (facts.tuber_shape()?, met) {
            (Tubers::ThinNecked, false) => Some(self.soil_tubers_thin()),
            (shape @ (Tubers::Even | Tubers::Full), true) => Some(self.soil_tubers_met(self.tuber_words(shape))),
            (Tubers::ThinNecked, true) | (Tubers::Even | Tubers::Full, false) => None,
        }
    }
}

#[cfg(test)]
#[path = "reason_tests.rs"]
mod tests;
