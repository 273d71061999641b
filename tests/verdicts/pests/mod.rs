//! A pest that would be carried into the field is not offered until a later look settles it.

mod beside;
mod brought_along;
mod into_bed;
mod leaves;
mod losses;
mod out_of_bed;
mod signs;
mod still_missing;
mod together;

use crate::support::{Book, criterion, fitting, pair, tray};
use outplant::reckon::picture::{Criterion, Rule};
use serde_json::{Value, json};

const TODAY: &str = "2026-04-15";

/// The ready coffee tray with such pests seen on it.
fn with(pests: &[(&str, &str, Option<f64>)]) -> Book {
    let mut book = fitting();
    for (on, what, share) in pests {
        seen(&mut book, on, json!({"tray":"cof-1"}), what, *share);
    }
    book
}

fn seen(book: &mut Book, on: &str, of: Value, what: &str, share: Option<f64>) {
    let mut body = of;
    body["what"] = json!(what);
    if let Some(share) = share {
        body["share_pct"] = json!(share);
    }
    book.write(on, "pest_seen", body);
}

fn asked(book: &Book) -> Criterion {
    criterion(&tray(&book.on(TODAY), "cof-1").criteria, Rule::Pest).clone()
}

/// Whether it blocks and whether it warns.
fn stands(pests: &[(&str, &str, Option<f64>)]) -> (bool, bool) {
    let pest = asked(&with(pests));
    (pest.blocks, pest.warns)
}

#[test]
fn a_pest_on_one_plant_in_ten_or_more_or_on_nobody_knows_how_many_holds_back_and_on_fewer_asks_for_care() {
    assert_eq!(stands(&[]), (false, false));
    assert_eq!(stands(&[("2026-04-01", "aphids", Some(60.0))]), (true, false));
    assert_eq!(stands(&[("2026-04-01", "aphids", Some(10.0))]), (true, false));
    assert_eq!(stands(&[("2026-04-01", "aphids", Some(9.0))]), (false, true));
    assert_eq!(stands(&[("2026-04-01", "aphids", None)]), (true, false), "nobody counted on how many");
    let book = with(&[("2026-04-01", "aphids", Some(60.0))]);
    assert!(!pair(&book.on(TODAY), "cof-1", "Upper 1").fits);
}

#[test]
fn what_lives_in_soil_and_roots_holds_back_whatever_its_share() {
    for what in ["nematodes", "termites", "damping-off", "mealybug on the roots", "mal del talluelo"] {
        for share in [None, Some(1.0)] {
            assert_eq!(stands(&[("2026-03-01", what, share)]), (true, false), "{what} {share:?}");
        }
    }
}

#[test]
fn a_treatment_alone_settles_no_pest_and_a_clear_look_does() {
    let mut book = with(&[("2026-04-01", "aphids on the tips", Some(60.0))]);
    book.write("2026-04-02", "treated", json!({"tray":"cof-1","with":"soap","safe_after_days":1}));
    assert!(asked(&book).blocks);
    seen(&mut book, "2026-04-05", json!({"tray":"cof-1"}), "mites", Some(0.0));
    assert!(asked(&book).blocks, "none of another pest says nothing of this one");
    seen(&mut book, "2026-04-06", json!({"tray":"cof-1"}), "aphids", Some(4.0));
    assert_eq!((asked(&book).blocks, asked(&book).warns), (false, true));
    seen(&mut book, "2026-04-08", json!({"tray":"cof-1"}), "aphids", Some(0.0));
    assert_eq!((asked(&book).met(), pair(&book.on(TODAY), "cof-1", "Upper 1").fits), (Some(true), true));
}

