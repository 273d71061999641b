//! Where answers go: data to stdout, notes to stderr. A reader who has seen enough ends the program quietly.

use serde_json::json;
use std::io::{self, BufRead, BufWriter, ErrorKind, Write};

use super::json::ObjectOut;

/// How a run ends; the numbers are a contract.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Ending {
    /// Done.
    Done = 0,
    /// Refused: a person can mend it; nothing was written.
    Refused = 1,
    /// Not a command.
    Usage = 2,
    /// The file.
    File = 3,
    /// Another program is writing.
    Busy = 5,
    /// Damaged.
    Damaged = 6,
    /// The terminal is gone (128 and the number of the signal, as shells have it); nothing was written.
    HungUp = 129,
    /// Stopped by the person (128 and the number of the signal, as shells have it); nothing was written.
    Interrupted = 130,
    /// Stopped by another program, the same way.
    Terminated = 143,
}

/// Writes an answer; false where it could not be written for another reason than a closed pipe.
pub(crate) fn say(text: &str) -> bool {
    say_bytes(text.as_bytes())
}

/// The same, of text that is bytes already.
pub(crate) fn say_bytes(text: &[u8]) -> bool {
    let mut out = std::io::stdout().lock();
    was_said(out.write_all(text).and_then(|()| out.flush()))
}

/// Where an answer to a program goes.
pub(crate) type AnswerOut<'a> = ObjectOut<BufWriter<Box<dyn Write + 'a>>>;

/// Writes an answer to a program while it is reckoned; false as with [`say`].
pub(crate) fn say_object(write: impl FnOnce(&mut AnswerOut<'_>) -> io::Result<()>) -> bool {
    was_said(object_to(io::stdout().lock(), write))
}

/// Writes an answer to a program to its end.
pub(crate) fn object_to<'a>(
    to: impl Write + 'a,
    write: impl FnOnce(&mut AnswerOut<'a>) -> io::Result<()>,
) -> io::Result<()> {
    let mut out = ObjectOut::new(BufWriter::new(Box::new(to) as Box<dyn Write + 'a>));
    write(&mut out).and_then(|()| out.end())
}

/// Whether an answer was written; a reader who has seen enough is no fault.
pub(crate) fn was_said(written: io::Result<()>) -> bool {
    written.map_or_else(|fault| fault.kind() == ErrorKind::BrokenPipe, |()| true)
}

/// Writes a note for the person; nothing can be done where even that fails.
pub(crate) fn note(text: &str) {
    let mut out = std::io::stderr().lock();
    let _ = writeln!(out, "{text}");
}

/// Why nothing was done: as sentences, or for a program as one object. Nothing is said where there is no sentence.
pub(crate) fn refuse(ending: Ending, lines: &[String], json: bool) {
    if lines.is_empty() {
        return;
    }
    if json {
        note(&json!({"version": 1, "exit": ending as i32, "refused": lines}).to_string());
    } else {
        lines.iter().for_each(|line| note(line));
    }
}

/// Shows lines with their numbers and asks for one; anything else, and silence, is none. The place in the list, from 0.
pub(crate) fn numbered(lines: &[String], question: &str) -> Option<usize> {
    lines.iter().enumerate().for_each(|(at, line)| note(&format!("  {}  {line}", at + 1)));
    let answer = answered(question);
    answer.trim().parse::<usize>().ok()?.checked_sub(1).filter(|at| *at < lines.len())
}

/// Asks a question that can be answered with yes; anything else, and silence, is no.
pub(crate) fn said_yes(question: &str) -> bool {
    matches!(answered(question).trim().to_lowercase().as_str(), "y" | "yes" | "s" | "si" | "sí")
}

/// What is typed on a question.
pub(crate) fn answered(question: &str) -> String {
    let mut err = std::io::stderr().lock();
    let _ = write!(err, "{question} ");
    let _ = err.flush();
    let mut answer = String::new();
    let _ = std::io::stdin().lock().read_line(&mut answer);
    answer
}
