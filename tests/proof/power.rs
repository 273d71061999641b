//! Power cuts: the file operations of the program itself are recorded with `strace`, and the disk is rebuilt as it could
//! look after a cut at every operation. What was written since the last sync of a file may be kept, lost or torn at 512
//! bytes, in any combination; names that were given or taken since the last sync may be kept or lost, in their order.

mod replay;
mod trace;

use std::path::Path;
use std::process::{Command, Stdio};

use outplant::journal::Journal;

use super::{Row, count, needs_strace};
use crate::support::program::Home;
use replay::{Replay, Verdict};
use trace::{Operation, Trace};

/// A book begun and written to: single entries, imports of 20 lines, copies; each said aloud on the error output once the
/// program has ended well. `$1` is how often, `$2` the program, `$3` the folder.
const WORK: &str = r#"
i=1
while [ "$i" -le "$1" ]; do
  if [ $((i % 10)) = 0 ]; then sed "s/NUMBER/n$i/" "$3/lines" | "$2" import - >/dev/null 2>&1 || exit 1
  elif [ $((i % 13)) = 0 ]; then "$2" backup "$3/copy-$i" >/dev/null 2>&1 || exit 1
  else "$2" write noted "text=n$i." >/dev/null 2>&1 || exit 1; fi
  echo "ACK $i" >&2
  i=$((i+1))
done"#;

/// How the work is done.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Manner {
    /// Each program alone: it takes the log into the file when it ends.
    Alone,
    /// While another program has the book open, so that the log stays.
    Beside,
    /// The same, and one import so large that the log is taken into the file by it.
    BesideAndLarge,
}

/// Lines of an import, and of a large one: more than the 1000 pages at which SQLite takes a log into the file.
const LINES: usize = 20;
const LARGE_LINES: usize = 2_400;
/// Rounds of the work with a large import: the tenth is one.
const LARGE_ROUNDS: u64 = 16;

/// Records the work.
fn recorded(rounds: u64, manner: Manner) -> Trace {
    let beside = manner != Manner::Alone;
    let home = Home { folder: super::quick_folder(), ..Home::default() };
    let (count, text) =
        if manner == Manner::BesideAndLarge { (LARGE_LINES, "x".repeat(1_800)) } else { (LINES, String::new()) };
    let lines: String =
        (0..count).map(|i| format!("{{\"kind\":\"noted\",\"text\":\"NUMBER. {i}{text}\"}}\n")).collect();
    home.with("lines", lines);
    let begin = r#""$2" begin --name T --lat 0 --lon 36 --altitude 1500 >/dev/null 2>&1 || exit 1; echo "ACK 0" >&2"#;
    let script = if beside { WORK.to_string() } else { format!("{begin}\n{WORK}") };
    let mut open = None;
    if beside {
        home.done(&["begin", "--name", "T", "--lat", "0", "--lon", "36", "--altitude", "1500"]);
        open = Some(Journal::open(&home.file("nursery.outplant"), &home.file("another-shelf")).unwrap());
    }
    let before = trace::lying_in(home.path());
    let calls = "trace=openat,open,creat,pwrite64,write,fsync,fdatasync,ftruncate,unlink,unlinkat,rename,renameat,renameat2,link,linkat,close";
    let traced = home.file("trace");
    let ended = Command::new("strace")
        .args(["-f", "-xx", "-s", "400000", "-e", calls, "-o"])
        .arg(&traced)
        .args(["sh", "-c", &script, "sh", &rounds.to_string(), env!("CARGO_BIN_EXE_outplant")])
        .arg(home.path())
        .env_clear()
        .env("HOME", home.path())
        .env("OUTPLANT_TODAY", &home.today)
        .env("OUTPLANT_NURSERY", home.file("nursery.outplant"))
        .env("PATH", std::env::var_os("PATH").unwrap_or_default())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status()
        .unwrap();
    drop(open);
    assert!(ended.success(), "the work that is recorded failed");
    let trace = Trace::read(&std::fs::read_to_string(traced).unwrap(), home.path(), before);
    let said =
        trace.operations.iter().filter(|operation| matches!(operation, Operation::Acknowledged(_))).count() as u64;
    assert_eq!(said, rounds + u64::from(!beside), "what was said aloud was not recorded");
    trace
}

/// Every synchronous write of the book and its log is left out, as `synchronous` OFF leaves it out.
fn as_off(trace: &Trace) -> Trace {
    trace.without_syncs(|_, path| is_log(path) || path.ends_with("nursery.outplant"))
}

/// The log is synced only before it is taken into the file, as `synchronous` NORMAL does.
fn as_normal(trace: &Trace) -> Trace {
    let before_file = |at: usize| {
        let next = trace.operations[at + 1..].iter().find_map(|operation| match operation {
            Operation::Write { path, .. } if is_log(path) => Some(false),
            Operation::Write { path, .. } if path.ends_with("nursery.outplant") => Some(true),
            _ => None,
        });
        next == Some(true)
    };
    trace.without_syncs(|at, path| is_log(path) && !before_file(at))
}

