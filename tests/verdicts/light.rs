//! The light of a bed that nobody read: reckoned from its nurse plants, with how far that may be off.

use outplant::reckon::picture::quantity::LightSpan;
use outplant::reckon::picture::{Basis, Criterion, Gap, Measure, Rule};
use outplant::reckon::round;
use outplant::wording::verdict::About;
use outplant::wording::{Lang, Wording};
use serde_json::{Value, json};

use crate::support::{Book, bed_species, criterion, pair, ready_coffee, small_nursery};

const TODAY: &str = "2026-04-15";
/// 304 days before: ten months.
const TEN_MONTHS_AGO: &str = "2025-06-15";

/// A bed of 30 x 12 m for coffee.
fn bed_of(species: &str) -> Book {
    let mut book = small_nursery();
    let plan = json!([{"species":species,"pattern":"square","row_m":3,"in_row_m":3}]);
    let set = json!({"bed":"B","field":"Upper","length_m":30,"width_m":12,"edges":"half","plan":plan});
    book.write("2025-01-01", "bed_set", set);
    book
}

fn bed() -> Book {
    bed_of("COA")
}

fn nurse(book: &mut Book, on: &str, nurse: &str, count: u32, apart_m: f64) {
    let fields = json!({"bed":"B","nurse":nurse,"count":count,"row_m":apart_m,"in_row_m":apart_m});
    book.write(on, "nurse_planted", fields);
}

fn plantains() -> Book {
    let mut book = bed();
    nurse(&mut book, TEN_MONTHS_AGO, "plantain", 40, 3.0);
    book
}

fn of_nurses(book: &mut Book, on: &str, kind: &str, mut fields: Value) {
    fields["bed"] = json!("B");
    book.write(on, kind, fields);
}

fn asked_of(book: &Book, on: &str, species: &str) -> Criterion {
    criterion(&bed_species(&book.on(on), "B", species).criteria, Rule::LightNow).clone()
}

fn asked(book: &Book) -> Criterion {
    asked_of(book, TODAY, "COA")
}

fn span_of(asked: &Criterion) -> Option<LightSpan> {
    match (asked.known(), asked.gap()) {
        (Some(Measure::LightReckoned(span)), _) => Some(span),
        (_, Some(Gap::LightReckoned(span))) => Some(*span),
        _ => None,
    }
}

fn light(book: &Book) -> LightSpan {
    let asked = asked(book);
    span_of(&asked).unwrap_or_else(|| panic!("{asked:?}"))
}

fn said(asked: &Criterion) -> String {
    Wording::new(Lang::En).reason(asked, About::Bed)
}

#[test]
fn the_light_under_forty_plantains_of_ten_months_is_reckoned_and_stays_unknown_where_its_range_leaves_the_band() {
    let book = plantains();
    let span = light(&book);
    assert!(span.share > 0.2 && span.share < 0.8, "{span:?}");
    assert!(span.low < span.share - 0.05 && span.high > span.share + 0.05, "{span:?}");
    let asked = asked(&book);
    assert_eq!((asked.met(), asked.blocks, asked.basis()), (None, true, Basis::Unknown));
    assert!(said(&asked).contains("reckoned from the nurse plants it is about"), "{}", said(&asked));
    assert_eq!(asked.entries.len(), 1);
}

#[test]
fn light_at_the_distances_of_a_published_stand_is_what_it_lets_through() {
    // Turner's review: 35 to 60 % under bananas 3 m apart; the profile of plantain: 20 to 40 % at 3 x 2 m. In the open round
    // a bed of 12 m it is brighter than in the middle of a field.
    let of = |key: &str, count: u32, row_m: f64, in_row_m: f64| {
        let mut book = bed();
        let fields = json!({"bed":"B","nurse":key,"count":count,"row_m":row_m,"in_row_m":in_row_m});
        book.write("2025-04-20", "nurse_planted", fields);
        light(&book).share
    };
    let banana = of("banana", 40, 3.0, 3.0);
    assert!((0.35..=0.65).contains(&banana), "{banana}");
    let plantain = of("plantain", 60, 3.0, 2.0);
    assert!((0.2..=0.5).contains(&plantain), "{plantain}");
}

#[test]
fn with_all_of_them_felled_it_is_as_good_as_full_light_and_too_bright_is_the_reason() {
    let mut book = plantains();
    of_nurses(&mut book, "2026-04-10", "nurse_cut", json!({"nurse":"plantain","what":"felled","share":1}));
    assert!(light(&book).share > 0.9 && light(&book).low > 0.89, "{:?}", light(&book));
    let asked = asked(&book);
    assert_eq!((asked.met(), asked.blocks, asked.basis()), (Some(false), true, Basis::Reckoned));
    assert!(said(&asked).contains("by reckoning, not read, more than"), "{}", said(&asked));
}

