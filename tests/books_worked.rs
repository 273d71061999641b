//! How counts are read: hand-worked cases.

use crate::support::{Book, day, entry_of, small_nursery, tray};
use outplant::reckon::picture::DoubtKind;
use outplant::reckon::{View, draw_picture};
use serde_json::json;

fn sown() -> Book {
    let mut book = small_nursery();
    book.write(
        "2026-01-01",
        "sown",
        json!({"tray":"cof-1","lot":"cof-L1","seeds":100,"container":"bag","place":"Deep shade"}),
    );
    book
}

#[test]
fn a_rise_while_seed_is_due_is_emergence_plus_what_was_taken_out_meanwhile() {
    let mut book = sown();
    book.write("2026-02-15", "counted", json!({"tray":"cof-1","standing":30}));
    book.write("2026-02-20", "lost", json!({"tray":"cof-1","count":4,"cause":"damping-off"}));
    book.write("2026-02-25", "counted", json!({"tray":"cof-1","standing":50}));
    let picture = book.on("2026-02-25");
    let story = &tray(&picture, "cof-1").story;
    // 30 up; 4 lost leaves 26; 50 stand, so 24 came up between the looks.
    assert_eq!(story.counts.iter().map(|look| look.emerged).collect::<Vec<_>>(), [30, 24]);
    assert_eq!((story.accounts.standing, story.accounts.seed, story.accounts.lost_in_all()), (50, 46, 4));
}

#[test]
fn a_fall_nothing_explains_is_lost_cause_not_seen_and_a_later_loss_fills_the_gap() {
    let mut book = sown();
    book.write("2026-02-15", "counted", json!({"tray":"cof-1","standing":41}));
    book.write("2026-02-22", "counted", json!({"tray":"cof-1","standing":38}));
    assert_eq!(tray(&book.on("2026-02-23"), "cof-1").story.accounts.not_seen, 3);
    // Written afterwards for a day between the two looks: it explains the fall and is not subtracted again.
    let mut between = book.clone();
    between.write("2026-02-20", "lost", json!({"tray":"cof-1","count":3,"cause":"rats"}));
    let story = between.on("2026-02-23");
    let accounts = &tray(&story, "cof-1").story.accounts;
    assert_eq!((accounts.standing, accounts.not_seen, accounts.lost_in_all()), (38, 0, 3));
    // The same for the day of the look itself.
    let mut same_day = book.clone();
    same_day.write("2026-02-22", "lost", json!({"tray":"cof-1","count":3,"cause":"rats"}));
    let story = same_day.on("2026-02-23");
    let accounts = &tray(&story, "cof-1").story.accounts;
    assert_eq!((accounts.standing, accounts.not_seen, accounts.lost_in_all()), (38, 0, 3));
}

#[test]
fn a_loss_clocked_after_the_count_of_its_day_fills_that_gap_first() {
    let mut book = sown();
    book.write("2026-02-15", "counted", json!({"tray":"cof-1","standing":41}));
    let clocked = |seq: u64, kind: &str, body: serde_json::Value, hour: u32| {
        let mut entry = outplant::nursery::entry::Entry::clone(&entry_of("a", seq, "2026-02-22", kind, body));
        entry.clock = outplant::base::Clock::from_hm(hour, 0);
        std::sync::Arc::new(entry)
    };
    book.entries.push(clocked(90, "counted", json!({"tray":"cof-1","standing":38}), 8));
    book.entries.push(clocked(91, "lost", json!({"tray":"cof-1","count":5,"cause":"rats"}), 9));
    let picture = book.on("2026-02-23");
    let accounts = &tray(&picture, "cof-1").story.accounts;
    // 3 of the 5 explain the fall to 38, 2 died after the look.
    assert_eq!((accounts.standing, accounts.not_seen, accounts.lost_in_all()), (36, 0, 5));
}

#[test]
fn dead_found_at_a_count_are_not_subtracted_twice() {
    let mut book = sown();
    book.write("2026-02-15", "counted", json!({"tray":"cof-1","standing":40}));
    book.write("2026-02-20", "lost", json!({"tray":"cof-1","count":3,"cause":"rats"}));
    book.write("2026-02-20", "counted", json!({"tray":"cof-1","standing":37,"dead":3}));
    let picture = book.on("2026-02-20");
    let accounts = &tray(&picture, "cof-1").story.accounts;
    assert_eq!((accounts.standing, accounts.lost_in_all(), accounts.seed), (37, 3, 60));
}

#[test]
fn after_the_last_day_a_small_rise_corrects_the_earlier_count_and_is_no_emergence() {
    let mut book = sown();
    book.write("2026-03-20", "counted", json!({"tray":"cof-1","standing":60}));
    // The coffee profile waits 90 days: 2026-04-01. Two more on 10 May were missed before.
    book.write("2026-05-10", "counted", json!({"tray":"cof-1","standing":62}));
    let picture = book.on("2026-05-10");
    let story = &tray(&picture, "cof-1").story;
    let last = story.counts.last().unwrap();
    assert_eq!((last.emerged, last.corrected, story.accounts.standing), (0, 2, 62));
    assert!(picture.doubts.is_empty(), "{:?}", picture.doubts);
}

