//! One run of the command line: surroundings in, answers out, one ending.

use std::cell::{Cell, RefCell};
use std::io;
use std::path::{Path, PathBuf};
use std::time::Instant;

use super::answer::{AnswerOut, Ending, note, object_to, refuse, say, say_bytes, say_object};
use super::args::Format;
use super::machine::surroundings::Surroundings;
use crate::base::text::in_ascii;
use crate::base::{Day, Moment};
use crate::desk::{Desk, DeskError, JournalError, Now, Reason, write_table};
use crate::nursery::species::Catalogue;
use crate::reckon::forecast::ForecastBasis;
use crate::reckon::{Picture, View};
use crate::settings::Settings;
use crate::wording::Wording;

/// What every command is handed.
pub(crate) struct Run {
    /// What was typed before or after the command.
    pub(crate) everywhere: super::args::Everywhere,
    /// In what form a list is answered.
    pub(crate) form: super::args::InForm,
    /// The surroundings.
    pub(crate) around: Surroundings,
    /// The sentences of the person's language.
    pub(crate) wording: Wording,
    /// What the clock says.
    pub(crate) now: Now,
    /// The day looked at, where it is not today.
    pub(crate) on: Option<Day>,
    /// The day by whose end things had to be recorded.
    pub(crate) known: Option<Day>,
    /// What is set.
    pub(crate) settings: Settings,
    /// The nursery's file.
    pub(crate) file: PathBuf,
    /// Who writes.
    pub(crate) who: String,
    /// What leads in forecasts.
    pub(crate) forecast_basis: ForecastBasis,
    /// Whether answers keep to ASCII: asked for, or the terminal can show no more.
    pub(crate) ascii: bool,
    /// How many notes of the file were passed on.
    pub(crate) notes_told: Cell<usize>,
    /// What a program is told in its answer.
    pub(crate) notes_of_answer: RefCell<Vec<String>>,
    /// When it was begun.
    pub(crate) begun: Instant,
}

/// Why a command ended without doing its work: the sentences were already made.
#[derive(Debug)]
pub(crate) struct Exit {
    /// The ending.
    pub(crate) ending: Ending,
    /// What to tell the person.
    pub(crate) lines: Vec<String>,
}

impl Exit {
    /// Refused with one sentence.
    pub(crate) fn refused(line: String) -> Exit {
        Exit { ending: Ending::Refused, lines: vec![line] }
    }
}

/// The day of an option, as people say it: `2026-03-12`, `yesterday`, `ayer`, `+7`.
pub(super) fn day_asked(written: &str, option: &str, today: Day, wording: &Wording) -> Result<Day, Exit> {
    crate::desk::day_asked(written, today).map_err(|reason| {
        let lines = if let Reason::WhichDay { first, second, .. } = reason {
            vec![wording.one_of_two_days(written, first, second)]
        } else {
            vec![wording.usage_not_a_day(written, option), wording.usage_more("outplant --help")]
        };
        Exit { ending: Ending::Usage, lines }
    })
}

impl Run {
    /// The Picture of the day and moment asked for.
    pub(crate) fn picture(&self, desk: &Desk) -> Result<Picture, Exit> {
        desk.picture_of(self.view(desk)).map_err(|fault| self.desk_fault(fault))
    }

    /// The Picture of a day from the day of this run on, by what had been written down by then: nothing is known before it was.
    pub(crate) fn picture_ahead(&self, desk: &Desk, day: Day) -> Result<Picture, Exit> {
        let view = self.view(desk);
        let known = view.known.or_else(|| (view.day < self.now.today).then(|| desk.end_of(view.day)));
        desk.picture_of(View { day, known }).map_err(|fault| self.desk_fault(fault))
    }

    /// The same with what is called like this in it, though it is archived.
    pub(crate) fn picture_with(&self, desk: &mut Desk, called: &[&str]) -> Result<Picture, Exit> {
        desk.picture_with(called, self.view(desk)).map_err(|fault| self.desk_fault(fault))
    }

    fn view(&self, desk: &Desk) -> View {
        let known = self.known_by(desk);
        View { day: self.on.unwrap_or(self.now.today), known }
    }

