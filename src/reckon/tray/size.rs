//! Whether the plants of a tray are big enough: a tray is a spread, not a yes or no.

use std::borrow::Cow;

use crate::base::{Day, Range};
use crate::nursery::entry::MeasuredPlant;
use crate::nursery::entry::types::PlantForm;
use crate::nursery::species::{Figure, Flag, Profile, Role, Stem};
use crate::reckon::picture::quantity::{CollarRule, HeightBand, LeavesAtLeast, Sample};
use crate::reckon::picture::question::Known;
use crate::reckon::picture::{Basis, Criterion, Gap, Question, RuleSource, SampleUnit, Source};
use crate::reckon::stock::{Origin, SampleLook, TrayStory};
use crate::reckon::tray::exposure::stands_any_light;
use crate::reckon::tray::hold::is_stake;
use crate::reckon::tray::time;
use crate::science::{quality, sampling};

/// A sample of plants that grow tells of their size for so many days: 8 weeks (ours; 6 to 8 weeks).
pub(crate) const SAMPLE_LASTS_DAYS: i32 = 56;

/// Plants in one load (ours): fewer are one when no more stand there.
pub(crate) const LOAD_PLANTS: u32 = 5;
/// Level of the interval around the share of a sample that passes.
const SAMPLE_LEVEL: f64 = 0.90;

/// Share of an unmeasured tray that can be planted, as (low, likely, high), at the species' least and at its usual days
/// (ours: usual culls of 10-25 % and a wide doubt; common practice). Never 100 %.
const SHARE_AT_LEAST: (f64, f64, f64) = (0.10, 0.40, 0.80);
const SHARE_AT_USUAL: (f64, f64, f64) = (0.50, 0.80, 0.95);
/// The same of nurse plants that go out soft: they are not graded. Ours.
const SHARE_OF_NURSES: (f64, f64, f64) = (0.70, 0.90, 1.0);
/// The same where the age is unknown too.
const SHARE_OF_UNKNOWN_AGE: (f64, f64, f64) = (0.20, 0.65, 0.95);

/// What can be planted of a tray, as a share of what stands.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct PlantableShare {
    /// Low, likely, high.
    pub share: Range,
    /// Measured from a sample, or reckoned from the age.
    pub basis: Basis,
}

/// Grafted and budded plants may stand so tall, cm: they leave the nursery at 60 to 100 cm (Nakasone & Paull 1998, Tropical
/// Fruits, from memory). A profile's heights are those of seedlings.
pub(crate) const GRAFTED_MOST_CM: f64 = 100.0;

/// A collar floor that no publication gives asks for care where more than this share of a sample is under it. Ours: some thin ones
/// stand in every tray.
const UNDER_FLOOR_SHARE: f64 = 0.10;

/// Where nobody knows the size of a species, its seedlings are asked for that of others, cm. Ours: the least height of the trees whose figure
/// is known is mostly 15 to 30 (the profiles).
pub(crate) const ANY_LEAST_CM: f64 = 15.0;
const ANY_MOST_CM: f64 = 100.0;

/// Whether nothing says when seedlings of a species are large or old enough: no least height, collar, leaves or days.
fn has_no_size(profile: Option<&Profile>) -> bool {
    let any = |profile: &Profile| {
        [&profile.height_least_cm, &profile.collar_floor_mm, &profile.leaves_least, &profile.plantable_least_days]
            .into_iter()
            .any(Option::is_some)
    };
    profile.is_some_and(|profile| profile.role == Role::Nursery && !any(profile)) && !stands_any_light(profile)
}

struct Limits {
    height: Option<(f64, f64)>,
    collar_floor_mm: Option<f64>,
    floor_is_published: bool,
    height_source: Source,
    collar_source: Source,
}

