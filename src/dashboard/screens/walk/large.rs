//! One stop a screen, for a helper who does not read: the place's sign drawn large, the last count, and in large figures
//! what is typed.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::shapes::{ROWS, SHAPE_COLUMNS, all_figures, draw_figures, draw_pattern, figures_width, shape};
use super::view::{self, brief, mark_of};
use super::{Shown, Walk};
use crate::base::BedName;
use crate::dashboard::act::AtStop;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::form::Form;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::{Sheet, width_of};
use crate::reckon::picture::Measure;
use crate::reckon::round::to_write::{self, carried_to};
use crate::reckon::round::{RoundReason, Stop, Task};

/// Rows of a figure with its title where it is not drawn large.
const SMALL_ROWS: u16 = 2;
/// From this width on a dot of a figure is two columns wide.
const BROAD: u16 = 70;
/// Columns of a dot of a sign with the space behind it, and dots in a row.
const DOT: u16 = 4;
const DOTS_IN_ROW: usize = 5;

/// Draws the chosen stop over the whole area; with a form, what is typed in it. Figures keep their room, then as much is
/// said of the stop as has room whole, and signs are drawn large where there is room for them too.
pub(crate) fn draw(walk: &Walk, form: Option<&Form>, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    let Some(stop) = walk.here(cx) else {
        let mut page = Sheet::new(area.width);
        page.paragraph(&cx.wording.empty_walk(), Ink::Strong);
        page.draw(0, area, buffer);
        return;
    };
    if let Some(page) = walk.closing_shown(cx, area.width).filter(|_| form.is_none()) {
        let (behind, all) = walk.progress(cx);
        buffer.set_string(area.x, area.y, format!("{behind} / {all}"), Ink::Plain.style());
        let below = Rect { y: area.y + 1, height: area.height.saturating_sub(1), ..area };
        view::draw_page(walk, &page, cx, below, buffer);
        return;
    }
    if form.is_none() && walk.detail_from > 0 {
        draw_all_of_it(walk, cx, area, buffer);
        return;
    }
    let against = against_page(form, area.width);
    let said = against.height() as u16;
    let told = Told { walk, stop: &stop, form, cx, width: area.width };
    let room_beside = |figures: u16| usize::from(area.height.saturating_sub(1 + figures + said));
    // What speaks against it, what presses and what could hurt are said whole; figures are large where there is room beside.
    let wanted = figure_rows(&stop, form);
    let large = match form {
        None => told.page(room_beside(wanted)).presses_whole,
        // In a form it is the figure that presses.
        Some(_) => told.page(0).page.height() <= room_beside(ROWS + 1),
    };
    let figures = if large { wanted } else { wanted.min(SMALL_ROWS) };
    let page = told.page(room_beside(figures)).page;
    let room = area.height.saturating_sub(1 + figures + said);
    let words = (page.height() as u16).min(area.height.saturating_sub(1));
    let large_signs = words + ROWS < room;
    draw_place(walk, &stop, !large_signs, cx, area, buffer);
    let mut y = area.y + 1;
    if large_signs {
        y += draw_signs(&stop, cx, Rect { y, height: area.bottom() - y, ..area }, buffer);
    }
    page.draw(0, Rect { y, height: words.min(area.bottom().saturating_sub(y)), ..area }, buffer);
    y += words;
    let rest = Rect { y, height: area.bottom().saturating_sub(y + said), ..area };
    draw_figures_of(&stop, form, cx, rest, buffer);
    let below = Rect { y: rest.bottom(), height: area.bottom().saturating_sub(rest.bottom()), ..area };
    against.draw(0, below, buffer);
}

/// Everything that is known of the stop, in whole lines, and the key that leads back.
fn draw_all_of_it(walk: &Walk, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    let page = view::detail(walk, cx, area.width);
    if page.height() < usize::from(area.height) {
        let back = Sheet::shortened(&cx.wording.walk_more_left(), usize::from(area.width));
        buffer.set_string(area.x, area.bottom() - 1, back, Ink::Quiet.style());
    }
    view::draw_page_from(&page, walk.detail_from - 1, cx, area, buffer);
}

