//! The standing of a bed for a species, from the questions of its verdict.

use crate::base::{Day, SpeciesKey};
use crate::reckon::picture::{Criterion, Rule, Standing};
use crate::reckon::stock::{BedStory, SurvivalLook};

/// Up to this age of the plants, in days, every dead plant is worth refilling (the 1-month count, same rains). Common
/// practice.
pub const FIRST_COUNT_DAYS: i32 = 45;
/// Up to this age, in days, gaps are worth filling below [`SECOND_COUNT_SHARE`] (the 3-month count). Common practice.
pub const SECOND_COUNT_DAYS: i32 = 120;
/// Share living below which gaps are filled at the 3-month count. Common practice.
pub const SECOND_COUNT_SHARE: f64 = 0.9;
/// Share living below which gaps are filled at later counts. Common practice; Evans & Turnbull 2004, from memory.
pub const LATER_COUNT_SHARE: f64 = 0.8;

/// The standing of a bed for a species.
pub fn standing(story: &BedStory, species: &SpeciesKey, open: u32, criteria: &[Criterion], day: Day) -> Standing {
    let blocking = || criteria.iter().filter(|criterion| criterion.blocks).map(|criterion| criterion.rule);
    let light_fits = criteria.iter().any(|criterion| criterion.rule == Rule::LightNow && criterion.met == Some(true));
    let nursed = story.nurses.iter().any(|nurse| nurse.alive > 0);
    if open == 0 {
        Standing::Full
    } else if blocking().next().is_none() {
        if gaps_worth_filling(story, species, day) { Standing::Refill } else { Standing::Open }
    } else if blocking().all(|rule| matches!(rule, Rule::Water | Rule::Season)) {
        Standing::Dry
    } else if !nursed && !light_fits && story.work.is_empty() {
        Standing::Bare
    } else {
        Standing::Nursing
    }
}

/// Whether the last survival count of a species found gaps worth filling that nobody has filled since.
pub fn gaps_worth_filling(story: &BedStory, species: &SpeciesKey, day: Day) -> bool {
    let looks = story.survival.iter().rev().filter(|look| look.species == *species && look.day <= day);
    let Some(look) = looks.max_by_key(|look| look.day) else { return false };
    // A planting on the day of the count came after it.
    let since = story.cohorts.iter().filter(|cohort| {
        cohort.species.as_ref() == Some(species) && cohort.tray.is_some() && cohort.day >= look.day && cohort.day <= day
    });
    let refilled = since.map(|cohort| cohort.planted).fold(0, u32::saturating_add);
    look.dead > refilled && worth_filling(look)
}

fn worth_filling(look: &SurvivalLook) -> bool {
    let share = f64::from(look.alive) / (f64::from(look.alive) + f64::from(look.dead));
    let age_days = look.outplanted_on.map(|planted| look.day.days_since(planted));
    match age_days {
        Some(age) if age <= FIRST_COUNT_DAYS => look.dead > 0,
        Some(age) if age <= SECOND_COUNT_DAYS => share < SECOND_COUNT_SHARE,
        Some(_) | None => share < LATER_COUNT_SHARE,
    }
}
