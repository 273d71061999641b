//! What is judged of a tray toward one bed, and what is said first.

use outplant::reckon::picture::{Gap, PairPicture, Rule};
use outplant::wording::verdict::About;
use outplant::wording::{Lang, Wording};
use serde_json::json;

use crate::support::{
    Book, coffee_in_deep_shade, criterion, day, fitting, pair, ready_coffee, small_nursery, tray, wet_days,
};

const TODAY: &str = "2026-04-15";

/// A bed for coffee where only light can hold back.
fn bed_in_light(book: &mut Book, bed: &str, light: f64) {
    let plan = json!([{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]);
    book.write("2025-01-01", "bed_set", json!({"bed":bed,"field":"Upper","length_m":20,"width_m":6,"plan":plan}));
    book.write("2026-04-01", "light_read", json!({"bed":bed,"light_share":light}));
    book.write("2026-04-01", "soil_checked", json!({"bed":bed,"resistance_mpa":1.2,"depth_cm":30,"wet":true}));
    for task in ["cleared", "holes", "weeded"] {
        book.write("2026-04-05", "prepared", json!({"bed":bed,"task":task}));
    }
}

/// Coffee raised in 30 % light that came into 55 % on a day, and three beds: as bright, a little and much brighter.
fn moved_up_on(carried: &str) -> Book {
    let mut book = small_nursery();
    coffee_in_deep_shade(&mut book, "cof-1", "2025-06-01", "2025-09-10");
    book.write(carried, "carried", json!({"tray":"cof-1","place":"Half shade"}));
    book.write("2026-04-10", "counted", json!({"tray":"cof-1","standing":48}));
    book.write("2026-04-10", "measured", json!({"tray":"cof-1","plants":vec![json!({"height_cm":28}); 20]}));
    for (bed, light) in [("Same", 0.55), ("Brighter", 0.60), ("Bright", 0.73)] {
        bed_in_light(&mut book, bed, light);
    }
    wet_days(&mut book);
    book
}

fn said(pair: &PairPicture) -> Vec<String> {
    let en = Wording::new(Lang::En);
    pair.criteria.iter().map(|criterion| en.reason(criterion, About::Pair)).collect()
}

#[test]
fn a_bed_no_brighter_than_where_it_stood_needs_no_hardening_for_light() {
    // 12 days in 55 % light: 9 short of 21.
    let picture = moved_up_on("2026-04-03").on(TODAY);
    assert!(criterion(&tray(&picture, "cof-1").criteria, Rule::Hardening).blocks);
    let hardened = |bed: &str| criterion(&pair(&picture, "cof-1", bed).criteria, Rule::Hardening).met();
    assert_eq!([hardened("Same"), hardened("Brighter"), hardened("Bright")], [Some(true), Some(false), Some(false)]);
    assert!(pair(&picture, "cof-1", "Same").fits);
    let brighter = pair(&picture, "cof-1", "Brighter");
    assert_eq!(brighter.held_by.iter().map(|held| held.rule).collect::<Vec<_>>(), [Rule::Hardening]);
}

#[test]
fn never_are_days_short_and_no_step_to_harden_for_said_of_one_pair() {
    for carried in ["2026-02-20", "2026-04-03", "2026-04-12"] {
        let picture = moved_up_on(carried).on(TODAY);
        for pair in picture.pairs.iter() {
            let said = said(pair).join("\n");
            let short = said.contains(" short of ") && said.contains("hardening for");
            assert!(!(short && (said.contains("no step to harden for") || said.contains("has the same"))), "{said}");
        }
    }
}

#[test]
fn a_step_that_fits_is_taken_by_plants_that_stood_long_in_their_light() {
    let mut book = moved_up_on("2025-09-11");
    book.write("2026-04-12", "noted", json!({"text":"stood in half shade since September"}));
    let picture = book.on(TODAY);
    // 0.60 is 1.09 times 0.55, 0.73 is 1.33 times: that is a step to harden for.
    let hardening = |bed: &str| criterion(&pair(&picture, "cof-1", bed).criteria, Rule::Hardening).met();
    assert_eq!(hardening("Brighter"), Some(true));
    assert!(pair(&picture, "cof-1", "Brighter").fits, "{:?}", said(pair(&picture, "cof-1", "Brighter")));
}

#[test]
fn what_is_ready_today_names_no_coming_day_to_be_ready_from() {
    // Before anybody measured days alone tell, and these spread to July.
    let mut book = moved_up_on("2026-02-20");
    book.write("2026-04-10", "plug_checked", json!({"tray":"cof-1","roots":"holds"}));
    let picture = book.on(TODAY);
    let ready = tray(&picture, "cof-1");
    assert!(ready.ready && ready.ready_from.is_some_and(|from| from <= day(TODAY)), "{:?}", ready.ready_from);
    assert_eq!(ready.ready_spread, None);
    let before = book.on("2026-03-05");
    let waits = tray(&before, "cof-1");
    assert!(!waits.ready && waits.ready_spread.is_some_and(|spread| spread.high > day("2026-03-05")));
}

#[test]
fn a_ready_tray_that_no_bed_plans_is_a_gap_of_the_plans_and_no_doubt() {
    let mut book = small_nursery();
    ready_coffee(&mut book, "cof-1");
    let picture = book.on(TODAY);
    assert!(picture.doubts.is_empty(), "{:?}", picture.doubts);
    assert_eq!(picture.unplanned.iter().map(|tray| tray.as_str()).collect::<Vec<_>>(), ["cof-1"]);
    let text = Wording::new(Lang::En).unplanned(&picture.unplanned[0], &picture);
    assert!(text.contains("no bed plans"), "{text}");
    assert!(fitting().on(TODAY).unplanned.is_empty());
}

#[test]
fn bought_plants_whose_shade_is_written_wait_and_are_told_how_long() {
    let mut book = small_nursery();
    book.write(
        "2026-04-05",
        "plants_received",
        json!({"tray":"cof-3","species":"coffee","count":40,"from":"bought","form":"bag","container":"bag"}),
    );
    book.write("2026-04-06", "shade_set", json!({"tray":"cof-3","shade_pct":50}));
    let picture = book.on(TODAY);
    let hardening = criterion(&tray(&picture, "cof-3").criteria, Rule::Hardening);
    let gap = Gap::LightSince { since: day("2026-04-06"), until: day("2026-04-27") };
    assert_eq!((hardening.gap(), hardening.blocks, hardening.expected), (Some(&gap), true, Some(day("2026-04-27"))));
    let reason = Wording::new(Lang::En).reason(hardening, About::Tray);
    assert!(reason.contains("27 Apr") && !reason.contains("read the light"), "{reason}");
}

#[test]
fn a_seedling_of_a_fruit_that_is_grafted_elsewhere_is_asked_about_and_never_held_back() {
    let mut book = small_nursery();
    book.write(
        "2025-06-01",
        "sown",
        json!({"tray":"avo-1","lot":"unknown","species":"avocado","seeds":40,"container":"bag","place":"Half shade"}),
    );
    book.write("2025-09-10", "counted", json!({"tray":"avo-1","standing":30}));
    let grafted = |book: &Book| criterion(&tray(&book.on(TODAY), "avo-1").criteria, Rule::Grafted).clone();
    let seedlings = grafted(&book);
    assert_eq!((seedlings.met(), seedlings.blocks, seedlings.warns), (Some(false), false, true));
    book.write("2026-01-15", "grafted", json!({"tray":"avo-1","count":12,"variety":"Hass"}));
    let some = Wording::new(Lang::En).reason(&grafted(&book), About::Tray);
    assert!(some.contains("only 12 of 30"), "{some}");
    book.write("2026-01-16", "grafted", json!({"tray":"avo-1","count":18,"variety":"Hass"}));
    assert_eq!((grafted(&book).met(), grafted(&book).warns), (Some(true), false));
    assert!(!tray(&fitting().on(TODAY), "cof-1").criteria.iter().any(|criterion| criterion.rule() == Rule::Grafted));
}
