//! Bare roots: which species live from them, and how long they keep.

use crate::support::{Book, criterion, day, fitting, small_nursery, tray};
use outplant::reckon::picture::{Basis, Criterion, Gap, Rule};
use outplant::wording::verdict::About;
use outplant::wording::{Lang, Wording};
use serde_json::json;

const TODAY: &str = "2026-04-15";

/// Plants that came bare-rooted the day before, good until a day.
fn came(species: &str, form: &str, good_until: Option<&str>) -> Book {
    let mut book = small_nursery();
    let mut body = json!({"tray":"t-1","species":species,"count":40,"from":"bought","form":form,"height_cm":40});
    if let Some(until) = good_until {
        body["good_until"] = json!(until);
    }
    book.write("2026-04-14", "plants_received", body);
    book
}

fn asked(book: &Book, rule: Rule) -> Criterion {
    criterion(&tray(&book.on(TODAY), "t-1").criteria, rule).clone()
}

#[test]
fn a_species_that_does_not_live_from_bare_roots_is_not_offered_so() {
    for species in ["jackfruit", "mango", "macadamia", "avocado", "cacao", "durian"] {
        let bare = asked(&came(species, "bare_root", None), Rule::BareRoots);
        assert_eq!((bare.met(), bare.blocks), (Some(false), true), "{species}");
    }
    for species in ["Cordia alliodora", "teak", "coffee"] {
        assert_eq!(asked(&came(species, "bare_root", None), Rule::BareRoots).met(), Some(true), "{species}");
    }
    // Nobody wrote it of this one: it asks for care.
    let unknown = asked(&came("grevillea", "bare_root", None), Rule::BareRoots);
    assert_eq!((unknown.met(), unknown.blocks, unknown.warns), (None, false, true));
    assert!(matches!(unknown.gap(), Some(Gap::NoBareRoots(_))), "{unknown:?}");
}

#[test]
fn bare_roots_that_were_bagged_and_plants_in_bags_are_not_asked() {
    let mut book = came("jackfruit", "bare_root", None);
    let on = json!({"from":"t-1","to":"t-2","count":40,"how":"potted_on","container":"bag","place":"Half shade"});
    book.write("2026-04-14", "moved_on", on);
    let picture = book.on(TODAY);
    assert!(tray(&picture, "t-2").criteria.iter().all(|criterion| criterion.rule() != Rule::BareRoots));
    let bags = came("jackfruit", "bag", None);
    assert!(tray(&bags.on(TODAY), "t-1").criteria.iter().all(|criterion| criterion.rule() != Rule::BareRoots));
}

#[test]
fn a_last_day_that_is_weeks_away_stays_as_written_and_asks_for_care() {
    // Heeled in they keep 7 days: from 14 to 21 April.
    for (until, warns) in [("2026-04-21", false), ("2026-04-22", true), ("2026-05-09", true)] {
        let good = asked(&came("coffee", "bare_root", Some(until)), Rule::GoodUntil);
        assert_eq!((good.met(), good.warns, good.basis()), (Some(true), warns, Basis::Reckoned), "{until}");
    }
    let long = asked(&came("coffee", "bare_root", Some("2026-05-09")), Rule::GoodUntil);
    let said = Wording::new(Lang::En).reason(&long, About::Tray);
    assert!(said.contains("as written") && said.contains("rarely last") && said.contains("heeled in"), "{said}");
    assert!(!asked(&came("teak", "stump", Some("2026-05-09")), Rule::GoodUntil).warns, "stumps keep longer");
}

#[test]
fn bare_roots_from_deep_shade_are_asked_for_the_step_of_light_where_it_was_written() {
    // 10 % to 50 %, the least light of coffee's band, is 5 times; 60 % to it is none.
    for (shade, blocks) in [(90, true), (40, false)] {
        let mut book = small_nursery();
        let came = json!({"tray":"t-1","species":"coffee","count":40,"from":"bought","form":"bare_root",
            "height_cm":30,"shade_now_pct":shade});
        book.write("2026-04-14", "plants_received", came);
        assert_eq!(asked(&book, Rule::ExposureStep).blocks, blocks, "{shade}");
    }
    let unwritten = came("coffee", "bare_root", None);
    let picture = unwritten.on(TODAY);
    assert!(tray(&picture, "t-1").criteria.iter().all(|criterion| criterion.rule() != Rule::ExposureStep));
}

