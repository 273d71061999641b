//! Worlds by hand of benches: what was sprayed stands beside trays that nobody sprayed, is carried on, and is handled again.

use outplant::nursery::entry::subject::Subject;
use outplant::reckon::picture::{Picture, Rule};
use outplant::reckon::round::{Stop, Task, round};
use outplant::wording::verdict::About;
use outplant::wording::{Lang, Wording};
use serde_json::json;

use crate::support::program::Home;
use crate::support::{Book, criterion, day, fitting, pair, ready_coffee, tray};

const TODAY: &str = "2026-04-15";

/// Ready coffee in two trays on Half shade, and an open bed.
fn two_trays() -> Book {
    let mut book = fitting();
    ready_coffee(&mut book, "cof-2");
    book
}

fn treated(book: &Book, code: &str, on: &str) -> outplant::reckon::picture::Criterion {
    criterion(&tray(&book.on(on), code).criteria, Rule::Treated).clone()
}

fn stops_of(picture: &Picture, code: &str) -> Vec<Stop> {
    let round = round(picture);
    let all = round.stops.into_iter().chain(round.can_wait);
    all.filter(|stop| stop.subject == Subject::Tray(code.parse().unwrap())).collect()
}

#[test]
fn a_tray_beside_one_whose_wait_runs_is_not_worked_at_and_says_which_and_until_when() {
    let mut book = two_trays();
    // Long uncounted by then: without the spray beside it a count would be due.
    let late = "2026-05-05";
    assert!(stops_of(&book.on(late), "cof-2").iter().any(|stop| stop.task == Task::Count));
    book.write("2026-05-02", "treated", json!({"tray":"cof-1","with":"mancozeb","safe_after_days":7}));
    assert_eq!(stops_of(&book.on(late), "cof-2"), []);
    let beside = treated(&book, "cof-2", late);
    assert_eq!((beside.met(), beside.blocks, beside.expected), (Some(false), true, Some(day("2026-05-09"))));
    for (lang, bench) in [(Lang::En, "on this bench"), (Lang::Es, "en este banco")] {
        let said = Wording::new(lang).reason(&beside, About::Tray);
        assert!(said.contains("cof-1") && said.contains("mancozeb") && said.contains(bench), "{said}");
    }
    assert!(!pair(&book.on(late), "cof-2", "Upper 1").fits, "somebody would fetch it from there");
    assert!(!stops_of(&book.on("2026-05-09"), "cof-2").is_empty());
    // A tray on another bench is none of it.
    book.write("2026-05-03", "carried", json!({"tray":"cof-2","place":"Deep shade"}));
    assert!(treated(&book, "cof-2", late).met() == Some(true));
}

#[test]
fn an_unknown_wait_closes_its_bench_until_the_label_is_written() {
    let mut book = two_trays();
    book.write("2026-04-14", "treated", json!({"tray":"cof-1","with":"dimethoate"}));
    for on in [TODAY, "2026-06-10"] {
        let beside = treated(&book, "cof-2", on);
        assert_eq!((beside.met(), beside.blocks), (None, true), "{on}");
        assert_eq!(stops_of(&book.on(on), "cof-2"), [], "{on}");
        let asked: Vec<Task> = stops_of(&book.on(on), "cof-1").iter().map(|stop| stop.task).collect();
        assert_eq!(asked, [Task::ReadLabel], "read from the path: {on}");
    }
    book.write("2026-04-14", "treated", json!({"tray":"cof-1","with":"dimethoate","safe_after_days":1}));
    assert_eq!(treated(&book, "cof-2", TODAY).met(), Some(true));
}

#[test]
fn a_wait_goes_with_a_carried_tray_and_stays_where_it_was_sprayed() {
    let mut book = two_trays();
    ready_coffee(&mut book, "cof-3");
    book.write("2026-04-01", "carried", json!({"tray":"cof-3","place":"Deep shade"}));
    book.write("2026-04-13", "treated", json!({"tray":"cof-1","with":"mancozeb","safe_after_days":7}));
    let closed = |book: &Book| ["cof-1", "cof-2", "cof-3"].map(|code| treated(book, code, TODAY).blocks);
    assert_eq!(closed(&book), [true, true, false]);
    book.write("2026-04-14", "carried", json!({"tray":"cof-1","place":"Deep shade"}));
    assert_eq!(closed(&book), [true, true, true], "sprayed on Half shade, standing on Deep shade");
    let free = |on: &str| ["cof-1", "cof-2", "cof-3"].iter().all(|code| !treated(&book, code, on).blocks);
    assert!(!free("2026-04-19") && free("2026-04-20"));
    // Carried before it was sprayed, its old bench is free.
    let mut book = two_trays();
    book.write("2026-04-12", "carried", json!({"tray":"cof-1","place":"Deep shade"}));
    book.write("2026-04-13", "treated", json!({"tray":"cof-1","with":"mancozeb","safe_after_days":7}));
    assert!(!treated(&book, "cof-2", TODAY).blocks);
}

