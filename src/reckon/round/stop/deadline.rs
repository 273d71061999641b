//! Until when a stop is worth doing, what ends it, and how long a stop has waited by its own interval.

use super::Stop;
use crate::base::Day;
use crate::reckon::round::intervals::LATE_SHARE;
use crate::words;

words! {
    /// What the last day of a stop stands for.
    UntilFor {
        /// The last day of the rains on which planting is safe.
        Rains: "rains";
        /// The plants grow too old for their container.
        Container: "container";
        /// The last day written down for bare roots.
        LastDay: "last_day";
        /// The last day to begin, or to step on, so that the tray is hardened within the safe rains.
        Hardened: "hardened";
        /// Roots that outgrow a seedbed or circle in a bag.
        Roots: "roots";
        /// The tray is old enough to go.
        Ready: "ready";
        /// The rains begin, and the tray is old enough.
        RainsBegin: "rains_begin";
        /// The tray is there and waits for the bed.
        Waits: "waits";
        /// The seed dies.
        SeedLife: "seed_life";
        /// What is sown after it misses the rains.
        SowBy: "sow_by";
        /// Half of its own interval after it fell due.
        Interval: "interval";
        /// The window in which the look still tells.
        Window: "window";
        /// The day itself.
        Today: "today";
        /// Young plants stand there.
        Planted: "planted";
    }
}

impl UntilFor {
    /// Where such a last day comes from.
    pub fn source(self) -> &'static str {
        match self {
            UntilFor::Rains => "common practice: the end of the usual rains less 8 weeks, or less half of short rains",
            UntilFor::Container => "the holding time of the container, as in days_in_container",
            UntilFor::LastDay => "the last day written down when they came",
            UntilFor::Hardened => "ours: the last safe day of the rains less the days that hardening still takes",
            UntilFor::Roots => "ours, common practice: 3 weeks after it fell due the roots are spoilt",
            UntilFor::Ready => "the least days of the species: a look after that comes late",
            UntilFor::RainsBegin => "the first day of the usual rains: a look after that comes late",
            UntilFor::Waits => "ours: no rains are described, and a tray that is ready waits for the bed",
            UntilFor::SowBy => "ours: the last safe day of the rains less the usual days from sowing to planting out",
            UntilFor::SeedLife => "the species' storage days for the way it is kept",
            UntilFor::Interval => "ours: half of its own interval after it fell due",
            UntilFor::Window => "ours: as long as the look still tells",
            UntilFor::Today => "common practice: the gauge is read every morning; a day without a line stays unknown",
            UntilFor::Planted => "common practice: a fence stands before the first young plant",
        }
    }
}

/// The day a stop fell due, and its own interval.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Due {
    /// The day.
    pub on: Day,
    /// It falls due again after so many days, or has so many days to be done in.
    pub every_days: i32,
}

impl Due {
    /// From this day on it is late: half of its own interval after it fell due. Ours.
    pub(crate) fn late_from(self) -> Day {
        self.on.plus((f64::from(self.every_days.max(1)) * LATE_SHARE).ceil() as i32)
    }
}

impl Stop {
    /// Whether its last day has passed.
    pub fn is_overdue(&self, day: Day) -> bool {
        self.until.is_some_and(|until| until < day)
    }

    /// Days it has waited past the day from which it is late; none where it is not late.
    pub fn late_days(&self, day: Day) -> Option<i32> {
        let late = self.due.map(|due| day.days_since(due.late_from()));
        late.filter(|days| *days > 0)
    }

    pub(in crate::reckon::round) fn due(mut self, on: Day, every_days: i32) -> Stop {
        self.due = Some(Due { on, every_days });
        self
    }

    /// With a last day, if there is one.
    pub(in crate::reckon::round) fn until(mut self, until: Option<Day>, what: UntilFor) -> Stop {
        self.until = until;
        self.until_for = until.map(|_| what);
        self
    }

    /// Due, and late after half of its interval: that is its last day too.
    pub(in crate::reckon::round) fn due_by_interval(self, on: Day, every_days: i32) -> Stop {
        let late_from = Due { on, every_days }.late_from();
        self.due(on, every_days).until(Some(late_from), UntilFor::Interval)
    }

    /// The minutes of the work itself, where they are more than those of looking.
    pub(in crate::reckon::round) fn working(mut self, minutes: f64) -> Stop {
        self.work_minutes = (minutes > self.minutes).then_some(minutes);
        self
    }
}
