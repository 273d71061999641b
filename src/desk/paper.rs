//! The paper of a walk through the one door: its lines are judged like what is written by hand, whole or not at all, and
//! everything that cannot stand is named at once.

use std::collections::{BTreeMap, BTreeSet};

use serde_json::Value;

use super::exchange::with_lines;
use super::refusal::Refused;
use super::{Desk, DeskError, ImportError, Imported, Recorded, Refusal};
use crate::base::{BedName, Day, LotCode, SpeciesKey, TrayCode, text, word::Word};
use crate::nursery::entry::shape::NameOf;
use crate::nursery::envelope::Draft;
use crate::nursery::species::Role;
use crate::reckon::bed::positions::grid;
use crate::reckon::forecast::ForecastBasis;
use crate::reckon::picture::DoubtKind;
use crate::reckon::round::{Task, round_by};
use crate::reckon::stock::TrayStory;
use crate::share::LineFaults;
use crate::share::{InBed, KnownNames, PaperRead, ReadFault, decode_sheet, read_any_day, read_done_day, read_paper};

/// How often lines are judged again without those that were refused; more faults than this one behind the other nobody
/// makes in a tray on one day.
const MOST_PASSES: usize = 24;

impl Desk {
    /// Takes the short lines of a walk whole or not at all, as of `happened` (today where none is said). The bytes are
    /// read as those of a sheet are.
    pub fn write_sheet(
        &mut self,
        bytes: &[u8],
        happened: Option<Day>,
        who: &str,
        only_try: bool,
    ) -> Result<Imported, ImportError> {
        self.refresh().map_err(ImportError::Desk)?;
        let text = decode_sheet(bytes).map_err(|faults| ImportError::Read(ReadFault::Lines(faults)))?;
        let mut read = self.read_paper(&text, happened, who);
        read.lines.iter_mut().for_each(|(_, draft)| self.settle_nurse_row(draft));
        if !read.faults.is_empty() {
            let lines = without_names(read.lines, &read.doubtful);
            let refused = self.every_refusal(lines).map_err(ImportError::Desk)?;
            return Err(ImportError::Lines(read.faults, refused));
        }
        let recorded = self.take_numbered(read.lines.clone(), only_try)?;
        Ok(Imported { lines: read.lines.len(), recorded, drafts: read.lines.len(), read: read.lines })
    }

    /// What one line says, as a short form or in a person's own words; nothing is written.
    ///
    /// # Errors
    /// The file, where what another process wrote cannot be taken in; the fault of the line.
    pub(crate) fn read_line(
        &mut self,
        line: &str,
        happened: Option<Day>,
        who: &str,
    ) -> Result<Result<Vec<Draft>, LineFaults>, DeskError> {
        self.refresh()?;
        let read = self.read_paper(line, happened, who);
        let mut drafts: Vec<Draft> = read.lines.into_iter().map(|(_, draft)| draft).collect();
        drafts.iter_mut().for_each(|draft| self.settle_nurse_row(draft));
        Ok(read.faults.or(drafts))
    }

    fn read_paper(&self, text: &str, happened: Option<Day>, who: &str) -> PaperRead {
        let today = self.now().today;
        let fold = self.fold();
        let is_seedbed =
            |tray: &str| fold.trays().iter().any(|(code, story)| code.as_str() == tray && self.holds_seed(story));
        let species = &fold.site().species;
        let known = KnownNames {
            species_of: &|name_of, name| self.species_of(name_of, name),
            standing: &|tray| self.standing_in(tray),
            seeds: &|lot| self.seeds_in(lot),
            is_seedbed: &is_seedbed,
            called: &|written| species.named_just(written),
            near: &|written| species.named_nearly(written),
            find: &|written| species.find(written),
            several: &|written| species.resolve(written).several(),
            in_bed: &|bed| self.in_bed(bed),
            task: &|written| self.task_named(written),
            ..self.known_names()
        };
        read_paper(text, &known, happened.unwrap_or(today), today, who)
    }

    /// Whether a tray, a bed, a place or a lot bears a name; capitals and accents do not count.
    pub(crate) fn is_a_name(&self, written: &str) -> bool {
        let (known, wanted) = (self.known_names(), text::folded(written));
        let mut all = known.trays.iter().chain(&known.beds).chain(&known.places).chain(&known.lots);
        all.any(|name| text::folded(name) == wanted)
    }

