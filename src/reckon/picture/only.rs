//! A part of a Picture: one tray, one bed, or only what fits.

use std::collections::BTreeSet;

use super::{Pair, Picture};
use crate::base::{BedName, TrayCode};

/// What an answer is narrowed to; nothing of it is everything.
#[derive(Clone, Default, PartialEq, Eq, Debug)]
pub struct Only {
    /// One tray, with the beds that plan its species.
    pub tray: Option<TrayCode>,
    /// One bed, with the trays of the species it plans.
    pub bed: Option<BedName>,
    /// Trays and beds that fit one another.
    pub fits: bool,
}

impl Only {
    /// Whether everything is wanted.
    pub(crate) fn is_everything(&self) -> bool {
        *self == Only::default()
    }

    fn holds(&self, pair: &Pair) -> bool {
        self.tray.as_ref().is_none_or(|tray| tray == pair.tray())
            && self.bed.as_ref().is_none_or(|bed| bed == pair.bed())
            && (pair.fits || !self.fits)
    }
}

impl Picture {
    /// The pairs wanted, with their trays and beds, and the tray and the bed that were named. What was learned from all
    /// trays stays as it is.
    pub(crate) fn narrowed(&self, only: &Only) -> Picture {
        let mut narrowed = self.clone();
        if only.is_everything() {
            return narrowed;
        }
        narrowed.pairs = self.pairs.kept(|pair| only.holds(pair));
        let named = |code: &TrayCode| only.tray.as_ref() == Some(code);
        let trays = self.trays.iter().filter(|(code, _)| named(code) || !narrowed.pairs.of(code).is_empty());
        narrowed.trays = trays.map(|(code, tray)| (code.clone(), tray.clone())).collect();
        let paired: BTreeSet<&BedName> = narrowed.pairs.iter().map(|pair| pair.bed()).collect();
        let beds = self.beds.iter().filter(|(name, _)| only.bed.as_ref() == Some(name) || paired.contains(name));
        narrowed.beds = beds.map(|(name, bed)| (name.clone(), bed.clone())).collect();
        narrowed.unplanned.retain(named);
        narrowed
    }
}
