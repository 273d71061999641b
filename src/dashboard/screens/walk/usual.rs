//! What Enter does at a stop, and what the letters write there: the right form with all that is known.

use crate::base::{PlaceName, SpeciesKey, TrayCode};
use crate::dashboard::form::FormFor;
use crate::dashboard::model::On;
use crate::reckon::picture::NursePicture;
use crate::reckon::round::{NextStep, RoundReason, Stop, Task, ToBed};

/// Days for which a task is let go at first.
pub const LET_GO_DAYS: i32 = 7;

/// The kind of entry that does a task.
pub fn usual_kind(task: Task) -> &'static str {
    match task {
        Task::Gauge => "weather",
        Task::GoOut | Task::LastDay => "outplanted",
        Task::Count | Task::TreatmentOver => "counted",
        Task::PrickOut | Task::PotOn | Task::StopWaiting => "moved_on",
        Task::Cull => "culled",
        Task::SpaceOut => "let_go",
        Task::BeginHardening => "hardening_begun",
        Task::Shade => "shade_set",
        Task::Water => "watering_set",
        Task::Measure => "measured",
        Task::CheckPlug => "plug_checked",
        Task::ReadLabel => "treated",
        Task::TestLot => "lot_tested",
        Task::SowAgain => "resown",
        Task::SowLot => "sown",
        Task::Clear | Task::Holes | Task::Weed | Task::Mulch | Task::Fence => "prepared",
        Task::CountNurses => "nurse_counted",
        Task::ReadLight => "light_read",
        Task::CheckSoil => "soil_checked",
        Task::CountSurvivors => "survival_counted",
    }
}

/// Whether an entry of a kind does a task, where it is not the usual one.
pub fn does_task(task: Task, kind: &str) -> bool {
    let also: &[&str] = match task {
        Task::BeginHardening | Task::Shade | Task::Water => {
            &["carried", "shade_set", "watering_set", "hardening_begun"]
        }
        Task::PotOn | Task::Cull | Task::SpaceOut | Task::StopWaiting => &["culled", "moved_on"],
        Task::LastDay => &["culled", "given_out"],
        Task::Gauge
        | Task::GoOut
        | Task::Count
        | Task::PrickOut
        | Task::Measure
        | Task::CheckPlug
        | Task::TreatmentOver
        | Task::ReadLabel
        | Task::TestLot
        | Task::SowAgain
        | Task::SowLot
        | Task::Clear
        | Task::Holes
        | Task::Weed
        | Task::Mulch
        | Task::Fence
        | Task::CountNurses
        | Task::ReadLight
        | Task::CheckSoil
        | Task::CountSurvivors => &[],
    };
    usual_kind(task) == kind || also.contains(&kind)
}

/// The form of a stop's usual action. `passed` are parts of the stop that were handed in already: beds a tray went to,
/// nurse plants that were counted.
pub fn usual(stop: &Stop, passed: &[String], on: &On<'_>) -> FormFor {
    let subject = Some(&stop.subject);
    let form = match stop.task {
        Task::GoOut | Task::LastDay => going_out(stop, passed, on),
        Task::StopWaiting if standing(stop, on) == 0 => {
            let let_go = FormFor::about("let_go", None).with("task", &stop.id).with("never", "true");
            let_go.with("why", on.wording.walk_nothing_comes())
        }
        Task::SpaceOut => {
            let until = on.book.now.today.plus(2 * LET_GO_DAYS);
            let let_go = FormFor::about("let_go", None).with("task", &stop.id).with("until", until);
            let_go.with("why", on.wording.walk_set_apart())
        }
        Task::PrickOut => moved(stop, "pricked_out", on),
        Task::StopWaiting => moved(stop, "pricked_out", on),
        Task::PotOn => moved(stop, "potted_on", on),
        Task::BeginHardening | Task::Shade | Task::Water => step(stop),
        Task::Cull => culled(stop),
        Task::TreatmentOver if stop.tray().is_none() => FormFor::about("noted", subject),
        Task::ReadLabel => label(stop),
        Task::Clear => prepared(stop, "cleared"),
        Task::Holes => prepared(stop, "holes"),
        Task::Weed => prepared(stop, "weeded"),
        Task::Mulch => prepared(stop, "mulched"),
        Task::Fence => prepared(stop, "fenced"),
        Task::CountNurses => nurses(stop, passed, on),
        Task::CountSurvivors => survivors(stop, on),
        Task::SowLot => sown(stop, on),
        Task::Gauge
        | Task::Count
        | Task::TreatmentOver
        | Task::Measure
        | Task::CheckPlug
        | Task::TestLot
        | Task::SowAgain
        | Task::ReadLight
        | Task::CheckSoil => FormFor::about(usual_kind(stop.task), subject),
    };
    begun_at(form).for_stop(&stop.id)
}

