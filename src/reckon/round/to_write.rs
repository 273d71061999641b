//! The entry that does a stop's task, with the fields that are known.

use super::expected::seeds_again;
use super::stop::{NextStep, NurseWork, RoundReason, Stop, Task, ToBed, ToLight};
use crate::base::{BedName, Day, PlaceName, SpeciesKey, TrayCode};
use crate::nursery::entry::subject::Subject;
use crate::reckon::light::coming::has_followers;
use crate::reckon::picture::quantity::PestLacks;
use crate::reckon::picture::{NursePicture, Picture};
use crate::reckon::seed::lot_to_sow;

/// Days for which a task is let go at first. Ours.
pub(crate) const LET_GO_DAYS: i32 = 7;

/// An entry to be written; what only a look can tell is missing.
#[derive(Clone, PartialEq, Debug)]
pub(crate) struct ToWrite {
    /// Its kind.
    pub kind: &'static str,
    /// The fields that are known, by name.
    pub fields: Vec<(&'static str, Known)>,
}

/// What is known of a field.
#[derive(Clone, PartialEq, Debug)]
pub enum Known {
    /// A name, a word or a day.
    Text(String),
    /// A number.
    Number(i64),
    /// A species.
    Species(SpeciesKey),
    /// It is so.
    Yes,
    /// Why a task is let go.
    LetGo(LetGoBecause),
}

/// Why a task is let go by doing it.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum LetGoBecause {
    /// Nothing comes up any more.
    NothingComes,
    /// The tray was set apart from others.
    SetApart,
}

/// What an entry is written against.
#[derive(Clone, Copy, Debug)]
pub struct Writing<'a> {
    /// What the book says.
    pub picture: &'a Picture,
    /// Today.
    pub today: Day,
    /// The day on which what is written happened.
    pub day: Day,
    /// Parts of the stop that were written already: beds a tray went to, nurse plants that were counted.
    pub passed: &'a [String],
}

impl ToWrite {
    /// An entry of a kind about something.
    fn about(kind: &'static str, subject: &Subject) -> ToWrite {
        let (name, value) = match subject {
            Subject::Tray(code) => (if kind == "moved_on" { "from" } else { "tray" }, code.to_string()),
            Subject::Lot(code) => ("lot", code.to_string()),
            Subject::Bed(name) => ("bed", name.to_string()),
            Subject::Place(name) => ("place", name.to_string()),
            Subject::Site => return ToWrite { kind, fields: Vec::new() },
        };
        ToWrite { kind, fields: vec![(if kind == "noted" { "about" } else { name }, Known::Text(value))] }
    }

    fn with(mut self, name: &'static str, known: Known) -> ToWrite {
        self.fields.push((name, known));
        self
    }

    fn text(self, name: &'static str, value: impl ToString) -> ToWrite {
        self.with(name, Known::Text(value.to_string()))
    }

    fn number(self, name: &'static str, value: impl Into<i64>) -> ToWrite {
        self.with(name, Known::Number(value.into()))
    }
}

