//! The formulas of `science` against worked examples of the trade. Each row of the table names its own source.

// The whole file is a test; the clippy settings lets only #[test] functions themselves panic.
#![allow(clippy::panic)]

use std::collections::HashMap;

use outplant::nursery::species::Catalogue;
use outplant::science::chance::Chance;
use outplant::science::germination::germination;
use outplant::science::sowing::seeds_to_sow;
use outplant::science::spacing::SpacingPattern;
use outplant::science::viability::{self, Store, ViabilityConstants};
use outplant::science::{light, quality, sampling, seeds, spacing};
use serde_json::Value;

const HANDBOOK: &str = include_str!("../reference/handbook_examples.tsv");

/// One worked example.
struct Example {
    id: &'static str,
    inputs: Value,
    expected: Value,
    tolerance: f64,
    source: &'static str,
}

impl Example {
    fn given(&self, key: &str) -> f64 {
        number(self.id, &self.inputs, key)
    }

    fn wanted(&self, key: &str) -> f64 {
        number(self.id, &self.expected, key)
    }

    fn wanted_yes(&self, key: &str) -> bool {
        self.expected[key].as_bool().unwrap_or_else(|| panic!("{}: no yes or no under {key}", self.id))
    }

    fn near(&self, got: f64, key: &str) {
        let want = self.wanted(key);
        let off = (got - want).abs();
        assert!(
            off <= self.tolerance,
            "{} {key}: {got}, but {want} within {} ({})",
            self.id,
            self.tolerance,
            self.source
        );
    }
}

fn number(id: &str, from: &Value, key: &str) -> f64 {
    from[key].as_f64().unwrap_or_else(|| panic!("{id}: no number under {key}"))
}

fn numbers(id: &str, from: &Value, key: &str) -> Vec<f64> {
    let list = from[key].as_array().unwrap_or_else(|| panic!("{id}: no list under {key}"));
    list.iter().map(|value| value.as_f64().unwrap_or_else(|| panic!("{id}: no number in {key}"))).collect()
}

/// The named rows, in the order named; a row that is not in the table fails the test.
fn examples(ids: &[&str]) -> Vec<Example> {
    let mut rows: HashMap<&str, Example> = HANDBOOK.lines().skip(1).map(example).collect();
    ids.iter().map(|id| rows.remove(id).unwrap_or_else(|| panic!("row {id} is missing"))).collect()
}

fn example(line: &'static str) -> (&'static str, Example) {
    let cells: Vec<&str> = line.split('\t').collect();
    let [id, _topic, inputs, expected, tolerance, source, _flag, _kind] = cells[..] else {
        panic!("not eight cells: {line}");
    };
    let json = |text: &str| serde_json::from_str(text).unwrap_or_else(|fault| panic!("{id}: {fault}"));
    let tolerance = tolerance.parse().unwrap_or_else(|fault| panic!("{id}: {fault}"));
    assert!(!source.is_empty(), "{id} has no source");
    (id, Example { id, inputs: json(inputs), expected: json(expected), tolerance, source })
}

#[test]
fn pure_live_seed() {
    for row in examples(&["S16"]) {
        let (purity, germination) = (row.given("purity"), row.given("germ"));
        let share = seeds::pure_live_share(purity, germination).unwrap();
        row.near(row.given("plants_per_kg") / share, "seeds_per_kg");
        let swapped = seeds::pure_live_share(germination, purity).unwrap();
        assert_eq!(share == swapped, row.wanted_yes("swapped_purity_germ_gives_same"), "{} ({})", row.id, row.source);
    }
    for row in examples(&["S17"]) {
        // The bulletin counts the seeds of a kilogram as they come: purity is already in.
        row.near(row.given("seeds_per_kg") * seeds::pure_live_share(1.0, row.given("germ")).unwrap(), "plants_per_kg");
    }
}

#[test]
fn seeds_by_weight() {
    for row in examples(&["S18"]) {
        row.near(seeds::seeds_per_kg(row.given("tsw_g")).unwrap(), "seeds_per_kg");
    }
}