/// What speaks against what is typed.
fn against_page(form: Option<&Form>, width: u16) -> Sheet {
    let mut page = Sheet::new(width);
    let against = form.map(Form::against).unwrap_or_default();
    against.iter().for_each(|message| page.hanging("x ", Ink::Danger, message, Ink::Plain));
    page
}

/// Rows that the last figure and what is typed want.
fn figure_rows(stop: &Shown<'_>, form: Option<&Form>) -> u16 {
    let last = stop.due.filter(|due| due.task != Task::CountNurses).and_then(|due| due.last.as_ref());
    let counted = last.is_some_and(|look| matches!(look.figure, Measure::Plants(_)));
    match (form, last) {
        (Some(form), _) => (form.choices_at(form.begin_place()).len() as u16 + 1).max(ROWS + 1),
        (None, Some(_)) if counted => ROWS + 1,
        (None, Some(_)) => 3,
        (None, None) => 1,
    }
}

/// The place by name and how far one is; its sign beside it where it is not drawn large.
fn draw_place(walk: &Walk, stop: &Shown<'_>, small: bool, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    let (behind, all) = walk.progress(cx);
    let progress = format!("{behind} / {all}");
    let name = cx.wording.stop_place(&stop.at, &stop.subject);
    let named = match stop.place_sign {
        Some(sign) if small => format!("{}  {name}", cx.wording.sign(sign)),
        Some(_) | None => name,
    };
    let room = usize::from(area.width).saturating_sub(width_of(&progress) + 2);
    buffer.set_string(area.x, area.y, Sheet::shortened(&named, room), Ink::Strong.style());
    if width_of(&progress) < usize::from(area.width) {
        let x = area.right() - width_of(&progress) as u16;
        buffer.set_string(x, area.y, progress, Ink::Plain.style());
    }
}

/// The signs of the place and of the tray, side by side.
fn draw_signs(stop: &Shown<'_>, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) -> u16 {
    if stop.place_sign.is_none() && stop.tray_sign.is_none() {
        return 0;
    }
    let mut x = area.x + 1;
    for (sign, ink) in [(stop.place_sign, Ink::Good), (stop.tray_sign, Ink::Plain)] {
        let Some(sign) = sign else { continue };
        match cx.wording.drawn_sign(sign) {
            Some(drawn) => {
                let dots = drawn.dots.min(DOTS_IN_ROW) as u16 * DOT;
                if x + SHAPE_COLUMNS + 2 + dots > area.right() {
                    break;
                }
                draw_pattern(shape(drawn.shape), (x, area.y), 1, block(cx), ink, buffer);
                x += SHAPE_COLUMNS + 2;
                draw_dots(drawn.dots, (x, area.y), cx, buffer);
                x += dots + 3;
            }
            None => {
                let room = usize::from(area.right().saturating_sub(x));
                let text = Sheet::shortened(sign, room);
                buffer.set_string(x, area.y + 2, &text, Ink::Strong.style());
                x += width_of(&text) as u16 + 3;
            }
        }
    }
    ROWS + 1
}

fn draw_dots(dots: usize, at: (u16, u16), cx: &ScreenContext<'_>, buffer: &mut Buffer) {
    let one_row = dots <= DOTS_IN_ROW;
    for i in 0..dots {
        let (row, column) = (i / DOTS_IN_ROW, i % DOTS_IN_ROW);
        let y = at.1 + if one_row { 2 } else { 1 + 2 * row as u16 };
        buffer.set_string(at.0 + column as u16 * DOT, y, block(cx).repeat(2), Ink::Strong.style());
    }
}

/// What is said of a stop.
struct Told<'a> {
    walk: &'a Walk,
    stop: &'a Shown<'a>,
    form: Option<&'a Form>,
    cx: &'a ScreenContext<'a>,
    width: u16,
}

/// The words of a stop, and whether all that presses is among them.
struct Words {
    page: Sheet,
    presses_whole: bool,
}

