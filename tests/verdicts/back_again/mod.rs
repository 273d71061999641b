//! Worlds of light that goes and comes back: a night in the shade, a week, longer; plants moved on, pricked out, grafted or from elsewhere.

mod grafts;
mod newcomers;

use outplant::nursery::entry::subject::Subject;
use outplant::reckon::picture::{Criterion, Rule};
use outplant::reckon::round::{RoundReason, Stop, Task, round};
use outplant::wording::verdict::About;
use outplant::wording::{Lang, Wording};
use serde_json::{Value, json};

use crate::support::{
    Book, coffee_in_deep_shade, criterion, day, fitting, open_bed, pair, ready_coffee, small_nursery, tray, wet_days,
};

const TODAY: &str = "2026-04-15";

/// The small nursery, with a rack in full sun.
fn with_open_rack() -> Book {
    let mut book = small_nursery();
    book.write("2025-01-01", "place_set", json!({"place":"Open rack","order":3,"shade_pct":0}));
    book
}

fn of(book: &Book, on: &str, code: &str, rule: Rule) -> Criterion {
    criterion(&tray(&book.on(on), code).criteria, rule).clone()
}

fn stops(book: &Book, on: &str, code: &str) -> Vec<Stop> {
    let round = round(&book.on(on));
    let all = round.stops.into_iter().chain(round.can_wait);
    all.filter(|stop| stop.subject == Subject::Tray(code.parse().unwrap())).collect()
}

fn tasks(book: &Book, on: &str, code: &str) -> Vec<Task> {
    stops(book, on, code).iter().map(|stop| stop.task).collect()
}

fn said(criterion: &Criterion) -> String {
    Wording::new(Lang::En).reason(criterion, About::Tray)
}

/// The ready coffee of half shade, carried into deep shade on one day and back on another.
fn shaded(from: &str, until: Option<&str>) -> Book {
    let mut book = fitting();
    book.write(from, "carried", json!({"tray":"cof-1","place":"Deep shade"}));
    if let Some(until) = until {
        book.write(until, "carried", json!({"tray":"cof-1","place":"Half shade"}));
    }
    book
}

#[test]
fn a_night_or_a_week_in_the_shade_is_no_new_step_and_costs_no_more_than_its_days() {
    assert!(pair(&fitting().on(TODAY), "cof-1", "Upper 1").fits);
    for from in ["2026-04-14", "2026-04-12", "2026-04-08"] {
        let book = shaded(from, Some(TODAY));
        let found = pair(&book.on(TODAY), "cof-1", "Upper 1").clone();
        assert!(found.fits, "{from} {:?}", found.held_by);
        assert!(tray(&book.on(TODAY), "cof-1").ready, "{from}");
        assert!(!tasks(&book, TODAY, "cof-1").contains(&Task::IntoShade));
    }
    // A day less for each day in the shade: 54 days of light since 20 February, 3 of them in the shade.
    let days = of(&shaded("2026-04-12", Some(TODAY)), TODAY, "cof-1", Rule::Hardening);
    let long = of(&fitting(), TODAY, "cof-1", Rule::Hardening);
    assert_eq!((said(&long).contains("54 days"), said(&days).contains("51 days")), (true, true), "{}", said(&days));
}

#[test]
fn what_stands_in_the_shade_for_a_few_days_has_not_lost_its_hardening_and_takes_no_step_there() {
    let book = shaded("2026-04-13", None);
    assert_eq!(of(&book, TODAY, "cof-1", Rule::Hardening).met(), Some(true));
    assert!(tasks(&book, TODAY, "cof-1").iter().all(|task| ![Task::BeginHardening, Task::Shade].contains(task)));
    // Left there for longer it has, until it comes back.
    assert_eq!(of(&shaded("2026-04-07", None), TODAY, "cof-1", Rule::Hardening).met(), Some(false));
}

