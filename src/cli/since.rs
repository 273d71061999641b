//! What changed since a day: the verdicts that are others, put together by what turned them, losses first.

use std::collections::BTreeMap;
use std::sync::Arc;

use serde_json::{Value, json};

use super::page_text::page_text;
use super::run::{Exit, Run};
use crate::base::columns::shortened;
use crate::base::{Day, EntryId};
use crate::desk::Desk;
use crate::nursery::entry::Entry;
use crate::page::{Mark, Page, Tone};
use crate::reckon::changes::Turned;
use crate::reckon::changes::by_cause::{Because, Kind, because, by_cause, is_good, telling, view_before};
use crate::reckon::picture::{Looking, Picture};
use crate::reckon::{Change, changes};
use crate::wording::Wording;

/// Causes named in the line above the main answer; the rest are counted.
const CAUSES_NAMED: usize = 3;
/// Verdicts named of one cause in that line; the rest are counted.
const VERDICTS_NAMED: usize = 2;
/// Columns of an entry behind a cause; the rest of a long one is left out.
const MOST_ENTRY: usize = 90;
/// Entries named of one change for programs; the rest of a long import are counted.
const MOST_ENTRIES_NAMED: usize = 100;

/// Verdicts that changed since the end of a day, with what tells them.
pub(crate) struct Since<'a> {
    day: Day,
    before: Picture,
    after: &'a Picture,
    changes: Vec<Change>,
    entries: BTreeMap<EntryId, Arc<Entry>>,
    wording: &'a Wording,
}

impl<'a> Since<'a> {
    /// What changed since the end of a day, by what was known then.
    pub(crate) fn end_of(run: &'a Run, day: Day, desk: &Desk, after: &'a Picture) -> Result<Since<'a>, Exit> {
        let from = desk.as_of_then(view_before(day, after, desk.end_of(day))).map_err(|fault| run.desk_fault(fault))?;
        let before = from.then.picture();
        let changes = changes(&before, after, &from);
        let entries = from.later.into_iter().map(|entry| (entry.id.clone(), entry)).collect();
        Ok(Since { day, before, after, changes, entries, wording: &run.wording })
    }

    /// The same for `--since`; a day that is not before the one looked at is refused.
    pub(crate) fn asked(run: &'a Run, day: Day, desk: &Desk, after: &'a Picture) -> Result<Since<'a>, Exit> {
        if day >= after.day {
            let wording = &run.wording;
            return Err(Exit::refused(wording.change_day_not_before(wording.day(day), wording.day(after.day))));
        }
        Since::end_of(run, day, desk, after)
    }

    /// Leaves out the changes of what is not shown.
    pub(crate) fn keep_those_of(&mut self, shown: &Picture) {
        self.changes.retain(|change| match &change.turned {
            Turned::Tray { tray, .. } => shown.trays.contains_key(tray),
            Turned::Bed { bed, .. } => shown.beds.contains_key(bed),
            Turned::Pair { tray, bed, .. } => shown.pair(tray, bed).is_some(),
        });
    }

    /// The changes as a page: each cause once, with all that it turned.
    pub(crate) fn text(&self, width: usize, colour: bool) -> String {
        let (wording, mut page) = (self.wording, Page::default());
        let day = wording.day(self.day);
        if self.changes.is_empty() {
            page.gap();
            page.sentence(wording.change_none(day));
        } else {
            page.heading(wording.change_heading(self.changes.len() as i64, day));
        }
        for (because, together) in by_cause(&self.changes) {
            page.gap();
            let cause = self.cause_in_words(&because);
            match because.kind {
                Kind::Loss => page.marked(0, Mark::Sign("-".to_string(), Tone::Waits), cause, Tone::Strong),
                Kind::Gain => page.marked(0, Mark::Sign("+".to_string(), Tone::Good), cause, Tone::Strong),
                Kind::Other => page.line(1, cause, Tone::Strong),
            }
            for change in together {
                page.line(2, wording.change_words(change, &self.before, self.after), Tone::Plain);
            }
        }
        page.gap();
        page.sentence(wording.change_hint());
        page_text(&page, self.after, wording, width, colour)
    }

    /// The changes for programs.
    pub(crate) fn json(&self) -> Vec<Value> {
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
            "entries": change.entries.iter().take(MOST_ENTRIES_NAMED).collect::<Vec<_>>(),
            "entries_in_all": change.entries.len(),
            "day_passed": change.entries.is_empty(),
            "turned_on": change.on,
            "passage": because.passage,
            "cause": cause,
            "text": text,
        })
    }

    /// One line of the most telling causes; nothing where nothing changed, or where nothing stood in the book before.
    pub(crate) fn line(&self) -> Option<String> {
        if self.changes.is_empty() {
            return None;
        }
        let wording = self.wording;
        let causes = by_cause(&self.changes);
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

    fn turned(&self, change: &Change) -> [String; 3] {
        self.wording.turned_words(&change.turned, &self.before, self.after)
    }

    /// What turned a verdict: the entry with its day and who wrote it, or the day and what it brought.
    fn cause_in_words(&self, because: &Because<'_>) -> String {
        let known: Vec<&Entry> = because.entries.iter().filter_map(|id| Some(&**self.entries.get(id)?)).collect();
        self.wording.cause_words(because, &known, self.after, |message| shortened(&message, MOST_ENTRY))
    }
}

/// The line above the main answer, where anything changed since the day before.
pub(crate) fn since_yesterday(run: &Run, desk: &Desk, picture: &Picture) -> Result<Option<String>, Exit> {
    if picture.looking == Looking::Ahead || picture.known.is_some() {
        return Ok(None);
    }
    let day = picture.day.plus(-1);
    let first = desk.journal().first_day().map_err(|fault| run.exit_for_file(&fault))?;
    if first.is_none_or(|first| first > day) {
        return Ok(None);
    }
    Ok(Since::end_of(run, day, desk, picture)?.line())
}
