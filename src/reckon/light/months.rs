//! The light of the months to come, as what stands goes on by itself: on the whole, and position by position.

use super::by_reading::{self, Density, Told, density};
use super::coming::going_on;
use super::crown::TREE_M;
use super::scene::{crowns_of, ground_of, seen_along, suns_of};
use super::stand::{Leaves, Standing, When, standing};
use super::{FOUR_IN_FIVE, SKY_DIRECTIONS, light_at_most};
use crate::base::{Day, SpeciesKey};
use crate::nursery::entry::BedSet;
use crate::reckon::field::Spot;
use crate::reckon::picture::NoLight;
use crate::reckon::picture::quantity::LightSpan;
use crate::reckon::site::Site;
use crate::reckon::stock::BedStory;
use crate::reckon::tray::exposure::light_band;
use crate::science::shade::{Month, Positions, even_sky, maps};

/// Months that are told ahead: two years.
pub(crate) const MONTHS_AHEAD: usize = 24;

/// The light of a month to come.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct LightMonth {
    /// Its middle; of the month that runs this day, if that is later.
    pub on: Day,
    /// Its light.
    pub light: LightSpan,
    /// The share of positions inside the band of the species, where it has one and all that shades is known.
    pub inside: Option<f64>,
    /// Why something that shades is left out: the light is then no more than its share, and may be anything below.
    pub left_out: Option<NoLight>,
}

/// A bed as it goes on by itself from a day on, for a species.
pub(crate) struct GoingOn<'a> {
    site: &'a Site,
    species: &'a SpeciesKey,
    day: Day,
    bed: BedSet,
    later: BedStory,
    told: Option<Told>,
    band: Option<(f64, f64)>,
}

impl<'a> GoingOn<'a> {
    /// None where no nurse plant was ever written, or no layout.
    pub(crate) fn of(story: &BedStory, site: &'a Site, species: &'a SpeciesKey, day: Day) -> Option<GoingOn<'a>> {
        let bed = story.layout.on(day).filter(|_| !story.nurses.is_empty())?.clone();
        Some(GoingOn {
            told: by_reading::told(story, site, &bed, species, day),
            band: light_band(site.profile(species).map(|profile| &**profile)),
            later: going_on(story, site, day),
            bed,
            site,
            species,
            day,
        })
    }

    /// The light of a month, this one being 0.
    pub(crate) fn month(&self, at: usize) -> LightMonth {
        let on = month_on(self.day, at);
        let of = (&self.later, self.site);
        let (light, left_out) = light_at_most(of, &self.bed, self.species, on, self.leaves(on));
        let inside = self.band.filter(|_| left_out.is_none()).map(|band| light.inside(band));
        LightMonth { on, light: light.span, inside, left_out }
    }

    /// The likely light of a month at each of some positions; where something that shades is left out, the most there may be.
    pub(crate) fn at_each(&self, spots: &[Spot], at: usize) -> Vec<f64> {
        let on = month_on(self.day, at);
        let Standing { known, left_out } = standing(&self.later, self.site, &self.bed, When { day: on, before: None });
        let points: Vec<[f64; 2]> = spots.iter().map(|spot| [spot.x_m, spot.y_m]).collect();
        let Ok(positions) = Positions::new(&points, TREE_M, ground_of(&self.bed)) else { return Vec::new() };
        let (sun, diffuse_share) = suns_of(self.site, &self.bed, on);
        let Density { factor, error } = self.leaves(on);
        let crowns = match left_out {
            None => crowns_of(&known, |leaves| leaves.likely, factor),
            Some(_) => crowns_of(&known, |leaves: &Leaves| leaves.thin, factor / (FOUR_IN_FIVE * error).exp()),
        };
        let made = maps(&positions, &[Month { crowns, sun }], &seen_along(&even_sky(SKY_DIRECTIONS), &self.bed));
        let light = made.first().map(|map| map.light(diffuse_share)).unwrap_or_default();
        light.into_iter().map(|light| light.min(1.0)).collect()
    }

    fn leaves(&self, on: Day) -> Density {
        density(self.told.as_ref(), on)
    }
}

/// The day that stands for a month, that of `day` being 0: its middle, and of the month that runs this day, if that is later.
pub(crate) fn month_on(day: Day, at: usize) -> Day {
    let (year, month, _) = day.ymd();
    let after = month as i32 - 1 + at as i32;
    Day::from_ymd(year + after / 12, (after % 12 + 1) as u32, 15).map_or(day, |middle| middle.max(day))
}

/// The light month by month, as what stands goes on by itself. None where no nurse plant was ever written.
pub(crate) fn light_months(
    story: &BedStory,
    site: &Site,
    species: &SpeciesKey,
    (day, months): (Day, usize),
) -> Option<Vec<LightMonth>> {
    let going_on = GoingOn::of(story, site, species, day)?;
    Some((0..months).map(|at| going_on.month(at)).collect())
}
