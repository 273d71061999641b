//! A sheet of the first day through the one door: judged like what is written by hand, whole or not at all, one command
//! that undo takes back.

use std::cell::OnceCell;
use std::collections::{BTreeMap, BTreeSet};
use std::io::Read;
use std::path::Path;

use super::refusal::Refused;
use super::remarks::known_names;
use super::{Desk, DeskError, ImportError, Recorded};
use crate::base::name_search::nearest;
use crate::base::text::folded;
use crate::base::{BedName, Day, SpeciesKey, TrayCode};
use crate::nursery::entry::shape::NameOf;
use crate::nursery::entry::subject::Subject;
use crate::nursery::entry::{BookEntry, What};
use crate::nursery::envelope::Draft;
use crate::nursery::species::{Catalogue, Profile};
use crate::reckon::Fold;
use crate::reckon::Picture;
use crate::reckon::tray::exposure::light_band;
use crate::share::first_day::{ColumnPassedOver, ColumnTaken, FirstDay, Gap, NameTaken, OrderTaken, Total, Understood};
use crate::share::sheet::{DayOrder, Encoding, Table, read_table, sheet_text};
use crate::share::{
    Existing, FileFault, LineFaults, SheetKind, SheetNames, Unknown, UnknownWhat, read_beds, read_trays, read_weather,
    with_remarks, write_whole,
};

/// What a sheet brought, or would bring, and how it was understood.
#[derive(Clone, PartialEq, Debug)]
pub struct SheetImported {
    /// Rows read.
    pub rows: usize,
    /// Entries they make.
    pub drafts: usize,
    /// What was written; no entries where it was only tried.
    pub recorded: Recorded,
    /// How the sheet is written in bytes.
    pub encoding: Encoding,
    /// What parts its cells.
    pub delimiter: char,
    /// The name of the sheet in its workbook, where it is in one.
    pub sheet: Option<String>,
    /// What was understood in one of several ways.
    pub understood: Vec<Understood>,
    /// Columns that mean nothing here.
    pub passed_over: Vec<ColumnPassedOver>,
    /// What the sheet does not tell.
    pub unknowns: Vec<Unknown>,
    /// The columns that mean something.
    pub columns: Vec<ColumnTaken>,
    /// The names of species, each with what it was taken for.
    pub names: Vec<NameTaken>,
    /// The order of day and month, where it was not plain.
    pub order: Option<OrderTaken>,
    /// A row of totals that was passed over.
    pub total: Option<Total>,
    /// Days of weather of which nothing is told.
    pub gaps: Vec<Gap>,
    /// The entries, each with the line of its row.
    pub read: Vec<(usize, Draft)>,
}

/// A sheet that was not taken: what was understood of it, and everything that cannot stand.
#[derive(Clone, PartialEq, Debug)]
pub struct SheetRefused {
    /// How many rows were read.
    pub rows: usize,
    /// The columns that mean something.
    pub columns: Vec<ColumnTaken>,
    /// Columns that mean nothing here.
    pub passed_over: Vec<ColumnPassedOver>,
    /// The names of species, each with what it was taken for.
    pub names: Vec<NameTaken>,
    /// The order of day and month, where it was not plain.
    pub order: Option<OrderTaken>,
    /// Whether it is a sheet of a workbook: its faults are named by their cells.
    pub in_a_workbook: bool,
    /// The entries of the rows without a fault.
    pub read: Vec<(usize, Draft)>,
    /// Faults of cells.
    pub faults: LineFaults,
    /// What the book cannot bear.
    pub refused: Vec<Refused>,
}

/// A name of a sheet that no species bears here, and what a person says it is.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct NameMeant {
    /// As written.
    pub(crate) written: String,
    /// The species it is.
    pub(crate) key: SpeciesKey,
    /// The entry that makes the species, where it is a new one.
    pub(crate) entry: Option<Draft>,
}

/// How a sheet is to be read.
pub(crate) struct SheetAsked<'a> {
    /// Which sheet of a workbook.
    pub(crate) sheet: Option<&'a str>,
    /// What its rows are.
    pub(crate) kind: SheetKind,
    /// The order of day and month where the language tells it.
    pub(crate) order: Option<DayOrder>,
    /// Who writes.
    pub(crate) who: &'a str,
    /// Names that nobody knows, with what they are.
    pub(crate) named: &'a [NameMeant],
    /// Whether places and containers called nearly as one of the book are new all the same.
    pub(crate) new_names: bool,
}

impl Desk {
    /// Takes a sheet of trays or beds whole or not at all, and draws the Picture with it; `only_try` says what it would
    /// bring and writes nothing. `order` is that of day and month where the language tells it.
    pub fn import_sheet(
        &mut self,
        input: impl Read,
        sheet: Option<&str>,
        kind: SheetKind,
        order: Option<DayOrder>,
        who: &str,
        only_try: bool,
    ) -> Result<(SheetImported, Picture), ImportError> {
        self.import_sheet_as(input, &SheetAsked { sheet, kind, order, who, named: &[], new_names: false }, only_try)
    }

