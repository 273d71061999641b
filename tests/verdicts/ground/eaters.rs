//! What eats in a bed, and what is set against it that is no spray.

use outplant::nursery::entry::subject::Subject;
use outplant::reckon::picture::{Criterion, Rule};
use outplant::reckon::round::round;
use outplant::wording::verdict::About;
use outplant::wording::{Lang, Wording};
use serde_json::{Value, json};

use crate::support::{Book, bed_species, criterion, fitting, open_bed, pair};

const TODAY: &str = "2026-04-15";

/// A bed of so many coffee plants since March.
fn planted(alive: u32) -> Book {
    let mut book = fitting();
    book.write("2026-03-01", "plants_found", json!({"bed":"Upper 1","species":"COA","alive":alive}));
    book
}

fn lost(book: &mut Book, on: &str, count: u32, cause: &str) {
    book.write(on, "plants_lost", json!({"bed":"Upper 1","species":"COA","count":count,"cause":cause}));
}

fn seen(book: &mut Book, on: &str, bed: &str, what: &str, share: Value) {
    let mut body = json!({"bed":bed,"what":what});
    if !share.is_null() {
        body["share_pct"] = share;
    }
    book.write(on, "pest_seen", body);
}

fn treated(book: &mut Book, with: &str) {
    book.write(TODAY, "treated", json!({"bed":"Upper 1","with":with}));
}

fn of(book: &Book, bed: &str, rule: Rule) -> Option<Criterion> {
    let picture = book.on(TODAY);
    bed_species(&picture, bed, "COA").criteria.iter().find(|criterion| criterion.rule() == rule).cloned()
}

/// Whether the bed's pest or its fence holds it, and whether one asks for care.
fn stands(book: &Book) -> (bool, bool) {
    let both = [Rule::Pest, Rule::Fenced].map(|rule| of(book, "Upper 1", rule));
    let any = |asks: fn(&Criterion) -> bool| both.iter().flatten().any(asks);
    (any(|one| one.blocks), any(|one| one.warns && one.rule() == Rule::Pest))
}

fn said(criterion: &Criterion) -> [String; 2] {
    [Lang::En, Lang::Es].map(|lang| Wording::new(lang).reason(criterion, About::Bed))
}

#[test]
fn whatever_eats_a_third_of_a_bed_holds_it_and_of_a_tenth_asks_for_care() {
    for cause in [
        "snails",
        "slugs",
        "crickets",
        "caterpillars",
        "beetles",
        "weevils",
        "stem borer",
        "babosas",
        "grillos",
        "gusanos",
        "barrenador",
        "escarabajos",
        "millipedes",
    ] {
        let ate = |count: u32| {
            let mut book = planted(30);
            lost(&mut book, "2026-04-12", count, cause);
            stands(&book)
        };
        assert_eq!((ate(15), ate(10)), ((true, false), (true, false)), "{cause}");
        assert_eq!((ate(9), ate(3)), ((false, true), (false, true)), "{cause}");
        // A borer is a sighting from the first plant on.
        assert_eq!(ate(2), (false, ["stem borer", "barrenador"].contains(&cause)), "{cause}");
    }
    // Seen on half of them, and none has died of it: what goes in is eaten too. On fewer they are looked for when planting.
    for what in ["snails", "caterpillars", "babosas"] {
        let on = |share: u32| {
            let mut book = planted(30);
            seen(&mut book, "2026-04-14", "Upper 1", what, json!(share));
            stands(&book)
        };
        assert_eq!((on(50), on(49)), ((true, false), (false, true)), "{what}");
    }
    // Rats, ants and grasshoppers take whole plants: a tenth is many, as before.
    for cause in ["rats", "zompopos", "grasshoppers", "monkeys"] {
        let mut book = planted(30);
        lost(&mut book, "2026-04-12", 3, cause);
        assert_eq!(stands(&book), (true, false), "{cause}");
    }
}

#[test]
fn what_animals_took_in_four_weeks_is_added_up() {
    for cause in ["goats", "rats"] {
        let mut book = planted(60);
        for on in ["2026-03-24", "2026-03-31", "2026-04-07"] {
            lost(&mut book, on, 2, cause);
        }
        assert!(stands(&book).0, "{cause}: six of sixty");
        let mut slow = planted(60);
        for on in ["2026-03-02", "2026-03-16", "2026-04-12"] {
            lost(&mut slow, on, 2, cause);
        }
        assert!(!stands(&slow).0, "{cause}: four in the last four weeks");
    }
    // A look that found none begins it anew.
    let mut book = planted(30);
    lost(&mut book, "2026-03-30", 9, "snails");
    seen(&mut book, "2026-04-05", "Upper 1", "snails", json!(0));
    lost(&mut book, "2026-04-10", 3, "snails");
    assert_eq!(stands(&book), (false, true));
}

