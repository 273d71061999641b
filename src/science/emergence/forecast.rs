//! How many will come: what is up, and what is still to be hoped for, with what is known beforehand.

use super::curve::Curve;
use super::looks::Looks;
use super::posterior::believe;
use super::prior::CurvePrior;
use crate::base::Range;
use crate::science::chance::Chance;
use crate::science::wrong_input::{self, WrongInput};

/// A forecast of a sowing.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Forecast {
    /// Up at the last look.
    pub seen: f64,
    /// Up on the last day: low, likely (mean) and high.
    pub at_last_day: Range,
    /// Up in the end, whenever that is.
    pub in_the_end: Range,
    /// The likely curve: mean of ln t50, ln b and logit d.
    pub curve: Curve,
}

/// How many will be up on `last_day` (since sowing; no earlier than the last look) and in the end, with a range that holds
/// with chance `level` (above 0, below 1), from the looks and what is known beforehand. Works with nothing seen as well.
///
/// The chance that one of those not up comes by the last day is uncertain with the curve; its mean and variance over the
/// belief give a beta, and that a beta-binomial number.
///
/// # Errors
/// A day or a level that is none.
pub fn forecast_by_prior(looks: &Looks, prior: &CurvePrior, last_day: f64, level: f64) -> Result<Forecast, WrongInput> {
    wrong_input::not_negative("last_day", last_day)?;
    wrong_input::share("level", level)?;
    let last_day = last_day.max(looks.last_look());
    let belief = believe(looks, prior, &[last_day]);
    let told = |comes: (f64, f64)| range(looks, comes, level);
    Ok(Forecast {
        seen: looks.emerged(),
        at_last_day: told(belief.comes.first().copied().unwrap_or(belief.ever_comes)),
        in_the_end: told(belief.ever_comes),
        curve: belief.curve,
    })
}

/// How many will be up on each of several days (since sowing; none before the last look), as [`forecast_by_prior`] says it of
/// one: what a range around the curve is drawn through.
///
/// # Errors
/// Days or a level that are none.
pub(crate) fn up_along(looks: &Looks, prior: &CurvePrior, days: &[f64], level: f64) -> Result<Vec<Range>, WrongInput> {
    wrong_input::share("level", level)?;
    for day in days {
        wrong_input::not_negative("days", *day)?;
    }
    let days: Vec<f64> = days.iter().map(|day| day.max(looks.last_look())).collect();
    let belief = believe(looks, prior, &days);
    Ok(belief.comes.into_iter().map(|comes| range(looks, comes, level)).collect())
}

/// What is up and what of the rest comes, where the chance of each has this mean and variance.
pub(super) fn range(looks: &Looks, (mean, variance): (f64, f64), level: f64) -> Range {
    let waiting = (looks.seeds() - looks.emerged()) as u32;
    let more = Chance::of_moments(mean, variance).middle(waiting, level);
    let likely = looks.emerged() + mean * f64::from(waiting);
    let (low, high) = (looks.emerged() + more.low, looks.emerged() + more.high);
    Range::new(low.min(likely), likely, high.max(likely))
}
