//! The ground: a dug hole is a hole, and what counts then is the ground beneath and beside it.

use outplant::reckon::picture::{Criterion, Gap, Rule};
use outplant::wording::verdict::About;
use outplant::wording::{Lang, Wording};
use serde_json::{Value, json};

use crate::support::{Book, bed_species, criterion, fitting, open_bed, pair, ready_coffee, small_nursery};

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
fn a_rod_pushed_too_hard_is_not_called_too_weak_where_holes_are_dug() {
    for (push_kg, depth_cm) in [(12, 30), (15, 30), (20, 45), (25, 30), (40, 45)] {
        for book in [bed(&[rod(push_kg, depth_cm)]), dug(bed(&[rod(push_kg, depth_cm)]), "2026-04-05")] {
            let read = soil(&book);
            let gap = read.gap();
            assert!(matches!(gap, Some(Gap::RodTooHard { .. })), "{push_kg} kg, {depth_cm} cm: {gap:?}");
            assert!(said(&read).contains("so hard a push"), "{}", said(&read));
        }
    }
    // Truly weak: 6 kg on this rod are half the limit.
    let weak = soil(&bed(&[rod(6, 12)]));
    assert!(matches!(weak.gap(), Some(Gap::RodTooWeak { .. })), "{}", said(&weak));
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
    for (depth, met) in [(30, Some(true)), (10, Some(false)), (5, Some(false))] {
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

/// The bed that cof-1 fits, in which 30 plants of coffee stand already.
fn planted(on: &str) -> Book {
    let mut book = fitting();
    book.write(on, "plants_found", json!({"bed":"Upper 1","species":"COA","alive":30}));
    book
}

fn lost(book: &mut Book, on: &str, count: u32, cause: &str) {
    book.write(on, "plants_lost", json!({"bed":"Upper 1","species":"COA","count":count,"cause":cause}));
}

fn lives(book: &mut Book, on: &str, alive: u32, dead: u32, causes: Option<&str>) {
    let mut body = json!({"bed":"Upper 1","species":"COA","alive":alive,"dead":dead});
    if let Some(causes) = causes {
        body["causes"] = json!(causes);
    }
    book.write(on, "survival_counted", body);
}

fn takes_plants(book: &Book) -> bool {
    pair(&book.on(TODAY), "cof-1", "Upper 1").fits
}

/// What is said of sicknesses of the bed, in both languages.
fn said_of_pest(book: &Book, on: &str) -> [String; 2] {
    let picture = book.on(on);
    let asked = criterion(&bed_species(&picture, "Upper 1", "COA").criteria, Rule::Pest).clone();
    [Lang::En, Lang::Es].map(|lang| Wording::new(lang).reason(&asked, About::Bed))
}

fn on_the_round(book: &Book, on: &str) -> bool {
    let round = outplant::reckon::round::round(&book.on(on));
    round.stops.iter().chain(&round.can_wait).any(|stop| stop.id == "sick Upper 1")
}

#[test]
fn a_bed_whose_plants_died_of_a_sickness_of_the_soil_or_one_that_spreads_takes_no_more() {
    for cause in
        ["fusarium wilt", "nematodes", "marchitez", "bacterial wilt", "collar rot", "died of root rot", "virus"]
    {
        let mut book = planted("2026-01-10");
        lost(&mut book, "2026-04-10", 6, cause);
        assert!(!takes_plants(&book), "{cause}");
        let mut counted = planted("2026-01-10");
        lives(&mut counted, "2026-04-10", 24, 6, Some(cause));
        assert!(!takes_plants(&counted), "{cause}");
    }
}

#[test]
fn what_leaves_no_sickness_behind_holds_no_bed_back() {
    for cause in [
        "drought",
        "wilted, no rain",
        "slugs",
        "cut by the mower",
        "planted deep",
        "died",
        "roots dried out in the sun",
        "se secaron",
        "fuego",
    ] {
        let mut book = planted("2026-01-10");
        lost(&mut book, "2026-04-10", 6, cause);
        assert!(takes_plants(&book), "{cause}");
    }
    // What eats is there still where it took many.
    for cause in ["cattle", "ganado", "zompopos"] {
        for (count, takes) in [(2, true), (6, false)] {
            let mut book = planted("2026-01-10");
            lost(&mut book, "2026-04-10", count, cause);
            assert_eq!(takes_plants(&book), takes, "{count} {cause}");
        }
    }
    // Of grubs few ask for care, and a later count that names none is enough.
    let mut grubs = planted("2026-01-10");
    lives(&mut grubs, "2026-02-10", 25, 5, Some("grubs"));
    assert!(!takes_plants(&grubs));
    lives(&mut grubs, "2026-04-10", 24, 6, Some("slashed in weeding"));
    assert!(takes_plants(&grubs));
}

#[test]
fn where_most_of_a_bed_died_of_nobody_knows_what_the_cause_is_looked_for_first() {
    let unknown = || {
        let mut book = planted("2026-01-10");
        lost(&mut book, "2026-03-25", 6, "died");
        lives(&mut book, "2026-03-26", 5, 25, None);
        book
    };
    let [en, es] = said_of_pest(&unknown(), TODAY);
    assert!(!takes_plants(&unknown()) && on_the_round(&unknown(), TODAY));
    assert!(en.contains("look for the cause first") && en.contains("9 Apr 2026"), "{en}");
    assert!(es.contains("primero busque la causa"), "{es}");
    let mut few = planted("2026-01-10");
    lives(&mut few, "2026-03-26", 20, 10, None);
    assert!(takes_plants(&few), "some always die");
    let mut named = planted("2026-01-10");
    lost(&mut named, "2026-03-25", 25, "drought");
    lives(&mut named, "2026-03-26", 5, 25, None);
    assert!(takes_plants(&named), "the loss said of what");
    let answers: [&dyn Fn(&mut Book); 3] = [
        &|book| drop(book.write(TODAY, "pest_seen", json!({"bed":"Upper 1","what":"none"}))),
        &|book| lives(book, TODAY, 5, 25, Some("drought")),
        &|book| lives(book, TODAY, 5, 0, None),
    ];
    for answer in answers {
        let mut book = unknown();
        answer(&mut book);
        assert!(takes_plants(&book) && !on_the_round(&book, TODAY));
    }
    let mut sick = unknown();
    lives(&mut sick, TODAY, 5, 25, Some("fusarium"));
    assert!(!takes_plants(&sick));
}

#[test]
fn nematodes_in_a_bed_are_gone_once_as_many_as_had_them_are_out_and_roots_grown_there_show_none() {
    let mut book = planted("2026-01-05");
    book.write("2026-02-01", "pest_seen", json!({"bed":"Upper 1","what":"nematodes","share_pct":20}));
    lost(&mut book, "2026-02-03", 1, "nematodes");
    let [en, es] = said_of_pest(&book, TODAY);
    assert!(en.contains("at least 6 (1 so far)") && es.contains("al menos 6 (1 hasta hoy)"), "{en} / {es}");
    assert!(on_the_round(&book, TODAY));
    lost(&mut book, "2026-02-05", 5, "dug out");
    let [en, _] = said_of_pest(&book, TODAY);
    // Of very many 14 find one of 20 %, with a chance of 95 %: 0.8^13 = 0.055, 0.8^14 = 0.044.
    assert!(en.contains("lift 14 plants"), "{en}");
    book.write("2026-04-10", "pest_seen", json!({"bed":"Upper 1","what":"nematodes","share_pct":0}));
    assert!(!takes_plants(&book), "galls are not seen by a look from above");
    let look = json!({"bed":"Upper 1","what":"nematodes","share_pct":0,"plants_seen":14,"roots_seen":true});
    book.write("2026-04-11", "pest_seen", look);
    assert!(takes_plants(&book));
}

#[test]
fn ground_in_which_a_wilt_keeps_unseen_rests_a_year_before_a_look_is_believed() {
    for what in ["bacterial wilt", "fusarium wilt", "ralstonia", "armillaria"] {
        let mut book = planted("2025-02-01");
        book.write("2025-03-01", "pest_seen", json!({"bed":"Upper 1","what":what,"share_pct":20}));
        lost(&mut book, "2025-03-05", 6, &format!("{what}, dug out"));
        let [en, es] = said_of_pest(&book, "2025-06-01");
        assert!(en.contains("rest until 5 March 2026") || en.contains("rest until 5 Mar 2026"), "{en}");
        assert!(es.contains("deje descansar"), "{es}");
        book.write("2025-06-01", "pest_seen", json!({"bed":"Upper 1","what":what,"share_pct":0}));
        assert!(!takes_plants(&book), "{what}: one look clears nothing");
        book.write("2026-04-01", "pest_seen", json!({"bed":"Upper 1","what":what,"share_pct":0}));
        assert!(takes_plants(&book), "{what}");
    }
}

#[test]
fn a_rot_of_which_few_died_is_answered_by_a_later_count_of_those_that_stand() {
    let mut book = planted("2026-01-05");
    lost(&mut book, "2026-02-01", 3, "collar rot");
    lives(&mut book, "2026-02-10", 27, 3, None);
    assert!(!takes_plants(&book), "nine days tell nothing");
    let mut worse = planted("2026-01-05");
    lost(&mut worse, "2026-02-01", 3, "collar rot");
    lives(&mut worse, "2026-04-10", 20, 10, None);
    assert!(!takes_plants(&worse), "more died since, and nobody wrote of what");
    lives(&mut book, "2026-04-10", 27, 3, None);
    assert!(takes_plants(&book));
}

/// The bed with 10 plants of a tray in which a sickness was seen.
fn brought(seen: &str, what: &str, out: &str) -> Book {
    let mut book = fitting();
    ready_coffee(&mut book, "cof-2");
    // Beside no other tray, for those are looked at too.
    book.write("2026-02-21", "carried", json!({"tray":"cof-2","place":"Corner"}));
    book.write(seen, "pest_seen", json!({"tray":"cof-2","what":what,"share_pct":5}));
    book.write(out, "outplanted", json!({"tray":"cof-2","bed":"Upper 1","count":10}));
    book
}

#[test]
fn a_bed_with_plants_from_a_tray_with_a_wilt_takes_no_more_until_they_are_looked_at() {
    for what in ["bacterial wilt", "nematodes", "root rot"] {
        let mut book = brought("2026-03-20", what, "2026-04-01");
        let [en, es] = said_of_pest(&book, TODAY);
        assert!(en.contains("before you plant more") && es.contains("antes de plantar más"), "{en} / {es}");
        assert!(!takes_plants(&book) && on_the_round(&book, TODAY), "{what}");
        let going = outplant::reckon::round::round(&book.on(TODAY));
        assert!(!going.stops.iter().any(|stop| stop.task == outplant::reckon::round::Task::GoOut), "{what}");
        let look = json!({"bed":"Upper 1","what":what,"share_pct":0,"plants_seen":10,"roots_seen":true});
        book.write("2026-04-14", "pest_seen", look.clone());
        assert!(!takes_plants(&book), "{what}: it shows late");
    }
}

#[test]
fn plants_from_a_sick_tray_ask_for_care_and_a_look_where_they_stand() {
    for (seen, out) in [("2026-03-20", "2026-04-01"), ("2026-04-10", "2026-03-24")] {
        for what in ["mosaic virus", "witches' broom", "swollen virus"] {
            let mut book = brought(seen, what, out);
            let warns = |book: &Book, on: &str| {
                let picture = book.on(on);
                pair(&picture, "cof-1", "Upper 1").criteria.iter().any(|one| one.rule() == Rule::Pest && one.warns)
            };
            let [en, es] = said_of_pest(&book, TODAY);
            assert!(en.contains("10 plants from cof-2") && es.contains("10 plantas de cof-2"), "{en} / {es}");
            assert!(takes_plants(&book) && warns(&book, TODAY) && on_the_round(&book, TODAY), "{what}");
            let look = json!({"bed":"Upper 1","what":what,"share_pct":0,"plants_seen":10});
            book.write(TODAY, "pest_seen", look.clone());
            assert!(warns(&book, TODAY) && !on_the_round(&book, TODAY), "{what}: it shows late");
            assert!(on_the_round(&book, "2026-05-09"));
            book.write("2026-05-09", "pest_seen", look);
            assert!(!warns(&book, "2026-05-09") && !on_the_round(&book, "2026-05-09"), "{what}");
        }
    }
    // Months later it came from elsewhere.
    let late = brought("2026-04-10", "nematodes", "2026-01-20");
    let picture = late.on(TODAY);
    assert!(bed_species(&picture, "Upper 1", "COA").criteria.iter().all(|one| one.rule() != Rule::Pest));
}

#[test]
fn a_bed_with_animals_of_the_soil_comes_after_every_healthy_one() {
    let mut book = fitting();
    open_bed(&mut book, "Upper 2");
    book.write("2026-03-01", "pest_seen", json!({"bed":"Upper 1","what":"white grubs","share_pct":8}));
    let round = outplant::reckon::round::round(&book.on(TODAY));
    let beds: Vec<String> = round.stops.iter().filter_map(|stop| stop.bed()).map(ToString::to_string).collect();
    assert!(beds.contains(&"Upper 2".to_string()) && beds.last().is_some_and(|last| last == "Upper 1"), "{beds:?}");
    let first = beds.iter().position(|bed| bed == "Upper 1").unwrap();
    assert!(beds[first..].iter().all(|bed| bed == "Upper 1"), "{beds:?}");
}

#[test]
fn a_cleared_bed_that_was_weeded_whole_since_counts_as_cleared() {
    let cleared = |work: &[(&str, &str, Option<&str>)]| {
        let mut book = small_nursery();
        open_bed(&mut book, "Upper 1");
        // The clearing of open_bed is of another bed here.
        let plan = json!([{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]);
        book.write("2025-01-01", "bed_set", json!({"bed":"B","field":"Upper","length_m":20,"width_m":6,"plan":plan}));
        for (on, task, rows) in work {
            let mut body = json!({"bed":"B","task":task});
            if let Some(rows) = rows {
                body["rows"] = json!(rows);
            }
            book.write(on, "prepared", body);
        }
        criterion(&bed_species(&book.on(TODAY), "B", "COA").criteria, Rule::Cleared).met()
    };
    let old = ("2026-01-10", "cleared", None);
    assert_eq!(cleared(&[old]), Some(false), "95 days ago");
    assert_eq!(cleared(&[old, ("2026-04-05", "weeded", None)]), Some(true));
    assert_eq!(cleared(&[old, ("2026-04-05", "weeded", Some("1-2"))]), Some(false), "a few rows only");
    assert_eq!(cleared(&[("2026-04-05", "weeded", None)]), Some(false), "nobody ever cleared it");
    assert_eq!(
        cleared(&[("2025-08-01", "cleared", None), ("2026-04-05", "weeded", None)]),
        Some(false),
        "brush by then"
    );
}

/// Ready coffee, and a bed of 8 m width for it whose light and soil are right and in which nothing was done.
fn bare_low(length_m: u32) -> Book {
    let mut book = crate::support::fitting();
    let plan = json!([{"species":"COA","pattern":"square","row_m":2,"in_row_m":2}]);
    let set = json!({"bed":"Low","field":"Upper","length_m":length_m,"width_m":8,"plan":plan});
    book.write("2025-01-01", "bed_set", set);
    book.write("2026-04-01", "light_read", json!({"bed":"Low","light_share":0.6}));
    book.write("2026-04-01", "soil_checked", json!({"bed":"Low","resistance_mpa":1.2,"depth_cm":30,"wet":true}));
    book
}

/// How many of the tray can go there.
fn go_to_low(book: &Book) -> u32 {
    let pair = crate::support::pair(&book.on("2026-04-15"), "cof-1", "Low").clone();
    if pair.fits { pair.plants } else { 0 }
}

#[test]
fn where_only_some_rows_are_dug_no_more_go_than_those_rows_hold() {
    let go = |rows: &[&str]| {
        let mut book = bare_low(20);
        for task in ["cleared", "weeded", "mulched"] {
            book.write("2026-04-05", "prepared", json!({"bed":"Low","task":task}));
        }
        for (i, rows) in rows.iter().enumerate() {
            book.write(&format!("2026-04-0{}", 6 + i), "prepared", json!({"bed":"Low","task":"holes","rows":rows}));
        }
        go_to_low(&book)
    };
    // A row of 20 m at 2 m holds 11.
    let one = go(&["1"]);
    assert!((9..=11).contains(&one), "{one}");
    assert_eq!(go(&["[1]"]), one, "as a program writes it");
    assert_eq!(go(&["1", "2"]), 2 * one, "rows dug on two days are two rows");
    assert_eq!(go(&["1 2"]), 2 * one);
    assert!(go(&["1-3"]) > 2 * one);
    assert!(go(&["the upper ones"]) > 2 * one, "nobody knows which those are");
    assert_eq!(go(&["3-1"]), go(&["1-3"]));
    assert_eq!(go(&["1 to 3"]), go(&["1-3"]));
}

#[test]
fn a_place_is_ready_where_all_its_work_was_done_and_nothing_lives_on_it() {
    let go = |work: &[(&str, serde_json::Value)], planted: Option<serde_json::Value>| {
        let mut book = bare_low(8);
        for (task, part) in work {
            let mut done = json!({"bed":"Low","task":task});
            done.as_object_mut().unwrap().extend(part.as_object().unwrap().clone());
            book.write("2026-04-06", "prepared", done);
        }
        if let Some(part) = planted {
            crate::support::ready_coffee(&mut book, "cof-5");
            let mut out = json!({"tray":"cof-5","bed":"Low","count":5});
            out.as_object_mut().unwrap().extend(part.as_object().unwrap().clone());
            book.write("2026-04-12", "outplanted", out);
        }
        go_to_low(&book)
    };
    let whole = json!({});
    let rows = |rows: &str| json!({ "rows": rows });
    // Five rows of five.
    assert_eq!(go(&[("cleared", whole.clone()), ("holes", rows("1")), ("weeded", rows("2"))], None), 0);
    assert_eq!(go(&[("cleared", rows("1-2")), ("holes", rows("2-3")), ("weeded", rows("2"))], None), 5);
    let spots = json!({"at":["4.5","4.4"]});
    let dug = [("cleared", whole.clone()), ("weeded", whole.clone()), ("holes", spots)];
    assert_eq!((go(&dug, None), go(&dug, Some(rows("4")))), (2, 0));
}
