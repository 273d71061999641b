//! The texture of a field as its owner wrote it, in English or Spanish, and how much water such ground holds for roots.

use super::balance::ROOT_DEPTH_CM;
use crate::base::text::folded;

/// Classes of ground by the water they hold.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub(crate) enum Texture {
    /// Sand, loamy sand.
    Sand,
    /// Sandy loam.
    SandyLoam,
    /// Loam, silt, sandy clay, and what nobody wrote.
    Loam,
    /// Clay, clay loam, silty clay.
    Clay,
}

/// Every class.
pub(super) const TEXTURES: [Texture; 4] = [Texture::Sand, Texture::SandyLoam, Texture::Loam, Texture::Clay];

/// Water held between field capacity and wilting, mm in a metre: the middle of 50 to 100 (United States Department of Agriculture, feel
/// and appearance of soils, inches to the foot turned into mm, as read).
pub(crate) const SAND_HOLDS_MM: f64 = 75.0;
/// The same of sandy loam: of 108 to 142.
pub(crate) const SANDY_LOAM_HOLDS_MM: f64 = 125.0;
/// The same of loam, silt loam, sandy clay loam: of 125 to 175. FAO-56, table 19, from memory: 130 to 180 of loam.
pub(crate) const LOAM_HOLDS_MM: f64 = 150.0;
/// The same of clay, clay loam, silty clay loam: of 133 to 200.
pub(crate) const CLAY_HOLDS_MM: f64 = 166.0;

/// Which of loam (or silt), clay and sand a texture names.
pub(super) fn named(texture: Option<&str>) -> (bool, bool, bool) {
    let words = folded(texture.unwrap_or_default());
    let has = |stems: &[&str]| stems.iter().any(|stem| words.contains(stem));
    (has(&["loam", "franc", "silt", "limo"]), has(&["clay", "arcill"]), has(&["sand", "aren"]))
}

impl Texture {
    /// The class of a texture as written.
    pub(crate) fn of(texture: Option<&str>) -> Texture {
        let words = folded(texture.unwrap_or_default());
        let mostly_sand =
            ["loamy sand", "loamy fine sand", "arena franc"].iter().any(|name| words.contains(&folded(name)));
        match named(texture) {
            (_, true, true) | (true, false, false) | (false, false, false) => Texture::Loam,
            (_, true, false) => Texture::Clay,
            (true, false, true) if !mostly_sand => Texture::SandyLoam,
            (_, false, true) => Texture::Sand,
        }
    }

    /// What the ground that young roots reach holds when it is full, mm.
    pub(super) fn full_mm(self) -> f64 {
        let holds_mm = match self {
            Texture::Sand => SAND_HOLDS_MM,
            Texture::SandyLoam => SANDY_LOAM_HOLDS_MM,
            Texture::Loam => LOAM_HOLDS_MM,
            Texture::Clay => CLAY_HOLDS_MM,
        };
        holds_mm * ROOT_DEPTH_CM / 100.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn textures_are_read_in_both_languages() {
        for (class, written) in [
            (Texture::Sand, ["sand", "loamy sand", "Arena", "arena franca", "arenoso"]),
            (Texture::SandyLoam, ["sandy loam", "franco arenoso", "Fine sandy loam", "franco-arenosa", "sandy silt"]),
            (Texture::Loam, ["loam", "silt loam", "sandy clay loam", "franco limoso", "volcanic ash"]),
            (Texture::Clay, ["clay", "clay loam", "silty clay", "arcilla", "franco arcilloso"]),
        ] {
            for written in written {
                assert_eq!(Texture::of(Some(written)), class, "{written}");
            }
        }
        assert_eq!(Texture::of(None), Texture::Loam);
    }
}
