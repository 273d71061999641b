//! Worlds by hand in which somebody could be hurt: sprays and their waiting times, roots in the air, counts of a part.

use outplant::base::{BedName, Day, PlaceName};
use outplant::nursery::entry::subject::Subject;
use outplant::nursery::entry::types::GroundTask;
use outplant::nursery::entry::{GroundEntry, What};
use outplant::reckon::picture::{Gap, Picture, Rule};
use outplant::reckon::round::{Stop, Task, round};
use outplant::wording::{Lang, Wording};
use serde_json::json;

use crate::support::program::Home;
use crate::support::{Book, bed_species, criterion, day, fitting, pair, tray};

const TODAY: &str = "2026-04-15";

fn fits(book: &Book, on: &str) -> bool {
    pair(&book.on(on), "cof-1", "Upper 1").fits
}

fn stops(picture: &Picture) -> Vec<Stop> {
    let round = round(picture);
    round.stops.into_iter().chain(round.can_wait).collect()
}

fn stops_at(picture: &Picture, subject: &Subject) -> Vec<Task> {
    stops(picture).into_iter().filter(|stop| stop.subject == *subject).map(|stop| stop.task).collect()
}

fn tray_subject() -> Subject {
    Subject::Tray("cof-1".parse().unwrap())
}

#[test]
fn a_spray_without_a_waiting_time_holds_back_until_the_label_is_written() {
    let mut book = fitting();
    assert!(fits(&book, TODAY));
    book.write("2026-04-15", "treated", json!({"tray":"cof-1","with":"copper oxychloride"}));
    for on in [TODAY, "2026-04-30"] {
        let picture = book.on(on);
        let treated = criterion(&tray(&picture, "cof-1").criteria, Rule::Treated);
        assert_eq!((treated.met(), treated.blocks), (None, true), "{on}");
        assert!(matches!(&treated.gap(), Some(Gap::NoWaitingTime { with, .. }) if with == "copper oxychloride"));
        assert!(!tray(&picture, "cof-1").ready && !fits(&book, on), "{on}");
    }
    // The label says three days: written again with the same day and means it completes the first.
    book.write("2026-04-15", "treated", json!({"tray":"cof-1","with":"Copper oxychloride","safe_after_days":3}));
    let treated = |on: &str| criterion(&tray(&book.on(on), "cof-1").criteria, Rule::Treated).clone();
    assert_eq!((treated(TODAY).met(), treated(TODAY).expected), (Some(false), Some(day("2026-04-18"))));
    assert_eq!(treated("2026-04-18").met(), Some(true));
}

#[test]
fn a_spray_whose_label_says_no_wait_holds_back_on_its_own_day_alone() {
    let mut book = fitting();
    book.write("2026-04-15", "treated", json!({"tray":"cof-1","with":"soap","safe_after_days":0}));
    assert!(!fits(&book, TODAY));
    let mut book = fitting();
    book.write("2026-04-14", "treated", json!({"tray":"cof-1","with":"soap","safe_after_days":0}));
    assert!(fits(&book, TODAY));
}

#[test]
fn a_spray_of_years_ago_without_a_time_is_asked_about_and_one_entry_settles_it() {
    let mut book = fitting();
    book.write("2025-07-01", "treated", json!({"tray":"cof-1","with":"dimethoate"}));
    let picture = book.on(TODAY);
    assert!(!fits(&book, TODAY));
    assert_eq!(stops_at(&picture, &tray_subject()), [Task::ReadLabel]);
    book.write("2025-07-01", "treated", json!({"tray":"cof-1","with":"dimethoate","safe_after_days":14}));
    assert!(fits(&book, TODAY));
    assert!(!stops_at(&book.on(TODAY), &tray_subject()).contains(&Task::ReadLabel));
}

#[test]
fn of_two_sprays_the_longer_wait_leads_and_an_unknown_one_leads_both() {
    let mut book = fitting();
    book.write("2026-04-10", "treated", json!({"tray":"cof-1","with":"mancozeb","safe_after_days":21}));
    book.write("2026-04-14", "treated", json!({"tray":"cof-1","with":"soap","safe_after_days":1}));
    let expected = |book: &Book| criterion(&tray(&book.on(TODAY), "cof-1").criteria, Rule::Treated).expected;
    assert_eq!(expected(&book), Some(day("2026-05-01")));
    book.write("2026-04-15", "treated", json!({"tray":"cof-1","with":"something from town"}));
    assert_eq!(criterion(&tray(&book.on("2026-06-01"), "cof-1").criteria, Rule::Treated).met(), None);
}

