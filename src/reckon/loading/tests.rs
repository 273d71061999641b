//! Sums of the loading list, what misses least, and what becomes ready, worked by hand.

use serde_json::{Value, json};

use super::*;
use crate::base::{BedName, TrayCode};
use crate::reckon::picture::Picture;
use crate::reckon::test_book::TestBook;

const ON: &str = "2026-04-10";

/// Two beds of coffee with 8 positions each, one ready and one without holes; bought coffee in two trays.
fn nursery() -> TestBook {
    let mut page = TestBook::default();
    page.write("2026-01-01", "season_set", json!({"rains":[{"from":"03-15","until":"06-10"}]}));
    for name in ["Upper terrace", "Lower terrace"] {
        let plan = json!([{"species":"coffee","pattern":"square","row_m":2,"in_row_m":2}]);
        page.write(
            "2025-01-05",
            "bed_set",
            json!({"bed":name,"field":"Old maize","length_m":6,"width_m":2,"plan":plan}),
        );
        for task in ["cleared", "weeded"] {
            page.write("2026-04-01", "prepared", json!({"bed":name,"task":task}));
        }
        page.write("2026-04-01", "light_read", json!({"bed":name,"light_share":0.6}));
        page.write("2026-04-01", "soil_checked", json!({"bed":name,"resistance_mpa":1.4,"wet":true}));
    }
    page.write("2026-04-01", "prepared", json!({"bed":"Upper terrace","task":"holes"}));
    for (rained, rain_mm) in [("2026-04-08", 9.0), ("2026-04-09", 0.0), ("2026-04-10", 11.0)] {
        page.write(rained, "weather", json!({"rain_mm":rain_mm}));
    }
    for (tray, count) in [("cof-001", 10), ("cof-002", 8)] {
        page.write(
            "2026-04-09",
            "plants_received",
            json!({"tray":tray,"species":"coffee","count":count,"from":"bought","form":"bare_root",
                "good_until":"2026-04-14","shade_now_pct":50,"height_cm":30}),
        );
    }
    page
}

fn line(tray: &str, bed: &str, plants: u32) -> LoadLine {
    LoadLine { tray: TrayCode::new(tray).unwrap(), bed: BedName::new(bed).unwrap(), plants }
}

fn left(picture: &Picture, lines: &[LoadLine], tray: &str, bed: &str) -> u32 {
    left_to_load(picture, lines, &TrayCode::new(tray).unwrap(), &BedName::new(bed).unwrap())
}

#[test]
fn what_fits_comes_first_and_each_other_tray_has_the_bed_it_misses_least() {
    let mut page = nursery();
    let fields = |tray: &str| json!({"tray":tray,"why":"promised"});
    let picture = page.whole(ON);
    let said = |picture: &Picture| -> Vec<String> {
        let word = |offer: &Offer| match offer {
            Offer::Fits(tray, pair) => format!("{} fits {}", tray.code, pair.bed),
            Offer::Misses(tray, pair) => format!("{} misses {}", tray.code, pair.bed),
            Offer::NoBed(tray) => format!("{} has none", tray.code),
        };
        offers(picture).iter().map(word).collect()
    };
    assert_eq!(said(&picture), ["cof-001 fits Upper terrace", "cof-002 fits Upper terrace"]);
    page.write("2026-04-09", "held", fields("cof-001"));
    let mango: Value = json!({"tray":"man-001","species":"mango","count":5,"from":"bought","form":"bag"});
    page.write("2026-04-09", "plants_received", mango);
    assert_eq!(
        said(&page.whole(ON)),
        ["cof-002 fits Upper terrace", "cof-001 misses Upper terrace", "man-001 has none"]
    );
}

#[test]
fn a_tray_and_the_places_of_a_bed_are_promised_once() {
    let picture = nursery().whole(ON);
    // Never measured: two of three are reckoned plantable, so 6 of 10 and 5 of 8.
    let alone = |tray| left(&picture, &[], tray, "Upper terrace");
    assert_eq!((alone("cof-001"), alone("cof-002")), (6, 5));
    let lines = [line("cof-001", "Upper terrace", 6)];
    // 8 places less 6; the own line does not count against itself.
    assert_eq!(left(&picture, &lines, "cof-002", "Upper terrace"), 2);
    assert_eq!(left(&picture, &lines, "cof-001", "Upper terrace"), 6);
    assert!(warnings(&picture, &lines).is_empty());
    let lines = [line("cof-001", "Upper terrace", 6), line("cof-002", "Upper terrace", 3)];
    let said = warnings(&picture, &lines);
    assert!(matches!(said.as_slice(), [LoadWarning::BedPromised { listed: 9, open: 8, .. }]), "{said:?}");
    let lines = [line("cof-001", "Upper terrace", 4), line("cof-001", "Lower terrace", 3)];
    let said = warnings(&picture, &lines);
    assert!(
        matches!(
            said.as_slice(),
            [LoadWarning::TrayPromised { listed: 7, plantable: 6, .. }, LoadWarning::FitsNot { .. }]
        ),
        "{said:?}"
    );
    let gone = warnings(&picture, &[line("cof-077", "Upper terrace", 2)]);
    assert!(matches!(gone.as_slice(), [LoadWarning::Gone { .. }]), "{gone:?}");
}

#[test]
fn what_has_a_day_comes_by_weeks_and_what_hangs_on_work_has_none() {
    let mut page = nursery();
    page.write("2026-04-09", "held", json!({"tray":"cof-001","why":"promised","until":"2026-04-13"}));
    page.write("2026-04-09", "held", json!({"tray":"cof-002","why":"promised","until":"2026-09-30"}));
    page.write("2026-04-09", "held", json!({"bed":"Upper terrace","why":"fence","until":"2026-04-26"}));
    let picture = page.whole(ON);
    let word = |one: &Coming| {
        let what = match &one.what {
            Becoming::Tray { tray, .. } => tray.to_string(),
            Becoming::Bed { bed, .. } => bed.to_string(),
        };
        (what, one.week)
    };
    let said: Vec<(String, Option<i32>)> = coming(&picture).iter().map(word).collect();
    // A hold ends with its last day; the second tray's lies beyond eight weeks.
    let wanted = [("cof-001", Some(0)), ("Upper terrace", Some(2)), ("Lower terrace", None)];
    assert_eq!(said, wanted.map(|(what, week)| (what.to_string(), week)));
    for one in coming(&picture) {
        assert!(!one.waits.is_empty(), "{one:?}");
    }
}

#[test]
fn nothing_is_offered_where_there_is_nothing() {
    let picture = TestBook::default().whole(ON);
    assert!(offers(&picture).is_empty() && coming(&picture).is_empty() && warnings(&picture, &[]).is_empty());
}

#[test]
fn a_tray_with_a_pest_goes_after_a_healthy_one() {
    for (sick, healthy) in [("cof-001", "cof-002"), ("cof-002", "cof-001")] {
        let mut page = nursery();
        page.write("2026-04-09", "pest_seen", json!({"tray":sick,"what":"aphids","share_pct":5}));
        let picture = page.whole(ON);
        let first = offers(&picture).first().map(|offer| offer.tray().code.to_string());
        assert_eq!(first.as_deref(), Some(healthy));
        assert_eq!(day_plan(&picture).first().map(|one| one.line.tray.to_string()).as_deref(), Some(healthy));
    }
}
