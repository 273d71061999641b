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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::{Clock, Moment};
    use crate::desk::{Now, sample};

    #[test]
    fn each_day_of_the_year_is_what_the_picture_of_that_day_says() {
        let today: Day = "2026-04-15".parse().unwrap();
        let now = Now { today, clock: Clock::from_hm(7, 0), moment: Moment::end_of(today, 3.0) };
        let folder = tempfile::tempdir().unwrap();
        let desk = sample::make(&folder.path().join("sample.outplant"), folder.path(), now).unwrap();
        let asked = YearAsked { generation: 0, from: today.plus(-180), step_days: 30, days: 12 };
        let from = desk.as_it_was(View { day: asked.from, known: None }).unwrap();
        let mut drawn = Vec::new();
        draw_year(asked, from, (&Newest::default(), 0), &mut |day| {
            drawn.push(day);
            true
        });
        assert_eq!(drawn.len(), asked.days);
        for day in drawn {
            let picture = desk.picture_of(View { day: day.day, known: None }).unwrap();
            let trays = picture.trays.values().map(|tray| (tray.code.clone(), tray.stage)).collect();
            assert_eq!(day.trays, trays, "{}", day.day);
            let lines = picture.beds.values().flat_map(|bed| bed.species.iter().map(|line| (bed.name.clone(), line)));
            let beds = lines.map(|(bed, line)| ((bed, line.species.clone()), line.standing)).collect();
            assert_eq!(day.beds, beds, "{}", day.day);
            assert!(!day.trays.is_empty() && !day.beds.is_empty() && day.shade.len() == picture.beds.len());
        }
    }
}
