//! Counts due, sowings to stop waiting for, and seedlings to prick out.

use super::deadline::UntilFor;
use super::intervals::*;
use super::stop::{LastLook, RoundReason, Stake, Stop, Task};
use super::walk::{Walk, all_of, asked};
use crate::base::{Day, Range};
use crate::nursery::pest::stings;
use crate::reckon::bed::sick;
use crate::reckon::picture::quantity::PestLacks;
use crate::reckon::picture::{
    BedPicture, BedSpecies, Criterion, Gap, Measure, Picture, Question, Rule, RuleSource, Stage, TrayPicture,
};
use crate::reckon::seed::{emerged, expected_seedlings, share_up};
use crate::reckon::stock::{Origin, TrayStory};
use crate::reckon::tray::pest::{self, OpenPest};
use crate::reckon::tray::time::{PRICK_OUT_WINDOW_DAYS, prick_out_from_days};

/// Due counts of living trays, never more than one a tray.
pub(super) fn counts(walk: &Walk<'_>) -> Vec<Stop> {
    walk.living_trays().filter_map(|tray| count(walk, tray)).collect()
}

fn count(walk: &Walk<'_>, tray: &TrayPicture) -> Option<Stop> {
    let (day, story) = (walk.day(), &*tray.story);
    let emerging = seed_is_due(story, day);
    // A count of part of the cells is a look at what comes up, and no count of what stands.
    let looks = if emerging { story.counts.last() } else { story.last_whole_count() };
    let last = looks.map(|look| look.day);
    // Plants that arrived or were moved in were counted then.
    let last = last.max(story.counted_on());
    let days_since = last.map(|last| day.days_since(last));
    let sick = sick(walk, tray);
    let standing = f64::from(tray.standing);
    let apart = story.part_look.as_ref().filter(|part| part.contradicts() && !emerging);
    let (why, every_days, plants, within_days) = if let Some(part) = apart {
        let why = RoundReason::PartCounted { standing: part.standing, seen: part.seen, cells: part.cells };
        (why, 0, standing * SICK_LOSS, SICK_WITHIN_DAYS)
    } else if let Some(what) = sick {
        let every_days = COUNT_SICK_EVERY_DAYS;
        (RoundReason::Sick { days_since, every_days, what }, every_days, standing * SICK_LOSS, SICK_WITHIN_DAYS)
    } else if emerging {
        let (emerged, expected) = (emerged(story), expected_emergence(walk, tray));
        let half = expected.is_some_and(|expected| f64::from(emerged) >= expected / 2.0);
        let every_days = if half { EMERGED_HALF_EVERY_DAYS } else { EMERGING_EVERY_DAYS };
        let to_come = expected.map_or(0.0, |expected| (expected - f64::from(emerged)).max(0.0));
        let why = RoundReason::Emerging { days_since, every_days, emerged, expected };
        (why, every_days, (standing + to_come) * EMERGING_LOSS, SICK_WITHIN_DAYS)
    } else {
        let near = matches!(tray.stage, Stage::Hardening | Stage::Ready);
        let every_days = if near { COUNT_NEAR_EVERY_DAYS } else { COUNT_EVERY_DAYS };
        let why = RoundReason::CountOld { days_since, every_days, stage: tray.stage };
        (why, every_days, standing * UNCOUNTED_LOSS, UNCOUNTED_WITHIN_DAYS)
    };
    // Nothing can be up before the first day of emergence.
    if tray.standing == 0 && first_emergence(walk, tray).is_some_and(|first| day < first) {
        return None;
    }
    if days_since.is_some_and(|days| days < every_days) {
        return None;
    }
    let mut stop = walk
        .tray_stop(tray, Task::Count, why)
        .risking(Stake::Seedlings, plants, within_days)
        .taking(minutes::AT_TRAY + standing / minutes::COUNTED_IN_A_MINUTE, COUNT_SOURCE)
        .due_by_interval(count_due(walk, tray, last, every_days), every_days);
    stop.last = last.map(|day| LastLook { day, figure: Measure::Plants(Range::exact(standing)) });
    stop.expect = Some(Measure::Plants(if emerging { coming_up(walk, tray, last) } else { tray.standing_range }));
    stop.entries.extend(story.counts.last().map(|look| look.entry.clone()));
    Some(stop)
}

