//! Keys from the terminal: what comes in one read is looked at together, because a scanner, a tool bar and a paste are
//! text and no commands.

use ratatui::crossterm::event::{Event, KeyCode, KeyEvent, KeyEventKind, KeyModifiers, poll, read};
use std::sync::mpsc::Sender;
use std::time::Duration;

use super::{Happening, Left};
use crate::dashboard::keys::Key;
use crate::dashboard::message::Message;

/// So many printable keys in one read are text.
const TEXT_FROM: usize = 5;

/// Reads until the terminal is gone or nobody listens.
pub(crate) fn read_keys(to: &Sender<Happening>) {
    loop {
        let Ok(first) = read() else {
            let _ = to.send(Happening::End(Left::TerminalGone));
            return;
        };
        let mut together = vec![first];
        while poll(Duration::ZERO).unwrap_or(false) && together.len() < 10_000 {
            match read() {
                Ok(event) => together.push(event),
                Err(_) => break,
            }
        }
        for message in sorted_out(together) {
            if to.send(Happening::Message(message)).is_err() {
                return;
            }
        }
    }
}

/// What one read means: pasted text and long runs of letters are text, the rest keys.
pub(crate) fn sorted_out(events: Vec<Event>) -> Vec<Message> {
    let keys: Vec<Message> = events.into_iter().filter_map(one).collect();
    let mut out = Vec::with_capacity(keys.len());
    let mut run = String::new();
    let mut run_keys: Vec<Message> = Vec::new();
    let end_run = |run: &mut String, keys: &mut Vec<Message>, out: &mut Vec<Message>, entered: bool| {
        if run.chars().count() >= TEXT_FROM {
            if entered {
                run.push('\n');
            }
            out.push(Message::Text(std::mem::take(run)));
            keys.clear();
            return true;
        }
        run.clear();
        out.append(keys);
        false
    };
    for message in keys {
        match message {
            Message::Key(Key::Char(letter)) => {
                run.push(letter);
                run_keys.push(Message::Key(Key::Char(letter)));
            }
            // A scanner ends with Enter: it belongs to the text.
            Message::Key(Key::Enter) => {
                if !end_run(&mut run, &mut run_keys, &mut out, true) {
                    out.push(Message::Key(Key::Enter));
                }
            }
            other => {
                end_run(&mut run, &mut run_keys, &mut out, false);
                out.push(other);
            }
        }
    }
    end_run(&mut run, &mut run_keys, &mut out, false);
    out
}

fn one(event: Event) -> Option<Message> {
    match event {
        Event::Key(key) => key_of(key).map(Message::Key),
        Event::Paste(text) => Some(Message::Text(text)),
        Event::Resize(columns, rows) => Some(Message::Resized(columns, rows)),
        Event::Mouse(mouse) => {
            use ratatui::crossterm::event::{MouseButton, MouseEventKind};
            match mouse.kind {
                MouseEventKind::ScrollDown => Some(Message::Key(Key::Down)),
                MouseEventKind::ScrollUp => Some(Message::Key(Key::Up)),
                MouseEventKind::Down(MouseButton::Left) => Some(Message::Tap(mouse.column, mouse.row)),
                _ => None,
            }
        }
        Event::FocusGained | Event::FocusLost => None,
    }
}

