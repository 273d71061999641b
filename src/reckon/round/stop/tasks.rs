//! What each task of the round is to the book: which entries do it, and how much of them is written.

use super::Task;
use crate::nursery::caution::Caution;
use crate::nursery::entry::subject::Subject;
use crate::nursery::entry::types::GroundTask;
use crate::reckon::picture::{BedPicture, Picture, Rule};
use crate::reckon::stock::{BedStory, LotStory, TrayStory, Treatment, Treatments};

/// The facts of a task.
#[derive(Clone, Copy, Debug)]
pub struct TaskFacts {
    /// The task.
    pub task: Task,
    /// The kind of entry that does it.
    pub kind: &'static str,
    /// Kinds that do it too.
    also: &'static [&'static str],
    /// The work it is, where it is work on the ground.
    pub ground: Option<GroundTask>,
    /// What could hurt somebody who does it; none where it needs no caution.
    pub caution: Option<Caution>,
    written: Written,
}

/// What it is about, and how much of it stands in the book: more with each entry that does the task, less when one is
/// taken back.
#[derive(Clone, Copy, Debug)]
enum Written {
    /// The rain of the day.
    Rain,
    Tray(fn(&TrayStory) -> u64),
    Lot(fn(&LotStory) -> u64),
    Bed(fn(&BedPicture) -> u64),
    /// Work on the ground of a bed.
    Ground,
    /// Waiting times of a tray, a place or a bed.
    Waits,
    /// The light of a bed or a place.
    Light,
    /// What was seen of a pest and done against it.
    Sick,
}

/// Every task, in the order of [`Task`].
pub const TASKS: [TaskFacts; 38] = [
    TaskFacts::of(Task::Gauge, "weather", None, Written::Rain),
    TaskFacts::of(Task::GoOut, "outplanted", Some(Caution::Planting), Written::Tray(|story| story.accounts.planted)),
    TaskFacts::of(Task::LastDay, "outplanted", Some(Caution::Planting), Written::Tray(planted_given_or_culled))
        .or_by(&["culled", "given_out"]),
    TaskFacts::of(Task::Count, "counted", None, Written::Tray(counts)),
    TaskFacts::of(
        Task::StopWaiting,
        "moved_on",
        Some(Caution::Potting),
        Written::Tray(|story| moved_or_culled(story) + counts(story)),
    )
    .or_by(&["culled"]),
    TaskFacts::of(
        Task::SowAgain,
        "resown",
        Some(Caution::Sowing),
        Written::Tray(|story| story.accounts.sown + many(story.sowings.len())),
    ),
    TaskFacts::of(Task::PrickOut, "moved_on", Some(Caution::Potting), Written::Tray(moved_or_culled)),
    TaskFacts::of(Task::PotOn, "moved_on", Some(Caution::Potting), Written::Tray(moved_or_culled)).or_by(&["culled"]),
    TaskFacts::of(
        Task::CutRoots,
        "roots_cut",
        Some(Caution::Knives),
        Written::Tray(|story| many(story.roots_cut.len()) + moved_or_culled(story)),
    )
    .or_by(&["culled", "moved_on"]),
    TaskFacts::of(Task::Cull, "culled", None, Written::Tray(moved_culled_or_carried)).or_by(&["moved_on"]),
    TaskFacts::of(Task::SpaceOut, "let_go", Some(Caution::Lifting), Written::Tray(moved_culled_or_carried))
        .or_by(&["culled", "moved_on"]),
    TaskFacts::of(Task::BeginHardening, "hardening_begun", Some(Caution::ShadeCloth), Written::Tray(steps))
        .or_by(&STEPS),
    TaskFacts::of(Task::Shade, "shade_set", Some(Caution::ShadeCloth), Written::Tray(steps)).or_by(&STEPS),
    TaskFacts::of(Task::IntoShade, "carried", Some(Caution::ShadeCloth), Written::Tray(steps)).or_by(&["shade_set"]),
    TaskFacts::of(Task::Water, "watering_set", None, Written::Tray(steps)).or_by(&STEPS),
    TaskFacts::of(Task::Measure, "measured", None, Written::Tray(|story| many(story.samples.len()))),
    TaskFacts::of(Task::CheckPlug, "plug_checked", None, Written::Tray(|story| many(story.plugs.len()))),
    TaskFacts::of(Task::ReadLabel, "treated", Some(Caution::Spraying), Written::Waits),
    TaskFacts::of(Task::TreatmentOver, "counted", Some(Caution::AfterSpraying), Written::Tray(counts)),
    TaskFacts::of(Task::Sick, "pest_seen", Some(Caution::Hygiene), Written::Sick).or_by(&[
        "culled",
        "treated",
        "plants_lost",
        "survival_counted",
    ]),
    TaskFacts::of(Task::TestLot, "lot_tested", Some(Caution::SeedTest), Written::Lot(|lot| many(lot.tests.len()))),
    TaskFacts::of(Task::SowLot, "sown", Some(Caution::Sowing), Written::Lot(|lot| u64::from(lot.sown))),
    TaskFacts::of(
        Task::ThrowOutLot,
        "lot_counted",
        Some(Caution::Sowing),
        Written::Lot(|lot| u64::from(lot.seeds_left == Some(0)) + many(lot.tests.len())),
    )
    .or_by(&["lot_tested", "sown"]),
    TaskFacts::on_ground(Task::Clear, GroundTask::Cleared),
    TaskFacts::on_ground(Task::Holes, GroundTask::Holes),
    TaskFacts::on_ground(Task::Weed, GroundTask::Weeded),
    TaskFacts::on_ground(Task::Mulch, GroundTask::Mulched),
    TaskFacts::on_ground(Task::Fence, GroundTask::Fenced),
    TaskFacts::of(
        Task::WaterBed,
        "plants_watered",
        Some(Caution::Watering),
        Written::Bed(|bed| many(bed.story.watered.len() + bed.story.soil.len())),
    )
    .or_by(&["soil_checked"]),
    TaskFacts::of(Task::CountNurses, "nurse_counted", Some(Caution::InTheField), Written::Bed(last_nurse_counts)),
    TaskFacts::of(Task::CutBunches, "nurse_cut", Some(Caution::Felling), Written::Bed(cuts)).or_by(&["nurse_counted"]),
    TaskFacts::of(Task::LiftTubers, "nurse_cut", Some(Caution::Felling), Written::Bed(cuts)),
    TaskFacts::of(Task::CutForLight, "nurse_cut", Some(Caution::Felling), Written::Bed(cuts)).or_by(&["light_read"]),
    TaskFacts::of(Task::SetNurses, "nurse_planted", Some(Caution::Blades), Written::Bed(nurses_set)),
    TaskFacts::of(Task::RemoveNurses, "nurse_cut", Some(Caution::Felling), Written::Bed(cuts))
        .or_by(&["nurse_counted"]),
    TaskFacts::of(Task::ReadLight, "light_read", None, Written::Light).or_by(&["place_set"]),
    TaskFacts::of(Task::CheckSoil, "soil_checked", None, Written::Bed(|bed| many(bed.story.soil.len()))),
    TaskFacts::of(
        Task::CountSurvivors,
        "survival_counted",
        Some(Caution::InTheField),
        Written::Bed(|bed| many(bed.story.survival.len())),
    ),
];

