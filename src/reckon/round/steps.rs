//! Steps of hardening that fall due.

use std::collections::BTreeMap;

use super::counts::sick;
use super::deadline::UntilFor;
use super::intervals::*;
use super::stop::{NextStep, RoundReason, Stake, Stop, Task, ToLight, TooLate};
use super::walk::{Walk, asked};
use crate::base::{Day, PlaceName};
use crate::nursery::species::HardeningStep;
use crate::reckon::bed::season;
use crate::reckon::picture::{Gap, Rule, Stage, TrayPicture};
use crate::reckon::stock::PlaceStory;
use crate::reckon::tray::exposure::{FITS_UP_TO, brightest_from, light_band};
use crate::reckon::tray::hardening::{HardeningClock, RESTS_UP_TO, clock, length_days, template_days};
use crate::reckon::tray::light::{LightChanged, in_sun, is_shaded_shortly, light_history};
use crate::reckon::tray::{grafted, pricked_out_until, time};

/// A change of light smaller than this share is no step. Ours.
const SMALLEST_STEP: f64 = 0.02;
/// Shade cloth comes in steps of so much shade, a share. Common practice.
const CLOTH_STEP: f64 = 0.05;

/// Steps of light and water of the trays that grow on.
pub(super) fn steps(walk: &Walk<'_>) -> Vec<Stop> {
    let trays = walk.living_trays().filter(|tray| walk.grows_on(tray) && !walk.goes_out(tray));
    trays
        .filter(|tray| !walk.is_held(tray) && sick(walk, tray).is_none() && tray.stage != Stage::Overdue)
        .filter(|tray| !kept_in_shade(tray, walk.day()) && burning(walk, tray).is_none())
        .filter_map(|tray| step(walk, tray))
        .collect()
}

/// The light of half shade.
const HALF_SHADE: f64 = 0.50;

/// Trays that stand too far in the sun, to be carried back today.
pub(super) fn into_shade(walk: &Walk<'_>) -> Vec<Stop> {
    let trays = walk.living_trays().filter(|tray| walk.grows_on(tray) && !walk.goes_out(tray));
    trays.filter_map(|tray| shaded(walk, tray)).collect()
}

/// The step that was too large and in whose light a tray still stands, where nobody looked at it since it shows.
fn burning(walk: &Walk<'_>, tray: &TrayPicture) -> Option<LightChanged> {
    in_sun(&tray.story, &light_history(&tray.story, &walk.picture.places, walk.day()))
}

fn shaded(walk: &Walk<'_>, tray: &TrayPicture) -> Option<Stop> {
    let day = walk.day();
    let now = present_light(walk, tray)?;
    let leap = burning(walk, tray);
    let rests = asked(&tray.criteria, Rule::Plug).and_then(time::rests_in_shade);
    let knits = grafted::knits_on(&tray.story, day);
    let until = rests.max(pricked_out_until(&tray.story, day)).max(knits).filter(|_| now > RESTS_UP_TO);
    let most = match (leap, until) {
        (_, Some(_)) => HALF_SHADE,
        // Back to where they came from: what they could have borne is no cure of scorch.
        (Some(leap), None) => leap.from,
        (None, None) => return None,
    };
    let by_light = |a: &(f64, &PlaceName), b: &(f64, &PlaceName)| a.0.total_cmp(&b.0).then_with(|| b.1.cmp(a.1));
    let bench = benches(walk, tray).into_iter().filter(|(share, _)| *share <= most + 1e-9).max_by(by_light);
    let next = match bench {
        Some((light, place)) => ToLight { light, place: Some(place.clone()) },
        None => ToLight { light: under_cloth(0.0, most), place: None },
    };
    let step =
        NextStep { light_now: Some(now), light_in_the_end: None, next: Some(next), then: None, water_every_days: None };
    let leapt = leap.filter(|_| until.is_none()).map(|leap| leap.since);
    let rule = if leapt.is_some() { Rule::ExposureStep } else { Rule::Plug };
    let mut stop = walk
        .tray_stop(
            tray,
            Task::IntoShade,
            RoundReason::IntoShade { leapt, until, grafted: until.is_some() && until == knits, step },
        )
        .risking(Stake::Seedlings, f64::from(tray.standing) * UNHARDENED_LOSS, 1)
        .taking(minutes::STEP, STEP_SOURCE)
        .until(Some(day), UntilFor::Today);
    stop.entries = asked(&tray.criteria, rule).map(|asked| asked.entries.clone()).unwrap_or_default();
    Some(stop)
}

