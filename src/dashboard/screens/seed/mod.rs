//! The screen Seed: which lots there are, how long they live the way they are kept, what their tests said, and what came
//! of them. A list beside the lot that is chosen in it.

mod detail;
mod list;
#[cfg(test)]
mod tests;
mod view;

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::{Screen, beside};
use crate::base::LotCode;
use crate::dashboard::form::FormFor;
use crate::dashboard::keys::{Does, Key, KeyLine, hinted, known};
use crate::dashboard::layer::WhyOf;
use crate::dashboard::message::Act;
use crate::dashboard::model::On;
use crate::nursery::entry::subject::Subject;
use list::{LotLine, listed};

/// The screen.
#[derive(Debug, Default)]
pub struct Seed {
    chosen: Option<LotCode>,
    /// Whether lots of which nothing is left are listed too.
    used_up_too: bool,
    /// Whether the detail is open, where it has no room beside the list.
    open: bool,
    /// The first line shown of the detail.
    from: usize,
}

impl Seed {
    fn lines<'a>(&self, on: &On<'a>) -> Vec<LotLine<'a>> {
        listed(on, self.used_up_too)
    }

    fn move_by(&mut self, by: isize, on: &On<'_>) -> Vec<Act> {
        let lines = self.lines(on);
        let Some(last) = lines.len().checked_sub(1) else { return Vec::new() };
        let at = lines.iter().position(|line| Some(&line.lot.code) == self.chosen.as_ref());
        let to = at.map_or(0, |at| at.saturating_add_signed(by).min(last));
        self.choose(lines.get(to).map(|line| line.lot.code.clone()), on)
    }

    /// Chooses a lot; its history is asked for.
    fn choose(&mut self, to: Option<LotCode>, on: &On<'_>) -> Vec<Act> {
        if to != self.chosen {
            self.from = 0;
            self.chosen = to;
        }
        let subject = self.chosen.clone().map(Subject::Lot);
        let missing = subject.filter(|subject| on.book.story_of(subject).is_none());
        missing.map(Act::Story).into_iter().collect()
    }

    /// The list changed: what is chosen stays where it is still listed, else the first is.
    fn settle(&mut self, on: &On<'_>) -> Vec<Act> {
        let lines = self.lines(on);
        let there = lines.iter().find(|line| Some(&line.lot.code) == self.chosen.as_ref());
        let to = there.or(lines.first()).map(|line| line.lot.code.clone());
        self.choose(to, on)
    }

    fn scroll(&mut self, by: isize, on: &On<'_>) {
        let last = detail::last_line(self, on);
        self.from = self.from.min(last).saturating_add_signed(by).min(last);
    }

    /// The form of a kind for the lot that is chosen.
    fn form(&self, kind: &str) -> Vec<Act> {
        let subject = self.chosen.clone().map(Subject::Lot);
        subject.map(|subject| Act::Form(FormFor::about(kind, Some(&subject)))).into_iter().collect()
    }
}

impl Screen for Seed {
    fn keys(&self, on: &On<'_>) -> Vec<KeyLine> {
        let mut keys = vec![
            hinted("s", Does::SowLot),
            hinted("t", Does::TestLot),
            hinted("c", Does::CountLot),
            hinted("k", Does::KeepLot),
            // What is not there need not be offered.
            KeyLine { hinted: list::used_up(on) > 0, ..known("v", Does::UsedUpToo) },
            known("a", Does::Note),
        ];
        if !on.is_wide() && !self.open {
            keys.insert(0, hinted("Enter", Does::Open));
        }
        keys
    }

    fn answers(&self, on: &On<'_>) -> String {
        on.wording.answers_seed()
    }

    fn press(&mut self, key: Key, on: &On<'_>) -> Option<Vec<Act>> {
        let page = isize::from(i16::try_from(beside::page_lines(on)).unwrap_or(i16::MAX));
        let reading = self.open && !on.is_wide();
        match key {
            Key::Esc | Key::Char('q') if reading => self.open = false,
            Key::Char('s') => return Some(self.form("sown")),
            Key::Char('t') => return Some(self.form("lot_tested")),
            Key::Char('c') => return Some(self.form("lot_counted")),
            Key::Char('k') => return Some(self.form("lot_kept")),
            Key::Char('a') => return Some(self.form("noted")),
            Key::Char('v') => {
                self.used_up_too = !self.used_up_too;
                return Some(self.settle(on));
            }
            Key::Enter if self.chosen.is_some() && !on.is_wide() => self.open = true,
            Key::Up if reading => self.scroll(-1, on),
            Key::Down if reading => self.scroll(1, on),
            Key::Left if reading => return Some(self.move_by(-1, on)),
            Key::Right if reading => return Some(self.move_by(1, on)),
            Key::Up => return Some(self.move_by(-1, on)),
            Key::Down => return Some(self.move_by(1, on)),
            Key::Char('.' | ' ') if reading || on.is_wide() => self.scroll(page, on),
            Key::Char(',') if reading || on.is_wide() => self.scroll(-page, on),
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

    fn draw(&self, on: &On<'_>, area: Rect, buffer: &mut Buffer) {
        view::draw(self, on, area, buffer);
    }

    fn chosen(&self, _on: &On<'_>) -> Option<Subject> {
        self.chosen.clone().map(Subject::Lot)
    }

    fn why(&self, on: &On<'_>) -> Option<WhyOf> {
        let line = list::chosen(self.chosen.as_ref(), on)?;
        Some(detail::why_life(&line, on).unwrap_or_else(|| WhyOf::About(Subject::Lot(line.lot.code.clone()))))
    }

    fn go_to(&mut self, subject: &Subject, on: &On<'_>) -> bool {
        let Subject::Lot(code) = subject else { return false };
        let Some(lot) = on.book.picture.lots.get(code) else { return false };
        self.used_up_too |= lot.seeds_left == Some(0);
        self.chosen = Some(code.clone());
        self.open = true;
        self.from = 0;
        true
    }

    fn refresh(&mut self, on: &On<'_>) -> Vec<Act> {
        self.settle(on)
    }
}
