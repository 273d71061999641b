//! What can be said of each position, worked by hand; and that nothing is made up, whatever is written.

use proptest::prelude::*;
use serde_json::{Value, json};

use super::rows::{rows_named, rows_recorded};
use super::*;
use crate::nursery::entry::types::GroundTask;
use crate::reckon::picture::quantity::{Beside, Ground, HeldFor, NotSo, ResistanceAtMost, Until, WorkWithin};
use crate::reckon::picture::{Basis, Criterion, Gap, Question, Rule};
use crate::reckon::test_book::{TestBook, day};

const ON: &str = "2026-04-10";

fn bed(mut fields: Value) -> Value {
    fields["bed"] = json!("Upper terrace");
    fields
}

/// Coffee in 3 rows of 4.
fn small_bed() -> TestBook {
    let mut page = TestBook::default();
    let plan = json!([{"species":"coffee","pattern":"square","row_m":2,"in_row_m":2}]);
    page.write("2025-01-05", "bed_set", bed(json!({"field":"Old maize","length_m":6,"width_m":4,"plan":plan})));
    page
}

fn set(page: &mut TestBook, on: &str, tray: &str, count: u32, where_to: Value) {
    let fields = json!({"tray":tray,"species":"coffee","count":count + 5,"from":"bought","form":"bag"});
    page.write(on, "plants_received", fields);
    let mut out = bed(json!({"tray":tray,"count":count}));
    for (name, value) in where_to.as_object().unwrap() {
        out[name] = value.clone();
    }
    page.write(on, "outplanted", out);
}

fn plan_of(page: &TestBook) -> SpeciesPlan {
    let (_, site) = page.story(ON);
    let picture = page.picture(ON);
    species_plan(&picture.story, &site, day(ON), &picture.species[0].species).unwrap()
}

/// A letter for each place, a word for each row.
fn drawn(plan: &SpeciesPlan) -> String {
    let mut text = String::new();
    for spot in &plan.spots {
        if spot.place == 1 && spot.row > 1 {
            text.push(' ');
        }
        text.push(match spot.state {
            SpotState::Living => 'L',
            SpotState::Dead => 'x',
            SpotState::Open => 'o',
            SpotState::Blocked => '#',
            SpotState::Unsaid => '?',
        });
    }
    text
}

#[test]
fn rows_are_read_as_people_write_them() {
    let read = |written| rows_named(written).map(|rows| rows_written(&rows));
    assert_eq!(read("1-2").as_deref(), Some("1-2"));
    assert_eq!(read("1, 3,4").as_deref(), Some("1, 3-4"));
    assert_eq!(read("5").as_deref(), Some("5"));
    for other in ["", "the upper ones", "0-2", "4-2", "1-999999999", "-"] {
        assert_eq!(read(other), None, "{other}");
    }
    assert_eq!(rows_recorded("4-2"), rows_named("2-4"), "who wrote it was there");
    assert_eq!(rows_recorded("the upper ones"), None);
}

#[test]
fn an_empty_bed_is_open_but_for_its_rocks() {
    let mut page = small_bed();
    page.write("2025-01-06", "positions_blocked", bed(json!({"at":["2.3"],"why":"rock"})));
    assert_eq!(drawn(&plan_of(&page)), "oooo oo#o oooo");
}

#[test]
fn full_rows_are_living_and_the_others_open() {
    let mut page = small_bed();
    set(&mut page, "2026-03-01", "cof-1", 8, json!({"rows":"1-2"}));
    let plan = plan_of(&page);
    assert_eq!(drawn(&plan), "LLLL LLLL oooo");
    assert!(plan.unsaid.is_empty());
}

#[test]
fn of_rows_that_are_not_full_only_the_number_is_said() {
    let mut page = small_bed();
    set(&mut page, "2026-03-01", "cof-1", 8, json!({"rows":"1-2"}));
    page.write("2026-03-10", "plants_lost", bed(json!({"species":"coffee","count":3,"cause":"goats"})));
    let plan = plan_of(&page);
    assert_eq!(drawn(&plan), "???? ???? oooo");
    assert_eq!(plan.unsaid, [Unsaid { rows: Some([1, 2].into()), living: 5, places: 8 }]);
}

