//! The screen Trays: what there is, how it is doing, when it is ready. A list beside the tray that is chosen in it.

mod charts;
mod detail;
mod going;
mod rows;
#[cfg(test)]
mod tests;
mod view;

pub(crate) use detail::drawing_of_stage;

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::list_detail::{ListDetail, Place};
use crate::base::TrayCode;
use crate::dashboard::act::Act;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::form::begun;
use crate::dashboard::keys::{Key, KeyAction, KeyLine, ON_A_TRAY, hinted, known};
use crate::dashboard::parts::{Sheet, Typed};
use crate::dashboard::screens::screen::Screen;
use crate::dashboard::screens::signs::stage_signs;
use crate::nursery::entry::subject::Subject;
use crate::reckon::picture::Stage;
use crate::reckon::picture::answered::Answered;
use rows::{Grouping, Order, shown};

/// The screen.
#[derive(Debug, Default)]
pub(crate) struct Trays {
    order: Order,
    filter: Typed,
    /// Whether the filter has the keys.
    typing: bool,
    place: Place<TrayCode>,
}

impl Trays {
    /// The trays that are listed, in order.
    fn listed<'a>(&self, cx: &ScreenContext<'a>) -> Vec<&'a crate::reckon::picture::TrayPicture> {
        shown(&self.order, &self.filter.text(), cx)
    }

    /// Keys while the filter is typed: every letter goes in, and the list follows.
    fn press_typing(&mut self, key: Key, cx: &ScreenContext<'_>) -> Vec<Act> {
        match key {
            // What was typed stays in force; q takes it away.
            Key::Enter | Key::Esc | Key::Tab => self.typing = false,
            Key::Backspace if self.filter.is_empty() => self.typing = false,
            Key::Up => return self.move_by(-1, cx),
            Key::Down => return self.move_by(1, cx),
            other => {
                self.filter.press(other);
                return self.settle(cx);
            }
        }
        Vec::new()
    }

    /// Closes what is open, the innermost first; none where nothing is.
    fn go_back(&mut self, cx: &ScreenContext<'_>) -> Option<Vec<Act>> {
        if self.place.is_reading(cx) {
            self.place.open = false;
            return Some(Vec::new());
        }
        if self.filter.is_empty() {
            return None;
        }
        self.filter.clear();
        Some(self.settle(cx))
    }
}

impl ListDetail for Trays {
    type Id = TrayCode;

    fn place(&self) -> &Place<TrayCode> {
        &self.place
    }

    fn place_mut(&mut self) -> &mut Place<TrayCode> {
        &mut self.place
    }

    fn ids(&self, cx: &ScreenContext<'_>) -> Vec<TrayCode> {
        self.listed(cx).into_iter().map(|tray| tray.code.clone()).collect()
    }

    fn subject(tray: TrayCode) -> Subject {
        Subject::Tray(tray)
    }

    fn page(&self, cx: &ScreenContext<'_>, width: u16) -> Option<Sheet> {
        let tray = cx.book.picture.trays.get(self.place.chosen.as_ref()?)?;
        Some(detail::page(tray, cx, width))
    }

    fn draw_list(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        view::draw_list(self, cx, area, buffer);
    }
}

impl Screen for Trays {
    fn keys(&self, cx: &ScreenContext<'_>) -> Vec<KeyLine> {
        let list = [hinted("i", KeyAction::Filter), hinted("r", KeyAction::Sort), hinted("j", KeyAction::Group)];
        // What is not there need not be offered.
        let empty_too = KeyLine { hinted: rows::empty_trays(cx) > 0, ..known("v", KeyAction::EmptyToo) };
        let count = hinted("c", KeyAction::Count);
        let mut keys = Vec::with_capacity(list.len() + ON_A_TRAY.len() + 2);
        if self.place.is_reading(cx) {
            // In the detail alone what is done to the tray comes first.
            keys.push(count);
            keys.extend(list.iter().map(|line| known(line.keys, line.does)));
        } else {
            if !cx.is_wide() {
                keys.push(hinted("Enter", KeyAction::Open));
            }
            keys.extend(list);
            keys.push(count);
        }
        keys.push(hinted("Space", KeyAction::Carry));
        keys.push(empty_too);
        keys.extend(ON_A_TRAY.iter().filter(|line| line.keys != "c"));
        keys
    }

    fn signs(&self, cx: &ScreenContext<'_>) -> Vec<(String, String)> {
        let wording = cx.wording;
        let day = wording.day_beside(cx.day(), cx.day());
        let days = [
            ("?".to_string(), wording.sign_no_day()),
            (format!("{day}?"), wording.sign_not_before()),
            (format!("! {day}"), wording.sign_past()),
        ];
        let questions = Answered::ALL.into_iter().map(|how| (how.mark().to_string(), wording.answered_words(how)));
        stage_signs(cx).into_iter().chain(days).chain(questions).collect()
    }

    fn answers(&self, cx: &ScreenContext<'_>) -> String {
        cx.wording.answers_trays()
    }

    fn goes_back(&self, cx: &ScreenContext<'_>) -> bool {
        self.place.is_reading(cx) || !self.filter.is_empty()
    }

    fn press(&mut self, key: Key, cx: &ScreenContext<'_>) -> Option<Vec<Act>> {
        if self.typing {
            return Some(self.press_typing(key, cx));
        }
        match key {
            Key::Esc | Key::Char('q') => return self.go_back(cx),
            Key::Char('i') => {
                self.typing = true;
                self.place.open = false;
            }
            Key::Char(' ') => {
                let tray = self.chosen(cx);
                return Some(tray.map(|tray| Act::Form(begun("carried", Some(&tray), cx))).into_iter().collect());
            }
            Key::Char('r') => self.order.sort = self.order.sort.next(),
            Key::Char('j') => self.order.grouping = self.order.grouping.next(),
            Key::Char('v') => {
                self.order.empty_too = !self.order.empty_too;
                return Some(self.settle(cx));
            }
            other => return self.press_about(other, cx),
        }
        Some(Vec::new())
    }

    fn types_text(&self) -> bool {
        self.typing
    }

    fn text(&mut self, text: &str, cx: &ScreenContext<'_>) -> Option<Vec<Act>> {
        if !self.typing {
            return None;
        }
        self.filter.insert(text.trim());
        Some(self.settle(cx))
    }

    fn draw(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        self.draw_beside(cx, area, buffer);
    }

    fn chosen(&self, _cx: &ScreenContext<'_>) -> Option<Subject> {
        self.place.chosen.clone().map(Subject::Tray)
    }

    fn go_to(&mut self, subject: &Subject, cx: &ScreenContext<'_>) -> bool {
        let picture = &cx.book.picture;
        match subject {
            Subject::Tray(code) => {
                let Some(tray) = picture.trays.get(code) else { return false };
                self.order.empty_too |= tray.stage == Stage::Spent;
                // A filter that hides it is taken away.
                if !self.listed(cx).iter().any(|listed| listed.code == *code) {
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
                let first = self.listed(cx).into_iter().find(|tray| tray.place.as_ref() == Some(name));
                let Some(first) = first else { return false };
                self.place.chosen = Some(first.code.clone());
                true
            }
            Subject::Bed(_) | Subject::Lot(_) | Subject::Site => false,
        }
    }

    fn refresh(&mut self, cx: &ScreenContext<'_>) -> Vec<Act> {
        self.settle(cx)
    }
}
