//! What people write when they have seen a pest or a sickness: what it is by its name, whether two texts mean the same one, and
//! whether a text says that there is none. Names stand in `sicknesses.toml`; words are compared without accents or case, in the
//! languages the book is kept in.

use std::collections::HashMap;
use std::hash::Hash;
use std::sync::{LazyLock, RwLock};

use serde::{Deserialize, Serialize};

use crate::base::text::folded;

/// What is known of a pest or a sickness by its name, and by what a person said of it.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub(crate) struct Nature {
    /// It lives in the soil or the roots and goes along with the plug.
    pub in_soil: bool,
    /// One plant that has it is enough: it goes along with plants.
    pub spreads: bool,
    /// A whole tray can be freed of it by a treatment.
    pub has_cure: bool,
    /// Its animals are seen by the bare eye, and leave the ground by themselves.
    pub by_eye: bool,
    /// What was seen may have more than one cause, and a person has not said which.
    pub is_sign: bool,
    /// Wet soil and still air bring it: damping-off of seedlings.
    pub is_damping: bool,
    /// Nobody knows whether it goes along with plants.
    pub is_unknown: bool,
    /// It lives in the ground for years, and nobody sees it there.
    pub unseen_in_ground: bool,
    /// It bores in the stem, where no spray reaches it, and is carried along in it.
    pub in_stem: bool,
    /// It rots roots: what is seen above ground, and how many stand, tells nothing of them.
    pub in_roots: bool,
    /// Its eggs and young sit in the potting soil of a whole tray.
    pub takes_tray: bool,
    /// It goes along with no plant, and takes their leaves: weather, what eats and goes, and what a person said is no sickness.
    pub takes_leaves: bool,
}

impl Nature {
    /// Whether it goes by itself: a look that finds none of it is then enough.
    pub(crate) fn goes_by_itself(self) -> bool {
        !self.in_soil && !self.spreads && !self.is_unknown
    }

    /// Whether it fills the soil of a tray where many have it: nothing frees a plant, nor the soil mix they share.
    pub(crate) fn fills_soil(self) -> bool {
        self.in_soil && !self.has_cure && !self.is_unknown
    }
}

/// A name: words beside one another, each whole or as a beginning.
type Name = Vec<(String, bool)>;

/// One list of the file.
#[derive(Deserialize, Default)]
struct Names {
    words: Vec<String>,
}

/// What has one kind of host.
#[derive(Deserialize)]
struct Hosts {
    words: Vec<String>,
    genera: Vec<String>,
}

#[derive(Deserialize, Default)]
struct Lists {
    incurable: Names,
    incurable_in_soil: Names,
    rot: Names,
    root_rot: Names,
    damping: Names,
    soil_animal: Names,
    in_potting_soil: Names,
    told_of: Names,
    blight: Names,
    borer: Names,
    in_berries: Names,
    sign: Names,
    eats_and_goes: Names,
    eater: Names,
    leaf: Names,
    weather: Names,
    comes_and_goes: Names,
    people: Names,
    unseen_in_ground: Names,
    harm_in_field: Names,
    ground_kills: Names,
    fenced_out: Names,
    strips: Names,
    stings: Names,
    no_cause: Names,
    dead: Names,
    where_it_was: Names,
    unnamed: Names,
    growth: Names,
    hosts: Vec<Hosts>,
}