/// The day a count fell due: its interval after the last; of a tray never counted the first day of emergence.
fn count_due(walk: &Walk<'_>, tray: &TrayPicture, last: Option<Day>, every_days: i32) -> Day {
    let due = last.map(|last| last.plus(every_days));
    due.or_else(|| first_emergence(walk, tray)).unwrap_or_else(|| walk.began_on(tray)).min(walk.day())
}

/// What was seen last where a tray is sick: a pest or sickness written, or plants gone that nothing explains.
pub(super) fn sick(walk: &Walk<'_>, tray: &TrayPicture) -> Option<Option<String>> {
    let (day, story) = (walk.day(), &tray.story);
    let lately = |on: Day| (0..=SICK_FOR_DAYS).contains(&day.days_since(on));
    // What a later look settled is no sickness any more.
    let open = pest::open_in_tray(story, walk.picture.around(), day);
    let counts = |pest: &OpenPest| lately(pest.seen.on) && !pest.nature.takes_leaves && !is_answered(pest);
    if let Some(pest) = open.into_iter().rev().find(counts) {
        return Some(Some(pest.seen.what));
    }
    let gone = all_of(story.counts.iter().filter(|look| lately(look.day)).map(|look| look.not_seen));
    let stood = f64::from(tray.standing) + f64::from(gone);
    (gone > 0 && f64::from(gone) >= stood * SICK_LOSS_SHARE).then_some(None)
}

/// Whether what frees plants of a sickness was done, and a look weeks later is all that is missing.
fn is_answered(pest: &OpenPest) -> bool {
    matches!(pest.seen.lacks, Some(PestLacks::Look { .. }))
}

/// Whether seed is still waited for; seed of a species without figures for [`UNKNOWN_LAST_DAY_DAYS`].
fn seed_is_due(story: &TrayStory, day: Day) -> bool {
    let youngest = story.sowings.last().map(|sowing| sowing.day);
    let too_long = youngest.is_none_or(|sown| day.days_since(sown) > UNKNOWN_LAST_DAY_DAYS);
    story.seed_is_due(day) && !(story.seed_due_until.is_none() && too_long)
}

/// Whether what will come of a tray's seed is still asked: seed is in it, and waiting ended not long ago.
pub(crate) fn is_asked_about(story: &TrayStory, day: Day) -> bool {
    let seed = story.accounts.seed > 0 || story.seed_unknown;
    let until = story.seed_due_until.map(|last| {
        let sown = story.sowings.last().map_or(last, |sowing| sowing.day);
        // Waiting never goes beyond twice the species' last day.
        last.plus(last.days_since(sown).max(0) + STOP_WAITING_ASKED_DAYS)
    });
    seed && until.is_none_or(|until| day <= until)
}

fn first_emergence(walk: &Walk<'_>, tray: &TrayPicture) -> Option<Day> {
    let first = walk.profile(tray.species.as_ref())?.emerge_first_days.as_ref()?.value;
    tray.story.sowings.first().map(|sowing| sowing.day.plus(first.floor() as i32))
}

/// Seedlings expected from a tray's seed: by its forecast; of a species without days of emergence, which has none, by the
/// last test of each lot, else by fresh seed.
fn expected_emergence(walk: &Walk<'_>, tray: &TrayPicture) -> Option<f64> {
    if let Some(told) = walk.told(tray) {
        return Some(told.expected);
    }
    let profile = walk.profile(tray.species.as_ref());
    expected_seedlings(&tray.story.sowings, &walk.picture.lots, profile)
}

