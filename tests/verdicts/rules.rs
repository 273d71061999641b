//! Rules of trays and beds, each in a world where it alone decides.

use outplant::reckon::picture::{Basis, Criterion, Measure, Rule, Stage};
use outplant::reckon::round::{RoundReason, Stop, Task, round};
use outplant::wording::verdict::About;
use outplant::wording::{Lang, Wording};
use serde_json::{Value, json};

use crate::support::program::Home;
use crate::support::{
    Book, bed_species, coffee_in_deep_shade, criterion, day, fitting, open_bed, pair, ready_coffee, small_nursery,
    tray, wet_days,
};

const TODAY: &str = "2026-04-15";

fn of_tray(book: &Book, code: &str, rule: Rule) -> Criterion {
    criterion(&tray(&book.on(TODAY), code).criteria, rule).clone()
}

/// A bed whose light was read once or several times, and what `light_now` says for a species there.
fn light_in(species: &str, shares: &[f64]) -> Criterion {
    let mut book = small_nursery();
    book.write(
        "2025-01-01",
        "bed_set",
        json!({"bed":"B","field":"Upper","length_m":20,"width_m":6,
            "plan":[{"species":species,"pattern":"square","row_m":3,"in_row_m":3}]}),
    );
    for share in shares {
        book.write("2026-04-14", "light_read", json!({"bed":"B","light_share":share}));
    }
    let picture = book.on(TODAY);
    let key = picture.beds.values().next().unwrap().species[0].species.clone();
    criterion(&bed_species(&picture, "B", key.as_str()).criteria, Rule::LightNow).clone()
}

#[test]
fn bare_roots_of_which_nobody_wrote_the_last_day_keep_two_days_and_heeled_in_a_week() {
    let arrived = |more: Value| {
        let mut book = small_nursery();
        let mut body =
            json!({"tray":"ced-1","species":"Cedrela odorata","count":30,"from":"bought","form":"bare_root"});
        body.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
        book.write("2026-04-10", "plants_received", body);
        move |on: &str| criterion(&tray(&book.on(on), "ced-1").criteria, Rule::GoodUntil).clone()
    };
    let open = arrived(json!({}));
    assert_eq!((open("2026-04-12").met(), open("2026-04-13").met()), (Some(true), Some(false)));
    assert_eq!(open("2026-04-12").basis(), Basis::Assumed);
    assert!(open("2026-04-13").blocks);
    let heeled = arrived(json!({"heeled_in":true}));
    assert_eq!((heeled("2026-04-17").met(), heeled("2026-04-18").met()), (Some(true), Some(false)));
    let written = arrived(json!({"good_until":"2026-04-20"}));
    assert_eq!((written("2026-04-12").met(), written("2026-04-12").basis()), (Some(true), Basis::Reckoned));
    assert_eq!(written("2026-04-21").met(), Some(false), "past it nothing asks for a look");
}

#[test]
fn a_count_of_part_of_the_cells_moves_what_can_go_out_and_asks_for_a_whole_count() {
    let mut book = small_nursery();
    book.write(
        "2025-06-01",
        "sown",
        json!({"tray":"cof-2","lot":"cof-L1","seeds":42,"container":"bag","cells":42,"place":"Half shade"}),
    );
    book.write("2026-01-10", "counted", json!({"tray":"cof-2","standing":42}));
    book.write("2026-04-14", "counted", json!({"tray":"cof-2","standing":0,"cells_seen":20}));
    let picture = book.on(TODAY);
    let found = tray(&picture, "cof-2");
    assert_eq!((found.standing, found.standing_range.likely), (42, 0.0));
    // Nothing in 20 of 42: at most about 3 / 20 a cell in the 22 others.
    assert_eq!((found.standing_range.low, found.standing_range.high), (0.0, 4.0));
    assert!(!found.ready && found.plantable.likely == 0.0);
    assert_eq!(picture.doubts.iter().filter(|doubt| format!("{:?}", doubt.kind).contains("PartCountApart")).count(), 1);
    let stops = outplant::reckon::round::round(&picture).stops;
    assert!(stops.iter().any(|stop| stop.id == "count cof-2"), "{:?}", stops.iter().map(|s| &s.id).collect::<Vec<_>>());
    // A whole count settles it.
    book.write("2026-04-15", "counted", json!({"tray":"cof-2","standing":40}));
    let settled = book.on(TODAY);
    assert_eq!(tray(&settled, "cof-2").standing_range.likely, 40.0);
    assert!(!settled.doubts.iter().any(|doubt| format!("{:?}", doubt.kind).contains("PartCountApart")));
}

