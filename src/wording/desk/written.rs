//! An entry that is only tried in a sentence, and the parts of a short line by what they mean.

use serde_json::Value;

use crate::nursery::entry::reading;
use crate::nursery::envelope::{Draft, canonical};
use crate::nursery::species::Catalogue;
use crate::wording::Wording;

impl Wording {
    /// An entry to be written, in one sentence without its day.
    pub(crate) fn draft_sentence(&self, draft: &Draft, species: &Catalogue) -> String {
        let body = canonical(&Value::Object(draft.body.clone()));
        // A draft was settled by its kind: what cannot be read here is refused when it is written.
        match reading::read_body(&draft.kind, &body) {
            Ok(what) => self.what_sentence(&what, species),
            Err(_) => draft.kind.clone(),
        }
    }

    /// What a field of a short line means: nobody typed its name.
    pub(crate) fn field_in_words(&self, field: &str) -> String {
        match field {
            "shade_now_pct" => self.named_shade_pct(),
            "causes" => self.named_cause(),
            "nurse" => self.named_species(),
            "tray" => self.named_tray(),
            "bed" => self.named_bed(),
            "place" => self.named_place(),
            "lot" => self.named_lot(),
            "species" => self.named_species(),
            "count" => self.named_count(),
            "standing" => self.named_standing(),
            "dead" => self.named_dead(),
            "alive" => self.named_alive(),
            "cause" => self.named_cause(),
            "container" => self.named_container(),
            "shade_pct" => self.named_shade_pct(),
            "every_days" => self.named_every_days(),
            "roots" => self.named_roots(),
            "plants" => self.named_plants(),
            "height_cm" => self.named_height_cm(),
            "collar_mm" => self.named_collar_mm(),
            "share" => self.named_share(),
            "light_share" => self.named_light_share(),
            "rain_mm" => self.named_rain_mm(),
            "tmin_c" => self.named_tmin_c(),
            "tmax_c" => self.named_tmax_c(),
            "text" => self.named_text(),
            "why" => self.named_why(),
            "until" => self.named_until(),
            "task" => self.named_task(),
            "with" => self.named_with(),
            "what" => self.named_what(),
            "rows" => self.named_rows(),
            "seeds" => self.named_seeds(),
            "mass_g" => self.named_mass_g(),
            "days" => self.named_days(),
            "germinated" => self.named_germinated(),
            "rod_mm" => self.named_rod_mm(),
            "push_kg" => self.named_push_kg(),
            "depth_cm" => self.named_depth_cm(),
            "resistance_mpa" => self.named_resistance_mpa(),
            "happened" => self.named_happened(),
            "to" => self.named_to(),
            "row_m" | "in_row_m" => self.named_spacing(),
            "from" => self.named_from(),
            "form" => self.named_form(),
            "source" => self.named_source(),
            "collected" => self.named_collected(),
            "kept" => self.named_kept(),
            "holes" => self.named_holes(),
            "seeds_per_hole" => self.named_seeds_per_hole(),
            other => self.field_title(other),
        }
    }
}