fn limits(profile: Option<&Profile>, story: &TrayStory) -> Limits {
    let least = profile.and_then(|profile| profile.height_least_cm.as_ref());
    let most = profile.and_then(|profile| profile.height_most_cm.as_ref());
    let stump = is_stake(story, profile);
    let collar_rule = has_collar_rule(story) && !stump;
    let taller = |most: f64| if story.is_grafted() { most.max(GRAFTED_MOST_CM) } else { most };
    let floor = profile.and_then(|profile| profile.collar_floor_mm.as_ref());
    let soft = profile.and_then(|profile| profile.stem.as_ref()).is_some_and(|stem| stem.value == Stem::Soft);
    let source = |figure: Option<&Figure<f64>>| figure.map_or_else(String::new, |figure| figure.source.clone());
    let of_species = least.zip(most).map(|(least, most)| (least.value, taller(most.value)));
    let any = has_no_size(profile).then_some((ANY_LEAST_CM, ANY_MOST_CM));
    Limits {
        // A stump is cut to its length: the height of a seedling says nothing of it.
        height: of_species.or(any).filter(|_| !stump),
        collar_floor_mm: floor.filter(|_| collar_rule && !soft).map(|floor| floor.value),
        floor_is_published: floor.is_some_and(|floor| floor.flag == Flag::Seen),
        height_source: if any.is_some() {
            RuleSource::AnySize.into()
        } else if most.is_some_and(|most| taller(most.value) > most.value) {
            RuleSource::GraftedHeight.into()
        } else {
            Source::figure(Some(&source(least)))
        },
        collar_source: Source::Collar { floor: source(floor) },
    }
}

impl Limits {
    /// Tall enough. Too tall warns and no more: stem and roots say whether a tall plant is a bad one.
    fn height_passes(&self, plant: &MeasuredPlant) -> bool {
        self.height.is_none_or(|(least, _)| plant.height_cm.0 >= least)
    }

    /// Thick enough: for its height, and for the floor of its species where a publication gives that floor.
    fn collar_passes(&self, plant: &MeasuredPlant) -> Option<bool> {
        let floor = self.collar_floor_mm?;
        self.collar_at_least(plant, if self.floor_is_published { floor } else { 0.0 })
    }

    fn collar_at_least(&self, plant: &MeasuredPlant, floor_mm: f64) -> Option<bool> {
        let collar = plant.collar_mm?.0;
        let needed = quality::woody_collar(plant.height_cm.0, floor_mm).ok()?;
        Some(collar >= needed.least_mm)
    }
}

/// Whether a rule for the collar applies to these plants (none for grafts and stumps).
pub(crate) fn has_collar_rule(story: &TrayStory) -> bool {
    !story.is_grafted() && story.form() != Some(PlantForm::Stump)
}

/// The share of a tray's plants that can be planted: the share of its last sample that passes height and collar plant
/// by plant, or a reckoned share with its wide range.
pub(crate) fn plantable_share(
    story: &TrayStory,
    profile: Option<&Profile>,
    age_days: Option<i32>,
    day: Day,
) -> PlantableShare {
    if let Some(sample) = sample_that_lasts(story, day) {
        let (pass, of) = passing(story, profile, &sample);
        let likely = f64::from(pass) / f64::from(of);
        let ends = sampling::wilson(pass, of, SAMPLE_LEVEL).unwrap_or(Range::exact(likely));
        // Those measured are a part of those that stand: 20 that pass of 22 are 20 at least, unless some went since.
        let standing = f64::from(story.accounts.standing_count());
        let all_stand = f64::from(of) <= standing && story.first_planted.is_none_or(|first| first < sample.day);
        let (least, most) = (f64::from(pass) / standing, 1.0 - f64::from(of - pass) / standing);
        let left = |share: f64| share_left(share, story, &sample);
        let share = match all_stand {
            true => Range::new(ends.low.max(least).min(likely), likely, ends.high.min(most).max(likely)),
            false => Range::new(left(ends.low), left(likely), left(ends.high)),
        };
        return PlantableShare { share, basis: Basis::Measured };
    }
    // Bare roots are not asked for their age: their size is, and of that nothing is known.
    let least = time::day_span(profile).map(|span| span.least);
    let too_young = age_days.zip(least).is_some_and(|(age, least)| age < least);
    let age_days = age_days.filter(|_| !(story.is_bare() && too_young));
    let (low, likely, high) = reckoned_share(profile, age_days);
    PlantableShare { share: Range::new(low, likely, high), basis: Basis::Reckoned }
}

