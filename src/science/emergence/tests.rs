use super::*;
use crate::science::WrongInput;

fn looks(edges: &[f64], counts: &[u32], seeds: u32) -> Looks {
    Looks::new(edges, counts, seeds).unwrap()
}

fn barley() -> Looks {
    // Shape of a usual flush, looked at unevenly.
    looks(&[0.0, 3.0, 5.0, 7.0, 10.0, 14.0, 18.0, 21.0, 28.0, 35.0], &[0, 4, 9, 19, 31, 24, 12, 43, 11], 400)
}

#[test]
fn the_slope_is_the_slope() {
    let likelihood = super::likelihood::Likelihood::of(&barley());
    for (d, a, b) in [(0.5, 0.3, 2.0), (1.0, -1.0, 3.5), (0.9, 2.0, 12.0)] {
        let step = 1e-5;
        let here = likelihood.at(d, a, b);
        let by = |da: f64, db: f64| likelihood.at(d, a + da, b + db);
        let first = [
            (by(step, 0.0).value - by(-step, 0.0).value) / (2.0 * step),
            (by(0.0, step).value - by(0.0, -step).value) / (2.0 * step),
        ];
        let second = [
            (by(step, 0.0).first[0] - by(-step, 0.0).first[0]) / (2.0 * step),
            (by(step, 0.0).first[1] - by(-step, 0.0).first[1]) / (2.0 * step),
            (by(0.0, step).first[1] - by(0.0, -step).first[1]) / (2.0 * step),
        ];
        for (got, want) in here.first.iter().chain(&here.second).zip(first.iter().chain(&second)) {
            assert!((got - want).abs() < 1e-4 * want.abs().max(1.0), "{d} {a} {b}: {got} is not {want}");
        }
    }
}

#[test]
fn a_curve_that_made_the_counts_is_found_again() {
    let truth = Curve { d: 0.8, b: 4.0, t50: 12.0 };
    let edges: Vec<f64> = (0..=20).map(|i| f64::from(i) * 2.0).collect();
    let counts: Vec<u32> =
        edges.windows(2).map(|e| (1e5 * (truth.share(e[1]) - truth.share(e[0]))).round() as u32).collect();
    let fit = fit_emergence(&looks(&edges, &counts, 100_000));
    let curve = fit.curve.unwrap();
    assert!(
        (curve.d - 0.8).abs() < 1e-3 && (curve.b - 4.0).abs() < 0.01 && (curve.t50 - 12.0).abs() < 0.01,
        "{curve:?}"
    );
    assert!(fit.identifiable && !fit.at_boundary_d1);
    let interval = fit.d_ci95.unwrap();
    assert!(interval.low < 0.8 && 0.8 < interval.high && interval.high - interval.low < 0.02, "{interval:?}");
}

#[test]
fn moving_every_day_by_a_factor_moves_t50_by_it_and_nothing_else() {
    let once = fit_emergence(&barley());
    let edges: Vec<f64> = barley().edges().iter().map(|edge| edge * 7.0).collect();
    let counts: Vec<u32> = barley().counts().iter().map(|count| *count as u32).collect();
    let slow = fit_emergence(&looks(&edges, &counts, 400));
    let (one, other) = (once.curve.unwrap(), slow.curve.unwrap());
    assert!((other.t50 / one.t50 - 7.0).abs() < 1e-6);
    assert!((other.b / one.b - 1.0).abs() < 1e-6 && (other.d / one.d - 1.0).abs() < 1e-6);
}

#[test]
fn an_empty_interval_looked_at_once_more_changes_nothing() {
    let plain = fit_emergence(&looks(&[0.0, 8.0, 10.0, 12.0, 16.0, 24.0], &[0, 10, 20, 15, 0], 60));
    let split =
        fit_emergence(&looks(&[0.0, 2.0, 5.0, 8.0, 10.0, 12.0, 16.0, 18.0, 24.0], &[0, 0, 0, 10, 20, 15, 0, 0], 60));
    assert_eq!(plain, split);
}

#[test]
fn what_is_not_identifiable_is_said_to_be_so() {
    let none = fit_emergence(&looks(&[0.0, 7.0, 14.0], &[0, 0], 50));
    assert_eq!((none.identifiable, none.d, none.curve), (false, Some(0.0), None));
    let at_once = fit_emergence(&looks(&[0.0, 5.0, 10.0, 15.0], &[0, 41, 0], 50));
    assert_eq!((at_once.identifiable, at_once.d, at_once.curve), (false, Some(0.82), None));
    let two = fit_emergence(&looks(&[0.0, 4.0, 8.0, 12.0], &[0, 15, 15], 40));
    assert_eq!((two.identifiable, two.d, two.d_ci95), (false, None, None));
    let apart = fit_emergence(&looks(&[0.0, 2.0, 3.0, 5.0, 7.0, 9.0, 12.0], &[0, 0, 17, 0, 1, 0], 20));
    assert!(!apart.identifiable && apart.curve.is_some_and(|curve| (curve.d - 0.9).abs() < 1e-3), "{apart:?}");
    let first_look = fit_emergence(&looks(&[0.0, 30.0], &[20], 40));
    assert_eq!((first_look.identifiable, first_look.d), (false, None));
}

#[test]
fn nonsense_is_refused() {
    assert_eq!(Looks::new(&[], &[], 10), Err(WrongInput::Missing { input: "edges" }));
    assert_eq!(Looks::new(&[0.0], &[], 10), Err(WrongInput::Missing { input: "edges" }));
    assert!(Looks::new(&[1.0, 2.0], &[1], 10).is_err());
    assert_eq!(Looks::new(&[0.0, 3.0, 2.0], &[1, 1], 10), Err(WrongInput::OutOfOrder { input: "edges" }));
    assert!(Looks::new(&[0.0, f64::NAN], &[1], 10).is_err());
    assert!(Looks::new(&[0.0, 2.0], &[1, 1], 10).is_err());
    assert!(Looks::new(&[0.0, 2.0], &[11], 10).is_err());
    assert!(Looks::new(&[0.0, 2.0], &[0], 0).is_err());
    assert!(Looks::new(&[0.0, 2.0], &[0], 1_000_000_000).is_err());
}

fn coffee() -> CurvePrior {
    CurvePrior::of_species(Some(35.0), 55.0, Some(90.0), 0.8).unwrap()
}

#[test]
fn with_nothing_seen_the_forecast_is_the_handbook() {
    let forecast = forecast_by_prior(&looks(&[0.0, 1.0], &[0], 100), &coffee(), 365.0, 0.9).unwrap();
    assert!((forecast.in_the_end.likely - 80.0).abs() < 1.0, "{forecast:?}");
    assert!(forecast.in_the_end.low < 65.0 && forecast.in_the_end.high > 92.0, "{forecast:?}");
    assert!((forecast.curve.t50 / 55.0 - 1.0).abs() < 0.02, "{forecast:?}");
}

#[test]
fn with_everything_seen_the_forecast_is_what_was_seen() {
    let seen = looks(&[0.0, 30.0, 40.0, 50.0, 60.0, 70.0, 80.0, 200.0], &[0, 10, 20, 15, 5, 1, 0], 100);
    let forecast = forecast_by_prior(&seen, &coffee(), 365.0, 0.9).unwrap();
    assert!(forecast.in_the_end.high <= 53.0 && forecast.in_the_end.low == 51.0, "{forecast:?}");
}
