//! Worlds of what newcomers bring to the plants they are put to: torn roots, a past that nobody knows, soft leaves.

use serde_json::{Value, json};

use outplant::reckon::picture::{Criterion, Rule};

use super::{TODAY, of, said};
use crate::support::{Book, day, fitting, pair, ready_coffee, tray};

/// A plug that holds and a sample of the right size, of today.
fn looked_at(book: &mut Book, code: &str) {
    let plants: Vec<Value> = (0..20).map(|_| json!({"height_cm":25,"collar_mm":4.5,"leaf_pairs":7})).collect();
    book.write(TODAY, "measured", json!({"tray":code,"plants":plants}));
    book.write(TODAY, "plug_checked", json!({"tray":code,"roots":"holds"}));
}

/// The ready coffee of half shade, to which so many came from a tray that came from elsewhere on a day.
fn put_to(count: u32, from: &str, came: &str) -> Book {
    let mut book = fitting();
    let plants = json!({"tray":"new-1","species":"coffee","count":40,"from":from,"form":"bag","age_days":250,
        "container":"bag","place":"Half shade"});
    book.write(came, "plants_received", plants);
    book.write(TODAY, "moved_on", json!({"from":"new-1","to":"cof-1","count":count,"how":"merged"}));
    looked_at(&mut book, "cof-1");
    book
}

fn rests(book: &Book, on: &str, code: &str) -> Criterion {
    of(book, on, code, Rule::Plug)
}

#[test]
fn wildlings_put_to_others_keep_all_of_them_for_their_torn_roots() {
    let book = put_to(30, "wildling", "2026-04-14");
    let plug = rests(&book, TODAY, "cof-1");
    assert!(plug.blocks && said(&plug).contains("until 13 Jul 2026"), "{}", said(&plug));
    // A plug may be one of the others: none opens it before.
    let mut again = book.clone();
    again.write("2026-06-01", "plug_checked", json!({"tray":"cof-1","roots":"holds"}));
    assert!(rests(&again, "2026-07-12", "cof-1").blocks && !rests(&again, "2026-07-13", "cof-1").blocks);
    // A handful is left behind.
    assert!(!rests(&put_to(5, "wildling", "2026-04-14"), TODAY, "cof-1").blocks);
}

#[test]
fn wildlings_whose_own_plug_held_bring_no_torn_roots() {
    let mut book = fitting();
    let plants = json!({"tray":"new-1","species":"coffee","count":40,"from":"wildling","form":"bag","age_days":250,
        "container":"bag","place":"Half shade"});
    book.write("2026-02-20", "plants_received", plants);
    book.write("2026-04-14", "plug_checked", json!({"tray":"new-1","roots":"holds"}));
    book.write(TODAY, "moved_on", json!({"from":"new-1","to":"cof-1","count":30,"how":"merged"}));
    looked_at(&mut book, "cof-1");
    assert!(!rests(&book, TODAY, "cof-1").blocks, "{}", said(&rests(&book, TODAY, "cof-1")));
    // Nor do others that are put to them shut them up again.
    ready_coffee(&mut book, "cof-2");
    book.write("2026-04-14", "moved_on", json!({"from":"cof-2","to":"new-1","count":20,"how":"merged"}));
    looked_at(&mut book, "new-1");
    assert!(!rests(&book, TODAY, "new-1").blocks, "{}", said(&rests(&book, TODAY, "new-1")));
}

#[test]
fn plants_bought_yesterday_do_not_take_over_the_light_of_those_they_are_put_to() {
    let book = put_to(30, "bought", "2026-04-14");
    let hardening = of(&book, TODAY, "cof-1", Rule::Hardening);
    assert!(hardening.blocks && !pair(&book.on(TODAY), "cof-1", "Upper 1").fits, "{}", said(&hardening));
    assert!(said(&hardening).contains("30 plants that were put to them on 15 Apr 2026"), "{}", said(&hardening));
    // As in a tray of their own: three weeks from the day they came.
    assert_eq!(hardening.expected, Some(day("2026-05-05")), "{}", said(&hardening));
    assert!(!of(&book, "2026-05-05", "cof-1", Rule::Hardening).blocks);
    // A handful, and plants that have stood on this bench for three weeks, hold nothing.
    assert!(!of(&put_to(5, "bought", "2026-04-14"), TODAY, "cof-1", Rule::Hardening).blocks);
    assert!(!of(&put_to(30, "bought", "2026-03-25"), TODAY, "cof-1", Rule::Hardening).blocks);
    // The nursery's own of the opening came with their age.
    assert!(!of(&put_to(30, "opening", "2026-04-14"), TODAY, "cof-1", Rule::Hardening).blocks);
}

#[test]
fn bought_plants_among_others_are_not_forgotten_by_potting_on() {
    for (count, waits) in [(30, true), (3, false)] {
        let mut book = put_to(count, "bought", "2026-04-10");
        let moved =
            json!({"from":"cof-1","to":"cof-5","count":40,"how":"potted_on","container":"bag","place":"Half shade"});
        book.write(TODAY, "moved_on", moved);
        looked_at(&mut book, "cof-5");
        let hardening = of(&book, TODAY, "cof-5", Rule::Hardening);
        assert_eq!(hardening.blocks, waits, "{count}: {}", said(&hardening));
    }
}

#[test]
fn soft_leaves_go_along_with_the_plants_that_have_them() {
    let soft = |count: u32, how: &str, to: &str| {
        let mut book = fitting();
        ready_coffee(&mut book, "cof-2");
        book.write("2026-04-13", "flushed", json!({"tray":"cof-2"}));
        let moved = json!({"from":"cof-2","to":to,"count":count,"how":how,"container":"bag","place":"Half shade"});
        book.write("2026-04-14", "moved_on", moved);
        looked_at(&mut book, to);
        of(&book, TODAY, to, Rule::Flush)
    };
    let flush = soft(30, "merged", "cof-1");
    assert_eq!((flush.blocks, flush.expected), (true, Some(day("2026-04-27"))), "{}", said(&flush));
    assert!(soft(40, "potted_on", "cof-9").blocks);
    assert!(!soft(5, "merged", "cof-1").blocks, "a handful is left behind");
}

#[test]
fn a_flush_of_the_tray_itself_holds_it_as_before() {
    let mut book = fitting();
    book.write("2026-04-13", "flushed", json!({"tray":"cof-1"}));
    assert!(of(&book, TODAY, "cof-1", Rule::Flush).blocks && !tray(&book.on(TODAY), "cof-1").ready);
}