/// The entry that does a stop's task.
pub(crate) fn to_write(stop: &Stop, writing: Writing<'_>) -> ToWrite {
    let about = |kind| ToWrite::about(kind, &stop.subject);
    match stop.task {
        Task::GoOut | Task::LastDay => going_out(stop, writing),
        Task::StopWaiting if standing(stop, writing.picture) == 0 => {
            let_go(stop).with("never", Known::Yes).with("why", Known::LetGo(LetGoBecause::NothingComes))
        }
        Task::SpaceOut => {
            let until = writing.today.plus(2 * LET_GO_DAYS);
            let_go(stop).text("until", until).with("why", Known::LetGo(LetGoBecause::SetApart))
        }
        Task::PrickOut | Task::StopWaiting => moved(stop, "pricked_out", writing.picture),
        // What is potted on stands where it stood.
        Task::PotOn => {
            let tray = stop.tray().and_then(|code| writing.picture.trays.get(code));
            let place = tray.and_then(|tray| tray.place.as_ref());
            let entry = moved(stop, "potted_on", writing.picture);
            place.map_or_else(|| entry.clone(), |place| entry.clone().text("place", place))
        }
        Task::BeginHardening | Task::Shade | Task::IntoShade | Task::Water => step(stop),
        Task::Cull => culled(stop),
        Task::TreatmentOver if stop.tray().is_none() => about("noted"),
        Task::ReadLabel => label(stop),
        Task::Sick => sick(stop),
        Task::CountNurses => nurses(stop, writing),
        Task::CutBunches | Task::LiftTubers | Task::CutForLight | Task::SetNurses | Task::RemoveNurses => {
            nurse_work(stop, writing.picture)
        }
        Task::CountSurvivors => survivors(stop),
        Task::SowLot => sown(stop, writing.picture),
        Task::ThrowOutLot => about("lot_counted").number("seeds", 0),
        Task::SowAgain => sown_again(stop, writing.picture),
        Task::ReadLight if stop.tray().is_none() && stop.bed().is_none() => light_of_place(stop, writing.picture),
        Task::Clear
        | Task::Holes
        | Task::Weed
        | Task::Mulch
        | Task::Fence
        | Task::Gauge
        | Task::Count
        | Task::TreatmentOver
        | Task::Measure
        | Task::CheckPlug
        | Task::CutRoots
        | Task::TestLot
        | Task::ReadLight
        | Task::WaterBed
        | Task::CheckSoil => {
            let facts = stop.task.facts();
            let entry = about(facts.kind);
            facts.ground.map_or_else(|| entry.clone(), |work| entry.clone().text("task", work))
        }
    }
}

/// What was done with what is sick: thrown out, or looked at again.
fn sick(stop: &Stop) -> ToWrite {
    match &stop.why {
        RoundReason::SickOpen { lacks: Some(PestLacks::Deed), .. } => ToWrite::about("treated", &stop.subject),
        RoundReason::SickOpen { what, lacks: Some(PestLacks::TakenOut { .. }), .. } => {
            ToWrite::about("plants_lost", &stop.subject).text("cause", what)
        }
        RoundReason::SickOpen { what, lacks: Some(PestLacks::ThrownOut { .. } | PestLacks::WholeTray), .. }
        | RoundReason::SickOpen { what, done: false, lacks: None, leaves: None, few: false, .. }
            if stop.tray().is_some() =>
        {
            ToWrite::about("culled", &stop.subject).text("why", what)
        }
        RoundReason::SickOpen { what, .. } => ToWrite::about("pest_seen", &stop.subject).text("what", what),
        _ => ToWrite::about("pest_seen", &stop.subject),
    }
}

/// The same treatment again, on its day, with the waiting time left to write: it completes the earlier one.
fn label(stop: &Stop) -> ToWrite {
    let entry = ToWrite::about("treated", &stop.subject);
    match &stop.why {
        RoundReason::LabelNotRead { with, day, .. } => entry.text("with", with).text("happened", day),
        _ => entry,
    }
}

/// The parts a stop has that are written one by one: beds, or nurse plants not counted on a day.
pub fn parts(stop: &Stop, picture: &Picture, day: Day) -> Vec<String> {
    if stop.task == Task::CountNurses {
        return uncounted(stop, picture, day).iter().map(|nurse| nurse.nurse.to_string()).collect();
    }
    beds(stop).iter().map(|to| to.bed.to_string()).collect()
}

/// The step of light and water that a stop asks for.
pub(crate) fn next_step(stop: &Stop) -> Option<&NextStep> {
    if let RoundReason::HardeningNotBegun { step, .. }
    | RoundReason::StepDue { step, .. }
    | RoundReason::IntoShade { step, .. } = &stop.why
    {
        Some(step)
    } else {
        None
    }
}

/// The place a tray is to be carried to.
pub(crate) fn carried_to(stop: &Stop) -> Option<&PlaceName> {
    next_step(stop)?.next.as_ref()?.place.as_ref()
}

/// The shade that leaves so much light, whole percent.
pub fn shade_pct(light_share: f64) -> i64 {
    ((1.0 - light_share) * 100.0).round().clamp(0.0, 100.0) as i64
}

/// The next free code beside one: `cof-032` where `cof-031` is the highest; none where the code has no number.
pub(crate) fn next_code(beside: &str, picture: &Picture) -> Option<TrayCode> {
    let (letters, _) = beside.rsplit_once('-')?;
    let numbers = picture.trays.keys().filter_map(|code| {
        let (before, number) = code.as_str().rsplit_once('-')?;
        let digits = !number.is_empty() && number.bytes().all(|byte| byte.is_ascii_digit());
        (before == letters && digits).then(|| number.parse::<u32>().ok().map(|value| (value, number.len())))?
    });
    let (highest, width) = numbers.max()?;
    TrayCode::new(&format!("{letters}-{:0width$}", highest.checked_add(1)?)).ok()
}

