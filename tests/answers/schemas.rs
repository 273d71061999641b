//! Every answer for programs obeys the schema that `outplant schema` prints.

use std::collections::BTreeMap;

use serde_json::{Value, json};

use crate::support::program::{Ended, Home};
use crate::support::schema::{faults, unchecked};

/// The answers that have a schema.
const ANSWERS: [&str; 20] = [
    "backup", "begin", "calc", "check", "error", "export", "import", "kinds", "log", "match", "paths", "ready",
    "rescue", "sample", "since", "species", "undo", "walk", "why", "write",
];
/// The day of the sample, a day in the rains, one in the dry months, and a coming one.
const DAYS: [&str; 4] = ["2026-11-25", "2026-05-13", "2026-08-01", "2027-01-28"];

fn sample() -> Home {
    let home = Home { today: DAYS[0].into(), ..Home::default() };
    let file = home.file("nursery.outplant");
    obeys(&home, "sample", &["sample", "--into", file.to_str().unwrap()]);
    home
}

fn schema(home: &Home, answer: &str) -> Value {
    serde_json::from_str(&home.done(&["schema", answer])).unwrap()
}

/// The answer to words with `--json`, which obeys a schema.
fn obeys(home: &Home, answer: &str, words: &[&str]) -> Value {
    let ended = home.run(&[words, &["--json"]].concat());
    assert_eq!(ended.err, "", "{words:?}: stderr holds nothing beside an answer");
    obeys_as(home, answer, &ended.out, words)
}

fn obeys_as(home: &Home, answer: &str, text: &str, words: &[&str]) -> Value {
    let value: Value = serde_json::from_str(text).unwrap_or_else(|fault| panic!("{words:?}: {fault}: {text}"));
    let faults = faults(&schema(home, answer), &value);
    assert!(faults.is_empty(), "{words:?} does not obey {answer}:\n{}", faults[..faults.len().min(20)].join("\n"));
    value
}

/// The names of a list of `ready --json`.
fn names(ready: &Value, list: &str, name: &str) -> Vec<String> {
    ready[list].as_array().unwrap().iter().map(|one| one[name].as_str().unwrap().to_string()).collect()
}

#[test]
fn the_main_answer_and_the_round_of_several_days_obey_their_schemas() {
    let home = sample();
    for day in DAYS {
        for lang in ["en", "es"] {
            obeys(&home, "ready", &["ready", "--on", day, "--lang", lang]);
        }
        obeys(&home, "walk", &["walk", "--on", day]);
        obeys(&home, "match", &["match", "--weeks", "2", "--on", day]);
        obeys(&home, "since", &["ready", "--on", day, "--since", "2026-04-01"]);
    }
    obeys(&home, "ready", &["ready", "--handbook"]);
    obeys(&home, "log", &["log", "rain"]);
    let fits = obeys(&home, "ready", &["ready", "--fits"]);
    assert!(fits["pairs"].as_array().unwrap().iter().all(|pair| pair["fits"] == json!(true)));
}

#[test]
fn the_entry_of_every_stop_has_fields_of_its_kind_and_says_what_it_is_about() {
    let home = sample();
    let kinds = home.json(&["write"]);
    let fields_of = |kind: &Value| {
        let known = kinds["kinds"].as_array().unwrap().iter().find(|known| known["kind"] == *kind);
        known.unwrap_or_else(|| panic!("no kind {kind}"))["fields"].as_array().unwrap().clone()
    };
    let mut kinds_seen = std::collections::BTreeSet::new();
    for day in DAYS {
        let walk = home.json(&["walk", "--on", day]);
        for stop in walk["stops"].as_array().unwrap().iter().chain(walk["can_wait"].as_array().unwrap()) {
            let entry = &stop["entry"];
            kinds_seen.insert(entry["kind"].as_str().unwrap().to_string());
            let known = fields_of(&entry["kind"]);
            let fields = entry["fields"].as_object().unwrap();
            for name in fields.keys() {
                assert!(known.iter().any(|field| field["name"] == *name), "{}: no field {name}", stop["id"]);
            }
            for subject in ["tray", "bed", "lot"] {
                let about = known.iter().any(|field| field["name"] == subject);
                if about && !stop[subject].is_null() && entry["kind"] != "let_go" {
                    assert_eq!(fields.get(subject), Some(&stop[subject]), "{}", stop["id"]);
                }
            }
        }
    }
    assert!(kinds_seen.len() > 6, "{kinds_seen:?}");
}