#[test]
fn days_in_more_light_take_nothing_off_a_tray_that_is_back_where_it_stood() {
    let brighter = |from: &str, until: &str, shade: u32| {
        let mut book = fitting();
        book.write("2025-01-01", "place_set", json!({"place":"Bright","order":3,"shade_pct":shade}));
        book.write(from, "carried", json!({"tray":"cof-1","place":"Bright"}));
        book.write(until, "carried", json!({"tray":"cof-1","place":"Half shade"}));
        book
    };
    for (from, until) in [("2026-03-20", "2026-03-22"), ("2026-04-02", "2026-04-04"), ("2026-03-20", "2026-04-10")] {
        let book = brighter(from, until, 35);
        let hardening = of(&book, TODAY, "cof-1", Rule::Hardening);
        assert_eq!(hardening.met(), Some(true), "{from} {}", said(&hardening));
        // Back for a few days it is judged by the light it came back from.
        assert_eq!(said(&hardening).contains("light enough"), until < "2026-04-08", "{}", said(&hardening));
        assert!(pair(&book.on(TODAY), "cof-1", "Upper 1").fits, "{from}");
    }
    // Full sun for a day is looked at for scorch for ten days, and hardens nothing anew.
    let torn = brighter("2026-04-01", "2026-04-02", 0);
    assert_eq!(of(&torn, TODAY, "cof-1", Rule::Hardening).met(), Some(true));
    assert!(of(&torn, "2026-04-05", "cof-1", Rule::ExposureStep).blocks);
    assert!(!of(&torn, TODAY, "cof-1", Rule::ExposureStep).blocks);
}

#[test]
fn back_from_one_to_two_weeks_in_the_shade_a_tray_may_go_and_is_looked_at_for_scorch() {
    for (from, cares) in [("2026-04-08", false), ("2026-04-07", true), ("2026-04-01", true)] {
        let book = shaded(from, Some(TODAY));
        assert!(pair(&book.on(TODAY), "cof-1", "Upper 1").fits, "{from}");
        assert!(!tasks(&book, TODAY, "cof-1").contains(&Task::IntoShade));
        let step = of(&book, TODAY, "cof-1", Rule::ExposureStep);
        assert_eq!(
            (step.blocks, said(&step).contains("look for scorched leaves on 18 Apr 2026")),
            (false, cares),
            "{from}"
        );
        assert_eq!(step.warns, cares, "{from}");
    }
    // Ten days later it has shown.
    let step = of(&shaded("2026-04-01", Some("2026-04-11")), "2026-04-21", "cof-1", Rule::ExposureStep);
    assert!(!step.warns, "{}", said(&step));
}

#[test]
fn after_a_longer_shade_plants_harden_anew_for_as_many_days_as_they_stood_in_it() {
    for (from, met_on) in [("2026-03-31", "2026-04-30"), ("2026-03-20", "2026-05-06"), ("2026-03-01", "2026-05-06")] {
        let book = shaded(from, Some(TODAY));
        let expected = of(&book, TODAY, "cof-1", Rule::Hardening).expected;
        assert_eq!(expected, Some(day(met_on)), "{from}");
    }
}

#[test]
fn a_day_in_the_shade_scorches_no_tray_that_grew_in_the_sun_and_three_weeks_may() {
    let grown_in_sun = |back: &str| {
        let mut book = with_open_rack();
        book.write(
            "2025-12-01",
            "sown",
            json!({"tray":"cod-1","lot":"unknown","species":"Cordia alliodora","seeds":60,"container":"bag","cells":60,"place":"Open rack"}),
        );
        book.write("2026-01-20", "counted", json!({"tray":"cod-1","standing":50}));
        book.write("2026-04-01", "carried", json!({"tray":"cod-1","place":"Deep shade"}));
        book.write(back, "carried", json!({"tray":"cod-1","place":"Open rack"}));
        book
    };
    for back in ["2026-04-02", "2026-04-08"] {
        let book = grown_in_sun(back);
        assert!(!tasks(&book, back, "cod-1").contains(&Task::IntoShade), "{back}");
        assert_eq!(of(&book, back, "cod-1", Rule::Hardening).met(), Some(true), "{back}");
        assert!(!of(&book, back, "cod-1", Rule::ExposureStep).blocks, "{back}");
    }
    let long = grown_in_sun("2026-04-22");
    assert!(tasks(&long, "2026-04-22", "cod-1").contains(&Task::IntoShade));
    assert_eq!(of(&long, "2026-04-22", "cod-1", Rule::Hardening).met(), Some(false));
}

#[test]
fn shade_put_over_a_whole_bench_for_two_days_is_no_new_step_either() {
    let mut book = fitting();
    book.write("2026-04-13", "shade_set", json!({"place":"Half shade","shade_pct":70}));
    book.write("2026-04-15", "shade_set", json!({"place":"Half shade","shade_pct":45}));
    assert!(pair(&book.on(TODAY), "cof-1", "Upper 1").fits);
}

