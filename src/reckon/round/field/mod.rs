//! Beds after planting: young plants to water, rings to weed, survivors and nurse plants to count.

mod nurse_work;

use std::collections::BTreeMap;

use super::deadline::UntilFor;
use super::intervals::*;
use super::stop::{LastLook, RoundReason, Stake, Stop, Task};
use super::walk::{Walk, all_of};
use crate::base::{Day, EntryId, Range, SpeciesKey};
use crate::nursery::entry::Weather;
use crate::nursery::entry::types::GroundTask;
use crate::reckon::bed::water::balance::{DRY_DAY_MM, DRY_RUN_DAYS, Waters};
use crate::reckon::bed::water::looks::{FEET_LEAST_DAYS, WATERED_LASTS_DAYS, feet_hold, keeps_alive_days};
use crate::reckon::bed::water::texture::Texture;
use crate::reckon::bed::{season, water};
use crate::reckon::picture::quantity::Wet;
use crate::reckon::picture::question::{Found, Known};
use crate::reckon::picture::{BedPicture, Measure, Question};
use crate::reckon::stock::{CohortStory, SoilLook, SurvivalLook, Watering};

/// What planted beds need.
pub(super) fn field(walk: &Walk<'_>) -> Vec<Stop> {
    let mut stops = Vec::new();
    let waters = Waters::of(&walk.picture.site, walk.day());
    for bed in walk.picture.beds.values() {
        stops.extend(water(walk, bed, &waters));
        stops.extend(rings(walk, bed));
        stops.extend(nurses(walk, bed));
        stops.extend(nurse_work::nurse_work(walk, bed));
        stops.extend(survivors(walk, bed));
    }
    stops
}

/// Plants set out from trays or sown at stake, still living by the books.
fn set_out(bed: &BedPicture, day: Day) -> impl Iterator<Item = &CohortStory> {
    bed.story.cohorts.iter().filter(move |cohort| !cohort.found && cohort.living > 0 && cohort.day <= day)
}

/// Young plants are watered or looked at after a dry week, or where the water left for their roots is short; not while their feet have
/// what they were given.
fn water(walk: &Walk<'_>, bed: &BedPicture, waters: &Waters) -> Option<Stop> {
    let (site, day) = (&walk.picture.site, walk.day());
    let texture = site.fields.get(&bed.field).and_then(|field| field.on(day)?.texture.as_ref());
    let texture = texture.map(|texture| &*texture.0);
    let (cohorts, plants) = thirsty(walk, bed, waters, Texture::of(texture));
    let planted = cohorts.iter().map(|cohort| cohort.day).min()?;
    let asked =
        water::Asked { site, waters, story: &bed.story, texture, rows: None, day, looking: walk.picture.looking };
    let found = water::criterion(asked);
    let left = if let Question::Water(Known::Found(Found { known: Wet::Left(left), .. })) = found.question {
        Some(left)
    } else {
        None
    };
    // What fell before they were planted does not count.
    let dry = waters.dry_run().filter(|dry| dry.days.min(dry.last.days_since(planted)) >= DRY_RUN_DAYS);
    let short = found.blocks && left.is_some();
    let young = all_of(cohorts.iter().map(|cohort| cohort.living));
    let unread = unwetted_since(walk, bed, (planted, young)).filter(|_| !short && dry.is_none());
    if found.met() == Some(true) || !(short || dry.is_some() || unread.is_some()) {
        return None;
    }
    let (dry_days, unread_days) = (dry.map(|dry| dry.days), unread.map(|since| day.days_since(since)));
    let why = RoundReason::YoungDry { plants, dry_days, left, unread_days };
    let since = dry.map_or(day, |dry| dry.last.plus(DRY_RUN_DAYS - dry.days).min(day));
    let since = unread.map_or(since, |unread| unread.plus(DRY_RUN_DAYS).min(day));
    let mut stop = walk
        .bed_stop(bed, Task::WaterBed, why)
        .risking(Stake::Planted, f64::from(plants) * DRY_LOSS, DRY_WITHIN_DAYS)
        .taking(minutes::BED, YOUNG_WATER_SOURCE)
        .working(f64::from(plants) * work::WATER)
        .due_by_interval(since, DRY_WITHIN_DAYS);
    stop.entries = found.entries;
    stop.entries.extend(cohorts.iter().map(|cohort| cohort.entry.clone()));
    Some(stop)
}

