//! What a bed tells of the trays that its plants came out of.

use super::{TODAY, clear, criterion, fitting, seen, tasks_at, tray};
use crate::support::{Book, bed_species, open_bed, pair, ready_coffee};
use outplant::reckon::picture::{Criterion, Rule};
use outplant::wording::Lang::{self, En, Es};
use outplant::wording::Wording;
use outplant::wording::verdict::About;
use serde_json::json;

/// Three trays; of cof-2 20 were set out in Upper 1.
fn planted(on: &str) -> Book {
    let mut book = fitting();
    for code in ["cof-2", "cof-3"] {
        ready_coffee(&mut book, code);
    }
    out(&mut book, on, "cof-2", "Upper 1");
    book
}

fn out(book: &mut Book, on: &str, code: &str, bed: &str) {
    book.write(on, "outplanted", json!({"tray":code,"bed":bed,"count":20}));
}

fn sick(book: &mut Book, on: &str, what: &str, share: f64) {
    seen(book, on, json!({"bed":"Upper 1"}), what, Some(share));
}

fn of(book: &Book, on: &str, code: &str) -> Criterion {
    criterion(&tray(&book.on(on), code).criteria, Rule::Pest).clone()
}

fn word(pest: &Criterion) -> &'static str {
    match (pest.blocks, pest.warns) {
        (true, _) => "held",
        (false, true) => "care",
        (false, false) => "open",
    }
}

fn stands(book: &Book, code: &str) -> &'static str {
    word(&of(book, TODAY, code))
}

fn told(book: &Book, code: &str, lang: Lang) -> String {
    Wording::new(lang).reason(&of(book, TODAY, code), About::Tray)
}

fn of_bed(book: &Book, bed: &str) -> Option<Criterion> {
    let picture = book.on(TODAY);
    bed_species(&picture, bed, "COA").criteria.iter().find(|asked| asked.rule() == Rule::Pest).cloned()
}

#[test]
fn a_sickness_seen_in_a_bed_while_it_was_hidden_holds_the_tray_that_its_plants_came_out_of() {
    for (what, out, before) in [
        ("bacterial wilt", "2026-03-17", "2026-03-16"),
        ("fusarium", "2026-03-17", "2026-03-16"),
        ("nematodes", "2026-03-17", "2026-03-16"),
        ("root rot", "2026-03-31", "2026-03-30"),
    ] {
        let held = |on: &str| {
            let mut book = planted(on);
            sick(&mut book, "2026-04-14", what, 40.0);
            stands(&book, "cof-2")
        };
        // What lives in soil shows late: after the weeks in which it hides it asks for care.
        assert_eq!((held("2026-04-10"), held(out), held(before)), ("held", "held", "care"), "{what}");
    }
    let mut book = planted("2026-04-10");
    sick(&mut book, "2026-04-14", "bacterial wilt", 40.0);
    assert_eq!(stands(&book, "cof-1"), "open");
    assert!(!pair(&book.on(TODAY), "cof-2", "Upper 1").fits);
    assert!(tasks_at(&book, TODAY, "cof-2").contains(&"sick".to_string()));
    let said = told(&book, "cof-2", En);
    assert!(
        said.contains("others of cof-2 were set out in Upper 1 on 10 Apr 2026, and bacterial wilt was seen"),
        "{said}"
    );
    assert!(told(&book, "cof-2", Es).contains("otras de cof-2 se plantaron en Upper 1 el"));
    // A look at it four weeks after they parted frees it.
    seen(&mut book, "2026-05-07", json!({"tray":"cof-2"}), "none", Some(0.0));
    assert!(of(&book, "2026-05-08", "cof-2").blocks);
    book.write(
        "2026-05-08",
        "pest_seen",
        json!({"tray":"cof-2","what":"bacterial wilt","share_pct":0,"plants_seen":28,"roots_seen":true}),
    );
    assert!(!of(&book, "2026-05-08", "cof-2").blocks);
    // As what its plants died of.
    let mut lost = planted("2026-04-10");
    lost.write("2026-04-14", "plants_lost", json!({"bed":"Upper 1","species":"COA","count":4,"cause":"fusarium"}));
    assert_eq!(stands(&lost, "cof-2"), "held");
    // What stayed and was potted on.
    let mut on = planted("2026-04-10");
    let body = json!({"from":"cof-2","to":"cof-9","count":28,"how":"potted_on","container":"bag","place":"Half shade"});
    on.write("2026-04-12", "moved_on", body);
    sick(&mut on, "2026-04-14", "fusarium", 40.0);
    assert_eq!(stands(&on, "cof-9"), "held");
}

