//! The frame around a screen: which screens there are, what this one answers, banners, messages, and the keys that matter.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;
use ratatui::style::{Modifier, Style};

use super::act::ScreenName;
use super::context::ScreenContext;
use super::form::Form;
use super::keys::{EVERYWHERE, KeyAction, KeyLine, hinted};
use super::layer::Layer;
use super::look::Ink;
use super::model::Model;
use super::parts::{Sheet, width_of};
use crate::reckon::forecast::ForecastBasis;
use crate::reckon::picture::Looking;
use crate::wording::Wording;

/// Between two keys in the last line: a tap tells them apart by it.
pub(super) const BETWEEN_KEYS: &str = "  ";
/// The smallest terminal that is drawn for, columns and rows.
const LEAST_COLUMNS: u16 = 20;
const LEAST_ROWS: u16 = 8;
/// Below this height the frame keeps to two lines, so that something is left for the screen.
const LOW: u16 = 14;

/// Draws everything. On a terminal smaller than anything can be read on, its corner is shown.
pub(crate) fn draw(model: &Model, buffer: &mut Buffer) {
    let area = buffer.area;
    if area.width == 0 || area.height == 0 {
        return;
    }
    let (width, height) = (area.width.max(LEAST_COLUMNS), area.height.max(LEAST_ROWS));
    if (width, height) == (area.width, area.height) {
        return draw_whole(model, buffer);
    }
    let mut whole = Buffer::empty(Rect { width, height, ..area });
    draw_whole(model, &mut whole);
    for (x, y) in (area.top()..area.bottom()).flat_map(|y| (area.left()..area.right()).map(move |x| (x, y))) {
        if let (Some(cell), Some(drawn)) = (buffer.cell_mut((x, y)), whole.cell((x, y))) {
            *cell = drawn.clone();
        }
    }
}

fn draw_whole(model: &Model, buffer: &mut Buffer) {
    let area = buffer.area;
    let cx = model.context();
    let top = draw_top(model, &cx, area, buffer);
    let bottom = draw_bottom(model, &cx, area, buffer, top);
    let body = Rect { y: area.y + top, height: area.height.saturating_sub(top + bottom), ..area };
    if body.height > 0 {
        match model.layers.last() {
            Some(Layer::Form(form))
                if form.stop().id().is_some() && model.screens.at(model.at).draw_form(form, &cx, body, buffer) => {}
            Some(layer) => layer.draw(&cx, inset(body), buffer),
            None => model.screens.at(model.at).draw(&cx, body, buffer),
        }
    }
    model.look.finish(buffer);
}

fn inset(area: Rect) -> Rect {
    let side = u16::from(area.width > 60);
    Rect { x: area.x + side, width: area.width - 2 * side, ..area }
}

/// A screen's name.
pub(crate) fn screen_name(name: ScreenName, wording: &Wording) -> String {
    match name {
        ScreenName::Walk => wording.screen_walk(),
        ScreenName::Trays => wording.screen_trays(),
        ScreenName::Beds => wording.screen_beds(),
        ScreenName::GoingOut => wording.screen_going_out(),
        ScreenName::Seed => wording.screen_seed(),
        ScreenName::Season => wording.screen_season(),
        ScreenName::Journal => wording.screen_journal(),
    }
}

/// The lines above the screen; the answer is how many.
fn draw_top(model: &Model, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) -> u16 {
    draw_screens(model, cx, area, buffer);
    let mut line = 1;
    if area.height >= LOW {
        let sentence = model.screens.at(model.at).answers(cx);
        let day = right_of_answer(cx);
        if width_of(&sentence) + width_of(&day) + 2 <= usize::from(area.width) {
            let x = area.right() - width_of(&day) as u16;
            buffer.set_string(x, area.y + line, day, Ink::Plain.style());
        }
        line += draw_lines(&sentence, area, line, buffer);
    }
    for sentence in banners(model, cx) {
        let height = draw_lines(&sentence, area, line, buffer);
        let rows = Rect { y: area.y + line, height, ..area };
        buffer.set_style(rows, Style::new().add_modifier(Modifier::REVERSED));
        line += height;
    }
    line + u16::from(area.height >= 20)
}

/// A sentence in as many lines as it needs, as long as something is left for the screen; the answer is how many.
fn draw_lines(sentence: &str, area: Rect, line: u16, buffer: &mut Buffer) -> u16 {
    let mut page = Sheet::new(area.width);
    page.paragraph(sentence, Ink::Strong);
    let height = page.height() as u16;
    if line + height + 2 >= area.height {
        return 0;
    }
    page.draw(0, Rect { y: area.y + line, height, ..area }, buffer);
    height
}