    /// The names that short lines may speak of.
    pub(super) fn known_names(&self) -> KnownNames<'static> {
        let fold = self.fold();
        let made = fold.trays().iter().filter(|(_, story)| story.origin.is_some());
        let set = fold.beds().iter().filter(|(_, story)| story.layout.each().next().is_some());
        let received = fold.lots().iter().filter(|(_, story)| story.received.is_some());
        let described = fold.site().places.keys().map(ToString::to_string);
        // A bench that a tray stands on is known by name before anybody describes it.
        let stood_on = fold.trays().values().flat_map(|story| &story.places).map(|spell| spell.what.to_string());
        let places: BTreeSet<String> = described.chain(stood_on).collect();
        KnownNames {
            trays: made.map(|(code, _)| code.to_string()).collect(),
            beds: set.map(|(name, _)| name.to_string()).collect(),
            places: places.into_iter().collect(),
            lots: received.map(|(code, _)| code.to_string()).collect(),
            containers: fold.site().containers.keys().map(ToString::to_string).collect(),
            species_of: &|_, _| None,
            standing: &|_| None,
            seeds: &|_| None,
            is_seedbed: &|_| false,
            called: &|_| Vec::new(),
            near: &|_| Vec::new(),
            find: &|_| None,
            several: &|_| Vec::new(),
            in_bed: &|_| InBed::default(),
            task: &|_| Err(Vec::new()),
        }
    }

    /// The species of a tray or a lot.
    fn species_of(&self, name_of: NameOf, name: &str) -> Option<SpeciesKey> {
        let fold = self.fold();
        match name_of {
            NameOf::Tray => fold.trays().get(&TrayCode::new(name).ok()?)?.species.clone(),
            NameOf::Lot => fold.lots().get(&LotCode::new(name).ok()?)?.species.clone(),
            NameOf::Bed | NameOf::Place | NameOf::Container | NameOf::Field => None,
        }
    }

    fn standing_in(&self, tray: &str) -> Option<u32> {
        let story = self.fold().trays().get(&TrayCode::new(tray).ok()?)?;
        u32::try_from(story.accounts.standing).ok()
    }

    fn seeds_in(&self, lot: &str) -> Option<u32> {
        let fold = self.fold();
        let story = fold.lots().get(&LotCode::new(lot).ok()?)?;
        story.seeds_left
    }

    /// What is planned, planted and nursed in a bed.
    fn in_bed(&self, bed: &str) -> InBed {
        let Some(story) = BedName::new(bed).ok().and_then(|name| self.fold().beds().get(&name)) else {
            return InBed::default();
        };
        let planned = story.layout.on(self.now().today).into_iter().flat_map(|set| &set.plan);
        let planned = planned.map(|line| line.species.clone());
        let planted = story.cohorts.iter().filter_map(|cohort| cohort.species.clone());
        let plants: BTreeSet<SpeciesKey> = planned.chain(planted).collect();
        let nurses: BTreeSet<SpeciesKey> = story.nurses.iter().map(|nurse| nurse.nurse.clone()).collect();
        let places =
            story.layout.on(self.now().today).map(|set| set.plan.iter().map(|line| grid(set, line).len()).sum());
        let places = places.and_then(|places: usize| u32::try_from(places).ok()).filter(|places| *places > 0);
        let is_planted =
            story.cohorts.iter().any(|cohort| cohort.living > 0) || story.nurses.iter().any(|nurse| nurse.alive > 0);
        InBed { plants: plants.into_iter().collect(), nurses: nurses.into_iter().collect(), places, is_planted }
    }

    /// The stable name of a task as the round gives it, read in either language; else the nearest that are due.
    pub(crate) fn task_named(&self, written: &str) -> Result<String, Vec<String>> {
        // A round by the handbook alone may ask for other things than one by what was learned here.
        let picture = self.picture();
        let due = [ForecastBasis::OwnRecords, ForecastBasis::Handbook]
            .map(|forecast_basis| round_by(&picture, forecast_basis));
        let due = due.into_iter().flat_map(|round| round.stops.into_iter().chain(round.can_wait));
        let mut ids: Vec<String> = due.map(|stop| stop.id).collect();
        let mut seen = BTreeSet::new();
        ids.retain(|id| seen.insert(id.clone()));
        ids.extend(self.fold().site().given_up.iter().map(|gone| gone.task.clone()));
        let wanted = text::folded(written);
        if let Some(id) = ids.iter().find(|id| text::folded(id) == wanted) {
            return Ok(id.clone());
        }
        let words: Vec<&str> = written.split_whitespace().collect();
        let task = (1..=MOST_WORDS_OF_A_TASK.min(words.len())).rev().find_map(|taken| {
            let (task, about) = words.split_at(taken);
            Task::read(&task.join(" ")).map(|task| (task, about.join(" ")))
        });
        let known = self.known_names();
        let names = || known.trays.iter().chain(&known.beds).chain(&known.places).chain(&known.lots);
        if let Some((task, about)) = task {
            let id = if about.is_empty() { task.spelled().to_string() } else { format!("{} {about}", task.spelled()) };
            let folded = text::folded(&id);
            if let Some(due) = ids.iter().find(|due| text::folded(due) == folded) {
                return Ok(due.clone());
            }
            // A task may be given up before it is due: what it is about must be there.
            let about = text::folded(&about);
            if let Some(name) = names().find(|name| text::folded(name) == about) {
                return Ok(format!("{} {name}", task.spelled()));
            }
        }
        let mut nearest = crate::base::name_search::nearest(written, ids.iter().map(String::as_str));
        if nearest.is_empty() {
            nearest = ids.into_iter().take(MOST_TASKS_SHOWN).collect();
        }
        Err(nearest)
    }

    /// Refuses a task that nobody knows; gives a draft the stable name of the one that is meant.
    pub(crate) fn settle_task(&self, draft: &mut Draft) -> Result<(), DeskError> {
        if draft.kind != "let_go" {
            return Ok(());
        }
        let written = draft.body.get("task").and_then(|task| task.as_str()).unwrap_or_default().to_string();
        let task = self
            .task_named(&written)
            .map_err(|nearest| DeskError::from(Refusal::UnknownTask { task: written, nearest }))?;
        draft.body.insert("task".into(), task.into());
        Ok(())
    }

    /// Plants of a tray of nurse plants that go out begin a row of nurse plants: how far apart is taken from the bed's plan,
    /// else from the row of them that stands there, else from their profile, where nobody wrote it.
    pub(crate) fn settle_nurse_row(&self, draft: &mut Draft) {
        let says = |field: &str| draft.body.contains_key(field);
        if draft.kind != "outplanted" || says("row_m") || says("in_row_m") {
            return;
        }
        if let Some((row_m, in_row_m)) = self.spacing_of_nurses(draft) {
            draft.body.insert("row_m".into(), Value::from(row_m));
            draft.body.insert("in_row_m".into(), Value::from(in_row_m));
        }
    }

    fn spacing_of_nurses(&self, draft: &Draft) -> Option<(f64, f64)> {
        let named = |field: &str| draft.body.get(field).and_then(Value::as_str);
        let fold = self.fold();
        let species = fold.trays().get(&TrayCode::new(named("tray")?).ok()?)?.species.as_ref()?;
        let profile = fold.site().profile(species)?;
        let bed = BedName::new(named("bed")?).ok().and_then(|name| fold.beds().get(&name));
        let layout = bed.and_then(|story| story.layout.on(draft.happened));
        let is_it = |line: &SpeciesKey| line == species || fold.site().species_key(line).as_ref() == Some(species);
        let planned = layout.and_then(|layout| layout.plan.iter().find(|line| is_it(&line.species)));
        let usual = || Some((profile.row_m.as_ref()?.value, profile.in_row_m.as_ref()?.value));
        let planned = planned.map(|line| (line.row_m.0, line.in_row_m.0));
        // Whatever the species is else: where it stands as a nurse plant it joins its row.
        let row = bed.and_then(|story| story.nurses.iter().rev().find(|row| row.alive > 0 && row.nurse == *species));
        let row = row.map(|row| (row.row_m, row.in_row_m));
        match profile.role {
            Role::Nurse => planned.or(row).or_else(usual),
            _ if planned.is_none() => row,
            _ => None,
        }
    }

    /// Whether seedlings of a tray are pricked out: seed is still due in it, or it stands in a seedbed.
    fn holds_seed(&self, story: &TrayStory) -> bool {
        let container = story.container().and_then(|spell| spell.what.as_ref());
        story.seed_is_due(self.now().today) || container.is_some_and(|name| reads_like_seedbed(name.as_str()))
    }

    /// Writes numbered drafts, or only tries them; where they are refused, everything that cannot stand is named.
    pub(super) fn take_numbered(
        &mut self,
        lines: Vec<(usize, Draft)>,
        only_try: bool,
    ) -> Result<Recorded, ImportError> {
        if lines.is_empty() {
            return Ok(Recorded::default());
        }
        let drafts: Vec<Draft> = lines.iter().map(|(_, draft)| draft.clone()).collect();
        let taken = if only_try {
            self.rehearse(drafts).map(|doubts| Recorded { doubts, ..Recorded::default() })
        } else {
            self.record(drafts)
        };
        match taken {
            Ok(recorded) => Ok(recorded),
            Err(DeskError::Refused(_)) => {
                let refused = self.every_refusal(lines).map_err(ImportError::Desk)?;
                Err(ImportError::Desk(DeskError::Refused(refused)))
            }
            Err(fault @ DeskError::Journal(_)) => Err(ImportError::Desk(fault)),
        }
    }

    /// Everything the books refuse of some lines. What only follows from another fault is not named: of several lines
    /// that one tray, lot or bed cannot bear the first counts, and the others are judged again without it.
    pub(super) fn every_refusal(&mut self, mut lines: Vec<(usize, Draft)>) -> Result<Vec<Refused>, DeskError> {
        let mut all: Vec<Refused> = Vec::new();
        for _ in 0..MOST_PASSES {
            if lines.is_empty() {
                break;
            }
            let drafts: Vec<Draft> = lines.iter().map(|(_, draft)| draft.clone()).collect();
            // Refusals are numbered by draft, from 1; of a single draft by 0.
            let numbers: Vec<usize> = (0..lines.len()).collect();
            let refused = match self.rehearse(drafts).map_err(|fault| with_lines(fault, &numbers)) {
                Ok(_) => break,
                Err(DeskError::Refused(refused)) => refused,
                Err(fault @ DeskError::Journal(_)) => return Err(fault),
            };
            let first = first_of_each(refused, &lines);
            let mut doubtful: BTreeSet<String> = BTreeSet::new();
            for one in &first {
                if let Some((line, draft)) = lines.get(one.line) {
                    doubtful.extend(made_by(draft));
                    all.push(Refused { line: *line, why: one.why.clone() });
                }
            }
            let gone: BTreeSet<usize> = first.iter().map(|one| one.line).collect();
            let rest = lines.into_iter().enumerate().filter(|(i, _)| !gone.contains(i)).map(|(_, line)| line).collect();
            lines = without_names(rest, &doubtful);
        }
        all.sort_by_key(|one| one.line);
        all.dedup();
        Ok(all)
    }
}

