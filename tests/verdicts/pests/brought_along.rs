//! What plants bring along from a tray in which others died of nobody knows what, or in which a sickness is seen once they have left it.

use super::{TODAY, criterion, culled, fitting, seen, tasks_at, tray};
use crate::support::program::Home;
use crate::support::{Book, bed_species, pair, ready_coffee};
use outplant::reckon::picture::{Criterion, Rule};
use outplant::wording::Lang::{self, En, Es};
use outplant::wording::Wording;
use outplant::wording::verdict::About;
use serde_json::json;

/// cof-1, cof-2 and cof-3 are ready in half shade, 48 plants each.
fn three_trays() -> Book {
    let mut book = fitting();
    ready_coffee(&mut book, "cof-2");
    ready_coffee(&mut book, "cof-3");
    book
}

fn of(book: &Book, on: &str, code: &str) -> Criterion {
    criterion(&tray(&book.on(on), code).criteria, Rule::Pest).clone()
}

fn told(book: &Book, code: &str, lang: Lang) -> String {
    Wording::new(lang).reason(&of(book, TODAY, code), About::Tray)
}

/// Held, or only with a word of care, or neither.
fn stands(book: &Book, on: &str, code: &str) -> &'static str {
    let pest = of(book, on, code);
    match (pest.blocks, pest.warns) {
        (true, _) => "held",
        (false, true) => "care",
        (false, false) => "open",
    }
}

fn counted(book: &mut Book, on: &str, code: &str, standing: u32, dead: u32) {
    book.write(on, "counted", json!({"tray":code,"standing":standing,"dead":dead}));
}

/// So many of cof-2 into another tray.
fn moved(book: &mut Book, on: &str, (from, to): (&str, &str), count: u32) {
    let how = if matches!(to, "cof-1" | "cof-3") { "merged" } else { "potted_on" };
    let body = json!({"from":from,"to":to,"count":count,"how":how,"container":"bag","place":"Half shade"});
    book.write(on, "moved_on", body);
}

/// 12 of 48 of cof-2 died, and the rest was moved on the day after.
fn dying(to: &str, count: u32) -> Book {
    let mut book = three_trays();
    counted(&mut book, "2026-04-12", "cof-2", 36, 12);
    moved(&mut book, "2026-04-13", ("cof-2", to), count);
    book
}

fn looked(book: &mut Book, on: &str, code: &str) {
    seen(book, on, json!({"tray":code}), "none", Some(0.0));
}

#[test]
fn unknown_deaths_go_along_with_plants_that_are_potted_on_or_merged() {
    for (to, count) in [("cof-9", 36), ("cof-1", 36), ("cof-1", 10)] {
        let book = dying(to, count);
        assert_eq!(stands(&book, TODAY, to), "held", "{to} {count}");
        assert!(!pair(&book.on(TODAY), to, "Upper 1").fits);
        assert!(tasks_at(&book, TODAY, to).contains(&"sick".to_string()), "{to} {count}");
        let said = told(&book, to, En);
        assert!(
            said.contains(&format!("{count} of these came out of cof-2"))
                && said.contains("14 were dead or gone and 36 alive"),
            "{said}"
        );
        assert!(told(&book, to, Es).contains("de estas salieron de cof-2, donde hasta el"));
    }
    // A handful is left behind while loading.
    assert_eq!(stands(&dying("cof-1", 4), TODAY, "cof-1"), "care");
    // Few that died, many that died of a known harm, and healthy plants hold nobody.
    let mut few = three_trays();
    counted(&mut few, "2026-04-12", "cof-2", 45, 3);
    few.write("2026-04-12", "lost", json!({"tray":"cof-2","count":12,"cause":"goats"}));
    moved(&mut few, "2026-04-13", ("cof-2", "cof-1"), 30);
    moved(&mut few, "2026-04-13", ("cof-3", "cof-1"), 30);
    assert_eq!(stands(&few, TODAY, "cof-1"), "open");
    let losses = |cause: &str| {
        let mut book = three_trays();
        book.write("2026-04-12", "lost", json!({"tray":"cof-2","count":12,"cause":cause}));
        moved(&mut book, "2026-04-13", ("cof-2", "cof-9"), 36);
        stands(&book, TODAY, "cof-9")
    };
    assert_eq!((losses("unknown"), losses("se murieron"), losses("rats")), ("held", "held", "open"));
}

