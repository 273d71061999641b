//! A bed's readiness for each species of its plan.

pub(crate) mod eaten;
pub mod ground_work;
pub mod held;
pub mod light_now;
pub mod named_places;
pub mod nurses;
pub mod positions;
pub mod season;
pub(crate) mod sick;
pub mod soil;
pub mod standing;
#[cfg(test)]
mod tests;
pub mod water;

use std::sync::Arc;

use self::eaten::BrokenInto;
use self::water::balance::Waters;
use super::light::BedLight;
use super::picture::{BedPicture, BedSpecies, Criterion, Looking, NoLight, Rule, hands_from};
use super::site::Site;
use super::stock::{BedStory, Places};
use super::tray::pest::kin::Kin;
use crate::base::{Day, SpeciesKey};
use crate::nursery::entry::BedSet;

/// The day on which a bed is looked at, and what is known then.
#[derive(Clone, Copy)]
pub(crate) struct Then<'a> {
    /// The nursery.
    pub site: &'a Site,
    /// Its places, where the plants of a bed stood before.
    pub places: &'a Places,
    /// What the trays they came from have in common with others.
    pub kin: &'a Kin,
    /// The fields where animals broke into a bed.
    pub broken_into: &'a BrokenInto,
    /// The water of its fields.
    pub waters: &'a Waters,
    /// The day.
    pub day: Day,
    /// Whether that is today.
    pub looking: Looking,
}

/// A bed on a day; none where nobody ever laid it out (its story then holds a Doubt).
pub(crate) fn picture_bed(story: &Arc<BedStory>, then: Then<'_>) -> Option<BedPicture> {
    let Then { site, day, .. } = then;
    let layout = story.layout.on(day)?;
    let planned = positions::planned(site, layout);
    Some(BedPicture {
        name: story.name.clone(),
        field: layout.field.clone(),
        length_m: layout.length_m.0,
        width_m: layout.width_m.0,
        light_now: light_now::light_now(story, day),
        species: planned.into_iter().map(|species| bed_species(story, then, layout, species)).collect(),
        nurses: nurses::nurses(story, site, day),
        story: story.clone(),
    })
}

fn bed_species(story: &BedStory, then: Then<'_>, layout: &BedSet, species: SpeciesKey) -> BedSpecies {
    let profile = then.site.profile(&species).map(|profile| &**profile);
    let room = positions::room(story, then.site, layout, &species);
    let parts = ground_work::parts_ready(story, profile, then.day);
    let room = positions::within(room, story, then.site, (layout, &species), &parts);
    let reckoned = light_now::reckoned(story, then.site, (&species, profile), then.day);
    let criteria = bed_criteria(story, then, &species, room, reckoned.as_ref());
    let light_fits =
        criteria.iter().any(|criterion| criterion.rule() == Rule::LightNow && criterion.met() == Some(true));
    let light = reckoned.and_then(Result::ok);
    // Of light that is reckoned some positions are inside and others are not.
    let band = light_now::band(profile).map(|(least, most, _)| (least, most));
    let inside = light.as_ref().zip(band).map_or(1.0, |(light, band)| light.inside(band));
    BedSpecies {
        positions: room.positions,
        living: room.living,
        open_positions: room.open,
        in_light: if light_fits { (f64::from(room.open) * inside).round() as u32 } else { 0 },
        light_reckoned: light.map(|light| light.span),
        standing: standing::standing(story, &species, room.open, &criteria, then.day),
        criteria,
        species,
    }
}

/// The questions of a bed for a species, in the order in which they are asked.
fn bed_criteria(
    story: &BedStory,
    then: Then<'_>,
    species: &SpeciesKey,
    room: positions::Room,
    reckoned: Option<&Result<BedLight, NoLight>>,
) -> Vec<Criterion> {
    let Then { site, places, kin, broken_into, waters, day, looking } = then;
    let profile = site.profile(species).map(|profile| &**profile);
    let layout = story.layout.entry_on(day).map(|(entry, _)| entry);
    let rows = story.layout.on(day).and_then(|layout| positions::rows(site, layout, species));
    let mut criteria = vec![
        positions::criterion(story, species, room, layout),
        light_now::criterion(story, (species, profile), (rows, reckoned), day),
        light_now::coming(story, site, (species, profile), day),
        soil::criterion(story, site, profile, rows, day),
    ];
    let broken = story.layout.on(day).and_then(|layout| broken_into.get(&layout.field));
    criteria.extend(ground_work::criteria(story, profile, (rows, broken), day));
    let field = story.layout.on(day).and_then(|layout| site.fields.get(&layout.field)?.on(day));
    let texture = field.and_then(|field| field.texture.as_ref()).map(|texture| &*texture.0);
    criteria.push(water::criterion(water::Asked { site, waters, story, texture, rows, day, looking }));
    criteria.push(season::criterion(site, day));
    criteria.extend(held::criteria(story, places, day));
    criteria.extend(sick::criterion((story, (places, kin)), site, species, day));
    let from = hands_from(&criteria);
    criteria.into_iter().map(|criterion| criterion.after_wait(from)).collect()
}
