//! `import` and `export`.

use serde_json::json;
use std::io::{BufRead, ErrorKind};

use super::answer::{Ending, note};
use super::args::{Export as ExportArguments, ExportAs, Import, ImportAs};
use super::input::opened;
use super::json::geojson;
use super::progress::{Watch, import_stopped};
use super::run::{Exit, Run};
use super::{first_day, write};
use crate::desk::{AT_ONCE, Export, ExportError, FileFault, How, SheetKind, TableFor, write_new_file};
use crate::wording::Lang;

/// Takes a file of entries, or a sheet of trays or beds, whole or not at all.
pub(crate) fn import(run: &Run, arguments: &Import) -> Result<Ending, Exit> {
    run.only_today()?;
    match arguments.what {
        ImportAs::Entries => entries(run, arguments),
        ImportAs::Trays => first_day::import(run, arguments, SheetKind::Trays),
        ImportAs::Beds => first_day::import(run, arguments, SheetKind::Beds),
        ImportAs::Weather => first_day::import(run, arguments, SheetKind::Weather),
    }
}

fn entries(run: &Run, arguments: &Import) -> Result<Ending, Exit> {
    let mut desk = run.desk()?;
    let mut watch = Watch::begin(run, import_stopped);
    let mut input = match opened(run, &arguments.file) {
        Ok(input) => input,
        Err(exit) => {
            watch.end();
            return Err(exit);
        }
    };
    if input.fill_buf().is_ok_and(|begin| begin.starts_with(b"SQLite format 3\0")) {
        watch.end();
        return Err(Exit::refused(run.wording.import_of_a_nursery(arguments.file.display())));
    }
    let species = desk.fold().site().species.clone();
    let how = How { only_try: arguments.dry_run, at_once: AT_ONCE };
    let imported = desk.import_told(input, &run.who, how, &mut |step| watch.told(step));
    let stopped = watch.end();
    let imported = imported.map_err(|fault| {
        let exit = first_day::refused(run, &fault, &arguments.file.display().to_string(), &species);
        match stopped {
            Some(stopped) if exit.ending == Ending::Interrupted => {
                Exit { ending: stopped.ending, lines: vec![stopped.sentence] }
            }
            _ => exit,
        }
    })?;
    if arguments.dry_run {
        return write::tried(run, &desk, imported, &[]);
    }
    if imported.recorded.already > 0 && !run.everywhere.json {
        note(&run.wording.already_here(imported.recorded.already as i64));
    }
    if imported.recorded.entries.is_empty() && !run.everywhere.json {
        let taken = imported.lines - imported.recorded.already;
        let text = run.wording.taken(taken as i64);
        let telling = write::Telling { message: &text, each: false, tried: false, cautions: &[], effects: &[] };
        return write::told_as(run, &desk, &imported.recorded, telling);
    }
    write::told(run, &desk, &imported.recorded, &[])
}

/// Gives every entry out.
pub(crate) fn export(run: &Run, arguments: &ExportArguments) -> Result<Ending, Exit> {
    let what = match arguments.what {
        ExportAs::Geojson => return map(run, arguments),
        _ if arguments.excel => {
            let decimal_comma = run.wording.lang() == Lang::Es;
            Export::Csv(TableFor::OfficePrograms { decimal_comma })
        }
        ExportAs::Entries => Export::Lines,
        ExportAs::Csv => Export::Csv(TableFor::AnyProgram),
    };
    let to = arguments.to.as_ref().filter(|to| to.as_os_str() != "-");
    if to.is_none() && goes_nowhere() {
        return Err(Exit { ending: Ending::File, lines: vec![run.wording.answer_not_shown()] });
    }
    let journal = run.reading()?;
    let given = match to {
        Some(to) => journal.export_to(what, to),
        None => journal.export(what, &mut std::io::stdout().lock()),
    };
    match given {
        Ok(entries) => {
            if let Some(to) = to {
                if run.everywhere.json {
                    let file = to.display().to_string();
                    return run.answer_json(&json!({"version": 1, "file": file, "entries": entries}));
                }
                note(&run.wording.exported(entries as i64, to.display()));
            }
            Ok(Ending::Done)
        }
        Err(ExportError::Out(fault)) if fault.kind() == ErrorKind::BrokenPipe => Ok(Ending::Done),
        Err(ExportError::Out(fault)) => Err(Exit {
            ending: Ending::File,
            lines: vec![run.wording.answer_not_shown(), run.wording.system_fault(&fault)],
        }),
        Err(ExportError::File(fault)) => {
            let ending =
                if matches!(fault, crate::desk::FileFault::Io { .. }) { Ending::File } else { Ending::Refused };
            Err(Exit { ending, lines: vec![run.wording.file_fault(&fault)] })
        }
        Err(ExportError::Journal(fault)) => Err(run.exit_for_file(&fault)),
    }
}

/// Gives the map of the beds out.
fn map(run: &Run, arguments: &ExportArguments) -> Result<Ending, Exit> {
    let desk = run.desk()?;
    let features = geojson::features(&run.picture(&desk)?);
    let text = geojson::text(&features);
    let Some(to) = arguments.to.as_ref().filter(|to| to.as_os_str() != "-") else { return run.answer_as_is(&text) };
    write_new_file(to, text.as_bytes()).map_err(|fault| {
        let ending = if matches!(fault, FileFault::Io { .. }) { Ending::File } else { Ending::Refused };
        Exit { ending, lines: vec![run.wording.file_fault(&fault)] }
    })?;
    if run.everywhere.json {
        let file = to.display().to_string();
        return run.answer_json(&json!({"version": 1, "file": file, "features": features.len()}));
    }
    note(&run.wording.exported_map(features.len() as i64, to.display()));
    Ok(Ending::Done)
}

/// Whether nothing was given to write to (`>&-`). The standard library puts the empty device there, open for reading too,
/// which a shell's `> /dev/null` is not. Only Linux tells.
fn goes_nowhere() -> bool {
    /// Of the flags of an open file those that say how (fcntl.h), and the one for reading and writing.
    const HOW: u32 = 0o3;
    const BOTH_WAYS: u32 = 0o2;
    let is_empty_device = std::fs::read_link("/proc/self/fd/1").is_ok_and(|path| path.as_os_str() == "/dev/null");
    let about = std::fs::read_to_string("/proc/self/fdinfo/1").unwrap_or_default();
    let flags = about.lines().find_map(|line| line.strip_prefix("flags:"));
    let flags = flags.and_then(|flags| u32::from_str_radix(flags.trim(), 8).ok());
    is_empty_device && flags.is_some_and(|flags| flags & HOW == BOTH_WAYS)
}