fn let_go(stop: &Stop) -> ToWrite {
    ToWrite { kind: "let_go", fields: Vec::new() }.text("task", &stop.id)
}

fn standing(stop: &Stop, picture: &Picture) -> u32 {
    stop.tray().and_then(|code| picture.trays.get(code)).map_or(0, |tray| tray.standing)
}

/// The beds a tray goes to today, best first; those that others leave no room in only where there is no better.
fn beds(stop: &Stop) -> Vec<&ToBed> {
    let RoundReason::Fits { beds, .. } = &stop.why else { return Vec::new() };
    let with_room: Vec<&ToBed> = beds.iter().filter(|to| to.after_others > 0).collect();
    if with_room.is_empty() { beds.iter().take(1).collect() } else { with_room }
}

/// The beds a tray goes to today, each with how many.
pub(crate) fn loads(stop: &Stop) -> Vec<(&BedName, u32)> {
    beds(stop).into_iter().map(|to| (&to.bed, load_of(to))).collect()
}

/// How many go to a bed: as many as the hands of today plant of those that others leave room for; where they leave none, as many as it
/// could take.
fn load_of(to: &ToBed) -> u32 {
    [to.today, to.after_others].into_iter().find(|plants| *plants > 0).unwrap_or(to.plants)
}

fn going_out(stop: &Stop, writing: Writing<'_>) -> ToWrite {
    let entry = ToWrite::about("outplanted", &stop.subject);
    let beds = beds(stop);
    let to = beds.iter().find(|to| !writing.passed.contains(&to.bed.to_string())).or(beds.first());
    match to {
        Some(to) => entry.text("bed", &to.bed).number("count", load_of(to)),
        None => entry.number("count", standing(stop, writing.picture)),
    }
}

fn moved(stop: &Stop, how: &str, picture: &Picture) -> ToWrite {
    let mut entry = ToWrite::about("moved_on", &stop.subject).text("how", how);
    if let Some(code) = stop.tray().and_then(|tray| next_code(tray.as_str(), picture)) {
        entry = entry.text("to", code);
    }
    let left = if let RoundReason::BareLeft { left, .. } = &stop.why { Some(*left) } else { None };
    entry.number("count", left.unwrap_or_else(|| standing(stop, picture)))
}

fn culled(stop: &Stop) -> ToWrite {
    let entry = ToWrite::about("culled", &stop.subject);
    if let RoundReason::SampleFails { rest, .. } = &stop.why { entry.number("count", *rest) } else { entry }
}

/// A step is taken by carrying the tray to a brighter place, else by the shade, else by the water; hardening without a
/// step is said aloud.
fn step(stop: &Stop) -> ToWrite {
    let about = |kind| ToWrite::about(kind, &stop.subject);
    match next_step(stop) {
        Some(NextStep { next: Some(ToLight { place: Some(place), .. }), .. }) => about("carried").text("place", place),
        Some(NextStep { next: Some(next), .. }) => about("shade_set").number("shade_pct", shade_pct(next.light)),
        Some(NextStep { water_every_days: Some(days), .. }) => about("watering_set").number("every_days", *days),
        Some(_) | None => about("hardening_begun"),
    }
}

/// Living nurse plants that were not counted on a day, oldest count first.
fn uncounted<'a>(stop: &Stop, picture: &'a Picture, day: Day) -> Vec<&'a NursePicture> {
    let Some(bed) = stop.bed().and_then(|name| picture.beds.get(name)) else { return Vec::new() };
    let mut living: Vec<&NursePicture> =
        bed.nurses.iter().filter(|nurse| nurse.alive > 0 && nurse.counted_on.is_none_or(|on| on < day)).collect();
    living.sort_by_key(|nurse| nurse.counted_on.unwrap_or(nurse.planted));
    let mut seen: Vec<&SpeciesKey> = Vec::new();
    living.retain(|nurse| {
        !seen.contains(&&nurse.nurse) && {
            seen.push(&nurse.nurse);
            true
        }
    });
    living
}