/// Whether plants are to stay in the shade until their roots have grown, cut lately, torn or pulled in the wild, or their grafts have knit.
fn kept_in_shade(tray: &TrayPicture, day: Day) -> bool {
    let roots = asked(&tray.criteria, Rule::Plug).is_some_and(|plug| time::rests_in_shade(plug).is_some());
    roots || pricked_out_until(&tray.story, day).or(grafted::knits_on(&tray.story, day)).is_some()
}

/// Places whose light nobody wrote, while trays there come near their beds: one line there decides about all of them.
pub(super) fn unlit_places(walk: &Walk<'_>) -> Vec<Stop> {
    let mut waiting: BTreeMap<&PlaceName, Vec<&TrayPicture>> = BTreeMap::new();
    for tray in walk.living_trays().filter(|tray| walk.grows_on(tray) && comes_near(walk, tray)) {
        if let Some(place) = place_unlit(walk, tray) {
            waiting.entry(place).or_default().push(tray);
        }
    }
    let stops = waiting.into_iter().map(|(place, trays)| {
        let plants: f64 = trays.iter().map(|tray| f64::from(tray.standing)).sum();
        let came = trays.iter().map(|tray| walk.began_on(tray)).max().unwrap_or(walk.day()).min(walk.day());
        let why = RoundReason::PlaceLightUnknown { trays: u32::try_from(trays.len()).unwrap_or(u32::MAX) };
        let rains = season::safe_rains_from(&walk.picture.site, walk.day());
        let by = rains.map(|rains| rains.last_safe.plus(-STEP_EVERY_DAYS).max(walk.day()));
        let stop = walk
            .place_stop(place, Task::ReadLight, why)
            .risking(Stake::Planting, plants * UNHARDENED_LOSS * LOOK_OPENS, NO_LAST_DAY_DAYS)
            .taking(minutes::LIGHT_OF_PLACE, LIGHT_SOURCE)
            .due_by_interval(came, STEP_WITHIN_DAYS);
        if by.is_some() { stop.until(by, UntilFor::Hardened) } else { stop }
    });
    stops.collect()
}

/// The place of a tray whose light is not known by anything.
fn place_unlit<'a>(walk: &Walk<'_>, tray: &'a TrayPicture) -> Option<&'a PlaceName> {
    tray.place.as_ref().filter(|_| present_light(walk, tray).is_none())
}

/// Whether a tray could be ready within the days in which light is looked at ahead; of unknown age it could be today.
fn comes_near(walk: &Walk<'_>, tray: &TrayPicture) -> bool {
    walk.old_enough_on(tray).is_none_or(|on| on.days_since(walk.day()) <= LOOK_AHEAD_DAYS)
}

