//! Species for programs.

use serde_json::{Map, Value, json};

use crate::base::SpeciesKey;
use crate::cli::ready_json::VERSION;
use crate::nursery::species::{Catalogue, Profile, Trust};
use crate::wording::Wording;

/// Every species, or those of these keys, shortly.
pub(crate) fn species_list_json(species: &Catalogue, only: Option<&[SpeciesKey]>, wording: &Wording) -> Value {
    let all: Vec<Value> = match only {
        None => species.iter().map(|(_, profile)| heading(profile, wording)).collect(),
        Some(keys) => keys.iter().filter_map(|key| species.get(key)).map(|profile| heading(profile, wording)).collect(),
    };
    json!({"version": VERSION, "species": all})
}

/// How many figures were read, recalled, common practice, ours, the nursery's own: all together and of each species.
pub(crate) fn sources_json(species: &Catalogue, wording: &Wording) -> Value {
    let counted = |trust: Trust| serde_json::to_value(trust).unwrap_or_default();
    let mut answer = counted(Trust::of(species.iter().map(|(_, profile)| profile.as_ref())));
    let each = species.iter().map(|(key, profile)| {
        let mut one = counted(Trust::of([profile.as_ref()]));
        one["species"] = json!(key);
        one["name"] = json!(wording.species_name(profile));
        one
    });
    answer["species"] = each.collect();
    answer["version"] = json!(VERSION);
    answer
}

/// One species with every figure that is known of it.
pub(crate) fn species_json(profile: &Profile, wording: &Wording) -> Value {
    let mut answer = heading(profile, wording);
    let figures: Map<String, Value> = profile
        .figures()
        .into_iter()
        .map(|(name, value, source, flag)| {
            let message = json!({
                "value": value,
                "text": wording.figure_value(name, &value).join("; "),
                "source": wording.figure_source_words(source),
                "flag": flag,
                "name": wording.figure_name(name),
            });
            (name.to_string(), message)
        })
        .collect();
    let in_short = wording.in_short(profile).map(|one| (one.key.to_string(), json!(one.said)));
    answer["in_short"] = Value::Object(in_short.into_iter().collect());
    answer["danger_text"] = json!(wording.danger_line(profile));
    answer["never_confuse_with"] = json!(profile.never_confuse_with);
    answer["version"] = json!(VERSION);
    answer["figures"] = Value::Object(figures);
    let message = |texts: &[String]| -> Vec<String> { texts.iter().map(|text| wording.profile_text(text)).collect() };
    answer["notes"] = json!(message(&profile.notes));
    answer["cautions"] = json!(message(&profile.cautions));
    answer
}

fn heading(profile: &Profile, wording: &Wording) -> Value {
    json!({
        "species": profile.key,
        "code": profile.code,
        "name": wording.species_name(profile),
        "names": profile.names,
        "scientific": profile.scientific,
        "role": profile.role,
        "group": profile.group,
        "dangers": profile.dangers(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wording::Lang;

    #[test]
    fn a_species_carries_its_figures_with_source_and_flag() {
        let catalogue = Catalogue::built_in();
        let wording = Wording::new(Lang::Es);
        let coffee = species_json(catalogue.get(&SpeciesKey::new("COA")).unwrap(), &wording);
        assert_eq!(
            (&coffee["version"], &coffee["name"], &coffee["role"]),
            (&json!(1), &json!("café arábica"), &json!("nursery"))
        );
        let least = &coffee["figures"]["height_least_cm"];
        assert_eq!((&least["value"], &least["flag"]), (&json!(20.0), &json!("seen")));
        let all = species_list_json(&catalogue, None, &wording);
        assert_eq!(all["species"].as_array().unwrap().len(), catalogue.iter().count());
    }
}
