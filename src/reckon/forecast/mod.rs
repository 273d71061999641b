//! What a sown tray will come to: how many seedlings, by when, and whether it is still worth waiting.
//!
//! Pure: from the tray's own looks, the species' days, the lot's test and this nursery's earlier sowings of the species.

mod experience;
mod judgement;
mod learned;
mod outlook;
mod seen;
mod sow_again;
mod stock;
#[cfg(test)]
mod tests;
#[cfg(test)]
mod worked;
pub mod worth;

pub use experience::{Experience, Learned, by_handbook, experiences};
pub use judgement::{Because, Judgement};
pub use learned::{EarlierSowing, earlier_sowings};
pub use outlook::{Outlook, outlook, outlook_of_sowings};
pub use seen::{Unseen, looks_of};
pub use sow_again::{Reach, SowAgain, reach};
pub use stock::{InMonth, Pipeline, TrayStock};

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use seen::Seen;

use crate::base::{Day, EntryId, Range, SpeciesKey, TrayCode};
use crate::nursery::species::Profile;
use crate::reckon::picture::{Picture, TrayPicture};
use crate::reckon::stock::{LotStory, LotTest, TrayStory};
use crate::science::emergence::{Curve, CurvePrior, forecast_by_prior};

/// Chance that the range of a forecast holds. Ours: wide enough to trust, narrow enough to act on.
pub const RANGE_LEVEL: f64 = 0.90;
/// Germination where neither profile nor test says any: nothing known. Ours.
const UNKNOWN_GERMINATION: f64 = 0.5;
/// Last day of emergence, against the half day, where a profile has none. Ours.
const LAST_OVER_HALF: f64 = 2.0;
/// First day of emergence, against the half day, where a profile has none. Ours.
const FIRST_OVER_HALF: f64 = 0.5;
/// Waiting ends when fewer than this share of the seeds is still to come. Common practice.
pub const WORTH_WAITING_SHARE: f64 = 0.02;
/// Waiting never goes beyond so many times the species' last day. Ours.
const LONGEST_WAIT: f64 = 2.0;

/// What leads where this nursery has records of its own.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum Leads {
    /// This nursery's records, beside the handbook.
    #[default]
    Here,
    /// The handbook alone.
    Handbook,
}

/// The days of a species' emergence, since sowing.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct SpeciesDays {
    /// The first come up.
    pub first: f64,
    /// Half are up.
    pub half: f64,
    /// The last come up.
    pub last: f64,
}

/// What a tray's seed will come to.
#[derive(Clone, PartialEq, Debug)]
pub struct TrayForecast {
    /// The day of sowing.
    pub sown_on: Day,
    /// Seeds sown.
    pub seeds: u32,
    /// Seedlings that came up by the last look.
    pub emerged: u32,
    /// The last look; none where nobody has counted.
    pub last_look: Option<Day>,
    /// What was expected of this seed by what was known on the day of sowing.
    pub expected: f64,
    /// The day by which the last are due by the species' own days.
    pub last_due: Day,
    /// Up on that day: low, likely, high.
    pub at_last_due: Range,
    /// Up in the end.
    pub in_the_end: Range,
    /// The likely curve, days since sowing.
    pub curve: Curve,
    /// The day after which waiting is not worth the bench.
    pub stop_waiting: Day,
    /// Where it stands on the species' own days.
    pub judgement: Judgement,
    /// Why.
    pub because: Vec<Because>,
    /// Whether to ask now if the rest is sown again: at the half day less than a third of what was expected is up.
    pub ask_to_sow_again: bool,
    /// Earlier sowings of this nursery that went into what was believed beforehand.
    pub learned_from: usize,
    /// The entries it rests on.
    pub entries: Vec<EntryId>,
}

/// The days of a species; none where its profile has no half day.
pub fn species_days(profile: &Profile) -> Option<SpeciesDays> {
    let figure = |figure: &Option<crate::nursery::species::Figure<f64>>| figure.as_ref().map(|figure| figure.value);
    let half = figure(&profile.emerge_half_days).filter(|half| *half > 0.0)?;
    let first = figure(&profile.emerge_first_days).filter(|first| *first > 0.0).unwrap_or(half * FIRST_OVER_HALF);
    let last = figure(&profile.emerge_last_days).unwrap_or(half * LAST_OVER_HALF);
    Some(SpeciesDays { first: first.min(half), half, last: last.max(half) })
}

/// What is believed of a sowing before any of it comes up: the profile, then earlier sowings, then a test of its lot.
pub fn prior_of(profile: &Profile, earlier: &[EarlierSowing], test: Option<&LotTest>) -> Option<CurvePrior> {
    let days = species_days(profile)?;
    let fresh = profile.germination_fresh_pct.as_ref().map_or(UNKNOWN_GERMINATION, |figure| figure.value / 100.0);
    let handbook = CurvePrior::of_species(Some(days.first), days.half, Some(days.last), fresh.clamp(0.0, 1.0)).ok()?;
    let curves: Vec<Curve> = earlier.iter().map(|sowing| sowing.curve).collect();
    let prior = handbook.with_sowings(&curves);
    let test = test.map(|test| {
        let laid: u32 = test.replicates.iter().map(|(laid, _)| laid).sum();
        let up: u32 = test.replicates.iter().map(|(_, up)| up).sum();
        (laid, up.min(laid))
    });
    Some(match test.filter(|(laid, _)| *laid > 0) {
        Some((laid, up)) => prior.with_lot_test(f64::from(up) / f64::from(laid), f64::from(laid)),
        None => prior,
    })
}

