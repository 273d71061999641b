//! Every tray with living plants against every bed whose plan names its species.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::picture::{BedPicture, BedSpecies, PairPicture, Picture, Rule, TrayPicture};
use super::stock::Places;
use super::tray::exposure;
use super::tray::light::LastLight;
use super::tray::size::whole_plants;
use super::tray::{is_bare, last_light_of};
use crate::base::{BedName, SpeciesKey, TrayCode};

/// All pairs: fits first, those in the light before others, then by tray and bed.
pub(super) fn pairs(picture: &Picture, places: &Places) -> Vec<Arc<PairPicture>> {
    let mut all: Vec<(bool, Arc<PairPicture>)> = Vec::new();
    for tray in picture.trays.values().filter(|tray| tray.standing > 0) {
        let Some(species) = &tray.species else { continue };
        let last_light = last_light_of(&tray.story, places, picture.day);
        for bed in picture.beds.values() {
            let Some(line) = bed.species.iter().find(|line| line.species == *species) else { continue };
            let pair = pair(tray, last_light.as_ref(), bed, line);
            all.push((line.in_light == 0, Arc::new(pair)));
        }
    }
    all.sort_by(|(a_dark, a), (b_dark, b)| (!a.fits, a_dark, &a.tray, &a.bed).cmp(&(!b.fits, b_dark, &b.tray, &b.bed)));
    all.into_iter().map(|(_, pair)| pair).collect()
}

/// Plants or places that several rows of the main answer count more than once.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum SharedOffer {
    /// A tray's plants are offered to several beds, more in all than it has.
    Tray {
        /// The tray.
        tray: TrayCode,
        /// Plants it can give in all.
        plants: u32,
        /// The beds.
        beds: Vec<BedName>,
    },
    /// A bed's places for a species are offered to several trays, fewer in all than they bring.
    Bed {
        /// The bed.
        bed: BedName,
        /// The species.
        species: SpeciesKey,
        /// Places it has in all.
        places: u32,
        /// The trays.
        trays: Vec<TrayCode>,
    },
}

/// What the pairs that fit count more than once: trays first, then beds.
pub fn shared_offers(picture: &Picture) -> Vec<SharedOffer> {
    let mut of_tray: BTreeMap<&TrayCode, Vec<&PairPicture>> = BTreeMap::new();
    let mut of_bed: BTreeMap<(&BedName, &SpeciesKey), Vec<&PairPicture>> = BTreeMap::new();
    for pair in picture.pairs.iter().filter(|pair| pair.fits) {
        of_tray.entry(&pair.tray).or_default().push(pair);
        if let Some(species) = picture.trays.get(&pair.tray).and_then(|tray| tray.species.as_ref()) {
            of_bed.entry((&pair.bed, species)).or_default().push(pair);
        }
    }
    let offered = |pairs: &[&PairPicture]| pairs.iter().map(|pair| u64::from(pair.plants)).sum::<u64>();
    let mut all = Vec::new();
    for (code, pairs) in of_tray {
        let plants = picture.trays.get(code).map_or(0, |tray| whole_plants(tray.plantable.likely));
        if pairs.len() > 1 && offered(&pairs) > u64::from(plants) {
            let beds = pairs.iter().map(|pair| pair.bed.clone()).collect();
            all.push(SharedOffer::Tray { tray: code.clone(), plants, beds });
        }
    }
    for ((bed, species), pairs) in of_bed {
        let lines = picture.beds.get(bed).into_iter().flat_map(|bed| &bed.species);
        let places = lines.filter(|line| line.species == *species).map(|line| line.open_positions).max().unwrap_or(0);
        if pairs.len() > 1 && offered(&pairs) > u64::from(places) {
            let trays = pairs.iter().map(|pair| pair.tray.clone()).collect();
            all.push(SharedOffer::Bed { bed: bed.clone(), species: species.clone(), places, trays });
        }
    }
    all
}

fn pair(tray: &TrayPicture, last_light: Option<&LastLight>, bed: &BedPicture, line: &BedSpecies) -> PairPicture {
    // The tray's own exposure_step looks at the species' band; here the bed's own light decides.
    let mut criteria: Vec<_> =
        tray.criteria.iter().filter(|criterion| criterion.rule != Rule::ExposureStep).cloned().collect();
    if !is_bare(&tray.story) {
        let light = bed.light_now.as_ref().map(|light| (light.share, light.entries.as_slice()));
        criteria.push(exposure::toward_bed(last_light, light));
    }
    // One question once: held and treated are asked of the tray, and of a bed only where it is.
    for criterion in &line.criteria {
        let same = criteria.iter().position(|own| own.rule == criterion.rule);
        match same.and_then(|at| criteria.get_mut(at)) {
            Some(own) if !own.blocks => *own = criterion.clone(),
            Some(own) => own.entries.extend(criterion.entries.iter().cloned()),
            None => criteria.push(criterion.clone()),
        }
    }
    let fits = criteria.iter().all(|criterion| !criterion.blocks);
    let plants = whole_plants(tray.plantable.likely);
    PairPicture {
        tray: tray.code.clone(),
        bed: bed.name.clone(),
        fits,
        plants: plants.min(line.open_positions),
        criteria,
    }
}
