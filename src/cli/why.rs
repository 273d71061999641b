//! `why`: every criterion of a verdict.

use std::sync::Arc;

use super::answer::Ending;
use super::args::Why;
use super::page_text::page_text;
use super::run::{Exit, Run, day_asked};
use super::why_json::{why_bed_json, why_pair_json, why_tray_json};
use super::why_more::positions::positions_json;
use super::why_more::{why_lot, why_species};
use super::why_place::{place_of, why_place_json};
use crate::base::{BedName, SpeciesKey, TrayCode, name_search};
use crate::page::place::why_place;
use crate::page::stop::why_bed_folded;
use crate::page::why::{steps, why_bed, why_pair, why_tray};
use crate::page::{Asked, Page};
use crate::reckon::Picture;
use crate::reckon::forecast::outlook_of_tray;
use crate::reckon::picture::{BedPicture, TrayPicture};
use crate::reckon::round::round_from;

/// The trays and beds that are asked about.
fn named(why: &Why) -> Vec<&str> {
    match why {
        Why::Tray { tray, .. } => vec![tray.as_str()],
        Why::Bed { bed, .. } => vec![bed.as_str()],
        Why::Pair { tray, bed, .. } => vec![tray.as_str(), bed.as_str()],
        Why::Place { place } => vec![place.as_str()],
        Why::Lot { .. } | Why::Species { .. } | Why::Named { .. } => Vec::new(),
    }
}

/// Explains a tray, a bed or a pair.
pub(crate) fn run(run: &Run, why: &Why) -> Result<Ending, Exit> {
    let mut desk = run.desk()?;
    let asked_by_name = match why {
        Why::Named { names, species, by, how, all } => {
            Some(super::named::what_is_asked(run, &mut desk, names, (species.as_ref(), by.as_ref()), (*how, *all))?)
        }
        Why::Tray { .. }
        | Why::Bed { .. }
        | Why::Place { .. }
        | Why::Pair { .. }
        | Why::Lot { .. }
        | Why::Species { .. } => None,
    };
    let why = asked_by_name.as_ref().unwrap_or(why);
    let picture = run.picture_with(&mut desk, &named(why))?;
    let asked = Asked { picture: &picture, wording: &run.wording };
    match why {
        Why::Tray { tray, all } => {
            let tray = tray_of(run, &picture, &desk.fold().ledger().tray_now(tray))?;
            let outlook = outlook_of_tray(&picture, run.forecast_basis, &tray.code);
            let round = round_from(&picture, &outlook);
            if run.everywhere.json {
                return run.answer_json(&why_tray_json(&tray, &picture, &outlook, &round, &run.wording));
            }
            show_reasons(run, &picture, why_tray(&tray, &outlook, (&round, None), asked), *all)
        }
        Why::Bed { bed, species, positions, by, all } => {
            let bed = bed_of(run, &picture, bed)?;
            let species = species.as_ref().map(|written| species_of(run, &picture, &bed, written)).transpose()?;
            let by = by.as_ref().map(|written| day_asked(written, "--by", run.now.today, &run.wording)).transpose()?;
            if run.everywhere.json {
                let mut text = why_bed_json(&bed, (species.as_ref(), by), &picture, &run.wording);
                if *positions {
                    text["positions"] = positions_json(&bed, &picture);
                }
                return run.answer_json(&text);
            }
            // What holds a bed back for several of its species is said once.
            if !all && by.is_none() && species.is_none() && bed.species.len() > 1 {
                return show_page(run, &picture, &why_bed_folded(&bed, ALL, asked));
            }
            show_reasons(run, &picture, why_bed(&bed, (species.as_ref(), by), asked), *all)
        }
        Why::Pair { tray, bed, how, all } => {
            let tray = tray_of(run, &picture, &desk.fold().ledger().tray_now(tray))?;
            let bed = bed_of(run, &picture, bed)?;
            let Some(pair) = picture.pair(&tray.code, &bed.name) else {
                return Err(Exit::refused(no_pair(run, &picture, &tray, &bed)));
            };
            if run.everywhere.json {
                return run.answer_json(&why_pair_json(pair, &picture, &run.wording));
            }
            let mut page = why_pair(pair, asked);
            if *how {
                steps(&pair.criteria, &run.wording, &mut page);
            }
            show_reasons(run, &picture, page, *all)
        }
        // Brought to one of the others above.
        Why::Named { .. } => Ok(Ending::Usage),
        Why::Place { place } => {
            let name = place_of(run, &picture, place)?;
            if run.everywhere.json {
                return run.answer_json(&why_place_json(name, &picture, &run.wording));
            }
            show_page(run, &picture, &why_place(name, asked))
        }
        Why::Lot { lot, plants, sure, all } => why_lot(run, lot, (*plants, *sure), *all),
        Why::Species { species, plants, sure, all } => why_species(run, species, (*plants, *sure), *all),
    }
}