#[test]
fn what_was_sprayed_on_its_bench_keeps_its_wait_when_it_is_carried_away() {
    let mut book = fitting();
    book.write("2026-04-14", "treated", json!({"place":"Half shade","with":"mancozeb","safe_after_days":7}));
    assert!(!fits(&book, TODAY));
    book.write("2026-04-15", "carried", json!({"tray":"cof-1","place":"Deep shade"}));
    assert!(!fits(&book, TODAY), "the plants were under the spray wherever they stand now");
    let treated = criterion(&tray(&book.on(TODAY), "cof-1").criteria, Rule::Treated).clone();
    assert_eq!(treated.expected, Some(day("2026-04-21")));
}

#[test]
fn plants_moved_on_from_a_sprayed_tray_bring_its_wait_along() {
    let mut book = fitting();
    book.write("2026-04-10", "treated", json!({"tray":"cof-1","with":"mancozeb"}));
    book.write("2026-04-09", "treated", json!({"place":"Half shade","with":"sulphur","safe_after_days":30}));
    book.write(
        "2026-04-12",
        "moved_on",
        json!({"from":"cof-1","to":"cof-9","count":20,"how":"potted_on","container":"bag"}),
    );
    let treated = |book: &Book| criterion(&tray(&book.on(TODAY), "cof-9").criteria, Rule::Treated).clone();
    assert_eq!((treated(&book).met(), treated(&book).blocks), (None, true));
    // Read late and written for the tray that was sprayed: its plants elsewhere know it too.
    book.write("2026-04-10", "treated", json!({"tray":"cof-1","with":"mancozeb","safe_after_days":2}));
    assert_eq!((treated(&book).met(), treated(&book).expected), (Some(false), Some(day("2026-05-09"))));
}

#[test]
fn nobody_is_sent_into_a_tray_a_place_or_a_bed_while_a_wait_runs() {
    let sprayed = |about: serde_json::Value| {
        let mut book = fitting();
        let mut body = json!({"with":"mancozeb","safe_after_days":7});
        body.as_object_mut().unwrap().extend(about.as_object().unwrap().clone());
        book.write("2026-04-14", "treated", body);
        book
    };
    // Long unseen: without the spray a count, a sample and more would be due.
    let late = "2026-04-20";
    assert!(!stops_at(&fitting().on("2026-05-20"), &tray_subject()).is_empty());
    for about in [json!({"tray":"cof-1"}), json!({"place":"Half shade"})] {
        let picture = sprayed(about.clone()).on(late);
        assert_eq!(stops_at(&picture, &tray_subject()), [], "{about}");
        assert_eq!(stops_at(&picture, &Subject::Place(PlaceName::new("Half shade").unwrap())), [], "{about}");
    }
    let bed = Subject::Bed(BedName::new("Upper 1").unwrap());
    // The bed was never weeded, and a ready tray waits for it.
    let mut book = fitting();
    book.entries.retain(
        |entry| !matches!(&entry.what, What::Ground(GroundEntry::Prepared(work)) if work.task == GroundTask::Weeded),
    );
    let wanted = |book: &Book, on: &str| stops_at(&book.on(on), &bed);
    assert_eq!(wanted(&book, TODAY), [Task::Weed]);
    book.write("2026-04-14", "treated", json!({"bed":"Upper 1","with":"lime","safe_after_days":4}));
    assert_eq!(wanted(&book, TODAY), []);
    assert!(
        bed_species(&book.on(TODAY), "Upper 1", "COA").criteria.iter().any(|c| c.rule() == Rule::Treated && c.blocks)
    );
    assert!(wanted(&book, "2026-04-18").contains(&Task::TreatmentOver));
}

