//! The Journal drawn.

use ratatui::buffer::Buffer;
use ratatui::layout::{Constraint, Layout, Rect};

use super::Journal;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::{Column, Row, Sheet, Table};
use crate::nursery::entry::Entry;

/// The widest person's name shown in the list.
const WHO_MOST: usize = 12;

/// Draws it.
pub(crate) fn draw(journal: &Journal, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    let mut rest = area;
    if journal.searching || !journal.search.is_empty() {
        let line = Rect { height: 1.min(rest.height), ..rest };
        let label = format!("{} ", cx.wording.journal_search());
        buffer.set_stringn(line.x, line.y, &label, usize::from(line.width), Ink::Strong.style());
        let x = line.x + (crate::dashboard::parts::width_of(&label) as u16).min(line.width);
        journal.search.draw(Rect { x, width: line.right() - x, ..line }, buffer, journal.searching);
        rest = Rect { y: rest.y + line.height, height: rest.height - line.height, ..rest };
    }
    if cx.is_wide() {
        let [list, _, detail] =
            Layout::horizontal([Constraint::Percentage(62), Constraint::Length(3), Constraint::Fill(1)]).areas(rest);
        draw_list(journal, cx, list, buffer);
        draw_detail(journal, cx, detail, buffer);
    } else if journal.detail {
        draw_detail(journal, cx, rest, buffer);
    } else {
        draw_list(journal, cx, rest, buffer);
    }
}

fn draw_list(journal: &Journal, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    let wording = cx.wording;
    let entries = journal.entries(cx);
    if entries.is_empty() {
        let mut page = Sheet::new(area.width);
        let message = match &cx.book.found {
            None => wording.confirm_waiting_short(),
            Some(_) if journal.search.is_empty() => wording.no_entries(),
            Some(_) => wording.journal_none(journal.search.text()),
        };
        page.paragraph(&message, Ink::Plain);
        page.draw(0, area, buffer);
        return;
    }
    let withdrawn = |entry: &Entry| cx.book.found.as_ref().is_some_and(|found| found.withdrawn.contains_key(&entry.id));
    let rows = entries
        .iter()
        .map(|entry| {
            let (mark, ink) = if withdrawn(entry) { ("x", Ink::Waits) } else { (" ", Ink::Plain) };
            let message = wording.what_sentence(&entry.what, &cx.book.picture.site.species);
            Row::Cells(vec![
                (wording.day_beside(entry.happened, cx.book.now.today), Ink::Plain),
                (mark.to_string(), ink),
                (message, Ink::Plain),
                (wording.who_told(&entry.who), Ink::Plain),
            ])
        })
        .collect();
    let columns = vec![
        Column::words(wording.journal_day(), 0, 12),
        Column::words("", 0, 1),
        Column::sentences(wording.journal_what(), 0, 120),
        Column::words(wording.journal_who(), 1, WHO_MOST),
    ];
    Table { columns, rows, chosen: journal.at(cx) }.draw(area, buffer);
}

fn draw_detail(journal: &Journal, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    let Some(entry) = journal.entry(cx) else { return };
    let wording = cx.wording;
    let mut page = Sheet::new(area.width);
    page.paragraph(&wording.kind_name(entry.what.kind()), Ink::Strong);
    page.gap();
    page.paragraph(&cx.entry(entry), Ink::Plain);
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
    let offset = cx.book.picture.site.nursery.on(entry.happened).map_or(0.0, |nursery| nursery.utc_offset_h.0);
    page.labelled(&labels[1], &wording.day(entry.recorded.day(offset)));
    page.labelled(&labels[2], &wording.who_told(&entry.who));
    page.labelled(&labels[3], &entry.id.to_string());
    if let Some(by) = cx.book.found.as_ref().and_then(|found| found.withdrawn.get(&entry.id)) {
        page.gap();
        page.labelled_in(&labels[4], &wording.journal_by(by), Ink::Waits);
    } else {
        page.gap();
        page.paragraph(&wording.journal_counts(), Ink::Quiet);
    }
    page.draw(0, area, buffer);
}