#[test]
fn what_flies_on_was_in_the_ground_or_may_be_thirst_holds_no_tray() {
    for what in ["aphids", "rats", "leaf spot", "white grubs", "damping-off", "hail"] {
        let mut book = planted("2026-04-10");
        sick(&mut book, "2026-04-14", what, 40.0);
        assert_eq!(stands(&book, "cof-2"), "open", "{what}");
    }
    let mut wilts = planted("2026-04-10");
    sick(&mut wilts, "2026-04-14", "wilting", 40.0);
    assert_eq!(stands(&wilts, "cof-2"), "care");
    assert!(told(&wilts, "cof-2", En).contains("plants of cof-2 were set out in Upper 1, where wilting was seen"));
    assert!(told(&wilts, "cof-2", Es).contains("se plantaron plantas de cof-2 en Upper 1"));
    let mut few = planted("2026-04-10");
    sick(&mut few, "2026-04-14", "wilting", 5.0);
    assert_eq!(stands(&few, "cof-2"), "open");
    // It was there before them.
    let mut ground = fitting();
    ready_coffee(&mut ground, "cof-2");
    sick(&mut ground, "2026-02-10", "nematodes", 5.0);
    out(&mut ground, "2026-04-10", "cof-2", "Upper 1");
    sick(&mut ground, "2026-04-14", "nematodes", 40.0);
    assert_eq!(stands(&ground, "cof-2"), "open");
    // Out of two trays: nobody says whose it was, and it hides in neither for certain.
    let mut two = planted("2026-04-10");
    out(&mut two, "2026-04-11", "cof-3", "Upper 1");
    sick(&mut two, "2026-04-14", "bacterial wilt", 40.0);
    assert_eq!((stands(&two, "cof-2"), stands(&two, "cof-3")), ("care", "care"));
    clear(&mut two, TODAY, "bacterial wilt", 28);
    seen(&mut two, TODAY, json!({"tray":"cof-2"}), "none", Some(0.0));
    assert_eq!((stands(&two, "cof-2"), stands(&two, "cof-3")), ("open", "care"));
}

#[test]
fn another_bed_set_out_from_the_tray_of_a_sick_bed_asks_for_care() {
    let mut book = planted("2026-04-10");
    open_bed(&mut book, "Upper 2");
    out(&mut book, "2026-04-10", "cof-2", "Upper 2");
    assert!(of_bed(&book, "Upper 2").is_none());
    sick(&mut book, "2026-04-14", "bacterial wilt", 40.0);
    let care = of_bed(&book, "Upper 2").unwrap();
    let said = [En, Es].map(|lang| Wording::new(lang).reason(&care, About::Bed));
    assert!(!care.blocks && care.warns && said[0].contains("in Upper 1, where bacterial wilt"), "{said:?}");
    assert!(said[1].contains("en Upper 1, donde se vio"), "{said:?}");
    seen(&mut book, TODAY, json!({"bed":"Upper 2"}), "none", Some(0.0));
    assert!(of_bed(&book, "Upper 2").is_none());
}

#[test]
fn plants_that_most_died_of_nobody_knows_what_within_four_weeks_of_planting_ask_for_care_in_their_tray() {
    let dead = |out: &str, alive: u32, dead: u32| {
        let mut book = planted(out);
        let body = json!({"bed":"Upper 1","species":"COA","alive":alive,"dead":dead});
        book.write("2026-04-14", "survival_counted", body);
        book
    };
    let book = dead("2026-04-05", 6, 14);
    assert_eq!((stands(&book, "cof-2"), stands(&book, "cof-1")), ("care", "open"));
    let said = told(&book, "cof-2", En);
    assert!(said.contains("in Upper 1, where by 14 Apr 2026 14 were dead or gone and 6 alive"), "{said}");
    assert!(told(&book, "cof-2", Es).contains("había 14 muertas o perdidas y 6 vivas"));
    assert_eq!(stands(&dead("2026-03-16", 6, 14), "cof-2"), "open", "29 days after planting");
    assert_eq!(stands(&dead("2026-04-05", 15, 5), "cof-2"), "open", "a quarter is a word for the bed alone");
    let mut looked = dead("2026-04-05", 6, 14);
    seen(&mut looked, TODAY, json!({"tray":"cof-2"}), "none", Some(0.0));
    assert_eq!(stands(&looked, "cof-2"), "open");
    // Of goats nothing is in the tray.
    let mut goats = planted("2026-04-05");
    goats.write("2026-04-14", "plants_lost", json!({"bed":"Upper 1","species":"COA","count":14,"cause":"goats"}));
    assert_eq!(stands(&goats, "cof-2"), "open");
}
