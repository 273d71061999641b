//! All species known to a nursery: the built-in profiles and its own.

use serde_json::{Map, Value};
use std::collections::BTreeMap;
use std::sync::{Arc, OnceLock};

use super::built_in::TEXTS;
use super::found::{Found, Index, NameKind, names_of, plain};
use super::overrides::lay_over;
use super::profile::{Names, Profile, Role};
use super::profile_fault::ProfileFault;
use crate::base::SpeciesKey;
use crate::base::text::{self, folded};

/// Longest name of a nursery's own species, in characters (ours).
const LONGEST_NAME: usize = 60;

/// Species profiles by key, found by any of their names.
#[derive(Clone, Debug, Default)]
pub struct Catalogue {
    built_in: Option<&'static BuiltIn>,
    /// What was put in later, in place of a built-in profile or beside them.
    own: BTreeMap<SpeciesKey, Arc<Profile>>,
    /// Who bears the names of what was put in later.
    later: Index,
}

/// The built-in profiles. A profile is read when it is asked for, and the names of all when one is looked for: most runs
/// speak of a few species by their keys.
#[derive(Debug, Default)]
struct BuiltIn {
    profiles: BTreeMap<SpeciesKey, Slot>,
    index: OnceLock<Index>,
}

#[derive(Debug)]
struct Slot {
    text: &'static str,
    read: OnceLock<Option<Arc<Profile>>>,
}

impl Slot {
    fn profile(&self) -> Option<&Arc<Profile>> {
        // A text that could not be read would be left out; the tests see to it that each one can.
        self.read.get_or_init(|| toml::from_str(self.text).ok().map(Arc::new)).as_ref()
    }
}

impl BuiltIn {
    fn of_texts() -> BuiltIn {
        // The key stands in the first line of a profile; a test sees to it.
        let key = |text: &str| text.strip_prefix("key = \"")?.split('"').next().map(SpeciesKey::new);
        let slots = TEXTS.iter().filter_map(|(_, text)| Some((key(text)?, Slot { text, read: OnceLock::new() })));
        BuiltIn { profiles: slots.collect(), index: OnceLock::new() }
    }

    fn index(&self) -> &Index {
        self.index.get_or_init(|| {
            let mut index = Index::new();
            for profile in self.profiles.values().filter_map(Slot::profile) {
                for (name, kind) in names_of(profile) {
                    index.entry(name).or_default().push((kind, profile.key.clone()));
                }
            }
            for bearers in index.values_mut() {
                bearers.sort_by_key(|(kind, _)| *kind);
            }
            index
        })
    }
}

impl Catalogue {
    /// The built-in species.
    pub fn built_in() -> Catalogue {
        static ALL: OnceLock<BuiltIn> = OnceLock::new();
        Catalogue { built_in: Some(ALL.get_or_init(BuiltIn::of_texts)), ..Catalogue::default() }
    }

    /// The profile stored by a key.
    pub fn get(&self, key: &SpeciesKey) -> Option<&Arc<Profile>> {
        self.own.get(key).or_else(|| self.built_in?.profiles.get(key)?.profile())
    }

    /// Every species by key.
    pub fn iter(&self) -> impl Iterator<Item = (&SpeciesKey, &Arc<Profile>)> {
        let built_in = self.built_in.into_iter().flat_map(|all| &all.profiles);
        let read = built_in.filter_map(|(key, slot)| Some((key, slot.profile()?)));
        let all: BTreeMap<&SpeciesKey, &Arc<Profile>> = read.chain(&self.own).collect();
        all.into_iter()
    }

    /// The species of which a name has what was written as a word in it; where there is none, those of which a word begins so.
    pub fn with_word(&self, written: &str) -> Vec<SpeciesKey> {
        let wanted = plain(written);
        let words = self.with_whole_word(written);
        if wanted.is_empty() || !words.is_empty() {
            return words;
        }
        let later = format!("-{wanted}");
        self.of_which_a_name(&|name| name.starts_with(&wanted) || name.contains(&later))
    }

    /// The species of which a name has what was written as a word in it.
    pub(super) fn with_whole_word(&self, written: &str) -> Vec<SpeciesKey> {
        let wanted = plain(written);
        if wanted.is_empty() {
            return Vec::new();
        }
        let (first, later) = (format!("{wanted}-"), format!("-{wanted}"));
        self.of_which_a_name(&|name| {
            name == wanted || name.starts_with(&first) || name.ends_with(&later) || name.contains(&format!("{later}-"))
        })
    }

