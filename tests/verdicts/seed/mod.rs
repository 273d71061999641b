//! Seed, sowing and what is to come, as a forester would tell it: one world for each rule, written by hand.

mod hands;

use outplant::base::{Day, LotCode, Range, SpeciesKey, TrayCode};
use outplant::nursery::species::Catalogue;
use outplant::reckon::forecast::{ForecastBasis, experiences};
use outplant::reckon::lots::{LotOutlook, NoRetest, lot_outlook};
use outplant::reckon::sowing::{MOST_SEEDS_A_PLANT, NoPlan, SowingPlan, Wanted, sowing_plan};
use outplant::science::emergence::{Looks, fit_emergence};
use outplant::science::sampling::{Differ, agreement};
use outplant::wording::{Lang, Wording};
use serde_json::{Value, json};

use crate::support::Book;
use crate::support::program::Home;
use crate::support::reference::{number, numbers, reference};

fn calc(home: &Home, topic: &str, given: &Value) -> Value {
    serde_json::from_str(&home.run_with(&["calc", topic], &given.to_string()).out).unwrap()
}

/// The curve of a sowing that is stopped early: tests/reference/germination_fit.json has it at several days, with what was up in
/// the end.
#[test]
fn what_is_up_stays_up_and_no_more_comes_than_was_sown() {
    let home = Home::default();
    let all = reference(include_str!("../../reference/germination_fit.json"));
    let mut held = Vec::new();
    for case in all["forecasts"].as_array().unwrap() {
        let (seen, seeds) = (number(case, "seen_so_far"), number(case, "n"));
        let told = calc(&home, "emergence", &json!({"edges":case["edges"],"counts":case["counts"],"seeds":case["n"]}));
        let ends = numbers(&told["forecast"], "final_ci95");
        let likely = number(&told["forecast"], "final");
        assert!(
            seen <= ends[0] && ends[0] <= likely.ceil() && likely.floor() <= ends[1] && ends[1] <= seeds,
            "{case}: {told}"
        );
        assert!((likely - number(case, "forecast_final_n_times_d")).abs() < 1e-3 * seeds, "{told}");
        // With no chance taken of more, a range that reaches nothing would be easy: these were looked at till the end. The barley is
        // left out, whose days without a look are written as days without emergence.
        let up = case["actual_total_at_last_day"].as_f64().unwrap();
        if case["dataset"] != "barley_T10" && seen > 0.6 * up {
            held.push(ends[0] <= up && up <= ends[1]);
        }
    }
    // Of few looks at 95 % one may miss.
    assert!(held.len() >= 4 && held.iter().filter(|held| !**held).count() <= 1, "{held:?}");
}

#[test]
fn of_a_sowing_that_has_stopped_coming_up_hardly_more_is_promised() {
    let looks = Looks::new(&[0.0, 5.0, 7.0, 9.0, 11.0, 30.0, 60.0], &[5, 20, 30, 10, 0, 0], 100).unwrap();
    let fit = fit_emergence(&looks);
    let ends = fit.in_the_end_ci95(&looks).unwrap();
    assert!(ends.low == 65.0 && ends.high <= 67.0, "{ends:?}");
    assert!((fit.in_the_end(&looks).unwrap() - 65.0).abs() < 0.5);
}

#[test]
fn two_replicates_of_25_cannot_tell_whether_they_agree() {
    let differ = |counts: &[u32], each| agreement(counts, each).unwrap().differ();
    for counts in [[22, 21], [18, 13], [25, 25], [0, 0]] {
        assert_eq!(differ(&counts, 25), Differ::Unknown, "{counts:?}");
    }
    // One dish dried out: that much shows with few seeds too.
    assert_eq!(differ(&[24, 8], 25), Differ::Apart);
    // Four of a hundred can agree, by the table.
    assert_eq!(differ(&[84, 79, 88, 81], 100), Differ::Agree);
    let home = Home::default();
    let said = home.done(&["calc", "replicates", "--replicates", "18,13", "--n-each", "25"]);
    assert!(said.contains("too few to tell"), "{said}");
    let said = home.done(&["--lang", "es", "calc", "replicates", "--replicates", "18,13", "--n-each", "25"]);
    assert!(said.contains("muy pocas"), "{said}");
}

