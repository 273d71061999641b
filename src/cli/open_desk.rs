//! Opening the nursery for a command: what its file has to tell, and whether the clock can be right.

use std::path::PathBuf;
use std::sync::Arc;

use super::answer::said_yes;
use super::run::{Exit, Run};
use crate::base::{Day, EntryId};
use crate::desk::{Desk, DeskError, JournalError, Note, OthersCan, Reading, others_can};
use crate::nursery::entry::Entry;
use crate::nursery::species::Catalogue;

impl Run {
    /// Opens the nursery and passes on what the file has to tell.
    pub(crate) fn desk(&self) -> Result<Desk, Exit> {
        let desk = self.open_desk()?;
        self.tell_notes(&desk);
        ask_of_clock(self, &desk, What::Reads)?;
        Ok(desk)
    }

    fn open_desk(&self) -> Result<Desk, Exit> {
        self.tell_how(|wording| wording.how_opens(self.file.display()));
        let desk = self.open_book()?;
        self.tell_of_others();
        self.tell_how(|wording| wording.how_opened(desk.count() as i64, self.so_long()));
        Ok(desk)
    }

    fn open_book(&self) -> Result<Desk, Exit> {
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
        ask_of_clock(self, &desk, What::Writes)?;
        ask_of_what_is_gone(self, &desk)?;
        Ok(desk)
    }

    /// The same for what sets right what a wrong clock wrote: that is said, and nothing is asked.
    pub(crate) fn desk_to_undo(&self) -> Result<Desk, Exit> {
        let desk = self.open_desk()?;
        self.tell_notes(&desk);
        ask_of_clock(self, &desk, What::Mends)?;
        ask_of_what_is_gone(self, &desk)?;
        Ok(desk)
    }

    /// The same for an entry that settles such a thing, or that entries are gone.
    pub(crate) fn desk_to_settle(&self) -> Result<Desk, Exit> {
        let desk = self.open_desk()?;
        self.tell_notes(&desk);
        ask_of_clock(self, &desk, What::Mends)?;
        Ok(desk)
    }

    /// Opens the file for reading alone and passes on what it has to tell.
    pub(crate) fn reading(&self) -> Result<Reading, Exit> {
        self.tell_how(|wording| wording.how_opens(self.file.display()));
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
        for text in self.wording.journal_notes(notes) {
            self.note(&text);
            self.notes_of_answer.borrow_mut().push(text);
        }
    }

    /// Says that other people of the machine can read the file, or write to it: to a person once, and again where it was not
    /// so in between; to a program in each answer.
    fn tell_of_others(&self) {
        let said = SaidOfFiles::read(self);
        let Some(text) = others_in_words(self) else { return said.take_out() };
        if self.everywhere.json {
            self.notes_of_answer.borrow_mut().push(text);
        } else if said.put(&text) {
            self.note(&text);
        }
    }

    /// Whether the nursery is the one in the data folder that nobody named.
    fn is_own_nursery(&self) -> bool {
        self.file == self.around.folders.own_nursery()
    }
}

/// Days past the newest entry after which the clock is asked about.
const LONG_SILENCE_DAYS: i32 = 366;
/// Days after the program was built past which a nursery is begun only when that is said to be right: some ten years (ours).
const LONG_UNCHANGED_DAYS: i32 = 3653;
/// The most commands that wrote entries of days still to come that are named one by one. Of more it is rather the clock that
/// is behind (ours).
const MOST_NAMED: usize = 5;
/// Holds the day that a person has said is right, in the folder of the settings.
const SAID_FILE: &str = "clock.txt";
/// Holds what is gone, as the person was told of it who wrote anyway.
const GONE_SAID_FILE: &str = "gone.txt";
/// Holds of which files it was said that others can read or write them.
const OTHERS_SAID_FILE: &str = "others.txt";

/// What a command does to the book.
#[derive(Clone, Copy, PartialEq, Eq)]
enum What {
    Reads,
    Writes,
    /// It takes back, or settles, what a clock that ran ahead has written.
    Mends,
}

/// A clock that cannot be right, today before the newest entry or more than a year past it, is asked about once at a
/// terminal and noted otherwise. Without a terminal nothing is written by it unless that is said to be right.
fn ask_of_clock(run: &Run, desk: &Desk, what: What) -> Result<(), Exit> {
    let desk_fault = |fault| run.desk_fault(fault);
    let today = run.now.today;
    let Some((entry, newest)) = desk.newest_of_days().map_err(desk_fault)? else { return Ok(()) };
    if let Some(doubt) = clock_behind(run, desk, (entry, newest)).map_err(desk_fault)? {
        run.note(&doubt);
        return if what == What::Mends { Ok(()) } else { agreed_on_clock(run, what != What::Reads) };
    }
    if today.days_since(newest) <= LONG_SILENCE_DAYS {
        return Ok(());
    }
    run.note(&run.wording.clock_ahead(run.wording.day(today), run.wording.day(newest)));
    agreed_on_clock(run, what != What::Reads)
}

/// What is said where the clock stands before what was written already, and how that is mended.
fn clock_behind(run: &Run, desk: &Desk, newest: (EntryId, Day)) -> Result<Option<String>, DeskError> {
    let (wording, today, (entry, newest)) = (&run.wording, run.now.today, newest);
    if today < newest {
        let coming = desk.still_to_come()?;
        let undo = undo_of_each(&coming);
        return Ok(Some(if (2..=MOST_NAMED).contains(&undo.len()) {
            let list = undo.join("; ");
            wording.clock_behind_several(wording.day(today), coming.len() as i64, wording.day(newest), list)
        } else {
            wording.clock_behind(wording.day(today), wording.day(newest), entry)
        }));
    }
    // Where a clock once ran ahead and that was taken back, every later entry was recorded no earlier than that.
    let recorded = desk.last_recorded()?.filter(|moment| run.now.moment < *moment && today < moment.day(-14.0));
    if recorded.is_none() || desk.took_back_what_was_to_come()? {
        return Ok(None);
    }
    Ok(Some(wording.clock_behind_writing(wording.day(today))))
}

