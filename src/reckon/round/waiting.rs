//! Waiting times of treatments: nobody is sent where one runs; where nobody wrote it, the label is asked for; and when
//! it has ended somebody looks again.

use std::collections::BTreeSet;

use super::deadline::UntilFor;
use super::intervals::*;
use super::stop::{AfterWait, RoundReason, Stake, Stop, Task};
use super::walk::{Walk, all_of, asked};
use crate::base::{Day, EntryId, PlaceName};
use crate::nursery::entry::subject::Subject;
use crate::nursery::pest::stings;
use crate::reckon::picture::{BedPicture, Criterion, Picture, Question, Rule, Stage, TrayPicture};
use crate::reckon::stock::Treatment;
use crate::reckon::tray::{hold, pest};

/// Whether a stop would send somebody into a tray, a place or a bed whose waiting time runs or is not known. Reading the
/// label is done from outside.
pub(super) fn keeps_out(walk: &Walk<'_>, stop: &Stop) -> bool {
    if stop.task == Task::ReadLabel {
        return false;
    }
    match &stop.subject {
        Subject::Tray(code) => {
            let tray = walk.picture.trays.get(code);
            let treated =
                |tray: &TrayPicture| asked(&tray.criteria, Rule::Treated).is_some_and(|treated| treated.blocks);
            tray.is_some_and(|tray| treated(tray) || asked(&tray.criteria, Rule::Pest).is_some_and(is_nest))
        }
        Subject::Place(name) => walk.picture.closed.contains_key(name) || nest(walk.picture, name).is_some(),
        Subject::Bed(name) => {
            let bed = walk.picture.beds.get(name);
            let waits = |bed: &BedPicture| bed.story.in_wait(&walk.picture.places, walk.day()).is_some();
            bed.is_some_and(|bed| waits(bed) || nest_in(bed).is_some())
        }
        Subject::Lot(_) | Subject::Site => false,
    }
}

/// A nest of what stings at a place.
fn nest(picture: &Picture, name: &PlaceName) -> Option<Criterion> {
    pest::nest_at(name, (&picture.places, &picture.sick), picture.day)
}

/// Whether what was seen is a nest of what stings.
fn is_nest(asked: &Criterion) -> bool {
    match &asked.question {
        Question::Pest(pest) => {
            pest.found().and_then(|found| found.known.as_ref()).is_some_and(|seen| stings(&seen.what))
        }
        _ => false,
    }
}

/// A nest of what stings in a bed.
fn nest_in(bed: &BedPicture) -> Option<Criterion> {
    bed.species.iter().find_map(|line| asked(&line.criteria, Rule::Pest).filter(|asked| is_nest(asked)).cloned())
}

/// A nest of what stings in a tray that stands at no place.
fn nest_of_tray(tray: &TrayPicture) -> Option<Criterion> {
    asked(&tray.criteria, Rule::Pest).filter(|asked| tray.place.is_none() && is_nest(asked)).cloned()
}

/// What nobody touches on a day, and why: trays, places and beds under a waiting time that runs or is not known.
pub(super) fn stay_away(picture: &Picture) -> Vec<(Subject, Criterion)> {
    let held = |criteria: &[Criterion]| asked(criteria, Rule::Treated).filter(|treated| treated.blocks).cloned();
    let trays = picture.trays.values().filter(|tray| tray.standing > 0 || tray.stage != Stage::Spent);
    let trays = trays.filter_map(|tray| Some((Subject::Tray(tray.code.clone()), held(&tray.criteria)?)));
    // A bench with trays is named by them.
    let stands = |name: &PlaceName| {
        picture.trays.values().any(|tray| tray.place.as_ref() == Some(name) && tray.stage != Stage::Spent)
    };
    let empty =
        picture.closed.keys().filter(|name| !stands(name)).filter_map(|name| {
            Some((Subject::Place(name.clone()), hold::waiting_at(&picture.closed, name, picture.day)?))
        });
    let beds = picture.beds.values().filter_map(|bed| {
        let treated = bed.species.iter().find_map(|line| held(&line.criteria))?;
        Some((Subject::Bed(bed.name.clone()), treated))
    });
    let benches: BTreeSet<&PlaceName> = picture.places.keys().chain(picture.sick.keys()).collect();
    let nests = benches.into_iter().filter_map(|name| Some((Subject::Place(name.clone()), nest(picture, name)?)));
    let of_trays = picture.trays.values();
    let of_trays = of_trays.filter_map(|tray| Some((Subject::Tray(tray.code.clone()), nest_of_tray(tray)?)));
    let in_beds = picture.beds.values().filter_map(|bed| Some((Subject::Bed(bed.name.clone()), nest_in(bed)?)));
    trays.chain(empty).chain(beds).chain(nests).chain(of_trays).chain(in_beds).collect()
}