#[test]
fn a_look_that_finds_nothing_settles_all_and_one_that_counts_nothing_settles_none() {
    let two = [("2026-04-01", "aphids", Some(60.0)), ("2026-04-02", "root rot", None)];
    assert!(stands(&[two[0], two[1], ("2026-04-08", "aphids", Some(0.0))]).0, "the root rot is still there");
    assert!(stands(&[two[0], two[1], ("2026-04-08", "nothing", Some(0.0))]).0, "a root rot does not go by itself");
    let mites = ("2026-04-02", "mites", Some(30.0));
    assert_eq!(stands(&[two[0], mites, ("2026-04-08", "nothing", Some(0.0))]), (false, false));
    assert!(stands(&[two[0], ("2026-04-08", "aphids", None)]).0, "seen again, on nobody knows how many");
}

#[test]
fn a_pest_comes_along_when_plants_are_moved_on_and_from_the_place_they_stood_at() {
    let mut book = with(&[("2026-03-01", "nematodes", None)]);
    let on = json!({"from":"cof-1","to":"cof-9","count":40,"how":"potted_on","container":"bag","place":"Half shade"});
    book.write("2026-03-02", "moved_on", on);
    assert!(criterion(&tray(&book.on(TODAY), "cof-9").criteria, Rule::Pest).blocks);
    let mut at_place = fitting();
    seen(&mut at_place, "2026-01-01", json!({"place":"Half shade"}), "aphids", Some(50.0));
    assert!(!asked(&at_place).blocks, "it stood elsewhere then");
    seen(&mut at_place, "2026-04-01", json!({"place":"Half shade"}), "aphids", Some(50.0));
    assert!(asked(&at_place).blocks);
    seen(&mut at_place, "2026-04-03", json!({"tray":"cof-1"}), "aphids", Some(0.0));
    assert!(!asked(&at_place).blocks, "this tray was looked at since");
}

#[test]
fn a_pest_seen_in_a_bed_asks_for_care_there() {
    let mut book = fitting();
    seen(&mut book, "2026-04-01", json!({"bed":"Upper 1"}), "leaf cutters", Some(5.0));
    let picture = book.on(TODAY);
    let offered = pair(&picture, "cof-1", "Upper 1");
    let of_bed = offered.criteria.iter().find(|criterion| criterion.rule() == Rule::Pest).unwrap();
    assert!(offered.fits && of_bed.warns);
    seen(&mut book, "2026-04-10", json!({"bed":"Upper 1"}), "leaf cutters", Some(0.0));
    assert!(
        pair(&book.on(TODAY), "cof-1", "Upper 1").criteria.iter().all(|one| one.rule() != Rule::Pest || !one.warns)
    );
}

#[test]
fn a_sickness_of_which_one_plant_is_enough_holds_the_tray_at_any_share() {
    for what in ["witches' broom", "swollen shoot virus", "frosty pod rot", "greening HLB", "escoba de bruja"] {
        for share in [None, Some(1.0)] {
            assert_eq!(stands(&[("2026-04-01", what, share)]), (true, false), "{what} {share:?}");
        }
    }
}

/// A look at so many plants, their roots too, that finds none.
fn clear(book: &mut Book, on: &str, what: &str, plants: u32) {
    let body = json!({"tray":"cof-1","what":what,"share_pct":0,"plants_seen":plants,"roots_seen":true});
    book.write(on, "pest_seen", body);
}

fn culled(book: &mut Book, on: &str, count: u32) {
    book.write(on, "culled", json!({"tray":"cof-1","count":count,"why":"sick"}));
}

/// What is said of the pest of cof-1 on a day.
fn said(book: &Book, on: &str, lang: outplant::wording::Lang) -> String {
    let pest = criterion(&tray(&book.on(on), "cof-1").criteria, Rule::Pest).clone();
    outplant::wording::Wording::new(lang).reason(&pest, outplant::wording::verdict::About::Tray)
}

