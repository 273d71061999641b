//! What a verdict waits for: what blocks, what of it ends by itself, and when.

use std::cmp::Reverse;

use crate::base::Day;
use crate::reckon::bed::light_now::READING_LASTS_DAYS;
use crate::reckon::picture::quantity::{Beside, InContainer};
use crate::reckon::picture::question::{Ends, Question, Rule};
use crate::reckon::picture::{Criterion, Gap, Measure};
use crate::reckon::tray::hardening::LAST_STEP_DAYS;

/// How long what holds back is likely to last, the longest first.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
enum Lasts {
    /// Nobody can tell the end: plants, light or ground have to become other than they are.
    Open,
    /// Until a day.
    Until(Reverse<Day>),
    /// Until somebody does a day's work, or looks.
    Work,
    /// Until it rains: the work is done meanwhile.
    Rain,
    /// It follows from the others.
    Follows,
}

fn lasts(criterion: &Criterion, day: Day) -> Lasts {
    // What is not known and could be today is a look.
    if let Some(expected) = criterion.expected.filter(|expected| *expected > day || criterion.met().is_some()) {
        return Lasts::Until(Reverse(expected));
    }
    if criterion.met().is_none() {
        return Lasts::Work;
    }
    match criterion.rule().ends() {
        Ends::Open => Lasts::Open,
        // Begun today it would take so long.
        Ends::Begun => Lasts::Until(Reverse(day.plus(takes_days(criterion)))),
        Ends::WithRain => Lasts::Rain,
        Ends::Worked => Lasts::Work,
        Ends::WithOthers => Lasts::Follows,
    }
}

/// Days that hardening takes; a step of light is followed by the days until the next.
pub(crate) fn takes_days(criterion: &Criterion) -> i32 {
    let needed = criterion.needed();
    if let Some(Measure::DaysAtLeast(days)) = needed { days } else { LAST_STEP_DAYS }
}

/// The questions that hold things back on a day: a treatment still at work before all, for nobody touches the plants then; else
/// what lasts longest first, the season before the weeding.
pub(crate) fn waits_for(criteria: &[Criterion], day: Day) -> Vec<&Criterion> {
    let mut blocking: Vec<&Criterion> = criteria.iter().filter(|criterion| criterion.blocks).collect();
    let far_season = blocking.iter().any(|criterion| is_far_season(criterion, day));
    let lasts = |criterion: &Criterion| match far_season && is_too_dark(criterion) {
        true => Lasts::Work,
        false => lasts(criterion, day),
    };
    blocking.sort_by_key(|criterion| (!leads(criterion, day), !outgrows_seedbed(criterion), lasts(criterion)));
    blocking
}

/// Shade that is cut when the rains come: in the dry months it stays.
fn is_too_dark(criterion: &Criterion) -> bool {
    let Question::LightNow(light) = &criterion.question else { return false };
    light.found().is_some_and(|found| !found.met && found.known.share < found.needed.least)
}

/// Rains that are farther away than a reading of light lasts.
fn is_far_season(criterion: &Criterion, day: Day) -> bool {
    let far = |from: Day| from.days_since(day) > READING_LASTS_DAYS;
    criterion.rule() == Rule::Season && criterion.expected.is_some_and(far)
}

/// All questions, what holds back first, as [`waits_for`] has it, and the others in the order in which they are asked.
pub(crate) fn longest_first(criteria: &[Criterion], day: Day) -> Vec<Criterion> {
    let others = criteria.iter().filter(|criterion| !criterion.blocks);
    waits_for(criteria, day).into_iter().chain(others).cloned().collect()
}

/// Seedlings that grow into one another wait for nothing but to be pricked out: age and hardening come after that.
fn outgrows_seedbed(criterion: &Criterion) -> bool {
    let Question::DaysInContainer(container) = &criterion.question else { return false };
    container.found().is_some_and(|found| !found.met && matches!(found.known, InContainer::Seedbed(_)))
}

/// A treatment of a bed so long ago of which nobody wrote the time is a label to be read, and no longer leads. Ours: labels keep people
/// out for up to a month (from memory).
const OLD_TREATMENT_DAYS: i32 = 30;

fn leads(criterion: &Criterion, day: Day) -> bool {
    let old = match criterion.gap() {
        Some(Gap::NoWaitingTime { day: used, beside: Some(Beside::Bed | Beside::Plants(_)), .. }) => {
            day.days_since(*used) > OLD_TREATMENT_DAYS
        }
        _ => false,
    };
    criterion.rule() == Rule::Treated && !old
}

/// The day on which the last of the questions that block is expected to be met; none where one has no such day, or
/// nothing blocks.
pub(crate) fn lasts_until(criteria: &[Criterion]) -> Option<Day> {
    let mut latest = None;
    for criterion in criteria.iter().filter(|criterion| criterion.blocks) {
        latest = latest.max(Some(criterion.expected?));
    }
    latest
}