#[test]
fn seeds_for_assurance() {
    for row in examples(&["S20", "S21"]) {
        let germination = Chance::Known(row.given("germ"));
        let told = seeds_to_sow(germination, None, row.given("want") as u32, row.given("assurance")).unwrap();
        row.near(f64::from(told.seeds), "seeds");
    }
}

fn constants(row: &Example) -> ViabilityConstants {
    ViabilityConstants { ke: row.given("KE"), cw: row.given("CW"), ch: row.given("CH"), cq: row.given("CQ") }
}

#[test]
fn viability_in_store() {
    for row in examples(&["V01", "V08", "V09"]) {
        let store = Store { moisture_pct: row.given("mc_pct"), temp_c: row.given("temp_c") };
        let told = viability::viability(constants(&row), store, row.given("initial_pct"), row.given("days")).unwrap();
        row.near(told.viability_pct.unwrap(), "final_pct");
    }
    for row in examples(&["V02", "V03"]) {
        // A store of the printed moisture and temperature keeps a lot as long as the example says.
        let known = |name: &str| if row.inputs[name].is_null() { row.wanted(name) } else { row.given(name) };
        let store = Store { moisture_pct: known("mc_pct"), temp_c: known("temp_c") };
        let told = viability::viability(constants(&row), store, row.given("initial_pct"), row.given("days")).unwrap();
        let ends_at = told.viability_pct.unwrap();
        assert!((ends_at - row.given("final_pct")).abs() < 0.05, "{}: {ends_at} ({})", row.id, row.source);
    }
    for row in examples(&["V04"]) {
        let initial = viability::off_the_ends_pct(row.given("initial_pct"), row.given("n") as u32).unwrap();
        row.near(initial, "adjusted_initial_pct");
        let store = Store { moisture_pct: row.given("mc_pct"), temp_c: row.given("temp_c") };
        let told = viability::viability(constants(&row), store, initial, row.given("days")).unwrap();
        row.near(told.viability_pct.unwrap(), "final_pct");
    }
    for row in examples(&["V05"]) {
        let rice = ViabilityConstants { ke: 8.242, cw: 4.345, ch: 0.0307, cq: 0.000501 };
        let store = Store { moisture_pct: 10.0, temp_c: 5.0 };
        let told = viability::viability(rice, store, row.given("initial_pct"), row.given("days"));
        assert_eq!(told.is_err(), row.wanted_yes("error"), "{} ({})", row.id, row.source);
    }
    for row in examples(&["V06", "V07"]) {
        let store = Store { moisture_pct: row.given("mc_pct"), temp_c: row.given("temp_c") };
        row.near(viability::sigma_days(constants(&row), store).unwrap(), "sigma_days");
    }
}

#[test]
fn wilson_interval() {
    for row in examples(&["S22"]) {
        let interval = sampling::wilson(row.given("k") as u32, row.given("n") as u32, 0.95).unwrap();
        row.near(interval.low, "lo");
        row.near(interval.high, "hi");
    }
}

#[test]
fn plant_quality() {
    for row in examples(&["Q01"]) {
        let quotient = quality::sturdiness(row.given("height_cm"), row.given("rcd_mm")).unwrap();
        row.near(quotient, "sq");
        let good = quality::sturdiness_band(quotient) == Ok(quality::SturdinessBand::Good);
        assert_eq!(good, row.wanted_yes("good"), "{} ({})", row.id, row.source);
    }
    for row in examples(&["Q02"]) {
        let heights = numbers(row.id, &row.inputs, "height_cm");
        let collars = numbers(row.id, &row.inputs, "rcd_mm");
        let wanted = numbers(row.id, &row.expected, "sq");
        assert_eq!((heights.len(), collars.len()), (wanted.len(), wanted.len()), "{}", row.id);
        for ((height_cm, collar_mm), want) in heights.into_iter().zip(collars).zip(wanted) {
            let quotient = quality::sturdiness(height_cm, collar_mm).unwrap();
            assert!((quotient - want).abs() <= row.tolerance, "{}: {quotient}, but {want} ({})", row.id, row.source);
        }
    }
    for row in examples(&["Q03"]) {
        let (shoot_g, root_g) = (row.given("shoot_g"), row.given("root_g"));
        assert_eq!(shoot_g + root_g, row.given("total_g"), "{}", row.id);
        row.near(quality::dickson(row.given("height_cm"), row.given("rcd_mm"), shoot_g, root_g).unwrap(), "dqi");
    }
    for row in examples(&["Q04"]) {
        let adequate = row.given("dqi") >= quality::DICKSON_LEAST;
        assert_eq!(adequate, row.wanted_yes("adequate"), "{} ({})", row.id, row.source);
    }
}

