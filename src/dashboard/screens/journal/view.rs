//! The Journal drawn.

use ratatui::buffer::Buffer;
use ratatui::layout::{Constraint, Layout, Rect};

use super::Journal;
use crate::dashboard::context::On;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::{Column, Page, Row, Table};
use crate::nursery::entry::Entry;

/// The widest person's name shown in the list.
const WHO_MOST: usize = 12;

/// Draws it.
pub fn draw(journal: &Journal, on: &On<'_>, area: Rect, buffer: &mut Buffer) {
    let mut rest = area;
    if journal.searching || !journal.search.is_empty() {
        let line = Rect { height: 1.min(rest.height), ..rest };
        let label = format!("{} ", on.wording.journal_search());
        buffer.set_stringn(line.x, line.y, &label, usize::from(line.width), Ink::Strong.style());
        let x = line.x + (crate::dashboard::parts::width_of(&label) as u16).min(line.width);
        journal.search.draw(Rect { x, width: line.right() - x, ..line }, buffer, journal.searching);
        rest = Rect { y: rest.y + line.height, height: rest.height - line.height, ..rest };
    }
    if on.is_wide() {
        let [list, _, detail] =
            Layout::horizontal([Constraint::Percentage(62), Constraint::Length(3), Constraint::Fill(1)]).areas(rest);
        draw_list(journal, on, list, buffer);
        draw_detail(journal, on, detail, buffer);
    } else if journal.detail {
        draw_detail(journal, on, rest, buffer);
    } else {
        draw_list(journal, on, rest, buffer);
    }
}

fn draw_list(journal: &Journal, on: &On<'_>, area: Rect, buffer: &mut Buffer) {
    let wording = on.wording;
    let entries = journal.entries(on);
    if entries.is_empty() {
        let mut page = Page::new(area.width);
        let said = match &on.book.found {
            None => wording.confirm_waiting_short(),
            Some(_) if journal.search.is_empty() => wording.no_entries(),
            Some(_) => wording.journal_none(journal.search.text()),
        };
        page.paragraph(&said, Ink::Plain);
        page.draw(0, area, buffer);
        return;
    }
    let withdrawn = |entry: &Entry| on.book.found.as_ref().is_some_and(|found| found.withdrawn.contains_key(&entry.id));
    let rows = entries
        .iter()
        .map(|entry| {
            let (mark, ink) = if withdrawn(entry) { ("x", Ink::Waits) } else { (" ", Ink::Plain) };
            let said = wording.what_sentence(&entry.what, &on.book.picture.site.species);
            Row::Cells(vec![
                (wording.day_beside(entry.happened, on.book.now.today), Ink::Plain),
                (mark.to_string(), ink),
                (said, Ink::Plain),
                (entry.who.to_string(), Ink::Plain),
            ])
        })
        .collect();
    let columns = vec![
        Column::words(wording.journal_day(), 0, 12),
        Column::words("", 0, 1),
        Column::sentences(wording.journal_what(), 0, 120),
        Column::words(wording.journal_who(), 1, WHO_MOST),
    ];
    Table { columns, rows, chosen: journal.at(on) }.draw(area, buffer);
}

fn draw_detail(journal: &Journal, on: &On<'_>, area: Rect, buffer: &mut Buffer) {
    let Some(entry) = journal.entry(on) else { return };
    let wording = on.wording;
    let mut page = Page::new(area.width);
    page.paragraph(&wording.kind_name(entry.what.kind()), Ink::Strong);
    page.gap();
    page.paragraph(&on.entry(entry), Ink::Plain);
    page.gap();
    let labels = [
        wording.journal_day(),
        wording.journal_recorded(),
        wording.journal_who(),
        wording.journal_number(),
        wording.journal_taken_back(),
    ];
    page.labels(labels.iter().map(String::as_str));
    page.labelled(&labels[0], &wording.day(entry.happened));
    let offset = on.book.picture.site.nursery.on(entry.happened).map_or(0.0, |nursery| nursery.utc_offset_h.0);
    page.labelled(&labels[1], &wording.day(entry.recorded.day(offset)));
    page.labelled(&labels[2], &entry.who);
    page.labelled(&labels[3], &entry.id.to_string());
    if let Some(by) = on.book.found.as_ref().and_then(|found| found.withdrawn.get(&entry.id)) {
        page.gap();
        page.labelled_in(&labels[4], &wording.journal_by(by), Ink::Waits);
    } else {
        page.gap();
        page.paragraph(&wording.journal_counts(), Ink::Quiet);
    }
    page.draw(0, area, buffer);
}
