//! Today's round: what to do on the walk, in the order one walks, from everything the book knows. Pure and total; on a
//! past or a coming day it is the round of that day's Picture.

mod counts;
mod expected;
mod field;
mod going_out;
mod ground;
mod growth;
pub mod intervals;
mod seed;
mod steps;
pub mod stop;
pub mod to_write;
mod waiting;
mod walk;

pub(crate) use counts::{is_asked_about, sick_unasked};
pub(crate) use going_out::{go_by, going, hands, hands_a_week, last_day_of, most_urgent_first};
pub use stop::deadline;
pub use stop::deadline::{Due, UntilFor};
pub use stop::tasks;
pub use stop::{
    AtStake, ForTray, LastLook, NextStep, NurseWork, RoundReason, SampleAsked, Stake, Stop, Task, ToBed, ToLight,
    TooLate, WalkOrder, Where,
};
pub(crate) use tasks::written_for;
pub use tasks::{TASKS, TaskFacts};

use std::cmp::{Ordering, Reverse};
use std::collections::{BTreeMap, BTreeSet};

use super::forecast::worth::{WORTH_SHOWN, WorthLooking};
use super::forecast::{ForecastBasis, Outlook, outlook_of_sowings, stock};
use super::picture::quantity::{LookAt, PestLacks};
use super::picture::{Criterion, Picture};
use crate::base::{BedName, Day, TrayCode};
use crate::nursery::entry::subject::Subject;
use intervals::{GAUGE_SOURCE, LATE_MINUTES_SHARE, MARKED_STOPS, TURN_DAYS, WALK_MINUTES, WORTH_STEP};
use walk::Walk;

/// The round of a day.
#[derive(Clone, PartialEq, Debug)]
pub struct Round {
    /// The stops, in the order one walks.
    pub stops: Vec<Stop>,
    /// What is due too and can wait, what loses most first.
    pub can_wait: Vec<Stop>,
    /// Minutes that the stops take: of looking and writing down. These are cut at the minutes allowed.
    pub minutes: f64,
    /// Minutes of the work of the stops for one person, where it is more than looking; a part of the day, never cut.
    pub work_minutes: f64,
    /// Minutes a walk may take.
    pub minutes_allowed: f64,
    /// The due looks that can change what is done, those that save most for each minute first: the first five come before
    /// what can wait.
    pub worth_looking: Vec<WorthLooking>,
    /// What nobody touches today, and why: no stop is there.
    pub stay_away: Vec<(Subject, Criterion)>,
}

impl Round {
    /// The looks that are shown as worth most.
    pub fn worth_shown(&self) -> impl Iterator<Item = &WorthLooking> {
        self.worth_looking.iter().take(WORTH_SHOWN)
    }
}

/// The round of a Picture's day, with what this nursery learned.
pub fn round(picture: &Picture) -> Round {
    round_by(picture, ForecastBasis::OwnRecords)
}

/// The round of a Picture's day.
pub fn round_by(picture: &Picture, forecast_basis: ForecastBasis) -> Round {
    let day = picture.day;
    round_with(picture, outlook_of_sowings(picture, forecast_basis, |tray| counts::is_asked_about(&tray.story, day)))
}

/// The round of a Picture's day with what is expected on it, where that is known already.
pub fn round_from(picture: &Picture, outlook: &Outlook) -> Round {
    let asked = |code: &TrayCode| {
        let tray = picture.trays.get(code);
        tray.is_some_and(|tray| counts::is_asked_about(&tray.story, picture.day))
    };
    let trays = outlook.trays.iter().filter(|(code, _)| asked(code));
    let again = outlook.again.iter().filter(|(code, _)| asked(code));
    let of_sowings = Outlook {
        forecast_basis: outlook.forecast_basis,
        trays: trays.map(|(code, told)| (code.clone(), told.clone())).collect(),
        again: again.map(|(code, again)| (code.clone(), *again)).collect(),
        experience: outlook.experience.clone(),
        ..Outlook::default()
    };
    round_with(picture, of_sowings)
}

fn round_with(picture: &Picture, mut outlook: Outlook) -> Round {
    let day = picture.day;
    outlook.stock = stock(picture, &outlook.trays, &outlook.experience);
    let places_in_order = walk::places_in_order(picture);
    let walk = Walk { picture, going: going(picture), outlook, places_in_order };
    let mut due = due(&walk);
    mark(&mut due);
    let worth_looking = expected::worth_looking(&walk, &due);
    let minutes_allowed = minutes_allowed(picture);
    let (mut stops, can_wait) =
        cut(due, day, minutes_allowed, worth_looking.get(..WORTH_SHOWN).unwrap_or(&worth_looking));
    in_walking_order(&mut stops);
    let minutes = stops.iter().map(|stop| stop.minutes).sum();
    let work_minutes = stops.iter().filter_map(|stop| stop.work_minutes).sum();
    let stay_away = waiting::stay_away(picture);
    Round { stops, can_wait, minutes, work_minutes, minutes_allowed, worth_looking, stay_away }
}

