//! What can be written down, field by field, and what keys do: names of ours said as a person says them.

use crate::wording::{Wording, theme};

impl Wording {
    /// A kind of entry as a person says it: "Count a tray".
    pub(crate) fn kind_name(&self, kind: &str) -> String {
        self.of_word(theme::KIND, kind)
    }

    /// A field of a form: "Height, cm".
    pub(crate) fn field_title(&self, field: &str) -> String {
        self.of_word(theme::FIELD, field)
    }

    /// A word of a closed list by its spelling in files: "in the pod or fruit".
    pub(crate) fn choice_name(&self, word: &str) -> String {
        self.of_word(theme::CHOICE, word)
    }

    /// What a key does, by its spelling.
    pub(crate) fn key_does(&self, does: &str) -> String {
        self.of_word(theme::DOES, does)
    }

    /// Keys as they are named: arrows and the bar of blanks have a name in each language, all others are what stands on them.
    pub(crate) fn keys_named(&self, keys: &str) -> String {
        match keys {
            "arrows" => self.keys_arrows(),
            "left right" => self.keys_left_right(),
            "Space" => self.keys_space(),
            other => other.to_string(),
        }
    }
}
