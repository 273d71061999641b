//! Every key x language x argument: nothing missing, nothing unused, nothing a person would not understand.

use std::collections::BTreeSet;

use super::argument::Kind;
use super::sentences::KEYS;
use super::*;
use crate::base::word::Word;
use crate::nursery::cause::Cause;
use crate::nursery::caution::Caution;
use crate::nursery::entry::all_kinds;
use crate::nursery::entry::shape::Shape;
use crate::nursery::entry::types::{ArrivedFrom, CutWhat, GroundTask, Kept, MovedHow, PlantForm, Roots, Sky, Tubers};
use crate::nursery::species::profile::FIGURES;
use crate::nursery::species::{Danger, Group, LooksAlive, Role, Stem, Storage, Template};
use crate::reckon::picture::{Basis, Passage, Rule, RuleSource, Stage, Standing};
use crate::reckon::round::Task;
use crate::reckon::seed::LotState;

#[test]
fn every_sentence_is_said_in_its_own_language_for_one_and_for_many() {
    for lang in Lang::ALL {
        let wording = Wording::new(lang);
        for key in KEYS {
            for number in [0, 1, 2, 12] {
                let arguments: Vec<(&'static str, Argument)> = key
                    .arguments
                    .iter()
                    .map(|(name, kind)| match kind {
                        Kind::Text => (*name, Argument::text("<x>")),
                        Kind::Count => (*name, Argument::count(number)),
                    })
                    .collect();
                let sentence = wording
                    .said(key.name, &arguments)
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

/// A word of ours: parts joined by `_`.
fn is_internal(word: &str) -> bool {
    let word = word.trim_matches(|letter: char| !letter.is_alphanumeric());
    word.contains('_') && word.chars().all(|letter| letter.is_ascii_lowercase() || letter == '_')
}

#[test]
fn no_sentence_says_a_word_of_ours_but_in_a_command_to_copy() {
    /// Sentences for those who write profiles or lines for programs: there a figure or a field goes by its name in files.
    const FOR_FILES: [&str; 5] = ["profile_", "line_", "fault_", "problem_", "help_"];
    let mut wrong = Vec::new();
    for lang in Lang::ALL {
        let wording = Wording::new(lang);
        for key in KEYS.iter().filter(|key| !FOR_FILES.iter().any(|files| key.name.starts_with(files))) {
            let argument = |kind: Kind| if kind == Kind::Text { Argument::text("<x>") } else { Argument::count(2) };
            let arguments: Vec<(&'static str, Argument)> =
                key.arguments.iter().map(|(name, kind)| (*name, argument(*kind))).collect();
            let sentence = wording.said(key.name, &arguments).unwrap_or_default();
            let is_command = sentence.contains("outplant ") || sentence.contains('`');
            if !is_command && sentence.split_whitespace().any(is_internal) {
                wrong.push(format!("{lang:?}: {} says '{sentence}'", key.name));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

/// Kinds and fields as the file names them, where Spanish has another name.
fn english_alone() -> BTreeSet<&'static str> {
    use crate::nursery::entry::in_spanish::{field_in_spanish, kind_in_spanish};
    let kinds = all_kinds().map(|known| known.kind).filter(|kind| kind_in_spanish(kind) != *kind);
    let fields = all_kinds().flat_map(|known| known.fields).map(|field| field.name);
    let fields = fields.filter(|field| field_in_spanish(field) != *field);
    // Of one word some are those of the other language too.
    kinds.chain(fields).filter(|name| name.contains('_')).collect()
}

#[test]
fn what_is_shown_to_be_copied_and_what_is_wrong_with_it_stands_in_the_language_asked_for() {
    use crate::nursery::entry::fault::{EntryFault, FieldFault, Problem};
    let es = Wording::new(Lang::Es);
    let english = english_alone();
    let names = |text: &str| -> Vec<String> {
        let words = text.split(|letter: char| !(letter.is_alphanumeric() || letter == '_'));
        words.filter(|word| english.contains(word)).map(str::to_string).collect()
    };
    assert!(english.len() > 60);
    let shapes = all_kinds().flat_map(|known| known.fields).map(|field| &field.shape);
    for words in shapes.filter_map(|shape| if let Shape::Word(words) = shape { Some(*words) } else { None }) {
        for spellings in words {
            let typed = es.word_typed(spellings);
            let reads = |spelling: &&str| crate::base::text::folded(spelling) == crate::base::text::folded(&typed);
            assert!(spellings.iter().any(reads) && !typed.contains(' '), "{typed}");
        }
    }
    for known in all_kinds() {
        let form = es.kind_form(known.kind, known.fields);
        assert_eq!(names(&form), Vec::<String>::new(), "{form}");
        for field in known.fields {
            let problems = [
                Problem::Missing,
                Problem::NotANumber("x".into()),
                Problem::Twice,
                Problem::Unknown(vec![field.name.into()]),
                Problem::UnknownOf(known.fields.iter().map(|field| field.name.to_string()).collect()),
                Problem::MissingAll(known.fields.iter().map(|field| field.name).collect()),
            ];
            for problem in problems {
                let fault = FieldFault { field: field.name.into(), problem };
                let said = es.entry_fault(&EntryFault::Field { kind: known.kind.into(), fault });
                assert_eq!(names(&said), Vec::<String>::new(), "{said}");
            }
        }
    }
}

#[test]
fn every_fault_of_every_field_of_a_form_is_said_without_a_word_of_ours() {
    use crate::desk::{PairFault, Reason};
    use crate::nursery::entry::fault::{EntryFault, FieldFault, Problem};
    let (fields, _) = words_of_forms();
    for lang in Lang::ALL {
        let wording = Wording::new(lang);
        for known in all_kinds() {
            let kind = known.kind;
            for field in &fields {
                let problems = [
                    Problem::Missing,
                    Problem::NotANumber("x".into()),
                    Problem::NotWhole("1.5".into()),
                    Problem::BelowZero("-1".into()),
                    Problem::OutsideEnds { least: 0.0, most: 1.0 },
                    Problem::NotText,
                    Problem::Empty,
                    Problem::TooLong(24),
                    Problem::NotADay("x".into()),
                    Problem::NotAMonthDay("x".into()),
                    Problem::NotASpot("x".into()),
                    Problem::NotTheWord { written: "x".into(), known: vec!["bare_root", "potted_on", "mucilage_on"] },
                    Problem::OneOf("readings / light_share"),
                    Problem::OnlyOneOf("tray / place"),
                    Problem::Twice,
                ];
                for problem in problems {
                    let inner = FieldFault { field: (*field).to_string(), problem };
                    let reason = Reason::Entry(Box::new(EntryFault::Field { kind: kind.to_string(), fault: inner }));
                    let fault = PairFault { pair: Some(1), column: None, field: Some((*field).to_string()), reason };
                    let said = wording.form_fault(kind, &fault);
                    let ours = said.split_whitespace().find(|word| is_internal(word));
                    assert_eq!(ours, None, "{lang:?}: {said}");
                }
            }
        }
    }
}

#[test]
fn a_task_let_go_and_a_cause_nobody_said_are_told_in_the_persons_language() {
    let es = Wording::new(Lang::Es);
    assert_eq!(es.task_told("space_out gre-016"), format!("{} gre-016", es.task_name(Task::SpaceOut)));
    assert!(!es.no_cause_said().contains("not said"));
}

fn words<W: Word>() -> BTreeSet<&'static str> {
    W::WORDS.iter().map(|(word, _)| word.spelled()).collect()
}

/// The words of a form's fields, their names and what may be chosen in them.
fn words_of_forms() -> (BTreeSet<&'static str>, BTreeSet<&'static str>) {
    fn walk(shape: &Shape, names: &mut BTreeSet<&'static str>, choices: &mut BTreeSet<&'static str>) {
        match shape {
            Shape::Word(words) => choices.extend(words.iter().map(|spellings| spellings[0])),
            Shape::Flag => choices.extend(["true", "false"]),
            Shape::List(inner) => walk(inner, names, choices),
            Shape::Record(fields) => fields.iter().for_each(|field| {
                names.insert(field.name);
                walk(&field.shape, names, choices);
            }),
            _ => {}
        }
    }
    let (mut names, mut choices) = (BTreeSet::new(), BTreeSet::new());
    for field in all_kinds().flat_map(|kind| kind.fields) {
        names.insert(field.name);
        walk(&field.shape, &mut names, &mut choices);
    }
    (names, choices)
}

#[test]
fn each_word_of_ours_has_its_sentence_and_no_sentence_is_left_over() {
    let (fields, choices) = words_of_forms();
    for (theme, words) in [
        (theme::KIND, all_kinds().map(|kind| kind.kind).collect::<BTreeSet<_>>()),
        (theme::ALSO, all_kinds().map(|kind| kind.kind).collect()),
        (theme::FIELD, fields),
        (theme::CHOICE, choices),
        (theme::ROLE, words::<Role>()),
        (theme::GROUP, words::<Group>()),
        (theme::DANGER, words::<Danger>()),
        (theme::CAUTION, words::<Caution>()),
        (theme::WORD, &(&(&words::<Storage>() | &words::<Stem>()) | &words::<Template>()) | &words::<LooksAlive>()),
        (theme::FROM, words::<ArrivedFrom>()),
        (theme::FORM, words::<PlantForm>()),
        (theme::MOVED, words::<MovedHow>()),
        (theme::CUT, words::<CutWhat>()),
        (theme::SKY, words::<Sky>()),
        (theme::CAUSE, words::<Cause>()),
        (theme::KEPT, words::<Kept>()),
        (theme::ROOTS, words::<Roots>()),
        (theme::TUBERS, words::<Tubers>()),
        (theme::WORK, words::<GroundTask>()),
        (theme::RULE, words::<Rule>()),
        (theme::UNKNOWN, words::<Rule>()),
        (theme::BASIS, words::<Basis>()),
        (theme::STAGE, words::<Stage>()),
        (theme::STANDING, words::<Standing>()),
        (theme::SOURCE, words::<RuleSource>()),
        (theme::PASSAGE, words::<Passage>()),
        (theme::TASK, words::<Task>()),
        (theme::TASKS, words::<Task>()),
        (theme::SEED_STATE, words::<LotState>()),
        (theme::FIGURE, FIGURES.iter().map(|(name, _)| *name).collect()),
    ] {
        assert_eq!(words_of(theme), words, "{theme}");
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
    assert_eq!((en.decimal(2.0, 1), es.decimal(2.0, 1)), ("2.0".to_string(), "2.0".to_string()));
    assert_eq!((en.number(2.50, 2), es.number(100.0, 2)), ("2.5".to_string(), "100".to_string()));
    assert_eq!(en.decimal(-0.01, 1), "0.0");
    assert_eq!((en.percent(0.3), es.percent(0.004)), ("30 %".to_string(), "0.4 %".to_string()));
    assert_eq!((en.days(1), es.days(2)), ("1 day".to_string(), "2 días".to_string()));
    assert_eq!(en.plants_range(Range::exact(12.0)), "12 plants");
    assert_eq!(es.plants_range(Range::new(22.4, 27.0, 30.2)), "22 a 31 plantas, lo probable 27");
}

#[test]
fn a_number_near_a_limit_is_told_from_it() {
    let (en, es) = (Wording::new(Lang::En), Wording::new(Lang::Es));
    assert_eq!(en.decimal_beside(1.62, &[1.6], 1), "1.62");
    assert_eq!(en.decimal_beside(0.48 / 0.3, &[1.6], 1), "1.6");
    assert_eq!(es.decimal_beside(1.6004, &[1.3, 1.6], 1), "1.6004");
    assert_eq!(en.decimal_beside(2.0, &[1.6], 1), "2.0");
    assert_eq!(en.percent_beside(0.5012, &[0.3, 0.5]), "50.1 %");
    assert_eq!(en.percent_beside(0.5, &[0.3, 0.5]), "50 %");
    assert_eq!(es.percent_beside(0.004, &[0.3]), "0.4 %");
    assert_eq!(en.number_beside(19.96, &[20.0], 1), "19.96");
}

use crate::base::Range;

#[test]
fn a_wording_can_be_shared_between_threads() {
    fn shared<T: Send + Sync>(_: &T) {}
    shared(&Wording::new(Lang::Es));
}