#[test]
fn half_of_them_felled_lets_in_light_and_chopped_leaves_grow_back() {
    let whole = light(&plantains()).share;
    let cut = |on: &str, what: &str| {
        let mut book = plantains();
        of_nurses(&mut book, on, "nurse_cut", json!({"nurse":"plantain","what":what,"share":0.5}));
        light(&book).share
    };
    let (felled, chopped, long_ago) =
        (cut("2026-04-14", "felled"), cut("2026-04-14", "leaves"), cut("2025-12-01", "leaves"));
    assert!(felled > whole + 0.1, "{felled} {whole}");
    assert!(chopped > whole + 0.1 && (long_ago - whole).abs() < 1e-9, "{chopped} {long_ago} {whole}");
    // A bunch cut is a stem cut; its follower has half the leaves.
    let bunches = cut("2026-04-14", "harvest");
    assert!(bunches > whole + 0.03 && bunches < felled, "{bunches}");
}

#[test]
fn an_old_reading_pulls_what_is_reckoned_and_narrows_it() {
    let by_profile = light(&plantains());
    let read = |share: f64| {
        let mut book = plantains();
        of_nurses(&mut book, "2026-02-10", "light_read", json!({"light_share":share,"sky":"overcast"}));
        light(&book)
    };
    let (dark, bright) = (read(0.25), read(0.8));
    assert!(dark.share < by_profile.share - 0.03 && bright.share > by_profile.share + 0.03, "{dark:?} {bright:?}");
    let width = |span: LightSpan| span.high - span.low;
    assert!(width(dark) < width(by_profile) && width(bright) < width(by_profile), "{dark:?} {by_profile:?}");
}

#[test]
fn a_reading_that_counts_decides_alone() {
    let mut book = plantains();
    of_nurses(&mut book, "2026-04-01", "light_read", json!({"light_share":0.6}));
    let asked = asked(&book);
    assert_eq!((asked.met(), asked.blocks, asked.warns), (Some(true), false, false));
    assert_eq!((asked.known(), asked.basis()), (Some(Measure::Light(0.6)), Basis::Measured));
}

#[test]
fn more_nurse_plants_never_make_it_brighter() {
    let mut book = bed();
    let mut before = 1.0;
    for (on, count) in [("2025-05-01", 6), ("2025-06-01", 20), ("2025-07-01", 7), ("2025-09-01", 40)] {
        nurse(&mut book, on, "pigeon pea", count, 2.0);
        let now = light(&book).share;
        assert!(now <= before + 1e-6, "{now} {before}");
        before = now;
    }
}

#[test]
fn light_reckoned_wholly_inside_the_band_asks_for_a_reading_and_lets_plants_go() {
    // Twelve plantains of four months hardly shade; grevillea takes 70 to 90 % and more, for its bright end is ours.
    let mut book = bed_of("GRE");
    nurse(&mut book, "2025-12-15", "plantain", 12, 5.0);
    let asked = asked_of(&book, TODAY, "GRE");
    assert_eq!((asked.met(), asked.blocks, asked.warns), (Some(true), false, true), "{asked:?}");
    assert!(said(&asked).contains("read the light before many plants go"), "{}", said(&asked));
    assert!(bed_species(&book.on(TODAY), "B", "GRE").in_light > 0);
}

#[test]
fn what_nobody_knows_of_the_nurse_plants_leaves_the_light_unknown() {
    let mut book = bed();
    nurse(&mut book, TEN_MONTHS_AGO, "gliricidia", 20, 4.0);
    assert_eq!((asked(&book).met(), asked(&book).blocks, span_of(&asked(&book))), (None, true, None));
    assert!(said(&asked(&book)).contains("nothing tells of the crowns of gliricidia"), "{}", said(&asked(&book)));
    let mut never_written = bed();
    of_nurses(&mut never_written, "2026-03-01", "nurse_counted", json!({"nurse":"banana","alive":20}));
    assert!(said(&asked(&never_written)).contains("nobody wrote when banana was planted"));
    of_nurses(
        &mut never_written,
        "2026-03-02",
        "nurse_measured",
        json!({"nurse":"banana","height_m":3,"crown_radius_m":1.7}),
    );
    assert!(span_of(&asked(&never_written)).is_some(), "{:?}", asked(&never_written));
    let mut trees = plantains();
    of_nurses(&mut trees, "2026-03-01", "plants_found", json!({"species":"grevillea","alive":3}));
    assert!(said(&asked(&trees)).contains("nothing tells of the crowns of grevillea"), "{}", said(&asked(&trees)));
    // Nothing written, nothing reckoned.
    assert_eq!((asked(&bed()).met(), asked(&bed()).gap()), (None, None));
}

