//! The round as questions on a real terminal: one that can do no more, and one whose person asked for it.
#![cfg(unix)]

use std::path::Path;
use std::time::Duration;

use crate::support::program::Home;
use crate::support::screen::Screen;

/// Longer than it ever takes: other tests share the machine.
const SOON: Duration = Duration::from_secs(60);

/// A nursery with one tray to count; the gauge comes first.
fn one_tray() -> Home {
    let home = Home::default().begun();
    home.write("place_set", &["place=Bench", "order=1", "shade_pct=50", "sign=triangle 2"]);
    let fields = ["tray=cof-1", "species=coffee", "count=40", "from=opening", "form=bag", "age_days=60", "place=Bench"];
    home.write("plants_received", &[&fields[..], &["happened=2026-03-01"]].concat());
    home
}

/// The round on a terminal of a kind, after arguments.
fn round(home: &Home, term: &str, words: &[&str]) -> Screen {
    let file = home.file("nursery.outplant");
    let all = [&["--nursery", file.to_str().unwrap()], words].concat();
    let variables = [("TERM", term), ("OUTPLANT_TODAY", "2026-04-15"), ("USER", "amani")];
    Screen::run(Path::new(env!("CARGO_BIN_EXE_outplant")), &all, home.path(), &variables, (80, 24))
}

/// A line typed and Enter.
fn answer(screen: &mut Screen, typed: &str) {
    screen.slowly(typed);
    screen.keys("\r");
}

fn one_stop_is_done(term: &str, words: &[&str]) {
    let home = one_tray();
    let mut screen = round(&home, term, words);
    // The gauge is passed over; the count is the second stop.
    screen.wait_for("Stop 1 of 2:");
    answer(&mut screen, "2");
    screen.wait_for("Stop 2 of 2:");
    answer(&mut screen, "1");
    screen.wait_for("Living:");
    answer(&mut screen, "38");
    screen.wait_for("Saved");
    answer(&mut screen, "0");
    assert_eq!(screen.end(SOON).exit_code(), 0);
    screen.is_given_back();
    assert!(!screen.received_escapes(), "nothing but whole lines: {:?}", screen.text());
    let ready = home.json(&["ready"]);
    assert_eq!(ready["trays"][0]["standing"], 38);
}

#[test]
fn a_terminal_that_can_do_no_more_gets_numbered_questions() {
    one_stop_is_done("dumb", &[]);
}

#[test]
fn who_asks_for_questions_gets_them_on_any_terminal() {
    one_stop_is_done("xterm-256color", &["--plain"]);
}

#[test]
fn a_line_without_end_leaves_and_writes_nothing() {
    let home = one_tray();
    let mut screen = round(&home, "dumb", &["--lang", "es"]);
    screen.wait_for("Parada 1 de 2:");
    // Ctrl-D: no more answers come.
    screen.keys("\u{4}");
    assert_eq!(screen.end(SOON).exit_code(), 0);
    screen.is_given_back();
    assert_eq!(home.json(&["ready"])["trays"][0]["standing"], 40);
}
