//! What some kinds of entry do to verdicts, each in a world where it alone decides.

use outplant::nursery::entry::types::Roots;
use outplant::reckon::picture::{Criterion, DoubtKind, Measure, Rule};
use outplant::wording::verdict::About;
use outplant::wording::{Lang, Wording};
use serde_json::json;

use crate::support::{Book, criterion, pair, ready_coffee, small_nursery, tray, wet_days};

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

#[test]
fn no_plug_says_that_roots_hold_in_the_three_weeks_after_they_were_cut() {
    for (cut, tells) in [("2026-04-12", false), ("2026-03-24", false), ("2026-03-22", true)] {
        let mut book = coffee();
        book.write(cut, "roots_cut", json!({"tray":"cof-1"}));
        book.write("2026-04-13", "plug_checked", json!({"tray":"cof-1","roots":"holds"}));
        let plug = of_tray(&book, "cof-1", Rule::Plug);
        assert_eq!((plug.met(), plug.blocks), (tells.then_some(true), !tells), "cut on {cut}");
    }
}

#[test]
fn a_ball_that_circled_and_was_not_cut_is_not_freed_by_one_that_holds() {
    let mut book = circling();
    book.write("2026-04-12", "plug_checked", json!({"tray":"cof-1","roots":"holds"}));
    assert!(circles(&book, "cof-1"));
    let on = json!({"from":"cof-1","to":"cof-8","count":30,"how":"potted_on","container":"bag"});
    book.write("2026-04-13", "moved_on", on);
    book.write("2026-04-14", "plug_checked", json!({"tray":"cof-8","roots":"holds"}));
    assert!(circles(&book, "cof-8"), "nor in a larger container");
    book.write("2026-04-14", "culled", json!({"tray":"cof-1","count":3,"why":"circling"}));
    book.write("2026-04-14", "plug_checked", json!({"tray":"cof-1","roots":"holds"}));
    assert!(!circles(&book, "cof-1"), "those that circled were thrown out, and another lifted");
}

#[test]
fn one_plant_thrown_out_of_many_with_roots_that_circle_does_not_free_the_others() {
    for (culled, held, still) in [(1, 1, true), (1, 3, false), (3, 1, false), (0, 3, true)] {
        let mut book = circling();
        if culled > 0 {
            book.write("2026-04-12", "culled", json!({"tray":"cof-1","count":culled,"why":"circling"}));
        }
        for _ in 0..held {
            book.write("2026-04-12", "plug_checked", json!({"tray":"cof-1","roots":"holds"}));
        }
        assert_eq!(circles(&book, "cof-1"), still, "{culled} thrown out, {held} held");
        let on = json!({"from":"cof-1","to":"cof-8","count":30,"how":"potted_on","container":"bag"});
        book.write("2026-04-13", "moved_on", on);
        assert_eq!(circles(&book, "cof-8"), still, "{culled} thrown out, {held} held, moved on");
    }
}

#[test]
fn plants_moved_on_rest_28_days_however_and_wherever_they_came_from() {
    for how in ["merged", "pricked_out", "potted_on"] {
        // Own plants that came in with their age when the book began.
        let mut book = small_nursery();
        let came = json!({"tray":"cof-1","species":"coffee","count":40,"from":"opening","form":"bag","age_days":300});
        book.write("2026-01-01", "plants_received", came);
        let on = json!({"from":"cof-1","to":"cof-9","count":20,"how":how,"container":"bag"});
        book.write("2026-04-14", "moved_on", on);
        let plug = of_tray(&book, "cof-9", Rule::Plug);
        assert_eq!((plug.met(), plug.blocks), (None, true), "{how}");
        assert!(!criterion(&tray(&book.on("2026-05-12"), "cof-9").criteria, Rule::Plug).blocks, "{how}, 28 days later");
        book.write("2026-04-15", "plug_checked", json!({"tray":"cof-9","roots":"holds"}));
        assert!(!of_tray(&book, "cof-9", Rule::Plug).blocks, "{how}, a plug since");
        assert!(!of_tray(&book, "cof-1", Rule::Plug).blocks, "what stayed was not moved");
    }
}

