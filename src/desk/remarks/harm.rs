//! What is told of an entry that takes hands into a waiting time, or that names a sickness where it holds nothing back.

use std::sync::Arc;

use super::{Remark, story_of};
use crate::base::{BedName, PlaceName, TrayCode};
use crate::nursery::entry::types::ArrivedFrom;
use crate::nursery::entry::{BookEntry, Entry, GroundEntry, TrayEntry, What};
use crate::nursery::herbicide::{has_no_wait, kills_weeds, may_kill_plants, names_treatment};
use crate::nursery::pest::{is_named_in, nature_of};
use crate::reckon::Fold;
use crate::reckon::bed::held::closed_by;
use crate::reckon::picture::{Criterion, Question};
use crate::reckon::tray::closed::Closed;
use crate::reckon::tray::hold;

/// Whether an entry takes hands among plants, or into a bed.
pub(super) fn takes_hands(what: &What) -> bool {
    match what {
        What::Tray(what) => !trays_in_hand(what).is_empty() || place_in_hand(what).is_some(),
        What::Ground(GroundEntry::LightRead(read)) => read.bed.is_some() || read.place.is_some(),
        What::Ground(what) => bed_in_hand(what).is_some(),
        What::Site(_) | What::Seed(_) | What::Book(_) | What::Foreign { .. } => false,
    }
}

/// The waiting time that runs, or is not known, where an entry takes hands.
pub(super) fn hands_in_wait(fold: &Fold, closed: &Closed, entry: &Entry) -> Option<Remark> {
    let day = entry.happened;
    let told = |about: String, why: Criterion| {
        (why.blocks && !dries(&why)).then(|| Remark::HandsInWait { about, why: Box::new(why) })
    };
    let of_place = |place: &PlaceName| told(place.to_string(), hold::waiting_at(closed, place, day)?);
    match &entry.what {
        What::Tray(what) => {
            let of_tray = |code: &TrayCode| {
                let story = story_of(fold, entry, code)?;
                told(story.code.to_string(), hold::treated(story, fold.places(), closed, day))
            };
            let trays = trays_in_hand(what).into_iter().find_map(of_tray);
            trays.or_else(|| place_in_hand(what).and_then(of_place))
        }
        What::Ground(what) => {
            if let GroundEntry::LightRead(read) = what
                && let Some(place) = &read.place
            {
                return of_place(place);
            }
            let bed = fold.beds().get(bed_in_hand(what)?)?;
            told(bed.name.to_string(), closed_by(bed, fold.places(), day)?)
        }
        What::Site(_) | What::Seed(_) | What::Book(_) | What::Foreign { .. } => None,
    }
}

/// Whether it is a day of drying alone: of one day nobody knows what came first.
fn dries(why: &Criterion) -> bool {
    matches!(&why.question, Question::Treated(known) if known.found().and_then(|found| found.known.as_ref()).is_some_and(|at| at.dries))
}

/// The trays that an entry takes hands into.
fn trays_in_hand(what: &TrayEntry) -> Vec<&TrayCode> {
    match what {
        TrayEntry::Counted(look) => vec![&look.tray],
        TrayEntry::Stocktaken(look) => vec![&look.tray],
        TrayEntry::Culled(culled) => vec![&culled.tray],
        TrayEntry::Measured(sample) => vec![&sample.tray],
        TrayEntry::PlugChecked(plug) => vec![&plug.tray],
        TrayEntry::RootsCut(cut) => vec![&cut.tray],
        TrayEntry::Grafted(grafted) => vec![&grafted.tray],
        TrayEntry::Carried(carried) => vec![&carried.tray],
        TrayEntry::MovedOn(moved) => vec![&moved.from, &moved.to],
        TrayEntry::Sown(_)
        | TrayEntry::Resown(_)
        | TrayEntry::PlantsReceived(_)
        | TrayEntry::Lost(_)
        | TrayEntry::Flushed(_)
        | TrayEntry::ShadeSet(_)
        | TrayEntry::WateringSet(_)
        | TrayEntry::HardeningBegun(_)
        | TrayEntry::Held(_)
        | TrayEntry::Released(_)
        | TrayEntry::PestSeen(_)
        | TrayEntry::Treated(_)
        | TrayEntry::GivenOut(_)
        | TrayEntry::Relabelled(_)
        | TrayEntry::LetGo(_) => Vec::new(),
    }
}

/// The place that plants or seed are brought to.
fn place_in_hand(what: &TrayEntry) -> Option<&PlaceName> {
    match what {
        TrayEntry::Carried(carried) => Some(&carried.place),
        TrayEntry::MovedOn(moved) => moved.place.as_ref(),
        TrayEntry::Sown(sown) => sown.place.as_ref(),
        // What stood there when the book was begun was carried by nobody.
        TrayEntry::PlantsReceived(came) => came.place.as_ref().filter(|_| came.from != ArrivedFrom::Opening),
        _ => None,
    }
}

