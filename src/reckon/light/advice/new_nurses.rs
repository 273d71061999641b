//! A bed that is too bright for a species: which nurse plants, how far apart and how long before, bring it into the band.

use crate::base::{Day, SpeciesKey};
use crate::nursery::entry::BedSet;
use crate::nursery::species::{Profile, Role};
use crate::reckon::light::coming::{SHADE_ENDS_SHARE, going_on};
use crate::reckon::light::crown::TREE_M;
use crate::reckon::light::in_band::HALF_YEAR_MONTHS;
use crate::reckon::light::mean;
use crate::reckon::light::months::month_on;
use crate::reckon::light::scene::{crowns_of, ground_of, points_of, seen_along, suns_of};
use crate::reckon::light::stand::{FOLLOWER_LEAVES, Stand, When, has_followers, stands};
use crate::reckon::site::Site;
use crate::reckon::stock::{BedStory, NurseStory};
use crate::reckon::tray::exposure::light_band;
use crate::science::shade::{Month, Positions, even_sky, maps};
use crate::science::spacing::{Edges, Laying, SpacingPattern, positions};

/// Months after planting that are looked at. Ours: a year and a half, past it other plants shade.
const MONTHS_LOOKED_AT: usize = 18;
/// Distances tried, as parts of those of the profile. Ours.
const DISTANCES: [f64; 3] = [0.8, 1.0, 1.5];
/// Positions and directions of the sky while nurse plants are compared. Ours: a page is not kept waiting.
const COMPARED_POINTS: usize = 16;
const COMPARED_SKY: u32 = 100;
/// Nurse plants that are told. Ours.
const TOLD: usize = 3;
/// Those that bring fewer of the positions inside are not. Ours.
const LEAST_INSIDE: f64 = 0.3;
/// As good as the best that they come to: the first month of it is told. Ours.
const AS_GOOD: f64 = 0.9;

/// Nurse plants that would bring a bed into the band of a species.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct NewNurses {
    /// Which.
    pub nurse: SpeciesKey,
    /// Distance between rows, m.
    pub row_m: f64,
    /// Distance in the row, m.
    pub in_row_m: f64,
    /// How many the bed holds so.
    pub plants: u32,
    /// Months after they are planted from which the light suits.
    pub after_months: u32,
    /// The share of the open positions inside the band, mean of six months from then on.
    pub inside: f64,
    /// So many parts, a month apart, so that no month takes more than a quarter of their shade when they end.
    pub parts: u32,
}

/// The best nurse plants to set today for a species, best first; none where the bed is not too bright for it or what stands
/// there cannot be drawn.
pub(crate) fn new_nurses(story: &BedStory, site: &Site, species: &SpeciesKey, day: Day) -> Vec<NewNurses> {
    let band = light_band(site.profile(species).map(|profile| &**profile)).filter(|band| band.1 < 1.0);
    let Some((bed, band)) = story.layout.on(day).zip(band) else { return Vec::new() };
    let points = points_of(story, site, bed, species, day, COMPARED_POINTS);
    let later = going_on(story, site, day);
    let too_bright = |story: &BedStory| {
        let standing = stands(story, site, bed, When { day, before: None }).ok()?;
        Some(mean(&light(&standing, &points, (site, bed, day))?) > band.1)
    };
    if too_bright(story) != Some(true) {
        return Vec::new();
    }
    let suits = |profile: &&std::sync::Arc<Profile>| profile.role == Role::Nurse && profile.growth_points.is_some();
    let mut all: Vec<NewNurses> = Vec::new();
    for (key, profile) in site.species.iter().filter(|(_, profile)| suits(profile)) {
        let tried = DISTANCES
            .iter()
            .filter_map(|part| set_so(&later, (site, bed), (key, profile, *part), (&points, band, day)));
        // Of one nurse plant the distance that serves best.
        all.extend(tried.max_by(|one, two| one.inside.total_cmp(&two.inside)));
    }
    all.retain(|one| one.inside >= LEAST_INSIDE);
    all.sort_by(|one, two| two.inside.total_cmp(&one.inside).then(one.after_months.cmp(&two.after_months)));
    all.truncate(TOLD);
    all
}

