//! Asked once before the program is left: another key than the one that asked.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use crate::dashboard::act::Act;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::keys::Key;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::Sheet;

/// Asking.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Leaving;

impl Leaving {
    /// Takes a key: Enter leaves, any other stays.
    pub(crate) fn press(key: Key) -> Vec<Act> {
        if key == Key::Enter { vec![Act::Close, Act::Leave] } else { vec![Act::Close] }
    }

    /// Draws it.
    pub(crate) fn draw(cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        let mut page = Sheet::new(area.width);
        page.paragraph(&cx.wording.leave_title(), Ink::Strong);
        page.gap();
        page.paragraph(&cx.wording.leave_kept(), Ink::Plain);
        page.paragraph(&cx.wording.leave_keys(), Ink::Strong);
        page.draw(0, area, buffer);
    }
}