#[test]
fn far_beyond_what_the_bag_holds_a_plug_needs_a_sample_of_these_weeks_beside_it() {
    // Coffee in its own bag: 420 days, 1.5 times 630. Sown on 1 June 2025: day 630 is 21 February 2027.
    for (on, sampled, meets) in [
        ("2027-02-21", "2026-04-10", true),
        ("2027-02-22", "2026-04-10", false),
        ("2027-02-22", "2026-12-28", true),
        ("2027-02-22", "2026-12-27", false),
    ] {
        let mut book = coffee();
        let plants = vec![json!({"height_cm":38,"collar_mm":6}); 20];
        book.write(sampled, "measured", json!({"tray":"cof-1","plants":plants}));
        book.write("2027-02-20", "plug_checked", json!({"tray":"cof-1","roots":"holds"}));
        let picture = book.on(on);
        let days = criterion(&tray(&picture, "cof-1").criteria, Rule::DaysInContainer);
        assert_eq!((days.met(), days.blocks), (Some(meets), !meets), "{on}, measured on {sampled}");
    }
}

#[test]
fn plants_that_only_stood_in_their_light_are_not_said_to_harden() {
    let mut book = small_nursery();
    let came = json!({"tray":"cof-1","species":"coffee","count":40,"from":"opening","form":"bag","age_days":300,"place":"Half shade"});
    book.write("2026-01-15", "plants_received", came);
    let hardening = of_tray(&book, "cof-1", Rule::Hardening);
    let said = Wording::new(Lang::En).reason(&hardening, About::Tray);
    assert!(hardening.met() == Some(true) && said.contains("has stood") && !said.contains("hardening for"), "{said}");
}

