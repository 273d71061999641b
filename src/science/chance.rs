//! A chance that is known or only believed, and how many of so many it gives: binomial and beta-binomial numbers.
//!
//! Source: Skellam 1948, Journal of the Royal Statistical Society B 10:257 (beta-binomial, from memory).

use super::interval::Interval;
use super::wrong_input::{self, WrongInput};

/// Weight, against the largest, below which the rest of a tail is left out.
const SMALLEST_WEIGHT: f64 = 1e-20;

/// A chance from 0 to 1.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Chance {
    /// Known exactly.
    Known(f64),
    /// Believed: a beta distribution, as if a - 1 of a + b - 2 had been seen to come.
    Beta {
        /// What came, above 0.
        a: f64,
        /// What did not, above 0.
        b: f64,
    },
}

impl Chance {
    /// A known chance.
    ///
    /// # Errors
    /// Outside 0 to 1 or no number.
    pub fn known(input: &'static str, share: f64) -> Result<Chance, WrongInput> {
        Ok(Chance::Known(wrong_input::share(input, share)?))
    }

    /// A believed chance.
    ///
    /// # Errors
    /// An `a` or `b` that is not above 0, above a thousand million, or no number.
    pub fn beta(input: &'static str, a: f64, b: f64) -> Result<Chance, WrongInput> {
        for value in [a, b] {
            wrong_input::positive(input, value)?;
            wrong_input::within(input, value, 0.0, 1e9)?;
        }
        Ok(Chance::Beta { a, b })
    }

    /// The belief in a chance of which only the mean and the variance are known; known exactly where the variance is 0.
    pub(super) fn of_moments(mean: f64, variance: f64) -> Chance {
        let most = mean * (1.0 - mean);
        if variance <= 1e-12 * most || most <= 0.0 {
            return Chance::Known(mean.clamp(0.0, 1.0));
        }
        let weight = (most / variance - 1.0).max(1e-3);
        Chance::Beta { a: mean * weight, b: (1.0 - mean) * weight }
    }

    /// Its mean.
    pub fn mean(self) -> f64 {
        match self {
            Chance::Known(share) => share,
            Chance::Beta { a, b } => a / (a + b),
        }
    }

    /// Hands out the weight of each number from 0 to `n`, the largest about 1; what is next to nothing is left out.
    pub(super) fn weights(self, n: u32, mut take: impl FnMut(u32, f64)) {
        let (start, two_ends) = self.most_likely(n);
        let whole = f64::from(n);
        take(start, 1.0);
        let mut weight = 1.0;
        for m in start..n {
            let at = f64::from(m);
            weight *= match self {
                Chance::Known(share) => (whole - at) * share / ((at + 1.0) * (1.0 - share)),
                Chance::Beta { a, b } => (whole - at) * (a + at) / ((at + 1.0) * (b + whole - at - 1.0)),
            };
            if weight < SMALLEST_WEIGHT && !two_ends {
                break;
            }
            take(m + 1, weight);
        }
        let mut weight = 1.0;
        for m in (1..=start).rev() {
            let at = f64::from(m);
            weight *= match self {
                Chance::Known(share) => at * (1.0 - share) / ((whole - at + 1.0) * share),
                Chance::Beta { a, b } => at * (b + whole - at) / ((whole - at + 1.0) * (a + at - 1.0)),
            };
            if weight < SMALLEST_WEIGHT && !two_ends {
                break;
            }
            take(m - 1, weight);
        }
    }

    /// The most likely number, and whether both ends are likelier than the middle.
    fn most_likely(self, n: u32) -> (u32, bool) {
        let whole = f64::from(n);
        let at = match self {
            Chance::Known(share) => (whole + 1.0) * share,
            Chance::Beta { a, b } if a >= 1.0 && b >= 1.0 && a + b > 2.0 => (whole + 1.0) * (a - 1.0) / (a + b - 2.0),
            Chance::Beta { a, b } if a >= 1.0 && b < 1.0 && a + b > 0.0 => whole,
            Chance::Beta { .. } => 0.0,
        };
        let two_ends = matches!(self, Chance::Beta { a, b } if a < 1.0 && b < 1.0);
        (at.clamp(0.0, whole) as u32, two_ends)
    }

