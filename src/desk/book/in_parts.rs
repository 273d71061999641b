//! The stories of a whole book, a part at a time: of a large book not everything has to be in memory at once. What is
//! looked up for a part is what would be looked up if something were written about each of its stories.

use std::collections::BTreeSet;

use super::look_up::{described, look_up_about};
use super::stories::{LastKept, changed_stories, program};
use crate::base::{BedName, EntryId, LotCode, TrayCode};
use crate::desk::judge::refused_for;
use crate::desk::now::Now;
use crate::desk::refusal::Refusal;
use crate::journal::{Checkpoint, Journal, JournalError, Sort};
use crate::nursery::entry::subject::Subject;
use crate::reckon::picture::{Doubt, DoubtKind};
use crate::reckon::stock::{BedStory, LotStory, TrayStory};
use crate::reckon::{Fold, Stories, View};

/// Entries about the stories of one part. Ours: some 20 MB, and few enough parts that what describes the site is not laid
/// out too often.
const ENTRIES_OF_A_PART: u64 = 10_000;

/// What is asked of the parts.
pub(in crate::desk) struct Asked<'a> {
    /// Doubts that were there before.
    pub before: &'a BTreeSet<Doubt>,
    /// The first of the entries that are judged; all behind it of its device are.
    pub judged_from: Option<&'a EntryId>,
    /// Whether the stories are kept.
    pub keep: bool,
}

/// What the parts say.
#[derive(Default)]
pub(in crate::desk) struct Found {
    /// Doubts that were not there before.
    pub doubts: Vec<Doubt>,
    /// What is refused, by the number of the entry among those judged, from 0.
    pub refused: Vec<(usize, Refusal)>,
}

/// Folds every story of a book that can be looked up. `told` hears how many of how many are done, and may stop it.
pub(in crate::desk) fn fold_in_parts(
    journal: &mut Journal,
    now: Now,
    asked: &Asked<'_>,
    told: &mut dyn FnMut(usize, usize) -> Result<(), JournalError>,
) -> Result<Found, JournalError> {
    let arrival = journal.last_arrival()?;
    let base = nothing_looked_up(journal, now)?;
    let mut found = Found::default();
    found.note(journal, &mut base.clone(), base.site().doubts.clone(), asked)?;
    let subjects = every_subject(journal)?;
    let mut done = 0;
    for part in in_parts(&subjects) {
        told(done, subjects.len())?;
        let mut fold = base.clone();
        let about: BTreeSet<Subject> = part.iter().map(|(subject, _)| subject.clone()).collect();
        look_up_about(journal, &mut fold, &about)?;
        let doubts = about.iter().flat_map(|subject| doubts_of(&fold, subject)).collect();
        if asked.keep {
            // Not of this program before the last of them is there: then nothing goes on from them.
            let checkpoint = Checkpoint { program: "in parts".into(), day: now.today, arrival };
            let stories = changed_stories(&fold, &LastKept::default(), true)?;
            journal.keep_stories(&checkpoint, &stories, &[], done == 0)?;
        }
        found.note(journal, &mut fold, doubts, asked)?;
        done += part.len();
    }
    if asked.keep {
        let checkpoint = Checkpoint { program: program(), day: now.today, arrival };
        journal.keep_stories(&checkpoint, &[], &[], subjects.is_empty())?;
    }
    Ok(found)
}

impl Found {
    fn note(
        &mut self,
        journal: &Journal,
        fold: &mut Fold,
        doubts: Vec<Doubt>,
        asked: &Asked<'_>,
    ) -> Result<(), JournalError> {
        for doubt in doubts.into_iter().filter(|doubt| !asked.before.contains(doubt)) {
            if let Some(index) = asked.judged_from.and_then(|first| index_of(first, &doubt)) {
                if let DoubtKind::UnknownTray(tray) | DoubtKind::MoreOutThanStood { tray, .. } = &doubt.kind {
                    look_up_about(journal, fold, &BTreeSet::from([Subject::Tray(tray.clone())]))?;
                }
                self.refused.extend(refused_for(fold, &doubt).map(|why| (index, why)));
            }
            self.doubts.push(doubt);
        }
        Ok(())
    }
}

/// The first of the judged entries that a doubt names.
fn index_of(first: &EntryId, doubt: &Doubt) -> Option<usize> {
    let ours = |id: &&EntryId| id.device == first.device && id.seq >= first.seq;
    doubt.entries.iter().find(ours).and_then(|id| usize::try_from(id.seq - first.seq).ok())
}

fn doubts_of(fold: &Fold, subject: &Subject) -> Vec<Doubt> {
    match subject {
        Subject::Tray(code) => fold.trays().get(code).map(|story| story.doubts.clone()),
        Subject::Lot(code) => fold.lots().get(code).map(|story| story.doubts.clone()),
        Subject::Bed(name) => fold.beds().get(name).map(|story| story.doubts.clone()),
        Subject::Place(_) | Subject::Site => None,
    }
    .unwrap_or_default()
}

/// Everything with a story, in the order of stories, with how many entries are about it.
fn every_subject(journal: &Journal) -> Result<Vec<(Subject, u64)>, JournalError> {
    let mut all = Vec::new();
    for sort in [Sort::Tray, Sort::Lot, Sort::Bed] {
        for (name, entries) in journal.names_and_entries(&sort)? {
            let subject = match sort {
                Sort::Tray => TrayCode::new(&name).ok().map(Subject::Tray),
                Sort::Lot => LotCode::new(&name).ok().map(Subject::Lot),
                _ => BedName::new(&name).ok().map(Subject::Bed),
            };
            all.extend(subject.map(|subject| (subject, entries)));
        }
    }
    all.sort();
    Ok(all)
}

fn in_parts(subjects: &[(Subject, u64)]) -> Vec<&[(Subject, u64)]> {
    let (mut parts, mut from, mut entries) = (Vec::new(), 0, 0);
    for (at, (_, more)) in subjects.iter().enumerate() {
        if at > from && entries + more > ENTRIES_OF_A_PART {
            parts.extend(subjects.get(from..at));
            (from, entries) = (at, 0);
        }
        entries += more;
    }
    parts.extend(subjects.get(from..).filter(|rest| !rest.is_empty()));
    parts
}

/// The doubts of kept stories that are not in memory. Of a story that cannot be read they are told once more.
pub(super) fn doubts_kept(journal: &Journal, fold: &Fold) -> Result<Vec<Doubt>, JournalError> {
    let mut all = Vec::new();
    journal.each_story(&mut |sort, name, body| match sort {
        "tray" if !TrayCode::new(name).is_ok_and(|code| fold.trays().contains_key(&code)) => {
            all.extend(postcard::from_bytes::<TrayStory>(body).into_iter().flat_map(|story| story.doubts));
        }
        "lot" if !LotCode::new(name).is_ok_and(|code| fold.lots().contains_key(&code)) => {
            all.extend(postcard::from_bytes::<LotStory>(body).into_iter().flat_map(|story| story.doubts));
        }
        "bed" if !BedName::new(name).is_ok_and(|name| fold.beds().contains_key(&name)) => {
            all.extend(postcard::from_bytes::<BedStory>(body).into_iter().flat_map(|story| story.doubts));
        }
        _ => {}
    })?;
    Ok(all)
}

/// A fold of what describes the site, into which everything else has to be looked up.
pub(in crate::desk) fn nothing_looked_up(journal: &Journal, now: Now) -> Result<Fold, JournalError> {
    let entries = journal.look_up(&described(journal, now.today)?)?;
    Ok(Fold::from_stories(View { day: now.today, known: None }, now.today, entries, Stories::default()))
}
