//! The lists of the screen: items of one or more lines, of which one is chosen and always in view.

use std::borrow::Cow;

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use super::words::{first_reason, line_words, near, reason, waits_mark};
use super::{Chosen, Part};
use crate::base::Day;
use crate::base::columns::left_aligned;
use crate::dashboard::context::ScreenContext;
use crate::dashboard::look::Ink;
use crate::dashboard::parts::{Sheet, keep_marks, width_of};
use crate::reckon::loading::{
    Becoming, COMING_WEEKS, Coming, LoadLine, Offer, by_bed, coming as what_comes, left_of, line_warnings, offers,
};
use crate::reckon::picture::{Looking, Pair, PairPicture, TrayPicture};
use crate::reckon::round::go_by;
use crate::reckon::{SharedOffer, shared_offers};
use crate::wording::verdict::About;

/// The least width at which a pair has its columns.
const COLUMNS_FROM: usize = 56;

/// An item: what it stands for, where it can be chosen, and its lines.
pub(super) struct Item {
    pub(crate) chosen: Option<Chosen>,
    pub(crate) page: Sheet,
}

impl Item {
    fn heading(text: &str, width: u16, first: bool) -> Item {
        let mut page = Sheet::new(width);
        if !first {
            page.paragraph("", Ink::Plain);
        }
        page.paragraph(text, Ink::Strong);
        Item { chosen: None, page }
    }

    fn message(text: &str, width: u16) -> Item {
        let mut page = Sheet::new(width);
        page.paragraph(text, Ink::Plain);
        Item { chosen: None, page }
    }
}

/// The items of a part in their order. Those of trays and beds are made when they are drawn, and only those in view are:
/// a large nursery has many thousands.
pub(super) struct Items<'a> {
    rows: Vec<Line<'a>>,
    make: Option<OfferItems<'a>>,
}

/// An item that is there, or an offer of which one is made.
enum Line<'a> {
    Made(Item),
    Offer(&'a Offer, &'a Chosen),
}

impl Items<'_> {
    fn of(made: Vec<Item>) -> Items<'static> {
        Items { rows: made.into_iter().map(Line::Made).collect(), make: None }
    }

    fn chosen(&self, i: usize) -> Option<&Chosen> {
        match self.rows.get(i)? {
            Line::Made(item) => item.chosen.as_ref(),
            Line::Offer(_, chosen) => Some(chosen),
        }
    }

    fn page(&self, i: usize) -> Cow<'_, Sheet> {
        match (self.rows.get(i), &self.make) {
            (Some(Line::Made(item)), _) => Cow::Borrowed(&item.page),
            (Some(Line::Offer(offer, _)), Some(make)) => Cow::Owned(make.page(offer)),
            (Some(Line::Offer(..)), None) | (None, _) => Cow::Owned(Sheet::default()),
        }
    }

    fn height(&self, i: usize) -> usize {
        self.page(i).height()
    }

    /// Every item made.
    #[cfg(test)]
    pub(crate) fn all(&self) -> Vec<Item> {
        (0..self.rows.len())
            .map(|i| Item { chosen: self.chosen(i).cloned(), page: self.page(i).into_owned() })
            .collect()
    }
}

