//! Curves of emergence and of growth against other libraries, and what must hold whatever the counts are.

// The whole file is a test; the clippy settings lets only #[test] functions themselves panic.
#![allow(clippy::panic)]

use outplant::science::emergence::{CurvePrior, EmergenceFit, Looks, fit_emergence, forecast_by_prior};
use outplant::science::germination::germination;
use outplant::science::growth::{GrowthModel, fit_growth};
use proptest::prelude::*;
use serde_json::Value;

use crate::support::reference::{counts, list, near, number, numbers, reference, whole};

const FITS: &str = include_str!("../reference/germination_fit.json");
const GROWTH: &str = include_str!("../reference/growth.json");

/// Log-likelihoods, relative.
const OF_LOGLIK: f64 = 1e-5;
/// Figures of a curve, relative: 0.2 %.
const OF_FIGURE: f64 = 2e-3;
/// Standard errors and interval ends, relative: 1 %.
const OF_ERROR: f64 = 1e-2;

fn looks(case: &Value) -> Looks {
    Looks::new(&numbers(case, "edges"), &counts(case, "counts"), whole(case, "n")).unwrap()
}

fn as_fitted(told: &EmergenceFit, fit: &Value, id: &str) {
    let curve = told.curve.unwrap_or_else(|| panic!("{id} has a curve"));
    // Two flushes apart have a best curve that nobody should trust.
    assert_eq!(told.identifiable, id != "drc_rice_T28", "{id}");
    near(told.loglik.unwrap(), number(fit, "loglik"), OF_LOGLIK, &format!("{id} loglik"));
    near(curve.d, number(fit, "d"), OF_FIGURE, &format!("{id} d"));
    near(curve.b, number(fit, "b"), OF_FIGURE, &format!("{id} b"));
    near(curve.t50, number(fit, "t50"), OF_FIGURE, &format!("{id} t50"));
    assert_eq!(Some(told.at_boundary_d1), fit["at_boundary_d1"].as_bool(), "{id}");
    for (name, got) in [("se_d", told.se_d), ("se_b", told.se_b), ("se_t50", told.se_t50)] {
        match (got, fit[name].as_f64()) {
            (None, None) => {}
            (Some(got), Some(want)) => near(got, want, OF_ERROR, &format!("{id} {name}")),
            (got, want) => panic!("{id} {name}: {got:?}, but {want:?}"),
        }
    }
    let (got, want) = (told.d_ci95.unwrap(), numbers(&fit["profile_ci95"], "d"));
    near(got.low, want[0], OF_FIGURE, &format!("{id} low end of d"));
    near(got.high, want[1], OF_FIGURE, &format!("{id} high end of d"));
}

#[test]
fn emergence_curves_of_every_data_set() {
    let all = reference(FITS);
    let sets = list(&all, "datasets");
    assert_eq!(sets.len(), 16);
    for set in sets {
        as_fitted(&fit_emergence(&looks(set)), &set["fit"], set["id"].as_str().unwrap());
    }
}

#[test]
fn emergence_curves_of_half_a_sowing_and_what_they_foretell() {
    let all = reference(FITS);
    let cases = list(&all, "forecasts");
    assert_eq!(cases.len(), 12);
    for case in cases {
        let id = format!("{} to day {}", case["dataset"], case["fitted_to_day"]);
        let looks = looks(case);
        let told = fit_emergence(&looks);
        as_fitted(&told, &case["fit"], &id);
        let at_last_day = told.at_day(&looks, number(case, "last_day")).unwrap();
        near(at_last_day, number(case, "forecast_total_at_last_day_conditional"), OF_FIGURE, &id);
        near(looks.seeds() * told.d.unwrap(), number(case, "forecast_final_n_times_d"), OF_FIGURE, &id);
    }
}

#[test]
fn what_cannot_be_told_is_said_to_be_so() {
    let all = reference(FITS);
    let cases = list(&all, "degenerate");
    assert_eq!(cases.len(), 3);
    for case in cases {
        let told = fit_emergence(&looks(case));
        assert!(!told.identifiable && told.curve.is_none(), "{}: {told:?}", case["id"]);
        let share = match case["id"].as_str().unwrap() {
            "all_in_one_interval" => Some(0.82),
            "nothing_germinated" => Some(0.0),
            _ => None,
        };
        assert_eq!(told.d, share, "{}", case["id"]);
    }
}