/// The commands that take entries back, the latest first; what came in together goes together.
fn undo_of_each(entries: &[Arc<Entry>]) -> Vec<String> {
    let together = entries.chunk_by(|one, next| one.id.device == next.id.device && one.command == next.command);
    let undo = together.rev().filter_map(|command| {
        let all = if command.len() > 1 { " --all" } else { "" };
        command.first().map(|entry| format!("outplant undo {}{all}", entry.id))
    });
    undo.collect()
}

/// Before a nursery is begun no entry tells whether the clock can be right; the day on which the program was built does.
pub(super) fn ask_of_first_day(run: &Run) -> Result<(), Exit> {
    let (wording, today) = (&run.wording, run.now.today);
    let doubt = match first_day_in_doubt(today, built_on()) {
        None => return Ok(()),
        Some(Side::Before) => wording.clock_before_built(wording.day(today), wording.day(built_on())),
        Some(Side::LongAfter) => wording.clock_long_after_built(wording.day(today), wording.day(built_on())),
    };
    if run.around.today.is_some() {
        return Ok(());
    }
    run.note(&doubt);
    agreed_on_clock(run, true)
}

#[derive(Clone, Copy, PartialEq, Eq, Debug)]
enum Side {
    Before,
    LongAfter,
}

/// On which side of the day it was built the clock is so far off that it can hardly be right. A day either way is a matter
/// of where on earth it was built.
fn first_day_in_doubt(today: Day, built: Day) -> Option<Side> {
    if today < built.plus(-1) {
        Some(Side::Before)
    } else {
        (today.days_since(built) > LONG_UNCHANGED_DAYS).then_some(Side::LongAfter)
    }
}

/// The day on which the program was built, in the world's time.
fn built_on() -> Day {
    /// Days from the first day that is counted to 1 January 1970.
    const OF_1970: i32 = 719_163;
    let days: i32 = env!("OUTPLANT_BUILT_DAYS").parse().unwrap_or(0);
    Day::from_number(OF_1970 + days)
}

/// Asks whether the clock is right, once a day; without a terminal what writes needs it said.
fn agreed_on_clock(run: &Run, writes: bool) -> Result<(), Exit> {
    let said = Said { run, file: SAID_FILE, text: run.now.today.to_string() };
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
    let gone = run.wording.journal_notes(desk.notes()).join("\n");
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

/// That other people of the machine can read the file, or write to it, and what helps.
pub(super) fn others_in_words(run: &Run) -> Option<String> {
    let file = run.file.display();
    Some(match others_can(&run.file)? {
        OthersCan::Read => run.wording.others_read(file),
        OthersCan::Write => run.wording.others_write(file),
    })
}

/// Of which files it was said that others can read or write them, kept in the folder of the settings: the file and the
/// sentence, a line each.
struct SaidOfFiles {
    at: PathBuf,
    file: String,
    lines: Vec<(String, String)>,
}

impl SaidOfFiles {
    fn read(run: &Run) -> SaidOfFiles {
        let at = run.around.folders.settings.join(OTHERS_SAID_FILE);
        let text = std::fs::read_to_string(&at).unwrap_or_default();
        let lines = text.lines().filter_map(|line| line.split_once('\t'));
        let lines = lines.map(|(file, said)| (file.to_string(), said.to_string())).collect();
        // As it is written in a program: no name breaks the line.
        let file = format!("{:?}", run.file.canonicalize().unwrap_or_else(|_| run.file.clone()));
        SaidOfFiles { at, file, lines }
    }

    /// Keeps what is said of the file now; false where just that was said before.
    fn put(mut self, text: &str) -> bool {
        let said = (self.file.clone(), format!("{text:?}"));
        if self.lines.contains(&said) {
            return false;
        }
        self.lines.retain(|(file, _)| *file != self.file);
        self.lines.push(said);
        self.keep();
        true
    }

    fn take_out(mut self) {
        if self.lines.iter().any(|(file, _)| *file == self.file) {
            self.lines.retain(|(file, _)| *file != self.file);
            self.keep();
        }
    }

    fn keep(&self) {
        let text: String = self.lines.iter().map(|(file, said)| format!("{file}\t{said}\n")).collect();
        // Where it cannot be noted, it is said again next time.
        let _ = self.at.parent().map(std::fs::create_dir_all);
        let _ = std::fs::write(&self.at, text);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn before_the_program_was_built_or_ten_years_after_the_first_day_is_in_doubt() {
        let day = |text: &str| text.parse::<Day>().unwrap();
        let built = day("2026-11-30");
        for (today, doubt) in [
            ("1970-01-01", Some(Side::Before)),
            ("2026-11-28", Some(Side::Before)),
            ("2026-11-29", None),
            ("2026-11-30", None),
            ("2036-11-20", None),
            ("2040-03-01", Some(Side::LongAfter)),
        ] {
            assert_eq!(first_day_in_doubt(day(today), built), doubt, "{today}");
        }
        assert!(built_on() > day("2026-01-01"), "{}", built_on());
    }
}
