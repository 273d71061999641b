//! What changed since a day: every verdict that is another, and the entry or the day that changed it.

use std::collections::BTreeMap;
use std::sync::Arc;

use serde_json::{Value, json};

use super::columns::shortened;
use super::ready_text::page_top;
use super::run::{Run, Stopped};
use super::sheet::{Ink, Sheet};
use super::undo::fields_in_words;
use crate::base::text::cleaned;
use crate::base::{Day, EntryId};
use crate::desk::Desk;
use crate::nursery::entry::Entry;
use crate::nursery::entry::subject::{Subject, subjects};
use crate::reckon::changes::{Cause, Flip, Passage, Turned};
use crate::reckon::picture::{Looking, Picture, Standing};
use crate::reckon::{Change, View, changes};
use crate::wording::Wording;

/// Changes named in the line above the main answer; the rest are counted.
const NAMED: usize = 3;
/// Entries named behind one cause; the rest are counted.
const ENTRIES_NAMED: usize = 2;

/// Columns of an entry behind a cause; the rest of a long one is left out.
const MOST_ENTRY: usize = 90;

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
        let before = desk.picture_of(View { day, known: Some(desk.end_of(day)) });
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

    /// The changes as a page.
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
        for change in &self.changes {
            sheet.gap();
            let [what, was, is] = self.turned(change);
            let (mark, ink) = if is_good(&change.turned) { ("+ ", Ink::Ready) } else { ("- ", Ink::Waits) };
            sheet.hanging(mark, ink, &wording.change_turned(what, was, is), Ink::Bold);
            for cause in self.causes(change) {
                sheet.indented(4, &cause, Ink::Plain);
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
        let mut text = self.wording.change_turned(what, &was, &is);
        for cause in self.causes(change) {
            text.push_str(&format!("; {cause}"));
        }
        let days = |flip: &Flip| matches!(flip.cause, Cause::Passed(_));
        json!({
            "subject": subject,
            "tray": tray,
            "bed": bed,
            "species": species.or_else(of_tray),
            "was": was,
            "is": is,
            "better": is_good(&change.turned),
            "rules": change.flips.iter().map(|flip| flip.rule).collect::<Vec<_>>(),
            "entries": change.entries,
            "day_passed": change.entries.is_empty() || change.flips.iter().any(days),
            "text": text,
        })
    }

    /// One line of the most telling changes; nothing where there are none, or where nothing stood in the book before.
    pub fn line(&self) -> Option<String> {
        let begun = !self.before.trays.is_empty() || !self.before.beds.is_empty();
        if !begun || self.changes.is_empty() {
            return None;
        }
        let mut telling: Vec<&Change> = self.changes.iter().collect();
        telling.sort_by_key(|change| rank(&change.turned));
        let wording = self.wording;
        let mut named: Vec<String> = telling
            .iter()
            .take(NAMED)
            .map(|change| {
                let [what, _, is] = self.turned(change);
                wording.change_named(what, is)
            })
            .collect();
        if telling.len() > NAMED {
            named.push(wording.change_more((telling.len() - NAMED) as i64));
        }
        Some(wording.change_since_yesterday(named.join("; ")))
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

    /// The causes, each with the questions it changed: what holds back or no longer does, else whatever changed.
    fn causes(&self, change: &Change) -> Vec<String> {
        let wording = self.wording;
        let telling = |flip: &&Flip| flip.blocked != flip.blocks;
        let some = change.flips.iter().any(|flip| telling(&flip));
        let mut by_entry: Vec<(&[EntryId], Vec<String>)> = Vec::new();
        let mut by_days: BTreeMap<Passage, Vec<String>> = BTreeMap::new();
        for flip in change.flips.iter().filter(|flip| !some || telling(flip)) {
            let rule = wording.rule_name(flip.rule);
            match &flip.cause {
                Cause::Passed(passage) => by_days.entry(*passage).or_default().push(rule),
                Cause::Entries(ids) => match by_entry.iter_mut().find(|(known, _)| *known == ids.as_slice()) {
                    Some((_, rules)) => rules.push(rule),
                    None => by_entry.push((ids, vec![rule])),
                },
            }
        }
        let mut causes: Vec<String> = by_entry
            .into_iter()
            .map(|(ids, rules)| wording.change_by_entry(rules.join(", "), self.entries_in_words(ids)))
            .collect();
        causes.extend(
            by_days
                .into_iter()
                .map(|(passage, rules)| wording.change_by_days(rules.join(", "), wording.passage_words(passage))),
        );
        if causes.is_empty() {
            let of_new: Vec<EntryId> = self.about_what_is_new(change);
            let only_days = || wording.passage_words(Passage::Time);
            causes.push(if of_new.is_empty() { only_days() } else { self.entries_in_words(&of_new) });
        }
        causes
    }

    /// Of the entries behind a verdict that was not there before, those about the tray or bed that is new.
    fn about_what_is_new(&self, change: &Change) -> Vec<EntryId> {
        let is_new: Option<Subject> = match &change.turned {
            Turned::Pair { tray, .. } if !self.before.trays.contains_key(tray) => Some(Subject::Tray(tray.clone())),
            Turned::Pair { bed, .. } if !self.before.beds.contains_key(bed) => Some(Subject::Bed(bed.clone())),
            Turned::Pair { .. } | Turned::Tray { .. } | Turned::Bed { .. } => None,
        };
        let Some(is_new) = is_new else { return change.entries.clone() };
        let about = |id: &&EntryId| self.entries.get(id).is_some_and(|e| subjects(&e.what).contains(&is_new));
        change.entries.iter().filter(about).cloned().collect()
    }

    fn entries_in_words(&self, ids: &[EntryId]) -> String {
        let known = ids.iter().filter_map(|id| self.entries.get(id));
        let mut said: Vec<String> = known
            .take(ENTRIES_NAMED)
            .map(|entry| {
                let what = shortened(&cleaned(&fields_in_words(entry)), MOST_ENTRY);
                let day = self.wording.day_beside(entry.happened, self.after.day);
                self.wording.change_entry(day, &entry.who, what)
            })
            .collect();
        if ids.len() > ENTRIES_NAMED {
            said.push(self.wording.change_more((ids.len() - ENTRIES_NAMED) as i64));
        }
        said.join("; ")
    }
}

/// The line above the main answer of today, where anything changed since yesterday.
pub fn since_yesterday(run: &Run, desk: &Desk, picture: &Picture) -> Option<String> {
    if picture.looking != Looking::Today || picture.known.is_some() {
        return None;
    }
    Since::end_of(picture.day.plus(-1), desk, picture, &run.wording).line()
}

/// Whether a verdict turned for the better.
fn is_good(turned: &Turned) -> bool {
    match turned {
        Turned::Tray { is, .. } => is.is_some_and(|(ready, _)| ready),
        Turned::Bed { is, .. } => matches!(is, Some(Standing::Open | Standing::Refill)),
        Turned::Pair { is, .. } => *is == Some(true),
    }
}

/// What is told first: what can go, then what is ready, what is open, and what no longer is.
fn rank(turned: &Turned) -> u8 {
    match turned {
        Turned::Pair { is: Some(true), .. } => 0,
        Turned::Tray { is: Some((true, _)), .. } => 1,
        Turned::Bed { is: Some(Standing::Open | Standing::Refill), .. } => 2,
        Turned::Pair { .. } => 3,
        Turned::Tray { was: Some((true, _)), .. } => 4,
        Turned::Bed { .. } => 5,
        Turned::Tray { .. } => 6,
    }
}
