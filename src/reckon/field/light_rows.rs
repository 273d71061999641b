//! Light row by row, where it was read so.

use std::collections::{BTreeMap, BTreeSet};

use super::rows::rows_recorded;
use crate::base::Day;
use crate::reckon::bed::light_now::counting;
use crate::reckon::stock::{BedStory, LightLook};

/// The light of a row.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) struct RowLight {
    /// Share of the open light.
    pub share: f64,
    /// The day it was read.
    pub read_on: Day,
}

/// The newest reading of each row that was read on its own, among those that count on a day; empty where none was.
pub(crate) fn light_rows(story: &BedStory, day: Day) -> BTreeMap<u32, RowLight> {
    let mut rows = BTreeMap::new();
    for look in counting(story, day) {
        for row in rows_of(look) {
            rows.insert(row, RowLight { share: look.share, read_on: look.day });
        }
    }
    rows
}

fn rows_of(look: &LightLook) -> BTreeSet<u32> {
    let Some(part) = &look.part else { return BTreeSet::new() };
    let mut rows = part.rows.as_deref().and_then(rows_recorded).unwrap_or_default();
    rows.extend(part.spots.iter().map(|(row, _)| *row));
    rows
}