/// What is known of a stop: how much it presses, 0 most; its text and ink.
type Known = (u8, String, Ink);
/// Up to this what is known must stand there before figures are drawn large: load, until when, caution, why.
const PRESSES: u8 = 3;
/// The rank of the reason.
const REASON: u8 = 3;

impl Told<'_> {
    /// What to do at what, with its mark, and what is known of it, as much as has room whole; that something is left out,
    /// and the key that shows it, in a last line.
    fn page(&self, most_rows: usize) -> Words {
        let (cx, stop) = (self.cx, self.stop);
        let mut page = Sheet::new(self.width);
        // What is written beside the task says itself what it is.
        if let Some(form) = self.form.filter(|form| matches!(form.stop(), AtStop::Beside(_))) {
            page.paragraph(&form.heading(cx), Ink::Strong);
            return Words { page, presses_whole: true };
        }
        let (mark, ink, state) = mark_of(stop, cx);
        let about = cx.wording.stop_about(stop.task, &stop.subject, &cx.book.picture);
        let mark = if mark == " " { String::new() } else { format!("{mark} ") };
        page.hanging(&mark, ink, &about, Ink::Strong);
        if !state.is_empty() {
            page.paragraph(&state, Ink::Plain);
        }
        let (known, shortened) = self.known();
        let all: Vec<usize> = (0..known.len()).collect();
        let whole = with(&page, &known, &all);
        if !shortened && whole.height() <= most_rows {
            return Words { page: whole, presses_whole: true };
        }
        // A line is kept for the key that shows the rest; a form has no room for it and takes no such key.
        let more = self.form.is_none();
        let mut said = known.clone();
        let chosen = choose(&page, &mut said, most_rows.saturating_sub(usize::from(more)));
        let whole = |at: &usize| chosen.contains(at) && known[*at].1 == said[*at].1;
        let presses_whole = all.iter().all(|at| known[*at].0 > PRESSES || whole(at));
        let mut page = with(&page, &said, &chosen);
        if more {
            page.paragraph(&cx.wording.walk_all_of_it(), Ink::Quiet);
        }
        Words { page, presses_whole }
    }

    /// What is known of the stop, as it is said; and whether a caution is said in short.
    fn known(&self) -> (Vec<Known>, bool) {
        let (cx, wording) = (self.cx, self.cx.wording);
        let said_before = self.walk.cautions_before(self.stop, cx);
        let shorter = |text: String| match said_before.iter().find(|caution| wording.caution_words(**caution) == text) {
            Some(caution) => (format!("{} …", wording.caution_in_short(*caution)), true),
            None => (text, false),
        };
        let load = load_words(self.walk, self.stop, cx).map(|load| (0, load, Ink::Strong));
        let mut known: Vec<Known> = load.into_iter().collect();
        let mut shortened = false;
        for (label, text, ink) in brief(self.stop, cx) {
            let rank = match () {
                () if label == wording.walk_until() => 1,
                () if label == wording.caution_label() => 2,
                () if label == wording.walk_why() => REASON,
                // What a plant does to people goes before all that is only good to know.
                () if label == wording.caution_plant_label() => 4,
                () => 5,
            };
            let (text, short) = if rank == 2 { shorter(text) } else { (text, false) };
            shortened |= short;
            known.push((rank, format!("{label}: {text}"), ink));
        }
        (known, shortened)
    }
}

/// A page with what is known, as far as it is chosen.
fn with(page: &Sheet, known: &[Known], chosen: &[usize]) -> Sheet {
    let mut longer = page.clone();
    for (_, text, ink) in known.iter().enumerate().filter(|(at, _)| chosen.contains(at)).map(|(_, one)| one) {
        longer.paragraph(text, *ink);
    }
    longer
}

/// What has room, what presses most first; a long reason as far as its first stop.
fn choose(page: &Sheet, known: &mut [Known], most_rows: usize) -> Vec<usize> {
    let mut by_rank: Vec<usize> = (0..known.len()).collect();
    by_rank.sort_by_key(|at| known[*at].0);
    let mut chosen = Vec::new();
    for at in by_rank {
        chosen.push(at);
        let fits = |known: &[Known]| with(page, known, &chosen).height() <= most_rows;
        if !fits(known) && known[at].0 == REASON {
            let (label, reason) = known[at].1.split_once(": ").unwrap_or_default();
            let begins = reason.split([';', ':']).next().unwrap_or_default();
            known[at].1 = format!("{label}: {begins} …");
        }
        if !fits(known) {
            chosen.pop();
        }
    }
    chosen
}

