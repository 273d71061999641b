//! Opening the nursery for a command: what its file has to tell, and whether the clock can be right.

use super::answer::{Ending, said_yes};
use super::run::{Exit, Run};
use crate::base::Day;
use crate::desk::{Desk, DeskError, JournalError};
use crate::nursery::species::Catalogue;

impl Run {
    /// Opens the nursery and passes on what the file has to tell.
    pub(crate) fn desk(&self) -> Result<Desk, Exit> {
        let desk = Desk::open(&self.file, &self.around.folders.settings, self.now).map_err(|fault| match fault {
            DeskError::Journal(JournalError::NotThere(_)) if self.is_own_nursery() => {
                Exit::refused(self.wording.refused_no_nursery())
            }
            fault => self.exit_for(&fault, &Catalogue::built_in()),
        })?;
        for text in desk.notes().iter().filter_map(|note| self.wording.journal_note(note)) {
            self.note(&text);
        }
        ask_of_clock(self, &desk)?;
        Ok(desk)
    }

    /// Whether the nursery is the one in the data folder that nobody named.
    fn is_own_nursery(&self) -> bool {
        self.file == self.around.folders.own_nursery()
    }
}

/// Days past the newest entry after which the clock is asked about.
const LONG_SILENCE_DAYS: i32 = 366;
/// Holds the day that a person has said is right, in the folder of the settings.
const SAID_FILE: &str = "clock.txt";

/// A clock that cannot be right, today before the newest entry or more than a year past it, is asked about once at a
/// terminal and noted otherwise; true days are never refused.
fn ask_of_clock(run: &Run, desk: &Desk) -> Result<(), Exit> {
    let today = run.now.today;
    let desk_fault = |fault| run.desk_fault(fault);
    let (newest_day, newest_moment) = desk.newest().map_err(desk_fault)?;
    // Where a clock once ran ahead and that was taken back, every later entry was recorded no earlier than that.
    let mended = desk.took_back_what_was_to_come().map_err(desk_fault)?;
    let newest_moment = newest_moment.filter(|_| !mended);
    let Some(newest) = newest_day else { return Ok(()) };
    let before =
        today < newest || newest_moment.is_some_and(|moment| run.now.moment < moment && today < moment.day(-14.0));
    let doubt = if before {
        run.wording.clock_behind(run.wording.day(today), run.wording.day(newest))
    } else if today.days_since(newest) > LONG_SILENCE_DAYS {
        run.wording.clock_ahead(run.wording.day(today), run.wording.day(newest))
    } else {
        return Ok(());
    };
    run.note(&doubt);
    if !run.around.can_ask || run.everywhere.json || was_said(run, today) {
        return Ok(());
    }
    if !said_yes(&run.wording.clock_asks()) {
        return Err(Exit { ending: Ending::Refused, lines: vec![run.wording.clock_set_it()] });
    }
    // Where it cannot be noted, it is asked again next time.
    let _ = std::fs::create_dir_all(&run.around.folders.settings);
    let _ = std::fs::write(run.around.folders.settings.join(SAID_FILE), today.to_string());
    Ok(())
}

fn was_said(run: &Run, today: Day) -> bool {
    let text = std::fs::read_to_string(run.around.folders.settings.join(SAID_FILE));
    text.is_ok_and(|text| text.trim() == today.to_string())
}