/// A step toward the outside is one of light or of water, or is said aloud.
const STEPS: [&str; 4] = ["carried", "shade_set", "watering_set", "hardening_begun"];

impl TaskFacts {
    const fn of(task: Task, kind: &'static str, caution: Option<Caution>, written: Written) -> TaskFacts {
        TaskFacts { task, kind, also: &[], ground: None, caution, written }
    }

    const fn on_ground(task: Task, work: GroundTask) -> TaskFacts {
        let caution = Some(Caution::of_ground(work));
        TaskFacts { task, kind: "prepared", also: &[], ground: Some(work), caution, written: Written::Ground }
    }

    const fn or_by(mut self, also: &'static [&'static str]) -> TaskFacts {
        self.also = also;
        self
    }

    /// Whether an entry of a kind does the task.
    pub(crate) fn is_done_by(&self, kind: &str) -> bool {
        self.kind == kind || self.also.contains(&kind)
    }
}

impl Task {
    /// Its facts.
    pub fn facts(self) -> &'static TaskFacts {
        &TASKS[self as usize]
    }
}

/// How much has been written of what a task asks for. Two Pictures compared by it tell a task that was done from one that
/// only is not due any more.
pub(crate) fn written_for(task: Task, subject: &Subject, picture: &Picture) -> u64 {
    let facts = task.facts();
    match (facts.written, subject) {
        (Written::Tray(written), Subject::Tray(code)) => picture.trays.get(code).map_or(0, |tray| written(&tray.story)),
        (Written::Lot(written), Subject::Lot(code)) => picture.lots.get(code).map_or(0, |lot| written(lot)),
        (Written::Bed(written), Subject::Bed(name)) => picture.beds.get(name).map_or(0, |bed| written(bed)),
        (Written::Ground, Subject::Bed(name)) => {
            let work = picture.beds.get(name).into_iter().flat_map(|bed| &bed.story.work);
            many(work.filter(|work| Some(work.task) == facts.ground).count())
        }
        (Written::Waits, Subject::Tray(code)) => {
            picture.trays.get(code).map_or(0, |tray| waits(&tray.story.treatments))
        }
        (Written::Waits, Subject::Place(name)) => picture.places.get(name).map_or(0, |place| waits(&place.treatments)),
        (Written::Waits, Subject::Bed(name)) => picture.beds.get(name).map_or(0, |bed| waits(&bed.story.treatments)),
        (Written::Sick, Subject::Tray(code)) => picture.trays.get(code).map_or(0, |tray| {
            let story = &tray.story;
            many(story.pests.len() + story.culled_on.len() + story.treatments.iter().count())
        }),
        (Written::Sick, Subject::Bed(name)) => {
            let written = |bed: &BedStory| bed.pests.len() + bed.deaths.len() + bed.treatments.iter().count();
            picture.beds.get(name).map_or(0, |bed| many(written(&bed.story)))
        }
        (Written::Light, Subject::Bed(name)) => picture.beds.get(name).map_or(0, |bed| many(bed.story.light.len())),
        (Written::Light, Subject::Place(name)) => picture.places.get(name).map_or(0, |place| many(place.light.len())),
        (Written::Rain, Subject::Site) => {
            u64::from(picture.site.weather.get(&picture.day).is_some_and(|(_, weather)| weather.rain_mm.is_some()))
        }
        (
            Written::Tray(_)
            | Written::Lot(_)
            | Written::Bed(_)
            | Written::Ground
            | Written::Waits
            | Written::Sick
            | Written::Light
            | Written::Rain,
            _,
        ) => 0,
    }
}

