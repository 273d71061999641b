//! Worlds of trays that came too far into the sun, of stakes and bare roots, of holes and rods: what is asked of them today.

use outplant::nursery::entry::subject::Subject;
use outplant::reckon::picture::{Criterion, Measure, Rule};
use outplant::reckon::round::{RoundReason, Stop, Task, round};
use outplant::wording::verdict::About;
use outplant::wording::{Lang, Wording};
use serde_json::json;

use crate::support::{Book, criterion, day, fitting, open_bed, pair, small_nursery, tray, wet_days};

const TODAY: &str = "2026-04-15";

fn of_tray(book: &Book, on: &str, rule: Rule) -> Criterion {
    criterion(&tray(&book.on(on), "cof-1").criteria, rule).clone()
}

fn stops(book: &Book, on: &str, code: &str) -> Vec<Stop> {
    let round = round(&book.on(on));
    let all = round.stops.into_iter().chain(round.can_wait);
    all.filter(|stop| stop.subject == Subject::Tray(code.parse().unwrap())).collect()
}

fn said(criterion: &Criterion) -> String {
    Wording::new(Lang::En).reason(criterion, About::Tray)
}

/// Coffee at 30 % light until it is carried to a place of no shade on 1 March.
fn leapt() -> Book {
    let mut book = small_nursery();
    book.write("2025-01-01", "place_set", json!({"place":"Open rack","order":3,"shade_pct":0}));
    book.write(
        "2025-06-01",
        "sown",
        json!({"tray":"cof-1","lot":"cof-L1","seeds":60,"container":"bag","cells":60,"place":"Deep shade"}),
    );
    book.write("2025-09-10", "counted", json!({"tray":"cof-1","standing":50}));
    book.write("2026-03-01", "carried", json!({"tray":"cof-1","place":"Open rack"}));
    book
}

#[test]
fn a_tray_put_too_far_into_the_sun_is_carried_back_today_and_no_day_ends_its_wait_there() {
    let book = leapt();
    for on in ["2026-03-01", "2026-03-05", "2026-03-11", TODAY] {
        let shade = stops(&book, on, "cof-1").into_iter().find(|stop| stop.task == Task::IntoShade).unwrap();
        assert!(matches!(shade.why, RoundReason::IntoShade { leapt: Some(_), .. }), "{on} {:?}", shade.why);
        assert_eq!(shade.until, Some(day(on)));
        let step = of_tray(&book, on, Rule::ExposureStep);
        assert!(step.blocks && step.expected.is_none(), "{on} {step:?}");
        assert!(said(&step).contains("back into the shade today"), "{}", said(&step));
    }
    let mut back = book.clone();
    back.write("2026-03-03", "carried", json!({"tray":"cof-1","place":"Half shade"}));
    assert_eq!(of_tray(&back, "2026-03-05", Rule::ExposureStep).expected, Some(day("2026-03-11")));
    assert!(!of_tray(&back, "2026-03-11", Rule::ExposureStep).blocks);
    assert!(!stops(&back, "2026-03-04", "cof-1").iter().any(|stop| stop.task == Task::IntoShade));
    // Counted before it shows tells nothing, counted when it does lets it stand there.
    for (counted, blocks) in [("2026-03-10", true), ("2026-03-11", false)] {
        let mut looked = book.clone();
        looked.write(counted, "counted", json!({"tray":"cof-1","standing":50}));
        assert_eq!(of_tray(&looked, TODAY, Rule::ExposureStep).blocks, blocks, "{counted}");
    }
}

#[test]
fn too_large_a_step_never_hardens_sooner_than_the_right_one() {
    let mut leap = leapt();
    leap.write("2026-03-11", "counted", json!({"tray":"cof-1","standing":50}));
    let met = |book: &Book, on: &str| of_tray(book, on, Rule::Hardening).met();
    // 10 days until it shows, then 21.
    assert_eq!((met(&leap, "2026-03-31"), met(&leap, "2026-04-01")), (Some(false), Some(true)));
    let mut right = leapt();
    right.write("2026-03-01", "carried", json!({"tray":"cof-1","place":"Half shade"}));
    assert_eq!((met(&right, "2026-03-21"), met(&right, "2026-03-22")), (Some(false), Some(true)));
    assert!(said(&of_tray(&leap, "2026-03-05", Rule::Hardening)).contains("too large"), "and says why");
}

