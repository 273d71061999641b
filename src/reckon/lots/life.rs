//! How long a lot lives, or why that is not known.

use crate::nursery::entry::types::Kept;
use crate::nursery::species::Profile;
use crate::reckon::seed::{SeedLife, life};
use crate::reckon::stock::LotStory;

/// Why nothing is said of a lot's life.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum NoLife {
    /// Nobody wrote that the lot came in, so neither species nor keeping is known.
    NotReceived,
    /// Its species is not known here.
    UnknownSpecies,
    /// The profile has no days for this way of keeping.
    NoFigure(Kept),
}

/// The life of a lot.
pub(super) fn known_life(lot: &LotStory, profile: Option<&Profile>) -> Result<SeedLife, NoLife> {
    let spell = lot.kept.last().ok_or(NoLife::NotReceived)?;
    let profile = profile.ok_or(NoLife::UnknownSpecies)?;
    life(lot, profile).filter(|life| life.days > 0 || life.killed_below_c.is_some()).ok_or(NoLife::NoFigure(spell.what))
}
