//! What holds a tray follows its plants into the bed: what was seen on its bench, in nurse trays, and what nurse plants died of.

use super::{TODAY, bed_fits, fitting, seen, tasks_at};
use crate::support::program::Home;
use crate::support::{Book, bed_species, criterion, ready_coffee, tray};
use outplant::reckon::picture::{Criterion, Rule};
use outplant::wording::Lang::{En, Es};
use outplant::wording::Wording;
use outplant::wording::verdict::About;
use serde_json::json;

/// Ready coffee in two trays on Half shade, of which the second goes out.
fn two_trays() -> Book {
    let mut book = fitting();
    ready_coffee(&mut book, "cof-2");
    book
}

fn out(book: &mut Book, on: &str) {
    book.write(on, "outplanted", json!({"tray":"cof-2","bed":"Upper 1","count":4}));
}

fn of_bed(book: &Book, rule: Rule) -> Option<Criterion> {
    let picture = book.on(TODAY);
    let criteria = &bed_species(&picture, "Upper 1", "COA").criteria;
    criteria.iter().find(|criterion| criterion.rule() == rule).cloned()
}

fn told(book: &Book) -> [String; 2] {
    [En, Es].map(|lang| Wording::new(lang).reason(&of_bed(book, Rule::Pest).unwrap(), About::Bed))
}

#[test]
fn a_sickness_seen_on_a_bench_goes_with_the_plants_that_stood_there_into_the_bed() {
    for (what, holds) in
        [("nematodes", true), ("root rot", true), ("fusarium wilt", true), ("marchitez", false), ("damping-off", false)]
    {
        let mut book = two_trays();
        seen(&mut book, "2026-04-12", json!({"place":"Half shade"}), what, Some(5.0));
        out(&mut book, "2026-04-13");
        let asked = of_bed(&book, Rule::Pest).unwrap_or_else(|| panic!("{what}"));
        assert_eq!((asked.blocks, asked.warns), (holds, !holds), "{what}");
        assert!(tasks_at(&book, TODAY, "Upper 1").contains(&"sick".to_string()), "{what}");
    }
    let mut book = two_trays();
    seen(&mut book, "2026-04-12", json!({"place":"Half shade"}), "nematodes", Some(5.0));
    out(&mut book, "2026-04-13");
    let [english, spanish] = told(&book);
    assert!(
        english.contains("4 plants from cof-2, which stood at Half shade when nematodes was seen there"),
        "{english}"
    );
    assert!(spanish.contains("4 plantas de cof-2, que estaban en Half shade"), "{spanish}");
    // Written late, it counts from its own day.
    let mut book = two_trays();
    out(&mut book, "2026-04-13");
    seen(&mut book, "2026-04-12", json!({"place":"Half shade"}), "nematodes", Some(5.0));
    assert!(of_bed(&book, Rule::Pest).unwrap().blocks);
}

#[test]
fn a_bench_that_was_clean_while_the_plants_stood_there_says_nothing_of_their_bed() {
    let clean = |book: &Book| of_bed(book, Rule::Pest).is_none();
    // Seen before they came, or after they left of what shows at once or a month later, or what flies on.
    for (on, what, left) in [
        ("2026-02-10", "nematodes", "2026-04-13"),
        ("2026-04-14", "damping-off", "2026-04-13"),
        ("2026-04-14", "nematodes", "2026-03-16"),
        ("2026-04-14", "root rot", "2026-03-30"),
        ("2026-04-12", "aphids", "2026-04-13"),
        ("2026-04-14", "leaf spot", "2026-04-13"),
    ] {
        let mut book = two_trays();
        seen(&mut book, on, json!({"place":"Half shade"}), what, Some(5.0));
        out(&mut book, left);
        assert!(clean(&book), "{what} on {on}");
    }
    // A look at the bench, or at these plants, found it gone before they went.
    for of in [json!({"place":"Half shade"}), json!({"tray":"cof-2"})] {
        let mut book = two_trays();
        seen(&mut book, "2026-03-01", json!({"place":"Half shade"}), "nematodes", Some(5.0));
        seen(&mut book, "2026-04-10", of.clone(), "nematodes", Some(0.0));
        out(&mut book, "2026-04-13");
        assert!(clean(&book), "{of}");
    }
}

