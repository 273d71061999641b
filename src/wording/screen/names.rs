//! What can be written down, field by field, and what keys do: names of ours said as a person says them.

use crate::wording::{Wording, theme};

impl Wording {
    /// A kind of entry as a person says it: "Count a tray".
    pub(crate) fn kind_name(&self, kind: &str) -> String {
        self.of_word(theme::KIND, kind)
    }

    /// Everyday words by which a kind is found too, parted by blanks.
    pub(crate) fn kind_also(&self, kind: &str) -> String {
        self.of_word(theme::ALSO, kind)
    }

    /// A field of a form: "Height, cm".
    pub(crate) fn field_title(&self, field: &str) -> String {
        self.of_word(theme::FIELD, field)
    }

    /// A field of a kind: the same word means another thing in some kinds.
    pub(crate) fn field_title_of(&self, kind: &str, field: &str) -> String {
        match (kind, field) {
            ("noted", "about") => self.title_noted_about(),
            ("given_out", "to") => self.title_given_out_to(),
            ("moved_on", "from") => self.title_moved_on_from(),
            _ => self.field_title(field),
        }
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
            other => match other.as_bytes() {
                [letter] => self.letter_of(char::from(*letter)).to_string(),
                _ => other.to_string(),
            },
        }
    }

    /// The letter that does what a letter of the key table says.
    pub(crate) fn letter_of(&self, key: char) -> char {
        self.letters().pressed_for(key)
    }
}
