//! What could hurt somebody stands where the work is proposed, and what is missing is asked for where it is written.

use std::path::Path;
use std::time::Duration;

use serde_json::Value;

use crate::support::program::Home;
use crate::support::screen::Screen;

const SOON: Duration = Duration::from_secs(60);

/// The sample, seen on 30 November.
fn sample() -> Home {
    let home = Home { today: "2026-11-30".into(), ..Home::default() };
    home.done(&["sample", "--into", home.file("nursery.outplant").to_str().unwrap()]);
    home
}

fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The cautions that `walk --json` has at the stops of a tray.
fn at_stops(home: &Home, tray: &str) -> Vec<String> {
    let walk = home.json(&["walk"]);
    let stops = ["stops", "can_wait"].into_iter().filter_map(|key| walk[key].as_array()).flatten();
    let cautions = stops.filter(|stop| stop["tray"] == tray).filter_map(|stop| stop["cautions"].as_array());
    cautions.flatten().map(|caution| caution["text"].as_str().unwrap().to_string()).collect()
}

fn told(json: &Value) -> Vec<String> {
    json["cautions"].as_array().unwrap().iter().map(|one| one["text"].as_str().unwrap().to_string()).collect()
}

#[test]
fn why_says_the_cautions_of_the_stops_it_lists_once_each_and_whole() {
    let home = sample();
    let mut seen = 0;
    for tray in ["gli-006", "cof-030", "avo-013"] {
        for lang in ["en", "es"] {
            let spoken = |words: &[&str]| flat(&home.done(&[words, &["--lang", lang]].concat()));
            let json = home.json(&["why", "tray", tray, "--lang", lang]);
            for all in [&["why", "tray", tray][..], &["why", "tray", tray, "--all"]] {
                let page = spoken(all);
                for caution in told(&json) {
                    assert_eq!(page.matches(&flat(&caution)).count(), 1, "{tray}: {caution}\n{page}");
                }
                let leads = if lang == "en" { "licensed practice lead" } else { "la práctica autorizada" };
                assert_eq!(page.matches(leads).count(), 1, "{page}");
            }
        }
        let json = told(&home.json(&["why", "tray", tray]));
        let stops = at_stops(&home, tray);
        assert!(stops.iter().all(|caution| json.contains(caution)), "{tray}: {stops:?} {json:?}");
        seen += stops.len();
    }
    assert!(seen > 1, "{seen}");
    let pricked = told(&home.json(&["why", "tray", "cof-030"]));
    assert!(pricked.iter().any(|caution| caution.starts_with("Damp the soil")), "{pricked:?}");
}

#[test]
fn why_of_a_bed_says_how_to_dig_weed_mulch_and_fence_without_being_hurt() {
    let home = sample();
    let page = flat(&home.done(&["why", "bed", "Spring 1"]));
    let json = told(&home.json(&["why", "bed", "Spring 1"]));
    assert!(json.iter().any(|caution| caution.starts_with("Cover or fence every open pit")), "{json:?}");
    for caution in &json {
        assert_eq!(page.matches(&flat(caution)).count(), 1, "{caution}\n{page}");
    }
    // A bed without anything dug or fenced asks for all of it.
    let bare = Home::default().begun();
    let plan = r#"plan=[{"species":"coffee","pattern":"square","row_m":2,"in_row_m":2}]"#;
    bare.write("bed_set", &["bed=Bare 1", "field=Upper", "length_m=20", "width_m=6", plan, "happened=2026-03-01"]);
    let json = bare.json(&["why", "bed", "Bare 1"]);
    let words: Vec<&str> =
        json["cautions"].as_array().unwrap().iter().map(|one| one["word"].as_str().unwrap()).collect();
    for word in ["clearing", "pits", "blades", "fencing"] {
        assert_eq!(words.iter().filter(|one| **one == word).count(), 1, "{word}: {words:?}");
    }
}

#[test]
fn what_is_used_without_its_waiting_time_is_told_where_nobody_can_answer() {
    let home = sample();
    let sentence = |lang: &str| if lang == "en" { "how long does its label say to stay away" } else { "la etiqueta" };
    for lang in ["en", "es"] {
        let out = home.done(&["write", "treated", "tray=cof-021", "with=dimethoate", "--dry-run", "--lang", lang]);
        assert!(flat(&out).contains(sentence(lang)), "{out}");
        let sheet = home.with("walk.txt", "cof-021 treated copper\n");
        let out = home.done(&["write", "--batch", sheet.to_str().unwrap(), "--dry-run", "--lang", lang]);
        assert!(flat(&out).contains(sentence(lang)), "{out}");
    }
    let told = |words: &[&str]| flat(&home.done(&[&["write"][..], words].concat()));
    let asks = "how long does its label say to stay away";
    assert!(told(&["treated", "tray=cof-021", "with=copper oxychloride"]).contains(asks));
    // A time, food of plants, and planting told of what has its time already.
    assert!(!told(&["treated", "tray=cof-021", "with=mancozeb", "safe_after_days=7"]).contains(asks));
    assert!(!told(&["treated", "tray=cof-021", "with=mancozeb", "plant_after_days=7"]).contains(asks));
    assert!(!told(&["treated", "tray=cof-021", "with=compost tea"]).contains(asks));
    let json = home.json(&["write", "treated", "place=bench 2", "with=neem"]);
    assert!(json["cautions"].to_string().contains("how long to stay away"), "{json}");
}

