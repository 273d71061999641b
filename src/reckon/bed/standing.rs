//! The standing of a bed for a species, from the questions of its verdict.

use crate::base::{Day, SpeciesKey};
use crate::reckon::picture::{Criterion, Rule, Standing};
use crate::reckon::stock::{BedStory, SurvivalLook};

/// Up to this age of the plants, in days, every dead plant is worth refilling (the 1-month count, same rains). Common
/// practice.
pub(crate) const FIRST_COUNT_DAYS: i32 = 45;
/// Up to this age, in days, gaps are worth filling below [`SECOND_COUNT_SHARE`] (the 3-month count). Common practice.
pub(crate) const SECOND_COUNT_DAYS: i32 = 120;
/// Share living below which gaps are filled at the 3-month count. Common practice.
pub(crate) const SECOND_COUNT_SHARE: f64 = 0.9;
/// Share living below which gaps are filled at later counts. Common practice; Evans & Turnbull 2004, from memory.
pub(crate) const LATER_COUNT_SHARE: f64 = 0.8;

/// The standing of a bed for a species.
pub fn standing(story: &BedStory, species: &SpeciesKey, open: u32, criteria: &[Criterion], day: Day) -> Standing {
    let blocking = || criteria.iter().filter(|criterion| criterion.blocks).map(|criterion| criterion.rule());
    let nursed = story.nurses.iter().any(|nurse| nurse.alive > 0);
    if open == 0 {
        Standing::Full
    } else if blocking().next().is_none() {
        if gaps_worth_filling(story, species, day) { Standing::Refill } else { Standing::Open }
    } else if blocking().all(|rule| matches!(rule, Rule::Water | Rule::Season)) {
        let drowned = criteria.iter().any(|one| one.rule() == Rule::Water && one.expected.is_some());
        if drowned { Standing::Soaked } else { Standing::Dry }
    } else if nursed {
        Standing::Nursing
    } else {
        Standing::Bare
    }
}

/// Whether the last survival counts of a species, of any of its cohorts, found gaps worth filling that nobody has filled
/// since. Plants set since fill the gaps found first.
pub(crate) fn gaps_worth_filling(story: &BedStory, species: &SpeciesKey, day: Day) -> bool {
    let looks: Vec<&SurvivalLook> =
        story.survival.iter().filter(|look| look.species == *species && look.day <= day).collect();
    let standing = looks.iter().enumerate().filter(|(at, look)| still_stands(look, looks.get(at + 1..)));
    let gaps = || standing.clone().map(|(_, look)| *look).filter(|look| worth_filling(look));
    // A planting on the day of a count came after it.
    let mut set: Vec<(Day, u32)> = story
        .cohorts
        .iter()
        .filter(|cohort| cohort.species.as_ref() == Some(species) && cohort.tray.is_some() && cohort.day <= day)
        .map(|cohort| (cohort.day, cohort.planted))
        .collect();
    // A look at some rows may have seen the dead of another count again, so it does not use up plants of its own.
    let in_part = gaps().filter(|look| look.part.is_some()).any(|look| {
        let since = set.iter().filter(|(on, _)| *on >= look.day).map(|(_, plants)| *plants);
        look.dead > since.fold(0, u32::saturating_add)
    });
    in_part || gaps().filter(|look| look.part.is_none()).any(|look| !filled(look, &mut set))
}

/// Whether a look is the last one of at least one of its cohorts: no later one of the whole bed, or of the same rows or
/// places, took its place.
fn still_stands(look: &SurvivalLook, later: Option<&[&SurvivalLook]>) -> bool {
    let replacing = || later.into_iter().flatten().filter(|other| other.part.is_none() || other.part == look.part);
    if look.cohorts.is_empty() {
        return replacing().next().is_none();
    }
    look.cohorts.iter().any(|cohort| !replacing().any(|other| other.cohorts.contains(cohort)))
}

/// Takes the dead of a look out of the plants set since; whether there were enough of them.
fn filled(look: &SurvivalLook, set: &mut [(Day, u32)]) -> bool {
    let mut gaps = look.dead;
    for (_, plants) in set.iter_mut().filter(|(on, _)| *on >= look.day) {
        let used = gaps.min(*plants);
        *plants -= used;
        gaps -= used;
    }
    gaps == 0
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
