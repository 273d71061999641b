//! Size and roots: potting on, culling, setting apart, samples and plugs.

use super::counts::sick;
use super::deadline::UntilFor;
use super::intervals::*;
use super::stop::{LastLook, RoundReason, SampleAsked, Stake, Stop, Task};
use super::walk::{Walk, asked};
use crate::base::Day;
use crate::nursery::entry::types::Roots;
use crate::nursery::species::Stem;
use crate::reckon::bed::season;
use crate::reckon::growth::{LankyComes, tray_growth};
use crate::reckon::picture::{Basis, Measure, Rule, TrayPicture};
use crate::reckon::stock::SampleLook;
use crate::reckon::tray::grafted;
use crate::reckon::tray::size::{LOAD_PLANTS, last_sample};
use crate::reckon::tray::time::{self, Holding};

/// What is due for the size and the roots of trays that grow on and do not go out today.
pub(super) fn size_and_roots(walk: &Walk<'_>) -> Vec<Stop> {
    let mut stops = Vec::new();
    for tray in walk.living_trays().filter(|tray| walk.grows_on(tray) && !walk.goes_out(tray)) {
        let held = walk.is_held(tray) || sick(walk, tray).is_some();
        if let Some(late) = overdue(walk, tray) {
            // What is past its container is not measured any more.
            stops.push(late);
            continue;
        }
        if let Some(look) = never_looked_into(walk, tray).filter(|_| !held) {
            stops.push(look);
            continue;
        }
        stops.extend(bag_ends(walk, tray));
        let graded = lanky(walk, tray).or_else(|| rest_of_sample(walk, tray)).or_else(|| lanky_soon(walk, tray));
        let measures = graded.is_none();
        stops.extend(graded);
        if !held {
            stops.extend(sample(walk, tray).filter(|_| measures));
            stops.extend(plug(walk, tray));
        }
    }
    stops
}

fn holding(walk: &Walk<'_>, tray: &TrayPicture) -> Option<Holding> {
    let profile = walk.profile(tray.species.as_ref());
    let age = time::age(&tray.story, walk.day());
    time::holding(&tray.story, profile, &walk.picture.site, &age, walk.day())
}

/// Days to the species' least days; below 0 when past.
fn days_to_least(walk: &Walk<'_>, tray: &TrayPicture) -> Option<i32> {
    let least = time::day_span(walk.profile(tray.species.as_ref()))?.least;
    Some(least - tray.age_days?)
}

/// The first day a tray could be planted, and what it waits for: its age, or the rains. None where its age is not known
/// and it could be planted today.
fn planting_from(walk: &Walk<'_>, tray: &TrayPicture) -> Option<(Day, UntilFor)> {
    let day = walk.day();
    let old_enough = walk.old_enough_on(tray).map(|on| (on.max(walk.began_on(tray)), UntilFor::Ready));
    let could = old_enough.map_or(day, |(on, _)| on.max(day));
    let rains = season::safe_rains_from(&walk.picture.site, could).filter(|rains| rains.from > could);
    rains.map(|rains| (rains.from, UntilFor::RainsBegin)).or(old_enough)
}

