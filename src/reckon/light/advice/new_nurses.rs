//! A bed that is too bright for a species: which nurse plants, how far apart and how long before, bring it into the band.

use crate::base::{Day, SpeciesKey};
use crate::nursery::entry::BedSet;
use crate::nursery::species::{Profile, Role};
use crate::reckon::bed::season::safe_rains_from;
use crate::reckon::light::coming::{SHADE_ENDS_SHARE, going_on};
use crate::reckon::light::crown::{DAYS_PER_MONTH, TREE_M};
use crate::reckon::light::in_band::HALF_YEAR_MONTHS;
use crate::reckon::light::mean;
use crate::reckon::light::months::month_on;
use crate::reckon::light::scene::{crowns_of, ground_of, points_of, seen_along, suns_of};
use crate::reckon::light::stand::{FOLLOWER_LEAVES, Stand, When, has_followers, stands};
use crate::reckon::picture::Picture;
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
    /// They are to be set by this day; of several parts the last.
    pub set_by: Day,
    /// The light suits from this day on.
    pub suits_from: Day,
    /// The day on which it is to suit.
    pub wanted_on: Day,
    /// The share of the open positions inside the band, mean of six months from the day on which it suits.
    pub inside: f64,
    /// So many parts, a month apart, so that no month takes more than a quarter of their shade when they end.
    pub parts: u32,
}

impl NewNurses {
    /// Whether they suit only after the day that is wanted, set however soon.
    pub(crate) fn is_late(&self) -> bool {
        self.suits_from > self.wanted_on
    }
}

/// The day on which the light is to suit a species where nobody named one: when its first tray can be planted in safe rains.
pub(crate) fn wanted_on(picture: &Picture, species: &SpeciesKey) -> Day {
    let living = picture.trays.values().filter(|tray| tray.species.as_ref() == Some(species) && tray.standing > 0);
    let ready = living.filter_map(|tray| tray.ready_from).min();
    let from = ready.map_or(picture.day, |ready| ready.max(picture.day));
    safe_rains_from(&picture.site, from).map_or(from, |rains| rains.from.max(from))
}

/// The best nurse plants to set from a day on for a species that is to be planted on another, best first: those that suit in time
/// lead. None where the bed is not too bright for it then, or what stands there cannot be drawn.
pub(crate) fn new_nurses(
    story: &BedStory,
    site: &Site,
    species: &SpeciesKey,
    (day, wanted): (Day, Day),
) -> Vec<NewNurses> {
    let wanted = wanted.max(day);
    let band = light_band(site.profile(species).map(|profile| &**profile)).filter(|band| band.1 < 1.0);
    let Some((bed, band)) = story.layout.on(day).zip(band) else { return Vec::new() };
    let points = points_of(story, site, bed, species, day, COMPARED_POINTS);
    let later = going_on(story, site, day);
    let too_bright = || {
        let standing = stands(&later, site, bed, When { day: wanted, before: None }).ok()?;
        Some(mean(&light(&standing, &points, (site, bed, wanted))?) > band.1)
    };
    if too_bright() != Some(true) {
        return Vec::new();
    }
    let trial = Trial { later: &later, site, bed, points: &points, band, day, wanted };
    let suits = |profile: &&std::sync::Arc<Profile>| profile.role == Role::Nurse && profile.growth_points.is_some();
    let mut all: Vec<NewNurses> = Vec::new();
    for (key, profile) in site.species.iter().filter(|(_, profile)| suits(profile)) {
        let tried = DISTANCES.iter().filter_map(|part| trial.set_so(key, profile, *part));
        // Of one nurse plant the distance that serves best.
        all.extend(tried.max_by(|one, two| one.inside.total_cmp(&two.inside)));
    }
    all.retain(|one| one.inside >= LEAST_INSIDE);
    let better = |one: &NewNurses, two: &NewNurses| two.inside.total_cmp(&one.inside);
    all.sort_by(|one, two| {
        let in_time = one.is_late().cmp(&two.is_late());
        in_time.then(better(one, two)).then(one.after_months.cmp(&two.after_months))
    });
    all.truncate(TOLD);
    all
}

/// What is tried on: the bed as it goes on by itself, for a species that is to be planted on a day.
struct Trial<'a> {
    later: &'a BedStory,
    site: &'a Site,
    bed: &'a BedSet,
    points: &'a [[f64; 2]],
    band: (f64, f64),
    day: Day,
    wanted: Day,
}

