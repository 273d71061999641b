//! Numbers as people write them: figures, words, dozens, decimal commas, 15k.

use super::lexicon::lexicon;
use super::words::Word;

/// A number that was read and how many words it took.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Figure {
    pub value: f64,
    pub words: usize,
    /// "un", "one": an article as much as a number.
    pub is_weak: bool,
    /// "half", "a third".
    pub is_part: bool,
    /// A minus sign at the number.
    pub is_minus: bool,
}

/// A number in figures: 12, 7.5, 7,5, 1,200, 1.200, 15k.
pub(crate) fn in_figures(text: &str) -> Option<f64> {
    let (text, times) = match text.strip_suffix(['k', 'K']) {
        Some(bare) => (bare, 1000.0),
        None => (text, 1.0),
    };
    let digits = |part: &str| !part.is_empty() && part.len() <= 9 && part.bytes().all(|b| b.is_ascii_digit());
    if digits(text) {
        return text.parse::<f64>().ok().map(|value| value * times);
    }
    let at = text.find(['.', ','])?;
    let (whole, rest) = (&text[..at], &text[at + 1..]);
    if !digits(whole) || !digits(rest) {
        return None;
    }
    let is_thousands = rest.len() == 3 && whole != "0" && whole.len() <= 3;
    let joined = if is_thousands { format!("{whole}{rest}") } else { format!("{whole}.{rest}") };
    joined.parse::<f64>().ok().map(|value| value * times)
}

/// Parts in figures.
const PARTS: [(&str, f64); 6] = [("1/2", 0.5), ("1/4", 0.25), ("3/4", 0.75), ("½", 0.5), ("¼", 0.25), ("¾", 0.75)];

/// Parts in words.
const PARTS_IN_WORDS: [(&str, f64); 5] = [
    ("numbers.half", 0.5),
    ("numbers.third", 1.0 / 3.0),
    ("numbers.quarter", 0.25),
    ("numbers.fifth", 0.2),
    ("numbers.tenth", 0.1),
];

/// How many a dozen or a gross are.
fn set_of(word: &str) -> Option<f64> {
    match () {
        () if lexicon().is(word, "numbers.dozen") => Some(12.0),
        () if lexicon().is(word, "numbers.gross") => Some(144.0),
        () => None,
    }
}

fn folded(words: &[Word], i: usize) -> &str {
    words.get(i).map_or("", |word| word.folded.as_str())
}

fn whole(value: f64, words: usize) -> Option<Figure> {
    Some(Figure { value, words, is_weak: false, is_part: false, is_minus: false })
}

/// The number that begins at `i`.
pub(crate) fn number_at(words: &[Word], i: usize) -> Option<Figure> {
    let typed = words.get(i)?.typed.as_str();
    if let Some(value) = typed.strip_prefix(['-', '−']).and_then(in_figures) {
        return Some(Figure { is_minus: true, ..whole(value, 1)? });
    }
    if typed == "-" && words.get(i + 1).is_some_and(|next| !next.apart) {
        let value = in_figures(&words.get(i + 1)?.typed)?;
        return Some(Figure { is_minus: true, ..whole(value, 2)? });
    }
    let lexicon = lexicon();
    // "each 3rd day".
    let ordinal = ["st", "nd", "rd", "th"].iter().find_map(|ending| typed.strip_suffix(ending)).and_then(in_figures);
    if let Some(value) = ordinal.filter(|_| lexicon.is(folded(words, i + 1), "units.day")) {
        return whole(value, 1);
    }
    let behind = folded(words, i + 1);
    if let Some(part) = PARTS.iter().find(|(written, _)| *written == typed).map(|(_, part)| *part) {
        // "1/2" alone is a day.
        let is_of = lexicon.roles(behind).iter().any(|role| role.starts_with("units."));
        return match set_of(behind) {
            Some(set) => whole(part * set, 2),
            None if is_of || !typed.contains('/') => Some(Figure { is_part: true, ..whole(part, 1)? }),
            None => None,
        };
    }
    // "1 in 10".
    let is_one_of_so_many = matches!(behind, "in" | "de") && typed == "1";
    if let Some(part) = in_words(words, i).filter(|figure| is_one_of_so_many && figure.is_part) {
        return Some(part);
    }
    let Some(value) = in_figures(typed) else { return in_words(words, i) };
    match () {
        () if set_of(behind).is_some() => whole(value * set_of(behind)?, 2),
        () if lexicon.is(behind, "numbers.thousand") => whole(value * 1000.0, 2),
        () => whole(value, 1),
    }
}