/// The lists, each name taken apart.
struct Known {
    /// What cannot be cured; what cannot and lives in the soil; rots; damping-off; animals of the soil; blights; borers;
    /// signs; animals of the potting soil.
    serious: [Vec<Name>; 9],
    /// Of rots those of roots; of animals those of which many countries ask to be told; of borers those of berries.
    root_rot: Vec<Name>,
    told_of: Vec<Name>,
    in_berries: Vec<Name>,
    /// What is known and not carried into the field with a few plants.
    harmless: Vec<Name>,
    /// Of those, what eats or spots leaves.
    of_leaves: Vec<Name>,
    /// Sicknesses of the leaf by more than one word: they say more than the sign in them.
    leaf_phrases: Vec<Name>,
    /// Of those, what goes along with no plant: what eats and goes, and weather; and what does.
    goes: Vec<Name>,
    goes_along: Vec<Name>,
    comes_and_goes: Vec<Name>,
    unseen_in_ground: Vec<Name>,
    /// What plants in a bed die of besides.
    harm_in_field: Vec<Name>,
    /// Of that, what stays in the ground.
    ground_kills: Vec<Name>,
    /// Of what comes and goes, people.
    people: Vec<Name>,
    /// What eats and goes, or comes and goes; of it, what a fence keeps out, and what strips a bed in a night.
    eats: Vec<Name>,
    fenced_out: Vec<Name>,
    strips: Vec<Name>,
    /// What stings people; it comes and goes too.
    stings: Vec<Name>,
    /// What gnaws and sucks and flies on, borers among them.
    gnaws: Vec<Name>,
    /// What says that plants died, and not of what.
    no_cause: Vec<Name>,
    dead: Vec<Name>,
    where_it_was: Vec<Name>,
    /// What says that plants were sick, and not of what.
    unnamed: Vec<Name>,
    /// How plants look that may only be hungry or late.
    growth: Vec<Name>,
    hosts: Vec<(Vec<Name>, Vec<String>)>,
}

const WORDS: &str = include_str!("sicknesses.toml");

fn known() -> &'static Known {
    static READ: LazyLock<Known> = LazyLock::new(|| {
        let lists: Lists = toml::from_str(WORDS).unwrap_or_default();
        let names = |list: &Names| -> Vec<Name> { list.words.iter().map(|name| name_of(name)).collect() };
        let Lists {
            incurable, incurable_in_soil, rot, damping, soil_animal, blight, borer, sign, in_potting_soil, ..
        } = &lists;
        let serious = [incurable, incurable_in_soil, rot, damping, soil_animal, blight, borer, sign, in_potting_soil];
        let eaters = [&lists.eats_and_goes, &lists.eater, &lists.leaf];
        let harmless = eaters.into_iter().chain([&lists.weather]).flat_map(names).collect();
        let hosts = lists
            .hosts
            .iter()
            .map(|hosts| (hosts.words.iter().map(|name| name_of(name)).collect::<Vec<Name>>(), hosts.genera.clone()));
        Known {
            serious: serious.map(names),
            root_rot: names(&lists.root_rot),
            told_of: names(&lists.told_of),
            in_berries: names(&lists.in_berries),
            harmless,
            of_leaves: eaters.into_iter().flat_map(names).collect(),
            leaf_phrases: names(&lists.leaf).into_iter().filter(|name| name.len() > 1).collect(),
            goes: [&lists.eats_and_goes, &lists.weather].into_iter().flat_map(names).collect(),
            goes_along: [&lists.eater, &lists.leaf].into_iter().flat_map(names).collect(),
            comes_and_goes: [&lists.comes_and_goes, &lists.people, &lists.stings].into_iter().flat_map(names).collect(),
            people: names(&lists.people),
            unseen_in_ground: names(&lists.unseen_in_ground),
            harm_in_field: names(&lists.harm_in_field),
            ground_kills: names(&lists.ground_kills),
            eats: [&lists.eats_and_goes, &lists.comes_and_goes].into_iter().flat_map(names).collect(),
            fenced_out: names(&lists.fenced_out),
            strips: names(&lists.strips),
            stings: names(&lists.stings),
            gnaws: [&lists.eater, &lists.borer].into_iter().flat_map(names).collect(),
            no_cause: names(&lists.no_cause),
            dead: names(&lists.dead),
            where_it_was: names(&lists.where_it_was),
            unnamed: names(&lists.unnamed),
            growth: names(&lists.growth),
            hosts: hosts.collect(),
        }
    });
    &READ
}

