//! Names as people write them, from tables: each finds its plant or asks with it first, and never another plant.

use super::{Catalogue, Found};
use crate::base::SpeciesKey;

const NAMES: &str = include_str!("../../../tests/reference/species_names.tsv");
const ASKED: &str = include_str!("../../../tests/reference/species_asked.tsv");
const MISSPELT: &str = include_str!("../../../tests/reference/species_misspelt.tsv");
const NEVER: &str = include_str!("../../../tests/reference/species_never.tsv");

/// The rows of a table, without remarks and heading.
fn rows(table: &str) -> Vec<(&str, &str)> {
    let lines = table.lines().filter(|line| !line.starts_with('#')).skip(1);
    lines.map(|line| line.split_once('\t').unwrap_or_else(|| panic!("no tab: {line}"))).collect()
}

fn scientific(catalogue: &Catalogue, key: &SpeciesKey) -> String {
    catalogue.get(key).unwrap().scientific.clone()
}

/// Every plant that an answer to what was written speaks of, the first one first.
fn answered(catalogue: &Catalogue, written: &str) -> Vec<String> {
    match catalogue.resolve(written) {
        Found::One(key) => vec![scientific(catalogue, &key)],
        Found::Several(keys) => keys.iter().map(|key| scientific(catalogue, key)).collect(),
        Found::Nothing => {
            catalogue.nearest(written).iter().flat_map(|near| answered_by_name(catalogue, near)).collect()
        }
    }
}

/// What a name that is offered leads to: it must lead somewhere.
fn answered_by_name(catalogue: &Catalogue, name: &str) -> Vec<String> {
    let keys = match catalogue.resolve(name) {
        Found::One(key) => vec![key],
        Found::Several(keys) => keys,
        Found::Nothing => panic!("{name} is offered and not known"),
    };
    keys.iter().map(|key| scientific(catalogue, key)).collect()
}

