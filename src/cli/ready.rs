//! `ready`: the main answer, and what changed in it since a day.

use serde_json::json;

use super::answer::Ending;
use super::args::Ready;
use super::ready_json::ready_json;
use super::ready_text::ready_page;
use super::run::{Exit, Run, day_asked};
use super::since::{Since, since_yesterday};
use crate::base::Day;
use crate::desk::Desk;
use crate::reckon::forecast::outlook;

/// Opens the nursery and shows it, or what changed since a day.
pub fn run(run: &Run, arguments: &Ready) -> Result<Ending, Exit> {
    let desk = run.desk()?;
    match &arguments.since {
        Some(written) => changed(run, &desk, day_asked(written, "--since", run.now.today, &run.wording)?),
        None => show(run, &desk),
    }
}

/// Shows which trays are ready for which bed.
pub fn show(run: &Run, desk: &Desk) -> Result<Ending, Exit> {
    let picture = run.picture(desk)?;
    if run.everywhere.json {
        return run.answer_json(&ready_json(&picture, &outlook(&picture, run.forecast_basis), &run.wording));
    }
    let since = since_yesterday(run, desk, &picture)?;
    run.answer(&ready_page(&picture, &run.wording, run.around.columns, run.around.colour, since.as_deref()))
}

/// Shows every verdict that changed since the end of a day.
fn changed(run: &Run, desk: &Desk, day: Day) -> Result<Ending, Exit> {
    let picture = run.picture(desk)?;
    let since = Since::asked(run, day, desk, &picture)?;
    if run.everywhere.json {
        let mut answer = ready_json(&picture, &outlook(&picture, run.forecast_basis), &run.wording);
        answer["since"] = json!(day);
        answer["changes"] = json!(since.json());
        return run.answer_json(&answer);
    }
    run.answer(&since.text(run.around.columns, run.around.colour))
}
