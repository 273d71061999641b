//! The ground: a dug hole is a hole, and what counts then is the ground beneath and beside it.

use outplant::reckon::picture::{Criterion, Gap, Rule};
use outplant::wording::verdict::About;
use outplant::wording::{Lang, Wording};
use serde_json::{Value, json};

use crate::support::{Book, bed_species, criterion, small_nursery};

const TODAY: &str = "2026-04-15";

/// A bed for coffee, whose bags are 23 cm deep, and looks at its ground on 1 April.
fn bed(looks: &[Value]) -> Book {
    let mut book = small_nursery();
    let plan = json!([{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]);
    book.write("2025-01-01", "bed_set", json!({"bed":"B","field":"Upper","length_m":20,"width_m":6,"plan":plan}));
    for look in looks {
        let mut look = look.clone();
        look["bed"] = json!("B");
        book.write("2026-04-01", "soil_checked", look);
    }
    book
}

fn dug(mut book: Book, on: &str) -> Book {
    book.write(on, "prepared", json!({"bed":"B","task":"holes"}));
    book
}

fn soil(book: &Book) -> Criterion {
    criterion(&bed_species(&book.on(TODAY), "B", "COA").criteria, Rule::Soil).clone()
}

fn rod(push_kg: u32, depth_cm: u32) -> Value {
    json!({"rod_mm":8,"push_kg":push_kg,"depth_cm":depth_cm,"wet":true})
}

fn at(place: &str, depth_cm: u32) -> Value {
    let mut look = rod(10, depth_cm);
    look["where"] = json!(place);
    look
}

fn said(criterion: &Criterion) -> String {
    Wording::new(Lang::En).reason(criterion, About::Bed)
}

#[test]
fn hard_ground_holds_back_where_nobody_dug_and_asks_for_care_around_a_dug_hole() {
    let hard = bed(&[rod(10, 12)]);
    assert_eq!((soil(&hard).met(), soil(&hard).blocks), (Some(false), true));
    assert!(said(&soil(&hard)).contains("tubers first"), "{}", said(&soil(&hard)));
    let hole = soil(&dug(hard.clone(), "2026-04-05"));
    assert_eq!((hole.met(), hole.blocks, hole.warns), (Some(false), false, true));
    assert!(said(&hole).contains("half their speed"), "{}", said(&hole));
    // A hole of 200 days ago has fallen in: 180 days count.
    assert!(soil(&dug(bed(&[rod(10, 12)]), "2025-09-27")).blocks);
}

#[test]
fn around_a_hole_the_rod_goes_half_a_metre_and_elsewhere_as_deep_as_the_bag() {
    assert_eq!(soil(&bed(&[rod(10, 30)])).met(), Some(true));
    assert_eq!(soil(&bed(&[at("undug", 30)])).met(), Some(true));
    for place in ["beneath", "beside"] {
        let short = soil(&bed(&[at(place, 45)]));
        assert_eq!((short.met(), short.blocks, short.warns), (Some(false), false, true), "{place}");
        assert_eq!(soil(&bed(&[at(place, 50)])).met(), Some(true), "{place}");
    }
}

#[test]
fn a_hole_around_which_nobody_looked_is_unknown_and_says_where_to_push() {
    let unknown = soil(&dug(bed(&[]), "2026-04-05"));
    assert_eq!((unknown.met(), unknown.blocks), (None, true));
    assert!(matches!(unknown.gap(), Some(Gap::AroundHole { depth_cm, .. }) if *depth_cm == 50.0), "{unknown:?}");
    assert!(said(&unknown).contains("10 kg on a rod of 8 mm"), "{}", said(&unknown));
    assert_eq!(soil(&bed(&[])).gap(), None);
}

#[test]
fn a_person_hears_kilograms_on_this_rod_and_no_megapascals() {
    // Body weight goes into anything; 2 MPa are 16 kg on a rod of 10 mm.
    let thick = json!({"rod_mm":10,"push_kg":70,"depth_cm":40,"wet":true});
    let too_hard = said(&soil(&bed(&[thick])));
    assert!(too_hard.contains("70 kg on a rod of 10 mm") && too_hard.contains("about 16 kg"), "{too_hard}");
    for look in [rod(70, 40), rod(5, 12), rod(10, 12), rod(10, 40)] {
        let criterion = soil(&bed(&[look]));
        assert!(!said(&criterion).contains("MPa"), "{}", said(&criterion));
    }
}
