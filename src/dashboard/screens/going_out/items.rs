//! The lists of the screen: items of one or more lines, of which one is chosen and always in view.

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::words::{first_reason, line_words, near, reason, waits_mark};
use super::{Chosen, Part};
use crate::base::Day;
use crate::base::columns::left_aligned;
use crate::dashboard::look::Ink;
use crate::dashboard::model::On;
use crate::dashboard::parts::{Page, width_of};
use crate::reckon::loading::{
    Becoming, COMING_WEEKS, Coming, LoadLine, Offer, by_bed, coming as what_comes, left_of, line_warnings, offers,
};
use crate::reckon::picture::{Looking, PairPicture, TrayPicture};
use crate::reckon::round::go_by;
use crate::wording::verdict::About;

/// The least width at which a pair has its columns.
const COLUMNS_FROM: usize = 56;

/// An item: what it stands for, where it can be chosen, and its lines.
pub(super) struct Item {
    pub chosen: Option<Chosen>,
    pub page: Page,
}

impl Item {
    fn heading(text: &str, width: u16, first: bool) -> Item {
        let mut page = Page::new(width);
        if !first {
            page.paragraph("", Ink::Plain);
        }
        page.paragraph(text, Ink::Strong);
        Item { chosen: None, page }
    }

    fn said(text: &str, width: u16) -> Item {
        let mut page = Page::new(width);
        page.paragraph(text, Ink::Plain);
        Item { chosen: None, page }
    }
}

/// Draws items so that the chosen one is in view with what stands around it. No item is cut in the middle but one that is
/// higher than the whole area; how many follow below is said.
pub(super) fn draw(items: &[Item], chosen: Option<&Chosen>, on: &On<'_>, area: Rect, buffer: &mut Buffer) {
    let all: usize = items.iter().map(|item| item.page.height()).sum();
    // A line is kept for how many follow.
    let rows = if all > usize::from(area.height) { usize::from(area.height).saturating_sub(1) } else { all };
    let at = items.iter().position(|item| item.chosen.is_some() && item.chosen.as_ref() == chosen);
    let first = first_shown(items, at.unwrap_or(0), rows);
    let mut y = 0;
    let mut below = 0;
    for (i, item) in items.iter().enumerate().skip(first) {
        let height = item.page.height();
        let room = rows.saturating_sub(y);
        // A heading stands above something of its own.
        let alone = item.chosen.is_none() && items.get(i + 1).is_some_and(|next| height + next.page.height() > room);
        if alone || (height > room && (Some(i) != at || room == 0)) {
            below += items[i..].iter().filter(|item| item.chosen.is_some()).count();
            break;
        }
        let here = Rect { y: area.y + y as u16, height: height.min(room) as u16, ..area };
        item.page.draw_from(0, here, buffer);
        if at == Some(i) {
            buffer.set_style(here, Ink::Chosen.style());
        }
        y += height;
    }
    if below > 0 && area.height > 1 {
        let said = on.wording.items_more(below as i64);
        buffer.set_stringn(area.x, area.bottom() - 1, said, usize::from(area.width), Ink::Quiet.style());
    }
}

/// The first item shown, so that the chosen one is whole and, where there is room, one after it too.
fn first_shown(items: &[Item], at: usize, rows: usize) -> usize {
    let height = |range: std::ops::RangeInclusive<usize>| -> usize {
        items.get(range).map_or(0, |items| items.iter().map(|item| item.page.height()).sum())
    };
    if items.is_empty() {
        return 0;
    }
    let last = (at + 1).min(items.len() - 1);
    let fits = |end: usize| (0..=at).find(|first| height(*first..=end) <= rows);
    fits(last).or_else(|| fits(at)).unwrap_or(at)
}

/// What can be chosen of a part, in its order, without drawing it.
pub(super) fn choices(part: Part, lines: &[LoadLine], on: &On<'_>) -> Vec<Chosen> {
    match part {
        Part::Pairs => offers(&on.book.picture).iter().map(chosen_of).collect(),
        Part::Loading => {
            let mut sorted: Vec<&LoadLine> = lines.iter().collect();
            sorted.sort_by(|a, b| a.bed.cmp(&b.bed));
            sorted.into_iter().map(|line| Chosen::Pair(line.tray.clone(), line.bed.clone())).collect()
        }
        Part::Coming => what_comes(&on.book.picture).into_iter().map(|one| becoming_chosen(&one.what)).collect(),
    }
}

