//! The command line: commands and options in English, their help in the person's language.

use clap::{Args, CommandFactory, FromArgMatches, Parser, Subcommand, ValueEnum};
use std::ffi::OsString;
use std::path::PathBuf;

use super::columns::{left_aligned, width_of};
use crate::base::{BedName, Day, EntryId, TrayCode};
use crate::desk::{FORMS, FORMS_IN_SPANISH};
use crate::wording::{Lang, Wording};

/// What was typed.
#[derive(Parser, Debug)]
#[command(name = "outplant", version, disable_help_subcommand = true)]
pub struct Cli {
    /// Options that stand before or after any command.
    #[command(flatten)]
    pub everywhere: Everywhere,
    /// The command; none opens the nursery.
    #[command(subcommand)]
    pub command: Option<Command>,
}

/// Options that stand before or after any command.
#[derive(Args, Debug, Default)]
pub struct Everywhere {
    /// The nursery's file.
    #[arg(long, global = true, value_name = "FILE")]
    pub nursery: Option<PathBuf>,
    /// Another day, past or to come.
    #[arg(long, global = true, value_name = "DATE")]
    pub on: Option<Day>,
    /// Only what had been recorded by the end of this day.
    #[arg(long, global = true, value_name = "DATE")]
    pub known: Option<Day>,
    /// en or es.
    #[arg(long, global = true, value_name = "LANG", value_parser = ["en", "es"])]
    pub lang: Option<String>,
    /// For programs.
    #[arg(long, global = true)]
    pub json: bool,
    /// Who writes.
    #[arg(long, global = true, value_name = "NAME")]
    pub who: Option<String>,
}

/// The commands.
#[derive(Subcommand, Debug)]
pub enum Command {
    /// A copy of the sample nursery.
    Sample(Sample),
    /// An empty nursery.
    Begin(Begin),
    /// Which trays are ready for which bed.
    Ready(Ready),
    /// Today's round in walking order.
    Walk,
    /// Every criterion of a tray, a bed or a pair.
    #[command(subcommand)]
    Why(Why),
    /// One entry.
    Write(Write),
    /// Takes a command back.
    Undo(Undo),
    /// Entries from a file.
    Import(Import),
    /// Entries to a file or the screen.
    Export(Export),
    /// Proves the file.
    Check,
    /// A verified copy.
    Backup(Backup),
    /// Profiles with the source of each figure.
    Species(Species),
    /// One formula.
    Calc(super::calc::args::Calc),
}

/// `sample`
#[derive(Args, Debug)]
pub struct Sample {
    /// Only make this file.
    #[arg(long, value_name = "FILE")]
    pub into: Option<PathBuf>,
}

/// `begin`
#[derive(Args, Debug)]
#[command(allow_negative_numbers = true)]
pub struct Begin {
    /// Name of the nursery.
    #[arg(long)]
    pub name: String,
    /// Latitude, degrees, south negative.
    #[arg(long, value_name = "DEG")]
    pub lat: f64,
    /// Longitude, degrees, west negative.
    #[arg(long, value_name = "DEG")]
    pub lon: f64,
    /// Altitude, m.
    #[arg(long, value_name = "M")]
    pub altitude: f64,
    /// Hours ahead of UTC.
    #[arg(long, value_name = "H")]
    pub utc_offset: Option<f64>,
}

/// `ready`
#[derive(Args, Debug, Default)]
pub struct Ready {
    /// Only what changed since the end of this day.
    #[arg(long, value_name = "DATE")]
    pub since: Option<Day>,
}

/// `why`
#[derive(Subcommand, Debug)]
pub enum Why {
    /// A tray.
    Tray {
        /// Its code.
        tray: TrayCode,
    },
    /// A bed.
    Bed {
        /// Its name.
        bed: BedName,
        /// Only this species.
        #[arg(long)]
        species: Option<String>,
    },
    /// A tray and a bed.
    Pair {
        /// The tray.
        tray: TrayCode,
        /// The bed.
        bed: BedName,
        /// Also what to do about each thing that holds it back.
        #[arg(long)]
        how: bool,
    },
}

/// `write`
#[derive(Args, Debug)]
pub struct Write {
    /// The kind of entry; without one, all kinds are listed.
    pub kind: Option<String>,
    /// key=value, for each field.
    #[arg(value_name = "KEY=VALUE")]
    pub fields: Vec<String>,
    /// A sheet of short lines, whole or not at all; - reads what is piped in.
    #[arg(long, value_name = "FILE")]
    pub batch: Option<PathBuf>,
    /// The day it was seen or done.
    #[arg(long, value_name = "DATE")]
    pub happened: Option<Day>,
    /// Only say what would be written.
    #[arg(long)]
    pub dry_run: bool,
}

