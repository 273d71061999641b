//! From the looks at a tray to what is told of it: of one sowing, or of several together.

use super::seen::Seen;
use crate::base::{Day, Range};
use crate::reckon::forecast::judgement::{Asked, Because};
use crate::reckon::forecast::{LONGEST_WAIT, RANGE_LEVEL, SowingCurve, SpeciesDays, TrayForecast, WORTH_WAITING_SHARE};
use crate::science::emergence::{
    Batch, Curve, CurvePrior, Forecast, SeveralForecast, forecast_by_prior, forecast_of_several,
};

/// The counts tell sowings apart where the range of those that came of the youngest is no wider than this share of all that
/// are up. Ours.
pub const APART_WITHIN: f64 = 0.2;
/// Or than so many seedlings. Ours.
pub const APART_SEEDLINGS: f64 = 2.0;

/// What the counts say.
pub struct Posterior {
    /// Believed beforehand; of several the shape, with the share of the youngest.
    prior: CurvePrior,
    /// The forecast.
    told: Forecast,
    /// What was expected of each sowing.
    expected: Vec<f64>,
    /// The likely share of each.
    shares: Vec<f64>,
    /// Of several: how many of those up came of the youngest.
    of_youngest: Option<Range>,
}

fn mean_share(prior: &CurvePrior) -> f64 {
    prior.d.a / (prior.d.a + prior.d.b)
}

impl Posterior {
    /// Of seed sown on one day.
    pub fn of_one(seen: &Seen, days: SpeciesDays, prior: CurvePrior, hoped: CurvePrior) -> Option<Posterior> {
        let told = forecast_by_prior(&seen.looks, &prior, days.last, RANGE_LEVEL).ok()?;
        let expected = vec![f64::from(seen.seeds) * mean_share(&hoped)];
        Some(Posterior { prior, expected, shares: vec![told.curve.d], told, of_youngest: None })
    }

    /// Of seed sown on several days: `before` has the looks up to the youngest sowing, `now` and `then` what is believed of
    /// each sowing now and was on the day of the youngest. What was hoped for on that day is what the earlier sowings were
    /// then forecast to give and what was believed of the youngest.
    pub fn of_several(
        seen: &Seen,
        before: &Seen,
        days: SpeciesDays,
        now: &[CurvePrior],
        then: &[CurvePrior],
    ) -> Option<Posterior> {
        let youngest = seen.youngest_on();
        let last_day = seen.age(youngest) + days.last;
        let told = together(seen, now, last_day)?;
        let earlier = seen.sowings.len() - 1;
        let mut hoped_before = before.clone();
        hoped_before.sowings.truncate(earlier);
        let given = earlier_were_to_give(&hoped_before, days, &then[..earlier])?;
        let sown_before: f64 = seen.sowings[..earlier].iter().map(|sowing| f64::from(sowing.seeds)).sum();
        let each = seen.sowings.iter().enumerate().map(|(i, sowing)| {
            let seeds = f64::from(sowing.seeds);
            if i < earlier { given * seeds / sown_before } else { seeds * then.last().map_or(0.0, mean_share) }
        });
        let shares = (0..seen.sowings.len()).map(|i| told.shares[usize::from(i == earlier)]).collect();
        let expected = each.collect();
        let forecast =
            Forecast { seen: told.seen, at_last_day: told.at_last_day, in_the_end: told.in_the_end, curve: told.curve };
        let prior = *now.last()?;
        Some(Posterior { prior, told: forecast, expected, shares, of_youngest: Some(told.of_youngest) })
    }