fn overdue(walk: &Walk<'_>, tray: &TrayPicture) -> Option<Stop> {
    let late = asked(&tray.criteria, Rule::DaysInContainer).filter(|asked| asked.met() == Some(false))?;
    let holding = holding(walk, tray);
    // By the clock alone nothing is potted on: a plug is seen first.
    let plug = Some(time::last_plug(&tray.story)?);
    // A ball that falls apart is not moved: its roots are looked at, and one is lifted again.
    if plug.as_ref().is_some_and(|(_, roots, _)| *roots == Roots::Crumbles) {
        return None;
    }
    let why = RoundReason::OverdueInContainer {
        days: holding.as_ref().map(|holding| walk.day().days_since(holding.since)),
        limit_days: holding.as_ref().map(|holding| holding.limit_days),
        roots: plug.as_ref().map(|(_, roots, _)| *roots),
    };
    let circling = plug.as_ref().is_some_and(|(_, roots, _)| *roots == Roots::Circling);
    let full = holding.as_ref().is_some_and(|holding| walk.day() > holding.since.plus(holding.limit_days));
    // Potting on does not mend roots that circle; a container that still holds its plants is kept.
    let task = if circling && !full { Task::CutRoots } else { Task::PotOn };
    let plants = f64::from(tray.standing) * OVERDUE_LOSS;
    let mut stop = walk
        .tray_stop(tray, task, why)
        .risking(Stake::Seedlings, plants, OVERDUE_WITHIN_DAYS)
        .taking(minutes::LOOK, POT_ON_SOURCE)
        .working(f64::from(tray.standing) * work::POT_ON);
    // Overdue from the end of its holding time, or from the day a plug showed that the roots circle.
    let ended = holding.as_ref().map(|holding| holding.since.plus(holding.limit_days));
    let seen = plug.as_ref().filter(|(_, roots, _)| *roots == Roots::Circling).map(|(day, ..)| *day);
    if let Some(since) = ended.into_iter().chain(seen).filter(|since| *since <= walk.day()).min() {
        stop = stop.due(since, OVERDUE_WITHIN_DAYS).until(Some(since.plus(OVERDUE_WITHIN_DAYS)), UntilFor::Roots);
    }
    stop.last = plug.map(|(day, roots, _)| LastLook { day, figure: Measure::Roots(roots) });
    stop.entries = late.entries.clone();
    Some(stop)
}

/// A container that ends before the next rains in which its plants could go, told in time to get bags and soil.
fn bag_ends(walk: &Walk<'_>, tray: &TrayPicture) -> Option<Stop> {
    let day = walk.day();
    if time::is_newly_cut(&tray.story, day) {
        return None;
    }
    let ends = tray.best_before.filter(|ends| (0..=BAG_ENDS_AHEAD_DAYS).contains(&ends.days_since(day)))?;
    let could = tray.ready_from.or_else(|| walk.old_enough_on(tray)).map_or(day, |on| on.max(day));
    // A plug that holds carries it over some weeks.
    let carried = ends.plus(time::PLUG_SAYS_FOR_DAYS);
    let rains = season::safe_rains_from(&walk.picture.site, could).filter(|rains| rains.from > carried)?;
    let why = RoundReason::BagEnds { ends, rains_from: rains.from };
    let mut stop = walk
        .tray_stop(tray, Task::PotOn, why)
        .risking(Stake::Seedlings, f64::from(tray.standing) * OVERDUE_LOSS, ends.days_since(day) + OVERDUE_WITHIN_DAYS)
        .taking(minutes::LOOK, POT_ON_SOURCE)
        .working(f64::from(tray.standing) * work::POT_ON)
        .due(ends.plus(-BAG_ENDS_AHEAD_DAYS), BAG_ENDS_AHEAD_DAYS)
        .until(Some(ends), UntilFor::Container);
    stop.entries = asked(&tray.criteria, Rule::DaysInContainer).map(|asked| asked.entries.clone()).unwrap_or_default();
    Some(stop)
}

/// Past its container's time by the clock, and no plug was ever lifted: a look of a minute decides about a day of potting on.
fn never_looked_into(walk: &Walk<'_>, tray: &TrayPicture) -> Option<Stop> {
    let late = asked(&tray.criteria, Rule::DaysInContainer).filter(|asked| asked.met() == Some(false))?;
    let rests = leaves_plug_alone(walk, tray);
    let holding = holding(walk, tray).filter(|_| !rests && time::last_plug(&tray.story).is_none())?;
    let ended = holding.since.plus(holding.limit_days);
    let to_limit = Some(ended.days_since(walk.day()).min(0));
    let why = RoundReason::PlugNotSeen { days_since: None, days_to_least: None, days_to_limit: to_limit };
    let mut stop = walk
        .tray_stop(tray, Task::CheckPlug, why)
        .risking(Stake::Seedlings, f64::from(tray.standing) * OVERDUE_LOSS, OVERDUE_WITHIN_DAYS)
        .taking(minutes::AT_TRAY + minutes::PLUG, PLUG_SOURCE)
        .due(ended, OVERDUE_WITHIN_DAYS)
        .until(Some(ended.plus(OVERDUE_WITHIN_DAYS)), UntilFor::Roots);
    stop.expect = Some(Measure::Roots(Roots::Holds));
    stop.entries = late.entries.clone();
    Some(stop)
}