/// The wait of what a stop is about that ended in the last days, where it has hands among the plants.
pub(super) fn just_ended(walk: &Walk<'_>, stop: &Stop) -> Option<AfterWait> {
    if matches!(stop.task, Task::ReadLabel | Task::Gauge) {
        return None;
    }
    let (picture, day) = (walk.picture, walk.day());
    let (last, looked) = match &stop.subject {
        Subject::Tray(code) => {
            let tray = picture.trays.get(code)?;
            (ended_last(hold::treatments(&tray.story, &picture.places), day)?, looked_on(tray))
        }
        Subject::Place(name) => (ended_last(picture.places.get(name)?.treatments.iter(), day)?, None),
        Subject::Bed(name) => (ended_last(picture.beds.get(name)?.story.treatments.iter(), day)?, None),
        Subject::Lot(_) | Subject::Site => return None,
    };
    let (treatment, over_on) = last;
    let looked = looked.is_some_and(|looked| looked >= over_on);
    Some(AfterWait { with: treatment.with.clone(), over_on, looked })
}

/// Of the treatments whose wait ended in the last days the one that ended last; one without any waiting is not told.
fn ended_last<'a>(all: impl Iterator<Item = &'a Treatment>, day: Day) -> Option<(&'a Treatment, Day)> {
    let over = all.filter(|one| one.wait_days.is_some_and(|days| days > 0));
    let over = over.filter_map(|one| Some((one, one.over_on()?)));
    over.filter(|(_, over)| (0..HANDLED_WITH_CARE_DAYS).contains(&day.days_since(*over))).max_by_key(|(_, over)| *over)
}

/// The last day on which somebody looked at the plants of a tray.
fn looked_on(tray: &TrayPicture) -> Option<Day> {
    let story = &tray.story;
    story.counts.iter().map(|look| look.day).chain(story.pests.iter().map(|pest| pest.from)).max()
}

/// Labels to read: treatments of which nobody wrote the waiting time.
pub(super) fn labels(walk: &Walk<'_>) -> Vec<Stop> {
    let mut stops = Vec::new();
    let day = walk.day();
    let reason = |one: &Treatment, planting: bool| RoundReason::LabelNotRead {
        with: one.with.clone(),
        day: one.day,
        people: one.over_on().is_none(),
        planting: planting && one.plantable_on().is_none(),
    };
    // Of a tray that is gone only where its place is still closed by it.
    let closes = |tray: &&TrayPicture| {
        walk.picture.closed.values().flatten().any(|closing| closing.tray.as_ref() == Some(&tray.code))
    };
    let gone = walk.picture.trays.values().map(|tray| &**tray).filter(|tray| tray.stage == Stage::Spent);
    for tray in walk.living_trays().chain(gone.filter(closes)) {
        // What kills weeds is asked of the plants, by a count, and not of its label.
        let by_label = |one: &&Treatment| one.plantable_on().is_none() && one.scorches_until(0).is_none();
        let hurt = hold::may_be_hurt(&tray.story, &walk.picture.places, day).filter(by_label);
        let hurt: Vec<EntryId> = hurt.map(|one| one.entry.clone()).collect();
        let asks = |one: &&Treatment| (one.over_on().is_none() || hurt.contains(&one.entry)) && one.day <= day;
        let Some(one) = tray.story.treatments.iter().rev().find(asks).cloned() else { continue };
        let stop = walk.tray_stop(tray, Task::ReadLabel, reason(&one, hurt.contains(&one.entry)));
        stops.push(label(stop, &one, f64::from(tray.standing), walk.day()));
    }
    for (name, place) in walk.picture.places.iter() {
        let here = || walk.living_trays().filter(|tray| tray.place.as_ref() == Some(name));
        let hurts = |one: &Treatment| {
            let among = |tray: &TrayPicture| {
                hold::may_be_hurt(&tray.story, &walk.picture.places, day).any(|other| other.entry == one.entry)
            };
            one.plantable_on().is_none() && one.scorches_until(0).is_none() && here().any(among)
        };
        let asks = |one: &&Treatment| one.day <= day && (one.over_on().is_none() || hurts(one));
        let Some(one) = place.treatments.iter().rev().find(asks).cloned() else { continue };
        let stop = walk.place_stop(name, Task::ReadLabel, reason(&one, hurts(&one)));
        stops.push(label(stop, &one, f64::from(all_of(here().map(|tray| tray.standing))), walk.day()));
    }
    for bed in walk.picture.beds.values() {
        // One stop for the newest, of which both are asked at once.
        let asks = |one: &&Treatment| (one.over_on().is_none() || one.plantable_on().is_none()) && one.day <= day;
        let Some(one) = bed.story.treatments.iter().rev().find(asks).cloned() else { continue };
        let living = all_of(bed.species.iter().map(|line| line.living));
        let stop = walk.bed_stop(bed, Task::ReadLabel, reason(&one, true));
        stops.push(label(stop, &one, f64::from(living), walk.day()));
    }
    stops
}

