//! Beds before planting: ground work, light and soil where a tray is coming.

use super::deadline::UntilFor;
use super::intervals::*;
use super::stop::{ForTray, LastLook, RoundReason, Stake, Stop, Task};
use super::walk::{Walk, all_of, asked, days_until};
use crate::base::Day;
use crate::nursery::entry::types::GroundTask;
use crate::reckon::bed::ground_work::{
    CLEARED_LASTS_DAYS, FENCED_LASTS_DAYS, HOLES_LAST_DAYS, MULCHED_LASTS_DAYS, WEEDED_LASTS_DAYS,
};
use crate::reckon::bed::light_now::READING_LASTS_DAYS;
use crate::reckon::bed::season;
use crate::reckon::picture::{
    Basis, BedPicture, BedSpecies, Criterion, Gap, Measure, Question, Rule, RuleSource, Source, TrayPicture,
};

/// A tray a bed is made ready for, the day it could be planted, and what it and the others bring.
struct Coming {
    tray: ForTray,
    plant_on: Day,
    /// The first day it could have been planted: old enough, and the rains had begun.
    first_on: Day,
    plants: f64,
    /// Goes to this bed today, stays, or goes elsewhere: in this order a bed is made ready for them.
    turn: u8,
}

/// What beds need before the trays that come for them.
pub(super) fn ground(walk: &Walk<'_>) -> Vec<Stop> {
    let mut stops = Vec::new();
    for bed in walk.picture.beds.values() {
        if bed.story.held.longest_on(walk.day()).is_some() {
            continue;
        }
        // Wet ground is smeared by hoe and boot, walls of pits fall in: nobody works there until it has drained.
        if bed.species.iter().any(is_full_of_water) {
            continue;
        }
        stops.extend(work(walk, bed));
        stops.extend(light(walk, bed));
        stops.extend(soil(walk, bed));
    }
    stops
}

fn is_full_of_water(line: &BedSpecies) -> bool {
    let drowned = Source::Rule(RuleSource::Drowned);
    asked(&line.criteria, Rule::Water).is_some_and(|water| water.met() == Some(false) && water.source == drowned)
}

/// The first tray that comes for a species within so many days, planted in the rains, with the plants of all that come.
fn coming(walk: &Walk<'_>, bed: &BedPicture, line: &BedSpecies, within_days: i32) -> Option<Coming> {
    let trays = walk.living_trays().filter(|tray| tray.species.as_ref() == Some(&line.species));
    let mut all: Vec<Coming> = trays
        .filter_map(|tray| one_coming(walk, bed, line, tray))
        .filter(|coming| coming.plant_on.days_since(walk.day()) <= within_days)
        .collect();
    all.sort_by(first_then_larger);
    let brought: f64 = all.iter().map(|coming| coming.plants).sum();
    let others = all.len().saturating_sub(1);
    let mut first = all.into_iter().next()?;
    first.plants = brought.min(f64::from(line.open_positions));
    first.tray.others = u32::try_from(others).unwrap_or(u32::MAX);
    Some(first)
}

/// The plants that come for a species and that a cut for light may let go out, the day on which the first of them could, and the last safe
/// day of those rains.
pub(super) fn kept_out(walk: &Walk<'_>, bed: &BedPicture, line: &BedSpecies) -> Option<(f64, Day, Option<Day>)> {
    let coming = coming(walk, bed, line, LOOK_AHEAD_DAYS)?;
    Some((coming.plants * CUT_OPENS * chance(bed), coming.plant_on, last_safe(walk, &coming)))
}

fn first_then_larger(a: &Coming, b: &Coming) -> std::cmp::Ordering {
    (a.plant_on, a.turn).cmp(&(b.plant_on, b.turn)).then_with(|| b.plants.total_cmp(&a.plants))
}

