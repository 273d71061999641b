//! The terminal taken and given back: raw, the other screen, pasted text marked, the cursor away. Whatever happens, it is
//! given back as it was.

use ratatui::crossterm::cursor::{Hide, Show};
use ratatui::crossterm::event::{DisableBracketedPaste, DisableMouseCapture, EnableBracketedPaste, EnableMouseCapture};
use ratatui::crossterm::execute;
use ratatui::crossterm::terminal::{EnterAlternateScreen, LeaveAlternateScreen, disable_raw_mode, enable_raw_mode};
use std::io::{self, stdout};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Mutex, MutexGuard, PoisonError, TryLockError};
use std::time::Duration;

/// Whether the terminal is ours at the moment; shared with the panic hook and the thread of signals.
static TAKEN: AtomicBool = AtomicBool::new(false);
/// Held while something is drawn.
static DRAWING: Mutex<()> = Mutex::new(());

/// The terminal while it is ours; given back when it is dropped.
pub(crate) struct Guard;

impl Guard {
    /// Takes the terminal.
    pub(crate) fn take() -> io::Result<Guard> {
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
pub(crate) fn give_back() {
    let _drawing = not_drawn_on();
    if TAKEN.swap(false, Ordering::SeqCst) {
        let _ = execute!(stdout(), DisableMouseCapture, DisableBracketedPaste, Show, LeaveAlternateScreen);
        let _ = disable_raw_mode();
    }
}

/// Draws while the terminal is ours and no other thread gives it back: after a fault elsewhere nothing is drawn over what
/// is told of it.
pub(crate) fn while_taken<T: Default>(draw: impl FnOnce() -> io::Result<T>) -> io::Result<T> {
    let _drawing = DRAWING.lock().unwrap_or_else(PoisonError::into_inner);
    if TAKEN.load(Ordering::SeqCst) { draw() } else { Ok(T::default()) }
}

/// Waits until nobody draws; not for ever, as the fault may lie in the drawing itself.
fn not_drawn_on() -> Option<MutexGuard<'static, ()>> {
    const PATIENCE: u32 = 100;
    for _ in 0..PATIENCE {
        match DRAWING.try_lock() {
            Ok(guard) => return Some(guard),
            Err(TryLockError::Poisoned(guard)) => return Some(guard.into_inner()),
            Err(TryLockError::WouldBlock) => std::thread::sleep(Duration::from_millis(2)),
        }
    }
    None
}

/// The mouse on or off.
pub(crate) fn mouse(on: bool) -> io::Result<()> {
    if on { execute!(stdout(), EnableMouseCapture) } else { execute!(stdout(), DisableMouseCapture) }
}

/// A panic on any thread gives the terminal back before it is told.
pub(crate) fn restore_on_panic() {
    let told = std::panic::take_hook();
    std::panic::set_hook(Box::new(move |panic| {
        give_back();
        told(panic);
    }));
}
