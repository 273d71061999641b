//! Before something is taken back: what, in words, and another key than the one that asked.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;
use std::sync::Arc;

use crate::dashboard::act::Act;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::keys::Key;
use crate::dashboard::look::Ink;
use crate::dashboard::message::Request;
use crate::dashboard::parts::Sheet;
use crate::desk::Withdraws;
use crate::nursery::entry::Entry;

/// The most entries named; the rest is counted.
const MOST: usize = 12;

/// Asking before taking back.
#[derive(Clone, Debug)]
pub(crate) struct Confirm {
    /// What is to be taken back.
    pub(crate) what: Withdraws,
    /// The request that looks what it would undo, and later the one that undoes it.
    pub(crate) ticket: u64,
    who: String,
    why: String,
    entries: Option<Vec<Arc<Entry>>>,
    fault: Vec<String>,
}

impl Confirm {
    /// Asks; the clerk is looking what it would undo.
    pub(crate) fn new(what: Withdraws, ticket: u64, who: String, why: String) -> Confirm {
        Confirm { what, ticket, who, why, entries: None, fault: Vec::new() }
    }

    /// What it would undo.
    pub(crate) fn found(&mut self, entries: Vec<Arc<Entry>>) {
        self.entries = Some(entries);
    }

    /// Why it cannot be.
    pub(crate) fn refused(&mut self, fault: Vec<String>) {
        self.fault = fault;
    }

    /// Takes a key.
    pub(crate) fn press(&mut self, key: Key) -> Vec<Act> {
        if key.goes_back() {
            return vec![Act::Close];
        }
        let known = self.entries.as_ref().is_some_and(|entries| !entries.is_empty());
        if key == Key::Char('w') && known && self.fault.is_empty() {
            let request = Request::TakeBack {
                ticket: self.ticket,
                what: self.what.clone(),
                together: true,
                who: self.who.clone(),
                why: self.why.clone(),
            };
            return vec![Act::Close, Act::Ask(request)];
        }
        Vec::new()
    }

    /// Draws it.
    pub(crate) fn draw(&self, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
        let wording = cx.wording;
        let mut page = Sheet::new(area.width);
        page.paragraph(&wording.confirm_title(), Ink::Strong);
        page.gap();
        match &self.entries {
            None if self.fault.is_empty() => page.paragraph(&wording.confirm_waiting(), Ink::Quiet),
            None => {}
            Some(entries) => {
                for entry in entries.iter().take(MOST) {
                    page.hanging("- ", Ink::Danger, &cx.entry(entry), Ink::Plain);
                }
                if entries.len() > 1 {
                    page.gap();
                    page.paragraph(&wording.confirm_rests(entries.len() as i64), Ink::Plain);
                }
            }
        }
        for text in &self.fault {
            page.hanging("x ", Ink::Danger, text, Ink::Plain);
        }
        page.gap();
        page.paragraph(&wording.confirm_keys(), Ink::Strong);
        page.draw(0, area, buffer);
    }
}