#[test]
fn unknown_deaths_go_on_through_a_third_tray_and_from_both_sides_of_a_merging() {
    let mut on = dying("cof-9", 36);
    moved(&mut on, "2026-04-14", ("cof-9", "cof-1"), 20);
    moved(&mut on, "2026-04-14", ("cof-1", "cof-8"), 40);
    assert_eq!(["cof-9", "cof-1", "cof-8"].map(|code| stands(&on, TODAY, code)), ["held"; 3]);
    // The healthy ones put to the dying.
    let mut into = three_trays();
    counted(&mut into, "2026-04-12", "cof-2", 36, 12);
    into.write("2026-04-13", "moved_on", json!({"from":"cof-1","to":"cof-2","count":40,"how":"merged"}));
    moved(&mut into, "2026-04-14", ("cof-2", "cof-9"), 60);
    assert_eq!((stands(&into, TODAY, "cof-2"), stands(&into, TODAY, "cof-9")), ("held", "held"));
    assert_eq!(stands(&into, TODAY, "cof-1"), "open", "nothing came back");
}

#[test]
fn whatever_answers_the_deaths_of_a_tray_frees_those_that_came_out_of_it() {
    for code in ["cof-2", "cof-9"] {
        let mut book = dying("cof-9", 30);
        looked(&mut book, "2026-04-14", code);
        assert_eq!(stands(&book, TODAY, "cof-9"), "open", "{code}");
    }
    // A cause written later: of rats nothing goes along, a sickness does.
    let caused = |what: &str| {
        let mut book = dying("cof-9", 30);
        seen(&mut book, "2026-04-14", json!({"tray":"cof-2"}), what, Some(25.0));
        stands(&book, TODAY, "cof-9")
    };
    assert_eq!((caused("rats"), caused("fusarium")), ("open", "held"));
    // Counted weeks later, with few gone: of the donor, or of these.
    for (code, standing) in [("cof-2", 6), ("cof-9", 30)] {
        let mut book = dying("cof-9", 30);
        counted(&mut book, "2026-04-26", code, standing, 0);
        assert_eq!(stands(&book, "2026-04-25", "cof-9"), "held", "{code}");
        assert_eq!(stands(&book, "2026-04-26", "cof-9"), "open", "{code}");
    }
    // A look of before they came tells nothing of them.
    let mut early = three_trays();
    counted(&mut early, "2026-04-12", "cof-2", 36, 12);
    looked(&mut early, "2026-04-12", "cof-1");
    moved(&mut early, "2026-04-13", ("cof-2", "cof-1"), 30);
    assert_eq!(stands(&early, TODAY, "cof-1"), "held");
    // On the day of the move: written after it, and written before it.
    let mut after = dying("cof-1", 30);
    looked(&mut after, "2026-04-13", "cof-1");
    assert_eq!(stands(&after, TODAY, "cof-1"), "open");
    let mut before = three_trays();
    counted(&mut before, "2026-04-12", "cof-2", 36, 12);
    looked(&mut before, "2026-04-13", "cof-1");
    moved(&mut before, "2026-04-13", ("cof-2", "cof-1"), 30);
    assert_eq!(stands(&before, TODAY, "cof-1"), "held");
}

#[test]
fn deaths_or_moves_that_are_written_late_taken_back_or_whose_donor_is_given_away_are_read_as_they_were() {
    // The deaths written last.
    let mut late = three_trays();
    moved(&mut late, "2026-04-13", ("cof-2", "cof-1"), 30);
    assert_eq!(stands(&late, TODAY, "cof-1"), "open");
    let lost = late.write("2026-04-12", "lost", json!({"tray":"cof-2","count":12,"cause":"unknown"}));
    assert_eq!(stands(&late, TODAY, "cof-1"), "held");
    late.write(TODAY, "withdrawn", json!({"entries":[lost.to_string()],"why":"slip"}));
    assert_eq!(stands(&late, TODAY, "cof-1"), "open");
    let mut given = dying("cof-1", 30);
    given.write("2026-04-14", "given_out", json!({"tray":"cof-2","count":6,"to":"a neighbour"}));
    given.write("2026-04-14", "released", json!({"tray":"cof-2"}));
    assert_eq!(stands(&given, TODAY, "cof-1"), "held");
}