/// Plants that went out to beds since a sample, where all that went did so since and some are left.
fn gone_since(story: &TrayStory, sample: &SampleLook) -> u32 {
    let since = story.accounts.standing > 0 && story.first_planted.is_some_and(|first| first >= sample.day);
    if since { u32::try_from(story.accounts.planted).unwrap_or(u32::MAX) } else { 0 }
}

/// The share of what is left of a tray that can be planted, where such a share of it could before plants went out: the good ones go,
/// and those that fail stay behind, but for what was thrown out since.
fn share_left(share: f64, story: &TrayStory, sample: &SampleLook) -> f64 {
    let gone = f64::from(gone_since(story, sample));
    let standing = f64::from(story.accounts.standing_count());
    if gone == 0.0 || standing == 0.0 {
        return share;
    }
    let culled_since = story.culled_on.iter().all(|day| *day >= sample.day);
    let culled = if culled_since { story.accounts.culled_in_all() as f64 } else { 0.0 };
    ((share * (standing + gone + culled) - gone) / standing).clamp(0.0, 1.0)
}

/// How many plants of a sample pass height and collar, plant by plant, and of how many.
pub(crate) fn passing(story: &TrayStory, profile: Option<&Profile>, sample: &SampleLook) -> (u32, u32) {
    let limits = limits(profile, story);
    let passes = |plant: &&MeasuredPlant| limits.height_passes(plant) && limits.collar_passes(plant).unwrap_or(true);
    (sample.plants.iter().filter(passes).count() as u32, sample.plants.len() as u32)
}

fn reckoned_share(profile: Option<&Profile>, age_days: Option<i32>) -> (f64, f64, f64) {
    let days = |figure: Option<&Figure<f64>>| figure.map(|figure| figure.value);
    if stands_any_light(profile) && profile.is_some_and(|profile| profile.plantable_usual_days.is_none()) {
        return SHARE_OF_NURSES;
    }
    let least = profile.and_then(|profile| days(profile.plantable_least_days.as_ref()));
    let usual = profile.and_then(|profile| days(profile.plantable_usual_days.as_ref()));
    let (Some(age), Some(least), Some(usual)) = (age_days.map(f64::from), least, usual) else {
        return SHARE_OF_UNKNOWN_AGE;
    };
    if age < least {
        return (0.0, 0.0, 0.0);
    }
    let way = if usual > least { ((age - least) / (usual - least)).clamp(0.0, 1.0) } else { 1.0 };
    let between = |from: f64, to: f64| from + (to - from) * way;
    (
        between(SHARE_AT_LEAST.0, SHARE_AT_USUAL.0),
        between(SHARE_AT_LEAST.1, SHARE_AT_USUAL.1),
        between(SHARE_AT_LEAST.2, SHARE_AT_USUAL.2),
    )
}

/// A sample of fewer plants, and of fewer than stand, tells little by itself: it asks for care, and is counted with a larger one
/// taken a short while before. Ours.
pub(crate) const SMALL_SAMPLE_PLANTS: usize = 10;
/// So many days before a small sample a larger one still speaks beside it: until then nobody is asked for another. Ours.
const TOGETHER_DAYS: i32 = 28;

/// Whether a sample is too small to speak for its tray.
pub(crate) fn is_small(sample: &SampleLook, standing: u32) -> bool {
    sample.plants.len() < SMALL_SAMPLE_PLANTS && (sample.plants.len() as u64) < u64::from(standing)
}

