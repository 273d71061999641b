//! What a plan is asked of: groups of like seedlings, openings of beds, work in each week, and what each plant is worth.

use std::cmp::Ordering;

use thiserror::Error;

/// The most plants of one group, opening or week; more than any nursery has. Ours.
pub const MOST_PLANTS: i64 = 1_000_000;
/// The most that one plant may be worth, either way: with it every sum is exact. Ours.
pub const MOST_VALUE: i64 = 1_000_000;
/// The most offers of one instance: fifteen times the largest that was measured. Ours.
pub const MOST_OFFERS: usize = 1_000_000;
/// The most weeks of one instance: ten years. Ours.
pub const MOST_WEEKS: u32 = 520;
/// Shares are read to parts of so many. Ours.
const PARTS: f64 = 1_000_000.0;

/// Seedlings that are alike: any of them may stand for any other.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Group {
    /// Its name, given once.
    pub id: String,
    /// Where its seed comes from: a mother tree or a mixture.
    pub source: String,
    /// Plants there are.
    pub supply: i64,
}

/// Positions of a bed that are open to one species.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Opening {
    /// The bed.
    pub bed: String,
    /// The species, once for each bed.
    pub species: String,
    /// Open positions.
    pub positions: i64,
}

/// That a group may go to an opening in a week, and what a plant of it is worth there and then.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Offer {
    /// Which group, from 0.
    pub group: usize,
    /// Which opening, from 0.
    pub opening: usize,
    /// The week, from 1.
    pub week: u32,
    /// The worth of one plant; may be below 0.
    pub value: i64,
}

/// Of what the greatest share of one source is taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShareOf {
    /// Of all positions of the bed, rounded down.
    Positions,
    /// Of all plants the plan brings to the bed.
    Planted,
}

/// The greatest share of one source in a bed, as a fraction.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Share {
    /// Of what.
    pub of: ShareOf,
    /// So many ...
    pub parts: i64,
    /// ... of so many.
    pub whole: i64,
}

impl Share {
    /// A share written as a number from 0 to 1.
    #[must_use]
    pub fn new(of: ShareOf, share: f64) -> Share {
        let (parts, whole) = ((share.clamp(0.0, 1.0) * PARTS).round() as i64, PARTS as i64);
        let common = greatest_common(parts, whole);
        Share { of, parts: parts / common, whole: whole / common }
    }

    /// Whether it limits anything.
    #[must_use]
    pub fn limits(&self) -> bool {
        self.parts < self.whole
    }

    /// The most of one source among so many.
    #[must_use]
    pub fn most_of(&self, plants: i64) -> i64 {
        self.parts * plants / self.whole
    }
}

fn greatest_common(a: i64, b: i64) -> i64 {
    if b == 0 { a } else { greatest_common(b, a % b) }
}

/// Why there is no instance.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum Unfit {
    /// Two groups of one name.
    #[error("group {0} is there twice")]
    GroupTwice(String),
    /// A bed that opens twice to one species.
    #[error("bed {bed} is open to {species} twice")]
    OpeningTwice {
        /// The bed.
        bed: String,
        /// The species.
        species: String,
    },
    /// More offers than are reckoned with.
    #[error("more than {MOST_OFFERS} ways for a plant to go")]
    TooManyOffers,
    /// An offer of something that is not there, or twice, or a number beyond what is reckoned with.
    #[error("an offer that cannot be")]
    Offer,
}

/// Groups, openings, weeks and offers, each in the order of names: in whatever order they came, it is the same instance.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Instance {
    groups: Vec<Group>,
    openings: Vec<Opening>,
    work: Vec<i64>,
    share: Share,
    offers: Vec<Offer>,
}

impl Instance {
    /// Puts an instance together. `work` holds the plants that can be set in each week.
    ///
    /// # Errors
    /// Names that stand twice, offers of what is not there, numbers beyond what is reckoned with.
    pub fn new(
        groups: Vec<Group>,
        openings: Vec<Opening>,
        work: Vec<i64>,
        share: Share,
        mut offers: Vec<Offer>,
    ) -> Result<Instance, Unfit> {
        if offers.len() > MOST_OFFERS {
            return Err(Unfit::TooManyOffers);
        }
        let (groups, group_at) = in_order(groups, Group::cmp);
        let (openings, opening_at) = in_order(openings, Opening::cmp);
        for offer in &mut offers {
            let known = group_at.get(offer.group).zip(opening_at.get(offer.opening));
            (offer.group, offer.opening) = known.map(|(group, opening)| (*group, *opening)).ok_or(Unfit::Offer)?;
        }
        offers.sort_unstable();
        let instance = Instance { groups, openings, work, share, offers };
        instance.is_fit()?;
        Ok(instance)
    }

    fn is_fit(&self) -> Result<(), Unfit> {
        if let Some(pair) = self.groups.windows(2).find(|pair| pair[0].id == pair[1].id) {
            return Err(Unfit::GroupTwice(pair[0].id.clone()));
        }
        let same = |pair: &&[Opening]| (&pair[0].bed, &pair[0].species) == (&pair[1].bed, &pair[1].species);
        if let Some(pair) = self.openings.windows(2).find(same) {
            return Err(Unfit::OpeningTwice { bed: pair[0].bed.clone(), species: pair[0].species.clone() });
        }
        let place = |offer: &Offer| (offer.group, offer.opening, offer.week);
        let twice = self.offers.windows(2).any(|pair| place(&pair[0]) == place(&pair[1]));
        let in_weeks = |offer: &Offer| offer.week >= 1 && offer.week as usize <= self.work.len();
        let is_fit = |offer: &Offer| in_weeks(offer) && offer.value.abs() <= MOST_VALUE;
        let supplies = self.groups.iter().map(|group| group.supply);
        let positions = self.openings.iter().map(|opening| opening.positions);
        let mut plants = supplies.chain(positions).chain(self.work.iter().copied());
        let fits = self.work.len() <= MOST_WEEKS as usize && plants.all(|plants| (0..=MOST_PLANTS).contains(&plants));
        let share_fits = self.share.whole > 0 && (0..=self.share.whole).contains(&self.share.parts);
        if twice || !fits || !share_fits || !self.offers.iter().all(is_fit) { Err(Unfit::Offer) } else { Ok(()) }
    }