/// Where it goes or what is taken, as the form of the stop begins: a bed and how many, a lot and its seeds, a new tray.
fn load_words(walk: &Walk, stop: &Shown<'_>, cx: &ScreenContext<'_>) -> Option<String> {
    let form = walk.usual(stop, cx);
    let known = |wanted: &str| form.preset.iter().find(|(name, _)| name == wanted).map(|(_, value)| value.clone());
    let number = |wanted: &str| known(wanted)?.parse::<i64>().ok();
    let said = match form.kind.as_str() {
        "outplanted" => {
            let load = |(bed, plants): (&BedName, u32)| format!("{bed}: {}", cx.wording.plants(plants));
            let hands = stop.due.and_then(hands_of_today);
            // Where hands do not reach, what they plant today is said, and not what there is room for.
            let loads = stop.due.map(to_write::loads).unwrap_or_default().into_iter();
            let loads: Vec<(&BedName, u32)> = loads
                .filter(|(bed, _)| hands.as_ref().is_none_or(|today| today.is_empty() || today.contains(bed)))
                .collect();
            let said = match loads.len() > 1 {
                true => loads.into_iter().map(load).collect::<Vec<_>>().join("; "),
                false => format!("{}: {}", known("bed")?, cx.wording.plants(number("count")?)),
            };
            match hands {
                Some(today) if today.is_empty() => cx.wording.walk_load_no_hands(said),
                Some(_) => cx.wording.walk_load_today(said),
                None => said,
            }
        }
        "resown" => format!("{}: {}", known("lot")?, cx.wording.seeds(number("seeds")?)),
        "moved_on" => ["to", "container", "place"].into_iter().filter_map(known).collect::<Vec<_>>().join(", "),
        _ => return None,
    };
    (!said.is_empty()).then(|| format!("→ {said}"))
}

/// The beds that hands plant today of a tray that goes out; none where hands are no question.
fn hands_of_today(due: &Stop) -> Option<Vec<&BedName>> {
    let RoundReason::Fits { beds, .. } = &due.why else { return None };
    beds.iter()
        .any(|to| to.rest_on.is_some())
        .then(|| beds.iter().filter(|to| to.today > 0).map(|to| &to.bed).collect())
}

/// The last figure at the left, what is typed at the right.
fn draw_figures_of(stop: &Shown<'_>, form: Option<&Form>, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    if area.height == 0 {
        return;
    }
    let gap = u16::from(area.height > ROWS + 2);
    let top = Rect { y: area.y + gap, height: area.height - gap, ..area };
    let x = draw_last(stop, cx, top, buffer);
    let Some((field, typed)) = form.and_then(Form::figure_typed) else {
        draw_way(stop, cx, Rect { x, width: area.right().saturating_sub(x), ..top }, buffer);
        if top.height > ROWS + 1 {
            let y = top.y + ROWS + 1 + u16::from(top.height > ROWS + 2);
            let kind = stop.task.facts().kind;
            let message = match kind {
                "counted" | "weather" => cx.wording.walk_large_hint(),
                _ => format!("Enter  {}", cx.wording.task_name(stop.task)),
            };
            buffer.set_string(area.x, y, Sheet::shortened(&message, usize::from(area.width)), Ink::Plain.style());
        }
        return;
    };
    let form_choices = form.map(|form| form.choices_at(form.begin_place())).unwrap_or_default();
    let right = Rect { x, width: area.right().saturating_sub(x), ..top };
    let title = Sheet::shortened(&cx.wording.field_title(field.name), usize::from(right.width));
    buffer.set_string(right.x, right.y, title, Ink::Strong.style());
    if form_choices.is_empty() {
        draw_typed(&typed, right, cx, buffer);
    } else {
        draw_choices(&form_choices, &typed, right, cx, buffer);
    }
}