#[test]
fn why_of_everything_in_the_sample_obeys_its_schema() {
    let home = sample();
    for day in [DAYS[0], DAYS[1]] {
        let ready = home.json(&["ready", "--on", day]);
        for tray in names(&ready, "trays", "tray").iter().step_by(3) {
            obeys(&home, "why", &["why", "tray", tray, "--on", day]);
        }
        for bed in names(&ready, "beds", "bed").iter().step_by(3) {
            obeys(&home, "why", &["why", "bed", bed, "--on", day]);
        }
        let (trays, beds) = (names(&ready, "pairs", "tray"), names(&ready, "pairs", "bed"));
        for (tray, bed) in trays.iter().zip(&beds).step_by(20) {
            obeys(&home, "why", &["why", "pair", tray, bed, "--on", day]);
        }
        for lot in ["cof-L01", "cof-L02", "cod-L01"] {
            obeys(&home, "why", &["why", "lot", lot, "--on", day]);
        }
        obeys(&home, "why", &["why", "species", "coffee", "--on", day]);
    }
}

#[test]
fn what_is_written_taken_back_and_given_out_obeys_its_schema() {
    let home = Home::default();
    let place = ["--lat", "-1.2", "--lon", "36.1", "--altitude", "1650"];
    obeys(&home, "begin", &[&["begin", "--name", "Test terrace"][..], &place].concat());
    obeys(&home, "kinds", &["write"]);
    let weather = ["write", "weather", "rain_mm=3"];
    obeys(&home, "write", &[&weather[..], &["--dry-run"]].concat());
    obeys(&home, "write", &weather);
    let sheet = home.with("sheet.txt", "rain 4 yesterday\n");
    let ended = home.run(&["write", "--batch", sheet.to_str().unwrap(), "--dry-run", "--json"]);
    if ended.code == 0 {
        obeys_as(&home, "write", &ended.out, &["write", "--batch"]);
    }
    obeys(&home, "undo", &["undo", "--dry-run"]);
    obeys(&home, "undo", &["undo"]);
    let (given, copy) = (home.file("all.jsonl"), home.file("copy.outplant"));
    obeys(&home, "export", &["export", "--to", given.to_str().unwrap()]);
    obeys(&home, "write", &["import", given.to_str().unwrap()]);
    obeys(&home, "backup", &["backup", copy.to_str().unwrap()]);
    obeys(&home, "check", &["check"]);
    obeys(&home, "rescue", &["rescue", home.file("rescued.jsonl").to_str().unwrap()]);
    let trays =
        home.with("trays.csv", "tray,species,standing,place\ncof-1,coffee,40,Bench 1\ncof-2,coffee,35,Bench 1\n");
    obeys(&home, "import", &["import", trays.to_str().unwrap(), "--as", "trays", "--dry-run"]);
    obeys(&home, "import", &["import", trays.to_str().unwrap(), "--as", "trays"]);
}

