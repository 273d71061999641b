//! Every kind that can be written has a form: found by its word, filled key by key, its effect shown, written and said.

use super::Stage;
use crate::dashboard::act::FormFor;
use crate::dashboard::keys::Key;
use crate::dashboard::layer::Layer;
use crate::dashboard::message::{Message, Request};
use crate::nursery::entry::all_kinds;
use crate::wording::Lang;

/// What is typed into each form, by field; the names are those of the sample nursery.
const TYPED: &[(&str, &[(&str, &str)])] = &[
    (
        "nursery_set",
        &[
            ("name", "Tumbaro"),
            ("latitude_deg", "-3,2"),
            ("longitude_deg", "36.7"),
            ("altitude_m", "1600"),
            ("utc_offset_h", "3"),
        ],
    ),
    ("season_set", &[("rains", "03-10 05-25; 10-20 12-20")]),
    ("species_set", &[("species", "avocado"), ("profile", "plantable_least_days=150")]),
    ("place_set", &[("place", "new bench"), ("order", "11"), ("shade_pct", "40")]),
    ("container_set", &[("container", "tin 1 l"), ("volume_ml", "1000")]),
    ("field_set", &[("field", "Ridge"), ("slope_pct", "12,5")]),
    (
        "bed_set",
        &[("bed", "Ridge 9"), ("field", "Ridge"), ("length_m", "12"), ("width_m", "6"), ("plan", "COA square 2 2")],
    ),
    ("positions_blocked", &[("bed", "School 1"), ("at", "1.1"), ("why", "a rock")]),
    (
        "lot_received",
        &[
            ("lot", "avo-L77"),
            ("species", "avocado"),
            ("source", "the mill"),
            ("collected", "-2"),
            ("seeds", "40"),
            ("kept", "washed_moist"),
        ],
    ),
    ("lot_kept", &[("lot", "cof-L01"), ("kept", "cold")]),
    ("lot_counted", &[("lot", "cof-L01"), ("seeds", "12")]),
    ("lot_tested", &[("lot", "cof-L01"), ("replicates", "5 4; 5 3"), ("days", "30")]),
    (
        "sown",
        &[("tray", "avo-777"), ("lot", "unknown"), ("seeds", "5"), ("species", "avocado"), ("container", "bag 2 l")],
    ),
    ("resown", &[("tray", "avo-015"), ("lot", "unknown"), ("seeds", "3")]),
    (
        "plants_received",
        &[("tray", "avo-778"), ("species", "avocado"), ("count", "9"), ("from", "gift"), ("form", "bag")],
    ),
    ("counted", &[("tray", "cof-022"), ("standing", "70")]),
    ("lost", &[("tray", "cof-022"), ("count", "2"), ("cause", "rats")]),
    ("culled", &[("tray", "cof-022"), ("count", "1"), ("why", "forked")]),
    (
        "moved_on",
        &[("from", "cof-022"), ("to", "cof-779"), ("count", "10"), ("how", "potted_on"), ("container", "bag 2 l")],
    ),
    ("carried", &[("tray", "cof-022"), ("place", "line 1")]),
    ("measured", &[("tray", "cof-022"), ("plants", "24,5 3.1; 22 2.8")]),
    ("plug_checked", &[("tray", "cof-022"), ("roots", "holds")]),
    ("roots_cut", &[("tray", "cof-022")]),
    ("grafted", &[("tray", "avo-015"), ("count", "2"), ("variety", "the chapel's tree")]),
    ("flushed", &[("tray", "cof-022")]),
    ("shade_set", &[("tray", "cof-022"), ("shade_pct", "30")]),
    ("watering_set", &[("tray", "cof-022"), ("every_days", "2")]),
    ("hardening_begun", &[("tray", "cof-023"), ("for_bed", "School 1")]),
    ("held", &[("tray", "cof-022"), ("why", "promised to the school")]),
    ("released", &[("tray", "cof-022")]),
    ("pest_seen", &[("tray", "cof-022"), ("what", "leaf miner"), ("share_pct", "5")]),
    ("treated", &[("tray", "cof-022"), ("with", "soap"), ("safe_after_days", "1")]),
    ("stocktaken", &[("tray", "cof-022"), ("standing", "69")]),
    ("given_out", &[("tray", "cof-022"), ("count", "3"), ("to", "the chapel")]),
    ("relabelled", &[("tray", "cof-780"), ("was", "cof-022")]),
    ("sown_in_bed", &[("bed", "Valley 2"), ("species", "jackfruit"), ("seeds_per_hole", "2"), ("holes", "3")]),
    ("plants_found", &[("bed", "Valley 2"), ("species", "jackfruit"), ("alive", "2")]),
    (
        "nurse_planted",
        &[("bed", "Valley 2"), ("nurse", "pigeon pea"), ("count", "10"), ("row_m", "2"), ("in_row_m", "1")],
    ),
    ("nurse_counted", &[("bed", "School 1"), ("nurse", "pigeon pea"), ("alive", "1")]),
    ("nurse_measured", &[("bed", "School 1"), ("nurse", "pigeon pea"), ("height_m", "2,1"), ("crown_radius_m", "0.8")]),
    ("nurse_cut", &[("bed", "School 1"), ("nurse", "pigeon pea"), ("what", "leaves"), ("share", "0.3")]),
    ("light_read", &[("bed", "School 1"), ("readings", "30000 50000; 31000 51000"), ("sky", "overcast")]),
    ("soil_checked", &[("bed", "School 1"), ("resistance_mpa", "1,1"), ("wet", "true")]),
    ("plants_watered", &[("bed", "School 1"), ("count", "12"), ("litres_each", "3")]),
    ("prepared", &[("bed", "School 1"), ("task", "weeded")]),
    ("outplanted", &[("tray", "cof-022"), ("bed", "School 1"), ("count", "10")]),
    ("plants_lost", &[("bed", "School 1"), ("species", "coffee"), ("count", "1"), ("cause", "goats")]),
    ("survival_counted", &[("bed", "School 3"), ("species", "coffee"), ("alive", "38"), ("dead", "0")]),
    ("weather", &[("rain_mm", "4,5")]),
    ("settled", &[("what", "restored")]),
    ("noted", &[("about", "cof-022"), ("text", "moved the net")]),
    ("let_go", &[("task", "count cof-022"), ("until", "+0")]),
];

