//! Help: every key with its word, made from the one key table.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use crate::base::text::folded;
use crate::dashboard::act::Act;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::keys::{EVERYWHERE, Key, KeyLine};
use crate::dashboard::look::Ink;
use crate::dashboard::parts::{Sheet, Typed};

/// Help, with the keys of the screen it was opened on.
#[derive(Clone, Debug)]
pub(crate) struct Help {
    here: Vec<KeyLine>,
    signs: Vec<(String, String)>,
    from: usize,
    search: Option<Typed>,
}

impl Help {
    /// Opens help for a screen's keys and signs; its search has the keys only after `f`.
    pub(crate) fn new(here: Vec<KeyLine>, signs: Vec<(String, String)>) -> Help {
        Help { here, signs, from: 0, search: None }
    }

    /// Whether a word is typed to be looked for.
    pub(super) fn searches(&self) -> bool {
        self.search.is_some()
    }

    /// Takes a key.
    pub(crate) fn press(&mut self, key: Key, cx: &ScreenContext<'_>) -> Vec<Act> {
        if let Some(search) = &mut self.search {
            match key {
                Key::Esc | Key::Enter => self.search = None,
                other => {
                    search.press(other);
                    self.from = 0;
                }
            }
            return Vec::new();
        }
        let page = usize::from(cx.size.1).saturating_sub(6).max(1);
        match key {
            Key::Esc | Key::Char('q' | 'h' | '?') | Key::Enter => return vec![Act::Close],
            Key::Char('f' | '/') => self.search = Some(Typed::default()),
            Key::Down => self.from += 1,
            Key::Up => self.from = self.from.saturating_sub(1),
            Key::PageDown | Key::Char('.') => self.from += page,
            Key::PageUp | Key::Char(',') => self.from = self.from.saturating_sub(page),
            Key::Home => self.from = 0,
            _ => {}
        }
        self.from = self.from.min(self.page(cx, cx.size.0).last_start(cx.size.1.saturating_sub(6)));
        Vec::new()
    }

    /// Takes text that came at once.
    pub(crate) fn text(&mut self, text: &str) -> Vec<Act> {
        self.search.get_or_insert_with(Typed::default).insert(text);
        Vec::new()
    }

    fn page(&self, cx: &ScreenContext<'_>, width: u16) -> Sheet {
        let wording = cx.wording;
        let wanted = self.search.as_ref().map(|typed| folded(&typed.text())).unwrap_or_default();
        let does = |line: &KeyLine| wording.key_does(&line.does.to_string());
        let fits = |line: &&KeyLine| wanted.is_empty() || folded(&does(line)).contains(&wanted);
        let mut page = Sheet::new(width);
        let keys = |line: &KeyLine| wording.keys_named(line.keys);
        let named: Vec<String> = EVERYWHERE.iter().chain(&self.here).map(keys).collect();
        page.labels(named.iter().map(String::as_str));
        page.paragraph(&wording.help_title(), Ink::Strong);
        match &self.search {
            Some(typed) => page.paragraph(&wording.help_search(typed.text()), Ink::Plain),
            None => page.paragraph(&wording.help_find(), Ink::Quiet),
        }
        let parts = [(wording.help_here(), self.here.as_slice()), (wording.help_everywhere(), EVERYWHERE)];
        let mut shown = 0;
        for (heading, lines) in parts {
            let lines: Vec<&KeyLine> = lines.iter().filter(fits).collect();
            if !lines.is_empty() {
                page.heading(&heading);
                lines.iter().for_each(|line| page.labelled(&keys(line), &does(line)));
            }
            shown += lines.len();
        }
        if shown == 0 {
            page.gap();
            page.paragraph(&wording.help_none(), Ink::Plain);
        }
        if wanted.is_empty() && !self.signs.is_empty() {
            page.heading(&wording.help_signs());
            self.signs.iter().for_each(|(sign, means)| page.labelled(sign, means));
        }
        if wanted.is_empty() {
            page.heading(&wording.help_in_form());
            page.paragraph(&wording.form_keys(), Ink::Plain);
        }
        page
    }

    /// Draws it.
    pub(crate) fn draw(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        self.page(cx, area.width).draw_marked(self.from, area, buffer);
    }
}
