//! Whether a tray is hardened: the clock starts at the first step toward the outside, a soft flush restarts it, shade
//! put back up stops it.

use crate::base::{Day, EntryId};
use crate::nursery::species::Profile;
use crate::reckon::picture::{Basis, Criterion, Measure, Rule, RuleSource};
use crate::reckon::stock::{Origin, Places, TrayStory};
use crate::reckon::tray::light::Stretch;

/// Least length of hardening, days (ours, common practice).
pub(crate) const LEAST_DAYS: i32 = 7;
/// The last step must be at least this old, days (common practice: a step every 7-10 days).
pub const LAST_STEP_DAYS: i32 = 7;
/// Length where the profile has no template, days (common practice: 4-6 weeks; Tearfund Pillars guide F14).
const USUAL_TEMPLATE_DAYS: f64 = 28.0;
/// Light from which a tray stands in the open, a share of the open light (ours).
const OPEN_LIGHT: f64 = 0.90;
/// A change of light smaller than this share is no step (ours: a shade cloth moved by a hand's breadth).
const SMALLEST_STEP: f64 = 0.02;

const SOURCE: RuleSource = RuleSource::Hardening;

/// The hardening clock of a tray on a day.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct HardeningClock {
    /// The day it runs from.
    pub started: Option<Day>,
    /// The last step toward the outside.
    pub last_step: Option<Day>,
    /// The day the shade was put back up, where that stopped the clock.
    pub put_back: Option<Day>,
    /// Whether somebody said aloud that hardening began.
    pub said: bool,
    /// The entries it rests on.
    pub entries: Vec<EntryId>,
}

/// Length of hardening of a species, days: its template, at most a quarter of its usual days, at least 7.
pub fn length_days(profile: Option<&Profile>) -> i32 {
    let template = profile.and_then(|profile| profile.hardening_days.as_ref()).map_or(USUAL_TEMPLATE_DAYS, |f| f.value);
    let usual = profile.and_then(|profile| profile.plantable_usual_days.as_ref()).map(|figure| figure.value);
    let quarter = usual.map_or(template, |usual| (usual / 4.0).floor());
    (template.min(quarter).round() as i32).max(LEAST_DAYS)
}

enum Step {
    Outward,
    Back,
    Flush,
    Said,
}

/// The clock, from everything written down.
pub fn clock(story: &TrayStory, places: &Places, history: &[Stretch], day: Day) -> HardeningClock {
    let mut steps: Vec<(Day, u8, Step, EntryId)> = Vec::new();
    for pair in history.windows(2) {
        let [before, after] = pair else { continue };
        if !after.step {
            continue;
        }
        let both = before.nominal.zip(after.nominal).or_else(|| before.light.zip(after.light));
        let (Some((was, is)), Some(entry)) = (both, after.entries.first()) else { continue };
        if is > was + SMALLEST_STEP {
            steps.push((after.from, 1, Step::Outward, entry.clone()));
        } else if is < was - SMALLEST_STEP {
            steps.push((after.from, 0, Step::Back, entry.clone()));
        }
    }
    for (at, entry) in water_steps(story, places, day) {
        steps.push((at, 1, Step::Outward, entry));
    }
    steps.extend(story.flushes.iter().map(|flush| (flush.from, 2, Step::Flush, flush.entry.clone())));
    steps.extend(story.hardening_begun.iter().map(|begun| (begun.from, 3, Step::Said, begun.entry.clone())));
    steps.retain(|(at, ..)| *at <= day);
    steps.sort_by(|a, b| (a.0, a.1, &a.3).cmp(&(b.0, b.1, &b.3)));
    run(steps)
}

fn run(steps: Vec<(Day, u8, Step, EntryId)>) -> HardeningClock {
    let mut clock = HardeningClock::default();
    for (at, _, step, entry) in steps {
        match step {
            Step::Outward => {
                clock.started = clock.started.or(Some(at));
                clock.last_step = Some(at);
                clock.put_back = None;
            }
            Step::Said => {
                clock.started = clock.started.or(Some(at));
                clock.last_step = clock.last_step.or(Some(at));
                clock.said = true;
            }
            Step::Back => {
                if clock.started.is_none() {
                    continue;
                }
                clock = HardeningClock { put_back: Some(at), ..HardeningClock::default() };
            }
            Step::Flush => {
                if clock.started.is_none() {
                    continue;
                }
                clock.started = Some(at);
            }
        }
        clock.entries.push(entry);
    }
    clock
}

