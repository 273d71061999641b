//! Whether a tray is hardened: the clock starts at the first step to more light, a soft flush restarts it, shade put back
//! up stops it. Plants that have stood long in one light are hardened to that light, and rarer water alone hardens for no
//! brighter place.

use crate::base::{Day, EntryId};
use crate::nursery::entry::types::{ArrivedFrom, MovedHow};
use crate::nursery::species::{Profile, Role};
use crate::reckon::picture::quantity::{DaysAtLeast, Hardened};
use crate::reckon::picture::{Basis, Criterion, Gap, Question, RuleSource};
use crate::reckon::stock::{Origin, TrayStory};
use crate::reckon::tray::exposure::{FITS_UP_TO, brightest_from};
use crate::reckon::tray::light::{
    LAST_LIGHT_DAYS, LastLight, Stretch, as_if_back, comes_on, in_sun, joined_in, shaded_days, stood_until,
};

/// Least length of hardening, days: three weeks, the low end of what is published (3-4 weeks, Malawi moringa guide; 4-6
/// weeks, Tearfund, Pillars agroforestry guide F14). Shorter only where the species' own template is.
pub(crate) const LEAST_DAYS: i32 = 21;
/// The last step must be at least this old, days (common practice: a step every 7-10 days).
pub const LAST_STEP_DAYS: i32 = 7;
/// Length where the profile has no template, days (common practice: 4-6 weeks; Tearfund Pillars guide F14).
const USUAL_TEMPLATE_DAYS: f64 = 28.0;
/// Light from which a tray stands in the open, a share of the open light (ours).
const OPEN_LIGHT: f64 = 0.90;
/// Fresh roots and grafts stand in no more light than this, a share of the open light. Ours: half shade, and a tenth for what a cloth lets
/// through more.
pub(crate) const RESTS_UP_TO: f64 = 0.60;
/// A change of light smaller than this share is no step (ours: a shade cloth moved by a hand's breadth).
pub(crate) const SMALLEST_STEP: f64 = 0.02;

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
    /// Whether the light changed toward the outside.
    stepped: bool,
    /// The day of the step that began it, where that was too large.
    pub leapt: Option<Day>,
    /// Whether somebody said aloud that hardening began.
    pub said: bool,
    /// The day on which somebody said so, where no change of light has come with it.
    pub said_alone: Option<Day>,
    /// The entries it rests on.
    pub entries: Vec<EntryId>,
}

/// The template of a species, days: what is advised. 0 where it goes out soft and is not hardened: its profile says so,
/// or it is a nurse plant whose profile says nothing.
pub(crate) fn template_days(profile: Option<&Profile>) -> i32 {
    let written = profile.and_then(|profile| profile.hardening_days.as_ref()).map(|figure| figure.value);
    let nurse = profile.is_some_and(|profile| profile.role == Role::Nurse);
    let unsaid = if nurse { 0.0 } else { USUAL_TEMPLATE_DAYS };
    written.unwrap_or(unsaid).round() as i32
}

/// Length of hardening below which a tray is held back, days: the template, at most [`LEAST_DAYS`].
pub fn length_days(profile: Option<&Profile>) -> i32 {
    template_days(profile).min(LEAST_DAYS)
}

enum Step {
    /// Outward, to a light.
    Outward(f64),
    /// Outward to a light, and further than plants take at once.
    Leap(f64),
    /// Back from a light, in which they had stood for so many days.
    Back {
        was: f64,
        stood_days: i32,
    },
    Flush,
    Said,
}

/// The clock, from everything written down, of plants whose hardening takes so many days. A few days in the shade stop it for these days.
pub fn clock(story: &TrayStory, history: &[Stretch], length: i32, day: Day) -> HardeningClock {
    let history = as_if_back(history, day);
    let mut clock = run(steps_of(story, &history, day), length);
    clock.started = clock.started.map(|on| on.plus(shaded_days(&history, on, day)).min(day.max(on)));
    clock
}

