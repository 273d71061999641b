//! A long import or check says on the screen how far it is, and can be stopped: then nothing is taken in.

use std::io::Write;
use std::ops::ControlFlow;
use std::sync::Arc;
use std::sync::atomic::{AtomicI32, AtomicU64, Ordering};
use std::time::{Duration, Instant};

#[cfg(unix)]
use super::answer::refuse;
use super::answer::{Ending, note};
use super::run::Run;
use crate::base::text::in_ascii;
use crate::desk::{ImportStep, LookStep};
use crate::wording::Wording;

/// What is over sooner says nothing; and no line is written more often.
const EVERY: Duration = Duration::from_millis(400);
/// The same of a look through a file, where lines cannot be written over.
const EVERY_LINE: Duration = Duration::from_secs(10);
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

/// What is said where something was stopped while this line was read; none is known where it is 0.
pub(crate) type StoppedAt = fn(&Wording, u64) -> String;

/// How a run ends that a signal stopped, and what is said.
pub(crate) struct Stopped {
    pub(crate) ending: Ending,
    pub(crate) sentence: String,
}

/// That an import was stopped, and where.
pub(crate) fn import_stopped(wording: &Wording, line: u64) -> String {
    match line {
        0 => wording.import_cancelled(),
        line => wording.import_stopped_at(wording.number(line as f64, 0)),
    }
}

/// Watches an import.
pub(crate) struct Watch<'r> {
    run: &'r Run,
    style: Style,
    stopped: StoppedAt,
    state: Arc<AtomicI32>,
    /// The line that is read; 0 before and after that.
    line: Arc<AtomicU64>,
    last: Instant,
    lines_told: u64,
    shown: usize,
    #[cfg(unix)]
    signals: Option<signal_hook::iterator::Handle>,
}

impl<'r> Watch<'r> {
    /// Begins to watch, and to listen for signals; with what is said where one stopped it.
    pub(crate) fn begin(run: &'r Run, stopped: StoppedAt) -> Watch<'r> {
        let style = match (run.around.notes_are_seen && !run.everywhere.json, run.around.prompts_only) {
            (false, _) => Style::Silent,
            (true, false) if !run.everywhere.plain => Style::Over,
            (true, _) => Style::Lines,
        };
        let (state, line) = (Arc::new(AtomicI32::new(GOES_ON)), Arc::new(AtomicU64::new(0)));
        Watch {
            run,
            style,
            #[cfg(unix)]
            signals: listen(run, stopped, style, (&state, &line)),
            stopped,
            state,
            line,
            last: Instant::now(),
            lines_told: 0,
            shown: 0,
        }
    }

    /// Says how far it is, where it is time; a break where a signal came.
    pub(crate) fn told(&mut self, step: ImportStep) -> ControlFlow<()> {
        let line = if let ImportStep::Read(lines) = step { lines as u64 } else { 0 };
        self.line.store(line, Ordering::SeqCst);
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

    /// Says how far a look through a file is, where it is time; a break where a signal came.
    pub(crate) fn looked(&mut self, step: LookStep) -> ControlFlow<()> {
        if self.state.load(Ordering::SeqCst) != GOES_ON {
            return ControlFlow::Break(());
        }
        let every = if self.style == Style::Lines { EVERY_LINE } else { EVERY };
        if self.style != Style::Silent && self.last.elapsed() >= every {
            let sentence = look_in_words(&self.run.wording, step);
            match self.style {
                Style::Over => self.write_over(&sentence),
                Style::Lines | Style::Silent => note(&self.shown_as(&sentence)),
            }
            self.last = Instant::now();
        }
        ControlFlow::Continue(())
    }

    /// Ends watching; says how the run ends where a signal stopped it.
    pub(crate) fn end(mut self) -> Option<Stopped> {
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
        let sentence = (self.stopped)(&self.run.wording, self.line.load(Ordering::SeqCst));
        ending_of(signal).map(|ending| Stopped { ending, sentence })
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

fn look_in_words(wording: &Wording, step: LookStep) -> String {
    /// Bytes of the unit that is said.
    const MEGABYTE: f64 = 1e6;
    let megabytes = |bytes: u64| wording.number((bytes as f64 / MEGABYTE).ceil(), 0);
    match step {
        LookStep::Sqlite(time) => wording.look_sqlite(wording.number(time.as_secs_f64().floor(), 0)),
        LookStep::Entries(entries) => wording.look_entries(wording.number(entries as f64, 0)),
        LookStep::Bytes { done, all } => wording.look_bytes(megabytes(done.min(all)), megabytes(all)),
    }
}

/// How a run ends that a signal stopped.
#[cfg(unix)]
fn ending_of(signal: i32) -> Option<Ending> {
    match signal {
        signal_hook::consts::SIGTERM => Some(Ending::Terminated),
        signal_hook::consts::SIGHUP => Some(Ending::HungUp),
        other if other > 0 => Some(Ending::Interrupted),
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
fn listen(
    run: &Run,
    stopped: StoppedAt,
    style: Style,
    (state, line): (&Arc<AtomicI32>, &Arc<AtomicU64>),
) -> Option<signal_hook::iterator::Handle> {
    use signal_hook::consts::{SIGHUP, SIGINT, SIGTERM};
    let ending = hanging_up_ends_it().then_some(SIGHUP).into_iter().chain([SIGINT, SIGTERM]);
    let mut signals = signal_hook::iterator::Signals::new(ending).ok()?;
    let (handle, state, line) = (signals.handle(), state.clone(), line.clone());
    let in_ascii_alone = run.around.ascii && run.around.notes_are_seen;
    let (json, lang) = (run.everywhere.json, run.wording.lang());
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
            let sentence = stopped(&Wording::new(lang), line.load(Ordering::SeqCst));
            refuse(ending, &[if in_ascii_alone { in_ascii(&sentence) } else { sentence }], json);
            std::process::exit(ending as i32);
        }
    });
    Some(handle)
}

/// Whether the loss of the terminal ends the program: not where it was begun to outlive that (`nohup`). Where the system
/// does not say, it is left to the system.
#[cfg(unix)]
fn hanging_up_ends_it() -> bool {
    let about = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let ignored = about.lines().find_map(|line| line.strip_prefix("SigIgn:"));
    let ignored = ignored.and_then(|mask| u64::from_str_radix(mask.trim(), 16).ok());
    ignored.is_some_and(|mask| mask & (1 << (signal_hook::consts::SIGHUP - 1)) == 0)
}