/// Mean height in cm over collar in mm of a sample.
fn sturdiness(sample: &SampleLook) -> Option<f64> {
    let all: Vec<f64> =
        sample.plants.iter().filter_map(|plant| plant.collar_mm.map(|collar| plant.height_cm.0 / collar.0)).collect();
    (!all.is_empty()).then(|| all.iter().sum::<f64>() / all.len() as f64)
}

fn sample_figure(walk: &Walk<'_>, tray: &TrayPicture) -> Option<LastLook> {
    let sample = last_sample(&tray.story)?;
    let figure = asked(&tray.criteria, Rule::Height).and_then(|asked| asked.known())?;
    (sample.day <= walk.day()).then_some(LastLook { day: sample.day, figure })
}

/// Tall and thin by a sample that still tells: set apart, or cull.
fn lanky(walk: &Walk<'_>, tray: &TrayPicture) -> Option<Stop> {
    let sample = last_sample(&tray.story)?;
    let stem = walk.profile(tray.species.as_ref()).and_then(|profile| profile.stem.as_ref());
    // Without a collar rule (soft stems, grafts) height over collar says nothing.
    let has_rule = asked(&tray.criteria, Rule::Collar).is_some() && stem.is_none_or(|stem| stem.value != Stem::Soft);
    if !has_rule || walk.day().days_since(sample.day) > SAMPLE_OLD_DAYS {
        return None;
    }
    let sturdiness = sturdiness(&sample).filter(|sturdiness| *sturdiness > LANKY_ABOVE)?;
    let (task, limit) =
        if sturdiness > CULL_LANKY_ABOVE { (Task::Cull, CULL_LANKY_ABOVE) } else { (Task::SpaceOut, LANKY_ABOVE) };
    let mut stop = walk
        .tray_stop(tray, task, RoundReason::Lanky { sturdiness, limit })
        .risking(Stake::Seedlings, f64::from(tray.standing) * LANKY_LOSS, NO_LAST_DAY_DAYS)
        .taking(minutes::LOOK, GRADING_SOURCE)
        .working(f64::from(tray.standing) * work::SORT)
        .due_by_interval(sample.day, SAMPLE_OLD_DAYS);
    stop.last = sample_figure(walk, tray);
    stop.entries = vec![sample.entry.clone()];
    Some(stop)
}

/// Tall and thin soon, by its last two samples: set apart in time.
fn lanky_soon(walk: &Walk<'_>, tray: &TrayPicture) -> Option<Stop> {
    let told = tray_growth(&tray.story, walk.profile(tray.species.as_ref()), walk.day()).lanky?;
    asked(&tray.criteria, Rule::Collar)?;
    let LankyComes::On(on) = told.comes else { return None };
    let days = on.days_since(walk.day());
    // Past that day a sample that is younger would say so.
    if !(0..=SAMPLE_OLD_DAYS).contains(&days) || walk.day().days_since(told.measured_on) > SAMPLE_OLD_DAYS {
        return None;
    }
    let why = RoundReason::LankySoon { sturdiness: told.sturdiness, limit: told.limit, on };
    let mut stop = walk
        .tray_stop(tray, Task::SpaceOut, why)
        .risking(Stake::Seedlings, f64::from(tray.standing) * LANKY_LOSS, days + 1)
        .taking(minutes::LOOK, GRADING_SOURCE)
        .working(f64::from(tray.standing) * work::SORT)
        .due(told.measured_on, SAMPLE_OLD_DAYS)
        .until(Some(on), UntilFor::Window);
    stop.last = sample_figure(walk, tray);
    stop.entries = told.entries;
    Some(stop)
}