fn one_coming(walk: &Walk<'_>, bed: &BedPicture, line: &BedSpecies, tray: &TrayPicture) -> Option<Coming> {
    let ready_from = walk.comes_ready(tray)?;
    let site = &walk.picture.site;
    let rains = season::criterion(site, ready_from);
    let plant_on = if rains.met() == Some(false) { rains.expected? } else { ready_from };
    let began = season::rains_on(site, plant_on).map(|(_, rains)| rains.from);
    let old_enough = walk.old_enough_on(tray).unwrap_or(plant_on).max(walk.began_on(tray)).min(plant_on);
    let first_on = began.map_or(old_enough, |from| from.max(old_enough));
    // What goes out elsewhere today does not wait for this bed.
    let to = || walk.going.get(&tray.code).into_iter().flatten();
    let here = all_of(to().filter(|to| to.bed == bed.name).map(|to| to.after_others));
    let elsewhere = all_of(to().filter(|to| to.bed != bed.name).map(|to| to.after_others));
    let left = tray.standing.saturating_sub(elsewhere);
    let turn = if here > 0 { 0 } else { 1 + u8::from(elsewhere > 0) };
    let goes_today = here > 0;
    let known =
        |criterion: &Criterion| !criterion.blocks || (criterion.met().is_some() && criterion.expected.is_some());
    let asked_now = |criterion: &&Criterion| criterion.rule() != Rule::Load;
    // What is old enough must have been measured.
    let measured = tray.plantable_basis == Basis::Measured;
    let is_sure = tray.ready || (measured && tray.criteria.iter().filter(asked_now).all(known));
    let for_tray =
        ForTray { tray: tray.code.clone(), species: line.species.clone(), ready_from, is_sure, goes_today, others: 0 };
    let plants = f64::from(left.min(line.open_positions));
    (left > 0).then_some(Coming { tray: for_tray, plant_on, first_on, plants, turn })
}

/// Lines of a plan with room whose light does not speak against planting now.
fn plantable_lines(bed: &BedPicture) -> impl Iterator<Item = &BedSpecies> {
    // Light that was reckoned and not read is asked for.
    let dark = |line: &&BedSpecies| {
        asked(&line.criteria, Rule::LightNow)
            .is_some_and(|asked| asked.met() == Some(false) && asked.basis() != Basis::Reckoned)
    };
    bed.species.iter().filter(|line| line.open_positions > 0).filter(move |line| !dark(line))
}

/// Whether the light is known to fit a line, or the species asks nothing of it: no hole is dug on unknown light.
fn lit(line: &&BedSpecies) -> bool {
    let read = |asked: &Criterion| asked.met() == Some(true) && asked.basis() != Basis::Reckoned;
    asked(&line.criteria, Rule::LightNow).is_none_or(|asked| read(asked) || asked.needed().is_none())
}

fn first_coming(walk: &Walk<'_>, bed: &BedPicture, within_days: i32) -> Option<Coming> {
    first_of(plantable_lines(bed).filter(lit).filter_map(|line| coming(walk, bed, line, within_days)).collect())
}

/// The first of several lines of a bed, with the plants and the trays of all of them.
fn first_of(mut all: Vec<Coming>) -> Option<Coming> {
    all.sort_by(first_then_larger);
    let plants = all.iter().map(|coming| coming.plants).sum();
    let others = all_of(all.iter().skip(1).map(|coming| coming.tray.others.saturating_add(1)));
    let mut first = all.into_iter().next()?;
    first.plants = plants;
    first.tray.others = first.tray.others.saturating_add(others);
    Some(first)
}

/// The kinds of work that come before planting: the question, the task, and how many days ahead it is due.
const WORK: [(Rule, Task, GroundTask, i32); 4] = [
    (Rule::Cleared, Task::Clear, GroundTask::Cleared, GROUND_AHEAD_DAYS),
    (Rule::Holes, Task::Holes, GroundTask::Holes, GROUND_AHEAD_DAYS),
    (Rule::Weeded, Task::Weed, GroundTask::Weeded, WEED_AHEAD_DAYS),
    (Rule::Mulched, Task::Mulch, GroundTask::Mulched, WEED_AHEAD_DAYS),
];

