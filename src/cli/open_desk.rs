//! Opening the nursery for a command: what its file has to tell, and whether the clock can be right.

use super::answer::said_yes;
use super::run::{Exit, Run};
use crate::desk::{Desk, DeskError, JournalError, Newest, Note, Reading};
use crate::nursery::species::Catalogue;

impl Run {
    /// Opens the nursery and passes on what the file has to tell.
    pub(crate) fn desk(&self) -> Result<Desk, Exit> {
        let desk = self.open_desk()?;
        self.tell_notes(&desk);
        ask_of_clock(self, &desk, false)?;
        Ok(desk)
    }

    fn open_desk(&self) -> Result<Desk, Exit> {
        Desk::open(&self.file, &self.around.folders.settings, self.now).map_err(|fault| match fault {
            DeskError::Journal(JournalError::NotThere(_)) if self.is_own_nursery() => {
                Exit::refused(self.wording.refused_no_nursery())
            }
            fault => self.exit_for(&fault, &Catalogue::built_in()),
        })
    }

    /// The same for a command that writes: where the file or the clock cannot be right, it is asked first.
    pub(crate) fn desk_to_write(&self) -> Result<Desk, Exit> {
        let desk = self.open_desk()?;
        self.tell_notes(&desk);
        ask_of_clock(self, &desk, true)?;
        ask_of_what_is_gone(self, &desk)?;
        Ok(desk)
    }

    /// Opens the file for reading alone and passes on what it has to tell.
    pub(crate) fn reading(&self) -> Result<Reading, Exit> {
        let opened = Reading::open(&self.file, &self.around.folders.settings);
        let reading = opened.map_err(|fault| self.exit_for_file(&fault))?;
        self.tell(reading.notes());
        Ok(reading)
    }

    /// Passes on what the file has to tell that was not yet passed on.
    pub(crate) fn tell_notes(&self, desk: &Desk) {
        let told = self.notes_told.replace(desk.notes().len());
        self.tell(desk.notes().get(told..).unwrap_or_default());
    }

    /// A person is told beside the answer, a program in it.
    fn tell(&self, notes: &[Note]) {
        for text in notes.iter().filter_map(|note| self.wording.journal_note(note)) {
            self.note(&text);
            self.notes_of_answer.borrow_mut().push(text);
        }
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
/// Holds what is gone, as the person was told of it who wrote anyway.
const GONE_SAID_FILE: &str = "gone.txt";

/// A clock that cannot be right, today before the newest entry or more than a year past it, is asked about once at a
/// terminal and noted otherwise. Without a terminal nothing is written by it unless that is said to be right.
fn ask_of_clock(run: &Run, desk: &Desk, writes: bool) -> Result<(), Exit> {
    let today = run.now.today;
    let desk_fault = |fault| run.desk_fault(fault);
    let Newest { of_days, recorded } = desk.newest().map_err(desk_fault)?;
    // Where a clock once ran ahead and that was taken back, every later entry was recorded no earlier than that.
    let mended = desk.took_back_what_was_to_come().map_err(desk_fault)?;
    let newest_moment = recorded.filter(|_| !mended);
    let Some((entry, newest)) = of_days else { return Ok(()) };
    let before =
        today < newest || newest_moment.is_some_and(|moment| run.now.moment < moment && today < moment.day(-14.0));
    let doubt = if today < newest {
        run.wording.clock_behind(run.wording.day(today), run.wording.day(newest), entry)
    } else if before {
        run.wording.clock_behind_writing(run.wording.day(today))
    } else if today.days_since(newest) > LONG_SILENCE_DAYS {
        run.wording.clock_ahead(run.wording.day(today), run.wording.day(newest))
    } else {
        return Ok(());
    };
    run.note(&doubt);
    let said = Said { run, file: SAID_FILE, text: today.to_string() };
    // A day that was given with the command is what a person says.
    if said.already() || (!run.can_ask() && (!writes || run.around.today.is_some())) {
        return Ok(());
    }
    if !run.can_ask() {
        return Err(Exit::refused(run.wording.clock_say_yes()));
    }
    if !said_yes(&run.wording.clock_asks()) {
        return Err(Exit::refused(run.wording.clock_set_it()));
    }
    said.keep();
    Ok(())
}

/// Entries that were saved here and are gone are asked about once before anything is written over it.
fn ask_of_what_is_gone(run: &Run, desk: &Desk) -> Result<(), Exit> {
    if desk.gone() == 0 || !run.can_ask() {
        return Ok(());
    }
    let gone = desk.notes().iter().filter_map(|note| run.wording.journal_note(note)).collect::<Vec<_>>().join("\n");
    let said = Said { run, file: GONE_SAID_FILE, text: gone };
    if said.already() {
        return Ok(());
    }
    if !said_yes(&run.wording.gone_asks()) {
        return Err(Exit::refused(run.wording.gone_not_written()));
    }
    said.keep();
    Ok(())
}

/// What a person has said is right, kept in the folder of the settings so that it is asked once.
struct Said<'r> {
    run: &'r Run,
    file: &'static str,
    text: String,
}

impl Said<'_> {
    fn already(&self) -> bool {
        let kept = std::fs::read_to_string(self.run.around.folders.settings.join(self.file));
        self.run.everywhere.yes || kept.is_ok_and(|kept| kept.trim() == self.text.trim())
    }

    fn keep(&self) {
        // Where it cannot be noted, it is asked again next time.
        let _ = std::fs::create_dir_all(&self.run.around.folders.settings);
        let _ = std::fs::write(self.run.around.folders.settings.join(self.file), &self.text);
    }
}