    /// The moment up to which is known what `--known` asks for. Of a day that has not ended, all that is written by now: the day
    /// of the machine's clock may not be the nursery's.
    pub(crate) fn known_by(&self, desk: &Desk) -> Option<Moment> {
        let known = self.known?;
        let end = desk.end_of(known);
        Some(if known >= self.now.today { end.max(self.now.moment) } else { end })
    }

    /// Looking back or ahead is for looking: nothing is written with `--on` or `--known`.
    pub(crate) fn only_today(&self) -> Result<(), Exit> {
        if self.on.is_some() || self.known.is_some() {
            return Err(Exit::refused(self.wording.refused_while_looking()));
        }
        Ok(())
    }

    /// An answer to the person.
    pub(crate) fn answer(&self, text: &str) -> Result<Ending, Exit> {
        if self.ascii { self.put(&in_ascii(text)) } else { self.put(text) }
    }

    /// A file of another format on the screen, letter by letter.
    pub(crate) fn answer_as_is(&self, text: &str) -> Result<Ending, Exit> {
        self.put(text)
    }

    fn put(&self, text: &str) -> Result<Ending, Exit> {
        self.ended(say(text))
    }

    /// An answer to a program: one object, with what the file has to tell.
    pub(crate) fn answer_json(&self, value: &serde_json::Value) -> Result<Ending, Exit> {
        let mut value = value.clone();
        let notes = self.notes_of_answer.take();
        if let Some(object) = value.as_object_mut().filter(|_| !notes.is_empty()) {
            object.insert("notes".to_string(), notes.into());
        }
        match self.parted_by() {
            Some(parted_by) => self.answer_table(&value, parted_by),
            None => self.put(&format!("{value}\n")),
        }
    }

    /// An answer to a program, written while it is reckoned.
    pub(crate) fn answer_object(
        &self,
        write: impl FnOnce(&mut AnswerOut<'_>) -> io::Result<()>,
    ) -> Result<Ending, Exit> {
        let notes = self.notes_of_answer.take();
        let whole = |out: &mut AnswerOut<'_>| {
            write(out)?;
            if notes.is_empty() { Ok(()) } else { out.field("notes", notes) }
        };
        let Some(parted_by) = self.parted_by() else { return self.ended(say_object(whole)) };
        let mut text = Vec::new();
        let written = object_to(&mut text, whole).and_then(|()| serde_json::from_slice(&text).map_err(io::Error::from));
        match written {
            Ok(value) => self.answer_table(&value, parted_by),
            Err(_) => self.ended(false),
        }
    }

    /// What parts the cells of a table for other programs; none where no table is asked for.
    fn parted_by(&self) -> Option<char> {
        match self.form.format? {
            Format::Csv => Some(','),
            Format::Tsv => Some('\t'),
            Format::Table | Format::Json => None,
        }
    }

    /// One list of an answer as a table: the one asked for, else the one that the command is for.
    fn answer_table(&self, answer: &serde_json::Value, parted_by: char) -> Result<Ending, Exit> {
        /// Of the lists of answers those that their command is for.
        const LEADING: [&str; 4] = ["changes", "pairs", "stops", "entries"];
        let is_list = |name: &&String| answer[name.as_str()].is_array() && name.as_str() != "notes";
        let lists: Vec<&String> =
            answer.as_object().into_iter().flat_map(|object| object.keys()).filter(is_list).collect();
        let leading = || LEADING.iter().find_map(|name| lists.iter().find(|list| list.as_str() == *name));
        let list = match &self.form.list {
            Some(asked) => lists.iter().find(|list| list.as_str() == asked),
            None => leading().or(lists.first()),
        };
        let Some(items) = list.and_then(|list| answer[list.as_str()].as_array()) else {
            let lists: Vec<&str> = lists.iter().map(|list| list.as_str()).collect();
            let asked = self.form.list.as_deref().unwrap_or_default();
            let line = self.wording.usage_one_of(asked, "--list", lists.join(", "));
            return Err(Exit { ending: Ending::Usage, lines: vec![line] });
        };
        let mut text = Vec::new();
        let written = write_table(items, parted_by, &mut text).is_ok();
        self.ended(written && say_bytes(&text))
    }

