//! One run of the command line: surroundings in, answers out, one ending.

use std::ffi::OsString;
use std::path::PathBuf;

use super::answer::{Ending, note, say};
use super::args::{Cli, Command, Ready};
use super::surroundings::Surroundings;
use super::{begin, calc, exchange, proof, ready, sample, species, undo, walk, why, write};
use crate::base::Day;
use crate::base::text::in_ascii;
use crate::desk::{Desk, DeskError, JournalError, Now};
use crate::nursery::species::Catalogue;
use crate::reckon::forecast::Leads;
use crate::reckon::{Picture, View};
use crate::settings::Settings;
use crate::wording::{Lang, Wording};

/// What every command is handed.
pub struct Run {
    /// What was typed before or after the command.
    pub everywhere: super::args::Everywhere,
    /// The surroundings.
    pub around: Surroundings,
    /// The sentences of the person's language.
    pub wording: Wording,
    /// What the clock says.
    pub now: Now,
    /// The day looked at, where it is not today.
    pub on: Option<Day>,
    /// The day by whose end things had to be recorded.
    pub known: Option<Day>,
    /// The nursery's file.
    pub file: PathBuf,
    /// Who writes.
    pub who: String,
    /// What leads in forecasts.
    pub leads: Leads,
}

/// What a run came to.
pub enum Ran {
    /// It ended.
    Ended(Ending),
    /// The nursery is to be opened on the screen.
    Open(Box<ToOpen>),
}

/// A nursery to be opened on the screen.
pub struct ToOpen {
    /// Its desk.
    pub desk: Desk,
    /// The sentences.
    pub wording: Wording,
    /// Who writes.
    pub who: String,
    /// The surroundings, which also say what the clock says.
    pub around: Surroundings,
    /// The day to look at first, where it is not today.
    pub on: Option<Day>,
    /// What leads in forecasts.
    pub leads: Leads,
    /// Whether the round is wanted as numbered prompts.
    pub plain: bool,
}

/// Why a command ended without doing its work: the sentences were already made.
#[derive(Debug)]
pub struct Stopped {
    /// The ending.
    pub ending: Ending,
    /// What to tell the person.
    pub lines: Vec<String>,
}

impl Stopped {
    /// Refused with one sentence.
    pub fn refused(line: String) -> Stopped {
        Stopped { ending: Ending::Refused, lines: vec![line] }
    }
}

/// Runs what was typed and says how it ended.
pub fn run(arguments: Vec<OsString>, around: Surroundings) -> Ran {
    let settings = Settings::read(&around.folders);
    let set_lang = settings.as_ref().ok().and_then(|settings| settings.lang.clone());
    let wording = Wording::new(language(&arguments, set_lang.as_deref(), around.lang.as_deref()));
    let cli = match Cli::read(arguments, &wording) {
        Ok(cli) => cli,
        Err(fault) => {
            // Help and version are answers; the rest is a fault of usage.
            return Ran::Ended(super::args::usage::answer(&fault, &wording));
        }
    };
    let settings = match settings {
        Ok(settings) => settings,
        Err(fault) => {
            note(&wording.settings_unreadable(fault));
            return Ran::Ended(Ending::File);
        }
    };
    let now = match around.now() {
        Ok(now) => now,
        Err(written) => {
            note(&wording.today_unreadable(written));
            return Ran::Ended(Ending::Usage);
        }
    };
    let run = match prepare(cli.everywhere, around, wording, &settings, now) {
        Ok(run) => run,
        Err(told) => {
            told.lines.iter().for_each(|line| note(line));
            return Ran::Ended(told.ending);
        }
    };
    dispatch(&run, cli.command).unwrap_or_else(|stopped| Ran::Ended(run.tell(&stopped)))
}

