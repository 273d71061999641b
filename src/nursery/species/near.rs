//! The nearest names to one that no plant bears: near in letters or in sound, never a code, and never a plant that
//! people are known to confuse with it.

use super::catalogue::Catalogue;
use super::found::{is_never, plain};
use super::profile::Profile;
use crate::base::SpeciesKey;
use crate::base::name_search::{distance, sounds};

/// Most names offered.
const MOST: usize = 3;
/// A name may be this share of its letters away: one of four (ours).
const LETTERS_PER_SLIP: usize = 4;
/// A beginning counts as one and a half slips, doubled.
const SLIPS_OF_A_BEGINNING: usize = 3;
/// Letters a beginning needs to stand for a name.
const SHORTEST_BEGINNING: usize = 3;

impl Catalogue {
    /// Up to three names nearest to what was written, best first, each of another plant, spelled as the profiles spell
    /// them.
    pub fn nearest(&self, written: &str) -> Vec<String> {
        let whole = plain(written);
        if whole.is_empty() {
            return Vec::new();
        }
        let wanted = Wanted::of(&whole);
        let fits = self.iter().filter(|(_, profile)| !is_never(profile, &whole));
        // A name that would ask about a plant they are known to confuse is not offered either.
        let asks_rightly = |name: &str| {
            let bearers = self.bearers(&plain(name));
            bearers.iter().all(|(_, key)| self.get(key).is_none_or(|profile| !is_never(profile, &whole)))
        };
        let near = fits.filter_map(|(_, profile)| wanted.nearest_of(profile, &asks_rightly));
        let mut scored: Vec<(usize, usize, String)> = near.collect();
        scored.sort();
        // A name that several plants bear is offered once: it asks which.
        let mut offered = std::collections::BTreeSet::new();
        scored.retain(|(_, _, name)| offered.insert(name.clone()));
        scored.truncate(MOST);
        scored.into_iter().map(|(_, _, name)| name).collect()
    }
}

impl Catalogue {
    /// The plants that bear the one common name that sounds like this word, or is a slip of the pen away from it; none
    /// where several names may be meant.
    pub(crate) fn named_nearly(&self, written: &str) -> Vec<SpeciesKey> {
        /// A shorter word is near too many names.
        const LEAST_LETTERS: usize = 5;
        let wanted = plain(written);
        if wanted.len() < LEAST_LETTERS || wanted.contains('-') {
            return Vec::new();
        }
        let forms = [Some(wanted.as_str()), wanted.strip_suffix('s'), wanted.strip_suffix("es")];
        let is_near = |name: &str| {
            forms.iter().flatten().any(|form| {
                let (typed, name): (Vec<char>, Vec<char>) = (form.chars().collect(), name.chars().collect());
                let most = (name.len() / LETTERS_PER_SLIP).clamp(1, 2);
                typed.first() == name.first() && name.len() >= LEAST_LETTERS && distance(&typed, &name) <= most
                    || sounds(form) == sounds(&name.iter().collect::<String>())
            })
        };
        let names = self.iter().flat_map(|(_, profile)| profile.names.es.iter().chain(&profile.names.en));
        let near: std::collections::BTreeSet<String> =
            names.map(|name| plain(name)).filter(|name| !name.contains('-') && is_near(name)).collect();
        let mut bearers: Vec<Vec<SpeciesKey>> = near.iter().map(|name| self.named_just(name)).collect();
        bearers.dedup();
        match &mut bearers[..] {
            [one] => std::mem::take(one),
            _ => Vec::new(),
        }
    }
}

/// What was written, as letters and as sounds.
struct Wanted {
    letters: Vec<char>,
    sounds: Vec<char>,
    words: usize,
}

impl Wanted {
    fn of(whole: &str) -> Wanted {
        let words = whole.split('-').count();
        Wanted { letters: whole.chars().take(60).collect(), sounds: sounds(whole).chars().take(60).collect(), words }
    }

    /// The nearest name of a plant: twice the slips, the place among its names, and the name.
    fn nearest_of(&self, profile: &Profile, offered: &impl Fn(&str) -> bool) -> Option<(usize, usize, String)> {
        let own_key = (profile.key.as_str().len() != 3).then_some(profile.key.as_str());
        let common = profile.names.es.iter().chain(&profile.names.en).chain(&profile.shared_names).map(String::as_str);
        let scientific = profile.synonyms.iter().map(String::as_str).chain([profile.scientific.as_str()]);
        let all = common.chain(scientific).chain(own_key).filter(|name| !name.is_empty()).enumerate();
        let near = all.filter_map(|(at, name)| Some((self.slips(name)?, at, name)));
        near.filter(|(_, _, name)| offered(name)).min().map(|(slips, at, name)| (slips, at, name.to_string()))
    }

    /// Twice the slips between what was written and a name; none where they are too many.
    fn slips(&self, name: &str) -> Option<usize> {
        let name = plain(name);
        let letters: Vec<char> = name.chars().take(60).collect();
        let begins = self.letters.len() >= SHORTEST_BEGINNING && letters.starts_with(&self.letters);
        let as_beginning = begins.then_some(SLIPS_OF_A_BEGINNING);
        let words = name.split('-').count();
        // More was written behind the name: only as many words as the name has are compared.
        let behind = self.words.saturating_sub(words);
        let cut = |all: &[char]| -> Vec<char> {
            let end = all.iter().enumerate().filter(|(_, letter)| **letter == '-').map(|(at, _)| at).nth(words - 1);
            all[..end.unwrap_or(all.len())].to_vec()
        };
        let (wanted, heard) = (cut(&self.letters), cut(&self.sounds));
        let longest = wanted.len().max(letters.len());
        let most = (longest / LETTERS_PER_SLIP).max(1);
        if longest < SHORTEST_BEGINNING || wanted.len().abs_diff(letters.len()) > most + 1 {
            return as_beginning;
        }
        let spelled = distance(&wanted, &letters);
        let sounded = distance(&heard, &sounds(&name).chars().collect::<Vec<_>>());
        let slips = (2 * spelled).min(2 * sounded + 1);
        let near = (slips <= 2 * most + usize::from(sounded == 0)).then_some(slips + 3 * behind);
        near.into_iter().chain(as_beginning).min()
    }
}