#[test]
fn rain_of_three_days_is_our_own_rule_and_no_paper_on_the_onset_of_rains() {
    for (language, ours) in [("en", "ours"), ("es", "nuestro")] {
        let text = std::fs::read_to_string(format!("src/wording/{language}/verdict.ftl")).unwrap();
        let line = text.lines().find(|line| line.starts_with("source_rain =")).unwrap();
        // The publication may say where the amount is from, but the rule is ours first.
        assert!(line.contains(&format!("= {ours}")), "{line}");
    }
}

#[test]
fn the_field_trial_of_mahogany_is_of_2002_and_speaks_of_5_millimetres() {
    let species = Catalogue::built_in();
    let mahogany = species.get(&species.find("Swietenia macrophylla").unwrap()).unwrap();
    let source = &mahogany.collar_floor_mm.as_ref().unwrap().source;
    assert!(source.contains("5 mm") && source.contains("2002") && source.contains("168:125"), "{source}");
    assert!(mahogany.figures().iter().all(|(_, _, source, _)| !source.contains("Mexal 2000")));
}

fn lot_of(species: &str, collected: &str, kept: &str, seeds: u32) -> Book {
    let mut book = Book::default();
    let lot =
        json!({"lot":"l-1","species":species,"source":"by the river","collected":collected,"seeds":seeds,"kept":kept});
    book.write(collected, "lot_received", lot);
    book
}

fn picture_day(on: &str) -> Day {
    on.parse().unwrap()
}

/// What is alive of the lot on a day: low, likely, high.
fn alive(book: &Book, on: &str) -> Range {
    outlook_of(book, on).viability.unwrap().today
}

fn outlook_of(book: &Book, on: &str) -> LotOutlook {
    let picture = book.on(on);
    let lot = &picture.lots[&LotCode::new("l-1").unwrap()];
    let profile = lot.species.as_ref().and_then(|key| picture.site.profile(key));
    lot_outlook(lot, profile.map(|profile| &**profile), picture.day)
}

fn plan(book: &Book, on: &str, plants: u32) -> Result<SowingPlan, NoPlan> {
    let picture = book.on(on);
    let lot = &picture.lots[&LotCode::new("l-1").unwrap()];
    sowing_plan(&picture, lot.species.as_ref().unwrap(), Some(lot), Wanted { plants, sure: 0.8 })
}

#[test]
fn cocoa_in_pods_for_three_days_is_alive() {
    let book = lot_of("Theobroma cacao", "2026-05-01", "in_pod", 400);
    let told = alive(&book, "2026-05-04");
    assert!(told.likely > 0.85 && told.low > 0.6 && told.high <= 1.0, "{told:?}");
    // The week of the handbook is half, two weeks is the end.
    assert!((0.4..0.55).contains(&alive(&book, "2026-05-08").likely));
    assert!(alive(&book, "2026-05-15").likely < 0.01);
    // And is sown with no more than a usual margin.
    let seeds = plan(&book, "2026-05-04", 100).unwrap().seeds;
    assert!((120..260).contains(&seeds), "{seeds}");
}

#[test]
fn mahogany_dried_and_closed_lives_through_two_months() {
    let book = lot_of("Swietenia macrophylla", "2026-01-10", "dry_sealed", 400);
    let (fresh, later) = (alive(&book, "2026-01-10").likely, alive(&book, "2026-03-12").likely);
    assert!(later > 0.95 * fresh, "{later} of {fresh}");
    assert!(plan(&book, "2026-03-12", 100).is_ok());
}

#[test]
fn in_a_cold_dry_store_cordia_and_cedrela_live_for_years() {
    for species in ["Cordia alliodora", "Cedrela odorata"] {
        let book = lot_of(species, "2024-03-01", "cold", 2000);
        let told = outlook_of(&book, "2026-03-01");
        assert!(told.life.as_ref().unwrap().days > 700, "{species}");
        let today = told.viability.unwrap();
        assert!(today.today.likely > 0.7 * today.start.share.likely, "{species} {today:?}");
    }
    // In the open shed two years are too long for both.
    assert!(alive(&lot_of("Cordia alliodora", "2024-03-01", "dry_open", 2000), "2026-03-01").likely < 0.01);
}

