//! What a sample tells, and how large it must be.
//!
//! Sources: Wilson 1927, Journal of the American Statistical Association 22:209; sample sizes, usual survey formulas
//! (Cochran 1977, Sampling Techniques, from memory); range between replicates: 7 CFR 201.55 and Miles 1963.

use super::distribution;
use super::wrong_input::{self, WrongInput};
use crate::base::Range;

/// Largest sample that is searched for; beyond it a sample is no help. Ours.
const MOST_SAMPLED: u32 = 1_000_000_000;
/// Seeds in each replicate of the tolerance table.
const SEEDS_EACH_IN_TABLE: u32 = 100;
/// Replicates of the tolerance table used here.
const REPLICATES_IN_TABLE: usize = 4;
/// Maximum tolerated range between 4 replicates of 100 seeds: (lowest mean % of the row, range in % points).
/// Means 99 to 70: 7 CFR 201.55 (US Federal Seed Act regulations). Means 69 to 51: Miles 1963 / ISTA Rules table 5B, from memory.
const TOLERATED: [(u32, u32); 16] = [
    (99, 5),
    (98, 6),
    (97, 7),
    (96, 8),
    (95, 9),
    (93, 10),
    (91, 11),
    (89, 12),
    (87, 13),
    (84, 14),
    (81, 15),
    (78, 16),
    (73, 17),
    (67, 18),
    (56, 19),
    (51, 20),
];

/// Replicates whose differences come less often than this by chance do not agree: the level of the tolerance tables (ISTA
/// Rules, from memory).
pub(crate) const APART_BELOW: f64 = 0.025;
/// Fewer seeds in all cannot show that replicates agree: two of 25 that should not be believed differ no more than two that
/// should. Ours; the tables want 4 x 100.
pub(crate) const AGREE_FROM_SEEDS: u32 = 200;

/// How far replicates differ.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Differ {
    /// Within what chance explains.
    Agree,
    /// Too far apart: the test is to be made again.
    Apart,
    /// There is nothing to compare, or so few seeds that they cannot tell.
    Unknown,
}

/// What the replicates of a germination test say about each other.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Agreement {
    /// Mean count of a replicate.
    pub mean: f64,
    /// Largest less smallest count.
    pub range: u32,
    /// Largest range that chance explains; only for 4 replicates of 100, and not where the table has no row.
    pub max_tolerated_range: Option<u32>,
    /// Whether the range is within it; nothing where there is none.
    pub within_tolerance: Option<bool>,
    /// Sum of (x - mean)² / (n p (1 - p)); nothing when none or all germinated.
    pub chi_squared: Option<f64>,
    /// Probability of a chi-squared at least as large by chance, one degree of freedom fewer than replicates.
    pub p_value: Option<f64>,
    /// Seeds in all of them.
    pub(crate) seeds: u32,
}

impl Agreement {
    /// Whether the replicates agree: by the tolerance table where it has a row, else by chi-squared. Few seeds show only what is
    /// grossly apart.
    pub fn differ(&self) -> Differ {
        let apart = self.within_tolerance.map(|within| !within).or(self.p_value.map(|chance| chance < APART_BELOW));
        match apart {
            Some(true) => Differ::Apart,
            _ if self.seeds < AGREE_FROM_SEEDS => Differ::Unknown,
            // None or all germinated in each: nothing could be nearer.
            Some(false) | None => Differ::Agree,
        }
    }
}