/// What should stand by now: what stood, and of what is still expected the part that the days since bring, on a
/// log-logistic curve through the species' half and last day (ours).
fn coming_up(walk: &Walk<'_>, tray: &TrayPicture, last: Option<Day>) -> Range {
    let standing = f64::from(tray.standing);
    if let Some(told) = walk.told(tray) {
        let to_come = (told.in_the_end.likely - f64::from(told.emerged)).max(0.0);
        let all = told.likely_in_all();
        let up = |on: Day| if all > 0.0 { told.likely_up(told.days_to(on)) / all } else { 1.0 };
        let before = told.last_look.map_or(0.0, up);
        let newly =
            if before < 1.0 { to_come * ((up(walk.day()) - before) / (1.0 - before)).clamp(0.0, 1.0) } else { 0.0 };
        let most = (2.0 * newly).min((told.in_the_end.high - f64::from(told.emerged)).max(newly));
        return Range::new(standing, (standing + newly).round(), (standing + most).ceil());
    }
    let up = f64::from(emerged(&tray.story));
    let to_come = expected_emergence(walk, tray).map_or(0.0, |expected| (expected - up).max(0.0));
    let profile = walk.profile(tray.species.as_ref());
    let half = profile.and_then(|profile| profile.emerge_half_days.as_ref()).map(|figure| figure.value);
    let late = profile.and_then(|profile| profile.emerge_last_days.as_ref()).map(|figure| figure.value);
    let sown = tray.story.sowings.last().map(|sowing| sowing.day);
    let (Some(half), Some(late), Some(sown)) = (half, late, sown) else {
        return Range::new(standing, standing, standing + to_come);
    };
    let share = |on: Day| share_up(f64::from(on.days_since(sown)), half, late);
    let (before, now) = (last.map_or(0.0, share), share(walk.day()));
    let newly = if before < 1.0 { to_come * ((now - before) / (1.0 - before)).clamp(0.0, 1.0) } else { 0.0 };
    Range::new(standing, (standing + newly).round(), (standing + (2.0 * newly).min(to_come)).ceil())
}

/// Sowings whose last day passed without anything new and that hold a bench for little or nothing.
pub(super) fn stop_waiting(walk: &Walk<'_>) -> Vec<Stop> {
    let day = walk.day();
    let all = walk.picture.trays.values().filter_map(|tray| {
        let story = &tray.story;
        let told = walk.told(tray);
        // By its own curve, never before the species' last day; where nothing is forecast the species' last day.
        let last_day = told.map(|told| told.stop_waiting).or(story.seed_due_until).filter(|last| *last < day)?;
        let asked = day.days_since(last_day) <= STOP_WAITING_ASKED_DAYS;
        let seed_left = story.accounts.seed > 0 || story.seed_unknown;
        let cleared = !story.moves_out.is_empty() || story.accounts.culled_in_all() > 0 || story.accounts.planted > 0;
        if !asked || !seed_left || cleared || !matches!(story.origin, Some(Origin::Sown)) {
            return None;
        }
        let half = walk.profile(tray.species.as_ref()).and_then(|profile| profile.emerge_half_days.as_ref());
        let quiet = half.map_or(0, |half| (half.value * NOTHING_NEW_SHARE).ceil() as i32).max(NOTHING_NEW_DAYS);
        let newest = story.counts.iter().rev().find(|look| look.emerged > 0).map(|look| look.day);
        let up = emerged(story);
        let poor = expected_emergence(walk, tray).is_none_or(|most| f64::from(up) < most * POOR_EMERGENCE_SHARE);
        if newest.is_some_and(|on| day.days_since(on) < quiet) || (tray.standing > 0 && !poor) {
            return None;
        }
        let why = RoundReason::EmergenceOver {
            last_day,
            emerged: up,
            sown: u32::try_from(story.accounts.sown).unwrap_or(u32::MAX),
        };
        let mut stop = walk
            .tray_stop(tray, Task::StopWaiting, why)
            .taking(minutes::LOOK, STOP_WAITING_SOURCE)
            .due(last_day.plus(1), STOP_WAITING_ASKED_DAYS)
            .until(Some(last_day.plus(STOP_WAITING_ASKED_DAYS)), UntilFor::Window);
        stop.last = story
            .counts
            .last()
            .map(|look| LastLook { day: look.day, figure: Measure::Plants(Range::exact(f64::from(look.standing))) });
        stop.entries.extend(story.sowings.iter().map(|sowing| sowing.entry.clone()));
        stop.entries.extend(story.counts.last().map(|look| look.entry.clone()));
        Some(stop)
    });
    all.collect()
}

