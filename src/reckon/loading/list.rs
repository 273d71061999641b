//! The loading list: what shall go from which tray to which bed, and what was promised twice.

use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

use crate::base::{BedName, SpeciesKey, TrayCode};
use crate::reckon::picture::{BedSpecies, Pair, Picture};
use crate::reckon::tray::size::whole_plants;

/// So many plants of a tray for a bed.
#[derive(Clone, PartialEq, Eq, Debug, Serialize, Deserialize)]
pub(crate) struct LoadLine {
    /// The tray.
    pub tray: TrayCode,
    /// The bed.
    pub bed: BedName,
    /// How many.
    pub plants: u32,
}

/// The list bed by bed, each with its lines and their plants in all.
pub(crate) fn by_bed(lines: &[LoadLine]) -> Vec<(&BedName, Vec<&LoadLine>, u32)> {
    let mut beds: BTreeMap<&BedName, Vec<&LoadLine>> = BTreeMap::new();
    lines.iter().for_each(|line| beds.entry(&line.bed).or_default().push(line));
    let sum = |here: &Vec<&LoadLine>| here.iter().map(|line| line.plants).fold(0, u32::saturating_add);
    let sums: Vec<u32> = beds.values().map(sum).collect();
    beds.into_iter().zip(sums).map(|((bed, here), sum)| (bed, here, sum)).collect()
}

/// What cannot be as it stands on the list.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) enum LoadWarning {
    /// More is promised of a tray than can be planted.
    TrayPromised {
        /// The tray.
        tray: TrayCode,
        /// On the list.
        listed: u32,
        /// Plantable, by what is likely.
        plantable: u32,
        /// Standing by the books.
        standing: u32,
    },
    /// More is promised to a bed than it has open positions.
    BedPromised {
        /// The bed.
        bed: BedName,
        /// The species.
        species: SpeciesKey,
        /// On the list.
        listed: u32,
        /// Open positions.
        open: u32,
    },
    /// The tray does not fit the bed on the day.
    FitsNot {
        /// The tray.
        tray: TrayCode,
        /// The bed.
        bed: BedName,
    },
    /// The tray or the bed is gone, or the bed no longer plans the species.
    Gone {
        /// The tray.
        tray: TrayCode,
        /// The bed.
        bed: BedName,
    },
}

/// What is wrong with a list, sums over trays and beds first.
pub(crate) fn warnings(picture: &Picture, lines: &[LoadLine]) -> Vec<LoadWarning> {
    let mut found = Vec::new();
    let mut of_tray: BTreeMap<&TrayCode, u32> = BTreeMap::new();
    let mut of_bed: BTreeMap<(&BedName, &SpeciesKey), u32> = BTreeMap::new();
    for line in lines {
        let sum = of_tray.entry(&line.tray).or_insert(0);
        *sum = sum.saturating_add(line.plants);
        if let Some(species) = species_of(picture, &line.tray) {
            let sum = of_bed.entry((&line.bed, species)).or_insert(0);
            *sum = sum.saturating_add(line.plants);
        }
    }
    for (code, listed) in of_tray {
        let Some(tray) = picture.trays.get(code) else { continue };
        let plantable = whole_plants(tray.plantable.likely);
        if listed > plantable {
            let standing = tray.standing;
            found.push(LoadWarning::TrayPromised { tray: code.clone(), listed, plantable, standing });
        }
    }
    for ((bed, species), listed) in of_bed {
        let Some(open) = line_of(picture, bed, species).map(|line| line.open_positions) else { continue };
        if listed > open {
            found.push(LoadWarning::BedPromised { bed: bed.clone(), species: species.clone(), listed, open });
        }
    }
    found.extend(lines.iter().flat_map(|line| line_warnings(picture, line)));
    found
}

/// What is wrong with one line by itself.
pub(crate) fn line_warnings(picture: &Picture, line: &LoadLine) -> Option<LoadWarning> {
    let (tray, bed) = (line.tray.clone(), line.bed.clone());
    match picture.pair(&line.tray, &line.bed) {
        None => Some(LoadWarning::Gone { tray, bed }),
        Some(pair) if !pair.fits => Some(LoadWarning::FitsNot { tray, bed }),
        Some(_) => None,
    }
}

/// How many of a tray can still be put on the list for a bed: what is plantable and open, less what other lines promise.
pub(crate) fn left_to_load(picture: &Picture, lines: &[LoadLine], tray: &TrayCode, bed: &BedName) -> u32 {
    picture.pair(tray, bed).map_or(0, |pair| left_of(picture, lines, pair))
}

/// The same of a pair that is known already.
pub(crate) fn left_of(picture: &Picture, lines: &[LoadLine], pair: &Pair) -> u32 {
    let (tray, bed) = (pair.tray(), pair.bed());
    let others = || lines.iter().filter(|line| line.tray != *tray || line.bed != *bed);
    let sum = |all: &mut dyn Iterator<Item = u32>| all.fold(0, u32::saturating_add);
    let species = species_of(picture, tray);
    let taken = sum(&mut others().filter(|line| line.tray == *tray).map(|line| line.plants));
    let same_species = |line: &&LoadLine| line.bed == *bed && species_of(picture, &line.tray) == species;
    let filled = sum(&mut others().filter(same_species).map(|line| line.plants));
    let plantable = picture.trays.get(tray).map_or(0, |tray| whole_plants(tray.plantable.likely));
    let open = species.and_then(|species| line_of(picture, bed, species)).map_or(0, |line| line.open_positions);
    pair.plants.min(plantable.saturating_sub(taken)).min(open.saturating_sub(filled))
}

fn species_of<'a>(picture: &'a Picture, tray: &TrayCode) -> Option<&'a SpeciesKey> {
    picture.trays.get(tray)?.species.as_ref()
}

fn line_of<'a>(picture: &'a Picture, bed: &BedName, species: &SpeciesKey) -> Option<&'a BedSpecies> {
    picture.beds.get(bed)?.species.iter().find(|line| line.species == *species)
}