#[test]
fn growth_curves_of_every_data_set() {
    let all = reference(GROWTH);
    let sets = list(&all, "datasets");
    assert_eq!(sets.len(), 12);
    for set in sets {
        for (model, name) in [(GrowthModel::Logistic, "logistic"), (GrowthModel::Gompertz, "gompertz")] {
            let fit = &set["fits"][name];
            let id = format!("{} {name}", set["id"]);
            let told = fit_growth(model, &numbers(set, "t"), &numbers(set, "y")).unwrap();
            let told = told.unwrap_or_else(|| panic!("{id} is told"));
            near(told.rss, number(fit, "rss"), OF_LOGLIK, &format!("{id} rss"));
            for (name, got) in [("A", told.curve.a), ("k", told.curve.k), ("t0", told.curve.t0)] {
                near(got, number(fit, name), OF_FIGURE, &format!("{id} {name}"));
            }
            for (name, got) in ["se_A", "se_k", "se_t0"].iter().zip(told.errors.unwrap()) {
                near(got, number(fit, name), OF_ERROR, &format!("{id} {name}"));
            }
            for prediction in list(fit, "predictions") {
                let reached = told.reaches(number(prediction, "target"));
                assert_eq!(reached.map(|_| ()), prediction["t"].as_f64().map(|_| ()), "{id} {prediction}");
                let Some(reached) = reached else { continue };
                near(reached.t, number(prediction, "t"), OF_FIGURE, &format!("{id} day"));
                near(reached.se.unwrap(), number(prediction, "se"), OF_ERROR, &format!("{id} error of day"));
                let (got, want) = (reached.ci95.unwrap(), numbers(prediction, "ci95"));
                near(got.low, want[0], OF_ERROR, &format!("{id} low end"));
                near(got.high, want[1], OF_ERROR, &format!("{id} high end"));
            }
        }
    }
}

