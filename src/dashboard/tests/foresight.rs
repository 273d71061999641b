//! Forms say before they write: what turns, what would be doubted, what is taken for what was typed, what one counts against.

use super::Stage;
use crate::base::{BedName, TrayCode};
use crate::dashboard::act::FormFor;
use crate::dashboard::keys::Key;
use crate::dashboard::layer::Layer;
use crate::dashboard::message::Message;
use crate::nursery::entry::subject::Subject;
use crate::reckon::round::{Stop, Task};
use crate::wording::Lang;

fn tray(code: &str) -> Subject {
    Subject::Tray(TrayCode::new(code).unwrap())
}

fn bed(name: &str) -> Subject {
    Subject::Bed(BedName::new(name).unwrap())
}

fn opened(stage: &mut Stage, kind: &str, about: &Subject, begin_at: &str) {
    stage.open(&FormFor::about(kind, Some(about)).beginning_at(begin_at));
}

fn typed(stage: &Stage, field: &str) -> Option<String> {
    match stage.model.layers.last() {
        Some(Layer::Form(form)) => {
            form.fields().into_iter().find(|(known, _)| known.name == field).map(|(_, value)| value)
        }
        _ => None,
    }
}

#[test]
fn a_light_reading_says_before_enter_which_trays_no_longer_fit() {
    let mut stage = Stage::sample(Lang::En);
    let dark = ["12000 40000"; 8].join("; ");
    stage.open(&FormFor::about("light_read", Some(&bed("Ridge 1"))).with("readings", dark));
    let frame = stage.frame();
    assert!(frame.contains("Ridge 1: no longer fit") && frame.contains("gre-014"), "{frame}");
    let fits = |stage: &Stage| {
        let pair = stage.model.book.picture.pair(&TrayCode::new("gre-014").unwrap(), &BedName::new("Ridge 1").unwrap());
        pair.is_some_and(|pair| pair.fits)
    };
    assert!(fits(&stage));
    // It contradicts the readings before it: the first Enter asks.
    stage.keys("\n");
    assert!(fits(&stage), "{}", stage.frame());
    stage.keys("\n");
    assert!(!fits(&stage), "{}", stage.frame());
}

#[test]
fn weeding_says_before_enter_what_it_opens() {
    let mut stage = Stage::sample(Lang::En);
    stage.open(&FormFor::about("prepared", Some(&bed("Ridge 2"))).with("task", "weeded"));
    let frame = stage.frame();
    assert!(frame.contains("Ridge 2: now fit ") && frame.contains("mac-001"), "{frame}");
}

#[test]
fn what_would_be_doubted_is_written_only_by_a_second_enter() {
    for (lang, again) in [(Lang::En, "Enter once more"), (Lang::Es, "Enter otra vez")] {
        let mut stage = Stage::sample(lang).sized(80, 24);
        let before = stage.entries();
        opened(&mut stage, "counted", &tray("cof-022"), "standing");
        stage.keys("900\n");
        assert_eq!(stage.entries(), before);
        assert!(stage.frame().contains(again), "{}", stage.frame());
        // What is changed is looked at again.
        stage.key(Key::Backspace);
        stage.keys("1\n");
        assert_eq!(stage.entries(), before);
        stage.keys("\n");
        assert_eq!(stage.entries(), before + 1);
    }
}

#[test]
fn on_a_small_screen_too_the_doubt_is_said_before_it_is_written() {
    let mut stage = Stage::sample(Lang::Es).sized(48, 18);
    stage.text("gre-017\n");
    while !stage.frame().contains("Contar gre-017") {
        stage.key(Key::Down);
    }
    let before = stage.entries();
    stage.keys("\n900\n");
    assert_eq!(stage.entries(), before);
    let frame = stage.frame();
    assert!(frame.contains("900 contadas") && frame.contains("Enter otra vez"), "{frame}");
}

#[test]
fn enter_takes_the_only_name_that_fits_and_shows_it_before_it_writes() {
    let mut stage = Stage::sample(Lang::En).sized(80, 24);
    let before = stage.entries();
    opened(&mut stage, "lost", &tray("cof-022"), "count");
    stage.keys("2\n");
    stage.keys("dam");
    assert!(stage.frame().contains("Tab or Enter: damping-off"), "{}", stage.frame());
    stage.keys("\n");
    assert_eq!((stage.entries(), typed(&stage, "cause").as_deref()), (before, Some("damping-off")));
    assert!(stage.frame().contains("dam → damping-off"), "{}", stage.frame());
    stage.keys("\n");
    assert_eq!(stage.entries(), before + 1);
}

