//! Worlds of what a person holds back: it goes along with the plants until a person lets them go.

use serde_json::json;

use outplant::reckon::picture::{Criterion, Rule};
use outplant::wording::verdict::About;
use outplant::wording::{Lang, Wording};

use crate::support::program::Home;
use crate::support::{Book, criterion, fitting, pair, ready_coffee, tray};

const TODAY: &str = "2026-04-15";

fn held(book: &Book, on: &str, code: &str) -> Criterion {
    criterion(&tray(&book.on(on), code).criteria, Rule::Held).clone()
}

fn said(criterion: &Criterion) -> String {
    Wording::new(Lang::En).reason(criterion, About::Tray)
}

/// A quarantine of a ready tray of coffee, of which so many are moved on.
fn quarantined(to: &str, how: &str, count: u32) -> Book {
    let mut book = fitting();
    ready_coffee(&mut book, "cof-2");
    book.write("2026-04-12", "held", json!({"tray":"cof-2","why":"quarantine"}));
    let moved = json!({"from":"cof-2","to":to,"count":count,"how":how,"container":"bag","place":"Half shade"});
    book.write("2026-04-13", "moved_on", moved);
    book
}

#[test]
fn a_hold_goes_along_with_plants_that_are_potted_on_pricked_out_or_merged() {
    for (to, how, count) in [("cof-7", "potted_on", 48), ("cof-7", "pricked_out", 48), ("cof-1", "merged", 10)] {
        let book = quarantined(to, how, count);
        let hold = held(&book, TODAY, to);
        assert!(hold.blocks && said(&hold).contains("quarantine"), "{how}: {}", said(&hold));
        assert!(!pair(&book.on(TODAY), to, "Upper 1").fits, "{how}");
    }
    // And on into the tray after it.
    let mut on = quarantined("cof-7", "potted_on", 48);
    let moved = json!({"from":"cof-7","to":"cof-8","count":40,"how":"potted_on","container":"bag"});
    on.write("2026-04-14", "moved_on", moved);
    assert!(held(&on, TODAY, "cof-8").blocks);
}

#[test]
fn letting_go_of_either_tray_ends_a_hold_that_went_along() {
    let release = |code: &str| {
        let mut book = quarantined("cof-7", "potted_on", 40);
        book.write("2026-04-14", "released", json!({"tray":code}));
        (held(&book, TODAY, "cof-7").blocks, held(&book, TODAY, "cof-2").blocks)
    };
    assert_eq!((release("cof-7"), release("cof-2")), ((false, true), (false, false)));
    // On the day of the move, written after it, too.
    let mut book = quarantined("cof-7", "potted_on", 40);
    book.write("2026-04-13", "released", json!({"tray":"cof-7"}));
    assert!(!held(&book, TODAY, "cof-7").blocks);
    // What was let go before the move, or held after it, holds nothing there.
    let mut book = fitting();
    ready_coffee(&mut book, "cof-2");
    book.write("2026-04-10", "held", json!({"tray":"cof-2","why":"quarantine"}));
    book.write("2026-04-12", "released", json!({"tray":"cof-2"}));
    book.write("2026-04-13", "moved_on", json!({"from":"cof-2","to":"cof-1","count":20,"how":"merged"}));
    book.write("2026-04-14", "held", json!({"tray":"cof-2","why":"promised"}));
    assert!(!held(&book, TODAY, "cof-1").blocks);
}

#[test]
fn a_hold_until_a_day_ends_with_that_day_in_every_tray() {
    let mut book = fitting();
    ready_coffee(&mut book, "cof-2");
    book.write("2026-04-12", "held", json!({"tray":"cof-2","why":"quarantine","until":"2026-04-15"}));
    book.write("2026-04-13", "moved_on", json!({"from":"cof-2","to":"cof-1","count":20,"how":"merged"}));
    assert!(held(&book, TODAY, "cof-1").blocks && !held(&book, "2026-04-16", "cof-1").blocks);
}

/// The ready tray, carried off its bench on a day, and the bench held from another on.
fn carried_off(held_on: &str, carried: &str) -> Book {
    carried_off_for("a new roof", held_on, carried)
}

fn carried_off_for(why: &str, held_on: &str, carried: &str) -> Book {
    let mut book = fitting();
    book.write("2025-01-01", "place_set", json!({"place":"Bench 9","order":3,"shade_pct":45}));
    book.write(held_on, "held", json!({"place":"Half shade","why":why}));
    book.write(carried, "carried", json!({"tray":"cof-1","place":"Bench 9"}));
    book
}