/// Seedlings in a seedbed that are old enough to be pricked out.
pub(super) fn prick_out(walk: &Walk<'_>) -> Vec<Stop> {
    let day = walk.day();
    let all = walk.living_trays().filter(|tray| tray.standing > 0 && walk.in_seedbed(tray) && !walk.is_held(tray));
    all.filter_map(|tray| {
        let story = &tray.story;
        let from_days = prick_out_from_days(walk.profile(tray.species.as_ref()))?;
        let sown = story.sowings.first()?.day;
        let most_up = expected_emergence(walk, tray)
            .is_none_or(|expected| f64::from(emerged(story)) >= expected * MOST_EMERGED_SHARE);
        if day.days_since(sown) < from_days || (!most_up && seed_is_due(story, day)) {
            return None;
        }
        let why =
            RoundReason::SeedlingsOldEnough { age_days: day.days_since(sown), from_days, standing: tray.standing };
        let until = sown.plus(from_days + PRICK_OUT_WINDOW_DAYS);
        let left = until.days_since(day) + 1;
        let mut stop = walk
            .tray_stop(tray, Task::PrickOut, why)
            .risking(Stake::Seedlings, f64::from(tray.standing) * LATE_PRICKING_LOSS, left)
            .taking(minutes::LOOK, PRICK_OUT_SOURCE)
            .working(f64::from(tray.standing) * work::PRICK_OUT)
            .due(sown.plus(from_days), PRICK_OUT_WINDOW_DAYS)
            .until(Some(until), UntilFor::Roots);
        stop.last = tray
            .counted_on
            .map(|day| LastLook { day, figure: Measure::Plants(Range::exact(f64::from(tray.standing))) });
        stop.entries.extend(story.sowings.iter().map(|sowing| sowing.entry.clone()));
        Some(stop)
    })
    .collect()
}

/// What is sick stays on the round until it is answered: thrown out, treated or gone by a look; then it is looked at again.
pub(super) fn sick_ones(walk: &Walk<'_>) -> Vec<Stop> {
    let mut stops = Vec::new();
    for tray in walk.living_trays().filter(|tray| tray.standing > 0) {
        let story = &tray.story;
        let mut open = pest::open_in_tray(story, walk.picture.around(), walk.day());
        // Lost leaves are looked at where they hold plants back.
        open.retain(|pest| !pest.nature.takes_leaves || pest.holds() && !story.is_bare());
        let order = |pest: &OpenPest| (pest.holds(), pest.seen.lacks.is_some(), pest.seen.on);
        let Some(mut worst) = open.into_iter().max_by_key(order) else { continue };
        let profile = walk.profile(tray.species.as_ref());
        worst.seen.leaves = worst.seen.leaves.map(|_| pest::sound_leaves(profile));
        let acted = pest::acted_on(story, &walk.picture.places).into_iter();
        let Some((why, due)) = sick_open(&worst, acted, walk.day()) else { continue };
        // Of what goes along with no plant a sample is what tells.
        let task = if worst.nature.takes_leaves { Task::Measure } else { Task::Sick };
        let mut stop = walk
            .tray_stop(tray, task, why)
            .risking(Stake::Seedlings, f64::from(tray.standing) * SICK_LOSS, SICK_WITHIN_DAYS)
            .taking(minutes::LOOK, RuleSource::Pest)
            .due(due, SICK_FOR_DAYS)
            .until(Some(walk.day()), UntilFor::Today);
        stop.entries = worst.entries;
        stops.push(stop);
    }
    stops.extend(walk.living_trays().filter_map(|tray| many_died(walk, tray)));
    // What is sick is asked first of a bed: each id stands once on the round.
    stops.extend(walk.picture.beds.values().filter_map(|bed| sick_bed(walk, bed)));
    stops.extend(walk.picture.beds.values().filter_map(|bed| most_died(walk, bed)));
    stops
}

