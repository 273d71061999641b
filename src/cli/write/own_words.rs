//! `write c1 lost 3`: a line in a person's own words. Where it may mean several things a person is asked which.

use super::super::answer::{Ending, numbered};
use super::super::args::Write;
use super::super::run::{Exit, Run};
use super::{day_of, write_drafts};
use crate::desk::{LineFault, LineFaults, Meant, Reason, Why};
use crate::nursery::envelope::Draft;

/// Writes what a line says, asks which of several things it says, or says why it is not written.
pub(super) fn run(run: &Run, arguments: &Write, line: &str) -> Result<Ending, Exit> {
    let happened = arguments.happened.as_deref().map(|written| day_of(run, written)).transpose()?;
    let mut desk = run.desk_to_write()?;
    let read = desk.read_line(line, happened, &run.who).map_err(|fault| run.desk_fault(fault))?;
    let drafts = match read {
        Ok(drafts) => drafts,
        Err(faults) => chosen(run, &faults, arguments.dry_run)?,
    };
    write_drafts(run, &mut desk, drafts, arguments.dry_run)
}

/// The entries a person chooses where a line may mean several things; else why it is not written.
fn chosen(run: &Run, faults: &LineFaults, only_try: bool) -> Result<Vec<Draft>, Exit> {
    let refused = || {
        let alone = |fault: &LineFault| LineFault { line: 0, column: None, ..fault.clone() };
        let sentences = faults.listed.iter().flat_map(|fault| run.wording.line_fault_and_meant(&alone(fault)));
        let lines = sentences.chain([run.wording.nothing_written()]).collect();
        Exit { ending: Ending::Refused, lines }
    };
    let Some(Reason::Words { why, meant }) = faults.listed.first().map(|fault| &fault.reason) else {
        return Err(refused());
    };
    let whole: Vec<&Vec<Meant>> =
        meant.iter().filter(|entries| entries.iter().all(|entry| entry.missing.is_empty())).collect();
    // What a line says was not done is not offered to be written.
    if !run.can_ask() || only_try || run.everywhere.yes || whole.is_empty() || why.iter().any(Why::is_no_fact) {
        return Err(refused());
    }
    run.note(&run.wording.not_written_as(why, &[]));
    let lines: Vec<String> = whole
        .iter()
        .map(|entries| entries.iter().map(|entry| run.wording.line_meaning(entry)).collect::<Vec<_>>().join(" + "))
        .collect();
    match numbered(&lines, &run.wording.words_ask_which(lines.len() as i64)) {
        Some(at) => Ok(whole[at].iter().map(|entry| entry.draft(&run.who)).collect()),
        None => Err(Exit { ending: Ending::Refused, lines: vec![run.wording.nothing_written()] }),
    }
}
