//! The nurse plants of a bed at a moment: where each stands, how large it is, and how much of its leaves it carries after
//! cuts and towards the end of its life.

mod leaf_fall;
mod spots;

use leaf_fall::after_fall;
use spots::{evenly, spots_of};

use super::crown::{Size, day_taken, leaves_of, months_between, size_on};
use crate::base::{Day, EntryId, SpeciesKey};
use crate::nursery::entry::BedSet;
use crate::nursery::entry::types::CutWhat;
use crate::nursery::species::Profile;
use crate::reckon::bed::positions::{lines, positions_of};
use crate::reckon::picture::NoLight;
use crate::reckon::site::Site;
use crate::reckon::stock::{BedStory, CohortStory, GroundLook, LEAVES_BACK_DAYS, NurseStory};

/// A stem that was cut and sprouts again is back after so many days, on a straight line. Ours: Muschler et al. 1993 read a
/// third to two thirds of the shade back 6 months after a pollard.
pub(crate) const STEM_BACK_DAYS: f64 = 365.0;
/// The follower of a banana or plantain has so much of the leaves of its mother when that is cut. Ours, by Daniells 1987
/// (2.0 m tall of 3.0 m) and the leaf areas of Nyombi et al. 2009.
pub(crate) const FOLLOWER_LEAVES: f64 = 0.5;
/// And is as large as it after so many days. Common practice: it fruits 7 to 9 months after it.
pub(crate) const FOLLOWER_GROWN_DAYS: f64 = 243.0;
/// A nurse plant counted alive within so many days stands, however old it is. Ours: as long as a reading lasts.
const COUNT_TELLS_DAYS: i32 = 60;
/// A stem that dies after fruiting and lives shorter than this has no follower: maize. Ours.
const HAS_FOLLOWERS_MONTHS: f64 = 6.0;
/// Young trees cast no shade that counts until so many days after they were set out. Ours.
const TREES_SHADE_FROM_DAYS: i32 = 365;
/// More nurse plants than any bed has. Ours.
const MOST_PLANTS: u32 = 5_000;

/// A moment of a bed's story.
#[derive(Clone, Copy, Debug)]
pub(super) struct When {
    /// The day.
    pub day: Day,
    /// What was written of that day before this place among its entries; none = all of it.
    pub before: Option<usize>,
}

impl When {
    fn has(self, day: Day, order: usize) -> bool {
        day < self.day || (day == self.day && self.before.is_none_or(|before| order < before))
    }
}

/// How much of its leaves a nurse plant carries, as a share of all: at least, likely, at most.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(super) struct Leaves {
    pub thin: f64,
    pub likely: f64,
    pub dense: f64,
}

impl Leaves {
    /// The same where of what is left only so much is carried.
    fn with(self, carried: Leaves) -> Leaves {
        Leaves {
            thin: self.thin * carried.thin,
            likely: self.likely * carried.likely,
            dense: self.dense * carried.dense,
        }
    }
}

/// Plants alike.
pub(super) struct Stand {
    pub spots: Vec<[f64; 2]>,
    pub size: Size,
    /// Leaf density, m2 in a m3, and extinction.
    pub density: (f64, f64),
    pub leaves: Leaves,
    /// The entry that planted them.
    pub entry: EntryId,
}

/// What shades a bed at a moment, as far as it can be drawn.
#[derive(Default)]
pub(super) struct Standing {
    /// Whose crowns are known.
    pub known: Vec<Stand>,
    /// Why something that shades it is not among them.
    pub left_out: Option<NoLight>,
}

/// What shades a bed at a moment.
pub(super) fn stands(story: &BedStory, site: &Site, bed: &BedSet, when: When) -> Result<Vec<Stand>, NoLight> {
    let Standing { known, left_out } = standing(story, site, bed, when);
    left_out.map_or(Ok(known), Err)
}

