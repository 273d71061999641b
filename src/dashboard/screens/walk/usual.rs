//! What Enter does at a stop, and what the letters write there: the right form with all that is known.

use crate::dashboard::act::{AtStop, FormFor};
use crate::dashboard::context::ScreenContext;
use crate::dashboard::form::{begun, begun_at, where_to};
use crate::reckon::round::Stop;
use crate::reckon::round::to_write::{self, Known, Writing, next_step, shade_pct};

/// The form of a stop's usual action. `passed` are parts of the stop that were handed in already: beds a tray went to,
/// nurse plants that were counted.
pub(crate) fn usual(stop: &Stop, passed: &[String], cx: &ScreenContext<'_>) -> FormFor {
    let (picture, today) = (&cx.book.picture, cx.book.now.today);
    let day = cx.writing_day.unwrap_or(today);
    let entry = to_write::to_write(stop, Writing { picture, today, day, passed });
    let typed = |known: &Known| match known {
        Known::Text(text) => text.clone(),
        Known::Number(number) => number.to_string(),
        Known::Species(species) => cx.species(Some(species)),
        Known::Yes => "true".to_string(),
        Known::LetGo(because) => cx.wording.let_go_because(*because),
    };
    let preset = entry.fields.iter().map(|(name, known)| ((*name).to_string(), typed(known))).collect();
    let form = FormFor { kind: entry.kind.to_string(), preset, ..FormFor::default() };
    let moved = stop.tray().and_then(|code| picture.trays.get(code)).filter(|_| entry.kind == "moved_on");
    let pricked = form.preset.iter().any(|(name, how)| name == "how" && how == "pricked_out");
    let form = match moved {
        Some(tray) => where_to(form, tray, pricked, picture),
        None => form,
    };
    begun_at(form).at_stop(AtStop::Task(stop.id.clone()))
}

/// The form of a letter at a stop.
pub(crate) fn beside(kind: &str, stop: &Stop, cx: &ScreenContext<'_>) -> FormFor {
    let mut form = begun(kind, Some(&stop.subject), cx);
    let step = next_step(stop);
    match kind {
        "shade_set" => {
            if let Some(next) = step.and_then(|step| step.next.as_ref()) {
                form = form.with("shade_pct", shade_pct(next.light));
            }
        }
        "watering_set" => {
            if let Some(days) = step.and_then(|step| step.water_every_days) {
                form = form.with("every_days", days);
            }
        }
        _ => {}
    }
    begun_at(form)
}

/// The parts a stop has that are written one by one: beds, or nurse plants.
pub(crate) fn parts(stop: &Stop, cx: &ScreenContext<'_>) -> Vec<String> {
    to_write::parts(stop, &cx.book.picture, cx.writing_day.unwrap_or(cx.book.now.today))
}

/// The water of a step whose light was just written: a step of light and water is two entries, and it is asked for in one
/// go, for the round takes the step as done with the first of them.
pub(crate) fn water_of_step(stop: &Stop, kind: &str) -> Option<FormFor> {
    let days = next_step(stop)?.water_every_days?;
    let is_light = matches!(kind, "carried" | "shade_set");
    let form = FormFor::about("watering_set", Some(&stop.subject)).with("every_days", days);
    is_light.then(|| form.beginning_at("every_days"))
}
