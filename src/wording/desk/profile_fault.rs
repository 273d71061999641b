//! Why a species profile cannot stand.

use crate::nursery::species::{Catalogue, ProfileFault};
use crate::wording::{Lang, Wording};

impl Wording {
    /// Why a profile cannot stand, in a sentence.
    pub(crate) fn profile_fault(&self, fault: &ProfileFault) -> String {
        match fault {
            ProfileFault::NoSource { name } => self.profile_no_source(self.figure_quoted(name)),
            ProfileFault::NotANumber { name } => self.profile_not_a_number(self.figure_quoted(name)),
            ProfileFault::Negative { name, written } => self.profile_negative(self.figure_quoted(name), written),
            ProfileFault::Zero { name } => self.profile_zero(self.figure_quoted(name)),
            ProfileFault::MoreThan { name, most, written } => {
                self.profile_more_than(self.figure_quoted(name), most, written)
            }
            ProfileFault::Unseen { name } => self.profile_unseen(self.figure_quoted(name)),
            ProfileFault::TooLong { name, most } => self.profile_too_long(self.figure_quoted(name), most),
            ProfileFault::OutOfOrder { least, low, most, high } => {
                self.profile_out_of_order(self.figure_quoted(least), low, self.figure_quoted(most), high)
            }
            ProfileFault::GrowthCount { points, most } => self.profile_growth_count(points, most),
            ProfileFault::GrowthMonth { month } => self.profile_growth_month(month),
            ProfileFault::GrowthOrder { month, after } => self.profile_growth_order(month, after),
            ProfileFault::StepCount { steps, most } => self.profile_step_count(steps, most),
            ProfileFault::StepDays => self.profile_step_days(),
            ProfileFault::StepOrder { days, after } => self.profile_step_order(days, after),
            ProfileFault::TooMany { name, count, most } => self.profile_too_many(self.figure_quoted(name), count, most),
            ProfileFault::EmptyText { name } => self.profile_empty_text(self.figure_quoted(name)),
            ProfileFault::NoCommonName => self.profile_no_common_name(),
            ProfileFault::BadCode { written } => self.profile_bad_code(written),
            ProfileFault::KeyChanged => self.profile_key_changed(),
            ProfileFault::UnknownRole { written } => self.profile_unknown_role(written),
            ProfileFault::UnknownFlag { written } => self.profile_unknown_flag(written),
            ProfileFault::UnknownFigure { written } => self.profile_unknown_figure(written),
            ProfileFault::UnknownFigureNear { written, nearest } => {
                self.profile_unknown_figure_near(written, self.figure_quoted(nearest))
            }
            ProfileFault::NotText { name } => self.profile_not_text(self.figure_quoted(name)),
            ProfileFault::NotTexts { name } => self.profile_not_texts(self.figure_quoted(name)),
            ProfileFault::NotNames => self.profile_not_names(),
            ProfileFault::NamesLanguage { written } => self.profile_names_language(written),
            ProfileFault::NotYesOrNo { name } => self.profile_not_yes_or_no(self.figure_quoted(name)),
            ProfileFault::NotTheWord { name, words } => {
                self.profile_not_the_word(self.figure_quoted(name), self.words_quoted(name, words))
            }
            ProfileFault::NotPoints { name } => self.profile_not_points(self.figure_quoted(name)),
            ProfileFault::NotSteps { name } => self.profile_not_steps(self.figure_quoted(name)),
            ProfileFault::NoName => self.profile_no_name(),
            ProfileFault::NameUnseen { shown } => self.profile_name_unseen(shown),
            ProfileFault::NameTooLong { most } => self.profile_name_too_long(most),
            ProfileFault::NoLetters { name } => self.profile_no_letters(name),
            ProfileFault::NoFreeCode { name } => self.profile_no_free_code(name),
            ProfileFault::SeveralPlants { name, plants } => self.several_plants(name, plants, &Catalogue::built_in()),
            ProfileFault::NameTaken { name, other } => self.profile_name_taken(name, other),
        }
    }

    /// A figure by the name under which it is written, and what it is called where that is another.
    fn figure_quoted(&self, name: &str) -> String {
        self.beside(format!("'{name}'"), name, &self.profile_part(name))
    }

    /// The words that a figure takes, each with what it is called where that is another.
    fn words_quoted(&self, figure: &str, words: &str) -> String {
        let called = |word: &str| self.figure_value(figure, &word.into()).concat();
        let each = words.split(", ").map(|word| self.beside(word.to_string(), word, &called(word)));
        each.collect::<Vec<_>>().join(", ")
    }

    /// What is written, and behind it in brackets what it is called in a language that is not that of files.
    fn beside(&self, shown: String, written: &str, called: &str) -> String {
        let same = self.lang() == Lang::En || called == written || called == written.replace('_', " ");
        if same { shown } else { format!("{shown} ({called})") }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::nursery::species::Catalogue;
    use serde_json::{Map, Value, json};

    fn refused(own: Value) -> ProfileFault {
        let own: Map<String, Value> = own.as_object().cloned().unwrap();
        Catalogue::built_in().with_own("coffee", &own, "our book").unwrap_err()
    }

    #[test]
    fn what_cannot_stand_in_a_profile_is_said_in_both_languages_and_never_in_a_programs_words() {
        let cases = [
            (
                json!({"container_ml": "big"}),
                "'container_ml' is not a number",
                "'container_ml' (tamaño de la bolsa) no es un número",
            ),
            (json!({"row_m": -1}), "cannot be negative; -1 was written", "no puede ser negativo; se escribió -1"),
            (json!({"outplant_shade_least_pct": 60, "outplant_shade_most_pct": 30}), "is more than", "más que"),
            (json!({"leaves_in_pairs": "two"}), "is true or false", "es true o false"),
            (
                json!({"stem": "bendy"}),
                "one of: woody, soft",
                "'stem' (tallo) es uno de: woody (leñoso), soft (blando)",
            ),
            (json!({"growth_points": 3}), "a list of records with month", "una lista de registros con month (mes)"),
            (
                json!({"hardening_steps": [{"soon": 1}]}),
                "records with days_before",
                "registros con days_before (días antes)",
            ),
            (json!({"sow_place": 7}), "'sow_place' is a text", "'sow_place' (dónde se siembra) es un texto"),
            (json!({"row_m": {"value": 3, "flag": "sure"}}), "how far a figure can be trusted", "cuánto confiar"),
            (
                json!({"hight_least_cm": 3}),
                "the nearest is 'height_least_cm'",
                "el más parecido es 'height_least_cm' (altura de salida, mínima)",
            ),
        ];
        let (en, es) = (Wording::new(Lang::En), Wording::new(Lang::Es));
        for (own, english, spanish) in cases {
            let fault = refused(own);
            let (one, other) = (en.profile_fault(&fault), es.profile_fault(&fault));
            assert!(one.contains(english), "{one}");
            assert!(other.contains(spanish), "{other}");
            for leak in ["expected", "invalid type", "f64", "variant"] {
                assert!(!one.contains(leak) && !other.contains(leak), "{one} / {other}");
            }
        }
    }
}
