//! Formulas of seed and seedlings: how long they take, and how often the forecast's range holds. Prints figures; judges
//! nothing.
#![allow(clippy::unwrap_used, clippy::print_stdout, missing_docs)]

#[path = "../support/sowings.rs"]
mod sowings;
#[path = "../support/taken.rs"]
mod taken;

use std::hint::black_box;

use outplant::science::chance::Chance;
use outplant::science::emergence::{CurvePrior, Looks, fit_emergence, forecast_by_prior};
use outplant::science::growth::{GrowthModel, fit_growth};
use outplant::science::sowing::seeds_to_sow;
use taken::report;

/// The seed of the simulations, as in the tests.
const SEED: u64 = 20_261_125;

fn main() {
    let edges: Vec<f64> = (0..=30).map(f64::from).collect();
    let counts = [0, 0, 1, 1, 1, 5, 3, 9, 6, 3, 8, 7, 5, 2, 5, 9, 6, 5, 1, 2, 2, 1, 1, 0, 2, 1, 0, 1, 1, 0];
    let looks = Looks::new(&edges, &counts, 100).unwrap();
    let prior = CurvePrior::of_species(Some(7.0), 12.0, Some(25.0), 0.8).unwrap();
    report("emergence, one fit of 30 looks with its interval", 200, || {
        black_box(fit_emergence(black_box(&looks)));
    });
    report("forecast with a prior, one sowing of 30 looks", 200, || {
        black_box(forecast_by_prior(black_box(&looks), &prior, 60.0, 0.9).unwrap());
    });
    let (test, survival) = (Chance::beta("g", 70.0, 30.0).unwrap(), Chance::beta("s", 45.0, 5.0).unwrap());
    for wanted in [100, 10_000, 100_000] {
        report(&format!("seeds for {wanted} plants, germination tested"), 20, || {
            black_box(seeds_to_sow(test, None, wanted, 0.95).unwrap());
        });
        report(&format!("seeds for {wanted} plants, survival believed too"), 20, || {
            black_box(seeds_to_sow(test, Some(survival), wanted, 0.95).unwrap());
        });
    }
    let (t, y) = ([9.0, 23.0, 36.0, 46.0, 58.0, 65.0, 79.0], [4.6, 7.7, 16.7, 24.8, 39.3, 43.8, 55.8]);
    report("growth, both curves of 7 heights", 200, || {
        for model in GrowthModel::ALL {
            black_box(fit_growth(model, black_box(&t), black_box(&y)).unwrap());
        }
    });
    let (held, width) = sowings::held(1000, SEED);
    println!(
        "the 90 % range at the half day held in {held} of 1000 simulated sowings (seed {SEED}); mean width {width:.3} of the seeds"
    );
}