#[test]
fn more_than_the_seed_can_give_is_a_doubt_but_twins_of_a_mango_are_not() {
    let mut book = sown();
    book.write("2026-02-15", "counted", json!({"tray":"cof-1","standing":130}));
    let picture = book.on("2026-02-15");
    assert_eq!(tray(&picture, "cof-1").standing, 130);
    assert!(picture.doubts.iter().any(|doubt| matches!(doubt.kind, DoubtKind::MoreThanSeed { counted: 130, .. })));
    // Mango stones are polyembryonic: the profile says up to three shoots a stone.
    let mut mango = small_nursery();
    mango.write("2026-01-01", "lot_received", json!({"lot":"man-L1","species":"mango","source":"market tree","collected":"2026-01-01","seeds":20,"kept":"in_pod"}));
    mango.write("2026-01-02", "sown", json!({"tray":"man-1","lot":"man-L1","seeds":20,"container":"bag"}));
    mango.write("2026-01-30", "counted", json!({"tray":"man-1","standing":34}));
    let picture = mango.on("2026-01-30");
    let accounts = &tray(&picture, "man-1").story.accounts;
    assert_eq!((accounts.standing, accounts.seed, accounts.twins), (34, 0, 14));
    assert!(picture.doubts.is_empty(), "{:?}", picture.doubts);
}

#[test]
fn a_count_of_part_of_the_cells_settles_nothing_and_gives_a_range() {
    let mut book = small_nursery();
    book.write("2026-01-01", "sown", json!({"tray":"cof-1","lot":"cof-L1","seeds":100,"container":"bag","cells":100}));
    book.write("2026-02-15", "counted", json!({"tray":"cof-1","standing":60}));
    book.write("2026-02-20", "counted", json!({"tray":"cof-1","standing":8,"cells_seen":20}));
    let picture = book.on("2026-02-20");
    let tray = tray(&picture, "cof-1");
    assert_eq!(tray.standing, 60);
    assert!(tray.standing_range.low < 40.0 && tray.standing_range.high >= 60.0, "{:?}", tray.standing_range);
}

#[test]
fn more_out_than_stood_is_kept_doubted_and_settled_by_a_stocktake() {
    let mut book = sown();
    book.write("2026-02-15", "counted", json!({"tray":"cof-1","standing":10}));
    book.write("2026-02-16", "given_out", json!({"tray":"cof-1","count":15,"to":"school"}));
    let picture = book.on("2026-02-16");
    let accounts = &tray(&picture, "cof-1").story.accounts;
    assert_eq!((accounts.standing, accounts.given_out, accounts.unexplained), (0, 15, 5));
    assert_eq!(picture.doubts.len(), 1);
    book.write("2026-02-17", "stocktaken", json!({"tray":"cof-1","standing":4}));
    let picture = book.on("2026-02-17");
    assert_eq!(tray(&picture, "cof-1").standing, 4);
    assert!(picture.doubts.is_empty(), "{:?}", picture.doubts);
}

#[test]
fn two_devices_counting_one_tray_on_one_day_raise_a_doubt_about_the_order() {
    let mut book = sown();
    book.write("2026-02-15", "counted", json!({"tray":"cof-1","standing":40}));
    book.entries.push(entry_of("b", 1, "2026-02-15", "given_out", json!({"tray":"cof-1","count":5,"to":"school"})));
    let picture = book.on("2026-02-15");
    assert!(
        picture.doubts.iter().any(|doubt| matches!(doubt.kind, DoubtKind::OrderMatters(_))),
        "{:?}",
        picture.doubts
    );
}

#[test]
fn seedlings_moved_on_keep_lot_species_and_sowing_day() {
    let mut book = sown();
    book.write("2026-02-15", "counted", json!({"tray":"cof-1","standing":40}));
    book.write(
        "2026-03-01",
        "moved_on",
        json!({"from":"cof-1","to":"cof-2","count":30,"how":"pricked_out","container":"bag","place":"Half shade"}),
    );
    let picture = book.on("2026-03-02");
    let moved = tray(&picture, "cof-2");
    assert_eq!((moved.standing, moved.age_days), (30, Some(60)));
    assert_eq!(moved.species.as_ref().map(|species| species.as_str()), Some("COA"));
    assert_eq!(moved.lots.iter().map(|lot| lot.as_str()).collect::<Vec<_>>(), ["cof-L1"]);
    assert_eq!(tray(&picture, "cof-1").standing, 10);
}

