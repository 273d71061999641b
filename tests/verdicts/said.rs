//! What a verdict must not keep to itself: readings that do not agree, a length under the one advised, wet ground that nobody saw.

use crate::support::{Book, bed_species, criterion, fitting, ready_coffee, small_nursery, tray};
use outplant::reckon::picture::{Criterion, Rule};
use outplant::wording::verdict::About;
use outplant::wording::{Lang, Wording};
use serde_json::json;

const TODAY: &str = "2026-04-15";

fn said(criterion: &Criterion, about: About) -> String {
    Wording::new(Lang::En).reason(criterion, about)
}

fn of_bed(book: &Book, rule: Rule) -> Criterion {
    criterion(&bed_species(&book.on(TODAY), "Upper 1", "COA").criteria, rule).clone()
}

fn of_tray(book: &Book, on: &str, rule: Rule) -> Criterion {
    criterion(&tray(&book.on(on), "cof-1").criteria, rule).clone()
}

#[test]
fn light_readings_that_do_not_agree_are_told_and_ask_for_care() {
    // 60 % was read on 1 April; 80 % eleven days later are as far apart as two readings may be.
    for (share, apart) in [(0.60, false), (0.80, false), (0.81, true), (0.35, true)] {
        let mut book = fitting();
        book.write("2026-04-12", "light_read", json!({"bed":"Upper 1","light_share":share}));
        let light = of_bed(&book, Rule::LightNow);
        assert_eq!(said(&light, About::Bed).contains("readings since 1 Apr 2026"), apart, "{share}: {light:?}");
        assert!(!apart || light.warns, "{share}");
    }
    let mut book = fitting();
    book.write("2026-04-12", "light_read", json!({"bed":"Upper 1","light_share":0.95}));
    let said = said(&of_bed(&book, Rule::LightNow), About::Bed);
    assert!(said.contains("from 60 % to 95 %") && said.contains("several spots"), "{said}");
}

#[test]
fn hardening_shorter_than_advised_says_both_lengths() {
    // Begun on 20 February: 22 days on 14 March, 28 on the 20th.
    let mut book = small_nursery();
    ready_coffee(&mut book, "cof-1");
    let short = of_tray(&book, "2026-03-14", Rule::Hardening);
    assert!(short.warns && short.met() == Some(true));
    let text = said(&short, About::Tray);
    assert!(text.contains("22 days") && text.contains("21 needed") && text.contains("28 advised"), "{text}");
    assert!(!of_tray(&book, "2026-03-20", Rule::Hardening).warns);
}

#[test]
fn a_step_into_much_darker_light_names_its_limit() {
    let step = of_tray(&fitting(), TODAY, Rule::ExposureStep);
    let source = Wording::new(Lang::En).source_words(&step.source);
    assert!(source.contains("above 1.3 times") && source.contains("below 0.5"), "{source}");
}

#[test]
fn wet_ground_that_nobody_saw_asks_for_care() {
    let mut book = small_nursery();
    ready_coffee(&mut book, "cof-1");
    crate::support::open_bed(&mut book, "Upper 1");
    let water = of_bed(&book, Rule::Water);
    assert!(water.warns && !water.blocks, "{water:?}");
    assert!(said(&water, About::Bed).contains("dig a finger"), "{}", said(&water, About::Bed));
}

#[test]
fn a_part_count_that_cannot_be_true_with_the_books_adds_no_plants() {
    // 30 in 20 of 60 cells would be 90, and 48 were counted.
    let mut book = fitting();
    book.write("2026-04-14", "counted", json!({"tray":"cof-1","standing":30,"cells_seen":20}));
    let picture = book.on(TODAY);
    let range = tray(&picture, "cof-1").standing_range;
    assert!(!picture.doubts.is_empty() && (range.likely, range.high) == (48.0, 48.0), "{range:?}");
    // 4 in 20 would be 12: those are gone until all are counted.
    let mut few = fitting();
    few.write("2026-04-14", "counted", json!({"tray":"cof-1","standing":4,"cells_seen":20}));
    assert_eq!(tray(&few.on(TODAY), "cof-1").standing_range.likely, 12.0);
}

