//! Looks that are due, by what they save.

use crate::base::Day;
use crate::reckon::bed::season::safe_rains_from;
use crate::reckon::forecast::worth::{Decision, WorthLooking, of_count, of_measure, of_test};
use crate::reckon::round::deadline::UntilFor;
use crate::reckon::round::intervals::LOOK_OPENS;
use crate::reckon::round::seed::plants_wanted;
use crate::reckon::round::stop::{Stop, Task};
use crate::reckon::round::walk::Walk;

/// Looks that can change what is done, those that save most for each minute first.
pub(in crate::reckon::round) fn worth_looking(walk: &Walk<'_>, due: &[Stop]) -> Vec<WorthLooking> {
    let day = walk.day();
    let looks = due.iter().filter_map(|stop| {
        let worth = decision(walk, stop)?.worth(&stop.id, stop.task, stop.minutes, day);
        Some(WorthLooking { most: stop.at_stake.most, ..worth })
    });
    let mut looks: Vec<WorthLooking> = looks.filter(|look| look.saved_per_minute > 0.0).collect();
    looks.sort_by(|a, b| b.saved_per_minute.total_cmp(&a.saved_per_minute).then_with(|| a.stop.cmp(&b.stop)));
    looks
}

/// What is decided by a look; none where it decides nothing, or guards against a loss that nobody can foresee.
fn decision(walk: &Walk<'_>, stop: &Stop) -> Option<Decision> {
    match stop.task {
        Task::Count => {
            let tray = stop.tray()?;
            of_count(walk.outlook.trays.get(tray)?, walk.outlook.again.get(tray)?)
        }
        Task::Measure => {
            let tray = walk.picture.trays.get(stop.tray()?)?;
            of_measure(tray, rains_end(walk, walk.comes_ready(tray).unwrap_or(walk.day())))
        }
        Task::TestLot => {
            let lot = walk.picture.lots.get(stop.lot()?)?;
            let fresh = walk.profile(lot.species.as_ref())?.germination_fresh_pct.as_ref()?.value / 100.0;
            let last_day = stop.until.filter(|_| stop.until_for == Some(UntilFor::SeedLife));
            Some(of_test(plants_wanted(walk, lot), fresh, last_day))
        }
        Task::ReadLight | Task::CheckSoil => {
            let last_day = stop.until.filter(|_| stop.until_for == Some(UntilFor::Rains));
            Some(Decision { chance: LOOK_OPENS, plants: stop.at_stake.plants / LOOK_OPENS, last_day })
        }
        Task::Gauge
        | Task::GoOut
        | Task::LastDay
        | Task::StopWaiting
        | Task::SowAgain
        | Task::PrickOut
        | Task::PotOn
        | Task::CutRoots
        | Task::Cull
        | Task::SpaceOut
        | Task::BeginHardening
        | Task::Shade
        | Task::IntoShade
        | Task::Water
        | Task::CheckPlug
        | Task::TreatmentOver
        | Task::Sick
        | Task::ReadLabel
        | Task::SowLot
        | Task::ThrowOutLot
        | Task::Clear
        | Task::Holes
        | Task::Weed
        | Task::Mulch
        | Task::Fence
        | Task::WaterBed
        | Task::CountNurses
        | Task::CutBunches
        | Task::LiftTubers
        | Task::CutForLight
        | Task::SetNurses
        | Task::RemoveNurses
        | Task::CountSurvivors => None,
    }
}

/// The last safe day of the rains in which what is ready on a day can go out.
fn rains_end(walk: &Walk<'_>, ready: Day) -> Option<Day> {
    safe_rains_from(&walk.picture.site, ready).map(|rains| rains.last_safe)
}
