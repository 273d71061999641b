//! A year drawn in the background: some fifty days, on a thread of its own that gives up as soon as another year is asked
//! for. Frames and writing never wait for it.

use std::sync::atomic::Ordering;

use super::Newest;
use crate::base::Day;
use crate::reckon::season::SeasonDay;
use crate::reckon::{FromThen, Ledger, View};

/// Which days are wanted.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) struct YearAsked {
    /// Which drawing of the book it is asked for: days of another are not of this book any more.
    pub(crate) generation: u64,
    /// The first day.
    pub(crate) from: Day,
    /// Days from one to the next.
    pub(crate) step_days: i32,
    /// How many days.
    pub(crate) days: usize,
}

/// Draws the days one after another, those nearest today first, and hands each over; ends where a newer year is asked for or
/// nobody listens. `from` is the book as it was on the first day, or today where that is still to come.
pub(crate) fn draw_year(
    asked: YearAsked,
    today: Day,
    from: &FromThen,
    (newest, mine): (&Newest, u64),
    give: &mut dyn FnMut(SeasonDay) -> bool,
) {
    let mut days: Vec<Day> = (0..asked.days).map(|i| asked.from.plus(asked.step_days * i as i32)).collect();
    days.sort_by_key(|day| day.days_since(today).abs());
    for day in days {
        if newest.load(Ordering::SeqCst) != mine {
            return;
        }
        let fold = from.on(day, |entry| Ledger::belongs(View { day, known: None }, entry));
        if !give(fold.season_day()) {
            return;
        }
    }
}