/// The work that a question asks for while it is not met; none where it is answered by waiting or by a person.
pub(crate) fn work_for(rule: Rule) -> Option<Task> {
    match rule {
        Rule::DaysInContainer => Some(Task::PotOn),
        Rule::Plug => Some(Task::CheckPlug),
        Rule::Hardening | Rule::ExposureStep => Some(Task::BeginHardening),
        Rule::Treated => Some(Task::TreatmentOver),
        Rule::Pest => Some(Task::Sick),
        Rule::Load | Rule::Living => Some(Task::Count),
        Rule::Height | Rule::Collar | Rule::Leaves => Some(Task::Measure),
        Rule::LightNow => Some(Task::ReadLight),
        Rule::Soil => Some(Task::CheckSoil),
        Rule::Cleared => Some(Task::Clear),
        Rule::Holes => Some(Task::Holes),
        Rule::Weeded => Some(Task::Weed),
        Rule::Mulched => Some(Task::Mulch),
        Rule::Fenced => Some(Task::Fence),
        Rule::DaysSinceSowing
        | Rule::Flush
        | Rule::Held
        | Rule::PlantBack
        | Rule::GoodUntil
        | Rule::BareRoots
        | Rule::Grafted
        | Rule::LightComing
        | Rule::Water
        | Rule::Season
        | Rule::OpenPositions => None,
    }
}

fn many(number: usize) -> u64 {
    u64::try_from(number).unwrap_or(u64::MAX)
}

fn waits(treatments: &Treatments) -> u64 {
    let written = |one: &Treatment| usize::from(one.wait_days.is_some()) + usize::from(one.plant_after_days.is_some());
    many(treatments.iter().map(written).sum())
}

fn counts(story: &TrayStory) -> u64 {
    many(story.counts.len())
}

fn moved_or_culled(story: &TrayStory) -> u64 {
    story.accounts.moved_out + story.accounts.culled_in_all()
}

fn moved_culled_or_carried(story: &TrayStory) -> u64 {
    moved_or_culled(story) + many(story.places.len())
}

fn planted_given_or_culled(story: &TrayStory) -> u64 {
    story.accounts.planted + story.accounts.given_out + story.accounts.culled_in_all()
}

fn steps(story: &TrayStory) -> u64 {
    many(story.shades.len() + story.places.len() + story.waterings.len() + story.hardening_begun.len())
}

fn cuts(bed: &BedPicture) -> u64 {
    many(bed.story.cuts.len() + bed.story.light.len()).saturating_add(last_nurse_counts(bed))
}

fn nurses_set(bed: &BedPicture) -> u64 {
    many(bed.story.nurses.len())
}

/// A count of nurse plants is only kept as its day: a later day is more.
fn last_nurse_counts(bed: &BedPicture) -> u64 {
    let days = bed.story.nurses.iter().filter_map(|nurse| nurse.counted_on);
    days.map(|day| u64::try_from(day.number()).unwrap_or(0)).sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::word::Word;
    use crate::nursery::entry::kind_of_entry;

    #[test]
    fn each_task_finds_its_own_facts_and_is_done_by_kinds_that_there_are() {
        assert_eq!(TASKS.len(), Task::WORDS.len());
        for (task, _) in Task::WORDS {
            let facts = task.facts();
            assert_eq!(facts.task, *task);
            assert!(facts.is_done_by(facts.kind));
            for kind in facts.also.iter().chain([&facts.kind]) {
                assert!(kind_of_entry(kind).is_some(), "{task}: {kind}");
            }
        }
    }
}
