//! Forecasts of emergence on sowings whose end is known, because they were thrown with a seeded die.

use outplant::science::emergence::{CurvePrior, fit_emergence, forecast_by_prior};

use crate::support::sowings::{Die, SPECIES, Simulated, held};

/// The seed of every simulation here and of the figures in docs/reckoning.md.
const SEED: u64 = 20_261_125;

/// Of 100 sowings a true 90 % range holds 90, and by chance 82 to 97 of them (binomial, 99 %). The figures of 1,000, by
/// `cargo bench --bench science`, stand in docs/reckoning.md.
#[test]
fn the_range_of_a_forecast_at_the_half_day_holds_as_often_as_it_says() {
    let (held, _) = held(100, SEED);
    assert!((82..=97).contains(&held), "{held} of 100");
}

#[test]
fn more_looks_make_the_range_narrower_on_average() {
    let mut die = Die(SEED);
    let mut widths = [0.0; 4];
    for number in 0..60 {
        let (first, half, last, germination) = SPECIES[number % SPECIES.len()];
        let prior = CurvePrior::of_species(Some(first), half, Some(last), germination).unwrap();
        let sowing = Simulated::draw(&mut die, &prior, 100);
        for (width, share) in widths.iter_mut().zip([0.4, 0.8, 1.2, 2.0]) {
            let looks = sowing.looks(half / 8.0, half * share);
            let told = forecast_by_prior(&looks, &prior, 2.5 * last, 0.9).unwrap();
            *width += told.at_last_day.high - told.at_last_day.low;
        }
    }
    assert!(widths.windows(2).all(|pair| pair[1] < pair[0]), "{widths:?}");
}

#[test]
fn with_much_seen_the_prior_hardly_matters() {
    let mut die = Die(SEED);
    let (first, half, last, _) = SPECIES[1];
    let prior = CurvePrior::of_species(Some(first), half, Some(last), 0.6).unwrap();
    let wrong = CurvePrior::of_species(Some(first * 1.3), half * 1.3, Some(last * 1.3), 0.8).unwrap();
    for _ in 0..10 {
        let looks = Simulated::draw(&mut die, &prior, 2000).looks(1.5, 60.0);
        let own = forecast_by_prior(&looks, &prior, 120.0, 0.9).unwrap();
        let other = forecast_by_prior(&looks, &wrong, 120.0, 0.9).unwrap();
        assert!((own.in_the_end.likely - other.in_the_end.likely).abs() < 8.0, "{own:?} {other:?}");
        let plain = fit_emergence(&looks).curve.unwrap();
        assert!((own.curve.t50 / plain.t50 - 1.0).abs() < 0.03, "{own:?} {plain:?}");
    }
}

#[test]
fn earlier_sowings_of_the_nursery_draw_the_forecast_to_themselves() {
    let handbook = CurvePrior::of_species(Some(35.0), 55.0, Some(90.0), 0.8).unwrap();
    let mut die = Die(SEED);
    let here: Vec<_> = (0..15)
        .map(|_| {
            let slow = CurvePrior::of_species(Some(50.0), 80.0, Some(130.0), 0.5).unwrap();
            let looks = Simulated::draw(&mut die, &slow, 100).looks(5.0, 300.0);
            fit_emergence(&looks).curve.unwrap()
        })
        .collect();
    let learned = handbook.with_sowings(&here);
    assert!(learned.t50.median > 65.0 && learned.t50.median < 90.0, "{learned:?}");
    let mean = learned.d.a / (learned.d.a + learned.d.b);
    assert!(mean < 0.65, "{learned:?}");
    // Under five sowings the handbook leads.
    let few = handbook.with_sowings(&here[..2]);
    assert!((few.t50.median - 55.0).abs() < (few.t50.median - 80.0).abs(), "{few:?}");
}