#[test]
fn seedlings_in_a_sand_bed_are_told_to_be_pricked_out_and_are_in_no_bag() {
    let mut book = small_nursery();
    book.write("2025-01-01", "container_set", json!({"container":"sand bed","volume_ml":30,"depth_cm":15}));
    let sown = json!({"tray":"cof-1","lot":"cof-L1","seeds":60,"container":"sand bed","place":"Half shade"});
    book.write("2025-06-01", "sown", sown);
    book.write("2025-09-10", "counted", json!({"tray":"cof-1","standing":50}));
    let text = said(&of_tray(&book, TODAY, Rule::DaysInContainer), About::Tray);
    assert!(text.contains("seedbed") && text.contains("prick out") && !text.contains("bag"), "{text}");
}

#[test]
fn circling_roots_are_not_mended_by_a_larger_bag_alone() {
    let mut book = fitting();
    book.write("2026-04-14", "plug_checked", json!({"tray":"cof-1","roots":"circling"}));
    for rule in [Rule::Plug, Rule::DaysInContainer] {
        let text = said(&of_tray(&book, TODAY, rule), About::Tray).to_lowercase();
        assert!(text.contains("cut them") && text.contains("alone does not mend it"), "{text}");
    }
}

#[test]
fn a_thick_sample_under_a_floor_of_ours_says_why_it_warns() {
    let mut book = small_nursery();
    let came = json!({"tray":"jac-1","species":"jackfruit","count":40,"from":"bought","form":"bag","age_days":200});
    book.write("2026-01-01", "plants_received", came);
    let plants = vec![json!({"height_cm":25,"collar_mm":4}); 20];
    book.write("2026-04-10", "measured", json!({"tray":"jac-1","plants":plants}));
    let collar = criterion(&tray(&book.on(TODAY), "jac-1").criteria, Rule::Collar).clone();
    assert!(collar.warns && collar.met() == Some(true), "{collar:?}");
    let text = said(&collar, About::Tray);
    assert!(text.contains("under 6 mm") && text.contains("no publication gives"), "{text}");
}

#[test]
fn a_shade_taken_away_is_told_as_the_light_of_today_and_a_step_that_burns_holds_back_ten_days() {
    // The mean of ten days is 8 of 55 % and 2 of 100 %: 64 %. One step from 55 % may go to 84 %.
    for (shade, burns) in [(0, true), (20, false)] {
        let mut book = fitting();
        book.write("2026-04-14", "shade_set", json!({"place":"Half shade","shade_pct":shade}));
        let picture = book.on(TODAY);
        let cof = tray(&picture, "cof-1");
        let (now, since) = cof.light_changed.unwrap();
        assert_eq!((now, since.to_string().as_str()), (1.0 - f64::from(shade) / 100.0, "2026-04-14"));
        let step = criterion(&cof.criteria, Rule::ExposureStep);
        assert_eq!((step.met(), step.blocks), (Some(!burns), burns), "{shade}");
        assert_eq!(said(step, About::Tray).contains("on 14 Apr 2026, too large a step"), burns);
        let pair = crate::support::pair(&picture, "cof-1", "Upper 1");
        assert_eq!(criterion(&pair.criteria, Rule::ExposureStep).blocks, burns);
        assert_eq!(step.expected, None, "no day ends it while it stands there");
        // Shaded again the next day: what is scorched is scorched, and shows until the 23rd.
        book.write("2026-04-15", "shade_set", json!({"place":"Half shade","shade_pct":45}));
        let blocks = |on: &str| criterion(&tray(&book.on(on), "cof-1").criteria, Rule::ExposureStep).blocks;
        assert_eq!((blocks("2026-04-23"), blocks("2026-04-24")), (burns, false));
    }
    assert_eq!(tray(&fitting().on(TODAY), "cof-1").light_changed, None);
}

