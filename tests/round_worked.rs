//! The round and the changes of verdicts, by small hand-worked books and by the sample nursery.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use outplant::base::{BedName, Moment, SpeciesKey, TrayCode};
use outplant::desk::{Desk, Now, sample};
use outplant::nursery::caution::Caution;
use outplant::nursery::entry::Entry;
use outplant::reckon::changes::{Cause, Change, Turned};
use outplant::reckon::picture::{Passage, Picture, Rule, Source};
use outplant::reckon::round::{NurseWork, RoundReason, Stop, Task, UntilFor, Where};
use outplant::reckon::{FromThen, Round, SharedOffer, View, changes, draw_picture, round, shared_offers};
use outplant::wording::round::RoundOn;
use outplant::wording::{Lang, Wording};
use serde_json::json;

use crate::support::{
    Book, coffee_in_deep_shade, day, evening, fitting, open_bed, ready_coffee, small_nursery, wet_days,
};

const TODAY: &str = "2026-04-15";

fn all(picture: &Picture) -> Vec<Stop> {
    let Round { stops, can_wait, .. } = round(picture);
    stops.into_iter().chain(can_wait).collect()
}

fn ids(book: &Book, on: &str) -> BTreeSet<String> {
    all(&book.on(on)).into_iter().map(|stop| stop.id).collect()
}

fn stop(book: &Book, on: &str, id: &str) -> Stop {
    let all = all(&book.on(on));
    let named: Vec<String> = all.iter().map(|stop| stop.id.clone()).collect();
    all.into_iter().find(|stop| stop.id == id).unwrap_or_else(|| panic!("no '{id}' among {named:?}"))
}

fn has(book: &Book, on: &str, id: &str) -> bool {
    ids(book, on).contains(id)
}

/// Coffee sown on 1 January 2026 in a seedbed: 100 seeds, 90 expected.
fn seedbed() -> Book {
    let mut book = small_nursery();
    book.write("2025-01-01", "container_set", json!({"container":"strip","volume_ml":30}));
    book.write(
        "2026-01-01",
        "sown",
        json!({"tray":"cof-9","lot":"cof-L1","seeds":100,"container":"strip","place":"Deep shade"}),
    );
    book
}

#[test]
fn the_gauge_comes_first_every_morning_until_it_is_read() {
    let mut book = fitting();
    // Today's line is written already; tomorrow's is not.
    assert!(!has(&book, TODAY, "gauge"));
    let tomorrow = round(&book.on("2026-04-16"));
    assert_eq!(tomorrow.stops[0].task, Task::Gauge);
    assert_eq!(tomorrow.stops[0].at, Where::Nowhere);
    book.write("2026-04-16", "weather", json!({"tmin_c":12}));
    assert!(has(&book, "2026-04-16", "gauge"), "a temperature is no rain");
}

#[test]
fn emergence_is_counted_every_two_days_to_half_then_every_four() {
    let mut book = seedbed();
    // Coffee comes up from day 40 (10 February): nothing to count before.
    assert!(!has(&book, "2026-02-09", "count cof-9"));
    assert!(has(&book, "2026-02-10", "count cof-9"));
    book.write("2026-02-20", "counted", json!({"tray":"cof-9","standing":44}));
    assert!(!has(&book, "2026-02-21", "count cof-9"));
    let due = stop(&book, "2026-02-22", "count cof-9");
    let expected = RoundReason::Emerging { days_since: Some(2), every_days: 2, emerged: 44, expected: Some(90.0) };
    assert_eq!(due.why, expected);
    // 45 of 90 are half.
    book.write("2026-02-22", "counted", json!({"tray":"cof-9","standing":45}));
    assert!(!has(&book, "2026-02-25", "count cof-9"));
    assert!(has(&book, "2026-02-26", "count cof-9"));
    // Overdue by weeks it is still one stop.
    let late = all(&book.on("2026-03-20"));
    assert_eq!(late.iter().filter(|stop| stop.id == "count cof-9").count(), 1);
}

#[test]
fn living_trays_are_counted_every_fortnight_and_weekly_when_ready() {
    let mut book = fitting();
    // Counted on 10 April and ready: due on the 17th.
    assert!(!has(&book, "2026-04-16", "count cof-1"));
    assert!(has(&book, "2026-04-17", "count cof-1"));
    coffee_in_deep_shade(&mut book, "cof-2", "2025-06-01", "2026-04-10");
    assert!(!has(&book, "2026-04-23", "count cof-2"), "growing on: 14 days");
    assert!(has(&book, "2026-04-24", "count cof-2"));
    book.write("2026-04-24", "pest_seen", json!({"tray":"cof-1","what":"ants"}));
    book.write("2026-04-24", "counted", json!({"tray":"cof-1","standing":40}));
    assert!(has(&book, "2026-04-26", "count cof-1"), "sick: 2 days");
    book.write("2026-04-27", "outplanted", json!({"tray":"cof-1","bed":"Upper 1","count":40}));
    let spent = ids(&book, "2026-06-10");
    assert!(!spent.iter().any(|id| id.ends_with("cof-1")), "{spent:?}");
}

