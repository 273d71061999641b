//! The round as numbered questions, for screen readers and terminals that can do no more: whole lines, no escape
//! sequences, the same model, the same forms, the same desk. It also answers from a pipe.

mod command;
mod filling;

#[cfg(test)]
mod tests;

use std::io::{self, BufRead, ErrorKind, Write};

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::clerk::Clerk;
use super::keys::{Key, kind_for_tray};
use super::layer::Layer;
use super::message::{Effect, Message};
use super::model::Model;
use super::terminal::{Opening, set_up};
use super::update::{refresh, update};
use crate::base::columns::{width_of, wrapped};
use crate::base::text::{cleaned, in_ascii};
use crate::reckon::forecast::ForecastBasis;
use crate::reckon::picture::Looking;
use command::Command;

/// Columns and rows in which layers that have no lines of their own are drawn, before their lines are said.
const DRAWN: (u16, u16) = (78, 200);
/// So many lines are said at once; more on demand.
const LINES_AT_ONCE: usize = 24;
/// The longest answer that is read, bytes; the rest of a longer line is left out.
const LONGEST: u64 = 64 * 1024;

/// Holds the round as questions and answers until there are no more answers, or a person quits. At a terminal lines are parted
/// between words, in a pipe they stay whole.
///
/// # Errors
/// The answers cannot be read, or nothing can be said any more.
pub(crate) fn talk(
    opening: Opening,
    input: impl BufRead,
    output: impl Write,
    columns: Option<usize>,
) -> io::Result<()> {
    let (model, clerk) = set_up(opening, DRAWN);
    let mut talk = Talk { model, clerk, input, output, columns, told: None };
    let begin = refresh(&mut talk.model);
    talk.carry_out(begin);
    // What is said at the start of the screen names keys of the screen.
    talk.model.notice = None;
    match talk.round() {
        // Who listens no more has heard enough.
        Err(fault) if fault.kind() == ErrorKind::BrokenPipe => Ok(()),
        ended => ended,
    }
}

/// A talk.
struct Talk<R, W> {
    model: Model,
    clerk: Clerk,
    input: R,
    output: W,
    /// Columns of the terminal; none in a pipe.
    columns: Option<usize>,
    /// The stop that was told last.
    told: Option<String>,
}

impl<R: BufRead, W: Write> Talk<R, W> {
    fn round(&mut self) -> io::Result<()> {
        self.greet()?;
        loop {
            for answer in self.clerk.look_around() {
                self.send(Message::Answer(Box::new(answer)));
            }
            self.tell_notice()?;
            self.tell_stop()?;
            let prompt = self.prompt();
            let Some(answer) = self.ask(&prompt)? else { return Ok(()) };
            match Command::read(&answer, &self.model.wording) {
                Some(Command::Quit) => return Ok(()),
                Some(Command::Help) => self.tell_commands()?,
                Some(Command::Key(key)) => self.press(key)?,
                None => {
                    let sentence = self.model.wording.plain_not_understood(&answer);
                    self.say(&sentence)?;
                }
            }
        }
    }

    fn greet(&mut self) -> io::Result<()> {
        let wording = &self.model.wording;
        let picture = &self.model.book.picture;
        let name = picture.site.nursery.on(picture.day).map(|set| set.name.0.to_string());
        let name = name.unwrap_or_else(|| wording.page_unnamed());
        let day = wording.day(picture.day);
        let day = match picture.looking {
            Looking::Today => wording.page_today(day),
            Looking::Back => wording.page_back(day),
            Looking::Ahead => wording.page_ahead(day),
        };
        let progress = self.model.screens.walk.progress_words(&self.model.context());
        let mut lines = vec![format!("{name}, {day}"), progress, wording.plain_begin()];
        if self.model.book.forecast_basis == ForecastBasis::Handbook {
            lines.insert(1, wording.learned_ignored());
        }
        lines.iter().try_for_each(|line| self.say(line))
    }

    fn prompt(&self) -> String {
        let cx = self.model.context();
        let walk = &self.model.screens.walk;
        match walk.number(&cx) {
            Some((number, all)) => self.model.wording.plain_prompt(number as i64, all as i64),
            None => ">".to_string(),
        }
    }

    /// The stop one stands at, where it was not told yet.
    fn tell_stop(&mut self) -> io::Result<()> {
        let cx = self.model.context();
        let walk = &self.model.screens.walk;
        let Some(stop) = walk.here(&cx) else {
            if self.told.take().is_none() {
                let sentence = self.model.wording.empty_walk();
                self.told = Some(String::new());
                return self.say(&sentence);
            }
            return Ok(());
        };
        if self.told.as_deref() == Some(stop.id) {
            return Ok(());
        }
        let id = stop.id.to_string();
        let lines = walk.told(&stop, &cx);
        let (behind, all) = walk.progress(&cx);
        let done = (all > 0 && behind == all).then(|| self.model.wording.walk_all_done(all as i64));
        self.told = Some(id);
        self.say("")?;
        done.into_iter().chain(lines).try_for_each(|line| self.say(&line))
    }

    fn tell_commands(&mut self) -> io::Result<()> {
        let lines = Command::listed(&self.model.wording);
        lines.iter().try_for_each(|line| self.say(line))
    }

