//! The books of a bed, in hand-worked cases and over any order of entries.

use proptest::prelude::*;
use serde_json::{Value, json};

use super::bed::BedStory;
use crate::base::SpeciesKey;
use crate::reckon::picture::DoubtKind;
use crate::reckon::test_book::TestBook;

const ON: &str = "2027-01-01";

fn page() -> TestBook {
    let mut page = TestBook::default();
    let coffee = json!({"species":"coffee","pattern":"rectangle","row_m":2.5,"in_row_m":2});
    let bed = json!({"bed":"Upper terrace","field":"Old maize","length_m":30,"width_m":12,"plan":[coffee]});
    page.write("2026-01-05", "bed_set", bed);
    for (tray, species) in [("cof-001", "coffee"), ("cof-002", "coffee"), ("avo-001", "avocado")] {
        let received = json!({"tray":tray,"species":species,"count":500,"from":"bought","form":"bag"});
        page.write("2026-01-06", "plants_received", received);
    }
    page
}

fn bed(mut fields: Value) -> Value {
    fields["bed"] = json!("Upper terrace");
    fields
}

fn out(page: &mut TestBook, on: &str, tray: &str, count: u32) {
    page.write(on, "outplanted", bed(json!({"tray":tray,"count":count})));
}

fn survived(page: &mut TestBook, on: &str, fields: Value) {
    let mut fields = bed(fields);
    fields["species"] = json!("coffee");
    page.write(on, "survival_counted", fields);
}

/// Living and dead of each cohort, after a look at the balance.
fn cohorts(page: &TestBook) -> Vec<(u32, u32)> {
    let story = story(page);
    story.cohorts.iter().map(|cohort| (cohort.living, cohort.dead)).collect()
}

fn story(page: &TestBook) -> BedStory {
    let (story, _) = page.story(ON);
    assert_eq!(story.balance(), 0);
    story
}

fn kinds(page: &TestBook) -> Vec<DoubtKind> {
    story(page).doubts.into_iter().map(|doubt| doubt.kind).collect()
}

fn two_cohorts() -> TestBook {
    let mut page = page();
    out(&mut page, "2026-03-01", "cof-001", 30);
    out(&mut page, "2026-03-05", "cof-002", 10);
    page
}

#[test]
fn plants_live_until_somebody_says_otherwise() {
    let page = two_cohorts();
    let story = story(&page);
    assert_eq!(cohorts(&page), [(30, 0), (10, 0)]);
    assert_eq!(story.living_of(&SpeciesKey::new("COA")), 40);
    assert!(story.doubts.is_empty());
    assert_eq!(story.cohorts[0].species, Some(SpeciesKey::new("COA")));
}

#[test]
fn a_count_of_all_spreads_the_deaths_and_a_higher_one_takes_them_back() {
    let mut page = two_cohorts();
    survived(&mut page, "2026-04-01", json!({"alive":34,"dead":6}));
    // 6 of 40: 4.5 and 1.5; the same remainder, so the older one takes the odd plant.
    assert_eq!(cohorts(&page), [(25, 5), (9, 1)]);
    survived(&mut page, "2026-04-20", json!({"alive":37,"dead":3}));
    // 3 of the 6 dead come back: 2.5 and 0.5.
    assert_eq!(cohorts(&page), [(28, 2), (9, 1)]);
    let (bed, species) = (story(&page).name, SpeciesKey::new("COA"));
    assert_eq!(kinds(&page), [DoubtKind::AliveAgain { bed, species, alive: 37, lived: 34 }]);
    survived(&mut page, "2026-05-01", json!({"alive":45,"dead":0}));
    assert_eq!(cohorts(&page), [(30, 0), (15, 0)]);
    let bed = story(&page).name;
    let kind =
        DoubtKind::MoreAliveThanPlanted { bed, species: SpeciesKey::new("COA"), alive: 45, dead: 0, planted: 40 };
    assert_eq!((kinds(&page), story(&page).unexplained), (vec![kind], 5));
}

