//! The round as questions, through the program itself with answers from a pipe.

use std::io::Write;
use std::process::Stdio;

use crate::support::program::Home;

/// Answers are piped in; the lines said and the exit code come out.
fn answered(home: &Home, words: &[&str], answers: &str) -> (String, i32) {
    let mut child =
        home.program().args(words).stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    child.stdin.take().unwrap().write_all(answers.as_bytes()).unwrap();
    let output = child.wait_with_output().unwrap();
    (String::from_utf8(output.stdout).unwrap(), output.status.code().unwrap())
}

/// Two trays to count, on one bench.
fn two_trays() -> Home {
    let home = Home::default().begun();
    home.write("place_set", &["place=Bench", "order=1", "shade_pct=50", "sign=triangle 2"]);
    for tray in ["cof-1", "cof-2"] {
        let tray = format!("tray={tray}");
        let fields =
            [tray.as_str(), "species=coffee", "count=40", "from=opening", "form=bag", "age_days=60", "place=Bench"];
        home.write("plants_received", &[&fields[..], &["happened=2026-03-01"]].concat());
    }
    home
}

fn standing(home: &Home, tray: &str) -> i64 {
    let ready = home.json(&["ready"]);
    let trays = ready["trays"].as_array().unwrap();
    trays.iter().find(|one| one["tray"] == tray).unwrap()["standing"].as_i64().unwrap()
}

#[test]
fn a_round_is_answered_from_a_pipe() {
    let home = two_trays();
    // The gauge, then both counts: an empty answer and a figure each.
    let (said, code) = answered(&home, &["--plain"], "\n4\n\n38\n\n37\nquit\n");
    assert_eq!(code, 0, "{said}");
    assert!(said.contains("triangle 2"), "{said}");
    assert!(!said.contains('\u{1b}'), "{said:?}");
    assert_eq!((standing(&home, "cof-1"), standing(&home, "cof-2")), (38, 37), "{said}");
    let (said, code) = answered(&home, &["--plain"], "");
    assert_eq!(code, 0);
    assert!(said.contains("The round is done: 3 stops"), "{said}");
}

#[test]
fn answers_that_end_half_way_write_nothing() {
    let home = two_trays();
    let before = home.done(&["export"]).lines().count();
    for answers in ["", "\n", "2\n\n", "2\nlost\n5\n", "2\nlost\n5\nrats\n"] {
        let (said, code) = answered(&home, &["--plain", "--lang", "es"], answers);
        assert_eq!(code, 0, "{said}");
    }
    assert_eq!(home.done(&["export"]).lines().count(), before);
}

#[test]
fn a_figure_that_cannot_be_read_is_asked_for_again_in_spanish_too() {
    let home = two_trays();
    let (said, code) = answered(&home, &["--plain", "--lang", "es"], "2\n1\ntreinta\n36\nsalir\n");
    assert_eq!(code, 0, "{said}");
    assert_eq!(standing(&home, "cof-1"), 36, "{said}");
    assert_eq!(said.matches("Vivas:").count(), 2, "{said}");
}
