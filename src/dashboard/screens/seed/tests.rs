//! Keys on the Seed, and what they show.

use super::detail::Asked;
use super::list::{LotLine, chosen as line_of};
use super::{Seed, detail};
use crate::base::LotCode;
use crate::dashboard::keys::Key;
use crate::dashboard::layer::Layer;
use crate::dashboard::parts::width_of;
use crate::dashboard::tests::Stage;
use crate::reckon::seed::LotState;
use crate::wording::Lang;

fn seed(lang: Lang) -> Stage {
    let mut stage = Stage::sample(lang);
    stage.keys("5");
    stage
}

fn screen(stage: &Stage) -> &Seed {
    &stage.model.screens.seed
}

fn chosen(stage: &Stage) -> String {
    screen(stage).place.chosen.as_ref().unwrap().to_string()
}

fn listed(stage: &Stage) -> Vec<String> {
    screen(stage).lines(&stage.model.context()).iter().map(|line| line.lot.code.to_string()).collect()
}

fn line<'a>(stage: &'a Stage, code: &str) -> LotLine<'a> {
    line_of(Some(&LotCode::new(code).unwrap()), &stage.model.context()).unwrap()
}

fn go(stage: &mut Stage, lot: &str) {
    stage.keys("f");
    stage.keys(lot);
    stage.keys("\n");
    assert_eq!(chosen(stage), lot);
}

/// A text in one line with single blanks, however it was wrapped.
fn in_one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The whole detail of a lot as text in one line.
fn detail_of(stage: &Stage, code: &str) -> String {
    let page = detail::page(&line(stage, code), Asked::default(), &stage.model.context(), 60);
    let area = ratatui::layout::Rect::new(0, 0, 60, page.height() as u16);
    let mut buffer = ratatui::buffer::Buffer::empty(area);
    assert_eq!(page.draw(0, area, &mut buffer), 0);
    let rows = buffer.content.chunks(60);
    in_one_line(&rows.map(|row| row.iter().map(|cell| cell.symbol()).collect::<String>()).collect::<Vec<_>>().join(" "))
}

#[test]
fn what_must_be_sown_first_stands_on_top_and_the_dead_at_the_end() {
    let stage = seed(Lang::En);
    let lines = screen(&stage).lines(&stage.model.context());
    let last_alive = lines.iter().rposition(|line| line.state != LotState::Dead).unwrap();
    let first_dead = lines.iter().position(|line| line.state == LotState::Dead).unwrap();
    assert!(last_alive < first_dead);
    let keeping: Vec<i32> = lines
        .iter()
        .filter(|line| line.state == LotState::Keeps)
        .map(|line| line.life.as_ref().unwrap().days_left(stage.model.context().day()))
        .collect();
    assert!(keeping.len() > 2 && keeping.windows(2).all(|pair| pair[0] <= pair[1]), "{keeping:?}");
}

#[test]
fn a_number_by_weight_is_about_and_a_counted_one_is_not() {
    let stage = seed(Lang::En);
    let left = |code: &str| detail::left_words(line(&stage, code).lot, &stage.model.context());
    // Pap-L02: 5 g at 55,000 a kg are 275; 2.2 g of them, 121, were sown: 154, known to two figures.
    assert_eq!(left("pap-L02"), "about 150");
    // Counted when 112 were left.
    assert_eq!(left("gli-L02"), "112");
    let es = seed(Lang::Es);
    assert_eq!(detail::left_words(line(&es, "pap-L02").lot, &es.model.context()), "unas 150");
}

#[test]
fn a_test_stands_with_its_interval_its_replicates_and_the_day_of_the_next() {
    let stage = seed(Lang::En);
    let message = detail_of(&stage, "mor-L02");
    // 21 and 22 of 25, and moringa comes up until day 21.
    assert!(
        message.contains(
            "43 of 50 after 14 days, too early to tell: at least 86 % lives; to be counted until 13 Mar 2026; replicates 21, 22: too few"
        ),
        "{message}"
    );
    // 40 days ago of gli-L02's 140: long due.
    let due = detail_of(&stage, "gli-L02");
    assert!(due.contains("! test again: due since") && due.contains("(t)"), "{due}");
    // Where a test would end after the life of the seed none is asked for.
    let late = detail_of(&stage, "pap-L02");
    assert!(late.contains("Never tested. test again: no: a test takes about 18 days"), "{late}");
}

#[test]
fn sowings_say_what_came_up_and_in_all_with_an_interval() {
    let stage = seed(Lang::En);
    let message = detail_of(&stage, "gli-L01");
    assert!(
        message.contains("60 seeds, 51 came up Where nothing more comes: 51 of 60 seeds came up, 85 %"),
        "{message}"
    );
    let waiting = detail_of(&stage, "pap-L02");
    assert!(waiting.contains("121 seeds, 69 came up, more may come"), "{waiting}");
    assert!(!waiting.contains("Where nothing more comes"), "{waiting}");
    assert!(detail_of(&stage, "jac-L04").contains("Nothing was sown from it in trays yet (s)."));
}