fn work(walk: &Walk<'_>, bed: &BedPicture) -> Vec<Stop> {
    let mut stops = Vec::new();
    for (rule, task, work, ahead_days) in WORK {
        let Some(asked) = unmet(bed, rule) else { continue };
        let Some(coming) = first_coming(walk, bed, ahead_days) else { continue };
        let blocks = asked.blocks;
        let within = days_until(walk.day(), last_safe(walk, &coming));
        // Mulch and the like only advise: without them few are lost.
        let plants = if blocks { coming.plants } else { coming.plants * GRASS_LOSS };
        let why =
            RoundReason::WorkMissing { work, done_on: done_on(asked), eaten_on: None, tray: Some(coming.tray.clone()) };
        let lapsed = done_on(asked).map(|done| done.plus(lasts_days(work) + 1));
        let due = coming.first_on.plus(-ahead_days);
        let mut stop = walk
            .bed_stop(bed, task, why)
            .risking(Stake::Planting, plants, within)
            .taking(look_minutes(walk, bed), GROUND_SOURCE)
            .working(work_minutes(work, bed, coming.plants))
            .due(lapsed.map_or(due, |lapsed| lapsed.max(due)).min(walk.day()), ahead_days);
        stop = until_rains(walk, stop, &coming);
        stop.last = done_on(asked).map(|day| LastLook { day, figure: Measure::Work(work) });
        stop.entries = asked.entries.clone();
        stops.push(stop);
    }
    stops.extend(fence(walk, bed));
    stops
}

/// A bed waits for the last safe day of the rains of its tray; where no rains are described, for the tray.
fn until_rains(walk: &Walk<'_>, stop: Stop, coming: &Coming) -> Stop {
    match last_safe(walk, coming) {
        Some(last) => stop.until(Some(last), UntilFor::Rains),
        None => stop.until(Some(coming.plant_on), UntilFor::Waits),
    }
}

/// Minutes of ground work: by the square metre, the place to plant, or the metre.
fn work_minutes(kind: GroundTask, bed: &BedPicture, plants: f64) -> f64 {
    match kind {
        GroundTask::Cleared => bed.length_m * bed.width_m * work::CLEAR_M2,
        GroundTask::Holes => plants * work::HOLE,
        GroundTask::Weeded => plants * work::RING,
        GroundTask::Mulched => plants * work::MULCH,
        GroundTask::Fenced => 2.0 * (bed.length_m + bed.width_m) * work::FENCE_M,
    }
}

/// Days for which ground work is good.
fn lasts_days(kind: GroundTask) -> i32 {
    match kind {
        GroundTask::Cleared => CLEARED_LASTS_DAYS,
        GroundTask::Holes => HOLES_LAST_DAYS,
        GroundTask::Weeded => WEEDED_LASTS_DAYS,
        GroundTask::Mulched => MULCHED_LASTS_DAYS,
        GroundTask::Fenced => FENCED_LASTS_DAYS,
    }
}

/// Whether plants go out to a bed today.
fn takes_today(walk: &Walk<'_>, bed: &BedPicture) -> bool {
    walk.going.values().flatten().any(|to| to.bed == bed.name && to.after_others > 0)
}

/// Minutes of looking at a bed: a glance where plants go to it anyway.
fn look_minutes(walk: &Walk<'_>, bed: &BedPicture) -> f64 {
    if takes_today(walk, bed) { minutes::LEFT_OVER } else { minutes::BED }
}

