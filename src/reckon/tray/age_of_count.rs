//! What may really stand in a tray: a number carries its age and widens as it gets old.

use crate::base::{Day, Range};
use crate::reckon::stock::{Origin, TrayStory};

/// A count older than this is shown as a range, days (ours).
pub(crate) const OLD_AFTER_DAYS: i32 = 21;
/// Weekly loss of plants past their first weeks, taken where this nursery has not shown its own (ours).
pub(crate) const USUAL_WEEKLY_LOSS: f64 = 0.01;
/// The same of young seedlings: damping-off, ants, slugs (ours).
pub(crate) const USUAL_WEEKLY_LOSS_YOUNG: f64 = 0.02;
/// The nursery's own weekly loss leads once so many plant-weeks are on record (ours).
const ENOUGH_PLANT_WEEKS: f64 = 500.0;
/// The weekly loss is told in steps of this share (ours).
const LOSS_STEP: f64 = 0.0005;
/// An "about" count may be off by this share either way (ours).
const ABOUT_SHARE: f64 = 0.10;

/// What is lost in a week, as a share of what stands, by stage: damping-off is not the loss of hardened stock.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct WeeklyLoss {
    /// While seed comes up and in the weeks after.
    pub young: f64,
    /// Later.
    pub older: f64,
}

impl WeeklyLoss {
    /// Where this nursery has not shown its own.
    pub(crate) const USUAL: WeeklyLoss = WeeklyLoss { young: USUAL_WEEKLY_LOSS_YOUNG, older: USUAL_WEEKLY_LOSS };
}

/// What was lost in one stage, and how long plants were in it: whole numbers, so that a tray can be taken out again.
#[derive(Clone, Copy, PartialEq, Eq, Default, Debug)]
struct Stage {
    lost: u128,
    /// Plants times days.
    plant_days: u128,
}

impl Stage {
    /// The share lost in a week; the usual one where too little is on record.
    fn weekly(self, usual: f64) -> f64 {
        // About half of the time passes before plants stand, and half of those that went were there: a rough mean.
        let plant_weeks = self.plant_days as f64 / 7.0 / 2.0;
        if plant_weeks < ENOUGH_PLANT_WEEKS {
            return usual;
        }
        let share = (self.lost as f64 / plant_weeks).clamp(0.001, 0.25);
        // So coarse that one dead seedling more does not judge a whole nursery again.
        (share / LOSS_STEP).round() * LOSS_STEP
    }
}

/// What was lost in trays, by stage.
#[derive(Clone, Copy, PartialEq, Eq, Default, Debug)]
pub struct Losses {
    young: Stage,
    older: Stage,
}

impl Losses {
    /// Adds what a tray's record says on a day.
    pub fn add(&mut self, story: &TrayStory, day: Day) {
        let of_it = Losses::of(story, day);
        for (all, one) in [(&mut self.young, of_it.young), (&mut self.older, of_it.older)] {
            all.lost += one.lost;
            all.plant_days += one.plant_days;
        }
    }

    /// Takes out what was added for this record on the same day.
    pub fn take_out(&mut self, story: &TrayStory, day: Day) {
        let of_it = Losses::of(story, day);
        for (all, one) in [(&mut self.young, of_it.young), (&mut self.older, of_it.older)] {
            all.lost -= one.lost;
            all.plant_days -= one.plant_days;
        }
    }

    fn of(story: &TrayStory, day: Day) -> Losses {
        let Some(made) = story.made_on else { return Losses::default() };
        let accounts = &story.accounts;
        let gone = u128::from(accounts.lost_in_all());
        let gone_young = u128::from(accounts.lost_young).min(gone);
        let went = [accounts.standing, accounts.moved_out, accounts.planted, accounts.given_out];
        let most = went.into_iter().map(u128::from).sum::<u128>() + gone;
        let days = day.days_since(made).clamp(0, 365);
        let young_days = story.young_until().map_or(0, |last| last.days_since(made).clamp(0, days));
        let stage = |lost: u128, days: i32| Stage { lost, plant_days: most * u128::from(days.unsigned_abs()) };
        Losses { young: stage(gone_young, young_days), older: stage(gone - gone_young, days - young_days) }
    }

    /// The nursery's own loss in a week, by stage.
    pub(crate) fn weekly(self) -> WeeklyLoss {
        let usual = WeeklyLoss::USUAL;
        WeeklyLoss { young: self.young.weekly(usual.young), older: self.older.weekly(usual.older) }
    }
}

/// Low, likely and high of what stands in a tray on a day: `likely` is what the books hold, or what a later count of part
/// of the cells means.
pub fn standing_range(story: &TrayStory, weekly_loss: WeeklyLoss, day: Day) -> Range {
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
        let age_days = age_days.min(3650);
        let since = day.plus(-age_days);
        let young_days = story.young_until().map_or(0, |last| last.days_since(since).clamp(0, age_days));
        let lives = |loss: f64, days: i32| (1.0 - loss).powf(f64::from(days) / 7.0);
        low = (low * lives(weekly_loss.young, young_days) * lives(weekly_loss.older, age_days - young_days)).floor();
    }
    let mut likely = books;
    if let Some(part) = &story.part_look {
        // What came and went since moves the estimate as it moved the books.
        let since = books - part.books as f64;
        let estimate = part.estimate();
        let told = (estimate.likely + since).max(0.0);
        // What cannot be true together with the books takes plants off until all are counted, and adds none.
        likely = if part.contradicts() { told.min(books) } else { told };
        low = low.min(estimate.low + since).clamp(0.0, likely);
        // No plants come to those of the books where no seed is due, and no more come up than cells have room for.
        let each = f64::from(part.standing.div_ceil(part.seen).max(1));
        let most = if story.seed_is_due(day) { (f64::from(part.cells) * each).max(high) } else { high };
        likely = likely.min(most);
        let told = (estimate.high + since).min(most);
        high = if part.contradicts() { books.min(told) } else { high.max(told) }.max(likely);
        low = low.min(likely);
    }
    Range::new(low.floor(), likely, high.ceil())
}
