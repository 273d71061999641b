//! Hand-worked cases of every rule of a bed, written as the grower writes them.

use serde_json::{Value, json};
use std::sync::Arc;

use super::{season, standing};
use crate::base::SpeciesKey;
use crate::nursery::entry::types::{GroundTask, Tubers};
use crate::nursery::species::Profile;
use crate::reckon::picture::{Basis, Criterion, Gap, Looking, Measure, PartSeen, Rule, Source, Standing};
use crate::reckon::test_book::{TestBook, day, picture_of};
use crate::reckon::tray::exposure::light_band;

const ON: &str = "2026-04-10";

fn line(species: &str, pattern: &str, row_m: f64, in_row_m: f64) -> Value {
    json!({"species": species, "pattern": pattern, "row_m": row_m, "in_row_m": in_row_m})
}

fn lay_out(page: &mut TestBook, on: &str, plan: Value) {
    page.write(on, "bed_set", bed(json!({"field":"Old maize","length_m":30,"width_m":12,"plan":plan})));
}

/// A bed of coffee: 5 rows of 16.
fn coffee_bed() -> TestBook {
    let mut page = TestBook::default();
    lay_out(&mut page, "2026-01-05", json!([line("coffee", "rectangle", 2.5, 2.0)]));
    page
}

fn bed(mut fields: Value) -> Value {
    fields["bed"] = json!("Upper terrace");
    fields
}

/// Everything done, soft, wet, in the rains and at 60 % of the light (the band of coffee is 50 to 70 %).
fn ready_bed() -> TestBook {
    let mut page = coffee_bed();
    page.write("2026-01-01", "season_set", json!({"rains":[{"from":"03-15","until":"06-10"}]}));
    for task in ["cleared", "holes", "weeded"] {
        page.write("2026-04-01", "prepared", bed(json!({"task":task})));
    }
    page.write("2026-04-01", "light_read", bed(json!({"light_share":0.6})));
    page.write("2026-04-01", "soil_checked", bed(json!({"resistance_mpa":1.4,"wet":true})));
    for (rained, rain_mm) in [("2026-04-08", 9.0), ("2026-04-09", 0.0), ("2026-04-10", 11.0)] {
        page.write(rained, "weather", json!({"rain_mm":rain_mm}));
    }
    page
}

fn planted(page: &mut TestBook, on: &str, tray: &str, count: u32) {
    let fields = json!({"tray":tray,"species":"coffee","count":count,"from":"bought","form":"bag"});
    page.write(on, "plants_received", fields);
    page.write(on, "outplanted", bed(json!({"tray":tray,"count":count})));
}

fn nurse(page: &mut TestBook, on: &str, nurse: &str, count: u32) {
    page.write(on, "nurse_planted", bed(json!({"nurse":nurse,"count":count,"row_m":2,"in_row_m":2})));
}

/// Positions, living and open positions of each species of a plan.
fn numbers(page: &TestBook) -> Vec<(String, u32, u32, u32)> {
    let of = |one: &crate::reckon::picture::BedSpecies| {
        (one.species.to_string(), one.positions, one.living, one.open_positions)
    };
    page.picture(ON).species.iter().map(of).collect()
}

#[test]
fn a_grid_counts_both_edges_and_what_is_blocked_is_no_place() {
    let mut page = coffee_bed();
    // 12/2.5 = 4.8: 5 rows; 30/2 = 15: 16 places.
    page.write("2026-02-01", "positions_blocked", bed(json!({"at":["2.7","5.16","9.9"],"why":"rock"})));
    planted(&mut page, "2026-03-01", "cof-001", 30);
    nurse(&mut page, "2026-03-01", "banana", 12);
    // 2.7 and 5.16 are of the grid, 9.9 is not.
    assert_eq!(numbers(&page), [("COA".into(), 80, 30, 48)]);
    // A triangle of 3 m: rows 2.598 m apart, 12/2.598 = 4.6: 5 rows; 11 and, shifted by 1.5 m, 10 places: 3x11 + 2x10.
    let mut other = TestBook::default();
    lay_out(&mut other, "2026-01-05", json!([line("grevillea", "triangle", 2.598, 3.0)]));
    assert_eq!(numbers(&other), [("GRE".into(), 53, 0, 53)]);
}

#[test]
fn a_spot_that_two_species_share_is_counted_once_and_the_wider_spaced_has_it() {
    // Coffee 2 x 2 m with timber 10 x 10 m on 20 x 10 m. With both edges 6 rows of 11 and 2 rows of 3, which all meet;
    // half a spacing inside 5 rows of 10 and 2 trees at 5 and 15 m, on coffee spots too.
    let plan = json!([line("coffee", "square", 2.0, 2.0), line("grevillea", "square", 10.0, 10.0)]);
    let of = |edges: Value, plan: &Value| {
        let mut page = TestBook::default();
        let mut set = bed(json!({"field":"Old maize","length_m":20,"width_m":10,"plan":plan}));
        if !edges.is_null() {
            set["edges"] = edges;
        }
        page.write("2026-01-05", "bed_set", set);
        page
    };
    assert_eq!(numbers(&of(json!(null), &plan)), [("COA".into(), 60, 0, 60), ("GRE".into(), 6, 0, 6)]);
    assert_eq!(numbers(&of(json!("counted"), &plan)), numbers(&of(json!(null), &plan)));
    assert_eq!(numbers(&of(json!("half"), &plan)), [("COA".into(), 48, 0, 48), ("GRE".into(), 2, 0, 2)]);
    // The other keeps its spots where that is said.
    let mut kept = plan.clone();
    kept[0]["keeps_spot"] = json!(true);
    assert_eq!(numbers(&of(json!("half"), &kept)), [("COA".into(), 50, 0, 50), ("GRE".into(), 0, 0, 0)]);
    // Timber between the coffee: half a coffee spacing aside every spot is its own.
    let mut aside = plan.clone();
    aside[1]["offset_m"] = json!(1.0);
    assert_eq!(numbers(&of(json!("half"), &aside)), [("COA".into(), 50, 0, 50), ("GRE".into(), 2, 0, 2)]);
    // What stood there before keeps its place: 66 living coffees leave none of the six spots of the timber open.
    let mut old = of(json!(null), &plan);
    planted(&mut old, "2026-03-01", "cof-001", 66);
    assert_eq!(numbers(&old), [("COA".into(), 60, 66, 0), ("GRE".into(), 6, 0, 0)]);
    assert_eq!(old.story(ON).0.doubts, []);
}

