//! Changes put together by what turned them, losses first.

use std::cmp::{Ordering, Reverse};
use std::collections::{BTreeMap, BTreeSet};

use super::{Cause, Change, Flip, Turned};
use crate::base::{BedName, Day, EntryId, Moment, TrayCode};
use crate::reckon::View;
use crate::reckon::picture::{Looking, Passage, Picture, Rule, Stage, Standing};

/// Whether something is lost, won, or only another.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Kind {
    /// What was good is no more.
    Loss,
    /// What was not good is now.
    Gain,
    /// Neither; a tray that was sent out and a bed that is full are no loss.
    Other,
}

/// What turned verdicts: one entry, those of one command, or a day that was one too many. Losses come first, then the
/// latest.
#[derive(Clone, Debug)]
pub struct Because<'c> {
    /// The gravest of what it turned.
    pub kind: Kind,
    /// The day on which it turned.
    pub on: Reverse<Day>,
    /// The entries that turned it; where empty, the day did.
    pub entries: &'c [EntryId],
    /// What the day brought.
    pub passage: Option<Passage>,
}

impl Because<'_> {
    /// What tells it from others. No entry turns verdicts in two companies, so that the first one stands for all of its own:
    /// there may be very many.
    fn key(&self) -> (Kind, Reverse<Day>, Option<&EntryId>, Option<Passage>) {
        (self.kind, self.on, self.entries.first(), self.passage)
    }
}

impl PartialEq for Because<'_> {
    fn eq(&self, other: &Self) -> bool {
        self.key() == other.key()
    }
}

impl Eq for Because<'_> {}

impl PartialOrd for Because<'_> {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Because<'_> {
    fn cmp(&self, other: &Self) -> Ordering {
        self.key().cmp(&other.key())
    }
}

/// The view before: the end of a day, by what was known then. Looking back at a past day both days are seen with all
/// that is known now.
pub(crate) fn view_before(day: Day, after: &Picture, end_of_day: Moment) -> View {
    let known = match (after.looking, after.known) {
        (Looking::Back, None) => None,
        (_, None) => Some(end_of_day),
        (_, Some(known)) => Some(end_of_day.min(known)),
    };
    View { day, known }
}

/// What turned by one cause together: losses first, then what was won, the latest first.
pub(crate) fn by_cause(changes: &[Change]) -> Vec<(Because<'_>, Vec<&Change>)> {
    let mut kinds: BTreeMap<(Option<&EntryId>, Day, Option<Passage>), Kind> = BTreeMap::new();
    for change in changes {
        let one = because(change);
        let kind = kinds.entry((one.entries.first(), change.on, one.passage)).or_insert(one.kind);
        *kind = (*kind).min(one.kind);
    }
    let mut all: BTreeMap<Because<'_>, Vec<&Change>> = BTreeMap::new();
    for change in changes {
        let mut one = because(change);
        one.kind = kinds.get(&(one.entries.first(), change.on, one.passage)).copied().unwrap_or(one.kind);
        all.entry(one).or_default().push(change);
    }
    let mut all: Vec<_> = all.into_iter().collect();
    all.iter_mut().for_each(|(_, together)| together.sort_by_key(|change| kind_of(change)));
    all
}

/// The flips that tell why: those that hold back or no longer do, else all.
pub(crate) fn told_by(change: &Change) -> Vec<&Flip> {
    let telling: Vec<&Flip> = change.flips.iter().filter(|flip| flip.blocked != flip.blocks).collect();
    if telling.is_empty() { change.flips.iter().collect() } else { telling }
}

/// What turned a verdict.
pub fn because(change: &Change) -> Because<'_> {
    let passages = told_by(change).into_iter().filter_map(|flip| match &flip.cause {
        Cause::Passed(passage) => Some(*passage),
        Cause::Entries(_) => None,
    });
    let passage = passages.min().unwrap_or(Passage::Time);
    Because {
        kind: kind_of(change),
        on: std::cmp::Reverse(change.on),
        entries: &change.entries,
        passage: change.entries.is_empty().then_some(passage),
    }
}

/// Of what one cause turned what tells the rest: a tray that fits a bed now tells that both are ready for it, a tray or
/// a bed that is lost tells of its pairs. There may be very many: each is looked at once.
pub(crate) fn telling<'c>(together: &[&'c Change]) -> Vec<&'c Change> {
    let kinds: Vec<Kind> = together.iter().map(|change| kind_of(change)).collect();
    let of = |pairs: bool| -> BTreeSet<(Kind, About<'c>)> {
        let all = together.iter().zip(&kinds).filter(|(change, _)| is_pair(&change.turned) == pairs);
        all.flat_map(|(change, kind)| about(&change.turned).map(|about| (*kind, about))).collect()
    };
    let (of_pairs, of_singles) = (of(true), of(false));
    let tells_itself = |(change, kind): &(&&'c Change, &Kind)| {
        let told = match (kind, is_pair(&change.turned)) {
            (Kind::Gain, false) => &of_pairs,
            (Kind::Loss | Kind::Other, true) => &of_singles,
            (Kind::Gain, true) | (Kind::Loss | Kind::Other, false) => return true,
        };
        !about(&change.turned).any(|about| told.contains(&(**kind, about)))
    };
    together.iter().zip(&kinds).filter(tells_itself).map(|(change, _)| *change).collect()
}

/// What a verdict is about; a pair is about both.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum About<'c> {
    Tray(&'c TrayCode),
    Bed(&'c BedName),
}

fn about(turned: &Turned) -> impl Iterator<Item = About<'_>> {
    let (tray, bed) = match turned {
        Turned::Tray { tray, .. } => (Some(tray), None),
        Turned::Bed { bed, .. } => (None, Some(bed)),
        Turned::Pair { tray, bed, .. } => (Some(tray), Some(bed)),
    };
    tray.map(About::Tray).into_iter().chain(bed.map(About::Bed))
}

fn is_pair(turned: &Turned) -> bool {
    matches!(turned, Turned::Pair { .. })
}

/// Whether a verdict turned for the better.
pub(crate) fn is_good(turned: &Turned) -> bool {
    match turned {
        Turned::Tray { is, .. } => is.is_some_and(|(ready, _)| ready),
        Turned::Bed { is, .. } => matches!(is, Some(Standing::Open | Standing::Refill)),
        Turned::Pair { is, .. } => *is == Some(true),
    }
}

fn was_good(turned: &Turned) -> bool {
    match turned {
        Turned::Tray { was, .. } => was.is_some_and(|(ready, _)| ready),
        Turned::Bed { was, .. } => matches!(was, Some(Standing::Open | Standing::Refill)),
        Turned::Pair { was, .. } => *was == Some(true),
    }
}

/// Whether a change is a loss, a gain or neither. A tray that was sent out and a bed that is full are no loss.
pub(crate) fn kind_of(change: &Change) -> Kind {
    let turned = &change.turned;
    let filled = || told_by(change).iter().all(|flip| flip.rule == Rule::OpenPositions);
    let done = match turned {
        Turned::Tray { is, .. } => is.is_some_and(|(_, stage)| stage == Stage::Spent),
        Turned::Bed { is, .. } => *is == Some(Standing::Full),
        Turned::Pair { is, .. } => is.is_none() || (!change.flips.is_empty() && filled()),
    };
    match (was_good(turned), is_good(turned)) {
        (false, true) => Kind::Gain,
        (true, false) if !done => Kind::Loss,
        (true | false, _) => Kind::Other,
    }
}
