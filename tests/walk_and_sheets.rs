//! The round, sheets of the first day, batches of short lines and what changed since a day, by the program itself.

use crate::support::program::Home;
use serde_json::{Value, json};
use std::io::Write;
use std::process::Stdio;

/// The sample nursery, its days counted back from the day of the test.
fn sample() -> Home {
    let home = Home::default();
    home.done(&["sample", "--into", home.file("nursery.outplant").to_str().unwrap()]);
    home
}

fn in_width(home: &Home, columns: usize, words: &[&str]) -> String {
    let output = home.program().env("COLUMNS", columns.to_string()).args(words).output().unwrap();
    assert!(output.status.success(), "{words:?}");
    String::from_utf8(output.stdout).unwrap()
}

fn piped(home: &Home, words: &[&str], text: &str) -> (i32, String, String) {
    let mut command = home.program();
    let piped = command.args(words).stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
    let mut child = piped.spawn().unwrap();
    child.stdin.take().unwrap().write_all(text.as_bytes()).ok();
    let output = child.wait_with_output().unwrap();
    let read = |bytes: Vec<u8>| String::from_utf8(bytes).unwrap();
    (output.status.code().unwrap(), read(output.stdout), read(output.stderr))
}

fn words<'a>(list: &'a Value, key: &str) -> Vec<&'a str> {
    list.as_array().unwrap().iter().map(|one| one[key].as_str().unwrap()).collect()
}

/// 60 trays as an English spreadsheet program saves them: old enough, in bags, on benches nobody described.
fn english() -> String {
    let mut text = "Tray,Species,How many,Sown about,Bag,Bench,Colour\r\n".to_string();
    for i in 1..=60 {
        let name = ["coffee", "avocado", "grevillea", "jackfruit"][i % 4];
        let (day, month) = (1 + i % 28, 4 + i % 6);
        text.push_str(&format!("t-{i:02},{name},{},{day:02}/{month:02}/2025,big bag,Bench {},red\r\n", 20 + i, i % 4));
    }
    text
}

/// The same number as a Spanish one does, in letters of the Western European code page.
fn spanish() -> Vec<u8> {
    let mut text = "Código;Especie;Cantidad;Fecha de siembra;Funda;Mesa;Dueño\r\n".to_string();
    for i in 1..=60 {
        let name = ["café", "aguacate", "grevillea"][i % 3];
        text.push_str(&format!("Ñ-{i:02};{name};1.{i:03};{:02}/11/2025;funda 1 l;Mesa {};Iñés\r\n", 1 + i % 28, i % 3));
    }
    text.chars().map(|letter| u8::try_from(letter as u32).unwrap()).collect()
}

#[test]
fn the_round_names_every_stop_once_with_why_and_what_is_lost() {
    let home = sample();
    let walk = home.json(&["walk"]);
    assert_eq!((&walk["version"], &walk["on"]), (&json!(1), &json!("2026-04-15")));
    assert!(walk["minutes"].as_f64().unwrap() <= walk["minutes_allowed"].as_f64().unwrap());
    let stops = walk["stops"].as_array().unwrap();
    assert!(stops.len() > 8, "{}", stops.len());
    assert!(stops.iter().any(|stop| stop["loses_most"] == json!(true)));
    let all: Vec<&Value> = stops.iter().chain(walk["can_wait"].as_array().unwrap()).collect();
    let ids: std::collections::BTreeSet<&str> = all.iter().map(|stop| stop["id"].as_str().unwrap()).collect();
    assert_eq!(ids.len(), all.len(), "an id stands twice");
    for stop in &all {
        let (why, source) = (stop["why"].as_str().unwrap(), stop["source"].as_str().unwrap());
        assert!(!why.is_empty() && !source.is_empty(), "{stop:#}");
        assert!(stop["id"].as_str().unwrap().starts_with(stop["task"].as_str().unwrap()), "{stop:#}");
        assert!(stop["at_stake"]["plants"].as_f64().unwrap() >= 0.0);
        let about = ["tray", "bed", "lot", "place"].iter().filter(|key| !stop[**key].is_null()).count();
        assert!(about >= 1 || stop["task"] == json!("gauge"), "{stop:#}");
    }
    let text = home.done(&["walk"]);
    assert!(text.contains("Kilima school nursery") && text.contains(&format!("{} stops", stops.len())), "{text}");
    for stop in stops {
        if let Some(tray) = stop["tray"].as_str() {
            assert!(text.contains(tray), "{tray} is missing:\n{text}");
        }
    }
    assert!(text.contains("^ ") && text.contains("(triangle "), "places show their signs:\n{text}");
    assert!(text.contains(" can wait: ") && text.contains("outplant write let_go task=\""), "{text}");
}

#[test]
fn no_line_of_the_round_is_wider_than_asked_in_either_language() {
    let home = sample();
    for lang in ["en", "es"] {
        for columns in [40, 48, 63, 80, 120] {
            for day in ["2026-04-15", "2026-06-20", "2026-01-10"] {
                let text = in_width(&home, columns, &["walk", "--lang", lang, "--on", day]);
                for line in text.lines() {
                    let width = outplant::base::columns::width_of(line);
                    assert!(width <= columns, "{lang} {columns} {day}: {line}");
                    assert_eq!(line, line.trim_end());
                }
            }
        }
    }
    let spanish = in_width(&home, 80, &["walk", "--lang", "es"]);
    assert!(spanish.contains("Ronda: ") && spanish.contains("Contar "), "{spanish}");
    assert!(!spanish.contains("every ") && !spanish.contains("last:"), "{spanish}");
}