fn name_of(text: &str) -> Name {
    let parts = text.split(|letter: char| !letter.is_alphanumeric() && letter != '*').filter(|part| !part.is_empty());
    parts.map(|part| (part.trim_end_matches('*').to_string(), part.ends_with('*'))).collect()
}

/// Whether a name of a list stands among words.
fn any_in(names: &[Name], words: &[String]) -> bool {
    names.iter().any(|name| stands_in(name, words))
}

fn stands_in(name: &Name, words: &[String]) -> bool {
    words.windows(name.len().max(1)).any(|beside| {
        beside.iter().zip(name).all(
            |(word, (part, is_beginning))| {
                if *is_beginning { word.starts_with(part.as_str()) } else { word == part }
            },
        )
    })
}

/// The words of a text as they stand, folded.
fn plain_words(text: &str) -> Vec<String> {
    let folded = folded(text);
    folded.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty()).map(str::to_string).collect()
}

/// What is known of a pest by its name, and by whether a person said that it goes along with plants. Their yes always counts; their no
/// of what no name says, or of a sign.
pub(crate) fn nature_of(text: &str, spreads: Option<bool>) -> Nature {
    static FOUND: LazyLock<Remembered<(String, Option<bool>), Nature>> = LazyLock::new(Remembered::default);
    FOUND.or_find((text.to_string(), spreads), || nature_by_words(text, spreads))
}

/// What was found of a text: a book says the same few names in very many entries.
struct Remembered<K, V>(RwLock<HashMap<K, V>>);

impl<K, V> Default for Remembered<K, V> {
    fn default() -> Self {
        Remembered(RwLock::new(HashMap::new()))
    }
}

impl<K: Eq + Hash, V: Copy> Remembered<K, V> {
    /// Texts that are kept; a book with more of them begins anew. Ours.
    const MOST: usize = 10_000;

    fn or_find(&self, key: K, find: impl FnOnce() -> V) -> V {
        if let Ok(found) = self.0.read()
            && let Some(known) = found.get(&key)
        {
            return *known;
        }
        let value = find();
        if let Ok(mut found) = self.0.write() {
            if found.len() >= Self::MOST {
                found.clear();
            }
            found.insert(key, value);
        }
        value
    }
}

fn nature_by_words(text: &str, spreads: Option<bool>) -> Nature {
    let (known, words) = (known(), plain_words(text));
    let [incurable, incurable_in_soil, rot, damping, soil_animal, blight, borer, sign, in_potting_soil] =
        known.serious.each_ref().map(|names| any_in(names, &words));
    let (rot, root_rot) = (rot || damping, any_in(&known.root_rot, &words));
    let in_berries = any_in(&known.in_berries, &words);
    let borer = borer && !in_berries;
    let soil_animal = soil_animal || in_potting_soil;
    let unseen_in_ground = any_in(&known.unseen_in_ground, &words);
    let named = incurable || incurable_in_soil || rot || soil_animal || blight || borer;
    let sign = sign && !named && !any_in(&known.leaf_phrases, &words);
    let is_sign = sign && spreads.is_none();
    let is_known = in_berries || any_in(&known.harmless, &words) || any_in(&known.comes_and_goes, &words);
    let nameless = !named && !sign && !is_known;
    let in_stem = borer && !incurable && !incurable_in_soil && !rot && !soil_animal && !blight;
    let goes = any_in(&known.goes, &words) && !any_in(&known.goes_along, &words) && spreads != Some(true);
    let said_no = (sign || nameless) && spreads == Some(false);
    Nature {
        in_soil: incurable_in_soil || unseen_in_ground || rot || soil_animal,
        spreads: incurable
            || incurable_in_soil
            || blight
            || in_stem
            || is_sign
            || any_in(&known.told_of, &words)
            || spreads == Some(true),
        has_cure: (rot || soil_animal || blight) && !incurable && !incurable_in_soil && !in_potting_soil,
        by_eye: soil_animal && !incurable && !incurable_in_soil && !rot && !blight,
        is_sign,
        is_damping: damping,
        is_unknown: nameless && spreads.is_none(),
        unseen_in_ground,
        in_stem,
        in_roots: root_rot && !incurable_in_soil,
        takes_tray: in_potting_soil,
        takes_leaves: !named && !is_sign && (goes || said_no),
    }
}

