//! What the program answers from the sample's book of the first version, whole, kept letter by letter: `ready`, `walk`, and
//! `why` of everything, in both languages, on several days. A wanted difference is accepted by
//! `INSTA_UPDATE=always cargo test --test outplant answers` and read in the diff of `tests/reference/version_1/answers`.

mod forms;
mod schemas;

use std::path::Path;

use crate::support::program::Home;

/// The book that the first version (commit 08e540e) wrote on 25 November 2026 by `sample --into`.
const BOOK: &str = "tests/reference/version_1/sample.outplant";
/// The day of the sample, a day in the rains, one in the dry months, and a coming one.
const DAYS: [&str; 4] = ["2026-11-25", "2026-05-13", "2026-08-01", "2027-01-28"];
const LANGS: [&str; 2] = ["en", "es"];

/// A home with a copy of the book, on the day of the sample.
fn home() -> Home {
    let home = Home { today: DAYS[0].into(), ..Home::default() };
    home.with("nursery.outplant", std::fs::read(Path::new(env!("CARGO_MANIFEST_DIR")).join(BOOK)).unwrap());
    home
}

/// The answers to several commands, one under the other.
fn answers(home: &Home, asked: &[Vec<&str>], more: &[&str]) -> String {
    let mut text = String::new();
    for words in asked {
        let words: Vec<&str> = words.iter().chain(more).copied().collect();
        let ended = home.run(&words);
        text += &format!("$ outplant {}\n[{}]\n{}{}\n", words.join(" "), ended.code, ended.out, ended.err);
    }
    text
}

fn kept(name: &str, text: &str) {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/reference/version_1/answers");
    insta::with_settings!({ snapshot_path => folder, prepend_module_to_snapshot => false, omit_expression => true }, {
        insta::assert_snapshot!(name, text);
    });
}

/// The names of trays or beds of `ready --json`.
fn names(home: &Home, list: &str, name: &str) -> Vec<String> {
    let ready = home.json(&["ready"]);
    ready[list].as_array().unwrap().iter().map(|one| one[name].as_str().unwrap().to_string()).collect()
}

/// The kinds of thing that `why` is asked of, with their names.
fn why_of_everything(home: &Home) -> Vec<(&'static str, Vec<Vec<String>>)> {
    let trays = names(home, "trays", "tray");
    let beds = names(home, "beds", "bed");
    let pairs = [("cof-021", "School 1"), ("cof-023", "School 1"), ("avo-013", "Ridge 2"), ("gre-001", "Ridge 1")];
    let lots = ["cof-L01", "cof-L02", "cod-L01"];
    let asked = |what: &str, rest: &[&str]| {
        let mut words = vec!["why".to_string(), what.to_string()];
        words.extend(rest.iter().map(ToString::to_string));
        words
    };
    vec![
        ("trays", trays.iter().map(|tray| asked("tray", &[tray])).collect()),
        ("beds", beds.iter().map(|bed| asked("bed", &[bed])).collect()),
        ("pairs", pairs.iter().map(|(tray, bed)| asked("pair", &[tray, bed])).collect()),
        ("lots", lots.iter().map(|lot| asked("lot", &[lot])).collect()),
        ("species", ["COA", "GRE"].iter().map(|species| asked("species", &[species])).collect()),
    ]
}

#[test]
fn ready_and_walk_answer_as_before() {
    let home = home();
    for lang in LANGS {
        for (name, command) in [("ready", &["ready", "--all"][..]), ("plan", &["ready"]), ("walk", &["walk"])] {
            let asked: Vec<Vec<&str>> = DAYS.iter().map(|day| [command, &["--on", day]].concat()).collect();
            kept(&format!("{name}_{lang}"), &answers(&home, &asked, &["--lang", lang]));
        }
    }
}

#[test]
fn why_of_everything_answers_as_before_in_both_languages() {
    let home = home();
    for (what, asked) in why_of_everything(&home) {
        let asked: Vec<Vec<&str>> = asked.iter().map(|words| words.iter().map(String::as_str).collect()).collect();
        for lang in LANGS {
            let all: &[&str] = if ["trays", "beds", "pairs"].contains(&what) { &["--all"] } else { &[] };
            kept(&format!("why_{what}_{lang}"), &answers(&home, &asked, &[all, &["--lang", lang]].concat()));
        }
    }
}

#[test]
fn the_reasons_of_a_day_in_the_rains_are_as_before_for_programs() {
    let home = home();
    let everything = why_of_everything(&home);
    for (what, asked) in everything.iter().filter(|(what, _)| ["trays", "beds", "pairs", "lots"].contains(what)) {
        let mut text = String::new();
        for words in asked.iter().step_by(if *what == "trays" { 4 } else { 2 }) {
            let mut words: Vec<&str> = words.iter().map(String::as_str).collect();
            words.extend(["--on", DAYS[1]]);
            let answer = home.run(&[&words[..], &["--json"]].concat());
            text += &format!("$ outplant {}\n[{}] {}\n", words.join(" "), answer.code, answer.err.trim());
            if let Ok(json) = serde_json::from_str::<serde_json::Value>(&answer.out) {
                text += &format!("{}\n", serde_json::to_string_pretty(&json).unwrap());
            }
        }
        kept(&format!("why_{what}_json"), &text);
    }
}

#[test]
fn walk_species_and_what_changed_answer_as_before() {
    let home = home();
    let walk = home.json(&["walk"]);
    kept("walk_json", &serde_json::to_string_pretty(&walk).unwrap());
    for lang in LANGS {
        let asked = [vec!["species"], vec!["species", "coffee"], vec!["ready", "--since", "2026-11-01"]];
        kept(&format!("species_and_since_{lang}"), &answers(&home, &asked, &["--lang", lang]));
    }
}
