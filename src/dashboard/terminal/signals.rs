//! Signals: the terminal is given back, and the program ends as the signal says. A terminal that is gone ends it too, within
//! a second: what waits for its keys would wait for ever.

use std::sync::mpsc::Sender;
#[cfg(unix)]
use std::time::Duration;

use super::Happening;
#[cfg(unix)]
use super::Left;
use super::guard::give_back;

/// The longest that leaving may take after a signal.
#[cfg(unix)]
const PATIENCE: Duration = Duration::from_secs(1);

/// Listens for signals on a thread of its own.
#[cfg(unix)]
pub(crate) fn listen(to: Sender<Happening>) -> std::io::Result<()> {
    use signal_hook::consts::{SIGHUP, SIGINT, SIGQUIT, SIGTERM, SIGTTOU, SIGWINCH};
    let mut signals = signal_hook::iterator::Signals::new([SIGHUP, SIGINT, SIGQUIT, SIGTERM, SIGWINCH])?;
    // In the background the terminal is another program's. The system would stop this one whenever it takes or gives it back,
    // and what stands still is ended by nothing but SIGKILL; so it is refused the terminal instead.
    signal_hook::flag::register(SIGTTOU, std::sync::Arc::default())?;
    std::thread::spawn(move || {
        for signal in signals.forever() {
            if signal == SIGWINCH {
                continue;
            }
            // The loop keeps what is typed and leaves; where it cannot, it is left from here.
            let _ = to.send(Happening::End(Left::Signal(signal)));
            std::thread::sleep(PATIENCE);
            end_as(signal);
        }
    });
    Ok(())
}

/// No signals here.
#[cfg(not(unix))]
pub(crate) fn listen(_to: Sender<Happening>) -> std::io::Result<()> {
    Ok(())
}

/// Gives the terminal back and ends as the signal says.
pub(crate) fn end_as(signal: i32) {
    give_back();
    #[cfg(unix)]
    let _ = signal_hook::low_level::emulate_default_handler(signal);
    std::process::exit(128 + signal);
}

/// To the shell, until the shell wakes it again.
pub(crate) fn stop() {
    // SIGSTOP: a stop by the terminal's own signal is passed over in a group that nobody holds.
    #[cfg(unix)]
    let _ = signal_hook::low_level::raise(signal_hook::consts::SIGSTOP);
}