#[test]
fn a_sickness_that_does_not_heal_is_gone_once_as_many_as_had_it_are_out_and_a_look_four_weeks_later_finds_none() {
    use outplant::wording::Lang::{En, Es};
    for what in ["mosaic", "swollen shoot virus", "fitoplasma", "stem borer", "moniliasis"] {
        // 48 stand: 20 % are 10 of them.
        let mut book = with(&[("2026-03-01", what, Some(20.0))]);
        assert!(said(&book, "2026-03-01", En).contains("at least 10 of its plants (0 so far)"), "{what}");
        assert!(said(&book, "2026-03-01", Es).contains("al menos 10 de sus plantas (hasta hoy 0)"), "{what}");
        culled(&mut book, "2026-03-02", 1);
        clear(&mut book, "2026-04-10", what, 47);
        assert!(asked(&book).blocks && said(&book, TODAY, En).contains("(1 so far)"), "{what}: one is not ten");
        let mut book = with(&[("2026-03-01", what, Some(20.0))]);
        culled(&mut book, "2026-03-02", 4);
        culled(&mut book, "2026-03-05", 6);
        clear(&mut book, "2026-04-01", what, 38);
        assert!(asked(&book).blocks, "{what}: 27 days after");
        assert!(said(&book, "2026-04-01", En).contains("Not before"), "{}", said(&book, "2026-04-01", En));
        clear(&mut book, "2026-04-02", what, 5);
        assert!(asked(&book).blocks, "{what}: five plants do not find one in five");
        clear(&mut book, "2026-04-02", what, 14);
        assert!(!asked(&book).blocks, "{what}");
    }
}

#[test]
fn no_treatment_frees_what_nothing_cures_and_one_of_the_whole_tray_frees_of_damping_off_after_a_look_two_weeks_later() {
    let treated = |what: &str| {
        let mut book = with(&[("2026-03-01", what, Some(20.0))]);
        book.write("2026-03-02", "treated", json!({"tray":"cof-1","with":"mancozeb drench","safe_after_days":1}));
        book
    };
    for what in ["nematodes", "virus", "phytoplasma", "fusarium wilt", "citrus canker"] {
        let mut book = treated(what);
        clear(&mut book, TODAY, what, 48);
        assert!(asked(&book).blocks, "{what}");
    }
    for what in ["damping-off", "collar rot", "Phytophthora", "mal del talluelo"] {
        let mut early = treated(what);
        clear(&mut early, "2026-03-15", what, 48);
        assert!(asked(&early).blocks, "{what}: 13 days");
        let mut leaves_alone = treated(what);
        let look = json!({"tray":"cof-1","what":what,"share_pct":0,"plants_seen":48});
        leaves_alone.write("2026-03-16", "pest_seen", look);
        assert!(asked(&leaves_alone).blocks, "{what}: nobody looked at the roots");
        let mut book = treated(what);
        clear(&mut book, "2026-03-16", what, 14);
        assert!(!asked(&book).blocks, "{what}");
    }
}

#[test]
fn what_nobody_counted_is_counted_before_any_cull_can_be_enough() {
    let mut book = with(&[("2026-03-01", "mosaic", None)]);
    culled(&mut book, "2026-03-01", 20);
    clear(&mut book, "2026-04-05", "mosaic", 28);
    assert!(asked(&book).blocks && said(&book, TODAY, outplant::wording::Lang::En).contains("count on how many"));
    // Written again of that day with its share, the culls of that day are enough; the look comes after.
    seen(&mut book, "2026-03-01", json!({"tray":"cof-1"}), "mosaic", Some(30.0));
    clear(&mut book, "2026-04-06", "mosaic", 28);
    assert!(!asked(&book).blocks);
}

