//! What changed since yesterday, and which entry or day changed it.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;
use std::sync::Arc;

use crate::base::Day;
use crate::dashboard::keys::Key;
use crate::dashboard::look::Ink;
use crate::dashboard::message::Act;
use crate::dashboard::model::On;
use crate::dashboard::parts::Page;
use crate::nursery::entry::Entry;
use crate::reckon::changes::{Cause, Turned};
use crate::reckon::{Change, Picture};

/// What changed.
#[derive(Clone, Debug)]
pub struct News {
    day: Day,
    lines: Option<Vec<(String, Vec<String>)>>,
    from: usize,
}

impl News {
    /// Asked; the clerk is comparing.
    pub fn since(day: Day) -> News {
        News { day, lines: None, from: 0 }
    }

    /// What changed, each with its causes.
    pub fn found(&mut self, lines: Vec<(String, Vec<String>)>) {
        self.lines = Some(lines);
    }

    /// Takes a key.
    pub fn press(&mut self, key: Key, on: &On<'_>) -> Vec<Act> {
        let page = usize::from(on.size.1).saturating_sub(6).max(1);
        match key {
            Key::Esc | Key::Char('q' | 'e') | Key::Enter => return vec![Act::Close],
            Key::Down => self.from += 1,
            Key::Up => self.from = self.from.saturating_sub(1),
            Key::PageDown | Key::Char('.') => self.from += page,
            Key::PageUp | Key::Char(',') => self.from = self.from.saturating_sub(page),
            _ => {}
        }
        self.from = self.from.min(self.page(on, on.size.0).last_start(on.size.1.saturating_sub(6)));
        Vec::new()
    }

    fn page(&self, on: &On<'_>, width: u16) -> Page {
        let wording = on.wording;
        let mut page = Page::new(width);
        let doubts = &on.book.picture.doubts;
        if !doubts.is_empty() {
            page.heading(&wording.doubts_heading());
            for doubt in doubts {
                page.hanging("! ", Ink::Waits, &wording.doubt(doubt, &on.book.picture.site.species), Ink::Plain);
            }
        }
        page.heading(&wording.news_title(wording.day(self.day)));
        page.gap();
        match &self.lines {
            None => page.paragraph(&wording.news_waiting(), Ink::Quiet),
            Some(lines) if lines.is_empty() => {
                page.paragraph(&wording.change_none(wording.day(self.day)), Ink::Plain);
            }
            Some(lines) => {
                for (what, causes) in lines {
                    page.hanging("- ", Ink::Plain, what, Ink::Strong);
                    causes.iter().for_each(|cause| page.hanging("    ", Ink::Plain, cause, Ink::Plain));
                }
            }
        }
        page
    }

    /// Draws it.
    pub fn draw(&self, on: &On<'_>, area: Rect, buffer: &mut Buffer) {
        self.page(on, area.width).draw(self.from, area, buffer);
    }
}

/// What changed, in words, each with what changed it.
pub fn news_words(
    changed: &[Change],
    before: &Picture,
    entries: &[Arc<Entry>],
    on: &On<'_>,
) -> Vec<(String, Vec<String>)> {
    let (wording, after) = (on.wording, &on.book.picture);
    let all = &after.site.species;
    let species_of = |turned: &Turned| {
        let Turned::Tray { tray, .. } = turned else { return String::new() };
        let pictured = after.trays.get(tray).or_else(|| before.trays.get(tray));
        on.species(pictured.and_then(|tray| tray.species.as_ref()))
    };
    changed
        .iter()
        .map(|change| {
            let [what, was, is] = wording.turned_words(&change.turned, species_of, all);
            let mut causes: Vec<String> = Vec::new();
            for flip in &change.flips {
                let said = match &flip.cause {
                    Cause::Passed(passage) => wording.passage_words(*passage),
                    Cause::Entries(ids) => {
                        let named = entries.iter().filter(|entry| ids.contains(&entry.id));
                        named.map(|entry| on.entry(entry)).collect::<Vec<_>>().join("; ")
                    }
                };
                if !said.is_empty() && !causes.contains(&said) {
                    causes.push(said);
                }
            }
            (wording.change_turned(what, was, is), causes)
        })
        .collect()
}