/// Types a value into the field that has the keys, whatever its shape.
fn fill(stage: &mut Stage, wanted: &str, value: &str) {
    for _ in 0..40 {
        let Some(Layer::Form(form)) = stage.model.layers.last() else { panic!("no form is open") };
        if form.field_with_keys() == Some(wanted) {
            break;
        }
        stage.key(Key::Tab);
    }
    let choices = match stage.model.layers.last() {
        Some(Layer::Form(form)) => form.choices_with_keys(),
        _ => Vec::new(),
    };
    if let Some(at) = choices.iter().position(|choice| *choice == value) {
        (0..=at).for_each(|_| stage.key(Key::Right));
        return;
    }
    for part in value.split("; ") {
        part.chars().for_each(|letter| stage.key(Key::Char(letter)));
        // A row of a list goes in by Enter of its own.
        if matches!(wanted, "rains" | "plan" | "plants" | "replicates" | "readings") {
            stage.key(Key::Enter);
        }
    }
}

#[test]
fn every_kind_is_found_by_its_word_and_written_through_its_form() {
    for (kind, fields) in TYPED {
        let mut stage = Stage::sample(Lang::En).sized(80, 24);
        let before = stage.entries();
        let name = stage.model.wording.kind_name(kind);
        stage.keys("n");
        name.chars().for_each(|letter| stage.key(Key::Char(letter)));
        stage.keys("\n");
        let Some(Layer::Form(form)) = stage.model.layers.last() else { panic!("{kind} is not found as {name:?}") };
        assert_eq!(form.kind(), *kind, "found as {name:?}");
        fields.iter().for_each(|(field, value)| fill(&mut stage, field, value));
        let shown = stage.frame();
        stage.keys("\n");
        // Nothing is missing in this book, so what settles a loss is asked about once.
        if *kind == "settled" && stage.entries() == before {
            stage.keys("\n");
        }
        assert_eq!(stage.entries(), before + 1, "{kind}:\n{shown}\nthen:\n{}", stage.frame());
        assert!(stage.frame().contains("Saved"), "{kind}:\n{}", stage.frame());
        // Hardening that begins goes on with the tray carried to the light.
        let open = stage.model.layers.iter().filter(|_| *kind != "hardening_begun").count();
        assert_eq!(open, 0, "{kind}:\n{}", stage.frame());
    }
}