#[test]
fn too_large_a_step_is_not_forgotten_for_a_day_in_the_shade() {
    let mut book = with_open_rack();
    coffee_in_deep_shade(&mut book, "cof-1", "2025-06-01", "2025-09-10");
    book.write("2026-04-10", "carried", json!({"tray":"cof-1","place":"Open rack"}));
    book.write("2026-04-12", "carried", json!({"tray":"cof-1","place":"Deep shade"}));
    book.write("2026-04-14", "carried", json!({"tray":"cof-1","place":"Open rack"}));
    assert!(tasks(&book, TODAY, "cof-1").contains(&Task::IntoShade));
    assert_eq!(of(&book, TODAY, "cof-1", Rule::Hardening).met(), Some(false));
}

/// Avocado of the opening in deep shade.
fn avocado() -> Book {
    let mut book = small_nursery();
    book.write("2025-01-01", "place_set", json!({"place":"Net","order":3,"shade_pct":30}));
    book.write(
        "2025-12-01",
        "plants_received",
        json!({"tray":"avo-1","species":"avocado","count":20,"from":"opening","form":"bag","age_days":120,
            "container":"bag","place":"Deep shade"}),
    );
    book
}

#[test]
fn a_fresh_graft_gets_no_step_of_light_and_no_rarer_water_until_it_has_knit() {
    const STEPS: [Task; 3] = [Task::BeginHardening, Task::Shade, Task::Water];
    let has_step = |book: &Book, on: &str| tasks(book, on, "avo-1").iter().any(|task| STEPS.contains(task));
    let mut book = avocado();
    assert!(has_step(&book, "2026-03-10"), "a step would be due: {:?}", tasks(&book, "2026-03-10", "avo-1"));
    book.write("2026-02-01", "grafted", json!({"tray":"avo-1","count":20,"variety":"Hass"}));
    for on in ["2026-02-01", "2026-03-10", "2026-03-14"] {
        assert!(!has_step(&book, on), "{on}: {:?}", tasks(&book, on, "avo-1"));
        assert!(!said(&of(&book, on, "avo-1", Rule::Hardening)).contains("water more rarely"), "{on}");
    }
    // Six weeks after the knife.
    assert!(has_step(&book, "2026-03-15"), "{:?}", tasks(&book, "2026-03-15", "avo-1"));
}

fn moved(how: &str, place: &str) -> Book {
    let mut book = with_open_rack();
    coffee_in_deep_shade(&mut book, "cof-1", "2025-06-01", "2025-09-10");
    book.write(
        "2026-04-01",
        "moved_on",
        json!({"from":"cof-1","to":"cof-2","count":40,"how":how,"container":"bag","place":place}),
    );
    book
}

#[test]
fn moving_on_with_a_place_is_a_carrying_and_too_much_light_is_taken_back_today() {
    for how in ["potted_on", "pricked_out"] {
        let book = moved(how, "Open rack");
        for on in ["2026-04-01", "2026-04-10"] {
            let all = stops(&book, on, "cof-2");
            let shade = all.iter().find(|stop| stop.task == Task::IntoShade);
            let RoundReason::IntoShade { leapt, until, .. } = &shade.unwrap().why else { panic!("{all:?}") };
            assert_eq!((leapt.is_some(), until.is_some()), (how == "potted_on", how == "pricked_out"), "{how} {on}");
        }
        assert!(of(&book, "2026-04-01", "cof-2", Rule::ExposureStep).blocks);
        // Into half shade is no leap.
        assert!(!tasks(&moved(how, "Half shade"), "2026-04-01", "cof-2").contains(&Task::IntoShade));
    }
}

#[test]
fn seedlings_that_were_pricked_out_stand_in_the_shade_for_three_weeks() {
    // In the same full sun as their seedbed.
    let mut book = with_open_rack();
    book.write(
        "2026-02-01",
        "sown",
        json!({"tray":"cod-1","lot":"unknown","species":"Cordia alliodora","seeds":200,"container":"bag","place":"Open rack"}),
    );
    book.write("2026-03-20", "counted", json!({"tray":"cod-1","standing":100}));
    let prick = |place: &str| {
        let mut book = book.clone();
        book.write(
            "2026-03-21",
            "moved_on",
            json!({"from":"cod-1","to":"cod-2","count":80,"how":"pricked_out","container":"bag","place":place}),
        );
        book
    };
    let (sun, shade) = (prick("Open rack"), prick("Half shade"));
    assert!(tasks(&sun, "2026-04-10", "cod-2").contains(&Task::IntoShade));
    assert!(!tasks(&sun, "2026-04-11", "cod-2").contains(&Task::IntoShade), "three weeks are over");
    assert!(!tasks(&shade, "2026-04-10", "cod-2").contains(&Task::IntoShade));
}

