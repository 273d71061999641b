//! Every key x language x argument: nothing missing, nothing unused, nothing a person would not understand.

use std::collections::{BTreeMap, BTreeSet};

use super::messages::{Argument, Key, Kind};
use super::*;

fn every_key() -> Vec<Key> {
    [
        number::KEYS,
        verdict::MEASURE_KEYS,
        verdict::NAME_KEYS,
        verdict::REASON_KEYS,
        verdict::UNKNOWN_KEYS,
        verdict::GAP_KEYS,
        verdict::SOURCE_KEYS,
        verdict::DOUBT_KEYS,
        desk::ERROR_KEYS,
        desk::FAULT_KEYS,
        desk::PROFILE_FAULT_KEYS,
        page::CALC_KEYS,
        page::EXPECTED_KEYS,
        page::GROWTH_KEYS,
        page::LOTS_KEYS,
        page::SOWING_KEYS,
        page::COMMAND_KEYS,
        page::HELP_KEYS,
        page::USAGE_KEYS,
        desk::REFUSAL_KEYS,
        desk::DESK_KEYS,
        page::READY_KEYS,
        page::SPECIES_KEYS,
        round::TASK_KEYS,
        round::UNTIL_KEYS,
        round::ROUND_REASON_KEYS,
        round::SIGN_KEYS,
        round::CHANGE_KEYS,
        forecast::KEYS,
        desk::SHEET_KEYS,
        desk::WRITTEN_KEYS,
        screen::NAME_KEYS,
        screen::FRAME_KEYS,
        screen::FORM_KEYS,
        screen::WALK_KEYS,
        screen::TRAYS_KEYS,
        screen::BEDS_KEYS,
        screen::GOING_OUT_KEYS,
        screen::SEED_KEYS,
        screen::SEASON_KEYS,
        screen::JOURNAL_KEYS,
        entry::ENTRY_BOOK_KEYS,
        entry::ENTRY_GROUND_KEYS,
        entry::ENTRY_SEED_KEYS,
        entry::ENTRY_SITE_KEYS,
        entry::ENTRY_TRAY_KEYS,
        entry::ENTRY_WORD_KEYS,
    ]
    .concat()
}

/// The messages of a theme with the variables their text uses, read line by line.
fn written(text: &str) -> BTreeMap<String, BTreeSet<String>> {
    let mut all: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    let mut last = String::new();
    for line in text.lines().filter(|line| !line.starts_with('#') && !line.trim().is_empty()) {
        if line.starts_with(|letter: char| letter.is_ascii_alphabetic()) {
            last = line.split(" =").next().unwrap().to_string();
            assert!(all.insert(last.clone(), BTreeSet::new()).is_none(), "{last} stands twice");
        }
        for part in line.split('$').skip(1) {
            let variable: String = part.chars().take_while(|c| c.is_ascii_alphanumeric() || *c == '_').collect();
            all.get_mut(&last).unwrap().insert(variable);
        }
    }
    all
}

#[test]
fn every_sentence_stands_in_both_languages_with_exactly_its_arguments() {
    let keys: BTreeMap<String, BTreeSet<String>> = every_key()
        .iter()
        .map(|key| (key.name.to_string(), key.arguments.iter().map(|(name, _)| name.to_string()).collect()))
        .collect();
    assert_eq!(keys.len(), every_key().len(), "a key is declared twice");
    for lang in Lang::ALL {
        let mut standing = BTreeMap::new();
        for (theme, text) in lang.texts() {
            assert!(FluentResource::try_new(text.to_string()).is_ok(), "{lang:?}/{theme}.ftl cannot be read");
            for (key, variables) in written(text) {
                assert!(standing.insert(key.clone(), variables).is_none(), "{lang:?}: {key} stands in two files");
            }
        }
        for (key, arguments) in &keys {
            let variables = standing.remove(key).unwrap_or_else(|| panic!("{lang:?}: {key} is missing"));
            assert_eq!(&variables, arguments, "{lang:?}: {key} uses other variables than are passed");
        }
        assert!(standing.is_empty(), "{lang:?}: nobody uses {:?}", standing.keys());
    }
}

