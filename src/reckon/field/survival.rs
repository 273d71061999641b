//! What became of each outplanting: planted, living, and the counts at 1, 3, 6 and 12 months.

use crate::base::{Day, EntryId, SpeciesKey, TrayCode};
use crate::reckon::round::intervals::{DAYS_PER_MONTH, SURVIVAL_COUNTS_FROM_SHARE, SURVIVAL_MONTHS};
use crate::reckon::stock::{BedStory, CohortStory, SurvivalLook};

/// A survival count.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct SurvivalCount {
    /// The day.
    pub(crate) day: Day,
    /// Alive.
    pub(crate) alive: u32,
    /// Dead.
    pub(crate) dead: u32,
    /// Whether it counted plants of other days too.
    pub(crate) with_others: bool,
}

/// Plants of one species set on one day.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Outplanting {
    /// The species; none where its tray is unknown.
    pub(crate) species: Option<SpeciesKey>,
    /// The tray; none for plants found or sown at stake.
    pub(crate) tray: Option<TrayCode>,
    /// The day.
    pub(crate) day: Day,
    /// How many went in.
    pub(crate) planted: u32,
    /// How many live by the books.
    pub(crate) living: u32,
    /// Whether they were found standing.
    pub(crate) found: bool,
    /// Whether they are seeds at stake.
    pub(crate) at_stake: bool,
    /// The rows, as written.
    pub(crate) rows: Option<String>,
    /// How many places were written.
    pub(crate) places: usize,
    /// The counts at 1, 3, 6 and 12 months.
    pub(crate) counts: [Option<SurvivalCount>; 4],
    /// The entry.
    pub(crate) entry: EntryId,
}

/// The outplantings of a bed, the newest first.
pub(crate) fn outplantings(story: &BedStory, day: Day) -> Vec<Outplanting> {
    let set = story.cohorts.iter().filter(|cohort| cohort.day <= day);
    let mut all: Vec<Outplanting> = set.map(|cohort| outplanting(story, cohort, day)).collect();
    all.sort_by_key(|one| std::cmp::Reverse(one.day));
    all
}

fn outplanting(story: &BedStory, cohort: &CohortStory, day: Day) -> Outplanting {
    let mut counts: [Option<SurvivalCount>; 4] = Default::default();
    for look in story.survival.iter().filter(|look| look.day <= day && look.cohorts.contains(&cohort.entry)) {
        // A look at some rows is no count of the planting.
        let at = months_of(look, cohort).filter(|_| look.part.is_none());
        if let Some(count) = at.and_then(|at| counts.get_mut(at)) {
            let with_others = look.cohorts.len() > 1;
            *count = Some(SurvivalCount { day: look.day, alive: look.alive, dead: look.dead, with_others });
        }
    }
    Outplanting {
        species: cohort.species.clone(),
        tray: cohort.tray.clone(),
        day: cohort.day,
        planted: cohort.planted,
        living: cohort.living,
        found: cohort.found,
        at_stake: cohort.at_stake,
        rows: cohort.rows.clone(),
        places: cohort.spots.len(),
        counts,
        entry: cohort.entry.clone(),
    }
}

/// Which of the counts a look is: the last whose time had come.
fn months_of(look: &SurvivalLook, cohort: &CohortStory) -> Option<usize> {
    let age_days = f64::from(look.day.days_since(cohort.day));
    SURVIVAL_MONTHS
        .iter()
        .rposition(|months| age_days >= (f64::from(*months) * DAYS_PER_MONTH * SURVIVAL_COUNTS_FROM_SHARE).round())
}