#[test]
fn cut_roots_in_the_sun_go_into_the_shade_today_and_no_plug_is_asked_for_before_it_tells() {
    let mut book = leapt();
    // Past what its bag holds, 420 days, on 26 July 2026.
    book.write("2026-03-12", "counted", json!({"tray":"cof-1","standing":50}));
    book.write("2026-08-01", "roots_cut", json!({"tray":"cof-1","count":50}));
    for on in ["2026-08-01", "2026-08-21"] {
        let stops = stops(&book, on, "cof-1");
        let shade = stops.iter().find(|stop| stop.task == Task::IntoShade).unwrap();
        assert!(matches!(shade.why, RoundReason::IntoShade { until: Some(_), .. }), "{:?}", shade.why);
        let none_of = [Task::PotOn, Task::CheckPlug];
        assert!(stops.iter().all(|stop| !none_of.contains(&stop.task)), "{on}: {stops:?}");
        let container = of_tray(&book, on, Rule::DaysInContainer);
        assert!(container.blocks && !said(&container).contains("lift a plug"), "{}", said(&container));
    }
    assert!(said(&of_tray(&book, "2026-08-22", Rule::DaysInContainer)).contains("lift a plug"));
    book.write("2026-08-02", "carried", json!({"tray":"cof-1","place":"Half shade"}));
    assert!(!stops(&book, "2026-08-02", "cof-1").iter().any(|stop| stop.task == Task::IntoShade));
}

fn bare(species: &str, more: serde_json::Value) -> Book {
    let mut book = small_nursery();
    open_bed(&mut book, "Upper 1");
    wet_days(&mut book);
    let mut body = json!({"tray":"t-1","species":species,"count":50,"form":"bare_root"});
    body.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
    book.write(TODAY, "plants_received", body);
    book
}

#[test]
fn young_bare_roots_that_nobody_measured_are_measured_today_for_the_bed_that_waits() {
    let book = bare("coffee", json!({"from":"bought","age_days":200,"height_cm":25}));
    let height = criterion(&tray(&book.on(TODAY), "t-1").criteria, Rule::Height).clone();
    assert!(height.blocks && height.met().is_none(), "{height:?}");
    let load = criterion(&tray(&book.on(TODAY), "t-1").criteria, Rule::Load).clone();
    assert!(!load.blocks, "an age that nobody asks about does not hold them back unnamed: {load:?}");
    let stops = stops(&book, TODAY, "t-1");
    let measure = stops.iter().find(|stop| stop.task == Task::Measure).unwrap();
    let RoundReason::BareNotMeasured { plants, bed, .. } = &measure.why else { panic!("{:?}", measure.why) };
    assert_eq!((bed.as_str(), *plants <= 50 && *plants > 0), ("Upper 1", true));
    // Old enough by what was written they go, sorted while they are loaded.
    let old = bare("coffee", json!({"from":"bought","age_days":230,"height_cm":25}));
    assert!(pair(&old.on(TODAY), "t-1", "Upper 1").fits);
}

#[test]
fn stakes_keep_as_long_as_their_species_does_whatever_form_was_written_and_no_taken_day_says_cull() {
    for species in ["cassava", "gliricidia"] {
        let book = bare(species, json!({"from":"cutting"}));
        let good = |on: &str| criterion(&tray(&book.on(on), "t-1").criteria, Rule::GoodUntil).clone();
        assert_eq!((good("2026-04-29").met(), good("2026-04-30").met()), (Some(true), Some(false)), "{species}");
        let after = stops(&book, "2026-05-01", "t-1");
        assert!(after.iter().any(|stop| stop.task == Task::LastDay), "{species}: {after:?}");
        assert!(after.iter().all(|stop| stop.task != Task::Cull), "{species}: {after:?}");
        assert!(said(&good("2026-05-01")).contains("scratch the bark"), "{}", said(&good("2026-05-01")));
        // Seen alive on the day they go, with care.
        let mut seen = book.clone();
        seen.write("2026-05-01", "counted", json!({"tray":"t-1","standing":40}));
        let good = criterion(&tray(&seen.on("2026-05-01"), "t-1").criteria, Rule::GoodUntil).clone();
        assert_eq!((good.met(), good.warns), (Some(true), true));
    }
    // A stake is asked for no height of a seedling.
    let book = bare("gliricidia", json!({"from":"cutting"}));
    assert!(tray(&book.on(TODAY), "t-1").criteria.iter().all(|criterion| criterion.rule() != Rule::Height));
    // Rooted cuttings of a species of which no stake is known to keep are bare roots.
    let coffee = bare("coffee", json!({"from":"cutting"}));
    assert_eq!(
        criterion(&tray(&coffee.on("2026-04-18"), "t-1").criteria, Rule::GoodUntil).met(),
        Some(false),
        "two days"
    );
}