fn prepare(
    everywhere: super::args::Everywhere,
    around: Surroundings,
    wording: Wording,
    settings: &Settings,
    now: Now,
) -> Result<Run, Stopped> {
    let asked = |written: &Option<String>, option: &str| {
        written.as_ref().map(|written| day_asked(written, option, now.today, &wording)).transpose()
    };
    let (on, known) = (asked(&everywhere.on, "--on")?, asked(&everywhere.known, "--known")?);
    let named = everywhere.nursery.clone().or_else(|| around.nursery.clone());
    let file = settings.nursery(named.as_deref(), &around.folders);
    let who = everywhere.who.clone().or_else(|| settings.who.clone()).or_else(|| around.user.clone());
    let who = who.map(|who| crate::base::text::cleaned(&who).trim().to_string()).filter(|who| !who.is_empty());
    let who = who.unwrap_or_else(|| "someone".to_string());
    let leads = if everywhere.handbook || settings.handbook { Leads::Handbook } else { Leads::Here };
    Ok(Run { everywhere, around, wording, now, on, known, file, who, leads })
}

/// The day of an option, as people say it: `2026-03-12`, `yesterday`, `ayer`, `+7`.
pub(super) fn day_asked(written: &str, option: &str, today: Day, wording: &Wording) -> Result<Day, Stopped> {
    crate::desk::day_asked(written, today).map_err(|_| Stopped {
        ending: Ending::Usage,
        lines: vec![wording.usage_not_a_day(written, option), wording.usage_more("outplant --help")],
    })
}

/// The language: said on the command line, else set, else the system's. Looked for before anything else is read, so that
/// even a fault of usage is answered in it.
fn language(arguments: &[OsString], set: Option<&str>, system: Option<&str>) -> Lang {
    let mut said = None;
    let mut words = arguments.iter().map(|word| word.to_string_lossy());
    while let Some(word) = words.next() {
        if word == "--lang" {
            said = words.next().map(|next| next.to_string());
        } else if let Some(value) = word.strip_prefix("--lang=") {
            said = Some(value.to_string());
        }
    }
    said.as_deref().or(set).or(system).map_or(Lang::En, Lang::read)
}

fn dispatch(run: &Run, command: Option<Command>) -> Result<Ran, Stopped> {
    let ended = match command {
        None if run.opens_on_the_screen() => return Ok(run.to_open(run.desk()?)),
        None => ready::run(run, &Ready::default()),
        Some(Command::Ready(arguments)) => ready::run(run, &arguments),
        Some(Command::Walk) => walk::run(run),
        Some(Command::Sample(arguments)) if arguments.into.is_none() && run.opens_on_the_screen() => {
            return Ok(run.to_open(sample::opened(run)?));
        }
        Some(Command::Sample(arguments)) => sample::run(run, &arguments),
        Some(Command::Begin(arguments)) => begin::run(run, &arguments),
        Some(Command::Why(arguments)) => why::run(run, &arguments),
        Some(Command::Write(arguments)) => write::run(run, &arguments),
        Some(Command::Undo(arguments)) => undo::run(run, &arguments),
        Some(Command::Import(arguments)) => exchange::import(run, &arguments),
        Some(Command::Export(arguments)) => exchange::export(run, &arguments),
        Some(Command::Check) => proof::check(run),
        Some(Command::Rescue(arguments)) => proof::rescue(run, &arguments),
        Some(Command::Backup(arguments)) => proof::backup(run, &arguments),
        Some(Command::Species(arguments)) => species::run(run, &arguments),
        Some(Command::Calc(arguments)) => calc::run(run, &arguments),
    };
    ended.map(Ran::Ended)
}

impl Run {
    /// Opens the nursery and passes on what the file has to tell.
    pub fn desk(&self) -> Result<Desk, Stopped> {
        let desk = Desk::open(&self.file, &self.around.folders.settings, self.now).map_err(|fault| match fault {
            DeskError::Journal(JournalError::NotThere(_)) if self.is_own_nursery() => {
                Stopped::refused(self.wording.refused_no_nursery())
            }
            fault => self.stopped(&fault, &Catalogue::built_in()),
        })?;
        for said in desk.notes().iter().filter_map(|note| self.wording.journal_note(note)) {
            note(&said);
        }
        super::clock::ask(self, &desk)?;
        Ok(desk)
    }

    /// Whether a person sits at a terminal and asked for nothing that a program reads.
    fn opens_on_the_screen(&self) -> bool {
        let asked_plain = self.everywhere.plain && !self.everywhere.json;
        asked_plain || (self.around.can_ask && !self.everywhere.json && self.known.is_none())
    }