#[test]
fn a_stump_is_asked_for_no_height() {
    let mut book = small_nursery();
    let came = json!({"tray":"t-1","species":"teak","count":40,"from":"bought","form":"stump"});
    book.write("2026-04-14", "plants_received", came);
    let picture = book.on(TODAY);
    let tray = tray(&picture, "t-1");
    assert!(
        tray.ready && tray.criteria.iter().all(|criterion| criterion.rule() != Rule::Height),
        "{:?}",
        tray.criteria
    );
}

fn stops(book: &Book, on: &str) -> Vec<(outplant::reckon::round::Task, String)> {
    let picture = book.on(on);
    let round = outplant::reckon::round::round(&picture);
    let all = round.stops.into_iter().chain(round.can_wait);
    let at = outplant::wording::round::RoundOn { day: picture.day, species: &picture.site.species };
    let wording = Wording::new(Lang::En);
    let of_it = outplant::nursery::entry::subject::Subject::Tray("t-1".parse().unwrap());
    all.filter(|stop| stop.subject == of_it).map(|stop| (stop.task, wording.round_reason(&stop.why, at))).collect()
}

#[test]
fn stumps_keep_as_long_as_their_species_does_and_no_made_up_day_is_called_the_last() {
    // Teak 21 days by its profile; a stump of which nobody knows 7.
    for (species, last, after) in [("teak", "2026-05-05", "2026-05-06"), ("mulberry", "2026-04-21", "2026-04-22")] {
        let book = came(species, "stump", None);
        let good = |on: &str| criterion(&tray(&book.on(on), "t-1").criteria, Rule::GoodUntil).clone();
        assert_eq!((good(last).met(), good(after).met()), (Some(true), Some(false)), "{species}");
        assert_eq!(good(last).basis(), Basis::Assumed, "{species}");
    }
    let teak = came("teak", "stump", None);
    assert_eq!(stops(&teak, "2026-04-16"), [], "nothing presses in its first days");
    let last_day = |book: &Book| {
        let found =
            stops(book, "2026-05-05").into_iter().find(|(task, _)| *task == outplant::reckon::round::Task::LastDay);
        found.unwrap().1
    };
    let said = last_day(&teak);
    assert!(said.contains("Nobody wrote how long they keep") && !said.contains("today is the last day"), "{said}");
    let written = last_day(&came("teak", "stump", Some("2026-05-05")));
    assert!(written.contains("today is the last day"), "{written}");
}

#[test]
fn bare_roots_that_do_not_live_so_are_bagged_at_once_as_work_of_the_day() {
    for species in ["avocado", "papaya"] {
        let (task, said) = stops(&came(species, "bare_root", None), TODAY).pop().unwrap();
        assert_eq!(task, outplant::reckon::round::Task::PotOn, "{species}");
        assert!(said.contains("bag them at once"), "{said}");
    }
    let (dry, _) = stops(&came("avocado", "bare_root", None), "2026-04-20").pop().unwrap();
    assert_eq!(dry, outplant::reckon::round::Task::LastDay, "a day that nobody wrote asks for a look");
    let written = came("avocado", "bare_root", Some("2026-04-16"));
    let (dry, _) = stops(&written, "2026-04-20").pop().unwrap();
    assert_eq!(dry, outplant::reckon::round::Task::Cull, "past a written day there is nothing to bag");
}

