//! What goes out today, and bare roots whose last day comes.

use std::collections::BTreeMap;

use super::deadline::UntilFor;
use super::growth::sample_of;
use super::intervals::*;
use super::stop::{LastLook, RoundReason, Stake, Stop, Task, ToBed};
use super::walk::{Walk, asked, days_until};
use crate::base::{BedName, Day, Range, SpeciesKey, TrayCode};
use crate::nursery::entry::types::ArrivedFrom;
use crate::reckon::picture::{Basis, Gap, Measure, Pair, Picture, Rule, Stage, TrayPicture};
use crate::reckon::stock::Origin;
use crate::reckon::tray::hold;

/// The trays that fit a bed today, each with its beds, best first. Room is given to healthy trays before those with a
/// pest, and then to the tray that can wait least.
pub(crate) fn going(picture: &Picture) -> BTreeMap<TrayCode, Vec<ToBed>> {
    let mut fits: BTreeMap<&TrayCode, Vec<(&BedName, u32)>> = BTreeMap::new();
    for pair in picture.pairs.iter().filter(|pair| pair.fits && pair.plants > 0) {
        fits.entry(pair.tray()).or_default().push((pair.bed(), pair.plants));
    }
    let mut trays: Vec<&TrayPicture> = fits.keys().filter_map(|code| picture.trays.get(*code)).map(|t| &**t).collect();
    let last = |tray: &TrayPicture| tray.best_before.unwrap_or(Day::from_number(i32::MAX));
    trays.sort_by_key(|tray| (tray.has_pest(), last(tray), tray.code.clone()));
    let mut room: BTreeMap<(&BedName, &SpeciesKey), u32> = BTreeMap::new();
    for bed in picture.beds.values() {
        for line in &bed.species {
            room.insert((&bed.name, &line.species), line.open_positions);
        }
    }
    let mut going = BTreeMap::new();
    for tray in trays {
        let (Some(species), Some(mut beds)) = (tray.species.as_ref(), fits.remove(&tray.code)) else { continue };
        beds.sort_by_key(|(_, plants)| std::cmp::Reverse(*plants));
        let mut left = beds.iter().map(|(_, plants)| *plants).max().unwrap_or(0).max(plantable(tray));
        let mut to = Vec::new();
        for (bed, plants) in beds {
            let mut after_others = 0;
            if let Some(open) = room.get_mut(&(bed, species)) {
                after_others = plants.min(*open).min(left);
                *open -= after_others;
                left -= after_others;
            }
            to.push(ToBed { bed: bed.clone(), plants, after_others, today: after_others, rest_on: None, late: 0 });
        }
        going.insert(tray.code.clone(), to);
    }
    give_hands(picture, &mut going);
    going
}

/// Gives the hands of each day to what goes out, most urgent first; what was planted today has had its hands.
fn give_hands(picture: &Picture, going: &mut BTreeMap<TrayCode, Vec<ToBed>>) {
    let Some(a_day) = hands(picture).map(u64::from) else { return };
    let (day, a_week) = (picture.day, u64::from(planting_days(picture)));
    let cohorts = picture.beds.values().flat_map(|bed| &bed.story.cohorts);
    let out_today = cohorts.filter(|cohort| cohort.day == day && cohort.tray.is_some());
    let mut before: u64 = out_today.map(|cohort| u64::from(cohort.planted)).sum::<u64>().min(a_day);
    let counted = |plants: u64| plants.min(u64::from(u32::MAX)) as u32;
    for tray in most_urgent_first(picture, going) {
        let last = last_day_of(picture, going, &tray);
        for to in going.get_mut(&tray).into_iter().flatten().filter(|to| to.after_others > 0) {
            let (plants, first) = (u64::from(to.after_others), before);
            before += plants;
            to.today = counted(plants.min(a_day.saturating_sub(first)));
            if to.today < to.after_others {
                // The days of planting are spread over the week, today the first.
                let days = ((before - 1) / a_day * 7).div_ceil(a_week);
                to.rest_on = Some(day.plus(days.min(MOST_DAYS_OF_HANDS) as i32));
                // Hands that are there until its last day, that day too.
                let planting_days =
                    |last: Day| u64::try_from(last.days_since(day)).map_or(0, |days| days * a_week / 7 + 1);
                let until = last.map(|last| a_day * planting_days(last));
                to.late = until.map_or(0, |until| counted(before.saturating_sub(until.max(first))));
            }
        }
    }
}

/// Hands are reckoned no further ahead than so many days: ten years. Ours.
const MOST_DAYS_OF_HANDS: u64 = 3650;

/// Plants that the hands of this nursery plant in a day, where somebody wrote it.
pub(crate) fn hands(picture: &Picture) -> Option<u32> {
    let nursery = picture.site.nursery.on(picture.day)?;
    nursery.plants_per_day.map(|plants| plants.0).filter(|plants| *plants > 0)
}

