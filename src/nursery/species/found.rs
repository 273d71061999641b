//! What plant a person means by what they wrote: its names, and its names with a variety or the plant material around
//! them. A word that several plants bear is asked about, never chosen.

use std::collections::BTreeMap;

use super::catalogue::Catalogue;
use super::profile::Profile;
use crate::base::SpeciesKey;
use crate::base::text::folded;

/// The plant meant by what was written.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Found {
    /// One plant.
    One(SpeciesKey),
    /// Several plants bear the word; the one most people mean leads.
    Several(Vec<SpeciesKey>),
    /// No plant is known by it.
    Nothing,
}

impl Found {
    /// The plant, where it is one.
    pub fn one(self) -> Option<SpeciesKey> {
        match self {
            Found::One(key) => Some(key),
            Found::Several(_) | Found::Nothing => None,
        }
    }

    /// The plants to ask about, where there are several.
    pub fn several(self) -> Vec<SpeciesKey> {
        match self {
            Found::Several(keys) => keys,
            Found::One(_) | Found::Nothing => Vec::new(),
        }
    }
}

/// What a name is of its species; the smaller leads, and of a common name only one plant may be the bearer.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub(super) enum NameKind {
    Key,
    Code,
    Scientific,
    Common,
    Shared,
}

/// Who bears each name, folded.
pub(super) type Index = BTreeMap<String, Vec<(NameKind, SpeciesKey)>>;

/// Words of plant material, folded: they say what is planted and not which plant.
const MATERIAL: &[&str] = &[
    "sucker",
    "seedling",
    "cutting",
    "stake",
    "graft",
    "grafted",
    "budded",
    "plantlet",
    "clone",
    "seed",
    "tree",
    "plant",
    "sapling",
    "slip",
    "stump",
    "vine",
    "hijo",
    "hijuelo",
    "colino",
    "cepa",
    "cormo",
    "estaca",
    "estacon",
    "esqueje",
    "injerto",
    "injertado",
    "injertada",
    "acodo",
    "plantula",
    "plantita",
    "planta",
    "arbolito",
    "arbol",
    "mata",
    "matita",
    "almacigo",
    "semilla",
    "vastago",
    "pilon",
];
/// Those of them that say more than what is planted: a graft is another plant than a seedling.
const GRAFTED: &[&str] = &[
    "graft",
    "grafts",
    "grafted",
    "budded",
    "clone",
    "clones",
    "injerto",
    "injertos",
    "injertado",
    "injertada",
    "injertados",
    "injertadas",
    "acodo",
    "acodos",
];
/// Words that bind material to its plant.
const BINDING: &[&str] = &["de", "del", "of", "from", "por", "the", "la", "el"];
/// Varieties any plant may have.
const ANY_VARIETY: &[&str] = &[
    "criollo", "criolla", "enano", "enana", "dwarf", "local", "native", "nativo", "nativa", "mejorado", "mejorada",
    "improved", "hibrido", "hybrid", "comun", "common",
];
/// Words behind which a variety of any name stands.
const NAMES_A_VARIETY: &[&str] =
    &["var", "var.", "variedad", "variety", "cv", "cv.", "cultivar", "clon", "clone", "linea"];
/// Words too general to be the head of a name.
const NO_HEADS: &[&str] = &[
    "tree", "plant", "vine", "nut", "fruit", "arbol", "palo", "flor", "fruta", "hoja", "planta", "falso", "lengua",
    "tongue", "bush", "shrub", "madre", "pata", "ojo", "santa", "san",
];
/// Shortest word that can be the head of a name, in letters.
const SHORTEST_HEAD: usize = 4;

/// What was written, folded, with runs of blanks and hyphens as one hyphen; kinds of apostrophe are one.
pub(super) fn plain(written: &str) -> String {
    let folded = folded(written).replace(['\u{2019}', '`', '\u{b4}'], "'");
    let words: Vec<&str> = folded.split('-').filter(|word| !word.is_empty()).collect();
    words.join("-")
}