/// Most plants of a tray died, and nobody wrote of what.
fn many_died(walk: &Walk<'_>, tray: &TrayPicture) -> Option<Stop> {
    let asked = asked(&tray.criteria, Rule::Pest)?;
    let (Gap::ManyDied { on, .. } | Gap::CameFromDying { on, .. }) = *asked.gap()? else { return None };
    let mut stop = walk
        .tray_stop(tray, Task::Sick, RoundReason::MostDied(asked.gap()?.clone()))
        .risking(Stake::Seedlings, f64::from(tray.standing) * SICK_LOSS, SICK_WITHIN_DAYS)
        .taking(minutes::LOOK, RuleSource::Pest)
        .due(on, SICK_FOR_DAYS)
        .until(Some(walk.day()), UntilFor::Today);
    stop.entries = asked.entries.clone();
    Some(stop)
}

/// What is sick in a bed, or lives in its ground: why the round stops there, and from when.
fn why_sick_bed(bed: &BedPicture, picture: &Picture) -> Option<(sick::InBed, RoundReason, Day)> {
    let found = sick::worst_of_bed(&bed.story, picture.around(), picture.day)?;
    // Nobody is sent to a nest; what eats above the ground is looked for when planting.
    if stings(&found.pest.seen.what) || !found.holds && found.pest.seen.lacks.is_none() {
        return None;
    }
    let (why, due) = match found.due {
        Some(due) => (sick_why(&found.pest, false), due),
        None => sick_open(&found.pest, sick::acted_on(&bed.story), picture.day)?,
    };
    Some((found, why, due))
}

/// What is due in a bed because something is sick there that no question of its species tells of: nurse plants have it, and it harms
/// nothing else.
pub(crate) fn sick_unasked(bed: &BedPicture, picture: &Picture) -> Option<RoundReason> {
    let of_shade = |asked: &Criterion| match &asked.question {
        Question::Pest(pest) => pest.found().and_then(|found| found.known.as_ref()?.of_shade).is_some(),
        _ => false,
    };
    let is_told = |line: &BedSpecies| {
        asked(&line.criteria, Rule::Pest).is_some_and(|asked| asked.met() != Some(true) && !of_shade(asked))
    };
    let (_, why, due) = why_sick_bed(bed, picture).filter(|_| !bed.species.iter().any(is_told))?;
    (due <= picture.day).then_some(why)
}

/// The stop at what is sick in a bed.
fn sick_bed(walk: &Walk<'_>, bed: &BedPicture) -> Option<Stop> {
    let (found, why, due) = why_sick_bed(bed, walk.picture)?;
    let living = f64::from(all_of(bed.species.iter().map(|line| line.living)));
    // What holds nothing back harms the share that has it, and is dug for before the next planting; what came with a few is theirs.
    let few = found.pest.seen.share_pct.filter(|_| !found.holds && found.due.is_none());
    let brought = found.pest.seen.brought.as_ref().map(|by| f64::from(by.plants));
    let (lost, within_days) = match few {
        Some(share) => (living * share / 100.0, SAMPLE_OLD_DAYS),
        None => (brought.unwrap_or(living * SICK_LOSS), SICK_WITHIN_DAYS),
    };
    let mut stop = walk
        .bed_stop(bed, Task::Sick, why)
        .risking(Stake::Planted, lost, within_days)
        .taking(minutes::BED, RuleSource::Pest)
        .due(due, SICK_FOR_DAYS)
        .until(Some(walk.day()), UntilFor::Today);
    stop.entries = found.entries;
    (due <= walk.day()).then_some(stop)
}