#[test]
fn a_ready_tray_whose_bag_ends_before_the_rains_is_told_to_be_potted_on() {
    let home = crate::support::program::Home { today: "2026-11-25".into(), ..Default::default() };
    let book = home.file("nursery.outplant");
    home.done(&["sample", "--into", book.to_str().unwrap()]);
    let row = |on: &str| {
        let said = home.done(&["ready", "--all", "--on", on, "--lang", "en"]);
        let from = said.split("~ cod-009").nth(1).unwrap_or_else(|| panic!("{said}"));
        from.split("\n~ ").next().unwrap().split_whitespace().collect::<Vec<_>>().join(" ")
    };
    // Its bag holds it to 14 January, the rains are safe again from 4 May.
    let late = row("2026-12-29");
    assert!(late.contains("until 4 May 2027") && late.contains("ends before, 14 Jan 2027: lift a plug"), "{late}");
    let in_time = row("2026-11-19");
    assert!(in_time.contains("by 14 Jan 2027 (bag)") && !in_time.contains("ends before"), "{in_time}");
}

#[test]
fn a_thin_stem_is_told_how_thick_it_must_be_for_its_height() {
    let mut book = small_nursery();
    ready_coffee(&mut book, "cof-1");
    let plants = vec![json!({"height_cm":36,"collar_mm":4.2}); 20];
    book.write("2026-04-14", "measured", json!({"tray":"cof-1","plants":plants}));
    let collar = of_tray(&book, TODAY, Rule::Collar);
    let text = said(&collar, About::Tray);
    assert!(text.contains("a mm of collar for each 8 cm of height, and 4 mm or more"), "{text}");
    let spanish = Wording::new(Lang::Es).reason(&collar, About::Tray);
    assert!(spanish.contains("un mm de cuello por cada 8 cm de altura, y 4 mm o más"), "{spanish}");
}

#[test]
fn a_wait_of_six_hours_is_told_in_hours() {
    let home = crate::support::program::Home::default().begun();
    home.write("container_set", &["container=bag", "volume_ml=1000", "depth_cm=23"]);
    home.write("sown", &["tray=cof-1", "lot=unknown", "species=COA", "seeds=40", "container=bag"]);
    home.write("treated", &["tray=cof-1", "with=soap", "safe_after_days=0.25"]);
    for (lang, hours) in [("en", "safe after 6 hours"), ("es", "seguro tras 6 horas")] {
        let log = home.done(&["--lang", lang, "log"]).split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(log.contains(hours), "{log}");
    }
}

#[test]
fn a_likely_day_within_months_is_told_by_its_month() {
    let home = crate::support::program::Home { today: "2026-11-25".into(), ..Default::default() };
    let book = home.file("nursery.outplant");
    home.done(&["sample", "--into", book.to_str().unwrap()]);
    let text = home.done(&["why", "tray", "cof-031"]).split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(text.contains("good enough to go out, about Jun 2027 (between 6 Apr 2027 and 2 Nov 2027)"), "{text}");
    // And what was hoped for is told as it is known.
    assert!(text.contains("about 220 were due by then and 260 expected"), "{text}");
    assert!(text.contains("about 190 seedlings fewer than this sowing was to give"), "{text}");
}

#[test]
fn a_collar_or_a_plug_that_nobody_saw_asks_for_care_and_holds_nothing() {
    let mut book = small_nursery();
    book.write(
        "2025-06-01",
        "sown",
        json!({"tray":"cof-1","lot":"cof-L1","seeds":60,"container":"bag","cells":60,"place":"Deep shade"}),
    );
    book.write("2025-09-10", "counted", json!({"tray":"cof-1","standing":50}));
    book.write("2026-02-20", "carried", json!({"tray":"cof-1","place":"Half shade"}));
    let plants: Vec<serde_json::Value> = (0..20).map(|i| json!({"height_cm": 25 + i % 5})).collect();
    book.write("2026-04-10", "measured", json!({"tray":"cof-1","plants":plants}));
    for rule in [Rule::Collar, Rule::Plug] {
        let asked = of_tray(&book, TODAY, rule);
        assert_eq!((asked.met(), asked.blocks, asked.warns), (None, false, true), "{rule}");
    }
    assert!(tray(&book.on(TODAY), "cof-1").ready);
    let collars: Vec<serde_json::Value> = (0..20).map(|i| json!({"height_cm": 25 + i % 5, "collar_mm": 4.5})).collect();
    book.write("2026-04-11", "measured", json!({"tray":"cof-1","plants":collars}));
    book.write("2026-04-11", "plug_checked", json!({"tray":"cof-1","roots":"holds"}));
    for rule in [Rule::Collar, Rule::Plug] {
        assert!(!of_tray(&book, TODAY, rule).warns, "{rule}");
    }
}