fn in_words(words: &[Word], i: usize) -> Option<Figure> {
    let lexicon = lexicon();
    let here = folded(words, i);
    for length in (1..=4).rev() {
        let Some(phrase) = words.get(i..i + length) else { continue };
        let phrase = phrase.iter().map(|word| word.folded.as_str()).collect::<Vec<_>>().join(" ");
        if let Some((_, value)) = PARTS_IN_WORDS.into_iter().find(|(role, _)| lexicon.is(&phrase, role)) {
            if let Some(set) = set_of(folded(words, i + length)) {
                return whole(value * set, length + 1);
            }
            return Some(Figure { is_part: true, ..whole(value, length)? });
        }
        if let Some(set) = set_of(&phrase) {
            return whole(set, length);
        }
        if lexicon.is(&phrase, "numbers.pair") {
            return whole(2.0, length);
        }
    }
    let takes_article = here == "a" || here == "un" || here == "una";
    if takes_article && let Some(set) = set_of(folded(words, i + 1)) {
        return whole(set, 2);
    }
    if takes_article && (lexicon.is(folded(words, i + 1), "numbers.pair")) {
        return whole(2.0, 2);
    }
    if takes_article && lexicon.is(folded(words, i + 1), "numbers.hundred") {
        return counted_out(words, i + 1).map(|figure| Figure { words: figure.words + 1, ..figure });
    }
    counted_out(words, i)
}

/// The value of one word: "thirty-two" is one as well.
fn of_word(word: &str) -> Option<f64> {
    let lexicon = lexicon();
    if let Some(value) = lexicon.figure(word) {
        return Some(value);
    }
    let (tens, unit) = word.split_once(' ')?;
    let (tens, unit) = (lexicon.figure(tens)?, lexicon.figure(unit)?);
    ((20.0..100.0).contains(&tens) && unit < 10.0).then_some(tens + unit)
}

fn counted_out(words: &[Word], i: usize) -> Option<Figure> {
    let lexicon = lexicon();
    let (mut total, mut last, mut j) = (0.0, f64::INFINITY, i);
    while let Some(word) = words.get(j) {
        let here = word.folded.as_str();
        // "treinta y una" is one number, "veintidós y una" are two.
        let joins = (here == "y" || here == "and") && j > i && last > 9.0 && last % 10.0 == 0.0;
        if joins && of_word(folded(words, j + 1)).is_some_and(|next| next < 10.0 || last >= 100.0) {
            j += 1;
            continue;
        }
        let value = match () {
            () if lexicon.is(here, "numbers.hundred") && j > i && total < 10.0 => 100.0 * total - total,
            () if lexicon.is(here, "numbers.hundred") && j == i => 100.0,
            () if lexicon.is(here, "numbers.thousand") && j > i => 1000.0 * total - total,
            () if lexicon.is(here, "numbers.thousand") && j == i => 1000.0,
            () => match of_word(here) {
                Some(value) if j == i || (last > 19.0 && value < last && !(last < 100.0 && value > 9.0)) => value,
                _ => break,
            },
        };
        total += value;
        last = if lexicon.is(here, "numbers.hundred") || lexicon.is(here, "numbers.thousand") { 100.0 } else { value };
        j += 1;
    }
    if j == i {
        return None;
    }
    if let Some(set) = set_of(folded(words, j)) {
        return whole(total * set, j + 1 - i);
    }
    let is_weak = j == i + 1 && matches!(folded(words, i), "one" | "un" | "una" | "uno");
    Some(Figure { is_weak, ..whole(total, j - i)? })
}
