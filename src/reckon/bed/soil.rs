//! Whether the ground is soft enough for roots: down to planting depth where nobody dug, beneath and beside the hole where
//! one is dug.

use crate::base::Day;
use crate::nursery::entry::types::{GroundTask, SoilWhere, Tubers};
use crate::nursery::species::{Profile, Stem};
use crate::reckon::bed::ground_work;
use crate::reckon::bed::positions::part_seen;
use crate::reckon::bed::season;
use crate::reckon::bed::water::RAIN_NEEDED_MM;
use crate::reckon::picture::criterion::Soaking;
use crate::reckon::picture::quantity::{Ground, Hole, ResistanceAtMost};
use crate::reckon::picture::{Basis, Criterion, Gap, Question, RuleSource};
use crate::reckon::site::Site;
use crate::reckon::stock::{BedStory, GroundLook, SoilLook, WorkDone};
use crate::science::soil::{DAYS_AFTER_SOAKING, ROOT_LIMIT_MPA};

/// A hole is at least this much deeper than the container, cm. Ours.
pub(crate) const HOLE_BELOW_CONTAINER_CM: f64 = 5.0;
/// Planting depth where the species names no container depth, cm. Ours.
pub(crate) const USUAL_PLANTING_DEPTH_CM: f64 = 30.0;
/// Depth down to which the roots of a tree, or of anything else with a woody stem, need soft ground around their hole in
/// their first years, cm. Ours: the low end of 50 to 60 cm, common practice for holes of trees.
pub(crate) const TREE_ROOTS_CM: f64 = 50.0;
/// Around a dug hole roots must have at least so much depth, hole and soft ground beneath it together, cm: under it a tree
/// stands in a pot. Ours: four fifths of [`TREE_ROOTS_CM`].
pub(crate) const LEAST_DEPTH_CM: f64 = 40.0;
/// Beside a dug hole at least so much must be soft, from the top, cm. Ours: a hand's breadth.
pub(crate) const LEAST_BESIDE_CM: f64 = 10.0;
/// Ground that resists so much holds back around a dug hole too, MPa: twice the limit, at which roots hardly go on. Ours.
pub(crate) const STOPS_ROOTS_MPA: f64 = 2.0 * ROOT_LIMIT_MPA;
/// Rain of so much on the day of a look and the day before soaks the ground, mm: what is soft then may be hard when the water has
/// drained. Ours, the rain that counts for planting.
pub(crate) const SOAKED_BY_MM: f64 = RAIN_NEEDED_MM;
/// The rod that is spoken of where nobody wrote which, mm: a smooth bar of 8 mm is found everywhere. Ours.
pub(crate) const USUAL_ROD_MM: f64 = 8.0;
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

/// The depth down to which the ground around a dug hole must be soft for a species, cm: its roots leave the hole.
pub(crate) fn root_depth_cm(profile: Option<&Profile>) -> f64 {
    let soft = profile.and_then(|profile| profile.stem.as_ref()).is_some_and(|stem| stem.value == Stem::Soft);
    let planting_cm = planting_depth_cm(profile);
    if soft { planting_cm } else { planting_cm.max(TREE_ROOTS_CM) }
}

/// Whether the ground is soft enough. It must be known; the newest look that tells something leads. Hard ground holds
/// back where nobody dug or loosened it; around a dug hole roots go on slowly, which asks for care, as long as they have
/// depth enough.
pub fn criterion(story: &BedStory, site: &Site, profile: Option<&Profile>, rows: Option<u32>, day: Day) -> Criterion {
    let planting_cm = planting_depth_cm(profile);
    let recent = |from: Day, lasts: i32| (0..=lasts).contains(&day.days_since(from));
    let looks = || story.soil.iter().rev().filter(|look| recent(look.day, LOOK_LASTS_DAYS) && look.tells_of_hardness());
    // What is hard in soaked ground is hard; what is soft then is looked at again.
    let tells = |look: &SoilLook, told: &Told| !told.soft || soaking(look, site).is_none();
    let told = looks().find_map(|look| {
        let told = told_by(look, hole_of(look, story, profile), profile).filter(|told| tells(look, told))?;
        Some((look, told))
    });
    let lifted = story.cuts.iter().rev().find(|cut| cut.lifts_tubers && still_loose(site, cut.day, day));
    let dug = ground_work::lasts(story, GroundTask::Holes, day);
    let Some((look, told)) = told else {
        return match lifted.filter(|_| planting_cm <= LIFTED_DEPTH_CM) {
            Some(cut) => loosened(cut, needed(planting_cm, None), day),
            None => {
                let only_soaked = looks().all(|look| soaking(look, site).is_some());
                not_told((looks().next(), only_soaked), site, profile, dug)
            }
        };
    };
    // Ground lifted after the last look is loose again, though only where the plants stood.
    let after = lifted.filter(|cut| look.day < cut.day);
    if let Some(cut) = after.filter(|_| planting_cm <= LIFTED_DEPTH_CM) {
        return loosened(cut, needed(planting_cm, None), day);
    }
    let needed = needed(depth_needed_cm(look, profile), look.rod_mm);
    let mut read = Criterion::found(Question::Soil, needed, told.known, Basis::Measured, told.soft, told.source)
        .resting_on([look.entry.clone()]);
    // Looked at in some rows only: it counts, and says so.
    if told.soft {
        let by_hole = rests_on_a_hole(told.known, depth_needed_cm(look, profile));
        let mut read = read.seen_in_part(part_seen(look.part.as_ref(), rows));
        read.warns = read.warns || by_hole;
        return read;
    }
    if let Some(hole) = dug.filter(|_| !at_a_hole(look)) {
        read.entries.push(hole.entry.clone());
    }
    let opened = dug.is_some() || at_a_hole(look) || after.is_some();
    if opened && (after.is_some() || !is_a_pot(told.known, profile)) { read.advising() } else { read }
}

