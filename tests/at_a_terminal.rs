//! What is asked at a terminal, and what one that has only ASCII is shown.
#![cfg(unix)]

use std::path::Path;
use std::time::Duration;

use crate::support::program::Home;
use crate::support::screen::Screen;

const SOON: Duration = Duration::from_secs(60);

/// The program at a terminal, in the home of a test.
fn at_a_terminal(home: &Home, words: &[&str], lang: &str, today: &str) -> Screen {
    let nursery = home.file("nursery.outplant");
    let variables =
        [("OUTPLANT_NURSERY", nursery.to_str().unwrap()), ("OUTPLANT_TODAY", today), ("LANG", lang), ("USER", "mara")];
    Screen::run(Path::new(env!("CARGO_BIN_EXE_outplant")), words, home.path(), &variables, (80, 24))
}

/// Two trays that came in by one sheet.
fn two_trays() -> Home {
    let home = Home::default().begun();
    let sheet =
        home.with("trays.csv", "Tray,Species,How many,Bench\ncof-1,coffee,41,Bench 1\navo-1,avocado,22,Bench 1\n");
    home.done(&["import", sheet.to_str().unwrap(), "--as", "trays"]);
    home
}

fn standing(home: &Home) -> usize {
    home.json(&["ready"])["trays"].as_array().unwrap().len()
}

/// The identity of the entry that brought a tray.
fn entry_of(home: &Home, tray: &str) -> String {
    let exported = home.done(&["export"]);
    let line = exported.lines().find(|line| line.contains(&format!("\"tray\":\"{tray}\""))).unwrap();
    serde_json::from_str::<serde_json::Value>(line).unwrap()["id"].as_str().unwrap().to_string()
}

#[test]
fn undo_of_one_of_many_shows_them_all_and_asks_first() {
    let home = two_trays();
    let entry = entry_of(&home, "cof-1");
    for (answer, code, left) in [("n\r", 1, 2), ("\r", 1, 2), ("y\r", 0, 0)] {
        let mut screen = at_a_terminal(&home, &["undo", &entry], "en_GB.UTF-8", &home.today);
        screen.wait_for("take back all 2 entries?");
        let shown = screen.text();
        assert!(shown.contains("cof-1") && shown.contains("avo-1") && shown.contains("--only"), "{shown}");
        screen.keys(answer);
        assert_eq!(screen.end(SOON).exit_code(), code, "{answer:?}: {}", screen.text());
        let said = if code == 0 { "taken back: 2 entries" } else { "nothing was taken back" };
        assert!(screen.text().contains(said), "{}", screen.text());
        assert_eq!(standing(&home), left, "{answer:?}");
    }
}

#[test]
fn undo_asks_in_spanish_and_takes_si_for_an_answer() {
    let home = two_trays();
    let entry = entry_of(&home, "avo-1");
    let mut screen = at_a_terminal(&home, &["undo", &entry], "es_CO.UTF-8", &home.today);
    screen.wait_for("2 anotaciones?");
    screen.keys("sí\r");
    assert_eq!(screen.end(SOON).exit_code(), 0, "{}", screen.text());
    assert_eq!(standing(&home), 0);
}

#[test]
fn a_clock_that_cannot_be_right_is_asked_about_once() {
    let home = two_trays();
    let note = &["write", "noted", "text=rain"];
    let mut screen = at_a_terminal(&home, note, "en_GB.UTF-8", "2025-01-01");
    screen.wait_for("1 Jan 2025");
    screen.keys("n\r");
    assert_eq!(screen.end(SOON).exit_code(), 1, "{}", screen.text());
    assert!(!home.done(&["export"]).contains("rain"), "nothing was written");
    let mut screen = at_a_terminal(&home, note, "en_GB.UTF-8", "2025-01-01");
    screen.wait_for("1 Jan 2025");
    screen.keys("y\r");
    assert_eq!(screen.end(SOON).exit_code(), 0, "{}", screen.text());
    // Said once, the day is taken.
    let mut screen = at_a_terminal(&home, &["write", "noted", "text=wind"], "en_GB.UTF-8", "2025-01-01");
    assert_eq!(screen.end(SOON).exit_code(), 0, "{}", screen.text());
    assert!(home.done(&["export"]).contains("wind"));
}

#[test]
fn a_terminal_that_has_only_ascii_is_shown_nothing_else() {
    let home = two_trays();
    home.write("place_set", &["place=Bench 1", "order=1", "shade_pct=50", "sign=star 2"]);
    for words in [&["walk", "--lang", "es"][..], &["ready", "--lang", "es"], &["species", "coffee"]] {
        let mut screen = at_a_terminal(&home, words, "C", &home.today);
        assert_eq!(screen.end(SOON).exit_code(), 0, "{}", screen.text());
        assert!(screen.text().is_ascii(), "{words:?}: {}", screen.text());
    }
    // A program is given the letters as they are.
    assert!(home.done(&["ready", "--lang", "es"]).contains('é'));
}