    fn of_which_a_name(&self, fits: &dyn Fn(&str) -> bool) -> Vec<SpeciesKey> {
        let called = |profile: &Profile| names_of(profile).iter().any(|(name, _)| fits(name));
        self.iter().filter(|(_, profile)| called(profile)).map(|(key, _)| key.clone()).collect()
    }

    /// The one species meant by what was written; none where nothing or more than one plant is.
    pub fn find(&self, written: &str) -> Option<SpeciesKey> {
        self.resolve(written).one()
    }

    /// Who bears a name, folded: the strongest kind of name first, then the earlier species.
    pub(super) fn bearers(&self, name: &str) -> Vec<(NameKind, SpeciesKey)> {
        let still = |(kind, key): &&(NameKind, SpeciesKey)| {
            // A nursery's own profile of a built-in species may have given a name up.
            self.later.is_empty()
                || self.get(key).is_some_and(|profile| names_of(profile).contains(&(name.to_string(), *kind)))
        };
        let built_in = self.built_in.and_then(|all| all.index().get(name)).into_iter().flatten().filter(still);
        let later = self.later.get(name).into_iter().flatten();
        let mut all: Vec<(NameKind, SpeciesKey)> = built_in.chain(later).cloned().collect();
        all.sort_by_key(|(kind, _)| *kind);
        all.dedup();
        all
    }

    /// Puts a profile in, in place of one with the same key.
    pub fn insert(&mut self, profile: Profile) {
        let key = profile.key.clone();
        for bearers in self.later.values_mut() {
            bearers.retain(|(_, owner)| *owner != key);
        }
        // The names of the built-in profile of this key alone: those of all would be read for it at each start.
        let built_in = self.built_in.and_then(|all| all.profiles.get(&key)?.profile());
        let known = built_in.map(|profile| names_of(profile)).unwrap_or_default();
        for (name, kind) in names_of(&profile) {
            if !known.contains(&(name.clone(), kind)) {
                self.later.entry(name).or_default().push((kind, key.clone()));
            }
        }
        self.own.insert(key, Arc::new(profile));
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
        let known = match self.resolve(written) {
            Found::One(key) => self.get(&key),
            Found::Several(keys) => {
                return Err(ProfileFault::SeveralPlants { name: written.trim().to_string(), plants: keys });
            }
            Found::Nothing => None,
        };
        let mut profile = match known {
            Some(profile) => Profile::clone(profile),
            None => self.new_species(written, own)?,
        };
        lay_over(&mut profile, own, source)?;
        Ok((profile.key.clone(), profile))
    }

    /// What a book has written of a species under the key it is stored by, laid over that profile; a key that is no
    /// built-in species is the nursery's own, whatever names the built-in ones have been given since.
    pub fn with_stored(
        &self,
        key: &SpeciesKey,
        own: &Map<String, Value>,
        source: &str,
    ) -> Result<(SpeciesKey, Profile), ProfileFault> {
        let mut profile = match self.get(key) {
            Some(profile) => Profile::clone(profile),
            None => self.new_species(key.as_str(), own)?,
        };
        lay_over(&mut profile, own, source)?;
        Ok((profile.key.clone(), profile))
    }

    /// The names and the code a profile shares with other species: each name and the species it leads to now. What its
    /// species was called before is no news, and a word that is asked about anyway may be borne by one more.
    pub fn shared_names(&self, profile: &Profile) -> Vec<(String, SpeciesKey)> {
        let before: Vec<(String, NameKind)> = self.get(&profile.key).map(|known| names_of(known)).unwrap_or_default();
        let new = names_of(profile).into_iter().filter(|name| name.1 != NameKind::Shared && !before.contains(name));
        let held = new.filter_map(|(name, _)| {
            let bearers = self.bearers(&name);
            let (_, owner) = bearers.iter().find(|(kind, owner)| *kind != NameKind::Shared && *owner != profile.key)?;
            Some((name, owner.clone()))
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
        let taken = |code: &str| self.iter().any(|(_, profile)| profile.code == code);
        let later = letters.iter().skip(2).copied().chain('a'..='z');
        later
            .map(|last| [letters[0], letters[1], last].iter().collect::<String>())
            .find(|code| !taken(code))
            .ok_or_else(|| ProfileFault::NoFreeCode { name: name.to_string() })
    }
}

/// Whether a name looks like a genus and a species.
fn is_binomial(name: &str) -> bool {
    let words: Vec<&str> = name.split(' ').collect();
    let genus = words[0].chars().next().is_some_and(char::is_uppercase);
    words.len() == 2 && genus && words[1].len() > 2 && words[1].chars().all(char::is_lowercase)
}

#[cfg(test)]
#[path = "catalogue_tests.rs"]
mod tests;