#[test]
fn plants_that_came_with_their_age_are_pricked_out_into_the_shade_like_others() {
    let mut book = with_open_rack();
    let came = json!({"tray":"cod-1","species":"Cordia alliodora","count":80,"from":"opening","form":"bag","age_days":35,
        "container":"bag","place":"Open rack"});
    book.write("2026-03-01", "plants_received", came);
    let moved =
        json!({"from":"cod-1","to":"cod-2","count":60,"how":"pricked_out","container":"bag","place":"Open rack"});
    book.write("2026-04-01", "moved_on", moved);
    assert!(tasks(&book, "2026-04-02", "cod-2").contains(&Task::IntoShade));
    let hardening = said(&of(&book, "2026-04-02", "cod-2", Rule::Hardening));
    assert!(
        !hardening.contains("leave it there") && hardening.contains("in the shade until 22 Apr 2026"),
        "{hardening}"
    );
}

#[test]
fn fresh_grafts_in_the_sun_are_carried_into_the_shade() {
    let mut book = avocado();
    book.write("2025-01-01", "place_set", json!({"place":"Open rack","order":4,"shade_pct":0}));
    for (on, place) in [("2026-01-05", "Half shade"), ("2026-02-01", "Net"), ("2026-02-20", "Open rack")] {
        book.write(on, "carried", json!({"tray":"avo-1","place":place}));
    }
    book.write("2026-03-20", "counted", json!({"tray":"avo-1","standing":20}));
    assert!(!tasks(&book, "2026-04-01", "avo-1").contains(&Task::IntoShade));
    book.write("2026-04-01", "grafted", json!({"tray":"avo-1","count":20,"variety":"Hass"}));
    let all = stops(&book, "2026-04-01", "avo-1");
    let shade = all.iter().find(|stop| stop.task == Task::IntoShade).unwrap_or_else(|| panic!("{all:?}"));
    assert!(matches!(shade.why, RoundReason::IntoShade { grafted: true, .. }), "{:?}", shade.why);
    book.write("2026-04-01", "carried", json!({"tray":"avo-1","place":"Half shade"}));
    assert!(!tasks(&book, "2026-04-02", "avo-1").contains(&Task::IntoShade));
}

#[test]
fn potting_on_where_they_stood_begins_no_new_time_in_their_light() {
    let mut book = fitting();
    let moved =
        json!({"from":"cof-1","to":"cof-2","count":40,"how":"potted_on","container":"bag","place":"Half shade"});
    book.write("2026-04-14", "moved_on", moved);
    let hardening = of(&book, TODAY, "cof-2", Rule::Hardening);
    assert!(said(&hardening).contains("54 days"), "{}", said(&hardening));
}

/// The ready coffee of half shade, to which so many came from deep shade two days ago.
fn joined(count: u32) -> Book {
    let mut book = fitting();
    coffee_in_deep_shade(&mut book, "cof-9", "2025-06-01", "2025-09-10");
    let put = json!({"from":"cof-9","to":"cof-1","count":count,"how":"merged"});
    book.write("2026-04-13", "moved_on", put);
    let plants: Vec<Value> = (0..20).map(|_| json!({"height_cm":25,"collar_mm":4.5,"leaf_pairs":7})).collect();
    book.write("2026-04-13", "measured", json!({"tray":"cof-1","plants":plants}));
    book.write("2026-04-13", "plug_checked", json!({"tray":"cof-1","roots":"holds"}));
    book
}

#[test]
fn plants_put_to_hardened_ones_are_not_hardened_by_it_unless_they_are_few() {
    let book = joined(20);
    let hardening = of(&book, TODAY, "cof-1", Rule::Hardening);
    assert!(hardening.blocks, "{}", said(&hardening));
    assert!(said(&hardening).contains("20 plants that were put to them on 13 Apr 2026"), "{}", said(&hardening));
    assert!(!pair(&book.on(TODAY), "cof-1", "Upper 1").fits);
    // 21 days after they came, 31 days where the step was too large; this one, 30 to 55 %, was not.
    assert_eq!(hardening.expected.map(|on| on <= day("2026-05-14")), Some(true), "{hardening:?}");
    // Five of 53 are left behind while loading.
    let few = joined(5);
    assert!(!of(&few, TODAY, "cof-1", Rule::Hardening).blocks);
    // So are not five and then five more.
    let mut again = joined(5);
    again.write("2026-04-14", "moved_on", json!({"from":"cof-9","to":"cof-1","count":5,"how":"merged"}));
    assert!(of(&again, TODAY, "cof-1", Rule::Hardening).blocks);
    // Of the same light there is nothing to harden for.
    let mut same = fitting();
    ready_coffee(&mut same, "cof-2");
    same.write("2026-04-13", "moved_on", json!({"from":"cof-2","to":"cof-1","count":20,"how":"merged"}));
    assert!(!of(&same, TODAY, "cof-1", Rule::Hardening).blocks);
}