#[test]
fn what_hides_in_plants_reaches_back_to_those_that_left_the_bench_before_it_was_seen() {
    for (on, what, left, holds) in [
        ("2026-04-14", "nematodes", "2026-04-13", true),
        ("2026-04-14", "nematodes", "2026-03-17", true),
        ("2026-04-14", "root rot", "2026-03-31", true),
        ("2026-04-14", "virus", "2026-04-13", false),
    ] {
        let mut book = two_trays();
        out(&mut book, left);
        assert!(of_bed(&book, Rule::Pest).is_none());
        seen(&mut book, on, json!({"place":"Half shade"}), what, Some(5.0));
        let asked = of_bed(&book, Rule::Pest).unwrap_or_else(|| panic!("{what} {left}"));
        assert_eq!((asked.blocks, asked.warns), (holds, !holds), "{what} {left}");
        assert!(tasks_at(&book, TODAY, "Upper 1").contains(&"sick".to_string()), "{what}");
    }
    let mut book = two_trays();
    out(&mut book, "2026-04-13");
    seen(&mut book, "2026-04-14", json!({"place":"Half shade"}), "nematodes", Some(5.0));
    let [english, spanish] = told(&book);
    assert!(english.contains("which stood at Half shade until 13 Apr 2026; nematodes was seen there"), "{english}");
    assert!(spanish.contains("que estuvieron en Half shade hasta el 13 abr 2026"), "{spanish}");
    // Who stood there for some days only is not held.
    let mut short = fitting();
    short.write("2026-04-08", "carried", json!({"tray":"cof-1","place":"Deep shade"}));
    short.write("2026-04-12", "outplanted", json!({"tray":"cof-1","bed":"Upper 1","count":4}));
    seen(&mut short, "2026-04-14", json!({"place":"Deep shade"}), "nematodes", Some(5.0));
    assert!(of_bed(&short, Rule::Pest).is_none());
}

#[test]
fn a_tray_carried_off_a_bench_before_a_sickness_was_seen_there_waits_for_a_look_at_its_own_plants() {
    let carried = |what: &str, on: &str| {
        let mut book = fitting();
        book.write("2025-01-01", "place_set", json!({"place":"Rack","order":3,"shade_pct":45}));
        book.write(on, "carried", json!({"tray":"cof-1","place":"Rack"}));
        seen(&mut book, "2026-04-14", json!({"place":"Half shade"}), what, Some(10.0));
        book
    };
    let held = |book: &Book, on: &str| {
        let picture = book.on(on);
        criterion(&tray(&picture, "cof-1").criteria, Rule::Pest).clone()
    };
    for what in ["bacterial wilt", "nematodes", "virus"] {
        let mut book = carried(what, "2026-04-12");
        let asked = held(&book, TODAY);
        assert!(asked.blocks, "{what}");
        let [english, spanish] = [En, Es].map(|lang| Wording::new(lang).reason(&asked, About::Tray));
        assert!(english.contains("at Half shade, where these plants stood until 12 Apr 2026"), "{english}");
        assert!(spanish.contains("en Half shade, donde estas plantas estuvieron hasta el 12 abr 2026"), "{spanish}");
        // A look tells 28 days after they left it.
        let look = json!({"tray":"cof-1","what":what,"share_pct":0,"plants_seen":48,"roots_seen":true});
        book.write("2026-05-09", "pest_seen", look.clone());
        assert!(held(&book, "2026-05-09").blocks, "{what}: a day early");
        book.write("2026-05-10", "pest_seen", look);
        assert!(!held(&book, "2026-05-10").blocks, "{what}");
    }
    for (what, on) in [("leaf spot", "2026-04-12"), ("aphids", "2026-04-12"), ("bacterial wilt", "2026-03-16")] {
        assert!(!held(&carried(what, on), TODAY).blocks, "{what} {on}");
    }
}

