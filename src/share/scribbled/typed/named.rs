//! The names a line may speak of, found as people type them: without hyphens, in other capitals, in the plural.

use super::lexicon::{fold, lexicon};
use super::numbers::in_figures;
use super::words::{Word, words};
pub use crate::nursery::entry::shape::NameOf;
use std::collections::HashMap;

/// What the reader must know of the nursery.
pub trait Names {
    /// Every name that a line may speak of.
    fn all(&self) -> Vec<(NameOf, String)>;
    /// The keys of the species that bear just this name, in the singular or as the nursery writes it.
    fn species_called(&self, name: &str) -> Vec<String>;
    /// The same where only a part of the name is said.
    fn species_like(&self, name: &str) -> Vec<String>;
    /// The species of a tray or a lot.
    fn species_of(&self, name_of: NameOf, name: &str) -> Option<String>;
    /// What stands in a tray by the books.
    fn standing(&self, tray: &str) -> Option<u32>;
    /// What is left of a lot in seeds.
    fn seeds(&self, lot: &str) -> Option<u32>;
    /// The species of nurse plants in a bed.
    fn nurses_in(&self, bed: &str) -> Vec<String>;
    /// The species planned or planted in a bed, other than nurse plants.
    fn plants_in(&self, bed: &str) -> Vec<String>;
    /// Places for plants in a bed by its plan, where it has one.
    fn places_in(&self, bed: &str) -> Option<u32>;
    /// Whether anything stands in a bed.
    fn is_planted(&self, bed: &str) -> bool;
    /// Whether seedlings of a tray are pricked out rather than potted on.
    fn is_seedbed(&self, tray: &str) -> bool;
}

/// The longest word that is compared with names, bytes.
const LONGEST_NAME: usize = 48;

struct OneName {
    name_of: NameOf,
    name: String,
    pieces: Vec<String>,
}

/// The names laid out to be found in lines.
pub(crate) struct Known<'a> {
    pub names: &'a dyn Names,
    by_first: HashMap<String, Vec<OneName>>,
    /// Containers with their volume in litres.
    volumes: Vec<(String, f64)>,
    pub all: Vec<(NameOf, String)>,
}

fn squeezed(text: &str) -> String {
    fold(text).chars().filter(|c| c.is_alphanumeric()).collect()
}

fn pieces(name: &str) -> Vec<String> {
    words(name).iter().map(|word| squeezed(&word.typed)).filter(|piece| !piece.is_empty()).collect()
}

fn litres(words: &[Word]) -> Option<(f64, usize)> {
    let value = in_figures(&words.first()?.typed)?;
    let unit = words.get(1)?.folded.as_str();
    if lexicon().is(unit, "units.l") {
        return Some((value, 2));
    }
    matches!(unit, "ml" | "cc").then_some((value / 1000.0, 2))
}

