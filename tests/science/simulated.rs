//! Forecasts of emergence on sowings whose end is known, because they were thrown with a seeded die.

use outplant::science::emergence::{
    Batch, CurvePrior, Looks, SeenSowing, fit_emergence, forecast_by_prior, forecast_of_several,
};

use crate::support::sowings::{Die, SPECIES, Simulated, held, held_together};

/// The seed of every simulation here and of the figures in docs/reckoning.md.
const SEED: u64 = 20_261_125;

/// Of 100 sowings a true 90 % range holds 90, and by chance 82 to 97 of them (binomial, 99 %). The figures of 1,000, by
/// `cargo bench --bench science`, stand in docs/reckoning.md.
#[test]
fn the_range_of_a_forecast_at_the_half_day_holds_as_often_as_it_says() {
    let (held, _) = held(100, SEED, 1.0);
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
            let curve = fit_emergence(&looks).curve;
            SeenSowing { seeds: 100.0, emerged: looks.emerged(), last_look: looks.last_look(), curve }
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

/// Trays of which nothing came up say as much of the seed as trays that came up well: a nursery in which every third sowing
/// fails does not believe the handbook's 80 %.
#[test]
fn total_failures_lower_what_is_believed_and_a_look_too_early_hardly_does() {
    let handbook = CurvePrior::of_species(Some(35.0), 55.0, Some(90.0), 0.8).unwrap();
    let mean = |prior: CurvePrior| prior.d.a / (prior.d.a + prior.d.b);
    let failed = |last_look| SeenSowing { seeds: 100.0, emerged: 0.0, last_look, curve: None };
    let one = mean(handbook.with_sowings(&[failed(400.0)]));
    // The handbook as five sowings at 80 %, one at none: 4 / 6.
    assert!((one - 4.0 / 6.0).abs() < 0.001, "{one}");
    // Looked at on the half day only half of what might come was to be seen: 4 / 5.5.
    let half = mean(handbook.with_sowings(&[failed(55.0)]));
    assert!((half - 4.0 / 5.5).abs() < 0.001, "{half}");
    let four = mean(handbook.with_sowings(&[failed(400.0); 4]));
    assert!((four - 4.0 / 9.0).abs() < 0.002 && handbook.with_sowings(&[failed(400.0); 4]).d.a > 0.0, "{four}");
    // A single flush tells no curve, and its share counts all the same: 60 of 100.
    let flush = SeenSowing { emerged: 60.0, ..failed(400.0) };
    assert!((mean(handbook.with_sowings(&[flush])) - 4.6 / 6.0).abs() < 0.001);
}

/// Several sowings in one tray: the joint range holds as often as it says. Of 60, 90 % are 54; by chance 48 to 60 (binomial,
/// 99 %).
#[test]
fn the_joint_range_of_two_sowings_holds_as_often_as_it_says() {
    let (held, _) = held_together(60, SEED);
    assert!((48..=60).contains(&held), "{held} of 60");
}

#[test]
fn a_failed_sowing_does_not_make_the_next_one_fail() {
    let prior = CurvePrior::of_species(Some(35.0), 55.0, Some(90.0), 0.8).unwrap();
    // Four of a hundred up on day 120, another hundred sown that day.
    let edges = [0.0, 45.0, 60.0, 75.0, 90.0, 120.0];
    let looks = Looks::new(&edges, &[0, 2, 1, 1, 0], 200).unwrap();
    let batch = |after_days| Batch { after_days, seeds: 100, d: prior.d };
    let told = forecast_of_several(&looks, &[batch(0.0), batch(120.0)], (prior.t50, prior.b), 300.0, 0.9).unwrap();
    assert!((told.in_the_end.likely - 84.0).abs() < 4.0, "4 and 80: {told:?}");
    assert!(told.shares[0] < 0.08 && told.shares[1] > 0.7, "{told:?}");
    // Nothing can have come of seed sown on the day of the last look.
    assert!(told.of_youngest.high < 1e-9, "{told:?}");
    // Two months on 40 more are up, and they can only be of the second.
    let edges = [0.0, 45.0, 60.0, 75.0, 90.0, 120.0, 180.0, 200.0];
    let looks = Looks::new(&edges, &[0, 2, 1, 1, 0, 40, 20], 200).unwrap();
    let told = forecast_of_several(&looks, &[batch(0.0), batch(120.0)], (prior.t50, prior.b), 300.0, 0.9).unwrap();
    assert!(told.of_youngest.low > 57.0 && told.of_youngest.high <= 64.0, "{told:?}");
}