/// The same treatment again, on its day, with the waiting time left to write: it completes the earlier one.
fn label(stop: &Stop) -> FormFor {
    let form = FormFor::about("treated", Some(&stop.subject));
    match &stop.why {
        RoundReason::LabelNotRead { with, day } => form.with("with", with).with("happened", day),
        _ => form,
    }
}

/// The form of a letter at a stop.
pub fn beside(kind: &str, stop: &Stop, on: &On<'_>) -> FormFor {
    let mut form = FormFor::about(kind, Some(&stop.subject));
    let step = next_step(stop);
    match kind {
        "shade_set" => {
            if let Some(light) = step.and_then(|step| step.light_next) {
                form = form.with("shade_pct", shade_pct(light));
            }
        }
        "watering_set" => {
            if let Some(days) = step.and_then(|step| step.water_every_days) {
                form = form.with("every_days", days);
            }
        }
        "moved_on" => {
            if let Some(code) = stop.tray().and_then(|tray| next_code(tray.as_str(), on)) {
                form = form.with("to", code);
            }
        }
        _ => {}
    }
    begun_at(form)
}

/// The parts a stop has that are written one by one: beds, or nurse plants.
pub fn parts(stop: &Stop, on: &On<'_>) -> Vec<String> {
    if stop.task == Task::CountNurses {
        return uncounted(stop, on).iter().map(|nurse| nurse.nurse.to_string()).collect();
    }
    beds(stop).iter().map(|to| to.bed.to_string()).collect()
}

/// The field that a kind is written down with, where it is not the first that is missing.
fn begun_at(mut form: FormFor) -> FormFor {
    let field = match form.kind.as_str() {
        "counted" => "standing",
        "weather" => "rain_mm",
        "outplanted" if form.preset.iter().any(|(name, _)| name == "bed") => "count",
        "moved_on" if form.preset.iter().any(|(name, _)| name == "to") => "count",
        "lost" | "culled" => "count",
        "light_read" => "readings",
        "soil_checked" => "rod_mm",
        "noted" => "text",
        "let_go" => "until",
        "carried" => "place",
        "prepared" => "task",
        _ => return form,
    };
    form.begin_at = Some(field.to_string());
    form
}

fn standing(stop: &Stop, on: &On<'_>) -> u32 {
    stop.tray().and_then(|code| on.book.picture.trays.get(code)).map_or(0, |tray| tray.standing)
}

/// The beds a tray goes to today, best first; those that others leave no room in only where there is no better.
fn beds(stop: &Stop) -> Vec<&ToBed> {
    let RoundReason::Fits { beds, .. } = &stop.why else { return Vec::new() };
    let with_room: Vec<&ToBed> = beds.iter().filter(|to| to.after_others > 0).collect();
    if with_room.is_empty() { beds.iter().take(1).collect() } else { with_room }
}

fn going_out(stop: &Stop, passed: &[String], on: &On<'_>) -> FormFor {
    let form = FormFor::about("outplanted", Some(&stop.subject));
    let beds = beds(stop);
    let to = beds.iter().find(|to| !passed.contains(&to.bed.to_string())).or(beds.first());
    match to {
        Some(to) => {
            let count = if to.after_others > 0 { to.after_others } else { to.plants };
            form.with("bed", &to.bed).with("count", count)
        }
        None => form.with("count", standing(stop, on)),
    }
}

fn moved(stop: &Stop, how: &str, on: &On<'_>) -> FormFor {
    let mut form = FormFor::about("moved_on", Some(&stop.subject)).with("how", how);
    if let Some(code) = stop.tray().and_then(|tray| next_code(tray.as_str(), on)) {
        form = form.with("to", code);
    }
    form.with("count", standing(stop, on))
}

fn culled(stop: &Stop) -> FormFor {
    let form = FormFor::about("culled", Some(&stop.subject));
    if let RoundReason::SampleFails { rest, .. } = &stop.why { form.with("count", rest) } else { form }
}

