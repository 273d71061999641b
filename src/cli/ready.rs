//! `ready`: the main answer.

use super::answer::Ending;
use super::ready_json::ready_json;
use super::ready_text::ready_text;
use super::run::{Run, Stopped};
use crate::desk::Desk;

/// Opens the nursery and shows it.
pub fn run(run: &Run) -> Result<Ending, Stopped> {
    let desk = run.desk()?;
    show(run, &desk)
}

/// Shows which trays are ready for which bed.
pub fn show(run: &Run, desk: &Desk) -> Result<Ending, Stopped> {
    let picture = run.picture(desk);
    if run.everywhere.json {
        return run.answer_json(&ready_json(&picture, &run.wording));
    }
    run.answer(&ready_text(&picture, &run.wording, run.around.columns, run.around.colour))
}
