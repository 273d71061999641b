//! Ground work: cleared, holes, weeded must be done; mulch and a fence advise. Work not written down is not done.

use super::eaten::{BrokenIn, beside, broken_in};
use super::positions::part_seen;
use crate::base::Day;
use crate::nursery::entry::types::GroundTask;
use crate::nursery::species::Profile;
use crate::reckon::picture::quantity::WorkWithin;
use crate::reckon::picture::question::Known;
use crate::reckon::picture::{Basis, Criterion, Question, Source};
use crate::reckon::stock::{BedStory, PartOfBed, WorkDone};

/// Days for which a cleared bed stays cleared. Ours, common practice.
pub(crate) const CLEARED_LASTS_DAYS: i32 = 60;
/// Days after a clearing within which a weeding of the whole bed keeps it clear: later it has grown back to brush. Ours.
pub(crate) const WEEDED_KEEPS_CLEAR_DAYS: i32 = 180;
/// Days for which a dug hole keeps its wall and depth. Ours, common practice.
pub(crate) const HOLES_LAST_DAYS: i32 = 180;
/// Days for which a weeded ring stays clean. Ours, common practice.
pub(crate) const WEEDED_LASTS_DAYS: i32 = 30;
/// Days for which mulch covers the ground. Ours, common practice.
pub(crate) const MULCHED_LASTS_DAYS: i32 = 120;
/// Days for which a fence holds without another look. Ours, common practice.
pub(crate) const FENCED_LASTS_DAYS: i32 = 730;

/// A hole that is written as less deep than this, or than the container of the species, is too shallow: the ball stands out of it, or
/// its tap root is bent, cm. Ours.
pub(crate) const LEAST_HOLE_CM: f64 = 15.0;

/// The question of a kind of ground work.
type AskedOf = fn(Known<WorkWithin, Option<Day>>) -> Question;

/// Every kind of ground work with its question and how many days it lasts, in the order of the work.
const TASKS: [(GroundTask, AskedOf, i32); 5] = [
    (GroundTask::Cleared, Question::Cleared, CLEARED_LASTS_DAYS),
    (GroundTask::Holes, Question::Holes, HOLES_LAST_DAYS),
    (GroundTask::Weeded, Question::Weeded, WEEDED_LASTS_DAYS),
    (GroundTask::Mulched, Question::Mulched, MULCHED_LASTS_DAYS),
    (GroundTask::Fenced, Question::Fenced, FENCED_LASTS_DAYS),
];

/// One question for each kind of ground work.
pub(crate) fn criteria(
    story: &BedStory,
    profile: Option<&Profile>,
    (rows, broken_into): (Option<u32>, Option<&BrokenIn>),
    day: Day,
) -> impl Iterator<Item = Criterion> {
    TASKS.into_iter().map(move |(task, question, lasts_days)| {
        let ball_cm = ball_cm(task, profile);
        let done = last(story, task, lasts_days, day, ball_cm);
        let shallow = too_shallow(story, done, lasts_days, day).filter(|_| task == GroundTask::Holes);
        let at_least_cm = shallow.map(|_| ball_cm.unwrap_or(LEAST_HOLE_CM));
        let of_fence = || task == GroundTask::Fenced;
        let broken = of_fence().then(|| broken_in(story, day)).flatten();
        let near = of_fence().then(|| beside(story, broken_into, day)).flatten().filter(|_| broken.is_none());
        let needed = WorkWithin {
            task,
            days: lasts_days,
            at_least_cm,
            eaten_on: broken.as_ref().map(|broken| broken.on),
            eaten_beside_on: near.map(|near| near.on),
        };
        let kept = done.and_then(|done| keeps_clear(story, done, day));
        let criterion = criterion((shallow.or(done), kept), question, needed, rows, day);
        let criterion = criterion.resting_on(broken.iter().chain(near).map(|broken| broken.entry.clone()));
        match task {
            GroundTask::Fenced if broken.is_some_and(|broken| !broken.guarded) => criterion,
            GroundTask::Mulched | GroundTask::Fenced => criterion.advising(),
            GroundTask::Cleared | GroundTask::Holes | GroundTask::Weeded => criterion,
        }
    })
}

/// How deep the ball of a species is that goes into a hole, cm; none of other work, and where nobody knows it.
fn ball_cm(task: GroundTask, profile: Option<&Profile>) -> Option<f64> {
    let depth = profile.and_then(|profile| profile.container_depth_cm.as_ref()).filter(|_| task == GroundTask::Holes);
    depth.map(|figure| figure.value)
}

/// Whether work is as deep as the ball that goes in, where its depth was written.
fn is_deep(work: &WorkDone, ball_cm: Option<f64>) -> bool {
    let least_cm = ball_cm.map_or(LEAST_HOLE_CM, |ball_cm| ball_cm.max(LEAST_HOLE_CM));
    work.depth_cm.is_none_or(|depth| depth >= least_cm)
}

