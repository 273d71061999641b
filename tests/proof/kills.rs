//! The program killed at any moment, whatever it is doing. A kill proves nothing about power: see `power.rs`.

use std::io::{BufRead, BufReader};
use std::os::unix::process::CommandExt;
use std::process::Stdio;
use std::time::Duration;

use super::{Dice, Row, count};
use crate::support::program::Home;

/// Entries of an import that is killed.
const LINES: usize = 1500;
/// Kills before a new nursery is begun, so that the book does not grow without end.
const KILLS_OF_A_HOME: u64 = 40;

/// What is being done when the kill comes: a loop of the shell that says a number aloud only after the program has ended
/// well. `$1` is the first number, `$2` the program, `$3` the folder.
const PHASES: [(&str, &str); 3] = [
    (
        "one entry after the other",
        r#"i=$1; while :; do "$2" write noted "text=n$i" >/dev/null || exit 1; echo "$i"; i=$((i+1)); done"#,
    ),
    (
        "imports",
        r#"i=$1; while :; do sed "s/NUMBER/n$i/" "$3/lines" | "$2" import - >/dev/null || exit 1; echo "$i"; i=$((i+1)); done"#,
    ),
    ("backups", r#"i=$1; while :; do "$2" backup "$3/copy-$i" >/dev/null || exit 1; echo "$i"; i=$((i+1)); done"#),
];

fn killed(home: &Home, script: &str, first: u64, pause: Duration) -> Vec<u64> {
    let mut child = std::process::Command::new("sh")
        .args(["-c", script, "sh", &first.to_string(), env!("CARGO_BIN_EXE_outplant")])
        .arg(home.path())
        .env_clear()
        .env("HOME", home.path())
        .env("OUTPLANT_TODAY", &home.today)
        .env("OUTPLANT_NURSERY", home.file("nursery.outplant"))
        .env("PATH", std::env::var_os("PATH").unwrap_or_default())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .process_group(0)
        .spawn()
        .unwrap();
    let (out, pid) = (child.stdout.take().unwrap(), child.id());
    let killer = std::thread::spawn(move || {
        std::thread::sleep(pause);
        // Without `--` some versions of kill read only the first digit of a group: of -1234 that is -1, everything.
        let _ = std::process::Command::new("kill").args(["-9", "--", &format!("-{pid}")]).status();
    });
    let said = BufReader::new(out).lines().map_while(Result::ok).filter_map(|line| line.parse().ok()).collect();
    killer.join().unwrap();
    child.wait().unwrap();
    said
}

fn begun() -> Home {
    let home = Home { folder: super::quick_folder(), ..Home::default() }.begun();
    let lines: String = (0..LINES).map(|i| format!("{{\"kind\":\"noted\",\"text\":\"NUMBER of {i}.\"}}\n")).collect();
    home.with("lines", lines);
    home
}

/// What is wrong after a kill.
fn fault_of(home: &Home, phase: usize, said: &[u64], all_said: &[u64]) -> Option<String> {
    let checked = home.run(&["check", "--json"]);
    if checked.code != 0 {
        return Some(format!("check ends with {}: {}", checked.code, checked.out));
    }
    let export = home.done(&["export"]);
    let gone = all_said.iter().find(|number| match phase {
        0 => !export.contains(&format!("\"text\":\"n{number}\"")),
        1 => export.matches(&format!("\"text\":\"n{number} of ")).count() != LINES,
        _ => false,
    });
    if let Some(number) = gone {
        return Some(format!("n{number} was acknowledged and is gone"));
    }
    if phase == 1 && export.matches(" of 7.\"").count() * LINES != export.matches(" of ").count() {
        return Some("an import is there by half".into());
    }
    for number in if phase == 2 { said } else { &[] } {
        let copy = home.file(&format!("copy-{number}")).display().to_string();
        if home.run(&["check", "--nursery", &copy]).code != 0 {
            return Some(format!("copy-{number} was acknowledged and is not sound"));
        }
    }
    // A copy has its name only when it is whole, also where nobody heard so.
    let unsaid = home.file(&format!("copy-{}", said.last().map_or(0, |last| last + 1)));
    if phase == 2 && unsaid.exists() && home.run(&["check", "--nursery", &unsaid.display().to_string()]).code != 0 {
        return Some("a half copy has the name of a whole one".into());
    }
    None
}

#[test]
fn whatever_is_being_done_when_it_is_killed_nothing_acknowledged_is_lost() {
    // A fourth part are those of `bringing_up_is_killed` in src/journal/tests/kills.rs.
    let each = count("KILLS", 12, 1000) / 4;
    for (phase, (name, script)) in PHASES.iter().enumerate() {
        let mut row = Row::begin(&format!("kill -9: {name}"));
        let mut dice = Dice::new(phase as u64 + 5);
        let (mut home, mut acknowledged, mut all_said) = (begun(), 0, Vec::new());
        for kill in 0..each {
            if kill % KILLS_OF_A_HOME == KILLS_OF_A_HOME - 1 {
                (home, all_said) = (begun(), Vec::new());
            }
            // A busy machine gets longer until something was acknowledged.
            let patience = if acknowledged == 0 { kill + 1 } else { 1 };
            let pause = Duration::from_millis((20 + dice.below(350) as u64) * patience);
            let said = killed(&home, script, kill * 1000, pause);
            acknowledged += said.len();
            all_said.extend(&said);
            row.ran(fault_of(&home, phase, &said, &all_said).map(|why| format!("kill {kill}: {why}")));
        }
        row.found = format!("{acknowledged} acknowledged");
        row.must_hold();
        assert!(acknowledged > 0, "nothing was acknowledged: the test sees nothing");
    }
}