#[test]
fn what_has_no_bark_is_looked_at_where_it_shows_and_slips_and_suckers_keep_for_weeks() {
    let good = |book: &Book, on: &str| criterion(&tray(&book.on(on), "t-1").criteria, Rule::GoodUntil).clone();
    // Slips lie dry for eight weeks, suckers in the shade for two, whoever brought them.
    for (species, last, over, look) in [
        ("pineapple", "2026-06-10", "2026-06-11", "heart leaves"),
        ("banana", "2026-04-29", "2026-04-30", "look at the corm"),
        ("plantain", "2026-04-29", "2026-04-30", "look at the corm"),
    ] {
        for from in ["cutting", "bought"] {
            let book = bare(species, json!({"from":from}));
            assert_eq!(
                (good(&book, last).met(), good(&book, over).met()),
                (Some(true), Some(false)),
                "{species} {from}"
            );
            let told = said(&good(&book, over));
            assert!(told.contains(look) && !told.contains("bark") && !told.contains("roots"), "{told}");
            let kept = said(&good(&book, last));
            assert!(!kept.contains("moist") && !kept.contains("heeled"), "{kept}");
            assert!(tray(&book.on(last), "t-1").criteria.iter().all(|asked| asked.rule() != Rule::BareRoots));
        }
    }
    // What is raised from nothing else is no plant with roots, whoever it comes from.
    for (species, last, over, look) in [
        ("cassava", "2026-04-29", "2026-04-30", "scratch the bark"),
        ("ginger", "2026-05-13", "2026-05-14", "sound eyes"),
        ("turmeric", "2026-05-13", "2026-05-14", "sound eyes"),
        ("vanilla", "2026-04-29", "2026-04-30", "look at the nodes"),
        ("sweet potato", "2026-04-19", "2026-04-20", "look at the nodes"),
        ("vetiver", "2026-04-19", "2026-04-20", "look at the base"),
        ("taro", "2026-04-22", "2026-04-23", "look at the corm"),
        ("breadfruit", "2026-04-22", "2026-04-23", "scratch the bark"),
    ] {
        for from in ["cutting", "bought", "gift"] {
            let book = bare(species, json!({"from":from}));
            let stands = |on: &str| (good(&book, on).met(), good(&book, on).blocks);
            assert_eq!((stands(last), stands(over)), ((Some(true), false), (Some(false), false)), "{species} {from}");
            let told = said(&good(&book, over));
            assert!(told.contains(look) && !told.contains("roots"), "{species}: {told}");
        }
    }
    // A graft or an air layer has roots of its own.
    let peach = bare("lychee", json!({"from":"bought"}));
    assert_eq!(good(&peach, "2026-04-18").met(), Some(false), "two days");
    let coconut = bare("coconut", json!({"from":"bought","age_days":300,"height_cm":70}));
    let told = said(&good(&coconut, "2026-04-19"));
    assert!(told.contains("spear leaf") && !told.contains("bark"), "{told}");
}

#[test]
fn a_coconut_from_its_bed_goes_out_with_bare_roots_and_another_palm_does_not() {
    for (species, lives) in [("coconut", true), ("oil palm", false), ("pejibaye", false)] {
        let book = bare(species, json!({"from":"bought","age_days":300,"height_cm":70}));
        assert_eq!(criterion(&tray(&book.on(TODAY), "t-1").criteria, Rule::BareRoots).met(), Some(lives), "{species}");
    }
    // Suckers of banana are not asked.
    let book = bare("banana", json!({"from":"cutting"}));
    assert!(tray(&book.on(TODAY), "t-1").criteria.iter().all(|criterion| criterion.rule() != Rule::BareRoots));
}