    /// Chance of at least `least` of `n`.
    pub fn at_least(self, least: u32, n: u32) -> f64 {
        let (mut reached, mut all) = (0.0, 0.0);
        self.weights(n, |m, weight| {
            all += weight;
            if m >= least {
                reached += weight;
            }
        });
        reached / all
    }

    /// The middle `level` (above 0, below 1) of the numbers of `n`: tails of at most half the rest on either side.
    pub fn middle(self, n: u32, level: f64) -> Interval {
        let mut weights: Vec<(u32, f64)> = Vec::new();
        self.weights(n, |m, weight| weights.push((m, weight)));
        weights.sort_unstable_by_key(|(m, _)| *m);
        let all: f64 = weights.iter().map(|(_, weight)| weight).sum();
        let tail = (1.0 - level) / 2.0 * all;
        let quantile = |from_below: f64| {
            let mut sum = 0.0;
            for (m, weight) in &weights {
                sum += weight;
                if sum >= from_below {
                    return f64::from(*m);
                }
            }
            f64::from(n)
        };
        Interval { low: quantile(tail), high: quantile(all - tail) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fair_coin_thrown_three_times() {
        let coin = Chance::Known(0.5);
        for (least, want) in [(0, 1.0), (1, 0.875), (2, 0.5), (3, 0.125)] {
            assert!((coin.at_least(least, 3) - want).abs() < 1e-15, "{least}");
        }
    }

    #[test]
    fn nothing_known_makes_every_number_equally_likely() {
        let any = Chance::Beta { a: 1.0, b: 1.0 };
        assert!((any.at_least(4, 9) - 0.6).abs() < 1e-14);
        assert_eq!(any.middle(99, 0.9), Interval { low: 4.0, high: 94.0 });
    }

    #[test]
    fn certainties_and_two_ends_are_no_trap() {
        assert_eq!((Chance::Known(0.0).at_least(1, 50), Chance::Known(1.0).at_least(50, 50)), (0.0, 1.0));
        let ends = Chance::Beta { a: 0.01, b: 0.01 };
        assert!((ends.at_least(50, 100) - 0.5).abs() < 0.01);
        let nearly = Chance::Beta { a: 300.0, b: 0.5 };
        assert!(nearly.at_least(100_000, 100_000) > 0.0);
    }

    #[test]
    fn binomial_and_beta_binomial_numbers_agree_with_scipy() {
        let all: serde_json::Value = serde_json::from_str(include_str!("../../tests/reference/stats.json")).unwrap();
        let mut checked = 0;
        for check in all["checks"].as_array().unwrap() {
            let x: Vec<f64> = check["args"].as_array().unwrap().iter().map(|value| value.as_f64().unwrap()).collect();
            let name = check["f"].as_str().unwrap();
            let chance = match name {
                "binom_pmf" | "binom_cdf" => Chance::Known(x[2]),
                "betabinom_pmf" | "betabinom_cdf" => Chance::Beta { a: x[2], b: x[3] },
                _ => continue,
            };
            let (k, n, want) = (x[0] as u32, x[1] as u32, check["v"].as_f64().unwrap());
            let (mut part, mut all) = (0.0, 0.0);
            chance.weights(n, |m, weight| {
                all += weight;
                let counts = if name.ends_with("cdf") { m <= k } else { m == k };
                part += if counts { weight } else { 0.0 };
            });
            // What is left out is smaller than any chance that matters.
            let got = part / all;
            assert!((got - want).abs() <= 1e-9 * want + 1e-17, "{check}: {got}");
            checked += 1;
        }
        assert_eq!(checked, 80);
    }

    #[test]
    fn moments_come_back() {
        let Chance::Beta { a, b } = Chance::of_moments(0.3, 0.01) else { panic!("not a beta") };
        assert!((a / (a + b) - 0.3).abs() < 1e-12);
        assert!((a * b / ((a + b).powi(2) * (a + b + 1.0)) - 0.01).abs() < 1e-12);
        assert_eq!(Chance::of_moments(0.3, 0.0), Chance::Known(0.3));
    }
}
