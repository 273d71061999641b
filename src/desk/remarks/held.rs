//! What is told of an entry that takes plants on that a person holds back, or off a place that is held.

use super::{Remark, story_of};
use crate::base::{PlaceName, TrayCode};
use crate::nursery::entry::{Entry, TrayEntry, What};
use crate::nursery::pest::{holds_sick, says_none};
use crate::reckon::Fold;
use crate::reckon::picture::Criterion;
use crate::reckon::stock::{Hold, Places, Since, is_named};
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

/// A release of what several reasons hold back, that names none of them.
pub(super) fn lets_go_of_all(fold: &Fold, entry: &Entry) -> Option<Remark> {
    let What::Tray(TrayEntry::Released(released)) = &entry.what else { return None };
    let of_tray = released.tray.as_ref().and_then(|tray| {
        let story = story_of(fold, entry, tray)?;
        Some((story.code.to_string(), story.holds().collect::<Vec<_>>()))
    });
    let of_bed = || {
        let story = released.bed.as_ref().and_then(|bed| fold.beds().get(bed))?;
        Some((story.name.to_string(), story.held.iter().collect()))
    };
    let of_place = || {
        let name = released.place.as_ref()?;
        Some((name.to_string(), fold.places().get(name)?.held.iter().collect()))
    };
    let (about, mut holds) = of_tray.or_else(of_bed).or_else(of_place)?;
    holds.retain(|hold| hold.what.1.is_none_or(|until| entry.happened <= until));
    let named = |hold: &&&Since<Hold>| released.why.as_ref().is_some_and(|why| is_named(&hold.what.0, &why.0));
    // A sick one is not let go of by the word for something else.
    let other = |why: &str| !says_none(why) && !holds_sick(why);
    let of_sick = holds.iter().any(|hold| holds_sick(&hold.what.0));
    let of_other = of_sick && released.why.as_ref().is_some_and(|why| other(&why.0));
    let unnamed = (holds.len() > 1 || of_other) && holds.iter().filter(named).count() == 0;
    let reasons = holds.iter().map(|hold| hold.what.0.clone()).collect();
    unnamed.then_some(Remark::LetsGoOfAll { about, reasons })
}