/// The last sample with plants in it. Some plants more, or one pulled out on the way, do not take the place of the sample of a short
/// while before: they are counted with it.
pub(crate) fn last_sample(story: &TrayStory) -> Option<Cow<'_, SampleLook>> {
    let mut newest_first = story.samples.iter().rev().filter(|sample| !sample.plants.is_empty());
    let newest = newest_first.next()?;
    let standing = story.accounts.standing_count();
    let near: Vec<&SampleLook> = newest_first
        .take_while(|earlier| newest.day.days_since(earlier.day) <= TOGETHER_DAYS && speaks_for_all(story, earlier))
        .collect();
    let larger = near.iter().position(|earlier| !is_small(earlier, standing)).filter(|_| is_small(newest, standing));
    let Some(larger) = larger else { return Some(Cow::Borrowed(newest)) };
    let mut together = newest.clone();
    together.plants.extend(near.iter().take(larger + 1).flat_map(|earlier| earlier.plants.iter().cloned()));
    Some(Cow::Owned(together))
}

/// The last sample, where it still tells of the size: of plants that grow for some weeks, of bare roots and stumps always.
pub(crate) fn sample_that_lasts(story: &TrayStory, day: Day) -> Option<Cow<'_, SampleLook>> {
    let lasts = |sample: &SampleLook| story.is_bare() || day.days_since(sample.day) <= SAMPLE_LASTS_DAYS;
    last_sample(story).filter(|sample| lasts(sample) && speaks_for_all(story, sample))
}

/// Why a sample no longer tells.
fn no_longer_tells(story: &TrayStory, sample: &SampleLook) -> Gap {
    match speaks_for_all(story, sample) {
        true => Gap::SampleOld { on: sample.day },
        false => Gap::CameAfterSample { on: sample.day },
    }
}

/// Whether no plants were put with those of a sample after it.
fn speaks_for_all(story: &TrayStory, sample: &SampleLook) -> bool {
    story.moves_in.last().is_none_or(|moved| moved.from <= sample.day)
}

/// One load of a tray in which so many stand.
pub(crate) fn load(standing: u32) -> u32 {
    LOAD_PLANTS.min(standing).max(1)
}

/// Whether a share of what stands is at least one load.
pub(crate) fn is_load(plants: f64, standing: u32) -> bool {
    standing > 0 && whole_plants(plants) >= load(standing)
}

/// A likely number of plants as whole plants, rounded down.
pub(crate) fn whole_plants(likely: f64) -> u32 {
    (likely + 1e-9).floor().clamp(0.0, f64::from(u32::MAX)) as u32
}