#[test]
fn a_tray_carried_off_a_held_place_asks_for_care_while_the_place_is_held() {
    let book = carried_off("2026-04-10", "2026-04-12");
    let care = held(&book, TODAY, "cof-1");
    assert_eq!((care.blocks, care.warns), (false, true), "{}", said(&care));
    assert!(said(&care).contains("stood at Half shade while it was held: a new roof"), "{}", said(&care));
    // Carried off before, or let go with its place or by itself, it does not.
    assert!(!held(&carried_off("2026-04-13", "2026-04-12"), TODAY, "cof-1").warns);
    for who in [json!({"place":"Half shade"}), json!({"tray":"cof-1"})] {
        let mut book = book.clone();
        book.write("2026-04-14", "released", who.clone());
        assert!(!held(&book, TODAY, "cof-1").warns, "{who}");
    }
    // Potted on it asks on; held anew without a break the place is held since the first.
    let mut on = book.clone();
    on.write("2026-04-13", "held", json!({"place":"Half shade","why":"a new roof","until":"2026-05-01"}));
    let moved = json!({"from":"cof-1","to":"cof-7","count":40,"how":"potted_on","container":"bag","place":"Bench 9"});
    on.write("2026-04-14", "moved_on", moved);
    assert!(held(&on, TODAY, "cof-7").warns && !held(&on, "2026-05-02", "cof-7").warns);
    on.write("2026-04-14", "released", json!({"tray":"cof-7"}));
    let moved = json!({"from":"cof-7","to":"cof-8","count":40,"how":"potted_on","container":"bag"});
    on.write("2026-04-15", "moved_on", moved);
    assert!(!held(&on, TODAY, "cof-8").warns);
}

#[test]
fn a_tray_that_left_a_place_held_for_a_sickness_is_held_until_it_is_let_go() {
    for why in ["quarantine", "cuarentena", "sick", "bacterial wilt", "plaga"] {
        let book = carried_off_for(why, "2026-04-10", "2026-04-12");
        assert!(held(&book, TODAY, "cof-1").blocks && !pair(&book.on(TODAY), "cof-1", "Upper 1").fits, "{why}");
        let mut on = book.clone();
        ready_coffee(&mut on, "cof-2");
        on.write("2026-04-13", "moved_on", json!({"from":"cof-1","to":"cof-9","count":20,"how":"potted_on"}));
        assert!(held(&on, TODAY, "cof-9").blocks, "{why}");
        for who in [json!({"place":"Half shade"}), json!({"tray":"cof-1"})] {
            let mut free = book.clone();
            free.write("2026-04-14", "released", who.clone());
            assert!(held(&free, TODAY, "cof-1").met() == Some(true), "{why} {who}");
        }
    }
    for why in ["a new roof", "promised to the school", "rearranging", "reservado"] {
        assert!(!held(&carried_off_for(why, "2026-04-10", "2026-04-12"), TODAY, "cof-1").blocks, "{why}");
    }
    // Off the bench before it was held.
    assert!(!held(&carried_off_for("quarantine", "2026-04-13", "2026-04-12"), TODAY, "cof-1").warns);
}

#[test]
fn what_takes_held_plants_on_is_told_when_it_is_written() {
    let home = Home::default().begun();
    home.write("place_set", &["place=Bench 1", "order=1", "shade_pct=50"]);
    home.write("place_set", &["place=Bench 2", "order=2", "shade_pct=50"]);
    let came =
        ["tray=cof-1", "species=coffee", "count=60", "from=opening", "form=bag", "age_days=250", "place=Bench 1"];
    home.write("plants_received", &came);
    home.write("held", &["tray=cof-1", "why=quarantine"]);
    let told = |words: &[&str]| {
        let ended = home.run(words);
        assert_eq!(ended.code, 0, "{}", ended.err);
        ended.out + &ended.err
    };
    let given = told(&["write", "given_out", "tray=cof-1", "count=5", "to=a neighbour"]);
    assert!(given.contains("nobody should get plants of cof-1 yet") && given.contains("quarantine"), "{given}");
    let moved = told(&["write", "moved_on", "from=cof-1", "to=cof-2", "count=20", "how=potted_on", "place=Bench 1"]);
    assert!(moved.contains("plants of cof-1 go into cof-2, and what holds them back goes along"), "{moved}");
    home.write("held", &["place=Bench 1", "why=wilt"]);
    let carried = told(&["write", "carried", "tray=cof-2", "place=Bench 2", "--lang", "es"]);
    assert!(carried.contains("cof-2 sale de Bench 1, que está retenido"), "{carried}");
}

#[test]
fn every_hold_stands_until_it_ends_or_is_let_go_by_its_name_or_without_one() {
    for about in
        [json!({"tray":"cof-1"}), json!({"place":"Half shade"}), json!({"lot":"cof-L1"}), json!({"bed":"Upper 1"})]
    {
        let write = |book: &mut Book, on: &str, kind: &str, more: serde_json::Value| {
            let mut body = about.clone();
            body.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
            book.write(on, kind, body);
        };
        let fits = |book: &Book| pair(&book.on("2026-04-15"), "cof-1", "Upper 1").fits;
        let mut book = fitting();
        write(&mut book, "2026-04-12", "held", json!({"why":"sick, keep apart"}));
        write(&mut book, "2026-04-12", "held", json!({"why":"promised","until":"2026-04-14"}));
        assert!(!fits(&book), "the first stands: {about}");
        let mut named = book.clone();
        write(&mut named, "2026-04-13", "released", json!({"why":"promised no longer"}));
        assert!(!fits(&named), "only the promise is let go: {about}");
        write(&mut named, "2026-04-14", "released", json!({"why":"no longer sick, nor apart"}));
        assert!(fits(&named), "then the other: {about}");
        write(&mut book, "2026-04-13", "released", json!({}));
        assert!(fits(&book), "without a name all are let go: {about}");
        // The same reason again changes its day.
        let mut again = fitting();
        write(&mut again, "2026-04-12", "held", json!({"why":"promised"}));
        write(&mut again, "2026-04-13", "held", json!({"why":"Promised","until":"2026-04-14"}));
        assert!(fits(&again), "{about}");
    }
}
