//! Asking for a day: to look at, or of what is written next.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::heading::heading_and_line;
use crate::base::Day;
use crate::dashboard::act::Act;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::keys::Key;
use crate::dashboard::look::Ink;
use crate::dashboard::message::Request;
use crate::dashboard::parts::days::{day_fault, read_day};
use crate::dashboard::parts::{Sheet, Typed};

/// What the day is for.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum DayFor {
    /// To look at.
    Looking,
    /// Of what is written next.
    Writing,
}

/// Asking for a day.
#[derive(Clone, Debug)]
pub(crate) struct AskDay {
    asked_for: DayFor,
    typed: Typed,
    stepped: Option<Day>,
    fault: Option<String>,
}

impl AskDay {
    /// Asks.
    pub(crate) fn new(asked_for: DayFor) -> AskDay {
        AskDay { asked_for, typed: Typed::default(), stepped: None, fault: None }
    }

    fn step(&mut self, by: i32, cx: &ScreenContext<'_>) {
        let from = self.stepped.unwrap_or(match self.asked_for {
            DayFor::Looking => cx.day(),
            DayFor::Writing => cx.writing_day.unwrap_or(cx.book.now.today),
        });
        let day = from.plus(by);
        if self.asked_for == DayFor::Writing && day > cx.book.now.today {
            return;
        }
        self.stepped = Some(day);
        self.typed = Typed::of(&day.to_string());
    }

    /// Whether nothing is typed yet.
    pub(super) fn is_empty(&self) -> bool {
        self.typed.is_empty()
    }

    /// Takes a key.
    pub(crate) fn press(&mut self, key: Key, cx: &ScreenContext<'_>) -> Vec<Act> {
        self.fault = None;
        match key {
            Key::Esc => return vec![Act::Close],
            Key::Char('q') if self.typed.is_empty() => return vec![Act::Close],
            Key::Left => self.step(-1, cx),
            Key::Right => self.step(1, cx),
            Key::Up => self.step(-7, cx),
            Key::Down => self.step(7, cx),
            Key::PageUp => self.step(-30, cx),
            Key::PageDown => self.step(30, cx),
            Key::Enter => return self.enter(cx),
            other => {
                self.typed.press(other);
            }
        }
        Vec::new()
    }

    fn enter(&mut self, cx: &ScreenContext<'_>) -> Vec<Act> {
        let today = cx.book.now.today;
        let written = self.typed.text();
        let day = match read_day(&written, today) {
            _ if self.typed.is_empty() => today,
            Ok(day) => day,
            Err(reason) => {
                self.fault = Some(day_fault(&written, &reason, cx.wording));
                return Vec::new();
            }
        };
        let other = (day != today).then_some(day);
        match self.asked_for {
            DayFor::Looking => vec![Act::Close, Act::Ask(Request::look_at(day))],
            DayFor::Writing if day > today => {
                self.fault = Some(cx.wording.day_not_coming());
                Vec::new()
            }
            DayFor::Writing => vec![Act::Close, Act::WriteOn(other)],
        }
    }

    /// Takes text that came at once.
    pub(crate) fn text(&mut self, text: &str) -> Vec<Act> {
        self.typed.insert(text.trim());
        Vec::new()
    }

    /// Draws it.
    pub(crate) fn draw(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        let wording = cx.wording;
        let (title, hint) = match self.asked_for {
            DayFor::Looking => (wording.day_title(), wording.day_hint()),
            DayFor::Writing => (wording.day_write_title(), wording.day_write_hint()),
        };
        let rest = heading_and_line(&title, &self.typed, area, buffer);
        let mut page = Sheet::new(rest.width);
        if let Ok(day) = read_day(&self.typed.text(), cx.book.now.today) {
            page.paragraph(&wording.day(day), Ink::Strong);
        }
        if let Some(message) = &self.fault {
            page.hanging("x ", Ink::Danger, message, Ink::Plain);
        }
        page.paragraph(&hint, Ink::Quiet);
        page.draw(0, rest, buffer);
    }
}
