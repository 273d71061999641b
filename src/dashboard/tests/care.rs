//! What could hurt somebody is said where the work is proposed and where it is written down.

use std::collections::BTreeSet;

use serde_json::json;

use super::{Stage, TODAY};
use crate::base::word::Word;
use crate::base::{SpeciesKey, TrayCode};
use crate::dashboard::act::{FormFor, WhyOf};
use crate::dashboard::form::Form;
use crate::dashboard::keys::Key;
use crate::dashboard::layer::{Layer, Why};
use crate::nursery::caution::Caution;
use crate::nursery::entry::subject::Subject;
use crate::nursery::envelope::Draft;
use crate::nursery::species::{Catalogue, Profile};
use crate::reckon::round::Task;
use crate::wording::Lang;

/// Every species that can harm, or of which nobody wrote it, in a tray of its own.
fn dangerous() -> (Stage, Vec<(TrayCode, SpeciesKey)>) {
    let catalogue = Catalogue::built_in();
    let harms = |profile: &Profile| profile.dangers().is_none_or(|dangers| !dangers.is_empty());
    let all = catalogue.iter().filter(|(_, profile)| harms(profile));
    let keys: Vec<SpeciesKey> = all.map(|(key, _)| key.clone()).collect();
    assert!(keys.len() > 50);
    let draft = |kind: &str, body: serde_json::Value| Draft {
        happened: TODAY.parse().unwrap(),
        clock: None,
        who: "mara".into(),
        kind: kind.into(),
        body: body.as_object().unwrap().clone(),
    };
    let place =
        json!({"name": "Hill", "latitude_deg": -1.2, "longitude_deg": 36.0, "altitude_m": 1650, "utc_offset_h": 3});
    let mut drafts = vec![draft("nursery_set", place)];
    let mut trays = Vec::new();
    for (number, key) in (1..).zip(keys) {
        let code = format!("tr-{number:03}");
        drafts.push(draft(
            "plants_received",
            json!({"tray": code, "species": key, "count": 20, "from": "bought", "form": "plug", "age_days": 400,
                "source": "market", "place": "bench"}),
        ));
        trays.push((TrayCode::new(&code).unwrap(), key));
    }
    (Stage::of(Lang::En, drafts), trays)
}

/// Walks to a stop.
fn go_to(stage: &mut Stage, id: &str) {
    stage.key(Key::Home);
    while stage.model.screens.walk.here(&stage.model.context()).unwrap().id != id {
        stage.key(Key::Down);
    }
}

/// Letters alone: lines are broken anywhere.
fn run_together(text: &str) -> String {
    text.chars().filter(|letter| !letter.is_whitespace()).collect()
}

#[test]
fn a_plant_that_can_harm_says_so_at_its_stop_on_its_form_and_under_why() {
    let (mut stage, trays) = dangerous();
    stage = stage.sized(100, 400);
    let mut at_stops = BTreeSet::new();
    for (tray, key) in &trays {
        let cx = stage.model.context();
        let danger = cx.wording.plant_danger(key, &cx.book.picture.site.species).unwrap();
        let form = Form::open(&FormFor::about("counted", Some(&Subject::Tray(tray.clone())))).unwrap();
        assert!(form.care(&cx).iter().any(|(_, line)| *line == danger), "{tray}: {danger}");
        let round = &cx.book.round;
        for stop in round.stops.iter().chain(&round.can_wait).filter(|stop| stop.tray() == Some(tray)) {
            assert_eq!(stop.plants_handled(&cx.book.picture), std::slice::from_ref(key));
            at_stops.insert(tray.clone());
        }
        let why = Layer::Why(Why::new(WhyOf::About(Subject::Tray(tray.clone()))));
        stage.model.layers.push(why);
        assert!(run_together(&stage.frame()).contains(&run_together(&danger)), "{tray}: {danger}");
        stage.model.layers.clear();
    }
    assert!(at_stops.len() > 10, "{at_stops:?}");
    // The chosen stop shows it.
    stage.model.layers.clear();
    let stage = {
        let mut stage = stage.sized(70, 120);
        while stage
            .model
            .screens
            .walk
            .here(&stage.model.context())
            .is_some_and(|stop| !matches!(stop.subject, Subject::Tray(_)))
        {
            stage.key(Key::Down);
        }
        stage
    };
    let cx = stage.model.context();
    let here = stage.model.screens.walk.here(&cx).unwrap();
    let (_, key) = trays.iter().find(|(tray, _)| Subject::Tray(tray.clone()) == here.subject).unwrap();
    let danger = cx.wording.plant_danger(key, &cx.book.picture.site.species).unwrap();
    assert!(run_together(&stage.frame()).contains(&run_together(&danger)), "{}", stage.frame());
}

#[test]
fn the_caution_of_a_task_stands_at_its_stop_and_on_the_form_it_opens_in_both_languages() {
    for lang in Lang::ALL {
        let mut stage = Stage::sample(lang).sized(70, 120);
        let ids: Vec<(String, Task)> = {
            let round = &stage.model.book.round;
            round.stops.iter().map(|stop| (stop.id.clone(), stop.task)).collect()
        };
        let mut seen = BTreeSet::new();
        for (id, task) in ids {
            let Some(caution) = task.facts().caution else { continue };
            seen.insert(caution);
            go_to(&mut stage, &id);
            let said = run_together(&stage.model.wording.caution_words(caution));
            assert!(run_together(&stage.frame()).contains(&said), "{id}: {}", stage.frame());
            stage.keys("\n");
            let form = stage.frame();
            stage.keys("\u{1b}");
            assert!(run_together(&form).contains(&said) || task == Task::SpaceOut, "{id}: {form}");
        }
        assert!(seen.len() > 3, "{seen:?}");
    }
}

#[test]
fn a_line_of_care_takes_two_lines_of_a_small_screen_or_three_and_no_more() {
    for lang in Lang::ALL {
        let wording = crate::wording::Wording::new(lang);
        for (caution, _) in Caution::WORDS {
            let line = wording.caution_words(*caution);
            let rows = crate::base::columns::wrapped(&line, 48 - 10).len();
            assert!(rows <= 3, "{lang:?} {caution}: {rows} rows: {line}");
        }
    }
}

#[test]
fn a_form_says_before_enter_that_it_takes_hands_into_a_waiting_time() {
    // Sprayed with copper three days ago, safe after 14.
    let tray = Subject::Tray(TrayCode::new("avo-013").unwrap());
    for (lang, told) in [(Lang::En, "while a waiting time runs there"), (Lang::Es, "corre una espera")] {
        let mut stage = Stage::sample(lang);
        stage.open(&FormFor::about("counted", Some(&tray)).with("standing", "30"));
        assert!(run_together(&stage.frame()).contains(&run_together(told)), "{}", stage.frame());
    }
}
