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
    for (lang, bench) in [(Lang::En, "on this bench"), (Lang::Es, "en esta mesa")] {
        let said = Wording::new(lang).reason(&beside, About::Tray);
        assert!(said.contains("cof-1") && said.contains("mancozeb") && said.contains(bench), "{said}");
    }
    assert!(!pair(&book.on(late), "cof-2", "Upper 1").fits, "somebody would fetch it from there");
    assert!(!stops_of(&book.on("2026-05-09"), "cof-2").is_empty());
    // Carried off it takes along what drifted onto it; a tray that stood on another bench has none of it.
    let mut away = two_trays();
    away.write("2026-05-01", "carried", json!({"tray":"cof-2","place":"Deep shade"}));
    away.write("2026-05-02", "treated", json!({"tray":"cof-1","with":"mancozeb","safe_after_days":7}));
    assert!(treated(&away, "cof-2", late).met() == Some(true));
    book.write("2026-05-03", "carried", json!({"tray":"cof-2","place":"Deep shade"}));
    let drifted = treated(&book, "cof-2", late);
    assert_eq!((drifted.met(), drifted.blocks, drifted.expected), (Some(false), true, Some(day("2026-05-09"))));
    for (lang, stood) in [(Lang::En, "stood beside cof-1"), (Lang::Es, "estaban junto a cof-1")] {
        assert!(Wording::new(lang).reason(&drifted, About::Tray).contains(stood));
    }
    assert!(!pair(&book.on(late), "cof-2", "Upper 1").fits);
    assert!(treated(&book, "cof-2", "2026-05-09").met() == Some(true));
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
fn what_was_sprayed_on_a_bench_goes_with_its_plants_into_the_bed() {
    let open_in = |book: &Book, on: &str| {
        let picture = book.on(on);
        let bed = &picture.beds[&"Upper 1".parse::<outplant::base::BedName>().unwrap()];
        let asked = bed.species[0].criteria.iter().find(|one| one.rule() == Rule::Treated);
        asked.is_none_or(|asked| !asked.blocks)
    };
    let mut book = two_trays();
    book.write("2026-04-10", "treated", json!({"place":"Half shade","with":"mancozeb","safe_after_days":9}));
    book.write("2026-04-14", "outplanted", json!({"tray":"cof-1","bed":"Upper 1","count":4}));
    assert!(!open_in(&book, TODAY) && !open_in(&book, "2026-04-18") && open_in(&book, "2026-04-19"));
    // The label was read later: the longer time holds.
    book.write("2026-04-10", "treated", json!({"place":"Half shade","with":"mancozeb","safe_after_days":12}));
    assert!(!open_in(&book, "2026-04-21") && open_in(&book, "2026-04-22"));
    // Planted before the bench was sprayed.
    let mut book = two_trays();
    book.write("2026-04-09", "outplanted", json!({"tray":"cof-1","bed":"Upper 1","count":4}));
    book.write("2026-04-10", "treated", json!({"place":"Half shade","with":"mancozeb","safe_after_days":9}));
    assert!(open_in(&book, TODAY));
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
    for with in ["soap", "neem", "jabón"] {
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
    assert!(said.contains("t2 (North): t1, tratada con dimethoate, está o estuvo en esta mesa"), "{said}");
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

#[test]
fn plants_wetted_with_weed_killer_stay_until_those_alive_are_counted_four_weeks_later_whatever_its_label_says() {
    let plant_back = |book: &Book, on: &str| {
        let picture = book.on(on);
        tray(&picture, "cof-1").criteria.iter().find(|one| one.rule() == Rule::PlantBack).cloned()
    };
    let on_tray = |with: &str| json!({"tray":"cof-1","with":with,"safe_after_days":0,"plant_after_days":0});
    let on_bench = |with: &str| json!({"place":"Half shade","with":with,"safe_after_days":0,"plant_after_days":0});
    for treated in [on_tray("glyphosate"), on_bench("glifosato al 2 %"), on_tray("mata monte"), on_bench("2,4-D")] {
        let mut book = fitting();
        book.write("2026-04-14", "treated", treated.clone());
        let asked = plant_back(&book, TODAY).unwrap();
        assert_eq!((asked.met(), asked.blocks, asked.expected), (None, true, Some(day("2026-05-12"))), "{treated}");
        assert!(!pair(&book.on(TODAY), "cof-1", "Upper 1").fits, "{treated}");
        for (lang, words) in [(Lang::En, "shows only after one to three weeks"), (Lang::Es, "de una a tres semanas")] {
            let said = Wording::new(lang).reason(&asked, About::Tray);
            assert!(said.contains(words), "{said}");
        }
        assert!(!stops_of(&book.on(TODAY), "cof-1").iter().any(|stop| stop.task == Task::ReadLabel), "{treated}");
        // 27 days later a count tells nothing yet.
        book.write("2026-05-11", "counted", json!({"tray":"cof-1","standing":48}));
        assert!(plant_back(&book, "2026-05-20").is_some(), "{treated}");
        book.write("2026-05-12", "counted", json!({"tray":"cof-1","standing":48}));
        assert!(plant_back(&book, "2026-05-20").is_none(), "{treated}");
    }
    // Of what nobody knows the written time still leads, and what lets plants live holds none.
    for with in ["something from town", "copper oxychloride", "fumigado con cobre", "weeds pulled by hand"] {
        let mut book = fitting();
        book.write("2026-04-14", "treated", on_tray(with));
        assert!(plant_back(&book, TODAY).is_none(), "{with}");
    }
    // Sprayed before they came to the bench, nothing wetted them.
    let mut book = fitting();
    book.write("2026-02-01", "treated", on_bench("glyphosate"));
    assert!(plant_back(&book, TODAY).is_none());
}

#[test]
fn writing_a_weed_killer_over_plants_tells_that_they_stay() {
    let home = Home::default().begun();
    let plants = ["species=coffee", "count=50", "from=opening", "form=bag", "container=bag 1 l", "place=North"];
    home.write("plants_received", &[&["tray=t1"][..], &plants].concat());
    for (lang, words) in [("en", "those alive are counted, 28 days later"), ("es", "contar las vivas, 28 días después")]
    {
        let treated = ["treated", "tray=t1", "with=glyphosate", "safe_after_days=1", "plant_after_days=0"];
        let told = home.run(&[&["write"][..], &treated, &["--lang", lang, "--dry-run"]].concat());
        assert!((told.out.clone() + &told.err).contains(words), "{} {}", told.out, told.err);
    }
}

#[test]
fn trays_put_on_ground_in_which_a_weed_killer_lies_ask_for_care_and_none_is_sent_there() {
    let plant_back = |book: &Book, on: &str| {
        let picture = book.on(on);
        tray(&picture, "cof-1").criteria.iter().find(|one| one.rule() == Rule::PlantBack).cloned()
    };
    let carried_after = |with: &str| {
        let mut book = fitting();
        book.write("2025-01-01", "place_set", json!({"place":"Line","order":3,"shade_pct":45}));
        book.write("2026-04-01", "treated", json!({"place":"Line","with":with,"safe_after_days":1}));
        book.write("2026-04-12", "carried", json!({"tray":"cof-1","place":"Line"}));
        book
    };
    for with in ["diuron", "something from town"] {
        let mut book = carried_after(with);
        let asked = plant_back(&book, TODAY).unwrap();
        assert!(asked.warns && !asked.blocks && pair(&book.on(TODAY), "cof-1", "Upper 1").fits, "{with}");
        for (lang, words) in [(Lang::En, "it may lie in its ground"), (Lang::Es, "puede quedar en su tierra")] {
            let said = Wording::new(lang).reason(&asked, About::Tray);
            assert!(said.contains(words) && said.contains(with), "{said}");
        }
        book.write("2026-05-10", "counted", json!({"tray":"cof-1","standing":48}));
        assert!(plant_back(&book, "2026-05-11").is_none(), "{with}: alive four weeks later");
    }
    for with in ["glyphosate", "copper oxychloride", "jabón"] {
        assert!(plant_back(&carried_after(with), TODAY).is_none(), "{with}");
    }
    // Soft in deep shade, and the only brighter bench is such a one.
    let to_line = |with: &str| {
        let mut book = crate::support::small_nursery();
        crate::support::coffee_in_deep_shade(&mut book, "cof-1", "2025-06-01", "2025-09-10");
        book.write("2025-01-01", "place_set", json!({"place":"Line","order":3,"shade_pct":50}));
        book.write("2026-02-01", "treated", json!({"place":"Line","with":with,"safe_after_days":1}));
        let round = round(&book.on("2026-02-10"));
        let all: Vec<Stop> = round.stops.into_iter().chain(round.can_wait).collect();
        all.iter().any(|stop| stop.task == Task::BeginHardening && format!("{:?}", stop.why).contains("Line"))
    };
    assert!(to_line("mancozeb") && !to_line("diuron"));
}

#[test]
fn what_may_have_no_label_is_asked_so_and_what_is_strewn_has_not_to_dry() {
    for (with, lang, words) in [
        ("soap water", Lang::En, "0 where it has no label"),
        ("wood ash", Lang::En, "0 where it has no label"),
        ("neem", Lang::En, "0 where it has no label"),
        ("garlic", Lang::En, "0 where it has no label"),
        ("trichoderma", Lang::Es, "0 si no tiene etiqueta"),
    ] {
        let mut book = two_trays();
        book.write("2026-04-14", "treated", json!({"tray":"cof-1","with":with}));
        let wording = Wording::new(lang);
        let said = wording.reason(&treated(&book, "cof-1", TODAY), About::Tray);
        assert!(said.contains(words), "{with}: {said}");
        let stops = stops_of(&book.on(TODAY), "cof-1");
        let label = stops.iter().find(|stop| stop.task == Task::ReadLabel).unwrap();
        let picture = book.on(TODAY);
        let on = outplant::wording::round::RoundOn { day: picture.day, species: &picture.site.species };
        assert!(wording.round_reason(&label.why, on).contains(words), "{with}");
    }
    // What is bought has one.
    let mut book = two_trays();
    book.write("2026-04-14", "treated", json!({"tray":"cof-1","with":"dimethoate"}));
    assert!(!Wording::new(Lang::En).reason(&treated(&book, "cof-1", TODAY), About::Tray).contains("no label"));
    for with in ["ash", "urea", "sulphur dust"] {
        let mut book = two_trays();
        book.write(TODAY, "treated", json!({"tray":"cof-1","with":with,"safe_after_days":0}));
        let said = Wording::new(Lang::En).reason(&treated(&book, "cof-1", TODAY), About::Tray);
        assert!(said.contains("nobody works here with hands on that day") && !said.contains("dried"), "{said}");
    }
}

#[test]
fn a_place_answers_why_with_what_stands_there_its_light_and_its_waits() {
    let home = Home::default().begun();
    home.write("place_set", &["place=North bench", "order=1", "shade_pct=50", "holds_trays=6"]);
    let plants = ["species=coffee", "count=50", "from=opening", "form=bag", "container=bag 1 l", "place=North bench"];
    home.write("plants_received", &[&["tray=t1"][..], &plants].concat());
    let said = home.done(&["why", "north bench"]);
    for words in ["Place North bench", "1 of 6 trays that it holds", "50 % light, by its shade", "t1  arabica coffee"] {
        assert!(said.contains(words), "{words}: {said}");
    }
    home.write("treated", &["place=North bench", "with=dimethoate", "safe_after_days=14"]);
    let said = home.done(&["why", "place", "North bench", "--lang", "es"]);
    assert!(said.contains("esta mesa se trató con dimethoate") && said.contains("1 de 6 bandejas"), "{said}");
    let answer: serde_json::Value =
        serde_json::from_str(&home.done(&["why", "place", "North bench", "--json"])).unwrap();
    let schema: serde_json::Value = serde_json::from_str(include_str!("../../docs/schema/why.json")).unwrap();
    assert_eq!(crate::support::schema::faults(&schema, &answer), Vec::<String>::new());
    assert_eq!(answer["place"]["trays"][0]["tray"], json!("t1"));
    let unknown = home.run(&["why", "place", "North bensh"]);
    assert!(unknown.code == 1 && unknown.err.contains("nearest: North bench"), "{}", unknown.err);
}

#[test]
fn a_tray_put_down_on_a_sprayed_bench_and_carried_off_is_taken_with_gloves_until_the_benchs_time_is_over() {
    let mut book = two_trays();
    book.write("2026-04-10", "treated", json!({"place":"Corner","with":"mancozeb","safe_after_days":9}));
    book.write("2026-04-11", "carried", json!({"tray":"cof-1","place":"Corner"}));
    book.write("2026-04-12", "carried", json!({"tray":"cof-1","place":"Half shade"}));
    let care = |on: &str| (treated(&book, "cof-1", on).blocks, treated(&book, "cof-1", on).warns);
    assert_eq!([care(TODAY), care("2026-04-18"), care("2026-04-19")], [(false, true), (false, true), (false, false)]);
    for (lang, words) in [(Lang::En, "put down at Corner after it was treated"), (Lang::Es, "se pusieron en Corner")] {
        let said = Wording::new(lang).reason(&treated(&book, "cof-1", TODAY), About::Tray);
        assert!(said.contains(words) && said.contains("mancozeb"), "{said}");
    }
    let none = treated(&book, "cof-2", TODAY);
    assert!(!none.blocks && !none.warns, "its neighbour stood there never");
    let mut unknown = two_trays();
    unknown.write("2026-04-10", "treated", json!({"place":"Corner","with":"dimethoate"}));
    unknown.write("2026-04-11", "carried", json!({"tray":"cof-1","place":"Corner"}));
    unknown.write("2026-04-12", "carried", json!({"tray":"cof-1","place":"Half shade"}));
    let asked = treated(&unknown, "cof-1", TODAY);
    assert!(asked.warns && Wording::new(Lang::En).reason(&asked, About::Tray).contains("Read the label"));
}

#[test]
fn who_sows_brings_plants_or_reads_the_light_in_a_running_wait_is_told_so() {
    let home = Home::default().begun();
    let plan = r#"plan=[{"species":"coffee","pattern":"square","row_m":2,"in_row_m":2}]"#;
    home.write("bed_set", &["bed=Upper 1", "field=Upper", "length_m=20", "width_m=6", plan, "happened=2026-03-01"]);
    let lot = ["lot=cof-L1", "species=coffee", "source=row", "seeds=500", "kept=in_parchment", "collected=2026-03-01"];
    home.write("lot_received", &lot);
    home.write("treated", &["place=North", "with=dimethoate", "safe_after_days=14"]);
    home.write("treated", &["bed=Upper 1", "with=dimethoate", "safe_after_days=14", "plant_after_days=0"]);
    for words in [
        vec!["sown", "tray=t1", "lot=cof-L1", "seeds=20", "container=bag", "place=North"],
        vec!["plants_received", "tray=t2", "species=coffee", "count=9", "from=bought", "form=bag", "place=North"],
        vec!["light_read", "bed=Upper 1", "light_share=0.6"],
        vec!["light_read", "place=North", "light_share=0.6"],
    ] {
        let ended = home.run(&[&["write", "--yes"][..], &words].concat());
        let said = ended.out + &ended.err;
        assert!(ended.code == 0 && said.contains("this takes hands into"), "{words:?}: {said}");
    }
    let elsewhere = ["write", "sown", "tray=t3", "lot=cof-L1", "seeds=20", "container=bag", "place=South"];
    assert!(!home.done(&elsewhere).contains("takes hands"));
}

#[test]
fn a_sprayed_tray_that_was_carried_to_a_bench_opens_it_again_when_it_is_carried_off() {
    let home = Home::default().begun();
    for (place, order) in [("Bench 3", "order=1"), ("Bench 4", "order=2")] {
        home.write("place_set", &[&format!("place={place}"), order, "shade_pct=50"]);
    }
    for tray in ["c1", "c2", "c3", "c4", "c5"] {
        let (code, place) = (format!("tray={tray}"), if tray == "c1" { "place=Bench 4" } else { "place=Bench 3" });
        let came = ["species=coffee", "count=46", "from=opening", "form=bag", "container=bag", place];
        home.write("plants_received", &[&[&code[..]], &came[..], &["happened=2026-01-01"]].concat());
    }
    home.write("treated", &["tray=c1", "with=copper", "safe_after_days=7", "happened=2026-04-13"]);
    let ready = |lang: &str| home.done(&["ready", "--lang", lang]).replace('\n', " ").replace("  ", "");
    assert!(!ready("en").contains("opens the bench"));
    home.write("carried", &["tray=c1", "place=Bench 3", "happened=2026-04-14"]);
    for (lang, said) in [("en", "it opens the bench"), ("es", "la mesa queda libre")] {
        assert_eq!(ready(lang).matches(said).count(), 1, "{}", ready(lang));
    }
    let closed = |tray: &str| home.done(&["why", "tray", tray]).contains("nobody works");
    assert!(closed("c2"));
    home.write("carried", &["tray=c1", "place=Bench 4", "happened=2026-04-14"]);
    assert!(!closed("c2") && !ready("en").contains("opens the bench"));
    // Treated among them it closes the bench wherever it goes: a corner of its own spares the others.
    home.write("treated", &["tray=c2", "with=copper", "safe_after_days=7", "happened=2026-04-14"]);
    for (lang, said) in [("en", "3 trays wait for c2"), ("es", "3 bandejas esperan por c2")] {
        assert_eq!(ready(lang).matches(said).count(), 1, "{}", ready(lang));
    }
}