    /// The same, with names that nobody knows and what a person says they are; new species are written with it.
    pub(crate) fn import_sheet_as(
        &mut self,
        input: impl Read,
        asked: &SheetAsked,
        only_try: bool,
    ) -> Result<(SheetImported, Picture), ImportError> {
        /// The heading, where a species that the rows name is made.
        const FIRST_LINE: usize = 1;
        self.refresh().map_err(ImportError::Desk)?;
        let table = read_table(input, asked.sheet).map_err(ImportError::Read)?;
        let (mut read, faults) = self.read_sheet(&table, asked);
        let made = asked.named.iter().filter(|one| read.names.iter().any(|name| is_named(&name.written, one)));
        let made: Vec<(usize, Draft)> = made.filter_map(|one| Some((FIRST_LINE, one.entry.clone()?))).collect();
        read.drafts.splice(0..0, made);
        if !faults.is_empty() {
            // A row that names what an earlier one names gives entries too: they are not judged.
            let faulty: BTreeSet<usize> = faults.listed.iter().map(|fault| fault.line).collect();
            let sound = read.drafts.iter().filter(|(line, _)| !faulty.contains(line)).cloned().collect();
            let refused = self.every_refusal(sound).map_err(ImportError::Desk)?;
            return Err(not_taken(read, faults, refused, &table));
        }
        note_profile_gaps(&mut read, &self.fold().site().species);
        read.unknowns.extend(self.without_least_days(&read.drafts));
        let recorded = match self.take_numbered(read.drafts.clone(), only_try) {
            Err(ImportError::Desk(DeskError::Refused(refused))) => {
                return Err(not_taken(read, LineFaults::default(), refused, &table));
            }
            taken => taken?,
        };
        let picture = if only_try {
            let drafts = read.drafts.iter().map(|(_, draft)| draft.clone()).collect();
            self.preview(drafts).map_err(ImportError::Desk)?.0
        } else {
            self.picture()
        };
        Ok((imported(read, recorded, &table), picture))
    }

    /// Species of the trays of a sheet, often the nursery's own, of which nobody wrote from how many days on they go out.
    fn without_least_days(&self, drafts: &[(usize, Draft)]) -> Vec<Unknown> {
        let species = &self.fold().site().species;
        let mut lines: BTreeMap<&str, Vec<usize>> = BTreeMap::new();
        for (line, draft) in drafts.iter().filter(|(_, draft)| draft.kind == "plants_received") {
            let Some(key) = draft.body.get("species").and_then(|value| value.as_str()) else { continue };
            let known = species.get(&SpeciesKey::new(key));
            if known.is_some_and(|profile| profile.plantable_least_days.is_none()) {
                lines.entry(key).or_default().push(*line);
            }
        }
        let unknown = |(key, lines): (&str, _)| Unknown { what: UnknownWhat::LeastDays, name: Some(key.into()), lines };
        lines.into_iter().map(unknown).collect()
    }

    fn read_sheet(&self, table: &Table, asked: &SheetAsked) -> (FirstDay, LineFaults) {
        let SheetAsked { kind, order, who, named, .. } = *asked;
        let site = self.fold().site();
        let species: &Catalogue = &site.species;
        let usual = |profile: &Profile| Some((profile.row_m.as_ref()?.value, profile.in_row_m.as_ref()?.value));
        let containers: Vec<String> = site.containers.keys().map(ToString::to_string).collect();
        let places: Vec<String> = site.places.keys().map(ToString::to_string).collect();
        let fold = self.fold();
        let in_the_book = |written: &str| match kind {
            SheetKind::Trays => TrayCode::new(written)
                .ok()
                .is_some_and(|code| fold.trays().get(&code).is_some_and(|story| story.origin.is_some())),
            SheetKind::Beds => BedName::new(written)
                .ok()
                .is_some_and(|name| fold.beds().get(&name).is_some_and(|story| story.layout.each().next().is_some())),
            SheetKind::Weather => false,
        };
        let weather = if kind == SheetKind::Weather { weather_written(fold) } else { BTreeMap::new() };
        let near = near_names(fold, asked.new_names);
        let names = SheetNames {
            near: &near,
            variety: &|written, key| {
                let is_new = named.iter().any(|one| is_named(written, one));
                if is_new { None } else { species.variety_beside(written, key) }
            },
            in_the_book: &in_the_book,
            weather: &|day| weather.get(&day).cloned().unwrap_or_default(),
            today: self.now().today,
            who,
            order,
            find: &|written| {
                let meant = named.iter().find(|one| is_named(written, one));
                meant.map(|one| one.key.clone()).or_else(|| species.find(written))
            },
            several: &|written| species.resolve(written).several(),
            nearest: &|written| species.nearest(written),
            spacing: &|key| species.get(key).and_then(|profile| usual(profile)),
            containers: &containers,
            places: &places,
        };
        match kind {
            SheetKind::Trays => read_trays(table, &names),
            SheetKind::Beds => read_beds(table, &names),
            SheetKind::Weather => read_weather(table, &names),
        }
    }
}

