//! A nursery of several years through the file: the desk that goes on from kept stories says the same as the one that reads
//! the whole book, today and on other days, and takes and takes back the same.

use std::ops::ControlFlow;
use std::path::Path;

use outplant::base::{Clock, Day, Moment};
use outplant::desk::{Desk, Now, Withdraws, replay};
use outplant::nursery::entry::{TrayEntry, What};
use outplant::nursery::envelope::Draft;
use outplant::reckon::{View, changes};
use serde_json::json;

use crate::books_properties::said;
use crate::support::grown::{GrownBook, write_grown};

/// Two and a half years: the first trays rest.
const ENTRIES: usize = 24_000;
const SEED: u64 = 7;

fn now(today: Day) -> Now {
    Now { today, clock: Clock::from_hm(17, 30), moment: Moment::end_of(today, 3.0) }
}

fn whole(file: &Path, shelf: &Path, today: Day) -> Desk {
    let desk = Desk::open_reading_whole_below(file, shelf, now(today), u64::MAX).unwrap();
    assert!(desk.fold().is_whole());
    desk
}

fn from_stories(file: &Path, shelf: &Path, today: Day) -> Desk {
    Desk::open_reading_whole_below(file, shelf, now(today), 0).unwrap()
}

fn same(ours: &Desk, theirs: &Desk, view: View) {
    let (ours, theirs) = (said(&ours.picture_of(view).unwrap()), said(&theirs.picture_of(view).unwrap()));
    let differs = ours.lines().zip(theirs.lines()).position(|(ours, theirs)| ours != theirs);
    if let Some(at) = differs {
        let around = |text: &str| text.lines().skip(at.saturating_sub(12)).take(16).collect::<Vec<_>>().join("\n");
        panic!("{view:?}: from stories:\n{}\nwhole:\n{}", around(&ours), around(&theirs));
    }
    assert_eq!(ours.len(), theirs.len(), "{view:?}");
}

fn draft(happened: Day, kind: &str, body: serde_json::Value) -> Draft {
    let body = body.as_object().unwrap().clone();
    Draft { happened, clock: None, who: "wanja".into(), kind: kind.into(), body }
}

fn written(file: &Path, shelf: &Path) -> GrownBook {
    write_grown(file, shelf, ENTRIES, SEED).unwrap()
}

#[test]
fn the_desk_says_the_same_from_kept_stories_as_from_the_whole_book() {
    let folder = tempfile::tempdir().unwrap();
    let (file, shelf) = (folder.path().join("grown.outplant"), folder.path());
    let grown = written(&file, shelf);
    let today = grown.last_day;
    // The first time everything is read, and the stories are kept; from then on it goes on from them.
    assert!(!from_stories(&file, shelf, today).fold().is_whole());
    for later in [0, 1, 40] {
        let today = today.plus(later);
        let (ours, theirs) = (from_stories(&file, shelf, today), whole(&file, shelf, today));
        assert!(!ours.fold().is_whole(), "it goes on from the stories");
        assert!(ours.fold().trays().len() < theirs.fold().trays().len(), "some rest");
        same(&ours, &theirs, View { day: today, known: None });
        for (back, known) in [(1, true), (1, false), (30, true), (200, false), (500, false), (-20, false)] {
            let day = today.plus(-back);
            let known = known.then(|| ours.end_of(day));
            same(&ours, &theirs, View { day, known });
        }
        let yesterday = View { day: today.plus(-1), known: Some(ours.end_of(today.plus(-1))) };
        let told = |desk: &Desk| {
            let from = desk.as_of_then(yesterday).unwrap();
            changes(&from.then.picture(), &desk.picture(), &from)
        };
        assert_eq!(told(&ours), told(&theirs));
    }
}

#[test]
fn what_is_written_late_or_taken_back_gives_the_same_from_kept_stories() {
    let folder = tempfile::tempdir().unwrap();
    let (file, shelf) = (folder.path().join("grown.outplant"), folder.path());
    let grown = written(&file, shelf);
    let today = grown.last_day;
    drop(from_stories(&file, shelf, today));
    let living = grown.living.last().unwrap();
    let finished = grown.finished.first().unwrap();
    let mut ours = from_stories(&file, shelf, today);
    let bed = ours.fold().beds().keys().next().unwrap().to_string();
    let steps = [
        draft(today, "counted", json!({"tray": living.tray, "standing": living.standing})),
        // Spelled otherwise, long ago, and at rest.
        draft(finished.day, "lost", json!({"tray": finished.tray.to_uppercase(), "count": 1, "cause": "rats"})),
        draft(
            today,
            "lot_tested",
            json!({"lot": ours.fold().lots().keys().next().unwrap().to_string(),
            "days": 14, "replicates": [{"seeds": 10, "germinated": 7}]}),
        ),
        draft(today, "light_read", json!({"bed": bed, "light_share": 0.4})),
        draft(today, "weather", json!({"rain_mm": 12})),
        draft(today, "relabelled", json!({"tray": "new-label-1", "was": living.tray})),
        draft(today, "species_set", json!({"species": "coffee", "profile": {"emerge_last_days": 99}})),
    ];
    for step in steps {
        let told = format!("{step:?}");
        ours.record(vec![step]).unwrap_or_else(|fault| panic!("{told}: {fault:?}"));
        same(&ours, &whole(&file, shelf, today), View { day: today, known: None });
    }
    for _ in 0..7 {
        ours.undo(&Withdraws::LastCommand, true, "wanja", "slip").unwrap();
        same(&ours, &whole(&file, shelf, today), View { day: today, known: None });
    }
    // Opened again, with all of that behind the stories that were kept.
    same(&from_stories(&file, shelf, today), &whole(&file, shelf, today), View { day: today, known: None });
    let proved = replay(&file, now(today), &mut |_, _| ControlFlow::Continue(())).unwrap();
    assert_eq!((proved.same, proved.kept_stories_true), (true, true));
}

#[test]
fn what_is_taken_back_after_the_stories_were_kept_stays_taken_back_at_the_next_start() {
    let folder = tempfile::tempdir().unwrap();
    let (file, shelf) = (folder.path().join("grown.outplant"), folder.path());
    let grown = written(&file, shelf);
    let today = grown.last_day;
    let mut ours = from_stories(&file, shelf, today);
    // A count that stands in a kept story.
    let counts = |entry: &&std::sync::Arc<outplant::nursery::entry::Entry>| {
        let What::Tray(TrayEntry::Counted(counted)) = &entry.what else { return false };
        grown.living.iter().any(|known| known.tray == counted.tray.as_str() && known.standing != 0)
    };
    let all = ours.read_every_entry().unwrap();
    let last = all.iter().rev().find(counts).unwrap();
    ours.undo(&Withdraws::EntryAlone(last.id.clone()), true, "wanja", "slip").unwrap();
    drop(ours);
    let (again, theirs) = (from_stories(&file, shelf, today), whole(&file, shelf, today));
    assert!(!again.fold().is_whole(), "it goes on from the stories");
    same(&again, &theirs, View { day: today, known: None });
}
