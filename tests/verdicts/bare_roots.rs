//! Bare roots: which species live from them, and how long they keep.

use crate::support::{Book, criterion, small_nursery, tray};
use outplant::reckon::picture::{Basis, Criterion, Gap, Rule};
use outplant::wording::verdict::About;
use outplant::wording::{Lang, Wording};
use serde_json::json;

const TODAY: &str = "2026-04-15";

/// Plants that came bare-rooted the day before, good until a day.
fn came(species: &str, form: &str, good_until: Option<&str>) -> Book {
    let mut book = small_nursery();
    let mut body = json!({"tray":"t-1","species":species,"count":40,"from":"wildling","form":form,"height_cm":40});
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
        let came = json!({"tray":"t-1","species":"coffee","count":40,"from":"wildling","form":"bare_root",
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