#[test]
fn a_count_of_one_tray_or_day_leaves_the_others_alone() {
    let mut page = two_cohorts();
    survived(&mut page, "2026-04-01", json!({"alive":8,"dead":2,"tray":"cof-002"}));
    assert_eq!(cohorts(&page), [(30, 0), (8, 2)]);
    survived(&mut page, "2026-04-02", json!({"alive":21,"dead":9,"outplanted_on":"2026-03-01"}));
    assert_eq!(cohorts(&page), [(21, 9), (8, 2)]);
    assert_eq!(story(&page).survival[0].outplanted_on.map(|day| day.to_string()), Some("2026-03-05".to_string()));
}

#[test]
fn a_look_at_some_rows_books_only_the_dead_it_saw() {
    let mut page = two_cohorts();
    survived(&mut page, "2026-04-01", json!({"alive":6,"dead":4,"rows":"1-2"}));
    assert_eq!(cohorts(&page), [(27, 3), (9, 1)]);
    survived(&mut page, "2026-04-02", json!({"alive":0,"dead":90,"at":["1.1"]}));
    assert_eq!(cohorts(&page), [(0, 30), (0, 10)]);
    assert!(kinds(&page).is_empty());
}

#[test]
fn the_same_rows_looked_at_again_book_only_what_died_since() {
    let mut page = two_cohorts();
    survived(&mut page, "2026-04-01", json!({"alive":6,"dead":4,"rows":"1-2"}));
    survived(&mut page, "2026-05-01", json!({"alive":5,"dead":5,"rows":"1 - 2"}));
    assert_eq!(cohorts(&page).iter().map(|(_, dead)| dead).sum::<u32>(), 5);
    // One that seemed dead sprouts, and dies: no new death.
    survived(&mut page, "2026-05-10", json!({"alive":6,"dead":4,"rows":"1-2"}));
    survived(&mut page, "2026-05-20", json!({"alive":5,"dead":5,"rows":"1-2"}));
    assert_eq!(cohorts(&page).iter().map(|(_, dead)| dead).sum::<u32>(), 5);
    // Other rows, and other places written in another order.
    survived(&mut page, "2026-05-21", json!({"alive":8,"dead":2,"rows":"3"}));
    survived(&mut page, "2026-05-22", json!({"alive":1,"dead":1,"at":["4.1","4.2"]}));
    survived(&mut page, "2026-05-23", json!({"alive":0,"dead":2,"at":["4.2","4.1"]}));
    assert_eq!(cohorts(&page).iter().map(|(_, dead)| dead).sum::<u32>(), 9);
}

#[test]
fn more_lost_than_lived_is_a_doubt_and_unexplained() {
    let mut page = two_cohorts();
    page.write("2026-04-01", "plants_lost", bed(json!({"species":"cafeto","count":50,"cause":"cattle"})));
    assert_eq!(cohorts(&page), [(0, 30), (0, 20)]);
    let bed = story(&page).name;
    let kind = DoubtKind::MoreDeadThanLived { bed, species: SpeciesKey::new("COA"), dead: 50, lived: 40 };
    assert_eq!((kinds(&page), story(&page).unexplained), (vec![kind], 10));
    // A later count cannot bring back more than were planted without saying so.
    survived(&mut page, "2026-05-01", json!({"alive":40,"dead":0}));
    assert_eq!(cohorts(&page), [(30, 0), (10, 10)]);
    assert!(matches!(kinds(&page)[..], [_, DoubtKind::AliveAgain { alive: 40, lived: 0, .. }]));
}

