//! A list with the detail of what is chosen beside it, or one of the two where there is no room for both.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use crate::dashboard::act::Act;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::keys::Key;
use crate::dashboard::look::Ink;
use crate::dashboard::message::Request;
use crate::dashboard::parts::Sheet;
use crate::nursery::entry::subject::Subject;

/// Columns between the list and the detail.
const BETWEEN: u16 = 3;
/// The list takes so many of a hundred columns beside its detail.
const LIST_PERCENT: u16 = 55;
/// And at most so many in all.
const LIST_MOST: u16 = 112;
/// Lines of the frame around a screen, as many as there can be without banners.
const FRAME_LINES: u16 = 6;

/// Where a person is in a list and its detail.
#[derive(Clone, Debug)]
pub(crate) struct Place<Id> {
    /// What is chosen, by its id.
    pub(crate) chosen: Option<Id>,
    /// Whether the detail is open, where it has no room beside the list.
    pub(crate) open: bool,
    /// The first line shown of the detail.
    pub(crate) from: usize,
}

impl<Id> Default for Place<Id> {
    fn default() -> Place<Id> {
        Place { chosen: None, open: false, from: 0 }
    }
}

impl<Id> Place<Id> {
    /// Chooses something and opens its detail from the top.
    pub(crate) fn open_at(&mut self, id: Id) {
        *self = Place { chosen: Some(id), open: true, from: 0 };
    }

    /// Whether the detail alone is shown.
    pub(crate) fn is_reading(&self, cx: &ScreenContext<'_>) -> bool {
        self.open && !cx.is_wide()
    }
}

/// A screen that is a list with the detail of what is chosen in it.
pub(crate) trait ListDetail {
    /// What a line is known by.
    type Id: Clone + PartialEq;

    /// Where the person is.
    fn place(&self) -> &Place<Self::Id>;

    /// The same, to be changed.
    fn place_mut(&mut self) -> &mut Place<Self::Id>;

