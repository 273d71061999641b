//! The round as it was planned in the morning, and how far one has come: what is done stays in sight, what is skipped
//! comes back at the end, and all of it is there again after a power cut.

use std::collections::{BTreeMap, BTreeSet};

use serde::{Deserialize, Serialize};

use crate::base::{BedName, Day, LotCode, PlaceName, TrayCode};
use crate::nursery::entry::subject::Subject;
use crate::reckon::Picture;
use crate::reckon::changes::tally::Tally;
use crate::reckon::round::{Round, Stop, Task, Where, written_for};
use crate::words;

words! {
    /// How far a stop of the plan is.
    Mark {
        /// Still to be done.
        Open: "open";
        /// Handed to the clerk, no answer yet.
        Sent: "sent";
        /// Done.
        Done: "done";
        /// Passed over; it comes back at the end.
        Skipped: "skipped";
        /// No longer due, and nothing was written for it.
        Over: "over";
    }
}

/// A stop of the plan, as it is kept on disk.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub(crate) struct Planned {
    /// Its id in the round.
    pub(crate) id: String,
    /// What there is to do.
    pub(crate) task: Task,
    about: String,
    at: String,
    /// The sign of the place.
    pub(crate) place_sign: Option<String>,
    /// The tray's own sign.
    pub(crate) tray_sign: Option<String>,
    /// Minutes of looking.
    pub(crate) minutes: f64,
    /// Minutes of the work itself, where it is more than a look.
    #[serde(default)]
    pub(crate) work_minutes: f64,
    /// How far it is.
    pub(crate) mark: Mark,
    /// What was written here, in a few words.
    pub(crate) said: String,
    /// What was written here before that, where it was done once more.
    #[serde(default)]
    pub(crate) said_before: String,
    /// How much stood in the book of what the task asks for.
    seen: u64,
    /// Whether the round did not hold it any more since it was done.
    gone: bool,
}

impl Planned {
    fn of(stop: &Stop, picture: &Picture) -> Planned {
        Planned {
            id: stop.id.clone(),
            task: stop.task,
            about: subject_kept(&stop.subject),
            at: place_kept(&stop.at),
            place_sign: stop.place_sign.clone(),
            tray_sign: stop.tray_sign.clone(),
            minutes: stop.minutes,
            work_minutes: stop.work_minutes.unwrap_or(0.0),
            mark: Mark::Open,
            said: String::new(),
            said_before: String::new(),
            seen: written_for(stop.task, &stop.subject, picture),
            gone: false,
        }
    }

    /// What it is about.
    pub(crate) fn subject(&self) -> Subject {
        subject_read(&self.about)
    }

    /// Where it is.
    pub(crate) fn place(&self) -> Where {
        place_read(&self.at)
    }

    /// Whether it is behind one.
    pub(crate) fn is_behind(&self) -> bool {
        match self.mark {
            Mark::Done | Mark::Over | Mark::Sent => true,
            Mark::Open | Mark::Skipped => false,
        }
    }

    /// The book was drawn again.
    fn look_again(&mut self, due: bool, picture: &Picture) {
        let seen = written_for(self.task, &self.subject(), picture);
        match self.mark {
            Mark::Open | Mark::Skipped if !due => {
                self.mark = if seen > self.seen { Mark::Done } else { Mark::Over };
                self.seen = seen;
                self.gone = true;
            }
            Mark::Over if due => self.open_again(seen),
            // What did it was taken back; what is due once more for another reason stays done for today.
            Mark::Done if due && seen < self.seen => self.open_again(seen),
            Mark::Done | Mark::Over => self.gone |= !due,
            Mark::Sent if !due || seen > self.seen => {
                self.mark = Mark::Done;
                self.seen = seen;
                self.gone = !due;
            }
            Mark::Open | Mark::Skipped | Mark::Sent => {}
        }
    }

    fn forget_said(&mut self) {
        self.said.clear();
        self.said_before.clear();
    }

    fn open_again(&mut self, seen: u64) {
        self.mark = Mark::Open;
        self.forget_said();
        self.seen = seen;
        self.gone = false;
    }
}

/// The plan of a day.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub(crate) struct Plan {
    /// The day.
    pub(crate) day: Day,
    /// Its stops, in walking order; what was taken from those that could wait stands at the end.
    pub(crate) stops: Vec<Planned>,
    /// The stop one stands at.
    pub(crate) at: Option<String>,
    /// What had been planted and lost when the round began.
    #[serde(default)]
    pub(crate) before: Option<Tally>,
    /// Every stop that was due then, those that could wait too; none in a plan of an older version.
    #[serde(default)]
    known: Option<BTreeSet<String>>,
}

impl Plan {
    /// The plan of a morning.
    pub(crate) fn of(round: &Round, picture: &Picture) -> Plan {
        let stops: Vec<Planned> = round.stops.iter().map(|stop| Planned::of(stop, picture)).collect();
        let at = stops.first().map(|stop| stop.id.clone());
        let due = round.stops.iter().chain(&round.can_wait).map(|stop| stop.id.clone()).collect();
        // Of a day on which nothing was due all that comes is new: that need not be said of each.
        let known = Some(due).filter(|due: &BTreeSet<String>| !due.is_empty());
        Plan { day: picture.day, stops, at, before: Some(Tally::of(picture)), known }
    }

    /// A plan as it was kept; what was on its way to the file is looked for there.
    pub(crate) fn read(kept: &str) -> Option<Plan> {
        let mut plan: Plan = serde_json::from_str(kept).ok()?;
        for stop in &mut plan.stops {
            if stop.mark == Mark::Sent {
                stop.mark = Mark::Open;
            }
        }
        Some(plan)
    }