/// The trays that go out, the one with the nearest last day first; those with a pest last.
pub(crate) fn most_urgent_first(picture: &Picture, going: &BTreeMap<TrayCode, Vec<ToBed>>) -> Vec<TrayCode> {
    let mut trays: Vec<TrayCode> = going.keys().cloned().collect();
    trays.sort_by_cached_key(|tray| {
        let last = last_day_of(picture, going, tray);
        (picture.trays.get(tray).is_some_and(|tray| tray.has_pest()), last.is_none(), last)
    });
    trays
}

/// The last day on which a tray that goes out goes out well.
pub(crate) fn last_day_of(picture: &Picture, going: &BTreeMap<TrayCode, Vec<ToBed>>, tray: &TrayCode) -> Option<Day> {
    let best = going.get(tray).and_then(|beds| picture.pair(tray, &beds.first()?.bed));
    go_by(picture.trays.get(tray)?, best, picture.day).map(|(last, _)| last)
}

/// The last day on which a tray goes out well, and what ends then: the safe rains of a bed that it fits, or its own time.
pub(crate) fn go_by(tray: &TrayPicture, pair: Option<&Pair>, day: Day) -> Option<(Day, UntilFor)> {
    let season = pair.and_then(|pair| pair.asked_of_bed(Rule::Season));
    let safe = season
        .and_then(|criterion| if let Some(Measure::Until(last)) = criterion.needed() { Some(last) } else { None })
        .map(|last| (last, UntilFor::Rains));
    let too_old = if tray.story.is_bare() { UntilFor::LastDay } else { UntilFor::Container };
    // A plug that holds can carry a tray past its clock: then today is the day.
    let own = tray.best_before.map(|last| (last.max(day), too_old));
    [own, safe].into_iter().flatten().min_by_key(|(last, _)| *last)
}

/// Days of a week on which this nursery plants: all of them where nobody wrote it.
fn planting_days(picture: &Picture) -> u32 {
    let written = picture.site.nursery.on(picture.day).and_then(|nursery| nursery.planting_days_per_week);
    written.map_or(7, |days| days.0.clamp(1, 7))
}

/// Plants that the hands of this nursery plant in a week, where somebody wrote how many in a day.
pub(crate) fn hands_a_week(picture: &Picture) -> Option<u32> {
    hands(picture).map(|plants| plants.saturating_mul(planting_days(picture)))
}

fn plantable(tray: &TrayPicture) -> u32 {
    (tray.plantable.likely + 1e-9).floor().clamp(0.0, f64::from(u32::MAX)) as u32
}

/// One stop for each tray that goes out today.
pub(super) fn go_out(walk: &Walk<'_>) -> Vec<Stop> {
    let day = walk.day();
    let all = walk.going.iter().filter_map(|(code, beds)| {
        let tray = walk.picture.trays.get(code)?;
        let best = walk.picture.pair(code, &beds.first()?.bed)?;
        let end = go_by(tray, Some(best), day);
        let until = end.map(|(last, _)| last);
        let planted = walk.going_out(tray);
        let stays = tray.standing.saturating_sub(plantable(tray));
        let no_place = plantable(tray).saturating_sub(planted);
        let why = RoundReason::Fits {
            beds: beds.clone(),
            stays,
            measured: tray.plantable_basis == Basis::Measured,
            no_place,
        };
        let mut stop = walk
            .tray_stop(tray, Task::GoOut, why)
            .risking(Stake::Planting, f64::from(planted), days_until(day, until))
            .taking(minutes::GO_OUT, GO_OUT_SOURCE)
            .working(f64::from(planted) * work::PLANT_OUT)
            .until(until, end.map_or(UntilFor::Rains, |(_, what)| what));
        stop.last = tray
            .counted_on
            .map(|day| LastLook { day, figure: Measure::Plants(Range::exact(f64::from(tray.standing))) });
        stop.expect = Some(Measure::Plants(tray.plantable));
        let asked = best.once();
        stop.entries = asked.criteria.once().iter().flat_map(|criterion| criterion.entries.iter().cloned()).collect();
        stop.entries.sort();
        stop.entries.dedup();
        Some(stop)
    });
    all.collect()
}

/// Minutes for each plant: thrown out, bagged or heeled in.
fn work_minutes(task: Task) -> f64 {
    match task {
        Task::Cull => work::SORT,
        Task::PotOn => work::POT_ON,
        Task::Count => 0.0,
        _ => work::HEEL_IN,
    }
}

