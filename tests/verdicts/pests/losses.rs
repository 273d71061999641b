//! What plants of a tray died of, or were thrown out for, is a sighting where it names a sickness.

use super::{TODAY, asked, clear, criterion, culled, fitting, said, seen, stops, tasks_at, tray};
use crate::support::{Book, pair};
use outplant::reckon::picture::Rule;
use outplant::wording::Lang::{En, Es};
use serde_json::json;

fn lost(book: &mut Book, on: &str, count: u32, cause: &str) {
    book.write(on, "lost", json!({"tray":"cof-1","count":count,"cause":cause}));
}

fn with_loss(on: &str, count: u32, cause: &str) -> Book {
    let mut book = fitting();
    lost(&mut book, on, count, cause);
    book
}

#[test]
fn a_loss_or_a_cull_that_names_a_sickness_holds_its_tray_and_one_that_names_none_does_not() {
    for cause in ["bacterial wilt", "nematodos", "mosaic virus", "damping off", "marchitez", "root rot", "barrenador"] {
        let book = with_loss("2026-04-12", 5, cause);
        assert!(asked(&book).blocks && !pair(&book.on(TODAY), "cof-1", "Upper 1").fits, "{cause}");
    }
    for why in ["mosaic virus", "damping-off", "root rot", "bacterial wilt"] {
        let mut book = fitting();
        book.write("2026-04-12", "culled", json!({"tray":"cof-1","count":4,"why":why}));
        assert!(asked(&book).blocks, "{why}");
    }
    for cause in ["rats", "zompopos", "drought", "granizo", "stem broken", "wilted, no water"] {
        assert!(!asked(&with_loss("2026-04-12", 5, cause)).blocks, "{cause}");
    }
    for why in ["runts", "stunted", "yellow and thin", "too many", "goose-neck roots"] {
        let mut book = fitting();
        book.write("2026-04-12", "culled", json!({"tray":"cof-1","count":4,"why":why}));
        assert!(!asked(&book).blocks, "{why}");
    }
}

#[test]
fn one_plant_that_wilted_is_what_every_bench_loses_and_a_twentieth_of_them_is_asked_about() {
    assert!(!asked(&with_loss("2026-04-12", 1, "wilted")).blocks);
    let mut book = with_loss("2026-04-12", 1, "wilted");
    lost(&mut book, "2026-04-14", 2, "wilted");
    assert!(asked(&book).blocks, "three of 48 in two weeks");
    assert!(asked(&with_loss("2026-04-12", 1, "bacterial wilt")).blocks, "a named one is one too many");
}

#[test]
fn a_few_seedlings_that_damping_off_took_in_the_seedbed_hold_no_tray_and_counts_clear_what_took_more() {
    let young = |count: u32| {
        let mut book = fitting();
        lost(&mut book, "2025-09-12", count, "damping-off");
        book
    };
    assert!(!criterion(&tray(&young(2).on("2025-09-20"), "cof-1").criteria, Rule::Pest).blocks, "2 of 50");
    assert!(criterion(&tray(&young(10).on("2025-09-20"), "cof-1").criteria, Rule::Pest).blocks, "10 of 50");
    // Counted in April, and few died since.
    assert!(!asked(&young(10)).blocks);
    let mut late = with_loss("2026-03-01", 5, "damping-off");
    assert!(said(&late, "2026-03-02", En).contains("A count of the whole tray from 15 Mar 2026 on answers it too"));
    assert!(said(&late, "2026-03-02", Es).contains("También basta un conteo de toda la bandeja desde el"));
    assert!(!asked(&late).blocks, "counted on 10 April");
    lost(&mut late, "2026-04-11", 1, "damping-off");
    assert!(asked(&late).blocks, "one more, and it is not over");
}

#[test]
fn of_what_nothing_cures_no_count_clears_a_tray_and_a_look_does() {
    let mut book = with_loss("2026-02-25", 2, "mosaic virus");
    assert!(asked(&book).blocks, "counted on 10 April all the same");
    culled(&mut book, "2026-03-01", 1);
    clear(&mut book, "2026-04-10", "mosaic virus", 45);
    assert!(!asked(&book).blocks);
}