fn steps_of(story: &TrayStory, history: &[Stretch], day: Day) -> Vec<(Day, u8, Step, EntryId)> {
    let mut steps: Vec<(Day, u8, Step, EntryId)> = Vec::new();
    for pair in history.windows(2) {
        let [before, after] = pair else { continue };
        // Moving on into a tray begins no hardening.
        if !after.step || before.in_other_tray {
            continue;
        }
        let both = before.nominal.zip(after.nominal).or_else(|| before.light.zip(after.light));
        let (Some((was, is)), Some(entry)) = (both, after.entries.first()) else { continue };
        if is > was + SMALLEST_STEP {
            let lights = before.light.zip(after.light);
            let leaps = lights.is_some_and(|(was, is)| is > brightest_from(was) + 1e-9);
            let step = if leaps { Step::Leap(is) } else { Step::Outward(is) };
            steps.push((after.from, 1, step, entry.clone()));
        } else if is < was - SMALLEST_STEP {
            let stood_days = stood_until(history, after.from, before.light.unwrap_or(was));
            steps.push((after.from, 0, Step::Back { was, stood_days }, entry.clone()));
        }
    }
    // What only a few have holds the others back no more than on the bench.
    let last_flush = story.last_flush().map(|flush| flush.from);
    let flushes = story.flushes.iter().filter(|flush| last_flush.is_some_and(|last| flush.from <= last));
    steps.extend(flushes.map(|flush| (flush.from, 2, Step::Flush, flush.entry.clone())));
    // What was said before others were put to them is not said of those.
    let joined_on = joined_in(history).map(|joined| joined.on);
    let said = story.hardening_begun.iter().filter(|begun| joined_on.is_none_or(|on| begun.from >= on));
    steps.extend(said.map(|begun| (begun.from, 3, Step::Said, begun.entry.clone())));
    steps.retain(|(at, ..)| *at <= day);
    steps.sort_by(|a, b| (a.0, a.1, &a.3).cmp(&(b.0, b.1, &b.3)));
    steps
}

/// What hardened plants before they were brought back into the shade.
struct Kept {
    /// Since when they have stood in the shade.
    since: Day,
    /// The light before.
    light: f64,
    /// For how long they were hardened to it, days.
    days: i32,
}

impl Kept {
    /// Of the days of hardening before, those that are left: after so many days in the shade they harden as many anew.
    fn left(kept: Option<&Kept>, on: Day, light: f64) -> i32 {
        let had_it = kept.filter(|kept| light <= kept.light + SMALLEST_STEP);
        had_it.map_or(0, |kept| (kept.days - on.days_since(kept.since)).max(0))
    }
}

fn run(steps: Vec<(Day, u8, Step, EntryId)>, length: i32) -> HardeningClock {
    let mut clock = HardeningClock::default();
    let mut kept: Option<Kept> = None;
    for (at, _, step, entry) in steps {
        match step {
            Step::Outward(light) => {
                clock.started = clock.started.or(Some(at.plus(-Kept::left(kept.as_ref(), at, light))));
                kept = kept.filter(|kept| light < kept.light - SMALLEST_STEP);
                (clock.last_step, clock.stepped, clock.said_alone) = (Some(at), true, None);
                clock.put_back = None;
            }
            // It hardens from the day on which what it scorched shows, where nothing hardened before.
            Step::Leap(light) => {
                if clock.started.is_none() {
                    clock.started = Some(at.plus(LAST_LIGHT_DAYS - Kept::left(kept.as_ref(), at, light)));
                    clock.leapt = Some(at);
                }
                kept = kept.filter(|kept| light < kept.light - SMALLEST_STEP);
                (clock.last_step, clock.stepped, clock.said_alone) = (Some(at), true, None);
                clock.put_back = None;
            }
            Step::Said => {
                clock.started = clock.started.or(Some(at));
                clock.last_step = clock.last_step.or(Some(at));
                clock.said = true;
                clock.said_alone = clock.said_alone.or(Some(at)).filter(|_| !clock.stepped);
            }
            Step::Back { was, stood_days } => {
                let ran_days = clock.started.map_or(0, |started| at.days_since(started));
                let days = ran_days.max(stood_days).clamp(0, length);
                kept = kept.or(Some(Kept { since: at, light: was, days }));
                if clock.started.is_none() {
                    continue;
                }
                clock = HardeningClock { put_back: Some(at), ..HardeningClock::default() };
            }
            Step::Flush => {
                if clock.started.is_none() {
                    continue;
                }
                clock.started = clock.started.max(Some(at));
            }
        }
        clock.entries.push(entry);
    }
    clock
}

