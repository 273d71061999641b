//! What may really stand in a tray: a number carries its age and widens as it gets old.

use std::sync::Arc;

use crate::base::{Day, Range};
use crate::reckon::stock::{Origin, TrayStory};

/// A count older than this is shown as a range, days (ours).
pub const OLD_AFTER_DAYS: i32 = 21;
/// Weekly loss taken where this nursery has not shown its own (ours).
const USUAL_WEEKLY_LOSS: f64 = 0.01;
/// The nursery's own weekly loss leads once so many plant-weeks are on record (ours).
const ENOUGH_PLANT_WEEKS: f64 = 500.0;
/// The weekly loss is told in steps of this share (ours).
const LOSS_STEP: f64 = 0.0005;
/// An "about" count may be off by this share either way (ours).
const ABOUT_SHARE: f64 = 0.10;

/// The nursery's own loss in a week, as a share of what stands, from every tray's record.
pub fn weekly_loss<'a>(stories: impl Iterator<Item = &'a Arc<TrayStory>>, day: Day) -> f64 {
    let (mut lost, mut plant_weeks) = (0.0, 0.0);
    for story in stories {
        let Some(made) = story.made_on else { continue };
        let accounts = &story.accounts;
        let gone = accounts.lost_in_all() as f64;
        let most = (accounts.standing + accounts.moved_out + accounts.planted + accounts.given_out) as f64 + gone;
        // About half of the time passes before plants stand, and half of those that went were there: a rough mean.
        plant_weeks += most * f64::from(day.days_since(made).clamp(0, 365)) / 7.0 / 2.0;
        lost += gone;
    }
    if plant_weeks < ENOUGH_PLANT_WEEKS {
        return USUAL_WEEKLY_LOSS;
    }
    let share = (lost / plant_weeks).clamp(0.001, 0.25);
    // So coarse that one dead seedling more does not judge a whole nursery anew.
    (share / LOSS_STEP).round() * LOSS_STEP
}

/// Low, likely and high of what stands in a tray on a day. `likely` stays what the books hold.
pub fn standing_range(story: &TrayStory, weekly_loss: f64, day: Day) -> Range {
    let books = story.accounts.standing as f64;
    let counted = story.counted_on().or(match &story.origin {
        Some(Origin::Sown) => story.made_on,
        Some(Origin::MovedOn(_) | Origin::Received { .. }) | None => None,
    });
    let about = story.last_whole_count().is_some_and(|look| look.about);
    let (mut low, mut high) =
        if about { (books * (1.0 - ABOUT_SHARE), books * (1.0 + ABOUT_SHARE)) } else { (books, books) };
    let age_days = counted.map_or(i32::MAX / 4, |counted| day.days_since(counted));
    if age_days > OLD_AFTER_DAYS && books > 0.0 {
        let weeks = f64::from(age_days.min(3650)) / 7.0;
        low = (low * (1.0 - weekly_loss).powf(weeks)).floor();
    }
    if let Some((seen_low, seen_high)) = part_count(story) {
        low = low.min(seen_low);
        high = high.max(seen_high);
    }
    Range::new(low.floor(), books, high.ceil())
}

/// What a count of part of the cells since the last whole count would mean for the whole tray.
fn part_count(story: &TrayStory) -> Option<(f64, f64)> {
    let last = story.counts.last()?;
    let seen = last.part_of_cells.filter(|seen| *seen > 0)?;
    let cells = f64::from(story.cells?);
    let per_cell = f64::from(last.standing) / f64::from(seen);
    // Two standard errors of a count (Poisson) either way.
    let around = 2.0 * f64::from(last.standing).sqrt() / f64::from(seen);
    Some((((per_cell - around).max(0.0) * cells).floor(), ((per_cell + around) * cells).ceil()))
}
