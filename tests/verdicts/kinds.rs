//! What some kinds of entry do to verdicts, each in a world where it alone decides.

use outplant::nursery::entry::types::Roots;
use outplant::reckon::picture::{Criterion, Measure, Rule};
use serde_json::json;

use crate::support::{Book, criterion, ready_coffee, small_nursery, tray};

const TODAY: &str = "2026-04-15";

fn coffee() -> Book {
    let mut book = small_nursery();
    ready_coffee(&mut book, "cof-1");
    book
}

fn of_tray(book: &Book, code: &str, rule: Rule) -> Criterion {
    criterion(&tray(&book.on(TODAY), code).criteria, rule).clone()
}

fn circles(book: &Book, code: &str) -> bool {
    of_tray(book, code, Rule::DaysInContainer).known == Some(Measure::Roots(Roots::Circling))
}

fn circling() -> Book {
    let mut book = coffee();
    book.write("2026-04-11", "plug_checked", json!({"tray":"cof-1","roots":"circling"}));
    assert!(circles(&book, "cof-1"));
    book
}

#[test]
fn roots_that_were_cut_circle_no_more_and_nobody_knows_whether_the_plug_holds() {
    let mut book = circling();
    book.write("2026-04-11", "roots_cut", json!({"tray":"cof-1"}));
    assert!(!circles(&book, "cof-1"));
    assert_eq!(of_tray(&book, "cof-1", Rule::Plug).met, None);
    book.write("2026-04-13", "plug_checked", json!({"tray":"cof-1","roots":"circling"}));
    assert!(circles(&book, "cof-1"), "they may circle again");
}

#[test]
fn roots_circle_until_those_of_all_plants_were_cut() {
    let mut book = circling();
    book.write("2026-04-12", "roots_cut", json!({"tray":"cof-1","count":30}));
    assert!(circles(&book, "cof-1"));
    let standing = tray(&book.on(TODAY), "cof-1").standing;
    book.write("2026-04-13", "roots_cut", json!({"tray":"cof-1","count":standing - 30}));
    assert!(!circles(&book, "cof-1"));
}

#[test]
fn plants_moved_on_bring_their_circling_along_unless_their_roots_were_cut() {
    for (cut, moved, still) in [(None, 30, true), (Some(20), 30, true), (Some(30), 30, false)] {
        let mut book = circling();
        if let Some(count) = cut {
            book.write("2026-04-12", "roots_cut", json!({"tray":"cof-1","count":count}));
        }
        let on = |from: &str, to: &str, count: u32| json!({"from":from,"to":to,"count":count,"how":"potted_on","container":"bag"});
        book.write("2026-04-13", "moved_on", on("cof-1", "cof-8", moved));
        book.write("2026-04-14", "moved_on", on("cof-8", "cof-9", moved));
        assert_eq!(circles(&book, "cof-8"), still, "{cut:?}");
        assert_eq!(circles(&book, "cof-9"), still, "{cut:?}, moved on twice");
        if still {
            book.write("2026-04-15", "roots_cut", json!({"tray":"cof-9"}));
            assert!(!circles(&book, "cof-9"));
        }
    }
}