#[test]
fn a_cull_that_names_the_sickness_is_its_own_answer_and_one_of_a_sick_tray_opens_no_second() {
    let mut book = fitting();
    book.write("2026-03-01", "culled", json!({"tray":"cof-1","count":3,"why":"mosaic virus"}));
    let told = said(&book, "2026-03-02", En);
    assert!(told.contains("look at") && !told.contains("culled, at least"), "{told}");
    clear(&mut book, "2026-03-29", "mosaic virus", 45);
    assert!(!asked(&book).blocks);
    // Thrown out under another word of the same sort.
    let mut book = fitting();
    seen(&mut book, "2026-03-01", json!({"tray":"cof-1"}), "mosaic", Some(6.0));
    book.write("2026-03-02", "culled", json!({"tray":"cof-1","count":3,"why":"virus"}));
    clear(&mut book, "2026-03-30", "mosaic", 45);
    assert!(!asked(&book).blocks);
}

#[test]
fn most_of_a_tray_lost_to_nobody_knows_what_holds_it_until_the_cause_is_looked_for() {
    for cause in ["died", "unknown", "se murieron", "sin causa"] {
        let mut book = with_loss("2026-04-12", 30, cause);
        assert!(asked(&book).blocks, "{cause}");
        for (lang, look) in [(En, "look for the cause"), (Es, "busque la causa")] {
            assert!(said(&book, TODAY, lang).contains(look), "{cause}");
        }
        assert!(tasks_at(&book, TODAY, "cof-1").contains(&"sick".to_string()), "{cause}");
        seen(&mut book, "2026-04-13", json!({"tray":"cof-1"}), "none", Some(0.0));
        assert!(!asked(&book).blocks, "{cause}");
    }
    // In several steps within two weeks; not over months, and not where less than half is gone.
    let mut steps = fitting();
    for on in ["2026-04-06", "2026-04-12", "2026-04-14"] {
        lost(&mut steps, on, 10, "died");
    }
    assert!(asked(&steps).blocks);
    let mut slow = fitting();
    for on in ["2026-01-02", "2026-02-06", "2026-03-12"] {
        lost(&mut slow, on, 10, "died");
    }
    assert!(!asked(&slow).blocks);
    assert!(!asked(&with_loss("2026-04-12", 30, "goats")).blocks);
}

#[test]
fn as_many_are_asked_for_as_had_it_less_those_that_died_since_and_not_those_dead_before() {
    let mut book = fitting();
    lost(&mut book, "2026-04-12", 8, "damping-off");
    seen(&mut book, "2026-04-12", json!({"tray":"cof-1"}), "damping-off", Some(35.0));
    // 40 stood: 35 % are 14.
    assert!(said(&book, "2026-04-12", En).contains("at least 14 of its plants (0 so far)"));
    lost(&mut book, "2026-04-14", 6, "damping-off");
    assert!(
        said(&book, TODAY, En).contains("at least 8 of its plants (0 so far; 6 that died of it since are counted)")
    );
    assert!(said(&book, TODAY, Es).contains("al menos 8 de sus plantas (hasta hoy 0; se cuentan también 6"));
}

#[test]
fn from_a_tenth_on_a_tray_with_what_lives_in_its_soil_and_nothing_cures_goes_whole() {
    for what in ["nematodes", "nudos en la raíz", "bacterial wilt", "Fusarium", "crown gall"] {
        let mut book = fitting();
        seen(&mut book, "2026-03-01", json!({"tray":"cof-1"}), what, Some(10.0));
        assert!(said(&book, TODAY, En).contains("the whole tray with its soil and bags"), "{what}");
        assert!(said(&book, TODAY, Es).contains("toda la bandeja con su tierra y sus bolsas"), "{what}");
        culled(&mut book, "2026-03-02", 20);
        seen(&mut book, "2026-03-20", json!({"tray":"cof-1"}), what, Some(2.0));
        clear(&mut book, "2026-04-14", what, 28);
        assert!(asked(&book).blocks, "{what}: a smaller share later frees no soil");
        let mut few = fitting();
        seen(&mut few, "2026-03-01", json!({"tray":"cof-1"}), what, Some(4.0));
        culled(&mut few, "2026-03-02", 2);
        clear(&mut few, "2026-03-30", what, 46);
        assert!(!asked(&few).blocks, "{what}");
    }
}

