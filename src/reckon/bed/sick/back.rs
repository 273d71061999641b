//! What is seen in a bed soon after planting tells of the trays its plants came out of: it may be hidden in those that stayed.

use std::sync::Arc;

use super::{died_of_it, harms_species, most_died};
use crate::base::{Day, SpeciesKey};
use crate::nursery::pest::{comes_along, is_same_pest, nature_of};
use crate::reckon::picture::Gap;
use crate::reckon::site::Site;
use crate::reckon::stock::{BedStory, CameFrom};
use crate::reckon::tray::pest::kin::{FromBed, LEFT_BEFORE_DAYS, Told};
use crate::reckon::tray::pest::{LOOK_AFTER_DAYS, PEST_HOLDS_PCT, Written, hides_days, hides_together_days};

/// What beds tell of the trays that their plants came out of.
pub(crate) fn of_beds<'a>(beds: impl Iterator<Item = &'a Arc<BedStory>>, site: &Site, day: Day) -> Vec<FromBed> {
    let told = |story: &Arc<BedStory>| {
        let planted = story.came_from.iter().any(|came| came.planted <= day);
        let tells = planted && !(story.pests.is_empty() && story.deaths.is_empty());
        if tells { [sick(story, site, day), died(story, day)].concat() } else { Vec::new() }
    };
    beds.flat_map(told).collect()
}

fn species_of<'a>(story: &'a BedStory, came: &CameFrom) -> Option<&'a SpeciesKey> {
    let cohort = story.cohorts.iter().find(|cohort| cohort.entry == came.entry);
    let nurse = || story.nurses.iter().find(|nurse| nurse.entry == came.entry).map(|nurse| &nurse.nurse);
    cohort.and_then(|cohort| cohort.species.as_ref()).or_else(nurse)
}

fn from_bed(story: &BedStory, came: &CameFrom, told: Told) -> FromBed {
    FromBed {
        bed: story.name.clone(),
        tray: came.tray.clone(),
        plants: came.plants,
        planted: came.planted,
        entry: came.entry.clone(),
        told,
    }
}

/// A sickness that was seen in a bed while it could still be hidden in plants that had come into it, and that was not there before. Of plants
/// out of several trays nobody says whose it was, and wilting after planting has many causes: these ask for care.
fn sick(story: &BedStory, site: &Site, day: Day) -> Vec<FromBed> {
    let of_loss: Vec<Written> = story.deaths.iter().filter_map(|death| died_of_it(story, death)).collect();
    let named = |look: &&Written| {
        let nature = nature_of(&look.what.what, None);
        !nature.is_sign && !nature.is_unknown
    };
    let looks: Vec<&Written> = story.pests.iter().chain(of_loss.iter().filter(named)).collect();
    let looks: Vec<&Written> = looks.into_iter().filter(|look| look.from <= day && !look.finds_none()).collect();
    let mut all = Vec::new();
    for look in looks.iter().copied().filter(|look| comes_along(&look.what.what)) {
        let same = |what: &str| is_same_pest(what, &look.what.what);
        let of_it = |other: &&&Written| same(&other.what.what);
        let spreads = looks.iter().filter(of_it).filter_map(|other| other.what.spreads).next_back();
        let nature = nature_of(&look.what.what, spreads);
        let unsure = nature.is_sign || nature.is_unknown;
        // What may be thirst is no sickness of weeks ago.
        let hides = hides_days(nature).min(if unsure { LOOK_AFTER_DAYS } else { i32::MAX });
        let few = look.what.share_pct.is_some_and(|share| share < PEST_HOLDS_PCT);
        if hides == 0 || unsure && few {
            continue;
        }
        let may_have = |came: &&CameFrom| {
            let was_there = looks.iter().filter(of_it).any(|other| other.from < came.planted);
            let of_other = story.brought.iter().any(|one| one.tray != came.tray && same(&one.seen.what.what));
            let host = species_of(story, came).is_none_or(|species| harms_species(&look.what.what, site, species));
            // What lives in soil is seen late: after the weeks in which it hides it asks for care.
            let reach = hides.max(if unsure { 0 } else { hides_together_days(nature) });
            (0..=reach).contains(&look.from.days_since(came.planted)) && host && !was_there && !of_other
        };
        let came: Vec<&CameFrom> = story.came_from.iter().filter(may_have).collect();
        let alone = came.iter().all(|one| came.first().is_some_and(|first| first.tray == one.tray));
        all.extend(came.into_iter().map(|came| {
            let soon = look.from.days_since(came.planted) <= hides;
            let told = Told::Sick { seen: look.clone(), spreads, hides, holds: alone && !unsure && soon };
            from_bed(story, came, told)
        }));
    }
    all
}

/// Most plants of a species that died within weeks of planting, of nobody knows what.
fn died(story: &BedStory, day: Day) -> Vec<FromBed> {
    let of_came = |came: &CameFrom| {
        let asked = most_died(story, species_of(story, came)?, day).filter(|asked| asked.blocks)?;
        let Some(Gap::MostOfBedDied { on, dead, alive, .. }) = asked.gap() else { return None };
        let soon = (0..=LEFT_BEFORE_DAYS).contains(&on.days_since(came.planted));
        soon.then(|| from_bed(story, came, Told::Died { on: *on, gone: *dead, alive: *alive }))
    };
    story.came_from.iter().filter(|came| came.planted <= day).filter_map(of_came).collect()
}
