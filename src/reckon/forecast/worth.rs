//! What is worth looking at: looks not yet made, by the plants expected to be saved for each minute.
//!
//! plants saved per minute = chance that the look changes what is done x plants that hang on it x nearness of the last day /
//! minutes. Ours.

use crate::base::{Day, TrayCode};
use crate::reckon::forecast::{Judgement, SowAgain, TrayForecast};
use crate::reckon::picture::TrayPicture;
use crate::reckon::round::Task;
use crate::science::sampling::normal_below;

use super::judgement::FAILING_SHARE;

/// So many are shown, and come first of what can wait. Ours.
pub(crate) const WORTH_SHOWN: usize = 5;
/// A last day so many days away counts half. Ours: a fortnight.
pub(crate) const HALF_NEAR_DAYS: f64 = 14.0;
/// A last day nobody knows counts as so many days away. Ours.
pub(crate) const NO_LAST_DAY_DAYS: i32 = 60;
/// Standard deviations from the middle to the end of a 90 % range.
const DEVIATIONS: f64 = 1.645;

/// A look and what it is worth.
#[derive(Clone, PartialEq, Debug)]
pub struct WorthLooking {
    /// The stop of the round it belongs to.
    pub stop: String,
    /// What there is to do.
    pub task: Task,
    /// Chance that what is seen changes what is done.
    pub chance: f64,
    /// Plants that hang on it.
    pub plants: f64,
    /// The most it can be, by what is there.
    pub(crate) most: Option<f64>,
    /// The last day for the decision.
    pub last_day: Option<Day>,
    /// From 1 (today) to 0 (far away, or past).
    pub nearness: f64,
    /// Minutes of the look.
    pub minutes: f64,
    /// Plants expected to be saved for each minute.
    pub saved_per_minute: f64,
}

/// What a decision is about.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct Decision {
    /// Chance that a look changes it.
    pub chance: f64,
    /// Plants that hang on it.
    pub plants: f64,
    /// Its last day.
    pub last_day: Option<Day>,
}

impl Decision {
    /// What a look of so many minutes is worth on a day.
    pub fn worth(self, stop: &str, task: Task, minutes: f64, day: Day) -> WorthLooking {
        let nearness = nearness(self.last_day, day);
        let saved_per_minute = self.chance * self.plants * nearness / minutes.max(0.1);
        WorthLooking {
            stop: stop.to_string(),
            task,
            chance: self.chance,
            plants: self.plants,
            most: None,
            last_day: self.last_day,
            nearness,
            minutes,
            saved_per_minute,
        }
    }
}

/// From 1 on the last day, a half a fortnight before, to 0; 0 after it.
fn nearness(last_day: Option<Day>, day: Day) -> f64 {
    let days = last_day.map_or(NO_LAST_DAY_DAYS, |last| last.days_since(day));
    if days < 0 { 0.0 } else { HALF_NEAR_DAYS / (HALF_NEAR_DAYS + f64::from(days)) }
}

/// The chance that the truth lies on the other side of a limit than the likely value, by a normal curve through the ends of
/// a 90 % range.
pub(crate) fn chance_other_side(low: f64, likely: f64, high: f64, limit: f64) -> f64 {
    let deviation = if limit < likely { (likely - low) / DEVIATIONS } else { (high - likely) / DEVIATIONS };
    if deviation <= 1e-9 {
        return 0.0;
    }
    normal_below(-((limit - likely) / deviation).abs())
}

/// Counting a sowing decides whether to sow again: whether it ends above or below half of what was expected. What hangs on
/// it are the plants that would be missing in the end at the low end of the range, of what was expected.
pub(crate) fn of_count(told: &TrayForecast, again: &SowAgain) -> Option<Decision> {
    match told.judgement {
        Judgement::Finished => return None,
        Judgement::TooEarly | Judgement::OnItsWay | Judgement::Slow | Judgement::Failing => {}
    }
    let end = told.at_last_due;
    let chance = chance_other_side(end.low, end.likely, end.high, FAILING_SHARE * told.expected);
    let plants = (told.expected - end.low).max(0.0);
    Some(Decision { chance, plants, last_day: again.sow_by() })
}

/// Measuring decides how many go out: whether more or less than half of what stands is good enough.
pub(crate) fn of_measure(tray: &TrayPicture, last_day: Option<Day>) -> Option<Decision> {
    let standing = f64::from(tray.standing);
    let plantable = tray.plantable;
    let chance = chance_other_side(plantable.low, plantable.likely, plantable.high, standing / 2.0);
    (standing > 0.0).then_some(Decision { chance, plants: plantable.high - plantable.low, last_day })
}

/// A test of seed decides how thick it is sown: whether it is better or worse than half of fresh seed. Before a test the
/// share is believed as of four seeds; the plants are those that would be missing if it were half.
pub(crate) fn of_test(plants: f64, fresh: f64, last_day: Option<Day>) -> Decision {
    let weight = 4.0;
    let deviation = (fresh * (1.0 - fresh) / (weight + 1.0)).sqrt();
    let chance = chance_other_side(fresh - DEVIATIONS * deviation, fresh, fresh + DEVIATIONS * deviation, fresh / 2.0);
    Decision { chance, plants: plants / 2.0, last_day }
}

/// Those of a tray.
pub(crate) fn of_tray<'a>(worth: &'a [WorthLooking], tray: &TrayCode) -> impl Iterator<Item = &'a WorthLooking> {
    let ending = format!(" {tray}");
    worth.iter().filter(move |one| one.stop.ends_with(&ending))
}