#[test]
fn what_spreads_is_set_apart_and_perhaps_reported_in_the_reason_and_at_the_stop_alike() {
    let at_stop = |book: &Book, lang| {
        let picture = book.on(TODAY);
        let on = outplant::wording::round::RoundOn { day: picture.day, species: &picture.site.species };
        let stop = stops(book, TODAY).into_iter().find(|stop| stop.id == "sick cof-1").unwrap();
        outplant::wording::Wording::new(lang).round_reason(&stop.why, on)
    };
    for what in ["bacterial wilt", "nematodes", "mosaic virus", "late blight"] {
        let mut book = fitting();
        seen(&mut book, "2026-04-12", json!({"tray":"cof-1"}), what, Some(4.0));
        for (lang, apart, report) in
            [(En, "set the tray apart", "whether it must be reported"), (Es, "aparte la bandeja", "si hay que avisar")]
        {
            for told in [said(&book, TODAY, lang), at_stop(&book, lang)] {
                assert!(told.to_lowercase().contains(apart) && told.contains(report), "{what}: {told}");
            }
        }
    }
    for what in ["root rot", "stem borer", "hoja amarilla"] {
        let mut book = fitting();
        seen(&mut book, "2026-04-12", json!({"tray":"cof-1"}), what, Some(4.0));
        assert!(!at_stop(&book, En).contains("reported") && !said(&book, TODAY, En).contains("reported"), "{what}");
    }
}

#[test]
fn once_as_many_are_out_as_had_it_nobody_is_sent_to_count_every_other_day() {
    use outplant::reckon::round::RoundReason;
    let counted_as_sick = |book: &Book| {
        let mut all = stops(book, "2026-04-13").into_iter();
        all.any(|stop| stop.id == "count cof-1" && matches!(stop.why, RoundReason::Sick { .. }))
    };
    let mut book = fitting();
    seen(&mut book, "2026-04-11", json!({"tray":"cof-1"}), "mosaic", Some(6.0));
    assert!(counted_as_sick(&book));
    culled(&mut book, "2026-04-11", 3);
    assert!(!counted_as_sick(&book));
}

#[test]
fn a_look_that_came_too_early_is_named_and_a_rot_of_roots_is_set_apart_on_its_first_day() {
    let mut book = fitting();
    book.write("2026-04-01", "culled", json!({"tray":"cof-1","count":4,"why":"phytophthora"}));
    assert!(!said(&book, TODAY, En).contains("too early"));
    clear(&mut book, "2026-04-14", "phytophthora", 44);
    assert!(asked(&book).blocks, "it tells from the 15th on");
    for (lang, words) in [(En, "The look of 14 Apr 2026 was too early"), (Es, "El 14 abr 2026 era muy temprano")] {
        let told = said(&book, TODAY, lang);
        assert!(told.contains(words), "{told}");
    }
    clear(&mut book, TODAY, "phytophthora", 44);
    assert!(!asked(&book).blocks);
    let asks = |why: &str, on: &str| {
        let mut book = fitting();
        book.write("2026-04-14", "culled", json!({"tray":"cof-1","count":4,"why":why}));
        let picture = book.on(on);
        let at = outplant::wording::round::RoundOn { day: picture.day, species: &picture.site.species };
        let sick = stops(&book, on).into_iter().find(|stop| stop.id == "sick cof-1");
        sick.map(|stop| outplant::wording::Wording::new(En).round_reason(&stop.why, at))
    };
    for why in ["root rot", "phytophthora"] {
        let told = asks(why, "2026-04-14").unwrap_or_else(|| panic!("{why}"));
        assert!(told.contains("Set the tray apart, where no water runs from it"), "{told}");
        assert!(asks(why, "2026-04-24").is_none(), "{why}: then it waits for its look");
        assert!(asks(why, "2026-04-28").is_some(), "{why}");
    }
    assert!(asks("runts", "2026-04-14").is_none());
}

