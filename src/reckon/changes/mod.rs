//! What changed between two Pictures, and what changed it: found by living the days between once more, entry by entry,
//! until the verdict turns.

pub mod by_cause;
pub(crate) mod tally;

use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::fold::{Fold, FromThen};
use super::ledger::{Ledger, View};
use super::picture::{BedSpecies, Criterion, Passage, Picture, Rule, Source, Stage, Standing};
use crate::base::{BedName, Day, EntryId, SpeciesKey, TrayCode};
use crate::nursery::entry::Entry;

/// What changed a thing.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Cause {
    /// The entry, or the withdrawal of one.
    Entries(Arc<[EntryId]>),
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
    /// The questions that were answered otherwise at the moment at which it turned.
    pub flips: Arc<[Flip]>,
    /// The entry that turned it, or those of one command where a day brought very many; where empty, the day did.
    pub entries: Arc<[EntryId]>,
    /// The day on which it turned: the day the entry came into the book, or the day that was one too many.
    pub on: Day,
}

/// Every verdict that changed from one Picture to another. `from` is the book as it was in the first, with what came
/// after. Where a verdict turned more than once, what turned it to what it is now is named.
pub fn changes(before: &Picture, after: &Picture, from: &FromThen) -> Vec<Change> {
    let turned = all_turned(before, after);
    if turned.is_empty() {
        return Vec::new();
    }
    let mut replay = Replay::of(before, after, from);
    let on: Vec<Day> = turned.iter().map(|turned| replay.day_of(turned)).collect();
    let mut days: BTreeMap<Day, Vec<Moved>> = BTreeMap::new();
    for day in &on {
        if !days.contains_key(day) {
            let lived = replay.live(*day);
            days.insert(*day, lived);
        }
    }
    let mut all: Vec<Change> = Vec::with_capacity(turned.len());
    for (turned, on) in turned.into_iter().zip(on) {
        let mut change = change(turned, on, days.get(&on).map_or(&[], Vec::as_slice));
        // Of very many pairs that turned by the same answers these are kept once.
        if let Some(same) = all.last().filter(|last| last.flips == change.flips) {
            change.flips = same.flips.clone();
        }
        all.push(change);
    }
    all
}

/// What a verdict says.
#[derive(Clone, PartialEq)]
enum Verdict {
    Tray(Option<(bool, Stage)>),
    Bed(Option<Standing>),
    Pair(bool),
}

fn verdict(picture: &Picture, turned: &Turned) -> Verdict {
    match turned {
        Turned::Tray { tray, .. } => Verdict::Tray(picture.trays.get(tray).map(|tray| (tray.ready, tray.stage))),
        Turned::Bed { bed, species, .. } => Verdict::Bed(line(picture, bed, species).map(|line| line.standing)),
        Turned::Pair { tray, bed, .. } => Verdict::Pair(picture.pair(tray, bed).is_some_and(|pair| pair.fits)),
    }
}

fn questions<'a>(picture: &'a Picture, turned: &Turned) -> Option<Cow<'a, [Criterion]>> {
    match turned {
        Turned::Tray { tray, .. } => picture.trays.get(tray).map(|tray| Cow::Borrowed(&*tray.criteria)),
        Turned::Bed { bed, species, .. } => line(picture, bed, species).map(|line| Cow::Borrowed(&*line.criteria)),
        Turned::Pair { tray, bed, .. } => {
            picture.pair(tray, bed).map(|pair| Cow::Owned(pair.once().criteria.once().into_owned()))
        }
    }
}

fn line<'a>(picture: &'a Picture, bed: &BedName, species: &SpeciesKey) -> Option<&'a BedSpecies> {
    picture.beds.get(bed)?.species.iter().find(|line| line.species == *species)
}

