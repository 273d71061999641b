//! The command line as a person and a program meet it: right answers to a nursery begun by hand, clear refusals, ends
//! that mean what they say.

use crate::support::program::Home;
use serde_json::{Value, json};
use std::io::Read;
use std::process::Stdio;

/// The hand-worked nursery of `readiness_worked`, written word by word.
fn by_hand() -> Home {
    let home = Home::default().begun();
    home.write("season_set", &[r#"rains=[{"from":"03-01","until":"06-15"}]"#]);
    home.write("place_set", &["place=Deep shade", "order=1", "shade_pct=70"]);
    home.write("place_set", &["place=Half shade", "order=2", "shade_pct=45"]);
    home.write("container_set", &["container=bag", "volume_ml=1000", "depth_cm=23"]);
    home.write(
        "lot_received",
        &[
            "lot=cof-L1",
            "species=café",
            "source=school row",
            "collected=2025-01-01",
            "seeds=1000",
            "kept=en pergamino",
            "happened=2025-01-01",
        ],
    );
    home.write(
        "sown",
        &["tray=cof-1", "lot=cof-L1", "seeds=60", "container=bag", "place=Deep shade", "happened=2025-06-01"],
    );
    home.write("counted", &["tray=cof-1", "standing=50", "happened=2025-09-10"]);
    home.write("carried", &["tray=cof-1", "place=Half shade", "happened=2026-02-20"]);
    home.write("counted", &["tray=cof-1", "standing=48", "happened=2026-04-10"]);
    let plants = serde_json::to_string(&vec![json!({"height_cm":28}); 20]).unwrap();
    home.write("measured", &["tray=cof-1", &format!("plants={plants}"), "happened=2026-04-10"]);
    home.write(
        "bed_set",
        &[
            "bed=Upper 1",
            "field=Upper",
            "length_m=20",
            "width_m=6",
            r#"plan=[{"species":"Coffea arabica","pattern":"square","row_m":2,"in_row_m":2}]"#,
        ],
    );
    home.write(
        "light_read",
        &["bed=Upper 1", r#"readings=[{"under_lux":6000,"open_lux":10000}]"#, "happened=2026-04-01"],
    );
    home.write(
        "soil_checked",
        &["bed=Upper 1", "rod_mm=8", "push_kg=10", "depth_cm=35", "wet=yes", "happened=2026-04-01"],
    );
    for task in ["cleared", "hoyos", "weeded"] {
        home.write("prepared", &["bed=Upper 1", &format!("task={task}"), "happened=2026-04-05"]);
    }
    for day in ["2026-04-13", "2026-04-14", "2026-04-15"] {
        home.write("weather", &["rain_mm=10", &format!("happened={day}")]);
    }
    home
}

#[test]
fn a_nursery_begun_by_hand_gives_the_right_answer_and_its_reasons() {
    let home = by_hand();
    let ready = home.json(&["ready"]);
    assert_eq!((&ready["version"], &ready["on"]), (&json!(1), &json!("2026-04-15")));
    let tray = &ready["trays"][0];
    assert_eq!(
        (&tray["tray"], &tray["species"], &tray["standing"], &tray["ready"]),
        (&json!("cof-1"), &json!("COA"), &json!(48), &json!(true)),
        "{tray:#}"
    );
    // 20 of 20 measured pass: all 48 are likely, and Wilson at 90 % begins at 88 %.
    let plantable = |end: &str| tray["plantable"][end].as_f64().unwrap().round();
    assert_eq!((plantable("low"), plantable("likely")), (42.0, 48.0));
    let pair = &ready["pairs"][0];
    assert_eq!(
        (&pair["bed"], &pair["fits"], &pair["plants"]),
        (&json!("Upper 1"), &json!(true), &json!(44)),
        "{pair:#}"
    );
    assert_eq!(ready["beds"][0]["light_now"], json!(0.6));
    assert_eq!(ready["beds"][0]["species"][0]["open_positions"], json!(44));
    for criterion in pair["criteria"].as_array().unwrap() {
        assert!(!criterion["source"].as_str().unwrap().is_empty());
        assert_eq!(criterion["met"].is_null(), criterion["basis"] == "unknown", "{criterion:#}");
    }
    let why = home.done(&["why", "pair", "cof-1", "upper 1", "--all"]);
    assert!(why.contains("hardening") && why.contains("source"), "{why}");
    assert!(home.done(&["ready"]).contains("Upper 1"));
    // Two days before, the gauge had nothing yet.
    for day in ["2026-04-10", "2026-04-11", "2026-04-12"] {
        home.write("weather", &["rain_mm=0", &format!("happened={day}")]);
    }
    let dry = home.json(&["ready", "--on", "2026-04-12"]);
    assert_eq!(dry["pairs"][0]["fits"], json!(false));
    // What was not yet recorded is not known.
    let unknown = home.json(&["ready", "--known", "2025-12-31"]);
    assert_eq!(unknown["trays"], json!([]));
}

#[test]
fn an_import_of_the_export_gives_the_same_nursery_and_twice_changes_nothing() {
    let home = by_hand();
    let export = home.done(&["export", "--as", "entries"]);
    assert_eq!(export, home.done(&["export"]), "the same journal gives the same bytes");
    let copy = Home::default().begun();
    let file = copy.with("export.jsonl", &export);
    copy.done(&["import", file.to_str().unwrap()]);
    assert_eq!(copy.json(&["ready"])["pairs"], home.json(&["ready"])["pairs"]);
    copy.done(&["import", file.to_str().unwrap()]);
    let lines = copy.done(&["export"]);
    assert_eq!(lines.lines().count(), export.lines().count() + 1, "its own begin and nothing twice");
    // One changed letter is found, nothing is taken.
    let forged = copy.with("forged.jsonl", export.replace("\"standing\":48", "\"standing\":88"));
    let said = copy.refused(&["import", forged.to_str().unwrap()]);
    assert!(said.contains("hash") && said.contains("nothing was written"), "{said}");
}

#[test]
fn plain_entries_are_imported_and_a_half_bad_file_writes_nothing_and_names_every_bad_line() {
    let home = Home::default().begun();
    let good = r#"{"happened":"2026-01-01","kind":"lot_received","lot":"L1","species":"coffee","source":"x","collected":"2025-12-01","seeds":100,"kept":"in_parchment"}
{"happened":"2026-01-02","kind":"sown","tray":"t1","lot":"L1","seeds":80,"container":"bag"}
{"happened":"2026-03-02","who":"mara","kind":"counted","tray":"t1","standing":41}
"#;
    let bad = format!(
        "{good}{}\n{}\n{}\n",
        r#"{"kind":"counted","tray":"t9","standing":4}"#, r#"{"kind":"counted","tray":"t1","standing":-4}"#, "not json"
    );
    let file = home.with("bad.jsonl", bad);
    let before = home.done(&["export"]);
    let said = home.refused(&["import", file.to_str().unwrap()]);
    for line in ["line 4", "line 5", "line 6"] {
        assert!(said.contains(line), "{line} is not named: {said}");
    }
    assert_eq!(home.done(&["export"]), before);
    let file = home.with("unknown.jsonl", format!("{good}{}\n", r#"{"kind":"counted","tray":"t2","standing":4}"#));
    let said = home.refused(&["import", file.to_str().unwrap()]);
    assert!(said.contains("line 4") && said.contains("t2") && said.contains("nearest: t1"), "{said}");
    let file = home.with("good.jsonl", good);
    home.done(&["import", file.to_str().unwrap(), "--dry-run"]);
    assert_eq!(home.done(&["export"]), before);
    home.done(&["import", file.to_str().unwrap()]);
    assert_eq!(home.json(&["ready"])["trays"][0]["standing"], json!(41));
    // The whole import is one command: undo takes it back whole.
    home.done(&["undo"]);
    assert_eq!(home.json(&["ready"])["trays"], json!([]));
}

#[test]
fn what_cannot_be_true_is_refused_in_words_and_nothing_is_written() {
    let home = by_hand();
    let before = home.done(&["export"]);
    let cases: [(&[&str], &[&str]); 12] = [
        (&["write", "counted", "tray=cof-2", "standing=4"], &["cof-2", "nearest: cof-1"]),
        (&["write", "outplanted", "tray=cof-1", "bed=Upper 1", "count=60"], &["60", "48"]),
        (&["write", "counted", "tray=cof-1", "standing=41", "happened=2026-04-16"], &["16 Apr 2026"]),
        (&["write", "counted", "tray=cof-1", "standing=-3"], &["standing", "-3"]),
        (&["write", "counted", "tray=cof-1", "standing=2.5"], &["standing", "2.5"]),
        (&["write", "counted", "tray=cof-1", "standing=41kg"], &["standing", "41kg"]),
        (&["write", "counted", "tray=cof-1", "standin=41"], &["standin", "standing"]),
        (&["write", "countd", "tray=cof-1", "standing=41"], &["countd", "counted"]),
        (&["write", "sown", "tray=cof-1", "lot=cof-L1", "seeds=10", "container=bag"], &["cof-1"]),
        (&["write", "sown", "tray=cof-9", "lot=cof-L1", "seeds=2000", "container=bag"], &["2000", "940"]),
        (
            &[
                "write",
                "lot_received",
                "lot=L9",
                "species=coffea arabika",
                "source=x",
                "collected=2026-01-01",
                "seeds=9",
                "kept=cold",
            ],
            &["Coffea arabica"],
        ),
        (&["write", "lost", "tray=cof-1", "count=3", "cause=ra\u{202e}ts"], &["\\u{202e}"]),
    ];
    for (words, expected) in cases {
        let said = home.refused(words);
        for part in expected {
            assert!(said.contains(part), "{words:?} should say {part}: {said}");
        }
    }
    assert_eq!(home.done(&["export"]), before);
    let looking = home.refused(&["write", "counted", "tray=cof-1", "standing=41", "--on", "2026-04-01"]);
    assert!(!looking.is_empty());
    assert_eq!(home.run(&["rady"]).code, 2);
}

#[test]
fn a_late_entry_that_makes_a_later_day_impossible_is_written_and_doubted() {
    let home = by_hand();
    home.write("given_out", &["tray=cof-1", "count=40", "to=school", "happened=2026-04-14"]);
    let said = home.done(&["write", "lost", "tray=cof-1", "count=20", "cause=rats", "happened=2026-04-11"]);
    assert!(said.contains("cof-1"), "the doubt is named: {said}");
    assert_eq!(home.json(&["ready"])["doubts"].as_array().unwrap().len(), 1);
}

#[test]
fn undo_says_in_words_what_it_took_back_and_goes_one_step_further_each_time() {
    let home = by_hand();
    home.write("lost", &["tray=cof-1", "count=3", "cause=rats"]);
    home.write("lost", &["tray=cof-1", "count=5", "cause=drought"]);
    let said = home.done(&["undo"]);
    assert!(said.contains("15 Apr 2026 · tray cof-1: 5 lost, drought"), "{said}");
    let said = home.done(&["undo"]);
    assert!(said.contains("tray cof-1: 3 lost, rats"), "{said}");
    assert_eq!(home.json(&["ready"])["trays"][0]["standing"], json!(48));
    // Taking back the sowing would leave the counts without ground: it is refused with their list, or done together.
    let sown = home.done(&["export"]);
    let sown = sown.lines().find(|line| line.contains("\"kind\":\"sown\"")).unwrap();
    let id = serde_json::from_str::<serde_json::Value>(sown).unwrap()["id"].as_str().unwrap().to_string();
    let said = home.refused(&["undo", &id]);
    assert!(said.contains("--together"), "{said}");
    home.done(&["undo", &id, "--together"]);
    assert_eq!(home.json(&["ready"])["trays"], json!([]));
    assert_eq!(home.json(&["ready"])["doubts"], json!([]));
}

#[test]
fn plain_undo_stops_at_the_beginning_and_says_how_to_go_on() {
    let home = Home::default().begun();
    home.write("noted", &["text=a first note"]);
    home.done(&["undo"]);
    let before = home.done(&["export"]);
    let said = home.refused(&["undo"]);
    let id = id_of(&before, "nursery_set");
    assert!(said.contains(&format!("outplant undo {id}")), "{said}");
    assert_eq!(home.done(&["export"]), before);
    // A second description can be taken back like anything else.
    home.write(
        "nursery_set",
        &["name=Two", "latitude_deg=-1", "longitude_deg=36", "altitude_m=1500", "utc_offset_h=3"],
    );
    assert!(home.done(&["undo"]).contains("nursery Two"));
    home.done(&["undo", &id, "--yes"]);
    let said = home.refused(&["undo", &id]);
    assert!(said.contains("taken back on 15 Apr 2026"), "{said}");
}

#[test]
fn an_entry_that_came_in_with_others_goes_alone_or_with_all_only_where_that_is_said() {
    let home = by_hand();
    let sheet = home.with("walk.txt", "cof-1 46\ncof-1 -2 rats\n");
    let said = home.done(&["write", "--batch", sheet.to_str().unwrap()]);
    assert!(said.contains("tray cof-1 counted: 46 living") && said.contains("2 lost, rats"), "{said}");
    let before = home.done(&["export"]);
    let id = id_of(&before, "lost");
    let said = home.refused(&["undo", &id]);
    assert!(said.contains("2 entries") && said.contains("--all") && said.contains("--only"), "{said}");
    let said = home.done(&["undo", &id, "--dry-run"]);
    assert!(said.contains("2 lost, rats") && said.contains("46 living"), "{said}");
    assert_eq!(home.done(&["undo", &id, "--only", "--dry-run"]).matches("cof-1").count(), 1);
    assert_eq!(home.done(&["undo", "--dry-run"]).matches("cof-1").count(), 2);
    assert_eq!(home.done(&["export"]), before, "nothing was written so far");
    let taken = home.json(&["undo", &id, "--only"]);
    assert_eq!(taken["taken_back"], json!([id]));
    assert_eq!(taken["text"], json!(["15 Apr 2026 · tray cof-1: 2 lost, rats"]));
    // Withdrawing it again, by hand, names the withdrawal that did it.
    let by = taken["entries"][0].as_str().unwrap();
    let again = home.refused(&["write", "withdrawn", &format!("entries=[\"{id}\"]"), "why=x"]);
    assert!(again.contains(by), "{again}");
    assert_eq!(home.json(&["undo", &id, "--all"])["taken_back"].as_array().unwrap().len(), 1);
    assert_eq!(home.json(&["ready"])["trays"][0]["standing"], json!(48));
}

/// The identity of the last entry of a kind in an export.
fn id_of(export: &str, kind: &str) -> String {
    let line = export.lines().rfind(|line| line.contains(&format!("\"kind\":\"{kind}\""))).unwrap();
    serde_json::from_str::<serde_json::Value>(line).unwrap()["id"].as_str().unwrap().to_string()
}

#[test]
fn check_proves_the_file_and_catches_a_flipped_bit() {
    let home = by_hand();
    assert_eq!(home.json(&["check"])["sound"], json!(true));
    let copy = home.file("copy.outplant");
    home.done(&["backup", copy.to_str().unwrap()]);
    assert_eq!(home.run(&["backup", copy.to_str().unwrap()]).code, 1, "a file is never replaced");
    let mut bytes = std::fs::read(&copy).unwrap();
    let at = bytes.windows(13).position(|part| part == b"\"standing\":48").unwrap() + 11;
    bytes[at] ^= 1;
    let damaged = home.with("damaged.outplant", &bytes);
    let ended = home.run(&["--nursery", damaged.to_str().unwrap(), "check"]);
    assert_eq!(ended.code, 6, "{}{}", ended.out, ended.err);
    assert!(ended.out.contains("hash"), "{}", ended.out);
    assert_eq!(std::fs::read(&damaged).unwrap(), bytes, "check writes nothing");
}

#[cfg(target_os = "linux")]
#[test]
fn a_file_that_claims_a_hundred_gigabytes_is_proved_by_what_is_in_it() {
    let home = by_hand();
    let file = home.file("nursery.outplant");
    let mut bytes = std::fs::read(&file).unwrap();
    let entries = home.json(&["check"])["entries"].as_u64().unwrap();
    // How many pages it has: SQLite file format, section 1.3.7.
    bytes[28..32].copy_from_slice(&26_214_400_u32.to_be_bytes());
    let claims = home.with("claims.outplant", &bytes);
    // No header at all, and nothing in it.
    let empty = home.with("empty.outplant", "");
    for path in [&claims, &empty] {
        std::fs::File::options().write(true).open(path).unwrap().set_len(100 << 30).unwrap();
    }
    let begun = std::time::Instant::now();
    let ended = home.run(&["--nursery", claims.to_str().unwrap(), "check", "--json"]);
    assert_eq!(ended.code, 6, "{}", ended.err);
    let said: Value = serde_json::from_str(&ended.out).unwrap();
    assert_eq!(said["undamaged"], json!(entries), "{said}");
    let ended = home.run(&["--nursery", empty.to_str().unwrap(), "check"]);
    assert_eq!(ended.code, 3, "{}{}", ended.out, ended.err);
    assert!(begun.elapsed().as_secs() < 60, "{:?}", begun.elapsed());
}

#[test]
fn without_a_nursery_it_says_how_to_begin_and_ends_with_1() {
    let home = Home::default();
    let mut command = home.program();
    command.env_remove("OUTPLANT_NURSERY");
    let output = command.output().unwrap();
    assert_eq!(output.status.code(), Some(1));
    assert!(String::from_utf8(output.stderr).unwrap().contains("outplant begin"));
    // The species can be looked at without one.
    assert!(home.done(&["species", "cacao"]).contains("Theobroma cacao"));
}

#[test]
fn a_reader_who_has_seen_enough_ends_it_quietly() {
    let home = by_hand();
    for words in [&["species"][..], &["ready"], &["ready", "--json"], &["export"], &["write"]] {
        let mut child = home.program().args(words).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
        let mut first = [0u8; 1];
        let mut out = child.stdout.take().unwrap();
        let _ = out.read(&mut first);
        drop(out);
        let mut err = String::new();
        child.stderr.take().unwrap().read_to_string(&mut err).unwrap();
        let code = child.wait().unwrap().code();
        assert_eq!((code, err.as_str()), (Some(0), ""), "{words:?}");
    }
}

#[test]
fn both_languages_answer_and_no_colour_reaches_a_pipe() {
    let home = by_hand();
    let en = home.done(&["ready"]);
    let es = home.done(&["ready", "--lang", "es"]);
    assert!(en.contains("Plan of today") && es.contains("Plan de hoy"), "{en}{es}");
    for text in [en, es] {
        assert!(!text.contains('\u{1b}'));
        assert!(text.lines().all(|line| line.chars().count() <= 80), "{text}");
    }
    let said = home.refused(&["write", "counted", "tray=cof-2", "standing=4", "--lang", "es"]);
    assert!(said.contains("bandeja"), "{said}");
    assert!(home.done(&["--lang", "es", "--help"]).contains("Qué bandejas están listas"));
}

#[test]
fn every_command_and_option_has_its_help_in_both_languages() {
    use outplant::wording::{Lang, Wording};
    fn walk(command: &clap::Command, path: &str, missing: &mut Vec<String>) {
        if command.get_about().is_none() {
            missing.push(path.to_string());
        }
        for argument in command.get_arguments() {
            if argument.get_help().is_none() {
                missing.push(format!("{path} {}", argument.get_id()));
            }
        }
        for inner in command.get_subcommands() {
            walk(inner, &format!("{path} {}", inner.get_name()), missing);
        }
    }
    let definitions = Lang::ALL.map(|lang| outplant::cli::Cli::definition(&Wording::new(lang)));
    for definition in definitions.clone() {
        definition.clone().debug_assert();
        let mut missing = Vec::new();
        walk(&definition, "outplant", &mut missing);
        assert_eq!(missing, Vec::<String>::new());
    }
    let [en, es] = definitions;
    for (one, other) in en.get_subcommands().zip(es.get_subcommands()) {
        assert_ne!(
            one.get_about().map(ToString::to_string),
            other.get_about().map(ToString::to_string),
            "{}",
            one.get_name()
        );
    }
}

/// Words that clap would say by itself.
const CLAP_SAYS: [&str; 18] = [
    "Usage",
    "Options",
    "Commands",
    "Arguments",
    "Print help",
    "Print version",
    "[default",
    "[possible values",
    "[OPTIONS]",
    "COMMAND",
    "<FILE>",
    "<DATE>",
    "error:",
    "tip:",
    "unexpected",
    "unrecognized",
    "For more information",
    "required",
];

#[test]
fn help_is_spanish_to_the_last_heading() {
    fn every_path(command: &clap::Command, path: Vec<String>, all: &mut Vec<Vec<String>>) {
        for inner in command.get_subcommands() {
            let below: Vec<String> = path.iter().cloned().chain([inner.get_name().to_string()]).collect();
            every_path(inner, below, all);
        }
        all.push(path);
    }
    let home = by_hand();
    let mut paths = Vec::new();
    let spanish = outplant::wording::Wording::new(outplant::wording::Lang::Es);
    every_path(&outplant::cli::Cli::definition(&spanish), Vec::new(), &mut paths);
    assert!(paths.len() > 12, "{paths:?}");
    for path in paths {
        for asked in ["--help", "-h"] {
            let mut typed = vec!["--lang", "es"];
            typed.extend(path.iter().map(String::as_str));
            typed.push(asked);
            let ended = home.run(&typed);
            assert_eq!(ended.code, 0, "{path:?}");
            assert!(
                ended.out.contains("Uso: outplant") && ended.out.contains("Opciones de toda orden:"),
                "{}",
                ended.out
            );
            for word in CLAP_SAYS {
                assert!(!ended.out.contains(word), "{path:?} says '{word}':\n{}", ended.out);
            }
        }
    }
}

#[test]
fn faults_of_usage_are_said_in_the_language_asked_for_with_the_nearest_name() {
    let home = by_hand();
    let cases: [(&[&str], &str, &str); 11] = [
        (&["redy"], "there is no command 'redy'; nearest: ready", "no existe la orden 'redy'; parecidos: ready"),
        (
            &["ready", "--onn", "2026-01-01"],
            "there is no option '--onn' here; nearest: --on",
            "no existe la opción '--onn'",
        ),
        (&["ready", "--on", "one day"], "'one day' is not a day", "'one day' no es un día"),
        (&["ready", "--on"], "needs a value", "necesita un valor"),
        (&["walk", "now"], "'now' is one word too many", "sobra 'now'"),
        (&["why", "tray"], "still missing: <TRAY>", "todavía falta: <BANDEJA>"),
        (
            &["begin", "--name", "x", "--lat", "north", "--lon", "1", "--altitude", "9"],
            "'north' is not a number",
            "'north' no es un número",
        ),
        (&["import", "x", "--as", "fish"], "it is one of: entries, trays, beds", "es uno de: entries, trays, beds"),
        (&["undo", "zz"], "is no number of an entry", "no es el número de una anotación"),
        (&["why", "tray", ""], "cannot be ''", "no puede ser ''"),
        (&["ready", "--on", "2026-01-01", "--on", "2026-01-02"], "stands there twice", "está dos veces"),
    ];
    for (typed, english, spanish) in cases {
        for (lang, expected) in [("en", english), ("es", spanish)] {
            let mut typed = typed.to_vec();
            typed.extend(["--lang", lang]);
            // What needs a value gets it from the word behind: there the language comes first.
            if typed.contains(&"--on") && !typed.contains(&"2026-01-01") && !typed.contains(&"one day") {
                typed = vec!["--lang", lang, "ready", "--on"];
            }
            let ended = home.run(&typed);
            assert_eq!(ended.code, 2, "{typed:?}");
            assert!(ended.err.contains(expected), "{typed:?}: {}", ended.err);
            if lang == "es" {
                for word in CLAP_SAYS {
                    assert!(!ended.err.contains(word), "{typed:?} says '{word}': {}", ended.err);
                }
            }
        }
    }
}

#[test]
fn a_clock_that_cannot_be_right_is_noted_and_true_days_are_never_refused() {
    let mut home = by_hand();
    home.today = "2024-01-01".into();
    let ended = home.run(&["ready"]);
    assert_eq!(ended.code, 0);
    assert!(ended.err.contains("2024") && ended.err.contains("2026"), "{}", ended.err);
    home.today = "2028-01-01".into();
    let ended = home.run(&["write", "counted", "tray=cof-1", "standing=40"]);
    assert_eq!(ended.code, 0, "{}", ended.err);
    assert!(ended.err.contains("2028"), "{}", ended.err);
}

#[test]
fn foreign_bytes_get_a_sentence_and_never_a_panic() {
    let home = by_hand();
    let long = format!(r#"{{"kind":"noted","text":"{}"}}"#, "x".repeat(10 << 20));
    let cases: [(&str, Vec<u8>); 5] = [
        ("long", long.into_bytes()),
        ("latin", b"{\"kind\":\"noted\",\"text\":\"ca\xf1a\"}\n".to_vec()),
        ("bidi", "{\"kind\":\"noted\",\"text\":\"a\u{202e}b\"}\n".as_bytes().to_vec()),
        ("deep", format!("{}{}", "[".repeat(5000), "]".repeat(5000)).into_bytes()),
        ("nothing", vec![0, 1, 2, 255]),
    ];
    for (name, bytes) in cases {
        let file = home.with(name, bytes);
        let said = home.refused(&["import", file.to_str().unwrap()]);
        assert!(said.contains("line 1"), "{name}: {said}");
        assert!(!said.contains('\u{202e}') && said.len() < 2000, "{name}");
    }
    // In a sheet and in short lines too, and an empty sheet is none.
    let wide = home.with("wide.csv", format!("Tray,{0}\ncof-9,{0}\n", "x".repeat(5 << 20)));
    let empty = home.with("empty.txt", "\n\n");
    let (wide, empty) = (wide.to_str().unwrap(), empty.to_str().unwrap());
    for words in
        [&["import", wide, "--as", "trays"][..], &["import", wide, "--as", "beds"], &["write", "--batch", wide]]
    {
        let said = home.refused(words);
        assert!(said.contains("line 1") && said.len() < 6000 && !said.contains("0 MB"), "{words:?}: {}", said.len());
    }
    for words in [&["import", empty, "--as", "trays"][..], &["write", "--batch", empty]] {
        assert!(home.refused(words).contains("nothing was written"), "{words:?}");
    }
}

#[test]
fn a_day_of_planting_raises_no_doubt_and_keeps_its_order() {
    let home = by_hand();
    for (kind, fields) in [
        ("counted", &["tray=cof-1", "standing=50"][..]),
        ("outplanted", &["tray=cof-1", "bed=Upper 1", "count=6"]),
        ("plants_lost", &["bed=Upper 1", "species=coffee", "count=1", "cause=cattle"]),
        ("counted", &["tray=cof-1", "standing=44"]),
    ] {
        let mut words = vec!["write", kind];
        words.extend(fields);
        let said = home.done(&words);
        assert!(said.lines().count() >= 3, "it is said back, with what it changes: {said}");
        assert!(!said.contains("cannot be right"), "no doubt is named: {said}");
    }
    let ready = home.json(&["ready"]);
    assert_eq!((&ready["trays"][0]["standing"], &ready["doubts"]), (&json!(44), &json!([])));
    assert_eq!(ready["beds"][0]["species"][0]["open_positions"], json!(39));
}

#[test]
fn a_tray_nobody_has_counted_is_sown_and_not_called_empty() {
    let home = by_hand();
    home.write("sown", &["tray=cof-2", "lot=cof-L1", "seeds=40", "container=bag", "happened=2025-12-01", "--yes"]);
    let ready = home.json(&["ready"]);
    let tray = ready["trays"].as_array().unwrap().iter().find(|tray| tray["tray"] == "cof-2").unwrap();
    assert_eq!((&tray["stage"], &tray["ready"]), (&json!("sown"), &json!(false)));
    let living = tray["criteria"].as_array().unwrap().iter().find(|one| one["rule"] == "living").unwrap();
    assert_eq!((&living["met"], &living["basis"]), (&json!(null), &json!("unknown")));
}

#[test]
fn a_day_is_said_as_people_say_it_wherever_one_is_asked() {
    let home = by_hand();
    for (said, day) in [
        ("tomorrow", "2026-04-16"),
        ("mañana", "2026-04-16"),
        ("+7", "2026-04-22"),
        ("-1", "2026-04-14"),
        ("ayer", "2026-04-14"),
        ("10/4", "2026-04-10"),
        ("10 abr", "2026-04-10"),
        ("today", "2026-04-15"),
    ] {
        let option = format!("--on={said}");
        assert_eq!(home.json(&["ready", &option])["on"], day, "{said}");
        assert_eq!(home.json(&["ready", "--on", said])["on"], day, "{said} behind a blank");
    }
    for (said, day) in [("yesterday", "2026-04-14"), ("ayer", "2026-04-14"), ("hace 2 semanas", "2026-04-01")] {
        assert_eq!(home.json(&["ready", "--since", said])["since"], day, "{said}");
    }
    let ended = home.run(&["ready", "--since", "some day"]);
    assert_eq!(ended.code, 2, "{}", ended.err);
    assert!(ended.err.contains("--since: 'some day' is not a day"), "{}", ended.err);
    home.write("held", &["tray=cof-1", "why=frost", "happened=yesterday", "until=tomorrow"]);
    assert!(home.done(&["export"]).contains("\"until\":\"2026-04-16\""));
}

/// What is typed, cut at blanks outside of quotes.
fn typed(line: &str) -> Vec<String> {
    let pieces = line.split('"').enumerate();
    pieces
        .flat_map(|(n, piece)| match n % 2 {
            0 => piece.split_whitespace().map(str::to_string).collect::<Vec<_>>(),
            _ => vec![piece.to_string()],
        })
        .collect()
}

#[test]
fn a_formula_called_with_nothing_shows_an_example_that_answers() {
    let home = Home::default();
    let help = home.done(&["calc", "--help"]);
    let commands = help.split("Commands:").nth(1).unwrap().split("Options").next().unwrap();
    let topics: Vec<&str> = commands.lines().filter_map(|line| line.strip_prefix("  ")?.split(' ').next()).collect();
    let topics: Vec<&str> = topics.into_iter().filter(|topic| !topic.is_empty()).collect();
    assert!(topics.len() > 14, "{topics:?}");
    for topic in topics {
        for lang in ["en", "es"] {
            let said = home.refused(&["calc", topic, "--lang", lang]);
            let said = said.split_whitespace().collect::<Vec<_>>().join(" ");
            let example = said.split("outplant calc ").nth(1).unwrap_or_else(|| panic!("{topic}: {said}"));
            let words = typed(example);
            let mut all = vec!["calc"];
            all.extend(words.iter().map(String::as_str));
            assert_eq!(words[0], topic);
            // What a shell reads from a file is piped in here.
            if let Some(at) = all.iter().position(|word| *word == "<") {
                let known = include_str!("reference/matching.json");
                let known: serde_json::Value = serde_json::from_str(known).unwrap();
                let ended = home.run_with(&all[..at], &known["instances"][0].to_string());
                assert!(ended.code == 0 && !ended.out.is_empty(), "{example}: {}", ended.err);
                continue;
            }
            assert!(!home.done(&all).is_empty(), "{example}");
        }
    }
}

#[test]
fn a_nursery_begins_without_its_altitude_which_is_then_unknown_and_never_zero() {
    let home = Home::default();
    home.done(&["begin", "--name", "Low", "--lat", "10.4", "--lon", "-84"]);
    let exported = home.done(&["export"]);
    assert!(exported.contains("nursery_set") && !exported.contains("altitude_m"), "{exported}");
    assert!(home.done(&["log"]).contains("altitude unknown"));
    assert!(home.done(&["log", "--lang", "es"]).contains("altitud desconocida"));
    let plan = r#"plan=[{"species":"coffee","pattern":"square","row_m":2,"in_row_m":2}]"#;
    home.write("bed_set", &["bed=B1", "field=F", "length_m=20", "width_m=6", plan]);
    home.done(&["why", "B1", "--all"]);
}

#[test]
fn a_species_with_nearly_a_known_name_is_added_only_where_that_is_meant() {
    let home = Home::default().begun();
    let before = home.done(&["export"]);
    for (lang, like) in [("en", "like"), ("es", "como")] {
        let said = home.refused(&["species", "add", "cacoa", like, "grevillea", "--lang", lang]);
        assert!(said.contains("cacoa") && said.contains("cacao") && said.contains("--yes"), "{said}");
    }
    assert_eq!(home.done(&["export"]), before);
    home.done(&["species", "add", "cacoa", "like", "grevillea", "--yes"]);
    assert!(home.done(&["export"]).contains("cacoa"));
    // A name of its own is not asked about.
    home.done(&["species", "add", "zorrillo", "like", "grevillea"]);
}

#[test]
fn a_name_of_a_sheet_is_a_new_species_where_that_is_said_beforehand_and_goes_with_the_sheet() {
    let home = Home::default().begun();
    let sheet = home.with("trays.csv", "Tray,Species,How many\nc-1,zorrillo,41\nc-2,coffee,20\n");
    let words = ["import", sheet.to_str().unwrap(), "--as", "trays"];
    assert!(home.refused(&words).contains("zorrillo"));
    for (as_new, lang) in [("zorrillo", "en"), ("zorrillo like grevillea", "en"), ("zorrillo como grevillea", "es")] {
        let home = Home::default().begun();
        home.with("trays.csv", "Tray,Species,How many\nc-1,zorrillo,41\nc-2,coffee,20\n");
        let sheet = home.file("trays.csv");
        home.done(&["import", sheet.to_str().unwrap(), "--as", "trays", "--as-new", as_new, "--lang", lang]);
        let after = home.done(&["export"]);
        assert!(after.contains("species_set") && after.contains("\"tray\":\"c-1\""), "{as_new}: {after}");
        assert_eq!(after.contains("Grevillea robusta"), as_new.contains("grevillea"), "{as_new}: {after}");
        // It is one command: taken back, the species goes with the trays.
        home.done(&["undo", "--yes"]);
        assert!(home.refused(&["species", "zorrillo"]).contains("zorrillo"));
    }
}
