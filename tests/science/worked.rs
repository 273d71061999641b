//! The worked examples of section 28 of docs/reckoning.md, figure by figure.

use outplant::science::chance::Chance;
use outplant::science::emergence::{Curve, CurvePrior, Looks, SeenSowing};
use outplant::science::germination::germination;
use outplant::science::growth::{GrowthCurve, GrowthModel};
use outplant::science::interval::clopper_pearson;
use outplant::science::overdispersion::Overdispersion;
use outplant::science::sampling::sample_size_detection;
use outplant::science::sowing::{chance_of_enough, seeds_to_sow};
use outplant::science::storage::{days_until, still_alive};
use outplant::science::viability::{Store, viability};
use outplant::science::viability_constants::viability_record;

fn as_printed(got: f64, printed: f64, half_a_digit: f64) {
    assert!((got - printed).abs() <= half_a_digit * 1.000_001, "{got} is not {printed}");
}

#[test]
fn germination_of_eight_seeds() {
    let told = germination(&[4.0, 8.0], &[2, 2], 8).unwrap();
    assert_eq!((told.germ_pct, told.mgt), (50.0, Some(6.0)));
    assert_eq!((told.t50_farooq, told.t50_coolbear, told.gri_counts), (Some(4.0), Some(5.0), Some(0.75)));
}

#[test]
fn a_curve_and_what_it_foretells() {
    let curve = Curve { d: 0.8, b: 4.0, t50: 12.0 };
    as_printed(curve.share(18.0), 0.668, 0.0005);
    as_printed(curve.chance_between(12.0, 18.0), 0.4467, 0.00005);
    as_printed(40.0 + 60.0 * curve.chance_between(12.0, 18.0), 66.8, 0.05);
    assert_eq!(Looks::new(&[0.0, 12.0], &[40], 100).unwrap().emerged(), 40.0);
}

#[test]
fn what_is_known_beforehand() {
    let coffee = CurvePrior::of_species(Some(35.0), 55.0, Some(90.0), 0.8).unwrap();
    as_printed(coffee.b.median, 6.235, 0.0005);
    let to_the_end =
        |curve: Curve| SeenSowing { seeds: 100.0, emerged: 100.0 * curve.d, last_look: 1e6, curve: Some(curve) };
    let four = [to_the_end(Curve { d: 0.8, b: coffee.b.median, t50: 70.0 }); 4];
    as_printed(coffee.with_sowings(&four).t50.median, 61.2, 0.05);
    let one = coffee.with_sowings(&[to_the_end(Curve { d: 0.5, b: coffee.b.median, t50: 55.0 })]);
    as_printed(one.d.a, 3.0, 1e-9);
    as_printed(one.d.b, 1.0, 1e-9);
    // Nothing up by the half day, of which half of the emergence was seen.
    let none = SeenSowing { seeds: 100.0, emerged: 0.0, last_look: 55.0, curve: None };
    let failed = coffee.with_sowings(&[none]);
    as_printed(failed.d.a / 4.0, 0.727, 0.0005);
    let varying = coffee.weighing(2.0);
    as_printed(varying.d.a, 1.6, 1e-9);
}

#[test]
fn sowing_numbers() {
    let known = Chance::Known(0.7);
    let one = seeds_to_sow(known, None, 1, 0.95).unwrap();
    assert_eq!(one.seeds, 3);
    as_printed(one.prob_at_n, 0.973, 0.0005);
    as_printed(one.prob_at_n_minus_1, 0.91, 0.0005);
    assert_eq!(seeds_to_sow(known, None, 100, 0.95).unwrap().seeds, 156);
    as_printed(1.0 - chance_of_enough(known, None, 100, 143).unwrap(), 0.45, 0.005);
    as_printed(Chance::beta("g", 1.0, 1.0).unwrap().at_least(4, 9), 0.6, 1e-9);
}

#[test]
fn spread_intervals_and_samples() {
    let spread = Overdispersion { a: 21.0, b: 36.0, loglik: 0.0 };
    as_printed(spread.mean(), 0.368, 0.0005);
    as_printed(1.0 / (spread.a + spread.b + 1.0), 0.017, 0.0005);
    as_printed(clopper_pearson(0, 10, 0.95).unwrap().high, 0.3085, 0.00005);
    assert_eq!(sample_size_detection(0.05, 0.95), Ok(59));
}

#[test]
fn seed_in_store() {
    let cedrela = viability_record("Cedrela odorata").unwrap();
    assert_eq!(cedrela.source, "Lima et al. 2005");
    let shed = Store { moisture_pct: 8.0, temp_c: 25.0 };
    let told = viability(cedrela.constants, shed, 90.0, 180.0).unwrap();
    as_printed(told.sigma_days, 280.7, 0.05);
    as_printed(told.ki.unwrap(), 1.2816, 0.00005);
    as_printed(told.v_probit.unwrap(), 0.6403, 0.00005);
    as_printed(told.viability_pct.unwrap(), 73.9, 0.05);
    as_printed(told.p50_days.unwrap(), 359.7, 0.05);
    // Cacao in pods for three days of seven: 0.9889, of three and a half 0.7162, of fourteen 0.9992.
    as_printed(still_alive(7.0, 0.0, 3.0).unwrap(), 0.9889, 0.00006);
    as_printed(still_alive(3.5, 0.0, 3.0).unwrap(), 0.7162, 0.00006);
    as_printed(still_alive(14.0, 0.0, 3.0).unwrap(), 0.9992, 0.00006);
    as_printed(days_until(7.0, 0.0, 0.5).unwrap(), 7.0, 0.001);
}

#[test]
fn growth_of_forty_centimetres() {
    let curve = GrowthCurve { model: GrowthModel::Logistic, a: 40.0, k: 0.05, t0: 60.0 };
    as_printed(curve.height(80.0), 29.24, 0.005);
    as_printed(curve.height(60.0 + 3.0_f64.ln() / 0.05), 30.0, 1e-9);
    as_printed(60.0 + 3.0_f64.ln() / 0.05, 82.0, 0.05);
}
