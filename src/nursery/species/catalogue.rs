//! All species known to a nursery: the built-in profiles and its own.

use serde_json::{Map, Value};
use std::collections::BTreeMap;
use std::sync::{Arc, OnceLock};

use super::built_in::TEXTS;
use super::overrides::lay_over;
use super::profile::{Names, Profile, Role};
use super::profile_fault::ProfileFault;
use crate::base::text::{self, folded};
use crate::base::{SpeciesKey, name_search};

/// Longest name of a nursery's own species, in characters (ours).
const LONGEST_NAME: usize = 60;

/// What a name is of its species; where two species carry one name, the smaller leads, then the earlier one.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
enum NameKind {
    Key,
    Code,
    Scientific,
    Common,
}

/// Species profiles by key, found by any of their names.
#[derive(Clone, Debug, Default)]
pub struct Catalogue {
    profiles: BTreeMap<SpeciesKey, Arc<Profile>>,
    names: Arc<BTreeMap<String, (NameKind, SpeciesKey)>>,
}

impl Catalogue {
    /// The built-in species. Their texts are read once in a run.
    pub fn built_in() -> Catalogue {
        static READ: OnceLock<Catalogue> = OnceLock::new();
        READ.get_or_init(Catalogue::read_texts).clone()
    }

    fn read_texts() -> Catalogue {
        let mut catalogue = Catalogue::default();
        // A text that could not be read would be left out; the tests see to it that each one can.
        for profile in TEXTS.iter().filter_map(|(_, text)| toml::from_str(text).ok()) {
            catalogue.insert(profile);
        }
        catalogue
    }

    /// The profile stored by a key.
    pub fn get(&self, key: &SpeciesKey) -> Option<&Arc<Profile>> {
        self.profiles.get(key)
    }

    /// Every species by key.
    pub fn iter(&self) -> impl Iterator<Item = (&SpeciesKey, &Arc<Profile>)> {
        self.profiles.iter()
    }

    /// The species meant by a key, a three-letter code, a scientific name or a common name in either language;
    /// accents, case, and blanks or hyphens do not count.
    pub fn find(&self, written: &str) -> Option<SpeciesKey> {
        self.names.get(&plain(written)).map(|(_, key)| key.clone())
    }

    /// Up to three known names nearest to what was written, best first, spelled as the profiles spell them.
    pub fn nearest(&self, written: &str) -> Vec<String> {
        let known = self.profiles.values().flat_map(|profile| {
            let common = profile.names.en.iter().chain(&profile.names.es).map(String::as_str);
            common.chain([profile.scientific.as_str(), profile.code.as_str(), profile.key.as_str()])
        });
        name_search::nearest(written, known.filter(|name| !name.is_empty()))
    }

    /// Puts a profile in, in place of one with the same key. Where it shares a name with another species, the key
    /// leads over the code, the code over the scientific name, that over the common name, and then the earlier one.
    pub fn insert(&mut self, profile: Profile) {
        let key = profile.key.clone();
        let names = Arc::make_mut(&mut self.names);
        names.retain(|_, (_, owner)| *owner != key);
        for (name, kind) in names_of(&profile) {
            let taken = names.get(&name).is_some_and(|(held_as, _)| *held_as <= kind);
            if !taken {
                names.insert(name, (kind, key.clone()));
            }
        }
        self.profiles.insert(key, Arc::new(profile));
    }

    /// A nursery's own figures laid over the species meant by `written`, or a new species by that name. Figures may be
    /// bare values, which come from `source`, or `{"value", "source", "flag"}`; `code`, `scientific`, `role`,
    /// `names`, `notes` and `cautions` can be set too. The catalogue itself stays as it is: [`Catalogue::insert`] puts
    /// the profile in. The error names what cannot stand.
    pub fn with_own(
        &self,
        written: &str,
        own: &Map<String, Value>,
        source: &str,
    ) -> Result<(SpeciesKey, Profile), ProfileFault> {
        let known = self.find(written).and_then(|key| self.get(&key));
        let mut profile = match known {
            Some(profile) => Profile::clone(profile),
            None => self.new_species(written, own)?,
        };
        lay_over(&mut profile, own, source)?;
        Ok((profile.key.clone(), profile))
    }

