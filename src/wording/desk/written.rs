//! An entry in the words of a person, and the parts of a short line by what they mean.

use serde_json::Value;

use crate::base::{Day, SpeciesKey};
use crate::nursery::entry::kind_of_entry;
use crate::nursery::entry::shape::{Field, Shape};
use crate::nursery::envelope::Draft;
use crate::nursery::species::Catalogue;
use crate::wording::messages::messages;
use crate::wording::{Lang, Wording};

messages! {
    written_line(what: text, parts: text);
    part_other(field: text, value: text);
    plan_line(species: text, row: text, in_row: text);
    part_count(value: text);
    part_standing(value: text);
    part_dead(value: text);
    part_alive(value: text);
    part_cause(value: text);
    part_causes(value: text);
    part_why(value: text);
    part_from(value: text);
    part_to(value: text);
    part_container(value: text);
    part_place(value: text);
    part_bed(value: text);
    part_lot(value: text);
    part_field(value: text);
    part_shade_pct(value: text);
    part_shade_now_pct(value: text);
    part_every_days(value: text);
    part_roots(value: text);
    part_plants(value: text);
    part_light_share(value: text);
    part_rain_mm(value: text);
    part_tmin_c(value: text);
    part_tmax_c(value: text);
    part_until(value: text);
    part_with(value: text);
    part_rows(value: text);
    part_seeds(value: text);
    part_mass_g(value: text);
    part_days(value: text);
    part_replicates(value: text);
    part_rod_mm(value: text);
    part_push_kg(value: text);
    part_depth_cm(value: text);
    part_resistance_mpa(value: text);
    part_age_days(value: text);
    part_height_cm(value: text);
    part_source(value: text);
    part_volume_ml(value: text);
    part_length_m(value: text);
    part_width_m(value: text);
    part_plan(value: text);
    part_planted_about(value: text);
    part_row_m(value: text);
    part_in_row_m(value: text);
    flag_about();
    flag_wet();
    flag_not_wet();
    flag_never();
    wrote_counted();
    wrote_lost();
    wrote_culled();
    wrote_carried();
    wrote_moved_on();
    wrote_outplanted();
    wrote_shade_set();
    wrote_watering_set();
    wrote_plug_checked();
    wrote_flushed();
    wrote_measured();
    wrote_given_out();
    wrote_stocktaken();
    wrote_hardening_begun();
    wrote_held();
    wrote_released();
    wrote_pest_seen();
    wrote_treated();
    wrote_noted();
    wrote_light_read();
    wrote_prepared();
    wrote_weather();
    wrote_sown();
    wrote_soil_checked();
    wrote_survival_counted();
    wrote_nurse_counted();
    wrote_lot_counted();
    wrote_lot_tested();
    wrote_let_go();
    wrote_plants_received();
    wrote_container_set();
    wrote_bed_set();
    wrote_plants_found();
    wrote_nurse_planted();
    named_tray();
    named_bed();
    named_place();
    named_lot();
    named_species();
    named_count();
    named_standing();
    named_dead();
    named_alive();
    named_cause();
    named_container();
    named_shade_pct();
    named_every_days();
    named_roots();
    named_plants();
    named_height_cm();
    named_collar_mm();
    named_light_share();
    named_rain_mm();
    named_tmin_c();
    named_tmax_c();
    named_text();
    named_why();
    named_until();
    named_task();
    named_with();
    named_what();
    named_rows();
    named_seeds();
    named_mass_g();
    named_days();
    named_germinated();
    named_rod_mm();
    named_push_kg();
    named_depth_cm();
    named_resistance_mpa();
    named_happened();
    named_to();
}