#[test]
fn a_count_of_part_of_a_tray_whose_cells_nobody_wrote_counts_as_much() {
    let mut book = small_nursery();
    book.write(
        "2025-10-01",
        "plants_received",
        json!({"tray":"cof-2","species":"coffee","count":42,"from":"opening","form":"bag","container":"bag",
            "age_days":300,"place":"Half shade"}),
    );
    book.write("2026-04-14", "counted", json!({"tray":"cof-2","standing":0,"cells_seen":20}));
    let picture = book.on(TODAY);
    let range = tray(&picture, "cof-2").standing_range;
    assert_eq!((range.low, range.likely, range.high), (0.0, 0.0, 4.0));
    assert_eq!(picture.doubts.iter().filter(|doubt| format!("{:?}", doubt.kind).contains("PartCountApart")).count(), 1);
    let stops = outplant::reckon::round::round(&picture).stops;
    assert!(stops.iter().any(|stop| stop.id == "count cof-2"));
}

#[test]
fn a_count_of_part_of_the_cells_adds_no_plants_where_no_seed_is_due() {
    let mut book = small_nursery();
    book.write(
        "2025-06-01",
        "sown",
        json!({"tray":"cof-2","lot":"cof-L1","seeds":98,"container":"bag","cells":98,"place":"Half shade"}),
    );
    book.write("2026-04-12", "counted", json!({"tray":"cof-2","standing":91}));
    book.write("2026-04-14", "counted", json!({"tray":"cof-2","standing":20,"cells_seen":20}));
    let range = tray(&book.on(TODAY), "cof-2").standing_range;
    assert_eq!((range.likely, range.high), (91.0, 91.0), "{range:?}");
    // While seed is due no more can stand than in every cell.
    let mut young = small_nursery();
    young.write(
        "2026-03-01",
        "sown",
        json!({"tray":"cof-2","lot":"cof-L1","seeds":98,"container":"bag","cells":98,"place":"Half shade"}),
    );
    young.write("2026-04-14", "counted", json!({"tray":"cof-2","standing":20,"cells_seen":20}));
    let range = tray(&young.on(TODAY), "cof-2").standing_range;
    assert!(range.likely <= 98.0 && range.high <= 98.0, "{range:?}");
}

#[test]
fn rarer_water_alone_hardens_for_no_brighter_bed() {
    let mut book = small_nursery();
    coffee_in_deep_shade(&mut book, "cof-2", "2025-06-01", "2025-09-10");
    book.write("2026-02-01", "watering_set", json!({"tray":"cof-2","every_days":3}));
    let hardening = of_tray(&book, "cof-2", Rule::Hardening);
    assert_eq!((hardening.met(), hardening.blocks), (Some(false), true));
}

#[test]
fn a_tray_that_stood_for_months_in_the_light_of_its_bed_is_hardened_to_it() {
    let mut book = small_nursery();
    // 55 % light, inside coffee's band, for ten months: nobody took a step.
    book.write(
        "2025-06-01",
        "sown",
        json!({"tray":"cof-2","lot":"cof-L1","seeds":60,"container":"bag","place":"Half shade"}),
    );
    book.write("2025-09-10", "counted", json!({"tray":"cof-2","standing":50}));
    assert_eq!(of_tray(&book, "cof-2", Rule::Hardening).met(), Some(true));
    // Entered yesterday with its age: the same trays have stood there the same months.
    let opened = |more: Value| {
        let mut book = small_nursery();
        let mut body =
            json!({"tray":"cof-3","species":"coffee","count":40,"form":"bag","container":"bag","place":"Half shade"});
        body.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
        book.write("2026-04-14", "plants_received", body);
        of_tray(&book, "cof-3", Rule::Hardening).met()
    };
    assert_eq!(opened(json!({"from":"opening","age_days":300})), Some(true));
    assert_eq!(opened(json!({"from":"bought","age_days":300})), None, "where bought plants stood is not known");
    assert_eq!(opened(json!({"from":"bought","stands_since":"2026-03-01"})), Some(true));
}