#[test]
fn a_name_that_was_typed_back_is_not_taken_for_another_again() {
    let mut stage = Stage::sample(Lang::En).sized(80, 24);
    let before = stage.entries();
    opened(&mut stage, "lost", &tray("cof-022"), "count");
    stage.keys("2\ndam\n");
    stage.key(Key::ClearLine);
    stage.keys("dam\n");
    assert_eq!(stage.entries(), before + 1, "{}", stage.frame());
}

#[test]
fn rows_are_numbers_and_no_date() {
    let mut stage = Stage::sample(Lang::Es).sized(80, 24);
    let before = stage.entries();
    stage.open(&FormFor::about("prepared", Some(&bed("Ridge 2"))).with("task", "weeded").beginning_at("rows"));
    stage.keys("14/3\n");
    assert_eq!(stage.entries(), before);
    assert!(stage.frame().contains("14/3 no nombra hileras"), "{}", stage.frame());
    stage.key(Key::ClearLine);
    stage.keys("1-2\n");
    assert_eq!(stage.entries(), before + 1, "{}", stage.frame());
}

#[test]
fn light_is_typed_in_percent_and_said_in_percent() {
    for said in ["60", "60 %", "0.6", "0,6"] {
        let mut stage = Stage::sample(Lang::En);
        opened(&mut stage, "light_read", &bed("Ridge 4"), "light_share");
        stage.keys(said);
        stage.keys("\n");
        let frame = stage.frame();
        assert!(frame.contains("Saved") && frame.contains("Light 60 %"), "{said}: {frame}");
    }
}

#[test]
fn a_reading_of_light_says_before_enter_what_light_the_bed_will_have_by_its_readings() {
    for (lang, said) in [(Lang::En, "Ridge 1: light "), (Lang::Es, "Ridge 1: luz ")] {
        let mut stage = Stage::sample(lang);
        opened(&mut stage, "light_read", &bed("Ridge 1"), "light_share");
        stage.keys("60");
        let frame = stage.frame();
        assert!(frame.contains(said) && frame.contains("→ 9"), "{frame}");
    }
}

#[test]
fn a_bare_number_among_readings_of_light_is_asked_about_at_once_and_tab_puts_it_into_light() {
    for (lang, asked) in [(Lang::En, "60 %? Tab puts it into"), (Lang::Es, "¿60 %? Tab lo pone en")] {
        let mut stage = Stage::sample(lang);
        opened(&mut stage, "light_read", &bed("Ridge 4"), "readings");
        stage.keys("60");
        assert!(stage.frame().contains(asked), "{}", stage.frame());
        // A pair of lux is no share.
        stage.keys(" 900");
        assert!(!stage.frame().contains(asked), "{}", stage.frame());
        stage.key(Key::ClearLine);
        stage.keys("60");
        stage.key(Key::Tab);
        let before = stage.entries();
        assert_eq!(typed(&stage, "light_share").as_deref(), Some("60"));
        stage.keys("\n");
        assert_eq!(stage.entries(), before + 1, "{}", stage.frame());
    }
}

#[test]
fn a_count_is_typed_beside_what_the_book_says_and_saved_with_its_number() {
    let mut stage = Stage::sample(Lang::Es).sized(80, 24);
    opened(&mut stage, "counted", &tray("cof-022"), "standing");
    assert!(stage.frame().contains("En el libro hay 73 plantas, conteo del"), "{}", stage.frame());
    stage.keys("70\n");
    assert!(stage.frame().contains("Guardado: Contar una bandeja: cof-022: Vivas 70"), "{}", stage.frame());
}

#[test]
fn going_out_begins_with_the_best_bed_and_how_many_go_there() {
    let mut stage = Stage::sample(Lang::En);
    stage.text("jac-006\n");
    stage.keys("o");
    assert_eq!(typed(&stage, "bed").as_deref(), Some("Valley 1"));
    assert!(typed(&stage, "count").is_some_and(|count| !count.is_empty() && count != "0"));
}

