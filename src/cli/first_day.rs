//! `import --as trays` and `--as beds`: how the sheet was understood, the first answers, and what is still unknown.

use std::collections::BTreeMap;
use std::path::Path;

use serde_json::{Value, json};

use super::answer::Ending;
use super::args::Import;
use super::first_day_rows;
use super::input::opened;
use super::run::{Exit, Run};
use super::sheet::{Ink, Sheet};
use super::species::in_a_sheet;
use crate::base::SpeciesKey;
use crate::desk::{
    DayOrder, ImportError, LineFault, LineFaults, Refused, SheetAsked, SheetImported, SheetKind, SheetRefused,
    TakenFor, Understood, Unknown, UnknownWhat,
};
use crate::nursery::envelope::Draft;
use crate::nursery::species::Catalogue;
use crate::reckon::picture::{Picture, Rule, Stage, Standing, TrayPicture};
use crate::wording::desk::encoding_name;
use crate::wording::{Lang, Wording};

/// Gaps that are told one by one. Ours.
const MOST_GAPS_TOLD: usize = 10;

/// Takes a sheet whole or not at all and tells what it brought.
pub(crate) fn import(run: &Run, arguments: &Import, kind: SheetKind) -> Result<Ending, Exit> {
    let (file, only_try) = (&arguments.file, arguments.dry_run);
    arguments.marked.as_ref().map_or(Ok(()), |marked| run.made_in_a_file(marked))?;
    let mut desk = run.desk_to_write()?;
    let order = match run.wording.lang() {
        Lang::En => None,
        Lang::Es => Some(DayOrder::DayFirst),
    };
    let species = desk.fold().site().species.clone();
    let mut named = in_a_sheet::as_new(run, &arguments.as_new, &species)?;
    let taken = loop {
        let asked = SheetAsked {
            sheet: arguments.sheet.as_deref(),
            kind,
            order,
            who: &run.who,
            named: &named,
            new_names: run.everywhere.yes,
        };
        let taken = desk.import_sheet_as(opened(run, file)?, &asked, only_try);
        let Err(ImportError::Sheet(refused)) = &taken else { break taken };
        let more = in_a_sheet::asked(run, file, &refused.names, &species);
        if more.is_empty() {
            break taken;
        }
        named.extend(more);
    };
    let (sheet, picture) = taken.map_err(|fault| {
        let mut exit = not_taken(run, &fault, &file.display().to_string(), &species, only_try);
        if let (Some(to), ImportError::Sheet(sheet)) = (&arguments.marked, &fault) {
            exit.lines.push(marked(run, arguments, to, sheet, &species));
        }
        exit
    })?;
    run.tell_notes(&desk);
    let story = FirstDay { wording: &run.wording, sheet: &sheet, kind, only_try, picture: &picture };
    if run.everywhere.json {
        return run.answer_json(&story.json());
    }
    run.answer(&story.text(run.around.columns, run.around.colour))
}

/// Writes a copy of the sheet with what is wrong behind each row, and says so, or why there is none.
fn marked(run: &Run, arguments: &Import, to: &Path, sheet: &SheetRefused, species: &Catalogue) -> String {
    let mut remarks: BTreeMap<usize, Vec<String>> = BTreeMap::new();
    for fault in &sheet.faults.listed {
        let alone = LineFault { line: 0, column: None, ..fault.clone() };
        remarks.entry(fault.line).or_default().extend(run.wording.line_fault_and_meant(&alone));
    }
    for one in &sheet.refused {
        let alone = Refused { line: 0, why: one.why.clone() };
        remarks.entry(one.line).or_default().push(run.wording.refused(&alone, species));
    }
    // What was piped in cannot be read again.
    let Ok(bytes) = std::fs::read(&arguments.file) else { return run.wording.marked_not_written() };
    match crate::desk::write_marked_sheet(
        &bytes,
        arguments.sheet.as_deref(),
        &run.wording.marked_heading(),
        &remarks,
        to,
    ) {
        Ok(true) => run.wording.marked_written(to.display()),
        Ok(false) => run.wording.marked_not_written(),
        Err(fault) => run.wording.file_fault(&fault),
    }
}

