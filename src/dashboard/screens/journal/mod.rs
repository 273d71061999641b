//! The Journal: everything written, newest first, found by any word in it; what no longer counts stays to be read.

#[cfg(test)]
mod tests;
mod view;

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;
use std::sync::Arc;

use crate::base::EntryId;
use crate::dashboard::act::{Act, WhyOf};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::keys::{Key, KeyAction, KeyLine, hinted, known};
use crate::dashboard::parts::Typed;
use crate::dashboard::screens::screen::Screen;
use crate::desk::Withdraws;
use crate::nursery::entry::Entry;
use crate::nursery::entry::subject::{Subject, subjects};

/// So many entries are asked for at first, and so many more when the last one is reached.
const AT_ONCE: usize = 300;

/// The screen.
#[derive(Debug)]
pub(crate) struct Journal {
    chosen: Option<EntryId>,
    search: Typed,
    searching: bool,
    detail: bool,
    wanted: usize,
}

impl Default for Journal {
    fn default() -> Journal {
        Journal { chosen: None, search: Typed::default(), searching: false, detail: false, wanted: AT_ONCE }
    }
}

impl Journal {
    /// The entries that are here for what is searched; while others are looked for, the last ones stay.
    fn entries<'a>(&self, cx: &ScreenContext<'a>) -> &'a [Arc<Entry>] {
        cx.book.found.as_ref().map(|found| found.entries.as_slice()).unwrap_or_default()
    }

    fn at(&self, cx: &ScreenContext<'_>) -> Option<usize> {
        let chosen = self.chosen.as_ref()?;
        self.entries(cx).iter().position(|entry| entry.id == *chosen)
    }

    fn entry<'a>(&self, cx: &ScreenContext<'a>) -> Option<&'a Arc<Entry>> {
        self.at(cx).and_then(|at| self.entries(cx).get(at))
    }

    fn ask(&self) -> Vec<Act> {
        vec![Act::Entries(self.search.text(), self.wanted)]
    }

    fn step(&mut self, by: isize, cx: &ScreenContext<'_>) -> Vec<Act> {
        let entries = self.entries(cx);
        let last = entries.len() as isize - 1;
        let to = (self.at(cx).unwrap_or(0) as isize + by).clamp(0, last.max(0)) as usize;
        self.chosen = entries.get(to).map(|entry| entry.id.clone());
        let more = cx.book.found.as_ref().is_some_and(|found| found.more);
        if more && to + 1 >= entries.len() {
            self.wanted += AT_ONCE;
            return self.ask();
        }
        Vec::new()
    }

    fn press_in_search(&mut self, key: Key, cx: &ScreenContext<'_>) -> Vec<Act> {
        match key {
            Key::Esc => {
                self.searching = false;
                self.search.clear();
                self.wanted = AT_ONCE;
                self.ask()
            }
            Key::Enter | Key::Tab => {
                self.searching = false;
                Vec::new()
            }
            Key::Up => self.step(-1, cx),
            Key::Down => self.step(1, cx),
            other => {
                self.search.press(other);
                self.wanted = AT_ONCE;
                self.ask()
            }
        }
    }
}

impl Screen for Journal {
    fn keys(&self, _cx: &ScreenContext<'_>) -> Vec<KeyLine> {
        vec![
            hinted("j", KeyAction::Filter),
            hinted("r", KeyAction::Withdraw),
            known("g", KeyAction::GoThere),
            known("Enter", KeyAction::Open),
        ]
    }

    fn answers(&self, cx: &ScreenContext<'_>) -> String {
        cx.wording.answers_journal()
    }

    fn goes_back(&self, _cx: &ScreenContext<'_>) -> bool {
        self.detail || !self.search.is_empty()
    }

    fn press(&mut self, key: Key, cx: &ScreenContext<'_>) -> Option<Vec<Act>> {
        if self.searching {
            return Some(self.press_in_search(key, cx));
        }
        let page = isize::from(cx.size.1 as i16).saturating_sub(8).max(1);
        Some(match key {
            Key::Up => self.step(-1, cx),
            Key::Down => self.step(1, cx),
            Key::PageUp | Key::Char(',') => self.step(-page, cx),
            Key::PageDown | Key::Char('.') => self.step(page, cx),
            Key::Home => self.step(isize::MIN / 2, cx),
            Key::Enter if !cx.is_wide() => {
                self.detail = !self.detail;
                Vec::new()
            }
            Key::Char('j') => {
                self.searching = true;
                self.detail = false;
                Vec::new()
            }
            Key::Char('r') => {
                let chosen = self.entry(cx)?;
                vec![Act::TakeBack(Withdraws::EntryAlone(chosen.id.clone()))]
            }
            Key::Char('g') => {
                let about = subjects(&self.entry(cx)?.what);
                about.into_iter().next().map_or_else(Vec::new, |subject| vec![Act::Go(subject)])
            }
            key if key.goes_back() && self.detail => {
                self.detail = false;
                Vec::new()
            }
            key if key.goes_back() && !self.search.is_empty() => {
                self.search.clear();
                self.wanted = AT_ONCE;
                self.ask()
            }
            _ => return None,
        })
    }

    fn types_text(&self) -> bool {
        self.searching
    }

    fn text(&mut self, text: &str, _cx: &ScreenContext<'_>) -> Option<Vec<Act>> {
        if !self.searching {
            return None;
        }
        self.search.insert(text.trim());
        Some(self.ask())
    }

    fn draw(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        view::draw(self, cx, area, buffer);
    }

    fn chosen(&self, cx: &ScreenContext<'_>) -> Option<Subject> {
        // A letter that writes about a tray would be too near to taking back here.
        self.entry(cx)
            .and_then(|entry| subjects(&entry.what).into_iter().next())
            .filter(|s| !matches!(s, Subject::Tray(_)))
    }

    fn why(&self, cx: &ScreenContext<'_>) -> Option<WhyOf> {
        self.entry(cx).and_then(|entry| subjects(&entry.what).into_iter().next()).map(WhyOf::About)
    }

    fn refresh(&mut self, cx: &ScreenContext<'_>) -> Vec<Act> {
        let Some(found) = &cx.book.found else { return self.ask() };
        if self.chosen.as_ref().is_none_or(|chosen| !found.entries.iter().any(|entry| entry.id == *chosen)) {
            self.chosen = found.entries.first().map(|entry| entry.id.clone());
        }
        Vec::new()
    }
}
