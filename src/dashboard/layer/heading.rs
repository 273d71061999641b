//! The top of a layer that is typed in: a heading and the line.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use crate::dashboard::look::Ink;
use crate::dashboard::parts::{Sheet, Typed};

/// Draws a heading, then a line to type in; the answer is what is left below.
pub(crate) fn heading_and_line(title: &str, typed: &Typed, area: Rect, buffer: &mut Buffer) -> Rect {
    let mut page = Sheet::new(area.width);
    page.paragraph(title, Ink::Strong);
    page.draw(0, area, buffer);
    let top = (page.height() as u16).min(area.height);
    let line = Rect { y: area.y + top, height: u16::from(top < area.height), ..area };
    if line.height == 1 {
        buffer.set_string(line.x, line.y, ">", Ink::Strong.style());
        typed.draw(Rect { x: line.x + 2, width: line.width.saturating_sub(2), ..line }, buffer, true);
    }
    let used = (top + 2).min(area.height);
    Rect { y: area.y + used, height: area.height - used, ..area }
}
