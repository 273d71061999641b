//! From what was typed to the command that answers it, and how the run ended.

use std::cell::{Cell, RefCell};
use std::ffi::OsString;
use std::time::Instant;

use super::answer::{Ending, refuse};
use super::args::{Cli, Command, Everywhere, InForm, Ready};
use super::json::schema::schema_of;
use super::machine::surroundings::Surroundings;
use super::machine::{outlive_full_files, paths, settings_faults, shells};
use super::run::{Exit, Run, day_asked};
use super::{begin, calc, exchange, log, matching, proof, ready, sample, species, undo, walk, why, write};
use crate::base::Day;
use crate::base::letters::Letters;
use crate::desk::{Desk, Now};
use crate::reckon::forecast::ForecastBasis;
use crate::settings::{ReadSettings, Settings, colour};
use crate::wording::entry::WHO_UNKNOWN;
use crate::wording::{Lang, Wording};

/// The longest name of a person who writes, letters: it stands in every entry. Ours.
const LONGEST_WHO: usize = 60;

/// What a run came to.
pub enum Outcome {
    /// It ended.
    Ended(Ending),
    /// The nursery is to be opened on the screen.
    Open(Box<OpenDashboard>),
}

/// A nursery to be opened on the screen.
pub struct OpenDashboard {
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
    pub forecast_basis: ForecastBasis,
    /// Whether the round is wanted as numbered prompts.
    pub plain: bool,
    /// What the settings hold that cannot be: the screen hides what was said of it before.
    pub settings_faults: Vec<String>,
}

/// Runs what was typed and says how it ended.
pub fn run(arguments: Vec<OsString>, around: Surroundings) -> Outcome {
    outlive_full_files();
    let read = ReadSettings::of(&around.folders);
    let lang = language(&arguments, read.settings.lang.as_deref(), around.lang.as_deref());
    let wording = Wording::with_letters(lang, read.settings.keys.clone());
    let json = is_for_a_program(&arguments);
    let stop = |ending: Ending, lines: &[String]| {
        refuse(ending, lines, json);
        Outcome::Ended(ending)
    };
    let cli = match Cli::read(arguments, &wording) {
        Ok(cli) => cli,
        Err(fault) => {
            // Help and version are answers; the rest is a fault of usage.
            return Outcome::Ended(super::args::usage::answer(&fault, &wording, json));
        }
    };
    let now = match around.now() {
        Ok(now) => now,
        Err(written) => {
            return stop(Ending::Usage, &[wording.today_unreadable(written)]);
        }
    };
    let faults = settings_faults::sentences(&read, &around.folders, &wording);
    let named = cli.everywhere.nursery.is_some() || around.nursery.is_some();
    if !faults.is_empty() && read.hides_the_nursery() && !named && opens_the_nursery(cli.command.as_ref()) {
        return stop(Ending::File, &[faults, vec![wording.settings_hide_nursery()]].concat());
    }
    let form = cli.command.as_ref().map(Command::form).unwrap_or_default();
    let everywhere = Everywhere { json, ..cli.everywhere };
    let run = match prepare(everywhere, form, around, wording, read.settings, now) {
        Ok(run) => run,
        Err(told) => {
            return stop(told.ending, &told.lines);
        }
    };
    faults.iter().for_each(|fault| run.note(fault));
    run.tell_how(|wording| wording.how_settings(run.around.folders.settings_file().display()));
    let mut outcome = dispatch(&run, cli.command).unwrap_or_else(|exit| Outcome::Ended(run.tell_exit(&exit)));
    if let Outcome::Open(open) = &mut outcome {
        open.settings_faults = faults;
    }
    if let Outcome::Ended(ending) = &outcome {
        run.tell_how(|wording| wording.how_ended(*ending as i32, run.so_long()));
    }
    outcome
}

/// Whether a program asks. Looked for before anything else is read, so that it is told of a fault of usage as of any other.
fn is_for_a_program(arguments: &[OsString]) -> bool {
    let mut before = "".as_ref();
    arguments.iter().take_while(|word| *word != "--").any(|word| {
        let form = word.to_str().and_then(|word| word.strip_prefix("--format="));
        let form = form.or_else(|| word.to_str().filter(|_| before == "--format"));
        before = word.as_os_str();
        word == "--json" || form.is_some_and(|form| ["json", "csv", "tsv"].contains(&form))
    })
}

fn prepare(
    everywhere: Everywhere,
    form: InForm,
    mut around: Surroundings,
    wording: Wording,
    settings: Settings,
    now: Now,
) -> Result<Run, Exit> {
    let asked = |written: &Option<String>, option: &str| {
        written.as_ref().map(|written| day_asked(written, option, now.today, &wording)).transpose()
    };
    let (on, known) = (asked(&everywhere.on, "--on")?, asked(&everywhere.known, "--known")?);
    let named = everywhere.nursery.clone().or_else(|| around.nursery.clone());
    let file = settings.nursery(named.as_deref(), &around.folders);
    let who = everywhere.who.clone().or_else(|| settings.who.clone()).or_else(|| around.user.clone());
    let who = who.map(|who| crate::base::text::cleaned(&who).trim().to_string()).filter(|who| !who.is_empty());
    if let Some(who) = who.as_ref().filter(|who| who.chars().count() > LONGEST_WHO) {
        let begins: String = who.chars().take(LONGEST_WHO).chain(['…']).collect();
        return Err(Exit { ending: Ending::Usage, lines: vec![wording.usage_long_name("--who", LONGEST_WHO, begins)] });
    }
    let who = who.unwrap_or_else(|| WHO_UNKNOWN[0].to_string());
    let forecast_basis =
        if everywhere.handbook || settings.handbook { ForecastBasis::Handbook } else { ForecastBasis::OwnRecords };
    let asked_colour = everywhere.color.as_deref().map_or(Some(settings.color), colour).flatten();
    around.colour = asked_colour.unwrap_or(around.colour);
    let asked_ascii = everywhere.ascii || settings.ascii;
    let ascii = asked_ascii || (around.ascii && around.out_is_terminal);
    around.ascii |= asked_ascii;
    let (notes_told, notes_of_answer, begun) = (Cell::default(), RefCell::default(), Instant::now());
    Ok(Run {
        everywhere,
        form,
        around,
        wording,
        now,
        on,
        known,
        settings,
        file,
        who,
        forecast_basis,
        ascii,
        notes_told,
        notes_of_answer,
        begun,
    })
}