#[test]
fn nurse_plants_go_out_soft() {
    let mut book = small_nursery();
    book.write("2026-03-01", "sown", json!({"tray":"pig-1","lot":"unknown","species":"pigeon pea","seeds":40,"container":"bag","place":"Deep shade"}));
    book.write("2026-04-01", "counted", json!({"tray":"pig-1","standing":30}));
    assert_eq!(of_tray(&book, "pig-1", Rule::Hardening).met(), Some(true));
}

#[test]
fn a_small_step_of_light_is_a_warning_and_a_large_one_burns() {
    // The light of the tray, of the bed, whether it blocks, whether it warns.
    for (from, to, blocks, warns) in [
        (0.20, 0.35, false, true),
        (0.65, 1.00, true, false),
        (0.20, 0.45, true, false),
        (0.55, 0.60, false, false),
        (0.50, 0.70, false, true),
        (0.80, 1.00, false, false),
        (0.06, 0.20, false, true),
    ] {
        let mut book = small_nursery();
        book.write("2025-01-01", "place_set", json!({"place":"Bench","order":3,"shade_pct":100.0 * (1.0 - from)}));
        book.write(
            "2025-06-01",
            "sown",
            json!({"tray":"cof-2","lot":"cof-L1","seeds":60,"container":"bag","place":"Bench"}),
        );
        book.write("2025-09-10", "counted", json!({"tray":"cof-2","standing":50}));
        open_bed(&mut book, "Upper 1");
        let mut readings =
            Book { entries: book.entries.iter().filter(|entry| entry.what.kind() != "light_read").cloned().collect() };
        readings.write("2026-04-14", "light_read", json!({"bed":"Upper 1","light_share":to}));
        let step = criterion(&pair(&readings.on(TODAY), "cof-2", "Upper 1").criteria, Rule::ExposureStep).clone();
        assert_eq!((step.blocks, step.warns), (blocks, warns), "{from} to {to}: {step:?}");
    }
}

#[test]
fn light_near_the_edge_of_a_band_asks_for_care_and_is_not_refused() {
    // Coffee stands 50 to 70 % of full light. One reading is worth 10 points either way.
    let fits = |species: &str, shares: &[f64]| {
        let light = light_in(species, shares);
        (light.met(), light.warns)
    };
    assert_eq!(fits("coffee", &[0.60]), (Some(true), false));
    assert_eq!(fits("coffee", &[0.43]), (Some(true), true));
    assert_eq!(fits("coffee", &[0.39]), (Some(false), false));
    // Five readings are worth less than half of that.
    assert_eq!(fits("coffee", &[0.43; 5]), (Some(false), false));
    // Trees of full sun stand 70 % and more.
    for species in ["grevillea", "teak", "moringa"] {
        assert_eq!(fits(species, &[0.75]), (Some(true), false), "{species}");
        assert_eq!(fits(species, &[0.55]), (Some(false), false), "{species}");
    }
    // Full light for cedar: its band is from memory, so care is asked for. Cocoa burns.
    assert_eq!(fits("Spanish cedar", &[1.0]), (Some(true), true));
    assert_eq!(fits("cocoa", &[1.0]), (Some(false), false));
}

#[test]
fn the_days_a_container_holds_begin_at_pricking_out_and_the_seedbed_is_not_added() {
    let mut book = small_nursery();
    book.write(
        "2025-02-01",
        "sown",
        json!({"tray":"bed-1","lot":"cof-L1","seeds":200,"container":"seedbed","place":"Deep shade"}),
    );
    book.write("2025-04-01", "counted", json!({"tray":"bed-1","standing":150}));
    book.write(
        "2025-04-12",
        "moved_on",
        json!({"from":"bed-1","to":"cof-2","count":40,"how":"pricked_out","container":"bag","place":"Half shade"}),
    );
    let most = tray(&book.on(TODAY), "cof-2").best_before.unwrap();
    let sown_there = {
        let mut book = small_nursery();
        book.write(
            "2025-02-01",
            "sown",
            json!({"tray":"cof-2","lot":"cof-L1","seeds":60,"container":"bag","place":"Half shade"}),
        );
        book.write("2025-04-01", "counted", json!({"tray":"cof-2","standing":40}));
        tray(&book.on(TODAY), "cof-2").best_before.unwrap()
    };
    assert_eq!(most, sown_there, "the same plants are too old on the same day");
}