/// Of what plants died, as a person wrote it.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Serialize, Deserialize)]
pub(crate) enum DiedOf {
    /// Nobody wrote it, or by a name that nobody here knows.
    NotSaid,
    /// Of what leaves no sickness behind: weather, cattle, ants, a slip.
    Harm,
    /// Of a sickness or an animal of the soil, which stays in the bed.
    Sickness,
    /// Of what may be a sickness, by a sign or a word that names none.
    Unnamed,
}

/// Of what plants died by the words of a loss or a count, or why they were thrown out.
pub(crate) fn died_of(text: &str) -> DiedOf {
    static FOUND: LazyLock<Remembered<String, DiedOf>> = LazyLock::new(Remembered::default);
    FOUND.or_find(text.to_string(), || died_of_by_words(text))
}

fn died_of_by_words(text: &str) -> DiedOf {
    let (known, words) = (known(), plain_words(text));
    // Roots that curl in their bag are no sickness: leaves that do are a sign of one.
    let of_roots = words.iter().any(|word| word.starts_with("raic") || word == "raiz" || word.starts_with("root"));
    if of_roots && words.iter().any(|word| CURLED.iter().any(|curled| word.starts_with(curled))) {
        return DiedOf::NotSaid;
    }
    let is = |names: &[Name], word: &String| any_in(names, std::slice::from_ref(word));
    if words.iter().all(|word| is(&known.no_cause, word) || is(&known.dead, word)) {
        return DiedOf::NotSaid;
    }
    let whole = nature_of(text, None);
    if !whole.goes_by_itself() && !whole.has_cure && !whole.is_sign && !whole.is_unknown {
        return DiedOf::Sickness;
    }
    let says_little = [&known.dead, &known.where_it_was, &known.growth];
    let tells = |word: &&String| !says_little.iter().any(|names| is(names, word));
    let nature = nature_of(&words.iter().filter(tells).cloned().collect::<Vec<_>>().join(" "), None);
    let harm = [&known.harmless, &known.comes_and_goes, &known.harm_in_field].iter().any(|names| any_in(names, &words));
    if any_in(&known.unnamed, &words) && (nature.is_unknown || nature.is_sign || nature.goes_by_itself()) && !harm {
        return DiedOf::Unnamed;
    }
    match nature {
        // Wilted without rain is no sickness.
        Nature { is_sign: true, .. } | Nature { is_unknown: true, .. } if harm => DiedOf::Harm,
        Nature { is_unknown: true, .. } => DiedOf::NotSaid,
        nature if nature.goes_by_itself() => DiedOf::Harm,
        _ => DiedOf::Sickness,
    }
}

/// How roots that go round in a bag are called.
const CURLED: [&str; 6] = ["enroll", "enrroll", "enrosc", "circl", "curl", "coil"];

/// Animals of the soil are a sighting from so many plants on that they took at once: one or two are no more than every bed loses. Ours.
pub(crate) const ANIMALS_TAKE_PLANTS: u32 = 3;

/// Whether so many plants that are gone, by the words of their loss, are a sighting of a sickness.
pub(crate) fn is_seen_in(of: DiedOf, what: &str, plants: u32) -> bool {
    let least = if nature_of(what, None).by_eye { ANIMALS_TAKE_PLANTS } else { 1 };
    matches!(of, DiedOf::Sickness | DiedOf::Unnamed) && plants >= least
}

/// Whether it names animals that a fence keeps out. A grub named after a hen is none.
pub(crate) fn is_fenced_out(text: &str) -> bool {
    any_in(&known().fenced_out, &plain_words(text)) && !nature_of(text, None).in_soil
}