fn step(walk: &Walk<'_>, tray: &TrayPicture) -> Option<Stop> {
    let day = walk.day();
    let soft = asked(&tray.criteria, Rule::Flush).is_some_and(|asked| asked.met() == Some(false));
    let profile = walk.profile(tray.species.as_ref());
    let history = light_history(&tray.story, &walk.picture.places, day);
    let clock = clock(&tray.story, &history, length_days(profile), day);
    let put_back = clock.put_back.is_some_and(|back| day.days_since(back) < PUT_BACK_RESTS_DAYS);
    // What is shaded for a few days goes back to where it stood, and takes no step from here.
    let rests = put_back || is_shaded_shortly(&history, day) || waits_for_light(tray);
    let length = template_days(profile);
    let could_be_ready =
        time::age(&tray.story, day).youngest_on.zip(time::day_span(profile)).map(|(on, span)| on.plus(span.least));
    // Steps before that belong to raising.
    let early = could_be_ready.is_some_and(|ready| day < ready.plus(-length)) && !clock.said;
    let settled = clock.last_step.is_none_or(|last| day.days_since(last) >= STEP_EVERY_DAYS);
    if soft || rests || early || !settled {
        return None;
    }
    let mut next = next_step(walk, tray, could_be_ready.filter(|_| clock.started.is_none()));
    let brighter = next.next.is_some();
    let hardened = asked(&tray.criteria, Rule::Hardening).is_some_and(|asked| asked.met() == Some(true));
    // Hardened enough to go, and for the whole of the template.
    let whole = asked(&tray.criteria, Rule::Hardening).is_some_and(|asked| asked.met() == Some(true) && !asked.warns);
    // A step taken today must settle; a hardening begun today takes its whole length.
    let begins = clock.started.is_none() && !hardened;
    // Hardening begins from a light that is known: that is asked first, at its place.
    if begins && place_unlit(walk, tray).is_some() {
        return None;
    }
    // What can go to a bed today, though others take its places, is hardened for it; and what goes into no brighter light, or a
    // small step further, only has to stand.
    let stands = next.light_now.and(next.light_in_the_end).is_some() && !brighter;
    if begins && (stands || walk.going.contains_key(&tray.code)) {
        return None;
    }
    let needs = if begins { length } else { STEP_EVERY_DAYS };
    let timing =
        timing(walk, tray, needs, could_be_ready, clock.started.filter(|_| !hardened).map(|on| on.plus(length)));
    let too_late = timing.too_late.filter(|_| begins || brighter);
    // For rains that are still far off it is too early, unless those that run are being missed.
    if too_late.is_none() && timing.due_from.is_some_and(|from| day < from) {
        return None;
    }
    let (task, why) = if begins {
        let why = RoundReason::HardeningNotBegun { could_be_ready, length_days: length, too_late, step: next };
        (Task::BeginHardening, why)
    } else {
        let days_since = clock.last_step.map(|last| day.days_since(last));
        let rarer = next.water_every_days.filter(|every| f64::from(*every) > watered_every(walk, tray) + 1e-9);
        next.water_every_days = rarer;
        match (brighter, rarer) {
            (true, _) => (Task::Shade, RoundReason::StepDue { days_since, too_late, step: next }),
            // What is ready goes out: it is not kept back to be watered more rarely.
            (false, Some(_)) if !whole && !tray.ready => {
                (Task::Water, RoundReason::StepDue { days_since, too_late, step: next })
            }
            (false, _) => return None,
        }
    };
    let stop = step_stop(walk, tray, task, why, &clock, timing.until);
    Some(match clock.last_step.filter(|_| !begins) {
        Some(last) => stop.due(last.plus(STEP_EVERY_DAYS), STEP_EVERY_DAYS),
        None => {
            let due = could_be_ready.map_or_else(|| walk.began_on(tray), |ready| ready.plus(-length));
            let due = timing.due_from.map_or(due, |from| from.max(due));
            stop.due(due.max(walk.began_on(tray)).min(day), STEP_WITHIN_DAYS)
        }
    })
}

/// Whether plants are to be left where they are, until what their light was is known.
fn waits_for_light(tray: &TrayPicture) -> bool {
    let gap = asked(&tray.criteria, Rule::Hardening).and_then(|asked| asked.gap());
    matches!(gap, Some(Gap::LightSince { .. }))
}

/// Until when a step helps, and the rains it is too late for.
struct Timing {
    until: Option<(Day, UntilFor)>,
    /// The first day on which it is due, where the rains are to come.
    due_from: Option<Day>,
    too_late: Option<TooLate>,
}

/// With `needs` days from the step to a hardened tray: the last day for the safe rains it can still reach, at most its
/// container's last day. Where no rains are described: so many days before it could be ready.
fn timing(walk: &Walk<'_>, tray: &TrayPicture, needs: i32, could_be_ready: Option<Day>, run: Option<Day>) -> Timing {
    let (day, site) = (walk.day(), &walk.picture.site);
    let hardened_on = [Some(day.plus(needs)), could_be_ready, run].into_iter().flatten().max().unwrap_or(day);
    let reached = season::safe_rains_from(site, hardened_on);
    let missed = season::safe_rains_from(site, could_be_ready.map_or(day, |ready| ready.max(day)))
        .filter(|missed| reached.is_none_or(|reached| missed.last_safe < reached.last_safe));
    let too_late =
        missed.map(|missed| TooLate { last_safe: missed.last_safe, next_from: reached.map(|reached| reached.from) });
    let for_rains = reached.map(|reached| {
        // For rains to come it is ready on their first day; in rains that run, by their last safe one.
        let ready_by = if reached.from > day.plus(needs) { reached.from } else { reached.last_safe };
        (ready_by.plus(-needs), UntilFor::Hardened)
    });
    let for_bag =
        tray.best_before.map(|last| (last.plus(-needs), UntilFor::Container)).filter(|(last, _)| *last >= day);
    let plain = || (could_be_ready.unwrap_or(day).plus(-needs + STEP_WITHIN_DAYS), UntilFor::Ready);
    let until = for_rains.into_iter().chain(for_bag).min_by_key(|(last, _)| *last);
    let to_come = reached.filter(|reached| reached.from > day.plus(needs));
    let due_from = to_come.and(until).map(|(last, _)| last.plus(-BEFORE_RAINS_DAYS));
    Timing { until: Some(until.unwrap_or_else(plain)), due_from, too_late }
}

