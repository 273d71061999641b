//! The screen Trays: what there is, how it is doing, when it is ready. A list beside the tray that is chosen in it.

mod charts;
mod detail;
mod going;
mod rows;
#[cfg(test)]
mod tests;
mod view;

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::beside::{Beside, Place};
use crate::base::TrayCode;
use crate::dashboard::act::Act;
use crate::dashboard::context::On;
use crate::dashboard::keys::{Does, Key, KeyLine, ON_A_TRAY, hinted, known};
use crate::dashboard::parts::{Page, Typed};
use crate::dashboard::screens::screen::Screen;
use crate::nursery::entry::subject::Subject;
use rows::{Grouping, Order, shown};

/// The screen.
#[derive(Debug, Default)]
pub struct Trays {
    order: Order,
    filter: Typed,
    /// Whether the filter has the keys.
    typing: bool,
    place: Place<TrayCode>,
}

impl Trays {
    /// The trays that are listed, in order.
    fn listed<'a>(&self, on: &On<'a>) -> Vec<&'a crate::reckon::picture::TrayPicture> {
        shown(&self.order, &self.filter.text(), on)
    }

    /// Keys while the filter is typed: every letter goes in, and the list follows.
    fn press_typing(&mut self, key: Key, on: &On<'_>) -> Vec<Act> {
        match key {
            // What was typed stays in force; q takes it away.
            Key::Enter | Key::Esc | Key::Tab => self.typing = false,
            Key::Backspace if self.filter.is_empty() => self.typing = false,
            Key::Up => return self.move_by(-1, on),
            Key::Down => return self.move_by(1, on),
            other => {
                self.filter.press(other);
                return self.settle(on);
            }
        }
        Vec::new()
    }

    /// Closes what is open, the innermost first; none where nothing is.
    fn go_back(&mut self, on: &On<'_>) -> Option<Vec<Act>> {
        if self.place.is_reading(on) {
            self.place.open = false;
            return Some(Vec::new());
        }
        if self.filter.is_empty() {
            return None;
        }
        self.filter.clear();
        Some(self.settle(on))
    }
}

impl Beside for Trays {
    type Id = TrayCode;

    fn place(&self) -> &Place<TrayCode> {
        &self.place
    }

    fn place_mut(&mut self) -> &mut Place<TrayCode> {
        &mut self.place
    }

    fn ids(&self, on: &On<'_>) -> Vec<TrayCode> {
        self.listed(on).into_iter().map(|tray| tray.code.clone()).collect()
    }

    fn subject(tray: TrayCode) -> Subject {
        Subject::Tray(tray)
    }

    fn page(&self, on: &On<'_>, width: u16) -> Option<Page> {
        let tray = on.book.picture.trays.get(self.place.chosen.as_ref()?)?;
        Some(detail::page(tray, on, width))
    }

    fn draw_list(&self, on: &On<'_>, area: Rect, buffer: &mut Buffer) {
        view::draw_list(self, on, area, buffer);
    }
}

impl Screen for Trays {
    fn keys(&self, on: &On<'_>) -> Vec<KeyLine> {
        let list = [hinted("i", Does::Filter), hinted("r", Does::Sort), hinted("j", Does::Group)];
        // What is not there need not be offered.
        let empty_too = KeyLine { hinted: rows::empty_trays(on) > 0, ..known("v", Does::EmptyToo) };
        let count = hinted("c", Does::Count);
        let mut keys = Vec::with_capacity(list.len() + ON_A_TRAY.len() + 2);
        if self.place.is_reading(on) {
            // In the detail alone what is done to the tray comes first.
            keys.push(count);
            keys.extend(list.iter().map(|line| known(line.keys, line.does)));
        } else {
            if !on.is_wide() {
                keys.push(hinted("Enter", Does::Open));
            }
            keys.extend(list);
            keys.push(count);
        }
        keys.push(empty_too);
        keys.extend(ON_A_TRAY.iter().filter(|line| line.keys != "c"));
        keys
    }

    fn answers(&self, on: &On<'_>) -> String {
        on.wording.answers_trays()
    }

    fn press(&mut self, key: Key, on: &On<'_>) -> Option<Vec<Act>> {
        if self.typing {
            return Some(self.press_typing(key, on));
        }
        match key {
            Key::Esc | Key::Char('q') => return self.go_back(on),
            Key::Char('i') => {
                self.typing = true;
                self.place.open = false;
            }
            Key::Char('r') => self.order.sort = self.order.sort.next(),
            Key::Char('j') => self.order.grouping = self.order.grouping.next(),
            Key::Char('v') => {
                self.order.empty_too = !self.order.empty_too;
                return Some(self.settle(on));
            }
            other => return self.press_about(other, on),
        }
        Some(Vec::new())
    }

    fn text(&mut self, text: &str, on: &On<'_>) -> Option<Vec<Act>> {
        if !self.typing {
            return None;
        }
        self.filter.insert(text.trim());
        Some(self.settle(on))
    }

    fn draw(&self, on: &On<'_>, area: Rect, buffer: &mut Buffer) {
        self.draw_beside(on, area, buffer);
    }

    fn chosen(&self, _on: &On<'_>) -> Option<Subject> {
        self.place.chosen.clone().map(Subject::Tray)
    }

    fn go_to(&mut self, subject: &Subject, on: &On<'_>) -> bool {
        let picture = &on.book.picture;
        match subject {
            Subject::Tray(code) => {
                let Some(tray) = picture.trays.get(code) else { return false };
                self.order.empty_too |= tray.stage == crate::reckon::picture::Stage::Spent;
                // A filter that hides it is taken away.
                if !self.listed(on).iter().any(|listed| listed.code == *code) {
                    self.filter.clear();
                }
                self.typing = false;
                self.place.open_at(code.clone());
                true
            }
            Subject::Place(name) => {
                self.order.grouping = Grouping::Place;
                self.filter.clear();
                self.typing = false;
                self.place.open = false;
                self.place.from = 0;
                let first = self.listed(on).into_iter().find(|tray| tray.place.as_ref() == Some(name));
                let Some(first) = first else { return false };
                self.place.chosen = Some(first.code.clone());
                true
            }
            Subject::Bed(_) | Subject::Lot(_) | Subject::Site => false,
        }
    }

    fn refresh(&mut self, on: &On<'_>) -> Vec<Act> {
        self.settle(on)
    }
}
