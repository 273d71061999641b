//! The Season: a line for each tray and bed over a year, with a cursor on any day of it.

mod lines;
#[cfg(test)]
mod tests;
mod view;

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use crate::base::Day;
use crate::dashboard::act::{Act, WhyOf};
use crate::dashboard::aside::year::YearAsked;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::keys::{Key, KeyAction, KeyLine, hinted, known};
use crate::dashboard::message::Request;
use crate::dashboard::screens::screen::Screen;
use crate::dashboard::screens::signs::{stage_signs, standing_signs};
use crate::nursery::entry::subject::Subject;
use lines::{LineOf, lines};

/// Days shown before today.
const BACK_DAYS: i32 = 182;
/// Days shown in all.
const IN_ALL_DAYS: i32 = 364;
/// Columns of a line's name.
pub(crate) const NAME_COLUMNS: u16 = 22;
/// The same where there is little room.
pub(crate) const NARROW_NAME_COLUMNS: u16 = 10;

/// The screen.
#[derive(Debug, Default)]
pub(crate) struct Season {
    chosen: Option<LineOf>,
    cursor: Option<Day>,
    /// Whether trays that are empty today are shown too.
    empty_too: bool,
}

impl Season {
    fn lines(&self, cx: &ScreenContext<'_>) -> Vec<LineOf> {
        lines(self.empty_too, cx)
    }

    /// The year that fits the width: weeks, or fortnights where there is little room.
    fn asked(cx: &ScreenContext<'_>) -> YearAsked {
        let names = if cx.size.0 >= 80 { NAME_COLUMNS } else { NARROW_NAME_COLUMNS };
        let room = i32::from(cx.size.0.saturating_sub(names + 2)).max(4);
        let mut step_days = 7;
        while IN_ALL_DAYS / step_days > room {
            step_days += 7;
        }
        let back = BACK_DAYS / step_days * step_days;
        let from = cx.book.now.today.plus(-back);
        YearAsked { generation: cx.book.generation, from, step_days, days: (IN_ALL_DAYS / step_days) as usize }
    }

    fn cursor(&self, cx: &ScreenContext<'_>) -> Day {
        let asked = Season::asked(cx);
        let day = self.cursor.unwrap_or(cx.book.now.today);
        let steps = (day.days_since(asked.from) / asked.step_days).clamp(0, asked.days as i32 - 1);
        asked.from.plus(steps * asked.step_days)
    }

    fn at(&self, all: &[LineOf]) -> usize {
        self.chosen.as_ref().and_then(|chosen| all.iter().position(|line| line == chosen)).unwrap_or(0)
    }

    fn line(&self, cx: &ScreenContext<'_>) -> Option<LineOf> {
        let all = self.lines(cx);
        let at = self.at(&all);
        all.into_iter().nth(at)
    }

    fn step(&mut self, by: isize, cx: &ScreenContext<'_>) {
        let all = self.lines(cx);
        let last = all.len() as isize - 1;
        let to = (self.at(&all) as isize + by).clamp(0, last.max(0)) as usize;
        self.chosen = all.into_iter().nth(to);
    }

    fn step_day(&mut self, by: i32, cx: &ScreenContext<'_>) {
        let asked = Season::asked(cx);
        let last = asked.from.plus(asked.step_days * (asked.days as i32 - 1));
        let day = self.cursor(cx).plus(by * asked.step_days);
        self.cursor = Some(day.clamp(asked.from, last));
    }
}

impl Screen for Season {
    fn keys(&self, _cx: &ScreenContext<'_>) -> Vec<KeyLine> {
        vec![
            hinted("left right", KeyAction::DayStep),
            hinted("- +", KeyAction::MonthStep),
            hinted("v", KeyAction::EmptyToo),
            known("Enter", KeyAction::Day),
        ]
    }

    fn signs(&self, cx: &ScreenContext<'_>) -> Vec<(String, String)> {
        let wording = cx.wording;
        let shade = [("▒", wording.season_rains()), ("░█!", wording.sign_nurse_shade()), ("│", wording.season_ahead())];
        let shade = shade.map(|(sign, means)| (sign.to_string(), means));
        stage_signs(cx).into_iter().chain(standing_signs(cx)).chain(shade).collect()
    }

    fn answers(&self, cx: &ScreenContext<'_>) -> String {
        cx.wording.answers_season()
    }

    fn press(&mut self, key: Key, cx: &ScreenContext<'_>) -> Option<Vec<Act>> {
        let page = isize::from(cx.size.1 as i16).saturating_sub(10).max(1);
        match key {
            Key::Up => self.step(-1, cx),
            Key::Down => self.step(1, cx),
            Key::PageUp | Key::Char(',') => self.step(-page, cx),
            Key::PageDown | Key::Char('.') => self.step(page, cx),
            Key::Left => self.step_day(-1, cx),
            Key::Right => self.step_day(1, cx),
            Key::Char('-') => self.step_day(-4, cx),
            Key::Char('+') => self.step_day(4, cx),
            Key::Home => self.cursor = None,
            Key::Char('v') => self.empty_too = !self.empty_too,
            Key::Enter => return Some(vec![Act::Ask(Request::look_at(self.cursor(cx)))]),
            _ => return None,
        }
        Some(Vec::new())
    }

    fn draw(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        view::draw(self, cx, area, buffer);
    }

    fn chosen(&self, cx: &ScreenContext<'_>) -> Option<Subject> {
        self.line(cx).map(|line| line.subject())
    }

    fn why(&self, cx: &ScreenContext<'_>) -> Option<WhyOf> {
        self.line(cx).map(|line| match line {
            LineOf::Bed(bed, species) => WhyOf::Bed(bed, species),
            LineOf::Tray(_) | LineOf::Shade(_) | LineOf::Food(..) => WhyOf::About(line.subject()),
        })
    }

    fn go_to(&mut self, subject: &Subject, cx: &ScreenContext<'_>) -> bool {
        let wanted = |line: &LineOf| line.subject() == *subject;
        let found = self.lines(cx).into_iter().find(wanted).or_else(|| {
            let found = lines(true, cx).into_iter().find(wanted);
            self.empty_too |= found.is_some();
            found
        });
        self.chosen = found.clone().or(self.chosen.take());
        found.is_some()
    }

    fn refresh(&mut self, cx: &ScreenContext<'_>) -> Vec<Act> {
        let asked = Season::asked(cx);
        let here = cx.book.year.as_ref().is_some_and(|(of, _)| *of == asked);
        if here { Vec::new() } else { vec![Act::Ask(Request::Year(asked))] }
    }
}
