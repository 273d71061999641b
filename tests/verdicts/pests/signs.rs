//! What plants of a tray died of by a sign, or by a word that names no sickness; roots that rot; what sits in potting soil.

use super::{TODAY, asked, criterion, fitting, said, seen, stands, tasks_at, tray};
use crate::support::{Book, bed_species, open_bed, pair, ready_coffee};
use outplant::reckon::picture::Rule;
use outplant::reckon::round::round;
use outplant::wording::Lang::{En, Es};
use serde_json::json;

fn with_loss(on: &str, count: u32, cause: &str) -> Book {
    let mut book = fitting();
    book.write(on, "lost", json!({"tray":"cof-1","count":count,"cause":cause}));
    book
}

fn with_cull(on: &str, count: u32, why: &str) -> Book {
    let mut book = fitting();
    book.write(on, "culled", json!({"tray":"cof-1","count":count,"why":why}));
    book
}

#[test]
fn a_sign_of_which_a_twentieth_died_or_was_thrown_out_holds_as_a_living_plant_with_it_does() {
    for why in
        ["fungus", "sick", "enfermedad", "hongos", "yellowing", "black stems", "wilting", "dried up", "se secaron"]
    {
        assert!(asked(&with_loss("2026-04-12", 6, why)).blocks, "{why}");
        assert!(!asked(&with_loss("2026-04-12", 2, why)).blocks, "{why}: a plant or two");
        assert!(asked(&with_cull("2026-04-12", 6, why)).blocks, "culled, {why}");
    }
    for why in ["dried up, no water", "runts", "too many", "yellow and thin"] {
        assert!(!asked(&with_cull("2026-04-12", 6, why)).blocks, "{why}");
    }
    // One line of a person answers it.
    let mut book = with_loss("2026-04-12", 6, "fungus");
    book.write("2026-04-13", "pest_seen", json!({"tray":"cof-1","what":"fungus","spreads":false}));
    assert!(!asked(&book).blocks);
}

#[test]
fn a_tenth_of_older_plants_dead_of_nobody_knows_what_is_asked_about_and_fewer_are_not() {
    assert!(
        asked(&with_loss("2026-04-12", 6, "unknown")).blocks && asked(&with_cull("2026-04-12", 6, "unknown")).blocks
    );
    assert!(!asked(&with_loss("2026-04-12", 3, "unknown")).blocks);
    // Young seedlings die of many things.
    let mut book = fitting();
    book.write("2025-09-12", "lost", json!({"tray":"cof-1","count":8,"cause":"unknown"}));
    assert!(!criterion(&tray(&book.on("2025-09-13"), "cof-1").criteria, Rule::Pest).blocks);
}

#[test]
fn white_mould_at_the_collar_lives_in_the_soil_and_holds() {
    for what in ["white mould at the collar", "moho blanco", "white fungus threads at the stem"] {
        assert_eq!(stands(&[("2026-04-01", what, Some(2.0))]), (true, false), "{what}");
        assert!(asked(&with_cull("2026-04-12", 3, what)).blocks && asked(&with_loss("2026-04-12", 3, what)).blocks);
    }
}

#[test]
fn a_rot_of_roots_is_answered_by_roots_and_no_count_of_heads() {
    for what in ["root rot", "Phytophthora", "pudrición de la raíz"] {
        let book = with_loss("2026-03-01", 5, what);
        assert!(asked(&book).blocks, "{what}: counted on 10 April");
        assert!(!said(&book, "2026-03-02", En).contains("A count of the whole tray"), "{what}");
    }
    let mut book = fitting();
    book.write("2026-01-05", "plants_found", json!({"bed":"Upper 1","species":"COA","alive":30}));
    let lost = json!({"bed":"Upper 1","species":"COA","count":2,"cause":"phytophthora root rot"});
    book.write("2026-02-10", "plants_lost", lost);
    book.write("2026-04-10", "survival_counted", json!({"bed":"Upper 1","species":"COA","alive":28,"dead":2}));
    let picture = book.on(TODAY);
    let of_bed = criterion(&bed_species(&picture, "Upper 1", "COA").criteria, Rule::Pest).clone();
    let told = |lang| outplant::wording::Wording::new(lang).reason(&of_bed, outplant::wording::verdict::About::Bed);
    assert!(
        of_bed.blocks && told(En).contains("have the soil tested") && told(Es).contains("mande analizar la tierra")
    );
    assert!(!told(En).contains("dig in some places"), "{}", told(En));
}

