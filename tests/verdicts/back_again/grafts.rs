//! Worlds of grafts of species that are not usually grafted: who wrote one waits for it.

use serde_json::json;

use outplant::reckon::picture::Rule;
use outplant::reckon::round::Task;

use super::{TODAY, of, said, tasks};
use crate::support::{Book, criterion, fitting, pair, tray};

/// The ready coffee, of which so many were grafted on a day.
fn grafted(on: &str, count: u32) -> Book {
    let mut book = fitting();
    book.write(on, "grafted", json!({"tray":"cof-1","count":count,"variety":"Caturra"}));
    book
}

#[test]
fn coffee_grafted_yesterday_waits_for_the_take_as_avocado_does() {
    let book = grafted("2026-04-14", 48);
    let graft = of(&book, TODAY, "cof-1", Rule::Grafted);
    assert!(graft.blocks && !pair(&book.on(TODAY), "cof-1", "Upper 1").fits, "{}", said(&graft));
    assert!(said(&graft).contains("wait until 13 Jun 2026"), "{}", said(&graft));
    // A tenth of the tray does, fewer are left behind while loading.
    for (count, waits) in [(5, true), (4, false)] {
        let book = grafted("2026-04-14", count);
        assert_eq!(tray(&book.on(TODAY), "cof-1").ready, !waits, "{count}");
    }
}

#[test]
fn a_graft_that_has_healed_is_no_question_where_the_species_goes_as_seedlings() {
    for (on, waits) in [("2026-02-14", false), ("2026-02-15", true)] {
        let picture = grafted(on, 48).on(TODAY);
        let criteria = &tray(&picture, "cof-1").criteria;
        assert_eq!(criteria.iter().any(|criterion| criterion.rule() == Rule::Grafted), waits, "{on}");
    }
    let picture = fitting().on(TODAY);
    assert!(tray(&picture, "cof-1").criteria.iter().all(|criterion| criterion.rule() != Rule::Grafted));
}

#[test]
fn fresh_grafts_of_any_species_stand_in_the_shade() {
    let mut book = grafted("2026-04-14", 48);
    book.write("2025-01-01", "place_set", json!({"place":"Open rack","order":3,"shade_pct":0}));
    book.write("2026-04-15", "carried", json!({"tray":"cof-1","place":"Open rack"}));
    assert!(tasks(&book, TODAY, "cof-1").contains(&Task::IntoShade));
}

#[test]
fn grafts_go_along_with_the_plants_as_far_as_they_went() {
    let put = |count: u32| {
        let mut book = grafted("2026-04-14", 40);
        let moved = json!({"from":"cof-1","to":"cof-8","count":count,"how":"potted_on","container":"bag"});
        book.write("2026-04-14", "moved_on", moved);
        crate::support::ready_coffee(&mut book, "cof-2");
        book.write("2026-04-15", "moved_on", json!({"from":"cof-8","to":"cof-2","count":count,"how":"merged"}));
        let picture = book.on(TODAY);
        let asked = tray(&picture, "cof-2").criteria.iter().any(|criterion| criterion.rule() == Rule::Grafted);
        asked && criterion(&tray(&picture, "cof-2").criteria, Rule::Grafted).blocks
    };
    assert_eq!((put(20), put(4)), (true, false));
}

#[test]
fn few_fresh_grafts_soft_leaves_and_wildlings_are_left_behind_and_it_is_said() {
    let book = grafted("2026-04-10", 4);
    let graft = of(&book, TODAY, "cof-1", Rule::Grafted);
    assert!(graft.warns && !graft.blocks && tray(&book.on(TODAY), "cof-1").ready);
    assert!(said(&graft).contains("leave those 4 here until 9 Jun 2026"), "{}", said(&graft));
    let mut soft = fitting();
    crate::support::ready_coffee(&mut soft, "cof-2");
    soft.write("2026-04-14", "flushed", json!({"tray":"cof-2"}));
    soft.write("2026-04-14", "moved_on", json!({"from":"cof-2","to":"cof-1","count":3,"how":"merged"}));
    let flush = of(&soft, TODAY, "cof-1", Rule::Flush);
    assert!(flush.warns && !flush.blocks && said(&flush).contains("leave those that are soft"), "{}", said(&flush));
}

#[test]
fn whether_grafts_took_is_asked_once_and_a_count_or_a_loss_answers_it() {
    let seen = |on: &str, count: Option<&str>| {
        let mut book = grafted("2026-04-14", 48);
        if let Some(counted) = count {
            book.write(counted, "counted", json!({"tray":"cof-1","standing":48}));
        }
        let picture = book.on(on);
        let mut all = tray(&picture, "cof-1").criteria.iter();
        all.find(|one| one.rule() == Rule::Grafted).map(|one| (one.blocks, one.warns, said(one)))
    };
    let (blocks, warns, told) = seen("2026-05-18", None).unwrap();
    assert!(blocks && !warns, "34 days: it does not show yet: {told}");
    let (blocks, warns, told) = seen("2026-05-19", None).unwrap();
    assert!(blocks && warns && told.contains("it shows which took"), "{told}");
    let (blocks, warns, told) = seen("2026-06-14", None).unwrap();
    assert!(!blocks && warns && told.contains("nobody wrote since whether they took"), "{told}");
    assert!(seen("2026-06-14", Some("2026-05-25")).is_none());
    assert!(seen("2026-06-14", Some("2026-05-01")).is_some(), "too early to tell");
    assert!(seen("2026-10-12", None).is_none());
}

#[test]
fn who_is_given_fresh_grafts_is_told_as_of_what_is_held() {
    let home = crate::support::program::Home::default().begun();
    home.write(
        "plants_received",
        &["tray=t1", "species=coffee", "count=50", "from=opening", "form=bag", "container=bag 1 l"],
    );
    home.write("grafted", &["tray=t1", "count=50"]);
    let said = home.done(&["write", "given_out", "tray=t1", "count=10", "to=a neighbour"]);
    assert!(said.contains("grafted a short while ago"), "{said}");
}
