//! How emergence runs: a log-logistic curve with a share of seeds that never comes up, fitted to counts between looks.
//!
//! F(t) = d / (1 + exp(-b (ln t - ln t50))): d the share that comes up in the end, t50 the median day of those that do, b how
//! steep. Each count says only that seeds came up between two looks (interval censoring); those not yet up are censored at
//! the last look. Sources: Ritz, Pipper & Streibig 2013, European Journal of Agronomy 45:1 (event-time analysis of
//! germination); Onofri, Mesgaran & Ritz 2022, Weed Science 70:259 (both from memory); profile likelihood: Venzon &
//! Moolgavkar 1988, Applied Statistics 37:87 (from memory).

mod curve;
mod fit;
mod forecast;
mod likelihood;
mod looks;
mod posterior;
mod prior;
mod several;
#[cfg(test)]
mod tests;

pub use curve::Curve;
pub use fit::{EmergenceFit, fit_emergence};
pub(crate) use forecast::up_along;
pub use forecast::{Forecast, forecast_by_prior};
pub use looks::Looks;
pub use prior::{CurvePrior, LogNormal, SeenSowing, SharePrior};
pub(crate) use prior::{HANDBOOK_SEEDS, HANDBOOK_SEEDS_VARYING, SEEDS_OF_A_LOT_TEST};
pub use several::{Batch, SeveralForecast, forecast_of_several};