/// The rest of a sample that fails at the usual age: pot on or cull.
fn rest_of_sample(walk: &Walk<'_>, tray: &TrayPicture) -> Option<Stop> {
    let sample = last_sample(&tray.story).filter(|_| tray.plantable_basis == Basis::Measured)?;
    let usual = time::day_span(walk.profile(tray.species.as_ref()))?.usual?;
    if walk.day().days_since(sample.day) > SAMPLE_OLD_DAYS || tray.age_days? < usual {
        return None;
    }
    let rest = tray.standing.saturating_sub((tray.plantable.likely + 1e-9).floor().max(0.0) as u32);
    // A tray of which nothing passes yet is small, not sorted out.
    let sorted = tray.ready || tray.story.accounts.planted > 0;
    // One that fits a bed is sorted when it goes.
    let sorted = sorted && !walk.going.contains_key(&tray.code);
    if rest < LOAD_PLANTS || tray.standing == 0 || !sorted {
        return None;
    }
    let of = u32::try_from(sample.plants.len()).unwrap_or(u32::MAX);
    let pass = (tray.plantable.likely / f64::from(tray.standing) * f64::from(of)).round() as u32;
    // What is too old for its size: a larger container, or out.
    let mut stop = walk
        .tray_stop(tray, Task::Cull, RoundReason::SampleFails { pass, of, rest })
        .taking(minutes::LOOK, MEASURE_SOURCE)
        .working(f64::from(tray.standing) * work::SORT)
        .due_by_interval(sample.day, SAMPLE_OLD_DAYS);
    stop.last = sample_figure(walk, tray);
    stop.entries = vec![sample.entry.clone()];
    Some(stop)
}

/// A sample is never more than stands.
pub(super) fn sample_of(tray: &TrayPicture) -> SampleAsked {
    SampleAsked { plants: tray.standing.min(SAMPLE_PLANTS), all: tray.standing <= SAMPLE_PLANTS }
}

/// A sample of 30: near the least days or ready, never measured or too long ago.
fn sample(walk: &Walk<'_>, tray: &TrayPicture) -> Option<Stop> {
    let height = asked(&tray.criteria, Rule::Height)?;
    let to_least = days_to_least(walk, tray);
    let planting = planting_from(walk, tray);
    let due_from = planting.map(|(from, _)| from.plus(-MEASURE_BEFORE_DAYS));
    if due_from.is_some_and(|from| walk.day() < from) {
        return None;
    }
    let last = last_sample(&tray.story);
    let last = last.as_deref();
    let why = match last {
        None => RoundReason::NeverMeasured { days_to_least: to_least, sample: sample_of(tray) },
        Some(sample) => {
            let days = walk.day().days_since(sample.day);
            if days <= SAMPLE_OLD_DAYS {
                return more_of_sample(walk, tray);
            }
            RoundReason::SampleOld { days, sample: sample_of(tray) }
        }
    };
    let plants = f64::from(tray.standing) * UNSEEN_LOSS;
    let share = f64::from(sample_of(tray).plants) / f64::from(SAMPLE_PLANTS);
    let mut stop = walk
        .tray_stop(tray, Task::Measure, why)
        .risking(Stake::Planting, plants, NO_LAST_DAY_DAYS)
        .taking(minutes::AT_TRAY + minutes::MEASURE * share, MEASURE_SOURCE);
    stop = match last {
        Some(sample) => {
            let again = sample.day.plus(SAMPLE_OLD_DAYS + 1);
            stop.due_by_interval(due_from.map_or(again, |from| from.max(again)), SAMPLE_OLD_DAYS)
        }
        None => {
            let came = walk.began_on(tray);
            let (until, what) = planting.unwrap_or_else(|| (came.plus(SAMPLE_OLD_DAYS), UntilFor::Ready));
            let due = until.plus(-MEASURE_BEFORE_DAYS).max(came).min(walk.day());
            stop.due(due, SAMPLE_OLD_DAYS).until(Some(until), what)
        }
    };
    stop.last = sample_figure(walk, tray);
    stop.expect = height.needed();
    stop.entries = last.map(|sample| sample.entry.clone()).into_iter().collect();
    Some(stop)
}