/// The criteria `height`, `collar` and `leaves`.
pub fn criteria(
    story: &TrayStory,
    profile: Option<&Profile>,
    age_days: Option<i32>,
    leaves: bool,
    day: Day,
) -> Vec<Criterion> {
    let limits = limits(profile, story);
    let sample = sample_that_lasts(story, day);
    let sample = sample.as_deref();
    // A sample that is too old says when, and is asked for anew.
    let old_sample = last_sample(story).filter(|_| sample.is_none());
    let too_old = || old_sample.as_ref().map(|sample| no_longer_tells(story, sample));
    let standing = story.accounts.standing_count();
    // Of plants that could go by their age, or whose age is not asked, something must be known of the size: a look of today
    // tells it.
    let old = age_days.is_some_and(|age| time::day_span(profile).is_none_or(|span| age >= span.least));
    // Nobody measures what cannot go by its age.
    let young = age_days.zip(time::day_span(profile)).is_some_and(|(age, span)| age < span.least);
    let must_be_known = (old || !leaves) && !stands_any_light(profile);
    let of = |values: &[f64], pass: u32, unit: SampleUnit, look: &SampleLook| {
        sample_of(values, pass, unit, gone_since(story, look))
    };
    let mut all = Vec::new();
    if let Some((least, most)) = limits.height {
        let needed = HeightBand { least_cm: least, most_cm: most };
        all.push(match sample {
            None => height_not_measured(story, needed, too_old(), (must_be_known, young), day)
                .with_source(limits.height_source.clone())
                .resting_on(old_sample.as_ref().map(|sample| sample.entry.clone())),
            Some(sample) => {
                let heights: Vec<f64> = sample.plants.iter().map(|plant| plant.height_cm.0).collect();
                let pass = sample.plants.iter().filter(|plant| limits.height_passes(plant)).count() as u32;
                let share = f64::from(pass) / heights.len().max(1) as f64;
                let passes = is_load(share * f64::from(standing), standing);
                let grown = reaches_on(sample, mean(&heights), least, passes, profile, age_days, day);
                let asks_care = mean(&heights) > most || is_small(sample, standing);
                sampled(Question::Height, needed, sample, of(&heights, pass, SampleUnit::Cm, sample), standing)
                    .with_source(limits.height_source.clone())
                    .expected_on(grown)
                    .warning_if(asks_care)
            }
        });
    }
    if let Some(floor_mm) = limits.collar_floor_mm {
        let needed = CollarRule { floor_mm };
        let passes: Vec<bool> = sample
            .into_iter()
            .flat_map(|sample| &sample.plants)
            .filter_map(|plant| limits.collar_passes(plant))
            .collect();
        let collars: Vec<f64> =
            sample.into_iter().flat_map(|s| &s.plants).filter_map(|plant| plant.collar_mm.map(|mm| mm.0)).collect();
        all.push(match sample.filter(|_| !passes.is_empty()) {
            None => {
                let must = must_be_known && sample.is_none() && limits.height.is_none();
                let gap = if sample.is_none() { too_old() } else { None };
                Criterion::lacking(Question::Collar, Some(needed), gap, must, limits.collar_source.clone())
                    .expected_on(must.then_some(day))
                    .caring_where_unknown(!must && !young)
            }
            Some(sample) => {
                let pass = passes.iter().filter(|passes| **passes).count() as u32;
                let under = |plant: &&MeasuredPlant| limits.collar_at_least(plant, floor_mm) == Some(false);
                let under_floor = sample.plants.iter().filter(under).count() as f64;
                let asks_care = under_floor > UNDER_FLOOR_SHARE * passes.len() as f64;
                sampled(Question::Collar, needed, sample, of(&collars, pass, SampleUnit::Mm, sample), standing)
                    .with_source(limits.collar_source.clone())
                    .warning_if(asks_care)
            }
        });
    }
    if leaves {
        let alone = sample.is_none() && all.is_empty();
        let must_be_known = (must_be_known && alone).then_some(day);
        let gone = sample.map_or(0, |sample| gone_since(story, sample));
        all.extend(leaf_criterion(profile, (sample, too_old()), (standing, gone), must_be_known));
    }
    all
}

/// The height of plants that nobody measured, or not lately. What was written when they came is of somebody else, and enough only of
/// bare roots, which keep for days, and that are old enough by what is known.
fn height_not_measured(
    story: &TrayStory,
    needed: HeightBand,
    too_old: Option<Gap>,
    (must_be_known, young): (bool, bool),
    day: Day,
) -> Criterion {
    let came = height_on_arrival(story);
    let tall = came.is_some_and(|(cm, _)| cm >= needed.least_cm);
    let gap = too_old.or(came.map(|(cm, on)| Gap::HeightOnArrival { cm, on }));
    let must = must_be_known && !(tall && story.is_bare() && !young);
    Criterion::lacking(Question::Height, Some(needed), gap, must, Source::default()).expected_on(must.then_some(day))
}

/// The height written when plants came from elsewhere, and the day.
fn height_on_arrival(story: &TrayStory) -> Option<(f64, Day)> {
    match &story.origin {
        Some(Origin::Received { height_cm: Some(cm), day, .. }) => Some((*cm, *day)),
        Some(Origin::Received { .. } | Origin::Sown | Origin::MovedOn(_)) | None => None,
    }
}