#[test]
fn leaf_cutters_of_which_nobody_wrote_a_share_hold_their_bed_until_it_is_written() {
    for what in ["leaf-cutter ants", "zompopos"] {
        let mut book = planted(30);
        seen(&mut book, "2026-04-14", "Upper 1", what, Value::Null);
        let asked = of(&book, "Upper 1", Rule::Pest).unwrap();
        let [en, es] = said(&asked);
        assert!(asked.blocks && en.contains("nobody wrote on how many plants") && es.contains("nadie"), "{en} {es}");
        seen(&mut book, TODAY, "Upper 1", what, json!(4));
        assert_eq!(stands(&book), (false, true));
    }
    let mut ants = planted(30);
    seen(&mut ants, "2026-04-14", "Upper 1", "ants", Value::Null);
    assert_eq!(stands(&ants), (false, true), "ants are in every bed");
}

#[test]
fn animals_that_broke_into_one_bed_are_looked_for_in_its_sisters() {
    let mut book = planted(30);
    open_bed(&mut book, "Upper 2");
    book.write("2026-04-01", "prepared", json!({"bed":"Upper 2","task":"fenced"}));
    let of_sister = |book: &Book| of(book, "Upper 2", Rule::Fenced).unwrap();
    assert_eq!(of_sister(&book).met(), Some(true));
    seen(&mut book, "2026-04-14", "Upper 1", "goats", json!(60));
    let sister = of_sister(&book);
    assert!(sister.warns && !sister.blocks && pair(&book.on(TODAY), "cof-1", "Upper 2").fits);
    let [en, es] = said(&sister);
    assert!(en.contains("another bed of this field on 14 Apr 2026") && es.contains("otra parcela"), "{en} {es}");
    let mut looked = book.clone();
    seen(&mut looked, TODAY, "Upper 2", "goats", json!(0));
    assert_eq!(of_sister(&looked).met(), Some(true));
    book.write(TODAY, "prepared", json!({"bed":"Upper 1","task":"fenced"}));
    assert_eq!(of_sister(&book).met(), Some(true));
}

#[test]
fn what_is_set_against_eaters_is_no_spray_and_answers_them() {
    for with in
        ["traps", "cat", "collars", "wire guards", "tins", "nets", "a watchman at night", "trampas", "gatos", "mallas"]
    {
        let mut book = planted(30);
        lost(&mut book, "2026-04-12", 15, "rats");
        assert!(stands(&book).0);
        treated(&mut book, with);
        assert!(!stands(&book).0, "{with}");
        for rule in [Rule::Treated, Rule::PlantBack] {
            assert!(of(&book, "Upper 1", rule).is_none_or(|asked| !asked.blocks), "{with}");
        }
        assert!(pair(&book.on(TODAY), "cof-1", "Upper 1").fits, "{with}");
    }
    // Poison has a label, and a fence stops no rat.
    for with in ["rat bait", "poison bait", "veneno", "traps with poison"] {
        let mut book = planted(30);
        lost(&mut book, "2026-04-12", 15, "rats");
        treated(&mut book, with);
        assert!(of(&book, "Upper 1", Rule::Treated).is_some_and(|asked| asked.blocks), "{with}");
    }
    // The name of a product is none of these words.
    for with in ["Guardian", "guard 480"] {
        let mut book = planted(30);
        treated(&mut book, with);
        assert!(of(&book, "Upper 1", Rule::Treated).is_some_and(|asked| asked.blocks), "{with}");
    }
    // A cat hunts rats and mice alone.
    for cause in ["snails", "crickets", "gusanos", "beetles", "stem borer"] {
        let mut book = planted(30);
        lost(&mut book, "2026-04-12", 15, cause);
        treated(&mut book, "a cat");
        assert!(stands(&book).0, "{cause}");
        treated(&mut book, "traps");
        assert!(!stands(&book).0, "{cause}");
    }
    let mut fenced = planted(30);
    lost(&mut fenced, "2026-04-12", 15, "rats");
    treated(&mut fenced, "fence");
    fenced.write(TODAY, "prepared", json!({"bed":"Upper 1","task":"fenced"}));
    assert!(stands(&fenced).0);
    // Traps cure no sickness.
    let mut sick = fitting();
    sick.write("2026-03-20", "pest_seen", json!({"tray":"cof-1","what":"root rot","share_pct":5}));
    sick.write("2026-03-21", "treated", json!({"tray":"cof-1","with":"traps"}));
    sick.write(
        "2026-04-12",
        "pest_seen",
        json!({"tray":"cof-1","what":"root rot","share_pct":0,"plants_seen":48,"roots_seen":true}),
    );
    assert!(criterion(&crate::support::tray(&sick.on(TODAY), "cof-1").criteria, Rule::Pest).blocks);
}