/// A sample so small that its mean may lie on either side of the least height: some more plants decide.
fn more_of_sample(walk: &Walk<'_>, tray: &TrayPicture) -> Option<Stop> {
    let profile = walk.profile(tray.species.as_ref());
    let known = tray_growth(&tray.story, profile, walk.day()).sample.filter(|known| known.undecided)?;
    let least_cm = profile?.height_least_cm.as_ref()?.value;
    let more = known.more.min(tray.standing.saturating_sub(known.plants));
    if more == 0 {
        return None;
    }
    let why = RoundReason::SampleSmall { more, within_cm: known.within_cm?, least_cm };
    let share = f64::from(more) / f64::from(SAMPLE_PLANTS);
    let mut stop = walk
        .tray_stop(tray, Task::Measure, why)
        .risking(Stake::Planting, f64::from(tray.standing) * UNSEEN_LOSS, NO_LAST_DAY_DAYS)
        .taking(minutes::AT_TRAY + minutes::MEASURE * share, MEASURE_SOURCE)
        .due_by_interval(known.day, SAMPLE_OLD_DAYS);
    stop.last = sample_figure(walk, tray);
    stop.entries = vec![known.entry];
    Some(stop)
}

/// Whether no plug is lifted: roots were cut lately and it tells nothing, or plants were grafted lately and a pull breaks the union.
fn leaves_plug_alone(walk: &Walk<'_>, tray: &TrayPicture) -> bool {
    time::is_newly_cut(&tray.story, walk.day()) || grafted::heals_on(&tray.story, walk.day()).is_some()
}

/// One plug: near the least days or near the end of the holding time, and none lifted lately.
fn plug(walk: &Walk<'_>, tray: &TrayPicture) -> Option<Stop> {
    let day = walk.day();
    asked(&tray.criteria, Rule::Plug)?;
    if leaves_plug_alone(walk, tray) {
        return None;
    }
    let last = time::last_plug(&tray.story);
    let days_since = last.as_ref().map(|(on, ..)| day.days_since(*on));
    if days_since.is_some_and(|days| days < PLUG_EVERY_DAYS) {
        return None;
    }
    let near = |days: i32, before: i32| (days <= before).then_some(days);
    // From the least days on only a tray that is not overdue is asked, until it goes out.
    let planting = planting_from(walk, tray);
    let due_from = planting.map(|(from, _)| from.plus(-PLUG_BEFORE_LEAST_DAYS));
    let to_least = days_to_least(walk, tray).filter(|_| due_from.is_none_or(|from| from <= day));
    let limit: Option<Day> = holding(walk, tray).map(|holding| holding.since.plus(holding.limit_days));
    let to_limit = limit.and_then(|limit| near(limit.days_since(day), PLUG_BEFORE_LIMIT_DAYS));
    if to_least.is_none() && to_limit.is_none() {
        return None;
    }
    let why = RoundReason::PlugNotSeen { days_since, days_to_least: to_least, days_to_limit: to_limit };
    let within = to_limit.map_or(NO_LAST_DAY_DAYS, |days| days.max(1));
    let mut stop = walk
        .tray_stop(tray, Task::CheckPlug, why)
        .risking(Stake::Seedlings, f64::from(tray.standing) * UNSEEN_LOSS, within)
        .taking(minutes::AT_TRAY + minutes::PLUG, PLUG_SOURCE);
    let came = walk.began_on(tray);
    stop = match (&last, limit.filter(|_| to_limit.is_some())) {
        (_, Some(limit)) => {
            let again = last.as_ref().map(|(on, ..)| on.plus(PLUG_EVERY_DAYS));
            let due = limit.plus(-PLUG_BEFORE_LIMIT_DAYS);
            stop.due(again.map_or(due, |again| again.max(due)), PLUG_EVERY_DAYS).until(Some(limit), UntilFor::Container)
        }
        (Some((on, ..)), None) => {
            let again = on.plus(PLUG_EVERY_DAYS);
            stop.due_by_interval(due_from.map_or(again, |from| from.max(again)), PLUG_EVERY_DAYS)
        }
        (None, None) => {
            let (until, what) = planting.unwrap_or_else(|| (came.plus(PLUG_EVERY_DAYS), UntilFor::Ready));
            let due = until.plus(-PLUG_BEFORE_LEAST_DAYS).max(came).min(day);
            stop.due(due, PLUG_EVERY_DAYS).until(Some(until), what)
        }
    };
    stop.expect = Some(Measure::Roots(Roots::Holds));
    stop.entries = last.iter().map(|(_, _, entry)| entry.clone()).collect();
    stop.last = last.map(|(day, roots, _)| LastLook { day, figure: Measure::Roots(roots) });
    Some(stop)
}