#[test]
fn what_is_moved_on_begins_with_a_free_code_and_is_told_what_stays_unknown() {
    let mut stage = Stage::sample(Lang::En);
    stage.text("cof-030\n");
    stage.keys("m");
    assert_eq!(typed(&stage, "how").as_deref(), Some("pricked_out"));
    assert!(typed(&stage, "to").is_some_and(|code| code.starts_with("cof-0")));
    let container = typed(&stage, "container").unwrap_or_default();
    assert!(!container.is_empty(), "{}", stage.frame());
    for _ in 0..8 {
        if matches!(stage.model.layers.last(), Some(Layer::Form(form)) if form.field_with_keys() == Some("container")) {
            break;
        }
        stage.key(Key::Tab);
    }
    stage.key(Key::ClearLine);
    assert!(stage.frame().contains("in what they stand there is not written"), "{}", stage.frame());
}

#[test]
fn a_form_goes_to_the_waiting_time_once_before_it_writes_what_was_used() {
    for (lang, asks) in [(Lang::En, "does its label say to stay away"), (Lang::Es, "dice su etiqueta")] {
        let mut stage = Stage::sample(lang).sized(100, 40);
        let before = stage.entries();
        let tray = Subject::Tray(TrayCode::new("cof-021").unwrap());
        stage.open(&FormFor::about("treated", Some(&tray)).with("with", "copper"));
        stage.key(Key::Enter);
        let at = |stage: &Stage| match stage.model.layers.last() {
            Some(Layer::Form(form)) => form.field_with_keys(),
            _ => None,
        };
        assert_eq!(at(&stage), Some("safe_after_days"), "{}", stage.frame());
        let frame = stage.frame().split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(frame.contains(asks), "{}", stage.frame());
        assert_eq!(stage.entries(), before, "nothing is written yet");
        // With a time it is written; without one, it is written at the second Enter.
        stage.text("7");
        stage.key(Key::Enter);
        assert_eq!(stage.entries(), before + 1, "{}", stage.frame());
        stage.open(&FormFor::about("treated", Some(&tray)).with("with", "mancozeb"));
        stage.keys("\n\n");
        assert_eq!(stage.entries(), before + 2, "{}", stage.frame());
        stage.open(&FormFor::about("treated", Some(&tray)).with("with", "compost"));
        stage.key(Key::Enter);
        assert_eq!(stage.entries(), before + 3, "food of plants has no label: {}", stage.frame());
    }
}

#[test]
fn only_lots_of_the_species_are_offered_for_sowing_again() {
    let mut stage = Stage::sample(Lang::En).sized(100, 40);
    opened(&mut stage, "resown", &tray("cof-031"), "lot");
    let frame = stage.frame();
    assert!(frame.contains("cof-L") && !frame.contains("avo-L"), "{frame}");
}

#[test]
fn the_example_of_a_plan_can_be_typed_as_it_stands() {
    for (lang, plan) in [(Lang::En, "coffee square 3 2"), (Lang::Es, "café cuadrado 3 2")] {
        let mut stage = Stage::sample(lang);
        let before = stage.entries();
        let asked = FormFor { kind: "bed_set".into(), ..FormFor::default() };
        let asked = asked.with("bed", "Ridge 9").with("field", "Ridge").with("length_m", 12).with("width_m", 6);
        stage.open(&asked.beginning_at("plan"));
        assert!(stage.frame().contains(plan), "{}", stage.frame());
        stage.keys(plan);
        stage.keys("\n\n");
        assert_eq!(stage.entries(), before + 1, "{}", stage.frame());
    }
}

