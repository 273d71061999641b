//! Today's round: what to do on the walk, in the order one walks, from everything the book knows. Pure and total; on a
//! past or a coming day it is the round of that day's Picture.

mod counts;
mod done;
mod field;
mod going_out;
mod ground;
mod growth;
pub mod intervals;
mod seed;
mod steps;
pub mod stop;
mod walk;

pub use done::written_for;
pub use stop::{AtStake, ForTray, LastLook, NextStep, RoundReason, Stake, Stop, Task, ToBed, WalkOrder, Where};

use std::cmp::Ordering;
use std::collections::{BTreeMap, BTreeSet};

use super::picture::Picture;
use crate::nursery::entry::subject::Subject;
use intervals::{GAUGE_SOURCE, MARKED_STOPS, WALK_MINUTES};
use walk::Walk;

/// The round of a day.
#[derive(Clone, PartialEq, Debug)]
pub struct Round {
    /// The stops, in the order one walks.
    pub stops: Vec<Stop>,
    /// What is due too and can wait, what loses most first.
    pub can_wait: Vec<Stop>,
    /// Minutes that the stops take.
    pub minutes: f64,
    /// Minutes a walk may take.
    pub minutes_allowed: f64,
}

/// The round of a Picture's day.
pub fn round(picture: &Picture) -> Round {
    let mut due = due(picture);
    mark(&mut due);
    let minutes_allowed = minutes_allowed(picture);
    let (mut stops, can_wait) = cut(due, minutes_allowed);
    in_walking_order(&mut stops);
    let minutes = stops.iter().map(|stop| stop.minutes).sum();
    Round { stops, can_wait, minutes, minutes_allowed }
}

/// Everything due, each id once, without what was let go.
fn due(picture: &Picture) -> Vec<Stop> {
    let walk = Walk { picture, going: going_out::going(picture) };
    let mut all: Vec<Stop> = gauge(&walk).into_iter().collect();
    all.extend(going_out::go_out(&walk));
    all.extend(going_out::last_days(&walk));
    all.extend(counts::counts(&walk));
    all.extend(counts::stop_waiting(&walk));
    all.extend(counts::prick_out(&walk));
    all.extend(growth::size_and_roots(&walk));
    all.extend(steps::steps(&walk));
    all.extend(steps::treatments_over(&walk));
    // Rings around living plants before the weeding of what is still to come.
    all.extend(field::field(&walk));
    all.extend(ground::ground(&walk));
    all.extend(seed::seed(&walk));
    let given_up = |stop: &Stop| picture.site.given_up.iter().any(|task| task.holds(&stop.id, picture.day));
    let mut seen = BTreeSet::new();
    all.retain(|stop| !given_up(stop) && seen.insert(stop.id.clone()));
    all
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

/// Keeps what loses most for each minute, as far as the minutes go; the gauge is always read.
fn cut(mut due: Vec<Stop>, minutes_allowed: f64) -> (Vec<Stop>, Vec<Stop>) {
    let worth = |stop: &Stop| stop.at_stake.plants_per_day() / stop.minutes.max(0.1);
    due.sort_by(|a, b| {
        let first = |stop: &Stop| stop.task == Task::Gauge;
        first(b).cmp(&first(a)).then_with(|| worth(b).total_cmp(&worth(a))).then_with(|| most_lost(a, b))
    });
    let (mut kept, mut can_wait) = (Vec::new(), Vec::new());
    let mut left = minutes_allowed;
    for stop in due {
        if stop.minutes <= left + 1e-9 {
            left -= stop.minutes;
            kept.push(stop);
        } else {
            can_wait.push(stop);
        }
    }
    can_wait.sort_by(most_lost);
    (kept, can_wait)
}

/// The order of the walk; at one place the tray or bed that loses most comes first and all its tasks with it.
fn in_walking_order(stops: &mut [Stop]) {
    let mut of_subject: BTreeMap<Subject, f64> = BTreeMap::new();
    for stop in stops.iter() {
        let most = of_subject.entry(stop.subject.clone()).or_insert(0.0);
        *most = most.max(stop.at_stake.plants_per_day());
    }
    let most = |stop: &Stop| of_subject.get(&stop.subject).copied().unwrap_or(0.0);
    stops.sort_by(|a, b| {
        a.order
            .cmp(&b.order)
            .then_with(|| most(b).total_cmp(&most(a)))
            .then_with(|| a.subject.cmp(&b.subject))
            .then_with(|| most_lost(a, b))
    });
}