#[test]
fn plants_put_from_deep_shade_to_others_in_the_sun_are_carried_back_today() {
    let mut book = with_open_rack();
    let came = json!({"tray":"cor-1","species":"Cordia alliodora","count":60,"from":"opening","form":"bag","age_days":100,
        "container":"bag","place":"Open rack"});
    book.write("2026-01-01", "plants_received", came);
    let shade = json!({"tray":"cor-2","species":"Cordia alliodora","count":30,"from":"opening","form":"bag","age_days":100,
        "container":"bag","place":"Deep shade"});
    book.write("2026-01-01", "plants_received", shade);
    assert!(!tasks(&book, TODAY, "cor-1").contains(&Task::IntoShade));
    book.write("2026-04-14", "moved_on", json!({"from":"cor-2","to":"cor-1","count":20,"how":"merged"}));
    assert!(tasks(&book, TODAY, "cor-1").contains(&Task::IntoShade));
    assert!(of(&book, TODAY, "cor-1", Rule::ExposureStep).blocks);
    // What was said of the tray before is not said of them.
    let mut said_before = book.clone();
    said_before.write("2026-03-01", "hardening_begun", json!({"tray":"cor-1"}));
    assert!(of(&said_before, TODAY, "cor-1", Rule::Hardening).blocks);
}

fn opened(place: Value, from: &str, came: &str) -> Book {
    let mut book = small_nursery();
    open_bed(&mut book, "Upper 1");
    book.write("2026-04-14", "light_read", json!({"bed":"Upper 1","light_share":0.9}));
    wet_days(&mut book);
    book.write(
        came,
        "plants_received",
        json!({"tray":"cof-3","species":"coffee","count":40,"form":"bag","container":"bag","place":place,
            "from":from,"age_days":200}),
    );
    book
}

#[test]
fn plants_from_elsewhere_are_hardened_to_the_light_they_stood_in_and_to_no_brighter_bed() {
    for from in ["opening", "bought"] {
        let book = opened(json!("Half shade"), from, "2026-01-10");
        let picture = book.on(TODAY);
        let toward = |light: f64| {
            let mut book = book.clone();
            book.write(TODAY, "light_read", json!({"bed":"Upper 1","light_share":light}));
            book
        };
        let hardening = criterion(&pair(&picture, "cof-3", "Upper 1").criteria, Rule::Hardening).clone();
        assert_eq!((hardening.met(), hardening.blocks), (Some(false), true), "{from} {}", said(&hardening));
        assert!(said(&hardening).contains("has not begun"), "{}", said(&hardening));
        // Of its own bench it is hardened, and to a bed a small step brighter.
        assert_eq!(of(&book, TODAY, "cof-3", Rule::Hardening).met(), Some(true), "{from}");
        let near = toward(0.40);
        let near = criterion(&pair(&near.on(TODAY), "cof-3", "Upper 1").criteria, Rule::Hardening).clone();
        assert_eq!(near.met(), Some(true), "{from} {}", said(&near));
    }
}

#[test]
fn plants_of_the_opening_that_were_carried_into_the_shade_are_not_said_to_be_known_only_since_then() {
    let mut book = opened(json!("Half shade"), "opening", "2026-01-10");
    book.write("2026-03-26", "carried", json!({"tray":"cof-3","place":"Deep shade"}));
    let hardening = of(&book, TODAY, "cof-3", Rule::Hardening);
    assert!(hardening.gap().is_none() && !said(&hardening).contains("known only since"), "{}", said(&hardening));
    // What came a few days ago is left there, and the round says nothing else.
    let fresh = opened(json!("Deep shade"), "bought", "2026-04-12");
    assert!(said(&of(&fresh, TODAY, "cof-3", Rule::Hardening)).contains("known only since"));
    assert!(!tasks(&fresh, TODAY, "cof-3").contains(&Task::BeginHardening));
}