/// The last time a work was done. While one of the whole bed lasts it leads over a newer one of some rows, which only
/// adds to it.
fn last(story: &BedStory, task: GroundTask, lasts_days: i32, day: Day, ball_cm: Option<f64>) -> Option<&WorkDone> {
    let of_task = story.work.iter().filter(|work| work.task == task && work.day <= day && is_deep(work, ball_cm));
    let whole_lasts = |work: &WorkDone| work.part.is_none() && day.days_since(work.day) <= lasts_days;
    of_task.max_by_key(|work| (whole_lasts(work), work.day, work.part.is_none()))
}

/// The parts of a bed in which work that plants need was done and lasts, for each kind of work that lasts in no whole bed.
pub(super) fn parts_ready<'a>(story: &'a BedStory, profile: Option<&Profile>, day: Day) -> Vec<Vec<&'a PartOfBed>> {
    let kinds = TASKS.into_iter().filter(|(task, ..)| !matches!(task, GroundTask::Mulched | GroundTask::Fenced));
    let of_kind = kinds.filter_map(|(task, _, lasts_days)| {
        let ball_cm = ball_cm(task, profile);
        let lasts = |work: &&WorkDone| (0..=lasts_days).contains(&day.days_since(work.day)) && is_deep(work, ball_cm);
        let of_task = || story.work.iter().filter(|work| work.task == task);
        // What was cleared as a whole and is kept clear by weeding stays so.
        let kept = task == GroundTask::Cleared && of_task().any(|work| keeps_clear(story, work, day).is_some());
        let lasting = of_task().filter(|_| !kept).filter(lasts);
        lasting.map(|work| work.part.as_ref()).collect::<Option<Vec<_>>>().filter(|parts| !parts.is_empty())
    });
    of_kind.collect()
}

/// The weeding of a whole bed that keeps its clearing: what had grown back is out.
fn keeps_clear<'a>(story: &'a BedStory, cleared: &WorkDone, day: Day) -> Option<&'a WorkDone> {
    let weeded = story.work.iter().filter(|work| work.task == GroundTask::Weeded && work.part.is_none());
    let since = |work: &&WorkDone| (0..=WEEDED_KEEPS_CLEAR_DAYS).contains(&work.day.days_since(cleared.day));
    let lasts = |work: &&WorkDone| (0..=CLEARED_LASTS_DAYS).contains(&day.days_since(work.day));
    let is_whole = cleared.task == GroundTask::Cleared && cleared.part.is_none();
    weeded.filter(since).filter(lasts).max_by_key(|work| work.day).filter(|_| is_whole)
}

/// Holes that would still last and that are too shallow: where none that last are deep enough, or the whole bed was found so since.
fn too_shallow<'a>(story: &'a BedStory, deep: Option<&WorkDone>, lasts_days: i32, day: Day) -> Option<&'a WorkDone> {
    let lasts = |work: &WorkDone| (0..=lasts_days).contains(&day.days_since(work.day));
    let holes = story.work.iter().filter(|work| work.task == GroundTask::Holes && work.depth_cm.is_some());
    let newest = holes.filter(|work| lasts(work)).max_by_key(|work| work.day);
    let since = |work: &WorkDone| deep.is_some_and(|deep| work.part.is_none() && work.day > deep.day);
    newest.filter(|work| !deep.is_some_and(lasts) || since(work))
}

/// The work of a kind that still lasts on a day, of the whole bed or of a part.
pub(super) fn lasts(story: &BedStory, task: GroundTask, day: Day) -> Option<&WorkDone> {
    let (.., lasts_days) = TASKS.into_iter().find(|(of, ..)| *of == task)?;
    last(story, task, lasts_days, day, None).filter(|done| day.days_since(done.day) <= lasts_days)
}

fn criterion(
    (done, kept): (Option<&WorkDone>, Option<&WorkDone>),
    question: AskedOf,
    needed: WorkWithin,
    rows: Option<u32>,
    day: Day,
) -> Criterion {
    let source = Source::GroundWork { lasts_days: needed.days };
    let Some(done) = done else {
        return Criterion::found(question, needed, None, Basis::Assumed, false, source);
    };
    let is_recent = day.days_since(done.day) <= needed.days;
    let kept = kept.filter(|_| !is_recent);
    let eaten = needed.eaten_on.or(needed.eaten_beside_on).is_some();
    let lasts = (is_recent || kept.is_some()) && needed.at_least_cm.is_none() && !eaten;
    let criterion = Criterion::found(question, needed, Some(done.day), Basis::Measured, lasts, source)
        .resting_on([done].into_iter().chain(kept).map(|work| work.entry.clone()));
    // Done in some rows only: it counts, and says so.
    if lasts { criterion.seen_in_part(part_seen(done.part.as_ref(), rows)) } else { criterion }
}