#[test]
fn the_round_asks_for_the_label_of_a_bed_and_of_a_place_too() {
    let mut book = fitting();
    book.write("2026-04-14", "treated", json!({"bed":"Upper 1","with":"glyphosate"}));
    book.write("2026-04-14", "treated", json!({"place":"Half shade","with":"mancozeb"}));
    let asked: Vec<(Task, Subject)> =
        stops(&book.on(TODAY)).into_iter().map(|stop| (stop.task, stop.subject)).collect();
    for subject in
        [Subject::Bed(BedName::new("Upper 1").unwrap()), Subject::Place(PlaceName::new("Half shade").unwrap())]
    {
        assert!(asked.contains(&(Task::ReadLabel, subject.clone())), "{subject:?} in {asked:?}");
    }
    let _: Day = day(TODAY);
}

#[test]
fn the_printed_round_says_where_a_waiting_time_runs() {
    let home = Home::default().begun();
    home.write(
        "plants_received",
        &["tray=t1", "species=coffee", "count=50", "from=opening", "form=bag", "container=bag 1 l"],
    );
    home.write("treated", &["tray=t1", "with=dimethoate", "safe_after_days=14"]);
    let said = home.done(&["walk"]);
    assert!(said.contains("Stay away from t1") && said.contains("29 Apr 2026"), "{said}");
    let said = home.done(&["walk", "--on", "2026-04-29"]);
    assert!(!said.contains("Stay away"), "{said}");
}

fn of_bed(book: &Book, on: &str, rule: Rule) -> Option<outplant::reckon::picture::Criterion> {
    let picture = book.on(on);
    bed_species(&picture, "Upper 1", "COA").criteria.iter().find(|one| one.rule() == rule).cloned()
}

#[test]
fn after_a_herbicide_planting_waits_longer_than_people_and_an_unknown_time_holds_until_it_is_written() {
    let mut book = fitting();
    book.write("2026-04-10", "treated", json!({"bed":"Upper 1","with":"glyphosate","safe_after_days":1}));
    // People may go in from the 11th; how long before planting nobody wrote.
    assert_eq!(of_bed(&book, TODAY, Rule::Treated), None);
    let unknown = of_bed(&book, TODAY, Rule::PlantBack).unwrap();
    assert_eq!((unknown.met(), unknown.blocks), (None, true));
    assert!(matches!(unknown.gap(), Some(Gap::NoPlantBack { with, .. }) if with == "glyphosate"));
    assert!(!fits(&book, TODAY) && !fits(&book, "2026-04-22"));
    let bed = Subject::Bed(BedName::new("Upper 1").unwrap());
    assert_eq!(stops_at(&book.on(TODAY), &bed).iter().filter(|task| **task == Task::ReadLabel).count(), 1);
    // Its label asks for seven days: from the 17th.
    book.write("2026-04-10", "treated", json!({"bed":"Upper 1","with":"glyphosate","plant_after_days":7}));
    let known = of_bed(&book, TODAY, Rule::PlantBack).unwrap();
    assert_eq!((known.met(), known.expected), (Some(false), Some(day("2026-04-17"))));
    assert!(!fits(&book, "2026-04-16") && of_bed(&book, "2026-04-17", Rule::PlantBack).is_none());
    assert!(!stops_at(&book.on(TODAY), &bed).contains(&Task::ReadLabel));
    assert_eq!(of_bed(&book, TODAY, Rule::Treated), None, "what was written of people stays");
    // Copper kills no plants: nothing is asked but its waiting time.
    let mut copper = fitting();
    copper.write("2026-04-10", "treated", json!({"bed":"Upper 1","with":"copper","safe_after_days":1}));
    assert!(of_bed(&copper, TODAY, Rule::PlantBack).is_none() && fits(&copper, TODAY));
}

#[test]
fn the_label_of_a_herbicide_is_asked_for_once_with_both_times() {
    let mut book = fitting();
    book.write("2026-04-10", "treated", json!({"bed":"Upper 1","with":"glifosato"}));
    let picture = book.on(TODAY);
    let bed = Subject::Bed(BedName::new("Upper 1").unwrap());
    let asked: Vec<Stop> = stops(&picture).into_iter().filter(|stop| stop.subject == bed).collect();
    assert_eq!(asked.len(), 1, "nobody is sent in before: {asked:?}");
    let on = outplant::wording::round::RoundOn { day: picture.day, species: &picture.site.species };
    for (lang, words) in [(Lang::En, "how long before planting"), (Lang::Es, "cuánto antes de sembrar")] {
        let said = Wording::new(lang).round_reason(&asked[0].why, on);
        assert!(said.contains(words), "{said}");
    }
    book.write(
        "2026-04-10",
        "treated",
        json!({"bed":"Upper 1","with":"glifosato","safe_after_days":1,"plant_after_days":3}),
    );
    assert!(fits(&book, TODAY));
}