/// The most words of a task.
const MOST_WORDS_OF_A_TASK: usize = 3;
/// Tasks that are named where none is near.
const MOST_TASKS_SHOWN: usize = 3;

/// Of the refusals that one account cannot bear, the one that happened first; all others.
fn first_of_each(refused: Vec<Refused>, lines: &[(usize, Draft)]) -> Vec<Refused> {
    let mut kept = Vec::new();
    let mut first: BTreeMap<String, ((Option<Day>, usize), Refused)> = BTreeMap::new();
    for one in refused {
        match account_of(&one.why) {
            None => kept.push(one),
            Some(account) => {
                let key = (lines.get(one.line).map(|(_, draft)| draft.happened), one.line);
                let earlier = first.get(&account).is_some_and(|(other, _)| *other <= key);
                if !earlier {
                    first.insert(account, (key, one));
                }
            }
        }
    }
    kept.extend(first.into_values().map(|(_, one)| one));
    kept
}

/// The account that cannot bear a line, where that is why it is refused.
fn account_of(why: &Refusal) -> Option<String> {
    let Refusal::Book(doubt) = why else { return None };
    if let DoubtKind::MoreOutThanStood { tray, .. } = &doubt.kind {
        Some(format!("tray {tray}"))
    } else if let DoubtKind::MoreSeedThanHeld { lot, .. } = &doubt.kind {
        Some(format!("lot {lot}"))
    } else if let DoubtKind::MoreDeadThanLived { bed, species, .. }
    | DoubtKind::MoreCutThanStood { bed, nurse: species, .. } = &doubt.kind
    {
        Some(format!("bed {bed} {species}"))
    } else {
        None
    }
}