/// What one kind of nurse plant at one distance comes to.
fn set_so(
    later: &BedStory,
    (site, bed): (&Site, &BedSet),
    (key, profile, part): (&SpeciesKey, &Profile, f64),
    (points, band, day): (&[[f64; 2]], (f64, f64), Day),
) -> Option<NewNurses> {
    let row_m = profile.row_m.as_ref()?.value * part;
    let in_row_m = profile.in_row_m.as_ref()?.value * part;
    let laying = Laying::new(SpacingPattern::Rectangle, Some(row_m), in_row_m);
    let laid = positions(bed.length_m.0, bed.width_m.0, &Laying { edges: Edges::Half, ..laying }).ok()?;
    let plants = u32::try_from(laid.len()).ok().filter(|plants| *plants > 0)?;
    let mut with = later.clone();
    let entry = story_entry(later)?;
    with.nurses.push(NurseStory::set((key.clone(), plants), day, (row_m, in_row_m), entry));
    let inside: Vec<f64> = (1..=MONTHS_LOOKED_AT + HALF_YEAR_MONTHS)
        .map_while(|at| {
            let on = month_on(day, at);
            let standing = stands(&with, site, bed, When { day: on, before: None }).ok()?;
            let light = light(&standing, points, (site, bed, on))?;
            let inside = light.iter().filter(|light| (band.0..=band.1).contains(*light)).count();
            Some(inside as f64 / light.len().max(1) as f64)
        })
        .collect();
    let half_years: Vec<f64> =
        inside.windows(HALF_YEAR_MONTHS).map(|months| months.iter().sum::<f64>() / months.len() as f64).collect();
    let best = half_years.iter().copied().fold(0.0, f64::max);
    let first = half_years.iter().position(|mean| *mean >= AS_GOOD * best)?;
    // Stems leave their followers' shade, whatever else ends leaves none.
    let goes = if has_followers(profile) { 1.0 - FOLLOWER_LEAVES } else { 1.0 };
    Some(NewNurses {
        nurse: key.clone(),
        row_m,
        in_row_m,
        plants,
        after_months: first as u32 + 1,
        inside: half_years[first],
        parts: (goes / SHADE_ENDS_SHARE).ceil() as u32,
    })
}

/// An entry of the bed that what is only tried goes under.
fn story_entry(story: &BedStory) -> Option<crate::base::EntryId> {
    story.layout.each().next().map(|(_, entry, _)| entry.clone())
}

fn light(standing: &[Stand], points: &[[f64; 2]], (site, bed, on): (&Site, &BedSet, Day)) -> Option<Vec<f64>> {
    let positions = Positions::new(points, TREE_M, ground_of(bed)).ok()?;
    let (sun, diffuse_share) = suns_of(site, bed, on);
    let crowns = crowns_of(standing, |leaves| leaves.likely, 1.0);
    let made = maps(&positions, &[Month { crowns, sun }], &seen_along(&even_sky(COMPARED_SKY), bed));
    let light = made.first().map(|map| map.light(diffuse_share))?;
    Some(light.into_iter().map(|light| light.min(1.0)).collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reckon::test_book::{TestBook, day};
    use serde_json::json;

    const ON: &str = "2026-04-10";

    fn bed() -> TestBook {
        TestBook::upper_terrace(24.0, 12.0)
    }

    fn advised(page: &TestBook) -> Vec<NewNurses> {
        let (story, site) = page.story(ON);
        new_nurses(&story, &site, &SpeciesKey::new("COA"), day(ON))
    }

    #[test]
    fn what_is_advised_brings_the_bed_into_the_band_when_it_says_so() {
        let all = advised(&bed());
        assert!(!all.is_empty() && all.len() <= TOLD, "{all:?}");
        assert!(all.windows(2).all(|pair| pair[0].inside >= pair[1].inside));
        let best = &all[0];
        assert!(best.inside >= LEAST_INSIDE && best.after_months >= 2, "{best:?}");
        // Planted so, the months that were told have the light: by the reckoning that everybody sees.
        let mut page = bed();
        let set = json!({"bed":"Upper terrace","nurse":best.nurse.as_str(),"count":best.plants,"row_m":best.row_m,
            "in_row_m":best.in_row_m});
        page.write(ON, "nurse_planted", set);
        let (story, site) = page.story(ON);
        let months =
            crate::reckon::light::months::light_months(&story, &site, &SpeciesKey::new("COA"), (day(ON), 24)).unwrap();
        let from = best.after_months as usize;
        let half_year = months[from..from + HALF_YEAR_MONTHS].iter().filter_map(|month| month.inside);
        let inside = half_year.sum::<f64>() / HALF_YEAR_MONTHS as f64;
        assert!((inside - best.inside).abs() < 0.2, "{inside} {best:?}");
        assert!(months[0].inside.unwrap() < inside, "{:?}", months[0]);
    }

    #[test]
    fn a_bed_that_is_shaded_already_is_advised_nothing() {
        let mut page = bed();
        let set = json!({"bed":"Upper terrace","nurse":"plantain","count":48,"row_m":2,"in_row_m":3});
        page.write("2025-06-10", "nurse_planted", set);
        assert_eq!(advised(&page), []);
    }
}
