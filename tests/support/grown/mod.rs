//! A believable nursery of any size, written day by day, always the same for the same seed. Everything in it is
//! invented: a school-and-village nursery on worn maize terraces.
//!
//! It keeps its own small books, so that every command could have been written at the desk. Up to 10,000 entries are one
//! year, 100,000 ten years, 1,000,000 twenty-five.

mod bed;
mod die;
mod late;
mod nursery;
mod seed;
mod site;
mod species;
mod tray;

use std::path::Path;

use outplant::base::{Day, DeviceId, EntryId, Moment};
use outplant::journal::{Journal, JournalError};
use outplant::nursery::envelope::{Draft, Hash, Sealed};
use serde_json::Value;

use nursery::Nursery;

/// The device whose numbers the withdrawals name; its first entry has the number 1.
pub const DEVICE: &str = "grown";
/// The last day of every book, give or take some weeks: the rains have come.
pub const LAST_DAY: &str = "2026-11-01";
/// Lines sealed and written at a time.
const LINES_AT_A_TIME: usize = 10_000;
const DAYS_OF_A_YEAR: f64 = 365.25;

/// Kind and body of an entry.
type Line = (&'static str, Value);

/// What is written in one go.
pub struct Command {
    /// When.
    pub recorded: Moment,
    /// Its lines.
    pub drafts: Vec<Draft>,
}

/// A day of the nursery, with what was written on its evening.
pub struct Evening {
    /// The day.
    pub day: Day,
    /// What was written, in order.
    pub commands: Vec<Command>,
}

/// A tray as the generator's own books have it.
#[derive(Clone, Debug)]
pub struct Known {
    /// Its code.
    pub tray: String,
    /// A day between two looks at it; for one that lives the last day of the book.
    pub day: Day,
    /// What stood in it on that day.
    pub standing: u32,
}

/// The evenings of a nursery.
pub struct Grown {
    nursery: Nursery,
    left: usize,
}

/// A nursery of so many entries, an evening at a time.
pub fn grown(entries: usize, seed: u64) -> Grown {
    let years = match entries {
        0..=10_000 => 1.0,
        10_001..=100_000 => entries as f64 / 10_000.0,
        _ => 10.0 + (entries - 100_000) as f64 / 60_000.0,
    };
    let days = years * DAYS_OF_A_YEAR;
    let last: Day = LAST_DAY.parse().unwrap();
    let nursery = Nursery::new(last.plus(-(days as i32) + 1), entries as f64 / days, seed);
    Grown { nursery, left: entries }
}

impl Grown {
    /// Trays that hold plants and were not touched on the last evening.
    pub fn living(&self) -> Vec<Known> {
        self.nursery.living()
    }

    /// Trays that were finished in the last two years and a little more, oldest first.
    pub fn finished(&self) -> Vec<Known> {
        self.nursery.finished.iter().cloned().collect()
    }
}

impl Iterator for Grown {
    type Item = Evening;

    fn next(&mut self) -> Option<Evening> {
        if self.left == 0 {
            return None;
        }
        let mut evening = self.nursery.live();
        for command in &mut evening.commands {
            command.drafts.truncate(self.left);
            self.left -= command.drafts.len();
        }
        evening.commands.retain(|command| !command.drafts.is_empty());
        Some(evening)
    }
}

/// A book that was written.
pub struct GrownBook {
    /// Its last day.
    pub last_day: Day,
    /// Trays that hold plants.
    pub living: Vec<Known>,
    /// Trays that are finished.
    pub finished: Vec<Known>,
}

/// Writes a nursery of so many entries into a new file, sealed by the device [`DEVICE`], many lines at a time.
pub fn write_grown(file: &Path, shelf: &Path, entries: usize, seed: u64) -> Result<GrownBook, JournalError> {
    let mut journal = Journal::begin(file, shelf)?;
    let mut seals = Seals::default();
    let mut evenings = grown(entries, seed);
    let mut last_day = evenings.nursery.day;
    for evening in evenings.by_ref() {
        last_day = evening.day;
        evening.commands.iter().for_each(|command| seals.seal(command));
        if seals.lines.len() >= LINES_AT_A_TIME {
            journal.append_sealed(std::mem::take(&mut seals.lines), &[], seals.recorded())?;
        }
    }
    journal.append_sealed(std::mem::take(&mut seals.lines), &[], seals.recorded())?;
    Ok(GrownBook { last_day, living: evenings.living(), finished: evenings.finished() })
}

/// Lines sealed one after the other.
#[derive(Default)]
struct Seals {
    lines: Vec<Sealed>,
    last: Option<(u64, Hash, Moment)>,
}

impl Seals {
    fn seal(&mut self, command: &Command) {
        let first = self.last.map_or(1, |(seq, _, _)| seq + 1);
        for (seq, draft) in (first..).zip(&command.drafts) {
            let id = EntryId { device: DeviceId::new(DEVICE).unwrap(), seq };
            let sealed = draft.seal(id, command.recorded, first, self.last.map(|(_, hash, _)| hash));
            self.last = Some((seq, sealed.hash, sealed.recorded));
            self.lines.push(sealed);
        }
    }

    fn recorded(&self) -> Moment {
        self.last.map_or(Moment::from_millis(0), |(_, _, recorded)| recorded)
    }
}