#[test]
fn a_task_let_go_is_gone_until_its_day() {
    let home = sample();
    let walk = home.json(&["walk"]);
    let ids = words(&walk["stops"], "id");
    let id = ids.iter().find(|id| id.starts_with("count ")).unwrap();
    home.write("let_go", &[&format!("task={id}"), "until=2026-04-20"]);
    let has = |on: &str| {
        let walk = home.json(&["walk", "--on", on]);
        words(&walk["stops"], "id").contains(id) || words(&walk["can_wait"], "id").contains(id)
    };
    assert!(!has("2026-04-15") && !has("2026-04-20"));
    assert!(has("2026-04-21"));
}

#[test]
fn an_empty_nursery_teaches_on_the_round() {
    let home = Home::default().begun();
    let walk = home.done(&["walk"]);
    assert!(walk.contains("outplant write sown") && walk.contains("import trays.csv --as trays"), "{walk}");
    assert!(home.done(&["walk", "--lang", "es"]).contains("pluviómetro"));
}

#[test]
fn an_english_sheet_gives_its_first_answers_and_what_is_unknown() {
    let home = Home::default().begun();
    let file = home.with("trays.csv", english());
    let file = file.to_str().unwrap();
    let before = home.done(&["export"]);
    let tried = home.done(&["import", file, "--as", "trays", "--dry-run"]);
    assert!(tried.contains("60 rows read, 60 entries could be written; nothing was"), "{tried}");
    assert_eq!(home.done(&["export"]), before, "a dry run writes nothing");
    let said = home.done(&["import", file, "--as", "trays"]);
    for part in [
        "60 rows read, 60 entries written",
        "UTF-8",
        "commas",
        "mean nothing here: Colour",
        "Now 0 of 60 trays ready",
        "hardening",
        "outplant ready",
        "the volume of 'big bag', for 60 trays",
        "outplant write container_set container=\"big bag\" volume_ml=...",
        "How long they have stood in their bags is not in the sheet",
        "outplant write place_set place=\"Bench 1\" order=1 shade_pct=...",
        "outplant write hardening_begun tray=",
    ] {
        assert!(said.contains(part), "no '{part}':\n{said}");
    }
    assert!(said.find("the shade over").unwrap() < said.find("height and collar").unwrap(), "cheapest first:\n{said}");
    let ready = home.json(&["ready"]);
    assert_eq!(ready["trays"].as_array().unwrap().len(), 60);
    // What the import says settles it, does: the bench's shade, the bag, and since when the tray stands in its light.
    let is_ready = || home.json(&["why", "tray", "t-12"])["tray"]["ready"] == json!(true);
    assert!(!is_ready());
    home.write("place_set", &["place=Bench 0", "order=1", "shade_pct=40"]);
    home.write("container_set", &["container=big bag", "volume_ml=2000", "depth_cm=25"]);
    let (code, _, err) = piped(&home, &["write", "--batch", "-"], "2026-02-01\nt-12 hardening\n");
    assert_eq!(code, 0, "{err}");
    assert!(!is_ready(), "nobody knows how tall they are");
    let plants = serde_json::to_string(&vec![json!({"height_cm":28}); 20]).unwrap();
    home.write("measured", &["tray=t-12", &format!("plants={plants}")]);
    assert!(is_ready(), "{}", home.done(&["why", "tray", "t-12"]));
}

#[test]
fn a_spanish_sheet_is_read_day_first_and_answered_in_spanish() {
    let home = Home::default().begun();
    let file = home.with("bandejas.csv", spanish());
    let said = home.done(&["import", file.to_str().unwrap(), "--as", "trays", "--lang", "es"]);
    for part in [
        "60 filas leídas",
        "Windows-1252",
        "punto y coma",
        "Dueño",
        "'1.001' son 1001; y 59 filas más",
        "a 'funda 1 l' le caben 1000 ml",
        "Las fechas se leen con el día primero",
        "Listas para salir ahora: 0 de 60 bandejas",
    ] {
        assert!(said.contains(part), "no '{part}':\n{said}");
    }
    // 3 November 2025, 163 days before the test's day.
    let why = home.json(&["why", "tray", "Ñ-02"])["tray"].clone();
    let age = why["criteria"].as_array().unwrap().iter().find(|one| one["rule"] == "days_since_sowing").unwrap();
    assert_eq!((&why["standing"], &age["known_value"]), (&json!(1002), &json!(163)), "{why:#}");
}

#[test]
fn a_sheet_of_beds_is_told_with_what_is_missing_and_for_programs_too() {
    let home = Home::default().begun();
    let text = "Bed,Length,Width,Species,Spacing,Standing,Nurse plants,Nurses planted,Light\n\
                Upper 1,30,12,coffee,2.5 x 2,10,banana 20,August 2025,60%\n\
                Upper 2,20,6,avocado,,,,,\n";
    let file = home.with("beds.csv", text);
    let file = file.to_str().unwrap();
    let tried = home.json(&["import", file, "--as", "beds", "--dry-run"]);
    assert_eq!((&tried["dry_run"], &tried["rows"], &tried["drafts"]), (&json!(true), &json!(2), &json!(5)));
    assert_eq!((&tried["entries"], &tried["delimiter"]), (&json!([]), &json!(",")));
    assert_eq!(home.json(&["ready"])["beds"], json!([]));
    let taken = home.json(&["import", file, "--as", "beds"]);
    assert_eq!(taken["entries"].as_array().unwrap().len(), 5);
    let unknown = taken["unknown"].as_array().unwrap();
    let light = unknown.iter().find(|one| one["what"] == "bed_light").unwrap();
    assert_eq!((&light["lines"], &light["settled_by"]), (&json!([3]), &json!("light_read")));
    assert!(light["command"].as_str().unwrap().starts_with("outplant write light_read bed="));
    assert!(taken["understood"].as_array().unwrap().iter().any(|one| one["written"] == "August 2025"));
    let beds = home.json(&["ready"]);
    assert_eq!(words(&beds["beds"], "bed"), ["Upper 1", "Upper 2"]);
}