#[test]
fn a_tray_of_nurse_plants_brings_its_sprays_its_bench_and_its_sicknesses_like_any_other() {
    let suckers = |book: &mut Book| {
        let came = json!({"tray":"ban-1","species":"banana","count":20,"from":"bought","form":"bag","age_days":60,
            "container":"bag","place":"Half shade"});
        book.write("2026-04-01", "plants_received", came);
    };
    for row in [json!({}), json!({"row_m":3,"in_row_m":2})] {
        let set = |book: &mut Book| {
            let mut body = row.clone();
            body["tray"] = json!("ban-1");
            body["bed"] = json!("Upper 1");
            body["count"] = json!(10);
            book.write("2026-04-13", "outplanted", body);
        };
        for of in [json!({"tray":"ban-1"}), json!({"place":"Half shade"})] {
            let mut sprayed = fitting();
            suckers(&mut sprayed);
            let mut body = of.clone();
            body["with"] = json!("chlorpyrifos");
            body["safe_after_days"] = json!(20);
            sprayed.write("2026-04-12", "treated", body);
            set(&mut sprayed);
            let asked = of_bed(&sprayed, Rule::Treated).unwrap_or_else(|| panic!("{of} {row}"));
            assert!(asked.blocks, "{of} {row}");
            let mut sick = fitting();
            suckers(&mut sick);
            seen(&mut sick, "2026-04-12", of.clone(), "nematodes", Some(10.0));
            set(&mut sick);
            assert!(of_bed(&sick, Rule::Pest).is_some_and(|asked| asked.blocks), "{of} {row}");
        }
        let mut clean = fitting();
        suckers(&mut clean);
        set(&mut clean);
        assert!(of_bed(&clean, Rule::Pest).is_none() && of_bed(&clean, Rule::Treated).is_none(), "{row}");
    }
}

/// Bananas in the bed, and a count of those that live.
fn counted(alive: u32, cause: Option<&str>) -> Book {
    let mut book = fitting();
    book.write(
        "2026-01-05",
        "nurse_planted",
        json!({"bed":"Upper 1","nurse":"banana","count":30,"row_m":3,"in_row_m":2}),
    );
    book.write("2026-03-20", "light_read", json!({"bed":"Upper 1","light_share":0.6}));
    let mut body = json!({"bed":"Upper 1","nurse":"banana","alive":alive});
    if let Some(cause) = cause {
        body["cause"] = json!(cause);
    }
    book.write("2026-03-20", "nurse_counted", body);
    book
}

#[test]
fn what_nurse_plants_died_of_holds_their_bed_as_what_planted_ones_died_of_does() {
    for cause in ["nematodes", "root rot", "fusarium wilt", "marchitez"] {
        assert!(!bed_fits(&counted(20, Some(cause))), "{cause}");
        assert!(!bed_fits(&counted(30, Some(cause))), "{cause}: none fewer by the books, and one at least died of it");
    }
    for cause in [None, Some("wind"), Some("storm"), Some("Panama disease")] {
        assert!(bed_fits(&counted(20, cause)), "{cause:?}: it holds nothing of coffee");
    }
    // A few rows tell of it too.
    let mut rows = counted(30, None);
    let part = json!({"bed":"Upper 1","nurse":"banana","alive":8,"cause":"nematodes","rows":"1-2"});
    rows.write("2026-04-02", "nurse_counted", part);
    assert!(!bed_fits(&rows));
}

#[test]
fn a_sickness_that_only_nurse_plants_get_is_told_where_their_bed_is_asked_about() {
    for about in ["tray=ban-1", "place=Bench 3"] {
        let home = Home::default().begun();
        home.write("place_set", &["place=Bench 3", "order=1", "shade_pct=50"]);
        let plan = r#"plan=[{"species":"coffee","pattern":"square","row_m":2,"in_row_m":2}]"#;
        home.write("bed_set", &["bed=Upper 1", "field=Home", "length_m=20", "width_m=6", plan]);
        let came = ["species=banana", "count=40", "from=opening", "form=bag", "container=bag", "place=Bench 3"];
        home.write("plants_received", &[&["tray=ban-1"], &came[..], &["happened=2026-01-01"]].concat());
        let told = |lang: &str| home.done(&["why", "bed", "Upper 1", "--lang", lang]);
        home.write("pest_seen", &[about, "what=bunchy top", "share_pct=10", "happened=2026-04-08"]);
        assert!(!told("en").contains("bunchy top"));
        let out = ["tray=ban-1", "bed=Upper 1", "count=20", "row_m=4", "in_row_m=4", "happened=2026-04-10"];
        home.write("outplanted", &out);
        for (lang, said) in
            [("en", "- Sick plants: set out here: 20 plants"), ("es", "- Plantas enfermas: plantadas aqu")]
        {
            assert_eq!(told(lang).matches(said).count(), 1, "{about}: {}", told(lang));
        }
        // It harms no coffee, and holds none back.
        assert!(!told("en").contains("x pest or sickness"), "{about}");
    }
}