/// The same where something that shades it may be unknown: without it the light is a bound from above.
pub(super) fn standing(story: &BedStory, site: &Site, bed: &BedSet, when: When) -> Standing {
    let mut all = Standing::default();
    let mut take = |one: Result<Option<Stand>, NoLight>| match one {
        Ok(stand) => all.known.extend(stand),
        Err(why) => all.left_out = all.left_out.take().or(Some(why)),
    };
    for nurse in story.nurses.iter().filter(|nurse| nurse.day <= when.day) {
        take(of_nurse(story, site, bed, nurse, when));
    }
    for cohort in story.cohorts.iter().filter(|cohort| cohort.living > 0 && cohort.day <= when.day) {
        take(set_out(story, site, bed, cohort, when));
    }
    all
}

fn of_nurse(
    story: &BedStory,
    site: &Site,
    bed: &BedSet,
    nurse: &NurseStory,
    when: When,
) -> Result<Option<Stand>, NoLight> {
    let alive = alive_at(story, nurse, when);
    if alive > MOST_PLANTS {
        return Err(NoLight::TooMany);
    }
    if alive == 0 {
        return Ok(None);
    }
    let profile = profile_of(site, &nurse.nurse)?;
    Ok(Some(Stand {
        spots: spots_of(nurse, alive, (bed.length_m.0, bed.width_m.0)),
        size: size_on(nurse, profile, day_taken(when.day))?,
        density: leaves_of(&nurse.nurse, profile)?,
        leaves: leaves_at(story, nurse, profile, when).with(after_fall(site, profile, when.day)),
        entry: nurse.entry.clone(),
    }))
}

fn profile_of<'a>(site: &'a Site, species: &SpeciesKey) -> Result<&'a Profile, NoLight> {
    site.profile(species).map(|profile| &**profile).ok_or_else(|| NoLight::NoCrown(species.clone()))
}

/// Plants of the plan that shade too: those of which a crown is known. Of trees that have none nothing is known once they
/// are no seedlings any more.
fn set_out(
    story: &BedStory,
    site: &Site,
    bed: &BedSet,
    cohort: &CohortStory,
    when: When,
) -> Result<Option<Stand>, NoLight> {
    let young = !cohort.found && when.day.days_since(cohort.day) < TREES_SHADE_FROM_DAYS;
    let species = match &cohort.species {
        Some(species) => species,
        None if young => return Ok(None),
        None => return Err(NoLight::NoSpecies),
    };
    let profile = site.profile(species).map(|profile| &**profile).filter(|profile| profile.growth_points.is_some());
    let Some(profile) = profile else {
        return if young { Ok(None) } else { Err(NoLight::NoCrown(species.clone())) };
    };
    let spots = positions_of(story, site, bed, species).unwrap_or_default();
    let spots: Vec<[f64; 2]> = spots.into_iter().map(|(position, _)| [position.x_m, position.y_m]).collect();
    let Some(line) = lines(site, bed, species).next() else { return Ok(None) };
    let nurse = as_nurse(species, cohort, (line.row_m.0, line.in_row_m.0));
    Ok(Some(Stand {
        spots: evenly(&spots, cohort.living as usize),
        size: size_on(&nurse, profile, day_taken(when.day))?,
        density: leaves_of(species, profile)?,
        leaves: leaves_at(story, &nurse, profile, when).with(after_fall(site, profile, when.day)),
        entry: cohort.entry.clone(),
    }))
}

/// A cohort of the plan as nurse plants; how old found ones are nobody wrote.
fn as_nurse(species: &SpeciesKey, cohort: &CohortStory, spacing_m: (f64, f64)) -> NurseStory {
    let planted = if cohort.found { 0 } else { cohort.planted };
    let set = NurseStory::set((species.clone(), planted), cohort.day, spacing_m, cohort.entry.clone());
    NurseStory { alive: cohort.living, gone: cohort.dead, ..set }
}

