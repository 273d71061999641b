//! Whatever is typed in whatever field, a person is told in their own words what is wrong with it.

use super::Stage;
use crate::dashboard::act::FormFor;
use crate::dashboard::form::Form;
use crate::dashboard::layer::Layer;
use crate::nursery::entry::shape::{Field, Shape};
use crate::nursery::entry::{KindOfEntry, all_kinds};
use crate::wording::Lang;

/// What a person may type by mistake.
const WRONG: [&str; 7] = ["zz", "-1", "{x", "5 kk", "99/99", "1e12", "\"a\" [b]"];

/// Something that a field of a shape takes.
fn right(shape: &Shape) -> String {
    match shape {
        Shape::Count => "3".to_string(),
        Shape::Number { least, most, .. } => (if *least > 1.0 { *least } else { 1.0_f64.min(*most) }).to_string(),
        Shape::Day => "2026-04-01".to_string(),
        Shape::MonthDay => "03-15".to_string(),
        Shape::Clock => "07:40".to_string(),
        Shape::Spot => "2.7".to_string(),
        Shape::Entry => "k3f9:12".to_string(),
        Shape::Flag => "true".to_string(),
        Shape::Word(words) => words[0][0].to_string(),
        Shape::List(Shape::Record(fields)) => row(fields, None),
        Shape::List(inner) => right(inner),
        Shape::Species => "coffee".to_string(),
        Shape::Open => "days=3".to_string(),
        Shape::Code(_) | Shape::Text | Shape::Record(_) => "x-1".to_string(),
    }
}

/// A row of a list, with something else in one of its fields.
fn row(fields: &[Field], other: Option<(&str, &str)>) -> String {
    let cell = |field: &Field| match other {
        Some((name, wrong)) if name == field.name => wrong.replace(' ', "_"),
        _ => right(&field.shape),
    };
    fields.iter().map(cell).collect::<Vec<_>>().join(" ")
}

/// The form of a kind with all it must have, and something in one field more.
fn filled(known: &KindOfEntry, other: Option<(&str, &str)>) -> FormFor {
    let mut form = FormFor::about(known.kind, None);
    for field in known.fields.iter().filter(|field| field.required) {
        if other.is_none_or(|(name, _)| name != field.name) {
            form = form.with(field.name, right(&field.shape));
        }
    }
    match other {
        Some((name, typed)) => form.with(name, typed),
        None => form,
    }
}

/// What is wrong in what a person is told: a word of ours, a sign of a file, English in Spanish.
fn not_for_people(said: &str, typed: &str, lang: Lang) -> Option<String> {
    // What was typed is quoted as it was typed, or leads the sentence.
    let quoted = said.split_once('\'').and_then(|(before, rest)| Some((before, rest.rsplit_once('\'')?.1)));
    let rest = quoted.map_or(said.to_string(), |(before, behind)| format!("{before} {behind}"));
    let rest = rest.strip_prefix(typed).unwrap_or(&rest);
    let ours = rest.split_whitespace().find(|word| word.contains('_'));
    let sign = rest.chars().find(|letter| "{}[]\"`".contains(*letter)).map(|sign| sign.to_string());
    let padded = format!(" {} ", rest.replace([',', ':', ';', '.'], " "));
    let english =
        [" is ", " the ", " not ", " of ", " and ", " per ", " needs ", " seeds ", " days ", " or ", " must "];
    let english = english.into_iter().find(|word| lang == Lang::Es && padded.contains(word));
    ours.map(str::to_string).or(sign).or(english.map(str::to_string))
}

