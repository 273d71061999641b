//! An instance as it is stated in plain whole numbers: tables of what waiting, a wrong bed and carrying cost.

use std::collections::BTreeMap;

use super::instance::{Group, Instance, Offer, Opening, Share, Unfit};

/// A group with what decides where and when it may go.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StatedGroup {
    /// Name, source and supply.
    pub group: Group,
    /// Its species.
    pub species: String,
    /// Where it stands.
    pub block: String,
    /// First week in which it may go.
    pub ready_week: u32,
    /// Last week in which it may go.
    pub last_week: u32,
}

/// An opening with its weeks.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StatedOpening {
    /// Bed, species and positions.
    pub opening: Opening,
    /// First week.
    pub from_week: u32,
    /// Last week.
    pub until_week: u32,
}

/// What a plant is worth: base less what the tables take, 0 where a table says nothing.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Values {
    /// Worth of a plant that is set at once where it belongs.
    pub base: i64,
    /// By species: less for each week after the ready week.
    pub wait_penalty_per_week: BTreeMap<String, i64>,
    /// By species and bed: less for ground that suits it badly.
    pub mismatch: BTreeMap<String, BTreeMap<String, i64>>,
    /// By block and bed: less for carrying.
    pub block_distance: BTreeMap<String, BTreeMap<String, i64>>,
}

/// An instance in plain whole numbers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stated {
    /// The groups.
    pub groups: Vec<StatedGroup>,
    /// The openings.
    pub openings: Vec<StatedOpening>,
    /// Plants that can be set in each week.
    pub work: Vec<i64>,
    /// The greatest share of one source in a bed.
    pub share: Share,
    /// What a plant is worth.
    pub values: Values,
}

impl Stated {
    /// The instance: an offer for every group, opening of its species and week that both allow.
    ///
    /// # Errors
    /// As [`Instance::new`].
    pub fn instance(self) -> Result<Instance, Unfit> {
        let mut offers = Vec::new();
        let mut of_species: BTreeMap<&str, Vec<usize>> = BTreeMap::new();
        for (at, opening) in self.openings.iter().enumerate() {
            of_species.entry(&opening.opening.species).or_default().push(at);
        }
        for (group_at, group) in self.groups.iter().enumerate() {
            for &opening_at in of_species.get(group.species.as_str()).into_iter().flatten() {
                self.offers_of(group_at, group, opening_at, &mut offers);
            }
        }
        let groups = self.groups.into_iter().map(|group| group.group).collect();
        let openings = self.openings.into_iter().map(|opening| opening.opening).collect();
        Instance::new(groups, openings, self.work, self.share, offers)
    }

    fn offers_of(&self, group_at: usize, group: &StatedGroup, opening_at: usize, offers: &mut Vec<Offer>) {
        let opening = &self.openings[opening_at];
        let in_table = |table: &BTreeMap<String, BTreeMap<String, i64>>, row: &str| {
            table.get(row).and_then(|row| row.get(&opening.opening.bed)).copied().unwrap_or(0)
        };
        let values = &self.values;
        let mismatch = in_table(&values.mismatch, &group.species);
        let at_once = values.base - mismatch - in_table(&values.block_distance, &group.block);
        let per_week = values.wait_penalty_per_week.get(&group.species).copied().unwrap_or(0);
        let first = group.ready_week.max(opening.from_week).max(1);
        let last = group.last_week.min(opening.until_week).min(self.work.len() as u32);
        offers.extend((first..=last).map(|week| {
            let value = at_once - per_week * i64::from(week - group.ready_week);
            Offer { group: group_at, opening: opening_at, week, value }
        }));
    }
}