#[test]
fn of_a_wait_written_twice_for_one_treatment_the_longer_leads() {
    let mut book = fitting();
    for days in [30, 1] {
        book.write("2026-04-10", "treated", json!({"tray":"cof-1","with":"mancozeb","safe_after_days":days}));
    }
    let expected = |book: &Book| criterion(&tray(&book.on(TODAY), "cof-1").criteria, Rule::Treated).expected;
    assert_eq!(expected(&book), Some(day("2026-05-10")));
    // A later entry that says only the other time takes nothing back.
    book.write("2026-04-10", "treated", json!({"tray":"cof-1","with":"mancozeb","plant_after_days":3}));
    assert_eq!(expected(&book), Some(day("2026-05-10")));
    book.write("2026-04-10", "treated", json!({"tray":"cof-1","with":"Mancozeb","safe_after_days":40}));
    assert_eq!(expected(&book), Some(day("2026-05-20")));
    let mut at_place = fitting();
    for days in [30, 0] {
        at_place.write("2026-04-10", "treated", json!({"place":"Half shade","with":"sulphur","safe_after_days":days}));
    }
    assert_eq!(expected(&at_place), Some(day("2026-05-10")));
}

#[test]
fn of_a_herbicide_written_twice_on_a_bed_the_longer_times_lead() {
    let mut book = fitting();
    for days in [30, 0] {
        let body = json!({"bed":"Upper 1","with":"glyphosate","safe_after_days":days,"plant_after_days":days});
        book.write("2026-04-10", "treated", body);
    }
    for rule in [Rule::Treated, Rule::PlantBack] {
        let held = of_bed(&book, TODAY, rule).unwrap();
        assert_eq!((held.blocks, held.expected), (true, Some(day("2026-05-10"))), "{rule}");
    }
}

#[test]
fn plants_moved_on_the_day_of_a_spray_carry_its_wait_whichever_was_typed_first() {
    for how in ["merged", "pricked_out", "potted_on"] {
        let mut book = fitting();
        book.write(
            "2026-04-12",
            "moved_on",
            json!({"from":"cof-1","to":"cof-9","count":20,"how":how,"container":"bag"}),
        );
        book.write(
            "2026-04-12",
            "moved_on",
            json!({"from":"cof-9","to":"cof-10","count":5,"how":how,"container":"bag"}),
        );
        book.write("2026-04-12", "treated", json!({"tray":"cof-1","with":"mancozeb","safe_after_days":21}));
        let treated = |book: &Book, code: &str| criterion(&tray(&book.on(TODAY), code).criteria, Rule::Treated).clone();
        for code in ["cof-1", "cof-9", "cof-10"] {
            assert_eq!(treated(&book, code).expected, Some(day("2026-05-03")), "{how} {code}");
        }
        // What is sprayed a day later reached only those that stayed.
        book.write("2026-04-13", "treated", json!({"tray":"cof-1","with":"dimethoate","safe_after_days":60}));
        assert_eq!(treated(&book, "cof-9").expected, Some(day("2026-05-03")), "{how}");
    }
}

/// A nursery in a file with two trays of coffee from elsewhere and a bed.
fn with_trays_and_a_bed() -> Home {
    let home = Home::default().begun();
    for tray in ["tray=cof-1", "tray=cof-2"] {
        let plants = ["species=coffee", "count=40", "from=bought", "form=bag", "age_days=300", "happened=2026-04-01"];
        home.write("plants_received", &[&[tray][..], &plants].concat());
    }
    let plan = "plan=[{\"species\":\"COA\",\"pattern\":\"square\",\"row_m\":2,\"in_row_m\":2}]";
    home.write("bed_set", &["bed=Upper 1", "field=Upper", "length_m=20", "width_m=6", plan]);
    home
}