/// Whether it names what stays in the ground of a bed and kills what is set in next, and no sickness: weed killer, water that stands, fire.
pub(crate) fn ground_kills(text: &str) -> bool {
    let nature = nature_of(text, None);
    any_in(&known().ground_kills, &plain_words(text)) && !nature.in_soil && !nature.spreads
}

/// Whether it names what strips the plants of a bed in a night.
pub(crate) fn strips_beds(text: &str) -> bool {
    any_in(&known().strips, &plain_words(text))
}

/// The names of what stings people, without the ending of many.
pub(crate) fn stinging() -> impl Iterator<Item = String> {
    known().stings.iter().map(|name| name.iter().map(|(part, _)| part.as_str()).collect::<Vec<_>>().join(" "))
}

/// Whether it names what stings people.
pub(crate) fn stings(text: &str) -> bool {
    any_in(&known().stings, &plain_words(text))
}

/// Whether it names people who took plants away.
pub(crate) fn is_by_people(text: &str) -> bool {
    any_in(&known().people, &plain_words(text))
}

/// What eats plants of a bed and goes, or comes again.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Eater {
    /// It takes whole plants at once: rats, goats, ants, grasshoppers.
    Takes,
    /// It gnaws at them: snails, crickets, caterpillars, beetles, borers.
    Gnaws,
}

/// What kind of eater it names, with no sickness beside it; none where it names none.
pub(crate) fn eater_of(text: &str) -> Option<Eater> {
    let (known, words, nature) = (known(), plain_words(text), nature_of(text, None));
    if is_by_people(text) || stings(text) || !(nature.goes_by_itself() || nature.in_stem) {
        return None;
    }
    let takes = any_in(&known.eats, &words).then_some(Eater::Takes);
    takes.or_else(|| any_in(&known.gnaws, &words).then_some(Eater::Gnaws))
}

/// Whether a pest seen in a bed may harm plants of a species, by its scientific name: all, but where its names have other hosts alone.
pub(crate) fn harms(text: &str, scientific: Option<&str>) -> bool {
    let (known, words) = (known(), plain_words(text));
    let genus = scientific.and_then(|name| name.split_whitespace().next());
    let mut hosts = known.hosts.iter().filter(|(names, _)| any_in(names, &words)).peekable();
    let Some(genus) = genus.filter(|_| hosts.peek().is_some()) else { return true };
    hosts.any(|(_, genera)| genera.iter().any(|host| host == genus))
}

/// Words that do not tell one pest from another.
const SAYS_LITTLE: &[&str] = &[
    "leaf", "leave", "hoja", "young", "old", "tierna", "some", "few", "many", "poco", "poca", "algun", "alguna", "mal",
    "de", "del", "la", "las", "el", "los", "en", "on", "of", "the", "in", "a", "una", "un", "more", "still", "no",
    "and", "y", "con", "with", // On whom it is.
    "coffee", "cafe", "cafeto", "cacao", "cocoa", "banana", "platano", "plantain", "guineo", "avocado", "aguacate",
    "mango", "citru", "citrico", "papaya", "cassava", "yuca", "plant", "planta", "seedling",
];
/// What says that nothing was found.
const NONE: &[&str] = &[
    "none", "nothing", "clear", "clean", "healthy", "no", "ninguna", "ninguno", "nada", "ningun", "limpia", "limpio",
    "sana", "sano", "sin", "fine", "well", "sound",
];

/// What may stand before them: of what it is that nothing was found.
const OF_WHAT: &[&str] = &[
    "all",
    "todo",
    "toda",
    "everything",
    "plant",
    "planta",
    "leave",
    "leaf",
    "hoja",
    "root",
    "raiz",
    "raice",
    "the",
    "la",
    "las",
    "el",
    "los",
    "they",
    "look",
    "looked",
    "checked",
    "very",
    "muy",
    "esta",
    "estan",
    "is",
    "are",
];

