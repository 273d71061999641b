//! What a cut of nurse plants does to the light of the young plants that stand beneath.

use super::fewest_cuts::MOST_STEP;
use crate::base::{Day, SpeciesKey};
use crate::nursery::entry::NurseCut;
use crate::nursery::entry::types::CutWhat;
use crate::reckon::light::by_reading::{self, density};
use crate::reckon::light::crown::TREE_M;
use crate::reckon::light::scene::{crowns_of, ground_of, living_of, seen_along, some_of, species_living, suns_of};
use crate::reckon::light::stand::{FOLLOWER_LEAVES, Leaves, Stand, When, has_followers, stands};
use crate::reckon::light::{MOST_POINTS, SKY_DIRECTIONS, mean};
use crate::reckon::site::Site;
use crate::reckon::stock::{BedStory, ends_with_harvest};
use crate::reckon::tray::exposure::stands_any_light;
use crate::science::shade::{Month, Positions, even_sky, maps};

/// Young plants that get much more light at once.
#[derive(Clone, PartialEq, Debug)]
pub struct LightJump {
    /// Which.
    pub species: SpeciesKey,
    /// How many live there.
    pub plants: u32,
    /// Their light before, a share of the open light.
    pub from: f64,
    /// And after.
    pub to: f64,
}

/// The plants beneath that get more than 1.6 times their light by a cut; of several species those that get most. None where
/// the light cannot be reckoned, or nothing stands there that minds.
pub(crate) fn jump_by(story: &BedStory, site: &Site, cut: &NurseCut, day: Day) -> Option<LightJump> {
    let nurse = site.species_key(&cut.nurse)?;
    let bed = story.layout.on(day)?;
    let whole = stands(story, site, bed, When { day, before: None }).ok()?;
    let own: Vec<_> = story.nurses.iter().filter(|one| one.nurse == nurse && one.alive > 0).collect();
    let alive: u32 = own.iter().map(|one| one.alive).fold(0, u32::saturating_add);
    let left = left_by(site, &nurse, cut, alive);
    let is_cut = |stand: &Stand| own.iter().any(|one| one.entry == stand.entry);
    let after = |stand: &Stand| {
        let part = if is_cut(stand) { left } else { 1.0 };
        let Leaves { thin, likely, dense } = stand.leaves;
        Leaves { thin: thin * part, likely: likely * part, dense: dense * part }
    };
    let cut_back: Vec<Stand> = whole
        .iter()
        .map(|stand| Stand {
            spots: stand.spots.clone(),
            size: stand.size,
            density: stand.density,
            leaves: after(stand),
            entry: stand.entry.clone(),
        })
        .collect();
    let light = |standing: &[Stand], points: &[[f64; 2]], factor: f64| {
        let positions = Positions::new(points, TREE_M, ground_of(bed)).ok()?;
        let (sun, diffuse_share) = suns_of(site, bed, day);
        let crowns = crowns_of(standing, |leaves| leaves.likely, factor);
        let made = maps(&positions, &[Month { crowns, sun }], &seen_along(&even_sky(SKY_DIRECTIONS), bed));
        made.first().map(|map| mean(&map.light(diffuse_share)).min(1.0))
    };
    let jumps = species_living(story).into_iter().filter_map(|species| {
        let profile = site.profile(&species).map(|profile| &**profile);
        let points = some_of(living_of(story, site, &species, day), MOST_POINTS);
        if stands_any_light(profile) || points.is_empty() {
            return None;
        }
        let told = by_reading::told(story, site, bed, &species, day);
        let factor = density(told.as_ref(), day).factor;
        let (from, to) = (light(&whole, &points, factor)?, light(&cut_back, &points, factor)?);
        let living = story.cohorts.iter().filter(|cohort| cohort.species.as_ref() == Some(&species));
        let plants = living.map(|cohort| cohort.living).fold(0, u32::saturating_add);
        (to > from * MOST_STEP).then_some(LightJump { species, plants, from, to })
    });
    jumps.max_by(|one, two| (one.to / one.from).total_cmp(&(two.to / two.from)))
}

/// The share of the shade of a nurse plant that a cut leaves.
fn left_by(site: &Site, nurse: &SpeciesKey, cut: &NurseCut, alive: u32) -> f64 {
    let counted = cut.count.map(|count| (f64::from(count.0) / f64::from(alive.max(1))).min(1.0));
    let share = cut.share.map(|share| share.0);
    let of_plants = counted.or(share).unwrap_or(1.0);
    let followed = site.profile(nurse).is_some_and(|profile| has_followers(profile));
    match cut.what {
        CutWhat::Leaves => 1.0 - counted.unwrap_or(1.0) * share.unwrap_or(1.0),
        CutWhat::Stem | CutWhat::Harvest if followed => 1.0 - of_plants * (1.0 - FOLLOWER_LEAVES),
        CutWhat::Harvest if !ends_with_harvest(nurse) => 1.0,
        CutWhat::Stem | CutWhat::Harvest | CutWhat::Felled => 1.0 - of_plants,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reckon::test_book::{TestBook, day};
    use serde_json::json;

    const ON: &str = "2026-04-10";

    fn bed(coffee: bool) -> TestBook {
        let mut page = TestBook::upper_terrace(30.0, 12.0);
        page.nurses("2025-06-10", "cassava", 250, 1.2);
        if coffee {
            let came = json!({"tray":"cof-1","species":"coffee","count":30,"from":"bought","form":"bag"});
            page.write("2026-03-01", "plants_received", came);
            page.write("2026-03-01", "outplanted", json!({"tray":"cof-1","bed":"Upper terrace","count":30}));
        }
        page
    }

    fn jump(page: &TestBook, what: &str, share: f64) -> Option<LightJump> {
        let (story, site) = page.story(ON);
        let cut = json!({"bed":"Upper terrace","nurse":"cassava","what":what,"share":share});
        let cut: NurseCut = serde_json::from_value(cut).unwrap();
        jump_by(&story, &site, &cut, day(ON))
    }

    #[test]
    fn lifting_all_the_cassava_jumps_the_coffee_beneath_and_a_tenth_of_it_does_not() {
        let page = bed(true);
        let all = jump(&page, "harvest", 1.0).unwrap();
        assert_eq!((all.species.as_str(), all.plants), ("COA", 30));
        assert!(all.to > 0.99 && all.from < 0.6, "{all:?}");
        assert_eq!(jump(&page, "harvest", 0.1), None);
        // Chopped whole it is as bright.
        assert!((jump(&page, "leaves", 1.0).unwrap().to - all.to).abs() < 1e-6);
    }

    #[test]
    fn where_nothing_stands_beneath_nothing_jumps() {
        assert_eq!(jump(&bed(false), "harvest", 1.0), None);
    }
}
