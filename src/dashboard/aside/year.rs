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

/// Draws the days one after another from the first, and hands each over; ends where a newer year is asked for or nobody
/// listens. `from` is the book as it was on the first day, or today where that is still to come. It goes on from day to day:
/// nothing is folded twice, and one book is held.
pub(crate) fn draw_year(
    asked: YearAsked,
    from: FromThen,
    (newest, mine): (&Newest, u64),
    give: &mut dyn FnMut(SeasonDay) -> bool,
) {
    let FromThen { then: mut fold, mut later, reaching, .. } = from;
    for i in 0..asked.days {
        if newest.load(Ordering::SeqCst) != mine {
            return;
        }
        let view = View { day: asked.from.plus(asked.step_days * i as i32), known: None };
        let (new, rest) = later.into_iter().partition(|entry| Ledger::belongs(view, entry));
        later = rest;
        fold.go_to(view, new, &reaching);
        if !give(fold.season_day()) {
            return;
        }
    }
}
