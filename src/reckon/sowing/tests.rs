use super::belief::{Germination, SURVIVAL_SEEDLINGS, USUAL_SURVIVAL};
use super::containers::{FILLED_SHARE, MOST_EACH, filled, seeds_each};
use crate::science::chance::Chance;

/// The table of Dumroese, Luna & Landis 2009 (from memory): 2 seeds from 70 to 89 %, 3 from 60, 4 from 50, 5 from 40.
#[test]
fn seeds_in_a_container_are_those_of_the_handbook() {
    let expected = [(0.95, 1), (0.90, 1), (0.85, 2), (0.70, 2), (0.62, 3), (0.55, 3), (0.50, 4), (0.40, 5)];
    for (germination, each) in expected {
        assert_eq!(seeds_each(germination), Some(each), "{germination}");
        assert!(1.0 - (1.0 - germination).powi(each as i32) >= FILLED_SHARE - 1e-12);
    }
    assert_eq!((seeds_each(0.30), seeds_each(0.0), MOST_EACH), (None, None, 5));
}

#[test]
fn a_filled_container_is_as_sure_as_its_seed() {
    // Known exactly: 1 - 0.35^2.
    assert_eq!(filled(Chance::Known(0.65), 2).unwrap(), Chance::Known(1.0 - 0.35_f64.powi(2)));
    // Beta 1, 1: empty with 1/3 on average, its square 1/5; variance 1/5 - 1/9 = 4/45, so weight (2/9) / (4/45) - 1 = 1.5.
    let Chance::Beta { a, b } = filled(Chance::Beta { a: 1.0, b: 1.0 }, 2).unwrap() else { panic!("not a beta") };
    assert!((a - 1.0).abs() < 1e-12 && (b - 0.5).abs() < 1e-12, "{a} {b}");
    // One seed in each is the seed itself.
    let Chance::Beta { a, b } = filled(Chance::Beta { a: 6.0, b: 2.0 }, 1).unwrap() else { panic!("not a beta") };
    assert!((a - 6.0).abs() < 1e-9 && (b - 2.0).abs() < 1e-9, "{a} {b}");
}

#[test]
fn what_was_lost_in_store_comes_off_the_mean_and_not_off_the_doubt() {
    let known = Germination { a: 3.2, b: 0.8, sowings: 0, tested: None, left: Some(0.5), life_unknown: false };
    assert!((known.mean() - 0.4).abs() < 1e-12);
    let Chance::Beta { a, b } = known.chance().unwrap() else { panic!("not a beta") };
    assert!((a - 1.6).abs() < 1e-12 && (b - 2.4).abs() < 1e-12, "{a} {b}");
    assert!((USUAL_SURVIVAL * SURVIVAL_SEEDLINGS - 6.0).abs() < 1e-12, "section 34 says 6 and 2");
}
