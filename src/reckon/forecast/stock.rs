//! How many plants each tray will come to, and when; for each species by month.

use std::collections::BTreeMap;

use super::experience::{Experience, HANDBOOK_TRAYS, Learned, by_handbook};
use super::{RANGE_LEVEL, TrayForecast};
use crate::base::{Day, Range, SpeciesKey, TrayCode};
use crate::nursery::species::Profile;
use crate::reckon::picture::{Basis, Criterion, DaySpread, Picture, Rule, Stage, TrayPicture};
use crate::reckon::tray::{hardening, time};

/// Standard deviations that hold 90 % of a normal distribution, either way together. As [`RANGE_LEVEL`].
const DEVIATIONS: f64 = 1.645;
const _: () = assert!(RANGE_LEVEL == 0.90, "the deviations are those of 90 %");

/// What a tray will come to.
#[derive(Clone, PartialEq, Debug)]
pub struct TrayStock {
    /// The species.
    pub species: SpeciesKey,
    /// Plants good enough to go out: low, likely, high.
    pub plants: Range,
    /// When; none where nobody can say.
    pub on: Option<DaySpread>,
    /// What holds it back and ends on no day that is known; nothing where its age alone is not known.
    pub waits_for: Vec<Rule>,
    /// Plants standing now, or still to come up: what it is reckoned from.
    pub from: Range,
    /// Share of them that will live.
    pub survival: f64,
    /// Share of the survivors that will be thrown out.
    pub culls: f64,
}

/// Plants of a species that become good enough in a month.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct InMonth {
    /// The year.
    pub year: i32,
    /// The month, 1 to 12.
    pub month: u32,
    /// Trays.
    pub trays: usize,
    /// Plants: low, likely, high.
    pub plants: Range,
}

/// What is coming of a species.
#[derive(Clone, PartialEq, Debug)]
pub struct Pipeline {
    /// The species.
    pub species: SpeciesKey,
    /// By month, the earliest first.
    pub months: Vec<InMonth>,
    /// Of trays of which nobody can say when.
    pub undated: Option<(usize, Range)>,
}

/// What every living tray will come to.
pub fn stock(
    picture: &Picture,
    told: &BTreeMap<TrayCode, TrayForecast>,
    experience: &BTreeMap<SpeciesKey, Experience>,
) -> BTreeMap<TrayCode, TrayStock> {
    let all = picture.trays.iter().filter_map(|(code, tray)| {
        let species = tray.species.clone()?;
        let profile = picture.site.profile(&species).map(|profile| &**profile);
        let experience = experience.get(&species).cloned().unwrap_or_else(|| by_handbook(profile));
        let stock = tray_stock(tray, species, told.get(code), &experience, profile, picture.day)?;
        Some((code.clone(), stock))
    });
    all.collect()
}

fn tray_stock(
    tray: &TrayPicture,
    species: SpeciesKey,
    told: Option<&TrayForecast>,
    experience: &Experience,
    profile: Option<&Profile>,
    day: Day,
) -> Option<TrayStock> {
    if tray.stage == Stage::Spent || (tray.standing == 0 && tray.seed == 0) {
        return None;
    }
    if tray.ready {
        let on = Some(DaySpread { low: day, likely: day, high: day });
        let from = tray.standing_range;
        let plants = tray.plantable;
        return Some(TrayStock { species, plants, on, waits_for: Vec::new(), from, survival: 1.0, culls: 0.0 });
    }
    let coming = told.filter(|_| tray.story.seed_is_due(day));
    let from = coming.map_or(tray.standing_range, |told| with_coming(tray.standing_range, told));
    let waits_for = waits_for(tray);
    let on = waits_for.is_empty().then(|| when(tray, experience, profile, day)).flatten();
    let usual = experience.days_to_plantable.used;
    // Only what is left of the nursery time can still be lost.
    let left = match (on, usual) {
        (Some(on), Some(usual)) if usual > 0.0 => (f64::from(on.likely.days_since(day)) / usual).clamp(0.0, 1.0),
        (None, Some(usual)) if usual > 0.0 => {
            let age = time::age(&tray.story, day).youngest_days.map_or(0.0, f64::from);
            (1.0 - age / usual).clamp(0.0, 1.0)
        }
        (Some(_) | None, _) => 1.0,
    };
    let lives = spread(experience.survival);
    let lives = Range::new(lives.low.powf(left), lives.likely.powf(left), lives.high.powf(left));
    let culls = spread(experience.culls);
    let by_handbook = Range::new(1.0 - culls.high, 1.0 - culls.likely, 1.0 - culls.low);
    let kept = measured(tray).filter(|share| share.likely > by_handbook.likely).unwrap_or(by_handbook);
    let plants = product(&[from, lives, kept]);
    Some(TrayStock { species, plants, on, waits_for, from, survival: lives.likely, culls: 1.0 - kept.likely })
}