#[test]
fn every_sentence_is_said_in_its_own_language_for_one_and_for_many() {
    for lang in Lang::ALL {
        let wording = Wording::new(lang);
        for key in every_key() {
            for number in [0, 1, 2, 12] {
                let arguments: Vec<(&'static str, Argument)> = key
                    .arguments
                    .iter()
                    .map(|(name, kind)| match kind {
                        Kind::Text => (*name, Argument::text(format!("<{name}>"))),
                        Kind::Count => (*name, Argument::count(number)),
                    })
                    .collect();
                let sentence = said(&wording.bundle, key.name, &arguments)
                    .unwrap_or_else(|| panic!("{lang:?}: {} cannot be said", key.name));
                assert!(!sentence.trim().is_empty(), "{lang:?}: {} says nothing", key.name);
                let lines = key.name.ends_with("_more");
                assert!(
                    !sentence.contains(['{', '}']) && (lines || !sentence.contains('\n')),
                    "{lang:?}: {} says '{sentence}'",
                    key.name
                );
                assert!(
                    !crate::base::text::has_unseen(&sentence.replace('\n', " ")),
                    "{lang:?}: {} hides something",
                    key.name
                );
                // A publication stands as it is in both languages.
                if sentence.len() > 30 && lang == Lang::Es && key.name != "source_root_limit" {
                    let english = Wording::new(Lang::En).say(key.name, arguments);
                    assert_ne!(sentence, english, "{} is not translated", key.name);
                }
            }
        }
    }
}

#[test]
fn a_sentence_nobody_wrote_shows_its_arguments_and_never_a_key() {
    let wording = Wording::new(Lang::Es);
    let said = wording.say("no_such_key", vec![("tray", Argument::text("cof-031")), ("plants", Argument::count(4))]);
    assert_eq!(said, "cof-031 4");
}

#[test]
fn the_language_is_read_from_settings_and_from_the_system() {
    for spanish in ["es", "es-EC.UTF-8", "es_MX", "ES", "Español", "spa"] {
        assert_eq!(Lang::read(spanish), Lang::Es, "{spanish}");
    }
    for english in ["en", "en_GB.UTF-8", "C", "", "POSIX", "est", "fr_FR"] {
        assert_eq!(Lang::read(english), Lang::En, "{english}");
    }
}

#[test]
fn numbers_and_days_are_written_as_each_language_writes_them() {
    let (en, es) = (Wording::new(Lang::En), Wording::new(Lang::Es));
    let day = "2026-01-04".parse().unwrap();
    assert_eq!((en.day(day), es.day(day)), ("4 Jan 2026".to_string(), "4 ene 2026".to_string()));
    assert_eq!((en.short_day(day), es.short_day(day)), ("4 Jan".to_string(), "4 ene".to_string()));
    assert_eq!((en.decimal(2.0, 1), es.decimal(2.0, 1)), ("2.0".to_string(), "2,0".to_string()));
    assert_eq!((en.number(2.50, 2), es.number(100.0, 2)), ("2.5".to_string(), "100".to_string()));
    assert_eq!(en.decimal(-0.01, 1), "0.0");
    assert_eq!((en.percent(0.3), es.percent(0.004)), ("30 %".to_string(), "0,4 %".to_string()));
    assert_eq!((en.days(1), es.days(2)), ("1 day".to_string(), "2 días".to_string()));
    assert_eq!(en.plants_range(Range::exact(12.0)), "12 plants");
    assert_eq!(es.plants_range(Range::new(22.4, 27.0, 30.2)), "22 a 31 plantas, lo probable 27");
}

#[test]
fn a_number_near_a_limit_is_told_from_it() {
    let (en, es) = (Wording::new(Lang::En), Wording::new(Lang::Es));
    assert_eq!(en.decimal_beside(1.62, &[1.6], 1), "1.62");
    assert_eq!(en.decimal_beside(0.48 / 0.3, &[1.6], 1), "1.6");
    assert_eq!(es.decimal_beside(1.6004, &[1.3, 1.6], 1), "1,6004");
    assert_eq!(en.decimal_beside(2.0, &[1.6], 1), "2.0");
    assert_eq!(en.percent_beside(0.5012, &[0.3, 0.5]), "50.1 %");
    assert_eq!(en.percent_beside(0.5, &[0.3, 0.5]), "50 %");
    assert_eq!(es.percent_beside(0.004, &[0.3]), "0,4 %");
    assert_eq!(en.number_beside(19.96, &[20.0], 1), "19.96");
}

use crate::base::Range;

#[test]
fn a_wording_can_be_shared_between_threads() {
    fn shared<T: Send + Sync>(_: &T) {}
    shared(&Wording::new(Lang::Es));
}