/// What there is to do with bare roots or stumps: what is left over when the others go out, or all of them where none go.
fn bare_task(walk: &Walk<'_>, tray: &TrayPicture, until: Day) -> Option<(Task, RoundReason)> {
    let days_left = until.days_since(walk.day());
    let profile = walk.profile(tray.species.as_ref());
    let stump = hold::is_stake(&tray.story, profile);
    let alive = hold::looks_alive(profile);
    if walk.going.contains_key(&tray.code) {
        let left = plantable(tray).saturating_sub(walk.going_out(tray));
        // What keeps for weeks may find its place in the next days.
        let soon = !stump || days_left <= LAST_DAY_NOTICE_DAYS;
        return (left > 0 && soon).then_some((Task::PotOn, RoundReason::BareLeft { left, until, stump }));
    }
    let written = hold::last_day(&tray.story, profile).is_some_and(|(_, written, _)| written);
    let torn = asked(&tray.criteria, Rule::BareRoots).is_some_and(|asked| asked.blocks);
    let wild = matches!(&tray.story.origin, Some(Origin::Received { from: ArrivedFrom::Wildling, .. }));
    let look = asked(&tray.criteria, Rule::GoodUntil).and_then(|asked| asked.gap());
    if days_left < 0 && written {
        return Some((Task::Cull, RoundReason::PastLastDay { until, stump, look: alive }));
    }
    // A day that nobody wrote is no reason to throw anything out.
    if days_left < 0 {
        return Some((Task::LastDay, RoundReason::PastTakenDay { until, stump, look: alive }));
    }
    if torn {
        return Some((Task::PotOn, if wild { RoundReason::BagWildlings } else { RoundReason::BagAtOnce }));
    }
    if let Some(Gap::NotLookedAt { came, keep_days }) = look {
        return Some((Task::Count, RoundReason::BareNotLookedAt { came: *came, keep_days: *keep_days }));
    }
    if let Some((bed, places)) = waits_for_measure(walk, tray) {
        let plants = tray.standing.min(places);
        let why = RoundReason::BareNotMeasured { until, sample: sample_of(tray), bed: bed.clone(), plants };
        return Some((Task::Measure, why));
    }
    let near = days_left <= LAST_DAY_NOTICE_DAYS;
    // What stayed when the others went waits for no bed.
    if near && tray.story.accounts.planted > 0 {
        return Some((Task::PotOn, RoundReason::BareLeft { left: tray.standing, until, stump }));
    }
    near.then_some((Task::LastDay, RoundReason::LastDayNear { until, days_left, written, stump, look: alive }))
}

/// The bed with most places that takes bare roots once they are measured, and its places.
fn waits_for_measure<'a>(walk: &Walk<'a>, tray: &TrayPicture) -> Option<(&'a BedName, u32)> {
    let of_size = |rule: Rule| matches!(rule, Rule::Height | Rule::Collar | Rule::Leaves | Rule::Load);
    asked(&tray.criteria, Rule::Height).filter(|height| height.blocks && height.met().is_none())?;
    let of_it = walk.picture.pairs.of(&tray.code).iter();
    let only_size = of_it.filter(|pair| !pair.fits && pair.once().held_by.iter().all(|held| of_size(held.rule)));
    let beds = only_size.filter_map(|pair| {
        let line = walk
            .picture
            .beds
            .get(pair.bed())?
            .species
            .iter()
            .find(|line| tray.species.as_ref() == Some(&line.species))?;
        Some((pair.bed(), line.open_positions))
    });
    beds.max_by_key(|(_, places)| *places)
}

/// Bare roots and stumps: their last day is near and no bed takes them today, or it has passed.
pub(super) fn last_days(walk: &Walk<'_>) -> Vec<Stop> {
    let day = walk.day();
    let bare = walk
        .picture
        .trays
        .values()
        .filter(|tray| tray.standing > 0 && tray.stage != Stage::Spent && tray.story.is_bare());
    bare.filter_map(|tray| {
        let until = tray.best_before?;
        let days_left = until.days_since(day);
        let (task, why) = bare_task(walk, tray, until)?;
        let stays = match why {
            RoundReason::BareLeft { left, .. } => left,
            // Past their day there is nothing left to lose.
            RoundReason::PastLastDay { .. } => 0,
            _ => tray.standing,
        };
        // What is left over is looked at when the others are sent out.
        let looking = if matches!(why, RoundReason::BareLeft { .. }) { minutes::LEFT_OVER } else { minutes::LOOK };
        let worked = if stays == 0 { tray.standing } else { stays };
        let mut stop = walk
            .tray_stop(tray, task, why)
            .risking(Stake::Planting, f64::from(stays), days_left + 1)
            .taking(looking, LAST_DAY_SOURCE)
            .working(f64::from(worked) * work_minutes(task))
            .due(until.plus(-LAST_DAY_NOTICE_DAYS).max(walk.began_on(tray)), LAST_DAY_NOTICE_DAYS)
            .until(Some(until), UntilFor::LastDay);
        stop.entries = asked(&tray.criteria, Rule::GoodUntil).map(|asked| asked.entries.clone()).unwrap_or_default();
        Some(stop)
    })
    .collect()
}
