//! `why`: every criterion of a verdict.

use super::answer::Ending;
use super::args::Why;
use super::run::{Run, Stopped};
use super::why_json::{why_bed_json, why_pair_json, why_tray_json};
use super::why_text::{why_bed_text, why_pair_text, why_tray_text};
use crate::base::{BedName, SpeciesKey, TrayCode, name_search};
use crate::reckon::Picture;

/// Explains a tray, a bed or a pair.
pub fn run(run: &Run, why: &Why) -> Result<Ending, Stopped> {
    let desk = run.desk()?;
    let picture = run.picture(&desk);
    let (width, colour) = (run.around.columns, run.around.colour);
    match why {
        Why::Tray { tray } => {
            let tray = tray_of(run, &picture, &desk.fold().ledger().tray_now(tray))?;
            if run.everywhere.json {
                return run.answer_json(&why_tray_json(&picture, &run.wording, &tray));
            }
            run.answer(&why_tray_text(&picture, &run.wording, &tray, width, colour))
        }
        Why::Bed { bed, species } => {
            let bed = bed_of(run, &picture, bed)?;
            let species = species.as_ref().map(|written| species_of(run, &picture, &bed, written)).transpose()?;
            if run.everywhere.json {
                return run.answer_json(&why_bed_json(&picture, &run.wording, &bed, species.as_ref()));
            }
            run.answer(&why_bed_text(&picture, &run.wording, &bed, species.as_ref(), width, colour))
        }
        Why::Pair { tray, bed, how } => {
            let tray = tray_of(run, &picture, &desk.fold().ledger().tray_now(tray))?;
            let bed = bed_of(run, &picture, bed)?;
            if picture.pair(&tray, &bed).is_none() {
                return Err(Stopped::refused(no_pair(run, &picture, &tray, &bed)));
            }
            if run.everywhere.json {
                return run.answer_json(&why_pair_json(&picture, &run.wording, &tray, &bed));
            }
            run.answer(&why_pair_text(&picture, &run.wording, &tray, &bed, *how, width, colour))
        }
    }
}

fn tray_of(run: &Run, picture: &Picture, tray: &TrayCode) -> Result<TrayCode, Stopped> {
    if picture.trays.contains_key(tray) {
        return Ok(tray.clone());
    }
    let nearest = name_search::nearest(tray.as_str(), picture.trays.keys().map(TrayCode::as_str));
    Err(Stopped::refused(run.wording.nearest_after(run.wording.refused_unknown_tray(tray), &nearest)))
}

fn bed_of(run: &Run, picture: &Picture, bed: &BedName) -> Result<BedName, Stopped> {
    // A bed may be typed without capitals or accents.
    let wanted = crate::base::text::folded(bed.as_str());
    if let Some(known) = picture.beds.keys().find(|known| crate::base::text::folded(known.as_str()) == wanted) {
        return Ok(known.clone());
    }
    let nearest = name_search::nearest(bed.as_str(), picture.beds.keys().map(BedName::as_str));
    Err(Stopped::refused(run.wording.nearest_after(run.wording.refused_unknown_bed(bed), &nearest)))
}

fn species_of(run: &Run, picture: &Picture, bed: &BedName, written: &str) -> Result<SpeciesKey, Stopped> {
    let catalogue = &picture.site.species;
    let planned: Vec<SpeciesKey> =
        picture.beds.get(bed).into_iter().flat_map(|bed| bed.species.iter().map(|line| line.species.clone())).collect();
    let Some(key) = catalogue.find(written) else {
        let unknown = run.wording.refused_unknown_species(written);
        return Err(Stopped::refused(run.wording.nearest_after(unknown, &catalogue.nearest(written))));
    };
    if planned.contains(&key) {
        return Ok(key);
    }
    let name = run.wording.species_of(&key, catalogue);
    let names: Vec<String> = planned.iter().map(|key| run.wording.species_of(key, catalogue)).collect();
    Err(Stopped::refused(run.wording.nearest_after(run.wording.refused_not_planned(bed, name), &names)))
}

fn no_pair(run: &Run, picture: &Picture, tray: &TrayCode, bed: &BedName) -> String {
    let tray_picture = picture.trays.get(tray);
    if tray_picture.is_some_and(|tray| tray.standing == 0) {
        return run.wording.refused_empty_tray(tray);
    }
    match tray_picture.and_then(|tray| tray.species.as_ref()) {
        Some(key) => run.wording.refused_not_planned(bed, run.wording.species_of(key, &picture.site.species)),
        None => run.wording.species_unknown(),
    }
}