#[test]
fn a_bag_that_ends_before_the_rains_is_told_six_weeks_ahead() {
    // 420 days from 1 June 2025 end on 26 July 2026; the next rains begin on 1 March.
    let mut book = small_nursery();
    crate::support::ready_coffee(&mut book, "t-1");
    let told = |on: &str| stops(&book, on).into_iter().find(|(_, said)| said.contains("before the rains of"));
    assert_eq!(told("2026-06-13"), None);
    let (task, said) = told("2026-06-14").unwrap();
    assert_eq!(task, outplant::reckon::round::Task::PotOn);
    assert!(said.contains("its bag ends 26 Jul, before the rains of 1 Mar 2027"), "{said}");
    assert_eq!(told("2026-04-10"), None, "in the rains it goes out");
    // Rains within the three weeks that a plug carries it are waited for.
    for (from, so) in [("08-16", false), ("08-17", true)] {
        let mut book = book.clone();
        let rains = json!([{"from":"03-01","until":"06-15"},{"from":from,"until":"12-20"}]);
        book.write("2026-05-01", "season_set", json!({"rains":rains}));
        let said = stops(&book, "2026-06-20").into_iter().any(|(_, said)| said.contains("before the rains of"));
        assert_eq!(said, so, "{from}");
    }
}

/// A ready tray of coffee into which bare roots were put on the day before, that had come on such a day.
fn merged(came: &str) -> Book {
    let mut book = fitting();
    let bare = json!({"tray":"bare-1","species":"coffee","count":20,"from":"bought","form":"bare_root","height_cm":30});
    book.write(came, "plants_received", bare);
    book.write("2026-04-14", "moved_on", json!({"from":"bare-1","to":"cof-1","count":20,"how":"merged"}));
    book
}

#[test]
fn bare_roots_that_lay_too_long_hold_the_tray_they_are_put_into_until_a_plug_of_later_holds() {
    let plug = |book: &Book, on: &str| criterion(&tray(&book.on(on), "cof-1").criteria, Rule::Plug).clone();
    let mut late = merged("2025-10-01");
    late.write("2026-04-14", "plug_checked", json!({"tray":"cof-1","roots":"holds"}));
    assert!(!tray(&late.on(TODAY), "cof-1").ready);
    assert_eq!((plug(&late, TODAY).blocks, plug(&late, TODAY).expected), (true, Some(day("2026-05-12"))));
    late.write("2026-05-11", "plug_checked", json!({"tray":"cof-1","roots":"holds"}));
    // Also after the rest: a plug of the rest tells nothing.
    assert!(plug(&late, "2026-05-11").blocks && plug(&late, "2026-05-20").blocks);
    late.write("2026-05-20", "plug_checked", json!({"tray":"cof-1","roots":"holds"}));
    assert!(!plug(&late, "2026-05-20").blocks);
    // In time, a plug that holds is enough as of any plants moved on.
    let mut fresh = merged("2026-04-13");
    fresh.write("2026-04-15", "plug_checked", json!({"tray":"cof-1","roots":"holds"}));
    assert!(!plug(&fresh, TODAY).blocks);
    // They rest in a tray of their own too.
    let mut own = came("coffee", "bare_root", Some("2026-04-14"));
    own.write(
        "2026-04-18",
        "moved_on",
        json!({"from":"t-1","to":"t-2","count":40,"how":"potted_on","container":"bag"}),
    );
    own.write("2026-04-19", "plug_checked", json!({"tray":"t-2","roots":"holds"}));
    assert!(criterion(&tray(&own.on("2026-06-30"), "t-2").criteria, Rule::Plug).blocks);
}

#[test]
fn plants_put_in_after_a_sample_are_not_measured_by_it_and_their_unknown_age_is_the_age_of_the_tray() {
    let book = merged("2026-04-13");
    let picture = book.on(TODAY);
    let cof = tray(&picture, "cof-1");
    assert_eq!((cof.age_days, cof.plantable_basis), (None, Basis::Reckoned));
    let height = criterion(&cof.criteria, Rule::Height);
    assert_eq!(height.met(), None);
    assert!(matches!(height.gap(), Some(Gap::CameAfterSample { on }) if *on == day("2026-04-10")), "{height:?}");
    assert!(criterion(&cof.criteria, Rule::DaysSinceSowing).blocks);
    let mut measured = book.clone();
    let heights: Vec<_> = (0..20).map(|_| json!({"height_cm":28,"collar_mm":4.5})).collect();
    measured.write("2026-04-15", "measured", json!({"tray":"cof-1","plants":heights}));
    assert_eq!(tray(&measured.on(TODAY), "cof-1").plantable_basis, Basis::Measured);
}