fn chosen_of(offer: &Offer) -> Chosen {
    match offer.pair() {
        Some(pair) => Chosen::Pair(pair.tray.clone(), pair.bed.clone()),
        None => Chosen::Tray(offer.tray().code.clone()),
    }
}

fn becoming_chosen(what: &Becoming) -> Chosen {
    match what {
        Becoming::Tray { tray, .. } => Chosen::Tray(tray.clone()),
        Becoming::Bed { bed, species, .. } => Chosen::Bed(bed.clone(), species.clone()),
    }
}

/// Trays before beds: what fits first, then for each other tray the bed it misses least.
pub(super) fn pairs(lines: &[LoadLine], on: &On<'_>, width: u16) -> Vec<Item> {
    let wording = on.wording;
    let offers = offers(&on.book.picture);
    let (fits, others): (Vec<&Offer>, Vec<&Offer>) = offers.iter().partition(|offer| matches!(offer, Offer::Fits(..)));
    let today = on.book.picture.looking == Looking::Today;
    let day = wording.day(on.day());
    let (fitting, missing, none) = if today {
        (wording.fits_heading(), wording.misses_heading(), wording.ready_none())
    } else {
        (wording.fits_heading_on(&day), wording.misses_heading_on(&day), wording.ready_none_on(&day))
    };
    let mut items = vec![Item::heading(&fitting, width, true)];
    if offers.is_empty() {
        let teach = if on.book.picture.trays.is_empty() { wording.no_trays() } else { wording.no_plants() };
        items.push(Item::said(&teach, width));
    } else if fits.is_empty() {
        items.push(Item::said(&none, width));
    }
    if on.book.picture.beds.is_empty() {
        items.push(Item::said(&wording.no_beds(), width));
    }
    let among: Vec<(&TrayPicture, &PairPicture)> =
        fits.iter().filter_map(|offer| offer.pair().map(|pair| (&**offer.tray(), &**pair))).collect();
    for (tray, pair) in &among {
        items.push(fit(tray, pair, &among, lines, on, width));
    }
    if !others.is_empty() {
        items.push(Item::heading(&missing, width, false));
        let room = others.iter().map(|offer| width_of(offer.tray().code.as_str())).max().unwrap_or(0);
        items.extend(others.iter().map(|offer| miss(offer, room, lines, on, width)));
    }
    items
}

fn fit(
    tray: &TrayPicture,
    pair: &PairPicture,
    among: &[(&TrayPicture, &PairPicture)],
    lines: &[LoadLine],
    on: &On<'_>,
    width: u16,
) -> Item {
    let wording = on.wording;
    let mut page = Page::new(width);
    let species = on.species(tray.species.as_ref());
    let before = go_by(tray, Some(pair), on.day()).map(|(last, what)| wording.go_by_words(near(last, on), what));
    let rest: Vec<String> = [Some(species), before, listed(lines, pair, on)].into_iter().flatten().collect();
    let rest = rest.join(", ");
    let on_list = lines.iter().find(|line| line.tray == pair.tray && line.bed == pair.bed).map(|line| line.plants);
    // What other lines promise is no longer there to be loaded.
    let number = on_list.unwrap_or_else(|| left_of(&on.book.picture, lines, pair));
    if page.width() >= COLUMNS_FROM {
        let widest = |of: fn(&(&TrayPicture, &PairPicture)) -> String| among.iter().map(|one| width_of(&of(one))).max();
        let code = widest(|(tray, _)| tray.code.to_string()).unwrap_or(0);
        let plants = width_of(&number.to_string()).max(widest(|(_, pair)| pair.plants.to_string()).unwrap_or(0));
        let bed = widest(|(_, pair)| pair.bed.to_string()).unwrap_or(0);
        let shown = left_aligned(pair.bed.as_str(), bed);
        let mark = format!("● {}  {number:>plants$} → {shown}  ", left_aligned(tray.code.as_str(), code));
        page.hanging(&mark, Ink::Good, &rest, Ink::Plain);
    } else {
        page.hanging("● ", Ink::Good, &format!("{} → {}: {number}", tray.code, pair.bed), Ink::Strong);
        page.hanging("  ", Ink::Plain, &rest, Ink::Plain);
    }
    Item { chosen: Some(Chosen::Pair(tray.code.clone(), pair.bed.clone())), page }
}

