//! Letters of the keyboard that a person has moved: what one letter did, another does.

use std::collections::BTreeMap;

/// Which letter does the work of which. Each work has one letter and each letter one work: where one is moved onto
/// another, what stood there goes to the letter that became free.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub(crate) struct Letters {
    /// The letter that is pressed, by the one whose work it does.
    pressed: BTreeMap<char, char>,
    /// The other way round.
    meant: BTreeMap<char, char>,
}

/// Why letters cannot be moved so.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) enum LettersFault {
    /// Not one letter from a to z.
    NoLetter(String),
    /// Two works on one letter.
    Twice(char),
}

impl Letters {
    /// Moves the work of each first letter onto the second.
    ///
    /// # Errors
    /// Something is no letter, or two works would stand on one letter.
    pub(crate) fn moved<'a>(pairs: impl Iterator<Item = (&'a str, &'a str)>) -> Result<Letters, LettersFault> {
        let mut letters = Letters::default();
        for (work, onto) in pairs {
            let (work, onto) = (letter(work)?, letter(onto)?);
            letters.pressed.insert(work, onto);
            if letters.meant.insert(onto, work).is_some() {
                return Err(LettersFault::Twice(onto));
            }
        }
        // What stood where something was moved to goes to the letter that this became free of.
        let driven_out: Vec<char> =
            letters.meant.keys().copied().filter(|onto| !letters.pressed.contains_key(onto)).collect();
        for work in driven_out {
            let mut free = work;
            while let Some(next) = letters.meant.get(&free) {
                free = *next;
            }
            letters.pressed.insert(work, free);
            letters.meant.insert(free, work);
        }
        Ok(letters)
    }

    /// The letter that is pressed for the work of another.
    pub(crate) fn pressed_for(&self, work: char) -> char {
        self.pressed.get(&work).copied().unwrap_or(work)
    }

    /// The letter whose work is meant where one is pressed.
    pub(crate) fn meant_by(&self, pressed: char) -> char {
        self.meant.get(&pressed).copied().unwrap_or(pressed)
    }

    /// Each letter that was moved, and where to, by the alphabet.
    pub(crate) fn all_moved(&self) -> impl Iterator<Item = (char, char)> {
        self.pressed.iter().filter(|(work, pressed)| work != pressed).map(|(work, pressed)| (*work, *pressed))
    }
}

fn letter(written: &str) -> Result<char, LettersFault> {
    let mut letters = written.chars();
    let first = letters.next().filter(char::is_ascii_lowercase);
    first.filter(|_| letters.next().is_none()).ok_or_else(|| LettersFault::NoLetter(written.to_string()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn moved(pairs: &[(&str, &str)]) -> Result<Letters, LettersFault> {
        Letters::moved(pairs.iter().copied())
    }

    #[test]
    fn what_stood_on_the_letter_goes_to_the_one_that_became_free() {
        let letters = moved(&[("c", "v"), ("l", "j")]).unwrap();
        assert_eq!(letters.all_moved().collect::<Vec<_>>(), [('c', 'v'), ('j', 'l'), ('l', 'j'), ('v', 'c')]);
        let around = moved(&[("c", "v"), ("v", "k")]).unwrap();
        assert_eq!((around.meant_by('v'), around.meant_by('k'), around.meant_by('c')), ('c', 'v', 'k'));
        assert_eq!(moved(&[("c", "c")]).unwrap().all_moved().count(), 0);
    }

    #[test]
    fn two_works_on_one_letter_and_what_is_no_letter_are_refused() {
        assert_eq!(moved(&[("c", "v"), ("l", "v")]), Err(LettersFault::Twice('v')));
        for wrong in ["", "C", "ñ", "7", "cc", "F1", " "] {
            assert_eq!(moved(&[("c", wrong)]), Err(LettersFault::NoLetter(wrong.to_string())));
            assert_eq!(moved(&[(wrong, "c")]), Err(LettersFault::NoLetter(wrong.to_string())));
        }
    }

    proptest! {
        #[test]
        fn every_work_has_one_letter_and_every_letter_one_work(pairs in proptest::collection::btree_map("[a-z]", "[a-z]", 0..12)) {
            if let Ok(letters) = Letters::moved(pairs.iter().map(|(work, onto)| (work.as_str(), onto.as_str()))) {
                for letter in 'a'..='z' {
                    prop_assert_eq!(letters.meant_by(letters.pressed_for(letter)), letter);
                    prop_assert_eq!(letters.pressed_for(letters.meant_by(letter)), letter);
                }
                for (work, onto) in &pairs {
                    prop_assert_eq!(letters.pressed_for(work.chars().next().unwrap()).to_string(), onto.clone());
                }
            }
        }
    }
}