fn next_step(stop: &Stop) -> Option<&NextStep> {
    if let RoundReason::HardeningNotBegun { step, .. } | RoundReason::StepDue { step, .. } = &stop.why {
        Some(step)
    } else {
        None
    }
}

/// The place a tray is to be carried to.
pub fn carried_to(stop: &Stop) -> Option<&PlaceName> {
    next_step(stop)?.place.as_ref()
}

fn shade_pct(light: f64) -> i64 {
    ((1.0 - light) * 100.0).round().clamp(0.0, 100.0) as i64
}

/// A step is taken by carrying the tray to a brighter place, else by the shade, else by the water; hardening without a
/// step is said aloud.
fn step(stop: &Stop) -> FormFor {
    let about = |kind: &str| FormFor::about(kind, Some(&stop.subject));
    match next_step(stop) {
        Some(NextStep { place: Some(place), .. }) => about("carried").with("place", place),
        Some(NextStep { light_next: Some(light), .. }) => about("shade_set").with("shade_pct", shade_pct(*light)),
        Some(NextStep { water_every_days: Some(days), .. }) => about("watering_set").with("every_days", days),
        Some(_) | None => about("hardening_begun"),
    }
}

/// The water of a step whose light was just written: a step of light and water is two entries, and it is asked for in one
/// go, for the round takes the step as done with the first of them.
pub fn water_of_step(stop: &Stop, kind: &str) -> Option<FormFor> {
    let days = next_step(stop)?.water_every_days?;
    let is_light = matches!(kind, "carried" | "shade_set");
    let form = FormFor::about("watering_set", Some(&stop.subject)).with("every_days", days);
    is_light.then(|| form.beginning_at("every_days"))
}

fn prepared(stop: &Stop, task: &str) -> FormFor {
    FormFor::about("prepared", Some(&stop.subject)).with("task", task)
}

/// Living nurse plants that were not counted on the day written for, oldest count first.
fn uncounted<'a>(stop: &Stop, on: &'a On<'_>) -> Vec<&'a NursePicture> {
    let Some(bed) = stop.bed().and_then(|name| on.book.picture.beds.get(name)) else { return Vec::new() };
    let day = on.writing_day.unwrap_or(on.book.now.today);
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

fn nurses(stop: &Stop, passed: &[String], on: &On<'_>) -> FormFor {
    let form = FormFor::about("nurse_counted", Some(&stop.subject));
    let living = uncounted(stop, on);
    let next = living.iter().find(|nurse| !passed.contains(&nurse.nurse.to_string())).or(living.first());
    next.map_or_else(|| form.clone(), |nurse| form.clone().with("nurse", on.species(Some(&nurse.nurse))))
}

fn survivors(stop: &Stop, on: &On<'_>) -> FormFor {
    let form = FormFor::about("survival_counted", Some(&stop.subject));
    let RoundReason::SurvivalDue { species, planted_on, .. } = &stop.why else { return form };
    form.with("species", on.species(Some(species))).with("outplanted_on", planted_on)
}

fn sown(stop: &Stop, on: &On<'_>) -> FormFor {
    let mut form = FormFor::about("sown", Some(&stop.subject));
    let Some(lot) = stop.lot() else { return form };
    if let Some(code) = next_code(lot.as_str(), on) {
        form = form.with("tray", code);
    }
    match on.book.picture.lots.get(lot).and_then(|lot| lot.seeds_left) {
        Some(seeds) => form.with("seeds", seeds),
        None => form,
    }
}

/// The next free code beside one: `cof-032` where `cof-031` is the highest; none where the code has no number.
fn next_code(beside: &str, on: &On<'_>) -> Option<TrayCode> {
    let (letters, _) = beside.rsplit_once('-')?;
    let numbers = on.book.picture.trays.keys().filter_map(|code| {
        let (before, number) = code.as_str().rsplit_once('-')?;
        let digits = !number.is_empty() && number.bytes().all(|byte| byte.is_ascii_digit());
        (before == letters && digits).then(|| number.parse::<u32>().ok().map(|value| (value, number.len())))?
    });
    let (highest, width) = numbers.max()?;
    TrayCode::new(&format!("{letters}-{:0width$}", highest.checked_add(1)?)).ok()
}