#[test]
fn a_species_may_have_some_rows_or_a_share_of_its_grid() {
    let of = |more: Value| {
        let mut page = TestBook::default();
        let mut line = line("coffee", "square", 2.0, 2.0);
        line.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
        let set = json!({"field":"Old maize","length_m":20,"width_m":14,"edges":"half","plan":[line]});
        page.write("2026-01-05", "bed_set", bed(set));
        numbers(&page)[0].1
    };
    // 7 rows of 10.
    assert_eq!(of(json!({})), 70);
    assert_eq!(of(json!({"rows":"1-3,7"})), 40);
    assert_eq!(of(json!({"rows":"every 3"})), 30, "rows 1, 4 and 7");
    assert_eq!(of(json!({"rows":"cada 2"})), 40);
    assert_eq!(of(json!({"share":0.3})), 21);
    assert_eq!(of(json!({"share":0.5,"rows":"1-3"})), 15);
    assert_eq!(of(json!({"row_offset_m":3.0})), 60, "rows at 4, 6 ... 14 m, the seventh would be at 16");
}

#[test]
fn a_plan_for_more_plants_than_any_bed_has_gives_no_positions() {
    let mut page = TestBook::default();
    lay_out(&mut page, "2026-01-05", json!([line("coffee", "square", 0.001, 0.001)]));
    let coffee = page.first(ON);
    assert_eq!((coffee.positions, coffee.open_positions), (0, 0));
    assert!(page.asked(ON, Rule::OpenPositions).blocks);
}

#[test]
fn more_living_than_positions_leave_none_open() {
    let mut page = coffee_bed();
    planted(&mut page, "2026-03-01", "cof-001", 95);
    assert_eq!((page.first(ON).living, page.first(ON).open_positions), (95, 0));
}

#[test]
fn a_nurse_species_in_the_plan_takes_the_positions_of_its_own_grid() {
    let mut page = TestBook::default();
    let plan = [line("banana", "square", 3.0, 3.0), line("coffee", "rectangle", 2.5, 2.0)];
    lay_out(&mut page, "2026-01-05", json!(plan));
    nurse(&mut page, "2026-03-01", "banana", 12);
    let open: Vec<u32> = page.picture(ON).species.iter().map(|species| species.open_positions).collect();
    // Bananas: 5 rows of 11. Of the coffee 12 spots are nearer than 1 m to one of them: each third place of the rows at 0
    // and 2.5 m, where bananas stand at 0 and 3 m.
    assert_eq!(open, [55 - 12, 80 - 12]);
}

#[test]
fn the_first_layout_reaches_back_and_a_newer_one_leads_from_its_day() {
    let mut page = coffee_bed();
    lay_out(&mut page, "2026-03-01", json!([line("coffee", "rectangle", 3.0, 3.0)]));
    assert_eq!(page.first("2026-02-28").positions, 80);
    assert_eq!(page.first("2026-03-01").positions, 55);
    let (story, site) = page.story(ON);
    let early = picture_of(&Arc::new(story), &site, "2025-12-01", Looking::Back);
    assert_eq!(early.species[0].positions, 80);
}

#[test]
fn a_bed_with_everything_done_is_open() {
    let page = ready_bed();
    let coffee = page.first(ON);
    let blocking: Vec<Rule> = coffee.criteria.iter().filter(|c| c.blocks).map(|c| c.rule()).collect();
    assert_eq!(blocking, vec![]);
    assert_eq!((coffee.standing, coffee.open_positions, coffee.in_light), (Standing::Open, 80, 80));
    for criterion in &coffee.criteria {
        assert_ne!(criterion.source, Source::Figure(String::new()), "{:?}", criterion.rule());
        assert_eq!(criterion.met().is_none(), criterion.basis() == Basis::Unknown, "{:?}", criterion.rule());
    }
    let coming = page.asked(ON, Rule::LightComing);
    assert_eq!((coming.met(), coming.blocks), (None, false));
}

#[test]
fn light_must_be_known_and_inside_the_band() {
    let light = |share: f64| {
        let mut page = coffee_bed();
        let read = page.write("2026-04-01", "light_read", bed(json!({"light_share":share})));
        let asked = page.asked(ON, Rule::LightNow);
        assert_eq!(asked.entries, [read]);
        (asked.met(), asked.blocks)
    };
    // Coffee: 30 to 50 % shade, so 50 to 70 % of the light; one reading is worth 10 points either way.
    for inside in [0.41, 0.5, 0.7, 0.79] {
        assert_eq!(light(inside), (Some(true), false), "{inside}");
    }
    for outside in [0.39, 0.81, 1.0, 0.0] {
        assert_eq!(light(outside), (Some(false), true), "{outside}");
    }
    let unknown = coffee_bed().asked(ON, Rule::LightNow);
    assert_eq!((unknown.met(), unknown.blocks, unknown.basis()), (None, true, Basis::Unknown));
    let Some(Measure::LightBand { least, most }) = unknown.needed() else { panic!("no band") };
    assert!((least - 0.5).abs() < 1e-9 && (most - 0.7).abs() < 1e-9);
}

