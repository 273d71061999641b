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
    let stands = |place: &str, depth_cm: u32| {
        let read = soil(&bed(&[at(place, depth_cm)]));
        (read.met(), read.blocks, read.warns)
    };
    // The hole for a bag of 23 cm is 28 cm deep: 22 cm beneath it make 50.
    for (place, depth_cm) in [("beneath", 21), ("beneath", 12), ("beside", 45), ("beside", 10)] {
        assert_eq!(stands(place, depth_cm), (Some(false), false, true), "{place} {depth_cm}");
    }
    assert_eq!((stands("beneath", 22).0, stands("beside", 50).0), (Some(true), Some(true)));
}

#[test]
fn a_hole_that_roots_can_hardly_leave_holds_back() {
    // 28 + 11 cm are under 40; beside it less than a hand's breadth.
    for (place, depth_cm) in [("beneath", 11), ("beneath", 4), ("beside", 9), ("beside", 4)] {
        let pot = soil(&dug(bed(&[at(place, depth_cm)]), "2026-03-20"));
        assert_eq!((pot.met(), pot.blocks), (Some(false), true), "{place} {depth_cm}");
        assert!(said(&pot).contains("pot in hard ground"), "{}", said(&pot));
    }
    let beneath = said(&soil(&bed(&[at("beneath", 8)])));
    assert!(beneath.contains("8 cm under the bottom") && beneath.contains("a hole taken as 28 cm"), "{beneath}");
}

#[test]
fn ground_that_stops_roots_holds_back_around_a_hole_too() {
    let read = |mpa: f64| json!({"resistance_mpa":mpa,"depth_cm":30,"wet":true,"where":"beneath"});
    let stands = |look: Value| soil(&dug(bed(&[look]), "2026-03-20")).blocks;
    assert!(stands(read(4.0)) && !stands(read(3.9)));
    // 40 kg on 8 mm are 7.8 MPa: what stopped that beneath a hole is rock to a root.
    let mut forced = rod(40, 15);
    forced["where"] = json!("beneath");
    assert!(stands(forced));
}

