//! What a figure can sensibly be. The limits only catch slips of the pen and of the unit; they are no science.

use serde_json::Value;

use super::profile::Profile;
use super::profile_fault::ProfileFault;
use crate::base::text::has_unseen;

/// Longest text of a figure, note or source, in characters (ours).
const LONGEST_TEXT: usize = 2_000;
/// Most notes, cautions or names of one language (ours).
const MOST_TEXTS: usize = 40;
/// Most growth points or hardening steps (ours).
const MOST_STEPS: usize = 60;

/// Largest sensible value by the ending of a figure's name, and whether it must be above nothing. The first ending
/// that fits leads (ours: a shade over 100 %, a bag of a cubic metre, a seed life of a century are slips).
const ENDINGS: &[(&str, bool, f64)] = &[
    ("_pct", false, 100.0),
    ("depletion_fraction", true, 1.0),
    ("crown_k", true, 3.0),
    ("container_ml", true, 1_000_000.0),
    ("seedlings_per_seed_most", true, 50.0),
    ("leaves_least", false, 1_000.0),
    ("plantable_least_days", true, 3_650.0),
    ("plantable_usual_days", true, 3_650.0),
    ("plantable_most_days", true, 3_650.0),
    ("hardening_days", false, 365.0),
    ("emerge_first_days", false, 1_095.0),
    ("emerge_half_days", false, 1_095.0),
    ("emerge_last_days", true, 1_095.0),
    ("stump_keep_days", true, 365.0),
    ("_days", false, 36_500.0),
    ("_per_kg_least", true, 1e9),
    ("_per_kg_most", true, 1e9),
    ("_kg", false, 10_000.0),
    ("_cm", true, 1_000.0),
    ("_mm", false, 200.0),
    ("_below_c", false, 30.0),
    ("_months", false, 1_200.0),
    ("_month", false, 1_200.0),
    ("_m", true, 100.0),
];

/// Pairs of figures of which the first may not be above the second.
const ORDERS: &[(&str, &str)] = &[
    ("seeds_per_kg_least", "seeds_per_kg_most"),
    ("emerge_first_days", "emerge_half_days"),
    ("emerge_half_days", "emerge_last_days"),
    ("emerge_first_days", "emerge_last_days"),
    ("plantable_least_days", "plantable_usual_days"),
    ("plantable_usual_days", "plantable_most_days"),
    ("plantable_least_days", "plantable_most_days"),
    ("height_least_cm", "height_most_cm"),
    ("outplant_shade_least_pct", "outplant_shade_most_pct"),
    ("light_transmitted_least_pct", "light_transmitted_most_pct"),
    ("stem_life_least_months", "stem_life_most_months"),
    ("yield_least_kg", "yield_most_kg"),
];

/// The first thing in a profile that makes no sense, as a sentence; none if all of it can stand.
pub fn fault(profile: &Profile) -> Option<ProfileFault> {
    let figures = profile.figures();
    for (name, value, source, _) in &figures {
        if source.trim().is_empty() {
            return Some(ProfileFault::NoSource { name: (*name).to_string() });
        }
        if let Some(fault) = text_fault(name, source).or_else(|| value_fault(name, value)) {
            return Some(fault);
        }
    }
    let number =
        |wanted: &str| figures.iter().find(|(name, ..)| *name == wanted).and_then(|(_, value, ..)| value.as_f64());
    for (least, most) in ORDERS {
        if let (Some(low), Some(high)) = (number(least), number(most))
            && low > high
        {
            return Some(ProfileFault::OutOfOrder {
                least: (*least).to_string(),
                low: low.to_string(),
                most: (*most).to_string(),
                high: high.to_string(),
            });
        }
    }
    growth_fault(profile).or_else(|| step_fault(profile)).or_else(|| words_fault(profile))
}

