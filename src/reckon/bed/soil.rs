//! Whether the ground is soft enough for roots down to planting depth.

use crate::base::Day;
use crate::nursery::entry::types::Tubers;
use crate::nursery::species::Profile;
use crate::reckon::bed::positions::part_seen;
use crate::reckon::bed::season;
use crate::reckon::picture::quantity::{Ground, ResistanceAtMost};
use crate::reckon::picture::{Basis, Criterion, Gap, Question, RuleSource};
use crate::reckon::site::Site;
use crate::reckon::stock::{BedStory, SoilLook};
use crate::science::soil::ROOT_LIMIT_MPA;

/// A hole is at least this much deeper than the container, cm. Ours.
pub(crate) const HOLE_BELOW_CONTAINER_CM: f64 = 5.0;
/// Planting depth where the species names no container depth, cm. Ours.
pub(crate) const USUAL_PLANTING_DEPTH_CM: f64 = 30.0;
/// A rod under at most this much pressure proves the ground down to where it went, MPa: 5 % over the limit, since a
/// scale is not read better. Ours.
pub(crate) const ROD_PROVES_MPA: f64 = ROOT_LIMIT_MPA * 1.05;
/// A rod that stopped short proves hard ground from this pressure on, MPa: 10 % under the limit. Ours.
pub(crate) const ROD_STOPS_MPA: f64 = ROOT_LIMIT_MPA * 0.9;
/// After so many days a look at the soil is too old. Ours.
pub(crate) const LOOK_LASTS_DAYS: i32 = 730;
/// Lifted tubers keep the ground loose over so many wet seasons. Ours.
pub(crate) const LIFTED_LASTS_SEASONS: usize = 2;
/// The same in days, where no rains are described. Ours.
pub(crate) const LIFTED_LASTS_DAYS: i32 = 365;
/// Depth down to which lifting tubers loosens the ground, cm. Ours.
pub(crate) const LIFTED_DEPTH_CM: f64 = 40.0;

const LIMIT_SOURCE: RuleSource = RuleSource::RootLimit;
const ROD_SOURCE: RuleSource = RuleSource::Rod;
const TUBER_SOURCE: RuleSource = RuleSource::TuberShape;
const LIFTED_SOURCE: RuleSource = RuleSource::TubersLifted;

/// The depth down to which the ground must be soft for a species, cm.
pub(crate) fn planting_depth_cm(profile: Option<&Profile>) -> f64 {
    let container = profile.and_then(|profile| profile.container_depth_cm.as_ref()).map(|figure| figure.value);
    container.map_or(USUAL_PLANTING_DEPTH_CM, |depth| depth + HOLE_BELOW_CONTAINER_CM)
}

/// Whether the ground is soft enough. It must be known; the newest look that tells something leads.
pub fn criterion(story: &BedStory, site: &Site, profile: Option<&Profile>, rows: Option<u32>, day: Day) -> Criterion {
    let depth_cm = planting_depth_cm(profile);
    let needed = ResistanceAtMost { mpa: ROOT_LIMIT_MPA, depth_cm };
    let recent = |from: Day, lasts: i32| (0..=lasts).contains(&day.days_since(from));
    let looks = || story.soil.iter().rev().filter(|look| recent(look.day, LOOK_LASTS_DAYS));
    let told = looks().find_map(|look| told_by(look, depth_cm).map(|told| (look, told)));
    let shallow = depth_cm <= LIFTED_DEPTH_CM;
    let lifted = story.cuts.iter().rev().find(|cut| cut.lifts_tubers && shallow && still_loose(site, cut.day, day));
    match (told, lifted) {
        // Ground lifted after the last look is loose again, though only where the plants stood.
        (told, Some(cut)) if told.as_ref().is_none_or(|(look, _)| look.day < cut.day) => {
            let known = Ground::Lifted(day.days_since(cut.day));
            let mut lifted = Criterion::found(Question::Soil, needed, known, Basis::Reckoned, true, LIFTED_SOURCE)
                .resting_on([cut.entry.clone()]);
            lifted.warns = true;
            lifted
        }
        (Some((look, told)), _) => {
            let read = Criterion::found(Question::Soil, needed, told.known, Basis::Measured, told.soft, told.source)
                .resting_on([look.entry.clone()]);
            // Looked at in some rows only: it counts, and says so.
            if told.soft { read.seen_in_part(part_seen(look.part.as_ref(), rows)) } else { read }
        }
        (None, _) => not_told(needed, looks().next()),
    }
}

