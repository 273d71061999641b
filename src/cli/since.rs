//! What changed since a day: the verdicts that are others, put together by what turned them, losses first.

use std::collections::BTreeMap;
use std::sync::Arc;

use serde_json::{Value, json};

use super::columns::shortened;
use super::ready_text::page_top;
use super::run::{Run, Stopped};
use super::sheet::{Ink, Sheet};
use crate::base::{Day, EntryId};
use crate::desk::Desk;
use crate::nursery::entry::Entry;
use crate::nursery::species::Catalogue;
use crate::reckon::changes::{Cause, Flip, Passage, Turned};
use crate::reckon::picture::{Looking, Picture, Rule, Stage, Standing};
use crate::reckon::{Change, View, changes};
use crate::wording::Wording;

/// Causes named in the line above the main answer; the rest are counted.
const CAUSES_NAMED: usize = 3;
/// Verdicts named of one cause in that line; the rest are counted.
const VERDICTS_NAMED: usize = 2;
/// Columns of an entry behind a cause; the rest of a long one is left out.
const MOST_ENTRY: usize = 90;

/// An entry in words.
fn entry_in_words(entry: &Entry, wording: &Wording, species: &Catalogue) -> String {
    shortened(&wording.what_sentence(&entry.what, species), MOST_ENTRY)
}

/// What turned verdicts: one entry, or a day that was one too many. Losses come first.
#[derive(PartialEq, Eq, PartialOrd, Ord)]
struct Because<'c> {
    kind: Kind,
    on: std::cmp::Reverse<Day>,
    entries: &'c [EntryId],
    passage: Option<Passage>,
}

/// Whether something is lost, won, or only another.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Kind {
    Loss,
    Gain,
    Other,
}

/// Verdicts that changed since the end of a day, with what tells them.
pub struct Since<'a> {
    day: Day,
    before: Picture,
    after: &'a Picture,
    changes: Vec<Change>,
    entries: BTreeMap<&'a EntryId, &'a Arc<Entry>>,
    wording: &'a Wording,
}

