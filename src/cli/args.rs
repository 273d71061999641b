//! The command line: commands and options in English; `help` puts their help into the person's language.

mod help;
pub(crate) mod usage;

use clap::{Args, Parser, Subcommand, ValueEnum};
use std::path::PathBuf;

use super::begin::{degrees, figure, metres};
use super::json::schema::answers;
use crate::base::{BedName, EntryId, LotCode, PlaceName, TrayCode};

/// What was typed.
#[derive(Parser, Debug)]
#[command(name = "outplant", version, disable_help_subcommand = true)]
pub struct Cli {
    /// Options that stand before or after any command.
    #[command(flatten)]
    pub(crate) everywhere: Everywhere,
    /// The command; none opens the nursery.
    #[command(subcommand)]
    pub(crate) command: Option<Command>,
}

/// Options that stand before or after any command.
#[derive(Args, Debug, Default)]
pub(crate) struct Everywhere {
    /// The nursery's file.
    #[arg(long, global = true, value_name = "FILE")]
    pub(crate) nursery: Option<PathBuf>,
    /// Another day, past or to come.
    #[arg(long, global = true, value_name = "DATE", allow_negative_numbers = true)]
    pub(crate) on: Option<String>,
    /// Only what had been recorded by the end of this day.
    #[arg(long, global = true, value_name = "DATE", allow_negative_numbers = true)]
    pub(crate) known: Option<String>,
    /// en or es.
    #[arg(long, global = true, value_name = "LANG", value_parser = ["en", "es"])]
    pub(crate) lang: Option<String>,
    /// For programs.
    #[arg(long, global = true)]
    pub(crate) json: bool,
    /// The round as numbered prompts.
    #[arg(long, global = true)]
    pub(crate) plain: bool,
    /// Yes to whatever would be asked.
    #[arg(long, global = true)]
    pub(crate) yes: bool,
    /// The handbook alone, without what this nursery learned.
    #[arg(long, global = true)]
    pub(crate) handbook: bool,
    /// Who writes.
    #[arg(long, global = true, value_name = "NAME")]
    pub(crate) who: Option<String>,
    /// When colour is used.
    #[arg(long, global = true, value_name = "WHEN", value_parser = ["auto", "always", "never"])]
    pub(crate) color: Option<String>,
    /// Answers keep to ASCII.
    #[arg(long, global = true)]
    pub(crate) ascii: bool,
    /// Also how it is done.
    #[arg(long, short = 'v', global = true)]
    pub(crate) verbose: bool,
}

/// The commands.
#[derive(Subcommand, Debug)]
pub(crate) enum Command {
    /// A copy of the sample nursery.
    Sample(Sample),
    /// An empty nursery.
    Begin(Begin),
    /// Which trays are ready for which bed.
    Ready(Ready),
    /// Today's round in walking order.
    Walk(Walk),
    /// The best plan of the coming weeks.
    Match(Match),
    /// Every criterion of a tray, a bed or a pair.
    #[command(subcommand)]
    Why(Why),
    /// One entry.
    Write(Write),
    /// What was written, the newest first.
    Log(Log),
    /// Takes a command back.
    Undo(Undo),
    /// Entries from a file.
    Import(Import),
    /// Entries to a file or the screen.
    Export(Export),
    /// Proves the file.
    Check,
    /// Every undamaged entry of a damaged file.
    Rescue(Rescue),
    /// A verified copy.
    Backup(Backup),
    /// Profiles with the source of each figure.
    Species(Species),
    /// The JSON schema of an answer.
    Schema(Schema),
    /// One formula.
    Calc(super::calc::args::Calc),
    /// Where things are kept, and what is set.
    Paths,
    /// A script by which a shell completes commands.
    Completions(Completions),
    /// Pages for `man`.
    Man(Man),
}