impl Trial<'_> {
    /// What one kind of nurse plant at one distance comes to.
    fn set_so(&self, key: &SpeciesKey, profile: &Profile, part: f64) -> Option<NewNurses> {
        let row_m = profile.row_m.as_ref()?.value * part;
        let in_row_m = profile.in_row_m.as_ref()?.value * part;
        let laying = Laying::new(SpacingPattern::Rectangle, Some(row_m), in_row_m);
        let laid = positions(self.bed.length_m.0, self.bed.width_m.0, &Laying { edges: Edges::Half, ..laying }).ok()?;
        let plants = u32::try_from(laid.len()).ok().filter(|plants| *plants > 0)?;
        let set_on = |on: Day| {
            let mut with = self.later.clone();
            let entry = story_entry(self.later)?;
            with.nurses.push(NurseStory::set((key.clone(), plants), on, (row_m, in_row_m), entry));
            Some(with)
        };
        let inside = self.inside(&set_on(self.day)?, (self.day, 1), MONTHS_LOOKED_AT + HALF_YEAR_MONTHS);
        let half_years: Vec<f64> = inside.windows(HALF_YEAR_MONTHS).map(mean).collect();
        let best = half_years.iter().copied().fold(0.0, f64::max);
        let first = half_years.iter().position(|mean| *mean >= AS_GOOD * best)?;
        let after_months = first as u32 + 1;
        let set_by = self.wanted.plus(-((f64::from(after_months) * DAYS_PER_MONTH).round() as i32));
        let (set_by, suits_from, inside) = if set_by <= self.day {
            (self.day, month_on(self.day, first + 1).max(self.wanted), half_years[first])
        } else {
            // Set later they grow through other months, and other plants go on meanwhile: reckoned anew for the day that is wanted.
            let inside = self.inside(&set_on(set_by)?, (self.wanted, 0), HALF_YEAR_MONTHS);
            (set_by, self.wanted, mean(&inside))
        };
        // Stems leave their followers' shade, whatever else ends leaves none.
        let goes = if has_followers(profile) { 1.0 - FOLLOWER_LEAVES } else { 1.0 };
        let parts = (goes / SHADE_ENDS_SHARE).ceil() as u32;
        let (nurse, wanted_on) = (key.clone(), self.wanted);
        Some(NewNurses { nurse, row_m, in_row_m, plants, after_months, set_by, suits_from, wanted_on, inside, parts })
    }

    /// The share of positions inside the band, month by month, from so many months after a day on, as far as it can be reckoned.
    fn inside(&self, with: &BedStory, (day, from): (Day, usize), months: usize) -> Vec<f64> {
        let of_month = |at: usize| {
            let on = month_on(day, at);
            let standing = stands(with, self.site, self.bed, When { day: on, before: None }).ok()?;
            let light = light(&standing, self.points, (self.site, self.bed, on))?;
            let inside = light.iter().filter(|light| (self.band.0..=self.band.1).contains(*light)).count();
            Some(inside as f64 / light.len().max(1) as f64)
        };
        (from..from + months).map_while(of_month).collect()
    }
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
        new_nurses(&story, &site, &SpeciesKey::new("COA"), (day(ON), day(ON)))
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
    fn for_a_day_that_is_wanted_they_are_set_so_long_before_and_what_comes_too_late_says_so() {
        let (story, site) = bed().story(ON);
        let of = |wanted: &str| new_nurses(&story, &site, &SpeciesKey::new("COA"), (day(ON), day(wanted)));
        let in_time = of("2027-12-01");
        assert!(!in_time.is_empty());
        for one in &in_time {
            assert!(!one.is_late() && one.set_by > day(ON) && one.suits_from == day("2027-12-01"), "{one:?}");
            let months = f64::from(one.suits_from.days_since(one.set_by)) / DAYS_PER_MONTH;
            assert!((months - f64::from(one.after_months)).abs() < 0.1, "{one:?}");
            // Set on that day, the half year from the day that is wanted has the light, by the reckoning that everybody sees.
            let mut page = bed();
            let set = json!({"bed":"Upper terrace","nurse":one.nurse.as_str(),"count":one.plants,"row_m":one.row_m,
                "in_row_m":one.in_row_m});
            page.write(&one.set_by.to_string(), "nurse_planted", set);
            let (story, site) = page.story("2027-12-01");
            let of = (day("2027-12-01"), HALF_YEAR_MONTHS);
            let months =
                crate::reckon::light::months::light_months(&story, &site, &SpeciesKey::new("COA"), of).unwrap();
            let inside = months.iter().filter_map(|month| month.inside).sum::<f64>() / HALF_YEAR_MONTHS as f64;
            assert!((inside - one.inside).abs() < 0.2, "{inside} {one:?}");
        }
        for one in of("2026-05-01") {
            assert!(one.is_late() && one.set_by == day(ON), "{one:?}");
        }
    }

    #[test]
    fn a_bed_that_is_shaded_already_is_advised_nothing() {
        let mut page = bed();
        let set = json!({"bed":"Upper terrace","nurse":"plantain","count":48,"row_m":2,"in_row_m":3});
        page.write("2025-06-10", "nurse_planted", set);
        assert_eq!(advised(&page), []);
    }
}
