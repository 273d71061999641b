//! The Season: a line for each tray and bed over a year, with a cursor on any day of it.

mod lines;
#[cfg(test)]
mod tests;
mod view;

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use crate::base::Day;
use crate::dashboard::act::{Act, WhyOf};
use crate::dashboard::context::On;
use crate::dashboard::keys::{Does, Key, KeyLine, hinted, known};
use crate::dashboard::message::Request;
use crate::dashboard::screens::screen::Screen;
use crate::dashboard::year::YearAsked;
use crate::nursery::entry::subject::Subject;
use lines::{LineOf, lines};

/// Days shown before today.
const BACK_DAYS: i32 = 182;
/// Days shown in all.
const IN_ALL_DAYS: i32 = 364;
/// Columns of a line's name.
pub const NAME_COLUMNS: u16 = 22;
/// The same where there is little room.
pub const NARROW_NAME_COLUMNS: u16 = 10;

/// The screen.
#[derive(Debug, Default)]
pub struct Season {
    chosen: Option<LineOf>,
    cursor: Option<Day>,
}

impl Season {
    /// The year that fits the width: weeks, or fortnights where there is little room.
    fn asked(on: &On<'_>) -> YearAsked {
        let names = if on.size.0 >= 80 { NAME_COLUMNS } else { NARROW_NAME_COLUMNS };
        let room = i32::from(on.size.0.saturating_sub(names + 2)).max(4);
        let mut step_days = 7;
        while IN_ALL_DAYS / step_days > room {
            step_days += 7;
        }
        let back = BACK_DAYS / step_days * step_days;
        let from = on.book.now.today.plus(-back);
        YearAsked { from, step_days, days: (IN_ALL_DAYS / step_days) as usize }
    }

    fn cursor(&self, on: &On<'_>) -> Day {
        let asked = Season::asked(on);
        let day = self.cursor.unwrap_or(on.book.now.today);
        let steps = (day.days_since(asked.from) / asked.step_days).clamp(0, asked.days as i32 - 1);
        asked.from.plus(steps * asked.step_days)
    }

    fn at(&self, all: &[LineOf]) -> usize {
        self.chosen.as_ref().and_then(|chosen| all.iter().position(|line| line == chosen)).unwrap_or(0)
    }

    fn line(&self, on: &On<'_>) -> Option<LineOf> {
        let all = lines(on);
        let at = self.at(&all);
        all.into_iter().nth(at)
    }

    fn step(&mut self, by: isize, on: &On<'_>) {
        let all = lines(on);
        let last = all.len() as isize - 1;
        let to = (self.at(&all) as isize + by).clamp(0, last.max(0)) as usize;
        self.chosen = all.into_iter().nth(to);
    }

    fn step_day(&mut self, by: i32, on: &On<'_>) {
        let asked = Season::asked(on);
        let last = asked.from.plus(asked.step_days * (asked.days as i32 - 1));
        let day = self.cursor(on).plus(by * asked.step_days);
        self.cursor = Some(day.clamp(asked.from, last));
    }
}

impl Screen for Season {
    fn keys(&self, _on: &On<'_>) -> Vec<KeyLine> {
        vec![hinted("left right", Does::DayStep), hinted("- +", Does::MonthStep), known("Enter", Does::Day)]
    }

    fn answers(&self, on: &On<'_>) -> String {
        on.wording.answers_season()
    }

    fn press(&mut self, key: Key, on: &On<'_>) -> Option<Vec<Act>> {
        let page = isize::from(on.size.1 as i16).saturating_sub(10).max(1);
        match key {
            Key::Up => self.step(-1, on),
            Key::Down => self.step(1, on),
            Key::PageUp | Key::Char(',') => self.step(-page, on),
            Key::PageDown | Key::Char('.') => self.step(page, on),
            Key::Left => self.step_day(-1, on),
            Key::Right => self.step_day(1, on),
            Key::Char('-') => self.step_day(-4, on),
            Key::Char('+') => self.step_day(4, on),
            Key::Home => self.cursor = None,
            Key::Enter => return Some(vec![Act::LookAt(Some(self.cursor(on)))]),
            _ => return None,
        }
        Some(Vec::new())
    }

    fn draw(&self, on: &On<'_>, area: Rect, buffer: &mut Buffer) {
        view::draw(self, on, area, buffer);
    }

    fn chosen(&self, on: &On<'_>) -> Option<Subject> {
        self.line(on).map(|line| line.subject())
    }

    fn why(&self, on: &On<'_>) -> Option<WhyOf> {
        self.line(on).map(|line| match line {
            LineOf::Bed(bed, species) => WhyOf::Bed(bed, species),
            LineOf::Tray(_) | LineOf::Shade(_) => WhyOf::About(line.subject()),
        })
    }

    fn go_to(&mut self, subject: &Subject, on: &On<'_>) -> bool {
        let found = lines(on).into_iter().find(|line| line.subject() == *subject);
        self.chosen = found.clone().or(self.chosen.take());
        found.is_some()
    }

    fn refresh(&mut self, on: &On<'_>) -> Vec<Act> {
        let asked = Season::asked(on);
        let here = on.book.year.as_ref().is_some_and(|(of, _)| *of == asked);
        if here { Vec::new() } else { vec![Act::Ask(Request::Year(asked))] }
    }
}