#[test]
fn a_fence_answers_hares_hens_porcupines_and_elephants_and_no_monkeys_or_birds() {
    for (cause, answered) in [
        ("hares", true),
        ("porcupines", true),
        ("chickens", true),
        ("elephants", true),
        ("conejos", true),
        ("gallinas", true),
        ("monkeys", false),
        ("birds", false),
        ("rats", false),
        ("gallina ciega", false),
    ] {
        let mut book = planted(30);
        lost(&mut book, "2026-04-12", 15, cause);
        assert!(stands(&book).0, "{cause}");
        book.write("2026-04-13", "prepared", json!({"bed":"Upper 1","task":"fenced"}));
        assert_eq!(!stands(&book).0, answered, "{cause}");
    }
    // Tied up or kept out by wire they ask for care, and hold no more.
    let mut book = planted(30);
    lost(&mut book, "2026-04-12", 15, "goats");
    treated(&mut book, "goats tied up");
    let fence = of(&book, "Upper 1", Rule::Fenced).unwrap();
    assert!(!fence.blocks && fence.warns);
}

#[test]
fn where_a_fence_stands_a_look_that_finds_no_animals_answers_them() {
    let goats = |fenced: bool| {
        let mut book = planted(30);
        if fenced {
            book.write("2026-04-01", "prepared", json!({"bed":"Upper 1","task":"fenced"}));
        }
        lost(&mut book, "2026-04-12", 15, "goats");
        assert!(stands(&book).0);
        seen(&mut book, "2026-04-14", "Upper 1", "goats", json!(0));
        stands(&book).0
    };
    assert_eq!((goats(true), goats(false)), (false, true));
}

#[test]
fn sick_plants_that_give_the_shade_go_and_the_light_is_another_then() {
    let mut book = fitting();
    let planted = json!({"bed":"Upper 1","nurse":"banana","count":20,"row_m":4,"in_row_m":3});
    book.write("2025-06-01", "nurse_planted", planted);
    for what in ["bunchy top", "Panama disease", "xanthomonas wilt"] {
        let mut sick = book.clone();
        seen(&mut sick, "2026-04-14", "Upper 1", what, json!(30));
        let asked = of(&sick, "Upper 1", Rule::Pest).unwrap();
        let [en, es] = said(&asked);
        assert!(asked.warns && !asked.blocks, "{what} {en}");
        assert!(en.contains("6 of the plants that give its shade") && es.contains("Salen 6"), "{en} {es}");
        let out = json!({"bed":"Upper 1","species":"banana","count":6,"cause":what});
        sick.write(TODAY, "plants_lost", out);
        assert!(of(&sick, "Upper 1", Rule::Pest).is_none_or(|asked| !said(&asked)[0].contains("shade")), "{what}");
    }
}

#[test]
fn a_nest_that_stings_is_left_alone_and_asks_nothing_of_plants() {
    for what in ["wasps", "bees nest", "avispero", "abejas"] {
        let mut book = fitting();
        seen(&mut book, "2026-04-14", "Upper 1", what, Value::Null);
        let asked = of(&book, "Upper 1", Rule::Pest).unwrap();
        let [en, es] = said(&asked);
        assert!(asked.blocks && en.contains("It stings") && es.contains("Pica"), "{what}: {en} {es}");
        assert!(!pair(&book.on(TODAY), "cof-1", "Upper 1").fits, "{what}");
        // Nobody is sent in for other work either, and it is said.
        let day = round(&book.on(TODAY));
        let bed = Subject::Bed("Upper 1".parse().unwrap());
        assert!(day.stay_away.iter().any(|(subject, _)| *subject == bed), "{what}");
        assert!(!day.stops.iter().chain(&day.can_wait).any(|stop| stop.subject == bed), "{what}");
        seen(&mut book, "2026-04-15", "Upper 1", what, json!(0));
        assert!(pair(&book.on(TODAY), "cof-1", "Upper 1").fits, "{what}");
    }
}
