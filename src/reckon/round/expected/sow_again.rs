//! Sowings far behind at the half day: whether to sow again, and until when that still reaches the rains.

use crate::base::{Day, Range};
use crate::reckon::forecast::{Judgement, SowAgain, TrayForecast};
use crate::reckon::picture::{Measure, TrayPicture};
use crate::reckon::round::deadline::UntilFor;
use crate::reckon::round::intervals::{NO_LAST_DAY_DAYS, SOW_AGAIN_ASKED_DAYS, SOW_AGAIN_SOURCE, minutes, work};
use crate::reckon::round::stop::{LastLook, RoundReason, Stake, Stop, Task};
use crate::reckon::round::walk::Walk;
use crate::reckon::seed::lot_to_sow;

/// Sowings to make again.
pub(in crate::reckon::round) fn sow_again(walk: &Walk<'_>) -> Vec<Stop> {
    walk.picture.trays.values().filter_map(|tray| asked(walk, tray)).collect()
}

fn asked(walk: &Walk<'_>, tray: &TrayPicture) -> Option<Stop> {
    let day = walk.day();
    let told = walk.told(tray).filter(|told| told.ask_to_sow_again)?;
    match told.judgement {
        Judgement::Failing | Judgement::Slow | Judgement::Finished => {}
        Judgement::TooEarly | Judgement::OnItsWay => return None,
    }
    let mut again = *walk.outlook.again.get(&tray.code)?;
    // What the other trays give is not missing.
    again.missing = again.missing.min(walk.still_short(tray.species.as_ref()).unwrap_or(f64::INFINITY));
    let asked_until = told.last_due.plus(SOW_AGAIN_ASKED_DAYS);
    if day > asked_until || again.missing < 1.0 || is_sown_again(walk, tray, told) {
        return None;
    }
    let to_sow =
        tray.species.as_ref().and_then(|species| lot_to_sow(species, walk.picture)).map(|lot| lot.code.clone());
    let fresh = to_sow.is_none();
    // What came up so badly is not sown again unseen.
    let lot = to_sow.filter(|lot| tray.story.sowings.iter().all(|sowing| sowing.lot.as_ref() == Some(lot)));
    let sow_by = again.sow_by();
    let days = sow_by.map_or(NO_LAST_DAY_DAYS, |by| by.days_since(day) + 1);
    let mut stop = walk
        .tray_stop(tray, Task::SowAgain, RoundReason::SowAgainAsked { told: Box::new(told.clone()), again, fresh, lot })
        .risking(Stake::Planting, again.missing, days)
        .taking(minutes::LOOK, SOW_AGAIN_SOURCE)
        .working(seeds_again(told, &again) * work::SOW)
        .due(half_day(told), SOW_AGAIN_ASKED_DAYS);
    let (until, what) = match sow_by {
        Some(by) => (by, UntilFor::SowBy),
        None => (asked_until, UntilFor::Window),
    };
    stop = stop.until(Some(until), what);
    stop.last =
        told.last_look.map(|day| LastLook { day, figure: Measure::Plants(Range::exact(f64::from(tray.standing))) });
    stop.entries.clone_from(&told.entries);
    Some(stop)
}

/// Seeds to sow again: as many plants as did not come, at the share at which they come; never more than the first time.
pub(in crate::reckon::round) fn seeds_again(told: &TrayForecast, again: &SowAgain) -> f64 {
    (again.missing / told.curve.d.clamp(0.05, 1.0)).min(f64::from(told.seeds))
}

/// The look at which the question could first be asked.
fn half_day(told: &TrayForecast) -> Day {
    told.last_look.unwrap_or(told.sown_on)
}

/// Whether the same species was sown again after the question could be asked: half of the way to its last day.
fn is_sown_again(walk: &Walk<'_>, tray: &TrayPicture, told: &TrayForecast) -> bool {
    let half = told.sown_on.plus(told.last_due.days_since(told.sown_on) / 2);
    walk.picture.trays.values().any(|other| {
        let sown_later = other.story.sowings.iter().any(|sowing| sowing.day > half && other.story.moves_out.is_empty());
        other.code != tray.code && other.species == tray.species && sown_later
    })
}