#[test]
fn a_bed_with_plants_of_a_tray_sprayed_lately_takes_no_hands_until_their_wait_ends() {
    let mut book = fitting();
    ready_coffee(&mut book, "cof-2");
    book.write("2026-02-21", "carried", json!({"tray":"cof-2","place":"Corner"}));
    book.write("2026-04-13", "treated", json!({"tray":"cof-2","with":"chlorpyrifos","safe_after_days":10}));
    book.write("2026-04-14", "outplanted", json!({"tray":"cof-2","bed":"Upper 1","count":10}));
    let picture = book.on(TODAY);
    assert!(!pair(&picture, "cof-1", "Upper 1").fits);
    let away = |on: &str| round(&book.on(on)).stay_away.iter().any(|(of, _)| format!("{of:?}").contains("Upper 1"));
    assert!(away(TODAY) && away("2026-04-22") && !away("2026-04-23"));
    let of_bed = criterion(&bed_species(&picture, "Upper 1", "COA").criteria, Rule::Treated).clone();
    let told = |lang| outplant::wording::Wording::new(lang).reason(&of_bed, outplant::wording::verdict::About::Bed);
    assert!(told(En).contains("plants from cof-2") && told(Es).contains("plantas de cof-2"), "{}", told(En));
}

#[test]
fn what_travels_in_pots_holds_and_is_told_of_and_what_bores_in_berries_is_not_in_the_stem() {
    for what in ["fire ants", "little fire ant", "hormiga de fuego"] {
        assert_eq!(stands(&[("2026-04-01", what, Some(2.0))]), (true, false), "{what}");
        let mut book = fitting();
        seen(&mut book, "2026-04-14", json!({"tray":"cof-1"}), what, Some(2.0));
        assert!(said(&book, TODAY, En).contains("ask whether it must be reported"), "{what}");
    }
    for what in ["giant African snail", "caracol gigante", "jumping worms"] {
        let mut book = fitting();
        seen(&mut book, "2026-04-14", json!({"tray":"cof-1"}), what, Some(2.0));
        let told = said(&book, TODAY, En);
        assert!(
            asked(&book).blocks && told.contains("throw out the whole tray") && told.contains("reported"),
            "{told}"
        );
    }
    for what in ["coffee berry borer", "berry borer", "broca del café"] {
        assert_eq!(stands(&[("2026-04-01", what, Some(2.0))]), (false, true), "{what}");
    }
    assert_eq!(stands(&[("2026-04-01", "leaf scorch", Some(2.0))]), (true, false));
}

#[test]
fn old_news_of_a_few_spots_asks_for_a_look_and_not_for_throwing_out() {
    let mut book = fitting();
    seen(&mut book, "2026-03-30", json!({"tray":"cof-1"}), "coffee leaf rust", Some(5.0));
    let picture = book.on(TODAY);
    assert!(pair(&picture, "cof-1", "Upper 1").fits && asked(&book).warns);
    let (all, on) =
        (round(&picture), outplant::wording::round::RoundOn { day: picture.day, species: &picture.site.species });
    let stop = all.stops.iter().chain(&all.can_wait).find(|stop| stop.id == "sick cof-1").unwrap();
    let told = |lang| outplant::wording::Wording::new(lang).round_reason(&stop.why, on);
    assert!(
        told(En).contains("look again, leave those that have it") && !told(En).contains("throw out"),
        "{}",
        told(En)
    );
    assert!(told(Es).contains("mire otra vez"), "{}", told(Es));
}

#[test]
fn a_tray_that_is_set_apart_and_reported_has_its_stop_on_the_day_and_first() {
    let book = with_cull(TODAY, 3, "mosaic virus");
    let all = round(&book.on(TODAY));
    let stop = all.stops.iter().find(|stop| stop.id == "sick cof-1").unwrap();
    assert!(format!("{:?}", stop.why).contains("apart: true"));
    assert!(!tasks_at(&book, "2026-04-25", "cof-1").contains(&"sick".to_string()), "it waits for the look then");
}

#[test]
fn food_of_plants_and_water_ask_for_no_waiting_time_and_shut_no_bench() {
    for with in [
        "water jet",
        "agua",
        "compost",
        "fertilizer",
        "foliar feed",
        "abono foliar",
        "urea",
        "worm castings",
        "compost tea",
    ] {
        let mut book = fitting();
        open_bed(&mut book, "Upper 2");
        book.write("2026-04-14", "treated", json!({"tray":"cof-1","with":with}));
        let picture = book.on(TODAY);
        assert!(pair(&picture, "cof-1", "Upper 1").fits, "{with}");
        assert!(round(&picture).stay_away.is_empty(), "{with}");
    }
    let mut book = fitting();
    book.write("2026-04-14", "treated", json!({"tray":"cof-1","with":"compost with malathion"}));
    assert!(!pair(&book.on(TODAY), "cof-1", "Upper 1").fits);
}

#[test]
fn a_cause_written_as_a_list_is_told_without_brackets() {
    let mut book = fitting();
    book.write("2026-01-05", "plants_found", json!({"bed":"Upper 1","species":"COA","alive":30}));
    let count = json!({"bed":"Upper 1","species":"COA","alive":20,"dead":10,"causes":"[\"root-knot nematodes\"]"});
    book.write("2026-04-10", "survival_counted", count);
    let of_bed = criterion(&bed_species(&book.on(TODAY), "Upper 1", "COA").criteria, Rule::Pest).clone();
    let told = outplant::wording::Wording::new(En).reason(&of_bed, outplant::wording::verdict::About::Bed);
    assert!(told.contains(": root-knot nematodes."), "{told}");
}