/// Trays, then lines of beds, then pairs whose verdict is another.
pub(crate) fn all_turned(before: &Picture, after: &Picture) -> Vec<Turned> {
    let codes: BTreeSet<&TrayCode> = before.trays.keys().chain(after.trays.keys()).collect();
    let state = |picture: &Picture, code: &TrayCode| picture.trays.get(code).map(|tray| (tray.ready, tray.stage));
    let trays = codes.into_iter().map(|code| Turned::Tray {
        tray: code.clone(),
        was: state(before, code),
        is: state(after, code),
    });
    let lines = |picture: &Picture| -> Vec<(BedName, SpeciesKey)> {
        let beds = picture.beds.values();
        beds.flat_map(|bed| bed.species.iter().map(|line| (bed.name.clone(), line.species.clone()))).collect()
    };
    let lines: BTreeSet<(BedName, SpeciesKey)> = lines(before).into_iter().chain(lines(after)).collect();
    let beds = lines.into_iter().map(|(bed, species)| {
        let standing = |picture| line(picture, &bed, &species).map(|line| line.standing);
        let (was, is) = (standing(before), standing(after));
        Turned::Bed { bed, species, was, is }
    });
    // A pair that appears or goes without fitting is no change of a verdict: only those that fit are looked at.
    let names = |picture: &Picture| -> Vec<(TrayCode, BedName)> {
        let fitting = picture.pairs.iter().filter(|pair| pair.fits);
        fitting.map(|pair| (pair.tray().clone(), pair.bed().clone())).collect()
    };
    let names: BTreeSet<(TrayCode, BedName)> = names(before).into_iter().chain(names(after)).collect();
    let pairs = names.into_iter().map(|(tray, bed)| {
        let fits = |picture: &Picture| picture.pair(&tray, &bed).map(|pair| pair.fits);
        let (was, is) = (fits(before), fits(after));
        Turned::Pair { tray, bed, was, is }
    });
    let other = |turned: &Turned| verdict(before, turned) != verdict(after, turned);
    trays.chain(beds).chain(pairs).filter(other).collect()
}

/// A Picture on the way, and what led to it from the one before; nothing for the first.
struct Moved {
    picture: Picture,
    by: Arc<[EntryId]>,
}

/// The days between two Pictures, lived once more.
struct Replay<'a> {
    first: Day,
    last: Day,
    from: &'a FromThen,
    /// What came after the first Picture, by the day on which it came into the book, as it came.
    came: Vec<(Day, &'a Arc<Entry>)>,
    /// Pictures of the ends of days.
    ends: BTreeMap<Day, Picture>,
}

/// So many days are looked at one by one, from the last; of a longer time a turn is found by halving.
const DAYS_ONE_BY_ONE: i32 = 45;

/// Of so many entries of a day each is a step of its own; of more, each command.
const ENTRIES_ONE_BY_ONE: usize = 120;