/// The option that shows all of it.
const ALL: &str = "--all";
/// A page of fewer columns does not name what is met.
const NAMES_MET: usize = 60;

/// Shows reasons: what holds back first, what is met in one line, unless all is asked for.
pub(super) fn show_reasons(run: &Run, picture: &Picture, page: Page, all: bool) -> Result<Ending, Exit> {
    let folded = |page: Page| page.folded(ALL, run.around.columns < NAMES_MET, &run.wording);
    show_page(run, picture, &if all { page } else { folded(page) })
}

/// Shows a page.
pub(super) fn show_page(run: &Run, picture: &Picture, page: &Page) -> Result<Ending, Exit> {
    run.answer(&page_text(page, picture, &run.wording, run.around.columns, run.around.colour))
}

/// A tray of the Picture; one that is not there is refused with the names nearest to it.
pub(super) fn tray_of(run: &Run, picture: &Picture, tray: &TrayCode) -> Result<Arc<TrayPicture>, Exit> {
    if let Some(known) = picture.trays.get(tray) {
        return Ok(known.clone());
    }
    let nearest = name_search::nearest(tray.as_str(), picture.trays.keys().map(TrayCode::as_str));
    Err(Exit::refused(run.wording.nearest_after(run.wording.refused_unknown_tray(tray), &nearest)))
}

/// A bed of the Picture, typed without capitals or accents too; one that is not there is refused likewise.
pub(super) fn bed_of(run: &Run, picture: &Picture, bed: &BedName) -> Result<Arc<BedPicture>, Exit> {
    let wanted = crate::base::text::folded(bed.as_str());
    if let Some((_, known)) = picture.beds.iter().find(|(name, _)| crate::base::text::folded(name.as_str()) == wanted) {
        return Ok(known.clone());
    }
    let nearest = name_search::nearest(bed.as_str(), picture.beds.keys().map(BedName::as_str));
    Err(Exit::refused(run.wording.nearest_after(run.wording.refused_unknown_bed(bed), &nearest)))
}

fn species_of(run: &Run, picture: &Picture, bed: &BedPicture, written: &str) -> Result<SpeciesKey, Exit> {
    let catalogue = &picture.site.species;
    let planned: Vec<SpeciesKey> = bed.species.iter().map(|line| line.species.clone()).collect();
    let Some(key) = catalogue.find(written) else {
        return Err(Exit::refused(run.wording.not_one_species(written, catalogue)));
    };
    if planned.contains(&key) {
        return Ok(key);
    }
    let name = run.wording.species_of(&key, catalogue);
    let names: Vec<String> = planned.iter().map(|key| run.wording.species_of(key, catalogue)).collect();
    Err(Exit::refused(run.wording.nearest_after(run.wording.refused_not_planned(&bed.name, name), &names)))
}

fn no_pair(run: &Run, picture: &Picture, tray: &TrayPicture, bed: &BedPicture) -> String {
    match &tray.species {
        _ if tray.standing == 0 => run.wording.refused_empty_tray(&tray.code),
        Some(key) => run.wording.refused_not_planned(&bed.name, run.wording.species_of(key, &picture.site.species)),
        None => run.wording.species_unknown(),
    }
}