#[test]
fn nobody_knows_how_long_coffee_lives_in_the_cold_and_no_number_is_told() {
    let book = lot_of("Coffea arabica", "2025-03-01", "cold", 2000);
    assert!(outlook_of(&book, "2026-03-01").viability.is_err());
    let Err(told @ NoPlan::LifeUnknown { plants: 100, fresh }) = plan(&book, "2026-03-01", 100) else { panic!() };
    assert!(fresh > 100);
    for (lang, test) in
        [(Lang::En, "Test it, or write how it was kept"), (Lang::Es, "Pruébela, o anote cómo se guardó")]
    {
        assert!(Wording::new(lang).sowing_no_plan(&told).contains(test));
    }
}

#[test]
fn of_a_lot_that_nobody_knows_how_it_was_kept_the_worst_way_counts_and_the_best_one_is_told() {
    // Cacao: two days dried, 32 washed and moist.
    let cacao = lot_of("Theobroma cacao", "2026-05-01", "unknown", 400);
    let life = outlook_of(&cacao, "2026-05-02").life.unwrap();
    assert_eq!((life.days, life.longest_days), (2, 32));
    let after_five_days = alive(&cacao, "2026-05-06");
    assert!(after_five_days.likely < 0.01 && after_five_days.high > 0.85, "{after_five_days:?}");
    let told = outlook_of(&cacao, "2026-05-06");
    let said = Wording::new(Lang::En).lot_verdict(&told, picture_day("2026-05-06")).1;
    assert!(said.contains("Cut ten open"), "{said}");
    assert!(matches!(plan(&cacao, "2026-05-06", 50), Err(NoPlan::Dead | NoPlan::LifeUnknown { .. })));
    // Litchi, whose profile names no days: seed that dies when dried lives days.
    let litchi = lot_of("Litchi chinensis", "2026-05-01", "washed_moist", 400);
    assert_eq!(outlook_of(&litchi, "2026-05-02").life.unwrap().days, 7);
    assert!(matches!(plan(&litchi, "2026-06-20", 50), Err(NoPlan::Dead | NoPlan::TooMany(_))));
}

#[test]
fn cacao_seed_from_the_fridge_is_dead_and_told_so() {
    let book = lot_of("Theobroma cacao", "2026-05-01", "cold", 400);
    let told = outlook_of(&book, "2026-05-02");
    assert_eq!(told.life.as_ref().unwrap().killed_below_c, Some(10.0));
    assert_eq!(told.viability.as_ref().unwrap().today.high, 0.0);
    assert!(matches!(plan(&book, "2026-05-02", 50), Err(NoPlan::Dead)));
    for (lang, dead) in
        [(Lang::En, "dead: cold below 10 °C kills it"), (Lang::Es, "muerta: el frío bajo 10 °C la mata")]
    {
        let (good, said) = Wording::new(lang).lot_verdict(&told, picture_day("2026-05-02"));
        assert!(!good && said.contains(dead), "{said}");
    }
    // In pods, in a room of 5 degrees, too; at 17 degrees they keep.
    let stored = |celsius: f64| {
        let mut book = lot_of("Theobroma cacao", "2026-05-01", "in_pod", 400);
        book.write("2026-05-01", "lot_kept", json!({"lot":"l-1","kept":"in_pod","store_c":celsius}));
        outlook_of(&book, "2026-05-02").life.unwrap().killed_below_c
    };
    assert_eq!((stored(5.0), stored(17.0)), (Some(10.0), None));
    // A test that found it alive knows better.
    let mut tested = book.clone();
    tested.write("2026-05-20", "lot_tested", json!({"lot":"l-1","replicates":[{"seeds":25,"germinated":9}],"days":14}));
    assert_eq!(outlook_of(&tested, "2026-05-20").life.ok().and_then(|life| life.killed_below_c), None);
}