#[test]
fn plants_dead_of_it_are_out_as_those_thrown_out_and_culls_go_along_with_what_is_moved_on() {
    let mut book = with(&[("2026-03-01", "damping-off", Some(25.0))]);
    book.write("2026-03-03", "lost", json!({"tray":"cof-1","count":12,"cause":"damping-off"}));
    let mut only_dead = with(&[("2026-03-01", "damping-off", Some(25.0))]);
    only_dead.write("2026-03-03", "lost", json!({"tray":"cof-1","count":12,"cause":"damping-off"}));
    clear(&mut only_dead, TODAY, "damping-off", 36);
    assert!(asked(&only_dead).blocks, "nobody threw them out with their soil");
    culled(&mut book, "2026-03-04", 1);
    let on = json!({"from":"cof-1","to":"cof-9","count":35,"how":"potted_on","container":"bag","place":"Half shade"});
    book.write("2026-03-05", "moved_on", on);
    let of = |book: &Book| criterion(&tray(&book.on(TODAY), "cof-9").criteria, Rule::Pest).blocks;
    assert!(of(&book));
    let look = json!({"tray":"cof-9","what":"damping-off","share_pct":0,"plants_seen":20,"roots_seen":true});
    book.write("2026-03-20", "pest_seen", look.clone());
    assert!(!of(&book));
    // One more that dies of it, and it is not over.
    let mut dying = with(&[("2026-03-01", "damping-off", Some(25.0))]);
    culled(&mut dying, "2026-03-02", 12);
    dying.write("2026-03-10", "lost", json!({"tray":"cof-1","count":1,"cause":"damping-off"}));
    clear(&mut dying, "2026-03-20", "damping-off", 35);
    assert!(asked(&dying).blocks);
    clear(&mut dying, "2026-03-24", "damping-off", 35);
    assert!(!asked(&dying).blocks);
}

#[test]
fn a_name_that_nobody_knows_holds_the_tray_until_a_person_says_whether_it_goes_along() {
    use outplant::wording::Lang::{En, Es};
    for what in ["algo raro", "something odd", "kibblewort"] {
        for share in [None, Some(2.0)] {
            assert_eq!(stands(&[("2026-04-11", what, share)]), (true, false), "{what} {share:?}");
        }
        let mut book = with(&[("2026-04-11", what, Some(2.0))]);
        assert!(said(&book, TODAY, En).contains("\"goes along with plants\" yes or no"), "{what}");
        assert!(said(&book, TODAY, Es).contains("\"se pega de planta a planta\" sí o no"), "{what}");
        clear(&mut book, "2026-04-12", what, 48);
        assert!(asked(&book).blocks, "{what}: a look says nothing of what it was");
        book.write("2026-04-13", "pest_seen", json!({"tray":"cof-1","what":what,"spreads":false}));
        assert_eq!((asked(&book).blocks, asked(&book).warns), (false, true), "{what}: on 2 %");
        book.write("2026-04-14", "pest_seen", json!({"tray":"cof-1","what":what,"spreads":true}));
        assert!(asked(&book).blocks, "{what}");
    }
    // A sign may be hunger or drought, and the grower knows; a named sickness is not talked away.
    for (what, free) in [
        ("wilting at noon", true),
        ("hoja amarilla", true),
        ("tizón", true),
        ("stem borer", false),
        ("TSV", false),
        ("dieback of the tips", true),
        ("mosaic", false),
        ("moko", false),
    ] {
        let mut book = with(&[("2026-04-01", what, Some(2.0))]);
        assert!(asked(&book).blocks, "{what}");
        book.write("2026-04-02", "pest_seen", json!({"tray":"cof-1","what":what,"spreads":false}));
        assert_eq!(!asked(&book).blocks, free, "{what}");
    }
}

#[test]
fn a_tray_that_only_stood_where_a_sickness_was_seen_is_freed_by_its_own_look() {
    let mut book = fitting();
    seen(&mut book, "2026-03-01", json!({"place":"Half shade"}), "nematodes", Some(10.0));
    let told = said(&book, "2026-03-02", outplant::wording::Lang::En);
    assert!(asked(&book).blocks && told.contains("look at the roots of") && told.contains("29 Mar"), "{told}");
    assert!(!told.contains("throw out") && !told.contains("culled"), "nobody saw it on these plants: {told}");
    clear(&mut book, "2026-03-28", "nematodes", 48);
    assert!(asked(&book).blocks, "27 days");
    clear(&mut book, "2026-03-29", "nematodes", 48);
    assert!(!asked(&book).blocks);
}