/// Draws items so that the chosen one is in view with what stands around it. No item is cut in the middle but one that is
/// higher than the whole area; how many follow below is said.
pub(super) fn draw(
    items: &Items<'_>,
    chosen: Option<&Chosen>,
    cx: &ScreenContext<'_>,
    area: Rect,
    buffer: &mut Buffer,
) {
    let (count, height) = (items.rows.len(), usize::from(area.height));
    // Every item has a line at least.
    let all = if count > height { count } else { (0..count).map(|i| items.height(i)).sum() };
    // A line is kept for how many follow.
    let rows = if all > height { height.saturating_sub(1) } else { all };
    let at = (0..count).find(|i| items.chosen(*i).is_some_and(|one| Some(one) == chosen));
    let first = first_shown(items, at.unwrap_or(0), rows);
    let mut y = 0;
    let mut below = 0;
    for i in first..count {
        let page = items.page(i);
        let height = page.height();
        let room = rows.saturating_sub(y);
        // A heading stands above something of its own.
        let alone = items.chosen(i).is_none() && i + 1 < count && height + items.height(i + 1) > room;
        if alone || (height > room && (Some(i) != at || room == 0)) {
            below += (i..count).filter(|i| items.chosen(*i).is_some()).count();
            break;
        }
        let here = Rect { y: area.y + y as u16, height: height.min(room) as u16, ..area };
        page.draw_from(0, here, buffer);
        if at == Some(i) {
            buffer.set_style(here, Ink::Chosen.style());
            here.rows().for_each(|row| keep_marks(row, buffer));
        }
        y += height;
    }
    if below > 0 && area.height > 1 {
        let message = cx.wording.items_more(below as i64);
        buffer.set_stringn(area.x, area.bottom() - 1, message, usize::from(area.width), Ink::Quiet.style());
    }
}

/// The first item shown, so that the chosen one is whole and, where there is room, one after it too.
fn first_shown(items: &Items<'_>, at: usize, rows: usize) -> usize {
    let Some(last) = items.rows.len().checked_sub(1) else { return 0 };
    // The first from which all up to an end have room, looked for from the end.
    let fits = |end: usize| {
        let mut taken = 0;
        let from_end = (0..=end).rev().take_while(|i| {
            taken += items.height(*i);
            taken <= rows
        });
        from_end.last().filter(|first| *first <= at)
    };
    fits((at + 1).min(last)).or_else(|| fits(at)).unwrap_or(at)
}

/// Trays before beds as they were offered when the book was drawn: reckoned once, shown with every key.
#[derive(Debug)]
pub(super) struct Offered {
    /// Of which drawing of the book.
    pub(crate) generation: u64,
    offers: Vec<Offer>,
    /// What can be chosen of each.
    choices: Vec<Chosen>,
    /// What is offered more than once.
    shared: Vec<SharedOffer>,
    widths: Widths,
}

/// The widest of each column.
#[derive(Clone, Copy, Debug, Default)]
struct Widths {
    code: usize,
    plants: usize,
    bed: usize,
    missing: usize,
}

impl Offered {
    /// What is offered now.
    pub(crate) fn now(cx: &ScreenContext<'_>) -> Offered {
        let offers = offers(&cx.book.picture);
        let choices = offers.iter().map(chosen_of).collect();
        let mut widths = Widths::default();
        for offer in &offers {
            let code = width_of(offer.tray().code.as_str());
            match offer {
                Offer::Fits(_, pair) => {
                    widths.code = widths.code.max(code);
                    widths.plants = widths.plants.max(pair.plants.to_string().len());
                    widths.bed = widths.bed.max(width_of(pair.bed().as_str()));
                }
                Offer::Misses(..) | Offer::NoBed(_) => widths.missing = widths.missing.max(code),
            }
        }
        let shared = shared_offers(&cx.book.picture);
        Offered { generation: cx.book.generation, offers, choices, shared, widths }
    }

    /// What can be chosen, in the order in which it is shown.
    pub(crate) fn in_order(&self, lines: &[LoadLine], cx: &ScreenContext<'_>) -> Vec<Chosen> {
        let parts = self.parted(lines, cx);
        let all = [parts.fits, parts.full, parts.misses].concat();
        all.into_iter().filter_map(|at| self.choices.get(at).cloned()).collect()
    }

    /// The offers by what can be done with them now, each in the order in which they were offered.
    fn parted(&self, lines: &[LoadLine], cx: &ScreenContext<'_>) -> Parted {
        let mut parts = Parted::default();
        for (at, offer) in self.offers.iter().enumerate() {
            match offer {
                Offer::Fits(_, pair) if is_full(pair, lines, cx) => parts.full.push(at),
                Offer::Fits(..) => parts.fits.push(at),
                Offer::Misses(..) | Offer::NoBed(_) => parts.misses.push(at),
            }
        }
        parts
    }
}

