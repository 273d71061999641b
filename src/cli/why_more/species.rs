//! `why species`: what this nursery knows of a species, what is coming of it, and how many seeds to sow where there is no lot.

use serde_json::json;

use super::lot_json::{needed_into, sowing_json};
use super::{refuse_nonsense, sure_of};
use crate::cli::answer::Ending;
use crate::cli::forecast::{experience_json, stock_to_come_json};
use crate::cli::run::{Exit, Run};
use crate::cli::why::show_reasons;
use crate::cli::why_json::answer;
use crate::page::{self, Asked};
use crate::reckon::forecast::outlook;
use crate::reckon::sowing::SowingAsked;

/// Explains a species.
pub(crate) fn why_species(
    run: &Run,
    name: &str,
    (plants, sure_pct): (Option<u32>, Option<f64>),
    all: bool,
) -> Result<Ending, Exit> {
    let sure = sure_of(run, plants, sure_pct)?;
    let desk = run.desk()?;
    let picture = run.picture(&desk)?;
    let catalogue = &picture.site.species;
    let Some(key) = catalogue.find(name) else {
        return Err(Exit::refused(run.wording.not_one_species(name, catalogue)));
    };
    let (outlook, wording) = (outlook(&picture, run.forecast_basis), &run.wording);
    let asked = SowingAsked::of(&picture, &outlook.stock, Some(&key), None, plants, sure);
    refuse_nonsense(run, &asked)?;
    if run.everywhere.json {
        let known = outlook.experience_of(&key, &picture);
        let coming = outlook.pipelines.iter().find(|pipeline| pipeline.species == key);
        let (plan, text) = sowing_json(&asked, wording);
        let mut species = json!({
            "species": key,
            "species_name": wording.species_of(&key, catalogue),
            "experience": experience_json(&known, wording),
            "stock_to_come": coming.map(stock_to_come_json),
            "open_places": asked.open_places,
            "standing_in_trays": asked.standing,
            "sowing": plan,
            "sowing_text": text,
        });
        needed_into(&mut species, &asked);
        return run.answer_json(&answer(&picture, "species", species));
    }
    let about = Asked { picture: &picture, wording };
    show_reasons(run, &picture, page::lot::why_species(&key, &outlook, &asked, about), all)
}
