//! A sheet of the first day and the paper of a walk, through the one door: judged like what is written by hand, whole or
//! not at all, one command that undo takes back.

use std::collections::BTreeMap;
use std::io::Read;

use super::exchange::with_lines;
use super::{Desk, ImportError, Imported, Recorded};
use crate::base::{Day, SpeciesKey};
use crate::nursery::envelope::Draft;
use crate::nursery::species::{Catalogue, Profile};
use crate::reckon::stock::TrayStory;
use crate::share::first_day::Understood;
use crate::share::sheet::{DayOrder, Encoding, Table, read_table};
use crate::share::{
    FirstDay, KnownNames, ReadFault, SheetKind, SheetNames, Unknown, UnknownWhat, read_beds, read_paper, read_trays,
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
    /// What was understood in one of several ways.
    pub understood: Vec<Understood>,
    /// Columns that mean nothing here.
    pub passed_over: Vec<String>,
    /// What the sheet does not tell.
    pub unknowns: Vec<Unknown>,
}

impl Desk {
    /// Takes a sheet of trays or beds whole or not at all; `only_try` says what it would bring and writes nothing.
    /// `order` is that of day and month where the language tells it.
    pub fn import_sheet(
        &mut self,
        input: impl Read,
        kind: SheetKind,
        order: Option<DayOrder>,
        who: &str,
        only_try: bool,
    ) -> Result<SheetImported, ImportError> {
        self.refresh().map_err(ImportError::Desk)?;
        let table = read_table(input).map_err(ImportError::Read)?;
        let mut read =
            self.read_sheet(&table, kind, order, who).map_err(|faults| ImportError::Read(ReadFault::Lines(faults)))?;
        note_profile_gaps(&mut read, &self.fold().site().species);
        let drafts = read.drafts.len();
        let mut unknowns = read.unknowns;
        unknowns.extend(self.without_least_days(&read.drafts));
        let recorded = self.take_numbered(read.drafts, only_try)?;
        Ok(SheetImported {
            rows: read.rows,
            drafts,
            recorded,
            encoding: table.encoding,
            delimiter: table.delimiter,
            understood: read.understood,
            passed_over: read.passed_over,
            unknowns,
        })
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

    fn read_sheet(
        &self,
        table: &Table,
        kind: SheetKind,
        order: Option<DayOrder>,
        who: &str,
    ) -> Result<FirstDay, crate::share::LineFaults> {
        let site = self.fold().site();
        let species: &Catalogue = &site.species;
        let usual = |profile: &Profile| Some((profile.row_m.as_ref()?.value, profile.in_row_m.as_ref()?.value));
        let containers: Vec<String> = site.containers.keys().map(ToString::to_string).collect();
        let places: Vec<String> = site.places.keys().map(ToString::to_string).collect();
        let names = SheetNames {
            today: self.now().today,
            who,
            order,
            find: &|written| species.find(written),
            nearest: &|written| species.nearest(written),
            spacing: &|key| species.get(key).and_then(|profile| usual(profile)),
            containers: &containers,
            places: &places,
        };
        match kind {
            SheetKind::Trays => read_trays(table, &names),
            SheetKind::Beds => read_beds(table, &names),
        }
    }

    /// Takes the short lines of a walk whole or not at all, as of `happened` (today where none is said).
    pub fn write_sheet(
        &mut self,
        text: &str,
        happened: Option<Day>,
        who: &str,
        only_try: bool,
    ) -> Result<Imported, ImportError> {
        self.refresh().map_err(ImportError::Desk)?;
        let today = self.now().today;
        let lines = {
            let is_seedbed = |tray: &str| {
                self.fold().trays().iter().any(|(code, story)| code.as_str() == tray && self.holds_seed(story))
            };
            let known = self.known_names(&is_seedbed);
            read_paper(text, &known, happened.unwrap_or(today), today, who)
                .map_err(|faults| ImportError::Read(ReadFault::Lines(faults)))?
        };
        let count = lines.len();
        let recorded = self.take_numbered(lines, only_try)?;
        Ok(Imported { lines: count, recorded })
    }

    /// The names that short lines may speak of.
    fn known_names<'a>(&self, is_seedbed: &'a dyn Fn(&str) -> bool) -> KnownNames<'a> {
        let fold = self.fold();
        let made = fold.trays().iter().filter(|(_, story)| story.origin.is_some());
        let set = fold.beds().iter().filter(|(_, story)| story.layout.each().next().is_some());
        let described = fold.site().places.keys().map(ToString::to_string);
        // A bench that a tray stands on is known by name before anybody describes it.
        let stood_on = fold.trays().values().flat_map(|story| &story.places).map(|spell| spell.what.to_string());
        let mut places: Vec<String> = described.chain(stood_on).collect();
        places.sort();
        places.dedup();
        KnownNames {
            trays: made.map(|(code, _)| code.to_string()).collect(),
            beds: set.map(|(name, _)| name.to_string()).collect(),
            places,
            is_seedbed,
        }
    }

    /// Whether seedlings of a tray are pricked out: seed is still due in it, or it stands in a seedbed.
    fn holds_seed(&self, story: &TrayStory) -> bool {
        let container = story.container().and_then(|spell| spell.what.as_ref());
        story.seed_is_due(self.now().today) || container.is_some_and(|name| reads_like_seedbed(name.as_str()))
    }

    fn take_numbered(&mut self, lines: Vec<(usize, Draft)>, only_try: bool) -> Result<Recorded, ImportError> {
        let (numbers, drafts): (Vec<usize>, Vec<Draft>) = lines.into_iter().unzip();
        if drafts.is_empty() {
            return Ok(Recorded::default());
        }
        let taken = if only_try {
            self.rehearse(drafts).map(|doubts| Recorded { doubts, ..Recorded::default() })
        } else {
            self.record(drafts)
        };
        taken.map_err(|fault| ImportError::Desk(with_lines(fault, &numbers)))
    }
}

/// What the profiles of the trays' species do not say and their verdict asks for.
fn note_profile_gaps(read: &mut FirstDay, catalogue: &Catalogue) {
    let trays = read.drafts.iter().filter(|(_, draft)| draft.kind == "plants_received");
    let named: Vec<(usize, String)> =
        trays.filter_map(|(line, draft)| Some((*line, draft.body.get("species")?.as_str()?.to_string()))).collect();
    for (line, species) in named {
        let Some(profile) = catalogue.find(&species).and_then(|key| catalogue.get(&key)) else { continue };
        if profile.outplant_shade_least_pct.is_none() && profile.outplant_shade_most_pct.is_none() {
            read.note_unknown(UnknownWhat::SpeciesShade, Some(&species), line);
        }
        if profile.plantable_most_days.is_none() {
            read.note_unknown(UnknownWhat::SpeciesMostDays, Some(&species), line);
        }
    }
}

/// Whether the name of a container is that of a seedbed.
fn reads_like_seedbed(name: &str) -> bool {
    let folded = crate::base::text::folded(name);
    ["seedbed", "germin", "semillero", "almacigo", "strip"].iter().any(|word| folded.contains(word))
}