/// The weather that the book has, day by day, the newest line of a figure leading.
fn weather_written(fold: &Fold) -> BTreeMap<Day, Vec<(&'static str, f64)>> {
    let mut all: BTreeMap<Day, BTreeMap<&'static str, f64>> = BTreeMap::new();
    for entry in fold.ledger().of(&Subject::Site) {
        let What::Book(BookEntry::Weather(weather)) = &entry.what else { continue };
        let figures = [
            ("rain_mm", weather.rain_mm.map(|rain| rain.0)),
            ("tmin_c", weather.tmin_c.map(|low| low.0)),
            ("tmax_c", weather.tmax_c.map(|high| high.0)),
        ];
        let told = figures.into_iter().filter_map(|(name, figure)| Some((name, figure?)));
        all.entry(entry.happened).or_default().extend(told);
    }
    all.into_iter().map(|(day, figures)| (day, figures.into_iter().collect())).collect()
}

/// The names of the book that a place or a container may be meant for: those nearest to it with the same figures, for another
/// number is another bench.
fn near_names(fold: &Fold, none: bool) -> impl Fn(bool, &str) -> Vec<String> + '_ {
    let known = OnceCell::new();
    let figures = |name: &str| name.chars().filter(char::is_ascii_digit).collect::<String>();
    move |is_place, written| {
        if none {
            return Vec::new();
        }
        let known = known.get_or_init(|| known_names(fold));
        let of_sort = known.get(if is_place { &NameOf::Place } else { &NameOf::Container });
        // As it is spelled, or with other capitals and blanks, it is known.
        if of_sort.is_some_and(|names| names.contains_key(&folded(written))) {
            return Vec::new();
        }
        let others = of_sort.into_iter().flat_map(|names| names.values()).map(String::as_str);
        nearest(written, others.filter(|other| figures(other) == figures(written)))
    }
}

fn is_named(written: &str, one: &NameMeant) -> bool {
    folded(written) == folded(&one.written)
}

fn imported(read: FirstDay, recorded: Recorded, table: &Table) -> SheetImported {
    SheetImported {
        rows: read.rows,
        drafts: read.drafts.len(),
        recorded,
        encoding: table.encoding,
        delimiter: table.delimiter,
        sheet: table.sheet.clone(),
        understood: read.understood,
        passed_over: read.passed_over,
        unknowns: read.unknowns,
        columns: read.columns,
        names: read.names,
        order: read.order,
        total: read.total,
        gaps: read.gaps,
        read: read.drafts,
    }
}

/// What the profiles of the trays' species do not say and their verdict asks for.
fn note_profile_gaps(read: &mut FirstDay, catalogue: &Catalogue) {
    let trays = read.drafts.iter().filter(|(_, draft)| draft.kind == "plants_received");
    let named: Vec<(usize, String)> =
        trays.filter_map(|(line, draft)| Some((*line, draft.body.get("species")?.as_str()?.to_string()))).collect();
    for (line, species) in named {
        let Some(profile) = catalogue.find(&species).and_then(|key| catalogue.get(&key)) else { continue };
        if light_band(Some(profile.as_ref())).is_none() {
            read.note_unknown(UnknownWhat::SpeciesShade, Some(&species), line);
        }
        if profile.plantable_most_days.is_none() {
            read.note_unknown(UnknownWhat::SpeciesMostDays, Some(&species), line);
        }
    }
}

fn not_taken(read: FirstDay, faults: LineFaults, refused: Vec<Refused>, table: &Table) -> ImportError {
    ImportError::Sheet(Box::new(SheetRefused {
        rows: read.rows,
        columns: read.columns,
        passed_over: read.passed_over,
        names: read.names,
        order: read.order,
        read: read.drafts,
        in_a_workbook: table.sheet.is_some(),
        faults,
        refused,
    }))
}

/// Writes a copy of a sheet with a column of remarks, each by its line; a file that is there already stays.
///
/// # Errors
/// The new file; none where the bytes are no text.
pub(crate) fn write_marked_sheet(
    bytes: &[u8],
    sheet: Option<&str>,
    heading: &str,
    remarks: &BTreeMap<usize, Vec<String>>,
    to: &Path,
) -> Result<bool, FileFault> {
    let Ok(read) = sheet_text(bytes, sheet) else { return Ok(false) };
    let marked = with_remarks(&read.text, read.delimiter(), heading, remarks);
    write_whole(to, Existing::Refuse, |out| {
        // Spreadsheet programs take a file for UTF-8 by its mark.
        out.write_all("\u{feff}".as_bytes())?;
        out.write_all(marked.trim_start_matches('\u{feff}').as_bytes())
    })?;
    Ok(true)
}