/// Wilson score interval of a share: `found` of `looked_at`, at a confidence `level` above 0 and below 1 (0.95 is usual).
/// Low and high are shares from 0 to 1, likely is found / looked_at. Wilson 1927.
///
/// # Errors
/// Nothing looked at, more found than looked at, or a level that is no level.
pub fn wilson(found: u32, looked_at: u32, level: f64) -> Result<Range, WrongInput> {
    let (x, n) = (f64::from(found), f64::from(looked_at));
    wrong_input::positive("looked_at", n)?;
    wrong_input::within("found", x, 0.0, n)?;
    let z = distribution::two_sided_z(level)?;
    let share = x / n;
    let spread = z * (share * (1.0 - share) / n + z * z / (4.0 * n * n)).sqrt();
    let centre = share + z * z / (2.0 * n);
    let narrowed = 1.0 + z * z / n;
    // At the two ends the exact answer is the end itself; computed it would miss by a rounding.
    let low = if found == 0 { 0.0 } else { (centre - spread) / narrowed };
    let high = if found == looked_at { 1.0 } else { (centre + spread) / narrowed };
    Ok(Range { low: low.max(0.0), likely: share, high: high.min(1.0) })
}

/// The share of a normal distribution (mean 0, deviation 1) below a value.
pub(crate) fn normal_below(value: f64) -> f64 {
    super::distribution::normal_share(value)
}

/// Plants to look at so that a share near `expected_share` (0 to 1; 0.5 when nothing is known) is known to within
/// `half_width` (above 0, a share) at `confidence`: z² p (1 - p) / E² rounded up; of a `population` (1 or more) only
/// n / (1 + (n - 1) / N), n not rounded first. At least 1. Cochran 1977 (from memory).
///
/// # Errors
/// A share outside 0 to 1, a half width that is not above 0, a population of 0, a confidence that is no confidence, or
/// a sample of more than a thousand million.
pub fn sample_size_share(
    expected_share: f64,
    half_width: f64,
    confidence: f64,
    population: Option<u32>,
) -> Result<u32, WrongInput> {
    wrong_input::share("expected_share", expected_share)?;
    wrong_input::positive("half_width", half_width)?;
    let z = distribution::two_sided_z(confidence)?;
    let infinite = z * z * expected_share * (1.0 - expected_share) / (half_width * half_width);
    whole_sample(of_population(infinite, population)?, 1)
}

/// Plants to measure so that their mean is known to within `half_width` at `confidence`, by Student's t:
/// the smallest n of 2 or more with t(n - 1) s / √n <= E. `spread` and `half_width` in the same unit: a standard
/// deviation and a length, or a coefficient of variation and a relative error. Of a `population` (1 or more) only
/// n / (1 + (n - 1) / N). Usual survey formula.
///
/// # Errors
/// A spread below 0, a half width that is not above 0, a population of 0, a confidence that is no confidence, or a
/// sample of more than a thousand million.
pub fn sample_size_mean(
    spread: f64,
    half_width: f64,
    confidence: f64,
    population: Option<u32>,
) -> Result<u32, WrongInput> {
    let mut count = normal_sample(spread, half_width, confidence)?.ceil().max(2.0);
    // Beyond the largest sample the difference between t and z is far below one plant.
    while count < f64::from(MOST_SAMPLED)
        && distribution::two_sided_t(confidence, count - 1.0)? * spread > half_width * count.sqrt()
    {
        count += 1.0;
    }
    whole_sample(of_population(count, population)?, 1)
}

/// How near the mean of `count` plants (2 or more) is known at `confidence`: t(n - 1) s / √n, in the unit of `spread`, the
/// standard deviation. Usual survey formula.
///
/// # Errors
/// Fewer than two plants, a spread below 0, a confidence that is no confidence, or no number.
pub(crate) fn mean_half_width(spread: f64, count: u32, confidence: f64) -> Result<f64, WrongInput> {
    wrong_input::not_negative("spread", spread)?;
    wrong_input::positive("count", f64::from(count) - 1.0)?;
    let times = distribution::two_sided_t(confidence, f64::from(count - 1))?;
    wrong_input::answer(times * spread / f64::from(count).sqrt())
}

