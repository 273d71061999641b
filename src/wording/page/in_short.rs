//! What a grower asks first of a plant, each in one line that is never left out: what is not known is said to be unknown.

use crate::nursery::species::{Figure, Profile};
use crate::reckon::round::intervals::DAYS_PER_MONTH;
use crate::wording::{Wording, theme};

/// An answer to one of these things.
pub(crate) struct InShort {
    /// Its name for programs.
    pub(crate) key: &'static str,
    /// What is asked.
    pub(crate) label: String,
    /// What is known; none where nothing is.
    pub(crate) said: Option<String>,
}

impl Wording {
    /// Seed type, days to emerge, months in the nursery, light in the field. What it can do to people has a line of its own.
    pub(crate) fn in_short(&self, profile: &Profile) -> [InShort; 4] {
        let one = |key, label, said| InShort { key, label, said };
        [
            one("seed_type", self.in_short_seed(), self.seed_in_short(profile)),
            one("days_to_emerge", self.in_short_emerge(), self.emergence_in_short(profile)),
            one("months_in_nursery", self.in_short_months(), self.months_in_short(profile)),
            one("light_in_field", self.in_short_light(), self.light_in_short(profile)),
        ]
    }

    /// The same as a person reads them.
    pub(crate) fn in_short_lines(&self, profile: &Profile) -> Vec<String> {
        let line = |one: InShort| self.in_short_line(one.label, one.said.unwrap_or_else(|| self.in_short_unknown()));
        self.in_short(profile).into_iter().map(line).collect()
    }

    fn seed_in_short(&self, profile: &Profile) -> Option<String> {
        let kind = profile.storage.as_ref().map(|figure| self.of_word(theme::WORD, figure.value));
        let none = || profile.raised_without_seed().map(|from| self.in_short_no_seed(self.profile_text(from)));
        let kept = || profile.storage_note.as_ref().map(|note| self.in_short_kept(self.profile_text(&note.value)));
        kind.or_else(none).or_else(kept)
    }

    fn emergence_in_short(&self, profile: &Profile) -> Option<String> {
        let none = || profile.raised_without_seed().map(|from| self.in_short_no_seed(self.profile_text(from)));
        self.span_in_short(&profile.emerge_first_days, &profile.emerge_last_days, 1.0).or_else(none)
    }

    fn months_in_short(&self, profile: &Profile) -> Option<String> {
        if profile.is_set_in_place() {
            return Some(match profile.raised_without_seed() {
                Some(_) => self.in_short_planted_in_place(),
                None => self.in_short_sown_in_place(),
            });
        }
        self.span_in_short(&profile.plantable_least_days, &profile.plantable_usual_days, DAYS_PER_MONTH)
    }

    fn light_in_short(&self, profile: &Profile) -> Option<String> {
        let share = |figure: &Option<Figure<f64>>| figure.as_ref().map(|shade| self.number(100.0 - shade.value, 0));
        let (least, most) = (share(&profile.outplant_shade_most_pct), share(&profile.outplant_shade_least_pct));
        let read = least.zip(most).map(|(least, most)| self.in_short_light_share(least, most));
        // How much shade a plant bears is no light, and reads as its opposite.
        let shade = || profile.shade_tolerance.as_ref().map(|words| self.profile_text(&words.value));
        read.or_else(|| shade().map(|shade| self.in_short_light_shade(shade)))
    }

    /// From the least to the most of a number of days, in units of so many; of one end alone that.
    fn span_in_short(&self, least: &Option<Figure<f64>>, most: &Option<Figure<f64>>, unit: f64) -> Option<String> {
        let said = |figure: &Option<Figure<f64>>| figure.as_ref().map(|days| self.number(days.value / unit, 1));
        match (said(least), said(most)) {
            (Some(least), Some(most)) if least != most => Some(self.in_short_span(least, most)),
            (Some(least), None) => Some(self.in_short_from(least)),
            (Some(one), Some(_)) | (None, Some(one)) => Some(one),
            (None, None) => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::nursery::species::Catalogue;
    use crate::wording::Lang;

    fn said(name: &str, lang: Lang) -> Vec<String> {
        let catalogue = Catalogue::built_in();
        let profile = catalogue.get(&catalogue.find(name).unwrap()).unwrap();
        Wording::new(lang).in_short_lines(profile)
    }

    #[test]
    fn what_is_unknown_or_does_not_apply_is_said_and_never_left_out() {
        let en = |name| said(name, Lang::En);
        assert_eq!(
            en("vanilla"),
            [
                "Seed type: none: raised from cutting (8-12 nodes)",
                "Days to emerge: none: raised from cutting (8-12 nodes)",
                "Months in the nursery: unknown",
                "Light in the field: 40 to 60 % of full sun",
            ]
        );
        assert_eq!(en("maize")[0], "Seed type: unknown; it keeps 1 y dry <13% mc");
        assert_eq!(en("maize")[2], "Months in the nursery: none: sown where it stays");
        assert_eq!(en("banana")[2], "Months in the nursery: none: planted where it stays");
        // 39 days and more: nobody wrote the last day. 150 to 240 days are 4.9 to 7.9 months.
        assert_eq!(en("shea")[1], "Days to emerge: 39 and more");
        assert_eq!(en("abiu")[2], "Months in the nursery: 4.9 to 7.9");
        assert_eq!(said("vainilla", Lang::Es)[2], "Meses en el vivero: no se sabe");
    }

    #[test]
    fn shade_that_a_plant_bears_is_never_called_its_light() {
        let bears = [
            ("castor", "little", "poca"),
            ("maize", "none, full sun", "ninguna, pleno sol"),
            ("cassava", "none (intolerant of shade)", "ninguna (no aguanta sombra)"),
        ];
        for (name, en, es) in bears {
            assert_eq!(said(name, Lang::En)[3], format!("Light in the field: unknown; shade it bears: {en}"));
            assert_eq!(said(name, Lang::Es)[3], format!("Luz en el campo: no se sabe; sombra que aguanta: {es}"));
        }
        for (_, profile) in
            Catalogue::built_in().iter().filter(|(_, profile)| profile.outplant_shade_most_pct.is_none())
        {
            let line = &Wording::new(Lang::En).in_short_lines(profile)[3];
            assert!(line.starts_with("Light in the field: unknown"), "{}: {line}", profile.scientific);
        }
    }

    #[test]
    fn every_species_has_a_line_for_each_in_both_languages() {
        for lang in Lang::ALL {
            let wording = Wording::new(lang);
            for (key, profile) in Catalogue::built_in().iter() {
                let lines = wording.in_short_lines(profile);
                assert!(lines.iter().all(|line| !line.ends_with(": ")), "{key}: {lines:?}");
            }
        }
    }
}
