//! The loading list: how it is kept on disk, and how its lines become entries.

use serde::{Deserialize, Serialize};

use crate::base::Day;
use crate::dashboard::context::ScreenContext;
use crate::desk::read_typed;
use crate::nursery::envelope::Draft;
use crate::reckon::loading::LoadLine;

/// The list as it is kept.
#[derive(Debug, Default, Serialize, Deserialize)]
struct Kept {
    lines: Vec<LoadLine>,
}

/// The list as a text to be kept; empty where nothing is on it.
pub(super) fn to_text(lines: &[LoadLine]) -> String {
    if lines.is_empty() {
        return String::new();
    }
    serde_json::to_string(&Kept { lines: lines.to_vec() }).unwrap_or_default()
}

/// The list of a kept text; what cannot be read is an empty list.
pub(super) fn of_text(kept: &str) -> Vec<LoadLine> {
    serde_json::from_str::<Kept>(kept).map(|kept| kept.lines).unwrap_or_default()
}

/// The day that what goes out is written for.
pub(super) fn day(cx: &ScreenContext<'_>) -> Day {
    cx.writing_day.unwrap_or(cx.book.now.today)
}

/// One draft for each line, read as what is typed is read; the error is what to tell the person.
pub(super) fn drafts(lines: &[LoadLine], cx: &ScreenContext<'_>) -> Result<Vec<Draft>, String> {
    let draft = |line: &LoadLine| {
        let pairs = [
            format!("tray={}", line.tray),
            format!("bed={}", line.bed),
            format!("count={}", line.plants),
            format!("happened={}", day(cx)),
        ];
        read_typed("outplanted", &pairs, cx.book.now.today, cx.who).map_err(|fault| cx.wording.pair_fault(&fault))
    };
    lines.iter().map(draft).collect()
}