#[test]
fn every_lot_says_in_one_sentence_how_it_stands() {
    for lang in Lang::ALL {
        let mut stage = seed(lang);
        stage.keys("v");
        let cx = stage.model.context();
        for line in screen(&stage).lines(&cx) {
            let message = detail::verdict(&line, &cx);
            assert!(message.ends_with('.') && message.len() > 15, "{}: {message}", line.lot.code);
        }
    }
}

#[test]
fn letters_open_the_forms_of_the_lot() {
    for (letter, kind) in [("s", "sown"), ("t", "lot_tested"), ("c", "lot_counted"), ("k", "lot_kept"), ("a", "noted")]
    {
        let mut stage = seed(Lang::En);
        go(&mut stage, "avo-L04");
        stage.keys(letter);
        let Some(Layer::Form(form)) = stage.model.layers.last() else { panic!("{letter} opens no form") };
        assert_eq!(form.kind(), kind);
        assert!(stage.frame().contains("avo-L04"), "{}", stage.frame());
        if kind == "sown" {
            let tray = form.fields().into_iter().find(|(field, _)| field.name == "tray").unwrap().1;
            assert_eq!((tray.as_str(), form.field_with_keys()), ("avo-016", Some("seeds")));
        }
    }
}

#[test]
fn a_count_from_here_changes_what_is_left() {
    let mut stage = seed(Lang::En);
    go(&mut stage, "pap-L02");
    let before = stage.entries();
    stage.keys("c140\n");
    assert_eq!(stage.entries(), before + 1, "{}", stage.frame());
    assert_eq!(chosen(&stage), "pap-L02");
    assert_eq!(detail::left_words(line(&stage, "pap-L02").lot, &stage.model.context()), "140");
    assert!(stage.frame().contains("140 of 275 seeds"), "{}", stage.frame());
}

#[test]
fn what_is_used_up_is_hidden_until_it_is_asked_for() {
    let mut stage = seed(Lang::En);
    go(&mut stage, "pap-L02");
    assert!(!stage.frame().contains("v used-up ones too"), "there are none yet");
    stage.keys("c0\n");
    assert!(!listed(&stage).contains(&"pap-L02".to_string()), "{}", stage.frame());
    assert!(stage.frame().contains("1 used-up one hidden (v)"), "{}", stage.frame());
    stage.keys("v");
    assert_eq!(listed(&stage).last().unwrap(), "pap-L02");
    stage.keys("v");
    go(&mut stage, "pap-L02");
    assert!(stage.frame().contains("Used up: nothing is left."), "{}", stage.frame());
}

/// What stands behind y and a, page after page.
fn reasons(stage: &mut Stage) -> String {
    stage.keys("ya");
    stage.key(Key::Home);
    let mut all = String::new();
    for _ in 0..10 {
        all.push_str(&stage.frame());
        stage.keys(".");
    }
    stage.keys("q");
    in_one_line(&all)
}

#[test]
fn y_says_where_every_number_of_a_lot_comes_from() {
    let mut stage = seed(Lang::En);
    go(&mut stage, "pap-L02");
    stage.keys("i40\n");
    let message = reasons(&mut stage);
    assert!(message.contains("lives 60 d from") && message.contains("Nakasone & Paull 1998"), "{message}");
    assert!(
        message.contains("half is gone after 60 d, which may be half as long or twice")
            && message.contains("Genebank Standards"),
        "{message}"
    );
    assert!(message.contains("lot pap-L02 received"), "{message}");
    // How much of it comes up is so little known that no number is told.
    assert!(message.contains("No number:"), "{message}");
    go(&mut stage, "mor-L02");
    stage.keys("i120\n");
    assert!(reasons(&mut stage).contains("Skellam 1948"), "how many to sow has its source");
    // Where no days are known the entries are the reasons.
    go(&mut stage, "gre-L02");
    assert!(reasons(&mut stage).contains("lot gre-L02 received"));
}

#[test]
fn a_number_of_plants_is_typed_and_how_many_to_sow_follows_it() {
    let mut stage = seed(Lang::En).sized(120, 120);
    go(&mut stage, "mor-L02");
    stage.keys("i120");
    let typing = in_one_line(&stage.frame());
    assert!(typing.contains("How many to sow for how many plants? 120_") && typing.contains("120"), "{typing}");
    let before = stage.entries();
    // Letters are no figures, and figures no screens.
    stage.keys("x7\n");
    assert_eq!(stage.entries(), before);
    assert!(in_one_line(&stage.frame()).contains("1207 needed, about"), "{}", stage.frame());
    stage.keys("i");
    for _ in 0..4 {
        stage.key(Key::Backspace);
    }
    stage.keys("140\n");
    let message = detail_of(&stage, "mor-L02");
    assert!(!message.contains("140 needed"), "the detail asked nothing by itself");
    let asked = in_one_line(&stage.frame());
    assert!(asked.contains("140 needed, about"), "{asked}");
    assert!(reasons(&mut stage).contains("140 needed, about"));
    // On a narrow screen the number stands on top while it is typed.
    let mut narrow = seed(Lang::Es).sized(48, 18);
    go(&mut narrow, "mor-L02");
    narrow.keys("i125");
    assert!(
        narrow.frame().contains("125_") && in_one_line(&narrow.frame()).contains("hacen falta 125"),
        "{}",
        narrow.frame()
    );
}