/// A fence is asked about of a bed that takes plants today, and else only in a field where a bed is or was fenced, and where young plants
/// live or are coming.
fn fence(walk: &Walk<'_>, bed: &BedPicture) -> Option<Stop> {
    let fences = |bed: &BedPicture| bed.story.work.iter().any(|work| work.task == GroundTask::Fenced);
    let takes_today = takes_today(walk, bed);
    let fences_there = walk.picture.beds.values().any(|other| other.field == bed.field && fences(other));
    let asked = unmet(bed, Rule::Fenced)?;
    let (eaten_on, eaten_beside_on) = match &asked.question {
        Question::Fenced(fence) => {
            fence.found().map_or((None, None), |found| (found.needed.eaten_on, found.needed.eaten_beside_on))
        }
        _ => (None, None),
    };
    // What broke into another bed of the field is said with the verdict; the fence of this one stands.
    let stands = || done_on(asked).is_some_and(|on| walk.day().days_since(on) <= lasts_days(GroundTask::Fenced));
    if eaten_beside_on.is_some() && stands() {
        return None;
    }
    if !takes_today && !fences_there && eaten_on.is_none() {
        return None;
    }
    let young = bed.story.cohorts.iter().filter(|cohort| walk.day().days_since(cohort.day) <= FENCE_UNTIL_DAYS);
    let young: Vec<_> = young.filter(|cohort| cohort.living > 0).collect();
    let living = all_of(young.iter().map(|cohort| cohort.living));
    let coming = first_coming(walk, bed, GROUND_AHEAD_DAYS);
    if living == 0 && coming.is_none() && eaten_on.is_none() {
        return None;
    }
    let plants = f64::from(living) + coming.as_ref().map_or(0.0, |coming| coming.plants);
    let work = GroundTask::Fenced;
    let tray = coming.as_ref().map(|coming| coming.tray.clone());
    let why = RoundReason::WorkMissing { work, done_on: done_on(asked), eaten_on, tray };
    let within = days_until(walk.day(), coming.as_ref().and_then(|coming| last_safe(walk, coming)));
    let stop = walk
        .bed_stop(bed, Task::Fence, why)
        .risking(Stake::Planted, plants * UNSEEN_LOSS, within)
        .taking(look_minutes(walk, bed), GROUND_SOURCE)
        .working(work_minutes(work, bed, plants));
    // Plants that stand there wait since the fence fell, or since they were planted.
    let fell = done_on(asked).map(|done| done.plus(lasts_days(work)));
    let stood = young.iter().map(|cohort| cohort.day).min().map(|day| fell.map_or(day, |fell| fell.max(day)));
    let mut stop = match (stood, &coming) {
        _ if eaten_on.is_some() => stop.until(Some(walk.day()), UntilFor::Today),
        // Where nobody ever fenced, it is asked with the plants that go in, and was never late.
        (_, Some(coming)) if !fences_there => until_rains(walk, stop.due(walk.day(), GROUND_AHEAD_DAYS), coming),
        (Some(day), _) => stop.due(day, GROUND_AHEAD_DAYS).until(Some(day), UntilFor::Planted),
        (None, Some(coming)) => {
            let due = coming.first_on.plus(-GROUND_AHEAD_DAYS).min(walk.day());
            until_rains(walk, stop.due(due, GROUND_AHEAD_DAYS), coming)
        }
        (None, None) => stop,
    };
    stop.last = done_on(asked).map(|day| LastLook { day, figure: Measure::Work(work) });
    stop.entries = asked.entries.clone();
    Some(stop)
}

/// Ground work is the same question for every species of a bed.
fn unmet(bed: &BedPicture, rule: Rule) -> Option<&Criterion> {
    asked(&bed.species.first()?.criteria, rule).filter(|asked| asked.met() == Some(false))
}

fn done_on(asked: &Criterion) -> Option<Day> {
    if let Some(Measure::On(day)) = asked.known() { Some(day) } else { None }
}

/// The last safe day of the rains in which a tray could be planted.
fn last_safe(walk: &Walk<'_>, coming: &Coming) -> Option<Day> {
    season::rains_on(&walk.picture.site, coming.plant_on).map(|(_, rains)| rains.last_safe)
}

