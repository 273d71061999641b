//! How far the figures of profiles can be trusted, counted.

use serde::Serialize;

use super::figure::Flag;
use super::profile::Profile;

/// So many figures of each flag.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default, Serialize)]
pub struct Trust {
    /// All of them.
    pub figures: u32,
    /// Read in the source that they name.
    pub seen: u32,
    /// Recalled from the source that they name.
    pub memory: u32,
    /// Common practice in the trade.
    pub common_practice: u32,
    /// Our own defaults.
    pub ours: u32,
    /// This nursery's own.
    pub own: u32,
}

impl Trust {
    /// The figures of several profiles together.
    pub fn of<'a>(profiles: impl IntoIterator<Item = &'a Profile>) -> Trust {
        let mut trust = Trust::default();
        for (_, _, _, flag) in profiles.into_iter().flat_map(Profile::figures) {
            trust.figures += 1;
            *match flag {
                Flag::Seen => &mut trust.seen,
                Flag::Memory => &mut trust.memory,
                Flag::Common => &mut trust.common_practice,
                Flag::Ours => &mut trust.ours,
                Flag::Own => &mut trust.own,
            } += 1;
        }
        trust
    }

    /// Each flag with its count.
    pub fn by_flag(&self) -> [(Flag, u32); 5] {
        [
            (Flag::Seen, self.seen),
            (Flag::Memory, self.memory),
            (Flag::Common, self.common_practice),
            (Flag::Ours, self.ours),
            (Flag::Own, self.own),
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::nursery::species::Catalogue;

    #[test]
    fn every_figure_is_counted_once_and_those_of_a_nursery_apart() {
        let mut catalogue = Catalogue::built_in();
        let before = Trust::of(catalogue.iter().map(|(_, profile)| profile.as_ref()));
        let counted: u32 = before.by_flag().iter().map(|(_, count)| count).sum();
        assert_eq!((before.figures, before.own), (counted, 0));
        // A figure that was read becomes one of the nursery's own.
        let own = serde_json::json!({"height_least_cm": 25});
        let laid = catalogue.with_own("coffee", own.as_object().unwrap(), "our book").unwrap();
        catalogue.insert(laid.1);
        let after = Trust::of(catalogue.iter().map(|(_, profile)| profile.as_ref()));
        assert_eq!((after.figures, after.seen, after.own), (before.figures, before.seen - 1, 1));
    }
}
