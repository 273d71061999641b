//! `check` and `backup`: the file is proved, the copy is proved too.

use serde_json::json;

use super::answer::Ending;
use super::args::{Backup, Rescue};
use super::open_desk::others_in_words;
use super::progress::{Stopped, StoppedAt, Watch};
use super::run::{Exit, Run};
use crate::desk::{self, CheckReport, ExportError, FileFault, ImportStep, JournalError, Lost, Replay, Rescued};

/// What is said where it was stopped.
const CHECK_STOPPED: StoppedAt = |wording, _| wording.check_cancelled();

/// Proves the file: chain, books, replay. Reads only; kept stories that are not true are thrown away.
pub(crate) fn check(run: &Run) -> Result<Ending, Exit> {
    let shelf = &run.around.folders.settings;
    let (report, stopped) =
        watched(run, CHECK_STOPPED, |watch| desk::check(&run.file, shelf, &mut |step| watch.looked(step)));
    let report = report.map_err(|fault| exit_of(run, &fault, stopped))?;
    // Entries that are gone are among the faults; the note says how that is settled where it is meant.
    let _ = run.reading();
    // A file whose lines cannot all be read has no books to prove.
    let replay = if report.faults.is_empty() { replayed(run)? } else { None };
    let sound =
        report.faults.is_empty() && replay.as_ref().is_none_or(|replay| replay.unbalanced.is_empty() && replay.same);
    if replay.as_ref().is_some_and(|replay| !replay.kept_stories_true) {
        desk::drop_kept_stories(&run.file, &run.around.folders.settings).map_err(|fault| run.exit_for_file(&fault))?;
    }
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
            "undamaged": report.undamaged,
            "lost": lost_json(&report.lost),
            "unbalanced": replay.as_ref().map(|replay| replay.unbalanced.clone()),
            "kept_stories_true": replay.as_ref().map(|replay| replay.kept_stories_true),
            "replay_same": replay.as_ref().map(|replay| replay.same),
            "doubts": replay.as_ref().map(|replay| replay.doubts),
        }))?;
    } else {
        run.answer(&in_words(run, &report, replay.as_ref(), sound))?;
    }
    Ok(if sound { Ending::Done } else { Ending::Damaged })
}

/// The replay with its progress; none where the books cannot be read.
fn replayed(run: &Run) -> Result<Option<Replay>, Exit> {
    let (replay, stopped) = watched(run, CHECK_STOPPED, |watch| {
        desk::replay(&run.file, run.now, &mut |done, all| watch.told(ImportStep::Judged { done, all }))
    });
    match replay {
        Err(fault @ JournalError::Cancelled) => Err(exit_of(run, &fault, stopped)),
        replay => Ok(replay.ok()),
    }
}