/// Whether ground lifted on a day is still loose: until a third rainy season begins, where the rains are known.
fn still_loose(site: &Site, lifted: Day, day: Day) -> bool {
    let days = day.days_since(lifted);
    let lasts = || (season::begun_since(site, lifted, day)).map(|begun| begun <= LIFTED_LASTS_SEASONS);
    days >= 0 && lasts().unwrap_or(days <= LIFTED_LASTS_DAYS)
}

fn not_told(needed: ResistanceAtMost, newest: Option<&SoilLook>) -> Criterion {
    let gap = newest.and_then(|look| gap_of(look, needed.depth_cm));
    Criterion::lacking(Question::Soil, Some(needed), gap, true, LIMIT_SOURCE)
        .resting_on(newest.map(|look| look.entry.clone()))
}

/// Why a look tells nothing of the ground down to planting depth.
fn gap_of(look: &SoilLook, needed_cm: f64) -> Option<Gap> {
    let mpa = look.resistance_mpa?;
    if look.at_field_capacity != Some(true) {
        return Some(Gap::ReadDry);
    }
    let short = look.depth_cm.filter(|depth| *depth < needed_cm);
    match (look.rod, short) {
        (true, Some(depth_cm)) => Some(Gap::RodTooWeak { mpa, depth_cm }),
        (true, None) => Some(Gap::RodTooHard { mpa, depth_cm: look.depth_cm }),
        (false, Some(depth_cm)) => Some(Gap::ReadTooShallow { depth_cm, needed_cm }),
        (false, None) => None,
    }
}

/// What a look tells of the ground down to planting depth.
struct Told {
    soft: bool,
    known: Ground,
    source: RuleSource,
}

fn told_by(look: &SoilLook, planting_cm: f64) -> Option<Told> {
    let by_reading = look.resistance_mpa.filter(|_| look.at_field_capacity == Some(true)).and_then(|mpa| {
        let depth_cm = look.depth_cm;
        if look.rod {
            let soft = rod_tells(mpa, depth_cm, planting_cm)?;
            let known = match depth_cm {
                Some(depth_cm) => Ground::RodStopped { mpa, depth_cm },
                None => Ground::Read { mpa, depth_cm },
            };
            return Some(Told { soft, known, source: ROD_SOURCE });
        }
        let soft = reading_tells(mpa, depth_cm, planting_cm)?;
        Some(Told { soft, known: Ground::Read { mpa, depth_cm }, source: LIMIT_SOURCE })
    });
    by_reading.or_else(|| {
        let tubers = look.tubers?;
        let soft = match tubers {
            Tubers::ThinNecked => false,
            Tubers::Even | Tubers::Full => true,
        };
        Some(Told { soft, known: Ground::Tubers(tubers), source: TUBER_SOURCE })
    })
}

/// A resistance read at planting depth or below, or without depth, tells; a shallower one only when it is too hard.
fn reading_tells(mpa: f64, depth_cm: Option<f64>, planting_cm: f64) -> Option<bool> {
    let soft = mpa <= ROOT_LIMIT_MPA;
    let deep = depth_cm.is_none_or(|depth| depth >= planting_cm);
    (deep || !soft).then_some(soft)
}

/// A rod goes down until the ground is as hard as its push. Pushed with about 2 MPa it proves soft ground as deep as it
/// went. Pushed much harder (body weight) and gone deep it proves nothing; stopped short it proves hard ground, unless
/// the push was weaker than the limit. Without a depth it is taken to have gone down to planting depth.
fn rod_tells(mpa: f64, depth_cm: Option<f64>, planting_cm: f64) -> Option<bool> {
    let deep = depth_cm.is_none_or(|depth| depth >= planting_cm);
    if deep {
        return (mpa <= ROD_PROVES_MPA).then_some(true);
    }
    (mpa >= ROD_STOPS_MPA).then_some(false)
}
