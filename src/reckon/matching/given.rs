//! What a plan is asked with and what it is made of.

use std::collections::BTreeMap;

use crate::base::{BedName, Day, SpeciesKey, TrayCode};
use crate::reckon::picture::Rule;
use crate::science::matching::Shipment;

/// The weeks of a plan where nobody says how many: one rainy season. Ours.
pub(crate) const PLAN_WEEKS: u32 = 12;
/// The most weeks of a plan: a year. Ours.
pub(crate) const MOST_PLAN_WEEKS: u32 = 52;
/// A trip, all that goes from a tray to a bed in a week, of fewer plants than this is not worth its walk, unless it fills a bed or empties a tray. Ours.
pub(crate) const LEAST_LOAD: i64 = 5;
/// What a plan may lose of its worth so that it is one to walk. Ours.
pub(crate) const WALKABLE_PRICE: f64 = 0.01;
/// What the worth of a plant is counted in: so many for one that lives for sure. Ours.
pub(crate) const POINTS_A_PLANT: f64 = 1000.0;
/// Points more for a plant whose time ends at once: what is not set out in these weeks is lost. A tenth of a plant. Ours.
pub(crate) const POINTS_LAST_CHANCE: i64 = 100;

/// What a person decided before: the plan keeps to it.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct ByHand {
    /// So many plants of a tray to a bed.
    pub pinned: Vec<(TrayCode, BedName, u32)>,
    /// Never this tray to this bed.
    pub forbidden: Vec<(TrayCode, BedName)>,
    /// Nothing to these beds.
    pub left_out: Vec<BedName>,
}

/// So many plants of a tray that go to a bed in a week.
#[derive(Clone, PartialEq, Debug)]
pub struct Load {
    /// The week, from 1.
    pub week: u32,
    /// The first day of that week on which they can go.
    pub from: Day,
    /// The tray.
    pub tray: TrayCode,
    /// The bed.
    pub bed: BedName,
    /// The species.
    pub(crate) species: SpeciesKey,
    /// How many.
    pub plants: u32,
    /// Whether a person said so.
    pub pinned: bool,
    /// What has to be done before, by its question.
    pub first: Vec<Rule>,
}

/// Why a plan cannot be made as a person asks.
#[derive(Clone, PartialEq, Debug)]
pub enum NoMatch {
    /// More is pinned of a tray than can go.
    TooManyOfTray {
        /// The tray.
        tray: TrayCode,
        /// Pinned.
        pinned: u32,
        /// There are.
        there: u32,
    },
    /// More is pinned to a bed than it has open positions.
    TooManyToBed {
        /// The bed.
        bed: BedName,
        /// Pinned.
        pinned: u32,
        /// Open.
        open: u32,
    },
    /// A pinned pair fits in none of the weeks.
    NeverFits {
        /// The tray.
        tray: TrayCode,
        /// The bed.
        bed: BedName,
    },
    /// More ways for a plant to go than are reckoned with.
    TooLarge,
}

/// Plants of a plan.
pub(super) fn sum(plan: &[Shipment]) -> i64 {
    plan.iter().map(|row| row.plants).sum()
}

/// Sums of a plan by something of each row.
pub(super) fn sums<K: Ord>(plan: &[Shipment], of: impl Fn(&Shipment) -> K) -> BTreeMap<K, i64> {
    let mut sums = BTreeMap::new();
    for row in plan {
        *sums.entry(of(row)).or_insert(0) += row.plants;
    }
    sums
}