/// What comes of work that is watched, and whether a signal stopped it.
fn watched<T>(run: &Run, stopped: StoppedAt, work: impl FnOnce(&mut Watch<'_>) -> T) -> (T, Option<Stopped>) {
    let mut watch = Watch::begin(run, stopped);
    let done = work(&mut watch);
    (done, watch.end())
}

/// How a run ends on a fault of the file, or because it was stopped.
fn exit_of(run: &Run, fault: &JournalError, stopped: Option<Stopped>) -> Exit {
    match (fault, stopped) {
        (JournalError::Cancelled, Some(stopped)) => Exit { ending: stopped.ending, lines: vec![stopped.sentence] },
        _ => run.exit_for_file(fault),
    }
}

fn in_words(run: &Run, report: &CheckReport, replay: Option<&Replay>, sound: bool) -> String {
    let wording = &run.wording;
    let mut lines: Vec<String> = Vec::new();
    if sound {
        lines.push(wording.check_sound(report.entries as i64));
    } else {
        lines.push(wording.check_damaged(report.faults.len() as i64));
        lines.extend(report.faults.iter().map(|fault| format!("  {}", wording.damage(fault))));
        if let Some(undamaged) = report.undamaged {
            lines.push(wording.check_undamaged(undamaged as i64));
            lines.extend(report.lost.iter().map(|lost| format!("  {}", lost_in_words(run, lost))));
            lines.push(wording.check_what_now());
        }
    }
    if let Some(replay) = replay {
        lines.extend(replay.unbalanced.iter().map(|name| wording.check_unbalanced(name)));
        if !replay.same {
            lines.push(wording.check_replay_differs());
        }
        if !replay.kept_stories_true {
            lines.push(wording.check_kept_stories_differ());
        }
        if replay.doubts > 0 {
            lines.push(wording.check_doubts(replay.doubts as i64));
        }
    }
    lines.extend(others_in_words(run));
    if report.unknown_kinds > 0 {
        lines.push(wording.check_unknown_kinds(report.unknown_kinds as i64));
    }
    lines.push(wording.check_versions(report.file_version, report.program_version, &report.sqlite_version));
    lines.join("\n") + "\n"
}

fn lost_json(lost: &[Lost]) -> Vec<serde_json::Value> {
    lost.iter().map(|lost| json!({"device": lost.device, "from": lost.from, "to": lost.to})).collect()
}

fn lost_in_words(run: &Run, lost: &Lost) -> String {
    if lost.from == lost.to {
        run.wording.lost_one(&lost.device, lost.from)
    } else {
        run.wording.lost_many(&lost.device, lost.from, lost.to, (lost.to - lost.from + 1) as i64)
    }
}

/// Every undamaged entry of a damaged file, as lines that import reads; what is lost is named. Reads only.
pub(crate) fn rescue(run: &Run, arguments: &Rescue) -> Result<Ending, Exit> {
    run.made_in_a_file(&arguments.to)?;
    let shelf = &run.around.folders.settings;
    let to = (arguments.to.as_path(), arguments.no_backup);
    let (rescued, stopped) = watched(
        run,
        |wording, _| wording.rescue_cancelled(),
        |watch| desk::rescue(&run.file, shelf, to, &mut |step| watch.looked(step)),
    );
    let rescued = rescued.map_err(|fault| match fault {
        ExportError::Journal(fault) => exit_of(run, &fault, stopped),
        ExportError::File(fault) => {
            let ending = if matches!(fault, FileFault::Io { .. }) { Ending::File } else { Ending::Refused };
            Exit { ending, lines: vec![run.wording.file_fault(&fault)] }
        }
        ExportError::Out(fault) => Exit { ending: Ending::File, lines: vec![run.wording.system_fault(&fault)] },
    })?;
    if run.everywhere.json {
        run.answer_json(&json!({
            "version": 1,
            "file": (!rescued.entries.is_empty()).then(|| arguments.to.display().to_string()),
            "entries": rescued.entries.len(),
            "damaged": rescued.damaged,
            "lost": lost_json(&rescued.lost),
            "apart": rescued.apart.iter()
                .map(|apart| json!({"first": apart.first.to_string(), "last": apart.last.to_string(), "device": apart.now}))
                .collect::<Vec<_>>(),
        }))?;
    } else {
        run.answer(&rescued_in_words(run, &rescued, arguments))?;
    }
    let whole = rescued.lost.is_empty() && !rescued.entries.is_empty();
    Ok(if whole { Ending::Done } else { Ending::Damaged })
}

fn rescued_in_words(run: &Run, rescued: &Rescued, arguments: &Rescue) -> String {
    let wording = &run.wording;
    if rescued.entries.is_empty() {
        return format!("{}\n", wording.rescued_nothing());
    }
    let to = arguments.to.display();
    let mut lines = vec![wording.rescued(rescued.entries.len() as i64, &to)];
    if rescued.lost.is_empty() {
        lines.push(if rescued.damaged { wording.rescued_none_named() } else { wording.rescued_all() });
    } else {
        lines.push(wording.rescued_lost());
        lines.extend(rescued.lost.iter().map(|lost| format!("  {}", lost_in_words(run, lost))));
    }
    lines.extend(rescued.apart.iter().map(|apart| wording.rescued_apart(&apart.first, &apart.last, &apart.now)));
    let is_whole = rescued.lost.is_empty() && !rescued.damaged;
    lines.push(match (rescued.lost.is_empty(), arguments.no_backup) {
        _ if is_whole => wording.rescued_not_needed(&to),
        (true, _) | (false, true) => wording.rescued_into_new(&to),
        (false, false) => wording.rescued_into_backup(&to),
    });
    lines.join("\n") + "\n"
}

/// A verified copy.
pub(crate) fn backup(run: &Run, arguments: &Backup) -> Result<Ending, Exit> {
    run.made_in_a_file(&arguments.to)?;
    let journal = run.reading()?;
    let report = journal.backup(&arguments.to).map_err(|fault| run.exit_for_file(&fault))?;
    if run.everywhere.json {
        let file = report.path.display().to_string();
        return run.answer_json(&json!({"version":1,"file":file,"entries":report.entries,"bytes":report.bytes}));
    }
    run.answer(&format!("{}\n", run.wording.backup_made(report.path.display(), report.entries as i64)))
}