#[test]
fn plants_given_away_while_a_wait_runs_or_sick_are_written_with_a_caution() {
    let home = with_trays_and_a_bed();
    let given = |tray: &str, lang: &str| {
        let told = home.run(&["write", "given_out", tray, "count=3", "to=a neighbour", "--lang", lang, "--yes"]);
        assert_eq!(told.code, 0, "{}", told.err);
        told.out + &told.err
    };
    assert!(!given("tray=cof-1", "en").contains("take care"));
    home.write("treated", &["tray=cof-1", "with=dimethoate", "safe_after_days=14"]);
    let treated = given("tray=cof-1", "en");
    assert!(
        treated.contains("take care: nobody should get plants of cof-1 yet") && treated.contains("dimethoate"),
        "{treated}"
    );
    home.write("pest_seen", &["tray=cof-2", "what=swollen shoot virus", "share_pct=2"]);
    let sick = given("tray=cof-2", "es");
    assert!(sick.contains("cuidado: todavía no se entregan plantas de cof-2") && sick.contains("virus"), "{sick}");
    assert_eq!(home.done(&["export"]).matches("\"kind\":\"given_out\"").count(), 3, "told, and written all the same");
}

#[test]
fn a_sprayed_tray_planted_into_a_sprayed_bed_is_told_both_waits() {
    let home = with_trays_and_a_bed();
    home.write("treated", &["tray=cof-1", "with=dimethoate", "safe_after_days=14"]);
    home.write("treated", &["bed=Upper 1", "with=mancozeb", "safe_after_days=7"]);
    let told = home.done(&["write", "outplanted", "tray=cof-1", "bed=Upper 1", "count=4"]);
    assert!(told.contains("dimethoate") && told.contains("mancozeb"), "{told}");
}

#[test]
fn what_may_kill_plants_holds_a_tray_it_reached_until_its_time_is_written_or_they_are_counted_alive() {
    let on_tray = json!({"tray":"cof-1","with":"a blue powder","safe_after_days":1});
    let on_bench = json!({"place":"Half shade","with":"something from town","safe_after_days":1});
    for treated in [on_tray, on_bench] {
        let mut book = fitting();
        book.write("2026-04-10", "treated", treated.clone());
        let held = |book: &Book, on: &str| {
            let picture = book.on(on);
            tray(&picture, "cof-1").criteria.iter().find(|one| one.rule() == Rule::PlantBack).cloned()
        };
        let asked = held(&book, TODAY).unwrap();
        assert_eq!((asked.met(), asked.blocks), (None, true), "{treated}");
        assert!(!fits(&book, TODAY), "{treated}");
        for (lang, words) in
            [(Lang::En, "0 where it is nothing against weeds"), (Lang::Es, "0 si no es contra malezas")]
        {
            let said = Wording::new(lang).reason(&asked, outplant::wording::verdict::About::Tray);
            assert!(said.contains(words), "{said}");
        }
        let of_it = |stop: &Stop| stop.task == Task::ReadLabel;
        assert!(stops(&book.on(TODAY)).iter().any(of_it), "{treated}");
        let mut written = treated.clone();
        written["plant_after_days"] = json!(14);
        book.write("2026-04-10", "treated", written);
        assert_eq!(held(&book, TODAY).unwrap().expected, Some(day("2026-04-24")), "{treated}");
        assert!(held(&book, "2026-04-24").is_none(), "{treated}");
        // Nobody has the label: what lives four weeks later was not hurt.
        let mut counted = fitting();
        counted.write("2026-04-10", "treated", treated.clone());
        counted.write("2026-05-07", "counted", json!({"tray":"cof-1","standing":48}));
        assert!(held(&counted, "2026-05-10").is_some(), "{treated}: 27 days");
        counted.write("2026-05-08", "counted", json!({"tray":"cof-1","standing":48}));
        assert!(held(&counted, "2026-05-10").is_none(), "{treated}");
    }
    // What is known to let plants live is asked nothing.
    let mut book = fitting();
    book.write("2026-04-10", "treated", json!({"tray":"cof-1","with":"mancozeb","safe_after_days":1}));
    assert!(fits(&book, TODAY));
}