/// Since when the plants have stood in the light they stand in now, with the entries that say so: since the last change of
/// light, or before the book began where somebody wrote it or the nursery's own plants came in with their age.
fn stood_since(story: &TrayStory, history: &[Stretch]) -> Option<(Day, Vec<EntryId>)> {
    let now = history.last()?;
    let light = now.light?;
    // Better days than these harden as well.
    let in_light = |was: f64| was >= light - SMALLEST_STEP;
    // Who was potted on where it stood has stood in that light before.
    let here = |stretch: &Stretch| !stretch.in_other_tray || story.moved_how == Some(MovedHow::PottedOn);
    let same = |stretch: &&Stretch| here(stretch) && stretch.light.is_some_and(in_light);
    let run = history.iter().rev().take_while(same).count();
    let (earlier, here) = history.split_at(history.len() - run);
    let first = here.first()?;
    let mut since = first.from;
    let mut entries = now.entries.clone();
    // Plants carried on the day they were written down stood elsewhere before.
    if let Some(Origin::Received { day: arrived, from, age_days, stands_since, entry, .. }) = &story.origin
        && first.from <= *arrived
        && joined_in(history).is_none()
        && earlier.iter().all(|stretch| stretch.from < *arrived)
        && !carried_on(story, *arrived)
    {
        let by_age = age_days.filter(|_| *from == ArrivedFrom::Opening).map(|age| arrived.plus(-age));
        since = stands_since.or(by_age).unwrap_or(*arrived).min(since.max(*arrived));
        entries.push(entry.clone());
    }
    // Leaves made since a flush have not stood there longer than the flush.
    if let Some(flush) = story.last_flush().filter(|flush| flush.from > since) {
        since = flush.from;
        entries.push(flush.entry.clone());
    }
    Some((since, entries))
}

/// Whether plants stood in more light than today's on a day or later.
fn stood_brighter(history: &[Stretch], since: Day) -> bool {
    let light = history.last().and_then(|now| now.light);
    let brighter = |stretch: &Stretch| stretch.light.zip(light).is_some_and(|(was, is)| was > is + SMALLEST_STEP);
    history.iter().any(|stretch| stretch.from >= since && brighter(stretch))
}

/// Whether plants were carried from one place to another on a day.
fn carried_on(story: &TrayStory, day: Day) -> bool {
    let mut places = story.places.iter().filter(|spell| spell.from == day).map(|spell| &spell.what);
    let first = places.next();
    places.any(|place| Some(place) != first)
}

/// What a tray's hardening is judged with.
#[derive(Clone, Copy)]
pub struct Asked<'a> {
    /// The tray.
    pub story: &'a TrayStory,
    /// Its species.
    pub profile: Option<&'a Profile>,
    /// Its clock.
    pub clock: &'a HardeningClock,
    /// The light it stood in.
    pub history: &'a [Stretch],
    /// The day on which its plants are old enough to go, where their age is known.
    pub old_enough_on: Option<Day>,
    /// Until when its plants stay in the shade for their roots or their grafts, where they do.
    pub rests_until: Option<Day>,
    /// The day.
    pub day: Day,
}