/// Whether ground is soft down to a depth only with a hole whose depth nobody wrote, taken at its best as deep as the ball needs.
pub(crate) fn rests_on_a_hole(known: Ground, needed_cm: f64) -> bool {
    match known {
        Ground::Read { depth_cm: Some(depth_cm), hole: Hole::Taken(_), .. }
        | Ground::AtHole { depth_cm, hole: Hole::Taken(_), .. } => depth_cm < needed_cm,
        Ground::Read { .. } | Ground::AtHole { .. } | Ground::RodStopped { .. } => false,
        Ground::Lifted(_) | Ground::Tubers(_) => false,
    }
}

/// Whether roots could hardly leave a dug hole: too little depth in all, nothing soft beside it, or ground that stops them.
fn is_a_pot(known: Ground, profile: Option<&Profile>) -> bool {
    let least_cm = LEAST_DEPTH_CM.min(root_depth_cm(profile));
    match known {
        Ground::Read { mpa, .. } => mpa >= STOPS_ROOTS_MPA,
        Ground::RodStopped { mpa, .. } if mpa >= STOPS_ROOTS_MPA => true,
        Ground::RodStopped { .. } => false,
        Ground::AtHole { mpa, .. } if mpa >= STOPS_ROOTS_MPA => true,
        Ground::AtHole { depth_cm, hole, .. } => match hole.depth_cm() {
            Some(hole_cm) => hole_cm + depth_cm < least_cm,
            None => depth_cm < LEAST_BESIDE_CM,
        },
        Ground::Lifted(_) | Ground::Tubers(_) => false,
    }
}

/// What had soaked the ground when a look was taken, so that it reads soft: a day or less since a soaking, or the rain of that day and
/// the day before; none where it had drained, or nobody knows.
fn soaking(look: &SoilLook, site: &Site) -> Option<Soaking> {
    if look.soaked_days.is_some_and(|days| days < f64::from(DAYS_AFTER_SOAKING)) {
        return Some(Soaking { on: look.day, rain_mm: None });
    }
    let rain = |on: Day| site.weather.get(&on).and_then(|(_, weather)| weather.rain_mm).map_or(0.0, |rain| rain.0);
    let rain_mm = rain(look.day) + rain(look.day.plus(-1));
    (rain_mm >= SOAKED_BY_MM).then_some(Soaking { on: look.day, rain_mm: Some(rain_mm) })
}

/// The depth down to which a look must find soft ground, cm, by where it was taken.
fn depth_needed_cm(look: &SoilLook, profile: Option<&Profile>) -> f64 {
    if at_a_hole(look) { root_depth_cm(profile) } else { planting_depth_cm(profile) }
}

/// Whether a look tells of the ground around a dug hole.
fn at_a_hole(look: &SoilLook) -> bool {
    match look.place {
        Some(SoilWhere::Beneath | SoilWhere::Beside) => true,
        Some(SoilWhere::Undug) | None => false,
    }
}

fn needed(depth_cm: f64, rod_mm: Option<f64>) -> ResistanceAtMost {
    ResistanceAtMost { mpa: ROOT_LIMIT_MPA, depth_cm, rod_mm: rod_mm.unwrap_or(USUAL_ROD_MM) }
}

fn loosened(cut: &GroundLook, needed: ResistanceAtMost, day: Day) -> Criterion {
    let known = Ground::Lifted(day.days_since(cut.day));
    let mut lifted = Criterion::found(Question::Soil, needed, known, Basis::Reckoned, true, LIFTED_SOURCE)
        .resting_on([cut.entry.clone()]);
    lifted.warns = true;
    lifted
}