#[test]
fn plants_found_and_seed_at_stake_stand_in_the_bed() {
    let mut page = page();
    page.write("2026-02-01", "plants_found", bed(json!({"species":"avocado","alive":3,"planted_about":"2020-01-01"})));
    page.write("2026-02-01", "sown_in_bed", bed(json!({"species":"coffee","seeds_per_hole":3,"holes":12})));
    let story = story(&page);
    assert_eq!((story.cohorts[0].living, story.cohorts[0].found, story.cohorts[0].at_stake), (3, true, false));
    assert_eq!(story.cohorts[0].day.to_string(), "2020-01-01");
    assert_eq!((story.cohorts[1].living, story.cohorts[1].at_stake), (12, true));
}

#[test]
fn what_cannot_be_placed_is_a_doubt() {
    let mut page = page();
    out(&mut page, "2026-03-01", "avo-001", 5);
    page.write("2026-03-02", "plants_lost", bed(json!({"species":"moonwood","count":1,"cause":"wind"})));
    let bed_name = story(&page).name;
    let moonwood = SpeciesKey::new("moonwood");
    assert_eq!(
        kinds(&page),
        vec![
            DoubtKind::NotInPlan { bed: bed_name.clone(), species: SpeciesKey::new("AVO") },
            DoubtKind::UnknownSpecies(moonwood.clone()),
            DoubtKind::MoreDeadThanLived { bed: bed_name.clone(), species: moonwood, dead: 1, lived: 0 },
        ]
    );
    let mut nowhere = TestBook::default();
    nowhere.write("2026-03-02", "prepared", bed(json!({"task":"holes"})));
    assert_eq!(kinds(&nowhere), vec![DoubtKind::UnknownBed(bed_name)]);
}

#[test]
fn a_newer_layout_reports_the_living_off_its_grid() {
    let mut page = page();
    page.write("2026-03-01", "outplanted", bed(json!({"tray":"cof-001","count":4,"at":["1.1","1.2","5.15","5.16"]})));
    out(&mut page, "2026-03-01", "cof-002", 56);
    assert!(kinds(&page).is_empty());
    // 3 x 3 m: 5 rows of 11, 55 positions; 60 live; the plants at 5.15 and 5.16 are off it.
    let coffee = json!({"species":"coffee","pattern":"square","row_m":3,"in_row_m":3});
    let wider = bed(json!({"field":"Old maize","length_m":30,"width_m":12,"plan":[coffee]}));
    page.write("2026-06-01", "bed_set", wider);
    let off = |plants: u32| {
        let bed = story(&two_cohorts()).name;
        vec![DoubtKind::OffTheGrid { bed, species: SpeciesKey::new("COA"), plants }]
    };
    assert_eq!(kinds(&page), off(5));
    survived(&mut page, "2026-07-01", json!({"alive":30,"dead":26,"tray":"cof-002"}));
    assert_eq!(kinds(&page), off(2));
}

#[test]
fn nurse_plants_are_counted_over_all_their_cohorts() {
    let mut page = page();
    for on in ["2026-02-01", "2026-03-01"] {
        page.write(on, "nurse_planted", bed(json!({"nurse":"pigeon pea","count":20,"row_m":1,"in_row_m":1})));
    }
    let alive = |page: &TestBook| -> Vec<u32> { story(page).nurses.iter().map(|nurse| nurse.alive).collect() };
    let count = |page: &mut TestBook, on: &str, alive: u32| {
        page.write(on, "nurse_counted", bed(json!({"nurse":"pigeon pea","alive":alive})));
    };
    count(&mut page, "2026-04-01", 30);
    assert_eq!(alive(&page), [15, 15]);
    count(&mut page, "2026-05-01", 36);
    assert_eq!(alive(&page), [18, 18]);
    page.write("2026-05-02", "nurse_cut", bed(json!({"nurse":"pigeon pea","what":"felled","share":0.5})));
    assert_eq!(alive(&page), [9, 9]);
    // The ten that were gone at the first count, and the felling.
    let gone: Vec<Option<u32>> = story(&page).cuts.iter().map(|cut| cut.plants).collect();
    assert_eq!(gone, [Some(10), Some(18)]);
    page.write("2026-05-03", "nurse_counted", bed(json!({"nurse":"pigeon pea","alive":2,"rows":"1"})));
    assert_eq!(alive(&page), [9, 9], "a look at one row settles nothing");
    assert!(kinds(&page).is_empty());
    count(&mut page, "2026-06-01", 41);
    assert_eq!(alive(&page), [20, 21]);
    assert_eq!(kinds(&page).len(), 1);
}

