//! `species`: profiles with the source of each figure.

mod add;
mod differs;
pub(crate) mod in_a_sheet;
mod json;
mod made;
pub mod text;

use super::answer::Ending;
use super::args::Species;
use super::forecast::{experience_json, stock_to_come_json};
use super::run::{Exit, Run};
use crate::base::SpeciesKey;
use crate::desk::{DeskError, JournalError};
use crate::nursery::species::Catalogue;
use crate::reckon::forecast::outlook;
use json::{sources_json, species_json, species_list_json};
use serde_json::Value;
use std::sync::Arc;
use text::{Asked, sources_text, species_list_text, species_text};

/// Whether a new species is to be written.
pub(crate) fn adds(arguments: &Species) -> bool {
    add::asked(&arguments.name).is_some()
}

/// Lists the species, or shows one. Works without a nursery; with one, its own figures lead.
pub(crate) fn run(run: &Run, arguments: &Species) -> Result<Ending, Exit> {
    if let Some((name, like)) = add::asked(&arguments.name) {
        return add::run(run, &name, &like);
    }
    let asked = arguments.name.join(" ");
    let opened = crate::desk::Desk::open(&run.file, &run.around.folders.settings, run.now);
    let mut picture = None;
    let catalogue = match opened {
        Ok(desk) => picture.insert(run.picture(&desk)?).site.species.clone(),
        Err(DeskError::Journal(JournalError::NotThere(_))) => Arc::new(Catalogue::built_in()),
        Err(fault) => return Err(run.exit_for(&fault, &Catalogue::built_in())),
    };
    if arguments.sources {
        if run.everywhere.json {
            return run.answer_json(&sources_json(&catalogue, &run.wording));
        }
        return run.answer(&sources_text(&catalogue, &run.wording, run.around.columns, run.around.colour));
    }
    let name = asked.as_str();
    if name.is_empty() {
        if run.everywhere.json {
            return run.answer_json(&species_list_json(&catalogue, None, &run.wording));
        }
        return run.answer(&species_list_text(&catalogue, None, &run.wording, run.around.columns, run.around.colour));
    }
    let Some(profile) = catalogue.find(name).and_then(|key| catalogue.get(&key).cloned()) else {
        return called(run, name, &catalogue);
    };
    if run.everywhere.json {
        let mut answer = species_json(&profile, &run.wording);
        if let Some(picture) = &picture {
            let outlook = outlook(picture, run.forecast_basis);
            answer["experience"] = experience_json(&outlook.experience_of(&profile.key, picture), &run.wording);
            let coming = outlook.pipelines.iter().find(|pipeline| pipeline.species == profile.key);
            answer["stock_to_come"] = coming.map_or(Value::Null, stock_to_come_json);
        }
        return run.answer_json(&answer);
    }
    let known = picture
        .as_ref()
        .map(|picture| run.wording.species_lines(&profile.key, picture, &outlook(picture, run.forecast_basis)));
    let (width, colour) = (run.around.columns, run.around.colour);
    run.answer(&species_text(&profile, &known.unwrap_or_default(), &run.wording, width, colour))
}

/// The species that a word may mean, or why there is none.
fn called(run: &Run, name: &str, catalogue: &Catalogue) -> Result<Ending, Exit> {
    // A word that is only a piece of names is the name of none of them.
    let called = if catalogue.is_piece_of_names(name) { Vec::new() } else { catalogue.resolve(name).several() };
    let with: Vec<SpeciesKey> = catalogue.with_word(name).into_iter().filter(|key| !called.contains(key)).collect();
    let keys = [&called[..], &with[..]].concat();
    if keys.is_empty() {
        return Err(Exit::refused(run.wording.not_one_species(name, catalogue)));
    }
    if run.everywhere.json {
        return run.answer_json(&species_list_json(catalogue, Some(&keys), &run.wording));
    }
    let asked = Some(Asked { word: name, called: &called, with: &with });
    run.answer(&species_list_text(catalogue, asked, &run.wording, run.around.columns, run.around.colour))
}
