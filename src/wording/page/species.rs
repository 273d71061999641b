//! Species and their figures in words.

use serde_json::Value;

use crate::base::SpeciesKey;
use crate::base::word::Word;
use crate::nursery::species::{
    Catalogue, Danger, Flag, Found, Group, GrowthPoint, HardeningStep, LooksAlive, Profile, Role, Stem, Storage,
    Template, Trust, in_spanish,
};
use crate::wording::{Lang, Wording, theme};

/// The source of what the trade does and no publication states, as profiles spell it.
const COMMON_PRACTICE: &str = "common practice";
/// What the source of our own defaults begins with: it says by itself what the flag would say.
const OURS: &str = "ours";

impl Wording {
    /// The name of a species in the person's language, else in the other, else the scientific one.
    pub(crate) fn species_name(&self, profile: &Profile) -> String {
        let (own, other) = match self.lang() {
            Lang::En => (&profile.names.en, &profile.names.es),
            Lang::Es => (&profile.names.es, &profile.names.en),
        };
        let name = own.first().or_else(|| other.first()).unwrap_or(&profile.scientific);
        crate::base::text::cleaned(name)
    }

    /// The name of a species by its key; the key itself where no profile is known by it.
    pub(crate) fn species_of(&self, key: &SpeciesKey, species: &Catalogue) -> String {
        let profile = species.get(key).or_else(|| species.find(key.as_str()).and_then(|found| species.get(&found)));
        profile.map_or_else(|| crate::base::text::cleaned(key.as_str()), |profile| self.species_name(profile))
    }

    /// What a species is for.
    pub(crate) fn role_name(&self, role: Role) -> String {
        self.of_word(theme::ROLE, role)
    }

    /// What growers look for a species under; none is a nursery's own.
    pub(crate) fn group_name(&self, group: Option<Group>) -> String {
        group.map_or_else(|| self.species_group_own(), |group| self.of_word(theme::GROUP, group))
    }

    /// What a plant can do to people, animals or the land, in a few words.
    pub(crate) fn danger_words(&self, danger: Danger) -> String {
        self.of_word(theme::DANGER, danger)
    }

    /// The dangers of a plant in one sentence, that none is known, or that nobody wrote of any.
    pub(crate) fn danger_line(&self, profile: &Profile) -> String {
        let note = profile.danger_note.as_ref().map(|note| self.profile_text(&note.value));
        match profile.dangers() {
            None => self.species_danger_unknown(),
            Some([]) => note.map_or_else(|| self.species_no_danger(), |note| self.species_dangers(note)),
            Some(kinds) => {
                let words: Vec<String> = kinds.iter().map(|danger| self.danger_words(*danger)).collect();
                let list = self.species_dangers(words.join("; "));
                note.map_or_else(|| list.clone(), |note| format!("{list} {note}"))
            }
        }
    }

    /// Several plants are called so, of which one or more are known here, or the word is only a piece of their names: which is
    /// meant. Each is named with its scientific name.
    pub(crate) fn several_plants(&self, written: &str, plants: &[SpeciesKey], species: &Catalogue) -> String {
        let name = |key: &SpeciesKey| {
            let profile = species.get(key);
            profile.map_or_else(|| key.to_string(), |one| self.plant_named(self.species_name(one), &one.scientific))
        };
        let listed = |plants: &[SpeciesKey]| plants.iter().map(name).collect::<Vec<_>>().join("; ");
        let with_piece = species.with_piece(written);
        match (with_piece.is_empty(), plants) {
            (false, _) => self.asked_piece_of_name(written, listed(&with_piece)),
            (true, [one]) => self.asked_one_of_several(written, name(one)),
            (true, _) => self.asked_several_plants(written, listed(plants)),
        }
    }

    /// Why what was written is not one species: several bear the name, or none does.
    pub(crate) fn not_one_species(&self, written: &str, species: &Catalogue) -> String {
        match species.resolve(written) {
            Found::Several(plants) => self.several_plants(written, &plants, species),
            Found::Nothing if species.is_piece_of_names(written) => self.several_plants(written, &[], species),
            Found::One(_) | Found::Nothing => {
                self.nearest_after(self.refused_unknown_species(written), &species.nearest(written))
            }
        }
    }