impl<'a> Since<'a> {
    /// What changed since the end of a day, by what was known then.
    pub fn end_of(day: Day, desk: &'a Desk, after: &'a Picture, wording: &'a Wording) -> Since<'a> {
        // Looking back, both days are seen with all that is known now; else the first with what was known at its end.
        let known = match (after.looking, after.known) {
            (Looking::Back, None) => None,
            (_, None) => Some(desk.end_of(day)),
            (_, Some(known)) => Some(desk.end_of(day).min(known)),
        };
        let before = desk.picture_of(View { day, known });
        let changes = changes(&before, after, desk.entries());
        let entries = desk.entries().iter().map(|entry| (&entry.id, entry)).collect();
        Since { day, before, after, changes, entries, wording }
    }

    /// The same for `--since`; a day that is not before the one looked at is refused.
    pub fn asked(run: &'a Run, day: Day, desk: &'a Desk, after: &'a Picture) -> Result<Since<'a>, Stopped> {
        if day >= after.day {
            let wording = &run.wording;
            return Err(Stopped::refused(wording.change_day_not_before(wording.day(day), wording.day(after.day))));
        }
        Ok(Since::end_of(day, desk, after, &run.wording))
    }

    /// The changes as a page: each cause once, with all that it turned.
    pub fn text(&self, width: usize, colour: bool) -> String {
        let (wording, mut sheet) = (self.wording, Sheet::new(width, colour));
        page_top(self.after, wording, &mut sheet);
        let day = wording.day(self.day);
        if self.changes.is_empty() {
            sheet.gap();
            sheet.paragraph(&wording.change_none(day), Ink::Plain);
        } else {
            sheet.heading(&wording.change_heading(self.changes.len() as i64, day));
        }
        for (because, together) in self.by_cause() {
            sheet.gap();
            let (mark, ink) = match because.kind {
                Kind::Loss => ("- ", Ink::Waits),
                Kind::Gain => ("+ ", Ink::Ready),
                Kind::Other => ("  ", Ink::Plain),
            };
            sheet.hanging(mark, ink, &self.cause_in_words(&because), Ink::Bold);
            for change in together {
                let [what, was, is] = self.turned(change);
                let said = wording.change_turned(what, was, is);
                let rules = self.rules(change);
                let said = if rules.is_empty() { said } else { format!("{said} ({})", rules.join(", ")) };
                sheet.indented(4, &said, Ink::Plain);
            }
        }
        sheet.gap();
        sheet.paragraph(&wording.change_hint(), Ink::Plain);
        sheet.finish()
    }

    /// The changes for programs.
    pub fn json(&self) -> Vec<Value> {
        self.changes.iter().map(|change| self.change_json(change)).collect()
    }

    fn change_json(&self, change: &Change) -> Value {
        let (subject, tray, bed, species) = match &change.turned {
            Turned::Tray { tray, .. } => ("tray", Some(tray), None, None),
            Turned::Bed { bed, species, .. } => ("bed", None, Some(bed), Some(species)),
            Turned::Pair { tray, bed, .. } => ("pair", Some(tray), Some(bed), None),
        };
        let of_tray = || self.after.trays.get(tray?).or_else(|| self.before.trays.get(tray?))?.species.as_ref();
        let [what, was, is] = self.turned(change);
        let because = because(change);
        let cause = self.cause_in_words(&because);
        let text = format!("{}; {cause}", self.wording.change_turned(what, &was, &is));
        json!({
            "subject": subject,
            "tray": tray,
            "bed": bed,
            "species": species.or_else(of_tray),
            "was": was,
            "is": is,
            "better": is_good(&change.turned),
            "loss": because.kind == Kind::Loss,
            "rules": change.flips.iter().map(|flip| flip.rule).collect::<Vec<_>>(),
            "entries": change.entries,
            "day_passed": change.entries.is_empty(),
            "turned_on": change.on,
            "passage": because.passage,
            "cause": cause,
            "text": text,
        })
    }

    /// One line of the most telling causes; nothing where nothing changed, or where nothing stood in the book before.
    pub fn line(&self) -> Option<String> {
        if self.changes.is_empty() {
            return None;
        }
        let wording = self.wording;
        let causes = self.by_cause();
        let mut named: Vec<String> = causes
            .iter()
            .take(CAUSES_NAMED)
            .map(|(because, together)| {
                let told = telling(together);
                let mut verdicts: Vec<String> = told
                    .iter()
                    .take(VERDICTS_NAMED)
                    .map(|change| {
                        let [what, _, is] = self.turned(change);
                        wording.change_named(what, is)
                    })
                    .collect();
                if told.len() > verdicts.len() {
                    verdicts.push(wording.change_more((told.len() - verdicts.len()) as i64));
                }
                wording.change_because(verdicts.join(", "), self.cause_in_words(because))
            })
            .collect();
        if causes.len() > CAUSES_NAMED {
            named.push(wording.change_more_causes((causes.len() - CAUSES_NAMED) as i64));
        }
        let list = named.join("; ");
        let today = self.after.looking == Looking::Today;
        Some(if today { wording.change_since_yesterday(list) } else { wording.change_since_day_before(list) })
    }

    /// What turned by one cause together: losses first, then what was won, the latest first.
    fn by_cause(&self) -> Vec<(Because<'_>, Vec<&Change>)> {
        let mut kinds: BTreeMap<(&[EntryId], Day, Option<Passage>), Kind> = BTreeMap::new();
        for change in &self.changes {
            let one = because(change);
            let kind = kinds.entry((one.entries, change.on, one.passage)).or_insert(one.kind);
            *kind = (*kind).min(one.kind);
        }
        let mut all: BTreeMap<Because<'_>, Vec<&Change>> = BTreeMap::new();
        for change in &self.changes {
            let mut one = because(change);
            one.kind = kinds.get(&(one.entries, change.on, one.passage)).copied().unwrap_or(one.kind);
            all.entry(one).or_default().push(change);
        }
        let mut all: Vec<_> = all.into_iter().collect();
        all.iter_mut().for_each(|(_, together)| together.sort_by_key(|change| kind_of(change)));
        all
    }

    fn turned(&self, change: &Change) -> [String; 3] {
        let all = &self.after.site.species;
        let species = |turned: &Turned| {
            let Turned::Tray { tray, .. } = turned else { return String::new() };
            let pictured = self.after.trays.get(tray).or_else(|| self.before.trays.get(tray));
            let key = pictured.and_then(|tray| tray.species.as_ref());
            key.map_or_else(|| self.wording.species_unknown(), |key| self.wording.species_of(key, all))
        };
        self.wording.turned_words(&change.turned, species, all)
    }

    /// The questions that turned with a verdict: what holds back or no longer does, else whatever changed.
    fn rules(&self, change: &Change) -> Vec<String> {
        told_by(change).into_iter().map(|flip| self.wording.rule_name(flip.rule)).collect()
    }

    /// What turned a verdict: the entry with its day and who wrote it, or the day and what it brought.
    fn cause_in_words(&self, because: &Because<'_>) -> String {
        let wording = self.wording;
        let known: Vec<&Arc<Entry>> = because.entries.iter().filter_map(|id| self.entries.get(id).copied()).collect();
        let [first, others @ ..] = known.as_slice() else {
            let day = wording.day_beside(because.on.0, self.after.day);
            return wording.change_by_days(day, wording.passage_words(because.passage.unwrap_or(Passage::Time)));
        };
        let day = wording.day_beside(first.happened, self.after.day);
        let said = wording.change_entry(day, &first.who, entry_in_words(first, wording, &self.after.site.species));
        match others.len() {
            0 => said,
            more => format!("{said}, {}", wording.change_more(more as i64)),
        }
    }
}

/// The line above the main answer, where anything changed since the day before.
pub fn since_yesterday(run: &Run, desk: &Desk, picture: &Picture) -> Option<String> {
    if picture.looking == Looking::Ahead || picture.known.is_some() {
        return None;
    }
    let day = picture.day.plus(-1);
    let stood = desk.entries().iter().any(|entry| entry.happened <= day);
    if !stood {
        return None;
    }
    Since::end_of(day, desk, picture, &run.wording).line()
}

/// The flips that tell why: those that hold back or no longer do, else all.
fn told_by(change: &Change) -> Vec<&Flip> {
    let telling: Vec<&Flip> = change.flips.iter().filter(|flip| flip.blocked != flip.blocks).collect();
    if telling.is_empty() { change.flips.iter().collect() } else { telling }
}

fn because(change: &Change) -> Because<'_> {
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
/// a bed that is lost tells of its pairs.
fn telling<'c>(together: &[&'c Change]) -> Vec<&'c Change> {
    let told = together.iter().filter(|change| !together.iter().any(|other| tells(other, change)));
    told.copied().collect()
}

fn tells(other: &Change, change: &Change) -> bool {
    let kind = kind_of(change);
    let (Turned::Pair { tray, bed, .. }, single) = (match kind {
        Kind::Gain => (&other.turned, &change.turned),
        Kind::Loss | Kind::Other => (&change.turned, &other.turned),
    }) else {
        return false;
    };
    let about = match single {
        Turned::Tray { tray: told, .. } => told == tray,
        Turned::Bed { bed: told, .. } => told == bed,
        Turned::Pair { .. } => false,
    };
    about && kind_of(other) == kind
}

/// Whether a verdict turned for the better.
fn is_good(turned: &Turned) -> bool {
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

/// A tray that was sent out and a bed that is full are no loss.
fn kind_of(change: &Change) -> Kind {
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
