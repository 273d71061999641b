//! The round drawn: how far one is, the stops under their places, and the chosen one in plain sentences.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::closing::was_let_go;
use super::plan::Mark;
use super::{Shown, Walk, usual};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::{Column, Row, Sheet, Table, width_of};
use crate::dashboard::screens::beds::bed_at_a_glance;
use crate::dashboard::screens::trays::drawing_of_stage;
use crate::nursery::entry::subject::Subject;
use crate::page::walk::{away, first_look};
use crate::reckon::picture::{Looking, NursePicture};
use crate::reckon::round::{Stop, Task};
use crate::wording::round::RoundOn;

/// Columns of the list beside its detail, of a hundred; and the most where what is to be done takes more.
const LIST_SHARE: u16 = 44;
const LIST_SHARE_MOST: u16 = 52;
/// Columns of the mark of a stop with the space behind it.
const MARK_ROOM: usize = 3;
/// The fewest rows of the list above its detail.
const LIST_LEAST: u16 = 3;
/// Rows that most details take.
const DETAIL_USUAL: u16 = 8;
/// The widest page that is read at ease.
const WIDEST_PAGE: u16 = 76;
/// The widest place in the line of its first stop, and the least and most of what was written at one: that it was skipped is said
/// whole in every language.
const PLACE_MOST: usize = 30;
const STATE_LEAST: usize = 10;
const STATE_MOST: usize = 24;
/// From this height on there is an empty row between the parts.
const AIRY: u16 = 15;

/// Draws the round.
pub(crate) fn draw(walk: &Walk, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    let shown = walk.shown(cx);
    if shown.is_empty() {
        draw_empty(walk, cx, area, buffer);
        return;
    }
    let gap = u16::from(area.height >= AIRY);
    draw_progress(walk, cx, area, buffer);
    let below = Rect { y: area.y + 1 + gap, height: area.height.saturating_sub(1 + gap), ..area };
    if below.height == 0 {
        return;
    }
    let rest = walk.rest(cx).len();
    if cx.is_wide() {
        let width = list_width(&shown, area.width, cx);
        let list = Rect { width, ..below };
        draw_list(walk, &shown, rest, cx, list, buffer);
        let x = area.x + width + 3;
        let detail = Rect { x, width: area.right().saturating_sub(x).min(WIDEST_PAGE), ..below };
        if let Some(page) = walk.closing_shown(cx, detail.width) {
            draw_page(walk, &page, cx, detail, buffer);
            return;
        }
        draw_detail(walk, cx, detail, buffer);
        draw_below_detail(walk, cx, detail, buffer);
        return;
    }
    let page = walk.closing_shown(cx, below.width).unwrap_or_else(|| detail(walk, cx, below.width));
    // What can wait keeps its line.
    let least = (LIST_LEAST + u16::from(rest > 0)).min(below.height);
    // The detail keeps its place from stop to stop.
    let wanted = (page.height() as u16).max(DETAIL_USUAL).min(below.height.saturating_sub(least + gap));
    let list = Rect { height: below.height - wanted - if wanted > 0 { gap } else { 0 }, ..below };
    draw_list(walk, &shown, rest, cx, list, buffer);
    let detail = Rect { y: below.bottom() - wanted, height: wanted, ..below };
    draw_page(walk, &page, cx, detail, buffer);
}