#[test]
fn a_count_with_more_dead_than_alive_holds_the_tray_until_somebody_says_of_what_or_counts_again() {
    let held = |book: &Book, on: &str| criterion(&tray(&book.on(on), "cof-1").criteria, Rule::Pest).clone();
    for look in [json!({"tray":"cof-1","standing":20}), json!({"tray":"cof-1","standing":20,"dead":28})] {
        let mut book = fitting();
        book.write("2026-04-14", "counted", look.clone());
        let asked = held(&book, TODAY);
        assert_eq!((asked.met(), asked.blocks, tray(&book.on(TODAY), "cof-1").ready), (None, true, false), "{look}");
        for (lang, words) in
            [(Lang::En, "30 were dead or gone and 20 alive"), (Lang::Es, "había 30 muertas o perdidas y 20 vivas")]
        {
            let said = Wording::new(lang).reason(&asked, outplant::wording::verdict::About::Tray);
            assert!(said.contains(words), "{said}");
        }
        let mut again = fitting();
        again.write("2026-04-14", "counted", look.clone());
        again.write("2026-04-28", "counted", json!({"tray":"cof-1","standing":19}));
        assert!(held(&again, "2026-04-27").blocks && !held(&again, "2026-04-28").blocks, "{look}");
        book.write("2026-04-15", "pest_seen", json!({"tray":"cof-1","what":"none, a goat was in","share_pct":0}));
        assert!(!held(&book, TODAY).blocks, "{look}");
    }
    // What is written as lost has its cause; a few less is the usual.
    let mut book = fitting();
    book.write("2026-04-14", "lost", json!({"tray":"cof-1","count":28,"cause":"goat"}));
    book.write("2026-04-14", "counted", json!({"tray":"cof-1","standing":20}));
    assert!(!held(&book, TODAY).blocks);
    let mut book = fitting();
    book.write("2026-04-14", "counted", json!({"tray":"cof-1","standing":40}));
    assert!(!held(&book, TODAY).blocks);
}

#[test]
fn more_plants_going_out_than_were_good_enough_are_told() {
    let home = Home::default().begun();
    let write = |day: &str, kind: &str, fields: &[&str]| {
        let happened = format!("happened={day}");
        home.write(kind, &[fields, &[happened.as_str()][..]].concat());
    };
    write("2025-01-01", "season_set", &["rains=[{\"from\":\"03-01\",\"until\":\"06-15\"}]"]);
    write("2025-01-01", "place_set", &["place=Half shade", "order=1", "shade_pct=45"]);
    write("2025-01-01", "container_set", &["container=bag", "volume_ml=1000", "depth_cm=23"]);
    let seed = ["species=COA", "source=row", "collected=2025-01-01", "seeds=1000", "kept=in_parchment"];
    write("2025-01-01", "lot_received", &[&["lot=cof-L1"][..], &seed].concat());
    let sown = ["tray=cof-1", "lot=cof-L1", "seeds=60", "container=bag", "place=Half shade"];
    write("2025-06-01", "sown", &sown);
    write("2026-04-10", "counted", &["tray=cof-1", "standing=48"]);
    // Half of the sample is tall enough.
    let plant =
        |i: usize| format!("{{\"height_cm\":{},\"collar_mm\":4.5,\"leaf_pairs\":7}}", if i < 10 { 26 } else { 9 });
    let plants: Vec<String> = (0..20).map(plant).collect();
    write("2026-04-10", "measured", &["tray=cof-1", &format!("plants=[{}]", plants.join(","))]);
    write("2026-04-10", "plug_checked", &["tray=cof-1", "roots=holds"]);
    let plan = "plan=[{\"species\":\"COA\",\"pattern\":\"square\",\"row_m\":2,\"in_row_m\":2}]";
    write("2025-01-01", "bed_set", &["bed=Upper 1", "field=Upper", "length_m=20", "width_m=6", plan]);
    write("2026-04-01", "light_read", &["bed=Upper 1", "light_share=0.6"]);
    write("2026-04-01", "soil_checked", &["bed=Upper 1", "resistance_mpa=1.2", "depth_cm=30", "wet=yes"]);
    for task in ["cleared", "holes", "weeded", "mulched"] {
        write("2026-04-05", "prepared", &["bed=Upper 1", &format!("task={task}")]);
    }
    for on in ["2026-04-13", "2026-04-14", "2026-04-15"] {
        write(on, "weather", &["rain_mm=10"]);
    }
    let out = |count: &str, lang: &str| {
        home.done(&["write", "outplanted", "tray=cof-1", "bed=Upper 1", count, "--dry-run", "--lang", lang])
    };
    assert!(
        out("count=40", "en").contains("40 go out, and by its sample about 24 were good enough"),
        "{}",
        out("count=40", "en")
    );
    assert!(out("count=40", "es").contains("salen 40, y según su muestra unas 24 servían"));
    assert!(!out("count=24", "en").contains("good enough"), "{}", out("count=24", "en"));
}

