//! Whether a plan can be carried out, and what it is worth: written apart from every solver, from the instance alone.

use std::collections::BTreeMap;

use thiserror::Error;

use super::instance::{Instance, ShareOf};

/// So many plants of a group to an opening in a week.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Shipment {
    /// Which group, as in [`Instance::groups`].
    pub group: usize,
    /// Which opening, as in [`Instance::openings`].
    pub opening: usize,
    /// The week, from 1.
    pub week: u32,
    /// How many.
    pub plants: i64,
}

/// Why a plan cannot be carried out.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum Broken {
    /// A row without a plant, or with fewer.
    #[error("a row of {0} plants")]
    NoPlants(i64),
    /// A row that stands twice, or that is not offered.
    #[error("group {group} is not offered to opening {opening} in week {week}, or twice")]
    NotOffered {
        /// The group.
        group: usize,
        /// The opening.
        opening: usize,
        /// The week.
        week: u32,
    },
    /// More of a group than there is.
    #[error("more of group {0} than there is")]
    Supply(usize),
    /// More in an opening than it has positions.
    #[error("more in opening {0} than it has positions")]
    Positions(usize),
    /// More in a week than can be set.
    #[error("more in week {0} than can be set")]
    Work(u32),
    /// More of one source in a bed than its share.
    #[error("more of source {source_name} in bed {bed} than its share")]
    SourceShare {
        /// The bed.
        bed: String,
        /// The source.
        source_name: String,
    },
}

/// What a plan is worth.
///
/// # Errors
/// The first thing that makes it impossible.
pub fn check(instance: &Instance, plan: &[Shipment]) -> Result<i64, Broken> {
    let value_of: BTreeMap<(usize, usize, u32), i64> =
        instance.offers().iter().map(|offer| ((offer.group, offer.opening, offer.week), offer.value)).collect();
    let (mut of_group, mut of_opening, mut of_week) = (BTreeMap::new(), BTreeMap::new(), BTreeMap::new());
    let (mut of_bed, mut of_source) = (BTreeMap::new(), BTreeMap::new());
    let mut seen = BTreeMap::new();
    let mut worth = 0;
    for row in plan {
        if row.plants < 1 {
            return Err(Broken::NoPlants(row.plants));
        }
        let place = (row.group, row.opening, row.week);
        let value = value_of.get(&place).filter(|_| seen.insert(place, ()).is_none());
        let not_offered = Broken::NotOffered { group: row.group, opening: row.opening, week: row.week };
        worth += value.ok_or(not_offered)? * row.plants;
        *of_group.entry(row.group).or_insert(0) += row.plants;
        *of_opening.entry(row.opening).or_insert(0) += row.plants;
        *of_week.entry(row.week).or_insert(0) += row.plants;
        let bed = instance.openings()[row.opening].bed.as_str();
        *of_bed.entry(bed).or_insert(0) += row.plants;
        *of_source.entry((bed, instance.groups()[row.group].source.as_str())).or_insert(0) += row.plants;
    }
    first_over(&of_group, |group| instance.groups()[group].supply).map_or(Ok(()), |at| Err(Broken::Supply(at)))?;
    let positions = |opening: usize| instance.openings()[opening].positions;
    first_over(&of_opening, positions).map_or(Ok(()), |at| Err(Broken::Positions(at)))?;
    let work = |week: u32| instance.work()[week as usize - 1];
    first_over(&of_week, work).map_or(Ok(()), |at| Err(Broken::Work(at)))?;
    shares_hold(instance, &of_bed, &of_source)?;
    Ok(worth)
}

fn first_over<K: Copy + Ord>(sums: &BTreeMap<K, i64>, most: impl Fn(K) -> i64) -> Option<K> {
    sums.iter().find(|(at, sum)| **sum > most(**at)).map(|(at, _)| *at)
}

fn shares_hold(
    instance: &Instance,
    of_bed: &BTreeMap<&str, i64>,
    of_source: &BTreeMap<(&str, &str), i64>,
) -> Result<(), Broken> {
    let share = instance.share();
    for ((bed, source), plants) in of_source {
        let openings = instance.openings().iter().filter(|opening| opening.bed == *bed);
        let whole = match share.of {
            ShareOf::Positions => openings.map(|opening| opening.positions).sum::<i64>(),
            ShareOf::Planted => of_bed.get(bed).copied().unwrap_or(0),
        };
        if share.limits() && plants * share.whole > share.parts * whole {
            return Err(Broken::SourceShare { bed: (*bed).to_string(), source_name: (*source).to_string() });
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::super::instance::{Group, Offer, Opening, Share};
    use super::*;

    fn instance(of: ShareOf) -> Instance {
        let group = |id: &str, source: &str| Group { id: id.to_string(), source: source.to_string(), supply: 6 };
        let opening = Opening { bed: "X".to_string(), species: "S".to_string(), positions: 9 };
        let offer = |group, week| Offer { group, opening: 0, week, value: 10 - i64::from(week) };
        let offers = vec![offer(0, 1), offer(0, 2), offer(1, 1)];
        let groups = vec![group("A", "M1"), group("B", "M2")];
        Instance::new(groups, vec![opening], vec![7, 5], Share { of, parts: 2, whole: 3 }, offers).unwrap()
    }

    fn row(group: usize, week: u32, plants: i64) -> Shipment {
        Shipment { group, opening: 0, week, plants }
    }

    #[test]
    fn each_limit_is_seen() {
        let of = |plan: &[Shipment]| check(&instance(ShareOf::Positions), plan);
        assert_eq!(of(&[row(0, 1, 4), row(0, 2, 2), row(1, 1, 3)]), Ok(4 * 9 + 2 * 8 + 3 * 9));
        assert_eq!(of(&[]), Ok(0));
        assert_eq!(of(&[row(0, 1, 0)]), Err(Broken::NoPlants(0)));
        assert_eq!(of(&[row(1, 2, 1)]), Err(Broken::NotOffered { group: 1, opening: 0, week: 2 }));
        assert_eq!(of(&[row(0, 1, 1), row(0, 1, 1)]), Err(Broken::NotOffered { group: 0, opening: 0, week: 1 }));
        assert_eq!(of(&[row(0, 1, 5), row(0, 2, 2)]), Err(Broken::Supply(0)));
        assert_eq!(of(&[row(0, 1, 4), row(0, 2, 2), row(1, 1, 4)]), Err(Broken::Positions(0)));
        assert_eq!(of(&[row(0, 1, 5), row(1, 1, 3)]), Err(Broken::Work(1)));
    }

    #[test]
    fn a_share_is_of_positions_or_of_what_is_planted() {
        let plan = [row(0, 1, 4), row(1, 1, 1)];
        let broken = Broken::SourceShare { bed: "X".to_string(), source_name: "M1".to_string() };
        assert_eq!(check(&instance(ShareOf::Planted), &plan), Err(broken));
        assert!(check(&instance(ShareOf::Positions), &plan).is_ok());
        assert!(check(&instance(ShareOf::Planted), &[row(0, 1, 4), row(1, 1, 2)]).is_ok());
    }
}
