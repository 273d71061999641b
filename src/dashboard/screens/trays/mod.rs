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

use super::{Screen, beside};
use crate::base::TrayCode;
use crate::dashboard::keys::{Does, Key, KeyLine, ON_A_TRAY, hinted, known};
use crate::dashboard::message::Act;
use crate::dashboard::model::On;
use crate::dashboard::parts::Typed;
use crate::nursery::entry::subject::Subject;
use rows::{Grouping, Order, shown, step};

/// The screen.
#[derive(Debug, Default)]
pub struct Trays {
    order: Order,
    filter: Typed,
    /// Whether the filter has the keys.
    typing: bool,
    chosen: Option<TrayCode>,
    /// Whether the detail is open, where it has no room beside the list.
    open: bool,
    /// The first line shown of the detail.
    from: usize,
}

impl Trays {
    /// The trays that are listed, in order.
    fn listed<'a>(&self, on: &On<'a>) -> Vec<&'a crate::reckon::picture::TrayPicture> {
        shown(&self.order, &self.filter.text(), on)
    }

    fn is_detail_shown(&self, on: &On<'_>) -> bool {
        on.is_wide() || self.open
    }

    /// Chooses the tray so many lines on; its history is asked for.
    fn move_by(&mut self, by: isize, on: &On<'_>) -> Vec<Act> {
        let to = step(&self.listed(on), self.chosen.as_ref(), by);
        self.choose(to, on)
    }

    fn choose(&mut self, to: Option<TrayCode>, on: &On<'_>) -> Vec<Act> {
        if to != self.chosen {
            self.from = 0;
            self.chosen = to;
        }
        self.ask_story(on)
    }

    fn ask_story(&self, on: &On<'_>) -> Vec<Act> {
        let subject = self.chosen.clone().map(Subject::Tray);
        let missing = subject.filter(|subject| on.book.story_of(subject).is_none());
        missing.map(Act::Story).into_iter().collect()
    }

    /// The list changed: what is chosen stays where it is still listed, else the first is.
    fn settle(&mut self, on: &On<'_>) -> Vec<Act> {
        let listed = self.listed(on);
        let there = self.chosen.as_ref().is_some_and(|code| listed.iter().any(|tray| tray.code == *code));
        if there {
            return self.ask_story(on);
        }
        let first = listed.first().map(|tray| tray.code.clone());
        self.choose(first, on)
    }

    fn scroll(&mut self, by: isize, on: &On<'_>) {
        let last = detail::last_line(self, on);
        self.from = self.from.min(last).saturating_add_signed(by).min(last);
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
        if self.open && !on.is_wide() {
            self.open = false;
            return Some(Vec::new());
        }
        if self.filter.is_empty() {
            return None;
        }
        self.filter.clear();
        Some(self.settle(on))
    }
}

impl Screen for Trays {
    fn keys(&self, on: &On<'_>) -> Vec<KeyLine> {
        let list = [hinted("i", Does::Filter), hinted("r", Does::Sort), hinted("j", Does::Group)];
        // What is not there need not be offered.
        let empty_too = KeyLine { hinted: rows::empty_trays(on) > 0, ..known("v", Does::EmptyToo) };
        let count = hinted("c", Does::Count);
        let mut keys = Vec::with_capacity(list.len() + ON_A_TRAY.len() + 2);
        if self.open && !on.is_wide() {
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
        let page = isize::from(i16::try_from(beside::page_lines(on)).unwrap_or(i16::MAX));
        let reading = self.open && !on.is_wide();
        match key {
            Key::Esc | Key::Char('q') => return self.go_back(on),
            Key::Char('i') => {
                self.typing = true;
                self.open = false;
            }
            Key::Char('r') => self.order.sort = self.order.sort.next(),
            Key::Char('j') => self.order.grouping = self.order.grouping.next(),
            Key::Char('v') => {
                self.order.empty_too = !self.order.empty_too;
                return Some(self.settle(on));
            }
            Key::Enter if self.chosen.is_some() && !on.is_wide() => self.open = true,
            Key::Up if reading => self.scroll(-1, on),
            Key::Down if reading => self.scroll(1, on),
            Key::Left if reading => return Some(self.move_by(-1, on)),
            Key::Right if reading => return Some(self.move_by(1, on)),
            Key::Up => return Some(self.move_by(-1, on)),
            Key::Down => return Some(self.move_by(1, on)),
            Key::Char('.' | ' ') if self.is_detail_shown(on) => self.scroll(page, on),
            Key::Char(',') if self.is_detail_shown(on) => self.scroll(-page, on),
            Key::PageDown if reading => self.scroll(page, on),
            Key::PageUp if reading => self.scroll(-page, on),
            Key::PageDown | Key::Char('.') => return Some(self.move_by(page, on)),
            Key::PageUp | Key::Char(',') => return Some(self.move_by(-page, on)),
            Key::Home => return Some(self.move_by(isize::MIN / 2, on)),
            Key::End => return Some(self.move_by(isize::MAX / 2, on)),
            _ => return None,
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
        view::draw(self, on, area, buffer);
    }

    fn chosen(&self, _on: &On<'_>) -> Option<Subject> {
        self.chosen.clone().map(Subject::Tray)
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
                self.open = true;
                self.from = 0;
                self.chosen = Some(code.clone());
                true
            }
            Subject::Place(name) => {
                self.order.grouping = Grouping::Place;
                self.filter.clear();
                self.typing = false;
                self.open = false;
                self.from = 0;
                let first = self.listed(on).into_iter().find(|tray| tray.place.as_ref() == Some(name));
                let Some(first) = first else { return false };
                self.chosen = Some(first.code.clone());
                true
            }
            Subject::Bed(_) | Subject::Lot(_) | Subject::Site => false,
        }
    }

    fn refresh(&mut self, on: &On<'_>) -> Vec<Act> {
        self.settle(on)
    }
}