fn light(walk: &Walk<'_>, bed: &BedPicture) -> Option<Stop> {
    if bed.light_now.is_some() {
        return None;
    }
    let coming = first_of(plantable_lines(bed).filter_map(|line| coming(walk, bed, line, LOOK_AHEAD_DAYS)).collect())?;
    let last = bed.story.light.iter().rfind(|look| look.day <= walk.day());
    let why = RoundReason::LightNotRead { last_read: last.map(|look| look.day), tray: coming.tray.clone() };
    let until = last_safe(walk, &coming);
    let aged = last.map(|look| look.day.plus(READING_LASTS_DAYS));
    let due = coming.first_on.plus(-LOOK_AHEAD_DAYS);
    let mut stop = walk
        .bed_stop(bed, Task::ReadLight, why)
        .risking(Stake::Planting, coming.plants * LOOK_OPENS * chance(bed), days_until(walk.day(), until))
        .taking(minutes::LIGHT, LIGHT_SOURCE)
        .due(aged.map_or(due, |aged| aged.max(due)).min(walk.day()), READING_LASTS_DAYS);
    stop = until_rains(walk, stop, &coming);
    stop.last = last.map(|look| LastLook { day: look.day, figure: Measure::Light(look.share) });
    let line = bed.species.iter().find(|line| line.species == coming.tray.species);
    let band = line.and_then(|line| asked(&line.criteria, Rule::LightNow));
    stop.expect = band.and_then(|asked| asked.needed());
    stop.entries = last.map(|look| look.entry.clone()).into_iter().collect();
    Some(stop)
}

fn soil(walk: &Walk<'_>, bed: &BedPicture) -> Option<Stop> {
    let coming = plantable_lines(bed)
        .filter(|line| asked(&line.criteria, Rule::Soil).is_some_and(|asked| asked.met().is_none()))
        .filter_map(|line| coming(walk, bed, line, LOOK_AHEAD_DAYS).map(|coming| (line, coming)))
        .min_by_key(|(_, coming)| coming.plant_on);
    let (line, coming) = coming?;
    // Dry ground says nothing: the rod waits for rain.
    if asked(&line.criteria, Rule::Water).is_some_and(|asked| asked.met() == Some(false)) {
        return None;
    }
    let soil = asked(&line.criteria, Rule::Soil)?;
    let why = RoundReason::SoilNotKnown { read_dry: soil.gap() == Some(&Gap::ReadDry), tray: coming.tray.clone() };
    let until = last_safe(walk, &coming);
    let mut stop = walk
        .bed_stop(bed, Task::CheckSoil, why)
        .risking(Stake::Planting, coming.plants * LOOK_OPENS * chance(bed), days_until(walk.day(), until))
        .taking(minutes::SOIL, SOIL_SOURCE)
        .due(coming.first_on.plus(-LOOK_AHEAD_DAYS).min(walk.day()), LOOK_AHEAD_DAYS);
    stop = until_rains(walk, stop, &coming);
    stop.expect = soil.needed();
    stop.last =
        bed.story.soil.iter().rfind(|look| look.day <= walk.day() && look.tells_of_hardness()).and_then(|look| {
            let mpa = look.resistance_mpa?;
            let figure = match look.rod_mm.zip(look.depth_cm) {
                Some((rod_mm, depth_cm)) => Measure::RodStopped { mpa, depth_cm, rod_mm },
                None => Measure::Resistance { mpa, depth_cm: look.depth_cm },
            };
            Some(LastLook { day: look.day, figure })
        });
    stop.entries = soil.entries.clone();
    Some(stop)
}

/// A look opens a bed only if what else is missing can be done: the more questions block, the less it is worth. Ours.
fn chance(bed: &BedPicture) -> f64 {
    let Some(line) = bed.species.first() else { return 0.0 };
    let blocking = line.criteria.iter().filter(|asked| asked.blocks).count();
    1.0 / blocking.max(1) as f64
}
