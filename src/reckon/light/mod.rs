//! The light of a bed reckoned from its nurse plants, where nobody read it: crowns by age or tape, leaves by their profile
//! and by the newest reading, light at the open positions of a species.
//!
//! How far it may be off is part of the answer. What is not known of the plants that shade (their day, their crown, trees
//! among them) makes it no answer at all.

pub(crate) mod advice;
pub(crate) mod beside;
pub(crate) mod by_reading;
pub(crate) mod coming;
mod crown;
pub(crate) mod in_band;
mod kept;
pub(crate) mod months;
mod scene;
mod stand;
#[cfg(test)]
mod tests;

use by_reading::{Density, density};
pub(crate) use crown::DAYS_PER_MONTH;
use crown::TREE_M;
use kept::Kept;
use scene::{crowns_of, ground_of, points_of, rests_on, seen_along, suns_of};
use stand::{Leaves, Stand, Standing, When, standing, stands};

use crate::base::{Day, EntryId, SpeciesKey};
use crate::nursery::entry::BedSet;
use crate::reckon::picture::NoLight;
use crate::reckon::picture::quantity::LightSpan;
use crate::reckon::site::Site;
use crate::reckon::stock::BedStory;
use crate::science::shade::{Month, Positions, even_sky, maps};

/// Positions that a verdict is reckoned at, evenly among the open ones. Ours.
const MOST_POINTS: usize = 64;
/// Directions of the sky. Ours, measured: with so many and the moments of the sun off by 0.015 at most.
const SKY_DIRECTIONS: u32 = 300;
/// Hedges, neighbouring beds and trees that nobody wrote may take so much of the light. Ours.
pub(crate) const UNWRITTEN_SHADE: f64 = 0.1;
/// From here on a bound from above says nothing. Ours: it would be written as 100 %.
pub(crate) const AS_GOOD_AS_FULL: f64 = 0.995;
/// Half of a range that holds four times in five, in standard errors. Statistics.
const FOUR_IN_FIVE: f64 = 1.2816;

static LIGHTS: Kept<Lit> = Kept::nothing();

/// Light at the positions of a bed, and how far its mean may be off.
#[derive(Clone, PartialEq, Debug)]
struct Lit {
    low: f64,
    high: f64,
    at: Vec<f64>,
}

/// The light of a bed as it is reckoned.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct BedLight {
    /// Its mean over the open positions of the species, and how far that may be off.
    pub span: LightSpan,
    /// At each of those positions, or at some evenly among them.
    pub at: Vec<f64>,
    /// The entries that planted what shades.
    pub entries: Vec<EntryId>,
}

impl BedLight {
    /// The darkest and the brightest position.
    pub(crate) fn ends(&self) -> (f64, f64) {
        let low = self.at.iter().copied().fold(f64::INFINITY, f64::min);
        let high = self.at.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        if self.at.is_empty() { (self.span.share, self.span.share) } else { (low, high) }
    }

    /// The share of positions inside a band.
    pub(crate) fn inside(&self, (least, most): (f64, f64)) -> f64 {
        let inside = self.at.iter().filter(|light| (least..=most).contains(*light)).count();
        inside as f64 / self.at.len().max(1) as f64
    }
}

/// The light of a bed for a species on a day.
pub(crate) fn bed_light(
    story: &BedStory,
    site: &Site,
    bed: &BedSet,
    species: &SpeciesKey,
    day: Day,
) -> Result<BedLight, NoLight> {
    let told = by_reading::told(story, site, bed, species, day);
    light_with(story, site, bed, species, day, density(told.as_ref(), day))
}

/// The light of a bed by the model, without the newest reading and with it.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct LightTold {
    /// With leaves as the profiles say.
    pub unread: LightSpan,
    /// What the newest reading says of them.
    pub by_reading: Option<by_reading::Told>,
    /// With leaves corrected by it.
    pub light: LightSpan,
    /// The darkest and the brightest position.
    pub ends: (f64, f64),
    /// The share of positions inside the band of the species, where it has one.
    pub inside: Option<(f64, (f64, f64))>,
    /// The entries that planted what shades.
    pub entries: Vec<EntryId>,
    /// Why something that shades is left out: the light is then no more than `light.high`, and nothing else of it holds.
    pub left_out: Option<NoLight>,
}

