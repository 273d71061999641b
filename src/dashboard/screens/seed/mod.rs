//! The screen Seed: which lots there are, how long they live the way they are kept, what their tests said, and what came
//! of them. A list beside the lot that is chosen in it.

mod detail;
mod list;
#[cfg(test)]
mod tests;
mod view;

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::list_detail::{ListDetail, Place};
use crate::base::LotCode;
use crate::dashboard::act::{Act, WhyOf};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::form::begun;
use crate::dashboard::keys::{Key, KeyAction, KeyLine, hinted, known};
use crate::dashboard::parts::{Sheet, Typed};
use crate::dashboard::screens::screen::Screen;
use crate::nursery::entry::subject::Subject;
use detail::Asked;
use list::{LotLine, listed};

/// Figures of a number of plants that is asked for. Ours: no nursery wants ten millions.
const MOST_FIGURES: usize = 7;

/// The screen.
#[derive(Debug, Default)]
pub(crate) struct Seed {
    place: Place<LotCode>,
    /// Whether lots of which nothing is left are listed too.
    used_up_too: bool,
    /// For how many plants it is to be enough; empty: for the places open in the beds.
    plants: Typed,
    /// Whether that number has the keys.
    typing: bool,
    /// Whether it stood there before it got the keys: the first figure takes its place.
    fresh: bool,
}

impl Seed {
    fn lines<'a>(&self, cx: &ScreenContext<'a>) -> Vec<LotLine<'a>> {
        listed(cx, self.used_up_too)
    }

    fn asked(&self) -> Asked {
        Asked { plants: self.wanted(), typed: self.plants.text(), typing: self.typing }
    }

    /// For how many plants it is asked.
    fn wanted(&self) -> Option<u32> {
        self.plants.text().parse().ok().filter(|plants| *plants > 0)
    }

    /// Keys while the number of plants is typed: figures go in, the rest is passed over.
    fn press_typing(&mut self, key: Key, cx: &ScreenContext<'_>) -> Vec<Act> {
        if matches!(key, Key::Char(letter) if letter.is_ascii_digit()) {
            self.give_way();
        }
        match key {
            Key::Enter | Key::Esc | Key::Tab => self.typing = false,
            Key::Backspace if self.plants.is_empty() => self.typing = false,
            Key::Up => return self.move_by(-1, cx),
            Key::Down => return self.move_by(1, cx),
            Key::Char(letter) if !letter.is_ascii_digit() || self.plants.text().len() >= MOST_FIGURES => {}
            other => {
                self.plants.press(other);
            }
        }
        self.fresh = false;
        Vec::new()
    }

    /// What stood there before gives way to what is typed now.
    fn give_way(&mut self) {
        if std::mem::take(&mut self.fresh) {
            self.plants.clear();
        }
    }

    /// The form of a kind for the lot that is chosen.
    fn form(&self, kind: &str, cx: &ScreenContext<'_>) -> Vec<Act> {
        let subject = self.place.chosen.clone().map(Subject::Lot);
        subject.map(|subject| Act::Form(begun(kind, Some(&subject), cx))).into_iter().collect()
    }
}

impl ListDetail for Seed {
    type Id = LotCode;

    fn place(&self) -> &Place<LotCode> {
        &self.place
    }

    fn place_mut(&mut self) -> &mut Place<LotCode> {
        &mut self.place
    }

    fn ids(&self, cx: &ScreenContext<'_>) -> Vec<LotCode> {
        self.lines(cx).into_iter().map(|line| line.lot.code.clone()).collect()
    }

    fn subject(lot: LotCode) -> Subject {
        Subject::Lot(lot)
    }

    fn page(&self, cx: &ScreenContext<'_>, width: u16) -> Option<Sheet> {
        list::chosen(self.place.chosen.as_ref(), cx).map(|line| detail::page(&line, self.asked(), cx, width))
    }

    fn draw_list(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        view::draw_list(self, cx, area, buffer);
    }
}

impl Screen for Seed {
    fn keys(&self, cx: &ScreenContext<'_>) -> Vec<KeyLine> {
        let mut keys = vec![
            hinted("s", KeyAction::SowLot),
            hinted("i", KeyAction::SowFor),
            hinted("t", KeyAction::TestLot),
            hinted("c", KeyAction::CountLot),
            hinted("k", KeyAction::KeepLot),
            // What is not there need not be offered.
            KeyLine { hinted: list::used_up(cx) > 0, ..known("v", KeyAction::UsedUpToo) },
            known("a", KeyAction::Note),
        ];
        if !cx.is_wide() && !self.place.open {
            keys.insert(0, hinted("Enter", KeyAction::Open));
        }
        keys
    }

    fn answers(&self, cx: &ScreenContext<'_>) -> String {
        cx.wording.answers_seed()
    }

    fn goes_back(&self, cx: &ScreenContext<'_>) -> bool {
        self.place.is_reading(cx)
    }

    fn press(&mut self, key: Key, cx: &ScreenContext<'_>) -> Option<Vec<Act>> {
        if self.typing {
            return Some(self.press_typing(key, cx));
        }
        match key {
            Key::Char('i') => {
                (self.typing, self.fresh) = (true, true);
                // The number is asked for on top of the detail.
                self.place.open = true;
                self.place.from = 0;
                Some(Vec::new())
            }
            Key::Char('s') => Some(self.form("sown", cx)),
            Key::Char('t') => Some(self.form("lot_tested", cx)),
            Key::Char('c') => Some(self.form("lot_counted", cx)),
            Key::Char('k') => Some(self.form("lot_kept", cx)),
            Key::Char('a') => Some(self.form("noted", cx)),
            Key::Char('v') => {
                self.used_up_too = !self.used_up_too;
                Some(self.settle(cx))
            }
            other => self.press_about(other, cx),
        }
    }

    fn draw(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        self.draw_beside(cx, area, buffer);
    }

    fn chosen(&self, _cx: &ScreenContext<'_>) -> Option<Subject> {
        self.place.chosen.clone().map(Subject::Lot)
    }

    fn why(&self, cx: &ScreenContext<'_>) -> Option<WhyOf> {
        let line = list::chosen(self.place.chosen.as_ref(), cx)?;
        Some(WhyOf::Lot(line.lot.code.clone(), self.wanted()))
    }

    fn text(&mut self, text: &str, _cx: &ScreenContext<'_>) -> Option<Vec<Act>> {
        if !self.typing {
            return None;
        }
        self.give_way();
        let figures: String = text.chars().filter(char::is_ascii_digit).take(MOST_FIGURES).collect();
        if self.plants.text().len() + figures.len() <= MOST_FIGURES {
            self.plants.insert(&figures);
        }
        Some(Vec::new())
    }

    fn go_to(&mut self, subject: &Subject, cx: &ScreenContext<'_>) -> bool {
        let Subject::Lot(code) = subject else { return false };
        let Some(lot) = cx.book.picture.lots.get(code) else { return false };
        self.used_up_too |= lot.seeds_left == Some(0);
        self.typing = false;
        self.place.open_at(code.clone());
        true
    }

    fn refresh(&mut self, cx: &ScreenContext<'_>) -> Vec<Act> {
        self.settle(cx)
    }
}
