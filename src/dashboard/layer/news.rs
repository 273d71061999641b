//! What changed since yesterday, and which entry or day changed it.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;
use std::collections::BTreeMap;
use std::sync::Arc;

use crate::base::{Day, EntryId};
use crate::dashboard::act::Act;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::keys::Key;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::Sheet;
use crate::nursery::entry::Entry;
use crate::reckon::changes::by_cause::{Because, Kind, by_cause};
use crate::reckon::{Change, Picture};

/// What one cause turned.
#[derive(Clone, Debug)]
pub(crate) struct NewsOf {
    kind: Kind,
    cause: String,
    turned: Vec<String>,
}

/// What changed.
#[derive(Clone, Debug)]
pub(crate) struct News {
    day: Day,
    lines: Option<Vec<NewsOf>>,
    from: usize,
}

impl News {
    /// Asked; the clerk is comparing.
    pub(crate) fn since(day: Day) -> News {
        News { day, lines: None, from: 0 }
    }

    /// What changed, cause by cause.
    pub(crate) fn found(&mut self, lines: Vec<NewsOf>) {
        self.lines = Some(lines);
    }

    /// Takes a key.
    pub(crate) fn press(&mut self, key: Key, cx: &ScreenContext<'_>) -> Vec<Act> {
        let page = usize::from(cx.size.1).saturating_sub(6).max(1);
        match key {
            Key::Esc | Key::Char('q' | 'e') | Key::Enter => return vec![Act::Close],
            Key::Down => self.from += 1,
            Key::Up => self.from = self.from.saturating_sub(1),
            Key::PageDown | Key::Char('.') => self.from += page,
            Key::PageUp | Key::Char(',') => self.from = self.from.saturating_sub(page),
            _ => {}
        }
        self.from = self.from.min(self.page(cx, cx.size.0).last_start(cx.size.1.saturating_sub(6)));
        Vec::new()
    }

    fn page(&self, cx: &ScreenContext<'_>, width: u16) -> Sheet {
        let wording = cx.wording;
        let mut page = Sheet::new(width);
        let doubts = &cx.book.picture.doubts;
        if !doubts.is_empty() {
            page.heading(&wording.doubts_heading());
            for doubt in doubts {
                page.hanging("! ", Ink::Waits, &wording.doubt(doubt, &cx.book.picture.site.species), Ink::Plain);
            }
        }
        let unplanned = &cx.book.picture.unplanned;
        if !unplanned.is_empty() {
            page.heading(&wording.unplanned_heading());
            for tray in unplanned {
                page.hanging("! ", Ink::Waits, &wording.unplanned(tray, &cx.book.picture), Ink::Plain);
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
                for told in lines {
                    page.gap();
                    let (mark, ink) = match told.kind {
                        Kind::Loss => ("- ", Ink::Danger),
                        Kind::Gain => ("+ ", Ink::Good),
                        Kind::Other => ("  ", Ink::Plain),
                    };
                    page.hanging(mark, ink, &told.cause, Ink::Strong);
                    told.turned.iter().for_each(|turned| page.hanging("    ", Ink::Plain, turned, Ink::Plain));
                }
            }
        }
        page
    }

    /// Draws it.
    pub(crate) fn draw(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        self.page(cx, area.width).draw_marked(self.from, area, buffer);
    }
}

/// What changed, in words: each cause once, losses first, with all that it turned.
pub(crate) fn news_words(
    changed: &[Change],
    before: &Picture,
    entries: &[Arc<Entry>],
    cx: &ScreenContext<'_>,
) -> Vec<NewsOf> {
    let (wording, after) = (cx.wording, &*cx.book.picture);
    let by_name: BTreeMap<&EntryId, &Entry> = entries.iter().map(|entry| (&entry.id, &**entry)).collect();
    let of = |(because, together): (Because<'_>, Vec<&Change>)| {
        let known: Vec<&Entry> = because.entries.iter().filter_map(|id| by_name.get(id).copied()).collect();
        NewsOf {
            kind: because.kind,
            cause: wording.cause_words(&because, &known, after, |text| text),
            turned: together.iter().map(|change| wording.change_words(change, before, after)).collect(),
        }
    };
    by_cause(changed).into_iter().map(of).collect()
}