#[test]
fn dead_seed_that_is_sown_all_the_same_is_written_with_a_caution() {
    let home = Home::default().begun();
    let came = |lot: &str, collected: &str, kept: &str| {
        let (lot, collected, kept) = (format!("lot={lot}"), format!("collected={collected}"), format!("kept={kept}"));
        let rest = ["species=Theobroma cacao", "source=old trees", "seeds=90"];
        let told = home.run(&[&["write", "lot_received", &lot, &collected, &kept][..], &rest].concat());
        assert_eq!(told.code, 0, "{}", told.err);
    };
    came("cac-cold", "2026-04-10", "cold");
    came("cac-old", "2026-02-01", "in_pod");
    came("cac-good", "2026-04-12", "in_pod");
    let sown = |lang: &str, tray: &str, lot: &str| {
        let (tray, lot) = (format!("tray={tray}"), format!("lot={lot}"));
        let ended = home.run(&["write", "sown", &tray, &lot, "seeds=40", "container=bag_1l", "--lang", lang, "--yes"]);
        assert_eq!(ended.code, 0, "{}", ended.err);
        ended.out + &ended.err
    };
    let cold = sown("en", "cac-1", "cac-cold");
    assert!(cold.contains("take care: the seed of cac-cold is dead: cold below 10 °C kills it"), "{cold}");
    let old = sown("es", "cac-2", "cac-old");
    assert!(old.contains("cuidado: la semilla de cac-old está muerta por lo que se sabe de su vida"), "{old}");
    let good = sown("en", "cac-3", "cac-good");
    assert!(!good.contains("take care"), "{good}");
    let written = home.done(&["export"]);
    assert_eq!(written.matches("\"kind\":\"sown\"").count(), 3, "it is told, and written all the same");
}

#[test]
fn seed_that_lives_shorter_than_a_test_takes_is_sown_and_not_tested() {
    // Half of cacao is up after 14 days; in pods it lives 7.
    let book = lot_of("Theobroma cacao", "2026-05-01", "in_pod", 400);
    let told = outlook_of(&book, "2026-05-02");
    assert!(matches!(told.retest, Err(NoRetest::LivesTooShort { takes_days: 14 })), "{:?}", told.retest);
    assert_eq!(plan(&book, "2026-05-02", 100).unwrap().seeds_if_tested, None);
    let en = Wording::new(Lang::En);
    assert!(en.lot_verdict(&told, picture_day("2026-05-02")).1.starts_with("sow it at once"));
    let Err(late) = plan(&book, "2026-05-09", 100) else { panic!() };
    let said = en.sowing_no_plan(&late);
    assert!(said.contains("Cut ten open") && !said.contains("Test it"), "{said}");
    // Seed that keeps for years is tested.
    assert!(outlook_of(&lot_of("Cedrela odorata", "2026-05-01", "dry_sealed", 400), "2026-05-02").retest.is_ok());
}

#[test]
fn calc_tells_no_number_of_more_than_five_seeds_a_plant() {
    let home = Home::default();
    let none = ["calc", "sowing", "--wanted", "100", "--sown", "10", "--germinated", "0"];
    for (lang, advice) in [("en", "Test it or get fresh seed"), ("es", "Pruébela o consiga semilla fresca")] {
        let mut words = vec!["--lang", lang];
        words.extend(none);
        let said = home.done(&words);
        assert!(said.split_whitespace().collect::<Vec<_>>().join(" ").contains(advice), "{said}");
    }
    let told = home.json(&none);
    assert_eq!(told["seeds"], Value::Null, "{told}");
    // After a whole test only fresh seed helps; a handful for one plant is told.
    let tested = home.done(&["calc", "sowing", "--wanted", "100", "--sown", "60", "--germinated", "0"]);
    assert!(tested.contains("Get fresh seed"), "{tested}");
    let one = home.json(&["calc", "sowing", "--wanted", "1", "--germination", "42", "--confidence", "99"]);
    assert_eq!(one["seeds"], json!(9));
}

#[test]
fn grams_and_seeds_are_told_no_finer_than_they_are_known() {
    let book = lot_of("Theobroma cacao", "2026-05-01", "in_pod", 400);
    let plan = plan(&book, "2026-05-02", 100).unwrap();
    let en = Wording::new(Lang::En);
    // 366 to 730 seeds in a kilogram.
    let weight = en.sowing_weight(plan.mass_g);
    assert!(weight.starts_with("from ") && weight.contains("weigh a hundred"), "{weight}");
    let said = en.sowing_said(&plan);
    let seeds: u32 = said.split(' ').next().unwrap().parse().unwrap();
    assert!(seeds >= plan.seeds && seeds.is_multiple_of(10) && seeds - plan.seeds < 10, "{said} of {}", plan.seeds);
}

