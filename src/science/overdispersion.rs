//! How much germination differs from sowing to sowing, beyond chance: a beta-binomial fitted to several.
//!
//! Source: Crowder 1978, Applied Statistics 27:34 (beta-binomial model of germination data; his counts are read from an open
//! data set, the paper from memory).

use super::climb::{Slope, climb};
use super::distribution::{digamma, ln_beta, ln_gamma};
use super::wrong_input::{self, WrongInput};

/// Sum a + b above which what differs is no more than chance. Ours.
const MOST_EQUAL: f64 = 1e6;

/// The germination of a species as it differs between sowings.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Overdispersion {
    /// Beta's a.
    pub a: f64,
    /// Beta's b.
    pub b: f64,
    /// Log-likelihood, with the binomial coefficients.
    pub loglik: f64,
}

impl Overdispersion {
    /// Mean germination.
    pub fn mean(self) -> f64 {
        self.a / (self.a + self.b)
    }
}

/// Fits a beta-binomial to `germinated` of `sown` in each sowing, by maximum likelihood. Nothing where the sowings differ no
/// more than chance makes them, or none or all of the seeds germinated everywhere.
///
/// # Errors
/// Fewer than two sowings, lists that are not equally long, no seed sown, or more germinated than sown.
pub fn overdispersion(germinated: &[u32], sown: &[u32]) -> Result<Option<Overdispersion>, WrongInput> {
    if germinated.len() < 2 {
        return Err(WrongInput::Missing { input: "germinated" });
    }
    if germinated.len() != sown.len() {
        return Err(WrongInput::Uneven { input: "germinated", other: "sown" });
    }
    for (&came, &all) in germinated.iter().zip(sown) {
        wrong_input::seeds("sown", all)?;
        wrong_input::part_of("germinated", u64::from(came), "sown", u64::from(all))?;
    }
    let sum = |counts: &[u32]| counts.iter().map(|&count| f64::from(count)).sum::<f64>();
    let mean = sum(germinated) / sum(sown);
    if mean <= 0.0 || mean >= 1.0 {
        return Ok(None);
    }
    let logit = (mean / (1.0 - mean)).ln();
    let limits = -5.0..=MOST_EQUAL.ln();
    let found = [1.0, 3.0, 6.0]
        .iter()
        .filter_map(|&start| climb((logit, start), &limits, |logit, ln_sum| slope(germinated, sown, logit, ln_sum)))
        .max_by(|one, other| one.value.total_cmp(&other.value));
    let Some(top) = found.filter(|top| top.b < 0.98 * MOST_EQUAL.ln()) else { return Ok(None) };
    let (a, b) = belief(top.a, top.b);
    Ok(Some(Overdispersion { a, b, loglik: top.value }))
}

fn belief(logit: f64, ln_sum: f64) -> (f64, f64) {
    let (sum, share) = (ln_sum.exp(), 1.0 / (1.0 + (-logit).exp()));
    (sum * share, sum * (1.0 - share))
}

/// The log-likelihood with its gradient, and the Hessian from differences of the gradient.
fn slope(germinated: &[u32], sown: &[u32], logit: f64, ln_sum: f64) -> Slope {
    let step = 1e-5;
    let here = gradient(germinated, sown, logit, ln_sum);
    let by = |da: f64, db: f64| gradient(germinated, sown, logit + da, ln_sum + db).1;
    let (more, less) = (by(step, 0.0), by(-step, 0.0));
    let (more_sum, less_sum) = (by(0.0, step), by(0.0, -step));
    let half = 1.0 / (2.0 * step);
    let mixed = (more[1] - less[1] + more_sum[0] - less_sum[0]) * half / 2.0;
    let second = [(more[0] - less[0]) * half, mixed, (more_sum[1] - less_sum[1]) * half];
    Slope { value: here.0, first: here.1, second }
}

fn gradient(germinated: &[u32], sown: &[u32], logit: f64, ln_sum: f64) -> (f64, [f64; 2]) {
    let (a, b) = belief(logit, ln_sum);
    let (mut value, mut by_a, mut by_b) = (0.0, 0.0, 0.0);
    for (&came, &all) in germinated.iter().zip(sown) {
        let (x, n) = (f64::from(came), f64::from(all));
        let choose = ln_gamma(n + 1.0) - ln_gamma(x + 1.0) - ln_gamma(n - x + 1.0);
        value += choose + ln_beta(a + x, b + n - x) - ln_beta(a, b);
        let whole = digamma(a + b) - digamma(a + b + n);
        by_a += digamma(a + x) - digamma(a) + whole;
        by_b += digamma(b + n - x) - digamma(b) + whole;
    }
    // a = S p, b = S (1 - p): by logit p and by ln S.
    let across = a * b / (a + b);
    (value, [across * (by_a - by_b), a * by_a + b * by_b])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sowings_as_equal_as_chance_makes_them_have_no_spread() {
        assert_eq!(overdispersion(&[50, 51, 49, 50], &[100, 100, 100, 100]), Ok(None));
        assert_eq!(overdispersion(&[0, 0], &[10, 10]), Ok(None));
        assert_eq!(overdispersion(&[10, 10], &[10, 10]), Ok(None));
    }

    #[test]
    fn sowings_far_apart_have_a_wide_one() {
        let told = overdispersion(&[5, 95, 50, 20, 80], &[100; 5]).unwrap().unwrap();
        assert!((told.mean() - 0.5).abs() < 0.05, "{told:?}");
        let rho = 1.0 / (told.a + told.b + 1.0);
        assert!(rho > 0.2 && rho < 0.6, "{told:?}");
    }

    #[test]
    fn nonsense_is_refused() {
        assert!(overdispersion(&[1], &[2]).is_err());
        assert!(overdispersion(&[1, 2], &[2]).is_err());
        assert!(overdispersion(&[1, 3], &[2, 2]).is_err());
        assert!(overdispersion(&[0, 0], &[2, 0]).is_err());
    }
}