#[test]
fn a_few_leaf_eaters_hold_nothing() {
    for what in ["aphids", "leaf cutters", "snails", "zompopos", "red spider mites", "minador", "leaf spot", "roya"] {
        assert_eq!(stands(&[("2026-04-12", what, Some(3.0))]), (false, true), "{what}");
    }
}

fn bed_seen(what: &str, share: f64) -> Book {
    let mut book = fitting();
    seen(&mut book, "2026-03-01", json!({"bed":"Upper 1"}), what, Some(share));
    book
}

fn bed_fits(book: &Book) -> bool {
    pair(&book.on(TODAY), "cof-1", "Upper 1").fits
}

#[test]
fn a_sickness_of_the_soil_holds_a_bed_at_any_share_until_a_deed_and_a_look_weeks_after_it() {
    for what in ["nematodes", "armillaria", "fusarium wilt", "llaga negra", "moko"] {
        let mut treated = bed_seen(what, 3.0);
        let with = json!({"bed":"Upper 1","with":"ash","safe_after_days":0,"plant_after_days":0});
        treated.write("2026-03-02", "treated", with);
        seen(&mut treated, "2026-04-10", json!({"bed":"Upper 1"}), what, Some(0.0));
        assert_eq!(bed_fits(&treated), what == "moko", "{what}: nothing that is known frees ground of it");
    }
    for what in ["root rot", "phytophthora"] {
        assert!(!bed_fits(&bed_seen(what, 3.0)), "{what}");
        let mut looked = bed_seen(what, 3.0);
        seen(&mut looked, "2026-04-10", json!({"bed":"Upper 1"}), what, Some(0.0));
        assert!(!bed_fits(&looked), "{what}: a look alone is not believed");
        let mut treated = bed_seen(what, 3.0);
        let with = json!({"bed":"Upper 1","with":"marigold, turned in","safe_after_days":1});
        treated.write("2026-03-10", "treated", with);
        assert!(!bed_fits(&treated), "{what}: nobody looked since");
        seen(&mut treated, "2026-03-12", json!({"bed":"Upper 1"}), what, Some(0.0));
        assert!(!bed_fits(&treated), "{what}: two days after");
        seen(&mut treated, "2026-04-10", json!({"bed":"Upper 1"}), what, Some(0.0));
        assert!(!bed_fits(&treated), "{what}: nobody looked at roots");
        let roots = json!({"bed":"Upper 1","what":what,"share_pct":0,"plants_seen":200,"roots_seen":true});
        treated.write("2026-04-11", "pest_seen", roots);
        assert!(bed_fits(&treated), "{what}");
    }
}

#[test]
fn a_sickness_of_other_hosts_holds_no_planting_in_a_bed() {
    assert!(bed_fits(&bed_seen("Panama disease in the bananas", 30.0)));
    assert!(!bed_fits(&bed_seen("fusarium, of what nobody knows", 3.0)));
}

#[test]
fn grubs_in_a_bed_are_dug_for_on_the_round_also_after_ash() {
    let ash = json!({"bed":"Upper 1","with":"wood ash around the collars","safe_after_days":0});
    let dug = |book: &Book| tasks_at(book, TODAY, "Upper 1").contains(&"sick".to_string());
    let mut few = bed_seen("white grubs", 8.0);
    few.write("2026-03-10", "treated", ash.clone());
    assert!(bed_fits(&few) && dug(&few), "a few ask for care, and for a spade");
    let mut many = bed_seen("white grubs", 20.0);
    many.write("2026-03-10", "treated", ash);
    assert!(!bed_fits(&many) && dug(&many), "ash is no look");
    for book in [&mut few, &mut many] {
        seen(book, TODAY, json!({"bed":"Upper 1"}), "white grubs", Some(0.0));
        assert!(bed_fits(book) && !dug(book));
    }
}

