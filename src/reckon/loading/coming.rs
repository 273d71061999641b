//! What becomes ready in the coming weeks, trays and beds, and what is still to be done for it.

use crate::base::day::WEEK_DAYS;
use crate::base::{BedName, Day, SpeciesKey, TrayCode};
use crate::reckon::field::{lasts_until, waits_for};
use crate::reckon::picture::{Criterion, Picture, Stage};

/// Weeks looked ahead.
pub(crate) const COMING_WEEKS: i32 = 8;

/// What becomes ready.
#[derive(Clone, PartialEq, Debug)]
pub(crate) enum Becoming {
    /// A tray.
    Tray {
        /// The tray.
        tray: TrayCode,
        /// Living seedlings by the books.
        standing: u32,
    },
    /// A bed for a species.
    Bed {
        /// The bed.
        bed: BedName,
        /// The species.
        species: SpeciesKey,
        /// Open positions.
        open: u32,
    },
}

/// Something that becomes ready, or would if somebody did what is missing.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct Coming {
    /// What.
    pub what: Becoming,
    /// The day; none where it hangs on work or on a look that nobody can date.
    pub day: Option<Day>,
    /// The week from today it falls into, from 0; none where it has no day.
    pub week: Option<i32>,
    /// What still holds it back, work first.
    pub waits: Vec<Criterion>,
}

/// What becomes ready in the coming weeks, by day, trays before beds; then what has no day and hangs on a person. What is
/// ready already is left out, and so is what comes later.
pub(crate) fn coming(picture: &Picture) -> Vec<Coming> {
    let mut all: Vec<Coming> = Vec::new();
    for tray in picture.trays.values() {
        if tray.ready || tray.standing == 0 || tray.stage == Stage::Spent {
            continue;
        }
        let what = Becoming::Tray { tray: tray.code.clone(), standing: tray.standing };
        all.extend(one(picture.day, what, tray.ready_from.filter(|day| *day > picture.day), &tray.criteria));
    }
    for bed in picture.beds.values() {
        for line in bed.species.iter().filter(|line| line.open_positions > 0) {
            if !line.criteria.iter().any(|criterion| criterion.blocks) {
                continue;
            }
            let (bed, species) = (bed.name.clone(), line.species.clone());
            let what = Becoming::Bed { bed, species, open: line.open_positions };
            let day = lasts_until(&line.criteria).map(|day| day.max(picture.day.plus(1)));
            all.extend(one(picture.day, what, day, &line.criteria));
        }
    }
    all.sort_by_key(|one| (one.day.is_none(), one.day, matches!(one.what, Becoming::Bed { .. })));
    all
}

fn one(today: Day, what: Becoming, day: Option<Day>, criteria: &[Criterion]) -> Option<Coming> {
    let week = day.map(|day| day.days_since(today) / WEEK_DAYS);
    // What has a day beyond these weeks, whatever else it waits for, is no news of theirs.
    let dated = criteria.iter().filter(|criterion| criterion.blocks).filter_map(|criterion| criterion.expected);
    let last = dated.chain(day).max().map(|day| day.days_since(today) / WEEK_DAYS);
    if last.is_some_and(|week| week >= COMING_WEEKS) {
        return None;
    }
    let waits = waits_for(criteria, today).into_iter().cloned().collect();
    Some(Coming { what, day, week, waits })
}
