//! Plants of a tray of nurse plants that go out begin a row of nurse plants: how far apart is taken from the bed's plan, else
//! from their profile, where nobody wrote it.

use serde_json::Value;

use super::Desk;
use crate::base::{BedName, SpeciesKey, TrayCode};
use crate::nursery::envelope::Draft;
use crate::nursery::species::Role;

impl Desk {
    /// Writes the distances of a row of nurse plants into a draft that sets one from a tray and does not say them.
    pub(crate) fn settle_nurse_row(&self, draft: &mut Draft) {
        let says = |field: &str| draft.body.contains_key(field);
        if draft.kind != "outplanted" || says("row_m") || says("in_row_m") {
            return;
        }
        if let Some((row_m, in_row_m)) = self.spacing_of_nurses(draft) {
            draft.body.insert("row_m".into(), Value::from(row_m));
            draft.body.insert("in_row_m".into(), Value::from(in_row_m));
        }
    }

    fn spacing_of_nurses(&self, draft: &Draft) -> Option<(f64, f64)> {
        let named = |field: &str| draft.body.get(field).and_then(Value::as_str);
        let fold = self.fold();
        let species = fold.trays().get(&TrayCode::new(named("tray")?).ok()?)?.species.as_ref()?;
        let profile = fold.site().profile(species).filter(|profile| profile.role == Role::Nurse)?;
        let bed = BedName::new(named("bed")?).ok().and_then(|name| fold.beds().get(&name));
        let layout = bed.and_then(|story| story.layout.on(draft.happened));
        let is_it = |line: &SpeciesKey| line == species || fold.site().species_key(line).as_ref() == Some(species);
        let planned = layout.and_then(|layout| layout.plan.iter().find(|line| is_it(&line.species)));
        let usual = || Some((profile.row_m.as_ref()?.value, profile.in_row_m.as_ref()?.value));
        planned.map(|line| (line.row_m.0, line.in_row_m.0)).or_else(usual)
    }
}