impl Command {
    /// In what form a command that lists something is to answer.
    pub(crate) fn form(&self) -> InForm {
        match self {
            Command::Ready(Ready { form, .. })
            | Command::Walk(Walk { form })
            | Command::Log(Log { form, .. })
            | Command::Species(Species { form, .. }) => form.clone(),
            _ => InForm::default(),
        }
    }
}

/// `completions`
#[derive(Args, Debug)]
pub(crate) struct Completions {
    /// The shell.
    #[arg(value_enum, hide_possible_values = true)]
    pub(crate) shell: clap_complete::Shell,
}

/// `man`
#[derive(Args, Debug)]
pub(crate) struct Man {
    /// A folder for the page of each command; without it the first page is printed.
    #[arg(long, value_name = "FOLDER")]
    pub(crate) to: Option<PathBuf>,
}

/// `sample`
#[derive(Args, Debug)]
pub(crate) struct Sample {
    /// Only make this file.
    #[arg(long, value_name = "FILE")]
    pub(crate) into: Option<PathBuf>,
}

/// `begin`
#[derive(Args, Debug)]
#[command(allow_negative_numbers = true)]
pub(crate) struct Begin {
    /// Name of the nursery.
    #[arg(long)]
    pub(crate) name: Option<String>,
    /// Latitude, degrees, south negative.
    #[arg(long, value_name = "DEG", allow_hyphen_values = true, value_parser = degrees)]
    pub(crate) lat: Option<f64>,
    /// Longitude, degrees, west negative.
    #[arg(long, value_name = "DEG", allow_hyphen_values = true, value_parser = degrees)]
    pub(crate) lon: Option<f64>,
    /// Altitude, m.
    #[arg(long, value_name = "M", allow_hyphen_values = true, value_parser = metres)]
    pub(crate) altitude: Option<f64>,
    /// Hours ahead of UTC.
    #[arg(long, value_name = "H", allow_hyphen_values = true, value_parser = figure)]
    pub(crate) utc_offset: Option<f64>,
}

/// In what form a list is answered.
#[derive(ValueEnum, Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Format {
    /// For people.
    Table,
    /// One object, as `--json`.
    Json,
    /// A list as a table, parted by commas.
    Csv,
    /// A list as a table, parted by tabs.
    Tsv,
}

/// In what form a list is answered, and which of an answer's lists.
#[derive(Args, Clone, Debug, Default)]
pub(crate) struct InForm {
    /// The form.
    #[arg(long, value_enum, hide_possible_values = true, conflicts_with = "json")]
    pub(crate) format: Option<Format>,
    /// The list.
    #[arg(long, value_name = "LIST", requires = "format")]
    pub(crate) list: Option<String>,
}

/// `walk`
#[derive(Args, Debug, Default)]
pub(crate) struct Walk {
    /// In what form.
    #[command(flatten)]
    pub(crate) form: InForm,
}

/// `ready`
#[derive(Args, Debug, Default)]
pub(crate) struct Ready {
    /// Only the tray, the bed, the place, the lot or the species of this name.
    pub(crate) name: Vec<String>,
    /// In what form.
    #[command(flatten)]
    pub(crate) form: InForm,
    /// Only what changed since the end of this day.
    #[arg(long, value_name = "DATE", allow_negative_numbers = true)]
    pub(crate) since: Option<String>,
    /// Only this tray, with the beds that plan its species.
    #[arg(long, value_name = "TRAY")]
    pub(crate) tray: Option<TrayCode>,
    /// Only this bed, with the trays of the species it plans.
    #[arg(long, value_name = "BED")]
    pub(crate) bed: Option<BedName>,
    /// Only trays and beds that fit one another.
    #[arg(long)]
    pub(crate) fits: bool,
    /// Everything, not the plan of the day and the first of the rest.
    #[arg(long)]
    pub(crate) all: bool,
}