#[test]
fn newer_readings_weigh_more_and_old_ones_no_longer_count() {
    let mut page = coffee_bed();
    page.write("2026-03-11", "light_read", bed(json!({"light_share":0.4})));
    let pairs = json!([{"under_lux":6000,"open_lux":10000},{"under_lux":8000,"open_lux":10000}]);
    page.write("2026-04-10", "light_read", bed(json!({"readings":pairs})));
    // 30 days older is half the weight, two pairs are twice that of one: (0.5 x 0.4 + 2 x 0.7) / 2.5 = 0.64.
    let light = page.picture(ON).light_now.unwrap();
    assert!((light.share - 0.64).abs() < 1e-9, "{}", light.share);
    assert_eq!((light.read_on, light.basis, light.entries.len()), (day(ON), Basis::Measured, 2));
    // On 10 May the first is 60 days old and out, the second 30.
    assert!((page.picture("2026-05-10").light_now.unwrap().share - 0.7).abs() < 1e-9);
    assert!(page.picture("2026-06-08").light_now.is_some());
    assert!(page.picture("2026-06-09").light_now.is_none());
    assert_eq!(page.asked("2026-06-09", Rule::LightNow).met(), None);
}

#[test]
fn one_pair_weighs_as_much_as_each_of_eight_and_what_it_contradicts_is_said() {
    let mut page = coffee_bed();
    let pair = |under: u32| json!({"under_lux":under,"open_lux":10000});
    let eight: Vec<_> = (0..8).map(|_| pair(6000)).collect();
    page.write("2026-04-10", "light_read", bed(json!({"readings":eight})));
    assert!(page.picture(ON).light_now.unwrap().apart.is_none());
    page.write("2026-04-10", "light_read", bed(json!({"readings":[pair(3000)]})));
    // (8 x 0.60 + 0.30) / 9 = 0.567; one of each would be 0.45, too dark for coffee.
    let light = page.picture(ON).light_now.unwrap();
    assert!((light.share - 5.1 / 9.0).abs() < 1e-9, "{}", light.share);
    let apart = light.apart.unwrap();
    assert!((apart.low - 0.3).abs() < 1e-9 && (apart.high - 0.6).abs() < 1e-9, "{apart:?}");
    let asked = page.asked(ON, Rule::LightNow);
    assert_eq!((asked.met(), asked.warns), (Some(true), true));
}

#[test]
fn a_reading_before_the_last_felling_no_longer_counts() {
    let mut page = ready_bed();
    nurse(&mut page, "2026-02-01", "pigeon pea", 40);
    page.write("2026-04-02", "nurse_cut", bed(json!({"nurse":"pigeon pea","what":"leaves","share":0.2})));
    assert!(page.picture(ON).light_now.is_some());
    page.write("2026-04-05", "nurse_cut", bed(json!({"nurse":"pigeon pea","what":"felled","count":10})));
    assert!(page.picture("2026-04-04").light_now.is_some());
    assert!(page.picture(ON).light_now.is_none());
    page.write("2026-04-05", "light_read", bed(json!({"light_share":0.7})));
    let light = page.picture(ON).light_now.unwrap();
    assert!((light.share - 0.7).abs() < 1e-9);
    assert_eq!(light.entries.len(), 1);
}

/// What the soil question answers on a day for one look written on 1 April.
fn soil_asked(fields: Value) -> Criterion {
    let mut page = coffee_bed();
    page.write("2026-04-01", "soil_checked", bed(fields));
    let asked = page.asked(ON, Rule::Soil);
    assert_eq!(asked.entries.len(), 1);
    asked
}

fn soil(fields: Value) -> (Option<bool>, Option<Measure>, bool) {
    let asked = soil_asked(fields);
    (asked.met(), asked.known(), asked.blocks)
}

#[test]
fn resistance_counts_at_field_capacity_and_at_planting_depth() {
    let read = |mpa: f64, depth_cm: Option<f64>| Some(Measure::Resistance { mpa, depth_cm });
    assert_eq!(soil(json!({"resistance_mpa":2.0,"wet":true})), (Some(true), read(2.0, None), false));
    assert_eq!(soil(json!({"resistance_mpa":2.1,"days_since_soaking":2})), (Some(false), read(2.1, None), true));
    // Coffee: 23 cm of bag and 5 cm more.
    let at = |mpa: f64, depth_cm: f64| soil(json!({"resistance_mpa":mpa,"wet":true,"depth_cm":depth_cm}));
    assert_eq!(at(1.5, 28.0), (Some(true), read(1.5, Some(28.0)), false));
    assert_eq!(at(1.5, 27.0), (None, None, true));
    assert_eq!(at(2.6, 15.0), (Some(false), read(2.6, Some(15.0)), true));
    let soaked = soil_asked(json!({"resistance_mpa":1.0,"days_since_soaking":1}));
    assert!(matches!(soaked.gap(), Some(Gap::ReadSoaked(_))) && soaked.blocks, "{soaked:?}");
    for dry in [json!({}), json!({"wet":false})] {
        let mut fields = dry;
        fields["resistance_mpa"] = json!(1.0);
        assert_eq!(soil_asked(fields).gap(), Some(&Gap::ReadDry));
    }
    let never = coffee_bed().asked(ON, Rule::Soil);
    assert_eq!((never.met(), never.known(), never.blocks), (None, None, true));
}