fn step_stop(
    walk: &Walk<'_>,
    tray: &TrayPicture,
    task: Task,
    why: RoundReason,
    clock: &HardeningClock,
    until: Option<(Day, UntilFor)>,
) -> Stop {
    // A tray without a bed or rains to miss loses little by waiting.
    let planned = tray.species.as_ref().is_some_and(|species| walk.open_lines(species).next().is_some());
    // Neither does one that is hardened enough to go, and only has its water left.
    let hardened = asked(&tray.criteria, Rule::Hardening).is_some_and(|asked| asked.met() == Some(true));
    let loss = if planned && !(hardened && task == Task::Water) { UNHARDENED_LOSS } else { UNHARDENED_LOSS / 10.0 };
    let plants = f64::from(tray.standing) * loss;
    let mut stop = walk
        .tray_stop(tray, task, why)
        .risking(
            Stake::Planting,
            plants,
            until.map_or(0, |(last, _)| last.days_since(walk.day()) + 1).max(STEP_WITHIN_DAYS),
        )
        .taking(minutes::STEP, STEP_SOURCE)
        .until(until.map(|(last, _)| last), until.map_or(UntilFor::Ready, |(_, what)| what));
    stop.entries = clock.entries.clone();
    if stop.entries.is_empty() {
        stop.entries = asked(&tray.criteria, Rule::Hardening).map(|asked| asked.entries.clone()).unwrap_or_default();
    }
    stop
}

/// The step to take now, and the one after it: each to the brightest bench with room that plants bear in one step, toward the bed.
fn next_step(walk: &Walk<'_>, tray: &TrayPicture, ready: Option<Day>) -> NextStep {
    let light_now = present_light(walk, tray);
    let end = light_now.and_then(|light| light_in_the_end(walk, tray, light));
    let profile = walk.profile(tray.species.as_ref());
    let most = light_band(profile).map_or(1.0, |(_, most)| most);
    let benches = benches(walk, tray);
    let toward = |light: f64| end.and_then(|end| step_toward(&benches, light, (end, most)));
    let next = light_now.and_then(toward);
    let then = next.as_ref().and_then(|next| toward(next.light));
    let steps = profile.and_then(|profile| profile.hardening_steps.as_ref()).map(|figure| figure.value.as_slice());
    let days_left = ready.map(|ready| ready.days_since(walk.day()));
    NextStep {
        light_now,
        light_in_the_end: end,
        next,
        then,
        water_every_days: steps.and_then(|steps| template_water(walk, tray, steps, days_left)),
    }
}

/// The step from a light toward the light in the end, on a bench whose light the verdict does not call too large a step: the brightest
/// of those up to the end, else the least bright beyond it that the species stands; where there is none, what cloth can give. None where
/// what is left is a small step.
fn step_toward(benches: &[(f64, &PlaceName)], light: f64, (end, most): (f64, f64)) -> Option<ToLight> {
    if light * FITS_UP_TO >= end {
        return None;
    }
    let reach = brightest_from(light);
    let fits = |(share, _): &&(f64, &PlaceName)| *share > light + SMALLEST_STEP && *share <= reach + 1e-9;
    let (within, beyond): (Vec<_>, Vec<_>) =
        benches.iter().filter(fits).partition(|(share, _)| *share <= end + SMALLEST_STEP);
    let by_light = |a: &&(f64, &PlaceName), b: &&(f64, &PlaceName)| a.0.total_cmp(&b.0).then_with(|| b.1.cmp(a.1));
    let brightest = within.into_iter().max_by(by_light);
    let bench = brightest.or_else(|| beyond.into_iter().filter(|(share, _)| *share <= most + 1e-9).min_by(by_light));
    Some(match bench {
        Some((share, name)) => ToLight { light: *share, place: Some((*name).clone()) },
        None => ToLight { light: under_cloth(light, end.min(reach)), place: None },
    })
}

