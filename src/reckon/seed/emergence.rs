//! What may be expected to come up of the seed in a tray, and by when. A plain curve through the species' own days; it
//! learns nothing from what came up so far.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::test::germinated;
use crate::base::{Day, LotCode, Range};
use crate::nursery::species::Profile;
use crate::reckon::stock::{LotStory, Sowing, TrayStory};

/// The odds of 95 % against the rest, at the species' last day. Ours.
const LATE_ODDS: f64 = 19.0;
/// Steepness where the profile's last day does not lie behind its half day. Ours.
const STEEP_OTHERWISE: f64 = 8.0;

/// Share of all that will come up that is up so many days after sowing: half at `half`, 95 % at `late`, on a
/// log-logistic curve (ours).
pub fn share_up(days: f64, half: f64, late: f64) -> f64 {
    if days <= 0.0 || half <= 0.0 {
        return 0.0;
    }
    let steep = if late > half { LATE_ODDS.ln() / (late / half).ln() } else { STEEP_OTHERWISE };
    1.0 / (1.0 + (days / half).powf(-steep))
}

/// Seedlings that came up in a tray by the books.
pub fn emerged(story: &TrayStory) -> u32 {
    let emerged = story.accounts.sown.saturating_sub(story.accounts.seed) + story.accounts.twins;
    u32::try_from(emerged).unwrap_or(u32::MAX)
}

/// The sowings made in a tray itself, without those its plants bring from other trays.
pub fn own_sowings(story: &TrayStory) -> Vec<Sowing> {
    story.sowings.iter().filter(|sowing| story.entries.contains(&sowing.entry)).cloned().collect()
}

/// What is expected of one or several sowings.
#[derive(Clone, PartialEq, Debug)]
pub struct Expected {
    /// The day and the seedlings of each.
    pub sowings: Vec<(Day, Range)>,
    /// Whether every one rests on a test of its lot; else on fresh seed of the species.
    pub tested: bool,
    /// Days to half of the emergence, where the species has a figure.
    pub half_days: Option<f64>,
    /// Days to the last worth waiting for, where the species has a figure.
    pub late_days: Option<f64>,
}

impl Expected {
    /// Seedlings in all.
    pub fn in_all(&self) -> Range {
        self.sum(|_| 1.0)
    }

    /// Seedlings up by a day; none where the species has no days.
    pub fn by(&self, day: Day) -> Option<Range> {
        let (half, late) = self.half_days.zip(self.late_days)?;
        Some(self.sum(|sown| share_up(f64::from(day.days_since(sown)), half, late)))
    }

    /// The last day worth waiting for.
    pub fn last_day(&self) -> Option<Day> {
        let youngest = self.sowings.iter().map(|(sown, _)| *sown).max()?;
        Some(youngest.plus(self.late_days?.ceil() as i32))
    }

    fn sum(&self, share: impl Fn(Day) -> f64) -> Range {
        self.sowings.iter().fold(Range::exact(0.0), |sum, (sown, seedlings)| {
            let share = share(*sown);
            Range {
                low: sum.low + seedlings.low * share,
                likely: sum.likely + seedlings.likely * share,
                high: sum.high + seedlings.high * share,
            }
        })
    }
}

/// Seedlings expected from sowings: by the last test of each lot with its interval, else by fresh seed of the species,
/// of which only one figure is known. None where a number of seeds or a share is not known.
pub fn expected(
    sowings: &[Sowing],
    lots: &BTreeMap<LotCode, Arc<LotStory>>,
    profile: Option<&Profile>,
) -> Option<Expected> {
    let fresh = profile.and_then(|profile| profile.germination_fresh_pct.as_ref());
    let days = |figure: Option<&crate::nursery::species::Figure<f64>>| figure.map(|figure| figure.value);
    let mut all = Expected {
        sowings: Vec::with_capacity(sowings.len()),
        tested: true,
        half_days: days(profile.and_then(|profile| profile.emerge_half_days.as_ref())),
        late_days: days(profile.and_then(|profile| profile.emerge_last_days.as_ref())),
    };
    for sowing in sowings {
        let test = sowing.lot.as_ref().and_then(|lot| lots.get(lot)).and_then(|lot| lot.tests.last());
        let tested = test.and_then(germinated);
        all.tested &= tested.is_some();
        let share = tested.or(fresh.map(|figure| Range::exact(figure.value / 100.0)))?;
        all.sowings.push((sowing.day, share.times(Range::exact(f64::from(sowing.seeds?)))));
    }
    (all.in_all().likely > 0.0).then_some(all)
}