#[test]
fn plants_from_elsewhere_that_nobody_measured_here_are_not_ready_and_their_height_is_asked_for() {
    let mut book = small_nursery();
    let came = json!({"tray":"cof-600","species":"coffee","count":40,"from":"bought","form":"plug","age_days":400,
        "height_cm":30,"container":"bag","place":"Half shade","stands_since":"2026-01-01","shade_now_pct":45});
    book.write("2026-04-14", "plants_received", came);
    let height = |book: &Book| criterion(&tray(&book.on(TODAY), "cof-600").criteria, Rule::Height).clone();
    assert_eq!((height(&book).met(), height(&book).blocks), (None, true));
    assert!(!tray(&book.on(TODAY), "cof-600").ready);
    let heights: Vec<_> = (0..20).map(|_| json!({"height_cm":30,"collar_mm":4.5})).collect();
    book.write("2026-04-15", "measured", json!({"tray":"cof-600","plants":heights}));
    assert!(!height(&book).blocks);
}

#[test]
fn bare_roots_past_their_usual_days_are_offered_only_after_a_look_of_the_day() {
    // Two days out of the ground, seven heeled in, whatever last day was written.
    let came = |heeled_in: bool| {
        let mut book = small_nursery();
        let body = json!({"tray":"t-1","species":"coffee","count":40,"from":"bought","form":"bare_root","height_cm":30,
            "heeled_in":heeled_in,"good_until":"2026-04-30"});
        book.write("2026-04-10", "plants_received", body);
        book
    };
    let good = |book: &Book, on: &str| criterion(&tray(&book.on(on), "t-1").criteria, Rule::GoodUntil).clone();
    for (heeled_in, last, after) in [(false, "2026-04-12", "2026-04-13"), (true, "2026-04-17", "2026-04-18")] {
        let book = came(heeled_in);
        assert_eq!(good(&book, last).met(), Some(true));
        let old = good(&book, after);
        assert_eq!((old.met(), old.blocks), (None, true), "{after}");
        let said = Wording::new(Lang::En).reason(&old, About::Tray);
        assert!(said.contains("look at them today") && said.contains("write today how many live"), "{said}");
        let (task, due) = stops(&book, after).into_iter().next().unwrap();
        assert_eq!((task, due.contains("look at them today")), (outplant::reckon::round::Task::Count, true), "{due}");
        let mut looked = book.clone();
        looked.write(after, "counted", json!({"tray":"t-1","standing":38}));
        assert_eq!(good(&looked, after).met(), Some(true));
        assert!(good(&looked, "2026-04-20").blocks, "a look tells of its own day");
    }
}

#[test]
fn bare_roots_for_which_a_bed_has_no_place_are_bagged_or_given_the_same_day() {
    // 44 places are open, 60 came.
    let mut book = small_nursery();
    crate::support::open_bed(&mut book, "Upper 1");
    crate::support::wet_days(&mut book);
    let body = json!({"tray":"t-1","species":"coffee","count":60,"from":"bought","form":"bare_root","height_cm":30,
        "good_until":"2026-04-16"});
    book.write("2026-04-14", "plants_received", body);
    let samples: Vec<_> = (0..20).map(|_| json!({"height_cm":30,"collar_mm":5})).collect();
    book.write("2026-04-14", "measured", json!({"tray":"t-1","plants":samples}));
    let picture = book.on(TODAY);
    let round = outplant::reckon::round::round(&picture);
    let left = round.stops.iter().chain(&round.can_wait).find(|stop| stop.id == "pot_on t-1").unwrap();
    let outplant::reckon::round::RoundReason::BareLeft { left: plants, .. } = left.why else {
        panic!("{:?}", left.why)
    };
    assert_eq!(plants, 16);
    assert!(left.marked, "they die in two days");
    let said = stops(&book, TODAY).into_iter().find(|(task, _)| *task == outplant::reckon::round::Task::PotOn).unwrap();
    assert!(said.1.contains("16 of these bare roots find no place: bag them today"), "{}", said.1);
}