#[test]
fn a_bench_from_which_a_tray_of_unknown_wait_is_gone_is_closed_for_a_month() {
    let mut book = two_trays();
    book.write("2026-04-13", "treated", json!({"tray":"cof-1","with":"dimethoate"}));
    book.write("2026-04-14", "culled", json!({"tray":"cof-1","count":48,"why":"sick"}));
    assert!(treated(&book, "cof-2", TODAY).blocks, "the spray fell here");
    let asked: Vec<Task> = stops_of(&book.on(TODAY), "cof-1").iter().map(|stop| stop.task).collect();
    assert_eq!(asked, [Task::ReadLabel], "a tray that is gone is still asked about");
    let blocks = |on: &str| treated(&book, "cof-2", on).blocks;
    assert!(blocks("2026-05-12") && !blocks("2026-05-13"));
    assert_eq!(stops_of(&book.on("2026-05-13"), "cof-1"), []);
}

#[test]
fn a_spray_that_needs_no_wait_closes_its_bench_until_it_has_dried_and_what_is_no_spray_closes_none() {
    for with in ["soap", "neem", "jabón", "sulphur dust"] {
        let mut book = two_trays();
        book.write(TODAY, "treated", json!({"tray":"cof-1","with":with,"safe_after_days":0}));
        assert!(treated(&book, "cof-1", TODAY).blocks && treated(&book, "cof-2", TODAY).blocks, "{with}");
        assert_eq!(stops_of(&book.on(TODAY), "cof-2"), [], "{with}");
        for (lang, dried) in [(Lang::En, "until it has dried"), (Lang::Es, "hasta que seque")] {
            let said = Wording::new(lang).reason(&treated(&book, "cof-2", TODAY), About::Tray);
            assert!(said.contains(dried) && said.contains("cof-1"), "{said}");
        }
        assert!(!treated(&book, "cof-2", "2026-04-16").blocks, "{with}");
    }
    for with in ["cut out and burned the spotted leaves", "neem soil drench", "ceniza", "agua"] {
        let mut book = two_trays();
        book.write(TODAY, "treated", json!({"tray":"cof-1","with":with,"safe_after_days":0}));
        assert!(treated(&book, "cof-1", TODAY).blocks && !treated(&book, "cof-2", TODAY).blocks, "{with}");
    }
}

#[test]
fn nothing_is_carried_to_a_bench_that_is_closed() {
    // Soft in deep shade and old enough: the next place brighter is Line, of 50 %.
    let to_line = |book: &Book| {
        let round = round(&book.on("2026-02-10"));
        let all: Vec<Stop> = round.stops.into_iter().chain(round.can_wait).collect();
        all.iter().any(|stop| stop.task == Task::BeginHardening && format!("{:?}", stop.why).contains("Line"))
    };
    let mut book = crate::support::small_nursery();
    crate::support::coffee_in_deep_shade(&mut book, "cof-1", "2025-06-01", "2025-09-10");
    book.write("2025-01-01", "place_set", json!({"place":"Line","order":3,"shade_pct":50}));
    assert!(to_line(&book));
    book.write("2026-02-09", "treated", json!({"place":"Line","with":"mancozeb","safe_after_days":7}));
    assert!(!to_line(&book));
}