/// Offers by their place in the list of all.
#[derive(Default)]
struct Parted {
    fits: Vec<usize>,
    /// They would fit, but what is on the list leaves nothing of the tray or no place in the bed.
    full: Vec<usize>,
    misses: Vec<usize>,
}

/// Whether other lines of the list leave nothing to load of a pair that is not on it.
fn is_full(pair: &Pair, lines: &[LoadLine], cx: &ScreenContext<'_>) -> bool {
    let concerns = |line: &LoadLine| line.tray == *pair.tray() || line.bed == *pair.bed();
    let on_list = |line: &LoadLine| line.tray == *pair.tray() && line.bed == *pair.bed();
    lines.iter().any(concerns) && !lines.iter().any(on_list) && left_of(&cx.book.picture, lines, pair) == 0
}

/// What can be chosen of a part, in its order, without drawing it.
pub(super) fn choices(part: Part, lines: &[LoadLine], cx: &ScreenContext<'_>) -> Vec<Chosen> {
    match part {
        Part::Pairs => Offered::now(cx).in_order(lines, cx),
        Part::Loading => {
            let mut sorted: Vec<&LoadLine> = lines.iter().collect();
            sorted.sort_by(|a, b| a.bed.cmp(&b.bed));
            sorted.into_iter().map(|line| Chosen::Pair(line.tray.clone(), line.bed.clone())).collect()
        }
        Part::Coming => what_comes(&cx.book.picture).into_iter().map(|one| becoming_chosen(&one.what)).collect(),
    }
}

fn chosen_of(offer: &Offer) -> Chosen {
    match offer.pair() {
        Some(pair) => Chosen::Pair(pair.tray().clone(), pair.bed().clone()),
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
pub(super) fn pairs<'a>(
    offered: &'a Offered,
    lines: &'a [LoadLine],
    cx: &'a ScreenContext<'a>,
    width: u16,
) -> Items<'a> {
    let wording = cx.wording;
    let today = cx.book.picture.looking == Looking::Today;
    let day = wording.day(cx.day());
    let (fitting, missing, none) = if today {
        (wording.fits_heading(), wording.misses_heading(), wording.ready_none())
    } else {
        (wording.fits_heading_on(&day), wording.misses_heading_on(&day), wording.ready_none_on(&day))
    };
    let parts = offered.parted(lines, cx);
    let mut rows = vec![Line::Made(Item::heading(&fitting, width, true))];
    let hands = crate::reckon::round::hands(&cx.book.picture).filter(|_| today && !parts.fits.is_empty());
    rows.extend(hands.map(|hands| Line::Made(Item::message(&wording.fits_hands(hands), width))));
    if offered.offers.is_empty() {
        let teach = if cx.book.picture.trays.is_empty() { wording.no_trays() } else { wording.no_plants() };
        rows.push(Line::Made(Item::message(&teach, width)));
    } else if parts.fits.is_empty() && parts.full.is_empty() {
        rows.push(Line::Made(Item::message(&none, width)));
    }
    if cx.book.picture.beds.is_empty() {
        rows.push(Line::Made(Item::message(&wording.no_beds(), width)));
    }
    let headings = [None, Some(wording.full_heading()), Some(missing)];
    for (heading, part) in headings.into_iter().zip([parts.fits, parts.full, parts.misses]) {
        let heading = heading.filter(|_| !part.is_empty());
        rows.extend(heading.map(|heading| Line::Made(Item::heading(&heading, width, false))));
        let of = |at: usize| Some(Line::Offer(offered.offers.get(at)?, offered.choices.get(at)?));
        rows.extend(part.into_iter().filter_map(of));
    }
    Items { rows, make: Some(OfferItems { offered, lines, cx, width }) }
}

