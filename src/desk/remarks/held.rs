//! What is told of an entry that takes plants on that a person holds back, or off a place that is held.

use super::Remark;
use crate::base::{PlaceName, TrayCode};
use crate::nursery::entry::{Entry, TrayEntry, What};
use crate::reckon::Fold;
use crate::reckon::picture::Criterion;
use crate::reckon::stock::{Places, TrayStory};
use crate::reckon::tray::hold;
use crate::reckon::tray::pest::kin::{Kin, came_from_dying};
use crate::reckon::tray::pest::many_died;

/// What is told of a hold whose plants go on.
pub(super) fn told_of(fold: &Fold, kin: &Kin, entry: &Entry) -> Option<Remark> {
    let What::Tray(what) = &entry.what else { return None };
    match what {
        TrayEntry::MovedOn(moved) => goes_along((fold, kin), entry, &moved.from, &moved.to)
            .or_else(|| leaves(fold, entry, &moved.from, moved.place.as_ref()?)),
        TrayEntry::Carried(carried) => leaves(fold, entry, &carried.tray, &carried.place),
        _ => None,
    }
}

fn goes_along((fold, kin): (&Fold, &Kin), entry: &Entry, from: &TrayCode, to: &TrayCode) -> Option<Remark> {
    let story = story_of(fold, entry, from)?;
    // What is held at its place stays there.
    let why = hold::held(story, &Places::new(), &[], entry.happened);
    let tray = story.code.clone();
    let died = || many_died(story, entry.happened).or_else(|| came_from_dying(kin, story)).and_then(blocks);
    blocks(why).or_else(died).map(|why| Remark::HoldGoesAlong { tray, to: to.clone(), why })
}

fn leaves(fold: &Fold, entry: &Entry, tray: &TrayCode, to: &PlaceName) -> Option<Remark> {
    let story = story_of(fold, entry, tray)?;
    let place = story.place().filter(|place| *place != to)?;
    let why = hold::held_at(fold.places().get(place)?, entry.happened)?;
    blocks(why).map(|why| Remark::LeavesHeld { tray: story.code.clone(), place: place.clone(), why })
}

fn blocks(why: Criterion) -> Option<Box<Criterion>> {
    why.blocks.then(|| Box::new(why))
}

fn story_of<'a>(fold: &'a Fold, entry: &Entry, tray: &TrayCode) -> Option<&'a TrayStory> {
    fold.trays().get(&fold.ledger().tray_at(tray, &entry.order_key())).map(|story| &**story)
}
