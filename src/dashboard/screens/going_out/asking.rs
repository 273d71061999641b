//! Before the list is written: the whole of it in words, and another key than the one that asked.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::loading::day;
use super::words::{by_bed, warning};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::Sheet;
use crate::reckon::loading::{LoadLine, warnings};

/// The lines that the frame keeps for itself at most.
const FRAME: u16 = 5;

/// Draws the question; what is asked stands above and the keys below, whatever the height.
pub(super) fn draw(lines: &[LoadLine], from: usize, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    let (above, body, below) = pages(lines, cx, area.width);
    let foot = (below.height() as u16).min(area.height);
    let head = (above.height() as u16).min(area.height - foot);
    above.draw(0, Rect { height: head, ..area }, buffer);
    let room = area.height - head - foot;
    body.draw(from, Rect { y: area.y + head, height: room, ..area }, buffer);
    // A blank line before the keys, where there is one.
    let y = area.y + head + room.min(body.height() as u16 + 1);
    below.draw(0, Rect { y, height: foot, ..area }, buffer);
}

/// The last line from which the list can be read.
pub(super) fn last_start(lines: &[LoadLine], cx: &ScreenContext<'_>) -> usize {
    let (above, body, below) = pages(lines, cx, cx.size.0);
    let taken = (above.height() + below.height()) as u16;
    body.last_start(cx.size.1.saturating_sub(FRAME).saturating_sub(taken).max(1))
}

fn pages(lines: &[LoadLine], cx: &ScreenContext<'_>, width: u16) -> (Sheet, Sheet, Sheet) {
    let wording = cx.wording;
    let sum = lines.iter().map(|line| line.plants).fold(0, u32::saturating_add);
    let mut above = Sheet::new(width);
    above.paragraph(&wording.load_ask(wording.day(day(cx)), lines.len() as i64, i64::from(sum)), Ink::Strong);
    let mut body = Sheet::new(width);
    for one in warnings(&cx.book.picture, lines) {
        body.hanging("! ", Ink::Danger, &warning(&one, cx), Ink::Plain);
    }
    by_bed(lines, cx, &mut body);
    body.gap();
    body.paragraph(&wording.load_caution(), Ink::Plain);
    let mut below = Sheet::new(width);
    below.paragraph(&wording.load_ask_keys(), Ink::Strong);
    (above, body, below)
}
