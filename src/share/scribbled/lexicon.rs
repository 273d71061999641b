//! The words by which scribbled lines are read, from `lexicon.toml`: a phrase has the roles of every list it stands in.

use std::collections::{BTreeSet, HashMap};
use std::sync::LazyLock;

use crate::base::name_search::sounds;
use crate::base::text::folded;
use crate::nursery::pest::stinging;
use crate::share::hand_day::weekday_named;

const WORDS: &str = include_str!("lexicon.toml");
/// A shorter beginning of a word says too little to be known by its sound.
const LEAST_OF_A_STEM: usize = 5;
/// The most words of one phrase.
const LONGEST_PHRASE: usize = 7;

/// What a phrase may do in a line: the name of its list, with the table before it for all but concepts.
pub(super) type Role = &'static str;

/// The lexicon, read once.
#[derive(Default)]
pub(super) struct Lexicon {
    phrases: HashMap<String, Vec<Role>>,
    stems: Vec<(String, Role)>,
    /// The most words of a phrase that begins with a word.
    longest: HashMap<String, usize>,
    figures: HashMap<String, f64>,
    months: HashMap<String, u32>,
}

/// Small letters without accents, a hyphen read as a blank, a typed apostrophe as a straight one.
pub(super) fn fold(text: &str) -> String {
    let plain = folded(text)
        .chars()
        .map(|letter| match letter {
            '-' => ' ',
            '’' | '`' => '\'',
            other => other,
        })
        .collect::<String>();
    plain.trim().to_string()
}

pub(super) fn lexicon() -> &'static Lexicon {
    static READ: LazyLock<Lexicon> = LazyLock::new(|| Lexicon::from_tables(toml::from_str(WORDS).unwrap_or_default()));
    &READ
}

/// A list as it stands in the file, folded.
pub(super) fn list(table: &str, name: &str) -> Vec<String> {
    static READ: LazyLock<toml::Table> = LazyLock::new(|| toml::from_str(WORDS).unwrap_or_default());
    let found = READ.get(table).and_then(|lists| lists.get(name));
    found.map(strings).unwrap_or_default().iter().map(|word| fold(word)).collect()
}

fn strings(value: &toml::Value) -> Vec<String> {
    value.as_array().into_iter().flatten().filter_map(|word| word.as_str().map(str::to_string)).collect()
}

impl Lexicon {
    fn from_tables(tables: toml::Table) -> Lexicon {
        let mut read = Lexicon::default();
        for (table, lists) in &tables {
            for (list, words) in lists.as_table().into_iter().flatten() {
                match (table.as_str(), list.as_str()) {
                    ("numbers", "units") => read.figures_from(words, 0.0, 1.0),
                    ("numbers", "tens") => read.figures_from(words, 30.0, 10.0),
                    ("numbers", "hundreds") => read.figures_from(words, 200.0, 100.0),
                    ("days", "months") => read.rank(words, |read, word, place| {
                        read.months.insert(word, place as u32 + 1);
                    }),
                    // Verbs by their pairs; they have no part in a line themselves.
                    ("helpers", "infinitives" | "as_done") => {}
                    _ => read.learn(table, list, words),
                }
            }
        }
        // Who writes of a snake or a nest on a tray means no note.
        let stinging = stinging().map(toml::Value::String).collect();
        read.learn("pests", "words", &toml::Value::Array(stinging));
        read
    }

    fn learn(&mut self, table: &str, list: &str, words: &toml::Value) {
        let role = if table == "concepts" { list.to_string() } else { format!("{table}.{list}") };
        let role: Role = Box::leak(role.into_boxed_str());
        for word in strings(words) {
            let folded = fold(&word);
            let first = folded.split(' ').next().unwrap_or_default().to_string();
            let length = folded.split(' ').count();
            let longest = self.longest.entry(first).or_default();
            *longest = length.max(*longest);
            if matches!(role, "pests.words" | "causes.words") && length == 1 && !word.ends_with('*') {
                self.learn_other_number(&folded, role);
            }
            match word.strip_suffix('*') {
                Some(stem) => self.stems.push((stem.to_string(), role)),
                None => self.phrases.entry(fold(&word)).or_default().push(role),
            }
        }
    }

    /// One of many and many of one: "slugs" also says "slug".
    fn learn_other_number(&mut self, word: &str, role: Role) {
        /// A shorter word has other meanings.
        const LEAST_LETTERS: usize = 4;
        let other = word.strip_suffix('s').map_or_else(|| format!("{word}s"), str::to_string);
        let is_long =
            other.chars().count() >= LEAST_LETTERS && !other.ends_with(['s', 'e', 'i']) || other.ends_with('s');
        if is_long && other.chars().count() >= LEAST_LETTERS {
            self.longest.entry(other.clone()).or_insert(1);
            let roles = self.phrases.entry(other).or_default();
            if !roles.contains(&role) {
                roles.push(role);
            }
        }
    }

