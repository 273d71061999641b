//! How the list of the trays is drawn: a line that says what is listed and how, and the trays.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::Trays;
use super::rows::{Grouping, Line, Sort, empty_trays, lines};
use crate::base::Day;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::{Ink, stage_mark};
use crate::dashboard::parts::{Column, Row, Sheet, Table, width_of};
use crate::reckon::picture::{Stage, TrayPicture};
use crate::reckon::tray::size::whole_plants;

/// From this height on the line above the list is shown.
const HEADED_FROM: u16 = 7;

/// Draws the list.
pub(crate) fn draw_list(screen: &Trays, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    let mut rest = area;
    if screen.typing || !screen.filter.is_empty() {
        draw_filter(screen, cx, Rect { height: 1.min(area.height), ..area }, buffer);
        rest = below(rest, 1);
    }
    let lines = lines(&screen.order, &screen.filter.text(), cx);
    if lines.is_empty() {
        let mut page = Sheet::new(rest.width);
        page.paragraph(&empty_words(screen, cx), Ink::Plain);
        page.draw(0, rest, buffer);
        return;
    }
    if area.height >= HEADED_FROM {
        let message = summary(screen, &lines, cx, usize::from(rest.width));
        buffer.set_string(rest.x, rest.y, message, Ink::Quiet.style());
        rest = below(rest, 1);
    }
    let chosen = lines.iter().position(|line| match line {
        Line::Tray(tray) => Some(&tray.code) == screen.place.chosen.as_ref(),
        Line::Heading(_) => false,
    });
    let rows = lines.iter().map(|line| row(line, cx)).collect();
    Table { columns: columns(screen, cx), rows, chosen }.draw(rest, buffer);
}

fn below(area: Rect, lines: u16) -> Rect {
    let lines = lines.min(area.height);
    Rect { y: area.y + lines, height: area.height - lines, ..area }
}

/// The line in which the filter is typed, or that says which is in force.
fn draw_filter(screen: &Trays, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    if area.height == 0 {
        return;
    }
    let label = cx.wording.trays_only();
    buffer.set_stringn(area.x, area.y, &label, usize::from(area.width), Ink::Strong.style());
    let used = (width_of(&label) as u16 + 1).min(area.width);
    let hint = if screen.typing { cx.wording.trays_filter_typing() } else { cx.wording.trays_filter_kept() };
    let room = area.width - used;
    let hint_room = width_of(&hint) as u16 + 2;
    // The hint gives way to what is typed.
    let with_hint = room >= hint_room + 12 && room - hint_room > width_of(&screen.filter.text()) as u16;
    let typed = Rect { x: area.x + used, width: if with_hint { room - hint_room } else { room }, ..area };
    screen.filter.draw(typed, buffer, screen.typing);
    if with_hint {
        buffer.set_string(area.right() - hint_room + 2, area.y, hint, Ink::Quiet.style());
    }
}

fn empty_words(screen: &Trays, cx: &ScreenContext<'_>) -> String {
    if !screen.filter.is_empty() {
        cx.wording.trays_none_fits(screen.filter.text())
    } else if cx.book.picture.trays.is_empty() {
        cx.wording.no_trays()
    } else {
        cx.wording.trays_all_empty(empty_trays(cx) as i64)
    }
}

