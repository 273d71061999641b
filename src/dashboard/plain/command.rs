//! What can be answered at a stop: by number, by word in the person's language, or by the letter of the screen.

use crate::base::text::folded;
use crate::dashboard::keys::{Key, KeyAction, ON_A_TRAY};
use crate::wording::Wording;

/// An answer at a stop.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Command {
    /// A key of the screen.
    Key(Key),
    /// What can be answered.
    Help,
    /// Leave.
    Quit,
}

/// The numbered answers; the number is the place, from 1. Nought quits.
const NUMBERED: [(Command, Word, char); 10] = [
    (Command::Key(Key::Enter), Word::Does(KeyAction::Usual), '\n'),
    (Command::Key(Key::Char(' ')), Word::Does(KeyAction::Skip), ' '),
    (Command::Key(Key::Down), Word::Next, ' '),
    (Command::Key(Key::Up), Word::Before, ' '),
    (Command::Key(Key::Char('l')), Word::Does(KeyAction::Lost), 'l'),
    (Command::Key(Key::Char('a')), Word::Does(KeyAction::Note), 'a'),
    (Command::Key(Key::Char('y')), Word::Does(KeyAction::Why), 'y'),
    (Command::Key(Key::Char('r')), Word::Does(KeyAction::LetGo), 'r'),
    (Command::Key(Key::Char('u')), Word::Does(KeyAction::Undo), 'u'),
    (Command::Key(Key::Char('b')), Word::Does(KeyAction::WritingDay), 'b'),
];

/// The word of an answer.
#[derive(Clone, Copy)]
enum Word {
    /// As on the screen.
    Does(KeyAction),
    /// The next stop.
    Next,
    /// The stop before.
    Before,
}

impl Word {
    fn message(self, wording: &Wording) -> String {
        match self {
            Word::Does(does) => wording.key_does(&does.to_string()),
            Word::Next => wording.plain_next(),
            Word::Before => wording.plain_before(),
        }
    }
}

impl Command {
    /// The command of an answer; an empty one does the usual.
    pub(crate) fn read(answer: &str, wording: &Wording) -> Option<Command> {
        let wanted = folded(answer);
        if wanted.is_empty() {
            return Some(Command::Key(Key::Enter));
        }
        if matches!(wanted.as_str(), "?" | "h") || wanted == folded(&wording.key_does("help")) {
            return Some(Command::Help);
        }
        if matches!(wanted.as_str(), "0" | "q") || wanted == folded(&wording.plain_quit()) {
            return Some(Command::Quit);
        }
        if let Ok(number) = wanted.parse::<usize>() {
            return NUMBERED.get(number.checked_sub(1)?).map(|(command, ..)| *command);
        }
        let by_letter = |letter: char| wanted.chars().eq([letter]);
        let numbered = NUMBERED.iter().find(|(_, word, letter)| {
            (letter.is_alphabetic() && by_letter(*letter)) || folded(&word.message(wording)) == wanted
        });
        if let Some((command, ..)) = numbered {
            return Some(*command);
        }
        let on_a_tray = ON_A_TRAY
            .iter()
            .find(|line| folded(line.keys) == wanted || folded(&wording.key_does(&line.does.to_string())) == wanted);
        on_a_tray.and_then(|line| line.keys.chars().next()).map(|letter| Command::Key(Key::Char(letter)))
    }

    /// What can be answered, a line each.
    pub(crate) fn listed(wording: &Wording) -> Vec<String> {
        let mut lines: Vec<String> = NUMBERED
            .iter()
            .enumerate()
            .map(|(i, (_, word, letter))| {
                let message = word.message(wording);
                if letter.is_alphabetic() {
                    format!("{} {message} ({letter})", i + 1)
                } else {
                    format!("{} {message}", i + 1)
                }
            })
            .collect();
        lines.push(format!("0 {}", wording.plain_quit()));
        let also: Vec<String> = ON_A_TRAY
            .iter()
            .map(|line| format!("{} ({})", wording.key_does(&line.does.to_string()), line.keys))
            .collect();
        lines.push(wording.plain_also(also.join(", ")));
        lines.push(wording.plain_empty_does());
        lines
    }
}

/// Whether an answer is a yes, in either language.
pub(crate) fn is_yes(answer: &str) -> bool {
    matches!(folded(answer).as_str(), "y" | "yes" | "s" | "si")
}
