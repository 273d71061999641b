//! Text from people and files: what cannot be seen is found, removed or shown, and words are compared without
//! accents or case.

use unicode_normalization::UnicodeNormalization;
use unicode_normalization::char::is_combining_mark;

/// Whether a character is a control, bidirectional, zero-width or tag character: one that acts on a terminal or
/// hides in a name instead of being read.
pub fn is_unseen(letter: char) -> bool {
    letter.is_control()
        || matches!(letter,
            '\u{00ad}' | '\u{061c}' | '\u{180e}' | '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}'
            | '\u{2060}'..='\u{206f}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}' | '\u{e0000}'..='\u{e007f}')
}

/// Whether the text holds any character that [`is_unseen`].
pub fn has_unseen(text: &str) -> bool {
    text.chars().any(is_unseen)
}

/// The text with unseen characters taken out; line ends and tabs become one blank.
pub fn cleaned(text: &str) -> String {
    text.chars()
        .filter_map(|letter| match letter {
            '\n' | '\r' | '\t' => Some(' '),
            other if is_unseen(other) => None,
            other => Some(other),
        })
        .collect()
}

/// The text with unseen characters made visible as `\u{..}`, for messages that name the fault.
pub fn shown(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        if is_unseen(letter) {
            out.push_str(&format!("\\u{{{:x}}}", letter as u32));
        } else {
            out.push(letter);
        }
    }
    out
}

/// Whether letters of the Latin alphabet stand among letters of the Greek or Cyrillic one in one word, which look like them
/// (Unicode Technical Standard 39, "mixed-script confusables"): such a name is a slip of the keyboard.
pub fn mixes_alphabets(text: &str) -> bool {
    let is_latin = |letter: char| letter.is_ascii_alphabetic() || ('\u{c0}'..='\u{24f}').contains(&letter);
    let looks_latin = |letter: char| ('\u{370}'..='\u{52f}').contains(&letter);
    let mixes = |word: &str| word.contains(is_latin) && word.contains(looks_latin);
    text.split(|letter: char| !letter.is_alphabetic()).any(mixes)
}

/// The text in lower case without accents, blanks and underscores as hyphens, for comparing what people wrote.
pub fn folded(text: &str) -> String {
    if text.is_ascii() {
        // Nothing to take apart: the same, several times faster.
        let plain = |letter| if letter == ' ' || letter == '_' { '-' } else { letter };
        return text.trim().chars().map(|letter| plain(letter.to_ascii_lowercase())).collect();
    }
    text.trim()
        .nfd()
        .filter(|letter| !is_combining_mark(*letter))
        .flat_map(char::to_lowercase)
        .map(|letter| if letter == ' ' || letter == '_' { '-' } else { letter })
        .collect()
}

/// One screen cell's text in ASCII: accents dropped, the marks this program draws as letters, anything else as `?`. As
/// wide as before for narrow letters.
pub fn in_ascii(text: &str) -> String {
    text.nfd()
        .filter(|letter| !is_combining_mark(*letter))
        .map(|letter| match letter {
            letter if letter.is_ascii() => letter,
            '●' | '•' => '*',
            '○' | '◦' => 'o',
            '■' | '█' | '▓' => '#',
            '□' => 'o',
            '▲' | '△' => '^',
            '▼' => 'v',
            '◆' | '◇' | '★' => '*',
            '√' | '✚' => '+',
            '▶' | '›' | '→' => '>',
            '◀' | '‹' | '←' => '<',
            '↑' => '^',
            '↓' => 'v',
            '▒' => '+',
            '░' | '·' => '.',
            '▁' | '▂' => '_',
            '▃' | '▄' | '▅' => '=',
            '▆' | '▇' => '#',
            '─' | '–' | '—' | '−' => '-',
            '│' => '|',
            '×' => 'x',
            '…' => '~',
            '“' | '”' | '«' | '»' => '"',
            '‘' | '’' => '\'',
            '¿' => '?',
            '¡' => '!',
            '≥' => '>',
            '≤' => '<',
            '±' => '~',
            'º' | '°' => 'o',
            '½' => '/',
            _ => '?',
        })
        .collect()
}

/// A name as it is typed on a command line: in quotes where it holds a blank.
pub(crate) fn as_argument(name: &str) -> String {
    if name.contains(' ') { format!("\"{name}\"") } else { name.to_string() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn unseen_characters_are_found_removed_and_shown() {
        let text = "cof\u{202e}\u{1b}[31m\u{e0041}-031";
        assert!(has_unseen(text));
        assert_eq!(cleaned(text), "cof[31m-031");
        assert_eq!(shown("a\u{200b}b"), "a\\u{200b}b");
        assert!(!has_unseen("Bandeja n.º 3, ñandú"));
    }

    #[test]
    fn words_are_compared_without_accents_or_case() {
        assert_eq!(folded("Limón Real"), "limon-real");
        assert_eq!(folded("WASHED_MOIST"), folded("washed moist"));
    }
}
