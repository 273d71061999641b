//! Where a sowing stands on its species' own days: too early to say, on its way, slow, failing, finished.
//!
//! Source: common practice for the 30 % at the half day, the quiet time and the 2 % (rules of nursery hands); the rest ours.

use super::sowing::Seen;
use super::{SpeciesDays, WORTH_WAITING_SHARE};
use crate::base::{Day, Range};
use crate::science::emergence::{Curve, CurvePrior, Forecast};

/// No verdict before so many times the first day of emergence, or the half day where that is earlier. Common practice.
pub(crate) const NO_VERDICT_BEFORE: f64 = 1.5;
/// A sowing is on its way with this share of what is due by now. Ours.
pub(crate) const ON_ITS_WAY_SHARE: f64 = 0.6;
/// A sowing fails where less than this share of what was expected is likely by the species' last day. Ours.
pub(crate) const FAILING_SHARE: f64 = 0.5;
/// At the half day so little of what was expected raises the question of sowing again. Common practice.
pub(crate) const SOW_AGAIN_SHARE: f64 = 0.3;
/// Emergence has ended after so many quiet days past the last day. Common practice.
pub(crate) const QUIET_DAYS: f64 = 7.0;
/// Or after this share of the median day, where that is longer. Common practice.
pub(crate) const QUIET_SHARE: f64 = 0.25;
/// Fewer seedlings due by now than this say nothing. Ours.
const LEAST_DUE: f64 = 2.0;

/// Where a sowing stands.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Judgement {
    /// Too early to say, or nobody has looked.
    TooEarly,
    /// As many as are due by now.
    OnItsWay,
    /// Behind, and still coming.
    Slow,
    /// Less than half of what was expected will come by the species' last day.
    Failing,
    /// What comes has come.
    Finished,
}

/// Why.
#[derive(Clone, PartialEq, Debug)]
pub enum Because {
    /// Nothing can be said before a day.
    BeforeDay(Day),
    /// Nobody has counted since anything could be up.
    NotCounted,
    /// So many were up at the last look, of so many due by then and so many expected in all.
    Up {
        /// Up.
        emerged: f64,
        /// Due by then.
        due: f64,
        /// Expected in all.
        expected: f64,
        /// The look.
        look: Day,
    },
    /// So many will be up on the species' last day.
    WillBe(Range),
    /// Nothing new for so many days up to the last look, and the species' last day has passed.
    QuietFor {
        /// Quiet days.
        days: i32,
        /// How many are enough.
        needed: i32,
    },
    /// Fewer than 2 % of the seeds are still to come.
    LittleToCome(f64),
    /// Seedlings disappeared that nobody saw die: more may have come up.
    DeathsUnseen,
    /// Several sowings lie in the tray and are forecast together.
    SeveralSowings {
        /// How many.
        sowings: i64,
        /// The day of the youngest.
        youngest: Day,
        /// So many of those up came of it.
        of_youngest: Range,
        /// Whether the counts tell that well enough.
        apart: bool,
    },
}

/// What is asked of a sowing.
pub struct Asked<'a> {
    /// The looks.
    pub seen: &'a Seen,
    /// The species' days.
    pub days: SpeciesDays,
    /// What was believed beforehand.
    pub prior: &'a CurvePrior,
    /// The forecast.
    pub told: &'a Forecast,
    /// What was expected of each sowing.
    pub expected_each: &'a [f64],
    /// What was expected in all.
    pub expected: f64,
    /// The day.
    pub day: Day,
}

impl Asked<'_> {
    /// The judgement with its reasons.
    pub(crate) fn judge(&self) -> (Judgement, Vec<Because>) {
        let mut because = Vec::new();
        let judgement = self.judged(&mut because);
        if self.seen.deaths_unseen {
            because.push(Because::DeathsUnseen);
        }
        (judgement, because)
    }

    fn judged(&self, because: &mut Vec<Because>) -> Judgement {
        let early = (self.days.first * NO_VERDICT_BEFORE).min(self.days.half);
        let no_verdict_before = self.seen.youngest_on().plus(early.ceil() as i32);
        let Some(look) = self.seen.last_look.filter(|look| *look >= no_verdict_before) else {
            let waiting = self.day < no_verdict_before;
            because.push(if waiting { Because::BeforeDay(no_verdict_before) } else { Because::NotCounted });
            return Judgement::TooEarly;
        };
        if self.has_finished(look, because) {
            return Judgement::Finished;
        }
        let due = self.due_at_look();
        let emerged = self.seen.looks.emerged();
        if due < LEAST_DUE && emerged < LEAST_DUE {
            because.push(Because::Up { emerged, due, expected: self.expected, look });
            return Judgement::TooEarly;
        }
        because.push(Because::Up { emerged, due, expected: self.expected, look });
        because.push(Because::WillBe(self.told.at_last_day));
        if emerged >= ON_ITS_WAY_SHARE * due {
            return Judgement::OnItsWay;
        }
        let past_half = self.age_at_look() >= self.days.half;
        let poor = self.told.at_last_day.likely < FAILING_SHARE * self.expected;
        if past_half && poor { Judgement::Failing } else { Judgement::Slow }
    }

    /// What should be up at the last look, by what was believed beforehand.
    fn due_at_look(&self) -> f64 {
        let usual = Curve { d: 1.0, b: self.prior.b.median, t50: self.prior.t50.median };
        let each = self.seen.sowings.iter().zip(self.expected_each);
        each.map(|(sown, expected)| expected * usual.up(self.seen.looks.last_look() - self.seen.age(sown.day))).sum()
    }

    /// Days from the youngest sowing to the last look.
    fn age_at_look(&self) -> f64 {
        self.seen.looks.last_look() - self.seen.age(self.seen.youngest_on())
    }

    fn has_finished(&self, look: Day, because: &mut Vec<Because>) -> bool {
        let past_last = self.age_at_look() >= self.days.last;
        let needed = QUIET_DAYS.max(QUIET_SHARE * self.told.curve.t50).ceil() as i32;
        let quiet = look.days_since(self.seen.last_rise.unwrap_or(self.seen.youngest_on()));
        if past_last && quiet >= needed {
            because.push(Because::QuietFor { days: quiet, needed });
            return true;
        }
        let to_come = self.told.in_the_end.likely - self.seen.looks.emerged();
        let past_half = self.age_at_look() >= self.days.half;
        let little = to_come < WORTH_WAITING_SHARE * self.seen.looks.seeds();
        // Where hardly any came up, little to come means failing, not finished, until the last day has passed.
        let good = self.seen.looks.emerged() >= FAILING_SHARE * self.expected;
        if past_half && little && (good || past_last) {
            because.push(Because::LittleToCome(to_come));
            return true;
        }
        false
    }

    /// Whether at the half day or later less than 30 % of what was expected is up.
    pub(crate) fn far_behind_at_half(&self) -> bool {
        let past_half = self.age_at_look() >= self.days.half;
        past_half && self.seen.looks.emerged() < SOW_AGAIN_SHARE * self.expected
    }
}