/// The day, and before it how many things in the book cannot be right; `e` names them.
fn right_of_answer(cx: &ScreenContext<'_>) -> String {
    // Days are numbered from a Monday.
    let weekday = cx.wording.weekday((cx.day().number() - 1).rem_euclid(7));
    let day = format!("{weekday} {}", cx.wording.short_day(cx.day()));
    match cx.book.picture.doubts.len() {
        0 => day,
        doubts => format!("{}: {}  {day}", cx.wording.letter_of('e'), cx.wording.banner_doubts(doubts as i64)),
    }
}

/// The screens by digit and name; only the present one by name where there is no room.
fn draw_screens(model: &Model, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    let names: Vec<(usize, ScreenName, String)> =
        ScreenName::ALL.iter().enumerate().map(|(i, name)| (i + 1, *name, screen_name(*name, cx.wording))).collect();
    let all = names.iter().map(|(_, _, name)| width_of(name) + 4).sum::<usize>();
    let short = all > usize::from(area.width);
    let mut x = area.x;
    for (digit, name, sentence) in names {
        let here = name == model.at;
        let text = if short && !here { format!(" {digit} ") } else { format!(" {digit} {sentence} ") };
        let style = if here { Ink::Chosen.style().add_modifier(Modifier::BOLD) } else { Ink::Plain.style() };
        let room = usize::from(area.right().saturating_sub(x));
        buffer.set_stringn(x, area.y, &text, room, style);
        x = (x + width_of(&text) as u16).min(area.right());
    }
}

/// Lines that must be seen all the time.
fn banners(model: &Model, cx: &ScreenContext<'_>) -> Vec<String> {
    let wording = cx.wording;
    let mut sentence = Vec::new();
    let day = wording.day(cx.day());
    match cx.book.picture.looking {
        Looking::Today => {}
        Looking::Back => sentence.push(wording.banner_back(day)),
        Looking::Ahead => sentence.push(wording.banner_ahead(day)),
    }
    if let Some(day) = model.writing_day {
        sentence.push(wording.banner_writing_day(wording.day(day)));
    }
    if cx.book.forecast_basis == ForecastBasis::Handbook {
        sentence.push(wording.banner_handbook());
    }
    if cx.book.gone > 0 {
        sentence.push(wording.banner_gone(cx.book.gone as i64));
    }
    if model.cannot_write() {
        sentence.push(wording.banner_read_only());
    }
    sentence
}

/// The lines below the screen: the message, and the keys; the answer is how many.
fn draw_bottom(model: &Model, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer, top: u16) -> u16 {
    let left = area.height.saturating_sub(top);
    if left < 3 {
        return 0;
    }
    let keys = Rect { y: area.bottom() - 1, height: 1, ..area };
    draw_hints(model, cx, keys, buffer);
    let sentence = message(model, cx);
    let mut page = Sheet::new(area.width);
    if let Some((text, ink)) = sentence {
        page.hanging("", Ink::Plain, &text, ink);
    }
    // A long message takes the lines it needs, up to a third of the screen.
    let most = (left / 3).max(1);
    let wanted = (page.height() as u16).min(most);
    if wanted == 0 {
        return if area.height >= LOW { 2 } else { 1 };
    }
    let lines = Rect { y: area.bottom() - 1 - wanted, height: wanted, ..area };
    page.draw(0, lines, buffer);
    1 + wanted
}

fn message(model: &Model, cx: &ScreenContext<'_>) -> Option<(String, Ink)> {
    if !model.pending.is_empty() {
        return Some((cx.wording.saving(), Ink::Strong));
    }
    model.notice.as_ref().map(|notice| (notice.text.clone(), notice.ink))
}

/// The keys that matter here, as many as have room.
fn draw_hints(model: &Model, cx: &ScreenContext<'_>, area: Rect, buffer: &mut Buffer) {
    let wording = cx.wording;
    let line = match model.layers.last() {
        Some(Layer::Form(form)) => form_hint(form, cx, usize::from(area.width)),
        Some(layer) => {
            let keys: Vec<KeyLine> = layer_keys(layer).iter().map(|(keys, does)| hinted(keys, *does)).collect();
            hints(&keys, &[], wording, usize::from(area.width))
        }
        None => {
            let screen = model.screens.at(model.at);
            let back = screen.goes_back(cx).then_some(KeyAction::Back);
            let everywhere = EVERYWHERE.iter().filter(|line| line.hinted).map(|line| KeyLine {
                does: back.filter(|_| line.does == KeyAction::Leave).unwrap_or(line.does),
                ..*line
            });
            // What writes is not named where nothing can be written: on another day, or reading only.
            let can_write = cx.book.picture.looking == Looking::Today && !cx.read_only;
            let named = |line: &KeyLine| line.hinted && (can_write || !line.does.writes());
            let own: Vec<KeyLine> = screen.keys(cx).into_iter().filter(named).collect();
            let everywhere: Vec<KeyLine> = everywhere.filter(named).collect();
            hints(&own, &everywhere, wording, usize::from(area.width))
        }
    };
    buffer.set_stringn(
        area.x,
        area.y,
        Sheet::shortened(&line, usize::from(area.width)),
        usize::from(area.width),
        Style::new(),
    );
}

