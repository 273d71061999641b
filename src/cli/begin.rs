//! `begin`: an empty nursery.

use serde_json::{Map, Value, json};

use super::answer::Ending;
use super::args::Begin;
use super::run::{Exit, Run};
use crate::base::columns::wrapped;
use crate::desk::Desk;
use crate::nursery::entry::reading;
use crate::nursery::envelope::Draft;
use crate::nursery::species::Catalogue;

/// Begins a nursery.
pub(crate) fn run(run: &Run, begin: &Begin) -> Result<Ending, Exit> {
    run.only_today()?;
    let offset_h = begin.utc_offset.unwrap_or_else(|| (begin.lon / 15.0).round());
    let written: Map<String, Value> = [
        ("name", json!(begin.name)),
        ("latitude_deg", json!(begin.lat)),
        ("longitude_deg", json!(begin.lon)),
        ("altitude_m", json!(begin.altitude)),
        ("utc_offset_h", json!(offset_h)),
    ]
    .into_iter()
    .map(|(name, value)| (name.to_string(), value))
    .collect();
    let body = reading::settle_body("nursery_set", &written)
        .map_err(|fault| Exit::refused(run.wording.entry_fault(&fault)))?;
    let draft = Draft {
        happened: run.now.today,
        clock: run.now.clock,
        who: run.who.clone(),
        kind: "nursery_set".to_string(),
        body,
    };
    let shelf = &run.around.folders.settings;
    Desk::begin(&run.file, shelf, run.now, vec![draft])
        .map_err(|fault| run.exit_for(&fault, &Catalogue::built_in()))?;
    if run.everywhere.json {
        return run.answer_json(&json!({"version":1,"nursery":begin.name,"file":run.file.display().to_string()}));
    }
    let begun = run.wording.begun(&begin.name, run.file.display());
    let next = wrapped(&run.wording.begun_next(), run.around.columns).join("\n");
    run.answer(&format!("{begun}\n{next}\n"))
}
