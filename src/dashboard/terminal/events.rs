//! Keys from the terminal: what comes in one read is looked at together, because a scanner, a tool bar and a paste are
//! text and no commands.

use ratatui::crossterm::event::{Event, KeyCode, KeyEvent, KeyEventKind, KeyModifiers, poll, read};
use std::sync::mpsc::Sender;
use std::time::Duration;

use super::Happening;
use crate::dashboard::keys::Key;

/// So many printable keys in one read are text.
const TEXT_FROM: usize = 5;

/// Reads until the terminal is gone or nobody listens.
pub(crate) fn read_keys(to: &Sender<Happening>) {
    loop {
        let Ok(first) = read() else {
            let _ = to.send(Happening::TerminalGone);
            return;
        };
        let mut together = vec![first];
        while poll(Duration::ZERO).unwrap_or(false) && together.len() < 10_000 {
            match read() {
                Ok(event) => together.push(event),
                Err(_) => break,
            }
        }
        for happening in sorted_out(together) {
            if to.send(happening).is_err() {
                return;
            }
        }
    }
}

/// What one read means: pasted text and long runs of letters are text, the rest keys.
pub(crate) fn sorted_out(events: Vec<Event>) -> Vec<Happening> {
    let keys: Vec<Happening> = events.into_iter().filter_map(one).collect();
    let mut out = Vec::with_capacity(keys.len());
    let mut run = String::new();
    let mut run_keys: Vec<Happening> = Vec::new();
    let end_run = |run: &mut String, keys: &mut Vec<Happening>, out: &mut Vec<Happening>, entered: bool| {
        if run.chars().count() >= TEXT_FROM {
            if entered {
                run.push('\n');
            }
            out.push(Happening::Text(std::mem::take(run)));
            keys.clear();
            return true;
        }
        run.clear();
        out.append(keys);
        false
    };
    for happening in keys {
        match happening {
            Happening::Key(Key::Char(letter)) => {
                run.push(letter);
                run_keys.push(Happening::Key(Key::Char(letter)));
            }
            // A scanner ends with Enter: it belongs to the text.
            Happening::Key(Key::Enter) => {
                if !end_run(&mut run, &mut run_keys, &mut out, true) {
                    out.push(Happening::Key(Key::Enter));
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

fn one(event: Event) -> Option<Happening> {
    match event {
        Event::Key(key) => key_of(key).map(Happening::Key),
        Event::Paste(text) => Some(Happening::Text(text)),
        Event::Resize(columns, rows) => Some(Happening::Resized(columns, rows)),
        Event::Mouse(mouse) => {
            use ratatui::crossterm::event::MouseEventKind;
            match mouse.kind {
                MouseEventKind::ScrollDown => Some(Happening::Key(Key::Down)),
                MouseEventKind::ScrollUp => Some(Happening::Key(Key::Up)),
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
    use super::*;

    fn typed(text: &str) -> Vec<Event> {
        text.chars()
            .map(|letter| {
                let code = if letter == '\n' { KeyCode::Enter } else { KeyCode::Char(letter) };
                Event::Key(KeyEvent::new(code, KeyModifiers::NONE))
            })
            .collect()
    }

    #[test]
    fn what_a_scanner_types_is_text_and_a_few_keys_are_keys() {
        assert_eq!(sorted_out(typed("cof-031\n")), [Happening::Text("cof-031\n".into())]);
        let keys = sorted_out(typed("41\n"));
        assert_eq!(keys, [Happening::Key(Key::Char('4')), Happening::Key(Key::Char('1')), Happening::Key(Key::Enter)]);
    }

    #[test]
    fn pasted_text_is_text_however_long() {
        let long = "u".repeat(1000);
        assert_eq!(sorted_out(vec![Event::Paste(long.clone())]), [Happening::Text(long)]);
    }
}
