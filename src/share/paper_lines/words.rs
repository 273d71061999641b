//! The words of a typed line with their columns.

use crate::base::text;

/// A word and the column it begins at, in characters from 1.
#[derive(Clone, Debug, PartialEq)]
struct TypedWord {
    text: String,
    column: usize,
}

/// The words of a line, or of the rest of it. A word that begins with `#` ends the line.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Words {
    words: Vec<TypedWord>,
    line: String,
}

/// Signs that begin a word of their own.
fn is_sign(letter: char) -> bool {
    matches!(letter, '>' | '@' | '~' | '\u{2248}')
}

/// Whether a comma or semicolon parts two words: not where it is the decimal sign of a number.
fn parts_words(letter: char, before: &str, next: Option<char>) -> bool {
    let in_number = !before.is_empty()
        && !before.chars().any(char::is_alphabetic)
        && next.is_some_and(|next| next.is_ascii_digit());
    letter == ';' || (letter == ',' && !in_number)
}

impl Words {
    /// Splits a line at blanks, at the signs `>` `>>` `@` `~`, and at commas and semicolons that are not decimal ones.
    pub fn of(line: &str) -> Words {
        let mut words: Vec<TypedWord> = Vec::new();
        let mut open = false;
        let mut letters = line.chars().enumerate().peekable();
        while let Some((i, letter)) = letters.next() {
            let column = i + 1;
            let next = letters.peek().map(|(_, next)| *next);
            let parts = || {
                let before = words.last().filter(|_| open).map_or("", |last: &TypedWord| last.text.as_str());
                parts_words(letter, before, next)
            };
            if letter.is_whitespace() || parts() {
                open = false;
            } else if letter == '#' && !open {
                break;
            } else if is_sign(letter) {
                let doubles = letter == '>'
                    && !open
                    && words.last().is_some_and(|last| last.text == ">" && last.column + 1 == column);
                match words.last_mut() {
                    Some(last) if doubles => last.text.push(letter),
                    Some(_) | None => words.push(TypedWord { text: letter.to_string(), column }),
                }
                open = false;
            } else {
                match words.last_mut() {
                    Some(last) if open => last.text.push(letter),
                    Some(_) | None => words.push(TypedWord { text: letter.to_string(), column }),
                }
                open = true;
            }
        }
        Words { words, line: line.to_string() }
    }

    /// The whole line as typed.
    pub fn raw(&self) -> &str {
        &self.line
    }

    pub fn len(&self) -> usize {
        self.words.len()
    }

    /// A word.
    pub fn get(&self, at: usize) -> Option<&str> {
        self.words.get(at).map(|word| word.text.as_str())
    }

    /// A word, folded; empty where there is none.
    pub fn folded(&self, at: usize) -> String {
        self.get(at).map(text::folded).unwrap_or_default()
    }

    /// The column of a word.
    pub fn column(&self, at: usize) -> Option<usize> {
        self.words.get(at).map(|word| word.column)
    }

    /// The column of the first word, or behind the line where there is none.
    pub fn begin(&self) -> usize {
        self.column(0).unwrap_or_else(|| self.line.trim_end().chars().count() + 1)
    }

    /// The words from one on.
    pub fn after(&self, taken: usize) -> Words {
        Words { words: self.words.iter().skip(taken).cloned().collect(), line: self.line.clone() }
    }

    /// So many words from one on, with single blanks between them.
    pub fn joined(&self, from: usize, count: usize) -> Option<String> {
        let words = self.words.get(from..from + count)?;
        Some(words.iter().map(|word| word.text.as_str()).collect::<Vec<_>>().join(" "))
    }

    /// The words as slices of text.
    pub fn each(&self) -> impl Iterator<Item = &str> {
        self.words.iter().map(|word| word.text.as_str())
    }

    /// What stands in the line from a word to the last, as it was typed.
    pub fn typed_from(&self, at: usize) -> String {
        let (Some(first), Some(last)) = (self.words.get(at), self.words.last()) else { return String::new() };
        let end = last.column - 1 + last.text.chars().count();
        self.line.chars().skip(first.column - 1).take((end + 1).saturating_sub(first.column)).collect()
    }

    /// How many words a name takes where they begin with it; a colon or comma behind it does not count.
    pub fn begin_with(&self, name: &str) -> Option<usize> {
        let of_name = Words::of(name);
        let count = of_name.len();
        let same = |i: usize, word: &TypedWord| {
            let wanted = text::folded(&word.text);
            let here = self.folded(i);
            here == wanted || (i + 1 == count && here.strip_suffix([':', ',']) == Some(wanted.as_str()))
        };
        (count > 0 && of_name.words.iter().enumerate().all(|(i, word)| same(i, word))).then_some(count)
    }

    /// The words up to the first sign, or number behind the first: what a person meant as the name.
    pub fn name_like(&self) -> String {
        let begins_rest =
            |word: &str| word.starts_with(|letter: char| is_sign(letter) || letter == '-' || letter.is_ascii_digit());
        let first = usize::from(self.get(0).is_some_and(|word| !word.starts_with(is_sign)));
        let more = self.each().skip(first).take_while(|word| !begins_rest(word)).count();
        let taken = (first + more).clamp(1, 4).min(self.len().max(1));
        self.each().take(taken).collect::<Vec<_>>().join(" ")
    }
}
