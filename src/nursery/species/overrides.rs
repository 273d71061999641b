//! A nursery's own figures over the built-in ones.

use serde::de::DeserializeOwned;
use serde_json::{Map, Value};

use super::figure::{Figure, Flag};
use super::profile::{
    Danger, FIGURES, GrowthPoint, HardeningStep, LooksAlive, Names, Profile, Role, Stem, Storage, Template,
};
use super::profile_fault::ProfileFault;
use crate::base::name_search::nearest;
use crate::base::text::{self, folded};
use crate::base::word::Word;

/// Reads a figure from a bare value or from `{"value", "source", "flag"}`; null takes the figure away.
pub(super) fn read_figure<T: DeserializeOwned + Readable>(
    name: &str,
    value: &Value,
    source: &str,
) -> Result<Option<Figure<T>>, ProfileFault> {
    let wrong = |_| T::wrong(name.to_string());
    match value {
        Value::Null => Ok(None),
        Value::Object(map) if map.contains_key("value") => {
            let text = |name: &str| map.get(name).and_then(Value::as_str);
            let inner = map.get("value").cloned().unwrap_or(Value::Null);
            let value = serde_json::from_value(inner).map_err(wrong)?;
            let flag = match text("flag") {
                None => Flag::Own,
                Some(word) => {
                    Word::read(word).ok_or_else(|| ProfileFault::UnknownFlag { written: text::shown(word) })?
                }
            };
            Ok(Some(Figure { value, source: text("source").unwrap_or(source).to_string(), flag }))
        }
        bare => {
            let value = serde_json::from_value(bare.clone()).map_err(wrong)?;
            Ok(Some(Figure { value, source: source.to_string(), flag: Flag::Own }))
        }
    }
}

/// What a figure can be read as, and what is said where it cannot.
pub(super) trait Readable {
    /// The fault of a value that is something else.
    fn wrong(name: String) -> ProfileFault;
}

impl Readable for f64 {
    fn wrong(name: String) -> ProfileFault {
        ProfileFault::NotANumber { name }
    }
}

impl Readable for bool {
    fn wrong(name: String) -> ProfileFault {
        ProfileFault::NotYesOrNo { name }
    }
}

impl Readable for String {
    fn wrong(name: String) -> ProfileFault {
        ProfileFault::NotText { name }
    }
}

impl Readable for Vec<GrowthPoint> {
    fn wrong(name: String) -> ProfileFault {
        ProfileFault::NotPoints { name }
    }
}

impl Readable for Vec<HardeningStep> {
    fn wrong(name: String) -> ProfileFault {
        ProfileFault::NotSteps { name }
    }
}

fn not_the_word<T: Word>(name: String) -> ProfileFault {
    let words: Vec<&str> = T::WORDS.iter().filter_map(|(_, spellings)| spellings.first()).copied().collect();
    ProfileFault::NotTheWord { name, words: words.join(", ") }
}

impl Readable for Storage {
    fn wrong(name: String) -> ProfileFault {
        not_the_word::<Storage>(name)
    }
}

impl Readable for Vec<Danger> {
    fn wrong(name: String) -> ProfileFault {
        not_the_word::<Danger>(name)
    }
}

impl Readable for Stem {
    fn wrong(name: String) -> ProfileFault {
        not_the_word::<Stem>(name)
    }
}

impl Readable for LooksAlive {
    fn wrong(name: String) -> ProfileFault {
        not_the_word::<LooksAlive>(name)
    }
}

impl Readable for Template {
    fn wrong(name: String) -> ProfileFault {
        not_the_word::<Template>(name)
    }
}

/// Lays a nursery's own figures, names, notes and the like over a profile. The error says what is wrong; nothing
/// is promised of the profile then.
pub(super) fn lay_over(profile: &mut Profile, own: &Map<String, Value>, source: &str) -> Result<(), ProfileFault> {
    for (name, value) in own {
        match name.as_str() {
            "key" if value.as_str().is_some_and(|key| folded(key) == folded(profile.key.as_str())) => {}
            "key" => return Err(ProfileFault::KeyChanged),
            "code" => profile.code = read_code(value)?,
            "scientific" => profile.scientific = read_text(name, value)?,
            "role" => {
                let word = read_text(name, value)?;
                profile.role = Role::read(&word).ok_or(ProfileFault::UnknownRole { written: text::shown(&word) })?;
            }
            "names" => read_names(&mut profile.names, value)?,
            "notes" => profile.notes = read_texts(name, value)?,
            "cautions" => profile.cautions = read_texts(name, value)?,
            _ => {
                let known = known_name(name)?;
                profile.set_figure(known, value, source)?;
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
fn known_name(written: &str) -> Result<&'static str, ProfileFault> {
    let found = FIGURES.iter().find(|(name, others)| *name == written || others.contains(&written));
    if let Some((name, _)) = found {
        return Ok(name);
    }
    let known = FIGURES.iter().flat_map(|(name, others)| std::iter::once(name).chain(others.iter())).copied();
    let near = nearest(&written.replace('-', "_"), known.chain(NOT_FIGURES.iter().copied()));
    let shown = text::shown(written).chars().take(60).collect::<String>();
    match near.first() {
        Some(near) => Err(ProfileFault::UnknownFigureNear { written: shown, nearest: near.clone() }),
        None => Err(ProfileFault::UnknownFigure { written: shown }),
    }
}

fn read_text(name: &str, value: &Value) -> Result<String, ProfileFault> {
    let text = value.as_str().ok_or_else(|| ProfileFault::NotText { name: name.to_string() })?;
    Ok(text.trim().to_string())
}

/// A list of texts, or one text alone.
fn read_texts(name: &str, value: &Value) -> Result<Vec<String>, ProfileFault> {
    match value {
        Value::Array(list) => list.iter().map(|one| read_text(name, one)).collect(),
        one => Ok(vec![read_text(name, one).map_err(|_| ProfileFault::NotTexts { name: name.to_string() })?]),
    }
}

fn read_names(names: &mut Names, value: &Value) -> Result<(), ProfileFault> {
    let languages = value.as_object().ok_or(ProfileFault::NotNames)?;
    for (language, list) in languages {
        match language.as_str() {
            "en" => names.en = read_texts("names", list)?,
            "es" => names.es = read_texts("names", list)?,
            other => return Err(ProfileFault::NamesLanguage { written: text::shown(other) }),
        }
    }
    Ok(())
}

fn read_code(value: &Value) -> Result<String, ProfileFault> {
    let written = read_text("code", value)?;
    let code = folded(&written);
    if code.len() == 3 && code.bytes().all(|byte| byte.is_ascii_lowercase()) {
        return Ok(code);
    }
    Err(ProfileFault::BadCode { written: text::shown(&written) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::SpeciesKey;
    use serde_json::json;

    fn laid(own: Value) -> Result<Profile, String> {
        let names = Names { en: vec!["ebony".to_string()], es: vec!["ébano".to_string()] };
        let mut profile = Profile::named(SpeciesKey::new("EBO"), "Diospyros", "ebo", Role::Nursery, names);
        lay_over(&mut profile, own.as_object().unwrap(), "our book")
            .map(|()| profile)
            .map_err(|fault| fault.to_string())
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
        assert!(laid(json!({"container_ml": "big"})).unwrap_err().starts_with("'container_ml' is not a number"));
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
