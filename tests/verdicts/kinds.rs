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
    of_tray(book, code, Rule::DaysInContainer).known() == Some(Measure::Roots(Roots::Circling))
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
    assert_eq!(of_tray(&book, "cof-1", Rule::Plug).met(), None);
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

/// An avocado tray of plants so tall, all of the same, and how its height and collar are judged.
fn tall_avocado(height_cm: f64, graft: Option<serde_json::Value>) -> (Criterion, Vec<Rule>) {
    let mut book = small_nursery();
    let came = json!({"tray":"avo-1","species":"avocado","count":20,"from":"bought","form":"bag","age_days":300});
    book.write("2026-02-01", "plants_received", came);
    if let Some(graft) = graft {
        book.write("2026-03-01", "grafted", graft);
    }
    let plants = vec![json!({"height_cm":height_cm,"collar_mm":20}); 20];
    book.write("2026-04-10", "measured", json!({"tray":"avo-1","plants":plants}));
    let rules = tray(&book.on(TODAY), "avo-1").criteria.iter().map(|criterion| criterion.rule()).collect();
    (of_tray(&book, "avo-1", Rule::Height), rules)
}

#[test]
fn a_grafted_tray_may_stand_taller_and_no_collar_rule_holds_for_it() {
    let (seedling, rules) = tall_avocado(95.0, None);
    assert!(seedling.warns && rules.contains(&Rule::Collar));
    let all = json!({"tray":"avo-1","count":20,"variety":"Late Green","rootstock":"wild stock"});
    let (grafted, rules) = tall_avocado(95.0, Some(all));
    assert!(grafted.met() == Some(true) && !grafted.warns && !rules.contains(&Rule::Collar), "{grafted:?}");
    assert_ne!(grafted.source, seedling.source);
    let some = json!({"tray":"avo-1","count":12,"variety":"Late Green"});
    let (mixed, rules) = tall_avocado(95.0, Some(some));
    assert!(mixed.warns && rules.contains(&Rule::Collar), "of a tray of which only some are grafted seedlings decide");
    let all = json!({"tray":"avo-1","count":20});
    assert!(tall_avocado(120.0, Some(all)).0.warns, "and grafts too can be too tall");
}
