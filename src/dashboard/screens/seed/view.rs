//! How the list of the lots is drawn.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::list::{LotLine, state_mark, used_up};
use super::{Seed, detail};
use crate::base::Day;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::{Column, Row, Sheet, Table, width_of};
use crate::reckon::seed::{LotState, came_up, germinated, sown_from};

/// From this height on the line above the list is shown.
const HEADED_FROM: u16 = 7;

/// Draws the list.
pub(crate) fn draw_list(screen: &Seed, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    let lines = screen.lines(cx);
    let used_up = used_up(cx);
    if lines.is_empty() {
        let message = if used_up == 0 { cx.wording.no_lots() } else { cx.wording.seed_all_used_up(used_up as i64) };
        let mut page = Sheet::new(area.width);
        page.paragraph(&message, Ink::Plain);
        page.draw(0, area, buffer);
        return;
    }
    let mut rest = area;
    if area.height >= HEADED_FROM {
        let mut message = cx.wording.seed_lots(lines.len() as i64);
        let hidden = cx.wording.seed_hidden(used_up as i64);
        let fits = width_of(&message) + 3 + width_of(&hidden) <= usize::from(area.width);
        if used_up > 0 && !screen.used_up_too && fits {
            message = format!("{message} · {hidden}");
        }
        buffer.set_stringn(rest.x, rest.y, message, usize::from(rest.width), Ink::Quiet.style());
        rest = Rect { y: rest.y + 1, height: rest.height - 1, ..rest };
    }
    let at = lines.iter().position(|line| Some(&line.lot.code) == screen.place.chosen.as_ref());
    let rows = lines.iter().map(|line| row(line, cx)).collect();
    Table { columns: columns(cx), rows, chosen: at }.draw(rest, buffer);
}

/// The columns. What drops first where there is little room: the day of collection, what came up, the next test, how it
/// is kept, the last test, the species, the seed left, the days left; the lot and its state stay.
fn columns(cx: &ScreenContext<'_>) -> Vec<Column> {
    let wording = cx.wording;
    vec![
        Column::words(wording.seed_column_lot(), 0, 26),
        Column::words(wording.trays_column_species(), 3, 18),
        Column::words(wording.seed_column_state(), 0, 18),
        Column::figures(wording.seed_column_left(), 2, 14),
        Column::figures(wording.seed_column_days_left(), 1, 12),
        Column::figures(wording.seed_column_test(), 4, 12),
        Column::words(wording.seed_column_kept(), 5, 20),
        Column::figures(wording.seed_column_next_test(), 6, 14),
        Column::figures(wording.seed_column_came_up(), 7, 12),
        Column::figures(wording.seed_column_collected(), 8, 14),
    ]
}

fn row(line: &LotLine<'_>, cx: &ScreenContext<'_>) -> Row {
    let (lot, wording) = (line.lot, cx.wording);
    let near = |day: Day| wording.day_beside(day, cx.day());
    let (mark, ink) = state_mark(line.state);
    let plain = |text: Option<String>| (text.unwrap_or_default(), Ink::Plain);
    let over = matches!(line.state, LotState::Dead | LotState::UsedUp);
    let share = |share: f64| wording.percent((share * 100.0).round() / 100.0);
    let tested = lot.tests.last().and_then(germinated).map(|range| share(range.likely));
    let came = came_up(&sown_from(&cx.book.picture, &lot.code)).and_then(|came| came.share);
    Row::Cells(vec![
        plain(Some(lot.code.to_string())),
        plain(Some(cx.species(lot.species.as_ref()))),
        (format!("{mark} {}", wording.lot_state_name(line.state)), ink),
        plain(Some(detail::left_words(lot, cx))),
        plain(line.life.as_ref().filter(|_| !over).map(|life| life.days_left(cx.day()).to_string())),
        plain(tested),
        plain(lot.kept.last().map(|spell| wording.kept_name(spell.what))),
        next_test(line, cx),
        plain(came.map(|range| share(range.likely))),
        plain(lot.collected.map(near)),
    ])
}

fn next_test(line: &LotLine<'_>, cx: &ScreenContext<'_>) -> (String, Ink) {
    let due = line.test_due_from(cx).filter(|_| !matches!(line.state, LotState::Dead | LotState::UsedUp));
    match due {
        None => (String::new(), Ink::Plain),
        Some(day) if day <= cx.day() => (format!("! {}", cx.wording.trays_now()), Ink::Waits),
        Some(day) => (cx.wording.day_beside(day, cx.day()), Ink::Plain),
    }
}