/// What is listed and how, as many parts as have room, each whole.
fn summary(screen: &Trays, lines: &[Line<'_>], cx: &ScreenContext<'_>, room: usize) -> String {
    let wording = cx.wording;
    let trays: Vec<&TrayPicture> = lines
        .iter()
        .filter_map(|line| match line {
            Line::Tray(tray) => Some(*tray),
            Line::Heading(_) => None,
        })
        .collect();
    let plants: u64 = trays.iter().map(|tray| u64::from(tray.standing)).sum();
    let mut parts = vec![wording.trays(trays.len() as i64), wording.plants(i64::try_from(plants).unwrap_or(i64::MAX))];
    parts.push(wording.trays_sorted(column_title(screen.order.sort, cx)));
    let empty = empty_trays(cx);
    if empty > 0 && !screen.order.empty_too {
        parts.push(wording.trays_empty_hidden(empty as i64));
    }
    let mut message = String::new();
    for part in parts {
        let longer = if message.is_empty() { part } else { format!("{message} · {part}") };
        if width_of(&longer) > room {
            break;
        }
        message = longer;
    }
    message
}

fn column_title(sort: Sort, cx: &ScreenContext<'_>) -> String {
    let wording = cx.wording;
    match sort {
        Sort::Tray => wording.trays_column_tray(),
        Sort::Species => wording.trays_column_species(),
        Sort::Stage => wording.label_stage(),
        Sort::Standing => wording.label_standing(),
        Sort::Plantable => wording.label_plantable(),
        Sort::Age => wording.trays_column_age(),
        Sort::ReadyFrom => wording.label_ready_from(),
        Sort::BestBefore => wording.label_best_before(),
        Sort::Place => wording.label_place(),
    }
}

/// The columns. What drops first where there is little room: the place, the age, best before, what is plantable, the
/// species, ready from, the number standing; the tray and its stage stay.
fn columns(screen: &Trays, cx: &ScreenContext<'_>) -> Vec<Column> {
    let grouped = |grouping: Grouping| screen.order.grouping == grouping;
    Sort::ALL
        .iter()
        .map(|sort| {
            let mut title = column_title(*sort, cx);
            if *sort == screen.order.sort {
                title.push_str(" ↓");
            }
            match sort {
                Sort::Tray => Column::words(title, 0, 26),
                // What the headings say need not stand in every line.
                Sort::Species if grouped(Grouping::Species) => Column::words(title, 9, 0),
                Sort::Species => Column::words(title, 3, 18),
                Sort::Stage => Column::words(title, 0, 20),
                Sort::Standing => Column::figures(title, 1, 12),
                Sort::Plantable => Column::figures(title, 4, 14),
                Sort::Age => Column::figures(title, 6, 10),
                Sort::ReadyFrom => Column::figures(title, 2, 14),
                Sort::BestBefore => Column::figures(title, 5, 14),
                Sort::Place if grouped(Grouping::Place) => Column::words(title, 8, 0),
                Sort::Place => Column::words(title, 7, 24),
            }
        })
        .collect()
}

fn row(line: &Line<'_>, cx: &ScreenContext<'_>) -> Row {
    let tray = match line {
        Line::Heading(text) => return Row::Heading(text.clone()),
        Line::Tray(tray) => tray,
    };
    let (mark, ink) = stage_mark(tray.stage);
    let empty = tray.stage == Stage::Spent;
    let plain = |text: String| (text, Ink::Plain);
    Row::Cells(vec![
        plain(tray.code.to_string()),
        plain(cx.species(tray.species.as_ref())),
        (format!("{mark} {}", cx.wording.stage_name(tray.stage)), ink),
        plain(if empty { String::new() } else { tray.standing.to_string() }),
        plain(plantable(tray)),
        plain(tray.age_days.filter(|_| !empty).map_or_else(String::new, |days| days.to_string())),
        ready_from(tray, cx),
        best_before(tray, cx),
        plain(tray.place.as_ref().map_or_else(String::new, ToString::to_string)),
    ])
}

/// Whole plants from the low to the high end: "28-41".
fn plantable(tray: &TrayPicture) -> String {
    if tray.standing == 0 {
        return String::new();
    }
    let (low, high) = (tray.plantable.low.floor().max(0.0), tray.plantable.high.ceil().max(0.0));
    if tray.plantable.high - tray.plantable.low < 0.5 {
        whole_plants(tray.plantable.likely).to_string()
    } else {
        format!("{low:.0}–{high:.0}")
    }
}

fn ready_from(tray: &TrayPicture, cx: &ScreenContext<'_>) -> (String, Ink) {
    match tray.ready_from {
        _ if tray.stage == Stage::Spent => (String::new(), Ink::Plain),
        _ if tray.ready => (cx.wording.trays_now(), Ink::Good),
        Some(day) => (cx.wording.day_beside(day, cx.day()), Ink::Plain),
        // Something holds it back of which nobody can say when it ends; not before this day in any case.
        None => match tray.not_before().filter(|day| *day > cx.day()) {
            Some(day) => (format!("{}?", cx.wording.day_beside(day, cx.day())), Ink::Plain),
            None => ("?".to_string(), Ink::Plain),
        },
    }
}

fn best_before(tray: &TrayPicture, cx: &ScreenContext<'_>) -> (String, Ink) {
    let past = |day: Day| day < cx.day();
    match tray.best_before.filter(|_| tray.stage != Stage::Spent && tray.standing > 0) {
        Some(day) if past(day) => (format!("! {}", cx.wording.day_beside(day, cx.day())), Ink::Danger),
        Some(day) => (cx.wording.day_beside(day, cx.day()), Ink::Plain),
        None => (String::new(), Ink::Plain),
    }
}
