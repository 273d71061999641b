//! What stands beside a sick tray, or where a sickness was seen, is looked at before it goes; no clean tray is carried there.

use super::{TODAY, criterion, fitting, seen, tray};
use crate::support::program::Home;
use crate::support::{Book, coffee_in_deep_shade, pair, ready_coffee};
use outplant::reckon::picture::{Criterion, Rule};
use outplant::wording::Lang::{En, Es};
use outplant::wording::Wording;
use outplant::wording::verdict::About;
use serde_json::json;

fn two_trays() -> Book {
    let mut book = fitting();
    ready_coffee(&mut book, "cof-2");
    book
}

fn of(book: &Book, code: &str, on: &str) -> Criterion {
    criterion(&tray(&book.on(on), code).criteria, Rule::Pest).clone()
}

fn care(book: &Book, code: &str, on: &str) -> bool {
    let pest = of(book, code, on);
    assert!(!pest.blocks, "{code} is clean by all that is known");
    pest.warns
}

#[test]
fn a_clean_tray_beside_a_sick_one_is_looked_at_before_it_goes_and_goes_after_a_look() {
    for what in ["bacterial wilt", "mosaic virus", "root rot", "nematodes", "marchitez", "late blight"] {
        let mut book = two_trays();
        assert!(!care(&book, "cof-2", TODAY));
        seen(&mut book, "2026-04-12", json!({"tray":"cof-1"}), what, Some(4.0));
        assert!(care(&book, "cof-2", TODAY) && pair(&book.on(TODAY), "cof-2", "Upper 1").fits, "{what}");
        for (lang, look) in [(En, "look at them before they go"), (Es, "mírelas antes de que salgan")] {
            let said = Wording::new(lang).reason(&of(&book, "cof-2", TODAY), About::Tray);
            assert!(said.contains("cof-1") && said.contains(look), "{said}");
        }
        seen(&mut book, TODAY, json!({"tray":"cof-2"}), what, Some(0.0));
        assert!(!care(&book, "cof-2", TODAY), "{what}");
        assert!(care(&book, "cof-2", "2026-04-30"), "{what}: a week later it may have come over");
    }
    // What eats leaves, what stays in its soil, and damping-off of young seedlings pass over nobody's bench.
    for what in ["aphids", "white grubs", "damping-off", "hail"] {
        let mut book = two_trays();
        seen(&mut book, "2026-04-12", json!({"tray":"cof-1"}), what, Some(40.0));
        assert!(!care(&book, "cof-2", TODAY), "{what}");
    }
}

#[test]
fn a_tray_that_stood_beside_a_sick_one_is_looked_at_for_as_long_as_it_shows_late() {
    let mut book = two_trays();
    seen(&mut book, "2026-03-12", json!({"tray":"cof-1"}), "mosaic virus", Some(4.0));
    book.write("2026-03-13", "carried", json!({"tray":"cof-1","place":"Deep shade"}));
    let upto = |on: &str| care(&book, "cof-2", on);
    let days = ["2026-03-14", "2026-04-10", "2026-04-11"].map(upto);
    assert_eq!(days, [true, true, false], "28 days after it was carried off");
    let mut moved = two_trays();
    seen(&mut moved, "2026-04-01", json!({"place":"Deep shade"}), "mosaic virus", Some(4.0));
    assert!(!care(&moved, "cof-2", TODAY));
    moved.write("2026-04-12", "carried", json!({"tray":"cof-2","place":"Deep shade"}));
    assert!(care(&moved, "cof-2", TODAY), "carried to where it was seen");
}

/// A tray due for more light, which Half shade gives; whether the round carries it there.
fn carried_there(book: &Book) -> bool {
    let round = outplant::reckon::round::round(&book.on("2026-01-15"));
    let mut all = round.stops.iter().chain(&round.can_wait);
    let stop = all.find(|stop| stop.id.ends_with(" cof-7")).unwrap_or_else(|| panic!("{:?}", round.stops));
    format!("{:?}", stop.why).contains("Half shade")
}

#[test]
fn no_clean_tray_is_carried_to_a_bench_with_a_sickness_that_goes_over() {
    let mut book = two_trays();
    coffee_in_deep_shade(&mut book, "cof-7", "2025-06-01", "2026-01-12");
    book.write("2026-01-12", "plug_checked", json!({"tray":"cof-7","roots":"holds"}));
    let plants: Vec<_> = (0..20).map(|_| json!({"height_cm":26,"collar_mm":4.5,"leaf_pairs":7})).collect();
    book.write("2026-01-12", "measured", json!({"tray":"cof-7","plants":plants}));
    assert!(carried_there(&book));
    for what in ["bacterial wilt", "mosaic virus"] {
        let mut seen_there = book.clone();
        seen(&mut seen_there, "2026-01-10", json!({"place":"Half shade"}), what, Some(10.0));
        assert!(!carried_there(&seen_there), "{what} was seen there");
        seen(&mut seen_there, "2026-01-14", json!({"place":"Half shade"}), what, Some(0.0));
        assert!(carried_there(&seen_there), "{what} is gone from there");
        let mut stands = book.clone();
        stands.write("2026-01-02", "carried", json!({"tray":"cof-2","place":"Half shade"}));
        assert!(carried_there(&stands));
        seen(&mut stands, "2026-01-10", json!({"tray":"cof-2"}), what, Some(4.0));
        assert!(!carried_there(&stands), "a tray with {what} stands there");
    }
    let mut eaten = book.clone();
    seen(&mut eaten, "2026-01-10", json!({"place":"Half shade"}), "aphids", Some(10.0));
    assert!(carried_there(&eaten));
}

