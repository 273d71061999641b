//! The day on which the mean of a tray's plants reaches what is needed.

use crate::base::Day;
use crate::nursery::entry::MeasuredPlant;
use crate::reckon::stock::TrayStory;
use crate::reckon::tray::size::is_small;
use crate::reckon::tray::size::mean;
use crate::science::growth::{GrowthCurve, GrowthFit, GrowthModel, fit_growth};

/// Days of measuring from which a day is told: a curve has three numbers, and through three days it goes whatever they say. Ours.
pub(crate) const LEAST_SAMPLES: usize = 4;
/// An interval wider than so many days tells nothing. Ours: a year, in which every season comes.
pub(crate) const WIDEST_DAYS: f64 = 365.0;
/// Standard errors of the end height by which a curve must end below what is needed to be said never to reach it.
const ERRORS_BELOW: f64 = 2.0;
/// Days from sowing beyond which nothing is foretold: ten years. Ours.
const MOST_DAYS: f64 = 3_652.5;

/// When a mean is where it must be.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Coming {
    /// The last sample has it.
    There {
        /// The day of that sample.
        measured_on: Day,
    },
    /// By the tray's own curve.
    Expected(Reach),
    /// The samples tell no day: the species' days stand.
    Unknown(NoCurve),
}

/// A day by the tray's own curve.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Reach {
    /// The likely day.
    pub day: Day,
    /// Earliest and latest day, 95 % sure; none where as many plants as numbers were measured.
    pub between: Option<(Day, Day)>,
    /// The curve, by days since sowing.
    pub curve: GrowthCurve,
    /// Days of measuring.
    pub samples: usize,
    /// Plants measured.
    pub plants: usize,
}

/// Why the samples tell no day.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum NoCurve {
    /// Nobody has measured it.
    NeverMeasured,
    /// Measured on fewer days than tell a curve.
    FewSamples {
        /// On so many.
        have: usize,
    },
    /// The day of sowing is not known.
    NoAge,
    /// The samples do not tell where growth ends, or do not grow.
    NoEnd,
    /// The interval of the day is wider than a year.
    TooWide,
    /// By its curve it ends below.
    EndsBelow {
        /// What it ends at.
        at: f64,
    },
}

/// What was measured on each day, oldest first. Of a day with several samples as the verdict has it: some plants more are counted with
/// the sample before, a whole one takes its place.
pub(super) fn measured(story: &TrayStory, figure: impl Fn(&MeasuredPlant) -> Option<f64>) -> Vec<(Day, Vec<f64>)> {
    let mut days: Vec<(Day, Vec<f64>)> = Vec::new();
    let standing = story.accounts.standing_count();
    for sample in &story.samples {
        let values: Vec<f64> = sample.plants.iter().filter_map(&figure).filter(|value| value.is_finite()).collect();
        if values.is_empty() {
            continue;
        }
        match days.last_mut() {
            Some((day, all)) if *day == sample.day && is_small(sample, standing) => all.extend(values),
            Some((day, all)) if *day == sample.day => *all = values,
            Some(_) | None => days.push((sample.day, values)),
        }
    }
    days.sort_by_key(|(day, _)| *day);
    days
}

/// When the mean reaches a target above 0.
pub(super) fn coming(measured: &[(Day, Vec<f64>)], sown_on: Option<Day>, target: f64) -> Coming {
    let Some((last_day, last)) = measured.last() else { return Coming::Unknown(NoCurve::NeverMeasured) };
    if mean(last) >= target {
        return Coming::There { measured_on: *last_day };
    }
    match reach(measured, sown_on, target, *last_day) {
        Ok(reach) => Coming::Expected(reach),
        Err(why) => Coming::Unknown(why),
    }
}

fn reach(measured: &[(Day, Vec<f64>)], sown_on: Option<Day>, target: f64, last_day: Day) -> Result<Reach, NoCurve> {
    if measured.len() < LEAST_SAMPLES {
        return Err(NoCurve::FewSamples { have: measured.len() });
    }
    let sown_on = sown_on.filter(|sown| *sown <= measured[0].0).ok_or(NoCurve::NoAge)?;
    let points = measured.iter().flat_map(|(day, values)| {
        let age = f64::from(day.days_since(sown_on));
        values.iter().map(move |value| (age, *value))
    });
    let (ages, values): (Vec<f64>, Vec<f64>) = points.unzip();
    let fits = GrowthModel::ALL.iter().filter_map(|model| fit_growth(*model, &ages, &values).ok().flatten());
    let best = fits.min_by(|one, other| one.rss.total_cmp(&other.rss)).ok_or(NoCurve::NoEnd)?;
    let Some(reached) = best.reaches(target).filter(|reached| reached.t.is_finite() && reached.t <= MOST_DAYS) else {
        return Err(never(&best, target));
    };
    let on = |age: f64| sown_on.plus(age.clamp(0.0, MOST_DAYS).ceil() as i32);
    let between = match reached.ci95 {
        Some(interval)
            if interval.high.is_nan() || interval.low.is_nan() || interval.high - interval.low > WIDEST_DAYS =>
        {
            return Err(NoCurve::TooWide);
        }
        Some(interval) => Some((on(interval.low).max(last_day), on(interval.high).max(last_day))),
        None => None,
    };
    let day = on(reached.t).max(last_day);
    Ok(Reach { day, between, curve: best.curve, samples: measured.len(), plants: values.len() })
}

fn never(fit: &GrowthFit, target: f64) -> NoCurve {
    let surely_below = fit.errors.is_some_and(|errors| fit.curve.a + ERRORS_BELOW * errors[0] < target);
    if surely_below { NoCurve::EndsBelow { at: fit.curve.a } } else { NoCurve::NoEnd }
}