/// What a tray's seed will come to, as known on a day.
///
/// # Errors
/// Why there is nothing to forecast.
pub fn forecast_tray(
    story: &TrayStory,
    profile: &Profile,
    earlier: &[EarlierSowing],
    lot: Option<&LotStory>,
    day: Day,
) -> Result<TrayForecast, Unseen> {
    let seen = looks_of(story)?;
    let days = species_days(profile).ok_or(Unseen::NoSpeciesDays)?;
    let tests = || lot.into_iter().flat_map(|lot| &lot.tests);
    let prior = prior_of(profile, earlier, tests().next_back()).ok_or(Unseen::NoSpeciesDays)?;
    // What was hoped for is what was known on the day of sowing; a test that came later only changes the forecast.
    let known_then = tests().rfind(|test| test.day <= seen.sown_on);
    let hoped = prior_of(profile, earlier, known_then).ok_or(Unseen::NoSpeciesDays)?;
    let told = forecast_by_prior(&seen.looks, &prior, days.last, RANGE_LEVEL).map_err(|_| Unseen::NoSpeciesDays)?;
    let expected = f64::from(seen.seeds) * hoped.d.a / (hoped.d.a + hoped.d.b);
    let asked = judgement::Asked { seen: &seen, days, prior: &prior, told: &told, expected, day };
    let (judgement, because) = asked.judge();
    Ok(TrayForecast {
        sown_on: seen.sown_on,
        seeds: seen.seeds,
        emerged: seen.looks.emerged() as u32,
        last_look: seen.last_look,
        expected,
        last_due: seen.sown_on.plus(days.last.ceil() as i32),
        at_last_due: told.at_last_day,
        in_the_end: told.in_the_end,
        curve: told.curve,
        stop_waiting: seen.sown_on.plus(stop_waiting_days(&seen, &told.curve, days).ceil() as i32),
        ask_to_sow_again: asked.far_behind_at_half(),
        judgement,
        because,
        learned_from: earlier.len(),
        entries: seen.entries,
    })
}

/// Days since sowing until fewer than 2 % of the seeds are still to come, but no earlier than the species' last day and no
/// later than twice that. Of a sowing of which nothing was up on the half day nobody knows a curve: the species' last day.
fn stop_waiting_days(seen: &Seen, curve: &Curve, days: SpeciesDays) -> f64 {
    if seen.looks.emerged() == 0.0 && seen.looks.last_look() >= days.half {
        return days.last;
    }
    let up = 1.0 - WORTH_WAITING_SHARE / curve.d.max(WORTH_WAITING_SHARE);
    let enough = if up > 0.0 { curve.day_of(up.min(0.999)) } else { 0.0 };
    enough.clamp(days.last, days.last * LONGEST_WAIT)
}

/// The forecasts of every tray of a Picture that has seed to come or had; trays with nothing to forecast are left out.
pub fn forecasts(picture: &Picture) -> BTreeMap<TrayCode, TrayForecast> {
    forecasts_of(picture, Leads::Here, |_| true)
}

/// The forecasts of the trays that are wanted.
pub fn forecasts_of(
    picture: &Picture,
    leads: Leads,
    wanted: impl Fn(&TrayPicture) -> bool,
) -> BTreeMap<TrayCode, TrayForecast> {
    let wanted: Vec<(&TrayCode, &Arc<TrayPicture>)> = picture.trays.iter().filter(|(_, tray)| wanted(tray)).collect();
    let species: BTreeSet<&SpeciesKey> = wanted.iter().filter_map(|(_, tray)| tray.species.as_ref()).collect();
    let stories: Vec<&Arc<TrayStory>> = picture
        .stories()
        .filter(|story| leads == Leads::Here && story.species.iter().any(|key| species.contains(key)))
        .collect();
    let mut learned: BTreeMap<SpeciesKey, Vec<EarlierSowing>> = BTreeMap::new();
    for (key, sowing) in earlier_sowings(&stories, &picture.site) {
        learned.entry(key).or_default().push(sowing);
    }
    let none = Vec::new();
    let told = wanted.into_iter().filter_map(|(code, tray)| {
        let key = tray.species.as_ref()?;
        let profile = picture.site.profile(key)?;
        let earlier: Vec<EarlierSowing> =
            learned.get(key).unwrap_or(&none).iter().filter(|sowing| sowing.tray != *code).cloned().collect();
        let lot = tray.story.sowings.last().and_then(|sowing| sowing.lot.as_ref());
        let lot = lot.and_then(|lot| picture.lots.get(lot)).map(Arc::as_ref);
        let forecast = forecast_tray(&tray.story, profile, &earlier, lot, picture.day).ok()?;
        Some((code.clone(), forecast))
    });
    told.collect()
}
