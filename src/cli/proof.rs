//! `check` and `backup`: the file is proved, the copy is proved too.

use serde_json::json;

use super::answer::Ending;
use super::args::Backup;
use super::run::{Run, Stopped};
use crate::desk::{self, CheckReport, Replay};

/// Proves the file: chain, books, replay. Reads only.
pub fn check(run: &Run) -> Result<Ending, Stopped> {
    let report = desk::check(&run.file).map_err(|fault| run.stopped_by_file(&fault))?;
    // A file whose lines cannot all be read has no books to prove.
    let replay = if report.faults.is_empty() { desk::replay(&run.file, run.now).ok() } else { None };
    let sound =
        report.faults.is_empty() && replay.as_ref().is_none_or(|replay| replay.unbalanced.is_empty() && replay.same);
    if run.everywhere.json {
        run.answer_json(&json!({
            "version": 1,
            "sound": sound,
            "entries": report.entries,
            "devices": report.devices,
            "unknown_kinds": report.unknown_kinds,
            "file_version": report.file_version,
            "program_version": report.program_version,
            "sqlite": report.sqlite_version,
            "faults": report.faults.iter().map(|fault| json!({"entry": fault.entry().map(ToString::to_string), "text": fault.to_string()})).collect::<Vec<_>>(),
            "unbalanced": replay.as_ref().map(|replay| replay.unbalanced.clone()),
            "replay_same": replay.as_ref().map(|replay| replay.same),
            "doubts": replay.as_ref().map(|replay| replay.doubts),
        }))?;
    } else {
        run.answer(&in_words(run, &report, replay.as_ref(), sound))?;
    }
    Ok(if sound { Ending::Done } else { Ending::Damaged })
}

fn in_words(run: &Run, report: &CheckReport, replay: Option<&Replay>, sound: bool) -> String {
    let wording = &run.wording;
    let mut lines: Vec<String> = Vec::new();
    if sound {
        lines.push(wording.check_sound(report.entries as i64));
    } else {
        lines.push(wording.check_damaged(report.faults.len() as i64));
        lines.extend(report.faults.iter().map(|fault| format!("  {}", crate::base::text::cleaned(&fault.to_string()))));
        lines.push(wording.check_what_now());
    }
    if let Some(replay) = replay {
        lines.extend(replay.unbalanced.iter().map(|name| wording.check_unbalanced(name)));
        if !replay.same {
            lines.push(wording.check_replay_differs());
        }
        if replay.doubts > 0 {
            lines.push(wording.check_doubts(replay.doubts as i64));
        }
    }
    if report.unknown_kinds > 0 {
        lines.push(wording.check_unknown_kinds(report.unknown_kinds as i64));
    }
    lines.push(wording.check_versions(report.file_version, report.program_version, &report.sqlite_version));
    lines.join("\n") + "\n"
}

/// A verified copy.
pub fn backup(run: &Run, arguments: &Backup) -> Result<Ending, Stopped> {
    let journal = desk::Reading::open(&run.file).map_err(|fault| run.stopped_by_file(&fault))?;
    let report = journal.backup(&arguments.to).map_err(|fault| run.stopped_by_file(&fault))?;
    if run.everywhere.json {
        let file = report.path.display().to_string();
        return run.answer_json(&json!({"version":1,"file":file,"entries":report.entries,"bytes":report.bytes}));
    }
    run.answer(&format!("{}\n", run.wording.backup_made(report.path.display(), report.entries as i64)))
}
