//! The Journal by keys, and as it looks.

use crate::dashboard::keys::Key;
use crate::dashboard::layer::Layer;
use crate::dashboard::tests::Stage;
use crate::wording::Lang;

fn journal(lang: Lang) -> Stage {
    let mut stage = Stage::sample(lang);
    stage.keys("7");
    stage
}

#[test]
fn the_newest_entry_is_on_top_and_chosen() {
    let mut stage = journal(Lang::En);
    stage.write("noted", &["text=the heron is back"]);
    let frame = stage.frame();
    let first = frame.lines().position(|line| line.contains("the heron is back")).unwrap();
    assert!(first <= 4, "{frame}");
}

#[test]
fn any_word_of_an_entry_finds_it_without_accents_or_case() {
    let mut stage = journal(Lang::Es);
    stage.write("noted", &["text=La cañada creció", "who=Nyota"]);
    for search in ["canada", "CRECIO", "nyota"] {
        stage.keys("j");
        search.chars().for_each(|letter| stage.key(Key::Char(letter)));
        let frame = stage.frame();
        assert!(frame.contains("La cañada creció"), "{search}: {frame}");
        stage.key(Key::Esc);
    }
    stage.keys("jxyzxyz");
    assert!(stage.frame().contains("xyzxyz"), "{}", stage.frame());
    assert!(!stage.frame().contains("La cañada"), "{}", stage.frame());
}

#[test]
fn taking_back_says_what_it_undoes_and_the_entry_stays_to_be_read() {
    let mut stage = journal(Lang::En);
    stage.write("counted", &["tray=cof-022", "standing=70"]);
    stage.keys("j");
    "cof-022 counted: 70".chars().for_each(|letter| stage.key(Key::Char(letter)));
    stage.keys("\nr");
    assert!(matches!(stage.model.layers.last(), Some(Layer::Confirm(_))), "{}", stage.frame());
    assert!(stage.frame().contains("cof-022 counted: 70 living"), "{}", stage.frame());
    // The key that asked does not confirm.
    stage.keys("r");
    assert_eq!(stage.taken_back, 0);
    stage.keys("w");
    assert_eq!(stage.taken_back, 1);
    let frame = stage.frame();
    assert!(frame.contains("cof-022 counted: 70 living") && frame.contains("it no longer"), "{frame}");
}

#[test]
fn narrow_it_is_one_at_a_time_and_q_goes_back() {
    let mut stage = journal(Lang::En).sized(48, 18);
    stage.keys("\n");
    assert!(stage.frame().contains("It counts."), "{}", stage.frame());
    stage.keys("q");
    assert!(!stage.left && !stage.frame().contains("It counts."), "{}", stage.frame());
}

#[test]
fn an_empty_book_teaches() {
    let mut stage = Stage::empty(Lang::En);
    stage.keys("7");
    assert!(stage.frame().contains("Nothing is written yet."), "{}", stage.frame());
}

#[test]
fn as_it_looks() {
    // The name of the device is another each time, and as long.
    let shown = |stage: Stage| {
        let device = stage.model.book.found.as_ref().unwrap().entries[0].id.device.to_string();
        stage.frame().replace(&device, &"d".repeat(device.len()))
    };
    insta::assert_snapshot!("journal_120x40_en", shown(journal(Lang::En)));
    insta::assert_snapshot!("journal_48x18_es", shown(journal(Lang::Es).sized(48, 18)));
}