#[test]
fn what_left_a_tray_in_the_weeks_before_its_deaths_asks_for_care_in_trays_beds_and_beside() {
    let left = |on: &str| {
        let mut book = three_trays();
        moved(&mut book, on, ("cof-2", "cof-3"), 20);
        counted(&mut book, "2026-04-14", "cof-2", 10, 18);
        book
    };
    let book = left("2026-04-12");
    assert_eq!(stands(&book, TODAY, "cof-3"), "care");
    assert!(told(&book, "cof-3", En).contains("20 of these came out of cof-2"));
    assert_eq!(stands(&book, TODAY, "cof-1"), "care", "it stands beside");
    assert!(told(&book, "cof-1", Es).contains("están o estuvieron junto a cof-2"));
    let mut clear = book.clone();
    looked(&mut clear, TODAY, "cof-1");
    looked(&mut clear, TODAY, "cof-3");
    assert_eq!((stands(&clear, TODAY, "cof-1"), stands(&clear, TODAY, "cof-3")), ("open", "open"));
    // 29 days before, and a tray that stood elsewhere.
    assert_eq!(stands(&left("2026-03-16"), TODAY, "cof-3"), "care", "it stands beside all the same");
    assert!(told(&left("2026-03-16"), "cof-3", En).contains("beside cof-2"));
    // A few that died are no word to the bench.
    let mut few = three_trays();
    counted(&mut few, "2026-04-14", "cof-2", 42, 6);
    assert_eq!((stands(&few, TODAY, "cof-2"), stands(&few, TODAY, "cof-1")), ("held", "open"));
    let bed = |out: &str, on: &str| {
        let mut book = three_trays();
        book.write(out, "outplanted", json!({"tray":"cof-2","bed":"Upper 1","count":15}));
        counted(&mut book, "2026-04-14", "cof-2", 15, 18);
        let picture = book.on(on);
        let asked = bed_species(&picture, "Upper 1", "COA").criteria.clone();
        asked.into_iter().find(|asked| asked.rule() == Rule::Pest)
    };
    let care = bed("2026-04-12", TODAY).unwrap();
    let said = Wording::new(En).reason(&care, About::Bed);
    assert!(care.warns && !care.blocks && said.contains("15 plants out of cof-2"), "{said}");
    assert!(bed("2026-03-10", TODAY).is_none(), "35 days before");
}

#[test]
fn plants_that_left_a_tray_while_its_sickness_was_hidden_are_held_until_they_are_looked_at() {
    let sister = |left: &str, what: &str| {
        let mut book = three_trays();
        moved(&mut book, left, ("cof-2", "cof-9"), 30);
        seen(&mut book, "2026-04-14", json!({"tray":"cof-2"}), what, Some(20.0));
        book
    };
    for (what, left, at_last, too_early) in [
        // What lives in soil came along in the bag, however late it shows; a virus hides for four weeks.
        ("bacterial wilt", "2026-04-13", "2026-01-20", ""),
        ("fusarium", "2026-04-11", "2026-01-20", ""),
        ("root rot", "2026-04-11", "2026-01-20", ""),
        ("mosaic virus", "2026-04-11", "2026-03-17", "2026-03-16"),
    ] {
        let book = sister(left, what);
        assert_eq!(stands(&book, TODAY, "cof-9"), "held", "{what}");
        assert_eq!(stands(&sister(at_last, what), TODAY, "cof-9"), "held", "{what}");
        if !too_early.is_empty() {
            let early = told(&sister(too_early, what), "cof-9", En);
            assert!(early.contains("stood beside cof-2"), "{what}: {early}");
        }
        let said = told(&book, "cof-9", En);
        assert!(said.contains(&format!("30 of these came out of cof-2, in which {what} was seen on")), "{said}");
        assert!(told(&book, "cof-9", Es).contains("30 de estas salieron de cof-2, donde se vio"));
    }
    // What eats leaves and goes, and what shows at once, was not hidden.
    for what in ["aphids", "white grubs", "hail"] {
        assert_eq!(stands(&sister("2026-04-13", what), TODAY, "cof-9"), "open", "{what}");
    }
    // A look too early tells nothing; one after the hidden days frees them.
    let mut book = sister("2026-04-11", "fusarium");
    let look = |what: &str| json!({"tray":"cof-9","what":what,"share_pct":0,"plants_seen":30,"roots_seen":true});
    book.write("2026-05-08", "pest_seen", look("fusarium"));
    assert_eq!(stands(&book, "2026-05-08", "cof-9"), "held");
    book.write("2026-05-09", "pest_seen", look("fusarium"));
    assert_eq!(stands(&book, "2026-05-09", "cof-9"), "open");
    // So little came, and it spreads in the soil: as from a tray that is known to be sick.
    let mut little = three_trays();
    moved(&mut little, "2026-04-13", ("cof-2", "cof-1"), 2);
    seen(&mut little, "2026-04-14", json!({"tray":"cof-2"}), "nematodes", Some(20.0));
    assert_eq!(stands(&little, TODAY, "cof-1"), "held");
}