fn label(stop: Stop, treatment: &Treatment, plants: f64, day: Day) -> Stop {
    let mut stop = stop
        .risking(Stake::Planting, plants * UNSEEN_LOSS, SICK_WITHIN_DAYS)
        .taking(minutes::LOOK, LABEL_SOURCE)
        .due(treatment.day, TREATMENT_SHOWN_DAYS)
        .until(Some(day), UntilFor::Today);
    stop.entries = vec![treatment.entry.clone()];
    stop
}

/// Trays, places and beds whose waiting time has just ended, until somebody looked again.
pub(super) fn treatments_over(walk: &Walk<'_>) -> Vec<Stop> {
    let mut stops = Vec::new();
    for tray in walk.living_trays() {
        stops.extend(tray_over(walk, tray));
    }
    for (name, place) in walk.picture.places.iter() {
        let here = walk.living_trays().filter(|tray| tray.place.as_ref() == Some(name));
        let standing = all_of(here.map(|tray| tray.standing));
        let Some((treatment, over)) = just_over(walk, place.treatments.iter().rev()).filter(|_| standing > 0) else {
            continue;
        };
        let stop = walk.place_stop(name, Task::TreatmentOver, ended(treatment, over));
        stops.push(look_again(stop, f64::from(standing), over, treatment));
    }
    for bed in walk.picture.beds.values() {
        let Some((treatment, over)) = just_over(walk, bed.story.treatments.iter().rev()) else { continue };
        let living = all_of(bed.species.iter().map(|line| line.living));
        let stop = walk.bed_stop(bed, Task::TreatmentOver, ended(treatment, over));
        stops.push(look_again(stop, f64::from(living), over, treatment));
    }
    stops
}

fn tray_over(walk: &Walk<'_>, tray: &TrayPicture) -> Option<Stop> {
    let story = &tray.story;
    // Whether what kills weeds worked is not asked of the plants that it wetted: those are counted weeks later.
    let cures = story.treatments.iter().filter(|one| one.scorches_until(0).is_none());
    let (treatment, over) = just_over(walk, cures)?;
    if looked_on(tray).is_some_and(|looked| looked >= over) {
        return None;
    }
    let stop = walk.tray_stop(tray, Task::TreatmentOver, ended(treatment, over));
    Some(look_again(stop, f64::from(tray.standing), over, treatment))
}

/// A treatment whose waiting time has ended in the last days; one without any waiting is not told.
fn just_over<'a>(walk: &Walk<'_>, all: impl Iterator<Item = &'a Treatment>) -> Option<(&'a Treatment, Day)> {
    let day = walk.day();
    let over = all.filter_map(|one| Some((one, one.over_on()?))).filter(|(one, over)| *over > one.day);
    let just = over.filter(|(_, over)| (0..=TREATMENT_SHOWN_DAYS).contains(&day.days_since(*over)));
    just.max_by_key(|(_, over)| *over)
}

fn ended(treatment: &Treatment, over_on: Day) -> RoundReason {
    RoundReason::TreatmentOver { with: treatment.with.clone(), over_on }
}

fn look_again(stop: Stop, plants: f64, over: Day, treatment: &Treatment) -> Stop {
    let mut stop = stop
        .risking(Stake::Seedlings, plants * UNSEEN_LOSS, SICK_WITHIN_DAYS)
        .taking(minutes::LOOK, TREATMENT_SOURCE)
        .due(over, TREATMENT_SHOWN_DAYS)
        .until(Some(over.plus(TREATMENT_SHOWN_DAYS)), UntilFor::Window);
    stop.entries = vec![treatment.entry.clone()];
    stop
}
