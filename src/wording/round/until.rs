//! Until when a stop is worth doing and what that day stands for, what is lost without it, and the minutes of the work.

use super::reason::RoundOn;
use crate::nursery::species::Catalogue;
use crate::reckon::SharedOffer;
use crate::reckon::round::{Stake, Stop, Task, UntilFor};
use crate::wording::Wording;

/// Minutes from which the work is told in hours.
const IN_HOURS_FROM: f64 = 120.0;

impl Wording {
    /// Until when a stop is worth doing, and what that day stands for; past it, since when it is overdue.
    pub fn until_words(&self, stop: &Stop, on: RoundOn<'_>) -> String {
        let Some((until, what)) = stop.until.zip(stop.until_for) else { return self.until_not_known() };
        let day = self.day_beside(until, on.day);
        if stop.is_overdue(on.day) {
            return if what == UntilFor::Planted { self.until_overdue_planted(day) } else { self.until_overdue(day) };
        }
        match what {
            UntilFor::Rains => self.until_rains(day),
            UntilFor::Container => self.until_container(day),
            UntilFor::LastDay => self.until_last_day(day),
            UntilFor::Hardened => self.until_hardened(day),
            UntilFor::Roots => self.until_roots(day),
            UntilFor::Ready => self.until_ready(day),
            UntilFor::RainsBegin => self.until_rains_begin(day),
            UntilFor::Waits => self.until_waits(day),
            UntilFor::SeedLife => self.until_seed_life(day),
            UntilFor::SowBy => self.until_sow_by(day),
            UntilFor::Interval | UntilFor::Window | UntilFor::Planted => self.round_until(day),
            UntilFor::Today => self.until_today(),
        }
    }

    /// What ends before a tray can go, and what is done then.
    pub(crate) fn ends_before_words(&self, day: String, what: UntilFor) -> String {
        if what == UntilFor::LastDay { self.ends_before_bare(day) } else { self.ends_before_container(day) }
    }

    /// By which day a tray goes out, and what ends then, in few words.
    pub(crate) fn go_by_words(&self, day: String, what: UntilFor) -> String {
        match what {
            UntilFor::Rains => self.go_by_rains(day),
            UntilFor::LastDay => self.go_by_last_day(day),
            UntilFor::Container => self.go_by_container(day),
            UntilFor::Hardened
            | UntilFor::Roots
            | UntilFor::Ready
            | UntilFor::RainsBegin
            | UntilFor::Waits
            | UntilFor::SeedLife
            | UntilFor::SowBy
            | UntilFor::Interval
            | UntilFor::Window
            | UntilFor::Today
            | UntilFor::Planted => self.round_until(day),
        }
    }

    /// What several rows count more than once.
    pub(crate) fn shared_offer(&self, offer: &SharedOffer, species: &Catalogue) -> String {
        let count = |number: usize| i64::try_from(number).unwrap_or(i64::MAX);
        match offer {
            SharedOffer::Tray { tray, plants, beds } => {
                let names: Vec<String> = beds.iter().map(ToString::to_string).collect();
                self.offer_tray(*plants, tray, count(beds.len()), names.join(", "))
            }
            SharedOffer::Bed { bed, species: key, places, trays } => {
                let names: Vec<String> = trays.iter().map(ToString::to_string).collect();
                let species = self.species_of(key, species);
                self.offer_bed(*places, species, bed, count(trays.len()), names.join(", "))
            }
        }
    }

    /// What is lost without a stop, behind until when it is to be done; never empty.
    pub fn or_else_lost(&self, stop: &Stop) -> String {
        let lost = self.lost_without_stop(stop);
        if lost == self.lose_no_place() { lost } else { self.or_else(lost) }
    }

    /// What is lost without a stop, as a sentence of its own; never empty.
    pub(crate) fn lost_without_stop(&self, stop: &Stop) -> String {
        if let Some(lost) = self.lost_without(stop.at_stake) {
            // Of rains that nobody described nothing is said.
            let of_rains =
                [UntilFor::Rains, UntilFor::Hardened, UntilFor::RainsBegin].map(Some).contains(&stop.until_for);
            let in_time = stop.at_stake.what == Stake::Planting && !of_rains;
            return if in_time {
                self.lose_time(self.rough_number(stop.at_stake.plants, stop.at_stake.most))
            } else {
                lost
            };
        }
        match (stop.task, stop.at_stake.what) {
            (Task::Gauge, _) => self.lose_rain(),
            (Task::StopWaiting, _) => self.lose_bench(),
            (Task::CutBunches | Task::LiftTubers, _) => self.lose_food(),
            (Task::Cull, _) => self.lose_room(),
            (Task::ThrowOutLot, _) => self.lose_sowing(),
            (Task::GoOut, _) => self.lose_no_place(),
            (_, Stake::Knowledge) => self.lose_reading(),
            (_, Stake::Seedlings | Stake::Seed | Stake::Planted | Stake::Planting) => self.lose_little(),
        }
    }

    /// How what is lost without a stop is reckoned, for who asks why.
    pub(crate) fn stop_reckoned(&self, stop: &Stop) -> String {
        let (stake, minutes) = (stop.at_stake, self.number(stop.minutes, 1));
        let a_day = self.number(stake.plants_per_day(), 2);
        self.round_reckoned(self.number(stake.plants, 1), self.number(f64::from(stake.within_days), 0), a_day, minutes)
    }

    /// A time of work: minutes, or hours where it is long.
    pub(crate) fn work_time(&self, minutes: f64) -> String {
        if minutes < IN_HOURS_FROM {
            return self.work_minutes(minutes.ceil().clamp(0.0, 1e9) as i64);
        }
        self.work_hours(self.number((minutes / 60.0).round(), 0))
    }
}