fn is_log(path: &Path) -> bool {
    path.ends_with("nursery.outplant-wal")
}

fn cut(row: &mut Row, trace: &Trace, strict: bool, cuts: u64) -> Vec<Verdict> {
    let mut bad = Vec::new();
    let mut replay = Replay::new(trace, strict, cuts);
    while let Some(verdict) = replay.next_cut() {
        row.ran(
            (verdict != Verdict::Fine).then(|| format!("cut {} after operation {}: {verdict:?}", row.run, replay.at())),
        );
        if verdict != Verdict::Fine {
            bad.push(verdict);
        }
    }
    bad
}

#[test]
fn power_cut_at_any_moment_loses_nothing_acknowledged() {
    needs_strace();
    let (rounds, all) = (count("CUT_WORK", 14, 60), count("CUTS", 320, 50_000));
    let (alone, beside) = (recorded(rounds, Manner::Alone), recorded(rounds, Manner::Beside));
    for (name, trace) in [("alone", &alone), ("beside an open desk", &beside)] {
        for (model, strict) in [("any sync settles names", false), ("only a folder's sync settles names", true)] {
            let mut row = Row::begin(&format!("power cut, as it is (WAL, FULL), {name}; {model}"));
            let syncs = trace.operations.iter().filter(|operation| matches!(operation, Operation::Sync { .. })).count();
            row.found = format!("{} file operations recorded, {syncs} of them syncs", trace.operations.len());
            cut(&mut row, trace, strict, all / 4);
            row.must_hold();
        }
    }
}

/// How often the log was taken into the file.
fn times_taken_in(trace: &Trace) -> usize {
    let written: Vec<bool> = trace
        .operations
        .iter()
        .filter_map(|operation| match operation {
            Operation::Write { path, .. } if is_log(path) => Some(false),
            Operation::Write { path, .. } if path.ends_with("nursery.outplant") => Some(true),
            _ => None,
        })
        .collect();
    written.windows(2).filter(|pair| pair == &[false, true]).count()
}

/// Of some cuts, those after which something acknowledged was gone, and those after which the book was damaged.
fn lost_and_damaged(name: &str, trace: &Trace, cuts: u64) -> (usize, usize) {
    let mut row = Row::begin(name);
    let bad = cut(&mut row, trace, false, cuts);
    let lost = bad.iter().filter(|verdict| matches!(verdict, Verdict::Lost(_))).count();
    let damaged = bad.len() - lost;
    row.found = format!(
        "{lost} with something acknowledged gone, {damaged} damaged; the log was taken into the file {} times",
        times_taken_in(trace)
    );
    assert_eq!(row.told().len(), lost + damaged);
    (lost, damaged)
}

#[test]
fn the_test_of_power_cuts_sees_what_weaker_settings_lose() {
    needs_strace();
    let (rounds, cuts) = (count("CUT_WORK", 14, 60), count("CONTROL_CUTS", 200, 1_000));
    let (alone, beside) = (recorded(rounds, Manner::Alone), recorded(rounds, Manner::Beside));
    let large = recorded(LARGE_ROUNDS, Manner::BesideAndLarge);
    assert_eq!(times_taken_in(&beside), 0);
    assert!(times_taken_in(&large) > 0 && times_taken_in(&alone) > 5, "the log was never taken into the file");
    let told = |setting: &str, manner: &str, must: &str, trace: &Trace, cuts| {
        lost_and_damaged(&format!("control, {must}: power cut with {setting}, {manner}"), trace, cuts)
    };
    // With another program there, nothing brings what NORMAL wrote to the disk before it is acknowledged.
    let normal = told("NORMAL", "beside an open desk", "must fail", &as_normal(&beside), cuts);
    let off = told("OFF", "beside an open desk", "must fail", &as_off(&beside), cuts);
    assert!(normal.0 > 0 && off.0 > 0, "nothing was lost: the test is blind");
    // Alone, each program takes its log in before it ends; NORMAL syncs that, OFF does not.
    let normal = told("NORMAL", "alone", "must hold", &as_normal(&alone), cuts);
    let off = told("OFF", "alone", "must fail", &as_off(&alone), cuts);
    assert_eq!(normal, (0, 0), "what NORMAL promises");
    assert!(off.0 > 0 && off.1 > 0, "nothing was lost or damaged: the test is blind");
    // A log that is taken in on the way: NORMAL may lose, but never damages.
    let normal = told("NORMAL", "with a large import", "must fail", &as_normal(&large), cuts / 2);
    let off = told("OFF", "with a large import", "must fail", &as_off(&large), cuts / 2);
    assert!(normal.0 > 0 && normal.1 == 0, "what NORMAL promises: {normal:?}");
    assert!(off.0 > 0 && off.1 > 0, "nothing was lost or damaged: the test is blind");
}
