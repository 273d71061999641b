//! `species`: profiles with the source of each figure.

mod json;
pub mod text;

use super::answer::Ending;
use super::args::Species;
use super::forecast::{experience_json, stock_to_come_json};
use super::run::{Run, Stopped};
use crate::desk::{DeskError, JournalError};
use crate::nursery::species::Catalogue;
use crate::reckon::forecast::outlook;
use json::{sources_json, species_json, species_list_json};
use serde_json::Value;
use std::sync::Arc;
use text::{sources_text, species_list_text, species_text};

/// Lists the species, or shows one. Works without a nursery; with one, its own figures lead.
pub fn run(run: &Run, arguments: &Species) -> Result<Ending, Stopped> {
    let opened = crate::desk::Desk::open(&run.file, &run.around.folders.settings, run.now);
    let mut picture = None;
    let catalogue = match opened {
        Ok(desk) => picture.insert(run.picture(&desk)?).site.species.clone(),
        Err(DeskError::Journal(JournalError::NotThere(_))) => Arc::new(Catalogue::built_in()),
        Err(fault) => return Err(run.stopped(&fault, &Catalogue::built_in())),
    };
    if arguments.sources {
        if run.everywhere.json {
            return run.answer_json(&sources_json(&catalogue, &run.wording));
        }
        return run.answer(&sources_text(&catalogue, &run.wording, run.around.columns, run.around.colour));
    }
    let Some(name) = &arguments.name else {
        if run.everywhere.json {
            return run.answer_json(&species_list_json(&catalogue, &run.wording));
        }
        return run.answer(&species_list_text(&catalogue, &run.wording, run.around.columns, run.around.colour));
    };
    let Some(profile) = catalogue.find(name).and_then(|key| catalogue.get(&key).cloned()) else {
        let unknown = run.wording.refused_unknown_species(name);
        return Err(Stopped::refused(run.wording.nearest_after(unknown, &catalogue.nearest(name))));
    };
    if run.everywhere.json {
        let mut answer = species_json(&profile, &run.wording);
        if let Some(picture) = &picture {
            let outlook = outlook(picture, run.leads);
            answer["experience"] = experience_json(&outlook.experience_of(&profile.key, picture), &run.wording);
            let coming = outlook.pipelines.iter().find(|pipeline| pipeline.species == profile.key);
            answer["stock_to_come"] = coming.map_or(Value::Null, stock_to_come_json);
        }
        return run.answer_json(&answer);
    }
    let known =
        picture.as_ref().map(|picture| run.wording.species_lines(&profile.key, picture, &outlook(picture, run.leads)));
    let (width, colour) = (run.around.columns, run.around.colour);
    run.answer(&species_text(&profile, &known.unwrap_or_default(), &run.wording, width, colour))
}