/// The criterion `hardening` towards the light of a bed: where that is no brighter than the plants' last days there is
/// nothing to harden for, however short they stand. Of plants whose light was not known through these days nothing is
/// taken for granted.
pub(crate) fn toward_bed(asked: &Asked<'_>, last: Option<&LastLight>, bed: f64) -> Criterion {
    let judged = criterion(asked, Some(bed));
    // Plants that came there by too large a step are not hardened by having come there.
    let no_brighter = |last: &LastLight| {
        last.known_days >= LAST_LIGHT_DAYS && last.leap.is_none() && bed <= last.share + SMALLEST_STEP
    };
    if judged.met() == Some(true) {
        return judged;
    }
    match last.filter(|last| no_brighter(last)) {
        Some(last) => {
            let (needed, known) = (DaysAtLeast(0), Hardened::NoBrighter);
            Criterion::found(Question::Hardening, needed, known, Basis::Reckoned, true, SOURCE)
                .resting_on(last.entries.iter().cloned())
        }
        // Where they stand in such light already the mean of their days comes up to it.
        None => {
            let stands = asked.history.last().and_then(|now| now.light).is_some_and(|now| bed <= now + SMALLEST_STEP);
            let comes = stands.then(|| comes_on(asked.history, asked.day, no_brighter)).flatten();
            let expected = [judged.expected, comes].into_iter().flatten().min();
            judged.expected_on(expected)
        }
    }
}

/// How far it is from the light the plants stand in to where they go.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Way {
    /// No brighter.
    NoStep,
    /// A step that fits without care: plants that stood long in their light take it.
    SmallStep,
    /// No more than a small step from the least light of these weeks, though they have been brought nearer since.
    StepsTaken,
    /// To be hardened for, or not known.
    Step,
}

fn way(light: Option<f64>, toward: Option<f64>) -> Way {
    let Some(light) = light else { return Way::Step };
    match toward {
        // In the open there is no step left to take.
        _ if light >= OPEN_LIGHT => Way::NoStep,
        Some(toward) if toward <= light + SMALLEST_STEP => Way::NoStep,
        Some(toward) if toward <= light * FITS_UP_TO + 1e-9 => Way::SmallStep,
        Some(_) | None => Way::Step,
    }
}

/// The criterion `hardening` towards a light, as a share of the open light; none where that is not known.
pub fn criterion(asked: &Asked<'_>, toward: Option<f64>) -> Criterion {
    let history = as_if_back(asked.history, asked.day);
    let judged = judge(&Asked { history: &history, ..*asked }, toward);
    // Plants whose roots or grafts want shade do not harden where they stand in the sun.
    let rests = asked.rests_until.filter(|until| {
        let in_sun = history.last().and_then(|now| now.light).is_some_and(|light| light > RESTS_UP_TO);
        in_sun && asked.day < *until && judged.met() == Some(false)
    });
    let judged = match rests {
        Some(until) => {
            let needed = DaysAtLeast(length_days(asked.profile));
            Criterion::found(Question::Hardening, needed, Hardened::Rests(until), Basis::Reckoned, false, SOURCE)
                .resting_on(judged.entries)
        }
        None => judged,
    };
    judged.of_those(joined_in(&history))
}

