//! The texts of the built-in profiles in Spanish: notes, cautions, figures in words, and the words around publications.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use super::catalogue::Catalogue;

/// English texts with the same in Spanish: those of the first profiles, and those that several of the others share. What
/// one profile alone says stands in its own file. A publication that is the whole of a source stands as it is.
const TEXTS: [&str; 2] = [include_str!("in_spanish.toml"), include_str!("texts_in_spanish.toml")];

/// The source of the light a nurse plant stands, where its profile names none.
pub const NURSE_STANDS_ANY_LIGHT: &str = "ours: a nurse plant stands any light";

/// A text of a built-in profile in Spanish; none for a text that is not of a built-in profile.
pub fn in_spanish(english: &str) -> Option<&'static str> {
    static READ: OnceLock<BTreeMap<String, String>> = OnceLock::new();
    // A file that could not be read would leave the texts in English; the tests see to it that it can.
    READ.get_or_init(every_text).get(english).map(String::as_str)
}

fn every_text() -> BTreeMap<String, String> {
    let catalogue = Catalogue::built_in();
    let of_profiles = catalogue.iter().flat_map(|(_, profile)| profile.in_spanish.clone());
    let shared = TEXTS.iter().flat_map(|text| toml::from_str::<BTreeMap<String, String>>(text).unwrap_or_default());
    of_profiles.chain(shared).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::nursery::species::Catalogue;
    use std::collections::BTreeSet;

    /// The source that figures of a nursery's own get where none is named.
    const OWN: &str = "this nursery";

    fn said_in_english() -> BTreeSet<String> {
        let mut all = BTreeSet::from([OWN, NURSE_STANDS_ANY_LIGHT].map(str::to_string));
        for (_, profile) in Catalogue::built_in().iter() {
            all.extend(profile.notes.iter().chain(&profile.cautions).cloned());
            for (name, value, source, _) in profile.figures() {
                all.insert(source.to_string());
                let is_word = ["storage", "stem", "looks_alive", "hardening_template"].contains(&name);
                all.extend(value.as_str().filter(|_| !is_word).map(str::to_string));
            }
        }
        all
    }

    /// The numbers in a text, however its language writes thousands and decimals.
    fn numbers(text: &str) -> Vec<String> {
        let letters: Vec<char> = text.chars().collect();
        let digit = |at: usize| letters.get(at).is_some_and(char::is_ascii_digit);
        let mut plain = String::new();
        for (at, letter) in letters.iter().enumerate() {
            let thousand = at > 0 && digit(at - 1) && (1..4).all(|next| digit(at + next)) && !digit(at + 4);
            match letter {
                ',' | ' ' if thousand => {}
                ',' => plain.push('.'),
                other => plain.push(*other),
            }
        }
        let runs = plain.split(|c: char| !c.is_ascii_digit() && c != '.').map(|run| run.trim_matches('.'));
        let mut all: Vec<String> = runs.filter(|run| !run.is_empty()).map(str::to_string).collect();
        all.sort();
        all
    }

    #[test]
    fn every_text_of_the_built_in_profiles_stands_in_spanish_with_the_same_numbers() {
        let texts = said_in_english();
        for text in &texts {
            let spanish = in_spanish(text).unwrap_or_else(|| panic!("not in Spanish: {text}"));
            assert_eq!(numbers(text), numbers(spanish), "{text}\n{spanish}");
            if text == spanish {
                // Only plain figures, and publications with their year, are the same in both.
                let has_year = numbers(text).iter().any(|number| number.len() == 4);
                let series = text.starts_with("FAO Better Farming Series") || text.starts_with("Orwa");
                let words = text.chars().filter(|c| c.is_alphabetic() && *c != 'x').count();
                assert!(has_year || series || words == 0, "not translated: {text}");
            }
        }
        for text in TEXTS {
            toml::from_str::<BTreeMap<String, String>>(text).unwrap();
        }
        let known = every_text();
        let left: Vec<&String> = known.keys().filter(|text| !texts.contains(*text)).collect();
        assert!(left.is_empty(), "no profile says {left:?}");
    }

    #[test]
    fn what_a_person_wrote_has_no_other_language() {
        assert_eq!(in_spanish("grows by the church"), None);
    }
}