/// Whether ground lifted on a day is still loose: until a third rainy season begins, where the rains are known.
fn still_loose(site: &Site, lifted: Day, day: Day) -> bool {
    let days = day.days_since(lifted);
    let lasts = || (season::begun_since(site, lifted, day)).map(|begun| begun <= LIFTED_LASTS_SEASONS);
    days >= 0 && lasts().unwrap_or(days <= LIFTED_LASTS_DAYS)
}

fn not_told(
    (newest, only_soaked): (Option<&SoilLook>, bool),
    site: &Site,
    profile: Option<&Profile>,
    dug: Option<&WorkDone>,
) -> Criterion {
    let around = dug.is_some() || newest.is_some_and(at_a_hole);
    let depth_cm = if around { root_depth_cm(profile) } else { planting_depth_cm(profile) };
    let needed = needed(depth_cm, newest.and_then(|look| look.rod_mm));
    let gap = match newest {
        Some(look) => {
            let soaked = soaking(look, site).filter(|_| look.resistance_mpa.is_some());
            soaked.map(Gap::ReadSoaked).or_else(|| gap_of(look, depth_needed_cm(look, profile)))
        }
        None => dug.map(|_| Gap::AroundHole { depth_cm, rod_mm: needed.rod_mm }),
    };
    // Soft while soaked is soft or hard when it has drained, and around a dug hole either goes, with care; but a look before that held
    // the bed back is not answered by it.
    let soaked = around && only_soaked && matches!(gap, Some(Gap::ReadSoaked(_)));
    let mut unknown = Criterion::lacking(Question::Soil, Some(needed), gap, !soaked, LIMIT_SOURCE)
        .resting_on(newest.map(|look| look.entry.clone()));
    unknown.warns = soaked;
    unknown
}

/// Why a look tells nothing of the ground down to a depth.
fn gap_of(look: &SoilLook, needed_cm: f64) -> Option<Gap> {
    let mpa = look.resistance_mpa?;
    if look.at_field_capacity != Some(true) {
        return Some(Gap::ReadDry);
    }
    let short = look.depth_cm.filter(|depth| *depth < needed_cm);
    match (look.rod_mm, short) {
        // From that push on a rod that stopped short tells hard ground; one that went so deep was pushed too hard.
        (Some(rod_mm), Some(depth_cm)) if mpa < ROD_STOPS_MPA => Some(Gap::RodTooWeak { mpa, depth_cm, rod_mm }),
        (Some(rod_mm), Some(_) | None) => Some(Gap::RodTooHard { mpa, depth_cm: look.depth_cm, rod_mm }),
        (None, Some(depth_cm)) => Some(Gap::ReadTooShallow { depth_cm, needed_cm }),
        (None, None) => None,
    }
}

/// What a look tells of the ground down to planting depth.
struct Told {
    soft: bool,
    known: Ground,
    source: RuleSource,
}

/// The hole of a look: the depth written last of holes dug by then, else as deep as the ball of the species needs, where that is known.
fn hole_of(look: &SoilLook, story: &BedStory, profile: Option<&Profile>) -> Hole {
    if look.place != Some(SoilWhere::Beneath) {
        return Hole::Beside;
    }
    let dug = story.work.iter().rev().filter(|work| work.task == GroundTask::Holes);
    let written = dug.filter(|work| work.day <= look.day).find_map(|work| work.depth_cm);
    let ball = profile.and_then(|profile| profile.container_depth_cm.as_ref());
    let taken = ball.map(|depth| Hole::Taken(depth.value + HOLE_BELOW_CONTAINER_CM));
    written.map(Hole::Written).or(taken).unwrap_or(Hole::Unknown)
}

fn told_by(look: &SoilLook, hole: Hole, profile: Option<&Profile>) -> Option<Told> {
    // A rod in the bottom of a hole begins where the hole ends.
    let needed_cm = depth_needed_cm(look, profile) - hole.depth_cm().unwrap_or(0.0);

    let by_reading = look.resistance_mpa.filter(|_| look.at_field_capacity == Some(true)).and_then(|mpa| {
        let depth_cm = look.depth_cm;
        if let Some(rod_mm) = look.rod_mm {
            let soft = rod_tells(mpa, depth_cm, needed_cm)?;
            let known = match depth_cm {
                Some(depth_cm) if at_a_hole(look) => Ground::AtHole { mpa, depth_cm, hole, rod_mm },
                Some(depth_cm) => Ground::RodStopped { mpa, depth_cm, rod_mm },
                None => Ground::Read { mpa, depth_cm, hole },
            };
            return Some(Told { soft, known, source: ROD_SOURCE });
        }
        let soft = reading_tells(mpa, depth_cm, needed_cm)?;
        Some(Told { soft, known: Ground::Read { mpa, depth_cm, hole }, source: LIMIT_SOURCE })
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
