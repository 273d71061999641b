//! Every sentence a person reads, in English and in Spanish as it is said in the field.
//!
//! The sentences stand in the `.ftl` files; `build.rs` makes a method of [`Wording`] of each, which takes exactly its
//! arguments. Numbers, days and units are written here too.

#[cfg(test)]
mod agreement_tests;
mod argument;
mod constant;
pub mod desk;
pub mod entry;
mod forecast;
mod lang;
pub(crate) mod number;
pub mod page;
pub mod round;
pub mod screen;
mod sentences;
#[cfg(test)]
mod tests;
pub mod verdict;

pub use lang::Lang;
pub(crate) use page::InputName;

use fluent::FluentResource;
use fluent::concurrent::FluentBundle;
use std::fmt::Display;
use std::sync::OnceLock;

use crate::base::letters::Letters;
use argument::Argument;
use sentences::theme;

type Bundle = FluentBundle<FluentResource>;

/// The sentences of one language.
pub struct Wording {
    lang: Lang,
    /// Where the letters of keys were moved, sentences name them so.
    letters: Letters,
    /// A theme is read when one of its sentences is first said.
    themes: Vec<OnceLock<Bundle>>,
}

impl std::fmt::Debug for Wording {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Wording").field("lang", &self.lang).finish_non_exhaustive()
    }
}

/// The sentences of one language are the same wherever they were read.
impl PartialEq for Wording {
    fn eq(&self, other: &Wording) -> bool {
        self.lang == other.lang && self.letters == other.letters
    }
}

impl Wording {
    /// The sentences of a language.
    pub fn new(lang: Lang) -> Wording {
        Wording::with_letters(lang, Letters::default())
    }

    /// The same, naming keys by the letters a person moved them to.
    pub(crate) fn with_letters(lang: Lang, letters: Letters) -> Wording {
        Wording { lang, letters, themes: lang.texts().themes.iter().map(|_| OnceLock::new()).collect() }
    }

    /// The letters a person moved keys to.
    pub(crate) fn letters(&self) -> &Letters {
        &self.letters
    }

    /// The language.
    pub fn lang(&self) -> Lang {
        self.lang
    }

    /// The sentence of a word of ours: `of_word(theme::KIND, "counted")`. A word of a newer version is shown as it is.
    fn of_word(&self, theme: &str, word: impl Display) -> String {
        let word = word.to_string();
        self.said(&format!("{theme}{word}"), &[]).unwrap_or_else(|| word.replace('_', " "))
    }

    /// The sentence of a word that counts something.
    fn of_word_counted(&self, theme: &str, word: impl Display, n: i64) -> String {
        let counted = self.said(&format!("{theme}{word}"), &[("n", Argument::count(n))]);
        counted.unwrap_or_else(|| format!("{n} {word}"))
    }

    /// The sentence of a key. One that is missing is said in English; a person never sees a key.
    fn say(&self, key: &str, arguments: Vec<(&'static str, Argument)>) -> String {
        static ENGLISH: OnceLock<Wording> = OnceLock::new();
        self.said(key, &arguments)
            .or_else(|| ENGLISH.get_or_init(|| Wording::new(Lang::En)).said(key, &arguments))
            .unwrap_or_else(|| arguments.iter().map(|(_, argument)| argument.plain()).collect::<Vec<_>>().join(" "))
    }

    /// The sentence of a key in this language; none where there is none.
    fn said(&self, key: &str, arguments: &[(&'static str, Argument)]) -> Option<String> {
        let bundle = self.theme_of(key)?;
        let pattern = bundle.get_message(key)?.value()?;
        let fluent = arguments.iter().map(|(name, argument)| (*name, argument.fluent())).collect();
        let mut faults = Vec::new();
        let sentence = bundle.format_pattern(pattern, Some(&fluent), &mut faults).into_owned();
        faults.is_empty().then_some(sentence)
    }

    fn theme_of(&self, key: &str) -> Option<&Bundle> {
        let texts = self.lang.texts();
        let found = texts.theme_of.binary_search_by_key(&key, |(known, _)| known).ok()?;
        let (_, theme) = texts.theme_of.get(found)?;
        Some(self.themes.get(*theme)?.get_or_init(|| bundle_of(texts.themes[*theme], self)))
    }
}

fn bundle_of(theme: &str, wording: &Wording) -> Bundle {
    let mut bundle = Bundle::new_concurrent(vec![wording.lang.code().parse().unwrap_or_default()]);
    // Marks of isolation are invisible, break columns and are kept out of this program's output.
    bundle.set_use_isolating(false);
    // What cannot be read is left out and said in English; the tests see to it that all can be read.
    let resource = match FluentResource::try_new(constant::with_constants(theme, &wording.letters)) {
        Ok(resource) | Err((resource, _)) => resource,
    };
    bundle.add_resource_overriding(resource);
    bundle
}

/// The words of a theme that have a sentence.
#[cfg(test)]
pub(crate) fn words_of(theme: &str) -> std::collections::BTreeSet<&'static str> {
    let keys = sentences::KEYS.iter().filter(|key| key.by_word == Some(theme));
    keys.filter_map(|key| key.name.strip_prefix(theme)).collect()
}

/// Every sentence of a language that is looked up by a word of ours and takes nothing in: names, lists, causes.
#[cfg(test)]
pub(crate) fn names_of(lang: Lang) -> Vec<String> {
    let wording = Wording::new(lang);
    let keys = sentences::KEYS.iter().filter(|key| key.by_word.is_some() && key.arguments.is_empty());
    keys.filter_map(|key| wording.said(key.name, &[])).collect()
}

/// Everything that is said in a language, without the names of sentences and of what is put into them.
#[cfg(test)]
pub(crate) fn whole_text_of(lang: Lang) -> String {
    let said = |line: &str| {
        let sentence = line.split_once(" = ").filter(|(key, _)| !key.contains(' ')).map_or(line, |(_, said)| said);
        let mut parts = sentence.split("{ $");
        let first = parts.next().unwrap_or_default().to_string();
        parts.fold(first, |text, part| text + " " + part.split_once('}').map_or("", |(_, rest)| rest))
    };
    let lines = lang.texts().themes.iter().flat_map(|theme| theme.lines());
    lines.filter(|line| !line.starts_with('#')).map(said).collect::<Vec<_>>().join("\n")
}
