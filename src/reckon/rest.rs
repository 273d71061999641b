//! What rests: finished so long ago that no Picture has to hold it. It stays in the book and is brought back when an
//! entry, or a person, speaks of it.

use super::stock::{BedStory, LotStory, TrayStory};
use crate::base::Day;

/// A tray rests when it has been finished and nothing was written about it for longer than this, days: the Season
/// screen shows a whole year. Ours.
pub const TRAY_RESTS_AFTER_DAYS: i32 = 400;
/// A tray with seed of which nobody knows when the last is due rests after so many days without a line. Ours.
pub const UNKNOWN_SEED_RESTS_AFTER_DAYS: i32 = 730;
/// An empty lot rests after so many days without a line: the plants from it have gone out by then. Ours.
pub const LOT_RESTS_AFTER_DAYS: i32 = 730;
/// A lot with seed left by the books rests after so many days without a line. Ours.
pub const SEED_RESTS_AFTER_DAYS: i32 = 1825;
/// A planted bed rests after so many days without a line. Gaps are filled in the first one or two years (common
/// practice); later the canopy closes.
pub const BED_RESTS_AFTER_DAYS: i32 = 1095;

/// So many trays at rest of each species are learned from, the last that came to rest. Ours: enough to outweigh the
/// handbook, and few enough to follow a nursery that changes.
pub const LEARNED_TRAYS: usize = 40;

/// Whether what rests from a day on does on another.
pub fn rests(from: Option<Day>, day: Day) -> bool {
    from.is_some_and(|from| from <= day)
}

/// The first day on which a tray rests, if nothing more is written about it; none where it does not come to rest.
pub fn tray_rests_on(story: &TrayStory) -> Option<Day> {
    let last = story.last_on?;
    if story.accounts.standing > 0 {
        return None;
    }
    if story.accounts.seed == 0 && !story.seed_unknown {
        return Some(last.plus(TRAY_RESTS_AFTER_DAYS));
    }
    Some(match story.seed_due_until {
        Some(due) => due.max(last).plus(TRAY_RESTS_AFTER_DAYS),
        None => last.plus(UNKNOWN_SEED_RESTS_AFTER_DAYS),
    })
}

/// The first day on which a lot rests; none where it is held.
pub fn lot_rests_on(story: &LotStory) -> Option<Day> {
    let last = story.last_on.filter(|_| story.held.is_none())?;
    let empty = story.seeds_left == Some(0);
    Some(last.plus(if empty { LOT_RESTS_AFTER_DAYS } else { SEED_RESTS_AFTER_DAYS }))
}

/// The first day on which a bed rests; none where nothing was planted in it, or it is held.
pub fn bed_rests_on(story: &BedStory) -> Option<Day> {
    let last = story.last_on.filter(|_| story.held.is_none() && !story.cohorts.is_empty())?;
    Some(last.plus(BED_RESTS_AFTER_DAYS))
}