#[test]
fn a_rod_proves_ground_as_deep_as_it_went_under_about_ten_kilograms() {
    let rod =
        |push_kg: f64, depth_cm: f64| soil(json!({"rod_mm":8,"push_kg":push_kg,"depth_cm":depth_cm,"wet":true})).0;
    // 10 kg on 8 mm: 1.95 MPa; 70 kg: 13.7 MPa; 5 kg: 0.98 MPa; 12 kg: 2.34 MPa.
    assert_eq!(rod(10.0, 28.0), Some(true));
    assert_eq!(rod(10.0, 20.0), Some(false));
    assert_eq!(rod(70.0, 60.0), None);
    assert_eq!(rod(70.0, 20.0), Some(false));
    assert_eq!(rod(5.0, 30.0), Some(true));
    assert_eq!(rod(5.0, 20.0), None);
    assert_eq!(rod(12.0, 40.0), None);
    let (_, known, _) = soil(json!({"rod_mm":8,"push_kg":10,"depth_cm":35,"wet":true}));
    let Some(Measure::RodStopped { mpa, depth_cm, .. }) = known else { panic!("{known:?}") };
    assert!((mpa - 1.9516).abs() < 1e-4 && (depth_cm - 35.0).abs() < 1e-9);
    let dry = soil_asked(json!({"rod_mm":8,"push_kg":10,"depth_cm":35}));
    assert_eq!((dry.gap(), dry.blocks), (Some(&Gap::ReadDry), true));
}

#[test]
fn the_newest_look_that_tells_something_leads_for_two_years() {
    let mut page = coffee_bed();
    page.write("2026-02-01", "soil_checked", bed(json!({"resistance_mpa":1.2,"wet":true})));
    page.write("2026-03-01", "soil_checked", bed(json!({"tubers":"thin-necked"})));
    let asked = page.asked(ON, Rule::Soil);
    assert_eq!((asked.met(), asked.known()), (Some(false), Some(Measure::TuberShape(Tubers::ThinNecked))));
    page.write("2026-04-01", "soil_checked", bed(json!({"resistance_mpa":0.5})));
    assert_eq!(page.asked(ON, Rule::Soil).met(), Some(false), "a dry reading says nothing");
    page.write("2026-04-02", "soil_checked", bed(json!({"tubers":"full"})));
    assert_eq!(page.asked(ON, Rule::Soil).met(), Some(true));
    // 730 days after 2 April 2026.
    assert_eq!(page.asked("2028-04-01", Rule::Soil).met(), Some(true));
    assert_eq!(page.asked("2028-04-02", Rule::Soil).met(), None);
}

#[test]
fn lifted_tubers_loosen_until_the_ground_is_read_again() {
    let mut page = coffee_bed();
    nurse(&mut page, "2025-06-01", "cassava", 50);
    page.write("2026-02-01", "soil_checked", bed(json!({"resistance_mpa":2.8,"wet":true})));
    let lifted = page.write("2026-03-01", "nurse_cut", bed(json!({"nurse":"yuca","what":"harvest","share":1})));
    let asked = page.asked(ON, Rule::Soil);
    assert_eq!((asked.met(), asked.basis(), asked.warns), (Some(true), Basis::Reckoned, true));
    assert_eq!((asked.known(), asked.entries), (Some(Measure::TubersLifted(40)), vec![lifted]));
    assert_eq!(page.asked("2027-03-01", Rule::Soil).met(), Some(true));
    assert_eq!(page.asked("2027-03-02", Rule::Soil).met(), Some(false), "the reading of February leads again");
    page.write("2026-04-01", "soil_checked", bed(json!({"resistance_mpa":2.2,"wet":true})));
    assert_eq!(page.asked(ON, Rule::Soil).met(), Some(false));
}

#[test]
fn ground_work_not_written_down_is_not_done_and_does_not_last() {
    let mut page = coffee_bed();
    let missing = page.asked(ON, Rule::Holes);
    assert_eq!(
        (missing.needed(), missing.known()),
        (Some(Measure::WorkWithin { task: GroundTask::Holes, days: 180 }), Some(Measure::No))
    );
    assert_eq!(missing.source, Source::GroundWork { lasts_days: 180 });
    assert_eq!((missing.met(), missing.basis(), missing.blocks), (Some(false), Basis::Assumed, true));
    let mulch = page.asked(ON, Rule::Mulched);
    assert_eq!((mulch.met(), mulch.blocks, mulch.warns), (Some(false), false, true));
    for task in ["cleared", "holes", "weeded", "mulched", "fenced"] {
        page.write("2026-01-10", "prepared", bed(json!({"task":task})));
    }
    // The last day it lasts, and how long that is.
    for (rule, lasts_days) in
        [(Rule::Weeded, 30), (Rule::Cleared, 60), (Rule::Mulched, 120), (Rule::Holes, 180), (Rule::Fenced, 730)]
    {
        let last = day("2026-01-10").plus(lasts_days);
        assert_eq!(page.asked(&last.to_string(), rule).met(), Some(true), "{rule:?}");
        let stale = page.asked(&last.plus(1).to_string(), rule);
        assert_eq!((stale.met(), stale.known()), (Some(false), Some(Measure::On(day("2026-01-10")))), "{rule:?}");
        assert_eq!((stale.entries.len(), stale.blocks), (1, !matches!(rule, Rule::Mulched | Rule::Fenced)));
    }
    page.write("2026-04-01", "prepared", bed(json!({"task":"weeded","rows":"1-3"})));
    let part = page.asked(ON, Rule::Weeded);
    assert_eq!((part.met(), part.warns, part.blocks), (Some(true), true, false));
    let rows =
        PartSeen { rows: Some("1-3".into()), places: 0, of_rows: part.part.as_ref().and_then(|part| part.of_rows) };
    assert!(rows.of_rows.is_some_and(|of| of > 3));
    assert_eq!(part.part, Some(rows));
}

fn rained(lines: &[(&str, f64)]) -> TestBook {
    let mut page = coffee_bed();
    page.write("2026-01-01", "season_set", json!({"rains":[{"from":"03-15","until":"06-10"}]}));
    for (on, rain_mm) in lines {
        page.write(on, "weather", json!({"rain_mm":rain_mm}));
    }
    page
}