#[test]
fn species_and_formulas_obey_their_schemas() {
    let home = Home::default();
    obeys(&home, "species", &["species"]);
    obeys(&home, "species", &["species", "--sources"]);
    obeys(&home, "species", &["species", "coffee"]);
    obeys(&sample(), "species", &["species", "coffee"]);
    obeys(&home, "paths", &["paths"]);
    let given = [
        ("germination", json!({"times":[7,10,14],"counts":[3,8,5],"seeds":50})),
        ("germination", json!({"times":[7,14],"counts":[0,0],"seeds":50})),
        ("emergence", json!({"edges":[0,7,10,14,18],"counts":[3,8,5,1],"seeds":50,"last_day":40})),
        ("emergence", json!({"edges":[0,5,10,15],"counts":[0,41,0],"seeds":50})),
        (
            "sowing",
            json!({"prior_a":1,"prior_b":1,"sown":25,"germinated":19,"survival_beta":null,"wanted":12,"confidence":0.95}),
        ),
        ("interval", json!({"x":38,"n":50,"level":0.95})),
        ("replicates", json!({"replicates":[84,79,88,81],"n_each":100})),
        ("replicates", json!({"replicates":[100,100,100,100],"n_each":100})),
        (
            "viability",
            json!({"KE":8.242,"CW":4.345,"CH":0.0307,"CQ":0.000501,"initial_pct":98,"moisture_pct_fresh":10,
            "temp_c":5,"days":365,"target_pct":95}),
        ),
        ("quality", json!({"height_cm":36,"collar_mm":4.2,"shoot_g":4,"root_g":2})),
        ("sample_size", json!({"kind":"proportion","confidence":0.95,"p":0.5,"half_width":0.1,"population":200})),
        ("growth", json!({"t":[20,40,60,80,100],"y":[3,8,17,24,28],"target":[25]})),
        ("growth", json!({"t":[1,2],"y":[3,4],"target":[5]})),
        ("sun", json!({"lat_deg":10.43,"lon_deg":-84.0,"elev_m":120,"utc":"2025-06-21T18:00:00Z"})),
        ("sun", json!({"lat_deg":80,"lon_deg":0,"utc":"2025-06-21T18:00:00Z"})),
        ("radiation", json!({"lat_deg":-20,"doy":246})),
        ("radiation", json!({"lat_deg":-20,"doy":246,"slope_deg":15,"facing_deg":0})),
        ("et0", json!({"lat":15.771,"elev_m":2,"doy":71,"tmax":20.8,"tmin":17.2})),
        ("et0", json!({"lat":15.771,"elev_m":2,"doy":71,"tmax":20.8,"tmin":17.2,"u2":3.22,"rs":24.01})),
        (
            "light",
            json!({"lat":10,"lon":-84,"date":"2026-03-15","diffuse_fraction":0.5,"k":0.5,"sky_degrees":15,
                "crowns":[{"x":0,"y":0,"zc":3.1,"rh":1.5,"hh":1.7,"lad":1.2}],"points":[[0,0.8,0.3]],
                "reading":{"light_share":0.5,"sky":"overcast"},"band":[0.3,0.6],"cuts":2}),
        ),
        (
            "light",
            json!({"lat":10,"lon":-84,"date":"2026-03-15","diffuse_fraction":0.5,"rows":2,"plants":2,"row_m":3,
                "plant_m":2.5,"top_m":3,"foot_m":0.8,"width_m":2.6,"lad":1.2,"k":0.6}),
        ),
        ("rains", json!({"first_date":"2026-05-01","rain":[0,12,9,0,0]})),
        ("leaves", json!({"height_m":3.0,"girth_m":0.7,"leaves":10,"spacing_m2":9,"k":0.7})),
        ("leaves", json!({"height_m":0.5,"girth_m":0.1,"leaves":4})),
        (
            "matching",
            json!({"weeks":2,"labour_per_week":[6,4],"value":{"base":100,"wait_penalty_per_week":{"S1":3}},
                "groups":[{"id":"G1","species":"S1","source":"M1","block":"N1","supply":9,"ready_week":1,"last_week":2}],
                "beds":[{"id":"B1","open":[{"species":"S1","positions":8}]}]}),
        ),
        ("matching", json!({"weeks":0,"labour_per_week":[],"value":{"base":1},"groups":[],"beds":[]})),
        ("water", json!({"taw":42,"p_table":0.45,"dr0":0,"rain":[0,12],"et0":5,"kc":[0.45,0.453]})),
    ];
    for (topic, given) in given {
        let ended = home.run_with(&["calc", topic], &given.to_string());
        obeys_as(&home, "calc", &ended.out, &["calc", topic]);
    }
}

