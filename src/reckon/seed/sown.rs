//! What was sown from a lot, and what came up of it.

use super::emergence::{emerged, own_sowings};
use super::test::TEST_LEVEL;
use crate::base::{Day, LotCode, Range, TrayCode};
use crate::reckon::picture::Picture;
use crate::science::sampling::wilson;

/// Seed of a lot in a tray.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct SownFrom {
    /// The tray.
    pub tray: TrayCode,
    /// The first day seed of the lot went in.
    pub day: Day,
    /// Seeds of the lot; none where nobody knows how many.
    pub seeds: Option<u32>,
    /// Seedlings that came up in the tray by the books.
    pub emerged: u32,
    /// Whether other seed lies in the tray too, so that what came up is not of this lot alone.
    pub mixed: bool,
    /// Whether more may still come up.
    pub waiting: bool,
}

/// The trays that seed of a lot went into, newest first.
pub(crate) fn sown_from(picture: &Picture, lot: &LotCode) -> Vec<SownFrom> {
    let mut all: Vec<SownFrom> = picture
        .trays
        .values()
        .filter_map(|tray| {
            let sowings = own_sowings(&tray.story);
            let of_lot = || sowings.iter().filter(|sowing| sowing.lot.as_ref() == Some(lot));
            let day = of_lot().map(|sowing| sowing.day).min()?;
            let seeds = of_lot().try_fold(0u32, |sum, sowing| Some(sum.saturating_add(sowing.seeds?)));
            let mixed = sowings.iter().any(|sowing| sowing.lot.as_ref() != Some(lot));
            let waiting = tray.story.seed_is_due(picture.day);
            Some(SownFrom { tray: tray.code.clone(), day, seeds, emerged: emerged(&tray.story), mixed, waiting })
        })
        .collect();
    all.sort_by(|a, b| b.day.cmp(&a.day).then_with(|| a.tray.cmp(&b.tray)));
    all
}

/// What came up of a lot in the trays that are waited for no longer.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct CameUp {
    /// Seeds sown in them.
    pub seeds: u32,
    /// Seedlings.
    pub seedlings: u32,
    /// The share, with its interval (Wilson 1927); none where more came up than was sown (seeds that give several).
    pub share: Option<Range>,
}

/// What came up in all, of trays with only this lot's seed in a known number and nothing more to come; none where there
/// is no such tray.
pub(crate) fn came_up(sowings: &[SownFrom]) -> Option<CameUp> {
    let over = sowings.iter().filter(|sown| !sown.waiting && !sown.mixed);
    let (seeds, seedlings) = over
        .filter_map(|sown| Some((sown.seeds?, sown.emerged)))
        .fold((0u32, 0u32), |(seeds, up), (sown, came)| (seeds.saturating_add(sown), up.saturating_add(came)));
    (seeds > 0).then(|| CameUp { seeds, seedlings, share: wilson(seedlings, seeds, TEST_LEVEL).ok() })
}
