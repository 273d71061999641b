//! Words with a fixed meaning, read alike in English and Spanish.

use super::text::folded;

/// A small closed list of words. Each has one spelling in files and any number of spellings that are also read.
pub trait Word: Sized + Copy + PartialEq + 'static {
    /// Every word with its file spelling first and then the others that are read.
    const WORDS: &'static [(Self, &'static [&'static str])];

    /// The word for what was written; blanks, hyphens, underscores, case and accents do not count.
    fn read(written: &str) -> Option<Self> {
        // As files spell it, nearly always: nothing has to be folded.
        if let Some((word, _)) = Self::WORDS.iter().find(|(_, spellings)| spellings.contains(&written)) {
            return Some(*word);
        }
        let wanted = folded(written);
        Self::WORDS
            .iter()
            .find(|(_, spellings)| spellings.iter().any(|spelling| folded(spelling) == wanted))
            .map(|(word, _)| *word)
    }

    /// The spelling used in files.
    fn spelled(self) -> &'static str {
        Self::WORDS
            .iter()
            .find(|(word, _)| *word == self)
            .and_then(|(_, spellings)| spellings.first())
            .copied()
            .unwrap_or("")
    }
}

/// Declares a list of words: `words! { /// note  Name { /// note  Variant: "file_spelling", "other", ... } }`.
#[macro_export]
macro_rules! words {
    ($($(#[$note:meta])* $name:ident { $($(#[$vnote:meta])* $variant:ident: $($spelling:literal),+ ;)+ })*) => {$(
        $(#[$note])*
        #[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
        pub enum $name { $($(#[$vnote])* $variant,)+ }

        impl $crate::base::word::Word for $name {
            const WORDS: &'static [(Self, &'static [&'static str])] = &[$(($name::$variant, &[$($spelling),+]),)+];
        }
        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.pad($crate::base::word::Word::spelled(*self))
            }
        }
        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_str($crate::base::word::Word::spelled(*self))
            }
        }
        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                let written = std::borrow::Cow::<'de, str>::deserialize(deserializer)?;
                <Self as $crate::base::word::Word>::read(&written).ok_or_else(|| {
                    let known: Vec<&str> = <Self as $crate::base::word::Word>::WORDS.iter().map(|(_, s)| s[0]).collect();
                    serde::de::Error::custom(format!("unknown word '{written}', one of: {}", known.join(", ")))
                })
            }
        }
    )*};
}
