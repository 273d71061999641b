//! A pest that would be carried into the field is not offered until a later look settles it.

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
    seen(&mut book, "2026-04-01", json!({"bed":"Upper 1"}), "leaf cutters", Some(15.0));
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

#[test]
fn nematodes_are_gone_by_no_look_alone_and_by_one_after_plants_were_culled_or_treated() {
    let seen_then_none = [("2026-04-01", "nematodes", Some(60.0)), ("2026-04-08", "nematodes", Some(0.0))];
    assert!(stands(&seen_then_none).0);
    for (kind, body) in [
        ("culled", json!({"tray":"cof-1","count":5,"why":"nematodes"})),
        ("treated", json!({"tray":"cof-1","with":"hot water","safe_after_days":1})),
    ] {
        let mut book = with(&seen_then_none);
        book.write("2026-04-09", kind, body.clone());
        assert!(asked(&book).blocks, "{kind} after the look");
        let mut book = with(&seen_then_none);
        book.write("2026-04-04", kind, body);
        assert!(!asked(&book).blocks, "{kind} between");
    }
}

#[test]
fn a_bed_with_nematodes_takes_nothing_until_a_look_or_a_treatment() {
    let nematodes = || {
        let mut book = fitting();
        seen(&mut book, "2026-04-01", json!({"bed":"Upper 1"}), "nematodes", Some(80.0));
        book
    };
    let fits = |book: &Book| pair(&book.on(TODAY), "cof-1", "Upper 1").fits;
    assert!(!fits(&nematodes()));
    let mut looked = nematodes();
    seen(&mut looked, "2026-04-10", json!({"bed":"Upper 1"}), "nematodes", Some(0.0));
    assert!(fits(&looked));
    let mut treated = nematodes();
    treated.write("2026-04-08", "treated", json!({"bed":"Upper 1","with":"marigold, turned in","safe_after_days":1}));
    assert!(fits(&treated));
}