    /// The text to keep.
    pub(crate) fn kept(&self) -> String {
        serde_json::to_string(self).unwrap_or_default()
    }

    /// The book was drawn again.
    pub(crate) fn look_again(&mut self, round: &Round, picture: &Picture) {
        let due: BTreeMap<&str, &Stop> =
            round.stops.iter().chain(&round.can_wait).map(|stop| (stop.id.as_str(), stop)).collect();
        for stop in &mut self.stops {
            stop.look_again(due.contains_key(stop.id.as_str()), picture);
        }
    }

    /// What was written beside stops that are still to be done, and was taken back, is no longer said of them.
    pub(crate) fn forget_said_of(&mut self, about: &[Subject]) {
        let open = |stop: &&mut Planned| !stop.is_behind() && about.contains(&stop.subject());
        self.stops.iter_mut().filter(open).for_each(Planned::forget_said);
    }

    /// A stop by its id.
    pub(crate) fn stop_mut(&mut self, id: &str) -> Option<&mut Planned> {
        self.stops.iter_mut().find(|stop| stop.id == id)
    }

    /// Whether there is something to do where one stands.
    pub(crate) fn is_open_here(&self) -> bool {
        let here = self.stops.iter().find(|stop| Some(&stop.id) == self.at.as_ref());
        here.is_some_and(|stop| matches!(stop.mark, Mark::Open | Mark::Skipped))
    }

    /// Whether it holds a stop.
    pub(crate) fn holds(&self, id: &str) -> bool {
        self.stops.iter().any(|stop| stop.id == id)
    }

    /// Whether a stop came up since the round was planned.
    pub(crate) fn is_new(&self, id: &str) -> bool {
        self.known.as_ref().is_some_and(|known| !known.contains(id))
    }

    /// A stop that could wait is done all the same.
    pub(crate) fn take_in(&mut self, stop: &Stop, picture: &Picture) {
        if !self.holds(&stop.id) {
            self.stops.push(Planned::of(stop, picture));
        }
    }

    /// It is in the file.
    pub(crate) fn done(&mut self, id: &str, still_due: bool, past_day: bool, picture: &Picture) {
        let Some(stop) = self.stop_mut(id) else { return };
        stop.seen = written_for(stop.task, &stop.subject(), picture);
        stop.gone = !still_due;
        // What was written for a day before does not do today's work.
        stop.mark = if still_due && past_day { Mark::Open } else { Mark::Done };
    }

    /// Stops that are behind one, and all.
    pub(crate) fn progress(&self) -> (usize, usize) {
        (self.stops.iter().filter(|stop| stop.is_behind()).count(), self.stops.len())
    }

    /// Stops that were passed over.
    pub(crate) fn skipped(&self) -> usize {
        self.stops.iter().filter(|stop| stop.mark == Mark::Skipped).count()
    }

    /// Minutes of looking, and of work, that are still before one.
    pub(crate) fn minutes_left(&self) -> (f64, f64) {
        let left = self.stops.iter().filter(|stop| !stop.is_behind());
        left.fold((0.0, 0.0), |(looks, work), stop| (looks + stop.minutes, work + stop.work_minutes))
    }

    /// The next stop to go to from one: the next open one, else the first open one, else what was skipped.
    pub(crate) fn next_after(&self, id: &str) -> Option<String> {
        let at = self.stops.iter().position(|stop| stop.id == id);
        let (before, after) = match at {
            Some(at) => (&self.stops[..at], &self.stops[at + 1..]),
            None => (&self.stops[..], &self.stops[self.stops.len()..]),
        };
        let first = |mark: Mark, among: &[Planned]| among.iter().find(|stop| stop.mark == mark).map(|s| s.id.clone());
        first(Mark::Open, after)
            .or_else(|| first(Mark::Open, before))
            .or_else(|| first(Mark::Skipped, after))
            .or_else(|| first(Mark::Skipped, before))
    }
}

fn subject_kept(subject: &Subject) -> String {
    match subject {
        Subject::Tray(code) => format!("tray {code}"),
        Subject::Lot(code) => format!("lot {code}"),
        Subject::Bed(name) => format!("bed {name}"),
        Subject::Place(name) => format!("place {name}"),
        Subject::Site => "site".to_string(),
    }
}

fn subject_read(kept: &str) -> Subject {
    let (kind, name) = kept.split_once(' ').unwrap_or((kept, ""));
    let read = match kind {
        "tray" => TrayCode::new(name).ok().map(Subject::Tray),
        "lot" => LotCode::new(name).ok().map(Subject::Lot),
        "bed" => BedName::new(name).ok().map(Subject::Bed),
        "place" => PlaceName::new(name).ok().map(Subject::Place),
        _ => None,
    };
    read.unwrap_or(Subject::Site)
}

fn place_kept(at: &Where) -> String {
    match at {
        Where::Place(name) => format!("place {name}"),
        Where::Bed(name) => format!("bed {name}"),
        Where::SeedStore => "seed".to_string(),
        Where::Nowhere => "nowhere".to_string(),
    }
}

fn place_read(kept: &str) -> Where {
    let (kind, name) = kept.split_once(' ').unwrap_or((kept, ""));
    let read = match kind {
        "place" => PlaceName::new(name).ok().map(Where::Place),
        "bed" => BedName::new(name).ok().map(Where::Bed),
        "seed" => Some(Where::SeedStore),
        _ => None,
    };
    read.unwrap_or(Where::Nowhere)
}