#[test]
fn a_harvest_lifts_cassava_and_leaves_the_banana_mat() {
    let mut page = page();
    for nurse in ["cassava", "banana"] {
        page.write("2026-02-01", "nurse_planted", bed(json!({"nurse":nurse,"count":20,"row_m":1,"in_row_m":1})));
        page.write("2026-11-01", "nurse_cut", bed(json!({"nurse":nurse,"what":"harvest","count":5})));
    }
    let story = story(&page);
    assert_eq!((story.nurses[0].alive, story.nurses[0].gone), (15, 5));
    assert_eq!((story.nurses[1].alive, story.nurses[1].gone), (20, 0));
    let lifts: Vec<(bool, bool)> = story.cuts.iter().map(|cut| (cut.lifts_tubers, cut.lets_light_in)).collect();
    assert_eq!(lifts, [(true, true), (false, true)]);
}

#[test]
fn nurse_plants_never_written_as_planted_are_kept_with_a_doubt() {
    let mut page = page();
    page.write("2026-02-01", "nurse_counted", bed(json!({"nurse":"banana","alive":7})));
    let story = story(&page);
    assert_eq!((story.nurses[0].planted, story.nurses[0].alive, story.unexplained), (0, 7, 7));
    assert!(matches!(kinds(&page)[..], [DoubtKind::MoreAliveThanPlanted { alive: 7, planted: 0, .. }]));
}

fn anything() -> impl Strategy<Value = (u32, &'static str, Value)> {
    let number = prop_oneof![4 => 0u32..60, 1 => Just(1_000_000_000u32)];
    let species = prop::sample::select(vec!["coffee", "banana", "cassava", "moonwood"]);
    let tray = prop::sample::select(vec!["cof-001", "cof-002", "avo-001", "not-written"]);
    let what = prop::sample::select(vec!["leaves", "stem", "harvest", "felled"]);
    (0u32..9, 0u32..200, number, species, tray, what, any::<bool>()).prop_map(
        |(kind, on, n, species, tray, what, part)| {
            let (kind, mut fields) = match kind {
                0 => ("outplanted", json!({"tray":tray,"count":n})),
                1 => ("plants_lost", json!({"species":species,"count":n,"cause":"drought"})),
                2 => ("survival_counted", json!({"species":species,"alive":n,"dead":n / 3})),
                3 => ("survival_counted", json!({"species":"coffee","tray":tray,"alive":n,"dead":2})),
                4 => ("nurse_planted", json!({"nurse":species,"count":n,"row_m":1,"in_row_m":1})),
                5 => ("nurse_counted", json!({"nurse":species,"alive":n})),
                6 => ("nurse_cut", json!({"nurse":species,"what":what,"count":n})),
                7 => ("plants_found", json!({"species":species,"alive":n})),
                _ => ("sown_in_bed", json!({"species":species,"seeds_per_hole":2,"holes":n})),
            };
            if part {
                fields["rows"] = json!("1-2");
            }
            if kind == "nurse_planted" || kind == "plants_lost" || kind == "outplanted" {
                fields.as_object_mut().unwrap().remove("rows");
            }
            (on, kind, bed(fields))
        },
    )
}

proptest! {
    #[test]
    fn the_books_balance_whatever_is_written(entries in prop::collection::vec(anything(), 0..25)) {
        let mut page = page();
        for (on, kind, fields) in entries {
            let day = crate::reckon::test_book::day("2026-02-01").plus(on as i32);
            page.write(&day.to_string(), kind, fields);
        }
        prop_assert_eq!(page.story(ON).0.balance(), 0);
    }
}