#[test]
fn no_kind_is_without_a_form_in_the_list_above() {
    let tried: Vec<&str> = TYPED.iter().map(|(kind, _)| *kind).collect();
    let missing: Vec<&str> =
        all_kinds().map(|known| known.kind).filter(|kind| *kind != "withdrawn" && !tried.contains(kind)).collect();
    assert_eq!(missing, Vec::<&str>::new());
}

#[test]
fn what_it_does_is_shown_before_enter() {
    let mut stage = Stage::sample(Lang::En).sized(80, 24);
    stage.keys("2");
    let asked =
        FormFor::about("counted", Some(&crate::nursery::entry::subject::Subject::Tray("cof-022".parse().unwrap())));
    stage.open(&asked);
    stage.keys("70");
    assert!(stage.frame().contains("cof-022: 73 living"), "{}", stage.frame());
    assert!(stage.frame().contains("70 living"), "{}", stage.frame());
}

#[test]
fn what_cannot_be_is_refused_in_words_and_nothing_typed_is_lost() {
    let mut stage = Stage::sample(Lang::En).sized(80, 24);
    let before = stage.entries();
    let asked =
        FormFor::about("lost", Some(&crate::nursery::entry::subject::Subject::Tray("cof-022".parse().unwrap())));
    stage.open(&asked);
    stage.keys("7300");
    fill(&mut stage, "cause", "rats");
    stage.keys("\n");
    assert_eq!(stage.entries(), before);
    let frame = stage.frame();
    assert!(frame.contains("7300") && frame.contains("73"), "{frame}");
    assert!(matches!(stage.model.layers.last(), Some(Layer::Form(_))));
}

#[test]
fn a_missing_field_is_named_and_gets_the_keys() {
    let mut stage = Stage::sample(Lang::Es).sized(48, 18);
    stage.open(&FormFor { kind: "lost".into(), ..FormFor::default() });
    fill(&mut stage, "count", "3");
    stage.keys("\n");
    let Some(Layer::Form(form)) = stage.model.layers.last() else { panic!("the form is closed") };
    assert_eq!(form.field_with_keys(), Some("tray"));
}

#[test]
fn esc_keeps_what_was_typed_and_the_same_form_has_it_again() {
    let mut stage = Stage::sample(Lang::En).sized(80, 24);
    let asked =
        FormFor::about("counted", Some(&crate::nursery::entry::subject::Subject::Tray("cof-022".parse().unwrap())));
    stage.open(&asked);
    stage.keys("7");
    stage.key(Key::Esc);
    assert!(stage.model.layers.is_empty());
    stage.open(&asked);
    stage.keys("0\n");
    let written = stage.model.book.picture.trays.values().find(|tray| tray.code.as_str() == "cof-022").unwrap();
    assert_eq!(written.standing, 70);
}