#[test]
fn a_day_without_a_gauge_line_is_unknown_and_never_dry() {
    let water = |lines: &[(&str, f64)]| {
        let asked = rained(lines).asked(ON, Rule::Water);
        (asked.met(), asked.blocks, asked.basis())
    };
    let all = |mm: f64| water(&[("2026-04-08", 8.0), ("2026-04-09", 0.0), ("2026-04-10", mm)]);
    assert_eq!(all(12.0), (Some(true), false, Basis::Measured));
    assert_eq!(all(9.9), (Some(false), true, Basis::Measured));
    assert_eq!(water(&[("2026-04-09", 20.0)]), (Some(true), false, Basis::Measured));
    assert_eq!(water(&[("2026-04-08", 0.0), ("2026-04-10", 19.0)]), (None, false, Basis::Unknown));
    // Rain four days ago does not count, and a gauge that is read does not fall back on the season.
    assert_eq!(water(&[("2026-04-07", 60.0)]), (None, false, Basis::Unknown));
    assert_eq!(water(&[("2026-04-01", 60.0)]), (None, false, Basis::Unknown));
    assert_eq!(water(&[("2026-03-31", 60.0)]), (Some(true), false, Basis::Assumed));
    assert_eq!(water(&[]), (Some(true), false, Basis::Assumed));
    let outside = rained(&[]).asked("2026-07-10", Rule::Water);
    assert_eq!((outside.met(), outside.blocks, outside.warns), (None, false, true));
}

#[test]
fn on_a_coming_day_nothing_is_called_dry() {
    let lines = [("2026-04-08", 1.0), ("2026-04-09", 1.0), ("2026-04-10", 1.0)];
    let (story, site) = rained(&lines).story(ON);
    let story = Arc::new(story);
    let water = |on: &str, looking: Looking| {
        let coffee = picture_of(&story, &site, on, looking).species.remove(0);
        coffee.criteria.into_iter().find(|criterion| criterion.rule() == Rule::Water).unwrap().met()
    };
    assert_eq!(water("2026-04-10", Looking::Today), Some(false));
    assert_eq!(water("2026-04-11", Looking::Ahead), None);
    assert_eq!(water("2026-04-10", Looking::Ahead), None);
}

#[test]
fn planting_is_safe_until_eight_weeks_or_half_the_season_before_the_rains_end() {
    let page = rained(&[]);
    // 15 March to 10 June: 88 days, half is 44; 10 June less 44 days is 27 April.
    let season = |on: &str| {
        let asked = page.asked(on, Rule::Season);
        (asked.needed(), asked.met(), asked.blocks, asked.expected)
    };
    let until = |written: &str| Some(Measure::Until(day(written)));
    assert_eq!(season("2026-03-15"), (until("2026-04-27"), Some(true), false, None));
    assert_eq!(season("2026-04-27"), (until("2026-04-27"), Some(true), false, None));
    assert_eq!(season("2026-04-28"), (until("2026-04-27"), Some(false), true, Some(day("2027-03-15"))));
    assert_eq!(season("2026-03-14"), (until("2026-04-27"), Some(false), true, Some(day("2026-03-15"))));
    assert_eq!(season("2026-07-01"), (until("2027-04-27"), Some(false), true, Some(day("2027-03-15"))));
    let unset = coffee_bed().asked(ON, Rule::Season);
    assert_eq!((unset.met(), unset.blocks), (None, false));
}

#[test]
fn rains_may_wrap_the_year_and_come_twice() {
    let mut page = coffee_bed();
    let rains = json!({"rains":[{"from":"10-20","until":"02-10"},{"from":"03-15","until":"05-03"}]});
    page.write("2026-01-01", "season_set", rains);
    let season = |on: &str| {
        let asked = page.asked(on, Rule::Season);
        (asked.met(), asked.expected)
    };
    // 20 October to 10 February is 114 days, half 57, so 8 weeks: 10 February less 56 days is 16 December.
    assert_eq!(season("2026-10-19"), (Some(false), Some(day("2026-10-20"))));
    assert_eq!(season("2026-12-16"), (Some(true), None));
    assert_eq!(season("2026-12-17"), (Some(false), Some(day("2027-03-15"))));
    assert_eq!(season("2027-01-20"), (Some(false), Some(day("2027-03-15"))));
    // 15 March to 3 May: 50 days, half 25: 8 April.
    assert_eq!(season("2027-04-08"), (Some(true), None));
    assert_eq!(season("2027-04-09"), (Some(false), Some(day("2027-10-20"))));
}

#[test]
fn rains_all_year_leave_every_day_safe() {
    let mut page = coffee_bed();
    page.write("2026-01-01", "season_set", json!({"rains":[{"from":"01-01","until":"12-31"}]}));
    assert_eq!(page.asked("2026-12-20", Rule::Season).met(), Some(true));
    let (_, site) = page.story(ON);
    assert_eq!(season::rains_on(&site, day("2026-12-31")).unwrap().1.last_safe, day("2026-12-31"));
}

#[test]
fn a_hold_and_a_treatment_block_while_they_are_in_force() {
    let mut page = ready_bed();
    page.write("2026-04-02", "held", bed(json!({"why":"boundary to be walked","until":"2026-04-12"})));
    page.write("2026-04-02", "treated", bed(json!({"with":"neem","safe_after_days":14})));
    page.write("2026-04-03", "treated", bed(json!({"with":"wood ash","safe_after_days":0})));
    let asked = |rule: Rule, on: &str| page.first(on).criteria.into_iter().find(|criterion| criterion.rule() == rule);
    let held = asked(Rule::Held, "2026-04-12").unwrap();
    assert_eq!((held.blocks, held.expected), (true, Some(day("2026-04-13"))));
    assert_eq!(held.known(), Some(Measure::Said("boundary to be walked".into())));
    assert_eq!(asked(Rule::Held, "2026-04-13"), None);
    let treated = asked(Rule::Treated, "2026-04-15").unwrap();
    assert_eq!((treated.blocks, treated.expected), (true, Some(day("2026-04-16"))));
    assert_eq!(asked(Rule::Treated, "2026-04-16"), None);
    page.write("2026-04-05", "released", bed(json!({})));
    assert!(page.first(ON).criteria.iter().all(|criterion| criterion.rule() != Rule::Held));
}