/// What may stand beside them and tells of nothing, without the ending of many.
const BESIDE_NONE: &[&str] = &[
    "pest",
    "sickness",
    "sicknesse",
    "sick",
    "disease",
    "illness",
    "problem",
    "symptom",
    "sign",
    "trace",
    "seen",
    "found",
    "visible",
    "here",
    "there",
    "at",
    "all",
    "today",
    "now",
    "more",
    "left",
    "yet",
    "any",
    "anymore",
    "longer",
    "of",
    "it",
    "them",
    "plant",
    "leave",
    "leaf",
    "root",
    "and",
    "or",
    "the",
    "a",
    "on",
    "in",
    "was",
    "were",
    "is",
    "are",
    "looked",
    "checked",
    "good",
    "fine",
    "well",
    "ningun",
    "plaga",
    "enfermedad",
    "enfermedade",
    "enferma",
    "enfermo",
    "problema",
    "sintoma",
    "senal",
    "senale",
    "rastro",
    "visto",
    "vista",
    "vi",
    "vio",
    "ve",
    "hay",
    "aqui",
    "hoy",
    "ya",
    "mas",
    "queda",
    "de",
    "en",
    "ella",
    "ello",
    "la",
    "el",
    "lo",
    "planta",
    "hoja",
    "raiz",
    "raice",
    "y",
    "o",
    "que",
    "se",
    "todo",
    "toda",
    "bien",
    "esta",
    "estan",
    "del",
    "al",
    "revisada",
    "revisado",
    "mirada",
    "everything",
    "las",
    "los",
    "they",
    "look",
    "very",
    "muy",
    "sound",
];

/// Words that say water and nothing else. Hot water is not among them: it cures corms and suckers.
const WATER: &[&str] = &["water", "agua"];
const BESIDE_WATER: &[&str] = &[
    "clean",
    "clear",
    "plain",
    "pure",
    "rain",
    "rainwater",
    "tap",
    "well",
    "river",
    "cold",
    "fresh",
    "only",
    "just",
    "with",
    "limpia",
    "pura",
    "lluvia",
    "rio",
    "pozo",
    "fria",
    "sola",
    "solo",
    "con",
    "de",
    "del",
    "la",
    "jet",
    "hose",
    "hosed",
    "strong",
    "chorro",
    "manguera",
    "presion",
    "a",
];

/// Whether a text names water and nothing else.
pub(crate) fn is_only_water(text: &str) -> bool {
    let words = words_of(text);
    let is = |list: &[&str], word: &String| list.contains(&word.as_str());
    words.iter().any(|word| is(WATER, word)) && words.iter().all(|word| is(WATER, word) || is(BESIDE_WATER, word))
}

/// Whether it goes where the plants go: a rat does not.
pub(crate) fn comes_along(text: &str) -> bool {
    let (known, words) = (known(), plain_words(text));
    let others = known.serious.iter().chain([&known.harmless]).any(|names| any_in(names, &words));
    others || !any_in(&known.comes_and_goes, &words)
}

/// Whether a text names a pest or a sickness of plants, those that come and go among them.
pub(crate) fn is_pest_named_in(text: &str) -> bool {
    is_named_in(text) || any_in(&known().of_leaves, &plain_words(text))
}

/// Whether a text says that nobody knows of what, or only that they died.
pub(crate) fn says_unknown(text: &str) -> bool {
    let (known, words) = (known(), plain_words(text));
    let is_in = |names: &[Name], word: &String| any_in(names, std::slice::from_ref(word));
    let is_dead = |word: &String| is_in(&known.dead, word);
    let is_unknown = |word: &String| word.starts_with("unknown") || word.starts_with("desconocid");
    words.iter().any(|word| is_unknown(word) || is_dead(word))
        && words.iter().all(|word| is_in(&known.no_cause, word) || is_dead(word))
}