#[test]
fn in_the_first_days_after_a_wait_hands_are_gloved_and_plants_are_seen_before_they_go_out() {
    use outplant::nursery::caution::Caution;
    let mut book = fitting();
    book.write("2026-04-08", "treated", json!({"tray":"cof-1","with":"mancozeb","safe_after_days":7}));
    let stops = |on: &str| stops_of(&book.on(on), "cof-1");
    let of = |on: &str, task: Task| stops(on).into_iter().find(|stop| stop.task == task);
    assert!(stops("2026-04-14").is_empty());
    // Over on the 15th: looked at first, then sent out.
    let order: Vec<Task> = stops(TODAY).iter().map(|stop| stop.task).collect();
    let at = |task: Task| order.iter().position(|one| *one == task).unwrap();
    assert!(at(Task::TreatmentOver) < at(Task::GoOut), "{order:?}");
    let gloved = |on: &str| of(on, Task::GoOut).unwrap().cautions().contains(&Caution::AfterSpraying);
    assert!(gloved(TODAY) && gloved("2026-04-21") && !gloved("2026-04-22"));
}

#[test]
fn the_printed_round_names_the_bench_and_asks_for_a_look_before_plants_go_out() {
    let home = Home::default().begun();
    for code in ["t1", "t2"] {
        let tray = format!("tray={code}");
        home.write(
            "plants_received",
            &[&tray, "species=coffee", "count=50", "from=opening", "form=bag", "container=bag 1 l", "place=North"],
        );
    }
    home.write("treated", &["tray=t1", "with=dimethoate", "safe_after_days=14"]);
    let walk = |words: &[&str]| home.done(words).split_whitespace().collect::<Vec<_>>().join(" ");
    let said = walk(&["walk"]);
    assert!(said.contains("Stay away from t2 (North): t1, treated with dimethoate"), "{said}");
    let said = walk(&["walk", "--lang", "es"]);
    assert!(said.contains("t2 (North): t1, tratada con dimethoate, está o estuvo en este banco"), "{said}");
    let said = home.done(&["walk", "--json"]);
    let away: serde_json::Value = serde_json::from_str(&said).unwrap();
    let both: Vec<_> = away["stay_away"].as_array().unwrap().iter().map(|one| one["tray"].clone()).collect();
    assert_eq!((both, away["stay_away"][1]["until"].clone()), (vec![json!("t1"), json!("t2")], json!("2026-04-29")));
}

#[test]
fn hands_in_a_running_wait_are_told_after_the_write_and_in_the_preview() {
    use outplant::desk::Remark;
    let home = Home::default().begun();
    for (code, place) in [("t1", "North"), ("t2", "North"), ("t3", "South")] {
        let (tray, place) = (format!("tray={code}"), format!("place={place}"));
        let plants = ["species=coffee", "count=50", "from=opening", "form=bag", "container=bag 1 l"];
        home.write("plants_received", &[&[tray.as_str(), place.as_str()][..], &plants].concat());
    }
    home.write("treated", &["tray=t1", "with=dimethoate", "safe_after_days=14"]);
    let told = |words: &[&str]| {
        let told = home.run(&[&["write"][..], words].concat());
        assert_eq!(told.code, 0, "{}", told.err);
        told.out + &told.err
    };
    for (kind, fields) in [
        ("counted", vec!["tray=t1", "standing=49"]),
        ("counted", vec!["tray=t2", "standing=49"]),
        ("culled", vec!["tray=t1", "count=1", "why=small"]),
        ("carried", vec!["tray=t3", "place=North"]),
        ("moved_on", vec!["from=t1", "to=t4", "count=5", "how=potted_on", "container=bag"]),
        ("plug_checked", vec!["tray=t1", "roots=holds"]),
        ("measured", vec!["tray=t1", "plants=[{\"height_cm\":20}]"]),
    ] {
        let said = told(&[&[kind][..], &fields].concat());
        let warned = said.lines().filter(|line| line.contains("while a waiting time runs there")).count();
        assert!(said.contains("dimethoate") && warned == 1, "{kind}: {said}");
    }
    let said = told(&["counted", "tray=t2", "standing=48", "--lang", "es"]);
    assert!(said.contains("Esto lleva las manos allí"), "{said}");
    // What is told is told to the form before it is written.
    let remark = Remark::HandsInWait { about: "t1".into(), why: Box::new(treated(&two_trays(), "cof-1", TODAY)) };
    assert!(!remark.is_asked());
    // Looked at from the path, or elsewhere: nothing.
    let plain = told(&["pest_seen", "tray=t1", "what=aphids", "share_pct=5"]);
    assert!(!plain.contains("waiting time runs there"), "{plain}");
}
