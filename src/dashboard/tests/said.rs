//! What forms and stops say: of what they are, why they are refused, what was written, what goes with it.

use super::Stage;
use crate::base::{PlaceName, TrayCode};
use crate::dashboard::act::WhyOf;
use crate::dashboard::form::begun;
use crate::dashboard::keys::Key;
use crate::dashboard::layer::{Layer, Why};
use crate::dashboard::message::Message;
use crate::dashboard::update::update;
use crate::nursery::entry::subject::Subject;
use crate::reckon::tray::size::whole_plants;
use crate::wording::Lang;

#[test]
fn hardening_that_begins_offers_to_carry_the_tray_to_more_light() {
    let mut stage = Stage::sample(Lang::En);
    let tray = Subject::Tray("cof-023".parse().unwrap());
    stage.open(&begun("hardening_begun", Some(&tray), &stage.model.context()));
    stage.keys("\n");
    let frame = stage.frame();
    assert!(frame.contains("Carry a tray elsewhere: cof-023") && frame.contains("> Place"), "{frame}");
    // Esc leaves it: it began, and stands where it stood.
    let before = stage.entries();
    stage.keys("\u{1b}");
    assert_eq!(stage.entries(), before);
    assert!(stage.model.layers.is_empty());
}

#[test]
fn a_key_on_the_trays_carries_the_chosen_one_and_brighter_places_are_named_first() {
    let mut stage = Stage::sample(Lang::En);
    stage.keys("2fcof-023\n");
    stage.keys(" ");
    let frame = stage.frame();
    assert!(frame.contains("Carry a tray elsewhere: cof-023") && frame.contains("> Place"), "{frame}");
    let places = frame.lines().find(|line| line.contains(" · ")).unwrap().to_string();
    let light = |name: &str| {
        let picture = &stage.model.book.picture;
        let change = picture.places[&name.parse::<PlaceName>().unwrap()].light_on(picture.day).unwrap();
        change.read.or(change.nominal).unwrap()
    };
    let named: Vec<f64> = places.trim().split(" · ").take(3).map(light).collect();
    assert!(named[0] > 0.3 && named.is_sorted(), "{places}: {named:?}");
    stage.keys("bench 3\n");
    let place = &stage.model.book.picture.trays[&"cof-023".parse::<TrayCode>().unwrap()].place;
    assert_eq!(place.as_ref().unwrap().as_str(), "bench 3");
}

#[test]
fn a_form_that_is_refused_says_whole_why_on_a_small_screen_and_the_keys_are_in_the_field_at_fault() {
    for lang in [Lang::En, Lang::Es] {
        for size in [(48, 18), (80, 24), (40, 12)] {
            let mut stage = Stage::sample(lang).sized(size.0, size.1);
            let about = Subject::Tray("cof-021".parse().unwrap());
            let form = begun("outplanted", Some(&about), &stage.model.context()).with("bed", "Valley 3");
            stage.open(&form);
            stage.keys("4000\n");
            let Some(Layer::Form(form)) = stage.model.layers.last() else { panic!("no form\n{}", stage.frame()) };
            assert_eq!(form.field_with_keys(), Some("count"));
            let frame: String = stage.frame().split_whitespace().collect::<Vec<_>>().join(" ");
            let against = form.against();
            assert!(!against.is_empty());
            // On twelve lines the first of them has room.
            let room = if size.1 > 12 { against.len() } else { 1 };
            for why in &against[..room] {
                let why: String = why.split_whitespace().collect::<Vec<_>>().join(" ");
                assert!(frame.contains(&why), "{size:?}\n{}\n{why}", stage.frame());
            }
        }
    }
}