#[test]
fn whatever_is_typed_in_whatever_field_is_answered_in_words_of_people() {
    for lang in [Lang::En, Lang::Es] {
        let stage = Stage::sample(lang);
        let cx = stage.model.context();
        let (mut wrong, mut told) = (Vec::new(), 0);
        let mut check = |known: &KindOfEntry, other: Option<(&str, &str)>| {
            let form = Form::open(&filled(known, other)).unwrap();
            if let Err((_, said)) = form.drafts(&cx, "Amani") {
                told += 1;
                let typed = other.map_or("", |(_, typed)| typed);
                if let Some(what) = not_for_people(&said, typed, lang) {
                    wrong.push(format!("{} {other:?}: '{what}' in '{said}'", known.kind));
                }
            }
        };
        for known in all_kinds() {
            check(known, None);
            for field in known.fields {
                for typed in WRONG.iter().chain(field.required.then_some(&"")) {
                    check(known, Some((field.name, typed)));
                }
                let Shape::List(Shape::Record(fields)) = field.shape else { continue };
                for inner in *fields {
                    for typed in WRONG {
                        check(known, Some((field.name, &row(fields, Some((inner.name, typed))))));
                    }
                }
            }
        }
        assert!(told > 400, "{told}");
        assert!(wrong.is_empty(), "{lang:?}: {} of {told}: {wrong:#?}", wrong.len());
    }
}

#[test]
fn a_row_that_is_not_read_is_named_with_what_is_wrong_in_it() {
    for (lang, said) in [(Lang::En, "row 2: collar"), (Lang::Es, "fila 2: cuello")] {
        let stage = Stage::sample(lang);
        let asked = FormFor::about("measured", None).with("tray", "cof-022").with("plants", "24 3.1; 30 kk");
        let told = Form::open(&asked).unwrap().drafts(&stage.model.context(), "Amani").unwrap_err().1;
        assert!(told.starts_with(said) && told.ends_with("'kk'"), "{told}");
    }
}

#[test]
fn a_day_that_may_be_one_of_two_is_asked_in_a_form() {
    for (lang, word) in [(Lang::En, "wednesday"), (Lang::Es, "miércoles")] {
        let mut stage = Stage::sample(lang);
        let before = stage.entries();
        stage.open(&FormFor::about("noted", None).with("text", "rain").beginning_at("text"));
        stage.keys("\t");
        stage.keys(word);
        stage.keys("\n");
        let frame = stage.frame();
        assert!(frame.contains("2026-04-08") && frame.contains("2026-04-15"), "{frame}");
        assert_eq!(stage.entries(), before);
    }
}

/// Words people use on the walk, and the kinds one of which they stand for.
const WORDS_OF_THE_WALK: [(Lang, &str, &str); 57] = [
    (Lang::Es, "deshije", "nurse_cut"),
    (Lang::Es, "deshijamos", "nurse_cut"),
    (Lang::Es, "deshoje", "nurse_cut"),
    (Lang::Es, "desmochar", "nurse_cut"),
    (Lang::Es, "chapia", "prepared"),
    (Lang::Es, "chapeamos", "prepared"),
    (Lang::Es, "plateo", "prepared"),
    (Lang::Es, "rozamos", "prepared"),
    (Lang::Es, "ahoyado", "prepared"),
    (Lang::Es, "deshierbé", "prepared"),
    (Lang::Es, "zompopos", "lost"),
    (Lang::Es, "talluelo", "lost"),
    (Lang::Es, "murieron", "lost"),
    (Lang::Es, "taltuza", "lost"),
    (Lang::Es, "raleo", "culled"),
    (Lang::Es, "boté", "culled"),
    (Lang::Es, "repique", "moved_on"),
    (Lang::Es, "embolsamos", "moved_on"),
    (Lang::Es, "almácigo", "sown"),
    (Lang::Es, "postura", "sown_in_bed"),
    (Lang::Es, "hijuelos", "plants_received nurse_planted"),
    (Lang::Es, "pegaron", "survival_counted"),
    (Lang::Es, "prendieron", "survival_counted"),
    (Lang::Es, "aguacero", "weather"),
    (Lang::Es, "llovió", "weather"),
    (Lang::Es, "rustificar", "hardening_begun"),
    (Lang::Es, "sarán", "shade_set"),
    (Lang::Es, "fumigamos", "treated"),
    (Lang::Es, "roya", "pest_seen"),
    (Lang::Es, "pulgones", "pest_seen"),
    (Lang::Es, "cogollo", "flushed"),
    (Lang::Es, "cepellón", "plug_checked"),
    (Lang::Es, "abonamos", "noted"),
    (Lang::Es, "jornal", "noted"),
    (Lang::Es, "regalé", "given_out"),
    (Lang::Es, "trasladé", "carried"),
    (Lang::Es, "regué", "watering_set"),
    (Lang::Es, "inventario", "stocktaken"),
    (Lang::Es, "cuarentena", "held"),
    (Lang::Es, "conteo", "counted"),
    (Lang::En, "weeding", "prepared"),
    (Lang::En, "slashed", "prepared nurse_cut"),
    (Lang::En, "brushed", "prepared"),
    (Lang::En, "holing", "prepared"),
    (Lang::En, "died", "lost"),
    (Lang::En, "termites", "lost"),
    (Lang::En, "threw", "culled"),
    (Lang::En, "thinned", "culled nurse_cut"),
    (Lang::En, "polybag", "container_set moved_on"),
    (Lang::En, "shifted", "carried"),
    (Lang::En, "sprayed", "treated"),
    (Lang::En, "mealybug", "pest_seen"),
    (Lang::En, "rainfall", "weather"),
    (Lang::En, "gapping", "outplanted"),
    (Lang::En, "suckers", "plants_received"),
    (Lang::En, "desuckering", "nurse_cut"),
    (Lang::En, "rootball", "plug_checked"),
];