/// Every name a species is found by, folded.
pub(super) fn names_of(profile: &Profile) -> Vec<(String, NameKind)> {
    let mut names = vec![(plain(profile.key.as_str()), NameKind::Key), (plain(&profile.code), NameKind::Code)];
    let scientific = scientific_names(&profile.scientific).into_iter().chain(profile.synonyms.iter().cloned());
    names.extend(scientific.map(|name| (plain(&name), NameKind::Scientific)));
    names.extend(profile.names.en.iter().chain(&profile.names.es).map(|name| (plain(name), NameKind::Common)));
    names.extend(profile.shared_names.iter().map(|name| (plain(name), NameKind::Shared)));
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

impl Catalogue {
    /// The plants that bear just this name, common or scientific. Keys and codes are short words of other meanings in a
    /// sentence, and heads of names are those of people: they do not count.
    pub(crate) fn named_just(&self, written: &str) -> Vec<SpeciesKey> {
        let bearers = self.bearers(&plain(written)).into_iter();
        bearers.filter(|(kind, _)| !matches!(kind, NameKind::Key | NameKind::Code)).map(|(_, key)| key).collect()
    }

    /// The plant meant by a key, a code, a scientific name or a common name in either language; accents, case, blanks,
    /// hyphens and plurals do not count. A variety, clone or graft behind or before the name or in brackets, and the
    /// kind of material ("hijo de plátano"), leave the plant as it is.
    pub fn resolve(&self, written: &str) -> Found {
        let (outside, inside) = apart(written);
        let head = self.without_brackets(&outside);
        let Some(inside) = inside else { return head };
        match (head, self.named(&plain(&inside))) {
            (head, Found::Nothing) => head,
            (Found::One(one), Found::One(other)) if one == other => Found::One(one),
            (Found::One(one), Found::One(other)) => Found::Several(vec![one, other]),
            (Found::Several(keys), Found::One(one)) if keys.contains(&one) => Found::One(one),
            (Found::Nothing, Found::One(one)) => Found::Several(vec![one]),
            (head, Found::One(_) | Found::Several(_)) => head,
        }
    }

    fn without_brackets(&self, written: &str) -> Found {
        let whole = plain(written);
        match self.named(&whole) {
            Found::Nothing => {}
            // A short code that is the everyday name of another plant ("cas", "yew") is its code no more, only its key as written.
            Found::One(key) if written.trim() != key.as_str() => {
                return self.without_the_confused(&whole, Found::One(key));
            }
            found => return found,
        }
        let words: Vec<&str> = whole.split('-').collect();
        let joined = without_material(&words).concat();
        match (self.of_words(&words), self.in_one_word(&words, &joined)) {
            (Found::Nothing, Found::Nothing) => self.without_the_confused(&whole, self.by_head(&words)),
            (Found::Nothing, found) => self.without_the_confused(&joined, found),
            (found, _) => self.without_the_confused(&whole, found),
        }
    }

    /// A name in one word that was written in several: "bread fruit".
    fn in_one_word(&self, words: &[&str], joined: &str) -> Found {
        let is_a_name = self.bearers(joined).iter().any(|(kind, _)| *kind >= NameKind::Common);
        if words.len() > 1 && is_a_name { self.named(joined) } else { Found::Nothing }
    }

    /// The plants of which a name has a word that none bears by itself ("bean"). None is taken for it, so all are told, those
    /// that are never confused with what people call so too.
    pub(crate) fn with_piece(&self, written: &str) -> Vec<SpeciesKey> {
        let whole = plain(written);
        let words: Vec<&str> = whole.split('-').collect();
        let is_a_name = self.named(&whole) != Found::Nothing || self.of_words(&words) != Found::Nothing;
        if is_a_name || NO_HEADS.contains(&whole.as_str()) || is_material(&whole) {
            return Vec::new();
        }
        let mut found = self.with_whole_word(written);
        let more = self.by_head(&words).several().into_iter().filter(|key| !found.contains(key)).collect::<Vec<_>>();
        found.extend(more);
        found
    }

    /// Whether no plant bears a word, and it is only a piece of the names of some.
    pub(crate) fn is_piece_of_names(&self, written: &str) -> bool {
        !self.with_piece(written).is_empty()
    }

    /// Plants that are never to be taken for what was written are left out.
    fn without_the_confused(&self, whole: &str, found: Found) -> Found {
        let fits = |key: &SpeciesKey| self.get(key).is_none_or(|profile| !is_never(profile, whole));
        match found {
            Found::One(key) if fits(&key) => Found::One(key),
            Found::Several(keys) => match keys.into_iter().filter(|key| fits(key)).collect::<Vec<_>>() {
                none if none.is_empty() => Found::Nothing,
                some => Found::Several(some),
            },
            Found::One(_) | Found::Nothing => Found::Nothing,
        }
    }

    /// The plant that bears just this name.
    pub(super) fn named(&self, name: &str) -> Found {
        let bearers = self.bearers(name);
        match bearers.first() {
            None => Found::Nothing,
            Some((NameKind::Key | NameKind::Code | NameKind::Scientific, key)) => Found::One(key.clone()),
            Some((NameKind::Common, key)) if bearers.iter().all(|(_, other)| other == key) => Found::One(key.clone()),
            Some((NameKind::Common | NameKind::Shared, _)) => {
                let mut keys: Vec<SpeciesKey> = Vec::new();
                for (_, key) in bearers {
                    if !keys.contains(&key) {
                        keys.push(key);
                    }
                }
                Found::Several(keys)
            }
        }
    }

    /// A name with material or a variety around it.
    fn of_words(&self, words: &[&str]) -> Found {
        let words = without_material(words);
        for found in [self.named(&words.join("-")), self.singular(words)] {
            if found != Found::Nothing {
                return found;
            }
        }
        // The longest name leads: "cacao blanco" before "cacao".
        for taken in (1..words.len()).rev() {
            let (before, behind) = words.split_at(taken);
            if let found @ (Found::One(_) | Found::Several(_)) = self.with_variety(before, behind) {
                return found;
            }
            let (behind, before) = words.split_at(words.len() - taken);
            if let found @ (Found::One(_) | Found::Several(_)) = self.with_variety(before, behind) {
                return found;
            }
        }
        Found::Nothing
    }

    fn with_variety(&self, name: &[&str], variety: &[&str]) -> Found {
        let name = without_material(name);
        let found = match self.named(&name.join("-")) {
            Found::Nothing => self.singular(name),
            found => found,
        };
        let is_variety = |key: &SpeciesKey| self.get(key).is_some_and(|profile| is_variety(profile, variety));
        match found {
            Found::One(key) if is_variety(&key) => Found::One(key),
            Found::Several(keys) if keys.iter().any(&is_variety) => Found::Several(keys),
            Found::One(_) | Found::Several(_) | Found::Nothing => Found::Nothing,
        }
    }

    /// The variety, clone or graft that stands beside the name of a plant, as it is written: "Hass grafted" of "avocado Hass
    /// grafted", "criollo" of "cacao (criollo)". None where the words only name the plant and its material.
    pub(crate) fn variety_beside(&self, written: &str, key: &SpeciesKey) -> Option<String> {
        let parted = |sign: char| sign.is_whitespace() || "()[]\"\u{201c}\u{201d}\u{ab}\u{bb},;:".contains(sign);
        let words: Vec<&str> = written.split(parted).filter(|word| word.chars().any(char::is_alphanumeric)).collect();
        let is_named = |words: &[&str]| {
            [self.named(&words.join("-")), self.singular(words)].into_iter().any(|found| match found {
                Found::One(one) => one == *key,
                Found::Several(keys) => keys.contains(key),
                Found::Nothing => false,
            })
        };
        let folded: Vec<String> = words.iter().map(|word| plain(word)).collect();
        let folded: Vec<&str> = folded.iter().map(String::as_str).collect();
        let runs = |taken: usize| (0..=words.len() - taken).map(move |from| (from, taken));
        let named = |(from, taken): &(usize, usize)| folded.get(*from..from + taken).is_some_and(is_named);
        let (from, taken) = (1..=words.len()).rev().flat_map(runs).find(named)?;
        // The same plant named once more, in another language or as science has it, is no variety.
        let is_rest = |part: &std::ops::Range<usize>| {
            let part = folded.get(part.clone()).unwrap_or_default();
            !part.is_empty() && !is_named(without_material(part))
        };
        let says_more = |at: &usize| {
            folded.get(*at).is_some_and(|word| GRAFTED.contains(word) || !(is_material(word) || BINDING.contains(word)))
        };
        let rest = [0..from, from + taken..words.len()].into_iter().filter(is_rest).flatten().filter(says_more);
        let kept: Vec<&str> = rest.filter_map(|at| words.get(at).copied()).collect();
        (!kept.is_empty()).then(|| kept.join(" "))
    }

    /// The same in the singular: "mangos", "limones", "coconut palms".
    fn singular(&self, words: &[&str]) -> Found {
        let each = |endings: [&str; 2]| {
            let word =
                |word: &&str| endings.iter().find_map(|ending| word.strip_suffix(ending)).unwrap_or(word).to_string();
            words.iter().map(word).collect::<Vec<_>>().join("-")
        };
        let last = |ending: &str| words.join("-").strip_suffix(ending).map(str::to_string);
        let tried = [last("s"), last("es"), Some(each(["s", "s"])), Some(each(["es", "s"]))];
        tried
            .into_iter()
            .flatten()
            .map(|name| self.named(&name))
            .find(|found| *found != Found::Nothing)
            .unwrap_or(Found::Nothing)
    }

    /// The plants whose names have this word at their head ("apple", "cedro"): to be asked about.
    fn by_head(&self, words: &[&str]) -> Found {
        let [word] = without_material(words) else { return Found::Nothing };
        let single = word.strip_suffix('s').unwrap_or(word);
        if single.len() < SHORTEST_HEAD || NO_HEADS.contains(&single) {
            return Found::Nothing;
        }
        let heads = |profile: &Profile| {
            let english = profile.names.en.iter().filter_map(|name| head_of(plain(name).split('-').rev()));
            let spanish = profile.names.es.iter().filter_map(|name| head_of(plain(name).split('-')));
            english.chain(spanish).any(|head| head == *word || head == single)
        };
        let keys: Vec<SpeciesKey> =
            self.iter().filter(|(_, profile)| heads(profile)).map(|(key, _)| key.clone()).collect();
        if keys.is_empty() { Found::Nothing } else { Found::Several(keys) }
    }
}

/// Whether a plant is never to be taken for what was written, folded.
pub(super) fn is_never(profile: &Profile, whole: &str) -> bool {
    profile.never_confuse_with.iter().any(|never| plain(never) == whole)
}

/// What stands outside and inside of brackets or quotes.
fn apart(written: &str) -> (String, Option<String>) {
    let Some(open) = written.find(['(', '[', '"', '\u{201c}', '\u{ab}']).filter(|at| *at > 0) else {
        return (written.to_string(), None);
    };
    let (before, rest) = written.split_at(open);
    let rest: String = rest.chars().skip(1).collect();
    let (inside, behind) = rest.split_once([')', ']', '"', '\u{201d}', '\u{bb}']).unwrap_or((&rest, ""));
    (format!("{} {}", before.trim(), behind.trim()), Some(inside.trim().to_string()))
}

fn is_material(word: &str) -> bool {
    let is = |word: &str| MATERIAL.contains(&word);
    is(word) || word.strip_suffix('s').is_some_and(is) || word.strip_suffix("es").is_some_and(is)
}

/// The words without those of material before and behind them, unless nothing else is there.
fn without_material<'a, 'w>(words: &'a [&'w str]) -> &'a [&'w str] {
    let mut kept = words;
    loop {
        let bound = |word: &str| BINDING.contains(&word);
        let shorter = match kept {
            [first, binding, rest @ ..] if !rest.is_empty() && is_material(first) && bound(binding) => rest,
            [first, rest @ ..] if !rest.is_empty() && is_material(first) => rest,
            [rest @ .., binding, last] if !rest.is_empty() && is_material(last) && bound(binding) => rest,
            [rest @ .., last] if !rest.is_empty() && is_material(last) => rest,
            _ => return kept,
        };
        kept = shorter;
    }
}

/// Whether words are a variety of a plant: one of its own, one any plant may have, or one said to be one.
fn is_variety(profile: &Profile, words: &[&str]) -> bool {
    let words = without_material(words);
    let joined = words.join("-");
    let own = |name: &str| profile.varieties.iter().any(|known| plain(known) == name);
    let is_count = |word: &str| word.chars().all(|c| c.is_ascii_digit());
    let said = (2..=3).contains(&words.len()) && NAMES_A_VARIETY.contains(&words[0]) && !is_count(words[1]);
    let each = words.iter().all(|word| ANY_VARIETY.contains(word) || own(word) || is_material(word));
    own(&joined) || said || each
}

/// The word a name goes by, from its end in English and from its beginning in Spanish; general words are passed over.
fn head_of<'w>(words: impl Iterator<Item = &'w str>) -> Option<String> {
    words.into_iter().find(|word| !NO_HEADS.contains(word) && !BINDING.contains(word)).map(str::to_string)
}
