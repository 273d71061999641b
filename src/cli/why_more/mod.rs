//! `why` of what no verdict holds: what a lot is still worth, how many to sow, how a tray grows.

pub mod growth_json;
pub mod growth_text;
pub mod lot_json;
pub mod lot_text;

use std::sync::Arc;

use super::answer::Ending;
use super::run::{Run, Stopped};
use crate::base::{LotCode, name_search};
use crate::reckon::Picture;
use crate::reckon::lots::{LotOutlook, lot_outlook};
use crate::reckon::sowing::{NoPlan, SowingPlan, USUAL_SURE, Wanted, open_places, sowing_plan, standing_in_trays};
use crate::reckon::stock::LotStory;

/// What is told of a lot.
pub struct LotPage<'a> {
    /// Its story.
    pub lot: &'a LotStory,
    /// What it is still worth.
    pub outlook: LotOutlook,
    /// Places open in the beds that plan its species.
    pub open_places: u32,
    /// Plants of its species that stand in trays.
    pub standing: u32,
    /// Whether the number of plants was asked for, not taken from the beds.
    pub asked: bool,
    /// How many to sow; none where no place is open and nothing was asked.
    pub sowing: Option<Result<SowingPlan, NoPlan>>,
}

impl<'a> LotPage<'a> {
    /// Everything told of a lot; for `plants`, or for the places open in the beds.
    pub fn of(lot: &'a LotStory, picture: &Picture, plants: Option<u32>, sure: f64) -> LotPage<'a> {
        let profile = lot.species.as_ref().and_then(|key| picture.site.profile(key));
        let outlook = lot_outlook(lot, profile.map(|profile| &**profile), picture.day);
        let species = lot.species.as_ref();
        let open_places = species.map_or(0, |species| open_places(picture, species));
        let wanted = plants.or((open_places > 0).then_some(open_places));
        let sowing = wanted.map(|plants| match species {
            Some(species) => sowing_plan(picture, species, Some(lot), Wanted { plants, sure }),
            None => Err(NoPlan::UnknownSpecies),
        });
        let standing = species.map_or(0, |species| standing_in_trays(picture, species));
        LotPage { lot, outlook, open_places, standing, asked: plants.is_some(), sowing }
    }
}

/// Explains a lot.
pub fn why_lot(run: &Run, lot: &LotCode, plants: Option<u32>, sure_pct: Option<f64>) -> Result<Ending, Stopped> {
    let sure = sure_pct.map_or(USUAL_SURE, |pct| pct / 100.0);
    if !(sure > 0.0 && sure < 1.0) {
        return Err(Stopped::refused(run.wording.sowing_wrong_sure()));
    }
    if plants == Some(0) {
        return Err(Stopped::refused(run.wording.sowing_wrong_plants()));
    }
    let desk = run.desk()?;
    let picture = run.picture(&desk);
    let story = lot_of(run, &picture, lot)?;
    let page = LotPage::of(&story, &picture, plants, sure);
    if let (true, Some(Err(why @ (NoPlan::Wrong(_) | NoPlan::UnknownSpecies)))) = (page.asked, &page.sowing) {
        return Err(Stopped::refused(run.wording.sowing_no_plan(why)));
    }
    if run.everywhere.json {
        return run.answer_json(&lot_json::why_lot_json(&page, &picture, &run.wording));
    }
    run.answer(&lot_text::why_lot_text(&page, &picture, &run.wording, run.around.columns, run.around.colour))
}

fn lot_of(run: &Run, picture: &Picture, lot: &LotCode) -> Result<Arc<LotStory>, Stopped> {
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
    Err(Stopped::refused(run.wording.nearest_after(run.wording.refused_unknown_lot(lot), &nearest)))
}
