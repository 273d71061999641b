//! Where a rule comes from, in words. Names of publications stay as they are; the words around them are said.

use crate::reckon::picture::{RuleSource, Source};
use crate::wording::{Wording, theme};

impl Wording {
    /// Where a rule comes from, in a sentence; never empty.
    pub fn source_words(&self, source: &Source) -> String {
        match source {
            Source::Rule(rule) => self.rule_source(*rule),
            Source::Figure(source) => self.figure_source_words(source),
            Source::Collar { floor } => self.source_collar(self.figure_source_words(floor)),
            Source::LightReadings { band } => self.source_light_readings(self.figure_source_words(band)),
            Source::LightReckoned { band } => self.source_light_reckoned(self.figure_source_words(band)),
            Source::GroundWork { lasts_days } => self.source_ground_work(*lasts_days),
        }
    }

    fn rule_source(&self, source: RuleSource) -> String {
        self.of_word(theme::SOURCE, source)
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
        all.push(Source::LightReadings { band: common.clone() });
        all.push(Source::LightReckoned { band: common });
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