impl<'a> Replay<'a> {
    fn of(before: &Picture, after: &Picture, from: &'a FromThen) -> Replay<'a> {
        let offset_h = after.site.nursery.on(after.day).map_or(0.0, |nursery| nursery.utc_offset_h.0);
        let (first, last) = (before.day, after.day);
        let came = |entry: &Entry| {
            let known_then = before.known.is_none_or(|known| entry.recorded <= known);
            // What was known counts from the day on which it happened.
            let recorded = if known_then { first } else { entry.recorded.day(offset_h) };
            recorded.max(entry.happened).max(first).min(last)
        };
        let belongs = |entry: &&Arc<Entry>| Ledger::belongs(View { day: last, known: after.known }, entry);
        let mut came: Vec<(Day, &Arc<Entry>)> =
            from.later.iter().filter(belongs).map(|entry| (came(entry), entry)).collect();
        came.sort_by(|a, b| (a.0, a.1.recorded, &a.1.id).cmp(&(b.0, b.1.recorded, &b.1.id)));
        let ends = BTreeMap::from([(last, after.clone()), (first, before.clone())]);
        Replay { first, last, from, came, ends }
    }

    fn end_of(&mut self, day: Day) -> &Picture {
        let (from, came) = (self.from, &self.came);
        self.ends.entry(day).or_insert_with(|| fold_of(from, came, day, |came| came <= day).picture())
    }

    /// The day on which a verdict turned to what it is now.
    fn day_of(&mut self, turned: &Turned) -> Day {
        let Some(is) = self.ends.get(&self.last).map(|after| verdict(after, turned)) else { return self.last };
        let mut day = self.last;
        while day > self.first && self.last.days_since(day) < DAYS_ONE_BY_ONE {
            if verdict(self.end_of(day.plus(-1)), turned) != is {
                return day;
            }
            day = day.plus(-1);
        }
        let (mut was_other, mut is_this) = (self.first, day);
        while is_this.days_since(was_other) > 1 {
            let middle = was_other.plus(is_this.days_since(was_other) / 2);
            if verdict(self.end_of(middle), turned) == is { is_this = middle } else { was_other = middle }
        }
        is_this
    }

    /// One day: the end of the day before, the morning with nothing new in the book, then each entry that came.
    fn live(&mut self, day: Day) -> Vec<Moved> {
        let begins = day.plus(-1).max(self.first);
        let mut moved = vec![Moved { picture: self.end_of(begins).clone(), by: Arc::default() }];
        let new: Vec<Arc<Entry>> =
            self.came.iter().filter(|(came, _)| *came == day).map(|(_, entry)| Arc::clone(entry)).collect();
        let last = View { day: self.last, known: self.ends.get(&self.last).and_then(|after| after.known) };
        let now_without = || self.from.now_without(last, &new).filter(|_| day == self.last);
        let mut fold = now_without().unwrap_or_else(|| fold_of(self.from, &self.came, day, |came| came < day));
        moved.push(Moved { picture: fold.picture(), by: Arc::default() });
        // A whole nursery taken in from a sheet is one step.
        let one_by_one = new.len() <= ENTRIES_ONE_BY_ONE;
        let together =
            |a: &Arc<Entry>, b: &Arc<Entry>| !one_by_one && a.id.device == b.id.device && a.command == b.command;
        let mut steps = new.chunk_by(together).peekable();
        while let Some(step) = steps.next() {
            // With its last step the day is as it ended: what was drawn of that is not drawn again.
            let end = self.ends.get(&day).filter(|_| steps.peek().is_none()).cloned();
            let picture = end.unwrap_or_else(|| {
                fold.add(step.iter().cloned());
                fold.picture()
            });
            moved.push(Moved { picture, by: step.iter().map(|entry| entry.id.clone()).collect() });
        }
        moved
    }
}

/// The fold of a day with what came into the book on the days that count.
fn fold_of(from: &FromThen, came: &[(Day, &Arc<Entry>)], day: Day, counts: impl Fn(Day) -> bool) -> Fold {
    let there: BTreeSet<&EntryId> = came.iter().filter(|(came, _)| counts(*came)).map(|(_, entry)| &entry.id).collect();
    from.on(day, |entry| there.contains(&entry.id))
}

/// The last step of a day at which a verdict turned to what it is, and the questions that turned with it.
fn change(turned: Turned, on: Day, lived: &[Moved]) -> Change {
    let is = lived.last().map(|moved| verdict(&moved.picture, &turned));
    let turns = |pair: &&[Moved]| {
        let [before, after] = pair else { return false };
        let after = Some(verdict(&after.picture, &turned));
        after == is && Some(verdict(&before.picture, &turned)) != is
    };
    let Some([before, after]) = lived.windows(2).rev().find(turns) else {
        return Change { turned, flips: Arc::default(), entries: Arc::default(), on };
    };
    let after = gauge_read(before, after, lived, &turned).unwrap_or(after);
    let entries = after.by.clone();
    let flips = match (questions(&before.picture, &turned), questions(&after.picture, &turned)) {
        (Some(was), Some(is)) => flips(&was, &is, &entries),
        // What was just made has no answers to change.
        (None, _) | (_, None) => Arc::default(),
    };
    Change { turned, flips, entries, on }
}

/// A morning without a gauge line is unknown for some hours: what it turned, the line of that day turned, once written.
fn gauge_read<'a>(before: &Moved, after: &Moved, lived: &'a [Moved], turned: &Turned) -> Option<&'a Moved> {
    let water = |moved: &Moved| {
        let asked = questions(&moved.picture, turned)?;
        Some(asked.iter().find(|asked| asked.rule() == Rule::Water)?.met())
    };
    let by_morning = after.by.is_empty() && water(after) == Some(None) && water(before) != Some(None);
    let read = || lived.iter().find(|moved| !moved.by.is_empty() && water(moved).is_some_and(|met| met.is_some()));
    by_morning.then(read).flatten()
}

fn flips(was: &[Criterion], is: &[Criterion], entries: &Arc<[EntryId]>) -> Arc<[Flip]> {
    let rules: BTreeSet<Rule> = was.iter().chain(is).map(|criterion| criterion.rule()).collect();
    let flips = rules.into_iter().filter_map(|rule| {
        let of = |all: &'_ [Criterion]| all.iter().position(|criterion| criterion.rule() == rule);
        let (was, is) = (of(was).map(|at| &was[at]), of(is).map(|at| &is[at]));
        let met = |criterion: Option<&Criterion>| criterion.and_then(|criterion| criterion.met());
        let blocks = |criterion: Option<&Criterion>| criterion.is_some_and(|criterion| criterion.blocks);
        if met(was) == met(is) && blocks(was) == blocks(is) {
            return None;
        }
        let cause =
            if entries.is_empty() { Cause::Passed(rule.passage(met(is))) } else { Cause::Entries(entries.clone()) };
        Some(Flip {
            rule,
            was: met(was),
            is: met(is),
            blocked: blocks(was),
            blocks: blocks(is),
            cause,
            source: is.or(was).map(|criterion| criterion.source.clone()).unwrap_or_default(),
        })
    });
    flips.collect()
}
