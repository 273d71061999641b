//! Any entry in one plain sentence: "25 Nov · tray cof-031 counted: 41 living". Every field that was written is said;
//! long lists are cut short with a count, a sample by its means.

mod book;
mod ground;
mod seed;
mod site;
mod tray;
mod words;

pub(crate) use words::is_not_said;

use super::Wording;
use crate::base::Day;
use crate::base::text::folded;
use crate::nursery::entry::{Entry, What};
use crate::nursery::species::Catalogue;

/// What stands in an entry where nobody said who writes: as it is written now, then as it once was in Spanish.
pub(crate) const WHO_UNKNOWN: [&str; 2] = ["someone", "alguien"];

impl Wording {
    #[cfg(test)]
    /// An entry with its day in one sentence, species by their built-in names.
    pub(crate) fn entry_sentence(&self, entry: &Entry) -> String {
        self.entry_sentence_beside(entry, entry.recorded.day(0.0), &Catalogue::built_in())
    }

    /// An entry with its day and year in one sentence, with the nursery's own names of species: what was just written must not
    /// leave the year to be guessed.
    /// Who wrote an entry; that nobody said who, in the language asked for.
    pub(crate) fn who_told(&self, who: &str) -> String {
        if WHO_UNKNOWN.contains(&who) { self.who_unknown() } else { who.to_string() }
    }

    pub(crate) fn entry_sentence_with_year(&self, entry: &Entry, species: &Catalogue) -> String {
        format!("{} · {}", self.day(entry.happened), self.what_sentence(&entry.what, species))
    }

    /// The same beside another day, whose year need not be said, with the nursery's own names of species.
    pub(crate) fn entry_sentence_beside(&self, entry: &Entry, other: Day, species: &Catalogue) -> String {
        format!("{} · {}", self.day_beside(entry.happened, other), self.what_sentence(&entry.what, species))
    }

    /// Whether an entry holds what is looked for, folded: in its sentence, its number, or as who wrote it.
    pub(crate) fn entry_holds(&self, entry: &Entry, wanted: &str, today: Day, species: &Catalogue) -> bool {
        wanted.is_empty()
            || folded(&entry.who).contains(wanted)
            || entry.id.to_string().contains(wanted)
            || folded(&self.entry_sentence_beside(entry, today, species)).contains(wanted)
    }

    /// What an entry says in one sentence, without its day.
    pub(crate) fn what_sentence(&self, what: &What, species: &Catalogue) -> String {
        let said = match what {
            What::Site(entry) => self.site_sentence(entry, species),
            What::Seed(entry) => self.seed_sentence(entry, species),
            What::Tray(entry) => self.tray_sentence(entry, species),
            What::Ground(entry) => self.ground_sentence(entry, species),
            What::Book(entry) => self.book_sentence(entry),
            What::Foreign { kind, .. } => self.entry_foreign(kind),
        };
        crate::base::text::cleaned(&said)
    }
}

/// A sentence and its further parts, those that were written.
fn with_parts(sentence: String, parts: impl IntoIterator<Item = Option<String>>) -> String {
    parts.into_iter().flatten().fold(sentence, |said, part| format!("{said}, {part}"))
}

#[cfg(test)]
mod tests;