#[test]
fn circling_roots_stay_in_a_larger_bag_until_they_are_cut() {
    let mut book = fitting();
    book.write("2026-04-01", "plug_checked", json!({"tray":"cof-1","roots":"circling"}));
    book.write("2026-04-05", "container_set", json!({"container":"large bag","volume_ml":3000,"depth_cm":30}));
    book.write(
        "2026-04-06",
        "moved_on",
        json!({"from":"cof-1","to":"cof-9","count":30,"how":"potted_on","container":"large bag"}),
    );
    let roots = |book: &Book| of_tray(book, "cof-9", Rule::DaysInContainer);
    assert_eq!(roots(&book).known(), Some(Measure::Roots(outplant::nursery::entry::types::Roots::Circling)));
    assert!(roots(&book).blocks && !tray(&book.on(TODAY), "cof-9").ready);
    book.write("2026-04-14", "plug_checked", json!({"tray":"cof-9","roots":"holds"}));
    assert!(roots(&book).blocks, "a ball that circles holds as well");
    book.write("2026-04-15", "roots_cut", json!({"tray":"cof-9"}));
    assert_eq!(roots(&book).met(), Some(true));
}

#[test]
fn a_collar_floor_that_nobody_published_warns_and_a_thin_stem_for_its_height_is_held_back() {
    let avocado = |height_cm: f64, collar_mm: f64| {
        let mut book = small_nursery();
        book.write("2025-09-01", "sown", json!({"tray":"avo-1","lot":"unknown","species":"avocado","seeds":30,"container":"bag","place":"Half shade"}));
        book.write("2025-12-01", "counted", json!({"tray":"avo-1","standing":25}));
        let plants = vec![json!({"height_cm":height_cm,"collar_mm":collar_mm}); 20];
        book.write("2026-04-10", "measured", json!({"tray":"avo-1","plants":plants}));
        of_tray(&book, "avo-1", Rule::Collar)
    };
    let thin = avocado(45.0, 6.0);
    assert_eq!((thin.met(), thin.warns), (Some(true), true), "{thin:?}");
    assert_eq!(avocado(60.0, 6.0).met(), Some(false), "60 cm on 6 mm is lanky");
    assert_eq!((avocado(45.0, 9.0).met(), avocado(45.0, 9.0).warns), (Some(true), false));
    let _ = day(TODAY);
}

#[test]
fn a_bed_that_takes_plants_today_has_its_fence_on_the_walk_with_them() {
    let mut book = fitting();
    // So many counts are late that the walk is full without it.
    for number in 0..12 {
        coffee_in_deep_shade(&mut book, &format!("old-{number}"), "2025-10-01", "2026-01-10");
    }
    let nursery = json!({"name":"Test terrace","latitude_deg":-1.2,"longitude_deg":36.0,"altitude_m":1650,
        "utc_offset_h":3,"walk_minutes":8});
    book.write("2026-04-14", "nursery_set", nursery);
    let round = round(&book.on(TODAY));
    let of = |stops: &[Stop], task: Task| stops.iter().any(|stop| stop.task == task);
    assert!(of(&round.stops, Task::GoOut) && of(&round.stops, Task::Fence), "{:?}", round.stops);
    assert!(!round.can_wait.is_empty() && round.minutes <= round.minutes_allowed + 1e-9);
    let fence = round.stops.iter().find(|stop| stop.task == Task::Fence).unwrap();
    // The rains last 107 days to 15 June: half of that before their end, 23 April, is the last safe day.
    assert_eq!((fence.until, fence.at_stake.within_days), (Some(day("2026-04-23")), 9));
}

