//! A list with the detail of what is chosen beside it, or one of the two where there is no room for both.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use crate::dashboard::look::Ink;
use crate::dashboard::model::On;
use crate::dashboard::parts::Page;

/// Columns between the list and the detail.
const BETWEEN: u16 = 3;
/// The list takes so many of a hundred columns beside its detail.
const LIST_PERCENT: u16 = 55;
/// And at most so many in all.
const LIST_MOST: u16 = 112;
/// Lines of the frame around a screen, as many as there can be without banners.
const FRAME_LINES: u16 = 6;

fn list_columns(columns: u16) -> u16 {
    (u32::from(columns) * u32::from(LIST_PERCENT) / 100).min(u32::from(LIST_MOST)) as u16
}

/// The areas of the list and of the detail, on a wide terminal.
pub fn split(area: Rect) -> (Rect, Rect) {
    let list = Rect { width: list_columns(area.width), ..area };
    let x = (list.right() + BETWEEN).min(area.right());
    (list, Rect { x, width: area.right() - x, ..area })
}

/// Columns of the detail on this terminal.
pub fn detail_columns(on: &On<'_>) -> u16 {
    if on.is_wide() { split(Rect::new(0, 0, on.size.0, 1)).1.width } else { on.size.0 }
}

/// Lines that a page of the list or of the detail surely has on this terminal.
pub fn page_lines(on: &On<'_>) -> u16 {
    on.size.1.saturating_sub(FRAME_LINES + 2).max(1)
}

/// Draws the detail from a line on, with a last line that says how much stands below.
pub fn draw_detail(page: &Page, from: usize, on: &On<'_>, area: Rect, buffer: &mut Buffer) {
    let whole = page.height() <= usize::from(area.height);
    let body = if whole { area } else { Rect { height: area.height.saturating_sub(1), ..area } };
    let below = page.draw(from, body, buffer);
    if whole || area.height == 0 {
        return;
    }
    let said = if below > 0 { on.wording.trays_more_below(below as i64) } else { on.wording.trays_back_above() };
    let said = Page::shortened(&said, usize::from(area.width));
    buffer.set_string(area.x, area.bottom() - 1, said, Ink::Quiet.style());
}
