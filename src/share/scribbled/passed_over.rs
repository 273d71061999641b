//! Words that nobody knows, passed over where the rest of a line says by itself what happened: they are kept beside it, in
//! the line's own words. What may turn the meaning is never passed over: a word made like a verb, one that stands at a
//! number, one that says it was not so.

use super::Reading;
use super::choose::{Line, Way, day_of};
use super::doubts::means_something;
use super::frames::does_something;
use super::lexicon::lexicon;
use super::marks::{Mark, What};

/// The field that holds the words that were passed over; no entry has it, so they are kept in a note.
pub(in crate::share) const PASSED_OVER: &str = "passed_over";
/// What a reading must weigh: a word that says what happened, and the name it happened to.
const HEADED: i32 = 13;
/// The most words that are passed over.
const MOST_PASSED: usize = 4;
/// The part of what stands in a tray from which on a bare number counts it (ours).
const NEARLY_ALL: f64 = 0.9;
/// Of fewer plants nearly all are too few to tell (ours).
const LEAST_OF_ALL: f64 = 10.0;
/// Kinds of entries that may be read so: a wrong word in them is seen by whoever reads the line again.
const KINDS: [&str; 25] = [
    "counted",
    "lost",
    "culled",
    "carried",
    "outplanted",
    "given_out",
    "shade_set",
    "watering_set",
    "watered",
    "treated",
    "pest_seen",
    "flushed",
    "hardening_begun",
    "prepared",
    "stocktaken",
    "nurse_cut",
    "worked",
    "plants_lost",
    "survival_counted",
    "nurse_counted",
    "lot_kept",
    "held",
    "released",
    "roots_cut",
    "plug_checked",
];
/// Fields that hold words of the line.
const TEXTS: [&str; 5] = ["cause", "why", "to", "what", "with"];

impl Line<'_> {
    /// The reading of a whole statement of which only words that nobody knows are left over.
    pub(super) fn headed_but_for_words(&self, whole: &[Way]) -> Option<Reading> {
        let is_count_of_all = |way: &&Way| self.is_count_of_nearly_all(way);
        let best =
            whole.first().filter(|way| way.lacks.is_empty() && (way.weight >= HEADED || is_count_of_all(way)))?;
        if !best.drafts.iter().all(|(kind, _)| KINDS.contains(kind)) || best.leftover.len() > MOST_PASSED {
            return None;
        }
        // "let Juma have 6 c1": what somebody has is no count.
        const COUNTS: [&str; 4] = ["count", "left", "up", "recount"];
        let says_how_many = |mark: &Mark| {
            COUNTS.iter().any(|role| mark.has(role)) && !matches!(mark.folded.as_str(), "have" | "has" | "get" | "got")
        };
        let is_count = best.drafts.iter().any(|(kind, _)| *kind == "counted");
        if is_count && !self.marks.iter().any(says_how_many) && !self.is_count_of_nearly_all(best) {
            return None;
        }
        let rival = |way: &&Way| way.leftover.len() <= best.leftover.len() && way.drafts != best.drafts;
        if whole.iter().skip(1).any(|way| rival(&way)) {
            return None;
        }
        let days = self.marks.iter().filter(|mark| day_of(mark).is_some()).count();
        if self.one_day().is_none() && days > 0 || self.holds_unknown_words(best) {
            return None;
        }
        // "sold 5 c1 cheap": the word may be who got them.
        let no_receiver =
            |(kind, fields): &(&str, super::frames::Fields)| *kind == "given_out" && !fields.contains_key("to");
        if best.drafts.iter().any(no_receiver) {
            return None;
        }
        let is_far = |at: usize| !self.stands_at_a_number(at, self.is_count_of_nearly_all(best));
        if !best.leftover.iter().all(|at| self.is_passed_over(*at) && is_far(*at)) {
            return None;
        }
        let words: Vec<&str> = best.leftover.iter().map(|at| self.marks[*at].typed.as_str()).collect();
        let mut drafts = self.dated(&best.drafts, self.one_day());
        if let Some(first) = drafts.first_mut().filter(|first| first.kind != "noted") {
            first.fields.insert(PASSED_OVER.into(), words.join(" ").into());
        }
        Some(Reading::Clear(drafts))
    }

    /// Whether it counts a tray at nearly what stands there by the books: no number of dead, sick or sold plants is so great
    /// in a line that says nothing of them.
    fn is_count_of_nearly_all(&self, way: &Way) -> bool {
        let [("counted", fields)] = &way.drafts[..] else { return false };
        let books = fields.get("tray").and_then(|tray| self.known.names.standing(tray.as_str()?)).map(f64::from);
        let counted = fields.get("standing").and_then(serde_json::Value::as_f64);
        let [Some(books), Some(counted)] = [books, counted] else { return false };
        fields.len() == 2 && books >= LEAST_OF_ALL && counted <= books && counted >= books * NEARLY_ALL
    }

    /// Whether a text of the reading is made of words that nobody knows: then nothing says where it ends.
    fn holds_unknown_words(&self, way: &Way) -> bool {
        let texts = way.drafts.iter().flat_map(|(_, fields)| TEXTS.iter().filter_map(|field| fields.get(*field)));
        let said: Vec<&str> = texts.filter_map(|text| text.as_str()).collect();
        let is_plain = |mark: &&Mark| mark.what == What::Unknown && !mark.typed.starts_with(char::is_uppercase);
        self.marks
            .iter()
            .filter(is_plain)
            .any(|mark| said.iter().any(|text| text.split(' ').any(|word| word == mark.typed)))
    }

    fn is_passed_over(&self, at: usize) -> bool {
        let mark = &self.marks[at];
        let is_unknown = mark.what == What::Unknown && mark.typed.chars().all(char::is_alphabetic);
        let turns = || {
            lexicon().is(&mark.folded, "helpers.turns")
                || means_something(&mark.folded)
                || does_something(&mark.typed)
                || mark.folded.ends_with("ing")
                || mark.folded.ends_with("mente")
        };
        is_unknown && !turns()
    }

    /// Whether only small words part it from a number before it, or a number stands right behind it: it may say of what the
    /// number is. Of a count of nearly all it is not asked what stands before the number.
    fn stands_at_a_number(&self, at: usize, of_nearly_all: bool) -> bool {
        let is_number = |mark: &Mark| {
            matches!(
                mark.what,
                What::Number { is_weak: false, .. } | What::Amount(..) | What::Share(..) | What::Part(_)
            )
        };
        let passes = |mark: &Mark| {
            mark.what == What::Unknown
                || mark.what == What::Word
                    && (mark.has("whole")
                        || mark.roles.iter().all(|role| role.starts_with("small.") || *role == "well"))
        };
        let before = self.marks[..at].iter().rev().find(|mark| !passes(mark));
        before.is_some_and(is_number) || !of_nearly_all && self.marks.get(at + 1).is_some_and(is_number)
    }
}