impl<'a> Known<'a> {
    pub fn new(names: &'a dyn Names) -> Known<'a> {
        let mut known = Known { names, by_first: HashMap::new(), volumes: Vec::new(), all: Vec::new() };
        names.all().into_iter().for_each(|(name_of, name)| known.learn(name_of, name));
        known
    }

    /// One more name: a tray that an earlier line makes.
    pub fn learn(&mut self, name_of: NameOf, name: String) {
        self.all.push((name_of, name.clone()));
        let parts = pieces(&name);
        let whole: String = parts.concat();
        for pieces in [parts, vec![whole]] {
            let Some(first) = pieces.first().cloned() else { continue };
            let of_first = self.by_first.entry(first).or_default();
            if !of_first.iter().any(|one| one.pieces == pieces && one.name == name && one.name_of == name_of) {
                of_first.push(OneName { name_of, name: name.clone(), pieces });
            }
        }
        if name_of == NameOf::Container {
            let words = words(&name);
            let volume = (0..words.len()).find_map(|i| litres(&words[i..]));
            self.volumes.extend(volume.map(|(volume, _)| (name, volume)));
        }
    }

    /// The longest known name that begins here, with everything it is the name of.
    pub fn name_at(&self, words: &[Word], i: usize) -> Option<(Vec<(NameOf, String)>, usize)> {
        let first = squeezed(&words.get(i)?.typed);
        let spoken = self.by_first.get(&first).map(Vec::as_slice).unwrap_or_default();
        let plural = first.strip_suffix('s').and_then(|bare| self.by_first.get(bare)).map(Vec::as_slice);
        let containers = plural.unwrap_or_default().iter().filter(|one| one.name_of == NameOf::Container);
        let (mut longest, mut found) = (0, Vec::new());
        for one in spoken.iter().chain(containers) {
            let fits = one.pieces.iter().enumerate().skip(1).all(|(n, piece)| {
                words.get(i + n).is_some_and(|word| {
                    let typed = squeezed(&word.typed);
                    typed == *piece || (one.name_of == NameOf::Container && typed.strip_suffix('s') == Some(piece))
                })
            });
            if fits && one.pieces.len() > longest {
                (longest, found) = (one.pieces.len(), Vec::new());
            }
            if fits && one.pieces.len() == longest {
                found.push((one.name_of, one.name.clone()));
            }
        }
        let typed =
            words.get(i..i + longest).map(|words| words.iter().map(|w| w.typed.as_str()).collect::<Vec<_>>().join(" "));
        // A name typed as it is comes first.
        found.sort_by_key(|(_, name)| Some(name) != typed.as_ref());
        (!found.is_empty()).then_some((found, longest))
    }

    /// Whether a tray has nothing in it and nothing to come.
    pub fn is_empty_tray(&self, name_of: NameOf, name: &str) -> bool {
        name_of == NameOf::Tray && self.names.standing(name) == Some(0) && !self.names.is_seedbed(name)
    }

    /// Whether the number of a count is near what stands there by the books: at most so many, and at least half of them.
    pub fn is_a_likely_count(&self, fields: &serde_json::Map<String, serde_json::Value>) -> bool {
        let books = fields.get("tray").and_then(|tray| self.names.standing(tray.as_str()?)).map(f64::from);
        let counted = fields.get("standing").and_then(serde_json::Value::as_f64);
        match (books, counted) {
            (Some(books), Some(counted)) => counted <= books && counted * 2.0 >= books,
            _ => true,
        }
    }

    /// Whether a known name begins with this word.
    pub fn begins_a_name(&self, word: &str) -> bool {
        self.by_first.contains_key(&squeezed(word))
    }

    /// Containers by their volume: "bolsa de 2 l", "2 litre bags", "2 l" behind the word for a bag.
    pub fn containers_at(&self, words: &[Word], i: usize) -> Option<(Vec<String>, usize)> {
        let is_bag = |j: usize| words.get(j).is_some_and(|word| lexicon().is(&word.folded, "bag"));
        if is_bag(i) {
            let gap = usize::from(words.get(i + 1).is_some_and(|word| matches!(word.folded.as_str(), "de" | "of")));
            let (volume, taken) = litres(words.get(i + 1 + gap..)?)?;
            return self.of_volume(volume, &words[i].folded).map(|names| (names, 1 + gap + taken));
        }
        let (volume, taken) = litres(words.get(i..)?)?;
        if !is_bag(i + taken) {
            return None;
        }
        self.of_volume(volume, &words[i + taken].folded).map(|names| (names, taken + 1))
    }

    /// The containers of a volume; among several those whose name has the word that was used: "polybag" is a "bag" too.
    pub fn of_volume(&self, volume: f64, word: &str) -> Option<Vec<String>> {
        /// The letters of a word of a container's name that another word may end in.
        const LEAST_LETTERS: usize = 3;
        let of_volume = self.volumes.iter().filter(|(_, litres)| (litres - volume).abs() < 1e-9);
        let mut fitting: Vec<String> = of_volume.map(|(name, _)| name.clone()).collect();
        let stem = word.trim_end_matches('s');
        if fitting.len() > 1 && !stem.is_empty() {
            let ends_in = |piece: &str| piece.len() >= LEAST_LETTERS && stem.ends_with(piece);
            let is_said = |name: &String| fold(name).split(' ').any(|piece| piece.contains(stem) || ends_in(piece));
            let said: Vec<String> = fitting.iter().filter(|name| is_said(name)).cloned().collect();
            fitting = if said.is_empty() { fitting } else { said };
        }
        (!fitting.is_empty()).then_some(fitting)
    }

    /// A species named here by more words than `at_least`, or by one that is no word of the lexicon.
    pub fn species_at(&self, words: &[Word], i: usize, at_least: usize) -> Option<(Vec<String>, usize)> {
        for length in (1..=3).rev().filter(|length| *length > at_least) {
            let Some(named) = words.get(i..i + length) else { continue };
            if named.iter().any(|word| word.is_sign() || word.typed.chars().any(|c| c.is_ascii_digit())) {
                continue;
            }
            let text = named.iter().map(|word| word.typed.as_str()).collect::<Vec<_>>().join(" ");
            // A word with a capital in the middle of a line is rather a person's name than a part of a plant's.
            let is_capital = i > 0 && text.starts_with(char::is_uppercase);
            for form in singulars(&text) {
                let exact = self.names.species_called(&form);
                let is_exact = !exact.is_empty() || length > 1 || is_capital;
                let keys = if is_exact { exact } else { self.names.species_like(&form) };
                if !keys.is_empty() {
                    return Some((keys, length));
                }
            }
        }
        None
    }

    /// The known names of one sort nearest to a word.
    pub fn nearest(&self, typed: &str, name_of: Option<NameOf>) -> Vec<String> {
        let wanted = squeezed(typed);
        if wanted.len() > LONGEST_NAME {
            return Vec::new();
        }
        let is_of = |of: &NameOf| name_of.is_none_or(|wanted| wanted == *of);
        let fits = self.all.iter().filter(|(of, name)| is_of(of) && !self.is_empty_tray(*of, name));
        let mut near: Vec<(usize, &String)> =
            fits.map(|(_, name)| (strsim::osa_distance(&squeezed(name), &wanted), name)).collect();
        near.sort();
        let most = (wanted.chars().count() / 2).max(1);
        near.into_iter().filter(|(far, _)| *far <= most).take(3).map(|(_, name)| name.clone()).collect()
    }
}

fn singulars(text: &str) -> Vec<String> {
    let lower = text.to_lowercase();
    let mut forms = vec![lower.clone()];
    let endings = [("s", ""), ("es", ""), ("ies", "y"), ("oes", "o"), ("ces", "z")];
    forms.extend(
        endings.iter().filter_map(|(plural, one)| lower.strip_suffix(plural).map(|stem| format!("{stem}{one}"))),
    );
    if let Some((first, rest)) = lower.split_once(' ') {
        forms.extend(first.strip_suffix('s').map(|first| format!("{first} {rest}")));
        let both = first.strip_suffix('s').zip(rest.strip_suffix('s'));
        forms.extend(both.map(|(first, rest)| format!("{first} {rest}")));
    }
    forms
}