/// The bed that an entry takes hands into. What goes out has a remark of its own.
fn bed_in_hand(what: &GroundEntry) -> Option<&BedName> {
    match what {
        GroundEntry::SownInBed(sown) => Some(&sown.bed),
        GroundEntry::NursePlanted(planted) => Some(&planted.bed),
        GroundEntry::NurseCounted(look) => Some(&look.bed),
        GroundEntry::NurseMeasured(look) => Some(&look.bed),
        GroundEntry::NurseCut(cut) => Some(&cut.bed),
        GroundEntry::SoilChecked(check) => Some(&check.bed),
        GroundEntry::PlantsWatered(given) => Some(&given.bed),
        GroundEntry::Prepared(work) => Some(&work.bed),
        GroundEntry::SurvivalCounted(look) => Some(&look.bed),
        GroundEntry::PlantsFound(found) => Some(&found.bed),
        GroundEntry::LightRead(read) => read.bed.as_ref(),
        GroundEntry::Outplanted(_) | GroundEntry::PlantsLost(_) => None,
    }
}

/// A sickness, or something that was used, named in a note, where it holds nothing back.
///
/// What was used and stands written beside the note, of the same day, holds by itself.
pub(super) fn only_named(beside: &[Arc<Entry>], entry: &Entry) -> Option<Remark> {
    let What::Book(BookEntry::Noted(noted)) = &entry.what else { return None };
    let sickness = is_named_in(&noted.text.0);
    let is_written = |other: &Arc<Entry>| {
        matches!(other.what, What::Tray(TrayEntry::Treated(_))) && other.happened == entry.happened
    };
    let named = sickness || names_treatment(&noted.text.0) && !beside.iter().any(is_written);
    named.then(|| Remark::OnlyNamed { sickness, what: noted.text.0.to_string() })
}

/// A pest or a sickness by a name that nobody here knows.
pub(super) fn unknown_pest(entry: &Entry) -> Option<Remark> {
    let What::Tray(TrayEntry::PestSeen(seen)) = &entry.what else { return None };
    let nature = nature_of(&seen.what.0, seen.spreads);
    let is_unknown = (nature.is_unknown || nature.is_sign)
        && seen.share_pct.is_none_or(|share| share.0 > 0.0)
        && !crate::nursery::pest::says_none(&seen.what.0);
    is_unknown.then(|| Remark::UnknownPest { what: seen.what.0.to_string() })
}

/// A treatment without its waiting time, of what is not known to need none. One whose time was written before has it.
pub(super) fn no_waiting_time(fold: &Fold, entry: &Entry) -> Option<Remark> {
    let What::Tray(TrayEntry::Treated(treated)) = &entry.what else { return None };
    let (with, day) = (&treated.with.0, entry.happened);
    let of_tray = || story_of(fold, entry, treated.tray.as_ref()?);
    let before = match (&treated.bed, &treated.place) {
        (Some(bed), _) => fold.beds().get(bed).map(|bed| &bed.treatments),
        (_, Some(place)) => fold.places().get(place).map(|place| &place.treatments),
        (None, None) => of_tray().map(|tray| &tray.treatments),
    };
    let has_one = treated.safe_after_days.is_some() || before.is_some_and(|before| before.has_wait_of(day, with));
    (!has_one && !has_no_wait(with)).then(|| Remark::NoWaitingTime { with: with.to_string(), day })
}

/// Plants wetted with what kills weeds; something used that nobody here knows to let plants live, without its time before planting.
pub(super) fn may_kill(entry: &Entry) -> Option<Remark> {
    let What::Tray(TrayEntry::Treated(treated)) = &entry.what else { return None };
    if treated.bed.is_none() && kills_weeds(&treated.with.0) {
        return Some(Remark::MayScorch { with: treated.with.0.to_string() });
    }
    let asked = treated.plant_after_days.is_none() && may_kill_plants(&treated.with.0);
    let (with, is_known) = (treated.with.0.to_string(), kills_weeds(&treated.with.0));
    asked.then_some(Remark::MayKill { with, is_known })
}

/// No day until planting, of what is known to kill weeds and what is planted into it.
pub(super) fn planted_at_once(entry: &Entry) -> Option<Remark> {
    let What::Tray(TrayEntry::Treated(treated)) = &entry.what else { return None };
    let at_once = treated.plant_after_days.is_some_and(|days| days.0 == 0.0) && kills_weeds(&treated.with.0);
    at_once.then(|| Remark::PlantedAtOnce { with: treated.with.0.to_string() })
}