#[test]
fn a_bad_sheet_names_every_row_and_column_and_writes_nothing() {
    let home = Home::default().begun();
    let bad = english()
        .replace("t-05,avocado", "t-05,avokado")
        .replace("t-11,jackfruit,31", "t-11,jackfruit,some")
        .replace("t-40,", "t-39,");
    let file = home.with("bad.csv", bad);
    let file = file.to_str().unwrap();
    let before = home.done(&["export"]);
    let said = home.refused(&["import", file, "--as", "trays"]);
    let lines: Vec<&str> = said.lines().collect();
    assert_eq!(lines.len(), 5, "{said}");
    for (line, parts) in lines.iter().zip([
        ["line 6: column 2:", "avokado", "avocado"],
        ["line 12: column 3:", "some", "How many"],
        ["line 41: column 1:", "t-39", "line 40"],
        ["Columns passed over", "Colour", ""],
        ["nothing was written", "", ""],
    ]) {
        assert!(parts.iter().all(|part| line.contains(part)), "{line}");
    }
    assert_eq!(home.done(&["export"]), before);
    let told = home.run(&["import", file, "--as", "trays", "--json"]);
    assert_eq!(told.code, 1);
    let told: Value = serde_json::from_str(&told.err).unwrap();
    assert_eq!(told["refused"].as_array().unwrap().len(), 5);
    // A file that is not there, a column that is missing, a sheet taken twice.
    assert!(home.refused(&["import", "none.csv", "--as", "trays"]).contains("none.csv"));
    let no_count = home.with("short.csv", "Tray,Species\nt-1,coffee\n");
    let said = home.refused(&["import", no_count.to_str().unwrap(), "--as", "trays"]);
    assert!(said.contains("line 1") && said.contains("how many"), "{said}");
    let good = home.with("good.csv", english());
    home.done(&["import", good.to_str().unwrap(), "--as", "trays"]);
    let twice = home.refused(&["import", good.to_str().unwrap(), "--as", "trays"]);
    assert!(twice.contains("every row of this sheet is in the book already, 60 in all"), "{twice}");
    assert_eq!(twice.lines().count(), 3, "{twice}");
}

#[test]
fn a_batch_is_written_whole_or_not_at_all() {
    let home = Home::default().begun();
    let file = home.with("trays.csv", english());
    home.done(&["import", file.to_str().unwrap(), "--as", "trays"]);
    let before = home.done(&["export"]);
    let paper = home.with("paper.txt", "t-07 25\nt-08 -3 rats\nrain 12\n");
    let paper = paper.to_str().unwrap();
    let tried = home.done(&["write", "--batch", paper, "--dry-run"]);
    assert!(tried.contains("3 lines read, 3 entries could be written; nothing was"), "{tried}");
    assert_eq!(home.done(&["export"]), before);
    let (code, out, err) = piped(&home, &["write", "--batch", "-"], "t-07 25\nt-99 3\nt-08 fortyish\n");
    assert_eq!((code, out.as_str()), (1, ""));
    for part in ["line 2: column 1:", "t-99", "line 3: column 1:", "forty", "nothing was written"] {
        assert!(err.contains(part), "no '{part}':\n{err}");
    }
    // More out than stands: refused by the books with its line.
    let (code, _, err) = piped(&home, &["write", "--batch", "-"], "t-07 24\nt-08 x 900 runts\n");
    assert!(code == 1 && err.contains("line 2: t-08") && err.contains("28"), "{err}");
    let (code, _, err) = piped(&home, &["write", "--batch", "-", "standing=4"], "t-07 24\n");
    assert!(code == 1 && err.contains("standing=4"), "{err}");
    let (code, _, err) = piped(&home, &["write", "--batch", "-", "--happened", "2026-04-16"], "t-07 24\n");
    assert!(code == 1 && err.contains("16 Apr 2026"), "{err}");
    assert_eq!(home.done(&["export"]), before);
    let said = home.done(&["write", "--batch", paper, "happened=2026-04-15"]);
    assert!(said.contains("3 lines read, 3 entries written"), "{said}");
    assert_eq!(home.json(&["why", "tray", "t-08"])["tray"]["standing"], json!(25));
    let told = home.json(&["write", "--batch", paper, "--dry-run"]);
    assert_eq!((&told["version"], &told["entries"]), (&json!(1), &json!([])));
    home.done(&["undo"]);
    assert_eq!(home.json(&["why", "tray", "t-08"])["tray"]["standing"], json!(28), "one command, taken back whole");
}

#[test]
fn the_help_of_write_lists_the_short_lines_in_both_languages() {
    let home = Home::default();
    let english = home.done(&["write", "--help"]);
    let spanish = home.done(&["write", "--help", "--lang", "es"]);
    for (example, kind) in outplant::desk::FORMS {
        assert!(english.lines().any(|line| line.contains(example) && line.ends_with(kind)), "{example}:\n{english}");
    }
    let wording = outplant::wording::Wording::new(outplant::wording::Lang::Es);
    for (example, kind) in outplant::desk::FORMS_IN_SPANISH {
        let kind = wording.kind_typed(kind);
        assert!(spanish.lines().any(|line| line.contains(example) && line.ends_with(&kind)), "{example}:\n{spanish}");
    }
}