    fn rank(&mut self, words: &toml::Value, mut keep: impl FnMut(&mut Lexicon, String, usize)) {
        for (place, spellings) in words.as_array().into_iter().flatten().enumerate() {
            strings(spellings).into_iter().for_each(|word| keep(self, word, place));
        }
    }

    fn figures_from(&mut self, words: &toml::Value, first: f64, step: f64) {
        // Five hundred has a word of its own kind in Spanish: it follows four hundred in its list.
        self.rank(words, |read, word, place| {
            read.figures.insert(word, first + step * place as f64);
        });
    }

    /// The most words that a phrase may have that begins with this folded word.
    pub fn longest(&self, word: &str) -> usize {
        let first = word.split(' ').next().unwrap_or_default();
        let known = self.longest.get(first).copied().unwrap_or(0);
        known.clamp(1, LONGEST_PHRASE)
    }

    /// The roles of a folded phrase; stems count for single words.
    pub fn roles(&self, phrase: &str) -> Vec<Role> {
        let mut roles = self.phrases.get(phrase).cloned().unwrap_or_default();
        for (stem, role) in &self.stems {
            if phrase.starts_with(stem.as_str()) && !phrase[stem.len()..].contains(' ') && !roles.contains(role) {
                roles.push(role);
            }
        }
        roles
    }

    /// Whether a folded phrase stands in a list.
    pub fn is(&self, phrase: &str, role: &str) -> bool {
        self.phrases.get(phrase).is_some_and(|roles| roles.contains(&role))
    }

    /// The roles of the one known word that is a slip of the pen away from this one.
    pub fn nearly(&self, word: &str) -> Vec<Role> {
        let letters = word.chars().count();
        if letters < 5 {
            return Vec::new();
        }
        let mut found: Option<&Vec<Role>> = None;
        for (phrase, roles) in &self.phrases {
            let is_near = phrase.chars().next() == word.chars().next()
                && phrase.len().abs_diff(word.len()) <= 1
                && phrase.len() >= 5
                && strsim::osa_distance(phrase, word) == 1;
            if is_near && !roles.iter().any(|role| role.starts_with("mood.")) {
                match found {
                    Some(before) if before != roles => return Vec::new(),
                    _ => found = Some(roles),
                }
            }
        }
        found.cloned().unwrap_or_default()
    }

    /// The known cause that a folded phrase is a slip of the pen away from, or whose first word it is.
    pub fn nearest_cause(&self, phrase: &str) -> Option<String> {
        /// A shorter phrase is near too many.
        const LEAST_LETTERS: usize = 5;
        /// From so many letters on two may be wrong.
        const LONG: usize = 8;
        if phrase.len() < LEAST_LETTERS {
            return None;
        }
        let most = if phrase.len() < LONG { 1 } else { 2 };
        let is_cause = |roles: &Vec<Role>| roles.contains(&"causes.words");
        let far = |cause: &str| {
            let begins = cause.strip_prefix(phrase).is_some_and(|rest| rest.starts_with(' '));
            if begins { 1 } else { strsim::osa_distance(cause, phrase) }
        };
        let causes = self.phrases.iter().filter(|(_, roles)| is_cause(roles)).map(|(cause, _)| (far(cause), cause));
        causes.filter(|(far, _)| *far <= most).min().map(|(_, cause)| cause.clone())
    }

    /// A number word under a hundred, or a word for hundreds.
    pub fn figure(&self, word: &str) -> Option<f64> {
        self.figures.get(word).copied()
    }

    /// The place of a weekday in the week, Monday 0.
    pub fn weekday(&self, word: &str) -> Option<i32> {
        weekday_named(word.trim_end_matches('.'))
    }

    /// The number of a month.
    pub fn month(&self, word: &str) -> Option<u32> {
        self.months.get(word.trim_end_matches('.')).copied()
    }
}