#[test]
fn yesterdays_belief_can_be_compared_with_what_came() {
    let mut book = sown();
    book.write("2026-02-15", "counted", json!({"tray":"cof-1","standing":40}));
    // Lost on the 16th, but written down only on the 20th.
    let mut late = outplant::nursery::entry::Entry::clone(&entry_of(
        "a",
        50,
        "2026-02-16",
        "lost",
        json!({"tray":"cof-1","count":12,"cause":"rats"}),
    ));
    late.recorded = crate::support::evening(day("2026-02-20"));
    book.entries.push(std::sync::Arc::new(late));
    let on = |known: Option<&str>| {
        let view = View { day: day("2026-02-17"), known: known.map(|known| crate::support::evening(day(known))) };
        let picture = draw_picture(view, day("2026-02-25"), book.entries.iter().cloned());
        tray(&picture, "cof-1").standing
    };
    assert_eq!(on(None), 28);
    assert_eq!(on(Some("2026-02-18")), 40);
    assert_eq!(on(Some("2026-02-20")), 28);
}

#[test]
fn a_changed_label_is_followed() {
    let mut book = sown();
    book.write("2026-02-15", "counted", json!({"tray":"cof-1","standing":40}));
    book.write("2026-02-16", "relabelled", json!({"tray":"cof-9","was":"cof-1"}));
    book.write("2026-02-18", "lost", json!({"tray":"cof-9","count":2,"cause":"rats"}));
    let picture = book.on("2026-02-18");
    assert_eq!(tray(&picture, "cof-9").standing, 38);
    assert!(!picture.trays.keys().any(|code| code.as_str() == "cof-1"));
    assert_eq!(tray(&book.on("2026-02-15"), "cof-1").standing, 40);
}

#[test]
fn a_withdrawal_acts_on_every_day_and_only_known_brings_it_back() {
    let mut book = sown();
    let slip = book.write("2026-02-15", "counted", json!({"tray":"cof-1","standing":400}));
    book.write("2026-02-20", "withdrawn", json!({"entries":[slip.to_string()],"why":"slip of the pen"}));
    assert_eq!(tray(&book.on("2026-02-16"), "cof-1").standing, 0);
    let view = View { day: day("2026-02-16"), known: Some(crate::support::evening(day("2026-02-17"))) };
    let picture = draw_picture(view, day("2026-02-25"), book.entries.iter().cloned());
    assert_eq!(tray(&picture, "cof-1").standing, 400);
}

#[test]
fn a_loss_fills_the_gap_of_its_own_look_and_never_that_of_a_later_part_count_or_stocktake() {
    for later in [json!({"tray":"cof-1","standing":5,"cells_seen":9}), json!({"tray":"cof-1","standing":38})] {
        let mut book = sown();
        book.write("2026-02-15", "counted", json!({"tray":"cof-1","standing":41}));
        let clocked = |seq: u64, kind: &str, body: serde_json::Value, hour: u32| {
            let mut entry = outplant::nursery::entry::Entry::clone(&entry_of("a", seq, "2026-02-22", kind, body));
            entry.clock = outplant::base::Clock::from_hm(hour, 0);
            std::sync::Arc::new(entry)
        };
        let kind = if later.get("cells_seen").is_some() { "counted" } else { "stocktaken" };
        book.entries.push(clocked(90, "counted", json!({"tray":"cof-1","standing":38}), 8));
        book.entries.push(clocked(91, kind, later, 9));
        book.entries.push(clocked(92, "lost", json!({"tray":"cof-1","count":2,"cause":"rats"}), 10));
        let picture = book.on("2026-02-23");
        let accounts = &tray(&picture, "cof-1").story.accounts;
        assert_eq!(accounts.balance(), 0);
        // After a part count the gap of 3 is still there to fill; a stocktake has settled it, so two more are gone.
        assert_eq!(accounts.standing, if kind == "counted" { 38 } else { 36 });
    }
}

#[test]
fn numbers_beyond_all_reason_are_kept_and_never_panic() {
    let mut book = sown();
    for _ in 0..6 {
        book.write("2026-02-16", "given_out", json!({"tray":"cof-1","count":1_000_000_000,"to":"a slip"}));
        book.write("2026-02-16", "counted", json!({"tray":"cof-1","standing":1_000_000_000}));
    }
    let picture = book.on("2026-02-16");
    assert_eq!(tray(&picture, "cof-1").story.accounts.balance(), 0);
}

#[test]
fn what_died_before_the_first_count_had_come_up_from_the_seed() {
    let mut book = sown();
    // Lost is taken before the count of its day: nothing stood yet by the books, but seed was due.
    book.write("2026-02-15", "counted", json!({"tray":"cof-1","standing":41}));
    book.write("2026-02-15", "lost", json!({"tray":"cof-1","count":3,"cause":"rats"}));
    let picture = book.on("2026-02-16");
    let story = &tray(&picture, "cof-1").story;
    assert_eq!((story.accounts.standing, story.accounts.seed, story.accounts.lost_in_all()), (41, 56, 3));
    assert_eq!(story.counts.last().unwrap().emerged, 44);
    assert!(picture.doubts.is_empty(), "{:?}", picture.doubts);
}