impl Wording {
    /// An entry to be written, in words.
    pub fn draft_in_words(&self, draft: &Draft, species: &Catalogue) -> String {
        let what = self.kind_in_words(&draft.kind);
        let fields = kind_of_entry(&draft.kind).map_or(&[][..], |known| known.fields);
        let written = fields.iter().filter_map(|field| Some((field, draft.body.get(field.name)?)));
        let parts: Vec<String> =
            written.enumerate().filter_map(|(i, (field, value))| self.part(field, value, i == 0, species)).collect();
        self.written_line(what, parts.join(", "))
    }

    /// A field and its value; the first of an entry says what it is about and needs no word before it.
    fn part(&self, field: &Field, value: &Value, first: bool, species: &Catalogue) -> Option<String> {
        if let Value::Bool(flag) = value {
            return match (field.name, flag) {
                ("about", true) => Some(self.flag_about()),
                ("wet", true) => Some(self.flag_wet()),
                ("wet", false) => Some(self.flag_not_wet()),
                ("never", true) => Some(self.flag_never()),
                (_, false) => None,
                (name, true) => Some(name.to_string()),
            };
        }
        // Where nothing came from elsewhere there is nothing to say.
        if field.name == "from" && value.as_str() == Some("opening") {
            return None;
        }
        let written = self.value_in_words(field, value, species);
        let says_itself = ["species", "nurse", "task", "text", "what", "how", "form"].contains(&field.name);
        let is_name = ["tray", "lot", "bed", "place", "container"].contains(&field.name);
        if says_itself || (first && is_name) {
            return Some(written);
        }
        Some(self.part_in_words(field.name, &written))
    }

    fn value_in_words(&self, field: &Field, value: &Value, species: &Catalogue) -> String {
        match (value, &field.shape) {
            (Value::String(text), Shape::Species) => self.species_of(&SpeciesKey::new(text), species),
            (Value::String(text), Shape::Day) => text.parse::<Day>().map_or_else(|_| text.clone(), |day| self.day(day)),
            (Value::String(text), Shape::Word(words)) => {
                let said = words.iter().find(|spellings| spellings.first() == Some(&text.as_str()));
                let other = said.and_then(|spellings| spellings.get(1)).filter(|_| self.lang() == Lang::Es);
                other.map_or_else(|| text.replace('_', " "), |spanish| (*spanish).to_string())
            }
            (Value::Number(number), _) => {
                let number = number.as_f64().unwrap_or(0.0);
                if field.name == "light_share" { self.percent(number) } else { self.number(number, 3) }
            }
            (Value::Array(items), Shape::List(inner)) => {
                let all: Vec<String> = items.iter().map(|item| self.item_in_words(inner, item, species)).collect();
                all.join(", ")
            }
            (Value::String(text), _) => text.clone(),
            (other, _) => other.to_string(),
        }
    }

    /// One of a list: a line of a plan, a plant of a sample, a plate of a test.
    fn item_in_words(&self, shape: &Shape, item: &Value, species: &Catalogue) -> String {
        let number = |name: &str| item.get(name).and_then(Value::as_f64);
        if let (Some(key), Some(row), Some(in_row)) =
            (item.get("species").and_then(Value::as_str), number("row_m"), number("in_row_m"))
        {
            let name = self.species_of(&SpeciesKey::new(key), species);
            return self.plan_line(name, self.number(row, 2), self.number(in_row, 2));
        }
        if let (Some(germinated), Some(seeds)) = (number("germinated"), number("seeds")) {
            return format!("{}/{}", self.number(germinated, 0), self.number(seeds, 0));
        }
        if let Shape::Record(fields) = shape {
            let written = fields.iter().filter_map(|field| Some((field, item.get(field.name)?)));
            let all: Vec<String> = written.map(|(field, value)| self.value_in_words(field, value, species)).collect();
            return all.join("/");
        }
        item.as_str().map_or_else(|| item.to_string(), str::to_string)
    }

