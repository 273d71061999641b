//! A finger on the screen, or a mouse: what stands under it in the frame is what is meant. Names of keys in the last line
//! are those keys, the screens in the first line are those screens, and a line that names something chooses it; a second
//! tap on what is chosen is Enter.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::act::ScreenName;
use super::frame::{self, BETWEEN_KEYS};
use super::keys::Key;
use super::model::Model;
use crate::wording::Wording;

/// What is meant by a tap.
#[derive(Clone, PartialEq, Debug)]
pub(crate) enum Tapped {
    /// A key that is named there.
    Key(Key),
    /// A screen.
    Screen(ScreenName),
    /// A line of the screen, to be looked at for what it names.
    Line(String),
    /// Nothing.
    Nothing,
}

/// What stands at a column and row of the frame as it is drawn now.
pub(crate) fn tapped(model: &Model, column: u16, row: u16) -> Tapped {
    let area = Rect::new(0, 0, model.size.0, model.size.1);
    if column >= area.width || row >= area.height {
        return Tapped::Nothing;
    }
    let mut buffer = Buffer::empty(area);
    frame::draw(model, &mut buffer);
    let letters: Vec<char> = (0..area.width)
        .map(|x| buffer.cell((x, row)).and_then(|cell| cell.symbol().chars().next()).unwrap_or(' '))
        .collect();
    let at = usize::from(column);
    if row == 0 && model.layers.is_empty() {
        let digit = letters[..=at].iter().rev().find(|letter| letter.is_ascii_digit());
        let place = digit.and_then(|digit| digit.to_digit(10)).and_then(|digit| (digit as usize).checked_sub(1));
        return place
            .and_then(|place| ScreenName::ALL.get(place))
            .map_or(Tapped::Nothing, |name| Tapped::Screen(*name));
    }
    if row + 1 == area.height {
        return key_at(&letters, at, &model.wording).map_or(Tapped::Nothing, Tapped::Key);
    }
    if model.layers.is_empty() { Tapped::Line(letters.into_iter().collect()) } else { Tapped::Nothing }
}

/// The key whose name or word stands at a place of the last line.
fn key_at(letters: &[char], at: usize, wording: &Wording) -> Option<Key> {
    let (before, behind): (String, String) = (letters[..at].iter().collect(), letters[at..].iter().collect());
    let begin = before.rfind(BETWEEN_KEYS).map_or(0, |place| place + BETWEEN_KEYS.len());
    let end = behind.find(BETWEEN_KEYS).unwrap_or(behind.len());
    let named = format!("{}{}", &before[begin..], &behind[..end]);
    // A form says its keys in sentences: the last one named up to the finger is meant.
    let words: Vec<&str> = named.split([' ', ':', '.', ',']).filter(|word| !word.is_empty()).collect();
    let reached = before[begin..].chars().count();
    let mut meant = words.first().and_then(|word| key_named(word, wording));
    let mut passed = 0;
    for word in named.split(' ') {
        passed += word.chars().count() + 1;
        let bare = word.trim_end_matches([':', ',', '.']);
        if bare.chars().count() > 1
            && passed <= reached + word.chars().count() + 1
            && let Some(key) = key_named(bare, wording)
        {
            meant = Some(key);
        }
    }
    meant
}

fn key_named(word: &str, wording: &Wording) -> Option<Key> {
    match word {
        "Enter" => Some(Key::Enter),
        "Esc" => Some(Key::Esc),
        "Tab" => Some(Key::Tab),
        _ if word == wording.keys_space() => Some(Key::Char(' ')),
        _ => {
            let mut letters = word.chars();
            letters.next().filter(|_| letters.next().is_none()).map(Key::Char)
        }
    }
}