#[test]
fn the_standing_says_what_is_missing() {
    assert_eq!(coffee_bed().first(ON).standing, Standing::Bare);
    let mut nursed = coffee_bed();
    nurse(&mut nursed, "2026-02-01", "castor", 9);
    assert_eq!(nursed.first(ON).standing, Standing::Nursing);
    nursed.write("2026-03-01", "nurse_counted", bed(json!({"nurse":"castor","alive":0})));
    assert_eq!(nursed.first(ON).standing, Standing::Bare);
    let mut worked = coffee_bed();
    worked.write("2026-04-01", "prepared", bed(json!({"task":"cleared"})));
    assert_eq!(worked.first(ON).standing, Standing::Bare, "work alone nurses nothing");
    let mut dry = ready_bed();
    dry.write("2026-04-10", "weather", json!({"rain_mm":2}));
    assert_eq!(dry.first(ON).standing, Standing::Dry);
    let mut full = ready_bed();
    planted(&mut full, "2026-04-09", "cof-001", 80);
    assert_eq!((full.first(ON).standing, full.first(ON).in_light), (Standing::Full, 0));
}

#[test]
fn gaps_are_worth_filling_by_the_age_at_the_survival_count() {
    let refill = |planted_on: &str, alive: u32, dead: u32| {
        let mut page = ready_bed();
        planted(&mut page, planted_on, "cof-001", alive + dead);
        page.write("2026-04-09", "survival_counted", bed(json!({"species":"coffee","alive":alive,"dead":dead})));
        page.first(ON).standing
    };
    // 31 days: any dead. 90 days: under 90 %. 365 days: under 80 %.
    assert_eq!(refill("2026-03-09", 59, 1), Standing::Refill);
    assert_eq!(refill("2026-03-09", 60, 0), Standing::Open);
    assert_eq!(refill("2026-01-09", 53, 7), Standing::Refill);
    assert_eq!(refill("2026-01-09", 54, 6), Standing::Open);
    assert_eq!(refill("2025-04-09", 47, 13), Standing::Refill);
    assert_eq!(refill("2025-04-09", 48, 12), Standing::Open);
}

#[test]
fn gaps_filled_since_are_no_longer_worth_filling() {
    let mut page = ready_bed();
    planted(&mut page, "2026-03-01", "cof-001", 60);
    page.write("2026-04-01", "survival_counted", bed(json!({"species":"coffee","alive":50,"dead":10})));
    let gaps = |page: &TestBook| standing::gaps_worth_filling(&page.story(ON).0, &SpeciesKey::new("COA"), day(ON));
    assert!(gaps(&page));
    planted(&mut page, "2026-04-03", "cof-002", 4);
    assert!(gaps(&page));
    planted(&mut page, "2026-04-04", "cof-003", 6);
    assert!(!gaps(&page));
    assert_eq!(page.first(ON).standing, Standing::Open);
}

#[test]
fn nurse_plants_say_when_they_shade_and_when_they_end() {
    let mut page = coffee_bed();
    nurse(&mut page, "2026-01-10", "banana", 12);
    page.write("2026-04-10", "nurse_counted", bed(json!({"nurse":"banana","alive":11,"bunches_showing":2})));
    let banana = page.picture(ON).nurses.remove(0);
    assert_eq!((banana.age_days, banana.count, banana.alive), (90, 12, 11));
    // 6 and 14 months of 30.4 days: 182 and 426 days.
    assert_eq!(banana.useful_shade_from, Some(day("2026-01-10").plus(182)));
    assert_eq!(banana.ends_about, Some(day("2026-01-10").plus(426)));
    assert_eq!(banana.counted_on, Some(day(ON)));
}

#[test]
fn every_cohort_is_asked_for_its_gaps() {
    let mut page = ready_bed();
    planted(&mut page, "2025-04-09", "cof-001", 12);
    planted(&mut page, "2025-10-09", "cof-002", 10);
    let counted = |page: &mut TestBook, on: &str, tray: &str, alive: u32, dead: u32| {
        let fields = json!({"species":"coffee","tray":tray,"alive":alive,"dead":dead});
        page.write(on, "survival_counted", bed(fields));
    };
    // 8 of 10 is 80 %, enough; 9 of 12 is 75 %, not enough, though it was written second.
    counted(&mut page, "2026-04-05", "cof-002", 8, 2);
    assert_eq!(page.first(ON).standing, Standing::Open);
    counted(&mut page, "2026-04-05", "cof-001", 9, 3);
    assert_eq!(page.first(ON).standing, Standing::Refill);
    // A later look at another cohort leaves it; a later look at the same one takes its place.
    counted(&mut page, "2026-04-06", "cof-002", 8, 2);
    assert_eq!(page.first(ON).standing, Standing::Refill);
    counted(&mut page, "2026-04-07", "cof-001", 11, 1);
    assert_eq!(page.first(ON).standing, Standing::Open);
}

#[test]
fn plants_set_since_fill_the_gaps_of_the_cohorts_one_after_the_other() {
    let mut page = ready_bed();
    planted(&mut page, "2026-03-20", "cof-001", 20);
    planted(&mut page, "2026-03-21", "cof-002", 20);
    for (tray, dead) in [("cof-001", 3), ("cof-002", 4)] {
        let fields = json!({"species":"coffee","tray":tray,"alive":20 - dead,"dead":dead});
        page.write("2026-04-05", "survival_counted", bed(fields));
    }
    planted(&mut page, "2026-04-06", "cof-003", 6);
    assert_eq!(page.first(ON).standing, Standing::Refill, "7 are gone, 6 were set");
    planted(&mut page, "2026-04-07", "cof-004", 1);
    assert_eq!(page.first(ON).standing, Standing::Open);
}