/// `match`
#[derive(Args, Debug, Default)]
pub(crate) struct Match {
    /// Weeks looked ahead.
    #[arg(long, value_name = "WEEKS")]
    pub(crate) weeks: Option<u32>,
    /// Plants of a tray that go to a bed.
    #[arg(long, value_name = "PIN")]
    pub(crate) pin: Vec<String>,
    /// A tray that never goes to a bed.
    #[arg(long, value_name = "PAIR")]
    pub(crate) forbid: Vec<String>,
    /// A bed to which nothing goes.
    #[arg(long, value_name = "BED")]
    pub(crate) leave_out: Vec<BedName>,
}

/// `why`
#[derive(Subcommand, Debug)]
pub(crate) enum Why {
    /// Whatever bears the name, or the tray and the bed of two.
    #[command(hide = true)]
    Named {
        /// Names.
        #[arg(required = true)]
        names: Vec<String>,
        /// Of a bed: only this species.
        #[arg(long)]
        species: Option<String>,
        /// Of a bed: the day on which its light is to suit.
        #[arg(long, value_name = "DATE", allow_negative_numbers = true)]
        by: Option<String>,
        /// Of a tray and a bed: also what to do about each thing that holds it back.
        #[arg(long)]
        how: bool,
        /// What holds too.
        #[arg(long)]
        all: bool,
    },
    /// A tray.
    Tray {
        /// Its code.
        tray: TrayCode,
        /// Also every question that is met, one by one.
        #[arg(long)]
        all: bool,
    },
    /// A bed.
    Bed {
        /// Its name.
        bed: BedName,
        /// Only this species.
        #[arg(long)]
        species: Option<String>,
        /// With `--json`: its positions too, one by one.
        #[arg(long)]
        positions: bool,
        /// The day on which its light is to suit: which nurse plants to set for it.
        #[arg(long, value_name = "DATE", allow_negative_numbers = true)]
        by: Option<String>,
        /// Also every question that is met, one by one.
        #[arg(long)]
        all: bool,
    },
    /// A bench, a frame, or another place.
    Place {
        /// Its name.
        place: PlaceName,
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
        /// Also every question that is met, one by one.
        #[arg(long)]
        all: bool,
    },
    /// A seed lot.
    Lot {
        /// Its code.
        lot: LotCode,
        /// How many to sow for so many plants; else for the places open in the beds.
        #[arg(long, value_name = "PLANTS")]
        plants: Option<u32>,
        /// How sure of them, percent.
        #[arg(long, value_name = "SURE")]
        sure: Option<f64>,
        /// Also what it is reckoned from.
        #[arg(long)]
        all: bool,
    },
    /// A species.
    Species {
        /// Its name.
        species: String,
        /// How many to sow for so many plants; else for the places open in the beds.
        #[arg(long, value_name = "PLANTS")]
        plants: Option<u32>,
        /// How sure of them, percent.
        #[arg(long, value_name = "SURE")]
        sure: Option<f64>,
        /// Also what it is reckoned from.
        #[arg(long)]
        all: bool,
    },
}

/// `write`
#[derive(Args, Debug)]
pub(crate) struct Write {
    /// The kind of entry, or the first word of a line; without one, all kinds are listed.
    pub(crate) kind: Option<String>,
    /// key=value, for each field; or the other words of a line.
    #[arg(value_name = "KEY=VALUE", allow_negative_numbers = true)]
    pub(crate) fields: Vec<String>,
    /// A sheet of short lines, whole or not at all; - reads what is piped in.
    #[arg(long, value_name = "FILE")]
    pub(crate) batch: Option<PathBuf>,
    /// The day it was seen or done.
    #[arg(long, value_name = "DATE", allow_negative_numbers = true)]
    pub(crate) happened: Option<String>,
    /// Only say what would be written.
    #[arg(long)]
    pub(crate) dry_run: bool,
}

/// `log`
#[derive(Args, Debug)]
pub(crate) struct Log {
    /// A name, a word, a day, a person; each of several must hold.
    pub(crate) words: Vec<String>,
    /// In what form.
    #[command(flatten)]
    pub(crate) form: InForm,
    /// At most so many.
    #[arg(long, value_name = "N", default_value_t = 30, value_parser = clap::value_parser!(u32).range(1..))]
    pub(crate) most: u32,
}

