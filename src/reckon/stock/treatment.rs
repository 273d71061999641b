//! Treatments (sprays, drenches, dusts) and the waiting time that follows each. A waiting time that nobody wrote is
//! unknown, and unknown is never safe: it holds back until it is written.

use serde::{Deserialize, Serialize};

use crate::base::{Day, EntryId};
use crate::nursery::entry::Treated;
use crate::nursery::entry::types::NotNegative;
use crate::nursery::herbicide::{
    burns_roots, has_no_wait, is_dust, is_no_spray, kills_weeds, may_kill_plants, may_lie_in_soil,
};
use crate::nursery::pest::is_only_water;
use crate::nursery::set_against::sets_against;

/// Nobody works among what was treated on the same day (ours; the rules for workers of the United States, 40 CFR 170, let nobody
/// in before a spray is dry, from memory). The label asks for more or for the same, never for less.
pub(crate) const LEAST_WAIT_DAYS: i32 = 1;

/// What was used against weeds without a word of how long it lies in the ground holds planting no longer than so many days: two
/// years, as the longest that labels ask for (from memory).
const GONE_FROM_GROUND_DAYS: i32 = 730;

/// Fresh dung and urea in the ground of a bed hold its planting for so many days, where nobody wrote another time. Ours, from common
/// practice: dung lies for weeks before plants stand in it.
pub(crate) const BURNS_ROOTS_DAYS: i32 = 28;

/// One treatment.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct Treatment {
    /// The day of it.
    pub day: Day,
    /// What was used.
    pub with: String,
    /// The waiting time as written from the label, whole days, rounded up; none where nobody wrote it.
    pub wait_days: Option<i32>,
    /// Days until what was treated may be planted, as written from the label; none where nobody wrote it.
    #[serde(default)]
    pub(crate) plant_after_days: Option<i32>,
    /// The entry that says so; of a completed one, the entry that completed it.
    pub entry: EntryId,
}

impl Treatment {
    /// The day from which the waiting time no longer holds; none where it is unknown. Never the day of the treatment itself,
    /// also where the label asks for no wait: what was sprayed has first to dry.
    pub(crate) fn over_on(&self) -> Option<Day> {
        if sets_against(&self.with) {
            return Some(self.day.plus(self.wait_days.unwrap_or(0)));
        }
        // For food of plants and water nobody waits, but where a time is written.
        let none = || has_no_wait(&self.with).then_some(self.day);
        self.wait_days.map(|days| self.day.plus(days.max(LEAST_WAIT_DAYS))).or_else(none)
    }

    /// The day from which a bed treated with it may be planted; none where that is unknown. Of what is known to let plants live
    /// nothing is waited for but what is written.
    pub(crate) fn plantable_on(&self) -> Option<Day> {
        let days = self.plant_after_days.or((!may_kill_plants(&self.with)).then_some(0));
        days.map(|days| self.day.plus(days))
    }

    /// Whether planting waits for it on a day, or nobody knows how long. What nobody wrote a time of is let go after
    /// [`GONE_FROM_GROUND_DAYS`].
    pub(crate) fn holds_planting_on(&self, day: Day) -> bool {
        let on = self.plantable_on().unwrap_or(self.day.plus(GONE_FROM_GROUND_DAYS));
        self.day <= day && day < on
    }

    /// Whether it kills the plants that it wets, whatever its label says of the ground: until so long after it nobody
    /// knows whether they live.
    pub(crate) fn scorches_until(&self, days: i32) -> Option<Day> {
        kills_weeds(&self.with).then(|| self.day.plus(days))
    }

    /// Until when young roots would burn in the ground where it was put; none where it burns none, or a time is written.
    pub(crate) fn burns_roots_until(&self) -> Option<Day> {
        let burns = self.plant_after_days.is_none() && burns_roots(&self.with);
        burns.then(|| self.day.plus(BURNS_ROOTS_DAYS))
    }

    /// Whether roots may take it up from the ground on a day: as written, else by what is known of it.
    pub(crate) fn lies_in_ground_on(&self, day: Day) -> bool {
        let lies = self.plant_after_days.is_some() || may_lie_in_soil(&self.with);
        lies && self.holds_planting_on(day)
    }

