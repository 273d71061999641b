//! What changed between two Pictures, and what changed it: the entries written meanwhile, or the days that passed.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::picture::{BedSpecies, Criterion, PairPicture, Picture, Rule, Source, Stage, Standing, TrayPicture};
use crate::base::{BedName, EntryId, SpeciesKey, TrayCode};
use crate::nursery::entry::subject::{Subject, subjects};
use crate::nursery::entry::{BookEntry, Entry, What};
use crate::words;

words! {
    /// What the passing of days alone brings.
    Passage {
        /// Old enough.
        OldEnough: "old_enough";
        /// The container's holding time ended.
        HoldingTime: "holding_time";
        /// The last day of bare roots passed.
        LastDay: "last_day";
        /// Hardened long enough, or the last days' light moved on.
        Hardened: "hardened";
        /// New leaves hardened.
        LeavesHardened: "leaves_hardened";
        /// A hold or a waiting time ended.
        HoldEnded: "hold_ended";
        /// A reading grew too old.
        ReadingOld: "reading_old";
        /// Ground work grew over.
        WorkOld: "work_old";
        /// The rains began, ended, or fell too long ago.
        Rains: "rains";
        /// Something else that days change.
        Time: "time";
    }
}

/// What changed a thing.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Cause {
    /// Entries written, or taken back, meanwhile.
    Entries(Vec<EntryId>),
    /// The day.
    Passed(Passage),
}

/// A question that is answered otherwise than before.
#[derive(Clone, PartialEq, Debug)]
pub struct Flip {
    /// The question.
    pub rule: Rule,
    /// Whether it was met.
    pub was: Option<bool>,
    /// Whether it is.
    pub is: Option<bool>,
    /// Whether it held things back before.
    pub blocked: bool,
    /// Whether it does now.
    pub blocks: bool,
    /// What changed it.
    pub cause: Cause,
    /// The rule's source.
    pub source: Source,
}

/// A verdict that is another than before.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Turned {
    /// A tray: ready and stage before (none where it did not exist) and now (none where it is gone from the book).
    Tray {
        /// The tray.
        tray: TrayCode,
        /// Ready and stage before.
        was: Option<(bool, Stage)>,
        /// Ready and stage now.
        is: Option<(bool, Stage)>,
    },
    /// The standing of a bed for a species.
    Bed {
        /// The bed.
        bed: BedName,
        /// The species.
        species: SpeciesKey,
        /// Before; none where it was not planned.
        was: Option<Standing>,
        /// Now; none where it is not planned any more.
        is: Option<Standing>,
    },
    /// Whether a tray fits a bed.
    Pair {
        /// The tray.
        tray: TrayCode,
        /// The bed.
        bed: BedName,
        /// Before; none where there was no such pair.
        was: Option<bool>,
        /// Now; none where there is none any more.
        is: Option<bool>,
    },
}

/// A verdict that changed, with what changed it.
#[derive(Clone, PartialEq, Debug)]
pub struct Change {
    /// The verdict.
    pub turned: Turned,
    /// The questions that are answered otherwise.
    pub flips: Vec<Flip>,
    /// The entries that changed it; where empty, only the day did.
    pub entries: Vec<EntryId>,
}

/// What is new since the first Picture.
struct News<'a> {
    ids: BTreeSet<&'a EntryId>,
    entries: Vec<&'a Entry>,
}