/// Any looks that can be: some days, some counts, some seeds that never come.
fn any_looks() -> impl Strategy<Value = (Vec<f64>, Vec<u32>, u32)> {
    (prop::collection::vec((0.1..30.0_f64, 0..40_u32), 1..12), 0..60_u32).prop_map(|(steps, never)| {
        let mut edges = vec![0.0];
        for (step, _) in &steps {
            edges.push(edges.last().unwrap() + step);
        }
        let counts: Vec<u32> = steps.iter().map(|(_, count)| *count).collect();
        let seeds = (counts.iter().sum::<u32>() + never).max(1);
        (edges, counts, seeds)
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, ..ProptestConfig::default() })]

    #[test]
    fn any_counts_are_answered_and_the_answer_makes_sense((edges, counts, seeds) in any_looks()) {
        let looks = Looks::new(&edges, &counts, seeds).unwrap();
        let told = fit_emergence(&looks);
        if let Some(curve) = told.curve {
            prop_assert!(curve.d > 0.0 && curve.d <= 1.0 && curve.b > 0.0 && curve.t50 > 0.0, "{curve:?}");
            prop_assert!(curve.d >= looks.emerged() / looks.seeds() - 1e-9, "{curve:?}");
            let interval = told.d_ci95.unwrap();
            prop_assert!(interval.low <= curve.d + 1e-9 && curve.d <= interval.high + 1e-9, "{told:?}");
            let later = told.at_day(&looks, looks.last_look() + 50.0).unwrap();
            prop_assert!(later >= looks.emerged() && later <= looks.seeds() + 1e-9, "{later}");
        } else {
            prop_assert!(!told.identifiable);
        }
    }

    #[test]
    fn a_forecast_lies_between_what_is_up_and_what_was_sown((edges, counts, seeds) in any_looks(), half in 1.0..200.0_f64, share in 0.0..1.0_f64) {
        let looks = Looks::new(&edges, &counts, seeds).unwrap();
        let prior = CurvePrior::of_species(Some(half / 2.0), half, Some(half * 2.0), share).unwrap();
        let told = forecast_by_prior(&looks, &prior, half * 3.0, 0.9).unwrap();
        for range in [told.at_last_day, told.in_the_end] {
            prop_assert!(looks.emerged() <= range.low && range.low <= range.likely, "{told:?}");
            prop_assert!(range.likely <= range.high && range.high <= looks.seeds() + 1e-9, "{told:?}");
        }
        prop_assert!(told.at_last_day.likely <= told.in_the_end.likely + 1e-6, "{told:?}");
    }

    #[test]
    fn every_day_longer_by_a_factor_makes_t50_longer_by_it((edges, counts, seeds) in any_looks(), factor in 0.1..10.0_f64) {
        let told = fit_emergence(&Looks::new(&edges, &counts, seeds).unwrap());
        let longer: Vec<f64> = edges.iter().map(|edge| edge * factor).collect();
        let slow = fit_emergence(&Looks::new(&longer, &counts, seeds).unwrap());
        prop_assert_eq!(told.identifiable, slow.identifiable);
        if let (Some(one), Some(other)) = (told.curve.filter(|_| told.identifiable), slow.curve) {
            prop_assert!((told.loglik.unwrap() - slow.loglik.unwrap()).abs() < 1e-6 * told.loglik.unwrap().abs().max(1.0));
            prop_assert!((other.t50 / one.t50 / factor - 1.0).abs() < 1e-3, "{one:?} {other:?}");
        }
    }

    #[test]
    fn every_day_later_makes_the_mean_and_the_median_later_by_it((edges, counts, seeds) in any_looks(), later in 0.0..100.0_f64) {
        // A first look at which nothing is up, so that no median begins on the day of sowing.
        let counts: Vec<u32> = counts.iter().enumerate().map(|(i, count)| if i == 0 { 0 } else { *count }).collect();
        prop_assume!(counts.iter().sum::<u32>() > 1);
        let times = &edges[1..];
        let moved: Vec<f64> = times.iter().map(|day| day + later).collect();
        let (own, other) = (germination(times, &counts, seeds).unwrap(), germination(&moved, &counts, seeds).unwrap());
        let pairs = [(own.mgt, other.mgt), (own.t50_farooq, other.t50_farooq), (own.t50_coolbear, other.t50_coolbear)];
        for (before, after) in pairs {
            prop_assert!((after.unwrap() - before.unwrap() - later).abs() < 1e-6, "{before:?} {after:?} {later}");
        }
        prop_assert!((own.synchrony.unwrap() - other.synchrony.unwrap()).abs() < 1e-12);
    }

    #[test]
    fn an_empty_interval_split_in_two_changes_nothing((edges, counts, seeds) in any_looks()) {
        let Some(at) = counts.iter().position(|count| *count == 0) else { return Ok(()) };
        let (mut more_edges, mut more_counts) = (edges.clone(), counts.clone());
        more_edges.insert(at + 1, (edges[at] + edges[at + 1]) / 2.0);
        more_counts.insert(at, 0);
        let once = fit_emergence(&Looks::new(&edges, &counts, seeds).unwrap());
        prop_assert_eq!(once, fit_emergence(&Looks::new(&more_edges, &more_counts, seeds).unwrap()));
    }

    #[test]
    fn any_heights_are_answered(points in prop::collection::vec((0.0..300.0_f64, 0.0..80.0_f64), 1..15)) {
        let mut points = points;
        points.sort_by(|one, other| one.0.total_cmp(&other.0));
        let (t, y): (Vec<f64>, Vec<f64>) = points.into_iter().unzip();
        for model in GrowthModel::ALL {
            if let Some(fit) = fit_growth(model, &t, &y).unwrap() {
                prop_assert!(fit.rss.is_finite() && fit.curve.a > 0.0 && fit.curve.k > 0.0, "{fit:?}");
                if let Some(reached) = fit.reaches(fit.curve.a / 3.0) {
                    prop_assert!(reached.t.is_finite(), "{fit:?} {reached:?}");
                }
            }
        }
    }
}