/// Columns of the list beside its detail: as many as its tasks and species take, within limits.
fn list_width(shown: &[Shown<'_>], width: u16, cx: &ScreenContext<'_>) -> u16 {
    let columns = |stop: &Shown<'_>| (width_of(&short_about(stop, cx)), width_of(&species_of(stop, cx)));
    let widest = shown.iter().map(columns).fold((0, 0), |widest, own| (widest.0.max(own.0), widest.1.max(own.1)));
    let (least, most) = (width * LIST_SHARE / 100, width * LIST_SHARE_MOST / 100);
    u16::try_from(MARK_ROOM + widest.0 + 2 + widest.1).unwrap_or(u16::MAX).clamp(least, most)
}

fn draw_empty(walk: &Walk, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    let mut page = Sheet::new(area.width.min(WIDEST_PAGE));
    let new = super::is_new(cx);
    page.paragraph(&cx.wording.empty_walk(), Ink::Strong);
    if new {
        page.gap();
        page.paragraph(&cx.wording.no_trays(), Ink::Plain);
        page.paragraph(&cx.wording.no_beds(), Ink::Plain);
    }
    page.gap();
    page.labelled_in("Enter", &if new { cx.wording.empty_begin() } else { cx.wording.key_does("write") }, Ink::Strong);
    let rest = walk.rest(cx).len();
    if rest > 0 {
        page.gap();
        page.paragraph(&cx.wording.walk_rest(rest as i64), Ink::Plain);
    }
    page.draw(0, area, buffer);
}

/// "12 of 31 · 38 of 45 min", what was skipped, and what the mark means where there is room.
fn draw_progress(walk: &Walk, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    let wording = cx.wording;
    let (behind, all) = walk.progress(cx);
    let plan = walk.plan_shown(cx);
    let mut message = walk.progress_words(cx);
    if behind == all {
        message = wording.walk_all_done(all as i64);
    }
    let skipped = plan.map_or(0, super::Plan::skipped);
    let room = usize::from(area.width);
    if skipped > 0 {
        let longer = format!("{message} · {}", wording.walk_skipped_count(skipped as i64));
        message = if width_of(&longer) <= room { longer } else { message };
    }
    buffer.set_string(area.x, area.y, Sheet::shortened(&message, room), Ink::Strong.style());
    let fits = |means: &String| width_of(&message) + width_of(means) + 4 <= room;
    let means = [wording.round_mark_means(), wording.walk_mark_short()].into_iter().find(fits);
    let any = walk.shown(cx).iter().any(Shown::loses_most);
    if let Some(means) = means.filter(|_| any) {
        let x = area.right() - width_of(&means) as u16;
        buffer.set_string(x, area.y, &means, Ink::Plain.style());
        buffer.set_string(x, area.y, "!", Ink::Danger.style());
    }
}

/// The mark of a stop and the word beside it.
pub(crate) fn mark_of(stop: &Shown<'_>, cx: &ScreenContext<'_>) -> (&'static str, Ink, String) {
    let wording = cx.wording;
    let said = match stop.message_before {
        "" => stop.message.to_string(),
        before => wording.walk_said_again(stop.message, before),
    };
    let or_new = || if stop.is_new && said.is_empty() { wording.walk_new() } else { said.clone() };
    match stop.mark {
        Mark::Done | Mark::Over if was_let_go(stop.id, stop.message, cx) => ("-", Ink::Plain, said),
        Mark::Done => ("√", Ink::Good, if said.is_empty() { wording.walk_done() } else { said }),
        Mark::Sent => ("~", Ink::Good, said),
        Mark::Over => ("-", Ink::Plain, wording.walk_over()),
        Mark::Skipped => (">", Ink::Waits, wording.walk_skipped()),
        Mark::Open if stop.loses_most() => ("!", Ink::Danger, or_new()),
        Mark::Open if stop.is_new => ("*", Ink::Waits, or_new()),
        Mark::Open => (" ", Ink::Plain, said),
    }
}

fn draw_list(walk: &Walk, shown: &[Shown<'_>], rest: usize, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    let wording = cx.wording;
    // What can wait keeps its line below, as long as the list has three.
    let hint = rest > 0 && area.height > LIST_LEAST;
    let table_area = Rect { height: area.height - u16::from(hint), ..area };
    let at = walk.at(cx);
    // Beside its detail the list has room for headings; above it the place stands in the line of its first stop.
    let headed = cx.is_wide();
    let mut rows = Vec::new();
    let mut chosen = None;
    let mut before: Option<&Shown<'_>> = None;
    for stop in shown {
        let new_place = before.is_none_or(|before| before.at != stop.at || before.waits != stop.waits);
        if stop.waits && before.is_none_or(|before| !before.waits) {
            rows.push(Row::Heading(wording.walk_can_wait()));
        } else if headed && new_place && !stop.waits {
            rows.push(Row::Heading(place_words(stop, cx)));
        }
        before = Some(stop);
        if at == Some(stop.id) {
            chosen = Some(rows.len());
        }
        let (mark, ink, state) = mark_of(stop, cx);
        let state_ink = if stop.mark == Mark::Skipped { Ink::Waits } else { Ink::Plain };
        let place = if headed || !new_place || stop.waits { String::new() } else { place_words(stop, cx) };
        rows.push(Row::Cells(vec![
            (mark.to_string(), ink),
            (place, Ink::Strong),
            (short_about(stop, cx), Ink::Plain),
            (species_of(stop, cx), Ink::Plain),
            (state, state_ink),
        ]));
    }
    // A stop keeps its species as long as what was written there has room beside it.
    let (with_species, state) = match room_left(&rows, table_area.width, 4) {
        left if headed || left >= STATE_LEAST => (true, left),
        _ => (false, room_left(&rows, table_area.width, 3)),
    };
    let columns = vec![
        Column::words("", 0, 1),
        Column::words("", 0, PLACE_MOST),
        Column::words("", 0, 40),
        Column::words("", if with_species { 1 } else { 2 }, 20),
        Column::words("", if with_species { 2 } else { 1 }, state.clamp(STATE_LEAST, STATE_MOST)),
    ];
    Table { columns, rows, chosen }.draw(table_area, buffer);
    if hint {
        let message =
            if walk.with_rest { wording.walk_rest_shown(rest as i64) } else { wording.walk_rest(rest as i64) };
        let message = match walk.new_stops(cx) {
            0 => message,
            new => wording.walk_rest_new(new as i64, message),
        };
        // One that loses most may be among them.
        let marked = walk.rest(cx).iter().any(|stop| stop.marked);
        let message = if marked { format!("! {message}") } else { message };
        let shown = Sheet::shortened(&message, usize::from(area.width));
        buffer.set_string(area.x, area.bottom() - 1, shown, Ink::Quiet.style());
    }
}

/// Columns left behind the first ones of a row.
fn room_left(rows: &[Row], width: u16, columns_before: usize) -> usize {
    let widest = |column: usize| {
        let texts = rows.iter().filter_map(|row| match row {
            Row::Cells(cells) => cells.get(column).map(|(text, _)| width_of(text)),
            Row::Heading(_) => None,
        });
        texts.max().unwrap_or(0)
    };
    let taken = (0..columns_before).map(widest).filter(|width| *width > 0).map(|width| width + 2).sum::<usize>();
    usize::from(width).saturating_sub(taken)
}

/// The name of a place with its sign.
fn place_words(stop: &Shown<'_>, cx: &ScreenContext<'_>) -> String {
    let name = cx.wording.stop_place(&stop.at, &stop.subject);
    match stop.place_sign {
        Some(sign) => format!("{name}  {}", cx.wording.sign(sign)),
        None => name,
    }
}

/// The task with its tray or lot; where it can wait, with its bed too, as no heading says it.
pub(super) fn short_about(stop: &Shown<'_>, cx: &ScreenContext<'_>) -> String {
    let task = cx.wording.task_name(stop.task);
    match &stop.subject {
        Subject::Tray(code) => cx.wording.round_about(task, code.to_string()),
        Subject::Lot(code) => cx.wording.round_about(task, code.to_string()),
        Subject::Bed(name) if stop.waits => cx.wording.round_about(task, name.to_string()),
        Subject::Bed(_) | Subject::Place(_) | Subject::Site => task,
    }
}

fn species_of(stop: &Shown<'_>, cx: &ScreenContext<'_>) -> String {
    let picture = &cx.book.picture;
    let species = match &stop.subject {
        Subject::Tray(code) => picture.trays.get(code).and_then(|tray| tray.species.as_ref()),
        Subject::Lot(code) => picture.lots.get(code).and_then(|lot| lot.species.as_ref()),
        Subject::Bed(_) | Subject::Place(_) | Subject::Site => None,
    };
    species.map(|key| cx.species(Some(key))).unwrap_or_default()
}

fn draw_detail(walk: &Walk, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    if area.height == 0 {
        return;
    }
    draw_page(walk, &detail(walk, cx, area.width), cx, area, buffer);
}

/// A page beside or under the list, from where it is scrolled to; where it is cut, its last line says how to go on.
pub(super) fn draw_page(walk: &Walk, page: &Sheet, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    draw_page_from(page, walk.detail_from, cx, area, buffer);
}

/// The same from a line on.
pub(super) fn draw_page_from(page: &Sheet, from: usize, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    if area.height == 0 {
        return;
    }
    let rows = page.height() as u16;
    let cut = rows > area.height && area.height > 1;
    let body = Rect { height: area.height - u16::from(cut), ..area };
    let left = page.draw(from, body, buffer);
    if cut {
        let message = if left > 0 { cx.wording.walk_more_right(left as i64) } else { cx.wording.walk_more_left() };
        let shown = Sheet::shortened(&message, usize::from(area.width));
        buffer.set_string(area.x, area.bottom() - 1, shown, Ink::Quiet.style());
    }
}

/// Under the detail, where there is room, the drawing of the tray or the bed at a glance.
fn draw_below_detail(walk: &Walk, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    let used = detail(walk, cx, area.width).height() as u16 + 1;
    let Some(height) = area.height.checked_sub(used) else { return };
    let rest = Rect { y: area.y + used, height, ..area };
    let picture = &cx.book.picture;
    let page = walk.here(cx).and_then(|stop| match stop.subject {
        Subject::Tray(code) => drawing_of_stage(picture.trays.get(&code)?, cx, rest.width),
        Subject::Bed(name) => Some(bed_at_a_glance(picture.beds.get(&name)?, cx, rest.width, usize::from(rest.height))),
        Subject::Lot(_) | Subject::Place(_) | Subject::Site => None,
    });
    if let Some(page) = page.filter(|page| page.height() <= usize::from(rest.height)) {
        page.draw(0, rest, buffer);
    }
}

impl Walk {
    /// How far the detail can be scrolled; further than its end nothing is to be seen.
    pub(super) fn detail_end(&self, cx: &ScreenContext<'_>) -> usize {
        let page = self.closing_shown(cx, cx.size.0).unwrap_or_else(|| detail(self, cx, cx.size.0));
        page.height().saturating_sub(1)
    }
}

/// The chosen stop in plain sentences.
pub(crate) fn detail(walk: &Walk, cx: &ScreenContext<'_>, width: u16) -> Sheet {
    let mut page = Sheet::new(width);
    let Some(stop) = walk.here(cx) else { return page };
    let wording = cx.wording;
    let picture = &cx.book.picture;
    let facts = facts(&stop, cx);
    let enter = "Enter".to_string();
    page.labels(facts.iter().map(|(label, ..)| label.as_str()).chain([enter.as_str()]));
    let about = wording.stop_about(stop.task, &stop.subject, picture);
    let (mark, ink, state) = mark_of(&stop, cx);
    if mark == " " {
        page.paragraph(&about, Ink::Strong);
    } else {
        page.hanging(&format!("{mark} "), ink, &about, Ink::Strong);
    }
    if !state.is_empty() {
        page.paragraph(&state, Ink::Plain);
    }
    page.labelled(&wording.walk_where(), &place_words(&stop, cx));
    if let Some(sign) = stop.tray_sign {
        page.labelled(&wording.walk_sign(), &wording.sign(sign));
    }
    for (label, text, ink) in facts {
        page.labelled_in(&label, &text, ink);
    }
    let passed = walk.passed.get(stop.id).map(Vec::as_slice).unwrap_or_default();
    let usual = stop.due.map(|due| usual::usual(due, passed, cx));
    let kind = usual.as_ref().map_or_else(|| stop.task.facts().kind.to_string(), |form| form.kind.clone());
    let how = usual.iter().flat_map(|form| &form.preset).find(|(name, _)| name == "how").map(|(_, how)| how);
    // On another day nothing is written; what is let go by doing it is called by its task.
    if picture.looking == Looking::Today {
        let does = match kind.as_str() {
            _ if super::is_new(cx) => wording.empty_begin(),
            "let_go" => wording.task_name(stop.task),
            // One kind, two acts: it is called as the task calls it.
            "moved_on" if how.is_some() => how.map(|how| wording.choice_name(how)).unwrap_or_default(),
            _ => wording.kind_name(&kind),
        };
        page.labelled(&enter, &does);
    }
    if super::is_new(cx) {
        page.gap();
        page.paragraph(&wording.no_trays(), Ink::Plain);
        page.paragraph(&wording.no_beds(), Ink::Plain);
    }
    page
}

/// What is known of a stop that is due: why, the last figure, what to expect, until when, what is lost without it.
fn facts(stop: &Shown<'_>, cx: &ScreenContext<'_>) -> Vec<(String, String, Ink)> {
    let wording = cx.wording;
    let Some(due) = stop.due else { return Vec::new() };
    let about = RoundOn { day: cx.day(), species: &cx.book.picture.site.species };
    let mut facts = vec![(wording.walk_why(), wording.round_reason(&due.why, about), Ink::Plain)];
    // What nobody touches is said on the way out, before the first bench.
    if due.task == Task::Gauge {
        let away = away(&cx.book.round, &cx.book.picture, wording);
        facts.extend(away.into_iter().map(|text| (wording.caution_label(), text, Ink::Danger)));
    }
    facts.extend(first_look(due, wording).map(|first| (wording.caution_label(), first, Ink::Waits)));
    for caution in due.cautions() {
        facts.push((wording.caution_label(), wording.caution_words(caution), Ink::Waits));
    }
    let plants = due.plants_handled(&cx.book.picture);
    let plants = wording.plant_dangers(&wording.caution_plant_label(), &plants, &cx.book.picture.site.species);
    facts.extend(plants.into_iter().map(|(label, danger)| (label, danger, Ink::Waits)));
    let nurses = nurse_lines(due, cx);
    if !nurses.is_empty() {
        facts.extend(nurses.into_iter().map(|line| (wording.walk_last(), line, Ink::Plain)));
    } else if let Some((figure, day)) = wording.stop_last(due) {
        let message = wording.walk_last_figure(figure, wording.day_beside(day, cx.day()));
        facts.push((wording.walk_last(), message, Ink::Plain));
    }
    if let Some(message) = wording.stop_expect(due) {
        let good = due.task == Task::GoOut;
        let message = if good { wording.walk_good_enough(message) } else { message };
        facts.push((wording.walk_expect(), message, Ink::Plain));
    }
    if due.until.is_some() {
        facts.push((wording.walk_until(), wording.until_words(due, about), Ink::Plain));
    }
    let lost = wording.lost_without_stop(due);
    let (lost, ink) = if stop.loses_most() { (format!("! {lost}"), Ink::Danger) } else { (lost, Ink::Plain) };
    facts.push((wording.walk_without(), lost, ink));
    facts
}

/// Nurse plants to be counted, a line a species with its own last count: a sum would be nobody's count.
fn nurse_lines(due: &Stop, cx: &ScreenContext<'_>) -> Vec<String> {
    let bed = due.bed().filter(|_| due.task == Task::CountNurses).and_then(|name| cx.book.picture.beds.get(name));
    let living = bed.into_iter().flat_map(|bed| &bed.nurses).filter(|nurse| nurse.alive > 0);
    let line = |nurse: &NursePicture| {
        let day = cx.wording.day_beside(nurse.counted_on.unwrap_or(nurse.planted), cx.day());
        let figure = format!("{}: {}", cx.species(Some(&nurse.nurse)), cx.wording.plants(nurse.alive));
        cx.wording.walk_last_figure(figure, day)
    };
    living.map(line).collect()
}

/// The same, what presses first: until when, what could hurt, why, what is lost without it. The last figure stands apart.
pub(crate) fn brief(stop: &Shown<'_>, cx: &ScreenContext<'_>) -> Vec<(String, String, Ink)> {
    let wording = cx.wording;
    let first = [wording.walk_until(), wording.caution_label(), wording.walk_why(), wording.walk_without()];
    let last = wording.walk_last();
    let mut all = facts(stop, cx);
    let stands_apart = stop.due.is_none_or(|due| due.task != Task::CountNurses);
    all.retain(|(label, ..)| !stands_apart || *label != last);
    all.sort_by_key(|(label, ..)| first.iter().position(|one| one == label).unwrap_or(first.len()));
    all
}

impl Walk {
    /// A stop told in whole lines, signs by their names.
    pub(crate) fn told(&self, stop: &Shown<'_>, cx: &ScreenContext<'_>) -> Vec<String> {
        let wording = cx.wording;
        let named = |sign: &str| match wording.drawn_sign(sign) {
            Some(drawn) => format!("{} {}", drawn.name, drawn.dots),
            None => sign.to_string(),
        };
        let place = wording.stop_place(&stop.at, &stop.subject);
        let place = match stop.place_sign {
            Some(sign) => format!("{place}, {}", named(sign)),
            None => place,
        };
        let about = wording.stop_about(stop.task, &stop.subject, &cx.book.picture);
        let about = match stop.tray_sign {
            Some(sign) => format!("{about}, {}", named(sign)),
            None => about,
        };
        let (_, _, state) = mark_of(stop, cx);
        let mut lines = vec![format!("{place}: {about}")];
        if stop.loses_most() {
            lines.push(wording.plain_loses_most());
        }
        if !state.is_empty() {
            lines.push(state);
        }
        lines.extend(facts(stop, cx).into_iter().map(|(label, text, _)| format!("{label}: {text}")));
        lines
    }

    /// The number of the chosen stop and how many there are.
    pub(crate) fn number(&self, cx: &ScreenContext<'_>) -> Option<(usize, usize)> {
        let shown = self.shown(cx);
        let at = self.at(cx)?;
        let place = shown.iter().position(|stop| stop.id == at)?;
        Some((place + 1, shown.len()))
    }

    /// How far one is: stops behind, and what is before one of looking and of work, side by side.
    pub(crate) fn progress_words(&self, cx: &ScreenContext<'_>) -> String {
        let (wording, round) = (cx.wording, &cx.book.round);
        let (behind, all) = self.progress(cx);
        let whole = (round.minutes, round.work_minutes);
        let (looks, work) = self.plan_shown(cx).map_or(whole, super::Plan::minutes_left);
        let message = wording.walk_progress(behind as i64, all as i64, wording.number(looks.ceil(), 0));
        if work < 1.0 { message } else { format!("{message} · {}", wording.walk_work(wording.work_time(work))) }
    }
}