impl<'a> News<'a> {
    fn of(before: &Picture, after: &Picture, entries: &'a [Arc<Entry>]) -> News<'a> {
        let known_then = |entry: &Entry| before.known.is_none_or(|known| entry.recorded <= known);
        let known_now = |entry: &Entry| after.known.is_none_or(|known| entry.recorded <= known);
        let withdraws = |entry: &Entry| matches!(entry.what, What::Book(BookEntry::Withdrawn(_)));
        let new = entries.iter().map(|entry| &**entry).filter(|entry| {
            // A withdrawal acts on every day: only when it was known counts.
            let then = known_then(entry) && (withdraws(entry) || entry.happened <= before.day);
            let now = known_now(entry) && (withdraws(entry) || entry.happened <= after.day);
            now && !then
        });
        let entries: Vec<&Entry> = new.collect();
        News { ids: entries.iter().map(|entry| &entry.id).collect(), entries }
    }

    /// New entries among those a question rests on, and new withdrawals of what it rested on.
    fn behind(&self, was: Option<&Criterion>, is: Option<&Criterion>) -> Vec<EntryId> {
        let rests = is.into_iter().flat_map(|criterion| &criterion.entries).filter(|id| self.ids.contains(id));
        let mut all: Vec<EntryId> = rests.cloned().collect();
        let rested: BTreeSet<&EntryId> = was.into_iter().flat_map(|criterion| &criterion.entries).collect();
        for entry in &self.entries {
            if let What::Book(BookEntry::Withdrawn(taken)) = &entry.what
                && taken.entries.iter().any(|target| rested.contains(target))
            {
                all.push(entry.id.clone());
            }
        }
        all.sort();
        all.dedup();
        all
    }

    fn about(&self, wanted: &[Subject]) -> Vec<EntryId> {
        let is_about = |entry: &&&Entry| subjects(&entry.what).iter().any(|subject| wanted.contains(subject));
        self.entries.iter().filter(is_about).map(|entry| entry.id.clone()).collect()
    }

    fn flips(&self, was: &[Criterion], is: &[Criterion], about: &[Subject]) -> Vec<Flip> {
        let mut rules: Vec<Rule> = was.iter().chain(is).map(|criterion| criterion.rule).collect();
        rules.sort();
        rules.dedup();
        let of = |all: &'_ [Criterion], rule: Rule| all.iter().position(|criterion| criterion.rule == rule);
        let flips = rules.into_iter().filter_map(|rule| {
            let (was, is) = (of(was, rule).map(|at| &was[at]), of(is, rule).map(|at| &is[at]));
            let met = |criterion: Option<&Criterion>| criterion.and_then(|criterion| criterion.met);
            let blocks = |criterion: Option<&Criterion>| criterion.is_some_and(|criterion| criterion.blocks);
            if met(was) == met(is) && blocks(was) == blocks(is) {
                return None;
            }
            Some(Flip {
                rule,
                was: met(was),
                is: met(is),
                blocked: blocks(was),
                blocks: blocks(is),
                cause: self.cause(rule, was, is, about),
                source: is.or(was).map(|criterion| criterion.source.clone()).unwrap_or_default(),
            })
        });
        flips.collect()
    }

    fn cause(&self, rule: Rule, was: Option<&Criterion>, is: Option<&Criterion>, about: &[Subject]) -> Cause {
        let mut entries = self.behind(was, is);
        let (passage, kinds) = passage(rule);
        if entries.is_empty() {
            let bears = |entry: &&&Entry| kinds.contains(&entry.what.kind());
            let is_about = |entry: &&&Entry| subjects(&entry.what).iter().any(|subject| about.contains(subject));
            entries = self.entries.iter().filter(bears).filter(is_about).map(|entry| entry.id.clone()).collect();
        }
        if entries.is_empty() { Cause::Passed(passage) } else { Cause::Entries(entries) }
    }
}

/// Kinds of entry that move the plants of a tray or a bed.
const NUMBERS: &[&str] = &[
    "counted",
    "lost",
    "culled",
    "stocktaken",
    "moved_on",
    "given_out",
    "outplanted",
    "resown",
    "plants_lost",
    "survival_counted",
    "plants_found",
    "sown_in_bed",
    "bed_set",
    "positions_blocked",
];

/// What days alone change in a question, and the kinds of entry that bear on it without standing in its answer: a
/// release, a felling, plants that came or went.
fn passage(rule: Rule) -> (Passage, &'static [&'static str]) {
    match rule {
        Rule::DaysSinceSowing => (Passage::OldEnough, &["resown", "moved_on"]),
        Rule::DaysInContainer => (Passage::HoldingTime, &["moved_on", "container_set"]),
        Rule::GoodUntil => (Passage::LastDay, &[]),
        Rule::Hardening | Rule::ExposureStep => {
            (Passage::Hardened, &["carried", "shade_set", "watering_set", "flushed"])
        }
        Rule::Flush => (Passage::LeavesHardened, &[]),
        Rule::Held => (Passage::HoldEnded, &["released"]),
        Rule::Treated => (Passage::HoldEnded, &[]),
        Rule::LightNow | Rule::LightComing | Rule::Soil => (Passage::ReadingOld, &["nurse_cut"]),
        Rule::Cleared | Rule::Holes | Rule::Weeded | Rule::Mulched | Rule::Fenced => (Passage::WorkOld, &[]),
        Rule::Water | Rule::Season => (Passage::Rains, &[]),
        Rule::Height | Rule::Collar | Rule::Leaves | Rule::Plug | Rule::Living | Rule::Load | Rule::OpenPositions => {
            (Passage::Time, NUMBERS)
        }
    }
}

/// Every verdict that changed from one Picture to another. `entries` are the entries of the book, in any order: those
/// that the first did not use and the second does are the news.
pub fn changes(before: &Picture, after: &Picture, entries: &[Arc<Entry>]) -> Vec<Change> {
    let news = News::of(before, after, entries);
    let mut all = trays(&news, before, after);
    all.extend(beds(&news, before, after));
    all.extend(pairs(&news, before, after));
    all
}