    /// Whether it is the treatment of a day with something, however that is spelt.
    fn is_that(&self, day: Day, with: &str) -> bool {
        self.day == day && self.with.trim().to_lowercase() == with.trim().to_lowercase()
    }

    /// Takes the longer of the times written; whether that changed anything.
    fn lengthen(&mut self, wait_days: Option<i32>, plant_after_days: Option<i32>) -> bool {
        // A time that nobody wrote is the least of all here: any written one completes it.
        let longer = wait_days > self.wait_days || plant_after_days > self.plant_after_days;
        self.wait_days = self.wait_days.max(wait_days);
        self.plant_after_days = self.plant_after_days.max(plant_after_days);
        longer
    }

    /// Whether what was used can cure: water alone cures nothing, nor does what is set against animals.
    pub(crate) fn can_cure(&self) -> bool {
        !is_only_water(&self.with) && !sets_against(&self.with)
    }

    /// Whether it wets or dusts what stands beside: all but what is known to be no spray.
    pub(crate) fn is_spray(&self) -> bool {
        !is_no_spray(&self.with) && !sets_against(&self.with)
    }

    /// Whether it wets, and has to dry.
    pub(crate) fn wets(&self) -> bool {
        self.is_spray() && !is_dust(&self.with)
    }

    /// Whether it ends before another: one whose time is unknown ends last.
    pub(crate) fn ends_before(&self, other: &Treatment) -> bool {
        let end = |one: &Treatment| (one.over_on().is_none(), one.over_on());
        end(self) < end(other)
    }

    /// Whether the waiting time runs on a day, or is not known.
    pub(crate) fn holds_on(&self, day: Day) -> bool {
        self.day <= day && self.over_on().is_none_or(|over| day < over)
    }
}

/// The treatments of a tray, a place or a bed.
#[derive(Clone, PartialEq, Debug, Default, Serialize, Deserialize)]
pub struct Treatments(Vec<Treatment>);

impl Treatments {
    /// Takes in an entry. A later entry of the same day and means completes the earlier one with what nobody wrote; of times written
    /// twice the longer one holds.
    pub fn write(&mut self, day: Day, treated: &Treated, entry: EntryId) {
        let with = treated.with.0.to_string();
        let whole = |days: Option<NotNegative>| days.map(|days| days.0.ceil() as i32);
        let wait_days = whole(treated.safe_after_days);
        let plant_after_days = whole(treated.plant_after_days);
        match self.0.iter_mut().find(|one| one.is_that(day, &with)) {
            Some(earlier) => {
                if earlier.lengthen(wait_days, plant_after_days) {
                    earlier.entry = entry;
                }
            }
            None => self.0.push(Treatment { day, with, wait_days, plant_after_days, entry }),
        }
    }

    /// Whether the waiting time of what was used on a day is written.
    pub(crate) fn has_wait_of(&self, day: Day, with: &str) -> bool {
        self.0.iter().any(|one| one.is_that(day, with) && one.wait_days.is_some())
    }

    /// All of them, in the order they were written.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = &Treatment> {
        self.0.iter()
    }

    /// Adds those that others had, as plants bring them along; what was completed on either side is complete.
    pub fn bring(&mut self, others: impl IntoIterator<Item = Treatment>) {
        for other in others {
            match self.0.iter_mut().find(|one| one.is_that(other.day, &other.with)) {
                Some(one) => {
                    if one.lengthen(other.wait_days, other.plant_after_days) {
                        one.entry = other.entry;
                    }
                }
                None => self.0.push(other),
            }
        }
    }
}

/// Of several treatments the one that holds longest on a day; one whose time is unknown, longest of all.
pub(crate) fn holding<'a>(all: impl Iterator<Item = &'a Treatment>, day: Day) -> Option<&'a Treatment> {
    all.filter(|one| one.holds_on(day)).max_by_key(|one| (one.over_on().is_none(), one.over_on(), one.day))
}