#[test]
fn at_a_terminal_the_waiting_time_is_asked_for_and_taken() {
    let cases = [("en_GB.UTF-8", "7\r", "Days to stay away", Some(7)), ("es_CR.UTF-8", "\r", "Días de espera", None)];
    for (lang, answer, question, days) in cases {
        let home = sample();
        let nursery = home.file("nursery.outplant");
        let variables = [
            ("OUTPLANT_NURSERY", nursery.to_str().unwrap()),
            ("OUTPLANT_TODAY", &home.today),
            ("LANG", lang),
            ("USER", "mara"),
        ];
        let words = ["write", "cof-021", "treated", "copper"];
        let mut screen =
            Screen::run(Path::new(env!("CARGO_BIN_EXE_outplant")), &words, home.path(), &variables, (100, 30));
        screen.wait_for(question);
        screen.keys(answer);
        assert_eq!(screen.end(SOON).exit_code(), 0, "{}", screen.text());
        let export = home.done(&["export"]);
        let lines = export.lines().filter_map(|line| serde_json::from_str::<Value>(line).ok());
        let written: Vec<Value> = lines.filter(|one| one["kind"] == "treated" && one["who"] == "mara").collect();
        assert_eq!(written.len(), 1, "{written:?}");
        assert_eq!(written[0]["safe_after_days"].as_i64(), days, "{written:?}");
    }
}

#[test]
fn at_a_terminal_the_days_until_planting_are_asked_for_where_weeds_were_killed() {
    let home = sample();
    let nursery = home.file("nursery.outplant");
    let variables = [
        ("OUTPLANT_NURSERY", nursery.to_str().unwrap()),
        ("OUTPLANT_TODAY", &home.today),
        ("LANG", "es_CR.UTF-8"),
        ("USER", "mara"),
    ];
    let words = ["write", "treated", "bed=School 3", "with=glyphosate"];
    let mut screen = Screen::run(Path::new(env!("CARGO_BIN_EXE_outplant")), &words, home.path(), &variables, (100, 30));
    screen.wait_for("Días de espera");
    screen.keys("1\r");
    screen.wait_for("Días hasta plantar");
    screen.keys("14\r");
    assert_eq!(screen.end(SOON).exit_code(), 0, "{}", screen.text());
    let export = home.done(&["export"]);
    let lines = export.lines().filter_map(|line| serde_json::from_str::<Value>(line).ok());
    let written: Vec<Value> = lines.filter(|one| one["kind"] == "treated" && one["who"] == "mara").collect();
    let days = |field: &str| written.iter().map(|one| one[field].as_i64()).collect::<Vec<_>>();
    assert_eq!((days("safe_after_days"), days("plant_after_days")), (vec![Some(1)], vec![Some(14)]), "{written:?}");
}

#[test]
fn a_share_written_for_a_percent_of_shade_moisture_or_pest_is_asked_about() {
    let home = Home::default().begun();
    let came = ["tray=cof-1", "species=coffee", "count=48", "from=bought", "form=bag", "age_days=100"];
    home.write("plants_received", &came);
    let err = |words: &[&str]| home.run(&[&["write"][..], words].concat()).err;
    let lot = [
        "lot_received",
        "lot=c-1",
        "species=coffee",
        "seeds=100",
        "kept=dry_open",
        "source=own",
        "collected=2026-03-01",
        "moisture_pct=0.12",
    ];
    assert!(err(&lot).contains("0.12 %: is that 12 %?"), "{}", err(&lot));
    let place = err(&["place_set", "place=B", "order=1", "shade_pct=0.5"]);
    assert!(place.contains("0.5 %: is that 50 %?"), "{place}");
    assert!(err(&["pest_seen", "tray=cof-1", "what=aphids", "share_pct=0.2"]).contains("is that 20 %?"));
    home.write("place_set", &["place=B", "order=1", "shade_pct=50"]);
    assert!(err(&["shade_set", "place=B", "shade_pct=0.4", "--lang", "es"]).contains("¿es 40 %?"));
    assert!(home.refused(&["write", "B shade 0.5"]).contains("is that 50 %?"), "nobody can answer");
    for whole in [["place=B", "shade_pct=1"], ["place=B", "shade_pct=0"], ["place=B", "shade_pct=50"]] {
        assert_eq!(err(&[&["shade_set"][..], &whole].concat()), "", "{whole:?}");
    }
    let sowing = ["calc", "sowing", "--wanted", "20", "--germination", "80", "--survival", "1"];
    assert!(home.refused(&sowing).contains("1 %: is that 100 %?"));
    home.done(&[&sowing[..], &["--yes"]].concat());
}