/// Whether a text names a sickness or a pest that does not go by itself.
pub(crate) fn is_named_in(text: &str) -> bool {
    let (known, words) = (known(), plain_words(text));
    known.serious.iter().any(|names| any_in(names, &words))
}

/// Beginnings of words by which a person says that plants are kept apart because they are sick, or may be. Ours.
const KEPT_APART: &[&str] =
    &["sick", "disease", "quarantin", "infest", "infect", "enferm", "cuarenten", "plaga", "pest"];

/// Whether plants are held because they are sick, or may be.
pub(crate) fn keeps_apart(why: &str) -> bool {
    words_of(why).iter().any(|word| KEPT_APART.iter().any(|start| word.starts_with(start)))
}

/// Whether a hold is for a sickness, or for plants that are kept apart: by its name, by a sign, or by a word for that.
pub(crate) fn holds_sick(why: &str) -> bool {
    let nature = nature_of(why, None);
    keeps_apart(why) || !nature.goes_by_itself() && !nature.is_unknown
}

/// Whether a text says that nothing was found: none, and no other word that tells of anything ("no doubt fusarium").
pub(crate) fn says_none(text: &str) -> bool {
    let words = words_of(text);
    let tells = |word: &&String| !NONE.contains(&word.as_str()) && !BESIDE_NONE.contains(&word.as_str());
    // "All healthy", "todo sano", "hojas sanas": nothing stands there but none and what it is of.
    let begins = words.iter().find(|word| !OF_WHAT.contains(&word.as_str()));
    begins.is_some_and(|first| NONE.contains(&first.as_str())) && !words.iter().any(|word| tells(&word))
}

/// Whether two texts mean the same pest: all that one says stands in the other ("scale", "green scale"), and both live alike. Two names
/// that each say something of their own are two ("leaf rust", "rust mites").
pub(crate) fn is_same_pest(one: &str, other: &str) -> bool {
    let (of_one, of_other) = (telling(one), telling(other));
    let within = |some: &[String], all: &[String]| some.iter().all(|word| all.contains(word));
    if of_one.is_empty() || of_other.is_empty() {
        return words_of(one) == words_of(other);
    }
    within(&of_one, &of_other) && within(&of_other, &of_one)
        || (within(&of_one, &of_other) || within(&of_other, &of_one)) && live_alike(one, other)
}

/// Whether a look for one pest tells whether another is there: all that it names stands in the other, and nothing besides.
pub(crate) fn looks_for(look: &str, other: &str) -> bool {
    let (look_words, other_words) = (telling(look), telling(other));
    if look_words.is_empty() || other_words.is_empty() {
        return words_of(look) == words_of(other);
    }
    look_words.iter().all(|word| other_words.contains(word)) && is_same_pest(look, other)
}

/// Whether two pests live alike: both or neither eat and go, live in the soil, or in stems.
fn live_alike(one: &str, other: &str) -> bool {
    let (one, other) = (nature_of(one, None), nature_of(other, None));
    let lives = |nature: Nature| (nature.goes_by_itself(), nature.in_soil, nature.in_stem);
    one.is_unknown || other.is_unknown || lives(one) == lives(other)
}

/// The words of a text that tell one pest from another, in the order of the alphabet. What stands behind a comma only describes.
fn telling(text: &str) -> Vec<String> {
    let named = text.split([',', ';', '(', ':']).find(|part| !words_of(part).is_empty()).unwrap_or(text);
    let mut words = words_of(named);
    words.retain(|word| !SAYS_LITTLE.contains(&word.as_str()));
    words.sort();
    words.dedup();
    words
}

/// The words of a text, folded, each without the ending of many.
fn words_of(text: &str) -> Vec<String> {
    let folded = folded(text);
    let words = folded.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty());
    words.map(|word| word.strip_suffix('s').filter(|one| one.len() > 2).unwrap_or(word).to_string()).collect()
}

#[cfg(test)]
mod tests;