/// The share that a sample found good enough; what it finds better than is usual tells more than what is usual, while plants that are
/// still too small go on growing.
fn measured(tray: &TrayPicture) -> Option<Range> {
    let (of, good) = (tray.standing_range, tray.plantable);
    let share = |good: f64, of: f64| if of > 0.0 { good / of } else { 0.0 };
    let is_measured = tray.plantable_basis == Basis::Measured;
    is_measured.then(|| Range::new(share(good.low, of.low), share(good.likely, of.likely), share(good.high, of.high)))
}

/// What stands and what is still to come up.
fn with_coming(standing: Range, told: &TrayForecast) -> Range {
    let to_come = |end: f64| (end - f64::from(told.emerged)).max(0.0);
    let (likely, low, high) =
        (to_come(told.in_the_end.likely), to_come(told.in_the_end.low), to_come(told.in_the_end.high));
    sum(&[standing, Range::new(low, likely, high)])
}

/// What holds a tray back and has no day on which it ends: a sample that fails, roots that circle, a sickness. Hardening that has not
/// begun takes its length, and the step of light comes with it.
fn waits_for(tray: &TrayPicture) -> Vec<Rule> {
    let in_time = |rule: Rule| matches!(rule, Rule::Load | Rule::Living | Rule::Hardening | Rule::ExposureStep);
    // What nobody measured may be good enough tomorrow or in a year.
    let unmeasured =
        |one: &Criterion| one.met().is_none() && matches!(one.rule(), Rule::Height | Rule::Collar | Rule::Leaves);
    // A look at what is sick may find it there still.
    let open = |one: &Criterion| one.expected.is_none() || unmeasured(one) || one.rule() == Rule::Pest;
    let holds = tray.criteria.iter().filter(|one| one.blocks && open(one) && !in_time(one.rule()));
    // Of unknown age, and measured by nobody: that is said by the age alone.
    holds.map(Criterion::rule).filter(|rule| *rule != Rule::DaysSinceSowing).collect()
}

/// The day before which a tray is not ready, whatever its age: the last day on which anything that holds it back ends, and today and
/// the length of hardening where that has not begun.
fn not_before(tray: &TrayPicture, profile: Option<&Profile>, day: Day) -> Day {
    let hardens = |one: &Criterion| one.rule() == Rule::Hardening && one.expected.is_none();
    let ends =
        |one: &Criterion| one.expected.or_else(|| hardens(one).then(|| day.plus(hardening::length_days(profile))));
    let holds = tray.criteria.iter().filter(|one| one.blocks).filter_map(ends);
    holds.chain([day.plus(1)]).max().unwrap_or(day)
}