/// Names that an entry brings into the book.
fn made_by(draft: &Draft) -> Option<String> {
    let field = match draft.kind.as_str() {
        "sown" | "plants_received" | "relabelled" => "tray",
        "moved_on" => "to",
        "lot_received" => "lot",
        "bed_set" => "bed",
        _ => return None,
    };
    draft.body.get(field).and_then(|name| name.as_str()).map(str::to_string)
}

/// The lines that speak of none of some names.
fn without_names(lines: Vec<(usize, Draft)>, names: &BTreeSet<String>) -> Vec<(usize, Draft)> {
    let speaks =
        |draft: &Draft| draft.body.values().filter_map(|value| value.as_str()).any(|name| names.contains(name));
    lines.into_iter().filter(|(_, draft)| !speaks(draft)).collect()
}

/// The day somebody means: `yesterday`, `ayer`, `12/11`, `24 nov`, `2026-11-20`.
pub(crate) fn day_said(written: &str, today: Day) -> Result<Day, super::Reason> {
    read_done_day(written, today)
}

/// The day somebody means to look at or to wait for, past or to come: as [`day_said`], and `tomorrow`, `mañana`, `+7`.
pub(crate) fn day_asked(written: &str, today: Day) -> Result<Day, super::Reason> {
    read_any_day(written, today)
}

/// Whether the name of a container is that of a seedbed.
fn reads_like_seedbed(name: &str) -> bool {
    let folded = text::folded(name);
    ["seedbed", "germin", "semillero", "almacigo", "strip"].iter().any(|word| folded.contains(word))
}