/// Plants to look at so that at least one that has something is among them with `confidence`, where a share of
/// `prevalence` (above 0, at most 1) has it: ln(1 - c) / ln(1 - p), rounded up. Usual survey formula.
///
/// # Errors
/// A prevalence that is not above 0, a confidence that is no confidence, or a sample of more than a thousand million.
pub fn sample_size_detection(prevalence: f64, confidence: f64) -> Result<u32, WrongInput> {
    wrong_input::share("prevalence", prevalence)?;
    wrong_input::positive("prevalence", prevalence)?;
    distribution::two_sided_z(confidence)?;
    whole_sample((-confidence).ln_1p() / (-prevalence).ln_1p(), 1)
}

/// The same of a few plants of which so many have it, looked at without putting any back: the fewest of which the hypergeometric chance
/// of none of those is at most 1 - c. All, where none has it.
pub(crate) fn sample_size_detection_among(standing: u32, with_it: u32, confidence: f64) -> u32 {
    let healthy = standing.saturating_sub(with_it);
    let mut none_found = 1.0;
    for looked_at in 0..healthy {
        if none_found <= 1.0 - confidence + 1e-12 {
            return looked_at;
        }
        none_found *= f64::from(healthy - looked_at) / f64::from(standing - looked_at);
    }
    // The next one has it.
    if with_it == 0 {
        standing
    } else if none_found <= 1.0 - confidence + 1e-12 {
        healthy
    } else {
        healthy + 1
    }
}

/// Largest tolerated difference, in % points, between 4 replicates of 100 seeds whose mean is `mean_pct`.
/// The mean is rounded half up; at 50 or below the row of 101 - mean counts. No row for 100, 1 and 0, nor for what is
/// no percentage. 7 CFR 201.55 for rows 99 to 70; Miles 1963 from memory below.
pub fn max_tolerated_range(mean_pct: f64) -> Option<u32> {
    if !(0.0..=100.0).contains(&mean_pct) {
        return None;
    }
    let mean = (mean_pct + 0.5).floor() as u32;
    let row = if mean <= 50 { 101 - mean } else { mean };
    if row > TOLERATED[0].0 {
        return None;
    }
    TOLERATED.iter().find(|(lowest, _)| row >= *lowest).map(|(_, range)| *range)
}

/// Whether the replicates of a germination test agree: `germinated` of `seeds_each` in each.
/// Chi-squared: sum of (x - m)² / (n p (1 - p)) with p over all replicates.
///
/// # Errors
/// Fewer than two replicates, no seeds, or more germinated than seeds.
pub fn agreement(germinated: &[u32], seeds_each: u32) -> Result<Agreement, WrongInput> {
    let n = f64::from(wrong_input::seeds("seeds_each", seeds_each)?);
    for &count in germinated {
        wrong_input::within("germinated", f64::from(count), 0.0, n)?;
    }
    let (Some(least), Some(most), 2..) = (germinated.iter().min(), germinated.iter().max(), germinated.len()) else {
        return Err(WrongInput::Missing { input: "replicates" });
    };
    let replicates = germinated.len() as f64;
    let mean = germinated.iter().map(|&count| f64::from(count)).sum::<f64>() / replicates;
    let range = most - least;
    let in_table = germinated.len() == REPLICATES_IN_TABLE && seeds_each == SEEDS_EACH_IN_TABLE;
    let max_tolerated_range = if in_table { max_tolerated_range(mean) } else { None };
    let variance = mean * (1.0 - mean / n);
    let squares: f64 = germinated.iter().map(|&count| (f64::from(count) - mean).powi(2)).sum();
    let chi_squared = (variance > 0.0).then(|| squares / variance);
    let p_value = chi_squared.map(|value| distribution::chi_squared_tail(value, replicates - 1.0)).transpose()?;
    let within_tolerance = max_tolerated_range.map(|most| range <= most);
    let seeds = seeds_each.saturating_mul(u32::try_from(germinated.len()).unwrap_or(u32::MAX));
    Ok(Agreement { mean, range, max_tolerated_range, within_tolerance, chi_squared, p_value, seeds })
}

const TOO_MANY: WrongInput = WrongInput::TooMany { input: "sampled", most: MOST_SAMPLED };