#[test]
fn taller_and_wider_by_the_tape_is_darker() {
    let measured = |height_m: f64, crown_radius_m: f64| {
        let mut book = plantains();
        let fields = json!({"nurse":"plantain","height_m":height_m,"crown_radius_m":crown_radius_m});
        of_nurses(&mut book, "2026-04-01", "nurse_measured", fields);
        light(&book).share
    };
    assert!(measured(3.6, 1.9) < light(&plantains()).share && measured(2.0, 1.0) > light(&plantains()).share);
}

#[test]
fn stems_past_their_life_may_stand_or_be_gone() {
    // Pigeon pea of 38 months: 24 to 36 is its life. Counted alive last month it stands.
    let mut old = bed();
    nurse(&mut old, "2025-01-01", "pigeon pea", 90, 2.0);
    let at = |book: &Book, on: &str| span_of(&asked_of(book, on, "COA")).unwrap();
    let (young, ended) = (at(&old, "2027-11-01"), at(&old, "2028-03-01"));
    assert!(young.high < 0.95 && ended.high > 0.99, "{young:?} {ended:?}");
    of_nurses(&mut old, "2028-02-10", "nurse_counted", json!({"nurse":"pigeon pea","alive":88}));
    assert!(at(&old, "2028-03-01").high < 0.95, "{:?}", at(&old, "2028-03-01"));
}

#[test]
fn light_that_was_reckoned_too_dark_is_still_asked_to_be_read_on_the_round() {
    let mut book = bed();
    ready_coffee(&mut book, "cof-1");
    for task in ["cleared", "holes", "weeded"] {
        of_nurses(&mut book, "2026-04-05", "prepared", json!({"task":task}));
    }
    of_nurses(&mut book, "2026-04-01", "soil_checked", json!({"resistance_mpa":1.2,"depth_cm":30,"wet":true}));
    nurse(&mut book, "2025-08-01", "cassava", 360, 1.0);
    let asked = asked(&book);
    assert_eq!((asked.met(), asked.blocks, asked.basis()), (Some(false), true, Basis::Reckoned), "{asked:?}");
    assert!(said(&asked).contains("by reckoning, not read, less than"), "{}", said(&asked));
    let picture = book.on(TODAY);
    assert!(!pair(&picture, "cof-1", "B").fits);
    let due = round(&picture);
    let mut stops = due.stops.iter().chain(&due.can_wait);
    assert!(stops.any(|stop| format!("{:?}", stop.task) == "ReadLight"), "the light is asked for");
}

fn coming_of(book: &Book, on: &str) -> Criterion {
    criterion(&bed_species(&book.on(on), "B", "COA").criteria, Rule::LightComing).clone()
}

#[test]
fn bunches_that_show_foretell_the_gap_and_the_month_is_said() {
    let mut book = plantains();
    assert!(!coming_of(&book, "2025-12-01").warns);
    of_nurses(&mut book, "2026-04-01", "nurse_counted", json!({"nurse":"plantain","alive":40,"bunches_showing":30}));
    let asked = coming_of(&book, TODAY);
    assert_eq!((asked.met(), asked.blocks, asked.warns), (None, false, true), "{asked:?}");
    // 85 days after 1 April: 25 June. Three quarters of the stems, of whose leaves followers keep half.
    let Some(Gap::ShadeEnds { end, .. }) = asked.gap() else { panic!("{asked:?}") };
    assert_eq!(end.about, crate::support::day("2026-06-25"));
    assert!((end.share - 0.375).abs() < 1e-9, "{end:?}");
    assert!(
        said(&asked).contains("about Jun 2026 38 % of the shade goes, when 30 bunches of plantain are cut"),
        "{}",
        said(&asked)
    );
    // What was cut is no gap to come.
    of_nurses(&mut book, "2026-04-14", "nurse_cut", json!({"nurse":"plantain","what":"harvest","count":30}));
    assert!(!matches!(coming_of(&book, TODAY).gap(), Some(Gap::ShadeEnds { end, .. }) if end.share > 0.3));
}

