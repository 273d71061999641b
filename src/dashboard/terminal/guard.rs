//! The terminal taken and given back: raw, the other screen, pasted text marked, the cursor away. Whatever happens, it is
//! given back as it was.

use ratatui::crossterm::cursor::{Hide, Show};
use ratatui::crossterm::event::{DisableBracketedPaste, DisableMouseCapture, EnableBracketedPaste, EnableMouseCapture};
use ratatui::crossterm::execute;
use ratatui::crossterm::terminal::{EnterAlternateScreen, LeaveAlternateScreen, disable_raw_mode, enable_raw_mode};
use std::io::{self, stdout};
use std::sync::atomic::{AtomicBool, Ordering};

/// Whether the terminal is ours at the moment; shared with the panic hook and the thread of signals.
static TAKEN: AtomicBool = AtomicBool::new(false);

/// The terminal while it is ours; given back when it is dropped.
pub struct Guard;

impl Guard {
    /// Takes the terminal.
    pub fn take() -> io::Result<Guard> {
        enable_raw_mode()?;
        TAKEN.store(true, Ordering::SeqCst);
        execute!(stdout(), EnterAlternateScreen, EnableBracketedPaste, Hide)?;
        Ok(Guard)
    }
}

impl Drop for Guard {
    fn drop(&mut self) {
        give_back();
    }
}

/// Gives the terminal back, once; safe to call from anywhere. What cannot be written any more is given up: there is nobody
/// left to see it.
pub fn give_back() {
    if TAKEN.swap(false, Ordering::SeqCst) {
        let _ = execute!(stdout(), DisableMouseCapture, DisableBracketedPaste, Show, LeaveAlternateScreen);
        let _ = disable_raw_mode();
    }
}

/// The mouse on or off.
pub fn mouse(on: bool) -> io::Result<()> {
    if on { execute!(stdout(), EnableMouseCapture) } else { execute!(stdout(), DisableMouseCapture) }
}

/// A panic on any thread gives the terminal back before it is told.
pub fn restore_on_panic() {
    let told = std::panic::take_hook();
    std::panic::set_hook(Box::new(move |panic| {
        give_back();
        told(panic);
    }));
}