#[test]
fn places_that_were_written_are_known_one_by_one() {
    let mut page = small_bed();
    set(&mut page, "2026-03-01", "cof-1", 2, json!({"at":["1.1","1.3"]}));
    set(&mut page, "2026-03-02", "cof-2", 1, json!({"at":["3.4"]}));
    page.write("2026-04-02", "survival_counted", bed(json!({"species":"coffee","tray":"cof-2","alive":0,"dead":1})));
    assert_eq!(drawn(&plan_of(&page)), "LoLo oooo ooox");
    // One of two dead: which one is not written, and the places beside them stay open.
    page.write("2026-04-03", "survival_counted", bed(json!({"species":"coffee","tray":"cof-1","alive":1,"dead":1})));
    let plan = plan_of(&page);
    assert_eq!(drawn(&plan), "?o?o oooo ooox");
    assert_eq!(plan.unsaid, [Unsaid { rows: Some([1].into()), living: 1, places: 2 }]);
    // A refill of one of them settles it: the other one lives.
    set(&mut page, "2026-04-04", "cof-3", 1, json!({"at":["1.3"]}));
    assert_eq!(drawn(&plan_of(&page)), "LoLo oooo ooox");
}

#[test]
fn plants_without_a_place_can_stand_anywhere_until_the_bed_is_full() {
    let mut page = small_bed();
    set(&mut page, "2026-03-01", "cof-1", 5, json!({}));
    let plan = plan_of(&page);
    assert_eq!(drawn(&plan), "???? ???? ????");
    assert_eq!(plan.unsaid, [Unsaid { rows: None, living: 5, places: 12 }]);
    set(&mut page, "2026-03-02", "cof-2", 7, json!({}));
    assert_eq!(drawn(&plan_of(&page)), "LLLL LLLL LLLL");
}

#[test]
fn light_is_known_by_rows_only_where_rows_were_read() {
    let mut page = small_bed();
    page.write("2026-03-01", "light_read", bed(json!({"light_share":0.9})));
    assert!(light_rows(&page.story(ON).0, day(ON)).is_empty());
    page.write("2026-03-20", "light_read", bed(json!({"light_share":0.3,"rows":"1"})));
    page.write("2026-04-01", "light_read", bed(json!({"light_share":0.4,"rows":"1-2"})));
    let rows = light_rows(&page.story(ON).0, day(ON));
    let said: Vec<(u32, f64)> = rows.iter().map(|(row, light)| (*row, light.share)).collect();
    assert_eq!(said, [(1, 0.4), (2, 0.4)]);
    // Sixty days on, nothing of it counts.
    assert!(light_rows(&page.story("2026-06-20").0, day("2026-06-20")).is_empty());
}

#[test]
fn nurse_plants_have_places_only_where_number_and_distances_agree() {
    let mut page = small_bed();
    let planted = |count: u32| bed(json!({"nurse":"banana","count":count,"row_m":4,"in_row_m":3}));
    page.write("2026-01-01", "nurse_planted", planted(6));
    page.write("2026-01-02", "nurse_planted", planted(5));
    let grids = nurse_grids(&page.picture(ON));
    assert_eq!(grids.len(), 1);
    // 6 x 4 m at 3 and 4 m, both edges counted: 2 rows of 3.
    assert_eq!(grids[0].spots, [(0.0, 0.0), (3.0, 0.0), (6.0, 0.0), (0.0, 4.0), (3.0, 4.0), (6.0, 4.0)]);
}

#[test]
fn survival_is_told_by_outplanting_at_its_months() {
    let mut page = small_bed();
    set(&mut page, "2025-09-01", "cof-1", 6, json!({}));
    set(&mut page, "2026-03-01", "cof-2", 4, json!({}));
    for (on, alive, dead) in [("2025-10-02", 6, 0), ("2025-12-03", 5, 1), ("2026-03-02", 4, 2)] {
        page.write(
            on,
            "survival_counted",
            bed(json!({"species":"coffee","tray":"cof-1","outplanted_on":"2025-09-01","alive":alive,"dead":dead})),
        );
    }
    let all = outplantings(&page.story(ON).0, day(ON));
    assert_eq!(all.iter().map(|one| (one.planted, one.living)).collect::<Vec<_>>(), [(4, 4), (6, 4)]);
    assert_eq!(all[0].counts, [None, None, None, None]);
    let alive: Vec<Option<u32>> = all[1].counts.iter().map(|count| count.as_ref().map(|count| count.alive)).collect();
    assert_eq!(alive, [Some(6), Some(5), Some(4), None]);
}