    /// All that is told of the tray.
    pub fn forecast(self, seen: Seen, days: SpeciesDays, day: Day, learned_from: usize) -> TrayForecast {
        let youngest = seen.youngest_on();
        let expected: f64 = self.expected.iter().sum();
        let asked = Asked {
            seen: &seen,
            days,
            prior: &self.prior,
            told: &self.told,
            expected_each: &self.expected,
            expected,
            day,
        };
        let (judgement, mut because) = asked.judge();
        let ask_to_sow_again = asked.far_behind_at_half();
        because.extend(self.of_youngest.map(|range| {
            let apart = (range.high - range.low) <= (APART_WITHIN * seen.looks.emerged()).max(APART_SEEDLINGS);
            Because::SeveralSowings { sowings: seen.sowings.len() as i64, youngest, of_youngest: range, apart }
        }));
        let sowings: Vec<SowingCurve> = seen
            .sowings
            .iter()
            .zip(&self.shares)
            .map(|(sowing, share)| SowingCurve { on: sowing.day, seeds: sowing.seeds, share: *share })
            .collect();
        let waits = stop_waiting_days(&seen, &sowings, &self.told.curve, days);
        TrayForecast {
            sown_on: seen.sown_on,
            seeds: seen.seeds,
            emerged: seen.looks.emerged() as u32,
            last_look: seen.last_look,
            expected,
            last_due: youngest.plus(days.last.ceil() as i32),
            at_last_due: self.told.at_last_day,
            in_the_end: self.told.in_the_end,
            curve: self.told.curve,
            prior: self.prior,
            stop_waiting: youngest.plus(waits.ceil() as i32),
            ask_to_sow_again,
            judgement,
            because,
            learned_from,
            sowings,
            entries: seen.entries,
        }
    }
}

/// The forecast of several sowings together.
fn together(seen: &Seen, priors: &[CurvePrior], last_day: f64) -> Option<SeveralForecast> {
    let shape = priors.first().map(|prior| (prior.t50, prior.b))?;
    let batches: Vec<Batch> = seen
        .sowings
        .iter()
        .zip(priors)
        .map(|(sowing, prior)| Batch { after_days: seen.age(sowing.day), seeds: sowing.seeds, d: prior.d })
        .collect();
    forecast_of_several(&seen.looks, &batches, shape, last_day, RANGE_LEVEL).ok()
}

/// What the sowings before the youngest were to give in the end, by the looks until then.
fn earlier_were_to_give(before: &Seen, days: SpeciesDays, priors: &[CurvePrior]) -> Option<f64> {
    let seeds: u32 = before.sowings.iter().map(|sowing| sowing.seeds).sum();
    let looks = before.looks.of_seeds(seeds)?;
    if let [only] = priors {
        return Some(forecast_by_prior(&looks, only, days.last, RANGE_LEVEL).ok()?.in_the_end.likely);
    }
    let earlier = Seen { looks, seeds, ..before.clone() };
    let last_day = earlier.age(earlier.youngest_on()) + days.last;
    Some(together(&earlier, priors, last_day)?.in_the_end.likely)
}

/// Days since the youngest sowing until fewer than 2 % of the seeds are still to come, but no earlier than the species' last
/// day and no later than twice that. Where nothing was up on the half day nobody knows a curve: the species' last day.
fn stop_waiting_days(seen: &Seen, sowings: &[SowingCurve], curve: &Curve, days: SpeciesDays) -> f64 {
    let youngest = seen.youngest_on();
    if seen.looks.emerged() == 0.0 && seen.looks.last_look() - seen.age(youngest) >= days.half {
        return days.last;
    }
    if let [_] = sowings {
        let up = 1.0 - WORTH_WAITING_SHARE / curve.d.max(WORTH_WAITING_SHARE);
        let enough = if up > 0.0 { curve.day_of(up.min(0.999)) } else { 0.0 };
        return enough.clamp(days.last, days.last * LONGEST_WAIT);
    }
    let still_to_come = |day: f64| -> f64 {
        let one = |sowing: &SowingCurve| {
            let age = day + f64::from(youngest.days_since(sowing.on));
            f64::from(sowing.seeds) * sowing.share * (1.0 - curve.up(age))
        };
        sowings.iter().map(one).sum()
    };
    let enough = WORTH_WAITING_SHARE * f64::from(seen.seeds);
    let mut day = days.last.ceil();
    while day < days.last * LONGEST_WAIT && still_to_come(day) >= enough {
        day += 1.0;
    }
    day.min(days.last * LONGEST_WAIT)
}