#[test]
fn ground_read_soft_while_it_was_soaked_makes_no_bed_ready() {
    let soft = |rain_mm: f64, days: Option<f64>| {
        let mut look = rod(10, 40);
        if let Some(days) = days {
            look["days_since_soaking"] = json!(days);
        }
        let mut book = bed(&[look]);
        book.write("2026-03-31", "weather", json!({"rain_mm":rain_mm}));
        soil(&book)
    };
    assert_eq!(soft(19.0, None).met(), Some(true));
    for soaked in [soft(20.0, None), soft(0.0, Some(0.0)), soft(0.0, Some(1.0))] {
        assert_eq!((soaked.met(), soaked.blocks), (None, true));
        assert!(said(&soaked).contains("soaked ground reads soft"), "{}", said(&soaked));
    }
    assert_eq!(soft(0.0, Some(2.0)).met(), Some(true));
    // What is hard when soaked is hard, and an older look of drained ground still tells.
    let mut hard = bed(&[rod(10, 12)]);
    hard.write("2026-04-01", "weather", json!({"rain_mm":40}));
    assert_eq!(soil(&hard).met(), Some(false));
    let mut older = bed(&[rod(10, 40)]);
    older.write("2026-04-10", "weather", json!({"rain_mm":40}));
    let mut look = rod(10, 40);
    look["bed"] = json!("B");
    older.write("2026-04-10", "soil_checked", look);
    assert_eq!(soil(&older).met(), Some(true));
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

/// A bed for coffee in its rains, with these lines of the gauge up to 15 April.
fn rained(mm: [f64; 4]) -> Criterion {
    let mut book = bed(&[]);
    for (on, mm) in ["2026-04-12", "2026-04-13", "2026-04-14", TODAY].into_iter().zip(mm) {
        book.write(on, "weather", json!({"rain_mm":mm}));
    }
    criterion(&bed_species(&book.on(TODAY), "B", "COA").criteria, Rule::Water).clone()
}

#[test]
fn ground_that_stands_full_of_water_holds_back_until_it_has_drained() {
    let stands = |mm: [f64; 4]| {
        let water = rained(mm);
        (water.met(), water.blocks, water.expected.map(|on| on.to_string()))
    };
    let until = |on: &str| (Some(false), true, Some(on.to_string()));
    // Two days, and a day more for each further 100 mm: 350 mm drain in four.
    assert_eq!(stands([0.0, 0.0, 200.0, 150.0]), until("2026-04-19"));
    assert_eq!(stands([0.0, 200.0, 150.0, 0.0]), until("2026-04-18"));
    assert_eq!(stands([200.0, 150.0, 0.0, 0.0]), until("2026-04-17"));
    // 100 mm in two days drown it, 99 do not.
    assert_eq!(stands([0.0, 0.0, 60.0, 40.0]), until("2026-04-17"));
    assert_eq!(stands([0.0, 0.0, 60.0, 39.0]), (Some(true), false, None));
    assert!(said(&rained([0.0, 0.0, 200.0, 150.0])).contains("350 mm of rain fell by 15 Apr 2026 in two days"));
    let mut book = crate::support::fitting();
    assert!(crate::support::pair(&book.on(TODAY), "cof-1", "Upper 1").fits);
    let mut flooded = book.clone();
    flooded.write(TODAY, "weather", json!({"rain_mm":250}));
    assert!(!crate::support::pair(&flooded.on(TODAY), "cof-1", "Upper 1").fits);
    book.write(TODAY, "weather", json!({"rain_mm":120}));
    let picture = book.on(TODAY);
    assert!(!crate::support::pair(&picture, "cof-1", "Upper 1").fits);
    let standing = bed_species(&picture, "Upper 1", "COA").standing;
    assert_eq!(standing, outplant::reckon::picture::Standing::Soaked, "and is not called dry");
}

#[test]
fn ground_that_was_full_of_water_lately_asks_for_a_look_and_is_not_called_dry() {
    // 100 mm on the 12th and 13th have drained by the 15th; a look is asked for to the 16th.
    let drained = rained([60.0, 40.0, 0.0, 0.0]);
    assert_eq!((drained.met(), drained.blocks, drained.warns), (Some(true), false, true));
    assert!(said(&drained).contains("look whether water stands in the holes"), "{}", said(&drained));
    let on = |day: &str, mm: f64| {
        let mut book = bed(&[]);
        for (on, mm) in [("2026-04-13", mm), ("2026-04-14", 0.0), ("2026-04-15", 0.0), ("2026-04-16", 0.0)] {
            book.write(on, "weather", json!({"rain_mm":mm}));
        }
        for on in ["2026-04-17", "2026-04-18", "2026-04-19", "2026-04-20"] {
            book.write(on, "weather", json!({"rain_mm":0}));
        }
        let water = criterion(&bed_species(&book.on(day), "B", "COA").criteria, Rule::Water).clone();
        (water.met(), water.blocks, water.warns)
    };
    // Two days after 250 mm the ground is still full, and looked at for three days more.
    assert_eq!(on("2026-04-15", 250.0), (Some(false), true, false));
    assert_eq!(on("2026-04-16", 250.0), (Some(true), false, true));
    assert_eq!(on("2026-04-18", 250.0), (Some(true), false, true));
    assert_eq!(on("2026-04-19", 250.0), (Some(false), true, false), "then it is dry");
}

#[test]
fn clay_drains_slowly_and_sand_in_a_day() {
    let on_soil = |texture: &str| {
        let mut book = bed(&[]);
        book.write("2025-01-01", "field_set", json!({"field":"Upper","texture":texture}));
        book.write("2026-04-13", "weather", json!({"rain_mm":0}));
        book.write("2026-04-14", "weather", json!({"rain_mm":120}));
        book.write("2026-04-15", "weather", json!({"rain_mm":0}));
        criterion(&bed_species(&book.on(TODAY), "B", "COA").criteria, Rule::Water).expected.map(|on| on.to_string())
    };
    for (texture, until) in
        [("clay", "18"), ("arcilla pesada", "18"), ("clay loam", "16"), ("franco", "16"), ("black", "16")]
    {
        assert_eq!(on_soil(texture), Some(format!("2026-04-{until}")), "{texture}");
    }
    assert_eq!(on_soil("sand"), None, "drained, and looked at");
}

#[test]
fn soft_ground_that_is_deep_enough_only_with_an_unwritten_hole_asks_for_its_depth() {
    // 22 cm under a hole as deep as a bag of 23 cm needs, 28 cm, make 50.
    let taken = soil(&dug(bed(&[at("beneath", 22)]), "2026-03-20"));
    assert_eq!((taken.met(), taken.blocks, taken.warns), (Some(true), false, true));
    assert!(said(&taken).contains("nobody wrote how deep the hole is"), "{}", said(&taken));
    let read = bed(&[json!({"resistance_mpa":1.2,"depth_cm":22,"where":"beneath","wet":true})]);
    let read = soil(&dug(read, "2026-03-20"));
    assert_eq!((read.met(), read.warns), (Some(true), true));
    let mut written = bed(&[at("beneath", 22)]);
    written.write("2026-03-20", "prepared", json!({"bed":"B","task":"holes","depth_cm":28}));
    assert!(!soil(&written).warns, "{}", said(&soil(&written)));
    assert!(!soil(&dug(bed(&[at("beneath", 50)]), "2026-03-20")).warns, "deep enough without any hole");
}

#[test]
fn rain_short_by_no_more_than_a_gauge_errs_asks_for_care_as_no_gauge_does() {
    let stands = |mm: f64| {
        let water = rained([0.0, 0.0, 0.0, mm]);
        (water.met(), water.blocks, water.warns)
    };
    assert_eq!(stands(20.0), (Some(true), false, false));
    assert_eq!(stands(19.0), (Some(false), false, true));
    assert_eq!(stands(18.0), (Some(false), false, true));
    assert_eq!(stands(17.9), (Some(false), true, false));
    let near = said(&rained([0.0, 0.0, 0.0, 19.0]));
    assert!(near.contains("19 mm") && near.contains("a gauge errs") && near.contains("finger"), "{near}");
}

#[test]
fn soft_but_soaked_around_a_dug_hole_asks_for_care_as_hard_ground_there_does() {
    let mut soaked = dug(bed(&[rod(10, 40)]), "2026-03-25");
    soaked.write("2026-03-31", "weather", json!({"rain_mm":40}));
    let stands = soil(&soaked);
    assert_eq!((stands.met(), stands.blocks, stands.warns), (None, false, true));
    assert!(said(&stands).contains("soaked ground reads soft"), "{}", said(&stands));
}

#[test]
fn a_hole_whose_depth_nobody_wrote_is_said_so_and_a_written_one_counts() {
    // 12 cm beneath a hole as deep as a bag of 23 cm needs, 28 cm, are 40: with care. A hole of 25 cm makes 37, a pot.
    let taken = soil(&dug(bed(&[at("beneath", 12)]), "2026-03-20"));
    assert!(
        !taken.blocks && said(&taken).contains("28 cm, as its ball needs: nobody wrote its depth"),
        "{}",
        said(&taken)
    );
    let mut written = bed(&[at("beneath", 12)]);
    written.write("2026-03-20", "prepared", json!({"bed":"B","task":"holes","depth_cm":25}));
    assert!(
        soil(&written).blocks && said(&soil(&written)).contains("37 cm deep with the hole"),
        "{}",
        said(&soil(&written))
    );
    written.write("2026-03-21", "prepared", json!({"bed":"B","task":"holes","depth_cm":40}));
    assert_eq!(soil(&written).met(), Some(true), "40 and 12 cm are more than 50");
    // Of a species whose container nobody knows the hole is not known either.
    let mut book = small_nursery();
    let plan = json!([{"species":"Markhamia lutea","pattern":"square","row_m":2,"in_row_m":2}]);
    book.write("2025-01-01", "species_set", json!({"species":"Markhamia lutea","profile":{}}));
    book.write("2025-01-01", "bed_set", json!({"bed":"B","field":"Upper","length_m":20,"width_m":6,"plan":plan}));
    let mut look = at("beneath", 22);
    look["bed"] = json!("B");
    book.write("2026-04-01", "soil_checked", look);
    let unknown = criterion(&bed_species(&book.on(TODAY), "B", "Markhamia lutea").criteria, Rule::Soil).clone();
    assert_eq!((unknown.met(), unknown.blocks, unknown.warns), (Some(false), false, true));
    let text = said(&unknown);
    assert!(text.contains("nobody wrote how deep the hole is") && !text.contains("30 cm"), "{text}");
}

#[test]
fn a_rod_forced_with_forty_kilograms_proves_nothing_where_it_went_in_and_rock_where_it_stopped() {
    let forced = |place: &str, depth_cm: u32| {
        let mut look = rod(40, depth_cm);
        look["where"] = json!(place);
        soil(&dug(bed(&[look]), "2026-03-20"))
    };
    // 30 cm beneath a hole is past what roots need: pushed so hard it goes into hard ground too.
    let deep = forced("beneath", 30);
    assert_eq!((deep.met(), deep.blocks), (None, true));
    assert!(said(&deep).contains("40 kg on a rod of 8 mm") && said(&deep).contains("about 10 kg"), "{}", said(&deep));
    // Beside it 50 cm are needed: it stopped short under four times the push.
    let stopped = forced("beside", 30);
    assert_eq!((stopped.met(), stopped.blocks), (Some(false), true));
    assert!(said(&stopped).contains("30 cm deep beside the hole"), "{}", said(&stopped));
}

#[test]
fn a_hole_of_a_hands_breadth_is_no_hole() {
    for (depth, met) in [(30, Some(true)), (15, Some(true)), (10, Some(false)), (5, Some(false))] {
        let mut book = bed(&[]);
        book.write("2026-04-05", "prepared", json!({"bed":"B","task":"holes","depth_cm":depth}));
        let holes = criterion(&bed_species(&book.on(TODAY), "B", "COA").criteria, Rule::Holes).clone();
        assert_eq!(holes.met(), met, "{depth} cm");
    }
}

#[test]
fn nobody_digs_or_weeds_in_ground_that_stands_full_of_water() {
    use outplant::nursery::entry::subject::Subject;
    let at_bed = |book: &Book| {
        let round = outplant::reckon::round::round(&book.on(TODAY));
        let all = round.stops.iter().chain(&round.can_wait);
        all.filter(|stop| matches!(&stop.subject, Subject::Bed(name) if name.as_str() == "B")).count()
    };
    let mut book = bed(&[]);
    crate::support::ready_coffee(&mut book, "cof-1");
    book.write("2026-04-01", "light_read", json!({"bed":"B","light_share":0.6}));
    assert!(at_bed(&book) > 0, "there is work to be done");
    book.write("2026-04-15", "weather", json!({"rain_mm":250}));
    assert_eq!(at_bed(&book), 0);
}
