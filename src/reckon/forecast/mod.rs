//! What a sown tray will come to: how many seedlings, by when, and whether it is still worth waiting.
//!
//! Pure: from the tray's own looks, the species' days, the lot's test and this nursery's earlier sowings of the species.

mod experience;
mod judgement;
mod learned;
mod outlook;
mod remembered;
mod sow_again;
mod sowing;
mod stock;
#[cfg(test)]
mod tests;
#[cfg(test)]
mod worked;
pub mod worth;

pub use experience::{Experience, Learned, experiences};
pub(crate) use judgement::SOW_AGAIN_SHARE;
pub use judgement::{Because, Judgement};
pub(crate) use learned::{EarlierSowing, earlier_sowings};
pub use outlook::{Outlook, outlook, outlook_of_living, outlook_of_living_remembering};
pub(crate) use outlook::{outlook_of_sowings, outlook_of_tray};
pub use remembered::Remembered;
pub use sow_again::{Reach, SowAgain, reach};
pub use sowing::{Band, Unseen, band};
pub(crate) use sowing::{
    UNKNOWN_GERMINATION, as_test, handbook_seeds, hoped_of_lot, looks_at_all, prior_of, prior_of_lot,
};
pub(crate) use stock::stock;
pub use stock::{InMonth, Pipeline, TrayStock, sum};

use std::collections::BTreeMap;

use sowing::{Posterior, SownOn};

use crate::base::LotCode;
use crate::base::{Day, EntryId, Range, TrayCode};
use crate::nursery::species::Profile;
use crate::reckon::picture::{Picture, TrayPicture};
use crate::reckon::stock::{LotStory, TrayStory};
use crate::science::emergence::{Curve, CurvePrior};

/// Chance that the range of a forecast holds. Ours: wide enough to trust, narrow enough to act on.
pub(crate) const RANGE_LEVEL: f64 = 0.90;
/// Last day of emergence, against the half day, where a profile has none. Ours.
const LAST_OVER_HALF: f64 = 2.0;
/// First day of emergence, against the half day, where a profile has none. Ours.
const FIRST_OVER_HALF: f64 = 0.5;
/// Waiting ends when fewer than this share of the seeds is still to come. Common practice.
pub(crate) const WORTH_WAITING_SHARE: f64 = 0.02;
/// Waiting never goes beyond so many times the species' last day. Ours.
const LONGEST_WAIT: f64 = 2.0;

/// What leads where this nursery has records of its own.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum ForecastBasis {
    /// This nursery's records, beside the handbook.
    #[default]
    OwnRecords,
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

/// One sowing and what is likely of it.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct SowingCurve {
    /// The day.
    pub on: Day,
    /// Seeds.
    pub seeds: u32,
    /// Share of them that likely comes up.
    pub share: f64,
}

/// What a tray's seed will come to.
#[derive(Clone, PartialEq, Debug)]
pub struct TrayForecast {
    /// The day of sowing; the first, where there were several.
    pub sown_on: Day,
    /// The sowings by day, oldest first.
    pub sowings: Vec<SowingCurve>,
    /// Seeds sown in all.
    pub seeds: u32,
    /// Seedlings that came up by the last look.
    pub emerged: u32,
    /// The last look; none where nobody has counted.
    pub last_look: Option<Day>,
    /// What was expected of this seed by what was known on the day of the (youngest) sowing.
    pub expected: f64,
    /// The day by which the last are due by the species' own days.
    pub last_due: Day,
    /// Up on that day: low, likely, high.
    pub at_last_due: Range,
    /// Up in the end.
    pub in_the_end: Range,
    /// The likely curve, days since each sowing; of several its d is the mean of all seeds.
    pub curve: Curve,
    /// What was believed of the curve beforehand.
    pub prior: CurvePrior,
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
pub(crate) fn species_days(profile: &Profile) -> Option<SpeciesDays> {
    let figure = |figure: &Option<crate::nursery::species::Figure<f64>>| figure.as_ref().map(|figure| figure.value);
    let half = figure(&profile.emerge_half_days).filter(|half| *half > 0.0)?;
    let first = figure(&profile.emerge_first_days).filter(|first| *first > 0.0).unwrap_or(half * FIRST_OVER_HALF);
    let last = figure(&profile.emerge_last_days).unwrap_or(half * LAST_OVER_HALF);
    Some(SpeciesDays { first: first.min(half), half, last: last.max(half) })
}

/// What a tray's seed will come to, as known on a day. Of several sowings in one tray: of all of them together.
///
/// # Errors
/// Why there is nothing to forecast.
pub(crate) fn forecast_tray<'a>(
    story: &TrayStory,
    profile: &Profile,
    earlier: &[EarlierSowing],
    lot_of: impl Fn(&LotCode) -> Option<&'a LotStory>,
    day: Day,
) -> Result<TrayForecast, Unseen> {
    let seen = looks_at_all(story)?;
    let days = species_days(profile).ok_or(Unseen::NoSpeciesDays)?;
    // What was hoped for is what was known on the day of sowing; a test that came later only changes the forecast.
    let lot = |sowing: &SownOn| sowing.lot.as_ref().and_then(&lot_of);
    let prior = |one: &SownOn| prior_of_lot(profile, earlier, lot(one), one.day).ok_or(Unseen::NoSpeciesDays);
    let youngest = seen.youngest_on();
    let hoped = |one: &SownOn| hoped_of_lot(profile, earlier, lot(one), youngest).ok_or(Unseen::NoSpeciesDays);
    let told = match &seen.sowings[..] {
        [only] => Posterior::of_one(&seen, days, prior(only)?, hoped(only)?),
        several => {
            let now: Vec<CurvePrior> = several.iter().map(prior).collect::<Result<_, _>>()?;
            let then: Vec<CurvePrior> = several.iter().map(hoped).collect::<Result<_, _>>()?;
            let before = sowing::looks_until(story, Some(youngest))?;
            Posterior::of_several(&seen, &before, days, &now, &then)
        }
    };
    let told = told.ok_or(Unseen::NoSpeciesDays)?;
    Ok(told.forecast(seen, days, day, earlier.len()))
}

/// The forecasts of every tray of a Picture that has seed to come or had; trays with nothing to forecast are left out.
pub fn forecasts(picture: &Picture) -> BTreeMap<TrayCode, TrayForecast> {
    forecasts_of(picture, ForecastBasis::OwnRecords, |_| true)
}

/// The forecasts of the trays that are wanted.
pub fn forecasts_of(
    picture: &Picture,
    forecast_basis: ForecastBasis,
    wanted: impl Fn(&TrayPicture) -> bool,
) -> BTreeMap<TrayCode, TrayForecast> {
    Remembered::default().forecasts(picture, forecast_basis, wanted)
}
