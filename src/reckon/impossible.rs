//! What an entry says against itself: numbers and days in one line that cannot be true together, whatever the books say.

use serde::{Deserialize, Serialize};
use std::sync::Arc;

use super::ledger::Ledger;
use super::picture::{Doubt, DoubtKind};
use crate::base::{Day, LotCode};
use crate::nursery::entry::subject::{Subject, subjects};
use crate::nursery::entry::types::{Celsius, Count};
use crate::nursery::entry::{Entry, GroundEntry, LightPair, SeedEntry, TrayEntry, What};

/// Two things in one entry that cannot both be true.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Debug, Serialize, Deserialize)]
pub enum Impossible {
    /// The lowest temperature of a day above its highest, hundredths of a degree C.
    LowestAboveHighest {
        /// The lowest.
        lowest: i32,
        /// The highest.
        highest: i32,
    },
    /// A lot that was collected after it came in.
    CollectedLater {
        /// The lot.
        lot: LotCode,
        /// The day of collecting.
        collected: Day,
    },
    /// A day in the body after the day the entry is of.
    DayLater {
        /// The field.
        field: Arc<str>,
        /// Its day.
        day: Day,
    },
    /// An end before the day the entry is of.
    EndsBefore {
        /// The end.
        until: Day,
    },
    /// A part that is larger than its whole.
    MoreOf {
        /// The field of the part.
        part: Arc<str>,
        /// The part.
        parts: u32,
        /// The field of the whole.
        whole: Arc<str>,
        /// The whole.
        wholes: u32,
    },
}

/// The doubts that the entries of a subject raise against themselves.
pub(super) fn doubts_of(ledger: &Ledger, subject: &Subject) -> Vec<Doubt> {
    let ours = |entry: &Entry| match subjects(&entry.what).into_iter().next() {
        Some(Subject::Tray(code)) => Subject::Tray(ledger.tray_at(&code, &ledger.key_of(entry))) == *subject,
        Some(first) => first == *subject,
        None => false,
    };
    let doubt = |entry: &Entry, why: Impossible| Doubt {
        day: entry.happened,
        kind: DoubtKind::CannotBe(why),
        entries: vec![entry.id.clone()],
    };
    let all = ledger.of(subject).filter_map(|entry| impossible(entry).map(|why| (entry, why)));
    all.filter(|(entry, _)| ours(entry)).map(|(entry, why)| doubt(entry, why)).collect()
}

/// More light under trees than in the open.
fn brighter_under(pairs: &[LightPair]) -> Option<Impossible> {
    let brighter = pairs.iter().find(|pair| pair.under_lux.0 > pair.open_lux.0)?;
    more_of("under_lux", Some(lux(brighter.under_lux.0)), "open_lux", Some(lux(brighter.open_lux.0)))
}

/// Whole lux.
fn lux(of: f64) -> Count {
    Count(of.round() as u32)
}

/// What an entry says against itself, the first thing of it.
pub(crate) fn impossible(entry: &Entry) -> Option<Impossible> {
    let later = |field: &'static str, day: Option<Day>| {
        day.filter(|day| *day > entry.happened).map(|day| Impossible::DayLater { field: field.into(), day })
    };
    let ended = |until: Option<Day>| {
        until.filter(|until| *until < entry.happened).map(|until| Impossible::EndsBefore { until })
    };
    match &entry.what {
        What::Ground(GroundEntry::LightRead(read)) => brighter_under(read.readings.as_deref().unwrap_or_default()),
        What::Tray(TrayEntry::Held(held)) => ended(held.until),
        What::Tray(TrayEntry::LetGo(gone)) => ended(gone.until),
        What::Seed(SeedEntry::LotReceived(lot)) => (lot.collected > entry.happened)
            .then(|| Impossible::CollectedLater { lot: lot.lot.clone(), collected: lot.collected }),
        What::Tray(TrayEntry::Counted(look)) => {
            more_of("cells_filled", look.cells_filled, "cells_seen", look.cells_seen)
                .or_else(|| more_of("cells_filled", look.cells_filled, "standing", Some(look.standing)))
        }
        What::Ground(GroundEntry::PlantsFound(found)) => later("planted_about", found.planted_about),
        What::Ground(GroundEntry::SurvivalCounted(look)) => later("outplanted_on", look.outplanted_on),
        What::Ground(GroundEntry::NurseCounted(look)) => {
            more_of("bunches_showing", look.bunches_showing, "alive", Some(look.alive))
        }
        What::Site(_) | What::Seed(_) | What::Tray(_) | What::Ground(_) | What::Book(_) | What::Foreign { .. } => None,
    }
}

/// The lowest temperature above the highest.
pub(super) fn lowest_above(lowest: Option<Celsius>, highest: Option<Celsius>) -> Option<Impossible> {
    let hundredths = |celsius: Celsius| (celsius.0 * 100.0).round() as i32;
    let (lowest, highest) = (hundredths(lowest?), hundredths(highest?));
    (lowest > highest).then_some(Impossible::LowestAboveHighest { lowest, highest })
}

/// A part above its whole, where both are written.
pub(super) fn more_of(
    part: &'static str,
    parts: Option<Count>,
    whole: &'static str,
    wholes: Option<Count>,
) -> Option<Impossible> {
    let (parts, wholes) = (parts?.0, wholes?.0);
    (parts > wholes).then_some(Impossible::MoreOf { part: part.into(), parts, whole: whole.into(), wholes })
}
