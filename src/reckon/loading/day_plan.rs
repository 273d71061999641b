//! One plan of the day: what to load first, each plant and each place given away once.

use std::collections::BTreeMap;

use super::list::LoadLine;
use crate::base::{BedName, SpeciesKey, TrayCode};
use crate::reckon::picture::{PairPicture, Picture};
use crate::reckon::round::go_by;
use crate::reckon::tray::size::whole_plants;

/// The pairs that fit, those with the nearest last day first; each gets what earlier ones leave of its plants and places.
pub(crate) fn day_plan(picture: &Picture) -> Vec<LoadLine> {
    let mut pairs: Vec<&PairPicture> = picture.pairs.iter().map(AsRef::as_ref).filter(|pair| pair.fits).collect();
    let last = |pair: &PairPicture| {
        let tray = picture.trays.get(&pair.tray)?;
        go_by(tray, Some(pair), picture.day).map(|(last, _)| last)
    };
    pairs.sort_by_cached_key(|pair| {
        let last = last(pair);
        (last.is_none(), last)
    });
    let mut plants: BTreeMap<&TrayCode, u32> = BTreeMap::new();
    let mut places: BTreeMap<(&BedName, &SpeciesKey), u32> = BTreeMap::new();
    let mut lines = Vec::new();
    for pair in pairs {
        let Some(tray) = picture.trays.get(&pair.tray) else { continue };
        let Some(species) = tray.species.as_ref() else { continue };
        let left = plants.entry(&pair.tray).or_insert_with(|| whole_plants(tray.plantable.likely));
        let open = places.entry((&pair.bed, species)).or_insert_with(|| open_in(picture, &pair.bed, species));
        let load = pair.plants.min(*left).min(*open);
        *left -= load;
        *open -= load;
        if load > 0 {
            lines.push(LoadLine { tray: pair.tray.clone(), bed: pair.bed.clone(), plants: load });
        }
    }
    lines
}

fn open_in(picture: &Picture, bed: &BedName, species: &SpeciesKey) -> u32 {
    let lines = picture.beds.get(bed).map(|bed| bed.species.as_slice()).unwrap_or_default();
    lines.iter().find(|line| line.species == *species).map_or(0, |line| line.open_positions)
}
