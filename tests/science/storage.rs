//! Seed in store against printed output and other libraries.

// The whole file is a test; the clippy settings lets only #[test] functions themselves panic.
#![allow(clippy::panic)]

use outplant::science::viability::{Store, ViabilityConstants, days_to, off_the_ends_pct, sigma_days, viability};
use outplant::science::viability_constants::viability_record;
use serde_json::Value;

use crate::support::reference::{list, near, number, reference};

const VIABILITY: &str = include_str!("../reference/viability.json");

/// Figures are printed with 12 digits; those of the normal distribution differ in the last.
const TEN_DIGITS: f64 = 1e-9;

fn constants(list: &[f64]) -> ViabilityConstants {
    ViabilityConstants { ke: list[0], cw: list[1], ch: list[2], cq: list[3] }
}

fn named(case: &Value) -> ViabilityConstants {
    constants(&["KE", "CW", "CH", "CQ"].map(|name| number(case, name)))
}

#[test]
fn printed_examples() {
    let all = reference(VIABILITY);
    let mut checked = 0;
    for case in list(&all, "published_cases") {
        let Some(list) = case["constants"].as_array() else { continue };
        let constants = constants(&list.iter().map(|value| value.as_f64().unwrap()).collect::<Vec<_>>());
        let store = Store { moisture_pct: number(case, "mc"), temp_c: number(case, "temp") };
        let got = match case["fn"].as_str().unwrap() {
            "final viability" => viability(constants, store, number(case, "initial"), number(case, "days"))
                .unwrap()
                .viability_pct
                .unwrap(),
            "sigma" => sigma_days(constants, store).unwrap(),
            "storage period" => {
                days_to(constants, store, number(case, "initial"), number(case, "final")).unwrap().unwrap()
            }
            other => panic!("no example of {other}"),
        };
        near(got, number(case, "published"), 1e-6, case["fn"].as_str().unwrap());
        checked += 1;
    }
    assert_eq!(checked, 3);
}

#[test]
fn every_computed_case() {
    let all = reference(VIABILITY);
    let cases = list(&all, "computed_cases");
    assert_eq!(cases.len(), 21);
    for case in cases {
        let id = format!("{} at {} %", case["species"], case["moisture_pct_fresh"]);
        let constants = named(case);
        let store = Store { moisture_pct: number(case, "moisture_pct_fresh"), temp_c: number(case, "temp_c") };
        let initial = number(case, "initial_pct");
        let told = viability(constants, store, initial, number(case, "days")).unwrap();
        near(told.ki.unwrap(), number(case, "Ki"), TEN_DIGITS, &id);
        near(told.sigma_days, number(case, "sigma_days"), TEN_DIGITS, &id);
        near(told.v_probit.unwrap(), number(case, "v_probit"), 1e-8, &id);
        near(told.viability_pct.unwrap(), number(case, "viability_pct"), 1e-8, &id);
        near(told.p50_days.unwrap(), number(case, "p50_days"), TEN_DIGITS, &id);
        let days = days_to(constants, store, initial, number(case, "target_pct")).unwrap().unwrap();
        near(days, number(case, "days_to_target"), 1e-8, &id);
    }
}

#[test]
fn the_table_of_constants_is_that_of_the_data_set() {
    let all = reference(VIABILITY);
    for case in list(&all, "computed_cases") {
        let species = case["species"].as_str().unwrap().trim_end_matches('*');
        let record = viability_record(species).unwrap_or_else(|| panic!("no constants of {species}"));
        assert_eq!(record.constants, named(case), "{species}");
    }
}

#[test]
fn all_of_a_sample_viable_is_not_all_of_the_lot() {
    assert_eq!(off_the_ends_pct(100.0, 50), Ok(99.5));
}