#[test]
fn pigeon_pea_tells_its_end_and_by_when_to_set_the_next() {
    let mut book = bed();
    nurse(&mut book, "2023-07-01", "pigeon pea", 90, 2.0);
    let asked = coming_of(&book, TODAY);
    let Some(Gap::ShadeEnds { end, .. }) = asked.gap() else { panic!("{asked:?}") };
    // 36 months of 30.4 days after 1 July 2023: 29 June 2026; 5 months of it to useful shade.
    assert_eq!(
        (end.about, end.set_next_by),
        (crate::support::day("2026-06-29"), Some(crate::support::day("2026-01-28")))
    );
    assert!((end.share - 1.0).abs() < 1e-9 && asked.warns, "{end:?}");
    // Today is past that: it is late. In January it was not yet.
    assert!(
        said(&asked).ends_with("the next nurse plants are late, set by 28 Jan 2026 they would have shaded in time"),
        "{}",
        said(&asked)
    );
    let in_time = coming_of(&book, "2026-01-28");
    assert!(said(&in_time).ends_with("shade in time if set by 28 Jan 2026"), "{}", said(&in_time));
    // Bananas set in time carry on: of the shade then standing the peas are a part.
    nurse(&mut book, "2025-09-01", "banana", 40, 3.0);
    let Some(Gap::ShadeEnds { end, .. }) = coming_of(&book, TODAY).gap().cloned() else { panic!() };
    assert!(end.share < 0.9, "{end:?}");
    assert!(!coming_of(&book, "2024-07-01").warns);
}

/// Plantains read ten days ago.
fn read_plantains() -> Book {
    let mut book = plantains();
    of_nurses(&mut book, "2026-04-05", "light_read", json!({"light_share":0.6}));
    assert_eq!(asked(&book).basis(), Basis::Measured);
    book
}

#[test]
fn shade_taken_little_by_little_ends_a_reading_as_shade_taken_at_once_does() {
    let ended = |book: &Book| asked(book).basis() != Basis::Measured;
    let days = ["2026-04-06", "2026-04-08", "2026-04-10", "2026-04-12", "2026-04-14"];
    // Of 40 plants one a day: three are 7.5 %, four a tenth.
    let mut felled = read_plantains();
    for (so_far, on) in days.iter().enumerate() {
        assert_eq!(ended(&felled), so_far >= 4, "{so_far} felled");
        of_nurses(&mut felled, on, "nurse_cut", json!({"nurse":"plantain","what":"felled","count":1}));
    }
    let mut counted = read_plantains();
    for (on, alive) in days.iter().zip([39, 38, 37, 36]) {
        of_nurses(&mut counted, on, "nurse_counted", json!({"nurse":"plantain","alive":alive}));
        assert_eq!(ended(&counted), alive <= 36, "{alive} counted");
    }
    let mut leaves = read_plantains();
    for on in ["2026-04-10", "2026-04-14"] {
        assert!(!ended(&leaves));
        of_nurses(&mut leaves, on, "nurse_cut", json!({"nurse":"plantain","what":"leaves","share":0.2}));
    }
    assert!(ended(&leaves), "a third of the leaves is gone");
    // Stems and leaves together: two of 40 and a sixth of the leaves.
    let mut both = read_plantains();
    of_nurses(&mut both, "2026-04-10", "nurse_cut", json!({"nurse":"plantain","what":"harvest","count":2}));
    assert!(!ended(&both));
    of_nurses(&mut both, "2026-04-14", "nurse_cut", json!({"nurse":"plantain","what":"leaves","share":0.16}));
    assert!(ended(&both));
}

#[test]
fn a_reading_taken_between_small_cuts_has_seen_those_before_it() {
    let mut book = read_plantains();
    of_nurses(&mut book, "2026-04-06", "nurse_cut", json!({"nurse":"plantain","what":"felled","count":3}));
    of_nurses(&mut book, "2026-04-10", "light_read", json!({"light_share":0.65}));
    of_nurses(&mut book, "2026-04-12", "nurse_cut", json!({"nurse":"plantain","what":"felled","count":2}));
    // The first reading is from before 5 of 40, the second from before 2 of 37.
    let read = asked(&book);
    assert_eq!((read.basis(), read.known()), (Basis::Measured, Some(Measure::Light(0.65))));
}

#[test]
fn old_leaves_chopped_at_the_usual_pace_grow_back_and_leave_a_reading_alone() {
    let mut book = plantains();
    of_nurses(&mut book, "2026-02-16", "light_read", json!({"light_share":0.6}));
    for on in ["2026-02-20", "2026-03-20", "2026-04-14"] {
        of_nurses(&mut book, on, "nurse_cut", json!({"nurse":"plantain","what":"leaves","share":0.12}));
    }
    assert_eq!(asked(&book).basis(), Basis::Measured);
}
