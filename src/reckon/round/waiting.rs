//! Waiting times of treatments: nobody is sent where one runs; where nobody wrote it, the label is asked for; and when
//! it has ended somebody looks again.

use super::deadline::UntilFor;
use super::intervals::*;
use super::stop::{RoundReason, Stake, Stop, Task};
use super::walk::{Walk, all_of, asked};
use crate::base::{Day, PlaceName};
use crate::nursery::entry::subject::Subject;
use crate::reckon::picture::{Rule, TrayPicture};
use crate::reckon::stock::{Treatment, Treatments, holding};

/// Whether a stop would send somebody into a tray, a place or a bed whose waiting time runs or is not known. Reading the
/// label is done from outside.
pub(super) fn keeps_out(walk: &Walk<'_>, stop: &Stop) -> bool {
    if stop.task == Task::ReadLabel {
        return false;
    }
    let place_waits = |name: &PlaceName| {
        let place = walk.picture.places.get(name);
        place.is_some_and(|place| holding(place.treatments.iter(), walk.day()).is_some())
    };
    match &stop.subject {
        Subject::Tray(code) => walk.picture.trays.get(code).is_some_and(|tray| {
            let waits = asked(&tray.criteria, Rule::Treated).is_some_and(|criterion| criterion.blocks);
            waits || tray.place.as_ref().is_some_and(place_waits)
        }),
        Subject::Place(name) => place_waits(name),
        Subject::Bed(name) => {
            let bed = walk.picture.beds.get(name);
            bed.is_some_and(|bed| holding(bed.story.treatments.iter(), walk.day()).is_some())
        }
        Subject::Lot(_) | Subject::Site => false,
    }
}

/// Labels to read: treatments of which nobody wrote the waiting time.
pub(super) fn labels(walk: &Walk<'_>) -> Vec<Stop> {
    let mut stops = Vec::new();
    let unknown = |all: &Treatments| {
        let day = walk.day();
        let mut found = all.iter().rev().filter(|one| one.over_on().is_none() && one.day <= day);
        found.next().cloned()
    };
    let reason = |one: &Treatment| RoundReason::LabelNotRead { with: one.with.clone(), day: one.day };
    for tray in walk.living_trays() {
        let Some(one) = unknown(&tray.story.treatments) else { continue };
        let stop = walk.tray_stop(tray, Task::ReadLabel, reason(&one));
        stops.push(label(stop, &one, f64::from(tray.standing), walk.day()));
    }
    for (name, place) in walk.picture.places.iter() {
        let Some(one) = unknown(&place.treatments) else { continue };
        let here = walk.living_trays().filter(|tray| tray.place.as_ref() == Some(name));
        let stop = walk.place_stop(name, Task::ReadLabel, reason(&one));
        stops.push(label(stop, &one, f64::from(all_of(here.map(|tray| tray.standing))), walk.day()));
    }
    for bed in walk.picture.beds.values() {
        let Some(one) = unknown(&bed.story.treatments) else { continue };
        let living = all_of(bed.species.iter().map(|line| line.living));
        let stop = walk.bed_stop(bed, Task::ReadLabel, reason(&one));
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
    let (treatment, over) = just_over(walk, story.treatments.iter())?;
    let looks = story.counts.iter().map(|look| look.day).chain(story.pests.iter().map(|pest| pest.from));
    if looks.max().is_some_and(|looked| looked >= over) {
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