/// Everything due, each id once, without what was let go.
fn due(walk: &Walk<'_>) -> Vec<Stop> {
    let picture = walk.picture;
    let mut all: Vec<Stop> = gauge(walk).into_iter().collect();
    all.extend(going_out::go_out(walk));
    all.extend(going_out::last_days(walk));
    all.extend(counts::counts(walk));
    all.extend(counts::sick_ones(walk));
    all.extend(counts::stop_waiting(walk));
    all.extend(expected::sow_again(walk));
    all.extend(counts::prick_out(walk));
    all.extend(growth::size_and_roots(walk));
    all.extend(steps::unlit_places(walk));
    all.extend(steps::steps(walk));
    all.extend(steps::into_shade(walk));
    all.extend(waiting::treatments_over(walk));
    all.extend(waiting::labels(walk));
    // Rings around living plants before the weeding of what is still to come.
    all.extend(field::field(walk));
    all.extend(ground::ground(walk));
    all.extend(seed::seed(walk));
    let given_up = |stop: &Stop| picture.site.given_up.iter().any(|task| task.holds(&stop.id, picture.day));
    said_once(&mut all);
    let mut seen = BTreeSet::new();
    let may_be = |stop: &Stop| !given_up(stop) && !waiting::keeps_out(walk, stop) && !counts::spreads_it(walk, stop);
    all.retain(|stop| may_be(stop) && seen.insert(stop.id.clone()));
    for stop in &mut all {
        stop.after_wait = waiting::just_ended(walk, stop);
        stop.at_stake.most = stop.most_there(picture);
    }
    all
}

/// One job is said once: rings that are weeded for young plants and for those that come, as what loses most; and what is pricked out or
/// potted on, or thrown out as a whole, is counted by that.
fn said_once(all: &mut Vec<Stop>) {
    let mut most: BTreeMap<String, f64> = BTreeMap::new();
    for stop in all.iter().filter(|stop| stop.task == Task::Weed) {
        let lost = most.entry(stop.id.clone()).or_default();
        *lost = lost.max(stop.at_stake.plants_per_day());
    }
    let gone = |stop: &Stop| matches!(stop.why, RoundReason::PastLastDay { .. } | RoundReason::PastTakenDay { .. });
    let moved = |stop: &&Stop| matches!(stop.task, Task::PrickOut | Task::PotOn) || gone(stop);
    let in_hand: BTreeSet<Subject> = all.iter().filter(moved).map(|stop| stop.subject.clone()).collect();
    all.retain(|stop| match stop.task {
        Task::Weed => most.get(&stop.id).is_none_or(|most| stop.at_stake.plants_per_day() >= *most),
        Task::Count => !(matches!(stop.why, RoundReason::CountOld { .. }) && in_hand.contains(&stop.subject)),
        _ => true,
    });
}

/// The gauge, every morning, until its line for the day is written.
fn gauge(walk: &Walk<'_>) -> Option<Stop> {
    let weather = &walk.picture.site.weather;
    let read = weather.get(&walk.day()).is_some_and(|(_, weather)| weather.rain_mm.is_some());
    if read {
        return None;
    }
    let mut stop =
        walk.site_stop(Task::Gauge, RoundReason::GaugeUnread).taking(intervals::minutes::GAUGE, GAUGE_SOURCE);
    stop = stop.until(Some(walk.day()), UntilFor::Today);
    let last =
        weather.range(..walk.day()).rev().find_map(|(day, (entry, weather))| Some((*day, entry, weather.rain_mm?)));
    stop.last = last.map(|(day, entry, rain)| {
        stop.entries.push(entry.clone());
        LastLook { day, figure: super::picture::Measure::Rain { mm: rain.0, days: 1 } }
    });
    Some(stop)
}

fn minutes_allowed(picture: &Picture) -> f64 {
    let nursery = picture.site.nursery.on(picture.day);
    nursery.and_then(|nursery| nursery.walk_minutes).map_or(WALK_MINUTES, |minutes| f64::from(minutes.0))
}

