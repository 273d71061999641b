//! The water left for young roots: how much, for how long, and what an unread gauge and a drought make of it.

use outplant::base::Day;
use outplant::reckon::picture::{Basis, Criterion, Gap, Measure, Picture, Rule, RuleSource, Source};
use outplant::reckon::round::{RoundReason, Stop, Task};
use outplant::reckon::{View, draw_picture, round};
use outplant::wording::verdict::About;
use outplant::wording::{Lang, Wording};
use serde_json::{Value, json};

use crate::support::{Book, bed_species, criterion, day, open_bed, ready_coffee, small_nursery};

const TODAY: &str = "2026-04-15";

/// A bed for coffee on a field of a texture, rains from March to the middle of June.
fn bed_on(texture: &str) -> Book {
    let mut book = small_nursery();
    book.write("2025-01-01", "field_set", json!({"field":"Upper","texture":texture}));
    let plan = json!([{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]);
    book.write("2025-01-01", "bed_set", json!({"bed":"B","field":"Upper","length_m":20,"width_m":6,"plan":plan}));
    book
}

/// So much a month, and the rains of the small nursery.
fn usual(book: &mut Book, rain_mm: f64) {
    let rains = json!([{"from":"03-01","until":"06-15"}]);
    book.write("2025-01-02", "season_set", json!({"rains":rains,"rain_mm":vec![rain_mm; 12]}));
}

/// The same rain on each day from so many days before today to so many before it.
fn rain(book: &mut Book, mm: f64, from: i32, until: i32) {
    for back in (until..=from).rev() {
        book.write(&day(TODAY).plus(-back).to_string(), "weather", json!({"rain_mm":mm}));
    }
}

fn of(picture: &Picture) -> Criterion {
    criterion(&bed_species(picture, "B", "COA").criteria, Rule::Water).clone()
}

fn water(book: &Book) -> Criterion {
    of(&book.on(TODAY))
}

/// On a day so many days after today, looked at today.
fn ahead(book: &Book, days: i32) -> Criterion {
    let on: Day = day(TODAY).plus(days);
    of(&draw_picture(View { day: on, known: None }, day(TODAY), book.entries.iter().cloned()))
}

fn said(criterion: &Criterion) -> String {
    Wording::new(Lang::En).reason(criterion, About::Bed)
}

fn left_mm(criterion: &Criterion) -> (f64, f64) {
    match criterion.known() {
        Some(Measure::WaterLeft { mm, of_mm }) => (mm, of_mm),
        other => panic!("{other:?}"),
    }
}

fn stands(criterion: &Criterion) -> (Option<bool>, bool, bool) {
    (criterion.met(), criterion.blocks, criterion.warns)
}

#[test]
fn a_little_rain_every_day_keeps_the_ground_wet() {
    for has_usual in [true, false] {
        let mut book = bed_on("loam");
        if has_usual {
            usual(&mut book, 150.0);
        }
        rain(&mut book, 5.0, 29, 0);
        let wet = water(&book);
        assert_eq!((stands(&wet), wet.basis()), ((Some(true), false, false), Basis::Reckoned), "{}", said(&wet));
        assert_eq!(wet.source, Source::Rule(RuleSource::WaterLeft));
        assert!(said(&wet).contains("38 of 38 mm left for young roots"), "{}", said(&wet));
    }
}

#[test]
fn ground_filled_three_days_ago_still_feeds_young_roots_on_loam_and_not_on_sand() {
    let filled = |texture: &str| {
        let mut book = bed_on(texture);
        rain(&mut book, 0.0, 31, 5);
        rain(&mut book, 45.0, 4, 3);
        rain(&mut book, 0.0, 2, 1);
        book
    };
    // No temperatures: 4 x 0.9 = 3.6 mm a day, of 37.5 mm on loam; two dry days take 7.2, and 11.25 may go.
    let loam = water(&filled("loam"));
    let (left, full) = left_mm(&loam);
    assert!((left - 30.3).abs() < 1e-9 && full == 37.5, "{left} of {full}");
    assert_eq!(loam.needed(), Some(Measure::WaterAtLeast(26.25)));
    assert_eq!(stands(&loam), (Some(true), false, false));
    assert_eq!(said(&loam), "30 of 38 mm left for young roots: enough for 1 day without rain");
    // Sand holds 18.75: no more than 5.6 may go, and a gauge errs by a tenth.
    let mut sand = filled("sand");
    rain(&mut sand, 0.0, 0, 0);
    assert_eq!(stands(&water(&sand)), (Some(false), false, true));
    let tomorrow = of(&sand.on("2026-04-16"));
    assert_eq!(tomorrow.met(), None, "{}", said(&tomorrow));
    sand.write("2026-04-16", "weather", json!({"rain_mm":0}));
    let dry = of(&sand.on("2026-04-16"));
    assert_eq!(stands(&dry), (Some(false), true, false));
    assert!(said(&dry).contains("wait for about 11 mm of rain"), "{}", said(&dry));
}

#[test]
fn the_air_takes_by_hargreaves_as_other_libraries_reckon_it() {
    // c4 of tests/reference/et0.json: 1.537 S, 900 m, day 250, 21.4 and 12.2 degrees: 3.62188463 mm.
    let mut book = bed_on("loam");
    let place = json!({"name":"T","latitude_deg":-1.537,"longitude_deg":36.0,"altitude_m":900,"utc_offset_h":3});
    book.write("2026-01-01", "nursery_set", place);
    for back in 0..30 {
        let on = day("2026-09-08").plus(-back).to_string();
        book.write(&on, "weather", json!({"rain_mm": if back == 2 { 60 } else { 0 }}));
    }
    book.write("2026-09-07", "weather", json!({"tmin_c":12.2,"tmax_c":21.4}));
    let (left, full) = left_mm(&of(&book.on("2026-09-08")));
    assert!((full - left - 0.9 * 3.621_884_63).abs() < 1e-6, "{left} of {full}");
}

#[test]
fn a_day_that_nobody_read_is_filled_with_usual_rain_but_not_after_a_dry_run() {
    let mut book = bed_on("loam");
    usual(&mut book, 150.0);
    rain(&mut book, 5.0, 50, 6);
    let filled = water(&book);
    assert_eq!((stands(&filled), filled.basis()), ((Some(true), false, true), Basis::Assumed));
    assert!(said(&filled).contains("usual rain fell on 6 days that nobody read"), "{}", said(&filled));
    // Without what is usual it is not known, and does not hold back.
    let mut unusual = bed_on("loam");
    rain(&mut unusual, 5.0, 50, 6);
    let unknown = water(&unusual);
    assert_eq!(stands(&unknown), (None, false, true));
    assert!(said(&unknown).contains("1 of the last 7 days"), "{}", said(&unknown));
    // Six dry days are no dry run, seven are.
    for (dry_days, holds) in [(6, false), (7, true)] {
        let mut book = bed_on("loam");
        usual(&mut book, 150.0);
        rain(&mut book, 5.0, 50, dry_days + 2);
        rain(&mut book, 0.0, dry_days + 1, 2);
        assert_eq!((water(&book).blocks, water(&book).warns), (holds, !holds), "{dry_days}");
    }
}

#[test]
fn the_morning_after_a_drought_holds_back_until_the_gauge_is_read() {
    for (from, last) in [(29, 1), (57, 3), (60, 10)] {
        for has_usual in [true, false] {
            let mut book = bed_on("loam");
            if has_usual {
                usual(&mut book, 150.0);
            }
            rain(&mut book, 0.0, from, last);
            let held = water(&book);
            assert_eq!(stands(&held), (None, true, false), "{from} to {last}");
            assert!(matches!(held.gap(), Some(Gap::UnreadAfterDry { last: on, .. }) if *on == day(TODAY).plus(-last)));
            let mut rained = book.clone();
            rain(&mut rained, 45.0, 0, 0);
            assert_eq!(water(&rained).met(), Some(true));
            rain(&mut book, 0.0, last - 1, 0);
            assert_eq!(stands(&water(&book)), (Some(false), true, false));
        }
    }
    // What was dry more than a month ago is forgotten.
    let mut old = bed_on("loam");
    rain(&mut old, 0.0, 59, 31);
    assert_eq!(stands(&water(&old)), (Some(true), false, true));
}

#[test]
fn without_any_gauge_line_the_usual_rains_are_taken_as_before() {
    let mut book = bed_on("loam");
    assert_eq!((stands(&water(&book)), water(&book).basis()), ((Some(true), false, true), Basis::Assumed));
    usual(&mut book, 150.0);
    assert_eq!(water(&book).source, Source::Rule(RuleSource::UsualRains));
    // With few lines the rain of three days decides, as before.
    let mut few = bed_on("loam");
    rain(&mut few, 7.0, 2, 0);
    assert_eq!(water(&few).known(), Some(Measure::Rain { mm: 21.0, days: 3 }));
}

#[test]
fn ground_found_wet_answers_for_its_bed_as_long_as_the_balance_lasts() {
    let mut book = bed_on("loam");
    rain(&mut book, 0.0, 29, 0);
    assert!(water(&book).blocks);
    book.write("2026-04-14", "soil_checked", json!({"bed":"B","wet":true}));
    let wet = water(&book);
    assert_eq!((stands(&wet), wet.basis()), ((Some(true), false, false), Basis::Measured));
    assert!(said(&wet).starts_with("found wet on 14 Apr"), "{}", said(&wet));
    assert!(said(&wet).contains("34 of 38 mm left for young roots: enough for 2 days without rain"), "{}", said(&wet));
    // How hard the ground is a finger does not tell.
    let soil = criterion(&bed_species(&book.on(TODAY), "B", "COA").criteria, Rule::Soil).clone();
    assert_eq!((soil.met(), soil.gap()), (None, None));
    for on in ["2026-04-16", "2026-04-17", "2026-04-18", "2026-04-19"] {
        book.write(on, "weather", json!({"rain_mm":0}));
    }
    assert_eq!(of(&book.on("2026-04-17")).met(), Some(true));
    assert!(of(&book.on("2026-04-19")).blocks);
    // It lasts as long where nobody ever read a gauge; then it is as it was.
    let mut never = bed_on("loam");
    never.write("2026-07-10", "soil_checked", json!({"bed":"B","wet":true}));
    assert_eq!(of(&never.on("2026-07-12")).met(), Some(true));
    assert_eq!(of(&never.on("2026-07-16")).met(), None);
}

#[test]
fn a_coming_day_after_a_drought_promises_no_rain() {
    let mut book = bed_on("loam");
    rain(&mut book, 0.0, 29, 0);
    let coming = ahead(&book, 3);
    assert_eq!(stands(&coming), (None, false, true));
    assert!(matches!(coming.gap(), Some(Gap::ComingAfterDry { days: 30, .. })), "{coming:?}");
    let mut wet = bed_on("loam");
    rain(&mut wet, 5.0, 29, 0);
    assert_eq!(ahead(&wet, 2).met(), Some(true));
    assert_eq!(ahead(&wet, 6).gap(), Some(&Gap::ComingDay));
}

#[test]
fn plants_set_out_lately_are_watered_in_a_dry_week_and_no_longer_once_their_ground_is_wet() {
    let mut book = small_nursery();
    ready_coffee(&mut book, "cof-1");
    open_bed(&mut book, "B");
    book.write("2026-04-16", "outplanted", json!({"tray":"cof-1","bed":"B","count":20}));
    let dry = |book: &mut Book, from: u32, until: u32| {
        for on in from..=until {
            book.write(&format!("2026-04-{on}"), "weather", json!({"rain_mm":0}));
        }
    };
    let stop = |book: &Book, on: &str| -> Option<Stop> {
        let all = round(&book.on(on));
        all.stops.into_iter().chain(all.can_wait).find(|stop| stop.task == Task::WaterBed)
    };
    dry(&mut book, 16, 22);
    assert!(stop(&book, "2026-04-22").is_none());
    dry(&mut book, 23, 25);
    let asked = stop(&book, "2026-04-25").unwrap();
    assert_eq!((asked.id.as_str(), asked.at_stake.plants > 0.0), ("water_bed B", true));
    assert!(!asked.cautions().is_empty());
    let wet: Value = json!({"bed":"B","wet":true});
    let mut watered = book.clone();
    watered.write("2026-04-25", "soil_checked", wet);
    assert!(stop(&watered, "2026-04-25").is_none());
    let mut rained = book.clone();
    rained.write("2026-04-26", "weather", json!({"rain_mm":30}));
    assert!(stop(&rained, "2026-04-26").is_none());
    // After eight weeks their roots look for themselves.
    for back in 0..30 {
        let on: Day = day("2026-06-20").plus(-back);
        book.write(&on.to_string(), "weather", json!({"rain_mm":0}));
    }
    assert!(stop(&book, "2026-06-10").is_some());
    assert!(stop(&book, "2026-06-11").is_none());
}

#[test]
fn ground_found_dry_holds_its_bed_back_whatever_the_gauge_says() {
    for has_usual in [true, false] {
        let mut book = bed_on("loam");
        if has_usual {
            usual(&mut book, 150.0);
        }
        rain(&mut book, 5.0, 29, 0);
        assert_eq!(water(&book).met(), Some(true));
        book.write(TODAY, "soil_checked", json!({"bed":"B","wet":false}));
        let dry = water(&book);
        assert_eq!((stands(&dry), dry.basis()), ((Some(false), true, false), Basis::Measured));
        assert!(said(&dry).starts_with("found dry on 15 Apr"), "{}", said(&dry));
        assert!(!said(&dry).contains("left for young roots"), "{}", said(&dry));
        // The next morning nobody has read the gauge yet: no usual rain is taken.
        assert_eq!(stands(&of(&book.on("2026-04-16"))), (Some(false), true, false));
        // Coming days wait for rain, as after a drought.
        let coming = ahead(&book, 3);
        assert_eq!(stands(&coming), (None, false, true));
        assert_eq!(coming.gap(), Some(&Gap::ComingAfterDryLook { on: day(TODAY) }));
        // Ten mm do not wet it, thirty do, and a later finger leads.
        let mut rained = book.clone();
        rained.write("2026-04-16", "weather", json!({"rain_mm":10}));
        let short = of(&rained.on("2026-04-16"));
        assert_eq!(stands(&short), (Some(false), true, false));
        assert!(said(&short).contains("by the rain since only 10 of 38 mm left"), "{}", said(&short));
        rained.write("2026-04-17", "weather", json!({"rain_mm":30}));
        let wet = of(&rained.on("2026-04-17"));
        assert_eq!(stands(&wet), (Some(true), false, false), "{}", said(&wet));
        book.write(TODAY, "soil_checked", json!({"bed":"B","wet":true}));
        assert_eq!(water(&book).met(), Some(true));
    }
}

#[test]
fn a_rod_pushed_in_dry_ground_says_that_it_is_dry() {
    let mut book = bed_on("loam");
    rain(&mut book, 5.0, 29, 0);
    let rod = json!({"bed":"B","rod_mm":8,"push_kg":10,"depth_cm":50,"wet":false});
    book.write("2026-04-14", "soil_checked", rod);
    // The rain of the day of the look is what it felt; that of today is 5 mm.
    let short = water(&book);
    assert_eq!(stands(&short), (Some(false), true, false), "{}", said(&short));
    // Days since a soaking alone say nothing of today.
    let mut soaked = bed_on("loam");
    rain(&mut soaked, 5.0, 29, 0);
    let rod = json!({"bed":"B","rod_mm":8,"push_kg":10,"depth_cm":50,"days_since_soaking":20});
    soaked.write("2026-04-14", "soil_checked", rod);
    assert_eq!(water(&soaked).met(), Some(true));
}

#[test]
fn ground_found_dry_holds_its_bed_back_where_nobody_reads_a_gauge() {
    let mut book = bed_on("loam");
    assert_eq!(water(&book).met(), Some(true));
    book.write("2026-04-10", "soil_checked", json!({"bed":"B","wet":false}));
    assert_eq!(stands(&water(&book)), (Some(false), true, false));
    assert!(said(&water(&book)).starts_with("found dry on 10 Apr"), "{}", said(&water(&book)));
    // It is remembered for a month, and no longer than until it rains well.
    assert!(of(&book.on("2026-05-10")).blocks);
    assert!(!of(&book.on("2026-05-11")).blocks);
    book.write("2026-04-14", "weather", json!({"rain_mm":40}));
    assert_eq!(water(&book).met(), Some(true), "{}", said(&water(&book)));
    assert!(!of(&book.on("2026-04-25")).blocks);
}

#[test]
fn ground_found_dry_after_heavy_rain_stands_full_of_no_water() {
    let mut book = bed_on("sand");
    rain(&mut book, 0.0, 29, 2);
    rain(&mut book, 120.0, 1, 1);
    book.write(TODAY, "soil_checked", json!({"bed":"B","wet":false}));
    assert!(said(&water(&book)).starts_with("found dry on 15 Apr"), "{}", said(&water(&book)));
    book.write("2026-04-16", "weather", json!({"rain_mm":120}));
    assert_eq!(of(&book.on("2026-04-16")).source, Source::Rule(RuleSource::Drowned));
}

/// Twenty coffee of 16 April in a bed, and no rain from then on to a day of April.
fn young_in_drought(until: u32) -> Book {
    let mut book = small_nursery();
    ready_coffee(&mut book, "cof-1");
    open_bed(&mut book, "B");
    book.write("2026-04-16", "outplanted", json!({"tray":"cof-1","bed":"B","count":20}));
    for back in 0..30 {
        let on: Day = day("2026-04-15").plus(-back);
        book.write(&on.to_string(), "weather", json!({"rain_mm":0}));
    }
    for on in 16..=until {
        book.write(&format!("2026-04-{on}"), "weather", json!({"rain_mm":0}));
    }
    book
}

fn water_stop(book: &Book, on: &str) -> Option<Stop> {
    let all = round(&book.on(on));
    all.stops.into_iter().chain(all.can_wait).find(|stop| stop.task == Task::WaterBed)
}

#[test]
fn watered_feet_are_left_alone_for_some_days_and_make_no_wet_bed() {
    let mut book = young_in_drought(30);
    let asked = water_stop(&book, "2026-04-25").unwrap();
    assert_eq!(asked.task.facts().kind, "plants_watered");
    let before = water(&book);
    book.write("2026-04-25", "plants_watered", json!({"bed":"B"}));
    assert!(water_stop(&book, "2026-04-25").is_none());
    // 11.25 mm are taken easily of loam, at 3.6 mm a day: three days.
    assert!(water_stop(&book, "2026-04-28").is_none());
    assert!(water_stop(&book, "2026-04-29").is_some());
    let of_bed = of(&book.on("2026-04-25"));
    assert!(of_bed.blocks && of_bed.known() == before.known(), "{}", said(&of_bed));
    // A wet finger meanwhile is one at the feet, unless it says of ground that nobody dug.
    let mut wet = book.clone();
    wet.write("2026-04-26", "soil_checked", json!({"bed":"B","wet":true}));
    let at_feet = of(&wet.on("2026-04-26"));
    assert!(at_feet.blocks, "{}", said(&at_feet));
    assert!(said(&at_feet).contains("counts as the feet that were watered"), "{}", said(&at_feet));
    wet.write("2026-04-26", "soil_checked", json!({"bed":"B","wet":true,"where":"undug"}));
    assert_eq!(of(&wet.on("2026-04-26")).met(), Some(true));
    // Later it is one of the bed again.
    book.write("2026-04-30", "soil_checked", json!({"bed":"B","wet":true}));
    assert_eq!(of(&book.on("2026-04-30")).met(), Some(true));
}

#[test]
fn a_little_water_at_the_foot_lasts_two_days_and_some_watered_leave_the_others() {
    let mut book = young_in_drought(30);
    let mut little = book.clone();
    little.write("2026-04-25", "plants_watered", json!({"bed":"B","litres_each":0.5}));
    assert!(water_stop(&little, "2026-04-26").is_none());
    assert!(water_stop(&little, "2026-04-27").is_some());
    book.write("2026-04-25", "plants_watered", json!({"bed":"B","count":12,"litres_each":3}));
    let others = water_stop(&book, "2026-04-25").unwrap();
    assert!(matches!(others.why, RoundReason::YoungDry { plants: 8, .. }), "{:?}", others.why);
    book.write("2026-04-26", "plants_watered", json!({"bed":"B","count":8,"litres_each":3}));
    assert!(water_stop(&book, "2026-04-26").is_none());
    // Plants that went out after it were not watered by it.
    book.write("2026-04-27", "outplanted", json!({"tray":"cof-1","bed":"B","count":5}));
    assert!(water_stop(&book, "2026-04-28").is_some());
}

#[test]
fn outside_the_rains_young_plants_are_looked_at_where_nobody_reads_the_rain() {
    let planted = |on: &str| {
        let mut book = bed_on("loam");
        ready_coffee(&mut book, "cof-1");
        book.write(on, "outplanted", json!({"tray":"cof-1","bed":"B","count":20}));
        book
    };
    let stop = water_stop;
    // The rains end on 15 June.
    let mut book = planted("2026-06-01");
    assert!(stop(&book, "2026-06-12").is_none(), "in the rains nobody is asked");
    let asked = stop(&book, "2026-06-30").unwrap();
    assert!(matches!(asked.why, RoundReason::YoungDry { unread_days: Some(29), plants: 20, .. }), "{:?}", asked.why);
    for (kind, body) in [
        ("plants_watered", json!({"bed":"B"})),
        ("soil_checked", json!({"bed":"B","wet":true})),
        ("weather", json!({"rain_mm":3})),
    ] {
        let mut answered = book.clone();
        answered.write("2026-06-28", kind, body);
        let again = stop(&answered, "2026-06-30");
        assert!(
            again.is_none_or(|stop| !matches!(stop.why, RoundReason::YoungDry { unread_days: Some(_), .. })),
            "{kind}"
        );
    }
    book.write("2026-06-22", "plants_watered", json!({"bed":"B"}));
    let again = stop(&book, "2026-06-30").unwrap();
    assert!(matches!(again.why, RoundReason::YoungDry { unread_days: Some(8), .. }), "{:?}", again.why);
}

/// Planted on a day, the rains end on 15 June, with what was written since.
fn after_the_rains(on: &str, written: &[(&str, &str, serde_json::Value)]) -> Book {
    let mut book = bed_on("loam");
    ready_coffee(&mut book, "cof-1");
    book.write(on, "outplanted", json!({"tray":"cof-1","bed":"B","count":20}));
    for (on, kind, body) in written {
        book.write(on, kind, body.clone());
    }
    book
}

#[test]
fn a_nought_of_the_gauge_is_no_rain_and_a_drop_at_the_foot_no_watering() {
    let asked = |written: &[(&str, &str, serde_json::Value)]| {
        water_stop(&after_the_rains("2026-06-01", written), "2026-06-30").is_some()
    };
    assert!(asked(&[]));
    let nought = |on| (on, "weather", json!({"rain_mm":0}));
    for days in
        [&["2026-06-29"][..], &["2026-06-30"], &["2026-06-26", "2026-06-27", "2026-06-28", "2026-06-29", "2026-06-30"]]
    {
        assert!(asked(&days.iter().map(|on| nought(*on)).collect::<Vec<_>>()), "{days:?}");
    }
    assert!(asked(&[("2026-06-28", "weather", json!({"rain_mm":1}))]));
    assert!(!asked(&[("2026-06-28", "weather", json!({"rain_mm":8})), nought("2026-06-29")]));
    for (litres, answers) in [(0.1, false), (0.13, false), (0.5, false), (1.0, true), (3.0, true)] {
        let given = json!({"bed":"B","litres_each":litres});
        assert_eq!(!asked(&[("2026-06-25", "plants_watered", given)]), answers, "{litres}");
    }
    // Half a litre keeps a plant for three days, and a tenth for none.
    let today = |litres: f64| asked(&[("2026-06-30", "plants_watered", json!({"bed":"B","litres_each":litres}))]);
    assert_eq!((today(0.1), today(0.5)), (true, false));
    // A finger that finds it dry is no water.
    assert!(asked(&[("2026-06-28", "soil_checked", json!({"bed":"B","wet":false}))]));
}

#[test]
fn plants_that_went_out_at_the_end_of_the_rains_are_young_until_the_next() {
    let asked = |planted: &str, on: &str| water_stop(&after_the_rains(planted, &[]), on).is_some();
    // 56 days before 15 June is 20 April.
    for on in ["2026-08-20", "2026-12-01", "2027-02-20"] {
        assert!(asked("2026-05-20", on) && asked("2026-07-20", on), "{on}");
        assert!(!asked("2026-04-20", on), "{on}: it had its eight weeks of rain");
    }
    assert!(!asked("2026-05-20", "2027-03-05"), "the next rains have begun");
    assert!(!asked("2026-05-20", "2027-07-20"));
}