    /// How an answer that was said, or could not be, ends a run: what was written stays written.
    fn ended(&self, said: bool) -> Result<Ending, Exit> {
        if said {
            Ok(Ending::Done)
        } else {
            Err(Exit { ending: Ending::File, lines: vec![self.wording.answer_not_shown()] })
        }
    }

    /// Trouble with the file while something was looked up.
    pub(crate) fn desk_fault(&self, fault: DeskError) -> Exit {
        self.exit_for(&fault, &Catalogue::built_in())
    }

    /// What a desk's refusal, or trouble with the file, means for the person.
    pub(crate) fn exit_for(&self, fault: &DeskError, species: &Catalogue) -> Exit {
        let ending = match fault {
            DeskError::Refused(_) => Ending::Refused,
            DeskError::Journal(fault) => ending_of(fault),
        };
        let mut lines = self.wording.desk_error(fault, &self.file.display().to_string(), species);
        if matches!(fault, DeskError::Refused(_)) {
            lines.push(self.wording.nothing_written());
        }
        Exit { ending, lines }
    }

    /// Trouble with the file.
    pub(crate) fn exit_for_file(&self, fault: &JournalError) -> Exit {
        let line = self.wording.journal_error(fault, &self.file.display().to_string());
        Exit { ending: ending_of(fault), lines: vec![line] }
    }

    /// Tells the person why a command stopped.
    pub(crate) fn tell_exit(&self, exit: &Exit) -> Ending {
        let lines: Vec<String> = exit.lines.iter().map(|line| shortened(line)).collect();
        let json = self.everywhere.json;
        let plain = !json && self.around.ascii && self.around.can_ask;
        let lines = if plain { lines.iter().map(|line| in_ascii(line)).collect() } else { lines };
        refuse(exit.ending, &lines, json);
        exit.ending
    }

    /// Refuses `-` as the name of what is made: elsewhere it stands for what is piped, and this goes into a file or a folder.
    pub(crate) fn made_in_a_file(&self, to: &Path) -> Result<(), Exit> {
        if to.as_os_str() == "-" { Err(Exit::refused(self.wording.refused_no_pipe())) } else { Ok(()) }
    }

    /// Whether the person can be asked.
    pub(crate) fn can_ask(&self) -> bool {
        self.around.can_ask && !self.everywhere.json
    }

    /// Says how the work is done, where that is asked for.
    pub(crate) fn tell_how(&self, sentence: impl Fn(&Wording) -> String) {
        if self.everywhere.verbose {
            self.note(&sentence(&self.wording));
        }
    }

    /// How long it took so far: "12 ms".
    pub(crate) fn so_long(&self) -> String {
        format!("{} ms", self.begun.elapsed().as_millis())
    }

    /// A note beside an answer, for a person; a program is told by the answer alone.
    pub(crate) fn note(&self, text: &str) {
        if !self.everywhere.json {
            note(text);
        }
    }
}

/// A sentence that quotes what a file or a person wrote, however long that was.
fn shortened(line: &str) -> String {
    /// Letters that are shown: more than any sentence of ours, a few screens of somebody else's (ours).
    const MOST_LETTERS: usize = 2000;
    match line.char_indices().nth(MOST_LETTERS) {
        Some((cut, _)) => format!("{} …", &line[..cut]),
        None => line.to_string(),
    }
}

/// How trouble with the file ends a run: what a person can mend by naming another file or line is a refusal.
pub(super) fn ending_of(fault: &JournalError) -> Ending {
    match fault {
        JournalError::NotThere(_)
        | JournalError::NoFolder(_)
        | JournalError::AlreadyThere(_)
        | JournalError::Fork { .. }
        | JournalError::Gap { .. }
        | JournalError::WrongHash { .. }
        | JournalError::WrongPrevious { .. } => Ending::Refused,
        JournalError::Busy => Ending::Busy,
        JournalError::Cancelled => Ending::Interrupted,
        JournalError::Damaged { .. } | JournalError::ChangedSchema(_) | JournalError::NotWritten(_) => Ending::Damaged,
        JournalError::NotOurs(_)
        | JournalError::ForeignLog(_)
        | JournalError::TakenAway(_)
        | JournalError::Newer { .. }
        | JournalError::Full
        | JournalError::ReadOnly
        | JournalError::Io { .. }
        | JournalError::Sqlite(_) => Ending::File,
    }
}