fn leaf_criterion(
    profile: Option<&Profile>,
    (sample, too_old): (Option<&SampleLook>, Option<Gap>),
    (standing, gone): (u32, u32),
    must_be_known: Option<Day>,
) -> Option<Criterion> {
    let figure = profile?.leaves_least.as_ref()?;
    let pairs = profile?.leaves_in_pairs.as_ref().is_some_and(|pairs| pairs.value);
    let needed = LeavesAtLeast { count: figure.value, pairs };
    let leaves: Vec<f64> =
        sample.into_iter().flat_map(|sample| &sample.plants).filter_map(|plant| leaves_of(plant, pairs)).collect();
    Some(match sample.filter(|_| !leaves.is_empty()) {
        None => {
            let source = Source::figure(Some(&figure.source));
            let gap = too_old.filter(|_| sample.is_none());
            Criterion::lacking(Question::Leaves, Some(needed), gap, must_be_known.is_some(), source)
                .expected_on(must_be_known)
        }
        Some(sample) => {
            let pass = leaves.iter().filter(|leaves| **leaves >= figure.value).count() as u32;
            sampled(Question::Leaves, needed, sample, sample_of(&leaves, pass, SampleUnit::Leaves, gone), standing)
                .with_source(Source::figure(Some(&figure.source)))
        }
    })
}

/// The leaves of a plant as its species' rule counts them: single leaves where they were counted so, two to a pair; else what was
/// written for pairs, which an entry without `leaves` means as the rule does.
fn leaves_of(plant: &MeasuredPlant, pairs: bool) -> Option<f64> {
    let counted = plant.leaves.map(|leaves| if pairs { leaves.0 / 2.0 } else { leaves.0 });
    counted.or(plant.leaf_pairs.map(|pairs| pairs.0))
}

fn sample_of(values: &[f64], pass: u32, unit: SampleUnit, gone_since: u32) -> Sample {
    Sample { pass, of: values.len() as u32, mean: mean(values), unit, gone_since }
}

fn sampled<N>(
    question: impl FnOnce(Known<N, Sample>) -> Question,
    needed: N,
    look: &SampleLook,
    sample: Sample,
    standing: u32,
) -> Criterion {
    let share = f64::from(sample.pass) / f64::from(sample.of.max(1));
    let met = is_load(share * f64::from(standing), standing);
    Criterion::found(question, needed, sample, Basis::Measured, met, Source::default()).resting_on([look.entry.clone()])
}

impl Criterion {
    /// Asks for care where nobody knows it and it holds nothing back.
    pub(super) fn caring_where_unknown(mut self, so: bool) -> Criterion {
        self.warns = self.met().is_none() && so;
        self
    }

    pub(super) fn warning_if(mut self, so: bool) -> Criterion {
        self.warns = self.met() == Some(true) && so;
        self
    }

    fn with_source(mut self, source: Source) -> Criterion {
        self.source = source;
        self
    }
}

/// The day the mean height reaches the least, at the mean rate since half had emerged (a straight line, ours; a growth
/// curve replaces it where there are several samples).
fn reaches_on(
    sample: &SampleLook,
    mean_cm: f64,
    least_cm: f64,
    passes: bool,
    profile: Option<&Profile>,
    age_days: Option<i32>,
    day: Day,
) -> Option<Day> {
    if mean_cm >= least_cm {
        // Tall enough; where the sample fails all the same, plants are too tall, and no day mends that.
        return passes.then_some(sample.day);
    }
    let emerged = profile.and_then(|profile| profile.emerge_half_days.as_ref()).map_or(0.0, |figure| figure.value);
    let age_at_sample = f64::from(age_days? - day.days_since(sample.day)) - emerged;
    if age_at_sample < 1.0 || mean_cm <= 0.0 {
        return None;
    }
    let days = (least_cm - mean_cm) / (mean_cm / age_at_sample);
    (days < 2000.0).then(|| sample.day.plus(days.ceil() as i32))
}

/// The mean; 0 of none.
pub(crate) fn mean(values: &[f64]) -> f64 {
    if values.is_empty() { 0.0 } else { values.iter().sum::<f64>() / values.len() as f64 }
}