/// The light under a cloth that nurseries have, in steps of 5 % shade: no brighter than wanted, where that is still a step.
fn under_cloth(now: f64, wanted: f64) -> f64 {
    let light = 1.0 - ((1.0 - wanted) / CLOTH_STEP - 1e-9).ceil() * CLOTH_STEP;
    if light > now + SMALLEST_STEP { light } else { wanted }
}

/// The light a tray stands in today, not the mean of its last days.
fn present_light(walk: &Walk<'_>, tray: &TrayPicture) -> Option<f64> {
    let history = light_history(&tray.story, &walk.picture.places, walk.day());
    history.last().and_then(|stretch| stretch.light)
}

/// The light it must stand in the end: of the open beds in its light the one nearest to it, else the nearest end of
/// the species' band.
fn light_in_the_end(walk: &Walk<'_>, tray: &TrayPicture, light: f64) -> Option<f64> {
    let beds = tray.species.as_ref().into_iter().flat_map(|species| walk.open_lines(species));
    let lit = beds.filter(|(_, line)| line.in_light > 0).filter_map(|(bed, _)| bed.light_now.as_ref());
    let nearest = lit.map(|now| now.share).min_by(|a, b| (a - light).abs().total_cmp(&(b - light).abs()));
    let band =
        || light_band(walk.profile(tray.species.as_ref())).map(|(least, most)| light.clamp(least, most.max(least)));
    nearest.or_else(band)
}

/// The places with room that nobody is kept out of and that have no sickness, but for its own, each with its light.
fn benches<'a>(walk: &Walk<'a>, tray: &TrayPicture) -> Vec<(f64, &'a PlaceName)> {
    let day = walk.day();
    let here = |name: &PlaceName| walk.living_trays().filter(|other| other.place.as_ref() == Some(name)).count();
    let places = walk.picture.site.places.iter().filter_map(|(name, described)| {
        let set = described.on(day)?;
        let room = set.holds_trays.is_none_or(|most| here(name) < most.0 as usize);
        let story: &PlaceStory = walk.picture.places.get(name)?;
        let there = story.light_on(day)?;
        let share = there.read.or(there.nominal)?;
        (room && walk.may_come_to(name, tray) && tray.place.as_ref() != Some(name)).then_some((share, name))
    });
    places.collect()
}

/// Water by the template: of the steps that should have been taken by now the last; once hardening runs, by the days
/// it has run.
fn template_water(walk: &Walk<'_>, tray: &TrayPicture, steps: &[HardeningStep], days_left: Option<i32>) -> Option<u32> {
    let first = steps.first()?.days_before as i32;
    // The template runs its whole length, longer than the least that holds a tray back.
    let profile = walk.profile(tray.species.as_ref());
    let more_days = template_days(profile) - length_days(profile);
    let run = asked(&tray.criteria, Rule::Hardening).and_then(|asked| asked.expected).map(|on| on.plus(more_days));
    let left = run.map(|ready| ready.days_since(walk.day())).or(days_left).unwrap_or(first).clamp(0, first);
    let taken = steps.iter().filter(|step| step.days_before as i32 >= left);
    taken.filter_map(|step| step.water_every_days).next_back()
}

/// Days between waterings as last written for the tray or its place; daily where nothing is written (common practice).
fn watered_every(walk: &Walk<'_>, tray: &TrayPicture) -> f64 {
    const DAILY: f64 = 1.0;
    let own = tray.story.waterings.last();
    let place = tray.place.as_ref().and_then(|place| walk.picture.places.get(place));
    let at_place = place.and_then(|place| place.waterings.last());
    let latest = [own, at_place].into_iter().flatten().max_by_key(|spell| spell.from);
    latest.map_or(DAILY, |spell| spell.what)
}