#[test]
fn seed_that_dies_when_dried_does_not_live_its_days_on_a_drying_floor() {
    let moist = alive(&lot_of("Theobroma cacao", "2026-05-01", "washed_moist", 400), "2026-05-05");
    let dried = alive(&lot_of("Theobroma cacao", "2026-05-01", "dry_open", 400), "2026-05-05");
    assert!(moist.likely > 0.85 && dried.likely < 0.01, "{moist:?} {dried:?}");
}

#[test]
fn of_seed_past_its_life_no_number_is_told_but_test_it_or_get_fresh_seed() {
    let home = Home::default().begun();
    home.write(
        "lot_received",
        &[
            "lot=cac-L1",
            "species=Theobroma cacao",
            "source=spring",
            "collected=2026-04-03",
            "seeds=5000",
            "kept=in_pod",
        ],
    );
    for (language, advice) in [("en", "fresh seed"), ("es", "semilla fresca")] {
        let said = home.done(&["--lang", language, "why", "lot", "cac-L1", "--plants", "100"]);
        assert!(said.contains(advice), "{said}");
    }
    let told = home.json(&["why", "lot", "cac-L1", "--plants", "100"])["lot"].clone();
    assert_eq!((&told["sowing"], &told["needed"]), (&Value::Null, &json!(100)), "{told:#}");
    // The limit itself: five seeds for each plant.
    let book = lot_of("Theobroma cacao", "2026-05-01", "in_pod", 400);
    for on in ["2026-05-02", "2026-05-06", "2026-05-08", "2026-05-09", "2026-05-10", "2026-05-12"] {
        match plan(&book, on, 100) {
            Ok(plan) => assert!(plan.seeds <= MOST_SEEDS_A_PLANT * 100, "{on}: {}", plan.seeds),
            Err(NoPlan::TooMany(_) | NoPlan::Dead) => {}
            Err(other) => panic!("{other:?}"),
        }
    }
    assert!(plan(&book, "2026-05-02", 100).is_ok());
    assert!(matches!(plan(&book, "2026-05-12", 100), Err(NoPlan::TooMany(_) | NoPlan::Dead)));
}

#[test]
fn what_stands_is_taken_off_before_it_is_said_how_many_to_sow() {
    let home = Home::default().begun();
    home.write(
        "lot_received",
        &["lot=cof-L1", "species=COA", "source=old trees", "collected=2026-04-01", "seeds=2000", "kept=in_parchment"],
    );
    home.write("container_set", &["container=bag", "volume_ml=1000", "depth_cm=23", "cells=1"]);
    home.write(
        "plants_received",
        &["tray=cof-1", "species=COA", "count=60", "container=bag", "from=bought", "form=bag", "age_days=150"],
    );
    let told = home.json(&["why", "lot", "cof-L1", "--plants", "126"])["lot"].clone();
    let (needed, still) = (told["needed"].as_u64().unwrap(), told["still_needed"].as_u64().unwrap());
    let coming = told["expected_from_trays"]["likely"].as_f64().unwrap();
    assert!(coming > 30.0 && coming < 60.0 && needed == 126, "{told:#}");
    assert_eq!(still, 126 - coming.floor() as u64);
    assert_eq!(told["sowing"]["plants"].as_u64(), Some(still));
    assert!(told["sowing"]["seeds"].as_u64().unwrap() < told["sowing_gross"]["seeds"].as_u64().unwrap());
    let said = home.done(&["why", "lot", "cof-L1", "--plants", "126"]);
    let (net, gross) = (said.find("126 needed").unwrap(), said.find("if nothing stood").unwrap());
    assert!(net < gross, "{said}");
    // Where enough stands nothing is sown.
    let said = home.done(&["why", "lot", "cof-L1", "--plants", "20"]);
    assert!(said.contains("Nothing to sow"), "{said}");
    assert!(home.done(&["--lang", "es", "why", "lot", "cof-L1", "--plants", "20"]).contains("No hay que sembrar"));
}