    /// How far a figure can be trusted.
    pub(crate) fn flag_name(&self, flag: Flag) -> String {
        match flag {
            Flag::Seen => self.flag_seen(),
            Flag::Memory => self.flag_memory(),
            Flag::Common => self.flag_common(),
            Flag::Ours => self.flag_ours(),
            Flag::Own => self.flag_own(),
        }
    }

    /// How many figures there are of each flag; those without any are left out.
    pub(crate) fn trust_lines(&self, trust: &Trust) -> Vec<String> {
        let some = trust.by_flag().into_iter().filter(|(_, count)| *count > 0);
        some.map(|(flag, count)| self.flag_counted(count, self.flag_name(flag))).collect()
    }

    /// A source as a person reads it: "common practice", or none, in the person's language; a publication as it is.
    pub(crate) fn figure_source_words(&self, source: &str) -> String {
        let plain = source.trim();
        if plain.is_empty() || plain == COMMON_PRACTICE { self.flag_common() } else { self.profile_text(plain) }
    }

    /// A text of a built-in profile in the person's language; a text that a person wrote as it is.
    pub(crate) fn profile_text(&self, text: &str) -> String {
        let said = match self.lang() {
            Lang::En => None,
            Lang::Es => in_spanish(text.trim()),
        };
        crate::base::text::cleaned(said.unwrap_or(text))
    }

    /// A source with how far the figure can be trusted.
    pub(crate) fn sourced(&self, source: &str, flag: Flag) -> String {
        if source.trim() == COMMON_PRACTICE && flag == Flag::Common {
            return self.flag_common();
        }
        if flag == Flag::Ours && source.trim().starts_with(OURS) {
            return self.figure_source_words(source);
        }
        self.figure_source(self.figure_source_words(source), self.flag_name(flag))
    }

    /// What a part of a profile is called, a figure or another.
    pub(crate) fn profile_part(&self, name: &str) -> String {
        match name {
            "code" => self.part_profile_code(),
            "scientific" => self.part_profile_scientific(),
            "role" => self.part_profile_role(),
            "names" => self.part_profile_names(),
            "notes" => self.part_profile_notes(),
            "cautions" => self.part_profile_cautions(),
            figure => self.figure_name(figure),
        }
    }

    /// The name of a figure of a profile.
    pub(crate) fn figure_name(&self, name: &str) -> String {
        self.of_word(theme::FIGURE, name)
    }

    /// The value of a figure with its unit; a list gives a line for each of its parts.
    pub(crate) fn figure_value(&self, name: &str, value: &Value) -> Vec<String> {
        if name == "growth_points" {
            let points: Vec<GrowthPoint> = serde_json::from_value(value.clone()).unwrap_or_default();
            return points.iter().map(|point| self.growth_words(point)).collect();
        }
        if name == "hardening_steps" {
            let steps: Vec<HardeningStep> = serde_json::from_value(value.clone()).unwrap_or_default();
            return steps.iter().map(|step| self.step_words(step)).collect();
        }
        if name == "danger" {
            let dangers: Vec<Danger> = serde_json::from_value(value.clone()).unwrap_or_default();
            let said: Vec<String> = dangers.iter().map(|danger| self.danger_words(*danger)).collect();
            return if said.is_empty() { vec![self.species_no_danger()] } else { said };
        }
        let single = match value {
            Value::Bool(true) => self.measure_yes(),
            Value::Bool(false) => self.measure_no(),
            Value::Number(number) => self.figure_number(name, number.as_f64().unwrap_or(0.0)),
            Value::String(text) => self.figure_text(name, text),
            Value::Null | Value::Array(_) | Value::Object(_) => value.to_string(),
        };
        vec![single]
    }