/// Most plants of a species died in a bed, and nobody wrote of what.
fn most_died(walk: &Walk<'_>, bed: &BedPicture) -> Option<Stop> {
    let mut asked = bed.species.iter().filter_map(|line| sick::many_died(&bed.story, &line.species, walk.day()));
    let asked = asked.find(|asked| asked.blocks)?;
    let (Gap::MostOfBedDied { on, dead, .. } | Gap::GroundKills { on, dead, .. }) = *asked.gap()? else { return None };
    let mut stop = walk
        .bed_stop(bed, Task::Sick, RoundReason::MostDied(asked.gap()?.clone()))
        .risking(Stake::Planted, f64::from(dead), SICK_WITHIN_DAYS)
        .taking(minutes::BED, RuleSource::Pest)
        .due(on, SICK_FOR_DAYS)
        .until(Some(walk.day()), UntilFor::Today);
    stop.entries = asked.entries;
    Some(stop)
}

/// Why and since when an open pest is due. Of what does not go by itself: at once, until what frees plants of it was done, then from the
/// day on which a look tells. Of the rest: at once where it holds back and nothing was done since it was seen; else some days after the
/// last look or deed.
fn sick_open(pest: &OpenPest, acted: impl Iterator<Item = Day>, day: Day) -> Option<(RoundReason, Day)> {
    let seen = &pest.seen;
    let last_deed = acted.filter(|acted| (seen.on..=day).contains(acted)).max();
    let again = last_deed.map_or(seen.on, |deed| deed.max(seen.on)).plus(SICK_FOR_DAYS);
    // What is set apart and reported is so on the day, also where as many as had it are out already.
    let new = (seen.is_apart() || pest.goes_with_soil()) && day.days_since(seen.on) < SICK_FOR_DAYS;
    let due = match seen.lacks {
        Some(PestLacks::Look { .. }) if new => seen.on,
        Some(PestLacks::Look { from, .. }) => from,
        Some(_) => seen.on,
        None if pest.holds() && last_deed.is_none() => seen.on,
        None => again,
    };
    (due <= day).then(|| (sick_why(pest, last_deed.is_some()), due))
}

fn sick_why(pest: &OpenPest, done: bool) -> RoundReason {
    let seen = &pest.seen;
    RoundReason::SickOpen {
        what: seen.what.clone(),
        on: seen.on,
        done,
        lacks: seen.lacks,
        is_damping: seen.is_damping,
        is_sign: seen.is_sign,
        apart: seen.is_apart(),
        of_soil: pest.goes_with_soil(),
        leaves: seen.leaves,
        count_from: seen.count_from,
        few: !pest.holds() && seen.lacks.is_none(),
        brought: seen.brought.clone(),
    }
}

/// Whether a stop would move, sort or handle plants with a sickness that goes along with them: first it is answered.
pub(super) fn spreads_it(walk: &Walk<'_>, stop: &Stop) -> bool {
    let handles = matches!(
        stop.task,
        Task::PotOn
            | Task::PrickOut
            | Task::Cull
            | Task::SpaceOut
            | Task::CutRoots
            | Task::CheckPlug
            | Task::Measure
            | Task::BeginHardening
            | Task::Shade
            | Task::IntoShade
            | Task::Water
            | Task::SowAgain
    );
    let tray = || stop.tray().and_then(|code| walk.picture.trays.get(code));
    let open = |tray: &TrayPicture| pest::open_in_tray(&tray.story, walk.picture.around(), walk.day());
    handles && tray().is_some_and(|tray| open(tray).iter().any(|pest| !pest.nature.goes_by_itself()))
}