/// Makes the lines of an offer.
struct OfferItems<'a> {
    offered: &'a Offered,
    lines: &'a [LoadLine],
    cx: &'a ScreenContext<'a>,
    width: u16,
}

impl OfferItems<'_> {
    fn page(&self, offer: &Offer) -> Sheet {
        match offer {
            Offer::Fits(tray, pair) => self.fit(tray, pair),
            Offer::Misses(tray, pair) => self.miss(tray, Some(pair)),
            Offer::NoBed(tray) => self.miss(tray, None),
        }
    }

    fn fit(&self, tray: &TrayPicture, pair: &Pair) -> Sheet {
        let (cx, wording, widths) = (self.cx, self.cx.wording, self.offered.widths);
        let mut page = Sheet::new(self.width);
        let species = cx.species(tray.species.as_ref());
        let before = go_by(tray, Some(pair), cx.day()).map(|(last, what)| wording.go_by_words(near(last, cx), what));
        let on_list = self.lines.iter().find(|line| line.tray == pair.tray && line.bed == pair.bed);
        // What other lines promise is no longer there to be loaded.
        let number = on_list.map_or_else(|| left_of(&cx.book.picture, self.lines, pair), |line| line.plants);
        let rest = match listed(self.lines, pair, cx) {
            Some(listed) => vec![Some(species), before, Some(listed)],
            None if number == 0 => vec![Some(wording.load_full())],
            None => vec![Some(species), before, self.also_offered(pair)],
        };
        let rest = rest.into_iter().flatten().collect::<Vec<_>>().join(", ");
        if number == 0 {
            page.hanging("- ", Ink::Quiet, &format!("{} → {}: {rest}", tray.code, pair.bed), Ink::Plain);
            return page;
        }
        if page.width() >= COLUMNS_FROM {
            let plants = widths.plants.max(number.to_string().len());
            let code = left_aligned(tray.code.as_str(), widths.code);
            let mark = format!("● {code}  {number:>plants$} → {}  ", left_aligned(pair.bed.as_str(), widths.bed));
            page.hanging(&mark, Ink::Good, &rest, Ink::Plain);
        } else {
            page.hanging("● ", Ink::Good, &format!("{} → {}: {number}", tray.code, pair.bed), Ink::Strong);
            page.hanging("  ", Ink::Plain, &rest, Ink::Plain);
        }
        page
    }

    /// That the same places, or the same plants, are offered a second time.
    fn also_offered(&self, pair: &PairPicture) -> Option<String> {
        let wording = self.cx.wording;
        let mut said = self.offered.shared.iter().filter_map(|offer| match offer {
            SharedOffer::Bed { bed, trays, .. } if *bed == pair.bed && trays.contains(&pair.tray) => {
                let others = trays.iter().filter(|tray| **tray != pair.tray).map(ToString::to_string);
                Some(wording.load_same_places(others.collect::<Vec<_>>().join(", ")))
            }
            SharedOffer::Tray { tray, beds, .. } if *tray == pair.tray && beds.contains(&pair.bed) => {
                let others = beds.iter().filter(|bed| **bed != pair.bed).map(ToString::to_string);
                Some(wording.load_same_plants(others.collect::<Vec<_>>().join(", ")))
            }
            SharedOffer::Bed { .. } | SharedOffer::Tray { .. } => None,
        });
        said.next()
    }

    fn miss(&self, tray: &TrayPicture, pair: Option<&PairPicture>) -> Sheet {
        let cx = self.cx;
        let mut page = Sheet::new(self.width);
        let code = left_aligned(tray.code.as_str(), self.offered.widths.missing);
        match pair {
            Some(pair) => {
                let (mark, ink) = waits_mark(&pair.criteria);
                let mut message = cx.wording.in_bed(&pair.bed, first_reason(&pair.criteria, About::Pair, cx));
                if let Some(listed) = listed(self.lines, pair, cx) {
                    message = format!("{message} · {listed}");
                }
                page.hanging(&format!("{mark} {code}  "), ink, &message, Ink::Plain);
            }
            None => {
                let message = cx.wording.not_planned(tray.species.as_ref(), &cx.book.picture);
                page.hanging(&format!("- {code}  "), Ink::Plain, &message, Ink::Plain);
            }
        }
        page
    }
}