fn judge(asked: &Asked<'_>, toward: Option<f64>) -> Criterion {
    let &Asked { story, profile, clock, history, day, .. } = asked;
    let (length, template) = (length_days(profile), template_days(profile));
    let needed = DaysAtLeast(length);
    if template == 0 {
        // Goes out soft: nothing to harden.
        let (needed, known) = (DaysAtLeast(0), Hardened::GoesSoft);
        return Criterion::found(Question::Hardening, needed, known, Basis::Assumed, true, SOURCE);
    }
    if let Some(leapt) = leapt(asked) {
        return leapt;
    }
    let light = history.last().and_then(|stretch| stretch.light);
    let way = way(light, toward);
    // Where the step into it was too large, standing there hardens from the day on which what it scorched shows.
    let leaps = |since: Day| clock.leapt == Some(since) && day.days_since(since) < length + LAST_LIGHT_DAYS;
    let from_then = |since: Day| if leaps(since) { since.plus(LAST_LIGHT_DAYS) } else { since };
    let stood = stood_since(story, history).map(|(since, entries)| {
        let since = from_then(since);
        (since.plus(shaded_days(history, since, day)), entries)
    });
    // Plants that stood as long as hardening lasts in a light no darker than where they go are hardened to it.
    if let Some((since, entries)) =
        stood.clone().filter(|(since, _)| way != Way::Step && day.days_since(*since) >= length)
    {
        let way = if stood_brighter(history, since) { Way::StepsTaken } else { way };
        return standing(asked, way, since, entries);
    }
    if let Some(alone) = said_alone(asked, way).filter(|_| toward.is_some() && light.is_some()) {
        return alone;
    }
    if let Some(started) = clock.started {
        // A step that needs no hardening needs none for having been taken on the bench.
        return match in_light_enough(asked, toward) {
            Some(since) => settled(asked, standing(asked, Way::StepsTaken, since, clock.entries.clone())),
            None => hardening_since(asked, started),
        };
    }
    if let Some(put_back) = clock.put_back {
        let known = Hardened::PutBack(put_back);
        return Criterion::found(Question::Hardening, needed, known, Basis::Reckoned, false, SOURCE)
            .resting_on(clock.entries.iter().cloned());
    }
    if light.is_none() {
        return Criterion::unknown(Question::Hardening, Some(needed), true, SOURCE);
    }
    if let Some(Origin::Received { day: arrived, stands_since, entry, .. }) = &story.origin
        && joined_in(history).is_none()
    {
        // What plants from elsewhere stood in before is not known; once they have stood here as long as hardening
        // lasts, that is their history.
        let since = stood.as_ref().map_or(*arrived, |(since, _)| *since);
        // They are hardened to that light, and to no brighter one.
        let hardens_to_it = way != Way::Step || toward.is_none();
        if hardens_to_it && day.days_since(since) >= length {
            return standing(asked, way, since, vec![entry.clone()]);
        }
        // A place they were carried to since is no news of the one before it.
        let known_since = history.iter().rev().take_while(|stretch| stretch.light.is_some()).last();
        let moved = known_since.is_some_and(|first| first.from < since && first.from >= *arrived);
        let length = if hardens_to_it { length } else { LAST_LIGHT_DAYS };
        if stands_since.is_none() && !moved && day < since.plus(length) {
            let gap = Gap::LightSince { since, until: since.plus(length) };
            return Criterion::lacking(Question::Hardening, Some(needed), Some(gap), true, SOURCE)
                .expected_on(Some(since.plus(length)))
                .resting_on([entry.clone()]);
        }
    }
    if let Some((since, entries)) = stood.filter(|_| way != Way::Step) {
        // There is no step left to take that hardens: standing there is hardening.
        let since = since.max(story.made_on.unwrap_or(since).min(day)).min(day);
        return standing(asked, way, since, entries);
    }
    // To end when the plants are old enough it need not begin before.
    let in_time = asked.old_enough_on.map(|on| on.plus(-template));
    let begins_on = in_time.max(asked.rests_until).filter(|on| day < *on);
    let known = begins_on.map_or(Hardened::For(0), Hardened::NotBefore);
    Criterion::found(Question::Hardening, needed, known, Basis::Reckoned, false, SOURCE)
        .resting_on(history.last().into_iter().flat_map(|stretch| stretch.entries.iter().cloned()))
}

/// That the step into its light was too large, and what it scorched has not shown yet, or nobody looked for it.
fn leapt(asked: &Asked<'_>) -> Option<Criterion> {
    let (clock, length) = (asked.clock, length_days(asked.profile));
    let unseen = in_sun(asked.story, asked.history).is_some();
    let on = clock.leapt.filter(|on| unseen || asked.day < on.plus(LAST_LIGHT_DAYS))?;
    let from = on.plus(LAST_LIGHT_DAYS).max(if unseen { asked.day.plus(1) } else { on });
    let until = clock.started.unwrap_or(from).max(from).plus(length);
    let known = Hardened::Leapt { on, from, days: until.days_since(from) };
    let found = Criterion::found(Question::Hardening, DaysAtLeast(length), known, Basis::Reckoned, false, SOURCE);
    Some(found.expected_on(Some(until)).resting_on(clock.entries.iter().cloned()))
}

/// The word alone hardens to no brighter light than that in which they stand.
fn said_alone(asked: &Asked<'_>, way: Way) -> Option<Criterion> {
    let (clock, needed) = (asked.clock, DaysAtLeast(length_days(asked.profile)));
    let known = Hardened::SaidAlone(clock.said_alone.filter(|_| way == Way::Step)?);
    let found = Criterion::found(Question::Hardening, needed, known, Basis::Reckoned, false, SOURCE);
    Some(found.resting_on(clock.entries.iter().cloned()))
}

