//! The rains: whether a day lies inside them, and the last day on which planting is safe.

use std::collections::BTreeSet;

use crate::base::{Day, EntryId};
use crate::nursery::entry::shape::month_day;
use crate::nursery::entry::{Rains, SeasonSet};
use crate::reckon::picture::quantity::Until;
use crate::reckon::picture::{Basis, Criterion, Question, RuleSource};
use crate::reckon::site::Site;

/// Days of rain a plant needs after planting: 8 weeks. Common practice.
pub(crate) const RAINS_LEFT_DAYS: i32 = 56;
/// Rains of so many days a year have no end to plant before. Ours.
const ALL_YEAR_DAYS: i32 = 360;

const SOURCE: RuleSource = RuleSource::SafeRains;

/// One occurrence of the rains.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Spell {
    /// First day.
    pub from: Day,
    /// Last day.
    pub until: Day,
    /// The last day on which planting is safe.
    pub last_safe: Day,
}

impl Spell {
    fn holds(&self, day: Day) -> bool {
        self.from <= day && day <= self.until
    }
}

/// Rains as they occur from the year before a day to the year after, in the order of their first days.
fn occurrences(season: &SeasonSet, day: Day) -> Vec<Spell> {
    let (year, _, _) = day.ymd();
    let mut all: Vec<Spell> = season
        .rains
        .iter()
        .flat_map(|rains| (year - 1..=year + 1).filter_map(|year| occurrence(rains, year)))
        .collect();
    all.sort_by_key(|spell| (spell.from, spell.until));
    all
}

/// The rains that begin in a year; where their last day comes before their first, they end in the next year.
fn occurrence(rains: &Rains, year: i32) -> Option<Spell> {
    let (first, last) = (month_day(&rains.from.0)?, month_day(&rains.until.0)?);
    let wraps = last < first;
    let (from, until) = (day_of(year, first)?, day_of(year + i32::from(wraps), last)?);
    let length_days = until.days_since(from) + 1;
    // Rains all year round: the end is only that of the calendar.
    let left_days = if length_days >= ALL_YEAR_DAYS { 0 } else { RAINS_LEFT_DAYS.min(length_days / 2) };
    Some(Spell { from, until, last_safe: until.plus(-left_days) })
}

/// A day of the year; 29 February is the 28th where there is none.
fn day_of(year: i32, (month, day): (u32, u32)) -> Option<Day> {
    Day::from_ymd(year, month, day).or_else(|| Day::from_ymd(year, month, day.saturating_sub(1)))
}

/// How many rainy seasons have begun after a day, up to and on another; none where no rains are described.
pub(crate) fn begun_since(site: &Site, since: Day, day: Day) -> Option<usize> {
    let season = site.season.on(day).filter(|season| !season.rains.is_empty())?;
    let (first, last) = (since.ymd().0, day.ymd().0);
    let all = season.rains.iter().flat_map(|rains| (first..=last).filter_map(|year| occurrence(rains, year)));
    let begun: BTreeSet<Day> = all.map(|spell| spell.from).filter(|from| since < *from && *from <= day).collect();
    Some(begun.len())
}

/// The rains a day lies in; of several, those that last longest.
pub(crate) fn rains_on(site: &Site, day: Day) -> Option<(EntryId, Spell)> {
    let (entry, season) = site.season.entry_on(day)?;
    let holding = occurrences(season, day).into_iter().filter(|spell| spell.holds(day));
    holding.max_by_key(|spell| spell.last_safe).map(|spell| (entry.clone(), spell))
}

/// Whether plants that went out when too little of the rains was left for them, or outside them, still wait on a day for the first rains
/// after that. Not where no rains are described.
pub(crate) fn waits_for_first_rains(site: &Site, planted: Day, day: Day) -> bool {
    let Some(season) = site.season.on(day) else { return false };
    let mut holding = occurrences(season, planted).into_iter().filter(|spell| spell.holds(planted));
    !holding.any(|spell| planted <= spell.last_safe) && begun_since(site, planted, day) == Some(0)
}

/// Whether plants that went out are young on a day: for 8 weeks, or as long as they wait for their first rains.
pub(crate) fn is_young(site: &Site, planted: Day, day: Day) -> bool {
    day.days_since(planted) < RAINS_LEFT_DAYS || waits_for_first_rains(site, planted, day)
}

/// The first rains, running or to come, in which a tray that is ready on a day can still be planted safely.
pub(crate) fn safe_rains_from(site: &Site, day: Day) -> Option<Spell> {
    let (_, season) = site.season.entry_on(day)?;
    occurrences(season, day).into_iter().filter(|spell| spell.last_safe >= day).min_by_key(|spell| spell.last_safe)
}

/// The rains that run on a day, else the next to come.
pub(crate) fn running_or_next(site: &Site, day: Day) -> Option<Spell> {
    let next = || {
        let (_, season) = site.season.entry_on(day)?;
        occurrences(season, day).into_iter().find(|spell| spell.from > day)
    };
    rains_on(site, day).map(|(_, spell)| spell).or_else(next)
}

/// Whether enough of the rains is left. Not known where no rains are described; then it does not block.
pub fn criterion(site: &Site, day: Day) -> Criterion {
    let described = site.season.entry_on(day).filter(|(_, season)| !occurrences(season, day).is_empty());
    let Some((entry, season)) = described else {
        return Criterion::unknown(Question::Season, None, false, SOURCE);
    };
    let next = occurrences(season, day).into_iter().find(|spell| spell.from > day);
    let (needed, met) = match (rains_on(site, day), next) {
        (Some((_, rains)), _) => (rains.last_safe, day <= rains.last_safe),
        (None, Some(next)) => (next.last_safe, false),
        // Only at the very end of the calendar.
        (None, None) => (day, false),
    };
    Criterion::found(Question::Season, Until(needed), day, Basis::Reckoned, met, SOURCE)
        .expected_on(next.filter(|_| !met).map(|next| next.from))
        .resting_on([entry.clone()])
}