#[test]
fn neither_a_cull_of_none_nor_water_settles_a_sickness() {
    for what in ["swollen shoot virus", "damping-off"] {
        for (kind, body) in [
            ("culled", json!({"tray":"cof-1","count":0,"why":"looked through"})),
            ("treated", json!({"tray":"cof-1","with":"clean water","safe_after_days":0})),
            ("treated", json!({"tray":"cof-1","with":"agua","safe_after_days":0})),
        ] {
            let mut book = with(&[("2026-03-01", what, Some(20.0))]);
            book.write("2026-03-02", kind, body.clone());
            clear(&mut book, TODAY, what, 48);
            assert!(asked(&book).blocks, "{what} {body}");
        }
    }
}

#[test]
fn a_tray_with_damping_off_is_not_potted_on_pricked_out_or_sorted() {
    use outplant::reckon::round::Task;
    let mut book = fitting();
    book.write("2026-04-01", "plug_checked", json!({"tray":"cof-1","roots":"circling"}));
    let tasks = |book: &Book| tasks_at(book, TODAY, "cof-1");
    assert!(tasks(&book).contains(&Task::CutRoots.to_string()), "{:?}", tasks(&book));
    seen(&mut book, "2026-04-10", json!({"tray":"cof-1"}), "damping-off", Some(20.0));
    assert!(tasks(&book).iter().all(|task| task == "sick" || task == "count"), "{:?}", tasks(&book));
    let picture = book.on(TODAY);
    let on = outplant::wording::round::RoundOn { day: picture.day, species: &picture.site.species };
    let stop = stops(&book, TODAY).into_iter().find(|stop| stop.id == "sick cof-1").unwrap();
    for (lang, wet) in
        [(outplant::wording::Lang::En, "never over the leaves"), (outplant::wording::Lang::Es, "nunca sobre las hojas")]
    {
        let said = outplant::wording::Wording::new(lang).round_reason(&stop.why, on);
        assert!(said.contains(wet), "{said}");
    }
}

#[test]
fn a_sickness_seen_on_the_day_plants_were_moved_on_goes_along_whichever_was_typed_first() {
    let mut book = fitting();
    let on = json!({"from":"cof-1","to":"cof-9","count":20,"how":"potted_on","container":"bag","place":"Half shade"});
    book.write("2026-04-10", "moved_on", on);
    assert!(!criterion(&tray(&book.on(TODAY), "cof-9").criteria, Rule::Pest).blocks);
    seen(&mut book, "2026-04-10", json!({"tray":"cof-1"}), "nematodes", Some(5.0));
    assert!(criterion(&tray(&book.on(TODAY), "cof-9").criteria, Rule::Pest).blocks);
}

/// The stops at a tray or a bed, in the order of the round, those that can wait last.
fn stops(book: &Book, on: &str) -> Vec<outplant::reckon::round::Stop> {
    let round = outplant::reckon::round::round(&book.on(on));
    round.stops.into_iter().chain(round.can_wait).collect()
}

fn tasks_at(book: &Book, on: &str, subject: &str) -> Vec<String> {
    let of_it = |stop: &outplant::reckon::round::Stop| stop.id.split_once(' ').is_some_and(|(_, of)| of == subject);
    stops(book, on).into_iter().filter(of_it).map(|stop| stop.task.to_string()).collect()
}