/// `undo`
#[derive(Args, Debug)]
pub(crate) struct Undo {
    /// The entry that is taken back; without one, the last command of this copy.
    pub(crate) entry: Option<EntryId>,
    /// Also take back the later entries that rest on it.
    #[arg(long)]
    pub(crate) together: bool,
    /// Everything that came in together with the entry.
    #[arg(long, requires = "entry", conflicts_with = "only")]
    pub(crate) all: bool,
    /// The entry alone.
    #[arg(long, requires = "entry")]
    pub(crate) only: bool,
    /// Only say what would be taken back.
    #[arg(long)]
    pub(crate) dry_run: bool,
    /// Why.
    #[arg(long, value_name = "TEXT")]
    pub(crate) why: Option<String>,
}

/// What an import reads.
#[derive(ValueEnum, Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum ImportAs {
    /// Entries, one JSON object a line.
    Entries,
    /// A sheet of trays that stand, a row a tray.
    Trays,
    /// A sheet of beds, a row a bed.
    Beds,
    /// A sheet of weather, a row a day.
    Weather,
}

/// `import`
#[derive(Args, Debug)]
pub(crate) struct Import {
    /// The file; - reads what is piped in.
    pub(crate) file: PathBuf,
    /// What it holds.
    #[arg(long = "as", value_enum, default_value = "entries", hide_possible_values = true, hide_default_value = true)]
    pub(crate) what: ImportAs,
    /// The sheet of a workbook.
    #[arg(long, value_name = "NAME")]
    pub(crate) sheet: Option<String>,
    /// A name that nobody knows here is a new species: its name, or its name and the species it is like.
    #[arg(long, value_name = "NAME")]
    pub(crate) as_new: Vec<String>,
    /// Where a sheet is not taken, a copy of it with a column of remarks.
    #[arg(long, value_name = "FILE")]
    pub(crate) marked: Option<PathBuf>,
    /// Only show what would be written.
    #[arg(long)]
    pub(crate) dry_run: bool,
}

/// What an export writes.
#[derive(ValueEnum, Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum ExportAs {
    /// Entries, one JSON object a line; `import` reads them back.
    Entries,
    /// A table for a spreadsheet.
    Csv,
    /// Beds and their positions on a map.
    Geojson,
}

/// `export`
#[derive(Args, Debug)]
pub(crate) struct Export {
    /// What to write.
    #[arg(long = "as", value_enum, default_value = "entries", hide_possible_values = true, hide_default_value = true)]
    pub(crate) what: ExportAs,
    /// Where to; the screen without it.
    #[arg(long, value_name = "FILE")]
    pub(crate) to: Option<PathBuf>,
    /// A table as office programs open it.
    #[arg(long)]
    pub(crate) excel: bool,
}

/// `backup`
#[derive(Args, Debug)]
pub(crate) struct Backup {
    /// The new file.
    pub(crate) to: PathBuf,
}

/// `rescue`
#[derive(Args, Debug)]
pub(crate) struct Rescue {
    /// The new file.
    pub(crate) to: PathBuf,
    /// No backup has what is lost.
    #[arg(long)]
    pub(crate) no_backup: bool,
}

/// `schema`
#[derive(Args, Debug)]
pub(crate) struct Schema {
    /// The answer.
    #[arg(value_parser = answers())]
    pub(crate) answer: String,
}

/// `species`
#[derive(Args, Debug)]
pub(crate) struct Species {
    /// One species, by any of its names; or a new one: `add NAME like SPECIES`.
    pub(crate) name: Vec<String>,
    /// In what form.
    #[command(flatten)]
    pub(crate) form: InForm,
    /// How far the figures can be trusted, counted.
    #[arg(long, conflicts_with = "name")]
    pub(crate) sources: bool,
}
