//! Seeds by weight, and how many of them are live.
//!
//! Sources: FAO 1985, A guide to forest seed handling (pure live seed); ISTA Rules chapter 10 (thousand-seed weight, from
//! memory).

use super::wrong_input::{self, WrongInput};

/// Grams of a thousand seeds times seeds of a kilogram.
const SEEDS_PER_KG_TIMES_TSW: f64 = 1_000_000.0;

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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nonsense_is_refused() {
        assert!(pure_live_share(0.9, f64::NAN).is_err());
        assert!(seeds_per_kg(0.0).is_err());
    }
}