/// Why a sheet was not taken; where it was only tried, what was understood of it comes first.
fn not_taken(run: &Run, fault: &ImportError, file: &str, species: &Catalogue, only_try: bool) -> Exit {
    let mut exit = refused(run, fault, file, species);
    if let (ImportError::Sheet(sheet), true) = (fault, only_try) {
        let mut lines = first_day_rows::understood(&run.wording, &sheet.columns, &sheet.names, species);
        lines.extend(sheet.order.as_ref().map(|order| run.wording.order_taken(order)));
        if !sheet.read.is_empty() {
            lines.push(run.wording.sheet_rows_heading());
            lines.extend(first_day_rows::rows(&run.wording, &sheet.read, species));
        }
        lines.append(&mut exit.lines);
        exit.lines = lines;
    }
    exit
}

/// Why a file was not taken, every fault in its place.
pub(crate) fn refused(run: &Run, fault: &ImportError, file: &str, species: &Catalogue) -> Exit {
    match fault {
        ImportError::Read(fault) => {
            let mut lines = run.wording.read_fault(fault, file);
            lines.push(run.wording.nothing_written());
            Exit { ending: Ending::Refused, lines }
        }
        ImportError::Lines(faults, refused) => by_line(run, faults, refused, species, false),
        ImportError::Sheet(sheet) => {
            let mut exit = by_line(run, &sheet.faults, &sheet.refused, species, sheet.in_a_workbook);
            if !sheet.passed_over.is_empty() {
                let before = exit.lines.len().saturating_sub(1);
                exit.lines.insert(before, run.wording.columns_passed_over(&sheet.passed_over));
            }
            exit
        }
        ImportError::Desk(fault) => run.exit_for(fault, species),
    }
}

/// Faults of lines and what the book refuses, in the order of the lines.
fn by_line(run: &Run, faults: &LineFaults, refused: &[Refused], species: &Catalogue, by_cell: bool) -> Exit {
    let of_lines = faults.listed.iter().flat_map(|fault| {
        let said = if by_cell { run.wording.cell_fault(fault) } else { run.wording.line_fault_and_meant(fault) };
        said.into_iter().map(|sentence| (fault.line, sentence))
    });
    let of_book = refused.iter().map(|one| (one.line, run.wording.refused(one, species)));
    let mut all: Vec<(usize, String)> = of_lines.chain(of_book).collect();
    all.sort_by_key(|(line, _)| *line);
    let mut lines: Vec<String> = all.into_iter().map(|(_, message)| message).collect();
    let more = faults.count.saturating_sub(faults.listed.len());
    if more > 0 {
        lines.push(run.wording.more_faults(more as i64));
    }
    lines.push(run.wording.nothing_written());
    Exit { ending: Ending::Refused, lines }
}

/// What is to be told of a sheet.
struct FirstDay<'a> {
    wording: &'a Wording,
    sheet: &'a SheetImported,
    kind: SheetKind,
    only_try: bool,
    picture: &'a Picture,
}

