//! The texts of the built-in profiles in Spanish: notes, cautions, figures in words, and the words around publications.

use std::collections::BTreeMap;
use std::sync::OnceLock;

/// Every English text with the same in Spanish; a publication that is the whole of a source stands as it is.
const TEXT: &str = include_str!("in_spanish.toml");

/// A text of a built-in profile in Spanish; none for a text that is not of a built-in profile.
pub fn in_spanish(english: &str) -> Option<&'static str> {
    static READ: OnceLock<BTreeMap<String, String>> = OnceLock::new();
    // A file that could not be read would leave the texts in English; the tests see to it that it can.
    let texts = READ.get_or_init(|| toml::from_str(TEXT).unwrap_or_default());
    texts.get(english).map(String::as_str)
}
