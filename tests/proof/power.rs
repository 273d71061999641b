//! Power cuts: the file operations of the program itself are recorded with `strace`, and the disk is rebuilt as it could
//! look after a cut at every operation. What was written since the last sync of a file may be kept, lost or torn at 512
//! bytes, in any combination; names that were given or taken since the last sync may be kept or lost, in their order.

mod replay;
mod trace;

use std::path::Path;
use std::process::{Command, Stdio};

use outplant::journal::Journal;

use super::{Row, count};
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

fn has_strace() -> bool {
    Command::new("strace").arg("-V").stdout(Stdio::null()).stderr(Stdio::null()).status().is_ok_and(|end| end.success())
}

/// Records the work. `beside`: while another program has the book open, so that the log stays.
fn recorded(rounds: u64, beside: bool) -> Trace {
    let home = Home { folder: super::quick_folder(), ..Home::default() };
    let lines: String = (0..20).map(|i| format!("{{\"kind\":\"noted\",\"text\":\"NUMBER. {i}\"}}\n")).collect();
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
fn power_cut_at_any_moment_loses_nothing_acknowledged_and_weaker_settings_do() {
    if !has_strace() {
        println!("\n| power cuts | 0 | 0 | 0 | not run: this machine has no strace |");
        return;
    }
    let (rounds, all) = (count("CUT_WORK", 14, 60), count("CUTS", 320, 50_000));
    let (alone, beside) = (recorded(rounds, false), recorded(rounds, true));
    for (name, trace) in [("alone", &alone), ("beside an open desk", &beside)] {
        for (model, strict) in [("any sync settles names", false), ("only a folder's sync settles names", true)] {
            let mut row = Row::begin(&format!("power cut, as it is (WAL, FULL), {name}; {model}"));
            let syncs = trace.operations.iter().filter(|operation| matches!(operation, Operation::Sync { .. })).count();
            row.found = format!("{} file operations recorded, {syncs} of them syncs", trace.operations.len());
            cut(&mut row, trace, strict, all / 4);
            row.must_hold();
        }
    }
    for (name, weaker) in [("NORMAL", as_normal(&beside)), ("OFF", as_off(&beside))] {
        let mut row = Row::begin(&format!("control, must fail: power cut with {name}"));
        let bad = cut(&mut row, &weaker, false, (all / 10).max(160));
        let lost = bad.iter().filter(|verdict| matches!(verdict, Verdict::Lost(_))).count();
        row.found = format!("{lost} with an acknowledged entry gone, {} damaged: the test sees", bad.len() - lost);
        let failures = row.told();
        assert!(lost > 0 && !failures.is_empty(), "{name} lost nothing: the test is blind");
    }
}