#[test]
fn holes_less_deep_than_the_bag_hold_the_bed_and_are_called_too_shallow() {
    // The bag of coffee is 23 cm deep.
    for (depth_cm, met) in [(10, false), (15, false), (22, false), (23, true), (40, true)] {
        let mut other = small_nursery();
        other.write(
            "2026-04-06",
            "bed_set",
            json!({"bed":"Low","field":"Upper","length_m":20,"width_m":6,
            "plan":[{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]}),
        );
        other.write("2026-04-06", "prepared", json!({"bed":"Low","task":"holes","depth_cm":depth_cm}));
        let picture = other.on(TODAY);
        let holes = criterion(&crate::support::bed_species(&picture, "Low", "COA").criteria, Rule::Holes).clone();
        assert_eq!((holes.met(), holes.blocks), (Some(met), !met), "{depth_cm}");
        let said = Wording::new(Lang::En).reason(&holes, About::Bed);
        assert_eq!(said.contains("too shallow for the 23 cm bag"), !met, "{said}");
        assert!(matches!(holes.known(), Some(Measure::On(_))), "the day is known: {holes:?}");
        // What was found shallow since leads, whatever was dug before; of some rows it does not.
        for (part, leads) in [(json!({}), true), (json!({"rows":"1"}), false)] {
            let mut later = other.clone();
            let mut found = json!({"bed":"Low","task":"holes","depth_cm":12});
            found.as_object_mut().unwrap().extend(part.as_object().unwrap().clone());
            later.write("2026-04-10", "prepared", found);
            let picture = later.on(TODAY);
            let holes = criterion(&crate::support::bed_species(&picture, "Low", "COA").criteria, Rule::Holes);
            assert_eq!(holes.blocks, leads || !met, "{depth_cm}");
        }
    }
}

#[test]
fn a_rod_in_soaked_ground_opens_no_bed_that_a_dry_reading_held() {
    let world = |dry: bool| {
        let mut book = small_nursery();
        book.write(
            "2025-01-01",
            "bed_set",
            json!({"bed":"B","field":"Upper","length_m":20,"width_m":6,
            "plan":[{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]}),
        );
        book.write("2026-04-01", "prepared", json!({"bed":"B","task":"holes"}));
        let rod = |depth: i32| json!({"bed":"B","rod_mm":8,"push_kg":10,"depth_cm":depth});
        if dry {
            let mut look = rod(9);
            look["wet"] = json!(false);
            book.write("2026-04-02", "soil_checked", look);
        }
        let mut look = rod(50);
        look["wet"] = json!(true);
        look["days_since_soaking"] = json!(0);
        book.write("2026-04-14", "soil_checked", look);
        let picture = book.on(TODAY);
        criterion(&crate::support::bed_species(&picture, "B", "COA").criteria, Rule::Soil).clone()
    };
    assert_eq!((world(true).met(), world(true).blocks), (None, true));
    assert_eq!((world(false).blocks, world(false).warns), (false, true), "with nothing against it it asks for care");
}

#[test]
fn from_day_14_to_21_after_soft_leaves_whoever_plants_feels_them() {
    let mut book = fitting();
    book.write("2026-03-25", "flushed", json!({"tray":"cof-1"}));
    for (on, met, warns) in [
        ("2026-04-07", false, false),
        ("2026-04-08", true, true),
        ("2026-04-15", true, true),
        ("2026-04-16", true, false),
    ] {
        let flush = of_tray(&book, on, Rule::Flush);
        assert_eq!((flush.met(), flush.warns), (Some(met), warns), "{on}");
        assert_eq!(said(&flush).contains("feel whether they are firm"), warns, "{}", said(&flush));
    }
}

#[test]
fn a_bed_no_brighter_than_where_a_tray_stands_names_the_day_on_which_it_lets_it_go() {
    // From 30 % to 55 % on 8 April; a bed of 50 % is no brighter once the mean of ten days comes up to it.
    let mut book = small_nursery();
    crate::support::coffee_in_deep_shade(&mut book, "cof-1", "2025-06-01", "2025-09-10");
    book.write("2026-04-08", "carried", json!({"tray":"cof-1","place":"Half shade"}));
    open_bed(&mut book, "Upper 1");
    book.write("2026-04-14", "light_read", json!({"bed":"Upper 1","light_share":0.5}));
    wet_days(&mut book);
    let picture = book.on(TODAY);
    let hardening = criterion(&pair(&picture, "cof-1", "Upper 1").criteria, Rule::Hardening).clone();
    let own = of_tray(&book, TODAY, Rule::Hardening);
    let (sooner, later) = (hardening.expected.unwrap(), own.expected.unwrap());
    assert!(sooner < later, "{sooner} {later}");
    let on = |day: outplant::base::Day| {
        let picture = book.on(&day.to_string());
        criterion(&pair(&picture, "cof-1", "Upper 1").criteria, Rule::Hardening).met()
    };
    assert_eq!(
        (on(sooner.plus(-1)), on(sooner)),
        (Some(false), Some(true)),
        "the day named is the day that lets it go"
    );
}

#[test]
fn hardening_that_began_today_is_not_said_to_be_still_to_begin() {
    let mut book = fitting();
    book.write(TODAY, "flushed", json!({"tray":"cof-1"}));
    let picture = book.on(TODAY);
    let told = said(&criterion(&tray(&picture, "cof-1").criteria, Rule::Hardening).clone());
    assert!(!told.contains("has not begun"), "{told}");
}
