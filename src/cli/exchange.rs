//! `import` and `export`.

use std::fs::File;
use std::io::{BufRead, BufReader, ErrorKind};

use super::answer::{Ending, note};
use super::args::{Export as ExportArguments, ExportAs, Import, ImportAs};
use super::run::{Run, Stopped};
use super::write;
use crate::desk::{Export, ExportError, ImportError};

/// Takes a file of entries, whole or not at all.
pub fn import(run: &Run, arguments: &Import) -> Result<Ending, Stopped> {
    run.only_today()?;
    match arguments.what {
        ImportAs::Entries => {}
    }
    let mut desk = run.desk()?;
    let shown = arguments.file.display().to_string();
    let input: Box<dyn BufRead> = if shown == "-" {
        Box::new(BufReader::new(std::io::stdin()))
    } else {
        let file = File::open(&arguments.file).map_err(|fault| {
            Stopped::refused(match fault.kind() {
                ErrorKind::NotFound => run.wording.file_not_there(&shown),
                _ => run.wording.file_other(&shown, fault),
            })
        })?;
        Box::new(BufReader::new(file))
    };
    let species = desk.fold().site().species.clone();
    let imported = desk.import(input, &run.who, arguments.dry_run).map_err(|fault| match fault {
        ImportError::Read(fault) => {
            let mut lines = run.wording.read_fault(&fault, &shown);
            lines.push(run.wording.nothing_written());
            Stopped { ending: Ending::Refused, lines }
        }
        ImportError::Desk(fault) => run.stopped(&fault, &species),
    })?;
    if arguments.dry_run {
        if run.everywhere.json {
            return write::told(run, &desk, &imported.recorded);
        }
        return run.answer(&format!("{}\n", run.wording.dry_run(imported.lines as i64)));
    }
    if imported.recorded.already > 0 && !run.everywhere.json {
        note(&run.wording.already_here(imported.recorded.already as i64));
    }
    if imported.recorded.entries.is_empty() && !run.everywhere.json {
        let taken = imported.lines - imported.recorded.already;
        return run.answer(&format!("{}\n", run.wording.taken(taken as i64)));
    }
    write::told(run, &desk, &imported.recorded)
}

/// Gives every entry out.
pub fn export(run: &Run, arguments: &ExportArguments) -> Result<Ending, Stopped> {
    let what = match arguments.what {
        ExportAs::Entries => Export::Lines,
        ExportAs::Csv => Export::Csv,
    };
    let file = &run.file;
    let journal = crate::desk::Reading::open(file).map_err(|fault| run.stopped_by_file(&fault))?;
    let given = match &arguments.to {
        Some(to) => journal.export_to(what, to),
        None => journal.export(what, &mut std::io::stdout().lock()),
    };
    match given {
        Ok(entries) => {
            if let Some(to) = &arguments.to {
                note(&run.wording.exported(entries as i64, to.display()));
            }
            Ok(Ending::Done)
        }
        Err(ExportError::Out(fault)) if fault.kind() == ErrorKind::BrokenPipe => Ok(Ending::Done),
        Err(ExportError::Out(fault)) => Err(Stopped { ending: Ending::File, lines: vec![fault.to_string()] }),
        Err(ExportError::File(fault)) => {
            let ending =
                if matches!(fault, crate::desk::FileFault::Io { .. }) { Ending::File } else { Ending::Refused };
            Err(Stopped { ending, lines: vec![run.wording.file_fault(&fault)] })
        }
        Err(ExportError::Journal(fault)) => Err(run.stopped_by_file(&fault)),
    }
}
