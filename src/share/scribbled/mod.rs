//! Lines as people scribble them: `c1 lost 3`, `2 c1 eaten by ants`, `moví k1 a Mesa 4 y la regué`.
//!
//! A line is cut into words, the words become marks (names, numbers, days, words with roles), and every frame of
//! [`frames`] tries to explain a whole statement with them. A reading counts only where nothing of the statement is left
//! unexplained; what is not sure is asked about, and what cannot be read is refused with the lines it may have meant.

mod asides;
mod choose;
mod doubts;
mod frames;
mod helpers;
mod lexicon;
mod nearest;
mod parts;
mod passed_over;
mod said;
mod typed;
mod why;

#[cfg(test)]
mod tests;

pub(super) use choose::Reader;
pub(super) use doubts::is_no_receiver;
pub(super) use lexicon::{is_a_word, says_more};
pub(crate) use named::{NameOf, Names};
pub(super) use passed_over::PASSED_OVER;
pub use why::Why;

use crate::base::Day;
use serde_json::{Map, Value};
use typed::{days, marks, named, numbers, short_names, spelling, words};

/// An entry as a line says it.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct EntryDraft {
    /// The kind of entry.
    pub kind: &'static str,
    /// Its fields, as the journal has them.
    pub fields: Map<String, Value>,
    /// The day the line names, if it names one.
    pub happened: Option<Day>,
}

/// A reading that may have been meant: what it would write.
pub(crate) type Offer = Vec<EntryDraft>;

/// What became of a line.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Reading {
    /// It says one thing.
    Clear(Vec<EntryDraft>),
    /// It may say several things: which of them?
    Asks {
        /// What is not sure.
        why: Vec<Why>,
        /// Everything it may say.
        offers: Vec<Offer>,
    },
    /// It cannot be written as it is.
    Refused {
        /// What is wrong or missing.
        why: Vec<Why>,
        /// The lines that were probably meant.
        offers: Vec<Offer>,
    },
}

/// A day as entries have it.
fn written(day: Day) -> String {
    let (year, month, day) = day.ymd();
    format!("{year:04}-{month:02}-{day:02}")
}