fn miss(offer: &Offer, room: usize, lines: &[LoadLine], on: &On<'_>, width: u16) -> Item {
    let mut page = Page::new(width);
    let tray = offer.tray();
    let code = left_aligned(tray.code.as_str(), room);
    match offer.pair() {
        Some(pair) => {
            let (mark, ink) = waits_mark(&pair.criteria);
            let mut said = on.wording.in_bed(&pair.bed, first_reason(&pair.criteria, About::Pair, on));
            if let Some(listed) = listed(lines, pair, on) {
                said = format!("{said} · {listed}");
            }
            page.hanging(&format!("{mark} {code}  "), ink, &said, Ink::Plain);
            Item { chosen: Some(Chosen::Pair(tray.code.clone(), pair.bed.clone())), page }
        }
        None => {
            let said = on.wording.no_bed_plans(on.species(tray.species.as_ref()));
            page.hanging(&format!("- {code}  "), Ink::Plain, &said, Ink::Plain);
            Item { chosen: Some(Chosen::Tray(tray.code.clone())), page }
        }
    }
}

fn listed(lines: &[LoadLine], pair: &PairPicture, on: &On<'_>) -> Option<String> {
    let line = lines.iter().find(|line| line.tray == pair.tray && line.bed == pair.bed)?;
    Some(on.wording.load_listed(i64::from(line.plants)))
}

/// The loading list, bed by bed.
pub(super) fn loading(lines: &[LoadLine], on: &On<'_>, width: u16) -> Vec<Item> {
    let wording = on.wording;
    let mut items = vec![Item::heading(&wording.load_heading(), width, true)];
    if lines.is_empty() {
        items.push(Item::said(&wording.load_empty(), width));
    }
    for (bed, here, sum) in by_bed(lines) {
        items.push(Item::heading(&wording.load_bed_sum(bed, i64::from(sum)), width, false));
        for line in here {
            let mut page = Page::new(width);
            let doubtful = line_warnings(&on.book.picture, line).is_some();
            let (mark, ink) = if doubtful { ("! ", Ink::Danger) } else { ("● ", Ink::Good) };
            page.hanging(mark, ink, &line_words(line, on), Ink::Plain);
            items.push(Item { chosen: Some(Chosen::Pair(line.tray.clone(), line.bed.clone())), page });
        }
    }
    items
}

/// What becomes ready, week by week; then what only a person can bring on.
pub(super) fn coming(on: &On<'_>, width: u16) -> Vec<Item> {
    let wording = on.wording;
    let all = what_comes(&on.book.picture);
    let mut items = vec![Item::heading(&wording.coming_heading(i64::from(COMING_WEEKS)), width, true)];
    if !all.iter().any(|one| one.day.is_some()) {
        items.push(Item::said(&wording.coming_none(), width));
    }
    let mut week: Option<i32> = None;
    let mut undated = false;
    for one in &all {
        if one.week.is_none() && !undated {
            undated = true;
            items.push(Item::heading(&wording.coming_undated(), width, false));
        }
        if one.week.is_some() && one.week != week {
            week = one.week;
            items.push(Item::heading(&week_words(one.week.unwrap_or(0), on), width, false));
        }
        items.push(becoming(one, on, width));
    }
    items
}

fn week_words(week: i32, on: &On<'_>) -> String {
    let day = |days: i32| -> Day { on.day().plus(days) };
    on.wording.coming_week(near(day(week * 7), on), near(day(week * 7 + 6), on))
}

fn becoming(one: &Coming, on: &On<'_>, width: u16) -> Item {
    let wording = on.wording;
    let mut page = Page::new(width);
    let (mark, said, chosen, about) = match &one.what {
        Becoming::Tray { tray, standing } => {
            let species = on.book.picture.trays.get(tray).and_then(|tray| tray.species.as_ref());
            let said = wording.coming_tray(tray, on.species(species), *standing);
            ("i ", said, Chosen::Tray(tray.clone()), About::Tray)
        }
        Becoming::Bed { bed, species, open } => {
            let said = wording.coming_bed(bed, on.species(Some(species)), *open);
            ("_ ", said, Chosen::Bed(bed.clone(), species.clone()), About::Bed)
        }
    };
    let said = match one.day {
        Some(day) => format!("{said}: {}", wording.comes_from(near(day, on))),
        None => said,
    };
    page.hanging(mark, Ink::Waits, &said, Ink::Strong);
    // What ends by itself needs nobody's hands; with a day of its own it is said once.
    for wait in &one.waits {
        page.hanging("  - ", Ink::Plain, &reason(wait, about, on), Ink::Plain);
    }
    Item { chosen: Some(chosen), page }
}