#[test]
fn what_is_typed_beside_a_stop_in_own_words_is_about_what_it_names_and_seen_whole() {
    for (lang, line) in [(Lang::Es, "murieron 3 gre-014"), (Lang::En, "3 died gre-014")] {
        let mut stage = Stage::sample(lang).sized(48, 18);
        stage.keys("n");
        stage.keys(line);
        stage.keys("\n");
        assert_eq!(typed_in(&stage, "tray"), "gre-014");
        let frame = stage.frame();
        assert!(frame.contains("gre-014") && !frame.contains("cof-030"), "{frame}");
        let ours = |frame: &str| lang == Lang::Es && frame.contains("not said");
        assert!(!ours(&frame), "{frame}");
        assert_eq!(form_on_top(&stage).field_with_keys(), Some("cause"));
        // Enter alone writes it, and nobody is told a word of ours.
        stage.keys("\n");
        assert!(stage.model.layers.is_empty(), "{}", stage.frame());
        assert!(!ours(&stage.frame()), "{}", stage.frame());
    }
}

#[test]
fn letters_typed_in_a_large_figure_are_seen() {
    let mut stage = Stage::sample(Lang::Es).sized(48, 18);
    stage.keys("\n12x");
    assert!(stage.frame().contains("12x_"), "{}", stage.frame());
}

#[test]
fn a_second_enter_before_a_line_is_read_opens_one_form() {
    let mut stage = Stage::sample(Lang::En);
    stage.keys("ncof-021 lost 3");
    // The clerk answers later: both keys are taken in before.
    let first = update(&mut stage.model, Message::Key(Key::Enter));
    let second = update(&mut stage.model, Message::Key(Key::Enter));
    assert!(second.is_empty(), "{second:?}");
    stage.carry_out(first);
    assert_eq!(stage.model.layers.len(), 1);
    // A picker that was closed meanwhile opens nothing.
    stage.keys("\u{1b}ncof-021 lost 4");
    let asked = update(&mut stage.model, Message::Key(Key::Enter));
    stage.keys("\u{1b}");
    stage.carry_out(asked);
    assert!(stage.model.layers.is_empty());
}

#[test]
fn what_is_let_go_is_said_once_and_what_is_set_apart_by_its_task() {
    for (lang, let_go, until) in [
        (Lang::En, "Let go: Prick out cof-030", "let go until 22 Apr"),
        (Lang::Es, "Dejar pasar: Repicar cof-030", "dejada hasta el 22 abr"),
    ] {
        let mut stage = Stage::sample(lang);
        stage.keys("r");
        assert!(stage.frame().contains(let_go), "{}", stage.frame());
        stage.keys("\n");
        let frame = stage.frame();
        let said = frame.lines().rev().nth(1).unwrap().to_string();
        assert!(said.ends_with(until) && said.matches("cof-030").count() == 1, "{said}");
        assert!(frame.lines().filter(|line| line.contains("cof-030")).any(|line| line.contains(until)), "{frame}");
    }
}

#[test]
fn a_stop_done_once_more_says_its_last_result_and_the_one_before() {
    let mut stage = Stage::sample(Lang::En);
    let id = "count gre-017".to_string();
    let go = |stage: &mut Stage| {
        let mut walk = std::mem::take(&mut stage.model.screens.walk);
        walk.go(&id, &stage.model.context());
        stage.model.screens.walk = walk;
    };
    for figure in ["41", "40"] {
        go(&mut stage);
        stage.keys("c");
        stage.keys(figure);
        stage.keys("\n");
        if !stage.model.layers.is_empty() {
            stage.keys("\n");
        }
    }
    go(&mut stage);
    let frame = stage.frame();
    assert!(frame.contains("Living 40 (before: Living 41)"), "{frame}");
}

#[test]
fn help_says_what_every_sign_of_a_screen_means() {
    for lang in [Lang::En, Lang::Es] {
        for (digit, signs) in [("1", "!√~>-"), ("2", ".,iIH●▲?+x"), ("3", "_n○d■+?")] {
            let mut stage = Stage::sample(lang).sized(80, 90);
            stage.keys(digit);
            stage.keys("h");
            let frame = stage.frame();
            for sign in signs.chars() {
                let told = frame.lines().any(|line| line.trim_start().starts_with(&format!("{sign} ")));
                assert!(told, "{sign} on screen {digit}\n{frame}");
            }
        }
    }
}

