//! A long import or check says on the screen how far it is, and can be stopped: then nothing is taken in.

use std::io::Write;
use std::ops::ControlFlow;
use std::sync::Arc;
use std::sync::atomic::{AtomicI32, Ordering};
use std::time::{Duration, Instant};

#[cfg(unix)]
use super::answer::refuse;
use super::answer::{Ending, note};
use super::run::Run;
use crate::base::text::in_ascii;
use crate::desk::ImportStep;

/// What is over sooner says nothing; and no line is written more often.
const EVERY: Duration = Duration::from_millis(400);
/// Where lines cannot be written over, one after so many lines of the file.
const LINES_OF_A_NOTE: u64 = 100_000;
/// The longest that stopping may take. After that the program ends from another thread: nothing was kept by then.
#[cfg(unix)]
const PATIENCE: Duration = Duration::from_secs(1);

/// Where an import stands between the person and the file: a signal's number once one came.
const GOES_ON: i32 = 0;
/// Now it is saved; a signal comes too late.
const IS_SAVED: i32 = -1;
/// That it was stopped is told by one thread alone.
const IS_TOLD: i32 = -2;

/// How it is told.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Style {
    Silent,
    /// A line now and then.
    Lines,
    /// One line, written over.
    Over,
}

/// Watches an import.
pub(crate) struct Watch<'r> {
    run: &'r Run,
    style: Style,
    state: Arc<AtomicI32>,
    last: Instant,
    lines_told: u64,
    shown: usize,
    #[cfg(unix)]
    signals: Option<signal_hook::iterator::Handle>,
}