/// When a tray is good enough: the days learned after its youngest sowing, between the species' least and most days, and
/// not before what holds it back today ends.
fn when(tray: &TrayPicture, experience: &Experience, profile: Option<&Profile>, day: Day) -> Option<DaySpread> {
    let sown = time::age(&tray.story, day).youngest_on;
    let usual = experience.days_to_plantable.used.map(|days| days.round() as i32);
    let first = not_before(tray, profile, day);
    // What lies without soil comes within its days or not at all.
    if tray.story.is_bare() {
        let first = if tray.ready { day } else { first };
        let in_time = tray.best_before.is_some_and(|last| first <= last);
        return in_time.then_some(DaySpread { low: first, likely: first, high: first });
    }
    let (Some(sown), Some(usual)) = (sown, usual) else {
        return tray.ready_from.map(|on| on.max(first)).map(|on| DaySpread { low: on, likely: on, high: on });
    };
    let span = time::day_span(profile);
    let least = span.map_or(usual, |span| span.least.min(usual));
    let most = span.and_then(|span| span.most).map_or(usual, |most| most.max(usual));
    let on = |days: i32| sown.plus(days).max(first);
    Some(DaySpread { low: on(least), likely: on(usual), high: on(most) })
}

/// A share known from the handbook, as of five trays, and from so many trays here, with its doubt: the trays differ as the
/// draws of a beta of that weight.
fn spread(learned: Learned) -> Range {
    let share = learned.used.unwrap_or(1.0).clamp(0.0, 1.0);
    let deviation = (share * (1.0 - share) / (HANDBOOK_TRAYS + learned.trays as f64 + 1.0)).sqrt();
    Range::new((share - DEVIATIONS * deviation).max(0.0), share, (share + DEVIATIONS * deviation).min(1.0))
}

/// The product of numbers whose doubts do not hang together: relative doubts add by their squares.
fn product(parts: &[Range]) -> Range {
    let likely: f64 = parts.iter().map(|part| part.likely).product();
    let relative = |end: fn(&Range) -> f64| {
        let squares = parts.iter().filter(|part| part.likely > 0.0).map(|part| (end(part) / part.likely - 1.0).powi(2));
        squares.sum::<f64>().sqrt()
    };
    Range::new((likely * (1.0 - relative(|part| part.low))).max(0.0), likely, likely * (1.0 + relative(|p| p.high)))
}

/// The sum of numbers whose doubts do not hang together: doubts add by their squares.
pub fn sum(parts: &[Range]) -> Range {
    let likely: f64 = parts.iter().map(|part| part.likely).sum();
    let down = parts.iter().map(|part| (part.likely - part.low).powi(2)).sum::<f64>().sqrt();
    let up = parts.iter().map(|part| (part.high - part.likely).powi(2)).sum::<f64>().sqrt();
    Range::new((likely - down).max(0.0), likely, likely + up)
}

/// What is coming of each species by month, each tray in its likely month.
pub fn pipelines(stock: &BTreeMap<TrayCode, TrayStock>) -> Vec<Pipeline> {
    let mut dated: BTreeMap<&SpeciesKey, BTreeMap<(i32, u32), Vec<Range>>> = BTreeMap::new();
    let mut undated: BTreeMap<&SpeciesKey, Vec<Range>> = BTreeMap::new();
    for tray in stock.values() {
        let months = dated.entry(&tray.species).or_default();
        match tray.on {
            Some(on) => {
                let (year, month, _) = on.likely.ymd();
                months.entry((year, month)).or_default().push(tray.plants);
            }
            None => undated.entry(&tray.species).or_default().push(tray.plants),
        }
    }
    let pipeline = |(species, months): (&SpeciesKey, BTreeMap<(i32, u32), Vec<Range>>)| Pipeline {
        species: species.clone(),
        months: months
            .into_iter()
            .map(|((year, month), parts)| InMonth { year, month, trays: parts.len(), plants: sum(&parts) })
            .collect(),
        undated: undated.get(species).map(|parts| (parts.len(), sum(parts))),
    };
    dated.into_iter().map(pipeline).collect()
}