    /// The lines that can be chosen, in order.
    fn ids(&self, cx: &ScreenContext<'_>) -> Vec<Self::Id>;

    /// What a line is about.
    fn subject(id: Self::Id) -> Subject;

    /// The detail of what is chosen.
    fn page(&self, cx: &ScreenContext<'_>, width: u16) -> Option<Sheet>;

    /// Draws the list alone.
    fn draw_list(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer);

    /// Chooses a line; its history is asked for where it is not here.
    fn choose(&mut self, to: Option<Self::Id>, cx: &ScreenContext<'_>) -> Vec<Act> {
        let place = self.place_mut();
        if to != place.chosen {
            place.from = 0;
            place.chosen.clone_from(&to);
        }
        let missing = to.map(Self::subject).filter(|subject| cx.book.story_of(subject).is_none());
        missing.map(|subject| Act::Ask(Request::Story(subject))).into_iter().collect()
    }

    /// Chooses the line so many below; the first where none was.
    fn move_by(&mut self, by: isize, cx: &ScreenContext<'_>) -> Vec<Act> {
        let ids = self.ids(cx);
        let Some(last) = ids.len().checked_sub(1) else { return self.choose(None, cx) };
        let at = ids.iter().position(|id| Some(id) == self.place().chosen.as_ref());
        let to = at.map_or(0, |at| at.saturating_add_signed(by).min(last));
        self.choose(ids.get(to).cloned(), cx)
    }

    /// The list changed: what is chosen stays where it is still listed, else the first is.
    fn settle(&mut self, cx: &ScreenContext<'_>) -> Vec<Act> {
        let ids = self.ids(cx);
        let there = ids.iter().find(|id| Some(*id) == self.place().chosen.as_ref());
        let to = there.or(ids.first()).cloned();
        self.choose(to, cx)
    }

    /// Moves the detail by so many lines, at most until its last line is seen.
    fn scroll(&mut self, by: isize, cx: &ScreenContext<'_>) {
        let page = self.page(cx, detail_columns(cx));
        let last = page.map_or(0, |page| page.last_start(page_lines(cx)));
        let place = self.place_mut();
        place.from = place.from.min(last).saturating_add_signed(by).min(last);
    }

    /// Takes the keys that move about in the list and its detail; none for all others.
    fn press_about(&mut self, key: Key, cx: &ScreenContext<'_>) -> Option<Vec<Act>> {
        let page = isize::from(i16::try_from(page_lines(cx)).unwrap_or(i16::MAX));
        let reading = self.place().is_reading(cx);
        let shown = reading || cx.is_wide();
        let scrolled = match key {
            Key::Up if reading => -1,
            Key::Down if reading => 1,
            Key::PageDown if reading => page,
            Key::PageUp if reading => -page,
            Key::Char('.' | ' ') if shown => page,
            Key::Char(',') if shown => -page,
            Key::Esc | Key::Char('q') if reading => {
                self.place_mut().open = false;
                0
            }
            Key::Enter if self.place().chosen.is_some() && !cx.is_wide() => {
                self.place_mut().open = true;
                0
            }
            Key::Left if reading => return Some(self.move_by(-1, cx)),
            Key::Right if reading => return Some(self.move_by(1, cx)),
            Key::Up => return Some(self.move_by(-1, cx)),
            Key::Down => return Some(self.move_by(1, cx)),
            Key::PageDown | Key::Char('.') => return Some(self.move_by(page, cx)),
            Key::PageUp | Key::Char(',') => return Some(self.move_by(-page, cx)),
            Key::Home => return Some(self.move_by(isize::MIN / 2, cx)),
            Key::End => return Some(self.move_by(isize::MAX / 2, cx)),
            _ => return None,
        };
        if scrolled != 0 {
            self.scroll(scrolled, cx);
        }
        Some(Vec::new())
    }

    /// Draws the list and the detail, or the one of them there is room for.
    fn draw_beside(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        let reading = self.place().is_reading(cx) && self.place().chosen.is_some();
        let (list, detail) = match (cx.is_wide(), reading) {
            (true, _) => {
                let (list, detail) = split(area);
                (Some(list), Some(detail))
            }
            (false, true) => (None, Some(area)),
            (false, false) => (Some(area), None),
        };
        if let Some(list) = list {
            self.draw_list(cx, list, buffer);
        }
        if let Some(detail) = detail
            && let Some(page) = self.page(cx, detail.width)
        {
            draw_detail(&page, self.place().from, cx, detail, buffer);
        }
    }
}

fn list_columns(columns: u16) -> u16 {
    (u32::from(columns) * u32::from(LIST_PERCENT) / 100).min(u32::from(LIST_MOST)) as u16
}

/// The areas of the list and of the detail, on a wide terminal.
fn split(area: Rect) -> (Rect, Rect) {
    let list = Rect { width: list_columns(area.width), ..area };
    let x = (list.right() + BETWEEN).min(area.right());
    (list, Rect { x, width: area.right() - x, ..area })
}

/// Columns of the detail on this terminal.
pub(crate) fn detail_columns(cx: &ScreenContext<'_>) -> u16 {
    if cx.is_wide() { split(Rect::new(0, 0, cx.size.0, 1)).1.width } else { cx.size.0 }
}

/// Lines that a page of the list or of the detail surely has on this terminal.
fn page_lines(cx: &ScreenContext<'_>) -> u16 {
    cx.size.1.saturating_sub(FRAME_LINES + 2).max(1)
}

/// Draws the detail from a line on, with a last line that says how much stands below.
fn draw_detail(page: &Sheet, from: usize, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    let whole = page.height() <= usize::from(area.height);
    let body = if whole { area } else { Rect { height: area.height.saturating_sub(1), ..area } };
    let below = page.draw(from, body, buffer);
    if whole || area.height == 0 {
        return;
    }
    let text = if below > 0 { cx.wording.trays_more_below(below as i64) } else { cx.wording.trays_back_above() };
    let text = Sheet::shortened(&text, usize::from(area.width));
    buffer.set_string(area.x, area.bottom() - 1, text, Ink::Quiet.style());
}