#[test]
fn every_stop_says_in_one_sentence_what_is_lost_on_every_face() {
    for lang in [Lang::En, Lang::Es] {
        let stage = Stage::sample(lang);
        let (cx, wording) = (stage.model.context(), &stage.model.wording);
        let walk = &stage.model.screens.walk;
        let round = &stage.model.book.round;
        for shown in walk.shown(&cx) {
            let stop = round.stops.iter().find(|stop| stop.id == shown.id).unwrap();
            let lost = wording.lost_without_stop(stop);
            assert!(!lost.is_empty() && wording.or_else_lost(stop).ends_with(&lost), "{lost}");
            let told = walk.told(&shown, &cx);
            assert!(told.iter().any(|line| line.ends_with(&lost)), "{told:?}\n{lost}");
        }
    }
}

#[test]
fn as_many_plants_are_said_to_be_likely_as_are_offered_to_a_bed() {
    let stage = Stage::sample(Lang::En);
    let picture = &stage.model.book.picture;
    let mut uneven = 0;
    for tray in picture.trays.values().filter(|tray| tray.standing > 0) {
        let offered = whole_plants(tray.plantable.likely);
        let said = stage.model.wording.plants_range(tray.plantable);
        let ends = [format!("likely {offered}"), format!("{offered} plants"), format!("{offered} plant")];
        assert!(ends.iter().any(|end| said.ends_with(end.as_str())), "{}: {said} of {:?}", tray.code, tray.plantable);
        uneven += usize::from(tray.plantable.likely.fract() >= 0.5);
    }
    assert!(uneven > 0, "no tray of the sample tells rounding from rounding down");
}

/// Everything of the sample that reasons can be asked of.
fn all_reasons(stage: &Stage) -> Vec<WhyOf> {
    let picture = &stage.model.book.picture;
    let round = &stage.model.book.round;
    let trays = picture.trays.keys().map(|tray| WhyOf::About(Subject::Tray(tray.clone())));
    let beds = picture.beds.keys().map(|bed| WhyOf::About(Subject::Bed(bed.clone())));
    let lots = picture.lots.keys().map(|lot| WhyOf::About(Subject::Lot(lot.clone())));
    let pairs = picture.pairs.iter().map(|pair| WhyOf::Pair(pair.tray.clone(), pair.bed.clone()));
    let stops = round.stops.iter().chain(&round.can_wait).map(|stop| WhyOf::Stop(stop.id.clone()));
    trays.chain(beds).chain(lots).chain(pairs).chain(stops).collect()
}

#[test]
fn reasons_say_first_what_holds_and_what_to_do_and_statistics_only_where_all_is_asked_for() {
    /// Words of those who reckon, in both languages.
    const OF_STATISTICS: [&str; 12] = [
        "probit", "Kaplan", "beta", "ogístic", "ogistic", "Gompertz", "sigma", "binomi", "fórmula", "formula",
        "fuente ", "source ",
    ];
    for lang in [Lang::En, Lang::Es] {
        let mut stage = Stage::sample(lang).sized(48, 300);
        let all = all_reasons(&stage);
        assert!(all.len() > 150, "{}", all.len());
        for of in all.into_iter().step_by(2) {
            stage.model.layers.push(Layer::Why(Why::new(of.clone())));
            let frame = stage.frame();
            let said: Vec<&str> = frame.lines().skip(2).take_while(|line| !line.starts_with("q ")).collect();
            for word in OF_STATISTICS {
                assert!(!frame.contains(word), "{of:?}: {word}\n{frame}");
            }
            // What holds back stands before what is only known.
            let first = |sign: &str| said.iter().position(|line| line.starts_with(sign));
            if let (Some(met), Some(holds)) = (first("+ "), said.iter().rposition(|line| line.starts_with("x "))) {
                let one_bed = matches!(&of, WhyOf::About(Subject::Tray(_)) | WhyOf::Pair(..));
                assert!(!one_bed || holds < met, "{of:?}\n{frame}");
            }
            stage.model.layers.pop();
        }
    }
}

