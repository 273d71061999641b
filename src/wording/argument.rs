//! What is put into a sentence.

use fluent::FluentValue;
use std::fmt::Display;

use crate::base::text::cleaned;

/// What an argument is.
#[cfg(test)]
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum Kind {
    /// Any text; unseen characters are taken out.
    Text,
    /// A whole number, which may choose between one and many.
    Count,
}

/// A sentence's key and its arguments.
#[cfg(test)]
#[derive(Clone, Copy, Debug)]
pub(super) struct Key {
    /// The key in the `.ftl` files, and the name of its method.
    pub name: &'static str,
    /// What its key begins with, where it is looked up by a built name and has no method.
    pub by_word: Option<&'static str>,
    /// Its arguments.
    pub arguments: &'static [(&'static str, Kind)],
}

/// An argument's value.
#[derive(Clone, Debug)]
pub(super) enum Argument {
    /// A text.
    Text(String),
    /// A whole number.
    Count(i64),
}

impl Argument {
    /// A text without unseen characters.
    pub fn text(value: impl Display) -> Argument {
        Argument::Text(cleaned(&value.to_string()))
    }

    /// A whole number.
    pub fn count(value: impl Into<i64>) -> Argument {
        Argument::Count(value.into())
    }

    /// The value for Fluent.
    pub fn fluent(&self) -> FluentValue<'_> {
        match self {
            // Words beside a number agree with one, however the number is handed over.
            Argument::Text(text) if text == "1" => FluentValue::from(1),
            Argument::Text(text) => FluentValue::from(text.as_str()),
            Argument::Count(count) => FluentValue::from(*count),
        }
    }

    /// The value as it stands.
    pub fn plain(&self) -> String {
        match self {
            Argument::Text(text) => text.clone(),
            Argument::Count(count) => count.to_string(),
        }
    }
}