    /// Hands the nursery over to the screen; as prompts where that was asked for or the terminal can do no more.
    fn to_open(&self, desk: Desk) -> Ran {
        Ran::Open(Box::new(ToOpen {
            desk,
            wording: Wording::new(self.wording.lang()),
            who: self.who.clone(),
            around: self.around.clone(),
            on: self.on,
            leads: self.leads,
            plain: self.everywhere.plain || self.around.prompts_only,
        }))
    }

    /// Whether the nursery is the one in the data folder that nobody named.
    fn is_own_nursery(&self) -> bool {
        self.file == self.around.folders.own_nursery()
    }

    /// The Picture of the day and moment asked for.
    pub fn picture(&self, desk: &Desk) -> Result<Picture, Stopped> {
        desk.picture_of(self.view(desk)).map_err(|fault| self.desk_fault(fault))
    }

    /// The same with what is called like this in it, though it is archived.
    pub fn picture_with(&self, desk: &mut Desk, called: &[&str]) -> Result<Picture, Stopped> {
        desk.picture_with(called, self.view(desk)).map_err(|fault| self.desk_fault(fault))
    }

    fn view(&self, desk: &Desk) -> View {
        let known = self.known.map(|known| desk.end_of(known));
        View { day: self.on.unwrap_or(self.now.today), known }
    }

    /// Looking back or ahead is for looking: nothing is written with `--on` or `--known`.
    pub fn only_today(&self) -> Result<(), Stopped> {
        if self.on.is_some() || self.known.is_some() {
            return Err(Stopped::refused(self.wording.refused_while_looking()));
        }
        Ok(())
    }

    /// An answer to the person; a terminal that has no more than ASCII is given no more.
    pub fn answer(&self, text: &str) -> Result<Ending, Stopped> {
        if self.around.ascii && self.around.out_is_terminal { self.put(&in_ascii(text)) } else { self.put(text) }
    }

    fn put(&self, text: &str) -> Result<Ending, Stopped> {
        if say(text) { Ok(Ending::Done) } else { Err(Stopped { ending: Ending::File, lines: Vec::new() }) }
    }

    /// An answer to a program: one object.
    pub fn answer_json(&self, value: &serde_json::Value) -> Result<Ending, Stopped> {
        self.put(&format!("{value}\n"))
    }

    /// Trouble with the file while something was looked up.
    pub fn desk_fault(&self, fault: DeskError) -> Stopped {
        self.stopped(&fault, &Catalogue::built_in())
    }

    /// What a desk's refusal, or trouble with the file, means for the person.
    pub fn stopped(&self, fault: &DeskError, species: &Catalogue) -> Stopped {
        let ending = match fault {
            DeskError::Refused(_) => Ending::Refused,
            DeskError::Journal(fault) => ending_of(fault),
        };
        let mut lines = self.wording.desk_error(fault, &self.file.display().to_string(), species);
        if ending == Ending::Refused {
            lines.push(self.wording.nothing_written());
        }
        Stopped { ending, lines }
    }

    /// Trouble with the file.
    pub fn stopped_by_file(&self, fault: &JournalError) -> Stopped {
        let line = self.wording.journal_error(fault, &self.file.display().to_string());
        Stopped { ending: ending_of(fault), lines: vec![line] }
    }

    fn tell(&self, stopped: &Stopped) -> Ending {
        let lines: Vec<String> = stopped.lines.iter().map(|line| shortened(line)).collect();
        if self.everywhere.json && !lines.is_empty() {
            let ending = stopped.ending as i32;
            note(&serde_json::json!({"version":1,"exit":ending,"refused":lines}).to_string());
        } else {
            let plain = self.around.ascii && self.around.can_ask;
            lines.iter().for_each(|line| if plain { note(&in_ascii(line)) } else { note(line) });
        }
        stopped.ending
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
fn ending_of(fault: &JournalError) -> Ending {
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
        JournalError::Damaged { .. } => Ending::Damaged,
        JournalError::NotOurs(_)
        | JournalError::ForeignLog(_)
        | JournalError::Newer { .. }
        | JournalError::Full
        | JournalError::ReadOnly
        | JournalError::Io { .. }
        | JournalError::Sqlite(_) => Ending::File,
    }
}