#[test]
fn what_the_key_for_all_reasons_adds_is_in_view_on_a_small_screen() {
    for lang in [Lang::En, Lang::Es] {
        let mut stage = Stage::sample(lang).sized(48, 18);
        for of in all_reasons(&stage).into_iter().step_by(5) {
            stage.model.layers.push(Layer::Why(Why::new(of.clone())));
            let lines = |stage: &Stage| -> Vec<String> {
                stage.frame().lines().skip(2).take(13).map(str::to_string).filter(|line| !line.is_empty()).collect()
            };
            let before = lines(&stage);
            stage.keys("a");
            let after = lines(&stage);
            assert_ne!(before, after, "{of:?}");
            stage.keys("a");
            assert_eq!(lines(&stage), before, "{of:?}");
            stage.model.layers.pop();
        }
    }
}

/// The form that lies on top.
fn form_on_top(stage: &Stage) -> &crate::dashboard::form::Form {
    match stage.model.layers.last() {
        Some(Layer::Form(form)) => form,
        _ => panic!("no form\n{}", stage.frame()),
    }
}

fn typed_in(stage: &Stage, field: &str) -> String {
    form_on_top(stage).fields().into_iter().find(|(one, _)| one.name == field).unwrap().1
}

#[test]
fn a_line_with_something_missing_opens_its_form_with_that_field_empty_and_the_keys_in_it() {
    for (lang, line) in [(Lang::Es, "apartar gre-014"), (Lang::En, "hold gre-014")] {
        let mut stage = Stage::sample(lang).sized(48, 18);
        stage.keys("n");
        stage.keys(line);
        // The line is refused, and the one that may be meant is taken.
        stage.keys("\n\n");
        let form = form_on_top(&stage);
        assert_eq!((form.kind(), form.field_with_keys()), ("held", Some("why")), "{line}");
        assert_eq!((typed_in(&stage, "tray").as_str(), typed_in(&stage, "why").as_str()), ("gre-014", ""), "{line}");
        assert!(!stage.frame().contains("..."), "{}", stage.frame());
        // Enter alone writes no reason that nobody gave.
        stage.keys("\n");
        assert!(!stage.model.layers.is_empty(), "{}", stage.frame());
    }
}

#[test]
fn the_reason_of_a_hold_is_in_view_before_it_is_written() {
    for (lang, line) in [(Lang::Es, "apartar gre-014 por manchas raras"), (Lang::En, "hold gre-014, odd spots")] {
        let mut stage = Stage::sample(lang).sized(48, 18);
        stage.keys("n");
        stage.keys(line);
        stage.keys("\n");
        let why = typed_in(&stage, "why");
        assert!(!why.is_empty(), "{line}");
        assert!(stage.frame().contains(&why) && stage.frame().contains("gre-014"), "{}", stage.frame());
    }
}

#[test]
fn what_is_said_of_everything_is_read_as_a_line_and_opens_no_form_of_the_chosen_tray() {
    for (lang, line) in [(Lang::Es, "regué todo"), (Lang::En, "watered everything")] {
        let mut stage = Stage::sample(lang).sized(48, 18);
        stage.keys("n");
        stage.keys(line);
        stage.keys("\n");
        let is_of_a_tray = matches!(stage.model.layers.last(), Some(Layer::Form(form)) if form.kind() != "noted");
        assert!(!is_of_a_tray, "{}", stage.frame());
        assert!(stage.frame().contains(line), "{}", stage.frame());
    }
}

#[test]
fn why_and_writing_are_named_on_the_round_of_a_phone() {
    for lang in [Lang::En, Lang::Es] {
        let stage = Stage::sample(lang).sized(48, 18);
        let frame = stage.frame();
        let keys: Vec<&str> = frame.lines().rfind(|line| !line.trim().is_empty()).unwrap().split(' ').collect();
        for key in ["y", "n", "q", "h"] {
            assert!(keys.contains(&key), "{frame}");
        }
    }
}
