//! Ground work that lasts so many days, rains that leave so many, places that are left.

use outplant::reckon::picture::{Criterion, Rule};
use serde_json::{Value, json};

use crate::support::{Book, bed_species, criterion, fitting, pair, small_nursery};

const TODAY: &str = "2026-04-15";

/// What holds the tray back from the bed on a day; nothing where it fits.
fn held_by(book: &Book, on: &str) -> Vec<Rule> {
    let picture = book.on(on);
    let pair = pair(&picture, "cof-1", "Upper 1");
    assert_eq!(pair.fits, pair.held_by.is_empty());
    let mut rules: Vec<Rule> = pair.held_by.iter().map(|held| held.rule).collect();
    rules.dedup();
    rules
}

/// Ready coffee and an open bed of which a work was done on another day.
fn worked(task: &str, on: &str) -> Book {
    let mut book = fitting();
    book.entries.retain(|entry| !format!("{:?}", entry.what).to_lowercase().contains(&format!("task: {task}")));
    book.write(on, "prepared", json!({"bed":"Upper 1","task":task}));
    book
}

#[test]
fn a_hole_dug_half_a_year_ago_still_holds_and_a_day_later_it_is_dug_again() {
    // 17 October to 15 April are 180 days.
    assert_eq!(held_by(&worked("holes", "2025-10-17"), TODAY), []);
    assert_eq!(held_by(&worked("holes", "2025-10-16"), TODAY), [Rule::Holes]);
}

#[test]
fn a_ring_weeded_thirty_days_ago_is_clean_and_a_day_later_it_is_weeded_again() {
    assert_eq!(held_by(&worked("weeded", "2026-03-16"), TODAY), []);
    assert_eq!(held_by(&worked("weeded", "2026-03-15"), TODAY), [Rule::Weeded]);
}

#[test]
fn mulch_of_four_months_covers_and_a_day_later_new_mulch_is_asked_for_and_nothing_waits_for_it() {
    let mulch = |on: &str| -> Criterion {
        let book = worked("mulched", on);
        assert_eq!(held_by(&book, TODAY), [], "mulch only advises");
        criterion(&bed_species(&book.on(TODAY), "Upper 1", "COA").criteria, Rule::Mulched).clone()
    };
    // 16 December to 15 April are 120 days.
    assert_eq!((mulch("2025-12-16").met(), mulch("2025-12-16").warns), (Some(true), false));
    assert_eq!((mulch("2025-12-15").met(), mulch("2025-12-15").warns), (Some(false), true));
}

/// Ready coffee and an open bed under other rains, with wet ground and clean rings on the days looked at.
fn under_rains(rains: Value) -> Book {
    let mut book = fitting();
    book.write("2025-06-01", "season_set", json!({"rains":rains}));
    for on in ["2026-04-16", "2026-04-20", "2026-04-22", "2026-04-23", "2026-04-24"] {
        book.write(on, "weather", json!({"rain_mm":12}));
    }
    book
}

#[test]
fn eight_weeks_before_the_rains_end_is_the_last_day_to_plant() {
    // 10 June less 56 days is 15 April.
    let rains = |until: &str| under_rains(json!([{"from":"02-01","until":until}]));
    assert_eq!(held_by(&rains("06-10"), TODAY), []);
    assert_eq!(held_by(&rains("06-09"), TODAY), [Rule::Season]);
    assert_eq!(held_by(&rains("06-10"), "2026-04-16"), [Rule::Season]);
}

#[test]
fn of_short_rains_the_second_half_is_too_late() {
    // 1 March to 15 June are 107 days: half of them, 53, before 15 June is 23 April, later than eight weeks before.
    let book = under_rains(json!([{"from":"03-01","until":"06-15"}]));
    assert_eq!(held_by(&book, "2026-04-23"), []);
    assert_eq!(held_by(&book, "2026-04-24"), [Rule::Season]);
}

