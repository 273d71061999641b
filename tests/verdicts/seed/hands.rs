//! Tests of seed and what they tell, one balance of what is sown, and the hands of a day.

use std::collections::BTreeMap;

use outplant::base::{Day, LotCode, Moment, TrayCode};
use outplant::desk::{Now, sample};
use outplant::reckon::forecast::{ForecastBasis, outlook};
use outplant::reckon::lots::{LotOutlook, NoRetest, lot_outlook};
use outplant::reckon::picture::Picture;
use outplant::reckon::round::{RoundReason, Stop, Task, round};
use outplant::reckon::sowing::{NoPlan, SowingAsked, Wanted, sowing_plan};
use outplant::reckon::{View, forecast::TrayStock};
use outplant::wording::{Lang, Wording};
use serde_json::json;

use crate::support::program::Home;
use crate::support::{Book, day};

fn received(species: &str, collected: &str, kept: &str) -> Book {
    let mut book = Book::default();
    let lot =
        json!({"lot":"l-1","species":species,"source":"by the river","collected":collected,"seeds":900,"kept":kept});
    book.write(collected, "lot_received", lot);
    book
}

fn tested(mut book: Book, on: &str, days: u32, replicates: &[(u32, u32)]) -> Book {
    let replicates: Vec<_> = replicates.iter().map(|(seeds, up)| json!({"seeds":seeds,"germinated":up})).collect();
    book.write(on, "lot_tested", json!({"lot":"l-1","replicates":replicates,"days":days}));
    book
}

fn outlook_of(book: &Book, on: &str) -> LotOutlook {
    let picture = book.on(on);
    let lot = &picture.lots[&LotCode::new("l-1").unwrap()];
    let profile = lot.species.as_ref().and_then(|key| picture.site.profile(key));
    lot_outlook(lot, profile.map(|profile| &**profile), picture.day)
}

fn stops(picture: &Picture) -> Vec<Stop> {
    let told = round(picture);
    told.stops.into_iter().chain(told.can_wait).collect()
}

fn of_lots(book: &Book, on: &str) -> Vec<Task> {
    stops(&book.on(on)).into_iter().filter(|stop| stop.lot().is_some()).map(|stop| stop.task).collect()
}

#[test]
fn a_lot_of_which_none_came_up_in_a_whole_test_is_dead_by_it_and_thrown_out() {
    let four = [(50, 0), (50, 0), (50, 0), (50, 0)];
    let book = tested(received("grevillea", "2026-01-01", "dry_sealed"), "2026-03-10", 45, &four);
    let on = "2026-03-11";
    let told = outlook_of(&book, on);
    assert_eq!(told.retest, Err(NoRetest::TestedDead));
    for (lang, said) in
        [(Lang::En, "dead by its test: none of 200 seeds"), (Lang::Es, "muerta según su prueba: de 200")]
    {
        let words = Wording::new(lang);
        let (good, verdict) = words.lot_verdict(&told, day(on));
        assert!(!good && verdict.starts_with(said) && !verdict.contains("thickly"), "{verdict}");
    }
    assert_eq!(of_lots(&book, on), [Task::ThrowOutLot]);
    let picture = book.on(on);
    let lot = &picture.lots[&LotCode::new("l-1").unwrap()];
    let plan = sowing_plan(&picture, lot.species.as_ref().unwrap(), Some(lot), Wanted { plants: 50, sure: 0.8 });
    assert_eq!(plan, Err(NoPlan::Dead));
    // Some came up in a later test: it is not.
    let alive = tested(book, "2026-04-30", 45, &[(50, 20), (50, 22)]);
    assert!(outlook_of(&alive, "2026-05-01").retest != Err(NoRetest::TestedDead));
    assert!(!of_lots(&alive, "2026-05-01").contains(&Task::ThrowOutLot));
}

