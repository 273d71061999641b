//! The Season drawn.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::lines::LineOf;
use super::{NAME_COLUMNS, NARROW_NAME_COLUMNS, Season};
use crate::base::Day;
use crate::dashboard::aside::year::YearAsked;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::{Sheet, scroll_marks};
use crate::dashboard::screens::signs::{stage_signs, standing_signs};
use crate::reckon::season::SeasonDay;

/// Letters of a month where there is room.
const MONTH_LETTERS: u16 = 3;
/// So many lines of trays and beds, or all there are, go before the marks explained under the year. Ours.
const LINES_BEFORE_MARKS: usize = 12;
/// The rows over the lines: months and rains; and the one between the lines and the words below.
const HEAD_AND_GAP_ROWS: usize = 3;

/// Draws months, rains, a line for each tray and bed, and what the cursor stands on.
pub(crate) fn draw(season: &Season, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    let all = season.lines(cx);
    if all.is_empty() {
        let mut page = Sheet::new(area.width);
        page.paragraph(&cx.wording.no_trays(), Ink::Plain);
        page.paragraph(&cx.wording.no_beds(), Ink::Plain);
        page.draw(0, area, buffer);
        return;
    }
    let names = if cx.size.0 >= 80 { NAME_COLUMNS } else { NARROW_NAME_COLUMNS };
    let left = area.x + names + 1;
    let grid = Grid { asked: Season::asked(cx), left, columns: area.right().saturating_sub(left), cx };
    let cursor = season.cursor(cx);
    let at = season.at(&all);
    let mut text = below(all.get(at), cursor, &grid, area.width);
    let with_marks = marks_below(&text, cx);
    let wanted = all.len().min(LINES_BEFORE_MARKS) + HEAD_AND_GAP_ROWS;
    if with_marks.height() + wanted <= usize::from(area.height) {
        text = with_marks;
    }
    let below_rows = (text.height() as u16).min(area.height.saturating_sub(4));
    let head = draw_head(&grid, area, buffer);
    let rows = area.height.saturating_sub(head + below_rows + 1);
    let first = (at + 1).saturating_sub(usize::from(rows.max(1)));
    for (row, line) in all.iter().enumerate().skip(first).take(usize::from(rows)) {
        let y = area.y + head + (row - first) as u16;
        let chosen = row == at;
        let name = Sheet::shortened(&line.name(cx, names == NAME_COLUMNS), usize::from(names));
        let ink = if chosen { Ink::Chosen } else { Ink::Plain };
        buffer.set_string(area.x, y, name, ink.style());
        grid.each(&mut |(x, wide), day| match day {
            Some(day) => {
                // What is still to come is a forecast, and looks like one.
                let style = |ink: Ink| if day.day > cx.book.now.today { Ink::Plain.style() } else { ink.tile() };
                if let Some((mark, ink)) = line.mark(day) {
                    buffer.set_string(x, y, mark.repeat(usize::from(wide)), style(ink));
                }
            }
            None => buffer.set_string(x, y, "·".repeat(usize::from(wide)), Ink::Quiet.style()),
        });
    }
    // The marks stand between names and days, where no day is drawn.
    let marks = Rect { y: area.y + head, width: names + 1, height: rows, ..area };
    scroll_marks(first > 0, first + usize::from(rows) < all.len(), marks, buffer);
    mark_days(&grid, cursor, Rect { y: area.y + head, height: rows, ..area }, buffer);
    let foot = Rect { y: area.bottom().saturating_sub(below_rows), height: below_rows, ..area };
    text.draw(0, foot, buffer);
}

/// Draws a day at its first column and so many columns wide; none is a day that is not drawn yet.
type DrawDay<'d> = &'d mut dyn FnMut((u16, u16), Option<&SeasonDay>);

/// The year that is drawn and where it begins.
struct Grid<'a> {
    asked: YearAsked,
    left: u16,
    columns: u16,
    cx: &'a ScreenContext<'a>,
}

impl Grid<'_> {
    /// The first column of a day and how many it has: together they fill the width.
    fn place(&self, day: Day) -> (u16, u16) {
        let at = (day.days_since(self.asked.from) / self.asked.step_days).max(0) as usize;
        let days = self.asked.days.max(1);
        let begin = |at: usize| (at * usize::from(self.columns) / days) as u16;
        (self.left + begin(at), begin(at + 1).saturating_sub(begin(at)))
    }

    fn column(&self, day: Day) -> u16 {
        self.place(day).0
    }

    /// Each day with its place; none for one that is not drawn yet.
    fn each(&self, draw: DrawDay<'_>) {
        let drawn = self.cx.book.year.as_ref().filter(|(of, _)| *of == self.asked).map(|(_, days)| days);
        for i in 0..self.asked.days as i32 {
            let day = self.asked.from.plus(i * self.asked.step_days);
            draw(self.place(day), drawn.and_then(|days| days.get(&day)));
        }
    }

    /// Days that are not drawn yet.
    fn missing(&self) -> usize {
        let mut missing = 0;
        self.each(&mut |_, day| missing += usize::from(day.is_none()));
        missing
    }

    fn day(&self, day: Day) -> Option<&SeasonDay> {
        self.cx.book.year.as_ref().filter(|(of, _)| *of == self.asked).and_then(|(_, days)| days.get(&day))
    }
}

