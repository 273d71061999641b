//! The table of sentences: each key with its arguments once, from which its method and the tests are made.

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

/// Declares sentences: `messages! { tray_ready(tray: text, plants: count); }` gives `KEYS` and a method for each.
macro_rules! messages {
    ($($(#[$note:meta])* $name:ident($($argument:ident: $kind:ident),*);)*) => {
        /// The keys of this theme with their arguments.
        #[cfg(test)]
        pub(in crate::wording) const KEYS: &[$crate::wording::messages::Key] = &[$(
            $crate::wording::messages::Key {
                name: stringify!($name),
                arguments: &[$((stringify!($argument), messages!(@kind $kind))),*],
            }
        ),*];

        impl $crate::wording::Wording {$(
            #[doc = concat!("The sentence `", stringify!($name), "`.")]
            $(#[$note])*
            pub fn $name(&self $(, $argument: messages!(@type $kind))*) -> String {
                self.say(
                    stringify!($name),
                    vec![$((stringify!($argument), $crate::wording::messages::Argument::$kind($argument))),*],
                )
            }
        )*}
    };
    (@type text) => { impl std::fmt::Display };
    (@type count) => { impl Into<i64> };
    (@kind text) => { $crate::wording::messages::Kind::Text };
    (@kind count) => { $crate::wording::messages::Kind::Count };
}
pub(super) use messages;