#[test]
fn what_is_coming_of_the_species_stands_by_month() {
    let stage = seed(Lang::En);
    let lot = line(&stage, "cof-L04").lot.species.clone().unwrap();
    let coming = stage.model.wording.coming_words(&lot, &stage.model.book.outlook);
    let message = detail_of(&stage, "cof-L04");
    assert!(!coming.is_empty());
    for month in coming {
        assert!(message.contains(&in_one_line(&month)), "{month}: {message}");
    }
}

#[test]
fn where_there_is_no_room_for_both_enter_opens_the_detail_and_q_closes_it() {
    let mut stage = seed(Lang::En).sized(48, 18);
    let codes = listed(&stage);
    stage.key(Key::Down);
    assert_eq!(chosen(&stage), codes[1]);
    stage.keys("\n");
    assert!(stage.frame().contains(&format!("Seed lot {}", codes[1])), "{}", stage.frame());
    for _ in 0..30 {
        stage.keys(".");
    }
    assert!(stage.frame().contains("received"), "{}", stage.frame());
    stage.keys("q");
    assert!(!stage.left && stage.frame().contains(&codes[4]), "{}", stage.frame());
    stage.keys("q\n");
    assert!(stage.left);
}

#[test]
fn the_days_of_life_left_stand_in_the_list_down_to_forty_columns() {
    for lang in Lang::ALL {
        for (columns, rows) in [(120, 40), (80, 24), (48, 18), (40, 12)] {
            let stage = seed(lang).sized(columns, rows);
            let frame = stage.frame();
            let row = frame.lines().find(|row| row.starts_with("gli-L01")).unwrap();
            assert!(row.contains("-75"), "{frame}");
        }
    }
}

#[test]
fn an_empty_store_teaches_how_to_begin() {
    for lang in Lang::ALL {
        for (columns, rows) in [(120, 40), (48, 18), (40, 12)] {
            let mut stage = Stage::empty(lang).sized(columns, rows);
            stage.keys("5");
            assert!(in_one_line(&stage.frame()).contains(&stage.model.wording.no_lots()), "{}", stage.frame());
            stage.keys("stckv.,\n");
            assert!(stage.model.layers.is_empty() && !stage.left);
        }
    }
}

#[test]
fn at_every_size_a_row_has_its_code_and_state_and_the_detail_its_verdict_whole() {
    for lang in Lang::ALL {
        for (columns, rows) in [(120, 40), (80, 24), (60, 20), (48, 18), (40, 12)] {
            let mut stage = seed(lang).sized(columns, rows);
            stage.model.look.inks = crate::dashboard::look::Inks::Mono;
            let frame = stage.frame();
            assert!(frame.lines().all(|line| width_of(line) <= usize::from(columns)));
            let shown: Vec<&str> = frame.lines().filter(|line| line.get(3..5) == Some("-L")).collect();
            assert!(shown.len() >= 5, "{frame}");
            for row in shown {
                let state = line(&stage, row.split_whitespace().next().unwrap()).state;
                let message =
                    format!("{} {}", super::list::state_mark(state).0, stage.model.wording.lot_state_name(state));
                assert!(row.contains(&message), "{message} is missing in {row}");
            }
            go(&mut stage, "cof-L04");
            let verdict = detail::verdict(&line(&stage, "cof-L04"), &stage.model.context());
            let width = crate::dashboard::screens::list_detail::detail_columns(&stage.model.context());
            let from = usize::from(columns - width);
            let pane: Vec<String> = stage.frame().lines().map(|line| line.chars().skip(from).collect()).collect();
            assert!(in_one_line(&pane.join(" ")).contains(&verdict), "{verdict}\n{}", stage.frame());
        }
    }
}

#[test]
fn wide_in_english() {
    let mut stage = seed(Lang::En);
    go(&mut stage, "mor-L02");
    insta::assert_snapshot!(stage.frame());
}

#[test]
fn narrow_in_spanish() {
    let stage = seed(Lang::Es).sized(48, 18);
    insta::assert_snapshot!(stage.frame());
}

#[test]
fn narrow_detail_in_spanish() {
    let mut stage = seed(Lang::Es).sized(48, 18);
    go(&mut stage, "mor-L02");
    insta::assert_snapshot!(stage.frame());
}

#[test]
fn a_number_asked_for_once_more_takes_the_place_of_the_one_before() {
    let mut stage = seed(Lang::En);
    stage.keys("i30\n");
    assert_eq!(screen(&stage).wanted(), Some(30));
    stage.keys("i5\n");
    assert_eq!(screen(&stage).wanted(), Some(5));
    // Without a figure it stays.
    stage.keys("i\n");
    assert_eq!(screen(&stage).wanted(), Some(5));
}