#[test]
fn seedlings_are_pricked_out_three_weeks_after_half_emergence() {
    let mut book = seedbed();
    book.write("2026-03-01", "counted", json!({"tray":"cof-9","standing":80}));
    // 55 + 21 days after 1 January.
    assert!(!has(&book, "2026-03-17", "prick_out cof-9"));
    let due = stop(&book, "2026-03-18", "prick_out cof-9");
    assert_eq!(due.until, Some(day("2026-04-08")));
    assert_eq!(due.why, RoundReason::SeedlingsOldEnough { age_days: 76, from_days: 76, standing: 80 });
    // The same seed sown straight into a bag of its own size is not.
    let mut direct = small_nursery();
    ready_coffee(&mut direct, "cof-1");
    assert!(!has(&direct, "2025-09-15", "prick_out cof-1"));
    book.write(
        "2026-03-18",
        "moved_on",
        json!({"from":"cof-9","to":"cof-10","count":80,"how":"pricked_out","container":"bag"}),
    );
    assert!(!has(&book, "2026-03-19", "prick_out cof-9"));
}

#[test]
fn waiting_ends_past_the_last_day_when_nothing_new_comes() {
    let mut book = seedbed();
    book.write("2026-03-20", "counted", json!({"tray":"cof-9","standing":0}));
    // 90 days end on 1 April.
    assert!(!has(&book, "2026-04-01", "stop_waiting cof-9"));
    let due = stop(&book, "2026-04-02", "stop_waiting cof-9");
    assert_eq!(due.why, RoundReason::EmergenceOver { last_day: day("2026-04-01"), emerged: 0, sown: 100 });
    assert!(!has(&book, "2026-04-02", "count cof-9"), "a spent tray is not counted");
    book.write("2026-04-02", "let_go", json!({"task":"Stop waiting cof-9","never":true}));
    assert!(!has(&book, "2026-04-03", "stop_waiting cof-9"));
}

#[test]
fn what_goes_out_needs_no_measuring() {
    let book = fitting();
    let out = stop(&book, TODAY, "go_out cof-1");
    let RoundReason::Fits { beds, .. } = &out.why else { panic!("{:?}", out.why) };
    assert_eq!((beds[0].bed.as_str(), beds[0].plants, beds[0].after_others), ("Upper 1", 44, 44));
    // End of rains 15 June less 53 days, half of the 107 of the season.
    assert_eq!(out.until, Some(day("2026-04-23")));
    let ids = ids(&book, "2026-05-10");
    assert!(!ids.contains("go_out cof-1"), "past the safe day nothing goes out");
    // The next rains begin on 1 March 2027: a sample now would tell nothing of them. Its bag holds it to 26 July.
    assert!(!ids.contains("measure cof-1") && !ids.contains("check_plug cof-1"), "{ids:?}");
    assert!(!has(&book, "2026-07-11", "check_plug cof-1") && has(&book, "2026-07-12", "check_plug cof-1"));
    assert!(!has(&book, TODAY, "measure cof-1"));
}

#[test]
fn two_trays_for_one_bed_share_its_room() {
    let mut book = fitting();
    ready_coffee(&mut book, "cof-2");
    let (first, second) = (stop(&book, TODAY, "go_out cof-1"), stop(&book, TODAY, "go_out cof-2"));
    assert_eq!((first.at_stake.plants, second.at_stake.plants), (44.0, 0.0));
}

#[test]
fn circling_roots_are_cut_and_such_a_tray_is_not_measured() {
    let mut book = fitting();
    book.write("2026-04-12", "plug_checked", json!({"tray":"cof-1","roots":"circling"}));
    let ids = ids(&book, "2026-05-20");
    assert!(ids.contains("cut_roots cof-1"), "{ids:?}");
    assert!(!ids.contains("measure cof-1") && !ids.contains("check_plug cof-1"), "{ids:?}");
    book.write("2026-05-19", "roots_cut", json!({"tray":"cof-1"}));
    assert!(!self::ids(&book, "2026-05-20").contains("cut_roots cof-1"), "they were cut");
}

#[test]
fn lanky_plants_are_set_apart_and_very_lanky_ones_culled() {
    let sample = |height: f64| json!({"tray":"cof-1","plants":vec![json!({"height_cm":height,"collar_mm":4}); 10]});
    let mut book = fitting();
    book.write("2026-04-14", "measured", sample(36.0));
    let due = stop(&book, TODAY, "space_out cof-1");
    assert_eq!(due.why, RoundReason::Lanky { sturdiness: 9.0, limit: 8.0 });
    let mut thin = fitting();
    thin.write("2026-04-14", "measured", sample(44.0));
    assert!(has(&thin, TODAY, "cull cof-1") && !has(&thin, TODAY, "space_out cof-1"));
    assert!(!has(&fitting(), TODAY, "space_out cof-1"));
}