fn key_of(key: KeyEvent) -> Option<Key> {
    if key.kind == KeyEventKind::Release {
        return None;
    }
    let control = key.modifiers.contains(KeyModifiers::CONTROL);
    let alt = key.modifiers.contains(KeyModifiers::ALT);
    Some(match key.code {
        KeyCode::Char('c') if control => Key::Interrupt,
        KeyCode::Char('z') if control => Key::Suspend,
        KeyCode::Char('l') if control => Key::Redraw,
        KeyCode::Char('u') if control => Key::ClearLine,
        // AltGr comes as Ctrl and Alt together on some systems, and then the letter is meant.
        KeyCode::Char(_) if control != alt => return None,
        KeyCode::Char(letter) => Key::Char(letter),
        KeyCode::Enter => Key::Enter,
        KeyCode::Esc => Key::Esc,
        KeyCode::Tab => Key::Tab,
        KeyCode::BackTab => Key::BackTab,
        KeyCode::Up => Key::Up,
        KeyCode::Down => Key::Down,
        KeyCode::Left => Key::Left,
        KeyCode::Right => Key::Right,
        KeyCode::Home => Key::Home,
        KeyCode::End => Key::End,
        KeyCode::PageUp => Key::PageUp,
        KeyCode::PageDown => Key::PageDown,
        KeyCode::Backspace => Key::Backspace,
        KeyCode::Delete => Key::Delete,
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn typed(text: &str) -> Vec<Event> {
        text.chars()
            .map(|letter| {
                let code = if letter == '\n' { KeyCode::Enter } else { KeyCode::Char(letter) };
                Event::Key(KeyEvent::new(code, KeyModifiers::NONE))
            })
            .collect()
    }

    /// Messages can hold answers, which are not compared: what they are is.
    fn assert_are(messages: &[Message], wanted: &[Message]) {
        assert_eq!(format!("{messages:?}"), format!("{wanted:?}"));
    }

    #[test]
    fn what_a_scanner_types_is_text_and_a_few_keys_are_keys() {
        assert_are(&sorted_out(typed("cof-031\n")), &[Message::Text("cof-031\n".into())]);
        let keys = sorted_out(typed("41\n"));
        assert_are(&keys, &[Key::Char('4'), Key::Char('1'), Key::Enter].map(Message::Key));
    }

    #[test]
    fn pasted_text_is_text_however_long() {
        let long = "u".repeat(1000);
        assert_are(&sorted_out(vec![Event::Paste(long.clone())]), &[Message::Text(long)]);
    }

    fn any_event() -> impl Strategy<Value = Event> {
        let code = prop_oneof![
            4 => any::<char>().prop_map(KeyCode::Char),
            4 => "[a-z0-9 .,-]".prop_map(|text| KeyCode::Char(text.chars().next().unwrap_or(' '))),
            2 => Just(KeyCode::Enter),
            1 => proptest::sample::select(vec![
                KeyCode::Esc, KeyCode::Tab, KeyCode::BackTab, KeyCode::Up, KeyCode::Home, KeyCode::Backspace, KeyCode::Null,
                KeyCode::CapsLock, KeyCode::Menu, KeyCode::F(7),
            ]),
        ];
        let kind = prop_oneof![9 => Just(KeyEventKind::Press), 1 => Just(KeyEventKind::Release)];
        let modifiers =
            prop_oneof![8 => Just(KeyModifiers::NONE), 2 => any::<u8>().prop_map(KeyModifiers::from_bits_truncate)];
        let key = (code, modifiers, kind)
            .prop_map(|(code, modifiers, kind)| Event::Key(KeyEvent { kind, ..KeyEvent::new(code, modifiers) }));
        prop_oneof![
            12 => key,
            1 => any::<String>().prop_map(Event::Paste),
            1 => any::<(u16, u16)>().prop_map(|(columns, rows)| Event::Resize(columns, rows)),
            1 => Just(Event::FocusLost),
        ]
    }

    proptest! {
        #[test]
        fn no_events_make_it_panic_and_no_letter_is_lost_or_comes_twice(
            events in proptest::collection::vec(any_event(), 0..40),
        ) {
            let letters = |messages: &[Message]| -> String {
                let one = |message: &Message| match message {
                    Message::Key(Key::Char(letter)) => letter.to_string(),
                    Message::Key(Key::Enter) => "\n".to_string(),
                    Message::Text(text) => text.clone(),
                    _ => String::new(),
                };
                messages.iter().map(one).collect()
            };
            let one_by_one: Vec<Message> = events.iter().cloned().filter_map(one).collect();
            prop_assert_eq!(letters(&sorted_out(events)), letters(&one_by_one));
        }
    }
}