#[test]
fn a_word_of_the_walk_finds_what_it_stands_for() {
    let (mut en, mut es) = (Stage::sample(Lang::En), Stage::sample(Lang::Es));
    let mut wrong = Vec::new();
    for (lang, word, kinds) in WORDS_OF_THE_WALK {
        let stage = if lang == Lang::En { &mut en } else { &mut es };
        stage.keys("2n");
        stage.text(word);
        stage.keys("\n");
        let found = match stage.model.layers.last() {
            Some(Layer::Form(form)) => form.kind(),
            _ => "nothing",
        };
        if !kinds.split(' ').any(|kind| kind == found) {
            wrong.push(format!("{word}: {found} instead of {kinds}"));
        }
        stage.keys("\u{1b}\u{1b}\u{1b}");
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

/// Words alone, a blank before and behind each.
fn bare(text: &str) -> String {
    let letters = |letter: char| if letter.is_alphanumeric() || letter == '-' { letter } else { ' ' };
    let text: String = text.chars().map(letters).collect();
    format!(" {} ", text.split_whitespace().collect::<Vec<_>>().join(" ")).to_lowercase()
}

/// The names and words of lists in English that no sentence in Spanish holds and nobody wrote.
fn english_alone(written: &str) -> Vec<String> {
    let (spanish, written) = (bare(&crate::wording::whole_text_of(Lang::Es)), bare(written));
    let names = crate::wording::names_of(Lang::En).into_iter().map(|name| bare(&name));
    let mut alone: Vec<String> = names
        .filter(|name| {
            name.trim().chars().count() > 3 && !spanish.contains(name.as_str()) && !written.contains(name.as_str())
        })
        .collect();
    alone.sort();
    alone.dedup();
    alone
}

/// Every screen with what is open on it, and every form with each of its fields chosen, as it is shown.
fn each_frame(stage: &mut Stage, abouts: &[crate::nursery::entry::subject::Subject], mut look: impl FnMut(&str, &str)) {
    for digit in '1'..='7' {
        for over in ["", "h", "hv", "n", "v", "+", "f", "e"] {
            stage.key(crate::dashboard::keys::Key::Char(digit));
            stage.keys(over);
            look(&format!("screen {digit}, then {over:?}"), &stage.frame());
            stage.model.layers.clear();
        }
        stage.key(crate::dashboard::keys::Key::Char(digit));
        for step in 0..14 {
            stage.key(crate::dashboard::keys::Key::Down);
            look(&format!("screen {digit}, {step} down"), &stage.frame());
        }
    }
    for known in all_kinds() {
        // About the first that it has a field for.
        let about = abouts.iter().find(|about| !FormFor::about(known.kind, Some(about)).preset.is_empty());
        stage.model.layers.clear();
        stage.open(&FormFor::about(known.kind, about));
        for _ in 0..=known.fields.len() {
            look(&format!("form {} of {about:?}", known.kind), &stage.frame());
            stage.keys("\t");
        }
    }
    stage.model.layers.clear();
}

#[test]
fn no_word_of_the_english_lists_stands_on_a_spanish_screen_or_form() {
    use crate::base::{BedName, LotCode, TrayCode};
    use crate::nursery::entry::subject::Subject;
    let written: String = std::fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/sample-nursery"))
        .unwrap()
        .map(|file| std::fs::read_to_string(file.unwrap().path()).unwrap())
        .flat_map(|text| text.lines().filter(|line| !line.starts_with('#')).map(own_words).collect::<Vec<_>>())
        .collect();
    let alone = english_alone(&written);
    assert!(alone.len() > 250, "{}", alone.len());
    assert!(alone.contains(&" washed out ".to_string()) && alone.contains(&" cause ".to_string()), "{alone:?}");
    let mut stage = Stage::sample(Lang::Es);
    let abouts = [
        Subject::Tray(TrayCode::new("cof-021").unwrap()),
        Subject::Bed(BedName::new("School 1").unwrap()),
        Subject::Lot(LotCode::new("cof-L04").unwrap()),
    ];
    let mut found = std::collections::BTreeMap::new();
    let mut look = |at: &str, frame: &str| {
        let frame = bare(frame);
        for word in alone.iter().filter(|word| frame.contains(word.as_str())) {
            found.entry(word.clone()).or_insert_with(|| at.to_string());
        }
    };
    each_frame(&mut stage, &abouts, &mut look);
    assert!(found.is_empty(), "{found:#?}");
}

/// What a person wrote in a line of the sample that is no cause and no word of a list: names, notes, reasons.
fn own_words(line: &str) -> String {
    // Behind each quotation mark that opens stands a text, behind each `=` without one a word.
    let parts: Vec<&str> = line.split('"').collect();
    let is_cause = |before: &str| before.ends_with(" cause=") || before.ends_with(" causes=");
    let quoted = (1..parts.len()).step_by(2).filter(|at| !is_cause(parts[at - 1])).map(|at| parts[at].to_string());
    let plain = parts.iter().step_by(2).flat_map(|part| part.split(' '));
    let words = plain.filter_map(|word| word.split_once('=')).filter(|(field, _)| !field.starts_with("cause"));
    quoted.chain(words.map(|(_, word)| word.to_string())).collect::<Vec<_>>().join(" . ") + " . "
}

#[test]
fn causes_of_our_lists_are_said_and_offered_in_spanish_whichever_language_they_were_written_in() {
    use crate::base::TrayCode;
    use crate::base::word::Word;
    use crate::nursery::cause::Cause;
    use crate::nursery::entry::subject::Subject;
    let english = crate::wording::Wording::new(Lang::En);
    let mut stage = Stage::sample(Lang::Es);
    let tray = Subject::Tray(TrayCode::new("cof-028").unwrap());
    for (cause, _) in Cause::WORDS {
        let name = english.cause_name(*cause);
        stage.write("lost", &["tray=cof-028", "count=1", &format!("cause={name}")]);
        stage.write("culled", &["tray=cof-028", "count=1", &format!("why={name}")]);
        let spanish = stage.model.wording.cause_name(*cause);
        stage.keys("7");
        stage.key(crate::dashboard::keys::Key::Home);
        let frame = bare(&stage.frame());
        assert!(frame.contains(&bare(&spanish)), "{spanish}: {}", stage.frame());
        assert!(spanish == name || !frame.contains(&bare(&format!("cof-028 1 {name}"))), "{}", stage.frame());
        for kind in ["lost", "culled"] {
            let field = if kind == "lost" { "cause" } else { "why" };
            let mut form = FormFor::about(kind, Some(&tray)).with("count", 1);
            form.begin_at = Some(field.to_string());
            stage.open(&form);
            let frame = bare(&stage.frame());
            assert!(spanish == name || !frame.contains(&bare(&name)), "{name}: {}", stage.frame());
            stage.model.layers.clear();
        }
    }
}