#[test]
fn a_line_of_two_meanings_is_asked_about_by_number() {
    for (answer, code, stands) in [("1\r", 0, None), ("\r", 1, Some(41)), ("9\r", 1, Some(41))] {
        let home = two_trays();
        let mut screen = at_a_terminal(&home, &["write", "cof-1 3 damping of"], "es_ES.UTF-8", &home.today);
        screen.wait_for("Enter para no anotar nada");
        assert!(screen.text().contains("  1  cof-1 "), "{}", screen.text());
        screen.keys(answer);
        assert_eq!(screen.end(SOON).exit_code(), code, "{answer:?}: {}", screen.text());
        let now = home.json(&["why", "tray", "cof-1"])["tray"]["standing"].as_u64();
        match stands {
            Some(stands) => assert_eq!(now, Some(stands), "{answer:?} writes nothing"),
            None => assert_ne!(now, Some(41), "{answer:?} writes the first"),
        }
    }
}

#[test]
fn beginning_asks_for_the_altitude_and_enter_leaves_it_unknown() {
    for (answer, known) in [("1650 m\r", true), ("\r", false)] {
        let home = Home::default();
        let words = ["begin", "--name", "Low", "--lat", "10.4", "--lon", "-84"];
        let mut screen = at_a_terminal(&home, &words, "en_GB.UTF-8", &home.today);
        screen.wait_for("how high above the sea");
        screen.keys(answer);
        assert_eq!(screen.end(SOON).exit_code(), 0, "{}", screen.text());
        assert_eq!(home.done(&["export"]).contains("\"altitude_m\":1650"), known, "{answer:?}");
    }
}

#[test]
fn beginning_asks_for_what_is_missing() {
    for (lang, first, last) in [
        ("en_GB.UTF-8", "what is the nursery called?", "longitude"),
        ("es_CR.UTF-8", "cómo se llama el vivero?", "longitud"),
    ] {
        let home = Home::default();
        let mut screen = at_a_terminal(&home, &["begin"], lang, &home.today);
        screen.wait_for(first);
        screen.keys("Stone Terrace\rnorth\r");
        screen.keys("1°12'S\r");
        screen.wait_for(last);
        screen.keys("36,1\r1650\r");
        assert_eq!(screen.end(SOON).exit_code(), 0, "{}", screen.text());
        let exported = home.done(&["export"]);
        assert!(
            exported.contains("\"latitude_deg\":-1.2") && exported.contains("\"longitude_deg\":36.1"),
            "{exported}"
        );
        assert!(exported.contains("Stone Terrace") && exported.contains("\"altitude_m\":1650"), "{exported}");
    }
    // Nobody answers: what is missing is said, and nothing begins.
    let home = Home::default();
    let ended = home.run(&["begin", "--lat", "-1.2"]);
    assert_eq!(ended.code, 2);
    assert!(ended.err.contains("--name, --lon") && !home.file("nursery.outplant").exists(), "{}", ended.err);
}

#[test]
fn a_species_with_nearly_a_known_name_is_asked_about() {
    let home = Home::default().begun();
    for (answer, code) in [("\r", 1), ("s\r", 0)] {
        let words = ["species", "add", "cacoa", "como", "grevillea"];
        let mut screen = at_a_terminal(&home, &words, "es_CR.UTF-8", &home.today);
        screen.wait_for("cacao");
        screen.wait_for("de todos modos?");
        screen.keys(answer);
        assert_eq!(screen.end(SOON).exit_code(), code, "{answer:?}: {}", screen.text());
        assert_eq!(home.done(&["export"]).contains("cacoa"), code == 0);
    }
}

#[test]
fn a_name_of_a_sheet_that_nobody_knows_is_asked_about_and_may_be_a_known_or_a_new_species() {
    for (keys, named) in [("1\r", "\"species\":\"CAC\""), ("2\rgrevillea\r", "species_set")] {
        let home = Home::default().begun();
        let sheet = home.with("trays.csv", "Tray,Species,How many\nc-1,cacoa,41\nc-2,coffee,20\n");
        let words = ["import", sheet.to_str().unwrap(), "--as", "trays"];
        let mut screen = at_a_terminal(&home, &words, "en_GB.UTF-8", &home.today);
        screen.wait_for("'cacoa': nobody knows it here");
        screen.wait_for("a new species");
        screen.keys(keys);
        assert_eq!(screen.end(SOON).exit_code(), 0, "{keys:?}: {}", screen.text());
        let exported = home.done(&["export"]);
        assert!(exported.contains(named) && exported.contains("\"tray\":\"c-1\""), "{keys:?}: {exported}");
    }
    // Enter leaves it open: the sheet is refused, and nothing of it is written.
    let home = Home::default().begun();
    let sheet = home.with("trays.csv", "Bandeja;Especie;Cuántas\nc-1;cacoa;41\n");
    let words = ["import", sheet.to_str().unwrap(), "--as", "trays"];
    let mut screen = at_a_terminal(&home, &words, "es_CR.UTF-8", &home.today);
    screen.wait_for("una especie nueva");
    screen.keys("\r");
    assert_eq!(screen.end(SOON).exit_code(), 1);
    assert!(!home.done(&["export"]).contains("c-1"));
}