impl<'r> Watch<'r> {
    /// Begins to watch, and to listen for signals; with what is said where one stopped it.
    pub(crate) fn begin(run: &'r Run, stopped: String) -> Watch<'r> {
        let style = match (run.around.notes_are_seen && !run.everywhere.json, run.around.prompts_only) {
            (false, _) => Style::Silent,
            (true, false) if !run.everywhere.plain => Style::Over,
            (true, _) => Style::Lines,
        };
        let state = Arc::new(AtomicI32::new(GOES_ON));
        #[cfg(not(unix))]
        drop(stopped);
        Watch {
            run,
            style,
            #[cfg(unix)]
            signals: listen(run, stopped, style, &state),
            state,
            last: Instant::now(),
            lines_told: 0,
            shown: 0,
        }
    }

    /// Says how far it is, where it is time; a break where a signal came.
    pub(crate) fn told(&mut self, step: ImportStep) -> ControlFlow<()> {
        let exit = match step {
            ImportStep::Saving => {
                self.state.compare_exchange(GOES_ON, IS_SAVED, Ordering::SeqCst, Ordering::SeqCst).is_err()
            }
            _ => self.state.load(Ordering::SeqCst) != GOES_ON,
        };
        if exit {
            return ControlFlow::Break(());
        }
        match self.style {
            Style::Silent => {}
            Style::Lines => self.line_now_and_then(step),
            Style::Over => {
                if self.last.elapsed() >= EVERY || (step == ImportStep::Saving && self.shown > 0) {
                    self.write_over(&self.sentence(step));
                    self.last = Instant::now();
                }
            }
        }
        ControlFlow::Continue(())
    }

    /// Ends watching; says how the run ends where a signal stopped it.
    pub(crate) fn end(mut self) -> Option<Ending> {
        self.write_over("");
        let signal = self.state.swap(IS_TOLD, Ordering::SeqCst);
        #[cfg(unix)]
        {
            if signal == IS_TOLD {
                // The other thread is telling it, and ends the program.
                std::thread::sleep(2 * PATIENCE);
            }
            if let Some(signals) = &self.signals {
                signals.close();
            }
        }
        ending_of(signal)
    }

    fn line_now_and_then(&mut self, step: ImportStep) {
        let (ImportStep::Read(_) | ImportStep::Written(_) | ImportStep::LookedUp(_)) = step else { return };
        let lines = lines_of(step);
        if lines < self.lines_told {
            self.lines_told = 0;
        }
        if lines / LINES_OF_A_NOTE > self.lines_told / LINES_OF_A_NOTE {
            note(&self.shown_as(&self.sentence(step)));
        }
        self.lines_told = lines;
    }

    fn sentence(&self, step: ImportStep) -> String {
        let wording = &self.run.wording;
        let count = |lines: u64| i64::try_from(lines).unwrap_or(i64::MAX);
        match step {
            ImportStep::Read(_) => wording.import_read(count(lines_of(step))),
            ImportStep::Written(entries) => wording.import_written(count(entries)),
            ImportStep::LookedUp(entries) => wording.import_looked_up(count(entries)),
            ImportStep::Judged { done, all } => wording.import_judged((done * 100 / all.max(1)) as i64),
            ImportStep::Saving => wording.import_saving(),
        }
    }

    fn shown_as(&self, text: &str) -> String {
        if self.run.around.ascii { in_ascii(text) } else { text.to_string() }
    }

    /// Writes over the line that stands there; with nothing it is gone.
    fn write_over(&mut self, text: &str) {
        let text: String = self.shown_as(text).chars().take(self.run.around.columns.saturating_sub(1)).collect();
        let letters = text.chars().count();
        if self.style != Style::Over || letters + self.shown == 0 {
            return;
        }
        let blanks = " ".repeat(self.shown.saturating_sub(letters));
        let mut out = std::io::stderr().lock();
        let back = if letters == 0 { "\r" } else { "" };
        let _ = write!(out, "\r{text}{blanks}{back}").and_then(|()| out.flush());
        self.shown = letters;
    }
}

fn lines_of(step: ImportStep) -> u64 {
    match step {
        ImportStep::Read(lines) => lines as u64,
        ImportStep::Written(entries) | ImportStep::LookedUp(entries) => entries,
        ImportStep::Judged { .. } | ImportStep::Saving => 0,
    }
}

/// How a run ends that a signal stopped.
#[cfg(unix)]
fn ending_of(signal: i32) -> Option<Ending> {
    match signal {
        signal_hook::consts::SIGTERM => Some(Ending::Terminated),
        1.. => Some(Ending::Interrupted),
        _ => None,
    }
}

/// No signals here.
#[cfg(not(unix))]
fn ending_of(_: i32) -> Option<Ending> {
    None
}

/// Listens for what ends a program, on a thread of its own. The import itself is told to stop; where it does not within a
/// second (it may wait for what is piped in), the program ends from here: nothing of it was kept, and nothing will be.
#[cfg(unix)]
fn listen(run: &Run, sentence: String, style: Style, state: &Arc<AtomicI32>) -> Option<signal_hook::iterator::Handle> {
    use signal_hook::consts::{SIGINT, SIGTERM};
    let mut signals = signal_hook::iterator::Signals::new([SIGINT, SIGTERM]).ok()?;
    let (handle, state) = (signals.handle(), state.clone());
    let sentence = if run.around.ascii && run.around.notes_are_seen { in_ascii(&sentence) } else { sentence };
    let json = run.everywhere.json;
    std::thread::spawn(move || {
        for signal in signals.forever() {
            if state.compare_exchange(GOES_ON, signal, Ordering::SeqCst, Ordering::SeqCst).is_err() {
                continue;
            }
            std::thread::sleep(PATIENCE);
            if state.compare_exchange(signal, IS_TOLD, Ordering::SeqCst, Ordering::SeqCst).is_err() {
                continue;
            }
            let ending = ending_of(signal).unwrap_or(Ending::Interrupted);
            if style == Style::Over {
                note("");
            }
            refuse(ending, &[sentence], json);
            std::process::exit(ending as i32);
        }
    });
    Some(handle)
}