/// Whether a command opens the nursery that is set where none is named.
fn opens_the_nursery(command: Option<&Command>) -> bool {
    match command {
        // A species that is added is written into it.
        Some(Command::Species(arguments)) if super::species::adds(arguments) => true,
        Some(
            Command::Sample(_)
            | Command::Species(_)
            | Command::Schema(_)
            | Command::Calc(_)
            | Command::Paths
            | Command::Completions(_)
            | Command::Man(_),
        ) => false,
        None
        | Some(
            Command::Begin(_)
            | Command::Ready(_)
            | Command::Walk(_)
            | Command::Match(_)
            | Command::Why(_)
            | Command::Write(_)
            | Command::Log(_)
            | Command::Undo(_)
            | Command::Import(_)
            | Command::Export(_)
            | Command::Check
            | Command::Rescue(_)
            | Command::Backup(_),
        ) => true,
    }
}

/// The language: said on the command line, else set, else the system's. Looked for before anything else is read, so that
/// even a fault of usage is answered in it.
fn language(arguments: &[OsString], set: Option<&str>, system: Option<&str>) -> Lang {
    let mut message = None;
    let mut words = arguments.iter().map(|word| word.to_string_lossy());
    while let Some(word) = words.next() {
        if word == "--lang" {
            message = words.next().map(|next| next.to_string());
        } else if let Some(value) = word.strip_prefix("--lang=") {
            message = Some(value.to_string());
        }
    }
    message.as_deref().or(set).or(system).map_or(Lang::En, Lang::read)
}

fn dispatch(run: &Run, command: Option<Command>) -> Result<Outcome, Exit> {
    let ended = match command {
        None if run.opens_the_dashboard() => return Ok(run.open_dashboard(run.desk()?)),
        None => ready::run(run, &Ready::default()),
        Some(Command::Ready(arguments)) => ready::run(run, &arguments),
        Some(Command::Walk(_)) => walk::run(run),
        Some(Command::Match(arguments)) => matching::run(run, &arguments),
        Some(Command::Sample(arguments)) if arguments.into.is_none() && run.opens_the_dashboard() => {
            return Ok(run.open_dashboard(sample::opened(run)?));
        }
        Some(Command::Sample(arguments)) => sample::run(run, &arguments),
        Some(Command::Begin(arguments)) => begin::run(run, &arguments),
        Some(Command::Why(arguments)) => why::run(run, &arguments),
        Some(Command::Write(arguments)) => write::run(run, &arguments),
        Some(Command::Log(arguments)) => log::run(run, &arguments),
        Some(Command::Undo(arguments)) => undo::run(run, &arguments),
        Some(Command::Import(arguments)) => exchange::import(run, &arguments),
        Some(Command::Export(arguments)) => exchange::export(run, &arguments),
        Some(Command::Check) => proof::check(run),
        Some(Command::Rescue(arguments)) => proof::rescue(run, &arguments),
        Some(Command::Backup(arguments)) => proof::backup(run, &arguments),
        Some(Command::Species(arguments)) => species::run(run, &arguments),
        Some(Command::Schema(arguments)) => run.answer(schema_of(&arguments.answer).unwrap_or_default()),
        Some(Command::Calc(arguments)) => calc::run(run, &arguments),
        Some(Command::Paths) => paths::run(run),
        Some(Command::Completions(arguments)) => shells::completions(run, &arguments),
        Some(Command::Man(arguments)) => shells::man(run, &arguments),
    };
    ended.map(Outcome::Ended)
}

impl Run {
    /// Whether a person sits at a terminal and asked for nothing that a program reads.
    fn opens_the_dashboard(&self) -> bool {
        let asked_plain = self.everywhere.plain && !self.everywhere.json;
        asked_plain || (self.around.can_ask && !self.everywhere.json && self.known.is_none())
    }

    /// Hands the nursery over to the screen; as prompts where that was asked for or the terminal can do no more.
    fn open_dashboard(&self, desk: Desk) -> Outcome {
        let plain = self.everywhere.plain || self.around.prompts_only;
        // Answers to prompts are typed text, where letters stand where they stood.
        let letters = if plain { Letters::default() } else { self.settings.keys.clone() };
        Outcome::Open(Box::new(OpenDashboard {
            desk,
            wording: Wording::with_letters(self.wording.lang(), letters),
            who: self.who.clone(),
            around: self.around.clone(),
            on: self.on,
            forecast_basis: self.forecast_basis,
            plain,
            settings_faults: Vec::new(),
        }))
    }
}