#[test]
fn a_test_that_ends_before_the_last_can_come_up_tells_only_at_least() {
    let untested = received("grevillea", "2026-01-01", "dry_sealed");
    let fresh = outlook_of(&untested, "2026-03-11").viability.unwrap().today;
    // Three days: of grevillea nothing can be up, and nothing is told by it.
    let three = tested(untested.clone(), "2026-03-10", 3, &[(50, 0), (50, 0)]);
    let told = outlook_of(&three, "2026-03-11");
    assert_eq!(told.viability.unwrap().today, fresh);
    assert!(!of_lots(&three, "2026-03-11").contains(&Task::ThrowOutLot));
    // Ten days: at least so many.
    let ten = tested(untested.clone(), "2026-03-10", 10, &[(50, 29), (50, 29)]);
    let told = outlook_of(&ten, "2026-03-11");
    let today = told.viability.unwrap().today;
    assert!(today.likely >= 0.55 && today.likely >= fresh.likely, "{today:?} {fresh:?}");
    // Laid out on 28 February, last up after 40 days.
    assert_eq!(told.tests[0].whole_on, Some(day("2026-04-09")));
    // Counted to the end it is the test.
    let whole = tested(untested, "2026-04-09", 40, &[(50, 29), (50, 29)]);
    let told = outlook_of(&whole, "2026-04-10").tests[0].clone();
    assert!(told.whole_on.is_none() && (told.share.likely - 0.58).abs() < 1e-9 && told.share.high < 0.68, "{told:?}");
}