#[test]
fn seven_tenths_is_asked_about_and_nothing_is_written() {
    let home = Home::default().begun();
    for wrong in [
        &["calc", "sowing", "--wanted", "100", "--germination", "0.7"][..],
        &["calc", "sowing", "--wanted", "100", "--germination", "70", "--survival", "0.7"],
        &["why", "species", "coffee", "--plants", "10", "--sure", "0.7"],
        &[
            "write",
            "lot_received",
            "lot=cof-L1",
            "species=COA",
            "source=old trees",
            "collected=2026-04-01",
            "seeds=90",
            "kept=cold",
            "initial_pct=0.7",
        ],
        &["write", "species_set", "species=COA", "profile={\"germination_fresh_pct\":0.7}"],
    ] {
        let said = home.refused(wrong);
        assert!(said.contains("70 %?"), "{wrong:?}: {said}");
    }
    assert!(!home.done(&["export"]).contains("cof-L1"));
    let spanish = home.refused(&["--lang", "es", "calc", "sowing", "--wanted", "100", "--germination", "0.7"]);
    assert!(spanish.contains("¿es 70 %?"), "{spanish}");
    assert_eq!(home.run(&["calc", "sowing", "--wanted", "100", "--germination", "70"]).code, 0);
}

#[test]
fn damping_off_does_not_thin_hardened_stock() {
    // Many seedlings that fell over in their first weeks, and old plants of elsewhere of which none died.
    let mut book = Book::default();
    for number in 1..=4 {
        let tray = format!("cof-{number}");
        book.write(
            "2025-01-01",
            "sown",
            json!({"tray":tray,"lot":"unknown","species":"COA","seeds":400,"container":"bed","cells":400}),
        );
        book.write("2025-03-10", "counted", json!({"tray":tray,"standing":380}));
        book.write("2025-03-20", "lost", json!({"tray":tray,"count":150,"cause":"damping-off"}));
        book.write("2025-03-20", "counted", json!({"tray":tray,"standing":230}));
        book.write("2026-01-10", "counted", json!({"tray":tray,"standing":230}));
    }
    book.write(
        "2025-11-20",
        "sown",
        json!({"tray":"cof-9","lot":"unknown","species":"COA","seeds":100,"container":"bed","cells":100}),
    );
    book.write("2026-02-01", "counted", json!({"tray":"cof-9","standing":90}));
    let picture = book.on("2026-03-10");
    let loss = picture.weekly_loss;
    assert!(loss.young > 4.0 * loss.older && loss.older < 0.005, "{loss:?}");
    let low_share = |tray: &str| {
        let tray = &picture.trays[&TrayCode::new(tray).unwrap()];
        tray.standing_range.low / tray.standing_range.likely
    };
    // Five weeks after a count in its first weeks, and eight weeks after one of old plants.
    assert!(low_share("cof-9") < 0.93 && low_share("cof-1") > 0.95, "{} {}", low_share("cof-9"), low_share("cof-1"));
}

