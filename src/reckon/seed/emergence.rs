//! What came up of the seed in a tray, and the species' usual share by a day, by which the round reckons when to look.

use imbl::OrdMap;
use std::sync::Arc;

use super::test::germinated;
use crate::base::LotCode;
use crate::nursery::species::Profile;
use crate::reckon::stock::{LotStory, Sowing, TrayStory};

/// Seedlings that came up in a tray by the books.
pub fn emerged(story: &TrayStory) -> u32 {
    let emerged = story.accounts.sown.saturating_sub(story.accounts.seed) + story.accounts.twins;
    u32::try_from(emerged).unwrap_or(u32::MAX)
}

/// The sowings made in a tray itself, without those its plants bring from other trays.
pub(crate) fn own_sowings(story: &TrayStory) -> Vec<Sowing> {
    story.sowings.iter().filter(|sowing| story.entries.contains(&sowing.entry)).cloned().collect()
}

/// Seedlings to expect of sowings by the last test of each lot, else by fresh seed of the species: where nothing can be
/// forecast, because the species has no days. None where a number of seeds or a share is not known.
pub(crate) fn expected_seedlings(
    sowings: &[Sowing],
    lots: &OrdMap<LotCode, Arc<LotStory>>,
    profile: Option<&Profile>,
) -> Option<f64> {
    let fresh = profile.and_then(|profile| profile.germination_fresh_pct.as_ref()).map(|figure| figure.value / 100.0);
    let one = |sowing: &Sowing| {
        let test = sowing.lot.as_ref().and_then(|lot| lots.get(lot)).and_then(|lot| lot.tests.last());
        let share = test.and_then(germinated).map(|range| range.likely).or(fresh)?;
        Some(share * f64::from(sowing.seeds?))
    };
    let all: f64 = sowings.iter().map(one).sum::<Option<f64>>()?;
    (all > 0.0).then_some(all)
}