#[test]
fn every_form_is_drawn_at_every_size_with_the_field_that_has_the_keys_in_view() {
    for lang in Lang::ALL {
        let mut stage = Stage::sample(lang);
        for known in all_kinds().filter(|known| known.kind != "withdrawn") {
            for (columns, rows) in [(120, 40), (80, 24), (48, 18), (40, 12)] {
                stage = stage.sized(columns, rows);
                stage.open(&FormFor { kind: known.kind.into(), ..FormFor::default() });
                for _ in 0..known.fields.len() + 1 {
                    let frame = stage.frame();
                    assert!(frame.lines().any(|line| line.trim_start().starts_with('>')), "{}:\n{frame}", known.kind);
                    stage.key(Key::Tab);
                }
                stage.key(Key::Esc);
            }
        }
    }
}

#[test]
fn a_key_pressed_twice_takes_nothing_back() {
    let mut stage = Stage::sample(Lang::En);
    let before = stage.entries();
    for key in ['u', 'r', 'w', 'n', 'q', 'y', 'x'] {
        stage.keys("7");
        stage.keys(&key.to_string().repeat(2));
        while !stage.model.layers.is_empty() {
            stage.key(Key::Esc);
        }
    }
    assert_eq!(stage.entries(), before);
}

#[test]
fn undo_says_in_words_what_it_takes_back_and_w_does_it() {
    let mut stage = Stage::sample(Lang::En).sized(80, 24);
    let before = stage.entries();
    let asked =
        FormFor::about("counted", Some(&crate::nursery::entry::subject::Subject::Tray("cof-022".parse().unwrap())));
    stage.open(&asked);
    stage.keys("70\n");
    stage.keys("u");
    assert!(stage.frame().contains("cof-022 counted: 70 living"), "{}", stage.frame());
    stage.keys("w");
    assert_eq!(stage.entries(), before + 2);
    assert_eq!(stage.model.book.picture.trays.values().find(|t| t.code.as_str() == "cof-022").unwrap().standing, 73);
}

#[test]
fn nothing_unseen_from_a_form_reaches_the_book_or_the_screen() {
    let mut stage = Stage::sample(Lang::En).sized(80, 24);
    stage.open(&FormFor { kind: "noted".into(), begin_at: Some("text".into()), ..FormFor::default() });
    stage.send(Message::Text("a\u{202e}b\u{1b}]52;c;x\u{7}\u{200b}c\u{e0041}".into()));
    for cell in &stage.buffer().content {
        assert!(!crate::base::text::has_unseen(cell.symbol()), "{:?}", cell.symbol());
    }
    stage.keys("\n");
    stage.keys("7");
    stage.send(Message::Key(Key::Home));
    assert!(stage.frame().contains("ab]52;c;xc"), "{}", stage.frame());
}

#[test]
fn only_the_last_of_several_trials_is_asked() {
    let mut stage = Stage::sample(Lang::En);
    let asked =
        FormFor::about("counted", Some(&crate::nursery::entry::subject::Subject::Tray("cof-022".parse().unwrap())));
    let effects = stage.effects_of_opening(&asked);
    assert!(
        effects.iter().all(|effect| !matches!(effect, crate::dashboard::message::Effect::Ask(Request::Record { .. })))
    );
}

#[test]
fn what_is_about_one_thing_only_takes_what_is_typed_and_gives_the_first_back() {
    let mut stage = Stage::sample(Lang::En);
    let tray = crate::nursery::entry::subject::Subject::Tray(crate::base::TrayCode::new("cof-022").unwrap());
    let mut asked = FormFor::about("shade_set", Some(&tray)).with("shade_pct", 40);
    asked.begin_at = Some("place".to_string());
    stage.open(&asked);
    let typed = |stage: &Stage| match stage.model.layers.last() {
        Some(Layer::Form(form)) => form.to_keep().map(|kept| kept.typed).unwrap_or_default(),
        _ => panic!("no form is open"),
    };
    stage.keys("bench 1");
    assert!(!typed(&stage).iter().any(|(name, _)| name == "tray"), "{:?}", typed(&stage));
    (0..7).for_each(|_| stage.key(Key::Backspace));
    stage.keys("\t");
    stage.key(Key::BackTab);
    assert!(stage.frame().contains("cof-022"), "{}", stage.frame());
    stage.keys("bench 1\n");
    assert!(stage.frame().contains("Saved: A step of the shade: bench 1"), "{}", stage.frame());
}