#[test]
fn everyday_words_find_what_to_write() {
    let words = [
        (Lang::En, "weed", "prepared"),
        (Lang::En, "died", "lost"),
        (Lang::En, "spray", "treated"),
        (Lang::En, "transplant", "moved_on"),
        (Lang::En, "bench", "place_set"),
        (Lang::En, "manure", "noted"),
        (Lang::Es, "muertas", "lost"),
        (Lang::Es, "murieron", "lost"),
        (Lang::Es, "regar", "watering_set"),
        (Lang::Es, "chapia", "prepared"),
        (Lang::Es, "chapiar", "prepared"),
        (Lang::Es, "fumigar", "treated"),
        (Lang::Es, "abono", "noted"),
        (Lang::Es, "mover", "moved_on"),
        (Lang::Es, "injertar", "grafted"),
        (Lang::Es, "trasplante", "moved_on"),
        (Lang::Es, "lluvia", "weather"),
    ];
    let [mut english, mut spanish] = [Lang::En, Lang::Es].map(Stage::empty);
    for (lang, word, kind) in words {
        let stage = if lang == Lang::En { &mut english } else { &mut spanish };
        stage.key(Key::Esc);
        stage.keys("6n");
        word.chars().for_each(|letter| stage.key(Key::Char(letter)));
        let name = stage.model.wording.kind_name(kind);
        assert!(stage.frame().contains(&name), "{word}: {}", stage.frame());
    }
}

#[test]
fn what_is_wrong_in_a_form_is_said_in_the_words_of_the_form() {
    for (lang, wanted) in [(Lang::En, "Readings or Light is missing."), (Lang::Es, "Falta: Lecturas o Luz.")] {
        let mut stage = Stage::sample(lang).sized(80, 24);
        opened(&mut stage, "light_read", &bed("Ridge 4"), "sky");
        stage.keys("\n");
        let frame = stage.frame();
        assert!(frame.contains(wanted) && !frame.contains("light_"), "{frame}");
    }
}

#[test]
fn a_narrow_screen_shows_one_stop_with_its_deadline_its_care_and_its_load() {
    let mut stage = Stage::sample(Lang::Es).sized(48, 18);
    let out = stage.model.book.round.stops.iter().find(|stop| stop.id.starts_with("go_out")).unwrap();
    let code = out.tray().unwrap().to_string();
    stage.text(&format!("{code}\n"));
    let frame = stage.frame();
    assert!(frame.contains("→ ") && frame.contains(" plantas") && frame.contains("Plazo: "), "{frame}");
    assert!(frame.contains("Cuidado: "), "{frame}");
}

#[test]
fn a_new_book_is_begun_from_its_first_screen_by_enter() {
    let mut stage = Stage::empty(Lang::Es).sized(48, 18);
    assert!(stage.frame().contains("Enter"), "{}", stage.frame());
    stage.keys("\n\n");
    assert!(matches!(stage.model.layers.last(), Some(Layer::Form(form)) if form.kind() == "plants_received"));
}

#[test]
fn what_can_wait_is_in_view_once_it_is_shown_and_the_stop_before_comes_back() {
    let mut stage = Stage::sample(Lang::En).sized(80, 24);
    let before = stage.frame();
    stage.keys("+");
    assert!(stage.frame().contains("Can wait"), "{}", stage.frame());
    stage.keys("-");
    assert_eq!(stage.frame(), before);
}

#[test]
fn on_another_day_nothing_offers_to_be_done() {
    let mut stage = Stage::sample(Lang::En);
    assert!(stage.frame().contains("Enter do it"));
    stage.keys("d+7\n");
    assert!(!stage.frame().contains("Enter do it") && stage.frame().contains("Wed 22 Apr"), "{}", stage.frame());
}

#[test]
fn what_is_set_apart_is_called_by_its_task_and_not_by_a_word_of_ours() {
    for lang in Lang::ALL {
        let mut stage = Stage::sample(lang).sized(80, 24);
        stage.open(&FormFor::about("let_go", None).with("task", "space_out gre-016").with("until", "2026-04-29"));
        let frame = stage.frame();
        assert!(!frame.contains("space_out") && !frame.contains("let_go"), "{frame}");
    }
}

#[test]
fn a_loading_list_is_not_taken_over_by_a_restored_backup() {
    let mut stage = Stage::sample(Lang::En);
    let backup = stage.file_bytes();
    stage.write("counted", &["tray=cof-022", "standing=70"]);
    stage.keys("4o");
    assert!(stage.frame().contains("on the list"), "{}", stage.frame());
    let mut there = stage.again(Lang::En);
    there.keys("4");
    assert!(there.frame().contains("on the list"), "{}", there.frame());
    let mut restored = there.restored(&backup, Lang::En);
    restored.keys("4");
    assert!(!restored.frame().contains("on the list"), "{}", restored.frame());
}