    /// The groups, by name.
    #[must_use]
    pub fn groups(&self) -> &[Group] {
        &self.groups
    }

    /// The openings, by bed and species.
    #[must_use]
    pub fn openings(&self) -> &[Opening] {
        &self.openings
    }

    /// Plants that can be set in each week.
    #[must_use]
    pub fn work(&self) -> &[i64] {
        &self.work
    }

    /// The greatest share of one source in a bed.
    #[must_use]
    pub fn share(&self) -> Share {
        self.share
    }

    /// What may go where and when, by group, opening and week.
    #[must_use]
    pub fn offers(&self) -> &[Offer] {
        &self.offers
    }

    /// The bed of each opening as a number from 0, and how many beds there are.
    pub(super) fn bed_numbers(&self) -> (Vec<usize>, usize) {
        numbered(self.openings.iter().map(|opening| opening.bed.as_str()))
    }

    /// The source of each group as a number from 0, and how many sources there are.
    pub(super) fn source_numbers(&self) -> (Vec<usize>, usize) {
        numbered(self.groups.iter().map(|group| group.source.as_str()))
    }

    /// The species of each opening as a number from 0.
    pub(super) fn species_numbers(&self) -> Vec<usize> {
        numbered(self.openings.iter().map(|opening| opening.species.as_str())).0
    }
}

/// Sorts, and says where each went.
fn in_order<T>(things: Vec<T>, by: impl Fn(&T, &T) -> Ordering) -> (Vec<T>, Vec<usize>) {
    let mut all: Vec<(usize, T)> = things.into_iter().enumerate().collect();
    all.sort_by(|a, b| by(&a.1, &b.1));
    let mut went = vec![0; all.len()];
    for (now, (before, _)) in all.iter().enumerate() {
        went[*before] = now;
    }
    (all.into_iter().map(|(_, thing)| thing).collect(), went)
}

/// Numbers for names, in the order of the names.
fn numbered<'a>(names: impl Iterator<Item = &'a str> + Clone) -> (Vec<usize>, usize) {
    let mut sorted: Vec<&str> = names.clone().collect();
    sorted.sort_unstable();
    sorted.dedup();
    (names.map(|name| sorted.partition_point(|known| *known < name)).collect(), sorted.len())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn group(id: &str) -> Group {
        Group { id: id.to_string(), source: "M1".to_string(), supply: 5 }
    }

    fn opening(bed: &str) -> Opening {
        Opening { bed: bed.to_string(), species: "S1".to_string(), positions: 5 }
    }

    fn offer(group: usize, opening: usize, value: i64) -> Offer {
        Offer { group, opening, week: 1, value }
    }

    const ALL: Share = Share { of: ShareOf::Positions, parts: 1, whole: 1 };

    #[test]
    fn the_order_in_which_things_come_makes_no_difference() {
        let (groups, openings) = (vec![group("A"), group("B")], vec![opening("X"), opening("Y")]);
        let one = Instance::new(groups, openings, vec![9], ALL, vec![offer(0, 0, 3), offer(1, 1, 4)]).unwrap();
        let (groups, openings) = (vec![group("B"), group("A")], vec![opening("Y"), opening("X")]);
        let other = Instance::new(groups, openings, vec![9], ALL, vec![offer(0, 0, 4), offer(1, 1, 3)]).unwrap();
        assert_eq!(one, other);
    }

    #[test]
    fn what_cannot_be_is_no_instance() {
        let new = |groups: &[&str], beds: &[&str], offers: Vec<Offer>| {
            let groups = groups.iter().map(|id| group(id)).collect();
            Instance::new(groups, beds.iter().map(|bed| opening(bed)).collect(), vec![9], ALL, offers).map(drop)
        };
        assert_eq!(new(&["A", "A"], &["X"], vec![]), Err(Unfit::GroupTwice("A".to_string())));
        let twice = Unfit::OpeningTwice { bed: "X".to_string(), species: "S1".to_string() };
        assert_eq!(new(&["A"], &["X", "X"], vec![]), Err(twice));
        for wrong in [vec![offer(1, 0, 1)], vec![offer(0, 1, 1)], vec![offer(0, 0, 1); 2], vec![offer(0, 0, 1_000_001)]]
        {
            assert_eq!(new(&["A"], &["X"], wrong), Err(Unfit::Offer));
        }
        assert_eq!(new(&["A"], &["X"], vec![offer(0, 0, -7)]), Ok(()));
    }

    #[test]
    fn a_share_is_a_fraction_and_rounds_down_exactly() {
        let third = Share::new(ShareOf::Positions, 0.3);
        assert_eq!((third.parts, third.whole, third.most_of(10), third.most_of(9)), (3, 10, 3, 2));
        // 0.29 * 100 is 28.999999999999996 in floating point.
        assert_eq!(Share::new(ShareOf::Positions, 0.29).most_of(100), 29);
        assert!(third.limits() && !Share::new(ShareOf::Planted, 1.0).limits());
    }
}