#[test]
fn whoever_moves_grafts_or_carries_a_sickness_on_is_told_so_and_a_loss_that_names_one_says_that_it_counts() {
    let home = Home::default().begun();
    home.write("place_set", &["place=line", "order=1", "shade_pct=30"]);
    home.write("place_set", &["place=bay", "order=2", "shade_pct=30"]);
    for code in ["mor-1", "mor-2", "mor-3"] {
        let tray = format!("tray={code}");
        let place = if code == "mor-3" { "place=bay" } else { "place=line" };
        let came = [&tray, "species=moringa", "count=40", "from=bought", "form=bag", "container=bag", place];
        home.write("plants_received", &came);
    }
    let told = |words: &[&str]| home.done(&[&["write", "--yes"], words].concat());
    let lost = told(&["lost", "tray=mor-1", "count=2", "cause=mosaic virus"]);
    assert!(lost.contains("counts as seen in mor-1"), "{lost}");
    assert!(!told(&["lost", "tray=mor-2", "count=2", "cause=rats"]).contains("take care"));
    for words in [
        vec!["moved_on", "from=mor-1", "to=mor-2", "count=3", "how=merged"],
        vec!["grafted", "tray=mor-1", "count=3"],
        vec!["carried", "tray=mor-1", "place=bay"],
    ] {
        let said = told(&words);
        assert!(said.contains("take care: mosaic virus is not settled in mor-1"), "{said}");
    }
    let said = told(&["carried", "tray=mor-3", "place=line", "--lang", "es"]);
    assert!(said.contains("cuidado: se vio mosaic virus en line"), "{said}");
}

#[test]
fn a_sick_tray_that_is_carried_on_is_looked_for_among_its_new_neighbours_too() {
    for of in [json!({"tray":"cof-1"}), json!({"place":"Half shade"})] {
        let mut book = two_trays();
        ready_coffee(&mut book, "cof-3");
        book.write("2026-03-01", "carried", json!({"tray":"cof-3","place":"Corner"}));
        seen(&mut book, "2026-04-12", of.clone(), "nematodes", Some(5.0));
        assert!(!care(&book, "cof-3", TODAY), "{of}");
        book.write("2026-04-13", "carried", json!({"tray":"cof-1","place":"Corner"}));
        assert!(care(&book, "cof-3", TODAY), "{of}");
        let told = Wording::new(En).reason(&of_pest(&book, "cof-3"), About::Tray);
        assert!(told.contains("beside cof-1"), "{told}");
    }
}

fn of_pest(book: &Book, code: &str) -> Criterion {
    of(book, code, TODAY)
}

#[test]
fn whoever_looks_too_early_is_told_so_when_it_is_written() {
    let home = Home::default().begun();
    let came = ["tray=mor-1", "species=moringa", "count=40", "from=bought", "form=bag", "container=bag", "place=line"];
    home.write("plants_received", &[&came[..], &["happened=2026-03-01"]].concat());
    home.write("culled", &["tray=mor-1", "count=2", "why=root rot", "happened=2026-04-10"]);
    let look = ["write", "--yes", "pest_seen", "tray=mor-1", "what=root rot", "share_pct=0", "plants_seen=38"];
    let said = home.done(&look);
    assert!(said.contains("take care: at mor-1 this look came too early to tell: only one from 24 Apr"), "{said}");
}

#[test]
fn a_bench_seen_sick_long_ago_is_told_of_while_a_tray_there_still_waits_for_its_look() {
    let mut book = fitting();
    coffee_in_deep_shade(&mut book, "cof-9", "2025-06-01", "2025-09-10");
    seen(&mut book, "2026-03-05", json!({"place":"Half shade"}), "bacterial wilt", Some(10.0));
    assert!(of(&book, "cof-1", TODAY).blocks && !care(&book, "cof-9", "2026-04-12"));
    book.write("2026-04-12", "carried", json!({"tray":"cof-9","place":"Half shade"}));
    assert!(care(&book, "cof-9", TODAY), "41 days after it was seen there");
}