#[test]
fn sisters_are_held_through_a_third_tray_and_in_both_halves_of_one_tray() {
    let mut third = three_trays();
    moved(&mut third, "2026-04-08", ("cof-2", "cof-9"), 30);
    moved(&mut third, "2026-04-10", ("cof-9", "cof-1"), 20);
    third.write("2026-04-11", "carried", json!({"tray":"cof-1","place":"Corner"}));
    seen(&mut third, "2026-04-14", json!({"tray":"cof-2"}), "bacterial wilt", Some(20.0));
    assert_eq!((stands(&third, TODAY, "cof-9"), stands(&third, TODAY, "cof-1")), ("held", "held"));
    assert!(told(&third, "cof-1", En).contains("20 of these came out of cof-2"));
    // In several goes: the last of them parted last, and a look tells so many days after that.
    let mut goes = three_trays();
    moved(&mut goes, "2026-04-11", ("cof-2", "cof-9"), 10);
    moved(&mut goes, "2026-04-13", ("cof-2", "cof-9"), 20);
    seen(&mut goes, "2026-04-14", json!({"tray":"cof-2"}), "bacterial wilt", Some(20.0));
    let said = told(&goes, "cof-9", En);
    assert!(said.contains("30 of these came out of cof-2") && said.contains("11 May 2026"), "{said}");
    // Two halves: what came out of it is sick, and what stayed or went elsewhere is held.
    let mut halves = three_trays();
    moved(&mut halves, "2026-04-08", ("cof-2", "cof-9"), 24);
    moved(&mut halves, "2026-04-09", ("cof-2", "cof-8"), 10);
    seen(&mut halves, "2026-04-14", json!({"tray":"cof-9"}), "bacterial wilt", Some(20.0));
    assert_eq!((stands(&halves, TODAY, "cof-2"), stands(&halves, TODAY, "cof-8")), ("held", "held"));
    let said = told(&halves, "cof-2", En);
    assert!(said.contains("in one tray with those of cof-9 until 8 Apr 2026"), "{said}");
    assert!(told(&halves, "cof-2", Es).contains("en una misma bandeja con las de cof-9"));
    // Of a tray that stood before nobody knows whose sickness it is: beside alone.
    let mut mixed = three_trays();
    moved(&mut mixed, "2026-04-08", ("cof-2", "cof-3"), 20);
    seen(&mut mixed, "2026-04-14", json!({"tray":"cof-3"}), "bacterial wilt", Some(20.0));
    assert_eq!(stands(&mixed, TODAY, "cof-2"), "care");
}

#[test]
fn sisters_written_late_or_settled_by_a_word_are_read_so_and_what_was_seen_before_comes_along_as_ever() {
    let mut late = three_trays();
    seen(&mut late, "2026-04-14", json!({"tray":"cof-2"}), "crown gall", Some(4.0));
    assert_eq!(stands(&late, TODAY, "cof-1"), "care");
    moved(&mut late, "2026-04-12", ("cof-2", "cof-1"), 30);
    assert_eq!(stands(&late, TODAY, "cof-1"), "held");
    culled(&mut late, "2026-04-14", 2);
    // A name that nobody knows, and then that it goes along with no plant.
    let mut word = three_trays();
    moved(&mut word, "2026-04-12", ("cof-2", "cof-1"), 30);
    seen(&mut word, "2026-04-14", json!({"tray":"cof-2"}), "kwisha disease", Some(4.0));
    assert_eq!(stands(&word, TODAY, "cof-1"), "held");
    word.write(TODAY, "pest_seen", json!({"tray":"cof-2","what":"kwisha disease","spreads":false}));
    assert_ne!(stands(&word, TODAY, "cof-1"), "held");
    // What was seen before they left, as before.
    let mut known = three_trays();
    seen(&mut known, "2026-04-10", json!({"tray":"cof-2"}), "nematodes", Some(4.0));
    moved(&mut known, "2026-04-12", ("cof-2", "cof-1"), 30);
    assert_eq!(stands(&known, TODAY, "cof-1"), "held");
    assert!(!told(&known, "cof-1", En).contains("came out of"));
}