/// The object on stderr, which is all that is there.
fn refused(home: &Home, ended: &Ended, code: i32, words: &[&str]) -> Value {
    assert_eq!((ended.code, ended.out.as_str()), (code, ""), "{words:?}: {}", ended.err);
    let said = obeys_as(home, "error", &ended.err, words);
    assert_eq!(said["exit"], json!(code), "{words:?}");
    said
}

#[test]
fn every_kind_of_failure_is_one_object_on_stderr() {
    let home = Home::default().begun();
    let no_file = home.with("no.outplant", "this is no nursery");
    let gone = home.file("gone.outplant");
    let asked: [(i32, &[&str]); 9] = [
        (1, &["why", "tray", "cof-9"]),
        (1, &["write", "counted", "tray=cof-9", "standing=4"]),
        (1, &["ready", "--nursery", gone.to_str().unwrap()]),
        (1, &["ready", "--since", "2026-04-15"]),
        (2, &["raedy"]),
        (2, &["ready", "--no-such-option"]),
        (2, &["why"]),
        (2, &["schema", "nothing"]),
        (3, &["ready", "--nursery", no_file.to_str().unwrap()]),
    ];
    for (code, words) in asked {
        for words in [[words, &["--json"]].concat(), [&["--json"], words].concat()] {
            refused(&home, &home.run(&words), code, &words);
        }
    }
    let ended = home.run_with(&["calc", "germination", "--json"], "{\"times\": 7}");
    refused(&home, &ended, 1, &["calc", "germination"]);
    let mut strange = home.program();
    let ended = strange.env("OUTPLANT_TODAY", "someday").args(["ready", "--json"]).output().unwrap();
    let said: Value = serde_json::from_slice(&ended.stderr).unwrap();
    assert_eq!((ended.status.code(), &said["exit"]), (Some(2), &json!(2)));
}

#[test]
fn what_a_clock_makes_doubtful_is_no_second_object() {
    let mut home = Home::default().begun();
    home.write("weather", &["rain_mm=3"]);
    home.today = "2031-01-01".into();
    assert!(!home.run(&["ready"]).err.is_empty(), "a person is told");
    obeys(&home, "ready", &["ready"]);
}

#[test]
fn every_schema_can_be_checked_and_what_several_define_they_define_alike() {
    let home = Home::default();
    let mut defined: BTreeMap<String, (Value, &str)> = BTreeMap::new();
    for answer in ANSWERS {
        let schema = schema(&home, answer);
        assert_eq!(unchecked(&schema), Vec::<String>::new(), "{answer}");
        for (name, inner) in schema["$defs"].as_object().into_iter().flatten() {
            let (before, first) = defined.entry(name.clone()).or_insert_with(|| (inner.clone(), answer));
            assert_eq!(before, inner, "{name} is not the same in {first} and {answer}");
        }
    }
    let said = home.run(&["schema", "nothing"]).err;
    assert!(ANSWERS.iter().all(|answer| said.contains(answer)), "{said}");
}

#[test]
fn a_wrong_answer_is_seen() {
    let home = sample();
    let (schema, right) = (schema(&home, "ready"), home.json(&["ready"]));
    let wrong = |change: &dyn Fn(&mut Value)| {
        let mut answer = right.clone();
        change(&mut answer);
        faults(&schema, &answer)
    };
    assert_eq!(wrong(&|_| {}), Vec::<String>::new());
    assert_eq!(wrong(&|answer| answer["trays"][0]["criteria"][0]["met"] = json!("yes")).len(), 1);
    assert_eq!(wrong(&|answer| answer["pairs"][0]["held_by"] = json!([{"of": "stars", "rule": "height"}])).len(), 1);
    assert_eq!(wrong(&|answer| answer["on"] = json!("tomorrow")).len(), 1);
    assert_eq!(wrong(&|answer| answer["beds"][0]["more"] = json!(1)).len(), 1);
    assert_eq!(wrong(&|answer| drop(answer.as_object_mut().unwrap().remove("shared"))).len(), 1);
}