#[test]
fn who_writes_an_early_test_is_told_until_when_to_count() {
    let home = Home { today: "2026-03-10".into(), ..Home::default() }.begun();
    home.write(
        "lot_received",
        &["lot=gre-1", "species=grevillea", "source=hedge", "collected=2026-01-01", "seeds=900", "kept=dry_sealed"],
    );
    let written = |days: &str| {
        let ended = home.run(&[
            "write",
            "lot_tested",
            "lot=gre-1",
            r#"replicates=[{"seeds":50,"germinated":3}]"#,
            days,
            "--dry-run",
        ]);
        (ended.out + &ended.err).split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let early = written("days=3");
    assert!(early.contains("3 of 50") && early.contains("Count on until 16 Apr"), "{early}");
    let whole = written("days=40");
    assert!(!whole.contains("take care"), "{whole}");
}

#[test]
fn a_test_that_takes_longer_than_the_seed_lives_is_never_asked_for() {
    // Coffee lives 90 days in parchment, and half is up after 55.
    let book = received("coffee", "2026-01-01", "in_parchment");
    let en = Wording::new(Lang::En);
    for on in ["2026-03-10", "2026-03-30", "2026-04-03", "2026-04-20", "2026-05-20"] {
        let told = outlook_of(&book, on);
        assert!(matches!(told.retest, Err(NoRetest::LivesTooShort { .. })), "{on} {:?}", told.retest);
        assert!(!of_lots(&book, on).contains(&Task::TestLot), "{on}");
        if day(on) > day("2026-04-01") {
            let said = en.lot_verdict(&told, day(on)).1;
            assert!(said.contains("Cut ten open") && said.contains("fresh seed"), "{on} {said}");
        }
    }
    // Seed that stands drying and is quickly tested is, past its life too.
    let book = received("moringa", "2025-01-01", "dry_open");
    let past = outlook_of(&book, "2025-01-01").life.unwrap().last_day().plus(5).to_string();
    assert!(outlook_of(&book, &past).retest.is_ok(), "{:?}", outlook_of(&book, &past).retest);
}

fn sample_on(folder: &std::path::Path, on: Day) -> Picture {
    let now = Now { today: on, clock: None, moment: Moment::end_of(on, 3.0) };
    let desk = sample::make(&folder.join(format!("{on}.outplant")), folder, now).unwrap();
    desk.picture_of(View { day: on, known: None }).unwrap()
}

fn is_enough(picture: &Picture, stock: &BTreeMap<TrayCode, TrayStock>, stop: &Stop) -> bool {
    let lot = stop.lot().and_then(|lot| picture.lots.get(lot));
    let of_tray = stop.tray().and_then(|tray| picture.trays.get(tray)).and_then(|tray| tray.species.as_ref());
    let species = lot.and_then(|lot| lot.species.as_ref()).or(of_tray);
    let asked = SowingAsked::of(picture, stock, species, None, None, 0.95);
    asked.open_places > 0 && asked.plan.is_none()
}

#[test]
fn the_walk_has_nothing_sown_where_why_says_nothing_to_sow() {
    let folder = tempfile::tempdir().unwrap();
    let today = day("2026-11-30");
    let now = Now { today, clock: None, moment: Moment::end_of(today, 3.0) };
    let desk = sample::make(&folder.path().join("s.outplant"), folder.path(), now).unwrap();
    let mut tests_of_what_is_enough = 0;
    for days in [-15, -5, 0, 8, 14, 29, 59] {
        let picture = desk.picture_of(View { day: today.plus(days), known: None }).unwrap();
        let stock = outlook(&picture, ForecastBasis::OwnRecords).stock;
        let told = round(&picture);
        for stop in told.stops.iter().chain(&told.can_wait) {
            let enough = || is_enough(&picture, &stock, stop);
            match stop.task {
                Task::SowLot | Task::SowAgain => assert!(!enough(), "{} {}", picture.day, stop.id),
                // A test of seed that nobody has to sow hangs on no plants, here and in what is worth looking at.
                Task::TestLot if enough() => {
                    tests_of_what_is_enough += 1;
                    assert!(stop.at_stake.plants < 1.0, "{}", stop.id);
                    assert!(told.worth_looking.iter().all(|look| look.stop != stop.id), "{}", stop.id);
                }
                _ => {}
            }
        }
    }
    assert!(tests_of_what_is_enough > 0);
}

/// Coffee of which little came up, a bed for some, and a lot that is dead.
fn failing(rows_m: f64) -> Book {
    let mut book = Book::default();
    let plan = json!([{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]);
    book.write(
        "2025-12-01",
        "bed_set",
        json!({"bed":"Slope","field":"Hill","length_m":rows_m,"width_m":10,"plan":plan}),
    );
    let lot = json!({"lot":"cof-old","species":"COA","source":"a","collected":"2025-03-01","seeds":400,"kept":"in_parchment"});
    book.write("2025-12-01", "lot_received", lot);
    let sown = json!({"tray":"cof-001","lot":"unknown","species":"COA","seeds":100,"container":"bag","cells":100});
    book.write("2026-01-01", "sown", sown);
    for (on, up) in [("2026-03-02", 2), ("2026-03-20", 5), ("2026-03-30", 8)] {
        book.write(on, "counted", json!({"tray":"cof-001","standing":up}));
    }
    book
}

#[test]
fn what_is_sown_again_is_what_the_beds_lack_and_never_of_dead_seed() {
    let asked = |book: &Book| {
        let stops = stops(&book.on("2026-03-30"));
        stops.into_iter().find(|stop| stop.task == Task::SowAgain)
    };
    let missing = |stop: &Stop| match &stop.why {
        RoundReason::SowAgainAsked { again, fresh: true, .. } => again.missing,
        other => panic!("{other:?}"),
    };
    let large = missing(&asked(&failing(40.0)).unwrap());
    assert!(large > 5.0, "{large}");
    // A bed of one row, which what stands nearly fills.
    assert!(asked(&failing(1.0)).is_none_or(|small| missing(&small) < large));
    // What lives is named.
    let mut book = failing(40.0);
    let lot = json!({"lot":"cof-new","species":"COA","source":"a","collected":"2026-03-20","seeds":400,"kept":"in_parchment"});
    book.write("2026-03-25", "lot_received", lot);
    let known = asked(&book).unwrap();
    assert!(matches!(known.why, RoundReason::SowAgainAsked { fresh: false, .. }), "{known:?}");
}

#[test]
fn what_is_loaded_today_is_what_the_hands_of_the_day_plant() {
    let folder = tempfile::tempdir().unwrap();
    let picture = sample_on(folder.path(), day("2026-11-30"));
    let a_day = picture.site.nursery.on(picture.day).unwrap().plants_per_day.unwrap().0;
    let beds: Vec<_> = stops(&picture)
        .into_iter()
        .filter_map(|stop| match stop.why {
            RoundReason::Fits { beds, .. } => Some((stop.until, beds)),
            _ => None,
        })
        .collect();
    let sum = |of: fn(&outplant::reckon::round::ToBed) -> u32| beds.iter().flat_map(|(_, to)| to).map(of).sum::<u32>();
    assert!(sum(|to| to.after_others) > a_day, "the sample has more than its hands plant");
    assert_eq!(sum(|to| to.today), a_day);
    // Who waits has no earlier last day than who goes.
    let goes = beds.iter().filter(|(_, to)| to.iter().any(|to| to.today > 0)).filter_map(|(until, _)| *until).max();
    let waits = beds.iter().filter(|(_, to)| to.iter().any(|to| to.rest_on.is_some())).filter_map(|(until, _)| *until);
    assert!(waits.min().unwrap() >= goes.unwrap() || beds.iter().any(|(until, _)| until.is_none()));
    // The two answers say the same as the walk.
    let home = Home { today: "2026-11-30".into(), ..Home::default() };
    home.done(&["sample", "--into", home.file("nursery.outplant").to_str().unwrap()]);
    let told = home.json(&["ready"]);
    let load = told["load"].as_array().unwrap();
    let of = |key: &str| load.iter().map(|one| one[key].as_u64().unwrap()).sum::<u64>();
    assert_eq!((of("today"), of("plants")), (u64::from(a_day), u64::from(sum(|to| to.after_others))));
    let said = home.done(&["ready"]);
    assert!(said.contains(&format!("Hands for {a_day} plants a day. Not today:")), "{said}");
}

#[test]
fn what_the_hands_do_not_plant_by_its_last_day_is_said_in_time() {
    let home = Home { today: "2026-11-30".into(), ..Home::default() };
    home.done(&["sample", "--into", home.file("nursery.outplant").to_str().unwrap()]);
    // 15 December is the last safe day: with 5 plants a day a part of the 164 goes by then.
    let place = ["name=Kilima", "latitude_deg=-1.2", "longitude_deg=36", "altitude_m=1650", "utc_offset_h=3"];
    home.write("nursery_set", &[&place[..], &["plants_per_day=5", "--yes"]].concat());
    let load = home.json(&["ready"])["load"].clone();
    let sum = |key: &str| load.as_array().unwrap().iter().map(|one| one[key].as_u64().unwrap()).sum::<u64>();
    assert_eq!(sum("today"), 5);
    assert!(sum("late") > 0 && sum("late") < sum("plants"), "{load:#}");
    let said = home.done(&["ready"]).split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(said.contains("No hands before their last day:") && said.contains("pot them on"), "{said}");
    let walk = home.done(&["walk"]).split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(walk.contains("no hands for them today: by") || walk.contains("of them today, the rest by"), "{walk}");
}

#[test]
fn dead_seed_is_warned_of_where_all_is_agreed_to_beforehand() {
    let home = Home { today: "2026-11-30".into(), ..Home::default() };
    home.done(&["sample", "--into", home.file("nursery.outplant").to_str().unwrap()]);
    let words = ["write", "sown", "tray=man-099", "lot=man-L01", "seeds=5", "container=bag 1 l", "--yes"];
    let ended = home.run(&words);
    assert!(ended.code == 0 && (ended.out + &ended.err).contains("the seed of man-L01 is dead"));
}
