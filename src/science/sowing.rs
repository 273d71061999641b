//! How many seeds to sow for so many plants with so much confidence.
//!
//! Each seed comes up with chance g, each seedling survives nursery and culls with chance s. Both are known, or believed as
//! beta distributions: then all seeds of a sowing share one g and all seedlings one s, and a margin is needed for not knowing
//! them. Plants of n seeds are then a mixture of binomials. Source: binomial and beta-binomial tails (Skellam 1948, from memory).
//!
//! The sum over seedlings m of P(m come up) P(at least N of m survive) needs the second factor for every m. It grows from m
//! to m + 1 by the chance that the N-th survivor is number m + 1, whose ratios are simple: one pass for all m.

use super::chance::Chance;
use super::distribution::ln_beta;
use super::distribution::ln_gamma;
use super::wrong_input::{self, WrongInput};

/// Most plants that are asked for at once. Ours.
pub(crate) const MOST_WANTED: u32 = 1_000_000;
/// Most seeds that an answer may have; beyond it the seed, not the number, is wrong. Ours.
pub(crate) const MOST_SOWN: u32 = 5_000_000;

/// How many seeds, and how sure that makes.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct SowingNumber {
    /// Seeds to sow.
    pub seeds: u32,
    /// Chance of at least the wanted plants with that many seeds.
    pub prob_at_n: f64,
    /// The same with one seed fewer: below the confidence.
    pub prob_at_n_minus_1: f64,
    /// Mean share of seeds that become a plant.
    pub mean_success: f64,
}

/// The belief in germination after `germinated` of `sown` seeds came up, before which it was a beta of `prior_a` and
/// `prior_b` (0 or more each).
///
/// # Errors
/// More germinated than sown, a prior below 0, or a belief that stays empty on one side.
pub fn germination_belief(prior_a: f64, prior_b: f64, sown: u32, germinated: u32) -> Result<Chance, WrongInput> {
    wrong_input::not_negative("prior_a", prior_a)?;
    wrong_input::not_negative("prior_b", prior_b)?;
    wrong_input::part_of("germinated", u64::from(germinated), "sown", u64::from(sown))?;
    let (a, b) = (prior_a + f64::from(germinated), prior_b + f64::from(sown - germinated));
    wrong_input::positive("prior_a", a)?;
    wrong_input::positive("prior_b", b)?;
    Chance::beta("prior_a", a, b)
}

/// Smallest number of seeds that gives at least `wanted` plants with at least `confidence` (above 0, below 1).
///
/// # Errors
/// Nothing wanted or more than [`MOST_WANTED`], no confidence, or more than [`MOST_SOWN`] seeds.
pub fn seeds_to_sow(
    germination: Chance,
    survival: Option<Chance>,
    wanted: u32,
    confidence: f64,
) -> Result<SowingNumber, WrongInput> {
    match wanted {
        0 => return Err(WrongInput::NotPositive { input: "wanted" }),
        _ if wanted > MOST_WANTED => return Err(WrongInput::TooMany { input: "wanted", most: MOST_WANTED }),
        _ => {}
    }
    wrong_input::share("confidence", confidence)?;
    if confidence == 0.0 || confidence == 1.0 {
        return Err(WrongInput::Outside { input: "confidence", low: 0.0, high: 1.0 });
    }
    let mean_success = germination.mean() * survival.map_or(1.0, Chance::mean);
    let too_many = WrongInput::TooMany { input: "seeds", most: MOST_SOWN };
    let mut enough = Enough::new(germination, survival, wanted);
    // Below `low` it is not enough, at `high` it is.
    let mut low = At { seeds: wanted - 1, chance: 0.0 };
    let first = ((f64::from(wanted) / mean_success).ceil().min(f64::from(MOST_SOWN)) as u32).max(wanted);
    let mut high = enough.at(first);
    let mut step = (first / 16).max(1);
    while high.chance < confidence {
        if high.seeds == MOST_SOWN {
            return Err(too_many);
        }
        low = high;
        high = enough.at(high.seeds.saturating_add(step).min(MOST_SOWN));
        step = step.saturating_mul(2);
    }
    while high.seeds - low.seeds > 1 {
        let width = high.seeds - low.seeds;
        // On a straight line to where the confidence should lie, then a little to the other side of it; where that does not
        // halve the gap, its middle does.
        for place in [Place::Line, Place::BesideLine, Place::Middle] {
            let (wide, halved) = (high.seeds - low.seeds, high.seeds - low.seeds <= width / 2);
            if wide <= 1 || (place == Place::Middle && halved) {
                break;
            }
            let at = enough.at(place.between(low, high, confidence));
            if at.chance < confidence {
                low = at;
            } else {
                high = at;
            }
        }
    }
    let (prob_at_n, prob_at_n_minus_1) = (high.chance, low.chance);
    Ok(SowingNumber { seeds: high.seeds, prob_at_n, prob_at_n_minus_1, mean_success })
}