/// What the model says of the light of a bed for a species, read or not; none where no nurse plant was ever written, or
/// nothing tells what shades there.
pub(crate) fn light_told(
    story: &BedStory,
    site: &Site,
    species: &SpeciesKey,
    band: Option<(f64, f64)>,
    day: Day,
) -> Option<LightTold> {
    let bed = story.layout.on(day).filter(|_| !story.nurses.is_empty())?;
    let by_reading = by_reading::told(story, site, bed, species, day);
    let of = |leaves: Density| light_at_most((story, site), bed, species, day, leaves);
    let (unread, _) = of(density(None, day));
    let (light, left_out) = of(density(by_reading.as_ref(), day));
    if left_out.is_some() && light.span.high > AS_GOOD_AS_FULL {
        return None;
    }
    Some(LightTold {
        unread: unread.span,
        by_reading,
        light: light.span,
        ends: light.ends(),
        inside: band.map(|band| (light.inside(band), band)),
        entries: light.entries,
        left_out,
    })
}

fn light_with(
    story: &BedStory,
    site: &Site,
    bed: &BedSet,
    species: &SpeciesKey,
    day: Day,
    leaves: Density,
) -> Result<BedLight, NoLight> {
    let standing = stands(story, site, bed, When { day, before: None })?;
    let points = points_of(story, site, bed, species, day, MOST_POINTS);
    Ok(light_under(&standing, &points, leaves, (day, site, bed)))
}

/// The light of a bed as far as what shades it is known, and why something is not: it is then no lighter than `span.high`.
fn light_at_most(
    (story, site): (&BedStory, &Site),
    bed: &BedSet,
    species: &SpeciesKey,
    day: Day,
    leaves: Density,
) -> (BedLight, Option<NoLight>) {
    let Standing { known, left_out } = standing(story, site, bed, When { day, before: None });
    let points = points_of(story, site, bed, species, day, MOST_POINTS);
    let mut light = light_under(&known, &points, leaves, (day, site, bed));
    if left_out.is_some() {
        light.span = LightSpan { share: light.span.high, low: 0.0, ..light.span };
    }
    (light, left_out)
}

fn light_under(
    standing: &[Stand],
    points: &[[f64; 2]],
    leaves: Density,
    (day, site, bed): (Day, &Site, &BedSet),
) -> BedLight {
    let entries = standing.iter().map(|stand| stand.entry.clone()).collect();
    let mut key = rests_on(standing, points, day, site, bed);
    key.extend([leaves.factor.to_bits(), leaves.error.to_bits()]);
    let lit = LIGHTS.or(&key, || lit(standing, points, leaves, (day, site, bed)));
    let share = mean(&lit.at);
    let low = lit.low.min(share * (1.0 - UNWRITTEN_SHADE));
    let span = LightSpan { share, low, high: lit.high.max(share) };
    BedLight { span, at: lit.at, entries }
}

/// Three reckonings: with leaves as dense as they may be, as they likely are, and as thin as they may be.
fn lit(standing: &[Stand], points: &[[f64; 2]], leaves: Density, (day, site, bed): (Day, &Site, &BedSet)) -> Lit {
    let off = (FOUR_IN_FIVE * leaves.error).exp();
    let (sun, diffuse_share) = suns_of(site, bed, day);
    let month =
        |of: fn(&Leaves) -> f64, factor: f64| Month { crowns: crowns_of(standing, of, factor), sun: sun.clone() };
    let months = [
        month(|leaves| leaves.likely, leaves.factor),
        month(|leaves| leaves.dense, leaves.factor * off),
        month(|leaves| leaves.thin, leaves.factor / off),
    ];
    let Ok(positions) = Positions::new(points, TREE_M, ground_of(bed)) else {
        return Lit { low: 0.0, high: 1.0, at: Vec::new() };
    };
    let made = maps(&positions, &months, &seen_along(&even_sky(SKY_DIRECTIONS), bed));
    let mut light = made.iter().map(|map| map.light(diffuse_share));
    let at: Vec<f64> = light.next().unwrap_or_default().iter().map(|light| light.min(1.0)).collect();
    let mut means = light.map(|light| mean(&light).min(1.0));
    Lit { low: means.next().unwrap_or(0.0), high: means.next().unwrap_or(1.0), at }
}

fn mean(light: &[f64]) -> f64 {
    if light.is_empty() { 1.0 } else { light.iter().sum::<f64>() / light.len() as f64 }
}
