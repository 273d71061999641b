//! A nursery's own figures over the built-in ones.

use serde::de::DeserializeOwned;
use serde_json::{Map, Value};

use super::figure::{Figure, Flag};
use super::profile::{FIGURES, Names, Profile, Role};
use crate::base::name_search::nearest;
use crate::base::text::{self, folded};
use crate::base::word::Word;

/// Reads a figure from a bare value or from `{"value", "source", "flag"}`; null takes the figure away.
pub(super) fn read_figure<T: DeserializeOwned>(value: &Value, source: &str) -> Result<Option<Figure<T>>, String> {
    match value {
        Value::Null => Ok(None),
        Value::Object(map) if map.contains_key("value") => {
            let text = |name: &str| map.get(name).and_then(Value::as_str);
            let inner = map.get("value").cloned().unwrap_or(Value::Null);
            let value = serde_json::from_value(inner).map_err(|fault| fault.to_string())?;
            let flag = match text("flag") {
                None => Flag::Own,
                Some(word) => Word::read(word).ok_or_else(|| format!("unknown flag '{word}'"))?,
            };
            Ok(Some(Figure { value, source: text("source").unwrap_or(source).to_string(), flag }))
        }
        bare => {
            let value = serde_json::from_value(bare.clone()).map_err(|fault| fault.to_string())?;
            Ok(Some(Figure { value, source: source.to_string(), flag: Flag::Own }))
        }
    }
}

/// Lays a nursery's own figures, names, notes and the like over a profile. The error says what is wrong; nothing
/// is promised of the profile then.
pub(super) fn lay_over(profile: &mut Profile, own: &Map<String, Value>, source: &str) -> Result<(), String> {
    for (name, value) in own {
        match name.as_str() {
            "key" if value.as_str().is_some_and(|key| folded(key) == folded(profile.key.as_str())) => {}
            "key" => return Err("the key of a species cannot be changed".to_string()),
            "code" => profile.code = read_code(value)?,
            "scientific" => profile.scientific = read_text(name, value)?,
            "role" => {
                let word = read_text(name, value)?;
                profile.role = Role::read(&word).ok_or_else(|| format!("unknown role '{word}': nursery or nurse"))?;
            }
            "names" => read_names(&mut profile.names, value)?,
            "notes" => profile.notes = read_texts(name, value)?,
            "cautions" => profile.cautions = read_texts(name, value)?,
            _ => {
                let known = known_name(name)?;
                profile.set_figure(known, value, source).map_err(|fault| format!("'{name}': {fault}"))?;
            }
        }
    }
    match super::limits::fault(profile) {
        None => Ok(()),
        Some(fault) => Err(fault),
    }
}

/// What else of a profile can be set besides its figures.
const NOT_FIGURES: &[&str] = &["code", "scientific", "role", "names", "notes", "cautions"];

/// The figure meant by a name: its own name or another it is read by.
fn known_name(written: &str) -> Result<&'static str, String> {
    let found = FIGURES.iter().find(|(name, others)| *name == written || others.contains(&written));
    if let Some((name, _)) = found {
        return Ok(name);
    }
    let known = FIGURES.iter().flat_map(|(name, others)| std::iter::once(name).chain(others.iter())).copied();
    let near = nearest(&written.replace('-', "_"), known.chain(NOT_FIGURES.iter().copied()));
    let shown = text::shown(written).chars().take(60).collect::<String>();
    match near.first() {
        Some(near) => Err(format!("unknown figure '{shown}'; the nearest is '{near}'")),
        None => Err(format!("unknown figure '{shown}'")),
    }
}

fn read_text(name: &str, value: &Value) -> Result<String, String> {
    let text = value.as_str().ok_or_else(|| format!("'{name}' is a text"))?;
    Ok(text.trim().to_string())
}

/// A list of texts, or one text alone.
fn read_texts(name: &str, value: &Value) -> Result<Vec<String>, String> {
    match value {
        Value::Array(list) => list.iter().map(|one| read_text(name, one)).collect(),
        one => Ok(vec![read_text(name, one).map_err(|_| format!("'{name}' is a text or a list of texts"))?]),
    }
}

fn read_names(names: &mut Names, value: &Value) -> Result<(), String> {
    let languages = value.as_object().ok_or("'names' holds 'en' and 'es', each a name or a list of names")?;
    for (language, list) in languages {
        match language.as_str() {
            "en" => names.en = read_texts("names", list)?,
            "es" => names.es = read_texts("names", list)?,
            other => return Err(format!("'names' holds 'en' and 'es', not '{}'", text::shown(other))),
        }
    }
    Ok(())
}

fn read_code(value: &Value) -> Result<String, String> {
    let written = read_text("code", value)?;
    let code = folded(&written);
    if code.len() == 3 && code.bytes().all(|byte| byte.is_ascii_lowercase()) {
        return Ok(code);
    }
    Err(format!("a species' code is three letters a to z; '{}' is not", text::shown(&written)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::SpeciesKey;
    use serde_json::json;

    fn laid(own: Value) -> Result<Profile, String> {
        let names = Names { en: vec!["ebony".to_string()], es: vec!["ébano".to_string()] };
        let mut profile = Profile::named(SpeciesKey::new("EBO"), "Diospyros", "ebo", Role::Nursery, names);
        lay_over(&mut profile, own.as_object().unwrap(), "our book").map(|()| profile)
    }

    #[test]
    fn bare_figures_are_our_own_and_dressed_ones_keep_their_source() {
        let profile = laid(json!({
            "plantable_min_d": 80,
            "row_m": {"value": 3, "source": "neighbour", "flag": "memory"},
            "names": {"es": "ébano negro"},
            "notes": "slow",
            "role": "nodriza",
        }))
        .unwrap();
        let days = profile.plantable_least_days.unwrap();
        assert_eq!((days.value, days.source.as_str(), days.flag), (80.0, "our book", Flag::Own));
        let row = profile.row_m.unwrap();
        assert_eq!((row.value, row.source.as_str(), row.flag), (3.0, "neighbour", Flag::Memory));
        assert_eq!((profile.names.en, profile.names.es), (vec!["ebony".to_string()], vec!["ébano negro".to_string()]));
        assert_eq!((profile.notes, profile.role), (vec!["slow".to_string()], Role::Nurse));
    }

    #[test]
    fn unknown_names_and_wrong_kinds_are_refused_with_the_nearest() {
        assert_eq!(
            laid(json!({"plantable_lest_days": 80})).unwrap_err(),
            "unknown figure 'plantable_lest_days'; the nearest is 'plantable_least_days'"
        );
        assert!(laid(json!({"container_ml": "big"})).unwrap_err().starts_with("'container_ml': "));
        assert!(laid(json!({"code": "ebon"})).unwrap_err().contains("three letters"));
        assert!(laid(json!({"role": "king"})).unwrap_err().contains("'king'"));
        assert!(laid(json!({"names": {"fr": "ébène"}})).unwrap_err().contains("'fr'"));
        assert!(laid(json!({"key": "ABC"})).is_err());
        assert!(laid(json!({"names": {"en": [], "es": []}})).unwrap_err().contains("needs a name"));
    }

    #[test]
    fn null_takes_a_figure_away() {
        let names = Names { en: vec!["ebony".to_string()], es: Vec::new() };
        let mut profile = Profile::named(SpeciesKey::new("EBO"), "Diospyros", "ebo", Role::Nursery, names);
        profile.set_figure("row_m", &json!(3), "our book").unwrap();
        lay_over(&mut profile, json!({"row_m": null}).as_object().unwrap(), "our book").unwrap();
        assert_eq!(profile.row_m, None);
    }
}
