//! What may really stand in a tray: a number carries its age and widens as it gets old.

use crate::base::{Day, Range};
use crate::reckon::stock::{Origin, TrayStory};

/// A count older than this is shown as a range, days (ours).
pub(crate) const OLD_AFTER_DAYS: i32 = 21;
/// Weekly loss taken where this nursery has not shown its own (ours).
const USUAL_WEEKLY_LOSS: f64 = 0.01;
/// The nursery's own weekly loss leads once so many plant-weeks are on record (ours).
const ENOUGH_PLANT_WEEKS: f64 = 500.0;
/// The weekly loss is told in steps of this share (ours).
const LOSS_STEP: f64 = 0.0005;
/// An "about" count may be off by this share either way (ours).
const ABOUT_SHARE: f64 = 0.10;

/// What was lost in trays, and how long their plants were there: whole numbers, so that a tray can be taken out again.
#[derive(Clone, Copy, PartialEq, Eq, Default, Debug)]
pub(crate) struct Losses {
    lost: u128,
    /// Plants times days since their tray was made.
    plant_days: u128,
}

impl Losses {
    /// Adds what a tray's record says on a day.
    pub fn add(&mut self, story: &TrayStory, day: Day) {
        let of_it = Losses::of(story, day);
        self.lost += of_it.lost;
        self.plant_days += of_it.plant_days;
    }

    /// Takes out what was added for this record on the same day.
    pub fn take_out(&mut self, story: &TrayStory, day: Day) {
        let of_it = Losses::of(story, day);
        self.lost -= of_it.lost;
        self.plant_days -= of_it.plant_days;
    }

    fn of(story: &TrayStory, day: Day) -> Losses {
        let Some(made) = story.made_on else { return Losses::default() };
        let accounts = &story.accounts;
        let gone = u128::from(accounts.lost_in_all());
        let went = [accounts.standing, accounts.moved_out, accounts.planted, accounts.given_out];
        let most = went.into_iter().map(u128::from).sum::<u128>() + gone;
        let days = u128::from(day.days_since(made).clamp(0, 365).unsigned_abs());
        Losses { lost: gone, plant_days: most * days }
    }

    /// The nursery's own loss in a week, as a share of what stands.
    pub(crate) fn weekly(self) -> f64 {
        // About half of the time passes before plants stand, and half of those that went were there: a rough mean.
        let plant_weeks = self.plant_days as f64 / 7.0 / 2.0;
        if plant_weeks < ENOUGH_PLANT_WEEKS {
            return USUAL_WEEKLY_LOSS;
        }
        let share = (self.lost as f64 / plant_weeks).clamp(0.001, 0.25);
        // So coarse that one dead seedling more does not judge a whole nursery anew.
        (share / LOSS_STEP).round() * LOSS_STEP
    }
}

/// Low, likely and high of what stands in a tray on a day: `likely` is what the books hold, or what a later count of part
/// of the cells means.
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
    let mut likely = books;
    if let Some(part) = &story.part_look {
        // What came and went since moves the estimate as it moved the books.
        let since = books - part.books as f64;
        let estimate = part.estimate();
        likely = (estimate.likely + since).max(0.0);
        low = low.min(estimate.low + since).clamp(0.0, likely);
        high = if part.contradicts() { estimate.high + since } else { high.max(estimate.high + since) }.max(likely);
    }
    Range::new(low.floor(), likely, high.ceil())
}