    /// A key as on the screen; what opens is gone through in questions.
    fn press(&mut self, key: Key) -> io::Result<()> {
        self.send(Message::Key(key));
        let silent = self.model.notice.is_none();
        self.tell_notice()?;
        match self.model.layers.last() {
            None if silent && matches!(key, Key::Char(letter) if kind_for_tray(letter).is_some()) => {
                let sentence = self.model.wording.plain_only_tray();
                self.say(&sentence)
            }
            None => Ok(()),
            Some(Layer::Form(_)) => self.fill(),
            Some(Layer::Confirm(_)) => self.confirm(),
            Some(Layer::Day(_)) => self.day(),
            Some(
                Layer::Kinds(_)
                | Layer::Find(_)
                | Layer::Help(_)
                | Layer::Why(_)
                | Layer::News(_)
                | Layer::Options(_)
                | Layer::Leaving(_),
            ) => {
                self.tell_layer()?;
                self.close();
                Ok(())
            }
        }
    }

    /// Before something is taken back.
    fn confirm(&mut self) -> io::Result<()> {
        self.tell_layer()?;
        let question = self.model.wording.plain_take_back();
        let yes = self.ask(&question)?.is_some_and(|answer| command::is_yes(&answer));
        if yes {
            self.send(Message::Key(Key::Char('w')));
        }
        self.close();
        // What stands there may be otherwise now.
        self.told = None;
        Ok(())
    }

    /// Of which day is what is written next.
    fn day(&mut self) -> io::Result<()> {
        let question = format!("{} {}", self.model.wording.day_write_title(), self.model.wording.day_write_hint());
        if let Some(answer) = self.ask(&question)? {
            self.send(Message::Text(answer));
            self.send(Message::Key(Key::Enter));
        }
        if self.model.layers.is_empty() {
            let day = self.model.writing_day.unwrap_or(self.model.book.now.today);
            let sentence = self.model.wording.plain_writing_day(self.model.wording.day(day));
            return self.say(&sentence);
        }
        self.tell_layer()?;
        self.close();
        Ok(())
    }

    /// Closes whatever is open; a form that is half filled is kept.
    fn close(&mut self) {
        while !self.model.layers.is_empty() {
            self.send(Message::Key(Key::Esc));
        }
    }

    /// Says the lines of what lies over the walk.
    fn tell_layer(&mut self) -> io::Result<()> {
        let Some(layer) = self.model.layers.last() else { return Ok(()) };
        let area = Rect::new(0, 0, DRAWN.0, DRAWN.1);
        let mut buffer = Buffer::empty(area);
        layer.draw(&self.model.context(), area, &mut buffer);
        let rows = buffer.content.chunks(usize::from(DRAWN.0));
        let lines: Vec<String> = rows
            .map(|row| row.iter().map(ratatui::buffer::Cell::symbol).collect::<String>().trim_end().to_string())
            .filter(|line| !line.is_empty())
            .collect();
        for (i, part) in lines.chunks(LINES_AT_ONCE).enumerate() {
            if i > 0 {
                let left = lines.len() - i * LINES_AT_ONCE;
                let question = self.model.wording.plain_more(left as i64);
                if !self.ask(&question)?.is_some_and(|answer| answer.is_empty()) {
                    return Ok(());
                }
            }
            part.iter().try_for_each(|line| self.say(line))?;
        }
        Ok(())
    }

    fn tell_notice(&mut self) -> io::Result<()> {
        match self.model.notice.take() {
            Some(notice) => self.say(&notice.text),
            None => Ok(()),
        }
    }

    /// Sends a message and carries out what follows.
    fn send(&mut self, message: Message) {
        let effects = update(&mut self.model, message);
        self.carry_out(effects);
    }

    fn carry_out(&mut self, effects: Vec<Effect>) {
        for effect in effects {
            match effect {
                Effect::Ask(request) => {
                    for answer in self.clerk.serve(request) {
                        self.send(Message::Answer(Box::new(answer)));
                    }
                }
                Effect::Leave | Effect::Suspend | Effect::Redraw | Effect::Mouse(_) => {}
            }
        }
    }

    /// Says a line; nothing unseen is in it.
    fn say(&mut self, line: &str) -> io::Result<()> {
        let line = self.shown(line);
        match self.columns.filter(|columns| width_of(&line) > *columns) {
            Some(columns) => wrapped(&line, columns).iter().try_for_each(|part| writeln!(self.output, "{part}")),
            None => writeln!(self.output, "{line}"),
        }
    }

    fn shown(&self, line: &str) -> String {
        let line = cleaned(line);
        if self.model.look.ascii { in_ascii(&line) } else { line }
    }

    /// Asks, and reads a line; none at the end of the answers.
    fn ask(&mut self, question: &str) -> io::Result<Option<String>> {
        let question = self.shown(question);
        writeln!(self.output, "{question}")?;
        self.output.flush()?;
        let mut bytes = Vec::new();
        let read = io::Read::take(&mut self.input, LONGEST).read_until(b'\n', &mut bytes)?;
        if read == 0 {
            return Ok(None);
        }
        Ok(Some(cleaned(String::from_utf8_lossy(&bytes).trim_end_matches(['\n', '\r'])).trim().to_string()))
    }
}
