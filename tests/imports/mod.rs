//! Lines of entries: many are judged inside their transaction, a part of the book at a time, few in memory; nobody can tell
//! which. What does not fit is named, what is stopped leaves nothing.

mod many_as_few;
mod stopped;

use std::path::PathBuf;

use outplant::base::{Clock, Day, DeviceId, EntryId, Moment};
use outplant::desk::{Desk, How, ImportError, Imported, Now};
use outplant::journal::Journal;
use outplant::nursery::entry::reading::settle_body;
use outplant::nursery::envelope::{Draft, Sealed};
use proptest::prelude::*;
use serde_json::{Value, json};
use std::ops::ControlFlow;

use crate::books_properties::{DAYS, FIRST_DAY, body};

/// An entry before it has a name.
#[derive(Clone, Debug)]
pub struct Row {
    draft: Draft,
    device: usize,
    recorded: Moment,
}

/// Any rows of three devices, withdrawals among them.
pub fn rows() -> impl Strategy<Value = Vec<Row>> {
    let one = (
        0..30usize,
        any::<u32>(),
        any::<u32>(),
        any::<u32>(),
        0..DAYS,
        0..3usize,
        prop::option::of(0..24u32),
        0..40i32,
    );
    prop::collection::vec(one, 1..60).prop_map(|rows| {
        let mut made: Vec<Row> = Vec::new();
        for (kind, a, b, c, on, device, hour, late) in rows {
            let happened = Day::from_number(FIRST_DAY + on);
            let (kind, body) = if kind >= 28 {
                (
                    "withdrawn",
                    json!({"entries":[format!("{}:{}", ["a", "b", "c"][b as usize % 3], 1 + a % 20)],"why":"slip"}),
                )
            } else {
                body(kind, a, b, c)
            };
            let body = settle_body(kind, body.as_object().unwrap()).unwrap();
            let clock = hour.and_then(|hour| Clock::from_hm(hour, 0));
            let draft = Draft { happened, clock, who: "t".into(), kind: kind.into(), body };
            made.push(Row { draft, device, recorded: Moment::end_of(happened.plus(late), 3.0) });
        }
        made
    })
}

/// The rows as three copies wrote them.
pub fn sealed(rows: &[Row]) -> Vec<Sealed> {
    let mut last: [Option<(u64, outplant::nursery::envelope::Hash)>; 3] = [None; 3];
    rows.iter()
        .map(|row| {
            let before = last[row.device];
            let seq = before.map_or(1, |(seq, _)| seq + 1);
            let id = EntryId { device: DeviceId::new(["a", "b", "c"][row.device]).unwrap(), seq };
            let sealed = row.draft.seal(id, row.recorded, seq, before.map(|(_, hash)| hash));
            last[row.device] = Some((seq, sealed.hash));
            sealed
        })
        .collect()
}

/// The rows as a person writes them.
pub fn plain(rows: &[Row]) -> Vec<String> {
    rows.iter()
        .map(|Row { draft, .. }| {
            let mut line = draft.body.clone();
            line.insert("kind".into(), Value::from(draft.kind.as_str()));
            line.insert("happened".into(), Value::from(draft.happened.to_string()));
            if let Some(clock) = draft.clock {
                line.insert("clock".into(), Value::from(clock.to_string()));
            }
            Value::Object(line).to_string()
        })
        .collect()
}

/// A nursery in a folder of its own.
pub struct Place {
    folder: tempfile::TempDir,
    whole_below: u64,
}

impl Place {
    /// An empty one; books of fewer entries are read whole.
    pub fn empty(whole_below: u64) -> Place {
        let place = Place { folder: tempfile::tempdir().unwrap(), whole_below };
        drop(Journal::begin(&place.file(), place.folder.path()).unwrap());
        place
    }

    pub fn file(&self) -> PathBuf {
        self.folder.path().join("book.outplant")
    }

    pub fn desk(&self) -> Desk {
        Desk::open_reading_whole_below(&self.file(), self.folder.path(), now(), self.whole_below).unwrap()
    }

    /// Every entry as it stands.
    pub fn lines(&self) -> Vec<String> {
        let mut text = Vec::new();
        let reading = outplant::desk::Reading::open(&self.file(), std::path::Path::new("")).unwrap();
        reading.export(outplant::desk::Export::Lines, &mut text).unwrap();
        String::from_utf8(text).unwrap().lines().map(str::to_string).collect()
    }
}

pub fn now() -> Now {
    let today = Day::from_number(FIRST_DAY + DAYS + 50);
    Now { today, clock: Clock::from_hm(17, 30), moment: Moment::end_of(today, 3.0) }
}

/// Takes lines in; more than `at_once` are judged in the file.
pub fn take(desk: &mut Desk, lines: &[String], at_once: usize, only_try: bool) -> Result<Imported, ImportError> {
    let how = How { only_try, at_once };
    desk.import_told(lines.join("\n").as_bytes(), "mara", how, &mut |_| ControlFlow::Continue(()))
}