/// Chance of at least `wanted` plants of `seeds` seeds.
///
/// # Errors
/// More than [`MOST_SOWN`] seeds.
pub fn chance_of_enough(
    germination: Chance,
    survival: Option<Chance>,
    wanted: u32,
    seeds: u32,
) -> Result<f64, WrongInput> {
    if seeds > MOST_SOWN {
        return Err(WrongInput::TooMany { input: "seeds", most: MOST_SOWN });
    }
    if wanted == 0 {
        return Ok(1.0);
    }
    Ok(Enough::new(germination, survival, wanted).chance(seeds))
}

/// A number of seeds with its chance of being enough.
#[derive(Clone, Copy)]
struct At {
    seeds: u32,
    chance: f64,
}

/// Where to look next.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Place {
    Line,
    BesideLine,
    Middle,
}

impl Place {
    /// A number of seeds strictly between two that are more than one apart.
    fn between(self, low: At, high: At, confidence: f64) -> u32 {
        let width = high.seeds - low.seeds;
        let on_line = f64::from(width) * (confidence - low.chance) / (high.chance - low.chance);
        let aside = f64::from((width / 64).max(1));
        let above_low = match self {
            Place::Middle => f64::from(width / 2),
            Place::Line => on_line.round(),
            // The nearer end is the one just found: the other is to come nearer.
            Place::BesideLine if on_line < f64::from(width) / 2.0 => on_line.ceil() + aside,
            Place::BesideLine => on_line.floor() - aside,
        };
        low.seeds + (above_low.clamp(1.0, f64::from(width - 1)) as u32)
    }
}

struct Enough {
    wanted: u32,
    germination: Chance,
    survival: Option<Survivors>,
}

impl Enough {
    fn new(germination: Chance, survival: Option<Chance>, wanted: u32) -> Enough {
        let survival = survival.filter(|chance| *chance != Chance::Known(1.0));
        Enough { wanted, germination, survival: survival.map(|chance| Survivors::new(chance, wanted)) }
    }

    fn at(&mut self, seeds: u32) -> At {
        At { seeds, chance: self.chance(seeds) }
    }

    fn chance(&mut self, seeds: u32) -> f64 {
        if seeds < self.wanted {
            return 0.0;
        }
        let Some(survivors) = &mut self.survival else { return self.germination.at_least(self.wanted, seeds) };
        survivors.up_to(seeds);
        let (mut reached, mut all) = (0.0, 0.0);
        self.germination.weights(seeds, |m, weight| {
            all += weight;
            reached += weight * survivors.chance(m);
        });
        reached / all
    }
}

/// Chance that at least the wanted number of m seedlings survive, for every m.
struct Survivors {
    survival: Chance,
    wanted: u32,
    /// The chance for wanted - 1 (which is 0), wanted, wanted + 1 and so on.
    chances: Vec<f64>,
    /// What the next one adds.
    next: f64,
}

impl Survivors {
    fn new(survival: Chance, wanted: u32) -> Survivors {
        let mut survivors = Survivors { survival, wanted, chances: vec![0.0], next: 0.0 };
        // The first terms may be smaller than any number: begin with the largest and go back.
        let whole = f64::from(wanted);
        let peak = (whole / survival.mean().max(1e-9) * 0.9).min(f64::from(MOST_SOWN)).max(whole) as u32;
        let mut terms = vec![survivors.term(peak)];
        for m in (wanted - 1..peak).rev() {
            let last = terms.last().copied().unwrap_or(0.0);
            terms.push(last / survivors.ratio(m));
        }
        let mut sum = 0.0;
        for term in terms.iter().skip(1).rev() {
            sum += term;
            survivors.chances.push(sum.min(1.0));
        }
        survivors.next = terms[0];
        survivors
    }

    /// Chance that the last of the wanted survivors is seedling m + 1.
    fn term(&self, m: u32) -> f64 {
        let (at, whole) = (f64::from(m), f64::from(self.wanted));
        let choose = ln_gamma(at + 1.0) - ln_gamma(whole) - ln_gamma(at - whole + 2.0);
        let failed = at - whole + 1.0;
        match self.survival {
            Chance::Known(share) => (choose + whole * share.ln() + failed * (-share).ln_1p()).exp(),
            Chance::Beta { a, b } => (choose + ln_beta(a + whole, b + failed) - ln_beta(a, b)).exp(),
        }
    }

