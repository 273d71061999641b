//! Whether a stop was done: how much stands in the book of what its task asks for.

use super::stop::Task;
use crate::nursery::entry::subject::Subject;
use crate::nursery::entry::types::GroundTask;
use crate::reckon::picture::{BedPicture, Picture};
use crate::reckon::stock::TrayStory;

/// How much has been written of what a task asks for: it grows with each entry that does the task, and falls when one is
/// taken back. Two Pictures compared by it tell a task that was done from one that only is not due any more.
pub fn written_for(task: Task, subject: &Subject, picture: &Picture) -> u64 {
    match subject {
        Subject::Tray(code) => picture.trays.get(code).map_or(0, |tray| for_tray(task, &tray.story)),
        Subject::Bed(name) => picture.beds.get(name).map_or(0, |bed| for_bed(task, bed)),
        Subject::Lot(code) => picture
            .lots
            .get(code)
            .map_or(0, |lot| if task == Task::SowLot { u64::from(lot.sown) } else { many(lot.tests.len()) }),
        Subject::Site => {
            u64::from(picture.site.weather.get(&picture.day).is_some_and(|(_, weather)| weather.rain_mm.is_some()))
        }
        Subject::Place(_) => 0,
    }
}

fn many(number: usize) -> u64 {
    u64::try_from(number).unwrap_or(u64::MAX)
}

fn for_tray(task: Task, story: &TrayStory) -> u64 {
    let accounts = &story.accounts;
    let culled = accounts.culled_in_all();
    match task {
        Task::Measure => many(story.samples.len()),
        Task::CheckPlug => many(story.plugs.len()),
        Task::BeginHardening | Task::Shade | Task::Water => {
            many(story.shades.len() + story.places.len() + story.waterings.len() + story.hardening_begun.len())
        }
        Task::PrickOut | Task::PotOn => accounts.moved_out + culled,
        Task::Cull | Task::SpaceOut => accounts.moved_out + culled + many(story.places.len()),
        Task::GoOut => accounts.planted,
        Task::LastDay => accounts.planted + accounts.given_out + culled,
        Task::StopWaiting => accounts.moved_out + culled + many(story.counts.len()),
        Task::SowAgain => accounts.sown + many(story.sowings.len()),
        Task::Count
        | Task::TreatmentOver
        | Task::ReadLabel
        | Task::Gauge
        | Task::TestLot
        | Task::SowLot
        | Task::Clear
        | Task::Holes
        | Task::Weed
        | Task::Mulch
        | Task::Fence
        | Task::CountNurses
        | Task::ReadLight
        | Task::CheckSoil
        | Task::CountSurvivors => many(story.counts.len()),
    }
}

fn for_bed(task: Task, bed: &BedPicture) -> u64 {
    let story = &bed.story;
    let work = |wanted: GroundTask| many(story.work.iter().filter(|work| work.task == wanted).count());
    match task {
        Task::Clear => work(GroundTask::Cleared),
        Task::Holes => work(GroundTask::Holes),
        Task::Weed => work(GroundTask::Weeded),
        Task::Mulch => work(GroundTask::Mulched),
        Task::Fence => work(GroundTask::Fenced),
        Task::ReadLight => many(story.light.len()),
        Task::CheckSoil => many(story.soil.len()),
        Task::CountSurvivors => many(story.survival.len()),
        // A count is only kept as its day: a later day is more.
        Task::CountNurses => {
            let days = story.nurses.iter().filter_map(|nurse| nurse.counted_on);
            days.map(|day| u64::try_from(day.number()).unwrap_or(0)).sum()
        }
        Task::Gauge
        | Task::GoOut
        | Task::LastDay
        | Task::Count
        | Task::StopWaiting
        | Task::PrickOut
        | Task::PotOn
        | Task::Cull
        | Task::SpaceOut
        | Task::BeginHardening
        | Task::Shade
        | Task::Water
        | Task::Measure
        | Task::CheckPlug
        | Task::TreatmentOver
        | Task::ReadLabel
        | Task::TestLot
        | Task::SowAgain
        | Task::SowLot => 0,
    }
}