#[test]
fn hardening_begins_and_steps_follow_toward_the_bed() {
    let mut book = small_nursery();
    coffee_in_deep_shade(&mut book, "cof-3", "2025-09-20", "2026-01-10");
    // Least days end on 18 April; 28 days of hardening before that: 21 March.
    assert!(!has(&book, "2026-03-20", "begin_hardening cof-3"));
    let due = stop(&book, "2026-03-21", "begin_hardening cof-3");
    let RoundReason::HardeningNotBegun { step, length_days, .. } = &due.why else { panic!("{:?}", due.why) };
    // 30 % light; coffee wants 50 %, which is 20 points more and one step, and the nearest bench has 55 %.
    assert_eq!(*length_days, 28);
    let next = step.next.as_ref().unwrap();
    assert!((next.light - 0.55).abs() < 1e-9, "{step:?}");
    assert_eq!((next.place.as_ref().map(|place| place.as_str()), &step.then), (Some("Half shade"), &None));
    book.write("2026-03-21", "shade_set", json!({"tray":"cof-3","shade_pct":65}));
    assert!(!has(&book, "2026-03-27", "shade cof-3"), "a step settles 7 days");
    assert!(has(&book, "2026-03-28", "shade cof-3"), "35 % x 1.3 is below 50 %");
    book.write("2026-03-28", "shade_set", json!({"tray":"cof-3","shade_pct":50}));
    assert!(!has(&book, "2026-04-10", "shade cof-3"));
    book.write("2026-04-10", "flushed", json!({"tray":"cof-3"}));
    assert!(!has(&book, "2026-04-12", "water cof-3"), "soft leaves wait");
}

#[test]
fn a_treatment_that_ends_is_told_until_somebody_looked() {
    let mut book = fitting();
    book.write("2026-04-10", "treated", json!({"tray":"cof-1","with":"copper","safe_after_days":5}));
    assert!(!has(&book, "2026-04-14", "treatment_over cof-1"));
    assert!(has(&book, TODAY, "treatment_over cof-1"));
    assert!(!has(&book, "2026-04-18", "treatment_over cof-1"));
    book.write("2026-04-15", "counted", json!({"tray":"cof-1","standing":48}));
    assert!(!has(&book, TODAY, "treatment_over cof-1"));
}

#[test]
fn lots_are_tested_and_sown_before_they_die() {
    let mut book = small_nursery();
    book.write("2026-01-01", "lot_received", json!({"lot":"cof-L2","species":"COA","source":"row","collected":"2026-01-01","seeds":500,"kept":"in_parchment"}));
    // 90 days of life end on 1 April; a quarter of them is 23 days. Half of a test is up after 55: begun by day 12 it tells before the
    // seed must be sown, and past 5 February not even before it is dead.
    assert!(!has(&book, "2026-01-12", "test_lot cof-L2"));
    assert!(has(&book, "2026-01-13", "test_lot cof-L2") && has(&book, "2026-02-05", "test_lot cof-L2"));
    assert!(!has(&book, "2026-02-06", "test_lot cof-L2") && !has(&book, "2026-03-03", "test_lot cof-L2"));
    // Seed that keeps is tested after more than 60 days.
    book.write("2026-01-01", "lot_received", json!({"lot":"ced-L1","species":"cedrela","source":"row","collected":"2026-01-01","seeds":500,"kept":"dry_open"}));
    assert!(!has(&book, "2026-03-02", "test_lot ced-L1") && has(&book, "2026-03-03", "test_lot ced-L1"));
    assert!(!has(&book, "2026-03-08", "sow_lot cof-L2"));
    let due = stop(&book, "2026-03-09", "sow_lot cof-L2");
    assert_eq!(due.until, Some(day("2026-04-01")));
    assert_eq!(due.at, Where::SeedStore);
    assert!(!has(&book, "2026-03-09", "test_lot cof-L2"), "seed that must be sown is not tested");
    // Dead at twice its life.
    assert!(!has(&book, "2026-07-01", "test_lot cof-L2"));
    book.write("2026-03-10", "lot_counted", json!({"lot":"cof-L2","seeds":0}));
    assert!(!has(&book, "2026-03-11", "sow_lot cof-L2"));
}