fn nurses(stop: &Stop, writing: Writing<'_>) -> ToWrite {
    let entry = ToWrite::about("nurse_counted", &stop.subject);
    let living = uncounted(stop, writing.picture, writing.day);
    let next = living.iter().find(|nurse| !writing.passed.contains(&nurse.nurse.to_string())).or(living.first());
    match next {
        Some(nurse) => entry.with("nurse", Known::Species(nurse.nurse.clone())),
        None => entry,
    }
}

/// What is cut of which nurse plant, and of how many; of the next ones which ended.
fn nurse_work(stop: &Stop, picture: &Picture) -> ToWrite {
    let entry = ToWrite::about(stop.task.facts().kind, &stop.subject);
    let RoundReason::NurseWork(work) = &stop.why else { return entry };
    let of = |nurse: &SpeciesKey| entry.clone().with("nurse", Known::Species(nurse.clone()));
    match work {
        NurseWork::Bunches { nurse, bunches, .. } => of(nurse).text("what", "harvest").number("count", *bunches),
        NurseWork::Tubers { nurse, plants, .. } => of(nurse).text("what", "harvest").number("count", *plants),
        NurseWork::TooDark { .. } => {
            let bed = stop.bed().and_then(|name| picture.beds.get(name));
            let most = bed.and_then(|bed| bed.nurses.iter().max_by_key(|nurse| nurse.alive));
            let followed = |key| picture.site.profile(key).is_some_and(|profile| has_followers(profile));
            most.map_or_else(
                || entry.clone(),
                |most| of(&most.nurse).text("what", if followed(&most.nurse) { "stem" } else { "leaves" }),
            )
        }
        NurseWork::SetNext(end) => of(&end.nurse),
        NurseWork::PastLife { nurse, plants, .. } => of(nurse).text("what", "felled").number("count", *plants),
    }
}

fn survivors(stop: &Stop) -> ToWrite {
    let entry = ToWrite::about("survival_counted", &stop.subject);
    let RoundReason::SurvivalDue { species, planted_on, .. } = &stop.why else { return entry };
    entry.with("species", Known::Species(species.clone())).text("outplanted_on", planted_on)
}

/// A place that nobody described is described, next in the order of the walk, with its shade left to write; elsewhere the
/// light is read.
fn light_of_place(stop: &Stop, picture: &Picture) -> ToWrite {
    let described = |name| picture.site.places.get(name).is_some_and(|place| place.on(picture.day).is_some());
    match &stop.subject {
        Subject::Place(name) if !described(name) => {
            let orders = picture.site.places.values().filter_map(|place| place.on(picture.day));
            let next = orders.map(|set| set.order.0).max().unwrap_or(0).saturating_add(1);
            ToWrite::about("place_set", &stop.subject).number("order", next)
        }
        subject => ToWrite::about("light_read", subject),
    }
}

fn sown(stop: &Stop, picture: &Picture) -> ToWrite {
    let mut entry = ToWrite::about("sown", &stop.subject);
    let Some(lot) = stop.lot() else { return entry };
    if let Some(code) = next_code(lot.as_str(), picture) {
        entry = entry.text("tray", code);
    }
    match picture.lots.get(lot).and_then(|lot| lot.seeds_left) {
        Some(seeds) => entry.number("seeds", seeds),
        None => entry,
    }
}

/// From the lot of its species that is sown first and lives, as many seeds as are missing and there.
fn sown_again(stop: &Stop, picture: &Picture) -> ToWrite {
    let entry = ToWrite::about("resown", &stop.subject);
    let tray = stop.tray().and_then(|code| picture.trays.get(code));
    let lot = tray.and_then(|tray| tray.species.as_ref()).and_then(|key| lot_to_sow(key, picture));
    // Of fresh seed only the number is known.
    let entry = lot.map_or_else(|| entry.clone(), |lot| entry.clone().text("lot", &lot.code));
    let RoundReason::SowAgainAsked { told, again, .. } = &stop.why else { return entry };
    let missing = seeds_again(told, again).ceil().clamp(0.0, f64::from(u32::MAX)) as u32;
    entry.number("seeds", lot.and_then(|lot| lot.seeds_left).map_or(missing, |left| missing.min(left)))
}
