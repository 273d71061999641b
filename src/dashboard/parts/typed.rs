//! One line of typed text with a place to type at.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;
use ratatui::style::{Modifier, Style};

use crate::base::columns::width_of;
use crate::base::text::cleaned;
use crate::dashboard::keys::Key;

/// The longest text a line takes, in letters; what is pasted beyond it is left out.
const LONGEST: usize = 2000;

/// A line to type in.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub(crate) struct Typed {
    letters: Vec<char>,
    at: usize,
}

impl Typed {
    /// A line that already holds a text.
    pub(crate) fn of(text: &str) -> Typed {
        let mut typed = Typed::default();
        typed.insert(text);
        typed
    }

    /// What was typed.
    pub(crate) fn text(&self) -> String {
        self.letters.iter().collect()
    }

    /// Whether nothing was typed.
    pub(crate) fn is_empty(&self) -> bool {
        self.letters.is_empty()
    }

    /// Takes typed or pasted text; unseen characters never enter.
    pub(crate) fn insert(&mut self, text: &str) {
        for letter in cleaned(text).chars() {
            if self.letters.len() < LONGEST {
                self.letters.insert(self.at, letter);
                self.at += 1;
            }
        }
    }

    /// Empties the line.
    pub(crate) fn clear(&mut self) {
        *self = Typed::default();
    }

    /// Takes a key; the answer says whether it meant anything here.
    pub(crate) fn press(&mut self, key: Key) -> bool {
        match key {
            Key::Char(letter) => self.insert(letter.encode_utf8(&mut [0; 4])),
            Key::Backspace if self.at > 0 => {
                self.at -= 1;
                self.letters.remove(self.at);
            }
            Key::Delete if self.at < self.letters.len() => {
                self.letters.remove(self.at);
            }
            Key::ClearLine => self.clear(),
            Key::Left => self.at = self.at.saturating_sub(1),
            Key::Right => self.at = (self.at + 1).min(self.letters.len()),
            Key::Home => self.at = 0,
            Key::End => self.at = self.letters.len(),
            Key::Backspace | Key::Delete => {}
            _ => return false,
        }
        true
    }

    /// Draws it; the place to type at is always in view and shown in reverse while the line has the keys.
    pub(crate) fn draw(&self, area: Rect, buffer: &mut Buffer, has_keys: bool) {
        let room = usize::from(area.width);
        if room == 0 || area.height == 0 {
            return;
        }
        let before: String = self.letters[..self.at].iter().collect();
        let mut from = 0;
        while width_of(&before.chars().skip(from).collect::<String>()) + 1 > room {
            from += 1;
        }
        let shown: String = self.letters[from.min(self.letters.len())..].iter().collect();
        buffer.set_stringn(area.x, area.y, &shown, room, Style::new());
        if has_keys {
            let column = width_of(&before.chars().skip(from).collect::<String>()) as u16;
            if let Some(cell) = buffer.cell_mut((area.x + column.min(area.width - 1), area.y)) {
                cell.modifier.insert(Modifier::REVERSED);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_go_in_and_out_where_the_mark_stands() {
        let mut typed = Typed::of("cof-31");
        for key in [Key::Left, Key::Left, Key::Char('0'), Key::End, Key::Backspace, Key::Char('2')] {
            assert!(typed.press(key));
        }
        assert_eq!(typed.text(), "cof-032");
    }

    #[test]
    fn ctrl_u_empties_the_line() {
        let mut typed = Typed::of("cof-31");
        assert!(typed.press(Key::ClearLine));
        assert!(typed.is_empty());
    }

    #[test]
    fn what_is_unseen_never_enters() {
        let mut typed = Typed::default();
        typed.insert("a\u{202e}b\u{1b}[2J\nc");
        assert_eq!(typed.text(), "ab[2J c");
    }
}
