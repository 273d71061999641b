//! `sample`: a copy of the sample nursery, always alive.

use serde_json::json;
use std::path::Path;

use super::answer::Ending;
use super::args::{Ready, Sample};
use super::ready;
use super::run::{Exit, Run, ending_of};
use crate::desk::sample::{self, SampleError};
use crate::desk::{Desk, DeskError, JournalError};
use crate::nursery::species::Catalogue;

/// Makes a copy and opens it; with `--into` only makes it.
pub(crate) fn run(run: &Run, arguments: &Sample) -> Result<Ending, Exit> {
    if let Some(into) = &arguments.into {
        run.made_in_a_file(into)?;
        let desk = make(run, into)?;
        if run.everywhere.json {
            let file = into.display().to_string();
            return run.answer_json(&json!({"version":1,"file":file,"entries":desk.count()}));
        }
        return run.answer(&format!("{}\n", run.wording.sample_made(into.display())));
    }
    let desk = opened(run)?;
    let ended = ready::show(run, &desk, &Ready::default())?;
    if !run.everywhere.json {
        let own = run.around.folders.sample_nursery();
        run.answer(&format!("\n{}\n", run.wording.sample_look(own.display())))?;
    }
    Ok(ended)
}

/// The program's own copy of the sample, made again where it is missing or nobody has written in it.
pub(crate) fn opened(run: &Run) -> Result<Desk, Exit> {
    let own = run.around.folders.sample_nursery();
    Ok(match Desk::open(&own, &run.around.folders.settings, run.now) {
        Ok(desk) if sample::is_stale(&desk) => {
            // Nobody has written in it: its days are counted again from today.
            drop(desk);
            sample::take_away(&own);
            make(run, &own)?
        }
        Ok(desk) => desk,
        Err(DeskError::Journal(JournalError::NotThere(_))) => make(run, &own)?,
        Err(fault) => return Err(run.exit_for(&fault, &Catalogue::built_in())),
    })
}

fn make(run: &Run, file: &Path) -> Result<Desk, Exit> {
    sample::make(file, &run.around.folders.settings, run.now).map_err(|fault| match fault {
        SampleError::Text(faults) => Exit {
            ending: Ending::Damaged,
            lines: faults.listed.iter().map(|fault| run.wording.line_fault(fault)).collect(),
        },
        SampleError::Desk(DeskError::Journal(fault)) => {
            let line = run.wording.journal_error(&fault, &file.display().to_string());
            Exit { ending: ending_of(&fault), lines: vec![line] }
        }
        SampleError::Desk(fault) => run.exit_for(&fault, &Catalogue::built_in()),
    })
}
