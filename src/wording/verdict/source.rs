//! Where a rule comes from, in words. Names of publications stay as they are; the words around them are said.

use crate::reckon::picture::{RuleSource, Source};
use crate::wording::Wording;
use crate::wording::messages::messages;

messages! {
    source_common_practice();
    source_load();
    source_light_step();
    source_waiting_time();
    source_flush();
    source_last_day_written();
    source_hardening();
    source_holding();
    source_plug();
    source_root_limit();
    source_rod();
    source_tuber_shape();
    source_tubers_lifted();
    source_safe_rains();
    source_written_here();
    source_rain();
    source_usual_rains();
    source_light_to_come();
    source_positions();
    source_no_figure();
    source_counting();
    source_stop_waiting();
    source_sow_again();
    source_prick_out();
    source_pot_on();
    source_grading();
    source_measuring();
    source_lift_plug();
    source_steps();
    source_treatment_over();
    source_seed_test();
    source_seed_life();
    source_seed_life_kept();
    source_ground_ahead();
    source_rings();
    source_nurses();
    source_light_ahead();
    source_soil_ahead();
    source_survival();
    source_going_out();
    source_gauge();
    source_collar(floor: text);
    source_light_readings(band: text);
    source_ground_work(days: count);
}

impl Wording {
    /// Where a rule comes from, in a sentence; never empty.
    pub fn source_words(&self, source: &Source) -> String {
        match source {
            Source::Rule(rule) => self.rule_source(*rule),
            Source::Figure(source) => self.figure_source_words(source),
            Source::Collar { floor } => self.source_collar(self.figure_source_words(floor)),
            Source::LightReadings { band } => self.source_light_readings(self.figure_source_words(band)),
            Source::GroundWork { lasts_days } => self.source_ground_work(*lasts_days),
        }
    }

    fn rule_source(&self, source: RuleSource) -> String {
        match source {
            RuleSource::CommonPractice => self.source_common_practice(),
            RuleSource::Load => self.source_load(),
            RuleSource::LightStep => self.source_light_step(),
            RuleSource::WaitingTime => self.source_waiting_time(),
            RuleSource::Flush => self.source_flush(),
            RuleSource::LastDayWritten => self.source_last_day_written(),
            RuleSource::Hardening => self.source_hardening(),
            RuleSource::Holding => self.source_holding(),
            RuleSource::Plug => self.source_plug(),
            RuleSource::RootLimit => self.source_root_limit(),
            RuleSource::Rod => self.source_rod(),
            RuleSource::TuberShape => self.source_tuber_shape(),
            RuleSource::TubersLifted => self.source_tubers_lifted(),
            RuleSource::SafeRains => self.source_safe_rains(),
            RuleSource::WrittenHere => self.source_written_here(),
            RuleSource::Rain => self.source_rain(),
            RuleSource::UsualRains => self.source_usual_rains(),
            RuleSource::LightToCome => self.source_light_to_come(),
            RuleSource::Positions => self.source_positions(),
            RuleSource::NoFigure => self.source_no_figure(),
            RuleSource::Counting => self.source_counting(),
            RuleSource::StopWaiting => self.source_stop_waiting(),
            RuleSource::SowAgain => self.source_sow_again(),
            RuleSource::PrickOut => self.source_prick_out(),
            RuleSource::PotOn => self.source_pot_on(),
            RuleSource::Grading => self.source_grading(),
            RuleSource::Measuring => self.source_measuring(),
            RuleSource::LiftPlug => self.source_lift_plug(),
            RuleSource::Steps => self.source_steps(),
            RuleSource::TreatmentOver => self.source_treatment_over(),
            RuleSource::SeedTest => self.source_seed_test(),
            RuleSource::SeedLife => self.source_seed_life(),
            RuleSource::SeedLifeKept => self.source_seed_life_kept(),
            RuleSource::GroundAhead => self.source_ground_ahead(),
            RuleSource::Rings => self.source_rings(),
            RuleSource::Nurses => self.source_nurses(),
            RuleSource::LightAhead => self.source_light_ahead(),
            RuleSource::SoilAhead => self.source_soil_ahead(),
            RuleSource::Survival => self.source_survival(),
            RuleSource::GoingOut => self.source_going_out(),
            RuleSource::Gauge => self.source_gauge(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::word::Word;
    use crate::wording::Lang;

    /// Publications that are the whole of a source are said alike in every language.
    const PUBLICATION: RuleSource = RuleSource::RootLimit;

    fn every_source() -> Vec<Source> {
        let mut all: Vec<Source> = RuleSource::WORDS.iter().map(|(rule, _)| Source::Rule(*rule)).collect();
        let common = "common practice".to_string();
        all.push(Source::Figure("this nursery".to_string()));
        all.push(Source::Collar { floor: common.clone() });
        all.push(Source::LightReadings { band: common });
        all.push(Source::GroundWork { lasts_days: 30 });
        all
    }

    #[test]
    fn every_source_is_said_in_its_own_language_and_names_the_same_publications() {
        let (en, es) = (Wording::new(Lang::En), Wording::new(Lang::Es));
        for source in every_source() {
            let (english, spanish) = (en.source_words(&source), es.source_words(&source));
            assert!(!english.is_empty() && !spanish.is_empty(), "{source:?}");
            if source != Source::Rule(PUBLICATION) {
                assert_ne!(english, spanish, "{source:?} is not translated");
            }
            // Years, pages and figures are the same in both.
            let figures = |text: &str| -> Vec<String> {
                let plain = text.replace(',', ".");
                let runs = plain.split(|c: char| !c.is_ascii_digit() && c != '.').map(|run| run.trim_matches('.'));
                runs.filter(|run| !run.is_empty()).map(str::to_string).collect()
            };
            let (mut one, mut other) = (figures(&english), figures(&spanish));
            one.sort();
            other.sort();
            assert_eq!(one, other, "{source:?}: '{english}' and '{spanish}'");
        }
    }

    #[test]
    fn a_source_that_a_person_wrote_stays_as_it_is() {
        let es = Wording::new(Lang::Es);
        assert_eq!(es.source_words(&Source::Figure("our book 2024".into())), "our book 2024");
        assert_eq!(es.source_words(&Source::figure(Some("  "))), "práctica común");
    }
}