impl FirstDay<'_> {
    fn text(&self, width: usize, colour: bool) -> String {
        let (wording, mut page) = (self.wording, Sheet::new(width, colour));
        let rows = self.sheet.rows as i64;
        let entries = wording.entries(self.sheet.drafts as i64);
        let taken = if self.only_try { wording.sheet_tried(rows, entries) } else { wording.sheet_taken(rows, entries) };
        page.paragraph(&taken, Ink::Bold);
        page.paragraph(&wording.sheet_form(self.sheet), Ink::Plain);
        if self.only_try {
            let species = &self.picture.site.species;
            let understood = first_day_rows::understood(wording, &self.sheet.columns, &self.sheet.names, species);
            understood.iter().for_each(|line| page.hanging("", Ink::Plain, line, Ink::Plain));
        }
        if !self.sheet.passed_over.is_empty() {
            page.paragraph(&wording.columns_passed_over(&self.sheet.passed_over), Ink::Plain);
        }
        self.notes().iter().for_each(|note| page.paragraph(note, Ink::Plain));
        let understood = self.understood();
        if !understood.is_empty() {
            page.paragraph(&wording.sheet_understood(), Ink::Plain);
            understood.iter().for_each(|one| page.hanging("  - ", Ink::Plain, one, Ink::Plain));
        }
        for doubt in &self.sheet.recorded.doubts {
            let message = wording.doubt(doubt, &self.picture.site.species);
            page.hanging("! ", Ink::Danger, &message, Ink::Plain);
        }
        if self.only_try {
            page.heading(&wording.sheet_rows_heading());
            let rows = first_day_rows::rows(wording, &self.sheet.read, &self.picture.site.species);
            rows.iter().for_each(|row| page.hanging("  ", Ink::Plain, row, Ink::Plain));
        }
        page.gap();
        if self.only_try {
            page.paragraph(&wording.sheet_answers_heading(), Ink::Bold);
        }
        self.answers().iter().for_each(|line| page.paragraph(line, Ink::Plain));
        self.unknown_text(&mut page);
        page.finish()
    }

    /// What was decided or passed over, and what is taken for granted.
    fn notes(&self) -> Vec<String> {
        let (wording, sheet) = (self.wording, self.sheet);
        let mut notes: Vec<String> = sheet.order.iter().map(|order| wording.order_taken(order)).collect();
        notes.extend(sheet.total.iter().map(|total| wording.total_passed(total)));
        let gaps = sheet.gaps.iter().take(MOST_GAPS_TOLD);
        notes.extend(gaps.map(|gap| {
            let days = i64::from(gap.until.days_since(gap.from)) + 1;
            wording.sheet_gap(gap.line as i64, days, wording.day(gap.from), wording.day(gap.until))
        }));
        let more = sheet.gaps.len().saturating_sub(MOST_GAPS_TOLD);
        notes.extend((more > 0).then(|| wording.sheet_gaps_more(more as i64)));
        let in_bags = |draft: &Draft| draft.kind == "plants_received" && draft.body.contains_key("container");
        if sheet.read.iter().any(|(_, draft)| in_bags(draft)) {
            notes.push(wording.sheet_containers_since_sowing());
        }
        notes
    }

    fn unknown_text(&self, page: &mut Sheet) {
        let unknowns = self.unknowns();
        if unknowns.is_empty() {
            return;
        }
        page.heading(&self.wording.sheet_unknown_heading());
        for (unknown, settles) in &unknowns {
            page.hanging("- ", Ink::Plain, &self.still_unknown(unknown), Ink::Plain);
            page.indented(4, settles, Ink::Plain);
        }
        if self.asks_for_hardening() {
            page.gap();
            page.paragraph(&self.wording.sheet_hardening(), Ink::Plain);
            page.indented(4, &self.hardening_command(), Ink::Plain);
            page.paragraph(&self.wording.sheet_hardening_batch(self.unhardened()), Ink::Plain);
        }
    }

    /// Opening stock has no past here: nobody wrote how it was hardened.
    fn asks_for_hardening(&self) -> bool {
        self.kind == SheetKind::Trays
    }

    /// What says that a tray was brought toward the light before the book was begun.
    fn hardening_command(&self) -> String {
        let fields = format!("tray={} happened=...", crate::base::text::as_argument(&self.unhardened()));
        self.as_typed("hardening_begun", &fields)
    }

    /// The first tray whose hardening nobody knows, as an example.
    fn unhardened(&self) -> String {
        let unknown = |tray: &TrayPicture| {
            let mut asked = tray.criteria.iter();
            asked.any(|criterion| criterion.rule() == Rule::Hardening && criterion.met().is_none())
        };
        let first = self.picture.trays.values().find(|tray| unknown(tray)).map(|tray| tray.code.to_string());
        first.unwrap_or_else(|| "...".to_string())
    }

    fn json(&self) -> Value {
        let sheet = self.sheet;
        let unknown: Vec<Value> = self
            .unknowns()
            .iter()
            .map(|(one, settles)| {
                json!({
                    "what": unknown_word(one.what),
                    "name": one.name,
                    "lines": one.lines,
                    "settled_by": one.what.settled_by(),
                    "text": self.still_unknown(one),
                    "command": settles,
                })
            })
            .collect();
        let doubt = |doubt| self.wording.doubt(doubt, &self.picture.site.species);
        json!({
            "version": 1,
            "dry_run": self.only_try,
            "rows": sheet.rows,
            "drafts": sheet.drafts,
            "entries": sheet.recorded.entries.iter().map(ToString::to_string).collect::<Vec<_>>(),
            "doubts": sheet.recorded.doubts.iter().map(doubt).collect::<Vec<_>>(),
            "encoding": encoding_name(sheet.encoding),
            "delimiter": sheet.delimiter.to_string(),
            "passed_over": sheet.passed_over.iter().map(|column| &column.written).collect::<Vec<_>>(),
            "columns": first_day_rows::columns_json(self.wording, &sheet.columns),
            "species": first_day_rows::names_json(&sheet.names),
            "lines": first_day_rows::lines_json(self.wording, &sheet.read, &self.picture.site.species),
            "notes": self.notes(),
            "understood": sheet.understood.iter().map(|one| json!({
                "line": one.line, "column": one.column, "written": one.written, "text": self.wording.understood(one),
            })).collect::<Vec<_>>(),
            "unknown": unknown,
            "hardening": self.asks_for_hardening().then(|| self.hardening_command()),
            "answers": self.answers(),
        })
    }

    /// How cells were understood: one example for each column and manner, the other rows counted.
    fn understood(&self) -> Vec<String> {
        let mut groups: Vec<(&Understood, i64)> = Vec::new();
        // Days whose order was taken are told one by one with the order.
        let told = |one: &Understood| matches!(one.taken, TakenFor::Day(_)) && self.is_told(one);
        for one in self.sheet.understood.iter().filter(|one| !told(one)) {
            let same = |other: &Understood| other.column == one.column && manner(&other.taken) == manner(&one.taken);
            match groups.iter_mut().find(|(first, _)| same(first)) {
                Some((_, more)) => *more += 1,
                None => groups.push((one, 0)),
            }
        }
        let message = groups.into_iter().map(|(first, more)| {
            let what = self.wording.at_line(first.line as i64, self.wording.understood(first));
            if more == 0 { what } else { self.wording.sheet_understood_more(what, more) }
        });
        message.collect()
    }

    fn is_told(&self, one: &Understood) -> bool {
        let read = self.sheet.order.iter().flat_map(|order| &order.so_read);
        read.into_iter().any(|(_, written, _)| *written == one.written)
    }

    /// The first answers: how many trays are ready, what the others wait for, how the beds stand.
    fn answers(&self) -> Vec<String> {
        let (wording, picture) = (self.wording, self.picture);
        let mut lines = Vec::new();
        let alive = picture.trays.values().filter(|tray| tray.stage != Stage::Spent);
        let (ready, waiting): (Vec<_>, Vec<_>) = alive.partition(|tray| tray.ready);
        if ready.len() + waiting.len() > 0 {
            let all = wording.trays((ready.len() + waiting.len()) as i64);
            lines.push(wording.sheet_now_trays(ready.len() as i64, all));
        }
        let mut first: BTreeMap<Rule, usize> = BTreeMap::new();
        let blocking = |criteria: &[crate::reckon::picture::Criterion]| {
            criteria.iter().find(|criterion| criterion.blocks).map(|criterion| criterion.rule())
        };
        waiting.iter().filter_map(|tray| blocking(&tray.criteria)).for_each(|rule| {
            *first.entry(rule).or_default() += 1;
        });
        if !first.is_empty() {
            let list = counted(first, |rule| wording.rule_name(rule));
            lines.push(wording.sheet_now_wait(wording.trays(waiting.len() as i64), list));
        }
        let mut standing: BTreeMap<Standing, usize> = BTreeMap::new();
        let lines_of_beds = picture.beds.values().flat_map(|bed| &bed.species);
        lines_of_beds.for_each(|line| *standing.entry(line.standing).or_default() += 1);
        if !standing.is_empty() {
            lines.push(wording.sheet_now_beds(counted(standing, |standing| wording.standing_name(standing))));
        }
        lines.push(wording.sheet_now_hint());
        lines
    }

    /// What is unknown in words, a species by its name.
    fn still_unknown(&self, unknown: &Unknown) -> String {
        let key = unknown.name.as_deref().filter(|_| unknown.what == UnknownWhat::LeastDays);
        let Some(key) = key else { return self.wording.still_unknown(unknown) };
        let name = self.wording.species_of(&SpeciesKey::new(key), &self.picture.site.species);
        self.wording.still_unknown(&Unknown { name: Some(name), ..unknown.clone() })
    }

    /// What is unknown with what settles it: what costs least first, then what concerns most.
    fn unknowns(&self) -> Vec<(&Unknown, String)> {
        let mut all: Vec<&Unknown> = self.sheet.unknowns.iter().collect();
        // Places keep the order of the sheet: that is how one walks.
        let concerns = |one: &Unknown| if one.what == UnknownWhat::PlaceShade { 0 } else { one.lines.len() };
        all.sort_by_key(|one| {
            let first = one.lines.first().copied();
            (cost(one.what), std::cmp::Reverse(concerns(one)), first, one.name.as_deref())
        });
        let orders = self.picture.site.places.values().filter_map(|place| place.on(self.picture.day));
        let mut order = orders.map(|place| place.order.0).max().unwrap_or(0);
        let settled = all.into_iter().map(|one| {
            order += u32::from(one.what == UnknownWhat::PlaceShade);
            (one, self.settles(one, order))
        });
        settled.collect()
    }

    fn settles(&self, unknown: &Unknown, order: u32) -> String {
        let name = crate::base::text::as_argument(unknown.name.as_deref().unwrap_or("..."));
        let in_sheet = |column: &str| {
            if self.only_try { self.wording.sheet_fill_first(column) } else { self.wording.sheet_fill(column) }
        };
        let column = |english: &'static str, spanish: &'static str| match self.wording.lang() {
            Lang::En => english,
            Lang::Es => spanish,
        };
        let fields = match unknown.what {
            UnknownWhat::ContainerVolume => format!("container={name} volume_ml=... depth_cm=..."),
            UnknownWhat::PlaceShade => format!("place={name} order={order} shade_pct=..."),
            UnknownWhat::Place => "tray=... place=...".to_string(),
            UnknownWhat::LeastDays => format!(r#"species={name} profile='{{"plantable_least_days":...}}'"#),
            // As it is said: height and collar of each plant.
            UnknownWhat::Measured => {
                return format!("outplant write \"... {} 24/4.5 31/5.1\"", column("height", "altura"));
            }
            UnknownWhat::SpeciesShade => format!(
                r#"species={name} profile='{{"outplant_shade_least_pct": ..., "outplant_shade_most_pct": ...}}'"#
            ),
            UnknownWhat::SpeciesMostDays => format!(r#"species={name} profile='{{"plantable_most_days": ...}}'"#),
            UnknownWhat::BedLight => "bed=... light_share=0.5".to_string(),
            UnknownWhat::BedSoil => "bed=... rod_mm=8 push_kg=10 depth_cm=... wet=yes".to_string(),
            UnknownWhat::BedWork => "bed=... task=cleared happened=...".to_string(),
            UnknownWhat::NurseCount | UnknownWhat::NursePlanted | UnknownWhat::NurseSpacing => {
                format!("bed=... nurse={name} count=... row_m=... in_row_m=... happened=...")
            }
            UnknownWhat::NotedSickness => format!("tray={name} what=... share_pct=..."),
            UnknownWhat::NotedUse => format!("tray={name} with=... safe_after_days=... happened=..."),
            UnknownWhat::Container => return in_sheet(column("bag", "bolsa")),
            UnknownWhat::Age => return in_sheet(column("sown about", "sembrada hacia")),
        };
        self.as_typed(unknown.what.settled_by(), &fields)
    }

    /// A command with its kind and its fields as they are typed in the language asked for.
    fn as_typed(&self, kind: &str, fields: &str) -> String {
        let in_this_language = |pair: &str| match pair.split_once('=') {
            Some((field, value)) if field.chars().all(|letter| letter.is_ascii_lowercase() || letter == '_') => {
                format!("{}={value}", self.wording.field_typed(field))
            }
            _ => pair.to_string(),
        };
        let fields: Vec<String> = fields.split(' ').map(in_this_language).collect();
        format!("outplant write {} {}", self.wording.kind_typed(kind), fields.join(" "))
    }
}

/// What it costs to find out, cheapest first: a look at a bench or a bag, the sheet once more, a reading, a sample.
fn cost(what: UnknownWhat) -> u8 {
    match what {
        UnknownWhat::PlaceShade | UnknownWhat::NotedSickness | UnknownWhat::NotedUse => 0,
        UnknownWhat::ContainerVolume => 1,
        UnknownWhat::Place => 2,
        UnknownWhat::Container => 3,
        UnknownWhat::Age | UnknownWhat::SpeciesShade | UnknownWhat::SpeciesMostDays => 4,
        UnknownWhat::LeastDays => 2,
        UnknownWhat::NursePlanted | UnknownWhat::NurseCount | UnknownWhat::NurseSpacing => 5,
        UnknownWhat::BedWork => 6,
        UnknownWhat::BedLight => 7,
        UnknownWhat::BedSoil => 8,
        UnknownWhat::Measured => 9,
    }
}

/// The stable word for what is unknown.
fn unknown_word(what: UnknownWhat) -> &'static str {
    match what {
        UnknownWhat::ContainerVolume => "container_volume",
        UnknownWhat::Container => "container",
        UnknownWhat::Age => "age",
        UnknownWhat::LeastDays => "least_days",
        UnknownWhat::PlaceShade => "place_shade",
        UnknownWhat::Place => "place",
        UnknownWhat::Measured => "measured",
        UnknownWhat::SpeciesShade => "species_shade",
        UnknownWhat::SpeciesMostDays => "species_most_days",
        UnknownWhat::BedLight => "bed_light",
        UnknownWhat::BedSoil => "bed_soil",
        UnknownWhat::BedWork => "bed_work",
        UnknownWhat::NurseCount => "nurse_count",
        UnknownWhat::NursePlanted => "nurse_planted",
        UnknownWhat::NurseSpacing => "nurse_spacing",
        UnknownWhat::NotedSickness => "noted_sickness",
        UnknownWhat::NotedUse => "noted_use",
    }
}

/// In which of its manners a cell was understood.
fn manner(taken: &TakenFor) -> u8 {
    match taken {
        TakenFor::Day(_) => 0,
        TakenFor::AboutDay(_) => 1,
        TakenFor::AgeDays(_) => 2,
        TakenFor::Count(_) => 3,
        TakenFor::AboutCount(_) => 4,
        TakenFor::Percent(_) => 5,
        TakenFor::Field(_) => 6,
        TakenFor::Spacing { .. } => 7,
        TakenFor::VolumeMl(_) => 8,
    }
}

/// "hardening 55, days since sowing 5": most first.
fn counted<K: Ord + Copy>(all: BTreeMap<K, usize>, name: impl Fn(K) -> String) -> String {
    let mut all: Vec<(K, usize)> = all.into_iter().collect();
    all.sort_by_key(|(key, number)| (std::cmp::Reverse(*number), *key));
    all.into_iter().map(|(key, number)| format!("{} {number}", name(key))).collect::<Vec<_>>().join(", ")
}