/// `undo`
#[derive(Args, Debug)]
pub struct Undo {
    /// The entry whose command is taken back; without one, the last command of this copy.
    pub entry: Option<EntryId>,
    /// Also take back the later entries that rest on it.
    #[arg(long)]
    pub together: bool,
    /// Why.
    #[arg(long, value_name = "TEXT")]
    pub why: Option<String>,
}

/// What an import reads.
#[derive(ValueEnum, Clone, Copy, Debug, PartialEq, Eq)]
pub enum ImportAs {
    /// Entries, one JSON object a line.
    Entries,
    /// A sheet of trays that stand, a row a tray.
    Trays,
    /// A sheet of beds, a row a bed.
    Beds,
}

/// `import`
#[derive(Args, Debug)]
pub struct Import {
    /// The file; - reads what is piped in.
    pub file: PathBuf,
    /// What it holds.
    #[arg(long = "as", value_enum, default_value = "entries")]
    pub what: ImportAs,
    /// Only show what would be written.
    #[arg(long)]
    pub dry_run: bool,
}

/// What an export writes.
#[derive(ValueEnum, Clone, Copy, Debug, PartialEq, Eq)]
pub enum ExportAs {
    /// Entries, one JSON object a line; `import` reads them back.
    Entries,
    /// A table for a spreadsheet.
    Csv,
}

/// `export`
#[derive(Args, Debug)]
pub struct Export {
    /// What to write.
    #[arg(long = "as", value_enum, default_value = "entries")]
    pub what: ExportAs,
    /// Where to; the screen without it.
    #[arg(long, value_name = "FILE")]
    pub to: Option<PathBuf>,
}

/// `backup`
#[derive(Args, Debug)]
pub struct Backup {
    /// The new file.
    pub to: PathBuf,
}

/// `species`
#[derive(Args, Debug)]
pub struct Species {
    /// One species, by any of its names.
    pub name: Option<String>,
}

impl Cli {
    /// The definition with its help in a language.
    pub fn definition(wording: &Wording) -> clap::Command {
        let mut command = Cli::command();
        // Built first, so that the help of --help and --version can be put into the person's language too.
        command.build();
        worded(command, wording, "outplant")
    }

    /// Reads what was typed.
    pub fn read(arguments: impl IntoIterator<Item = OsString>, wording: &Wording) -> Result<Cli, clap::Error> {
        let matches = Cli::definition(wording).try_get_matches_from(arguments)?;
        Cli::from_arg_matches(&matches)
    }
}

/// Puts the help of a command, its arguments and its subcommands into the person's language.
fn worded(command: clap::Command, wording: &Wording, path: &str) -> clap::Command {
    let about = wording.help(&format!("help_{path}"));
    let longer = wording.help(&format!("help_{path}_more"));
    let names: Vec<String> = command.get_arguments().map(|argument| argument.get_id().to_string()).collect();
    let below: Vec<String> = command.get_subcommands().map(|inner| inner.get_name().to_string()).collect();
    let mut command = command;
    if let Some(about) = about {
        command = command.about(about);
    }
    if let Some(longer) = longer {
        let lists_forms = path == "write";
        let longer = if lists_forms { format!("{longer}\n\n{}", short_forms(wording)) } else { longer };
        command = command.after_help(longer);
    }
    for name in names {
        let own = wording.help(&format!("help_{path}_{name}")).or_else(|| wording.help(&format!("help_any_{name}")));
        if let Some(help) = own {
            command = command.mut_arg(name, |argument| argument.help(help));
        }
    }
    for name in below {
        let inner = format!("{path}_{name}").replace("outplant_", "");
        command = command.mut_subcommand(name, |command| worded(command, wording, &inner));
    }
    command
}

/// The short lines that `write --batch` reads, each with the kind of entry it makes.
fn short_forms(wording: &Wording) -> String {
    let forms = match wording.lang() {
        Lang::En => FORMS,
        Lang::Es => FORMS_IN_SPANISH,
    };
    let room = forms.iter().map(|(example, _)| width_of(example)).max().unwrap_or(0);
    let mut text = wording.short_forms_heading();
    for (example, kind) in forms {
        text.push_str(&format!("\n    {}  {kind}", left_aligned(example, room)));
    }
    text
}
