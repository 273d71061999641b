//! Columns by the width that a terminal shows, not by letters or bytes.

use unicode_width::{UnicodeWidthChar, UnicodeWidthStr};

/// The columns a text takes.
pub fn width_of(text: &str) -> usize {
    UnicodeWidthStr::width(text)
}

/// The text with blanks behind it up to a width.
pub fn left_aligned(text: &str, width: usize) -> String {
    format!("{text}{}", " ".repeat(width.saturating_sub(width_of(text))))
}

/// The text with blanks before it up to a width.
pub fn right_aligned(text: &str, width: usize) -> String {
    format!("{}{text}", " ".repeat(width.saturating_sub(width_of(text))))
}

/// A name cut to a width, with … at its end where something is left out. For names only, never for numbers.
pub fn shortened(name: &str, width: usize) -> String {
    if width_of(name) <= width {
        return name.to_string();
    }
    let mut short = String::new();
    let mut taken = 0;
    for letter in name.chars() {
        let columns = letter.width().unwrap_or(0);
        if taken + columns + 1 > width {
            break;
        }
        taken += columns;
        short.push(letter);
    }
    let mut short = short.trim_end().to_string();
    if width > 0 {
        short.push('…');
    }
    short
}

/// The first words of a sentence that fit a width, with ` …` behind them where some are left out; no word is cut unless it
/// is the only one.
pub fn first_words(sentence: &str, width: usize) -> String {
    if width_of(sentence) <= width {
        return sentence.to_string();
    }
    let mut kept = String::new();
    for word in words(sentence) {
        let gap = usize::from(!kept.is_empty());
        if width_of(&kept) + gap + width_of(&word) + 2 > width {
            break;
        }
        kept.push_str(if gap == 1 { " " } else { "" });
        kept.push_str(&word);
    }
    if kept.is_empty() { shortened(sentence, width) } else { format!("{kept} …") }
}

/// The words of a text; a number keeps what it counts or its month beside it.
fn words(text: &str) -> Vec<String> {
    let mut words: Vec<String> = Vec::new();
    let mut after_number = false;
    // A blank that does not break stays inside its word, and is written as a plain one.
    let breaks = |letter: char| letter.is_whitespace() && !matches!(letter, '\u{a0}' | '\u{202f}');
    for word in text.split(breaks).filter(|word| !word.is_empty()) {
        let word = &word.replace(['\u{a0}', '\u{202f}'], " ");
        match words.last_mut().filter(|_| after_number) {
            Some(last) => {
                last.push(' ');
                last.push_str(word);
                after_number = false;
            }
            None => {
                words.push(word.to_string());
                after_number = word.bytes().all(|byte| byte.is_ascii_digit() || matches!(byte, b'.' | b',' | b' '))
                    && word.ends_with(|letter: char| letter.is_ascii_digit());
            }
        }
    }
    words
}

/// The text in lines of at most `width` columns, broken between words and never between a number and its unit; a word
/// longer than a line is broken inside.
pub fn wrapped(text: &str, width: usize) -> Vec<String> {
    let width = width.max(2); // the widest letter takes two columns
    let mut lines = Vec::new();
    let mut line = String::new();
    for word in words(text) {
        let gap = usize::from(!line.is_empty());
        if width_of(&line) + gap + width_of(&word) <= width {
            line.push_str(if gap == 1 { " " } else { "" });
            line.push_str(&word);
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        for letter in word.chars() {
            if width_of(&line) + letter.width().unwrap_or(0) > width {
                lines.push(std::mem::take(&mut line));
            }
            line.push(letter);
        }
    }
    if !line.is_empty() || lines.is_empty() {
        lines.push(line);
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn of_a_sentence_that_is_too_long_whole_words_stay() {
        assert_eq!(first_words("weather: 4.5 mm of rain, 12 °C", 21), "weather: 4.5 mm of …");
        assert_eq!(first_words("weather: 4.5 mm", 15), "weather: 4.5 mm");
        assert_eq!(first_words("weather: 4.5 mm of rain", 13), "weather: …");
        assert_eq!(first_words("Bujuku-Mühlenstrasse", 8), "Bujuku-…");
        for width in 1..30 {
            assert!(width_of(&first_words("note: walked early, soil wet", width)) <= width, "{width}");
        }
    }

    #[test]
    fn columns_count_what_is_seen() {
        assert_eq!(width_of("ñandú"), 5);
        assert_eq!(left_aligned("ñ", 3), "ñ  ");
        assert_eq!(right_aligned("41", 4), "  41");
        assert_eq!(shortened("arabica coffee", 9), "arabica…");
        assert_eq!(shortened("café", 4), "café");
        assert_eq!(wrapped("two days after", 8), vec!["two days", "after"]);
        assert_eq!(wrapped("a dddddd", 4), vec!["a", "dddd", "dd"]);
        assert_eq!(wrapped("wait until 20 Mar 2026", 13), vec!["wait until", "20 Mar 2026"]);
    }

    proptest! {
        #[test]
        fn no_wrapped_line_is_too_wide_and_no_letter_is_lost(text in "[a-zñ日 0-9]{0,120}", width in 2usize..60) {
            let lines = wrapped(&text, width);
            prop_assert!(lines.iter().all(|line| width_of(line) <= width));
            let plain = |text: &str| text.split_whitespace().collect::<String>();
            prop_assert_eq!(plain(&lines.concat()), plain(&text));
        }

        #[test]
        fn no_shortened_name_is_too_wide(name in "[a-zñ日 ]{0,40}", width in 0usize..30) {
            prop_assert!(width_of(&shortened(&name, width)) <= width);
        }
    }
}