#[test]
fn a_look_at_some_rows_does_not_hide_the_count_of_the_whole_bed() {
    let mut page = ready_bed();
    planted(&mut page, "2026-03-20", "cof-001", 20);
    page.write("2026-04-05", "survival_counted", bed(json!({"species":"coffee","alive":15,"dead":5})));
    page.write("2026-04-06", "survival_counted", bed(json!({"species":"coffee","alive":4,"dead":0,"rows":"1"})));
    assert_eq!(page.first(ON).standing, Standing::Refill);
    page.write("2026-04-07", "survival_counted", bed(json!({"species":"coffee","alive":20,"dead":0})));
    assert_eq!(page.first(ON).standing, Standing::Open);
}

/// Whether a reading of 1 April still counts after something was written of 40 pigeon peas on the 5th.
fn reading_holds(kind: &str, mut fields: Value) -> bool {
    let mut page = ready_bed();
    nurse(&mut page, "2026-02-01", "pigeon pea", 40);
    let named = if kind == "plants_lost" { "species" } else { "nurse" };
    fields[named] = json!("pigeon pea");
    page.write("2026-04-05", kind, bed(fields));
    assert!(page.picture("2026-04-04").light_now.is_some());
    page.picture(ON).light_now.is_some()
}

#[test]
fn only_a_cut_of_a_tenth_or_more_voids_a_reading() {
    for what in ["stem", "felled"] {
        assert!(reading_holds("nurse_cut", json!({"what":what,"count":3})), "{what} 3 of 40");
        assert!(!reading_holds("nurse_cut", json!({"what":what,"count":4})), "{what} 4 of 40");
        assert!(reading_holds("nurse_cut", json!({"what":what,"share":0.09})), "{what} 0.09");
        assert!(!reading_holds("nurse_cut", json!({"what":what,"share":0.1})), "{what} 0.1");
    }
}

#[test]
fn a_strong_chop_of_leaves_voids_a_reading() {
    assert!(reading_holds("nurse_cut", json!({"what":"leaves","share":0.29})));
    assert!(!reading_holds("nurse_cut", json!({"what":"leaves","share":0.3})));
    // The leaves of 11 and of 12 plants out of 40; half of the leaves of 20.
    assert!(reading_holds("nurse_cut", json!({"what":"leaves","count":11})));
    assert!(!reading_holds("nurse_cut", json!({"what":"leaves","count":12})));
    assert!(reading_holds("nurse_cut", json!({"what":"leaves","count":20,"share":0.5})));
}

#[test]
fn nurse_plants_lost_to_wind_or_cattle_void_a_reading() {
    assert!(reading_holds("nurse_counted", json!({"alive":37,"cause":"wind"})));
    assert!(!reading_holds("nurse_counted", json!({"alive":36,"cause":"wind"})));
    assert!(reading_holds("nurse_counted", json!({"alive":2,"rows":"1"})), "a look at a row settles nothing");
    assert!(reading_holds("plants_lost", json!({"count":3,"cause":"cattle"})));
    assert!(!reading_holds("plants_lost", json!({"count":4,"cause":"cattle"})));
}

#[test]
fn dry_said_aloud_wins_and_a_soaking_long_ago_tells_nothing() {
    let reads_dry = |fields| assert_eq!(soil_asked(fields).gap(), Some(&Gap::ReadDry));
    reads_dry(json!({"resistance_mpa":1.0,"wet":false,"days_since_soaking":2}));
    assert_eq!(soil(json!({"resistance_mpa":1.0,"days_since_soaking":14})).0, Some(true));
    reads_dry(json!({"resistance_mpa":1.0,"days_since_soaking":14.5}));
    reads_dry(json!({"resistance_mpa":1.0,"days_since_soaking":30}));
    assert_eq!(soil(json!({"resistance_mpa":1.0,"wet":true,"days_since_soaking":30})).0, Some(true));
}

#[test]
fn some_rows_weeded_again_do_not_spoil_the_whole() {
    let mut page = coffee_bed();
    page.write("2026-03-20", "prepared", bed(json!({"task":"weeded"})));
    page.write("2026-04-01", "prepared", bed(json!({"task":"weeded","rows":"1-3"})));
    let asked = page.asked(ON, Rule::Weeded);
    assert_eq!((asked.met(), asked.warns, asked.known()), (Some(true), false, Some(Measure::On(day("2026-03-20")))));
    // 30 days after 20 March only the rows are left.
    assert!(!page.asked("2026-04-19", Rule::Weeded).warns);
    let part = page.asked("2026-04-20", Rule::Weeded);
    assert_eq!((part.met(), part.warns, part.known()), (Some(true), true, Some(Measure::On(day("2026-04-01")))));
}

#[test]
fn a_share_written_leads_over_the_pairs_beside_it() {
    let mut page = coffee_bed();
    let pairs = json!([{"under_lux":2000,"open_lux":10000}]);
    page.write("2026-04-01", "light_read", bed(json!({"readings":pairs,"light_share":0.6})));
    assert!((page.picture(ON).light_now.unwrap().share - 0.6).abs() < 1e-9);
}

#[test]
fn looks_at_some_rows_only_count_and_warn() {
    let mut page = coffee_bed();
    page.write("2026-04-01", "light_read", bed(json!({"light_share":0.6,"rows":"1"})));
    page.write("2026-04-01", "soil_checked", bed(json!({"resistance_mpa":1.0,"wet":true,"at":["1.1"]})));
    for rule in [Rule::LightNow, Rule::Soil] {
        let asked = page.asked(ON, rule);
        assert_eq!((asked.met(), asked.warns, asked.blocks), (Some(true), true, false), "{rule:?}");
    }
    page.write("2026-04-02", "light_read", bed(json!({"light_share":0.6})));
    page.write("2026-04-02", "soil_checked", bed(json!({"resistance_mpa":1.0,"wet":true})));
    for rule in [Rule::LightNow, Rule::Soil] {
        assert!(!page.asked(ON, rule).warns, "{rule:?}");
    }
}