#[test]
fn what_is_open_in_a_bed_is_one_number_in_its_verdict_and_in_the_doubt() {
    let mut book = fitting();
    // 44 positions of a bed 20 x 6 m, 2 x 2 m; a stump in one.
    book.write("2026-04-14", "positions_blocked", json!({"bed":"Upper 1","at":["2.3"],"why":"stump"}));
    let open = |book: &Book| bed_species(&book.on(TODAY), "Upper 1", "COA").open_positions;
    assert_eq!(open(&book), 43);
    book.write(TODAY, "outplanted", json!({"tray":"cof-1","bed":"Upper 1","count":45}));
    let picture = book.on(TODAY);
    let said: Vec<String> =
        picture.doubts.iter().map(|doubt| Wording::new(Lang::En).doubt(doubt, &picture.site.species)).collect();
    assert!(said.iter().any(|said| said.contains("43 positions open")), "{said:?}");
    // One beside the stump is no doubt.
    let mut beside = fitting();
    beside.write("2026-04-14", "positions_blocked", json!({"bed":"Upper 1","at":["2.3"],"why":"stump"}));
    beside.write(TODAY, "outplanted", json!({"tray":"cof-1","bed":"Upper 1","count":44}));
    assert!(beside.on(TODAY).doubts.is_empty());
}

#[test]
fn a_plug_that_holds_answers_for_a_bag_of_which_nobody_knows_since_when() {
    let mut book = small_nursery();
    let came = json!({"tray":"cof-1","species":"COA","count":40,"from":"opening","form":"bag","container":"bag"});
    book.write("2026-03-01", "plants_received", came);
    let said = |book: &Book, on: &str| {
        let days = criterion(&tray(&book.on(on), "cof-1").criteria, Rule::DaysInContainer).clone();
        Wording::new(Lang::En).reason(&days, About::Tray)
    };
    assert!(said(&book, TODAY).contains("lift a plug"), "{}", said(&book, TODAY));
    book.write("2026-04-10", "plug_checked", json!({"tray":"cof-1","roots":"holds"}));
    assert!(said(&book, TODAY).contains("the plug lifted on 10 Apr 2026 holds"), "{}", said(&book, TODAY));
    assert!(said(&book, "2026-05-02").contains("lift a plug"), "after three weeks it tells no more");
}

#[test]
fn a_plug_that_nobody_lifted_asks_for_care_once_plants_could_go_and_says_what_decides() {
    let mut book = small_nursery();
    coffee_in_deep_shade(&mut book, "cof-1", "2025-06-01", "2025-09-10");
    let asks = |on: &str, rule: Rule| criterion(&tray(&book.on(on), "cof-1").criteria, rule).warns;
    // 210 days are the least of coffee: 28 December.
    assert!(!asks("2025-12-27", Rule::Plug) && !asks("2025-12-27", Rule::Collar), "too young to go");
    assert!(asks("2025-12-28", Rule::Plug) && asks("2025-12-28", Rule::Collar));
    let plug = criterion(&tray(&book.on("2025-12-28"), "cof-1").criteria, Rule::Plug).clone();
    assert!(!plug.blocks);
    for (lang, words) in [(Lang::En, "where the ball falls apart they stay"), (Lang::Es, "si se desmorona, se quedan")]
    {
        let said = Wording::new(lang).reason(&plug, About::Tray);
        assert!(said.contains(words), "{said}");
    }
}

#[test]
fn seedlings_that_should_be_pricked_out_by_now_wait_for_that_and_are_overdue() {
    let mut book = small_nursery();
    book.write("2025-01-01", "container_set", json!({"container":"seedbed","volume_ml":40,"depth_cm":8}));
    let sown = json!({"tray":"cof-1","lot":"cof-L1","seeds":200,"container":"seedbed","place":"Deep shade"});
    book.write("2025-06-01", "sown", sown);
    book.write("2025-08-15", "counted", json!({"tray":"cof-1","standing":150}));
    let due = |on: &str| {
        let picture = book.on(on);
        let round = round(&picture);
        let until = round.stops.iter().chain(&round.can_wait).find(|stop| stop.task == Task::PrickOut)?.until;
        Some((until?, tray(&picture, "cof-1").stage))
    };
    let (until, stage) = due("2025-08-25").unwrap();
    assert_ne!(stage, Stage::Overdue);
    let days = criterion(&tray(&book.on("2025-08-25"), "cof-1").criteria, Rule::DaysInContainer).clone();
    assert_eq!(
        (days.met(), days.needed()),
        (Some(true), Some(Measure::DaysAtMost(until.days_since(day("2025-06-01")))))
    );
    let after = until.plus(1).to_string();
    assert_eq!(due(&after).unwrap(), (until, Stage::Overdue), "the walk and the verdict have one last day");
}