fn change(news: &News<'_>, turned: Turned, flips: Vec<Flip>, about: &[Subject]) -> Change {
    let mut entries: Vec<EntryId> = Vec::new();
    for flip in &flips {
        if let Cause::Entries(of_flip) = &flip.cause {
            entries.extend(of_flip.iter().cloned());
        }
    }
    if flips.is_empty() {
        entries = news.about(about);
    }
    entries.sort();
    entries.dedup();
    Change { turned, flips, entries }
}

fn trays(news: &News<'_>, before: &Picture, after: &Picture) -> Vec<Change> {
    let codes: BTreeSet<&TrayCode> = before.trays.keys().chain(after.trays.keys()).collect();
    let changed = codes.into_iter().filter_map(|code| {
        let (was, is) = (before.trays.get(code), after.trays.get(code));
        let verdict = |tray: Option<&Arc<TrayPicture>>| tray.map(|tray| (tray.ready, tray.stage));
        if verdict(was) == verdict(is) {
            return None;
        }
        let about = around(code, is.or(was));
        let questions = |tray: Option<&Arc<TrayPicture>>| tray.map(|tray| tray.criteria.clone()).unwrap_or_default();
        // A tray that was just made has no answers to change.
        let flips = if was.is_some() { news.flips(&questions(was), &questions(is), &about) } else { Vec::new() };
        let turned = Turned::Tray { tray: code.clone(), was: verdict(was), is: verdict(is) };
        Some(change(news, turned, flips, &about))
    });
    changed.collect()
}

/// A tray, its place and its lots: what holds them holds the tray.
fn around(code: &TrayCode, tray: Option<&Arc<TrayPicture>>) -> Vec<Subject> {
    let mut about = vec![Subject::Tray(code.clone())];
    about.extend(tray.and_then(|tray| tray.place.clone()).map(Subject::Place));
    about.extend(tray.into_iter().flat_map(|tray| tray.lots.iter().cloned().map(Subject::Lot)));
    about
}

fn beds(news: &News<'_>, before: &Picture, after: &Picture) -> Vec<Change> {
    let lines = |picture: &Picture| -> Vec<(BedName, SpeciesKey)> {
        let all =
            picture.beds.values().flat_map(|bed| bed.species.iter().map(|l| (bed.name.clone(), l.species.clone())));
        all.collect()
    };
    let all: BTreeSet<(BedName, SpeciesKey)> = lines(before).into_iter().chain(lines(after)).collect();
    let changed = all.into_iter().filter_map(|(bed, species)| {
        let (was, is) = (line(before, &bed, &species), line(after, &bed, &species));
        let standing = |line: Option<&BedSpecies>| line.map(|line| line.standing);
        if standing(was) == standing(is) {
            return None;
        }
        let about = [Subject::Bed(bed.clone())];
        let questions = |line: Option<&BedSpecies>| line.map(|line| line.criteria.clone()).unwrap_or_default();
        let flips = if was.is_some() { news.flips(&questions(was), &questions(is), &about) } else { Vec::new() };
        let turned = Turned::Bed { bed, species, was: standing(was), is: standing(is) };
        Some(change(news, turned, flips, &about))
    });
    changed.collect()
}

fn line<'a>(picture: &'a Picture, bed: &BedName, species: &SpeciesKey) -> Option<&'a BedSpecies> {
    picture.beds.get(bed)?.species.iter().find(|line| line.species == *species)
}

fn named(picture: &Picture) -> BTreeMap<(TrayCode, BedName), &Arc<PairPicture>> {
    picture.pairs.iter().map(|pair| ((pair.tray.clone(), pair.bed.clone()), pair)).collect()
}

fn pairs(news: &News<'_>, before: &Picture, after: &Picture) -> Vec<Change> {
    let (before_pairs, after_pairs) = (named(before), named(after));
    let all: BTreeSet<&(TrayCode, BedName)> = before_pairs.keys().chain(after_pairs.keys()).collect();
    let changed = all.into_iter().filter_map(|key| {
        let (was, is) = (before_pairs.get(key).copied(), after_pairs.get(key).copied());
        let (tray, bed) = key.clone();
        let fits = |pair: Option<&Arc<PairPicture>>| pair.is_some_and(|pair| pair.fits);
        // A pair that appears or goes without fitting is no change of a verdict.
        if fits(was) == fits(is) {
            return None;
        }
        let about = [Subject::Tray(tray.clone()), Subject::Bed(bed.clone())];
        let flips = match (was, is) {
            (Some(was), Some(is)) => news.flips(&was.criteria, &is.criteria, &about),
            (None, _) | (_, None) => Vec::new(),
        };
        let turned = Turned::Pair { tray, bed, was: was.map(|pair| pair.fits), is: is.map(|pair| pair.fits) };
        Some(change(news, turned, flips, &about))
    });
    changed.collect()
}
