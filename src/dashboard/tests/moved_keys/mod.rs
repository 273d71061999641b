//! Letters that a person moved in the settings: what is pressed, what is named, and where text stays text.

use std::sync::Arc;

use super::Stage;
use crate::base::letters::Letters;
use crate::dashboard::act::ScreenName;
use crate::dashboard::keys::Key;
use crate::dashboard::layer::Layer;
use crate::dashboard::message::Message;
use crate::wording::{Lang, Wording};

/// The sample nursery on a screen with moved letters.
fn moved(lang: Lang, pairs: &[(&str, &str)]) -> Stage {
    let mut stage = Stage::sample(lang);
    let letters = Letters::moved(pairs.iter().copied()).unwrap();
    stage.model.wording = Arc::new(Wording::with_letters(lang, letters));
    stage
}

/// Every letter one further in the alphabet.
fn all_moved(lang: Lang) -> Stage {
    let letter = |at: u8| char::from(b'a' + at % 26).to_string();
    let pairs: Vec<(String, String)> = (0..26).map(|at| (letter(at), letter(at + 1))).collect();
    let pairs: Vec<(&str, &str)> = pairs.iter().map(|(work, onto)| (work.as_str(), onto.as_str())).collect();
    moved(lang, &pairs)
}

fn words(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn a_moved_letter_does_the_work_and_the_one_it_took_the_place_of_does_the_other() {
    let mut stage = moved(Lang::En, &[("c", "j")]);
    stage.keys("2j");
    assert!(matches!(stage.model.layers.last(), Some(Layer::Form(form)) if form.kind() == "counted"));
    stage.keys("\u{1b}");
    let by_species = stage.frame();
    stage.keys("c");
    assert!(stage.model.layers.is_empty());
    assert_ne!(stage.frame(), by_species, "what j did, c does: the list is grouped");
}

#[test]
fn where_text_is_typed_a_letter_is_that_letter() {
    let mut stage = moved(Lang::En, &[("c", "v"), ("q", "j")]);
    // A form, what is found, what can be written, a filter, a search.
    for (open, shown) in [("2a", "cvqj"), ("f", "cvqj"), ("n", "cvqj"), ("2i", "cvqj"), ("7j", "cvqj"), ("7q", "cvqj")]
    {
        stage.keys(open);
        stage.keys("cvqj");
        let typed = stage.frame().contains(shown);
        // On the journal `j` was the search, and it stands on `q` now.
        assert_eq!(typed, open != "7j", "{open}: {}", stage.frame());
        for _ in 0..4 {
            stage.keys("\u{1b}");
        }
        stage.model.layers.clear();
    }
}

#[test]
fn an_empty_line_is_left_by_the_moved_key_and_begun_by_the_letter_that_was_it() {
    let mut stage = moved(Lang::En, &[("q", "j")]);
    stage.keys("dj");
    assert!(stage.model.layers.is_empty());
    stage.keys("dq");
    assert!(matches!(stage.model.layers.last(), Some(Layer::Day(_))));
    assert!(stage.frame().contains("> q"), "{}", stage.frame());
}

#[test]
fn every_line_of_keys_and_help_name_the_moved_letters() {
    for lang in Lang::ALL {
        let (mut plain, mut stage) = (Stage::sample(lang), all_moved(lang));
        let further = |letter: char| {
            if letter == 'z' { 'a' } else { char::from(u8::try_from(letter).unwrap() + 1) }
        };
        for name in ScreenName::ALL {
            (plain.model.at, stage.model.at) = (name, name);
            let line = |stage: &Stage| stage.frame().lines().last().unwrap().to_string();
            let named = |line: String| -> Vec<String> { line.split("  ").map(str::to_string).collect() };
            let expected: Vec<String> = named(line(&plain))
                .into_iter()
                .map(|one| match one.chars().collect::<Vec<_>>().as_slice() {
                    [letter, ' ', ..] | [letter] if letter.is_ascii_lowercase() => {
                        format!("{}{}", further(*letter), &one[1..])
                    }
                    _ => one,
                })
                .collect();
            assert_eq!(named(line(&stage)), expected, "{name}");
            // `h` is on `i`.
            stage.keys("i");
            assert!(matches!(stage.model.layers.last(), Some(Layer::Help(_))), "{name}");
            let help = stage.frame();
            let does = stage.model.wording.key_does("help");
            assert!(help.lines().any(|line| words(line).starts_with(&format!("i {does}"))), "{name}: {help}");
            stage.keys("\u{1b}");
        }
    }
}

#[test]
fn sentences_that_name_a_key_name_the_moved_one() {
    for lang in Lang::ALL {
        let mut stage = moved(lang, &[("o", "w"), ("d", "g"), ("n", "m"), ("c", "k")]);
        stage.keys("4");
        let said = match lang {
            Lang::En => "w puts it there",
            Lang::Es => "con w se pone",
        };
        assert!(words(&stage.frame()).contains(said), "{}", stage.frame());
        stage.keys("g-3\n");
        let said = match lang {
            Lang::En => "g: another day",
            Lang::Es => "g: otro día",
        };
        assert!(words(&stage.frame()).contains(said), "{}", stage.frame());
        // Another language keeps them.
        let other = stage.model.wording.letters().clone();
        stage.keys("zl");
        assert_eq!(*stage.model.wording.letters(), other);
    }
}

#[test]
fn a_tap_on_a_named_key_does_what_it_names() {
    let mut stage = moved(Lang::En, &[("h", "j")]);
    let (line, rows) = {
        let frame = stage.frame();
        (frame.lines().last().unwrap().to_string(), frame.lines().count())
    };
    let column = line.find("j help").unwrap() + 3;
    stage.send(Message::Tap(column as u16, rows as u16 - 1));
    assert!(matches!(stage.model.layers.last(), Some(Layer::Help(_))), "{line}");
    stage.key(Key::Esc);
}