    /// The names and the code a profile shares with other species: each name and the species it leads to now.
    pub fn shared_names(&self, profile: &Profile) -> Vec<(String, SpeciesKey)> {
        let held = names_of(profile).into_iter().filter_map(|(name, _)| {
            let (_, owner) = self.names.get(&name)?;
            (*owner != profile.key).then(|| (name, owner.clone()))
        });
        let mut shared: Vec<_> = held.collect();
        shared.sort();
        shared.dedup();
        shared
    }

    fn new_species(&self, written: &str, own: &Map<String, Value>) -> Result<Profile, ProfileFault> {
        let name = written.trim();
        if plain(name).is_empty() {
            return Err(ProfileFault::NoName);
        }
        if text::has_unseen(name) {
            return Err(ProfileFault::NameUnseen { shown: text::shown(name) });
        }
        if name.chars().count() > LONGEST_NAME {
            return Err(ProfileFault::NameTooLong { most: LONGEST_NAME.to_string() });
        }
        let code = if own.contains_key("code") { String::new() } else { self.free_code(name)? };
        let scientific = if is_binomial(name) { name } else { "" };
        let names = Names { en: vec![name.to_string()], es: vec![name.to_string()] };
        Ok(Profile::named(SpeciesKey::new(name), scientific, &code, Role::Nursery, names))
    }

    /// The first three letters of a name; where another species has that code, the first two with a later letter.
    fn free_code(&self, name: &str) -> Result<String, ProfileFault> {
        let mut letters: Vec<char> = folded(name).chars().filter(char::is_ascii_lowercase).collect();
        if letters.is_empty() {
            return Err(ProfileFault::NoLetters { name: name.to_string() });
        }
        while letters.len() < 3 {
            letters.push('x');
        }
        let taken = |code: &str| self.profiles.values().any(|profile| profile.code == code);
        let later = letters.iter().skip(2).copied().chain('a'..='z');
        later
            .map(|last| [letters[0], letters[1], last].iter().collect::<String>())
            .find(|code| !taken(code))
            .ok_or_else(|| ProfileFault::NoFreeCode { name: name.to_string() })
    }
}

/// What was written, folded, with runs of blanks and hyphens as one hyphen.
fn plain(written: &str) -> String {
    let folded = folded(written);
    let words: Vec<&str> = folded.split('-').filter(|word| !word.is_empty()).collect();
    words.join("-")
}

/// Whether a name looks like a genus and a species.
fn is_binomial(name: &str) -> bool {
    let words: Vec<&str> = name.split(' ').collect();
    let genus = words[0].chars().next().is_some_and(char::is_uppercase);
    words.len() == 2 && genus && words[1].len() > 2 && words[1].chars().all(char::is_lowercase)
}

/// Every name a species is found by, folded.
fn names_of(profile: &Profile) -> Vec<(String, NameKind)> {
    let mut names = vec![(plain(profile.key.as_str()), NameKind::Key), (plain(&profile.code), NameKind::Code)];
    names.extend(scientific_names(&profile.scientific).into_iter().map(|name| (plain(&name), NameKind::Scientific)));
    names.extend(profile.names.en.iter().chain(&profile.names.es).map(|name| (plain(name), NameKind::Common)));
    names.retain(|(name, _)| !name.is_empty());
    names
}

/// The scientific name as written, without a remark in brackets, without "spp.", and each of two species of a genus
/// written as "Tephrosia vogelii / candida".
fn scientific_names(written: &str) -> Vec<String> {
    let bare = written.split('(').next().unwrap_or("").trim().to_string();
    let mut names = vec![written.to_string(), bare.clone()];
    if let Some(genus) = bare.strip_suffix(" spp.") {
        names.push(genus.to_string());
    }
    if let Some((first, other)) = bare.split_once(" / ") {
        let genus = first.split(' ').next().unwrap_or("");
        names.extend([first.to_string(), format!("{genus} {other}")]);
    }
    names
}

#[cfg(test)]
#[path = "catalogue_tests.rs"]
mod tests;