#[test]
fn why_of_a_lot_says_the_care_of_all_that_is_due_there() {
    let home = sample();
    let walk = home.json(&["walk"]);
    let stops = ["stops", "can_wait"].into_iter().filter_map(|key| walk[key].as_array()).flatten();
    let of_lots: Vec<&Value> = stops.filter(|stop| stop["lot"].is_string()).collect();
    assert!(of_lots.len() > 2, "{of_lots:?}");
    for stop in of_lots {
        let lot = stop["lot"].as_str().unwrap();
        let json = told(&home.json(&["why", "lot", lot]));
        for lang in ["en", "es"] {
            let page = flat(&home.done(&["why", "lot", lot, "--lang", lang]));
            for caution in told(&home.json(&["why", "lot", lot, "--lang", lang])) {
                assert_eq!(page.matches(&flat(&caution)).count(), 1, "{lot}: {caution}\n{page}");
            }
        }
        for caution in stop["cautions"].as_array().unwrap() {
            assert!(json.contains(&caution["text"].as_str().unwrap().to_string()), "{lot}: {caution} {json:?}");
        }
    }
    let page = flat(&home.done(&["why", "lot", "cod-L03"]));
    assert!(page.contains("Bleach never with ammonia or acid"), "{page}");
    // A number of seeds to sow says how to sow, once.
    let page = flat(&home.done(&["why", "species", "coffee", "--plants", "3000"]));
    assert_eq!(page.matches("Coloured seed is poison").count(), 1, "{page}");
}

#[test]
fn a_pair_that_fits_says_how_to_plant_and_what_stands_in_the_bed_and_can_harm() {
    let home = sample();
    let page = flat(&home.done(&["why", "pair", "jac-006", "Valley 1"]));
    assert!(page.contains("fits"), "{page}");
    assert!(page.contains("Few bags at a time, knees bent"), "{page}");
    let json = home.json(&["why", "pair", "jac-006", "Valley 1"]);
    assert!(told(&json).iter().any(|caution| caution.starts_with("Few bags at a time")), "{json}");
    let plants: Vec<&str> =
        json["plants"].as_array().unwrap().iter().map(|one| one["text"].as_str().unwrap()).collect();
    for plant in ["jackfruit (", "castor ("] {
        assert!(
            plants.iter().any(|text| text.starts_with(plant)) && page.contains(plant),
            "{plant}: {plants:?} {page}"
        );
    }
    // Planting is told of where plants can go, and there alone.
    for (tray, bed) in [("jac-006", "Valley 1"), ("cof-022", "Ridge 3")] {
        let json = home.json(&["why", "pair", tray, bed]);
        assert_eq!(json["cautions"].to_string().contains("Few bags"), json["pair"]["fits"] == true, "{json}");
    }
}

#[test]
fn a_plant_that_can_harm_is_named_at_each_stop_of_the_printed_walk_where_it_is_handled() {
    let home = sample();
    for (lang, label) in [("en", "Plant: "), ("es", "Planta: ")] {
        let page = flat(&home.done(&["walk", "--lang", lang]));
        let walk = home.json(&["walk", "--lang", lang]);
        let mut at: std::collections::BTreeMap<String, usize> = Default::default();
        for stop in walk["stops"].as_array().unwrap() {
            for plant in stop["plants"].as_array().unwrap() {
                *at.entry(plant["text"].as_str().unwrap().to_string()).or_default() += 1;
            }
        }
        assert!(at.values().any(|stops| *stops > 1), "{at:?}");
        let lines: Vec<&str> = page.split(label).skip(1).collect();
        for (text, stops) in at {
            let name = text.split(" (").next().unwrap();
            assert_eq!(page.matches(&flat(&text)).count(), 1, "in full once: {text}\n{page}");
            let named = lines.iter().filter(|line| line.contains(name)).count();
            assert!(named >= 1 && (stops == 1 || named > 1), "{name}: {named} of {stops}\n{page}");
        }
    }
}