/// The first column of each month that is drawn, how many columns it has, and which it is.
fn months(grid: &Grid<'_>, right: u16) -> Vec<(u16, u16, u32)> {
    let days = (0..grid.asked.days as i32).map(|i| grid.asked.from.plus(i * grid.asked.step_days));
    let mut begins: Vec<(u16, u32)> = days.map(|day| (grid.column(day), day.ymd().1)).collect();
    begins.dedup_by_key(|(_, month)| *month);
    let ends = begins.iter().skip(1).map(|(x, _)| *x).chain([right]);
    begins.iter().zip(ends).map(|((x, month), end)| (*x, end.saturating_sub(*x), *month)).collect()
}

/// Months by their letters, and the rains; the answer is how many lines.
fn draw_head(grid: &Grid<'_>, area: Rect, buffer: &mut Buffer) -> u16 {
    let wording = grid.cx.wording;
    let months = months(grid, area.right());
    // Every whole month has a name, or where one has no room for three letters, each has one letter.
    let whole = months.get(1..months.len().saturating_sub(1)).unwrap_or_default();
    let letters = if whole.iter().all(|(_, room, _)| *room > MONTH_LETTERS) { MONTH_LETTERS } else { 1 };
    for (x, room, month) in &months {
        let name: String = wording.month_letters(*month).chars().take(usize::from(letters)).collect();
        if *room > letters || (*room == letters && x + room == area.right()) {
            buffer.set_string(*x, area.y, &name, Ink::Plain.style());
        }
    }
    let name = Sheet::shortened(&wording.season_rains(), usize::from(grid.left - area.x - 1));
    buffer.set_string(area.x, area.y + 1, name, Ink::Plain.style());
    grid.each(&mut |(x, wide), day| {
        if day.is_some_and(|day| day.in_rains == Some(true)) {
            buffer.set_string(x, area.y + 1, "▒".repeat(usize::from(wide)), Ink::Strong.style());
        }
    });
    2
}

/// Today and the cursor, from top to bottom: underlined, and in reverse.
fn mark_days(grid: &Grid<'_>, cursor: Day, area: Rect, buffer: &mut Buffer) {
    let column = |day: Day| {
        let (x, wide) = grid.place(day);
        Rect { x, width: wide.max(1), ..area }.intersection(area)
    };
    let today = column(grid.cx.book.now.today);
    if today.x < area.right() {
        for y in area.y..area.bottom() {
            if let Some(cell) = buffer.cell_mut((today.x, y)).filter(|cell| cell.symbol() == " ") {
                cell.set_symbol("│");
            }
        }
    }
    let at = column(cursor);
    if at.x < area.right() {
        buffer.set_style(at, Ink::Chosen.style());
    }
}

/// What the cursor stands on, in words.
fn below(line: Option<&LineOf>, cursor: Day, grid: &Grid<'_>, width: u16) -> Sheet {
    let (cx, wording) = (grid.cx, grid.cx.wording);
    let mut page = Sheet::new(width);
    if let Some(line) = line {
        let word = grid.day(cursor).and_then(|day| line.word(day, cx));
        let word = word.unwrap_or_else(|| {
            let drawn = grid.day(cursor).is_some();
            if drawn { wording.season_not_there() } else { wording.news_waiting() }
        });
        let text = wording.season_on(wording.day(cursor), line.name(cx, true).trim(), word);
        page.paragraph(&text, Ink::Strong);
    }
    let missing = grid.missing();
    if missing > 0 {
        page.paragraph(&wording.season_drawing(missing as i64), Ink::Waits);
    }
    page
}

/// The same with what the marks mean; where they have no room, help has them.
fn marks_below(words: &Sheet, cx: &ScreenContext<'_>) -> Sheet {
    let wording = cx.wording;
    let mut page = words.clone();
    let said = |signs: Vec<(String, String)>| {
        signs.into_iter().map(|(mark, name)| format!("{mark} {name}")).collect::<Vec<_>>().join("  ")
    };
    page.paragraph(&wording.season_trays_marks(said(stage_signs(cx))), Ink::Quiet);
    page.paragraph(&wording.season_beds_marks(said(standing_signs(cx))), Ink::Quiet);
    page.paragraph(&wording.season_ahead(), Ink::Quiet);
    page
}