/// Where the tray is to be carried: the place's name and its sign.
fn draw_way(stop: &Shown<'_>, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    let Some(place) = stop.due.and_then(carried_to) else { return };
    let name = Sheet::shortened(&format!("→ {place}"), usize::from(area.width));
    buffer.set_string(area.x, area.y, name, Ink::Strong.style());
    let set = cx.book.picture.site.places.get(place).and_then(|described| described.on(cx.day()));
    let sign = set.and_then(|set| set.sign.as_ref()).and_then(|sign| cx.wording.drawn_sign(&sign.0));
    let Some(sign) = sign.filter(|_| area.height > ROWS) else { return };
    draw_pattern(shape(sign.shape), (area.x + 1, area.y + 1), 1, block(cx), Ink::Good, buffer);
    draw_dots(sign.dots, (area.x + SHAPE_COLUMNS + 3, area.y + 1), cx, buffer);
}

/// The last count large, another figure in words; the answer is the column where there is room again.
fn draw_last(stop: &Shown<'_>, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) -> u16 {
    // Of several species each has a count of its own, said in words.
    let of_one = stop.due.filter(|due| due.task != Task::CountNurses);
    let Some(last) = of_one.and_then(|due| due.last.as_ref().zip(Some(due))) else { return area.x };
    let (look, due) = last;
    let Some((message, day)) = cx.wording.stop_last(due) else { return area.x };
    let half = area.width / 2;
    let beside = cx.wording.day_beside(day, cx.day());
    let title = Sheet::shortened(&format!("{} {beside}", cx.wording.walk_last()), usize::from(half.saturating_sub(2)));
    buffer.set_string(area.x, area.y, title, Ink::Plain.style());
    let under = (area.x, area.y + 1);
    if let Measure::Plants(range) = &look.figure {
        let text = cx.wording.number(range.likely.round(), 0).replace(['\u{a0}', ' '], "");
        if area.height > ROWS && figures_width(&text, scale(cx)) < half {
            draw_figures(&text, under, scale(cx), block(cx), Ink::Plain, buffer);
            return area.x + half;
        }
    }
    if area.height > 1 {
        let message = Sheet::shortened(&message, usize::from(half.saturating_sub(2)));
        buffer.set_string(under.0, under.1, message, Ink::Plain.style());
    }
    area.x + half
}

fn draw_typed(typed: &str, area: Rect, cx: &ScreenContext<'_>, buffer: &mut Buffer) {
    let fits = area.height > ROWS && figures_width(typed, scale(cx)) + 4 <= area.width;
    // A letter has no large figure, and what is typed is seen whole.
    if !fits || !all_figures(typed) {
        let text = format!("{typed}_");
        buffer.set_stringn(area.x, area.y + 1, text, usize::from(area.width), Ink::Strong.style());
        return;
    }
    let under = (area.x, area.y + 1);
    let x = draw_figures(typed, under, scale(cx), block(cx), Ink::Good, buffer);
    buffer.set_string(x, area.y + ROWS, block(cx).repeat(usize::from(scale(cx)) + 1), Ink::Plain.style());
}

fn draw_choices(choices: &[&str], chosen: &str, area: Rect, cx: &ScreenContext<'_>, buffer: &mut Buffer) {
    for (i, choice) in choices.iter().enumerate() {
        let y = area.y + 1 + i as u16;
        if y >= area.bottom() {
            return;
        }
        let message = format!(" {} {} ", i + 1, cx.wording.choice_name(choice));
        let ink = if *choice == chosen { Ink::Chosen } else { Ink::Strong };
        buffer.set_string(area.x, y, Sheet::shortened(&message, usize::from(area.width)), ink.style());
    }
}

/// The block of which signs and figures are made.
fn block(cx: &ScreenContext<'_>) -> &'static str {
    if cx.look.ascii { "#" } else { "█" }
}

fn scale(cx: &ScreenContext<'_>) -> u16 {
    if cx.size.0 >= BROAD { 2 } else { 1 }
}