#[test]
fn only_a_sample_teaches_how_many_days_a_tray_needs() {
    let mut book = Book::default();
    let mut raise = |tray: &str, passed: &str| {
        book.write(
            "2025-01-01",
            "sown",
            json!({"tray":tray,"lot":"unknown","species":"COA","seeds":40,"container":"bag","cells":40}),
        );
        book.write("2025-03-10", "counted", json!({"tray":tray,"standing":30}));
        let plants: Vec<Value> = (0..10).map(|_| json!({"height_cm":28.0,"collar_mm":5.0})).collect();
        book.write(passed, "measured", json!({"tray":tray,"plants":plants}));
    };
    raise("cof-1", "2025-08-29");
    raise("cof-2", "2025-09-28");
    let known =
        experiences(&book.on("2025-10-01"), ForecastBasis::OwnRecords)[&SpeciesKey::new("COA")].days_to_plantable;
    assert_eq!((known.trays, known.between), (2, Some((240.0, 270.0))));
    // A tray that went to a bed when it rained teaches nothing of the days it needed.
    let mut late = Book::default();
    late.write("2025-01-01", "bed_set", json!({"bed":"Ridge 1","field":"Upper","length_m":20,"width_m":6,"plan":[{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]}));
    late.write(
        "2025-01-01",
        "sown",
        json!({"tray":"cof-3","lot":"unknown","species":"COA","seeds":40,"container":"bag","cells":40}),
    );
    late.write("2025-03-10", "counted", json!({"tray":"cof-3","standing":30}));
    late.write("2026-05-10", "outplanted", json!({"tray":"cof-3","bed":"Ridge 1","count":10}));
    let known =
        experiences(&late.on("2026-05-11"), ForecastBasis::OwnRecords)[&SpeciesKey::new("COA")].days_to_plantable;
    assert_eq!((known.trays, known.here), (0, None));
}

#[test]
fn a_loss_nobody_counted_is_told_in_words_and_rounded() {
    let en = Wording::new(Lang::En);
    let es = Wording::new(Lang::Es);
    for (plants, english, spanish) in [
        (1.0, "one or two", "una o dos"),
        (3.0, "a few", "unas pocas"),
        (10.0, "5 to 15", "de 5 a 15"),
        (147.3, "70 to 200", "de 70 a 200"),
        (960.0, "500 to 1500", "de 500 a 1500"),
    ] {
        assert_eq!(
            (en.rough_number(plants, None).as_str(), es.rough_number(plants, None).as_str()),
            (english, spanish),
            "{plants}"
        );
    }
}

#[test]
fn a_rough_number_is_never_above_what_there_is() {
    let en = Wording::new(Lang::En);
    let es = Wording::new(Lang::Es);
    for (plants, most, english, spanish) in [
        (6.0, 6.0, "3 to 6", "de 3 a 6"),
        (13.0, 13.0, "7 to 13", "de 7 a 13"),
        (58.0, 58.0, "30 to 58", "de 30 a 58"),
        (90.0, 85.0, "45 to 85", "de 45 a 85"),
        (90.0, 40.0, "up to 40", "hasta 40"),
        (3.0, 2.0, "one or two", "una o dos"),
        (1.0, 1.0, "1", "1"),
        (10.0, 500.0, "5 to 15", "de 5 a 15"),
    ] {
        let said = (en.rough_number(plants, Some(most)), es.rough_number(plants, Some(most)));
        assert_eq!((said.0.as_str(), said.1.as_str()), (english, spanish), "{plants} of {most}");
    }
}

#[test]
fn a_test_of_seed_that_no_bed_waits_for_has_no_plants_hanging_on_it() {
    use outplant::reckon::round::{Stop, Task, round};
    let stake = |places: u32| {
        let mut book = crate::support::small_nursery();
        crate::support::ready_coffee(&mut book, "cof-1");
        let plan = json!([{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]);
        let length = places / 3 * 2;
        book.write(
            "2025-01-01",
            "bed_set",
            json!({"bed":"Upper 1","field":"Upper","length_m":length,"width_m":6,"plan":plan}),
        );
        let seed =
            json!({"lot":"cof-L9","species":"COA","source":"row","collected":"2026-04-01","seeds":500,"kept":"cold"});
        book.write("2026-04-01", "lot_received", seed);
        let picture = book.on("2026-08-01");
        let told = round(&picture);
        let all: Vec<Stop> = told.stops.into_iter().chain(told.can_wait).collect();
        let stop = all.into_iter().find(|stop| stop.task == Task::TestLot && stop.id.ends_with("cof-L9"));
        stop.map(|stop| stop.at_stake.plants)
    };
    // 48 stand: a bed of 12 waits for no seed, one of 120 does.
    assert_eq!(stake(12), Some(0.0));
    assert!(stake(120).unwrap() > 1.0);
}

/// What the round asks of the seed store on a day.
fn of_the_store(book: &Book, on: &str) -> Vec<(outplant::reckon::round::Task, String)> {
    let picture = book.on(on);
    let round = outplant::reckon::round::round(&picture);
    let at = outplant::wording::round::RoundOn { day: picture.day, species: &picture.site.species };
    let stops = round.stops.iter().chain(&round.can_wait).filter(|stop| stop.lot().is_some());
    stops.map(|stop| (stop.task, Wording::new(Lang::En).round_reason(&stop.why, at))).collect()
}

#[test]
fn cacao_seed_lives_as_long_as_was_read_of_it() {
    // 80 to 100 % with its mucilage for two days, washed for 21 (Journal of Botany 2017, 1938359).
    for (kept, on) in [("mucilage_on", "2026-05-03"), ("washed_moist", "2026-05-22")] {
        let likely = alive(&lot_of("Theobroma cacao", "2026-05-01", kept, 400), on).likely;
        assert!((0.80..=1.0).contains(&likely), "{kept}: {likely}");
    }
}

#[test]
fn seed_past_its_life_is_cut_open_and_dead_seed_thrown_out() {
    use outplant::reckon::round::Task;
    let mut book = lot_of("Theobroma cacao", "2026-05-01", "in_pod", 400);
    let asked = |book: &Book, on: &str| of_the_store(book, on).pop();
    let (task, said) = asked(&book, "2026-05-10").unwrap();
    assert!(task == Task::SowLot && said.contains("past its stated life since 8 May: cut ten open"), "{said}");
    // Seven days in pods: dead after twice that, but for the slow ones.
    let (task, said) = asked(&book, "2026-05-25").unwrap();
    assert!(task == Task::ThrowOutLot && said.contains("dead by all that is known"), "{said}");
    book.write("2026-05-25", "lot_counted", json!({"lot":"l-1","seeds":0}));
    assert_eq!(asked(&book, "2026-05-26"), None);
    let cold = lot_of("Theobroma cacao", "2026-05-01", "cold", 400);
    let (task, said) = asked(&cold, "2026-05-02").unwrap();
    assert!(task == Task::ThrowOutLot && said.contains("cold below 10 °C kills it"), "{said}");
}

#[test]
fn who_sows_dead_seed_is_asked_before_it_is_written_and_told_of_seed_past_its_life() {
    let home = Home { today: "2026-05-20".into(), ..Home::default() }.begun();
    for (lot, species, collected) in [("cac-L1", "cacao", "2026-04-20"), ("cac-L2", "cacao", "2026-05-11")] {
        let pairs = [format!("lot={lot}"), format!("species={species}"), format!("collected={collected}")];
        let mut words: Vec<&str> = pairs.iter().map(String::as_str).collect();
        words.extend(["source=farm", "seeds=90", "kept=in_pod"]);
        home.write("lot_received", &words);
    }
    let tried = |tray: &str, lot: &str| {
        let pairs = [format!("tray={tray}"), format!("lot={lot}")];
        home.run(&["write", "sown", &pairs[0], &pairs[1], "seeds=20", "container=bag", "--dry-run"])
    };
    let dead = tried("cac-1", "cac-L1");
    assert!((dead.out + &dead.err).contains("dead by all that is known of its life"));
    let past = tried("cac-2", "cac-L2");
    assert!((past.out + &past.err).contains("past its stated life"));
    // A sheet of lines is not written without a yes.
    let sheet = home.with("sheet.txt", "cac-1 sown 20 lot cac-L1 in bag\n");
    let ended = home.run(&["write", "--batch", sheet.to_str().unwrap()]);
    assert!(ended.code != 0, "{}{}", ended.out, ended.err);
}

#[test]
fn seeds_of_a_weight_are_told_as_about_so_many() {
    let mut book = Book::default();
    let lot = json!({"lot":"l-1","species":"COA","source":"by the river","collected":"2026-01-01","mass_g":71,
        "kept":"in_parchment"});
    book.write("2026-01-01", "lot_received", lot);
    // 71 g at 2,500 to 4,000 a kilogram: 230.75.
    let picture = book.on("2026-02-20");
    assert_eq!(picture.lots[&LotCode::new("l-1").unwrap()].seeds_left, Some(231));
    let said = of_the_store(&book, "2026-03-25");
    assert!(said.iter().any(|(_, said)| said.contains("about 230 seeds")), "{said:?}");
}

#[test]
fn of_seed_in_the_open_air_it_is_said_that_the_constants_are_for_a_closed_vessel() {
    let home = Home::default().begun();
    let lot = ["lot=mai-1", "species=maize", "source=market", "seeds=500", "kept=dry_open", "collected=2026-03-01"];
    home.write("lot_received", &[&lot[..], &["moisture_pct=10", "store_c=24"]].concat());
    let said = home.done(&["why", "mai-1", "--all"]).split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(said.contains("in the open air it takes up water again: test it"), "{said}");
    assert!(!said.contains("is not written"), "{said}");
}