    /// Term of m + 1 over term of m.
    fn ratio(&self, m: u32) -> f64 {
        let (at, whole) = (f64::from(m), f64::from(self.wanted));
        let choices = (at + 1.0) / (at + 2.0 - whole);
        match self.survival {
            Chance::Known(share) => choices * (1.0 - share),
            Chance::Beta { a, b } => choices * (b + at - whole + 1.0) / (a + b + at + 1.0),
        }
    }

    /// Makes the chances known up to m seedlings.
    fn up_to(&mut self, m: u32) {
        let mut at = self.wanted - 1 + self.chances.len() as u32 - 1;
        while at < m {
            let last = self.chances.last().copied().unwrap_or(0.0);
            self.chances.push((last + self.next).min(1.0));
            self.next *= self.ratio(at);
            at += 1;
        }
    }

    fn chance(&self, m: u32) -> f64 {
        if m < self.wanted { 0.0 } else { self.chances[(m + 1 - self.wanted) as usize] }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // Expected: binomial tails; 1.0 - 0.3^5 and so on by hand.
    #[test]
    fn one_plant_of_many_seeds() {
        let told = seeds_to_sow(Chance::Known(0.7), None, 1, 0.95).unwrap();
        assert_eq!(told.seeds, 3);
        assert!((told.prob_at_n - (1.0 - 0.3_f64.powi(3))).abs() < 1e-14);
        assert!((told.prob_at_n_minus_1 - (1.0 - 0.3_f64.powi(2))).abs() < 1e-14);
    }

    #[test]
    fn a_hundred_plants_at_seventy_percent() {
        let told = seeds_to_sow(Chance::Known(0.7), None, 100, 0.95).unwrap();
        assert_eq!(told.seeds, 156);
        assert!(chance_of_enough(Chance::Known(0.7), None, 100, 143).unwrap() < 0.56);
    }

    #[test]
    fn known_losses_after_germination_are_a_smaller_germination() {
        for (wanted, confidence) in [(1, 0.5), (12, 0.9), (400, 0.99), (3000, 0.95)] {
            let two = seeds_to_sow(Chance::Known(0.8), Some(Chance::Known(0.75)), wanted, confidence).unwrap();
            let one = seeds_to_sow(Chance::Known(0.6), None, wanted, confidence).unwrap();
            assert_eq!(two.seeds, one.seeds);
            assert!((two.prob_at_n - one.prob_at_n).abs() < 1e-9, "{two:?} {one:?}");
        }
    }

    #[test]
    fn certain_seed_needs_no_margin() {
        let told = seeds_to_sow(Chance::Known(1.0), Some(Chance::Known(1.0)), 40, 0.99).unwrap();
        assert_eq!((told.seeds, told.prob_at_n, told.prob_at_n_minus_1), (40, 1.0, 0.0));
    }

    #[test]
    fn what_can_never_be_enough_is_refused_at_once() {
        let many = WrongInput::TooMany { input: "seeds", most: MOST_SOWN };
        assert_eq!(seeds_to_sow(Chance::Known(0.0), None, 5, 0.9), Err(many));
        assert_eq!(seeds_to_sow(Chance::Known(1e-9), None, 5, 0.9), Err(many));
        assert_eq!(seeds_to_sow(Chance::Known(0.9), Some(Chance::Known(0.0)), 5, 0.9), Err(many));
        let hopeless = Chance::Beta { a: 0.01, b: 5.0 };
        assert_eq!(seeds_to_sow(hopeless, None, 100, 0.99), Err(many));
    }

    #[test]
    fn nonsense_is_refused() {
        let fair = Chance::Known(0.5);
        assert!(seeds_to_sow(fair, None, 0, 0.9).is_err());
        assert!(seeds_to_sow(fair, None, 1_000_000_000, 0.9).is_err());
        for confidence in [0.0, 1.0, -1.0, f64::NAN] {
            assert!(seeds_to_sow(fair, None, 10, confidence).is_err(), "{confidence}");
        }
        assert!(germination_belief(1.0, 1.0, 10, 11).is_err());
        assert!(germination_belief(0.0, 1.0, 10, 0).is_err());
        assert!(germination_belief(f64::NAN, 1.0, 10, 5).is_err());
        assert!(chance_of_enough(fair, None, 10, u32::MAX).is_err());
        assert_eq!(chance_of_enough(fair, None, 0, 0), Ok(1.0));
    }
}
