//! One plan of the day: what to load first, each plant and each place given away once, as the walk gives them away.

use super::list::LoadLine;
use crate::base::Day;
use crate::reckon::picture::Picture;
use crate::reckon::round::{ToBed, going, last_day_of, most_urgent_first};

/// What goes out of a tray to a bed, and how much of it the hands of today plant.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Planned {
    /// All that goes.
    pub line: LoadLine,
    /// How many of them today; all where nobody wrote how many plants a day are planted.
    pub today: u32,
    /// The day of the last of the rest.
    pub rest_on: Option<Day>,
    /// How many have no hands by the last day.
    pub late: u32,
    /// The last day on which the tray goes out well.
    pub last: Option<Day>,
}

/// What goes out, the tray with the nearest last day first, each with the beds that have room for it.
pub(crate) fn day_plan(picture: &Picture) -> Vec<Planned> {
    let going = going(picture);
    let planned = |tray, to: &ToBed| Planned {
        line: LoadLine { tray, bed: to.bed.clone(), plants: to.after_others },
        today: to.today,
        rest_on: to.rest_on,
        late: to.late,
        last: None,
    };
    let trays = most_urgent_first(picture, &going).into_iter();
    let loads = trays.flat_map(|tray| {
        let last = last_day_of(picture, &going, &tray);
        let beds = going.get(&tray).into_iter().flatten().filter(|to| to.after_others > 0);
        beds.map(|to| Planned { last, ..planned(tray.clone(), to) }).collect::<Vec<_>>()
    });
    loads.collect()
}