#[test]
fn rains_that_go_on_over_the_new_year_are_one_season() {
    // From 1 October to 10 June: eight weeks before their end is 15 April of the next year.
    let book = under_rains(json!([{"from":"10-01","until":"06-10"}]));
    assert_eq!((held_by(&book, TODAY), held_by(&book, "2026-04-16")), (vec![], vec![Rule::Season]));
    let season = |on: &str| criterion(&bed_species(&book.on(on), "Upper 1", "COA").criteria, Rule::Season).met();
    let told = ["2025-12-31", "2026-01-01", "2026-09-30", "2026-10-01"].map(season);
    assert_eq!(told, [Some(true), Some(true), Some(false), Some(true)]);
}

#[test]
fn a_bed_takes_plants_while_one_place_is_left_and_none_when_all_are_taken() {
    // 20 x 6 m at 2 x 2 m, both edges counted: 11 x 4 places.
    let planted = |plants: u32| {
        let mut book = fitting();
        let came = json!({"tray":"cof-2","species":"coffee","count":plants,"from":"bought","form":"bag"});
        book.write("2026-04-12", "plants_received", came);
        book.write("2026-04-12", "outplanted", json!({"tray":"cof-2","bed":"Upper 1","count":plants}));
        book
    };
    assert_eq!(held_by(&planted(43), TODAY), []);
    assert_eq!(pair(&planted(43).on(TODAY), "cof-1", "Upper 1").plants, 1);
    assert_eq!(held_by(&planted(44), TODAY), [Rule::OpenPositions]);
}

#[test]
fn what_hands_do_among_what_was_sprayed_is_told_for_after_the_wait() {
    use outplant::wording::verdict::About;
    use outplant::wording::{Lang, Wording};
    let reason = |book: &Book, rule: Rule, lang: Lang| {
        let picture = book.on(TODAY);
        let of_bed = &bed_species(&picture, "Upper 1", "COA").criteria;
        let of_tray = &crate::support::tray(&picture, "cof-1").criteria;
        let found = of_bed.iter().chain(of_tray).find(|one| one.rule() == rule).unwrap();
        Wording::new(lang).reason(found, About::Bed)
    };
    // Mulch of last year, in a bed that was sprayed yesterday.
    let mut bed = worked("mulched", "2025-06-01");
    let dry = reason(&bed, Rule::Mulched, Lang::En);
    bed.write("2026-04-14", "treated", json!({"bed":"Upper 1","with":"mancozeb","safe_after_days":7}));
    let said = reason(&bed, Rule::Mulched, Lang::En);
    assert_eq!(said, format!("from 21 Apr 2026 on, when the waiting time is over, and not before: {dry}"));
    assert!(reason(&bed, Rule::Mulched, Lang::Es).starts_with("desde el 21 abr 2026"));
    // What is met, and what ends by itself, is told as ever.
    assert_eq!(reason(&bed, Rule::Weeded, Lang::En), reason(&fitting(), Rule::Weeded, Lang::En));
    // A sprayed tray whose plug nobody looked at: of a label that nobody read there is no day.
    let mut tray = small_nursery();
    crate::support::ready_coffee(&mut tray, "cof-1");
    crate::support::open_bed(&mut tray, "Upper 1");
    tray.entries.retain(|entry| !format!("{:?}", entry.what).contains("PlugChecked"));
    tray.write("2026-04-14", "treated", json!({"tray":"cof-1","with":"mancozeb"}));
    let said = reason(&tray, Rule::Plug, Lang::En);
    assert!(said.starts_with("only when the waiting time is known and over: "), "{said}");
}

#[test]
fn who_plants_among_castor_is_told_so_where_the_tray_is_sent_out() {
    use outplant::reckon::round::{Task, round};
    let mut book = fitting();
    let handled = |book: &Book| {
        let picture = book.on(TODAY);
        let out = round(&picture).stops.into_iter().find(|stop| stop.task == Task::GoOut).unwrap();
        out.plants_handled(&picture).iter().map(ToString::to_string).collect::<Vec<_>>()
    };
    assert_eq!(handled(&book), ["COA"]);
    let row = json!({"bed":"Upper 1","nurse":"castor","count":4,"row_m":5,"in_row_m":5});
    book.write("2026-04-01", "nurse_planted", row);
    assert_eq!(handled(&book), ["COA", "CTR"]);
}
