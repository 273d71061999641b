//! Every tray with living plants against every bed whose plan names its species.

use std::sync::Arc;

use super::picture::{BedPicture, BedSpecies, PairPicture, Picture, Rule, TrayPicture};
use super::stock::Places;
use super::tray::exposure;
use super::tray::light::LastLight;
use super::tray::size::whole_plants;
use super::tray::{is_bare, last_light_of};

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