/// What loses most for each day of waiting is marked.
fn mark(stops: &mut [Stop]) {
    let mut by_loss: Vec<usize> = (0..stops.len()).collect();
    by_loss.sort_by(|a, b| most_lost(&stops[*a], &stops[*b]));
    for at in by_loss.into_iter().take(MARKED_STOPS) {
        stops[at].marked = stops[at].at_stake.plants > 0.0;
    }
}

fn most_lost(a: &Stop, b: &Stop) -> Ordering {
    let lost = |stop: &Stop| stop.at_stake.plants_per_day();
    lost(b).total_cmp(&lost(a)).then_with(|| a.order.cmp(&b.order)).then_with(|| a.id.cmp(&b.id))
}

/// Keeps what loses most for each minute in the greater part of the minutes, in the rest what is late longest; the gauge
/// is always read. Minutes that stay over go first to the looks that save most a minute, then to what loses most again.
fn cut(mut due: Vec<Stop>, day: Day, minutes_allowed: f64, looks: &[WorthLooking]) -> (Vec<Stop>, Vec<Stop>) {
    let least_going = due.iter().filter(|stop| goes(stop)).map(|stop| worth(stop, day).0).min();
    // What is ready goes out in these rains before anything is watered more rarely.
    let worth = |stop: &Stop| {
        let (step, due) = worth(stop, day);
        let behind = least_going.filter(|_| stop.task == Task::Water).map_or(step, |going| going.saturating_sub(1));
        (step.min(behind), due)
    };
    due.sort_by(|a, b| {
        let first = |stop: &Stop| (stop.task == Task::Gauge, is_of_the_day(stop));
        first(b).cmp(&first(a)).then_with(|| worth(b).cmp(&worth(a))).then_with(|| a.id.cmp(&b.id))
    });
    let late = in_turn(&due, day);
    let for_late = if late.is_empty() { 0.0 } else { minutes_allowed * LATE_MINUTES_SHARE };
    let mut kept = vec![false; due.len()];
    let worthy: Vec<usize> = (0..due.len()).collect();
    let mut left = minutes_allowed - for_late;
    let beside = with_plants(&due, due.iter());
    let alone: Vec<usize> = worthy.iter().copied().filter(|at| !beside.contains(at)).collect();
    take(&due, &alone, &mut kept, &mut left);
    left += for_late;
    // Fence and mulch of a bed come with its plants.
    let gone = due.iter().zip(&kept).filter(|(_, kept)| **kept).map(|(stop, _)| stop);
    let beside = with_plants(&due, gone);
    take(&due, &beside, &mut kept, &mut left);
    take(&due, &first_turns(&due, &late, &kept, day), &mut kept, &mut left);
    take(&due, &late, &mut kept, &mut left);
    let first_looks =
        looks.iter().filter_map(|look| due.iter().position(|stop| stop.id == look.stop)).collect::<Vec<_>>();
    take(&due, &first_looks, &mut kept, &mut left);
    take(&due, &worthy, &mut kept, &mut left);
    let mut kept = kept.into_iter();
    let (stops, mut can_wait): (Vec<Stop>, Vec<Stop>) = due.into_iter().partition(|_| kept.next() == Some(true));
    let first = |stop: &Stop| looks.iter().position(|look| look.stop == stop.id).unwrap_or(WORTH_SHOWN);
    can_wait.sort_by(|a, b| first(a).cmp(&first(b)).then_with(|| most_lost(a, b)));
    (stops, can_wait)
}

/// Whether a sick tray is set apart and reported, or its roots are looked at: that cannot wait behind work of more plants.
fn is_of_the_day(stop: &Stop) -> bool {
    let RoundReason::SickOpen { apart, lacks, .. } = &stop.why else { return false };
    *apart || matches!(lacks, Some(PestLacks::Look { at: LookAt::Roots(_), .. }))
}

/// The bed whose fence or mulch it is: they come before plants, or with them.
fn rides_with(stop: &Stop) -> Option<&BedName> {
    match &stop.subject {
        Subject::Bed(bed) if matches!(stop.task, Task::Fence | Task::Mulch) => Some(bed),
        _ => None,
    }
}

/// Fence and mulch of the beds to which some of the stops send plants.
fn with_plants<'a>(due: &[Stop], stops: impl Iterator<Item = &'a Stop>) -> Vec<usize> {
    let mut beds: BTreeSet<&BedName> = BTreeSet::new();
    for stop in stops {
        if let RoundReason::Fits { beds: to, .. } = &stop.why {
            beds.extend(to.iter().filter(|to| to.after_others > 0).map(|to| &to.bed));
        }
    }
    let of_them = |stop: &Stop| rides_with(stop).is_some_and(|bed| beds.contains(bed));
    (0..).zip(due).filter(|(_, stop)| of_them(stop)).map(|(at, _)| at).collect()
}