/// The keys of what lies over a screen.
fn layer_keys(layer: &Layer) -> &'static [(&'static str, KeyAction)] {
    match layer {
        Layer::Confirm(_) => &[("w", KeyAction::Withdraw), ("q", KeyAction::Back)],
        Layer::Why(why) if why.says_all() => {
            &[("q", KeyAction::Back), ("a", KeyAction::FewerReasons), (", .", KeyAction::Page)]
        }
        Layer::Why(_) => &[("q", KeyAction::Back), ("a", KeyAction::AllReasons), (", .", KeyAction::Page)],
        Layer::News(_) | Layer::Help(_) => &[("q", KeyAction::Back), (", .", KeyAction::Page)],
        Layer::Leaving(_) => &[("Enter", KeyAction::Leave), ("q", KeyAction::Back)],
        Layer::Options(_) => &[("q", KeyAction::Back)],
        Layer::Day(_) => &[("q", KeyAction::Back), ("Enter", KeyAction::GoThere)],
        Layer::Form(_) | Layer::Kinds(_) | Layer::Find(_) => &[("Esc", KeyAction::Back), ("Enter", KeyAction::Open)],
    }
}

fn form_hint(_form: &Form, cx: &ScreenContext<'_>, room: usize) -> String {
    let long = cx.wording.form_keys();
    if width_of(&long) <= room { long } else { cx.wording.form_keys_short() }
}

/// So many of a screen's own keys stand before those that mean the same everywhere, as long as they have room.
const LEAST_OWN_KEYS: usize = 3;
/// Below this width, columns, a screen's own keys come first, each of them, and of the others those that have room. Ours.
const OWN_KEYS_FIRST_BELOW: usize = 60;

/// Keys with their words, whole: the screen's own as many as have room, then those that mean the same everywhere; where
/// there is no room for their words they stand as letters, help with its word the longest, for it names all. On a narrow screen, or
/// where three of the screen's own have no room beside them, only how to leave and help stay, and of its own the last are letters.
fn hints(own: &[KeyLine], everywhere: &[KeyLine], wording: &Wording, room: usize) -> String {
    let word = |line: &KeyLine| wording.key_does(&line.does.to_string());
    let letter = |line: &KeyLine| wording.keys_named(line.keys);
    let whole = |line: &KeyLine| format!("{} {}", letter(line), word(line));
    let with_words = |with: &[KeyAction]| -> Vec<String> {
        everywhere.iter().map(|line| if with.contains(&line.does) { whole(line) } else { letter(line) }).collect()
    };
    let all: Vec<KeyAction> = everywhere.iter().map(|line| line.does).collect();
    let back_and_help = [KeyAction::Leave, KeyAction::Back, KeyAction::Help];
    let leave_and_help: Vec<String> =
        everywhere.iter().filter(|line| back_and_help.contains(&line.does)).map(letter).collect();
    let ways = [
        with_words(&all),
        with_words(&back_and_help),
        with_words(&[KeyAction::Help]),
        with_words(&[]),
        leave_and_help.clone(),
    ];
    let line = |own: &[String], way: &[String]| [own, way].concat().join(BETWEEN_KEYS);
    // The first so many with their words, the rest as letters.
    let of_own = |words: usize, shown: usize| -> Vec<String> {
        let each = own.iter().take(shown).enumerate();
        each.map(|(at, line)| if at < words { whole(line) } else { letter(line) }).collect()
    };
    let fits = |line: &String| width_of(line) <= room;
    let is_narrow = room < OWN_KEYS_FIRST_BELOW;
    let least = own.len().min(LEAST_OWN_KEYS);
    let wide = (least..=own.len()).rev().flat_map(|many| ways.iter().take(ways.len() - 1).map(move |way| (many, way)));
    let wide = wide.map(|(many, way)| line(&of_own(many, many), way)).find(fits).filter(|_| !is_narrow);
    let narrow = || {
        let shown = (least..=own.len()).rev().flat_map(|shown| (0..=shown).rev().map(move |words| (words, shown)));
        // Words before letters: three with their words, and of the rest the letters.
        let mut shown: Vec<(usize, usize)> = shown.collect();
        shown.sort_by_key(|(words, shown)| std::cmp::Reverse((*words.min(&least), *shown, *words)));
        // Why and writing are named too where the letters have room close together.
        let close = [with_words(&[]).join(" ")];
        let with_close = shown.iter().filter(|(words, _)| *words >= least && !everywhere.is_empty());
        if let Some(found) = with_close.map(|(words, shown)| line(&of_own(*words, *shown), &close)).find(fits) {
            return Some(found);
        }
        let lines = shown.into_iter().flat_map(|(words, shown)| ways.iter().map(move |way| (words, shown, way)));
        lines.map(|(words, shown, way)| line(&of_own(words, shown), way)).find(fits)
    };
    wide.or_else(narrow).unwrap_or_else(|| line(&[], &leave_and_help))
}