fn listed(lines: &[LoadLine], pair: &PairPicture, cx: &ScreenContext<'_>) -> Option<String> {
    let line = lines.iter().find(|line| line.tray == pair.tray && line.bed == pair.bed)?;
    Some(cx.wording.load_listed(i64::from(line.plants)))
}

/// The loading list, bed by bed.
pub(super) fn loading(lines: &[LoadLine], cx: &ScreenContext<'_>, width: u16) -> Items<'static> {
    let wording = cx.wording;
    let mut items = vec![Item::heading(&wording.load_heading(), width, true)];
    if lines.is_empty() {
        items.push(Item::message(&wording.load_empty(), width));
    }
    for (bed, here, sum) in by_bed(lines) {
        items.push(Item::heading(&wording.load_bed_sum(bed, i64::from(sum)), width, false));
        for line in here {
            let mut page = Sheet::new(width);
            let doubtful = line_warnings(&cx.book.picture, line).is_some();
            let (mark, ink) = if doubtful { ("! ", Ink::Danger) } else { ("● ", Ink::Good) };
            page.hanging(mark, ink, &line_words(line, cx), Ink::Plain);
            items.push(Item { chosen: Some(Chosen::Pair(line.tray.clone(), line.bed.clone())), page });
        }
    }
    Items::of(items)
}

/// What becomes ready, week by week; then what only a person can bring on.
pub(super) fn coming(cx: &ScreenContext<'_>, width: u16) -> Items<'static> {
    let wording = cx.wording;
    let all = what_comes(&cx.book.picture);
    let mut items = vec![Item::heading(&wording.coming_heading(i64::from(COMING_WEEKS)), width, true)];
    if !all.iter().any(|one| one.day.is_some()) {
        items.push(Item::message(&wording.coming_none(), width));
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
            items.push(Item::heading(&week_words(one.week.unwrap_or(0), cx), width, false));
        }
        items.push(becoming(one, cx, width));
    }
    Items::of(items)
}

fn week_words(week: i32, cx: &ScreenContext<'_>) -> String {
    let day = |days: i32| -> Day { cx.day().plus(days) };
    cx.wording.coming_week(near(day(week * 7), cx), near(day(week * 7 + 6), cx))
}

fn becoming(one: &Coming, cx: &ScreenContext<'_>, width: u16) -> Item {
    let wording = cx.wording;
    let mut page = Sheet::new(width);
    let (mark, message, chosen, about) = match &one.what {
        Becoming::Tray { tray, standing } => {
            let species = cx.book.picture.trays.get(tray).and_then(|tray| tray.species.as_ref());
            let message = wording.coming_tray(tray, cx.species(species), *standing);
            ("i ", message, Chosen::Tray(tray.clone()), About::Tray)
        }
        Becoming::Bed { bed, species, open } => {
            let message = wording.coming_bed(bed, cx.species(Some(species)), *open);
            ("_ ", message, Chosen::Bed(bed.clone(), species.clone()), About::Bed)
        }
    };
    let message = match one.day {
        Some(day) => format!("{message}: {}", wording.comes_from(near(day, cx))),
        None => message,
    };
    page.hanging(mark, Ink::Waits, &message, Ink::Strong);
    // What ends by itself needs nobody's hands; with a day of its own it is said once.
    for wait in &one.waits {
        page.hanging("  - ", Ink::Plain, &reason(wait, about, cx), Ink::Plain);
    }
    Item { chosen: Some(chosen), page }
}