    /// The kind of an entry in a word or two; the name of the kind where it has none.
    pub fn kind_in_words(&self, kind: &str) -> String {
        match kind {
            "counted" => self.wrote_counted(),
            "lost" => self.wrote_lost(),
            "culled" => self.wrote_culled(),
            "carried" => self.wrote_carried(),
            "moved_on" => self.wrote_moved_on(),
            "outplanted" => self.wrote_outplanted(),
            "shade_set" => self.wrote_shade_set(),
            "watering_set" => self.wrote_watering_set(),
            "plug_checked" => self.wrote_plug_checked(),
            "flushed" => self.wrote_flushed(),
            "measured" => self.wrote_measured(),
            "given_out" => self.wrote_given_out(),
            "stocktaken" => self.wrote_stocktaken(),
            "hardening_begun" => self.wrote_hardening_begun(),
            "held" => self.wrote_held(),
            "released" => self.wrote_released(),
            "pest_seen" => self.wrote_pest_seen(),
            "treated" => self.wrote_treated(),
            "noted" => self.wrote_noted(),
            "light_read" => self.wrote_light_read(),
            "prepared" => self.wrote_prepared(),
            "weather" => self.wrote_weather(),
            "sown" => self.wrote_sown(),
            "soil_checked" => self.wrote_soil_checked(),
            "survival_counted" => self.wrote_survival_counted(),
            "nurse_counted" => self.wrote_nurse_counted(),
            "lot_counted" => self.wrote_lot_counted(),
            "lot_tested" => self.wrote_lot_tested(),
            "let_go" => self.wrote_let_go(),
            "plants_received" => self.wrote_plants_received(),
            "container_set" => self.wrote_container_set(),
            "bed_set" => self.wrote_bed_set(),
            "plants_found" => self.wrote_plants_found(),
            "nurse_planted" => self.wrote_nurse_planted(),
            other => other.to_string(),
        }
    }

    fn part_in_words(&self, field: &str, value: &str) -> String {
        match field {
            "count" => self.part_count(value),
            "standing" => self.part_standing(value),
            "dead" => self.part_dead(value),
            "alive" => self.part_alive(value),
            "cause" => self.part_cause(value),
            "causes" => self.part_causes(value),
            "why" => self.part_why(value),
            "from" => self.part_from(value),
            "to" => self.part_to(value),
            "container" => self.part_container(value),
            "place" => self.part_place(value),
            "bed" => self.part_bed(value),
            "lot" => self.part_lot(value),
            "field" => self.part_field(value),
            "shade_pct" => self.part_shade_pct(value),
            "shade_now_pct" => self.part_shade_now_pct(value),
            "every_days" => self.part_every_days(value),
            "roots" => self.part_roots(value),
            "plants" => self.part_plants(value),
            "light_share" => self.part_light_share(value),
            "rain_mm" => self.part_rain_mm(value),
            "tmin_c" => self.part_tmin_c(value),
            "tmax_c" => self.part_tmax_c(value),
            "until" => self.part_until(value),
            "with" => self.part_with(value),
            "rows" => self.part_rows(value),
            "seeds" => self.part_seeds(value),
            "mass_g" => self.part_mass_g(value),
            "days" => self.part_days(value),
            "replicates" => self.part_replicates(value),
            "rod_mm" => self.part_rod_mm(value),
            "push_kg" => self.part_push_kg(value),
            "depth_cm" => self.part_depth_cm(value),
            "resistance_mpa" => self.part_resistance_mpa(value),
            "age_days" => self.part_age_days(value),
            "height_cm" => self.part_height_cm(value),
            "source" => self.part_source(value),
            "volume_ml" => self.part_volume_ml(value),
            "length_m" => self.part_length_m(value),
            "width_m" => self.part_width_m(value),
            "plan" => self.part_plan(value),
            "planted_about" => self.part_planted_about(value),
            "row_m" => self.part_row_m(value),
            "in_row_m" => self.part_in_row_m(value),
            other => self.part_other(other, value),
        }
    }

    /// What a field of a short line means: nobody typed its name.
    pub fn field_in_words(&self, field: &str) -> String {
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
            other => other.to_string(),
        }
    }
}
