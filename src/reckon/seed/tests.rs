//! Hand-worked lots: how long they live, what tests say, what came up of them.

use serde_json::json;

use super::test::replicate_counts;
use super::*;
use crate::base::{LotCode, Range, TrayCode};
use crate::nursery::entry::types::Kept;
use crate::reckon::picture::Picture;
use crate::reckon::stock::LotStory;
use crate::reckon::test_book::{TestBook, day};

/// Avocado seed collected on 1 March: 21 days of life washed and moist.
fn avocado(page: &mut TestBook) {
    let lot = json!({"lot":"avo-L01","species":"Persea americana","source":"by the bridge","collected":"2026-03-01",
        "seeds":400,"kept":"washed_moist"});
    page.write("2026-03-02", "lot_received", lot);
}

fn lot(picture: &Picture) -> &LotStory {
    &picture.lots[&LotCode::new("avo-L01").unwrap()]
}

fn life_of(picture: &Picture) -> Option<SeedLife> {
    let lot = lot(picture);
    life(lot, picture.site.profile(lot.species.as_ref().unwrap()).unwrap())
}

#[test]
fn a_life_begins_when_seed_that_dies_dried_is_collected() {
    let mut page = TestBook::default();
    avocado(&mut page);
    let picture = page.whole("2026-03-10");
    let first = life_of(&picture).unwrap();
    assert_eq!((first.from, first.kept), (day("2026-03-01"), Kept::WashedMoist));
    let washed = picture.site.profile(lot(&picture).species.as_ref().unwrap()).unwrap();
    let washed = washed.storage_washed_moist_days.as_ref().or(washed.storage_ambient_days.as_ref()).unwrap();
    assert_eq!(f64::from(first.days), washed.value);
    page.write("2026-03-08", "lot_kept", json!({"lot":"avo-L01","kept":"dry_open"}));
    let second = life_of(&page.whole("2026-03-10")).unwrap();
    // Seed that dies when dried is counted from the tree, however it was handled since.
    assert_eq!((second.from, second.kept), (day("2026-03-01"), Kept::DryOpen));
    page.write("2026-03-09", "lot_kept", json!({"lot":"avo-L01","kept":"cold"}));
    let cold = life_of(&page.whole("2026-03-10")).unwrap();
    assert_eq!((cold.from, cold.days), (day("2026-03-01"), 240));
}

#[test]
fn a_lot_keeps_then_must_be_sown_then_is_over_then_dead() {
    let mut page = TestBook::default();
    avocado(&mut page);
    let life = life_of(&page.whole("2026-03-10")).unwrap();
    let state = |on| lot_state(lot(&page.whole("2026-03-10")), None, Some(&life), on);
    let last = life.last_day();
    let notice = ((f64::from(life.days) * 0.25).ceil() as i32).max(7);
    assert_eq!(state(last.plus(-notice - 1)), LotState::Keeps);
    assert_eq!(state(last.plus(-notice)), LotState::Ending);
    assert_eq!(state(last), LotState::Ending);
    assert_eq!(state(last.plus(1)), LotState::Over);
    assert_eq!(state(life.dead_on()), LotState::Over);
    assert_eq!(state(life.dead_on().plus(1)), LotState::Dead);
    assert_eq!(lot_state(lot(&page.whole("2026-03-10")), None, None, last), LotState::LifeUnknown);
}

#[test]
fn held_counts_until_its_day_and_used_up_before_all() {
    let mut page = TestBook::default();
    avocado(&mut page);
    page.write("2026-03-03", "held", json!({"lot":"avo-L01","why":"for the school","until":"2026-03-05"}));
    let on = |page: &TestBook, on: &str| {
        let picture = page.whole(on);
        lot_state(lot(&picture), None, life_of(&picture).as_ref(), picture.day)
    };
    assert_eq!(on(&page, "2026-03-05"), LotState::Held);
    assert_ne!(on(&page, "2026-03-06"), LotState::Held);
    page.write("2026-03-04", "lot_counted", json!({"lot":"avo-L01","seeds":0}));
    assert_eq!(on(&page, "2026-03-05"), LotState::UsedUp);
}