/// Coffee that can go out but for a weeding, 14 April; weeded by Pia on the 15th.
fn weeded_today() -> Home {
    let mut home = Home { today: "2026-04-14".into(), ..Home::default() }.begun();
    home.write("season_set", &[r#"rains=[{"from":"03-01","until":"06-15"}]"#, "happened=2026-01-01"]);
    home.write("container_set", &["container=bag", "volume_ml=1000", "depth_cm=23", "happened=2025-01-01"]);
    home.write("place_set", &["place=Half", "order=1", "shade_pct=45", "happened=2025-01-01"]);
    let from = "from=opening";
    home.write(
        "plants_received",
        &["tray=cof-1", "species=coffee", "count=48", from, "form=bag", "age_days=318", "container=bag", "place=Half"],
    );
    let plants = serde_json::to_string(&vec![json!({"height_cm":28}); 20]).unwrap();
    home.write("measured", &["tray=cof-1", &format!("plants={plants}")]);
    home.write("hardening_begun", &["tray=cof-1", "happened=2026-02-01"]);
    let plan = r#"plan=[{"species":"coffee","pattern":"square","row_m":2,"in_row_m":2}]"#;
    home.write("bed_set", &["bed=Upper 1", "field=Upper", "length_m=20", "width_m=6", plan]);
    home.write("light_read", &["bed=Upper 1", "light_share=0.6"]);
    home.write(
        "soil_checked",
        &["bed=Upper 1", "rod_mm=8", "push_kg=10", "depth_cm=35", "wet=yes", "happened=2026-04-08"],
    );
    home.write("prepared", &["bed=Upper 1", "task=cleared"]);
    home.write("prepared", &["bed=Upper 1", "task=holes"]);
    for day in ["2026-04-12", "2026-04-13", "2026-04-14"] {
        home.write("weather", &["rain_mm=10", &format!("happened={day}")]);
    }
    home.today = "2026-04-15".into();
    home.write("prepared", &["bed=Upper 1", "task=weeded", "who=Pia"]);
    home
}

#[test]
fn what_changed_since_a_day_names_the_entry_its_day_and_who() {
    let home = weeded_today();
    let since = home.json(&["ready", "--since", "2026-04-14"]);
    assert_eq!(since["since"], json!("2026-04-14"));
    let changes = since["changes"].as_array().unwrap();
    let pair = changes.iter().find(|change| change["subject"] == "pair").unwrap_or_else(|| panic!("{since:#}"));
    assert_eq!((&pair["tray"], &pair["bed"]), (&json!("cof-1"), &json!("Upper 1")));
    assert_eq!(
        (&pair["was"], &pair["is"], &pair["day_passed"]),
        (&json!("does not fit"), &json!("fits"), &json!(false))
    );
    assert_eq!((&pair["rules"], pair["entries"].as_array().unwrap().len()), (&json!(["weeded"]), 1));
    let bed = changes.iter().find(|change| change["subject"] == "bed").unwrap();
    assert_eq!((&bed["was"], &bed["is"], &bed["species"]), (&json!("bare"), &json!("open"), &json!("COA")));
    let text = home.done(&["ready", "--since", "2026-04-14"]);
    for part in ["since the end of 14 Apr 2026", "cof-1 for Upper 1: does not fit → fits (weeding)", "+ 15 Apr, Pia:"]
    {
        assert!(text.contains(part), "no '{part}':\n{text}");
    }
    assert!(home.done(&["ready", "--since", "2026-04-14", "--lang", "es"]).contains("no va → va bien"));
    // The main answer of today says it in one line; the day after nothing is new, then the rain is too long ago.
    let ready = home.done(&["ready"]);
    assert!(ready.contains("Since yesterday: cof-1 for Upper 1 fits (15 Apr, Pia:"), "{ready}");
    let mut home = home;
    home.today = "2026-04-16".into();
    assert!(!home.done(&["ready"]).contains("Since yesterday"));
    let dry = home.json(&["ready", "--since", "2026-04-15", "--on", "2026-04-25"]);
    let pair = dry["changes"].as_array().unwrap().iter().find(|change| change["subject"] == "pair").unwrap().clone();
    assert_eq!(
        (&pair["is"], &pair["day_passed"], &pair["entries"]),
        (&json!("does not fit"), &json!(true), &json!([]))
    );
    assert!(pair["text"].as_str().unwrap().contains("nothing written"), "{pair:#}");
    // The last safe day of rains to 15 June is 23 April: the 24th was one too many.
    assert_eq!((&pair["turned_on"], &pair["passage"]), (&json!("2026-04-24"), &json!("rains")));
    assert!(pair["cause"].as_str().unwrap().starts_with("24 Apr, nothing written"), "{pair:#}");
    assert!(home.done(&["ready", "--since", "2026-04-15"]).contains("No verdict changed"));
    assert!(home.refused(&["ready", "--since", "2026-04-16"]).contains("16 Apr 2026"));
}

#[test]
fn signs_are_drawn_and_named_without_colour_and_in_a_plain_locale() {
    let home = weeded_today();
    home.write("place_set", &["place=Half", "order=1", "shade_pct=45", "sign=circle 2"]);
    let came = ["tray=cod-9", "species=cordia", "count=20", "from=bought", "form=bag", "place=Half", "sign=triangle 3"];
    home.write("plants_received", &came);
    let mut command = home.program();
    command.env("NO_COLOR", "1").env("LC_ALL", "C").env("LANG", "C").args(["walk"]);
    let output = command.output().unwrap();
    let text = String::from_utf8(output.stdout).unwrap();
    assert!(output.status.success() && !text.contains('\u{1b}'), "{text}");
    // Drawn in what such a terminal has, and named.
    assert!(text.contains("o .. (circle 2)") && text.contains("^ ... (triangle 3)"), "{text}");
    let output = home.program().env("LANG", "en_GB.UTF-8").args(["walk"]).output().unwrap();
    let text = String::from_utf8(output.stdout).unwrap();
    assert!(text.contains("● •• (circle 2)") && text.contains("▲ ••• (triangle 3)"), "{text}");
    let walk = home.json(&["walk"]);
    let out = walk["stops"].as_array().unwrap().iter().find(|stop| stop["tray"] == "cod-9").unwrap().clone();
    assert_eq!((&out["sign"], &out["place_sign"]), (&json!("triangle 3"), &json!("circle 2")));
}

#[test]
fn the_round_for_programs_says_until_when_what_for_and_which_minutes_are_cut() {
    let home = sample();
    let walk = home.json(&["walk"]);
    assert_eq!(walk["minutes_of"], json!("looking"));
    assert!(walk["minutes"].as_f64().unwrap() <= walk["minutes_allowed"].as_f64().unwrap());
    let stops = walk["stops"].as_array().unwrap().iter().chain(walk["can_wait"].as_array().unwrap());
    let mut work = 0.0;
    for stop in stops.clone() {
        for key in ["until", "until_for", "until_source", "until_text", "lost"] {
            assert!(stop[key].as_str().is_some_and(|text| !text.is_empty()), "{key} of {stop:#}");
        }
        let overdue = stop["until"].as_str().unwrap() < walk["on"].as_str().unwrap();
        assert_eq!(stop["overdue"], json!(overdue), "{stop:#}");
        assert_eq!(stop["work_minutes"].is_null(), stop["work_source"].is_null());
    }
    for stop in walk["stops"].as_array().unwrap() {
        work += stop["work_minutes"].as_f64().unwrap_or(0.0);
    }
    assert!((walk["work_minutes"].as_f64().unwrap() - work).abs() < 0.01 && work > 0.0);
    let text = home.done(&["walk"]);
    assert!(text.contains("of looking and writing down"), "{text}");
    for part in ["overdue since", "while the rains are safe", "its last day", "trays ready with no place left"] {
        assert!(text.replace("\n    ", " ").replace('\n', " ").contains(part), "no '{part}':\n{text}");
    }
}

#[test]
fn a_dry_run_shows_columns_names_rows_and_the_first_answers() {
    let home = Home::default().begun();
    let text = "Tray,Kind,How many,Sown,Bag,Where,Owner\r\n\
                c-1,coffee,\"about 40\",12/05/2025,1.5L bag,Bench 1,Ada\r\n\
                a-1,palta,22,August 2025,1.5L bag,\"Bench\n1\",Ada\r\n\
                ,,,,,,\r\nTOTAL,,70,,,,\r\n";
    let file = home.with("trays.csv", text);
    let file = file.to_str().unwrap();
    let before = home.done(&["export"]);
    let tried = home.done(&["import", file, "--as", "trays", "--dry-run"]);
    for part in [
        "Tray → tray; Kind → species; How many → how many; Sown → sown about; Bag → bag; Where → bench",
        "coffee → arabica coffee, Coffea arabica (1)",
        "palta → avocado, Persea americana (1)",
        "mean nothing here: Owner",
        "'12/05/2025' (line 2) is 12 May 2025",
        "Line 5 is a total and was passed over; it says 70, the rows sum up to 62",
        "line 2: tray c-1 received: 40 arabica coffee, already standing, bag",
        "1.5L bag, at Bench 1",
        "'1.5L bag' holds 1500 ml",
        "The first answers it would give:",
        "Now 0 of 2 trays ready",
    ] {
        let flat = tried.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flat.contains(part), "no '{part}':\n{tried}");
    }
    assert_eq!(home.done(&["export"]), before);
    let told = home.json(&["import", file, "--as", "trays", "--dry-run"]);
    assert_eq!(words(&told["columns"], "means"), ["tray", "species", "how many", "sown about", "bag", "bench"]);
    assert_eq!((&told["species"][1]["written"], &told["species"][1]["species"]), (&json!("palta"), &json!("AVO")));
    assert_eq!(words(&told["lines"], "kind"), ["container_set", "plants_received", "counted", "plants_received"]);
    let done = home.json(&["import", file, "--as", "trays"]);
    for same in ["answers", "rows", "drafts", "lines", "understood", "unknown", "notes"] {
        assert_eq!(told[same], done[same], "{same}");
    }
    // With faults a dry run shows what was understood too, and ends as a refusal.
    let bad = home.with("bad.csv", "Tray,Species,How many\nb-1,coffee,4\nb-2,cofee,minus two\n");
    let said = home.refused(&["import", bad.to_str().unwrap(), "--as", "trays", "--dry-run"]);
    for part in [
        "cofee → not known (1)",
        "line 2: tray b-1 received: 4 arabica coffee",
        "line 3: column 2: Species: nobody knows 'cofee' here; nearest: coffee",
        "line 3: column 3: How many cannot be below 0; 'minus two' was written",
        "nothing was written",
    ] {
        assert!(said.contains(part), "no '{part}':\n{said}");
    }
}

#[test]
fn ready_of_the_sample_is_read_at_a_glance_and_leads_with_what_cannot_wait() {
    let home = sample();
    for lang in ["en", "es"] {
        // In the rains, in the dry months, before and after what is looked at today.
        for day in [
            "2025-11-01",
            "2026-01-10",
            "2026-02-20",
            "2026-03-20",
            "2026-04-08",
            "2026-04-20",
            "2026-05-10",
            "2026-08-15",
        ] {
            let text = home.done(&["ready", "--lang", lang, "--on", day]);
            assert!(text.lines().count() <= 60, "{day}, {} lines:\n{text}", text.lines().count());
            let plan = text.lines().position(|line| line.starts_with("Plan ")).unwrap();
            let blank = text.lines().position(str::is_empty).unwrap();
            assert_eq!(plan, blank + 1, "{day}: something stands before the plan\n{text}");
        }
        let text = home.done(&["ready", "--lang", lang]);
        assert!(text.lines().count() <= 60, "{} lines:\n{text}", text.lines().count());
        let (urgent, later) = (text.find("cod-012"), text.find("cof-021"));
        assert!(urgent.is_some() && urgent < later, "{text}");
        assert!(text.contains("outplant ready --all"), "{text}");
    }
}

#[test]
fn why_tells_what_holds_back_and_folds_what_is_met() {
    let home = sample();
    for words in [&["why", "tray", "cof-028"][..], &["why", "bed", "School 4"], &["why", "pair", "cof-023", "School 1"]]
    {
        let (short, all) = (home.done(words), home.done(&[words, &["--all"]].concat()));
        assert!(short.lines().count() < all.lines().count(), "{short}\n{all}");
        let in_one_line = short.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(in_one_line.contains("(--all says why"), "{short}");
        for line in all.lines().filter(|line| line.starts_with("x ")) {
            let name = line.split("  ").next().unwrap();
            assert!(short.contains(name), "{name} is missing in:\n{short}");
        }
    }
}

#[test]
fn ready_says_what_is_offered_twice_and_what_its_days_stand_for() {
    let home = sample();
    let text = home.done(&["ready", "--all"]);
    let ready = home.json(&["ready"]);
    let shared = ready["shared"].as_array().unwrap();
    assert!(!shared.is_empty());
    for one in shared {
        let said = one["text"].as_str().unwrap();
        assert!(text.split_whitespace().collect::<Vec<_>>().join(" ").contains(said), "no '{said}':\n{text}");
        assert!(one["beds"].as_array().unwrap().len() + one["trays"].as_array().unwrap().len() > 2, "{one:#}");
    }
    assert!(text.contains("(rains)") && text.contains("(last day)") && text.contains("(bag)"), "{text}");
}

#[test]
fn looking_back_says_what_changed_on_that_day() {
    let home = weeded_today();
    let back = home.done(&["ready", "--on", "2026-04-14"]);
    assert!(!back.contains("Since yesterday"), "{back}");
    let mut later = home;
    later.today = "2026-04-20".into();
    let back = later.done(&["ready", "--on", "2026-04-15"]);
    assert!(back.contains("Since the day before: cof-1 for Upper 1 fits (15 Apr, Pia:"), "{back}");
    assert!(!later.done(&["ready"]).contains("Since"), "nothing since yesterday");
}

#[test]
fn a_species_without_least_days_is_among_what_is_unknown() {
    let home = weeded_today();
    let own = r#"profile={"code":"nix","names":{"en":["neemish"],"es":["nimo"]}}"#;
    home.write("species_set", &["species=NIMX", own]);
    let sheet = "tray,species,how many,sown about\nnim-1,neemish,30,2025-10-01\ncof-7,coffee,30,2025-10-01\n";
    let (code, out, err) = piped(&home, &["import", "-", "--as", "trays", "--dry-run", "--json"], sheet);
    assert_eq!(code, 0, "{err}");
    let taken: Value = serde_json::from_str(&out).unwrap();
    let unknown = taken["unknown"].as_array().unwrap();
    let least: Vec<&Value> = unknown.iter().filter(|one| one["what"] == "least_days").collect();
    assert_eq!(least.len(), 1, "{taken:#}");
    assert_eq!((&least[0]["name"], &least[0]["lines"]), (&json!("NIMX"), &json!([2])));
    assert!(least[0]["text"].as_str().unwrap().contains("neemish"));
    assert!(least[0]["command"].as_str().unwrap().contains("species_set species=NIMX"));
}

#[test]
fn a_sheet_that_is_no_sheet_is_told_what_to_do() {
    let home = Home::default().begun();
    let said = |text: &str, what: &str, lang: &str| {
        let file = home.with("sheet.csv", text);
        home.refused(&["import", file.to_str().unwrap(), "--as", what, "--lang", lang])
    };
    let headless = said("cof-1,coffee,41\ncof-2,coffee,30\n", "trays", "en");
    assert!(
        headless.contains("Tray,Species,How many,Sown about,Bag,Bench") && headless.contains("cof-1"),
        "{headless}"
    );
    assert!(said("e-1;20;6\n", "beds", "es").contains("Parcela;Largo;Ancho;Especie"));
    let missing = said("Tray,Species,Colour\nt,coffee,red\n", "trays", "en");
    assert!(missing.contains("no column is named \"how many\"; found: Tray, Species, Colour"), "{missing}");
    assert!(missing.lines().next().unwrap().len() < 100, "{missing}");
    let light = said("Bed,Length,Width,Species,Spacing,Light\nU,20,6,coffee,2x2,160\n", "beds", "en");
    assert!(light.contains("column 6: Light is between 0 and 100"), "{light}");
    assert!(said("tray,species,count,sown\na,coffee,4,Nov 24\n", "trays", "en").contains("November 2024"));
    assert!(said("", "trays", "en").contains("no row with the names"));
}

#[test]
fn a_dry_batch_says_what_each_line_becomes_and_its_faults_in_words() {
    let home = Home::default().begun();
    let file = home.with("trays.csv", english());
    home.done(&["import", file.to_str().unwrap(), "--as", "trays"]);
    let beds = home.with("beds.csv", "bed,length,width,species,spacing\nSchool 1,30,12,avocado,2x2\n");
    home.done(&["import", beds.to_str().unwrap(), "--as", "beds"]);
    let before = home.done(&["export"]);
    let dry = |text: &str, more: &[&str]| {
        let mut words = vec!["write", "--batch", "-", "--dry-run"];
        words.extend(more);
        piped(&home, &words, text)
    };
    let paper = "t-07 25, 2 dead\nt-08 3 dead\n2026-04-10 rain 12\nt-05 @ School 1 5 rows 2-4\n";
    let (code, out, err) = dry(paper, &[]);
    assert_eq!(code, 0, "{err}");
    for part in [
        "4 lines read, 4 entries could be written; nothing was",
        "line 1: tray t-07 counted: 25 living, 2 dead",
        "line 2: tray t-08: 3 lost, cause not said",
        "line 4: 5 from tray t-05 planted out in bed School 1, rows 2-4",
        "As of 10 Apr 2026 (1), 15 Apr 2026 (3).",
    ] {
        assert!(out.contains(part), "no '{part}':\n{out}");
    }
    let (_, out, _) = dry(paper, &["--lang", "es"]);
    assert!(out.contains("línea 1: bandeja t-07 contada: 25 vivas, 2 muertas"), "{out}");
    let (_, out, _) = dry(paper, &["--json"]);
    let told: Value = serde_json::from_str(&out).unwrap();
    assert_eq!(
        (&told["dry_run"], words(&told["lines"], "kind")),
        (&json!(true), vec!["counted", "lost", "weather", "outplanted"])
    );
    assert_eq!(told["lines"][2]["happened"], json!("2026-04-10"));
    // Every fault at once, in words.
    let (code, out, err) = dry("t-07 41.5\nt-08 @ Schaal 1 30 rows 2-4\nt-09 x 900 runts\nt-06 shade 130\n", &[]);
    assert_eq!((code, out.as_str()), (1, ""));
    for part in [
        "line 1: column 6: the number of plants is counted in whole ones, not '41.5'",
        "line 2: column 8: nobody knows 'Schaal 1' here; nearest: School 1",
        "line 3: t-09: 900 out",
        "line 4: ",
        "the shade in percent is between 0 and 100",
    ] {
        assert!(err.contains(part), "no '{part}':\n{err}");
    }
    let (code, _, err) = dry("\n# nothing today\n", &[]);
    assert!(code == 1 && err.contains("no line holds an entry"), "{err}");
    assert_eq!(home.done(&["export"]), before);
    // The day of the whole sheet as people say it.
    for day in ["happened=yesterday", "happened=ayer", "happened=14/4", "happened=2026-04-14"] {
        let (_, out, err) = dry("rain 3\n", &[day]);
        assert!(out.contains("As of 14 Apr 2026 (1)"), "{day}: {out}{err}");
    }
    let (code, _, err) = dry("t-07 25\n", &["--happened", "soon"]);
    assert!(code == 1 && err.contains("'soon' is no day"), "{err}");
    home.write("weather", &["rain_mm=3", "happened=yesterday"]);
}

#[test]
fn only_a_task_of_the_round_is_let_go() {
    let home = sample();
    let walk = home.json(&["walk"]);
    let id = words(&walk["stops"], "id").into_iter().find(|id| id.starts_with("count ")).unwrap().to_string();
    let wrong = home.refused(&["write", "let_go", "task=cuont cof-9999", "never=true"]);
    assert!(wrong.contains("there is no task 'cuont cof-9999'") && wrong.contains("nearest:"), "{wrong}");
    let (code, _, err) = piped(&home, &["write", "--batch", "-"], "let go dance cof-022 never\n");
    assert!(code == 1 && err.contains("there is no task 'dance cof-022'"), "{err}");
    // Said in Spanish it is the same task.
    let spanish = format!("dejar {} hasta 2026-04-20\n", id.replace("count", "contar"));
    let (code, _, err) = piped(&home, &["write", "--batch", "-"], &spanish);
    assert_eq!(code, 0, "{err}");
    assert!(!words(&home.json(&["walk"])["stops"], "id").contains(&id.as_str()));
}

#[test]
fn begin_names_the_next_step() {
    let home = Home::default();
    let said = home.done(&["begin", "--name", "Test terrace", "--lat", "-1.2", "--lon", "36.1", "--altitude", "1650"]);
    assert!(said.contains("outplant import trays.csv --as trays"), "{said}");
}

#[test]
fn what_can_wait_on_the_first_day_is_said_in_one_line() {
    let home = Home::default().begun();
    let sheet = home.with("trays.csv", crate::first_day::of_a_first_day());
    home.done(&["import", sheet.to_str().unwrap(), "--as", "trays"]);
    let text = home.done(&["walk"]);
    let parts: Vec<&str> = text.split("\n\n").filter(|part| part.contains(" can wait: ")).collect();
    assert_eq!(parts.len(), 1, "{text}");
    assert!(parts[0].lines().count() <= 2 && parts[0].trim().ends_with('.'), "{text}");
}

#[test]
fn of_rains_that_nobody_described_the_round_says_nothing() {
    let home = Home::default().begun();
    let sheet =
        home.with("trays.csv", "Tray,Species,How many,Sown about,Bench\ncof-1,coffee,41,8 months ago,Bench 1\n");
    home.done(&["import", sheet.to_str().unwrap(), "--as", "trays"]);
    let unfolded = |words: &[&str]| home.done(words).split_whitespace().collect::<Vec<_>>().join(" ");
    let (en, es) = (unfolded(&["walk"]), unfolded(&["walk", "--lang", "es"]));
    assert!(en.contains("may not go out in time") && !en.contains("rains"), "{en}");
    assert!(es.contains("pueden no salir a tiempo") && !es.contains("lluvias"), "{es}");
    // Once they are described, it is they that are missed.
    home.write("season_set", &[r#"rains=[{"from":"03-15","until":"08-30"}]"#]);
    assert!(unfolded(&["walk"]).contains("may miss the rains"));
}

#[test]
fn a_species_nobody_knows_is_added_with_the_figures_of_another_as_ours() {
    let home = Home::default().begun();
    let said = home.refused(&[
        "write",
        "lot_received",
        "lot=zor-L1",
        "species=zorrillo",
        "source=own",
        "collected=2026-01-02",
        "seeds=40",
        "kept=dry_open",
    ]);
    assert!(said.contains("outplant species add NAME like SPECIES"), "{said}");
    let before = home.done(&["export"]);
    for (words, part) in [
        (&["species", "add", "zorrillo"][..], "outplant species add NAME like SPECIES"),
        (&["species", "add", "zorrillo", "like", "cedro"], "may mean several plants"),
        (&["species", "add", "zorrillo", "like", "gliricidja"], "gliricidia"),
        (&["species", "add", "madero", "negro", "like", "coffee"], "known already"),
    ] {
        let said = home.refused(words);
        assert!(said.contains(part), "{words:?}: {said}");
    }
    assert_eq!(home.done(&["export"]), before);
    home.done(&["species", "add", "zorrillo", "like", "madero", "negro"]);
    let told: Value = serde_json::from_str(&home.done(&["species", "zorrillo", "--json"])).unwrap();
    let of: Value = serde_json::from_str(&home.done(&["species", "madero", "negro", "--json"])).unwrap();
    let figures = |told: &Value| told["figures"].as_object().unwrap().clone();
    let (own, other) = (figures(&told), figures(&of));
    // Of the other it is known that it poisons and that it lives from bare roots; of this one nobody wrote it.
    assert!(other.contains_key("danger") && other["bare_roots"]["value"] == true, "{other:?}");
    let kept = other.keys().filter(|name| !["danger", "danger_note", "bare_roots"].contains(&name.as_str()));
    assert!(own.len() > 10 && own.keys().eq(kept), "{own:?}");
    for (name, figure) in &own {
        assert_eq!(figure["value"], other[name]["value"], "{name}");
        assert_eq!((&figure["source"], &figure["flag"]), (&json!("from Gliricidia sepium"), &json!("ours")), "{name}");
    }
    home.write(
        "lot_received",
        &["lot=zor-L1", "species=zorrillo", "source=own", "collected=2026-01-02", "seeds=40", "kept=dry_open"],
    );
}

#[test]
fn a_new_species_may_have_local_names_and_what_differs_in_plain_words() {
    let home = Home::default().begun();
    home.done(&[
        "species",
        "add",
        "zorrillo, kilembe",
        "like",
        "grevillea",
        "light",
        "60",
        "to",
        "100",
        "height",
        "30",
    ]);
    let told = home.json(&["species", "kilembe"]);
    let of = |name: &str| told["figures"][name]["value"].as_f64();
    assert_eq!((of("outplant_shade_least_pct"), of("outplant_shade_most_pct")), (Some(0.0), Some(40.0)), "{told}");
    assert_eq!(of("height_least_cm"), Some(30.0), "{told}");
    let page = home.done(&["species", "zorrillo"]);
    assert!(page.starts_with("zorrillo\n") || page.trim_start_matches(['=', ' ']).starts_with("zorrillo"), "{page}");
    assert!(!page.contains("zorrillo,") && page.contains("kilembe"), "{page}");
    let said = home.refused(&["species", "add", "kiromo", "como", "grevillea", "muy", "dulce", "--lang", "es"]);
    assert!(said.contains("«muy dulce»"), "{said}");
    // Another word is another plant: nothing is asked.
    home.done(&["species", "add", "palo", "blanco", "like", "cordia"]);
}

#[test]
fn of_a_new_species_nobody_has_written_whether_it_harms_anybody_whatever_it_is_like() {
    let home = Home::default().begun();
    // Of cordia no danger is known; jackfruit drops heavy fruit.
    for (new, like) in [("oleander", "cordia"), ("ackee", "jackfruit")] {
        home.done(&["species", "add", new, "like", like]);
        let json = home.json(&["species", new]);
        assert_eq!(json["dangers"], Value::Null, "{new}: {json}");
        for (lang, says) in
            [("en", "nobody has written whether it harms anybody"), ("es", "nadie ha escrito si hace daño")]
        {
            let page = home.done(&["species", new, "--lang", lang]);
            assert!(page.contains(says), "{page}");
        }
        let tray = format!("tray={new}-1");
        let species = format!("species={new}");
        home.write("plants_received", &[&tray, &species, "count=20", "from=bought", "form=bag", "age_days=90"]);
        for words in [&["why", "tray", &format!("{new}-1")][..], &["walk"]] {
            let page = home.done(words).split_whitespace().collect::<Vec<_>>().join(" ");
            assert!(page.contains("nobody wrote whether it harms anybody"), "{words:?}: {page}");
        }
    }
    // What only holds back or asks is taken over: avocado does not live from bare roots and is sold grafted.
    home.done(&["species", "add", "aguacatillo", "like", "avocado"]);
    let figures = home.json(&["species", "aguacatillo"])["figures"].clone();
    assert_eq!((&figures["bare_roots"]["value"], &figures["usually_grafted"]["value"]), (&json!(false), &json!(true)));
}