#[test]
fn plants_on_a_hectare() {
    for row in examples(&["P01", "P02", "P03", "P04"]) {
        let (row_m, in_row_m) = (row.given("a_m"), row.given("b_m"));
        row.near(spacing::plants_per_ha(SpacingPattern::Rectangle, Some(row_m), in_row_m, None).unwrap(), "per_ha");
        if row_m == in_row_m {
            row.near(spacing::plants_per_ha(SpacingPattern::Square, None, in_row_m, None).unwrap(), "per_ha");
        }
    }
    for row in examples(&["P05"]) {
        row.near(spacing::plants_per_ha(SpacingPattern::Triangle, None, row.given("a_m"), None).unwrap(), "per_ha");
    }
}

#[test]
fn replicates_of_a_germination_test() {
    for row in examples(&["G01", "G02", "G03", "G04", "G05", "G06", "G07", "G08"]) {
        let range = sampling::max_tolerated_range(row.given("mean_germ_pct"));
        row.near(f64::from(range.unwrap_or_else(|| panic!("{}: no row", row.id))), "max_range");
    }
    for row in examples(&["G09", "G10"]) {
        let counts: Vec<u32> =
            numbers(row.id, &row.inputs, "replicates").into_iter().map(|count| count as u32).collect();
        let agreement = sampling::agreement(&counts, 100).unwrap();
        row.near(agreement.mean, "mean");
        row.near(f64::from(agreement.range), "range");
        row.near(f64::from(agreement.max_tolerated_range.unwrap()), "max_range");
        assert_eq!(agreement.within_tolerance, Some(row.wanted_yes("ok")), "{} ({})", row.id, row.source);
    }
}

#[test]
fn light_and_shade() {
    for row in examples(&["L02"]) {
        row.near(light::transmitted_share(row.given("k"), row.given("lai")).unwrap(), "transmitted");
    }
    for row in examples(&["L03"]) {
        let crowns = light::Crowns {
            plants_per_ha: row.given("plants_per_ha"),
            crown_radius_m: row.given("crown_radius_m"),
            opacity: row.given("opacity"),
        };
        row.near(light::crown_shade(&[crowns]).unwrap(), "shade");
    }
}

/// The data set printed with a package for germination; the printed index is the sum of counts over days (Maguire 1962).
#[test]
fn germination_figures() {
    for row in examples(&["G15"]) {
        let days = numbers(row.id, &row.inputs, "day");
        let up = numbers(row.id, &row.inputs, "cumulative");
        let before = std::iter::once(0.0).chain(up.iter().copied());
        let counts: Vec<u32> = up.iter().zip(before).map(|(now, before)| (now - before) as u32).collect();
        let told = germination(&days, &counts, 50).unwrap();
        row.near(told.t50_farooq.unwrap(), "T50");
        row.near(told.mgt.unwrap(), "MGT");
        row.near(told.gri_counts.unwrap(), "GSI");
    }
}

/// What the species profiles say is what these rows say.
#[test]
fn profiles_say_what_was_read() {
    let species = Catalogue::built_in();
    let profile = |name: &str| species.get(&species.find(name).unwrap()).unwrap().clone();
    for row in examples(&["G11"]) {
        let maize = profile("maize");
        row.near(maize.emerge_first_days.as_ref().unwrap().value, "first");
        row.near(maize.emerge_last_days.as_ref().unwrap().value, "final");
    }
    for row in examples(&["X06"]) {
        let nicked = numbers(row.id, &row.expected, "germ_pct")[0];
        let rain_tree = profile("rain tree");
        assert!((rain_tree.germination_fresh_pct.as_ref().unwrap().value - nicked).abs() <= 1e-9, "{}", row.source);
        assert!(rain_tree.germination_varies.as_ref().unwrap().value);
    }
}