/// Days on which water became rarer, on the tray itself or at the place it stood in; before the first watering written
/// down, daily water is taken (common practice).
fn water_steps(story: &TrayStory, places: &Places, day: Day) -> Vec<(Day, EntryId)> {
    const DAILY: f64 = 1.0;
    let mut all: Vec<(Day, f64, EntryId)> =
        story.waterings.iter().map(|step| (step.from, step.what, step.entry.clone())).collect();
    for (i, spell) in story.places.iter().enumerate() {
        let until = story.places.get(i + 1).map_or(day.plus(1), |next| next.from);
        let steps = places.get(&spell.what).into_iter().flat_map(|place| &place.waterings);
        all.extend(
            steps
                .filter(|step| step.from >= spell.from && step.from < until)
                .map(|step| (step.from, step.what, step.entry.clone())),
        );
    }
    all.sort_by(|a, b| (a.0, &a.2).cmp(&(b.0, &b.2)));
    let mut was = DAILY;
    let mut steps = Vec::new();
    for (at, every, entry) in all {
        if every > was {
            steps.push((at, entry));
        }
        was = every;
    }
    steps
}

/// The criterion `hardening`.
pub fn criterion(
    story: &TrayStory,
    profile: Option<&Profile>,
    clock: &HardeningClock,
    history: &[Stretch],
    day: Day,
) -> Criterion {
    let length = length_days(profile);
    let needed = Measure::DaysAtLeast(length);
    let light_known = history.last().is_some_and(|stretch| stretch.light.is_some());
    if let Some(started) = clock.started {
        let days = day.days_since(started);
        let last_step_ok = clock.last_step.is_none_or(|last| day.days_since(last) >= LAST_STEP_DAYS);
        let settled = clock.last_step.map_or(started, |last| last.plus(LAST_STEP_DAYS));
        let known = match clock.last_step {
            Some(last) if days >= length && !last_step_ok => Measure::FreshStep { days, last },
            Some(_) | None => Measure::Days(days),
        };
        return Criterion::known(
            Rule::Hardening,
            needed,
            known,
            Basis::Reckoned,
            days >= length && last_step_ok,
            SOURCE,
        )
        .expected_on(Some(started.plus(length).max(settled)))
        .resting_on(clock.entries.iter().cloned());
    }
    if let Some(put_back) = clock.put_back {
        return Criterion::known(Rule::Hardening, needed, Measure::On(put_back), Basis::Reckoned, false, SOURCE)
            .resting_on(clock.entries.iter().cloned());
    }
    if !light_known {
        return Criterion::unknown(Rule::Hardening, Some(needed), true, SOURCE);
    }
    if let Some(Origin::Received { day: arrived, entry, .. }) = &story.origin {
        // What plants from elsewhere stood in before is not known; once they have stood here as long as hardening
        // lasts, that is their history.
        let here = day.days_since(*arrived);
        let from = arrived.plus(length);
        if here >= length {
            return Criterion::known(Rule::Hardening, needed, Measure::Days(here), Basis::Reckoned, true, SOURCE)
                .expected_on(Some(from))
                .resting_on([entry.clone()]);
        }
        return Criterion::unknown(Rule::Hardening, Some(needed), true, SOURCE)
            .expected_on(Some(from))
            .resting_on([entry.clone()]);
    }
    if let Some(open) = history.last().filter(|stretch| stretch.light.is_some_and(|light| light >= OPEN_LIGHT)) {
        // In the open there is no step left to take: standing there as long as hardening lasts is hardening.
        let days = day.days_since(open.from.max(story.made_on.unwrap_or(open.from)));
        let from = day.plus(length - days);
        return Criterion::known(Rule::Hardening, needed, Measure::Days(days), Basis::Reckoned, days >= length, SOURCE)
            .expected_on(Some(from))
            .resting_on(open.entries.iter().cloned());
    }
    Criterion::known(Rule::Hardening, needed, Measure::Days(0), Basis::Reckoned, false, SOURCE)
        .resting_on(history.last().into_iter().flat_map(|stretch| stretch.entries.iter().cloned()))
}
