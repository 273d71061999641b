//! How many seeds: by weight, per container and with losses.
//!
//! Sources: FAO 1985, A guide to forest seed handling (pure live seed); Dumroese et al. 2009 and Wilkinson et al. 2014,
//! USDA Agriculture Handbooks 730 and 732 (seeds per container, from memory); ISTA Rules chapter 10 (thousand-seed
//! weight, from memory). Losses one after the other multiply: common practice.

use super::wrong_input::{self, WrongInput};

/// Grams of a thousand seeds times seeds of a kilogram.
const SEEDS_PER_KG_TIMES_TSW: f64 = 1_000_000.0;
/// Share of a seed that rounding in a computer may add and that is not rounded up to a whole seed.
const FUZZ: f64 = 1e-9;

/// Share of containers with at least one seedling when each gets `seeds_each` seeds of `germination` (share 0 to 1):
/// 1 - (1 - g)^n. USDA Agriculture Handbooks 730 and 732 (from memory).
///
/// # Errors
/// A germination outside 0 to 1 or no number.
pub fn filled_share(germination: f64, seeds_each: u32) -> Result<f64, WrongInput> {
    wrong_input::share("germination", germination)?;
    Ok(1.0 - (1.0 - germination).powf(f64::from(seeds_each)))
}

/// Pure live seed, a share 0 to 1: purity x germination. FAO 1985.
///
/// # Errors
/// A share outside 0 to 1 or no number.
pub fn pure_live_share(purity: f64, germination: f64) -> Result<f64, WrongInput> {
    Ok(wrong_input::share("purity", purity)? * wrong_input::share("germination", germination)?)
}

/// Seeds of a kilogram from the weight of a thousand seeds in g: 1000000 / g. ISTA Rules chapter 10 (from memory).
///
/// # Errors
/// A weight that is not above 0 or not a number.
pub fn seeds_per_kg(thousand_seeds_g: f64) -> Result<f64, WrongInput> {
    wrong_input::positive("thousand_seeds_g", thousand_seeds_g)?;
    wrong_input::answer(SEEDS_PER_KG_TIMES_TSW / thousand_seeds_g)
}

/// Plants of a kilogram: seeds per kg x purity x germination. FAO 1985.
///
/// # Errors
/// Seeds that are not above 0, a share outside 0 to 1, or no number.
pub fn plants_per_kg(seeds_per_kg: f64, purity: f64, germination: f64) -> Result<f64, WrongInput> {
    wrong_input::positive("seeds_per_kg", seeds_per_kg)?;
    wrong_input::answer(seeds_per_kg * pure_live_share(purity, germination)?)
}

/// Kilograms to weigh out for a number of seeds: seeds / (seeds per kg x purity). FAO 1985.
///
/// # Errors
/// Seeds below 0, seeds per kg or a purity that are not above 0, a purity above 1, or no number.
pub fn seed_mass_kg(seeds: f64, seeds_per_kg: f64, purity: f64) -> Result<f64, WrongInput> {
    wrong_input::not_negative("seeds", seeds)?;
    wrong_input::positive("seeds_per_kg", seeds_per_kg)?;
    wrong_input::share("purity", purity)?;
    wrong_input::positive("purity", purity)?;
    wrong_input::answer(seeds / (seeds_per_kg * purity))
}

/// Whole seeds for `wanted` plants when each loss (share 0 to below 1) takes its part of what the one before it left:
/// wanted / product of (1 - loss), rounded up. This is the average need: in half of the cases it is not enough.
/// Common practice.
///
/// # Errors
/// A loss below 0, a loss of everything, no number, or more seeds than can be counted.
pub fn seeds_with_losses(wanted: u32, losses: &[f64]) -> Result<u32, WrongInput> {
    let mut kept = 1.0;
    for &loss in losses {
        kept *= 1.0 - wrong_input::share("loss", loss)?;
    }
    if kept <= 0.0 {
        return Err(WrongInput::Outside { input: "loss", low: 0.0, high: 1.0 });
    }
    let exact = f64::from(wanted) / kept;
    let seeds = (exact * (1.0 - FUZZ)).ceil();
    if seeds > f64::from(u32::MAX) { Err(WrongInput::TooLarge) } else { Ok(seeds as u32) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_seed_fills_no_container() {
        assert_eq!(filled_share(0.8, 0), Ok(0.0));
        assert_eq!(filled_share(1.0, 1), Ok(1.0));
        assert_eq!(filled_share(0.0, 5), Ok(0.0));
    }

    #[test]
    fn losses_round_up_to_whole_seeds_but_not_because_of_rounding_in_the_computer() {
        assert_eq!(seeds_with_losses(100, &[]), Ok(100));
        assert_eq!(seeds_with_losses(9, &[0.1]), Ok(10));
        assert_eq!(seeds_with_losses(9, &[0.1, 0.1]), Ok(12));
        assert_eq!(seeds_with_losses(0, &[0.5]), Ok(0));
    }

    #[test]
    fn impure_seed_weighs_more() {
        let kg = seed_mass_kg(9_000.0, 50_000.0, 0.9).unwrap();
        assert!((kg - 0.2).abs() < 1e-12, "{kg}");
    }

    #[test]
    fn nonsense_is_refused() {
        assert!(filled_share(1.1, 2).is_err());
        assert!(pure_live_share(0.9, f64::NAN).is_err());
        assert!(seeds_per_kg(0.0).is_err());
        assert!(plants_per_kg(-5.0, 0.9, 0.8).is_err());
        assert!(seed_mass_kg(10.0, 100.0, 0.0).is_err());
        assert!(seeds_with_losses(100, &[1.0]).is_err());
        assert!(seeds_with_losses(100, &[-0.1]).is_err());
        assert_eq!(seeds_with_losses(u32::MAX, &[0.5]), Err(WrongInput::TooLarge));
    }
}