/// Outside the rains the day since which nothing is written that wets the feet of young plants: rain of more than a dry day, a finger that
/// found them wet, a watering that keeps them; none where that is not a week ago, and in the rains.
fn unwetted_since(walk: &Walk<'_>, bed: &BedPicture, (planted, young): (Day, u32)) -> Option<Day> {
    let (site, day) = (&walk.picture.site, walk.day());
    let wets = |weather: &Weather| weather.rain_mm.is_some_and(|rain| rain.0 > DRY_DAY_MM);
    let rained = site.weather.range(..=day).rfind(|(_, (_, weather))| wets(weather)).map(|(on, _)| *on);
    let wet = |look: &&SoilLook| look.at_field_capacity == Some(true) && look.wet != Some(false);
    let looked = bed.story.soil.iter().filter(wet).map(|look| look.day).max();
    let kept = |given: &Watering| given.day.plus(keeps_alive_days(given) - WATERED_LASTS_DAYS);
    let watered = all_watered_since(bed.story.watered.iter().map(|given| (kept(given), given.count)), young);
    let known = [rained, looked, watered].into_iter().flatten().filter(|on| *on <= day).fold(planted, Day::max);
    (season::rains_on(site, day).is_none() && day.days_since(known) >= DRY_RUN_DAYS).then_some(known)
}

/// The last day since which so many feet were watered, all or some at a time; none where fewer were.
fn all_watered_since(given: impl Iterator<Item = (Day, Option<u32>)>, of: u32) -> Option<Day> {
    let mut given: Vec<(Day, Option<u32>)> = given.collect();
    given.sort_by_key(|(on, _)| std::cmp::Reverse(*on));
    let left = given.iter().scan(of, |left, (on, count)| {
        *left = left.saturating_sub(count.unwrap_or(*left));
        Some((*on, *left))
    });
    left.filter(|(_, left)| *left == 0).map(|(on, _)| on).next()
}

/// Young plants whose feet do not have what they were given, and how many they are. Those that went out when no rains that keep them were
/// left are young until the next rains.
fn thirsty<'a>(walk: &Walk<'_>, bed: &'a BedPicture, waters: &Waters, texture: Texture) -> (Vec<&'a CohortStory>, u32) {
    let (site, day) = (&walk.picture.site, walk.day());
    let held = || {
        let kept = |given: &&Watering| {
            let ago = day.days_since(given.day);
            ago >= FEET_LEAST_DAYS || ago < keeps_alive_days(given)
        };
        bed.story.watered.iter().filter(|given| feet_hold(given, waters, texture, day)).filter(kept)
    };
    let all_on = held().filter(|given| given.count.is_none()).map(|given| given.day).max();
    let young = |cohort: &&CohortStory| season::is_young(site, cohort.day, day);
    let dry = |cohort: &&CohortStory| all_on.is_none_or(|on| on < cohort.day);
    let cohorts: Vec<&CohortStory> = set_out(bed, day).filter(young).filter(dry).collect();
    let first = cohorts.iter().map(|cohort| cohort.day).min();
    let counted = held().filter(|given| first.is_some_and(|first| first <= given.day)).filter_map(|given| given.count);
    let plants = all_of(cohorts.iter().map(|cohort| cohort.living)).saturating_sub(all_of(counted));
    if plants == 0 { (Vec::new(), 0) } else { (cohorts, plants) }
}

fn rings(walk: &Walk<'_>, bed: &BedPicture) -> Option<Stop> {
    let day = walk.day();
    let young = |cohort: &&CohortStory| (RINGS_FROM_DAYS..=RINGS_UNTIL_DAYS).contains(&day.days_since(cohort.day));
    let cohorts: Vec<&CohortStory> = set_out(bed, day).filter(young).collect();
    let planted = cohorts.iter().map(|cohort| cohort.day).min()?;
    let weeded = bed.story.work.iter().rfind(|work| work.task == GroundTask::Weeded && work.day <= day);
    let since = weeded.map_or(planted, |work| work.day.max(planted));
    let days_since = day.days_since(since);
    if days_since < RINGS_EVERY_DAYS {
        return None;
    }
    let plants = all_of(cohorts.iter().map(|cohort| cohort.living));
    let mut stop = walk
        .bed_stop(bed, Task::Weed, RoundReason::RingWeeding { days_since, plants })
        .risking(Stake::Planted, f64::from(plants) * GRASS_LOSS, RINGS_EVERY_DAYS)
        .taking(minutes::BED, RINGS_SOURCE)
        .working(f64::from(plants) * work::RING)
        .due_by_interval(since.plus(RINGS_EVERY_DAYS), RINGS_EVERY_DAYS);
    stop.last = weeded.map(|work| LastLook { day: work.day, figure: Measure::Work(GroundTask::Weeded) });
    stop.entries = cohorts.iter().map(|cohort| cohort.entry.clone()).collect();
    stop.entries.extend(weeded.map(|work| work.entry.clone()));
    Some(stop)
}