/// Every word of the lists one by one, to know a slip of the pen by.
#[derive(Default)]
pub(super) struct Vocabulary {
    /// The words, also those that stand only in phrases.
    pub words: BTreeSet<String>,
    /// The words by their first letter.
    pub by_first: HashMap<char, Vec<String>>,
    /// The beginnings of lists by how they sound.
    pub stems: Vec<(String, &'static str)>,
    /// The words by how they sound.
    pub by_sound: HashMap<String, Vec<String>>,
    /// Words that are read elsewhere and must not be taken for slips.
    others: BTreeSet<String>,
    /// Everyday words that say nothing here.
    everyday: BTreeSet<String>,
}

impl Vocabulary {
    fn of(lexicon: &'static Lexicon) -> Vocabulary {
        let mut found = Vocabulary::default();
        let is_plain = |word: &&str| word.len() > 1 && word.chars().all(char::is_alphabetic);
        let phrases = lexicon.phrases.keys().chain(lexicon.figures.keys()).chain(lexicon.months.keys());
        for word in phrases.flat_map(|phrase| phrase.split(' ')).filter(is_plain) {
            found.words.insert(word.to_string());
        }
        for word in &found.words {
            let first = word.chars().next().unwrap_or(' ');
            found.by_first.entry(first).or_default().push(word.clone());
            found.by_sound.entry(sounds(word)).or_default().push(word.clone());
        }
        let is_long = |stem: &&(String, Role)| stem.0.len() >= LEAST_OF_A_STEM && !stem.0.contains(' ');
        found.stems = lexicon.stems.iter().filter(is_long).map(|(stem, _)| (sounds(stem), stem.as_str())).collect();
        let doubts: toml::Table = toml::from_str(include_str!("doubts.toml")).unwrap_or_default();
        doubts.get("everyday").into_iter().for_each(|words| all_strings(words, &mut found.everyday));
        for text in [include_str!("doubts.toml"), include_str!("../words.toml"), WORDS] {
            all_strings(&toml::Value::Table(toml::from_str(text).unwrap_or_default()), &mut found.others);
        }
        found
    }

    /// Whether a folded word stands in a list.
    pub fn knows(&self, word: &str) -> bool {
        self.words.contains(word) || self.others.contains(word) || !lexicon().roles(word).is_empty()
    }

    /// Whether a folded word is an everyday one that says nothing here, or a part of a phrase.
    pub fn is_everyday(&self, word: &str) -> bool {
        self.everyday.contains(word) || self.words.contains(word)
    }

    /// The beginning of a list that a word begins with by its sound, and how it goes on.
    pub fn stem_that_sounds<'w>(&self, word: &'w str) -> Option<(&'static str, &'w str)> {
        let ends = word.char_indices().map(|(at, letter)| at + letter.len_utf8());
        ends.filter(|end| *end >= LEAST_OF_A_STEM).find_map(|end| {
            let heard = sounds(&word[..end]);
            let found = self.stems.iter().find(|(sound, _)| *sound == heard)?;
            Some((found.1, &word[end..]))
        })
    }
}

fn all_strings(value: &toml::Value, found: &mut BTreeSet<String>) {
    match value {
        toml::Value::String(text) => found.extend(fold(text).split(' ').map(str::to_string)),
        toml::Value::Array(all) => all.iter().for_each(|one| all_strings(one, found)),
        toml::Value::Table(all) => all.values().for_each(|one| all_strings(one, found)),
        _ => {}
    }
}

/// The words of all lists, laid out once.
pub(super) fn vocabulary() -> &'static Vocabulary {
    static READ: LazyLock<Vocabulary> = LazyLock::new(|| Vocabulary::of(lexicon()));
    &READ
}

/// Whether a word is one that lines are read by.
pub(in crate::share) fn is_a_word(word: &str) -> bool {
    !lexicon().roles(&fold(word)).is_empty()
}

/// Whether a free text tells more than a cause or a name: a number, or words for what stands or died.
pub(in crate::share) fn says_more(text: &str) -> bool {
    const HEADS: [&str; 6] = ["left", "count", "die", "up", "cull", "give"];
    let folded = fold(text);
    let words = folded.split([' ', ',', ';']);
    let is_head = |word: &str| lexicon().roles(word).iter().any(|role| HEADS.contains(role));
    words.into_iter().any(|word| word.chars().any(|letter| letter.is_ascii_digit()) || is_head(word))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_list_is_read_and_every_word_can_be_met() {
        let tables: toml::Table = toml::from_str(WORDS).unwrap();
        for (table, lists) in &tables {
            for (list, words) in lists.as_table().unwrap() {
                for word in strings(words).iter() {
                    let bare = word.trim_end_matches('*').replace('-', " ");
                    assert_eq!(fold(&bare), bare.trim(), "{table}.{list}: {word} is never met");
                }
            }
        }
        assert_eq!(lexicon().figure("veintinueve"), Some(29.0));
        assert_eq!((lexicon().weekday("domingo"), lexicon().month("dic")), (Some(6), Some(12)));
    }
}