#[test]
fn a_test_gives_its_share_with_wilsons_interval_and_the_next_one_a_day() {
    let mut page = TestBook::default();
    avocado(&mut page);
    // Never tested: 60 days after it was collected have passed on the 61st.
    assert_eq!(test_due_from(lot(&page.whole("2026-03-10")), None, day("2026-03-10")), Some(day("2026-05-01")));
    let replicates = json!([{"seeds":25,"germinated":21},{"seeds":25,"germinated":22}]);
    page.write("2026-03-20", "lot_tested", json!({"lot":"avo-L01","days":20,"replicates":replicates}));
    let picture = page.whole("2026-03-20");
    let test = &lot(&picture).tests[0];
    assert_eq!(replicate_counts(test), (50, 43));
    // 43 of 50 at 95 %, worked apart from this program.
    let Range { low, likely, high } = germinated(test).unwrap();
    assert!((low - 0.738_14).abs() < 1e-4 && (likely - 0.86).abs() < 1e-12 && (high - 0.930_45).abs() < 1e-4);
    assert_eq!(test_due_from(lot(&picture), None, picture.day), Some(day("2026-05-20")));
    // Fewer than two tests' worth: none is given up for a test.
    page.write("2026-03-21", "lot_counted", json!({"lot":"avo-L01","seeds":99}));
    assert_eq!(test_due_from(lot(&page.whole("2026-03-21")), None, day("2026-03-21")), None);
}

/// Two trays of 50 seeds; in the first 40 came up and it is over, in the second 10 so far.
fn sown() -> TestBook {
    let mut page = TestBook::default();
    avocado(&mut page);
    let sown = |tray: &str| json!({"tray":tray,"lot":"avo-L01","seeds":50,"container":"bag","cells":50});
    page.write("2026-03-03", "sown", sown("avo-001"));
    page.write("2026-07-01", "counted", json!({"tray":"avo-001","standing":40}));
    page.write("2026-07-20", "sown", sown("avo-002"));
    page.write("2026-08-20", "counted", json!({"tray":"avo-002","standing":10}));
    page
}

#[test]
fn what_came_up_is_told_by_tray_and_in_all_only_of_what_is_over() {
    let mut page = sown();
    let picture = page.whole("2026-08-25");
    let from = sown_from(&picture, &LotCode::new("avo-L01").unwrap());
    let said: Vec<_> = from.iter().map(|one| (one.tray.as_str(), one.seeds, one.emerged, one.waiting)).collect();
    assert_eq!(said, [("avo-002", Some(50), 10, true), ("avo-001", Some(50), 40, false)]);
    let came = came_up(&from).unwrap();
    assert_eq!((came.seeds, came.seedlings), (50, 40));
    assert!((came.share.unwrap().likely - 0.8).abs() < 1e-12);
    // Seed of another lot in the same tray: what came up there is of both and says nothing of one.
    let other = json!({"lot":"avo-L02","species":"Persea americana","source":"ford","collected":"2026-06-20",
        "seeds":40,"kept":"washed_moist"});
    page.write("2026-06-21", "lot_received", other);
    page.write("2026-06-22", "resown", json!({"tray":"avo-001","lot":"avo-L02","seeds":5}));
    let mixed = sown_from(&page.whole("2026-12-31"), &LotCode::new("avo-L01").unwrap());
    assert!(mixed.iter().any(|one| one.tray.as_str() == "avo-001" && one.mixed));
    let came = came_up(&mixed).unwrap();
    assert_eq!((came.seeds, came.seedlings), (50, 10), "only avo-002 is of this lot alone");
}

#[test]
fn plants_moved_on_bring_their_sowing_but_no_seed() {
    let mut page = sown();
    page.write("2026-07-05", "moved_on", json!({"from":"avo-001","to":"avo-009","count":20,"how":"potted_on"}));
    let picture = page.whole("2026-08-25");
    let moved = &picture.trays[&TrayCode::new("avo-009").unwrap()].story;
    assert_eq!(moved.sowings.len(), 1);
    assert!(own_sowings(moved).is_empty());
    assert_eq!(sown_from(&picture, &LotCode::new("avo-L01").unwrap()).len(), 2);
}

#[test]
fn half_is_up_at_the_half_day_and_nineteen_of_twenty_at_the_last() {
    assert_eq!(share_up(0.0, 20.0, 40.0), 0.0);
    assert!((share_up(20.0, 20.0, 40.0) - 0.5).abs() < 1e-12);
    assert!((share_up(40.0, 20.0, 40.0) - 0.95).abs() < 1e-12);
}