#[test]
fn notes_of_a_sheet_that_name_a_sickness_or_a_spray_ask_for_its_line_and_none_is_made_up() {
    let home = Home::default().begun();
    let sheet = home.file("trays.csv");
    let text = "Tray,Species,How many,Bag,Bench,Notes\n\
        k1,coffee,40,bag,North,some with witches' broom\n\
        k2,coffee,40,bag,North,sprayed with mancozeb last week\n\
        k3,coffee,40,bag,North,pulgones en las puntas\n\
        k4,coffee,40,bag,North,from the hill\n";
    std::fs::write(&sheet, text).unwrap();
    let file = sheet.to_str().unwrap();
    let said = home.done(&["import", file, "--as", "trays", "--dry-run"]);
    let said_es = home.done(&["import", file, "--as", "trays", "--dry-run", "--lang", "es"]);
    let json = home.json(&["import", file, "--as", "trays"]);
    for (tray, line) in [("k1", "pest_seen tray=k1"), ("k2", "treated tray=k2"), ("k3", "pest_seen tray=k3")] {
        assert!(said.contains(&format!("outplant write {line}")), "{tray}: {said}");
    }
    assert!(!said.contains("tray=k4") && !said.contains("treated tray=k1"), "{said}");
    let said_es = said_es.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(said_es.contains("nombran una plaga o enfermedad"), "{said_es}");
    let asked: Vec<&str> = json["unknown"].as_array().unwrap().iter().filter_map(|one| one["what"].as_str()).collect();
    assert_eq!(asked.iter().filter(|what| **what == "noted_sickness").count(), 2, "{asked:?}");
    assert_eq!(asked.iter().filter(|what| **what == "noted_use").count(), 1, "{asked:?}");
    let export = home.done(&["export"]);
    assert!(!export.contains("pest_seen") && !export.contains("\"treated\""), "nothing is made up");
}

#[test]
fn a_sickness_named_in_a_note_is_told_to_hold_nothing_back_and_one_named_in_a_loss_that_it_counts() {
    let home = with_trays_and_a_bed();
    let told = |words: &[&str]| home.done(&[&["write"][..], words].concat());
    assert!(told(&["noted", "about=cof-1", "text=mosaic on two of them"]).contains("this line holds no plants back"));
    let culled = told(&["culled", "tray=cof-1", "count=2", "why=swollen shoot virus"]);
    assert!(culled.contains("counts as seen in cof-1 and holds it back"), "{culled}");
    let again = told(&["lost", "tray=cof-1", "count=2", "cause=damping-off"]);
    assert!(!again.contains("counts as seen"), "it is sick already: {again}");
    assert!(told(&["noted", "about=cof-1", "text=sprayed it with copper"]).contains("makes nobody wait"));
    home.write("pest_seen", &["tray=cof-1", "what=swollen shoot virus", "share_pct=10"]);
    let culled = told(&["culled", "tray=cof-1", "count=3", "why=swollen shoot virus"]);
    assert!(!culled.contains("holds no plants back"), "{culled}");
    assert!(told(&["pest_seen", "tray=cof-2", "what=yellow leaves"]).contains("yes or no"));
    assert!(!told(&["pest_seen", "tray=cof-2", "what=yellow leaves", "spreads=no"]).contains("yes or no"));
    assert!(!told(&["noted", "about=cof-1", "text=moved the hose"]).contains("take care"));
    let asked = |told: String| told.contains("time before planting is written too");
    assert!(asked(told(&["treated", "tray=cof-2", "with=XK-42", "safe_after_days=1"])));
    assert!(!asked(told(&["treated", "tray=cof-2", "with=XK-42", "safe_after_days=1", "plant_after_days=0"])));
    assert!(!asked(told(&["treated", "tray=cof-2", "with=mancozeb", "safe_after_days=1"])));
    let weeds = told(&["treated", "bed=Upper 1", "with=glyphosate", "safe_after_days=2"]);
    assert!(weeds.contains("kills weeds and what is planted into it") && !weeds.contains("0 where"), "{weeds}");
}
