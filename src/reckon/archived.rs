//! What is archived: finished so long ago that no Picture has to hold it. It stays in the book and is brought back when an
//! entry, or a person, speaks of it.

use super::stock::{BedStory, LotStory, TrayStory};
use crate::base::Day;

/// A tray is archived when it has been finished and nothing was written about it for longer than this, days: the Season
/// screen shows a whole year. Ours.
pub(crate) const TRAY_ARCHIVED_AFTER_DAYS: i32 = 400;
/// A tray with seed of which nobody knows when the last is due is archived after so many days without a line. Ours.
pub(crate) const UNKNOWN_SEED_ARCHIVED_AFTER_DAYS: i32 = 730;
/// An empty lot is archived after so many days without a line: the plants from it have gone out by then. Ours.
pub(crate) const LOT_ARCHIVED_AFTER_DAYS: i32 = 730;
/// A lot with seed left by the books is archived after so many days without a line. Ours.
pub(crate) const SEED_ARCHIVED_AFTER_DAYS: i32 = 1825;
/// A planted bed is archived after so many days without a line. Gaps are filled in the first one or two years (common
/// practice); later the canopy closes.
pub(crate) const BED_ARCHIVED_AFTER_DAYS: i32 = 1095;

/// So many archived trays of each species are learned from, the last ones. Ours: enough to outweigh the
/// handbook, and few enough to follow a nursery that changes.
pub(crate) const LEARNED_TRAYS: usize = 40;

/// Whether what is archived from a day on is so on another.
pub fn is_archived(from: Option<Day>, day: Day) -> bool {
    from.is_some_and(|from| from <= day)
}

/// The first day on which a tray is archived, if nothing more is written about it; none where it never is.
pub fn tray_archived_from(story: &TrayStory) -> Option<Day> {
    let last = story.last_on?;
    if story.accounts.standing > 0 {
        return None;
    }
    if story.accounts.seed == 0 && !story.seed_unknown {
        return Some(last.plus(TRAY_ARCHIVED_AFTER_DAYS));
    }
    Some(match story.seed_due_until {
        Some(due) => due.max(last).plus(TRAY_ARCHIVED_AFTER_DAYS),
        None => last.plus(UNKNOWN_SEED_ARCHIVED_AFTER_DAYS),
    })
}

/// The first day on which a lot is archived; none where it is held.
pub fn lot_archived_from(story: &LotStory) -> Option<Day> {
    let last = story.last_on.filter(|_| story.held.is_empty())?;
    let empty = story.seeds_left == Some(0);
    Some(last.plus(if empty { LOT_ARCHIVED_AFTER_DAYS } else { SEED_ARCHIVED_AFTER_DAYS }))
}

/// The first day on which a bed is archived; none where nothing was planted in it, or it is held.
pub fn bed_archived_from(story: &BedStory) -> Option<Day> {
    let last = story.last_on.filter(|_| story.held.is_empty() && !story.cohorts.is_empty())?;
    Some(last.plus(BED_ARCHIVED_AFTER_DAYS))
}