#[test]
fn the_dead_of_a_count_are_asked_about_as_those_of_a_loss_are() {
    let counted = |looks: &[(&str, u32, u32)]| {
        let mut book = fitting();
        for (on, standing, dead) in looks {
            book.write(on, "counted", json!({"tray":"cof-1","standing":standing,"dead":dead}));
        }
        book
    };
    // Of 48: a tenth and more, at once or in two weeks.
    for looks in
        [&[("2026-04-14", 36, 12)][..], &[("2026-04-12", 45, 3), ("2026-04-14", 42, 3)], &[("2026-04-14", 43, 5)]]
    {
        let book = counted(looks);
        assert!(asked(&book).blocks && said(&book, TODAY, En).contains("look for the cause"), "{looks:?}");
        assert!(!pair(&book.on(TODAY), "cof-1", "Upper 1").fits);
    }
    let with = |kind: &str, body: serde_json::Value| {
        let mut book = counted(&[("2026-04-14", 36, 12)]);
        book.write("2026-04-15", kind, body);
        book
    };
    assert!(!asked(&with("pest_seen", json!({"tray":"cof-1","what":"none","share_pct":0}))).blocks);
    // What is few, or only was not found, is no question.
    assert!(!asked(&counted(&[("2026-04-14", 44, 4)])).blocks);
    assert!(!asked(&counted(&[("2026-04-14", 36, 0)])).blocks, "12 were given away, and nobody wrote it");
    assert!(asked(&counted(&[("2026-04-14", 30, 0)])).blocks, "more than a third is missing");
    for (why, holds) in [("dead", true), ("muertas", true), ("too small", false)] {
        let mut book = fitting();
        book.write("2026-04-14", "culled", json!({"tray":"cof-1","count":12,"why":why}));
        assert_eq!(asked(&book).blocks, holds, "{why}");
    }
}

#[test]
fn a_wrong_count_that_was_put_right_holds_nothing() {
    for again in ["2026-04-13", "2026-04-14"] {
        let mut book = fitting();
        book.write("2026-04-13", "counted", json!({"tray":"cof-1","standing":5}));
        assert!(asked(&book).blocks);
        book.write(again, "counted", json!({"tray":"cof-1","standing":48}));
        assert!(!asked(&book).blocks, "{again} {}", said(&book, TODAY, En));
    }
}

#[test]
fn many_lost_to_rats_or_heat_ask_for_a_look_at_those_that_are_left() {
    let cared = |book: &Book| !asked(book).blocks && asked(book).warns;
    for cause in ["rats", "snails", "heat", "no water", "babosas", "falta de agua"] {
        let mut book = with_loss(TODAY, 16, cause);
        assert!(cared(&book), "{cause}");
        assert!(said(&book, TODAY, En).contains("look at those first"), "{cause}");
        assert!(said(&book, TODAY, Es).contains("mire primero esas"), "{cause}");
        assert!(!cared(&with_loss(TODAY, 9, cause)), "{cause}: fewer than a fifth");
        assert!(!cared(&with_loss("2026-04-01", 16, cause)), "{cause}: counted since");
        seen(&mut book, TODAY, json!({"tray":"cof-1"}), "none", Some(0.0));
        assert!(!cared(&book), "{cause}");
    }
    assert!(!cared(&with_loss(TODAY, 16, "stolen")), "who steals hurts no others");
}

#[test]
fn a_recount_that_finds_a_third_missing_is_asked_about_as_a_count_is() {
    let recounted = |standing: u32| {
        let mut book = fitting();
        book.write("2026-04-14", "stocktaken", json!({"tray":"cof-1","standing":standing}));
        asked(&book).blocks
    };
    assert_eq!((recounted(30), recounted(40)), (true, false));
}

#[test]
fn rats_that_were_seen_on_many_plants_of_a_tray_ask_for_a_look_at_the_others() {
    let stands = |what: &str, share: f64| {
        let mut book = fitting();
        seen(&mut book, "2026-04-12", json!({"tray":"cof-1"}), what, Some(share));
        let pest = asked(&book);
        (pest.blocks, pest.warns)
    };
    for what in ["rats", "ratones", "goats", "monkeys"] {
        assert_eq!((stands(what, 50.0), stands(what, 5.0)), ((false, true), (false, false)), "{what}");
    }
    let mut book = fitting();
    seen(&mut book, "2026-04-12", json!({"tray":"cof-1"}), "rats", Some(50.0));
    assert!(said(&book, TODAY, En).contains("rats, on 50 % of the plants"), "{}", said(&book, TODAY, En));
    assert!(said(&book, TODAY, Es).contains("en 50 % de las plantas"), "{}", said(&book, TODAY, Es));
    seen(&mut book, "2026-04-14", json!({"tray":"cof-1"}), "rats", Some(0.0));
    assert!(!asked(&book).warns);
}
