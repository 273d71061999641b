//! When a pair opens in a coming week: what ends by itself, and what hands can do before.

use crate::base::Day;
use crate::base::day::WEEK_DAYS;
use crate::reckon::field::takes_days;
use crate::reckon::picture::question::Ends;
use crate::reckon::picture::{Criterion, Rule};

/// A week of the plan.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) struct Week {
    /// Its number, from 1.
    pub(super) number: u32,
    /// Its first day.
    pub(super) from: Day,
}

impl Week {
    /// Its last day.
    pub(super) fn to(self) -> Day {
        self.from.plus(WEEK_DAYS - 1)
    }
}

/// From when a pair can go in a week, and what has to be done before.
#[derive(Clone, PartialEq, Debug)]
pub(super) struct Opens {
    /// The day.
    pub(super) from: Day,
    /// What is to be done, by its question.
    pub(super) first: Vec<Rule>,
}

/// Whether a pair can go in a week. `criteria` are its questions on the first day of the week, when nothing more was done and only time
/// passed; `today` are those of the day on which the plan is made.
///
/// What ends by itself in the week opens it from that day. Work that hands do in a day is done before, hardening takes its days from
/// today, and a rain that is missed weeks ahead is waited for. What nobody knows today is no ground for a plan.
pub(super) fn opens(criteria: &[Criterion], today: &[Criterion], week: Week, on: Day) -> Option<Opens> {
    if today.iter().any(asks_for_a_look) {
        return None;
    }
    let (mut from, mut first) = (week.from, Vec::new());
    for criterion in criteria.iter().filter(|criterion| criterion.blocks) {
        let rule = criterion.rule();
        if let Some(expected) = criterion.expected.filter(|expected| *expected > week.from) {
            if expected > week.to() {
                return None;
            }
            from = from.max(expected);
            continue;
        }
        let now = today.iter().find(|now| now.rule() == rule);
        let ready_on = match (rule.ends(), criterion.met()) {
            (Ends::WithOthers, _) => continue,
            (Ends::Worked, _) => on.plus(1),
            (Ends::Begun, Some(false)) => on.plus(takes_days(criterion)),
            (Ends::WithRain, _) if week.number > 1 => week.from,
            // A reading that grows too old is read again.
            (_, None) if now.is_some_and(|now| now.met() == Some(true)) => week.from,
            _ => return None,
        };
        if ready_on > week.to() {
            return None;
        }
        from = from.max(ready_on);
        first.push(rule);
    }
    Some(Opens { from, first })
}

/// What a look has to answer first, whatever a later day would make of it: what nobody knows, and a pest or a sickness of which no day is known
/// on which it ends. That it is forgotten in some weeks is no ground for a plan.
fn asks_for_a_look(criterion: &Criterion) -> bool {
    let asks = criterion.met().is_none() && criterion.rule().ends() == Ends::Open;
    criterion.blocks && criterion.expected.is_none() && (asks || criterion.rule() == Rule::Pest)
}
