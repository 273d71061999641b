//! A line cut into words, numbers and signs.

use super::lexicon::fold;

/// A piece of the line as typed.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Word {
    /// As it is read: a slip of the pen is brought to the word that was meant.
    pub typed: String,
    /// As it stands in the line.
    pub written: String,
    /// Folded.
    pub folded: String,
    /// Whether a blank stands before it.
    pub apart: bool,
}

impl Word {
    pub fn new(typed: &str, apart: bool) -> Word {
        Word { typed: typed.to_string(), written: typed.to_string(), folded: fold(typed), apart }
    }

    /// The word that was meant in place of this one, which goes on standing in the line as it is.
    pub fn meant(&self, typed: &str) -> Word {
        Word { written: self.written.clone(), ..Word::new(typed, self.apart) }
    }

    /// Whether it is this sign.
    pub fn is(&self, sign: &str) -> bool {
        self.typed == sign
    }

    /// Whether it is a sign that parts what stands around it.
    pub fn is_sign(&self) -> bool {
        matches!(
            self.typed.as_str(),
            "," | ";" | ":" | "." | "-" | "–" | "—" | "(" | ")" | "=" | "/" | "!" | "¡" | "\"" | "|"
        )
    }
}

/// The longest word that is looked at for a unit, bytes.
const LONGEST_PARTED: usize = 24;

/// The most letters of a number that are looked at.
const MOST_OF_A_FIGURE: usize = 16;

const ALONE: &str = ",;:=@()~%?¿!¡\"<>+&|→⇒";

fn ends_word(letters: &[char], i: usize) -> bool {
    let before = i.checked_sub(1).and_then(|j| letters.get(j)).copied();
    let behind = letters.get(i + 1).copied();
    let digits = before.is_some_and(|c| c.is_ascii_digit()) && behind.is_some_and(|c| c.is_ascii_digit());
    match letters[i] {
        letter if letter.is_whitespace() => true,
        ',' | ':' if digits => !is_figure(letters, i),
        '.' => !digits && behind.is_none_or(char::is_whitespace) && !is_title(letters, i),
        '-' => behind == Some('>'),
        letter => ALONE.contains(letter),
    }
}

/// Whether only a number stands before the sign at `i`: in "c1,41" it parts, in "7,5" it does not.
fn is_figure(letters: &[char], i: usize) -> bool {
    let word = letters[..i].iter().rev().take_while(|letter| !letter.is_whitespace());
    word.take(MOST_OF_A_FIGURE).all(|letter| letter.is_ascii_digit() || ".,:/-−".contains(*letter))
}

/// Whether the full stop at `i` belongs to a short title as "Mr.", or to the short name of a month or a weekday.
fn is_title(letters: &[char], i: usize) -> bool {
    let start = letters[..i].iter().rposition(|c| c.is_whitespace()).map_or(0, |j| j + 1);
    let word = fold(&letters[start..i].iter().collect::<String>());
    let is_of_a_day = || {
        let lexicon = super::lexicon::lexicon();
        word.len() > 2 && word.len() < 5 && (lexicon.month(&word).is_some() || lexicon.weekday(&word).is_some())
    };
    matches!(word.as_str(), "mr" | "mrs" | "ms" | "sr" | "sra" | "dr" | "dra") || is_of_a_day()
}

/// Cuts a line into words.
pub(crate) fn words(line: &str) -> Vec<Word> {
    let letters: Vec<char> = line.chars().collect();
    let mut found: Vec<Word> = Vec::new();
    let (mut i, mut apart) = (0, true);
    while i < letters.len() {
        if letters[i].is_whitespace() {
            (i, apart) = (i + 1, true);
            continue;
        }
        let start = i;
        if letters[i] == '-' && letters.get(i + 1) == Some(&'>') {
            i += 2;
        } else if ends_word(&letters, i) {
            i += 1;
        } else {
            i += 1;
            while i < letters.len() && !ends_word(&letters, i) {
                i += 1;
            }
        }
        let typed: String = letters[start..i].iter().collect();
        for (n, piece) in parted(&typed).into_iter().enumerate() {
            found.push(Word::new(&piece, apart && n == 0));
        }
        apart = false;
    }
    found
}

/// Parts a unit from the number it is glued to: "5mm", "3x3", "2h30".
fn parted(typed: &str) -> Vec<String> {
    let number = typed.find(|c: char| !(c.is_ascii_digit() || c == '.' || c == ',')).unwrap_or(typed.len());
    let (figure, rest) = typed.split_at(number);
    if figure.is_empty() || rest.is_empty() || typed.len() > LONGEST_PARTED {
        return vec![typed.to_string()];
    }
    let is_unit = super::lexicon::lexicon().roles(&fold(rest)).iter().any(|role| role.starts_with("units."));
    if is_unit {
        return vec![figure.to_string(), rest.to_string()];
    }
    if let Some(behind) = rest.strip_prefix(['x', 'X', '×']) {
        let more = parted(behind);
        if more.first().is_some_and(|first| first.starts_with(|c: char| c.is_ascii_digit())) {
            let mut pieces = vec![figure.to_string(), "x".to_string()];
            pieces.extend(more);
            return pieces;
        }
    }
    let unit = rest.find(['x', 'X']).filter(|at| *at > 0);
    if let Some(at) = unit {
        let head = parted(&format!("{figure}{}", &rest[..at]));
        if head.len() == 2 && rest[at + 1..].starts_with(|c: char| c.is_ascii_digit()) {
            let mut pieces = head;
            pieces.push("x".to_string());
            pieces.extend(parted(&rest[at + 1..]));
            return pieces;
        }
    }
    vec![typed.to_string()]
}