#[test]
fn what_is_pricked_out_or_potted_on_is_counted_by_that() {
    let mut book = small_nursery();
    book.write("2025-01-01", "container_set", json!({"container":"seedbed","volume_ml":40,"depth_cm":8}));
    let sown = json!({"tray":"cof-1","lot":"cof-L1","seeds":200,"container":"seedbed","place":"Deep shade"});
    book.write("2025-06-01", "sown", sown);
    book.write("2025-08-15", "counted", json!({"tray":"cof-1","standing":150}));
    let round = round(&book.on("2025-10-15"));
    let tasks: Vec<Task> = round.stops.iter().chain(&round.can_wait).map(|stop| stop.task).collect();
    assert!(tasks.contains(&Task::PrickOut) && !tasks.contains(&Task::Count), "{tasks:?}");
}

#[test]
fn rings_that_hold_up_many_plants_are_weeded_for_those_and_not_for_the_few_that_stand() {
    let mut book = small_nursery();
    ready_coffee(&mut book, "cof-1");
    let plan = json!([{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]);
    book.write("2025-01-01", "bed_set", json!({"bed":"B","field":"Upper","length_m":20,"width_m":6,"plan":plan}));
    book.write("2026-04-01", "light_read", json!({"bed":"B","light_share":0.6}));
    book.write("2026-04-01", "soil_checked", json!({"bed":"B","resistance_mpa":1.2,"depth_cm":30,"wet":true}));
    for (on, task) in [("2026-04-05", "cleared"), ("2026-04-05", "holes"), ("2026-03-01", "weeded")] {
        book.write(on, "prepared", json!({"bed":"B","task":task}));
    }
    wet_days(&mut book);
    // Two stand there, and 46 wait for it.
    book.write("2026-03-02", "outplanted", json!({"tray":"cof-1","bed":"B","count":2}));
    let round = round(&book.on(TODAY));
    let weed: Vec<&Stop> = round.stops.iter().chain(&round.can_wait).filter(|stop| stop.task == Task::Weed).collect();
    assert_eq!(weed.len(), 1);
    assert!(matches!(weed[0].why, RoundReason::WorkMissing { .. }) && weed[0].at_stake.plants > 30.0, "{:?}", weed[0]);
}

#[test]
fn a_ready_tray_that_no_bed_takes_says_so_where_it_is_asked_why() {
    let home = crate::support::program::Home { today: "2026-11-25".into(), ..Default::default() };
    let book = home.file("nursery.outplant");
    home.done(&["sample", "--into", book.to_str().unwrap()]);
    let said = |words: &[&str]| home.done(words).split_whitespace().collect::<Vec<_>>().join(" ");
    let why = said(&["why", "mac-001"]);
    assert!(why.contains("ready, but no bed takes it: Ridge 2: weeding is not written down"), "{why}");
    let why = said(&["why", "mor-004", "--lang", "es"]);
    assert!(why.contains("lista, pero ninguna parcela la recibe"), "{why}");
    assert!(said(&["why", "avo-011"]).contains("+ ready to go out"));
}

#[test]
fn a_tray_measured_good_gives_in_a_few_days_what_it_was_measured_to_give() {
    use outplant::reckon::forecast::{ForecastBasis, outlook_of_living};
    let mut book = fitting();
    // 20 of 20 pass; held back for ten days.
    book.write("2026-04-14", "held", json!({"tray":"cof-1","why":"promised","until":"2026-04-24"}));
    let picture = book.on(TODAY);
    let outlook = outlook_of_living(&picture, ForecastBasis::Handbook);
    let told = &outlook.stock[&tray(&picture, "cof-1").code];
    let now = tray(&picture, "cof-1").plantable;
    assert!(told.plants.likely <= now.likely && told.plants.likely >= now.likely * 0.95, "{:?} {now:?}", told.plants);
}

/// A tray of 121 days that stands in deep shade, no bed anywhere, and the light its hardening is to end at.
fn hardening_of(species: &str) -> (f64, i32) {
    let mut book = small_nursery();
    let lot =
        json!({"lot":"x-L1","species":species,"source":"own","collected":"2025-12-01","seeds":200,"kept":"dry_open"});
    book.write("2025-12-01", "lot_received", lot);
    let sown = json!({"tray":"x-1","lot":"x-L1","seeds":60,"container":"bag","cells":60,"place":"Deep shade"});
    book.write("2025-12-15", "sown", sown);
    book.write("2026-02-10", "counted", json!({"tray":"x-1","standing":50}));
    let round = round(&book.on(TODAY));
    let stop = round.stops.iter().chain(&round.can_wait).find(|stop| stop.id == "begin_hardening x-1");
    let Some(RoundReason::HardeningNotBegun { step, length_days, .. }) = stop.map(|stop| &stop.why) else {
        panic!("{species}: {:?}", round.stops)
    };
    (step.light_in_the_end.unwrap(), *length_days)
}

#[test]
fn cedar_is_hardened_toward_part_shade_and_grevillea_toward_the_sun() {
    // From 30 % light cedar goes to the near end of its band, 50 to 80 %, and grevillea to that of 70 to 100 %; 28 days both.
    let (cedar, days) = hardening_of("Spanish cedar");
    assert!((cedar - 0.50).abs() < 1e-9 && days == 28, "{cedar} {days}");
    let (grevillea, days) = hardening_of("grevillea");
    assert!((grevillea - 0.70).abs() < 1e-9 && days == 28, "{grevillea} {days}");
}

#[test]
fn cedar_that_stood_in_half_shade_for_a_month_is_hardened_for_a_bed_in_part_shade_and_for_none_in_the_sun() {
    let mut book = small_nursery();
    let came = json!({"tray":"ced-1","species":"Spanish cedar","count":30,"from":"bought","form":"bag","age_days":90,
        "place":"Half shade","shade_now_pct":45});
    book.write("2026-03-01", "plants_received", came);
    let plan = json!([{"species":"Spanish cedar","pattern":"square","row_m":3,"in_row_m":3}]);
    for (bed, light) in [("Shaded", 0.6), ("Sunny", 1.0)] {
        let set = json!({"bed":bed,"field":"Upper","length_m":20,"width_m":6,"plan":plan});
        book.write("2025-01-01", "bed_set", set);
        book.write("2026-04-14", "light_read", json!({"bed":bed,"light_share":light}));
    }
    let picture = book.on(TODAY);
    // 0.55 of the light, where its bed has 0.6: no step. The sun is nearly twice as bright.
    assert_eq!(criterion(&pair(&picture, "ced-1", "Shaded").criteria, Rule::Hardening).met(), Some(true));
    assert_eq!(criterion(&pair(&picture, "ced-1", "Shaded").criteria, Rule::ExposureStep).met(), Some(true));
    assert_eq!(criterion(&pair(&picture, "ced-1", "Sunny").criteria, Rule::ExposureStep).met(), Some(false));
}

#[test]
fn heights_of_fewer_than_four_days_tell_no_day_and_those_of_four_do() {
    let grown = |days: &[(&str, f64)]| {
        let home = Home::default().begun();
        let lot = [
            "lot=cof-L1",
            "species=coffee",
            "source=own",
            "collected=2025-09-01",
            "seeds=100",
            "kept=in_parchment",
            "happened=2025-09-20",
        ];
        home.write("lot_received", &lot);
        let sown = ["tray=cof-1", "lot=cof-L1", "seeds=60", "container=bag", "happened=2025-10-01"];
        home.write("sown", &sown);
        home.write("counted", &["tray=cof-1", "standing=50", "happened=2025-12-10"]);
        for (on, height) in days {
            let plants: Vec<Value> = (0..10).map(|i| json!({"height_cm": height + f64::from(i % 3) * 0.2})).collect();
            home.write("measured", &["tray=cof-1", &format!("plants={}", json!(plants)), &format!("happened={on}")]);
        }
        home.json(&["why", "tray", "cof-1"])["growth"]["height"].clone()
    };
    let all = [("2026-01-10", 4.0), ("2026-02-09", 7.4), ("2026-03-11", 11.6), ("2026-04-10", 15.5)];
    let three = grown(&all[..3]);
    assert_eq!(
        (&three["state"], &three["why"], &three["on"]),
        (&json!("unknown"), &json!("few_samples"), &Value::Null)
    );
    let four = grown(&all);
    assert!(four["state"] == "expected" && four["on"].is_string(), "{four}");
}