fn value_fault(name: &str, value: &Value) -> Option<ProfileFault> {
    match value {
        // A number that is not finite has no JSON form and arrives as null.
        Value::Null => Some(ProfileFault::NotANumber { name: name.to_string() }),
        Value::Number(number) => number_fault(name, number.as_f64().unwrap_or(f64::NAN)),
        Value::String(text) => text_fault(name, text),
        Value::Bool(_) | Value::Array(_) | Value::Object(_) => None,
    }
}

fn number_fault(name: &str, number: f64) -> Option<ProfileFault> {
    let name = name.to_string();
    if !number.is_finite() {
        return Some(ProfileFault::NotANumber { name });
    }
    if number < 0.0 {
        return Some(ProfileFault::Negative { name, written: number.to_string() });
    }
    let (_, above_nothing, most) = ENDINGS.iter().find(|(ending, ..)| name.ends_with(ending))?;
    if *above_nothing && number == 0.0 {
        return Some(ProfileFault::Zero { name });
    }
    (number > *most).then(|| ProfileFault::MoreThan { name, most: most.to_string(), written: number.to_string() })
}

fn text_fault(name: &str, text: &str) -> Option<ProfileFault> {
    let name = name.to_string();
    if has_unseen(text) {
        return Some(ProfileFault::Unseen { name });
    }
    let too_long = text.chars().count() > LONGEST_TEXT;
    too_long.then(|| ProfileFault::TooLong { name, most: LONGEST_TEXT.to_string() })
}

fn growth_fault(profile: &Profile) -> Option<ProfileFault> {
    let points = &profile.growth_points.as_ref()?.value;
    if points.is_empty() || points.len() > MOST_STEPS {
        return Some(ProfileFault::GrowthCount { points: points.len().to_string(), most: MOST_STEPS.to_string() });
    }
    for point in points {
        let fault = number_fault("growth_points: month", point.month)
            .or_else(|| number_fault("growth_points: height_m", point.height_m))
            .or_else(|| number_fault("growth_points: radius_m", point.radius_m));
        if fault.is_some() {
            return fault;
        }
        if point.month > 1_200.0 {
            return Some(ProfileFault::GrowthMonth { month: point.month.to_string() });
        }
    }
    let falls = points.windows(2).find(|pair| pair[1].month <= pair[0].month)?;
    Some(ProfileFault::GrowthOrder { month: falls[1].month.to_string(), after: falls[0].month.to_string() })
}

fn step_fault(profile: &Profile) -> Option<ProfileFault> {
    let steps = &profile.hardening_steps.as_ref()?.value;
    if steps.len() > MOST_STEPS {
        return Some(ProfileFault::StepCount { steps: steps.len().to_string(), most: MOST_STEPS.to_string() });
    }
    for step in steps {
        let fault = step.shade_pct.and_then(|shade| number_fault("hardening_steps: shade_pct", shade));
        if fault.is_some() {
            return fault;
        }
        if step.days_before > 365 || step.water_every_days.is_some_and(|days| days == 0 || days > 365) {
            return Some(ProfileFault::StepDays);
        }
    }
    let rises = steps.windows(2).find(|pair| pair[1].days_before >= pair[0].days_before)?;
    Some(ProfileFault::StepOrder { days: rises[1].days_before.to_string(), after: rises[0].days_before.to_string() })
}

