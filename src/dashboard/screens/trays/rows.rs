//! Which trays the list shows, in which order, and under which headings.

use std::cmp::Ordering;

use crate::base::text::folded;
use crate::base::{Day, PlaceName};
use crate::dashboard::context::ScreenContext;
use crate::reckon::picture::{Stage, TrayPicture};

/// What the list is sorted by.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub(crate) enum Sort {
    /// The code.
    #[default]
    Tray,
    /// The species' name.
    Species,
    /// The stage, what is late first.
    Stage,
    /// Living plants, most first.
    Standing,
    /// Plantable plants, most first.
    Plantable,
    /// Days since sowing, oldest first.
    Age,
    /// The first day it is ready.
    ReadyFrom,
    /// The last day in its container.
    BestBefore,
    /// The place, in walking order.
    Place,
}

impl Sort {
    /// All orders, as the columns stand.
    pub(crate) const ALL: [Sort; 9] = [
        Sort::Tray,
        Sort::Species,
        Sort::Stage,
        Sort::Standing,
        Sort::Plantable,
        Sort::Age,
        Sort::ReadyFrom,
        Sort::BestBefore,
        Sort::Place,
    ];

    /// The next column.
    pub(crate) fn next(self) -> Sort {
        let at = Sort::ALL.iter().position(|sort| *sort == self).unwrap_or(0);
        Sort::ALL[(at + 1) % Sort::ALL.len()]
    }
}

/// What the list is grouped by.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub(crate) enum Grouping {
    /// Nothing.
    #[default]
    None,
    /// Species.
    Species,
    /// Stages.
    Stage,
    /// Places.
    Place,
}

impl Grouping {
    /// The next grouping.
    pub(crate) fn next(self) -> Grouping {
        match self {
            Grouping::None => Grouping::Species,
            Grouping::Species => Grouping::Stage,
            Grouping::Stage => Grouping::Place,
            Grouping::Place => Grouping::None,
        }
    }
}

/// How the list is shown.
#[derive(Clone, Debug, Default)]
pub(crate) struct Order {
    /// The column it is sorted by.
    pub(crate) sort: Sort,
    /// The headings.
    pub(crate) grouping: Grouping,
    /// Whether empty trays are shown too.
    pub(crate) empty_too: bool,
}

/// A line of the list.
#[derive(Clone, Debug)]
pub(crate) enum Line<'a> {
    /// A heading with the trays and plants under it.
    Heading(String),
    /// A tray.
    Tray(&'a TrayPicture),
}

/// The lines of the list.
pub(crate) fn lines<'a>(order: &Order, wanted: &str, cx: &ScreenContext<'a>) -> Vec<Line<'a>> {
    let trays = shown(order, wanted, cx);
    if order.grouping == Grouping::None {
        return trays.into_iter().map(Line::Tray).collect();
    }
    let mut lines = Vec::with_capacity(trays.len() + 8);
    let mut at = 0;
    while let Some(first) = trays.get(at) {
        let rest = trays.iter().skip(at);
        let group: Vec<_> = rest.take_while(|tray| by_group(order.grouping, first, tray, cx).is_eq()).collect();
        let plants: u64 = group.iter().map(|tray| u64::from(tray.standing)).sum();
        let name = group_name(order.grouping, first, cx);
        let plants = i64::try_from(plants).unwrap_or(i64::MAX);
        lines.push(Line::Heading(cx.wording.trays_group(name, group.len() as i64, cx.wording.plants(plants))));
        at += group.len();
        lines.extend(group.into_iter().map(|tray| Line::Tray(tray)));
    }
    lines
}

/// The trays that are shown, in order.
pub(crate) fn shown<'a>(order: &Order, wanted: &str, cx: &ScreenContext<'a>) -> Vec<&'a TrayPicture> {
    let words: Vec<String> = wanted.split_whitespace().map(folded).collect();
    let all = cx.book.picture.trays.values().map(|tray| &**tray);
    let mut trays: Vec<&TrayPicture> = all
        .filter(|tray| order.empty_too || tray.stage != Stage::Spent)
        .filter(|tray| words.is_empty() || fits(tray, &words, cx))
        .collect();
    trays.sort_by(|a, b| {
        by_group(order.grouping, a, b, cx)
            .then_with(|| by_column(order.sort, a, b, cx))
            .then_with(|| a.code.cmp(&b.code))
    });
    trays
}