/// An avocado tray of plants so tall, all of the same, and how its height and collar are judged.
fn tall_avocado(height_cm: f64, graft: Option<serde_json::Value>) -> (Criterion, Vec<Rule>) {
    let mut book = small_nursery();
    let came = json!({"tray":"avo-1","species":"avocado","count":20,"from":"bought","form":"bag","age_days":300});
    book.write("2026-02-01", "plants_received", came);
    if let Some(graft) = graft {
        book.write("2026-01-15", "grafted", graft);
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

/// Suckers in bags and a bed that plans them, its ground made ready and its light never read.
fn suckers() -> Book {
    let mut book = small_nursery();
    let came = json!({"tray":"p1","species":"plantain","count":40,"from":"gift","form":"bag"});
    book.write("2026-04-01", "plants_received", came);
    let plan = json!([{"species":"plantain","pattern":"rectangle","row_m":3,"in_row_m":2}]);
    book.write("2025-01-01", "bed_set", json!({"bed":"A3","field":"Upper","length_m":20,"width_m":18,"plan":plan}));
    book.write("2026-03-20", "soil_checked", json!({"bed":"A3","resistance_mpa":1,"depth_cm":50,"wet":true}));
    for task in ["cleared", "holes", "weeded", "mulched", "fenced"] {
        book.write("2026-04-10", "prepared", json!({"bed":"A3","task":task}));
    }
    wet_days(&mut book);
    book
}

#[test]
fn suckers_in_a_tray_need_no_shade_and_are_offered_to_a_bed_that_plans_them() {
    let book = suckers();
    let picture = book.on(TODAY);
    let p1 = tray(&picture, "p1");
    assert!(p1.ready, "{:?}", p1.criteria.iter().filter(|criterion| criterion.blocks).collect::<Vec<_>>());
    assert!(!p1.criteria.iter().any(|criterion| criterion.rule() == Rule::ExposureStep));
    let offered = pair(&picture, "p1", "A3");
    assert!(offered.fits && offered.plants == 36, "{:?} {}", offered.held_by, offered.plants);
}

#[test]
fn a_tray_of_nurse_plants_goes_out_as_a_row_and_stands_in_both_books() {
    let mut book = suckers();
    book.write(TODAY, "outplanted", json!({"tray":"p1","bed":"A3","count":30,"row_m":3,"in_row_m":2}));
    let picture = book.on(TODAY);
    assert_eq!(tray(&picture, "p1").standing, 10);
    let bed = picture.beds.values().find(|bed| bed.name.as_str() == "A3").unwrap();
    let row = &bed.story.nurses[0];
    assert_eq!((row.planted, row.alive, row.row_m, row.in_row_m), (30, 30, 3.0, 2.0));
    assert!(bed.story.cohorts.is_empty() && bed.story.balance() == 0);
    assert_eq!(bed.species[0].living, 30, "they stand on their own grid");
    // Without the distances it is what it always was.
    let mut old = suckers();
    old.write(TODAY, "outplanted", json!({"tray":"p1","bed":"A3","count":30}));
    let bed = old.on(TODAY).beds.values().find(|bed| bed.name.as_str() == "A3").unwrap().clone();
    assert!(bed.story.nurses.is_empty() && bed.story.cohorts[0].planted == 30);
}

#[test]
fn pigeon_peas_wait_three_weeks_behind_the_last_of_their_seed() {
    for (sown, ready) in [("2026-03-20", false), ("2026-03-16", true)] {
        let mut book = small_nursery();
        let seed = json!({"tray":"pig-1","lot":"unknown","species":"pigeon pea","seeds":40,"container":"bag"});
        book.write(sown, "sown", seed);
        book.write("2026-04-10", "counted", json!({"tray":"pig-1","standing":30}));
        assert_eq!(tray(&book.on(TODAY), "pig-1").ready, ready, "sown {sown}");
    }
}

#[test]
fn no_more_are_grafted_than_stand_or_can_have_come_up() {
    let doubted = |count: u32| {
        let mut book = small_nursery();
        let seed = json!({"tray":"avo-1","lot":"unknown","species":"avocado","seeds":30,"container":"bag"});
        book.write("2026-03-01", "sown", seed);
        book.write("2026-04-10", "grafted", json!({"tray":"avo-1","count":count}));
        let doubts = book.on(TODAY).doubts;
        doubts.iter().any(|doubt| matches!(doubt.kind, DoubtKind::WorkedOnMore { worked, .. } if worked == count))
    };
    assert!(doubted(800) && !doubted(30));
}

#[test]
fn what_was_grafted_waits_until_it_has_healed() {
    let mut book = small_nursery();
    book.write("2025-01-01", "lot_received", json!({"lot":"avo-L1","species":"avocado","source":"market","collected":"2025-05-01","kept":"washed_moist","seeds":60}));
    book.write(
        "2025-06-01",
        "sown",
        json!({"tray":"avo-1","lot":"avo-L1","seeds":30,"container":"bag","cells":30,"place":"Half shade"}),
    );
    book.write("2026-01-10", "counted", json!({"tray":"avo-1","standing":30}));
    book.write("2026-02-20", "grafted", json!({"tray":"avo-1","count":30,"variety":"Late Green"}));
    let on = |day: &str| criterion(&tray(&book.on(day), "avo-1").criteria, Rule::Grafted).clone();
    // 60 days from 20 February: 21 April.
    let fresh = on("2026-04-20");
    assert_eq!((fresh.met(), fresh.blocks, fresh.expected), (Some(false), true, Some("2026-04-21".parse().unwrap())));
    assert_eq!(on("2026-04-21").met(), Some(true));
}

#[test]
fn what_was_potted_on_goes_after_four_weeks_or_once_a_plug_holds() {
    let mut book = coffee();
    let on = json!({"from":"cof-1","to":"cof-9","count":40,"how":"potted_on","container":"bag","place":"Half shade"});
    book.write("2026-04-12", "moved_on", on);
    let plug = |book: &Book, day: &str| criterion(&tray(&book.on(day), "cof-9").criteria, Rule::Plug).clone();
    let fresh = plug(&book, TODAY);
    // 28 days from 12 April: 10 May.
    assert_eq!((fresh.met(), fresh.blocks, fresh.expected), (None, true, Some("2026-05-10".parse().unwrap())));
    assert!(!plug(&book, "2026-05-10").blocks, "after that it need not be known");
    book.write("2026-04-14", "plug_checked", json!({"tray":"cof-9","roots":"holds"}));
    assert_eq!(plug(&book, TODAY).met(), Some(true));
}

#[test]
fn what_had_its_roots_cut_goes_after_four_weeks_or_once_a_plug_holds_after_three() {
    let mut book = coffee();
    book.write("2026-04-01", "plug_checked", json!({"tray":"cof-1","roots":"circling"}));
    book.write("2026-04-12", "roots_cut", json!({"tray":"cof-1"}));
    let plug = |book: &Book, day: &str| criterion(&tray(&book.on(day), "cof-1").criteria, Rule::Plug).clone();
    let fresh = plug(&book, TODAY);
    // 28 days from 12 April: 10 May.
    assert_eq!((fresh.met(), fresh.blocks, fresh.expected), (None, true, Some("2026-05-10".parse().unwrap())));
    assert!(!plug(&book, "2026-05-10").blocks, "after that it need not be known");
    book.write("2026-05-03", "plug_checked", json!({"tray":"cof-1","roots":"holds"}));
    assert_eq!(plug(&book, "2026-05-03").met(), Some(true));
    // Of a part of the plants too: what a plug said before the cut says nothing of them.
    book.write("2026-05-04", "roots_cut", json!({"tray":"cof-1","count":5}));
    assert!(plug(&book, "2026-05-05").blocks);
}

#[test]
fn eight_single_leaves_of_cacao_are_eight_and_four_pairs_of_coffee_too() {
    let leaves_of = |species: &str, plant: serde_json::Value| {
        let mut book = small_nursery();
        let came = json!({"tray":"t-1","species":species,"count":40,"from":"bought","form":"bag","age_days":400});
        book.write("2026-01-01", "plants_received", came);
        book.write("2026-04-10", "measured", json!({"tray":"t-1","plants":vec![plant; 20]}));
        let asked = criterion(&tray(&book.on("2026-04-15"), "t-1").criteria, Rule::Leaves).clone();
        (asked.met(), outplant::wording::Wording::new(outplant::wording::Lang::En).reason(&asked, About::Tray))
    };
    // Cacao goes out with 8 leaves, coffee with 5 pairs.
    assert_eq!(leaves_of("cacao", json!({"height_cm":40,"leaves":8})).0, Some(true));
    assert_eq!(leaves_of("cacao", json!({"height_cm":40,"leaves":7})).0, Some(false));
    assert_eq!(leaves_of("coffee", json!({"height_cm":28,"leaves":10})).0, Some(true));
    assert_eq!(leaves_of("coffee", json!({"height_cm":28,"leaves":9})).0, Some(false));
    // What was written before means what it meant: single leaves where the species' rule counts them.
    assert_eq!(leaves_of("cacao", json!({"height_cm":40,"leaf_pairs":8})).0, Some(true));
    assert_eq!(leaves_of("coffee", json!({"height_cm":28,"leaf_pairs":5})).0, Some(true));
}

#[test]
fn what_is_potted_on_stands_where_it_stood_unless_another_bench_is_named() {
    let home = crate::support::program::Home::default().begun();
    for (bench, order) in [("low", "order=1"), ("high", "order=2")] {
        home.write("place_set", &[&format!("place={bench}"), order, "shade_pct=50"]);
    }
    home.write("container_set", &["container=bag", "volume_ml=1000", "depth_cm=23"]);
    let came = ["tray=cof-1", "species=coffee", "count=40", "from=bought", "form=bag", "container=bag", "place=low"];
    home.write("plants_received", &came);
    let moved = ["from=cof-1", "count=10", "how=potted_on", "container=bag"];
    home.write("moved_on", &[&moved[..], &["to=cof-2"]].concat());
    home.write("moved_on", &[&moved[..], &["to=cof-3", "place=high"]].concat());
    let place = |code: &str| home.json(&["why", "tray", code])["tray"]["place"].clone();
    assert_eq!((place("cof-2"), place("cof-3")), (json!("low"), json!("high")));
}

#[test]
fn more_plants_measured_than_stand_are_a_doubt() {
    let mut book = small_nursery();
    let came = json!({"tray":"cof-9","species":"coffee","count":15,"from":"bought","form":"bag","age_days":300});
    book.write("2026-01-01", "plants_received", came);
    book.write("2026-04-10", "measured", json!({"tray":"cof-9","plants":vec![json!({"height_cm":25}); 30]}));
    let doubts = book.on(TODAY).doubts;
    assert!(doubts.iter().any(|doubt| matches!(doubt.kind, DoubtKind::SampleLarger { sample: 30, .. })), "{doubts:?}");
}

fn round_of(book: &Book, on: &str, code: &str) -> Vec<outplant::reckon::round::Task> {
    let round = outplant::reckon::round::round(&book.on(on));
    let all = round.stops.into_iter().chain(round.can_wait);
    let of_it = outplant::nursery::entry::subject::Subject::Tray(code.parse().unwrap());
    all.filter(|stop| stop.subject == of_it).map(|stop| stop.task).collect()
}

#[test]
fn a_sample_of_growing_plants_no_longer_decides_after_eight_weeks_and_is_asked_for_again() {
    use outplant::reckon::picture::{Basis, Gap};
    use outplant::reckon::round::Task;
    // Measured on 17 February: 56 days are up on 14 April.
    let mut book = coffee();
    let sampled =
        |entry: &std::sync::Arc<outplant::nursery::entry::Entry>| format!("{:?}", entry.what).contains("Measured");
    book.entries.retain(|entry| !sampled(entry));
    let plants = vec![json!({"height_cm":27,"collar_mm":4.5,"leaf_pairs":7}); 20];
    book.write("2026-02-17", "measured", json!({"tray":"cof-1","plants":plants}));
    let asked = |on: &str, rule: Rule| criterion(&tray(&book.on(on), "cof-1").criteria, rule).clone();
    assert_eq!(asked("2026-04-14", Rule::Height).met(), Some(true));
    let old = asked("2026-04-15", Rule::Height);
    assert_eq!((old.met(), old.blocks), (None, true));
    assert!(matches!(old.gap(), Some(Gap::SampleOld { on }) if on.to_string() == "2026-02-17"), "{old:?}");
    let said = Wording::new(Lang::En).reason(&old, About::Tray);
    assert!(said.contains("measured on 17 Feb 2026, more than 56 days ago"), "{said}");
    let basis = |on: &str| tray(&book.on(on), "cof-1").plantable_basis;
    assert_eq!((basis("2026-04-14"), basis("2026-04-15")), (Basis::Measured, Basis::Reckoned));
    assert!(round_of(&book, "2026-04-15", "cof-1").contains(&Task::Measure));
}

#[test]
fn a_ball_that_falls_apart_is_not_potted_on_and_one_is_lifted_again() {
    use outplant::reckon::round::Task;
    // 420 days from 1 June 2025 are up on 26 July 2026.
    let with = |roots: &str| {
        let mut book = coffee();
        book.write("2026-07-28", "plug_checked", json!({"tray":"cof-1","roots":roots}));
        book
    };
    assert!(round_of(&with("circling"), "2026-08-01", "cof-1").contains(&Task::PotOn));
    let loose = with("crumbles");
    assert!(!round_of(&loose, "2026-08-01", "cof-1").contains(&Task::PotOn));
    assert!(round_of(&loose, "2026-08-18", "cof-1").contains(&Task::CheckPlug), "three weeks later");
}

#[test]
fn no_plug_is_pulled_of_plants_grafted_a_short_while_ago() {
    use outplant::reckon::round::Task;
    let grafted = |on: Option<&str>| {
        let mut book = small_nursery();
        let came = json!({"tray":"avo-1","species":"avocado","count":40,"from":"opening","form":"bag","age_days":200,"place":"Half shade"});
        book.write("2026-04-01", "plants_received", came);
        let plants = vec![json!({"height_cm":45,"collar_mm":8}); 20];
        book.write("2026-04-10", "measured", json!({"tray":"avo-1","plants":plants}));
        if let Some(on) = on {
            book.write(on, "grafted", json!({"tray":"avo-1","count":40}));
        }
        round_of(&book, TODAY, "avo-1").contains(&Task::CheckPlug)
    };
    assert!(grafted(None));
    // Healed after 60 days: grafted on 14 February they are on 15 April.
    assert!(!grafted(Some("2026-04-02")));
}

#[test]
fn the_rest_of_cut_roots_goes_with_plants_into_another_tray() {
    let mut book = circling();
    book.write("2026-04-12", "roots_cut", json!({"tray":"cof-1"}));
    ready_coffee(&mut book, "cof-2");
    book.write("2026-04-13", "moved_on", json!({"from":"cof-1","to":"cof-2","count":20,"how":"merged"}));
    let plug = |on: &str| {
        let mut book = book.clone();
        book.write(on, "plug_checked", json!({"tray":"cof-2","roots":"holds"}));
        criterion(&tray(&book.on(on), "cof-2").criteria, Rule::Plug).met()
    };
    // No plug counts in the 21 days after the cut of 12 April.
    assert_eq!((plug("2026-05-02"), plug("2026-05-03")), (None, Some(true)));
}

#[test]
fn wildlings_are_bagged_and_stand_in_deep_shade_for_three_months_before_they_go() {
    let wild = |form: &str| {
        let mut book = small_nursery();
        let came = json!({"tray":"ced-1","species":"Spanish cedar","count":30,"from":"wildling","form":form,"height_cm":40,"shade_now_pct":90,"place":"Deep shade"});
        book.write("2026-04-14", "plants_received", came);
        book
    };
    // Spanish cedar from a nursery lives from bare roots; pulled in the forest it is bagged.
    let torn = of_tray(&wild("bare_root"), "ced-1", Rule::BareRoots);
    assert_eq!((torn.met(), torn.blocks), (Some(false), true));
    for (lang, words) in [(Lang::En, "three to four months"), (Lang::Es, "tres a cuatro meses")] {
        let said = Wording::new(lang).reason(&torn, About::Tray);
        assert!(said.contains(words), "{said}");
    }
    let rests = |book: &Book, code: &str, on: &str| criterion(&tray(&book.on(on), code).criteria, Rule::Plug).blocks;
    let bagged = wild("bag");
    assert!(rests(&bagged, "ced-1", "2026-07-12") && !rests(&bagged, "ced-1", "2026-07-13"));
    // Bagged here on the 15th; a larger bag later does not begin the months anew.
    let mut book = wild("bare_root");
    let on = |from: &str, to: &str| json!({"from":from,"to":to,"count":30,"how":"potted_on","container":"bag"});
    book.write("2026-04-15", "moved_on", on("ced-1", "ced-2"));
    assert!(rests(&book, "ced-2", "2026-07-13") && !rests(&book, "ced-2", "2026-07-14"));
    book.write("2026-06-30", "moved_on", on("ced-2", "ced-3"));
    assert!(rests(&book, "ced-3", "2026-07-27") && !rests(&book, "ced-3", "2026-07-28"), "28 days of the second move");
    // They are not sent toward the light before.
    let steps = |on: &str| round_of(&bagged, on, "ced-1").iter().any(|task| task.to_string().contains("harden"));
    assert!(!steps("2026-07-12"));
    let mut held = wild("bag");
    held.write("2026-06-01", "plug_checked", json!({"tray":"ced-1","roots":"holds"}));
    assert!(!rests(&held, "ced-1", "2026-06-02"));
}

#[test]
fn plants_that_nobody_measured_are_not_split_into_good_and_bad_ones() {
    let mut book = small_nursery();
    crate::support::open_bed(&mut book, "Upper 1");
    wet_days(&mut book);
    let came = json!({"tray":"cof-9","species":"COA","count":30,"from":"bought","form":"bare_root","height_cm":30,"place":"Half shade"});
    book.write(TODAY, "plants_received", came);
    let said = |book: &Book, code: &str| {
        let picture = book.on(TODAY);
        let round = outplant::reckon::round::round(&picture);
        let all: Vec<_> = round.stops.into_iter().chain(round.can_wait).collect();
        let on = outplant::wording::round::RoundOn { day: picture.day, species: &picture.site.species };
        let stop = all.iter().find(|stop| stop.id == format!("go_out {code}")).unwrap_or_else(|| panic!("{all:?}"));
        Wording::new(Lang::En).round_reason(&stop.why, on)
    };
    let unmeasured = said(&book, "cof-9");
    assert!(unmeasured.contains("nobody measured them") && !unmeasured.contains("not good enough"), "{unmeasured}");
    let plants: Vec<_> =
        (0..20).map(|i| json!({"height_cm": if i < 10 { 25 } else { 15 }, "collar_mm": 4.5})).collect();
    book.write(TODAY, "measured", json!({"tray":"cof-9","plants":plants}));
    assert!(said(&book, "cof-9").contains("15 not good enough"), "{}", said(&book, "cof-9"));
}

#[test]
fn nurse_plants_raised_in_trays_need_no_plan_and_one_entry_begins_their_row() {
    let home = crate::support::program::Home::default().begun();
    home.write("bed_set", &["bed=Upper 1", "field=Upper", "length_m=20", "width_m=6", "plan=[]"]);
    let came = ["count=40", "from=opening", "form=bag", "container=bag 1 l", "place=North", "age_days=60"];
    home.write("plants_received", &[&["tray=pig-1", "species=pigeon pea"][..], &came].concat());
    let said = |words: &[&str]| home.done(words).split_whitespace().collect::<Vec<_>>().join(" ");
    let ready = said(&["ready", "--all"]);
    assert!(ready.contains("nurse plants need no plan") && !ready.contains("Gaps of the plans"), "{ready}");
    let told = home.run(&["write", "outplanted", "tray=pig-1", "bed=Upper 1", "count=30"]);
    assert!(told.code == 0 && !(told.out.clone() + &told.err).contains("cannot be right"), "{}", told.err);
    let out = told.out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(out.contains("as nurse plants, 2 × 1 m"), "{out}");
}

#[test]
fn after_three_times_the_days_of_its_bag_no_plug_and_no_sample_lets_a_tray_go() {
    for (age_days, goes) in [(500, true), (2_000, false)] {
        let mut book = small_nursery();
        let came = json!({"tray":"cof-7","species":"coffee","count":40,"from":"opening","form":"bag","age_days":age_days,
            "container":"bag","place":"Half shade","stands_since":"2026-01-01"});
        book.write("2026-04-01", "plants_received", came);
        book.write("2026-04-12", "plug_checked", json!({"tray":"cof-7","roots":"holds"}));
        let plants: Vec<_> = (0..30).map(|_| json!({"height_cm":30,"collar_mm":5,"leaf_pairs":7})).collect();
        book.write("2026-04-12", "measured", json!({"tray":"cof-7","plants":plants}));
        let days = of_tray(&book, "cof-7", Rule::DaysInContainer);
        assert_eq!(!days.blocks, goes, "{age_days}: {days:?}");
    }
}
