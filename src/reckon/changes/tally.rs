//! What was counted, planted and lost since a moment: sums over a whole Picture, and what they grew by.

use serde::{Deserialize, Serialize};

use crate::reckon::picture::Picture;

/// Sums over every tray and bed of a Picture. They only grow, but for what is taken back.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default, Serialize, Deserialize)]
pub(crate) struct Tally {
    /// Plants that went from trays into beds.
    pub planted: u64,
    /// Plants given away or sold.
    pub given_out: u64,
    /// Plants lost in trays and died in beds.
    pub lost: u64,
    /// Plants thrown out.
    pub culled: u64,
}

impl Tally {
    /// The sums of a Picture.
    pub(crate) fn of(picture: &Picture) -> Tally {
        let mut all = Tally::default();
        for tray in picture.trays.values() {
            let accounts = &tray.story.accounts;
            all.planted += accounts.planted;
            all.given_out += accounts.given_out;
            all.lost += accounts.lost_in_all();
            all.culled += accounts.culled_in_all();
        }
        let cohorts = picture.beds.values().flat_map(|bed| &bed.story.cohorts);
        all.lost += cohorts.map(|cohort| u64::from(cohort.dead)).sum::<u64>();
        all
    }

    /// What came to it since; nothing where something was taken back.
    pub(crate) fn since(self, before: Tally) -> Tally {
        Tally {
            planted: self.planted.saturating_sub(before.planted),
            given_out: self.given_out.saturating_sub(before.given_out),
            lost: self.lost.saturating_sub(before.lost),
            culled: self.culled.saturating_sub(before.culled),
        }
    }
}

/// Trays that were counted on the day of a Picture, and how many plants were found standing.
pub(crate) fn counted_on_the_day(picture: &Picture) -> (usize, u64) {
    let looks = picture.trays.values().filter_map(|tray| tray.story.counts.last());
    let today = looks.filter(|look| look.day == picture.day);
    today.fold((0, 0), |(trays, plants), look| (trays + 1, plants + u64::from(look.standing)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_taken_back_is_no_loss_less_than_nothing() {
        let before = Tally { planted: 4, given_out: 0, lost: 7, culled: 2 };
        let now = Tally { planted: 10, given_out: 1, lost: 5, culled: 2 };
        assert_eq!(now.since(before), Tally { planted: 6, given_out: 1, lost: 0, culled: 0 });
    }
}