#[test]
fn what_lasts_longest_is_said_first_and_a_days_work_last() {
    let sick = Some(HeldFor { why: "sick".into(), stood: None });
    let held = Criterion::found(Question::Held, NotSo, sick, Basis::Measured, false, "x");
    let season = Criterion::found(Question::Season, Until(day("2026-04-15")), day(ON), Basis::Reckoned, false, "x");
    let work =
        WorkWithin { task: GroundTask::Holes, days: 180, at_least_cm: None, eaten_on: None, eaten_beside_on: None };
    let holes = Criterion::found(Question::Holes, work, None, Basis::Assumed, false, "x");
    let dated = [held.expected_on(Some(day("2026-05-01"))), season.expected_on(Some(day("2026-06-01")))];
    assert_eq!(lasts_until(&dated), Some(day("2026-06-01")));
    let with_work = [dated[0].clone(), holes];
    assert_eq!(lasts_until(&with_work), None);
    let order = |criteria: &[Criterion]| waits_for(criteria, day(ON)).iter().map(|one| one.rule()).collect::<Vec<_>>();
    assert_eq!(order(&with_work), [Rule::Held, Rule::Holes]);
    assert_eq!(
        order(&[with_work[1].clone(), dated[0].clone(), dated[1].clone()]),
        [Rule::Season, Rule::Held, Rule::Holes]
    );
    let hard = Ground::RodStopped { mpa: 2.0, depth_cm: 12.0, rod_mm: 8.0 };
    let needed = ResistanceAtMost { mpa: 2.0, depth_cm: 28.0, rod_mm: 8.0 };
    let soil = Criterion::found(Question::Soil, needed, hard, Basis::Measured, false, "x");
    assert_eq!(order(&[dated[1].clone(), soil]), [Rule::Soil, Rule::Season]);
    let sprayed = Criterion::found(Question::Treated, NotSo, None, Basis::Measured, false, "x");
    let sprayed = sprayed.expected_on(Some(day("2026-04-12")));
    assert_eq!(order(&[dated[1].clone(), sprayed]), [Rule::Treated, Rule::Season], "a treatment at work before all");
    assert_eq!(lasts_until(&[]), None);
}

#[test]
fn an_old_treatment_of_a_bed_without_a_time_does_not_lead_its_reasons() {
    let season = Criterion::found(Question::Season, Until(day("2026-04-15")), day(ON), Basis::Reckoned, false, "x");
    let season = season.expected_on(Some(day("2026-06-01")));
    // ON is 10 April: 30 days before it is 11 March.
    for (used, beside, leads) in [
        ("2026-03-11", Some(Beside::Bed), true),
        ("2026-03-10", Some(Beside::Bed), false),
        ("2026-03-10", None, true),
        ("2025-03-10", Some(Beside::Place), true),
    ] {
        let gap = Gap::NoWaitingTime { with: "dimethoate".into(), day: day(used), beside };
        let unread = Criterion::lacking(Question::Treated, Some(NotSo), Some(gap), true, "x");
        let all = [season.clone(), unread];
        let first = waits_for(&all, day(ON))[0].rule();
        assert_eq!(first == Rule::Treated, leads, "{used}");
    }
}

fn where_to() -> impl Strategy<Value = Value> {
    prop_oneof![
        Just(json!({})),
        (1u32..4).prop_map(|row| json!({"rows": row.to_string()})),
        Just(json!({"rows":"1-2"})),
        Just(json!({"rows":"by the ditch"})),
        proptest::collection::btree_set((1u32..5, 1u32..6), 1..4).prop_map(|at| {
            let at: Vec<String> = at.into_iter().map(|(row, place)| format!("{row}.{place}")).collect();
            json!({ "at": at })
        }),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    /// As many living marks and numbers as plants live, never one more; a position is living only where it must be.
    #[test]
    fn no_plant_is_made_up_and_none_is_lost(
        cohorts in proptest::collection::vec((1u32..6, where_to()), 0..5), dead in 0u32..6,
    ) {
        let mut page = small_bed();
        for (at, (count, to)) in cohorts.iter().enumerate() {
            set(&mut page, "2026-03-01", &format!("cof-{at}"), *count, to.clone());
        }
        if dead > 0 {
            page.write("2026-03-10", "plants_lost", bed(json!({"species":"coffee","count":dead,"cause":"goats"})));
        }
        let (story, _) = page.story(ON);
        let plan = plan_of(&page);
        let living = story.living_of(&plan.species);
        let said = plan.count(SpotState::Living) + plan.unsaid.iter().map(|one| one.living).sum::<u32>();
        prop_assert!(said <= living, "{} said, {} live: {}", said, living, drawn(&plan));
        for one in &plan.unsaid {
            prop_assert!(one.living > 0 && one.living < one.places, "{:?}", one);
        }
        prop_assert_eq!(plan.unsaid.is_empty(), plan.count(SpotState::Unsaid) == 0, "{}", drawn(&plan));
        if living <= 12 && cohorts.iter().all(|(_, to)| to.get("at").is_none() && to.get("rows").is_none()) {
            prop_assert_eq!(said, living);
        }
    }
}