/// How many trays are empty.
pub(crate) fn empty_trays(cx: &ScreenContext<'_>) -> usize {
    cx.book.picture.trays.values().filter(|tray| tray.stage == Stage::Spent).count()
}

/// Whether every word typed stands in the tray's code, species, stage, place or lots; accents and case do not count.
fn fits(tray: &TrayPicture, words: &[String], cx: &ScreenContext<'_>) -> bool {
    let mut text = format!("{} {} {}", tray.code, cx.species(tray.species.as_ref()), cx.wording.stage_name(tray.stage));
    if let Some(place) = &tray.place {
        text.push_str(&format!(" {place}"));
    }
    for lot in &tray.lots {
        text.push_str(&format!(" {lot}"));
    }
    let text = folded(&text);
    words.iter().all(|word| text.contains(word))
}

fn by_group(grouping: Grouping, a: &TrayPicture, b: &TrayPicture, cx: &ScreenContext<'_>) -> Ordering {
    match grouping {
        Grouping::None => Ordering::Equal,
        Grouping::Species => by_column(Sort::Species, a, b, cx),
        Grouping::Stage => urgency(a.stage).cmp(&urgency(b.stage)),
        Grouping::Place => by_column(Sort::Place, a, b, cx),
    }
}

fn by_column(sort: Sort, a: &TrayPicture, b: &TrayPicture, cx: &ScreenContext<'_>) -> Ordering {
    match sort {
        Sort::Tray => a.code.cmp(&b.code),
        Sort::Species => {
            let name = |tray: &TrayPicture| (tray.species.is_none(), folded(&cx.species(tray.species.as_ref())));
            if a.species == b.species { Ordering::Equal } else { name(a).cmp(&name(b)) }
        }
        Sort::Stage => urgency(a.stage).cmp(&urgency(b.stage)),
        Sort::Standing => b.standing.cmp(&a.standing),
        Sort::Plantable => b.plantable.likely.total_cmp(&a.plantable.likely),
        Sort::Age => b.age_days.cmp(&a.age_days),
        Sort::ReadyFrom => known_first(ready_day(a, cx.day()), ready_day(b, cx.day())),
        Sort::BestBefore => known_first(a.best_before, b.best_before),
        Sort::Place => place_order(a.place.as_ref(), cx).cmp(&place_order(b.place.as_ref(), cx)),
    }
}

fn known_first(a: Option<Day>, b: Option<Day>) -> Ordering {
    (a.is_none(), a).cmp(&(b.is_none(), b))
}

/// A tray that is ready comes before any that is still to be.
fn ready_day(tray: &TrayPicture, day: Day) -> Option<Day> {
    if tray.ready { Some(tray.ready_from.unwrap_or(day).min(day)) } else { tray.ready_from.or(tray.not_before()) }
}

/// What is late first, what was just sown last, empty trays after all.
fn urgency(stage: Stage) -> u8 {
    match stage {
        Stage::Overdue => 0,
        Stage::Ready => 1,
        Stage::Hardening => 2,
        Stage::GrowingOn => 3,
        Stage::PrickedOut => 4,
        Stage::Emerging => 5,
        Stage::Sown => 6,
        Stage::Spent => 7,
    }
}

fn place_order(place: Option<&PlaceName>, cx: &ScreenContext<'_>) -> (bool, u32, Option<PlaceName>) {
    let set = place.and_then(|place| cx.book.picture.site.places.get(place)).and_then(|place| place.on(cx.day()));
    (place.is_none(), set.map_or(u32::MAX, |set| set.order.0), place.cloned())
}

fn group_name(grouping: Grouping, tray: &TrayPicture, cx: &ScreenContext<'_>) -> String {
    match grouping {
        Grouping::None => String::new(),
        Grouping::Species => cx.species(tray.species.as_ref()),
        Grouping::Stage => cx.wording.stage_name(tray.stage),
        Grouping::Place => tray.place.as_ref().map_or_else(|| cx.wording.outcome_no_place(), ToString::to_string),
    }
}