/// What one tray of the sample is likely to give, as `why` says it.
fn will_give(home: &crate::support::program::Home, tray: &str) -> String {
    let text = home.done(&["why", "tray", tray]).split_whitespace().collect::<Vec<_>>().join(" ");
    let from = text.split("will give ").nth(1).unwrap_or_else(|| panic!("{text}"));
    from.split(" formula ").next().unwrap().to_string()
}

#[test]
fn no_day_is_told_of_plants_that_fail_their_sample_and_none_before_they_are_hardened() {
    let home = crate::support::program::Home { today: "2026-11-25".into(), ..Default::default() };
    let book = home.file("nursery.outplant");
    home.done(&["sample", "--into", book.to_str().unwrap()]);
    // Too thin, and nothing says when that ends.
    let thin = will_give(&home, "gre-016");
    assert!(thin.contains("when nobody can say, it waits for: root collar"), "{thin}");
    // Too small, and its own growth says 1 February.
    let small = will_give(&home, "cof-025");
    assert!(small.contains("between 1 Feb 2027"), "{small}");
    // Good enough but for hardening: 21 days at the least.
    let unhardened = will_give(&home, "cof-023");
    assert!(unhardened.contains("between 16 Dec 2026"), "{unhardened}");
    // Sick, and no day tells when it will not be.
    let sick = will_give(&home, "pap-005");
    assert!(sick.contains("it waits for: pest or sickness"), "{sick}");
}

#[test]
fn nothing_is_foretold_for_a_day_that_is_past() {
    let home = crate::support::program::Home { today: "2026-11-25".into(), ..Default::default() };
    let book = home.file("nursery.outplant");
    home.done(&["sample", "--into", book.to_str().unwrap()]);
    let asked = |on: &str| {
        let why = home.done(&["why", "tray", "cof-031", "--on", on]);
        why.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    assert!(asked("2026-11-25").contains("by 17 Dec 2026, the species' last day"));
    let late = asked("2026-12-29");
    assert!(late.contains("last day was 17 Dec 2026, and nobody counted since: count first"), "{late}");
    assert!(!late.contains("by 17 Dec"), "{late}");
}

#[test]
fn why_a_tray_is_ready_says_what_is_due_first_and_how_it_is_reckoned_last_and_only_when_asked() {
    let home = crate::support::program::Home { today: "2026-11-25".into(), ..Default::default() };
    let book = home.file("nursery.outplant");
    home.done(&["sample", "--into", book.to_str().unwrap()]);
    let short = home.done(&["why", "tray", "avo-011", "--lang", "en"]);
    assert!(short.contains("- Send out: 8 to Spring 2"), "{short}");
    for word in ["exp(", "Kaplan", "product limit", "t50", "free the bench"] {
        assert!(!short.contains(word), "{word}: {short}");
    }
    let whole = home.done(&["why", "tray", "avo-011", "--all", "--lang", "en"]);
    let at = |text: &str| whole.find(text).unwrap_or_else(|| panic!("{text}: {whole}"));
    assert!(at("Send out") < at("living plants") && at("living plants") < at("How it is reckoned"), "{whole}");
    assert!(at("How it is reckoned") < at("Kaplan"), "{whole}");
}
