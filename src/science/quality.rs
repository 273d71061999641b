//! Is a seedling sturdy enough to go out?
//!
//! Sources: sturdiness quotient, Jaenicke 1999, Good Tree Nursery Practices, ICRAF (from memory); its bands above 6 are
//! common practice. Dickson quality index: Dickson, Leaf & Hosner 1960, Forestry Chronicle 36:10 (from memory).
//! Collar rule for woody stems: common practice, ours.

use super::wrong_input::{self, WrongInput};

/// Sturdiness quotient up to which a plant is good, cm per mm. Jaenicke 1999 (from memory).
pub(crate) const STURDY_UP_TO: f64 = 6.0;
/// Sturdiness quotient up to which a plant does in a bed without weeds, cm per mm. Common practice.
pub(crate) const WEED_FREE_UP_TO: f64 = 8.0;
/// Sturdiness quotient above which a plant is thrown out, cm per mm. Common practice.
pub(crate) const CULL_ABOVE: f64 = 10.0;
/// Least Dickson quality index. Hunt 1990, of conifers (from memory); Oliveira et al. 2015, African Journal of Agricultural
/// Research, takes it over for coffee.
pub const DICKSON_LEAST: f64 = 0.20;
/// Plant height over collar, cm per mm, that a woody stem must not exceed. Common practice, ours.
const HEIGHT_OVER_LEAST_COLLAR: f64 = 8.0;
/// Plant height over collar, cm per mm, that a woody stem aims at: the good sturdiness of Jaenicke 1999.
const HEIGHT_OVER_TARGET_COLLAR: f64 = STURDY_UP_TO;

/// What a sturdiness quotient means.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum SturdinessBand {
    /// Up to 6.
    Good,
    /// Above 6, up to 8: acceptable in a weed-free bed.
    WeedFreeBed,
    /// Above 8, up to 10: hold, and space the plants out.
    SpaceOut,
    /// Above 10: throw out.
    Cull,
}

/// The collar a plant needs, in mm.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct CollarNeeded {
    /// Below this the plant does not go out.
    pub least_mm: f64,
    /// What to aim at; never below the least.
    pub target_mm: f64,
}

/// Sturdiness quotient: height in cm over root-collar diameter in mm. Jaenicke 1999 (from memory).
///
/// # Errors
/// A height or collar that is not above 0 or not a number.
pub fn sturdiness(height_cm: f64, collar_mm: f64) -> Result<f64, WrongInput> {
    wrong_input::positive("height_cm", height_cm)?;
    wrong_input::positive("collar_mm", collar_mm)?;
    wrong_input::answer(height_cm / collar_mm)
}

/// The band of a sturdiness quotient (cm per mm, above 0).
///
/// # Errors
/// A quotient that is not above 0 or not a number.
pub fn sturdiness_band(sturdiness: f64) -> Result<SturdinessBand, WrongInput> {
    wrong_input::positive("sturdiness", sturdiness)?;
    Ok(if sturdiness <= STURDY_UP_TO {
        SturdinessBand::Good
    } else if sturdiness <= WEED_FREE_UP_TO {
        SturdinessBand::WeedFreeBed
    } else if sturdiness <= CULL_ABOVE {
        SturdinessBand::SpaceOut
    } else {
        SturdinessBand::Cull
    })
}

/// Dickson quality index: total dry g / (height cm / collar mm + shoot dry g / root dry g). Dickson, Leaf & Hosner 1960.
/// Compare within one species, age and container only; 0.20 ([`DICKSON_LEAST`]) is a usual least.
///
/// # Errors
/// A size or mass that is not above 0 or not a number.
pub fn dickson(height_cm: f64, collar_mm: f64, shoot_g: f64, root_g: f64) -> Result<f64, WrongInput> {
    let sturdiness = sturdiness(height_cm, collar_mm)?;
    wrong_input::positive("shoot_g", shoot_g)?;
    wrong_input::positive("root_g", root_g)?;
    wrong_input::answer((shoot_g + root_g) / (sturdiness + shoot_g / root_g))
}

/// Collar a woody stem needs at a height in cm: least height/8 but not below the species' floor in mm, target height/6.
/// Not for moringa, papaya, grafts or stumps. Common practice, ours.
///
/// # Errors
/// A height that is not above 0, a floor below 0, or no number.
pub(crate) fn woody_collar(height_cm: f64, floor_mm: f64) -> Result<CollarNeeded, WrongInput> {
    wrong_input::positive("height_cm", height_cm)?;
    wrong_input::not_negative("floor_mm", floor_mm)?;
    let least_mm = floor_mm.max(height_cm / HEIGHT_OVER_LEAST_COLLAR);
    Ok(CollarNeeded { least_mm, target_mm: least_mm.max(height_cm / HEIGHT_OVER_TARGET_COLLAR) })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bands_include_their_upper_end() {
        assert_eq!(sturdiness_band(6.0), Ok(SturdinessBand::Good));
        assert_eq!(sturdiness_band(6.01), Ok(SturdinessBand::WeedFreeBed));
        assert_eq!(sturdiness_band(8.0), Ok(SturdinessBand::WeedFreeBed));
        assert_eq!(sturdiness_band(8.01), Ok(SturdinessBand::SpaceOut));
        assert_eq!(sturdiness_band(10.0), Ok(SturdinessBand::SpaceOut));
        assert_eq!(sturdiness_band(10.01), Ok(SturdinessBand::Cull));
    }

    #[test]
    fn a_tall_plant_needs_a_thick_collar_and_a_short_one_the_floor() {
        assert_eq!(woody_collar(48.0, 4.0), Ok(CollarNeeded { least_mm: 6.0, target_mm: 8.0 }));
        assert_eq!(woody_collar(27.0, 4.0), Ok(CollarNeeded { least_mm: 4.0, target_mm: 4.5 }));
        assert_eq!(woody_collar(12.0, 4.0), Ok(CollarNeeded { least_mm: 4.0, target_mm: 4.0 }));
    }

    #[test]
    fn nonsense_is_refused() {
        assert!(sturdiness(30.0, 0.0).is_err());
        assert!(sturdiness(f64::NAN, 5.0).is_err());
        assert!(sturdiness_band(-1.0).is_err());
        assert!(dickson(30.0, 5.0, 7.5, 0.0).is_err());
        assert!(woody_collar(30.0, -1.0).is_err());
    }
}
