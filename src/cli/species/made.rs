//! The entry that makes a species of the nursery's own.

use serde_json::{Map, Value, json};

use crate::cli::run::{Exit, Run};
use crate::nursery::envelope::Draft;
use crate::nursery::species::{Catalogue, FIGURES, Profile};

/// The entry of a new species with the figures of another, or with none.
pub(super) fn new_species(run: &Run, name: &str, like: Option<&str>, catalogue: &Catalogue) -> Result<Draft, Exit> {
    if let Some(key) = catalogue.find(name) {
        let known = run.wording.species_of(&key, catalogue);
        return Err(Exit::refused(run.wording.species_add_known(known, name)));
    }
    let figures = match like {
        None => Map::new(),
        Some(like) => {
            let found = catalogue.find(like).and_then(|key| catalogue.get(&key));
            figures_of(found.ok_or_else(|| which(run, like, catalogue))?)
        }
    };
    let body = json!({"species": name, "profile": figures});
    let Value::Object(body) = body else { return Err(Exit::refused(run.wording.species_add_how())) };
    let kind = "species_set".to_string();
    Ok(Draft { happened: run.now.today, clock: None, who: run.who.clone(), kind, body })
}

/// Several species may be meant, or none is: which there are.
fn which(run: &Run, like: &str, catalogue: &Catalogue) -> Exit {
    let several = catalogue.resolve(like).several();
    if several.is_empty() {
        return Exit::refused(run.wording.not_one_species(like, catalogue));
    }
    let names: Vec<String> = several.iter().map(|key| run.wording.species_of(key, catalogue)).collect();
    Exit::refused(run.wording.species_add_which(like, names.join(", ")))
}

/// What is true of one plant and tells nothing of another like it: whether it harms anybody.
const OF_THE_PLANT_ALONE: [&str; 2] = ["danger", "danger_note"];

/// The figures of a profile, each said to be from it and ours: nobody measured them on the new species. What would vouch for
/// the new one is left out, so that it is unknown: that no danger is known, and that it lives from bare roots. That the other
/// does not live from them, or is sold grafted, only holds back or asks, and stays; so does how its stakes and suckers are seen
/// to be alive and how long they keep, which goes with the way it is planted.
fn figures_of(profile: &Profile) -> Map<String, Value> {
    let source =
        format!("from {}", if profile.scientific.is_empty() { profile.key.as_str() } else { &profile.scientific });
    let whole = serde_json::to_value(profile).unwrap_or_default();
    let figure = |name: &str| {
        let value = whole.get(name)?.get("value")?.clone();
        Some((name.to_string(), json!({"value": value, "source": source, "flag": "ours"})))
    };
    let vouches = |name: &str| OF_THE_PLANT_ALONE.contains(&name) || name == "bare_roots" && lives_bare(profile);
    let figures = FIGURES.iter().filter(|(name, _)| !vouches(name)).filter_map(|(name, _)| figure(name));
    let role = whole.get("role").cloned().map(|role| ("role".to_string(), role));
    figures.chain(role).collect()
}

fn lives_bare(profile: &Profile) -> bool {
    profile.bare_roots.as_ref().is_some_and(|lives| lives.value)
}