fn normal_sample(spread: f64, half_width: f64, confidence: f64) -> Result<f64, WrongInput> {
    wrong_input::not_negative("spread", spread)?;
    wrong_input::positive("half_width", half_width)?;
    let z = distribution::two_sided_z(confidence)?;
    wrong_input::answer((z * spread / half_width).powi(2))
}

fn of_population(sample: f64, population: Option<u32>) -> Result<f64, WrongInput> {
    match population {
        None => Ok(sample),
        Some(0) => Err(WrongInput::NotPositive { input: "population" }),
        // Below one plant the correction would enlarge the sample.
        Some(_) if sample <= 1.0 => Ok(sample),
        Some(all) => Ok(sample / (1.0 + (sample - 1.0) / f64::from(all))),
    }
}

fn whole_sample(sample: f64, least: u32) -> Result<u32, WrongInput> {
    // Not above the limit in this order also refuses what is no number.
    if sample <= f64::from(MOST_SAMPLED) { Ok((sample.ceil() as u32).max(least)) } else { Err(TOO_MANY) }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// From the quotient of `math.comb` of Python 3, in fractions.
    #[test]
    fn plants_to_look_at_of_a_few_agree_with_exact_fractions() {
        let among = |standing, with_it| sample_size_detection_among(standing, with_it, 0.95);
        for (standing, with_it, least) in [
            (48, 2, 37),
            (48, 3, 30),
            (48, 10, 12),
            (38, 8, 11),
            (20, 1, 19),
            (500, 25, 56),
            (2000, 100, 58),
            (12, 12, 1),
        ] {
            assert_eq!(among(standing, with_it), least, "{with_it} of {standing}");
        }
        assert_eq!((among(0, 0), among(7, 0)), (0, 7));
    }
    use proptest::prelude::*;

    fn close(got: f64, want: f64, what: &str) {
        assert!((got - want).abs() < 1e-9, "{what}: {got} is not {want}");
    }

    // Expected values: statsmodels on scipy 1.17.1.
    #[test]
    fn wilson_agrees_with_statsmodels() {
        for (found, looked_at, level, low, high) in [
            (0, 10, 0.95, 0.0, 0.277532799863),
            (10, 10, 0.90, 0.787058029917, 1.0),
            (1, 1, 0.95, 0.206549314377, 1.0),
            (1, 5, 0.95, 0.0362241086324, 0.624465370237),
            (10, 50, 0.90, 0.123473526661, 0.307326384811),
            (191, 200, 0.95, 0.916703295998, 0.976147456999),
            (799, 1000, 0.95, 0.773038813468, 0.822672784958),
        ] {
            let interval = wilson(found, looked_at, level).unwrap();
            close(interval.low, low, &format!("low end of {found} of {looked_at}"));
            close(interval.high, high, &format!("high end of {found} of {looked_at}"));
        }
    }

    // Expected values: scipy 1.17.1, stats.t.ppf and a search for the smallest n.
    #[test]
    fn a_large_sample_is_found_at_once() {
        for (confidence, spread, half_width, plants) in [
            (0.95, 10.0, 0.4, 2404),
            (0.99, 10.0, 0.1, 66_353),
            (0.9999, 3.0, 0.01, 1_362_312),
            (0.95, 50.0, 0.05, 3_841_462),
            (0.95, 40.0, 0.02, 15_365_838),
        ] {
            assert_eq!(sample_size_mean(spread, half_width, confidence, None), Ok(plants), "{spread} to {half_width}");
        }
        // However many an endless number would ask for, no more than stand there are looked at.
        assert_eq!(sample_size_mean(50.0, 0.001, 0.95, Some(400)), Ok(400));
    }

    // Expected values: own script on scipy 1.17.1; finite: n0 not rounded first.
    #[test]
    fn sample_sizes_of_a_share_agree_with_scipy() {
        for (confidence, share, half_width, population, infinite, finite) in [
            (0.90, 0.95, 0.02, 80, 322, 65),
            (0.99, 0.50, 0.10, 1200, 166, 146),
            (0.90, 0.70, 0.03, 5000, 632, 561),
            (0.99, 0.50, 0.08, 80, 260, 62),
            (0.99, 0.95, 0.10, 300, 32, 29),
            (0.99, 0.70, 0.05, 1200, 558, 381),
            (0.95, 0.50, 0.08, 80, 151, 53),
            (0.90, 0.70, 0.10, 300, 57, 48),
            (0.99, 0.50, 0.10, 5000, 166, 161),
            (0.99, 0.85, 0.02, 5000, 2115, 1487),
            (0.95, 0.95, 0.02, 1200, 457, 331),
            (0.99, 0.50, 0.08, 1200, 260, 214),
            (0.95, 0.85, 0.10, 80, 49, 31),
            (0.95, 0.70, 0.03, 80, 897, 74),
        ] {
            assert_eq!(sample_size_share(share, half_width, confidence, None), Ok(infinite), "{share} {half_width}");
            assert_eq!(
                sample_size_share(share, half_width, confidence, Some(population)),
                Ok(finite),
                "of {population}"
            );
        }
    }

    // Expected values: own script on scipy 1.17.1, smallest n >= 2 with t((1+c)/2, n-1) sd/sqrt(n) <= E.
    #[test]
    fn sample_sizes_of_a_mean_agree_with_scipy() {
        for (confidence, deviation, half_width, sampled) in [
            (0.90, 6.29, 3.43, 12),
            (0.90, 3.05, 2.25, 7),
            (0.99, 6.35, 4.38, 18),
            (0.95, 8.73, 6.54, 10),
            (0.90, 7.87, 1.57, 70),
            (0.95, 1.08, 0.23, 88),
            (0.95, 3.18, 2.13, 12),
            (0.99, 7.19, 2.23, 73),
        ] {
            assert_eq!(
                sample_size_mean(deviation, half_width, confidence, None),
                Ok(sampled),
                "{deviation} {half_width}"
            );
        }
    }

    #[test]
    fn a_sample_of_a_mean() {
        // CV 25 %, error 10 %: (1.96 x 2.5)² = 24.01, by hand.
        assert!((normal_sample(0.25, 0.10, 0.95).unwrap() - 24.01).abs() < 0.005);
        assert_eq!(sample_size_mean(0.0, 0.10, 0.95, None), Ok(2));
        assert_eq!(sample_size_mean(0.0, 0.10, 0.95, Some(1)), Ok(1));
    }

    // Expected values: 7 CFR 201.55 for the range; scipy 1.17.1 for chi-squared and p.
    #[test]
    fn replicates_agree_or_not() {
        let good = agreement(&[99, 100, 98, 97], 100).unwrap();
        assert_eq!(
            (good.mean, good.range, good.max_tolerated_range, good.within_tolerance),
            (98.5, 3, Some(5), Some(true))
        );
        close(good.chi_squared.unwrap(), 3.38409475465, "chi-squared");
        close(good.p_value.unwrap(), 0.336108672819, "p");
        let bad = agreement(&[62, 79, 89, 71], 100).unwrap();
        assert_eq!(
            (bad.mean, bad.range, bad.max_tolerated_range, bad.within_tolerance),
            (75.25, 27, Some(17), Some(false))
        );
        close(bad.chi_squared.unwrap(), 21.3027282795, "chi-squared");
        close(bad.p_value.unwrap(), 9.10840943205e-05, "p");
        let low = agreement(&[3, 10, 3, 8], 100).unwrap();
        assert_eq!((low.range, low.max_tolerated_range), (7, Some(9)));
        let all = agreement(&[100, 100, 100, 100], 100).unwrap();
        assert_eq!(
            (all.max_tolerated_range, all.within_tolerance, all.chi_squared, all.p_value),
            (None, None, None, None)
        );
        let small = agreement(&[20, 22], 25).unwrap();
        assert_eq!((small.mean, small.range, small.max_tolerated_range), (21.0, 2, None));
    }

    #[test]
    fn the_table_is_mirrored_below_half_and_ends_at_its_ends() {
        assert_eq!(max_tolerated_range(99.4), Some(5));
        assert_eq!(max_tolerated_range(99.5), None);
        assert_eq!(max_tolerated_range(2.0), Some(5));
        assert_eq!(max_tolerated_range(1.0), None);
        assert_eq!(max_tolerated_range(0.0), None);
        assert_eq!(max_tolerated_range(88.5), Some(12));
        assert_eq!(max_tolerated_range(50.0), max_tolerated_range(51.0));
        for wrong in [-1.0, 100.1, f64::NAN, f64::INFINITY] {
            assert_eq!(max_tolerated_range(wrong), None);
        }
    }

    // 3.984 is the studentised range of 4 at 97.5 % (Miles 1963); the row of 99 alone is printed one higher than the rule.
    #[test]
    fn the_table_follows_the_rule_behind_it() {
        for rows in TOLERATED.windows(2).skip(1) {
            let [(above, _), (lowest, range)] = rows else { unreachable!() };
            let middle = (f64::from(*lowest) + f64::from(above - 1)) / 2.0;
            let rule = 3.984 * (middle * (100.0 - middle) / 100.0).sqrt();
            assert_eq!(rule.round() as u32, *range, "from {lowest}: {rule}");
        }
    }

    #[test]
    fn nonsense_is_refused() {
        assert!(wilson(0, 0, 0.95).is_err());
        assert!(wilson(5, 4, 0.95).is_err());
        assert!(wilson(1, 4, 1.0).is_err());
        assert!(wilson(1, 4, f64::NAN).is_err());
        assert!(sample_size_share(0.5, 0.0, 0.95, None).is_err());
        assert!(sample_size_share(0.5, 0.1, 0.95, Some(0)).is_err());
        assert!(sample_size_share(0.5, 1e-200, 0.95, None).is_err());
        assert!(sample_size_share(0.5, 1e-200, 0.95, Some(100)).is_err());
        assert!(sample_size_mean(-1.0, 0.1, 0.95, None).is_err());
        assert!(sample_size_mean(1e300, 1e-300, 0.95, None).is_err());
        assert!(sample_size_mean(0.25, 0.1, f64::NAN, None).is_err());
        assert!(agreement(&[5], 100).is_err());
        assert!(agreement(&[], 100).is_err());
        assert!(agreement(&[5, 101], 100).is_err());
        assert!(agreement(&[0, 0], 0).is_err());
    }

    proptest! {
        #[test]
        fn wilson_holds_the_share_found(looked_at in 1u32.., part in 0.0..=1.0f64, level in 0.001..0.9999f64) {
            let found = (f64::from(looked_at) * part) as u32;
            let interval = wilson(found, looked_at, level).unwrap();
            let share = f64::from(found) / f64::from(looked_at);
            prop_assert!(0.0 <= interval.low && interval.low <= share, "{:?} {}", interval, share);
            prop_assert!(share <= interval.high && interval.high <= 1.0, "{:?} {}", interval, share);
        }

        #[test]
        fn a_sample_is_never_larger_than_what_there_is(
            share in 0.0..=1.0f64, half_width in 0.001..0.5f64, spread in 0.0..50.0f64, population in 1u32..100_000,
        ) {
            prop_assert!(sample_size_share(share, half_width, 0.95, Some(population)).unwrap() <= population);
            prop_assert!(sample_size_mean(spread, half_width, 0.95, Some(population)).unwrap() <= population);
        }

        #[test]
        fn students_t_never_asks_for_fewer_than_the_normal(spread in 0.0..5.0f64, half_width in 0.1..1.0f64) {
            let rough = normal_sample(spread, half_width, 0.95).unwrap();
            prop_assert!(f64::from(sample_size_mean(spread, half_width, 0.95, None).unwrap()) >= rough);
        }
    }
}