fn nurses(walk: &Walk<'_>, bed: &BedPicture) -> Option<Stop> {
    let day = walk.day();
    let living = || bed.nurses.iter().filter(|nurse| nurse.alive > 0);
    let oldest = living().map(|nurse| nurse.counted_on.unwrap_or(nurse.planted)).min()?;
    let days_since = day.days_since(oldest);
    if days_since < NURSES_EVERY_DAYS {
        return None;
    }
    let alive = all_of(living().map(|nurse| nurse.alive));
    let under = all_of(bed.species.iter().map(|line| line.living.saturating_add(line.open_positions)));
    let mut stop = walk
        .bed_stop(bed, Task::CountNurses, RoundReason::NursesNotCounted { days_since, alive })
        .risking(Stake::Planted, f64::from(under) * NURSE_GAP_LOSS, NURSES_EVERY_DAYS)
        .taking(minutes::BED + f64::from(alive) / minutes::BED_COUNTED_IN_A_MINUTE, NURSES_SOURCE)
        .due_by_interval(oldest.plus(NURSES_EVERY_DAYS), NURSES_EVERY_DAYS);
    stop.last = Some(LastLook { day: oldest, figure: Measure::Plants(Range::exact(f64::from(alive))) });
    stop.expect = Some(Measure::Plants(Range::new(0.0, f64::from(alive), f64::from(alive))));
    stop.entries = living().map(|nurse| nurse.entry.clone()).collect();
    Some(stop)
}

/// Plants of one species set out on one day, from one tray or several.
#[derive(Default)]
struct Planting {
    planted: u32,
    living: u32,
    counted: Vec<Day>,
    entries: Vec<EntryId>,
}

fn survivors(walk: &Walk<'_>, bed: &BedPicture) -> Vec<Stop> {
    let day = walk.day();
    let mut plantings: BTreeMap<(Day, SpeciesKey), Planting> = BTreeMap::new();
    for cohort in set_out(bed, day) {
        let Some(species) = &cohort.species else { continue };
        let planting = plantings.entry((cohort.day, species.clone())).or_default();
        planting.planted = planting.planted.saturating_add(cohort.planted);
        planting.living = planting.living.saturating_add(cohort.living);
        planting.entries.push(cohort.entry.clone());
        let looks = bed.story.survival.iter().filter(|look| look.day <= day && counts(look, cohort));
        planting.counted.extend(looks.map(|look| look.day));
    }
    plantings.into_iter().filter_map(|((on, species), planting)| survival(walk, bed, on, species, planting)).collect()
}

/// Whether a look counted a cohort: by its tray or its day, or the whole species.
fn counts(look: &SurvivalLook, cohort: &CohortStory) -> bool {
    let of_tray = look.tray.is_none() || look.tray == cohort.tray;
    look.species.eq(cohort.species.as_ref().unwrap_or(&look.species))
        && (look.of_all || (of_tray && look.outplanted_on == Some(cohort.day)))
}

fn survival(walk: &Walk<'_>, bed: &BedPicture, on: Day, species: SpeciesKey, planting: Planting) -> Option<Stop> {
    let day = walk.day();
    let at = |months: u32, share: f64| on.plus((f64::from(months) * DAYS_PER_MONTH * share).round() as i32);
    // Where windows touch, the later count leads.
    let open = |months: &&u32| at(**months, SURVIVAL_FROM_SHARE) <= day && day <= at(**months, SURVIVAL_UNTIL_SHARE);
    let months = *SURVIVAL_MONTHS.iter().rfind(open)?;
    if planting.counted.iter().any(|counted| *counted >= at(months, SURVIVAL_COUNTS_FROM_SHARE)) {
        return None;
    }
    let until = at(months, SURVIVAL_UNTIL_SHARE);
    let (planted, living) = (planting.planted, planting.living);
    let why = RoundReason::SurvivalDue { months, species: species.clone(), planted_on: on, planted, living };
    let mut stop = walk
        .bed_stop(bed, Task::CountSurvivors, why)
        .risking(Stake::Planted, f64::from(living) * REFILL_SHARE, until.days_since(day) + 1)
        .taking(minutes::BED + f64::from(living) / minutes::BED_COUNTED_IN_A_MINUTE, SURVIVAL_SOURCE);
    let code = walk.profile(Some(&species)).map_or(species.as_str(), |profile| profile.code.as_str());
    stop.id = format!("{} {code} {on} {months}", stop.id);
    let from = at(months, SURVIVAL_FROM_SHARE);
    stop = stop.due(from, until.days_since(from)).until(Some(until), UntilFor::Window);
    let last = planting.counted.iter().max().copied().unwrap_or(on);
    stop.last = Some(LastLook { day: last, figure: Measure::Plants(Range::exact(f64::from(living))) });
    let least = f64::from(living) * (1.0 - REFILL_SHARE);
    stop.expect = Some(Measure::Plants(Range::new(least.floor(), f64::from(living), f64::from(living))));
    stop.entries = planting.entries;
    Some(stop)
}