#[test]
fn beds_are_made_ready_where_a_tray_comes() {
    let mut book = small_nursery();
    ready_coffee(&mut book, "cof-1");
    book.write(
        "2026-01-01",
        "bed_set",
        json!({"bed":"Bare","field":"Upper","length_m":20,"width_m":6,
        "plan":[{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]}),
    );
    wet_days(&mut book);
    let bare = ids(&book, TODAY);
    assert!(bare.contains("read_light Bare") && bare.contains("check_soil Bare"), "{bare:?}");
    assert!(!bare.contains("holes Bare"), "no hole is dug on unknown light");
    book.write("2026-04-14", "light_read", json!({"bed":"Bare","light_share":0.6}));
    book.write("2026-04-14", "prepared", json!({"bed":"Bare","task":"cleared"}));
    let lit = ids(&book, TODAY);
    assert!(lit.contains("holes Bare") && lit.contains("weed Bare") && lit.contains("mulch Bare"), "{lit:?}");
    assert!(!lit.contains("clear Bare") && !lit.contains("read_light Bare"), "{lit:?}");
    book.write("2026-04-15", "light_read", json!({"bed":"Bare","light_share":0.99}));
    book.write("2026-04-15", "light_read", json!({"bed":"Bare","light_share":0.99}));
    assert!(!has(&book, TODAY, "holes Bare"), "too bright for coffee");
}

#[test]
fn planted_beds_are_weeded_and_counted() {
    let mut book = fitting();
    book.write("2026-04-15", "outplanted", json!({"tray":"cof-1","bed":"Upper 1","count":44}));
    book.write(
        "2026-04-20",
        "nurse_planted",
        json!({"bed":"Upper 1","nurse":"castor","count":20,"row_m":2,"in_row_m":2}),
    );
    assert!(!has(&book, "2026-05-14", "weed Upper 1"), "not in the first month");
    assert!(has(&book, "2026-05-15", "weed Upper 1"));
    book.write("2026-05-15", "prepared", json!({"bed":"Upper 1","task":"weeded"}));
    assert!(!has(&book, "2026-06-11", "weed Upper 1"));
    assert!(has(&book, "2026-06-12", "weed Upper 1"));
    assert!(!has(&book, "2026-11-15", "weed Upper 1"), "after 6 months");
    // Counted at one month (from day 27), open until day 46.
    let name = "count_survivors Upper 1 cof 2026-04-15 1";
    assert!(!has(&book, "2026-05-11", name) && has(&book, "2026-05-12", name));
    assert!(has(&book, "2026-05-31", name) && !has(&book, "2026-06-01", name));
    book.write("2026-05-13", "survival_counted", json!({"bed":"Upper 1","species":"COA","alive":42,"dead":2}));
    assert!(!has(&book, "2026-05-14", name));
    assert!(has(&book, "2026-07-10", "count_survivors Upper 1 cof 2026-04-15 3"));
    // Full: no light reading, however old the last.
    assert!(!has(&book, "2026-12-01", "read_light Upper 1"));
    assert!(!has(&book, "2026-06-18", "count_nurses Upper 1") && has(&book, "2026-06-19", "count_nurses Upper 1"));
}

#[test]
fn bare_roots_have_a_last_day_and_no_plug() {
    let mut book = small_nursery();
    book.write("2026-04-14", "plants_received", json!({"tray":"cod-1","species":"COD","count":30,"from":"bought","form":"bare_root","place":"Half shade","good_until":"2026-04-18"}));
    let due = stop(&book, TODAY, "last_day cod-1");
    assert_eq!(
        due.why,
        RoundReason::LastDayNear { until: day("2026-04-18"), days_left: 3, written: true, stump: false, look: None }
    );
    let ids_later = ids(&book, "2026-04-20");
    assert!(ids_later.contains("cull cod-1") && !ids_later.contains("last_day cod-1"), "{ids_later:?}");
    assert!(!has(&book, TODAY, "check_plug cod-1"));
}

#[test]
fn a_task_let_go_stays_away_until_its_day() {
    let mut book = fitting();
    book.write("2026-04-15", "let_go", json!({"task":"GO OUT cof-1","until":"2026-04-15"}));
    assert!(!has(&book, TODAY, "go_out cof-1"));
    let mut never = fitting();
    never.write("2026-04-15", "let_go", json!({"task":"count cof-1","never":true}));
    assert!(!has(&never, "2026-06-01", "count cof-1"));
}

#[test]
fn a_short_walk_keeps_what_loses_most() {
    let mut book = fitting();
    book.write("2026-04-01", "nursery_set", json!({"name":"Test terrace","latitude_deg":-1.2,"longitude_deg":36.0,"altitude_m":1650,"utc_offset_h":3,"walk_minutes":2}));
    book.write(
        "2026-01-01",
        "bed_set",
        json!({"bed":"Bare","field":"Upper","length_m":4,"width_m":4,
        "plan":[{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]}),
    );
    let short = round(&book.on(TODAY));
    assert_eq!(short.minutes_allowed, 2.0);
    let kept: Vec<&str> = short.stops.iter().map(|stop| stop.id.as_str()).collect();
    assert_eq!(kept, ["go_out cof-1"]);
    assert!(short.stops[0].marked);
    assert!(!short.can_wait.is_empty());
}

fn sample_picture() -> Picture {
    let folder = tempfile::tempdir().unwrap();
    let today = day("2026-11-25");
    let now = Now { today, clock: None, moment: Moment::end_of(today, 3.0) };
    sample::make(&folder.path().join("sample.outplant"), folder.path(), now).unwrap().picture()
}

#[test]
fn the_sample_nursery_has_a_round_that_can_be_walked() {
    let picture = sample_picture();
    let walked = round(&picture);
    assert_eq!(walked.minutes_allowed, 50.0);
    assert!(walked.minutes <= 50.0 && walked.minutes > 30.0, "{}", walked.minutes);
    assert!(walked.stops.windows(2).all(|pair| pair[0].order <= pair[1].order));
    let everything = all(&picture);
    let names: BTreeSet<&str> = everything.iter().map(|stop| stop.id.as_str()).collect();
    assert_eq!(names.len(), everything.len(), "a task twice");
    let pairs: BTreeSet<_> = everything
        .iter()
        .filter(|stop| stop.task != Task::CountSurvivors)
        .map(|stop| (stop.task, stop.subject.clone()))
        .collect();
    assert_eq!(pairs.len(), everything.iter().filter(|stop| stop.task != Task::CountSurvivors).count());
    assert!(everything.iter().all(|stop| stop.source != Source::Figure(String::new()) && stop.minutes > 0.0));
    let kept: BTreeSet<&str> = walked.stops.iter().map(|stop| stop.id.as_str()).collect();
    for due in [
        "go_out cof-021",
        "go_out avo-011",
        "go_out cod-012",
        "go_out gre-014",
        "go_out gli-008",
        "go_out jac-006",
        "sick pap-005",
        "prick_out cof-030",
        "pot_on gli-006",
        "space_out gre-016",
        "fence School 1",
        "mulch Ridge 1",
        "weed Ridge 2",
        "holes Spring 1",
        "read_light Ridge 4",
        "check_soil Valley 3",
    ] {
        assert!(kept.contains(due), "'{due}' is not on the walk: {kept:?}");
    }
    // Nothing of its plan has light enough there; in Spring 1 the coffee has, and more light would harm it.
    let dark = everything.iter().find(|stop| stop.id == "cut_for_light School 4").unwrap();
    assert!(matches!(&dark.why, RoundReason::NurseWork(NurseWork::TooDark { light, least, .. }) if light < least));
    assert_eq!(dark.cautions(), [Caution::Felling]);
    for quiet in [
        "cut_for_light Spring 1",
        "prick_out gre-018",
        "begin_hardening avo-012",
        "shade jac-007",
        "shade pru-003",
        "check_plug cod-012",
        "holes School 4",
        "holes Valley 2",
        "weed School 1",
        "read_light School 2",
        "fence Ridge 3",
        "gauge",
        "measure jac-006",
    ] {
        assert!(!names.contains(quiet), "'{quiet}' is silly today");
    }
    // Too late for the rains that are safe until 10 December: it can wait, and says so.
    let late = everything.iter().find(|stop| stop.id == "begin_hardening cof-023").unwrap();
    assert!(matches!(late.why, RoundReason::HardeningNotBegun { too_late: Some(_), .. }), "{:?}", late.why);
    assert_eq!(everything.iter().filter(|stop| stop.marked).count(), 3);
    let living =
        |stop: &Stop| stop.tray().is_none_or(|tray| picture.trays[tray].standing > 0 || stop.task != Task::Count);
    assert!(everything.iter().all(living));
}

fn changed(before: &Picture, after: &Picture, entries: &[Arc<Entry>]) -> Vec<Change> {
    let then = View { day: before.day, known: before.known };
    changes(before, after, &FromThen::whole(then, after.day, entries))
}

#[test]
fn a_change_names_the_entry_or_the_day() {
    let mut book = fitting();
    let held = book.write("2026-04-16", "held", json!({"tray":"cof-1","why":"promised"}));
    book.write("2026-04-16", "noted", json!({"about":"cof-1","text":"fine leaves"}));
    let found = changed(&book.on(TODAY), &book.on("2026-04-16"), &book.entries);
    let tray = found.iter().find(|change| matches!(change.turned, Turned::Tray { .. })).unwrap();
    assert_eq!(&*tray.entries, std::slice::from_ref(&held));
    assert_eq!(tray.flips.iter().map(|flip| flip.rule).collect::<Vec<_>>(), [Rule::Held]);
    assert_eq!(tray.flips[0].cause, Cause::Entries([held].into()));
    let pair = found.iter().find(|change| matches!(change.turned, Turned::Pair { .. })).unwrap();
    assert!(matches!(&pair.turned, Turned::Pair { was: Some(true), is: Some(false), .. }));
}

#[test]
fn days_alone_end_the_rains() {
    let book = fitting();
    // 23 April is the last safe day.
    let found = changed(&book.on("2026-04-23"), &book.on("2026-04-24"), &book.entries);
    let pair = found.iter().find(|change| matches!(change.turned, Turned::Pair { .. })).unwrap();
    assert!(pair.entries.is_empty());
    let season = pair.flips.iter().find(|flip| flip.rule == Rule::Season).unwrap();
    assert_eq!((season.was, season.is, &season.cause), (Some(true), Some(false), &Cause::Passed(Passage::Rains)));
    assert!(changed(&book.on(TODAY), &book.on(TODAY), &book.entries).is_empty());
}

#[test]
fn a_tray_is_measured_lifted_and_watered_less_as_its_days_come() {
    let mut book = small_nursery();
    coffee_in_deep_shade(&mut book, "cof-3", "2025-09-20", "2026-01-10");
    // Least days end on 18 April: a sample from 30 days before, a plug from 14.
    assert!(!has(&book, "2026-03-18", "measure cof-3") && has(&book, "2026-03-19", "measure cof-3"));
    assert!(!has(&book, "2026-04-03", "check_plug cof-3") && has(&book, "2026-04-04", "check_plug cof-3"));
    // Far enough from the least height that a larger sample would decide nothing.
    let plants: Vec<_> = [25.0, 25.2, 24.8, 25.1].iter().map(|cm| json!({"height_cm":cm,"collar_mm":4})).collect();
    book.write("2026-03-20", "measured", json!({"tray":"cof-3","plants":plants}));
    book.write("2026-03-31", "plug_checked", json!({"tray":"cof-3","roots":"crumbles"}));
    assert!(!has(&book, "2026-04-17", "measure cof-3") && has(&book, "2026-04-18", "measure cof-3"));
    assert!(!has(&book, "2026-04-20", "check_plug cof-3") && has(&book, "2026-04-21", "check_plug cof-3"));
    // From 24 April on it waits for the rains of March.
    assert!(!has(&book, "2026-04-24", "check_plug cof-3") && !has(&book, "2026-04-24", "measure cof-3"));
    // In the bed's light since 21 March; the template waters every 2 days from 14 days before 18 April, then every 3.
    book.write("2026-03-21", "carried", json!({"tray":"cof-3","place":"Half shade"}));
    assert!(!has(&book, "2026-04-03", "water cof-3"));
    let RoundReason::StepDue { step, .. } = stop(&book, "2026-04-04", "water cof-3").why else { panic!("no step") };
    assert_eq!((&step.next, step.water_every_days), (&None, Some(2)));
    book.write("2026-04-04", "watering_set", json!({"tray":"cof-3","every_days":2}));
    assert!(!has(&book, "2026-04-10", "water cof-3") && has(&book, "2026-04-11", "water cof-3"));
}

#[test]
fn a_fence_is_asked_about_of_a_bed_that_takes_plants_today_and_else_only_in_a_field_with_fences() {
    let mut book = fitting();
    assert!(has(&book, TODAY, "fence Upper 1"), "cof-1 goes there today");
    book.write("2026-04-14", "held", json!({"tray":"cof-1","why":"promised"}));
    assert!(!has(&book, TODAY, "fence Upper 1"));
    book.write("2026-04-15", "released", json!({"tray":"cof-1"}));
    open_bed(&mut book, "Upper 2");
    book.write("2026-04-10", "prepared", json!({"bed":"Upper 2","task":"fenced"}));
    assert!(has(&book, TODAY, "fence Upper 1") && !has(&book, TODAY, "fence Upper 2"));
}

#[test]
fn a_coming_day_and_a_past_day_have_their_own_round() {
    let book = fitting();
    assert!(!has(&book, "2025-06-10", "count cof-1"), "nothing is up yet");
    assert!(has(&book, "2025-07-15", "count cof-1"));
    let whole = book.on("2027-01-01");
    assert!(round(&whole).stops.iter().any(|stop| stop.task == Task::Gauge));
}

fn sample_desk() -> (tempfile::TempDir, Desk) {
    let folder = tempfile::tempdir().unwrap();
    let today = day("2026-11-25");
    let now = Now { today, clock: None, moment: Moment::end_of(today, 3.0) };
    let desk = sample::make(&folder.path().join("sample.outplant"), folder.path(), now).unwrap();
    (folder, desk)
}

/// Days of the year on which the round of the sample is walked.
const WALKED_DAYS: [&str; 13] = [
    "2025-12-20",
    "2026-01-15",
    "2026-02-12",
    "2026-03-10",
    "2026-04-08",
    "2026-05-05",
    "2026-06-02",
    "2026-07-01",
    "2026-08-11",
    "2026-09-15",
    "2026-10-13",
    "2026-11-25",
    "2027-02-20",
];

#[test]
fn every_stop_says_until_when_and_what_is_lost_in_both_languages() {
    let (_folder, desk) = sample_desk();
    let (mut seen, mut overdue) = (BTreeSet::new(), 0);
    for on in WALKED_DAYS {
        let picture = desk.picture_of(View { day: day(on), known: None }).unwrap();
        for stop in all(&picture) {
            seen.insert(stop.task);
            assert!(stop.until.is_some(), "{on}: {} has no last day", stop.id);
            assert_eq!(stop.until.is_some(), stop.until_for.is_some(), "{on}: {}", stop.id);
            assert!(!stop.until_for.unwrap().source().is_empty());
            assert!(stop.due.is_none_or(|due| due.on <= picture.day), "{on}: {} is due {:?}", stop.id, stop.due);
            assert!(stop.work_minutes.is_none_or(|work| work > stop.minutes), "{on}: {}", stop.id);
            overdue += usize::from(stop.is_overdue(picture.day));
            for lang in [Lang::En, Lang::Es] {
                let wording = Wording::new(lang);
                let words = RoundOn { day: picture.day, species: &picture.site.species };
                assert!(!wording.round_reason(&stop.why, words).is_empty(), "{on}: {}", stop.id);
                assert!(!wording.or_else_lost(&stop).is_empty());
                let until = wording.until_words(&stop, words);
                let since = if lang == Lang::En { "overdue since" } else { "atrasada desde" };
                assert_eq!(until.contains(since), stop.is_overdue(picture.day), "{on}: {}: {until}", stop.id);
            }
        }
    }
    assert!(overdue > 0);
    assert!(seen.len() >= 20, "{} kinds were seen: {seen:?}", seen.len());
}

/// Walks the sample for so many days and writes nothing: the days each kind that is late waited until it was walked.
fn kinds_waited(desk: &Desk, days: i32) -> BTreeMap<Task, i32> {
    let (mut late_since, mut most): (BTreeMap<Task, i32>, BTreeMap<Task, i32>) = Default::default();
    for ahead in 0..days {
        let on = day("2026-11-25").plus(ahead);
        let walked = round(&desk.picture_of(View { day: on, known: None }).unwrap());
        let kept: BTreeSet<Task> = walked.stops.iter().map(|stop| stop.task).collect();
        let late: BTreeSet<Task> =
            walked.can_wait.iter().filter(|stop| stop.late_days(on).is_some()).map(|stop| stop.task).collect();
        late_since.retain(|task, _| late.contains(task) && !kept.contains(task));
        for task in late.difference(&kept) {
            let waited = ahead - *late_since.entry(*task).or_insert(ahead) + 1;
            let longest = most.entry(*task).or_insert(0);
            *longest = waited.max(*longest);
        }
    }
    most
}

#[test]
fn every_kind_of_late_stop_has_its_turn_within_four_weeks() {
    let (_folder, desk) = sample_desk();
    let waited = kinds_waited(&desk, 84);
    assert!(waited.contains_key(&Task::Measure) && waited.contains_key(&Task::CountNurses), "{waited:?}");
    assert!(waited.values().all(|days| *days <= 28), "{waited:?}");
}

#[test]
fn a_stop_does_not_come_and_go_from_day_to_day() {
    let (_folder, desk) = sample_desk();
    let walked: Vec<(BTreeSet<String>, BTreeSet<String>)> = (0..42)
        .map(|ahead| {
            let Round { stops, can_wait, .. } =
                round(&desk.picture_of(View { day: day("2026-11-26").plus(ahead), known: None }).unwrap());
            let ids = |stops: Vec<Stop>| stops.into_iter().map(|stop| stop.id).collect::<BTreeSet<_>>();
            (ids(stops), ids(can_wait))
        })
        .collect();
    let mut flipped = Vec::new();
    for three in walked.windows(3) {
        let [a, b, c] = three else { continue };
        flipped.extend(a.0.iter().filter(|id| b.1.contains(*id) && c.0.contains(*id)).cloned());
        flipped.extend(b.0.iter().filter(|id| a.1.contains(*id) && c.1.contains(*id)).cloned());
    }
    // In steps of loss and turns of days few do, though the days themselves bring and end what is due.
    let walked_stops: usize = walked.iter().map(|(stops, _)| stops.len()).sum();
    assert!(flipped.len() * 20 <= walked_stops, "{} of {walked_stops}: {flipped:?}", flipped.len());
    assert!(flipped.iter().all(|id| !id.starts_with("go_out")), "{flipped:?}");
}

#[test]
fn a_count_is_late_after_half_of_its_interval_and_cutting_roots_after_three_weeks() {
    let mut book = fitting();
    // Counted on 10 April, every 7 days while ready: due on the 17th, late from the 21st.
    let due = stop(&book, "2026-04-20", "count cof-1");
    assert_eq!((due.until, due.until_for), (Some(day("2026-04-21")), Some(UntilFor::Interval)));
    assert_eq!(due.due.map(|due| due.on), Some(day("2026-04-17")));
    assert!(!due.is_overdue(day("2026-04-20")) && due.late_days(day("2026-04-20")).is_none());
    let late = stop(&book, "2026-04-25", "count cof-1");
    assert!(late.is_overdue(day("2026-04-25")));
    assert_eq!(late.late_days(day("2026-04-25")), Some(4));
    book.write("2026-04-12", "plug_checked", json!({"tray":"cof-1","roots":"circling"}));
    let pot = stop(&book, "2026-05-20", "cut_roots cof-1");
    assert_eq!((pot.until, pot.until_for), (Some(day("2026-05-03")), Some(UntilFor::Roots)));
    assert!(pot.is_overdue(day("2026-05-20")));
}

#[test]
fn hardening_that_comes_too_late_for_these_rains_names_the_next() {
    let mut book = small_nursery();
    coffee_in_deep_shade(&mut book, "cof-3", "2025-09-20", "2026-01-10");
    // 28 days from 21 March end on 18 April; the safe days of these rains end on the 23rd: by 26 March.
    let in_time = stop(&book, "2026-03-21", "begin_hardening cof-3");
    assert!(matches!(in_time.why, RoundReason::HardeningNotBegun { too_late: None, .. }), "{:?}", in_time.why);
    assert_eq!((in_time.until, in_time.until_for), (Some(day("2026-03-26")), Some(UntilFor::Hardened)));
    let late = stop(&book, "2026-04-10", "begin_hardening cof-3");
    let RoundReason::HardeningNotBegun { too_late: Some(too_late), .. } = &late.why else { panic!("{:?}", late.why) };
    assert_eq!((too_late.last_safe, too_late.next_from), (day("2026-04-23"), Some(day("2027-03-01"))));
    // Its bag ends before the next rains: 420 days from 20 September 2025, less 28.
    assert_eq!((late.until, late.until_for), (Some(day("2026-10-17")), Some(UntilFor::Container)));
    let picture = book.on("2026-04-10");
    let words = RoundOn { day: picture.day, species: &picture.site.species };
    let said = Wording::new(Lang::En).round_reason(&late.why, words);
    assert!(said.contains("safe until 23 Apr: for the next, from 1 Mar 2027"), "{said}");
    assert!(Wording::new(Lang::En).until_words(&late, words).contains("too old for its bag"));
}

#[test]
fn minutes_are_those_of_looking_and_the_work_is_told_beside() {
    let book = fitting();
    let out = stop(&book, TODAY, "go_out cof-1");
    // 44 plants at 3 minutes.
    assert_eq!((out.minutes, out.work_minutes), (2.0, Some(132.0)));
    assert!(stop(&book, "2026-04-17", "count cof-1").work_minutes.is_none(), "counting is all there is to it");
    let walked = round(&book.on(TODAY));
    assert!(walked.minutes <= walked.minutes_allowed && walked.work_minutes > walked.minutes_allowed);
}

#[test]
fn plants_that_find_no_place_are_told_and_beds_name_the_tray_that_waits_for_them() {
    let mut book = fitting();
    ready_coffee(&mut book, "cof-2");
    let plan = json!([{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]);
    book.write("2025-01-01", "bed_set", json!({"bed":"Upper 2","field":"Upper","length_m":20,"width_m":6,"plan":plan}));
    book.write("2026-04-01", "light_read", json!({"bed":"Upper 2","light_share":0.6}));
    book.write("2026-04-01", "soil_checked", json!({"bed":"Upper 2","resistance_mpa":1.2,"depth_cm":30,"wet":true}));
    book.write("2026-04-05", "prepared", json!({"bed":"Upper 2","task":"cleared"}));
    book.write("2026-04-05", "prepared", json!({"bed":"Upper 2","task":"holes"}));
    let RoundReason::Fits { no_place, stays, .. } = stop(&book, TODAY, "go_out cof-1").why else { panic!("no fit") };
    assert_eq!((no_place, stays), (4, 0), "48 good plants, 44 places");
    // cof-1 goes out to Upper 1 today: Upper 2 is weeded for cof-2.
    let RoundReason::WorkMissing { tray: Some(tray), .. } = stop(&book, TODAY, "weed Upper 2").why else {
        panic!("no tray")
    };
    assert_eq!((tray.tray.as_str(), tray.goes_today, tray.others), ("cof-2", false, 1));
    let stops = round(&book.on(TODAY)).stops;
    let at = |id: &str| stops.iter().position(|stop| stop.id == id).unwrap();
    assert_eq!(at("weed Upper 2") + 1, at("mulch Upper 2"), "ground work of a bed stands together");
}

#[test]
fn what_several_rows_count_is_said_once() {
    let mut book = fitting();
    assert!(shared_offers(&book.on(TODAY)).is_empty());
    ready_coffee(&mut book, "cof-2");
    let names = |codes: &[&str]| codes.iter().map(|code| TrayCode::new(code).unwrap()).collect::<Vec<_>>();
    let upper = BedName::new("Upper 1").unwrap();
    let one = SharedOffer::Bed {
        bed: upper.clone(),
        species: SpeciesKey::new("COA"),
        places: 44,
        trays: names(&["cof-1", "cof-2"]),
    };
    assert_eq!(shared_offers(&book.on(TODAY)), [one]);
    open_bed(&mut book, "Upper 2");
    let both = shared_offers(&book.on(TODAY));
    let tray = SharedOffer::Tray {
        tray: names(&["cof-1"]).remove(0),
        plants: 48,
        beds: vec![upper, BedName::new("Upper 2").unwrap()],
    };
    assert!(both.contains(&tray) && both.len() == 4, "{both:?}");
}

#[test]
fn the_cause_is_what_turned_it_and_not_what_was_written_beside() {
    let mut book = fitting();
    book.write("2026-04-16", "weather", json!({"rain_mm":12}));
    let held = book.write("2026-04-16", "held", json!({"tray":"cof-1","why":"promised"}));
    book.write("2026-04-16", "counted", json!({"tray":"cof-1","standing":47}));
    let found = changed(&book.on(TODAY), &book.on("2026-04-16"), &book.entries);
    assert!(found.iter().all(|change| *change.entries == *std::slice::from_ref(&held)), "{found:?}");
    // Taken back on the 18th: what turned it last is the withdrawal, on its day.
    let back = book.write("2026-04-18", "withdrawn", json!({"entries":[held.to_string()],"why":"sold elsewhere"}));
    let then = day("2026-04-16");
    let known = draw_picture(View { day: then, known: Some(evening(then)) }, then, book.entries.iter().cloned());
    let found = changed(&known, &book.on("2026-04-18"), &book.entries);
    let pair = found.iter().find(|change| matches!(change.turned, Turned::Pair { .. })).unwrap();
    assert_eq!((&*pair.entries, pair.on), (std::slice::from_ref(&back), day("2026-04-18")));
    // Over weeks: the day that was one too many, with its date.
    let long = changed(&book.on(TODAY), &book.on("2026-07-20"), &book.entries);
    let pair = long.iter().find(|change| matches!(change.turned, Turned::Pair { .. })).unwrap();
    assert!(pair.entries.is_empty(), "{pair:?}");
    assert!(pair.on > day(TODAY) && pair.on <= day("2026-04-24"), "{pair:?}");
}