/// Words with a number among them are no word of a kind: they are read as a line, and the form that opens is filled.
#[test]
fn a_line_in_own_words_opens_its_form_filled_in() {
    let mut stage = Stage::sample(Lang::En);
    let before = stage.entries();
    stage.keys("n");
    stage.text("lost 2 cof-022, rats");
    stage.key(Key::Enter);
    let Some(Layer::Form(form)) = stage.model.layers.last() else { panic!("no form:\n{}", stage.frame()) };
    assert_eq!(form.kind(), "lost");
    let typed: Vec<String> = form.fields().into_iter().map(|(_, value)| value).collect();
    assert_eq!(typed, ["cof-022", "2", "rats"]);
    assert_eq!(stage.entries(), before, "nothing is written before the form is");
    stage.key(Key::Esc);
    // What was not done is not taken, and says so; what may mean several things offers its lines.
    stage.keys("n");
    stage.text("cof-022 2 not lost");
    stage.key(Key::Enter);
    assert!(stage.frame().contains("not done"), "{}", stage.frame());
    stage.key(Key::Esc);
    stage.keys("n");
    stage.text("cof-0222 lost 2");
    stage.key(Key::Enter);
    assert!(stage.frame().contains("> cof-022 -2"), "{}", stage.frame());
    stage.key(Key::Enter);
    assert!(matches!(stage.model.layers.last(), Some(Layer::Form(_))), "{}", stage.frame());
    assert_eq!(stage.entries(), before);
}

#[test]
fn a_full_disk_is_told_with_the_name_of_the_file() {
    use crate::dashboard::message::{Answer, Message};
    use crate::desk::{DeskError, JournalError};
    for lang in Lang::ALL {
        let mut stage = Stage::sample(lang);
        let fault = DeskError::Journal(JournalError::Full);
        stage.send(Message::Answer(Box::new(Answer::Refused { ticket: 1, fault })));
        let said = stage.model.notice.as_ref().map(|notice| notice.text.clone()).unwrap_or_default();
        assert!(said.contains("sample.outplant"), "{said}");
    }
}

#[test]
fn what_was_foretold_of_what_stood_there_before_is_not_shown_beside_what_cannot_be_read() {
    let mut stage = Stage::sample(Lang::En);
    let tray = crate::nursery::entry::subject::Subject::Tray(crate::base::TrayCode::new("cof-021").unwrap());
    stage.open(&FormFor::about("counted", Some(&tray)).beginning_at("standing"));
    // The answers about 8 and 88 come after the letter was typed.
    let mut late = Vec::new();
    for key in [Key::Char('8'), Key::Char('8'), Key::Char('x')] {
        late.extend(crate::dashboard::update::update(&mut stage.model, Message::Key(key)));
    }
    stage.carry_out(late);
    let foretold = stage.model.wording.form_effect();
    assert!(!stage.frame().contains(&foretold), "{}", stage.frame());
    stage.key(Key::Backspace);
    assert!(stage.frame().contains(&foretold) && stage.frame().contains("88 living"), "{}", stage.frame());
}