/// How many of a cohort lived at a moment: those that live now, and its part of what went later.
fn alive_at(story: &BedStory, nurse: &NurseStory, when: When) -> u32 {
    let of_it = |cut: &&GroundLook| cut.nurse == nurse.nurse;
    let order_of = |entry: &EntryId| story.cuts.iter().find(|cut| cut.entry == *entry).map(|cut| cut.order);
    let deaths = story.deaths.iter().filter(|death| death.species == nurse.nurse);
    let later = deaths.filter(|death| !when.has(death.day, order_of(&death.entry).unwrap_or(0)));
    let gone_later: u32 = later.map(|death| death.plants).fold(0, u32::saturating_add);
    // A count that found fewer is no death of its own.
    let counted = |cut: &&GroundLook| {
        cut.what.is_none()
            && !when.has(cut.day, cut.order)
            && !story.deaths.iter().any(|death| death.entry == cut.entry)
    };
    let by_count = story.cuts.iter().filter(of_it).filter(counted).filter_map(|cut| cut.plants);
    let gone_later = by_count.fold(gone_later, u32::saturating_add);
    let gone: u32 = story.nurses.iter().filter(|other| other.nurse == nurse.nurse).map(|other| other.gone).sum();
    if gone == 0 || gone_later == 0 {
        return nurse.alive;
    }
    let own = f64::from(gone_later.min(gone)) * f64::from(nurse.gone) / f64::from(gone);
    nurse.alive.saturating_add(own.round() as u32)
}

/// Whether the stems of a species die after fruiting and followers take their place.
pub(crate) fn has_followers(profile: &Profile) -> bool {
    let dies = profile.dies_after_fruiting.as_ref().is_some_and(|figure| figure.value);
    let lives = profile.stem_life_most_months.as_ref().is_some_and(|figure| figure.value >= HAS_FOLLOWERS_MONTHS);
    dies && lives
}

/// How much of its leaves a cohort carries at a moment.
fn leaves_at(story: &BedStory, nurse: &NurseStory, profile: &Profile, when: When) -> Leaves {
    let followed = has_followers(profile);
    let (mut mothers, mut followers, mut kept) = (1.0_f64, 0.0, 1.0);
    let cuts = story.cuts.iter().filter(|cut| cut.nurse == nurse.nurse && cut.day >= nurse.day);
    for cut in cuts.filter(|cut| when.has(cut.day, cut.order)) {
        let days = f64::from(day_taken(when.day).days_since(cut.day).max(0));
        let share = cut.share.clamp(0.0, 1.0);
        let lacks = |back_days: f64| share * (1.0 - days / back_days).max(0.0);
        match cut.what {
            Some(CutWhat::Leaves) => kept *= 1.0 - lacks(LEAVES_BACK_DAYS),
            Some(CutWhat::Stem | CutWhat::Harvest) if followed => {
                let taken = share.min(mothers);
                mothers -= taken;
                let grown = (days / FOLLOWER_GROWN_DAYS).min(1.0);
                followers += taken * (FOLLOWER_LEAVES + (1.0 - FOLLOWER_LEAVES) * grown);
            }
            Some(CutWhat::Stem) => kept *= 1.0 - lacks(STEM_BACK_DAYS),
            // Those are counted out, and pods leave the leaves.
            Some(CutWhat::Harvest | CutWhat::Felled) | None => {}
        }
    }
    let of_mothers = mothers_at(nurse, profile, when.day);
    let with = |of_mothers: f64| kept * (followers + mothers * of_mothers);
    Leaves { thin: with(of_mothers.thin), likely: with(of_mothers.likely), dense: with(of_mothers.dense) }
}

/// Of stems that nobody cut: all their leaves while they live; where they may have ended by their age, anything from what
/// then stands to all.
fn mothers_at(nurse: &NurseStory, profile: &Profile, day: Day) -> Leaves {
    let all = Leaves { thin: 1.0, likely: 1.0, dense: 1.0 };
    let followed = has_followers(profile);
    let after = if followed { FOLLOWER_LEAVES } else { 0.0 };
    let ended = Leaves { thin: after, likely: (1.0 + after) / 2.0, dense: 1.0 };
    let life = if followed { &profile.stem_life_least_months } else { &profile.stem_life_most_months };
    let Some(life) = life else { return all };
    if nurse.planted == 0 {
        return ended;
    }
    let counted = nurse.counted_on.is_some_and(|on| (0..COUNT_TELLS_DAYS).contains(&day.days_since(on)));
    let lives = months_between(nurse.day, day_taken(day)) <= life.value || (counted && !followed);
    if lives { all } else { ended }
}
