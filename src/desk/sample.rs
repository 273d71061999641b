//! The sample nursery: an invented place in readable text, its days counted back from today.

use std::path::Path;

use super::refusal::DeskError;
use super::{Desk, Now};
use crate::base::{DeviceId, EntryId, Moment};
use crate::journal::{Journal, JournalError};
use crate::nursery::envelope::{Draft, Sealed};
use crate::share::{LineFaults, read_day_lines};

/// The files of the sample nursery, in the order they are read.
pub(crate) const FILES: [(&str, &str); 8] = [
    ("1-site.txt", include_str!("../../sample-nursery/1-site.txt")),
    ("2-seed.txt", include_str!("../../sample-nursery/2-seed.txt")),
    ("3-trays-first-year.txt", include_str!("../../sample-nursery/3-trays-first-year.txt")),
    ("4-trays-second-rains.txt", include_str!("../../sample-nursery/4-trays-second-rains.txt")),
    ("5-trays-dry-months.txt", include_str!("../../sample-nursery/5-trays-dry-months.txt")),
    ("6-trays-these-rains.txt", include_str!("../../sample-nursery/6-trays-these-rains.txt")),
    ("7-beds.txt", include_str!("../../sample-nursery/7-beds.txt")),
    ("8-rain.txt", include_str!("../../sample-nursery/8-rain.txt")),
];

/// The device under which the sample's entries stand.
pub(crate) const SAMPLE_DEVICE: &str = "sample";
/// Written in a withdrawal for "the entry of the line above".
const LINE_ABOVE: &str = "@previous";
/// What stands for it while the lines are read.
const LINE_ABOVE_ID: &str = "sample:999999999";

/// Why the sample could not be made.
#[derive(Debug)]
pub enum SampleError {
    /// A line of the text; a mistake of ours that the tests find.
    Text(LineFaults),
    /// The file.
    Desk(DeskError),
}

impl From<JournalError> for SampleError {
    fn from(fault: JournalError) -> Self {
        SampleError::Desk(DeskError::Journal(fault))
    }
}

/// The sample's drafts with the moments they were recorded, in that order.
pub fn drafts(now: Now) -> Result<Vec<(Draft, Moment)>, LineFaults> {
    let text: String =
        FILES.iter().map(|(_, text)| text.replace(LINE_ABOVE, LINE_ABOVE_ID)).collect::<Vec<_>>().join("\n");
    let lines = read_day_lines(&text, now.today)?;
    let offset_h = lines.iter().find_map(|(draft, _)| draft.body.get("utc_offset_h")?.as_f64()).unwrap_or(0.0);
    let evening = |day| Moment::from_millis(Moment::end_of(day, offset_h).millis() - 6 * 3_600_000);
    Ok(lines.into_iter().map(|(draft, recorded)| (draft, evening(recorded).min(now.moment))).collect())
}

/// The sample's entries as lines with an identity of their own.
fn sealed(now: Now) -> Result<Vec<Sealed>, LineFaults> {
    let Some(device) = DeviceId::new(SAMPLE_DEVICE) else { return Ok(Vec::new()) };
    let mut lines: Vec<Sealed> = Vec::new();
    for (mut draft, recorded) in drafts(now)? {
        if let Some(above) = lines.last() {
            take_line_above(&mut draft, &above.id);
        }
        let seq = lines.len() as u64 + 1;
        let (prev, latest) = lines.last().map_or((None, recorded), |last| (Some(last.hash), last.recorded));
        lines.push(draft.seal(EntryId { device: device.clone(), seq }, recorded.max(latest), seq, prev));
    }
    Ok(lines)
}

fn take_line_above(draft: &mut Draft, above: &EntryId) {
    if let Some(serde_json::Value::Array(targets)) = draft.body.get_mut("entries") {
        for target in targets.iter_mut().filter(|target| target.as_str() == Some(LINE_ABOVE_ID)) {
            *target = serde_json::Value::from(above.to_string());
        }
    }
}

/// Makes a copy of the sample nursery in a new file.
pub fn make(file: &Path, shelf: &Path, now: Now) -> Result<Desk, SampleError> {
    let mut lines = sealed(now).map_err(SampleError::Text)?;
    super::names::settle_sealed_species(&mut lines);
    let journal = Journal::begin(file, shelf)?;
    let mut desk = Desk::over(journal, now).map_err(SampleError::Desk)?;
    match desk.take_sealed(lines) {
        Ok(()) => Ok(desk),
        Err(fault) => {
            // Without an entry it would only stand in the way of the next try.
            desk.journal.take_away_if_empty();
            Err(SampleError::Desk(fault))
        }
    }
}

/// Takes the file of a sample away, with what SQLite puts beside it; what cannot be taken away stays.
pub(crate) fn take_away(file: &Path) {
    for ending in ["", "-wal", "-shm"] {
        let mut path = file.to_path_buf().into_os_string();
        path.push(ending);
        let _ = std::fs::remove_file(path);
    }
}

/// Whether a file of the sample was made on another day and nobody has written in it, so that it can be made again.
pub(crate) fn is_stale(desk: &Desk) -> bool {
    // A sample that cannot be read is none that can be thrown away.
    let Ok(entries) = desk.read_every_entry() else { return false };
    let own = entries.iter().any(|entry| entry.id.device.as_str() != SAMPLE_DEVICE);
    let newest = entries.iter().map(|entry| entry.happened).max();
    !own && newest != Some(desk.now().today)
}
