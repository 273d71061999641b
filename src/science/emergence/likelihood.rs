//! The log-likelihood of looks under a curve, with its first and second derivatives.
//!
//! The curve is written as a straight line u = a + b x on x = ln t (a = -b ln t50), in which the logarithm of each interval's
//! probability is concave (Burridge 1981, Biometrika 68:241, from memory).

use super::curve::{ln_logistic, logistic};
use super::looks::Looks;
use crate::science::climb::Slope;

/// Looks made ready for many evaluations.
pub(super) struct Likelihood {
    /// ln of each edge after the first, less `centre`.
    x: Vec<f64>,
    /// Newly emerged in the interval that ends there.
    counts: Vec<f64>,
    /// ln of the day that x is counted from.
    pub centre: f64,
    /// Seeds sown.
    pub seeds: f64,
    /// Seeds that emerged.
    pub emerged: f64,
}

/// Adds a term of u = a + b x with its derivatives by u.
fn add(sum: &mut Slope, x: f64, value: f64, first: f64, second: f64) {
    sum.value += value;
    sum.first[0] += first;
    sum.first[1] += first * x;
    sum.second[0] += second;
    sum.second[1] += second * x;
    sum.second[2] += second * x * x;
}

impl Likelihood {
    pub fn of(looks: &Looks) -> Likelihood {
        let looks = looks.merged();
        let centre = looks.half_day().max(f64::MIN_POSITIVE).ln();
        Likelihood {
            x: looks.edges()[1..].iter().map(|edge| edge.ln() - centre).collect(),
            counts: looks.counts().to_vec(),
            centre,
            seeds: looks.seeds(),
            emerged: looks.emerged(),
        }
    }

    /// x of the last look.
    pub(crate) fn last_x(&self) -> f64 {
        self.x.last().copied().unwrap_or(0.0)
    }

    /// Sum over intervals of count x ln(probability that one of those that come up does so in the interval).
    pub fn intervals(&self, a: f64, b: f64) -> Slope {
        let mut sum = Slope::default();
        for (i, &count) in self.counts.iter().enumerate() {
            if count == 0.0 {
                continue;
            }
            let x2 = self.x[i];
            let u2 = a + b * x2;
            if i == 0 {
                let up = logistic(u2);
                add(&mut sum, x2, count * ln_logistic(u2), count * (1.0 - up), -count * up * (1.0 - up));
                continue;
            }
            let x1 = self.x[i - 1];
            let u1 = a + b * x1;
            // G(u2) - G(u1) = G(u2) (1 - G(u1)) (1 - e^(u1 - u2)): no digits are lost where both are near 0 or 1.
            let gap = u2 - u1;
            let odds = 1.0 / gap.exp_m1();
            let bend = odds * (1.0 + odds);
            let (up1, up2) = (logistic(u1), logistic(u2));
            let value = ln_logistic(u2) + ln_logistic(-u1) + (-(-gap).exp_m1()).ln();
            add(&mut sum, x2, count * value, count * (1.0 - up2 + odds), count * (-up2 * (1.0 - up2) - bend));
            add(&mut sum, x1, 0.0, count * (-up1 - odds), count * (-up1 * (1.0 - up1) - bend));
            let mixed = count * bend;
            sum.second[0] += 2.0 * mixed;
            sum.second[1] += mixed * (x1 + x2);
            sum.second[2] += 2.0 * mixed * x1 * x2;
        }
        sum
    }

    /// The log-likelihood at a given d, above 0 and at most 1.
    pub fn at(&self, d: f64, a: f64, b: f64) -> Slope {
        let mut sum = self.intervals(a, b);
        sum.value += self.emerged * d.ln();
        let waiting = self.seeds - self.emerged;
        if waiting > 0.0 {
            let x = self.last_x();
            let u = a + b * x;
            let (up, not_up) = (logistic(u), logistic(-u));
            // 1 - d G without losing digits where d is 1.
            let out = (1.0 - d) + d * not_up;
            let by_u = -d * up * not_up / out;
            let by_uu = -d * up * not_up * (not_up - up) / out - by_u * by_u;
            add(&mut sum, x, waiting * out.ln(), waiting * by_u, waiting * by_uu);
        }
        sum
    }

    /// The log-likelihood with the best d for each curve: N / (n G) where that is at most 1, else 1.
    pub(crate) fn at_best_d(&self, a: f64, b: f64) -> Slope {
        let x = self.last_x();
        let u = a + b * x;
        let up = logistic(u);
        if self.emerged >= self.seeds * up {
            return self.at(1.0, a, b);
        }
        let mut sum = self.intervals(a, b);
        add(&mut sum, x, -self.emerged * ln_logistic(u), -self.emerged * (1.0 - up), self.emerged * up * (1.0 - up));
        sum.value += self.emerged * (self.emerged / self.seeds).ln();
        let waiting = self.seeds - self.emerged;
        sum.value += waiting * (waiting / self.seeds).ln();
        sum
    }

    /// The best d for a curve.
    pub(crate) fn best_d(&self, a: f64, b: f64) -> f64 {
        (self.emerged / (self.seeds * logistic(a + b * self.last_x()))).min(1.0)
    }

    /// The chance that a seed not up at the last look comes at all.
    pub(crate) fn still_comes(&self, d: f64, a: f64, b: f64) -> f64 {
        let not_up = logistic(-(a + b * self.last_x()));
        let out = (1.0 - d) + d * not_up;
        if out > 0.0 { d * not_up / out } else { 0.0 }
    }

    /// Second derivatives in (d, a, b) at a d below 1: rows of a symmetric matrix.
    pub(crate) fn second_with_d(&self, d: f64, a: f64, b: f64) -> [[f64; 3]; 3] {
        let by_line = self.at(d, a, b).second;
        let x = self.last_x();
        let u = a + b * x;
        let (up, not_up) = (logistic(u), logistic(-u));
        let out = (1.0 - d) + d * not_up;
        let waiting = self.seeds - self.emerged;
        let by_dd = -self.emerged / (d * d) - waiting * (up / out).powi(2);
        let by_du = -waiting * up * not_up / (out * out);
        [[by_dd, by_du, by_du * x], [by_du, by_line[0], by_line[1]], [by_du * x, by_line[1], by_line[2]]]
    }
}