#[test]
fn a_bed_takes_care_of_plants_whose_sisters_are_sick() {
    let mut book = three_trays();
    moved(&mut book, "2026-04-05", ("cof-2", "cof-9"), 30);
    book.write("2026-04-08", "outplanted", json!({"tray":"cof-9","bed":"Upper 1","count":12}));
    let asked = |book: &Book| {
        let picture = book.on(TODAY);
        bed_species(&picture, "Upper 1", "COA").criteria.iter().find(|asked| asked.rule() == Rule::Pest).cloned()
    };
    assert!(asked(&book).is_none());
    seen(&mut book, "2026-04-14", json!({"tray":"cof-2"}), "mosaic virus", Some(10.0));
    let care = asked(&book).unwrap();
    let said = Wording::new(En).reason(&care, About::Bed);
    assert!(!care.blocks && said.contains("12 plants from cof-2"), "{said}");
    // One half was planted, and the other is sick.
    let mut halves = three_trays();
    moved(&mut halves, "2026-04-05", ("cof-2", "cof-9"), 24);
    halves.write("2026-04-08", "outplanted", json!({"tray":"cof-2","bed":"Upper 1","count":12}));
    assert!(asked(&halves).is_none());
    seen(&mut halves, "2026-04-14", json!({"tray":"cof-9"}), "mosaic virus", Some(10.0));
    let care = asked(&halves).unwrap();
    let said = Wording::new(En).reason(&care, About::Bed);
    assert!(
        !care.blocks && said.contains("12 plants from cof-2, which had stood in one tray with those of cof-9"),
        "{said}"
    );
    assert!(Wording::new(Es).reason(&care, About::Bed).contains("en una misma bandeja con las de cof-9"));
}

#[test]
fn plants_of_a_dying_tray_that_are_moved_on_are_told_of_when_it_is_written() {
    let home = Home::default().begun();
    home.write("place_set", &["place=line", "order=1", "shade_pct=30"]);
    for code in ["tray=mor-1", "tray=mor-2"] {
        let came = [code, "species=moringa", "count=40", "from=bought", "form=bag", "container=bag", "place=line"];
        home.write("plants_received", &came);
    }
    home.write("lost", &["tray=mor-1", "count=12", "cause=unknown"]);
    let words = ["moved_on", "from=mor-1", "to=mor-2", "count=20", "how=merged"];
    let said = home.done(&[&["write", "--yes"][..], &words].concat());
    assert!(said.contains("plants of mor-1 go into mor-2, and what holds them back goes along: by"), "{said}");
    // And on from there.
    let words = ["moved_on", "from=mor-2", "to=mor-3", "count=50", "how=potted_on", "--lang", "es"];
    let said = home.done(&[&["write", "--yes"][..], &words].concat());
    assert!(said.contains("de estas salieron de mor-1"), "{said}");
    // A sister of a sick tray as that tray itself.
    home.write("pest_seen", &["tray=mor-1", "what=bacterial wilt", "share_pct=20", "spreads=true"]);
    let words = ["moved_on", "from=mor-3", "to=mor-4", "count=20", "how=potted_on"];
    let said = home.done(&[&["write", "--yes"][..], &words].concat());
    assert!(said.contains("take care: bacterial wilt is not settled in mor-3"), "{said}");
}

/// An honest nursery: pricked out, potted on and merged, with what every tray loses.
#[test]
fn honest_moves_between_healthy_trays_hold_nothing() {
    let mut book = three_trays();
    for (on, code, standing, dead) in
        [("2026-03-20", "cof-2", 47, 1), ("2026-04-03", "cof-2", 45, 2), ("2026-04-12", "cof-2", 44, 1)]
    {
        counted(&mut book, on, code, standing, dead);
    }
    book.write("2026-04-11", "lost", json!({"tray":"cof-3","count":2,"cause":"unknown"}));
    moved(&mut book, "2026-04-13", ("cof-2", "cof-1"), 20);
    moved(&mut book, "2026-04-13", ("cof-3", "cof-1"), 20);
    moved(&mut book, "2026-04-14", ("cof-2", "cof-9"), 20);
    for code in ["cof-1", "cof-2", "cof-3", "cof-9"] {
        assert_eq!(stands(&book, TODAY, code), "open", "{code}: {}", told(&book, code, En));
    }
    // The runts that were left when the good ones were potted on die, and are no word on those.
    let mut runts = three_trays();
    moved(&mut runts, "2026-04-10", ("cof-2", "cof-9"), 44);
    counted(&mut runts, "2026-04-14", "cof-2", 2, 2);
    assert_eq!(["cof-2", "cof-9", "cof-1"].map(|code| stands(&runts, TODAY, code)), ["held", "open", "open"]);
    // What was asked about and answered before they were moved.
    let mut answered = three_trays();
    counted(&mut answered, "2026-03-20", "cof-2", 36, 12);
    counted(&mut answered, "2026-04-10", "cof-2", 36, 0);
    moved(&mut answered, "2026-04-13", ("cof-2", "cof-1"), 36);
    assert_eq!(stands(&answered, TODAY, "cof-1"), "open");
}