#[test]
fn a_rock_blocks_its_spot_of_ground_on_every_grid() {
    let mut page = TestBook::default();
    let plan = [
        line("coffee", "rectangle", 2.5, 2.0),
        line("avocado", "square", 8.0, 8.0),
        line("grevillea", "square", 4.0, 4.0),
    ];
    lay_out(&mut page, "2026-01-05", json!(plan));
    let open = |page: &TestBook| -> Vec<u32> {
        let species = page.picture(ON).species;
        species.iter().map(|species| species.positions - species.open_positions).collect()
    };
    // 2.2 of the coffee is at 2 m along and 2.5 m across: within 4 m of avocado 1.1 at 0, 0 (3.2 m), farther from its
    // others; over 2 m from every grevillea (0, 4 is 2.5 m away).
    page.write("2026-02-01", "positions_blocked", bed(json!({"at":["2.2"],"why":"rock"})));
    assert_eq!(open(&page), [1, 1, 0]);
    // 1.3 is at 4 m along, 0 across: 4 m from avocado 1.1 (already blocked) and 1.2, on top of grevillea 1.2, whose spot it
    // is: coffee has none there.
    page.write("2026-02-02", "positions_blocked", bed(json!({"at":["1.3"],"why":"stump"})));
    assert_eq!(open(&page), [1, 2, 1]);
    // No grid has it.
    page.write("2026-02-03", "positions_blocked", bed(json!({"at":["19.1"],"why":"stump"})));
    assert_eq!(open(&page), [1, 2, 1]);
}

#[test]
fn a_rock_stays_where_it_is_when_the_bed_is_laid_out_anew() {
    let mut page = coffee_bed();
    page.write("2026-02-01", "positions_blocked", bed(json!({"at":["2.16"],"why":"rock"})));
    // 2.16 was at 30 m along, 2.5 m across. No new grid has that number, but both have a position within half a step:
    // avocado 1.4 at 30, 0 and coffee 2.11 at 30, 3, which is farther than 1.5 m from the avocado.
    let plan = [line("avocado", "square", 10.0, 10.0), line("coffee", "square", 3.0, 3.0)];
    lay_out(&mut page, "2026-03-01", json!(plan));
    let species = page.picture(ON).species;
    let blocked: Vec<u32> = species.iter().map(|species| species.positions - species.open_positions).collect();
    assert_eq!(blocked, [1, 1]);
}

/// A bed of cassava lifted on 1 March 2026.
fn lifted_bed() -> TestBook {
    let mut page = coffee_bed();
    nurse(&mut page, "2025-06-01", "cassava", 50);
    page.write("2026-03-01", "nurse_cut", bed(json!({"nurse":"cassava","what":"harvest","share":1})));
    page
}

#[test]
fn lifted_ground_is_loose_no_deeper_than_the_tubers() {
    let mut page = lifted_bed();
    let depth = |page: &mut TestBook, cm: f64| {
        page.write("2026-01-02", "species_set", json!({"species":"coffee","profile":{"container_depth_cm":cm}}));
        page.asked(ON, Rule::Soil).met()
    };
    assert_eq!(depth(&mut page, 35.0), Some(true));
    assert_eq!(depth(&mut page, 36.0), None);
}

#[test]
fn lifted_ground_settles_in_two_wet_seasons_where_the_rains_are_known() {
    let mut page = lifted_bed();
    let rains = json!({"rains":[{"from":"03-15","until":"05-31"},{"from":"10-15","until":"12-15"}]});
    page.write("2026-01-01", "season_set", rains);
    // Rains of 15 March and 15 October 2026 begin after it; with those of March 2027 it is over.
    assert_eq!(page.asked("2027-03-14", Rule::Soil).met(), Some(true));
    assert_eq!(page.asked("2027-03-15", Rule::Soil).met(), None);
    let mut once = lifted_bed();
    once.write("2026-01-01", "season_set", json!({"rains":[{"from":"03-15","until":"06-10"}]}));
    assert_eq!(once.asked("2028-03-14", Rule::Soil).met(), Some(true));
    assert_eq!(once.asked("2028-03-15", Rule::Soil).met(), None);
    assert_eq!(once.asked("2035-04-15", Rule::Soil).met(), None);
}

#[test]
fn one_end_of_the_shade_band_is_read_alike_by_tray_and_bed() {
    let (_, site) = coffee_bed().story(ON);
    // Coffee: 30 to 50 % shade.
    let coffee = Profile::clone(site.profile(&SpeciesKey::new("COA")).unwrap());
    let band = |least: bool, most: bool| {
        let mut one_sided = coffee.clone();
        one_sided.outplant_shade_least_pct = coffee.outplant_shade_least_pct.clone().filter(|_| least);
        one_sided.outplant_shade_most_pct = coffee.outplant_shade_most_pct.clone().filter(|_| most);
        let bed = super::light_now::band(Some(&one_sided)).map(|(least, most, _)| (least, most));
        assert_eq!(light_band(Some(&one_sided)), bed);
        bed.map(|(least, most)| (format!("{least:.2}"), format!("{most:.2}")))
    };
    let light = |least: &str, most: &str| Some((least.to_string(), most.to_string()));
    assert_eq!(band(true, true), light("0.50", "0.70"));
    assert_eq!(band(false, true), light("0.50", "1.00"));
    assert_eq!(band(true, false), light("0.00", "0.70"));
    assert_eq!(band(false, false), None);
}