fn words_fault(profile: &Profile) -> Option<ProfileFault> {
    let lists = [
        ("names", &profile.names.en),
        ("names", &profile.names.es),
        ("notes", &profile.notes),
        ("cautions", &profile.cautions),
        ("synonyms", &profile.synonyms),
        ("shared_names", &profile.shared_names),
        ("varieties", &profile.varieties),
        ("never_confuse_with", &profile.never_confuse_with),
    ];
    for (name, list) in lists {
        if list.len() > MOST_TEXTS {
            return Some(ProfileFault::TooMany {
                name: name.to_string(),
                count: list.len().to_string(),
                most: MOST_TEXTS.to_string(),
            });
        }
        if let Some(fault) = list.iter().find_map(|text| text_fault(name, text)) {
            return Some(fault);
        }
        if list.iter().any(|text| text.trim().is_empty()) {
            return Some(ProfileFault::EmptyText { name: name.to_string() });
        }
    }
    if profile.names.en.is_empty() && profile.names.es.is_empty() {
        return Some(ProfileFault::NoCommonName);
    }
    if profile.code.len() != 3 || !profile.code.bytes().all(|byte| byte.is_ascii_lowercase()) {
        return Some(ProfileFault::BadCode { written: profile.code.escape_debug().to_string() });
    }
    text_fault("key", profile.key.as_str()).or_else(|| text_fault("scientific", &profile.scientific))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::SpeciesKey;
    use crate::nursery::species::{Names, Role};
    use serde_json::json;

    fn with(figures: &[(&str, Value)]) -> Option<String> {
        let names = Names { en: vec!["ebony".to_string()], es: Vec::new() };
        let mut profile = Profile::named(SpeciesKey::new("EBO"), "Diospyros", "ebo", Role::Nursery, names);
        for (name, value) in figures {
            profile.set_figure(name, value, "tape measure").unwrap();
        }
        fault(&profile).map(|fault| fault.to_string())
    }

    #[test]
    fn sensible_figures_stand() {
        assert_eq!(with(&[]), None);
        assert_eq!(
            with(&[
                ("outplant_shade_least_pct", json!(0)),
                ("outplant_shade_most_pct", json!(100)),
                ("plantable_least_days", json!(90)),
                ("plantable_most_days", json!(90)),
                ("storage_ambient_days", json!(1000)),
            ]),
            None
        );
    }

    #[test]
    fn figures_without_sense_are_named() {
        let refused = |figures: &[(&str, Value)], words: &str| {
            let sentence = with(figures).unwrap_or_default();
            assert!(sentence.contains(words), "{figures:?}: '{sentence}' does not say '{words}'");
        };
        refused(&[("container_ml", json!(-5))], "negative");
        refused(&[("container_ml", json!(0))], "cannot be 0");
        refused(&[("outplant_shade_most_pct", json!(101))], "more than 100");
        refused(&[("depletion_fraction", json!(1.2))], "more than 1");
        refused(
            &[("plantable_least_days", json!(90)), ("plantable_most_days", json!(80))],
            "more than 'plantable_most_days'",
        );
        refused(&[("emerge_first_days", json!(9)), ("emerge_half_days", json!(8))], "emerge_half_days");
        refused(&[("spacing", json!("3\u{202e}x3"))], "invisible");
        refused(&[("height_least_cm", json!({"value": 20, "source": " "}))], "no source");
        let months = |first: f64, second: f64| json!([{"month": first, "height_m": 1, "radius_m": 1}, {"month": second, "height_m": 2, "radius_m": 1}]);
        refused(&[("growth_points", months(6.0, 3.0))], "month 3 follows month 6");
        assert_eq!(with(&[("growth_points", months(3.0, 6.0))]), None);
        refused(&[("hardening_steps", json!([{"days_before": 7}, {"days_before": 14}]))], "14 days before follows 7");
        refused(&[("hardening_steps", json!([{"days_before": 7, "shade_pct": 130}]))], "more than 100");
    }

    #[test]
    fn what_is_not_a_number_is_refused() {
        let names = Names { en: vec!["ebony".to_string()], es: Vec::new() };
        let mut profile = Profile::named(SpeciesKey::new("EBO"), "Diospyros", "ebo", Role::Nursery, names);
        profile.set_figure("row_m", &json!(3), "tape measure").unwrap();
        profile.row_m.as_mut().unwrap().value = f64::NAN;
        assert_eq!(fault(&profile), Some(ProfileFault::NotANumber { name: "row_m".into() }));
    }
}