#[test]
fn everyday_names_find_their_plant_or_ask_with_it_first() {
    let catalogue = Catalogue::built_in();
    let all = rows(NAMES);
    assert!(all.len() >= 200, "{}", all.len());
    let wrong: Vec<String> = all
        .iter()
        .filter(|(written, plant)| {
            let found = catalogue.resolve(written);
            found == Found::Nothing || answered(&catalogue, written).first().map(String::as_str) != Some(plant)
        })
        .map(|(written, plant)| format!("{written}: {plant}, not {:?}", answered(&catalogue, written)))
        .collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn misspelt_names_are_offered_their_plant_first() {
    let catalogue = Catalogue::built_in();
    let all = rows(MISSPELT);
    assert!(all.len() >= 60, "{}", all.len());
    let wrong: Vec<String> = all
        .iter()
        .filter(|(written, plant)| answered(&catalogue, written).first().map(String::as_str) != Some(plant))
        .map(|(written, plant)| format!("{written}: {plant}, not {:?}", answered(&catalogue, written)))
        .collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn a_plant_is_never_taken_for_another() {
    let catalogue = Catalogue::built_in();
    let mut wrong = Vec::new();
    for (written, other) in rows(NEVER) {
        if answered(&catalogue, written).iter().any(|plant| plant == other) {
            wrong.push(format!("{written} is answered with {other}"));
        }
    }
    // What a profile says it is never confused with is never answered with it.
    for (key, profile) in catalogue.iter() {
        for never in &profile.never_confuse_with {
            if answered(&catalogue, never).contains(&scientific(&catalogue, key)) {
                wrong.push(format!("{never} is answered with {}", profile.scientific));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn a_word_that_several_plants_bear_is_asked_about() {
    let catalogue = Catalogue::built_in();
    let asked = |written: &str| -> Vec<String> {
        let keys = catalogue.resolve(written).several();
        keys.iter().map(|key| scientific(&catalogue, key)).collect()
    };
    assert_eq!(asked("limón"), ["Citrus aurantiifolia", "Citrus limon", "Citrus latifolia"]);
    assert_eq!(asked("cedro").first().map(String::as_str), Some("Cedrela odorata"));
    assert!(asked("cedro").contains(&"Carapa guianensis".to_string()));
    assert!(asked("guama").contains(&"Inga jinicuil".to_string()));
    assert!(asked("apple").contains(&"Syzygium malaccense".to_string()), "{:?}", asked("apple"));
    assert!(asked("palma").len() > 1, "{:?}", asked("palma"));
    // What stands in brackets says which.
    assert_eq!(catalogue.find("limón (Citrus latifolia)"), catalogue.find("limón persa"));
    assert_eq!(asked("mango (lemon)"), ["Mangifera indica", "Citrus limon"]);
}

#[test]
fn a_word_that_means_other_plants_elsewhere_is_asked_about_though_one_is_known_here() {
    let catalogue = Catalogue::built_in();
    let all = rows(ASKED);
    assert!(all.len() >= 9, "{}", all.len());
    for (written, plant) in all {
        let several = catalogue.resolve(written).several();
        let first = several.first().map(|key| scientific(&catalogue, key));
        assert_eq!(first.as_deref(), Some(plant), "{written}: {:?}", catalogue.resolve(written));
        assert!(!catalogue.is_piece_of_names(written), "{written}");
    }
}

#[test]
fn a_word_that_is_only_a_piece_of_names_is_no_name() {
    let catalogue = Catalogue::built_in();
    for written in ["bean", "pino"] {
        assert_eq!(catalogue.find(written), None, "{written}");
        assert_eq!(catalogue.named_just(written), Vec::new(), "{written}");
        assert!(catalogue.is_piece_of_names(written), "{written}");
    }
    // Those that have it as a word come before those of which a word only begins so.
    let names = |word: &str| -> Vec<String> {
        catalogue.with_word(word).iter().map(|key| catalogue.get(key).unwrap().names.en[0].clone()).collect()
    };
    assert!(names("pea").contains(&"pigeon pea".to_string()) && !names("pea").contains(&"avocado".to_string()));
    assert_eq!(names("pine"), ["pineapple"]);
    assert_eq!(names("pino"), ["grevillea"]);
}

#[test]
fn what_stands_behind_a_name_is_no_variety_by_itself() {
    let catalogue = Catalogue::built_in();
    for written in ["coffee 70 alive 5", "coffee 70", "banana x2", "coffee clone 70", "cacao weeded", "mango ginger"] {
        assert_eq!(catalogue.find(written), None, "{written}");
    }
}

#[test]
fn a_variety_or_a_graft_beside_the_name_is_kept_as_it_is_written() {
    let catalogue = Catalogue::built_in();
    let beside = |written: &str| catalogue.variety_beside(written, &catalogue.find(written).unwrap());
    for (written, kept) in [
        ("cacao (criollo)", "criollo"),
        ("avocado Hass grafted", "Hass grafted"),
        ("coffee SL28", "SL28"),
        ("aguacate (hass injertado)", "hass injertado"),
        ("café caturra", "caturra"),
        ("grafted avocado", "grafted"),
    ] {
        assert_eq!(beside(written).as_deref(), Some(kept), "{written}");
    }
    // Material, and the same plant named once more, is no variety.
    for written in
        ["cacao", "avocado seedlings", "hijos de plátano", "cacao (Theobroma cacao)", "mango tree (Mangifera indica)"]
    {
        assert_eq!(beside(written), None, "{written}");
    }
}

#[test]
fn a_code_is_no_word_and_no_word_is_a_code() {
    let catalogue = Catalogue::built_in();
    let codes: Vec<&str> = catalogue.iter().map(|(_, profile)| profile.code.as_str()).collect();
    for (written, _) in rows(NAMES).into_iter().chain(rows(MISSPELT)).chain(rows(NEVER)) {
        for near in catalogue.nearest(written) {
            assert!(!codes.contains(&near.to_lowercase().as_str()), "{written} is offered the code {near}");
        }
    }
    for (key, profile) in catalogue.iter() {
        let names = profile.names.en.iter().chain(&profile.names.es).chain(&profile.shared_names);
        for name in names {
            assert!(!codes.contains(&name.as_str()), "{key}: {name} is a code");
        }
    }
}

#[test]
fn the_name_a_plant_is_shown_by_is_its_own() {
    let catalogue = Catalogue::built_in();
    for (key, profile) in catalogue.iter() {
        for name in [&profile.names.en[0], &profile.names.es[0]] {
            assert_eq!(catalogue.resolve(name), Found::One(key.clone()), "{name}");
        }
        for name in profile.names.en.iter().chain(&profile.names.es) {
            let found = catalogue.resolve(name);
            let leads = found == Found::One(key.clone()) || found.clone().several().first() == Some(key);
            assert!(leads, "{key}: {name} leads to {found:?}");
        }
    }
}
