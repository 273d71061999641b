//! The two languages.

use super::sentences;
use crate::base::text::folded;

/// A language the program speaks.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Lang {
    /// English.
    En,
    /// Spanish.
    Es,
}

impl Lang {
    /// Every language.
    pub const ALL: [Lang; 2] = [Lang::En, Lang::Es];

    /// The language of a setting or of a `LANG` such as `es-EC.UTF-8`: Spanish where it says so, else English.
    pub fn read(written: &str) -> Lang {
        let written = folded(written);
        let first = written.split(['-', '.', '@']).next().unwrap_or("");
        if matches!(first, "es" | "spa" | "spanish" | "espanol" | "castellano") { Lang::Es } else { Lang::En }
    }

    /// The other one.
    pub(crate) fn other(self) -> Lang {
        match self {
            Lang::En => Lang::Es,
            Lang::Es => Lang::En,
        }
    }

    /// Its two letters.
    pub fn code(self) -> &'static str {
        match self {
            Lang::En => "en",
            Lang::Es => "es",
        }
    }

    /// Its sentences.
    pub(super) fn texts(self) -> sentences::Texts {
        match self {
            Lang::En => sentences::ENGLISH,
            Lang::Es => sentences::SPANISH,
        }
    }
}