#[test]
fn a_sick_tray_stays_on_the_round_until_it_is_answered() {
    let mut book = with(&[("2026-04-01", "leaf spot", Some(40.0))]);
    let asked = |book: &Book, on: &str| tasks_at(book, on, "cof-1").contains(&"sick".to_string());
    // Long after the week in which it is counted every other day, and long counted.
    for on in ["2026-04-01", TODAY, "2026-05-20"] {
        assert!(asked(&book, on), "{on}");
    }
    let wording = outplant::wording::Wording::new(outplant::wording::Lang::En);
    let said = |book: &Book| {
        let picture = book.on(TODAY);
        let on = outplant::wording::round::RoundOn { day: picture.day, species: &picture.site.species };
        let stop = stops(book, TODAY).into_iter().find(|stop| stop.id == "sick cof-1").unwrap();
        wording.round_reason(&stop.why, on)
    };
    assert!(said(&book).contains("with its soil") && said(&book).contains("no heap"), "{}", said(&book));
    // Thrown out: looked at again a week later, until a look finds it gone.
    book.write("2026-04-08", "culled", json!({"tray":"cof-1","count":10,"why":"leaf spot"}));
    assert!(!asked(&book, "2026-04-14") && asked(&book, TODAY));
    assert!(said(&book).contains("look again"), "{}", said(&book));
    seen(&mut book, TODAY, json!({"tray":"cof-1"}), "leaf spot", Some(0.0));
    assert!(!asked(&book, TODAY));
    // A few aphids ask for care, and a week later for a look.
    let few = with(&[("2026-04-09", "aphids", Some(2.0))]);
    assert!(!asked(&few, TODAY) && asked(&few, "2026-04-16"));
}

#[test]
fn sick_and_quarantined_trays_come_last_with_a_line_on_washing() {
    use outplant::nursery::caution::Caution;
    let mut book = fitting();
    crate::support::ready_coffee(&mut book, "cof-2");
    crate::support::ready_coffee(&mut book, "cof-3");
    seen(&mut book, "2026-04-14", json!({"tray":"cof-1"}), "leaf spot", Some(40.0));
    book.write("2026-04-14", "held", json!({"tray":"cof-2","why":"quarantine"}));
    book.write("2026-04-14", "held", json!({"tray":"cof-3","why":"promised to the school"}));
    let on = "2026-05-20";
    let round = outplant::reckon::round::round(&book.on(on));
    let legs: Vec<(String, bool)> = round
        .stops
        .iter()
        .filter_map(|stop| Some((stop.tray()?.to_string(), stop.cautions().contains(&Caution::Hygiene))))
        .collect();
    assert!(legs.iter().any(|(tray, _)| tray == "cof-1") && legs.iter().any(|(tray, _)| tray == "cof-3"), "{legs:?}");
    for (tray, washes) in &legs {
        assert_eq!(*washes, tray != "cof-3", "{tray}");
    }
    let last_healthy = round.stops.iter().rposition(|stop| !stop.cautions().contains(&Caution::Hygiene)).unwrap();
    let first_sick = round.stops.iter().position(|stop| stop.cautions().contains(&Caution::Hygiene)).unwrap();
    assert!(last_healthy < first_sick, "{legs:?}");
}

#[test]
fn a_bed_with_nematodes_or_a_wilt_stays_on_the_round_until_it_is_answered() {
    for (what, share) in [("nematodes", Some(40.0)), ("root rot", Some(3.0))] {
        let mut book = fitting();
        seen(&mut book, "2026-03-01", json!({"bed":"Upper 1"}), what, share);
        let asked = |book: &Book| tasks_at(book, TODAY, "Upper 1").contains(&"sick".to_string());
        assert!(asked(&book), "{what}");
        book.write("2026-03-02", "treated", json!({"bed":"Upper 1","with":"lime","safe_after_days":1}));
        assert!(asked(&book), "{what}: a look is due");
        let clear = json!({"bed":"Upper 1","what":what,"share_pct":0,"plants_seen":59,"roots_seen":true});
        book.write(TODAY, "pest_seen", clear);
        assert!(!asked(&book), "{what}");
    }
    let mut eaters = fitting();
    seen(&mut eaters, "2026-04-14", json!({"bed":"Upper 1"}), "aphids", Some(40.0));
    assert!(
        !tasks_at(&eaters, TODAY, "Upper 1").contains(&"sick".to_string()),
        "what flies is looked for when planting"
    );
}