    fn figure_number(&self, name: &str, number: f64) -> String {
        let value = self.number(number, 3);
        match name.rsplit_once('_').map_or("", |(_, unit)| unit) {
            "days" => self.unit_days(value),
            "months" => self.unit_months(value),
            "pct" => self.percent_of(value),
            unit @ ("cm" | "mm" | "ml" | "m" | "kg") => format!("{value} {unit}"),
            "c" => self.lot_temperature(value),
            _ => value,
        }
    }

    fn figure_text(&self, name: &str, text: &str) -> String {
        match name {
            "storage" => Storage::read(text).map(|word| self.of_word(theme::WORD, word)),
            "looks_alive" => LooksAlive::read(text).map(|word| self.of_word(theme::WORD, word)),
            "stem" => Stem::read(text).map(|word| self.of_word(theme::WORD, word)),
            "hardening_template" => Template::read(text).map(|word| self.of_word(theme::WORD, word)),
            _ => None,
        }
        .unwrap_or_else(|| self.profile_text(text))
    }

    fn growth_words(&self, point: &GrowthPoint) -> String {
        self.growth_point(self.number(point.month, 1), self.number(point.height_m, 2), self.number(point.radius_m, 2))
    }

    fn step_words(&self, step: &HardeningStep) -> String {
        let parts: Vec<String> = [
            step.shade_pct.map(|shade| self.step_shade(self.percent(shade / 100.0))),
            step.bed_shade.then(|| self.step_bed_shade()),
            step.water_every_days.map(|days| self.step_water(days)),
            step.soak.then(|| self.step_soak()),
        ]
        .into_iter()
        .flatten()
        .collect();
        self.step_before(step.days_before, parts.join(", "))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_are_said_with_their_unit() {
        let (en, es) = (Wording::new(Lang::En), Wording::new(Lang::Es));
        let catalogue = Catalogue::built_in();
        let coffee = catalogue.get(&SpeciesKey::new("COA")).unwrap();
        assert_eq!(
            (en.species_name(coffee), es.species_name(coffee)),
            ("arabica coffee".into(), "café arábica".into())
        );
        let said = |wording: &Wording, wanted: &str| {
            let figures = coffee.figures();
            let (name, value, _, _) = figures.iter().find(|(name, ..)| *name == wanted).unwrap();
            (wording.figure_name(name), wording.figure_value(name, value))
        };
        assert_eq!(said(&en, "height_least_cm"), ("height to go out, least".into(), vec!["20 cm".into()]));
        assert_eq!(said(&es, "storage").1, vec!["aguanta secarse un poco"]);
        assert_eq!(said(&es, "depletion_fraction").1, vec!["0.4"]);
        assert_eq!(
            said(&en, "hardening_steps").1,
            vec![
                "28 d before: 40 % shade",
                "14 d before: 30 % shade, water every 2 days",
                "7 d before: the shade of its bed, water every 3 days",
                "1 d before: soak it"
            ]
        );
    }

    #[test]
    fn a_piece_of_names_and_a_word_of_several_plants_of_which_one_is_known_are_told_as_that() {
        let (en, es) = (Wording::new(Lang::En), Wording::new(Lang::Es));
        let catalogue = Catalogue::built_in();
        // All that `species` offers for the word, also those that are never taken for what people call so.
        for word in ["bean", "frijol", "pea"] {
            let said = en.not_one_species(word, &catalogue);
            let offered = catalogue.with_word(word);
            let named = |key: &SpeciesKey| said.contains(&catalogue.get(key).unwrap().scientific);
            assert!(said.contains(&format!("no plant is called just {word}")), "{said}");
            assert!(offered.len() >= 2 && offered.iter().all(named), "{said}");
        }
        assert!(en.not_one_species("pea", &catalogue).contains("pigeon pea"));
        let said = es.not_one_species("níspero", &catalogue);
        assert!(said.contains("se dice de varias plantas") && said.contains("Manilkara zapota"), "{said}");
        assert!(en.not_one_species("limón", &catalogue).contains("several plants are called limón"));
    }
}