/// Since when plants stood in no darker light than one from which it is a small step to where they go, where that is as long as
/// hardening lasts.
fn in_light_enough(asked: &Asked<'_>, toward: Option<f64>) -> Option<Day> {
    let toward = toward?;
    let in_enough = |light: f64| way(Some(light), Some(toward)) != Way::Step;
    let enough = |stretch: &&Stretch| !stretch.in_other_tray && stretch.light.is_some_and(in_enough);
    let since = asked.history.iter().rev().take_while(enough).last()?.from;
    // Leaves made since a flush have not stood there longer than the flush.
    let since = asked.story.last_flush().map_or(since, |flush| since.max(flush.from));
    // Nor have plants hardened in it that came into it by too large a step, before that shows.
    let since = asked.clock.leapt.map_or(since, |on| since.max(on.plus(LAST_LIGHT_DAYS)));
    let since = since.plus(shaded_days(asked.history, since, asked.day));
    (asked.day.days_since(since) >= length_days(asked.profile)).then_some(since)
}

/// Plants that only stood in their light since a day.
fn standing(asked: &Asked<'_>, way: Way, since: Day, entries: Vec<EntryId>) -> Criterion {
    let (length, advised) = (length_days(asked.profile), template_days(asked.profile));
    let days = asked.day.days_since(since);
    let met = days >= length;
    let short = met && days < advised;
    let known = match way {
        _ if !met => Hardened::StoodShort(days),
        _ if short => Hardened::BelowAdvice { days, advised, stood: true },
        Way::NoStep => Hardened::Stood(days),
        Way::SmallStep => Hardened::SmallStep(days),
        Way::StepsTaken => Hardened::StepsTaken(days),
        Way::Step => Hardened::StoodHere(days),
    };
    let found = Criterion::found(Question::Hardening, DaysAtLeast(length), known, Basis::Reckoned, met, SOURCE);
    let mut found = found.expected_on(Some(since.plus(length))).resting_on(entries);
    found.warns = short;
    found
}

/// Plants that are hardened, once their last step has settled.
fn settled(asked: &Asked<'_>, hardened: Criterion) -> Criterion {
    let Some(last) = asked.clock.last_step.filter(|last| asked.day.days_since(*last) < LAST_STEP_DAYS) else {
        return hardened;
    };
    let (needed, from) = (DaysAtLeast(length_days(asked.profile)), last.plus(LAST_STEP_DAYS));
    let fresh = Hardened::FreshStep { days: asked.day.days_since(last), last, from };
    Criterion::found(Question::Hardening, needed, fresh, Basis::Reckoned, false, SOURCE)
        .expected_on(Some(from))
        .resting_on(asked.clock.entries.iter().cloned())
}

/// Plants whose clock of hardening runs.
fn hardening_since(asked: &Asked<'_>, started: Day) -> Criterion {
    let &Asked { profile, clock, day, .. } = asked;
    let (length, advised) = (length_days(profile), template_days(profile));
    let days = day.days_since(started);
    let since_step = clock.last_step.map_or(days, |last| day.days_since(last));
    let from = started.plus(length).max(clock.last_step.map_or(started, |last| last.plus(LAST_STEP_DAYS)));
    let long = days >= length;
    let (known, met) = match clock.last_step {
        Some(last) if long && since_step < LAST_STEP_DAYS => (Hardened::FreshStep { days, last, from }, false),
        _ if long && days < advised => (Hardened::BelowAdvice { days, advised, stood: false }, true),
        // What took its last step so long ago no longer hardens: it stands there.
        _ if long && since_step >= advised => (Hardened::StoodHere(days.min(since_step)), true),
        _ if days == 0 && !long => (Hardened::BegunToday, false),
        _ => (Hardened::For(days), long),
    };
    let mut found = Criterion::found(Question::Hardening, DaysAtLeast(length), known, Basis::Reckoned, met, SOURCE)
        .expected_on(Some(from))
        .resting_on(clock.entries.iter().cloned());
    found.warns = matches!(known, Hardened::BelowAdvice { .. });
    found
}