/// The column and row at which a text stands in the frame.
fn place_of(stage: &Stage, text: &str) -> (u16, u16) {
    let frame = stage.frame();
    let (row, line) =
        frame.lines().enumerate().find(|(_, line)| line.contains(text)).unwrap_or_else(|| panic!("{frame}"));
    (line[..line.find(text).unwrap()].chars().count() as u16, row as u16)
}

#[test]
fn a_tap_chooses_screens_lines_and_the_keys_that_are_named() {
    let mut stage = Stage::sample(Lang::En).sized(100, 30);
    let tap = |stage: &mut Stage, text: &str| {
        let (column, row) = place_of(stage, text);
        stage.send(Message::Tap(column, row));
    };
    tap(&mut stage, "2 Trays");
    assert!(stage.frame().contains("What do I have"), "{}", stage.frame());
    tap(&mut stage, "jac-006");
    assert!(stage.frame().contains("Tray jac-006"), "{}", stage.frame());
    tap(&mut stage, "c count");
    assert_eq!(typed(&stage, "tray").as_deref(), Some("jac-006"));
    tap(&mut stage, "Esc: leave it");
    assert!(stage.model.layers.is_empty(), "{}", stage.frame());
    tap(&mut stage, "h help");
    assert!(matches!(stage.model.layers.last(), Some(Layer::Help(_))));
}

#[test]
fn each_nurse_plant_of_a_stop_has_its_own_last_count() {
    let mut stage = Stage::sample(Lang::En);
    let counts = |stop: &&Stop| stop.task == Task::CountNurses;
    let round = stage.model.book.round.clone();
    let due = round.stops.iter().chain(&round.can_wait).find(counts).unwrap();
    if !round.stops.iter().any(|stop| stop.id == due.id) {
        stage.keys("+");
    }
    for _ in 0..60 {
        let at_it = stage.frame().lines().any(|line| line.trim_end().ends_with("Count nurse plants"));
        if at_it && stage.frame().contains(&format!("Bed {}", due.bed().unwrap())) {
            break;
        }
        stage.key(Key::Down);
    }
    let cx = stage.model.context();
    let nurses = cx.book.picture.beds[due.bed().unwrap()].nurses.iter().filter(|nurse| nurse.alive > 0);
    let lines: Vec<String> =
        nurses.map(|nurse| format!("{}: {} plant", cx.species(Some(&nurse.nurse)), nurse.alive)).collect();
    assert!(!lines.is_empty());
    let frame = stage.frame();
    lines.iter().for_each(|line| assert!(frame.contains(line), "{line} is missing in {frame}"));
}

#[test]
fn a_place_that_is_offered_twice_is_said_so_where_it_is_chosen() {
    let mut stage = Stage::sample(Lang::En).sized(80, 30);
    stage.keys("4");
    stage.text("gre-014\n");
    let frame = stage.frame();
    let words = frame.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(words.contains("2 trays (gre-014, gre-017) are offered the same 16 places for grevillea"), "{frame}");
}

#[test]
fn the_keys_are_in_the_field_that_is_written_at_once() {
    let field = |stage: &Stage| match stage.model.layers.last() {
        Some(Layer::Form(form)) => form.field_with_keys(),
        _ => None,
    };
    let mut stage = Stage::sample(Lang::En);
    stage.keys("3");
    for (key, wanted) in
        [("s", "readings"), ("g", "rod_mm"), ("p", "task"), ("c", "alive"), ("l", "count"), ("a", "text")]
    {
        stage.keys(key);
        assert_eq!(field(&stage), Some(wanted), "{key}: {}", stage.frame());
        stage.key(Key::Esc);
    }
    stage.keys("2");
    for (key, wanted) in [("c", "standing"), ("s", "shade_pct"), ("w", "every_days"), ("g", "plants"), ("l", "count")] {
        stage.keys(key);
        assert_eq!(field(&stage), Some(wanted), "{key}: {}", stage.frame());
        stage.key(Key::Esc);
    }
}

#[test]
fn names_that_are_offered_are_told_apart() {
    let mut stage = Stage::sample(Lang::En).sized(80, 24);
    opened(&mut stage, "light_read", &bed("Ridge 4"), "place");
    assert!(stage.frame().contains("bench 1 · bench 2"), "{}", stage.frame());
}
