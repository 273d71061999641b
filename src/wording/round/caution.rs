//! What could hurt somebody at a stop, on a form, and what the plants there can do.

use crate::base::SpeciesKey;
use crate::nursery::caution::Caution;
use crate::nursery::species::{Catalogue, Profile};
use crate::wording::{Wording, theme};

impl Wording {
    /// What is usual against a danger of work, in one line.
    pub fn caution_words(&self, caution: Caution) -> String {
        self.of_word(theme::CAUTION, caution)
    }

    /// The beginning of it, up to its first stop, where the whole line was said a short while before.
    pub(crate) fn caution_in_short(&self, caution: Caution) -> String {
        let whole = self.caution_words(caution);
        let end = whole.find(['.', ';', ':']).unwrap_or(whole.len());
        whole.get(..end).unwrap_or(&whole).to_string()
    }

    /// What a plant can do to people, animals or the land, behind its name; nothing where it is said to harm nobody.
    pub(crate) fn plant_danger(&self, key: &SpeciesKey, species: &Catalogue) -> Option<String> {
        let said = match species.get(key).map(|profile| (profile, profile.dangers())) {
            None | Some((_, None)) => self.caution_plant_unknown(),
            Some((profile, Some([]))) => self.danger_note_of(profile)?,
            Some((_, Some(kinds))) => {
                kinds.iter().map(|danger| self.danger_words(*danger)).collect::<Vec<_>>().join("; ")
            }
        };
        Some(self.caution_plant(self.species_of(key, species), said))
    }

    /// The same of several plants, each behind a label.
    pub(crate) fn plant_dangers(
        &self,
        label: &str,
        plants: &[SpeciesKey],
        species: &Catalogue,
    ) -> Vec<(String, String)> {
        let dangers = plants.iter().filter_map(|key| self.plant_danger(key, species));
        dangers.map(|danger| (label.to_string(), danger)).collect()
    }

    fn danger_note_of(&self, profile: &Profile) -> Option<String> {
        profile.danger_note.as_ref().map(|note| self.profile_text(&note.value))
    }
}
