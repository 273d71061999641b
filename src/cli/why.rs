//! `why`: every criterion of a verdict.

use std::sync::Arc;

use super::answer::Ending;
use super::args::Why;
use super::run::{Exit, Run};
use super::why_json::{why_bed_json, why_pair_json, why_tray_json};
use super::why_more::{why_lot, why_species};
use super::why_text::{why_bed_text, why_pair_text, why_tray_text};
use crate::base::columns;
use crate::base::{BedName, SpeciesKey, TrayCode, name_search};
use crate::reckon::Picture;
use crate::reckon::forecast::outlook;
use crate::reckon::picture::{BedPicture, Criterion, TrayPicture};
use crate::reckon::round::round_by;
use crate::wording::verdict::About;

/// The trays and beds that are asked about.
fn named(why: &Why) -> Vec<&str> {
    match why {
        Why::Tray { tray } => vec![tray.as_str()],
        Why::Bed { bed, .. } => vec![bed.as_str()],
        Why::Pair { tray, bed, .. } => vec![tray.as_str(), bed.as_str()],
        Why::Lot { .. } | Why::Species { .. } => Vec::new(),
    }
}

/// Explains a tray, a bed or a pair.
pub(crate) fn run(run: &Run, why: &Why) -> Result<Ending, Exit> {
    let mut desk = run.desk()?;
    let picture = run.picture_with(&mut desk, &named(why))?;
    let (width, colour) = (run.around.columns, run.around.colour);
    match why {
        Why::Tray { tray } => {
            let tray = tray_of(run, &picture, &desk.fold().ledger().tray_now(tray))?;
            let (outlook, round) = (outlook(&picture, run.forecast_basis), round_by(&picture, run.forecast_basis));
            if run.everywhere.json {
                return run.answer_json(&why_tray_json(&tray, &picture, &outlook, &round, &run.wording));
            }
            let mut expected = run.wording.forecast_lines(&tray.code, &picture, &outlook, &round.worth_looking);
            expected.extend(run.wording.forecast_formulas(&tray.code, &picture, &outlook));
            run.answer(&why_tray_text(&tray, &picture, &expected, &run.wording, width, colour))
        }
        Why::Bed { bed, species } => {
            let bed = bed_of(run, &picture, bed)?;
            let species = species.as_ref().map(|written| species_of(run, &picture, &bed, written)).transpose()?;
            if run.everywhere.json {
                return run.answer_json(&why_bed_json(&bed, species.as_ref(), &picture, &run.wording));
            }
            run.answer(&why_bed_text(&bed, species.as_ref(), &picture, &run.wording, width, colour))
        }
        Why::Pair { tray, bed, how } => {
            let tray = tray_of(run, &picture, &desk.fold().ledger().tray_now(tray))?;
            let bed = bed_of(run, &picture, bed)?;
            let Some(pair) = picture.pair(&tray.code, &bed.name) else {
                return Err(Exit::refused(no_pair(run, &picture, &tray, &bed)));
            };
            if run.everywhere.json {
                return run.answer_json(&why_pair_json(pair, &picture, &run.wording));
            }
            let mut text = why_pair_text(pair, &picture, &run.wording, width, colour);
            if *how {
                text.push_str(&steps(run, &pair.criteria));
            }
            run.answer(&text)
        }
        Why::Lot { lot, plants, sure } => why_lot(run, lot, *plants, *sure),
        Why::Species { species, plants, sure } => why_species(run, species, *plants, *sure),
    }
}

/// What to do about each thing that holds a pair back, one under the other.
fn steps(run: &Run, criteria: &[Criterion]) -> String {
    let blocking: Vec<&Criterion> = criteria.iter().filter(|criterion| criterion.blocks).collect();
    let mut text = format!("\n{}\n", run.wording.how_heading(blocking.len() as i64));
    for (i, criterion) in blocking.into_iter().enumerate() {
        let step = format!("{}. {}", i + 1, run.wording.reason(criterion, About::Pair));
        for (line, part) in columns::wrapped(&step, run.around.columns - 5).iter().enumerate() {
            text.push_str(if line == 0 { "  " } else { "     " });
            text.push_str(part);
            text.push('\n');
        }
    }
    text
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