#[test]
fn a_place_that_nobody_knows_is_said_as_new_with_the_nearest_and_wants_a_second_enter() {
    for (lang, said) in [(Lang::En, "would be a new place"), (Lang::Es, "sería un lugar nuevo")] {
        for (columns, rows) in [(120, 40), (80, 24), (48, 18)] {
            let mut stage = Stage::sample(lang).sized(columns, rows);
            let before = stage.entries();
            let subject = crate::nursery::entry::subject::Subject::Tray("cof-022".parse().unwrap());
            stage.open(&FormFor::about("carried", Some(&subject)));
            fill(&mut stage, "place", "line 11");
            stage.keys("\n");
            let frame = stage.frame().split_whitespace().collect::<Vec<_>>().join(" ");
            assert_eq!(stage.entries(), before, "{frame}");
            assert!(frame.contains(said) && frame.contains("line 1"), "{frame}");
            stage.keys("\n");
            assert_eq!(stage.entries(), before + 1, "{}", stage.frame());
        }
    }
}

#[test]
fn a_container_that_nobody_knows_is_said_as_new_and_one_that_is_known_is_not() {
    let mut stage = Stage::sample(Lang::En).sized(80, 24);
    let before = stage.entries();
    let subject = crate::nursery::entry::subject::Subject::Tray("cof-022".parse().unwrap());
    stage.open(&FormFor::about("moved_on", Some(&subject)));
    for (field, value) in [("to", "cof-790"), ("count", "5"), ("how", "potted_on"), ("container", "bag 7 l")] {
        fill(&mut stage, field, value);
    }
    stage.keys("\n");
    assert_eq!(stage.entries(), before, "{}", stage.frame());
    assert!(stage.frame().contains("new kind of container"), "{}", stage.frame());
}

#[test]
fn q_is_a_letter_where_text_is_typed_and_esc_closes() {
    for (lang, line) in [(Lang::En, "q1 quit"), (Lang::Es, "quedan 3")] {
        for open in ["n", "f"] {
            let mut stage = Stage::sample(lang).sized(80, 24);
            stage.keys(open);
            assert!(stage.frame().contains("Esc"), "{}", stage.frame());
            line.chars().for_each(|letter| stage.key(Key::Char(letter)));
            assert!(stage.frame().contains(&format!("> {line}")), "{open}: {}", stage.frame());
            stage.key(Key::Esc);
            assert!(stage.model.layers.is_empty());
        }
    }
}

#[test]
fn a_figure_takes_the_place_of_the_day_a_form_began_with() {
    let mut stage = Stage::sample(Lang::En).sized(80, 24);
    stage.keys("r5");
    let frame = stage.frame();
    let line = frame.lines().find(|line| line.trim_start().starts_with('>')).unwrap();
    assert!(line.trim_end().ends_with(" 5"), "{frame}");
}

#[test]
fn a_reading_of_light_far_from_those_before_wants_a_second_enter() {
    let mut stage = Stage::sample(Lang::En).sized(80, 24);
    let far = |bed: &crate::reckon::picture::BedPicture| bed.light_now.as_ref().is_some_and(|light| light.share > 0.8);
    let bright = stage.model.book.picture.beds.values().find(|bed| far(bed)).unwrap().name.clone();
    let before = stage.entries();
    stage.open(&FormFor::about("light_read", Some(&crate::nursery::entry::subject::Subject::Bed(bright))));
    fill(&mut stage, "light_share", "20");
    stage.keys("\n");
    assert_eq!(stage.entries(), before, "{}", stage.frame());
    stage.keys("\n");
    assert_eq!(stage.entries(), before + 1, "{}", stage.frame());
}

#[test]
fn of_nurse_plants_only_those_of_the_bed_are_offered() {
    let mut stage = Stage::sample(Lang::En).sized(120, 40);
    stage.open(&FormFor::about(
        "nurse_counted",
        Some(&crate::nursery::entry::subject::Subject::Bed("School 1".parse().unwrap())),
    ));
    for _ in 0..10 {
        let Some(Layer::Form(form)) = stage.model.layers.last() else { panic!("no form is open") };
        if form.field_with_keys() == Some("nurse") {
            break;
        }
        stage.key(Key::Tab);
    }
    let frame = stage.frame();
    assert!(frame.contains("pigeon pea") && !frame.contains("avocado"), "{frame}");
}
