//! `why` of what no verdict holds: what a lot is still worth, how many to sow, how a tray grows.

pub(crate) mod growth_json;
pub(crate) mod lot_json;
pub(in crate::cli) mod positions;
mod species;

pub(crate) use species::why_species;

use std::collections::BTreeMap;
use std::sync::Arc;

use super::answer::Ending;
use super::run::{Exit, Run};
use super::why::show_reasons;
use crate::base::{LotCode, TrayCode, name_search};
use crate::desk::is_a_share;
use crate::page::{self, Asked};
use crate::reckon::Picture;
use crate::reckon::forecast::{TrayStock, outlook_of_living};
use crate::reckon::lots::{LotOutlook, lot_outlook};
use crate::reckon::round::round_from;
use crate::reckon::sowing::{NoPlan, SowingAsked, USUAL_SURE};
use crate::reckon::stock::LotStory;

/// What is told of a lot.
pub(crate) struct LotAnswer<'a> {
    /// Its story.
    pub(crate) lot: &'a LotStory,
    /// What it is still worth.
    pub(crate) outlook: LotOutlook,
    /// How many to sow.
    pub(crate) sowing: SowingAsked,
}

impl<'a> LotAnswer<'a> {
    /// Everything told of a lot; for `plants`, or for the places open in the beds.
    pub(crate) fn of(
        lot: &'a LotStory,
        picture: &Picture,
        stock: &BTreeMap<TrayCode, TrayStock>,
        plants: Option<u32>,
        sure: f64,
    ) -> LotAnswer<'a> {
        let profile = lot.species.as_ref().and_then(|key| picture.site.profile(key));
        let outlook = lot_outlook(lot, profile.map(|profile| &**profile), picture.day);
        let sowing = SowingAsked::of(picture, stock, lot.species.as_ref(), Some(lot), plants, sure);
        LotAnswer { lot, outlook, sowing }
    }
}

/// Explains a lot.
pub(crate) fn why_lot(
    run: &Run,
    lot: &LotCode,
    (plants, sure_pct): (Option<u32>, Option<f64>),
    all: bool,
) -> Result<Ending, Exit> {
    let sure = sure_of(run, plants, sure_pct)?;
    let mut desk = run.desk()?;
    let picture = run.picture_with(&mut desk, &[lot.as_str()])?;
    let story = lot_of(run, &picture, lot)?;
    let outlook = outlook_of_living(&picture, run.forecast_basis);
    let round = round_from(&picture, &outlook);
    let answer = LotAnswer::of(&story, &picture, &outlook.stock, plants, sure);
    refuse_nonsense(run, &answer.sowing)?;
    if run.everywhere.json {
        return run.answer_json(&lot_json::why_lot_json(&answer, &picture, &round, &run.wording));
    }
    let asked = Asked { picture: &picture, wording: &run.wording };
    let page = page::lot::why_lot(&story, &answer.outlook, &answer.sowing, (&round, None), asked);
    show_reasons(run, &picture, page, all)
}

/// How sure, as a share; refused where the numbers asked make no sense.
fn sure_of(run: &Run, plants: Option<u32>, sure_pct: Option<f64>) -> Result<f64, Exit> {
    if let Some(share) = sure_pct.filter(|pct| is_a_share(*pct)) {
        return Err(Exit::refused(run.wording.share_asked_words(share)));
    }
    let sure = sure_pct.map_or(USUAL_SURE, |pct| pct / 100.0);
    if !(sure > 0.0 && sure < 1.0) {
        return Err(Exit::refused(run.wording.sowing_wrong_sure()));
    }
    if plants == Some(0) {
        return Err(Exit::refused(run.wording.sowing_wrong_plants()));
    }
    Ok(sure)
}

fn refuse_nonsense(run: &Run, sowing: &SowingAsked) -> Result<(), Exit> {
    match (sowing.asked, &sowing.plan) {
        (true, Some(Err(why @ (NoPlan::Wrong(_) | NoPlan::UnknownSpecies)))) => {
            Err(Exit::refused(run.wording.sowing_no_plan(why)))
        }
        (_, None | Some(Ok(_) | Err(_))) => Ok(()),
    }
}

fn lot_of(run: &Run, picture: &Picture, lot: &LotCode) -> Result<Arc<LotStory>, Exit> {
    if let Some(known) = picture.lots.get(lot) {
        return Ok(known.clone());
    }
    // A code may be typed without its capitals.
    let wanted = crate::base::text::folded(lot.as_str());
    let mut alike = picture.lots.iter().filter(|(code, _)| crate::base::text::folded(code.as_str()) == wanted);
    if let (Some((_, known)), None) = (alike.next(), alike.next()) {
        return Ok(known.clone());
    }
    let nearest = name_search::nearest(lot.as_str(), picture.lots.keys().map(LotCode::as_str));
    Err(Exit::refused(run.wording.nearest_after(run.wording.refused_unknown_lot(lot), &nearest)))
}
