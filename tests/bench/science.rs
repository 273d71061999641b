//! Formulas of seed and seedlings: how long they take, and how often the forecast's range holds. Prints figures; judges
//! nothing.
#![allow(clippy::unwrap_used, clippy::print_stdout, missing_docs)]

#[path = "../support/mod.rs"]
#[allow(dead_code, unused_imports, clippy::panic)]
mod support;
#[path = "../support/taken.rs"]
mod taken;

use std::hint::black_box;

use outplant::base::Day;
use outplant::reckon::forecast::{ForecastBasis, band, forecasts_of, outlook_of_living};
use outplant::reckon::picture::Stage;
use outplant::reckon::round::round_from;
use outplant::reckon::{View, draw_picture};
use outplant::science::chance::Chance;
use outplant::science::emergence::{CurvePrior, Looks, fit_emergence, forecast_by_prior};
use outplant::science::growth::{GrowthModel, fit_growth};
use outplant::science::sowing::seeds_to_sow;
use serde_json::json;
use support::sowings;
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
    whole_nursery();
    // The table of docs/reckoning.md, section 28.
    println!(
        "of 1000 simulated sowings (seed {SEED}) the 90 % range of what is up by twice the last day held, and was wide:"
    );
    for halves in [0.5, 1.0, 1.5] {
        let (held, width) = sowings::held(1000, SEED, halves);
        println!("  looked at up to {halves} of the half day: {held} of 1000, {width:.2} of the seeds");
    }
    let (held, width) = sowings::held_together(1000, SEED);
    println!("  two sowings in one tray, up to the half day of the second: {held} of 1000, {width:.2} of the seeds");
}

/// A nursery of 200 trays with seed to come, and as many finished ones, from its entries to what is expected of all of it.
fn whole_nursery() {
    let today = support::day("2026-06-30");
    let mut book = support::Book::default();
    let mut die = sowings::Die(SEED);
    for number in 0..400 {
        let (species, half) = [("coffee", 55.0), ("grevillea", 20.0), ("papaya", 18.0), ("avocado", 38.0)][number % 4];
        let finished = number >= 200;
        let age = if finished { 400.0 } else { half * (0.4 + 1.2 * die.share()) };
        sown_tray(&mut book, &mut die, (number, species), today.plus(-(age as i32)), age.min(3.0 * half), half);
    }
    let picture = draw_picture(View { day: today, known: None }, today, book.entries.iter().cloned());
    let told = forecasts_of(&picture, ForecastBasis::OwnRecords, |tray| tray.stage != Stage::Spent && tray.seed > 0);
    println!("{} forecasts of {} trays, {} entries", told.len(), picture.trays.len(), book.entries.len());
    report("forecasts of 200 trays with seed to come", 20, || {
        black_box(forecasts_of(black_box(&picture), ForecastBasis::OwnRecords, |tray| {
            tray.seed > 0 && today.days_since(tray.sown_on.unwrap_or(today)) < 200
        }));
    });
    report("all that is expected of these and 200 finished trays", 20, || {
        black_box(outlook_of_living(black_box(&picture), ForecastBasis::OwnRecords));
    });
    let outlook = outlook_of_living(&picture, ForecastBasis::OwnRecords);
    report("the round, once that is known", 20, || {
        black_box(round_from(black_box(&picture), &outlook));
    });
    let (code, forecast) = outlook.trays.iter().find(|(_, told)| told.last_look.is_some()).unwrap();
    report("the drawing of one tray", 50, || {
        black_box(band(&picture.trays[code].story, black_box(forecast), forecast.last_due));
    });
}

/// One tray of 100 seeds, counted every eighth of the half day.
fn sown_tray(
    book: &mut support::Book,
    die: &mut sowings::Die,
    (number, species): (usize, &str),
    sown: Day,
    age: f64,
    half: f64,
) {
    let prior = CurvePrior::of_species(Some(half * 0.6), half, Some(half * 1.8), 0.8).unwrap();
    let sowing = sowings::Simulated::draw(die, &prior, 100);
    let tray = format!("{}-{number:03}", &species[..3]);
    let body = json!({"tray":tray,"lot":"unknown","species":species,"seeds":100,"container":"tray","cells":100});
    book.write(&sown.to_string(), "sown", body);
    let mut day = half / 8.0;
    while day <= age {
        let on = sown.plus(day as i32).to_string();
        book.write(&on, "counted", json!({"tray":tray,"standing":sowing.up(f64::from(day as i32))}));
        day += half / 8.0;
    }
}
