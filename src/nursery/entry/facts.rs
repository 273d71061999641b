//! What is known of a kind of entry besides its fields, one value for each kind. It stands beside the fields in the
//! `kinds!` blocks; a kind says only what is unlike the rest of its hour.

use super::rules::BodyRule;
use super::subject::AboutFields;

/// What is known of a kind besides its fields.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KindFacts {
    /// Minutes since midnight at which an entry without a time of day is taken to have happened, so that a day's entries
    /// fall in the order of the work.
    pub hour: u16,
    /// Whose story an entry of it belongs to.
    pub about: AboutFields,
    /// Whether it comes first on its day wherever in a file it stands: the rest of the day speaks of what it makes.
    pub first: bool,
    /// Whether it moves plants between the accounts of a tray.
    pub moves_numbers: bool,
    /// Whether it hands something on to the trays and beds that come of it: species, sowings, where plants came from or
    /// stood, waiting times, roots that circle.
    pub affects_descendants: bool,
    /// What holds of its fields together.
    pub rules: &'static [BodyRule],
}

const PLAIN: KindFacts = KindFacts {
    hour: 0,
    about: AboutFields::EveryName,
    first: false,
    moves_numbers: false,
    affects_descendants: false,
    rules: &[],
};

/// What describes, seed, and what makes a tray.
pub(super) const BEGINS: KindFacts = KindFacts { hour: 0, first: true, ..PLAIN };
/// What comes in before the rest of the day, but not before what makes its tray or bed.
pub(super) const COMES_IN: KindFacts = KindFacts { hour: 0, ..PLAIN };
/// What died or was thrown out of a tray.
pub(super) const LOSS: KindFacts = KindFacts { hour: 6 * 60, moves_numbers: true, ..PLAIN };
/// A count of a tray, behind its losses.
pub(super) const COUNT: KindFacts = KindFacts { hour: 8 * 60, moves_numbers: true, ..PLAIN };
/// A count in a bed.
pub(super) const COUNT_IN_BED: KindFacts = KindFacts { hour: 8 * 60, ..PLAIN };
/// A look, or work that moves no plants.
pub(super) const LOOK: KindFacts = KindFacts { hour: 10 * 60, ..PLAIN };
/// Plants that leave a tray.
pub(super) const MOVE: KindFacts = KindFacts { hour: 16 * 60, moves_numbers: true, ..PLAIN };
/// What died in a bed: on the day of planting it died after it.
pub(super) const LAST: KindFacts = KindFacts { hour: 18 * 60, ..PLAIN };
