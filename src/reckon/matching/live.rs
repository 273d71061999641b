//! What a plant that goes out is expected to come to: the chance that it lives a year later.

use std::collections::BTreeMap;

use crate::base::{Day, SpeciesKey};
use crate::reckon::bed::season::rains_on;
use crate::reckon::field::outplantings;
use crate::reckon::picture::Picture;

/// Living a year later, of trees from containers that are weeded and get rains of half a year. SEEN: 82 % after a year (Banin and
/// others 2023, Philosophical Transactions of the Royal Society B 378:20210090); the figure itself is ours.
const LIVING_AFTER_A_YEAR: f64 = 0.85;
/// The same where the dry months come within half a year of planting, or nobody wrote when it rains: community plantings lie between
/// 42 and 94 %. The figure itself is ours.
const LIVING_DRY_SOON: f64 = 0.70;
/// The half year, days.
const HALF_YEAR_DAYS: i32 = 182;
/// Plants as of which that counts beside this nursery's own counts. Ours.
const USUAL_PLANTS: f64 = 20.0;
/// Which of the counts is that of a year.
const YEAR_COUNT: usize = 3;

/// Own counts of a year: living and counted, by species.
pub(super) struct Lived(BTreeMap<SpeciesKey, (u32, u32)>);

impl Lived {
    /// From every planting of the nursery.
    pub(super) fn of(picture: &Picture) -> Lived {
        let mut lived: BTreeMap<SpeciesKey, (u32, u32)> = BTreeMap::new();
        for planting in picture.beds.values().flat_map(|bed| outplantings(&bed.story, picture.day)) {
            let (Some(species), Some(count)) = (planting.species, &planting.counts[YEAR_COUNT]) else { continue };
            let sums = lived.entry(species).or_default();
            *sums = (sums.0.saturating_add(count.alive), sums.1.saturating_add(count.alive.saturating_add(count.dead)));
        }
        Lived(lived)
    }

    /// The chance that a plant of a species that goes out on a day lives a year later.
    pub(super) fn chance(&self, picture: &Picture, species: &SpeciesKey, day: Day) -> f64 {
        let rains_last = rains_on(&picture.site, day).map(|(_, spell)| spell.until.days_since(day));
        let usual = match rains_last {
            Some(days) if days >= HALF_YEAR_DAYS => LIVING_AFTER_A_YEAR,
            Some(_) | None => LIVING_DRY_SOON,
        };
        let (alive, counted) = self.0.get(species).copied().unwrap_or_default();
        (USUAL_PLANTS * usual + f64::from(alive)) / (USUAL_PLANTS + f64::from(counted))
    }
}
