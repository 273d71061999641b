//! One plan of the day: what to load first, each plant and each place given away once, as the walk gives them away.

use super::list::LoadLine;
use crate::base::{Day, TrayCode};
use crate::reckon::picture::Picture;
use crate::reckon::round::{go_by, going};

/// What goes out today, the tray with the nearest last day first, each with the beds that have room for it.
pub(crate) fn day_plan(picture: &Picture) -> Vec<LoadLine> {
    let going = going(picture);
    let last = |tray: &TrayCode| -> Option<Day> {
        let best = going.get(tray).and_then(|beds| picture.pair(tray, &beds.first()?.bed));
        go_by(picture.trays.get(tray)?, best.map(AsRef::as_ref), picture.day).map(|(last, _)| last)
    };
    let mut trays: Vec<&TrayCode> = going.keys().collect();
    trays.sort_by_cached_key(|tray| {
        let last = last(tray);
        (picture.trays.get(*tray).is_some_and(|tray| tray.has_pest()), last.is_none(), last)
    });
    let loads = trays.into_iter().flat_map(|tray| {
        let beds = going.get(tray).into_iter().flatten().filter(|to| to.after_others > 0);
        beds.map(|to| LoadLine { tray: tray.clone(), bed: to.bed.clone(), plants: to.after_others })
    });
    loads.collect()
}
