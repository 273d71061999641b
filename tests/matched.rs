//! The plan of going out over the coming weeks: small worlds by hand, and the sample nursery against what the plan must keep to.

use std::collections::BTreeMap;
use std::convert::Infallible;

use serde_json::{Value, json};

use outplant::base::{BedName, TrayCode};
use outplant::reckon::matching::{Ahead, ByHand, Cause, Load, More, NoMatch, Plan, Proof, plan};
use outplant::reckon::picture::Rule;
use outplant::science::matching::Own;

use crate::support::program::Home;
use crate::support::{Book, day, fitting, open_bed, ready_coffee, ready_coffee_sown, small_nursery};

const TODAY: &str = "2026-04-15";

fn asked(book: &Book, weeks: u32, by_hand: &ByHand) -> Result<Plan, NoMatch> {
    let drawn = |on| Ok::<_, Infallible>(book.seen_from(on, day(TODAY)));
    let ahead = Ahead::drawn(day(TODAY), weeks, drawn).unwrap();
    plan(&ahead, by_hand, &Own, &mut |_| true)
}

fn planned(book: &Book) -> Plan {
    asked(book, 4, &ByHand::default()).unwrap()
}

fn plants(plan: &Plan, of: impl Fn(&Load) -> bool) -> u32 {
    plan.loads.iter().filter(|load| of(load)).map(|load| load.plants).sum()
}

fn hands(book: &mut Book, a_day: u32, days: u32) {
    let nursery = json!({"name":"Test terrace","latitude_deg":-1.2,"longitude_deg":36.0,"altitude_m":1650,
        "utc_offset_h":3,"plants_per_day":a_day,"planting_days_per_week":days});
    book.write("2026-04-01", "nursery_set", nursery);
}

fn tray(code: &str) -> TrayCode {
    TrayCode::new(code).unwrap()
}

fn bed(name: &str) -> BedName {
    BedName::new(name).unwrap()
}

#[test]
fn a_tray_fills_the_bed_and_each_of_its_plants_goes_once() {
    let one = planned(&fitting());
    assert_eq!((one.proof, one.loads.len(), plants(&one, |_| true)), (Proof::Proven, 1, 44));
    assert_eq!((one.loads[0].from, one.loads[0].first.len()), (day(TODAY), 0));
    // The grid has 11 times 4 places; the other 4 have no bed.
    assert_eq!((one.left_behind[0].plants, &one.left_behind[0].cause), (4, &Cause::Positions));
    assert!(one.empty.is_empty());
    let mut two = fitting();
    open_bed(&mut two, "Upper 2");
    let two = planned(&two);
    assert_eq!(plants(&two, |_| true), 48);
    assert!(two.left_behind.is_empty());
    assert_eq!((two.empty[0].positions, &two.empty[0].cause), (40, &Cause::Stock));
}

#[test]
fn a_week_has_its_hands_and_one_more_day_brings_what_is_said() {
    let mut book = fitting();
    hands(&mut book, 8, 1);
    let plan = planned(&book);
    // Rains until 15 June: plants go out safely until 23 April, in two weeks of the plan.
    let by_week: BTreeMap<u32, u32> = [1, 2, 3, 4].map(|week| (week, plants(&plan, |load| load.week == week))).into();
    assert_eq!(by_week, [(1, 8), (2, 8), (3, 0), (4, 0)].into());
    assert_eq!((plan.left_behind[0].plants, &plan.left_behind[0].cause), (32, &Cause::Work));
    assert_eq!((plan.empty[0].positions, &plan.empty[0].cause), (28, &Cause::Work));
    let days: Vec<(u32, u32)> = plan
        .one_more
        .iter()
        .filter_map(|more| if let More::PlantingDay { week } = more.of { Some((week, more.plants)) } else { None })
        .collect();
    assert_eq!(days, [(1, 8), (2, 8)]);
    // With two days a week it is so.
    let mut more = fitting();
    hands(&mut more, 8, 2);
    assert_eq!(plants(&planned(&more), |_| true), 32);
}

