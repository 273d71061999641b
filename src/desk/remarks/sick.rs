//! What is told of an entry that names a sickness as a loss, or that takes one to other plants.

use super::{Remark, story_of};
use crate::base::{Day, PlaceName, TrayCode};
use crate::nursery::entry::{Entry, TrayEntry, What};
use crate::nursery::pest::{is_same_pest, keeps_apart, says_none};
use crate::reckon::Fold;
use crate::reckon::picture::quantity::PestLacks;
use crate::reckon::stock::TrayStory;
use crate::reckon::tray::pest::beside::{may_have, sick_places};
use crate::reckon::tray::pest::kin::Kin;
use crate::reckon::tray::pest::{OpenPest, is_sighting, open_in_tray};

/// The book, and what its trays have in common.
type Known<'a> = (&'a Fold, &'a Kin);

/// What is told of a sickness that an entry names or carries on.
pub(super) fn told_of(fold: &Fold, kin: &Kin, entry: &Entry) -> Option<Remark> {
    let fold = (fold, kin);
    loss_names(fold, entry).or_else(|| look_early(fold, entry)).or_else(|| carried_on(fold, entry))
}

/// A look that found none of what a tray has, before the day from which one tells.
fn look_early(fold @ (book, kin): Known<'_>, entry: &Entry) -> Option<Remark> {
    let What::Tray(TrayEntry::PestSeen(look)) = &entry.what else { return None };
    let none = look.share_pct.is_some_and(|share| share.0 == 0.0) || says_none(&look.what.0);
    let story = story_of(fold.0, entry, look.tray.as_ref().filter(|_| none)?)?;
    let open = open_in_tray(story, (book.places(), kin), entry.happened);
    let of_it = open.iter().filter(|pest| says_none(&look.what.0) || is_same_pest(&pest.seen.what, &look.what.0));
    let from = of_it.filter_map(|pest| match pest.seen.lacks {
        Some(PestLacks::Look { from, is_due: false, .. }) => Some(from),
        _ => None,
    });
    from.max().map(|from| Remark::LookEarly { about: story.code.to_string(), from })
}

/// A loss or a cull that names a sickness nobody wrote yet: it is a sighting.
fn loss_names(fold: Known<'_>, entry: &Entry) -> Option<Remark> {
    let (tray, why) = match &entry.what {
        What::Tray(TrayEntry::Lost(lost)) => (&lost.tray, &lost.cause),
        What::Tray(TrayEntry::Culled(culled)) => (&culled.tray, &culled.why),
        What::Tray(_) | What::Site(_) | What::Seed(_) | What::Ground(_) | What::Book(_) | What::Foreign { .. } => {
            return None;
        }
    };
    let story = story_of(fold.0, entry, tray)?;
    let is_new = is_sighting(story, entry) && carried(fold, story, entry.happened).is_none();
    is_new.then(|| Remark::LossNames { tray: story.code.clone(), what: why.0.to_string() })
}

/// A sickness that an entry takes to other plants.
fn carried_on(fold: Known<'_>, entry: &Entry) -> Option<Remark> {
    let day = entry.happened;
    let from_sick = |tray: &TrayCode| {
        let story = story_of(fold.0, entry, tray)?;
        let what = carried(fold, story, day)?.seen.what;
        Some(Remark::FromSick { tray: story.code.clone(), what })
    };
    let to_sick =
        |tray: &TrayCode, place: Option<&PlaceName>| to_sick(fold, story_of(fold.0, entry, tray)?, place?, day);
    let What::Tray(what) = &entry.what else { return None };
    match what {
        TrayEntry::MovedOn(moved) => from_sick(&moved.from)
            .or_else(|| from_sick(&moved.to))
            .or_else(|| to_sick(&moved.from, moved.place.as_ref())),
        TrayEntry::Grafted(grafted) => from_sick(&grafted.tray),
        TrayEntry::Carried(moved) => from_sick(&moved.tray)
            .filter(|_| has_clean(fold, &moved.place, day))
            .or_else(|| to_sick(&moved.tray, Some(&moved.place))),
        _ => None,
    }
}

/// A sickness of a tray that goes along with plants.
fn carried((fold, kin): Known<'_>, story: &TrayStory, day: Day) -> Option<OpenPest> {
    open_in_tray(story, (fold.places(), kin), day).into_iter().find(|pest| !pest.nature.goes_by_itself())
}

/// Whether living trays with nothing on them stand at a place, and nobody keeps them apart.
fn has_clean((fold, kin): Known<'_>, place: &PlaceName, day: Day) -> bool {
    let mut there = fold.trays().values().filter(|story| story.accounts.standing > 0 && story.place() == Some(place));
    there.any(|story| {
        let apart = story.holds().any(|held| keeps_apart(&held.what.0));
        !apart && open_in_tray(story, (fold.places(), kin), day).is_empty()
    })
}

/// What was seen at the place where a clean tray comes to stand.
fn to_sick(fold: Known<'_>, story: &TrayStory, place: &PlaceName, day: Day) -> Option<Remark> {
    let sick = sick_places(fold.0.trays().values(), fold.0.places(), day);
    let clean = carried(fold, story, day).is_none();
    let spell = sick.get(place)?.iter().find(|spell| clean && may_have(story, spell, day))?;
    Some(Remark::ToSick { place: place.clone(), what: spell.seen.what.clone() })
}