/// Whether plants go out with it.
fn goes(stop: &Stop) -> bool {
    stop.task == Task::GoOut && stop.at_stake.plants > 0.0
}

/// What a stop is worth for each minute, in steps of four times as much: so that a small difference from one day to the
/// next does not change what is on the walk. Within a step what is to go out comes first, then the longest due.
fn worth(stop: &Stop, day: Day) -> (i32, Reverse<Day>) {
    // Days to a last day are counted from the first day of the turn.
    let to_last = stop.until.map(|until| until.days_since(day) + 1);
    let within_days = match to_last {
        Some(days) if days == stop.at_stake.within_days => days + day.number().rem_euclid(TURN_DAYS),
        Some(_) | None => stop.at_stake.within_days,
    };
    let a_minute = stop.at_stake.plants.max(0.0) / f64::from(within_days.max(1)) / stop.minutes.max(0.1);
    let step =
        if a_minute > 0.0 { (a_minute.ln() / WORTH_STEP.ln()).floor().clamp(-1e6, 1e6) as i32 } else { i32::MIN };
    (step, Reverse(stop.due.map_or(Day::from_number(i32::MIN), |due| due.on)))
}

/// Late stops, the one that has been late longest first.
fn in_turn(due: &[Stop], day: Day) -> Vec<usize> {
    let mut late: Vec<(i32, usize)> =
        due.iter().enumerate().filter_map(|(at, stop)| Some((stop.late_days(day)?, at))).collect();
    late.sort_by(|a, b| b.0.cmp(&a.0).then_with(|| due[a.1].id.cmp(&due[b.1].id)));
    late.into_iter().map(|(_, at)| at).collect()
}

/// Of each kind that is late and not yet on the walk the stop that has waited longest; every few days another kind first.
fn first_turns(due: &[Stop], late: &[usize], kept: &[bool], day: Day) -> Vec<usize> {
    let on_the_walk: BTreeSet<Task> = due.iter().zip(kept).filter(|(_, kept)| **kept).map(|(s, _)| s.task).collect();
    let mut kinds: BTreeMap<Task, usize> = BTreeMap::new();
    for at in late.iter().filter(|at| !on_the_walk.contains(&due[**at].task)) {
        kinds.entry(due[*at].task).or_insert(*at);
    }
    let mut turns: Vec<usize> = kinds.into_values().collect();
    if !turns.is_empty() {
        let first = day.number().div_euclid(TURN_DAYS).rem_euclid(turns.len() as i32) as usize;
        turns.rotate_left(first);
    }
    turns
}

/// Takes in what still fits, in the order given.
fn take(due: &[Stop], order: &[usize], kept: &mut [bool], left: &mut f64) {
    for at in order {
        if !kept[*at] && due[*at].minutes <= *left + 1e-9 {
            *left -= due[*at].minutes;
            kept[*at] = true;
        }
    }
}

/// Ground work of a bed stands together, in the order in which it is done.
fn work_first(stop: &Stop) -> Option<Task> {
    // `None` comes before any work.
    matches!(stop.why, RoundReason::WorkMissing { .. }).then_some(stop.task)
}

/// What was treated is looked at before anything is done with it.
fn look_first(stop: &Stop) -> bool {
    stop.task == Task::TreatmentOver
}

/// What is left over is known when the others have gone.
fn is_left_over(stop: &Stop) -> bool {
    matches!(stop.why, RoundReason::BareLeft { .. })
}

/// The order of the walk; at one place what is asked of the place itself, then the tray or bed that loses most with all
/// its tasks.
fn in_walking_order(stops: &mut [Stop]) {
    let mut of_subject: BTreeMap<Subject, f64> = BTreeMap::new();
    for stop in stops.iter() {
        let most = of_subject.entry(stop.subject.clone()).or_insert(0.0);
        *most = most.max(stop.at_stake.plants_per_day());
    }
    let of_place = |stop: &Stop| matches!(stop.subject, Subject::Place(_));
    let most = |stop: &Stop| of_subject.get(&stop.subject).copied().unwrap_or(0.0);
    stops.sort_by(|a, b| {
        a.order
            .cmp(&b.order)
            .then_with(|| of_place(b).cmp(&of_place(a)))
            .then_with(|| most(b).total_cmp(&most(a)))
            .then_with(|| a.subject.cmp(&b.subject))
            .then_with(|| look_first(b).cmp(&look_first(a)))
            .then_with(|| is_left_over(a).cmp(&is_left_over(b)))
            .then_with(|| work_first(a).cmp(&work_first(b)))
            .then_with(|| most_lost(a, b))
    });
}