#[test]
fn work_of_a_day_is_done_before_and_is_said() {
    let mut book = fitting();
    ready_coffee(&mut book, "cof-2");
    book.write(
        "2025-01-01",
        "bed_set",
        json!({"bed":"Low","field":"Upper","length_m":20,"width_m":6,
        "plan":[{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]}),
    );
    book.write("2026-04-01", "light_read", json!({"bed":"Low","light_share":0.6}));
    book.write("2026-04-01", "soil_checked", json!({"bed":"Low","resistance_mpa":1.2,"depth_cm":30,"wet":true}));
    book.write("2026-04-01", "prepared", json!({"bed":"Low","task":"cleared"}));
    let plan = planned(&book);
    let low: Vec<&Load> = plan.loads.iter().filter(|load| load.bed == bed("Low")).collect();
    assert_eq!(low.len(), 1, "{:?}", plan.empty);
    assert_eq!((low[0].from, low[0].first.clone()), (day("2026-04-16"), vec![Rule::Holes, Rule::Weeded]));
    assert_eq!(plants(&plan, |_| true), 88);
}

#[test]
fn what_nobody_knows_today_is_no_ground_for_a_plan() {
    let mut book = fitting();
    book.write(
        "2026-04-14",
        "bed_set",
        json!({"bed":"Low","field":"Upper","length_m":20,"width_m":6,
        "plan":[{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]}),
    );
    let plan = planned(&book);
    assert_eq!(plants(&plan, |load| load.bed == bed("Low")), 0);
    let low = plan.empty.iter().find(|empty| empty.bed == bed("Low")).unwrap();
    let Cause::Question(why) = &low.cause else { panic!("{:?}", low.cause) };
    assert!([Rule::LightNow, Rule::Soil].contains(&why.rule()), "{:?}", why.rule());
}

#[test]
fn what_is_held_sprayed_or_sick_is_in_no_plan() {
    for (kind, body) in [
        ("held", json!({"tray":"cof-1","why":"promised"})),
        ("treated", json!({"tray":"cof-1","with":"copper"})),
        ("pest_seen", json!({"tray":"cof-1","what":"root rot","share_pct":50})),
    ] {
        let mut book = fitting();
        book.write("2026-04-15", kind, body);
        let plan = planned(&book);
        assert_eq!(plants(&plan, |_| true), 0, "{kind}: {:?}", plan.loads);
        assert!(matches!(plan.left_behind[0].cause, Cause::Question(_)), "{kind}");
        assert_eq!(plan.proof, Proof::Nothing);
    }
    // A waiting time that ends in the week opens it from that day.
    let mut book = fitting();
    let spray = json!({"tray":"cof-1","with":"copper","safe_after_days":3});
    book.write("2026-04-15", "treated", spray);
    let plan = planned(&book);
    assert_eq!(plants(&plan, |load| load.from >= day("2026-04-18")), 44, "{:?}", plan.loads);
}

#[test]
fn plants_that_were_eaten_stay_behind_in_every_week_of_the_plan() {
    let mut book = fitting();
    book.write("2026-04-15", "pest_seen", json!({"tray":"cof-1","what":"goats","share_pct":50}));
    for weeks in [1, 4] {
        assert_eq!(plants(&asked(&book, weeks, &ByHand::default()).unwrap(), |_| true), 24, "{weeks} weeks");
    }
    // Nobody looked again, a month later: they are still eaten.
    let later = book.on("2026-05-20");
    assert!(crate::support::tray(&later, "cof-1").plantable.likely < 24.1);
    // A whole count says how many live.
    book.write("2026-04-16", "counted", json!({"tray":"cof-1","standing":40}));
    assert!(crate::support::tray(&book.on("2026-04-16"), "cof-1").plantable.likely > 39.9);
}

#[test]
fn a_frost_that_nobody_looked_at_is_not_forgotten_in_the_weeks_of_a_plan() {
    let mut book = fitting();
    book.write("2026-04-14", "weather", json!({"tmin_c":-2,"tmax_c":20}));
    assert_eq!(plants(&planned(&book), |_| true), 0);
}

#[test]
fn of_two_trays_for_one_bed_the_one_whose_time_ends_first_goes() {
    for (older, younger) in [("cof-2", "cof-3"), ("cof-3", "cof-2")] {
        let mut book = small_nursery();
        ready_coffee(&mut book, older);
        ready_coffee_sown(&mut book, younger, "2025-08-01", "2025-11-20");
        open_bed(&mut book, "Upper 1");
        crate::support::wet_days(&mut book);
        let picture = book.on(TODAY);
        let last = |code: &str| crate::support::tray(&picture, code).best_before.unwrap();
        assert!(last(older) < last(younger));
        let weeks = u32::try_from(last(younger).days_since(day(TODAY)) / 7 + 1).unwrap();
        let plan = asked(&book, weeks, &ByHand::default()).unwrap();
        assert_eq!(plants(&plan, |load| load.tray == tray(older)), 44, "{:?}", plan.loads);
    }
}

#[test]
fn what_a_person_decided_is_kept_and_what_cannot_be_is_said() {
    let mut book = fitting();
    ready_coffee(&mut book, "cof-2");
    let pin =
        |code: &str, name: &str, count| ByHand { pinned: vec![(tray(code), bed(name), count)], ..ByHand::default() };
    let kept = asked(&book, 4, &pin("cof-2", "Upper 1", 20)).unwrap();
    let pinned: Vec<&Load> = kept.loads.iter().filter(|load| load.pinned).collect();
    assert_eq!((pinned.len(), pinned[0].plants, &pinned[0].tray), (1, 20, &tray("cof-2")));
    assert_eq!(plants(&kept, |_| true), 44, "the other places are filled");
    let too_many = asked(&book, 4, &pin("cof-2", "Upper 1", 49));
    assert!(matches!(too_many, Err(NoMatch::TooManyOfTray { pinned: 49, .. })), "{too_many:?}");
    let over = asked(&book, 4, &pin("cof-2", "Upper 1", 45));
    assert!(matches!(over, Err(NoMatch::TooManyToBed { pinned: 45, open: 44, .. })), "{over:?}");
    let never = ByHand { forbidden: vec![(tray("cof-1"), bed("Upper 1"))], ..ByHand::default() };
    let other = asked(&book, 4, &never).unwrap();
    assert_eq!((plants(&other, |load| load.tray == tray("cof-1")), plants(&other, |_| true)), (0, 44));
    let out = asked(&book, 4, &ByHand { left_out: vec![bed("Upper 1")], ..ByHand::default() }).unwrap();
    assert!(out.loads.is_empty());
    book.write("2026-04-15", "held", json!({"tray":"cof-2","why":"promised"}));
    assert!(matches!(asked(&book, 4, &pin("cof-2", "Upper 1", 5)), Err(NoMatch::NeverFits { .. })));
}

#[test]
fn a_few_plants_are_not_walked_alone_to_a_bed_that_they_do_not_fill() {
    let book = |standing: u32| {
        let mut book = fitting();
        ready_coffee(&mut book, "cof-2");
        open_bed(&mut book, "Upper 2");
        open_bed(&mut book, "Upper 3");
        for code in ["cof-1", "cof-2"] {
            book.write("2026-04-14", "counted", json!({"tray":code,"standing":standing}));
        }
        planned(&book)
    };
    // Two trays of 47 fill two beds of 44; what is left of each empties its tray, and goes.
    let all = book(47);
    assert_eq!(plants(&all, |_| true), 94);
    assert!(all.loads.len() <= 4 && all.loads.iter().all(|load| load.plants >= 3), "{:?}", all.loads);
    // Two trays of 44 fill two beds, a trip each.
    let two = book(44);
    assert_eq!((two.loads.len(), plants(&two, |_| true)), (2, 88));
    assert_eq!(two.given_up.0, 0);
}

#[test]
fn a_load_too_small_for_a_trip_stays_where_it_costs_a_hundredth_at_most_and_that_is_said() {
    let mut book = fitting();
    for number in 2..=8 {
        ready_coffee(&mut book, &format!("cof-{number}"));
        open_bed(&mut book, &format!("Upper {number}"));
    }
    open_bed(&mut book, "Upper 9");
    // Each tray fills a bed; three more plants have hands, and a bed of 44.
    for number in 1..=8 {
        book.write("2026-04-14", "counted", json!({"tray":format!("cof-{number}"),"standing":44}));
    }
    ready_coffee(&mut book, "cof-9");
    hands(&mut book, 355, 1);
    let plan = asked(&book, 1, &ByHand::default()).unwrap();
    let open = 44;
    for load in plan.loads.iter().filter(|load| load.plants < 5) {
        let fills = plants(&plan, |other| other.bed == load.bed) == open;
        let left = plan.left_behind.iter().any(|one| one.plants > 0 && format!("{one:?}").contains(load.tray.as_str()));
        assert!(fills || !left, "{load:?}");
    }
    assert_eq!(plan.given_up.0, 355 - plants(&plan, |_| true));
    assert!(plan.given_up.0 <= 3, "{:?}", plan.given_up);
    assert!(plan.loads.len() <= 10, "{:?}", plan.loads);
}

#[test]
fn a_nursery_of_nothing_and_weeks_beyond_the_rains_have_an_answer() {
    let nothing = asked(&Book::default(), 3, &ByHand::default()).unwrap();
    assert_eq!((nothing.proof, nothing.loads.len()), (Proof::Nothing, 0));
    let no_beds = {
        let mut book = small_nursery();
        ready_coffee(&mut book, "cof-1");
        planned(&book)
    };
    assert_eq!((no_beds.left_behind[0].plants, &no_beds.left_behind[0].cause), (48, &Cause::NoBed));
    let mut no_hands = fitting();
    hands(&mut no_hands, 40, 0);
    // No day of planting is written as one: nobody writes a nursery that never plants.
    assert!(planned(&no_hands).hands.is_some());
}

#[test]
fn the_plan_of_the_sample_keeps_to_plants_positions_and_hands_and_is_no_worse_than_the_plan_of_the_day() {
    let home = Home { today: "2026-11-25".into(), ..Home::default() };
    let file = home.file("nursery.outplant");
    home.done(&["sample", "--into", file.to_str().unwrap()]);
    for on in ["2026-11-25", "2026-05-13", "2026-08-01"] {
        let ready = home.json(&["ready", "--on", on, "--known", on]);
        let plan = home.json(&["match", "--weeks", "3", "--on", on]);
        let loads = plan["loads"].as_array().unwrap();
        let sums = |name: &dyn Fn(&Value) -> String| {
            let mut sums: BTreeMap<String, u64> = BTreeMap::new();
            loads.iter().for_each(|load| *sums.entry(name(load)).or_default() += load["plants"].as_u64().unwrap());
            sums
        };
        let text = |load: &Value, key: &str| load[key].as_str().unwrap().to_string();
        for (code, sum) in sums(&|load| text(load, "tray")) {
            let trays = ready["trays"].as_array().unwrap();
            let known = trays.iter().find(|one| one["tray"] == json!(code)).unwrap();
            // More of them may be tall enough in a week; more than stand there never go.
            assert!(sum <= known["standing"].as_u64().unwrap(), "{on}: {code}");
        }
        for (name, sum) in sums(&|load| format!("{}|{}", text(load, "bed"), text(load, "species"))) {
            let (bed, species) = name.split_once('|').unwrap();
            let beds = ready["beds"].as_array().unwrap();
            let lines = beds.iter().find(|one| one["bed"] == json!(bed)).unwrap()["species"].as_array().unwrap();
            let line = lines.iter().find(|one| one["species"] == json!(species)).unwrap();
            assert!(sum <= line["open_positions"].as_u64().unwrap(), "{on}: {name}");
        }
        let most = plan["plants_per_week"].as_u64().unwrap();
        assert!(sums(&|load| load["week"].to_string()).values().all(|sum| *sum <= most), "{on}");
        let of_day: u64 = ready["load"].as_array().unwrap().iter().map(|load| load["plants"].as_u64().unwrap()).sum();
        let of_plan: u64 = sums(&|_| String::new()).values().sum();
        assert!(of_plan >= of_day.min(most), "{on}: {of_plan} of the plan, {of_day} of the day");
        assert_eq!(plan, home.json(&["match", "--weeks", "3", "--on", on]), "the same every time");
    }
}

#[test]
fn a_plan_of_a_past_day_knows_nothing_of_what_was_written_after_it() {
    let home = Home { today: "2026-05-13".into(), ..Home::default() };
    let file = home.file("nursery.outplant");
    home.done(&["sample", "--into", file.to_str().unwrap()]);
    let later = Home { today: "2026-08-01".into(), ..home };
    let back = later.json(&["match", "--weeks", "3", "--on", "2026-05-13"]);
    let tray = back["loads"][0]["tray"].as_str().unwrap_or("cof-008").to_string();
    later.done(&["write", "lost", &format!("tray={tray}"), "count=5", "cause=rats", "happened=2026-05-16", "--yes"]);
    assert_eq!(later.json(&["match", "--weeks", "3", "--on", "2026-05-13"]), back);
}

#[test]
fn a_line_by_hand_that_cannot_be_read_is_said_and_names_nearly_known_are_offered() {
    let home = Home { today: "2026-11-25".into(), ..Home::default() };
    let file = home.file("nursery.outplant");
    home.done(&["sample", "--into", file.to_str().unwrap()]);
    assert!(home.refused(&["match", "--pin", "cof-021"]).contains("TRAY:BED=PLANTS"));
    assert!(home.refused(&["match", "--forbid", "cof-0211:School 1"]).contains("cof-021"));
    assert!(home.refused(&["match", "--leave-out", "Skool 1"]).contains("School 1"));
    assert!(home.refused(&["match", "--weeks", "0"]).contains("52"));
    assert!(home.refused(&["match", "--weeks", "53", "--lang", "es"]).contains("semanas"));
}
