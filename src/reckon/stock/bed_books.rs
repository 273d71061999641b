//! The books of living and dead plants in a bed: who dies, and who is taken back. Nothing is lost on the way.

use super::bed::{BedStory, CohortStory, NurseStory};
use crate::base::SpeciesKey;

/// The numbers of one cohort.
pub(super) struct Book<'a> {
    planted: u32,
    living: &'a mut u32,
    dead: &'a mut u32,
}

impl<'a> Book<'a> {
    fn of_cohort(cohort: &'a mut CohortStory) -> Book<'a> {
        Book { planted: cohort.planted, living: &mut cohort.living, dead: &mut cohort.dead }
    }

    fn of_nurse(nurse: &'a mut NurseStory) -> Book<'a> {
        Book { planted: nurse.planted, living: &mut nurse.alive, dead: &mut nurse.gone }
    }

    /// How many of its dead can be taken back: never more than were planted.
    fn missing(&self) -> u32 {
        self.planted.saturating_sub(*self.living).min(*self.dead)
    }
}

impl BedStory {
    /// The books of the cohorts that `matches` picks, oldest first.
    pub(super) fn cohort_books(&mut self, matches: impl Fn(&CohortStory) -> bool) -> Vec<Book<'_>> {
        self.cohorts.iter_mut().filter(|cohort| matches(cohort)).map(Book::of_cohort).collect()
    }

    /// The books of the nurse plants of a species, oldest first.
    pub(super) fn nurse_books(&mut self, species: &SpeciesKey) -> Vec<Book<'_>> {
        self.nurses.iter_mut().filter(|nurse| nurse.nurse == *species).map(Book::of_nurse).collect()
    }
}

/// How many live.
pub(super) fn living(books: &[Book<'_>]) -> u64 {
    books.iter().map(|book| u64::from(*book.living)).sum()
}

/// How many live or died, planted by the books or not.
pub(super) fn there(books: &[Book<'_>]) -> u64 {
    books.iter().map(|book| u64::from(*book.living) + u64::from(*book.dead)).sum()
}

/// How many were ever planted.
pub(super) fn planted(books: &[Book<'_>]) -> u64 {
    books.iter().map(|book| u64::from(book.planted)).sum()
}

/// Lets plants die, in proportion to the living; at most as many as live. How many died.
pub(super) fn bury(books: &mut [Book<'_>], count: u64) -> u64 {
    let most: Vec<u32> = books.iter().map(|book| (*book.living).min(u32::MAX - *book.dead)).collect();
    let shares = spread(count, &most);
    for (book, share) in books.iter_mut().zip(&shares) {
        *book.living -= share;
        *book.dead += share;
    }
    shares.into_iter().map(u64::from).sum()
}

/// Takes deaths back, in proportion to those that can be; never beyond what was planted. How many live again.
pub(super) fn take_back(books: &mut [Book<'_>], count: u64) -> u64 {
    let most: Vec<u32> = books.iter().map(Book::missing).collect();
    let shares = spread(count, &most);
    for (book, share) in books.iter_mut().zip(&shares) {
        *book.living += share;
        *book.dead -= share;
    }
    shares.into_iter().map(u64::from).sum()
}

/// Living plants that no planting explains, put to the youngest cohort. How many could be put.
pub(super) fn add_living(books: &mut [Book<'_>], count: u64) -> i64 {
    books.last_mut().map_or(0, |book| put(book.living, count))
}

/// Dead plants that never lived by the books, put to the youngest cohort. How many could be put.
pub(super) fn add_dead(books: &mut [Book<'_>], count: u64) -> i64 {
    books.last_mut().map_or(0, |book| put(book.dead, count))
}

fn put(account: &mut u32, count: u64) -> i64 {
    let added = u32::try_from(count).unwrap_or(u32::MAX).min(u32::MAX - *account);
    *account += added;
    i64::from(added)
}

/// Spreads whole plants in proportion to the weights by the largest remainder, the older cohort first where remainders
/// are the same; no share exceeds its weight.
fn spread(count: u64, weights: &[u32]) -> Vec<u32> {
    let all: u64 = weights.iter().copied().map(u64::from).sum();
    if all == 0 {
        return vec![0; weights.len()];
    }
    let count = count.min(all);
    let exact = |weight: u32| u128::from(count) * u128::from(weight);
    // A whole part never exceeds its weight, so it fits.
    let mut shares: Vec<u32> = weights.iter().map(|weight| (exact(*weight) / u128::from(all)) as u32).collect();
    let given: u64 = shares.iter().copied().map(u64::from).sum();
    let mut by_remainder: Vec<usize> = (0..weights.len()).collect();
    by_remainder.sort_by_key(|at| (std::cmp::Reverse(exact(weights[*at]) % u128::from(all)), *at));
    for at in by_remainder.into_iter().take((count - given) as usize) {
        shares[at] += 1;
    }
    shares
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_largest_remainder_takes_the_odd_plant() {
        assert_eq!(spread(10, &[24, 16, 40]), vec![3, 2, 5]);
        assert_eq!(spread(10, &[30, 20, 50]), vec![3, 2, 5]);
        assert_eq!(spread(1, &[1, 1, 1]), vec![1, 0, 0]);
        assert_eq!(spread(5, &[7, 7]), vec![3, 2]);
        assert_eq!(spread(9, &[2, 3]), vec![2, 3]);
        assert_eq!(spread(3, &[0, 0]), vec![0, 0]);
    }

    proptest! {
        #[test]
        fn nothing_is_lost_in_spreading(count in 0u64..10_000_000_000, weights in prop::collection::vec(any::<u32>(), 0..8)) {
            let shares = spread(count, &weights);
            let all: u64 = weights.iter().copied().map(u64::from).sum();
            prop_assert_eq!(shares.iter().copied().map(u64::from).sum::<u64>(), count.min(all));
            prop_assert!(shares.iter().zip(&weights).all(|(share, weight)| share <= weight));
        }
    }
}