#[test]
fn wildlings_are_told_the_same_on_the_walk_and_by_why_and_rest_before_the_light() {
    let mut book = small_nursery();
    let body = json!({"tray":"t-1","species":"Prunus africana","count":30,"from":"wildling","form":"bare_root",
        "place":"Deep shade","height_cm":15});
    book.write("2026-04-14", "plants_received", body);
    let said = Wording::new(Lang::En).reason(&asked(&book, Rule::BareRoots), About::Tray);
    assert!(stops(&book, TODAY).iter().any(|(_, due)| *due == said), "{said}");
    let on = json!({"from":"t-1","to":"t-2","count":30,"how":"potted_on","container":"bag","place":"Deep shade"});
    book.write("2026-04-15", "moved_on", on);
    let picture = book.on("2026-05-20");
    let bagged = tray(&picture, "t-2");
    let step = Wording::new(Lang::En).reason(criterion(&bagged.criteria, Rule::ExposureStep), About::Tray);
    // 90 days from the bags.
    assert!(step.contains("In the shade until 14 Jul 2026"), "{step}");
}

#[test]
fn stakes_past_their_day_are_scratched_and_nobody_looks_for_their_roots() {
    let book = came("teak", "stump", Some("2026-04-14"));
    let said = Wording::new(Lang::En).reason(&asked(&book, Rule::GoodUntil), About::Tray);
    assert!(said.contains("scratch the bark") && !said.contains("roots"), "{said}");
    let (_, due) = stops(&book, TODAY).into_iter().next().unwrap();
    assert!(due.contains("scratch the bark") && !due.contains("roots"), "{due}");
}

#[test]
fn stakes_past_the_days_of_their_species_are_looked_at_and_refused_when_they_lay_twice_as_long() {
    // Teak 21 days by its profile.
    let teak = came("teak", "stump", None);
    let good = |on: &str| criterion(&tray(&teak.on(on), "t-1").criteria, Rule::GoodUntil).clone();
    let stands = |on: &str| (good(on).blocks, good(on).warns);
    assert_eq!((stands("2026-05-05"), stands("2026-05-06")), ((false, false), (false, true)));
    assert_eq!((stands("2026-05-26"), stands("2026-05-27")), ((false, true), (true, false)));
    // A day that somebody wrote is the last.
    let written = came("teak", "stump", Some("2026-05-05"));
    assert!(criterion(&tray(&written.on("2026-05-06"), "t-1").criteria, Rule::GoodUntil).blocks);
}

#[test]
fn bare_roots_weeks_past_the_day_that_was_written_are_culled_and_those_heeled_in_are_looked_at() {
    let mut book = came("coffee", "bare_root", Some("2026-04-16"));
    let said = |book: &Book, on: &str, lang: Lang| {
        Wording::new(lang).reason(criterion(&tray(&book.on(on), "t-1").criteria, Rule::GoodUntil), About::Tray)
    };
    // 28 days past 16 April are over on 14 May.
    assert!(said(&book, "2026-05-14", Lang::En).contains("look at them"), "{}", said(&book, "2026-05-14", Lang::En));
    let late = said(&book, "2026-05-15", Lang::En);
    assert!(late.contains("cull them") && !late.contains("look at them"), "{late}");
    assert!(said(&book, "2026-05-15", Lang::Es).contains("descártelas"));
    book.entries.pop();
    let heeled = json!({"tray":"t-1","species":"coffee","count":40,"from":"bought","form":"bare_root","height_cm":40,
        "good_until":"2026-04-16","heeled_in":true});
    book.write("2026-04-14", "plants_received", heeled);
    assert!(said(&book, "2026-05-15", Lang::En).contains("look at them"));
}
